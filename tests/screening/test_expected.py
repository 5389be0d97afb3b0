"""Examples and decisions worked by hand from the sources, against the public functions; what is printed is held in ``test_sources``.

Where ``expected.toml`` and the code disagree, the source decides which of them is wrong, and ``because`` says what came of it.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Sequence
from dataclasses import replace
from math import sqrt
from pathlib import Path
from typing import Any

import pytest

from companion.screening.about import About
from companion.screening.body import body_of
from companion.screening.conclusion import conclude
from companion.screening.drills import BY_PART, HOME_DAYS, offer_for
from companion.screening.errors import Errors, Repeats, repeats_of
from companion.screening.geometry import highest_heel, leg_raise_from_heel, shin_from_distance
from companion.screening.load_threshold import SeenSet, bracket
from companion.screening.outcomes import interval
from companion.screening.priming_trial import smallest_p, verdict_of
from companion.screening.protocols import error_of, protocol
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.leg_raise import LegRaise
from companion.screening.readings import (
    MDC_FACTOR,
    SIDES,
    Error,
    Reading,
    against_threshold,
    sessions_to_average,
    side_difference,
)
from companion.screening.retest import PROGRAMME_WEEKS, bounded, change, plan, weeks_until_visible
from companion.screening.rulings import contradiction
from companion.screening.safety import Level, level_from_check, level_from_pain
from companion.screening.screen import screen_from
from companion.screening.trend import pain_change, trend
from companion.screening.warm_up_sets import sets_for
from tests.table import each_row

from .build import ABOUT, CONTROL_LIKELY, LOOK, rows, screen
from .test_priming_trial import days
from .test_safety import SMALL, WELL
from .test_trend import sessions

EXPECTED: dict[str, Any] = tomllib.loads((Path(__file__).parent / "expected.toml").read_text("utf-8"))
UNITS = {("leg_raise", method): "deg" for method in ("level", "level_own", "heel", "eye")} | {
    ("knee_to_wall", "tape"): "cm", ("knee_to_wall", "level"): "deg"}


def error(test: str, method: str, sex: str) -> Error:
    return error_of(test, method, sex)


def reading(test: str, method: str, value: float) -> Reading:
    return Reading(test, value, UNITS[test, method], "left", method, "" if method == "tape" else "shin")


def compared(test: str, method: str, sex: str, line: float, value: float) -> str:
    (threshold,) = [one for one in protocol(test).thresholds_in(UNITS[test, method]) if abs(one.value - line) < .5]
    return against_threshold([reading(test, method, value)], threshold, error(test, method, sex)).answer


def changed(test: str, method: str, sex: str, many: int, by: float) -> str:
    start = 60.0 if test == "leg_raise" else 10.0
    before, after = ([[reading(test, method, value)]] * many for value in (start, start + by))
    return change(before, after, error(test, method, sex)).kind


def again(test: str, way: str, sex: str) -> list[float]:
    """The weeks and the sessions of the retest of a test that makes length likely."""
    short = {"leg_raise": LegRaise(method="level", effort=way, placement="shin", left_level=50, left_lean="short",
                                   right_level=50, right_lean="short"),
             "knee_to_wall": KneeToWall(method=way, left_1=6, right_1=6, left_limit="calf", right_limit="calf")}
    # One of the lifter's own changes speaks for the part, and the range with it: calf by the heels; hamstrings are only untested beside.
    look = replace(LOOK, heels_rounds="no") if test == "knee_to_wall" else LOOK
    done, about = screen(squat_look=look, **{test: short[test]}), replace(ABOUT, sex=sex)
    concluded = conclude(done, about, 0)
    part = {"leg_raise": "hamstrings", "knee_to_wall": "calf"}[test]
    told = plan(replace(concluded, part=part), done, about, Errors(sex))
    return [next((one.weeks, one.sessions) for one in told.tests if one.test == test)[0],
            next(one.sessions for one in told.tests if one.test == test)]


def pain(before: float, after: float) -> list[Any]:
    told = pain_change(before, after)
    return [told.kind, told.detectable, told.important]


def refused(does: Callable[[], object]) -> str:
    with pytest.raises(ValueError) as why:
        does()
    return str(why.value)


def of_sem(sem: float) -> Error:
    return Error("leg_raise", "level", sem, "deg", "by hand", "choice")


def measured(test: str, method: str, ends: Sequence[float]) -> list[list[Reading]]:
    return [[reading(test, method, value)] for value in ends]


def own(test: str, differences: list[float]) -> Repeats:
    """The spread of repeats whose pairs differ so."""
    (spread,) = repeats_of([[reading(test, OWN_WAY[test], 60.0), reading(test, OWN_WAY[test], 60.0 + one)] for one in differences])
    return spread


OWN_WAY = {"leg_raise": "level", "knee_to_wall": "tape"}


def own_error(test: str, differences: list[float]) -> Error:
    return Errors("man", (own(test, differences),)).of(test, OWN_WAY[test])


def slope(height: float, angle: float) -> float:
    """Degrees of the shin for a centimetre of knee to wall, about an angle."""
    at = next(n / 100 for n in range(3000) if shin_from_distance(n / 100, height) >= angle)
    return shin_from_distance(at + .05, height) * 10 - shin_from_distance(at - .05, height) * 10


def heel_a_degree(leg: float) -> float:
    """Centimetres of the heel for a degree at the highest angle that is taken, for a leg that turns on the floor."""
    top = highest_heel(leg, 0.0)
    return .01 / (leg_raise_from_heel(top, leg, 0.0) - leg_raise_from_heel(top - .01, leg, 0.0))


def home_minutes(part: str, positions: int) -> float:
    """Minutes a side of a part's home work in a programme, of one of its positions."""
    work = BY_PART[part].home
    return work.sets * work.reps * work.hold * HOME_DAYS * PROGRAMME_WEEKS / 60 / positions


WORKED: dict[str, Callable[..., Any]] = {
    "mdc": lambda *of: error(*of).mdc, "sem": lambda *of: error(*of, "man").sem, "of sem": lambda sem: of_sem(sem).mdc,
    "mean mdc": lambda mdc, k: change(*[measured("leg_raise", "level", [60.0] * k)] * 2, of_sem(mdc / MDC_FACTOR)).mdc,
    "own": lambda test, differences: sqrt((spread := own(test, differences)).squares / spread.df),
    "own used": lambda *of: own_error(*of).sem, "own change": lambda *of: own_error(*of).mdc,
    "changed": lambda test, way, *ends: change(*(measured(test, way, one) for one in ends), error(test, way, "man")).kind,
    "compared": lambda cm, deg: refused(lambda: change(measured("knee_to_wall", "tape", [cm]), measured("knee_to_wall", "level", [deg]))),
    "sides": lambda test, way, *sides: side_difference(*([replace(reading(test, way, value), side=side)] for value, side in zip(
        sides, SIDES, strict=True)), error(test, way, "man")).words,
    "slope": slope, "heel a degree": heel_a_degree, "segment": lambda name, height: getattr(body_of(height, 80.0), name),
    "upper body": lambda height, mass: body_of(height, mass).upper_share * mass,
    "home minutes": home_minutes, "pairs needed": lambda: next(n for n in range(1, 20) if smallest_p([1.0] * n) < .05),
    "line": compared, "change by": changed,
    "weeks": weeks_until_visible, "bounded weeks": lambda mdc, gain: bounded(weeks_until_visible(mdc, gain)),
    "sessions": sessions_to_average, "retest": again, "pain": pain, "pain said": lambda *of: pain_change(*of).words,
    "start": lambda told: level_from_check({**WELL, "pain": float(told)}).level.value,
    "ends the day": lambda bad, start: level_from_pain({**SMALL, "bad": float(bad)}, float(start)).level >= Level.NOT_TODAY,
    "load": lambda kg: conclude(screen(CONTROL_LIKELY), replace(ABOUT, load=float(kg), bar="high"), 0).load_limit,
    "bracket": lambda *sets: bracket([SeenSet(float(kg), rounds) for kg, rounds in sets]).most,  # type: ignore[union-attr]
    "heel": leg_raise_from_heel, "shin": lambda *of: shin_from_distance(*of),
    "warm up": lambda kg: [[one.load, one.repetitions] for one in sets_for(kg, 20.0) if one.repetitions],
    "trial": lambda pairs: verdict_of("lifter 7", days([2.0] * pairs, [5.0] * pairs)).kind,
    "trend": lambda many: trend(sessions(*(60.0 + 3 * n for n in range(many)))).kind, "share": lambda *of: list(interval(*of))}
"""Each function by the word the examples have for it."""


@each_row("example", EXPECTED["worked"], ids=lambda one: str(one["call"]))
def test_a_worked_example_comes_out_as_by_hand(example: dict[str, Any]) -> None:
    name, *given = example["call"]
    assert ("ours" in example) is ("because" in example)
    found, wanted = WORKED[name](*given), example.get("ours", example.get("means", example["gives"]))
    if isinstance(wanted, str):
        assert wanted in found, example["hand"]
    elif isinstance(wanted, bool) or any(isinstance(one, str | bool | list) for one in (wanted if isinstance(wanted, list) else ())):
        assert found == wanted, example["hand"]
    else:
        numbers = wanted if isinstance(wanted, list) else [wanted]
        digits = max(len(str(one).partition(".")[2]) for one in numbers)
        assert found == pytest.approx(wanted, abs=.5001 * 10**-digits), example["hand"]


def test_every_function_has_an_example() -> None:
    assert {one["call"][0] for one in EXPECTED["worked"]} == WORKED.keys()


# the clinician's decisions ---------------------------------------------------------------------------------------

RULED = {"ruled out": "ruled_out", "likely": "likely", "not tested": "not_tested", "possible": "too_close", "too close": "too_close"}


@each_row("case", EXPECTED["decision"], ids=lambda one: one["case"])
def test_a_lifter_is_judged_as_by_the_clinician_or_it_says_why_not(case: dict[str, Any]) -> None:
    log = [row for day, (flow, said) in enumerate(case.get("screen", {}).items())
           for row in rows(flow, said, run=flow, day=day, method=str(said.get("method", "")))]
    about = About(height=178, sex="man", load=case.get("load"), bar="high", usual_depth="below", years=5)
    found = conclude(screen_from(log), about, pain=case.get("pain", 0))
    parts = {one.part: one for verdict in found.verdicts for one in verdict.parts}
    sides = {one.part: verdict.side for verdict in found.verdicts for one in verdict.parts}
    wanted = case["expect"] | case.get("ours", {})
    assert "ours" not in case or case["because"]
    for part in parts:
        said, _, side = wanted[part].partition(" (")
        assert parts[part].ruling.value == RULED[said], part
        assert said not in ("possible", "too close") or (contradiction(parts[part]) is not None) is (said == "too close")
        assert not side or side.rstrip(")") in (sides[part], found.overall.replace("_", " "))
    offered = offer_for(found.part, easier=found.easier, no_stretch=found.part in found.no_stretch)
    assert (offered.prime.name if offered else "") == case["prime"], wanted["drill"]
    assert found.load_limit == case.get("most")
    assert list(found.no_stretch) == case.get("no_stretch", [])
    level = max(level_from_check({**WELL, "pain": case.get("pain", 0.0)}).level,
                level_from_pain(case["pained"], 1.0).level if "pained" in case else Level.GO)
    assert all(level not in protocol(test).posture.levels for test in case.get("shut", ()))
