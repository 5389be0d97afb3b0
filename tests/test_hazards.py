"""The hazard table: each row is whole, and each test it names is there to be run."""

from __future__ import annotations

import ast
import tomllib
from functools import cache
from pathlib import Path
from typing import Any, Final

from tests.table import each_row

HERE: Final = Path(__file__).parent
COLUMNS: Final = {"hazard", "cause", "control", "by", "tests", "remains"}
CONTROLLED_BY: Final = ("design", "guard", "words")
TABLE: Final[dict[str, dict[str, Any]]] = tomllib.loads((HERE / "hazards.toml").read_text(encoding="utf-8"))


@cache
def named_in(file: str) -> frozenset[str]:
    """The tests of a file as pytest names them after it: "test_x", "TestY::test_x"."""
    path = HERE.parent / file
    if not path.is_file() or not path.name.startswith("test_"):
        return frozenset()
    found = set[str]()
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        within = node.body if isinstance(node, ast.ClassDef) and node.name.startswith("Test") else [node]
        before = f"{node.name}::" if isinstance(node, ast.ClassDef) else ""
        found |= {before + one.name for one in within
                  if isinstance(one, ast.FunctionDef | ast.AsyncFunctionDef) and one.name.startswith("test_")}
        if isinstance(node, ast.Assign):  # a state machine's: TestX = X.TestCase, or a test by another name
            found |= {target.id for target in node.targets if isinstance(target, ast.Name) and target.id.startswith("test_")}
    return frozenset(found)


def missing(row: dict[str, Any]) -> list[str]:
    """What is wrong with a row: an empty or unknown column, no test, a test that is not there."""
    wrong = [f"{column} is empty" for column in sorted(COLUMNS) if not row.get(column)]
    wrong += [f"{column} is no column" for column in sorted(row.keys() - COLUMNS)]
    wrong += [] if row.get("by") in CONTROLLED_BY else [f"by is one of {', '.join(CONTROLLED_BY)}"]
    for test in row.get("tests", ()):
        file, _, name = test.partition("::")
        wrong += [] if name in named_in(file) else [f"{test} is not there"]
    return wrong


@each_row("hazard", TABLE)
def test_a_hazard_has_cause_control_tests_that_are_there_and_what_remains(hazard):
    assert missing(TABLE[hazard]) == []


def test_a_row_without_a_test_or_with_an_empty_column_is_found_out():
    whole = {"hazard": "x", "cause": "x", "control": "x", "by": "guard", "remains": "x",
             "tests": ["tests/test_hazards.py::test_a_row_without_a_test_or_with_an_empty_column_is_found_out"]}
    assert missing(whole) == []
    assert missing({**whole, "tests": []}) == ["tests is empty"]
    assert missing({**whole, "remains": ""}) == ["remains is empty"]
    assert missing({**whole, "tests": ["tests/test_hazards.py::test_nothing"]}) == ["tests/test_hazards.py::test_nothing is not there"]
    assert missing({**whole, "by": "hope"}) == ["by is one of design, guard, words"]
    assert missing({**whole, "severity": "high"}) == ["severity is no column"]


def test_no_hazard_stands_twice():
    assert len({row["hazard"] for row in TABLE.values()}) == len(TABLE) >= 40
