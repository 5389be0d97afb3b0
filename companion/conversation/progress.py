"""The most questions a run may still ask: the longest way from here that its answers so far leave open.

It does not grow while a run goes on. Each choice is followed into every answer on offer; a condition on what is not known yet may go either
way; a question may come again at once without counting twice, and so may a film that is to be sent again; any other way back is taken once
at most, which the flows keep to.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from fnmatch import fnmatchcase
from functools import cached_property
from itertools import pairwise
from typing import Final

from companion.conversation.condition import Compare, Condition, Every, Fact, Facts, Some, Unless, Value
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow
from companion.conversation.kinds import BeingRead, Choice, YesNo
from companion.conversation.session import Frame
from companion.conversation.table import ENDINGS, Move, Stops

WAYS_BACK: Final = 1
"""Times that a run may lead back to an earlier question."""

OUTCOMES_KEPT: Final = 8
"""Most answers kept for one question, each with the facts that it hung on: nearly everybody's are the same."""

Given = Mapping[str, Value | None]


def left(ahead: Ahead, frame: Frame, facts: Facts) -> int:
    """Return the most questions still to be answered, the open one included, and those asked again because readings differ."""
    state, turned = frame.state, sum(ahead.turns(*pair) for pair in pairwise((*frame.trail, frame.state)))
    found = ahead.found.setdefault((state, turned), [])
    for read, most in found:
        if all(facts.get(name) == value for name, value in read.items()):
            return most
    before = {key: facts.get(key) for key in frame.trail if key in ahead.follow[state] and key != state}
    read = dict(before)
    here = _Ways(ahead, facts, state, before, read)
    ways = [_Ways(ahead, facts, state, given, read) for given in here.answered(state, before)]
    found.insert(0, (read, 1 + max(way.on(state, way.given, WAYS_BACK - turned) for way in ways)))
    del found[OUTCOMES_KEPT:]
    return found[0][1]


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
        compared = {state: frozenset(one.fact for one in self._compared(state)) for state in self.stops}
        self.hangs_on = {state: compared[state].union(*(compared[after] for after in follow if after in compared))
                         for state, follow in self.follow.items()}

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

    def _following(self, state: str) -> frozenset[str]:
        reached, waiting = set[str](), {state}
        while waiting:
            waiting = {move.target for one in waiting for move in self.onward[one]} - reached - ENDINGS.keys()
            reached |= waiting
        return frozenset(reached)

    def _compared(self, state: str) -> Iterator[Compare]:
        for move in self.onward[state]:
            yield from move.when.compares()
        stop = self.stops[state]
        for option in stop.kind.options if isinstance(stop, Ask) else ():
            yield from option.only_if.compares()


class _NotYet(Exception):
    """A fact that is not known yet was read."""


class _Reading(Mapping[str, Value]):
    """The facts as a computed one reads them: one that is still to come raises ``_NotYet``."""

    def __init__(self, ways: _Ways, given: Given) -> None:
        self.ways, self.given = ways, given

    def __getitem__(self, name: str) -> Value:
        value = self.ways.value(name, self.given)
        if value is None:
            raise KeyError(name)
        return value

    def __iter__(self) -> Iterator[str]:
        raise _NotYet

    def __len__(self) -> int:
        raise _NotYet


class _Ways:
    """The ways from one question on. ``given``: answers that stand until their questions are asked again; ``read``: takes up every fact
    that the outcome hangs on."""

    def __init__(self, ahead: Ahead, facts: Facts, state: str, given: Given, read: dict[str, Value | None]) -> None:
        self.ahead, self.facts, self.given, self.read = ahead, facts, given, read
        self.found: dict[tuple[str, int, frozenset[tuple[str, Value | None]]], int] = {}
        self.open: dict[str, bool] = {}
        self.to_come = frozenset[str]() if state in given else frozenset((state,))
        while (reached := self.to_come | self._reached(state)) != self.to_come:
            self.to_come, self.open = reached, {}

    def _reached(self, start: str) -> frozenset[str]:
        """Return the states that may follow one, if those found so far may have been answered in any way."""
        reached, waiting = set[str](), [start]
        given = {name: value for name, value in self.given.items() if name not in self.to_come}
        while waiting:
            for target in [move.target for move in self._open_to(waiting.pop(), given)]:
                if target not in ENDINGS and target not in reached:
                    reached.add(target)
                    waiting.append(target)
        return frozenset(reached)

    def _open_to(self, state: str, given: Given) -> Iterator[Move]:
        """Yield the moves out of a state that may be made."""
        for move in self.ahead.onward[state]:
            if (may := self._may(move.when, given)) is not False:
                yield move
            if may:
                return

    def most(self, state: str, given: Given, turns: int) -> int:
        """Return the most questions from a state on, if these facts were given by then."""
        hangs_on = self.ahead.hangs_on[state]
        given = {name: value for name, value in given.items() if name in hangs_on and name != state}
        place = state, turns, frozenset(given.items())
        if place not in self.found:
            counts = isinstance(self.ahead.stops[state], Ask) and not self.ahead.waits(state)
            self.found[place] = counts + max(
                self.on(state, way, turns) for way in self.answered(state, given))
        return self.found[place]

    def answered(self, state: str, given: Given) -> list[Given]:
        """Return what is given once a state was answered, in each way that makes a difference."""
        ask = self.ahead.stops[state]
        if not isinstance(ask, Ask) or ask.log_as or state not in self.ahead.hangs_on[state] or not isinstance(ask.kind, Choice | YesNo):
            return [given]
        offered: list[Value | None] = [option.value for option in ask.kind.options
                                       if option.value not in ask.hurts and self._may(option.only_if, given) is not False]
        return [{**given, state: answer} for answer in (offered if ask.safety else [*offered, None])] or [given]

    def on(self, state: str, given: Given, turns: int) -> int:
        """Return the most questions after a state, if these facts were given by then."""
        return max((self._along(move, given, turns) for move in self._open_to(state, given)), default=0)

    def _along(self, move: Move, given: Given, turns: int) -> int:
        back = self.ahead.turns(move.source, move.target)
        earlier = self.ahead.order.get(move.target, len(self.ahead.order)) < self.ahead.order[move.source]
        again = move.target == move.source or (earlier and self.ahead.waits(move.source))
        if move.target in ENDINGS or again or (back and not turns):
            return 0
        return self.most(move.target, given, turns - back)

    def _may(self, when: Condition, given: Given) -> bool | None:
        """Return whether a condition holds, None where that is not known yet."""
        if isinstance(when, Compare):
            try:
                value = self.value(when.fact, given)
            except _NotYet:
                return None
            return when.holds({} if value is None else {when.fact: value})
        if isinstance(when, Unless):
            inner = self._may(when.part, given)
            return None if inner is None else not inner
        assert isinstance(when, Every | Some)
        decides, open_yet = isinstance(when, Some), False
        for part in when.parts:
            if (may := self._may(part, given)) is decides:
                return decides
            open_yet |= may is None
        return None if open_yet else not decides

    def value(self, name: str, given: Given) -> Value | None:
        """Return a fact's value, None if it has none for good. Raises _NotYet where it is still to come."""
        if name in given:
            return given[name]
        if name in self.ahead.worked_out:
            one = self.ahead.worked_out[name]
            assert one.of is not None
            try:
                return one.of(_Reading(self, given), one.side)
            except KeyError:
                return None
        if name not in self.open:
            self.read[name] = self.facts.get(name)
            self.open[name] = any(fnmatchcase(name, pattern) for state in self.to_come for pattern in self.ahead.gives[state]) or (
                name in self.ahead.put and name not in self.facts)
        if self.open[name]:
            raise _NotYet
        return self.facts.get(name)
