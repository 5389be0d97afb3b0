"""What a world is made of, drawn from its seed."""

from __future__ import annotations

import random
from dataclasses import dataclass

HABITS = ("quick", "typist", "wanderer", "hurt", "silent", "erases")


@dataclass(frozen=True, slots=True)
class WorldPlan:
    """One world. ``faults``: of the machine and the network, each as (seconds from the start, kind, how much)."""

    seed: int
    lifters: int = 20
    strangers: int = 6
    flooders: int = 1
    seconds: float = 60.0
    faults: tuple[tuple[float, str, float], ...] = ()
    habits: tuple[str, ...] = HABITS


KINDS = ("clock", "down", "slow", "limit", "timeouts", "garbage", "again", "disk full", "disk sync", "disk slow", "kill", "stop")


def drawn(seed: int, lifters: int = 20) -> WorldPlan:
    """The world of a seed: up to six faults of any kinds within a minute."""
    rng = random.Random(f"world {seed}")
    faults = tuple(sorted((round(rng.uniform(5, 45), 2), rng.choice(KINDS), round(rng.random(), 3)) for _ in range(rng.randint(0, 6))))
    return WorldPlan(seed, lifters, rng.randint(0, lifters // 2), rng.randint(0, max(1, lifters // 10)), faults=faults)


NAMED = {
    "the clock is set back an hour": WorldPlan(1, faults=((18.0, "limit", 0.1), (20.0, "clock", -3600.0))),
    "the clock is set forward an hour": WorldPlan(1, faults=((20.0, "clock", 3600.0),)),
    "two hundred strangers, then pain": WorldPlan(2, lifters=6, strangers=200, habits=("in pain",)),
    "five accounts flood": WorldPlan(3, lifters=20, flooders=5),
    "strangers erase before consent": WorldPlan(4, lifters=2, strangers=30, seconds=200),
    "the process is killed while strangers wait": WorldPlan(
        5, lifters=4, strangers=30, seconds=80, faults=((3.0, "kill", 0.0), (9.0, "kill", 0.0))),
    "the process is stopped cleanly while strangers wait": WorldPlan(6, lifters=4, strangers=150, faults=((3.0, "stop", 0.0),)),
    "the file is deleted": WorldPlan(7, faults=((30.0, "file gone", 0.0),)),
    "requests time out": WorldPlan(8, faults=((10.0, "timeouts", 0.9),)),
    "the disk is full": WorldPlan(9, faults=((15.0, "disk full", 0.0), (40.0, "disk sync", 0.0))),
    "pauses that nobody could wait for": WorldPlan(10, faults=((10.0, "limit", 1.0),)),
}
"""Each defect that was found by hand, as a world that holds what brought it about."""
