"""Welcome of a coach: what is kept of them, and the zone their digest goes by."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow, Jump, Run, Tell
from companion.conversation.kinds import YesNo, Zone

FLOW = Flow(
    "coach_welcome", version=1, title="Welcome, coach", counted=False, holds=True, by_name=False,
    steps=(
        Tell("Hello. With your code you can be a coach here: lifters test themselves at home, and those who agree let you see it."),
        Ask("consent", "I keep your name here, your chat address, and what you look at and do, in a file of whoever runs this bot. "
            "Say “my data” at any time to get a copy or to erase it all. May I keep that?", YesNo(yes="Yes, keep it", no="No"), safety=True,
            then=(Jump(fact("consent").is_("no"), say="Then I keep nothing about you, and this is where it ends."),)),
        Run("link_request"),
        Ask("zone", "Which city are you in, or near? It sets the time of a digest.", Zone()),
        Ask("zone_right", "I make it {zone:clock} where you are. Is that right?", YesNo(), only_if=fact("zone").known,
            then=(Jump(fact("zone_right").is_("no"), "zone"),)),
    ),
)
