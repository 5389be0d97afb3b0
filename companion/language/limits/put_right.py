"""Whole messages that put right the end, the weight or the unit of a limit that was told."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date
from functools import lru_cache
from typing import Final

from companion.language.limits.amounts import AMOUNT, COUNT, NOT_SO_MUCH, UNIT_WORDS, amount_said, as_number, in_kilos
from companion.language.limits.clinicians import A_CLINICIAN
from companion.language.limits.ends import end_in
from companion.language.limits.spelling import bare_line
from companion.language.units import IMPERIAL, KG_PER_POUND

_LEADS_IN: Final = r"""
    no nope oh sor+y ac\w+ly oops wait correction i i'm mean meant it it's its was is that that's thats should be make change changed to
    and only just now really instead said says told me he she they the my limit date end lasts"""
_PUTS_RIGHT: Final = rf"(?:(?:{'|'.join(_LEADS_IN.split())}|should have been|{A_CLINICIAN})[,:;]* )"
_SAID_AFTER: Final = (r"(?:,? (?:ac\w+ly|instead|though|sor+y|really|now|please|i meant?|"
                      rf"not (?:(?:until|till?|for|just|only) )?[^, ]+(?: (?:weeks?|wks?|days?|months?))?|"
                      rf"(?:(?:said|says|by) )?(?:(?:my |the |a )?(?:{A_CLINICIAN})|he|she|they)(?: said| says| told me)?))")
_ENDS: Final = (r"(?:(?:until|untill|till?|(?:extended|prolonged) to) (?:(?!not\b).)+?|(?:for )?(?:another |about |at least |a further )?"
                rf"(?:{COUNT}|a couple of|another|an?|one)(?: ?(?:-|to|or) ?(?:{COUNT}))?(?: more| further| extra)? ?"
                r"(?:day|week|wk|month)s?(?: more| longer)?|(?:for )?a fortnight)")
_LENGTHENED: Final = (
    rf"(?:{_PUTS_RIGHT})*(?:(?:my |the |a )?(?:{A_CLINICIAN})|he|she|they|it|that|(?:my |the )?(?:limit|restriction))"
    r"(?: (?:has|have|had|was|is|been|got|just|now|then|only|also)|'s)* (?:extended|prolonged|lengthened|pushed|moved|put|added|changed|"
    r"wants?|wanted|gave|gives?|given|needs?|likes?|keeps?|kept)(?: (?:it|that|this|(?:the|my) (?:limit|restriction)|me|back|out|on|by|to|"
    r"for|up|longer|off|wait|rest))* ")
_TO_A_DAY: Final = r"to (?:(?!not\b).)+?"
NEW_END: Final = rf"(?:{_PUTS_RIGHT}+{_ENDS}{_SAID_AFTER}*|{_ENDS}{_SAID_AFTER}+|{_LENGTHENED}(?:{_ENDS}|{_TO_A_DAY}){_SAID_AFTER}*)"
"""Whole messages that may put the end of a limit right, as a pattern; ``new_end`` reads them."""
_NEW_END: Final = re.compile(rf"(?:{_PUTS_RIGHT}*(?P<end>{_ENDS})|{_LENGTHENED}(?P<then>{_ENDS}|{_TO_A_DAY})){_SAID_AFTER}*")
_LONGER: Final = re.compile(r"\b(?:more|another|further|extra|longer|added|by (?:a|an|another|\d+|two|three|four|six|one))\b")
_OF_A_LIMIT: Final = rf"\b(?:limit|(?:he|she|they|{A_CLINICIAN}) (?:said|says|told me))\b"
_WEIGHT: Final = (rf"(?:{_PUTS_RIGHT}|(?:and|can|may|lift|max(?:imum)?|at most|up to|nothing|over|above|weight|load) )*{AMOUNT}"
                  rf"(?:(?: is)?(?: the| my)? (?:max(?:imum)?|limit))?(?:{NOT_SO_MUCH}|{_SAID_AFTER})*")
_NEW_KILOS: Final = re.compile(_WEIGHT)
_MAY: Final = rf"(?=.*(?:{_OF_A_LIMIT}|\bnot \d))"
NEW_KILOS: Final = rf"{_MAY}{_WEIGHT}"
"""Whole messages that may put the weight of a limit right, as a pattern; ``new_kilos`` reads them, and a weight alone."""
_UNIT_LEADS: Final = rf"(?:{_PUTS_RIGHT}|(?:in|as|weight|number|all) )*"
NEW_UNIT: Final = (rf"{_UNIT_LEADS}(?:not (?:in )?{UNIT_WORDS}(?:,| but)? {_UNIT_LEADS})?(?P<unit_meant>{UNIT_WORDS})"
                   rf"(?:,? (?:and |but )?not (?:in )?{UNIT_WORDS})?{_SAID_AFTER}*")
"""Whole messages that may put the unit of a limit's weight right, as a pattern; ``in_the_unit`` reads them."""
_NEW_UNIT: Final = re.compile(NEW_UNIT)
NEW_KILOS_UNIT: Final = rf"(?=.*\d ?{UNIT_WORDS})(?!.*\b(?:nothing|over|above|max\w*|at most|up to|limit)\b){_WEIGHT}"
"""Whole messages that may say a limit's weight again with another unit, as a pattern; ``new_kilos`` reads them."""
_TILL: Final = re.compile(rf",? {_ENDS}(?=,| not\b|$)")
NEW_KILOS_TILL: Final = rf"{_MAY}(?=.*{_TILL.pattern})(?:{_PUTS_RIGHT})*{amount_said('till_')}.*"
"""Whole messages that may put a limit's weight and end right, as a pattern; ``new_kilos_till`` and ``new_end_beside`` read them."""


@lru_cache(64)  # asked of the same words several times in a step
def new_end(text: str, today: date) -> str:
    """Return the end of a limit in words that put it right and say no more: "no, till monday", "physio said 3 weeks actually", "doctor
    extended it till may"; a date as text, ``CLEARED``, or "" for no such words."""
    found = _NEW_END.fullmatch(bare_line(text))
    said = re.sub(r"^to ", "until ", found["end"] or found["then"]) if found else ""
    end, rest = end_in(f" {said} ", today)
    return end if not rest.strip(" ,") else ""


_STILL_ON: Final = re.compile(
    r"^(?:(?:no|nope|nah|(?:it(?:'?s| is)? )?(?:not|isn't|isnt)(?: (?:really|quite|entirely))?(?: (?:over|done|quite|finished))?(?: yet)?|"
    r"(?:it(?:'?s| is) )?still(?: on)?)\b[ ,.;]*(?:but|as|because|since|so)?[ ,]*)+(?=\S)")


def still_until(text: str, today: date) -> str:
    """Return the end in words that say, or may, that a limit is still on: "not yet, physio wants one more week"; as ``new_end`` does."""
    line = bare_line(text)
    return new_end(line, today) or new_end(_STILL_ON.sub("", line), today)


def says_longer(text: str) -> bool:
    """True if an end in words is counted from the one that stands: "one more week"."""
    return bool(_LONGER.search(bare_line(text)))


@dataclass(frozen=True, slots=True)
class NewKilos:
    """The weight of a limit as it is put right, in kg. ``was``: the one it is said in place of; ``named``: true if the words say that they
    are of a limit, or that somebody set it; ``number``: as it was typed, with a unit."""

    kg: float
    was: float | None
    named: bool
    number: float | None = field(default=None, compare=False)


def new_kilos(text: str, system: str = "") -> NewKilos | None:
    """Return the weight in words that put that of a limit right and say no more: "the limit is 40 kg, not 60"; None for no such words.
    ``system``: as for ``read_limit``."""
    return _new_kilos(bare_line(text), system)


def new_kilos_till(text: str, system: str = "") -> NewKilos | None:
    """Return the same of words that also say until when: "it's 40 kg till monday, not 60"."""
    line = bare_line(text)
    beside = _TILL.sub("", line, count=1)
    return _new_kilos(beside, system) if beside != line else None


def new_end_beside(text: str, today: date) -> str:
    """Return the end in such words, as ``new_end`` does."""
    return new_end(re.sub(rf"{AMOUNT} ?", "", bare_line(text), count=1), today)


def _new_kilos(line: str, system: str) -> NewKilos | None:
    if not (found := _NEW_KILOS.fullmatch(line)):
        return None
    was = in_kilos(found["not_kg"], found["not_unit"] or found["unit"], system) if found["not_kg"] else None
    unit = found["unit"] or found["not_unit"]
    return NewKilos(in_kilos(found["kg"], unit, system), was, bool(re.search(_OF_A_LIMIT, line)), as_number(found["kg"]) if unit else None)


def in_the_unit(text: str, kg: float, words: str, system: str = "") -> float | None:
    """Return the weight of a limit, in kg, where a message only puts its unit right: "sorry, pounds not kilos"; None for no such message.
    ``kg``: its weight as it was read; ``words``: those that told it; ``system``: as for ``read_limit``."""
    found = _NEW_UNIT.fullmatch(bare_line(text))
    return in_kilos(f"{number_said(kg, words, system)}", found["unit_meant"], system) if found else None


def number_said(kg: float, words: str, system: str = "") -> float:
    """Return the number by which a weight was told: as the words have it, else in the person's own units."""
    said = map(as_number, re.findall(r"\d+(?:[.,]\d+)?", words))
    own = kg / KG_PER_POUND if system == IMPERIAL else kg
    return next((one for one in said if any(abs(one * factor - kg) < _ROUNDED for factor in (1.0, KG_PER_POUND))), round(own, 1))


_ROUNDED: Final = 0.05
"""How far two weights in kg differ at most that are the same, since they are kept rounded."""
