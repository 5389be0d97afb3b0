"""A lifter's answer log as chat messages, newest first: all of it, or one test, one day or the corrections."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from typing import Final

from companion.base.clock import local_date, zone_of
from companion.coach.caseload import shortened
from companion.coach.letters import tap
from companion.coach.log_filter import CORRECTIONS, DAY_ASKED, log_filter
from companion.coach.look import LifterView, back_rows, fitting, paged
from companion.conversation.effects import Say
from companion.conversation.prompt import in_rows
from companion.conversation.registry import Book
from companion.export.questions import Questions, in_words, questions_in
from companion.record import coaching
from companion.record.access import answers_of
from companion.record.log import LogRow
from companion.screening.protocols import protocols

ROWS_A_PAGE: Final = 15
STATUS_WORDS: Final = {"skipped": "skipped", "withdrawn": "taken back", "in_pain": "given in pain, never scored",
                       "no_pain": "pain told here, taken back"}
LOG_ASKED: Final = re.compile(r"([0-9]{1,18})(?:-([a-z_]{1,32}|[0-9]{8}))??(?:-([0-9]{1,9}))?")
FILTER: Final = "filter"
DAYS_OFFERED: Final = 9
"""Days of the log to choose from; our choice, three rows of buttons."""


def log_view(look: LifterView, of: str, book: Book) -> Say:
    """Return the page of the log that is asked for, or the choice of what of it to see, and audit the look."""
    asked = LOG_ASKED.fullmatch(of)
    what, number = (asked[2] or "", int(asked[3] or 0)) if asked else ("", 0)
    if what == FILTER:
        return _filter_say(look, book)
    log = tuple(answers_of(look.db, look.lifter))
    wanted, words = log_filter(what, look.zone, book)
    if not words:
        what = ""
    rows = [row for row in reversed(log) if wanted(row)]
    page, pages = paged(len(rows), number, ROWS_A_PAGE)
    coaching.audit_look(look.db, look.lifter, look.coach, f"log, {f'{words}, ' if words else ''}page {page + 1}", look.now)
    return log_say(look, rows[page * ROWS_A_PAGE:(page + 1) * ROWS_A_PAGE], log, page, pages, book, what, words)


def _filter_say(look: LifterView, book: Book) -> Say:
    """Return the choice of what of the log to see: corrections, a test, or a day."""
    log = tuple(answers_of(look.db, look.lifter))[::-1]
    flows, many = Counter(row.flow for row in log), sum(row.replaces is not None for row in log)
    days = dict.fromkeys(local_date(row.at, look.zone) for row in log)
    taps = [tap(f"Corrections ({many})", "lifter_log", f"{look.lifter}-{CORRECTIONS}-0")] * (many > 0)
    taps += [tap(f"{book[flow].flow.title} ({count})", "lifter_log", f"{look.lifter}-{flow}-0") for flow, count in flows.items()
             if flow in protocols()]
    on = [tap(f"{day:%a} {day.day} {day:%b}", "lifter_log", f"{look.lifter}-{day:{DAY_ASKED}}-0") for day in days][:DAYS_OFFERED]
    return Say(f"{look.name}: which part of the log?", (*in_rows(taps, 2), *in_rows(on, 3), *back_rows(look.lifter, ("Log", ""))))


def log_say(look: LifterView, rows: Sequence[LogRow], log: Sequence[LogRow], page: int, pages: int, book: Book, only: str = "",
            words: str = "") -> Say:
    """Return one page of the answer log, newest first, each row with its status. ``log``: all of it; ``only`` and ``words``: the part of
    it that is shown, as a button names it and in words."""
    questions, by_id, last = questions_in(book), {row.id: row for row in log}, {(row.run, row.key): row.id for row in log}
    part = f", {words}" if words else ""
    lines = [f"{look.name}: log{part}, page {page + 1} of {pages}, in your time zone",
             *(_log_line(row, by_id.get(row.replaces or 0), last[row.run, row.key] > row.id, look, questions, book) for row in rows)]
    if not rows:
        lines.append("No answers yet.")
    of = f"{look.lifter}-{only}-" if only else f"{look.lifter}-"
    turn = [*[tap("Newer", "lifter_log", f"{of}{page - 1}")] * (page > 0),
            *[tap("Older", "lifter_log", f"{of}{page + 1}")] * (page + 1 < pages),
            tap("Only some", "lifter_log", f"{look.lifter}-{FILTER}-0")]
    return Say(fitting(lines), (*in_rows(turn, 2), *back_rows(look.lifter)))


def _log_line(row: LogRow, old: LogRow | None, later: bool, look: LifterView, questions: Questions, book: Book) -> str:
    """Return a row as "#812 Tue 3 Mar 18:05, Knee to wall, left: How many cm? → 11 cm (“eleven”) [in place of “12”]". ``old``: the row it
    replaces; ``later``: it was replaced in turn."""
    at = row.at.astimezone(zone_of(look.zone))
    asked = questions.get(row.flow, {}).get(row.key)
    title = book[row.flow].flow.title if row.flow in book.flows else in_words(row.flow)
    side = f", {shortened(row.side, 8)}" if row.side else ""
    options = {option.value: option.label for option in asked.ask.kind.options} if asked else {}
    if row.value is None:
        answer = f"“{shortened(row.raw, 50)}”" if row.raw else "nothing"
    elif isinstance(row.value, str):
        answer = shortened(options.get(row.value, row.value), 50)
    else:
        answer = f"{round(row.value, 2):g}{'°' if row.unit == 'deg' else f' {shortened(row.unit, 8)}' if row.unit else ''}"
    raw = shortened(row.raw, 50)
    same = not raw or row.value is None or raw.casefold() in (answer.casefold(), answer.split(" ")[0].rstrip("°"),
                                                              str(row.value).casefold())
    written = "" if same else f" (“{raw}”)"
    notes = [STATUS_WORDS[row.status]] if row.status in STATUS_WORDS else []
    if row.replaces is not None:
        was = "" if old is None else old.raw or ("" if old.value is None else f"{old.value} {old.unit}")
        notes.append(f"in place of “{shortened(was, 30)}”")
    if later:
        notes.append("replaced later")
    told = f" [{'; '.join(notes)}]" if notes else ""
    question = shortened(asked.text if asked else in_words(row.key), 60)
    return f"#{row.id} {at:%a} {at.day} {at:%b} {at:%H:%M}, {shortened(title, 24)}{side}: {question} → {answer}{written}{told}"
