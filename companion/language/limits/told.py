"""Limits as words tell them: what to leave out, until when, and who said so; one or several of a message, and what is added after."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from typing import Final

from companion.language.limits.amounts import kilos_in
from companion.language.limits.clinicians import A_CLINICIAN, UNTIL_CLEARED, clinicians_in, who_said
from companion.language.limits.ends import CLEARED, end_in, ends_in
from companion.language.limits.parts import forbids, parts_left_out, sets_none
from companion.language.limits.put_right import new_end_beside, new_kilos, new_kilos_till
from companion.language.limits.spelling import bare_line, only_the_limit, well_spelt


@dataclass(frozen=True, slots=True)
class ToldLimit:
    """A limit as it was read. ``parts``: ids as in ``screening.limits.LimitPart``; ``kg``: nothing above it. ``until``: a date as text,
    ``CLEARED``, or "" where none was read. ``by``: who said so, "" unread. ``rest``: words that were not understood. ``none``: that
    there is no limit. ``elsewhere``: what the part of that name is, in its words: "jumping or twisting"."""

    parts: frozenset[str] = frozenset()
    kg: float | None = None
    until: str = ""
    by: str = ""
    rest: str = ""
    none: bool = False
    elsewhere: str = ""

    @property
    def read(self) -> bool:
        """True if it says what to leave out, and all of it was understood."""
        return bool(self.parts or self.kg is not None) and not self.rest


@lru_cache(64)
def read_limit(text: str, today: date, system: str = "") -> ToldLimit:
    """Return what words say of a limit. ``system``: the lifter's units, for a weight without its unit."""
    if sets_none(text):
        return ToldLimit(none=True)
    by, line = who_said(f" {only_the_limit(text)} ")
    if (kilos := new_kilos_till(text, system)) and (end := new_end_beside(text, today)):
        return ToldLimit(kg=kilos.kg, until=end, by=by)
    until, line = end_in(line, today)
    ends = [until, *ends_in(line, today)]  # of two, the later: one is kept; the words of the second are left, so that the parts are asked
    until = CLEARED if CLEARED in ends else max(ends)
    kg, line = kilos_in(line, system)
    parts, elsewhere, rest = parts_left_out(line)
    return ToldLimit(parts, kg, until, by, rest, elsewhere=elsewhere)


@lru_cache(64)
def read_limits(text: str, today: date, system: str = "") -> tuple[ToldLimit, ...]:
    """Return the limits that words tell: one for each end, where every end follows what it is the end of, "no squats for 2 weeks and no
    bending for 4", and one clinician said so; else what ``read_limit`` makes of them, which is asked about where they name two ends.
    ``system``: as there."""
    whole = (read_limit(text, today, system),)
    by, line = who_said(f" {only_the_limit(text).replace(_PLACE, '')} ")
    ends = list[str]()
    while (found := end_in(line, today, f" {_PLACE}{len(ends)}{_PLACE} , "))[0]:
        ends.append(found[0])
        line = found[1]
    *told, last = re.split(rf"{_PLACE}(\d+){_PLACE}", line)
    limits = dict[str, ToldLimit]()
    for said, place in zip(told[::2], map(int, told[1::2]), strict=True):
        kg, left = kilos_in(said, system)
        parts, elsewhere, rest = parts_left_out(left)
        one = ToldLimit(parts, kg, ends[place], by, rest, elsewhere=elsewhere)
        again = any(parts & before.parts or None not in (kg, before.kg) for before in limits.values())
        if again or not one.read:
            return whole
        limits[one.until] = _both(limits[one.until], one) if one.until in limits else one
    kg, left = kilos_in(last, system)
    more = kg is not None or parts_left_out(left) != (frozenset(), "", "")
    return whole if more or not limits or len(clinicians_in(text)) > 1 else tuple(limits.values())


_PLACE: Final = "\ue000"
"""What the place of an end is marked with, which nobody types."""


def _both(one: ToldLimit, other: ToldLimit) -> ToldLimit:
    return replace(one, parts=one.parts | other.parts, kg=other.kg if one.kg is None else one.kg,
                   elsewhere=" or ".join(filter(None, (one.elsewhere, other.elsewhere))))


def by_each(text: str) -> list[str]:
    """Return the parts of a message in each of which another clinician says what to leave out, "my doctor said no squats and my physio said
    no stretching", in normal form; the message alone where that is not so."""
    return list(_grouped(well_spelt(text))) or [text]


@lru_cache(64)
def _grouped(line: str) -> tuple[str, ...]:
    groups, whose, closed = [""], [""], False
    for part in _PARTS_OF_IT.split(line):
        if not part.strip(" ,.;"):
            groups[-1] += part
            continue
        named = clinicians_in(UNTIL_CLEARED.sub(" ", part))
        if len(named) > 1:
            return ()
        who = named[0] if named else ""
        if (who and whose[-1] and who != whose[-1]) or (not who and closed):
            groups.append("")
            whose.append("")
        closed = bool(who and groups[-1]) and not parts_left_out(who_said(f" {part} ")[1])[0]  # "no squats, said my doctor"
        groups[-1] += part
        whose[-1] = who or whose[-1]
    told = [group.strip(" ,.;") for group in groups]
    reads = [read_limit(group, _ANY_DAY) for group in told]
    each = len(told) > 1 and len(set(whose)) == len(whose) and all(one.by and one.read for one in reads)
    return tuple(re.sub(r"^(?:and|but|plus|then)\b,? ", "", group) for group in told) if each else ()


_PARTS_OF_IT: Final = re.compile(r"(?<=[,.;] )|(?= (?:and|but|plus)\b)")


def told_more(text: str, today: date, system: str = "") -> str:
    """Return what a message adds to the limit told before it, "oh and no bending either", as it would be told by itself; "" for none."""
    line = bare_line(text)
    said = _TOO.sub("", _AND.sub("", _ALSO_SAID.sub(r"and \1 ", line)))
    told = read_limit(said, today, system)
    return said if said != line and told.read and forbids(said) else ""


_LEADS_ON: Final = r"(?:(?:no|nope|oh|ah|um|sorry|wait|yes|yeah|i forgot|forgot|right|ok)[,:]* )*"
_AND: Final = re.compile(rf"^{_LEADS_ON}(?:and|also|plus|another thing|one more thing|additionally)[,:]*(?: also)? ")
_ALSO_SAID: Final = re.compile(rf"^{_LEADS_ON}(?:and )?((?:(?:my |the )?(?:{A_CLINICIAN})|he|she|they)(?: has)?) also ")
_TOO: Final = re.compile(r"(?:,? (?:either|too|as well|also))+$")
TOLD_MORE: Final = (rf"{_LEADS_ON}(?:(?:and|also|plus|another thing|one more thing|additionally)[,:]* .+|"
                    rf"(?:(?:my |the )?(?:{A_CLINICIAN})|he|she|they)(?: has)? also .+|"
                    r"(?:no|not|nothing|don't|dont|avoid) .+,? (?:either|too|as well|also))")
"""Whole messages that may add to the limit told before them, as a pattern; ``told_more`` reads them."""


def sets_one(text: str, today: date) -> bool:
    """True if words say what to leave out and also until when, or who said so: they are no wish."""
    told = read_limit(text, today)
    return bool(told.parts or told.kg is not None) and bool(told.by or told.until)


def kilos_alone(text: str, system: str = "") -> str:
    """Return the weight of a sentence that tells of nothing else, in kg and as it would be typed; "" for none. ``system``: as there."""
    told = read_limit(text, _ANY_DAY, system)
    return f"{told.kg} kg" if told.read and told.kg is not None and not told.parts else ""


_ANY_DAY: Final = date(2000, 1, 1)


def only_part(text: str) -> str:
    """Return the one thing that a sentence says to leave out: a part, "kg" for what is above a weight, "" where it tells none, or more."""
    told = read_limit(text, _ANY_DAY)  # its end is not asked for
    if new_kilos(text) or new_kilos_till(text):
        return "kg"
    parts = [*told.parts, *(["kg"] if told.kg is not None else [])]
    return parts[0] if told.read and len(parts) == 1 else ""
