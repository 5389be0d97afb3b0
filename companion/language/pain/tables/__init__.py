"""The words of pain, of other signs that stop a test, and of what only sounds like them: TOML files a reviewer or a coach can extend.

``sure.toml`` says how a pattern is written, ``rules`` how the tables decide. They are read once, with the first message; a malformed one is
refused with its file and the line or key.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Set
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Any

_KEYS: Mapping[str, Mapping[str, type]] = {
    "sure": dict.fromkeys(("sure_things", "sure_events", "soreness"), dict),
    "unsure": dict.fromkeys(("unsure_things", "unsure_events", "vague"), dict),
    "ordinary": {"ordinary": dict},
    "context": dict.fromkeys(("no_forms", "without", "not_forms", "hardly", "unable", "between", "listed", "between_verbs", "openers",
                              "degree", "afterwards", "ellipsis", "supposed", "soreness_causes", "long_ago", "wholly_over", "not_over",
                              "past", "still_now"), str),
    "typing": {"mistyped": str, "exact": str, "words_near_pain": str, "spellings": dict, "beside": dict},
    "words": {"everyday": str, "units": str, "word_groups": dict},
}
"""The keys of each file: a text of words or patterns, or a section of such texts by their headings."""
_GROUP = re.compile(r"<[^\s|?]*")
_NO_WORD_FIRST = re.compile(r"^ {0,4}(?:~|\S+\?)(?:\s.*|$)", re.MULTILINE)


def read_tables(folder: Traversable) -> tuple[dict[str, str], dict[str, dict[str, str]]]:
    """Return the texts and the sections of a folder's files, by their keys. Raises ValueError where something is malformed."""
    tables = {name: _read(folder / f"{name}.toml") for name in _KEYS}
    groups = {f"<{name}>" for name in tables["words"].get("word_groups", ())}
    for name, keys in _KEYS.items():
        _check(f"{name}.toml", tables[name], keys, groups)
    every = {key: value for table in tables.values() for key, value in table.items()}
    sections = {key: value for key, value in every.items() if isinstance(value, dict)}
    return {key: value for key, value in every.items() if key not in sections}, sections


def _read(file: Traversable) -> dict[str, Any]:
    try:
        return tomllib.loads(file.read_text("utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise ValueError(f"{file.name}: {error}") from error


def _check(where: str, table: Mapping[str, object], keys: Mapping[str, type], groups: Set[str]) -> None:
    """Raise ValueError where a key is missing, unknown or of another kind, or where words would match nothing, or anything."""
    if wrong := keys.keys() ^ table.keys():
        raise ValueError(f"{where}: missing or unknown: {', '.join(sorted(wrong))}")
    for key, value in table.items():
        place = f"{where}, {key}"
        if not isinstance(value, keys[key]):
            raise ValueError(f"{place}: must be {'a text' if keys[key] is str else 'a section'}")
        if isinstance(value, dict):
            _check(place, value, dict.fromkeys(value, str), groups)
        elif isinstance(value, str) and (fault := _fault(value, groups)):
            raise ValueError(f"{place}: {fault}")


def _fault(text: str, groups: Set[str]) -> str:
    """Return what would match nothing, or anything; "" where all is well."""
    if "<" in text and (unknown := set(_GROUP.findall(text)) - groups):
        return f"no group of words.toml: {', '.join(sorted(unknown))}"
    if text != text.lower() or "'" in text:
        return f"not small, or with an apostrophe: {', '.join(word for word in text.split() if word != word.lower() or chr(39) in word)}"
    if found := _NO_WORD_FIRST.search(text):
        return f"a pattern must begin with a word: {found[0].strip()}"
    return ""


PAIN_WORDS, PAIN_SECTIONS = read_tables(files(__package__))
