"""Who may do what: one table, and each cell of it tried on a real file.

Whoever must not reach a lifter reads none of the lifter's words and changes none of the lifter's rows. The tables walk the
book, the coach's views and acts and the command line, so that what is new and not in them fails.
"""

from __future__ import annotations

import sqlite3
from collections.abc import AsyncIterator, Iterator
from pathlib import Path
from typing import Final

import click
import pytest
from click.testing import CliRunner

from companion.app.onboarding import Onboarding
from companion.app.unsaved import UnsavedMessages
from companion.cli import main as cli
from companion.coach.lifter_messages import LIFTER_VIEWS
from companion.port import Address, Inbound, Tapped, Typed
from companion.record import coaching, operator_requests, people
from companion.screening.coach_acts import COACH_ACTS
from flows.catalogue import BOOK, CATALOGUE
from flows.coach_shared import COACHES_ONLY as COACHES_ONLY
from flows.signs import NOTHING_HEARD
from flows.wrong_tap import NOTHING_TO_UNDO
from tests.by_night import BY_NIGHT
from tests.coach.gym import Gym

STRANGER, OPERATOR = Address("terminal", "nobody yet"), Address("terminal", "the operator")
LIFTER, OTHER = Address("terminal", "samphire"), Address("terminal", "mia")
COACH, OTHER_COACH, FORMER = (Address("terminal", name) for name in ("kim", "oda", "fen"))
WHO: Final = {"stranger": STRANGER, "lifter": LIFTER, "other lifter": OTHER, "lifter's coach": COACH, "other coach": OTHER_COACH,
              "former coach": FORMER, "operator": OPERATOR}
"""The columns, in this order. The operator in the chat is a stranger like any other: what they may is the command line's."""
WORDS: Final = ("samphire", "quokka")
"""The lifter's name and something they answered; in nobody else's messages but where the table says so."""

EVERYBODY, LIFTERS, COACHES = "-+++++-", "-++----", "---+++-"
THE_LIFTER, THE_COACH, BOTH = "-+-----", "---+---", "-+-+---"

OPENS: Final = {
    **dict.fromkeys(("about_you", "begin_again", "changes", "coach_welcome", "consent_again", "crisis", "erase", "export", "home",
                     "link", "link_request", "my_data", "next_test", "outcome", "over_load", "pain", "progress", "recount",
                     "welcome", "why", "why_told"), EVERYBODY),
    "my_coaches": EVERYBODY, "signs": "-------", "wrong_tap": "-------",
    **dict.fromkeys((
        "arms_forward_squat", "bar", "best_squat", "bird_dog", "clearance", "depth_estimate", "depth_step", "film", "film_measure",
        "full_screen",
        "hand_on_back_squat",
        "hinge_to_squat", "hip_fold", "knee_to_wall", "leave_coach", "leg_raise", "limit_over", "limits", "morning", "since_pain",
        "note_to_coach", "pause_squat", "prime", "referral",
        "reminder_times", "reminders", "retest", "retest_later", "rock_back", "safety_check", "screen", "setup_morning", "share_outcomes",
        "share_trial",
        "squat_after",
        "age", "squat_day", "squat_days", "squat_look", "squats_told", "time_off", "trial", "warm_up", "whereabouts"), LIFTERS),
    **dict.fromkeys(("alert_seen", "caseload", "compare", "coach_act", "coach_note", "digest", "find_lifter", "groups", "invite_lifter",
                     "lifter", "lifter_log", "lifter_named", "lifter_report", "since"), COACHES),
}
"""Who may begin each flow for themselves: nobody the questions about signs, which begin where one was
heard. A coach who has not been welcomed as a lifter is asked that first."""

REACHES: Final = {
    **dict.fromkeys(OPENS, "-------"),
    **dict.fromkeys(("alert_seen", "coach_act", "coach_note", "lifter", "lifter_log", "lifter_report", "compare"), THE_COACH),
    "caseload": THE_COACH,
}
"""Who reaches the lifter by the button of a flow that carries the lifter's number; the lifter's own column stands in OPENS."""

PAST_THE_BUTTON: Final = {
    **{f"view {what or 'summary'}": (f"go.lifter.{{lifter}}{what and '-'}{what}", (), THE_COACH) for what in LIFTER_VIEWS},
    "chart": ("go.lifter.{lifter}-chart_pain", (), THE_COACH),
    "log, second page": ("go.lifter_log.{lifter}-1", (), THE_COACH),
    "note": ("go.coach_note.{lifter}", ("lighter today", "Send it"), THE_COACH),
    "act pin_depth": ("go.coach_act.{lifter}-pin_depth", ("Below parallel", "moves well", "Eight weeks"), THE_COACH),
    "act pin_load": ("go.coach_act.{lifter}-pin_load", ("60", "for now", "Eight weeks"), THE_COACH),
    "act raise_load": ("go.coach_act.{lifter}-raise_load", ("60", "moves well", "Eight weeks"), THE_COACH),
    "act end_retest": ("go.coach_act.{lifter}-end_retest", (), THE_COACH),
    "act pin_setup": ("go.coach_act.{lifter}-pin_setup", ("Three seconds down", "rounds later", "Eight weeks"), THE_COACH),
    "act drill": ("go.coach_act.{lifter}-drill", ("Calf: knee over toes", "stiff", "Eight weeks"), THE_COACH),
    "act ask_for": ("go.coach_act.{lifter}-ask_for", ("A film of their squat",), THE_COACH),
    "act retest": ("go.coach_act.{lifter}-retest", ("2026-03-20",), THE_COACH),
    "act overrule": ("go.coach_act.{lifter}-overrule", ("Length", "Open", "seen in person"), THE_COACH),
    "act unreviewed": ("go.coach_act.{lifter}-unreviewed-{review}", (), THE_COACH),
    "act lift_referral": ("go.coach_act.{lifter}-lift_referral", ("Today", "seen and fine"), THE_COACH),
    "act group": ("go.coach_act.{lifter}-group", ("Tuesday 6 pm",), THE_COACH),
    "act hand_over": ("go.coach_act.{lifter}-hand_over", ("abcd efgh jkmn", "moving away"), THE_COACH),
    "act guess": ("go.coach_act.{lifter}-guess-better", (), THE_COACH),
    "act private": ("go.coach_act.{lifter}-private", ("tired lately",), THE_COACH),
    "act settle": ("go.coach_act.{lifter}-settle-pin_load-{coach}", (), THE_COACH),
    "act put_aside": ("go.coach_act.{lifter}-put_aside", ("Tomorrow",), THE_COACH),
    "found by name": ("go.find_lifter.samphire", (), THE_COACH),
    "asked about by name": ("go.lifter_named.how is samphire", (), THE_COACH),
    "alert seen": ("go.alert_seen.{lifter}-1", (), THE_COACH),
    "act reviewed": ("go.coach_act.{lifter}-reviewed", (), THE_COACH),
    "my coaches": ("go.my_coaches", (), THE_LIFTER),
    "write back": ("go.note_to_coach.{coach}", ("all well",), THE_LIFTER),
    "leave the coach": ("go.leave_coach.{coach}", (), THE_LIFTER),
    "outcomes counted": ("go.share_outcomes", ("Yes",), THE_LIFTER),
    "trial pooled": ("go.share_trial", ("Yes",), THE_LIFTER),
    "a copy": ("go.my_data", ("A copy of it all",), THE_LIFTER),
}
"""What lies behind a button: its payload, what is answered then, and who reaches the lifter so."""


class House(Gym):
    """Everybody there is, as they were at the beginning of each cell."""

    async def furnish(self) -> None:
        self.before = sqlite3.connect(":memory:")
        for coach in (COACH, OTHER_COACH, FORMER):
            await self.coach(coach)
        for lifter in (LIFTER, OTHER):
            await self.lifter(lifter)
        await self.say("write to my coach", "quokka", who=LIFTER)
        for coach, lifter in ((COACH, LIFTER), (FORMER, LIFTER), (OTHER_COACH, OTHER)):
            await self.say(f"code {await self.code_for('a lifter', coach)}", "Yes, I agree", who=lifter)
        self.numbers = {"lifter": self.id_of(LIFTER), "coach": self.id_of(COACH)}
        self.numbers["review"] = coaching.audit_act(self.db, self.numbers["lifter"], self.numbers["coach"], "reviewed", "", "",
                                                   self.clock.now())
        await self.tap(LIFTER, f"go.leave_coach.{self.id_of(FORMER)}")
        for who in WHO.values():
            await self.listen(who)
        self.db.backup(self.before)

    def as_before(self) -> None:
        self.before.backup(self.db)
        self.companion.onboarding = Onboarding(CATALOGUE)  # as a restart does
        self.companion.unsaved = UnsavedMessages()
        self.shown.clear()

    async def tries(self, who: Address, data: str, *replies: str) -> str:
        """Tap, answer, wait for what is made beside the loop; gives all that was said to them, files included."""
        self.as_before()
        await self.companion.take(Inbound(who, Tapped(data), name=who.id))
        await self.listen(who)
        if replies:
            await self.say(*replies, who=who)
        await self.companion.background_done()
        await self.listen(who)
        return "\n".join(f"{message.text} {message.buttons} {message.picture} {message.document}"
                         for message in self.shown if message.address == who).casefold()

    def rows(self) -> list[object]:
        """Every row that is of the lifter, in every table that names people."""
        return [row for table, column in naming_people(self.db)
                for row in self.db.execute(f"select '{table}', * from [{table}] where [{column}] = ?", (self.numbers["lifter"],))]

    async def opened(self, who: Address, flow: str) -> bool:
        """Whether a flow begins for somebody: they are known, no coach is wanted, and no welcome comes first."""
        heard = await self.tries(who, f"go.{flow}")
        person = people.person_at(self.db, who.channel, who.id)
        if person is None or any(gate.say.casefold() in heard for gate in (COACHES_ONLY, NOTHING_HEARD, NOTHING_TO_UNDO)):
            return False
        frames = people.load_session(self.db, person).stack
        return flow == "welcome" or all(frame.flow != "welcome" for frame in frames)

    async def reached(self, who: Address, data: str, *replies: str) -> bool:
        """Whether somebody read words of the lifter or changed a row of theirs."""
        self.as_before()
        before = self.rows()
        heard = await self.tries(who, data.format(**self.numbers), *replies)
        return self.rows() != before or any(word in heard for word in WORDS)


def naming_people(db: sqlite3.Connection) -> Iterator[tuple[str, str]]:
    """Each table and column that names a person."""
    yield "persons", "id"
    for (table,) in db.execute("select name from sqlite_master where type = 'table'").fetchall():
        yield from ((table, row[3]) for row in db.execute(f"pragma foreign_key_list([{table}])") if row[2] == "persons")


@pytest.fixture
async def house(tmp_path: Path) -> AsyncIterator[House]:
    one = House(tmp_path / "companion.sqlite")
    await one.start()
    await one.furnish()
    yield one
    await one.stop()


def cells(row: str) -> Iterator[tuple[str, Address, bool]]:
    return ((role, who, mark == "+") for (role, who), mark in zip(WHO.items(), row, strict=True))


def test_the_tables_leave_nothing_out():
    assert set(OPENS) == set(REACHES) == set(BOOK.flows)
    assert {name for name in PAST_THE_BUTTON if name.startswith("act ")} == {
        f"act {act.name}" for act in COACH_ACTS.values() if act.flow == "coach_act"}


async def test_each_flow_begins_for_whom_the_table_says(house):
    assert [(flow, role) for flow, row in OPENS.items() for role, who, may in cells(row) if await house.opened(who, flow) != may] == []


async def test_a_button_with_the_lifters_number_reaches_them_for_whom_the_table_says(house):
    assert [(flow, role) for flow, row in REACHES.items() for role, who, may in cells(row)
            if who != LIFTER and await house.reached(who, f"go.{flow}.{{lifter}}") != may] == []


async def test_what_lies_behind_a_button_is_for_whom_the_table_says(house):
    assert [(name, role) for name, (data, replies, row) in PAST_THE_BUTTON.items() for role, who, may in cells(row)
            if (who != LIFTER or may) and await house.reached(who, data, *replies) != may] == []


async def test_a_lifter_gets_nothing_of_a_coach_by_a_coachs_buttons(house):
    number = house.numbers["lifter"]
    for flow in (flow for flow, row in OPENS.items() if row == COACHES):
        for data in (f"go.{flow}", f"go.{flow}.{number}"):
            await house.tries(LIFTER, data)
            assert {message.text for message in house.shown if message.address == LIFTER} == {COACHES_ONLY.say}
            assert house.count("looks") == house.before.execute("select count(*) from looks").fetchone()[0]


async def test_what_is_typed_reaches_nobody_else(house):
    typed = {word for compiled in BOOK.flows.values() for word in (compiled.flow.name, compiled.flow.title, *(compiled.flow.command or ()))}
    typed |= {f"{flow} {house.numbers['lifter']}" for flow in OPENS}
    typed |= {"samphire", "lifter samphire", "find samphire", "show me samphire", "companion coach add mia"}
    wrong = []
    every = (OTHER_COACH, STRANGER, OPERATOR, OTHER, FORMER)
    for n, words in enumerate(sorted(typed)):
        for who in every if BY_NIGHT else (OTHER_COACH, every[1 + n % 4]):  # by day another coach and one of the rest in turn
            house.as_before()
            before = house.rows()
            await house.companion.take(Inbound(who, Typed(words), name=who.id))
            await house.listen(who)
            if house.rows() != before or any(word in f"{message.text} {message.document}" for message in house.shown for word in WORDS):
                wrong.append((who.id, words))
    assert wrong == []


async def test_erasing_takes_only_who_asked_for_it(house):
    for role, who in WHO.items():
        await house.tries(who, "go.my_data", "Erase it all", "Yes, erase it all")
        left = house.db.execute("select count(*) from answers where person = ?", (house.numbers["lifter"],)).fetchone()[0]
        assert (left == 0) == (who == LIFTER), role


async def test_a_lifter_writes_to_no_coach_but_their_own(house):
    await house.tries(OTHER, f"go.note_to_coach.{house.numbers['coach']}", "hello from mia")
    assert not any("hello from mia" in text for text in house.heard(COACH))
    assert any("hello from mia" in text for text in house.heard(OTHER_COACH))


# the command line -------------------------------------------------------------------------------------------

NOTHING, READS, ASKS, LOCK = "touches no database", "reads it", "asks the running bot to change it", "wants it alone"

COMMANDS: Final = {
    "chat": (LOCK, ()), "run": (LOCK, ()),
    "play": (NOTHING, ("demo_scripts/refusal.txt", "--fast")), "flows": (NOTHING, ("welcome",)), "pictures": (NOTHING, ()),
    "log": (READS, ("--as", "samphire")), "export": (READS, ("samphire",)), "report": (READS, ("samphire", "--out", "{out}")),
    "evidence": (READS, ()), "cards": (NOTHING, ("--out", "{out}")), "film": (NOTHING, ("{out}",)),
    "doctor": (READS, ()), "backup": (READS, ("{backup}",)), "restore": (LOCK, ("{backup}", "--yes")), "coach list": (READS, ()),
    "coach add": (ASKS, ("Una",)), "coach end": (ASKS, ("Kim",)),
}
"""Each command is the operator's, who can read the file; what it needs of the file, and what to call it with."""


def commands(group: click.Group, before: str = "") -> Iterator[str]:
    for name, command in group.commands.items():
        if isinstance(command, click.Group):
            yield from commands(command, f"{name} ")
        else:
            yield before + name


def test_each_command_is_in_the_table():
    assert set(commands(cli.main)) == set(COMMANDS)


async def test_each_command_does_to_a_running_bots_file_what_the_table_says(house, tmp_path, monkeypatch):
    monkeypatch.setenv("COMPANION_TOKEN", "4242:stand-in_token_of_no_bot_at_all_0123")
    monkeypatch.setenv("COMPANION_DATABASE", str(house.path))
    monkeypatch.setenv("COMPANION_BACKUPS", str(tmp_path / "backups"))
    for name, (needs, more) in COMMANDS.items():
        if needs == NOTHING:
            continue
        house.as_before()
        before = "\n".join(house.db.iterdump())
        words = [one.format(out=tmp_path / "report.html", backup=tmp_path / "backup.sqlite") for one in more]
        result = CliRunner().invoke(cli.main, [*name.split(), *words], input="")
        assert "\n".join(house.db.iterdump()) == before, (name, result.output)
        left = operator_requests.pending(house.path)
        await house.companion.sweep()
        assert bool(left) == ("\n".join(house.db.iterdump()) != before) == (needs == ASKS), (name, result.output)
        assert (result.exit_code == 2) == ("stop it first" in result.output) == (needs == LOCK), (name, result.output)
