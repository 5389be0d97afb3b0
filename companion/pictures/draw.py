"""Rendering: a picture's panels as pixels. Pillow is imported with the first.

Drawn at three times its size and scaled down, which smooths the edges. A phone shows it about 390 pixels wide.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib.util import find_spec
from io import BytesIO
from itertools import chain, pairwise
from math import acos, atan2, ceil, cos, hypot, pi, sin
from pathlib import Path
from typing import TYPE_CHECKING, Final

from companion.pictures.figure import Point, along, direction
from companion.pictures.ink import BODY, FAR_FILL, GOOD_INK, INK, INKS, PAPER, WATCH_INK
from companion.pictures.scene import Area, Disc, Item, Label, Limb, Stroke, length_of

if TYPE_CHECKING:
    from PIL import Image, ImageDraw, ImageFont

PHONE: Final = 390
"""Width of a common phone in pixels; labels are sized for it."""
STILL_SCALE: Final = 2.4
MOVING_SCALE: Final = 1.3
FILMED_SCALE: Final = 1.6
FINER: Final = 3
FINER_MOVING: Final = 2
HALO: Final = 0.007
OUTLINE: Final = 0.004
SMOOTH: Final = 9
"""Points from which a line turns too little at each for a gap to show."""
LIMB_STEPS: Final = tuple((n / 10, sin(pi * (n / 10)**0.63), sin(pi * (0.25 + 0.075 * n))) for n in range(11))
"""Steps of a limb's outline: share of its length, and of what it bulges, widest a third of the way down, and is wider underneath."""
TITLE_SIZE: Final = 14
PANEL_MARGIN: Final = 8.0
TALLEST: Final = 330.0


@dataclass(frozen=True, slots=True)
class Panel:
    """One panel of a picture: its items, the visible window (left, bottom, right, top in figure lengths), a title below, and a mark:
    "good" for how it should look, "watch" for what to watch for, or ""."""

    items: tuple[Item, ...]
    window: tuple[float, float, float, float]
    title: str = ""
    mark: str = ""


class _Pen:
    """Draws items into a cell of an image."""

    def __init__(self, draw: ImageDraw.ImageDraw, width: float, height: float,
                 window: tuple[float, float, float, float], pixel: float) -> None:
        left, bottom, right, top = window
        self.draw, self.pixel = draw, pixel
        self.scale = min(width / (right - left), height / (top - bottom))
        self.x0 = (width - self.scale * (right - left)) / 2 - self.scale * left
        self.y0 = (height + self.scale * (top - bottom)) / 2 + self.scale * bottom

    def at(self, point: Point) -> Point:
        """Return a point's pixel position."""
        return self.x0 + self.scale * point[0], self.y0 - self.scale * point[1]

    def put(self, item: Item) -> None:
        """Draw one item."""
        match item:
            case Limb():
                if item.outlined:
                    self._limb(item, HALO, PAPER)
                self._limb(item, 0.0, item.ink)
            case Disc():
                self._disc(item.centre, item.radius, item.ink)
                if item.hole:
                    self._disc(item.centre, item.hole, PAPER)
            case Area():
                flat = [self.at(point) for point in item.points]
                if item.outlined:
                    self.draw.line([*flat, flat[0], flat[1]], fill=PAPER, width=round(2 * HALO * self.scale))
                self.draw.polygon(flat, fill=item.ink)
            case Stroke():
                self._stroke(replace(item, ink=PAPER, width=item.width + 2 * OUTLINE))
                self._stroke(item)
            case Label():
                self.draw.text(self.at(item.at), item.text, fill=item.ink, font=font(round(item.size * self.pixel)),
                               anchor=f"{item.anchor}m", stroke_width=round(2 * self.pixel), stroke_fill=PAPER,
                               align="center")

    def _disc(self, centre: Point, radius: float, ink: str) -> None:
        (x, y), r = self.at(centre), radius * self.scale
        self.draw.ellipse((x - r, y - r, x + r, y + r), fill=ink)

    def _limb(self, limb: Limb, more: float, ink: str) -> None:
        """Draw two discs and the area between their common tangents."""
        a, b = limb.start_half + more, limb.end_half + more
        self._disc(limb.start, a, ink)
        self._disc(limb.end, b, ink)
        apart = hypot(limb.end[0] - limb.start[0], limb.end[1] - limb.start[1])
        if apart > abs(a - b):
            tilt, to = acos((b - a) / apart), atan2(limb.end[1] - limb.start[1], limb.end[0] - limb.start[0])
            sides: list[list[Point]] = [[], []]
            for side, way in zip(sides, (1, -1), strict=True):
                across, up = cos(to + way * tilt), sin(to + way * tilt)
                for share, wave, under in LIMB_STEPS:
                    half = a + (b - a) * share + limb.bulge * wave + (abs(limb.under) * under if way * limb.under < 0 else 0.0)
                    side.append(self.at((limb.start[0] + (limb.end[0] - limb.start[0]) * share + half * across,
                                         limb.start[1] + (limb.end[1] - limb.start[1]) * share + half * up)))
            self.draw.polygon([*sides[0], *reversed(sides[1])], fill=ink)

    def _stroke(self, stroke: Stroke) -> None:
        points, width = list(stroke.points), max(1.0, stroke.width * self.scale)
        if stroke.head:
            size = 0.034 + (stroke.width - 0.011)
            to = direction(points[-2], points[-1])
            tip = points[-1]
            self.draw.polygon([self.at(p) for p in (tip, along(tip, to + 155, size), along(tip, to - 155, size))], fill=stroke.ink)
            points[-1] = along(tip, to + 180, size * 0.8)
        for part in dashes(points, stroke.dash):
            flat = [self.at(point) for point in part]
            self.draw.line(flat, fill=stroke.ink, width=round(width), joint="curve" if len(flat) < SMOOTH else None)
            if width > 3:
                for x, y in (flat[0], flat[-1]):
                    self.draw.ellipse((x - width / 2, y - width / 2, x + width / 2, y + width / 2), fill=stroke.ink)


def dashes(points: Sequence[Point], dash: float) -> list[list[Point]]:
    """Return a line split into dashes as long as their gaps; one whole line for 0."""
    if not dash:
        return [list(points)]
    count = max(1, ceil(length_of(points) / dash / 2))
    steps = [n * length_of(points) / (2 * count - 1) for n in range(2 * count)]
    return [[_on(points, a), _on(points, (a + b) / 2), _on(points, b)] for a, b in zip(steps[::2], steps[1::2], strict=True)]


def _on(points: Sequence[Point], far: float) -> Point:
    for a, b in pairwise(points):
        step = hypot(b[0] - a[0], b[1] - a[1])
        if far <= step and step:
            return a[0] + (b[0] - a[0]) * far / step, a[1] + (b[1] - a[1]) * far / step
        far -= step
    return points[-1]


@cache
def font(size: int) -> ImageFont.FreeTypeFont:
    """Return the font of the charts, which comes with matplotlib, so that every machine draws the same; matplotlib is not imported."""
    from PIL import ImageFont

    found = find_spec("matplotlib")
    assert found is not None
    assert found.origin is not None
    return ImageFont.truetype(Path(found.origin).with_name("mpl-data") / "fonts/ttf/DejaVuSans.ttf", size)


def image_of(panels: Sequence[Panel], scale: float, rows: Sequence[int] = (), finer: int = FINER) -> Image.Image:
    """Return an image of the panels, with the given number in each row; in a single row by default."""
    return next(_images((panels,), scale, rows, finer, lambda image: image))


def _images(frames: Sequence[Sequence[Panel]], scale: float, rows: Sequence[int], finer: int,
            finish: Callable[[Image.Image], Image.Image]) -> Iterator[Image.Image]:
    """Yield the frames' images. Only the first panel moves; a frame that comes again, as on the way back, is drawn once.

    ``finish``: makes the image of a frame from the page, on which the next is drawn.
    """
    from PIL import Image, ImageDraw

    pixel, waiting, placed, top = scale * finer, list(frames[0]), [], PANEL_MARGIN
    for count in rows or (len(waiting),):
        row, waiting = waiting[:count], waiting[count:]
        columns = rows[0] if rows and count == 1 < rows[0] else count  # one left over is as large as those above it
        width = (PHONE - PANEL_MARGIN * (columns + 1)) / columns
        indent = (PHONE - count * width - PANEL_MARGIN * (count + 1)) / 2
        height = min(max(width * (p.window[3] - p.window[1]) / (p.window[2] - p.window[0]) for p in row), TALLEST)
        titles = [_wrapped(panel.title, (width - (26 if panel.mark else 4)) * pixel, pixel) for panel in row]
        under = 19.0 * max(title.count("\n") + 1 if title else 0 for title in titles) + 2
        placed += [(panel, title, indent + PANEL_MARGIN + n * (width + PANEL_MARGIN), top, width, height, under)
                   for n, (panel, title) in enumerate(zip(row, titles, strict=True))]
        top += height + under + PANEL_MARGIN
    page = Image.new("RGB", (round(PHONE * scale) * finer, round(top * scale) * finer), PAPER)
    draw = ImageDraw.Draw(page)
    for panel, title, left, above, width, height, under in placed:
        _title(draw, title, panel.mark, (left + width / 2) * pixel, (above + height + under / 2 + 2) * pixel, pixel)
    page = page.reduce(finer)

    def cell(panel: Panel, left: float, above: float, width: float, height: float) -> None:
        """Put the view through a panel's window on the page."""
        image = Image.new("RGB", (round(width * scale) * finer, round(height * scale) * finer), PAPER)
        pen = _Pen(ImageDraw.Draw(image), *image.size, panel.window, pixel)
        for item in panel.items:
            pen.put(item)
        page.paste(image.reduce(finer), (round(left * scale), round(above * scale)))

    for panel, _, left, above, width, height, _ in placed[1:]:
        cell(panel, left, above, width, height)
    drawn: dict[int, Image.Image] = {}
    for panels in frames:
        key = id(panels[0].items)
        if key not in drawn:
            cell(panels[0], *placed[0][2:6])
            drawn[key] = finish(page)
        yield drawn[key]


def _wrapped(title: str, width: float, pixel: float) -> str:
    """Return the title wrapped to a width."""
    face, lines = font(round(TITLE_SIZE * pixel)), [""]
    for word in title.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and face.getlength(longer) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return "\n".join(lines)


def _title(draw: ImageDraw.ImageDraw, title: str, mark: str, x: float, y: float, pixel: float) -> None:
    """Draw the title with a tick or a cross in front, so that it does not depend on colour."""
    if not title:
        return
    ink = {"good": GOOD_INK, "watch": WATCH_INK}.get(mark, INK)
    face = font(round(TITLE_SIZE * pixel))
    box = draw.multiline_textbbox((0, 0), title, font=face, align="center")
    shift = 9 * pixel if mark else 0
    draw.multiline_text((x + shift, y), title, fill=ink, font=face, anchor="mm", align="center", spacing=3 * pixel)
    left, size = x + shift - (box[2] - box[0]) / 2 - 12 * pixel, 6 * pixel
    strokes = {"good": [[(left - size, y), (left - size / 4, y + size), (left + size, y - size)]],
               "watch": [[(left - size, y - way * size), (left + size, y + way * size)] for way in (-1, 1)]}
    for stroke in strokes.get(mark, []):
        draw.line(stroke, fill=ink, width=round(2.6 * pixel), joint="curve")


def still(panels: Sequence[Panel], rows: Sequence[int] = ()) -> bytes:
    """Return a still picture as PNG."""
    out = BytesIO()
    _flat(image_of(panels, STILL_SCALE, rows)).save(out, "PNG")
    return out.getvalue()


def _flat(image: Image.Image) -> Image.Image:
    """Return the image in the palette's colours: a quarter of the bytes, and the paper stays exactly the paper."""
    from PIL import Image

    flat = image.quantize(palette=_palette(), dither=Image.Dither.NONE)
    shades, paper = flat.getpalette() or [], flat.getpixel((0, 0))
    assert isinstance(paper, int)
    shades[3 * paper:3 * paper + 3] = _parts(PAPER)  # Pillow looks for the nearest shade in coarse cells
    flat.putpalette(shades)
    return flat


@cache
def _palette() -> Image.Image:
    from PIL import Image

    palette = Image.new("P", (1, 1))
    palette.putpalette(_shades())
    return palette


def _shades() -> list[int]:
    """Return a palette: the paper and every ink, with shades between for smooth edges."""
    paper, body = _parts(PAPER), _parts(BODY)
    shades = [paper]
    for ink in map(_parts, (*INKS, FAR_FILL)):
        shades += [_mix(ink, paper, n / 6) for n in range(6)]
        shades += [_mix(ink, body, 0.5)]
    return [part for shade in shades for part in shade]


def _parts(colour: str) -> tuple[int, ...]:
    return tuple(int(colour[n:n + 2], 16) for n in (1, 3, 5))


def _mix(one: tuple[int, ...], other: tuple[int, ...], share: float) -> tuple[int, ...]:
    return tuple(round(a + (b - a) * share) for a, b in zip(one, other, strict=True))


def moving(frames: Sequence[tuple[Panel, ...]], milliseconds: Sequence[int], rows: Sequence[int] = ()) -> bytes:
    """Return a short loop as GIF, with the duration of each frame."""
    flat, out = list(_images(frames, MOVING_SCALE, rows, FINER_MOVING, _flat)), BytesIO()
    flat[0].save(out, "GIF", save_all=True, append_images=flat[1:], duration=list(milliseconds), loop=0, disposal=1, optimize=True)
    return out.getvalue()


def films() -> bool:
    """True if loops can be written as MP4: the film part is installed, with its encoder."""
    if find_spec("av") is None:
        return False
    import av

    return ENCODER in av.codecs_available


def filmed(frames: Sequence[tuple[Panel, ...]], milliseconds: Sequence[int], rows: Sequence[int] = ()) -> bytes:
    """Return a short loop as MP4, without sound, at FPS: a held frame is repeated. A third larger than the GIF, and of half its bytes."""
    import av

    images, out = _images(frames, FILMED_SCALE, rows, FINER_MOVING, _even), BytesIO()
    first = next(images)
    with av.open(out, "w", format="mp4") as file:
        stream = file.add_stream(ENCODER, rate=FPS, options={"preset": "veryfast"})
        stream.width, stream.height = first.size
        stream.codec_context.thread_count = 1
        for image, duration in zip(chain((first,), images), milliseconds, strict=True):
            frame = av.VideoFrame.from_image(image).reformat(format="yuv420p")  # type: ignore[no-untyped-call]
            for _ in range(round(duration * FPS / 1000)):
                frame.pts = None
                file.mux(stream.encode(frame))
        file.mux(stream.encode())
    return out.getvalue()


def _even(image: Image.Image) -> Image.Image:
    """Return the image with even sides, as the encoder wants them."""
    return image.crop((0, 0, image.width // 2 * 2, image.height // 2 * 2))


ENCODER: Final = "libx264"
FPS: Final = 20
"""Frames a second of a loop; GIF counts hundredths of a second, so 50 ms each."""
KEY_POSE: Final = 900
"""Milliseconds at the key pose (choice)."""


Frames = tuple[tuple[tuple[Item, ...], ...], tuple[int, ...]]
"""A loop's frames, and the milliseconds of each."""


def loop(key: tuple[Item, ...], *ways: Sequence[tuple[Item, ...]]) -> Frames:
    """Return frames and their milliseconds: the key pose first, held, then every way from it and back to it."""
    frames = (key, *(frame for way in ways for frame in way))
    return frames, (KEY_POSE, *(1000 // FPS for _ in frames[1:]))


def there_and_back(draw: Callable[[float], tuple[Item, ...]], seconds: float) -> Frames:
    """Return a loop that begins at the end of a way, its key pose, goes back to its start and there again, so many seconds each way.

    ``draw``: the items at a share of the way, 0 to 1.
    """
    way = [draw(share) for share in eased(round(seconds * FPS))]
    return loop(way[-1], way[-2::-1], way[1:-1])


def eased(count: int) -> list[float]:
    """Return fractions of a movement from 0 to 1 that begin and end gently."""
    return [(1 - cos(pi * n / (count - 1))) / 2 for n in range(count)]


def arc(centre: Point, radius: float, start: float, end: float) -> tuple[Point, ...]:
    """Return points of an arc between two directions, in degrees."""
    return tuple((centre[0] + radius * cos(a), centre[1] + radius * sin(a))
                 for a in ((start + (end - start) * n / 24) * pi / 180 for n in range(25)))
