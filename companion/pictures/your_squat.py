"""A lifter's own squat: their lengths and ranges at the depth where the estimate says the pelvis has to turn."""

from __future__ import annotations

from companion.pictures import props
from companion.pictures.draw import Panel
from companion.pictures.drawing import Drawing
from companion.pictures.figure import Arm, Build, Leg, Posture, along, joints_of
from companion.pictures.ink import GUIDE
from companion.pictures.scene import Item, Stroke, figure
from companion.screening.about import About
from companion.screening.body import Setup, body_of
from companion.screening.errors import Errors
from companion.screening.estimate import HEEL_LIFT, DepthEstimate, depth_estimate
from companion.screening.geometry import shin_from_distance
from companion.screening.pairs import ankles
from companion.screening.posture import balance_of, lean_at
from companion.screening.readings import NumberFormat, mean_of, metric
from companion.screening.screen import Screen
from companion.screening.tuck import MASS, TURN_OUT

NAME = "your_squat"
VIEW = (-0.44, -0.05, 0.46, 0.86)


def your_squat(screen: Screen, about: About, errors: Errors | None = None, show: NumberFormat = metric) -> Drawing | None:
    """Return the drawing, with heels flat and raised; None if there is no estimate."""
    found = depth_estimate(screen, about, errors, show)
    shin = _shin(screen, about)
    if not isinstance(found, DepthEstimate) or shin is None or about.height is None:
        return None
    gain = next((one.gain for one in found.helps if one.squat == "heels"), 0.0)
    start = "at the earliest " if found.at_least else ""
    depths = found.depths
    flat = _panel(about, shin, depths.median, 0.0, f"Flat: {start}{at(depths.median)}", (depths.low, depths.high))
    raised = _panel(about, shin, depths.median + gain, HEEL_LIFT, f"Heels on {show(HEEL_LIFT, 'cm')}: {start}{at(depths.median + gain)}")
    return Drawing(NAME, f"your squat from the side, drawn with your own height and ranges, at the depth where length alone would {start}"
                   f"start the tuck. 80 %: from {at(depths.low)} to {at(depths.high)}, the two dashed lines. An estimate, no reason to go "
                   "deeper or heavier.", (flat, raised))


def at(depth: float) -> str:
    """Return a thigh angle in words, to 5 degrees: the estimate is no better."""
    whole = 5 * round(depth / 5)
    return "parallel" if not whole else f"{abs(whole)}° {'below' if whole > 0 else 'above'} parallel"


def _shin(screen: Screen, about: About) -> float | None:
    """Return the stiffer side's shin angle in degrees from upright, as the estimate uses it."""
    found = []
    for taken in ankles(screen):
        if taken[0].unit == "deg":
            found.append(mean_of(taken))
        elif about.height is not None:
            try:
                found.append(shin_from_distance(mean_of(taken), about.height).value)
            except ValueError:
                continue
    return min(found, default=None)


def _panel(about: About, shin: float, depth: float, lift: float, title: str, band: tuple[float, float] | None = None) -> Panel:
    assert about.height is not None
    body = body_of(about.height, about.mass or MASS.value)
    balance = balance_of(body, Setup(turn_out=TURN_OUT.value, lift=lift, arms=0.5), shin)
    lean, leans = float(lean_at(balance, depth)), float(balance.shin)
    posture = Posture(90 - lean, Leg(depth, -90 - leans, shin - leans), Arm(-40, -25), head=90 - lean * 0.45)
    joints = joints_of(posture, _build(about.height, body.shank, body.thigh, body.trunk))
    knee = joints.near.knee
    lines: list[Item] = [Stroke((along(knee, 180 + end, 0.06), along(knee, 180 + end, 0.40)), GUIDE, 0.008, 0.022) for end in band or ()]
    lines += props.note(along(knee, 180 + sum(band) / 2, 0.435), "80 %", size=13) if band else ()
    under = props.block(joints.near.heel[0] - 0.03, joints.near.heel[0] + 0.04, joints.near.heel[1] - 0.012) if lift else ()
    return Panel((*lines, *figure(joints), *props.floor(-1, 1), *under), VIEW, title)


def _build(height: float, shank: object, thigh: object, trunk: object) -> Build:
    """Return lengths in cm as fractions of stature; the thigh keeps its full length in the side view."""
    return Build(*(float(str(length)) / height for length in (shank, thigh, trunk)))
