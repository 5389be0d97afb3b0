"""A commit that stops in the middle of a write: the process dies of it, or the file can't grow and the bot ends by itself.

The limit is the system's own (RLIMIT_FSIZE): the write that would pass it is cut short there, and the next one kills the
process with SIGXFSZ, or fails with EFBIG where that signal is ignored. SQLite's file stays whole either way.
"""

from __future__ import annotations

import asyncio
from pathlib import Path

import pytest

from companion.channels.script import parse
from tests.by_night import BY_NIGHT
from tests.crash.life import Living, Stand, parts_of
from tests.crash.nursery import Nursery
from tests.crash.test_kills import AT_ONCE, SCRIPTS, faults

FRAME = 4096 + 24
"""Bytes of one page in the write-ahead log, with its head (SQLite's file format, from memory)."""

LEAST = 40_000
"""Below it the shared-memory file (32 KiB) could not be made."""


STEP, NO_ROOM_STEP = (FRAME // 2, 3 * FRAME // 2) if BY_NIGHT else (5 * FRAME // 2, 5 * FRAME // 2)


@pytest.mark.parametrize(("die_of_it", "step"), [(True, STEP), (False, NO_ROOM_STEP)], ids=["killed", "no room"])
async def test_a_commit_that_stops_anywhere_is_kept_whole_or_not_at_all(
        die_of_it: bool, step: int, nursery: Nursery, tmp_path: Path) -> None:
    script = parse((SCRIPTS / "knee_to_wall.txt").read_text(encoding="utf-8"))
    parts, stand = parts_of(script), Stand(script.begins, tmp_path / "none", {})
    for number, lines in enumerate(parts[:5]):
        stand = (await Living(nursery, stand, tmp_path / str(number), None).live(lines)).after
    lines = parts[5]
    wanted = await Living(nursery, stand, tmp_path / "wanted", None).live(lines)
    limits = range(max(LEAST, wanted.logged[0]), wanted.logged[-1], step)
    assert len(limits) > 10
    places, wrong = asyncio.Semaphore(AT_ONCE), list[str]()

    async def one(limit: int) -> None:
        async with places:
            lived = await Living(nursery, stand, tmp_path / f"at-{limit}", None, largest_file=limit, die_of_it=die_of_it).live(lines)
            wrong.extend(f"{limit}: {fault}" for fault in [*faults(lived, wanted), *([] if lived.killed else ["nothing happened"])])

    await asyncio.gather(*map(one, limits))
    assert not wrong, "\n".join(wrong)
