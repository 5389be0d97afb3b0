"""A file that is no film, or a trap, ends in one clear line within its limits; the decoding process takes nothing else with it."""

from __future__ import annotations

import os
import struct
import time
from io import BytesIO
from pathlib import Path
from types import SimpleNamespace

import av
import numpy as np
import pytest
from PIL import Image

from companion.film import reader
from companion.film.decoder import NotDecoded, frames_in
from companion.film.footage import MOST_BYTES, Unreadable, footage_from
from companion.film.reader import EMPTY, NO_FILM, NOT_HERE, TOO_BIG, TOO_LARGE, TOO_LONG, TOO_SLOW, read_film
from companion.film.words import to_mend
from tests.films.figure import card_png


def film(path: Path, frames: int = 30, size: tuple[int, int] = (64, 64), rate: int = 30) -> Path:
    """A grey film without a card."""
    with av.open(str(path), "w") as out:
        stream = out.add_stream("libx264", rate=rate, options={"preset": "ultrafast"})
        stream.width, stream.height, stream.pix_fmt = *size, "yuv420p"
        picture = np.full((size[1], size[0], 3), 90, np.uint8)
        for number in range(frames):
            frame = av.VideoFrame.from_ndarray(picture, format="rgb24")
            frame.pts = number
            out.mux(stream.encode(frame))
        out.mux(stream.encode(None))
    return path


def refusal(path: Path, seconds: float = 60.0) -> str:
    began = time.monotonic()
    with pytest.raises(Unreadable) as refused:
        read_film(path, seconds)
    assert time.monotonic() - began < 30
    line = str(refused.value)
    assert "\n" not in line
    assert len(line) <= 200
    return line


def test_an_empty_file(tmp_path):
    path = tmp_path / "film.mp4"
    path.touch()
    assert refusal(path) == EMPTY


def test_a_file_that_is_not_there_or_a_folder(tmp_path):
    assert refusal(tmp_path / "none.mp4") == NO_FILM
    assert refusal(tmp_path) == NO_FILM


def test_a_file_too_large_to_fetch_is_not_opened(tmp_path):
    path = tmp_path / "film.mp4"
    with path.open("wb") as file:
        file.truncate(MOST_BYTES + 1)
    assert refusal(path) == TOO_BIG


@pytest.mark.parametrize("content", [b"just words, no film", b"\x00" * 5000, os.urandom(4000), b"PK\x03\x04" + b"\x00" * 400,
                                     b"#EXTM3U\n#EXTINF:1,\nfile:///etc/passwd\n", b"ffconcat version 1.0\nfile /etc/passwd\n"],
                         ids=["text", "zeros", "noise", "archive", "playlist", "list"])
def test_a_file_of_another_kind(tmp_path, content):
    path = tmp_path / "film.mp4"
    path.write_bytes(content)
    assert refusal(path) == NO_FILM


def test_a_playlist_that_names_another_film_opens_nothing(tmp_path):
    other = film(tmp_path / "other.ts")
    assert len(read_film(other).times) > 0  # which by itself could be read
    path = tmp_path / "film.m3u8"
    path.write_text(f"#EXTM3U\n#EXT-X-VERSION:3\n#EXT-X-TARGETDURATION:2\n#EXTINF:1.0,\n{other}\n#EXT-X-ENDLIST\n")
    assert refusal(path) == NO_FILM


def test_a_film_cut_off_on_the_way(tmp_path):
    path = film(tmp_path / "film.mp4")
    path.write_bytes(path.read_bytes()[:-900])  # its index stands at the end
    assert refusal(path) == NO_FILM


def test_a_film_damaged_in_the_middle_keeps_what_came_before(tmp_path):
    path = film(tmp_path / "film.mp4", frames=60)
    told = bytearray(path.read_bytes())
    told[len(told) // 3:len(told) // 3 + 20] = b"\xff" * 20
    path.write_bytes(bytes(told))
    assert 1 <= len(read_film(path).times) <= 60


def test_ten_thousand_frames_at_the_usual_rate_are_too_long(tmp_path):
    assert refusal(film(tmp_path / "film.mp4", frames=10_000, size=(16, 16))) == TOO_LONG


@pytest.mark.parametrize("said", [None, 0, 1000])
def test_a_film_that_says_nothing_or_too_little_of_its_length_is_read_until_it_is_too_long(tmp_path, said):
    with av.open(film(tmp_path / "film.mp4", frames=130, size=(16, 16), rate=1)) as real:
        stream = real.streams.video[0]
        told = SimpleNamespace(time_base=stream.time_base, average_rate=stream.average_rate, duration=said)
        with pytest.raises(NotDecoded, match="too_long"):
            list(frames_in(SimpleNamespace(decode=lambda _: real.decode(stream)), told))


def test_ten_thousand_frames_within_ten_seconds_are_too_many(tmp_path):
    assert refusal(film(tmp_path / "film.mp4", frames=10_000, size=(16, 16), rate=1000)) == TOO_LONG


def test_a_picture_of_very_many_pixels_in_few_bytes(tmp_path):
    path = film(tmp_path / "film.mp4", frames=2, size=(4096, 4096))
    assert path.stat().st_size < 100_000
    assert refusal(path) == TOO_LARGE


def test_a_still_picture_that_unpacks_to_gigabytes(tmp_path):
    path = tmp_path / "film.png"
    Image.new("1", (20_000, 20_000)).save(path)
    told = bytearray(path.read_bytes())
    told[16:24] = struct.pack(">II", 60_000, 60_000)  # and claims to be larger still
    path.write_bytes(bytes(told))
    assert refusal(path) in (TOO_LARGE, NO_FILM, TOO_SLOW)


def test_a_film_that_takes_too_long_is_stopped(tmp_path):
    assert refusal(film(tmp_path / "film.mp4"), seconds=0.01) == TOO_SLOW


def test_a_film_without_a_card_is_read_and_has_none(tmp_path):
    footage = read_film(film(tmp_path / "film.mp4"))
    assert len(footage.times) == 30
    assert footage.missing == ("ribs", "pelvis", "thigh", "shank")


@pytest.mark.parametrize("kind", ["jpg", "png", "webp"])
def test_a_photo_is_a_film_of_one_picture(tmp_path, kind):
    path = tmp_path / f"photo.{kind}"
    picture = Image.new("RGB", (400, 400), "white")
    picture.paste(Image.open(BytesIO(card_png("pelvis"))).resize((120, 120)), (140, 140))
    picture.save(path)
    footage = read_film(path)
    assert len(footage.times) == 1
    assert footage.side("pelvis") == pytest.approx(90, abs=2)
    assert to_mend(footage)


def test_the_decoding_process_sees_nothing_of_our_environment(monkeypatch):
    monkeypatch.setenv("COMPANION_TOKEN", "123:secret")
    assert "COMPANION_TOKEN" not in reader._environment()


def test_without_the_film_part_it_says_so_in_one_line(tmp_path, monkeypatch):
    monkeypatch.setattr(reader, "can_read", lambda: False)
    assert refusal(tmp_path / "film.mp4") == NOT_HERE


@pytest.mark.parametrize("told", [
    {}, {"frames": []}, {"frames": [[0, 1, {}]], "size": [1, 1], "mirrored": 0}, {"frames": 5, "size": [1, 1]},
    {"frames": [[1, 1, {}], [0, 1, {}]], "size": [1, 1], "bits": 0, "mirrored": False},
    {"frames": [[0, 1, {"1": [1, 2, 3]}]], "size": [1, 1], "bits": 0, "mirrored": False}])
def test_an_answer_of_the_wrong_shape_is_not_believed(told):
    with pytest.raises(ValueError):
        footage_from(told)
