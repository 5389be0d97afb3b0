"""Scripted conversations: a text format that a coach could write, parsed and written.

    # a comment
    begin 2026-03-02 18:05           (UTC, when it starts)

    Bot: Hello. I help you …
         another paragraph of the same message
         [Yes, keep them] [No]
    Mara: tap Yes, keep them
    Mara: 11 cm
    Mara: send sticker
    Mara: edit 12 cm
    wait 4 weeks
    restart

"Bot:" lines are the bot's messages; every other line is input. The first other name is the person's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from itertools import takewhile
from typing import Final

from companion.port import Button, Edited, Event, Outgoing, Sent, Tapped, Typed

_WAIT: Final = re.compile(r"wait (\d+) (second|minute|hour|day|week)s?")
_SPEAKS: Final = re.compile(r"([A-Z][\w' -]{0,30}): (.*)")
BOT: Final = "Bot"
REPLY_TAKES: Final = timedelta(seconds=1)
"""Time from each reply to the next, so that the log stays ordered even where a script does not wait."""


@dataclass(frozen=True, slots=True)
class PersonInput:
    """One input of a person, in the script's words."""

    who: str
    words: str


@dataclass(frozen=True, slots=True)
class BotMessage:
    """One message of the bot as a script shows it: paragraphs, then a line of buttons."""

    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Wait:
    """Let time pass."""

    time: timedelta
    words: str


@dataclass(frozen=True, slots=True)
class Restart:
    """Stop the bot and start it again."""


@dataclass(frozen=True, slots=True)
class Remark:
    """A comment or an empty line, kept when a script is rewritten."""

    text: str


ScriptLine = PersonInput | BotMessage | Wait | Restart | Remark


@dataclass(frozen=True, slots=True)
class Script:
    """A scripted conversation: its start in UTC, and its lines in order."""

    begins: datetime
    lines: tuple[ScriptLine, ...]


def parse(text: str) -> Script:
    """Parse a script. Raises ValueError with the number of the unreadable line."""
    begins: datetime | None = None
    lines: list[ScriptLine] = []
    for number, raw in enumerate(text.splitlines(), 1):
        words = raw.strip()
        if raw.startswith("     ") and words and lines and isinstance(lines[-1], BotMessage):
            lines[-1] = BotMessage((*lines[-1].lines, words))
        elif not words or words.startswith("#"):
            lines.append(Remark(words))
        elif words.startswith("begin "):
            begins = datetime.fromisoformat(words.removeprefix("begin ")).replace(tzinfo=UTC)
        elif words == "restart":
            lines.append(Restart())
        elif wait := _WAIT.fullmatch(words):
            lines.append(Wait(timedelta(**{f"{wait[2]}s": int(wait[1])}), words))
        elif spoken := _SPEAKS.fullmatch(words):
            lines.append(BotMessage((spoken[2],)) if spoken[1] == BOT else PersonInput(spoken[1], spoken[2]))
        else:
            raise ValueError(f"can't read line {number} of the script: {words[:40]}")
    if begins is None:
        raise ValueError("the script does not say when it begins; add a line such as: begin 2026-03-02 18:05")
    return Script(begins, tuple(lines))


def written(script: Script) -> str:
    """Return a script as text: leading comments, its start, then its lines."""
    front = list(takewhile(lambda line: isinstance(line, Remark) and line.text, script.lines))
    rows = [*(line.text for line in front if isinstance(line, Remark)), f"begin {script.begins:%Y-%m-%d %H:%M}"]
    for line in script.lines[len(front):]:
        match line:
            case PersonInput():
                rows.append(f"{line.who}: {line.words}")
            case BotMessage():
                rows.append(f"{BOT}: {line.lines[0]}")
                rows += [f"     {more}" for more in line.lines[1:]]
            case Wait():
                rows.append(line.words)
            case Restart():
                rows.append("restart")
            case Remark():
                rows.append(line.text)
    return "\n".join(rows) + "\n"


def bot_message(message: Outgoing) -> BotMessage:
    """Return a message as a script shows it."""
    lines = [part.strip() for part in message.text.split("\n") if part.strip()]
    if message.buttons:
        lines.append(" ".join(f"[{button.label}]" for row in message.buttons for button in row))
    if message.document:
        lines.append("(with a file)")
    return BotMessage(tuple(lines))


def event_of(said: PersonInput, last: Sequence[Outgoing]) -> Event:
    """Return the event of a person's line. "tap LABEL" means the latest button with that label among ``last``, the messages on screen.

    Raises ValueError if there is no such button.
    """
    verb, _, rest = said.words.partition(" ")
    if verb == "tap":
        for button in _buttons(last):
            if button.label == rest:
                return Tapped(button.data)
        raise ValueError(f"there is no button “{rest}” to tap")
    if verb == "send" and rest in ("photo", "video", "voice", "sticker", "document", "location"):
        return Sent(rest, "38.72,-9.14" if rest == "location" else f"{rest}-1")
    if verb == "edit":
        return Edited(rest)
    return Typed(said.words)


def _buttons(messages: Sequence[Outgoing]) -> Iterator[Button]:
    for message in reversed(messages):
        for row in message.buttons:
            yield from row
