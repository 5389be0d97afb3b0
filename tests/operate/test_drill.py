"""The whole drill: a backup while people write, damage, a restore, and the conversation goes on."""

import asyncio
import contextlib

import pytest

from companion.app.run import ScriptClock, running_writer
from companion.app.service import Companion
from companion.operate.backup import back_up
from companion.operate.doctor import examine, exit_code
from companion.operate.integrity import counts_of, open_read_only
from companion.operate.restore import restore
from companion.port import Address, Inbound, Typed
from companion.record import log, people
from tests.operate.build import NOW, damage, settings

WELCOME = ("hello", "yes", "yes", "cm and kg", "UTC", "yes")


@contextlib.asynccontextmanager
async def at_work(path):
    companion = Companion(path, ScriptClock(NOW))
    try:
        async with running_writer(companion):
            yield companion
    finally:
        companion.close()


async def say(companion, who, *words):
    for one in words:
        await companion.take(Inbound(Address("terminal", who), Typed(one), name=who))


def where(companion, who):
    person = people.person_at(companion.db.conn, "terminal", who)
    return people.load_session(companion.db.conn, person).top.state


async def test_a_backup_taken_under_writes_brings_the_conversation_back(tmp_path):
    file, backup = tmp_path / "c.sqlite", tmp_path / "b.sqlite"
    async with at_work(file) as companion:
        await say(companion, "ilka", *WELCOME, "about me", "175")
        asked = where(companion, "ilka")
        copying = asyncio.create_task(asyncio.to_thread(back_up, file, backup))
        for number in range(1000):
            if copying.done():
                break
            await say(companion, f"guest {number}", *WELCOME)
        taken = (await copying).counts
        await say(companion, "guest afterwards", *WELCOME)
        await say(companion, "ilka", "80")
        assert where(companion, "ilka") != asked
        assert companion.db.execute("select count(*) from persons").fetchone()[0] > taken["persons"]

    damage(file, "answers")
    assert exit_code(examine(settings(file), file, None, NOW)) == 2
    restored = restore(backup, file, NOW)
    with open_read_only(file) as db:
        assert counts_of(db) == restored.counts == taken
    assert exit_code(examine(settings(file, token=""), file, None, NOW)) == 0

    async with at_work(file) as companion:
        assert where(companion, "ilka") == asked
        await say(companion, "ilka", "80")
        answers = {row.key: row.value for row in log.answers_of(companion.db.conn, 1)}
        assert answers["mass"] == pytest.approx(80)
