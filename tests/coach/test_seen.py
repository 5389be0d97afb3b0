"""Everything a coach reads of a lifter is in an export, read back by programs that are not ours."""

from __future__ import annotations

import io
import json
import re
from datetime import timedelta
from html.parser import HTMLParser
from itertools import combinations
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from companion.coach.caseload_page import GROUP_MEANINGS, caseload_html
from companion.coach.compare import measured_of
from companion.coach.lifter_messages import LIFTER_VIEWS
from companion.coach.report import report_html
from companion.coach.seen import seen_by, seen_of
from companion.coach.views import show
from companion.coach.whys import TOPICS, WHY_PREFIX
from companion.export.registry import FORMATS, ExportSource
from companion.export.table import seen_csv
from companion.record import coaching
from companion.record.context import known_of
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW as ROOM_NOW
from tests.coach.caseload_rows import ago
from tests.coach.caseload_world import populate
from tests.coach.made_up import NOW, Kept, a_lifter, opened
from tests.coach.pages import ask, full

if TYPE_CHECKING:
    import pandas

NAME = "Ottilie Brandt"


class Texts(HTMLParser):
    """The texts of a page's cells, terms, list items and captions."""

    INSIDE = frozenset(("td", "dd", "li", "figcaption"))

    def __init__(self, html: str) -> None:
        super().__init__()
        self.depth, self.found = 0, [""]
        html = html[html.index("<main"):]
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.depth += tag in self.INSIDE
        if tag in (*self.INSIDE, "div", "p", "span"):
            self.found.append("")

    def handle_endtag(self, tag: str) -> None:
        self.depth -= tag in self.INSIDE
        if tag in (*self.INSIDE, "div", "p", "span"):
            self.found.append("")

    def handle_data(self, data: str) -> None:
        if self.depth:
            self.found[-1] += data


def spaced(text: str) -> str:
    return " ".join(text.split())


@pytest.fixture(scope="module")
def of(tmp_path_factory) -> ExportSource:
    db = opened(tmp_path_factory.mktemp("seen") / "companion.sqlite")
    sam = a_lifter(db, NAME, note="slept badly; =1+1, the bar felt light")
    Kept(db, sam, NOW - timedelta(hours=1), 500).run("note_to_coach", {"text": "Friday went well"})
    return ExportSource(db, sam, NOW, known_of(db, sam, NOW).facts, BOOK, seen_of)


@pytest.fixture(scope="module")
def told(of) -> str:
    """All that the table holds, as another program reads it."""
    import pandas

    table = pandas.read_csv(io.StringIO(FORMATS["coach"].made(of)), dtype=str, keep_default_na=False)
    assert list(table.columns) == ["reader", "page", "part", "words"]
    return "\n".join(spaced(f"{row.part} · {row.words}") for row in table.itertuples())


def read_by_coaches(of: ExportSource) -> list[str]:
    """Every line a coach can open of the lifter, apart from the answers and the thread."""
    ((coach, _),) = coaching.coaches_of(of.db, of.person)
    turn = Turn(of.db, coach, NOW, BOOK)
    of.db.execute("savepoint looked")
    asked = [*(f"-{what}".rstrip("-") for what in LIFTER_VIEWS if what != "thread"),
             *("-" + WHY_PREFIX + one.name for one in TOPICS if one.listed)]
    says = show(turn, "since", "") + [say for what in asked for say in show(turn, "lifter", f"{of.person}{what}")]
    of.db.execute("rollback to looked")
    pages = [caseload_html(of.db, coach, NOW), report_html(of.db, of.person, NOW, BOOK, with_log=False)]
    lines = [line for say in says for line in say.text.split("\n")] + [text for page in pages for text in Texts(page).found]
    return [re.sub(rf"^(?:[0-9]+\. )?{NAME}: |^Due from you: ", "", spaced(line)).strip("().") for line in lines if line.strip()]


LEGEND = {*GROUP_MEANINGS.values(), NAME, "–", "Since you last looked: 1 of 1 lifter"}


def test_every_line_of_every_page_is_in_the_table(of, told):
    missing = [line for line in read_by_coaches(of) if line.casefold() not in told.casefold() and line not in LEGEND]
    assert not missing, "\n".join(missing)


def test_the_bundle_has_the_same_words(of, told):
    import pandas
    from fhir.resources.bundle import Bundle

    bundle = Bundle.model_validate(json.loads(FORMATS["fhir"].made(of)))
    said = {note for entry in bundle.entry if (note := getattr(entry.resource, "valueString", None))}
    rows = pandas.read_csv(io.StringIO(FORMATS["coach"].made(of)), dtype=str, keep_default_na=False)
    assert {spaced(words).removeprefix("'") for words in rows.words} <= {spaced(one) for one in said}


def table_of(made: str) -> pandas.DataFrame:
    import pandas

    return pandas.read_csv(io.StringIO(made), dtype=str, keep_default_na=False)


def test_each_comparison_of_two_days_that_a_coach_can_ask_for_is_in_the_table_and_the_bundle(of):
    ((coach, _),) = coaching.coaches_of(of.db, of.person)
    turn, table = Turn(of.db, coach, NOW, BOOK), table_of(FORMATS["coach"].made(of))
    found = {(row.page.removeprefix("compared, "), f"· {row.part}: {row.words}") for row in table.itertuples()}
    from fhir.resources.bundle import Bundle

    bundle = Bundle.model_validate(json.loads(FORMATS["fhir"].made(of)))
    said = {entry.resource.valueString for entry in bundle.entry if getattr(entry.resource, "valueString", None)}
    days = measured_of(turn.of(of.person).known).days
    assert len(days) == 4
    of.db.execute("savepoint looked")
    for first, second in combinations(days[::-1], 2):
        (say,) = show(turn, "compare", f"{of.person}-{first}-{second}")
        title, *lines = say.text.split("\n")
        assert lines
        assert {(title.removeprefix(f"{NAME}: "), line) for line in lines} <= found
        assert {line.partition(": ")[2] for line in lines} <= said
    of.db.execute("rollback to looked")


def test_each_side_of_a_comparison_of_two_lifters_is_in_the_table_of_its_own_lifter_alone(room):
    sam, mia = full(room, "Sam"), room.lifter("Mia")
    room.find(mia, "load.limit", "64", 5)
    sides = []
    for lifter in (sam, mia):
        facts = known_of(room.db, lifter, ROOM_NOW).facts
        table = table_of(FORMATS["coach"].made(ExportSource(room.db, lifter, ROOM_NOW, facts, BOOK, seen_of)))
        sides.append({row.part: row.words for row in table.itertuples() if row.page == "compared with another"})
        assert not table.words.str.contains("Mia" if lifter == sam else "Sam").any()
    (say,) = ask(room, "compare", "sam and mia")
    for line in say.text.split("\n")[1:]:
        part, _, words = line.removeprefix("· ").partition(": ")
        assert words == "; ".join(one.get(part, "not measured") for one in sides)


def test_every_line_of_the_pages_about_all_lifters_is_in_the_caseload_s_table(room):
    for n, lifter in enumerate(populate(room, 13)):
        coaching.audit_act(room.db, lifter, room.coach, "group", f"+{'Tuesday' if n % 2 else 'Friday'} 6 pm", "", ago(1))
    full(room, "Mia")
    table = table_of(seen_csv(seen_by(room.db, room.coach, ROOM_NOW)))
    assert set(table.reader) == {"Ada"}
    told = "\n".join(spaced(f"{row.part.split(': ')[0]} · {row.part} · {row.words}").removeprefix("'") for row in table.itertuples())
    html = Texts(caseload_html(room.db, room.coach, ROOM_NOW)).found
    says = [say for view, most in (("since", 3), ("caseload", 2), ("groups", 1)) for page in range(most)
            for say in ask(room, view, {"since": page, "caseload": f"all-{page}"}.get(view, ""))]
    lines = [line for say in says for line in say.text.split("\n")] + html
    assert len(lines) > 100
    missing = [line for line in map(spaced, lines) if line.strip("().–") and line.strip("().") not in told]
    assert not missing, "\n".join(missing)


def test_a_private_note_is_in_no_table(of, tmp_path: Path):
    ((coach, _),) = coaching.coaches_of(of.db, of.person)
    of.db.execute("savepoint noted")
    coaching.audit_act(of.db, of.person, coach, "private", "ask about sleep", "", NOW)
    assert all("ask about sleep" not in FORMATS[name].made(of) for name in FORMATS)
    of.db.execute("rollback to noted")


def test_a_lifter_without_a_coach_has_what_the_operator_reads(of):
    ((coach, _),) = coaching.coaches_of(of.db, of.person)
    of.db.execute("savepoint left")
    coaching.withdraw(of.db, of.person, coach, NOW)
    rows = list(seen_of(of))
    assert {row.reader for row in rows} == {""}
    assert {"caseload", "states", "summary"} <= {row.page for row in rows}
    of.db.execute("rollback to left")
