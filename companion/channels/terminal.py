"""The terminal channel: an interactive chat, or one plain reply per line if the input is piped."""

from __future__ import annotations

import asyncio
import re
import shutil
import sys
import textwrap
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from string import ascii_lowercase
from typing import Final, TextIO

from companion.base.clock import Clock, first_of
from companion.channels.pictures import Pictures
from companion.port import DESCRIBE, Address, Button, Event, Inbound, Outgoing, Store, Take, Tapped, Typed

TERMINAL_CHANNEL: Final = "terminal"
_TIMED_MOST = timedelta(minutes=10)


Sweep = Callable[[], Awaitable[object]]
"""Decides on what is due by itself."""


@dataclass(slots=True)
class Display:
    """Buttons on screen: ``choices`` are picked by number, ``starts`` (flows to begin) by letter."""

    choices: list[Button] = field(default_factory=list)
    starts: list[Button] = field(default_factory=list)

    def lines(self, message: Outgoing) -> list[str]:
        """Return a message as lines of text: its words, numbered answers, then the control words it accepts."""
        flat = [button for row in message.buttons for button in row]
        answers = [button for button in flat if not _is_control(button) and not button.data.startswith("go.")]
        words = [button.label.lower() for button in flat if _is_control(button)]
        starts = [button for button in flat if button.data.startswith("go.")][:len(ascii_lowercase)]
        numeric = all(button.label.isdecimal() for button in answers)
        if starts:
            self.starts = starts
        else:
            self.choices = [] if numeric else answers
        lines = message.text.split("\n")
        if numeric and answers:
            lines.append(f"  {answers[0].label} to {answers[-1].label}")
        elif answers:
            lines += [f"  {n} {button.label}" for n, button in enumerate(answers, 1)]
        lines += [f"  {letter} {button.label}" for letter, button in zip(ascii_lowercase, starts, strict=False)]
        if words:
            lines.append(f"  ({' · '.join(words)})")
        return lines

    def event(self, reply: str) -> Event:
        """Return the event of a typed line: a number or letter taps a button, everything else is text. An answer of the terminal itself
        to a query, come late into the line, is no part of it."""
        reply = _REPORT.sub("", reply)
        reply = reply.encode("utf-16", "surrogatepass").decode("utf-16", "replace")  # replace bytes that were not text
        picked = reply.strip().rstrip(".)")
        if len(picked) == 1 and picked in ascii_lowercase[:len(self.starts)]:
            return Tapped(self.starts[ascii_lowercase.index(picked)].data)
        if picked.isdecimal() and len(picked) < 4 and 1 <= int(picked) <= len(self.choices):
            return Tapped(self.choices[int(picked) - 1].data)
        return Typed(reply)


_REPORT: Final = re.compile(r"(?:\x1b|\^\[)?\[?\?\d+(?:;\d*)*c|(?:\x1b|\^\[)?\[6;\d+;\d+t|"
                             r"(?:\x1b|\^\[)?_?Gi=\d+;(?:OK|E[A-Z]+:?[^\x1b]*)(?:\x1b|\^\[)?\\?")
"""A terminal's answers to the queries for pictures: device attributes ("?1;2c", ECMA-48's DA as xterm gives it), the size of its letters
("[6;20;10t", xterm's) and the graphics protocol's "_Gi=31;OK" (all from memory)."""


def _is_control(button: Button) -> bool:
    return button.data.rpartition(".")[2].startswith("!")


async def waiting_messages(store: Store, now: datetime) -> Sequence[Outgoing]:
    """Return all waiting messages in order, timed ones of the next minutes too, and mark each as sent."""
    found: list[Outgoing] = []
    while batch := await store.due(now + _TIMED_MOST):
        for message in batch:
            found.append(message)
            await store.mark_sent(message.id, now, "")
    return found


def saved_document(message: Outgoing, folder: Path) -> str:
    """Save a message's file in ``folder``; return the line that tells its path."""
    name = Path(message.document_name or "companion.txt")
    path = folder / f"{name.stem}-{abs(message.id)}{name.suffix}"
    path.write_text(message.document or "", encoding="utf-8")
    return f"  saved: {path}"


async def picture_of(message: Outgoing, pictures: Pictures | None) -> tuple[str, Path | None]:
    """Return a line describing a message's picture, and its file's path if saved; ("", None) without a picture."""
    if message.picture and message.picture.startswith("media:"):
        return "  (a video or photo: open it on Telegram)", None
    found = await pictures.find(message.picture.removeprefix(DESCRIBE), message.address) if pictures and message.picture else None
    if found is None:
        return "", None
    if (message.picture or "").startswith(DESCRIBE):
        return f"  {found.words}", None
    saved = await asyncio.to_thread(found.path.exists)  # False if the folder can't be written
    return (f"  {found.words} Saved: {found.path}", found.path) if saved else (f"  {found.words}", None)


async def chat_piped(take: Take, sweep: Sweep, store: Store, clock: Clock, name: str, opening: Sequence[Outgoing],
                     lines: TextIO, out: TextIO, pictures: Pictures | None = None,
                     meanwhile: Callable[[], object] = lambda: None) -> None:
    """Read one reply per line and print plain text until the input ends. Due reminders are offered after each reply.

    ``meanwhile`` runs in a thread once the first messages are printed.
    """
    screen, address = Display(), Address(TERMINAL_CHANNEL, name)

    async def show() -> None:
        """Print all waiting messages."""
        for message in await waiting_messages(store, clock.now()):
            print(*screen.lines(message), sep="\n", file=out)
            if line := (await picture_of(message, pictures))[0]:
                print(line, file=out)
            if message.document:
                print(saved_document(message, Path.cwd()), file=out)
            print(file=out, flush=True)

    for message in opening:
        print(*screen.lines(message), "", sep="\n", file=out, flush=True)
    if not opening:
        await take(Inbound(address, Typed("hello"), name=name))
    await sweep()
    await show()
    asyncio.get_running_loop().run_in_executor(None, meanwhile)
    for line in lines:
        reply = line.rstrip("\n")
        if reply.strip():
            await take(Inbound(address, screen.event(reply), name=name))
            await sweep()
            await show()


_BOLD, _DIM, _RESET = "\x1b[1m", "\x1b[2m", "\x1b[0m"


def drawn(lines: Sequence[str], width: int) -> str:
    """Return a message drawn as a chat bubble at the left, at most 64 columns wide."""
    inner = min(60, max(20, width - 6))
    rows = [part for line in lines for part in (textwrap.wrap(
        line, inner, subsequent_indent="    " if line.startswith("  ") else "", break_on_hyphens=False) or [""])]
    widest = max(map(len, rows), default=0)
    body = [f"│ {row:<{widest}} │" for row in rows]
    return "\n".join(["╭" + "─" * (widest + 2) + "╮", *body, "╰" + "─" * (widest + 2) + "╯"])


def caption(line: str, width: int) -> str:
    """Return a picture's words in lines as wide as the terminal, broken between words; a path longer than a line stays whole."""
    return "\n".join(textwrap.wrap(
        line.strip(), width, initial_indent="  ", subsequent_indent="  ", break_long_words=False, break_on_hyphens=False))


async def chat(take: Take, sweep: Sweep, store: Store, clock: Clock, name: str, opening: Sequence[Outgoing],
               woken: asyncio.Event, sweep_seconds: float, pictures: Pictures | None = None,
               meanwhile: Callable[[], object] = lambda: None) -> None:
    """Chat until the input ends: bubbles, numbered answers, countdowns, and reminders when due.

    ``woken`` is set when the outbox may have something new. ``meanwhile`` runs in a thread while the first messages are read.
    """
    from prompt_toolkit import PromptSession
    from prompt_toolkit.application import run_in_terminal
    from prompt_toolkit.formatted_text import ANSI
    from prompt_toolkit.patch_stdout import patch_stdout

    from companion.channels.terminal_images import ask_terminal, show

    ask_terminal()  # before anything reads what is typed
    screen, address, counting = Display(), Address(TERMINAL_CHANNEL, name), Countdown(clock)

    async def draw(message: Outgoing) -> None:
        """Print one message with its picture and its file."""
        print(drawn(screen.lines(message), shutil.get_terminal_size().columns))
        line, path = await picture_of(message, pictures)
        if line:
            print(f"{_DIM}{caption(line, shutil.get_terminal_size().columns)}{_RESET}")
        if path:
            sys.stdout.flush()
            await run_in_terminal(lambda: show(path, shutil.get_terminal_size().columns))
        if message.document:
            print(saved_document(message, Path.cwd()))

    async def deliver() -> None:
        """Print messages as they become due, forever."""
        while True:
            while batch := await store.due(clock.now()):
                for message in batch:
                    await draw(message)
                    await store.mark_sent(message.id, clock.now(), "")
            following = await store.next_due(clock.now())
            counting.until = following
            pause = sweep_seconds if following is None else (following - clock.now()).total_seconds()
            woken.clear()
            if pause > 0:
                await first_of(woken.wait(), clock.sleep(min(pause, sweep_seconds)))
                await sweep()

    session: PromptSession[str] = PromptSession()
    with patch_stdout(raw=True):
        for message in opening:
            await draw(message)
        if not opening:
            await take(Inbound(address, Typed("hello"), name=name))
        await sweep()
        delivering = asyncio.create_task(deliver())
        asyncio.get_running_loop().run_in_executor(None, meanwhile)
        try:
            while True:
                reply = await session.prompt_async(lambda: ANSI(f"{counting.left()}{_BOLD}you › {_RESET}"),
                                                   refresh_interval=0.5)
                if reply.strip():
                    await take(Inbound(address, screen.event(reply), name=name))
                    woken.set()
        except (EOFError, KeyboardInterrupt):
            print(f"{_DIM}Saved. Start again to go on from here.{_RESET}")
        finally:
            delivering.cancel()


@dataclass(slots=True)
class Countdown:
    """The seconds until the next timed message, shown in front of the prompt."""

    clock: Clock
    until: datetime | None = None

    def left(self) -> str:
        """Return "12 s " during a countdown, else ""."""
        if self.until is None:
            return ""
        seconds = (self.until - self.clock.now()).total_seconds()
        return f"{_DIM}{seconds:.0f} s {_RESET}" if 0 < seconds <= _TIMED_MOST.total_seconds() else ""


def is_interactive() -> bool:
    """True if both ends are a terminal."""
    return sys.stdin.isatty() and sys.stdout.isatty()


