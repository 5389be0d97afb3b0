"""What must hold in every world, noted as it happens and looked at as it happens and at the end."""

from __future__ import annotations

import contextlib
import sqlite3
from collections import defaultdict, deque
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from companion.calendar.preferences import preferences_from, zone_from
from companion.calendar.prompts import is_quiet
from companion.operate.heartbeat import PAIN_LATE, UNSENT_LATE
from companion.operate.metrics import JUMP_TOLD_FOR
from companion.port import Event, Outgoing, Rank
from companion.record.chain import chain_fault, head_beside
from companion.record.context import known_of
from companion.record.owed import STRANGERS_WAIT
from companion.record.timestamps import text_of
from companion.screening.levels import OPEN_LEVELS
from companion.screening.protocols import route

if TYPE_CHECKING:
    from tests.simulation.people import Person
    from tests.simulation.world import World

PAIN_WITHIN = 2.0
CALM_FOR = 45.0
"""Seconds without a fault after which nothing of one is felt any more: its own forty and the longest pause between two tries."""

SWEPT_WITHIN = 30.0
"""Seconds after a fault within which the next sweep has looked at what it changed."""


class Ledger:
    """The books of one world."""

    def __init__(self, world: World) -> None:
        self.world = world
        self.faults: list[float] = []
        self.wrong: list[str] = []
        self.arrived: set[int] = set()
        self.count = self.count_prompts = 0
        self.begun: deque[float] = deque(maxlen=30)
        self.to_chat: dict[str, float] = {}
        self.highest: dict[tuple[str, bool, bool], int] = {}
        self.hurting: dict[str, float] = {}
        self.pain_waits: list[float] = []
        self.last_wrote: dict[str, float] = {}
        self.last_heard: dict[str, float] = {}
        self.taken_in_pain: dict[str, float] = {}
        self.swept_last, self.swept_at = 0.0, world.clock.now()
        self.prompts: defaultdict[tuple[int, str, str, bool], dict[int, str]] = defaultdict(dict)
        self.too_early: set[int] = set()

    @property
    def now(self) -> float:
        return self.world.loop.time()

    def holds(self, good: bool, otherwise: str) -> None:
        """Note what does not hold; the drainer would take an exception for one of its own."""
        if not good:
            self.wrong.append(f"{self.now:.1f} {otherwise}")
            self.world.note(f"WRONG {otherwise}")

    def begins(self, message: Outgoing) -> None:
        """Thirty in a second and one a second to a chat are never passed, a restart apart."""
        chat = message.address.id
        if len(self.begun) == 30 and self.begun[0] > self.world.begun:
            self.holds(self.now - self.begun[0] >= 1.0 - 1e-6, "more than thirty messages in a second")
        if (last := self.to_chat.get(chat)) is not None and last > self.world.begun:
            self.holds(self.now - last >= 1.0 - 1e-6, f"two messages within a second to {chat}")
        self.begun.append(self.now)
        self.to_chat[chat] = self.now

    def delivered(self, message: Outgoing) -> None:
        """In order per chat, pain apart; pain within two seconds unless something went wrong lately."""
        chat = message.address.id
        self.last_heard[chat] = self.now
        self.arrived.add(message.id)
        if message.id > 0 and message.rank in (Rank.PAIN, Rank.MOVEMENT, Rank.ANSWER):
            row = self.world.companion.db.execute("select unasked from outbox where id = ?", (message.id,)).fetchone()
            line = chat, message.rank is Rank.PAIN, bool(row and row[0])  # what a coach is alerted to leaves beside their own
            self.holds(message.id >= self.highest.get(line, 0), f"out of order to {chat}")
            self.highest[line] = message.id
        if message.id > 0 and message.rank is Rank.REMINDER:
            self._prompt(message)
        if message.rank in (Rank.PAIN, Rank.PAIN_OF_STRANGER):
            self.taken_in_pain.pop(chat, None)
        since = self.hurting.pop(chat, None) if message.rank in (Rank.PAIN, Rank.PAIN_OF_STRANGER) else None
        if since is not None and message.rank is Rank.PAIN:  # who has erased themselves is a stranger
            self._pain(chat, self.now - since)

    def in_pain(self, person: Person) -> None:
        """Somebody has said that something hurts."""
        self.hurting.setdefault(person.address.id, self.now)

    def _prompt(self, message: Outgoing) -> None:
        """One prompt of a kind about a day, and none in quiet hours of the zone the person is in. Who was told, by a clock set ahead, that
        one came too late is prompted all the same once the clock is right; so is who was prompted before the day by such a clock, where
        the bot can't know that it arrived."""
        db, set_ahead = self.world.companion.db, any(kind == "clock" for _, kind, _ in self.world.plan.faults)
        row = db.execute("select r.person, r.kind, r.day, r.state = 'stale', r.due_at from outbox o join reminders r on r.id = o.reminder "
                         "and r.day <> '' where o.id = ?", (message.id,)).fetchone()
        if row is None:
            return
        person, kind, day, missed, due_at = row
        self.count_prompts += 1
        told, now = self.prompts[person, kind, day, set_ahead and bool(missed)], self.world.clock.now()
        told[message.id] = due_at
        if set_ahead:
            self.clock_set()
        others = [one for one in told if one != message.id and (one not in self.too_early or db.execute(
            "select 1 from outbox where id = ? and message is not null", (one,)).fetchone())]
        self.holds(not others, f"two prompts about {day} to {person}: {others} and {message.id}")
        self.holds(due_at <= text_of(now) or self._lately(SWEPT_WITHIN), f"a prompt about {day} to {person} before its time, {due_at}")
        facts = known_of(db.conn, person, now).facts
        quiet = all(is_quiet(at, preferences_from(facts), zone_from(facts, now))
                    for at in (now, now - timedelta(minutes=1)))  # it may be under way when they begin
        self.holds(not quiet or self._lately(3600), f"a prompt to {person} in quiet hours")

    def clock_set(self) -> None:
        """Note the prompts that came before their time."""
        now = text_of(self.world.clock.now())
        self.too_early |= {one for told in self.prompts.values() for one, due_at in told.items() if due_at > now}

    def _lately(self, within: float) -> bool:
        """Whether something went wrong within so many seconds."""
        return any(self.now - within < at for at in self.faults)

    def lost_time(self) -> None:
        """A bot starts by a clock that was set without its knowing. How long it was down nobody can tell it: pain counts from the start,
        and what a stranger said is too old where it is a day old by that clock."""
        self.taken_in_pain = dict.fromkeys(self.taken_in_pain, float("inf"))
        db = sqlite3.connect(self.world.path)
        with contextlib.closing(db):
            before = text_of(self.world.clock.now() - STRANGERS_WAIT)
            for chat, in db.execute("select address from owed where at < ?", (before,)):
                self.last_wrote.pop(chat, None)
                self.hurting.pop(chat, None)

    def swept(self, began: float, wall: datetime) -> None:
        """Health says so where pain is left without an answer and where the clock was set before this sweep began, and is well where
        nothing is wrong; of the same words to one chat one waits."""
        self.swept_last, self.swept_at = began, wall
        problem, db = self.world.metrics.problem(), self.world.companion.db
        mute = [chat for chat, since in self.taken_in_pain.items() if self.now - since > PAIN_LATE.total_seconds() + 1]
        self.holds(bool(problem) or not mute, f"health is well, and pain of {mute} is not answered")
        pause = 3600 if self.world.wild else 120
        self.holds(not problem or self._lately(pause + UNSENT_LATE.total_seconds()), f"nothing is wrong, and health says: {problem}")
        told = self.world.jumped > began or self.now - self.world.jumped > JUMP_TOLD_FOR or self.world.metrics.remark()
        self.holds(bool(told), "the clock was set, and health does not tell")
        twice = db.execute("select address, count(*) from outbox where settled_at is null and timed = 0 and unasked = 0 and document is "
                           "null and reminder is null group by address, text, buttons having count(*) > 1").fetchall()
        self.holds(not twice, f"the same answer waits twice: {twice}")

    def _pain(self, chat: str, waited: float) -> None:
        if any(self.now - waited - CALM_FOR < at for at in self.faults):
            return
        self.pain_waits.append(waited)
        self.holds(waited <= PAIN_WITHIN, f"pain of {chat} was answered after {waited:.1f} s")

    def confirmed(self, number: int, person: Person, event: Event, at: float) -> None:
        """What is confirmed is in the file."""
        self.count += 1
        self.last_wrote[person.address.id] = at
        if person.address.id in self.hurting:
            self.taken_in_pain.setdefault(person.address.id, self.now)
        kept = self.world.companion.db.execute("select 1 from updates where update_id = ?", (number,)).fetchone()
        limited = self.world.companion.rate_limit is not None and person.habit == "flooder"
        assert kept or limited, f"update {number} was confirmed and is not in the file"

    def at_the_end(self) -> None:
        """Everything has left, everybody was answered, no gate was crossed, one prompt a day, and health says how it is."""
        world, db = self.world, self.world.companion.db
        assert not self.wrong, self.wrong
        waiting = db.execute("select count(*) from outbox where settled_at is null and timed = 0 and (stale_at is null or stale_at > :now) "
                             "and (reminder is null or due_at <= :now)", {"now": text_of(world.clock.now())}).fetchone()[0]
        # what is stale, and what a clock set back made a prompt by night, may wait for quiet hours to end
        assert (waiting, len(world.companion.unsaved), len(world.inbox)) == (0, 0, 0), "something never left"
        assert db.execute("select count(*) from owed").fetchone()[0] == 0, "something is owed to strangers for ever"
        assert not self.hurting, f"pain was never answered: {self.hurting}"
        for person in world.people.values():
            chat = person.address.id
            if person.habit == "stranger" and chat in self.last_wrote:
                assert self.last_heard.get(chat, -1) >= self.last_wrote[chat], f"stranger {chat} was never answered"
        sent = {one for one, in db.execute("select id from outbox where message is not null")}
        assert sent <= self.arrived, f"sent, says the file, and never arrived: {sorted(sent - self.arrived)[:5]}"
        dropped = db.execute("select distinct dropped from outbox where dropped is not null").fetchall()
        assert {why for why, in dropped} <= {"the person wrote first", "too late", "said anew", "may have arrived"}, dropped
        assert db.execute("select count(*) from outbox where dropped = 'may have arrived' and rank <> 5").fetchone()[0] == 0
        assert not db.execute("select person, kind, day from reminders where state = 'sent' and day <> '' group by 1, 2, 3 "
                              "having count(*) > 1").fetchall(), "two prompts on a day"
        due = db.execute("select kind, person, due_at from reminders where state = 'open' and max(due_at, made_at) <= ?",
                         (text_of(self.swept_at),)).fetchall()
        assert not due, f"prompts that never went: {due}"
        self._gates()
        assert world.metrics.problem() == "", world.metrics.problem()

    def _gates(self) -> None:
        """No test was begun while the latest level closed it."""
        tests, closed = ",".join("?" * len(route())), ",".join("?" * len(OPEN_LEVELS))
        crossed = self.world.companion.db.execute(
            f"select r.person, r.flow, f.value from runs r join findings f on f.id = (select max(id) from findings g where g.person = "
            f"r.person and g.name = 'safety.level' and g.at < r.began_at) where r.flow in ({tests}) and f.value not in ({closed})",
            (*route(), *OPEN_LEVELS)).fetchall()
        assert not crossed, f"a closed test was begun: {crossed}"

    def at_the_end_of_the_file(self) -> None:
        """The chain holds, and no word of who was erased is in any file."""
        db = sqlite3.connect(self.world.path)
        assert chain_fault(db, head_beside(self.world.path)) == ""
        db.close()
        gone = [one.canary.encode() for one in self.world.people.values() if one.erased]
        for file in self.world.path.parent.iterdir():
            content = file.read_bytes()
            assert not [word for word in gone if word in content], f"erased words are in {file.name}"
