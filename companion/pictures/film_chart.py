"""A filmed squat as a chart: the bend of the lower back against the depth of the thigh, one line a squat, the onset with its band.

matplotlib is imported with the first.
"""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Final

from companion.pictures.charts import BAND, DOTS_PER_INCH, SMALL, WIDE
from companion.pictures.ink import GUIDE, INK, PAPER

if TYPE_CHECKING:
    from matplotlib.figure import Figure

FILM_CHART: Final = "chart_film"
DASHES: Final = ("-", "--", ":", "-.")
"""One a squat: told apart without colour."""


@dataclass(frozen=True, slots=True)
class FilmCurves:
    """A chart's content. ``onset``: where rounding begins and its interval in degrees of the thigh, None for none; ``squats``: the points
    of each squat, depth and bend in degrees."""

    onset: tuple[float, float, float] | None
    squats: tuple[tuple[tuple[float, float], ...], ...]

    @property
    def words(self) -> str:
        """The chart in words."""
        deepest = max(depth for squat in self.squats for depth, _ in squat)
        bends = [squat[-1][1] for squat in self.squats]
        told = (f"Filmed squat, {len(self.squats)} on the way down: bend of the lower back against depth of the thigh. "
                f"At {deepest:.0f}° of the thigh it has bent by {min(bends):.0f}° to {max(bends):.0f}°. ")
        if self.onset is None:
            return told + "No onset of rounding is marked."
        onset, low, high = self.onset
        return told + f"Rounding begins at about {onset:.0f}°, between {low:.0f}° and {high:.0f}°, marked by a line in a band."


def film_curves(text: str) -> FilmCurves | None:
    """Return the curves written in a line (film.words.curve_text); None where there is nothing to draw."""
    first, _, rest = text.partition("|")
    try:
        squats = tuple(tuple((float(depth), float(bend)) for depth, bend in (point.split(",") for point in squat.split()))
                       for squat in rest.split("|") if squat.strip())
        ends = tuple(map(float, first.split()))
    except ValueError:
        return None
    return FilmCurves((ends[0], ends[1], ends[2]) if len(ends) == 3 else None, squats) if squats else None


def film_chart(curves: FilmCurves) -> bytes:
    """Return the chart as PNG."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    out = BytesIO()
    FigureCanvasAgg(_drawn(curves)).print_png(out)  # type: ignore[no-untyped-call]
    return out.getvalue()


def _drawn(curves: FilmCurves) -> Figure:
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDE, 3.0), dpi=DOTS_PER_INCH, facecolor=PAPER, layout="constrained")
    figure.suptitle("Filmed squat: where the back rounds", fontsize=11.5, color=INK, fontweight="bold", x=0.02, ha="left")
    axes = figure.subplots()
    axes.set_facecolor(PAPER)
    if curves.onset is not None:
        onset, low, high = curves.onset
        axes.axvspan(low, high, color=BAND, zorder=0)
        axes.axvline(onset, color=INK, linewidth=1.6, zorder=1)
        axes.annotate(f"{onset:.0f}°", (onset, 1.0), xycoords=("data", "axes fraction"), xytext=(3, -11), textcoords="offset points",
                      fontsize=SMALL, color=INK)
    for number, squat in enumerate(curves.squats):
        depths, bends = zip(*squat, strict=True)
        axes.plot(depths, bends, color=GUIDE, linewidth=1.4, linestyle=DASHES[number % len(DASHES)], label=f"squat {number + 1}")
    axes.set_xlabel("depth of the thigh (90°: level with the floor)", fontsize=SMALL, color=INK)
    axes.set_ylabel("bend of the lower back, °", fontsize=SMALL, color=INK)
    axes.tick_params(labelsize=SMALL, colors=INK)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    axes.legend(fontsize=8.5, frameon=False, loc="upper left")
    return figure
