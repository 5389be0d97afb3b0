"""A card's angle is read from its four corners, whatever the perspective, and agrees with OpenCV's own pose of it."""

from __future__ import annotations

import cv2
import numpy as np
import pytest

from companion.film.angles import angles_of, local_maps, turning
from companion.film.cards import BY_PLACE, ON_BODY
from companion.film.decoder import Finder
from companion.film.footage import Footage
from companion.film.squats import Curves, by_the_bone
from tests.films.figure import card_png

CAMERA = np.array([[1100.0, 0, 360], [0, 1100.0, 640], [0, 0, 1]])
CARD = np.array([[-.04, -.04, 0], [.04, -.04, 0], [.04, .04, 0], [-.04, .04, 0]])


def seen(turned: float, yaw: float = 0.0, at: tuple[float, float, float] = (.2, -.4, 2.8)) -> np.ndarray:
    """A card's corners in pixels: turned clockwise in its plane, the plane yawed away from the camera."""
    spin, _ = cv2.Rodrigues(np.radians([0, 0, turned]))
    away, _ = cv2.Rodrigues(np.radians([0, yaw, 0]))
    points, _ = cv2.projectPoints(CARD, cv2.Rodrigues(away @ spin)[0], np.array(at), CAMERA, None)
    return points.reshape(4, 2)


@pytest.mark.parametrize("turned", [-170, -95, -30, 0, 20, 60, 120])
def test_a_card_seen_square_on_has_the_angle_it_was_turned_by(turned):
    assert turning(local_maps(seen(turned)[None]))[0] == pytest.approx(turned, abs=.05)


@pytest.mark.parametrize("yaw", [-15, 0, 15])
@pytest.mark.parametrize("turned", [-110, -40, 35, 90])
def test_yaw_and_roll_of_the_camera_cancel_against_the_card_on_the_wall(turned, yaw):
    roll = 3.0
    lens = cv2.getRotationMatrix2D((360, 640), -roll, 1.0)
    corners = {place: np.stack([seen(turned if place != "wall" else 0, yaw) @ lens[:, :2].T + lens[:, 2]] * 30)
               for place in (*ON_BODY, "wall")}
    angles = angles_of(Footage(np.arange(30) / 30, corners, np.full(30, 120.0), (720, 1280)))
    assert angles.by_wall
    assert angles.raw["thigh"][5] == pytest.approx(turned, abs=.3)


@pytest.mark.parametrize("turned", [-75, -20, 0, 20, 50])
def test_a_photographed_card_is_read_as_opencvs_own_pose_has_it(turned):
    printed = cv2.imdecode(np.frombuffer(card_png("pelvis"), np.uint8), 0)
    edge = printed.shape[0]
    inside = edge / 8  # the corners of the black square, a cell in from the card's edge
    source = np.array([[inside, inside], [edge - inside, inside], [edge - inside, edge - inside], [inside, edge - inside]], np.float32) - .5
    truth = seen(turned, yaw=9, at=(.1, .2, 2.4)).astype(np.float32)
    photo = cv2.warpPerspective(printed, cv2.getPerspectiveTransform(source, truth * 4), (720 * 4, 1280 * 4), borderValue=160)
    photo = cv2.resize(photo, (720, 1280), interpolation=cv2.INTER_AREA)
    found = np.array(Finder().find(photo)[BY_PLACE["pelvis"].pattern])
    ours = turning(local_maps(found[None]))[0]
    _, turns, _ = cv2.solvePnP(CARD, found, CAMERA, None, flags=cv2.SOLVEPNP_ITERATIVE)
    rotation, _ = cv2.Rodrigues(turns)
    theirs = np.degrees(np.arctan2(rotation[1, 0] - rotation[0, 1], rotation[0, 0] + rotation[1, 1]))
    assert ours == pytest.approx(theirs, abs=1.5)
    assert ours == pytest.approx(turned, abs=1.5)


def test_a_short_gap_is_bridged_and_a_long_one_left_out():
    times = np.arange(90) / 30
    corners = {place: np.stack([seen(20.0)] * 90) for place in (*ON_BODY, "wall")}
    corners["ribs"][10:14] = np.nan
    corners["ribs"][40:60] = np.nan
    angles = angles_of(Footage(times, corners, np.full(90, 120.0), (720, 1280)))
    assert np.isfinite(angles.raw["ribs"][10:14]).all()
    assert np.isnan(angles.raw["ribs"][45:55]).all()
    assert angles.left_out == pytest.approx(24 / 90)


def test_without_the_card_on_the_wall_the_angles_say_so():
    corners = {place: np.stack([seen(20.0)] * 30) for place in ON_BODY} | {"wall": np.full((30, 4, 2), np.nan)}
    assert not angles_of(Footage(np.arange(30) / 30, corners, np.full(30, 120.0), (720, 1280))).by_wall


def test_the_thighs_lag_is_taken_off_the_depth_and_nothing_else():
    """A hip bent fully, by 130°: the thigh's card is read 1.9° short of the bone (Fiorentino 2017 Gait Posture 55:184)."""
    depth, pelvis, still = np.array([0.0, 90.0, np.nan]), np.array([0.0, 40.0, 40.0]), np.zeros(3)
    read = Curves(np.arange(3.0), depth, pelvis, still, still, (depth, still), (0, 1), 1)
    bone = by_the_bone(read)
    assert bone.depth[:2] == pytest.approx([0.0, 91.9])
    assert bone.exact[0][:2] == pytest.approx([0.0, 91.9])
    assert np.isnan(bone.depth[2])
    assert (bone.pelvis is pelvis, bone.exact[1] is still) == (True, True)
