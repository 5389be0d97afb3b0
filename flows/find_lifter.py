"""Find a lifter: “find Sam” opens that lifter's page for their coach, or says whom it may mean."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACH, COACHES, asked_for

NO_NAMES = frozenset((
    "a", "again", "all", "an", "another", "any", "everyone", "everything", "how", "it", "lifter", "lifters", "me", "more", "my", "next",
    "out", "some", "somebody", "someone", "that", "the", "this", "us", "what", "when", "where", "who", "why", "your"))
"""How what is asked for begins where it is no name."""
THINGS = frozenset((
    "caseload", "chart", "charts", "coach", "coaches", "code", "codes", "data", "day", "days", "details", "digest", "drawing", "drill",
    "drills", "film", "help", "list", "log", "menu", "options", "photo", "picture", "pictures", "plan", "progress", "reminder",
    "reminders", "report", "result", "results", "retest", "screen", "settings", "squat", "squats", "test", "tests", "trial", "video"))
"""What people ask the bot to show that is nobody; in a name it would be found in the list all the same."""
WORDS_MOST = 5
"""Of a name; our choice."""


def is_name(asked: str) -> bool:
    """Whether what was asked for may be somebody's name."""
    words = asked.split()
    return bool(words) and len(words) <= WORDS_MOST and words[0] not in NO_NAMES and THINGS.isdisjoint(words)


FLOW = Flow(
    "find_lifter", version=1, title="Find a lifter", policy=Policy.PAGE, command=None, gates=(COACHES,), at_start=asked_for,
    sentences=(r"(?:please )?(?:(?:find|show|look up|open)(?: me)?(?: lifter)?|lifter) (?P<asked>.{1,60})",), fits=is_name, said_by=COACH,
    steps=(Do(Show("find_lifter", "{asked}")),),
)
