"""Everybody's conversation over one file: a step and what follows from it in one transaction, and what is done beside the turns."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable, Coroutine, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any, Final

from companion.app import reports
from companion.app.consent import renewal
from companion.app.dispatch import carry_out
from companion.base.clock import Clock
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Effect, Say
from companion.conversation.events import Happening, Settle
from companion.conversation.flow import Known
from companion.conversation.session import Session
from companion.conversation.step import step, unsettled
from companion.operate.counters import Counters
from companion.port import Address, Outgoing
from companion.record import outbox, people
from companion.record.coaching import ReportWanted
from companion.record.context import known_of
from companion.record.file import emptied_log, open_for_writing
from companion.record.reminders import Reminder
from companion.record.turn import Turn
from companion.record.writer import CommitFailed, Writer

_log = logging.getLogger(__name__)

SETTLING_MOST: Final = 60
"""Flows that may begin and end in one turn; more is a flow that runs in a circle."""


def in_order(effects: Sequence[Effect], waited: float, told: set[str]) -> tuple[tuple[Effect, ...], float]:
    """Return the same effects, no message leaving before one that was said earlier in the turn, and none said twice in it
    (``told``, which grows); and how long the last waits, in seconds."""
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


class Conversations:
    """The open file with its writer, and where everybody is.

    ``on_commit`` is told the channel whose outbox may have something new; ``on_erase`` whose rows are being removed, so that what
    was saved beside the file goes too. ``keep_months``: so long answers are kept, None for good. ``unkept``: messages that are held
    in memory only. ``erased``: true while something erased may still be in the write-ahead log. ``bot``: the bot's name, once the
    channel knows it.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None], catalogue: Catalogue) -> None:
        """Open the file. Raises CannotOpen or AlreadyRunning (record.file)."""
        self.db, self._lock = open_for_writing(database)
        self.path, self.clock, self.catalogue = database, clock, catalogue
        self.writer = Writer(self.db)
        self.watch = Counters()
        self.on_commit = on_commit
        self.on_erase: Callable[[int], object] = lambda person: None
        self.keep_months: int | None = None
        self.unkept: dict[int, Outgoing] = {}
        self._unkept_count = 0
        self.erased = not emptied_log(self.db)  # where a reader held it up as the file was opened, it is tried again
        self.bot = ""
        self._reports: list[ReportWanted] = []
        self._beside: set[asyncio.Task[None]] = set()

    def close(self) -> None:
        """Close the file and let go of its lock."""
        self.db.close()
        self._lock.close()

    # a turn -----------------------------------------------------------------------------------------------

    def turn(self, db: sqlite3.Connection, person: int, now: datetime, to: tuple[str, str] | None = None) -> Turn:
        """Return a new turn of a person; ``to``: where they write from."""
        return Turn(db, person, now, self.catalogue.book, to, bot=self.bot, reports=self._reports, gather=self._gather)

    def _gather(self, db: sqlite3.Connection, person: int, now: datetime) -> Known:
        """Gather what a step may know, and how long answers are kept where that is limited."""
        known = known_of(db, person, now)
        return replace(known, facts={**known.facts, "keep.months": float(self.keep_months)}) if self.keep_months else known

    def advance(self, turn: Turn, session: Session, event: Happening, offer: Reminder | None = None) -> None:
        """Step until the conversation waits for the person again, carrying out each step's effects before the next. ``offer``: the
        reminder that its messages are for."""
        waited, told, flows = 0.0, set[str](), self.catalogue
        turn.offer = offer
        for _ in range(SETTLING_MOST):
            known = turn.known
            first = renewal(flows.book, flows.consent_again, session, event, known) if flows.consent_due.holds(known.facts) else None
            session, effects = first or step(flows.book, session, event, known)
            effects, waited = in_order(effects, waited, told)
            carry_out(turn, effects)
            if turn.erased:
                self._after_erasing(turn, effects)
                return
            if not unsettled(session):
                people.save_session(turn.db, turn.person, session, turn.now)
                return
            event = Settle()
        raise RuntimeError(f"{session.top.flow if session.stack else 'nothing'} runs in a circle")

    def _after_erasing(self, turn: Turn, effects: Sequence[Effect]) -> None:
        self.on_erase(turn.person)
        self.erased = True
        if turn.to:
            self.say_unkept(Address(*turn.to), [effect for effect in effects if isinstance(effect, Say)])

    def say_unkept(self, to: Address, said: Sequence[Say]) -> None:
        """Hold messages in memory for an address nobody is kept at."""
        for say in said:
            self._unkept_count -= 1  # below zero: never the number of a row
            self.unkept[self._unkept_count] = outbox.unkept(self._unkept_count, to, say)

    # beside the turns -------------------------------------------------------------------------------------

    def forget_erased(self) -> None:
        """Empty the write-ahead log, where what was erased must not stay. A reader, such as a backup, can hold that up: then the next
        turn or sweep tries again, and nobody is kept waiting for it. Raises CommitFailed."""
        self.erased = True
        try:
            self.erased = not emptied_log(self.db)
        except sqlite3.Error as error:
            raise CommitFailed(f"the database could not be written: {error}") from error

    def do_beside(self, work: Coroutine[Any, Any, None]) -> None:
        """Begin something that no turn waits for."""
        task = asyncio.create_task(work)
        self._beside.add(task)
        task.add_done_callback(self._beside.discard)

    async def beside(self) -> None:
        """Return when what is done beside the turns is done."""
        await asyncio.gather(*self._beside)

    async def make(self, report: ReportWanted) -> None:
        """Draw a report in a thread, while the loop answers others, and send it."""
        try:
            page = await asyncio.to_thread(reports.drawn, report, self.path, self.clock.now(), self.catalogue.book)
            await self.writer.do(lambda db: reports.send(db, report, page, self.clock.now()))
            self.on_commit("")
        except Exception as error:
            _log.error("a report could not be made: %s", type(error).__name__, exc_info=error)
