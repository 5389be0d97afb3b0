"""Find a lifter: “find Sam” opens that lifter's page for their coach, or lists those it may mean."""

from flows.coach_shared import IS_COACH, page_flow

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


FLOW = page_flow(
    "find_lifter", "Find a lifter", command=None,
    sentences=(r"(?:please )?(?:(?:find|show|look up|open)(?: me)?(?: lifter)?|lifter) (?P<asked>.{1,60})",),
    fits=lambda asked, facts: is_name(asked),
    said_by=IS_COACH)
