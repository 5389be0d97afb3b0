"""SQL stands in record/ and operate/ alone."""

from __future__ import annotations

import ast
import re

import pytest

from tests.house.source import modules, texts
from tests.table import each_row

SQL = re.compile(r"\s*(?:select\s.+\sfrom|select (?:1|count|max|min|exists)\b|insert (?:or \w+ )?into|update \w+ set|delete from|"
                 r"(?:create|drop|alter) (?:table|index|view)|pragma|begin immediate|savepoint|rollback|with \w+ as)\b",
                 re.IGNORECASE | re.DOTALL)
ROOMS = ("companion/record/", "companion/operate/")
CALLS = ("execute", "executemany", "executescript")


def elsewhere() -> list[tuple[str, ast.Module]]:
    return [(path, tree) for path, tree in modules("companion", "flows") if not path.startswith(ROOMS)]


@each_row("statement", ["select value from facts", "SELECT count(*) from runs", "insert or ignore into runs values (?)",
                                       "update reminders set state = 'sent'", "delete from outbox", "pragma wal_checkpoint(truncate)",
                                       "create table persons (id)", "\nwith m as materialized (select 1)"])
def test_a_statement_is_told_from_words(statement):
    assert SQL.match(statement)


@pytest.mark.parametrize("words", ["Select a test", "select", "Update your plan", "with the bar", "delete", "Insert the stick"])
def test_words_are_no_statement(words):
    assert not SQL.match(words)


def test_no_text_elsewhere_is_a_statement():
    found = [f"{path}:{line}: move this statement to a function of companion/record/: {text[:60]}"
             for path, tree in elsewhere() for line, text in texts(tree) if SQL.match(text)]
    assert found == []


def test_nothing_elsewhere_executes_a_statement():
    found = [f"{path}:{node.lineno}: call a function of companion/record/ instead of .{node.func.attr}(…)"
             for path, tree in elsewhere() for node in ast.walk(tree)
             if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in CALLS]
    assert found == []
