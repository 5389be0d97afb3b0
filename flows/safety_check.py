"""Safety check: what would make testing unsafe today, one screen at a time; six taps for a healthy person."""

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Alert, Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Tell
from companion.conversation.kinds import PainScore, Words, YesNo
from companion.screening.safety import Level
from flows.safety_facts import cleared_until, level_after_check, reasons_of_check, still_cleared
from flows.shared import CLINICIAN, EMERGENCY, NO_LOAD, NOT_TODAY, SAME_DAY, WELCOMED

LEVELS = tuple(level.value for level in Level)
LEVEL = Fact("level", values=LEVELS, of=level_after_check)
BECAUSE = Fact("because", of=reasons_of_check)
STILL_CLEARED = Fact("still_cleared", values=("yes", "no"), of=still_cleared)
CLEARED_UNTIL = Fact("cleared_until", of=cleared_until)

UNSURE = YesNo(unsure=True)
WAS_SENT = fact("safety.level").one_of("emergency", "same_day")
SOMETHING = fact("urgent").one_of("yes", "unsure")
HISTORY = fact("history").one_of("yes", "unsure")
OPEN_HISTORY = HISTORY & ~fact("old_disc").is_("yes")

FLOW = Flow(
    "safety_check", version=1, title="Safety check", minutes=1, command=("check", "safety"),
    facts=(STILL_CLEARED, CLEARED_UNTIL, LEVEL, BECAUSE),
    gates=(
        WELCOMED,
        Gate(fact("safety.level").is_("emergency") & fact("safety.may_open").is_("no"), EMERGENCY),
        Gate(fact("safety.level").is_("same_day") & fact("safety.may_open").is_("no"), SAME_DAY),
    ),
    steps=(
        Ask("seen", "Last time I asked you to get care. Have you been seen by a doctor since?", YesNo(), safety=True,
            only_if=WAS_SENT),
        Ask("told", "What were you told? A few words are enough.",
            Words(example_text="a strained muscle, light training is fine"), safety=True, free=True,
            only_if=fact("seen").is_("yes")),
        Ask("seen_cleared", "Did they say you may train?", UNSURE, safety=True, only_if=fact("seen").is_("yes")),
        Ask("bladder", "Any of these, now or lately? New trouble with bladder or bowel; numbness between the legs; "
            "weakness in both legs; loss of sexual function.", UNSURE, safety=True),
        Ask("chest", "Chest pain, faintness, or being unusually short of breath: now or today?", UNSURE, safety=True),
        Ask("urgent", "Lately: a leg that is weak or getting weaker, a foot that drops, a hard fall or blow, fever, chills, "
            "an infection, or feeling ill?", UNSURE, safety=True),
        Ask("weakness", "Is it a leg that is weak or getting weaker, or a foot that drops?", UNSURE, safety=True,
            only_if=SOMETHING),
        Ask("fall", "Is it a hard fall or blow?", UNSURE, safety=True, only_if=SOMETHING),
        Ask("fever", "Is it fever, chills, an infection, or feeling ill?", UNSURE, safety=True, only_if=SOMETHING),
        Ask("history", "Ever, or now: cancer; weight loss you did not aim for; night pain no position eases; long use of "
            "prednisone-type tablets; weak bones; pregnancy; a recent operation or fracture; a disc or nerve diagnosis; "
            "chest pain or fainting on effort?", UNSURE, safety=True),
        Ask("pregnant", "Are you pregnant, or could you be?", UNSURE, safety=True, only_if=HISTORY),
        Ask("old_disc", "Is it only an old disc injury, with no symptoms for six months, and you train as usual?",
            UNSURE, safety=True, only_if=HISTORY & fact("pregnant").is_("no")),
        Ask("same_history", "You told me a clinician cleared you. Is it still the same, with nothing new?", UNSURE,
            safety=True, only_if=OPEN_HISTORY & STILL_CLEARED.is_("yes")),
        Ask("cleared", "Has a doctor or physiotherapist cleared you to train with it?", UNSURE, safety=True,
            only_if=OPEN_HISTORY & ~fact("same_history").is_("yes")),
        Ask("cleared_at", "Who cleared you, and when?", Words(example_text="my physio, in May"), safety=True, free=True,
            only_if=fact("cleared").is_("yes")),
        Ask("limits", "Did they set any limits? If not, type “none”.", Words(example_text="no heavy deadlifts"),
            safety=True, free=True, only_if=fact("cleared").is_("yes")),
        Ask("pain", "Back or hip pain right now, from 0 to 10? Rate pain, not stretch.", PainScore(), safety=True),
        Ask("soreness", "Is that only even, dull soreness from training?", UNSURE, safety=True, only_if=fact("pain") >= 1),
        Ask("leg_signs", "Pain, tingling or numbness below a knee right now?", UNSURE, safety=True),
        Do(Find("safety.checked", "{level}", "safety check", "{because}")),
        Do(Find("safety.level", "{level}", "safety check", "{because}")),
        Do(Find("safety.cleared_until", "{cleared_until}", "cleared by a clinician: asked again after six months",
                "{cleared_at}; limits: {limits}"), only_if=CLEARED_UNTIL.known),
        Do(Alert("{level}", "the safety check says {level:words}: {because}"),
           only_if=LEVEL.one_of("clinician", "same_day", "emergency")),
        Tell(EMERGENCY, LEVEL.is_("emergency"), must_arrive=True),
        Tell(SAME_DAY, LEVEL.is_("same_day"), must_arrive=True),
        Tell(CLINICIAN, LEVEL.is_("clinician"), must_arrive=True),
        Tell(NOT_TODAY, LEVEL.is_("not_today")),
        Tell(NO_LOAD, LEVEL.is_("no_load")),
        Tell("Nothing stands against testing today. If anything hurts, say so at once.", LEVEL.is_("go")),
    ),
)
