"""The domain of each fact of a flow: the values worth trying, on each side of every bound, and missing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from math import prod
from typing import Final

from companion.conversation.condition import Compare, Condition, Fact, Facts, Value
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Known
from companion.conversation.machine import Compiled
from companion.conversation.number_kinds import Number
from companion.conversation.registry import Book
from companion.conversation.wording import fields_of, render
from companion.verify.cases import Cases, Domain, Domains

A_DAY: Final = "2026-03-02"
"""For a fact that is only asked whether it is there: a date, since a template may want one."""

A_MOMENT: Final = "2026-03-02T18:05:00+00:00"
WORDS: Final = "tingling and numb below the knee"
"""For a text that a worked-out fact reads: words that weigh something."""

COMBINATIONS_MOST: Final = 6_000
"""Combinations of what a worked-out fact reads; where there are more, its declared values stand for it."""

DRAWS: Final = 12
"""Runs whose facts at the start are looked at, where an order is drawn."""


class _Read(dict[str, Value]):
    """Facts that note which of them were asked for."""

    def __init__(self, facts: Facts) -> None:
        super().__init__(facts)
        self.names: set[str] = set()

    def __getitem__(self, name: str) -> Value:
        self.names.add(name)
        return super().__getitem__(name)

    def get(self, name: str, default: Value | None = None) -> Value | None:  # type: ignore[override]
        self.names.add(name)
        return super().get(name, default)


_BESIDE: Final = ("coach", "today", "person", "parked_title")
"""Known of everybody, and not by a flow."""


@dataclass(frozen=True)
class Ways:
    """A flow of a book with what its facts may be. ``known``: what stands beside the flow's own facts."""

    book: Book
    compiled: Compiled
    known: Known

    @property
    def flow(self) -> Flow:
        """The flow itself."""
        return self.compiled.flow

    @cached_property
    def compares(self) -> Mapping[str, tuple[Compare, ...]]:
        """Every comparison in the flow's conditions, by fact."""
        found: dict[str, dict[Compare, None]] = {}
        whens = [arrow.when for arrow in self.compiled.arrows] + [step.only_if for step in self.flow.steps]
        whens += [option.only_if for stop in self.asks.values() for option in stop.kind.options]
        for compare in (compare for when in whens for compare in when.compares()):
            found.setdefault(compare.fact, {})[compare] = None
        return {name: tuple(rows) for name, rows in found.items()}

    @cached_property
    def cases(self) -> Cases:
        """The diagrams of those conditions."""
        return Cases(self.compares)

    @cached_property
    def move_compares(self) -> Mapping[str, tuple[Compare, ...]]:
        """The same with every comparison that a move of the table is decided by: those of gates and of the run itself too."""
        found = {name: dict.fromkeys(rows) for name, rows in self.compares.items()}
        for compare in (compare for row in self.compiled.table for compare in row.when.compares()):
            found.setdefault(compare.fact, {})[compare] = None
        return {name: tuple(rows) for name, rows in found.items()}

    @cached_property
    def move_cases(self) -> Cases:
        """The diagrams of all those."""
        return Cases(self.move_compares)

    @cached_property
    def asks(self) -> Mapping[str, Ask]:
        """The flow's questions by key."""
        return {key: stop for key, stop in self.compiled.stops.items() if isinstance(stop, Ask)}

    @cached_property
    def kept(self) -> dict[str, tuple[Condition, ...]]:
        """The parts of each question's condition that the proof found to hold as long as it waits."""
        return {}

    @cached_property
    def lasting_gates(self) -> tuple[Gate, ...]:
        """The gates that look at nothing but facts kept from the start: open when a run began, they stay open."""
        return tuple(gate for gate in self.flow.gates if all(compare.fact in self.fixed for compare in gate.shut.compares()))

    @cached_property
    def worked_out(self) -> Mapping[str, Fact]:
        """The flow's facts that are worked out, by name."""
        return {one.name: one for one in self.flow.facts if one.of is not None}

    @cached_property
    def at_start(self) -> Mapping[str, Domain]:
        """Return the facts worked out at the start: over a few runs, with each known fact it reads at each of its values."""
        if self.flow.at_start is None:
            return {}
        read = _Read(self.known.facts)
        drawn = [self.flow.at_start(Known(read, self.known.now, self.known.answers, str(run))) for run in range(DRAWS)]
        for name in sorted(read.names):
            for value in self._beside(name) or (A_DAY, A_MOMENT):
                facts = {**self.known.facts, name: value}
                with suppress(ValueError, TypeError):  # a day where a moment is wanted, or the other way round
                    drawn.append(self.flow.at_start(Known(facts, self.known.now, self.known.answers, "1")))
        names = {name for facts in drawn for name in facts}
        return {name: frozenset(facts.get(name) for facts in drawn) for name in names}

    def answers(self, ask: Ask) -> tuple[Value, ...]:
        """The answers of a question worth trying: each option; for a number its ends, its example and each side of
        every bound, also of what is worked out from two of them. Not those that say that it hurt: they answer nothing."""
        kind = ask.kind
        if isinstance(kind, Number):
            values = [kind.low, *kind.usual, kind.high, kind.example_value]
            values += [kind.low + (kind.high - kind.low) * n / 12 for n in range(1, 12)]
            for name, compares in self.compares.items():
                near = 0.0 if name in (ask.key, ask.log_as) else kind.example_value if name in self.worked_out else None
                if near is not None:
                    values += [near + side for compare in compares for side in self.sides(compare)
                               if not isinstance(side, str)]
            numbers = sorted({round(value, 2) for value in values if kind.low <= value <= kind.high})
            return (*(option.value for option in kind.options), *numbers)
        return tuple(value for value in kind.samples if value not in ask.hurts)

    def sides(self, compare: Compare) -> tuple[Value, ...]:
        """A comparison's bound and the values next to it, or its values, or something that is there."""
        if isinstance(compare.bound, tuple):
            return compare.bound
        if compare.bound is None:
            return (A_DAY,)
        step = step_of(self.compiled, compare.fact)
        return tuple(round(value, 6) for value in (compare.bound - step, compare.bound, compare.bound + step))

    def whole(self, name: str) -> Domain:
        """Everything a fact may be, missing too, wherever it comes from."""
        if name not in self._wholes:
            self._wholes[name] = frozenset((None, *self._values(name)))
        return self._wholes[name]

    @cached_property
    def _wholes(self) -> dict[str, Domain]:
        return {}

    def _values(self, name: str) -> Iterator[Value]:
        if name in self.asks:
            yield from self.answers(self.asks[name])
            return
        held = {value for compare in self.compares.get(name, ()) if compare.op != "known" for value in self.sides(compare)}
        declared = [one for one in self.flow.facts if one.name == name]
        stated = {value for one in declared for value in (*one.values, *((one.low, one.high) if one.step else ()))}
        started = {value for value in self.at_start.get(name, ()) if value is not None}
        if held and not stated | started | set(self._beside(name)):
            yield A_DAY  # something else than what it is held against
        told: set[Value] = {A_DAY} if name in self.compares or "." in name or name in _BESIDE else {A_DAY, WORDS}
        yield from held | stated | started | set(self._beside(name)) or told

    def _beside(self, name: str) -> tuple[Value, ...]:
        """Return the domain of a fact from elsewhere: another flow's answer, a finding, a run's ending."""
        flow, dot, key = name.partition(".")
        other = self.book.flows.get(flow)
        if dot and other and isinstance(stop := other.stops.get(key), Ask):
            return Ways(self.book, other, self.known).answers(stop)
        if name.startswith("run_"):
            return ("done", "closed", "pain")
        return ("yes",) if name.endswith(".today") else tuple(self.concluded.get(name, ()))

    @cached_property
    def concluded(self) -> Mapping[str, list[Value]]:
        """The values that any flow of the book may conclude, by name."""
        found: dict[str, list[Value]] = {}
        for compiled in self.book.flows.values():
            for step in compiled.flow.steps:
                if isinstance(step, Do) and isinstance(step.effect, Find):
                    field = next(fields_of(step.effect.value), None)
                    values = [step.effect.value] if field is None else [
                        value for one in compiled.flow.facts if one.name == field for value in one.values]
                    found.setdefault(step.effect.name, []).extend(values)
        return found

    def log_names(self, ask: Ask, facts: Domains) -> set[str]:
        """The names an answer may be kept under."""
        if not ask.log_as:
            return {ask.key}
        fields = list(fields_of(ask.log_as))
        names = set()
        for values in product(*(facts.get(field, self.whole(field)) for field in fields)):
            there = {field: value for field, value in zip(fields, values, strict=True) if value is not None}
            names.add(render(ask.log_as, there, self.known.now, ask.side))
        return names

    @cached_property
    def reads(self) -> Mapping[str, frozenset[str]]:
        """Return the facts that each worked-out fact reads, as far as a few combinations show."""
        return {name: self._tried(one, {})[0] for name, one in self.worked_out.items()}

    @cached_property
    def fixed(self) -> frozenset[str]:
        """The facts that are kept with a run from its start; all others that are not its own may change beside it."""
        named = {*self.compares, *(name for names in self.reads.values() for name in names)}
        asked = {name for name in named if "." not in name and name not in _BESIDE and not any(self.concluded.get(name, ()))}
        own = self.compiled.stops.keys() | self.worked_out.keys() | {
            name for ask in self.asks.values() for name in self.log_names(ask, {})}
        return frozenset(self.at_start) | (frozenset(asked - own) if self.flow.at_start else frozenset())

    def work_out(self, one: Fact, facts: Domains) -> Domain:
        """Return the domain of a worked-out fact, given those of the others."""
        found = self._tried(one, facts)[1]
        return self.whole(one.name) if found is None else found

    @cached_property
    def _before(self) -> dict[str, dict[tuple[str, ...], dict[tuple[Domain, ...], tuple[frozenset[str], Domain | None]]]]:
        return {}

    def _tried(self, one: Fact, facts: Domains) -> tuple[frozenset[str], Domain | None]:
        """Return the names a worked-out fact reads and its values over all they may be; None where those are too many. What was
        tried over the same values of the same names before is not tried again."""
        before = self._before.setdefault(one.name, {})
        for names, tried in before.items():
            if (found := tried.get(tuple(facts[name] if name in facts else self.whole(name) for name in names))) is not None:
                return found
        names_read, values = self._try(one, facts)
        names = tuple(sorted(names_read))
        domains = tuple(facts[name] if name in facts else self.whole(name) for name in names)
        before.setdefault(names, {})[domains] = names_read, values
        return names_read, values

    def _try(self, one: Fact, facts: Domains) -> tuple[frozenset[str], Domain | None]:
        names: set[str] = set()
        while True:
            domains = [facts[name] if name in facts else self.whole(name) for name in sorted(names)]
            if prod(map(len, domains)) > COMBINATIONS_MOST:
                return frozenset(names), None
            found, wanted = set[Value | None](), set[str]()
            for values in product(*domains):
                read = _Read({name: value for name, value in zip(sorted(names), values, strict=True) if value is not None})
                found.add(one.work_out(read))
                wanted |= read.names
            if wanted <= names:
                return frozenset(names), frozenset(found)
            names |= wanted


def step_of(compiled: Compiled, name: str) -> float:
    """The smallest difference a number fact can show."""
    for one in compiled.flow.facts:
        if one.name == name and one.step:
            return one.step
    stop = compiled.stops.get(name)
    return stop.kind.step if isinstance(stop, Ask) and isinstance(stop.kind, Number) else 1.0
