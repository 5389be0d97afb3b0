"""Names of lifters: what a coach reads for one, and which of their lifters a name that they type may mean.

It is the lifter's own name. Where two of one coach's lifters would read alike on a button, each has beside it what the coach's own
code for them was made out to, or their number, which never becomes another's: a place in a list would.
"""

from __future__ import annotations

import re
import sqlite3
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final
from unicodedata import category, normalize

from companion.coach.caseload import NAME_MOST, CaseloadLine, shortened
from companion.language.phrases import normalise
from companion.record import coaching, people

BUTTON_NAME_MOST: Final = 22
"""UTF-16 units of a name that are left on a button of 32 after "Write to "; our choice."""
MARK_MOST: Final = 11
"""UTF-16 units of what tells two lifters apart, so that eight of the name are left; our choice."""
NOBODY: Final = "somebody"
_WORDS: Final = re.compile(r"\w+")


def display_name(db: sqlite3.Connection, coach: int, lifter: int) -> str:
    """Return what a coach reads for this lifter, linked or not any more: plain, short, never empty, and no other's of theirs."""
    name = _named(people.name_of(db, lifter))
    alike = {one: other for one, given in coaching.names_of_lifters(db, coach).items() if _key(other := _named(given)) == _key(name)}
    if not alike.keys() - {lifter}:
        return name
    return distinct_names({**alike, lifter: name}, coaching.codes_of_lifters(db, coach))[lifter]


def with_distinct_names(db: sqlite3.Connection, coach: int | None, lines: Sequence[CaseloadLine]) -> list[CaseloadLine]:
    """Return the same lines, with names that tell them apart; by numbers alone for the operator (None)."""
    names = {line.person: line.name or NOBODY for line in lines}
    if len({_key(name) for name in names.values()}) == len(names):
        return list(lines)
    apart = distinct_names(names, coaching.codes_of_lifters(db, coach) if coach is not None else {})
    return [replace(line, name=apart[line.person]) if line.person in apart else line for line in lines]


def distinct_names(names: Mapping[int, str], codes: Mapping[int, str]) -> dict[int, str]:
    """Return names, at most ``BUTTON_NAME_MOST`` long, of those whose own reads like another's.
    ``codes``: what the code of each was made out to."""
    alike: dict[str, list[int]] = {}
    for person, name in names.items():
        alike.setdefault(_key(name), []).append(person)
    told: dict[int, str] = {}
    for people_alike in alike.values():
        if len(people_alike) > 1:
            marks = {one: _mark(codes.get(one, ""), names[one]) for one in people_alike}
            many = Counter(mark.casefold() for mark in marks.values())
            told |= {one: _with_mark(names[one], mark if mark and many[mark.casefold()] == 1 else f"no. {one}")
                     for one, mark in marks.items()}
    return told


def lifters_matching(db: sqlite3.Connection, coach: int, typed: str) -> list[int]:
    """Return the lifters of a coach whom a typed name may mean: whose name, code or what is beside the name has all its words, else has
    words that begin so. Capitals and accents don't matter."""
    wanted = _words(typed)
    names = {one: _named(name) for one, name in coaching.names_of_lifters(db, coach).items()}
    codes = coaching.codes_of_lifters(db, coach)
    apart = distinct_names(names, codes)
    known = {one: _words(f"{name} {codes.get(one, '')} {apart.get(one, '')}") for one, name in names.items()}
    if not wanted:
        return []
    whole = [one for one, words in known.items() if wanted <= words]
    return whole or [one for one, words in known.items() if all(any(word.startswith(part) for word in words) for part in wanted)]


def _named(name: str) -> str:
    return shortened(name, NAME_MOST) or NOBODY


def _key(name: str) -> str:
    return (name[:BUTTON_NAME_MOST - 1] if name.isascii() else shortened(name, BUTTON_NAME_MOST)).casefold()


def _mark(code: str, name: str) -> str:
    """Return what a code's name says beyond the lifter's own: "Tuesdays" of "Sam, Tuesdays"."""
    said, own = shortened(code, NAME_MOST).translate(str.maketrans("()", "  ")).split(), name.casefold().split()
    while said and own and said[0].casefold().strip(",;:-–") == own[0]:
        said, own = said[1:], own[1:]
    return shortened(" ".join(said).strip(" ,;:-–"), MARK_MOST)


def _with_mark(name: str, mark: str) -> str:
    return f"{shortened(name, BUTTON_NAME_MOST - 3 - len(mark.encode('utf-16-le')) // 2)} ({mark})"


def _words(text: str) -> set[str]:
    letters = normalize("NFKD", normalise(text))
    return set(_WORDS.findall("".join(one for one in letters if category(one) != "Mn")))
