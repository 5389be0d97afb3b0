"""``python -m tests.simulation SEED [TO] [--lifters N] [--log]``: live through the worlds of these seeds and say what fails."""

from __future__ import annotations

import argparse
import logging
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from tests.simulation.plan import drawn
from tests.simulation.world import World


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.simulation")
    parser.add_argument("seed", type=int)
    parser.add_argument("to", type=int, nargs="?")
    parser.add_argument("--lifters", type=int, default=20)
    parser.add_argument("--log", action="store_true", help="print all that happened")
    wanted = parser.parse_args()
    logging.disable(logging.CRITICAL)
    began, failed, updates, longest, pains = perf_counter(), list[int](), 0, 0.0, 0
    seeds = range(wanted.seed, wanted.to or wanted.seed + 1)
    for seed in seeds:
        with TemporaryDirectory() as folder:
            world = World(drawn(seed, wanted.lifters), Path(folder))
            try:
                world.run()
            except Exception as error:
                failed.append(seed)
                print(f"seed {seed}: {type(error).__name__}: {error}", flush=True)
            if wanted.log:
                print("\n".join(world.log))
            updates, pains = updates + world.ledger.count, pains + len(world.ledger.pain_waits)
            longest = max([longest, *world.ledger.pain_waits])
    print(f"{len(seeds)} worlds of {wanted.lifters} lifters, {updates} updates, {perf_counter() - began:.0f} s; pain answered {pains} "
          f"times in calm, after {longest:.2f} s at most; failed: {failed or 'none'}")
    raise SystemExit(bool(failed))


if __name__ == "__main__":
    main()
