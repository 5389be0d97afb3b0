"""A record for tests of the coach's pages: a real file, a coach, and lifters with what a test wants of them."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlite_utils import Database

from companion.coach.caseload import CaseloadLine, caseload, coach_zone
from companion.conversation.effects import Alert, Began, Effect, Ended, Find, Record
from companion.record import coaching, people
from companion.record.file import open_for_writing
from tests.rows import keep

NOW = datetime(2026, 3, 12, 18, 0, tzinfo=UTC)  # a Thursday


def ago(days: float) -> datetime:
    return NOW - timedelta(days=days)


@contextmanager
def record(folder: Path) -> Iterator[Room]:
    """A file with one coach, Ada, in it."""
    db, lock = open_for_writing(folder / "companion.sqlite")
    try:
        yield Room(db)
    finally:
        db.close()
        lock.close()


class Room:
    """A record and who is in it."""

    def __init__(self, file: Database) -> None:
        self.file, self.db = file, file.conn
        self.runs = 0
        self.coach = self.a_coach("Ada")

    def a_coach(self, name: str, role: str = "coach") -> int:
        coach = people.add_person(self.db, "telegram", f"coach {name}", name, ago(100))
        coaching.make_coach(self.db, coach, name, ago(100), role)
        return coach

    def lifter(self, name: str = "Sam", answered: float = 1, linked: float = 60) -> int:
        """A lifter linked to Ada, who answered something so many days ago."""
        count = self.db.execute("select count(*) from addresses").fetchone()[0]
        person = people.add_person(self.db, "telegram", str(1000 + count), name, ago(90))
        coaching.link(self.db, person, self.coach, ago(linked))
        self.run(person, "about_you", {"height": 178.0}, answered)
        return person

    def keep(self, person: int, days: float, *effects: Effect) -> None:
        keep(self.db, person, effects, ago(days), "UTC+00:00")

    def run(self, person: int, flow: str, answers: dict[str, float | str], days: float = 1, ending: str = "done",
            asked: str = "", alert: Alert | None = None) -> str:
        """A run of a flow with its answers; ``ending`` "" leaves it open."""
        self.runs += 1
        run = str(self.runs)
        rows = [Record(run, flow, 1, key, next((side for side in ("left", "right") if key.startswith(side)), ""), str(value), value,
                       method=str(answers.get("method", "")) if isinstance(value, float) else "") for key, value in answers.items()]
        ended = (Ended(run, ending),) if ending else ()
        told = (Alert(alert.level, alert.because, run),) if alert else ()
        self.keep(person, days, Began(run, flow, 1, asked), *rows, *told, *ended)
        return run

    def find(self, person: int, name: str, value: str, days: float = 1, because: str = "", rule: str = "a rule") -> None:
        self.keep(person, days, Find(name, value, rule, because))

    def hurt(self, person: int, days: float, level: str = "not_today", where: str = "back", bad: float = 5.0, **more: str) -> None:
        """Pain questions answered to the end."""
        self.run(person, "pain", {"where": where, "bad": bad, **more}, days, alert=Alert(level, f"something hurt ({where})"))
        self.find(person, "pain.hurt", "yes", days)
        self.find(person, "safety.level", level, days)

    def lifted(self, person: int, days: float, load: float = 90.0, limit: float = 60.0) -> None:
        """A squat day told of so many days ago, with its load, and the limit that stood then."""
        if not self.db.execute("select 1 from facts where person = ? and name = 'load.limit'", (person,)).fetchone():
            self.find(person, "load.limit", f"{limit:g}", 89)
        self.run(person, "squat_after", {"done": "yes", "back": "still", "load": load}, days)
        self.find(person, "squat.answered", ago(days).date().isoformat(), days)

    def over_an_emergency(self) -> int:
        """A lifter whose emergency was reviewed and is over, with a result of two days ago."""
        return self._over("emergency", 2)

    def over_a_small_pain(self) -> int:
        """The same of a small pain, with a result of yesterday."""
        return self._over("no_load", 1)

    def _over(self, level: str, results: float) -> int:
        person = self.lifter(level)
        self.hurt(person, 5, level, "chest")
        self.find(person, "safety.level", "go", 4)
        self.reviewed(person, 4)
        self.results(person, results)
        return person

    def results(self, person: int, days: float, overall: str = "likely") -> None:
        self.find(person, "outcome.at", ago(days).isoformat(), days)
        self.find(person, "overall", overall, days)

    def reviewed(self, person: int, days: float, coach: int | None = None) -> None:
        coaching.audit_act(self.db, person, coach or self.coach, "reviewed", "", "", ago(days))

    def looks(self, person: int) -> list[str]:
        """What was looked at of a lifter, by whom, the oldest first; the agreement left out."""
        return [f"{name}: {what}" for _, name, what in reversed(coaching.latest_looks(self.db, person, 500)) if what != "agreed"]


def lines_of(db: sqlite3.Connection, coach: int, now: datetime) -> list[CaseloadLine]:
    """The caseload of a coach, on their own clock."""
    return caseload(db, coach, now, coach_zone(db, coach, now))
