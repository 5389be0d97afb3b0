"""How long a film takes: fifteen seconds at thirty frames, read as the bot reads it; and the taps of others meanwhile."""

from __future__ import annotations

import asyncio
import os
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.latency import tapping
from tests.benchmarks.measured import Row, by_turns, compare, percentile, seconds
from tests.benchmarks.two_bots import begin_anew, ours

ROUNDS = 7


def _made(path: Path) -> None:
    os.environ.setdefault("MUJOCO_GL", "egl")
    from tests.films.camera import Film, Phone, make
    from tests.films.figure import Looks, Squat

    make(Film(1, Squat(standing=2.0, squats=3, down=2.5, up=1.2, between=.64), looks=Looks(), phone=Phone(noise=3, blur=.4)), path)


def _decoded(path: Path) -> None:
    import av

    with av.open(str(path)) as container:
        container.streams.video[0].thread_type = "AUTO"
        for frame in container.decode(video=0):
            frame.to_ndarray(format="gray")


async def _taps_beside(path: Path, folder: Path) -> tuple[list[float], list[float]]:
    """The milliseconds of taps while films are read one after the other, and of as many taps while none is."""
    from companion.app.films import local_film, read_wanted
    from companion.record.turn import FilmWanted

    busy, quiet = list[float](), list[float]()
    async with tapping() as (mine, _, taps), ours(folder, 1, mine) as companion:
        for turn in range(ROUNDS + 1):
            reading, rounds = asyncio.create_task(read_wanted(FilmWanted(1, ("", ""), str(path), "1", "plain"), local_film,
                                                              companion.held_back.reading)), 0
            while not reading.done():
                begin_anew(companion, 1)
                busy += await taps("ours")
                rounds += 1
            for _ in range(rounds):
                begin_anew(companion, 1)
                quiet += await taps("ours")
            if not turn:  # what is done once only, such as imports, is nobody's
                busy, quiet = [], []
    return busy, quiet


def rows() -> Iterator[Row]:
    """A film from its file to its onset, against only decoding its frames."""
    from companion.film.measure import measured
    from companion.film.reader import read_film

    with TemporaryDirectory() as folder:
        path = Path(folder, "film.mp4")
        _made(path)
        mine, theirs = by_turns(lambda: seconds(lambda: measured(read_film(path))) * 1000, lambda: seconds(lambda: _decoded(path)) * 1000,
                                rounds=ROUNDS)
        busy, quiet = asyncio.run(_taps_beside(path, Path(folder)))
    yield compare("a film of 15 s, 720 × 1280 at 30 frames, to its onset (wanted: 6,000 ms)", "its frames decoded by PyAV", mine, theirs,
                  "ms", "told only")
    yield compare("update to reply on the wire, p99, while a film is read", "the same, no film", [percentile(busy, .99)],
                  [percentile(quiet, .99)], "ms", "at most", 1.2)
