"""Drawings of the warm-up: walking on the spot, easy squats to a chair."""

from __future__ import annotations

from dataclasses import replace

from companion.pictures import props
from companion.pictures.draw import FPS, Panel, eased, loop, there_and_back
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import Arm, Leg, Posture, between, joints_of
from companion.pictures.scene import Item, figure, moved
from companion.pictures.squats import STANDING_POSTURE, scene, squat


def warm_up_walk() -> Drawing:
    """Walking on the spot, a loop."""
    up = Posture(90, Leg(-90, -90), Arm(-70, -40), far=Leg(-35, -110, -20), far_arm=Arm(-110, -80))
    stood = Posture(90, Leg(-90, -90), Arm(-92, -75), far=Leg(-90, -90), far_arm=Arm(-92, -75))
    lift = [between(stood, up, share) for share in eased(FPS // 2)]
    steps = [*lift[::-1], *lift[1:-1]]
    right = [(*figure(joints_of(posture)), *props.floor(-1, 1)) for posture in steps]
    left = [_standing_on_far(_swap(posture)) for posture in steps]
    half = len(lift)
    return moving("a loop of somebody walking on the spot, seen from the side, arms loose.",
                  loop(right[0], right[1:half], left[half:], left[:half], right[half:]),
                  Panel((), (-0.42, -0.05, 0.42, 1.03), "Walk on the spot, arms loose"))


def _swap(posture: Posture) -> Posture:
    """Return the posture with near and far side swapped."""
    assert posture.far is not None
    assert posture.far_arm is not None
    return replace(posture, near=posture.far, far=posture.near, near_arm=posture.far_arm, far_arm=posture.near_arm)


def _standing_on_far(posture: Posture) -> tuple[Item, ...]:
    """Return a posture standing on its far leg."""
    there, here = joints_of(_swap(posture)), joints_of(posture)
    return (*moved(figure(here), there.hip[0] - here.hip[0], there.hip[1] - here.hip[1]), *props.floor(-1, 1))


def warm_up_chair() -> Drawing:
    """Easy squats to a chair."""
    sat = squat(1, 24, 5)
    hip = joints_of(sat).hip
    chair = props.seat(hip[0] + 0.14, hip[1] - 0.058)
    return moving("a loop of squats to a chair, from the side: stand in front of it, sit down, stand up, arms ahead as you sit.",
                  there_and_back(lambda share: scene(between(STANDING_POSTURE, sat, share), "", *chair), 2),
                  Panel((), (-0.56, -0.05, 0.46, 1.02), "Sit down, stand up"))
