"""Works out the weights of the learnt layers of hearing, for pain and speech acts, and says how well pain is heard unseen.

Run after the corpus or the tables were changed (a minute); flags have ``learn_flags``:

    python -m tests.corpus.learn            writes pain/weights.txt and reading_weights.txt in companion/language
    python -m tests.corpus.learn --check    prints the figures of leaving out a third at a time

Pain: a logistic regression by AdaGrad; reading: one over all that a reply may be. Both over all lines at once: no chance in it.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import cache
from hashlib import sha256
from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.sparse import csr_array

from companion.conversation.corrections import candidates
from companion.conversation.flow import Ask
from companion.conversation.slots import phrases_of, reads_acts, typed_at
from companion.language import learnt
from companion.language.classifier import log_odds
from companion.language.pain.classifier import STEPS_A_UNIT, THRESHOLD_AT_REST, THRESHOLD_AT_WORK, pieces
from companion.language.pain.rules import Pain, by_the_rules, unexplained
from companion.language.phrases import hear
from flows.catalogue import BOOK, flows
from tests.corpus.lines import LANGUAGE, lines_of
from tests.corpus.turns import Turn, draft_at, expected, fits, turns

# What each part says of pain, and how much a line of it counts; the unsure count half (choice).
PARTS = {
    "pain_seen.txt": (1.0, 1.0),
    "pain_more.txt": (1.0, 1.0),
    "unsure.txt": (1.0, 0.5),
    "not_pain_seen.txt": (0.0, 1.0),
    "not_pain_more.txt": (0.0, 1.0),
    "pain_more_g.txt": (1.0, 1.0),
    "not_pain_more_g.txt": (0.0, 1.0),
    "pain_more_h.txt": (1.0, 1.0),
    "not_pain_more_h.txt": (0.0, 1.0),
}
_WIDTH = 120


Floats = npt.NDArray[np.float64]


class Way(NamedTuple):
    """How a regression is fitted: rounds, length of the first step, pull to zero, how often a piece must be seen, steps of a log-odds."""

    rounds: int
    pace: float
    pull: float
    seen_at_least: int
    steps: int


# Chosen on the corpus by leaving out a part, or a writer, at a time (choice, no source).
PAIN = Way(80, 0.5, 2e-4, 2, STEPS_A_UNIT)
READING = Way(60, 0.3, 3e-5, 2, learnt.STEPS_A_UNIT)
CORRECTING = Way(60, 0.3, 1e-4, 2, learnt.STEPS_A_UNIT)
PHRASE_COUNTS, COMMAND_COUNTS = 0.1, 0.5
SLIGHT = 1
"""Steps up to which a weight of the reading is left out."""
FOLDS = 3
PAIN_IN = "tenths of a log-odds"


class Line(NamedTuple):
    """A message of the corpus: its part, text, pieces, whether it says what is listened for, and how much it counts."""

    part: str
    text: str
    pieces: tuple[str, ...]
    said: float
    counts: float


def corpus() -> list[Line]:
    """Every line there is to learn pain from."""
    return [
        Line(name, text, tuple(sorted(pieces(unexplained(text)))), pain, counts)
        for name, (pain, counts) in PARTS.items()
        for text in lines_of(name)
    ]


def learn(lines: list[Line], way: Way = PAIN) -> dict[str, int]:
    """Piece → weight in whole steps, "" → the start; pieces seldom seen or weighing nothing are left out."""
    seen = Counter(piece for line in lines for piece in line.pieces)
    kept = sorted(piece for piece, times in seen.items() if times >= way.seen_at_least)
    place = {piece: at for at, piece in enumerate(kept, 1)}
    rows = [(0, *(place[piece] for piece in line.pieces if piece in place)) for line in lines]
    at, ends = np.concatenate([np.array(row) for row in rows]), np.cumsum([0, *map(len, rows)])
    there = csr_array((np.ones(len(at)), at, ends), (len(rows), len(kept) + 1))
    those = there.T.tocsr()
    said, counts = np.array([line.said for line in lines]), np.array([line.counts for line in lines])
    weights, squares = np.zeros(len(kept) + 1), np.full(len(kept) + 1, 1e-8)
    pull = np.full(len(kept) + 1, way.pull * len(lines))
    pull[0] = 0.0
    for _ in range(way.rounds):
        odds = (there @ weights).clip(-30.0, 30.0)
        wrong = counts * (1 / (1 + np.exp(-odds)) - said)
        slopes = pull * weights + those @ wrong
        squares += slopes * slopes
        weights -= way.pace * slopes / np.sqrt(squares)
    steps = {piece: round(float(weight) * way.steps) for piece, weight in zip(["", *kept], weights, strict=True)}
    return {piece: step for piece, step in steps.items() if step or not piece}


Among = tuple[tuple[str, tuple[str, ...]], ...]


class Choice(NamedTuple):
    """A reply, what it may be (``learnt.candidates``), what it is among these, and how much it counts."""

    among: Among
    said: str
    text: str
    counts: float


def typed() -> list[Choice]:
    """Every seen line of the turns that is no pain and no flag, where replies are read by what they do."""
    return [choice for turn in turns("seen") if (choice := choice_of(turn))]


def choice_of(turn: Turn) -> Choice | None:
    """Return a line of the turns to learn from, None for one of which nothing is learnt."""
    flow, key = turn.state.split("/")
    ask = BOOK[flow].stops[key]
    assert isinstance(ask, Ask)
    if ask.safety:
        return None
    among = among_at(ask)
    match turn.act:
        case "answer" | "unsure" if turn.value:
            wanted = expected(turn).get(key, "")
            said = wanted if wanted in {option.value for option in ask.kind.options} or not wanted else typed_at(ask)
        case "command":
            said = f"!{turn.value}"
        case act:
            said = f"@{'chat' if act == 'nothing' else act}"
    return Choice(among, said, turn.text, 1.0) if said in {name for name, _ in among} else None


def corrected() -> list[Choice]:
    """Every seen correction that names its new answer, among all that it could put right where it is typed."""
    return [choice for turn in turns("seen") if turn.act == "correction" and turn.value and (choice := _correction_of(turn))]


def _correction_of(turn: Turn) -> Choice | None:
    found = candidates(draft_at(turn), turn.text)
    said = [one.name for one in found if one.new and fits(turn, {one.new.key: one.new.value})]
    return Choice(tuple((one.name, one.weights) for one in found), said[0], turn.text, 1.0) if said else None


def among_at(ask: Ask) -> Among:
    """Return what a reply to a question may be."""
    return learnt.candidates(tuple((option.value, option.label) for option in ask.kind.options), typed_at(ask), asked_for())


@cache
def asked_for() -> tuple[str, ...]:
    """Return the flows that have a command."""
    return tuple(sorted(set(BOOK.commands.values())))


def phrased() -> list[Choice]:
    """Every phrase for an option, once for each set of options it is among, and the words that begin each flow."""
    asks = [ask for flow in flows() for ask in BOOK[flow.name].stops.values() if isinstance(ask, Ask)]
    sets = dict.fromkeys(ask.kind.options for ask in asks if reads_acts(ask) and not ask.safety and len(ask.kind.options) > 1)
    among = {options: learnt.candidates(tuple((one.value, one.label) for one in options), "", ())[:len(options)] for options in sets}
    said = [Choice(among[options], value, phrase, PHRASE_COUNTS)
            for options in sets for value, phrases in phrases_of(options) for phrase in phrases]
    starts = tuple(one for one in learnt.candidates((), "", asked_for()) if one[0].startswith(f"!{learnt.TO_START}"))
    return said + [Choice(starts, f"!{learnt.TO_START}{flow}", words, COMMAND_COUNTS) for words, flow in BOOK.commands.items()]


def learn_reading(of: Sequence[Choice], way: Way | None = None) -> dict[str, dict[str, int]]:
    """Name → its weights: those under which what was said is likeliest among what it could be."""
    way = way or READING
    pieces_of = [sorted(learnt.pieces(choice.text)) for choice in of]
    seen = Counter(piece for found in pieces_of for piece in found)
    place = {piece: at for at, piece in enumerate(sorted(piece for piece, times in seen.items() if times >= way.seen_at_least), 1)}
    names = sorted({name for choice in of for _, named in choice.among for name in named})
    row = {name: at for at, name in enumerate(names)}
    wordless = [at for name, at in row.items() if name.startswith(learnt.WORDLESS)]
    groups: dict[Among, list[int]] = {}
    for at, choice in enumerate(of):
        groups.setdefault(choice.among, []).append(at)
    packs = []
    for among, those in groups.items():
        rows = sorted({row[name] for _, named in among for name in named})
        has = np.array([[float(names[one] in named) for one in rows] for _, named in among])
        places = [[0, *(place[piece] for piece in pieces_of[at] if piece in place)] for at in those]
        columns, at_column = np.unique(np.concatenate(places), return_inverse=True)
        there = csr_array((np.ones(len(at_column)), at_column, np.cumsum([0, *map(len, places)])), (len(those), len(columns)))
        said = np.array([[float(name == of[at].said) for name, _ in among] for at in those])
        packs.append((np.ix_(rows, columns), has, there, there.T.tocsr(), said, np.array([[of[at].counts] for at in those])))
    weights, squares = np.zeros((len(names), len(place) + 1)), np.full((len(names), len(place) + 1), 1e-8)
    pull = way.pull * sum(choice.counts for choice in of)
    for _ in range(way.rounds):
        slopes = pull * weights
        slopes[:, 0] = 0.0
        for here, has, there, columns_of, said, counts in packs:
            odds = there @ (has @ weights[here]).T
            shares = np.exp(odds - odds.max(1, keepdims=True))
            wrong = counts * (shares / shares.sum(1, keepdims=True) - said)
            slopes[here] += has.T @ (columns_of @ wrong).T
        slopes[wordless, 1:] = 0.0
        squares += slopes * slopes
        weights -= way.pace * slopes / np.sqrt(squares)
    steps = np.rint(weights * way.steps).astype(int)
    return {name: {"": int(steps[at, 0])} | {piece: int(steps[at, col]) for piece, col in place.items() if abs(steps[at, col]) > SLIGHT}
            for name, at in row.items()}


def table(weights: dict[str, int]) -> str:
    """The weights as text: a line begins with a weight, its pieces follow."""
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
    return "\n".join(lines)


def corpus_hash(of: Sequence[Choice]) -> str:
    """The hash of what the reading is learnt from; it stands in the weights' file, as learning takes too long for every test run."""
    lines = [f"{choice.among}\t{choice.said}\t{choice.text}" for choice in of]
    lines += ["\t".join(turn[:4]) for turn in turns("seen") if turn.act == "correction"]
    return sha256("\n".join(sorted(lines)).encode()).hexdigest()


def written(weights: Mapping[str, dict[str, int]], unit: str) -> str:
    """The file of the weights: a section for each name, its intercept beside it."""
    sections = "".join(f"[{name}] {of['']}\n{table(of)}".rstrip() + "\n" for name, of in weights.items())
    return f"# The weights of ``classifier``, in {unit}. Written by tests/corpus/learn.py; not by hand.\n{sections}"


def left_out(lines: list[Line]) -> dict[str, int]:
    """Reply → the sum it gets from weights learnt without the third it stands in."""
    sums: dict[str, int] = {}
    for fold in range(FOLDS):
        weights = learn([line for at, line in enumerate(lines) if at % FOLDS != fold])
        for line in lines[fold::FOLDS]:
            sums[line.text] = log_odds(weights, line.pieces)
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


def check_pain() -> None:
    """Prints what the layer of pain hears of what the rules once missed."""
    by_line = left_out(corpus())
    for over in sorted({-5, 0, THRESHOLD_AT_WORK, 5, THRESHOLD_AT_REST, 20}):
        found = figures(by_line, over)
        print(f"over {over:3}: heard {found.heard} of {found.missed}, false {found.false} of {found.ordinary}")


if __name__ == "__main__":
    if "--check" in sys.argv:
        check_pain()
    else:
        choices = [*typed(), *phrased()]
        learnt_of = {**learn_reading(choices), **learn_reading(corrected(), CORRECTING)}
        text = written(learnt_of, PAIN_IN) + f"# Learnt from {corpus_hash(choices)}\n"
        (LANGUAGE / "reading_weights.txt").write_text(text, "utf-8")
        (LANGUAGE / "pain" / "weights.txt").write_text(written({"pain": learn(corpus())}, PAIN_IN), "utf-8")
