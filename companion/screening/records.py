"""What each test asks and keeps: one frozen record a test. The field names are the answer keys of its flow.

None means not tested: never asked, skipped, taken back, or given in pain.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from companion.screening.depth import bands_later, start_of

ONE_CHANGE: Final = ("heels", "front", "slow", "wide")
MOVED: Final = "The plain squat at the end rounded at another depth, so the squats with one change don't count."
NOT_REPEATED: Final = "The plain squat was not done again at the end, so the squats with one change don't count."


@dataclass(frozen=True, slots=True)
class About:
    """The lifter: height cm, mass kg, usual load kg, years of squatting; tape, level yes|no; the rest as chosen."""

    height: float | None = None
    mass: float | None = None
    sex: str | None = None
    load: float | None = None
    bar: str | None = None
    usual_depth: str | None = None
    years: float | None = None
    tape: str | None = None
    level: str | None = None
    stick: str | None = None
    view: str | None = None


@dataclass(frozen=True, slots=True)
class SquatLook:
    """Unloaded squats, plain and with one change each; film of working sets where there is some (load in kg)."""

    seen_by: str | None = None
    plain_rounds: str | None = None
    plain_depth: str | None = None
    heels_rounds: str | None = None
    heels_depth: str | None = None
    front_rounds: str | None = None
    front_depth: str | None = None
    slow_rounds: str | None = None
    slow_depth: str | None = None
    wide_rounds: str | None = None
    wide_depth: str | None = None
    again_rounds: str | None = None
    again_depth: str | None = None
    load_film: str | None = None
    load_rounds: str | None = None
    load_depth: str | None = None
    load_kg: float | None = None

    def rounds(self, squat: str) -> str | None:
        """The answer no|little|clearly|cant_tell of one squat: plain, heels, front, slow, wide, again or load."""
        value: str | None = getattr(self, f"{squat}_rounds")
        return value

    def start(self, squat: str) -> int | None:
        """Where one squat starts to round (``start_of``)."""
        return start_of(self.rounds(squat), getattr(self, f"{squat}_depth"))

    def moved(self, squat: str) -> int | None:
        """By how many bands one change moved the start (above 0: later); None where that can't be said or counted."""
        return None if self.discounted else bands_later(self.start("plain"), self.start(squat))

    @property
    def discounted(self) -> str:
        """Why the squats with one change don't count, in words; "" where they do."""
        drift = bands_later(self.start("plain"), self.start("again"))
        return NOT_REPEATED if drift is None else MOVED if drift else ""


@dataclass(frozen=True, slots=True)
class HipFold:
    """What came first, the fold of the squat or the back; a pinch at the front; the angle in degrees where taken."""

    left_first: str | None = None
    left_pinch: str | None = None
    left_angle: float | None = None
    right_first: str | None = None
    right_pinch: str | None = None
    right_angle: float | None = None


@dataclass(frozen=True, slots=True)
class LegRaise:
    """The straight leg lifted until the back moves: as the level showed it (deg), the heel's height (cm), or by eye."""

    method: str | None = None
    effort: str | None = None
    placement: str | None = None
    leg_length: float | None = None
    left_level: float | None = None
    left_lean: str | None = None
    left_heel: float | None = None
    left_eye: str | None = None
    left_end: str | None = None
    left_level_2: float | None = None
    left_heel_2: float | None = None
    right_level: float | None = None
    right_lean: str | None = None
    right_heel: float | None = None
    right_eye: str | None = None
    right_end: str | None = None
    right_level_2: float | None = None
    right_heel_2: float | None = None


@dataclass(frozen=True, slots=True)
class KneeToWall:
    """Up to three readings a side: cm by tape, or the shin's degrees from upright by level; and what ended it."""

    method: str | None = None
    placement: str | None = None
    left_1: float | None = None
    left_2: float | None = None
    left_3: float | None = None
    left_deg_1: float | None = None
    left_deg_2: float | None = None
    left_deg_3: float | None = None
    left_limit: str | None = None
    right_1: float | None = None
    right_2: float | None = None
    right_3: float | None = None
    right_deg_1: float | None = None
    right_deg_2: float | None = None
    right_deg_3: float | None = None
    right_limit: str | None = None


@dataclass(frozen=True, slots=True)
class ArmsForwardSquat:
    """Front-rack squat with straight arms: what went wrong, how deep, and whether heels up or less depth cured it."""

    bar: str | None = None
    fault: str | None = None
    depth: str | None = None
    heels_help: str | None = None
    shallow_help: str | None = None
    seen_by: str | None = None


@dataclass(frozen=True, slots=True)
class PauseSquat:
    """Three stops on the way down: the moving squat beside it, which stop was hard, the shape, and the second go.

    ``with_`` is the answer key "with": a word Python keeps for itself.
    """

    with_: str | None = None
    moving: str | None = None
    hard: str | None = None
    shape: str | None = None
    again: str | None = None
    seen_by: str | None = None


@dataclass(frozen=True, slots=True)
class HingeToSquat:
    """A hinge that sinks into a squat: the hinge, the sinking, and the depth at which it broke."""

    hinge: str | None = None
    sink: str | None = None
    depth: str | None = None
    seen_by: str | None = None


@dataclass(frozen=True, slots=True)
class BirdDog:
    """Opposite arm and leg; the side is the leg that lifts. Holds in seconds."""

    seen_by: str | None = None
    left_shape: str | None = None
    left_hold: float | None = None
    left_slow: str | None = None
    right_shape: str | None = None
    right_hold: float | None = None
    right_slow: str | None = None


@dataclass(frozen=True, slots=True)
class HandOnBackSquat:
    """Where the curve of the lower back starts to move under the hand: as usual, and when told to keep it still."""

    usual_moves: str | None = None
    usual_depth: str | None = None
    cued_moves: str | None = None
    cued_depth: str | None = None


@dataclass(frozen=True, slots=True)
class RockBack:
    """Whether the back moved before the squat's hip fold, about there, or still was not, at three knee widths."""

    narrow: str | None = None
    middle: str | None = None
    wide: str | None = None
