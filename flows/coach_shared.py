"""Shared parts of the coach's flows: the gate for coaches, and the parsing of what was asked for."""

from __future__ import annotations

from typing import Any

from companion.conversation.condition import Value, fact
from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow, Gate, Known
from companion.conversation.policy import Policy
from flows.shared import ANSWERED_OF_HARM, BEGUN_AGAIN

IS_COACH = fact("is_coach").is_("yes")
COACHES_ONLY = Gate(~IS_COACH, "That is only for coaches. Whoever runs this bot decides who is one.")
"""The gate before anything a coach sees or does; the link to the lifter is checked again when it is carried out."""

TO_A_LIFTER = (COACHES_ONLY, BEGUN_AGAIN, ANSWERED_OF_HARM)
"""The gates before a coach writes to a lifter or sets anything for one."""


def asked_for(known: Known) -> dict[str, Value]:
    """Return the text of the button or command that began the flow, unchecked."""
    return {"asked": known.asked}


def asked_of(known: Known) -> dict[str, Value]:
    """Return the lifter, their name and the action from a payload such as "17-pin_depth", unchecked."""
    of, _, what = known.asked.partition("-")
    return {"of": of, "asked_what": what, "whom": str(known.facts.get(f"lifter.{of}", "")) or "this lifter"}


def page_flow(name: str, title: str, **more: Any) -> Flow:
    """Return the flow that shows a coach the view of its own name, of what it was asked for; ``more``: how else it is begun."""
    return Flow(name, version=1, title=title, policy=Policy.VIEW, gates=(COACHES_ONLY,), at_start=asked_for,
                steps=(Do(Show(name, "{asked}")),), **more)
