"""Welcome: the purpose and its limits, consent, age, units and time zone."""

from companion.conversation.condition import Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Jump, Known, Tell
from companion.conversation.kinds import Ready, YesNo, Zone, choice
from companion.conversation.policy import Policy
from flows.coach_shared import IS_COACH
from flows.consent import IF_NO, LIFTER_TEXT, first_asked

SAID_YOUNG = fact("safety.age").is_("under_18")
"""True if it was written already."""
ALONE = (fact("adult").is_("no") | SAID_YOUNG) & ~fact("coach").is_("yes")
"""True under 18 without a linked coach: nothing further opens."""
HERE = fact("zone_here").known
"""True at a terminal: the machine knows its time zone. “I'm in Lisbon” changes it."""


def zone_of_machine(known: Known) -> dict[str, Value]:
    """Return the machine's time zone as it is when the welcome begins, so that no question about it lapses midway; empty if not known."""
    zone = known.facts.get("machine.zone")
    return {} if zone is None else {"zone_here": zone}


FLOW = Flow(
    "welcome", version=1, title="Welcome", policy=Policy.CONSENT, command=None, facts=(IF_NO,), at_start=zone_of_machine,
    steps=(
        Tell("That is for somebody who squats here. To do that too, answer these few questions first; “stop” leads back to your lifters.",
             IS_COACH),
        Tell("Hello. I help you find out why your lower back rounds at the bottom of a squat, with tests at home. I do "
             "not diagnose, and I do not replace a doctor or physiotherapist. You can stop at any time."),
        *first_asked(LIFTER_TEXT),
        Ask("adult", "Are you 18 or over?", YesNo(yes="Yes", no="No, under 18", from_age=18), safety=True,
            only_if=~SAID_YOUNG),
        Ask("coach_first", "Under 18, this only works with a coach who is linked to you here, and there is none yet. Ask your "
            "coach for a code and send it to me; once you have agreed, tap below.", Ready("A coach is linked"),
            lets=("link",), only_if=ALONE, then=(Jump(ALONE, "coach_first"),)),
        Ask("units", "Which units do you use?", choice(
            ("metric", "cm and kg", "metric", "cm", "kg", "centimetres", "kilos", "centimeters"),
            ("imperial", "inches and pounds", "imperial", "in and lb", "inches", "pounds", "lb", "lbs", "in", "in/lb"))),
        Do(Find("welcome.zone", "{zone_here}", "the time zone of this machine"), HERE),
        Do(Find("welcome.zone_right", "yes", "the time zone of this machine"), HERE),
        Ask("zone", "Which city are you in, or near? It sets the time for reminders.", Zone(), safety=True, only_if=~HERE),
        Ask("zone_right", "I make it {zone:clock} where you are. Is that right?", YesNo(), only_if=~HERE,
            then=(Jump(fact("zone_right").is_("no"), "zone"),)),
        Tell("Good. Two things to remember: a little rounding deep in a squat is common and often fine. And if anything "
             "hurts, say so at any time; I stop at once."),
    ),
)
