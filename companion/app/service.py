"""The companion: one turn from what came in to what is committed."""

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
from companion.app.due import Sweep
from companion.app.onboarding import Strangers
from companion.app.rate_limit import SLOWER, Flood, Pace
from companion.base.clock import Clock
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Redeem, Say
from companion.conversation.events import Happening, Settle
from companion.conversation.step import prompt_now, step, unsettled
from companion.port import Address, Inbound, Typed
from companion.record import people, status
from companion.record.persist import put_message, take_back_timed
from companion.record.turn import Turn
from flows.catalogue import CATALOGUE

_log = logging.getLogger(__name__)

COUNTING: Final = "The timer is running. “Stop” ends it; if anything hurts, say so."

SORRY: Final = "Something went wrong on my side, and your last message was not kept. Please send it again, or say “menu”."


class Companion(Conversations):
    """One bot: takes what people send, one committed turn each, and offers what is due.

    ``strangers``: those who have not agreed that anything is kept; ``flood`` slows who sends too much, where a channel is open to
    anybody.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None] = lambda channel: None,
                 catalogue: Catalogue | None = None) -> None:
        """Open the file. ``on_commit`` is told the channel whose outbox may have something new; ``catalogue``: its flows, where they
        are not those of ``flows``. Raises CannotOpen or AlreadyRunning (record.file)."""
        super().__init__(database, clock, on_commit, catalogue or CATALOGUE)
        self.flood: Flood | None = None
        self.strangers = Strangers(self.catalogue)
        self._sweep = Sweep(self)

    def called(self, bot: str) -> None:
        """Note the bot's name, which the channel knows: links lead to it."""
        self.bot = bot
        self._naming = asyncio.ensure_future(self.writer.do(lambda db: status.note(db, "bot.name", bot, self.clock.now())))

    # turns ------------------------------------------------------------------------------------------------

    async def take(self, inbound: Inbound) -> None:
        """Take one turn, committed when this returns. One that fails is noted, answered kindly and counts as taken.
        One too many of somebody who floods is passed over; the first of these is answered."""
        pace = self.flood.meet(inbound, self.clock.now()) if self.flood is not None else Pace.TAKE
        if pace is not Pace.TAKE:
            if pace is Pace.TELL:
                self.say_unkept(inbound.address, [Say(SLOWER)])
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
        turn = self.turn(db, here.person, now, (where.channel, where.id))
        if here.counting:
            if self._changes_nothing(turn, here, inbound.event):
                if isinstance(inbound.event, Typed):
                    put_message(db, here.person, Say(COUNTING), now, turn.to)
                return
            self.watch.message_dropped("wrote_first", take_back_timed(db, here.person, now))
        self.advance(turn, here.session, inbound.event)

    def _changes_nothing(self, turn: Turn, here: people.Here, event: Happening) -> bool:
        """True if input during a timed hold changes nothing: a second tap, or words that answer nothing. The timer keeps running."""
        session, effects = step(self.catalogue.book, here.session, event, turn.known)
        return session._replace(at=here.session.at) == here.session and all(isinstance(effect, Say) for effect in effects) and (
            not self.catalogue.consent_due.holds(turn.known.facts))

    def _failed(self, db: sqlite3.Connection, inbound: Inbound, why: str) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None:
            people.note_failed(db, where.channel, inbound.update_id, now, why)
        person = people.person_at(db, where.channel, where.id)
        if person is None:
            self.say_unkept(where, [Say(SORRY)])
        else:
            put_message(db, person, Say(SORRY, must_arrive=True), now, (where.channel, where.id))

    def _from_stranger(self, db: sqlite3.Connection, inbound: Inbound, now: datetime) -> None:
        """Take a turn that keeps nothing, until somebody agrees: then everything so far is kept at once."""
        said, agreed, refused = self.strangers.hear(db, inbound, now)
        if refused is not None:
            people.note_refusal(db, now, refused)
        if agreed is None:
            self.say_unkept(inbound.address, said)
            return
        to = (inbound.address.channel, inbound.address.id)
        turn = self.turn(db, people.add_person(db, *to, inbound.name, now), now, to)
        carry_out(turn, [*agreed.kept, *agreed.said, *([Redeem(agreed.code)] if agreed.code else [])])
        if unsettled(agreed.session):
            self.advance(turn, agreed.session, Settle())
        else:
            people.save_session(db, turn.person, agreed.session, now)

    # what a screen shows ----------------------------------------------------------------------------------

    async def open(self, address: Address) -> tuple[Say, ...]:
        """Return what the person at an address should be looking at, for a screen that opens; () for a stranger, who is greeted."""
        def look(db: sqlite3.Connection) -> tuple[Say, ...]:
            person = people.person_at(db, address.channel, address.id)
            if person is None:
                return ()
            session = people.load_session(db, person)
            return prompt_now(self.catalogue.book, session, self.turn(db, person, self.clock.now()).known) if session.stack else ()
        return await self.writer.do(look)

    async def sweep(self) -> int:
        """Decide on what is due by itself (due.Sweep.run); returns how many things that was."""
        return await self._sweep.run()
