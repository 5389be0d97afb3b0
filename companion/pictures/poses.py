"""All poses by name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache, partial
from typing import Final

from companion.pictures import drills, knee_across, kneeling, lying, squats, still_backs, wall, warm_up
from companion.pictures.drawing import Drawing, for_side, slug

Maker = Callable[[], Drawing]
SIDED: Final[tuple[Maker, ...]] = (lying.leg_raise_eye, wall.knee_to_wall, wall.knee_to_wall_level, kneeling.bird_dog, lying.hip_fold,
                                   lying.leg_raise, kneeling.bird_dog_slow)
# Names that share a drawing: drills that look like a test, and questions whose choice was skipped.
ALSO: Final = {"drill_hand_on_back_squat": "hand_on_back", "drill_bird_dog": "bird_dog_right",
               "leg_raise_setup_own": "lying_setup", "leg_raise_setup": "lying_setup"}

SHARED: Final = {
    "film_measure.plain_video": "view_film", "hand_on_back_squat.did": "hand_on_back",
    **{f"knee_to_wall.{side}{unit}_{turn}": f"knee_to_wall{unit and '_level_{placement}'}_{side}"
       for side in ("left", "right") for unit in ("", "_deg") for turn in (2, 3)},
    "knee_to_wall.check": "knee_to_wall_{odd}", "knee_to_wall.check_deg": "knee_to_wall_level_{placement}_{odd}",
    "knee_to_wall.other_check": "knee_to_wall_{other}", "knee_to_wall.other_check_deg": "knee_to_wall_level_{placement}_{other}",
    "leg_raise.check_do": "leg_raise_{odd}", "leg_raise.other_do": "leg_raise_{other}",
    "pause_squat.again_do": "pause_stops", "pause_squat.again_all": "pause_stops",
    **{f"prime.set_{n}": "drill_{name}" for n in (1, 2, 3)}, "squat_day.squatted": "squat_rounding", "warm_up.walk_more": "warm_up_walk"}
"""Steps in which the body works that send no picture, as flow and key, with the picture of the step before them that they share."""


MODULES: Final = drills, knee_across, kneeling, lying, squats, still_backs, wall, warm_up
PLACED: Final[dict[str, Maker]] = {f"knee_to_wall_level_{place}": partial(wall.knee_to_wall_level, place) for place in wall.PLACES}
MAKERS: Final[Mapping[str, Maker]] = {
    **{name: make for module in MODULES for name, make in vars(module).items()
       if getattr(make, "__annotations__", None) == {"return": "Drawing"} and make not in SIDED},
    **{f"{name}_{side}": partial(for_side, make, side) for side in ("left", "right")
       for name, make in ({make.__name__: make for make in SIDED} | PLACED).items()},
    **{f"rock_back_{width}": partial(kneeling.rock_back, width) for width in kneeling.KNEES_APART},
    **{f"leg_raise_setup_level_{place}": partial(lying.leg_raise_level, place) for place in ("shin", "thigh")}}
"""What makes each drawing: each function that takes nothing and gives one, by its name, and one for each side, width or place."""


@cache
def _made(name: str) -> Drawing:
    return replace(MAKERS[name](), name=name)


@cache
def poses() -> dict[str, Drawing]:
    """Return all drawings by name."""
    return {name: found for name in (*MAKERS, *ALSO) if (found := pose(name))}


def pose(name: str) -> Drawing | None:
    """Return the drawing of a name, or of words that make one; None if there is none."""
    wanted = slug(name)
    same = ALSO.get(wanted, wanted)
    return replace(_made(same), name=wanted) if same in MAKERS else None
