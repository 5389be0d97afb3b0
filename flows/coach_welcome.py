"""Welcome for a coach: consent, and the time zone of their digest."""

from companion.conversation.condition import Fact, fact
from companion.conversation.flow import Ask, Flow, Jump, Run, Tell
from companion.conversation.kinds import Ready, YesNo, Zone
from companion.conversation.policy import Policy
from flows.coach_shared import IS_COACH
from flows.consent import COACH_TEXT, IF_NO, first_asked

COACH_NOW = Fact("is_coach", values=("yes", "no"))

FLOW = Flow(
    "coach_welcome", version=2, title="Welcome, coach", policy=Policy.CONSENT, command=None, facts=(IF_NO, COACH_NOW),
    steps=(
        Tell("Hello. With your code you can be a coach here: lifters test themselves at home, and those who agree let you see "
             "their answers."),
        *first_asked(COACH_TEXT),
        Run("link_request"),
        Ask("new_code", "So you are no coach here yet. Ask whoever runs this bot for a new code and send it to me, as “code abcd efgh "
            "jkmn”. Once you have agreed, tap below.", Ready("I am a coach now"), lets=("link",), back=False, only_if=~IS_COACH,
            then=(Jump(~IS_COACH, "new_code"),)),
        Ask("zone", "Which city are you in, or near? It sets the time of a digest.", Zone(), only_if=IS_COACH),
        Ask("zone_right", "I make it {zone:clock} where you are. Is that right?", YesNo(), only_if=fact("zone").known,
            then=(Jump(fact("zone_right").is_("no"), "zone"),)),
    ),
)
