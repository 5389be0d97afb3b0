"""What is due by itself: reminders, one turn each, what has waited too long to leave, and what a stopped process left to be done."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable, Coroutine, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any, Final, Protocol

from companion.app.consent import may_ask
from companion.app.dispatch import Report, Turn, show, tell_of_open_pain
from companion.base.clock import Clock
from companion.calendar.plan import is_squat_day
from companion.calendar.preferences import Value, plan_from, preferences_from, zone_from
from companion.calendar.prompts import is_quiet
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Show
from companion.conversation.events import Happening, Invite, Settle
from companion.conversation.session import Session
from companion.operate.counters import Counters
from companion.record import coaching, operator_requests, outbox, people, reminders
from companion.record.context import SAFETY, known_of
from companion.record.writer import Writer
from companion.reminders.kinds import KINDS, decide, leaves_until
from companion.reminders.planner import again, look_again, replan

_log = logging.getLogger(__name__)

BACKWARDS: Final = timedelta(seconds=90)
"""A clock that went back by more than this has its later work looked at again; our choice."""

OWED_FOR: Final = timedelta(days=1)
"""How long a report is still wanted that was asked for just before the process ended; our choice."""

A_MORNING: Final = timedelta(hours=12)
"""How long the question of the morning after stands in for the one about the squats, so that only one comes; our choice."""

SETTLED_AS: Final = {"send": "sent", "stale": "stale", "drop": "dropped", "ignored": "ignored"}

DATED_WAITS: Final = timedelta(hours=1)
OTHERS_WAIT: Final = timedelta(days=1)
"""When a reminder, about a day or not, is looked at again that waits for somebody to agree; our choice."""


class Bot(Protocol):
    """What a sweep needs of the companion."""

    writer: Writer
    clock: Clock
    watch: Counters
    path: Path
    catalogue: Catalogue
    bot: str
    erased: bool
    on_commit: Callable[[str], None]

    def advance(self, db: sqlite3.Connection, person: int, session: Session, event: Happening, now: datetime,
                to: tuple[str, str] | None, offer: reminders.Reminder | None = None) -> None:
        """Take an event of somebody's."""

    def forget_erased(self) -> None:
        """Empty the log of what was erased."""

    def make(self, report: Report) -> Coroutine[Any, Any, None]:
        """A report, drawn in a thread."""

    def do_beside(self, work: Coroutine[Any, Any, None]) -> None:
        """Begin something that no turn waits for."""


class Sweep:
    """Looks for what is due; one at a time."""

    def __init__(self, bot: Bot, db: sqlite3.Connection) -> None:
        self._bot, self._flows = bot, bot.catalogue
        self._swept: datetime | None = None
        self._owed = coaching.reports_owed(db, bot.clock.now() - OWED_FOR)

    async def run(self) -> int:
        """Decide on what is due, one turn a reminder, and take back what has waited too long to leave; gives how many."""
        now, swept = self._bot.clock.now(), 0
        for path in operator_requests.waiting(self._bot.path):
            if request := operator_requests.taken(path):
                await self._guarded(partial(operator_requests.carry_out, request=request, at=now))
                swept += 1  # it may have told somebody
            path.unlink(missing_ok=True)
        if self._bot.erased:
            self._bot.forget_erased()
        if self._swept is None or now < self._swept - BACKWARDS:
            for people_of in _few(await self._bot.writer.do(lambda db: reminders.from_later(db, now))):
                await asyncio.gather(*(self._guarded(partial(self._look_again, person=one)) for one in people_of))
        self._swept = now
        while self._owed:
            coach, lifter, *to = self._owed.pop()
            self._bot.do_beside(self._bot.make(Report(coach, lifter, (to[0], to[1]))))
        swept += bool(await self._guarded(lambda db: tell_of_open_pain(db, now)))
        for messages in _few(await self._bot.writer.do(lambda db: outbox.gone_stale(db, now))):
            done = await asyncio.gather(*(self._guarded(partial(self._too_late, message=one)) for one in messages))
            swept += sum(map(bool, done))
        while due := await self._bot.writer.do(lambda db: reminders.due(db, self._bot.clock.now())):
            await asyncio.gather(*(self._offered(id) for id in due))  # together, so that they share commits
            swept += len(due)
            self._bot.on_commit("")
        if swept:
            self._bot.on_commit("")
        return swept

    async def _guarded(self, job: Callable[[sqlite3.Connection], bool | None]) -> bool | None:
        """Do a job; one that fails is noted and takes nothing of the others with it."""
        try:
            return await self._bot.writer.do(job)
        except Exception as error:
            if self._bot.writer.broken:
                raise
            _log.error("part of a sweep failed: %s", type(error).__name__, exc_info=error)
            return None

    async def _offered(self, id: int) -> None:
        try:
            await self._bot.writer.do(lambda db: self._offer(db, id))
        except Exception as error:
            if self._bot.writer.broken:
                raise
            _log.error("reminder %s could not be offered: %s", id, type(error).__name__, exc_info=error)
            await self._bot.writer.do(lambda db: reminders.settle(db, id, "failed", self._bot.clock.now()))
            await self._guarded(lambda db: self._after_failed(db, id))

    def _after_failed(self, db: sqlite3.Connection, id: int) -> None:
        """One that failed is given up; the next of its kind still comes."""
        if settled := reminders.settled_one(db, id):
            person, now = settled[0].person, self._bot.clock.now()
            replan(db, person, known_of(db, person, now).facts, now, settled[0])

    def _offer(self, db: sqlite3.Connection, id: int) -> None:
        reminder, now = reminders.open_one(db, id), self._bot.clock.now()
        if reminder is None or reminder.due_at > now:
            return  # another sweep was here
        person = reminder.person
        facts = known_of(db, person, now).facts
        wishes, zone = preferences_from(facts), zone_from(facts, now)
        decision = decide(reminder, now, wishes, zone, str(facts.get(SAFETY, "go")),
                          asked_already=reminders.asked_since(db, person, "morning", now - A_MORNING))
        if decision.until:
            reminders.put_off(db, id, decision.until, now)
            return
        if decision.what == "send" and self._flows.consent_due.holds(facts):
            self._offer_question(db, reminder, now)
            return
        if reminders.settle(db, id, SETTLED_AS[decision.what], now):
            if decision.what == "send":
                self._bot.watch.reminder_offered()
            if decision.what == "send" and KINDS[reminder.kind].shows:
                show(db, Turn(person, now, None, self._bot.bot), Show(KINDS[reminder.kind].shows), self._flows.book)
            elif decision.what == "send":
                self._bot.advance(db, person, people.load_session(db, person), Invite(reminder.flow, reminder.day), now, None,
                              leaves_until(reminder, now, wishes, zone))
                again(db, reminder, now, reminder.round + 1)
            elif decision.what == "stale":
                self._say_missed(db, reminder, facts, now)
        replan(db, person, known_of(db, person, now).facts, now, reminder)

    def _offer_question(self, db: sqlite3.Connection, reminder: reminders.Reminder, now: datetime) -> None:
        """In place of the first reminder of somebody who is to be asked for consent again, that question; the reminder waits."""
        reminders.put_off(db, reminder.id, now + (DATED_WAITS if reminder.stale_at else OTHERS_WAIT), now)
        session = people.load_session(db, reminder.person)
        if may_ask(self._flows.book, self._flows.consent_again, session):
            self._bot.advance(db, reminder.person, session, Settle(), now, None)

    def _say_missed(self, db: sqlite3.Connection, reminder: reminders.Reminder, facts: Mapping[str, Value], now: datetime) -> None:
        """Say that a reminder came too late, where its kind is spoken of and its day is still what it was; the latest only."""
        person, kind = reminder.person, KINDS[reminder.kind]
        if self._flows.consent_due.holds(facts) or not kind.says_missed:
            return
        if not is_squat_day(plan_from(facts), date.fromisoformat(reminder.day)):
            return
        outbox.take_back_missed(db, person, now)
        offer = leaves_until(replace(reminder, stale_at=None), now, preferences_from(facts), zone_from(facts, now))
        self._bot.advance(db, person, people.load_session(db, person), Invite(reminder.flow, reminder.day, missed=True), now, None, offer)

    def _too_late(self, db: sqlite3.Connection, message: int) -> bool:
        """A message that could not leave in time. Quiet hours it waits out, and leaves then if its reminder is good for it
        still; else that is said once. Whether something was done."""
        waiting, now = outbox.waiting_one(db, message), self._bot.clock.now()
        if waiting is None:
            return False
        person, facts = waiting[0], known_of(db, waiting[0], now).facts
        wishes, zone = preferences_from(facts), zone_from(facts, now)
        if is_quiet(now, wishes, zone):
            return False
        settled = reminders.settled_one(db, waiting[1]) if waiting[1] is not None else None
        if settled is None:
            outbox.mark_dropped(db, message, now, "too late")
            self._bot.watch.message_dropped("too_late")
            return True
        reminder = replace(settled[0], stale_at=None) if settled[1] == "stale" else settled[0]
        if reminder.stale_at is None or reminder.stale_at > now:
            outbox.stay(db, message, leaves_until(reminder, now, wishes, zone).stale_at)
        elif outbox.take_back_offer(db, person, reminder.id, now):
            reminders.never_left(db, reminder.id, now)
            self._bot.watch.message_dropped("too_late")
            if str(facts.get(SAFETY, "go")) in KINDS[reminder.kind].needs:
                self._say_missed(db, reminder, facts, now)
        return True

    def _look_again(self, db: sqlite3.Connection, person: int) -> None:
        """At the start, and where the clock went back: what was planned later than now is planned anew."""
        now = self._bot.clock.now()
        look_again(db, person, known_of(db, person, now).facts, now)


def _few(numbers: Sequence[int]) -> Iterator[Sequence[int]]:
    """So few at a time that a reply never waits long behind them."""
    return (numbers[first:first + reminders.FEW] for first in range(0, len(numbers), reminders.FEW))
