"""``python -m tests.simulation SEED [TO] [--named] [--lifters N] [--at-once N] [--log]``: live through the worlds of these seeds, and
those of the defects found, and say what fails; a seed alone, with ``--log``, replays its world."""

from __future__ import annotations

import argparse
import logging
from concurrent.futures import ProcessPoolExecutor
from itertools import repeat
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import NamedTuple

from tests.simulation.plan import NAMED, drawn
from tests.simulation.world import World


class Lived(NamedTuple):
    """What came of one world, by its seed or name. ``failed``: what did not hold; ``prompts``: about squat days that arrived."""

    seed: int | str
    failed: str
    updates: int
    prompts: int
    pains: list[float]
    log: list[str]


def live(seed: int | str, lifters: int) -> Lived:
    """Live through the world of a seed, or through one that has a name."""
    logging.disable(logging.CRITICAL)
    failed = ""
    with TemporaryDirectory() as folder:
        world = World(NAMED[seed] if isinstance(seed, str) else drawn(seed, lifters), Path(folder))
        try:
            world.run()
        except Exception as error:
            failed = f"{type(error).__name__}: {error}"
    return Lived(seed, failed, world.ledger.count, world.ledger.count_prompts, world.ledger.pain_waits, world.log)


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.simulation")
    parser.add_argument("seed", type=int)
    parser.add_argument("to", type=int, nargs="?")
    parser.add_argument("--named", action="store_true", help="those of the defects found too")
    parser.add_argument("--lifters", type=int, default=20)
    parser.add_argument("--at-once", type=int, default=1, help="in so many processes")
    parser.add_argument("--log", action="store_true", help="print all that happened")
    wanted = parser.parse_args()
    began, worlds = perf_counter(), list[Lived]()
    seeds = [*range(wanted.seed, wanted.to or wanted.seed + 1), *(NAMED if wanted.named else ())]
    with ProcessPoolExecutor(wanted.at_once) as processes:
        for world in processes.map(live, seeds, repeat(wanted.lifters)):
            worlds.append(world._replace(log=[]))
            if world.failed:
                print(f"seed {world.seed}: {world.failed[:2000]}", flush=True)
            if wanted.log:
                print("\n".join(world.log))
    pains, failed = [one for world in worlds for one in world.pains], [world.seed for world in worlds if world.failed]
    print(f"{len(seeds)} worlds of {wanted.lifters} lifters, {sum(one.updates for one in worlds)} updates, "
          f"{sum(one.prompts for one in worlds)} prompts, {perf_counter() - began:.0f} s; pain answered {len(pains)} times in calm, after "
          f"{max(pains, default=0.0):.2f} s at most; failed: {failed or 'none'}")
    raise SystemExit(bool(failed))


if __name__ == "__main__":
    main()
