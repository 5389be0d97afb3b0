"""The whole companion on a real file, under whatever a person, a network and a machine may do to it.

One lifter types, taps, edits, sends the same update twice and late, is in pain, stops, goes back, comes back days later;
the companion is closed and opened in between. After every turn the rules that must always hold are checked.
The file is a real one; only ``synchronous`` is off on the test's own connection: what the disk does is not asked here.
"""

from __future__ import annotations

import asyncio
import re
import shutil
import tempfile
from collections import Counter
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import ClassVar, Final

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule, run_state_machine_as_test

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import ScriptClock, running_writer
from companion.app.service import SORRY, Companion
from companion.channels.terminal import waiting_messages
from companion.conversation.acting import WAITS
from companion.conversation.day_kinds import LimitEnd, PastDay, Rest
from companion.conversation.effects import Say
from companion.conversation.flow import Ask
from companion.conversation.number_kinds import Number
from companion.conversation.pages import MORE_PAGES
from companion.conversation.replies import GOOD
from companion.conversation.session import Session
from companion.conversation.step import prompt_now, stands_again, unsettled
from companion.conversation.table import body_works
from companion.port import Address, Button, Edited, Event, Inbound, Outgoing, Sent, Tapped, Typed
from companion.record import people
from companion.record.context import known_of
from companion.screening.safety import Level
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.screening.build import open_tests

START = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)
SAM = Address("terminal", "sam")
LONGEST = 4096
"""Bot API: a text message is 1 to 4096 characters, callback data 1 to 64 bytes (read)."""

STEPS_AT_LEAST: Final = 1_500
EXAMPLES: Final = settings().max_examples if BY_NIGHT else 40

WELCOME = ("hello", "Yes, keep them", "yes", "cm and kg", "UTC", "yes")
PAINS = ("ouch", "that hurts", "12 but it hurt", "my back just went", "sharp pain", "pins and needles", "I CAN'T FEEL MY FOOT")
NONSENSE = ("", "   ", "lots", "asdf qwer", "-5", "1e309", "nan", "1/0", "900 cm", "12 to 14", "🏋️", "x" * 5000, "{side}", "%s%n", "yes no",
            "no pain", "hurt last year", "0", "٣", "yes?", "\u202eevil", "½", "1/2/3", "go.home", "/")
CONTROLS = ("stop", "back", "skip", "again", "help", "menu", "go on", "yes", "no", "ok", "none", "not sure")
COMMANDS = sorted(BOOK.commands)
FORGED = ("", "x", "go.nowhere", "go.pain", "go.prime", "pain.1.bad.0", "safety_check.1.bladder.no", "....", "home.1.pick.prime",
          "squat_look.1.did.!skip")
FIRST_FLOWS = {gate.first for compiled in BOOK.flows.values() for gate in compiled.flow.gates}
FLOOR_TESTS = open_tests(Level.NO_LOAD)
LOADED = {name for name, one in BOOK.flows.items() if body_works(one.flow)} - FLOOR_TESTS - FIRST_FLOWS
"""The flows that squat or load: all in which the body works but the floor tests and the warm-up."""


class Life:
    """One companion on one file and one lifter, with a clock that stands still."""

    def __init__(self, path: Path) -> None:
        self.path, self.clock = path, ScriptClock(START)
        self.loop = asyncio.new_event_loop()
        self.open()

    def open(self) -> None:
        self.companion = Companion(self.path, self.clock)
        self.companion.db.conn.execute("pragma synchronous=off")
        self.working = running_writer(self.companion)
        self.loop.run_until_complete(self.working.__aenter__())

    def shut(self) -> None:
        self.loop.run_until_complete(self.working.__aexit__(None, None, None))
        self.companion.close()

    def end(self) -> None:
        self.shut()
        self.loop.close()

    def take(self, inbound: Inbound) -> list[Outgoing]:
        self.loop.run_until_complete(self.companion.take(inbound))
        return self.listen()

    def listen(self) -> list[Outgoing]:
        store = CompanionOutbox(self.companion, SAM.channel)
        return list(self.loop.run_until_complete(waiting_messages(store, self.clock.now())))


def typed(words: str, shown: list[Outgoing]) -> Event:
    """A tap on the button of that label, if it is shown, else the words."""
    buttons = [button for message in shown for row in message.buttons for button in row]
    data = next((button.data for button in buttons if button.label == words), None)
    return Tapped(data) if data else Typed(words)


def asked_in(session: Session) -> Ask | None:
    stop = BOOK[session.top.flow].stops[session.top.state] if session.stack else None
    return stop if isinstance(stop, Ask) else None


def at_load(session: Session) -> bool:
    """Whether a loaded movement is asked for."""
    ask = asked_in(session)
    return bool(ask and ask.caution and session.top.flow in LOADED)


def well(session: Session, shown: list[Outgoing]) -> Event:
    """A healthy, typical answer to what is asked."""
    stop = asked_in(session)
    if session.aside or stop is None:
        return Typed("no" if session.aside else "menu")
    if isinstance(stop.kind, Number):
        return Typed(f"{stop.kind.example_value:g} {stop.kind.unit}")
    wanted = f"{stop.kind.typical:g}" if isinstance(stop.kind.typical, float) else stop.kind.typical
    datas = [button.data for message in shown for row in message.buttons for button in row]
    answers = [data for data in datas if not data.rpartition(".")[2].startswith("!")]
    data = next((data for data in reversed(answers) if data.rpartition(".")[2] == wanted), answers[0] if answers else None)
    if stop.kind.options:
        return Tapped(data) if data else Typed("skip")
    return Typed("UTC" if session.top.flow == "welcome" else "a few words")


@cache
def begun(command: str) -> bytes:
    """The file of somebody who has been welcomed and, with a command, has gone on with it to where the body works."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "begun.sqlite"
        life = Life(path)
        shown: list[Outgoing] = []
        for words in WELCOME:
            shown = life.take(Inbound(SAM, typed(words, shown), name="sam"))
        shown = life.take(Inbound(SAM, Typed(command or "menu"), name="sam"))
        for _ in range(40 if command else 0):
            session = people.load_session(life.companion.db.conn, 1)
            ask = asked_in(session)
            if ask and ask.caution and session.top.flow == command:
                break
            shown = life.take(Inbound(SAM, well(session, shown), name="sam"))
        life.companion.db.conn.execute("pragma wal_checkpoint(truncate)")
        life.end()
        return path.read_bytes()


COUNTS_AGAIN = ("exists (select 1 from answers b where b.id = a.replaces and b.status = 'no_pain' and a.status = 'ok' and "
                "(julianday(a.at) - julianday(b.at)) * 86400 between 0.0005 and 0.0015)")
"""An answer that stands again where pain was taken back: nobody gave it anew."""


class Bot(RuleBasedStateMachine):
    """What may happen, and what must hold after each of it."""

    steps = 0
    seen: ClassVar[Counter[str]] = Counter()
    """What was come by, so that no rule holds only because nothing ever came to it."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.shown: list[Outgoing] = []
        self.buttons: list[Button] = []
        self.held: list[Inbound] = []
        self.last: Inbound | None = None
        self.number = 1000
        self.last_at = START
        self.asks: tuple[Say, ...] | None = None
        self.in_short = ""

    @initialize(command=st.sampled_from((None, None, "", *sorted(FLOOR_TESTS)[:2], *sorted(LOADED))))
    def begin(self, command: str | None) -> None:
        """A stranger, somebody who has just been welcomed, or somebody in the middle of a test."""
        path = self.folder / "bot.sqlite"
        if command is not None:
            path.write_bytes(begun(command))
        self.life = Life(path)
        self.turn(Typed("again" if command else "hello"))

    def teardown(self) -> None:
        if hasattr(self, "life"):
            self.life.end()
        shutil.rmtree(self.folder)

    # what a turn does -------------------------------------------------------------------------------------

    @property
    def db(self):
        return self.life.companion.db.conn

    @property
    def person(self) -> int | None:
        return people.person_at(self.db, SAM.channel, SAM.id)

    @property
    def session(self) -> Session:
        person = self.person
        if person is not None:
            return people.load_session(self.db, person)
        return self.life.companion.onboarding.at(SAM) or Session()

    @property
    def ask(self) -> Ask | None:
        return asked_in(self.session)

    def count(self, status: str) -> int:
        """Return how many answers there are; without those told ahead of their question, such as the place of a second pain."""
        return self.db.execute("select count(*) from answers a where status = ? and raw not like '%said before' and not "
                               f"{COUNTS_AGAIN}", (status,)).fetchone()[0]

    def turn(self, event: Event) -> None:
        self.number += 1
        self.deliver(Inbound(SAM, event, self.number, "sam"))

    def deliver(self, inbound: Inbound) -> None:
        Bot.steps += 1
        before, person = self.count("ok"), self.person
        self.shown, self.asks = self.life.take(inbound), None
        self.last, self.last_at = inbound, self.life.clock.at
        self.look(self.shown)
        if self.person == person:
            assert self.count("ok") - before in (0, 1), "one turn, two answers"
        self.prompt_is_the_state()
        self.note()

    def note(self) -> None:
        session = self.session
        ask, flows = asked_in(session), [frame.flow for frame in session.stack]
        seen = {"loaded": at_load(session), "floor": bool(ask and ask.caution and flows[-1] in FLOOR_TESTS),
                "hurt while loaded": any(frame.hurt and frame.flow in LOADED for frame in session.stack),
                "parked": bool(session.parked), "parked while loaded": any(stack[-1].flow in LOADED for stack in session.parked),
                "asked in between": session.aside is not None, "stranger": self.person is None,
                "three deep": len(flows) > 2, f"at {flows[-1] if flows else 'nothing'}": True}
        Bot.seen.update(name for name, there in seen.items() if there)

    def look(self, messages: list[Outgoing]) -> None:
        for message in messages:
            assert message.text.strip()
            assert len(message.text) <= LONGEST
            assert message.text != SORRY
            for button in (button for row in message.buttons for button in row):
                assert 1 <= len(button.data.encode()) <= 64
                assert button.label.strip() == button.label != ""
                self.buttons.append(button)

    def expected(self) -> tuple[Say, ...]:
        """What is asked, worked out once a turn."""
        if self.asks is None:
            session, person = self.session, self.person
            known = known_of(self.db, person, self.life.clock.now()) if person is not None and session.stack else None
            self.asks = prompt_now(BOOK, session, known) if known else ()
            self.in_short = stands_again(BOOK, session, known) if known and self.asks and not session.aside else ""
        return self.asks

    def prompt_is_the_state(self) -> None:
        expected = self.expected()
        if not expected or not self.shown:
            return
        last = next((message for message in reversed(self.shown) if message.text not in (GOOD, WAITS)), None)  # it stands as it was
        if last is None:
            return
        without_usual = re.sub(", often (half|fewer)$", "", expected[-1].text)  # left out where a line before it takes the room
        assert last.text.endswith((expected[-1].text, without_usual, self.in_short or without_usual)), (last.text, expected[-1].text)
        assert [[(tap.label, tap.data) for tap in row] for row in expected[-1].buttons] == [
            [(button.label, button.data) for button in row] for row in last.buttons if row[0].data not in (MORE_PAGES, "go.note_to_coach")]

    # what a person may do ---------------------------------------------------------------------------------

    @rule(which=st.integers(0, 11))
    def tap(self, which: int) -> None:
        """A button of the question that waits: an answer, skip, back or stop. An answer is kept exactly once."""
        taps = [tap for say in self.expected() for row in say.buttons for tap in row]
        if not taps:
            self.turn(Typed("menu"))
            return
        tap, ask, session, person = taps[which % len(taps)], self.ask, self.session, self.person
        value = tap.data.rpartition(".")[2]
        before, hurt = self.count("ok"), self.count("in_pain")
        self.turn(Tapped(tap.data))
        asked_first = self.session.aside is not None  # whether to go on, after hours away
        if asked_first:
            assert self.count("ok") == before
        elif ask and not session.aside and not value.startswith("!") and self.person == person:
            if value in ask.hurts:
                assert (self.count("ok"), self.count("in_pain")) == (before, hurt + 1), "what hurt is kept, and is no answer"
                return
            assert self.count("ok") == before + 1, (tap, [message.text for message in self.shown])
            row = self.db.execute("select run, raw, cast(value as text) from answers a where status = 'ok' "
                                  f"and not {COUNTS_AGAIN} order by id desc limit 1").fetchone()
            assert row[:2] == (session.top.run, tap.label)
            spelt_out = isinstance(ask.kind, Rest | LimitEnd | PastDay)  # of a part the whole plan is kept, of weeks and days ago the date
            assert row[2] in (value, f"{value}.0") or spelt_out, (tap, row)

    @rule(often=st.integers(1, 14))
    def answer_well(self, often: int) -> None:
        """Healthy, typical answers, to get somewhere."""
        for _ in range(often):
            taps = tuple(tuple(Button(tap.label, tap.data) for tap in row) for say in self.expected() for row in say.buttons)
            self.turn(well(self.session, [Outgoing(0, SAM, "", taps)]))

    @rule(command=st.sampled_from(sorted(LOADED | FLOOR_TESTS)), often=st.integers(6, 24))
    def begin_a_test(self, command: str, often: int) -> None:
        """Ask for a test and answer well, through the check and the warm-up if they come first."""
        self.turn(Typed(command))
        self.answer_well(often)

    @rule(size=st.floats(-5, 400, allow_nan=False), unit=st.sampled_from(("", " cm", "in", " kg", "°", " seconds", "cm but it hurt")))
    def type_a_number(self, size: float, unit: str) -> None:
        self.turn(Typed(f"{size:.1f}{unit}"))

    @rule(command=st.sampled_from(COMMANDS))
    def ask_for(self, command: str) -> None:
        self.turn(Typed(command))

    @rule(words=st.sampled_from(CONTROLS))
    def control(self, words: str) -> None:
        self.turn(Typed(words))

    @rule(text=st.one_of(st.sampled_from(NONSENSE), st.text(max_size=30)))
    def nonsense(self, text: str) -> None:
        self.turn(Typed(text))

    @rule(words=st.sampled_from(PAINS))
    def hurt(self, words: str) -> None:
        runs = self.db.execute("select count(*) from runs where flow = ?", (BOOK.pain,)).fetchone()[0]
        session = self.session
        free = self.ask is not None and self.ask.free
        hears = self.person is not None and not (session.stack and not BOOK[session.top.flow].flow.policy.hears_pain) and not free
        self.turn(Typed(words))
        if hears and not session.aside:
            now = self.db.execute("select count(*) from runs where flow = ?", (BOOK.pain,)).fetchone()[0]
            assert now == runs + 1 or self.session.aside is not None, words

    @precondition(lambda self: self.buttons)
    @rule(which=st.integers(0, 10_000))
    def old_button(self, which: int) -> None:
        """Any button ever shown. It only counts where it is one of the question that waits, or stops, or begins a flow."""
        button = self.buttons[which % len(self.buttons)]
        now = {tap.data for say in self.expected() for row in say.buttons for tap in row}
        before, person = self.count("ok"), self.person
        self.turn(Tapped(button.data))
        if person is not None and self.person == person and button.data not in now:
            assert self.count("ok") == before

    @rule(data=st.sampled_from(FORGED))
    def forged_button(self, data: str) -> None:
        before, person = self.count("ok"), self.person
        now = {tap.data for say in self.expected() for row in say.buttons for tap in row}
        self.turn(Tapped(data))
        if person is not None and data not in now:
            assert self.count("ok") == before

    @rule(text=st.sampled_from((*NONSENSE, *PAINS, "12", "yes", "stop")))
    def edit(self, text: str) -> None:
        before = self.count("ok")
        self.turn(Edited(text))
        assert self.count("ok") == before

    @rule(kind=st.sampled_from(("photo", "video", "voice", "sticker", "location", "other")),
          caption=st.sampled_from(("", "12", "ouch that hurt")))
    def send(self, kind: str, caption: str) -> None:
        self.turn(Sent(kind, "file-1", caption))

    # what a network and a machine may do ------------------------------------------------------------------

    @precondition(lambda self: self.last is not None and self.person is not None)
    @rule()
    def the_same_update_again(self) -> None:
        before, rows = self.session, self.db.execute("select count(*) from answers").fetchone()[0]
        assert self.last is not None
        if self.life.clock.at - self.last_at > timedelta(days=1):
            return  # Telegram gives an update again for 24 hours at most, and its numbers may start over after a week
        self.deliver(self.last)
        assert self.shown == []
        assert self.session == before
        assert self.db.execute("select count(*) from answers").fetchone()[0] == rows

    @rule(text=st.sampled_from((*CONTROLS, "11 cm", "ouch")))
    def an_update_is_late(self, text: str) -> None:
        self.number += 1
        self.held.append(Inbound(SAM, Typed(text), self.number, "sam"))

    @precondition(lambda self: self.held)
    @rule()
    def a_late_one_comes(self) -> None:
        self.deliver(self.held.pop())

    @rule(minutes=st.sampled_from((-90, 1, 30, 6 * 60, 26 * 60, 3 * 24 * 60, 40 * 24 * 60, 200 * 24 * 60)))
    def time_passes(self, minutes: int) -> None:
        self.life.clock.at += timedelta(minutes=minutes)
        self.asks = None
        before = self.session
        self.life.loop.run_until_complete(self.life.companion.sweep())
        self.look(self.life.listen())
        assert self.session == before

    @rule()
    def closed_and_opened(self) -> None:
        before, person = self.session, self.person
        self.life.shut()
        self.life.open()
        if person is not None:
            assert self.session == before

    # what must hold ---------------------------------------------------------------------------------------

    @invariant()
    def what_must_hold(self) -> None:
        assert not unsettled(self.session) or self.person is None
        assert self.db.execute("select count(*) from updates where failed is not null").fetchone()[0] == 0
        self.the_log_says_what_the_session_says()
        self.no_load_after_pain_before_a_passed_check()

    def the_log_says_what_the_session_says(self) -> None:
        """Each answer a run stands on is the last row of its key in the log, and there once. A reply in pain is no answer: the
        one before it stands."""
        session, person = self.session, self.person
        if person is None:
            return
        for frame in (*session.stack, *(frame for stack in session.parked for frame in stack)):
            stops = BOOK[frame.flow].stops
            renamed = any(isinstance(stop, Ask) and stop.log_as for stop in stops.values())
            for key, value in frame.got.items():
                if isinstance(stops.get(key), Ask) or (renamed and key not in stops and key.removesuffix("_by") not in stops):
                    rows = self.db.execute("select value, status from answers where person = ? and run = ? and key = ? "
                                           "and status <> 'in_pain' order by id desc", (person, frame.run, key)).fetchall()
                    assert rows[:1] == [(value, "ok")], (frame.flow, frame.run, key, value, rows)
        twice = self.db.execute("select b.id from answers a join answers b on b.person = a.person and b.run = a.run and b.key = a.key "
                                "and b.id > a.id and b.replaces is null").fetchall()
        assert twice == []

    def no_load_after_pain_before_a_passed_check(self) -> None:
        session, person = self.session, self.person
        if person is None or not at_load(session):
            return
        rows = self.db.execute("select f.value, f.id > coalesce((select max(p.id) from findings p where p.person = f.person and p.name = "
                               "'safety.level' and p.rule like 'something hurt%'), 0) from findings f where f.person = ? and f.name = "
                               "'safety.checked' order by f.id desc limit 1", (person,)).fetchall()
        assert rows == [("go", 1)], (session.top.flow, session.top.state, rows)


def test_nothing_a_lifter_a_network_or_a_machine_does_breaks_what_must_hold(told):
    Bot.steps = 0
    Bot.seen.clear()
    run_state_machine_as_test(Bot, settings=settings(max_examples=EXAMPLES))
    told(f"{Bot.steps} steps of the whole companion on a real file: {dict(sorted(Bot.seen.items()))}")
    assert Bot.steps >= STEPS_AT_LEAST
    assert {"loaded", "floor", "hurt while loaded", "parked while loaded", "asked in between", "stranger"} <= Bot.seen.keys()
