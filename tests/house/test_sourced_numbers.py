"""Every number of screening, reminders and flows stands in the table of sources, or below with the reason why it needs no source."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

HERE = Path(__file__).parent.parent.parent
ROOMS = ("companion/screening", "companion/reminders", "companion/calendar", "flows")
RECORDS = ("companion/screening", "companion/reminders")
"""Rooms in which the numbers of a record count too; in a flow they are the bounds and the example of an answer."""
ORDERS = frozenset(("place", "ease", "sides"))
"""Fields that only put records in order, or count a body's sides."""
COUNTING = frozenset((0, 1, -1, 100))
"""Nothing, one, the other way, and per cent."""
ARITHMETIC = frozenset(("timedelta", "time", "int", "float", "round", "sqrt", "tuple", "dict", "frozenset", "radians", "len", "sum"))
"""Calls through which a constant is still a number."""
NEED_NO_SOURCE = {
    "Z_ONE_SIDED_95": "a quantile of the normal distribution", "Z_TWO_SIDED_95": "another",
    "MDC_FACTOR": "arithmetic: 1.96 times the root of 2; told by the row mdc", "TAIL": "what a 95 % interval leaves on one side",
    "EYE_TOP": "the end of a scale: as wide as a leg can go", "PAIN_IMPORTANT": "the ends of the ranges of the row pain_important",
    "POUND": "exact by definition", "_SPECKS": "exact arithmetic", "_SLACK": "exact arithmetic", "_DAY": "seconds in a day",
    "RULING_SEED": "any seed", "SEED": "any seed", "DRAW_COUNT": "how exact an estimate is worked out; its time is tested",
    "WORDS_MOST": "length of a message", "LETTERS_MOST": "length of a message", "MESSAGE_MOST": "length of a message",
    "PARTS_MOST": "length of a message", "WROTE_MOST": "length of a message",
    "VERDICT_WORDS_MOST": "length of a message", "MORE_MOST": "length of a message",
    "SAID_AT_ONCE": "length of a message", "MESSAGES_MOST": "number of messages", "NAMED_MOST": "length of a list",
    "_MOST_NAMED": "length of a list", "SHOWN_MOST": "length of a list", "NAME_WORDS_MOST": "how a name is read",
    "_OFTEN": "words for one and two", "_AS": "how many of one unit make one of another",
    "CHECK_AFTER": "when a source is read again",
    "SWEEP_SECONDS": "how often the sweep looks", "LOOKED_AT": "how far a search goes", "LONGEST_AHEAD": "how far a search goes",
    "NIGHT_OVER": "how a day is called", "JUST_NOW": "how a day is called", "LATER_DATES": "buttons to choose from",
    "CLEARED_FOR": "days of the months of the row clearance_months", "FULL_MINUTES": "rounded to five",
    "REACH_ANSWERS": "numbers in names of answers", "DEGREES": "ends of scales, at which a flow is tried",
    "LONGEST_GAP": "how far a search goes", "YEARS_AHEAD": "how far a file goes",
    "REMINDER_LASTS": "length of an entry in a calendar", "SINGLE_DAYS_KEPT": "length of a list", "PAUSES_KEPT": "length of a list",
    "YEAR_SHOWN_FROM": "how a day is called",
}


def numbers_in(text: str, records: bool = False) -> Iterator[tuple[int, str]]:
    """Yield line and name of each constant of a module that has a number written into it; ``records``: into a record too."""
    for node in ast.parse(text).body:
        target = node.target if isinstance(node, ast.AnnAssign) else node.targets[0] if isinstance(node, ast.Assign) else None
        assigned = node.value if isinstance(node, ast.AnnAssign | ast.Assign) else None
        if target is None or assigned is None:
            continue
        names = [one.id for one in ast.walk(target) if isinstance(one, ast.Name)]
        if names and names[0] == names[0].upper() and _written(assigned, records):
            yield node.lineno, names[0]


def _written(node: ast.AST, records: bool = False) -> bool:
    if isinstance(node, ast.keyword) and node.arg in ORDERS:
        return False
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div) and ast.unparse(node.right) == "2":
        return _written(node.left, records)  # half of it
    if isinstance(node, ast.Call) and not (isinstance(node.func, ast.Name) and (
            node.func.id in ARITHMETIC or (records and re.match("_?[A-Z]|_(slow|stretch)$", node.func.id)))):
        return False
    if isinstance(node, ast.Constant):
        return isinstance(node.value, int | float) and not isinstance(node.value, bool) and node.value not in COUNTING
    return not isinstance(node, ast.Subscript) and any(_written(one, records) for one in ast.iter_child_nodes(node))


def test_every_exception_is_one() -> None:
    found = {name for room in ROOMS for file in (HERE / room).rglob("*.py")
             for _, name in numbers_in(file.read_text("utf-8"), room in RECORDS)}
    assert NEED_NO_SOURCE.keys() <= found


def test_every_number_comes_from_the_table_of_sources() -> None:
    stray = [f"{file.relative_to(HERE)}:{line}: {name} has a number of its own: give it a row in companion/screening/numbers and read "
             f"it by value(), or add it to {Path(__file__).relative_to(HERE)} with the reason"
             for room in ROOMS for file in sorted((HERE / room).rglob("*.py"))
             for line, name in numbers_in(file.read_text("utf-8"), room in RECORDS) if name not in NEED_NO_SOURCE]
    assert not stray, "\n".join(stray)


def test_a_number_in_a_record_is_found() -> None:
    assert list(numbers_in('ONE: Final = Exercise("plank", 3, hold=15)', records=True))
    assert not list(numbers_in('ONE: Final = Protocol("plank", place=15, ease=3)', records=True))


@pytest.mark.parametrize("text", ["LIMIT: Final = 4.0", "REST = timedelta(days=2)", "SHARES = (0.4, 0.6)", 'SIZES: Final = {"full": 20.0}',
                                  "HALF = 7.5 / 2", "LOW, HIGH = 2.0, 3.0"])
def test_a_number_of_its_own_is_found(text: str) -> None:
    assert list(numbers_in(text))


@pytest.mark.parametrize("text", ['LIMIT: Final = value("pain_stop")', 'SHARE = value("load_share") / 100', "limit = 4.0", "MANY: int",
                                  'LOW, HIGH = SOURCES["pain_start"].value', 'FIELD = Number("cm", 0, 30)', "BOTH = ONE + TWO"])
def test_a_number_from_the_table_is_not(text: str) -> None:
    assert not list(numbers_in(text))
