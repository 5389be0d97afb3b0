"""Drawing: size on a phone, loops, and nothing imported before it is needed."""

from __future__ import annotations

import subprocess
import sys
from io import BytesIO

import pytest
from PIL import Image

from companion.pictures import draw
from companion.pictures.cache import drawn, ending_of
from companion.pictures.draw import PHONE, dashes, eased, image_of
from companion.pictures.ink import PAPER
from companion.pictures.poses import poses
from companion.pictures.scene import length_of
from tests.table import each_row


def test_a_still_is_a_png_more_than_twice_a_phone_wide_and_small_to_send():
    data = drawn(poses()["squat_rounding"], "png")
    image = Image.open(BytesIO(data))
    assert image.format == "PNG"
    assert image.width >= 2 * PHONE
    assert len(data) < 300_000
    assert image.convert("RGB").getpixel((2, 2)) == tuple(int(PAPER[n:n + 2], 16) for n in (1, 3, 5))


def test_a_loop_is_a_gif_that_goes_round_for_ever_with_its_own_times():
    drawing = poses()["warm_up_walk"]
    data = drawn(drawing, "gif")
    image = Image.open(BytesIO(data))
    assert (image.format, image.n_frames, image.info["loop"]) == ("GIF", len(drawing.frames), 0)
    assert image.info["duration"] == drawing.milliseconds[0]
    assert len(data) < 400_000


def test_the_film_of_a_loop_holds_its_key_pose_runs_at_twenty_frames_a_second_and_is_smaller_and_finer_than_the_gif():
    import av

    drawing = poses()["warm_up_walk"]
    data = drawn(drawing, "mp4")
    with av.open(BytesIO(data)) as film:
        shown = [frame.to_ndarray(format="gray") for frame in film.decode(video=0)]
        assert (film.streams.video[0].average_rate, film.streams.audio) == (20, ())
        assert film.streams.video[0].codec_context.pix_fmt == "yuv420p", "what phones play"
        assert film.streams.video[0].width > PHONE
    assert len(shown) == sum(drawing.milliseconds) // 50
    differ = [abs(one.astype(int) - shown[0]).mean() for one in shown]
    assert max(differ[:18]) < 0.5 < 2 < max(differ[19:]), "0.9 seconds at the key pose"
    assert len(data) < 0.6 * len(drawn(drawing, "gif"))


def test_where_no_film_can_be_written_a_loop_stays_a_gif(monkeypatch):
    walk, still = poses()["warm_up_walk"], poses()["squat_bands"]
    assert [ending_of(one, video) for one in (walk, still) for video in (True, False)] == ["mp4", "gif", "png", "png"]
    monkeypatch.setattr(draw, "find_spec", lambda name: None)
    assert ending_of(walk, video=True) == "gif"


@each_row("name", [name for name, drawing in poses().items() if drawing.moves])
def test_a_loop_has_a_time_for_every_frame_and_stays_short(name):
    drawing = poses()[name]
    assert len(drawing.milliseconds) == len(drawing.frames)
    assert sum(drawing.milliseconds) <= 7_000


@each_row("name", [name for name, drawing in poses().items() if drawing.moves])
def test_a_loop_begins_with_its_key_pose_held_and_then_runs_at_twenty_frames_a_second(name):
    drawing = poses()[name]
    key, *rest = drawing.milliseconds
    assert key >= 700
    assert max(rest) <= 50
    assert drawing.panels[0].items == drawing.frames[0]


def test_titles_are_wrapped_within_their_panel():
    """A phone's width of panels side by side keeps paper at both edges under the drawings."""
    image = image_of(poses()["pause_stops"].panels, 1.0)
    edge = [image.getpixel((x, y)) for x in (0, 1, image.width - 1) for y in range(image.height)]
    assert set(edge) == {tuple(int(PAPER[n:n + 2], 16) for n in (1, 3, 5))}


def test_dashes_begin_and_end_with_ink_and_cover_half():
    parts = dashes([(0.0, 0.0), (1.0, 0.0)], 0.05)
    assert parts[0][0] == (0.0, 0.0)
    assert parts[-1][-1] == pytest.approx((1.0, 0.0))
    assert sum(map(length_of, parts)) == pytest.approx(0.5, abs=0.06)
    assert dashes([(0.0, 0.0), (1.0, 0.0)], 0) == [[(0.0, 0.0), (1.0, 0.0)]]


def test_a_movement_begins_and_ends_gently():
    shares = eased(9)
    assert (shares[0], shares[-1]) == (0, 1)
    assert shares == sorted(shares)
    assert shares[1] < 1 / 8


def test_a_chat_starts_without_matplotlib_and_without_pillow():
    code = ("import sys, companion.app.run, companion.pictures.store, companion.pictures.poses as p; p.poses(); "
            "print([name for name in ('matplotlib', 'PIL', 'scipy') if name in sys.modules])")
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60)
    assert done.stdout == "[]\n"
