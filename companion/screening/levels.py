"""Words for the safety levels, for the lifter, the coach and the report. They are defined only here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from companion.screening.safety import Level


@dataclass(frozen=True, slots=True)
class LevelWords:
    """One level in words. ``coach``: a few words, as an alert on a locked phone, a caseload line or a table cell has them;
    ``report``: what it closes; ``lifter``: the message that tells them, where somebody has to look with where to go and how
    soon; "" where there is nothing to tell. ``menu``: what stands before all else, above the menu."""

    coach: str
    report: str
    lifter: str = ""
    menu: str = ""


LEVEL_WORDS: Final[Mapping[Level, LevelWords]] = {
    Level.GO: LevelWords("open", "open: nothing stands against tests or squats"),
    Level.NO_LOAD: LevelWords(
        "no load today", "no load today: floor tests only",
        "No squats or loaded work today. Floor tests are fine; the rest waits until tomorrow."),
    Level.NOT_TODAY: LevelWords(
        "no squats or tests today", "no squats, tests or drills today",
        "No squats, tests or drills today. Rest, and keep moving gently. From tomorrow, say “safety check” to begin again."),
    Level.CLINICIAN: LevelWords(
        "a clinician comes first", "closed until a clinician has looked and a later safety check passes",
        "Please see a doctor or physiotherapist within a week, sooner if it gets worse, and before any squats, tests or drills. Once "
        "one has cleared you, say “safety check” and we start from there."),  # a week: choice
    Level.SAME_DAY: LevelWords(
        "to be seen the same day", "closed: to be seen the same day",
        "What you told me should be looked at today: call your doctor, an urgent care line or a clinic now. No squats, "
        "tests or drills until you have been seen; then, from tomorrow, say “safety check”.",
        "What you told me should be looked at today."),
    Level.EMERGENCY: LevelWords(
        "sent to emergency care", "closed: sent to emergency care",
        "What you told me can be an emergency. Go to an emergency department or call your emergency number now, and "
        "do not drive yourself. No test and no drill here until you have been seen; then, from tomorrow, say “safety check”.",
        "What I told you stands: an emergency department or your emergency number, now."),
}

CALL: Final = "crisis"
"""The level of an alert by which a lifter asks for a call: no level of safety, and its name is told to nobody."""
CALL_WORDS: Final = LevelWords("call wanted now", "asks to be called")

UNCHECKED_WORDS: Final = LevelWords("not checked yet", "no safety check has been done yet")
"""Words before any level was found."""

SEEN: Final = ("You have been seen. Once they have said that you may train, say “safety check”: only that opens squats and tests again. "
               "If it gets worse, don't wait: call your doctor or your emergency number.")
SEEN_TOMORROW: Final = SEEN.replace("say “safety check”", "say “safety check” from tomorrow on")
"""What somebody hears who was sent and has been seen since, in place of where to go."""
SEEN_MENU: Final = "You have been seen. A safety check comes before squats and tests."

OPEN_LEVELS: Final = (Level.GO.value, Level.NO_LOAD.value)
"""Levels that allow some tests."""

URGENT_LEVELS: Final = (Level.SAME_DAY.value, Level.EMERGENCY.value)
"""Levels at which nothing else is as important as being seen."""

PASSING: Final = (*OPEN_LEVELS, Level.NOT_TODAY.value)
"""Levels that end by the next day."""

REFERRED: Final = tuple(level.value for level in Level if level.value not in PASSING)
"""Levels that need a clinician first, the least urgent first."""


STILL_STANDS: Final = "what was said before still stands"
"""The reason of a level that is only the one from before; its own reason stands with that."""

WENT_WORDS: Final = {"yes": "yes", "booked": "not yet, booked", "no": "not yet"}
"""Whether somebody was seen after a referral, for a coach."""


def words_of(level: object) -> LevelWords:
    """Return the words of a stored level: ``UNCHECKED_WORDS`` for "" or None, the text itself for an unknown level."""
    known = CALL_WORDS if level == CALL else next((words for one, words in LEVEL_WORDS.items() if one.value == level), None)
    return known or (LevelWords(str(level), str(level)) if level else UNCHECKED_WORDS)
