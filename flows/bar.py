"""Bar and plates: the lifter's own, so that warm-up sets use loads they can make."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow, Tell
from companion.conversation.kinds import choice
from companion.conversation.number_kinds import Number, Numbers
from companion.conversation.policy import Policy
from companion.screening.sources import SOURCES
from flows.shared import WELCOMED


def _called(n: int) -> tuple[str, ...]:
    """Return what one of a gym's bars is called by its weight."""
    kilos, pounds = (f"{SOURCES[name].value[n]:g}" for name in ("bars_metric", "bars_imperial"))
    return f"{kilos} kg or {pounds} lb", kilos, f"{kilos} kg", pounds, f"{pounds} lb"


HAS_BAR = ~fact("bar").is_("none")

FLOW = Flow(
    "bar", version=1, title="My bar and plates", policy=Policy.TALK, gates=(WELCOMED,), command=("bar", "plates", "my plates", "my bar"),
    steps=(
        Ask("bar", "Which bar do you squat with?", choice(
            ("full", *_called(0), "olympic", "full"), ("light", *_called(1), "light"), ("other", "Another", "other"),
            ("none", "No bar yet", "none", "no bar", "no", "body weight"))),
        Ask("weight", "What does it weigh?", Number("kg", 2, 40, usual=(5, 30), example_value=10), only_if=fact("bar").is_("other")),
        Ask("which", "Which plates are there?", choice(
            ("usual", "The usual set of a gym", "the usual set", "gym", "usual", "all", "full set"),
            ("own", "Only some; I'll list them", "some", "list", "own")), only_if=HAS_BAR),
        Ask("plates", "Of which sizes do you have at least a pair?", Numbers("kg", 0.2, 50, (20, 10, 5, 2.5)),
            only_if=fact("which").is_("own")),
        Tell("Noted. I'll give warm-up sets in loads you can put on that bar.", HAS_BAR),
        Tell("Noted. Once you squat with one, say “my bar”.", ~HAS_BAR),
    ),
)
