"""The album and the shelf: drawn once, off the loop, kept beside the database; a person's own picture stays theirs."""

from __future__ import annotations

import asyncio
import threading
from collections.abc import AsyncIterator
from dataclasses import replace
from pathlib import Path

import pytest

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.conversation.effects import Began, Ended, Record
from companion.pictures import cache as album_module
from companion.pictures.cache import PictureCache, key_of
from companion.pictures.poses import poses
from companion.pictures.store import PictureStore, folder_beside
from companion.port import Address, Inbound, Typed
from companion.record import people
from tests.fakes.clock import FakeClock
from tests.rows import keep

HERE, THERE = Address("terminal", "sam"), Address("telegram", "77")


@pytest.fixture
def counted(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of what was drawn, in place of drawing it."""
    names: list[str] = []

    def drawn(drawing, ending) -> bytes:
        names.append(drawing.name)
        return b"picture of " + drawing.name.encode()
    monkeypatch.setattr(album_module, "drawn", drawn)
    return names


async def test_a_pose_is_drawn_once_and_found_on_disk_after_a_restart(tmp_path: Path, counted: list[str]) -> None:
    one = PictureCache(tmp_path / "pictures")
    first = await one.pose("squat_bands")
    again = await one.pose("squat_bands")
    other = await PictureCache(tmp_path / "pictures").pose("squat_bands")
    assert first is not None
    assert first == again == other
    assert first.path.read_bytes() == first.data
    assert counted == ["squat_bands"]


async def test_a_loop_is_a_film_on_telegram_and_a_gif_in_a_terminal_which_shows_its_first_frame(tmp_path: Path, counted: list[str]) -> None:
    album = PictureCache(tmp_path)
    found = [await album.pose(name, video) for name, video in (("squat_slow", True), ("squat_slow", False), ("squat_bands", True))]
    assert [one and (one.path.suffix, one.moves) for one in found] == [(".mp4", True), (".gif", True), (".png", False)]
    assert counted == ["squat_slow", "squat_slow", "squat_bands"]


async def test_two_who_want_the_same_pose_at_once_wait_for_one_drawing(tmp_path: Path, counted: list[str]) -> None:
    album = PictureCache(tmp_path)
    await asyncio.gather(*(album.pose("squat_bands") for _ in range(5)))
    assert counted == ["squat_bands"]


def test_a_changed_drawing_has_another_key() -> None:
    drawing = poses()["squat_bands"]
    assert key_of(drawing) != key_of(replace(drawing, panels=drawing.panels[:3]))
    assert key_of(drawing) == key_of(replace(drawing))


async def test_a_folder_that_can_not_be_written_still_gives_the_picture(tmp_path: Path, counted: list[str]) -> None:
    (tmp_path / "file").write_text("in the way")
    found = await PictureCache(tmp_path / "file" / "pictures").pose("squat_bands")
    assert found is not None
    assert found.data.startswith(b"picture")


async def test_the_loop_goes_on_while_something_is_drawn(tmp_path: Path) -> None:
    album, turns = PictureCache(tmp_path), 0
    drawing = asyncio.ensure_future(album.pose("warm_up_walk"))
    while not drawing.done():
        await asyncio.sleep(0.001)
        turns += 1
    assert (await drawing) is not None
    assert turns > 5


@pytest.fixture
async def companion(tmp_path: Path) -> AsyncIterator[Companion]:
    one = Companion(tmp_path / "c.sqlite", FakeClock())
    async with running_writer(one):
        yield one
    one.close()


@pytest.fixture
def shelf(companion: Companion) -> PictureStore:
    found = PictureStore(companion.db.conn, companion.writer, companion.clock, folder_beside(companion.path))
    companion.on_erase = found.forget
    return found


async def raised(companion: Companion, address: Address) -> int:
    """Somebody who did the leg raise once and reads inches."""
    def rows(db) -> int:
        now = companion.clock.now()
        person = people.add_person(db, address.channel, address.id, "sam", now)
        said = (("method", "level", ""), ("effort", "own", ""), ("placement", "shin", ""), ("left_lean", "short", ""),
                ("left_level", 61.0, "level_own"))
        record = [Record("1", "leg_raise", 1, key, "", "", value, method=method, placement="shin" if method else "")
                  for key, value, method in said]
        keep(db, person, [Began("1", "leg_raise", 1), *record, Ended("1", "done")], now, "UTC")
        return person
    return await companion.writer.do(rows)


async def test_a_chart_is_of_whoever_the_message_goes_to(companion: Companion, shelf: PictureStore) -> None:
    await raised(companion, THERE)
    found = await shelf.find("chart_leg_raise", THERE)
    assert found is not None
    assert "Left: 61° on 2 Mar 2026" in found.words
    assert found.data.startswith(b"\x89PNG")
    assert found.key == ""
    assert await shelf.find("chart_leg_raise", HERE) is None
    assert await shelf.find("chart_pain", THERE) is None


async def test_a_person_s_own_chart_touches_the_disk_only_where_it_is_looked_at_as_a_file(
        companion: Companion, shelf: PictureStore) -> None:
    await raised(companion, THERE)
    await raised(companion, HERE)
    found = await shelf.find("chart_leg_raise", THERE)
    assert found is not None
    assert not found.path.exists()
    found = await shelf.find("chart_leg_raise", HERE)
    assert found is not None
    assert found.path.read_bytes() == found.data


async def test_what_was_saved_of_a_person_goes_with_their_rows(companion: Companion, shelf: PictureStore) -> None:
    await raised(companion, HERE)
    found = await shelf.find("chart_leg_raise", HERE)
    assert found is not None
    for words in ("erase", "yes"):
        await companion.take(Inbound(HERE, Typed(words), name="sam"))
    assert not found.path.exists()


async def test_a_picture_of_somebody_erased_while_it_was_drawn_is_neither_kept_nor_sent(
        companion: Companion, shelf: PictureStore, monkeypatch: pytest.MonkeyPatch) -> None:
    person = await raised(companion, HERE)

    def erased_meanwhile(db, person, name):
        people.erase(db, person, companion.clock.now())
        companion.on_erase(person)
        return lambda: (b"drawn", "words", False)
    monkeypatch.setattr("companion.pictures.personal.from_log", erased_meanwhile)
    assert await shelf.find("chart_leg_raise", HERE) is None
    assert list(shelf.cache.folder.glob(f"own-{person}-*")) == []


async def test_without_an_estimate_there_is_no_squat_of_one_s_own(companion: Companion, shelf: PictureStore) -> None:
    await raised(companion, THERE)
    assert await shelf.find("your_squat", THERE) is None


async def test_a_picture_that_fails_is_none_and_the_words_go_out(
        companion: Companion, shelf: PictureStore, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(album_module, "drawn", lambda drawing, ending: 1 / 0)
    assert await shelf.find("squat_bands", THERE) is None


async def test_words_do_not_wait_for_a_picture_that_is_never_done_and_it_is_there_once_it_is(
        companion: Companion, shelf: PictureStore, monkeypatch: pytest.MonkeyPatch) -> None:
    goes_on = threading.Event()

    def drawn(drawing, ending) -> bytes:
        goes_on.wait()
        return b"late"
    monkeypatch.setattr(album_module, "drawn", drawn)
    hurried = PictureStore(companion.db.conn, companion.writer, companion.clock, shelf.cache.folder, patience=0.01)
    assert await hurried.find("squat_bands", THERE) is None
    goes_on.set()
    await hurried.cache.off_loop(lambda: None)
    found = await shelf.find("squat_bands", THERE)
    assert found is not None
    assert found.data == b"late"


async def test_a_file_id_is_kept_for_one_bot_and_forgotten(companion: Companion, shelf: PictureStore) -> None:
    await shelf.keep_file_id("1", "squat-abc", "file-9")
    assert (await shelf.file_id("1", "squat-abc"), await shelf.file_id("2", "squat-abc")) == ("file-9", None)
    await shelf.keep_file_id("1", "squat-abc", None)
    assert await shelf.file_id("1", "squat-abc") is None
