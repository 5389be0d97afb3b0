"""Every pose there is a picture of, by name."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Final

from companion.pictures import drills, floors, squats
from companion.pictures.catalogue import Drawing, for_side, slug

SINGLE: Final = (
    squats.bands, squats.heels, squats.front, squats.slow, squats.wide, squats.fold, squats.view_film, squats.hand_on_back,
    squats.arms_forward_setup, squats.arms_forward_rack, squats.arms_forward, squats.pause_stops, squats.pause_watch,
    squats.hinge_setup, squats.hinge_to_squat, squats.hinge_watch, squats.walk, squats.chair,
    floors.lying_setup, floors.leg_raise_own, floors.leg_raise_strap, floors.leg_raise_level, floors.leg_raise_heel,
    floors.knee_to_wall_setup, floors.bird_dog_setup, floors.bird_dog_stick,
    floors.rock_back_setup, floors.rock_back_narrow, floors.rock_back_middle, floors.rock_back_wide, floors.rock_back_pillow,
    drills.hinge_with_stick, drills.hinge_to_wall, drills.knee_over_toes, drills.knee_over_toes_chair, drills.heel_lift,
    drills.pause_to_box, drills.sit_to_chair, drills.knee_across, drills.strap_raise, drills.calf_stretch, drills.plank,
)
SIDED: Final = (floors.hip_fold, floors.leg_raise, floors.leg_raise_eye, floors.knee_to_wall, floors.knee_to_wall_level,
                floors.bird_dog, floors.bird_dog_slow)
# Drills that look as a test does.
ALSO: Final = {"drill_rock_back": "rock_back_middle", "drill_pause_squat_three_stops": "pause_stops",
               "drill_hand_on_back_squat": "hand_on_back", "drill_bird_dog": "bird_dog_right",
               "squat_rounding": "squat_rounding_parallel"}


def _drawings() -> Iterator[Drawing]:
    yield from (draw() for draw in SINGLE)
    yield from (squats.rounding(band) for band in ("a_little_above", "parallel", "below"))
    yield from (for_side(draw(), side) for draw in SIDED for side in ("left", "right"))


@cache
def poses() -> dict[str, Drawing]:
    """All drawings by name."""
    found = {drawing.name: drawing for drawing in _drawings()}
    return found | {name: replace(found[same], name=name) for name, same in ALSO.items()}


def pose(name: str) -> Drawing | None:
    """The drawing of a name, or of words that amount to it; None where there is none."""
    return poses().get(slug(name))
