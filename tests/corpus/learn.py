"""Works out the weights of the learnt layers of hearing, for pain, flags and speech acts, and says how well they hear the unseen.

Run after the corpus or the tables were changed (a minute):

    python -m tests.corpus.learn            writes pain/weights.txt, flags/weights.bin and reading_weights.txt in companion/language
    python -m tests.corpus.learn --check    prints the figures of leaving out a third, or one writer, at a time

Pain: a logistic regression by AdaGrad; reading: one over all that a reply may be. Flags: a squared hinge by L-BFGS. All over
all lines at once: no chance in it.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from scipy.sparse import csr_array

from companion.conversation.corrections import candidates
from companion.conversation.flow import Ask
from companion.conversation.slots import phrases_of, reads_acts, typed_at
from companion.language import learnt
from companion.language.classifier import log_odds
from companion.language.flags import classifier as of_flags
from companion.language.flags import rules as flag_rules
from companion.language.flags.flag import Flag
from companion.language.pain.classifier import STEPS_A_UNIT, THRESHOLD_AT_REST, THRESHOLD_AT_WORK, pieces
from companion.language.pain.rules import Pain, by_the_rules, unexplained
from companion.language.phrases import hear
from flows.catalogue import BOOK, flows
from tests.corpus.turns import Turn, draft_at, expected, fits, turns

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
           "flags_more_h.tsv", "flags_more_i.tsv", "flags_more_j.tsv", "flags_more_k.tsv", "flags_more_m.tsv", "flags_more_l.tsv",
           "flags_more_n.tsv", "flags_more_o.tsv", "flags_more_p.tsv", "flags_more_q.tsv",
           "flags_more_r.tsv", "flags_more_s.tsv", "flags_more_t.tsv",
           "flags_more_u.tsv", "flags_more_v.tsv", "flags_more_w.tsv", "flags_more_x.tsv", "flags_more_y.tsv",
           "flags_more_z.tsv", "flags_more_za.tsv", "flags_more_zb.tsv", "flags_more_zc.tsv")
UNFLAGGED = ("not_flags_seen.txt", "not_flags_more_c.txt", "not_flags_more_d.txt", "not_flags_more_e.txt", "not_flags_more_f.txt",
             "not_flags_more_g.txt", "not_flags_more_h.txt", "not_flags_more_i.txt", "not_flags_more_j.txt",
             "not_flags_more_k.txt", "not_flags_more_m.txt", "not_flags_more_l.txt", "not_flags_more_n.txt", "not_flags_more_o.txt",
             "not_flags_more_p.txt", "not_flags_more_q.txt", "not_flags_more_r.txt", "not_flags_more_s.txt",
             "not_flags_more_t.txt", "not_flags_more_u.txt", "not_flags_more_v.txt", "not_flags_more_w.txt", "not_flags_more_x.txt",
             "not_flags_more_y.txt", "not_flags_more_z.txt", "not_flags_more_za.txt",
             "not_flags_more_zb.txt", "not_flags_more_zc.txt")
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
READING = Way(60, 0.3, 3e-5, 2, learnt.STEPS_A_UNIT)
CORRECTING = Way(60, 0.3, 1e-4, 2, learnt.STEPS_A_UNIT)
PHRASE_COUNTS, COMMAND_COUNTS = 0.1, 0.5
SLIGHT = 1
"""Steps up to which a weight of the reading is left out."""
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
def _told() -> list[tuple[str, frozenset[Flag], str]]:
    """The part, the flags and the text of every line there is to learn flags from."""
    flagged = [(name, flags, text) for name in FLAGGED for flags, text in flagged_lines(name)]
    none = [(name, text) for name in (*UNFLAGGED, *MOSTLY_UNFLAGGED, *_PAINED) for text in lines_of(name)]
    none += [(_TURNS, text) for text in _replies()] + [(OFFERED, text) for text in offered()]
    return flagged + [(name, frozenset[Flag](), text) for name, text in none]


def messages(every: int = 1) -> list[Message]:
    """What flags are learnt from, or one line in so many of it, read."""
    read = [Message(name, *_weighed(text), flags, bool(flag_rules.by_the_rules(text))) for name, flags, text in _told()[::every]]
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


@cache
def _pieces(message: Message) -> list[npt.NDArray[np.uint32]]:
    return [np.array(kind, np.uint32) for kind in of_flags.pieces(message.text, list(message.words))]


def _rows(of: list[Message], places: int) -> csr_array:
    """The messages, a row each, as ``Weights.sum`` counts their pieces."""
    kinds = [kind for message in of for kind in _pieces(message)]
    at = np.concatenate(kinds).astype(np.int64) & (places - 1)
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


def messages_hash() -> str:
    """The hash of what the flags are learnt from; it stands at the end of the weights' file. Of the lines as they are read only one in
    eight counts: all of them take five seconds."""
    lines = [f"{text}\t{sorted(flag.value for flag in flags)}" for _, flags, text in _told()]
    lines += [f"{message.text}\t{sorted(flag.value for flag in message.flags)}" for message in messages(every=8)]
    return sha256("\n".join(lines).encode()).hexdigest()


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


def flags_left_out(of: list[Message], left_out: Sequence[int] = ()) -> list[tuple[Message, int, tuple[Flag, ...]]]:
    """Each message with the sum, and the likeliest flags, it gets from weights learnt without its writer's; of these writers, or of all."""
    found = []
    writers = [_writer(at, message) for at, message in enumerate(of)]
    for writer in left_out or range(len(FLAGGED)):
        weights = learn_flags([message for message, wrote in zip(of, writers, strict=True) if wrote != writer])
        for message, wrote in zip(of, writers, strict=True):
            if wrote == writer:
                found.append((message, *of_flags.weighed([kind.tolist() for kind in _pieces(message)], weights)))
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
        choices = [*typed(), *phrased()]
        learnt_of = {**learn_reading(choices), **learn_reading(corrected(), CORRECTING)}
        text = written(learnt_of, PAIN_IN) + f"# Learnt from {corpus_hash(choices)}\n"
        (LANGUAGE / "reading_weights.txt").write_text(text, "utf-8")
        (LANGUAGE / "pain" / "weights.txt").write_text(written({"pain": learn(corpus())}, PAIN_IN), "utf-8")
        (LANGUAGE / "flags" / "weights.bin").write_bytes(of_flags.written(learn_flags(messages()), messages_hash()))
