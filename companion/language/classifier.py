"""Logistic regression over the words of a message and the pieces they are cut into: what hears wordings no rule foresaw.

A package of rules keeps its own weights (``weights.txt``), features and threshold (``pain.classifier``, ``flags.classifier``) and shares
this arithmetic. The weights are whole steps of a log-odds, so that a sum does not depend on its order; ``tests/corpus/learn.py`` fits
and writes them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from importlib.resources.abc import Traversable

WORDS_WEIGHED = 120  # further words are ignored
_LONGEST_WORD = 30  # further letters are ignored


def plain(words: list[str]) -> list[str]:
    """Return the words that are weighed, every number as "#"."""
    return ["#" if word[0].isdigit() else word for word in words[:WORDS_WEIGHED]]


def pairs(words: list[str]) -> set[str]:
    """Return the features of whole words: each as "=word", and each two in a row as "one+two", ^ before the first and $ after the last."""
    found = {f"={word}" for word in words}
    found.update(f"{one}+{two}" for one, two in zip(["^", *words], [*words, "$"], strict=True))
    return found


def cuttings(words: Iterable[str], lengths: range, where: Callable[[str], bool] = bool) -> set[str]:
    """Return the pieces of so many letters of every word that ``where`` is true of, with _ at a word's ends."""
    return {piece for word in words if where(word) for piece in _cut(f"_{word[:_LONGEST_WORD]}_", lengths)}


def _cut(word: str, lengths: range) -> Iterator[str]:
    for length in lengths:
        for at in range(len(word) - length + 1):
            yield word[at : at + length]


def log_odds(weights: dict[str, int], pieces: Iterable[str]) -> int:
    """Return the sum of the weights, the intercept's under "" with them, in the steps they are written in."""
    return weights[""] + sum(weights.get(piece, 0) for piece in pieces)


def read(weights: Traversable) -> dict[str, dict[str, int]]:
    """Return name → feature → weight, the intercept under "", from a file of sections: a line "[name] intercept", then lines that begin
    with a weight its features follow. A line that begins with "# " is a comment."""
    found: dict[str, dict[str, int]] = {}
    for line in weights.read_text("utf-8").splitlines():
        head, *rest = line.split()
        if head.startswith("["):
            found[head[1:-1]] = {"": int(rest[0])}
        elif head != "#":
            found[next(reversed(found))].update((piece, int(head)) for piece in rest)
    return found
