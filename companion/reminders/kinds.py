"""The kinds of reminder, a row each. Whatever is done with one is derived from its row: planning, the sweep, what "my reminders" lists,
what "stop all reminders" ends, what a coach reads and the calendar file.

Our choice of rows, after "at most one prompt and one follow-up a squat day; then stop" (reference-values).
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Final, Literal

from companion.screening.levels import OPEN_LEVELS, PASSING, REFERRED
from companion.screening.safety import Level

STOP_ALL: Final = "stop all reminders"

When = Literal["before_squat_day", "after_squat_day", "digest_hour", "zone_over", "on_date"]


@dataclass(frozen=True, slots=True)
class ReminderKind:
    """One kind of reminder.

    ``when``: what its moment follows from; "on_date": from the conversation that asked for it. It goes stale at the moment its
    row holds. ``coach``: what a coach reads for it. ``listed``: how "my reminders" names it, a template over the day; "" leaves it out.
    ``levels``: the safety levels at which it is sent, none for all; ``that_day``: those on the very day it is about, where they are
    fewer; ``closed``: what happens at another level. ``quiet``: whether it waits for the end of quiet hours.
    ``rounds``: how often it is sent, ``gap`` apart, where nobody answers; ``says_missed``: whether one that came too late is spoken of.
    ``gives_way_to``: a kind that takes its place where both would come. ``shows``: the view that is sent in place of an invitation.
    ``sent``: false for one that only marks a moment: it is stale when it is due. ``ended_by``: what somebody says to end it, "" where
    nothing does; ``goes_on``: what is said of that where all others end.
    """

    name: str
    when: When
    coach: str
    listed: str = ""
    levels: tuple[str, ...] = ()
    that_day: tuple[str, ...] = ()
    closed: Literal["drop", "put_off"] = "drop"
    quiet: Literal["wait", "send"] = "wait"
    rounds: int = 1
    gap: timedelta = timedelta(days=3)
    says_missed: bool = False
    gives_way_to: str = ""
    shows: str = ""
    sent: bool = True
    ended_by: Literal["stop all reminders", "digest", ""] = STOP_ALL
    goes_on: str = ""

    @property
    def planned(self) -> bool:
        """True if its moment is worked out anew with every plan, false if it stays on its date."""
        return self.when != "on_date"


REMINDER_KINDS: Final = {kind.name: kind for kind in (
    ReminderKind("squat_day", "before_squat_day", "before squat day", "squat day {day}", PASSING, that_day=(Level.GO.value,),
                 says_missed=True),
    ReminderKind("squat_after", "after_squat_day", "how the squats went", levels=PASSING, gives_way_to="morning"),
    ReminderKind("morning", "on_date", "the morning after pain", "how it is the morning after", ended_by="",
                 goes_on="Only on the morning after something hurt I still ask once how it is."),
    ReminderKind("setup", "on_date", "the morning after a new set-up", "how your new set-up feels", PASSING),
    ReminderKind("referral", "on_date", "whether they have been seen", "whether you have been seen", REFERRED, rounds=10),
    ReminderKind("retest", "on_date", "test again", "test again", OPEN_LEVELS, closed="put_off", rounds=2),
    ReminderKind("screen", "on_date", "tests, when rested", "tests, when rested", OPEN_LEVELS, closed="put_off"),
    ReminderKind("digest", "digest_hour", "their digest as a coach", quiet="send", shows="caseload", ended_by="digest"),
    ReminderKind("home_again", "zone_over", "back in their own time zone", sent=False, ended_by=""),
)}
"""A digest comes at the hour its coach chose, whatever the quiet hours. At home_again what is to come is planned anew for the zone at
home. A referral is asked about the next day, and where nobody answers every three days for a month (choice); an answer that they have not
been seen asks again as ``flows.referral`` has it."""


def coach_words(name: str) -> str:
    """Return what a coach reads for a kind; of one that is in no table the name in words."""
    return REMINDER_KINDS[name].coach if name in REMINDER_KINDS else name.replace("_", " ")


def ended_by_stop_all(name: str) -> bool:
    """True if "stop all reminders" ends a kind; also of one that is in no table."""
    return name not in REMINDER_KINDS or REMINDER_KINDS[name].ended_by == STOP_ALL
