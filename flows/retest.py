"""Retest: only tests of parts likely, too close to call or untested, with the last numbers next to the new."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from functools import reduce
from operator import or_
from typing import Any

from companion.calendar.words import date_words
from companion.conversation.condition import Value, fact
from companion.conversation.effects import Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Gate, Jump, Known, Offer, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.screening.drills import HOME_DAYS
from companion.screening.protocol import Protocol
from companion.screening.protocols import protocol, routed
from companion.screening.retest import due_day
from companion.screening.sources import value
from flows.outcome_facts import concluded, last_numbers, told_at
from flows.screen_facts import open_for, tests_done
from flows.shared import AT_ALL, CLOSING_LEVELS, LIMIT_DUE, LIMIT_OPEN, limited


def retest_facts(known: Known) -> dict[str, Value]:
    """Return the tests to repeat, the last numbers, the goal, and the date for asking again."""
    done = tests_done(known, told_at(known))
    wanted = [test for test in str(known.facts.get("retest.tests", "")).split(",") if test in routed() and test not in done]
    facts: dict[str, Value] = {f"again_{test}": "yes" for test in wanted}
    facts["how_many"] = float(len(wanted))
    facts["titles"] = ", ".join(protocol(test).title.lower() for test in wanted) or "your squat"
    today, pinned = str(known.facts["today"]), str(known.facts.get("retest.pin", ""))
    facts["in_a_week"] = pinned if pinned > today else (date.fromisoformat(today) + RETRY_AFTER).isoformat()
    goal = str(known.facts.get("squat.goal", ""))
    if pinned > today:
        facts["pinned"] = "yes"
    facts["goal_line"] = f" Your goal: {goal}." if goal else ""
    due = due_day(concluded(known)[2], known.answers(), str(known.facts.get("welcome.zone", "")), date.fromisoformat(today))
    early = due is not None and due.isoformat() > today and not pinned and wanted
    facts["early_line"] = (f" It is early: a change could show from {date_words(due, date.fromisoformat(today))} on. "
                           "Until then this settles what is open, no more.") if early and due else ""
    numbers = last_numbers(known)
    return facts | ({"last": numbers, "last_line": f" Last time: {numbers}."} if numbers else {"last_line": ""})


RETRY_AFTER = timedelta(days=value("retest_retry"))
"""The time after which an unfinished retest is brought up again; our choice."""

STOPPED_FOR_TODAY = "Good. The rest is kept for another day: say “retest”."


def _leg(test: Protocol[Any]) -> tuple[Ask | Run, ...]:
    go = fact(f"go_{test.id}")
    return (
        Ask(f"go_{test.id}", f"Next: {test.title.lower()}. If you did it before, do it the same way. Ready?", choice(
            ("now", "Go on", "yes", "ready", "ok"), ("skip", "Leave this one out", "no"),
            ("later", "Stop for today", "later", "stop")),
            only_if=fact(f"again_{test.id}").is_("yes") & open_for(test),
            then=(Jump(go.is_("later"), say=STOPPED_FOR_TODAY),)),
        Run(test.id, go.is_("now")),
    )


TESTED_AGAIN = reduce(or_, (fact(f"go_{test}").is_("now") for test in routed()))
"""At least one test was done again; that ends a coach's date for the retest."""

FLOW = Flow(
    "retest", version=1, title="Retest", policy=replace(Policy.TALK, pages=True), command=("test again", "re-test"),
    gates=(*AT_ALL, *CLOSING_LEVELS, LIMIT_OPEN, LIMIT_DUE, limited(),
           Gate(~fact("retest.tests").known, "There is nothing to test again yet. Say “screen” to begin.")),
    at_start=retest_facts,
    invite="It is time to test again: {titles}.{last_line}{goal_line} About "
           f"{value('minutes_retest'):g} minutes, on a day without heavy squats before it. Tap below, or say “retest” when it suits you.",
    invites=(Offer("Retest", "retest", also=("yes", "let's go", "start", "begin")),
             Offer("Not now", "retest_later", also=("no", "later", "not today"))),
    steps=(
        Tell("Nothing needs testing again just now. Say “what changed” or “results”.", fact("how_many") < 1),
        Do(Remind("retest", "retest", ""), (fact("how_many") < 1) & ~fact("pinned").known),
        Do(Remind("retest", "retest", "{in_a_week}"), fact("how_many") >= 1),
        Tell("Today: the tests of what is still open: {titles}.{last_line}{early_line}", fact("how_many") >= 1),
        Ask("home_done", "How often did you do the homework since then? Any answer is fine: it helps me to read a change.", choice(
            ("as_planned", f"About {HOME_DAYS} days a week", "3", "three", "often", "as planned"),
            ("some", "Once or twice a week", "sometimes", "some"), ("hardly", "Hardly or not", "no", "never", "not at all"),
            ("none_given", "I had none", "none")), only_if=fact("how_many") >= 1),
        *(step for test in routed().values() for step in _leg(test)),
        Do(Find("home_work", "{home_done}", "asked at the retest"), fact("home_done").known),
        Tell("The homework was not done often, so these numbers can't show whether it helps.", fact("home_done").is_("hardly")),
        Do(Find("retest.pin", "", "a retest is done"), TESTED_AGAIN),
        Run("changes", fact("how_many") >= 1),
        Run("outcome", fact("how_many") >= 1),
    ),
)
