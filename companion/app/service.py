"""The parts put together: one turn from what came in to what is committed. The only module here that imports flows."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable, Coroutine, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any, Final

from companion.app.consent import renewal
from companion.app.dispatch import Report, Turn, carry_out
from companion.app.due import Sweep
from companion.app.onboarding import Strangers
from companion.app.rate_limit import SLOWER, Flood, Pace
from companion.base.clock import Clock
from companion.calendar.preferences import zone_from
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Effect, Erase, Redeem, Say
from companion.conversation.events import Happening, Settle
from companion.conversation.flow import Known
from companion.conversation.session import Session
from companion.conversation.step import prompt_now, step, unsettled
from companion.operate.counters import Counters
from companion.port import Address, Inbound, Outgoing, Typed
from companion.record import outbox, people, reminders, status
from companion.record.context import known_of
from companion.record.file import emptied_log, open_for_writing
from companion.record.persist import keep, put_message, take_back_timed
from companion.record.writer import CommitFailed, Writer
from flows.catalogue import CATALOGUE

_log = logging.getLogger(__name__)

SETTLING_MOST: Final = 60
"""Flows that may begin and end in one turn; more is a flow that runs in a circle."""

COUNTING: Final = "The timer is running. “Stop” ends it; if anything hurts, say so."

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
            if effect.after < waited:
                effect = replace(effect, after=waited)
        ordered.append(effect)
    return tuple(ordered), waited


class Companion:
    """One bot: takes what people send, one committed turn each, and offers what is due.

    ``on_erase`` is told whose rows are being removed, so that what was saved beside the file goes too.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None] = lambda channel: None,
                 catalogue: Catalogue | None = None) -> None:
        """Opens the file. ``on_commit`` is told the channel whose outbox may have something new; ``catalogue``: its flows, where they are
        not those of ``flows``.

        Raises CannotOpen or AlreadyRunning (record.file).
        """
        self.db, self._lock = open_for_writing(database)
        self.path = database
        self.catalogue = catalogue or CATALOGUE
        self.writer = Writer(self.db)
        self.clock = clock
        self.on_commit = on_commit
        self.watch = Counters()
        self.keep_months: int | None = None  # so long answers are kept; None: for good
        self.flood: Flood | None = None  # who sends too much is slowed, where a channel is open to anybody
        self.on_erase: Callable[[int], object] = lambda person: None
        self.strangers = Strangers(self.catalogue)
        self.unkept: dict[int, Outgoing] = {}
        self._unkept_count = 0
        self.erased = not emptied_log(self.db)  # where a reader held it up as the file was opened, it is tried again
        self.bot = ""  # its name, once the channel knows it
        self._reports: list[Report] = []
        self._beside: set[asyncio.Task[None]] = set()
        self._sweep = Sweep(self, self.db.conn)

    def called(self, bot: str) -> None:
        """The channel has told the bot's name: links lead to it."""
        self.bot = bot
        self._naming = asyncio.ensure_future(self.writer.do(lambda db: status.note(db, "bot.name", bot, self.clock.now())))

    def close(self) -> None:
        """Close the file and let go of its lock."""
        self.db.close()
        self._lock.close()

    # turns ------------------------------------------------------------------------------------------------

    async def take(self, inbound: Inbound) -> None:
        """One turn, committed when this returns. One that fails is noted, answered kindly and counts as taken.
        One too many of somebody who floods is passed over; the first of these is answered."""
        pace = self.flood.meet(inbound, self.clock.now()) if self.flood is not None else Pace.TAKE
        if pace is not Pace.TAKE:
            if pace is Pace.TELL:
                self._say_unkept(inbound.address, [Say(SLOWER)])
                self.on_commit(inbound.address.channel)
            return
        try:
            await self.writer.do(lambda db: self._turn(db, inbound))
        except Exception as error:
            if self.writer.broken:
                raise
            why = type(error).__name__
            _log.error("a turn failed (%s): %s", inbound.address.channel, why, exc_info=error)
            await self.writer.do(lambda db: self._failed(db, inbound, why))
            self.watch.turn_failed()
        else:
            self.watch.turn_taken()
        if self.erased:
            self.forget_erased()
        self.on_commit(inbound.address.channel)
        while self._reports:
            self.do_beside(self.make(self._reports.pop()))

    def forget_erased(self) -> None:
        """What was erased must not stay in the write-ahead log. A reader, such as a backup, can hold that up: then the next turn
        or sweep tries again, and nobody is kept waiting for it."""
        self.erased = True
        try:
            self.erased = not emptied_log(self.db)
        except sqlite3.Error as error:
            raise CommitFailed(f"the database could not be written: {error}") from error

    def do_beside(self, work: Coroutine[Any, Any, None]) -> None:
        task = asyncio.create_task(work)
        self._beside.add(task)
        task.add_done_callback(self._beside.discard)

    async def beside(self) -> None:
        """Come back when what is done beside the turns is done."""
        await asyncio.gather(*self._beside)

    async def make(self, report: Report) -> None:
        """A report, drawn in a thread: the loop answers others meanwhile."""
        try:
            page = await asyncio.to_thread(report.made, self.path, self.clock.now(), self.catalogue.book)
            await self.writer.do(lambda db: report.send(db, page, self.clock.now()))
            self.on_commit("")
        except Exception as error:
            _log.error("a report could not be made: %s", type(error).__name__, exc_info=error)

    def _turn(self, db: sqlite3.Connection, inbound: Inbound) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None and people.seen_before(db, where.channel, inbound.update_id, now):
            return
        here = people.here(db, where.channel, where.id)
        if here is None:
            self._from_stranger(db, inbound, now)
            return
        if here.gone:
            people.mark_back(db, where.channel, where.id)
        if here.counting:
            if self._changes_nothing(db, here, inbound.event, now):
                if isinstance(inbound.event, Typed):
                    put_message(db, here.person, Say(COUNTING), now, (where.channel, where.id))
                return
            self.watch.message_dropped("wrote_first", take_back_timed(db, here.person, now))
        self.advance(db, here.person, here.session, inbound.event, now, (where.channel, where.id))

    def _changes_nothing(self, db: sqlite3.Connection, here: people.Here, event: Happening, now: datetime) -> bool:
        """Whether what came while a hold is counted is nothing but a second tap, or words that answer nothing: then it is counted on."""
        known = self._known(db, here.person, now)
        session, effects = step(self.catalogue.book, here.session, event, known)
        return session._replace(at=here.session.at) == here.session and all(isinstance(effect, Say) for effect in effects) and (
            not self.catalogue.consent_due.holds(known.facts))

    def advance(self, db: sqlite3.Connection, person: int, session: Session, event: Happening, now: datetime,
                 to: tuple[str, str] | None, offer: reminders.Reminder | None = None) -> None:
        """Step until the conversation waits for the person again, keeping each step's effects before the next."""
        known, waited, told, flows = self._known(db, person, now), 0.0, set[str](), self.catalogue
        for _ in range(SETTLING_MOST):
            first = renewal(flows.book, flows.consent_again, session, event, known) if flows.consent_due.holds(known.facts) else None
            session, effects = first or step(flows.book, session, event, known)
            effects, waited = in_order(effects, waited, told)
            keep(db, person, effects, now, zone_from(known.facts, now), to, offer)
            if any(isinstance(effect, Erase) for effect in effects):
                self._erase(db, person, effects, now, to)
                return
            carry_out(db, Turn(person, now, to, self.bot, self._reports), effects, self.catalogue.book)
            if not unsettled(session):
                people.save_session(db, person, session, now)
                return
            known, event = self._known(db, person, now), Settle()
        raise RuntimeError(f"{session.top.flow if session.stack else 'nothing'} runs in a circle")

    def _known(self, db: sqlite3.Connection, person: int, now: datetime) -> Known:
        """What a step may know, and how long answers are kept where that is limited."""
        known = known_of(db, person, now)
        return replace(known, facts={**known.facts, "keep.months": float(self.keep_months)}) if self.keep_months else known

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
        self.erased = True
        if to:
            self._say_unkept(Address(*to), [effect for effect in effects if isinstance(effect, Say)])

    # before consent ---------------------------------------------------------------------------------------

    def _from_stranger(self, db: sqlite3.Connection, inbound: Inbound, now: datetime) -> None:
        """A turn that keeps nothing, until somebody agrees: then everything so far is kept at once."""
        said, agreed, refused = self.strangers.hear(db, inbound, now)
        if refused is not None:
            people.note_refusal(db, now, refused)
        if agreed is None:
            self._say_unkept(inbound.address, said)
            return
        to = (inbound.address.channel, inbound.address.id)
        person = people.add_person(db, *to, inbound.name, now)
        keep(db, person, agreed.kept, now, "UTC+00:00")
        keep(db, person, agreed.said, now, "UTC+00:00", to)
        if agreed.code:
            carry_out(db, Turn(person, now, to), [Redeem(agreed.code)], self.catalogue.book)
        if unsettled(agreed.session):
            self.advance(db, person, agreed.session, Settle(), now, to)
        else:
            people.save_session(db, person, agreed.session, now)

    def _say_unkept(self, to: Address, said: Sequence[Say]) -> None:
        for say in said:
            self._unkept_count -= 1  # below zero: never the number of a row
            self.unkept[self._unkept_count] = outbox.unkept(self._unkept_count, to, say)

    # what a screen shows ----------------------------------------------------------------------------------

    async def open(self, address: Address) -> tuple[Say, ...]:
        """What the person at an address should be looking at, for a screen that opens; a stranger is greeted."""
        def look(db: sqlite3.Connection) -> tuple[Say, ...]:
            person = people.person_at(db, address.channel, address.id)
            if person is None:
                return ()
            session = people.load_session(db, person)
            return prompt_now(self.catalogue.book, session, known_of(db, person, self.clock.now())) if session.stack else ()
        return await self.writer.do(look)

    async def sweep(self) -> int:
        """Decide on what is due by itself (sweeping.Sweep.run)."""
        return await self._sweep.run()
