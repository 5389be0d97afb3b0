"""Facts of a clinician's limit as it is told: what its words say, and what stands while it is asked about."""

from __future__ import annotations

import re
from datetime import date
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.conversation.limit_words import ADDED
from companion.conversation.moves import SIGN_MOST
from companion.language.clearances import not_cleared, signs_off
from companion.language.findings import without_the_found
from companion.language.limits import ASKS_END, CLEARED, ToldLimit, by_each, past_end, read_limits, told_more
from companion.language.passed_on import in_whole_words
from companion.language.units import METRIC, shown
from companion.reminders.kinds import LIMIT_ANEW
from companion.screening.limits import WORDS_MOST, Limit, LimitPart, LimitsTold, as_text, limits_in, most_kg, words_of
from companion.screening.readings import NumberFormat

LIMITS: Final = "safety.limits"


def show_in(units: object) -> NumberFormat:
    """Return the number format of a system of units."""
    return lambda value, unit: shown(value, unit, str(units))


def show_to(got: Facts) -> NumberFormat:
    """Return that of the lifter's own units."""
    return show_in(got.get("welcome.units"))


def today_in(got: Facts) -> date:
    """Return the day it is."""
    return date.fromisoformat(str(got["today"]))


def limit_facts(known: Known) -> dict[str, Value]:
    """Return what a telling of limits begins with: the words it was begun with, as "cut" where they may have been, the day and the units
    they are meant in."""
    facts: dict[str, Value] = {"on": date.fromisoformat(str(known.facts["today"])).isoformat(),
                               "units": str(known.facts.get("welcome.units", METRIC))}
    said, cut = known.asked.strip(), len(known.asked) == SIGN_MOST
    if re.fullmatch(ASKS_END, said):
        return facts  # what stands is said
    if not_cleared(said):
        return facts | {"says": "not_cleared"}
    if last := to_add_to(said, known.facts):
        return facts | {"given": told_more(said, today_in(known.facts), str(facts["units"])), "says": "adds", "last_by": last.by,
                        "last_until": last.until.isoformat() if last.until else CLEARED}
    signed = {"says": "signed_off"} if signs_off(said) else {}
    return facts | ({"cut": said} if cut else {"given": said} if said else {}) | signed


def to_add_to(said: str, facts: Facts) -> Limit | None:
    """Return the limit told last today, where words say that something more was told with it; None for no such."""
    last = next((one for one in reversed(limits_in(facts.get(LIMITS))) if LimitPart.OTHER not in one.parts), None)
    today = facts.get(f"{LIMITS}.today") == "yes"
    return last if today and told_more(said, today_in(facts), str(facts.get("welcome.units", METRIC))) else None


def all_said(got: Facts) -> str:
    """Return the words that tell a limit, and what was added since."""
    return str(got.get("words", got.get("given", "")))


def words_told(got: Facts) -> str:
    """Return the words that tell a limit, without what was added since."""
    return all_said(got).split(ADDED)[0]


def units_told(got: Facts) -> str:
    """Return the units that a weight without its unit is meant in."""
    return str(got.get("units", METRIC))


def limits_in_words(got: Facts) -> tuple[ToldLimit, ...]:
    """Return the limits that the words tell: of several, each was read, with its end and the same clinician, or each with its own
    clinician, while an end may be missing."""
    on, units = date.fromisoformat(str(got["on"])), units_told(got)
    return tuple(one for words in by_each(without_the_found(words_told(got))) for one in read_limits(words, on, units))


def tells_several(got: Facts) -> bool:
    """True if the words tell what more than one clinician said."""
    return len(by_each(without_the_found(words_told(got)))) > 1


def _second(got: Facts) -> ToldLimit | None:
    """Return the first of the limits that other clinicians set, after the first one, without an end; None for none."""
    return next((one for one in limits_in_words(got)[1:] if not one.until), None)


def second_end_read(got: Facts, side: str) -> Value:
    """Return "no" where the words tell what more than one clinician said, and not until when what the second did."""
    return "no" if _second(got) else "yes"


def first_told(got: Facts, side: str) -> Value:
    """Return a line that says of which limit the end is asked for, where more than one clinician set one; "" for no need."""
    first, *_ = limits_in_words(got)
    return f"First what {first.by} said: {_read(first).left_out(show_to(got))}. " if tells_several(got) and not first.until else ""


def second_told(got: Facts, side: str) -> Value:
    """Return the same of the next one."""
    second = _second(got)
    return f"Then what {second.by} said: {_read(second).left_out(show_to(got))}." if second else ""


def _read(told: ToldLimit) -> Limit:
    return Limit(frozenset(map(LimitPart, told.parts)), told.kg, elsewhere=told.elsewhere)


def how_read(got: Facts, side: str) -> Value:
    """Return "all" where the words were understood, "none" where they say that there is no limit, else "part"."""
    first, *_ = limits_in_words(got)
    return "none" if first.none else "all" if first.read else "part"


def end_read(got: Facts, side: str) -> Value:
    """Return "yes" if the words say until when."""
    first, *_ = limits_in_words(got)
    return "yes" if first.until else "no"


def past_read(got: Facts, side: str) -> Value | None:
    """Return the end that the words name where it was lately; None for none, or where they leave out more than one thing."""
    first, *_ = limits_in_words(got)
    one = first.read and len(first.parts) + (first.kg is not None) == 1 and not tells_several(got)
    return (past_end(words_told(got), date.fromisoformat(str(got["on"]))) if one else "") or None


def who_read(got: Facts, side: str) -> Value:
    """Return "yes" if the words say who said so."""
    first, *_ = limits_in_words(got)
    return "yes" if first.by else "no"


def until_of(end: str) -> date | None:
    """Return an end as a day; None where it has none."""
    return date.fromisoformat(end) if end not in {"", CLEARED} else None


def told_words(got: Facts, side: str) -> Value:
    """Return the words that told it."""
    return all_said(got)


def same_words(got: Facts, side: str) -> Value:
    """Return in words who said what was told last, and until when."""
    until = until_of(str(got.get("last_until", CLEARED)))
    return f"{got.get('last_by') or 'the same clinician'} say that too, {Limit(frozenset(), until=until).end}"


UNSAID: Final = "not said yet"
"""The words of a limit of which nothing was said but that there is one."""


def open_limit(got: Facts) -> Limit:
    """Return what stands for a limit until the questions about it are answered: it closes everything that moves."""
    words = words_told(got) or str(got.get("cut", "")) or UNSAID
    return Limit(frozenset((LimitPart.OTHER,)), words=in_whole_words(words, WORDS_MOST))


def standing_beside(got: Facts) -> LimitsTold:
    """Return what stands now beside this telling, whenever it was told: all but what its own open questions close."""
    said = (str(got[key]).split(ADDED)[0] for key in ("words", "given", "cut") if key in got)
    own = {in_whole_words(words, WORDS_MOST) for words in said} | {UNSAID}
    return tuple(one for one in limits_in(got.get(LIMITS)) if one.words not in own or not one.asked_about)


def limits_open(got: Facts, side: str) -> Value:
    """Return what stands until the questions are answered."""
    return as_text((*standing_beside(got), open_limit(got)))


def limits_beside(got: Facts, side: str) -> Value:
    """Return what stands where nothing of this telling does."""
    return as_text(standing_beside(got))


def words_beside(got: Facts, side: str) -> Value:
    """Return in words what stands beside this telling, or what its own questions close where that is all."""
    return words_of(standing_beside(got) or limits_in(got.get(LIMITS)), show_to(got))


def left_open(got: Facts, side: str) -> Value:
    """Return what holds where the questions are left open, in words."""
    limits = limits_in(got.get(LIMITS))
    if limits != standing_beside(got):
        return ("Until you have told me what it is, I take it that nothing that moves is allowed, and a coach of yours sees that. Say “my "
                "limits” to go on.")
    return f"What stands: {words_of(limits, show_to(got))}." if limits else "Nothing is noted."


def kilos_of(limits: LimitsTold) -> str:
    """Return the most to lift under limits, in kg; "" for no number."""
    most = most_kg(limits)
    return "" if most is None else f"{most:g}"


def next_asked(limits: LimitsTold, got: Facts) -> str | None:
    """Return the next date on which a limit is asked about: one without a date in some weeks; None where there is none."""
    some = (today_in(got) + LIMIT_ANEW).isoformat()
    return min((one.until.isoformat() if one.until else some for one in limits), default=None)
