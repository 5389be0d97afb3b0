"""The answer log as a table for people: run by run, each answer with its corrections."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from companion.coach.caseload import shortened
from companion.coach.log_filter import log_filter
from companion.coach.tables import LocalTimes, Table, TableSection
from companion.conversation.kinds import Media
from companion.conversation.registry import Book
from companion.export.questions import Question, Questions, RunAnswers, in_words, questions_in, runs_in
from companion.language.units import METRIC, shown, spoken_unit
from companion.record.log import LogRow

ENDING_WORDS: Final = {"done": "finished", "left": "stopped early", "pain": "ended by pain, so not scored", None: "still open"}
ANSWER_STATUS_WORDS: Final = {"ok": "given", "skipped": "skipped", "withdrawn": "taken back", "in_pain": "given with pain, not scored",
                               "no_pain": "the pain told here was taken back"}
_SENTENCE: Final = re.compile(r"(?<=[.?!…])\s+")


def log_table(rows: Sequence[LogRow], book: Book, system: str, when: LocalTimes, only: str = "") -> Table:
    """Return the log as a table, newest run first; ``system``: the lifter's units; ``when``: writes times in their zone; ``only``: the
    part of it that is shown (``log_filter``), "" for all."""
    wanted, part = log_filter(only, when.zone, book)
    questions, shown_rows = questions_in(book), [row for row in rows if wanted(row)]
    later = {row.replaces: row for row in rows if row.replaces is not None}
    by_id = {row.id: row for row in rows}
    folds = tuple(_fold(one, book, questions, later, by_id, system, when) for one in reversed(runs_in(shown_rows)))
    corrections = f"{len(later)} {'corrects' if len(later) == 1 else 'correct'} an earlier one" if later else "none corrects an earlier one"
    if part:
        caption, empty, note = f"Answers, {part}", "No answer of this part.", f"Only {part}: {len(shown_rows)} of {len(rows)} rows."
    else:
        caption, empty = "Every answer", "Nothing has been answered yet."
        note = f"{len(rows)} rows in {len(folds)} runs; {corrections}."
    return Table("log", f"{caption}, the newest run first", ("Row", "Time", "Question", "As written", "Kept as", "Standing"),
                 folds=folds, empty=empty, note=note)


def _fold(one: RunAnswers, book: Book, questions: Questions, later: dict[int, LogRow], by_id: dict[int, LogRow],
          system: str, when: LocalTimes) -> TableSection:
    compiled = book.flows.get(one.flow)
    title = compiled.flow.title if compiled else in_words(one.flow)
    about = f", for {one.rows[0].asked}" if one.rows[0].asked else ""
    ending = ENDING_WORDS.get(one.ending, in_words(one.ending or ""))
    asked = questions.get(one.flow, {})
    rows = tuple((f"{row.id}", when.clock(row.at), _question(row, asked.get(row.key), system), row.raw or "–",
                  _kept(row, asked.get(row.key), system),
                  _standing(row, by_id.get(row.replaces or 0), later.get(row.id), asked.get(row.key), system)) for row in one.rows)
    gone = frozenset(n for n, row in enumerate(one.rows) if row.id in later or row.status == "withdrawn")
    return TableSection(f"{title}, {when.moment(one.rows[0].at)}{about}: {ending} (version {one.version})", rows, gone)


def _question(row: LogRow, asked: Question | None, system: str) -> tuple[str, ...]:
    """Return the key in words, and the question from its last asking sentence on, as a list of options follows it."""
    name = in_words(row.key)
    if asked is None:
        return (name,)
    sentences = _SENTENCE.split(asked.text)
    asks = [n for n, one in enumerate(sentences) if one.endswith("?")]
    said = " ".join(sentences[asks[-1]:]) if asks else sentences[0]
    unit = asked.ask.kind.unit
    if unit:
        said = re.sub(rf"\b{re.escape(spoken_unit(unit, METRIC))}\b", spoken_unit(unit, system), said)
    return (name,) if said == name else (name, said)


def _kept(row: LogRow, asked: Question | None, system: str) -> str:
    if row.value is None:
        return "–"
    if asked is not None and isinstance(asked.ask.kind, Media):
        return f"a {row.raw or 'film or photo'}, in the chat"
    value = shown(row.value, row.unit, system) if isinstance(row.value, int | float) else in_words(row.value)
    how = ", ".join(in_words(part) for part in (row.method, row.placement) if part)
    return f"{value} ({how})" if how else "as written" if value == row.raw else value


def _standing(row: LogRow, old: LogRow | None, by: LogRow | None, asked: Question | None, system: str) -> tuple[str, ...]:
    """Return the row's status, with the number and answer of the row it replaces and of the one that replaced it."""
    lines = [ANSWER_STATUS_WORDS.get(row.status, in_words(row.status))]
    if row.replaces is not None:
        lines.append(f"{'takes back' if row.status == 'withdrawn' else 'in place of'} row {row.replaces}{_was(old, asked, system)}")
    if by is not None:
        lines.append(f"taken back by row {by.id}" if by.status == "withdrawn" else f"replaced by row {by.id}{_was(by, asked, system)}")
    return tuple(lines)


def _was(row: LogRow | None, asked: Question | None, system: str) -> str:
    """Return another row's answer in brackets, "" where it has none; long ones are cut."""
    said = "" if row is None else row.raw or "" if row.value is None else _kept(row, asked, system)
    said = row.raw if row is not None and said == "as written" else said
    return f" ({shortened(said, 60)})" if said else ""
