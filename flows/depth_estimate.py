"""Depth estimate: the depth at which length alone would start the tuck, from the lifter's own numbers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Flow, Known, Offer, Tell
from companion.conversation.policy import Policy
from companion.conversation.wording import MOST_WORDS
from companion.screening.errors import errors_from
from companion.screening.estimate import DepthEstimate, depth_estimate
from companion.screening.limits import Work
from companion.screening.screen import about_from, screen_from
from flows.outcome_facts import showing
from flows.shared import AT_ALL, CLOSING_LEVELS, limited

MESSAGE_MOST = 330
"""The most characters of sentences joined in one message; our choice, below the limit of 350."""


def estimate_facts(known: Known) -> dict[str, Value]:
    """Return the estimate in a few messages, or the reason for none."""
    answers = list(known.answers())
    about = about_from(answers)
    found = depth_estimate(screen_from(answers), about, errors_from(answers, about.sex), showing(known))
    if not isinstance(found, DepthEstimate):
        return {"part_1": found.words}
    return {f"part_{number}": text for number, text in enumerate(in_messages(found.words)[:PARTS_MOST], 1)}


def in_messages(sentences: Iterable[str]) -> list[str]:
    """Return sentences joined, in order, to as few messages as take them."""
    messages = [""]
    for words in sentences:
        both = f"{messages[-1]} {words}".strip()
        if messages[-1] and (len(both) > MESSAGE_MOST or len(both.split()) > MOST_WORDS):
            messages.append(words)
        else:
            messages[-1] = both
    return messages


PARTS_MOST = 6

FLOW = Flow(
    "depth_estimate", version=1, title="Depth estimate", policy=replace(Policy.TALK, pages=True),
    command=("estimate", "my depth", "how deep"),
    gates=(*AT_ALL, *CLOSING_LEVELS, limited(Work.SQUAT)), at_start=estimate_facts,
    steps=tuple(Tell(f"{{part_{number}}}", fact(f"part_{number}").known, picture="your_squat" if number == 1 else "",
                     offers=(Offer("Why?", "why_told", "estimate"), Offer("My proportions", "about_you", "proportions"))
                     if number == 1 else ())
                for number in range(1, PARTS_MOST + 1)),
)
