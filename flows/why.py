"""Answers to "why?" about a number, a line, a ruling, a dose or a date, from the table of sources."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow, Run
from companion.conversation.kinds import Option, choice
from companion.conversation.policy import Policy
from companion.screening.topics import TOPICS

FLOW = Flow(
    "why", version=1, title="Why?", policy=Policy.BESIDE, command=("why that", "sources", "evidence table"),
    sentences=(r"(?:but |and )?why(?: (?:is|do you say) that)?\?*",),
    steps=(
        Ask("topic", "Why what? Each answer names the number, where it comes from, and what speaks against it.", choice(
            *(Option(one.name, one.label, one.words, only_if=fact(one.told).known) if one.told else Option(one.name, one.label, one.words)
              for one in TOPICS if one.listed))),
        Run("why_told", fact("topic").known, asked="{topic}"),
    ),
)
