"""My data: a copy of everything kept, or all of it erased."""

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Ask, Flow, Known, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy

DATA_WISH = fact("what")


def kept_facts(known: Known) -> dict[str, Value]:
    """Return how long answers are kept, in words; whoever runs the bot may have set a limit."""
    months = known.facts.get("keep.months")
    if not isinstance(months, float):
        return {"kept": "Everything you answered is kept in this bot's file."}
    time = "month" if months == 1 else f"{months:g} months"
    return {"kept": f"Your answers of the last {time} are kept in this bot's file. Of older ones it keeps the results, and "
                    "the answers that advice and safety still depend on."}


FLOW = Flow(
    "my_data", version=3, at_start=kept_facts, title="My data", policy=Policy.RIGHTS, parked="All right, nothing was changed.",
    command=("data", "privacy"),
    sentences=(r"what (?:do|have|did) (?:you|u) (?:know|keep|kept|have|hold|stored?|got|saved?)(?: (?:stored|saved|kept|on file))? "
               r"(?:about|on|of) me\?*", r"what have (?:you|u) (?:saved|stored|kept)\?*"),
    steps=(
        Ask("what", "{kept} What would you like?", choice(
            ("copy", "A copy of it all", "copy", "export"), ("erase", "Erase it all", "erase", "delete"),
            ("count", "Let outcomes be counted", "count", "counted", "share"),
            ("pool", "Pool my priming trial", "pool"),
            ("nothing", "Nothing", "neither"))),
        Run("export", DATA_WISH.is_("copy")),
        Run("erase", DATA_WISH.is_("erase")),
        Run("share_outcomes", DATA_WISH.is_("count")),
        Run("share_trial", DATA_WISH.is_("pool")),
        Tell("Kept as it is.", DATA_WISH.is_("nothing")),
    ),
)
