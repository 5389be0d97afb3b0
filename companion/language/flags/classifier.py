"""A second layer behind the rules of flags: one regression hears that something was said, one for each flag hears that and names what.

What it hears where the rules hear nothing is a doubtful flag: a question, never more, in which the likeliest flags are named.
``weights.bin`` holds its weights, fitted by ``tests/corpus/learn.py``. The threshold was chosen on two writers of the corpus (n and t),
what is against the rules on four (i, j, k and l), each heard by weights learnt from all the others (choice).
"""

from __future__ import annotations

import zlib
from collections.abc import Iterator, Mapping
from functools import cache
from importlib.resources import files
from itertools import islice
from math import sqrt
from typing import NamedTuple

from companion.language.classifier import pairs, plain
from companion.language.flags.flag import Flag
from companion.language.flags.spelling import letters_of

MARGIN_STEPS = 100
"""Weights are whole hundredths of the margin by which the two sides of a regression are held apart."""
PLACES, PLACES_NAMING = 1 << 18, 1 << 16
"""How many weights a regression has: a piece has the one at its checksum, which it may share with others."""
URGENT = frozenset((Flag.SELF_HARM, Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.CHEST, Flag.WEAKNESS))
THRESHOLD = -60
"""The sum, in ``MARGIN_STEPS``, above which a message is heard: with the rules .989 of what is urgent and .947 of the rest, and 94 of 3,171
others asked about; at -40 it was .984, .933 and 60."""
WORD_ALONE = 100
"""The sum above which a single word is heard: "fluttering" is, "me" and "april" are not (choice)."""
AGAINST, AGAINST_SURE = -100, -160
"""The sums up to which what the rules hear is nothing. Of the same writers' doubts that are not urgent, 14 of 24 that were nothing and none
of 92 that were a flag lie up to -100. Up to -160 lie, of the doubts that could be urgent, 10 of 21 and 1 of 332; of what is sure and not
urgent, 4 of 16 and none of 771."""
NAMED_MOST, NEAR = 3, 80
"""How many flags are named at most, and how far behind the likeliest: the right one is named so in 0.986, the likeliest alone is right in
0.95 (the same writers)."""
NEAR_HEARD = 30
"""The same where the rules doubt a flag that is named anyway (choice)."""
_LETTERS = (4, 5, 6)  # in a piece of the text, across words too
_FURTHER = 4  # words from the first to the second of a pair that stands apart
_LETTERS_READ = 700  # further letters are ignored


class Weights(NamedTuple):
    """The start of a regression's sum, and the weight at each place, both in ``MARGIN_STEPS``."""

    start: int
    at: memoryview

    def sum(self, pieces: list[list[int]]) -> int:
        """Return the sum of a message; each kind of its pieces counts by the root of how many there are."""
        last = len(self.at) - 1
        return round(self.start + sum(sum(self.at[piece & last] for piece in kind) / sqrt(len(kind)) for kind in pieces if kind))


def pieces(text: str, words: list[str]) -> list[list[int]]:
    """Return the checksums of a message's pieces, kind by kind: its words and pairs of them, pairs that stand apart, runs of letters of the
    text as typed. ``words``: without what the rules explain."""
    said = plain(words)
    apart = {f"{one}~{two}" for at, one in enumerate(said) for two in said[at + 2 : at + 1 + _FURTHER]}
    letters = f" {' '.join(letters_of(text).split())[:_LETTERS_READ]} "
    runs = {letters[at : at + length] for length in _LETTERS for at in range(len(letters) - length + 1)}
    found = pairs(said)
    kinds = ({piece for piece in found if piece[0] == "="}, {piece for piece in found if piece[0] != "="}, apart, runs)
    return [sorted(zlib.crc32(piece.encode()) for piece in kind) for kind in kinds]


def suspected(text: str, words: list[str]) -> tuple[Flag, ...]:
    """Return the flags that should be asked about, the likeliest first; () mostly."""
    sum_, flags = weighed(pieces(text, words), weights())
    return flags if sum_ > (THRESHOLD if len(words) > 1 else WORD_ALONE) else ()


def weighed(found: list[list[int]], by: Mapping[Flag | None, Weights]) -> tuple[int, tuple[Flag, ...]]:
    """Return how much speaks for some flag, with how much for the likeliest, and which are likeliest."""
    sums = {flag: by[flag].sum(found) for flag in Flag}
    return by[None].sum(found) + max(sums.values()), nearest(sums)


def suspicion(text: str, words: list[str]) -> int:
    """Return how much speaks for some flag having been said, in ``MARGIN_STEPS``; below 0, against it."""
    return weighed(pieces(text, words), weights())[0]


def beside(text: str, words: list[str], heard: Flag) -> tuple[Flag, ...]:
    """Return what else may be meant where the rules doubt that a flag is: the likeliest, if close to each other."""
    flags = (flag for flag in _likeliest(pieces(text, words), NEAR_HEARD) if flag is not heard)
    return tuple(islice(flags, NAMED_MOST - 1))


def unnamed(text: str, words: list[str], heard: Flag) -> tuple[Flag, ...]:
    """Return the flag meant beside, or instead of, the one heard: the likeliest, if it speaks for itself; () mostly."""
    found = pieces(text, words)
    first = _likeliest(found)[0]
    return (first,) if first is not heard and weights()[first].sum(found) > 0 else ()


def _likeliest(found: list[list[int]], near: int = NEAR) -> tuple[Flag, ...]:
    return nearest({flag: weights()[flag].sum(found) for flag in Flag}, near)


def nearest(sums: dict[Flag, int], near: int = NEAR) -> tuple[Flag, ...]:
    """Return the flags with the highest sums: ``NAMED_MOST`` at most, none more than ``near`` behind the first."""
    flags = sorted(sums, key=lambda flag: -sums[flag])[:NAMED_MOST]
    return tuple(flag for flag in flags if sums[flag] >= sums[flags[0]] - near)


@cache
def weights() -> dict[Flag | None, Weights]:
    """Return what was learnt of each flag, under None of any flag; loaded at the first message in which the rules hear nothing."""
    return dict(_read(zlib.decompress((files(__package__) / "weights.bin").read_bytes())))


def _read(file: bytes) -> Iterator[tuple[Flag | None, Weights]]:
    at = 0
    for flag in (None, *Flag):
        end = at + 4 + (PLACES_NAMING if flag else PLACES)
        yield flag, Weights(int.from_bytes(file[at : at + 4], "little", signed=True), memoryview(file)[at + 4 : end].cast("b"))
        at = end


def written(of: dict[Flag | None, Weights], of_what: str) -> bytes:
    """Return the file of what was learnt, as ``weights`` reads it; ``of_what``: the hash of the messages it was learnt from, its end."""
    sections = (of[flag].start.to_bytes(4, "little", signed=True) + bytes(of[flag].at) for flag in (None, *Flag))
    return zlib.compress(b"".join((*sections, of_what.encode())), 9)
