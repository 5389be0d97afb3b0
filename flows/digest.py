"""Digest: sends a coach what is new of their lifters regularly; how often and when."""

from companion.conversation.condition import fact
from companion.conversation.day_kinds import ClockTime
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY

OFTEN = fact("often")

FLOW = Flow(
    "digest", version=1, title="Digest", policy=Policy.PAGE, gates=(COACHES_ONLY,), command=("daily digest", "weekly digest"),
    steps=(
        Ask("often", "Shall I regularly send you what is new? I tell you about pain and referrals at once in any case.", choice(
            ("daily", "Every day", "daily"), ("weekly", "On Mondays", "weekly", "every week"), ("none", "No", "never", "none"))),
        Ask("at", "At what time?", ClockTime(("07:00", "08:00", "18:00")), only_if=OFTEN.one_of("daily", "weekly")),
        Do(Find("coach.digest", "{often}", "told by the coach"), OFTEN.known),
        Do(Find("coach.digest_at", "{at}", "told by the coach"), fact("at").known),
        Do(Replan(), OFTEN.known),
        Tell("Good, I'll do that from now on.", fact("at").known),
        Tell("Good: I'll write only when something is urgent.", OFTEN.is_("none")),
    ),
)
