"""What a coach can do for a lifter, an act a row: its button, its words, what it asks the coach for and what the lifter is told."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal


@dataclass(frozen=True, slots=True)
class CoachAct:
    """One act.

    ``label``: its button on a lifter's page, "" where it is offered elsewhere; ``flow``: the conversation it is done in.
    ``words``: what it is called in the list the lifter reads, "" where that leaves it out. ``told``: what the lifter is told, a
    template over {who} and {Who} (the coach), {what} (the words), {value} and {because} (the reason, as a sentence), "" for nothing;
    ``undone``: the same where the value takes an earlier one back. ``asks``: the answers or facts its value is made of, none where
    there is nothing to choose; ``reason``: whether the coach may or must give one; ``sets``: the finding the value becomes.
    """

    name: str
    label: str = ""
    words: str = ""
    told: str = ""
    undone: str = ""
    asks: tuple[str, ...] = ()
    reason: Literal["", "may", "must"] = ""
    sets: str = ""
    flow: str = "coach_act"


AS_COMPUTED: Final = "as_computed"
"""A coach's ruling that takes back an earlier one."""

_PINNED: Final = "{Who} has set {what}: {value}.{because}"

COACH_ACTS: Final = {act.name: act for act in (
    CoachAct("pin_depth", "Pin depth", "the depth to keep", _PINNED, asks=("pin_depth",), reason="may", sets="depth.pin"),
    CoachAct("pin_load", "Pin load", "the most load", _PINNED, asks=("pin_load",), reason="may", sets="load.pin"),
    CoachAct("drill", "Choose drill", "the drill", _PINNED, asks=("drill",), reason="may", sets="drill.pin"),
    CoachAct("ask_for", "Ask for a test", "a request",
             "{Who} asks you to {value}, when it suits you. Today's safety check comes first where the body works.", asks=("ask_for",)),
    CoachAct("retest", "Retest date", "the day to test again", "{Who} has set your retest to {value}.", asks=("retest",)),
    CoachAct("overrule", "Overrule", "a finding",
             "{Who} sees it otherwise: {value}.{because} What the tests say stays beside it.",
             "{Who} now goes by what the tests say of {value}.{because}", ("finding", "ruling"), "must", "overruled.{finding}"),
    CoachAct("reviewed", "Reviewed"),
    CoachAct("unreviewed", asks=("which",)),
    CoachAct("seen", flow="alert_seen"),
    CoachAct("note", told="From {who}: {value}", flow="coach_note"),
)}
"""``unreviewed`` takes back the review whose number is its value, and is offered where one is confirmed."""

UNLISTED: Final = tuple(act.name for act in COACH_ACTS.values() if not act.words)
"""Acts that no list shows."""
