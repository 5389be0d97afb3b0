"""Squat days: which days the lifter squats and when, and every change to that, typed or tapped."""

from __future__ import annotations

from companion.conversation.condition import Every, Fact, fact
from companion.conversation.day_kinds import Rest, SquatDays
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Jump, Offer, Run, Tell
from companion.conversation.kinds import Option, Words, YesNo, choice
from flows.plan_facts import DAYS, missing, new_plan, open_text, plan_facts, rest_words, said_done, understood, undo, what
from flows.shared import OF_AGE, WELCOMED

KINDS = ("weekly", "every", "on", "skip", "move", "pause", "stop", "none")
WANTS = ("half", "time", "day", "nothing")
YES_NO = ("yes", "no")

PLANNED, GIVEN = Fact("planned", values=YES_NO), Fact("given", values=YES_NO)
WHAT = Fact("what", values=KINDS, of=what)
MISSING = Fact("missing", values=WANTS, of=missing)
CHANGE, FIRST = fact("change"), fact("first")
TAPPED = CHANGE.is_("tap") | FIRST.is_("tap")
WANTING = MISSING.one_of("half", "time", "day")
ASKED_REST = fact("day_1").known | WANTING
WHOLE = MISSING.is_("nothing") & ~WHAT.is_("none")
TO_CONFIRM = WHAT.one_of("weekly", "every", "stop")
SURE = WHOLE & (~TO_CONFIRM | fact("right").is_("yes"))
RULE = SURE & WHAT.one_of("weekly", "every")
UNDO = Fact("undo", values=("on 2026-03-03 18:00",), of=undo)

TAPS = (Option("tap", "Tap day by day", ("tap", "day by day")),)
CHANGES = (
    Option("skip_next", "Skip the next one", ("skip it", "skip next")),
    Option("move_next", "Move the next one", ("move it", "move", "move next")),
    Option("extra_day", "Add a day", ("add", "extra", "extra day", "one more")),
    Option("pause_until", "Pause", ("pause", "pause it")),
    Option("tap", "Other days", ("other", "change days", "new plan")),
    Option("stop_all", "No squat days any more", ("none any more",)),
    Option("fine", "Leave it as it is", ("nothing", "fine", "leave it", "ok")),
)

_DAY = (r"(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?s?\b|today|tomorrow|\bsquat day|\bsquats\b|"
        r"\d{1,2}(?:st|nd|rd|th)\b|\b(?:january|february|march|april|may|june|july|august|september|october|november|december)\b")


def _tap(number: int) -> Ask:
    """The n-th day to tap; those taken already are not offered again."""
    taken = [fact(f"day_{n}") for n in range(1, number)]
    days = [Option(code, name, (name[:3].lower(),), only_if=Every(tuple(~one.is_(code) for one in taken)))
            for code, name in DAYS]
    more = [Option("enough", "That is all", ("done", "all", "no more"))] if number > 1 else []
    return Ask(f"day_{number}", "Which day is the first in your week?" if number == 1 else "And which other day?",
               choice(*days, *more), safety=number == 1, only_if=TAPPED if number == 1 else taken[-1].known & ~taken[-1].is_("enough"))


FLOW = Flow(
    "squat_days", version=1, title="My squat days", counted=False, gates=(WELCOMED, OF_AGE), at_start=plan_facts,
    command=("schedule", "training days", "my days", "squat day plan"),
    sentences=(
        rf"(?P<asked>(?:please )?(?:skip|move|cancel|postpone|reschedule|shift|leave out) .*(?:{_DAY}).*)",
        rf"(?P<asked>i (?:can't|cant|cannot|won't|wont) (?:squat |train |make (?:it )?|do )?.*(?:{_DAY}).*)",
        r"(?P<asked>pause (?:my |all )?(?:squat days |squats |reminders )?(?:until|till|for) .+)",
        r"(?P<asked>(?:stop|no more|cancel) (?:all )?(?:my )?(?:squat days|squat day reminders|squat reminders))",
        rf"i(?: usually| always| normally)? (?:squat|train) (?P<asked>.*(?:{_DAY}|every|other day|daily).*)",
    ),
    facts=(PLANNED, GIVEN,
           Fact("rest_words", of=rest_words),
           Fact("plan_now", values=('{"weekly":{"TU":"18:00"}}',)), Fact("open", of=open_text), WHAT, MISSING,
           Fact("understood", of=understood), Fact("new_plan", of=new_plan), Fact("said_done", of=said_done), UNDO),
    steps=(
        Tell("{given_unclear}", fact("given_unclear").known),
        Ask("first", "Which days do you squat, and when? Type it, such as “Tuesdays and Fridays at 6pm” or “every other day at "
            "7am”, or tap day by day.", SquatDays(TAPS), only_if=GIVEN.is_("no") & PLANNED.is_("no")),
        Ask("change", "{plan_line}\n\nWhat should change? Tap, or type it: “skip Friday”, “move it to Sunday 10am”, “pause until 3 "
            "January”, or the new days.", SquatDays(CHANGES), only_if=GIVEN.is_("no") & PLANNED.is_("yes")),
        *(_tap(number) for number in range(1, 8)),
        Ask("to", "Move it to which day? With a time, if that changes too.",
            SquatDays(before="move it to", example_text="Sunday 10am"), only_if=CHANGE.is_("move_next")),
        Ask("extra", "Which day, and at what time?", SquatDays(before="also on", example_text="Saturday at 10am"),
            only_if=CHANGE.is_("extra_day")),
        Ask("until", "Until when? Name the first day on which you squat again.",
            SquatDays(before="pause until", example_text="3 January"), only_if=CHANGE.is_("pause_until")),
        Ask("rest", "{rest_words}", Rest(), safety=True, only_if=ASKED_REST, then=(Jump(WANTING, "rest"),)),
        Ask("right", "{understood} Is that right?", YesNo(yes="Yes, that is right", no="No"),
            only_if=WHOLE & TO_CONFIRM & (~fact("day_1").known | fact("rest").known)),
        Do(Find("squat.plan", "{new_plan}", "told by the lifter"), SURE),
        Run("reminder_times", RULE & ~fact("reminder_times.before").known),
        Ask("goal", "What would you like your squat to be? A few words; I will put them into the reminders. Skip it if you like.",
            Words(limit=80, example_text="parallel with a still back, at 90 kg"), free=True, only_if=RULE & ~fact("squat.goal").known),
        Do(Find("squat.goal", "{goal}", "told by the lifter"), fact("goal").known),
        Do(Replan(), SURE),
        Tell("{said_done}", SURE & UNDO.known, offers=(Offer("Undo that", "squat_days", "{undo}"),)),
        Tell("{said_done} “My reminders” shows what I will send, and has a file for your calendar.", SURE & ~UNDO.known),
        Tell("Then nothing has changed. Say the days again, or tap.", WHOLE & TO_CONFIRM & ~fact("right").is_("yes"),
             offers=(Offer("My squat days", "squat_days"),)),
        Tell("It stays as it is.", CHANGE.is_("fine")),
    ),
)
