"""The texts a coach reads, as rows for the exports: of one lifter the pages in the chat, comparisons, the line in the caseload, the
report; of all together the pages of the caseload.

The rows come from the pages themselves, so that what is added to one is in an export too. Left out are the answers, which have exports of
their own, and the thread, which is in the readable copy, without anybody's private notes.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import datetime
from itertools import combinations, count
from typing import Final

from companion.coach.caseload import caseload, coach_zone, day_namer
from companion.coach.caseload_messages import ALL_GROUPS, caseload_say, groups_say
from companion.coach.caseload_page import PAGE_COLUMNS, caseload_content, cells_of
from companion.coach.compare import days_words, measured_of, stands
from companion.coach.concluded import concluded_of
from companion.coach.lifter_messages import LIFTER_VIEWS
from companion.coach.look import LifterView
from companion.coach.names import with_distinct_names
from companion.coach.pooled_page import own_say
from companion.coach.report_sections import report_content
from companion.coach.since import news_of, owed_words, quoted, since_say
from companion.coach.summary import lifter_page
from companion.coach.tables import LocalTimes, Table
from companion.coach.triage import GROUP_WORDS, reasons_of
from companion.coach.whys import topics_of, whys_of
from companion.conversation.effects import Say
from companion.export.registry import ExportSource
from companion.export.table import SeenRow
from companion.pictures.series import Chart
from companion.record import coaching
from companion.record.caseload import all_caseload_rows, caseload_rows
from companion.record.context import known_of
from companion.record.groups import groups_of
from companion.screening.standing import SafetyStanding

ELSEWHERE: Final = ("thread", "log")
"""Views and sections that other exports have."""


def seen_of(of: ExportSource) -> Iterator[SeenRow]:
    """Return what each coach of a lifter reads of them, and what whoever runs the bot does; ``reader`` "" for the latter alone."""
    for coach, name in coaching.coaches_of(of.db, of.person) or [(0, "")]:
        for page, part, words in (*_chat(of, coach), *_caseload(of, coach), *_compared(of, coach)):
            yield SeenRow(name, page, part, words)
    content = report_content(of.db, of.person, of.now, of.book)
    for field in fields(content):
        if field.name not in ELSEWHERE:
            for part, words in _walk(getattr(content, field.name), ""):
                yield SeenRow("", f"report, {field.name}", part, words)


def _chat(of: ExportSource, coach: int) -> Iterator[tuple[str, str, str]]:
    look = LifterView(of.db, coach, of.person, of.now, coach_zone(of.db, coach, of.now))
    for what, view in LIFTER_VIEWS.items():
        for say in view.says(look) if what not in ELSEWHERE else ():
            yield from ((view.words, "", line) for line in say.text.splitlines() if line)
    for topic in topics_of(concluded_of(of.db, of.person, of.now).verdicts):
        yield from (("why", topic.label, words) for words in whys_of(of.db, of.person, topic, of.now))
    yield "pooled trial", "", own_say(of.db, of.person).text


def _caseload(of: ExportSource, coach: int) -> Iterator[tuple[str, str, str]]:
    zone = coach_zone(of.db, coach, of.now)
    day_name = day_namer(zone, of.now)
    for row in caseload_rows(of.db, coach) if coach else all_caseload_rows(of.db):
        if row.person == of.person:
            yield from (("caseload", column, text) for column, (text, _) in zip(
                PAGE_COLUMNS[1:], cells_of(of.db, row, of.now, LocalTimes(zone), day_name), strict=True))
            yield from (("states", GROUP_WORDS[state.group], state.words) for state in reasons_of(row, of.now, day_name))
    for news in news_of(of.db, coach, of.now, zone):
        if news.person == of.person:
            yield from (("since last looked", part, words) for part, words in (
                ("what changed", news.words), ("due from the coach", owed_words([news])), ("the answer", quoted(of.db, news).quote),
                ("next", news.act[0])) if words)


def _compared(of: ExportSource, coach: int) -> Iterator[tuple[str, str, str]]:
    """Return the lifter's side of any comparison with another, and the comparison of each two days of theirs."""
    page = lifter_page(of.db, coach, of.person, of.now)
    yield from (("compared with another", part, words) for part, words in stands(of.db, of.person, page, of.now))
    measured = measured_of(known_of(of.db, of.person, of.now))
    for second, first in combinations(measured.days, 2):
        yield from ((f"compared, {days_words(first, second)}", part, words) for part, words in measured.changes(first, second))


def seen_by(db: sqlite3.Connection, coach: int | None, now: datetime) -> Iterator[SeenRow]:
    """Return what a coach reads of their lifters together, or what whoever runs the bot does (``coach`` None): the pages in the chat, line
    by line, and the caseload page, cell by cell."""
    name = coaching.coach_name(db, coach) or "" if coach is not None else ""
    if coach is not None:
        zone = coach_zone(db, coach, now)
        lines = with_distinct_names(db, coach, caseload(db, coach, now, zone))
        for page, turned in (("since last looked", lambda n: since_say(db, coach, now, zone, n)[0]),
                             ("my lifters", lambda n: caseload_say(lines, ALL_GROUPS, n)[0]),
                             ("my groups", lambda n: groups_say(groups_of(db, coach), coaching.told_apart(db, coach)))):
            yield from (SeenRow(name, page, "", line) for line in _turned(turned))
    content = caseload_content(db, coach, now)
    for line in content.pop("lines"):
        yield from (SeenRow(name, "caseload", f"{line.name}: {column}", text) for column, (text, _) in zip(
            PAGE_COLUMNS[1:], line.cells, strict=True))
    for lifter, _, *told in content.pop("news"):
        yield from (SeenRow(name, "caseload", f"{lifter}: {part}", words) for part, words in zip(
            ("what changed", "the answer", "next"), told, strict=True) if words)
    for group, many, meaning in content.pop("groups"):
        yield SeenRow(name, "caseload", group, f"{many}: {meaning}")
    for part, words in content.items():
        yield from (SeenRow(name, "caseload", one or part, text) for one, text in _walk(words, ""))


def _turned(turned: Callable[[int], Say]) -> Iterator[str]:
    """Return the lines of every page of a view, up to the one that comes again."""
    before = None
    for n in count():
        if (say := turned(n)) == before:
            return
        yield from (line for line in say.text.splitlines() if line)
        before = say


def _walk(value: object, name: str) -> Iterator[tuple[str, str]]:
    """Return (name, words) of every text in a part of a report."""
    if isinstance(value, str):
        if value:
            yield name, value
    elif isinstance(value, Table):
        for row in (row for body in value.bodies for row in body.rows):
            of, *cells = (cell if isinstance(cell, str) else "; ".join(cell) for cell in row)
            yield from ((f"{of}: {column}", cell) for column, cell in zip(value.columns[1:], cells, strict=True))
        yield from _walk(value.note if value.bodies else value.empty, value.caption)
    elif isinstance(value, Chart):
        yield value.title, value.words
    elif isinstance(value, SafetyStanding):
        yield name, value.words.report
    elif isinstance(value, Mapping):
        for key, one in value.items():
            yield from _walk(one, key)
    elif isinstance(value, tuple):
        for one in value:
            named = isinstance(one, tuple) and len(one) == 2 and isinstance(one[0], str)
            yield from _walk(one[1], ", ".join(filter(None, (name, one[0])))) if named else _walk(one, name)
    elif is_dataclass(value):
        title = str(getattr(value, "title", name))
        for field in fields(value):
            yield from _walk(getattr(value, field.name), title)
