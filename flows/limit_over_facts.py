"""Facts of the question whether a limit is over, once its date has come."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.language.clearances import raises
from companion.language.limits import CLEARED, still_until
from companion.screening.limits import LimitsTold, as_text, limits_in, most_kg, words_of
from companion.screening.sources import value
from flows.limit_facts import LIMITS, kilos_of, next_asked, show_in, show_to, today_in

ASKED_AGAIN: Final = timedelta(days=value("limit_asked"))
"""After this a limit is asked about again where somebody is not sure whether it is over; our choice."""


def over_facts(known: Known) -> dict[str, Value]:
    """Return the limits whose date has come, and the rest."""
    limits, today = limits_in(known.facts.get(LIMITS)), date.fromisoformat(str(known.facts["today"]))
    due = tuple(one for one in limits if one.due(today))
    show = show_in(known.facts.get("welcome.units"))
    waits = words_of((one for one in limits if one.until is None), show)
    return {"due": "yes" if due else "no", "due_words": words_of(due or (one for one in limits if one.until is None), show),
            **({"waits_words": waits} if waits and not due else {})}


def waits_for_clearance(asked: str, facts: Facts) -> bool:
    """True if words that a check-up has been may be of a limit that stands until they are cleared, and raise no weight of one."""
    limits = limits_in(facts.get(LIMITS))
    return any(one.until is None for one in limits) and not (raises(asked) and most_kg(limits) is not None)


def end_given(got: Facts, side: str) -> Value | None:
    """Return until when it is still on, where the answer itself says so; None where it does not."""
    return still_until(str(got.get("over_said", "")), today_in(got)) or None


def _after(got: Facts) -> LimitsTold:
    """Return what stands after the question: "not sure" keeps a limit and asks again, "still on" until the date given then."""
    limits, today, answer = limits_in(got.get(LIMITS)), today_in(got), got.get("over")
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
    before, today = limits_in(got.get(LIMITS)), today_in(got)
    return words_of((new for old, new in zip(before, _after(got), strict=False) if old.due(today)), show_to(got))


def kilos_after(got: Facts, side: str) -> Value:
    """Return the most to lift after it, in kg; "" for no number."""
    return kilos_of(_after(got))


def asked_after(got: Facts, side: str) -> Value | None:
    """Return the next date on which a limit is asked about after it; None where none stands."""
    return next_asked(_after(got), got)
