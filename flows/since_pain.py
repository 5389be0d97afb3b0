"""Since pain: how it is, told unasked, on the day something hurt and until it is back to usual. It opens nothing by itself."""

from __future__ import annotations

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import Alert
from companion.conversation.flow import Do, Flow, Known, Run, Tell
from companion.conversation.policy import Policy
from companion.language.how_it_is import HOW_LONGEST, how_it_is
from companion.language.played_down import plays_down
from companion.screening.levels import REFERRED
from flows.morning import HOWS
from flows.shared import ASKED_THE_MORNING_AFTER, WELCOMED

SINCE = Fact("how", values=HOWS)
STILL_DUE = fact("due").is_("yes")
SENT = fact("safety.level").one_of(*REFERRED)


def is_due(facts: Facts) -> bool:
    """True if how it is, is to be asked today, and was not yet."""
    return ASKED_THE_MORNING_AFTER.shut.holds(facts)


def how_told(known: Known) -> dict[str, Value]:
    """Return how it is, in their words and as it is read, and whether that is to be asked today."""
    told = {name: said for name, said in (("how", how_it_is(known.asked)), ("words", known.asked)) if said}
    return {**told, "due": "yes" if is_due(known.facts) else "no"}


def may_tell(asked: str, facts: Facts) -> bool:
    """True if words say how it is, or only play down what sent somebody to be seen. "Nothing hurts" takes back the pain of the same day,
    and is how it is on another."""
    says_how = how_it_is(asked) != "" and (is_due(facts) or not asked.startswith("nothing hurts"))
    return says_how or (SENT.holds(facts) and plays_down(asked, str(facts.get("pain.where", ""))))


FLOW = Flow(
    "since_pain", version=1, title="How it is since", policy=Policy.FOLLOW_UP, command=None, gates=(WELCOMED,), at_start=how_told,
    heard_first=(rf"(?P<asked>.{{1,{HOW_LONGEST}}})",), fits=may_tell, said_by=fact("pain.follow").is_("open"), at_rest=True,
    facts=(SINCE, Fact("due", values=("yes", "no")), Fact("words", values=("its worse",))),
    steps=(
        Tell("I hear you. What I said about being seen still holds, however small it seems.", SENT & ~SINCE.known),
        Run("morning", STILL_DUE & SINCE.known, asked="{how}"),
        Do(Alert("", "something hurt, and they write now: “{words}”"), ~STILL_DUE & SINCE.is_("worse")),
        Run("pain", ~STILL_DUE & SINCE.is_("worse")),
        Tell("Good that it eases. What I said about being seen still holds.", ~STILL_DUE & SENT & SINCE.one_of("usual", "better")),
        Tell("Good that it eases. What I said for today stands all the same, and I ask again tomorrow morning.",
             ~STILL_DUE & ~SENT & SINCE.one_of("usual", "better")),
        Tell("Thank you for telling me. What I said about being seen still holds.", ~STILL_DUE & SENT & SINCE.is_("same")),
        Tell("Thank you for telling me. What I said for today stands, and I ask again tomorrow morning.",
             ~STILL_DUE & ~SENT & SINCE.is_("same")),
    ),
)
