"""``python -m tests.films 300`` draws so many films of chance, reads each and prints the errors. ``--kept FOLDER`` keeps what the decoder
saw of each, so that a later run with the same folder only measures again."""

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
    from tests.films.camera import drawn_by_chance, make
    from tests.films.figures import compared, footage_of, told

    ask = argparse.ArgumentParser(prog="python -m tests.films")
    ask.add_argument("films", type=int)
    ask.add_argument("--seed", type=int, default=1000, help="the first film's seed")
    ask.add_argument("--kept", type=Path, help="a folder for what the decoder saw of each film")
    said = ask.parse_args()
    os.nice(10)
    figures, began = [], time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(said.seed, said.seed + said.films):
            film, kept = drawn_by_chance(seed), (said.kept or Path(folder)) / f"{seed}.json"
            if not kept.exists():
                kept.parent.mkdir(parents=True, exist_ok=True)
                path = Path(folder, "film.mp4")
                make(film, path)
                kept.write_text(json.dumps(_seen(path)), "utf-8")
            figures.append(compared(film, footage_of(kept)))
            print(f"\r{len(figures)} of {said.films}, {time.monotonic() - began:.0f} s", end="", file=sys.stderr, flush=True)
    print("", file=sys.stderr)
    print(told(figures))
    return 0


def _seen(path: Path) -> object:
    """What the decoder saw: read here, without the limits of its own process, since the film is our own."""
    from companion.film.decoder import read

    return read(str(path))


if __name__ == "__main__":
    sys.exit(main())
