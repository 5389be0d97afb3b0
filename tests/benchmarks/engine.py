"""One step of the conversation engine, no file and no network, against one trigger of a bare ``transitions`` machine with the same
table of arrows: the same states, the same guards, and nothing else done."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from transitions import Machine

from companion.conversation.events import Event, Tapped, Typed
from companion.conversation.flow import END, Ask, Known
from companion.conversation.machine import Compiled
from companion.conversation.prompt import Payload
from companion.conversation.session import Session
from companion.conversation.step import step, unsettled
from companion.conversation.table import ANSWER, EARLY_END, SKIP, START
from flows.catalogue import BOOK
from tests.benchmarks.measured import Row, by_turns, compare, seconds
from tests.corpus.turns import FACTS, session_at, turns
from tests.drive import NOW, Talk

FLOW = "safety_check"
TIMES = 30
"""Walks in a round."""


class Model:
    """What a bare machine moves."""

    state: str


@dataclass(frozen=True, slots=True)
class Step:
    """A question answered, and what the bare machine is given for the same: a state and the facts its guards look at."""

    session: Session
    event: Event
    known: Known
    state: str
    facts: dict[str, Any]


def walk(typed: bool) -> list[Step]:
    """A safety check from its first question to its end, each answered with "no" or what comes first: a tap, or the same typed."""
    talk = Talk(BOOK[FLOW].flow, book=BOOK)
    steps: list[Step] = []
    while talk.session.stack and talk.session.top.flow == FLOW and not unsettled(talk.session):
        ask = next(say for say in reversed(talk.says) if say.buttons)
        taps = [tap for row in ask.buttons for tap in row if "!" not in tap.data]
        tap = next((one for one in taps if one.label.startswith("No")), taps[0])
        event: Event = Typed(tap.label) if typed else Tapped(tap.data)
        before, top = talk.session, talk.session.top
        known = Known(talk.known, talk.now)
        talk.send(event)
        got = dict(talk.session.top.got) if talk.session.stack and talk.session.top.run == top.run else dict(top.got)
        steps.append(Step(before, event, known, top.state, BOOK[FLOW].facts_of(talk.known, top.fixed, {**got, top.state: "no"})))
    return steps


def bare(compiled: Compiled, model: Model, exclusive: bool = False) -> Machine:
    """What leads on, as anybody would write it with ``transitions``: a model, a trigger by name, guards. Those of the engine's own
    machine, which are asked in turn, or ``exclusive`` ones: right in any order, and longer."""
    machine = Machine(model, states=[START, *compiled.stops, END, EARLY_END], initial=START, auto_transitions=False)
    for event in (ANSWER, SKIP):
        for arrow in compiled.arrows if exclusive else (move for rows in compiled.onward.values() for move in rows):
            machine.add_transition(event, arrow.source, arrow.target, conditions=arrow.when.holds)
    return machine


def _ours(steps: Sequence[Step]) -> float:
    def all_of_them() -> None:
        for _ in range(TIMES):
            for one in steps:
                step(BOOK, one.session, one.event, one.known)
    return seconds(all_of_them) / TIMES / len(steps) * 1e6


def _theirs(steps: Sequence[Step], model: Any) -> float:
    def all_of_them() -> None:
        for _ in range(TIMES):
            for one in steps:
                model.state = one.state
                model.answer(one.facts)
    return seconds(all_of_them) / TIMES / len(steps) * 1e6


def sentences() -> tuple[list[float], list[float]]:
    """The times of a step for each seen answer in whole sentences, and of a tap at the same questions."""
    said, tapped, known = list[float](), list[float](), Known(FACTS, NOW)
    for turn in [one for one in turns("seen") if one.act == "answer"]:
        session, _ = session_at(turn.state)
        flow, key = turn.state.split("/")
        ask = BOOK[flow].stops[key]
        if isinstance(ask, Ask) and ask.kind.options:
            tap = Tapped(str(Payload(flow, BOOK[flow].flow.version, key, ask.kind.options[0].value)))
            step(BOOK, session, Typed("hmm"), known)  # what is worked out once for a question is nobody's
            said.append(seconds(partial(step, BOOK, session, Typed(turn.text), known)) * 1e6)
            tapped.append(seconds(partial(step, BOOK, session, tap, known)) * 1e6)
    return said, tapped


def rows() -> Iterator[Row]:
    """A tap, which is how nearly all answers come, and words, in which pain is listened for first."""
    taps, words, model, other = walk(typed=False), walk(typed=True), Model(), Model()
    bare(BOOK[FLOW], model)
    bare(BOOK[FLOW], other, exclusive=True)
    ours, theirs, longer, typed = by_turns(lambda: _ours(taps), lambda: _theirs(taps, model), lambda: _theirs(taps, other),
                                           lambda: _ours(words), rounds=9)
    yield compare(f"an engine step, a tap ({len(taps)} questions of the safety check)", "a bare `transitions` trigger, same table",
                  ours, theirs, "µs", "at most", 5.0)
    yield compare("the same", "a bare trigger whose guards hold in any order, as drawn", ours, longer, "µs", "told only")
    yield compare("the same, typed: pain is listened for first", "the same", typed, theirs, "µs", "told only")
    yield compare("the same, typed", "the tap", typed, ours, "µs", "at most", 3.0)
    said, tapped = sentences()
    yield compare(f"an answer in a sentence of one's own ({len(said)} seen ones), each read once", "the tap of one there", said, tapped,
                  "µs", "told only")
