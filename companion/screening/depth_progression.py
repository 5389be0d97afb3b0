"""The depth to keep to, from squat day to squat day: a small state machine over what was told of each.

Two squat days in a row clean at the set depth and within the load limit move it a band deeper, movement felt moves it a band back,
pain closes loaded work until a safety check. Never more than a band a day, never past the lifter's usual depth or a coach's pin,
and deeper only where one of the clean days at that depth was on film within the week (evidence-and-drills: film once a week; the
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

from transitions import Machine

from companion.screening.depth import BAND_WORDS, Band

Outcome = Literal["clean", "moved", "other"]
Change = Literal["deeper", "back", "same"]
Load = Literal["", "over", "untold"]

FILM_DAYS: Final = 7  # a film counts on its own day and the six after it: once a week (choice)
STATES: Final = ("open", "one_clean", "closed")
TRIGGERS: Final = ("clean", "moved", "other", "hurt", "checked")


@dataclass(frozen=True, slots=True)
class DepthDay:
    """One squat day as it bears on the depth.

    ``outcome``: "clean" (kept to the depth set, the back still), "moved" (the back moved) or "other": not judged, can't tell,
    or not at the depth set. Deeper than set with a still back is "other" too, or going too deep would earn a step.
    ``film``: judged on film; ``hurt``: something hurt; ``checked``: a safety check passed that day, before the squats.
    ``load``: "over" the load limit, or "untold" where there is one; either way the day is not clean, or a load too heavy
    would earn a step.
    """

    day: date
    outcome: Outcome
    film: bool = False
    hurt: bool = False
    checked: bool = False
    load: Load = ""


@dataclass(frozen=True, slots=True)
class DepthStep:
    """The depth as it stands.

    ``streak``: clean days in a row that count towards a step, 0 or 1. ``closed``: no loaded work before a safety check.
    ``change``: what the last squat day did. ``why``: that in at most 160 characters. ``wants_film``: a step deeper is to be
    had, and waits for a clean day on film. ``history``: the depth after each day, for a chart.
    """

    depth: Band
    streak: int
    closed: bool
    change: Change
    why: str
    wants_film: bool = False
    history: tuple[tuple[date, Band], ...] = ()


@dataclass(frozen=True, slots=True)
class Way:
    """One row of the machine: what happens where, where that leads, and by how many bands the depth moves.

    ``due``: taken only where a step deeper is due (True) or is not (False); None: either way.
    """

    trigger: str
    source: str
    target: str
    bands: int = 0
    due: bool | None = None


TABLE: Final = (
    Way("clean", "open", "one_clean"),
    Way("clean", "one_clean", "open", +1, due=True),
    Way("clean", "one_clean", "one_clean", due=False),
    Way("clean", "closed", "closed"),
    Way("moved", "open", "open", -1),
    Way("moved", "one_clean", "open", -1),
    Way("moved", "closed", "closed", -1),
    Way("other", "open", "open"),
    Way("other", "one_clean", "open"),  # a day that tells nothing breaks the row: the safe side
    Way("other", "closed", "closed"),
    Way("hurt", "open", "closed"),
    Way("hurt", "one_clean", "closed"),
    Way("hurt", "closed", "closed"),
    Way("checked", "open", "open"),
    Way("checked", "one_clean", "one_clean"),
    Way("checked", "closed", "open"),
)
"""Every trigger in every state; only a second clean day asks whether a step is due."""

_WAYS: Final = {(way.trigger, way.source, way.target): way for way in TABLE}


def _compiled() -> Machine:
    machine = Machine(model=None, states=list(STATES), initial="open", auto_transitions=False)
    for way in TABLE:  # the one argument of a trigger is whether a step is due, so its guard is plain bool
        machine.add_transition(way.trigger, way.source, way.target, conditions=bool if way.due is True else None,
                               unless=bool if way.due is False else None)
    return machine


_MACHINE: Final = _compiled()  # shared by every lifter: it has no model, a cursor is passed to each trigger


@dataclass(slots=True)
class _Cursor:
    state: str


def taken(state: str, trigger: str, *, due: bool = False) -> Way:
    """The row of the table that a trigger takes in a state. KeyError for a trigger that is none."""
    cursor = _Cursor(state)
    _MACHINE.events[trigger].trigger(cursor, due)
    return _WAYS[trigger, state, cursor.state]


@dataclass(frozen=True, slots=True)
class _Place:
    """Between two days: the machine's state and what stands beside it. ``film``: the last film of the clean days in a row."""

    state: str
    depth: Band
    film: date | None = None
    change: Change = "same"
    why: str = ""


@dataclass(frozen=True, slots=True)
class _Bound:
    """How deep steps may lead, and why no deeper; None: the usual depth is not known, so no step leads deeper."""

    deepest: Band | None
    why: str


def steps_from(start: Band, usual: Band | None, days: Sequence[DepthDay], *, pin: Band | None = None,
               passed: Collection[date] = (), today: date | None = None) -> DepthStep:
    """The depth after squat days, in any order; those of one date are one day, and the worst of it counts.

    ``start``: the depth the results gave. ``usual``: the lifter's usual depth; None: not known, so nothing goes deeper.
    ``pin``: what a coach has pinned; the days are then those since. ``passed``: dates on which a safety check passed, beside
    those that the days carry; a check on the day that hurt came before it and opens nothing. ``today``: for whether film
    is wanted; the last day where it is left out.
    """
    bound, begin = _bound(usual, pin), pin or start
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
        outcome: Outcome = "moved" if "moved" in told else "other" if "other" in told or load else "clean"
        yield DepthDay(day, outcome, any(one.film for one in same), any(one.hurt for one in same), any(one.checked for one in same),
                       load)


def _checked(place: _Place) -> _Place:
    """After a safety check that passed; words only where it opened something."""
    way = taken(place.state, "checked")
    why = place.why if way.target == way.source else f"The safety check passed, so loaded squats are open again: {_at(place)}."
    return replace(place, state=way.target, why=why)


def _lived(place: _Place, day: DepthDay, bound: _Bound) -> _Place:
    """After one squat day. One that hurt is no clean day; where the back moved as well, the depth steps back and it closes."""
    if not day.hurt:
        return _told(place, day, day.outcome, bound)
    after = _told(place, day, "moved", bound) if day.outcome == "moved" else replace(place, change="same")
    tail = f" Then a step back: {_at(after)}." if after.change == "back" else f" The depth stays at {_at(after)}."
    why = "Something hurt, so no loaded squats before a safety check on another day." + tail
    return replace(after, state=taken(after.state, "hurt").target, film=None, why=why)


def _told(place: _Place, day: DepthDay, trigger: Outcome, bound: _Bound) -> _Place:
    film = day.day if day.film else place.film
    way = taken(place.state, trigger, due=_more(place, bound) and _fresh(film, day.day))
    depth = list(Band)[max(place.depth.rank + way.bands, 0)]
    change: Change = "deeper" if depth > place.depth else "back" if depth < place.depth else "same"
    after = _Place(way.target, depth, film if way.target == "one_clean" else None, change)
    return replace(after, why=_why(way, after, day, bound))


def _more(place: _Place, bound: _Bound) -> bool:
    """Whether there is a step deeper to be had."""
    return bound.deepest is not None and place.depth < bound.deepest


def _fresh(film: date | None, on: date) -> bool:
    return film is not None and (on - film).days < FILM_DAYS


def _at(place: _Place) -> str:
    return BAND_WORDS[place.depth]


def _why(way: Way, after: _Place, day: DepthDay, bound: _Bound) -> str:
    """What a day that did not hurt did, in at most 160 characters."""
    match way:
        case Way(trigger="moved", target=target):
            shut = " Loaded squats stay closed until a safety check passes." if target == "closed" else ""
            if after.change == "back":
                return f"The back moved: a step back, to {_at(after)}." + (shut or " Film the next squat day, from the side.")
            return f"The back moved at {_at(after)}, the highest step." + (
                shut or " Go lighter, and let your coach or a clinician look.")
        case Way(source="closed"):
            return "Loaded squats stay closed until a safety check passes, so that day does not count."
        case Way(bands=1):
            return f"Two clean squat days in a row: a step deeper, to {_at(after)}."
        case Way(trigger="clean") if not _more(after, bound):
            return f"Clean at {_at(after)}. {bound.why}"
        case Way(trigger="clean", source="open"):
            film = "" if _fresh(after.film, day.day) else ", on film"
            return f"Clean at {_at(after)}. One more clean squat day in a row{film}, and it goes a step deeper."
        case Way(trigger="clean"):
            return f"Clean again at {_at(after)}. A step deeper waits for a clean day on film: there is none of the last 7 days."
        case _:
            because = {"over": "It was over the load limit, so that day", "untold": "Its load was not told, so that day"}
            return f"{because.get(day.load, 'That day')} does not count towards a step. Stay at {_at(after)}."
