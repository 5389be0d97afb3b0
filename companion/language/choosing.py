"""Choose among the options of a question by what a message asserts.

A phrase of an option counts where an asserted clause holds it and nothing in that clause turns it: "hardly changed" is not "changed". A
longer phrase beats a shorter one inside it, so that "did not round" is not "round". Words left over that mean something make the choice
doubtful: it is confirmed before it counts.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Final, NamedTuple

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA

from companion.language.act_rules import words_of
from companion.language.clauses import Clause, Mood, clauses, flat

Options = tuple[tuple[str, tuple[str, ...]], ...]
"""Pairs of an option's value and the phrases for it, flat (``clauses.flat``)."""

LEFT_OVER_MOST: Final = 1
"""Most meaningful words left over beside a phrase that is sure; our choice."""

_NEAR: Final = 84


class Chosen(NamedTuple):
    """The options asserted. ``sure``: exactly one, with nothing in the message that speaks against or aside; ``denied``: options named
    only to deny them."""

    values: tuple[str, ...] = ()
    sure: bool = False
    denied: tuple[str, ...] = ()


def choose(said: Sequence[Clause], options: Options) -> Chosen:
    """Return the options that the clauses assert. Clauses that ask, plan, suppose or quote only make it doubtful. Never raises."""
    found: dict[str, int] = {}
    denied: dict[str, None] = {}
    sure, left = True, 0
    for clause in said:
        if clause.mood not in (Mood.SAID, Mood.HEDGED, Mood.OTHERS):
            sure = False
            continue
        hits, over = _hits(clause.words, options)
        for value, turned in hits:
            if turned:
                denied[value] = None
            else:
                found[value] = max(found.get(value, 0), 1)
        sure = sure and (clause.mood is Mood.SAID or not hits)
        left += over
    values = tuple(found)
    if not values and len(said) == 1 and said[0].mood is Mood.SAID and (near := _near(said[0].words, options)):
        return Chosen((near,), True)
    return Chosen(values, sure and len(values) == 1 and left <= LEFT_OVER_MOST and not (denied.keys() - found.keys()),
                  tuple(value for value in denied if value not in found))


@lru_cache(maxsize=512)
def _phrases(options: Options) -> tuple[tuple[tuple[str, ...], str], ...]:
    """Return (words, value) of every phrase, the longest first."""
    rows = {(tuple(clause.words for clause in clauses(phrase)), value) for value, phrases in options for phrase in phrases}
    whole = ((tuple(word for part in parts for word in part), value) for parts, value in rows)
    return tuple(sorted(whole, key=lambda row: (-len(row[0]), row)))


@lru_cache(maxsize=512)
def _long_words(options: Options) -> frozenset[str]:
    return frozenset(word for words, _ in _phrases(options) for word in words if len(word) > 4)


def _hits(words: tuple[str, ...], options: Options) -> tuple[list[tuple[str, bool]], int]:
    """Return (value, turned) of every phrase in a clause, and the number of meaningful words left over."""
    spelt = tuple(_spelt(word, options) for word in words)
    taken = [False] * len(spelt)
    spans: list[tuple[int, int, str]] = []
    for phrase, value in _phrases(options):
        size = len(phrase)
        if not size or size > len(spelt):
            continue
        for at in range(len(spelt) - size + 1):
            if spelt[at:at + size] == phrase and not any(taken[at:at + size]):
                taken[at:at + size] = [True] * size
                spans.append((at, at + size, value))
    hits = [(value, _turned(spelt, start, end, taken)) for start, end, value in spans]
    known = words_of("filler") | words_of("turning")
    over = sum(not used and word not in known for word, used in zip(spelt, taken, strict=True))
    return hits, over


def _turned(words: tuple[str, ...], start: int, end: int, taken: list[bool]) -> bool:
    before = any(word in words_of("turning") and not taken[at] for at, word in enumerate(words[:start]))
    after = any(word in words_of("turning") and not taken[at + end] for at, word in enumerate(words[end:end + 2]))
    return before or after


def _spelt(word: str, options: Options) -> str:
    """Return a word as the options spell it, where it is one slip from exactly one of theirs."""
    if len(word) < 5 or word in words_of("filler"):
        return word
    known = _long_words(options)
    if word in known:
        return word
    near = [one for one in known if one[0] == word[0] and abs(len(one) - len(word)) < 2 and OSA.distance(word, one, score_cutoff=1) <= 1]
    return near[0] if len(near) == 1 else word


def _near(words: tuple[str, ...], options: Options) -> str:
    """Return the one option that a whole clause is a near miss of, "" for none."""
    start = 0
    while start < len(words) - 1 and words[start] in words_of("lead_in"):
        start += 1
    wanted = " ".join(words[start:])
    if len(wanted) < 4:
        return ""
    turning = words_of("turning") & set(words)
    near = {value for phrase, value in _phrases(options) if len(name := " ".join(phrase)) >= 4 and fuzz.ratio(wanted, name) >= _NEAR
            and words_of("turning") & set(phrase) == turning}
    return near.pop() if len(near) == 1 else ""


def named(options: Iterable[tuple[str, Iterable[str]]]) -> Options:
    """Return options with their phrases flat and each once."""
    return tuple((value, tuple(dict.fromkeys(flat(phrase).strip(" .") for phrase in phrases))) for value, phrases in options)
