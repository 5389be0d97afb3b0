"""Link request: the coach's name, what they would see, and the lifter's yes or no."""

from __future__ import annotations

from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Find, Link
from companion.conversation.flow import Ask, Do, Flow, Known, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy

CODE_STATUS = Fact("status", values=("lifter", "coach", "own", "unknown", "slowed", "none"))
COACH_AGREED = fact("agree").is_("yes")


def request_facts(known: Known) -> dict[str, Value]:
    """Return the status of the redeemed code, and the name and the role of its owner."""
    return {"status": str(known.facts.get("link.status", "none")), "who": str(known.facts.get("link.who", "")),
            "one": str(known.facts.get("link.one", "a coach")), "yours": str(known.facts.get("link.yours", "your coach"))}


FLOW = Flow(
    "link_request", version=2, title="Link with a coach", policy=Policy.TALK, command=None, at_start=request_facts, facts=(CODE_STATUS,),
    steps=(
        Tell("That code is not one of mine, or it was used or has expired. Ask for a new one.", CODE_STATUS.is_("unknown")),
        Tell("That is your own code: it is for your lifter.", CODE_STATUS.is_("own")),
        Tell("Too many of those codes were wrong. Try again in an hour.", CODE_STATUS.is_("slowed")),
        Ask("agree", "{who} asks to be {yours} here. {who} would see your answers, results, squat days, notes and films, and hear at "
            "once when something hurts. I note each time they look, and you can read that. You can end it at any time. Agree?",
            YesNo(yes="Yes, I agree", no="No"), safety=True, only_if=CODE_STATUS.is_("lifter")),
        Ask("take", "This makes you {one} here, as {who}. You can see the answers of lifters who agree; I note each time you "
            "look, and they can read that. Go on?", YesNo(yes="Yes", no="No"), safety=True, only_if=CODE_STATUS.is_("coach")),
        Do(Link("agree"), COACH_AGREED | fact("take").is_("yes")),
        Do(Find("link.status", "none", "answered")),
        Tell("Then {who} sees nothing.", fact("agree").is_("no")),
        Tell("Nothing has changed.", fact("take").is_("no")),
    ),
)
