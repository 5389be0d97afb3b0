"""A film sent in the chat is read beside the turns, by another process, and its numbers come back into the conversation."""

from __future__ import annotations

import asyncio

import pytest

from companion.app import films
from companion.app.films import local_film
from companion.pictures.store import PictureStore
from companion.port import Address
from tests.app.test_service import CHECK, WARM, Life, settled

TO_THE_SHOT = ("filmed squat", *CHECK, *WARM, "Yes, they are ready", "Ready", "Ready")


@pytest.fixture
async def life(tmp_path):
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    one.companion.fetch_film = local_film
    yield one
    await one.companion.background_done()
    await one.stop()


async def read(life: Life, *typed: str) -> list[str]:
    """Type, wait for the film to be read, and give what is said then."""
    await life.say(*typed)
    await life.companion.background_done()
    return await life.listen(Address("terminal", "sam"))


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


@pytest.mark.parametrize("content", [b"", b"no film at all"], ids=["empty", "words"])
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


async def test_pictures_of_a_film_are_kept_where_the_lifter_said_so_and_go_when_they_erase(life, small_film, tmp_path):
    shelf, sam = PictureStore(life.db, life.companion.writer, life.companion.clock, tmp_path / "pictures"), Address("terminal", "sam")
    life.companion.on_erase, life.companion.keep_film = shelf.forget, shelf.keep_film
    await settled(life)
    await read(life, *TO_THE_SHOT, "skip", "Keep, only for me", str(small_film("plain")))
    still, clip = await shelf.find("film_still", sam), await shelf.find("film_clip", sam)
    assert still is not None
    assert clip is not None
    assert (still.moves, clip.moves) == (False, True)
    shelf.forget(1)  # as after old answers were removed: the word that they may be kept stands
    assert await shelf.find("film_still", sam) is not None
    await life.say("erase my data", "yes", "Yes, erase everything", "yes, erase")
    assert not list((tmp_path / "pictures").iterdir())
    shelf.close()


async def test_without_that_word_none_is_drawn(life, small_film, tmp_path):
    taken = []
    life.companion.keep_film = lambda person, files: taken.append(files)
    await settled(life)
    await read(life, *TO_THE_SHOT, "skip", "Keep nothing", str(small_film("plain")))
    assert taken == [{}]
