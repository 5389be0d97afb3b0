"""``python -m tests.films 300`` draws so many films of chance, reads each and prints the errors; ``--moves``: of the tests of shin, leg and
hip fold instead of squats. ``--kept FOLDER`` keeps what the decoder saw of each, so that a later run with the same folder only measures
again."""

from __future__ import annotations

import argparse
import json
import os
import sys
import tempfile
import time
from pathlib import Path

os.environ.setdefault("MUJOCO_GL", "egl")
os.environ.setdefault("LP_NUM_THREADS", "1")  # the software renderer


def main() -> int:
    """Draw, read and compare; returns 0."""
    from companion.film.footage import Unreadable
    from companion.film.moves import moved
    from tests.films.camera import drawn_by_chance, make
    from tests.films.figures import compared, footage_of, told
    from tests.films.moves import by_chance, told_of

    ask = argparse.ArgumentParser(prog="python -m tests.films")
    ask.add_argument("films", type=int)
    ask.add_argument("--seed", type=int, default=1000, help="the first film's seed")
    ask.add_argument("--kept", type=Path, help="a folder for what the decoder saw of each film")
    ask.add_argument("--drawn", action="store_true", help="only films that are in that folder already")
    ask.add_argument("--moves", action="store_true", help="films of shin, leg and hip fold")
    said = ask.parse_args()
    os.nice(10)
    figures, of_tests, began = [], [], time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(said.seed, said.seed + said.films):
            film = by_chance(seed) if said.moves else drawn_by_chance(seed)
            kept = (said.kept or Path(folder)) / f"{'move' if said.moves else ''}{seed}.json"
            if not kept.exists():
                if said.drawn:
                    continue
                kept.parent.mkdir(parents=True, exist_ok=True)
                path = Path(folder, "film.mp4")
                make(film, path)
                kept.write_text(json.dumps(_seen(path)), "utf-8")
            if said.moves:
                try:
                    of_tests.append((film, moved(footage_of(kept), film.squat.move)))
                except Unreadable:
                    of_tests.append((film, None))
            else:
                figures.append(compared(film, footage_of(kept)))
            print(f"\r{seed - said.seed + 1} of {said.films}, {time.monotonic() - began:.0f} s", end="", file=sys.stderr, flush=True)
    print("", file=sys.stderr)
    print(told_of(of_tests) if said.moves else told(figures))
    return 0


def _seen(path: Path) -> object:
    """What the decoder saw: read here, without the limits of its own process, since the film is our own."""
    from companion.film.decoder import read

    return read(str(path))


if __name__ == "__main__":
    sys.exit(main())
