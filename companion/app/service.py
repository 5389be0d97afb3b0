"""The companion: one turn from the message received to the commit."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Final

from companion.app.conversations import Conversations
from companion.app.dispatch import carry_out
from companion.app.due import DueSweep
from companion.app.onboarding import Onboarding
from companion.app.rate_limit import SLOW_DOWN, Admission, RateLimit
from companion.base.clock import Clock
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Redeem, Say
from companion.conversation.events import Happening, Settle
from companion.conversation.step import prompt_now, step, unsettled
from companion.port import Address, Inbound, Rank, Tapped
from companion.record import outbox, owed, people, status
from companion.record.chain import cut, head_beside
from companion.record.file import CannotOpen
from companion.record.persist import cancel_timed, put_message
from companion.record.turn import Turn
from flows.catalogue import CATALOGUE

_log = logging.getLogger(__name__)

TIMER_RUNNING: Final = "The timer is running. “Stop” ends it; if anything hurts, say so."

RANK_OF_OWED: Final = {owed.OWES_PAIN: Rank.PAIN_OF_STRANGER, owed.OWES_CRISIS: Rank.PAIN_OF_STRANGER, owed.OWES_ERASED: Rank.ANSWER}
"""The class of what is said to a stranger, by what is owed; all else is Rank.STRANGER."""

SORRY: Final = "Something went wrong on my side, and your last message was not kept. Please send it again, or say “menu”."


class Companion(Conversations):
    """One bot: takes each message in one committed turn, and sweeps for due work.

    ``onboarding``: the conversations before consent; ``rate_limit``: set where a channel is open to anybody.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None] = lambda channel: None,
                 catalogue: Catalogue | None = None) -> None:
        """Open the file. ``on_commit`` is called with the channel whose outbox may have new messages; ``catalogue``: flows in place of
        those in ``flows``. Raises CannotOpen or AlreadyRunning (record.file)."""
        super().__init__(database, clock, on_commit, catalogue or CATALOGUE)
        self.rate_limit: RateLimit | None = None
        self.onboarding = Onboarding(self.catalogue)
        self._sweep = DueSweep(self)
        try:
            self._pick_up()
        except sqlite3.Error as error:
            self.close()
            raise CannotOpen(f"can't write the database {database}: {error}") from error

    def set_bot_name(self, bot: str) -> None:
        """Set the bot's name, which the channel knows and links need."""
        self.bot = bot
        self._naming = asyncio.ensure_future(self.writer.do(lambda db: status.set_mark(db, "bot.name", bot, self.clock.now())))

    def _pick_up(self) -> None:
        """Take up what an earlier process left: messages that a clock set back meanwhile made late, and what it owed to strangers."""
        now, db = self.clock.now(), self.db.conn
        lost = cut(db, head_beside(self.path))
        with self.db.atomic():
            if lost:  # said now: the head outside is written anew with the next answer
                _log.error("%s; look for it in the backups", lost)
                status.set_mark(db, status.LOG_CUT, lost, now)
            status.set_mark(db, status.STARTED, 1.0, now)  # a full disk shows now, not when somebody writes
            if outbox.catch_up(db, now):
                _log.warning("the clock of this machine was set back since the last run; what waits to be sent is due now")
            owed.expire(db, now)
            left = owed.all_owed(db, now)
        for one in left:
            self.unsaved.put(Address(one.channel, one.address), self.onboarding.again(db, one, now),
                             RANK_OF_OWED.get(one.kind, Rank.STRANGER))

    # turns ------------------------------------------------------------------------------------------------

    async def take(self, inbound: Inbound) -> None:
        """Take one turn, committed when this returns. A turn that fails is logged, answered with an apology and counts as taken.
        Messages beyond the rate limit are dropped, the first with a warning. A film waits meanwhile."""
        with self.held_back.turn():
            await self._take(inbound)

    async def _take(self, inbound: Inbound) -> None:
        await self.follow_clock()  # before anything is written by the new time
        admission = self.rate_limit.admit(inbound, self.clock.now()) if self.rate_limit is not None else Admission.ACCEPT
        if admission is not Admission.ACCEPT:
            if admission is Admission.WARN:
                await self._slow_down(inbound.address)
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
            self.in_background(self.make(self._reports.pop()))
        while self._films:
            self.in_background(self.read_film(self._films.pop(0)))

    def _turn(self, db: sqlite3.Connection, inbound: Inbound) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None and people.seen_before(db, where.channel, inbound.update_id, now):
            return
        here = people.sender_at(db, where.channel, where.id)
        if here is None:
            self._from_stranger(db, inbound, now)
            return
        if here.gone:
            people.mark_back(db, where.channel, where.id)
        turn = self.turn(db, here.person, now, (where.channel, where.id))
        if here.timing:
            if not self._ends_timer(turn, here, inbound.event):
                if not isinstance(inbound.event, Tapped):
                    put_message(db, here.person, Say(TIMER_RUNNING, must_arrive=False), now, turn.to, rank=Rank.MOVEMENT)
                return
            self.watch.message_dropped("wrote_first", cancel_timed(db, here.person, now))
        self.advance(turn, here.session, inbound.event)

    def _ends_timer(self, turn: Turn, here: people.Sender, event: Happening) -> bool:
        """True if input during a timed hold ends it: stop, pain or another sign. Anything else keeps the timer running, since the question
        it could answer has not been shown."""
        book = self.catalogue.book
        session, _ = step(book, here.session, event, turn.known)
        if session.aside is not None and session.aside.if_hurt:
            return True
        return not session.stack or session.top.flow in (book.pain, book.signs, book.crisis)

    def _failed(self, db: sqlite3.Connection, inbound: Inbound, why: str) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None:
            people.note_failed(db, where.channel, inbound.update_id, now, why)
        person = people.person_at(db, where.channel, where.id)
        if person is None:
            self._say_to_stranger(db, where, [Say(SORRY)], owed.OWES_WELCOME, now)
        else:
            put_message(db, person, Say(SORRY), now, (where.channel, where.id))

    def _from_stranger(self, db: sqlite3.Connection, inbound: Inbound, now: datetime) -> None:
        """Take a turn before consent, which stores nothing; once it is given, everything so far is stored."""
        said, agreed, refused, kind = self.onboarding.take(db, inbound, now, self.here)
        if refused is not None:
            people.note_refusal(db, now, refused)
        if agreed is None:
            self._say_to_stranger(db, inbound.address, said, kind, now)
            return
        owed.settle(db, *inbound.address)
        to = (inbound.address.channel, inbound.address.id)
        turn = self.turn(db, people.add_person(db, *to, inbound.name, now), now, to)
        carry_out(turn, [*agreed.kept, *agreed.said, *([Redeem(agreed.code)] if agreed.code else [])])
        if unsettled(agreed.session):
            self.advance(turn, agreed.session, Settle())
        else:
            people.save_session(db, turn.person, agreed.session, now)

    def _say_to_stranger(self, db: sqlite3.Connection, to: Address, said: list[Say], kind: str, now: datetime) -> None:
        """Note that something is owed, and queue the messages in memory."""
        self.note_owed(db, to, kind, now)
        self.unsaved.put(to, said, RANK_OF_OWED.get(kind, Rank.STRANGER))

    async def _slow_down(self, to: Address) -> None:
        """Warn somebody of the rate limit."""
        def warn(db: sqlite3.Connection) -> None:
            """Add the warning, to the outbox or in memory."""
            person = people.person_at(db, *to)
            if person is None:
                self.unsaved.put(to, [Say(SLOW_DOWN)], Rank.STRANGER)
            else:
                put_message(db, person, Say(SLOW_DOWN, must_arrive=False), self.clock.now(), (to.channel, to.id))
        await self.writer.do(warn)

    # terminal and sweep -----------------------------------------------------------------------------------

    async def open(self, address: Address) -> tuple[Say, ...]:
        """Return the open question of the person at an address, for a terminal that opens; () for a stranger."""
        def look(db: sqlite3.Connection) -> tuple[Say, ...]:
            """Read the session and return its open question."""
            person = people.person_at(db, address.channel, address.id)
            if person is None:
                return ()
            session = people.load_session(db, person)
            return prompt_now(self.catalogue.book, session, self.turn(db, person, self.clock.now()).known) if session.stack else ()
        return await self.writer.do(look)

    async def sweep(self) -> int:
        """Handle all due work (due.DueSweep.run); returns the number of things handled."""
        return await self._sweep.run()
