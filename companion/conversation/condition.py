"""Conditions on facts, kept as data so that they can be proved at their bounds, drawn and exported.

A fact is a named value: an answer, something known about the lifter, or a value computed from both. A comparison with a missing fact is
false, so a skipped answer never opens a path that needs it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

Value = float | str
Facts = Mapping[str, Value]


class Condition:
    """A test on facts; combined with ``&``, ``|`` and ``~``."""

    __slots__ = ()

    def holds(self, facts: Facts) -> bool:
        """True if the facts satisfy the condition; never raises, even if facts are missing."""
        raise TypeError(f"{type(self).__name__} is not a condition")

    def compares(self) -> Iterator[Compare]:
        """Return all comparisons in the condition, in reading order."""
        yield from ()

    def __and__(self, other: Condition) -> Condition:
        return Every((*_parts(self, Every), *_parts(other, Every)))

    def __or__(self, other: Condition) -> Condition:
        return Some((*_parts(self, Some), *_parts(other, Some)))

    def __invert__(self) -> Condition:
        return Unless(self)


@dataclass(frozen=True, slots=True)
class Compare(Condition):
    """A comparison of one fact: with a bound (``<  <=  >  >=``), with a set of values (``in``), or for being known (``known``)."""

    fact: str
    op: str
    bound: float | tuple[str, ...] | None = None

    def holds(self, facts: Facts) -> bool:
        value = facts.get(self.fact)
        if isinstance(self.bound, tuple):
            return value in self.bound
        if value is None:
            return False
        if self.op == "known":
            return True
        if isinstance(value, str) or self.bound is None:
            return False
        match self.op:
            case "<":
                return value < self.bound
            case "<=":
                return value <= self.bound
            case ">":
                return value > self.bound
            case _:
                return value >= self.bound

    def compares(self) -> Iterator[Compare]:
        yield self

    def __str__(self) -> str:
        if self.op == "known":
            return f"{self.fact} is known"
        if isinstance(self.bound, tuple):
            return f"{self.fact} is {' or '.join(self.bound)}"
        return f"{self.fact} {self.op} {self.bound:g}"


@dataclass(frozen=True, slots=True)
class Every(Condition):
    """True if all parts hold; without parts always true."""

    parts: tuple[Condition, ...] = ()

    def holds(self, facts: Facts) -> bool:
        for part in self.parts:  # noqa: SIM110 — asked hundreds of times a step, and twice as fast as all()
            if not part.holds(facts):
                return False
        return True

    def compares(self) -> Iterator[Compare]:
        for part in self.parts:
            yield from part.compares()

    def __str__(self) -> str:
        return " and ".join(map(str, self.parts)) or "always"


@dataclass(frozen=True, slots=True)
class Some(Condition):
    """True if at least one part holds."""

    parts: tuple[Condition, ...]

    def holds(self, facts: Facts) -> bool:
        for part in self.parts:  # noqa: SIM110 — as above
            if part.holds(facts):
                return True
        return False

    def compares(self) -> Iterator[Compare]:
        for part in self.parts:
            yield from part.compares()

    def __str__(self) -> str:
        return "(" + " or ".join(map(str, self.parts)) + ")"


@dataclass(frozen=True, slots=True)
class Unless(Condition):
    """True if the part does not hold, so also if the part's fact is missing."""

    part: Condition

    def holds(self, facts: Facts) -> bool:
        return not self.part.holds(facts)

    def compares(self) -> Iterator[Compare]:
        yield from self.part.compares()

    def __str__(self) -> str:
        return f"not ({self.part})"


ALWAYS = Every()


def _parts(one: Condition, of: type[Every] | type[Some]) -> tuple[Condition, ...]:
    """Return the parts of a condition of this kind, or the condition itself, so that a chain of ``&`` is one flat Every."""
    return one.parts if isinstance(one, of) else (one,)


@dataclass(frozen=True, slots=True)
class Fact:
    """A named fact with its domain: ``low`` to ``high`` in steps of ``step``, or one of ``values``.

    ``of`` computes it from the facts so far (None if it or a fact it needs is not known). Answers need neither domain nor ``of``: their
    question gives both.
    """

    name: str
    low: float = 0.0
    high: float = 0.0
    step: float = 0.0
    values: tuple[str, ...] = ()
    of: Callable[[Facts, str], Value | None] | None = None
    side: str = ""

    def is_(self, value: str) -> Condition:
        """True if it equals the value."""
        return Compare(self.name, "in", (value,))

    def one_of(self, *values: str) -> Condition:
        """True if it equals one of the values."""
        return Compare(self.name, "in", values)

    @property
    def known(self) -> Condition:
        """True if it is known."""
        return Compare(self.name, "known")

    def __lt__(self, bound: float) -> Condition:
        return Compare(self.name, "<", bound)

    def __le__(self, bound: float) -> Condition:
        return Compare(self.name, "<=", bound)

    def __gt__(self, bound: float) -> Condition:
        return Compare(self.name, ">", bound)

    def __ge__(self, bound: float) -> Condition:
        return Compare(self.name, ">=", bound)

    def work_out(self, facts: Facts) -> Value | None:
        """Return its value from the facts so far, None where one of them is missing."""
        if self.of is None:
            return facts.get(self.name)
        try:
            return self.of(facts, self.side)
        except KeyError:
            return None


def fact(name: str) -> Fact:
    """Return a fact by name, to write a condition with: ``fact("plain_rounds").is_("no")``."""
    return Fact(name)
