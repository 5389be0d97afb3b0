"""Link: takes a code from a coach or from the person who runs the bot."""

from __future__ import annotations

from companion.conversation.condition import Value, fact
from companion.conversation.effects import Redeem
from companion.conversation.flow import Ask, Do, Flow, Known, Run
from companion.conversation.kinds import Words
from companion.conversation.policy import Policy


def code_given(known: Known) -> dict[str, Value]:
    """Return the code this was begun with, if any."""
    return {"given_code": known.asked} if known.asked else {}


CODE_GIVEN = fact("given_code").known

FLOW = Flow(
    "link", version=1, title="I have a code", policy=Policy.TALK, at_start=code_given, command=("code", "i have a code", "link"),
    sentences=(r"/start (?P<asked>[a-z0-9]{12})", r"(?:my )?code:? (?P<asked>[a-z0-9]{4}[ -]?[a-z0-9]{4}[ -]?[a-z0-9]{4})"),
    steps=(
        Ask("code", "What is the code? Twelve letters and digits.", Words(limit=60, example_text="abcd efgh jkmn"), free=True,
            only_if=~CODE_GIVEN),
        Do(Redeem("{given_code}"), CODE_GIVEN),
        Do(Redeem("{code}"), ~CODE_GIVEN & fact("code").known),
        Run("link_request", CODE_GIVEN | fact("code").known),
    ),
)
