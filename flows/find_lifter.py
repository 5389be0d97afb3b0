"""Find a lifter: “find Sam” opens that lifter's page for their coach, or lists those it may mean."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, IS_COACH, asked_for

NO_NAMES = frozenset((
    "a", "again", "all", "an", "another", "any", "everyone", "everything", "how", "it", "lifter", "lifters", "me", "more", "my", "next",
    "out", "some", "somebody", "someone", "that", "the", "this", "us", "what", "when", "where", "who", "why", "your"))
"""First words of a request that is not a name."""
NOT_PEOPLE = frozenset((
    "caseload", "chart", "charts", "coach", "coaches", "code", "codes", "data", "day", "days", "details", "digest", "drawing", "drill",
    "drills", "film", "help", "list", "log", "menu", "options", "photo", "picture", "pictures", "plan", "progress", "reminder",
    "reminders", "report", "result", "results", "retest", "screen", "settings", "squat", "squats", "test", "tests", "trial", "video"))
"""Things people ask the bot to show; a lifter with such a name can still be picked from the list."""
NAME_WORDS_MOST = 5
"""The most words of a name; our choice."""


def is_name(asked: str) -> bool:
    """True if the text may be a person's name."""
    words = asked.split()
    return bool(words) and len(words) <= NAME_WORDS_MOST and words[0] not in NO_NAMES and NOT_PEOPLE.isdisjoint(words)


FLOW = Flow(
    "find_lifter", version=1, title="Find a lifter", policy=Policy.PAGE, command=None, gates=(COACHES_ONLY,), at_start=asked_for,
    sentences=(r"(?:please )?(?:(?:find|show|look up|open)(?: me)?(?: lifter)?|lifter) (?P<asked>.{1,60})",), fits=is_name,
    said_by=IS_COACH,
    steps=(Do(Show("find_lifter", "{asked}")),),
)
