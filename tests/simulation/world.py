"""A world around the real companion: its clock, its network, its disk and its people, the same every time for one seed.

Real: the companion on a real file, its writer, outbox, drainer, rate limit and sweep. Replaced: the edge, which is the send of one
message, the polls, and the disk's answer to a commit. Time is that of the loop, so that minutes take milliseconds.
"""

from __future__ import annotations

import asyncio
import contextlib
import os
import random
import shutil
import sqlite3
from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime, time, timedelta
from functools import cache
from hashlib import sha256
from pathlib import Path
from tempfile import mkdtemp
from typing import Any
from unittest import mock

from companion.app.outbox_store import CompanionOutbox
from companion.app.rate_limit import RateLimit
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.calendar.plan import Plan
from companion.calendar.prompts import Preferences
from companion.channels.drainer import CLOSING_SECONDS, Drainer
from companion.channels.telegram.bounds import pause_of
from companion.operate.metrics import Metrics
from companion.port import Delivered, Delivery, Event, Inbound, Later, Outgoing, Rank, Typed, Unreachable, Unsure
from companion.record import coaching, status
from companion.record import file as record_file
from companion.record.context import known_of
from companion.record.file import AlreadyRunning, CannotOpen
from companion.record.outbox import backlog
from companion.record.writer import CommitFailed
from companion.reminders.planner import replan
from tests.benchmarks.reminders import CHAT, fill
from tests.simulation.invariants import Ledger
from tests.simulation.loop import SetClock, VirtualLoop
from tests.simulation.people import PAIN, Person
from tests.simulation.plan import ZONES, WorldPlan

SWEEP_SECONDS = 20
NIGHT_SWEEPS = 30
"""By how much seldomer it is swept by night, so that a night is lived through in a second."""
QUIET_WITHIN = 400.0
"""Seconds after the last fault within which everything has left."""


PREFERENCES = (Preferences(), Preferences(1, quiet=(time(23), time(1))), Preferences(0, time(2, 30), (time(4), time(5))))
"""When the lifters want to hear of their squat days, by turns: the evening before, an hour before, and at an hour that a clock change
takes away or brings twice."""

PLAN = Plan(weekly=tuple((day, time(3, 15) if day % 2 else time(18)) for day in range(7)))


@cache
def template(lifters: int, begins: datetime) -> Path:
    """A file with so many lifters, the first of whom coaches the next three; made once a process."""
    path = Path(mkdtemp()) / f"{lifters}.sqlite"
    fill(path, lifters, begins)
    db = sqlite3.connect(path, isolation_level=None)
    coaching.make_coach(db, 1, "Kim", begins)
    for lifter in range(2, min(5, lifters + 1)):
        coaching.link(db, lifter, 1, begins)
    db.execute("begin immediate")
    for lifter in range(1, lifters + 1):
        own = {"welcome.zone": ZONES[lifter % len(ZONES)], "squat.wishes": PREFERENCES[lifter % len(PREFERENCES)].dumps(),
               "squat.plan": PLAN.dumps()}
        db.executemany("update facts set value = ? where person = ? and name = ?", ((value, lifter, name) for name, value in own.items()))
        replan(db, lifter, known_of(db, lifter, begins).facts, begins)
    db.execute("commit")
    db.execute("pragma wal_checkpoint(truncate)")
    db.close()
    return path


class _Disk:
    """The writer's connection, whose commits may fail, fail only in what they say, or take their time."""

    def __init__(self, db: sqlite3.Connection, world: World) -> None:
        self._db, self._world = db, world

    def __getattr__(self, name: str) -> Any:
        return getattr(self._db, name)

    def execute(self, sql: str, *arguments: Any) -> sqlite3.Cursor:
        if sql == "commit" and self._world.loop.time() < self._world.until["crawling"]:
            self._world.loop.passed += 0.25
        if sql != "commit" or not self._world.disk:
            return self._db.execute(sql, *arguments)
        how, self._world.disk = self._world.disk, ""
        if how == "slow":
            self._world.loop.passed += 1.5
            return self._db.execute(sql)
        if how == "sync":
            self._db.execute(sql)
        raise sqlite3.OperationalError("database or disk is full" if how == "full" else "disk I/O error")


class _Watch(Metrics):
    """The metrics. ``followed``: when the clock that was set was last followed, committed."""

    followed = float("-inf")

    def clock_jumped(self, seconds: float) -> None:
        super().clock_jumped(seconds)
        self.followed = self._clock.monotonic()


class World:
    """One world. ``lively``: people still act; ``log``: what happened, to be compared. ``unfollowed``: the clock was set while no bot ran,
    or its bot ended before that was committed."""

    def __init__(self, plan: WorldPlan, folder: Path) -> None:
        self.plan, self.path = plan, folder / "c.sqlite"
        self.loop = VirtualLoop()
        self.clock = SetClock(self.loop, plan.begins)
        self.rng = random.Random(f"edge {plan.seed}")
        self.log: list[str] = []
        self.ledger = Ledger(self)
        self.lively = True
        self.disk = ""
        self.inbox: list[tuple[int, Person, Event, float]] = []
        self.updates = 0
        self.come = asyncio.Event()
        self.until: defaultdict[str, float] = defaultdict(float)
        self.share = 0.0
        self.wild = False
        self.asleep = False
        self.jumped = float("-inf")
        self.unfollowed = False
        self.starts = 0
        self.digest = ""
        self.work: list[asyncio.Task[Any]] = []
        habits = [plan.habits[number % len(plan.habits)] for number in range(plan.lifters)]
        habits[:plan.flooders] = ["flooder"] * min(plan.flooders, plan.lifters)
        self.people = {str(CHAT + number): Person(self, CHAT + number, habit) for number, habit in enumerate(habits, 1)}
        self.people |= {str(number): Person(self, number, "stranger") for number in range(5_000_001, 5_000_001 + plan.strangers)}

    # the run ----------------------------------------------------------------------------------------------

    def run(self) -> str:
        """Live through the plan; returns a digest of all that happened. Raises AssertionError where an invariant does not hold."""
        shutil.copy(template(self.plan.lifters, self.plan.begins), self.path)
        asyncio.set_event_loop(self.loop)
        try:
            self.loop.run_until_complete(self._run())
        finally:
            left = asyncio.all_tasks(self.loop)  # where an invariant does not hold
            for task in left:
                task.cancel()
            self.loop.run_until_complete(asyncio.gather(*left, return_exceptions=True))
            asyncio.set_event_loop(None)
            self.loop.close()
        self.ledger.at_the_end_of_the_file()
        return sha256("\n".join(self.log).encode()).hexdigest()

    async def _run(self) -> None:
        self.start()
        for person in self.people.values():
            person.begin()
        for at, kind, much in self.plan.faults:
            self.loop.call_later(at, lambda kind=kind, much=much: self.loop.create_task(self.fault(kind, much)))
        await asyncio.sleep(self.plan.seconds)
        self.lively, self.share = False, 0.0
        self.until.clear()
        self.asleep = True
        await asyncio.sleep(self.plan.hours * 3600)
        self.asleep = False
        began = self.loop.time()
        end = began + QUIET_WITHIN + (SWEEP_SECONDS * NIGHT_SWEEPS if self.plan.hours else 0)
        while not (self.quiet() and self.ledger.swept_last > began) and self.loop.time() < end:
            await asyncio.sleep(2)
        self.ledger.at_the_end()
        await self.end(clean=True)

    def quiet(self) -> bool:
        """Whether nothing is on its way."""
        if not self.work or self.inbox or len(self.companion.unsaved):
            return False
        return not backlog(self.companion.db.conn, self.clock.now()).waiting

    # the bot ----------------------------------------------------------------------------------------------

    def start(self) -> None:
        """Start the bot on the file."""
        self.note(f"start {self.starts}")
        self.starts += 1
        if self.unfollowed:
            self.unfollowed = False
            self.ledger.lost_time()
        try:
            with self.machine_at_start():
                self.companion = Companion(self.path, self.clock)
        except (CannotOpen, CommitFailed) as error:
            self.note(f"can't start: {error}")
            self.loop.call_later(2, self.start)
            return
        self.companion.db.execute("pragma synchronous=off")  # no power is cut here
        self.companion.writer._db = _Disk(self.companion.writer._db, self)  # type: ignore[assignment]
        self.companion.rate_limit = RateLimit()
        self.metrics = _Watch(self.clock, lambda now: backlog(self.companion.db.conn, now, "telegram"),
                              lambda: self.companion.writer.broken is not None)
        self.companion.watch = self.metrics
        self.drainer = Drainer(CompanionOutbox(self.companion, "telegram", busy=True), self, self.clock)
        self.companion.on_commit = lambda channel: self.drainer.wake()
        self.begun, self.jumped = self.loop.time(), float("-inf")
        self.ledger.taken_in_pain = {chat: min(since, self.begun) for chat, since in self.ledger.taken_in_pain.items()}
        self.work = [self.loop.create_task(one) for one in (self._writes(), self._sends(), self._polls(), self._sweeps())]

    @contextlib.contextmanager
    def machine_at_start(self) -> Iterator[None]:
        """A disk that is read-only or full while the bot starts."""
        with contextlib.ExitStack() as stack:
            if self.loop.time() < self.until["read-only"]:
                stack.enter_context(mock.patch.object(record_file, "_PRAGMAS", (*record_file._PRAGMAS, "query_only=on")))
            if self.loop.time() < self.until["full start"]:
                stack.enter_context(mock.patch.object(status, "set_mark", side_effect=sqlite3.OperationalError("database or disk is full")))
            yield

    async def end(self, clean: bool) -> None:
        """Stop the bot: cleanly, or as a kill does, wherever it is."""
        work, self.work = self.work, []
        if clean and work:
            for one in work[1:]:
                one.cancel()
            await asyncio.gather(*work[1:], return_exceptions=True)
            with contextlib.suppress(CommitFailed):
                await self.drainer.flush(CLOSING_SECONDS)
        for one in work:  # first, so that nobody begins what is cut off here once more
            one.cancel()
        await self.drainer.close()
        await asyncio.gather(*work, return_exceptions=True)
        self.companion.close()
        self.unfollowed = self.jumped > self.metrics.followed

    async def restart(self, clean: bool, after: float) -> None:
        """End the bot and start it again a while later."""
        if self.work:
            await self.end(clean)
            self.loop.call_later(after, self.start)

    def fell(self, error: BaseException) -> None:
        """The bot ended by itself, as it must where the file can't be written."""
        self.note(f"fell: {error}")
        if self.work:
            self.loop.create_task(self.restart(False, 3.0))

    @contextlib.contextmanager
    def _falling(self) -> Iterator[None]:
        try:
            yield
        except (CommitFailed, sqlite3.Error) as error:
            self.fell(error)

    async def _writes(self) -> None:
        with self._falling():
            async with running_writer(self.companion) as writer:
                await writer

    async def _sends(self) -> None:
        with self._falling():
            await self.drainer.run()

    async def _sweeps(self) -> None:
        with self._falling():
            while True:
                began, wall = self.loop.time(), self.clock.now()
                await self.companion.sweep()
                self.ledger.swept(began, wall)
                await asyncio.sleep(SWEEP_SECONDS * (NIGHT_SWEEPS if self.asleep else 1))

    async def _polls(self) -> None:
        """Take what waits, a hundred at a time and in order per chat; confirm it when all of it is committed."""
        while True:
            self.come.clear()
            if not self.inbox:
                with contextlib.suppress(TimeoutError):  # ``wait_for`` would lose a cancellation that comes with the event
                    async with asyncio.timeout(240 if self.asleep else 25):
                        await self.come.wait()
            await asyncio.sleep(0.05)
            if self.loop.time() < self.until["down"]:
                await asyncio.sleep(1)
                continue
            self.metrics.polled()
            batch, chats = self.inbox[:100], defaultdict[str, list[tuple[int, Person, Event, float]]](list)
            for one in batch:
                chats[one[1].address.id].append(one)
            try:
                await asyncio.gather(*(self._takes(line) for line in chats.values()))
            except CommitFailed as error:
                self.fell(error)
                return
            if self.loop.time() < self.until["again"] and self.rng.random() < 0.5:
                continue  # the confirmation is lost: they come again
            self.inbox = self.inbox[len(batch):]
            for number, person, event, at in batch:
                self.ledger.confirmed(number, person, event, at)

    async def _takes(self, line: list[tuple[int, Person, Event, float]]) -> None:
        for number, person, event, _ in line:
            await self.companion.take(Inbound(person.address, event, number, f"name {person.chat}"))

    # the edge ---------------------------------------------------------------------------------------------

    def arrives(self, person: Person, event: Event) -> None:
        """Somebody writes."""
        self.updates += 1
        self.note(f"{person.chat} {event}")
        self.inbox.append((self.updates, person, event, self.loop.time()))
        if isinstance(event, Typed) and event.text in PAIN and person.habit != "flooder":
            self.ledger.in_pain(person)
        self.come.set()

    async def send(self, message: Outgoing) -> Delivery:
        """One message on the wire."""
        self.ledger.begins(message)
        now, rng = self.loop.time(), self.rng
        if now < self.until["down"]:
            await asyncio.sleep(0.2)
            return Unreachable("no network")
        await asyncio.sleep(rng.uniform(0.03, 0.2) + (2.0 if now < self.until["slow"] else 0.0))
        if now < self.until["limit"]:
            return Later(pause_of(self.rng.choice((1e15, "abc", -3, 17)) if self.wild else self.share))
        if now < self.until["timeouts"] and rng.random() < self.share:
            if rng.random() < 0.5:
                self._deliver(message)
            await asyncio.sleep(15)
            return Unsure("timed out")
        self._deliver(message)
        return Unsure("garbage") if now < self.until["garbage"] and rng.random() < 0.3 else Delivered(str(message.id))

    def _deliver(self, message: Outgoing) -> None:
        self.note(f"→ {message.address.id} {Rank(message.rank).name} {message.text[:40]!r}")
        self.ledger.delivered(message)
        self.people[message.address.id].got(message)

    async def fault(self, kind: str, much: float) -> None:
        """Something goes wrong, for a while or at once."""
        self.note(f"fault {kind} {much}")
        self.ledger.faults.append(self.loop.time())
        if kind == "clock":
            # of the drawn ones, half by days and the others by minutes
            days = (much - 0.5) * 4 if much < 0.25 or much > 0.75 else (much - 0.5) / 12 or 0.01
            self.clock.offset += timedelta(seconds=much) if abs(much) > 1 else timedelta(days=days)
            self.ledger.clock_set()
            if self.work:
                self.jumped = self.loop.time()
            else:
                self.unfollowed = True
        elif kind in ("kill", "stop"):
            await self.restart(kind == "stop", 1.0)
        elif kind.startswith("disk"):
            self.disk = kind.removeprefix("disk ")
        elif kind == "second bot":
            self.second_bot()
        elif kind == "log cut":
            await self.log_cut()
        elif kind == "file gone":
            await self.file_gone()
        else:
            self.until[kind] = self.loop.time() + 10 + 30 * much
            self.share = 17.0 if kind == "limit" else max(0.2, much)
            if kind == "wild limit":
                self.wild, self.until["limit"] = True, self.until[kind]
            if kind == "read-only" and self.work:
                self.companion.db.execute("pragma query_only=on").fetchall()

    def second_bot(self) -> None:
        """Somebody starts another bot on the file, by other names for it and where the lock was removed."""
        if not self.work:
            return
        link, hard = self.path.with_name("link.sqlite"), self.path.with_name("hard.sqlite")
        link.symlink_to(self.path)
        os.link(self.path, hard)
        for other in (link, hard, self.path):
            self.path.with_name("c.sqlite.lock").unlink(missing_ok=True)
            try:
                Companion(other, self.clock).close()
                self.ledger.holds(False, f"a second bot began on {other.name}")
            except AlreadyRunning:
                pass
        link.unlink()
        hard.unlink()

    async def log_cut(self) -> None:
        """The process is killed, and half of the write-ahead log with it; the next start says so."""
        kept = {end: self.path.with_name(self.path.name + end).read_bytes() for end in ("", "-wal")}
        await self.end(clean=False)
        for end, content in kept.items():
            self.path.with_name(self.path.name + end).write_bytes(content[:len(content) // 2] if end else content)
        self.inbox.clear()
        self.ledger.highest.clear()
        self.start()
        mark = status.mark_of(self.companion.db.conn, status.LOG_CUT)
        self.ledger.holds(mark is not None, "answers were lost with the log, and nothing is said")

    async def file_gone(self) -> None:
        """The file is renamed away, put back once the bot has noticed, and nothing may be confirmed between."""
        away = self.path.with_name("away")
        self.path.rename(away)
        before, until = self.ledger.count, self.loop.time() + 40
        while self.work and self.loop.time() < until:
            await asyncio.sleep(0.5)
        self.ledger.holds(self.ledger.count == before, "updates were confirmed on a file that is gone")
        away.rename(self.path)

    def note(self, what: str) -> None:
        """Add to the log."""
        self.log.append(f"{self.loop.time():.3f} {what}")
