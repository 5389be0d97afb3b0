"""Facts of what was told once it was read and asked about, and of what stands then."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import lru_cache
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.limit_words import ADDED
from companion.language.limits import CLEARED, ToldLimit, read_limits
from companion.language.passed_on import in_whole_words
from companion.screening.limits import STRETCHES, WORDS_MOST, Limit, LimitPart, LimitsTold, as_text, most_kg, words_of
from flows.limit_facts import (
    all_said,
    how_read,
    kilos_of,
    limits_in_words,
    next_asked,
    show_to,
    standing_beside,
    tells_several,
    today_in,
    units_told,
    until_of,
    words_told,
)
from flows.limit_right_facts import put_right_in

WHO: Final = {"doctor": "a doctor", "physio": "a physiotherapist", "surgeon": "a surgeon", "other": "somebody else"}
_PICKS: Final = ("what", "also", "also_2")
NO_MORE: Final = ("none", "training", "other")
"""After one of these nothing more is asked to be left out."""
_TOLD: Final = ("words", "given", "on", "units", *_PICKS, "which", "kg", "until", "until_2", "by", "same", "last_by", "last_until")


def _limits(got: Facts) -> LimitsTold:
    """Return what was told so far: what was tapped stands in place of what was read."""
    if found := put_right_in(got):
        return (found.new,)
    return _limits_of(*map(got.get, _TOLD))


@lru_cache  # one step asks for it four times
def _limits_of(*values: Value | None) -> LimitsTold:
    got = {name: value for name, value in zip(_TOLD, values, strict=True) if value is not None}
    told = limits_in_words(got)
    limits = [_limit_of(one, got) for one in (told[:1] if "what" in got or tells_several(got) else told)]
    if "what" not in got and tells_several(got):  # each with its own clinician and end
        then = {**got, "until": got.get("until_2", CLEARED)}
        limits += [_limit_of(one, {**got, "until": one.until} if one.until else then) for one in told[1:]]
    for words in all_said(got).split(ADDED)[1:]:
        for more in read_limits(words, date.fromisoformat(str(got["on"])), units_told(got)):
            limits[-1:] = _added(limits[-1], more)
    return tuple(limits)


def _added(last: Limit, more: ToldLimit) -> LimitsTold:
    """Return a limit with what was added to it: one more where that has another end, or somebody else said so."""
    until, by = until_of(more.until) if more.until else last.until, more.by or last.by
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
    return Limit(frozenset(parts), kilos, until_of(str(got.get("until") or told.until or same.get("last_until", ""))),
                 WHO.get(str(got.get("by")), told.by or str(same.get("last_by", ""))), in_whole_words(words_told(got), WORDS_MOST),
                 "" if picks else told.elsewhere)


def _picked(got: Facts) -> Iterator[str]:
    """Yield what was tapped; where it was tapped anew, without what was tapped before and is not asked for now."""
    for key in _PICKS:
        if (pick := got.get(key)) in (None, "enough"):
            return
        yield str(pick)
        if pick in NO_MORE:
            return


def asks_more(got: Facts, side: str) -> Value:
    """Return "yes" while more to leave out is asked for, after what was tapped."""
    picks = [got.get(key) for key in _PICKS]
    return "yes" if picks[0] is not None and None in picks and not {*NO_MORE, "enough"} & {*picks} else "no"


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


_SETS_NONE: Final = {"what": ("none",), "now": ("fine", "cleared", "over"), "past": ("over",), "says": ("not_cleared",), "same": ("no",),
                     "signed_off": ("cleared", "neither")}
"""Answers after which this telling sets no limit."""


def _then(got: Facts) -> LimitsTold:
    """Return what stands once this telling is over: what stood, without it where it was wrong, and the limit told, if any. Nothing is
    taken away by words that name no limit, unless nobody had ever told them what stood."""
    if found := put_right_in(got):
        return tuple(found.new if one == found.old and found.what != "kept" else one for one in standing_beside(got))
    sets = how_read(got, "") != "none" and not any(got.get(key) in values for key, values in _SETS_NONE.items())
    if not sets:
        return () if got.get("never") == "yes" else standing_beside(got)
    return _with(() if got.get("now") == "wrong" else standing_beside(got), _limits(got))


def limits_then(got: Facts, side: str) -> Value:
    """Return what stands once this telling is over."""
    return as_text(_then(got))


def stands_then(got: Facts, side: str) -> Value | None:
    """Return that in words; None for nothing."""
    return words_of(_then(got), show_to(got)) or None


def understood(got: Facts, side: str) -> Value:
    """Return what was told, in words."""
    return words_of(_limits(got), show_to(got))


def sooner(got: Facts, side: str) -> Value:
    """Return a sentence that says which end what was told would bring forward, or, told with more weight, which limit still stands; ""
    for neither."""
    told, standing = _limits(got), standing_beside(got)
    if gone := [one for one in standing if any(_replaces(new, one) and new.sooner_than(one) for new in told)]:
        return f" That is sooner than what stands: {gone[0].end}."
    least, most = most_kg(standing), most_kg(told)
    if least is None or most is None or least >= most or got.get("now") == "wrong":
        return ""
    stands = words_of([one for one in standing if most_kg((one,)) == least], show_to(got))
    return f" Less still stands beside it: {stands}. If they raised that, say “cleared” after this."


def kilos_told(got: Facts, side: str) -> Value | None:
    """Return the weight of what was told, in kg; None where it names none."""
    return next((one.kg for one in _limits(got) if one.kg is not None), None)


def left_out(got: Facts, side: str) -> Value:
    """Return in words what was told to leave out, without its end."""
    return "; ".join(one.left_out(show_to(got)) for one in _limits(got))


def kilos_then(got: Facts, side: str) -> Value:
    """Return the most to lift once this telling is over, in kg; "" for no number."""
    return kilos_of(_then(got))


def end_then(got: Facts, side: str) -> Value | None:
    """Return the next date on which a limit is asked about; None where none has a date."""
    return _next_end(_then(got))


def has_been(got: Facts, side: str) -> Value:
    """Return "yes" where the date of what was told has come before it was confirmed: whether it is over is asked at once."""
    return "yes" if any(one.due(today_in(got)) for one in _limits(got)) else "no"


def _next_end(limits: LimitsTold) -> str | None:
    return min((one.until.isoformat() for one in limits if one.until), default=None)


def asked_then(got: Facts, side: str) -> Value | None:
    """Return that date, or one in some weeks where a limit has none, once this telling is over."""
    return next_asked(_then(got), got)
