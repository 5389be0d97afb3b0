"""A lifter's own squat: their lengths and ranges, going down to the depth where the estimate says the tuck would start."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final, cast

from companion.pictures import props
from companion.pictures.draw import Panel, there_and_back
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import Arm, Build, Leg, Posture, Reach, along, between, joints_of
from companion.pictures.ink import FAR_FILL, FAR_INK, GUIDE
from companion.pictures.scene import Area, Item, Stroke, figure
from companion.pictures.views import WIDER_TURN, wider_stance
from companion.screening.about import About
from companion.screening.body import FOOT_LENGTH, Bar, Body, Setup, body_of
from companion.screening.errors import Errors
from companion.screening.estimate import HELD_WEIGHT, DepthEstimate, Help, depth_estimate, stiffer_ankle
from companion.screening.posture import balance_of, lean_at
from companion.screening.readings import NumberFormat, metric
from companion.screening.screen import Screen
from companion.screening.setups import HEEL_LIFT
from companion.screening.tuck import MASS, TURN_OUT, Spread

NAME = "your_squat"
VIEW = (-0.44, -0.05, 0.46, 1.03)
BAR_UP: Final = {"high": 0.012, "low": -0.030}
"""How far along the trunk over the shoulder a bar on the back is drawn, on the figure's skin: low is 7 cm lower (choice)."""
ARMS: Final = Arm(-40, -25)
UPRIGHT: Final = Posture(90, Leg(-90, -90), Arm(-80, -60), head=90)


def your_squat(screen: Screen, about: About, errors: Errors | None = None, show: NumberFormat = metric) -> Drawing | None:
    """Return a loop down to the onset without load, beside the best set-up and the lifter's own bar; None without an estimate.

    The figure has the lengths that were measured; the others are an average adult's shares of the height.
    """
    found = depth_estimate(screen, about, errors, show)
    if not isinstance(found, DepthEstimate) or about.height is None:
        return None
    shin = cast(Spread, stiffer_ankle(screen, about.height, errors or Errors(about.sex))).value
    body = body_of(about.height, about.mass or MASS, shank=about.shin, thigh=about.thigh, trunk=about.trunk)
    lengths = "measured lengths" if about.shin or about.thigh or about.trunk else "height"
    start = "at the earliest " if found.at_least else ""
    depths = found.depths
    plain = Setup(turn_out=TURN_OUT, arms=0.5)
    flat = squat_of(body, plain, shin, depths.median)
    band = _band(flat, _build(body), depths.low, depths.high)
    others = tuple(_others(found, about, body, shin, start, show))
    return replace(moving(f"your squat from the side, a loop, drawn with your {lengths} and ranges, down to where length "
                   f"alone would {start}start the tuck. 80 %: from {at(depths.low)} to {at(depths.high)}, shaded. An estimate from "
                   "lengths: it is no picture of your back, and no reason to go deeper or heavier.",
                   there_and_back(lambda share: (*band, *_drawn(between(UPRIGHT, flat, share), _build(body))), 2),
                   Panel((), VIEW, f"Tuck starts {start}{at(depths.median)}"), *others, rows=(2, *(len(others[1:]) * (1,)))), name=NAME)


def at(depth: float) -> str:
    """Return a thigh angle in words, to 5 degrees: the estimate is no better."""
    whole = 5 * round(depth / 5)
    return "at parallel" if not whole else f"{abs(whole)}° {'below' if whole > 0 else 'above'} parallel"


def best_help(helps: tuple[Help, ...]) -> Help:
    """Return the change whose own trial moved the start furthest down; without such a trial, heels raised."""
    tried = [one for one in helps if one.trial and one.trial > 0]
    return max(tried, key=lambda one: (one.trial or 0, one.gain), default=next(one for one in helps if one.squat == "heels"))


def _others(found: DepthEstimate, about: About, body: Body, shin: float, start: str, show: NumberFormat) -> Iterator[Panel]:
    """Yield the best set-up of the lifter's trials, and their own bar and load if known."""
    best = best_help(found.helps)
    setup, words = {
        "heels": (Setup(turn_out=TURN_OUT, lift=HEEL_LIFT, arms=0.5), f"Heels on {show(HEEL_LIFT, 'cm')}"),
        "front": (Setup("arms", HELD_WEIGHT, turn_out=TURN_OUT, arms=1), "Weight in front"),
        "wide": (Setup(turn_out=TURN_OUT + WIDER_TURN, arms=0.5), "Feet further out")}[best.squat]
    feet = (*wider_stance((0.20, 0.86)), *props.note((0.20, 0.80), "from above", "m", FAR_INK, 13)) if best.squat == "wide" else ()
    tried = "best of your trials" if best.trial and best.trial > 0 else "by the estimate"
    depth = found.depths.median + best.gain
    yield Panel((*_drawn(squat_of(body, setup, shin, depth), _build(body)), *feet), VIEW, f"{words}, {tried}: {start}{at(depth)}")
    if found.under_bar is not None and about.load is not None:
        bar = cast(Bar, about.bar)
        posture = squat_of(body, Setup(bar, about.load, turn_out=TURN_OUT), shin, found.under_bar.median)
        x, y = shoulder = joints_of(posture, _build(body)).shoulder
        if bar == "front":
            place = x + 0.092, y + 0.032
            posture = replace(posture, near_arm=Reach(place[0] + 0.015, place[1] - 0.030, palm=100))
        else:
            place = along(along(shoulder, posture.trunk, BAR_UP[bar]), posture.trunk + 90, 0.064)
            posture = replace(posture, near_arm=Arm(posture.trunk + 165, posture.trunk + 25, 0.6))
        yield Panel((*_drawn(posture, _build(body)), *props.bar_end(place)), VIEW,
                    f"Bar {bar}, {show(about.load, 'kg')}: {start}{at(found.under_bar.median)}")


def squat_of(body: Body, setup: Setup, shin: float, depth: float) -> Posture:
    """Return the balanced posture of a body in a set-up, its thigh at a depth; ``shin``: its lean on flat ground."""
    balance = balance_of(body, setup, shin)
    lean, leans = float(lean_at(balance, depth)), float(balance.shin)
    arms = Arm(0, 0) if setup.arms == 1 else ARMS
    return Posture(90 - lean, Leg(depth, -90 - leans, shin - leans), arms, head=90 - lean * 0.45)


def _band(posture: Posture, build: Build, low: float, high: float) -> tuple[Item, ...]:
    """Return the shaded band between two directions of the thigh, with its edges dashed."""
    knee = joints_of(posture, build).near.knee
    ends = [along(knee, 180 + edge, 0.40) for edge in (low, high)]
    return (Area((knee, *ends), FAR_FILL), *(Stroke((along(knee, 180 + edge, 0.06), end), GUIDE, 0.008, 0.022)
                                             for edge, end in zip((low, high), ends, strict=True)),
            *props.note(along(knee, 180 + (low + high) / 2, 0.435), "80 %", size=13))


def _drawn(posture: Posture, build: Build) -> tuple[Item, ...]:
    joints = joints_of(posture, build)
    heel = joints.near.heel
    under = props.block(heel[0] - 0.03, heel[0] + 0.04, heel[1] - 0.012) if posture.near.foot < -0.5 else ()
    return (*figure(joints, "plain"), *props.floor(-1, 1), *under)


def _build(body: Body) -> Build:
    """Return a body's lengths as shares of its stature; the thigh keeps its full length in the side view."""
    stature = float(str(body.foot)) / FOOT_LENGTH
    return Build(*(float(str(length)) / stature for length in (body.shank, body.thigh, body.trunk)))
