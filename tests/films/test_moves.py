"""Films of the tests that read an angle: knee to wall, leg raise and hip fold, against the angles of the figure that was drawn."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from companion.cli.main import main
from companion.film.cards import BY_PLACE, ON_BODY
from companion.film.footage import Footage, Unreadable
from companion.film.moves import BENT, NO_MOVE, NO_STILL, moved
from tests.by_night import BY_NIGHT
from tests.films.moves import MOVES

SQUARE = np.array([[-12.0, -12.0], [12.0, -12.0], [12.0, 12.0], [-12.0, 12.0]])


@pytest.mark.parametrize("name", [name for name in MOVES if BY_NIGHT or name != "a hip that folds, the pelvis still"])
def test_a_tests_angle_is_read_from_its_film(name, small_footage):
    wanted = MOVES[name].squat
    film = moved(small_footage(name), wanted.move)
    if wanted.move == "trunk":
        assert film.turns == pytest.approx((15, 9), abs=1.5)
        return
    assert len(film.turns) == wanted.squats
    assert all(abs(turn - wanted.deepest) <= 1.5 for turn in film.turns), film.turns
    if wanted.move == "fold" and wanted.onset is None:
        assert film.onset.depth is None
    elif wanted.move == "fold":
        assert abs(film.onset.depth - wanted.onset) <= 3
        assert film.onset.low <= wanted.onset <= film.onset.high


def turned(degrees: float) -> np.ndarray:
    """The corners of a card turned clockwise in the picture, as one frame."""
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    return (SQUARE @ np.array([[c, s], [-s, c]]) + (300, 300))[None]


def photo(footage: Footage, at: float, *but: str) -> Footage:
    """The frame of a film nearest to a time, as a photo; without some cards."""
    frame = int(np.argmin(np.abs(footage.times - at)))
    corners = {place: np.full((1, 4, 2), np.nan) if place in but else seen[frame:frame + 1] for place, seen in footage.corners.items()}
    return replace(footage, times=footage.times[:1], corners=corners, light=footage.light[:1])


@pytest.mark.parametrize(("name", "askew"), [("a knee to the wall", 9), ("a hip that folds", 16)])
def test_one_photo_is_as_far_off_as_its_cards_are_taped_askew(name, askew, small_footage):
    wanted = MOVES[name].squat
    footage = small_footage(name)
    at = float(footage.times[np.argmin(np.abs(footage.times - wanted.standing - .6 * wanted.down))])
    lean = wanted.angles(wanted.depth(at))
    truth = {"shin": lean["shank"], "fold": lean["thigh"] - lean["pelvis"]}[wanted.move]
    film = moved(photo(footage, at), wanted.move)
    assert abs(abs(film.turns[0] - truth) - askew) <= 2.5
    assert film.photo


@pytest.mark.parametrize(("turn", "raised"), [(-90, 0), (-133, 43), (133, 43), (-163, 73), (-180, None), (-45, None)])
def test_in_a_photo_a_legs_card_points_from_the_foot_to_the_hip(turn, raised):
    """Flat it lies on its side, straight up it stands on its head."""
    photo = Footage(np.zeros(1), {place: np.full((1, 4, 2), np.nan) for place in ON_BODY} | {"shank": turned(turn), "wall": turned(0)},
                    np.full(1, 120.0), (1280, 720))
    if raised is None:
        with pytest.raises(Unreadable, match="By that photo"):
            moved(photo, "leg")
    else:
        assert moved(photo, "leg").turns == pytest.approx((raised,), abs=.1)


def test_a_photo_without_the_walls_card_or_of_a_bird_dog_or_of_a_bent_knee_says_so(small_footage):
    footage, at = small_footage("a knee to the wall"), 2.1
    for one, move, why in ((photo(footage, at, "wall"), "shin", "Card 5"), (photo(footage, at), "trunk", "A photo shows no stillness"),
                           (photo(footage, at), "leg", "The knee bends"), (photo(footage, at, "thigh"), "fold", "Card 3")):
        with pytest.raises(Unreadable, match=why):
            moved(one, move)


def test_getting_down_and_up_again_is_no_part_of_a_bird_dog():
    """One second standing, one down, two still, five with the pelvis turned by 12 degrees, one up."""
    ends, ribs, hips = (0, 1, 2, 4, 4.3, 9, 9.3, 10.3, 11), (0, 0, 90, 90, 90, 90, 90, 0, 0), (0, 0, 90, 90, 102, 102, 102, 0, 0)
    times = np.arange(0, 11, 1 / 25)
    corners = {place: np.full((len(times), 4, 2), np.nan) for place in (*ON_BODY, "wall")}
    for at, (place, turns) in enumerate((("ribs", ribs), ("pelvis", hips), ("wall", (0,) * 9))):
        corners[place][:] = [turned(turn)[0] + (0, 150 * at) for turn in np.interp(times, ends, turns)]
    film = moved(Footage(times, corners, np.full(len(times), 120.0), (720, 1280)), "trunk")
    assert film.turns == pytest.approx((12, 12), abs=1.5)


def drawn(still: float = 1.0, **turns: float) -> Footage:
    """Footage of cards that turn once and back, after some seconds of keeping still; a place that is not named is never seen."""
    times = np.arange(0, still + 3, 1 / 30)
    way = np.sin(np.clip((times - still) / 3, 0, 1) * np.pi) ** 2
    corners = {place: np.full((len(times), 4, 2), np.nan) for place in (*ON_BODY, "wall")}
    for at, (place, most) in enumerate(turns.items()):
        for frame, share in enumerate(way):
            corners[place][frame] = turned(most * share)[0] + (0, 150 * at)
    return Footage(times, corners, np.full(len(times), 120.0), (720, 1280))


def test_the_way_round_that_a_card_turns_does_not_matter():
    assert moved(drawn(shank=35), "shin").turns == pytest.approx(moved(drawn(shank=-35), "shin").turns, abs=.1)


def test_a_bent_knee_is_no_straight_leg():
    with pytest.raises(Unreadable, match="knee bends by 20°"):
        moved(drawn(shank=70, thigh=50), "leg")
    assert BENT
    assert moved(drawn(shank=70, thigh=66), "leg").turns[0] == pytest.approx(70, abs=1)
    assert moved(drawn(shank=70), "leg").turns[0] == pytest.approx(70, abs=1)  # without a card on the thigh too


@pytest.mark.parametrize(("footage", "move", "why"), [
    (drawn(shank=0), "shin", NO_MOVE), (drawn(still=0.0, shank=60), "leg", NO_STILL),
    (drawn(thigh=100), "fold", f"Card {BY_PLACE['pelvis'].number} (pelvis) is hidden"),
    (drawn(pelvis=0, thigh=20), "fold", NO_MOVE)])
def test_a_film_that_shows_nothing_says_why(footage, move, why):
    with pytest.raises(Unreadable) as refused:
        moved(footage, move)
    assert str(refused.value).startswith(why)


def test_the_command_prints_every_turn_of_a_test(small_film: Path):
    said = CliRunner().invoke(main, ["film", str(small_film("a straight leg")), "--test", "leg", "--check"])
    assert said.exit_code == 0, said.output
    assert "the leg comes up by 72°" in said.output
    assert len(said.output.splitlines()) > 12


def test_the_command_prints_every_turn_where_nothing_can_be_measured(small_film: Path):
    said = CliRunner().invoke(main, ["film", str(small_film("a knee to the wall")), "--check"])
    assert said.exit_code == 2
    assert "turned from the first moment" in said.output
