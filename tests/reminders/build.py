"""Lifters put straight into a real file, and a companion over it whose clock a test moves."""

from __future__ import annotations

import contextlib
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import NamedTuple

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import ScriptClock, running_writer
from companion.app.service import Companion
from companion.calendar.plan import Plan, PlanChange, Weekly, changed
from companion.calendar.preferences import plan_from
from companion.calendar.prompts import Preferences
from companion.channels.terminal import waiting_messages
from companion.conversation.session import Session
from companion.port import Address, Inbound, Tapped, Typed
from companion.record import people, reminders
from companion.record.context import known_of
from companion.record.timestamps import moment_of, text_of
from companion.reminders.planner import replan

MONDAY = datetime(2026, 6, 1, 8, tzinfo=UTC)
"""A Monday morning in the zone of the first lifter."""
LISBON = "Europe/Lisbon"
TUESDAYS = Plan(weekly=((1, time(18)),))
DAILY = Plan(weekly=tuple((day, time(18)) for day in range(7)))
USUAL = Preferences()
NEVER_QUIET = (time(0), time(0))
WELCOMED = {"welcome.consent": "yes", "welcome.adult": "yes", "welcome.units": "metric", "welcome.zone": LISBON,
            "welcome.zone_right": "yes", "about_you.bar": "full", "about_you.usual_depth": "parallel"}


class Row(NamedTuple):
    """A reminder as its row has it."""

    id: int
    person: int
    kind: str
    day: str
    state: str
    due: datetime
    settled: datetime | None


class Gym:
    """A companion and its lifters."""

    def __init__(self, path: Path, at: datetime = MONDAY) -> None:
        self.path, self.clock = path / "gym.sqlite", ScriptClock(at)
        self.stack = contextlib.AsyncExitStack()

    async def open(self) -> None:
        self.companion = Companion(self.path, self.clock)
        self.db.execute("pragma synchronous=off")  # nothing here loses power, and there are thousands of commits
        await self.stack.enter_async_context(running_writer(self.companion))

    async def close(self) -> None:
        await self.stack.aclose()
        self.companion.close()
        self.stack = contextlib.AsyncExitStack()

    async def reopen(self) -> None:
        await self.close()
        await self.open()

    @property
    def db(self):
        return self.companion.db.conn

    def now(self) -> datetime:
        return self.clock.at

    def lifter(self, name: str = "sam", plan: Plan = TUESDAYS, wishes: Preferences = USUAL, **facts: str) -> int:
        """A lifter who has been through the welcome; facts by name, "__" for the dot."""
        person = people.add_person(self.db, "terminal", name, name, self.now())
        people.save_session(self.db, person, Session(idle=True), self.now())
        kept = WELCOMED | {"squat.plan": plan.dumps(), "squat.wishes": wishes.dumps()}
        self.tell(person, **kept | {key.replace("__", "."): value for key, value in facts.items()})
        return person

    def tell(self, person: int, **facts: str) -> None:
        """Facts of a lifter, and what follows for their reminders."""
        for name, value in facts.items():
            self.db.execute("insert or replace into facts values (?, ?, ?, 1, ?)",
                            (person, name.replace("__", "."), value, text_of(self.now())))
        replan(self.db, person, self.facts(person), self.now())

    def change(self, person: int, change: PlanChange) -> None:
        self.tell(person, squat__plan=changed(plan_from(self.facts(person)), change).dumps())

    def facts(self, person: int):
        return known_of(self.db, person, self.now()).facts

    def invite(self, person: int, kind: str, on: datetime, stale: datetime | None = None, wall: str = "") -> None:
        """A reminder of another kind, as a conversation writes it: at a wall-clock time in Lisbon."""
        text = wall or f"{on:%Y-%m-%d %H:%M}"
        reminders.add(self.db, person, kind, kind, text, LISBON, on, self.now(), text[:10] if stale else "", stale)

    async def sweep(self, **ahead: float) -> list[str]:
        """Let time pass, sweep, and give what arrived."""
        self.clock.at += timedelta(**ahead)
        await self.companion.sweep()
        return await self.listen()

    async def listen(self) -> list[str]:
        return [one.text for one in await waiting_messages(CompanionOutbox(self.companion, "terminal"), self.now())]

    async def sweep_until(self, end: datetime, every: timedelta = timedelta(hours=1)) -> list[str]:
        """Sweep so often until then; gives all that arrived."""
        heard: list[str] = []
        while self.now() < end:
            self.clock.at = min(self.now() + every, end)
            heard += await self.sweep()
        return heard

    async def write(self, name: str, text: str) -> None:
        await self.companion.take(Inbound(Address("terminal", name), Typed(text), name=name))

    async def tap(self, name: str, data: str) -> None:
        await self.companion.take(Inbound(Address("terminal", name), Tapped(data), name=name))

    def rows(self, kind: str = "", state: str = "", person: int = 0) -> list[Row]:
        found = self.db.execute("select id, person, kind, day, state, due_at, settled_at from reminders order by id").fetchall()
        rows = [Row(*row[:5], moment_of(row[5]), moment_of(row[6]) if row[6] else None) for row in found]
        return [row for row in rows if kind in ("", row.kind) and state in ("", row.state) and person in (0, row.person)]

    def sent(self, kind: str, person: int = 0) -> list[str]:
        """The days a kind was sent for."""
        return [row.day for row in self.rows(kind, "sent", person)]

    def next(self, kind: str = "squat_day", person: int = 0) -> Row:
        """The one open reminder of a kind."""
        (row,) = self.rows(kind, "open", person)
        return row

    def waiting(self) -> list[str]:
        """What waits in the outbox."""
        return [row[0] for row in self.db.execute("select text from outbox where settled_at is null order by id")]


def day(text: str) -> date:
    return date.fromisoformat(text)


def at(text: str) -> datetime:
    """A moment in UTC: "2026-06-01 18:00"."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def weekly(days: str, when: str = "18:00") -> Weekly:
    """Squat days by their first letters' numbers: weekly("14") is Tuesdays and Fridays."""
    return Weekly(tuple((int(one), time.fromisoformat(when)) for one in days))
