"""Words people use for the answers of a choice, read from meanings.toml."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.resources import files
from itertools import chain, product
from typing import Any

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
        if applies(table, values, labels):
            for value in found.keys() & table.keys():
                found[value].update(dict.fromkeys(phrase for phrase in spelt_out(table[value]) if own.get(phrase, value) == value))
    return {value: tuple(phrases) for value, phrases in found.items()}


def spelt_out(row: str) -> Iterator[str]:
    """Yield every phrase of a row: its patterns are separated by commas, a|b is either word, a? may be left out."""
    for pattern in row.split(","):
        choices = [[*part.removesuffix("?").split("|"), *([""] if part.endswith("?") else [])] for part in pattern.split()]
        yield from filter(None, (" ".join(filter(None, chain(chosen))) for chosen in product(*choices)))
