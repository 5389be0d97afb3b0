"""Whatever happens to the machine, the network, the disk and the people, what is promised holds; and each defect found by hand is a
world that fails without its mending."""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from companion.app import onboarding, service
from companion.app.conversations import Conversations
from companion.channels import drainer
from companion.cli.main import main
from companion.operate.backup import back_up
from companion.operate.metrics import Metrics
from companion.operate.restore import CannotRestore, restore
from companion.port import Delivered, Unsure
from companion.record import file as record_file
from companion.record import outbox, owed, persist, reminders
from companion.record.file import InstanceLock
from companion.record.timestamps import text_of
from tests.by_night import BY_NIGHT
from tests.simulation import world as simulated
from tests.simulation.plan import NAMED, WorldPlan, drawn
from tests.simulation.world import World

SEEDS = 200 if BY_NIGHT else 5
"""By day a fortieth of those that ``.ci/run`` lives through (``python -m tests.simulation 0 200 --named``), and a fifth of the named."""
AT_ONCE = 5


def lived(plan: WorldPlan, folder: Path) -> World:
    folder.mkdir()
    world = World(plan, folder)
    world.digest = world.run()
    return world


@pytest.mark.parametrize("first", range(0, SEEDS, AT_ONCE))
def test_what_is_promised_holds_in_every_drawn_world(tmp_path: Path, first: int) -> None:
    for seed in range(first, first + AT_ONCE):
        try:
            lived(drawn(seed), tmp_path / f"{seed}")
        except Exception as error:
            raise AssertionError(f"seed {seed} (python -m tests.simulation {seed})") from error


@pytest.mark.parametrize("name", NAMED if BY_NIGHT else sorted(NAMED)[::5])
def test_what_is_promised_holds_in_the_worlds_of_the_defects_found(tmp_path: Path, name: str) -> None:
    lived(NAMED[name], tmp_path / "world")


def test_a_seed_replays_exactly(tmp_path: Path) -> None:
    once, again = (lived(drawn(3), tmp_path / name) for name in "ab")
    assert once.log == again.log
    assert once.digest == again.digest != lived(drawn(4), tmp_path / "c").digest


def _clock_not_followed(patch: pytest.MonkeyPatch) -> None:
    async def nothing(self: Conversations) -> None:
        pass
    patch.setattr(Conversations, "follow_clock", nothing)


def _no_ranks(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(drainer.Drainer, "_fairly", lambda self, ready: iter(sorted(ready, key=lambda one: one.id)))


def _remembered(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(onboarding, "Erase", type(None))


def _not_owed(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(owed, "note", lambda *args: None)


def _not_watched(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(InstanceLock, "trouble", lambda self: "")


def _not_sent_again(patch: pytest.MonkeyPatch) -> None:
    mark = drainer.Drainer._mark

    async def once(self, message, outcome, at):
        await mark(self, message, Delivered("?") if isinstance(outcome, Unsure) else outcome, at)
    patch.setattr(drainer.Drainer, "_mark", once)


def _not_locked(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(record_file, "_LOCKED_HERE", Forgetful())
    patch.setattr(InstanceLock, "hold", lambda self: None)


class Forgetful(set[tuple[int, int]]):
    """Holds nothing."""

    def add(self, one: tuple[int, int]) -> None:
        pass


def _all_kept(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(persist, "_collapse", lambda *args: None)


def _unbounded(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(simulated, "pause_of", lambda asked: float(asked) if isinstance(asked, float) else 1.0)


def _waits_anew(patch: pytest.MonkeyPatch) -> None:
    collapse = persist._collapse
    patch.setattr(persist, "_collapse", lambda *args: collapse(*args) and None)


def _always_well(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(Metrics, "problem", lambda self: "")


def _head_not_kept(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(service, "head_beside", lambda path: None)


def _told_twice(patch: pytest.MonkeyPatch) -> None:
    put = persist.put_message

    def twice(*args: Any, **more: Any) -> None:
        for _ in range(2 if more.get("offer") else 1):
            put(*args, **more)
    patch.setattr(persist, "put_message", twice)


def _not_taken_back(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(reminders, "settled_after", lambda db, person, now: [])


def _all_taken_back(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(reminders, "settled_after", lambda db, person, now: [number for number, in db.execute(
        "select id from reminders where person = ? and state in ('sent', 'stale') and settled_at > ?", (person, text_of(now)))])


BROKEN: dict[str, tuple[str, Callable[[pytest.MonkeyPatch], None]]] = {
    "due times stay where they were": ("the clock is set back an hour", _clock_not_followed),
    "first come, first served": ("two hundred strangers, then pain", _no_ranks),
    "an erasure forgets nothing": ("strangers erase before consent", _remembered),
    "nothing is noted for strangers": ("the process is killed while strangers wait", _not_owed),
    "nothing is noted, stopped cleanly": ("the process is stopped cleanly while strangers wait", _not_owed),
    "the file is not watched": ("the file is deleted", _not_watched),
    "what may have arrived has": ("requests time out", _not_sent_again),
    "the file is not locked": ("a second bot by a link, a hard link and without the lock", _not_locked),
    "the same is answered each time": ("one chat says a thousand times that it hurts", _all_kept),
    "any pause is kept": ("pauses that nobody could wait for", _unbounded),
    "health is always well": ("nothing can be sent and somebody is in pain", _always_well),
    "what is said again waits anew": ("nothing can be sent and somebody says every two seconds that it hurts", _waits_anew),
    "nothing is kept outside the file": ("half of the write-ahead log is lost", _head_not_kept),
    "what a clock ahead had said stays": ("what a clock ahead had said waits, and the clock is set right", _not_taken_back),
    "what is due all the same is said anew": ("a prompt may have arrived, and the clock is set back by minutes", _all_taken_back),
    "a day is prompted twice": ("a night after the clock was set back a day", _told_twice),
}


@pytest.mark.parametrize("how", BROKEN if BY_NIGHT else [*BROKEN][::2])
def test_each_defect_shows_in_its_world_without_its_mending(tmp_path: Path, how: str, monkeypatch: pytest.MonkeyPatch) -> None:
    name, breaks = BROKEN[how]
    breaks(monkeypatch)
    with pytest.raises(AssertionError):
        lived(NAMED[name], tmp_path / "world")


@pytest.mark.parametrize(("name", "why"), [("a disk that is full at the start", "can't write the database"),
                                           ("a read-only disk", "attempt to write a readonly database")])
def test_a_start_that_fails_says_why_in_one_line(tmp_path: Path, name: str, why: str) -> None:
    failed = [line for line in lived(NAMED[name], tmp_path / "world").log if "can't start" in line]
    assert failed
    assert all(why in line for line in failed)


def test_of_two_people_with_one_name_neither_is_taken_for_the_other(tmp_path: Path) -> None:
    world = lived(NAMED["two people have one name"], tmp_path / "world")
    with contextlib.closing(sqlite3.connect(world.path)) as db, db:
        db.execute("update addresses set name = 'Sam'")
        answers = dict(db.execute("select person, count(*) from answers group by person").fetchall())
    several = CliRunner().invoke(main, ["log", "--as", "Sam", "--json", "--database", str(world.path)])
    assert several.exit_code == 2
    assert len(answers) > 1
    for person, count in answers.items():
        assert f"#{person} Sam" in several.output
        for one in (["--as", f"#{person}"], ["--number", str(person)]):
            told = CliRunner().invoke(main, ["log", *one, "--json", "--database", str(world.path)])
            assert len(told.output.splitlines()) == count


def test_a_backup_in_which_a_value_is_changed_is_not_restored(tmp_path: Path) -> None:
    world = lived(NAMED["a value is changed in a backup"], tmp_path / "world")
    copy = back_up(world.path, tmp_path / "copy.sqlite").path
    with contextlib.closing(sqlite3.connect(copy)) as db, db:
        number, = db.execute("select max(id) from answers").fetchone()
        db.execute("drop trigger answers_stay")
        db.execute("update answers set value = 1 where id = ?", (number,))
    with pytest.raises(CannotRestore, match=f"answer {number} is not what was written"):
        restore(copy, world.path, world.clock.now())


def test_a_clock_that_was_set_moves_only_what_was_made_before_it(tmp_path: Path) -> None:
    world = lived(NAMED["the clock is set forward an hour"], tmp_path / "world")
    assert world.clock.offset == timedelta(hours=1)
    assert len(world.people) <= outbox.MOST_AT_ONCE
