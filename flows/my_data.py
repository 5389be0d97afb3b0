"""My data: a copy of everything kept, or all of it erased."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow, Run, Tell
from companion.conversation.kinds import choice

WHAT = fact("what")

FLOW = Flow(
    "my_data", version=2, title="My data", counted=False, always=True, parked="All right, nothing was changed.",
    command=("data", "privacy"),
    steps=(
        Ask("what", "Everything you answered is kept in this bot's file. What would you like?", choice(
            ("copy", "A copy of it all", "copy", "export"), ("erase", "Erase it all", "erase", "delete"),
            ("nothing", "Nothing", "neither"))),
        Run("export", WHAT.is_("copy")),
        Run("erase", WHAT.is_("erase")),
        Tell("Kept as it is.", WHAT.is_("nothing")),
    ),
)
