"""Every script of demo_scripts/ lived three ways: each time the bot says, word for word, what the file has."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from calendar import month_name
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner

from companion.channels.script import BotMessage, PersonInput, Remark, Script, ScriptLine, Wait, parse, written
from companion.cli.main import main
from companion.cli.play import differences
from tests.fakes.bot_api import BotApi
from tests.scripts.ways import OverTelegram, Piped, on_engine

SCRIPTS = sorted((Path(__file__).parents[2] / "demo_scripts").glob("*.txt"))
SHORT = next(file for file in SCRIPTS if file.name == "short_screen.txt")
every_script = pytest.mark.parametrize("file", SCRIPTS, ids=[file.stem for file in SCRIPTS])

ESCAPE = "\x1b"
SAYS_WHEN = re.compile(r"\b\d\d:\d\d\b|\b(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day\b(?: \d+ \w+)?|"
                       rf"\b\d+ (?:{'|'.join(month_name[1:])})\b")


LOST_MOST = 2
"""Replies in a row that the bot may fail to understand."""


def pairwise_of(script: Script) -> list[tuple[BotMessage, ScriptLine]]:
    """Each of the bot's messages with what comes before it."""
    lines = [line for line in script.lines if not isinstance(line, Remark)]
    return [(line, before) for before, line in pairwise(lines) if isinstance(line, BotMessage)]


def wanted_of(file: Path) -> Script:
    return parse(file.read_text(encoding="utf-8"))


@every_script
async def test_on_the_engine_the_bot_says_what_the_script_has(file: Path, tmp_path: Path) -> None:
    assert written(await on_engine(wanted_of(file), tmp_path)) == file.read_text(encoding="utf-8")


@every_script
async def test_through_the_piped_terminal_the_bot_says_what_the_script_has(
        file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)  # where a file that somebody asked for is saved
    piped = Piped(wanted_of(file), tmp_path / "terminal.sqlite")
    assert written(await piped.live()) == file.read_text(encoding="utf-8")
    assert piped.came_out == piped.should
    assert ESCAPE not in piped.came_out


@every_script
async def test_over_telegram_the_bot_says_what_the_script_has(file: Path, tmp_path: Path) -> None:
    async with BotApi() as api:
        over = OverTelegram(wanted_of(file), tmp_path / "telegram.sqlite", api)
        assert written(await over.live()) == file.read_text(encoding="utf-8")
        assert {message.chat_id for message in api.sent} == set(over.chats.values())


@every_script
def test_a_script_says_in_its_first_line_what_it_shows(file: Path) -> None:
    assert re.match(r"# \w.{20,}\.\nbegin ", file.read_text(encoding="utf-8"))


@every_script
def test_a_script_has_not_run_off_its_rails(file: Path) -> None:
    """Else ``--accept`` after a change of a flow would keep a conversation in which nobody is understood."""
    first_words = [line.lines[0] for line, before in pairwise_of(wanted_of(file)) if not isinstance(before, BotMessage)]
    lost = [words.startswith(("I could not match", "That button", "I need", "You are in the middle")) for words in first_words]
    assert not any(all(lost[at:at + LOST_MOST + 1]) for at in range(len(lost) - LOST_MOST))


async def test_the_installed_command_piped_says_the_same_in_plain_text(tmp_path: Path) -> None:
    """A process of its own, on the clock of this machine: times and dates are left out of the comparison."""
    wanted = wanted_of(SHORT)
    lines = list(wanted.lines[:next(n for n, line in enumerate(wanted.lines) if isinstance(line, Wait))])
    city = next(n for n, line in enumerate(lines) if isinstance(line, PersonInput) and line.words == "Porto")
    right = next(n for n, line in enumerate(lines) if n > city and isinstance(line, PersonInput))
    first_day = Script(wanted.begins, tuple(line for n, line in enumerate(lines) if n not in (city, right)))  # the machine tells its zone
    piped = Piped(first_day, tmp_path / "here.sqlite", here="UTC")
    await piped.live()
    assert "Which city" not in piped.came_out
    sendable = piped.typed[:next((n for n, line in enumerate(piped.typed) if line.startswith("send ")), len(piped.typed))]
    done = subprocess.run(
        [sys.executable, "-c", "from companion.cli.main import main; main()", "chat", "--database",
         str(tmp_path / "there.sqlite"), "--as", "Mara"], input="".join(f"{line}\n" for line in sendable),
        capture_output=True, text=True, timeout=60, check=False, cwd=tmp_path, env={
            "PATH": os.environ["PATH"], "PYTHONPATH": str(SHORT.parents[1]), "PYTHONIOENCODING": "utf-8"})
    assert (done.returncode, done.stderr) == (0, "")
    assert ESCAPE not in done.stdout
    there = [line for line in SAYS_WHEN.sub("…", done.stdout).splitlines() if not line.startswith("  Picture: ")]
    there = there[:next((n for n, line in enumerate(there) if line.startswith("Bird dog: ")), len(there))]  # that one may ask for a film
    assert len(there) > 200
    assert there == SAYS_WHEN.sub("…", piped.came_out).splitlines()[:len(there)]


# the check itself -----------------------------------------------------------------------------------------


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of a script that passes."""
    file = tmp_path / "copy.txt"
    file.write_text(SHORT.read_text(encoding="utf-8"), encoding="utf-8")
    return file


def played(file: Path, *options: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, ["play", "--fast", *options, str(file)])
    return done.exit_code, done.output


def test_a_script_that_fits_is_played_without_complaint(copy: Path) -> None:
    code, said = played(copy)
    assert code == 0
    assert "of the bot's messages differ" not in said


@pytest.mark.parametrize("breaking", [
    lambda text: text.replace("May I keep them?", "May I keep those?"),
    lambda text: text.replace("[Yes, keep them]", "[Yes]"),
    lambda text: re.sub(r"Bot: Are you 18 or over.*\n( .*\n)+", "", text),
    lambda text: text + "Bot: One more.\n",
], ids=["a word", "a button", "a message too few", "a message too many"])
def test_a_bot_line_that_is_not_what_the_bot_says_makes_the_replay_fail(copy: Path, breaking) -> None:
    whole = copy.read_text(encoding="utf-8")
    copy.write_text(breaking(whole), encoding="utf-8")
    assert copy.read_text(encoding="utf-8") != whole
    code, said = played(copy)
    assert code == 1
    assert "of the bot's messages differ from the file" in said


def test_accept_writes_what_the_bot_says_now_and_then_it_passes(copy: Path) -> None:
    whole = copy.read_text(encoding="utf-8")
    bare = Script(parse(whole).begins, tuple(line for line in parse(whole).lines if not isinstance(line, BotMessage)))
    copy.write_text(written(bare), encoding="utf-8")
    assert played(copy, "--accept")[0] == 0
    assert copy.read_text(encoding="utf-8") == whole
    assert played(copy)[0] == 0


def test_a_tap_on_a_button_that_is_not_there_is_one_clear_line(copy: Path) -> None:
    copy.write_text("begin 2026-03-02 18:05\n\nMara: hi\nMara: tap Maybe\n", encoding="utf-8")
    code, said = played(copy)
    assert code == 2
    assert said.splitlines()[-1] == "companion: there is no button “Maybe” to tap"


async def test_a_message_too_few_counts_as_one_that_differs(copy: Path, tmp_path: Path) -> None:
    wanted = parse(copy.read_text(encoding="utf-8"))
    real = await on_engine(wanted, tmp_path)
    assert differences(wanted, real) == 0
    assert differences(wanted, Script(real.begins, real.lines[:-1])) == 1
