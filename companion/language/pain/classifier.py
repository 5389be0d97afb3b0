"""A second layer behind the pain rules: a logistic regression over words, and pieces of unknown words.

The rules only know wordings somebody thought of; people find others ("stuck bent over"). If the rules find nothing, the regression over
the unexplained words may still make the bot ask. It never decides more than that, and never overrules the rules. ``weights.txt`` holds its
weights, fitted by ``tests/corpus/learn.py``; the thresholds were chosen there by cross-validation (choice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from importlib.resources import files

from companion.language.classifier import cuttings, log_odds, pairs, plain, read
from companion.language.pain.spelling import KNOWN

STEPS_A_UNIT = 10
"""Weights are integers, tenths of a log-odds."""
THRESHOLD_AT_WORK, THRESHOLD_AT_REST = 2, 12
"""Sums, in tenths of a log-odds, above which the bot asks; higher while the body is at rest."""
_LETTERS = range(3, 6)  # in a piece of an unknown word


def pieces(words: list[str]) -> set[str]:
    """Return the features of a reply: each word, each pair of words in a row, and the pieces of unknown words."""
    weighed = plain(words)
    return pairs(weighed) | cuttings(weighed, _LETTERS, lambda word: word not in KNOWN)


def sounds_of_pain(words: list[str], *, body_at_work: bool) -> bool:
    """True if the bot should ask about words in which the rules found nothing."""
    return suspicion(pieces(words)) > (THRESHOLD_AT_WORK if body_at_work else THRESHOLD_AT_REST)


def suspicion(of_pieces: Iterable[str]) -> int:
    """Return the log-odds of pain, in tenths."""
    return log_odds(_weights(), of_pieces)


@cache
def _weights() -> dict[str, int]:
    """Return feature → weight; loaded at the first reply in which the rules find nothing."""
    return read(files(__package__) / "weights.txt")["pain"]
