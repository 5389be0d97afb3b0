"""The bot is killed at the I/O calls of a conversation in turn, started again, and goes on: nothing is lost or doubled.

A script is lived in parts, cut where it says ``restart``. Each part is lived once undisturbed, from how things stood after
the part before; then once for each I/O call (by day for some of them), killed at it. What is kept at its end must be
what the undisturbed one kept; as the next part begins with a fresh start from just that, the rest is the same too.
"""

from __future__ import annotations

import asyncio
import traceback
from pathlib import Path

import pytest

from companion.channels.script import PersonInput, ScriptLine, parse
from tests.by_night import BY_NIGHT
from tests.crash.kept import doubled
from tests.crash.life import Living, Part, Stand, parts_of
from tests.crash.nursery import Nursery
from tests.crash.points import Point

SCRIPTS = Path(__file__).parent / "scripts"

AT_ONCE = 4
"""Bots that live side by side: half of their time they wait for the disk."""

TRIES = 5
"""Where an answer and the next turn happen to share a commit, there is one commit fewer, and the last is tried anew."""


KILLED = {"welcome": slice(None), "knee_to_wall": slice(1, None), "squat_day": slice(1, None), "coach": slice(1, None, 2)}
"""The parts of each script that are lived once for each I/O call; the others only lead to them."""

COMMITS_ONLY = ("coach",)
"""Killed before and after each commit while it works: in these is all that is a coach's own; calls of the Bot API, the start and the
stop are as in the others, and a point takes a tenth of a second of processor time."""

EVERY, EVERY_COMMIT = 40, 4
"""By day one point in so many, in ``COMMITS_ONLY`` one commit, beginning elsewhere in each part, and the first of each kind of call in
each script; by night all of them."""

HEARD = {"coach": (
    "You are a coach here", "For Sam: ask them to send me", "Kim is your coach here now", "Sam, sent to emergency care",
    "From your coach Kim: easy today", "has set the depth to keep: parallel", "2 lifters", "The report of Sam",
    "Sam has stopped sharing", "Kim is no longer a coach here")}
"""What must be said in the killed parts, so that they stay about what they are meant to be about."""


@pytest.mark.parametrize("name", KILLED)
async def test_killed_at_any_io_call_it_goes_on_as_if_it_had_not_been(name: str, nursery: Nursery, tmp_path: Path) -> None:
    script = parse((SCRIPTS / f"{name}.txt").read_text(encoding="utf-8"))
    stand = Stand(script.begins, tmp_path / "none", {})
    parts = parts_of(script)
    killed, wanted_points, heard, met = 0, 0, list[str](), set[str]()
    for number, lines in enumerate(parts):
        wanted = await Living(nursery, stand, tmp_path / f"part-{number}", None).live(lines)
        if number in range(len(parts))[KILLED[name]]:
            points = [*(wanted.starting if number < 2 else ()), *wanted.working, *(wanted.stopping if number == len(parts) - 1 else ())]
            if name in COMMITS_ONLY:
                points = [point for point in wanted.working if point[0].startswith("commit")]
            if not BY_NIGHT:
                points = some_of(points, number, met, EVERY_COMMIT if name in COMMITS_ONLY else EVERY)
            heard += [text for _, text in wanted.heard]
            wanted_points += len(points)
            killed += await all_of(nursery, stand, tmp_path / f"killed-{number}", lines, wanted, points)
        stand = wanted.after
    assert killed >= 0.95 * wanted_points
    assert all(any(words in text for text in heard) for words in HEARD.get(name, ()))
    print(f"{name}: killed at {killed} of {wanted_points} points")


@pytest.mark.parametrize(("sabotage", "call"), [
    ("confirm at once", "commit: before"), ("forget updates", "commit: after"), ("mark before sending", "sendMessage: before")])
async def test_a_bot_that_loses_or_doubles_something_when_killed_is_found_out(
        sabotage: str, call: str, nursery: Nursery, tmp_path: Path) -> None:
    """Each of these faults passes where nobody kills anything."""
    script = parse((SCRIPTS / "knee_to_wall.txt").read_text(encoding="utf-8"))
    first, *_ = parts_of(script)
    stand = (await Living(nursery, Stand(script.begins, tmp_path / "none", {}), tmp_path / "first", None).live(first)).after
    lines = [PersonInput("Ken", "safety check / yes / no / no")]
    wanted = await Living(nursery, stand, tmp_path / "wanted", None, sabotage).live(lines)
    points = [point for point in wanted.working if point[0] == call]
    found: list[str] = []
    for number, point in enumerate(points):
        try:
            found += faults(await Living(nursery, stand, tmp_path / f"killed-{number}", point, sabotage).live(lines), wanted)
        except AssertionError as error:
            found.append(str(error))
    assert found


def some_of(points: list[Point], part: int, met: set[str], every: int) -> list[Point]:
    """Return one of so many points, and the first of each kind that is not in ``met``, where they are noted."""
    first = [point for n, point in enumerate(points) if point[0] not in {*met, *(name for name, _ in points[:n])}]
    met |= {name for name, _ in points}
    return [point for n, point in enumerate(points) if point in first or n % every == part % every]


async def all_of(nursery: Nursery, before: Stand, folder: Path, lines: list[ScriptLine], wanted: Part, points: list[Point]) -> int:
    """Live the part once for each point, killed at it; gives how many."""
    places, wrong = asyncio.Semaphore(AT_ONCE), list[str]()
    folder.mkdir()

    async def one(number: int, point: Point) -> bool:
        async with places:
            try:
                for attempt in range(TRIES):
                    lived = await Living(nursery, before, folder / f"{number}-{attempt}", point).live(lines)
                    wrong.extend(f"{point}: {fault}" for fault in faults(lived, wanted))
                    if lived.killed:
                        return True
            except Exception as error:
                wrong.append(f"{point}: {''.join(traceback.format_exception(error))}")
            return False

    killed = await asyncio.gather(*(one(number, point) for number, point in enumerate(points)))
    assert not wrong, "\n".join(wrong)
    return sum(killed)


def faults(lived: Part, wanted: Part) -> list[str]:
    """What differs from the undisturbed life that may not."""
    found = [f"words of somebody who was erased are still in {name}" for name in lived.traces]
    for table in wanted.kept:
        if lived.kept[table] != wanted.kept[table] and not (table == "updates" and lived.said_again):
            extra = [row for row in lived.kept[table] if row not in wanted.kept[table]]
            missing = [row for row in wanted.kept[table] if row not in lived.kept[table]]
            found.append(f"{table}: too much {extra}, too little {missing}")
    twice = doubled(lived.heard, wanted.heard)
    if twice is None:
        found.append(f"heard {lived.heard}\n  instead of {wanted.heard}")
    elif len(set(twice)) < len(twice):
        found.append(f"somebody heard more than one message twice: {twice}")
    return found
