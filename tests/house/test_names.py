"""A test is named in one place: its protocol, its flow and its drawings name it, the table of pairs too, and nothing else."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from companion.screening.protocols import protocols
from tests.table import each_row

ROOT = Path(__file__).parents[2]
PAIRS = "companion/screening/pairs.py"
PICTURES = ("contact_sheet", "drills", "kneeling", "lying", "poses", "still_backs", "wall")
"""The modules of drawings; the contact sheet makes up a log with numbers of its own."""

ALLOWED = {PAIRS, *(f"companion/pictures/{name}.py" for name in PICTURES)}
FILES = sorted(file for folder in ("companion", "flows") for file in (ROOT / folder).rglob("*.py"))
BEFORE = "chart_|go_|run_|done_|again_|place_"
"""What the names of charts, states and facts of a test begin with."""

NAMES = {one.id: one.record.__name__ for one in protocols().values()}
LITERAL = re.compile(rf"(?<!\w)(?:{BEFORE})?({'|'.join(NAMES)})(?!\w)")


def own(test: str) -> set[str]:
    """The files of one test."""
    return {f"companion/screening/protocols/{test}.py", f"flows/{test}.py"}


def named_in(source: str) -> Iterator[tuple[int, str]]:
    """The tests that code names, each with its line: in a string, as a record's class, a module, an attribute or an argument."""
    tree = ast.parse(source)
    docs = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    of_record = {record: test for test, record in NAMES.items()}
    for node in ast.walk(tree):
        line = getattr(node, "lineno", 0)
        match node:
            case ast.Constant(value=str(text)) if id(node) not in docs:
                yield from ((line, test) for test in LITERAL.findall(text))
            case ast.Name(id=name) | ast.Attribute(attr=name) | ast.alias(name=name) | ast.keyword(arg=str(name)):
                if found := of_record.get(name) or (name if name in NAMES else None):
                    yield line, found
            case ast.ImportFrom(module=str(module)):
                yield from ((line, test) for test in NAMES if test in module.split("."))


def strays(path: str, source: str) -> list[str]:
    """What a file names that is not its own, with its line and what to do about it."""
    return [f"{path}:{line} names the test {test}: take it from companion.screening.protocols, or move the rule into {PAIRS}"
            for line, test in named_in(source) if path not in ALLOWED | own(test)]


@each_row("file", FILES, ids=[file.relative_to(ROOT).as_posix() for file in FILES])
def test_nothing_else_names_a_test(file):
    found = strays(file.relative_to(ROOT).as_posix(), file.read_text(encoding="utf-8"))
    assert not found, "\n".join(found)


@each_row("line", [
    'fact("knee_to_wall.method")', 'picture = "chart_knee_to_wall"', "screen.knee_to_wall", "Screen(knee_to_wall=None)",
    "record = KneeToWall()", "from companion.screening.protocols import knee_to_wall",
    "from companion.screening.protocols.knee_to_wall import PROTOCOL", 'ask = f"go_knee_to_wall"', 'TESTS = ("knee_to_wall",)'])
def test_a_stray_name_is_told_with_its_file_and_line(line):
    (told,) = {*strays("flows/screen.py", f"x = 1\n{line}\n")}
    assert told.startswith("flows/screen.py:2 names the test knee_to_wall: ")
    assert not strays("flows/knee_to_wall.py", line)


@pytest.mark.parametrize("line", ['"""Measured like "knee_to_wall"."""', 'Tell("The knee to wall.")', 'picture = "knee_to_wall_setup"'])
def test_words_and_pictures_are_no_names(line):
    assert not strays("flows/screen.py", line)
