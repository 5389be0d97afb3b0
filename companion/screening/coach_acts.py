"""The coach's actions on a lifter, one row each: its button, its name, the answers it needs and the message to the lifter."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Final, Literal

from companion.screening.sources import value


@dataclass(frozen=True, slots=True)
class Role:
    """One role, granted by whoever runs the bot. ``one``: it in words ("a coach"); ``yours``: the same for the lifter ("your coach")."""

    one: str
    yours: str


ROLES: Final = {"coach": Role("a coach", "your coach"), "clinician": Role("a clinician", "your clinician"),
                "read_only": Role("a reader", "a reader, who can change nothing,")}
"""By name. What each may do stands in its acts; all see the same."""

_ALL: Final = tuple(ROLES)
_CARE: Final = ("coach", "clinician")


@dataclass(frozen=True, slots=True)
class CoachAct:
    """One action.

    ``label``: its button on a lifter's page, "" if offered elsewhere; ``flow``: the conversation that carries it out, "" for one that
    another act becomes.
    ``words``: its name in the list the lifter reads, "" if not listed. ``told``: the message to the lifter, "" for none; a template
    with {who} and {Who} (the coach), {what} (``words``), {value} and {because} (the reason, as a sentence). ``undone``: the message
    when the value withdraws an earlier one. ``asks``: the answers or facts that make up its value, none if there is nothing to
    choose. ``reason``: "may" or "must" be given, "" for no reason. ``sets``: the fact that takes the value. ``ends``: until when it holds
    is asked. ``roles``: who may do it; ``several``: whether for a group too; ``works``: whether it is about squats, tests or drills, so
    that both hear what stands before these.
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
    roles: tuple[str, ...] = ("coach",)
    several: bool = False
    works: bool = False


HOLDS_DAYS: Final = timedelta(weeks=value("order_holds")).days
"""Days for which an order holds unless its coach says otherwise."""

AS_COMPUTED: Final = "as_computed"
"""The ruling that withdraws an earlier one of the coach."""

_SET: Final = ("{Who} has set {what}: {value}.{because}", "{Who} no longer sets {what}.{because} {value}")
"""Of an order: what is told, and what where it is withdrawn; its value is then what holds now."""

COACH_ACTS: Final = {act.name: act for act in (
    CoachAct("pin_depth", "Pin depth", "the depth to keep", *_SET, asks=("pin_depth",), reason="may", sets="depth.pin", ends=True,
             works=True),
    CoachAct("pin_load", "Pin load", "the most load", *_SET, asks=("pin_load",), reason="may", sets="load.pin", ends=True,
             works=True),
    CoachAct("raise_load", "Raise load limit", "the raised load limit", *_SET, asks=("raise_load",), reason="must", sets="load.raised",
             ends=True, works=True),
    CoachAct("pin_setup", "Set the set-up", "the set-up", *_SET, asks=("pin_setup",), reason="may", sets="setup.pin", ends=True,
             works=True),
    CoachAct("drill", "Choose drill", "the drill", *_SET, asks=("drill",), reason="may", sets="drill.pin", ends=True,
             several=True, works=True),
    CoachAct("ask_for", "Ask for a test", "a request",
             "{Who} asks you to {value}, when it suits you. If it works your body, today's safety check comes first.", asks=("ask_for",),
             several=True, works=True),
    CoachAct("retest", "Retest date", "the day to test again", "{Who} has set your retest to {value}.", asks=("retest",),
             sets="retest.pin", works=True),
    CoachAct("end_retest", "End retest date", "the day to test again", "{Who} has ended the day they set for your retest. {value}"),
    CoachAct("overrule", "Overrule", "a finding",
             "{Who} sees it differently: {value}.{because} What the tests say stays next to it.",
             "{Who} now goes by what the tests say about {value}.{because}", ("finding", "ruling"), "must", "overruled.{finding}"),
    CoachAct("private", "Private note", asks=("private",), roles=_ALL),
    CoachAct("lift_referral", "Lift referral", "a referral",
             "{Who} saw you on {value} and lifts the referral.{because} From tomorrow a new safety check comes first. Only that opens "
             "squats and tests again.", asks=("seen_days",), reason="must", roles=("clinician",)),
    CoachAct("guess", asks=("which",), roles=_CARE),
    CoachAct("group", "Groups", asks=("group",)),
    CoachAct("hand_over", "Hand over", "a coach to take over", "{Who} would like to hand you over to coach {value}.{because} If you agree, "
             "{value} sees your answers from then on and {who} no longer does. Until then nothing changes.", asks=("code",), reason="may",
             several=True),
    CoachAct("settle", asks=("which",)),
    CoachAct("put_aside", "Put aside", asks=("aside",), roles=_ALL),
    CoachAct("reviewed", "Reviewed", roles=_ALL), CoachAct("snooze", flow="", roles=_ALL), CoachAct("dismiss", flow="", roles=_ALL),
    CoachAct("unreviewed", asks=("which",), roles=_ALL),
    CoachAct("seen", flow="alert_seen", roles=_ALL),
    CoachAct("note", told="From {who}: {value}", flow="coach_note", roles=_CARE, several=True),
)}
"""By name. ``put_aside`` becomes a snooze until the day that is its value, a dismissal or a review; ``unreviewed`` takes back the one of
these whose number is its value, and is offered right after it. ``settle`` becomes an order like that of another coach, whose value is its
kind and that coach's number ("pin_load-7"), and is offered where two differ. ``guess`` takes what is
expected from its button."""

UNLISTED: Final = tuple(act.name for act in COACH_ACTS.values() if not act.words)
"""Actions left out of the list the lifter reads."""
