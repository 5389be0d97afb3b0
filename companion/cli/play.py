"""Playing a script against the whole companion, with time passing as the script says."""

from __future__ import annotations

import asyncio
import contextlib
import shutil
import tempfile
from collections.abc import Callable
from difflib import SequenceMatcher
from pathlib import Path
from typing import Final

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import ScriptClock, running_writer
from companion.app.service import Companion
from companion.channels import script, terminal
from companion.port import Address, Inbound, Outgoing

READING_SECONDS_A_WORD: Final = 0.25
"""About 240 words a minute: our choice for a played script."""


async def play(lines: script.Script, database: Path, say: Callable[[script.ScriptLine], None]) -> script.Script:
    """Play a script on a database; returns the script with the messages the bot really sent.

    ``say`` is called with each line as it happens. Time passes where the script says so, and a moment with every reply.
    """
    clock = ScriptClock(lines.begins)
    real: list[script.ScriptLine] = []
    shown: list[Outgoing] = []
    companion = Companion(database, clock)
    work = contextlib.AsyncExitStack()
    await work.enter_async_context(running_writer(companion))

    def happened(line: script.ScriptLine) -> None:
        """Add a line to the real script."""
        real.append(line)
        say(line)

    async def listen() -> None:
        """Add the messages that are due."""
        for message in await terminal.waiting_messages(CompanionOutbox(companion, terminal.TERMINAL_CHANNEL), clock.now()):
            shown.append(message)
            happened(script.bot_message(message))

    for line in lines.lines:
        match line:
            case script.PersonInput():
                happened(line)
                clock.at += script.REPLY_TAKES
                event = script.event_of(line, [message for message in shown if message.address.id == line.who])
                await companion.take(Inbound(Address(terminal.TERMINAL_CHANNEL, line.who), event, name=line.who))
                await listen()
            case script.Wait():
                happened(line)
                clock.at += line.time
                await companion.sweep()
                await listen()
            case script.Restart():
                happened(line)
                await work.aclose()
                companion.close()
                companion = Companion(database, clock)
                work = contextlib.AsyncExitStack()
                await work.enter_async_context(running_writer(companion))
            case script.Remark():
                happened(line)
            case script.BotMessage():
                pass  # the expected message; the real ones are added by listen()
    await work.aclose()
    companion.close()
    return script.Script(lines.begins, tuple(real))


async def play_here(file: Path, echo: Callable[[str], object], pace: float, accept: bool) -> int:
    """Play a script file on a throw-away database and print it; returns the number of the bot's messages that differ.

    ``pace``: seconds per message, 0 for no waiting; ``accept``: write the real messages into the file. Raises ValueError where the
    file is not a script, or taps a button that does not exist.
    """
    wanted = script.parse(file.read_text(encoding="utf-8"))
    loop_lines: list[script.ScriptLine] = []
    with tempfile.TemporaryDirectory() as folder:
        real = await play(wanted, Path(folder) / "play.sqlite", loop_lines.append)
    for line in real.lines:
        await _print(line, echo, pace)
    if accept:
        file.write_text(script.written(real), encoding="utf-8")
    return differences(wanted, real)


def differences(wanted: script.Script, real: script.Script) -> int:
    """Return the number of the bot's messages that differ from the script."""
    there = [line for line in wanted.lines if isinstance(line, script.BotMessage)]
    here = [line for line in real.lines if isinstance(line, script.BotMessage)]
    changed = SequenceMatcher(None, there, here, autojunk=False).get_opcodes()
    return sum(max(b - a, d - c) for kind, a, b, c, d in changed if kind != "equal")


async def _print(line: script.ScriptLine, echo: Callable[[str], object], pace: float) -> None:
    width = min(64, shutil.get_terminal_size().columns - 2)
    match line:
        case script.BotMessage():
            echo(terminal.drawn(line.lines, width))
            await asyncio.sleep(pace * READING_SECONDS_A_WORD * len(" ".join(line.lines).split()))
        case script.PersonInput():
            echo(f"{line.who} › {line.words}")
            await asyncio.sleep(pace)
        case script.Wait():
            echo(f"… {line.words.removeprefix('wait ')} later …")
        case script.Restart():
            echo("… the bot is started again …")
        case script.Remark():
            echo(line.text)
