"""Facts of what puts a limit right that stands, and no more: its end, its weight or its unit."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from typing import NamedTuple

from companion.conversation.aims import SAID_OVER
from companion.conversation.condition import Facts, Value
from companion.language.clearances import not_cleared
from companion.language.limits import (
    ASKS_END,
    NEW_END,
    NEW_KILOS,
    NEW_KILOS_TILL,
    NEW_KILOS_UNIT,
    NEW_UNIT,
    TOLD_MORE,
    in_the_unit,
    new_end,
    new_kilos,
    new_kilos_till,
    number_said,
    parts_named,
    read_limit,
    says_longer,
)
from companion.language.units import METRIC, shown
from companion.screening.limits import Limit, LimitPart, LimitsTold, limits_in
from companion.screening.load_limit import ROUNDING
from flows.limit_facts import LIMITS, limits_in_words, standing_beside, to_add_to, today_in, units_told, until_of, words_told


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


def put_right_in(got: Facts) -> PutRight | None:
    """Return what the words only put right; None for nothing. An end is that of the limit told last. Once they say that what stands is
    wrong, a weight is told anew."""
    words, standing = words_told(got), standing_beside(got)
    if got.get("now") != "wrong" and (found := _weighed_anew(words, units_told(got), standing)):
        return found
    last = next((one for one in reversed(standing) if LimitPart.OTHER not in one.parts), None)
    on = date.fromisoformat(str(got["on"]))
    since = max(on, last.until) if last and last.until and says_longer(words) else on
    if last and (end := new_end(words, since)):
        first, *_ = limits_in_words(got)
        until = until_of(str(got.get("until", end)))
        if first.by and last.by and first.by != last.by and replace(last, until=until).sooner_than(last):
            return None  # another clinician's word
        return PutRight("end", last, replace(last, until=until, by=first.by or last.by, asked=False), last.end)
    return None


def may_put_right(asked: str, facts: Facts) -> bool:
    """True if words may begin the telling of a limit: that they are not cleared may where what they name is closed; those that only put an
    end or a weight right may where such a limit stands. A weight alone, "its 40, not 60", may be the answer to a test that is open; one
    that says that it is a limit is also one by itself. One with another unit, "i meant 40 lb", is of a limit on the day of its telling.
    A question until when it holds may at the menu where one stands."""
    if re.fullmatch(ASKS_END, asked):
        return SAID_OVER not in facts and bool(facts.get("limit.words"))
    if re.fullmatch(TOLD_MORE, asked):
        return facts.get(SAID_OVER, "limits") == "limits" and to_add_to(asked, facts) is not None
    if not_cleared(asked):
        standing = limits_in(facts.get(LIMITS))
        return bool(standing) and parts_named(asked) <= {part.value for one in standing for part in one.parts}
    if re.fullmatch(NEW_END, asked):
        return bool(facts.get("limit.words") and new_end(asked, today_in(facts)))
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
    return told.named and read_limit(asked, today_in(facts), units).read


def right_read(got: Facts, side: str) -> Value | None:
    """Return what the words only put right of a limit that stands: "end", "lower" or "kept"; None for nothing."""
    found = put_right_in(got)
    return found.what if found else None


def before_right(got: Facts, side: str) -> Value | None:
    """Return in words what is put right, as it was: an end or a weight; None where nothing is."""
    found = put_right_in(got)
    return found.before if found else None
