"""Names of lifters as a coach sees them, and finding a lifter by a typed name.

A lifter's own name is shown. Where two of a coach's lifters would look alike on a button, each also gets a mark: the name the
coach gave their invitation, or their number. Unlike a position in a list, that never becomes somebody else's.
"""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Final

from companion.coach.caseload import NAME_MOST, CaseloadLine, shortened
from companion.language.coach_words import called
from companion.record import coaching, people

BUTTON_NAME_MOST: Final = 22
"""UTF-16 units of a name that fit on a button of 32 after "Write to "; our choice."""
MARK_MOST: Final = 11
"""UTF-16 units of a mark, so that eight of the name are left; our choice."""
NOBODY: Final = "somebody"
Match = Callable[[str, Mapping[int, str]], list[int]]


def display_name(db: sqlite3.Connection, coach: int, lifter: int) -> str:
    """Return a lifter's name for a coach, linked or not: plain, short, never empty, and distinct among the coach's lifters."""
    name = named(people.name_of(db, lifter))
    alike = {one: other for one, given in coaching.names_of_lifters(db, coach).items() if _key(other := named(given)) == _key(name)}
    if not alike.keys() - {lifter}:
        return name
    return distinct_names({**alike, lifter: name}, coaching.codes_of_lifters(db, coach))[lifter]


def with_distinct_names(db: sqlite3.Connection, coach: int | None, lines: Sequence[CaseloadLine]) -> list[CaseloadLine]:
    """Return the lines with distinct names; for the operator (``coach`` None) the marks are numbers."""
    names = {line.person: line.name or NOBODY for line in lines}
    if len({_key(name) for name in names.values()}) == len(names):
        return list(lines)
    apart = distinct_names(names, coaching.codes_of_lifters(db, coach) if coach is not None else {})
    return [replace(line, name=apart[line.person]) if line.person in apart else line for line in lines]


def distinct_names(names: Mapping[int, str], codes: Mapping[int, str]) -> dict[int, str]:
    """Return distinct names of at most BUTTON_NAME_MOST for people whose names look alike; others are left out. ``codes``: the name
    on each one's invitation."""
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


def lifters_matching(db: sqlite3.Connection, coach: int, typed: str, how: Match = called) -> list[int]:
    """Return the lifters of a coach whose name with the name on their invitation and their mark is what was typed (``called``), or is
    nearly (``how``: ``nearly_called``)."""
    names = {one: named(name) for one, name in coaching.names_of_lifters(db, coach).items()}
    codes = coaching.codes_of_lifters(db, coach)
    apart = distinct_names(names, codes)
    return how(typed, {one: f"{name} {codes.get(one, '')} {apart.get(one, '')}" for one, name in names.items()})


def named(name: str) -> str:
    """Return a name as plain text of at most NAME_MOST, never empty."""
    return shortened(name, NAME_MOST) or NOBODY


def _key(name: str) -> str:
    return (name[:BUTTON_NAME_MOST - 1] if name.isascii() else shortened(name, BUTTON_NAME_MOST)).casefold()


def _mark(code: str, name: str) -> str:
    """Return the part of an invitation's name beyond the lifter's own: "Tuesdays" of "Sam, Tuesdays"."""
    said, own = shortened(code, NAME_MOST).translate(str.maketrans("()", "  ")).split(), name.casefold().split()
    while said and own and said[0].casefold().strip(",;:-–") == own[0]:
        said, own = said[1:], own[1:]
    return shortened(" ".join(said).strip(" ,;:-–"), MARK_MOST)


def _with_mark(name: str, mark: str) -> str:
    return f"{shortened(name, BUTTON_NAME_MOST - 3 - len(mark.encode('utf-16-le')) // 2)} ({mark})"
