"""A turn: whose it is, when, and what is known of them, as it travels through one transaction."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime

from companion.calendar.preferences import zone_from
from companion.conversation.flow import Known
from companion.conversation.registry import Book
from companion.record.coaching import ReportWanted
from companion.record.context import known_of
from companion.record.reminders import Reminder


@dataclass(slots=True)
class Turn:
    """One person's turn at a moment. ``to``: where they write from, None where the bot speaks of its own accord; ``offer``: the
    reminder its messages are for, with which they go stale. ``bot``: the bot's name, for links. ``reports``: those wanted, which
    grow. ``erased``: true once every row of theirs is gone."""

    db: sqlite3.Connection
    person: int
    now: datetime
    book: Book
    to: tuple[str, str] | None = None
    offer: Reminder | None = None
    bot: str = ""
    reports: list[ReportWanted] = field(default_factory=list)
    gather: Callable[[sqlite3.Connection, int, datetime], Known] = known_of
    erased: bool = False
    _known: Known | None = None
    _stale: bool = False

    @property
    def known(self) -> Known:
        """What is known of the person: gathered when it is first wanted, and again once something has changed it."""
        if self._known is None or self._stale:
            self._known, self._stale = self.gather(self.db, self.person, self.now), False
        return self._known

    @property
    def zone(self) -> str:
        """The zone they were in when what is known was gathered: as the step began, so that its effects agree."""
        return zone_from((self._known or self.known).facts, self.now)

    def changed(self) -> None:
        """Note that something was written which ``known`` rests on."""
        self._stale = True

    def of(self, person: int) -> Turn:
        """Return the turn of another person whom this one writes rows of: in the same transaction, without an address."""
        return Turn(self.db, person, self.now, self.book, bot=self.bot, reports=self.reports, gather=self.gather)

    def title(self, flow: str) -> str:
        """Return a flow's title; "" where there is no such flow."""
        return self.book[flow].flow.title if flow in self.book.flows else ""
