"""Films of the tests that read an angle: knee to wall, leg raise and hip fold, against the angles of the figure that was drawn."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from companion.cli.main import main
from companion.film.cards import BY_PLACE, ON_BODY
from companion.film.footage import Footage, Unreadable
from companion.film.moves import BENT, NO_MOVE, NO_STILL, moved
from tests.films.moves import MOVES

SQUARE = np.array([[-12.0, -12.0], [12.0, -12.0], [12.0, 12.0], [-12.0, 12.0]])


@pytest.mark.parametrize("name", MOVES)
def test_a_tests_angle_is_read_from_its_film(name, small_footage):
    wanted = MOVES[name].squat
    film = moved(small_footage(name), wanted.move)
    assert len(film.turns) == wanted.squats
    assert all(abs(turn - wanted.deepest) <= 1.5 for turn in film.turns), film.turns
    if wanted.move == "fold" and wanted.onset is None:
        assert film.onset.depth is None
    elif wanted.move == "fold":
        assert abs(film.onset.depth - wanted.onset) <= 3
        assert film.onset.low <= wanted.onset <= film.onset.high


def drawn(still: float = 1.0, **turns: float) -> Footage:
    """Footage of cards that turn once and back, after some seconds of keeping still; a place that is not named is never seen."""
    times = np.arange(0, still + 3, 1 / 30)
    way = np.sin(np.clip((times - still) / 3, 0, 1) * np.pi) ** 2
    corners = {place: np.full((len(times), 4, 2), np.nan) for place in (*ON_BODY, "wall")}
    for at, (place, most) in enumerate(turns.items()):
        for frame, share in enumerate(way):
            c, s = np.cos(np.radians(most * share)), np.sin(np.radians(most * share))
            corners[place][frame] = SQUARE @ np.array([[c, s], [-s, c]]) + (200, 200 + 150 * at)
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
