"""A second layer behind the pain rules: a logistic regression over words, and pieces of unknown words.

The rules only know wordings somebody thought of; people find others ("stuck bent over"). If the rules find nothing, the regression over
the unexplained words may still make the bot ask. It never decides more than that, and never overrules the rules. ``weights`` holds its
weights, fitted by ``tests/corpus/learn.py``; the thresholds were chosen there by cross-validation (choice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache

from companion.language.pain.spelling import KNOWN

STEPS_A_UNIT = 10
"""Weights are integers, tenths of a log-odds, so that a sum does not depend on its order."""
THRESHOLD_AT_WORK, THRESHOLD_AT_REST = 2, 12
"""Sums, in tenths of a log-odds, above which the bot asks; higher while the body is at rest."""
_SHORTEST, _LONGEST = 3, 5  # letters in a piece of an unknown word
_MOST_WORDS = 120  # further words are ignored


def pieces(words: list[str]) -> set[str]:
    """Return the features of a reply: each word, each pair of words in a row, and the pieces of unknown words."""
    plain = ["#" if word[0].isdigit() else word for word in words[:_MOST_WORDS]]
    found = {f"={word}" for word in plain}
    found.update(f"{one}+{two}" for one, two in zip(["^", *plain], [*plain, "$"], strict=True))
    for word in plain:
        if word not in KNOWN:
            found.update(_cut(f"_{word[:30]}_"))
    return found


def _cut(word: str) -> Iterator[str]:
    for length in range(_SHORTEST, _LONGEST + 1):
        for at in range(len(word) - length + 1):
            yield word[at : at + length]


def sounds_of_pain(words: list[str], *, body_at_work: bool) -> bool:
    """True if the bot should ask about words in which the rules found nothing."""
    return suspicion(pieces(words)) > (THRESHOLD_AT_WORK if body_at_work else THRESHOLD_AT_REST)


def suspicion(of_pieces: Iterable[str]) -> int:
    """Return the log-odds of pain, in tenths."""
    weights = _weights()
    return weights[""] + sum(weights.get(piece, 0) for piece in of_pieces)


@cache
def _weights() -> dict[str, int]:
    """Return feature → weight, with the intercept under ""; loaded at the first reply in which the rules find nothing."""
    from companion.language.pain.weights import INTERCEPT, WEIGHTS

    rows = (line.split() for line in WEIGHTS.strip().splitlines())
    return {"": INTERCEPT} | {piece: int(level) for level, *row in rows for piece in row}
