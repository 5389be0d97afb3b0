"""The Drawing record: panels, or frames of a loop, with a text twin.

One with "{side}" in its words stands for two drawings. It is drawn for the right side; the left is its mirror image.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from companion.pictures.draw import Frames, Panel
from companion.pictures.scene import Item, Label, mirrored

MARK_WORDS: Final = {"good": "Good: ", "watch": "Watch for: ", "": ""}
"""Words for a panel's mark in the text twin. Not "right", which is a side."""
OTHER: Final = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class Drawing:
    """A still of one or more panels, or a loop of one panel's frames.

    ``says``: what it shows, in words, followed by the panels' titles. ``rows``: panels per row, () for a single row. ``milliseconds``:
    duration of each frame.
    """

    says: str
    panels: tuple[Panel, ...]
    rows: tuple[int, ...] = ()
    frames: tuple[tuple[Item, ...], ...] = ()
    milliseconds: tuple[int, ...] = ()
    name: str = ""

    @property
    def moves(self) -> bool:
        """True if it is a loop."""
        return bool(self.frames)

    @property
    def words(self) -> str:
        """The text twin: the same facts in words."""
        told = [f"{MARK_WORDS[panel.mark]}{panel.title[0].lower()}{panel.title[1:]}." for panel in self.panels if panel.title]
        told = [f"{one[0].upper()}{one[1:]}" for one in told]
        return " ".join(["Picture: " + self.says, *told])

    def shown(self) -> tuple[tuple[Panel, ...], ...]:
        """Return every frame as panels; a still has one."""
        if not self.frames:
            return (self.panels,)
        return tuple((replace(self.panels[0], items=items), *self.panels[1:]) for items in self.frames)


def moving(says: str, frames: Frames, key: Panel, *others: Panel, rows: tuple[int, ...] = ()) -> Drawing:
    """Return a loop of one panel, whose window, title and mark ``key`` has, beside other panels that stand still."""
    shown, times = frames
    return Drawing(says, (replace(key, items=shown[0]), *others), rows, shown, times)


def for_side(make: Callable[[], Drawing], side: str) -> Drawing:
    """Return the drawing of a sided pair for one side."""
    drawing = make()

    def panel(one: Panel) -> Panel:
        """Return a panel for this side."""
        left, bottom, right, top = one.window
        window = (-right, bottom, -left, top) if side == "left" else one.window
        return replace(one, items=items(one.items), window=window, title=named(one.title))

    def items(some: tuple[Item, ...]) -> tuple[Item, ...]:
        """Return items for this side."""
        seen = mirrored(some) if side == "left" else some
        return tuple(replace(item, text=named(item.text)) if isinstance(item, Label) else item for item in seen)

    def named(text: str) -> str:
        """Return a text with the sides filled in."""
        return (text.replace("{side}", side).replace("{other}", OTHER[side])
                .replace("{SIDE}", side.upper()).replace("{OTHER}", OTHER[side].upper()))

    return replace(drawing, says=named(drawing.says), panels=tuple(map(panel, drawing.panels)),
                   frames=tuple(map(items, drawing.frames)))


def slug(name: str) -> str:
    """Return a picture name for some words: "drill rock back" → "drill_rock_back"."""
    return "_".join("".join(one if one.isalnum() else " " for one in name.lower()).split())
