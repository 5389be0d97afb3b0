"""The answer to "why?" about one topic: a message for each row of the tables of numbers, and for a cause the findings that decided."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Flow, Known, Tell
from companion.conversation.policy import Policy
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import normalise
from companion.language.units import METRIC, reworded
from companion.screening.topics import TOPIC_BY_NAME, TOPICS, answers
from flows.outcome_facts import concluded, showing

MESSAGES_MOST: Final = 13
"""The most messages of one topic."""


def topic_of(asked: str) -> str:
    """Return the topic that a question is about, the first of those named in it; "" for none."""
    said = normalise(asked).strip(" .!?")
    if said in TOPIC_BY_NAME:
        return said
    return next((one.name for one in TOPICS if re.search(rf"(?<![\w.])(?:{one.named})(?![\w])", said)), "")


def why_facts(known: Known) -> dict[str, Value]:
    """Return the answers about the topic asked for, one message each."""
    topic = TOPIC_BY_NAME.get(topic_of(known.asked))
    if topic is None:
        return {}
    verdicts = concluded(known)[1].verdicts if topic.told else ()
    system = str(known.facts.get("welcome.units", METRIC))
    return {f"say_{n}": reworded(text, system) for n, text in enumerate(answers(topic, verdicts, showing(known)), 1)}


FLOW = Flow(
    "why_told", version=1, title="Why that", policy=replace(Policy.BESIDE, pages=True), command=None, at_start=why_facts,
    sentences=(r"(?:but |and |so )?why (?P<asked>.{1,60})",),
    fits=lambda asked, facts: bool(topic_of(asked)) and hear_pain(asked) is Pain.NO,
    steps=(
        *(Tell(f"{{say_{n}}}", fact(f"say_{n}").known) for n in range(1, MESSAGES_MOST + 1)),
        Tell("I have nothing on that. Say “why” for what I can answer.", ~fact("say_1").known),
    ),
)
