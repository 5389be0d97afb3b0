"""A flow compiled to one shared ``transitions`` machine: complete and exclusive arrows from the order of its steps.

The machine has no model; a cursor with a ``state`` is passed to each trigger. Skipping takes the same arrows as
answering, with the fact missing. Every question also answers pain, stop, back, again and help, without naming them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final

from transitions import Machine

from companion.conversation.condition import ALWAYS, Condition, Every, Facts, Unless, Value
from companion.conversation.flow import EARLY_END, END, Ask, Do, Flow, Jump, Run, Tell

START: Final = "start"
ONWARD: Final = ("answer", "skip")
EVERYWHERE: Final = ("pain", "stop", "back", "again", "help")


@dataclass(frozen=True, slots=True)
class Arrow:
    """One way from a state to the next: taken when ``when`` holds. ``passed`` are the steps on the way that only say
    or note something, each with its own condition. ``next_in_turn`` is enough to look at where no earlier arrow was taken."""

    source: str
    target: str
    when: Condition
    passed: tuple[Tell | Do, ...]
    next_in_turn: Condition


@dataclass(slots=True)
class _Cursor:
    state: str


@dataclass(frozen=True)
class Compiled:
    """A flow with its arrows and its machine. Build with ``compile_flow``; shared by every lifter."""

    flow: Flow
    arrows: tuple[Arrow, ...]
    stops: Mapping[str, Ask | Run] = field(default_factory=dict)

    @cached_property
    def machine(self) -> Machine:
        """The compiled ``transitions.Machine``: model-less, no automatic transitions."""
        machine = Machine(model=None, states=[START, *self.stops, END, EARLY_END], initial=START, auto_transitions=False)
        for arrow in self.arrows:
            for event in ONWARD:
                machine.add_transition(event, arrow.source, arrow.target, conditions=arrow.next_in_turn.holds)
        for event in EVERYWHERE:
            machine.add_transition(event, list(self.stops) or START, None)
        return machine

    @cached_property
    def ways(self) -> Mapping[tuple[str, str], Arrow]:
        """Arrows by (source, target); one each, by construction."""
        return {(arrow.source, arrow.target): arrow for arrow in self.arrows}

    def onward(self, state: str, facts: Facts, event: str = "answer") -> Arrow:
        """The arrow taken from a state under these facts."""
        cursor = _Cursor(state)
        self.machine.events[event].trigger(cursor, facts)
        return self.ways[state, cursor.state]

    @cached_property
    def leaving(self) -> Mapping[str, tuple[Arrow, ...]]:
        """The arrows out of each state."""
        return {state: tuple(arrow for arrow in self.arrows if arrow.source == state) for state in (START, *self.stops)}

    def coming(self, state: str, known: Facts) -> int:
        """About how many questions follow a state, if the answers are the typical ones."""
        facts, seen = dict(known), {state}
        count = 0
        while True:
            stop = self.stops[state]
            if isinstance(stop, Ask) and stop.key not in facts:
                alike = [facts[key] for key, other in self.stops.items()
                         if key in facts and isinstance(other, Ask) and other.kind == stop.kind] if stop.kind.unit else ()
                facts[stop.key] = alike[-1] if alike else stop.kind.typical
            self._work_out(facts, only_missing=True)
            for arrow in self.leaving[state]:
                if arrow.next_in_turn.holds(facts):
                    state = arrow.target
                    break
            if state in (END, EARLY_END) or state in seen:
                return count
            seen.add(state)
            count += isinstance(self.stops[state], Ask)

    def facts_of(self, known: Facts, fixed: Mapping[str, Value], got: Mapping[str, Value]) -> dict[str, Value]:
        """Everything a condition or a template may name: known, fixed at the start, answered, worked out, in order."""
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


def _onward_rows(flow: Flow, at: int) -> Iterator[tuple[str, Condition, tuple[Tell | Do, ...]]]:
    """From just after step ``at``: each target with its guard and what is passed, in order; the last always holds."""
    passed: list[Tell | Do] = []
    for step in flow.steps[at + 1:]:
        if isinstance(step, Ask | Run):
            yield step.key, step.only_if, tuple(passed)
            if step.only_if == ALWAYS:
                return
        else:
            passed.append(step)
    yield END, ALWAYS, tuple(passed)


def _arrows(flow: Flow) -> Iterator[Arrow]:
    places = {START: -1} | {step.key: i for i, step in enumerate(flow.steps) if isinstance(step, Ask | Run)}
    for source, at in places.items():
        step = flow.steps[at] if at >= 0 else None
        rows = [*(_jump_row(jump) for jump in (step.then if isinstance(step, Ask) else ())), *_onward_rows(flow, at)]
        earlier: tuple[Condition, ...] = ()
        merged: dict[str, Arrow] = {}
        for target, when, passed in rows:
            alone = Every((*(Unless(before) for before in earlier), when)) if earlier else when
            if target in merged:  # two rows to one place: one arrow, taken when either holds
                if merged[target].passed != passed:
                    raise ValueError(f"{flow.name}: {source} reaches {target} in two ways that say different things")
                alone = merged[target].when | alone
            merged[target] = Arrow(source, target, alone, passed, alone if target in merged else when)
            earlier = (*earlier, when)
        yield from merged.values()


def _jump_row(jump: Jump) -> tuple[str, Condition, tuple[Tell | Do, ...]]:
    said = (Tell(jump.say, must_arrive=jump.must_arrive),) if jump.say else ()
    return EARLY_END if jump.to == END else jump.to, jump.when, said


def compile_flow(flow: Flow) -> Compiled:
    """The compiled form of a flow. Raises ValueError where a state's name is used twice or a jump leads nowhere."""
    stops: dict[str, Ask | Run] = {}
    for step in flow.steps:
        if isinstance(step, Ask | Run):
            if step.key in stops or step.key in (START, END, EARLY_END):
                raise ValueError(f"{flow.name}: the state {step.key} is there twice")
            stops[step.key] = step
    for stop in stops.values():
        for jump in stop.then if isinstance(stop, Ask) else ():
            if jump.to not in stops and jump.to != END:
                raise ValueError(f"{flow.name}: {stop.key} jumps to {jump.to}, which is not there")
    return Compiled(flow, tuple(_arrows(flow)), stops)
