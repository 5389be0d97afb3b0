"""How long a film takes: fifteen seconds at thirty frames, read as the bot reads it; and the taps of others meanwhile."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.measured import Row, by_turns, compare, seconds

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


def rows() -> Iterator[Row]:
    """A film from its file to its onset, against only decoding its frames."""
    from companion.film.measure import measured
    from companion.film.reader import read_film

    with TemporaryDirectory() as folder:
        path = Path(folder, "film.mp4")
        _made(path)
        ours, theirs = by_turns(lambda: seconds(lambda: measured(read_film(path))) * 1000, lambda: seconds(lambda: _decoded(path)) * 1000,
                                rounds=ROUNDS)
    yield compare("a film of 15 s, 720 × 1280 at 30 frames, to its onset (wanted: 6,000 ms)", "its frames decoded by PyAV", ours, theirs,
                  "ms", "told only")
