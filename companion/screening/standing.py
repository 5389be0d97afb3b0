"""A person's safety standing: the level that holds, since when and why, pain not answered, and whether a new check is needed.

Every reader has it from here: the chat's gates, the caseload, a lifter's summary and the report.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Final

from companion.base.clock import local_date
from companion.screening.levels import OPEN_LEVELS, REFERRED, UNCHECKED_WORDS, LevelWords, words_of
from companion.screening.limits import LimitsTold, Work, closed_by, limits_in
from companion.screening.safety import Level, opens

OPEN_PAIN: Final = LevelWords("pain questions open", "closed: something hurt, and the questions about it are still open")
NEEDS_CHECK: Final = LevelWords("a new check comes first", "closed until a new safety check: none has passed since a day that was closed")

PARTLY_CLOSED: Final = LevelWords("open, but for a clinician's limit", "open, but for what a clinician told them to leave out")
CLOSED_BY_LIMIT: Final = LevelWords("closed by a clinician's limit", "closed by what a clinician told them to leave out")


@dataclass(frozen=True, slots=True)
class SafetyStanding:
    """A lifter's safety standing at a moment.

    ``level``: the level that holds, as the gates read it beside today's check; None where nobody has checked. ``kept``: the
    level as it was found last, ``since`` when and ``why``. ``pain_open``: since when questions about pain stand unanswered.
    ``needs_check``: a day that was closed is over and no safety check has passed since. ``limits``: what clinicians told them to
    leave out; it stands beside every level.
    """

    level: Level | None
    kept: Level | None
    since: datetime | None
    why: str
    pain_open: datetime | None
    needs_check: bool
    limits: LimitsTold = ()

    @property
    def go(self) -> bool:
        """True if a page may say that nothing stands against tests and squats."""
        return self._unlimited and not self.limits

    @property
    def _unlimited(self) -> bool:
        """True if nothing but a clinician's limit can stand against anything."""
        return self.level is Level.GO and self.pain_open is None and not self.needs_check

    @property
    def opens_floor(self) -> bool:
        """True if a page may say that some test is open."""
        return self.level is not None and self.level.value in OPEN_LEVELS and self.pain_open is None and not self.needs_check and (
            Work.MOVE not in closed_by(self.limits))

    @property
    def words(self) -> LevelWords:
        """The standing in words; a referral comes before open questions, and both before a check that is due."""
        level = words_of(self.level.value) if self.level else UNCHECKED_WORDS
        if self.level is not None and self.level.value in REFERRED:
            return level if self.pain_open is None else LevelWords(f"{level.coach}, {OPEN_PAIN.coach}", level.report)
        if self._unlimited and self.limits:
            return CLOSED_BY_LIMIT if Work.MOVE in closed_by(self.limits) else PARTLY_CLOSED
        return OPEN_PAIN if self.pain_open else NEEDS_CHECK if self.needs_check else level

    @property
    def stands_since(self) -> datetime | None:
        """Since when that is so; None where nothing stands against anything."""
        return None if self._unlimited else self.pain_open if self.words is OPEN_PAIN else self.since


def standing_of(kept: object, since: datetime | None, why: str, pain_open: datetime | None, now: datetime, zone: str,
                limits: object = None) -> SafetyStanding:
    """Return a person's standing. ``kept``: the level as it was found last, "" or None where none was; ``zone``: theirs;
    ``limits``: as they are stored."""
    if not kept or since is None:
        return SafetyStanding(None, None, None, "", pain_open, False, limits_in(limits))
    level = Level(str(kept))
    lapsed = opens(level, local_date(since, zone), local_date(now, zone))
    return SafetyStanding(Level.GO if lapsed else level, level, since, why, pain_open, lapsed and level is not Level.GO,
                          limits_in(limits))
