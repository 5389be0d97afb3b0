"""Reports and digests that a coach asks for: made beside the turn, once, also where the process ends."""

from __future__ import annotations

import asyncio
from datetime import timedelta

import pytest

from companion.port import Inbound, Tapped
from companion.record import coaching
from tests.coach.gym import KIM, SAM, Gym


async def test_a_digest_comes_at_their_hour(gym):
    await gym.linked()
    await gym.say("digest", "Every day", "07:00", who=KIM)
    due = gym.db.execute("select due_at from reminders where kind = 'digest' and state = 'open'").fetchone()[0]
    assert due == "2026-03-03T07:00:00.000Z"
    gym.clock.at = gym.clock.at.replace(day=3, hour=7, minute=1)
    await gym.companion.sweep()
    assert gym.heard(KIM)[-1].startswith("Nothing new of your lifter")  # though they are quiet hours: the coach chose the hour


async def test_the_report_comes_as_a_document_made_beside_the_turn(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.lifter_report.{gym.id_of(SAM)}")
    await gym.companion.background_done()
    row = gym.db.execute("select text, document, document_name, about from outbox where address = 'kim' order by id desc").fetchone()
    assert row[0] == "The report of sam, as it stands now."
    assert row[1].startswith("<!doctype html>")
    assert row[2:] == ("report.html", gym.id_of(SAM))
    assert coaching.latest_looks(gym.db, gym.id_of(SAM))[0][2] == "report"


async def test_a_report_that_is_made_while_the_view_is_ended_is_not_sent(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.companion.take(Inbound(KIM, Tapped(f"go.lifter_report.{sam}"), name="kim"))
    coaching.withdraw(gym.db, sam, kim, gym.clock.now())
    await gym.companion.background_done()
    assert not gym.db.execute("select 1 from outbox where document_name = 'report.html'").fetchall()


async def asked_for_as_the_process_ends(gym: Gym) -> None:
    await gym.companion.take(Inbound(KIM, Tapped(f"go.lifter_report.{gym.id_of(SAM)}"), name="kim"))
    for making in gym.companion._background:
        making.cancel()
    await asyncio.gather(*gym.companion._background, return_exceptions=True)


async def swept(gym: Gym) -> list[tuple[str, int]]:
    await gym.companion.sweep()
    await gym.companion.background_done()
    return gym.db.execute("select address, unasked from outbox where document_name = 'report.html'").fetchall()


async def test_a_report_asked_for_just_before_the_process_ended_is_made_once_at_the_next_start(gym):
    await gym.linked()
    await asked_for_as_the_process_ends(gym)
    assert await swept(gym) == []
    for _ in range(2):
        await gym.restart()
        assert await swept(gym) == [("kim", 0)]
        assert await swept(gym) == [("kim", 0)]


async def test_a_report_that_was_made_is_not_made_again_after_a_restart(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.lifter_report.{gym.id_of(SAM)}")
    await gym.companion.background_done()
    await gym.restart()
    assert len(await swept(gym)) == 1


@pytest.mark.parametrize("meanwhile", ["ended", "ended and begun anew", "a coach no more", "a day"])
async def test_a_report_of_before_is_not_made_where_it_is_wanted_no_more(gym, meanwhile):
    await gym.linked()
    await asked_for_as_the_process_ends(gym)
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    gym.clock.at += timedelta(days=1) if meanwhile == "a day" else timedelta(minutes=1)
    if meanwhile.startswith("ended"):
        coaching.withdraw(gym.db, sam, kim, gym.clock.now())
    if meanwhile == "ended and begun anew":
        coaching.link(gym.db, sam, kim, gym.clock.now())
    if meanwhile == "a coach no more":
        coaching.end_coach(gym.db, kim, gym.clock.now())
    await gym.restart()
    assert await swept(gym) == []


async def test_a_daily_digest_is_what_is_new_once_a_day(gym):
    await gym.linked()
    await gym.say("digest", "Every day", "07:00", who=KIM)
    gym.db.execute("delete from outbox")
    for _ in range(48):
        gym.clock.at += timedelta(hours=1)
        await gym.companion.sweep()
    assert [text.split("\n")[0] for text in gym.heard(KIM)] == ["Nothing new of your lifter since you last looked."] * 2
