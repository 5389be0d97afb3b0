"""Erase: deletes everything stored about a person, after one more question."""

from companion.conversation.condition import fact
from companion.conversation.effects import Erase
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy

ERASE_ANSWER = fact("sure")

FLOW = Flow(
    "erase", version=1, title="Erase my data", policy=Policy.RIGHTS, parked="All right, nothing was changed.",
    command=("delete my data", "forget me", "delete me", "erase me", "remove me", "delete everything", "delete my account"),
    steps=(
        Ask("sure", "Erasing removes every answer, result and reminder, and can't be undone. A coach who wrote things "
            "down elsewhere still has that. Erase it all?", YesNo(yes="Yes, erase it all", no="No, keep it"), safety=True),
        Tell("It is all erased. If whoever runs this bot keeps daily backups, it is gone from them within seven days. Files I sent "
             "you stay where they are. If you write again, we start from the beginning. What I said about getting care still holds.",
             ERASE_ANSWER.is_("yes"), must_arrive=True),
        Do(Erase(), ERASE_ANSWER.is_("yes")),
        Tell("Kept as it is.", ERASE_ANSWER.is_("no")),
    ),
)
