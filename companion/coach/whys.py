"""The answers to "why?" about a lifter, on their page in chat and in the report, in the units the page has."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Final

from companion.coach.concluded import LifterConclusion, concluded_of
from companion.language.units import reworded
from companion.screening.protocols import measured
from companion.screening.rulings import Verdict
from companion.screening.topics import TOPIC_BY_NAME, TOPICS, Topic, answers

WHY_VIEW: Final = "why"
WHY_PREFIX: Final = "why_"

Whys = tuple[tuple[str, tuple[str, ...]], ...]
"""Answers to "why?": the name of what is asked about, and its answers."""

SECTIONS: Final = {
    "measured": (*(one.id for one in measured()), "error", "pain"), "charts": ("depth", "estimate"),
    "squat_days": ("squat_days", "warm_up", "drill"), "plan": ("depth", "load", "drill", "home", "retest", "dates", "reminders"),
    "safety": ("pain", "safety")}
"""The topics of each section of the report; a cause is answered beside its ruling."""


def topics_of(verdicts: Sequence[Verdict]) -> tuple[Topic, ...]:
    """Return the topics to choose from on a lifter's page: the causes only where there is a verdict."""
    return tuple(one for one in TOPICS if one.listed and (verdicts or not one.told))


def topic_asked(what: str) -> Topic | None:
    """Return the topic that a button names; None for none."""
    return TOPIC_BY_NAME.get(what.removeprefix(WHY_PREFIX)) if what.startswith(WHY_PREFIX) else None


def whys_of(db: sqlite3.Connection, lifter: int, topic: Topic, now: datetime) -> tuple[str, ...]:
    """Return the answers about a topic for one lifter."""
    return _told(topic, concluded_of(db, lifter, now))


def _told(topic: Topic, found: LifterConclusion) -> tuple[str, ...]:
    return tuple(reworded(text, found.system) for text in answers(topic, found.verdicts, found.show))


def section_whys(found: LifterConclusion) -> dict[str, Whys]:
    """Return the answers of each section of a report, and of each cause by its name."""
    def about(names: Iterable[str]) -> Whys:
        chosen = [TOPIC_BY_NAME[name] for name in names if name in TOPIC_BY_NAME]
        return tuple((one.label, _told(one, found)) for one in chosen)

    return {section: about(names) for section, names in SECTIONS.items()} | {
        verdict.cause: about((verdict.cause,)) for verdict in found.verdicts}
