"""Clearance: a clinician has cleared somebody, who and when; what they were cleared for no longer holds."""

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Alert, Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Run, Tell
from companion.conversation.kinds import Words, YesNo, choice
from companion.conversation.policy import Policy
from companion.language.clearances import CLEARANCES
from flows.clearance_facts import (
    after_what,
    asked_left,
    clearance_facts,
    cleared_to_load,
    cleared_words,
    is_newer,
    kilos_left,
    lifts_some,
    limits_left,
    limits_told,
    may_clear,
    set_by_others,
    sets_limit,
    until_asked_again,
)
from flows.cleared_by import BY_CLINICIAN, CLEARED_FACTS, CLEARED_SAID, SENTENCES, asked_who_and_when, not_cleared
from flows.limits import STANDING, YES_NO
from flows.safety_check import TOLD, UNSURE
from flows.safety_facts import CLEARED_WHY, tomorrow
from flows.shared import WELCOMED

WAITS, STAND = Fact("waits", values=YES_NO), Fact("stand", values=YES_NO)
TO_LOAD, LIMITED = Fact("to_load", values=YES_NO, of=cleared_to_load), Fact("limits_set", values=YES_NO, of=sets_limit("limits"))
ASKS, YES = WAITS.is_("yes"), fact("right").is_("yes")
NEWER = Fact("newer", values=YES_NO, of=is_newer)
BY_THEM, AFTER = ASKS & BY_CLINICIAN, NEWER.is_("yes") | fact("after").is_("yes")
CLEARED, STILL = BY_THEM & AFTER, fact("limit.words").known
OTHERS, LIFTS = Fact("set_by_others", of=set_by_others), Fact("lifts", values=YES_NO, of=lifts_some)
ENDS_SOME, KEEPS_ALL = CLEARED & LIFTS.is_("yes"), CLEARED & LIFTS.is_("no")
"""What another clinician set stays unless whoever cleared them knew of it, or the one who set it agrees."""
SAID_BESIDE = Fact("limit_said", values=("my physio cleared me yesterday but nothing over 60 kg until friday",))
"""The words of a clearance that set a limit too: it stands, whatever becomes of the clearance."""
PREGNANT = fact("safety.pregnant").one_of("yes", "unsure") | fact("safety_check.pregnant").one_of("yes", "unsure")
CHECK_NEXT = fact("safety.level").one_of("clinician", "same_day", "emergency")


FLOW = Flow(
    "clearance", version=2, title="I was cleared", policy=Policy.TOLD, gates=(WELCOMED,), at_start=clearance_facts,
    command=("cleared", "clearance", "i am cleared", "i'm cleared", "i have been cleared"),
    sentences=CLEARANCES, fits=may_clear,
    facts=(WAITS, STAND, SAID_BESIDE, Fact("with_said", values=STANDING), Fact("limits_told", of=limits_told),
           Fact("tomorrow", of=tomorrow), Fact("before_words", values=("no squats, until cleared",)),
           Fact(CLEARED_SAID, values=SENTENCES), *CLEARED_FACTS, TO_LOAD, LIMITED, Fact("before", values=STANDING),
           OTHERS, LIFTS, NEWER, Fact("after_what", of=after_what), Fact("for_read", values=("lifting", "squats")),
           Fact("cleared_words", of=cleared_words), Fact("left", values=STANDING, of=limits_left),
           Fact("kilos", values=("60",), of=kilos_left), Fact("asked_on", values=("2026-03-16",), of=asked_left),
           Fact("cleared_until", of=until_asked_again)),
    steps=(
        Tell("Good to hear. Nothing here waits for a clearance just now.", ~ASKS),
        Do(Find("safety.limits", "{with_said}", "told with a clearance, questions open"), SAID_BESIDE.known),
        Do(Remind("limit", "limits", "{tomorrow}"), SAID_BESIDE.known),
        *asked_who_and_when("Good to hear. {who_asked}", TOLD, ASKS),
        Ask("after", "{after_what}", UNSURE, safety=True, only_if=BY_THEM & NEWER.is_("no")),
        Ask("cleared_for", "What stood: {before_words}. What were you cleared for?", choice(
            ("all", "Everything", "all", "training"), ("lifting", "Lifting weights", "lifting", "weights"),
            ("squats", "Squats", "squatting"), ("bending", "Bending"), ("stretching", "Stretching", "stretches")), safety=True,
            only_if=CLEARED & STAND.is_("yes") & ~fact("for_read").known),
        Ask("agreed", "Somebody else may have set this: {set_by_others}. Did whoever cleared you know of it, or does the one who set it "
            "agree?", UNSURE, safety=True, only_if=CLEARED & OTHERS.known),
        Ask("right", "I understand: cleared for {cleared_words}. By whom and when: {who_and_when}. Is that right?",
            YesNo(yes="Yes, that is right", no="No"), safety=True, only_if=ENDS_SOME),
        Do(Find("safety.limits", "{left}", "cleared by a clinician", "{who_and_when}"), YES & STAND.is_("yes")),
        Do(Find("load.told", "{kilos}", "a clinician's limit"), YES & STAND.is_("yes")),
        Do(Remind("limit", "limit_over", ""), YES & ~fact("asked_on").known),
        Do(Remind("limit", "limit_over", "{asked_on}"), YES & fact("asked_on").known),
        Do(Find("safety.cleared_until", "{cleared_until}", CLEARED_WHY, "{who_and_when}"),
           YES & TO_LOAD.is_("yes") & fact("cleared_until").known),
        Do(Find("safety.body_first", "no", "cleared by a clinician", "{who_and_when}"), YES & TO_LOAD.is_("yes") & ~PREGNANT),
        Do(Remind("referral", "referral", ""), YES),
        Do(Alert("", "was cleared for {cleared_words}. By whom and when: {who_and_when}"), YES),
        Ask("limits", "Did they set any new limits? If not, type “none”.",
            Words(limit=200, example_text="nothing over 40 kg for a month", tried=("none",)),
            safety=True, free=True, signs=TOLD, only_if=YES & ~SAID_BESIDE.known),
        Run("limits", SAID_BESIDE.known | YES & LIMITED.is_("yes"), asked="{limits_told}"),
        *not_cleared(ASKS),
        Tell("Then that does not count for what stands now. Ask them about it, and once they have cleared you of it, say “cleared”.",
             BY_THEM & ~AFTER),
        Tell("Then this stays: {set_by_others}. Ask whoever set it, and once they have cleared you of it, say “cleared”.", KEEPS_ALL),
        Tell("Then nothing changes. Say “cleared” when it is clear.", ENDS_SOME & ~YES),
        Tell("What still stands: {limit.words}.", YES & STILL),
        Tell("Noted. A new safety check opens the rest: say “safety check”.", YES & CHECK_NEXT),
        Tell("Noted. That no longer stands in your way here. Begin lighter than before.", YES & ~CHECK_NEXT & ~STILL),
    ),
)
