"""Three ways to live one script: on the engine, through the piped terminal, and over Telegram on loopback.

Each gives the script with what the bot really said that way, to be held against the file.
"""

from __future__ import annotations

import asyncio
import io
from collections.abc import Iterator, Sequence
from contextlib import AsyncExitStack
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from itertools import groupby
from pathlib import Path
from string import ascii_lowercase

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import ScriptClock, opening, running_writer
from companion.app.service import Companion
from companion.channels import terminal
from companion.channels.script import REPLY_TAKES, BotMessage, PersonInput, Restart, Script, ScriptLine, Wait, bot_message, event_of
from companion.channels.telegram import TelegramSettings, run_telegram
from companion.cli.play import play
from companion.port import Address, Button, Inbound, Outgoing, Sent, Typed
from tests.fakes.bot_api import TOKEN, BotApi, SentMessage
from tests.fakes.clock import FakeClock

GREETINGS = ("hi", "hello", "hey", "/start")
"""The terminal greets by itself where nothing is being asked, so a script does it in these words there."""

COUNTED = timedelta(minutes=10)
"""The longest timed hold, counted in and out."""


async def on_engine(wanted: Script, folder: Path) -> Script:
    """As ``companion play`` does it."""
    return await play(wanted, folder / "engine.sqlite", lambda line: None)


# the piped terminal ---------------------------------------------------------------------------------------


@dataclass
class Piped:
    """One script through ``companion chat`` with piped input; every wait and restart closes it and opens it again.

    ``typed`` are the lines that went in, ``came_out`` all that was printed, ``should`` what should have been.
    """

    wanted: Script
    database: Path
    real: list[ScriptLine] = field(default_factory=list)
    typed: list[str] = field(default_factory=list)
    came_out: str = ""
    should: str = ""
    here: str | None = None

    async def live(self) -> Script:
        self.clock = ScriptClock(self.wanted.begins)
        for who, lines in _sittings(self.wanted.lines):
            await self._sitting(who, list(lines))
        return Script(self.wanted.begins, tuple(self.real))

    async def _sitting(self, who: str, lines: list[ScriptLine]) -> None:
        self.screen, self.seen, self.hands = terminal.Display(), [], None
        companion, out = Companion(self.database, self.clock), io.StringIO()
        self.store = CompanionOutbox(companion, terminal.TERMINAL_CHANNEL)
        self.companion, companion.here = companion, self.here
        async with running_writer(companion):
            lines = self._until_said(lines)
            if any(isinstance(line, PersonInput) for line in lines):
                first = await opening(companion, Address(terminal.TERMINAL_CHANNEL, who))
                for message in first:
                    self._on_screen(message)
                if not first:
                    self._greet(lines)
                await terminal.chat_piped(self.take, self.sweep, self, self.clock, who, first, self._replies(lines), out)  # type: ignore[arg-type]
            else:
                await companion.sweep()
        companion.close()
        self.came_out += out.getvalue()

    def _until_said(self, lines: list[ScriptLine]) -> list[ScriptLine]:
        """What happens before anybody types: time passes, the bot is started again."""
        while lines and not isinstance(lines[0], PersonInput):
            match line := lines.pop(0):
                case BotMessage():
                    continue
                case Wait():
                    self.clock.at += line.time
            self.real.append(line)
        return lines

    def _greet(self, lines: list[ScriptLine]) -> None:
        greeting = lines.pop(0)
        assert isinstance(greeting, PersonInput)
        assert greeting.words in GREETINGS, f"nothing is being asked here, so {greeting.who} should say hello first"
        self.real.append(greeting)
        self.clock.at += REPLY_TAKES

    def _replies(self, lines: Sequence[ScriptLine]) -> Iterator[str]:
        """The lines to type: the number of an answer where the screen has one, else its words."""
        for line in lines:
            if isinstance(line, PersonInput):
                self.real.append(line)
                self.clock.at += REPLY_TAKES
                self.typed.append(self._as_typed(line))
                yield self.typed[-1] + "\n"
            elif not isinstance(line, BotMessage):
                self.real.append(line)

    def _as_typed(self, line: PersonInput) -> str:
        label = line.words.removeprefix("tap ")
        if label != line.words:
            numbers = [str(n) for n, button in enumerate(self.screen.choices, 1) if button.label == label]
            numbers += [letter for letter, button in zip(ascii_lowercase, self.screen.starts, strict=False) if button.label == label]
            return numbers[0] if numbers else label.lower()
        event = event_of(line, self.seen)
        self.hands = None if isinstance(event, Typed) else event  # a terminal can't send a video: put in its place
        return line.words

    def _on_screen(self, message: Outgoing) -> None:
        self.should += "\n".join([*self.screen.lines(message), "", ""])
        self.seen.append(message)

    # what a terminal needs of the companion and of its outbox, looked at on the way

    async def take(self, inbound: Inbound) -> None:
        if self.hands:
            inbound, self.hands = Inbound(inbound.address, self.hands, name=inbound.name), None
        await self.companion.take(inbound)

    async def sweep(self) -> int:
        return await self.companion.sweep()

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        return await self.store.due(now)

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        message = next(one for one in await self.store.due(at + COUNTED) if one.id == id)
        await self.store.mark_sent(id, at, message_id)
        self.real.append(bot_message(message))
        self._on_screen(message)
        if message.document:
            self.should = self.should.removesuffix("\n") + terminal.saved_document(message, Path.cwd()) + "\n\n"


def _sittings(lines: Sequence[ScriptLine]) -> Iterator[tuple[str, Iterator[ScriptLine]]]:
    """The script cut where the terminal is closed: at every wait and restart, and where somebody else speaks."""
    who = next(line.who for line in lines if isinstance(line, PersonInput))
    cut: list[tuple[tuple[int, str], ScriptLine]] = []
    number = 0
    for line in lines:
        if isinstance(line, PersonInput):
            who = line.who
        number += isinstance(line, Wait | Restart)
        cut.append(((number, who), line))
    for (_, speaker), group in groupby(cut, key=lambda pair: pair[0]):
        yield speaker, (line for _, line in group)


# Telegram -------------------------------------------------------------------------------------------------


class Marked(CompanionOutbox):
    """Telegram's outbox, which counts what was marked as sent and fails where a message was given up."""

    def __init__(self, companion: Companion, marked: int) -> None:
        super().__init__(companion, "telegram")
        self.marked, self.dropped, self._changed = marked, [], asyncio.Condition()  # type: ignore[var-annotated]

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None:
        await super().mark_dropped(id, at, reason)
        async with self._changed:
            self.dropped.append(reason)
            self._changed.notify_all()

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        await super().mark_sent(id, at, message_id)
        async with self._changed:
            self.marked += 1
            self._changed.notify_all()

    async def until_marked(self, count: int) -> None:
        async with asyncio.timeout(5), self._changed:
            await self._changed.wait_for(lambda: self.marked >= count or self.dropped)
        assert not self.dropped, f"Telegram did not take a message: {self.dropped[0]}"


@dataclass
class OverTelegram:
    """One script through python-telegram-bot itself, on loopback. Nothing waits in real time: the clock is moved on by
    the second that Telegram's pace asks for, and what that took is taken out of the script's next wait."""

    wanted: Script
    database: Path
    api: BotApi
    real: list[ScriptLine] = field(default_factory=list)
    chats: dict[str, int] = field(default_factory=dict)
    heard: int = 0

    async def live(self) -> Script:
        self.clock = FakeClock(self.wanted.begins)
        await self._start()
        try:
            await self._lines()
        finally:
            await self._stop()
        return Script(self.wanted.begins, tuple(self.real))

    async def _lines(self) -> None:
        at = self.wanted.begins
        for line in self.wanted.lines:
            if isinstance(line, BotMessage):
                continue
            self.real.append(line)
            match line:
                case PersonInput():
                    at += REPLY_TAKES
                    await self._move_to(at)
                    await self._do(line)
                    await self.api.until_confirmed()
                    await self._listen()
                case Wait():
                    at += line.time
                    await self._move_to(at)
                    await self.companion.sweep()
                    await self._listen()
                case Restart():
                    await self._stop()
                    await self._start()

    async def _start(self) -> None:
        self.companion, self.stop, self.work = Companion(self.database, self.clock), asyncio.Event(), AsyncExitStack()
        await self.work.enter_async_context(running_writer(self.companion))
        self.store = Marked(self.companion, self.heard)
        settings = TelegramSettings(TOKEN, self.api.url, patience=1)
        self.channel = asyncio.create_task(run_telegram(
            settings, self.companion.take, self.store, self.clock, self.stop,
            lambda wake: setattr(self.companion, "on_commit", lambda channel: wake())))
        polls = sum(call.method == "getUpdates" for call in self.api.calls)
        await self.api.until_called("getUpdates", polls + 1)

    async def _stop(self) -> None:
        self.stop.set()
        async with asyncio.timeout(5):
            await self.channel
        await self.work.aclose()
        self.companion.close()

    async def _move_to(self, at: datetime) -> None:
        """Jump there, as on a machine that slept: who waits meanwhile wakes once, not every minute of the weeks."""
        self.clock.at = max(self.clock.at, at)
        await self.clock.advance(0)

    async def _do(self, line: PersonInput) -> None:
        chat = self.chats.setdefault(line.who, 1001 + len(self.chats))
        verb, _, rest = line.words.partition(" ")
        if verb == "tap":
            await self.api.press(chat, rest)
        elif isinstance(event := event_of(line, ()), Sent):
            await self.api.send_kind(chat, event.kind, name=line.who)
        elif verb == "edit":
            await self.api.edit(chat, rest, name=line.who)
        else:
            await self.api.say(chat, line.words, name=line.who)

    async def _listen(self) -> None:
        """All that waits, each message as its time comes."""
        while True:
            while len(self.api.sent) > self.heard or await self.store.due(self.clock.now()):
                if self.store.marked == self.heard:
                    if len(self.api.sent) == self.heard:  # else it is there, and only its mark is on the way
                        await self.clock.advance(1)
                    await self.store.until_marked(self.heard + 1)
                for message in self.api.sent[self.heard:self.store.marked]:
                    self.real.append(bot_message(_as_outgoing(message)))
                    self.heard += 1
            following = await self.store.next_due(self.clock.now())
            if following is None or following - self.clock.now() > COUNTED:
                return
            await self._move_to(following)


def _as_outgoing(sent: SentMessage) -> Outgoing:
    buttons = tuple(tuple(Button(label, data) for label, data in row) for row in sent.buttons)
    return Outgoing(sent.message_id, Address("telegram", str(sent.chat_id)), sent.text, buttons,
                    document="{}" if sent.kind == "document" else None)
