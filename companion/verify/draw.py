"""A flow drawn: as a Mermaid state diagram, and as an outline to read."""

from __future__ import annotations

from companion.conversation.condition import ALWAYS, Condition
from companion.conversation.flow import EARLY_END, END, Ask
from companion.conversation.machine import START, Compiled
from companion.verify.scxml import ways_out


def mermaid(compiled: Compiled) -> str:
    """A Mermaid ``stateDiagram-v2``: every state and arrow.

    The arrows out of a state stand in the order they are tried, each with its own condition: one is taken where none
    above it holds. "else" is the last of several.
    """
    lines = [f"%% {compiled.flow.title}, version {compiled.flow.version}. Written by “companion flows draw”.", "stateDiagram-v2"]
    for state, stop in compiled.stops.items():
        if isinstance(stop, Ask) and stop.caution:
            lines.append(f"    {state} : {state} (body at work)")
    for source in (START, *compiled.stops):
        labels: dict[str, list[str]] = {}
        for target, when in ways_out(compiled.flow, source):
            labels.setdefault(_name(target), []).append(_words(when))
        for target, words in labels.items():
            alone = len(labels) == 1
            lines.append(f"    {_name(source)} --> {target}" + ("" if alone else f" : {' or '.join(words)}"))
    return "\n".join(lines) + "\n"


def _name(state: str) -> str:
    return "[*]" if state in (START, END, EARLY_END) else state


def _words(when: Condition) -> str:
    return "else" if when == ALWAYS else str(when).replace(":", " ")


def outline(compiled: Compiled) -> str:
    """A flow in the order it is lived: each question with what it asks for and when it is asked."""
    flow = compiled.flow
    lines = [f"{flow.title} ({flow.name}, version {flow.version})"]
    if flow.needs:
        lines.append(f"needs: {', '.join(flow.needs)}")
    for state, stop in compiled.stops.items():
        when = "" if stop.only_if == ALWAYS else f"   [if {stop.only_if}]"
        what = type(stop.kind).__name__.lower() if isinstance(stop, Ask) else "flow"
        lines.append(f"  {state:22} {what:10}{when}")
    return "\n".join(lines)
