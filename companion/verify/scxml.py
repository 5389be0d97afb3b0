"""A flow as a W3C State Chart XML document, for a second interpreter to run.

It is written from the order of the steps and their own guards, never from the compiled arrows: out of each state stand
the jumps, then every later question with its guard, then the end, and whoever reads the document takes the first that
holds (SCXML 1.0, 3.13, document order). Facts come with each event as ``_event.data``; one that is missing is null.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final
from xml.sax.saxutils import quoteattr

from companion.conversation.condition import ALWAYS, Compare, Condition, Every, Some, Unless
from companion.conversation.flow import EARLY_END, END, Ask, Flow, Run

NAMESPACE: Final = "http://www.w3.org/2005/07/scxml"
BEGIN: Final = "start"
GOES_ON: Final = "answer skip"
STAYS: Final = "pain stop back again help"
"""Events that every question answers, and that by themselves lead nowhere: the engine decides what follows."""


def ways_out(flow: Flow, state: str) -> Iterator[tuple[str, Condition]]:
    """Where a state may lead and when, in the order to try them; the last always holds. ``state``: a question's key, a
    run's key, or "start"."""
    keys = [step.key if isinstance(step, Ask | Run) else "" for step in flow.steps]
    at = -1 if state == BEGIN else keys.index(state)
    here = flow.steps[at] if at >= 0 else None
    for jump in here.then if isinstance(here, Ask) else ():
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


def scxml(flow: Flow) -> str:
    """The document of one flow. Its states are the flow's questions and runs between "start", "end" and "early_end"."""
    lines = ['<?xml version="1.0" encoding="UTF-8"?>',
             f'<scxml xmlns="{NAMESPACE}" version="1.0" datamodel="ecmascript" name={quoteattr(flow.name)} '
             f'initial="{BEGIN}">']
    for state in (BEGIN, *(step.key for step in flow.steps if isinstance(step, Ask | Run))):
        lines.append(f"  <state id={quoteattr(state)}>")
        for target, when in ways_out(flow, state):
            cond = "" if when == ALWAYS else f" cond={quoteattr(expression(when))}"
            lines.append(f'    <transition event="{GOES_ON}"{cond} target={quoteattr(target)}/>')
        lines += ([] if state == BEGIN else [f'    <transition event="{STAYS}"/>']) + ["  </state>"]
    lines += [f'  <final id="{END}"/>', f'  <final id="{EARLY_END}"/>', "</scxml>"]
    return "\n".join(lines) + "\n"
