"""A turn: one person, one moment and the context, passed through one transaction."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from typing import NamedTuple

from companion.calendar.preferences import zone_from
from companion.conversation.effects import FilmOf
from companion.conversation.flow import Known
from companion.conversation.registry import Book
from companion.port import Rank
from companion.record.chain import Chain
from companion.record.coaching import ReportWanted
from companion.record.context import known_of
from companion.record.reminders import Reminder


class FilmWanted(NamedTuple):
    """A film to be read after the commit: whose, from which (channel, address), its reference there, what waits for it, and whether
    pictures of it, and itself, may be kept."""

    person: int
    to: tuple[str, str]
    film: str
    run: str
    squat: str
    what: FilmOf = "squats"
    shown: bool = False
    whole: bool = False


@dataclass(slots=True)
class Turn:
    """One person's turn. ``to``: the (channel, address) they write from, None where the bot begins; ``offer``: the reminder its
    messages belong to and go stale with; ``bot``: the bot's name, for links; ``rank``: the class of its messages, None for the usual;
    ``reports`` and ``films``: collect what is asked for and done after the commit; ``gather``: reads the context; ``chain``: the end of
    the answer log's chain; ``erased``: true once every row of theirs is deleted."""

    db: sqlite3.Connection
    person: int
    now: datetime
    book: Book
    to: tuple[str, str] | None = None
    offer: Reminder | None = None
    bot: str = ""
    rank: Rank | None = None
    reports: list[ReportWanted] = field(default_factory=list)
    films: list[FilmWanted] = field(default_factory=list)
    gather: Callable[[sqlite3.Connection, int, datetime], Known] = known_of
    chain: Chain = field(default_factory=Chain)
    erased: bool = False
    _known: Known | None = None
    _stale: bool = False

    @property
    def known(self) -> Known:
        """The context: read on first use, and again after a change."""
        if self._known is None or self._stale:
            self._known, self._stale = self.gather(self.db, self.person, self.now), False
        return self._known

    @property
    def zone(self) -> str:
        """The zone in the context the step began with, so that all its effects use the same one."""
        return zone_from((self._known or self.known).facts, self.now)

    def changed(self) -> None:
        """Mark the context as out of date."""
        self._stale = True

    def of(self, person: int) -> Turn:
        """Return a turn of another person in the same transaction, without an address."""
        return Turn(self.db, person, self.now, self.book, bot=self.bot, reports=self.reports, films=self.films, gather=self.gather,
                    chain=self.chain)

    def title(self, flow: str) -> str:
        """Return a flow's title; "" where there is no such flow."""
        return self.book[flow].flow.title if flow in self.book.flows else ""
