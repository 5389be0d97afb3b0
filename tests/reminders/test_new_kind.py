"""A kind of reminder is one row: one that is added here is sent, listed, read by a coach and ended without another line."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest

from companion.coach.report import report_html
from companion.record import reminders
from companion.reminders.kinds import REMINDER_KINDS, ReminderKind
from companion.screening.levels import OPEN_LEVELS
from flows.catalogue import BOOK
from tests.coach.gym import KIM, SAM, Gym


@pytest.fixture
async def gym(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[Gym]:
    """Sam, whose coach is Kim, and a reminder to stretch at noon tomorrow."""
    monkeypatch.setitem(REMINDER_KINDS, "stretch", ReminderKind("stretch", "on_date", "stretching at home",
                        "stretch, at home", OPEN_LEVELS))
    one = Gym(tmp_path / "companion.sqlite")
    await one.start()
    await one.linked()
    due = (one.clock.now() + timedelta(days=1)).replace(hour=12, minute=0)
    reminders.add(one.db, one.id_of(SAM), "stretch", "retest", f"{due:%Y-%m-%d %H:%M}", "UTC", due, one.clock.now())
    yield one
    await one.stop()


def state(gym: Gym, kind: str = "stretch") -> str:
    return gym.db.execute("select state from reminders where kind = ? order by id desc", (kind,)).fetchone()[0]


async def listed(gym: Gym) -> str:
    return "\n".join(await gym.say("menu", "my reminders"))


async def test_it_is_listed_to_the_lifter(gym):
    assert "Tomorrow, 12:00: stretch, at home." in await listed(gym)


async def test_a_coach_reads_it(gym):
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "Next reminder: stretching at home, " in gym.heard(KIM)[-1]
    assert "Stretching at home" in report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)


async def test_it_stands_in_the_lifters_own_calendar(gym):
    await gym.say("my reminders", "A file for my calendar")
    (file,) = [message.document for message in gym.shown if message.document_name.endswith(".ics")]
    assert "SUMMARY:Stretch\\, at home" in file


@pytest.mark.parametrize("said", ["stop all reminders", "don't remind me"])
async def test_stop_all_reminders_ends_it_and_the_list_says_so(gym, said):
    await gym.say("menu", said)
    assert state(gym) == "replaced"
    assert "Your reminders are off." in await listed(gym)


async def test_quiet_hours_for_squat_days_alone_leave_it(gym):
    await gym.say("menu", "reminder times", "Not at all")
    assert state(gym) == "open"
    assert "stretch, at home" in await listed(gym)


@pytest.mark.parametrize(("level", "becomes"), [("go", "sent"), ("no_load", "sent"), ("clinician", "dropped")])
async def test_it_goes_at_the_levels_of_its_row(gym, level, becomes):
    gym.clock.at = gym.clock.now().replace(hour=12, minute=1) + timedelta(days=1)
    gym.db.execute("insert or replace into facts values (?, 'safety.level', ?, 1, ?)",
                   (gym.id_of(SAM), level, f"{gym.clock.now():%Y-%m-%dT%H:%M:%S.000Z}"))
    await gym.companion.sweep()
    assert state(gym) == becomes


async def test_what_nothing_ends_goes_on(gym):
    due = gym.clock.now() + timedelta(days=1)
    reminders.add(gym.db, gym.id_of(SAM), "morning", "morning", f"{due:%Y-%m-%d %H:%M}", "UTC", due, gym.clock.now())
    said = await gym.say("menu", "stop all reminders")
    assert state(gym, "morning") == "open"
    assert any(REMINDER_KINDS["morning"].goes_on in text for text in said)
    assert "how it is the morning after" in await listed(gym)
