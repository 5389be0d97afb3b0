"""Films beside the turns: fetched from the channel, read one at a time, and their outcome in words and numbers."""

from __future__ import annotations

import os
import signal
from collections.abc import Awaitable, Callable, Mapping
from contextlib import AbstractContextManager, nullcontext, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Final

from companion.conversation.effects import FilmOf
from companion.conversation.events import FilmRead
from companion.record.picture_files import WHOLE_FILM
from companion.record.turn import FilmWanted

if TYPE_CHECKING:
    from companion.film.moves import MoveFilm

Fetch = Callable[[str, Path], Awaitable[Path]]
"""Brings a film by its reference to this machine, into a folder that is deleted after; returns its path. Raises OSError with a line for
the person where it can't."""

NOT_KEPT: Final = "The film itself is not kept: there is no room for it here, or it is not an MP4 or MOV file."
FAILED: Final = "Something went wrong on my side while I read that film. Say “back” and send it once more."
FILM_NUMBERS: Final = ("onset", "low", "high", "spread", "deepest", "bend")
TURNS: Final = ("1", "2", "3", "photo")
NUMBERS_OF: Final[dict[FilmOf, tuple[str, ...]]] = {"squats": FILM_NUMBERS, "shot": (), "shin": TURNS, "leg": TURNS,
                                                    "fold": ("angle",), "trunk": ("pelvis", "back")}
"""The names of the degrees that a film gives, by what is in it."""


async def read_wanted(wanted: FilmWanted, fetch: Fetch, reading: Callable[[int], AbstractContextManager[None]] = lambda _: nullcontext()
                      ) -> tuple[FilmRead, Mapping[str, bytes]]:
    """Fetch and read one film; whatever goes wrong is an outcome too. Returns that, and by file name pictures of it, and itself, where they
    are wanted. What was fetched is deleted before this returns. ``reading``: entered with the group of processes that read it."""
    import asyncio
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context

    from companion.film.folder import film_folder

    with film_folder() as folder:
        try:
            path = await fetch(wanted.film, Path(folder))
        except OSError as error:
            return _mend(wanted, str(error)), {}
        apart = ProcessPoolExecutor(1, get_context("spawn"), apart_and_last)  # not a thread: its arithmetic would hold up others' turns
        group, run = None, asyncio.get_running_loop().run_in_executor
        try:
            group = await run(apart, os.getpid)
            with reading(group):
                return await run(apart, outcome_of_film, wanted, path)
        except asyncio.CancelledError:
            if group is not None:
                with suppress(ProcessLookupError):
                    os.killpg(group, signal.SIGKILL)  # else this process could not end before the film is read
            raise
        finally:
            apart.shutdown(wait=False)


def apart_and_last() -> None:
    """Lead a group of processes of its own, end with the process that started this one, and take the processor only while nobody else wants
    it, where the system knows that (Linux), else after all others; as do the processes that this one starts."""
    from companion.film.decoder import end_with_parent

    os.setpgid(0, 0)
    end_with_parent()
    os.nice(19)
    if hasattr(os, "SCHED_IDLE"):
        with suppress(OSError):
            os.sched_setscheduler(0, os.SCHED_IDLE, os.sched_param(0))


def outcome_of_film(wanted: FilmWanted, path: Path) -> tuple[FilmRead, Mapping[str, bytes]]:
    """Return what a film shows, or the one thing to mend; and pictures of it."""
    from companion.film.footage import Unreadable
    from companion.film.measure import measured
    from companion.film.moves import moved
    from companion.film.reader import read_film
    from companion.film.shown import shown
    from companion.film.words import curve_text, said, to_mend

    try:
        footage = read_film(path)
        if wanted.what == "shot":
            mend = to_mend(footage)
            return (_mend(wanted, mend) if mend else
                    FilmRead(wanted.run, wanted.squat, "good", says="All cards are in view. That will do.")), {}
        if wanted.what != "squats":
            return _of_test(wanted, moved(footage, wanted.what)), {}
        film = measured(footage)
    except Unreadable as error:
        return _mend(wanted, str(error)), {}
    onset = film.onset
    values = (onset.depth, onset.low, onset.high, onset.spread, film.deepest, film.amplitude)
    numbers = tuple((name, None if value is None else round(value, 1)) for name, value in zip(FILM_NUMBERS, values, strict=True))
    outcome = "none" if onset.depth is None else "onset"
    read = FilmRead(wanted.run, wanted.squat, outcome, numbers, said(film), curve_text(film) if wanted.squat == "plain" else "")
    return read, {**(shown(path, footage, film) if wanted.shown else {}), **(_whole(path) if wanted.whole else {})}


def _whole(path: Path) -> Mapping[str, bytes]:
    """Return a film itself, by its file name; nothing where it is none of the files that phones make (MP4, MOV), which a chat can show."""
    data = path.read_bytes()
    return {f"{WHOLE_FILM}.mp4": data} if data[4:8] == b"ftyp" else {}


def _of_test(wanted: FilmWanted, film: MoveFilm) -> FilmRead:
    """Return what a film of a test gives: up to three turns, or how far the thigh comes before the pelvis turns with it."""
    from companion.film.words import move_lines

    names = NUMBERS_OF[wanted.what]
    taken = film.turns if film.onset is None else (film.turns[0] if film.onset.depth is None else film.onset.depth,)
    got = {"photo": taken[0]} if film.photo and "photo" in names else dict(zip(names, taken, strict=False))
    numbers = tuple((name, round(got[name], 1) if name in got else None) for name in names)
    return FilmRead(wanted.run, wanted.squat, "good", numbers, " ".join(move_lines(film)))


def _mend(wanted: FilmWanted, line: str) -> FilmRead:
    return FilmRead(wanted.run, wanted.squat, "mend", tuple((name, None) for name in NUMBERS_OF[wanted.what]), line)


async def local_film(ref: str, folder: Path) -> Path:
    """Return the path that was typed at this terminal; the film stays where it is."""
    return Path(ref).expanduser()
