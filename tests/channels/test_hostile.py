"""Whatever comes from outside ends in an answer or in a deliberate silence: never an exception, never another person's data.

One companion on a real file with two lifters, a coach of one of them, and strangers; updates of every kind, as JSON, each
with some of the Bot API's optional fields, forged data, forwarded buttons, hand-typed links and codes. Only
``synchronous`` is off: what the disk does is not asked here.
"""

from __future__ import annotations

import asyncio
import json
import os
import tempfile
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from functools import cache
from pathlib import Path
from time import perf_counter
from typing import Any, Final

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from telegram import Update

from companion.app.outbox_store import CompanionOutbox
from companion.app.rate_limit import ACCEPTED_MOST, SLOW_DOWN, RateLimit
from companion.app.run import ScriptClock, running_writer
from companion.app.service import SORRY, Companion
from companion.base.clock import SystemClock
from companion.channels.telegram import TelegramSettings, inbound_of, run_telegram
from companion.channels.telegram.poll import readable
from companion.channels.terminal import waiting_messages
from companion.conversation.flow import Ask
from companion.conversation.kinds import ReadingContext, Unclear
from companion.conversation.number_kinds import PainScore
from companion.port import Address, Edited, Inbound, Outgoing, Sent, Tapped, Typed
from companion.record import coaching, people
from flows.catalogue import BOOK
from tests.app.test_service import ABOUT, START, WELCOME
from tests.fakes.bot_api import TOKEN, BotApi
from tests.fakes.hostile import CHATS, chat_of, message_fields, message_kinds, message_of, tap_of, update_kinds
from tests.fakes.updates import BOT

WANTED: Final = 200_000 if os.environ.get("HYPOTHESIS_PROFILE") == "night" else 1_500
TOGETHER: Final = 50

SAM, MIA, KIM = 11, 12, 13
NAMES: Final = {SAM: "Quexsam Vondral", MIA: "Quexmia Oblard", KIM: "Kim", 21: "", 22: "\u202eeniM\x00", 23: "half \ud83d", 24: "{side} %s"}
MARKS: Final = {SAM: ("zorblattsam", "quexsam", "vondral"), MIA: ("fenwickmia", "quexmia", "oblard")}
"""A word in each lifter's log, and their name: nobody else may be shown it but who coaches them."""

COMMANDS: Final = sorted(BOOK.commands)
HUGE: Final = (
    "x" * 65_536, "\u202e" * 65_536, "🏋" * 16_384, "ouch " * 13_107, "not " * 16_000, "9" * 65_536, "\x00" * 65_536, "(" * 65_536)
TEXTS: Final = (
    "hello", "yes", "no", "menu", "stop", "back", "skip", "help", "again", "go on", "ok", "12", "11 cm", "175", "UTC", "0", "none",
    "my data", "my lifters", "my coaches", "invite a lifter", "digest", "how it went", "send a film", "caseload", "lifter 1", "ouch",
    "my back hurts", "", " ", "\n", "\u202eolleh", "\ud83d", "ok \udc9c", "\x00", "\x07\x1b[31m", "\u2066yes\u2069", "\u200b",
    "\ufeffyes", "٣", "½", "1e309", "nan", "-5", "{side}", "%s%n", "'; drop table persons; --", "<b>&amp;", "[x](tg://user?id=11)",
    "/start", "/start@other", "/start ", "/start 11", "/start go.lifter.1", "/start aaaabbbbcccc", "/start " + "A" * 64,
    "/start " + "A" * 65, "/START\u00a0x", "code", "code aaaa bbbb cccc", "code \u202e", "//", "/", "/lifter 1", "/my_data",
    "erase everything", "Quex", "lifter quex", "report 1", *HUGE)
FORGED: Final = (
    "", " ", "x", ".", "....", "go.", "go.nowhere", "go.lifter.1", "go.lifter.2", "go.lifter.-1", "go.lifter.1 or 1=1",
    "go.lifter_log.1-1", "go.lifter_log.2", "go.lifter_report.1", "go.lifter_report.2", "go.caseload", "go.my_data", "go.coach_act.1",
    "go.coach_act.2", "go.coach_note.1", "go.coach_note.2", "go.coach_note.\ud83d", "go.lifter.99999999999999999999",
    "go.squat_days.2026-13-45", "go.home.\x00", "home.1.pick.prime", "welcome.1.consent.yes", "welcome.99.consent.yes", "pain.1.bad.0",
    "safety_check.1.bladder.no", "a.b.c.!stop", "squat_look.1.plain_do.!skip", "go." + "x" * 61, "\u202e.1.a.b", "x" * 65_536,
    "." * 65_536)
FIELDS: Final = sorted(message_fields())
KINDS: Final = ("message",) * 140 + ("edited_message",) * 8 + ("callback_query",) * 160 + (*message_kinds(), *sorted(update_kinds())) * 2
CHAT_KINDS: Final = ("private",) * 60 + CHATS
USERS: Final = (SAM, SAM, SAM, MIA, MIA, KIM, KIM, KIM, 21, 22, 23, 24)

number = st.integers(0, 2**16 - 1)
PRYING: Final = ("data", "data", "copy", "copy", "my lifters", "my coaches", "digest", "mine", "code", "operator", "export")
words = st.one_of(st.sampled_from(TEXTS), st.sampled_from(COMMANDS), st.sampled_from(PRYING), st.text(max_size=12))
drawn = st.tuples(st.sampled_from(KINDS), st.sampled_from(USERS), st.sampled_from(CHAT_KINDS), words, number, number, st.sampled_from(
    (0, 0, 1, 1, 1, 2, 2, 3, 3, 5, 5, 8, 20, 70, 4_000, 90_000)))
"""Kind of update, user, kind of chat, text, two choices whose bits choose the rest, and the seconds that pass before it."""


class Gym:
    """The companion with its people, and what it has shown to whom."""

    def __init__(self, path: Path) -> None:
        self.loop, self.clock = asyncio.new_event_loop(), ScriptClock(START)
        self.companion = Companion(path, self.clock)
        self.companion.db.conn.execute("pragma synchronous=off")
        self.working = running_writer(self.companion)
        self.loop.run_until_complete(self.working.__aenter__())
        self.buttons: list[str] = []
        self.latest: dict[int, list[str]] = {}
        self.codes = ["", ""]
        self.number = 0

    def end(self) -> None:
        self.loop.run_until_complete(self.companion.background_done())
        self.loop.run_until_complete(self.working.__aexit__(None, None, None))
        self.companion.close()
        self.loop.close()

    @property
    def db(self):
        return self.companion.db.conn

    def take(self, inbound: Inbound) -> list[Outgoing]:
        """A turn, what it left to do beside it, and all that it said."""
        self.loop.run_until_complete(self.companion.take(inbound))
        if self.companion._background:
            self.loop.run_until_complete(self.companion.background_done())
        shown = list(self.loop.run_until_complete(waiting_messages(CompanionOutbox(self.companion, "telegram"), self.clock.now())))
        for message in shown:
            datas = [button.data for row in message.buttons for button in row]
            self.buttons += datas
            if datas:
                self.latest[int(message.address.id)] = datas
        return shown

    def say(self, who: int, *replies: str | Sent) -> list[Outgoing]:
        """Replies of somebody who means well; a label taps its button."""
        shown: list[Outgoing] = []
        for reply in replies:
            labels = {button.label: button.data for message in self.shown_to(who) for row in message.buttons for button in row}
            event = reply if isinstance(reply, Sent) else Tapped(labels[reply]) if reply in labels else Typed(reply)
            shown = self.take(Inbound(Address("telegram", str(who)), event, name=NAMES[who]))
            self.last = {**getattr(self, "last", {}), who: [one for one in shown if one.address.id == str(who)]}
        return shown

    def shown_to(self, who: int) -> list[Outgoing]:
        return getattr(self, "last", {}).get(who, [])

    def coached(self) -> dict[int, set[int]]:
        """Whose data each address may be shown: their own, and their lifters'."""
        at = {person: int(address) for address, person in self.db.execute("select address, person from addresses")}
        may = {address: {address} for address in at.values()}
        for lifter, coach in self.db.execute("select person, coach from coaches where until is null"):
            if lifter in at and coach in at:
                may[at[coach]].add(at[lifter])
        return may


@cache
def begun() -> tuple[bytes, tuple[str, ...], tuple[str, str]]:
    """The file with everybody in it, the buttons they were shown, and two codes that are good: a coach's and the operator's."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "gym.sqlite"
        gym = Gym(path)
        code = coaching.invite(gym.db, "coach", None, "Kim", START)
        gym.say(KIM, f"/start {code}", "Yes, keep it", "Yes", "UTC", "yes")
        for who in (SAM, MIA):
            gym.say(who, "hello", *WELCOME, *ABOUT, "send a film", Sent("video", "film"), MARKS[who][0])
        gym.say(SAM, f"code {_code(gym)}", "Yes, I agree")
        kim, sam, mia = (people.person_at(gym.db, "telegram", str(who)) for who in (KIM, SAM, MIA))
        assert coaching.sees(gym.db, kim, sam)
        assert not coaching.sees(gym.db, kim, mia)
        assert {MARKS[SAM][0], MARKS[MIA][0]} <= {row[0] for row in gym.db.execute("select raw from answers")}
        codes = _code(gym), coaching.invite(gym.db, "coach", None, "Oda", START)
        gym.db.execute("pragma wal_checkpoint(truncate)")
        gym.end()
        return path.read_bytes(), tuple(gym.buttons), codes


def _code(gym: Gym) -> str:
    said = gym.say(KIM, "invite a lifter", "Sam")
    return next(message.text for message in said if "“code " in message.text).split("“code ")[1].split("”")[0]


def update_of(gym: Gym, one: tuple[str, int, str, str, int, int, int]) -> dict[str, Any]:
    """An update as the Bot API would give it, out of what was drawn and what the bot has shown so far."""
    kind, who, chat_kind, text, first, second, _ = one
    gym.number += 1
    user = BOT if first % 29 == 7 else {"id": who, "is_bot": False, "first_name": NAMES[who]}
    if first % 5 == 1:
        user = {**user, "last_name": "", "username": "x", "language_code": "xx", "is_premium": True}
    chat = chat_of(chat_kind, SAM if first % 31 == 5 else who, NAMES[who])
    text = {"code": f"/start {gym.codes[0]}", "operator": f"/start {gym.codes[1]}", "mine": "yes"}.get(text, text)
    fields = message_fields()
    chosen = [FIELDS[(second + 7 * n) % len(FIELDS)] for n in range(first % 3 if second % 3 == 1 else 0)]
    extra = {name: fields[name] for name in chosen}
    if first % 67 == 9:
        extra = {name: fields[name] for n, name in enumerate(FIELDS) if (second * 2654435761 >> n % 32) & 1}
    if kind == "callback_query":
        mine, all_shown = gym.latest.get(who, []), gym.buttons
        data: str | None = FORGED[second % len(FORGED)]
        if first % 4 != 3 and mine:
            data = mine[second % len(mine)]
        elif first % 3 != 2 and all_shown:
            data = all_shown[second % len(all_shown)]
        elif first % 7 == 0:
            data = text if first % 2 else None
        on = ({}, {"message": message_of(BOT, chat, text="…", **extra)}, {"message": {**message_of(BOT, chat), "date": 0}},
              {"inline_message_id": "1"}, {"game_short_name": "x"})[(0, 1, 1, 1, 1, 1, 2, 3, 4)[first % 9]]
        inner: Any = tap_of(user, data, **on)
    elif kind in message_kinds():
        inner = message_of(user, chat, **extra)
        if second % 4 != 3 and "text" not in inner:
            inner["text"] = text
        elif second % 8:
            inner |= {name: fields[name] for name in FIELDS[second % len(FIELDS):][:1]} | {"caption": text}
        if second % 37 == 3:
            del inner["from"]
        if kind.startswith("edited"):
            inner["edit_date"] = 1_790_000_001
    else:
        inner = update_kinds()[kind]
    number = gym.number if second % 41 != 6 else max(1, gym.number - 1)
    return {"update_id": 10**9 + number, kind: inner}


def read(update: Mapping[str, Any]) -> Update:
    """As it comes over the wire, and as the poll reads it."""
    whole = json.loads(json.dumps(update))
    try:
        return Update.de_json(whole, None)
    except Exception:  # as the poll does: what can't be read whole
        return Update.de_json(dict(readable(whole)), None)


seen: Counter[str] = Counter()


def one_update(gym: Gym, one: tuple[str, int, str, str, int, int, int]) -> None:
    update = update_of(gym, one)
    kind = next(name for name in update if name != "update_id")
    seen["updates"] += 1
    seen[kind] += 1
    if kind in message_kinds():
        seen.update(f"with {name}" for name in update[kind] if name in message_fields())
    gym.clock.at += timedelta(seconds=one[-1])
    inbound = inbound_of(read(update))
    if inbound is None:
        seen["silence"] += 1
        return
    assert kind in ("message", "edited_message", "callback_query")
    who = int(inbound.address.id)
    assert who == one[1]
    twice = gym.db.execute("select 1 from updates where update_id = ?", (inbound.update_id,)).fetchone() is not None
    before = gym.coached()
    shown = gym.take(inbound)
    after = gym.coached()
    for message in shown:
        to = int(message.address.id)
        theirs = {to} | before.get(to, set()) | after.get(to, set())
        assert message.text != SORRY, (update, gym.db.execute("select failed from updates where failed is not null").fetchall())
        assert to == who or who in theirs or to in before.get(who, set()) | after.get(who, set()), (who, message)
        whole = "\n".join((message.text, message.document or "", message.document_name, *(
            button.label for row in message.buttons for button in row))).lower()
        for lifter, marks in MARKS.items():
            found = [mark for mark in marks if mark in whole]
            assert lifter in theirs or not found, (found, to, message)
            seen["own"] += bool(found and to == lifter)
            seen["coach's"] += bool(found and to != lifter)
    assert gym.db.execute("select failed from updates where failed is not null").fetchall() == []
    seen["slowed"] += any(message.text == SLOW_DOWN for message in shown)
    seen["answered"] += bool(shown)
    if not shown:
        assert gym.companion.rate_limit is not None
        hushed = gym.companion.rate_limit._counts[inbound.address].sent > ACCEPTED_MOST
        seen["twice" if twice else "hushed"] += 1
        assert twice or hushed, (inbound, "nothing was said")


@settings(max_examples=WANTED // TOGETHER)
@given(st.lists(drawn, min_size=TOGETHER, max_size=TOGETHER))
@example([(kind, SAM, "private", "hello", 0, 0, 1) for kind in sorted(set(KINDS))])  # so that each comes, whatever is drawn
@example([("message", KIM, "private", "lifter 1", 0, 0, 5)] * 2)  # and a coach sees what is their lifter's
def some(updates: list[tuple[str, int, str, str, int, int, int]]) -> None:
    file, buttons, codes = begun()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "gym.sqlite"
        path.write_bytes(file)
        gym = Gym(path)
        gym.companion.rate_limit = RateLimit()
        gym.buttons += buttons
        gym.codes = list(codes)
        try:
            for one in updates:
                one_update(gym, one)
        finally:
            gym.end()


def test_whatever_comes_is_answered_or_passed_over_and_shows_nobody_elses_data(told):
    seen.clear()
    begun()
    began = perf_counter()
    some()
    took = perf_counter() - began
    counts = {name: count for name, count in sorted(seen.items()) if not name.startswith("with ")}
    told(f"{seen['updates']} hostile updates in {took:.1f} s, {seen['updates'] / took:.0f} a second: {counts}")
    assert seen["updates"] >= WANTED
    assert {f"with {name}" for name in FIELDS} <= seen.keys()
    assert set(KINDS) <= seen.keys()
    assert min(seen[one] for one in ("own", "coach's", "answered", "silence", "hushed", "twice")) > 1


async def test_every_kind_of_update_and_every_field_goes_through_the_channel(tmp_path):
    user = {"id": 21, "is_bot": False, "first_name": "A"}
    clock, stop = SystemClock(), asyncio.Event()
    companion = Companion(tmp_path / "c.sqlite", clock)
    async with BotApi() as api, running_writer(companion):
        for kind in (*message_kinds(), *update_kinds()):
            chats = CHATS if kind in message_kinds() else ("private",)
            for chat in chats:
                await api.push({kind: message_of(user, chat_of(chat, 21, "A")) if kind in message_kinds() else update_kinds()[kind]})
        for name, value in message_fields().items():
            await api.push({"message": message_of(user, chat_of("private", 21, "A"), **{name: value})})
        channel = asyncio.create_task(run_telegram(TelegramSettings(TOKEN, api.url), companion.take, CompanionOutbox(companion, "telegram"),
                                                   clock, stop))
        last = await api.say(22, "hello")
        waits = asyncio.create_task(api._until(lambda: not api.waiting, 30))
        await asyncio.wait([channel, waits], return_when=asyncio.FIRST_COMPLETED)
        assert api.confirmed > last
        stop.set()
        await channel
        failed = companion.db.conn.execute("select failed from updates where failed is not null").fetchall()
    companion.close()
    assert failed == []
    assert {one.chat_id for one in api.sent} <= {21, 22, -1021, 77}


def test_a_stranger_may_ask_for_anything_by_name(tmp_path):
    gym = Gym(tmp_path / "gym.sqlite")
    try:
        for command in COMMANDS:
            assert SORRY not in [message.text for message in gym.say(21, "hello", command)], command
        assert gym.db.execute("select count(*) from persons").fetchone()[0] == 0
    finally:
        gym.end()


MANY: Final = "9" * 400


@pytest.mark.parametrize("text", [
    MANY, f"-{MANY * 12}", "1e400", f"{MANY} cm", f"{MANY}/3", f"3/{MANY}", "1/0", "nan", "inf", f"{MANY} to 3", "٣" * 400, "²" * 50,
    "½" * 400, f"2026-{MANY}-01", f"{MANY}:99pm", f"every {MANY} days", f"UTC+{MANY}"])
def test_no_question_stumbles_over_a_number_of_hundreds_of_digits(text):
    context = ReadingContext(now=START, facts=lambda: {"today": "2026-03-02"})
    for compiled in BOOK.flows.values():
        for stop in compiled.stops.values():
            if isinstance(stop, Ask):
                for strict in (False, True):
                    stop.kind.read(text, replace(context, strict=strict))


def test_a_pain_score_of_hundreds_of_digits_is_asked_again():
    assert isinstance(PainScore().read(MANY, ReadingContext()), Unclear)


def test_somebody_without_a_name_is_heard():
    message = message_of({"id": 1, "is_bot": False, "first_name": ""}, chat_of("private", 1, ""), text="ouch")
    inbound = inbound_of(read({"update_id": 1, "message": message}))
    assert inbound is not None
    assert (inbound.event, inbound.name) == (Typed("ouch"), "")


@pytest.mark.parametrize("kind", ["message", "callback_query"])
def test_a_private_chat_that_is_not_the_persons_own_is_passed_over(kind):
    message = message_of({"id": 1, "is_bot": False, "first_name": "A"}, chat_of("private", 2, "B"), text="yes")
    update = message if kind == "message" else tap_of(message["from"], "a.b", message=message)
    assert inbound_of(read({"update_id": 1, kind: update})) is None


def test_an_edit_is_an_event_of_its_own():
    update = {"update_id": 1, "edited_message": message_of({"id": 1, "is_bot": False, "first_name": "A"}, chat_of("private", 1, "A"),
                                                           text="12", edit_date=1_790_000_001)}
    inbound = inbound_of(read(update))
    assert inbound is not None
    assert inbound.event == Edited("12")
