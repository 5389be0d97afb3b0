"""The printed cards: which square pattern goes where. A card's place is known by its pattern, its angle by the four corners."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

Place = Literal["wall", "ribs", "pelvis", "thigh", "shank"]

DICTIONARY: Final = "DICT_4X4_50"
"""The open family of patterns (OpenCV, ArUco): with 4 × 4 squares each is as large as a pattern can be, so a card of 8 cm is still
read at three metres."""
SQUARE_CM: Final = 8.0
"""The printed side of the black square, in cm; our choice. The angle does not depend on it."""
CELLS: Final = 6
"""Squares along a side of the pattern, its black border included."""
MARGIN_CELLS: Final = 1
"""White squares around it; without them the pattern isn't found."""


@dataclass(frozen=True, slots=True)
class PrintedCard:
    """One card: its number on the page and in the family, its place, the words for it, and its inner squares by rows, "1" for white.

    The five differ in at least six squares whichever way they are turned, and in four from each other's mirror images.
    """

    number: int
    pattern: int
    place: Place
    title: str
    where: str
    rows: tuple[str, str, str, str]


CARDS: Final = (
    PrintedCard(1, 1, "ribs", "Ribs", "On the side of the ribs, a hand below the armpit.", ("0000", "1111", "1001", "1010")),
    PrintedCard(2, 2, "pelvis", "Pelvis", "On the side of the pelvis, on the belt line.", ("0011", "0011", "0010", "1101")),
    PrintedCard(3, 4, "thigh", "Thigh", "On the outside of the thigh, half way down.", ("0101", "0100", "1001", "1110")),
    PrintedCard(4, 6, "shank", "Shin", "On the outside of the lower leg, half way down.", ("1001", "1110", "0010", "1110")),
    PrintedCard(5, 0, "wall", "Wall",
         "On the wall behind you, or on something that stands still there; upright, in view all the time.",
         ("1011", "0101", "0011", "0010")),
)
BY_PATTERN: Final = {card.pattern: card for card in CARDS}
BY_PLACE: Final = {card.place: card for card in CARDS}
ON_BODY: Final[tuple[Place, ...]] = ("ribs", "pelvis", "thigh", "shank")


def is_white(card: PrintedCard, row: int, column: int) -> bool:
    """True if a square of the printed card is white; row and column count from its upper left, margin included."""
    row, column = row - MARGIN_CELLS, column - MARGIN_CELLS
    if not (0 <= row < CELLS and 0 <= column < CELLS):
        return True
    return 0 < row < CELLS - 1 and 0 < column < CELLS - 1 and card.rows[row - 1][column - 1] == "1"
