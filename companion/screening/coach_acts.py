"""The coach's actions on a lifter, one row each: its button, its name, the answers it needs and the message to the lifter."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Final, Literal

from companion.screening.sources import value


@dataclass(frozen=True, slots=True)
class CoachAct:
    """One action.

    ``label``: its button on a lifter's page, "" if offered elsewhere; ``flow``: the conversation that carries it out, "" for one that
    another act becomes.
    ``words``: its name in the list the lifter reads, "" if not listed. ``told``: the message to the lifter, "" for none; a template
    with {who} and {Who} (the coach), {what} (``words``), {value} and {because} (the reason, as a sentence). ``undone``: the message
    when the value withdraws an earlier one. ``asks``: the answers or facts that make up its value, none if there is nothing to
    choose. ``reason``: "may" or "must" be given, "" for no reason. ``sets``: the fact that takes the value. ``ends``: until when it holds
    is asked.
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
    ends: bool = False


HOLDS_DAYS: Final = timedelta(weeks=value("order_holds")).days
"""Days for which an order holds unless its coach says otherwise."""

AS_COMPUTED: Final = "as_computed"
"""The ruling that withdraws an earlier one of the coach."""

_PINNED: Final = "{Who} has set {what}: {value}.{because}"

COACH_ACTS: Final = {act.name: act for act in (
    CoachAct("pin_depth", "Pin depth", "the depth to keep", _PINNED, asks=("pin_depth",), reason="may", sets="depth.pin", ends=True),
    CoachAct("pin_load", "Pin load", "the most load", _PINNED, asks=("pin_load",), reason="may", sets="load.pin", ends=True),
    CoachAct("raise_load", "Raise load limit", "the raised load limit", _PINNED, asks=("raise_load",), reason="must", sets="load.raised",
             ends=True),
    CoachAct("pin_setup", "Set the set-up", "the set-up", _PINNED, asks=("pin_setup",), reason="may", sets="setup.pin", ends=True),
    CoachAct("drill", "Choose drill", "the drill", _PINNED, asks=("drill",), reason="may", sets="drill.pin", ends=True),
    CoachAct("ask_for", "Ask for a test", "a request",
             "{Who} asks you to {value}, when it suits you. If it works your body, today's safety check comes first.", asks=("ask_for",)),
    CoachAct("retest", "Retest date", "the day to test again", "{Who} has set your retest to {value}.", asks=("retest",),
             sets="retest.pin"),
    CoachAct("end_retest", "End retest date", "the day to test again", "{Who} has ended the day they set for your retest. {value}"),
    CoachAct("overrule", "Overrule", "a finding",
             "{Who} sees it differently: {value}.{because} What the tests say stays next to it.",
             "{Who} now goes by what the tests say about {value}.{because}", ("finding", "ruling"), "must", "overruled.{finding}"),
    CoachAct("put_aside", "Put aside", asks=("aside",)),
    CoachAct("reviewed", "Reviewed"), CoachAct("snooze", flow=""), CoachAct("dismiss", flow=""),
    CoachAct("unreviewed", asks=("which",)),
    CoachAct("seen", flow="alert_seen"),
    CoachAct("note", told="From {who}: {value}", flow="coach_note"),
)}
"""By name. ``put_aside`` becomes a snooze until the day that is its value, a dismissal or a review; ``unreviewed`` takes back the one of
these whose number is its value, and is offered right after it."""

UNLISTED: Final = tuple(act.name for act in COACH_ACTS.values() if not act.words)
"""Actions left out of the list the lifter reads."""
