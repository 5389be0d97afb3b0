"""A test shot is answered with the one thing to mend."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from companion.film.cards import CARDS, ON_BODY, Place
from companion.film.footage import Footage
from companion.film.words import to_mend

HIGH: dict[Place, float] = {"ribs": 500.0, "pelvis": 620.0, "thigh": 760.0, "shank": 950.0, "wall": 600.0}


def shot(side: float = 30.0, narrow: float = 1.0, down: float = 0.0, **more: object) -> Footage:
    """Ten frames of five cards."""
    square = np.array([[-.5, -.5], [.5, -.5], [.5, .5], [-.5, .5]]) * (side * narrow, side)
    corners = {place: np.stack([square + np.array([360.0, high + down])] * 10) for place, high in HIGH.items()}
    return replace(Footage(np.arange(10) / 30, corners, np.full(10, 120.0), (720, 1280), bits=2e6), **more)  # type: ignore[arg-type]


def without(footage: Footage, *places: Place) -> Footage:
    return replace(footage, corners={place: np.full_like(found, np.nan) if place in places else found
                                     for place, found in footage.corners.items()})


def test_a_good_shot_needs_nothing():
    assert to_mend(shot()) == ""


@pytest.mark.parametrize("card", CARDS, ids=lambda card: card.place)
def test_a_hidden_card_is_named(card):
    assert f"Card {card.number} ({card.title.lower()})" in to_mend(without(shot(), card.place))


def test_no_card_at_all():
    assert to_mend(without(shot(), *ON_BODY, "wall")).startswith("I find no card")


def test_too_dark():
    dark = without(shot(light=np.full(10, 20.0)), "ribs")
    assert to_mend(dark).startswith("Too dark")
    assert to_mend(without(dark, *ON_BODY)).startswith("Too dark")


def test_squeezed():
    assert "as a file" in to_mend(without(shot(bits=2e5), "ribs"))


def test_too_far_away():
    assert "nearer" in to_mend(shot(side=12))


def test_turned():
    assert "side-on" in to_mend(shot(narrow=.8))


def test_too_high_and_too_low():
    assert "too high" in to_mend(shot(down=250))
    assert "too low" in to_mend(shot(down=-250))
