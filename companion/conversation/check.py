"""What must hold of every flow, checked on the flow itself: nothing here names one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from math import prod
from random import Random
from typing import Final

from companion.conversation.book import Book
from companion.conversation.condition import Compare, Facts, Value
from companion.conversation.flow import EARLY_END, END, Ask, Flow, Tell
from companion.conversation.kinds import Number, PainScore
from companion.conversation.machine import START, Arrow, Compiled
from companion.conversation.prompt import PAYLOAD_BYTES, Payload, body_works
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS, fields_of

NOT_FLOWS: Final = ("safety", "warm")
"""Names before the dot of what is concluded rather than answered."""

ASSIGNMENTS_MOST: Final = 1_000
"""Combinations of boundary values tried per state."""


def faults(book: Book, compiled: Compiled) -> list[str]:
    """Everything wrong with a flow, in words; an empty list where it is sound."""
    return [*_unreachable(compiled), *_dead_ends(compiled), *_undecided(compiled), *_unknown_facts(book, compiled),
            *_too_long(compiled.flow), *_payloads(compiled.flow), *_unguarded(compiled.flow), *_examples(compiled.flow)]


def _reached(arrows: Mapping[str, set[str]], start: str) -> set[str]:
    found, waiting = {start}, [start]
    while waiting:
        for target in arrows.get(waiting.pop(), set()) - found:
            found.add(target)
            waiting.append(target)
    return found


def _unreachable(compiled: Compiled) -> Iterator[str]:
    forward: dict[str, set[str]] = {}
    for arrow in compiled.arrows:
        forward.setdefault(arrow.source, set()).add(arrow.target)
    for state in compiled.stops.keys() - _reached(forward, START):
        yield f"{state} can't be reached"


def _dead_ends(compiled: Compiled) -> Iterator[str]:
    backward: dict[str, set[str]] = {}
    for arrow in compiled.arrows:
        backward.setdefault(arrow.target, set()).add(arrow.source)
    good = _reached(backward, END) | _reached(backward, EARLY_END)
    for state in compiled.stops.keys() - good:
        yield f"{state} leads nowhere"


def domain(compiled: Compiled, compares: list[Compare]) -> list[Value | None]:
    """The values of one fact worth trying: missing, and each side of every bound it is held against."""
    values: dict[Value | None, None] = {None: None}
    step = step_of(compiled, compares[0].fact)
    for compare in compares:
        if isinstance(compare.bound, tuple):
            values |= dict.fromkeys(compare.bound)
            values["something else"] = None
        elif compare.bound is not None:
            values |= dict.fromkeys((compare.bound - step, compare.bound, compare.bound + step))
        else:
            values["something"] = None
    return list(values)


def step_of(compiled: Compiled, name: str) -> float:
    """The smallest difference a number fact can show."""
    for one in compiled.flow.facts:
        if one.name == name and one.step:
            return one.step
    stop = compiled.stops.get(name)
    if isinstance(stop, Ask) and isinstance(stop.kind, Number):
        return stop.kind.step
    return 1.0


def assignments(compiled: Compiled, arrows: list[Arrow]) -> Iterator[Facts]:
    """Facts at, just under and just over every bound of the conditions on these arrows, and missing: every combination
    where there are few, else a fixed draw of them."""
    by_fact: dict[str, list[Compare]] = {}
    for arrow in arrows:
        for compare in arrow.when.compares():
            by_fact.setdefault(compare.fact, []).append(compare)
    domains = [domain(compiled, compares) for compares in by_fact.values()]
    draw = Random(0)
    chosen = product(*domains) if prod(map(len, domains)) <= ASSIGNMENTS_MOST else (
        [draw.choice(one) for one in domains] for _ in range(ASSIGNMENTS_MOST))
    for values in chosen:
        yield {name: value for name, value in zip(by_fact, values, strict=True) if value is not None}


def _undecided(compiled: Compiled) -> Iterator[str]:
    for source in (START, *compiled.stops):
        arrows = [arrow for arrow in compiled.arrows if arrow.source == source]
        for facts in assignments(compiled, arrows):
            taken = [arrow.target for arrow in arrows if arrow.when.holds(facts)]
            if len(taken) != 1:
                yield f"from {source} {taken or 'no way'} would be taken with {dict(facts)}"
                break


def _unknown_facts(book: Book, compiled: Compiled) -> Iterator[str]:
    flow = compiled.flow
    own = {step.key for step in flow.steps if isinstance(step, Ask)} | {one.name for one in flow.facts} | set(compiled.stops)
    named = {compare.fact for arrow in compiled.arrows for compare in arrow.when.compares()}
    named |= {field for step in flow.steps for field in _fields(step)}
    beside = {"unit", "parked_title", "coach", "today", "side"}
    for name in sorted(named - own - beside):
        flow_name, dot, key = name.partition(".")
        other = book.flows.get(flow_name)
        if dot and (other is None or key in other.stops or flow_name in NOT_FLOWS):
            continue
        if flow.at_start is None and not any(f"{side}_{name}" in own for side in ("left", "right")):
            yield f"nobody knows {name}"


def _fields(step: object) -> Iterator[str]:
    if isinstance(step, Ask):
        for text in (step.say, step.caution, step.log_as, step.method, step.placement):
            yield from fields_of(text)
    elif isinstance(step, Tell):
        yield from fields_of(step.say)


def _too_long(flow: Flow) -> Iterator[str]:
    for step in flow.steps:
        if isinstance(step, Ask | Tell) and (len(step.say) > MOST_CHARACTERS or len(step.say.split()) > MOST_WORDS):
            yield f"“{step.say[:30]}…” is {len(step.say)} characters, {len(step.say.split())} words"


def _payloads(flow: Flow) -> Iterator[str]:
    for step in flow.steps:
        for option in step.kind.options if isinstance(step, Ask) else ():
            payload = str(Payload(flow.name, flow.version, f"{step.key}?", option.value)) if isinstance(step, Ask) else ""
            if len(payload.encode()) > PAYLOAD_BYTES or payload.count(".") != 3:
                yield f"the payload {payload} is not one"


def _unguarded(flow: Flow) -> Iterator[str]:
    if body_works(flow) and not any(gate.first for gate in flow.gates):
        yield "the body works in it without a gate before"


def _examples(flow: Flow) -> Iterator[str]:
    for step in flow.steps:
        if isinstance(step, Ask) and isinstance(step.kind, Number):
            number = step.kind
            if not number.low <= number.usual[0] <= number.example_value <= number.usual[1] <= number.high:
                yield f"{step.key}: its example is outside what is usual"
        if isinstance(step, Ask) and isinstance(step.kind, PainScore) and not step.safety:
            yield f"{step.key}: pain is asked about without care"
