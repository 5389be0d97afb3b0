"""Works out the weights of the second ear for pain from the corpus, and says how well it hears what it has not seen.

Run after the corpus or the tables were changed (seconds, nothing but the standard library):

    python -m tests.corpus.learn            writes companion/language/pain/weights.py
    python -m tests.corpus.learn --check    prints the figures of leaving out a third at a time

A logistic regression by AdaGrad over all lines at once, the same every time: no chance in it.
"""

from __future__ import annotations

import sys
from collections import Counter
from math import exp, sqrt
from pathlib import Path
from typing import NamedTuple

from companion.language.pain.classifier import STEPS_A_UNIT, THRESHOLD_AT_REST, THRESHOLD_AT_WORK, pieces
from companion.language.pain.rules import Pain, by_the_rules, unexplained
from companion.language.phrases import hear

HERE = Path(__file__).parent
SHIPPED = HERE.parent.parent / "companion" / "language" / "pain" / "weights.py"
# What each part says of pain, and how much a line of it counts; the unsure count half (choice).
PARTS = {
    "pain_seen.txt": (1.0, 1.0),
    "pain_more.txt": (1.0, 1.0),
    "unsure.txt": (1.0, 0.5),
    "not_pain_seen.txt": (0.0, 1.0),
    "not_pain_more.txt": (0.0, 1.0),
}
# Chosen on the corpus by leaving out a third at a time, and one writer at a time (choice, no source).
ROUNDS, PACE, PULL, SEEN_AT_LEAST, FOLDS = 80, 0.5, 2e-4, 2, 3
_WIDTH = 120


class Line(NamedTuple):
    """A reply of the corpus: its part, text, pieces, whether it is of pain, and how much it counts."""

    part: str
    text: str
    pieces: tuple[str, ...]
    pain: float
    counts: float


def lines_of(name: str) -> list[str]:
    """The replies of one file, a line each; a line that begins with # is a comment."""
    lines = (HERE / name).read_text("utf-8").splitlines()
    return [line for line in lines if line.strip() and not line.startswith("#")]


def corpus() -> list[Line]:
    """Every line there is to learn from."""
    return [
        Line(name, text, tuple(sorted(pieces(unexplained(text)))), pain, counts)
        for name, (pain, counts) in PARTS.items()
        for text in lines_of(name)
    ]


def learn(lines: list[Line]) -> dict[str, int]:
    """Piece → weight in whole steps, "" → the start; pieces seen once or weighing nothing are left out."""
    seen = Counter(piece for line in lines for piece in line.pieces)
    kept = sorted(piece for piece, times in seen.items() if times >= SEEN_AT_LEAST)
    place = {piece: at for at, piece in enumerate(kept, 1)}
    rows = [(0, *(place[piece] for piece in line.pieces if piece in place)) for line in lines]
    weights, squares = [0.0] * (len(kept) + 1), [1e-8] * (len(kept) + 1)
    pull = PULL * len(lines)
    for _ in range(ROUNDS):
        slopes = [0.0, *(pull * weight for weight in weights[1:])]
        for row, line in zip(rows, lines, strict=True):
            odds = sum([weights[at] for at in row])
            wrong = line.counts * (1 / (1 + exp(-max(-30.0, min(30.0, odds)))) - line.pain)
            for at in row:
                slopes[at] += wrong
        for at, slope in enumerate(slopes):
            squares[at] += slope * slope
            weights[at] -= PACE * slope / sqrt(squares[at])
    steps = {piece: round(weight * STEPS_A_UNIT) for piece, weight in zip(["", *kept], weights, strict=True)}
    return {piece: step for piece, step in steps.items() if step or not piece}


def written(weights: dict[str, int]) -> str:
    """The module of weights: a line begins with a weight, its pieces follow."""
    by_step: dict[int, list[str]] = {}
    for piece, step in sorted(weights.items()):
        if piece:
            by_step.setdefault(step, []).append(piece)
    lines = []
    for step, row in sorted(by_step.items()):
        line = str(step)
        for piece in row:
            if len(line) + len(piece) >= _WIDTH:
                lines.append(line)
                line = str(step)
            line += f" {piece}"
        lines.append(line)
    text = "\n".join(lines)
    return (
        '"""The weights of ``classifier``, in tenths of a log-odds. Written by tests/corpus/learn.py; not by hand."""\n\n'
        f'INTERCEPT = {weights[""]}\nWEIGHTS = """\n{text}\n"""\n'
    )


def left_out(lines: list[Line]) -> dict[str, int]:
    """Reply → the sum it gets from weights learnt without the third it stands in."""
    sums: dict[str, int] = {}
    for fold in range(FOLDS):
        weights = learn([line for at, line in enumerate(lines) if at % FOLDS != fold])
        for line in lines[fold::FOLDS]:
            sums[line.text] = weights[""] + sum(weights.get(piece, 0) for piece in line.pieces)
    return sums


class Figures(NamedTuple):
    """Of the replies the rules once missed, how many are heard when left out; of the ordinary, how many asked about."""

    heard: int
    missed: int
    false: int
    ordinary: int


def figures(sums: dict[str, int], threshold: int) -> Figures:
    """What the sums of lines left out would have done at a threshold; what the rules ask about anyway is not false here."""
    missed, ordinary = lines_of("missed_once.txt"), lines_of("not_pain_seen.txt")
    asked = (text for text in ordinary if sums[text] > threshold and hear(text) is None)
    return Figures(
        sum(sums[text] > threshold for text in missed),
        len(missed),
        sum(by_the_rules(text) is Pain.NO for text in asked),
        len(ordinary),
    )


if __name__ == "__main__":
    if "--check" in sys.argv:
        by_line = left_out(corpus())
        for over in sorted({-5, 0, THRESHOLD_AT_WORK, 5, THRESHOLD_AT_REST, 20}):
            found = figures(by_line, over)
            print(f"over {over:3}: heard {found.heard} of {found.missed}, false {found.false} of {found.ordinary}")
    else:
        SHIPPED.write_text(written(learn(corpus())), "utf-8")
