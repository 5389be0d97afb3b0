"""The kinds of reminder, one row each. Planning, the sweep, "my reminders", "stop all reminders", the coach's views and the calendar
file all derive from it.

The rows are our choice, after "at most one prompt and one follow-up a squat day; then stop" (``prompts`` in ``screening/numbers/``).
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Final, Literal

from companion.screening.levels import OPEN_LEVELS, PASSING, REFERRED
from companion.screening.limits import Work
from companion.screening.safety import Level
from companion.screening.sources import SOURCES, value

STOP_ALL: Final = "stop all reminders"

UNANSWERED_SAYS: Final = (
    "What you told me can matter, and my questions about it are still open. Please answer them now, before any squat or test. "
    "If it got worse, don't wait for me: call your doctor, or in an emergency your emergency number.")

HURT_SAYS: Final = (
    "I asked, and have no answer yet. Nothing begins here before I know. If it got worse, don't wait for me: call your doctor, or in an "
    "emergency your emergency number.")

_REFERRALS, _LIMITS, _RETESTS, _GAP = map(int, SOURCES["asked_again"].value)
_HURT_AFTER, _HURT_EVERY, _HURT_TIMES = map(int, SOURCES["hurt_again"].value)
LIMIT_ANEW: Final = timedelta(days=value("limit_uncleared"))
"""Time after which a limit that stands until somebody is cleared is asked about, and any that was asked about in vain."""
HURT: Final = "hurt"
HURT_AFTER: Final = timedelta(minutes=_HURT_AFTER)
"""Time without a word after which "Did something hurt?" is asked again."""

When = Literal["before_squat_day", "after_squat_day", "digest_hour", "zone_over", "on_date"]


@dataclass(frozen=True, slots=True)
class ReminderKind:
    """One kind of reminder.

    ``when``: the source of its moment; "on_date": set by a conversation. ``coach``: its name in a coach's views. ``listed``: its name in
    "my reminders", a template with {day}; "" leaves it out. ``levels``: the safety levels at which it is sent, () for all; ``that_day``:
    the levels on the very day it is about, () for the same; ``works``: what it invites to, which a clinician's limit can close;
    ``closed``: what happens then, and at other levels. ``quiet``: "wait" for the end of quiet hours, or "send". ``rounds``: how often it
    is sent without an answer, ``gap`` apart. ``says_missed``: true if one that comes too late is mentioned. ``gives_way_to``: the kind
    that replaces it where both would be sent. ``shows``: the view sent in place of an invitation. ``sent``: false for one that only marks
    a moment and goes stale when due. ``ended_by``: the words that end it, "" for none; ``goes_on``: the sentence that says so when all
    others are stopped. ``says``: its own words, in place of the flow's invitation; ``puts_again``: said before "Did something hurt?", put
    again while that is not answered; ``anew``: time after which it begins again where nobody answered, None: never.
    """

    name: str
    when: When
    coach: str
    listed: str = ""
    levels: tuple[str, ...] = ()
    works: Work | None = None
    that_day: tuple[str, ...] = ()
    closed: Literal["drop", "put_off"] = "drop"
    quiet: Literal["wait", "send"] = "wait"
    rounds: int = 1
    gap: timedelta = timedelta(days=_GAP)
    says_missed: bool = False
    gives_way_to: str = ""
    shows: str = ""
    sent: bool = True
    ended_by: Literal["stop all reminders", "digest", ""] = STOP_ALL
    goes_on: str = ""
    says: str = ""
    puts_again: bool = False
    anew: timedelta | None = None

    @property
    def planned(self) -> bool:
        """True if its moment is planned again after every change, false if it stays on its date."""
        return self.when != "on_date"


REMINDER_KINDS: Final = {kind.name: kind for kind in (
    ReminderKind("squat_day", "before_squat_day", "before squat day", "squat day {day}", PASSING, Work.SQUAT, that_day=(Level.GO.value,),
                 says_missed=True),
    ReminderKind("squat_after", "after_squat_day", "how the squats went", levels=PASSING, works=Work.SQUAT, gives_way_to="morning"),
    ReminderKind("morning", "on_date", "the morning after pain", "how it is the morning after", ended_by="",
                 goes_on="Only on the morning after something hurt I still ask once how it is."),
    ReminderKind("unanswered", "on_date", "questions still open", "questions that are still open", rounds=_LIMITS, ended_by="",
                 gives_way_to="referral", says=UNANSWERED_SAYS),
    ReminderKind(HURT, "on_date", "whether something hurt", rounds=_HURT_TIMES, gap=timedelta(hours=_HURT_EVERY), ended_by="",
                 says=HURT_SAYS, puts_again=True),
    ReminderKind("setup", "on_date", "the morning after a new set-up", "how your new set-up feels", PASSING),
    ReminderKind("referral", "on_date", "whether they have been seen", "whether you have been seen", REFERRED, rounds=_REFERRALS,
                 ended_by="", goes_on="Whether you have been seen I still ask."),
    ReminderKind("limit", "on_date", "whether a clinician's limit is over", "whether your limit is over", rounds=_LIMITS, ended_by="",
                 goes_on="Of what a clinician told you to leave out I still ask whether it is over.", anew=LIMIT_ANEW),
    ReminderKind("retest", "on_date", "test again", "test again", OPEN_LEVELS, Work.MOVE, closed="put_off", rounds=_RETESTS),
    ReminderKind("screen", "on_date", "tests, when rested", "tests, when rested", OPEN_LEVELS, Work.MOVE, closed="put_off"),
    ReminderKind("digest", "digest_hour", "their digest as a coach", quiet="send", shows="since", ended_by="digest"),
    ReminderKind("home_again", "zone_over", "back in their own time zone", sent=False, ended_by=""),
)}
"""A digest is sent at the hour its coach chose, even in quiet hours. At home_again, reminders are planned again in the home zone. A
referral is asked about the next day, and without an answer every three days for a month (choice); after the answer that they have not been
seen, it is asked again as ``flows.referral`` says."""


def coach_words(name: str) -> str:
    """Return a kind's name in a coach's views; for an unknown kind, its key in words."""
    return REMINDER_KINDS[name].coach if name in REMINDER_KINDS else name.replace("_", " ")


def ended_by_stop_all(name: str) -> bool:
    """True if "stop all reminders" ends a kind; also for an unknown kind."""
    return name not in REMINDER_KINDS or REMINDER_KINDS[name].ended_by == STOP_ALL
