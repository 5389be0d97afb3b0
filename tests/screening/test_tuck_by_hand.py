"""The estimate's draws against a second reckoning of the same lifter, written from the printed tables and plain statics.

Numbers are typed from Drillis & Contini 1966 and Dempster (as in Winter, second-hand), de Leva 1996 (second-hand), Murray 2002 (read); what
is drawn evenly or normally about them is this project's choice. The moments are added up joint by joint and the depth is found by halving,
where the product solves for it.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from companion.screening.body import Setup, body_of
from companion.screening.posture import balance_of, deepest, depth_of_fold
from companion.screening.tuck import Lifter, Spread, Squat, depths_of, draws_of

from .points import points_of

MANY = 200_000
EXACT = Spread(36.0)


def by_hand(height: float, ankle: tuple[float, float], fold: tuple[float, float], mass: tuple[float, float] = (75, 15),
            turn: tuple[float, float] = (15, 5), arms: tuple[float, float] = (0, 1), taped: tuple[float, float, float] | None = None,
            bar: str = "none", load: float = 0.0) -> tuple[float, float, float]:
    """The depths under which a tenth, a half and nine tenths of the made-up lifters start the tuck."""
    z, even = np.random.default_rng(99).standard_normal((9, MANY)), np.random.default_rng(98).random((3, MANY))
    about = (.285 - .039) * height, (.530 - .285) * height, (.818 - .530) * height, .152 * height
    if taped:
        shank, thigh, trunk = (length + 1.0 * z[n] for n, length in enumerate(taped))
    else:
        shank, thigh, trunk = (length * (1 + .04 * z[n]) for n, length in enumerate(about[:3]))
    foot = about[3] * (1 + .04 * z[3])
    kilos, feet = mass[0] + mass[1] * z[4], np.radians(turn[0] + turn[1] * z[5])
    shin, hip_bend = np.radians(ankle[0] + ankle[1] * z[6]), (fold[0] + fold[1] * z[7]) / (1 - .181 * even[0]) + 5.0 * z[8]
    thigh_weighs = .100 + (.1478 - .100) * even[1]
    upper_weighs = 1 - 2 * (thigh_weighs + .0465 + .0145)
    out = .100 * (.530 * .332 / .288) * (arms[0] + (arms[1] - arms[0]) * even[2] if bar == "none" else 1.0 if bar == "arms" else 0.0)

    def moment(depth: np.ndarray) -> np.ndarray:
        lean = np.radians(hip_bend - 90 - depth)
        ankle_at = (.5 - .75) * foot
        knee = ankle_at + shank * np.sin(shin)
        hip = knee - thigh * np.cos(feet) * np.cos(np.radians(depth))
        own = (2 * .0465 * (knee + .433 * (ankle_at - knee)) + 2 * thigh_weighs * (hip + .433 * (knee - hip))
               + upper_weighs * (hip + .626 * trunk * np.sin(lean)) + out * trunk * (1 + np.sin(lean)))
        up, ahead = {"high": (1.04, -.08), "low": (.92, -.12), "front": (1.0, .16), "arms": (1.0, 0.0), "none": (1.0, 0.0)}[bar]
        weight = hip + trunk * (up * np.sin(lean) + ahead * np.cos(lean)) + (1.3 * trunk if bar == "arms" else 0)
        return kilos * own + load * weight

    end = np.minimum(155 - 90 - np.degrees(shin), 40)
    low, high = np.full(MANY, -60.0), np.minimum(hip_bend - 90, end)
    for _ in range(34):
        middle = (low + high) / 2
        forward = moment(middle) > 0  # leans too much there: the fold is reached deeper
        low, high = np.where(forward, middle, low), np.where(forward, high, middle)
    return tuple(np.quantile(low, (.1, .5, .9)))  # type: ignore[return-value]


@pytest.mark.parametrize(("lifter", "squat", "hand"), [
    (Lifter(175, EXACT, Spread(105)), Squat(), {"height": 175, "ankle": (36, 0), "fold": (105, 0)}),
    (Lifter(175, Spread(36, 1.7), Spread(105, 5.0)), Squat(), {"height": 175, "ankle": (36, 1.7), "fold": (105, 5)}),
    (Lifter(190, EXACT, Spread(105), Spread(90), Spread(15), (0.5, 0.5), 46.0, 47.0, 55.0), Squat(),
     {"height": 190, "ankle": (36, 0), "fold": (105, 0), "mass": (90, 0), "turn": (15, 0), "arms": (.5, .5), "taped": (46, 47, 55)}),
    (Lifter(175, EXACT, Spread(105)), Squat("high", 80), {"height": 175, "ankle": (36, 0), "fold": (105, 0), "bar": "high", "load": 80}),
    (Lifter(175, EXACT, Spread(105)), Squat("low", 80), {"height": 175, "ankle": (36, 0), "fold": (105, 0), "bar": "low", "load": 80}),
    (Lifter(175, EXACT, Spread(100)), Squat("front", 60), {"height": 175, "ankle": (36, 0), "fold": (100, 0), "bar": "front", "load": 60}),
    (Lifter(175, EXACT, Spread(97), Spread(75)), Squat("arms", 5),
     {"height": 175, "ankle": (36, 0), "fold": (97, 0), "mass": (75, 0), "bar": "arms", "load": 5}),
    (Lifter(175, EXACT, Spread(100)), Squat("arms", 20), {"height": 175, "ankle": (36, 0), "fold": (100, 0), "bar": "arms", "load": 20}),
], ids=["no bar", "with error", "taped", "high bar", "low bar", "front bar", "weight in front", "heavy in front"])
def test_depths_are_those_of_the_second_reckoning(lifter: Lifter, squat: Squat, hand: dict[str, Any]) -> None:
    found = depths_of(draws_of(lifter, squat, draws=MANY))
    assert (found.low, found.median, found.high) == pytest.approx(by_hand(**hand), abs=0.1)


def test_the_knee_closes_at_155_degrees_and_no_thigh_sinks_past_40() -> None:
    body = body_of(175, 75)
    assert float(deepest(balance_of(body, Setup(), 35))) == pytest.approx(30)  # 155 - 90 - 35
    assert float(deepest(balance_of(body, Setup(), 20))) == pytest.approx(40)


def test_no_thigh_is_looked_at_above_sixty_degrees() -> None:
    """A third of the way down (choice): a hip that hardly folds starts the tuck there."""
    assert float(depth_of_fold(balance_of(body_of(175, 75), Setup(), 30), 35)) == pytest.approx(-60)


@pytest.mark.parametrize(("bar", "up", "ahead"), [("high", 52, -4), ("low", 46, -6), ("front", 50, 8), ("arms", 50, 65)])
def test_a_bar_lies_where_it_is_said_to_on_a_trunk_of_50_cm(bar, up: float, ahead: float) -> None:
    """4 cm behind, 6 cm behind, 8 cm ahead (choice); in the hands 1.3 trunk lengths out (memory)."""
    at = points_of(body_of(175, 75, trunk=50.0), Setup(bar, 60), 30, 0, 0)
    assert (at.weight[1] - at.hip[1], at.weight[0] - at.hip[0]) == pytest.approx((up, ahead))
