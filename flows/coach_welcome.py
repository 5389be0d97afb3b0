"""Welcome for a coach: consent, and the time zone of their digest."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow, Jump, Run, Tell
from companion.conversation.kinds import YesNo, Zone
from companion.conversation.policy import Policy
from flows.consent import COACH_TEXT, IF_NO, first_asked

FLOW = Flow(
    "coach_welcome", version=1, title="Welcome, coach", policy=Policy.CONSENT, command=None, facts=(IF_NO,),
    steps=(
        Tell("Hello. With your code you can be a coach here: lifters test themselves at home, and those who agree let you see "
             "their answers."),
        *first_asked(COACH_TEXT),
        Run("link_request"),
        Ask("zone", "Which city are you in, or near? It sets the time of a digest.", Zone()),
        Ask("zone_right", "I make it {zone:clock} where you are. Is that right?", YesNo(), only_if=fact("zone").known,
            then=(Jump(fact("zone_right").is_("no"), "zone"),)),
    ),
)
