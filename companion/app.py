"""The parts put together: one turn from what came in to what is committed. The only module here that imports flows."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections import OrderedDict
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Final

from companion.calendar.wishes import wishes_from, zone_from
from companion.channels.port import Address, Inbound, Outgoing, Tapped
from companion.clock import Clock
from companion.conversation.effects import Calendar, Effect, Erase, Record, Replan, Say
from companion.conversation.events import Happening, Invite, Settle
from companion.conversation.flow import Known
from companion.conversation.session import Session
from companion.conversation.step import prompt_now, step, unsettled
from companion.known import SAFETY, known_of
from companion.record import outbox, people, reminders
from companion.record.file import open_for_writing
from companion.record.keep import keep, put_message, take_back_timed
from companion.record.writer import Writer
from companion.reminders.calendar_file import calendar_file
from companion.reminders.kinds import KINDS, decide
from companion.reminders.replan import again, replan
from flows.catalogue import BOOK, CONSENT

_log = logging.getLogger(__name__)

STRANGERS_MOST: Final = 10_000
"""Conversations before consent are held in memory only; the oldest of more than these begins anew. Our choice."""

BACKWARDS: Final = timedelta(seconds=90)
"""A clock that went back by more than this has its later work looked at again; our choice."""

SETTLING_MOST: Final = 60
"""Flows that may begin and end in one turn; more is a flow that runs in a circle."""

A_MORNING: Final = timedelta(hours=12)
"""How long the question of the morning after stands in for the one about the squats, so that only one comes; our choice."""

ON_TIME: Final = timedelta(hours=1)
"""A reminder sent within so long of its moment counts as sent at it; our choice."""

SETTLED_AS: Final = {"send": "sent", "stale": "stale", "drop": "dropped", "ignored": "ignored"}
CALENDAR_SAYS: Final = "Your squat days and reminders, for your own calendar. Open the file on your phone to add them."

SORRY: Final = "Something went wrong on my side, and your last message was not kept. Please send it again, or say “menu”."


def in_order(effects: Sequence[Effect], waited: float, told: set[str]) -> tuple[tuple[Effect, ...], float]:
    """The same effects, no message leaving before one that was said earlier in the turn, and none told twice in it
    (``told``, which grows); and how long the last waits."""
    ordered: list[Effect] = []
    for effect in effects:
        if isinstance(effect, Say):
            if effect.text in told and not effect.buttons:
                continue
            told.add(effect.text)
            waited = max(waited, effect.after)
            effect = replace(effect, after=waited)
        ordered.append(effect)
    return tuple(ordered), waited


class _Stranger:
    """Somebody who has not agreed to anything yet: nothing of them is in the file."""

    def __init__(self) -> None:
        self.session = Session()
        self.effects: list[Effect] = []


class Companion:
    """One bot: takes what people send, one committed turn each, and offers what is due.

    ``on_erase`` is told whose rows are being removed, so that what was saved beside the file goes too.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None] = lambda channel: None) -> None:
        """Opens the file. ``on_commit`` is told the channel whose outbox may have something new.

        Raises CannotOpen or AlreadyRunning (record.file).
        """
        self.db, self._lock = open_for_writing(database)
        self.path = database
        self.writer = Writer(self.db)
        self.clock = clock
        self.on_commit = on_commit
        self.on_erase: Callable[[int], object] = lambda person: None
        self._strangers: OrderedDict[Address, _Stranger] = OrderedDict()
        self._unkept: dict[int, Outgoing] = {}
        self._unkept_count = 0
        self._erased = False
        self._swept: datetime | None = None

    def close(self) -> None:
        """Close the file and let go of its lock."""
        self.db.close()
        self._lock.close()

    # turns ------------------------------------------------------------------------------------------------

    async def take(self, inbound: Inbound) -> None:
        """One turn, committed when this returns. One that fails is noted, answered kindly and counts as taken."""
        try:
            await self.writer.do(lambda db: self._turn(db, inbound))
        except Exception as error:
            if self.writer.broken:
                raise
            why = type(error).__name__
            _log.error("a turn failed (%s): %s", inbound.address.channel, why, exc_info=error)
            await self.writer.do(lambda db: self._failed(db, inbound, why))
        if self._erased:
            self.db.execute("pragma wal_checkpoint(truncate)")  # what was erased must not stay in the write-ahead log
            self._erased = False
        self.on_commit(inbound.address.channel)

    def _turn(self, db: sqlite3.Connection, inbound: Inbound) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None and people.seen_before(db, where.channel, inbound.update_id, now):
            return
        person = people.person_at(db, where.channel, where.id)
        if person is None:
            self._from_stranger(db, inbound, now)
            return
        people.mark_back(db, where.channel, where.id)
        take_back_timed(db, person, now)
        self._advance(db, person, people.load_session(db, person), inbound.event, now, (where.channel, where.id))

    def _advance(self, db: sqlite3.Connection, person: int, session: Session, event: Happening, now: datetime,
                 to: tuple[str, str] | None, offer: reminders.Reminder | None = None) -> None:
        """Step until the conversation waits for the person again, keeping each step's effects before the next."""
        known, waited, told = known_of(db, person, now), 0.0, set[str]()
        for _ in range(SETTLING_MOST):
            session, effects = step(BOOK, session, event, known)
            effects, waited = in_order(effects, waited, told)
            keep(db, person, effects, now, zone_from(known.facts, now), to, offer)
            if any(isinstance(effect, Erase) for effect in effects):
                self._erase(db, person, effects, now, to)
                return
            for effect in effects:
                if isinstance(effect, Replan):
                    replan(db, person, known_of(db, person, now).facts, now)
                elif isinstance(effect, Calendar):
                    put_message(db, person, Say(CALENDAR_SAYS, must_arrive=True), now, to, calendar_file(db, person, now))
            if not unsettled(session):
                people.save_session(db, person, session, now)
                return
            known, event = known_of(db, person, now), Settle()
        raise RuntimeError(f"{session.top.flow if session.stack else 'nothing'} runs in a circle")

    def _failed(self, db: sqlite3.Connection, inbound: Inbound, why: str) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None:
            people.note_failed(db, where.channel, inbound.update_id, now, why)
        person = people.person_at(db, where.channel, where.id)
        if person is None:
            self._say_unkept(where, [Say(SORRY)])
        else:
            put_message(db, person, Say(SORRY, must_arrive=True), now, (where.channel, where.id))

    def _erase(self, db: sqlite3.Connection, person: int, effects: Sequence[Effect], now: datetime,
               to: tuple[str, str] | None) -> None:
        people.erase(db, person, now)
        self.on_erase(person)
        self._erased = True
        if to:
            self._say_unkept(Address(*to), [effect for effect in effects if isinstance(effect, Say)])

    # before consent ---------------------------------------------------------------------------------------

    def _from_stranger(self, db: sqlite3.Connection, inbound: Inbound, now: datetime) -> None:
        """A turn that keeps nothing, until somebody agrees: then everything so far is kept at once."""
        known = Known({}, now)
        stranger = self._strangers.pop(inbound.address, None)
        if stranger is None:
            stranger = _Stranger()
            first = self._settle_stranger(stranger, known)
            agreed = isinstance(inbound.event, Tapped) and inbound.event.data.startswith(CONSENT.payload)
            if not agreed:  # what they wrote can't be an answer to a question they had not seen
                self._remember(inbound.address, stranger)
                self._say_unkept(inbound.address, first)
                return
        stranger.session, effects = step(BOOK, stranger.session, inbound.event, known)
        stranger.effects += effects
        decided = next((effect.value for effect in effects if isinstance(effect, Record)
                        and (effect.flow, effect.key) == (CONSENT.flow, CONSENT.key) and effect.status == "ok"), None)
        if decided == "yes":
            person = people.add_person(db, inbound.address.channel, inbound.address.id, inbound.name, now)
            keep(db, person, [effect for effect in stranger.effects if not isinstance(effect, Say)], now, "UTC+00:00")
            to = (inbound.address.channel, inbound.address.id)
            keep(db, person, [effect for effect in effects if isinstance(effect, Say)], now, "UTC+00:00", to)
            if unsettled(stranger.session):
                self._advance(db, person, stranger.session, Settle(), now, to)
            else:
                people.save_session(db, person, stranger.session, now)
            return
        said = [effect for effect in effects if isinstance(effect, Say)]
        if decided is not None:
            people.note_refusal(db, now, CONSENT.version)
        else:
            said += self._settle_stranger(stranger, known)
            self._remember(inbound.address, stranger)
        self._say_unkept(inbound.address, said)

    def _settle_stranger(self, stranger: _Stranger, known: Known) -> list[Say]:
        said: list[Say] = []
        while unsettled(stranger.session):
            stranger.session, effects = step(BOOK, stranger.session, Settle(), known)
            stranger.effects += effects
            said += [effect for effect in effects if isinstance(effect, Say)]
        return said

    def _remember(self, address: Address, stranger: _Stranger) -> None:
        self._strangers[address] = stranger
        if len(self._strangers) > STRANGERS_MOST:
            self._strangers.popitem(last=False)

    def _say_unkept(self, to: Address, said: Sequence[Say]) -> None:
        for say in said:
            self._unkept_count -= 1  # below zero: never the number of a row
            self._unkept[self._unkept_count] = outbox.unkept(self._unkept_count, to, say)

    # what a screen shows ----------------------------------------------------------------------------------

    async def open(self, address: Address) -> tuple[Say, ...]:
        """What the person at an address should be looking at, for a screen that opens; a stranger is greeted."""
        def look(db: sqlite3.Connection) -> tuple[Say, ...]:
            person = people.person_at(db, address.channel, address.id)
            if person is None:
                return ()
            session = people.load_session(db, person)
            return prompt_now(BOOK, session, known_of(db, person, self.clock.now())) if session.stack else ()
        return await self.writer.do(look)

    # reminders --------------------------------------------------------------------------------------------

    async def sweep(self) -> int:
        """Decide on what is due, one turn a reminder, and take back what has waited too long to leave; gives how many."""
        now, swept = self.clock.now(), 0
        if self._swept is None or now < self._swept - BACKWARDS:
            await self.writer.do(lambda db: self._look_again(db, now))
        self._swept = now
        for person, id in await self.writer.do(lambda db: outbox.gone_stale(db, now)):
            await self.writer.do(lambda db, person=person, id=id: self._too_late(db, person, id))  # type: ignore[misc]
            swept += 1
        while due := await self.writer.do(lambda db: reminders.due(db, now)):
            await asyncio.gather(*(self._offered(id) for id in due))  # together, so that they share commits
            swept += len(due)
            self.on_commit("")
        if swept:
            self.on_commit("")
        return swept

    async def _offered(self, id: int) -> None:
        try:
            await self.writer.do(lambda db: self._offer(db, id))
        except Exception as error:
            if self.writer.broken:
                raise
            _log.error("reminder %s could not be offered: %s", id, type(error).__name__, exc_info=error)
            await self.writer.do(lambda db: reminders.settle(db, id, "failed", self.clock.now()))

    def _offer(self, db: sqlite3.Connection, id: int) -> None:
        reminder, now = reminders.open_one(db, id), self.clock.now()
        if reminder is None or reminder.due_at > now:
            return  # another sweep was here
        person = reminder.person
        facts = known_of(db, person, now).facts
        decision = decide(reminder, now, wishes_from(facts), zone_from(facts, now), str(facts.get(SAFETY, "go")),
                          asked_already=reminders.asked_since(db, person, "morning", now - A_MORNING))
        if decision.until:
            reminders.put_off(db, id, decision.until)
            return
        if reminders.settle(db, id, SETTLED_AS[decision.what], now):
            invite = Invite(reminder.flow, reminder.day, missed=decision.what == "stale")
            if decision.what == "send" or (invite.missed and KINDS[reminder.kind].says_missed):
                offer = reminder if decision.what == "send" else None
                self._advance(db, person, people.load_session(db, person), invite, now, None, offer)
            if decision.what == "send":
                again(db, reminder, now)
        on_time = decision.what == "send" and now - reminder.due_at < ON_TIME
        replan(db, person, known_of(db, person, now).facts, now, since=reminder.due_at if on_time else None)

    def _too_late(self, db: sqlite3.Connection, person: int, id: int) -> None:
        """A reminder's message that could not leave in time: said once, where its kind is spoken of."""
        now, late = self.clock.now(), reminders.reopen_as_stale(db, id, self.clock.now())
        if late and KINDS[late.kind].says_missed:
            self._advance(db, person, people.load_session(db, person), Invite(late.flow, late.day, missed=True), now, None)

    def _look_again(self, db: sqlite3.Connection, now: datetime) -> None:
        """At the start, and where the clock went back: what was planned later than now is planned anew."""
        for person in reminders.made_later(db, now):
            replan(db, person, known_of(db, person, now).facts, now)


class CompanionOutbox:
    """The outbox of one channel, as its drainer wants it: each mark is committed before it returns. ``only``: one address
    of it, for a screen that belongs to one person."""

    def __init__(self, companion: Companion, channel: str, only: Address | None = None) -> None:
        self._companion, self._channel, self._only = companion, channel, only

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        """The oldest waiting message of each address, what is held in memory first."""
        unkept = self._companion._unkept
        first: dict[Address, Outgoing] = {}
        for message in unkept.values():
            if self._mine(message):
                first.setdefault(message.address, message)
        kept = outbox.due(self._companion.db.conn, self._channel, now, self._only.id if self._only else None)
        return [*first.values(), *(message for message in kept if message.address not in first)]

    def _mine(self, message: Outgoing) -> bool:
        return message.address == self._only if self._only else message.address.channel == self._channel

    async def next_due(self, now: datetime) -> datetime | None:
        """When to look again; None where nothing waits."""
        if any(map(self._mine, self._companion._unkept.values())):
            return now
        return outbox.next_due(self._companion.db.conn, self._channel, now)

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        """It arrived."""
        if self._companion._unkept.pop(id, None) is None:
            await self._companion.writer.do(lambda db: outbox.mark_sent(db, id, at, message_id))

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None:
        """It is given up."""
        if self._companion._unkept.pop(id, None) is None:
            await self._companion.writer.do(lambda db: outbox.mark_dropped(db, id, at, reason))

    async def mark_tried(self, id: int, at: datetime) -> None:
        """It failed this time."""
        if id > 0:
            await self._companion.writer.do(lambda db: outbox.mark_tried(db, id, at))

    async def mark_gone(self, address: Address, at: datetime, reason: str) -> None:
        """Nobody is there any more: nothing more is sent until they write again."""
        for id, message in list(self._companion._unkept.items()):
            if message.address == address:
                del self._companion._unkept[id]

        def gone(db: sqlite3.Connection) -> None:
            people.mark_gone(db, address.channel, address.id, at, reason)
            outbox.drop_for(db, address.channel, address.id, at, reason)
        await self._companion.writer.do(gone)
