"""Pictures on their way: a line in the terminal, one upload a bot on Telegram."""

from __future__ import annotations

import html
import io
from collections.abc import AsyncIterator
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner
from telegram import Bot

from companion.app.run import picture_store, running_writer
from companion.app.service import Companion
from companion.channels import terminal
from companion.channels.pictures import Picture
from companion.channels.telegram import TelegramPost
from companion.cli.main import main
from companion.pictures import cache, contact_sheet
from companion.pictures.poses import poses
from companion.port import Address, Button, Delivered, Outgoing
from tests.fakes.bot_api import TOKEN, BotApi, Fault
from tests.fakes.clock import FakeClock
from tests.fakes.memory_outbox import MemoryOutbox


class Shown:
    """Pictures in memory, with the file ids that were kept."""

    def __init__(self, **pictures: Picture) -> None:
        self.pictures, self.ids = pictures, dict[tuple[str, str], str]()

    async def find(self, name: str, address: Address) -> Picture | None:
        return self.pictures.get(name)

    async def file_id(self, bot: str, key: str) -> str | None:
        return self.ids.get((bot, key))

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        self.ids.pop((bot, key), None)
        if file_id:
            self.ids[bot, key] = file_id


POSE = Picture(Path("pose.png"), b"png", "Picture: a pose.", key="pose-1")
LOOP = Picture(Path("loop.gif"), b"gif", "Picture: a loop.", moves=True, key="loop-1")
OWN = Picture(Path("own.png"), b"own", "Picture: yours.")


@pytest.fixture
async def api() -> AsyncIterator[BotApi]:
    async with BotApi() as api:
        yield api


@pytest.fixture
async def bot(api: BotApi) -> AsyncIterator[Bot]:
    async with Bot(TOKEN, base_url=f"{api.url}/bot") as bot:
        yield bot


def words(text: str, picture: str, chat: int = 1) -> Outgoing:
    return Outgoing(1, Address("telegram", str(chat)), text, picture=picture)


async def send(post: TelegramPost, *messages: Outgoing) -> None:
    for message in messages:
        assert isinstance(await post.send(message), Delivered)


def uploads(api: BotApi) -> list[bool]:
    """Of each picture sent: whether its bytes went with it."""
    return [any(isinstance(value, bytes) for value in call.params.values()) for call in api.calls
            if call.method in ("sendPhoto", "sendAnimation")]


LONG = Picture(Path("pose.png"), b"png", "Picture: a squat from the side, twice. Good: back keeps its shape.", key="pose-2")


async def test_a_picture_goes_with_its_words_and_a_short_caption_and_its_description_when_asked_for(api: BotApi, bot: Bot) -> None:
    await send(TelegramPost(bot, Shown(pose=LONG)), words("Stand so.", "pose"), words("Stand so.", "describe pose"))
    assert [(one.kind, one.text) for one in api.sent] == [
        ("photo", "Stand so.\n\nPicture: a squat from the side, twice."), ("text", f"Stand so.\n\n{LONG.words}")]


def test_every_picture_has_a_caption_of_one_short_sentence() -> None:
    for drawing in poses().values():
        caption = Picture(Path("x.png"), b"", drawing.words).caption
        assert caption.startswith("Picture: ")
        assert caption.endswith(".")
        assert 14 < len(caption) <= 160
        assert drawing.words.startswith(caption[:-1])


async def test_a_picture_goes_with_its_words_and_twin_as_caption(api: BotApi, bot: Bot) -> None:
    await send(TelegramPost(bot, Shown(pose=POSE)), words("Stand so.", "pose"))
    sent, = api.sent
    assert (sent.kind, sent.text, sent.file) == ("photo", "Stand so.\n\nPicture: a pose.", b"png")


async def test_a_loop_goes_as_an_animation(api: BotApi, bot: Bot) -> None:
    await send(TelegramPost(bot, Shown(loop=LOOP)), words("Move so.", "loop"))
    assert [(one.kind, one.file) for one in api.sent] == [("animation", b"gif")]


@pytest.mark.parametrize("name", ["pose", "loop"])
async def test_a_picture_is_uploaded_once_and_then_sent_by_its_id(api: BotApi, bot: Bot, name: str) -> None:
    shown = Shown(pose=POSE, loop=LOOP)
    await send(TelegramPost(bot, shown), words("one", name), words("two", name, chat=2))
    await send(TelegramPost(bot, shown), words("after a restart", name))
    assert uploads(api) == [True, False, False]
    assert {one.file for one in api.sent} == {b"png" if name == "pose" else b"gif"}


async def test_a_person_s_own_chart_is_never_kept_for_another_send(api: BotApi, bot: Bot) -> None:
    shown = Shown(own=OWN)
    await send(TelegramPost(bot, shown), words("one", "own"), words("two", "own"))
    assert uploads(api) == [True, True]
    assert not shown.ids


async def test_an_id_that_telegram_has_forgotten_is_uploaded_anew(api: BotApi, bot: Bot) -> None:
    shown = Shown(pose=POSE)
    shown.ids[str(bot.id), "pose-1"] = "gone"
    await send(TelegramPost(bot, shown), words("one", "pose"), words("two", "pose"))
    assert uploads(api) == [False, True, False]


async def test_words_too_long_for_the_twin_go_alone_under_the_picture(api: BotApi, bot: Bot) -> None:
    await send(TelegramPost(bot, Shown(pose=POSE)), words("z" * 1020, "pose"))
    assert [(one.kind, len(one.text)) for one in api.sent] == [("photo", 1020)]


async def test_words_too_long_for_a_caption_follow_their_picture_a_second_later(api: BotApi, bot: Bot) -> None:
    slept: list[float] = []

    async def sleep(seconds: float) -> None:
        slept.append(seconds)
    await send(TelegramPost(bot, Shown(pose=POSE), sleep), words("z" * 1100, "pose"))
    assert [(one.kind, one.text) for one in api.sent] == [("photo", "Picture: a pose."), ("text", "z" * 1100)]
    assert slept == [1.0]


async def test_a_name_without_a_picture_sends_the_words(api: BotApi, bot: Bot) -> None:
    await send(TelegramPost(bot, Shown()), words("Only words.", "view_feel"))
    assert [(one.kind, one.text) for one in api.sent] == [("text", "Only words.")]


@pytest.mark.parametrize("name", ["pose", "loop", "media:clip-7"])
async def test_a_picture_that_telegram_refuses_never_takes_the_words_with_it(api: BotApi, bot: Bot, name: str) -> None:
    for method in ("sendPhoto", "sendAnimation", "sendVideo"):
        api.fail(method, Fault(400, "Bad Request: IMAGE_PROCESS_FAILED"))
    asked = Outgoing(1, Address("telegram", "1"), "Stop if it hurts.", ((Button("Done", "done"),),), picture=name)
    await send(TelegramPost(bot, Shown(pose=POSE, loop=LOOP)), asked)
    sent, = api.sent
    assert (sent.kind, sent.text.splitlines()[0], sent.buttons) == ("text", "Stop if it hurts.", ((("Done", "done"),),))
    assert ("Picture: a" in sent.text) == (name != "media:clip-7")


async def test_words_too_long_for_a_caption_survive_a_refused_picture(api: BotApi, bot: Bot) -> None:
    api.fail("sendPhoto", Fault(400, "Bad Request: not enough rights to send photos to the chat"))
    await send(TelegramPost(bot, Shown(pose=POSE)), words("z" * 1100, "pose"))
    assert [(one.kind, one.text) for one in api.sent] == [("text", "z" * 1100 + "\n\nPicture: a pose.")]


async def test_with_the_real_shelf_an_upload_is_made_once_for_all_and_over_a_restart(
        api: BotApi, bot: Bot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cache, "drawn", lambda drawing, ending: b"drawn")
    for chat in (1, 2):
        companion = Companion(tmp_path / "c.sqlite", FakeClock())
        async with running_writer(companion):
            with picture_store(companion, FakeClock()) as shelf:
                await send(TelegramPost(bot, shelf), words("How deep?", "squat_bands", chat), words("And now?", "squat_bands", chat))
        companion.close()
    assert uploads(api) == [True, False, False, False]
    assert {one.file for one in api.sent} == {b"drawn"}


async def mute(*inbound: object) -> None:
    """Takes what is said, sweeps, and says nothing."""


async def test_the_terminal_tells_a_picture_in_words_and_where_it_lies(tmp_path: Path) -> None:
    store, out, kept = MemoryOutbox(), io.StringIO(), replace(POSE, path=tmp_path / "pose.png")
    kept.path.write_bytes(kept.data)
    store.put(1, "Stand so.", picture="pose")
    store.put(2, "No picture.", picture="view_feel")
    store.put(3, "Not kept.", picture="lost")
    lost = replace(POSE, path=tmp_path / "lost.png")
    await terminal.chat_piped(mute, mute, store, FakeClock(), "sam", [], io.StringIO(), out, Shown(pose=kept, lost=lost))
    assert f"Stand so.\n  Picture: a pose. Saved: {kept.path}\n" in out.getvalue()
    assert "No picture.\n\n" in out.getvalue()
    assert "Not kept.\n  Picture: a pose.\n" in out.getvalue()


def test_a_chat_here_saves_the_picture_it_names(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    replies = ("Yes, keep them", "yes", "cm and kg", "UTC", "yes", "about me", "170", "70", "woman", "2", "80", "high")
    told = CliRunner().invoke(main, ["chat", "--database", str(tmp_path / "c.sqlite")], input="\n".join(replies))
    line = next(line for line in told.output.splitlines() if "Saved: " in line)
    assert "four depths of a squat" in line
    saved = Path(line.rpartition("Saved: ")[2])
    assert saved.parent == tmp_path / "c-pictures"
    assert saved.read_bytes().startswith(b"\x89PNG")


def test_the_contact_sheet_has_every_picture_with_its_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(contact_sheet, "drawn", lambda drawing, ending: b"drawn")
    monkeypatch.setattr(contact_sheet, "png", lambda chart: b"chart")
    done = CliRunner().invoke(main, ["pictures", str(tmp_path / "all")])
    assert done.exit_code == 0, done.output
    page = (tmp_path / "all" / "index.html").read_text(encoding="utf-8")
    assert page.startswith('<!doctype html><html lang="en">')
    assert all(part in page for part in ('<meta name="viewport"', "<title>", "<header><h1>", "<main>", 'width="360"'))
    for drawing in poses().values():
        assert (tmp_path / "all" / f"{drawing.name}.{'gif' if drawing.moves else 'png'}").exists()
        assert f'src="{drawing.name}.' in page
        assert f'alt="{html.escape(drawing.words)}"' in page
        assert f"<br>{html.escape(replace(POSE, words=drawing.words).caption)}<" in page, "the short caption below: nothing is read twice"
    assert "hand_on_back_squat.did (shared)" in page
    assert page.count('alt="Picture: ') == page.count("<img ") == len(list((tmp_path / "all").iterdir())) - 1
    assert {"chart_leg_raise_one.png", "chart_leg_raise_gaps.png", "chart_pain_forty.png", "your_squat.gif"} <= {
        file.name for file in (tmp_path / "all").iterdir()}


def test_a_folder_that_can_not_be_made_is_one_line(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    done = CliRunner().invoke(main, ["pictures", str(tmp_path / "file" / "all")])
    assert done.exit_code == 2
    assert "can't write the pictures" in done.output
