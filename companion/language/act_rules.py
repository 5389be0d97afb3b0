"""The rules of the speech acts, read from acts.toml and compiled when they are first used."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def _tables() -> Mapping[str, Any]:
    return tomllib.loads((files("companion.language") / "acts.toml").read_text(encoding="utf-8"))


@cache
def rows_of(name: str) -> Sequence[str]:
    """Return the rows of a table by its dotted name, such as "chat" or "moods.ahead"."""
    found: Any = _tables()
    for part in name.split("."):
        found = found[part]
    return found  # type: ignore[no-any-return]


@cache
def tables_in(name: str) -> Mapping[str, Any]:
    """Return the tables of a section, such as "commands", in the order they are tried."""
    return _tables()[name]  # type: ignore[no-any-return]


@cache
def words_of(name: str) -> frozenset[str]:
    """Return a list of words: "lead_in", "turning" or "filler"; the lead-in is filler too."""
    lists = _tables()["words"]
    return frozenset(lists[name].split()) | (frozenset(lists["lead_in"].split()) if name == "filler" else frozenset())


@cache
def pattern(name: str) -> re.Pattern[str]:
    """Return a table as one pattern, its rows as alternatives."""
    return re.compile("|".join(rows_of(name)))


def matches(name: str, text: str) -> bool:
    """True if a row of a table is found in a flat text. Rows that must begin it say so ("^")."""
    return pattern(name).search(text) is not None
