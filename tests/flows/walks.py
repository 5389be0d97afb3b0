"""Walks through a flow: answers that take each arrow, found without knowing what the flow is about."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from random import Random

from companion.conversation.book import PARKED
from companion.conversation.condition import Value
from companion.conversation.domains import Ways
from companion.conversation.flow import EARLY_END, END, Ask, Known
from companion.conversation.machine import START
from companion.conversation.proof import Found, model, prove
from companion.conversation.wording import render
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, PAIN

TRIES = 600
"""Walks looked at for one flow before what no walk took counts as not found; a fixed draw, so always the same ones."""

LONGEST = 100
SKIPPED = None
STAND_IN = Ask("ok", "Ok?", PAIN.steps[0].kind)  # type: ignore[union-attr]


@dataclass(frozen=True)
class Reply:
    """What was answered in a state (None: skipped; for a run, how it ended), and what stood beside the flow by then."""

    state: str
    value: Value | None
    beside: Mapping[str, Value]


@dataclass(frozen=True)
class Walk:
    """The facts fixed at the start, the replies, and the arrows they took."""

    fixed: Mapping[str, Value]
    replies: tuple[Reply, ...]
    passed: tuple[tuple[str, str], ...]


@cache
def ways_of(name: str) -> Ways:
    """A flow's facts and what they may be."""
    return Ways(BOOK, BOOK[name], Known(CHECKED, NOW))


@cache
def proof_of(name: str) -> Found:
    """Which of a flow's arrows nothing can take."""
    return prove(ways_of(name))


def drawn(ways: Ways, draw: Random, names: Iterable[str]) -> dict[str, Value]:
    """A value or nothing for each name."""
    there = draw.choice((0.0, 0.1, 0.5, 0.9, 1.0))
    return {name: draw.choice(values) for name in sorted(names)
            if draw.random() < there and (values := sorted(ways.whole(name) - {None}, key=repr))}


def walk(ways: Ways, draw: Random, missing: Collection[tuple[str, str]]) -> Walk:
    """One walk from the start to an end, as straight as may be towards one of the ``missing`` arrows."""
    compiled = ways.compiled
    never = proof_of(ways.flow.name).never
    read = {name for names in ways.reads.values() for name in names}
    own = {name for ask in ways.asks.values() for name in ways.log_names(ask, {})} | compiled.stops.keys()
    free = ways.compares.keys() - own - ways.worked_out.keys() - ways.fixed - read
    fixed = dict(ways.flow.at_start(Known(CHECKED, NOW, run=str(draw.randrange(9))))) if ways.flow.at_start else {}
    goal = compiled.ways[draw.choice(sorted(missing))]
    suits = model(goal.when, {name: ways.whole(name) for name in ways.compares}) or {}
    for name in sorted(ways.fixed & ways.compares.keys()):
        fixed.pop(name, None)
        value = draw.choice(sorted(suits[name], key=repr))
        fixed |= {} if value is None else {name: value}
    far, astray = distances(ways, goal.source), draw.choice((1, 3, 9, 30))
    state, got, replies, passed = START, dict[str, Value](), list[Reply](), list[tuple[str, str]]()
    while state not in (END, EARLY_END) and len(passed) < LONGEST:
        arrows = [arrow for arrow in compiled.leaving[state] if (state, arrow.target) not in never]
        arrows.sort(key=lambda arrow: (arrow is not goal, far.get(arrow.target, LONGEST) + draw.random() * astray))
        for arrow, given in ((arrow, given) for arrow in arrows for given in given_in(ways, state, draw)):
            beside = {**CHECKED, **drawn(ways, draw, (read | free) - own)}
            facts = compiled.facts_of(beside, fixed, got)
            stop = compiled.stops.get(state)
            after = dict(got)
            if isinstance(stop, Ask):
                name = render(stop.log_as, facts, NOW, stop.side) if stop.log_as else state
                after.pop(name, None)
                if not offered(stop, given, facts):
                    continue
            else:
                name = state
            if given is not None and name != "run_parked":
                after[name] = given
            facts = compiled.facts_of(beside, fixed, after)
            sets = {name: ways.whole(name) if name in free else frozenset((facts.get(name),)) for name in ways.compares}
            if (chosen := model(arrow.when, sets)) is None:
                continue
            for name in free:
                value = draw.choice(sorted(chosen[name], key=repr))
                beside.pop(name, None)
                beside |= {} if value is None else {name: value}
            if not (isinstance(stop, Ask) and not offered(stop, given, compiled.facts_of(beside, fixed, got))):
                break
        else:
            break
        replies.append(Reply(state, given, beside))
        passed.append((state, arrow.target))
        state, got = arrow.target, after
    return Walk(fixed, tuple(replies), tuple(passed))


def distances(ways: Ways, target: str) -> dict[str, int]:
    """How many arrows a state is away from another, over the arrows that can be taken."""
    never, far = proof_of(ways.flow.name).never, {target: 0}
    waiting = [target]
    while waiting:
        here = waiting.pop(0)
        for source, to in ways.compiled.ways:
            if to == here and source not in far and (source, to) not in never:
                far[source] = far[here] + 1
                waiting.append(source)
    return far


def given_in(ways: Ways, state: str, draw: Random) -> list[Value | None]:
    """The answers to try in a state, in a drawn order."""
    stop = ways.compiled.stops.get(state)
    if isinstance(stop, Ask):
        values: list[Value | None] = [*ways.answers(stop), *([] if stop.safety else [SKIPPED])]
        return draw.sample(values, len(values))
    return draw.sample(["done", "closed"], 2) if stop and stop.flow != PARKED else ["done"]


def offered(ask: Ask, given: Value | None, facts: Mapping[str, Value]) -> bool:
    """Whether a value can be given here now."""
    shut = {option.value for option in ask.kind.options if not option.only_if.holds(facts)}
    return given is None or str(given) not in shut


@cache
def walks_of(name: str) -> Mapping[tuple[str, str], Walk]:
    """For each arrow that a walk takes, a short one that does, up to that arrow."""
    ways, draw = ways_of(name), Random(name)
    wanted = set(ways.compiled.ways) - proof_of(name).never
    found: dict[tuple[str, str], Walk] = {}
    for _ in range(TRIES):
        one = walk(ways, draw, wanted - found.keys())
        for n, arrow in enumerate(one.passed):
            if arrow not in found or len(found[arrow].passed) > n + 1:
                found[arrow] = Walk(one.fixed, one.replies[:n + 1], one.passed[:n + 1])
        if wanted <= found.keys():
            break
    return found
