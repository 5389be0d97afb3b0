"""What a coach may read: nothing of a crisis, by whatever reader, but the alert that the lifter agreed to."""

from __future__ import annotations

import ast
import json
from collections.abc import Iterator
from pathlib import Path

import pytest

import companion.coach
from companion.coach.caseload_page import caseload_html
from companion.coach.lifter_messages import LIFTER_VIEWS
from companion.coach.report import report_html
from companion.coach.seen import seen_by, seen_of
from companion.coach.views import show
from companion.conversation.effects import Alert
from companion.export.registry import ExportSource
from companion.record import access
from companion.record.caseload import latest_answers
from companion.record.turn import Turn
from flows.catalogue import BOOK
from flows.crisis import CRISIS
from tests.coach.caseload_rows import NOW, Room, record

TRACES = ("crisis", "help now", "begin again", "begin_again", "harm", "get in touch with you today? i", "coach_may", "coach may",
          "good to hear from you")


@pytest.fixture
def room(tmp_path: Path) -> Iterator[Room]:
    with record(tmp_path) as one:
        yield one


@pytest.fixture
def nothing(tmp_path: Path) -> Iterator[str]:
    """What a coach reads of a lifter of whom there is nothing to tell."""
    (folder := tmp_path / "nothing").mkdir()
    with record(folder) as one:
        yield read_by_the_coach(one, one.lifter())


def in_crisis(room: Room, may: str) -> int:
    """A lifter who wrote of harming themselves, from doubtful words on, said whether the coach may be asked, and what came after."""
    sam = room.lifter()
    room.run(sam, "signs", {"which": "self_harm"}, 0.2)
    agreed = Alert("crisis", "asks their coach to phone them. Please phone them now")
    room.run(sam, "crisis", {"so": "yes", "coach_may": may}, 0.15, alert=agreed if may == "yes" else None)
    room.find(sam, "crisis", "open", 0.14, "wrote of harming themselves", "wrote of harming themselves")
    room.run(sam, "begin_again", {"begin": "unsafe"}, 0.1)
    return sam


def read_by_the_coach(room: Room, sam: int) -> str:
    """Every page, list, log, report and file of a coach about a lifter."""
    turn = Turn(room.db, room.coach, NOW, BOOK, ("telegram", "coach Ada"), bot="", reports=[], films=[])
    views = [*(("lifter", f"{sam}-{what}") for what in (*LIFTER_VIEWS, "why_safety")), ("since", ""), ("caseload", ""), ("groups", ""),
             ("lifter_log", f"{sam}-0"), ("lifter_log", f"{sam}-filter"), *(("lifter_log", f"{sam}-{flow}-0") for flow in (
                 "crisis", "begin_again", "signs", "corrections", f"{NOW:%Y%m%d}")), ("find_lifter", "Sam"), ("compare", f"{sam}")]
    said = [json.dumps([one.text, *one.buttons]) for view, of in views for one in show(turn, view, of)]
    source = ExportSource(room.db, sam, NOW, turn.known.facts, BOOK)
    said += [f"{one.page} {one.part} {one.words}" for one in (*seen_of(source), *seen_by(room.db, room.coach, NOW), *seen_by(
        room.db, None, NOW))]
    said += [report_html(room.db, sam, NOW, BOOK), report_html(room.db, sam, NOW, BOOK, only="crisis"),
             caseload_html(room.db, room.coach, NOW), str(latest_answers(room.db, sam, (), (), 30))]
    return "\n".join(said).lower()


@pytest.mark.parametrize("may", ["yes", "no"])
def test_no_reader_of_a_coach_shows_anything_of_a_crisis(room, nothing, may):
    read = read_by_the_coach(room, in_crisis(room, may))
    assert [trace for trace in TRACES if read.count(trace) != nothing.count(trace)] == []


@pytest.mark.parametrize(("may", "more"), [("yes", True), ("no", False)])
def test_only_the_alert_that_the_lifter_agreed_to_is_read(room, nothing, may, more):
    read = read_by_the_coach(room, in_crisis(room, may))
    for words in ("asks their coach to phone them", "asked today that you call them"):
        assert (words in read, words in nothing) == (more, False)


def test_a_coach_may_read_all_but_what_was_said_of_harming_oneself(room):
    """Written out row by row: of answers, findings and facts, what stays and what does not."""
    sam = in_crisis(room, "yes")
    room.run(sam, "signs", {"which": "fever"}, 0.05)
    for name in ("safety.level", "crisis.since", "crisis_told", "begin_again.at", "begin_again"):
        room.find(sam, name, "go", 0.04)
    room.find(sam, "meant", "self_harm", 0.03)
    assert [(row.flow, row.value) for row in access.answers_of(room.db, sam)] == [("about_you", 178.0), ("signs", "fever")]
    assert set(access.findings_of(room.db, sam)) == {"safety.level", "meant"}
    facts = {name: fact.value for name, fact in access.facts_of(room.db, sam).items()}
    assert facts == {"about_you.height": 178.0, "signs.which": "fever", "safety.level": "go"}


def test_every_reader_of_a_coach_goes_by_the_one_rule():
    """No module of the coach's reads the log, the findings or the facts of a lifter past ``record.access``."""
    past = []
    for file in Path(companion.coach.__path__[0]).glob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "log" and node.attr in (
                    "answers_of", "findings_of", "facts_of"):
                past.append(f"{file.name}: {node.attr}")
            if isinstance(node, ast.ImportFrom) and node.module == "companion.record.log":
                past += [f"{file.name}: {name.name}" for name in node.names if name.name in ("answers_of", "findings_of", "facts_of")]
    assert past == []


def test_the_rule_names_the_flows_of_the_book_and_the_finding():
    assert set(access.WITHHELD_FLOWS) <= set(BOOK.flows)
    assert CRISIS.fact.startswith("crisis")
