"""Works out the weights of the learnt layers of hearing, for pain, flags and speech acts, and says how well they hear the unseen.

Run after the corpus or the tables were changed (a minute):

    python -m tests.corpus.learn            writes pain/weights.txt, flags/weights.bin and act_weights.txt in companion/language
    python -m tests.corpus.learn --check    prints the figures of leaving out a third, or one writer, at a time

Pain and acts: a logistic regression by AdaGrad. Flags: a squared hinge by L-BFGS. Both over all lines at once: no chance in it.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from scipy.sparse import csr_array

from companion.language import learnt_acts
from companion.language.classifier import log_odds
from companion.language.flags import classifier as of_flags
from companion.language.flags import rules as flag_rules
from companion.language.flags.flag import Flag
from companion.language.pain.classifier import STEPS_A_UNIT, THRESHOLD_AT_REST, THRESHOLD_AT_WORK, pieces
from companion.language.pain.rules import Pain, by_the_rules, unexplained
from companion.language.phrases import hear

HERE = Path(__file__).parent
LANGUAGE = HERE.parent.parent / "companion" / "language"
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
FLAGGED = ("flags_seen.tsv", "flags_more_c.tsv", "flags_more_d.tsv", "flags_more_e.tsv", "flags_more_f.tsv", "flags_more_g.tsv",
           "flags_more_h.tsv", "flags_more_i.tsv", "flags_more_j.tsv", "flags_more_k.tsv", "flags_more_m.tsv", "flags_more_l.tsv")
UNFLAGGED = ("not_flags_seen.txt", "not_flags_more_c.txt", "not_flags_more_d.txt", "not_flags_more_e.txt", "not_flags_more_f.txt",
             "not_flags_more_g.txt", "not_flags_more_h.txt", "not_flags_more_i.txt", "not_flags_more_j.txt",
             "not_flags_more_k.txt", "not_flags_more_m.txt", "not_flags_more_l.txt")
# Lines of pain parts and of everyday use, none of which was written to carry a flag; those the rules hear one in are left out.
MOSTLY_UNFLAGGED = ("not_pain_seen.txt", "not_pain_more.txt", "not_pain_more_g.txt", "not_pain_more_h.txt", "not_flags_bot.txt")
_PAINED = ("pain_more_g.txt", "pain_more_h.txt")
_TURNS = "turns_seen.tsv"
OFFERED = "not_flags_offered.txt"
# How somebody may say the name of what is offered; not all of it is good English.
SAID_AS = ("{}", "i want {}", "i want to {}", "i'd like to {}", "can i {}", "can we do {}", "let's do {}", "how do i {}", "{} please",
           "no, {}", "what about {}", "i think {}", "{} i guess", "{} again", "it was {}", "not {}", "i dont have {}", "i have {}")
# What is typed to these is often a sign.
_ABOUT_SIGNS = {"safety_check", "pain", "signs", "crisis", "limits", "limit_over", "clearance", "morning", "setup_morning", "referral",
                "wrong_tap", "outcome"}
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
ACT = Way(150, 0.2, 1e-3, 2, learnt_acts.STEPS_A_UNIT)
ACTS = ("answer", "question", "unsure", "not_yet", "correction", "chat")
FLAGS_COST, ROUNDS, SEEN_AT_LEAST = 0.2, 60, 2
FOLDS = 3
PAIN_IN = "tenths of a log-odds"


class Line(NamedTuple):
    """A message of the corpus: its part, text, pieces, whether it says what is listened for, and how much it counts."""

    part: str
    text: str
    pieces: tuple[str, ...]
    said: float
    counts: float


class Message(NamedTuple):
    """A message of the flags' corpus: its part, text, words as they are weighed, flags, and whether the rules hear any."""

    part: str
    text: str
    words: tuple[str, ...]
    flags: frozenset[Flag]
    heard: bool


def lines_of(name: str) -> list[str]:
    """The messages of one file, a line each; a line that begins with # is a comment."""
    lines = (HERE / name).read_text("utf-8").splitlines()
    return [line for line in lines if line.strip() and not line.startswith("#")]


def flagged_lines(name: str) -> list[tuple[frozenset[Flag], str]]:
    """The messages of one file with the flags they carry: "flag,flag", a tab, the message."""
    parts = (line.partition("\t") for line in lines_of(name))
    return [(frozenset(map(Flag, names.split(","))), text) for names, _, text in parts]


def corpus() -> list[Line]:
    """Every line there is to learn pain from."""
    return [
        Line(name, text, tuple(sorted(pieces(unexplained(text)))), pain, counts)
        for name, (pain, counts) in PARTS.items()
        for text in lines_of(name)
    ]


@cache
def messages() -> list[Message]:
    """Every line there is to learn flags from."""
    flagged = [(name, flags, text) for name in FLAGGED for flags, text in flagged_lines(name)]
    none = [(name, text) for name in (*UNFLAGGED, *MOSTLY_UNFLAGGED, *_PAINED) for text in lines_of(name)]
    none += [(_TURNS, text) for text in _replies()] + [(OFFERED, text) for text in offered()]
    every = flagged + [(name, frozenset[Flag](), text) for name, text in none]
    read = [Message(name, *_weighed(text), flags, bool(flag_rules.by_the_rules(text))) for name, flags, text in every]
    return [message for message in read if not message.heard or message.part in (*FLAGGED, *UNFLAGGED)]


def _weighed(text: str) -> tuple[str, tuple[str, ...]]:
    left, words = flag_rules.unexplained(text)
    return left, tuple(words)


def offered() -> list[str]:
    """What the bot offers, said back to it: a bot that hears a sign in the name of its own button is not trusted with a real one."""
    return [way.format(name) for name in lines_of(OFFERED) for way in SAID_AS]


def _replies() -> list[str]:
    """Replies to what is asked at other places than about signs, which report none and no pain."""
    rows = (line.split("\t") for line in lines_of(_TURNS))
    return [text for state, act, _, text, *_ in rows if act not in ("flag", "pain") and state.partition("/")[0] not in _ABOUT_SIGNS]


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


def learn_flags(of: list[Message], names: Sequence[Flag] = tuple(Flag)) -> dict[Flag | None, of_flags.Weights]:
    """Flag → its weights, None → those of any flag."""
    (some,) = _held_apart(_rows(of, of_flags.PLACES), [[bool(message.flags)] for message in of])
    each = _held_apart(_rows(of, of_flags.PLACES_NAMING), [[flag in message.flags for flag in names] for message in of]) if names else ()
    return {None: some, **dict(zip(names, each, strict=True))}


def typed() -> list[tuple[str, str]]:
    """The act and the words of every seen line of the turns that is no pain and no flag."""
    rows = (line.split("\t") for line in lines_of(_TURNS))
    return [(row[1], row[3]) for row in rows if row[1] not in ("pain", "flag")]


def learn_acts(of: Sequence[tuple[str, str]], acts: Sequence[str] = ACTS) -> dict[str, dict[str, int]]:
    """Act → its weights among all that is typed at a question."""
    rows = [(said, tuple(sorted(learnt_acts.pieces(text)))) for said, text in of]
    return {act: learn([Line("", "", pieces, float(said == act), 1.0) for said, pieces in rows], ACT) for act in acts}


def _rows(of: list[Message], places: int) -> csr_array:
    """The messages, a row each, as ``Weights.sum`` counts their pieces."""
    kinds = [kind for message in of for kind in of_flags.pieces(message.text, list(message.words))]
    at = np.concatenate([np.array(kind, np.int64) for kind in kinds]) & (places - 1)
    counts = np.repeat([1 / np.sqrt(max(1, len(kind))) for kind in kinds], list(map(len, kinds)))
    ends = np.cumsum([0, *map(len, kinds)])[:: len(kinds) // len(of)]
    return csr_array((counts, at, ends), (len(of), places))


def _held_apart(there: csr_array, said: list[list[bool]]) -> list[of_flags.Weights]:
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
    steps = np.rint(found[1:] * rarity[:, None] * of_flags.MARGIN_STEPS).clip(-127, 127).astype(np.int8)
    starts = np.rint(found[0] * of_flags.MARGIN_STEPS)
    return [of_flags.Weights(int(start), memoryview(column.tobytes()).cast("b")) for start, column in zip(starts, steps.T, strict=True)]


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


def written(weights: Mapping[str, dict[str, int]], unit: str) -> str:
    """The file of the weights: a section for each name, its intercept beside it."""
    sections = "".join(f"[{name}] {of['']}\n{table(of)}\n" for name, of in weights.items())
    return f"# The weights of ``classifier``, in {unit}. Written by tests/corpus/learn.py; not by hand.\n{sections}"


def left_out(lines: list[Line]) -> dict[str, int]:
    """Reply → the sum it gets from weights learnt without the third it stands in."""
    sums: dict[str, int] = {}
    for fold in range(FOLDS):
        weights = learn([line for at, line in enumerate(lines) if at % FOLDS != fold])
        for line in lines[fold::FOLDS]:
            sums[line.text] = log_odds(weights, line.pieces)
    return sums


def flags_left_out(of: list[Message], left_out: Sequence[int] = ()) -> list[tuple[Message, int, tuple[Flag, ...]]]:
    """Each message with the sum, and the likeliest flags, it gets from weights learnt without its writer's; of these writers, or of all."""
    found = []
    writers = [_writer(at, message) for at, message in enumerate(of)]
    for writer in left_out or range(len(FLAGGED)):
        weights = learn_flags([message for message, wrote in zip(of, writers, strict=True) if wrote != writer])
        for message, wrote in zip(of, writers, strict=True):
            if wrote == writer:
                found.append((message, *of_flags.weighed(of_flags.pieces(message.text, list(message.words)), weights)))
    return found


def _writer(at: int, message: Message) -> int:
    """Return who wrote a message; those of pain go round."""
    for parts in (FLAGGED, UNFLAGGED):
        if message.part in parts:
            return parts.index(message.part)
    return at % len(FLAGGED)


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


class FlagFigures(NamedTuple):
    """Of the messages with a flag how many the layer alone hears, of those without how many it adds to the rules' false ones."""

    heard: int
    flagged: int
    added: int
    unflagged: int


def flag_figures(sums: list[tuple[Message, int, tuple[Flag, ...]]], over_urgent: int, over: int) -> FlagFigures:
    """What the sums of messages left out would have done at two thresholds."""
    heard = [message for message, sum_, flags in sums if sum_ > (over_urgent if flags[0] in of_flags.URGENT else over)]
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
    for over_urgent in range(-80, 1, 20):
        for over in range(over_urgent, over_urgent + 61, 20):
            found = flag_figures(sums, over_urgent, over)
            print(f"over {over_urgent:2}, {over:2}: heard {found.heard} of {found.flagged}, added {found.added} false of {found.unflagged}")


def check_pain() -> None:
    """Prints what the layer of pain hears of what the rules once missed."""
    by_line = left_out(corpus())
    for over in sorted({-5, 0, THRESHOLD_AT_WORK, 5, THRESHOLD_AT_REST, 20}):
        found = figures(by_line, over)
        print(f"over {over:3}: heard {found.heard} of {found.missed}, false {found.false} of {found.ordinary}")


if __name__ == "__main__":
    if "--check" in sys.argv:
        check_pain()
        check_flags()
    else:
        (LANGUAGE / "act_weights.txt").write_text(written(learn_acts(typed()), PAIN_IN), "utf-8")
        (LANGUAGE / "pain" / "weights.txt").write_text(written({"pain": learn(corpus())}, PAIN_IN), "utf-8")
        (LANGUAGE / "flags" / "weights.bin").write_bytes(of_flags.written(learn_flags(messages())))
