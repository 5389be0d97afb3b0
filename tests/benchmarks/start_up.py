"""How soon the command line is there: its help, and the first message of a conversation; both in processes of their own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.measured import Row, by_turns, compare, seconds

ROUNDS = 11

INSTALLED = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""Both sides run from kept bytecode, as what is installed does: the first round, which is not counted, writes what is missing."""


def _runs(*arguments: str) -> Callable[[], float]:
    def once() -> float:
        return seconds(lambda: subprocess.run([sys.executable, *arguments], stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                                              check=True, env=INSTALLED)) * 1000
    return once


def _chat(folder: Path, count: Iterator[int]) -> float:
    """Milliseconds until the first words, on a new file each time; then its input ends."""
    def first_words() -> None:
        with subprocess.Popen([sys.executable, "-m", "companion", "chat", "--database", str(folder / f"{next(count)}.sqlite")],
                              stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=INSTALLED) as chat:
            assert chat.stdout is not None
            took.append(chat.stdout.readline())
            ended.append(seconds(lambda: chat.communicate(b"")))
    took: list[bytes] = []
    ended: list[float] = []
    whole = seconds(first_words)
    if not took[0].strip():
        raise RuntimeError("the conversation said nothing")
    return (whole - ended[0]) * 1000


def rows() -> Iterator[Row]:
    """Help against the library it rests on; a conversation against importing what a Telegram bot would be built on."""
    ours, theirs = by_turns(_runs("-m", "companion", "--help"), _runs("-c", "import click"), rounds=ROUNDS)
    yield compare("`companion --help`", "`import click`", ours, theirs, "ms", "at most", 2.0)
    with TemporaryDirectory() as folder:
        count = iter(range(1_000))
        ours, theirs = by_turns(lambda: _chat(Path(folder), count), _runs("-c", "import telegram.ext"), rounds=ROUNDS)
    yield compare("`companion chat` to its first message, new file", "`import telegram.ext`", ours, theirs, "ms", "at most", 1.0)
