"""Facts of the conversations about a clinician's limits: what was read, what was tapped, what stands then."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from datetime import date, timedelta
from functools import lru_cache
from typing import Final, NamedTuple

from companion.conversation.aims import SAID_OVER
from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.conversation.limit_words import ADDED
from companion.conversation.moves import SAID_MOST
from companion.language.clearances import and_limit, is_today, may_be_another, not_cleared, raises, read_clearance, signs_off
from companion.language.findings import without_the_found
from companion.language.limits import (
    CLEARED,
    NEW_END,
    NEW_KILOS,
    NEW_KILOS_TILL,
    NEW_KILOS_UNIT,
    NEW_UNIT,
    TOLD_MORE,
    ToldLimit,
    by_each,
    in_the_unit,
    new_end,
    new_kilos,
    new_kilos_till,
    number_said,
    parts_named,
    past_end,
    read_limit,
    read_limits,
    says_longer,
    sets_none,
    still_until,
    told_more,
)
from companion.language.passed_on import in_whole_words
from companion.language.units import METRIC, shown
from companion.reminders.kinds import LIMIT_ANEW
from companion.screening.limits import STRETCHES, WORDS_MOST, Limit, LimitPart, LimitsTold, as_text, limits_in, most_kg, without, words_of
from companion.screening.load_limit import ROUNDING
from companion.screening.readings import NumberFormat
from companion.screening.sources import value
from flows.cleared_by import CLEARED_SAID, who_and_when
from flows.safety_facts import CLEARED_FOR

LIMITS: Final = "safety.limits"
ASKED_AGAIN: Final = timedelta(days=value("limit_asked"))
"""After this a limit is asked about again where somebody is not sure whether it is over; our choice."""

WHO: Final = {"doctor": "a doctor", "physio": "a physiotherapist", "surgeon": "a surgeon", "other": "somebody else"}
_PICKS: Final = ("what", "also", "also_2")
NO_MORE: Final = ("none", "training", "other")
"""After one of these nothing more is asked to be left out."""
_TOLD: Final = ("words", "given", "on", "units", *_PICKS, "which", "kg", "until", "until_2", "by", "same", "last_by", "last_until")


def show_in(units: object) -> NumberFormat:
    """Return the number format of a system of units."""
    return lambda value, unit: shown(value, unit, str(units))


def _show(got: Facts) -> NumberFormat:
    return show_in(got.get("welcome.units"))


def _today(got: Facts) -> date:
    return date.fromisoformat(str(got["today"]))


# what was told ----------------------------------------------------------------------------------------------


def limit_facts(known: Known) -> dict[str, Value]:
    """Return what a telling of limits begins with: the words it was begun with, as "cut" where they may have been, the day and the units
    they are meant in."""
    facts: dict[str, Value] = {"on": date.fromisoformat(str(known.facts["today"])).isoformat(),
                               "units": str(known.facts.get("welcome.units", METRIC))}
    said, cut = known.asked.strip(), len(known.asked) == SAID_MOST
    if not_cleared(said):
        return facts | {"says": "not_cleared"}
    if last := _to_add_to(said, known.facts):
        return facts | {"given": told_more(said, _today(known.facts), str(facts["units"])), "says": "adds", "last_by": last.by,
                        "last_until": last.until.isoformat() if last.until else CLEARED}
    signed = {"says": "signed_off"} if signs_off(said) else {}
    return facts | ({"cut": said} if cut else {"given": said} if said else {}) | signed


def _to_add_to(said: str, facts: Facts) -> Limit | None:
    """Return the limit told last today, where words say that something more was told with it; None for no such."""
    last = next((one for one in reversed(limits_in(facts.get(LIMITS))) if LimitPart.OTHER not in one.parts), None)
    today = facts.get(f"{LIMITS}.today") == "yes"
    return last if today and told_more(said, _today(facts), str(facts.get("welcome.units", METRIC))) else None


def _said(got: Facts) -> str:
    return str(got.get("words", got.get("given", "")))


def _words(got: Facts) -> str:
    """Return the words that tell a limit, without what was added since."""
    return _said(got).split(ADDED)[0]


def _units(got: Facts) -> str:
    return str(got.get("units", METRIC))


def _told(got: Facts) -> tuple[ToldLimit, ...]:
    """Return the limits that the words tell: of several, each was read, with its end and the same clinician, or each with its own
    clinician, while an end may be missing."""
    on, units = date.fromisoformat(str(got["on"])), _units(got)
    return tuple(one for words in by_each(without_the_found(_words(got))) for one in read_limits(words, on, units))


def _several(got: Facts) -> bool:
    return len(by_each(without_the_found(_words(got)))) > 1


def _second(got: Facts) -> ToldLimit | None:
    """Return the first of the limits that other clinicians set, after the first one, without an end; None for none."""
    return next((one for one in _told(got)[1:] if not one.until), None)


def second_end_read(got: Facts, side: str) -> Value:
    """Return "no" where the words tell what more than one clinician said, and not until when what the second did."""
    return "no" if _second(got) else "yes"


def first_told(got: Facts, side: str) -> Value:
    """Return a line that says of which limit the end is asked for, where more than one clinician set one; "" for no need."""
    first, *_ = _told(got)
    return f"First what {first.by} said: {_read(first).left_out(_show(got))}. " if _several(got) and not first.until else ""


def second_told(got: Facts, side: str) -> Value:
    """Return the same of the next one."""
    second = _second(got)
    return f"Then what {second.by} said: {_read(second).left_out(_show(got))}." if second else ""


def _read(told: ToldLimit) -> Limit:
    return Limit(frozenset(map(LimitPart, told.parts)), told.kg, elsewhere=told.elsewhere)


class PutRight(NamedTuple):
    """One thing that words put right of a limit that stands, and no more: "end", until when it holds; "lower", its weight; "kept", its
    weight, to one that is not lower, so that it stays. ``before``: that as it was, in words."""

    what: str
    old: Limit
    new: Limit
    before: str


def _weighed_anew(words: str, units: str, standing: LimitsTold) -> PutRight | None:
    """Return the weight that words only put right: of the limit whose weight they take back, or say again with another unit, else, where
    they say that they are of a limit, of the one told last with a weight; None for no such. A unit alone is that of the one told last."""
    weighed = {one: one.kg for one in reversed(standing) if one.kg is not None}
    kilos, old = None, next(iter(weighed), None)
    if told := new_kilos(words, units):
        was = [one for one, kg in weighed.items() if told.was is not None and abs(told.was - kg) < ROUNDING]
        was = was or [one for one, kg in weighed.items() if told.number == number_said(kg, one.words, units)]
        kilos, old = told.kg, next(iter(was or (weighed if told.named else ())), None)
    elif old:
        kilos = in_the_unit(words, weighed[old], old.words, units)
    if old is None or kilos is None:
        return None
    return PutRight("lower" if kilos < weighed[old] else "kept", old, replace(old, kg=kilos), shown(weighed[old], "kg", units))


def _put_right(got: Facts) -> PutRight | None:
    """Return what the words only put right; None for nothing. An end is that of the limit told last. Once they say that what stands is
    wrong, a weight is told anew."""
    words, standing = _words(got), _standing(got)
    if got.get("now") != "wrong" and (found := _weighed_anew(words, _units(got), standing)):
        return found
    last = next((one for one in reversed(standing) if LimitPart.OTHER not in one.parts), None)
    on = date.fromisoformat(str(got["on"]))
    since = max(on, last.until) if last and last.until and says_longer(words) else on
    if last and (end := new_end(words, since)):
        first, *_ = _told(got)
        until = _until(str(got.get("until", end)))
        if first.by and last.by and first.by != last.by and replace(last, until=until).sooner_than(last):
            return None  # another clinician's word
        return PutRight("end", last, replace(last, until=until, by=first.by or last.by, asked=False), last.end)
    return None


def may_clear(asked: str, facts: Facts) -> bool:
    """True if words may begin a clearance: those that raise a weight may where one stands."""
    return not raises(asked) or most_kg(limits_in(facts.get(LIMITS))) is not None


def may_put_right(asked: str, facts: Facts) -> bool:
    """True if words may begin the telling of a limit: that they are not cleared may where what they name is closed; those that only put an
    end or a weight right may where such a limit stands. A weight alone, "its 40, not 60", may be the answer to a test that is open; one
    that says that it is a limit is also one by itself. One with another unit, "i meant 40 lb", is of a limit on the day of its telling."""
    if re.fullmatch(TOLD_MORE, asked):
        return facts.get(SAID_OVER, "limits") == "limits" and _to_add_to(asked, facts) is not None
    if not_cleared(asked):
        standing = limits_in(facts.get(LIMITS))
        return bool(standing) and parts_named(asked) <= {part.value for one in standing for part in one.parts}
    if re.fullmatch(NEW_END, asked):
        return bool(facts.get("limit.words") and new_end(asked, _today(facts)))
    units = str(facts.get("welcome.units", METRIC))
    if (beside := new_kilos_till(asked, units)) and re.fullmatch(NEW_KILOS_TILL, asked):
        return any(one.kg is not None for one in limits_in(facts.get(LIMITS))) or beside.named
    told = new_kilos(asked, units) if re.fullmatch(NEW_KILOS, asked) else None
    if told is None and (re.fullmatch(NEW_UNIT, asked) or re.fullmatch(NEW_KILOS_UNIT, asked)):
        here = facts.get(SAID_OVER, "limits") == "limits" and facts.get(f"{LIMITS}.today") == "yes"
        return here and _weighed_anew(asked, units, limits_in(facts.get(LIMITS))) is not None
    if told is None:
        return True
    if _weighed_anew(asked, units, limits_in(facts.get(LIMITS))):
        return told.named or facts.get(SAID_OVER, "limits") == "limits"
    return told.named and read_limit(asked, _today(facts), units).read


def how_read(got: Facts, side: str) -> Value:
    """Return "all" where the words were understood, "none" where they say that there is no limit, else "part"."""
    first, *_ = _told(got)
    return "none" if first.none else "all" if first.read else "part"


def right_read(got: Facts, side: str) -> Value | None:
    """Return what the words only put right of a limit that stands: "end", "lower" or "kept"; None for nothing."""
    found = _put_right(got)
    return found.what if found else None


def end_read(got: Facts, side: str) -> Value:
    """Return "yes" if the words say until when."""
    first, *_ = _told(got)
    return "yes" if first.until else "no"


def past_read(got: Facts, side: str) -> Value | None:
    """Return the end that the words name where it was lately; None for none, or where they leave out more than one thing."""
    first, *_ = _told(got)
    one = first.read and len(first.parts) + (first.kg is not None) == 1 and not _several(got)
    return (past_end(_words(got), date.fromisoformat(str(got["on"]))) if one else "") or None


def who_read(got: Facts, side: str) -> Value:
    """Return "yes" if the words say who said so."""
    first, *_ = _told(got)
    return "yes" if first.by else "no"


def _limits(got: Facts) -> LimitsTold:
    """Return what was told so far: what was tapped stands in place of what was read."""
    if found := _put_right(got):
        return (found.new,)
    return _limits_of(*map(got.get, _TOLD))


def _until(end: str) -> date | None:
    return date.fromisoformat(end) if end not in {"", CLEARED} else None


@lru_cache  # one step asks for it four times
def _limits_of(*values: Value | None) -> LimitsTold:
    got = {name: value for name, value in zip(_TOLD, values, strict=True) if value is not None}
    told = _told(got)
    limits = [_limit_of(one, got) for one in (told[:1] if "what" in got or _several(got) else told)]
    if "what" not in got and _several(got):  # each with its own clinician and end
        then = {**got, "until": got.get("until_2", CLEARED)}
        limits += [_limit_of(one, {**got, "until": one.until} if one.until else then) for one in told[1:]]
    for words in _said(got).split(ADDED)[1:]:
        for more in read_limits(words, date.fromisoformat(str(got["on"])), _units(got)):
            limits[-1:] = _added(limits[-1], more)
    return tuple(limits)


def _added(last: Limit, more: ToldLimit) -> LimitsTold:
    """Return a limit with what was added to it: one more where that has another end, or somebody else said so."""
    until, by = _until(more.until) if more.until else last.until, more.by or last.by
    new = replace(last, parts=frozenset(map(LimitPart, more.parts)), kg=more.kg, until=until, by=by, elsewhere=more.elsewhere)
    if (until, by) != (last.until, last.by):
        return last, new
    kilos = [kg for kg in (last.kg, new.kg) if kg is not None]
    return (replace(last, parts=last.parts | new.parts, kg=min(kilos, default=None),
                    elsewhere=" or ".join(filter(None, (last.elsewhere, new.elsewhere)))),)


def _limit_of(told: ToldLimit, got: Facts) -> Limit:
    picks, kg = list(_picked(got)), got.get("kg")
    kilos = kg if isinstance(kg, float) else None
    if picks:
        parts = {LimitPart(pick) for pick in picks if pick in {part.value for part in LimitPart}}
        if "stretching" in picks:
            which = str(got.get("which", "all"))
            parts |= set(STRETCHES) if which == "all" else {LimitPart(which)}
        kilos = kilos if "kg" in picks else None
    else:
        parts = set(map(LimitPart, told.parts))
        kilos = told.kg if kilos is None else kilos
        if not told.read:
            parts.add(LimitPart.OTHER)
    same = got if got.get("same") == "yes" else {}
    return Limit(frozenset(parts), kilos, _until(str(got.get("until") or told.until or same.get("last_until", ""))),
                 WHO.get(str(got.get("by")), told.by or str(same.get("last_by", ""))), in_whole_words(_words(got), WORDS_MOST),
                 "" if picks else told.elsewhere)


def _picked(got: Facts) -> Iterator[str]:
    """Yield what was tapped; where it was tapped anew, without what was tapped before and is not asked for now."""
    for key in _PICKS:
        if (pick := got.get(key)) in (None, "enough"):
            return
        yield str(pick)
        if pick in NO_MORE:
            return


def _with(limits: LimitsTold, new: LimitsTold) -> LimitsTold:
    """Return what stands with new limits; one that is said again, with all its parts and no higher weight, is replaced, and so is one of
    these words that could not be read."""
    return *(one for one in limits if not any(_replaces(told, one) for told in new)), *new


def _replaces(new: Limit, one: Limit) -> bool:
    if new.sooner_than(one) and new.by and one.by and new.by != one.by:  # another clinician's word ends nothing before its time
        return False
    no_more = one.kg is None or (new.kg is not None and new.kg <= one.kg)
    again = one.parts <= new.parts and no_more and one.elsewhere in {"", new.elsewhere}
    return again or (one.words == new.words and one.parts == {LimitPart.OTHER})


UNSAID: Final = "not said yet"
"""The words of a limit of which nothing was said but that there is one."""


def _open(got: Facts) -> Limit:
    """Return what stands for a limit until the questions about it are answered: it closes everything that moves."""
    words = _words(got) or str(got.get("cut", "")) or UNSAID
    return Limit(frozenset((LimitPart.OTHER,)), words=in_whole_words(words, WORDS_MOST))


def _standing(got: Facts) -> LimitsTold:
    """Return what stands now beside this telling, whenever it was told: all but what its own open questions close."""
    said = (str(got[key]).split(ADDED)[0] for key in ("words", "given", "cut") if key in got)
    own = {in_whole_words(words, WORDS_MOST) for words in said} | {UNSAID}
    return tuple(one for one in limits_in(got.get(LIMITS)) if one.words not in own or one != Limit(
        frozenset((LimitPart.OTHER,)), words=one.words))


_SETS_NONE: Final = {"what": ("none",), "now": ("fine", "cleared", "over"), "past": ("over",), "says": ("not_cleared",), "same": ("no",),
                     "signed_off": ("cleared", "neither")}
"""Answers after which this telling sets no limit."""


def _then(got: Facts) -> LimitsTold:
    """Return what stands once this telling is over: what stood, without it where it was wrong, and the limit told, if any. Nothing is
    taken away by words that name no limit, unless nobody had ever told them what stood."""
    if found := _put_right(got):
        return tuple(found.new if one == found.old and found.what != "kept" else one for one in _standing(got))
    sets = how_read(got, "") != "none" and not any(got.get(key) in values for key, values in _SETS_NONE.items())
    if not sets:
        return () if got.get("never") == "yes" else _standing(got)
    return _with(() if got.get("now") == "wrong" else _standing(got), _limits(got))


def limits_open(got: Facts, side: str) -> Value:
    """Return what stands until the questions are answered."""
    return as_text((*_standing(got), _open(got)))


def limits_beside(got: Facts, side: str) -> Value:
    """Return what stands where nothing of this telling does."""
    return as_text(_standing(got))


def words_beside(got: Facts, side: str) -> Value:
    """Return in words what stands beside this telling, or what its own questions close where that is all."""
    return words_of(_standing(got) or limits_in(got.get(LIMITS)), _show(got))


def limits_then(got: Facts, side: str) -> Value:
    """Return what stands once this telling is over."""
    return as_text(_then(got))


def stands_then(got: Facts, side: str) -> Value | None:
    """Return that in words; None for nothing."""
    return words_of(_then(got), _show(got)) or None


def left_open(got: Facts, side: str) -> Value:
    """Return what holds where the questions are left open, in words."""
    limits = limits_in(got.get(LIMITS))
    if limits != _standing(got):
        return ("Until you have told me what it is, I take it that nothing that moves is allowed, and a coach of yours sees that. Say “my "
                "limits” to go on.")
    return f"What stands: {words_of(limits, _show(got))}." if limits else "Nothing is noted."


def understood(got: Facts, side: str) -> Value:
    """Return what was told, in words."""
    return words_of(_limits(got), _show(got))


def before_right(got: Facts, side: str) -> Value | None:
    """Return in words what is put right, as it was: an end or a weight; None where nothing is."""
    found = _put_right(got)
    return found.before if found else None


def sooner(got: Facts, side: str) -> Value:
    """Return a sentence that says which end what was told would bring forward, or, told with more weight, which limit still stands; ""
    for neither."""
    told, standing = _limits(got), _standing(got)
    if gone := [one for one in standing if any(_replaces(new, one) and new.sooner_than(one) for new in told)]:
        return f" That is sooner than what stands: {gone[0].end}."
    least, most = most_kg(standing), most_kg(told)
    if least is None or most is None or least >= most or got.get("now") == "wrong":
        return ""
    stands = words_of([one for one in standing if most_kg((one,)) == least], _show(got))
    return f" Less still stands beside it: {stands}. If they raised that, say “cleared” after this."


def kilos_told(got: Facts, side: str) -> Value | None:
    """Return the weight of what was told, in kg; None where it names none."""
    return next((one.kg for one in _limits(got) if one.kg is not None), None)


def told_words(got: Facts, side: str) -> Value:
    """Return the words that told it."""
    return _said(got)


def same_words(got: Facts, side: str) -> Value:
    """Return in words who said what was told last, and until when."""
    until = _until(str(got.get("last_until", CLEARED)))
    return f"{got.get('last_by') or 'the same clinician'} say that too, {Limit(frozenset(), until=until).end}"


def left_out(got: Facts, side: str) -> Value:
    """Return in words what was told to leave out, without its end."""
    return "; ".join(one.left_out(_show(got)) for one in _limits(got))


def kilos_then(got: Facts, side: str) -> Value:
    """Return the most to lift once this telling is over, in kg; "" for no number."""
    return _kilos(_then(got))


def end_then(got: Facts, side: str) -> Value | None:
    """Return the next date on which a limit is asked about; None where none has a date."""
    return _next_end(_then(got))


def _kilos(limits: LimitsTold) -> str:
    most = most_kg(limits)
    return "" if most is None else f"{most:g}"


def _next_end(limits: LimitsTold) -> str | None:
    return min((one.until.isoformat() for one in limits if one.until), default=None)


def _next_asked(limits: LimitsTold, got: Facts) -> str | None:
    """Return the next date on which a limit is asked about: one without a date in some weeks; None where there is none."""
    some = (_today(got) + LIMIT_ANEW).isoformat()
    return min((one.until.isoformat() if one.until else some for one in limits), default=None)


def asked_then(got: Facts, side: str) -> Value | None:
    """Return that date once this telling is over."""
    return _next_asked(_then(got), got)


# when its date has come -------------------------------------------------------------------------------------


def over_facts(known: Known) -> dict[str, Value]:
    """Return the limits whose date has come, and the rest."""
    limits, today = limits_in(known.facts.get(LIMITS)), date.fromisoformat(str(known.facts["today"]))
    due = tuple(one for one in limits if one.due(today))
    show = show_in(known.facts.get("welcome.units"))
    waits = words_of((one for one in limits if one.until is None), show)
    return {"due": "yes" if due else "no", "due_words": words_of(due or (one for one in limits if one.until is None), show),
            **({"waits_words": waits} if waits and not due else {})}


def end_given(got: Facts, side: str) -> Value | None:
    """Return until when it is still on, where the answer itself says so; None where it does not."""
    return still_until(str(got.get("over_said", "")), _today(got)) or None


def _after(got: Facts) -> LimitsTold:
    """Return what stands after the question: "not sure" keeps a limit and asks again, "still on" until the date given then."""
    limits, today, answer = limits_in(got.get(LIMITS)), _today(got), got.get("over")
    if answer == "over":
        return tuple(one for one in limits if not one.due(today))
    end = str(got.get("until") or end_given(got, "") or CLEARED) if answer == "still" else (today + ASKED_AGAIN).isoformat()
    until = None if end == CLEARED else date.fromisoformat(end)
    return tuple(replace(one, until=until, asked=answer != "still") if one.due(today) else one for one in limits)


def limits_after(got: Facts, side: str) -> Value:
    """Return what stands after the question whether a limit is over."""
    return as_text(_after(got))


def after_words(got: Facts, side: str) -> Value:
    """Return in words what stands of the limits whose date had come."""
    before, today = limits_in(got.get(LIMITS)), _today(got)
    return words_of((new for old, new in zip(before, _after(got), strict=False) if old.due(today)), _show(got))


def kilos_after(got: Facts, side: str) -> Value:
    """Return the most to lift after it, in kg; "" for no number."""
    return _kilos(_after(got))


def asked_after(got: Facts, side: str) -> Value | None:
    """Return the next date on which a limit is asked about after it; None where none stands."""
    return _next_asked(_after(got), got)


# a clearance ------------------------------------------------------------------------------------------------

_CLEARED_FOR: Final = {"all": frozenset(LimitPart), "lifting": frozenset((LimitPart.LOAD,)), "squats": frozenset((LimitPart.SQUATS,)),
                       "bending": frozenset((LimitPart.BENDING,)), "stretching": frozenset(STRETCHES)}
_FOR_WORDS: Final = {"all": "everything", "lifting": "lifting weights"}


def clearance_facts(known: Known) -> dict[str, Value]:
    """Return what stands before a clearance, what the words it was begun with clear, and these words where they also set a limit, with
    what stands until that is asked about."""
    said, beside = and_limit(known.asked, _today(known.facts))
    raised, who = raises(known.asked), read_clearance(said).who
    limit = f"{f'{who} said ' if who else ''}nothing over {raised}" if raised else known.asked
    own = _open({"given": limit})  # where it was said before
    limits = tuple(one for one in limits_in(known.facts.get(LIMITS)) if not beside or one != own)
    facts: dict[str, Value] = {"before": as_text(limits), "before_words": words_of(limits, _show(known.facts)),
                               "stand": "yes" if limits else "no"}
    waits = str(known.facts.get("safety.level", "go")) in ("clinician", "same_day", "emergency") or (
        known.facts.get("safety.body_first") == "yes")
    facts["waits"] = "yes" if limits or waits else "no"
    facts["told_today"] = "yes" if any(known.facts.get(f"safety.{one}.today") == "yes" for one in ("limits", "level")) else "no"
    named = {LimitPart(one) for one in parts_named(said)}
    read = next((name for name, parts in _CLEARED_FOR.items() if named == parts), "lifting" if raised else "")
    return facts | ({"for_read": read} if read else {}) | ({CLEARED_SAID: said} if said else {}) | (
        {"limit_said": limit, "with_said": as_text((*limits, own))} if beside else {})


def is_newer(got: Facts, side: str) -> Value:
    """Return "yes" where they were cleared today, and what stood was told on an earlier day."""
    return "yes" if is_today(str(who_and_when(got, side))) and got.get("told_today") == "no" else "no"


def limits_told(got: Facts, side: str) -> Value | None:
    """Return the words that set a limit beside a clearance, with it or asked for after it; None for none."""
    return got.get("limit_said", got.get("limits"))


def after_what(got: Facts, side: str) -> Value:
    """Return the question whether what stands was known to whoever cleared them."""
    stands = got.get("before_words")
    return (f"You were told this: {stands}. Did they clear you after that?" if stands else
            "Did they clear you after what you told me, so that they knew of it?")


def _for(got: Facts) -> str:
    return str(got.get("cleared_for", got.get("for_read", "all")))


def cleared_words(got: Facts, side: str) -> Value:
    """Return what somebody was cleared for, in words."""
    words, kept = _FOR_WORDS.get(_for(got), _for(got)), _kept(got)
    return f"{words}, though not of what stays: {words_of(kept, _show(got))}" if kept else words


def cleared_to_load(got: Facts, side: str) -> Value:
    """Return "yes" if weights are cleared."""
    return "yes" if _for(got) in ("all", "lifting") and not _kept(got) else "no"


def _cleared(got: Facts, limits: Iterable[Limit]) -> LimitsTold:
    name = _for(got)
    return without(limits, _CLEARED_FOR[name], load=name in ("all", "lifting"))


def _of_it(got: Facts) -> LimitsTold:
    """Return the limits that a clearance is of, wholly or in part."""
    return tuple(one for one in limits_in(got.get("before")) if _cleared(got, (one,)) != (one,))


def _of_others(got: Facts) -> LimitsTold:
    """Return those of them that another clinician set than gave the clearance, or may have."""
    who = str(who_and_when(got, ""))
    return tuple(one for one in _of_it(got) if one.by and may_be_another(who, one.by))


def _kept(got: Facts) -> LimitsTold:
    """Return what another clinician set and stays, as whoever cleared them may not have known of it."""
    return () if got.get("agreed") == "yes" else _of_others(got)


def set_by_others(got: Facts, side: str) -> Value | None:
    """Return in words what a clearance is of and another clinician set, or may have; None for nothing."""
    return words_of(_of_others(got), _show(got)) or None


def lifts_some(got: Facts, side: str) -> Value:
    """Return "no" where all that a clearance is of stays."""
    kept = _kept(got)
    return "no" if kept and kept == _of_it(got) else "yes"


def _left(got: Facts) -> LimitsTold:
    before, kept = limits_in(got.get("before")), _kept(got)
    now = limits_in(got.get(LIMITS))
    return tuple(left for one in now for left in (_cleared(got, (one,)) if one in before and one not in kept else (one,)))


def limits_left(got: Facts, side: str) -> Value:
    """Return what stands after the clearance, with what was told since it was begun to be told."""
    return as_text(_left(got))


def kilos_left(got: Facts, side: str) -> Value:
    """Return the most to lift after the clearance, in kg; "" for no number."""
    return _kilos(_left(got))


def asked_left(got: Facts, side: str) -> Value | None:
    """Return the next date on which a limit is asked about; None where none is left."""
    return _next_asked(_left(got), got)


def until_asked_again(got: Facts, side: str) -> Value | None:
    """Return the date until which a clearance counts; None where it was not confirmed."""
    return (_today(got) + CLEARED_FOR).isoformat() if got.get("right") == "yes" else None


def sets_limit(key: str) -> Callable[[Facts, str], Value]:
    """Return a fact's function: "yes" where an answer in words sets a limit, or may."""
    def of(got: Facts, side: str) -> Value:
        return "no" if sets_none(str(got.get(key, "none"))) else "yes"

    return of
