"""Choose among the options of a question by what a message asserts.

A phrase of an option counts where an asserted clause holds it and nothing in that clause turns it: "hardly changed" is not "changed". A
longer phrase beats a shorter one inside it, so that "did not round" is not "round"; a short or common word counts only where little else
stands beside it. Words left over that mean something make the choice doubtful: it is confirmed before it counts.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Final, NamedTuple

from rapidfuzz import fuzz

from companion.language.act_rules import words_of
from companion.language.clauses import Clause, Mood, clauses, flat
from companion.language.slips import NEVER, begun_as, nearest_word


class Options(tuple[tuple[str, tuple[str, ...]], ...]):
    """Pairs of an option's value and the phrases for it, flat (``clauses.flat``). Equal only to itself, so that tables made of it once are
    found again without going through its hundreds of phrases; make one with ``named`` and keep it."""

    __hash__ = object.__hash__

    def __eq__(self, other: object) -> bool:
        return self is other


NO_OPTIONS: Final = Options()
"""The options of a question that has none."""

LEFT_OVER_MOST: Final = 1
"""Most meaningful words left over beside a phrase that is sure; our choice."""

ASSERTING: Final = (Mood.SAID, Mood.HEDGED, Mood.OTHERS, Mood.PLANNED, Mood.BEFORE)
"""Moods that may answer; all but ``SAID`` are doubtful."""

_DENIES: Final = frozenset(("not", "never", "except"))
_NEAR: Final = 84
_WEAK_LETTERS: Final = 4


class Mention(NamedTuple):
    """A phrase of an option in a message: the option's value, the clause, and the words from and to. ``turned``: denied there; ``weak``: a
    short or common word with others beside it."""

    value: str
    clause: int
    start: int
    end: int
    turned: bool = False
    weak: bool = False


class Chosen(NamedTuple):
    """The options asserted. ``sure``: exactly one, with nothing in the message that speaks against or aside; ``denied``: options named
    only to deny them; ``hits``: where; ``weak``: true if only a short or common word among others says so."""

    values: tuple[str, ...] = ()
    sure: bool = False
    denied: tuple[str, ...] = ()
    hits: tuple[Mention, ...] = ()
    weak: bool = False


def choose(said: Sequence[Clause], options: Options, taken: Iterable[Mention] = ()) -> Chosen:
    """Return the options that the clauses assert. Clauses that ask, plan, suppose or quote only make it doubtful. ``taken``: words that
    count for something else. Never raises."""
    hits: list[Mention] = []
    sure, left, used = True, 0, list(taken)
    for n, clause in enumerate(said):
        if clause.mood not in ASSERTING:
            sure = False
            continue
        here, over = _hits(clause.words, n, options, [hit for hit in used if hit.clause == n])
        hits += here
        aside = not here and len(clause.words) > 1 and bool(_DENIES & set(clause.words))  # "next one, not this"
        sure = sure and not aside and (clause.mood is Mood.SAID or not here)
        left += over
    strong = [hit for hit in hits if not hit.weak] or hits
    values = tuple(dict.fromkeys(hit.value for hit in strong if not hit.turned))
    denied = tuple(dict.fromkeys(hit.value for hit in strong if hit.turned and hit.value not in values))
    alone = not used and len(said) == 1 and said[0].mood is Mood.SAID
    near = _near(said[0].words, options) if alone and (not values or strong[0].weak) else ""
    if near and values in ((), (near,)):
        return Chosen((near,), True, (), (Mention(near, 0, 0, len(said[0].words)),))
    weak = bool(strong) and all(hit.weak for hit in strong)
    certain = sure and not weak and len(values) == 1 and left <= LEFT_OVER_MOST and not denied
    return Chosen(values, certain, denied, tuple(strong), weak)


@lru_cache(maxsize=512)
def _phrases(options: Options) -> dict[str, tuple[tuple[tuple[str, ...], str], ...]]:
    """Return (words, value) of every phrase by its first word, the longest first."""
    rows = {(tuple(word for part in clauses(phrase) for word in part.words), value) for value, phrases in options for phrase in phrases}
    by_first: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for words, value in sorted(rows, key=lambda row: (-len(row[0]), row)):
        if words:
            by_first.setdefault(words[0], []).append((words, value))
    return {first: tuple(found) for first, found in by_first.items()}


@lru_cache(maxsize=512)
def _long_words(options: Options) -> frozenset[str]:
    return frozenset(word for rows in _phrases(options).values() for words, _ in rows for word in words if len(word) > _WEAK_LETTERS)


def _hits(words: tuple[str, ...], clause: int, options: Options, taken: Sequence[Mention]) -> tuple[list[Mention], int]:
    """Return the phrases in a clause, and the number of meaningful words left over."""
    spelt = tuple(_spelt(word, options) for word in words)
    guessed = sum(one != other for one, other in zip(words, spelt, strict=True)) if len(words) > 1 else 0
    free = [True] * len(spelt)
    for hit in taken:
        free[hit.start:hit.end] = [False] * (hit.end - hit.start)
    wanted = [(len(phrase), at, phrase, value) for at, word in enumerate(spelt) for phrase, value in _phrases(options).get(word, ())
              if spelt[at:at + len(phrase)] == phrase]
    spans: dict[tuple[int, int], set[str]] = {}
    for size, at, _, value in sorted(wanted, key=lambda one: (-one[0], one[1])):
        if all(free[at:at + size]) or (at, at + size) in spans:
            spans.setdefault((at, at + size), set()).add(value)
            free[at:at + size] = [False] * size
    known = words_of("filler") | words_of("turning")
    over = sum(unused and word not in known for word, unused in zip(spelt, free, strict=True)) + guessed
    hits = []
    turns = [(at, word) for at, word in enumerate(spelt) if free[at] and word in words_of("turning") and not (
        word == "no" and spelt[at + 1:at + 2] in _NO_LESS)]
    for (start, end), values in spans.items():
        weak = all(len(word) <= _WEAK_LETTERS or word in words_of("weak") or word in words_of("turning") for word in spelt[start:end])
        hits += [Mention(value, clause, start, end, _turned(spelt, start, end, turns), weak and end - start == 1 and over > 0)
                 for value in values]
    return hits, over


def _turned(words: tuple[str, ...], start: int, end: int, turns: Sequence[tuple[int, str]]) -> bool:
    nearly = words_of("nearly") if words[start][:1].isdigit() else frozenset()
    return words[start - 1:start] == ("nothing",) or any((at < start or end <= at < end + 2) and word not in nearly for at, word in turns)


_NO_LESS: Final = tuple((word,) for word in ("problem", "problems", "bother", "trouble", "doubt", "issue", "issues", "worries", "question"))
"""Words after a "no" that denies nothing: "got there, no problem"."""


def _spelt(word: str, options: Options) -> str:
    """Return a word as the options spell it, where it is one slip from exactly one of theirs."""
    if len(word) <= _WEAK_LETTERS or word in words_of("filler") or word in (known := _long_words(options)):
        return word
    return nearest_word(word, begun_as(word, known), two_from=NEVER) or word


def _near(words: tuple[str, ...], options: Options) -> str:
    """Return the one option that a whole clause is a near miss of, "" for none."""
    start = 0
    while start < len(words) - 1 and words[start] in words_of("lead_in"):
        start += 1
    wanted = " ".join(words[start:])
    if len(wanted) < _WEAK_LETTERS:
        return ""
    turning = words_of("turning") & set(words)
    near = {value for rows in _phrases(options).values() for phrase, value in rows if len(name := " ".join(phrase)) >= _WEAK_LETTERS
            and fuzz.ratio(wanted, name) >= _NEAR and words_of("turning") & set(phrase) == turning}
    return near.pop() if len(near) == 1 else ""


def named(options: Iterable[tuple[str, Iterable[str]]]) -> Options:
    """Return options with their phrases flat and each once."""
    return Options((value, tuple(dict.fromkeys(flat(phrase).strip(" .") for phrase in phrases))) for value, phrases in options)
