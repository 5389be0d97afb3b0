"""Retest later: a choice of three later dates."""

from __future__ import annotations

from datetime import date, timedelta

from companion.conversation.condition import Value, fact
from companion.conversation.effects import Remind
from companion.conversation.flow import Ask, Do, Flow, Known, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from flows.shared import WELCOMED

LATER_DATES = (("tomorrow", 1), ("in_three", 3), ("in_a_week", 7))


def later_facts(known: Known) -> dict[str, Value]:
    """Return the three later dates."""
    today = date.fromisoformat(str(known.facts["today"]))
    return {name: (today + timedelta(days=days)).isoformat() for name, days in LATER_DATES}


FLOW = Flow(
    "retest_later", version=1, title="Test again later", policy=Policy.TALK, command=None, gates=(WELCOMED,), at_start=later_facts,
    steps=(
        Ask("when", "When would suit you better? I will ask again then.", choice(
            ("tomorrow", "Tomorrow"), ("in_three", "In three days", "three days", "3 days"), ("in_a_week", "In a week", "a week", "week"))),
        *(Do(Remind("retest", "retest", f"{{{name}}}"), fact("when").is_(name)) for name, _ in LATER_DATES),
        *(Tell(f"Good: {{{name}:date}}. Until then “retest” starts it whenever you like.", fact("when").is_(name))
          for name, _ in LATER_DATES),
    ),
)
