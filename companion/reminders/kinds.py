"""The kinds of reminder, and what becomes of one whose time has come. Pure.

Quiet hours hold every kind until they end. What a safety level does to a kind, how often it is told and whether it is said
that one was missed stands in the table. Our choice, after "at most one prompt and one follow-up a squat day; then stop"
(reference-values).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final, Literal

from companion.base.clock import instant, local_date
from companion.calendar.prompts import Preferences, after_quiet
from companion.record.reminders import Reminder

PUT_OFF: Final = timedelta(days=1)
"""An invitation to test is put off so long while something stands against it; our choice."""

OPEN_LEVELS: Final = ("go", "no_load")
PASSING: Final = ("go", "no_load", "not_today")
"""Levels that are over by the next day: a squat day tomorrow is told of, and one today is not."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind. ``needs``: the safety levels at which it is sent (none: at all); ``that_day``: those on the very day it is
    about, where they are fewer; ``else_``: what happens at another.
    ``rounds``: how often it is told where nobody answers, ``gap`` apart; ``says_missed``: whether one that came too late is
    spoken of. ``title``: what it is called in a list or a calendar ("": not listed);
    ``shows``: what a coach is shown instead of an invitation."""

    name: str
    needs: tuple[str, ...] = ()
    that_day: tuple[str, ...] = ()
    else_: Literal["put_off", "drop"] = "drop"
    rounds: int = 1
    gap: timedelta = timedelta(days=3)
    says_missed: bool = False
    title: str = ""
    shows: str = ""


KINDS: Final = {kind.name: kind for kind in (
    Kind("squat_day", PASSING, that_day=("go",), says_missed=True),
    Kind("squat_after", PASSING),
    Kind("morning", title="How it is the morning after"),
    Kind("retest", OPEN_LEVELS, else_="put_off", rounds=2, title="Test again"),
    Kind("digest", shows="caseload"),
    Kind("screen", OPEN_LEVELS, else_="put_off", title="Tests, when rested"),
    Kind("home_again"),
)}
"""The last is never sent: it is stale when it is due, and what is to come is then planned anew for the zone at home."""


@dataclass(frozen=True, slots=True)
class Decision:
    """What to do with a due reminder: "send", "stale", "drop", "ignored", or "wait" until a moment."""

    what: Literal["send", "stale", "drop", "ignored", "wait"]
    until: datetime | None = None


def decide(reminder: Reminder, now: datetime, wishes: Preferences, zone: str, level: str, asked_already: bool = False) -> Decision:
    """What becomes of a reminder that is due, at this safety level. ``asked_already``: the question of the morning after
    has been sent today or is due too."""
    kind = KINDS[reminder.kind]
    today = reminder.day == local_date(now, zone).isoformat()
    needs = kind.that_day if today and kind.that_day else kind.needs
    gone = reminder.stale_at is not None and now >= reminder.stale_at
    if gone and not kind.says_missed:
        return Decision("stale")
    if reminder.round > kind.rounds:
        return Decision("ignored")
    if (until := after_quiet(now, wishes, zone)) > now:
        return Decision("wait", until)
    if gone:
        return Decision("stale" if level in needs else "drop")
    if kind.name == "squat_after" and asked_already:
        return Decision("drop")
    if needs and level not in needs:
        return Decision("drop") if kind.else_ == "drop" else Decision("wait", now + PUT_OFF)
    return Decision("send")


def quiet_from(moment: datetime, wishes: Preferences, zone: str) -> datetime | None:
    """When the next quiet hours after a moment begin, in UTC; None where there are none."""
    begin, end = wishes.quiet
    if begin == end:
        return None
    today = local_date(moment, zone)
    days = (today + timedelta(days=ahead) for ahead in range(3))
    return next(at for day in days if (at := instant(day, begin, zone)) > moment)


def leaves_until(reminder: Reminder, now: datetime, wishes: Preferences, zone: str) -> Reminder:
    """The reminder as its message carries it: not to leave in the quiet hours that begin next either."""
    until = min((at for at in (reminder.stale_at, quiet_from(now, wishes, zone)) if at), default=None)
    return replace(reminder, stale_at=until)
