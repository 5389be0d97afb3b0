"""Checks that every flow must pass, read off the flow itself: none is named here."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from companion.conversation.cards import CARD_PARTS, card_of
from companion.conversation.flow import END, Ask, Flow, Tell
from companion.conversation.kinds import Hold, Ready
from companion.conversation.machine import Compiled
from companion.conversation.number_kinds import Number, PainScore
from companion.conversation.prompt import PAYLOAD_BYTES, Payload
from companion.conversation.registry import Book
from companion.conversation.table import EARLY_END, START, body_works
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS, fields_of
from companion.verify.domains import Ways
from companion.verify.proof import Found, decide, undecided

NOT_FLOWS: Final = ("safety", "warm", "pain")
"""Names before the dot of what is concluded rather than answered."""

LABEL_MOST: Final = 32
"""Characters of a button's label; our choice: more does not fit on one line of a narrow phone."""


def faults(ways: Ways, found: Found) -> list[str]:
    """Everything wrong with a flow, in words; an empty list where it is sound. ``found`` is what ``prove(ways)`` gives."""
    compiled = ways.compiled
    return [*_unreachable(compiled, found), *_dead_ends(compiled, found), *_dead_jumps(ways, found), *_undecided(ways),
            *_open(ways, found), *_unknown_facts(ways.book, compiled), *_too_long(compiled.flow), *_payloads(compiled.flow),
            *_labels(compiled.flow), *_careless(compiled.flow), *_examples(compiled.flow), *_without_card(ways.book, compiled.flow)]


def _unreachable(compiled: Compiled, found: Found) -> Iterator[str]:
    for state in compiled.stops.keys() - found.at.keys():
        yield f"{state} can't be reached"


def _dead_ends(compiled: Compiled, found: Found) -> Iterator[str]:
    backward: dict[str, set[str]] = {}
    for source, target in compiled.ways.keys() - found.never:
        backward.setdefault(target, set()).add(source)
    good, waiting = {END, EARLY_END}, [END, EARLY_END]
    while waiting:
        fresh = backward.get(waiting.pop(), set()) - good
        good |= fresh
        waiting += fresh
    for state in compiled.stops.keys() - good:
        yield f"{state} leads nowhere"


def _dead_jumps(ways: Ways, found: Found) -> Iterator[str]:
    for step in (step for step in ways.compiled.flow.steps if isinstance(step, Ask)):
        masks = ways.cases.masks({**found.at.get(step.key, {}), step.key: ways.whole(step.key)})
        for jump in step.then:
            if (step.key, jump.to) in found.never or not ways.cases.can(ways.cases.of(jump.when), masks):
                yield f"the jump from {step.key} to {jump.to} can never be taken"


def _undecided(ways: Ways) -> Iterator[str]:
    facts = {name: ways.whole(name) for name in ways.compares}
    for state in (START, *ways.compiled.stops):
        bad = undecided(ways.cases, [arrow.when for arrow in ways.compiled.leaving[state]], facts)
        if bad is not None:
            some = {name: next(iter(values)) for name, values in bad.items() if None not in values}
            yield f"from {state} not exactly one way would be taken with {some}"


def _open(ways: Ways, found: Found) -> Iterator[str]:
    for event, state in decide(ways, found).open_:
        yield f"{state} does not say what follows on {event}"


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
    for name in ("say", "caution", "log_as", "method", "placement"):
        yield from fields_of(getattr(step, name, ""))


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


def _labels(flow: Flow) -> Iterator[str]:
    for step in flow.steps:
        labels = [option.label for option in step.kind.options] if isinstance(step, Ask) else []
        if len(set(labels)) < len(labels):
            yield f"two answers read alike: {', '.join(labels)}"
        for label in labels:
            if not label or label != label.strip() or len(label) > LABEL_MOST:
                yield f"“{label}” is no good label"


def _careless(flow: Flow) -> Iterator[str]:
    """The body at work without a caution, or without a gate before it."""
    if body_works(flow) and not flow.policy.hears_pain:
        yield "the body works in it and pain is not heard"
    if body_works(flow) and not any(gate.first for gate in flow.gates):
        yield "the body works in it without a gate before"
    for step in flow.steps:
        does = isinstance(step, Ask) and (isinstance(step.kind, Hold) or (isinstance(step.kind, Ready) and step.kind.label == "Done"))
        if isinstance(step, Ask) and does and not step.caution:
            yield f"{step.key}: something is done without a caution"


def _without_card(book: Book, flow: Flow) -> Iterator[str]:
    """A question that can't say what it means, why it is asked, how to tell, or what to do when that can't be told."""
    if book.answers is None:
        return
    rows = book.answers().cards
    for step in flow.steps:
        missing = [part for part in CARD_PARTS if not getattr(card_of(rows, flow, step), part)] if isinstance(step, Ask) else []
        if missing and isinstance(step, Ask):
            yield f"{step.key}: its card does not say {', '.join(missing)}"


def _examples(flow: Flow) -> Iterator[str]:
    for step in flow.steps:
        if isinstance(step, Ask) and isinstance(step.kind, Number):
            number = step.kind
            if not number.low <= number.usual[0] <= number.example_value <= number.usual[1] <= number.high:
                yield f"{step.key}: its example is outside what is usual"
        if isinstance(step, Ask) and isinstance(step.kind, PainScore) and not step.safety:
            yield f"{step.key}: pain is asked about without care"
