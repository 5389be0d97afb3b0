"""A flow compiled to one shared ``transitions`` machine, which decides every move of the flow's table.

The machine has no model; a cursor is passed to each trigger and returns with the row that was taken. Its states are flat. Nested ones
(``HierarchicalMachine``: one composite state for all questions, so one arrow for "pain" instead of one each) were measured on the safety
check: 36 µs a trigger against 6 µs, more than half of a whole engine step, and the library has no history state to resume at. So ``paused``
and ``in_pain`` are states beside the questions, and the question to resume at is a fact (``table.AT``).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from transitions import EventData, Machine, Transition

from companion.conversation.ahead import Ahead
from companion.conversation.condition import ALWAYS, Condition, Every, Facts, Unless, Value
from companion.conversation.flow import END, Ask, Do, Flow, Tell
from companion.conversation.table import EARLY_END, ENDINGS, IN_PAIN, PAUSED, START, Move, Stops, onward, stops_of, table


@dataclass(frozen=True, slots=True)
class Arrow:
    """A transition from a state after its answer, taken exactly if ``when`` holds, whatever the order of the arrows. ``passed``: the
    messages and effects on the way, each with its own condition."""

    source: str
    target: str
    when: Condition
    passed: tuple[Tell | Do, ...]


@dataclass(slots=True)
class _Cursor:
    state: str
    move: Move | None = None


class _Row(Transition):
    """A transition that stores its row of the table in the cursor."""

    def __init__(self, *arguments: Any, row: Move, **more: Any) -> None:
        super().__init__(*arguments, **more)
        self.row = row

    def _change_state(self, event_data: EventData) -> None:
        super()._change_state(event_data)
        cursor = event_data.model
        assert isinstance(cursor, _Cursor)
        cursor.move = self.row


class _Machine(Machine):
    transition_cls = _Row


@dataclass(frozen=True)
class Compiled:
    """A flow with its table and its machine, shared by all lifters. Built with ``compile_flow``."""

    flow: Flow
    stops: Stops

    @cached_property
    def table(self) -> tuple[Move, ...]:
        """Every move of the flow; the machine has these and no others."""
        return table(self.flow, self.stops)

    @cached_property
    def machine(self) -> Machine:
        """The ``transitions.Machine``: no model, no automatic transitions."""
        machine = _Machine(model=None, states=[START, *self.stops, PAUSED, IN_PAIN, *ENDINGS], initial=START, auto_transitions=False)
        for row in self.table:
            machine.add_transition(row.event, row.source, row.target, conditions=None if row.when == ALWAYS else row.when.holds, row=row)
        return machine

    def fire(self, event: str, state: str, facts: Facts) -> Move | None:
        """Return the move the machine makes on an event in a state, None where it makes none."""
        cursor, rows = _Cursor(state), self.machine.events.get(event)
        if rows is not None and state in rows.transitions:
            rows.trigger(cursor, facts)
        return cursor.move

    @cached_property
    def onward(self) -> Mapping[str, Sequence[Move]]:
        """The moves out of each state after its answer, in the order to try."""
        return onward(self.flow)

    def reached(self, state: str) -> set[str]:
        """Return the states that can still follow a state."""
        reached, waiting = set[str](), {state}
        while waiting:
            ahead = {move.target for one in waiting for move in self.onward.get(one, ())}
            waiting = ahead - reached
            reached |= ahead
        return reached

    def moves_after(self, state: str) -> bool:
        """True if the flow still asks for a movement after a state."""
        return any(isinstance(stop := self.stops.get(one), Ask) and stop.caution for one in self.reached(state))

    @cached_property
    def ahead(self) -> Ahead:
        """The states that may follow each state, for the number of questions left."""
        return Ahead(self.flow, self.stops, self.onward)

    @cached_property
    def arrows(self) -> tuple[Arrow, ...]:
        """The same as arrows whose conditions exclude each other. Raises ValueError where two moves to the same place pass different
        steps."""
        return tuple(arrow for rows in self.onward.values() for arrow in _exclusive(self.flow, rows))

    @cached_property
    def ways(self) -> Mapping[tuple[str, str], Arrow]:
        """The arrows by (source, target); one each."""
        return {(arrow.source, arrow.target): arrow for arrow in self.arrows}

    @cached_property
    def leaving(self) -> Mapping[str, tuple[Arrow, ...]]:
        """The arrows out of each state."""
        return {state: tuple(arrow for arrow in self.arrows if arrow.source == state) for state in (START, *self.stops)}

    def coming(self, state: str, known: Facts) -> int:
        """Return the approximate number of questions after a state, if the answers are the typical ones."""
        facts, seen = dict(known), {state}
        count = 0
        while True:
            stop = self.stops[state]
            if isinstance(stop, Ask) and stop.key not in facts:
                alike = [facts[key] for key, other in self.stops.items()
                         if key in facts and isinstance(other, Ask) and other.kind == stop.kind] if stop.kind.unit else ()
                facts[stop.key] = alike[-1] if alike else stop.kind.typical
            self._work_out(facts, only_missing=True)
            state = next(move.target for move in self.onward[state] if move.when.holds(facts))
            if state in (END, EARLY_END) or state in seen:
                return count
            seen.add(state)
            count += isinstance(self.stops[state], Ask)

    def facts_of(self, known: Facts, fixed: Mapping[str, Value], got: Mapping[str, Value]) -> dict[str, Value]:
        """Return all facts for conditions and templates: those known, fixed at the start, answered, and computed, in that order."""
        facts = {**known, **fixed, **got}
        self._work_out(facts)
        return facts

    @cached_property
    def _worked_out(self) -> tuple[tuple[str, Callable[[Facts, str], Value | None], str], ...]:
        return tuple((one.name, one.of, one.side) for one in self.flow.facts if one.of is not None)

    def _work_out(self, facts: dict[str, Value], only_missing: bool = False) -> None:
        for name, of, side in self._worked_out:
            if only_missing and name in facts:
                continue
            try:
                value = of(facts, side)
            except KeyError:  # one of the facts it needs is missing
                continue
            if value is not None:
                facts[name] = value


def _exclusive(flow: Flow, rows: Sequence[Move]) -> Iterator[Arrow]:
    earlier: tuple[Condition, ...] = ()
    merged: dict[str, Arrow] = {}
    for row in rows:
        alone = Every((*(Unless(before) for before in earlier), row.when)) if earlier else row.when
        if row.target in merged:  # two rows to one place: one arrow, taken when either holds
            if merged[row.target].passed != row.passed:
                raise ValueError(f"{flow.name}: {row.source} reaches {row.target} in two ways that say different things")
            alone = merged[row.target].when | alone
        merged[row.target] = Arrow(row.source, row.target, alone, row.passed)
        earlier = (*earlier, row.when)
    yield from merged.values()


def compile_flow(flow: Flow) -> Compiled:
    """Return a flow compiled. Raises ValueError where a state's name is used twice or a jump leads nowhere."""
    return Compiled(flow, stops_of(flow))
