"""Time off: somebody leaves squats out for a time, and it is asked whether a clinician told them to or it is a break of their own."""

from __future__ import annotations

import re
from typing import Final

from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Known, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.moves import SAID_MOST
from companion.conversation.policy import Policy
from companion.language.limits.clinicians import who_said
from companion.language.passed_on import in_whole_words
from companion.language.phrases import normalise
from flows.limit_facts import limit_facts, limits_beside, limits_open
from flows.shared import WELCOMED

_HOW_LONG: Final = r"(?:for (?!me\b).*(?:days?|weeks?|months?|fortnight)|(?:until|till|til) .+)"
_NAMES_TIME: Final = re.compile(rf"\b{_HOW_LONG}", re.IGNORECASE)
LEAVES_OUT = Fact("said", values=("no squats for 3 weeks",))
NAMED_BY = Fact("by", values=("a physiotherapist",))
AS_LIMIT = NAMED_BY.known | fact("whose").one_of("told", "unsure")


def said_facts(known: Known) -> dict[str, Value]:
    """Return the words, as a limit and as the pause of the squat days that they would be, and the clinician they name."""
    time = _NAMES_TIME.search(known.asked)
    if not time:
        return {}
    by, _ = who_said(f" {normalise(known.asked)} ")
    return {**limit_facts(known), **({"by": by} if by else {}),
            "said": known.asked, "quoted": in_whole_words(known.asked, SAID_MOST), "pause": f"pause {time[0]}"}


FLOW = Flow(
    "time_off", version=1, title="A limit or a break", policy=Policy.TALK, command=None, at_rest=True, gates=(WELCOMED,),
    at_start=said_facts,
    sentences=(r"(?P<asked>(?:i'm |i am |i |so )*(?:no|not|can't|cant|cannot|can not|won't|wont|will not|shouldn't|shouldnt) "
               rf"(?:[a-z]+,? (?:or|and|nor) (?:no )?)?(?:squats?|squatting|train|training)(?:,? (?:or|and|nor) (?:no )?[a-z]+)*"
               rf"(?: at all| any ?more)? {_HOW_LONG})(?: please)?",),
    facts=(LEAVES_OUT, NAMED_BY, Fact("quoted", values=LEAVES_OUT.values), Fact("pause", values=("pause for 3 weeks",)),
           Fact("given", values=LEAVES_OUT.values), Fact("open", of=limits_open), Fact("beside", of=limits_beside)),
    parked="All right. Until you have told me, I take it that nothing that moves is allowed. Say “go on” to answer.",
    steps=(
        Do(Find("safety.limits", "{open}", "told, questions open"), LEAVES_OUT.known),
        Ask("whose", "You wrote “{quoted}”. Did a doctor or physio tell you that, or is it your own break?", choice(
            ("told", "I was told", "told", "doctor", "my doctor", "physio", "my physio", "they told me", "a limit"),
            ("own", "My own break", "own", "my own", "mine", "a break", "my own plan", "my plan", "me", "just me", "holiday"),
            ("unsure", "Not sure", "not sure", "unsure")), safety=True, only_if=LEAVES_OUT.known & ~NAMED_BY.known),
        Run("limits", AS_LIMIT, asked="{said}"),
        Do(Find("safety.limits", "{beside}", "a break of their own"), fact("whose").is_("own")),
        Run("squat_days", fact("whose").is_("own"), asked="{pause}"),
        Tell("Say for how long you leave squats out, such as “no squats for 3 weeks”.", ~LEAVES_OUT.known),
    ),
)
