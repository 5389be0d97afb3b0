"""Pain: where and how it hurts, and the consequences. Runs whenever something hurts; the flow it interrupts waits."""

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Alert, Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Jump, Tell
from companion.conversation.kinds import YesNo, choice
from companion.conversation.number_kinds import PainScore
from companion.conversation.policy import Policy
from companion.screening.protocols import route
from flows.safety_check import LEVELS, UNSURE
from flows.safety_facts import (
    before_pain,
    keys_of_pain,
    level_after_pain,
    level_until_asked,
    reasons_of_pain,
    said_heart,
    said_leg_signs,
    said_saddle,
    said_weak,
    tomorrow,
)
from flows.shared import CLINICIAN, EMERGENCY, NO_LOAD, NOT_TODAY, SAME_DAY

LEVEL_AFTER_PAIN = Fact("level", values=LEVELS, of=level_after_pain)
UNTIL_ASKED = Fact("until_asked", values=LEVELS, of=level_until_asked)
BECAUSE = Fact("because", of=reasons_of_pain)
SAID_SIGNS = Fact("said_signs", values=("yes", "no"), of=said_leg_signs)
SAID_WEAK = Fact("said_weak", values=("yes", "no"), of=said_weak)
HURTS = ~fact("where").is_("nothing")
EMERGENCY_NOW = fact("heart_now").one_of("yes", "unsure") | fact("saddle_now").one_of("yes", "unsure")
ASKED = HURTS & ~fact("where").is_("chest") & ~EMERGENCY_NOW
"""True unless it is an emergency already: chest, breath, faintness, bladder or saddle end the questions."""
LEG_SIGNS = SAID_SIGNS.is_("yes") | SAID_WEAK.is_("yes") | \
    fact("below_knee").one_of("yes", "unsure") | fact("tingling").one_of("yes", "unsure")

HURT_IN = Fact("hurt_in", values=(*route(), "squat_day"))
"""The test or squat day in which it hurt; unknown if the body was at rest."""

THEIR_WORDS = Fact("said", values=("ouch", "my foot is numb", "i feel faint", "i wet myself",
                              "my chest hurts and i wet myself", "my foot drops when i walk"))
"""The lifter's words, with one example of each kind."""

OPEN_QUESTIONS = (Do(Find("safety.level", "{until_asked}", "something hurt, questions open"), HURTS),
                  Do(Find("safety.why", "{why}", "the answers that weighed so far"), HURTS))
"""Keep the day closed until the questions are answered: somebody who puts the phone away now is not offered a squat."""

FLOW = Flow(
    "pain", version=1, title="Pain", policy=Policy.PAIN,
    command=("pain", "it hurts", "something hurts"),
    facts=(THEIR_WORDS, HURT_IN, UNTIL_ASKED, LEVEL_AFTER_PAIN, BECAUSE, SAID_SIGNS, SAID_WEAK, Fact("why", of=keys_of_pain),
           Fact("tomorrow", of=tomorrow),
           Fact("said_heart", values=("yes", "no"), of=said_heart), Fact("said_saddle", values=("yes", "no"), of=said_saddle)),
    at_start=before_pain,
    parked="All right. Tell me about it when you can; say “go on”. Until then no test and no drill opens today.",
    steps=(
        *OPEN_QUESTIONS,
        Tell("Stop there, and get comfortable. A few questions, then we see.", must_arrive=True),
        Ask("heart_now", "Chest pain, faintness, or being unusually short of breath: now?", UNSURE, safety=True,
            only_if=fact("said_heart").is_("yes")),
        *OPEN_QUESTIONS,
        Ask("saddle_now", "Any of these, now? New trouble with bladder or bowel; numbness between the legs; weakness in both "
            "legs.", UNSURE, safety=True, only_if=fact("said_saddle").is_("yes") & ~EMERGENCY_NOW),
        *OPEN_QUESTIONS,
        Ask("where", "Where does it hurt?", choice(
            ("back", "Lower back", "back", "spine", "my back"), ("hip", "Hip or groin", "hip", "groin", "hips"),
            ("leg", "Leg", "thigh", "hamstring", "calf", "my leg"), ("knee", "Knee", "my knee"),
            ("ankle", "Ankle or foot", "ankle", "foot"), ("chest", "Chest, breath or faint", "chest", "my chest",
                                                               "breath", "short of breath", "faint", "dizzy"),
            ("other", "Somewhere else", "other", "shoulder", "neck", "wrist", "arm"),
            ("nothing", "Nothing hurts", "nothing", "nowhere", "false alarm", "it was nothing", "all good")),
            safety=True, only_if=~EMERGENCY_NOW),
        Ask("surely", "So nothing hurt, nothing was numb, and you did not feel faint?", YesNo(yes="Right, nothing", no="No, wait"),
            safety=True, only_if=~HURTS, then=(Jump(fact("surely").is_("no"), "where"),)),
        Ask("bad", "How bad is it, from 0 to 10?", PainScore(), safety=True, only_if=ASKED),
        Ask("sharp", "Is it sharp, shooting, spreading, or new to you?", UNSURE, safety=True, only_if=ASKED),
        *OPEN_QUESTIONS,
        Ask("below_knee", "Is any of it below the knee?", UNSURE, safety=True, only_if=ASKED & ~fact("where").one_of("ankle", "knee")),
        *OPEN_QUESTIONS,
        Tell("You wrote “{said}”: I count that as a sign from the nerves.", ASKED & SAID_SIGNS.is_("yes")),
        Ask("tingling", "Any tingling, numbness or pins and needles?", UNSURE, safety=True,
            only_if=ASKED & SAID_SIGNS.is_("no")),
        *OPEN_QUESTIONS,
        Ask("bladder", "Any of these? New trouble with bladder or bowel; numbness between the legs; weakness in both legs.",
            UNSURE, safety=True, only_if=ASKED & LEG_SIGNS),
        *OPEN_QUESTIONS,
        Ask("weakness", "Is a leg weak, or does a foot drop?", UNSURE, safety=True,
            only_if=ASKED & LEG_SIGNS & fact("bladder").is_("no")),
        *OPEN_QUESTIONS,
        Do(Find("safety.level", "{level}", "pain questions", "{because}")),
        Do(Find("safety.why", "{why}", "the answers that weighed")),
        Do(Find("pain.hurt", "yes", "pain questions"), HURTS),
        Do(Find("pain.hurt", "no", "pain questions: a false alarm"), ~HURTS),
        Do(Alert("{level}", "something hurt ({because})"), HURTS),
        Do(Remind("morning", "morning", "{tomorrow}", hour=9, that_day=True), HURTS),
        Tell("Good. Then we go on, or you stop: both are fine.", ~HURTS),
        Tell(EMERGENCY, HURTS & LEVEL_AFTER_PAIN.is_("emergency"), must_arrive=True),
        Tell(SAME_DAY, HURTS & LEVEL_AFTER_PAIN.is_("same_day"), must_arrive=True),
        Tell(CLINICIAN, HURTS & LEVEL_AFTER_PAIN.is_("clinician"), must_arrive=True),
        Tell(NOT_TODAY, HURTS & LEVEL_AFTER_PAIN.is_("not_today"), must_arrive=True),
        Tell("Thank you for saying so. That test is over and does not count. " + NO_LOAD,
             HURTS & LEVEL_AFTER_PAIN.is_("no_load") & HURT_IN.one_of(*route()), must_arrive=True),
        Tell("Thank you for saying so. " + NO_LOAD, HURTS & LEVEL_AFTER_PAIN.is_("no_load") & ~HURT_IN.one_of(*route()), must_arrive=True),
        Tell("If it gets worse, or is not gone by tomorrow morning, see a doctor or physiotherapist.",
             HURTS & LEVEL_AFTER_PAIN.one_of("no_load", "not_today")),
    ),
)
