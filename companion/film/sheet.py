"""The page to print: the cards in their true size, where each goes, how to tape it, and a line that shows whether the scale is right."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Final, Literal

from companion.film.cards import CARDS, CELLS, MARGIN_CELLS, SQUARE_CM, Card, is_white

if TYPE_CHECKING:
    from matplotlib.figure import Figure

Paper = Literal["A4", "letter"]

SIZES_CM: Final[dict[Paper, tuple[float, float]]] = {"A4": (21.0, 29.7), "letter": (21.59, 27.94)}
CHECK_CM: Final = 10.0
ACROSS: Final = CELLS + 2 * MARGIN_CELLS
CARD_CM: Final = SQUARE_CM * ACROSS / CELLS

HOW: Final = (
    "1. Print on white paper at 100 %, not “fit to page”. The check line must measure 10 cm.",
    "2. Glue each page on thin cardboard and cut along the dashed lines. Keep the white rim: without it a card isn't found.",
    "3. Wear tight clothes. Tape cards 1 to 4 flat, along all four edges, on the side that faces the phone. Arrows up as you stand.",
    "4. Card 5 goes on the wall behind you, or on something there that stands still, its arrow straight up (a phone's level helps).",
    "5. Phone upright on a stand, at hip height, three big steps away, side-on. Hands and sleeves stay clear of the cards.",
    "Cards on cloth slide over the bones beneath, so the angle between ribs and pelvis stands for the lower back; it is no X-ray, "
    "and no number of degrees here says that something is harmed.",
)


def cards_pdf(paper: Paper = "A4") -> bytes:
    """Return the cards as a PDF of three pages in their true size, for one size of paper."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_pdf import PdfPages

    told = io.BytesIO()
    about = {"Title": "Cards for a film that measures", "CreationDate": None}
    with rc_context({"pdf.fonttype": 42}), PdfPages(told, metadata=about) as pdf:
        for number, cards in enumerate((CARDS[:2], CARDS[2:4], CARDS[4:]), 1):
            pdf.savefig(_page(cards, SIZES_CM[paper], number))
    return told.getvalue()


def _page(cards: tuple[Card, ...], size: tuple[float, float], number: int) -> Figure:
    from matplotlib.figure import Figure

    width, height = size
    page = Figure(figsize=(width / 2.54, height / 2.54))
    axes = page.add_axes((0, 0, 1, 1), xlim=(0, width), ylim=(0, height), aspect="equal")
    axes.axis("off")
    axes.plot([2, 2 + CHECK_CM], [1.5, 1.5], color="black", lw=1)
    for end in (2, 2 + CHECK_CM):
        axes.plot([end, end], [1.3, 1.7], color="black", lw=1)
    axes.text(2, 1.85, "Check line: 10 cm. If it is not, print again at 100 %.", fontsize=9)
    axes.text(width - 2, 1.5, f"{number} of 3", fontsize=9, ha="right")
    if len(cards) == 1:
        _words(axes, width, height - CARD_CM - 3.4)
    for at, card in enumerate(cards):
        _card(axes, card, (width - CARD_CM) / 2, height - 1.4 - CARD_CM - at * (CARD_CM + 1.6))
    return page


def _words(axes: object, width: float, top: float) -> None:
    import textwrap

    at = top
    for line in HOW:
        rows = textwrap.wrap(line, 88)
        for row in rows:
            axes.text(2, at, row, fontsize=10)  # type: ignore[attr-defined]
            at -= 0.5
        at -= 0.25


def _card(axes: object, card: Card, left: float, bottom: float) -> None:
    """Draw one card with its lower left corner here, in cm; each black square overlaps its neighbour by a hair, so that no seam shows."""
    from matplotlib.patches import Rectangle

    cell, hair = SQUARE_CM / CELLS, 0.004
    axes.add_patch(Rectangle((left, bottom), CARD_CM, CARD_CM, fill=False, ls=(0, (4, 4)), lw=0.6, ec="0.5"))  # type: ignore[attr-defined]
    for row in range(ACROSS):
        for column in range(ACROSS):
            if not is_white(card, row, column):
                corner = left + column * cell - hair, bottom + (ACROSS - 1 - row) * cell - hair
                axes.add_patch(Rectangle(corner, cell + 2 * hair, cell + 2 * hair, fc="black", ec="none"))  # type: ignore[attr-defined]
    axes.text(left + CARD_CM / 2, bottom + CARD_CM - 0.72, f"↑ {card.number}  {card.title}", fontsize=11,  # type: ignore[attr-defined]
              ha="center", color="0.45")
    axes.text(left + CARD_CM / 2, bottom - 0.55, f"{card.number}. {card.where}", fontsize=10, ha="center")  # type: ignore[attr-defined]
