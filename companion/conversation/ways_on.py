"""The ways on from a question, over all answers that may still be given, and the most questions on one of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from enum import Enum
from typing import NamedTuple

from companion.conversation.ahead import Ahead, Given
from companion.conversation.condition import Compare, Condition, Every, Fact, Facts, Some, Unless, Value
from companion.conversation.flow import Ask
from companion.conversation.table import ENDINGS, Move


class _NotYet(Exception):
    """A fact that is not known yet was read."""


class _Reading(Mapping[str, Value]):
    """The facts as a computed one reads them: one that is still to come raises ``_NotYet``."""

    def __init__(self, ways: WaysOn, given: Given) -> None:
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


class _Mark(Enum):
    NOT_YET = "in place of the value of a fact that is not known yet"
    ABSENT = "in place of an answer that is not among those given"


class _Fork(NamedTuple):
    """An answer that a computed fact reads, with what comes of each."""

    name: str
    branches: dict[_Known, _Fork | _Known]


_Known = Value | None | _Mark
_May = bool | None
"""Whether a condition holds; None where that is not known yet."""
_Rest = _May | Callable[[Given], _May]
"""The same, or what is left of a condition once all is put in that hangs on none of the answers that may be given."""


class WaysOn:
    """The ways from one question on. ``given``: answers that stand until their questions are asked again; ``read``: takes up every fact
    that the outcome hangs on."""

    def __init__(self, ahead: Ahead, facts: Facts, state: str, given: Given, read: dict[str, Value | None]) -> None:
        self.ahead, self.facts, self.given, self.read = ahead, facts, given, read
        self.givable = ahead.kept | given.keys()
        self.found: dict[tuple[str, int, frozenset[tuple[str, Value | None]]], int] = {}
        self.reading: dict[str, _Known] | None = None
        self.to_come = set() if state in given else {state}
        while not self._reach(state):
            pass

    def _reach(self, start: str) -> bool:
        """Find the states that may follow one, if those found so far may have been answered in any way. Return whether that is all: not
        where something was looked at that turned out to be still to come."""
        self.beside: dict[str, _Known] = {}
        self.tried: dict[_Known, _Fork | _Known] = {}
        self.rests: dict[int, _Rest] = {}
        self.onward: dict[str, list[tuple[Move, _Rest]]] = {}
        self.hang: dict[str, frozenset[str] | None] = {}
        self.hang_at: dict[str, frozenset[str]] = {}
        given = {name: value for name, value in self.given.items() if name not in self.to_come}
        reached, waiting = set[str](), [start]
        while waiting:
            waiting.sort(key=self.ahead.order.__getitem__, reverse=True)
            for target in [move.target for move in self._open_to(waiting.pop(), given)]:
                if target not in ENDINGS and target not in reached:
                    reached.add(target)
                    self.to_come.add(target)
                    waiting.append(target)
        return given.keys().isdisjoint(self.to_come) and all(
            value is _Mark.NOT_YET or self.ahead.giving(name).isdisjoint(self.to_come) for name, value in self.beside.items())

    def _open_to(self, state: str, given: Given) -> Iterator[Move]:
        """Yield the moves out of a state that may be made."""
        if state not in self.onward:
            self.onward[state] = [(move, rest) for move in self.ahead.onward[state] if (rest := self._rest_of(move.when)) is not False]
        for move, rest in self.onward[state]:
            if (may := rest(given) if callable(rest) else rest) is not False:
                yield move
            if may:
                return

    def most(self, state: str, given: Given, turns: int) -> int:
        """Return the most questions from a state on, if these facts were given by then."""
        hang = self._hang_from(state)
        names = self.ahead.hangs_on[state] if hang is None else hang
        given = {name: value for name, value in given.items() if name in names and name != state}
        place = state, turns, frozenset(given.items())
        if place not in self.found:
            counts = isinstance(self.ahead.stops[state], Ask) and not self.ahead.waits(state)
            self.found[place] = counts + max(self.on(state, way, turns) for way in self.answered(state, given, alike=hang is not None))
        return self.found[place]

    def answered(self, state: str, given: Given, alike: bool = False) -> list[Given]:
        """Return what is given once a state was answered, in each way that makes a difference; ``alike``: answers of which all conditions
        say the same make none."""
        ask = self.ahead.stops[state]
        if state not in self.ahead.kept or not isinstance(ask, Ask):
            return [given]
        offered: list[Value | None] = [option.value for option in ask.kind.options
                                       if option.value not in ask.hurts and self._may(option.only_if, given) is not False]
        if not ask.safety:
            offered.append(None)
        if alike:
            offered = list({self.ahead.told_apart[state][answer]: answer for answer in offered}.values())
        return [{**given, state: answer} for answer in offered] or [given]

    def _hang_from(self, state: str) -> frozenset[str] | None:
        """Return the answers that all from a state on hangs on; None where computed facts read them."""
        if state not in self.hang:
            names = frozenset[str]().union(*(self._hang_at(one) for one in (state, *(self.ahead.follow[state] & self.to_come))))
            self.hang[state] = None if any(isinstance(self.tried.get(name), _Fork) for name in names) else names & self.givable
        return self.hang[state]

    def _hang_at(self, state: str) -> frozenset[str]:
        if state not in self.hang_at:
            self.hang_at[state] = frozenset[str]().union(*(
                names for when, names in self.ahead.whens[state] if names and callable(self._rest_of(when))))
        return self.hang_at[state]

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

    def _may(self, when: Condition, given: Given) -> _May:
        rest = self._rest_of(when)
        return rest(given) if callable(rest) else rest

    def _rest_of(self, when: Condition) -> _Rest:
        if id(when) not in self.rests:
            self.rests[id(when)] = self._put_in(when)
        return self.rests[id(when)]

    def _put_in(self, when: Condition) -> _Rest:
        if isinstance(when, Compare):
            return self._compared(when)
        if isinstance(when, Unless):
            inner = self._rest_of(when.part)
            if callable(inner):
                return lambda given: None if (may := inner(given)) is None else not may
            return None if inner is None else not inner
        assert isinstance(when, Every | Some)
        decides, open_yet, rests = isinstance(when, Some), False, list[Callable[[Given], _May]]()
        for part in when.parts:
            if (rest := self._rest_of(part)) is decides:
                return decides
            if callable(rest):
                rests.append(rest)
            open_yet |= rest is None

        def together(given: Given) -> _May:
            unknown = open_yet
            for rest in rests:
                if (may := rest(given)) is decides:
                    return decides
                unknown |= may is None
            return None if unknown else not decides

        return together if rests else None if open_yet else not decides

    def _compared(self, when: Compare) -> _Rest:
        name, known = when.fact, dict[_Known, _May]()

        def holds(value: _Known) -> _May:
            if value not in known:
                known[value] = _holds(when, value)
            return known[value]

        if name in self.givable:
            unless = holds(self._beside(name))
            return lambda given: holds(given[name]) if name in given else unless
        if name in self.ahead.worked_out:
            first = self._computed(name, {})
            return (lambda given: holds(self._computed(name, given))) if isinstance(self.tried[name], _Fork) else holds(first)
        return holds(self._beside(name))

    def _computed(self, name: str, given: Given) -> _Known:
        """Return a computed fact's value or NOT_YET, from before where it read the same answers then."""
        node, path = self.tried.get(name, _Mark.ABSENT), dict[str, _Known]()
        while isinstance(node, _Fork):
            path[node.name] = given.get(node.name, _Mark.ABSENT)
            node = node.branches.get(path[node.name], _Mark.ABSENT)
        if node is _Mark.ABSENT:
            path, node = self._work_out(self.ahead.worked_out[name], given)
            branches = self.tried
            at: _Known = name
            for read, answer in path.items():
                fork = branches.setdefault(at, _Fork(read, {}))
                assert isinstance(fork, _Fork)
                branches, at = fork.branches, answer
            branches[at] = node
        if self.reading is not None:
            self.reading |= path
        return node

    def _work_out(self, one: Fact, given: Given) -> tuple[dict[str, _Known], _Known]:
        """Return a computed fact's value or NOT_YET, after what it read of the answers that may be given."""
        assert one.of is not None
        outer, self.reading = self.reading, (path := dict[str, _Known]())
        value: _Known
        try:
            value = one.of(_Reading(self, given), one.side)
        except KeyError:
            value = None
        except _NotYet:
            value = _Mark.NOT_YET
        self.reading = outer
        return path, value

    def value(self, name: str, given: Given) -> Value | None:
        """Return a fact's value, None if it has none for good. Raises _NotYet where it is still to come."""
        if name in self.givable:
            if self.reading is not None:
                self.reading[name] = given.get(name, _Mark.ABSENT)
            if name in given:
                return given[name]
        found = self._computed(name, given) if name in self.ahead.worked_out else self._beside(name)
        if isinstance(found, _Mark):
            raise _NotYet
        return found

    def _beside(self, name: str) -> _Known:
        """Return the value of a fact that is neither given nor computed, or NOT_YET."""
        if name not in self.beside:
            self.read[name] = self.facts.get(name)
            to_come = not self.ahead.giving(name).isdisjoint(self.to_come) or (name in self.ahead.put and name not in self.facts)
            self.beside[name] = _Mark.NOT_YET if to_come else self.facts.get(name)
        return self.beside[name]


def _holds(when: Compare, value: _Known) -> _May:
    return None if isinstance(value, _Mark) else when.holds({} if value is None else {when.fact: value})
