"""A script lived over Telegram by a bot that is killed at one I/O call, is started again, and goes on.

The person is patient: they do the next thing of the script once all that waits has come, and say a thing once more only
where nothing at all came back, which may happen before they have agreed that anything is kept.
"""

from __future__ import annotations

import asyncio
import contextlib
import copy
import re
import shutil
import sqlite3
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from itertools import pairwise
from pathlib import Path
from typing import Any

from companion.channels.script import REPLY_TAKES, PersonInput, Restart, Script, ScriptLine, Wait, event_of
from companion.port import Sent
from companion.record import coaching, operator_requests
from tests.crash.codes import code_for
from tests.crash.kept import kept_in
from tests.crash.nursery import PATIENCE, Died, Nursery
from tests.crash.points import Point
from tests.fakes.bot_api import BotApi, SentMessage

_STANDIN = ("sent", "answered", "confirmed", "_next_update", "_next_message", "_next_query", "_files", "_allowed")
"""What the stand-in remembers between two starts of the bot."""

AT_ONCE = " / "
"""Between things that a person sends faster than the bot looks, so that they come in one batch."""

OPERATOR = "Operator"
"""Who asks things of the file by the command line, beside the bot."""

CODE = re.compile(r"{(\w+)}")
"""In what somebody says: the code that was made for that name."""

TRACE = b"64.25 kg"
"""What somebody says before they have everything erased."""

LIVES_MOST = 5
"""Starts of one bot within a part: one, and one more after being killed; more is a bot that can't get up."""


@dataclass(frozen=True)
class Stand:
    """How things stand between two parts: the bot is stopped and everything has arrived."""

    at: datetime
    database: Path
    standin: dict[str, Any] = field(repr=False)
    chats: dict[str, int] = field(default_factory=dict)


@dataclass(frozen=True)
class Part:
    """A part of a script, lived: what was said in it, what is kept after it, and which I/O calls it took."""

    heard: tuple[tuple[int, str], ...]
    """What came, in order; of what came to a stranger the last only, if they have agreed by it."""
    traces: tuple[str, ...]
    """The files that still held words of somebody who had erased everything, while the bot ran on."""
    kept: dict[str, Any] = field(repr=False)
    starting: tuple[Point, ...]
    working: tuple[Point, ...]
    stopping: tuple[Point, ...]
    said_again: int
    killed: bool
    after: Stand
    logged: tuple[int, ...]
    """Bytes of the write-ahead log when it began, and after each line."""


def parts_of(script: Script) -> list[list[ScriptLine]]:
    """The lines between restarts."""
    parts: list[list[ScriptLine]] = [[]]
    for line in script.lines:
        if isinstance(line, Restart):
            parts.append([])
        elif isinstance(line, PersonInput | Wait):
            parts[-1].append(line)
    return [part for part in parts if part]


class Living:
    """One part of a script being lived in a folder of its own, from how things stood before it."""

    def __init__(self, nursery: Nursery, before: Stand, folder: Path, die_at: Point | None, sabotage: str = "",
                 largest_file: int = 0, die_of_it: bool = False) -> None:
        folder.mkdir()
        self._nursery, self._folder, self._sabotage = nursery, folder, sabotage
        self._first = {"die_at": die_at, "largest_file": largest_file, "die_of_it": die_of_it}
        self._database, self._at, self._chats = folder / "c.sqlite", before.at, dict(before.chats)
        self._heard: list[tuple[int, str]] = []
        self._traces: list[str] = []
        self._said_again, self._killed, self._starts = 0, False, 0
        if before.database.exists():
            shutil.copy(before.database, self._database)
        self._standin = before.standin

    async def live(self, lines: Sequence[ScriptLine]) -> Part:
        """Live it to its end."""
        async with BotApi() as self._api:
            for name, value in copy.deepcopy(self._standin).items():
                setattr(self._api, name, value)
            try:
                await self._start()
                counts = [self._bot.counts]
                logged = [self._database.with_name("c.sqlite-wal").stat().st_size]
                for line in lines:
                    await self._line(line)
                    logged.append(self._database.with_name("c.sqlite-wal").stat().st_size)
                counts.append(self._bot.counts)
                await self._surely("stop")
                counts.append(self._bot.counts)
            finally:
                self._bot.let_go()
            assert not self._api.waiting
            standin = {name: copy.deepcopy(getattr(self._api, name)) for name in _STANDIN}
        after = Stand(self._at, self._database, standin, self._chats)
        points = [_between(before, then) for before, then in pairwise([{}, *counts])]
        return Part(tuple(self._heard), tuple(self._traces), kept_in(self._database), *points, self._said_again, self._killed, after,
                    tuple(logged))

    async def _line(self, line: ScriptLine) -> None:
        there, known = len(self._api.sent), self._known(line)
        if isinstance(line, PersonInput) and line.who == OPERATOR:
            await self._ask(line.words)
        elif isinstance(line, PersonInput):
            await self._say(line)
            while not self._api.sent[there:] or not (known or self._api.sent[-1].buttons):
                assert not known or not self._known(line), f"somebody who is known gets no answer to “{line.words}”"
                assert self._said_again < LIVES_MOST
                self._said_again += 1
                await self._say(line)
        elif isinstance(line, Wait):
            self._at += line.time
            await self._surely("move", to=self._at.isoformat())
            await self._surely("sweep")
            await self._surely("quiet")
        if isinstance(line, PersonInput) and known and not self._known(line):
            self._traces += [file.name for file in self._folder.glob("c.sqlite*") if TRACE in file.read_bytes()]
        if self._known(line):
            self._heard += [_shown(one) for one in self._api.sent[there if known else -1:]]

    def _known(self, line: ScriptLine) -> bool:
        """Whether the file knows who acts in this line; that time passes, everybody may know."""
        if not isinstance(line, PersonInput) or line.who == OPERATOR:
            return True
        with contextlib.closing(sqlite3.connect(f"file:{self._database}?mode=ro", uri=True)) as db:
            return db.execute("select 1 from addresses where address = ?", (str(self._chats.get(line.who)),)).fetchone() is not None

    async def _ask(self, words: str) -> None:
        """Ask of the file what ``companion coach add NAME`` and ``companion coach end NAME`` do, and let the bot look for it."""
        verb, name = words.removeprefix("coach ").split()
        code = {"invite": coaching.code_hash_of(code_for(name)), "end": ""}
        what = {"add": "invite", "end": "end"}[verb]
        self._at += REPLY_TAKES
        await self._surely("move", to=self._at.isoformat())
        assert not operator_requests.submit(self._database, operator_requests.OperatorRequest(what, name, code[what]), self._at)
        await self._surely("sweep")
        await self._surely("quiet")
        assert not operator_requests.pending(self._database)

    async def _say(self, line: PersonInput) -> None:
        self._at += REPLY_TAKES
        await self._surely("move", to=self._at.isoformat())
        for words in CODE.sub(lambda name: code_for(name[1]), line.words).split(AT_ONCE):
            await self._do(line.who, words)
        await self._confirmed()
        await self._surely("quiet")

    async def _do(self, who: str, words: str) -> None:
        chat = self._chats.setdefault(who, 1001 + len(self._chats))
        verb, _, rest = words.partition(" ")
        if verb == "tap":
            await self._api.press(chat, rest)
        elif verb == "edit":
            await self._api.edit(chat, rest, name=who)
        elif isinstance(event := event_of(PersonInput(who, words), ()), Sent):
            await self._api.send_kind(chat, event.kind, name=who)
        else:
            await self._api.say(chat, words, name=who)

    async def _confirmed(self) -> None:
        """Until every update is confirmed, with as many starts as that takes."""
        for _ in range(LIVES_MOST):
            confirmed = asyncio.ensure_future(self._api._until(lambda: not self._api.waiting, PATIENCE))
            dead = asyncio.ensure_future(self._bot.until_dead())
            await asyncio.wait([confirmed, dead], return_when=asyncio.FIRST_COMPLETED)
            await _put_off(dead)
            if confirmed.done():
                confirmed.result()
                return
            await _put_off(confirmed)
            await self._again()
        raise AssertionError("the updates are never confirmed")

    async def _surely(self, op: str, **more: Any) -> None:
        """Tell the bot what to do; where it is killed over it, start it again and tell it once more."""
        for _ in range(LIVES_MOST):
            with contextlib.suppress(Died):
                await self._bot.told(op, **more)
                self._at = max(self._at, datetime.fromisoformat(self._bot.now))
                return
            await self._again()
        raise AssertionError(f"{op} is never done")

    async def _start(self) -> None:
        """Start the bot, as often as it is killed in the course of it; it looks at once for what is due."""
        self._starts += 1
        assert self._starts <= LIVES_MOST
        self._bot = await self._nursery.bear(
            self._folder / "log.txt", kind="life", api=self._api.url, database=str(self._database), at=self._at.isoformat(),
            sabotage=self._sabotage, **({"die_at": None} if self._killed else self._first))
        await self._surely("sweep")
        await self._surely("quiet")

    async def _again(self) -> None:
        """It was killed: whatever it had written counts still, then it is started again."""
        self._bot.let_go()
        if not self._bot.point and not (self._first["largest_file"] and not self._killed):
            raise Died("", self._bot.log.read_text(encoding="utf-8"))
        self._killed = True
        self._at = max(self._at, datetime.fromisoformat(self._bot.now or self._at.isoformat()))
        async with asyncio.timeout(PATIENCE):
            while self._api._server._connections:
                await asyncio.gather(*self._api._server._connections, return_exceptions=True)
        await self._start()


def _shown(sent: SentMessage) -> tuple[int, str]:
    """A message as the person sees it, and who that is."""
    return sent.chat_id, " ".join([sent.text, *(f"[{label}]" for row in sent.buttons for label, _ in row)])


def _between(before: Mapping[str, int], then: Mapping[str, int]) -> tuple[Point, ...]:
    """The I/O calls made between two counts."""
    return tuple((name, number) for name in then for number in range(before.get(name, 0) + 1, then[name] + 1))


async def _put_off(waiting: asyncio.Future[None]) -> None:
    waiting.cancel()
    with contextlib.suppress(asyncio.CancelledError, AssertionError):
        await waiting
