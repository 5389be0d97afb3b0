"""Words people use for the answers of a choice, read from meanings.toml."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.resources import files
from itertools import chain, product
from typing import Any, Final

from companion.language.clauses import flat


@cache
def meanings() -> Sequence[Mapping[str, Any]]:
    """Return the tables, as they stand in meanings.toml."""
    return tomllib.loads((files("companion.language") / "meanings.toml").read_text(encoding="utf-8"))["meanings"]  # type: ignore[no-any-return]


def applies(table: Mapping[str, Any], values: Sequence[str], labels: Sequence[str]) -> bool:
    """True if a table is for a question with these answers. ``labels``: flat."""
    return set(table.get("of", ())) <= set(values) and set(table.get("labels", ())) <= set(labels)


@cache
def meant(answers: tuple[tuple[str, tuple[str, ...]], ...]) -> Mapping[str, tuple[str, ...]]:
    """Return further phrases for each answer of a choice, by its value. ``answers``: the value and the flow's own words of each, the label
    first; a phrase that is another answer's own word is left out."""
    values, labels = [value for value, _ in answers], [flat(words[0]).strip(" .") for _, words in answers if words]
    own = {flat(word).strip(" ."): value for value, words in answers for word in words}
    found: dict[str, dict[str, None]] = {value: {} for value in values}
    for table in meanings():
        if not table.get("sure") and applies(table, values, labels):
            for value in found.keys() & table.keys():
                found[value].update(dict.fromkeys(phrase for phrase in spelt_out(table[value]) if own.get(phrase, value) == value))
    return {value: tuple(phrases) for value, phrases in found.items()}


@cache
def surely_meant(answers: tuple[tuple[str, str], ...]) -> tuple[tuple[str, re.Pattern[str]], ...]:
    """Return the whole replies that surely mean an answer, also where nothing is guessed, as (value, pattern), which matches their words
    with a space after each. ``answers``: the value and the label of each. The pattern's group is what is told beside the answer."""
    values, labels = [value for value, _ in answers], [flat(label).strip(" .") for _, label in answers]
    tables = [table for table in meanings() if table.get("sure") and applies(table, values, labels)]
    rows = [(value, table[value]) for table in tables for value in values if value in table]
    return tuple((value, re.compile("|".join(map(_whole, row.split(","))))) for value, row in rows)


_BESIDE: Final = r"((?:(?!but |though |\S*\?)\S+ )+)"
"""What may be told beside an answer: nothing that turns it, and no question."""


def _whole(pattern: str) -> str:
    words = (_BESIDE if part == "..." else f"(?:(?:{part.removesuffix('?')}) ){'?' * part.endswith('?')}" for part in pattern.split())
    return "".join(words)


def spelt_out(row: str) -> Iterator[str]:
    """Yield every phrase of a row: its patterns are separated by commas, a|b is either word, a? may be left out."""
    for pattern in row.split(","):
        choices = [[*part.removesuffix("?").split("|"), *([""] if part.endswith("?") else [])] for part in pattern.split()]
        yield from filter(None, (" ".join(filter(None, chain(chosen))) for chosen in product(*choices)))
