"""A flow drawn: as a Mermaid state diagram, and as an outline to read."""

from __future__ import annotations

from companion.conversation.condition import ALWAYS, Every, Unless
from companion.conversation.flow import EARLY_END, END, Ask
from companion.conversation.machine import START, Arrow, Compiled


def mermaid(compiled: Compiled) -> str:
    """A Mermaid ``stateDiagram-v2``: every state and arrow, an arrow's label its own condition without those before."""
    lines = ["stateDiagram-v2"]
    for state, stop in compiled.stops.items():
        if isinstance(stop, Ask) and stop.caution:
            lines.append(f"    {state} : {state} (body at work)")
    lines += [f"    {_name(arrow.source)} --> {_name(arrow.target)}{_label(arrow)}" for arrow in compiled.arrows]
    return "\n".join(lines) + "\n"


def _name(state: str) -> str:
    return "[*]" if state in (START, END, EARLY_END) else state


def _label(arrow: Arrow) -> str:
    own = arrow.when
    if isinstance(own, Every) and own.parts:
        kept = [part for part in own.parts if not isinstance(part, Unless)]
        own = Every(tuple(kept)) if kept else ALWAYS
    words = str(own)
    return "" if own == ALWAYS or words == "always" else f" : {words.replace(':', ' ')}"


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
