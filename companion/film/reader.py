"""Reading a film: the decoding process is run, watched and believed only as far as its answer has the right shape."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Final

from companion.film import can_read
from companion.film.footage import MOST_BYTES, MOST_SECONDS, Footage, Unreadable, footage_from

WALL_SECONDS: Final = 300.0
"""Seconds that a film may take (choice): on a busy machine its reading waits for all others; its own work is limited to CPU_SECONDS."""
ANSWER_BYTES: Final = 32 * 2**20

NOT_HERE: Final = "Films can't be read here: this companion was installed without its film part. Everything else works as before."
EMPTY: Final = "That file is empty. Send the film once more, as a file if you can."
TOO_BIG: Final = "That file is over 20 MB, more than I can fetch. Film with fewer pixels, or cut it to the squats themselves."
NO_FILM: Final = "That is not a film I can read, or it broke off on the way. Send it once more, as a file if you can."
TOO_LONG: Final = f"That film is longer than {MOST_SECONDS / 60:g} minutes. Cut it to standing still and three squats, and send it again."
TOO_LARGE: Final = "That film has more pixels than I can read. Film in 1080p or 720p and send it again."
TOO_SLOW: Final = "That film took too long to read, so I stopped. Film in 720p, cut it to the squats, and send it again."

_REFUSALS: Final = {"too_long": TOO_LONG, "no_film": NO_FILM, "too_large": TOO_LARGE}


def read_film(path: Path, seconds: float = WALL_SECONDS) -> Footage:
    """Return what a film holds. Raises Unreadable with one line for the lifter.

    The file is opened only by another process, in an empty environment, since ours may hold the bot's token. ``seconds``: by the wall
    clock, after which it is killed.
    """
    if not can_read():
        raise Unreadable(NOT_HERE)
    try:
        size = path.stat().st_size if path.is_file() else -1
    except OSError:
        size = -1
    if size <= 0:
        raise Unreadable(EMPTY if size == 0 else NO_FILM)
    if size > MOST_BYTES:
        raise Unreadable(TOO_BIG)
    code, text = run_apart("companion.film.decoder", path.absolute(), seconds=seconds)
    if code == -9 or code == -24:  # killed for memory, or out of its seconds (SIGXCPU)
        raise Unreadable(TOO_SLOW)
    try:
        told = json.loads(text)
        if code == 3:
            raise Unreadable(_REFUSALS.get(str(told["refused"]), NO_FILM))
        if code != 0:
            raise Unreadable(NO_FILM)
        return footage_from(told)
    except (ValueError, KeyError, TypeError, OverflowError) as error:
        raise Unreadable(NO_FILM) from error


def run_apart(module: str, *given: Path, told: bytes = b"", seconds: float = WALL_SECONDS) -> tuple[int, bytes]:
    """Run one of this room's modules on a film, as a process of its own that is killed after so many seconds; return its exit code and what
    it wrote. ``told``: its standard input. Raises Unreadable where it takes too long."""
    with tempfile.TemporaryFile() as asked, tempfile.TemporaryFile() as answer:  # not pipes, so that the limit of a file's size holds
        asked.write(told)
        asked.seek(0)
        command = [sys.executable, "-m", module, *map(str, given)]
        with subprocess.Popen(command, stdin=asked, stdout=answer, stderr=subprocess.DEVNULL,
                              env=_environment()) as running:  # in our own group, so that both are held back by one signal
            try:
                code = running.wait(seconds)
            except subprocess.TimeoutExpired:
                raise Unreadable(TOO_SLOW) from None
            finally:
                running.kill()  # nothing, where it has ended
        answer.seek(0)
        return code, answer.read(ANSWER_BYTES)


def _environment() -> dict[str, str]:
    """Return the environment of the decoding process: nothing of ours but where programs and packages lie."""
    kept = ("PATH", "PYTHONPATH", "LANG", "HOME")
    return {name: os.environ[name] for name in kept if name in os.environ} | {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1"}

