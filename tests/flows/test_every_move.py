"""Every row of every flow's table is fired by the engine, on a walk of real steps, or proved to be one that nothing can take.

The rows of an answer are walked in test_every_flow; here are the others, and that each event of each state is fired at all.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from random import Random

import pytest

from companion.conversation.condition import Every, Unless, Value
from companion.conversation.events import Tapped, Typed
from companion.conversation.flow import END, Run
from companion.conversation.machine import Compiled
from companion.conversation.prompt import BACK as BACK_BUTTON
from companion.conversation.prompt import SKIP as SKIP_BUTTON
from companion.conversation.prompt import STOP as STOP_BUTTON
from companion.conversation.prompt import Payload, start_payload
from companion.conversation.step import AWAY
from companion.conversation.table import EARLY_END, ONWARD, PAUSED, Move
from companion.verify.proof import decide
from flows.catalogue import BOOK
from tests.drive import NOW
from tests.flows.test_every_flow import NAMES, at
from tests.flows.walks import OTHER, Replay, Walk, alone, beside_where, proof_of, walks_of, ways_of

Fired = set[Move]


@pytest.fixture
def fired(monkeypatch: pytest.MonkeyPatch) -> dict[str, Fired]:
    """Every move that the engine asks a machine for from now on, by flow."""
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
    never = {ways.compiled.table[n] for n in decide(ways, proof_of(name)).never}
    for scene in scenes(name, set(ways.compiled.table) - never):
        scene()
    missing = {row for row in ways.compiled.table if row.event not in ONWARD[1:]} - fired[name] - never
    assert [told(row) for row in missing] == [], "neither made nor proved impossible"
    assert [told(row) for row in fired[name] & never] == [], "made although proved impossible"
    assert {(row.event, row.source) for row in ways.compiled.table if row not in never} <= {
        (row.event, row.source) for row in fired[name]} | {(row.event, row.source) for row in never}


def told(row: Move) -> str:
    return f"{row.event}: {row.source} -> {row.target} where {row.when} {row.first} {row.refused}"


def scenes(name: str, rows: Collection[Move]) -> Iterator[Callable[[], object]]:
    """What is played, for each question and for each row that wants something of its own."""
    ways = ways_of(name)
    for key in ways.asks.keys() & proof_of(name).at.keys():
        one = at(name, key)
        for what in (help_, skip, again, stop, interrupt, pain, false_alarm, come_back, back):
            yield lambda what=what, one=one: what(Replay(name, one))
    for (source, target), one in walks_of(name).items():
        if target in (END, EARLY_END):
            yield lambda one=one: back(over(Replay(name, one)))
            yield lambda one=one: over(Replay(name, one)).send(Typed("ouch, that really hurts"))
        elif target in ways.asks:
            yield lambda one=one: back(Replay(name, one))
            yield lambda one=one: stop(Replay(name, one))
            if source not in ways.asks:
                for run in (OTHER, *(stop.flow for stop in ways.compiled.stops.values() if isinstance(stop, Run))):
                    yield lambda one=one, run=run: back_into(Replay(name, one), run)
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


def help_(replay: Replay) -> None:
    replay.send(Typed("help"))


def again(replay: Replay) -> None:
    replay.send(Tapped("an old one"))


def skip(replay: Replay) -> None:
    press(replay, SKIP_BUTTON)


def back(replay: Replay) -> None:
    if replay.session.stack:
        press(replay, BACK_BUTTON)


def stop(replay: Replay) -> None:
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
    replay.known["pain.hurt"] = hurt
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
    """Paused, and taken up where a gate has shut meanwhile, and stays shut after what it lets run first."""
    replay = Replay(name, at(name, next(key for key in ways_of(name).asks if key in proof_of(name).at)))
    frame, looked_at = replay.session.top, ways_of(name).compares
    kept = {one: value for one, value in frame.fixed.items() if one in looked_at or one not in ways_of(name).move_compares}
    beside = gate_shut(name, n, kept, frame.got)
    if beside is not None:
        fixed = {one: value for one, value in beside.items() if one in frame.fixed.keys() | ways_of(name).at_start.keys()}
        replay.session = replay.session.with_top(frame._replace(fixed={**kept, **fixed}))
        replay.book, _ = alone(name, gated=True)
        replay.known = beside
        pause(replay)


def lapse(name: str, one: Walk, row: Move) -> None:
    """Paused at a question that would not be asked any more when it is taken up; and back from where that leads."""
    replay, ways = Replay(name, one), ways_of(name)
    frame, onward = replay.session.top, ways.compiled.onward[row.at]
    alike = [other for other in ways.compiled.table if (other.event, other.source, other.at) == (row.event, row.source, row.at)]
    mine = alike.index(row) - 1  # the first is to the same question
    when = Every((Unless(ways.asks[row.at].only_if), *(Unless(move.when) for move in onward[:mine]), onward[mine].when))
    beside = beside_where(ways, Random(f"{name} {row.at} {row.target}"), when, frame.fixed, frame.got)
    if beside is not None:
        replay.known = beside
        (interrupt if row.source == PAUSED else false_alarm)(replay)
        back(replay)
