"""The depth to keep to, from squat day to squat day: a small state machine driven by the report of each day.

Two squat days in a row clean at the set depth and within the load limit move it a band deeper, movement felt moves it a band back,
pain closes loaded work until a safety check. Never more than a band a day, never past the lifter's usual depth or a coach's pin,
and deeper only where one of the clean days at that depth was on film within the week (film once a week: common practice; the
rest is this project's cautious choice).

A pin is a ceiling and not a floor: the depth begins at the pin, clean days never lead past it, movement still leads back from
it, and clean days lead up to it again.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import groupby
from typing import Final, Literal

from companion.screening.depth import BAND_WORDS, Band
from companion.screening.sources import value

DayOutcome = Literal["clean", "moved", "other"]
DepthChange = Literal["deeper", "back", "same"]
Load = Literal["", "over", "untold"]

FILM_DAYS: Final = int(value("film_days"))  # a film counts on its own day and the six after it: once a week (choice)


@dataclass(frozen=True, slots=True)
class DepthDay:
    """One squat day, reduced to what the depth depends on.

    ``outcome``: "clean" (kept to the depth set, the back still), "moved" (the back moved) or "other": not judged, can't tell,
    or not at the depth set. Deeper than set with a still back is "other" too, so that going too deep earns no step.
    ``film``: judged on film; ``hurt``: something hurt; ``checked``: a safety check passed that day, before the squats.
    ``load``: "over" the load limit, or "untold" where there is one; either way the day is not clean, or a load too heavy
    would earn a step.
    """

    day: date
    outcome: DayOutcome
    film: bool = False
    hurt: bool = False
    checked: bool = False
    load: Load = ""


@dataclass(frozen=True, slots=True)
class DepthStep:
    """The current depth to keep to.

    ``streak``: clean days in a row that count towards a step, 0 or 1. ``closed``: no loaded work before a safety check.
    ``change``: the effect of the last squat day; ``why``: the same in at most 160 characters. ``wants_film``: a step deeper
    is possible and waits for a day with a still back on film. ``history``: the depth after each day, for a chart.
    """

    depth: Band
    streak: int
    closed: bool
    change: DepthChange
    why: str
    wants_film: bool = False
    history: tuple[tuple[date, Band], ...] = ()


@dataclass(frozen=True, slots=True)
class DepthTransition:
    """One transition of the machine, and the bands by which it moves the depth.

    ``due``: taken only if a step deeper is due (True) or is not (False); None: in both cases.
    """

    trigger: str
    source: str
    target: str
    bands: int = 0
    due: bool | None = None


TABLE: Final = (
    DepthTransition("clean", "open", "one_clean"),
    DepthTransition("clean", "one_clean", "open", +1, due=True),
    DepthTransition("clean", "one_clean", "one_clean", due=False),
    DepthTransition("clean", "closed", "closed"),
    DepthTransition("moved", "open", "open", -1),
    DepthTransition("moved", "one_clean", "open", -1),
    DepthTransition("moved", "closed", "closed", -1),
    DepthTransition("other", "open", "open"),
    DepthTransition("other", "one_clean", "open"),  # a day without a judgement breaks the run: the safe side
    DepthTransition("other", "closed", "closed"),
    DepthTransition("hurt", "open", "closed"),
    DepthTransition("hurt", "one_clean", "closed"),
    DepthTransition("hurt", "closed", "closed"),
    DepthTransition("checked", "open", "open"),
    DepthTransition("checked", "one_clean", "one_clean"),
    DepthTransition("checked", "closed", "open"),
)
"""Every trigger in every state; only a second clean day depends on ``due``."""

_WAYS: Final = {(way.trigger, way.source, due): way for way in TABLE for due in (True, False) if way.due in (None, due)}


def taken(state: str, trigger: str, *, due: bool = False) -> DepthTransition:
    """Return the transition that a trigger takes in a state. Raises KeyError for an unknown trigger."""
    return _WAYS[trigger, state, due]


@dataclass(frozen=True, slots=True)
class _Place:
    """The machine's state and data between two days. ``film``: the last film among the clean days in a row."""

    state: str
    depth: Band
    film: date | None = None
    change: DepthChange = "same"
    why: str = ""


@dataclass(frozen=True, slots=True)
class _Bound:
    """The deepest band that steps may reach, and why; None: the usual depth is not known, so no step goes deeper."""

    deepest: Band | None
    why: str


def steps_from(start: Band, usual: Band | None, days: Sequence[DepthDay], *, pin: Band | None = None,
               passed: Collection[date] = (), today: date | None = None, held: str = "") -> DepthStep:
    """Return the depth after the squat days, given in any order; days of one date are merged, and the worst of them counts.

    ``start``: the depth from the results. ``usual``: the lifter's usual depth; None: not known, so no step goes deeper.
    ``pin``: the depth a coach has pinned; the days are then those since. ``passed``: further dates on which a safety check
    passed; a check on the day that hurt came before the pain and opens nothing. ``today``: decides whether film is wanted;
    defaults to the last day. ``held``: why no step goes deeper for now, "" if steps may.
    """
    bound, begin = _Bound(None, held) if held else _bound(usual, pin), pin or start
    place = _Place("open", min(begin, usual) if usual else begin)
    place = replace(place, why=f"Keep to {BAND_WORDS[place.depth]}" + (", the depth your coach set." if pin else " for now."))
    history: list[tuple[date, Band]] = []
    before = date.min
    for day in _by_date(days):
        if day.checked or any(before < check <= day.day for check in passed):
            place = _checked(place)
        place = _lived(place, day, bound)
        history.append((day.day, place.depth))
        before = day.day
    now = max(before, today) if today else before
    if history and any(before < check <= now for check in passed):
        place = _checked(place)
    return DepthStep(place.depth, int(place.state == "one_clean"), place.state == "closed", place.change, place.why,
                     place.state != "closed" and _more(place, bound) and not _fresh(place.film, now), tuple(history))


def _bound(usual: Band | None, pin: Band | None) -> _Bound:
    if pin and (usual is None or pin <= usual):
        return _Bound(pin, "That is as deep as your coach set.")
    if usual is None:
        return _Bound(None, "Steps deeper wait until you have said how deep you usually squat.")
    return _Bound(usual, "That is your usual depth, and as deep as it goes here.")


def _by_date(days: Iterable[DepthDay]) -> Iterable[DepthDay]:
    """One day a date, the earliest first: hurt, moved or over the load limit if any was, clean only if all were and their load was
    within the limit, on film if any was."""
    for day, some in groupby(sorted(days, key=lambda one: one.day), key=lambda one: one.day):
        same = list(some)
        told = {one.outcome for one in same}
        loads = {one.load for one in same}
        load: Load = "over" if "over" in loads else "untold" if "untold" in loads else ""
        outcome: DayOutcome = "moved" if "moved" in told else "other" if "other" in told or load else "clean"
        yield DepthDay(day, outcome, any(one.film for one in same), any(one.hurt for one in same), any(one.checked for one in same),
                       load)


def _checked(place: _Place) -> _Place:
    """Return the place after a safety check that passed; the reason changes only if it opened something."""
    way = taken(place.state, "checked")
    why = place.why if way.target == way.source else f"The safety check passed, so loaded squats are open again: {_at(place)}."
    return replace(place, state=way.target, why=why)


def _lived(place: _Place, day: DepthDay, bound: _Bound) -> _Place:
    """Return the place after one squat day. A day that hurt closes loaded work and is never clean; a moved back still steps back."""
    if not day.hurt:
        return _told(place, day, day.outcome, bound)
    after = _told(place, day, "moved", bound) if day.outcome == "moved" else replace(place, change="same")
    tail = f" The depth goes a step back, to {_at(after)}." if after.change == "back" else f" The depth stays at {_at(after)}."
    why = "Something hurt, so no loaded squats before a safety check on another day." + tail
    return replace(after, state=taken(after.state, "hurt").target, film=None, why=why)


def _told(place: _Place, day: DepthDay, trigger: DayOutcome, bound: _Bound) -> _Place:
    film = day.day if day.film else place.film
    way = taken(place.state, trigger, due=_more(place, bound) and _fresh(film, day.day))
    depth = list(Band)[max(place.depth.rank + way.bands, 0)]
    change: DepthChange = "deeper" if depth > place.depth else "back" if depth < place.depth else "same"
    after = _Place(way.target, depth, film if way.target == "one_clean" else None, change)
    return replace(after, why=_why(way, after, day, bound))


def _more(place: _Place, bound: _Bound) -> bool:
    """True if a step deeper is possible."""
    return bound.deepest is not None and place.depth < bound.deepest


def _fresh(film: date | None, on: date) -> bool:
    return film is not None and (on - film).days < FILM_DAYS


def _at(place: _Place) -> str:
    return BAND_WORDS[place.depth]


def _why(way: DepthTransition, after: _Place, day: DepthDay, bound: _Bound) -> str:
    """Return the effect of a day that did not hurt, in at most 160 characters."""
    match way:
        case DepthTransition(trigger="moved", target=target):
            shut = " Loaded squats stay closed until a safety check passes." if target == "closed" else ""
            if after.change == "back":
                return f"The back moved, so the depth goes a step back, to {_at(after)}." + (
                    shut or " Film the next squat day, from the side.")
            return f"The back moved at {_at(after)}, the highest step." + (
                shut or " Go lighter, and let your coach or a clinician look.")
        case DepthTransition(source="closed"):
            return "Loaded squats stay closed until a safety check passes, so that day does not count."
        case DepthTransition(bands=1):
            return f"Two squat days in a row with a still back, so the depth goes a step deeper, to {_at(after)}."
        case DepthTransition(trigger="clean") if not _more(after, bound):
            return f"Back still at {_at(after)}. {bound.why}"
        case DepthTransition(trigger="clean", source="open"):
            film = "" if _fresh(after.film, day.day) else ", on film"
            return f"Back still at {_at(after)}. One more squat day like that in a row{film}, and it goes a step deeper."
        case DepthTransition(trigger="clean"):
            return (f"Back still again at {_at(after)}. A step deeper waits for a day with a still back on film, and there is "
                    f"none from the last {FILM_DAYS} days.")
        case _:
            because = {"over": "It was over the load limit, so that day", "untold": "Its load was not reported, so that day"}
            return f"{because.get(day.load, 'That day')} does not count towards a step. Stay at {_at(after)}."
