"""Works out the weights of the first learnt layer of flags: a squared hinge by L-BFGS over all lines at once, no chance in it.

Run after the corpus or the tables of flags were changed (half a minute); the network has ``learn_network``:

    python -m tests.corpus.learn_flags            writes flags/weights.bin in companion/language
    python -m tests.corpus.learn_flags --check    prints the figures of leaving out one writer at a time
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from functools import cache
from hashlib import sha256
from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from scipy.sparse import csr_array

from companion.language.flags import classifier, rules
from companion.language.flags.flag import Flag
from tests.corpus.lines import FLAGGED, LANGUAGE, UNFLAGGED, told

FLAGS_COST, ROUNDS, SEEN_AT_LEAST = 0.2, 60, 2

Floats = npt.NDArray[np.float64]


class Message(NamedTuple):
    """A message of the flags' corpus: its part, text, words as they are weighed, flags, and whether the rules hear any."""

    part: str
    text: str
    words: tuple[str, ...]
    flags: frozenset[Flag]
    heard: bool


def messages(every: int = 1) -> list[Message]:
    """What flags are learnt from, or one line in so many of it, read."""
    read = [Message(name, *_weighed(text), flags, bool(rules.by_the_rules(text))) for name, flags, text in told()[::every]]
    return [message for message in read if not message.heard or message.part in (*FLAGGED, *UNFLAGGED)]


def _weighed(text: str) -> tuple[str, tuple[str, ...]]:
    left, words = rules.unexplained(text)
    return left, tuple(words)


def learn_flags(of: list[Message], names: Sequence[Flag] = tuple(Flag)) -> dict[Flag | None, classifier.Weights]:
    """Flag → its weights, None → those of any flag."""
    (some,) = _held_apart(_rows(of, classifier.PLACES), [[bool(message.flags)] for message in of])
    each = _held_apart(_rows(of, classifier.PLACES_NAMING), [[flag in message.flags for flag in names] for message in of]) if names else ()
    return {None: some, **dict(zip(names, each, strict=True))}


@cache
def _pieces(message: Message) -> list[npt.NDArray[np.uint32]]:
    return [np.array(kind, np.uint32) for kind in classifier.pieces(message.text, list(message.words))]


def _rows(of: list[Message], places: int) -> csr_array:
    """The messages, a row each, as ``Weights.sum`` counts their pieces."""
    kinds = [kind for message in of for kind in _pieces(message)]
    at = np.concatenate(kinds).astype(np.int64) & (places - 1)
    counts = np.repeat([1 / np.sqrt(max(1, len(kind))) for kind in kinds], list(map(len, kinds)))
    ends = np.cumsum([0, *map(len, kinds)])[:: len(kinds) // len(of)]
    return csr_array((counts, at, ends), (len(of), places))


def _held_apart(there: csr_array, said: list[list[bool]]) -> list[classifier.Weights]:
    """The weights that hold the two sides of each column a margin apart, both sides counting as much together. A piece counts the more the
    fewer messages have it."""
    times = np.bincount(there.indices, minlength=there.shape[1])
    rarity = np.where(times >= SEEN_AT_LEAST, 1 + np.log((len(said) + 1) / (times + 1)), 0.0)
    rows = csr_array((there.data * rarity[there.indices], there.indices, there.indptr), there.shape)
    columns, says = rows.T.tocsr(), np.array(said)
    side, cost = np.where(says, 1.0, -1.0), FLAGS_COST * len(said) / 2 / np.where(says, says.sum(0), (~says).sum(0))

    def loss(flat: Floats) -> tuple[float, Floats]:
        weights = flat.reshape(-1, says.shape[1])
        short = np.maximum(0.0, 1 - side * (rows @ weights[1:] + weights[0]))
        pushes = -2 * cost * side * short
        slopes = np.vstack((pushes.sum(0), columns @ pushes)) + weights
        return float((cost * short**2).sum() + (weights**2).sum() / 2), slopes.ravel()

    start = np.zeros((there.shape[1] + 1) * says.shape[1])
    found = minimize(loss, start, jac=True, method="L-BFGS-B", options={"maxiter": ROUNDS, "maxcor": 5}).x.reshape(-1, says.shape[1])
    steps = np.rint(found[1:] * rarity[:, None] * classifier.MARGIN_STEPS).clip(-127, 127).astype(np.int8)
    starts = np.rint(found[0] * classifier.MARGIN_STEPS)
    return [classifier.Weights(int(start), memoryview(column.tobytes()).cast("b")) for start, column in zip(starts, steps.T, strict=True)]


def messages_hash() -> str:
    """The hash of what the flags are learnt from; it stands at the end of the weights' file. Of the lines as they are read only one in
    eight counts: all of them take five seconds."""
    lines = [f"{text}\t{sorted(flag.value for flag in flags)}" for _, flags, text in told()]
    lines += [f"{message.text}\t{sorted(flag.value for flag in message.flags)}" for message in messages(every=8)]
    return sha256("\n".join(lines).encode()).hexdigest()


def flags_left_out(of: list[Message], left_out: Sequence[int] = ()) -> list[tuple[Message, int, tuple[Flag, ...]]]:
    """Each message with the sum, and the likeliest flags, it gets from weights learnt without its writer's; of these writers, or of all."""
    found = []
    writers = [_writer(at, message) for at, message in enumerate(of)]
    for writer in left_out or range(len(FLAGGED)):
        weights = learn_flags([message for message, wrote in zip(of, writers, strict=True) if wrote != writer])
        for message, wrote in zip(of, writers, strict=True):
            if wrote == writer:
                found.append((message, *classifier.weighed([kind.tolist() for kind in _pieces(message)], weights)))
    return found


def _writer(at: int, message: Message) -> int:
    """Return who wrote a message; those of pain go round."""
    for parts in (FLAGGED, UNFLAGGED):
        if message.part in parts:
            return parts.index(message.part)
    return at % len(FLAGGED)


class FlagFigures(NamedTuple):
    """Of the messages with a flag how many the layer alone hears, of those without how many it adds to the rules' false ones."""

    heard: int
    flagged: int
    added: int
    unflagged: int


def flag_figures(sums: list[tuple[Message, int, tuple[Flag, ...]]], over: int) -> FlagFigures:
    """What the sums of messages left out would have done at a threshold."""
    heard = [message for message, sum_, _ in sums if sum_ > over]
    flagged = sum(bool(message.flags) for message, _, _ in sums)
    added = sum(not message.flags and not message.heard for message in heard)
    return FlagFigures(sum(bool(message.flags) for message in heard), flagged, added, len(sums) - flagged)


def check_flags() -> None:
    """Prints what the layer of flags alone hears of lines left out, and what it would ask of ordinary ones beyond the rules."""
    sums = flags_left_out(messages())
    said = [(message, flags) for message, _, flags in sums if message.flags]
    first = sum(flags[0] in message.flags for message, flags in said)
    among = sum(not message.flags.isdisjoint(flags) for message, flags in said)
    print(f"flags: named first {first}, among those named {among} of {len(said)}")
    for over in range(-80, 1, 20):
        found = flag_figures(sums, over)
        print(f"over {over:3}: heard {found.heard} of {found.flagged}, added {found.added} false of {found.unflagged}")


if __name__ == "__main__":
    if "--check" in sys.argv:
        check_flags()
    else:
        (LANGUAGE / "flags" / "weights.bin").write_bytes(classifier.written(learn_flags(messages()), messages_hash()))
