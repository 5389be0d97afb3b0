"""A film sent in the chat is read beside the turns, by another process, and its numbers come back into the conversation."""

from __future__ import annotations

import asyncio
import os
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from multiprocessing import get_context

import av
import pytest

from companion.app import films
from companion.app.films import local_film
from companion.pictures.store import PictureStore
from companion.port import Address
from companion.record.picture_files import FILM_KEPT
from tests.app.test_service import CHECK, WARM, Life, settled
from tests.by_night import BY_NIGHT

TO_THE_SHOT = ("filmed squat", *CHECK, *WARM, "Yes, they are ready", "Ready", "Ready")


READ = {}
"""What was read of the small films, by which it was and what of it was wanted."""


@pytest.fixture
def read_before(small_film, monkeypatch):
    """A small film that was read before is not read again, where a test is about what becomes of what it gave."""
    read_wanted, ours = films.read_wanted, str(small_film("plain"))

    async def once(wanted, fetch, *more):
        about = wanted._replace(run="")
        if wanted.film != ours or about not in READ:
            return READ.setdefault(about, await read_wanted(wanted, fetch, *more))
        said, files = READ[about]
        return replace(said, run=wanted.run), files

    monkeypatch.setattr(films, "read_wanted", once)


@pytest.fixture
async def life(tmp_path, monkeypatch):
    monkeypatch.setattr(films, "apart_and_last", os.getpid)  # tests would wait for whatever else this machine does
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    one.companion.fetch_film = local_film
    yield one
    await one.companion.background_done()
    await one.stop()


async def read(life: Life, *typed: str) -> list[str]:
    """Type, wait for the film to be read, and give what is said."""
    said = await life.say(*typed)
    await life.companion.background_done()
    return [*said, *await life.listen(Address("terminal", "sam"))]


def answers(life: Life) -> dict[str, float | str]:
    rows = life.db.execute("select key, value from answers where flow = 'film_measure' and status = 'ok' order by id")
    return dict(rows.fetchall())


async def test_a_film_is_read_and_its_onset_stands_in_the_log_and_in_the_screen(life, small_film):
    await settled(life)
    path = str(small_film("plain"))
    said = await read(life, *TO_THE_SHOT, path)
    assert any("All cards are in view" in text for text in said)
    said = await read(life, "Keep nothing", path)
    assert any("begins to round at about" in text or "begins to round" in text for text in said)
    kept = answers(life)
    assert kept["plain_reading"] == "onset"
    assert kept["plain_onset"] == pytest.approx(72, abs=6)
    assert kept["plain_low"] < kept["plain_onset"] < kept["plain_high"]
    assert "Once more just the same" in said[-1]


def test_reading_takes_the_processor_only_while_nobody_else_wants_it():
    with ProcessPoolExecutor(1, get_context("spawn"), films.apart_and_last) as apart:
        assert apart.submit(os.nice, 0).result() == 19
        assert not hasattr(os, "SCHED_IDLE") or apart.submit(os.sched_getscheduler, 0).result() == os.SCHED_IDLE


@pytest.mark.parametrize("content", [b"", b"no film at all"] if BY_NIGHT else [b"no film at all"])
async def test_a_file_that_is_no_film_costs_one_line_and_nothing_else(life, tmp_path, content):
    await settled(life)
    path = tmp_path / "film.mp4"
    path.write_bytes(content)
    said = await read(life, *TO_THE_SHOT, str(path))
    assert sum("film" in text or "file" in text for text in said) >= 1
    assert answers(life)["shot_reading"] == "mend"
    assert path.exists()  # a person's own file in a terminal is never deleted


async def test_others_are_answered_while_a_film_is_read_and_films_are_read_one_at_a_time(life, monkeypatch):
    await settled(life)
    running, most, go = [], [], asyncio.Event()

    async def slowly(ref, folder):
        running.append(ref)
        most.append(len(running))
        await go.wait()
        running.remove(ref)
        raise OSError("Not fetched.")

    life.companion.fetch_film = slowly
    await life.say(*TO_THE_SHOT, "/tmp/one.mp4")
    await asyncio.sleep(0)
    assert await life.say("are you there?")  # answered at once
    life.companion._films.append(films.FilmWanted(1, ("terminal", "sam"), "two", "99", "plain"))
    life.companion.in_background(life.companion.read_film(life.companion._films.pop()))
    go.set()
    await life.companion.background_done()
    assert max(most) == 1


async def test_whoever_erases_everything_while_their_film_is_read_stays_erased(life):
    await settled(life)
    go = asyncio.Event()

    async def slowly(ref, folder):
        await go.wait()
        raise OSError("Not fetched.")

    life.companion.fetch_film = slowly
    await life.say(*TO_THE_SHOT, "/tmp/one.mp4")
    await life.say("erase my data", "yes", "Yes, erase everything", "yes, erase")
    erased = life.count("persons") == 0
    go.set()
    await life.companion.background_done()
    assert erased
    assert life.count("persons") + life.count("answers") + life.count("outbox") == 0


async def test_a_fetched_film_is_gone_after_it_was_read(life, tmp_path):
    await settled(life)
    kept = []

    async def fetched(ref, folder):
        path = folder / "film"
        path.write_bytes(b"no film at all")
        kept.append(path)
        return path

    life.companion.fetch_film = fetched
    await read(life, *TO_THE_SHOT, "/tmp/one.mp4")
    assert kept
    assert not any(path.exists() for path in kept)


@pytest.fixture
def shelf(life, tmp_path, read_before):
    one = PictureStore(life.db, life.companion.writer, life.companion.clock, tmp_path / "pictures")
    life.companion.on_erase, life.companion.keep_film = one.forget, one.keep_film
    yield one
    one.close()


async def test_pictures_of_a_film_are_kept_where_the_lifter_said_so_and_go_when_they_erase(life, small_film, shelf):
    sam = Address("terminal", "sam")
    await settled(life)
    await read(life, *TO_THE_SHOT, "skip", "Keep, only for me", "Delete it", str(small_film("plain")))
    still, clip = await shelf.find("film_still", sam), await shelf.find("film_clip", sam)
    assert still is not None
    assert clip is not None
    assert (still.moves, clip.moves) == (False, True)
    assert await shelf.find("film_whole", sam) is None
    shelf.forget(1)  # as after old answers were removed: the word that they may be kept stands
    assert await shelf.find("film_still", sam) is not None
    await life.say("erase my data", "yes", "Yes, erase everything", "yes, erase")
    assert not list(shelf.cache.folder.iterdir())


KEPT_WHOLE = (*TO_THE_SHOT, "skip", "Keep, only for me", "Keep the film too")


async def test_the_film_itself_is_kept_where_the_lifter_said_so_and_goes_when_they_erase(life, small_film, shelf):
    film, sam = small_film("plain"), Address("terminal", "sam")
    await settled(life)
    await read(life, *KEPT_WHOLE, str(film))
    shelf.forget(1)
    whole = await shelf.find("film_whole", sam)
    assert whole is not None
    assert whole.data == film.read_bytes()
    await life.say("erase my data", "yes", "Yes, erase everything", "yes, erase")
    assert not list(shelf.cache.folder.iterdir())
    assert film.exists()


async def test_a_copy_of_ones_data_brings_what_is_kept_of_the_film(life, small_film, shelf):
    await settled(life)
    await read(life, *KEPT_WHOLE, str(small_film("plain")))
    await life.say("export my data", "yes")
    sent = {row[0] for row in life.db.execute("select picture from outbox where text like '%if one is kept.'")}
    assert sent == {"film_still", "film_clip", "film_whole"}


@pytest.mark.parametrize("question", ["keep_film", "keep_whole"])
async def test_the_film_itself_is_deleted_as_soon_as_the_word_is_taken_back(life, small_film, shelf, question):
    await settled(life)
    await read(life, *KEPT_WHOLE, str(small_film("plain")))
    said = ("Keep nothing",) if question == "keep_film" else ("Keep, only for me", "Delete it")
    await life.say(*["back"] * 4, *said)
    left = {path.stem.removeprefix("own-1-") for path in shelf.cache.folder.iterdir()} & FILM_KEPT.keys()
    assert left == (set() if question == "keep_film" else {"film_still", "film_clip"})


@pytest.mark.parametrize("reason", ["no room", "no MP4"])
async def test_a_film_that_can_not_be_kept_is_read_all_the_same_and_that_is_said(life, small_film, shelf, tmp_path, monkeypatch, reason):
    film = small_film("plain")
    if reason == "no room":
        monkeypatch.setattr("companion.pictures.store.WHOLE_FILMS", film.stat().st_size - 1)
    else:
        film = tmp_path / "film.mkv"
        with av.open(str(small_film("plain"))) as taken, av.open(str(film), "w") as out:
            stream = out.add_stream_from_template(taken.streams.video[0])
            for packet in taken.demux(video=0):
                if packet.dts is not None:
                    packet.stream = stream
                    out.mux(packet)
    await settled(life)
    said = await read(life, *KEPT_WHOLE, str(film))
    assert any("begins to round" in text and films.NOT_KEPT in text for text in said)
    assert await shelf.find("film_whole", Address("terminal", "sam")) is None


async def test_without_that_word_none_is_drawn(life, small_film, read_before):
    taken = []
    life.companion.keep_film = lambda person, files: taken.append(files) or ()
    await settled(life)
    await read(life, *TO_THE_SHOT, "skip", "Keep nothing", str(small_film("plain")))
    assert taken == [{}]
