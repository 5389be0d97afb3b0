"""A flow's states, each with those that may follow it and the facts that this hangs on: worked out once for a flow."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from fnmatch import fnmatchcase
from functools import cached_property

from companion.conversation.condition import ALWAYS, Condition, Fact, Value
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow
from companion.conversation.kinds import BeingRead, Choice, YesNo
from companion.conversation.table import ENDINGS, Move, Stops

Given = Mapping[str, Value | None]


class Ahead:
    """A flow's states, each with those that may follow it and the facts that this hangs on."""

    def __init__(self, flow: Flow, stops: Stops, onward: Mapping[str, Sequence[Move]]) -> None:
        self.stops, self.onward = stops, onward
        self.order = {state: n for n, state in enumerate(stops)}
        self.worked_out: Mapping[str, Fact] = {one.name: one for one in flow.facts if one.of}
        self.put = {one.name for one in flow.facts if not one.of} | {
            step.effect.name for step in flow.steps if isinstance(step, Do) and isinstance(step.effect, Find)}
        self.found: dict[tuple[str, int], list[tuple[Given, int]]] = {}
        self.follow = {state: self._following(state) for state in self.stops}
        self.whens = {state: [(when, frozenset(one.fact for one in when.compares())) for when in self._whens(state)] for state in stops}
        compared = {state: frozenset[str]().union(*(names for _, names in whens)) for state, whens in self.whens.items()}
        self.hangs_on = {state: compared[state].union(*(compared[after] for after in follow if after in compared))
                         for state, follow in self.follow.items()}
        self.kept = frozenset(state for state, stop in stops.items() if isinstance(stop, Ask) and isinstance(stop.kind, Choice | YesNo)
                              and not stop.log_as and state in self.hangs_on[state])
        self.always = {state: answers for state in self.kept if (answers := self._always(state))}
        self.told_apart = {state: self._told_apart(state) for state in self.kept}
        self.givers: dict[str, frozenset[str]] = {}

    def turns(self, source: str, target: str) -> bool:
        """True if an arrow leads back to an earlier question; a film asked for again is the same question."""
        return not self.waits(source) and self.order.get(target, len(self.order)) < self.order.get(source, -1)

    def waits(self, state: str) -> bool:
        """True if a state only waits until a film is read: it belongs to the question that asked for it."""
        stop = self.stops.get(state)
        return isinstance(stop, Ask) and isinstance(stop.kind, BeingRead)

    @cached_property
    def gives(self) -> Mapping[str, tuple[str, ...]]:
        """The facts that each state gives, as patterns of their names."""
        return {key: (re.sub(r"\{\w+\}", "*", stop.log_as or key),) if isinstance(stop, Ask) else (key, f"{stop.flow}.*")
                for key, stop in self.stops.items()}

    def giving(self, name: str) -> frozenset[str]:
        """Return the states that give a fact."""
        if name not in self.givers:
            self.givers[name] = frozenset(
                state for state, patterns in self.gives.items() if any(fnmatchcase(name, pattern) for pattern in patterns))
        return self.givers[name]

    def _following(self, state: str) -> frozenset[str]:
        reached, waiting = set[str](), {state}
        while waiting:
            waiting = {move.target for one in waiting for move in self.onward[one]} - reached - ENDINGS.keys()
            reached |= waiting
        return frozenset(reached)

    def _whens(self, state: str) -> Iterator[Condition]:
        """Yield the conditions that are looked at in a state."""
        stop = self.stops[state]
        yield from (move.when for move in self.onward[state])
        yield from (option.only_if for option in stop.kind.options) if isinstance(stop, Ask) else ()

    def _always(self, state: str) -> list[Value | None]:
        """Return the answers of a question, none where some are on offer only on a condition."""
        stop = self.stops[state]
        if not isinstance(stop, Ask) or any(option.only_if != ALWAYS for option in stop.kind.options):
            return []
        return [*(one.value for one in stop.kind.options if one.value not in stop.hurts), *([] if stop.safety else [None])]

    def _told_apart(self, state: str) -> Mapping[Value | None, tuple[bool, ...]]:
        """Return what all the conditions from a question on say of each of its answers."""
        compares = dict.fromkeys(compare for one in (state, *self.follow[state]) if one in self.stops
                                 for when, _ in self.whens[one] for compare in when.compares() if compare.fact == state)
        stop = self.stops[state]
        answers = [None, *(option.value for option in stop.kind.options)] if isinstance(stop, Ask) else []
        return {answer: tuple(one.holds({} if answer is None else {state: answer}) for one in compares) for answer in answers}
