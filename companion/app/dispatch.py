"""What a step wanted that takes more than rows: reminders worked out anew, files, and what passes between lifter and coach."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path

from companion.calendar.preferences import zone_from
from companion.coach import actions
from companion.coach.names import called
from companion.conversation.effects import Act, Alert, Calendar, Effect, Export, Link, Redeem, Replan, Say, Show, StopReminders
from companion.conversation.registry import Book
from companion.export.calendar_file import calendar_file
from companion.export.table import plain
from companion.record import coaching
from companion.record.caseload import pain_untold, said_in
from companion.record.context import SAFETY, known_of
from companion.record.file import open_for_reading
from companion.record.log import answers_of
from companion.record.persist import Document, keep, put_message
from companion.record.personal_data import as_lines
from companion.reminders.planner import replan, stop_all

OPEN_PAIN_AFTER = timedelta(minutes=5)
OPEN_PAIN_UNTIL = timedelta(days=1)
"""When coaches hear of questions about pain that stay open, and up to when, should the bot have stood still; our choice: to answer
them takes a minute."""
ANSWER_MOST = 40
CALENDAR_SAYS = "Your squat days and reminders, for your own calendar. Open the file on your phone to add them."


@dataclass(frozen=True, slots=True)
class Turn:
    """Whose turn it is, when, and where they write from (None: of the bot's own accord); ``bot``: the bot's name, for links; ``reports``:
    those wanted, which grow."""

    person: int
    now: datetime
    to: tuple[str, str] | None
    bot: str = ""
    reports: list[Report] = field(default_factory=list)


def carry_out(db: sqlite3.Connection, turn: Turn, effects: Sequence[Effect], book: Book) -> None:
    """Carry out what is no row by itself, in the turn's own transaction."""
    person, now = turn.person, turn.now
    for effect in effects:
        match effect:
            case Replan():
                replan(db, person, known_of(db, person, now).facts, now)
            case StopReminders():
                stop_all(db, person, now)
            case Calendar():
                put_message(db, person, Say(CALENDAR_SAYS, must_arrive=True), now, turn.to, calendar_file(db, person, now))
            case Export():
                _copy(db, turn, book)
            case Alert():
                _post(db, turn, actions.alert_letters(db, person, effect.because, effect.level))
            case Redeem():
                _post(db, turn, actions.redeem(db, person, effect, now))
            case Link():
                _post(db, turn, actions.link(db, person, effect, now))
            case Act():
                _post(db, turn, actions.act(db, person, effect, now, lambda name: _title(book, name), turn.bot))
            case Show():
                show(db, turn, effect, book)


def tell_of_open_pain(db: sqlite3.Connection, now: datetime) -> bool:
    """Tell coaches of whoever said that something hurts and has answered no more for a while, with what was answered so far;
    gives whether there was anybody. Once a conversation; what is answered later is told as ever."""
    untold = pain_untold(db, now - OPEN_PAIN_AFTER, now - OPEN_PAIN_UNTIL)
    for person, run in untold:
        told = "; ".join(f"{key.replace('_', ' ')}: {plain(raw)[:ANSWER_MOST]}" for key, raw in said_in(db, person, run))
        alert = Alert(str(known_of(db, person, now).facts.get(SAFETY, "")), f"something hurt, and the questions about it are still open"
                      f"{f' ({told})' if told else ''}", run)
        keep(db, person, [alert], now, "UTC+00:00")
        _post(db, Turn(person, now, None), actions.alert_letters(db, person, alert.because, alert.level))
    return bool(untold)


def _copy(db: sqlite3.Connection, turn: Turn, book: Book) -> None:
    """A copy of everything held: to read, for a spreadsheet, and to the letter. All are made before any is in the outbox."""
    from companion.export.personal_copy import copy_text
    from companion.export.table import as_csv

    person, zone = turn.person, zone_from(known_of(db, turn.person, turn.now).facts, turn.now)
    files = (("Here is everything kept about you, to read.", Document("companion-data.txt", copy_text(db, person, book, zone, turn.now))),
             ("Your answers once more, for a spreadsheet.", Document("companion-answers.csv", as_csv(answers_of(db, person), book, zone))),
             ("And everything to the letter, one entry a line, for a program.", Document("companion-data.jsonl", as_lines(db, person))))
    for text, document in files:
        put_message(db, person, Say(text, must_arrive=True), turn.now, turn.to, document)


def show(db: sqlite3.Connection, turn: Turn, wanted: Show, book: Book) -> None:
    """Show a lifter who sees them, or a coach what they asked for."""
    if wanted.view == "my_coaches":
        _post(db, turn, actions.my_coaches(db, turn.person, turn.now))
    elif wanted.view == "lifter_report":
        _report(db, turn, wanted.of)
    else:
        from companion.coach.views import about
        from companion.coach.views import show as page

        of = about(db, turn.person, wanted.view, wanted.of)
        says = page(db, turn.person, wanted.view, wanted.of, turn.now, book)
        _post(db, turn, [actions.Letter(turn.person, say, about=of) for say in says])


def _report(db: sqlite3.Connection, turn: Turn, of: str) -> None:
    lifter = actions.seen(db, turn.person, of, "report", turn.now)
    if lifter is None:
        _post(db, turn, [actions.Letter(turn.person, Say(actions.NOT_YOURS))])
    else:
        turn.reports.append(Report(turn.person, lifter, turn.to))


@dataclass(frozen=True, slots=True)
class Report:
    """A report that is wanted: made beside the loop once the turn is committed, since it takes up to seconds."""

    coach: int
    lifter: int
    to: tuple[str, str] | None

    def made(self, database: Path, now: datetime, book: Book) -> str:
        """The page, from a connection of its own."""
        from companion.coach.report import report_html

        db = open_for_reading(database)
        try:
            return report_html(db.conn, self.lifter, now, book)
        finally:
            db.close()

    def send(self, db: sqlite3.Connection, page: str, now: datetime) -> None:
        """Put the page in the outbox, where the coach still sees the lifter."""
        if coaching.sees(db, self.coach, self.lifter):
            say = Say(f"The report of {called(db, self.coach, self.lifter)}, as it stands now.", must_arrive=True)
            put_message(db, self.coach, say, now, self.to, Document(coaching.REPORT_NAME, page), about=self.lifter)


def _post(db: sqlite3.Connection, turn: Turn, letters: Sequence[actions.Letter]) -> None:
    for letter in letters:
        mine = letter.to == turn.person
        put_message(db, letter.to, letter.say, turn.now, turn.to if mine else None, about=letter.about, fleeting=letter.fleeting)


def _title(book: Book, name: str) -> str:
    return book[name].flow.title if name in book.flows else ""
