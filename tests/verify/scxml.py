"""A flow as a W3C State Chart XML document, for a second interpreter to run.

It is written from the order of the steps and their own guards, never from the compiled table: out of each state stand
the jumps, then every later question with its guard, then the end, and whoever reads the document takes the first that
holds (SCXML 1.0, 3.13, document order). Questions stand in one compound state with a history, so what all of them answer is
written once, and a run that was paused goes on where the history says, not where a fact does. Facts come with each event as
``_event.data``; one that is missing is null.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final
from xml.sax.saxutils import quoteattr

from companion.conversation.condition import ALWAYS, Compare, Condition, Every, Some, Unless
from companion.conversation.flow import END, PARKED, Ask, Flow, Run

NAMESPACE: Final = "http://www.w3.org/2005/07/scxml"
START, EARLY_END, PAUSED, IN_PAIN, CLOSED, OVER_BY_PAIN = "start", "early_end", "paused", "in_pain", "closed", "ended_by_pain"
ASKING: Final = "asking"


def ways_out(flow: Flow, state: str) -> Iterator[tuple[str, Condition]]:
    """Where a state may lead and when, in the order to try them; the last always holds. ``state``: a question's key, a
    run's key, or "start"."""
    keys = [step.key if isinstance(step, Ask | Run) else "" for step in flow.steps]
    at = -1 if state == START else keys.index(state)
    here = flow.steps[at] if at >= 0 else None
    for jump in here.then if isinstance(here, Ask | Run) else ():
        yield (EARLY_END if jump.to == END else jump.to), jump.when
    for step in flow.steps[at + 1:]:
        if isinstance(step, Ask | Run):
            yield step.key, step.only_if
            if step.only_if == ALWAYS:
                return
    yield END, ALWAYS


def datum(fact: str) -> str:
    """The name of a fact in the document: "safety.level" becomes "f_safety__level", which no language reserves."""
    return "f_" + fact.replace(".", "__")


def expression(condition: Condition) -> str:
    """A condition as an ECMAScript expression over ``_event.data``. Number facts must hold numbers, or be null.

    Raises TypeError for what is no condition.
    """
    match condition:
        case Compare(fact, "known"):
            return f"(_event.data.{datum(fact)} != null)"
        case Compare(fact, _, tuple() as values):
            return "(" + " || ".join(f"_event.data.{datum(fact)} == '{value}'" for value in values) + ")"
        case Compare(fact, op, bound):
            name = f"_event.data.{datum(fact)}"
            return f"({name} != null && {name} {op} {bound!r})"
        case Every(parts):
            return "(" + " && ".join(map(expression, parts)) + ")" if parts else "true"
        case Some(parts):
            return "(" + " || ".join(map(expression, parts)) + ")" if parts else "false"
        case Unless(part):
            return f"({expression(part)} == false)"
    raise TypeError(f"{condition!r} is not a condition")


def name_of(state: str) -> str:
    """The name of a state in the document: a question's begins with "q_", since one may be called as what is no question."""
    return state if state in (START, END, EARLY_END, PAUSED, IN_PAIN, CLOSED, OVER_BY_PAIN, ASKING, "as_it_was") else f"q_{state}"


def scxml(flow: Flow) -> str:
    """The document of one flow. Its states are the flow's questions and runs, and what a run can be besides."""
    asks = [step for step in flow.steps if isinstance(step, Ask)]
    works = any(ask.caution for ask in asks)
    body = [*_state(START, _gates(flow, "begin", START), _onward(flow, "begin", START))]
    for run in (step for step in flow.steps if isinstance(step, Run)):
        body += _state(run.key, _onward(flow, "returned", run.key))
    if asks:
        inner = ['<history id="as_it_was">', f"<transition target={quoteattr(name_of(asks[0].key))}/>", "</history>",
                 _way("stop interrupted", PAUSED)]
        inner += [_way("pain", IN_PAIN if works else PAUSED)] if flow.policy.hears_pain else []
        for ask in asks:
            skipped = [_way("skip", ask.key)] if ask.safety else _onward(flow, "skip", ask.key)
            inner += _state(ask.key, _onward(flow, "answer", ask.key), skipped, _back(flow, ask), [_way("again help", ask.key)])
        body += _state(ASKING, inner)
        body += _state(PAUSED, _resumed(flow, asks, PAUSED))
        body += _state(IN_PAIN, [_way("resumed", OVER_BY_PAIN, "_event.data.f_here__goes_on == null")], _resumed(flow, asks, IN_PAIN))
    for end in (END, EARLY_END):
        body += _state(end, [_way("back", ask.key, f"_event.data.f_here__last == '{ask.key}'") for ask in asks],
                       [_way("pain", OVER_BY_PAIN)])
    body += [f'<final id="{end}"/>' for end in (CLOSED, OVER_BY_PAIN)]
    return "\n".join(['<?xml version="1.0" encoding="UTF-8"?>',
                      f'<scxml xmlns="{NAMESPACE}" version="1.0" datamodel="ecmascript" name={quoteattr(flow.name)} initial="{START}">',
                      *body, "</scxml>"]) + "\n"


def _state(key: str, *ways: list[str]) -> list[str]:
    return [f"<state id={quoteattr(name_of(key))}>", *(way for some in ways for way in some), "</state>"]


def _way(events: str, target: str, cond: str = "") -> str:
    return f"<transition event={quoteattr(events)}{f' cond={quoteattr(cond)}' if cond else ''} target={quoteattr(name_of(target))}/>"


def _onward(flow: Flow, event: str, state: str, also: str = "") -> list[str]:
    return [_way(event, target, " && ".join(part for part in (also, "" if when == ALWAYS else expression(when)) if part))
            for target, when in ways_out(flow, state)]


def _gates(flow: Flow, event: str, state: str) -> list[str]:
    found = []
    for gate in flow.gates:
        shut = expression(gate.shut)
        if gate.first:
            found.append(_way(event, state, f"{shut} && _event.data.{datum(f'here.tried_{gate.first}')} == null"))
        found.append(_way(event, CLOSED, shut))
    return found


def _back(flow: Flow, ask: Ask) -> list[str]:
    found = []
    if ask.back:
        found = [_way("back", one.key, f"_event.data.f_here__last == '{one.key}'") for one in flow.steps if isinstance(one, Ask)]
        found += [_way("back", run.key, f"_event.data.f_here__ended == '{run.flow}'") for run in flow.steps
                  if isinstance(run, Run) and run.flow != PARKED and ask.key in _leads_to(flow, run.key)]
        found.append(_way("back", START, "_event.data.f_here__ended != null"))
    return [*found, _way("back", ask.key)]


def _resumed(flow: Flow, asks: list[Ask], state: str) -> list[str]:
    if not flow.policy.resumes:
        return [_way("resumed", START)]
    found = _gates(flow, "resumed", state)
    for ask in asks:
        if ask.only_if != ALWAYS:
            found += _onward(flow, "resumed", ask.key, f"_event.data.f_here__at == '{ask.key}' && {expression(~ask.only_if)}")
    return [*found, _way("resumed", "as_it_was")]


def _leads_to(flow: Flow, state: str) -> list[str]:
    """Every question and run that can come after a state."""
    questions = {step.key for step in flow.steps if isinstance(step, Ask | Run)}
    found = [state]
    for one in found:
        found += [target for target, _ in ways_out(flow, one) if target in questions and target not in found[1:]]
    return found[1:]
