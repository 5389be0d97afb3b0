"""Over load: says that a day's load is over the limit, once the answer that told it was put right later."""

from companion.conversation.condition import Fact
from companion.conversation.flow import Flow, Tell
from companion.conversation.policy import Policy
from flows.day_facts import over_facts

OVER_SAYS = "{load_words} is {limit_is}. It is in your log, and does not count towards a step deeper.{next_time}"
LOAD_OVER = Fact("over", values=("yes", "no"))

FLOW = Flow(
    "over_load", version=1, title="Over the load limit", policy=Policy.BESIDE, command=None, at_start=over_facts,
    facts=(LOAD_OVER,),
    steps=(Tell(OVER_SAYS, LOAD_OVER.is_("yes"), must_arrive=True),),
)
