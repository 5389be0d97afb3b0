"""Prove which moves of a flow can be made, and that every event is decided in every state: by cases, not by samples.

The sets of values at a state are those of every way to it, joined.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from companion.conversation.condition import ALWAYS, Condition, Every
from companion.conversation.flow import END, PARKED, Ask, Run
from companion.conversation.table import AT_QUESTION, EARLY_END, ENDED, LAST_ANSWERED, ONWARD, RESUMED, START
from companion.verify.cases import FALSE, TRUE, Cases, Domain, Domains
from companion.verify.domains import Ways


def undecided(cases: Cases, conditions: Iterable[Condition], facts: Domains) -> Domains | None:
    """Return values with which not exactly one of the conditions holds, or None where there are no such values."""
    any_so_far = FALSE
    for condition in conditions:
        one = cases.of(condition)
        if twice := cases.model(cases.both(any_so_far, one), facts):
            return twice
        any_so_far = cases.denied(cases.both(cases.denied(any_so_far), cases.denied(one)))
    return cases.model(cases.denied(any_so_far), facts)


@dataclass(frozen=True, slots=True)
class Found:
    """The result of a proof: the sets of values at each state that can be reached, and the arrows nothing can take."""

    at: Mapping[str, Domains]
    never: frozenset[tuple[str, str]]


def prove(ways: Ways) -> Found:
    """Follow every arrow that the values allow until nothing new is found. What stands beside the flow may change at any
    moment, so it is never narrowed."""
    compiled, cases = ways.compiled, ways.cases
    own, names, beside = _own(ways), _names(ways), _beside(ways)
    first = {name: frozenset((None,)) if name in own else ways.whole(name) for name in names}
    at: dict[str, dict[str, Domain]] = {START: _worked_out(ways, first)}
    waiting, taken = [START], set()
    while waiting:
        source = waiting.pop(0)
        facts, still = _answered(ways, source, at[source]), cases.of(_still(ways, source, answered=True))
        for arrow in compiled.leaving[source]:
            narrowed = cases.narrowed(cases.both(still, cases.of(arrow.when)), facts)
            if narrowed is None:
                continue
            taken.add((source, arrow.target))
            if arrow.target not in compiled.stops:
                continue
            there = at.get(arrow.target, {})
            narrowed |= beside
            joined = {name: values | there.get(name, frozenset()) for name, values in narrowed.items()}
            if joined != there:
                at[arrow.target] = joined
                waiting += [arrow.target] if arrow.target not in waiting else []
    return Found(at, frozenset(compiled.ways.keys() - taken))


def _own(ways: Ways) -> set[str]:
    return {name for ask in ways.asks.values() for name in ways.log_names(ask, {})} | (ways.compiled.stops.keys() - ways.asks.keys())


def _names(ways: Ways) -> set[str]:
    return {*ways.compares, *ways.asks, *ways.at_start} | _own(ways)


def _beside(ways: Ways) -> dict[str, Domain]:
    """Return what stands beside the flow, and all it may be."""
    return {name: ways.whole(name) for name in _names(ways) - _own(ways) - ways.fixed - ways.worked_out.keys()}


def _still(ways: Ways, state: str, answered: bool) -> Condition:
    """Return what a question's own condition still says while it waits, or once it is ``answered``: those of its parts that hang on
    answers before it only and hold wherever a jump leads there."""
    stop = ways.compiled.stops.get(state)
    if not isinstance(stop, Ask) or stop.only_if == ALWAYS:
        return ALWAYS
    changed = ways.log_names(stop, {}) if answered else set()
    return Every(tuple(part for part in _kept(ways, state) if not _reads(ways, part) & changed))


def _reads(ways: Ways, condition: Condition) -> frozenset[str]:
    """Return the names a condition hangs on in the end."""
    return frozenset().union(*(ways.reads.get(compare.fact, frozenset((compare.fact,))) for compare in condition.compares()))


def _kept(ways: Ways, state: str) -> tuple[Condition, ...]:
    """Return the parts of a question's own condition that hold for as long as it waits, by whatever way it was come to."""
    if state not in ways.kept:
        ways.kept[state] = ()  # while it is looked at, for jumps in a circle
        cases, only_if, known = ways.cases, ways.asks[state].only_if, ways.fixed | _own(ways)
        jumps = [cases.both(cases.of(jump.when), cases.of(_still(ways, key, answered=True)))
                 for key, stop in ways.compiled.stops.items() for jump in stop.then if jump.to == state]
        ways.kept[state] = tuple(
            part for part in (only_if.parts if isinstance(only_if, Every) else (only_if,)) if _reads(ways, part) <= known
            and not any(cases.can(cases.both(jump, cases.denied(cases.of(part))), cases.masks({})) for jump in jumps))
    return ways.kept[state]


def _worked_out(ways: Ways, facts: dict[str, Domain]) -> dict[str, Domain]:
    for name, one in ways.worked_out.items():
        if name in ways.compares:
            facts[name] = ways.work_out(one, facts)
    return facts


def _answered(ways: Ways, source: str, facts: Domains) -> dict[str, Domain]:
    """Return the values once the state's question is answered or skipped, or its run has ended."""
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


# every other event ------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Decided:
    """The result for the events other than an answer: the rows of the table that nothing can take, and where an
    event is not decided, as (event, state)."""

    never: frozenset[int]
    open_: tuple[tuple[str, str], ...]


def decide(ways: Ways, found: Found) -> Decided:
    """Try the rows of each event and state in turn, over all that can be the case there. ``never`` are indices into the table."""
    compiled, cases = ways.compiled, ways.move_cases
    rows = [(n, row) for n, row in enumerate(compiled.table) if row.event not in ONWARD[1:]]
    never, open_, come_to = {n for n, _ in rows}, list[tuple[str, str]](), entered(ways, found)
    begun = cases.every(cases.denied(cases.of(gate.shut)) for gate in ways.lasting_gates)
    for (event, source), group in groupby(rows, lambda one: (one[1].event, one[1].source)):
        mine = list(group)
        for at, facts in _situations(ways, found, come_to, event, source):
            left = cases.both(begun, cases.of(_still(ways, at, answered=False))) if at else TRUE
            masks = cases.masks(facts)
            for n, row in mine:
                if at and row.at not in ("", at):
                    continue
                when = cases.of(row.when)
                if n in never and cases.can(cases.both(left, when), masks):
                    never.discard(n)
                left = cases.both(left, cases.denied(when))
            if cases.can(left, masks):
                open_.append((event, source))
    return Decided(frozenset(never), tuple(dict.fromkeys(open_)))


def _situations(ways: Ways, found: Found, come_to: Entered, event: str, source: str) -> Iterator[tuple[str, Domains]]:
    """Yield the cases when an event comes in a state; where a run is paused, for each question that it may be paused at."""
    last: Domain = frozenset(key or None for state, key in come_to if state == source)
    if event == RESUMED:
        for (key, _), several in come_to.items():
            for facts in several if key in ways.asks else ():
                yield key, {**_looked_at(ways, facts), AT_QUESTION.name: frozenset((key,))}
    elif source in (END, EARLY_END):
        if last - {None}:
            yield "", {LAST_ANSWERED.name: last - {None}}
    elif source in found.at:
        yield "", {**_looked_at(ways, found.at[source]), LAST_ANSWERED.name: last, **_ended(ways, found, source)}


def _ended(ways: Ways, found: Found, state: str) -> Domains:
    """Return what is known of the flow that has just ended: that there is none, where the run begins anew once another flow ran over it,
    and comes to the state neither first nor straight from a run that can be gone back into."""
    stops = ways.compiled.stops
    from_there = {source for source, target in ways.compiled.ways if target == state and (source, target) not in found.never}
    open_ = any(source == START or (isinstance(stop := stops[source], Run) and stop.back) for source in from_there)
    return {} if open_ or ways.flow.policy.resumes else {ENDED.name: frozenset((None,))}


def _looked_at(ways: Ways, facts: Domains) -> Domains:
    """Return what is known of the facts that the flow's steps look at; what gates alone look at may be anything."""
    return {name: values for name, values in facts.items() if name in ways.compares}


Entered = Mapping[tuple[str, str], list[Domains]]
"""Sets of values with which a state is come to, by the state and the question answered last before it ("" for none)."""

APART_MOST: Final = 12
"""Sets kept apart for one state and one last question; where there are more they are joined."""


def entered(ways: Ways, found: Found) -> Entered:
    """Follow each arrow once more, now told apart by the question answered last, and past questions that lapse: one does where its
    own condition can cease to hold. What was answered before it is then answered last after it, as with a run of what was parked."""
    compiled, cases, beside = ways.compiled, ways.cases, _beside(ways)
    passed = {key: cases.both(cases.of(_still(ways, key, answered=False)), cases.denied(cases.of(ask.only_if)))
              for key, ask in ways.asks.items() if key in found.at and ways.flow.policy.resumes}
    passed |= {key: TRUE for key, stop in compiled.stops.items() if isinstance(stop, Run) and stop.flow == PARKED}
    come_to: dict[tuple[str, str], list[Domains]] = {(START, ""): []}
    waiting: list[tuple[str, str, Domains]] = []

    def follow(state: str, last: str, facts: Domains, when: int) -> None:
        for arrow in compiled.leaving[state] if when != FALSE else ():
            there = cases.narrowed(cases.both(when, cases.of(arrow.when)), facts)
            if there is not None and (state, arrow.target) not in found.never:
                there |= beside
                known = come_to.setdefault((arrow.target, last), [])
                if not any(all(values <= one[name] for name, values in there.items()) for one in known):
                    if len(known) >= APART_MOST:
                        there = {name: values.union(*(one[name] for one in known)) for name, values in there.items()}
                        known.clear()
                    known.append(there)
                    waiting.append((arrow.target, last, there))

    for state, stop in ((START, None), *compiled.stops.items()):
        if state in found.at and (isinstance(stop, Ask) or state not in passed):
            follow(state, state if isinstance(stop, Ask) else "", _answered(ways, state, found.at[state]),
                   cases.of(_still(ways, state, answered=True)))
    while waiting:
        state, last, facts = waiting.pop()
        if state in passed:
            follow(state, last, facts if state in ways.asks else _answered(ways, state, facts), passed[state])
    return come_to
