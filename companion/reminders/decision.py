"""The decision on a due reminder, by its kind. Pure."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final, Literal

from companion.base.clock import instant, local_date
from companion.calendar.prompts import Preferences, after_quiet
from companion.record.reminders import Reminder
from companion.reminders.kinds import REMINDER_KINDS
from companion.screening.sources import value

POSTPONED_BY: Final = timedelta(days=value("postponed"))
"""Time by which an invitation to test is postponed while the safety level does not allow it; our choice."""


@dataclass(frozen=True, slots=True)
class Decision:
    """The decision on a due reminder: "send", "stale", "drop", "ignored", or "wait" until a moment."""

    what: Literal["send", "stale", "drop", "ignored", "wait"]
    until: datetime | None = None


def decide(reminder: Reminder, now: datetime, wishes: Preferences, zone: str, level: str, given_way: bool = False,
           suspended: bool = False, limited: bool = False) -> Decision:
    """Decide on a due reminder at this safety level. ``given_way``: true if the kind that replaces it was sent lately or is due
    too. ``suspended``: none goes out, whatever its kind, from thoughts of self-harm until the lifter begins again, nor while it is asked
    whether there are any. ``limited``: true if a clinician's limit
    closes what it invites to."""
    kind = REMINDER_KINDS[reminder.kind]
    if suspended:
        return Decision("wait", now + POSTPONED_BY) if kind.when == "on_date" else Decision("drop")
    today = reminder.day == local_date(now, zone).isoformat()
    levels = kind.that_day if today and kind.that_day else kind.levels
    gone = reminder.stale_at is not None and now >= reminder.stale_at
    if gone and not kind.says_missed:
        return Decision("stale")
    if reminder.round > kind.rounds:
        return Decision("ignored")
    if kind.quiet == "wait" and (until := after_quiet(now, wishes, zone)) > now:
        return Decision("wait", until)
    if gone:
        return Decision("stale" if level in levels and not limited else "drop")
    if given_way:
        return Decision("drop")
    if limited or (levels and level not in levels):
        return Decision("drop") if kind.closed == "drop" else Decision("wait", now + POSTPONED_BY)
    return Decision("send")


def quiet_from(moment: datetime, wishes: Preferences, zone: str) -> datetime | None:
    """Return the start of the next quiet hours after a moment, in UTC; None where there are none."""
    begin, end = wishes.quiet
    if begin == end:
        return None
    today = local_date(moment, zone)
    days = (today + timedelta(days=ahead) for ahead in range(3))
    return next(at for day in days if (at := instant(day, begin, zone)) > moment)


def leaves_until(reminder: Reminder, now: datetime, wishes: Preferences, zone: str) -> Reminder:
    """Return the reminder for its message, going stale at the next quiet hours if that is earlier."""
    until = min((at for at in (reminder.stale_at, quiet_from(now, wishes, zone)) if at), default=None)
    return replace(reminder, stale_at=until)
