"""Walks through a flow: answers that take each arrow, found without knowing what the flow is about."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache, lru_cache
from random import Random
from typing import Any, Final

from companion.conversation.condition import ALWAYS, Condition, Fact, Value, fact
from companion.conversation.effects import Effect, Say
from companion.conversation.events import Event, Happening, Sent, Settle, Tapped, Typed
from companion.conversation.flow import END, PARKED, Ask, Do, Flow, Gate, Known, Run, Tell
from companion.conversation.kinds import Media, Ready
from companion.conversation.number_kinds import Number
from companion.conversation.policy import Policy
from companion.conversation.prompt import SKIP, Payload
from companion.conversation.registry import Book, bind, offers_of
from companion.conversation.session import Frame, Session
from companion.conversation.step import step, unsettled
from companion.conversation.table import EARLY_END, START
from companion.conversation.wording import fields_of, render
from companion.screening.screen import LoggedAnswer as Row
from companion.verify.domains import A_DAY, Domain, Ways
from companion.verify.proof import Found, prove
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, PAIN

TRIES = 4_000
"""Walks looked at for one flow before what no walk took counts as not found; a fixed draw, so always the same ones."""

HEEDING = 0.5
"""How often a walk gives the answers with which the arrow it is after can be taken, wherever it comes by their questions."""

LONGEST = 100
OTHER: Final = "something_else"
"""A flow that nothing runs and that may begin over any question."""

SETTLING_MOST = 40
SKIPPED = None


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
            if draw.random() < there and (values := in_order(ways.whole(name) - {None}))}


@lru_cache(maxsize=4096)
def in_order(values: Domain) -> list[Value | None]:
    """Values in an order that is always the same."""
    return sorted(values, key=repr)


@cache
def suiting(name: str, goal: tuple[str, str], also: Condition) -> Mapping[str, Domain]:
    """Values with which an arrow can be taken, and that where ``also`` holds if there are such; found once, for walks try often."""
    ways = ways_of(name)
    compiled, proved = ways.compiled, proof_of(name).at.get(goal[0], {})
    there, when, cases = compiled.stops.get(goal[0]), compiled.ways[goal].when, ways.cases
    given = {*(ways.log_names(there, {}) if isinstance(there, Ask) else {goal[0]}), *ways.worked_out}
    whole = {fact: ways.whole(fact) if fact in given else proved.get(fact, ways.whole(fact)) for fact in ways.compares}
    all_of_it = cases.every(map(cases.of, (also, when, there.only_if if there else ALWAYS)))
    return cases.model(all_of_it, whole) or cases.model(cases.of(when), whole) or {}


def walk(ways: Ways, draw: Random, missing: Collection[tuple[str, str]], also: Condition = ALWAYS, on: bool = True,
         like: Mapping[str, Domain] | None = None) -> Walk:
    """One walk from the start, as straight as may be towards one of the ``missing`` arrows, taking that where ``also``
    holds; ``on`` from there to an end. What is fixed at the start is as in ``like`` where that may be."""
    compiled, cases = ways.compiled, ways.cases
    never = proof_of(ways.flow.name).never
    own, read = parts_of(ways.flow.name)
    free, drawn_beside = ways.compares.keys() - own - ways.worked_out.keys() - ways.fixed - read, read - own
    drawn_beside |= free
    whole = {name: ways.whole(name) for name in free}
    fixed = dict(ways.flow.at_start(Known(CHECKED, NOW, run=str(draw.randrange(9))))) if ways.flow.at_start else {}
    goal = compiled.ways[draw.choice(sorted(missing))]
    suits = suiting(ways.flow.name, (goal.source, goal.target), also)
    for name in sorted(ways.fixed & (ways.compares.keys() | read)):
        fixed.pop(name, None)
        may_be = suits.get(name) or ways.whole(name)
        value = draw.choice(sorted(may_be & (like or {}).get(name, may_be) or may_be, key=repr))
        fixed |= {} if value is None else {name: value}
    if ways.flow.at_start:  # what it would have worked out to say
        told = said_fields(ways.flow.name) - (fixed.keys() | own | ways.worked_out.keys() | ways.compares.keys())
        fixed |= {name: A_DAY for name in sorted(told) if draw.random() < 0.8}
    far, astray = distances(ways.flow.name, goal.source), draw.choice((1, 3, 9, 30))
    calm, heeds = draw.choice((0.0, 0.85, 1.0)), draw.random() < HEEDING
    state, got, replies, passed = START, dict[str, Value](), list[Reply](), list[tuple[str, str]]()
    while state not in (END, EARLY_END) and len(passed) < LONGEST:
        arrows = [arrow for arrow in compiled.leaving[state] if (state, arrow.target) not in never]
        arrows.sort(key=lambda arrow: (arrow is not goal, far.get(arrow.target, LONGEST) + draw.random() * astray))
        stop = compiled.stops.get(state)
        hangs = isinstance(stop, Ask) and (stop.log_as or any(option.only_if != ALWAYS for option in stop.kind.options))
        seen = looked_at(ways.flow.name, state).union(one.fact for one in also.compares())
        tried: dict[Value | None, tuple[dict[str, Value], dict[str, Value], Mapping[str, Domain]] | None] = {}
        for arrow, given in ((arrow, given) for arrow in arrows for given in given_in(
                ways, state, draw, draw.random() < calm, suits if heeds else {})):
            if given not in tried:  # what is drawn beside an answer is the same for all arrows
                tried[given] = None
                beside = {**CHECKED, **drawn(ways, draw, drawn_beside)}
                facts = Seen(ways.flow.name, {**beside, **fixed, **got}) if hangs else {}
                if isinstance(stop, Ask) and not offered(stop, given, facts):
                    continue
                name = render(stop.log_as, facts, NOW, stop.side) if isinstance(stop, Ask) and stop.log_as else state
                after = {key: value for key, value in got.items() if key != name or not isinstance(stop, Ask)}
                if given is not None and name != "run_parked":
                    after[name] = given
                facts = Seen(ways.flow.name, {**beside, **fixed, **after})
                tried[given] = beside, after, {name: frozenset((facts.get(name),)) for name in seen} | whole
            if (one := tried[given]) is None:
                continue
            beside, after, sets = dict(one[0]), one[1], one[2]
            wanted = cases.both(cases.of(also), cases.of(arrow.when)) if arrow is goal else cases.of(arrow.when)
            if (chosen := cases.model(wanted, sets)) is None:
                continue
            for name in sorted(free):
                value = draw.choice(sorted(chosen[name], key=repr))
                beside.pop(name, None)
                beside |= {} if value is None else {name: value}
            if not hangs or offered(stop, given, Seen(ways.flow.name, {**beside, **fixed, **got})):
                break
        else:
            break
        replies.append(Reply(state, given, beside))
        passed.append((state, arrow.target))
        state, got = arrow.target, after
        if arrow is goal and not on:
            break
    return Walk(fixed, tuple(replies), tuple(passed))


def beside_where(ways: Ways, draw: Random, when: Condition, fixed: Mapping[str, Value],
                 got: Mapping[str, Value]) -> dict[str, Value] | None:
    """What may stand beside a run so that a condition holds in it; None where none was found."""
    own, read = parts_of(ways.flow.name)
    here = {name for name in ways.move_compares if name.startswith("here.")}
    free = ways.move_compares.keys() - own - ways.worked_out.keys() - fixed.keys() - read - here
    may_be, diagram = {name: values_beside(ways, name) for name in free}, ways.move_cases.of(when)
    for _ in range(50 if read - own else 1):
        beside = {**CHECKED, **drawn(ways, draw, read - own)}
        facts = ways.compiled.facts_of(beside, fixed, got)
        sets = {name: may_be[name] if name in free else frozenset((facts.get(name),)) for name in ways.move_compares}
        if chosen := ways.move_cases.model(diagram, sets):
            for name in sorted(free):
                value = draw.choice(sorted(chosen[name], key=repr))
                beside.pop(name, None)
                beside |= {} if value is None else {name: value}
            return beside
    return None


def values_beside(ways: Ways, name: str) -> Domain:
    """What a fact beside the flow may be, where only a gate looks at it too."""
    if name in ways.compares:
        return ways.whole(name)
    return frozenset((None, A_DAY, *(value for compare in ways.move_compares[name] for value in ways.sides(compare))))


class Seen(Mapping[str, Value]):
    """The same facts as ``Compiled.facts_of`` gives, each worked out when it is looked at first: a walk looks at few of them. ``before``:
    how many of the worked-out ones can be seen, from the first."""

    def __init__(self, name: str, facts: Mapping[str, Value], known: dict[int, Value | None] | None = None, before: int = 1 << 30) -> None:
        self.name, self.facts, self.known, self.before = name, facts, {} if known is None else known, before
        self.worked_out, self.places = worked_out(name)

    def get(self, name: str, default: Any = None) -> Any:
        n = self.places.get(name, self.before)
        if n < self.before:
            if n not in self.known:
                self.known[n] = self.worked_out[n].work_out(Seen(self.name, self.facts, self.known, n))
            if (value := self.known[n]) is not None:
                return value
        return self.facts.get(name, default)

    def __getitem__(self, name: str) -> Value:
        if (value := self.get(name)) is None:
            raise KeyError(name)
        return value

    def __iter__(self) -> Iterator[str]:
        return (name for name in {**self.facts, **self.places} if self.get(name) is not None)

    def __len__(self) -> int:
        return len(list(self))


@cache
def worked_out(name: str) -> tuple[list[Fact], dict[str, int]]:
    """The facts that a flow works out, in their order, and where each stands."""
    facts = [one for one in BOOK[name].flow.facts if one.of]
    return facts, {one.name: n for n, one in enumerate(facts)}


@cache
def looked_at(name: str, state: str) -> frozenset[str]:
    """The facts that the conditions of the arrows from a state look at."""
    return frozenset(one.fact for arrow in BOOK[name].leaving[state] for one in arrow.when.compares())


@cache
def parts_of(name: str) -> tuple[frozenset[str], frozenset[str]]:
    """The facts that a flow's answers and runs give, and those that its worked-out facts read."""
    ways = ways_of(name)
    return (frozenset({one for ask in ways.asks.values() for one in ways.log_names(ask, {})} | ways.compiled.stops.keys()),
            frozenset(one for names in ways.reads.values() for one in names))


@cache
def distances(name: str, target: str) -> Mapping[str, int]:
    """How many arrows a state is away from another, over the arrows that can be taken."""
    ways = ways_of(name)
    never, far = proof_of(name).never, {target: 0}
    waiting = [target]
    while waiting:
        here = waiting.pop(0)
        for source, to in ways.compiled.ways:
            if to == here and source not in far and (source, to) not in never:
                far[source] = far[here] + 1
                waiting.append(source)
    return far


def given_in(ways: Ways, state: str, draw: Random, calm: bool, suits: Mapping[str, Domain]) -> list[Value | None]:
    """The answers to try in a state, in a drawn order; first those that suit, and where ``calm``, of them the typical one."""
    stop = ways.compiled.stops.get(state)
    if isinstance(stop, Ask):
        values = answers_of(ways.flow.name, state)
        return sorted(draw.sample(values, len(values)), key=lambda value: (
            value not in suits.get(state, (value,)), calm and value != stop.kind.typical))
    return draw.sample(["done", "closed"], 2) if stop and stop.flow != PARKED else ["done"]


@cache
def answers_of(name: str, state: str) -> list[Value | None]:
    """The answers of a question, and that it is skipped where it may be."""
    ask = ways_of(name).asks[state]
    return [*ways_of(name).answers(ask), *([] if ask.safety else [SKIPPED])]


def offered(ask: Ask, given: Value | None, facts: Mapping[str, Value]) -> bool:
    """Whether a value can be given here now."""
    shut = {option.value for option in ask.kind.options if not option.only_if.holds(facts)}
    return given is None or str(given) not in shut


@cache
def said_fields(name: str) -> frozenset[str]:
    """The names of a flow's own facts that its words use."""
    steps = BOOK[name].flow.steps
    fields = (field for step in steps for part in ("say", "caution", "picture") for field in fields_of(getattr(step, part, "")))
    return frozenset(field for field in fields if "." not in field)


@cache
def walks_of(name: str) -> Mapping[tuple[str, str], Walk]:
    """For each arrow that a walk takes, a short one that does, up to that arrow; under (state, "to the end") one that
    passes the state and comes to an end."""
    ways, draw = ways_of(name), Random(name)
    wanted = set(ways.compiled.ways) - proof_of(name).never
    found: dict[tuple[str, str], Walk] = {}
    for _ in range(TRIES):
        one = walk(ways, draw, wanted - found.keys() or wanted)
        for n, arrow in enumerate(one.passed):
            if arrow not in found or len(found[arrow].passed) > n + 1:
                found[arrow] = Walk(one.fixed, one.replies[:n + 1], one.passed[:n + 1])
            if one.passed[-1][1] in (END, EARLY_END):
                found.setdefault((arrow[0], "to the end"), one)
        if wanted <= found.keys() and all((state, "to the end") in found for state in ways.compiled.stops):
            break
    return found


def walk_saying(name: str, step: Tell | Do) -> Walk | None:
    """A walk on which this step's condition holds as it is passed, up to there; None where none was found."""
    ways = ways_of(name)
    return walk_where(name, step.only_if, tuple(
        key for key, arrow in ways.compiled.ways.items() if step in arrow.passed and key not in proof_of(name).never))


@cache
def walk_where(name: str, when: Condition, by: tuple[tuple[str, str], ...]) -> Walk | None:
    """A walk up to one of these arrows, taken where a condition holds; looked for once for all steps that stand under the same."""
    ways, draw = ways_of(name), Random(name)
    for key in by:
        if (known := walks_of(name).get(key)) and when.holds(facts_after(ways, known)):
            return known
    for _ in range(TRIES if by else 0):
        one = walk(ways, draw, by, when, on=False)
        for n, (arrow, facts) in enumerate(zip(one.passed, facts_along(ways, one), strict=True), 1):
            if arrow in by and when.holds(facts):
                return Walk(one.fixed, one.replies[:n], one.passed[:n])
    return None


def facts_along(ways: Ways, one: Walk) -> Iterator[Mapping[str, Value]]:
    """The facts with which each of a walk's arrows was taken."""
    got: dict[str, Value] = {}
    for reply in one.replies:
        stop = ways.compiled.stops.get(reply.state)
        name = reply.state
        if isinstance(stop, Ask) and stop.log_as:
            name = render(stop.log_as, ways.compiled.facts_of(reply.beside, one.fixed, got), NOW, stop.side)
        got.pop(name, None)
        if reply.value is not None and stop is not None and name != "run_parked":
            got[name] = reply.value
        yield ways.compiled.facts_of(reply.beside, one.fixed, got)


def facts_after(ways: Ways, one: Walk) -> Mapping[str, Value]:
    """The facts with which a walk's last arrow was taken."""
    return list(facts_along(ways, one))[-1]


def rows_of(name: str, one: Walk, run: str, at: datetime) -> list[Row]:
    """The rows that a walk's answers would be in the log, its run done."""
    ways, rows = ways_of(name), list[Row]()
    for reply, facts in zip(one.replies, facts_along(ways, one), strict=True):
        ask = ways.compiled.stops.get(reply.state)
        if isinstance(ask, Ask):
            key = render(ask.log_as, facts, NOW, ask.side) if ask.log_as else reply.state
            method, placement = (render(text, facts, NOW, ask.side) for text in (ask.method, ask.placement))
            rows.append(Row(name, run, key, reply.value, "skipped" if reply.value is None else "ok", "done", method, placement, at))
    return rows


# the same on the engine ---------------------------------------------------------------------------------------


@cache
def alone(name: str, gated: bool = False) -> tuple[Book, dict[str, Value]]:
    """A book of one flow without its gates, or with them; the flows it runs end at once, or stay shut, or ask one thing first. With
    it the facts that the flow begins with: whoever begins it puts them there."""
    flow, fixed = BOOK[name].flow, dict[str, Value]()
    runs = {step.flow for step in flow.steps if isinstance(step, Run) and step.flow != PARKED}
    runs |= {offer.flow for offer in offers_of(flow)} | {gate.first for gate in flow.gates if gate.first} | {OTHER}
    stubs = [Flow(run, 1, run, policy=Policy.RIGHTS, gates=(Gate(fact(f"shut.{run}").is_("yes")),), command=None,
                  steps=(Ask("fine", "Fine?", Ready(), only_if=fact("asks").is_("yes")),)) for run in sorted(runs - {name})]
    if "pain" not in runs and name != "pain":
        stubs.append(PAIN)
    if "home" not in runs and name != "home":
        stubs.append(Flow("home", 1, "Menu", policy=Policy.MENU, steps=(Ask("pick", "What next?", Ready()),)))
    kept = replace(flow, gates=flow.gates if gated else (), at_start=lambda known: dict(fixed))
    return bind([kept, *stubs], "home", "pain"), fixed


TAKEN: Final[dict[tuple[str, int, tuple[int, ...]], tuple[Walk, Session, Mapping[str, Value], tuple[Effect, ...], tuple[int, ...]]]] = {}
"""Where the engine stood after the beginnings of walks, which many share: by flow and by which objects the facts and replies are. The walk
is held with them, so that these stay the same objects."""


class Replay:
    """A walk taken by the real engine. ``said`` are all messages, ``effects`` everything else too, in order; ``upto``: how many of these
    there were after each reply."""

    def __init__(self, name: str, one: Walk) -> None:
        self.ways = ways_of(name)
        self.book, fixed = alone(name)
        fixed.clear()
        fixed |= one.fixed
        self.known: dict[str, Value] = {}
        self.effects: list[Effect] = []
        self.upto: list[int] = []
        flow = self.ways.flow
        self.session = Session(stack=(Frame(flow.name, flow.version, "1"),), runs=1)
        ids = tuple(map(id, one.replies))
        at = next((n for n in range(len(ids), 0, -1) if (name, id(one.fixed), ids[:n]) in TAKEN), 0)
        if at:
            _, self.session, known, effects, upto = TAKEN[name, id(one.fixed), ids[:at]]
            self.known, self.effects, self.upto = dict(known), list(effects), list(upto)
        for n, reply in enumerate(one.replies[at:], at + 1):
            self.known = dict(reply.beside)
            self.take(reply)
            self.upto.append(len(self.effects))
            TAKEN[name, id(one.fixed), ids[:n]] = one, self.session, dict(self.known), tuple(self.effects), tuple(self.upto)

    @property
    def frame(self) -> Frame | None:
        """The flow's own frame, or None where it has ended."""
        return next((frame for frame in self.session.stack if frame.run == "1"), None)

    @property
    def ask(self) -> Ask:
        """The question that waits."""
        stop = self.ways.compiled.stops[self.session.top.state]
        assert isinstance(stop, Ask)
        return stop

    @property
    def said(self) -> list[Say]:
        return [effect for effect in self.effects if isinstance(effect, Say)]

    def send(self, event: Happening) -> None:
        """One event, without going on from where it led."""
        self.session, effects = step(self.book, self.session, event, Known(self.known, NOW))
        self.effects += effects

    def settle(self) -> None:
        """Go on to where it waits for the person, or for long where it runs in a circle: the menu shut, alone in a book."""
        for _ in range(SETTLING_MOST):
            if unsettled(self.session):
                self.send(Settle())

    def take(self, reply: Reply) -> None:
        """What a walk did in one state."""
        stop = self.ways.compiled.stops.get(reply.state)
        assert self.frame is not None
        assert self.frame.state == ("" if stop is None else reply.state)
        if isinstance(stop, Ask):
            self.give(stop, reply.value)
            return
        if isinstance(stop, Run):
            if reply.value == "closed":
                self.known[f"shut.{stop.flow}"] = "yes"
            while len(self.session.stack) > 1:
                self.send(Settle())
        self.send(Settle())

    def give(self, ask: Ask, value: Value | None) -> None:
        """Answer the waiting question with a value, by its button where it has one; None skips it."""
        self.send(self.event(ask, value))
        if self.session.aside and self.session.aside.about == "unusual":
            self.send(Typed("yes"))

    def event(self, ask: Ask, value: Value | None) -> Event:
        if isinstance(ask.kind, Media) and value is not None:
            return Sent(ask.kind.accepts[0], str(value))
        if isinstance(ask.kind, Number) and isinstance(value, float | int):
            return Typed(f"{value} {ask.kind.unit}")
        if value is not None and all(f"{value:g}" != option.value if isinstance(value, float) else value != option.value
                                     for option in ask.kind.options):
            return Typed(str(value))
        wanted = SKIP if value is None else f"{value:g}" if isinstance(value, float) else value
        flow = self.ways.flow
        return Tapped(str(Payload(flow.name, flow.version, ask.key, wanted)))
