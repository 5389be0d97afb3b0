"""Filmed squat: the depth of the thigh at which the lower back begins to round, by printed cards, in degrees; and with one change each.

The films of one run are of one taping: within it a change is told with the error of a film. The depth itself is an estimate, since cards
slide over the bones and nobody has compared them with people yet; it moves no depth to keep, no load and no safety level.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot, sqrt
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_id, found
from companion.screening.limits import Work
from companion.screening.protocol import Detail, FindingContext, Protocol
from companion.screening.readings import Z_TWO_SIDED_95, Error, NumberFormat
from companion.screening.safety import BodyPosition
from companion.screening.sources import value

_ID: Final = "film_measure"
FILMED_CHANGES: Final = ("heels", "front", "slow", "wide")
REPEAT_SEM: Final = value("film_repeat_sem")
PRIOR_FILMS: Final = value("prior_films")
LEVEL_ENOUGH: Final = value("film_same_within")
PAST_ONSET: Final = value("film_past_onset")


@dataclass(frozen=True, slots=True)
class FilmMeasure:
    """By squat: "onset", "none" or "mend"; degrees of the thigh at the onset, its spread by repetition, and the deepest; for the plain
    squat the interval of the onset and the bend of the lower back at the bottom too."""

    plain_reading: str | None = None
    plain_onset: float | None = None
    plain_low: float | None = None
    plain_high: float | None = None
    plain_spread: float | None = None
    plain_deepest: float | None = None
    plain_bend: float | None = None
    heels_reading: str | None = None
    heels_onset: float | None = None
    heels_spread: float | None = None
    heels_deepest: float | None = None
    front_reading: str | None = None
    front_onset: float | None = None
    front_spread: float | None = None
    front_deepest: float | None = None
    slow_reading: str | None = None
    slow_onset: float | None = None
    slow_spread: float | None = None
    slow_deepest: float | None = None
    wide_reading: str | None = None
    wide_onset: float | None = None
    wide_spread: float | None = None
    wide_deepest: float | None = None
    again_reading: str | None = None
    again_onset: float | None = None
    again_spread: float | None = None
    again_deepest: float | None = None

    def onset(self, squat: str) -> float | None:
        """Return the depth of one squat's onset in degrees; None if it was not read, or there is none."""
        depth: float | None = getattr(self, f"{squat}_onset") if getattr(self, f"{squat}_reading") == "onset" else None
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
        spreads = self.plain_spread or 0.0, getattr(self, f"{squat}_spread") or 0.0
        return changed - plain, Z_TWO_SIDED_95 * hypot(*spreads, self.repeat_sem, self.repeat_sem)

    def moved(self, squat: str) -> int | None:
        """Return 1 if a changed squat rounds later than the plain one, -1 earlier, 0 at the same depth; None if the films can't tell."""
        plain, deepest = self.onset("plain"), getattr(self, f"{squat}_deepest")
        if getattr(self, f"{squat}_reading") == "none":
            return 1 if plain is not None and deepest is not None and deepest >= plain + PAST_ONSET else None
        told = self.change(squat)
        if told is None:
            return None
        by, off = told
        if abs(by) > off:
            return 1 if by > 0 else -1
        return 0 if abs(by) + off <= LEVEL_ENOUGH else None


_ROWS: Final = by_id(
    EvidenceRow("film_rounds", _ID, "On film with cards, your lower back rounds in the plain squat", "all", "neither", Grade.NONE,
        standing="choice"),
    EvidenceRow("film_heels_later_calf", _ID, "With your heels raised, your back rounds later, measured on film", "calf", "for",
        Grade.MODERATE, standing="choice", trial=True),
    EvidenceRow("film_heels_later_hip", _ID, "With your heels raised, your back rounds later, measured on film", "hip", "for", Grade.WEAK,
        hint=True, standing="choice", trial=True),
    EvidenceRow("film_heels_same_calf", _ID, "With your heels raised, your back rounds at the same depth, measured on film", "calf",
        "against", Grade.MODERATE, standing="choice"),
    EvidenceRow("film_front_later_hip", _ID, "With a weight held in front, your back rounds later, measured on film", "hip", "for",
        Grade.WEAK, hint=True, standing="choice", trial=True),
    EvidenceRow("film_front_later_trunk", _ID, "With a weight held in front, your back rounds later, measured on film", "trunk", "for",
        Grade.WEAK, hint=True, standing="choice"),
    EvidenceRow("film_front_later_control", _ID, "With a weight held in front, your back rounds later, measured on film", "control", "for",
        Grade.WEAK, hint=True, standing="choice"),
    EvidenceRow("film_slow_later_control", _ID, "Going down over three seconds, your back rounds later, measured on film", "control", "for",
        Grade.MODERATE, standing="choice"),
    EvidenceRow("film_slow_same_control", _ID, "Going down over three seconds, your back rounds at the same depth, measured on film",
        "control", "against", Grade.MODERATE, standing="choice"),
    EvidenceRow("film_slow_earlier_trunk", _ID, "Going down over three seconds, your back rounds earlier, measured on film", "trunk", "for",
        Grade.WEAK, hint=True, standing="choice"),
    EvidenceRow("film_wide_later_hip", _ID, "With your feet wider, your back rounds later, measured on film", "hip", "for", Grade.WEAK,
        hint=True, standing="choice", trial=True),
)
"""The grades are those of the same changes seen by eye: a finer ruler does not make a change say more about its cause (choice)."""
_BY_CHANGE: Final = {
    ("heels", 1): ("film_heels_later_calf", "film_heels_later_hip"), ("heels", 0): ("film_heels_same_calf",),
    ("front", 1): ("film_front_later_hip", "film_front_later_trunk", "film_front_later_control"),
    ("slow", 1): ("film_slow_later_control",), ("slow", 0): ("film_slow_same_control",), ("slow", -1): ("film_slow_earlier_trunk",),
    ("wide", 1): ("film_wide_later_hip",)}


def findings(film: FilmMeasure, context: FindingContext) -> Iterator[Finding]:
    """Yield that the back rounds, and each change that films of one taping tell."""
    if film.onset("plain") is None:
        return
    yield found(_ROWS["film_rounds"])
    for (change, way), ids in _BY_CHANGE.items():
        if film.moved(change) == way:
            for row in ids:
                yield found(_ROWS[row])


SQUATS_FILMED: Final = {"plain": "Plain", "heels": "Heels raised", "front": "Weight held in front", "slow": "Three seconds down",
                        "wide": "Feet wider"}


def detail(film: FilmMeasure | None, show: NumberFormat) -> Detail:
    """Return the report's table: each filmed squat with its onset, and what the change is against the plain one."""
    rows = []
    for squat, title in SQUATS_FILMED.items() if film else ():
        assert film is not None
        onset, deepest, told = film.onset(squat), getattr(film, f"{squat}_deepest"), film.change(squat) if squat != "plain" else None
        if getattr(film, f"{squat}_reading") not in ("onset", "none"):
            continue
        against = f"{told[0]:+.0f}° ± {told[1]:.0f}°" if told else "–"
        rows.append((title, "none" if onset is None else show(onset, "deg"), "–" if deepest is None else show(deepest, "deg"), against))
    within = (f" The plain one lies between {show(film.plain_low, 'deg')} and {show(film.plain_high, 'deg')}."
              if film and film.plain_low is not None and film.plain_high is not None and film.onset("plain") is not None else "")
    return Detail("filmed", "Filmed squat with cards: where rounding begins, in degrees of the thigh (90°: level with the floor)",
                  ("Squat", "Rounding begins", "Deepest", "Against the plain squat"), tuple(rows), "No squat was measured on film.",
                  f"Cards slide over the bones: the depth is an estimate, a change within one taping is firmer.{within}" if rows else "")


PROTOCOL: Final = Protocol(
    _ID, title="Filmed squat", short_name="filmed squat", lines_named=r"filmed squats?|printed cards?",
    looks_at="at how many degrees of the thigh the lower back begins to round, by printed cards, and which change moves that",
    minutes=15, place=15, ease=12, needs=("printed cards", "tape", "phone on a stand"), posture=BodyPosition.STANDING, uses=(Work.SQUAT,),
    record=FilmMeasure, rows=tuple(_ROWS.values()), findings=findings, detail=detail, picture="view_film", on_route=False,
    errors=(Error(_ID, "film", REPEAT_SEM, "deg", "films drawn by a physics engine, and a choice for taping", "choice"),),
)
