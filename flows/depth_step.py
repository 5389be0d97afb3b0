"""Depth step: the depth to keep to on the next squat day, from the days so far."""

from __future__ import annotations

from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Do, Flow, Known, Tell
from companion.conversation.policy import Policy
from flows.day_facts import step_now
from flows.shared import WELCOMED

BAND_NAMES = ("well_above", "a_little_above", "parallel", "below")


def step_facts(known: Known) -> dict[str, Value]:
    """Return the depth step from all reported days, and its reason."""
    step = step_now(known)
    if step is None:
        return {"any": "no"}
    return {"any": "yes", "depth": step.depth.value, "why": step.why, "closed": "yes" if step.closed else "no"}


HAS_STEP = Fact("any", values=("yes", "no"))

FLOW = Flow(
    "depth_step", version=1, title="Depth to keep", policy=Policy.TALK, gates=(WELCOMED,), at_start=step_facts,
    command=("depth", "my depth to keep", "depth to keep", "how deep today"),
    facts=(HAS_STEP, Fact("depth", values=BAND_NAMES)),
    steps=(
        Do(Find("depth.step", "{depth}", "depth steps: two clean days a step deeper, movement a step back (choice)", "{why}"),
           HAS_STEP.is_("yes")),
        Tell("{why}", HAS_STEP.is_("yes"), picture="chart_depth"),
        Tell("No depth to keep to is set: that comes from the tests. Say “screen”.", HAS_STEP.is_("no") & ~fact("overall").known),
    ),
)
