"""A second opinion: each flow as SCXML, run by another interpreter, takes the same way as the compiled machine.

The interpreter is python-statemachine's, after the W3C recommendation State Chart XML 1.0 (2015): transitions are tried
in document order. It shares no line with ``transitions``, and the document is not written from the compiled arrows.
"""

from __future__ import annotations

from functools import cache
from random import Random
from types import SimpleNamespace
from xml.etree import ElementTree

import pytest
from statemachine.io import load

from companion.conversation.condition import Compare, Condition, Every, Fact, Some, Unless, fact
from companion.conversation.flow import END, PARKED, Ask, Flow, Jump
from companion.conversation.flow import Run as RunOther
from companion.conversation.kinds import Ready
from companion.conversation.machine import Compiled, compile_flow
from companion.conversation.table import (
    ANSWER,
    AT_QUESTION,
    BACK,
    BEGIN,
    EARLY_END,
    ENDED,
    GOES_ON,
    IN_PAIN,
    LAST_ANSWERED,
    PAUSED,
    RETURNED,
    SKIP,
    START,
)
from companion.verify.domains import step_of
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.table import each_row
from tests.verify.scxml import ASKING, NAMESPACE, datum, expression, name_of, scxml

WALKS = 8 if BY_NIGHT else 2
"""Random event sequences a flow; each starts where the one before has not been, in the fixed order of its seed."""

STEPS_MOST = 120


@cache
def interpreter(flow: str):
    return load(scxml(BOOK[flow].flow), format="scxml", name=flow)


def compares_of(compiled: Compiled) -> dict[str, list[Compare]]:
    by_fact: dict[str, list[Compare]] = {}
    for row in compiled.table:
        for compare in row.when.compares():
            by_fact.setdefault(compare.fact, []).append(compare)
    return by_fact


def values_of(compiled: Compiled, compares: list[Compare]) -> list[float | str]:
    """What a fact may be: each side of each bound, or each value it is held against and one it is not."""
    step = step_of(compiled, compares[0].fact)
    values: list[float | str] = []
    for compare in compares:
        if isinstance(compare.bound, tuple):
            values += [*compare.bound, "something else"]
        elif compare.bound is not None:
            values += [compare.bound - step, compare.bound, compare.bound + step]
    return values or ["something"]


def drawn_facts(draw: Random, compiled: Compiled) -> dict[str, float | str]:
    there = draw.random()
    return {name: draw.choice(values_of(compiled, compares)) for name, compares in compares_of(compiled).items()
            if not name.startswith("here.") and draw.random() < there}


class Run:
    """A run on the compiled machine alone: its state, and the question it was paused at and the questions answered, by which moves
    are decided too."""

    def __init__(self, compiled: Compiled) -> None:
        self.compiled, self.state, self.at, self.trail = compiled, START, "", list[str]()

    def here(self, draw: Random) -> dict[str, str]:
        """What is the case in this run, and what may be: what has just ended, a flow tried before, whether nothing hurt."""
        tried = {name: "yes" for name in compares_of(self.compiled) if name.startswith("here.tried_") and draw.random() < 0.5}
        flows = [stop.flow for stop in self.compiled.stops.values() if isinstance(stop, RunOther)]
        return tried | {AT_QUESTION.name: self.at} | ({LAST_ANSWERED.name: self.trail[-1]} if self.trail else {}) | (
            {ENDED.name: draw.choice([*flows, "something_else"])} if not self.trail and draw.random() < 0.5 else {}) | (
            {GOES_ON.name: "yes"} if draw.random() < 0.7 else {})

    def take(self, event: str, facts: dict[str, float | str]) -> str:
        """Make the move, and keep what the engine keeps of it; return the hold that was broken off, if one was."""
        move = self.compiled.fire(event, self.state, facts)
        assert move is not None, (event, self.state, facts)
        stop = self.compiled.stops.get(move.source)
        if event in (ANSWER, SKIP) and not move.refused:
            self.trail.append(move.source)
        elif event == BACK and self.trail and not move.refused:
            assert self.trail.pop() == move.target
        elif event == BEGIN or (event == RETURNED and isinstance(stop, RunOther) and stop.flow != PARKED):
            self.trail = []
        if move.again:
            assert self.trail.pop() == move.again
            self.state = move.again
        self.at = self.state if move.target in (PAUSED, IN_PAIN) and self.state in self.compiled.stops else self.at
        self.state = move.target
        return move.again


@pytest.mark.parametrize("flow", BOOK.flows)
def test_both_interpreters_go_the_same_way_on_the_same_events(flow):
    for seed in range(WALKS):
        go_the_same_way(flow, seed)


def go_the_same_way(flow: str, seed: int) -> None:
    draw, compiled = Random(f"{flow} {seed}"), BOOK[flow]
    names, ours, theirs = {datum(name): None for name in compares_of(compiled)}, Run(compiled), interpreter(flow)()
    for _ in range(STEPS_MOST):
        events = sorted({row.event for row in compiled.table if row.source == ours.state})
        if not events or (ours.state in (END, EARLY_END) and not ours.trail):
            break
        event = draw.choice([*events, *(ANSWER,) * 6 * (ANSWER in events)])
        facts = drawn_facts(draw, compiled) | ours.here(draw)
        broken_off = ours.take(event, facts)
        if broken_off:  # to the other interpreter a stop just after a hold is a step back and a stop
            theirs.send("back", SimpleNamespace(**names | {datum(name): value for name, value in facts.items()}))
        theirs.send(event, SimpleNamespace(**names | {datum(name): value for name, value in facts.items()}))
        assert {state.id for state in theirs.configuration} - {ASKING} == {name_of(ours.state)}, (seed, event, facts)


def test_a_jump_that_stands_too_low_would_be_seen():
    """The two only agree where the order of the jumps is kept: turned round, the second interpreter differs."""
    first, second = Jump(fact("a").known, "c"), Jump(fact("a").is_("x"), "b")
    def built(*jumps: Jump) -> Flow:
        return Flow("one", 1, "One", steps=(Ask("a", "A?", Ready(), then=jumps), Ask("b", "B?", Ready()), Ask("c", "C?", Ready())))
    machine = load(scxml(built(second, first)), format="scxml", name="turned")()
    machine.send("begin", SimpleNamespace(f_a=None))
    machine.send("answer", SimpleNamespace(f_a="x"))
    assert {state.id for state in machine.configuration} == {ASKING, "q_b"}
    move = compile_flow(built(first, second)).fire(ANSWER, "a", {"a": "x"})
    assert move is not None
    assert move.target == "c"


@each_row("flow", BOOK.flows)
def test_the_document_is_well_formed_and_names_only_states_it_has(flow):
    root = ElementTree.fromstring(scxml(BOOK[flow].flow))
    assert root.tag == f"{{{NAMESPACE}}}scxml"
    states = {state.get("id") for kind in ("state", "final", "history") for state in root.iter(f"{{{NAMESPACE}}}{kind}")}
    assert {START, END, EARLY_END, *map(name_of, BOOK[flow].stops)} <= states
    assert {way.get("target", END) for way in root.iter(f"{{{NAMESPACE}}}transition")} <= states


@each_row("flow", BOOK.flows)
def test_no_two_facts_of_a_flow_share_a_name_in_the_document(flow):
    names = list(compares_of(BOOK[flow]))
    assert len({datum(name) for name in names}) == len(names)


@each_row("condition", [
    fact("n") >= 1.9, fact("n") < 1.9, ~(fact("n") <= 2), fact("t").is_("x"), ~fact("t").one_of("x", "y"), fact("t").known,
    ~fact("n").known, Every(), Some(()), Unless(Every()), (fact("n") > 1) & fact("t").is_("x") | ~fact("t").known])
def test_an_expression_means_what_its_condition_means(condition):
    text = expression(condition).replace("&&", "and").replace("||", "or").replace("null", "None").replace(
        "false", "False").replace("true", "True")
    for facts in ({}, {"n": 1.8}, {"n": 1.9}, {"n": 2.0, "t": "x"}, {"t": "y"}, {"n": 0.0, "t": ""}):
        wide = SimpleNamespace(**{datum(name): facts.get(name) for name in ("n", "t")})
        assert eval(text, {"_event": SimpleNamespace(data=wide)}) is condition.holds(facts), facts


def test_what_is_no_condition_has_no_expression():
    with pytest.raises(TypeError, match="not a condition"):
        expression(Condition())
    assert datum(Fact("safety.level").name) == "f_safety__level"
