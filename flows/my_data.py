"""My data: a copy of everything kept, or all of it erased."""

from companion.conversation.condition import fact
from companion.conversation.effects import Erase, Export
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import YesNo, choice

WHAT, SURE = fact("what"), fact("sure")

FLOW = Flow(
    "my_data", version=1, title="My data", counted=False, always=True, parked="All right, nothing was changed.",
    command=("data", "export", "erase", "privacy"),
    steps=(
        Ask("what", "Everything you answered is kept in this bot's file. What would you like?", choice(
            ("copy", "A copy of it all", "copy", "export"), ("erase", "Erase it all", "erase", "delete"),
            ("nothing", "Nothing", "neither"))),
        Do(Export(), WHAT.is_("copy")),
        Ask("sure", "Erasing takes away every answer, result and reminder, and can't be undone. A coach who wrote things "
            "down elsewhere still has that. Erase it all?", YesNo(yes="Yes, erase it all", no="No, keep it"),
            safety=True, only_if=WHAT.is_("erase")),
        Tell("It is all erased. Backups of the file, where whoever runs this bot makes them, roll off within seven days. If you write "
             "again, we start as strangers. What I said about getting care still holds.", SURE.is_("yes"), must_arrive=True),
        Do(Erase(), SURE.is_("yes")),
        Tell("Kept as it is.", SURE.is_("no") | WHAT.is_("nothing")),
    ),
)
