"""Results: the tests' verdicts and how sure they are, one drill as a trial, depth and load for now, and the next test date."""

from dataclasses import replace

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Offer, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.screening.limits import Work
from companion.screening.protocols import route
from companion.screening.setups import HELPED_BY_FEEL, NAMES
from companion.screening.sources import value
from flows.shared import BODY_WEIGHT, LIMIT_DUE, TAKEN_AS_YOUNG, closes
from flows.what_holds import results_facts

TESTED = fact("any").is_("yes")
CAUSES = ("length", "strength", "control")
AT_REST = fact("overall").one_of("normal", "no_rounding")
LEVEL = fact("safety.level")
GROWN = ~(TAKEN_AS_YOUNG & ~fact("coach").is_("yes"))
CHECKED = fact("safety.checked.today").known
SHUT = LEVEL.one_of("not_today", "clinician", "same_day", "emergency")
WORK_OPEN = TESTED & GROWN & CHECKED & LEVEL.is_("go") & ~closes() & ~LIMIT_DUE.shut
"""Drill, homework and load are told only on a day on which the safety check says go and no limit closes all that moves."""
DRILL = WORK_OPEN & fact("drill").known & ~fact("drill").is_("none") & ~fact("drill_why").known
DECIDED = fact("screen.state").is_("decided") & fact("screen.state.today").known
"""True on the day of a screen that ended because nothing open could change the outcome: then no test is named as the next."""
REPEAT = Fact("repeat", values=route())
CAN_REPEAT = WORK_OPEN & REPEAT.one_of(*route())
REPEATING = CAN_REPEAT & fact("again").is_("now")
TO_CHECK = fact("setup.proposed").one_of(*NAMES) & (~fact("setup.state").known | fact("setup.state").is_("out"))
NOTHING_HELPED = fact("setup.proposed").is_("none")
SQUATS_CLOSED = closes(Work.SQUAT)
WHY = fact("why").is_("why")


def why(topic: str) -> tuple[Offer, ...]:
    """Return the button that answers "why?" about a topic."""
    return (Offer("Why?", "why_told", topic),)


def _said(name: str) -> Fact:
    return Fact(f"has_{name}", values=("yes", "no"), of=lambda got, side: "yes" if got.get(name) else "no")


HAS_WORDS = {name: _said(name) for name in (
    "differences", "not_tested", "settle", "keep_words", "load_words", "stance", "setup_words", "pinch_words",
    "notes", "home_steps", *(f"{cause}_{part}" for cause in CAUSES for part in ("more", "rest")))}


FOUND = (
    *(Do(Find(cause, f"{{{cause}}}", "evidence table and decision rule", f"{{{cause}_because}}"), TESTED) for cause in CAUSES),
    Do(Find("overall", "{overall}", "evidence table and decision rule", "{overall_words}"), TESTED),
    Do(Find("drill", "{drill}", "drill for the likeliest part", "{overall_words}"), TESTED),
    Do(Find("retest.tests", "{retest_tests}", "what was likely, too close to call or untested"), TESTED),
)
"""The results, as findings."""

FLOW = Flow(
    "outcome", version=1, title="Results", policy=replace(Policy.TALK, pages=True), command=("result", "my results", "findings"),
    at_start=results_facts, facts=(*HAS_WORDS.values(), REPEAT),
    steps=(
        Tell("There is nothing to tell yet: no test is finished. “Go on” takes up what you began, “screen” begins.",
             ~TESTED & ~SQUATS_CLOSED),
        Tell("There is nothing to tell yet: no test is finished.", ~TESTED & SQUATS_CLOSED),
        Tell("{summary}", TESTED, waits=False),
        *(Tell(f"{{{cause}_words}}", TESTED & (~AT_REST | ~fact(cause).is_("not_tested")), offers=why(cause)) for cause in CAUSES),
        Do(Find("outcome.before", "{before}", "time of the results before"), TESTED),
        Do(Find("outcome.at", "{at}", "time of the results"), TESTED),
        *FOUND,
        Do(Find("depth.keep", "{keep}", "one band above where the rounding starts (choice)"), TESTED),
        Do(Find("load.limit", "{load_limit}",
                f"below the load at which rounding begins, else {value('load_share'):g} % of the working load (choice)"), TESTED),
        Do(Find("depth.since", "{depth_since}", "the day this limit began"), TESTED),
        Do(Find("load.since", "{load_since}", "the day this limit began"), TESTED),
        Ask("again", "{repeat_words} Do that now?", choice(
            ("now", "Do it now", "yes", "now", "ok"), ("later", "Another time", "no", "later")), only_if=CAN_REPEAT),
        *(Run(test, REPEATING & fact("repeat").is_(test)) for test in route()),
        Tell("Say “results” to hear what that changes.", REPEATING),
        Tell("{pinch_words}", TESTED & HAS_WORDS["pinch_words"].is_("yes"), waits=False),
        Tell("Left and right compared: {differences}", TESTED & HAS_WORDS["differences"].is_("yes")),
        Ask("why", "Shall I show what that is based on and what was not tested, or what to do now?", choice(
            ("why", "What it is based on", "why", "rests on", "evidence"), ("now", "What to do now", "now", "do", "drill")),
            only_if=TESTED & ~AT_REST),
        *(tell for cause in CAUSES for tell in (
            Tell(f"More on {cause}:\n{{{cause}_more}}", WHY & HAS_WORDS[f"{cause}_more"].is_("yes")),
            Tell(f"{{{cause}_rest}}", WHY & HAS_WORDS[f"{cause}_rest"].is_("yes")))),
        Tell("Not tested, so still open:\n{not_tested}", WHY & HAS_WORDS["not_tested"].is_("yes")),
        Run("depth_estimate", WHY & GROWN & ~SHUT),
        Tell("To try before you squat: {drill_name}, {drill_dose}{drill_each}. {drill_trial} "
             "Say “drill” and I lead you through it.", DRILL, picture="drill {drill_name}", offers=why("drill")),
        Tell("{home_words} {home_steps}", DRILL & HAS_WORDS["home_steps"].is_("yes"), picture="drill {home_name}", offers=why("home")),
        Tell("{home_words}", DRILL & HAS_WORDS["home_steps"].is_("no")),
        Tell("{drill_why}", WORK_OPEN & fact("drill_why").known),
        Tell("{setup_words}", WORK_OPEN & ~closes(Work.SQUAT) & HAS_WORDS["setup_words"].is_("yes"), offers=why("depth")),
        Tell("{keep_words}", WORK_OPEN & ~closes(Work.SQUAT) & HAS_WORDS["keep_words"].is_("yes") & HAS_WORDS["setup_words"].is_("no"),
             offers=why("depth")),
        Tell("A set-up waits: one change seemed to help. Say “best squat” to check it.",
             WORK_OPEN & ~closes(Work.SQUAT) & TO_CHECK),
        Tell("A change seemed to help, by feel. To be checked it must be seen: film, a mirror, a friend. Then say “squat look”.",
             WORK_OPEN & ~closes(Work.SQUAT) & fact("setup.proposed").is_(HELPED_BY_FEEL) & HAS_WORDS["setup_words"].is_("no")),
        *(Tell(f"No change you tried moved where it rounds{but}, so your plain set-up stands.",
               WORK_OPEN & NOTHING_HELPED & HAS_WORDS["setup_words"].is_("no") & so)
          for but, so in (("", ~fact("setup.out").known), (" without a pinch or an ache", fact("setup.out").known))),
        Tell("{load_words}", WORK_OPEN & ~closes(Work.SQUAT) & HAS_WORDS["load_words"].is_("yes") & ~BODY_WEIGHT, offers=why("load")),
        Tell("{limit_words}", WORK_OPEN, waits=False),
        Tell("{stance}", WORK_OPEN & ~closes(Work.SQUAT) & HAS_WORDS["stance"].is_("yes")),
        Tell("{settle}", TESTED & GROWN & ~SHUT & HAS_WORDS["settle"].is_("yes") & ~DECIDED),
        Tell("No home test is left that would settle it. Somebody who can watch you squat could tell you more.",
             TESTED & HAS_WORDS["settle"].is_("no") & fact("overall").one_of("by_elimination", "open")),
        Tell("{notes}", TESTED & HAS_WORDS["notes"].is_("yes")),
        Tell("You were told: {limit.words}. That comes before anything said here.", TESTED & fact("limit.words").known, waits=False),
        Tell("No drill and no advice on load until you have been seen. The results stay here: say “results”.",
             TESTED & LEVEL.one_of("clinician", "same_day", "emergency"), waits=False),
        Tell("What to do with it comes after today's safety check: say “safety check”, then “results”.",
             TESTED & GROWN & ~SHUT & ~CHECKED),
        Tell("No load today, so the drill and what to lift wait until tomorrow.",
             TESTED & GROWN & CHECKED & LEVEL.is_("no_load"), waits=False),
        Tell("No drill and no load today. Say “results” again after a day's rest.", TESTED & LEVEL.is_("not_today"), waits=False),
        Tell("Under 18, I give drills and loads only with a coach who is linked to you here, and there is none now.",
             TESTED & ~GROWN, waits=False),
        Do(Remind("retest", "retest", "{retest_on}"), TESTED & fact("retest_on").known),
        Do(Remind("retest", "retest", ""), TESTED & ~fact("retest_on").known & ~fact("retest_pin").known),
        Tell("{retest_plan}", TESTED & ~SHUT & fact("retest_plan").known),
        Tell("{retest_words} I will remind you on {retest_on:date}.", TESTED & ~SHUT & fact("retest_on").known, must_arrive=True,
             offers=why("retest")),
        Tell("{retest_words} Your coach's date for it stands: {retest_pin:date}.", TESTED & ~SHUT & fact("retest_pin").known),
        Tell("{retest_words}", TESTED & ~fact("retest_on").known & ~(~SHUT & fact("retest_pin").known)),
    ),
)
