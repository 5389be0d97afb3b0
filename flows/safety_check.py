"""Safety check: reasons against testing today, one question at a time; eight taps for a healthy person."""

from dataclasses import replace

from companion.conversation.condition import Every, Fact, Some, fact
from companion.conversation.effects import Alert, Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Run, Tell
from companion.conversation.kinds import Words, YesNo
from companion.conversation.number_kinds import PainScore
from companion.conversation.policy import Policy
from companion.screening.safety import Level
from companion.screening.sources import with_numbers
from flows.cleared_by import BY_CLINICIAN, CLEARED_FACTS, CLEARED_OR_NOT, asked_who_and_when, not_cleared
from flows.level_parts import LEVEL_PARTS
from flows.safety_facts import (
               CLEARED_WHY,
               CLOSERS,
               HISTORY,
               HISTORY_KEYS,
               body_first,
               cleared_until,
               disc_alone,
               history_told,
               keys_of_check,
               level_after_check,
               level_so_far,
               limit_said,
               parts_with_tap,
               reasons_of_check,
               sore,
               stands_still,
               still_cleared,
               stood,
               told_before,
)
from flows.shared import (
               ASKED_THE_MORNING_AFTER,
               BY,
               CAUDA_EQUINA,
               CLINICIAN,
               EMERGENCY,
               NO_LOAD,
               NOT_AGAIN_TODAY,
               NOT_TODAY,
               OFFER_UNDO,
               SAME_DAY,
               SEEN_TODAY,
               WELCOMED,
               closed_by_tap,
)

OLD_DISC = with_numbers("Is it only an old disc injury, with no symptoms for {disc_quiet:count months}, and you train as usual?")
LEVELS = tuple(level.value for level in Level)
YES_NO = ("yes", "no")
LEVEL_AFTER_CHECK = Fact("level", values=LEVELS, of=level_after_check)
SO_FAR = Fact("so_far", values=LEVELS, of=level_so_far)
STANDS = Fact("stands", values=YES_NO, of=stands_still)
STILL_CLEARED = Fact("still_cleared", values=YES_NO, of=still_cleared)
CLEARED_UNTIL = Fact("cleared_until", of=cleared_until)

DISC_ALONE = Fact("disc_alone", values=YES_NO, of=disc_alone)
LIMIT_SAID, LIMITED = Fact("limit_said", of=limit_said), fact("limit.words").known

UNSURE = YesNo(unsure=True)
TOLD = ("heart_history", "cancer_bone", "weight_loss", "pregnancy", "spine_history", "anticoagulants", "restriction", "fall")
"""Signs that belong to what a clinician said, where that is asked for in words."""
SENT, SEEN = fact("sent").is_("yes"), fact("seen").is_("yes")
RED_FLAGS = fact("bladder").one_of("yes", "unsure") | fact("chest").one_of("yes", "unsure")
"""True in an emergency: the questions end."""
NOT_SEEN = fact("seen").is_("no")
ASKING_ON = ~RED_FLAGS & ~NOT_SEEN
SOMETHING = ASKING_ON & fact("urgent").one_of("yes", "unsure")
HISTORY_SAID = ASKING_ON & Some(tuple(fact(key).one_of("yes", "unsure") for key in HISTORY_KEYS))
NO_HISTORY = Every(tuple(fact(key).is_("no") for key in HISTORY_KEYS))
WAS_PREGNANT = ASKING_ON & fact("was_pregnant").one_of("yes", "unsure")
SAID_BEFORE = ASKING_ON & NO_HISTORY & fact("stood").is_("clinician") & ~SENT
MISTAKEN = SAID_BEFORE & fact("mistake").is_("yes")
HISTORY_OPEN = HISTORY_SAID | SAID_BEFORE & fact("mistake").one_of("no", "unsure")
"""True if there is a history, told now or before, which a clinician can clear."""
OWN = STANDS.is_("no")
"""True if this check itself found the level, and it is not only left from before."""

SLIP_IN_CHECK = closed_by_tap(**{key: fact(key).one_of("yes", "unsure") for key in CLOSERS}) & OWN & ~SENT
"""True if only taps closed everything, so that they can be undone."""

HALF_DONE = Do(Find("safety.level", "{so_far}", "safety check, not finished"),
               SO_FAR.one_of("no_load", "not_today", "clinician", "same_day"))

CARE_TODAY = fact("weakness").one_of("yes", "unsure") | fact("fall").one_of("yes", "unsure")
HALF_TOLD = Do(Alert("{so_far}", "safety check, not finished yet. {because}"), CARE_TODAY)

FLOW = Flow(
    "safety_check", version=2, title="Safety check", policy=Policy.SAFETY, command=("check", "safety"),
    at_start=stood,
    facts=(*(Fact(f"{key}_by", values=BY) for key in CLOSERS),
           *CLEARED_FACTS, STILL_CLEARED, CLEARED_UNTIL, STANDS, LEVEL_AFTER_CHECK, SO_FAR, DISC_ALONE,
           Fact("because", of=reasons_of_check),
           Fact("why", of=keys_of_check), Fact("parts_tap", of=parts_with_tap), LIMIT_SAID,
           Fact("history_told", of=history_told), Fact("told_before", of=told_before),
           Fact("body_first", values=YES_NO, of=body_first), Fact("sore", values=YES_NO, of=sore)),
    gates=(
        WELCOMED,
        SEEN_TODAY,
        Gate(fact("safety.level").is_("emergency") & fact("safety.may_open").is_("no"), EMERGENCY),
        Gate(fact("safety.level").is_("same_day") & fact("safety.may_open").is_("no"), SAME_DAY),
        Gate(fact("pain.open_since").known, first="pain"),
        ASKED_THE_MORNING_AFTER,
        NOT_AGAIN_TODAY,
    ),
    steps=(
        Ask("seen", "Last time I asked you to be seen. Has a doctor or physiotherapist seen you since?", YesNo(),
            safety=True, only_if=SENT),
        Ask("told", "What were you told? A few words are enough.",
            Words(example_text="nothing serious, fine to train", tried=("nothing serious",)), safety=True, free=True,
            only_if=SEEN, signs=TOLD),
        Ask("seen_cleared", "Did they say you may train?", UNSURE, safety=True, only_if=SEEN),
        Ask("bladder", f"Any of these, now or lately? {CAUDA_EQUINA}", UNSURE, safety=True, only_if=~NOT_SEEN,
            signs=("bladder_bowel", "saddle", "sexual")),
        Ask("chest", "Chest pain, faintness, or being unusually short of breath: now or today?", UNSURE, safety=True,
            only_if=ASKING_ON, signs=("chest",)),
        Ask("urgent", "Any of these lately? A leg that is weak or getting weaker. A foot that drops. A hard fall or blow. Fever, chills, "
            "an infection, or feeling ill.", UNSURE, safety=True, only_if=ASKING_ON, signs=("weakness", "fall", "fever")),
        HALF_DONE,
        Ask("weakness", "Is it a leg that is weak or getting weaker, or a foot that drops?", UNSURE, safety=True,
            only_if=SOMETHING, signs=("weakness",)),
        HALF_DONE,
        Ask("fall", "Is it a hard fall or blow?", UNSURE, safety=True, only_if=SOMETHING, signs=("fall",)),
        HALF_DONE,
        Ask("fever", "Is it fever, chills, an infection, or feeling ill?", UNSURE, safety=True, only_if=SOMETHING,
            signs=("fever",)),
        HALF_DONE,
        HALF_TOLD,
        Tell("That should be looked at today, also if you stop answering here. A few more questions, then I say where to go.", CARE_TODAY,
             must_arrive=True),
        Ask("history", "Have you ever had cancer or weak bones? Or taken steroid tablets, such as prednisone, for months?", UNSURE,
            safety=True, only_if=ASKING_ON, signs=("cancer_bone",)),
        HALF_DONE,
        Ask("history_signs", "Any of these, ever or now? Weight loss you did not aim for. Night pain that no position eases. Chest pain or "
            "fainting when you work hard.", UNSURE, safety=True, only_if=ASKING_ON, signs=("weight_loss",)),
        HALF_DONE,
        Ask("history_care", "Any of these, ever or now? A disc or nerve problem that a doctor named. A recent operation or broken bone. Or "
            "could you be pregnant?", UNSURE, safety=True, only_if=ASKING_ON, signs=("spine_history", "pregnancy")),
        HALF_DONE,
        Ask("mistake", "Before, you told me of this: {told_before}. Was that a mistake?", YesNo(
            yes="Yes, a mistake", no="No, it is so", unsure=True), safety=True, only_if=SAID_BEFORE),
        Ask("pregnant", "Are you pregnant, or could you be?", UNSURE, safety=True, only_if=HISTORY_SAID | WAS_PREGNANT,
            signs=("pregnancy",)),
        Ask("old_disc", OLD_DISC, UNSURE, safety=True, only_if=HISTORY_SAID & DISC_ALONE.is_("yes") & fact("pregnant").is_("no")),
        Ask("same_history", "You told me a clinician cleared you. Is it still the same, with nothing new?", UNSURE,
            safety=True, only_if=HISTORY_OPEN & STILL_CLEARED.is_("yes")),
        Ask("cleared", "Has a doctor or physiotherapist cleared you to train with it?", CLEARED_OR_NOT, safety=True,
            only_if=HISTORY_OPEN & ~fact("same_history").is_("yes")),
        *asked_who_and_when("{who_asked}", TOLD, ASKING_ON & fact("cleared").is_("yes")),
        *not_cleared(ASKING_ON & fact("cleared").is_("yes")),
        Ask("limits", "Did they set any limits? If not, type “none”.", Words(example_text="no heavy deadlifts", tried=("none",)),
            safety=True, free=True, signs=TOLD, only_if=ASKING_ON & fact("cleared").is_("yes") & BY_CLINICIAN),
        HALF_DONE,
        Ask("pain", "Back or hip pain right now, from 0 to 10? Rate pain, not stretch.", PainScore(), safety=True, only_if=ASKING_ON),
        HALF_DONE,
        Ask("soreness", "Is that only even, dull soreness from training?", UNSURE, safety=True,
            only_if=ASKING_ON & (fact("pain") >= 1)),
        Ask("leg_signs", "Pain, tingling or numbness below a knee right now?", UNSURE, safety=True, only_if=ASKING_ON),
        Do(Find("safety.checked", "{level}", "safety check", "{because}")),
        Do(Find("safety.level", "{level}", "safety check", "{because}"), OWN),
        Do(Find("safety.why", "{why}", "the answers that weighed"), OWN),
        Do(Find(HISTORY, "{history_told}", "a history, told in a safety check"), HISTORY_SAID | fact("pregnant").one_of("yes", "unsure")),
        Do(Find(HISTORY, "", "a history told before was a mistake"), MISTAKEN),
        Do(Alert("", "says that this was told by mistake: {told_before}"), MISTAKEN),
        Do(Find("safety.sore", "{sore}", "soreness from training puts off scored tests"), fact("leg_signs").known),
        Do(Find("safety.body_first", "{body_first}", "body weight only: an old disc injury, or pregnancy"), fact("leg_signs").known),
        Do(Find("safety.pregnant", "{pregnant}", "safety check"), fact("pregnant").known),
        Do(Find("safety.cleared_until", "{cleared_until}", CLEARED_WHY, "{who_and_when}; limits: {limits}"),
           only_if=CLEARED_UNTIL.known),
        Do(Alert("{level}", "safety check. {because}"),
           only_if=OWN & (LEVEL_AFTER_CHECK.one_of("clinician", "emergency") | LEVEL_AFTER_CHECK.is_("same_day") & ~CARE_TODAY)),
        Tell("Please be seen first. Until then no test and no drill opens here.", NOT_SEEN, must_arrive=True),
        Tell("You have been seen, but not told that you may train. Ask them that; until then no test and no drill opens here.",
             SEEN & ~fact("seen_cleared").is_("yes"), must_arrive=True),
        Do(Find(LEVEL_PARTS, "{parts_tap}", "what the level is made of"), SLIP_IN_CHECK),
        Do(Find("safety.slip", "tapped", "closed by a tap"), SLIP_IN_CHECK),
        Do(Find("safety.slip.of", "check", "closed by a tap"), SLIP_IN_CHECK),
        Tell(EMERGENCY, OWN & LEVEL_AFTER_CHECK.is_("emergency"), must_arrive=True, last=True),
        Tell(SAME_DAY, OWN & LEVEL_AFTER_CHECK.is_("same_day"), must_arrive=True, last=True),
        Tell(CLINICIAN, LEVEL_AFTER_CHECK.is_("clinician") & ~SENT | OWN & LEVEL_AFTER_CHECK.is_("clinician"), must_arrive=True),
        replace(OFFER_UNDO, only_if=SLIP_IN_CHECK),
        Tell(NOT_TODAY, LEVEL_AFTER_CHECK.is_("not_today")),
        Tell(NO_LOAD, LEVEL_AFTER_CHECK.is_("no_load")),
        Run("limits", ASKING_ON & LIMIT_SAID.known, asked="{limit_said}"),
        Tell("What you were told stands: {limit.words}. I keep to it in everything here.",
             LEVEL_AFTER_CHECK.one_of("go", "no_load") & LIMITED & ~NOT_SEEN),
        Tell("Body weight only for now: no bar and no added weight in anything here.",
             LEVEL_AFTER_CHECK.one_of("go", "no_load") & fact("body_first").is_("yes")),
        Tell("Sore muscles would change the numbers, so the tests wait until that is gone. Nothing is locked.",
             LEVEL_AFTER_CHECK.one_of("go", "no_load") & fact("sore").is_("yes")),
        Tell("I see no reason against testing today. If anything hurts, say so at once.",
             LEVEL_AFTER_CHECK.is_("go") & fact("sore").is_("no") & ~LIMITED),
        Tell("The rest is open today. If anything hurts, say so at once.", LEVEL_AFTER_CHECK.is_("go") & fact("sore").is_("no") & LIMITED),
    ),
)
