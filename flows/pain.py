"""Pain: what hurts, and what follows from it. Runs whenever something hurts; whatever was going on waits under it."""

from dataclasses import replace

from companion.calendar.prompts import MORNING
from companion.conversation.condition import Condition, Fact, fact
from companion.conversation.effects import Alert, CountAgain, Find, Remind, Void
from companion.conversation.flow import Ask, Do, Flow, Jump, Run, Tell
from companion.conversation.kinds import Option, YesNo, choice
from companion.conversation.moves import BESIDE
from companion.conversation.number_kinds import PainScore
from companion.conversation.policy import Policy
from companion.screening.levels import URGENT_LEVELS
from companion.screening.protocols import protocols, route
from flows.level_parts import LEVEL_PARTS
from flows.pain_facts import (
    MOVEMENTS,
    SQUATS_OF_DAY,
    TAKES_BACK,
    another_pain,
    before_pain,
    hurt_in_words,
    keys_of_pain,
    level_after_pain,
    may_take_back,
    nothing_hurt,
    other_pain,
    others_done,
    parts_after_pain,
    parts_while_open,
    parts_with_tap,
    reaches_below_knee,
    reasons_of_pain,
    spot_of,
    spot_words,
    still_hurts,
    stops,
    struck_words,
    told_so_far,
    told_to_coach,
    void,
)
from flows.safety_check import LEVELS, UNSURE
from flows.safety_facts import leg_first, level_until_asked, said_heart, said_leg_signs, said_saddle, said_weak, tells_leg_sign, tomorrow
from flows.shared import (
    BY,
    CALL_FIRST,
    CAUDA_EQUINA,
    CLINICIAN,
    EMERGENCY,
    LEG_FIRST,
    NO_LOAD,
    NOT_TODAY,
    OFFER_UNDO,
    SAME_DAY,
    closed_by_tap,
)

YES_NO = ("yes", "no")
LEVEL_AFTER_PAIN = Fact("level", values=LEVELS, of=level_after_pain)
UNTIL_ASKED = Fact("until_asked", values=LEVELS, of=level_until_asked)
BECAUSE = Fact("because", of=reasons_of_pain)
SAID_SIGNS = Fact("said_signs", values=YES_NO, of=said_leg_signs)
SAID_WEAK = Fact("said_weak", values=YES_NO, of=said_weak)
HURTS = ~fact("where").is_("nothing")
EMERGENCY_NOW = fact("heart_now").one_of("yes", "unsure") | fact("saddle_now").one_of("yes", "unsure")
ASKED = HURTS & ~fact("where").is_("chest") & ~EMERGENCY_NOW
"""True unless it is an emergency already: chest, breath, faintness, bladder or saddle end the questions."""
SIGN_WRITTEN = SAID_SIGNS.is_("yes") | SAID_WEAK.is_("yes")
"""True if a sign from the nerves is in the lifter's words."""
LEG_SIGNS = SIGN_WRITTEN | fact("below_knee").one_of("yes", "unsure") | fact("tingling").one_of("yes", "unsure")
URGENT_SIGNS = fact("bladder").one_of("yes", "unsure") | fact("weakness").one_of("yes", "unsure")

CLOSES = {"where": fact("where").is_("chest"),
          **{key: fact(key).one_of("yes", "unsure") for key in ("heart_now", "saddle_now", "bladder", "weakness")}}
SLIP_IN_PAIN = closed_by_tap(**CLOSES) & HURTS & ~fact("said_heart").is_("yes") & ~fact("said_saddle").is_("yes") & ~SAID_WEAK.is_("yes")
"""True if only taps closed everything, and none of it was written in words, so that they can be undone."""

HURT_IN = Fact("hurt_in", values=tuple(MOVEMENTS))
"""The movement in which it hurt; unknown if the body was at rest."""

LONG_SINCE, JUST_DONE = Fact("long_since", values=("yes",)), Fact("just_done", values=("yes",))
"""True if no word came for long in that movement; and if it was done already, just before."""

DID = Fact("did", values=(f"{route()[0]} {route()[-1]} {SQUATS_OF_DAY}", "warm_up"))
"""The movements of the last session, with two examples."""

OTHERS_DONE = Fact("others", values=YES_NO, of=others_done)
OTHER_PAIN = Fact("other_pain", values=YES_NO, of=other_pain)
STOPS = Fact("stops", values=YES_NO, of=stops)
VOID, STRUCK = Fact("void", of=void), Fact("struck", of=struck_words)
SOME_STRUCK = Fact("some_struck", values=YES_NO, of=lambda got, side: "yes" if struck_words(got, side) else "no")

IN_SQUATS = fact("during").is_(SQUATS_OF_DAY) | fact("during").is_("unsure") & fact(f"did_{SQUATS_OF_DAY}").is_("yes")
NOT_COUNTED = "No longer counted: {struck}. Do that again on a day without pain."
NO_STEP = "Those squats are noted as painful, so they earn no step deeper."
GOES_ON_IN_TEST = HURTS & STOPS.is_("no") & HURT_IN.one_of(*route())
"""True if it hurt in something else than the test in progress."""
STILL_COUNTS = "What you answered in the {hurt_in_words} still counts."
URGENT_NOW = LEVEL_AFTER_PAIN.one_of(*URGENT_LEVELS)
"""True if they have to be seen at once: then nothing of less weight is said."""
MILD = HURTS & LEVEL_AFTER_PAIN.one_of("no_load", "not_today")
NOT_GONE = "Not gone by tomorrow morning, or worse? Then see a doctor or a physio."
GOT_WORSE = "It got worse. See a doctor or a physio about it, today or tomorrow."
GOES_ON_WORSE = fact("pain.morning").is_("worse") & fact("pain.morning.today").known
"""True if it was worse this morning than on the day before."""

MAY = Fact("may", values=("misheard", "taken_back", "stands"), of=may_take_back)
NOTHING = Fact("nothing", values=("misheard", "taken_back", "stands"), of=nothing_hurt)
PAIN_STANDS = HURTS | NOTHING.is_("stands")
"""True if pain stands, also if the lifter says now that nothing hurts."""

TAKING_BACK = Fact("taking_back", values=("yes",))
"""True if these questions were begun by words that take pain back."""
TOLD_TODAY = fact("pain.told.today").known & ~fact("pain.hurt").is_("no")
TO_TAKE_BACK = (TOLD_TODAY | fact("pain.open_since").known) & ~fact("safety.slip.open").is_("yes")
"""True while pain told today, or left half told, stands that may be taken back; a wrong tap has its own way."""

ANOTHER_PAIN = Fact(BESIDE, values=("yes",))
"""True if these questions follow others, for a second pain told in those."""

THEIR_WORDS = Fact("said", values=("ouch", "my foot is numb", "i feel faint", "i wet myself",
                              "my chest hurts and i wet myself", "my foot drops when i walk"))
"""The lifter's words, with one example of each kind."""

OPEN_QUESTIONS = (Do(Find(LEVEL_PARTS, "{parts_open}", "what the level is made of"), HURTS),
                  Do(Find("safety.level", "{until_asked}", "something hurt, questions open"), HURTS),
                  Do(Find("safety.why", "{why}", "the answers that weighed so far"), HURTS),
                  Do(Find("pain.told", "{told}", "whether pain was told, and a sign with it"), HURTS & fact("where").known))
"""Until these are answered the day is closed: somebody who puts the phone away now is not offered a squat."""

NOTHING_HURTS = ("nothing", "nowhere", "false alarm", "it was nothing", "all good", *(
    f"{lead}{said}" for lead in ("", "no ", "no, ", "no wait ", "sorry ", "i meant ", "i mean ", "sorry i meant ", "oh ", "actually ")
    for said in ("nothing hurts", "nothing hurt", "it doesn't", "it doesn't hurt", "it didn't", "it didn't hurt", "it does not hurt",
                 "no pain", "it doesn't hurt actually", "nothing is hurting", "nothing actually hurts")))
"""Other words for that nothing hurts; each is asked about once more."""



def _did(flow: str) -> Condition:
    """Return that a movement may be named: it was done, and is not what goes on now."""
    return fact(f"did_{flow}").is_("yes") & (~HURT_IN.is_(flow) | LONG_SINCE.known)


DURING = choice(
    *(Option(flow, one.title, (one.short_name,), _did(flow)) for flow, one in protocols().items()),
    Option("warm_up", "Warm-up", ("warmup", "warming up"), _did("warm_up")),
    Option("prime", "Priming drill", ("drill", "the drill"), _did("prime")),
    Option(SQUATS_OF_DAY, "Squat-day squats", ("squats", "squatting"), _did(SQUATS_OF_DAY)),
    Option("this", "Just now", ("now", "this one", "in this one"), HURT_IN.known & ~LONG_SINCE.known),
    Option("before", "Before these", ("before", "before that", "earlier")), Option("other", "Something else", ("other", "none of these")),
    ("unsure", "Not sure", "don't know"))
"""The movements of the last session, each offered where it was done."""

WEAK_LEG = fact("leg_first").is_("yes")
URGENT_WORDS = fact("said_heart").is_("yes") | fact("said_saddle").is_("yes")

FLOW = Flow(
    "pain", version=2, title="Pain", policy=Policy.PAIN,
    command=("pain", "it hurts", "something hurts"), sentences=(f"(?P<asked>{TAKES_BACK})",), said_by=TO_TAKE_BACK, at_rest=True,
    facts=(*(Fact(f"{key}_by", values=BY) for key in CLOSES), Fact("parts_tap", of=parts_with_tap),
           Fact("spot", of=spot_words), TAKING_BACK, ANOTHER_PAIN, THEIR_WORDS, HURT_IN, DID, OTHERS_DONE, OTHER_PAIN, MAY, NOTHING, STOPS,
           VOID, STRUCK, SOME_STRUCK, LONG_SINCE, JUST_DONE,
           Fact("told", values=("yes", "sign"), of=told_so_far), Fact("hurt_in_words", of=hurt_in_words), UNTIL_ASKED,
           Fact("told_to_coach", of=told_to_coach),
           LEVEL_AFTER_PAIN, BECAUSE, SAID_SIGNS, SAID_WEAK, Fact("why", of=keys_of_pain), Fact("parts_open", of=parts_while_open),
           Fact("parts", of=parts_after_pain), Fact("tomorrow", of=tomorrow),
           Fact("said_heart", values=("yes", "no"), of=said_heart), Fact("said_saddle", values=("yes", "no"), of=said_saddle),
           Fact("leg_first", values=("yes", "no"), of=leg_first)),
    at_start=before_pain, adds=tells_leg_sign, another=another_pain,
    parked="All right. Tell me about it when you can; say “go on”. Until then no test and no drill opens today.",
    steps=(
        Do(Find("pain.since", "{now}", "the first pain of today that stands"), fact("first").is_("yes")),
        *OPEN_QUESTIONS,
        Tell("Stop there, and get comfortable. A few questions, then we see.",
             ~TAKING_BACK.known & ~URGENT_WORDS & ~WEAK_LEG & ~ANOTHER_PAIN.known, must_arrive=True),
        Tell(LEG_FIRST, ~TAKING_BACK.known & ~URGENT_WORDS & WEAK_LEG, must_arrive=True),
        Tell(CALL_FIRST, ~TAKING_BACK.known & URGENT_WORDS, must_arrive=True),
        Ask("heart_now", "Chest pain, faintness, or being unusually short of breath: now?", UNSURE, safety=True,
            only_if=fact("said_heart").is_("yes")),
        *OPEN_QUESTIONS,
        Ask("saddle_now", f"Any of these, now? {CAUDA_EQUINA}", UNSURE, safety=True,
            only_if=fact("said_saddle").is_("yes") & ~EMERGENCY_NOW),
        *OPEN_QUESTIONS,
        Ask("where", "Where does it hurt?", replace(choice(
            ("back", "Lower back", "back", "spine", "my back"), ("hip", "Hip or groin", "hip", "groin", "hips"),
            ("leg", "Leg", "thigh", "hamstring", "calf", "my leg"), ("knee", "Knee", "my knee"),
            ("ankle", "Ankle or foot", "ankle", "foot"), ("chest", "Chest, breath or faint", "chest", "my chest",
                                                               "breath", "short of breath", "faint", "dizzy"),
            ("other", "Somewhere else", "other", "shoulder", "neck", "wrist", "arm", "all over", "everywhere", "several places"),
            ("nothing", "Nothing hurts", *NOTHING_HURTS)), later="nothing", doubt="other", told_by=spot_of),
            safety=True, only_if=~EMERGENCY_NOW & ~TAKING_BACK.known),
        Ask("surely", "So nothing hurt, nothing was numb, and you did not feel faint?",
            YesNo(yes="Right, nothing", no="No, wait", denies=still_hurts), safety=True, only_if=~HURTS & ~MAY.is_("taken_back"),
            then=(Jump(fact("surely").is_("no"), "where"),)),
        Ask("mistake", "You told me of pain today. Was that a mistake, so that nothing has hurt at all today? Pain that has eased "
            "since is no mistake.", YesNo(yes="Yes, a mistake", no="No, it did hurt", denies=still_hurts), safety=True,
            only_if=~HURTS & MAY.is_("taken_back"),
            then=(Jump(fact("mistake").is_("no") & ~TAKING_BACK.known & OTHER_PAIN.is_("no"), "where"),)),
        *OPEN_QUESTIONS,
        Tell("You also wrote “{said}”. Now about {spot}.", ANOTHER_PAIN.known & ASKED, must_arrive=True),
        Ask("bad", "How bad is it, from 0 to 10?", PainScore(), safety=True, amends=("where",), only_if=ASKED),
        *OPEN_QUESTIONS,
        Ask("sharp", "Is it sharp, shooting, spreading, or new to you?", UNSURE, safety=True, amends=("where",), only_if=ASKED),
        *OPEN_QUESTIONS,
        Ask("below_knee", "Is any of it below the knee?", YesNo(unsure=True, tells=reaches_below_knee), safety=True,
            amends=("where",), only_if=ASKED & ~fact("where").one_of("ankle", "knee")),
        *OPEN_QUESTIONS,
        Tell("You wrote “{said}”: I count that as a sign from the nerves.", ASKED & SAID_SIGNS.is_("yes")),
        Ask("tingling", "Any tingling, numbness or pins and needles?", UNSURE, safety=True,
            amends=("where",), only_if=ASKED & SAID_SIGNS.is_("no")),
        *OPEN_QUESTIONS,
        Ask("bladder", f"Any of these? {CAUDA_EQUINA}", UNSURE, safety=True, only_if=ASKED & LEG_SIGNS),
        *OPEN_QUESTIONS,
        Ask("weakness", "Is a leg weak, or does a foot drop?", UNSURE, safety=True,
            only_if=ASKED & LEG_SIGNS & fact("bladder").is_("no")),
        *OPEN_QUESTIONS,
        Ask("during", "During what did it hurt?", DURING, safety=True, amends=("where",),
            only_if=ASKED & ~URGENT_SIGNS & OTHERS_DONE.is_("yes")),
        Do(Find(LEVEL_PARTS, "{parts}", "what the level is made of")),
        Do(Find("safety.level", "{level}", "pain questions", "{because}")),
        Do(Find("safety.why", "{why}", "the answers that weighed")),
        Do(Find("pain.stops", "{stops}", "whether what was going on is over")),
        Do(Void("{void}"), HURTS & VOID.known),
        Do(Find("pain.void", "{void}", "named as what it hurt in"), HURTS & VOID.known),
        Do(CountAgain("{now}", "{hurt_in}"), HURTS & STOPS.is_("no") & HURT_IN.known),
        Do(Find("pain.hurt", "yes", "pain questions"), PAIN_STANDS),
        Do(Find("pain.hurt", "no", "pain questions: a false alarm"), NOTHING.is_("misheard")),
        Do(Find("pain.hurt", "no", "pain questions: taken back"), NOTHING.is_("taken_back")),
        Do(Alert("{level}", "{told_to_coach}"), HURTS),
        Do(Alert("{level}", "{because}"), NOTHING.one_of("stands", "taken_back")),
        Do(Find("pain.taken_back", "{since}", "pain told since then was taken back"), NOTHING.is_("taken_back")),
        Do(CountAgain("{since}"), NOTHING.is_("taken_back")),
        Do(CountAgain("{now}"), NOTHING.is_("misheard")),
        Do(Find("pain.follow", "open", "something hurt: asked about the next day"), PAIN_STANDS),
        Do(Find("pain.follow", "over", "taken back"), NOTHING.is_("taken_back")),
        Do(Remind("morning", "morning", "{tomorrow}", hour=MORNING.hour, that_day=True), PAIN_STANDS),
        Do(Remind("morning", "morning", ""), NOTHING.is_("taken_back")),
        Tell("Good. Then we go on, or you stop: both are fine.", NOTHING.is_("misheard")),
        Tell("Noted as a mistake. What I had stopped counting counts again. Both stay in your log.", NOTHING.is_("taken_back")),
        Tell("Noted. But you wrote “{said}”, and I never take back numbness or weakness: that stands until somebody has looked at it.",
             NOTHING.is_("stands") & SIGN_WRITTEN & ~fact("mistake").is_("no")),
        Tell("Noted. What you told me before still stands: I take pain back once a day, and never after numbness, weakness or chest "
             "pain.", NOTHING.is_("stands") & ~SIGN_WRITTEN & ~fact("mistake").is_("no")),
        Tell("Noted. Then what you told me stands for today.", fact("mistake").is_("no")),
        Do(Find(LEVEL_PARTS, "{parts_tap}", "what the level is made of"), SLIP_IN_PAIN),
        Do(Find("safety.slip", "tapped", "closed by a tap, in pain"), SLIP_IN_PAIN),
        Do(Find("safety.slip.of", "pain", "closed by a tap, in pain"), SLIP_IN_PAIN),
        Tell(EMERGENCY, PAIN_STANDS & LEVEL_AFTER_PAIN.is_("emergency"), must_arrive=True, last=True),
        Tell(SAME_DAY, PAIN_STANDS & LEVEL_AFTER_PAIN.is_("same_day"), must_arrive=True, last=True),
        Tell(CLINICIAN, PAIN_STANDS & LEVEL_AFTER_PAIN.is_("clinician"), must_arrive=True),
        replace(OFFER_UNDO, only_if=SLIP_IN_PAIN),
        Tell(NOT_TODAY, ~NOTHING.is_("misheard") & LEVEL_AFTER_PAIN.is_("not_today"), must_arrive=True),
        Tell("Thank you for saying so. " + NO_LOAD, HURTS & LEVEL_AFTER_PAIN.is_("no_load"), must_arrive=True),
        Tell(NO_LOAD, NOTHING.one_of("stands", "taken_back") & LEVEL_AFTER_PAIN.is_("no_load"), must_arrive=True),
        Tell(NOT_COUNTED, HURTS & ~URGENT_NOW & SOME_STRUCK.is_("yes") & ~IN_SQUATS),
        Tell(f"{NOT_COUNTED} {NO_STEP}", HURTS & ~URGENT_NOW & SOME_STRUCK.is_("yes") & IN_SQUATS),
        Tell(NO_STEP, HURTS & ~URGENT_NOW & ~SOME_STRUCK.is_("yes") & IN_SQUATS),
        Tell(STILL_COUNTS, GOES_ON_IN_TEST & ~MILD & ~URGENT_NOW),
        Tell(f"{STILL_COUNTS} {NOT_GONE}", GOES_ON_IN_TEST & MILD & ~GOES_ON_WORSE),
        Tell(f"{STILL_COUNTS} {GOT_WORSE}", GOES_ON_IN_TEST & MILD & GOES_ON_WORSE),
        Tell(NOT_GONE, MILD & ~GOES_ON_IN_TEST & ~GOES_ON_WORSE),
        Tell(GOT_WORSE, MILD & ~GOES_ON_IN_TEST & GOES_ON_WORSE, must_arrive=True),
        Run("recount", (HURTS & SOME_STRUCK.is_("yes") & (fact("during").known | JUST_DONE.known) |
                        fact("mistake").is_("yes") & fact("pain.void.today").known)
            & fact("outcome.at").known),
    ),
)
