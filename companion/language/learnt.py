"""A last layer behind the rules of reading: what a reply most likely does or answers, by a logistic regression over what it may be there.

It may be any option of the open question, a number where one is asked for, another speech act, or a command. Each of these has weights over
the words of the reply, pairs of them and how they begin; an option has those of its value and those of its value under this label, so
that what is learnt at one question serves where the same is asked again. ``reading_weights.txt`` holds them, fitted by
``tests/corpus/learn.py``. What it finds is asked about, never taken for certain.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from importlib.resources import files
from math import exp
from typing import Final, NamedTuple

from companion.language.classifier import pairs, plain, read
from companion.language.clauses import flat
from companion.language.quantities import spelt

STEPS_A_UNIT: Final = 10
"""Weights are integers, tenths of a log-odds."""
LEARNT_ACTS: Final = ("question", "unsure", "not_yet", "correction", "chat")
LEARNT_COMMANDS: Final = ("skip", "stop", "back", "again", "help", "menu", "results", "my_data", "erase", "stop_reminders")
TO_START: Final = "start:"
"""Before the name of a flow: the command to begin it."""
A_NUMBER: Final = "#number"
WORDLESS: Final = "."
"""Before the name of a weight that counts by itself, whatever the words are."""
OWN_WORDS: Final = "#words"
"""An answer in words of one's own, a day or a place."""
_BEGINS: Final = (4, 5)
_WORD: Final = re.compile(r"[a-z]+|\d[\d.]*|\?")


class Likely(NamedTuple):
    """One thing that a reply may be: an option's value, ``A_NUMBER``, ``OWN_WORDS``, "@" and an act, or "!" and a command. ``behind``: by
    how many tenths of a log-odds it is less likely than the likeliest; ``share``: its part of all that is likely."""

    name: str
    behind: int
    share: float = 0


def pieces(text: str) -> set[str]:
    """Return the features of a message: each word, each pair of words in a row, and how the longer words begin."""
    words = plain(_WORD.findall(flat(spelt(text))))
    return pairs(words) | {f"_{word[:size]}" for word in words for size in _BEGINS if len(word) > size}


@lru_cache(maxsize=512)
def candidates(options: tuple[tuple[str, str], ...], typed: str, flows: tuple[str, ...]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return what a reply to a question may be, each with the names of its weights. ``options``: value and label of each; ``typed``:
    ``A_NUMBER`` or ``OWN_WORDS`` where these are asked for; ``flows``: those that may be asked for."""
    answers: list[tuple[str, tuple[str, ...]]] = [(value, (value, f"{value}={flat(label).replace(' ', '_')}")) for value, label in options]
    answers += [(typed, (typed,))] if typed else []
    starts = ((f"!{TO_START}{flow}", (f"!{TO_START}{flow}", f"!{TO_START}", "!")) for flow in flows)
    acts = ((f"@{act}", (f"@{act}",)) for act in LEARNT_ACTS)
    return (*answers, *acts, *((f"!{name}", (f"!{name}", "!")) for name in LEARNT_COMMANDS), *starts)


@lru_cache(maxsize=256)
def ranked(text: str, options: tuple[tuple[str, str], ...], typed: str = "") -> tuple[Likely, ...]:
    """Return what a reply may be, the likeliest first; () where fewer than half its words were ever seen. ``options``: value and label of
    each on offer; ``typed``: as for ``candidates``."""
    words = plain(_WORD.findall(flat(spelt(text))))
    if 2 * sum(f"={word}" in _weights() for word in words) < len(words) or not words:
        return ()
    return likeliest(text, candidates(options, typed, _flows()))


def likeliest(text: str, among: tuple[tuple[str, tuple[str, ...]], ...]) -> tuple[Likely, ...]:
    """Return which of some things a message means, the likeliest first. ``among``: the name of each with the names of its weights."""
    sums = _sums(text)
    odds = {name: sum(sums.get(one, 0) for one in weights) for name, weights in among}
    best = max(odds.values(), default=0)
    whole = sum(exp((one - best) / STEPS_A_UNIT) for one in odds.values())
    return tuple(Likely(name, best - odds[name], exp((odds[name] - best) / STEPS_A_UNIT) / whole)
                 for name in sorted(odds, key=odds.__getitem__, reverse=True))


def lifted(text: str, options: tuple[tuple[str, str], ...]) -> Mapping[str, int]:
    """Return option → how much likelier the words of a message make it, in tenths of a log-odds; all options of a question."""
    sums, start = _sums(text), _weights()[""]
    names = {value: weights for value, weights in candidates(options, "", ()) if value in dict(options)}
    return {value: sum(sums.get(one, 0) - start.get(one, 0) for one in weights) for value, weights in names.items()}


def behind(likely: Sequence[Likely], name: str) -> int:
    """Return how far something is behind the likeliest; far for what is not among them."""
    return next((one.behind for one in likely if one.name == name), 1000)


@lru_cache(maxsize=64)
def _sums(text: str) -> Mapping[str, int]:
    sums = dict(_weights()[""])
    for piece in pieces(text):
        for name, weight in _weights().get(piece, {}).items():
            sums[name] = sums.get(name, 0) + weight
    return sums


@cache
def _weights() -> Mapping[str, Mapping[str, int]]:
    """Return feature → name → weight, the intercepts under ""; loaded at the first message that the rules are not sure of."""
    turned: dict[str, dict[str, int]] = {}
    for name, weights in read(files("companion.language") / "reading_weights.txt").items():
        for piece, weight in weights.items():
            turned.setdefault(piece, {})[name] = weight
    return turned


@cache
def _flows() -> tuple[str, ...]:
    """Return the flows that a reply was learnt to ask for."""
    return tuple(name.removeprefix(f"!{TO_START}") for name in _weights()[""] if name.startswith(f"!{TO_START}") and name != f"!{TO_START}")
