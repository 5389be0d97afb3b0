"""Pictures in the terminal itself: drawn where it can, nothing lost where it can't."""

from __future__ import annotations

import io
import os
import re
import select
import tty
from pathlib import Path

import pytest
from PIL import Image

from companion.channels import terminal_images
from companion.channels.terminal import Display, caption, drawn
from companion.channels.terminal_images import WIDEST, ask_terminal, kind_here, show
from companion.port import Typed


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    path = tmp_path / "a.png"
    Image.new("RGB", (300, 600), "navy").save(path)
    return path


@pytest.fixture(autouse=True)
def asked_anew():
    kind_here.cache_clear()
    yield
    kind_here.cache_clear()


def terminal(monkeypatch, sixels: bool = False, graphics: bool = False) -> None:
    monkeypatch.setattr("textual_image.renderable.sixel.query_terminal_support", lambda: sixels)
    monkeypatch.setattr("textual_image.renderable.tgp.query_terminal_support", lambda: graphics)


def test_a_terminal_without_pictures_prints_nothing(monkeypatch, picture):
    terminal(monkeypatch)
    out = io.StringIO()
    assert show(picture, 80, out) is False
    assert out.getvalue() == ""


def test_the_terminals_late_answer_is_not_read_as_typed():
    for late in ("?1;2c", "\x1b[?62;4;22c", "[?1;2c", "^[[?1;2c", "\x1b_Gi=31;OK\x1b\\", "_Gi=31;OK",
                 "\x1b[?62;c", "\x1b[6;20;10t", "^[[6;20;10t"):
        assert Display().event(f"{late}hello") == Typed("hello")
        assert Display().event(f"hello{late}") == Typed("hello")
    assert Display().event("why? 1;2") == Typed("why? 1;2")


def test_the_terminal_is_asked_and_its_input_emptied_before_anything_reads_it(monkeypatch):
    """A pseudo-terminal on which the answer to a query waits unread."""
    ours, theirs = os.openpty()
    tty.setraw(theirs)
    terminal(monkeypatch)
    with os.fdopen(theirs) as stdin:
        monkeypatch.setattr("sys.__stdin__", stdin)
        os.write(ours, b"\x1b[?1;2c")
        assert select.select([stdin], [], [], 1)[0]
        ask_terminal()
        assert not select.select([stdin], [], [], 0)[0]
    os.close(ours)


def test_the_size_of_its_letters_is_asked_for_before_the_chat_where_pictures_are_drawn(monkeypatch):
    asked = []
    monkeypatch.setattr("textual_image._terminal.get_cell_size", lambda: asked.append("size"))
    terminal(monkeypatch)
    ask_terminal()
    assert not asked
    kind_here.cache_clear()
    terminal(monkeypatch, sixels=True)
    ask_terminal()
    assert asked == ["size"]


@pytest.mark.parametrize("width", [40, 60, 80])
def test_a_message_breaks_between_words_only(width):
    line = "Next: hand-on-back squat, knee-to-wall and a well-known front-to-back look, about two-minutes-each, left-right-left"
    rows = [row.strip("│ ") for row in drawn([line], width).split("\n")[1:-1]]
    assert " ".join(rows) == line


@pytest.mark.parametrize("width", [20, 40, 80, 120])
def test_a_caption_breaks_between_words_only(width):
    line = ("  A person at a wall, the big toe on a tape, the knee just touching. Saved: "
            "/home/sam/.cache/companion/pictures/knee_to_wall_left-3f9c.png")
    broken = caption(line, width)
    assert " ".join(broken.split()) == " ".join(line.split())
    assert all(re.match(r"  \S", row) for row in broken.split("\n"))
    assert all(len(row) <= width or len(row.split()) == 1 for row in broken.split("\n"))


def test_sixels_keep_the_shape_of_the_picture(monkeypatch, picture):
    """DEC's sixel data: a device control string that says width and height in its raster attributes (VT340 manual; memory)."""
    terminal(monkeypatch, sixels=True)
    out = io.StringIO()
    assert show(picture, 80, out)
    wide, high = map(int, re.search(r'\x1bP[\d;]*q"1;1;(\d+);(\d+)', out.getvalue()).groups())
    assert high / wide == pytest.approx(2, abs=0.1)


def test_a_picture_is_no_wider_than_the_screen_or_a_phone(monkeypatch, picture):
    terminal(monkeypatch, sixels=True)
    for columns in (20, 200):
        out = io.StringIO()
        show(picture, columns, out)
        assert max(len(line) for line in out.getvalue().split("\x1b")[0].split("\n")) <= min(columns - 2, WIDEST)


def test_the_graphics_protocol_comes_second(monkeypatch):
    terminal(monkeypatch, graphics=True)
    assert kind_here().__module__.endswith("tgp")


def test_a_terminal_that_answers_oddly_shows_none(monkeypatch, picture):
    def odd() -> bool:
        raise ValueError("not an answer")

    monkeypatch.setattr("textual_image.renderable.sixel.query_terminal_support", odd)
    assert show(picture, 80, io.StringIO()) is False
    assert terminal_images.kind_here() is None


@pytest.mark.parametrize("data", [None, b"no picture"])
def test_a_file_that_is_gone_or_broken_is_no_reason_to_end_the_chat(monkeypatch, tmp_path, data):
    terminal(monkeypatch, sixels=True)
    path = tmp_path / "b.png"
    if data:
        path.write_bytes(data)
    assert show(path, 80, io.StringIO()) is False
