"""Crisis: somebody wrote of harming themselves or of not wanting to live. Everything else ends; nothing of their words is kept.
What they told of their body with it closes the day, and is asked about once they deny it or begin again.

That the first thing is warmth, a number to call and somebody near, and that nobody is told unasked: common practice of crisis
guidance, no source; for whom there is danger now the local emergency number is named first (our cautious choice).
"""

from dataclasses import replace

from companion.conversation.condition import Fact, Facts, fact
from companion.conversation.effects import Alert, Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Jump, Known, Tell
from companion.conversation.kinds import Option, YesNo, choice
from companion.conversation.of_lifters import OF_A_LIFTER
from companion.conversation.policy import Policy

CRISIS = fact("crisis").one_of("open", "asked")
"""Nothing goes on and no reminder goes out until the lifter begins again or, where it was only asked about, says that it is not so."""

HELP = ("Please call your local emergency number or a crisis line now, and tell somebody near you. I am a program and can't see how "
        "you are; they can help.")

HELPS = (HELP, "If you are in danger now, call your local emergency number, or go to somebody near you.",
         "A crisis line listens at any hour, whatever it is. Please call one now.",
         "Is somebody near you? Please tell them now how you are.")
UNSAFE = ("not safe", "unsafe", "i'm not safe", "i am not safe", "no i'm not safe", "no i am not safe", "i don't feel safe",
          "i do not feel safe", "not really safe", "i'm in danger", "i am in danger")
COACH_ASKED = (
    Ask("coach_may", "Shall I ask your coach to get in touch with you today? I would not pass on what you wrote.",
        YesNo(yes="Yes, ask them", no="No"), safety=True, back=False, unread=HELPS, lets=("begin_again",),
        only_if=fact("coach").is_("yes") & ~fact("coach.gone").is_("yes")),
    Do(Alert("crisis", "asks their coach to phone them. Please phone them now"), fact("coach_may").is_("yes")),
    Tell("I have asked them. Don't wait for them to call: call somebody yourself now.", fact("coach_may").is_("yes")))
"""Whether a coach may be asked to call, and that they are."""
NOT_SO = ("no", *(f"{lead}{said}" for lead in ("no ", "no, ") for said in ("lol", "haha", "never", "i'm fine", "i'm safe")),
          *(f"{lead}{said}" for lead in ("", "no ", "no, ") for said in ("of course not", "god no", "not at all", "nothing like that")))
ABOUT_THEM = ("my lifter", "a lifter", "lifter", "about my lifter", "it's about my lifter", "them", "him", "her", "not me")
INSTEAD = {"no": "Thank you for telling me. If that ever changes, or something in your body worries you, write it here.",
           "lifter": OF_A_LIFTER}
"""What is said where no harm to oneself was meant."""


def _at_start(known: Known) -> Facts:
    """Ask first where words were doubtful, also when such a question was left and is asked again."""
    doubtful = known.asked == "doubtful" or (known.asked != "sure" and known.facts.get("crisis") == "asked")
    return {"doubtful": "yes"} if doubtful else {}


FLOW = Flow(
    "crisis", version=2, title="Help now", command=None, policy=replace(Policy.SIGNS, stops=False, quiet=True, ends_all=True),
    parked=f"{HELP} When you want to go on here, say “begin again”.",
    facts=(Fact("doubtful", values=("yes",)), Fact("instead", of=lambda got, side: INSTEAD.get(str(got["so"])))), at_start=_at_start,
    steps=(
        Do(Find("crisis", "asked", "asked whether they think of harming themselves"), fact("doubtful").is_("yes")),
        Ask("so", "I'm not sure I understood, and I would rather ask. Are you thinking of harming yourself, or of not wanting to live?",
            choice(("yes", "Yes", "i am", *UNSAFE), ("unsure", "Not sure", "maybe", "sometimes"),
                   Option("lifter", "It is about a lifter", ABOUT_THEM, only_if=fact("is_coach").is_("yes")),
                   ("no", "No, I meant something else", *NOT_SO)),
            safety=True, back=False, unread=HELPS, signs=("self_harm",), lets=("begin_again",), only_if=fact("doubtful").is_("yes"),
            then=(Jump(fact("so").one_of("no", "lifter"), say="{instead}",
                       does=(Do(Find("crisis", "over", "meant something else")), Do(Replan()))),)),
        Do(Find("crisis", "open", "wrote of harming themselves")),
        Do(Replan()),
        Tell("I'm glad you told me, and I'm sorry it is this hard. You matter far more than any of this, so the exercise ends here.",
             must_arrive=True),
        Tell(HELP, must_arrive=True),
        *COACH_ASKED,
        Tell("I will send no reminders. When you want to go on here, say “begin again”; there is no hurry.", must_arrive=True),
    ),
)
