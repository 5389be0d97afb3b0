"""A second layer behind the rules of flags: one regression hears that something was said, one for each flag names what.

What it hears where the rules hear nothing is a doubtful flag: a question, never more, in which the likeliest flags are named.
``weights.txt`` holds its weights, fitted by ``tests/corpus/learn.py``; the thresholds were chosen there by cross-validation (choice, no
source).
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from companion.language.classifier import cuttings, log_odds, pairs, plain, read
from companion.language.flags.flag import Flag

STEPS_A_UNIT, STEPS_NAMING = 40, 6
"""Weights are integers: fortieths of a log-odds of any flag, sixths of which."""
URGENT = frozenset((Flag.SELF_HARM, Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.CHEST, Flag.WEAKNESS))
THRESHOLD_URGENT, THRESHOLD = 24, 44
"""Sums, in fortieths of a log-odds, above which a message is heard; lower where a miss would cost most."""
NAMED_MOST, NEAR = 3, 18
"""How many flags are named at most, and how far behind the likeliest, in sixths of a log-odds. Of what the rules did not hear of a writer
neither was made from, the right one was named so in 238 of 282 messages, the likeliest alone right in 196; three named always 241."""
_LETTERS = range(2, 6)  # in a piece that tells whether a flag was said
_LETTERS_NAMING = range(4, 5)  # in a piece that tells which


def pieces(words: list[str]) -> set[str]:
    """Return the features that tell whether a flag was said: words, pairs of them, pieces of all of them."""
    weighed = plain(words)
    return pairs(weighed) | cuttings(weighed, _LETTERS)


def naming_pieces(words: list[str]) -> set[str]:
    """Return the features that tell which flag was said: words, and pieces of one length."""
    weighed = plain(words)
    return {f"={word}" for word in weighed} | cuttings(weighed, _LETTERS_NAMING)


def suspected(words: list[str]) -> tuple[Flag, ...]:
    """Return the flags that should be asked about, the likeliest first; () mostly."""
    sum_ = suspicion(words)
    if sum_ <= min(THRESHOLD_URGENT, THRESHOLD):
        return ()
    flags = likeliest(words)
    return flags if sum_ > (THRESHOLD_URGENT if flags[0] in URGENT else THRESHOLD) else ()


def suspicion(words: list[str]) -> int:
    """Return the log-odds that some flag was said, in fortieths."""
    return log_odds(_weights()[None], pieces(words))


def likeliest(words: list[str]) -> tuple[Flag, ...]:
    """Return the flags most likely meant, given that one was: the likeliest first, then those near it."""
    found = naming_pieces(words)
    weights = _weights()
    return nearest({flag: log_odds(weights[flag], found) for flag in Flag})


def nearest(sums: dict[Flag, int]) -> tuple[Flag, ...]:
    """Return the flags with the highest sums: ``NAMED_MOST`` at most, none more than ``NEAR`` behind the first."""
    flags = sorted(sums, key=lambda flag: -sums[flag])[:NAMED_MOST]
    return tuple(flag for flag in flags if sums[flag] >= sums[flags[0]] - NEAR)


@cache
def _weights() -> dict[Flag | None, dict[str, int]]:
    """Return flag → feature → weight, under None those of any flag; loaded at the first message in which the rules hear nothing."""
    return {None if name == "any" else Flag(name): weights for name, weights in read(files(__package__) / "weights.txt").items()}
