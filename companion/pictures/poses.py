"""All poses by name."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache, partial
from typing import Final

from companion.pictures import drills, kneeling, lying, squats, still_backs, wall, warm_up
from companion.pictures.drawing import Drawing, for_side, slug

SINGLE: Final = (
    squats.bands, squats.rounding, squats.heels, squats.front, squats.wide, squats.fold, squats.view_film,
    squats.view_mirror, squats.film_cards, still_backs.hand_on_back, still_backs.arms_forward_setup, still_backs.arms_forward_rack,
    still_backs.arms_forward, still_backs.arms_forward_shallow, still_backs.pause_stops, still_backs.pause_watch, still_backs.hinge_setup,
    still_backs.hinge_watch, lying.lying_setup,
    lying.leg_raise_strap, lying.leg_raise_heel,
    wall.knee_to_wall_setup, kneeling.bird_dog_setup, kneeling.bird_dog_stick, kneeling.rock_back_setup,
    drills.hinge_with_stick, drills.hinge_to_wall, drills.knee_over_toes, drills.knee_over_toes_chair,
    drills.heel_lift, drills.pause_above, drills.pause_to_box, drills.knee_across, drills.strap_raise,
    drills.calf_stretch, drills.plank,
)
LOOPS: Final = (squats.slow, warm_up.walk, warm_up.chair, kneeling.rock_back_narrow, kneeling.rock_back_middle, kneeling.rock_back_wide,
                kneeling.rock_back_pillow, kneeling.rock_back_drill, still_backs.hinge_to_squat, drills.sit_to_chair)
SIDED: Final = (lying.leg_raise_eye, wall.knee_to_wall, wall.knee_to_wall_level, kneeling.bird_dog, lying.hip_fold, lying.leg_raise,
                kneeling.bird_dog_slow)
# Names that share a drawing: drills that look like a test, and questions whose choice was skipped.
ALSO: Final = {"drill_hand_on_back_squat": "hand_on_back", "drill_bird_dog": "bird_dog_right",
               "leg_raise_setup_own": "lying_setup", "leg_raise_setup": "lying_setup"}

SHARED: Final = {
    "film_measure.plain_video": "view_film", "hand_on_back_squat.did": "hand_on_back",
    **{f"knee_to_wall.{side}{unit}_{turn}": f"knee_to_wall{unit and '_level_{placement}'}_{side}"
       for side in ("left", "right") for unit in ("", "_deg") for turn in (2, 3)},
    "knee_to_wall.check": "knee_to_wall_{odd}", "knee_to_wall.check_deg": "knee_to_wall_level_{placement}_{odd}",
    "leg_raise.check_do": "leg_raise_{odd}", "pause_squat.again_do": "pause_stops", "pause_squat.again_all": "pause_stops",
    **{f"prime.set_{n}": "drill_{name}" for n in (1, 2, 3)}, "squat_day.squatted": "squat_rounding", "warm_up.walk_more": "warm_up_walk"}
"""Steps in which the body works that send no picture, as flow and key, with the picture of the step before them that they share."""


def _sided(make: Callable[[], Drawing], side: str) -> Drawing:
    return for_side(make(), side)


MAKERS: Final[tuple[Callable[[], Drawing], ...]] = (
    *SINGLE, *(partial(lying.leg_raise_level, placement) for placement in ("shin", "thigh")),
    *(partial(_sided, partial(wall.knee_to_wall_level, placement), side)
      for placement in ("below_knee", "mid_shin") for side in ("left", "right")),
    *(partial(_sided, make, side) for make in SIDED for side in ("left", "right")),
    *LOOPS)
"""What makes each drawing; loops last, as each takes ten times as long as a still."""


@cache
def _made(make: Callable[[], Drawing]) -> Drawing:
    return make()


@cache
def poses() -> dict[str, Drawing]:
    """Return all drawings by name."""
    found = {drawing.name: drawing for drawing in map(_made, MAKERS)}
    return found | {name: replace(found[same], name=name) for name, same in ALSO.items()}


@cache
def pose(name: str) -> Drawing | None:
    """Return the drawing of a name, or of words that make one, without making those after it; None if there is none."""
    wanted = slug(name)
    same = ALSO.get(wanted, wanted)
    return next((replace(drawing, name=wanted) for drawing in map(_made, MAKERS) if drawing.name == same), None)
