"""A format is one row: one that is added is offered by the command line, sent in the chat and told of in the documents."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from companion.export.registry import FORMATS, ExportSource, Format, help_text, sentence
from tests.app.test_service import Life, settled

ROOT = Path(__file__).parents[2]
INITIALS = Format("initials", "the name and nothing else", "text/x-initials", "initials.txt", lambda of: f"person {of.person}\n",
                  "And your number.")
ADDED = """
import sys
from companion.export.registry import FORMATS, Format
FORMATS["initials"] = Format("initials", "the name and nothing else", "text/x-initials", "initials.txt",
                             lambda of: f"person {of.person}\\n", "And your number.")
from companion.cli.main import main
main(sys.argv[1:])
"""


@pytest.fixture
async def life(tmp_path: Path):
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    await settled(one)
    yield one
    await one.stop()


def command(*words: str) -> str:
    return subprocess.run([sys.executable, "-c", ADDED, *words], capture_output=True, text=True, check=True, timeout=60, cwd=ROOT).stdout


async def test_a_format_that_is_added_is_there_for_the_command_line(life):
    assert command("export", "sam", "--format", "initials", "--database", str(life.path)) == "person 1\n"
    assert "initials the name and nothing else (text/x-initials)" in command("export", "--help")


@pytest.mark.parametrize("words", [("/export",), ("my data", "A copy of it all")])
async def test_a_format_that_is_added_is_sent_in_the_chat(life, monkeypatch, words):
    monkeypatch.setitem(FORMATS, "initials", INITIALS)
    life.shown.clear()
    await life.say("menu", *words)
    files = {message.document_name: (message.text, message.document) for message in life.shown if message.document}
    assert files["initials.txt"] == ("And your number.", "person 1\n")
    assert list(files) == [one.file for one in FORMATS.values() if one.said]


def test_a_format_that_is_added_is_told_of(monkeypatch):
    monkeypatch.setitem(FORMATS, "initials", INITIALS)
    assert sentence().endswith(", `initials` (the name and nothing else)")
    assert help_text().endswith("initials the name and nothing else (text/x-initials)")


def test_the_readme_has_every_format():
    assert f"their data, by `--format`: {sentence()} |" in (ROOT / "README.md").read_text(encoding="utf-8")


async def test_every_format_is_made_of_somebody_new(life):
    from companion.record.context import known_of
    from flows.catalogue import BOOK

    of = ExportSource(life.db, 1, life.clock.now(), known_of(life.db, 1, life.clock.now()).facts, BOOK)
    assert [one.name for one in FORMATS.values() if not one.made(of)] == []
    assert len({one.file for one in FORMATS.values()}) == len(FORMATS)
