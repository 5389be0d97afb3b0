"""What a world is made of, drawn from its seed."""

from __future__ import annotations

import random
from dataclasses import dataclass
from datetime import UTC, datetime

HABITS = ("quick", "typist", "wanderer", "hurt", "silent", "erases", "traveller")

MOMENTS = tuple(datetime(2026, *rest, tzinfo=UTC) for rest in ((3, 28, 21, 30), (10, 24, 21, 30), (10, 31, 21, 30), (4, 4, 5, 0)))
"""Before European clocks go forward; back; American ones back; and Lord Howe's, by half an hour."""

ZONES = ("Europe/Berlin", "UTC+00:00", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "Europe/London", "Pacific/Chatham")
"""The lifters' zones, by turns."""


@dataclass(frozen=True, slots=True)
class WorldPlan:
    """One world. ``faults``: of the machine and the network, each as (seconds from the start, kind, how much); ``begins``: what the clock
    shows at first; ``hours``: how long it goes on after the people have gone to bed; ``floods``: how often somebody who
    floods says the same."""

    seed: int
    lifters: int = 20
    strangers: int = 6
    flooders: int = 1
    seconds: float = 60.0
    faults: tuple[tuple[float, str, float], ...] = ()
    habits: tuple[str, ...] = HABITS
    begins: datetime = MOMENTS[0]
    hours: float = 0.0
    floods: int = 60


KINDS = ("clock", "clock", "down", "slow", "limit", "wild limit", "timeouts", "garbage", "again", "disk full", "disk sync", "disk fails",
         "disk slow", "crawling", "read-only", "kill", "stop", "second bot")

NIGHT = 30.0
"""Hours, in which every clock change of ``MOMENTS`` comes, and a prompt and a follow-up."""


def drawn(seed: int, lifters: int = 20) -> WorldPlan:
    """The world of a seed: up to six faults of any kinds within a minute, and after that a night in one of five."""
    rng = random.Random(f"world {seed}")
    faults = tuple(sorted((round(rng.uniform(5, 45), 2), rng.choice(KINDS), round(rng.random(), 3)) for _ in range(rng.randint(0, 6))))
    paused = 2.0 if any(kind == "wild limit" for _, kind, _ in faults) else 0.0  # an hour's pause may be among them
    return WorldPlan(seed, lifters, rng.randint(0, lifters // 2), rng.randint(0, min(50, max(1, lifters // 10))), faults=faults,
                     begins=rng.choice(MOMENTS), hours=rng.choice((paused, paused, paused, paused, NIGHT)))


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
    "pauses that nobody could wait for": WorldPlan(10, faults=((10.0, "wild limit", 1.0),), hours=2.0),
    "a second bot by a link, a hard link and without the lock": WorldPlan(11, lifters=4, faults=((10.0, "second bot", 0.0),)),
    "two people have one name": WorldPlan(12, lifters=4),
    "a disk that is full at the start": WorldPlan(13, lifters=4, faults=((8.0, "full start", 0.5), (8.1, "disk full", 0.0))),
    "a value is changed in a backup": WorldPlan(14, lifters=4, habits=("quick",)),
    "half of the write-ahead log is lost": WorldPlan(15, lifters=8, flooders=0, habits=("quick",), faults=((45.0, "log cut", 0.0),)),
    "nothing can be sent and somebody is in pain": WorldPlan(18, strangers=0, faults=((5.0, "limit", 1.0),), habits=("hurt",)),
    "nothing can be sent and somebody says every two seconds that it hurts": WorldPlan(
        19, lifters=2, strangers=0, flooders=0, seconds=90, faults=((44.0, "limit", 1.0),), habits=("insists",)),
    "a read-only disk": WorldPlan(16, faults=((12.0, "read-only", 0.5),)),
    "one chat says a thousand times that it hurts": WorldPlan(17, lifters=1, flooders=1, strangers=0, habits=("flooder",), floods=1000),
    **{f"a night in which clocks change, {begins:%d %B}": WorldPlan(20 + number, begins=begins, hours=NIGHT)
       for number, begins in enumerate(MOMENTS)},
    "a night after the clock was set forward a day": WorldPlan(30, faults=((30.0, "clock", 86400.0),), hours=NIGHT),
    "what a clock ahead had said waits, and the clock is set right": WorldPlan(
        32, faults=((14.0, "limit", 1.0), (15.0, "clock", 160_000.0), (40.0, "clock", -160_000.0)), hours=NIGHT),
    "a prompt may have arrived, and the clock is set back by minutes": drawn(1146),
    "a night after the clock was set back a day": WorldPlan(31, faults=((30.0, "clock", -86400.0),), hours=2 * NIGHT),
}
"""Each defect that was found by hand, as a world that holds what brought it about."""
