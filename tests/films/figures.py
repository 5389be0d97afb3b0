"""What the films say of the measurement: the error of every angle and of the onset, against the goals."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from companion.film.cards import ON_BODY
from companion.film.footage import Footage, Unreadable, footage_from
from companion.film.measure import measured
from companion.film.squats import curves_of
from tests.films.camera import Film
from tests.films.figure import Taped


@dataclass(frozen=True, slots=True)
class Figure:
    """One film read: the standard deviation and mean of each angle's error against its card (deg), over how many frames, and of the depth
    against the bone; the onset, its interval, and the truth; or why it was refused."""

    film: Film
    refused: str = ""
    spread: dict[str, float] | None = None
    shift: dict[str, float] | None = None
    frames: dict[str, int] | None = None
    bone: float = float("nan")
    onset: float | None = None
    low: float | None = None
    high: float | None = None
    bend: float = float("nan")
    squats: int = 0
    left_out: float = 0.0

    @property
    def wrong_by(self) -> float | None:
        return None if self.onset is None or self.film.squat.onset is None else self.onset - self.film.squat.onset

    @property
    def slid(self) -> float:
        """By how much the thigh card's depth differs from the bone's at the onset, in degrees."""
        lean = self.film.squat.angles(self.film.squat.onset or 0.0)
        return -self.film.looks.faces * self.film.taped["thigh"].slides * (lean["pelvis"] - lean["thigh"]) / 130

    @property
    def total(self) -> float:
        """The true bend of the lower back at the deepest point."""
        return self.film.squat.flexion(self.film.squat.deepest)


def compared(film: Film, footage: Footage) -> Figure:
    """Read one film's footage and compare it with what the figure did."""
    try:
        found = measured(footage)
    except Unreadable as error:
        return Figure(film, str(error))
    curves = found.curves
    depth = np.array([film.squat.depth(at) for at in curves.times])
    lean = {place: np.array([film.squat.angles(one)[place] for one in depth]) for place in ON_BODY}
    bent = (lean["pelvis"] - lean["thigh"]) / 130
    way = film.looks.faces  # on the other side of the body a card slides the other way
    on_card = {place: lean[place] + way * film.taped.get(place, Taped()).slides * bent for place in ON_BODY}
    by_card = curves_of(found.angles, curves.standing).depth
    read = {"shank": curves.shank, "thigh": -by_card, "pelvis": curves.pelvis, "ribs": curves.ribs}
    errors: dict[str, np.ndarray] = {place: read[place] - on_card[place] for place in ON_BODY}
    errors["flexion"] = errors["ribs"] - errors["pelvis"]
    errors["flexion of the bones"] = curves.flexion - (lean["ribs"] - lean["pelvis"])
    onset = found.onset
    return Figure(film, "", {name: float(np.nanstd(one)) for name, one in errors.items()},
                  {name: float(np.nanmean(one)) for name, one in errors.items()},
                  {name: int(np.isfinite(one).sum()) for name, one in errors.items()}, float(np.nanstd(curves.depth - depth)),
                  onset.depth, onset.low, onset.high, onset.bend, len(found.squats), found.angles.left_out)


def footage_of(kept: Path) -> Footage:
    return footage_from(json.loads(kept.read_text("utf-8")))


def told(figures: Sequence[Figure]) -> str:
    """The figures as lines, with the goals."""
    read = [one for one in figures if not one.refused]
    lines = [f"films: {len(figures)}, refused: {len(figures) - len(read)}"]
    lines += [f"  refused (seed {one.film.seed}): {one.refused}" for one in figures if one.refused]
    if not read:
        return "\n".join(lines)
    lines.append("angle                  SD against the card (goal 1.5): over all frames of all films; in one film: median, 95 % of films, "
                 "worst, above 1.5")
    for name in (read[0].spread or {}):
        spread, shift, frames = (np.array([(of or {})[name] for of in ones]) for ones in zip(
            *((one.spread, one.shift, one.frames) for one in read), strict=True))
        shares = frames / frames.sum()
        pooled = np.sqrt(shares @ (spread**2 + shift**2) - (shares @ shift)**2)
        lines.append(f"  {name:22}{pooled:5.2f}   {np.median(spread):5.2f}{np.quantile(spread, .95):7.2f}{spread.max():7.2f}"
                     f"{(spread > 1.5).sum():5} of {len(read)}")
    lines.append(f"  depth against the bone {np.median([one.bone for one in read]):.2f} (median SD; cards slide)")
    bending = [one for one in read if one.film.squat.onset is not None]
    found = [one for one in bending if one.onset is not None]
    flat = [one for one in read if one.film.squat.onset is None]
    if found:
        wrong = np.array([abs(one.wrong_by or 0.0) for one in found])
        held = [one for one in found if (one.low or 0) <= (one.film.squat.onset or 0) <= (one.high or 0)]
        width = np.median([(one.high or 0) - (one.low or 0) for one in found])
        lines += [f"onset: median error {np.median(wrong):.1f}° (goal 2.5), 95 % within {np.quantile(wrong, .95):.1f}° (goal 6), "
                  f"bias {np.mean([one.wrong_by or 0.0 for one in found]):+.1f}°",
                  f"the interval holds the truth in {len(held)} of {len(found)}: {100 * len(held) / len(found):.0f} % (goal 90 to 98), "
                  f"median width {width:.1f}°"]
        slid = np.array([abs((one.wrong_by or 0.0) + one.slid) for one in found])
        lines.append(f"reckoned for a thigh card that slides twice as far: median error {np.median(slid):.1f}°, 95 % within "
                     f"{np.quantile(slid, .95):.1f}°")
    if bending:
        lines.append(f"wrong “no onset”: {len(bending) - len(found)} of {len(bending)} (goal 5 %)")
    if flat:
        lines.append(f"false onset where the back bends under 3°: {sum(one.onset is not None for one in flat)} of {len(flat)} (goal 5 %)")
    lines += _costs(found)
    return "\n".join(lines)


def _costs(found: Sequence[Figure]) -> list[str]:
    """What yaw, sliding and misplacement cost: the onset's error in thirds of the films, from least to most."""
    if len(found) < 9:
        return []
    causes = {
        "yaw of the camera": lambda film: abs(film.view.yaw),
        "thigh card sliding": lambda film: abs(film.taped["thigh"].slides),
        "pelvis and rib cards sliding": lambda film: abs(film.taped["ribs"].slides - film.taped["pelvis"].slides),
        "cards turned on the body": lambda film: max(abs(film.taped[place].turned) for place in ON_BODY),
        "cards tilted out of the plane": lambda film: max(max(map(abs, film.taped[place].tilted)) for place in ON_BODY),
        "distance": lambda film: film.view.distance,
    }
    lines = ["median error of the onset in thirds of the films, by the size of"]
    for name, size in causes.items():
        ordered = sorted(found, key=lambda one: size(one.film))
        thirds = np.array_split(np.array([abs(one.wrong_by or 0.0) for one in ordered]), 3)
        edges = [size(ordered[at].film) for at in (0, len(ordered) // 3, 2 * len(ordered) // 3, -1)]
        lines.append(f"  {name:30}" + "   ".join(f"{low:.1f} to {high:.1f}: {np.median(third):.1f}°"
                                               for low, high, third in zip(edges, edges[1:], thirds, strict=False)))
    return lines
