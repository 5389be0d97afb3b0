"""Squat days: the lifter's days and times, and every change to them, typed or tapped."""

from __future__ import annotations

from dataclasses import replace

from companion.conversation.condition import Every, Fact, fact
from companion.conversation.day_kinds import Rest, SquatDays
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Jump, Offer, Run, Tell
from companion.conversation.kinds import Option, Words, YesNo, choice
from companion.conversation.policy import Policy
from flows.plan_facts import DAYS, missing, new_plan, open_text, plan_facts, rest_words, said_done, understood, undo, what
from flows.shared import AT_ALL

CHANGE_KINDS = ("weekly", "every", "on", "skip", "move", "pause", "away", "stay", "stop", "none")
WANTS = ("half", "time", "day", "nothing")
YES_NO = ("yes", "no")

PLANNED, GIVEN = Fact("planned", values=YES_NO), Fact("given", values=(*YES_NO, "void"))
CHANGE_KIND = Fact("what", values=CHANGE_KINDS, of=what)
MISSING = Fact("missing", values=WANTS, of=missing)
CHANGE, FIRST = fact("change"), fact("first")
TAPPED = fact("day_1").known | FIRST.one_of(*(code for code, _ in DAYS))
BY_TAPS = TAPPED | fact("day_2").known
WANTING = MISSING.one_of("half", "time", "day")
ASKED_REST = BY_TAPS | WANTING
WHOLE = MISSING.is_("nothing") & ~CHANGE_KIND.is_("none")
TO_CONFIRM = CHANGE_KIND.one_of("weekly", "every", "stop")
PLAN_CONFIRMED = WHOLE & (~TO_CONFIRM | fact("right").is_("yes"))
RULE = PLAN_CONFIRMED & CHANGE_KIND.one_of("weekly", "every")
UNDO = Fact("undo", values=("on 2026-03-03 18:00",), of=undo)

DAY_CALLED = {"TU": ("tues",), "WE": ("weds",), "TH": ("thur", "thurs"), "SA": ("first day of the weekend",),
          "SU": ("last day of the weekend",)}
NEXT_TO = (("after", -1), ("before", 1))
TAPS = tuple(
    Option(code, name, (name[:3].lower(), *DAY_CALLED.get(code, ()), *(
        f"{the}{one} {way} {DAYS[(n + by) % 7][1].lower()}" for the in ("", "the ") for one in ("day", "one") for way, by in NEXT_TO)))
    for n, (code, name) in enumerate(DAYS))
RESTS = (
    Option("morning", "In the morning", ("morning", "am"), only_if=MISSING.is_("half")),
    Option("evening", "In the evening", ("evening", "pm", "afternoon"), only_if=MISSING.is_("half")),
    *(Option(at, at, only_if=MISSING.is_("time")) for at in ("07:00", "12:00", "17:00", "18:00", "19:00")),
    Option("today", "Today", only_if=MISSING.is_("day") & ~CHANGE_KIND.one_of("move", "away")),
    Option("tomorrow", "Tomorrow", only_if=MISSING.is_("day") & ~CHANGE_KIND.is_("away")),
)
CHANGE_OPTIONS = (
    Option("skip_next", "Skip the next one", ("skip it", "skip next")),
    Option("move_next", "Move the next one", ("move it", "move", "move next")),
    Option("extra_day", "Add a day", ("add", "extra", "extra day", "one more")),
    Option("pause_until", "Pause", ("pause", "pause it")),
    Option("tap", "Other days", ("other", "change days", "new plan")),
    Option("stop_all", "No squat days any more", ("none any more", "no days any more", "no more days")),
    Option("fine", "Leave it as it is", ("nothing", "fine", "leave it", "ok")),
)

_MONTH = "(?:january|february|march|april|may|june|july|august|september|october|november|december)"
_WEEKDAY = r"(?:mon|tue|tues|wed|weds|wednes|thu|thur|thurs|fri|sat|satur|sun)(?:days?)?"
_OTHER_DAY = (rf"\b(?:{_WEEKDAY}|tomorrow|tmrw|next week|(?:the )?weekend|squat days?|"
              rf"\d{{1,2}}(?:st|nd|rd|th)? (?:of )?{_MONTH}|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?)\b")
_DAY = rf"(?:{_OTHER_DAY}|\b(?:today|tonight|this week)\b)"
_A_SET = r"\d+ ?(?:s|secs?|seconds?|reps?|sets?|x)\b"
"""What is told of a set, such as "pause squats 3 secs": no date."""
_BEGINS = rf"(?:from |starting |between )?(?:the |next |this )*(?:{_OTHER_DAY}|\b(?:today|month)\b|\d).*"
_FEW = (r"(?:(?:my|the|this|that|next|on|for|from|it|one|this one|next one|squats?|squatting|session|workout|training|to|until|"
        r"all|of) )*")
_ASKING = r"(?:please |ok |can (?:you|we|i) |could (?:you|we|i) |i (?:want|need|have|'d like) to |let's )?"
_TIME = r"(?:at \d{1,2}|(?:at |@ ?)?\d{1,2}(?:[:.]\d\d)? ?(?:am|pm|h|uhr)|\d{1,2}[:.]\d\d)\b"
_AND = r"(?:,| |and|n|&|\+|/)*"
"""Parts of a sentence that changes squat days; few other words may stand between, so "skip the test today" does not match."""


def _tap(number: int) -> Ask:
    """Return the question for the n-th day to tap; days already taken are not offered again."""
    taken = [*([fact("first")] if number > 1 else []), *(fact(f"day_{n}") for n in range(1, number))]
    days = [replace(day, only_if=Every(tuple(~one.is_(day.value) for one in taken))) for day in TAPS]
    more = [Option("enough", "That is all", ("done", "all", "no more", "just those", "just those two", "only those"))] if number > 1 else []
    before = CHANGE.is_("tap") if number == 1 else TAPPED if number == 2 else taken[-1].known & ~taken[-1].is_("enough")
    return Ask(f"day_{number}", "Which day is the first in your week?" if number == 1 else "And which other day?",
               choice(*days, *more), safety=number == 1, only_if=before)


FLOW = Flow(
    "squat_days", version=1, title="My squat days", policy=Policy.TALK, gates=AT_ALL, at_start=plan_facts,
    command=("schedule", "training days", "my days", "squat day plan"),
    sentences=(
        rf"{_ASKING}(?P<asked>(?:skip|move|cancel|postpone|reschedule|shift|leave out|push|drop|swap|change) {_FEW}{_DAY}.*)",
        r"(?:sorry,? )?(?P<asked>(?:i |i'm |i am )?(?:can't|cant|cannot|can not|won't|wont|will not|not able to) "
        rf"(?:squat |train |lift |make (?:it )?|do )?(?!this to)(?:on |this |next |the )*{_DAY}.*)",
        rf"(?P<asked>(?:no|not) (?:squats?|squatting|training)(?: day)? (?:on |this |next |for )*{_DAY}.*)",
        rf"(?P<asked>not (?:on |this |next )*{_OTHER_DAY})",
        rf"(?P<asked>rest day (?:on |this |next )*{_OTHER_DAY})",
        rf"(?P<asked>(?:on |this |next )*{_OTHER_DAY}(?:,? {_TIME})? instead)(?: please)?",
        rf"(?P<asked>make it {_TIME}(?: instead)?|{_TIME} instead)(?: please)?",
        r"(?P<asked>pause (?:my |all |it |the |everything |squat days |squats |reminders )*"
        rf"(?:(?:until|till|til) (?:the |next )*(?:{_DAY}|\d|next).*|for .*(?:days?|weeks?|months?|fortnight)))",
        r"(?:i'm |i am |i'll be )?(?P<asked>(?:on holidays?|on vacation|away|out of town) "
        r"(?:(?:until|till|til) .+|for .*(?:days?|weeks?|months?)))",
        rf"(?:i'm |i am |i'll be )?(?P<asked>(?:on holidays?|on vacation|holidays?|away|out of town) {_BEGINS})",
        rf"(?P<asked>pause (?:my |all |it |the |everything |squat days |squats |reminders )*(?!{_A_SET}){_BEGINS})",
        rf"(?P<asked>(?:no|not) (?:squats?|squatting|training)(?: days?)? {_BEGINS})",
        r"(?P<asked>move (?:it|this one|(?:my |the )?next (?:one|squat day|session)))(?: please)?",
        r"(?:please |ok )*(?P<asked>unpause(?: (?:please|now|my squat days))?|(?:end|stop) (?:the |my )?pause|"
        r"(?:i'm |i am )?back from (?:my )?(?:holidays?|vacation)|start (?:squatting|training|lifting) again)",
        r"(?P<asked>(?:stop|no more|cancel|end|delete|remove) (?:all )?(?:of )?(?:my |the )?"
        r"(?:squat days?|squat day reminders|squat reminders|squat plan))",
        r"i(?: usually| always| normally)? (?:squat|train|lift) (?P<asked>(?:on |every |each |mostly )*"
        rf"(?:\b{_WEEKDAY}\b|other day|\bday\b|daily|second day|\d days).*)",
        rf"(?P<asked>(?:on |every |each )*(?:\b{_WEEKDAY}\b{_AND})+{_TIME}.*)",
        rf"(?P<asked>(?:every (?:other |second |\d+ )?days?|daily),? (?:at )?{_TIME}.*)",
        rf"(?P<asked>(?:on |every )*(?:\b{_WEEKDAY}s\b{_AND})+)",
    ),
    facts=(PLANNED, GIVEN,
           Fact("rest_words", of=rest_words),
           Fact("plan_now", values=('{"weekly":{"TU":"18:00"}}',)), Fact("open", of=open_text), CHANGE_KIND, MISSING,
           Fact("understood", of=understood), Fact("new_plan", of=new_plan), Fact("said_done", of=said_done), UNDO),
    steps=(
        Tell("{given_unclear}", fact("given_unclear").known),
        Tell("{given_void}", GIVEN.is_("void")),
        Ask("first", "Which days do you squat, and when? Type it, such as “Tuesdays and Fridays at 6pm” or “every other day at "
            "7am”, or tap the first day of your week.", SquatDays(TAPS), only_if=GIVEN.is_("no") & PLANNED.is_("no")),
        Ask("change", "{plan_line}\n\nWhat should change? Tap, or type it: “skip Friday”, “move it to Sunday 10am”, “pause until 3 "
            "January”, or the new days.", SquatDays(CHANGE_OPTIONS), only_if=GIVEN.is_("no") & PLANNED.is_("yes")),
        *(_tap(number) for number in range(1, 8)),
        Ask("to", "Move it to which day? With a time, if that changes too.",
            SquatDays(before="move it to", example_text="Sunday 10am"), only_if=CHANGE.is_("move_next")),
        Ask("extra", "Which day, and at what time?", SquatDays(before="also on", example_text="Saturday at 10am"),
            only_if=CHANGE.is_("extra_day")),
        Ask("until", "Until when? Name the first day on which you squat again.",
            SquatDays(before="pause until", example_text="3 January"), only_if=CHANGE.is_("pause_until")),
        Ask("rest", "{rest_words}", Rest(choices=RESTS), safety=True, only_if=ASKED_REST, then=(Jump(WANTING, "rest"),)),
        Ask("right", "{understood} Is that right?", YesNo(yes="Yes, that is right", no="No"),
            only_if=WHOLE & TO_CONFIRM & (~BY_TAPS | fact("rest").known)),
        Do(Find("squat.plan", "{new_plan}", "told by the lifter"), PLAN_CONFIRMED),
        Run("reminder_times", RULE & ~fact("reminder_times.before").known, asked="briefly"),
        Ask("goal", "What would you like your squat to be? A few words; I will put them into the reminders. Skip it if you like.",
            Words(limit=80, example_text="parallel with a still back, at 90 kg", optional=True), free=True,
                only_if=RULE & ~fact("squat.goal").known),
        Do(Find("squat.goal", "{goal}", "told by the lifter"), fact("goal").known),
        Do(Replan(), PLAN_CONFIRMED),
        Tell("{said_done}", PLAN_CONFIRMED & UNDO.known, offers=(Offer("Undo that", "squat_days", "{undo}"),)),
        Tell("{said_done}", PLAN_CONFIRMED & ~UNDO.known),
        Tell("Then nothing has changed. Say the days again, or tap.", WHOLE & TO_CONFIRM & ~fact("right").is_("yes"),
             offers=(Offer("My squat days", "squat_days"),)),
        Tell("It stays as it is.", CHANGE.is_("fine")),
        Tell("Nothing has changed. Say “my squat days” whenever you like.",
             CHANGE_KIND.is_("none") & GIVEN.is_("no") & ~CHANGE.is_("fine")),
    ),
)
