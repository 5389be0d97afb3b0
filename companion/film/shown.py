"""A film shown: the frame in which the back begins to round, and one squat down as a short loop, for those who said it may be kept."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Final

import numpy as np

from companion.film.cards import ON_BODY
from companion.film.folder import film_folder
from companion.film.footage import Footage, Unreadable
from companion.film.measure import SquatFilm
from companion.film.overlay import CLIP, CLIP_RATE, STILL
from companion.film.reader import run_apart

MOST_SHOWN_BYTES: Final = 4 * 2**20
"""The largest file taken from the drawing process (choice; a clip of two seconds has some hundred kB)."""
DRAWING_SECONDS: Final = 60.0
_BEGINS: Final = {STILL: b"\xff\xd8\xff", CLIP: b"\0\0\0"}


def shown(path: Path, footage: Footage, film: SquatFilm) -> Mapping[str, bytes]:
    """Return the still and the clip of a film by their file names; without one that could not be drawn, which is never a reason to lose
    the reading."""
    with film_folder() as folder:
        try:
            run_apart("companion.film.overlay", path.absolute(), Path(folder), told=json.dumps(plan_of(footage, film)).encode(),
                      seconds=DRAWING_SECONDS)
            return dict(_taken(Path(folder)))
        except (Unreadable, OSError):
            return {}


def _taken(folder: Path) -> Iterator[tuple[str, bytes]]:
    for name, begins in _BEGINS.items():
        file = folder / name
        if file.is_file() and not file.is_symlink() and file.stat().st_size <= MOST_SHOWN_BYTES:
            data = file.read_bytes()
            if data.startswith(begins):
                yield name, data


def plan_of(footage: Footage, film: SquatFilm) -> dict[str, Any]:
    """Return what to draw: the frames of the first squat on its way down, some ten a second, and which of them is the still: at the onset,
    at the lowest point where there is none."""
    curves, squat = film.curves, film.squats[0]
    turns = {"shank": curves.shank, "thigh": curves.depth, "pelvis": curves.pelvis, "ribs": curves.ribs}
    begin, end = curves.times[squat.begin], curves.times[squat.bottom]
    inside = np.flatnonzero((footage.times >= begin) & (footage.times <= end))
    depths = np.interp(footage.times[inside], curves.times, curves.depth)
    whole = np.logical_and.reduce([np.isfinite(footage.corners[place][inside]).all(axis=(1, 2)) for place in ON_BODY])
    wanted = film.onset.depth if film.onset.depth is not None else np.nanmax(depths)
    still = inside[int(np.argmin(np.nan_to_num(np.abs(depths - wanted), nan=1e3) + 90 * ~whole))]
    every = max(1, round(1 / (CLIP_RATE * float(np.median(np.diff(footage.times))))))

    def frame(at: int) -> dict[str, Any]:
        """Return one frame's time, its cards with their turns from standing, and what is written over it."""
        time = float(footage.times[at])
        now = {place: float(np.interp(time, curves.times, values)) for place, values in turns.items()}
        bend = float(np.interp(time, curves.times, curves.flexion))
        cards = [(footage.corners[place][at].tolist(), f"{now[place]:.0f}" if np.isfinite(now[place]) else "") for place in ON_BODY
                 if np.isfinite(footage.corners[place][at]).all()]
        lines = [f"{name} {value:.0f} deg" for name, value in (("thigh", now["thigh"]), ("lower back", bend)) if np.isfinite(value)]
        return {"at": round(time, 5), "cards": cards, "lines": lines}

    return {"mirrored": footage.mirrored, "still": round(float(footage.times[still]), 5),
            "frames": [frame(at) for at in sorted({*inside[::every].tolist(), int(still), int(inside[-1])})]}
