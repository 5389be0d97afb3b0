"""The cards on the page are the family's own, can't be taken for each other, and are found at the size they are printed."""

from __future__ import annotations

import re
from itertools import combinations

import cv2
import numpy as np
import pytest

from companion.film.cards import BY_PATTERN, CARDS, DICTIONARY, SQUARE_CM
from companion.film.decoder import Finder
from companion.film.sheet import CHECK_CM, POINTS_A_CM, SIZES_CM, cards_pdf

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


def drawn(page: str, paper: str, per_cm: int) -> np.ndarray:
    """A page as its black squares and its first line stand on the paper, in so many pixels a cm."""
    width, height = SIZES_CM[paper]
    grey = np.full((round(height * per_cm), round(width * per_cm)), 255, np.uint8)
    for left, bottom, across, high in re.findall(r"^([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) re f$", page, re.M):
        x, y = float(left), height - float(bottom) - float(high)
        grey[round(y * per_cm):round((y + float(high)) * per_cm), round(x * per_cm):round((x + float(across)) * per_cm)] = 0
    return grey


@pytest.mark.parametrize("paper", SIZES_CM)
def test_every_printed_card_is_found_upright_at_its_size(paper):
    per_cm, found = 40, {}
    for page in re.findall(r"stream\n(.*?)\nendstream", cards_pdf(paper), re.S):
        found |= Finder().find(drawn(page, paper, per_cm))
    assert set(found) == set(BY_PATTERN)
    for corners in found.values():
        (left, top), (right, _), (_, bottom), _ = corners
        assert right - left == pytest.approx(SQUARE_CM * per_cm, rel=.01)
        assert bottom - top == pytest.approx(SQUARE_CM * per_cm, rel=.01)


@pytest.mark.parametrize("paper", SIZES_CM)
def test_the_file_is_a_whole_pdf_of_that_paper_with_a_true_check_line(paper):
    told = cards_pdf(paper)
    assert told.isascii()
    assert told.startswith("%PDF")
    begins = [int(row) for row in re.findall(r"^(\d{10}) 00000 n", told, re.M)]
    assert all(told[begin:].startswith(f"{number} 0 obj") for number, begin in enumerate(begins, 1))
    assert told[int(re.search(r"startxref\n(\d+)", told)[1]):].startswith("xref")
    lengths = [(int(length), len(page)) for length, page in re.findall(r"/Length (\d+) >>\nstream\n(.*?)\nendstream", told, re.S)]
    assert len(lengths) == 3
    assert all(said == real for said, real in lengths)
    box = re.search(r"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", told)
    assert [float(side) / POINTS_A_CM for side in box.groups()] == pytest.approx(SIZES_CM[paper], abs=.01)
    begin, end = re.search(r"^([\d.]+) 1.500 m ([\d.]+) 1.500 l S", told, re.M).groups()
    assert float(end) - float(begin) == CHECK_CM
    for card in CARDS:
        assert f"{card.number} {card.title}" in told
