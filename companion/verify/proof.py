"""Which arrows of a flow can be taken at all, and that from every state exactly one is: by cases, not by samples.

A condition is held against sets of values, one for each fact; where that leaves it open, the fact it hangs on is split
by what the condition can tell apart. The sets at a state are those of every way to it, joined.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from companion.conversation.condition import ALWAYS, Compare, Condition, Every, Some, Unless
from companion.conversation.flow import Ask
from companion.conversation.machine import START
from companion.verify.domains import Domain, Domains, Ways

NEVER: Final = Some(())


def holds_in(condition: Condition, facts: Domains) -> bool | None:
    """Whether it holds for all these values (True), for none (False), or for some (None)."""
    match condition:
        case Compare(name):
            found = {condition.holds({} if value is None else {name: value}) for value in facts[name]}
            return found.pop() if len(found) == 1 else None
        case Every(parts):
            return _joined((holds_in(part, facts) for part in parts), False)
        case Some(parts):
            return _joined((holds_in(part, facts) for part in parts), True)
        case Unless(part):
            inside = holds_in(part, facts)
            return None if inside is None else not inside
    raise TypeError(f"{condition!r} is not a condition")


def _joined(results: Iterator[bool | None], decides: bool) -> bool | None:
    """The result of parts of which one ``decides``."""
    open_ = False
    for result in results:
        if result is decides:
            return decides
        open_ = open_ or result is None
    return None if open_ else not decides


def split(condition: Condition, facts: Domains) -> Iterator[Domains]:
    """The same facts in cases, by what the condition can tell apart of the first fact it hangs on."""
    return _cases(condition, facts, next(compare.fact for compare in _hangs_on(condition, facts)))


def _cases(condition: Condition, facts: Domains, name: str) -> Iterator[Domains]:
    groups: dict[tuple[bool, ...], set[float | str | None]] = {}
    compares = list(dict.fromkeys(compare for compare in condition.compares() if compare.fact == name))
    for value in facts[name]:
        seen = tuple(compare.holds({} if value is None else {name: value}) for compare in compares)
        groups.setdefault(seen, set()).add(value)
    return ({**facts, name: frozenset(groups[seen])} for seen in sorted(groups, reverse=True))


def _hangs_on(condition: Condition, facts: Domains) -> Iterator[Compare]:
    """The comparisons that leave a condition open, the last part first: that is an arrow's own."""
    match condition:
        case Compare() if holds_in(condition, facts) is None:
            yield condition
        case Every(parts) | Some(parts):
            for part in reversed(parts):
                if holds_in(part, facts) is None:
                    yield from _hangs_on(part, facts)
        case Unless(part):
            yield from _hangs_on(part, facts)


def simplified(condition: Condition, facts: Domains) -> Condition:
    """The same condition without what these values decide: ALWAYS where it holds, NEVER where it does not."""
    match condition:
        case Every(parts):
            left = [part for one in parts if (part := simplified(one, facts)) != ALWAYS]
            return NEVER if NEVER in left else left[0] if len(left) == 1 else Every(tuple(left))
        case Some(parts):
            left = [part for one in parts if (part := simplified(one, facts)) != NEVER]
            return ALWAYS if ALWAYS in left else left[0] if len(left) == 1 else Some(tuple(left))
        case Unless(part):
            inside = simplified(part, facts)
            return NEVER if inside == ALWAYS else ALWAYS if inside == NEVER else Unless(inside)
    result = holds_in(condition, facts)
    return condition if result is None else ALWAYS if result else NEVER


def possible(condition: Condition, facts: Domains) -> bool:
    """Whether any choice of these values makes it hold."""
    return model(condition, facts) is not None


def model(condition: Condition, facts: Domains) -> Domains | None:
    """Sets of these values with all of which it holds, or None where there are none."""
    left = simplified(condition, facts)
    if left in (ALWAYS, NEVER):
        return facts if left == ALWAYS else None
    return next((found for case in split(left, facts) if (found := model(left, case))), None)


def undecided(conditions: Sequence[Condition], facts: Domains, seen: set[object] | None = None) -> Domains | None:
    """Values with which not exactly one of the conditions holds, or None where there are no such values."""
    seen = set() if seen is None else seen
    left = tuple(one for condition in conditions if (one := simplified(condition, facts)) != NEVER)
    if ALWAYS in left:
        return None if len(left) == 1 else facts if left.count(ALWAYS) > 1 or any(
            possible(one, facts) for one in left if one != ALWAYS) else None
    names = Counter(compare.fact for one in left for compare in one.compares())
    if not names:
        return facts
    key = (left, tuple((name, facts[name]) for name in sorted(names)))
    if key in seen:
        return None
    seen.add(key)
    every = Every(left)
    cases = _cases(every, facts, names.most_common(1)[0][0])
    return next((bad for case in cases if (bad := undecided(left, case, seen))), None)


@dataclass(frozen=True, slots=True)
class Found:
    """What a proof found: the sets of values at each state that can be reached, and the arrows nothing can take."""

    at: Mapping[str, Domains]
    never: frozenset[tuple[str, str]]


def prove(ways: Ways) -> Found:
    """Follow every arrow that the values allow until nothing new is found. What stands beside the flow may change at any
    moment, so it is never narrowed."""
    compiled = ways.compiled
    own = {name for ask in ways.asks.values() for name in ways.log_names(ask, {})} | {
        key for key in compiled.stops if key not in ways.asks}
    names = {*ways.compares, *ways.asks, *ways.at_start} | own
    beside = {name: ways.whole(name) for name in names - own - ways.fixed - ways.worked_out.keys()}
    first = {name: frozenset((None,)) if name in own else ways.whole(name) for name in names}
    at: dict[str, dict[str, Domain]] = {START: _worked_out(ways, first)}
    waiting, taken = [START], set()
    while waiting:
        source = waiting.pop(0)
        facts, still = _answered(ways, source, at[source]), _still(ways, source)
        for arrow in compiled.leaving[source]:
            if not possible(Every((still, arrow.when)), facts):
                continue
            taken.add((source, arrow.target))
            if arrow.target not in compiled.stops:
                continue
            there = at.get(arrow.target, {})
            narrowed = _narrowed(arrow.when, _narrowed(still, facts)) | beside
            joined = {name: values | there.get(name, frozenset()) for name, values in narrowed.items()}
            if joined != there:
                at[arrow.target] = joined
                waiting += [arrow.target] if arrow.target not in waiting else []
    return Found(at, frozenset(compiled.ways.keys() - taken))


def _still(ways: Ways, state: str) -> Condition:
    """What a question's own condition still says once it is answered: all of it, where it hangs on answers before it
    only and no jump leads there past it."""
    stop = ways.compiled.stops.get(state)
    if not isinstance(stop, Ask) or any(jump.to == state for ask in ways.asks.values() for jump in ask.then):
        return ALWAYS
    changed = ways.log_names(stop, {})
    for compare in stop.only_if.compares():
        reads = ways.reads.get(compare.fact, frozenset((compare.fact,)))
        stable = reads <= ways.fixed | {name for ask in ways.asks.values() for name in ways.log_names(ask, {})}
        if not stable or reads & changed:
            return ALWAYS
    return stop.only_if


def _worked_out(ways: Ways, facts: dict[str, Domain]) -> dict[str, Domain]:
    for name, one in ways.worked_out.items():
        if name in ways.compares:
            facts[name] = ways.work_out(one, facts)
    return facts


def _answered(ways: Ways, source: str, facts: Domains) -> dict[str, Domain]:
    """The values once the state's question is answered or skipped, or its run has ended."""
    after = dict(facts)
    stop = ways.compiled.stops.get(source)
    if isinstance(stop, Ask):
        given = frozenset(ways.answers(stop)) | (frozenset() if stop.safety else frozenset((None,)))
        names = ways.log_names(stop, facts)
        for name in names:
            after[name] = given if len(names) == 1 else given | facts.get(name, frozenset((None,)))
    elif stop is not None:
        after[source] = frozenset(("done", "closed", "pain"))
    return _worked_out(ways, after)


def _narrowed(when: Condition, facts: Mapping[str, Domain]) -> dict[str, Domain]:
    """The values with which a condition may hold, fact by fact."""
    kept = dict(facts)
    for name in dict.fromkeys(compare.fact for compare in when.compares()):
        kept[name] = frozenset(value for value in kept[name] if holds_in(when, {**kept, name: frozenset((value,))}) is not False)
    return kept
