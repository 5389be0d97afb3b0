"""What is loaded when: little before the first words, all of it where many wait."""

from __future__ import annotations

import asyncio
import gc
import io
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from companion.app.preload import load_all
from companion.app.run import ScriptClock
from companion.base.loading import loading
from companion.channels import terminal
from companion.language.flags import classifier as of_flags
from companion.language.flags import network
from companion.language.meanings import meanings
from companion.language.pain import classifier as of_pain
from flows.catalogue import BOOK

ROOT = Path(__file__).parents[2]
NOW = datetime(2026, 3, 2, 9, tzinfo=UTC)

FIRST_WORDS = """
import sys, asyncio, pathlib
from companion.app.service import Companion
from companion.port import Address, Inbound, Typed
from companion.base.clock import SystemClock
from companion.app.run import running_writer

async def greet(companion):
    async with running_writer(companion):
        await companion.take(Inbound(Address("terminal", "sam"), Typed("hello"), name="sam"))

companion = Companion(pathlib.Path(sys.argv[1]), SystemClock())
asyncio.run(greet(companion))
assert len(companion.unsaved) == 2, companion.unsaved
print(*sorted(sys.modules))
"""


def test_the_first_words_to_a_stranger_wait_for_little_else(tmp_path: Path):
    done = subprocess.run([sys.executable, "-c", FIRST_WORDS, str(tmp_path / "c.sqlite")], capture_output=True, text=True,
                          check=True, timeout=60, cwd=ROOT)
    loaded = set(done.stdout.split())
    assert "flows.welcome" in loaded
    late = {"companion.language.pain.tables", "companion.pictures.draw", "companion.cli.play", "companion.operate.backup",
            "flows.squat_days", "flows.changes", "companion.screening.pairs", "companion.screening.findings",
            "statistics", "numpy", "apscheduler", "telegram", "importlib.metadata"}
    assert loaded & late == set()


def test_while_modules_are_loaded_no_garbage_is_looked_for():
    with loading():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_garbage_is_looked_for_again_where_loading_fails():
    with pytest.raises(ImportError), loading():
        raise ImportError("a module of ours")
    assert gc.isenabled()


def test_all_is_loaded_at_once_where_many_wait():
    load_all()
    assert all({"machine", "ahead"} <= vars(compiled).keys() for compiled in BOOK.flows.values())
    assert "companion.pictures.poses" in sys.modules
    assert all(loaded.cache_info().currsize for loaded in (of_flags.weights, network.network, of_pain._weights, meanings))


async def test_the_rest_is_loaded_while_the_first_words_are_read():
    done: list[str] = []

    class Lines(io.StringIO):
        def __next__(self) -> str:
            done.append("read on")
            return super().__next__()

    async def take(inbound: object) -> None:
        done.append("took")

    async def sweep() -> None:
        pass

    class Nothing:
        async def due(self, now: object) -> list[object]:
            return []

    await terminal.chat_piped(take, sweep, Nothing(), ScriptClock(NOW), "sam", (), Lines(), io.StringIO(),  # type: ignore[arg-type]
                              meanwhile=lambda: done.append("loaded"))
    await asyncio.get_running_loop().shutdown_default_executor()
    assert done[0] == "took"
    assert sorted(done) == ["loaded", "read on", "took"]
