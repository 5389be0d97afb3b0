"""A person's safety standing: the level that holds, since when and why, pain not answered, and whether a new check is needed.

Every reader has it from here: the chat's gates, the caseload, a lifter's summary and the report.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from companion.base.clock import local_date
from companion.screening.levels import OPEN_LEVELS, REFERRED, UNCHECKED_WORDS, LevelWords, words_of
from companion.screening.limits import LimitsTold, Work, closed_by, limits_in
from companion.screening.safety import Level, opens

OPEN_PAIN: Final = LevelWords("pain questions open", "closed: something hurt, and the questions about it are still open")
NEEDS_CHECK: Final = LevelWords("a new check comes first", "closed until a new safety check: none has passed since a day that was closed")

UNANSWERED_WORDS: Final[Mapping[str, LevelWords]] = {
    "limit": LevelWords("a limit to confirm", "closed: a clinician's limit was told, and how I understood it is not confirmed yet"),
    "signs": LevelWords("questions about a sign open", "closed: a sign was written, and the questions about it are still open"),
    "safety_check": LevelWords("safety check left open", "closed: a safety check was left after a warning sign, before it was finished"),
    "hurt": LevelWords("asked whether something hurt, no answer", "it was asked whether something hurt, and there is no answer yet")}
"""Words of questions left open, beside those about pain, by the conversation they belong to."""

QUESTIONS_OPEN: Final[Mapping[str, str]] = {
    "something hurt, questions open": "pain", "a sign was written, questions open": "signs", "safety check, not finished": "safety_check"}
"""The conversation by the rule of a level that holds only while its questions are open."""

PARTLY_CLOSED: Final = LevelWords("open, but for a clinician's limit", "open, but for what a clinician told them to leave out")
CLOSED_BY_LIMIT: Final = LevelWords("closed by a clinician's limit", "closed by what a clinician told them to leave out")
LIMIT_BESIDE: Final = LevelWords("and a clinician's limit", "beside that, a clinician told them to leave something out")


@dataclass(frozen=True, slots=True)
class OpenQuestions:
    """Questions put and not answered, beside those about pain: since when, and about what (``UNANSWERED_WORDS``). ``told``: the
    care that the lifter was told to seek all the same, before them or with them; None for none. ``said``: the lifter's words, "" where
    they are not known."""

    about: str
    since: datetime
    told: Level | None = None
    said: str = ""


@dataclass(frozen=True, slots=True)
class SafetyStanding:
    """A lifter's safety standing at a moment.

    ``level``: the level that holds, as the gates read it beside today's check; None where nobody has checked. ``kept``: the
    level as it was found last, ``since`` when and ``why``. ``pain_open``: since when questions about pain stand unanswered.
    ``needs_check``: a day that was closed is over and no safety check has passed since. ``limits``: what clinicians told them to
    leave out; it stands beside every level. ``asked``: other questions that stand unanswered.
    """

    level: Level | None
    kept: Level | None
    since: datetime | None
    why: str
    pain_open: datetime | None
    needs_check: bool
    limits: LimitsTold = ()
    asked: OpenQuestions | None = None

    @property
    def go(self) -> bool:
        """True if a page may say that nothing stands against tests and squats."""
        return self._unlimited and not self.limits

    @property
    def _unlimited(self) -> bool:
        """True if nothing but a clinician's limit can stand against anything."""
        return self.level is Level.GO and self.pain_open is None and self.asked is None and not self.needs_check

    @property
    def opens_floor(self) -> bool:
        """True if a page may say that some test is open."""
        return self.level is not None and self.level.value in OPEN_LEVELS and self.pain_open is None and self.asked is None and (
            not self.needs_check and Work.MOVE not in closed_by(self.limits))

    @property
    def sent(self) -> Level | None:
        """The care that the lifter was told to seek first; None for none, or while the questions that decide it are open."""
        level = self.asked.told if self.asked and self.asked.about != "hurt" else self.level
        return level if level is not None and level.value in REFERRED else None

    @property
    def words(self) -> LevelWords:
        """The standing in words; a referral comes before open questions, both before a check that is due. A limit stands beside each."""
        words = self._level_words
        if not self.limits:
            return words
        if self._unlimited:
            return CLOSED_BY_LIMIT if Work.MOVE in closed_by(self.limits) else PARTLY_CLOSED
        return LevelWords(f"{words.coach}, {LIMIT_BESIDE.coach}", f"{words.report}; {LIMIT_BESIDE.report}")

    @property
    def _open(self) -> list[tuple[datetime, LevelWords]]:
        """The questions that stand unanswered: since when, and in words."""
        pain = [(self.pain_open, OPEN_PAIN)] if self.pain_open else []
        return pain + ([(self.asked.since, UNANSWERED_WORDS[self.asked.about])] if self.asked else [])

    @property
    def _level_words(self) -> LevelWords:
        asked = [words for _, words in self._open]
        if self.sent is not None:
            level = words_of(self.sent.value)
            return LevelWords(", ".join((level.coach, *(one.coach for one in asked))), level.report)
        if asked:
            return LevelWords(", ".join(one.coach for one in asked), "; ".join(one.report for one in asked))
        return (NEEDS_CHECK if self.needs_check else words_of(self.level.value) if self.level else UNCHECKED_WORDS)

    @property
    def stands_since(self) -> datetime | None:
        """Since when that is so; None where nothing stands against anything."""
        return None if self._unlimited else min(since for since, _ in self._open) if self._open and self.sent is None else self.since


def standing_of(kept: object, since: datetime | None, why: str, pain_open: datetime | None, now: datetime, zone: str,
                limits: object = None, asked: OpenQuestions | None = None) -> SafetyStanding:
    """Return a person's standing. ``kept``: the level as it was found last, "" or None where none was; ``zone``: theirs;
    ``limits``: as they are stored; ``asked``: what stands unanswered beside pain."""
    if not kept or since is None:
        return SafetyStanding(None, None, None, "", pain_open, False, limits_in(limits), asked)
    level = Level(str(kept))
    lapsed = opens(level, local_date(since, zone), local_date(now, zone))
    return SafetyStanding(Level.GO if lapsed else level, level, since, why, pain_open, lapsed and level is not Level.GO,
                          limits_in(limits), asked)
