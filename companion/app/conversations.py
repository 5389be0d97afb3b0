"""All conversations over one database: steps and their effects in one transaction, and work in the background."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable, Collection, Coroutine, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, Final

from companion.app import films, reports
from companion.app.consent import renewal
from companion.app.dispatch import carry_out
from companion.app.held_back import HeldBack
from companion.app.ranks import rank_of
from companion.app.unsaved import UnsavedMessages
from companion.base.clock import Clock, JumpWatch
from companion.channels.terminal import TERMINAL_CHANNEL
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Act, Calendar, Effect, Export, Link, Record, Redeem, Say, SendCards, Show
from companion.conversation.events import FilmRead, Happening, Settle
from companion.conversation.flow import Known
from companion.conversation.pages import few, kept
from companion.conversation.session import Session
from companion.conversation.step import step, unsettled
from companion.operate.counters import Counters
from companion.port import Address, Rank
from companion.record import outbox, owed, people, status
from companion.record.chain import Chain, HeadFile
from companion.record.coaching import ReportWanted
from companion.record.context import known_of
from companion.record.file import CannotOpen, open_for_writing, truncate_wal
from companion.record.picture_files import KEEP_KEYS, WHOLE_FILM
from companion.record.reminders import Reminder
from companion.record.turn import FilmWanted, Turn
from companion.record.writer import CommitFailed, Writer

_log = logging.getLogger(__name__)

SPEAKING: Final = (Export, Calendar, Show, Act, Link, Redeem, SendCards)
"""Effects that may send messages of their own; those before them are sent first."""

SETTLING_MOST: Final = 60
"""Flows that may begin and end in one turn; more is an endless loop."""


def in_order(effects: Sequence[Effect], waited: float, told: set[str]) -> tuple[tuple[Effect, ...], float]:
    """Return the effects with each message delayed at least as long as those before it in the turn, repeated texts left out
    (``told`` collects them), and the delay of the last message in seconds."""
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


def _clock_was_set(db: sqlite3.Connection, now: datetime, by: timedelta) -> None:
    outbox.clock_moved(db, now, by)
    owed.clock_moved(db, by)
    status.set_mark(db, status.CLOCK_JUMP, by.total_seconds(), now)


class Conversations:
    """The open database with its writer, and everybody's sessions.

    ``on_commit`` is called with the channel whose outbox may have new messages; ``on_erase`` with the person whose rows are
    deleted, or who takes back that a film may be kept, so that files saved beside the database go too; ``keep_film`` with whose film was
    read and what may be kept of it, for the names that are. ``keep_months``: months for which answers are kept, None for ever.
    ``here``: the time zone of the machine that the person sits at, None if they may be anywhere. ``fetch_film``: brings films from the
    channel, None where they can't be read here. ``unsaved``: messages held in memory only. ``erased``: true while erased data may still
    be in the write-ahead log. ``bot``: the bot's name, once the channel knows it.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None], catalogue: Catalogue) -> None:
        """Open the file. Raises CannotOpen or AlreadyRunning (record.file)."""
        self.db, self._lock = open_for_writing(database)
        self.path, self.clock, self.catalogue = database, clock, catalogue
        self.writer = Writer(self.db, self._lock.trouble)
        try:
            self._head = HeadFile(database)
        except OSError as error:
            self.db.close()
            self._lock.close()
            raise CannotOpen(f"can't write beside the database {database}: {error}") from error
        self._chain = Chain(self._head)
        self.writer.committed, self.writer.rolled_back = self._chain.note, self._chain.forget
        self.watch = Counters()
        self.on_commit = on_commit
        self.on_erase: Callable[[int], object] = lambda person: None
        self.keep_film: Callable[[int, Mapping[str, bytes]], Collection[str]] = lambda person, files: ()
        self.keep_months: int | None = None
        self.here: str | None = None
        self.unsaved = UnsavedMessages()
        self._jumps = JumpWatch(clock)
        self.erased = not truncate_wal(self.db)  # tried again later where a reader prevented it as the file was opened
        self.bot = ""
        self._reports: list[ReportWanted] = []
        self._films: list[FilmWanted] = []
        self.fetch_film: films.Fetch | None = None
        self._one_film = asyncio.Lock()
        self.held_back = HeldBack(clock)
        self._background: set[asyncio.Task[None]] = set()

    def close(self) -> None:
        """Close the file and release its lock."""
        self.db.close()
        self._head.close()
        self._lock.close()

    # a turn -----------------------------------------------------------------------------------------------

    def turn(self, db: sqlite3.Connection, person: int, now: datetime, to: tuple[str, str] | None = None) -> Turn:
        """Return a new turn of a person; ``to``: the (channel, address) they write from."""
        return Turn(db, person, now, self.catalogue.book, to, bot=self.bot, reports=self._reports, films=self._films,
                    gather=self._gather, chain=self._chain)

    def _gather(self, db: sqlite3.Connection, person: int, now: datetime) -> Known:
        """Return the context of a turn, with "keep.months" where answers are kept for a time only, and "films" where they can be read."""
        known = known_of(db, person, now)
        more = ({"keep.months": float(self.keep_months)} if self.keep_months else {}) | (
            {"films": "yes"} if self.fetch_film else {}) | ({"machine.zone": self.here} if self.here else {})
        return replace(known, facts={**known.facts, **more}) if more else known

    def advance(self, turn: Turn, session: Session, event: Happening, offer: Reminder | None = None) -> None:
        """Step until the conversation waits for the person, dispatching each step's effects before the next. ``offer``: the reminder
        its messages belong to. Raises RuntimeError where a flow loops endlessly."""
        waited, told, flows, said = 0.0, set[str](), self.catalogue, list[Say]()
        turn.offer = offer
        for _ in range(SETTLING_MOST):
            known = turn.known
            first = renewal(flows.book, flows.consent_again, session, event, known) if flows.consent_due.holds(known.facts) else None
            before = session
            session, effects = first or step(flows.book, session, event, known)
            rank = rank_of(flows.book, before, session, effects)
            if rank is not None:
                turn.rank = rank if turn.rank is None else min(turn.rank, rank)
            effects, waited = in_order(effects, waited, told)
            for effect in effects:
                if isinstance(effect, Say):
                    said.append(effect)
                    continue
                if isinstance(effect, SPEAKING):
                    carry_out(turn, said)
                    said.clear()
                carry_out(turn, (effect,))
                if isinstance(effect, Record) and effect.key in KEEP_KEYS and effect.value == "no":
                    self.on_erase(turn.person)
                if turn.erased:
                    self._after_erasing(turn, effects)
                    return
            if not unsettled(session):
                sent, held = few(said)
                carry_out(turn, sent)
                session = session._replace(more=kept(held)) if held else session
                people.save_session(turn.db, turn.person, session, turn.now)
                return
            event = Settle()
        raise RuntimeError(f"{session.top.flow if session.stack else 'nothing'} runs in a circle")

    def _after_erasing(self, turn: Turn, effects: Sequence[Effect]) -> None:
        self.on_erase(turn.person)
        self.erased = True
        if turn.to:
            self.note_owed(turn.db, Address(*turn.to), owed.OWES_ERASED, turn.now)
            self.unsaved.put(Address(*turn.to), [effect for effect in effects if isinstance(effect, Say)], Rank.ANSWER)

    def note_owed(self, db: sqlite3.Connection, to: Address, kind: str, now: datetime) -> None:
        """Note what is owed to an address without a person; at a terminal, where the address is a name, nobody waits for it."""
        if to.channel != TERMINAL_CHANNEL:
            owed.note(db, *to, kind, now)

    # the clock --------------------------------------------------------------------------------------------

    async def follow_clock(self) -> None:
        """Move what waits with the wall clock where it was set since the last look, log it and note it for the doctor."""
        by = self._jumps.moved()
        if by:
            now = self.clock.now()
            await self.writer.do(lambda db: _clock_was_set(db, now, by))
            self.watch.clock_jumped(by.total_seconds())
            _log.warning("the clock of this machine was set by %+.0f s; what waits to be sent was moved with it", by.total_seconds())

    # in the background ------------------------------------------------------------------------------------

    def forget_erased(self) -> None:
        """Empty the write-ahead log of erased data. If a reader such as a backup prevents it, the next turn or sweep tries again. Raises
        CommitFailed."""
        self.erased = True
        try:
            self.erased = not truncate_wal(self.db)
        except sqlite3.Error as error:
            raise CommitFailed(f"the database could not be written: {error}") from error

    def in_background(self, work: Coroutine[Any, Any, None]) -> None:
        """Start work that no turn waits for."""
        task = asyncio.create_task(work)
        self._background.add(task)
        task.add_done_callback(self._background.discard)

    async def background_done(self) -> None:
        """Wait for all work in the background."""
        await asyncio.gather(*self._background)

    async def make(self, report: ReportWanted) -> None:
        """Render a report in a thread, so that the loop can answer others, and send it."""
        try:
            page = await asyncio.to_thread(reports.render, report, self.path, self.clock.now(), self.catalogue.book)
            await self.writer.do(lambda db: reports.send(db, report, page, self.clock.now()))
            self.on_commit("")
        except Exception as error:
            _log.error("a report could not be made: %s", type(error).__name__, exc_info=error)

    async def read_film(self, wanted: FilmWanted) -> None:
        """Read a film that waits for it, one at a time, and go on with the conversation; a person erased meanwhile is left alone."""
        try:
            async with self._one_film:
                read, files = await films.read_wanted(wanted, self.fetch_film, self.held_back.reading) if self.fetch_film else (None, {})
            if wanted.squat == "plain" and (files or not wanted.shown):
                kept = self.keep_film(wanted.person, files)
                if read and wanted.whole and WHOLE_FILM not in kept:
                    read = replace(read, says=f"{read.says} {films.NOT_KEPT}")
        except Exception as error:
            _log.error("a film could not be read: %s", type(error).__name__, exc_info=error)
            read = FilmRead(wanted.run, wanted.squat, "mend", says=films.FAILED)
        if read is not None:
            await self.writer.do(lambda db: self._film_was_read(db, wanted, read))
            self.on_commit(wanted.to[0])

    def _film_was_read(self, db: sqlite3.Connection, wanted: FilmWanted, read: FilmRead) -> None:
        if people.person_at(db, *wanted.to) == wanted.person:
            self.advance(self.turn(db, wanted.person, self.clock.now(), wanted.to), people.load_session(db, wanted.person), read)
