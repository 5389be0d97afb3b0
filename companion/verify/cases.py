"""Conditions as decision diagrams over a flow's facts: decided for every value a fact may have, by cases and not by samples.

The values of a fact fall into cells that no comparison of the flow tells apart. A diagram (Bryant 1986, with one branch a cell
instead of two) asks for one fact after the other, in a fixed order, which of its cells holds; equal diagrams are one node, so
what is the same condition is the same number.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from companion.conversation.condition import Compare, Condition, Every, Some, Unless, Value

Domain = frozenset[Value | None]
Domains = Mapping[str, Domain]
"""What facts may be, by name; None stands for a fact that is missing."""

FALSE: Final = 0
TRUE: Final = 1
_BELOW_ALL: Final = 1 << 30
_NEAR: Final = 1e-6

Masks = list[int]
"""By fact, in order: the cells it may be in, a bit each."""


class Cases:
    """The diagrams of one flow. ``compares``: every comparison of its conditions, by fact."""

    def __init__(self, compares: Mapping[str, Iterable[Compare]]) -> None:
        self.names = list(compares)
        self._level = {name: n for n, name in enumerate(self.names)}
        self._compares = [tuple(dict.fromkeys(compares[name])) for name in self.names]
        self._cells = [{seen: n for n, seen in enumerate(sorted({self._seen(level, value) for value in _telling(rows)}, reverse=True))}
                       for level, rows in enumerate(self._compares)]
        self._nodes: list[tuple[int, tuple[int, ...]]] = [(_BELOW_ALL, ()), (_BELOW_ALL, ())]
        self._number: dict[tuple[int, tuple[int, ...]], int] = {}
        self._of: dict[int, tuple[Condition, int]] = {}
        self._both: dict[tuple[int, int], int] = {}
        self._not: dict[int, int] = {FALSE: TRUE, TRUE: FALSE}
        self._mask: dict[tuple[int, Domain], int] = {}

    def _seen(self, level: int, value: Value | None) -> tuple[bool, ...]:
        facts = {} if value is None else {self.names[level]: value}
        return tuple(compare.holds(facts) for compare in self._compares[level])

    # diagrams ---------------------------------------------------------------------------------------------

    def of(self, condition: Condition) -> int:
        """Return the diagram of a condition. Raises TypeError for what is none."""
        known = self._of.get(id(condition))
        if known is None:
            known = self._of[id(condition)] = condition, self._made(condition)  # kept, so that its id is not given again
        return known[1]

    def _made(self, condition: Condition) -> int:
        match condition:
            case Compare(name):
                level = self._level[name]
                at = self._compares[level].index(condition)
                return self._node(level, tuple(TRUE if seen[at] else FALSE for seen in self._cells[level]))
            case Every(parts):
                return self.every(map(self.of, parts))
            case Some(parts):
                return self.denied(self.every(self.denied(self.of(part)) for part in parts))
            case Unless(part):
                return self.denied(self.of(part))
        raise TypeError(f"{condition!r} is not a condition")

    def _node(self, level: int, branches: tuple[int, ...]) -> int:
        if branches.count(branches[0]) == len(branches):
            return branches[0]
        number = self._number.get((level, branches))
        if number is None:
            number = self._number[level, branches] = len(self._nodes)
            self._nodes.append((level, branches))
        return number

    def every(self, diagrams: Iterable[int]) -> int:
        """Return the diagram that holds where all of these do."""
        found = TRUE
        for one in diagrams:
            found = self.both(found, one)
        return found

    def both(self, one: int, other: int) -> int:
        """Return the diagram that holds where both do."""
        if one > other:
            one, other = other, one
        if one in (other, FALSE):
            return one
        if one == TRUE:
            return other
        found = self._both.get((one, other))
        if found is None:
            (level, left), (level_too, right) = self._nodes[one], self._nodes[other]
            if level == level_too:
                branches = tuple(map(self.both, left, right))
            elif level < level_too:
                branches = tuple([self.both(branch, other) for branch in left])
            else:
                branches = tuple([self.both(one, branch) for branch in right])
            found = self._both[one, other] = self._node(min(level, level_too), branches)
        return found

    def denied(self, one: int) -> int:
        """Return the diagram that holds where this one does not."""
        found = self._not.get(one)
        if found is None:
            level, branches = self._nodes[one]
            found = self._not[one] = self._node(level, tuple(map(self.denied, branches)))
            self._not[found] = one
        return found

    # over values ------------------------------------------------------------------------------------------

    def masks(self, facts: Domains) -> Masks:
        """Return the cells that these values lie in; all of them for a fact that is not among these."""
        return [self._mask_of(level, facts[name]) if name in facts else -1 for level, name in enumerate(self.names)]

    def _mask_of(self, level: int, values: Domain) -> int:
        found = self._mask.get((level, values))
        if found is None:
            found = 0
            for value in values:
                found |= 1 << self._cells[level][self._seen(level, value)]
            self._mask[level, values] = found
        return found

    def can(self, diagram: int, masks: Masks) -> bool:
        """True if it holds for some choice among these cells."""
        return self._can(diagram, masks, {FALSE: False, TRUE: True})

    def _can(self, diagram: int, masks: Masks, known: dict[int, bool]) -> bool:
        found = known.get(diagram)
        if found is None:
            level, branches = self._nodes[diagram]
            found, mask = False, masks[level]
            for n, branch in enumerate(branches):  # asked a million times
                if mask >> n & 1 and self._can(branch, masks, known):
                    found = True
                    break
            known[diagram] = found
        return found

    def narrowed(self, diagram: int, facts: Domains) -> dict[str, Domain] | None:
        """Return these values without those with which it can't hold, whatever the others are; None where it never can."""
        masks = self.masks(facts)
        known = {FALSE: False, TRUE: True}
        if not self._can(diagram, masks, known):
            return None
        kept = [0] * len(masks)
        free, waiting, seen = set(range(len(masks))) - set(self._levels(diagram)), [diagram], {diagram}
        while waiting:
            level, branches = self._nodes[waiting.pop()]
            for n, branch in enumerate(branches):
                if masks[level] >> n & 1 and self._can(branch, masks, known):
                    kept[level] |= 1 << n
                    below = min(self._nodes[branch][0], len(masks))
                    free.update(range(level + 1, below))  # not asked for on this way, so whatever it is
                    if branch not in seen and branch > TRUE:
                        seen.add(branch)
                        waiting.append(branch)
        free.update(range(min(self._nodes[diagram][0], len(masks))))
        narrower = {self.names[n]: n for n in range(len(masks)) if n not in free and kept[n] != masks[n]}
        return {name: self._within(narrower[name], values, kept[narrower[name]]) if name in narrower else values
                for name, values in facts.items()}

    def _levels(self, diagram: int) -> Iterator[int]:
        waiting, seen = [diagram], {diagram}
        while waiting:
            level, branches = self._nodes[waiting.pop()]
            if level != _BELOW_ALL:
                yield level
            fresh = set(branches) - seen
            seen |= fresh
            waiting += fresh

    def _within(self, level: int, values: Domain, mask: int) -> Domain:
        return frozenset(value for value in values if mask >> self._cells[level][self._seen(level, value)] & 1)

    def model(self, diagram: int, facts: Domains) -> Domains | None:
        """Return sets of these values with all of which it holds, or None where there are none."""
        masks, known = self.masks(facts), {FALSE: False, TRUE: True}
        if not self._can(diagram, masks, known):
            return None
        found = dict(facts)
        while diagram != TRUE:
            level, branches = self._nodes[diagram]
            n, diagram = next((n, branch) for n, branch in enumerate(branches) if masks[level] >> n & 1 and self._can(branch, masks, known))
            found[self.names[level]] = self._within(level, facts[self.names[level]], 1 << n)
        return found


def _telling(compares: Iterable[Compare]) -> Iterator[Value | None]:
    """Values of each cell that comparisons of one fact make: at, just below and just above each bound, something else, nothing."""
    yield None
    yield "\0"
    for compare in compares:
        if isinstance(compare.bound, tuple):
            yield from compare.bound
        elif compare.bound is not None:
            yield from (compare.bound - _NEAR, compare.bound, compare.bound + _NEAR)
