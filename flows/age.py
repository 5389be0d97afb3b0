"""Age put right: somebody who was taken to be under 18 says that they are not, or no longer."""

from __future__ import annotations

from typing import Final

from companion.conversation.condition import fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy
from flows.shared import TAKEN_AS_YOUNG, WELCOMED

_LEAD: Final = r"(?:(?:no|nope|oh|but|wait|sorry|oops|actually|well|hey|look|i was joking|i was kidding|just joking|joking)[,.]? )*"
_I_AM: Final = r"(?:i'?m|i am|i've|i have|i|it'?s)(?: (?:only|just|already|now|actually|really))*"
_GROWN: Final = (r"(?:(?:turned |over |above |past )?(?:1[89]|[2-9]\d)|an adult|a grown ?up|of age|"
                 r"not (?:under (?:18|age)|underage|a minor))")
AGE_SAID: Final = (
    rf"{_LEAD}{_I_AM} {_GROWN}(?: (?:now|already|years old|years|yrs|today|yesterday|actually|lol|not (?:under )?\d\d))*",
    rf"{_LEAD}my age is (?:wrong|not right|incorrect|off)(?: here| there)?",
    rf"{_LEAD}(?:i )?(?:meant|was talking about) (?:that )?(?:my|the) .+")
OF_AGE_NOW = fact("age").is_("yes")

FLOW = Flow(
    "age", version=1, title="My age", policy=Policy.TALK, gates=(WELCOMED,), command=("my age is wrong",),
    sentences=AGE_SAID, said_by=TAKEN_AS_YOUNG, at_rest=True,
    steps=(
        Ask("age", "I have noted that you are under 18. Are you 18 or over?", YesNo(
            yes="Yes, 18 or over", no="No, under 18", also_yes=("i'm an adult",), from_age=18), safety=True, only_if=TAKEN_AS_YOUNG),
        Do(Find("safety.age", "grown", "put right by the lifter"), OF_AGE_NOW),
        Tell("Thank you, I have put that right.", OF_AGE_NOW),
        Tell("Then it stays so. Under 18, this only works with a coach who is linked to you here.", fact("age").is_("no")),
        Tell("You are noted as 18 or over. Under 18, this only works with a coach: if you are, tell me.", ~TAKEN_AS_YOUNG),
    ),
)
