"""A film of a figure whose every angle is known is read within what the docs promise."""

from __future__ import annotations

import pytest

from tests.by_night import BY_NIGHT
from tests.films.figures import compared
from tests.films.small import SMALL

BENDING = [name for name, film in SMALL.items() if film.squat.onset is not None][:: 1 if BY_NIGHT else 3]
"""By day one in three."""
STILL = [name for name, film in SMALL.items() if film.squat.onset is None]


@pytest.mark.parametrize("name", BENDING)
def test_the_onset_and_every_angle_are_read(name, small_footage):
    found = compared(SMALL[name], small_footage(name))
    assert not found.refused
    assert 1 <= found.squats <= SMALL[name].squat.squats  # one that lost a card is left out
    for place, spread in found.spread.items():
        assert spread <= (3.5 if place == "flexion of the bones" else 1.5), (place, spread)
    assert found.onset is not None
    assert abs(found.wrong_by) <= 6, found.wrong_by


@pytest.mark.parametrize("name", STILL)
def test_a_back_that_stays_has_no_onset(name, small_footage):
    found = compared(SMALL[name], small_footage(name))
    assert not found.refused
    assert found.onset is None, found.onset


def test_a_selfie_is_turned_back_and_still_faces_its_own_way(small_footage):
    footage = small_footage("a selfie, lying on its side in the file")
    assert footage.mirrored
    assert footage.size == (432, 768)
