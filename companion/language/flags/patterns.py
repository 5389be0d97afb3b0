"""Patterns of flags: the language of the pain tables and four additions to it; how they are compiled and found.

``a & b`` all of them in one clause, in any order, ``PARTS_APART`` words apart at most and with no denial between ·
``a && b`` all of them in one sentence, ``FAR`` words apart at most, whatever stands between · ``!x`` at the end: not where x comes
next · ``word+`` the word and its regular endings (trip, trips, tripped, tripping). The groups are those of ``words.toml``.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain, pairwise
from typing import NamedTuple

from companion.language.flags import tables
from companion.language.flags.flag import Flag
from companion.language.flags.tables import context
from companion.language.flags.tables.signs import Signs
from companion.language.pain.patterns import CLAUSE_END, DENIALS, EVERYDAY_WORDS, PUNCTUATION, SENTENCE_ENDS, PatternStep, match

PARTS_APART = 8  # words between the first and the last of ``a & b`` (choice)
FAR = 14  # the same of ``a && b`` (choice)
CLAUSE_ENDS = PUNCTUATION | {"but", "although", "though", "however", "because", "cos", "except"}


class Pattern(NamedTuple):
    """One line of a table: parts in any order (mostly one), the words that may not follow, the words it needs."""

    parts: tuple[tuple[PatternStep, ...], ...]
    not_before: frozenset[str]
    needs: tuple[frozenset[str], ...]
    loose: bool
    instead: tuple[str, ...]
    signs: Signs | None
    concerns: tuple[Flag, ...]


PatternIndex = dict[str, list[Pattern]]


@cache
def word_set(table: str) -> frozenset[str]:
    """The words of a table, its groups and endings opened."""
    words = table.replace("|", " ").split()
    if "<" not in table and "+" not in table:
        return frozenset(words)
    return frozenset(chain.from_iterable(map(_opened, words)))


def _opened(word: str) -> Iterable[str]:
    if word.startswith("<"):
        return word_set(context.SIGN_WORDS[word[1:-1]])
    return _endings(word[:-1]) if word.endswith("+") and len(word) > 2 else (word,)


def _endings(word: str) -> Iterator[str]:
    """A word and its regular endings; some that do not exist come along and harm nothing."""
    yield from (word, f"{word}s", f"{word}es", f"{word}ed", f"{word}ing", f"{word}in")
    yield from (f"{word}{word[-1]}ed", f"{word}{word[-1]}ing")
    if word[-1] == "e":
        yield from (f"{word}d", f"{word[:-1]}ing")
    elif word[-1] == "y":
        yield from (f"{word[:-1]}ies", f"{word[:-1]}ied")


def patterns(table: str, signs: Signs | None = None, concerns: tuple[Flag, ...] = ()) -> Iterator[Pattern]:
    """The patterns of a table, a line each; ``ValueError`` where one begins with no word or goes on behind what may not follow."""
    for line in re.sub(r"\n {5,}", " ", table).replace("| ", "|").split("\n"):
        if not line.strip():
            continue
        pattern, _, instead = line.partition("->")
        before, _, never = pattern.partition(" !")
        loose = " && " in before
        parts = tuple(tuple(map(_step, part.split())) for part in before.split(" && " if loose else " & "))
        if any(not part or part[0].optional or part[0].gap for part in parts):
            raise ValueError(f"a pattern must begin with a word: {line.strip()}")
        if "&" in never:
            raise ValueError(f"what may not follow stands at a pattern's end: {line.strip()}")
        needs = tuple(step.words for part in parts for step in part if not step.optional and not step.gap and CLAUSE_END not in step.words)
        yield Pattern(parts, word_set(never) if never else frozenset(), needs, loose, tuple(instead.split()), signs, concerns)


@cache
def _step(step: str) -> PatternStep:
    return PatternStep(frozenset(), gap=True) if step == "~" else PatternStep(word_set(step.removesuffix("?")), optional=step.endswith("?"))


def by_rarest_word(of: Iterable[Pattern]) -> PatternIndex:
    """Patterns by the words of the step least likely to stand in an ordinary message, so that few are tried on one."""
    index: PatternIndex = {}
    for pattern in of:
        for word in min(pattern.needs, key=_commonness):
            index.setdefault(word, []).append(pattern)
    return index


@cache
def _commonness(words: frozenset[str]) -> tuple[int, int]:
    return len(words & EVERYDAY_WORDS), len(words)


def found(words: list[str], index: PatternIndex) -> Iterator[tuple[int, int, Pattern]]:
    """Every place where a pattern matches, with the pattern."""
    present = frozenset(words)
    tried: set[int] = set()
    for word in present:
        for pattern in index.get(word, ()):
            if id(pattern) in tried:
                continue
            tried.add(id(pattern))
            if any(need.isdisjoint(present) for need in pattern.needs):
                continue
            places = _places(words, pattern.parts[0]) if len(pattern.parts) == 1 else _together(words, pattern)
            for start, end in places:
                if end >= len(words) or words[end] not in pattern.not_before:
                    yield start, end, pattern


def holds(words: list[str], index: PatternIndex) -> bool:
    """True if any pattern matches anywhere."""
    return next(found(words, index), None) is not None


def _places(words: list[str], steps: tuple[PatternStep, ...]) -> Iterator[tuple[int, int]]:
    """The places where a part matches: from, up to."""
    first = steps[0].words
    for at, word in enumerate(words):
        if word in first and (end := match(steps, 0, words, at)) > at:
            yield at, end


def _together(words: list[str], pattern: Pattern) -> Iterator[tuple[int, int]]:
    """Yield where all the parts match near each other, in any order; from the first up to the end of the last."""
    parts = pattern.parts
    others = [list(_places(words, part)) for part in parts[1:]]
    if not all(others):
        return
    for start, end in _places(words, parts[0]):
        spans = [(start, end)]
        for places in others:
            free = [place for place in places if all(place[1] <= s or place[0] >= e for s, e in spans)]
            if not free:
                break
            spans.append(min(free, key=lambda place: max(place[0] - end, start - place[1])))
        else:
            yield from _if_near(words, spans, pattern.loose)


def _if_near(words: list[str], spans: list[tuple[int, int]], loose: bool) -> Iterator[tuple[int, int]]:
    """The stretch of the spans, where they stand near enough and in one clause, with no denial in between."""
    spans.sort()
    begin, last = spans[0][0], spans[-1][1]
    between = [word for (_, end), (start, _) in pairwise(spans) for word in words[end:start]]
    if loose:
        if len(between) <= FAR and SENTENCE_ENDS.isdisjoint(between):
            yield begin, last
    elif len(between) <= PARTS_APART and CLAUSE_ENDS.isdisjoint(between) and DENIALS.isdisjoint(between):
        yield begin, last


COMPILED_SIGNS = by_rarest_word(chain.from_iterable(patterns(signs.patterns, signs) for signs in tables.SIGN_TABLES))
COMPILED_READ_AS = by_rarest_word(patterns(context.READ_AS))


@cache
def ordinary() -> PatternIndex:
    """The patterns of ordinary wording; needed, and compiled, only once a sign is found."""
    tables_of = context.ORDINARY_SIGNS.items()
    return by_rarest_word(chain.from_iterable(patterns(table, concerns=context.CONCERNS[heading]) for heading, table in tables_of))


@cache
def index_of(table: str) -> PatternIndex:
    """The patterns of one table of ``context``, compiled when first asked for."""
    return by_rarest_word(patterns(table))
