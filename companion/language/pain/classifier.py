"""A second ear behind the rules for pain: words, and pieces of unknown words, that weighed towards pain in the corpus.

The rules know what somebody thought of; people word pain in ways nobody thought of ("stuck bent over"). Where the
rules hear nothing, a logistic regression over what they left unexplained may still have the bot ask. It never
decides more than that, and it never silences the rules. ``weights`` holds its weights, which
``tests/corpus/learn.py`` works out from the corpus; the threshold was chosen there by leaving lines out
(choice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache

from companion.language.pain.spelling import KNOWN

STEPS_A_UNIT = 10
"""Weights are kept as whole tenths of a log-odds, so that a sum does not depend on its order."""
THRESHOLD_AT_WORK, THRESHOLD_AT_REST = 2, 12
"""What a sum must pass to be asked about, in the same tenths: stricter where the body does not work."""
_SHORTEST, _LONGEST = 3, 5  # letters in a piece of an unknown word
_MOST_WORDS = 120  # a longer reply is read this far


def pieces(words: list[str]) -> set[str]:
    """What is weighed of a reply: each word, each two in a row, and the pieces of words no table knows."""
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
    """Whether words in which the rules found nothing should be asked about."""
    return suspicion(pieces(words)) > (THRESHOLD_AT_WORK if body_at_work else THRESHOLD_AT_REST)


def suspicion(of_pieces: Iterable[str]) -> int:
    """The log-odds of pain, in tenths."""
    weights = _weights()
    return weights[""] + sum(weights.get(piece, 0) for piece in of_pieces)


@cache
def _weights() -> dict[str, int]:
    """Piece → weight, and "" → what every reply starts from; read at the first reply the rules hear nothing in."""
    from companion.language.pain.weights import START, WEIGHTS

    rows = (line.split() for line in WEIGHTS.strip().splitlines())
    return {"": START} | {piece: int(level) for level, *row in rows for piece in row}
