"""The layers learnt from the corpus, behind the rules of flags: weights of pieces of words, quickly summed, and the ``network``.

The weights (a regression that hears that something was said, and one for each flag) are a sieve: where they speak strongly against any
flag, and the rules have found and dropped none, that is all. Else the network reads the message too, and both count. What they hear where
the rules hear nothing is a doubtful flag: a question, never more, in which the likeliest flags are named. ``weights.bin`` is fitted by
``tests/corpus/learn_flags.py``, ``network.npz`` by ``tests/corpus/learn_network.py``. The thresholds were chosen on what testers
wrote before anything was learnt from it (choice): three first, 2,090 signs (1,653 of them urgent) and 1,500 others; at last 1,849 signs
(1,476 urgent) and 1,400 others of six writers.
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
from companion.language.flags.flag import URGENT, Flag, Heard
from companion.language.flags.network import log_odds
from companion.language.flags.spelling import letters_of

MARGIN_STEPS = 100
"""Weights are whole hundredths of the margin by which the two sides of a regression are held apart."""
PLACES, PLACES_NAMING = 1 << 18, 1 << 16
"""How many weights a regression has: a piece has the one at its checksum, which it may share with others."""
ASKED_FROM = -250
"""The sum of the weights below which the network isn't asked: one urgent sign of 1,653 of the first testers stood between -300
and this, and one ordinary reply in five."""
NETWORK_SOME, NETWORK_EACH = 5, 5
"""What a tenth of a log-odds of the network counts: that there is any flag, and which."""
THRESHOLD = 0
"""The sum, in ``MARGIN_STEPS``, above which a message is heard."""
URGENT_FROM, OF_FEW, FEW = -70, -20, 8
"""The sum of an urgent flag above which a message is heard, too, and the same for one of so few words. With these, 2 of the 1,476 urgent
signs of the last testers, from whom nothing was learnt, are missed, and 63 of their 1,400 others are asked about; with these two 30 less
and those of self-harm 40 less 1 and 75, with all about 40 to 90 more 4 and 51."""
SELF_HARM_FROM, SELF_HARM_OF_FEW = 0, 60
"""The same of thoughts of self-harm, about which a needless question is the coldest."""
WORD_ALONE = 150
"""The same as ``THRESHOLD`` for a single word: "fluttering" is, "pee" and "april" are not (choice)."""
AGAINST = {(False, False): -170, (False, True): -170, (True, False): -170, (True, True): -200}
"""The sums up to which what the rules hear is nothing, by whether they are sure and whether it is urgent (choice: with 100 more each 5
fewer of 1,880 others were asked about, and one more sign was missed)."""
NAMED_MOST, NEAR = 3, 300
"""How many flags are named at most, and how far behind the likeliest: the right one is named so in 0.995 of what the first testers' lines
are asked about, among 1.13 on average, where the likeliest alone is right in 0.953."""
NEAR_HEARD = 80
"""The same where the rules doubt a flag that is named anyway (choice)."""
TAKEN_OUT = "·"
"""Stands for what the rules found and dropped."""
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


class Weighed(NamedTuple):
    """The sum of what speaks for any flag having been said, and that for each, in ``MARGIN_STEPS``; below 0, against it."""

    some: int
    each: dict[Flag, int]

    def asked(self, words: int) -> bool:
        """True if this is enough to ask about a message of so many words."""
        if words == 1:
            return self.some > WORD_ALONE
        least, of_self_harm = (URGENT_FROM, SELF_HARM_FROM) if words > FEW else (OF_FEW, SELF_HARM_OF_FEW)
        urgent = any(self.each[flag] > (of_self_harm if flag is Flag.SELF_HARM else least) for flag in URGENT)
        return urgent or self.some > THRESHOLD

    def against(self, heard: Heard) -> bool:
        """True if what the rules hear is nothing."""
        return self.some <= AGAINST[heard.sure, heard.flag in URGENT]

    def likeliest(self, near: int = NEAR) -> tuple[Flag, ...]:
        """Return the flags most speaks for: ``NAMED_MOST`` at most, none more than ``near`` behind the first."""
        flags = sorted(self.each, key=lambda flag: -self.each[flag])[:NAMED_MOST]
        return tuple(flag for flag in flags if self.each[flag] >= self.each[flags[0]] - near)

    def beside(self, heard: Flag) -> tuple[Flag, ...]:
        """Return what else may be meant where the rules doubt that a flag is: the likeliest, if close to each other."""
        return tuple(islice((flag for flag in self.likeliest(NEAR_HEARD) if flag is not heard), NAMED_MOST - 1))

    def unnamed(self, heard: Flag) -> tuple[Flag, ...]:
        """Return the flag meant beside, or instead of, the one heard: the likeliest, if it speaks for itself; () mostly."""
        first = self.likeliest()[0]
        return (first,) if first is not heard and self.each[first] > 0 else ()


def weigh(text: str, left: str, words: list[str]) -> Weighed:
    """Return what speaks for flags in a message. ``left``, ``words``: it and its words without what the rules explain; the network reads
    it as it was typed, unless the weights alone speak strongly against any and no word was taken out."""
    first = weighed(pieces(left, words), weights())
    if first.some < ASKED_FROM and TAKEN_OUT not in words:
        return first
    *each, some = log_odds(text)
    return Weighed(first.some + NETWORK_SOME * some,
                   {flag: first.each[flag] + NETWORK_EACH * odds for flag, odds in zip(Flag, each, strict=True)})


def weighed(found: list[list[int]], by: Mapping[Flag | None, Weights]) -> Weighed:
    """Return what the weights say of a message's pieces; for any flag speaks, too, what speaks for the likeliest."""
    each = {flag: by[flag].sum(found) for flag in Flag}
    return Weighed(by[None].sum(found) + max(each.values()), each)


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
