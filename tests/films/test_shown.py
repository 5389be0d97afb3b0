"""The frame of the onset and the clip: the cards outlined where they are, also in a film that was mirrored and lies on its side."""

from __future__ import annotations

import io

import av
import numpy as np
import pytest
from PIL import Image

from companion.film.footage import Unreadable
from companion.film.measure import measured
from companion.film.overlay import CLIP, OUTLINED, STILL
from companion.film.shown import plan_of, shown
from companion.record.picture_files import FILM_KEPT, WHOLE_FILM


@pytest.mark.parametrize("name", ["plain", "a selfie, lying on its side in the file"])
def test_each_card_is_outlined_in_the_frame_of_the_onset(name, small_film, small_footage):
    footage = small_footage(name)
    film = measured(footage)
    files = shown(small_film(name), footage, film)
    assert {file.split(".")[0] for file in files} == FILM_KEPT.keys() - {WHOLE_FILM}
    still, plan = np.asarray(Image.open(io.BytesIO(files[STILL]))).astype(int), plan_of(footage, film)
    assert still.shape[:2] == footage.size[::-1]
    (frame,) = (one for one in plan["frames"] if one["at"] == plan["still"])
    assert abs(float(frame["lines"][0].split()[1]) - film.onset.depth) <= 4  # the frame nearest to it, at 25 a second
    assert len(frame["cards"]) == 4
    for corners, _ in frame["cards"]:
        for one, other in zip(corners, corners[1:] + corners[:1], strict=True):
            x, y = np.round((np.array(one) + other) / 2).astype(int)
            near = still[y - 2:y + 3, x - 2:x + 3].reshape(-1, 3)
            assert np.abs(near - OUTLINED[::-1]).sum(axis=1).min() < 120
    with av.open(io.BytesIO(files[CLIP])) as clip:
        assert 8 <= sum(1 for _ in clip.decode(video=0)) <= 40


def test_a_film_that_can_not_be_drawn_costs_the_pictures_only(small_footage, tmp_path, monkeypatch):
    broken = tmp_path / "film.mp4"
    broken.write_bytes(b"no film at all")
    footage = small_footage("plain")
    assert shown(broken, footage, measured(footage)) == {}

    def too_slow(*given, **more):
        raise Unreadable("too slow")

    monkeypatch.setattr("companion.film.shown.run_apart", too_slow)
    assert shown(broken, footage, measured(footage)) == {}
