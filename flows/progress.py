"""Progress: the tests that are done and those still open."""

from __future__ import annotations

from dataclasses import replace

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Flow, Known, Tell
from companion.conversation.policy import Policy
from companion.screening.protocols import routed
from flows.screen_facts import done_already


def progress_facts(known: Known) -> dict[str, Value]:
    """Return the titles of the tests that count already, and of the rest."""
    counted = done_already(known)
    done = [one.title.lower() for test, one in routed().items() if f"done_{test}" in counted]
    left = [one.title.lower() for test, one in routed().items() if f"done_{test}" not in counted]
    return {"how_many": float(len(done)), "done": ", ".join(done), "left": ", ".join(left)}


FLOW = Flow(
    "progress", version=1, title="How far I am", policy=replace(Policy.TALK, pages=True),
    command=("progress", "how far", "how far am i", "status"),
    at_start=progress_facts,
    steps=(
        Tell("No test is done yet since your last results. Say “screen” to begin, or name one test.", fact("how_many") < 1),
        Tell("Done: {done}.", fact("how_many") >= 1),
        Tell("Still open: {left}. Say “screen” to go on, or “results” for what they say so far.",
             (fact("how_many") >= 1) & (fact("how_many") < len(routed()))),
        Tell("All tests are done. Say “results”.", fact("how_many") >= len(routed())),
    ),
)
