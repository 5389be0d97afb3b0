"""The page to print: the cards in their true size, where each goes, how to tape it, and a line that shows whether the scale is right.

The PDF is written by hand in ASCII: rectangles and lines of a standard font, so that it prints alike everywhere and travels as text.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from typing import Final, Literal

from companion.film.cards import CARDS, CELLS, MARGIN_CELLS, SQUARE_CM, PrintedCard, is_white

SheetPaper = Literal["A4", "letter"]

SIZES_CM: Final[dict[SheetPaper, tuple[float, float]]] = {"A4": (21.0, 29.7), "letter": (21.59, 27.94)}
CHECK_CM: Final = 10.0
ACROSS: Final = CELLS + 2 * MARGIN_CELLS
CARD_CM: Final = SQUARE_CM * ACROSS / CELLS
POINTS_A_CM: Final = 72 / 2.54

HOW: Final = (
    "1. Print on white paper at 100 %, not 'fit to page'. The check line must measure 10 cm.",
    "2. Glue each card on thin cardboard and cut along the dashed line. Keep the white rim: without it a card isn't found.",
    "3. Wear tight clothes. Tape cards 1 to 4 flat, along all four edges, on the side that faces the phone. Arrows up as you stand.",
    "4. Card 5 goes on the wall behind you, or on something there that stands still, its arrow straight up (a phone's level helps).",
    "5. Phone upright on a stand, at hip height, three big steps away, side-on. Hands and sleeves stay clear of the cards.",
    "Cards on cloth slide over the bones beneath, so the angle between ribs and pelvis stands for the lower back; it is no X-ray, "
    "and no number of degrees here says that something is harmed.",
)


def cards_pdf(paper: SheetPaper = "A4") -> str:
    """Return the cards as a PDF of three pages in their true size, for one size of paper; all of it is ASCII."""
    width, height = SIZES_CM[paper]
    pages = [_page(cards, (width, height), number) for number, cards in enumerate((CARDS[:2], CARDS[2:4], CARDS[4:]), 1)]
    kids = " ".join(f"{4 + 2 * at} 0 R" for at in range(len(pages)))
    box = f"0 0 {width * POINTS_A_CM:.2f} {height * POINTS_A_CM:.2f}"
    objects = ["<< /Type /Catalog /Pages 2 0 R >>", f"<< /Type /Pages /Kids [{kids}] /Count {len(pages)} /MediaBox [{box}] >>",
               "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>"]
    for at, page in enumerate(pages):
        objects += [f"<< /Type /Page /Parent 2 0 R /Resources << /Font << /F 3 0 R >> >> /Contents {5 + 2 * at} 0 R >>",
                    f"<< /Length {len(page)} >>\nstream\n{page}\nendstream"]
    return _file(objects)


def _file(objects: Iterable[str]) -> str:
    """Return a PDF of these objects, with the table of where each begins."""
    told, begins = "%PDF-1.4\n", []
    for number, one in enumerate(objects, 1):
        begins.append(len(told))
        told += f"{number} 0 obj\n{one}\nendobj\n"
    rows = "".join(f"{begin:010} 00000 n \n" for begin in begins)
    return (f"{told}xref\n0 {len(begins) + 1}\n0000000000 65535 f \n{rows}trailer\n<< /Size {len(begins) + 1} /Root 1 0 R >>\n"
            f"startxref\n{len(told)}\n%%EOF\n")


def _page(cards: tuple[PrintedCard, ...], size: tuple[float, float], number: int) -> str:
    width, height = size
    told = [f"{POINTS_A_CM:.6f} 0 0 {POINTS_A_CM:.6f} 0 0 cm", "0.03 w",  # from here on in cm
            _line(2, 1.5, 2 + CHECK_CM, 1.5), _line(2, 1.3, 2, 1.7), _line(2 + CHECK_CM, 1.3, 2 + CHECK_CM, 1.7),
            _text(2, 1.9, "Check line: 10 cm. If it is not, print again at 100 %.", 9), _text(width - 3.5, 1.5, f"{number} of 3", 9)]
    for at, card in enumerate(cards):
        told += _card(card, (width - CARD_CM) / 2, height - 1.4 - CARD_CM - at * (CARD_CM + 1.6))
    if len(cards) == 1:
        down = height - CARD_CM - 3.6
        for line in HOW:
            for row in textwrap.wrap(line, 92):
                told.append(_text(2, down, row, 10))
                down -= 0.5
            down -= 0.25
    return "\n".join(told)


def _card(card: PrintedCard, left: float, bottom: float) -> Iterator[str]:
    """Yield one card with its lower left corner here; each black square overlaps its neighbour by a hair, so that no seam shows."""
    cell, hair = SQUARE_CM / CELLS, 0.004
    yield f"[0.15 0.15] 0 d 0.5 G {left:.4f} {bottom:.4f} {CARD_CM:.4f} {CARD_CM:.4f} re S [] 0 d 0 G"
    for row in range(ACROSS):
        for column in range(ACROSS):
            if not is_white(card, row, column):
                at = left + column * cell - hair, bottom + (ACROSS - 1 - row) * cell - hair
                yield f"{at[0]:.4f} {at[1]:.4f} {cell + 2 * hair:.4f} {cell + 2 * hair:.4f} re f"
    top, middle = bottom + CARD_CM, left + CARD_CM / 2
    yield f"0.5 G {_line(middle - 1.2, top - 1.0, middle - 1.2, top - 0.35)} {_line(middle - 1.35, top - 0.55, middle - 1.2, top - 0.35)}"
    yield f"{_line(middle - 1.05, top - 0.55, middle - 1.2, top - 0.35)} 0 G"
    yield _text(middle - 0.8, top - 0.75, f"{card.number} {card.title}", 11)
    for row, words in enumerate(textwrap.wrap(f"{card.number}. {card.where}", 64)):
        yield _text(left, bottom - 0.5 - row * 0.45, words, 10)


def _line(x: float, y: float, to_x: float, to_y: float) -> str:
    return f"{x:.3f} {y:.3f} m {to_x:.3f} {to_y:.3f} l S"


def _text(x: float, y: float, words: str, points: float) -> str:
    safe = words.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)")
    return f"BT /F {points / POINTS_A_CM:.4f} Tf {x:.3f} {y:.3f} Td ({safe}) Tj ET"
