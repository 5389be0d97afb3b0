"""Rules that combine tests. This is the only module, besides a test's own files, that names tests.

- The squat look is the reference for all others: the depth at which the squat rounds (``look_of``). It is repeated at every
  retest (``LOOK``).
- The rock back is read with the hip fold; the arms-forward squat and the hinge with the depth at which the squat rounds.
- A change measured on film outranks the same change seen by eye (``outranked_by_film``).
- The hinge is opened by two clean tests and a year of squatting (``OPENINGS``).
- The stance hint takes the rock back and the wider squat; the depth estimate the ankle and the hip fold; both legs past a line
  in the leg raise mean no stretching at all.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.about import About
from companion.screening.depth import bands_later, start_of
from companion.screening.evidence import EvidenceRow, Finding, Grade, by_feel, found
from companion.screening.protocols import (
    arms_forward_squat,
    film_measure,
    hand_on_back_squat,
    hinge_to_squat,
    hip_fold,
    knee_to_wall,
    leg_raise,
    pause_squat,
    rock_back,
    rows,
    squat_look,
)
from companion.screening.readings import SIDES, Reading, mean_of
from companion.screening.screen import Screen
from companion.screening.sources import value

LOOK: Final = squat_look.PROTOCOL
ReferenceSquat = squat_look.SquatLook
"""The record of the squat look, for modules that must not name a test."""

# the squat look beside all others -------------------------------------------------------------------------------


def look_of(screen: Screen) -> ReferenceSquat:
    """Return the record of the squat look; an empty one if it was not done."""
    return screen.of(ReferenceSquat) or ReferenceSquat()


# findings of two tests ------------------------------------------------------------------------------------------


def read_together(screen: Screen) -> Iterator[Finding]:
    """Yield the findings that need the records of two tests."""
    yield from _rock_back_with_hip_fold(screen)
    yield from _arms_forward_at_the_rounding_depth(screen)
    yield from _hinge_at_the_rounding_depth(screen)


def _rock_back_with_hip_fold(screen: Screen) -> Iterator[Finding]:
    """Yield the findings of a back that moves early at every width; their meaning depends on the hip fold."""
    rock, fold = screen.of(rock_back.RockBack), screen.of(hip_fold.HipFold)
    if rock is None or not rock.early:
        return
    reached = {side: fold.reached(side) if fold else None for side in SIDES}
    for side in SIDES:
        if reached[side] is False:
            yield found(rows()["rock_early_hip"], side=side)
    if all(reached.values()):
        yield found(rows()["rock_early_control"])
    elif None in reached.values():
        yield found(rows()["rock_open"])


def _above_own_rounding(screen: Screen, depth: str | None) -> bool:
    """True if a depth is at least one band above where the plain squat rounds."""
    later = bands_later(start_of("yes", depth), look_of(screen).start("plain"))
    return later is not None and later > 0


def waiting(screen: Screen) -> dict[str, EvidenceRow]:
    """Return the rows of tests already done that only show with another test, by the name of that test."""
    rock = screen.of(rock_back.RockBack)
    early = rock is not None and rock.early and screen.of(hip_fold.HipFold) is None
    return {hip_fold.PROTOCOL.id: rows()["rock_early_hip"]} if early else {}


def _arms_forward_at_the_rounding_depth(screen: Screen) -> Iterator[Finding]:
    """Yield the finding of a fault; it is not scored if heels up or less depth cures it, or if it is no higher than the rounding."""
    arms = screen.of(arms_forward_squat.ArmsForwardSquat)
    if arms is None or arms.load is None or arms.fault not in arms_forward_squat.FAULT_ANSWERS:
        return
    if arms.uncured and _above_own_rounding(screen, arms.depth):
        yield found(rows()["arms_fail_bar" if arms.load else "arms_fail_stick"], less=by_feel(arms.seen_by), load=arms.load,
                    words=arms.load and "In the arms-forward squat, something gives way above the depth at which your squat rounds",
                    kg=arms.kg)
    else:
        yield found(rows()["arms_open"], load=arms.load)


def _hinge_at_the_rounding_depth(screen: Screen) -> Iterator[Finding]:
    """Yield the finding of a clean hinge that breaks while sinking, if it breaks higher up than the squat rounds anyway."""
    hinge = screen.of(hinge_to_squat.HingeToSquat)
    if hinge is not None and hinge.breaks and _above_own_rounding(screen, hinge.depth):
        yield found(rows()["hinge_breaks"], less=by_feel(hinge.seen_by))


def outranked_by_film(screen: Screen) -> frozenset[str]:
    """Return the rows of changes seen by eye that a film measured within one taping: for these the film alone counts. A film that can't
    tell leaves what was seen; so does one in which the plain squat has no onset."""
    film = screen.of(film_measure.FilmMeasure)
    if film is None:
        return frozenset()
    told = {change: moved for change in squat_look.ONE_CHANGE if (moved := film.moved(change)) is not None}
    by_eye = {row for (change, _), ids in squat_look.ROWS_BY_CHANGE.items() if change in told for row in ids}
    if film.moved("still") is not None:
        by_eye |= {row.id for row in hand_on_back_squat.PROTOCOL.rows}
    spared = any(told.get(change, 0) > 0 for change in squat_look.SPARE_THE_HIP)
    return frozenset(by_eye | ({"unmoved_hip"} if spared else set()))


def loads_filmed(screen: Screen) -> tuple[tuple[float, bool], ...]:
    """Return the loaded sets measured on film: kilograms, and whether the back rounded earlier than without a load."""
    film = screen.of(film_measure.FilmMeasure)
    return film.loaded if film else ()


# tests that open another ---------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Opening:
    """Conditions that open a test: years of squatting, answers that must be "clean", and answers that must not be "rounds"."""

    years: float
    clean: tuple[tuple[str, str], ...]
    not_rounding: tuple[tuple[str, str], ...] = ()


OPENINGS: Final = {hinge_to_squat.PROTOCOL.id: Opening(
    1, clean=((arms_forward_squat.PROTOCOL.id, "fault"), (pause_squat.PROTOCOL.id, "shape")),
    not_rounding=((pause_squat.PROTOCOL.id, "again"),))}
"""By the test that they open (choice)."""


def opened(test: str, screen: Screen, about: About) -> bool:
    """True if other tests and the lifter's years of squatting open a test to them."""
    opening = OPENINGS.get(test)
    return opening is None or (
        about.years is not None and about.years >= opening.years
        and all(getattr(screen.get(other), key, None) == "clean" for other, key in opening.clean)
        and all(getattr(screen.get(other), key, None) != "rounds" for other, key in opening.not_rounding))


# hints and estimates --------------------------------------------------------------------------------------------

HYPERMOBILE: Final = value("leg_raise_hypermobile")  # deg, straight-leg raise on both sides: no stretching
HYPERMOBILE_WORDS: Final = f"Both straight legs go past {HYPERMOBILE:g}°: no stretching for you (our cautious choice)."
WIDTH_WORDS: Final = {"narrow": "close together", "middle": "hip-wide", "wide": "wide"}


def hypermobile(screen: Screen) -> bool:
    """True if the straight leg goes past 95 degrees on both sides, by a measured angle."""
    raised = screen.of(leg_raise.LegRaise)
    taken = [leg_raise.readings(raised, side) for side in SIDES] if raised else [()]
    return all(readings and not readings[0].width and mean_of(readings) > HYPERMOBILE for readings in taken)


def stance(screen: Screen, findings: Iterable[Finding]) -> str:
    """Return a hint for the stance from the knee widths of the rock back and the wider squat, "" for none."""
    rock, order = screen.of(rock_back.RockBack), ("early", "at_fold", "past")
    widths = zip(rock_back.KNEE_WIDTHS, rock.widths, strict=True) if rock else ()
    ranked = {name: order.index(seen) for name, seen in widths if seen in order}
    best = [name for name, rank in ranked.items() if rank == max(ranked.values())]
    if best == ["wide"] and look_of(screen).moved("wide") == 0:
        return ""  # the lifter's own wider squats changed nothing
    if len(best) == 1 and len(ranked) == 3:
        return f"Your back stayed still longest with the knees {WIDTH_WORDS[best[0]]}: a hint for your stance, no more."
    if any(one.row is rows()["wide_later_hip"] and one.grade > Grade.NONE for one in findings):
        return "Feet wider helped a little: a hint for your stance, no more."
    return ""


def ankles(screen: Screen) -> tuple[tuple[Reading, ...], ...]:
    """Return the readings of each ankle that has any: degrees of the shin from upright, or cm from toe to wall."""
    reached = screen.of(knee_to_wall.KneeToWall)
    return tuple(taken for side in SIDES if reached and (taken := knee_to_wall.readings(reached, side)))


def folds(screen: Screen) -> dict[str, list[float]]:
    """Return the hip folds' angles in degrees by what ended them, "back" or "fold"; without those that a pinch ended."""
    fold = screen.of(hip_fold.HipFold)
    ended: dict[str, list[float]] = {"back": [], "fold": []}
    for side in SIDES:
        if fold and (reached := fold.reached(side)) is not None and (angle := fold.angle(side)) is not None:
            ended["fold" if reached else "back"].append(angle)
    return ended
