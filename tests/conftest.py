"""How long hypothesis looks, what the unit part is, which process a test runs in, and the figures told at the end.

Hypothesis: ``ci`` by default, the same every time; ``night`` for hours, by HYPOTHESIS_PROFILE=night.
"""

from __future__ import annotations

import gc
import os
import re
import sqlite3
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from functools import cache
from pathlib import Path, PurePosixPath
from shutil import disk_usage
from typing import Final

import pytest
from hypothesis import HealthCheck, Phase, settings
from xdist.scheduler import LoadScopeScheduling

from companion.record import file

os.environ.setdefault("MUJOCO_GL", "egl")
os.environ.setdefault("LP_NUM_THREADS", "1")
"""Figures are drawn without a screen, in software, on one core; read where MuJoCo is imported first."""

_IN_MEMORY: Final = Path("/dev/shm")
"""Where tests write, if nobody said where and there are four gigabytes of it: thousands of small files, made and deleted, are a tenth of
the time on a disk. What a bot that is killed has written stands in the system's memory either way."""
if not os.environ.keys() & {"TMPDIR", "PYTEST_DEBUG_TEMPROOT"} and os.access(_IN_MEMORY, os.W_OK) and disk_usage(_IN_MEMORY).free > 4 << 30:
    os.environ["TMPDIR"] = tempfile.tempdir = str(_IN_MEMORY)

_SLOW = (HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much)

settings.register_profile("ci", max_examples=100, stateful_step_count=50, deadline=None, derandomize=True, database=None,
                          phases=(Phase.explicit, Phase.generate), suppress_health_check=_SLOW)
"""Without shrinking: a failure is told at once, with all its steps; the night's profile makes it short."""
settings.register_profile("night", max_examples=4_000, stateful_step_count=120, deadline=None, print_blob=True,
                          suppress_health_check=_SLOW)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))

UNIT: Final = ("tests/calendar", "tests/coach", "tests/conversation", "tests/export", "tests/language", "tests/pictures", "tests/record",
               "tests/reminders", "tests/screening", "tests/verify", "tests/base", "tests/house")
"""The unit part, ``-m unit``: what needs no network, no browser, no bot in a process of its own …"""
NOT_UNIT: Final = ("tests/coach/test_report_page.py", "tests/conversation/test_stateful.py")
"""… but these: Chromium, and the whole companion under whatever may happen."""

FIRST: Final = ("tests/crash", "tests/simulation", "tests/conversation/test_stateful.py", "tests/coach/test_report_page.py",
                "tests/test_access.py", "tests/cli/test_cli.py", "tests/films", "tests/channels", "tests/scripts", "tests/flows",
                "tests/reminders", "tests/test_doors.py", "tests/verify", "tests/screening/test_tuck_by_hand.py",
                "tests/clinic", "tests/language/test_turns.py", "tests/language/test_flags.py")
"""What runs first where there are several processes: the longest, so that none of them is left waiting for another at the end."""

PARTED: Final = ("tests/crash/test_kills.py", "tests/simulation/test_worlds.py", "tests/scripts/test_replay.py",
                 "tests/scripts/test_restart.py")
"""Files of which each script or world may run elsewhere."""
BY_FLOW: Final = ("tests/flows/test_every_flow.py", "tests/flows/test_every_move.py")
"""Files whose tests of one flow run in one process, together: its walks are looked for once."""


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    for item in items:
        if _is_unit(item.nodeid):
            item.add_marker(pytest.mark.unit)
    if hasattr(config, "workerinput"):
        items.sort(key=lambda item: next((n for n, place in enumerate(FIRST) if _within(item.nodeid, (place,))), len(FIRST)))


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    """With ``-m unit`` alone, the other files are not even read."""
    if config.option.markexpr != "unit" or collection_path.suffix != ".py":
        return None
    return True if not _is_unit(collection_path.relative_to(config.rootpath).as_posix()) else None


def pytest_collection_finish() -> None:
    """What thousands of collected tests hold is there to the end: no search for garbage has to look at it again (a tenth of the time)."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000)


def _is_unit(nodeid: str) -> bool:
    return _within(nodeid, UNIT) and not _within(nodeid, NOT_UNIT)


def _within(nodeid: str, places: Sequence[str]) -> bool:
    return _is_in(nodeid.partition("::")[0], tuple(places))


@cache
def _is_in(file: str, places: tuple[str, ...]) -> bool:
    return any(PurePosixPath(file).is_relative_to(place) for place in places)


# several processes (pytest-xdist) -----------------------------------------------------------------------------


class Together(LoadScopeScheduling):
    """Gives each process the tests of a file, or of a flow, at a time: they share what is made once for them all."""

    def _split_scope(self, nodeid: str) -> str:
        file, _, test = nodeid.partition("::")
        about = re.search(r"\[(\w+)", test) if file in PARTED + BY_FLOW else None
        return file if about is None else f"flow {about[1]}" if file in BY_FLOW else f"{file} {about[1]}"


@pytest.hookimpl(optionalhook=True, tryfirst=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: object) -> Together | None:
    if config.option.dist != "load":  # somebody asked for another way
        return None
    config.option.loadscopereorder = False  # they are in order already
    return Together(config, log)


@pytest.hookimpl(optionalhook=True, tryfirst=True)
def pytest_xdist_auto_num_workers(config: pytest.Config) -> int | None:
    """None of them for files and tests that are named: they are done sooner than another process has begun. Else one more than there
    are cores, as some tests wait for processes of their own."""
    return 0 if all(".py" in arg for arg in config.args) else (os.cpu_count() or 1) + 1


# the disk ----------------------------------------------------------------------------------------------------


_DURABLE: Final = file._PRAGMAS
_NEW_FILE: Final = file.private_file


class _Closed(sqlite3.Connection):
    """A connection that a test left open, closed as it goes: from 3.13 on Python warns of each, and warnings are errors here."""

    def __del__(self) -> None:
        with suppress(sqlite3.ProgrammingError):  # one of another thread
            self.close()


_connect: Final = sqlite3.connect
sqlite3.connect = lambda *args, **options: _connect(*args, **{"factory": _Closed} | options)  # type: ignore[assignment]


@pytest.fixture(scope="session", autouse=True)
def hasty(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Here no commit waits for the disk, and a new file begins as a copy of one that was migrated (2 ms of processor time, else 14). Bots
    that are killed (tests/crash) and commands are other processes: theirs wait and migrate."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(file, "_PRAGMAS", tuple(pragma.replace("synchronous=full", "synchronous=off") for pragma in _DURABLE))
        path = tmp_path_factory.mktemp("new") / "new.sqlite"
        db, lock = file.open_for_writing(path)
        db.close()
        lock.close()
        migrated = path.read_bytes()

        def begun(path: Path) -> None:
            _NEW_FILE(path)
            if not path.stat().st_size and path.suffix != ".lock":
                path.write_bytes(migrated)

        patched.setattr(file, "private_file", begun)
        yield


@pytest.fixture
def durable(monkeypatch: pytest.MonkeyPatch) -> None:
    """A file is made and opened as everywhere else but in tests."""
    monkeypatch.setattr(file, "_PRAGMAS", _DURABLE)
    monkeypatch.setattr(file, "private_file", _NEW_FILE)


# figures ------------------------------------------------------------------------------------------------------


@pytest.fixture
def told(request: pytest.FixtureRequest) -> Callable[[str], None]:
    """A line that is printed at the end of the run, whichever process the test runs in."""
    return lambda line: request.node.user_properties.append(("told", line))


NEEDED: Final = {"Chromium": "Install Chromium (on Debian and Ubuntu: apt install chromium), so that it is at /usr/bin/chromium."}
"""What a test that is skipped may say it lacks, and how to get it."""


def not_run(reasons: Sequence[str]) -> list[str]:
    """Return, for each thing that skipped tests lack, how many were not run, why, and how to get them."""
    return [f"NOT RUN: {count} tests, since {reason}. {how}" for reason, count in sorted(Counter(reasons).items())
            for how in [next((how for what, how in NEEDED.items() if what in reason), "")]]


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    skipped = [str(report.longrepr[2]).removeprefix("Skipped: ") for report in terminalreporter.stats.get("skipped", ())
               if isinstance(report.longrepr, tuple)]
    for line in not_run(skipped):
        terminalreporter.write_line(line)
    lines = [str(line) for reports in terminalreporter.stats.values() for report in reports if getattr(report, "when", "") == "call"
             for name, line in report.user_properties if name == "told"]
    if lines:
        terminalreporter.section("figures")
    for line in sorted(lines):
        terminalreporter.write_line(line)
