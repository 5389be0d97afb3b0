"""A stop and a start after every single answer of every flow: the same question stands there, and nothing is asked twice."""

from __future__ import annotations

import asyncio
import contextlib
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import ScriptClock, opening, running_writer
from companion.app.service import Companion
from companion.channels.script import REPLY_TAKES
from companion.channels.terminal import waiting_messages
from companion.conversation.effects import Began, Ended, Record
from companion.conversation.flow import Ask
from companion.conversation.kinds import Media, Words, Zone
from companion.conversation.number_kinds import Number
from companion.conversation.session import Session
from companion.language.units import METRIC, shown
from companion.port import Address, Inbound, Outgoing, Sent, Tapped, Typed
from companion.record import coaching, log, people
from flows.catalogue import BOOK, CATALOGUE
from tests.by_night import BY_NIGHT
from tests.fakes.clock import START
from tests.rows import keep

WHO = Address("terminal", "sam")
LONGEST_WALK = 40
"""Answers; the full screen with every test in it is longer, and each of its tests is walked by itself."""

Choose = Callable[[Ask, list[str]], str]


def typical(ask: Ask, offered: list[str]) -> str:
    """What most people say."""
    usual = str(ask.kind.typical).removesuffix(".0")
    return usual if usual in offered else offered[0]


def first(ask: Ask, offered: list[str]) -> str:
    """Whatever stands first."""
    return offered[0]


def last(ask: Ask, offered: list[str]) -> str:
    """Whatever stands last."""
    return offered[-1]


PAST: dict[str, dict[str, float | str]] = {
    "welcome": {"consent": "yes", "adult": "yes", "units": METRIC, "zone": "UTC+00:00", "zone_right": "yes"},
    "about_you": {"height": 175.0, "years": 3.0, "load": 100.0, "usual_depth": "below", "stick": "broomstick"},
    "squat_look": {"seen_by": "film", "plain_rounds": "clearly", "plain_depth": "a_little_above",
                   "slow_rounds": "clearly", "slow_depth": "parallel", "again_rounds": "clearly",
                   "again_depth": "a_little_above"},
    "hand_on_back_squat": {"usual_moves": "yes", "usual_depth": "a_little_above", "cued_moves": "yes",
                           "cued_depth": "parallel"},
    "arms_forward_squat": {"seen_by": "film", "bar": "stick", "fault": "clean"},
    "pause_squat": {"seen_by": "film", "with": "body", "moving": "clean", "hard": "none", "shape": "clean"},
    "leg_raise": {"effort": "own", "method": "level", "placement": "shin", "left_level": 58.0, "left_lean": "short",
                  "right_level": 57.0, "right_lean": "short"},
}
"""A lifter who has been through enough that every flow opens to them, and has results with a drill and a retest."""


class Life:
    """One companion on one file and one person, started again at will."""

    def __init__(self, path: Path) -> None:
        self.path, self.clock = path, ScriptClock(START)
        self.stack = contextlib.AsyncExitStack()

    async def start(self) -> None:
        self.companion = Companion(self.path, self.clock)
        await self.stack.enter_async_context(running_writer(self.companion))

    async def stop(self) -> None:
        await self.stack.aclose()
        self.companion.close()
        self.stack = contextlib.AsyncExitStack()

    async def do(self, event: Typed | Tapped | Sent) -> list[Outgoing]:
        self.clock.at += REPLY_TAKES
        await self.companion.take(Inbound(WHO, event, name=WHO.id))
        return list(await waiting_messages(CompanionOutbox(self.companion, WHO.channel), self.clock.now()))

    @property
    def session(self) -> Session:
        return people.load_session(self.companion.db.conn, 1)

    @property
    def ask(self) -> Ask:
        """The question that waits."""
        stop = BOOK[self.session.top.flow].stops[self.session.top.state]
        assert isinstance(stop, Ask)
        return stop

    def rows(self) -> list[tuple[str, str, str, object]]:
        return [(row.run, row.key, row.status, row.value) for row in log.answers_of(self.companion.db.conn, 1)]

    async def answer(self, choose: Choose) -> None:
        """Answer the question that waits, a choice by one of its buttons."""
        ask, (shown_now,) = self.ask, await opening(self.companion, WHO)
        match ask.kind:
            case Number():
                event: Typed | Tapped | Sent = Typed(shown(ask.kind.example_value, ask.kind.unit, METRIC))
            case Words() | Zone():
                event = Typed("Porto")
            case Media():
                event = Sent(ask.kind.accepts[0], "file-1")
            case _:
                taps = {data.rpartition(".")[2]: data for row in shown_now.buttons for data in (button.data for button in row)}
                event = Tapped(taps[choose(ask, [value for value in taps if not value.startswith("!")])])
        await self.do(event)


@pytest.fixture(scope="module")
def lived(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A file of the lifter of PAST, checked and warmed up today, with results told; copied for each walk."""
    path = tmp_path_factory.mktemp("lived") / "companion.sqlite"
    asyncio.run(_live_past(path))
    return path


async def _live_past(path: Path) -> None:
    life = Life(path)
    await life.start()
    db = life.companion.db.conn

    def write() -> None:
        person = people.add_person(db, WHO.channel, WHO.id, WHO.id, START)
        for number, (flow, answers) in enumerate(PAST.items(), 1):
            version, run = BOOK[flow].flow.version, str(number)
            side = {key: key.partition("_")[0] for key in answers if key.startswith(("left", "right"))}
            keep(db, person, [Began(run, flow, version), *(
                Record(run, flow, version, key, side.get(key, ""), str(value), value, "", "ok",
                       "level_own" if key in side else "", "shin" if key in side else "")
                for key, value in answers.items()), Ended(run, "done")], START, "UTC+00:00")
        people.save_session(db, person, Session(runs=len(PAST), idle=True), START)
        coaching.make_coach(db, person, "Kim", START)  # so that a coach's flows are open too

    await life.companion.writer.do(lambda _: write())
    for flow in ("safety_check", "warm_up", "outcome"):
        await life.do(Tapped(f"go.{flow}"))
        while life.session.top.flow == flow:
            await life.answer(typical)
    await life.stop()


WALKS = [pytest.param(name, choose, id=f"{name}, {choose.__name__}")
         for n, name in enumerate(BOOK.flows) if name != "welcome"
         for choose in ((typical, first, last) if BY_NIGHT else (typical, (first, last)[n % 2]))  # by day one of the two in turn
         if (name, choose) != ("erase", first)]  # a yes there leaves nothing to go on with


@pytest.mark.parametrize(("name", "choose"), WALKS)
async def test_a_restart_after_any_answer_goes_on_at_the_same_question(
        name: str, choose: Choose, lived: Path, tmp_path: Path) -> None:
    walks = []
    for restarting in (False, True):
        shutil.copy(lived, tmp_path / f"{restarting}.sqlite")
        life = Life(tmp_path / f"{restarting}.sqlite")
        await life.start()
        await life.do(Tapped(f"go.{name}"))
        walks.append(await walk(life, name, choose, restarting))
        await life.stop()
    assert walks[0] == walks[1]


async def test_a_restart_after_any_answer_since_consent_goes_on_at_the_same_question(tmp_path: Path) -> None:
    walks = []
    for restarting in (False, True):
        life = Life(tmp_path / f"{restarting}.sqlite")
        await life.start()
        await life.do(Typed("hello"))
        await life.do(Tapped(f"{CATALOGUE.payload(CATALOGUE.consents[0])}yes"))
        walks.append(await walk(life, "welcome", first, restarting))
        await life.stop()
    assert walks[0] == walks[1]
    assert ("welcome", "zone_right") in walks[0]


async def walk(life: Life, name: str, choose: Choose, restarting: bool) -> list[tuple[str, str]]:
    """Answer until the flow has ended, or long enough, and give the questions in the order they were asked; where
    ``restarting``, the companion is stopped and started at each of them."""
    runs = {frame.run for frame in life.session.stack if frame.flow == name}
    asked: list[tuple[str, str]] = []
    already = len(life.rows())
    while runs & {frame.run for frame in life.session.stack} and len(asked) < LONGEST_WALK:
        if restarting:
            before = life.session, life.rows(), await opening(life.companion, WHO)
            await life.stop()
            await life.start()
            assert await waiting_messages(CompanionOutbox(life.companion, WHO.channel), life.clock.now()) == []
            assert (life.session, life.rows(), await opening(life.companion, WHO)) == before
            assert len(before[2]) == 1
        asked.append((life.session.top.flow, life.session.top.state))
        await life.answer(choose)
    made_void = [row for row in life.rows()[already:] if row[2] == "in_pain"]
    assert len(life.rows()) - already - len(made_void) == len(asked)
    return asked


async def test_every_flow_that_asks_something_was_open_to_this_lifter(lived: Path, tmp_path: Path) -> None:
    """Else the walks above would prove nothing about it. Three ask only where something was asked for, one only
    who has not agreed to the present text, one only who was sent to be seen, three only where a sign was heard,
    one only after a wrong tap, two only after a change that helped, two only of a limit, one about a topic, one only
    where films can be read, one only who was taken to be under 18, one only after something hurt."""
    closed = []
    for name, compiled in BOOK.flows.items():
        if name in ("welcome", "changes", "coach_act", "link_request", "consent_again", "referral", "signs", "crisis",
                    "begin_again", "wrong_tap", "best_squat", "setup_morning", "limit_over", "clearance", "why_told",
                    "next_test", "film_measure", "time_off", "age", "since_pain") or not compiled.stops:
            continue
        shutil.copy(lived, tmp_path / f"{name}.sqlite")
        life = Life(tmp_path / f"{name}.sqlite")
        await life.start()
        await life.do(Tapped(f"go.{name}"))
        if name not in [frame.flow for frame in life.session.stack]:
            closed.append(name)
        await life.stop()
    assert closed == []
