"""Filmed squat: the depth of the thigh at which the lower back begins to round, by printed cards, in degrees; and with one change each.

The films of one run are of one taping: within it a change is told with the error of a film. The depth itself is an estimate, since cards
slide over the bones and nobody has compared them with people yet; it moves no depth to keep, no load and no safety level.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import make_dataclass
from math import copysign, hypot, sqrt
from typing import Any, Final

from companion.screening.evidence import PARTS_BY_CAUSE, EvidenceRow, Finding, Grade, found
from companion.screening.limits import Work
from companion.screening.protocol import FILM_MINUTES, GOING_DOWN, Detail, FindingContext, Protocol
from companion.screening.readings import Z_TWO_SIDED_95, Error, NumberFormat
from companion.screening.safety import BodyPosition
from companion.screening.sources import value

_ID: Final = "film_measure"
FILMED_CHANGES: Final = ("heels", "front", "slow", "wide", "still")
"""One change each: those of the squat look, and trying to keep the lower back still, as with a hand on it."""
LOADED: Final = ("load1", "load2", "load3")
"""Sets with a load that were done anyway."""
OF_EACH: Final = {"reading": str, "onset": float, "spread": float, "deepest": float}
OF_SQUATS: Final = {"plain": {**OF_EACH, "low": float, "high": float, "bend": float},
                    **{squat: {**OF_EACH} for squat in (*FILMED_CHANGES, "again")}, **{squat: {**OF_EACH, "kg": float} for squat in LOADED}}
"""By squat, the names and types of what its film gives."""
REPEAT_SEM: Final = value("film_repeat_sem")
PRIOR_FILMS: Final = value("prior_films")
LEVEL_ENOUGH: Final = value("film_same_within")
PAST_ONSET: Final = value("film_past_onset")


class FilmedSquats:
    """Degrees from the films of one taping. By squat: "reading" is "onset", "none" or "mend"; "onset", its "spread" by repetition, and how
    "deepest" it went in degrees of the thigh; of the plain squat the interval of the onset and the bend of the lower back at the bottom
    too; of a loaded one its "kg"."""

    __slots__ = ()

    def told(self, squat: str, what: str) -> Any:
        """Return what one film gave; None if it gave none."""
        return getattr(self, f"{squat}_{what}")

    def onset(self, squat: str) -> float | None:
        """Return the depth of one squat's onset in degrees; None if it was not read, or there is none."""
        depth: float | None = self.told(squat, "onset") if self.told(squat, "reading") == "onset" else None
        return depth

    @property
    def repeat_sem(self) -> float:
        """The error from one film to the next of this taping, in degrees: the usual one, with the plain squat filmed twice on top of it,
        never below it."""
        plain, again = self.onset("plain"), self.onset("again")
        if plain is None or again is None:
            return REPEAT_SEM
        pooled = (PRIOR_FILMS * REPEAT_SEM**2 + (again - plain)**2 / 2) / (PRIOR_FILMS + 1)
        return max(REPEAT_SEM, sqrt(pooled))

    def change(self, squat: str) -> tuple[float, float] | None:
        """Return by how many degrees later a changed squat rounds than the plain one, and how far that may be off (95 %); None if either
        has no onset."""
        plain, changed = self.onset("plain"), self.onset(squat)
        if plain is None or changed is None:
            return None
        spreads = (self.told(one, "spread") or 0.0 for one in ("plain", squat))
        return changed - plain, Z_TWO_SIDED_95 * hypot(*spreads, self.repeat_sem, self.repeat_sem)

    def moved(self, squat: str) -> int | None:
        """Return 1 if a changed squat rounds later than the plain one, -1 earlier, 0 at the same depth; None if the films can't tell."""
        plain, deepest = self.onset("plain"), self.told(squat, "deepest")
        if self.told(squat, "reading") == "none":
            return 1 if plain is not None and deepest is not None and deepest >= plain + PAST_ONSET else None
        told = self.change(squat)
        if told is None:
            return None
        by, off = told
        if abs(by) > off:
            return int(copysign(1, by))
        return 0 if abs(by) + off <= LEVEL_ENOUGH else None

    @property
    def loaded(self) -> tuple[tuple[float, bool], ...]:
        """The sets with a load that tell something: kilograms, and whether the back rounds earlier than without, or only then."""
        never, found = self.told("plain", "reading") == "none", list[tuple[float, bool]]()
        for squat in LOADED:
            kg, reading, moved = self.told(squat, "kg"), self.told(squat, "reading"), self.moved(squat)
            if kg and never and reading in ("onset", "none"):
                found.append((kg, reading == "onset"))
            elif kg and moved is not None:
                found.append((kg, moved < 0))
        return tuple(found)


FilmMeasure: type[FilmedSquats] = make_dataclass(
    "FilmMeasure", [(f"{squat}_{what}", kind | None, None) for squat, kinds in OF_SQUATS.items() for what, kind in kinds.items()],
    bases=(FilmedSquats,), frozen=True, slots=True)
"""The record: each squat's answers, all of them None at first."""

_LATER, _SAME, _EARLIER = "your back rounds later", "your back rounds at the same depth", "your back rounds earlier"
_TOLD: Final = (
    ("heels", 1, f"With your heels raised, {_LATER}", ("calf",), ("hip",)),
    ("heels", 0, f"With your heels raised, {_SAME}", ("calf",), ()),
    ("front", 1, f"With a weight held in front, {_LATER}", (), ("hip", "trunk", "control")),
    ("slow", 1, f"Going down over {GOING_DOWN}, {_LATER}", ("control",), ()),
    ("slow", 0, f"Going down over {GOING_DOWN}, {_SAME}", ("control",), ()),
    ("slow", -1, f"Going down over {GOING_DOWN}, {_EARLIER}", (), ("trunk",)),
    ("still", 1, f"When you try to keep it still, {_LATER}", ("control",), ()),
    ("still", 0, f"When you try to keep it still, {_SAME}", ("control",), ()),
    ("wide", 1, f"With your feet wider, {_LATER}", (), ("hip",)))
"""Each change with what films tell of it, in words, and the parts for (the same depth: against) which that is moderate, or weak evidence.
The grades are those of the same changes seen by eye: a finer ruler does not make a change say more about its cause (choice)."""


def _row(change: str, way: int, words: str, part: str, grade: Grade) -> EvidenceRow:
    return EvidenceRow(f"film_{change}_{ {1: 'later', 0: 'same', -1: 'earlier'}[way]}_{part}", _ID, f"{words}, measured on film", part,
                       "for" if way else "against", grade, hint=grade == Grade.WEAK, standing="choice",
                       trial=way > 0 and part in PARTS_BY_CAUSE["length"])


_BY_CHANGE: Final = {(change, way): (*(_row(change, way, words, part, Grade.MODERATE) for part in moderate),
                                     *(_row(change, way, words, part, Grade.WEAK) for part in weak))
                     for change, way, words, moderate, weak in _TOLD}
_ROUNDS: Final = EvidenceRow("film_rounds", _ID, "On film with cards, your lower back rounds in the plain squat", "all", "neither",
                             Grade.NONE, standing="choice")


def findings(film: FilmedSquats, context: FindingContext) -> Iterator[Finding]:
    """Yield that the back rounds, and each change that films of one taping tell."""
    if film.onset("plain") is None:
        return
    yield found(_ROUNDS)
    for (change, way), rows in _BY_CHANGE.items():
        if film.moved(change) == way:
            yield from map(found, rows)


SQUATS_FILMED: Final = {"plain": "Plain", "heels": "Heels raised", "front": "Weight held in front",
                        "slow": f"{GOING_DOWN} down".capitalize(), "wide": "Feet wider", "still": "Kept still", **dict.fromkeys(LOADED, "")}


def detail(film: FilmedSquats | None, show: NumberFormat) -> Detail:
    """Return the report's table: each filmed squat with its onset, and what the change is against the plain one."""
    rows = []
    for squat, title in SQUATS_FILMED.items() if film else ():
        assert film is not None
        onset, deepest, told = film.onset(squat), film.told(squat, "deepest"), film.change(squat) if squat != "plain" else None
        if film.told(squat, "reading") not in ("onset", "none"):
            continue
        title = title or f"With {show(film.told(squat, 'kg') or 0, 'kg')}"
        against = f"{told[0]:+.0f}° ± {told[1]:.0f}°" if told else "–"
        rows.append((title, "none" if onset is None else show(onset, "deg"), "–" if deepest is None else show(deepest, "deg"), against))
    ends = [show(end, "deg") for name in ("low", "high") if film and film.onset("plain") and (end := film.told("plain", name)) is not None]
    within = f" The plain one lies between {ends[0]} and {ends[1]}." if len(ends) == 2 else ""
    return Detail("filmed", "Filmed squat with cards: where rounding begins, in degrees of the thigh (90°: level with the floor)",
                  ("Squat", "Rounding begins", "Deepest", "Against the plain squat"), tuple(rows), "No squat was measured on film.",
                  f"Cards slide over the bones: the depth is an estimate, a change within one taping is firmer.{within}" if rows else "")


PROTOCOL: Final = Protocol(
    _ID, title="Filmed squat", short_name="filmed squat", lines_named=r"filmed squats?|printed cards?",
    looks_at="how deep the thigh is when the lower back begins to round, by printed cards, and what moves that",
    minutes=FILM_MINUTES, place=15, ease=12, needs=("printed cards", "tape", "phone on a stand"),
    posture=BodyPosition.STANDING, uses=(Work.SQUAT,),
    record=FilmMeasure, rows=(_ROUNDS, *(row for rows in _BY_CHANGE.values() for row in rows)), findings=findings, detail=detail,
    picture="view_film", on_route=False,
    errors=(Error(_ID, "film", REPEAT_SEM, "deg", "films drawn by a physics engine, and a choice for taping", "choice"),),
)
