"""The cards on the page are the family's own, can't be taken for each other, and are found at the size they are printed."""

from __future__ import annotations

import re
from itertools import combinations

import cv2
import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg

from companion.film.cards import BY_PATTERN, CARDS, DICTIONARY, SQUARE_CM
from companion.film.decoder import Finder
from companion.film.sheet import CHECK_CM, SIZES_CM, _page, cards_pdf

FAMILY = cv2.aruco.getPredefinedDictionary(getattr(cv2.aruco, DICTIONARY))


def bits(card) -> np.ndarray:
    return np.array([[int(square) for square in row] for row in card.rows])


def test_the_patterns_are_those_of_the_open_family():
    for card in CARDS:
        theirs = cv2.aruco.Dictionary_getBitsFromByteList(FAMILY.bytesList[card.pattern:card.pattern + 1], 4)
        assert (bits(card) == theirs).all(), card.title


def test_no_card_looks_like_another_however_turned_nor_like_a_mirror_image():
    for one, other in combinations(CARDS, 2):
        assert min((np.rot90(bits(one), turn) != bits(other)).sum() for turn in range(4)) >= 6
    for one in CARDS:
        for other in CARDS:
            assert min((np.rot90(np.fliplr(bits(one)), turn) != bits(other)).sum() for turn in range(4)) >= 4


@pytest.mark.parametrize("paper", SIZES_CM)
def test_every_printed_card_is_found_upright_at_its_size_beside_a_true_check_line(paper):
    per_cm, found = 40, {}
    for cards in (CARDS[:2], CARDS[2:4], CARDS[4:]):
        page = _page(cards, SIZES_CM[paper], 1)
        page.set_dpi(per_cm * 2.54)
        canvas = FigureCanvasAgg(page)
        canvas.draw()
        grey = np.asarray(canvas.buffer_rgba())[..., :3].mean(axis=2).astype(np.uint8)
        line = np.flatnonzero(grey[-round(1.5 * per_cm) - 1, :15 * per_cm] < 128)
        assert (line[-1] - line[0]) / per_cm == pytest.approx(CHECK_CM, abs=.1)
        found |= Finder().find(np.ascontiguousarray(grey))
    assert set(found) == set(BY_PATTERN)
    for corners in found.values():
        (left, top), (right, _), (_, bottom), _ = corners
        assert right - left == pytest.approx(SQUARE_CM * per_cm, rel=.01)
        assert bottom - top == pytest.approx(SQUARE_CM * per_cm, rel=.01)


@pytest.mark.parametrize("paper", SIZES_CM)
def test_the_file_is_a_pdf_of_three_pages_of_that_paper_and_the_same_each_time(paper):
    told = cards_pdf(paper)
    assert told.startswith(b"%PDF")
    assert b"/Count 3" in told
    box = re.search(rb"/MediaBox \[ 0 0 ([\d.]+) ([\d.]+) \]", told)
    assert [float(side) / 72 * 2.54 for side in box.groups()] == pytest.approx(SIZES_CM[paper], abs=.01)
    assert told == cards_pdf(paper)
