"""A tilted card's turn is read right wherever it is in the picture, and a card out of shape is told apart; projected by OpenCV."""

from __future__ import annotations

import cv2
import numpy as np
import pytest

from companion.film.angles import local_maps
from companion.film.footage import Footage, Unreadable
from companion.film.measure import LOST_ON_THE_WAY, MISSHAPEN, measured
from companion.film.tilt import turned_and_misshapen
from tests.film.test_angles import CAMERA, CARD
from tests.films.figure import Squat

FRAMES = 120
SQUAT = Squat(standing=1.0, down=2.0, up=1.0, between=.5)
HIGH = {"wall": -.2, "ribs": -.5, "pelvis": -.15, "thigh": .15, "shank": .5}


def seen(turned: float, at: tuple[float, float], tilted: tuple[float, float] = (0.0, 0.0)) -> np.ndarray:
    """The corners of a card that was taped with a tilt (deg) and is turned in the plane of the picture, 2.8 m away."""
    tilt, _ = cv2.Rodrigues(np.radians([*tilted, 0.0]))
    spin, _ = cv2.Rodrigues(np.radians([0, 0, turned]))
    points, _ = cv2.projectPoints(CARD, cv2.Rodrigues(spin @ tilt)[0], np.array([*at, 2.8]), CAMERA, None)
    return points.reshape(4, 2)


def read(corners: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Turns from the first frame in degrees, and how misshapen each is."""
    turn, off = turned_and_misshapen(local_maps(corners), (corners.mean(axis=1) - [360, 640]) / 1280)
    return np.degrees(turn - turn[0]), off


@pytest.mark.parametrize("tilted", [(10, 0), (0, -10), (8, 8)])
def test_a_card_that_comes_down_in_the_picture_turns_by_what_it_was_turned_whatever_its_tilt(tilted):
    true = np.linspace(0, 40, FRAMES)
    corners = np.stack([seen(turned, (.3 * share, -.5 + .5 * share), tilted) for turned, share in zip(true, true / 40, strict=True)])
    maps = local_maps(corners)
    plain = np.degrees(np.arctan2(maps[:, 1, 0] - maps[:, 0, 1], maps[:, 0, 0] + maps[:, 1, 1]))
    assert np.abs(plain - plain[0] - true).max() > .4
    turn, off = read(corners)
    assert np.abs(turn - true).max() < .15
    assert off.max() < .15


def test_a_card_read_wrong_in_a_few_frames_is_misshapen_in_those_and_moves_no_other():
    true = np.linspace(0, 40, FRAMES)
    corners = np.stack([seen(turned, (0, -.5 + turned / 80), (0, 8)) for turned in true])
    corners[50:60, 0] += (5.0, -4.0)
    turn, off = read(corners)
    others = np.r_[0:50, 60:FRAMES]
    assert off[50:60].min() > MISSHAPEN
    assert off[others].max() < .5
    assert np.abs(turn - true)[others].max() < .2


def film(rate: float = 30, noise: float = 0.0, misread: tuple[int, ...] = ()) -> Footage:
    """Three squats; in those that are numbered a corner of the ribs' card is read wrong for the middle half of the way down."""
    chance, times = np.random.default_rng(3), np.arange(0, SQUAT.seconds, 1 / rate)
    corners = {place: np.empty((len(times), 4, 2)) for place in HIGH}
    for frame, at in enumerate(times):
        depth = SQUAT.depth(at)
        lean = {**SQUAT.angles(depth), "wall": 0.0}
        number, into = divmod(max(0.0, at - SQUAT.standing), SQUAT.down + SQUAT.up + SQUAT.between)
        for place, high in HIGH.items():
            down = 0.0 if place in ("wall", "shank") else .3 * depth / 105
            corners[place][frame] = seen(lean[place], (-.3 if place == "wall" else 0.0, high + down)) + chance.normal(0, noise, (4, 2))
        if number in misread and .25 < into / SQUAT.down < .75:
            corners["ribs"][frame, 0] += (5.0, -4.0)
    return Footage(times, corners, np.full(len(times), 120.0), (720, 1280))


def test_a_squat_whose_cards_are_misread_for_a_quarter_of_the_way_does_not_count():
    assert len(measured(film()).squats) == 3
    some = measured(film(misread=(1,)))
    assert (len(some.squats), some.found) == (2, 3)
    assert some.onset.depth == pytest.approx(SQUAT.onset, abs=2)
    with pytest.raises(Unreadable) as refused:
        measured(film(misread=(0, 1, 2)))
    assert str(refused.value) == LOST_ON_THE_WAY


def test_somebody_stands_still_also_at_sixty_frames_a_second_with_cards_that_are_read_roughly():
    assert measured(film(60, noise=.5)).onset.depth == pytest.approx(SQUAT.onset, abs=5)
