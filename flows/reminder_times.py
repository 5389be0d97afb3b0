"""Reminder times: the time of messages about squat days, and quiet hours."""

from __future__ import annotations

import re

from companion.calendar.preferences import preferences_from
from companion.calendar.prompts import Preferences
from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.day_kinds import ClockTime
from companion.conversation.effects import Find, Replan, StopReminders
from companion.conversation.flow import Ask, Do, Flow, Known, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.reminders.kinds import REMINDER_KINDS
from flows.shared import WELCOMED

_OFF = (r"(?:stop|cancel|end|turn off|switch off|disable|no more)(?: sending| all| any| of| my| the| me)* (?:reminders?|notifications?)|"
        r"turn (?:all |my |the )*reminders? off|stop (?:reminding|messaging|texting|writing to) me|(?:don't|dont|do not) remind me|"
        r"stop all|unsubscribe(?: me)?|opt(?: me)? out")
"""Ways to say "no more reminders"."""

BEFORE, QUIET = fact("before"), fact("quiet")
SCOPE = Fact("scope", values=("all", "briefly", "quiet", "off"))
"""The questions to ask: all; only those a first plan needs; only the quiet hours; none, reminders are turned off."""
OFF = SCOPE.is_("off")
STILL_SENT = " ".join(kind.goes_on for kind in REMINDER_KINDS.values() if kind.goes_on)
"""The sentences about reminders that can't be turned off."""


def times_now(known: Known) -> dict[str, Value]:
    """Return the current preferences, and the quiet hours in words."""
    wishes = preferences_from(known.facts)
    begin, end = (f"{at:%H:%M}" for at in wishes.quiet)
    scope = ("quiet" if "quiet" in known.asked else "briefly" if known.asked == "briefly" else
             "off" if re.fullmatch(_OFF, known.asked) else "all")
    return {"scope": scope, "evening_now": f"{wishes.evening:%H:%M}",
            "wishes_now": wishes.dumps(), "quiet_now": (
                f"Between {begin} and {end} I write only if you write first." if begin != end else "I may write at any hour.")}


def new_wishes(got: Facts, side: str) -> Value:
    """Return the preferences after the answers so far."""
    before, evening, begin, end = str(got.get("wishes_now", Preferences().dumps())).split()
    if str(got.get("before", "")).isdecimal():
        before = str(got["before"])
    evening = str(got.get("evening", evening))
    if got.get("quiet") == "none":
        begin = end = "00:00"
    begin, end = str(got.get("quiet_from", begin)), str(got.get("quiet_to", end))
    return Preferences.loads(f"{before} {evening} {begin} {end}").dumps()


def quiet_after(got: Facts, side: str) -> Value:
    """Return the quiet hours in words, after the answers so far."""
    begin, end = (f"{at:%H:%M}" for at in Preferences.loads(str(new_wishes(got, ""))).quiet)
    return f"Nothing from me between {begin} and {end}." if begin != end else "I may write at any hour."


FLOW = Flow(
    "reminder_times", version=1, title="Reminder times", policy=Policy.TALK, gates=(WELCOMED,), at_start=times_now,
    command=("reminder time", "when do you remind me"),
    sentences=(r"(?:change |set |my |the )*(?P<asked>quiet hours?|quiet times?)",
               rf"(?:please |ok |can you |could you |i want (?:you )?to )*(?P<asked>{_OFF})(?: please| now| any ?more| at all)*"),
    facts=(SCOPE, Fact("new_wishes", of=new_wishes), Fact("quiet_after", of=quiet_after)),
    steps=(
        Ask("before", "When should I write about a squat day? One message before it, and one question afterwards if I don't hear "
            "from you.", choice(
                ("0", "The evening before", "evening", "evening before"), ("2", "2 hours before", "two hours", "2 hours"),
                ("4", "4 hours before", "four hours", "4 hours"), ("12", "12 hours before", "twelve hours", "12 hours"),
                ("none", "Not at all", "never", "no reminders", "don't")), only_if=SCOPE.one_of("all", "briefly")),
        Ask("evening", "At what time in the evening?", ClockTime(("17:00", "18:00", "19:00"), evening=True),
            only_if=BEFORE.is_("0") & SCOPE.is_("all")),
        Ask("quiet", "{quiet_now} Does that suit you?", choice(
            ("keep", "Yes", "yes", "fine", "ok"), ("other", "Other hours", "other", "no", "change"),
            ("none", "No quiet hours", "none", "any time")), only_if=~BEFORE.is_("none") & SCOPE.one_of("all", "quiet")),
        Ask("quiet_from", "From what time should I be quiet?", ClockTime(("20:00", "21:00", "22:00"), evening=True),
            only_if=QUIET.is_("other")),
        Ask("quiet_to", "And until when?", ClockTime(("06:00", "07:00", "09:00"), evening=False),
            only_if=QUIET.is_("other") & fact("quiet_from").known),
        Do(Find("squat.wishes", "{new_wishes}", "told by the lifter")),
        Do(Find("squat.no_prompts", "yes", "told by the lifter"), BEFORE.is_("none") | OFF),
        Do(StopReminders(), OFF),
        Do(Find("squat.no_prompts", "no", "told by the lifter"), BEFORE.known & ~BEFORE.is_("none")),
        Do(Replan()),
        Tell(f"Done: no reminders of squat days or tests. {STILL_SENT} Your squat days stay planned; “reminder times” turns their "
             "reminders on again.", OFF),
        Tell("Good. I write nothing about squat days; say “squatting” on the day and I am there.", BEFORE.is_("none")),
        Tell("Good: the evening before, at {evening_now}. {quiet_after} “Reminder times” changes that.",
             SCOPE.is_("briefly") & BEFORE.is_("0")),
        Tell("Good: {before} hours before. {quiet_after} “Reminder times” changes that.",
             SCOPE.is_("briefly") & BEFORE.one_of("2", "4", "12")),
        Tell("Good. {quiet_after} A message due in quiet hours comes before they begin or after they end.",
             ~SCOPE.is_("briefly") & ~BEFORE.is_("none") & (BEFORE.known | QUIET.known)),
    ),
)
