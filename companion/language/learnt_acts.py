"""A last layer behind the rules of the speech acts: a logistic regression an act, over words and the pieces of all words.

Only where the rules hear no more than an answer, and that one is not understood for sure, may it hear another act; it never fills a slot.
``act_weights.txt`` holds its weights, fitted by ``tests/corpus/learn.py``; on lines of writers left out it hears more of these than the
rules do, and takes fewer answers for something else than it mends.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from importlib.resources import files
from typing import Final

from companion.language.classifier import cuttings, log_odds, pairs, plain, read
from companion.language.quantities import spelt

STEPS_A_UNIT: Final = 10
"""Weights are integers, tenths of a log-odds."""
SILENT: Final = 10
DOUBTFUL: Final = 20
"""By how much, in tenths of a log-odds, another act must be likelier than an answer: where the rules understand nothing, and where they
understand something with doubt. Chosen by leaving out a writer at a time: of 99 and 49 lines that were no answer 36 and 19 were heard, of
211 and 263 that were one 11 and 7 taken for something else."""
_LETTERS: Final = range(3, 6)
_WORD: Final = re.compile(r"[a-z]+|\d[\d.]*|\?")


def pieces(text: str) -> set[str]:
    """Return the features of a message: each word, each pair of words in a row, and the pieces of words."""
    words = plain(_WORD.findall(spelt(text)))
    return pairs(words) | cuttings(words, _LETTERS, str.isalpha)


@lru_cache(maxsize=256)
def likeliest(text: str, margin: int) -> str:
    """Return the act that a message most likely is, by the value of ``acts.SpeechAct``; "answer" where none is likelier by the margin."""
    found = pieces(text)
    odds = {act: log_odds(weights, found) for act, weights in _weights().items()}
    best = max(odds, key=odds.__getitem__)
    return best if odds[best] > odds["answer"] + margin else "answer"


@cache
def _weights() -> dict[str, dict[str, int]]:
    """Return act → feature → weight; loaded at the first message that the rules don't understand."""
    return read(files("companion.language") / "act_weights.txt")
