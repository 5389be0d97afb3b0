"""Signs: what a lifter wrote that matters as much as pain. Runs whenever one is heard; whatever was going on waits under it."""

from companion.calendar.words import DAY_NAMES
from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Alert, Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Jump, Offer, Run, Tell
from companion.conversation.kinds import Option, Words, choice
from companion.conversation.number_kinds import PainScore
from companion.conversation.policy import Policy
from companion.screening.signs import SCREENED_SIGNS
from flows.cleared_by import BY_CLINICIAN, CLEARED_FACTS, CLEARED_OR_NOT, asked_who_and_when, not_cleared
from flows.level_parts import LEVEL_PARTS
from flows.safety_check import LEVELS, OLD_DISC, TOLD, UNSURE
from flows.safety_facts import CLEARED_WHY, HISTORY
from flows.shared import CALL_FIRST, CAUDA_EQUINA, CLINICIAN, EMERGENCY, LEG_FIRST, NOT_TODAY, SAME_DAY
from flows.sign_facts import (
    SELF_HARM,
    before_signs,
    body_weight_only,
    cleared_for_it,
    crisis_asked,
    fits_still,
    heard,
    history_with_signs,
    is_history,
    keys_of_signs,
    level_after_signs,
    level_kept,
    level_until,
    limit_said,
    meant_too,
    named,
    once_more,
    parts_after_signs,
    parts_while_open,
    pause_wished,
    quoted,
    reasons_of_signs,
    thanked,
    told,
    understood,
    why_told,
    wrote,
)

YES_NO = ("yes", "no")
UNTIL, LEVEL = Fact("until", values=LEVELS, of=level_until), Fact("level", values=LEVELS, of=level_after_signs)
CHEST, LEG = Fact("chest_heard", values=YES_NO, of=heard("chest")), Fact("leg_heard", values=YES_NO, of=heard("weakness"))
NERVE_HEARD = Fact("nerve_heard", values=YES_NO, of=heard("bladder_bowel", "saddle", "sexual"))
ILL, SPINE = Fact("ill_heard", values=YES_NO, of=heard("fever")), Fact("spine_heard", values=YES_NO, of=heard("spine_history"))
EXPECTING = Fact("pregnancy_heard", values=YES_NO, of=heard("pregnancy"))
YOUNG, LIMIT_SAID = Fact("young_heard", values=YES_NO, of=heard("under_18")), Fact("limit_said", of=limit_said)
SIGN_SAID = Fact("said", values=("cant feel my foot properly", "pause till 3 may, my foot is numb"))
PAUSE = Fact("pause", values=("2026-03-16",), of=pause_wished)
HISTORY_HEARD = Fact("history_heard", values=YES_NO, of=is_history)

TWO_AT_ONCE = ("weakness bladder_bowel", "fever pregnancy", "chest weakness", "chest pregnancy", "weakness fever", "weakness pregnancy",
               "weakness spine_history", "fever spine_history", "chest fever", "fever heart_history", "fever restriction",
               "chest restriction", "weakness restriction", "weakness heart_history", "pregnancy spine_history", "chest spine_history")
HEARD = Fact("heard", values=(*SCREENED_SIGNS, *TWO_AT_ONCE))
"""Ids of the signs heard, by example of each and of two at once."""

AMONG = Fact("among", values=("weakness saddle fever", "chest spine_history", "chest self_harm heart_history", "bladder_bowel sexual",
                              "fall cancer_bone spine_history", "weight_loss pregnancy anticoagulants", "restriction under_18",
                              "self_harm weakness fever", "self_harm weakness pregnancy", "self_harm heart_history restriction",
                              "self_harm fever", "self_harm pregnancy", "self_harm restriction", "weakness restriction",
                              "self_harm weakness spine_history", "self_harm spine_history", "weakness heart_history anticoagulants"))
"""Ids of what doubtful words may mean, by example."""
BUTTONS = {**{sign.id: sign.button for sign in SCREENED_SIGNS.values()}, SELF_HARM: "Thoughts of harming myself"}
NAMED = {sign: Fact(f"may_{sign}", values=YES_NO, of=named(sign)) for sign in BUTTONS}
WHICH = choice(*(Option(sign, button, only_if=NAMED[sign].is_("yes")) for sign, button in BUTTONS.items()),
               ("unsure", "Not sure", "not sure", "maybe", "unsure"),
               ("no", "No, none of these", "no", "none of these", "none", "neither", "something else"))
CRISIS_MEANT = fact("which").is_(SELF_HARM) | fact("which").is_("unsure") & NAMED[SELF_HARM].is_("yes")

SO = ~fact("so").is_("no") & ~fact("when").is_("no") & ~fact("which").one_of("no", SELF_HARM)
RED = NERVE_HEARD.is_("yes") | fact("bladder").one_of("yes", "unsure") | (CHEST.is_("yes") & ~fact("when").one_of("lately", "earlier"))
"""An emergency: nothing more is asked."""
ON = SO & ~RED
TOLD_AT_ONCE = fact("sure").is_("yes") & (CHEST.is_("yes") | LEG.is_("yes") | NERVE_HEARD.is_("yes"))
"""What to do is told before anything is asked."""
CLEARED_BY_THEM = ON & fact("cleared").is_("yes") & BY_CLINICIAN
OPEN, BODY_FIRST = SO & LEVEL.one_of("go", "no_load"), fact("body_first").is_("yes")
ASKED_IF_CLEARED = fact("cleared").known | CHEST.is_("no") & EXPECTING.is_("no") & SPINE.is_("no")
LIMIT_ALONE = fact("heard").is_("restriction")
"""What stands against training beside a limit was told before: it is not said as news, since whoever set the limit may have seen them."""
MEANT = fact("so").is_("no") | fact("when").is_("no") | fact("which").is_("no")
STILL_SO = Fact("still", values=YES_NO, of=fits_still)
"""True if the words that say what was meant instead may still be the sign: then it is asked once more."""

NOTHING_HEARD = Gate(~fact("heard").known, "I have no question about what you wrote just now.")
"""The gate for whoever comes without a sign that was heard."""

STANDS_TOLD = "Then what I told you stands. Go there or make that call now, and do not drive yourself."
"""What was told at once is not told in full twice."""

OPEN_SIGNS = (Do(Find(LEVEL_PARTS, "{parts_open}", "what the level is made of")),
              Do(Find("safety.level", "{until}", "a sign was written, questions open")),
              Do(Find("safety.why", "{why}", "the answers that weighed so far")))
"""Until it is answered the day is closed."""

FLOW = Flow(
    "signs", version=1, title="What you wrote", policy=Policy.SIGNS, command=None, at_start=before_signs,
    gates=(NOTHING_HEARD,),
    facts=(*CLEARED_FACTS, HEARD, AMONG, *NAMED.values(), SIGN_SAID, Fact("quoted", of=quoted), STILL_SO,
           Fact("meant_too", of=meant_too), Fact("thanked", of=thanked), Fact("wrote", of=wrote),
           Fact("once_more", of=once_more), Fact("told", of=told),
           Fact("crisis_asked", of=crisis_asked), Fact("sure", values=YES_NO),
           Fact("works", values=("yes",)), UNTIL, LEVEL, CHEST, LEG, NERVE_HEARD,
           ILL, SPINE, EXPECTING, YOUNG, LIMIT_SAID, HISTORY_HEARD, PAUSE, Fact("understood", of=understood),
           Fact("kept", of=level_kept),
           Fact("because", of=reasons_of_signs), Fact("why_told", of=why_told), Fact("history_told", of=history_with_signs),
           Fact("parts_open", of=parts_while_open), Fact("parts", of=parts_after_signs),
           Fact("why", of=keys_of_signs), Fact("body_first", values=YES_NO, of=body_weight_only),
           Fact("cleared_until", of=cleared_for_it)),
    parked="All right. Say “go on” when you can answer. Until then no test and no drill opens today.",
    steps=(
        *OPEN_SIGNS,
        Tell("Stop there, and get comfortable: one thing first.", fact("works").is_("yes") & ~TOLD_AT_ONCE, must_arrive=True),
        Tell(CALL_FIRST, fact("sure").is_("yes") & CHEST.is_("yes"), must_arrive=True),
        Tell(LEG_FIRST, fact("sure").is_("yes") & LEG.is_("yes") & CHEST.is_("no"), must_arrive=True),
        Tell(EMERGENCY, NERVE_HEARD.is_("yes") & fact("sure").is_("yes"), must_arrive=True),
        Do(Alert("{until}", "wrote {quoted}: {understood}"), NERVE_HEARD.is_("yes") & fact("sure").is_("yes")),
        Ask("which", "You wrote {wrote}. I am not sure I understood.{once_more} Do you mean one of these?", WHICH, safety=True,
            only_if=AMONG.known),
        Run("crisis", CRISIS_MEANT, asked="{crisis_asked}", back=False),
        Ask("so", "You wrote {wrote}. I understand: {understood}.{once_more} Is that so?", choice(
            ("yes", "Yes, that is so", "yes", "that's right", "correct", "right"), ("unsure", "Not sure", "not sure", "maybe", "unsure"),
            ("no", "No, I meant something else", "no", "i meant something else", "wrong", "not that")), safety=True,
            only_if=CHEST.is_("no") & ~AMONG.known),
        Ask("when", "You wrote {wrote}. I understand: {understood}.{once_more} Is it now, was it today, or was it earlier?", choice(
            ("now", "Now or today", "now", "today", "this morning", "yes"),
            ("lately", "In the last two weeks", "earlier", "before", "lately", "recently", "yesterday", "the other day",
             "a few days ago", "days ago", "this week", "last week", *(f"on {day.lower()}" for day in DAY_NAMES)),
            ("earlier", "Longer ago", "longer ago", "long ago", "last month", "months ago", "last year", "years ago"),
            ("unsure", "Not sure", "not sure", "unsure"), ("no", "No, I meant something else", "no", "i meant something else")),
            safety=True, only_if=CHEST.is_("yes")),
        Ask("meant", "Good that I asked. What did you mean? A few words.",
            Words(example_text="my legs are tired from the bike", tried=("only a bit",)),
            safety=True, free=True, doubts=True, only_if=MEANT & ~fact("meant").known,
            then=(Jump(STILL_SO.is_("yes") & fact("which").is_("no") & ~fact("so").known & ~fact("when").known, "which"),
                  Jump(STILL_SO.is_("yes") & fact("so").is_("no") & ~fact("when").known, "so"),
                  Jump(STILL_SO.is_("yes") & fact("when").is_("no"), "when"))),
        Ask("bladder", f"Any of these, now or lately? {CAUDA_EQUINA}", UNSURE, safety=True, only_if=ON & LEG.is_("yes")),
        Ask("pain", "Back or hip pain right now, from 0 to 10?", PainScore(), safety=True, only_if=ON & ILL.is_("yes")),
        Ask("pregnant", "Are you pregnant now, or could you be?", UNSURE, safety=True, only_if=ON & EXPECTING.is_("yes")),
        Ask("old_disc", OLD_DISC, UNSURE, safety=True, only_if=ON & SPINE.is_("yes")),
        Ask("cleared", "Has a doctor or physiotherapist cleared you to train with it?", CLEARED_OR_NOT, safety=True,
            only_if=ON & HISTORY_HEARD.is_("yes")),
        *asked_who_and_when("{who_asked}", TOLD, ON & fact("cleared").is_("yes")),
        *not_cleared(ON & fact("cleared").is_("yes")),
        Ask("knew", "And was that after what you wrote of, so that they knew of it?", UNSURE, safety=True, only_if=CLEARED_BY_THEM),
        Tell("Then that does not count for this. Ask them about it, and once they have cleared you, say “cleared”.",
             CLEARED_BY_THEM & ~fact("knew").is_("yes")),
        Ask("limits", "Did they set any limits? If not, type “none”.", Words(example_text="no heavy deadlifts", tried=("none",)),
            safety=True, free=True, signs=TOLD, only_if=CLEARED_BY_THEM & fact("knew").is_("yes")),
        Do(Find(LEVEL_PARTS, "{parts}", "what the level is made of")),
        Do(Find("safety.level", "{kept}", "signs written", "{because}")),
        Do(Find("safety.why", "{why}", "the answers that weighed")),
        Do(Find(HISTORY, "{history_told}", "a history, written"), SO & HISTORY_HEARD.is_("yes")),
        Do(Find("safety.pregnant", "{pregnant}", "signs written"), fact("pregnant").known),
        Do(Find("safety.body_first", "yes", "body weight only: an old disc injury, or pregnancy"), fact("body_first").is_("yes")),
        Do(Find("safety.age", "under_18", "said so"), SO & YOUNG.is_("yes")),
        Do(Find("safety.cleared_until", "{cleared_until}", CLEARED_WHY, "{who_and_when}; limits: {limits}"),
           only_if=fact("cleared_until").known),
        Do(Alert("{level}", "wrote {told}{why_told}"), SO & LEVEL.one_of("clinician", "same_day", "emergency")),
        Do(Alert("{level}", "what was written was taken back: {quoted} meant “{meant}”{meant_too}"),
           MEANT & (NERVE_HEARD.is_("yes") | STILL_SO.is_("yes"))),
        Tell("{thanked}", MEANT),
        Tell(EMERGENCY, SO & LEVEL.is_("emergency") & ~(NERVE_HEARD.is_("yes") & fact("sure").is_("yes") & ~fact("meant").known),
             must_arrive=True, last=True),
        Tell(STANDS_TOLD, SO & LEVEL.is_("emergency") & NERVE_HEARD.is_("yes") & fact("sure").is_("yes") & ~fact("meant").known,
             must_arrive=True, last=True),
        Tell(SAME_DAY, SO & LEVEL.is_("same_day"), must_arrive=True, last=True),
        Tell(CLINICIAN, SO & LEVEL.is_("clinician") & ~LIMIT_ALONE, must_arrive=True),
        Tell(NOT_TODAY, SO & LEVEL.is_("not_today"), must_arrive=True),
        Tell("Noted, and who cleared you. All stays open. If it changes, or anything new comes, say so.",
             OPEN & fact("cleared_until").known & ~BODY_FIRST),
        Tell("Noted. Body weight only for now: no bar and no added weight in anything here.", OPEN & BODY_FIRST),
        Tell("Lying on the back and deep folds are left out in pregnancy, as a precaution.",
             OPEN & (EXPECTING.is_("yes") | fact("pregnant").one_of("yes", "unsure"))),
        Tell("Under 18, this only works with a coach who is linked to you here. Your answers are kept. If that is wrong, say “my age”.",
             SO & YOUNG.is_("yes"),
             must_arrive=True),
        Run("limits", ON & LIMIT_SAID.known & ASKED_IF_CLEARED, asked="{limit_said}"),
        Tell("I told you to see a doctor or physiotherapist, and that stands until one has seen you for it. Was this it? Then tap below.",
             SO & LEVEL.is_("clinician") & LIMIT_ALONE, must_arrive=True, offers=(Offer("I was seen for it", "referral"),)),
        Tell("You also asked for a pause of your squat days, until {pause:date}.", PAUSE.known & fact("squat.plan").known,
             offers=(Offer("Pause until then", "squat_days", "pause until {pause}"),)),
    ),
)
