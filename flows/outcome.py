"""Outcome: what the tests say and how sure that is, one drill as a trial, what to keep to now, when to test again."""

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Run, Tell
from companion.conversation.kinds import choice
from flows.outcome_facts import outcome_facts
from flows.shared import BODY_WEIGHT

ANY = fact("any").is_("yes")
CAUSES = ("length", "strength", "control")
AT_REST = fact("overall").one_of("normal", "no_rounding")
LEVEL = fact("safety.level")
GROWN = ~(fact("welcome.adult").is_("no") & ~fact("coach").is_("yes"))
CHECKED = fact("safety.checked.today").known
SHUT = LEVEL.one_of("not_today", "clinician", "same_day", "emergency")
MOVES = ANY & GROWN & CHECKED & LEVEL.is_("go")
"""Drill, home work and load are told only on a day on which the safety check says go."""
DRILL = MOVES & fact("drill").known & ~fact("drill").is_("none")
WHY = fact("why").is_("why")


def _said(name: str) -> Fact:
    return Fact(f"has_{name}", values=("yes", "no"), of=lambda got, side: "yes" if got.get(name) else "no")


SAID = {name: _said(name) for name in (
    "differences", "not_tested", "settle", "keep_words", "load_words", "stance", "notes", "home_steps", "length_more",
    "strength_more", "control_more")}

FOUND = (
    *(Do(Find(cause, f"{{{cause}}}", "evidence table and decision rule", f"{{{cause}_because}}"), ANY) for cause in CAUSES),
    Do(Find("overall", "{overall}", "evidence table and decision rule", "{overall_words}"), ANY),
    Do(Find("drill", "{drill}", "drill for the likeliest part", "{overall_words}"), ANY),
    Do(Find("retest.tests", "{retest_tests}", "what was likely, too close to call or untested"), ANY),
)
"""What the tests amount to."""

FLOW = Flow(
    "outcome", version=1, title="Results", counted=False, command=("result", "my results", "findings", "why"),
    at_start=outcome_facts, facts=tuple(SAID.values()),
    steps=(
        Tell("There is nothing to tell yet: no test is done. Say “screen” to begin.", ~ANY),
        Tell("{overall_words}", ANY),
        *(Tell(f"{{{cause}_words}}", ANY & (~AT_REST | ~fact(cause).is_("not_tested"))) for cause in CAUSES),
        Do(Find("outcome.before", "{before}", "time of the results before"), ANY),
        Do(Find("outcome.at", "{at}", "time of the results"), ANY),
        *FOUND,
        Do(Find("depth.keep", "{keep}", "one band above where the rounding starts (choice)"), ANY),
        Do(Find("load.limit", "{load_limit}", "80 % of the working load (choice)"), ANY),
        Tell("Left against right: {differences}", ANY & SAID["differences"].is_("yes")),
        Ask("why", "Shall I show what that rests on and what was not tested, or what to do now?", choice(
            ("why", "What it rests on", "why", "rests on", "evidence"), ("now", "What to do now", "now", "do", "drill")),
            only_if=ANY & ~AT_REST),
        *(Tell(f"More on {cause}:\n{{{cause}_more}}", WHY & SAID[f"{cause}_more"].is_("yes")) for cause in CAUSES),
        Tell("Not tested, so open: {not_tested}.", WHY & SAID["not_tested"].is_("yes")),
        Run("depth_estimate", WHY & GROWN & ~SHUT),
        Tell("{settle}", ANY & SAID["settle"].is_("yes")),
        Tell("No home test is left that would settle it. Somebody who can watch you squat would tell more.",
             ANY & SAID["settle"].is_("no") & fact("overall").one_of("by_elimination", "open")),
        Tell("{notes}", ANY & SAID["notes"].is_("yes")),
        Tell("To try before you squat: {drill_name}, {drill_dose}{drill_each}. {drill_trial} "
             "Say “prime” and I lead you through it.", DRILL, picture="drill {drill_name}"),
        Tell("{home_words} {home_steps}", DRILL & SAID["home_steps"].is_("yes"), picture="drill {home_name}"),
        Tell("{home_words}", DRILL & SAID["home_steps"].is_("no")),
        Tell("{drill_why}", MOVES & fact("drill_why").known),
        Tell("{keep_words}", MOVES & SAID["keep_words"].is_("yes")),
        Tell("{load_words}", MOVES & SAID["load_words"].is_("yes") & ~BODY_WEIGHT),
        Tell("{stance}", MOVES & SAID["stance"].is_("yes")),
        Tell("No drill and no advice on load while a clinician comes first. The results stay here: say “results”.",
             ANY & LEVEL.one_of("clinician", "same_day", "emergency")),
        Tell("What to do with it comes after today's safety check: say “safety check”, then “results”.",
             ANY & GROWN & ~SHUT & ~CHECKED),
        Tell("No load today, so the drill and what to lift wait until tomorrow.", ANY & GROWN & CHECKED & LEVEL.is_("no_load")),
        Tell("No drill and no load today. Say “results” again when a day's rest is over.", ANY & LEVEL.is_("not_today")),
        Tell("Under 18 drills and loads are for you and a coach who is linked here, and none is now.", ANY & ~GROWN),
        Do(Remind("retest", "retest", "{retest_on}"), ANY & fact("retest_on").known),
        Do(Remind("retest", "retest", ""), ANY & ~fact("retest_on").known),
        Tell("{retest_plan}", ANY & ~SHUT & fact("retest_plan").known),
        Tell("{retest_words} I will remind you on {retest_on:date}.", ANY & ~SHUT & fact("retest_on").known, must_arrive=True),
        Tell("{retest_words}", ANY & ~fact("retest_on").known),
    ),
)
