"""Charts for a phone: 390 pixels wide, large words, shapes and dashes besides colours. matplotlib is imported with the first."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from io import BytesIO
from itertools import pairwise
from typing import TYPE_CHECKING, Any, Final

from companion.pictures.ink import FAR_INK, GOOD_INK, GUIDE, INK, PAPER, WATCH_INK
from companion.pictures.series import Chart, Dot, Track
from companion.screening.sources import value

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDE: Final = 3.9
"""Inches, at a hundred phone pixels each, so that 10 points are 14 pixels."""
DOTS_PER_INCH: Final = 240
TALL: Final = 2.15
SMALL: Final = 9.5
BAND: Final = "#E6EAEE"
GAP: Final = timedelta(days=value("chart_gap"))
"""Longest time between points joined by a solid line; over longer gaps nothing was measured, and it is dotted."""
MANY: Final = 12
"""Most points with all labels; of more, only the first, lowest, highest and last are labelled (choice)."""

SHAPES: Final[dict[str, tuple[str, str, bool]]] = {
    "": ("o", GUIDE, True), "before": ("o", GUIDE, True), "prime": ("o", GUIDE, True), "plain": ("s", INK, False),
    "untold": ("D", FAR_INK, False), "still": ("o", GOOD_INK, True), "moved": ("v", WATCH_INK, False), "hurt": ("X", WATCH_INK, True)}
"""Marker, ink and fill of each kind of point, told apart by shape first; in the order they are drawn: what hurt is never covered."""


def draw(chart: Chart) -> Figure:
    """Return the chart as a figure: one axis per track, stacked, with a shared time axis."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDE, TALL * len(chart.tracks) + 0.62 + 0.17 * len(chart.below)),
                    dpi=DOTS_PER_INCH, facecolor=PAPER, layout="constrained")
    figure.get_layout_engine().set(h_pad=0.05, w_pad=0.05, hspace=0.04)  # type: ignore[union-attr, call-arg]
    figure.suptitle(chart.title, fontsize=11.5, color=INK, fontweight="bold", x=0.02, ha="left")
    every = [dot for track in chart.tracks for dot in track.dots]
    days = _span([dot.day for dot in every])
    values = chart.limits or _limits(chart, every)
    cells: Any = figure.subplots(len(chart.tracks), 1, squeeze=False)[:, 0]
    for axes, track in zip(cells, chart.tracks, strict=True):
        axes.set_xlim(*days)
        axes.set_ylim(*values)
        _ground(axes, chart, track)
        for kind in sorted(dict.fromkeys(dot.kind for dot in track.dots), key=list(SHAPES).index):
            _points(axes, chart, [dot for dot in track.dots if dot.kind == kind], (days[1] - days[0]) * 0.12)
        _dates(axes, [dot.day for dot in every], last=track is chart.tracks[-1])
    if chart.below:
        cells[-1].set_xlabel("\n".join(chart.below), fontsize=8.5, color=INK, loc="left", linespacing=1.35)
    if chart.kinds:
        _kinds(figure, chart)
    return figure


def png(chart: Chart) -> bytes:
    """Return the chart as PNG."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    figure, out = draw(chart), BytesIO()
    FigureCanvasAgg(figure).print_png(out)  # type: ignore[no-untyped-call]
    return out.getvalue()


def _span(days: Sequence[date]) -> tuple[date, date]:
    """Return the first and last date of the time axis, with room at both ends; at least a fortnight."""
    first, last = min(days), max(days)
    room = max((last - first) * 0.12, timedelta(days=7))
    return first - room * 0.8, last + room


def _limits(chart: Chart, every: Sequence[Dot]) -> tuple[float, float]:
    """Return the limits of the value axis, which holds every error bar, line and band."""
    ends = [dot.value + way * dot.error for dot in every for way in (-1, 1)]
    ends += [mark.value for mark in chart.marks] + [end for track in chart.tracks if track.band for end in track.band]
    low, high = min(ends), max(ends)
    room = max((high - low) * 0.16, 0.5)  # for a label beyond the last error bar
    return low - room, high + room


def _ground(axes: Axes, chart: Chart, track: Track) -> None:
    """Draw everything but the points: band, lines, ticks, title."""
    axes.set_facecolor(PAPER)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    for side in ("left", "bottom"):
        axes.spines[side].set_color(FAR_INK)
    axes.tick_params(colors=INK, labelsize=SMALL, length=3)
    axes.set_title(track.title, fontsize=10.5, color=INK, loc="left", pad=3)
    if track.band:
        axes.axhspan(*track.band, facecolor=BAND, zorder=0)
    for mark in chart.marks:
        axes.axhline(mark.value, color=SHAPES[mark.kind][1] if mark.kind else INK, linewidth=1.1, zorder=1,
                     linestyle=_dash(mark.kind))
        if not mark.kind:  # two means may be too close for labels: they stand under the chart
            axes.text(1.01, mark.value, mark.label, transform=axes.get_yaxis_transform(), fontsize=SMALL, color=INK, va="center")
    if chart.ticks:
        axes.set_yticks([value for value, _ in chart.ticks], [label for _, label in chart.ticks])
    else:
        from matplotlib.ticker import FuncFormatter, MaxNLocator

        axes.yaxis.set_major_locator(MaxNLocator(5, integer=True))
        axes.yaxis.set_major_formatter(FuncFormatter(lambda value, _: f"{value:g}{chart.unit}"))


def _points(axes: Axes, chart: Chart, dots: Sequence[Dot], room: timedelta) -> None:
    """Draw one kind of points, joined in time and dotted over gaps, with key points labelled. If there are many, only those have error
    bars."""
    shape, ink, filled = SHAPES[dots[0].kind]
    if chart.joined and dots[0].kind != "hurt":
        for one, other in pairwise(dots):
            gap = other.day - one.day > GAP
            axes.plot(_x([one, other]), [one.value, other.value], color=ink, linewidth=1.4, linestyle=":" if gap else "-", zorder=2)
    axes.plot(_x(dots), [dot.value for dot in dots], shape, color=ink, markersize=7.5 if len(dots) <= MANY else 4.5,
              markerfacecolor=ink if filled else PAPER, markeredgewidth=1.6, zorder=3)
    telling = _telling(dots, room)
    barred = dots if len(dots) <= MANY else telling
    if dots[0].error:
        axes.errorbar(_x(barred), [dot.value for dot in barred], yerr=[dot.error for dot in barred], fmt="none", ecolor=ink,
                      elinewidth=1.3, capsize=3, zorder=3)
    if not chart.ticks:
        for dot in telling:
            way, off = _place(axes, chart, dots, dot)
            lean = 0 if len(dots) == 1 else (dot is dots[-1]) - (dot is dots[0])  # labels at the ends lean inwards, off the axis
            axes.annotate(dot.label, (_x([dot])[0], dot.value + way * dot.error), xytext=(5 * lean, way * off),
                          textcoords="offset points", ha={-1: "left", 0: "center", 1: "right"}[lean],
                          va="bottom" if way > 0 else "top", fontsize=SMALL, color=INK, zorder=4,
                          bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 0.4, "alpha": 0.7})


def _place(axes: Axes, chart: Chart, dots: Sequence[Dot], dot: Dot) -> tuple[int, float]:
    """Return whether a point's label goes above (1) or below it (-1), and how many points off: no line of the chart goes through its
    words. A point alone has room on both sides; else the label goes further off."""
    low, high = axes.get_ylim()
    points = 72 * TALL * 0.8 / (high - low)  # of a unit of value, where the axis takes four fifths of its height

    def clear(way: int, off: float) -> bool:
        """True if no line is within half a label's height and a little air."""
        middle = dot.value + way * (dot.error + (off + SMALL * 0.65) / points)
        return all(abs(mark.value - middle) * points > SMALL * 0.9 for mark in chart.marks if not mark.kind)
    way, near = 1 if _above(dots, dot) else -1, 3 if dot.error else 7
    ways = (way, -way) if len(dots) == 1 else (way,)
    return next((place for off in range(near, near + 30) for one in ways if clear(*(place := (one, off)))), (way, near))


def _above(dots: Sequence[Dot], dot: Dot) -> bool:
    """True if a point's label goes above it, away from its neighbours; for the last one, above wherever possible."""
    here = dots.index(dot)
    beside = [*dots[max(here - 1, 0):here], *dots[here + 1:here + 2]]
    if dot is dots[-1] and beside:
        return dot.value + dot.error >= max(one.value for one in beside)
    return not beside or dot.value >= sum(one.value for one in beside) / len(beside)


def _x(dots: Sequence[Dot]) -> list[Any]:
    return [dot.day for dot in dots]


def _telling(dots: Sequence[Dot], room: timedelta) -> list[Dot]:
    """Return the points to label: last, first and, if there is room, those between or the extremes."""
    wanted = [dots[-1], dots[0], *(dots if len(dots) <= 4 else ()),
              *((min(dots, key=lambda dot: dot.value), max(dots, key=lambda dot: dot.value)) if len(dots) > MANY else ())]
    told: list[Dot] = []
    for dot in wanted:
        if all(abs(dot.day - other.day) > room for other in told):
            told.append(dot)
    return told


def _dates(axes: Axes, days: Sequence[date], last: bool) -> None:
    """Label at most three dates along the bottom: first, last, and one half way if there is room."""
    first, end = min(days), max(days)
    shown = sorted({first, end})
    if (end - first).days > 0 and len(set(days)) > 2:
        middle = first + (end - first) / 2
        shown.insert(1, min(set(days), key=lambda day: abs(day - middle)))
        span = end - first
        if min(shown[1] - first, end - shown[1]) < span * 0.28:
            shown.pop(1)
    year = first.year != end.year
    axes.set_xticks(shown, [(f"{day.day} {day:%b}" + (f"\n{day:%Y}" if year else "")) if last else "" for day in shown])  # type: ignore[arg-type]


def _kinds(figure: Figure, chart: Chart) -> None:
    """Draw the legend of shapes in a line at the bottom, each with the dash of its mean if that is drawn."""
    from matplotlib.lines import Line2D

    means = {mark.kind for mark in chart.marks}
    handles = []
    for kind, _ in chart.kinds:
        shape, ink, filled = SHAPES[kind]
        handles.append(Line2D([], [], linestyle=_dash(kind) if kind in means else "none", linewidth=1.1, marker=shape, color=ink,
                              markersize=7.5, markeredgewidth=1.6, markerfacecolor=ink if filled else PAPER))
    figure.legend(handles, [label for _, label in chart.kinds], loc="outside lower left", ncols=2, frameon=False, fontsize=SMALL,
                  labelcolor=INK, handletextpad=0.5 if means - {""} else 0.2, handlelength=2.6 if means - {""} else 2.0)


def _dash(kind: str) -> tuple[int, tuple[int, int]]:
    """Return the dash of a line: dotted for the mean without the drill, so that two means differ by more than ink."""
    return 0, (1, 2) if kind == "plain" else (5, 3)


