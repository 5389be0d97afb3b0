"""Pain: what hurts, and what follows from it. Runs whenever something hurts; whatever was going on waits under it."""

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Alert, Find
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import PainScore, choice
from flows.safety_check import LEVELS, UNSURE
from flows.safety_facts import level_after_pain, level_before, level_until_asked, reasons_of_pain
from flows.shared import CLINICIAN, EMERGENCY, NO_LOAD, NOT_TODAY, SAME_DAY

LEVEL = Fact("level", values=LEVELS, of=level_after_pain)
UNTIL_ASKED = Fact("until_asked", values=LEVELS, of=level_until_asked)
BECAUSE = Fact("because", of=reasons_of_pain)
LEG = fact("below_knee").one_of("yes", "unsure") | fact("tingling").one_of("yes", "unsure")

FLOW = Flow(
    "pain", version=1, title="Pain", counted=False, hears_pain=False, holds=True, by_name=False,
    command=("pain", "it hurts", "something hurts"),
    facts=(UNTIL_ASKED, LEVEL, BECAUSE), at_start=level_before,
    steps=(
        # Until it is answered, the day is closed: somebody who puts the phone away now is not offered a squat.
        Do(Find("safety.level", "{until_asked}", "something hurt, questions open")),
        Tell("Stop there, and get comfortable. A few questions, then we see.", must_arrive=True),
        Ask("where", "Where does it hurt?", choice(
            ("back", "Lower back", "back", "spine", "my back"), ("hip", "Hip or groin", "hip", "groin", "hips"),
            ("leg", "Leg", "thigh", "hamstring", "calf", "my leg"), ("knee", "Knee", "my knee"),
            ("ankle", "Ankle or foot", "ankle", "foot"), ("chest", "Chest", "my chest"),
            ("other", "Somewhere else", "other", "shoulder", "neck", "wrist", "arm")), safety=True),
        Ask("bad", "How bad is it, from 0 to 10?", PainScore(), safety=True),
        Ask("sharp", "Is it sharp, shooting, spreading, or new to you?", UNSURE, safety=True),
        Ask("below_knee", "Is any of it below the knee?", UNSURE, safety=True, only_if=~fact("where").one_of("ankle", "knee")),
        Ask("tingling", "Any tingling, numbness or pins and needles?", UNSURE, safety=True),
        Ask("bladder", "Any of these? New trouble with bladder or bowel; numbness between the legs; weakness in both legs.",
            UNSURE, safety=True, only_if=LEG),
        Ask("weakness", "Is a leg weak, or does a foot drop?", UNSURE, safety=True, only_if=LEG),
        Do(Find("safety.level", "{level}", "pain questions", "{because}")),
        Do(Alert("{level}", "something hurt ({because})")),
        Tell(EMERGENCY, LEVEL.is_("emergency"), must_arrive=True),
        Tell(SAME_DAY, LEVEL.is_("same_day"), must_arrive=True),
        Tell(CLINICIAN, LEVEL.is_("clinician"), must_arrive=True),
        Tell(NOT_TODAY, LEVEL.is_("not_today"), must_arrive=True),
        Tell("Thank you for saying so. That test is over and does not count. " + NO_LOAD, LEVEL.is_("no_load"),
             must_arrive=True),
        Tell("If it gets worse, or is not gone by tomorrow morning, see a doctor or physiotherapist.",
             LEVEL.one_of("no_load", "not_today")),
    ),
)
