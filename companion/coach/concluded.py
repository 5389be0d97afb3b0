"""The conclusion from a lifter's answers as of now, with screen and errors, for the report and for "why?"."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from datetime import datetime

from companion.calendar.preferences import zone_from
from companion.conversation.flow import Known
from companion.language.units import METRIC, shown
from companion.record.context import SAFETY_LEVEL, known_of
from companion.screening.conclusion import Conclusion, conclude
from companion.screening.errors import Errors, errors_from
from companion.screening.readings import NumberFormat
from companion.screening.rulings import Verdict
from companion.screening.safety import pain_now
from companion.screening.screen import LoggedAnswer, Screen, about_from, screen_from
from companion.screening.setups import setup_from, without_luck
from companion.screening.squat_days import ToldDay, days_told


@dataclass(frozen=True, slots=True)
class LifterConclusion:
    """A lifter's answers and their conclusion; ``system`` and ``show``: the lifter's own units, in which a coach reads them too."""

    known: Known
    answers: tuple[LoggedAnswer, ...]
    zone: str
    system: str
    show: NumberFormat
    screen: Screen
    errors: Errors
    days: tuple[ToldDay, ...]
    conclusion: Conclusion

    @property
    def tested(self) -> bool:
        """True if a test is done."""
        return bool(self.screen.done)

    @property
    def verdicts(self) -> tuple[Verdict, ...]:
        """The verdicts; none before a test is done."""
        return self.conclusion.verdicts if self.tested else ()


def concluded_of(db: sqlite3.Connection, person: int, now: datetime) -> LifterConclusion:
    """Return what a lifter's answers come to as of ``now``."""
    known = known_of(db, person, now)
    facts, answers = known.facts, tuple(known.answers())
    zone, system = zone_from(facts, now), str(facts.get("welcome.units", METRIC))
    screen, about = without_luck(screen_from(answers), str(facts.get("setup.luck", ""))), about_from(answers)
    errors, days = errors_from(answers, about.sex), tuple(days_told(answers, zone))

    def show(value: float, unit: str) -> str:
        return shown(value, unit, system)

    return LifterConclusion(known, answers, zone, system, show, screen, errors, days, conclude(
        screen, about, pain_now(facts.get("safety_check.pain"), facts.get(SAFETY_LEVEL)), show, errors, setup_from(facts), days))
