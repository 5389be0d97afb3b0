"""A small transformer encoder that reads a message as it was typed and says how likely each flag is in it.

It is BERT's (Devlin et al., 2019, https://arxiv.org/abs/1810.04805) with three further choices: the mean of what the last layer says of
the pieces is read, not the first piece; one unit a flag, and one for any flag; its weights are whole numbers from -127 to 127, with a scale
a row. It began as ``all-MiniLM-L6-v2`` (Apache-2.0), a general encoder of sentences, and was fitted to our corpus by
``tests/corpus/learn_network.py``, which writes ``network.npz`` and holds what is computed here against PyTorch.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache, lru_cache
from importlib.resources import files
from itertools import islice
from typing import Any, NamedTuple

import numpy as np
import numpy.typing as npt

from companion.language.flags.spelling import letters_of

Vectors = npt.NDArray[np.float32]

HEADS = 12
PIECES_READ = 128
"""Further pieces of a message are ignored."""
ODDS_STEPS = 10
"""Log-odds are whole tenths: what the last digits of a sum are does not matter then."""
_LETTERS_READ = 900
_LONGEST_WORD = 40  # longer ones are unknown
_EPSILON = np.float32(1e-12)
_WORD = re.compile(r"[a-z]+|\d+|[^\w\s]|\w")
_BEGIN, _END, _UNKNOWN = "[CLS]", "[SEP]", "[UNK]"


class Layer(NamedTuple):
    """One layer: attention (query, key and value side by side, then out), and a hidden layer (in, out); a matrix, its offsets, and after
    each of the two the gain and offset of a norm."""

    attend: Vectors
    attend_by: Vectors
    out: Vectors
    out_by: Vectors
    norm: Vectors
    norm_by: Vectors
    widen: Vectors
    widen_by: Vectors
    narrow: Vectors
    narrow_by: Vectors
    norm_2: Vectors
    norm_2_by: Vectors


class Network(NamedTuple):
    """The vocabulary (piece → row), the vector of each row and its scale, of each place, and what follows."""

    vocabulary: dict[str, int]
    words: npt.NDArray[np.int8]
    scales: Vectors
    places: Vectors
    norm: Vectors
    norm_by: Vectors
    layers: tuple[Layer, ...]
    head: Vectors
    head_by: Vectors
    learnt_from: str

    def log_odds(self, text: str) -> Vectors:
        """Return the log-odds of each unit of the head."""
        rows = pieces(text, self.vocabulary)
        x = _normed(self.words[rows] * self.scales[rows] + self.places[: len(rows)], self.norm, self.norm_by)
        for layer in self.layers:
            x = _passed(x, layer)
        odds: Vectors = x.mean(0) @ self.head + self.head_by
        return odds


def pieces(text: str, vocabulary: dict[str, int]) -> list[int]:
    """Return the rows of a message's pieces: of each word the longest pieces there are, from its begin."""
    every = (row for word in _WORD.findall(letters_of(text[:_LETTERS_READ])) for row in _cut(word, vocabulary))
    return [vocabulary[_BEGIN], *islice(every, PIECES_READ - 2), vocabulary[_END]]


def _passed(x: Vectors, by: Layer) -> Vectors:
    """Return what one layer makes of the vectors of a message's pieces, a row each."""
    length, width = x.shape
    query, key, value = (x @ by.attend + by.attend_by).reshape(length, 3, HEADS, -1).transpose(1, 2, 0, 3)
    shares = query @ key.transpose(0, 2, 1) / np.sqrt(np.float32(width // HEADS))
    shares = np.exp(shares - shares.max(-1, keepdims=True))
    shares /= shares.sum(-1, keepdims=True)
    x = _normed(x + (shares @ value).transpose(1, 0, 2).reshape(length, width) @ by.out + by.out_by, by.norm, by.norm_by)
    return _normed(x + _gelu(x @ by.widen + by.widen_by) @ by.narrow + by.narrow_by, by.norm_2, by.norm_2_by)


def _normed(x: Vectors, gain: Vectors, offset: Vectors) -> Vectors:
    x = x - x.mean(-1, keepdims=True)
    normed: Vectors = x / np.sqrt((x * x).mean(-1, keepdims=True) + _EPSILON) * gain + offset
    return normed


def _gelu(x: Vectors) -> Vectors:
    """x times the share of a normal distribution below x, by its tanh approximation (Hendrycks and Gimpel, 2016)."""
    bent: Vectors = x * (1 + np.tanh(np.float32(0.7978845608) * (x + np.float32(0.044715) * x * x * x))) / 2
    return bent


def _cut(word: str, vocabulary: dict[str, int]) -> list[int]:
    found: list[int] = []
    at = 0
    while at < len(word):
        ends = range(len(word), at, -1) if len(word) <= _LONGEST_WORD else ()
        named = ((end, vocabulary.get("##" * bool(at) + word[at:end])) for end in ends)
        at, row = next(((end, row) for end, row in named if row is not None), (0, None))
        if row is None:
            return [vocabulary[_UNKNOWN]]
        found.append(row)
    return found


@lru_cache(maxsize=8)
def log_odds(text: str) -> tuple[int, ...]:
    """Return the log-odds of each flag and of any, in ``ODDS_STEPS``. The last few are remembered, since a turn may ask twice."""
    return tuple(np.rint(network().log_odds(text) * ODDS_STEPS).astype(int).tolist())


@cache
def network() -> Network:
    """Return the network as it was learnt; loaded with the first message it reads."""
    with (files(__package__) / "network.npz").open("rb") as file:
        return read(np.load(file))


def read(of: Mapping[str, npt.NDArray[Any]]) -> Network:
    """Return a network from its arrays, named as in ``Network``, those of layers "0.attend" and so on. What is in whole numbers has its
    scale beside it ("….scale"); the vectors of words stay so."""
    floats = {name: array.astype(np.float32) * of.get(f"{name}.scale", 1) for name, array in of.items()
              if array.dtype != np.uint8 and name != "words"}
    count = len({name.partition(".")[0] for name in of if name[0].isdigit()})
    vocabulary = {piece: row for row, piece in enumerate(of["vocabulary"].tobytes().decode().split("\n"))}
    return Network(vocabulary, of["words"], of["words.scale"], floats["places"], floats["norm"], floats["norm_by"],
                   tuple(Layer(*(floats[f"{at}.{field}"] for field in Layer._fields)) for at in range(count)),
                   floats["head"], floats["head_by"], of["learnt_from"].tobytes().decode())
