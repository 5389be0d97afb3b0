"""Every row of every flow's table is fired by the engine, on a walk of real steps, or proved to be one that nothing can take.

The rows of an answer are walked in test_every_flow; here are the others, and that each event of each state is fired at all.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from functools import cache
from random import Random

import pytest

from companion.conversation.condition import Condition, Every, Unless, Value
from companion.conversation.events import Tapped, Typed
from companion.conversation.flow import END, Known, Run
from companion.conversation.machine import Compiled
from companion.conversation.prompt import BACK as BACK_BUTTON
from companion.conversation.prompt import SKIP as SKIP_BUTTON
from companion.conversation.prompt import STOP as STOP_BUTTON
from companion.conversation.prompt import Payload, start_payload
from companion.conversation.session import Session
from companion.conversation.step import AWAY, interrupted
from companion.conversation.table import EARLY_END, ONWARD, PAUSED, START, Move
from companion.verify.proof import Entered, decide
from companion.verify.proof import entered as entered_by
from flows.catalogue import BOOK
from tests.drive import NOW
from tests.flows import walks
from tests.flows.test_every_flow import NAMES, at
from tests.flows.walks import OTHER, Replay, Walk, alone, beside_where, offered, proof_of, values_beside, walk, walks_of, ways_of

Fired = set[Move]


@pytest.fixture
def fired(monkeypatch: pytest.MonkeyPatch) -> dict[str, Fired]:
    """Every move that the engine asks a machine for from now on, by flow; also what begins the walks of other tests is walked anew."""
    monkeypatch.setattr(walks, "TAKEN", {})
    seen: dict[str, Fired] = {}
    fire = Compiled.fire

    def seen_too(self: Compiled, event: str, state: str, facts: Mapping[str, Value]) -> Move | None:
        move = fire(self, event, state, facts)
        if move is not None:
            seen.setdefault(self.flow.name, set()).add(move)
        return move

    monkeypatch.setattr(Compiled, "fire", seen_too)
    return seen


@pytest.mark.parametrize("name", NAMES)
def test_a_move_is_made_by_the_engine_or_proved_to_be_none(name, fired):
    ways = ways_of(name)
    numbers = decide(ways, proof_of(name)).never
    rows = {row for n, row in enumerate(ways.compiled.table) if n not in numbers}
    never = set(ways.compiled.table) - rows
    for scene in scenes(name, rows):
        scene()
    wanted, draw = {row for row in rows if row.event not in ONWARD[1:]}, Random(name)
    for row in [row for row in ways.compiled.table if row in rows and row.at]:
        for _ in range(CHANCES if row not in fired[name] else 0):
            lapse_after(name, draw, row)
            if row in fired[name]:
                break
    for _ in range(CHANCES):
        if wanted <= fired[name]:
            break
        lapse_after(name, draw, draw.choice([row for row in ways.compiled.table if row in rows and row.at]))
    missing = wanted - fired[name]
    assert [told(row) for row in missing] == [], "neither made nor proved impossible"
    assert [told(row) for row in fired[name] & never] == [], "made although proved impossible"
    assert {(row.event, row.source) for row in rows} == {(row.event, row.source) for row in fired[name]}


CHANCES = 800
"""Walks drawn for what only an unlikely one comes to; a fixed draw, so always the same ones."""


def lapse_after(name: str, draw: Random, row: Move) -> None:
    """A walk by any arrow to the question that then lapses, begun with what goes with that."""
    ways = ways_of(name)
    cases, when = ways.move_cases, ways.move_cases.of(lapsing(name, row))
    (_, last), sets = draw.choice([
        (ends, facts) for ends, several in entered(name).items() if ends[0] == row.at for facts in several
        if cases.can(when, cases.masks({one: values for one, values in facts.items() if one in ways.compares}))])
    goals = [ends for ends in ways.compiled.ways if ends not in proof_of(name).never and ends[1] == row.at]
    like = {one: values_beside(ways, one) for one in ways.move_compares} | dict(sets)
    one = walk(ways, draw, [draw.choice([ends for ends in goals if ends[0] == last] or goals)], on=False,
               like=cases.model(when, like))
    if one.passed and one.passed[-1][1] == row.at:
        lapse(name, one, row)


@cache
def entered(name: str) -> Entered:
    return entered_by(ways_of(name), proof_of(name))


@cache
def lapsing(name: str, row: Move) -> Condition:
    """Holds where a question is not asked any more, and this is the first way from it that is open."""
    ways = ways_of(name)
    onward = ways.compiled.onward[row.at]
    alike = [other for other in ways.compiled.table if (other.event, other.source, other.at) == (row.event, row.source, row.at)]
    mine = alike.index(row) - 1  # the first is to the same question
    if mine < 0:
        return ways.asks[row.at].only_if
    return Every((Unless(ways.asks[row.at].only_if), *(Unless(move.when) for move in onward[:mine]), onward[mine].when))


def told(row: Move) -> str:
    return f"{row.event}: {row.source} -> {row.target} where {row.when} {row.first} {row.refused}"


def scenes(name: str, rows: Collection[Move]) -> Iterator[Callable[[], object]]:
    """What is played, for each question and for each row that wants something of its own."""
    ways = ways_of(name)
    for key in ways.asks.keys() & proof_of(name).at.keys():
        one = at(name, key)
        for what in (answer, help_, skip, again, pause_by_button, interrupt, pain, false_alarm, come_back, outside, back):
            yield lambda what=what, one=one: what(Replay(name, one))
    for (source, target), one in walks_of(name).items():
        if target in ways.asks and source == START:
            yield lambda one=one: back_before(Replay(name, one))
        if target in (END, EARLY_END):
            yield lambda one=one: back(over(Replay(name, one)))
            yield lambda one=one: over(Replay(name, one)).send(Typed("ouch, that really hurts"))
        elif target in ways.asks:
            yield lambda one=one: back(Replay(name, one))
            yield lambda one=one: pause_by_button(Replay(name, one))
            if source not in ways.asks:
                for run in (OTHER, *(stop.flow for stop in ways.compiled.stops.values() if isinstance(stop, Run))):
                    yield lambda one=one, run=run: back_into(Replay(name, one), run)
        elif target in ways.compiled.stops:
            yield lambda one=one: Replay(name, one).settle()
    for n in range(len(ways.flow.gates)):
        yield lambda n=n: begin_shut(name, n)
        for pause in (interrupt, false_alarm) if ways.asks else ():
            yield lambda n=n, pause=pause: resume_shut(name, n, pause)
    for row in ways.compiled.table:
        if row in rows and row.at and (row.at != row.target or row.passed):
            for (_, target), one in walks_of(name).items():
                if target == row.at:
                    yield lambda row=row, one=one: lapse(name, one, row)


# what is played ---------------------------------------------------------------------------------------------


def press(replay: Replay, value: str) -> Replay:
    flow = replay.ways.flow
    replay.send(Tapped(str(Payload(flow.name, flow.version, replay.session.top.state, value))))
    return replay


def answer(replay: Replay) -> None:
    frame = replay.session.top
    facts = replay.ways.compiled.facts_of(replay.known, frame.fixed, frame.got)
    replay.give(replay.ask, next(value for value in replay.ways.answers(replay.ask) if offered(replay.ask, value, facts)))


def help_(replay: Replay) -> None:
    replay.send(Typed("help"))


def again(replay: Replay) -> None:
    replay.send(Tapped("an old one"))


def skip(replay: Replay) -> None:
    press(replay, SKIP_BUTTON)


def back(replay: Replay) -> None:
    if replay.session.stack:
        press(replay, BACK_BUTTON)


def pause_by_button(replay: Replay) -> None:
    press(replay, STOP_BUTTON)
    if replay.session.aside:
        replay.send(Typed("no"))
    go_on(replay)


def interrupt(replay: Replay) -> None:
    replay.send(Tapped(start_payload(OTHER)))
    replay.settle()
    go_on(replay)


def come_back(replay: Replay) -> None:
    """Hours later, and on with it."""
    replay.session = replay.session._replace(at=(NOW - AWAY).isoformat())
    replay.send(Typed("hello"))
    if replay.session.aside:
        replay.send(Typed("go on"))
    replay.settle()


def go_on(replay: Replay) -> None:
    """From the menu or from nothing to what was parked."""
    if replay.ways.flow.name != replay.book.home:
        if replay.session.stack:
            replay.send(Typed("stop"))
        replay.send(Typed("go on"))
    replay.settle()


def pain(replay: Replay, hurt: str = "yes") -> None:
    """Told, asked about, and the run taken up."""
    if not replay.ways.flow.policy.hears_pain:
        return
    replay.send(Typed("ouch, that really hurts"))
    if replay.session.aside:
        replay.send(Typed("yes"))
    replay.known["pain.hurt"], replay.known["pain.stops"] = hurt, hurt
    replay.settle()
    while replay.session.stack and replay.session.top.flow == replay.book.pain:
        replay.send(Typed("2"))
        replay.settle()


def false_alarm(replay: Replay) -> None:
    pain(replay, "no")


def over(replay: Replay) -> Replay:
    """At the menu after a run."""
    replay.settle()
    if not replay.session.stack:
        replay.send(Typed("menu"))
        replay.settle()
    return replay


def back_into(replay: Replay, run: str) -> None:
    """Another flow is begun over a question, answered and done; then back from that question."""
    replay.known["asks"] = "yes"
    replay.known.pop(f"shut.{run}", None)
    replay.send(Tapped(start_payload(run)))
    replay.settle()
    replay.send(Typed("ready"))
    replay.settle()
    go_on(replay)
    back(replay)


def gate_shut(name: str, n: int, fixed: Mapping[str, Value], got: Mapping[str, Value]) -> dict[str, Value] | None:
    """What may stand beside a run so that this gate is the first that is shut."""
    shut = [gate.shut for gate in BOOK[name].flow.gates]
    return beside_where(ways_of(name), Random(f"{name} {n}"), Every((*map(Unless, shut[:n]), shut[n])), fixed, got)


def back_before(replay: Replay) -> None:
    """Another flow is answered and done before this one begins; then back from its first question."""
    replay.session, replay.known["asks"] = Session(), "yes"
    for event in (Tapped(start_payload(OTHER)), Typed("ready"), Tapped(start_payload(replay.ways.flow.name))):
        replay.send(event)
        replay.settle()
    back(replay)


def outside(replay: Replay) -> None:
    """Interrupted by what comes from outside a reply, such as being asked for consent again."""
    replay.session = interrupted(replay.book, replay.session, Known(replay.known, NOW))
    replay.settle()


def begin_shut(name: str, n: int) -> None:
    """Begun where a gate is shut, and stays shut after what it lets run first."""
    (book, fixed), beside = alone(name, gated=True), gate_shut(name, n, {}, {})
    assert beside is not None
    fixed.clear()
    fixed |= {one: value for one, value in beside.items() if one in ways_of(name).fixed}
    replay = Replay(name, Walk(fixed, (), ()))
    replay.book, replay.known = book, beside
    replay.settle()


def resume_shut(name: str, n: int, pause: Callable[[Replay], None]) -> None:
    """Paused, and taken up where a gate has shut meanwhile, and stays shut after what it lets run first. What was fixed when the
    run began let it begin."""
    ways = ways_of(name)
    lasting = Every(tuple(Unless(gate.shut) for gate in ways.lasting_gates))
    like = ways.move_cases.model(ways.move_cases.of(lasting), {one: values_beside(ways, one) for one in ways.move_compares})
    goals, draw = [ends for ends in ways.compiled.ways if ends not in proof_of(name).never and ends[1] in ways.asks], Random(name)
    for _ in range(CHANCES):
        one = walk(ways, draw, goals, on=False, like=like)
        replay = Replay(name, one)
        if not replay.session.stack or replay.session.top.state not in ways.asks:
            continue
        frame = replay.session.top
        fixed = {**frame.fixed, **{name: value for name, values in (like or {}).items() if name in ways.fixed - ways.compares.keys()
                                   for value in values if value is not None}}
        if (beside := gate_shut(name, n, fixed, frame.got)) is not None:
            replay.session = replay.session.with_top(frame._replace(fixed=fixed))
            replay.book, _ = alone(name, gated=True)
            replay.known = beside
            pause(replay)
            break


def lapse(name: str, one: Walk, row: Move) -> None:
    """Paused at a question that would not be asked any more when it is taken up; and back from where that leads."""
    replay, ways = Replay(name, one), ways_of(name)
    frame = replay.session.top
    beside = beside_where(ways, Random(f"{name} {row.at} {row.target}"), lapsing(name, row), frame.fixed, frame.got)
    if beside is not None:
        replay.known = beside
        (outside if row.source == PAUSED else false_alarm)(replay)
        if not (replay.session.stack and replay.session.top.state.startswith("run_")):  # a stand-in for a sub-flow never decides anything
            back(replay)
