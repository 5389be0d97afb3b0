"""Screens for tests: a clean one to change, answers as rows of a log, and random ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from datetime import UTC, datetime, timedelta
from typing import Any

from hypothesis import strategies as st

from companion.screening.about import About
from companion.screening.protocols import protocol, protocols
from companion.screening.protocols.arms_forward_squat import ArmsForwardSquat
from companion.screening.protocols.hand_on_back_squat import HandOnBackSquat
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.leg_raise import LegRaise
from companion.screening.protocols.pause_squat import PauseSquat
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.safety import Level
from companion.screening.screen import LoggedAnswer, Screen

START = datetime(2025, 3, 10, 18, 0, tzinfo=UTC)
ABOUT = About(height=178, sex="man", load=20, usual_depth="below", years=5)
"""Their working load is the empty bar, so that what is clean with it counts in full."""
HEAVY = replace(ABOUT, load=80)

# Rounds clearly at parallel on film; no change moved it.
LOOK = SquatLook(seen_by="film", plain_rounds="clearly", plain_depth="parallel", again_rounds="clearly",
                 again_depth="parallel")
REACHED = HipFold(left_first="fold", left_pinch="no", right_first="fold", right_pinch="no")
LONG_LEGS = LegRaise(method="level", effort="own", placement="shin", left_level=85, left_lean="short", right_level=85, right_lean="short")
FREE_ANKLES = KneeToWall(method="tape", left_1=13, right_1=13, left_limit="calf", right_limit="neither")
# Each rules its cause out.
LENGTH_OUT: dict[str, Any] = {"hip_fold": REACHED, "leg_raise": LONG_LEGS, "knee_to_wall": FREE_ANKLES}
STRENGTH_OUT: dict[str, Any] = {
    "arms_forward_squat": ArmsForwardSquat(bar="empty", fault="clean", seen_by="film"),
    "pause_squat": PauseSquat(with_="bar", moving="clean", hard="none", shape="clean", seen_by="film")}
CONTROL_OUT: dict[str, Any] = {
    "squat_look": replace(LOOK, slow_rounds="clearly", slow_depth="parallel"),
    "hand_on_back_squat": HandOnBackSquat(usual_moves="yes", usual_depth="parallel", cued_moves="yes",
                                          cued_depth="parallel")}
# Each makes its cause likely.
CALF_LIKELY: dict[str, Any] = {
    "squat_look": replace(LOOK, heels_rounds="no"),
    "knee_to_wall": KneeToWall(method="tape", left_1=6, right_1=13, left_limit="calf", right_limit="calf")}
STRENGTH_LIKELY: dict[str, Any] = {
    "squat_look": replace(LOOK, load_film="yes", load_rounds="clearly", load_depth="well_above", load_kg=80)}
CONTROL_LIKELY: dict[str, Any] = {
    "squat_look": replace(LOOK, slow_rounds="clearly", slow_depth="below"),
    "hand_on_back_squat": HandOnBackSquat(usual_moves="yes", usual_depth="parallel", cued_moves="no")}


def open_tests(level: Level, *, no_lying: bool = False) -> frozenset[str]:
    """The tests that may be done at a level."""
    return frozenset(test for test, one in protocols().items()
                     if level in one.posture.levels and not (no_lying and one.posture.barred_in_pregnancy))


def made(**tests: Any) -> Screen:
    """A screen of the records given by the ids of their tests; None is not tested."""
    return Screen({test: tests[test] for test in protocols() if tests.get(test) is not None})


def screen(*parts: Mapping[str, Any], **tests: Any) -> Screen:
    """A screen of the given tests; later ones win."""
    merged: dict[str, Any] = {"squat_look": LOOK}
    for part in (*parts, tests):
        merged.update(part)
    return made(**merged)


def rows(flow: str, values: Mapping[str, float | str | None], run: str = "1", ending: str | None = "done",
         status: str = "ok", day: int = 0, method: str = "", placement: str = "") -> list[LoggedAnswer]:
    """The log of one run: one answer a minute."""
    return [LoggedAnswer(flow, run, key, value, status, ending, method, placement, START + timedelta(days=day, minutes=n))
            for n, (key, value) in enumerate(values.items())]


BANDS = st.sampled_from(["well_above", "a_little_above", "parallel", "below", "no", "cant_tell", None])
WORDS: dict[str, list[str]] = {
    "rounds": ["no", "little", "clearly", "cant_tell"], "moves": ["yes", "no", "cant_tell"],
    "first": ["fold", "back", "cant_tell"], "pinch": ["yes", "no"],
    "pinched": ["none", "left", "right", "both"], "limit": ["calf", "pinch", "neither"],
    "lean": ["short", "past", "flat"], "eye": ["under_45", "45_60", "60_70", "70_80", "over_80"],
    "end": ["back", "knee", "stretch"], "effort": ["own", "strap"], "bar": ["stick", "empty", "loaded"],
    "fault": ["clean", "rolled", "chest", "back"], "help": ["yes", "no"], "with_": ["body", "bar"],
    "hard": ["none", "top", "middle", "bottom"], "shape": ["clean", "rounds", "hip", "back"],
    "slow": ["clean", "hip", "back"], "moving": ["clean", "rounds"], "again": ["clean", "rounds"],
    "hinge": ["clean", "rounds"], "sink": ["clean", "breaks"], "seen_by": ["film", "mirror", "feel"],
    "film": ["yes", "no"], "reading": ["onset", "none", "mend"], "narrow": ["early", "at_fold", "past", "cant_tell"],
    "middle": ["early", "at_fold", "past", "cant_tell"], "wide": ["early", "at_fold", "past", "cant_tell"]}
METHODS = {"leg_raise": ["level", "heel", "eye"], "knee_to_wall": ["tape", "level"]}


def _values(test: str, name: str, type_: str) -> st.SearchStrategy[Any]:
    """What one answer of a test can be, None too."""
    if "float" in type_:
        low, high = {"leg_length": (80, 95), "load_kg": (20, 150)}.get(name, (0, 30) if "wall" in test else (0, 90))
        return st.none() | st.floats(low, high)
    if name == "method":
        return st.sampled_from(METHODS[test])
    if name == "placement":
        return st.sampled_from(["shin", "thigh", None])
    if name.endswith("depth"):
        return BANDS
    known = next(words for end, words in WORDS.items() if name == end or name.endswith(f"_{end}"))
    return st.none() | st.sampled_from(known)


def records(test: str) -> st.SearchStrategy[Any]:
    """Any record of one test."""
    record = protocol(test).record
    return st.builds(record, **{field.name: _values(test, field.name, str(field.type)) for field in fields(record)})


SCREENS: st.SearchStrategy[Screen] = st.builds(made, **{test: st.none() | records(test) for test in protocols()})
