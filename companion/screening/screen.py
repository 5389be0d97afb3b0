"""A screen: which answers of the log count, test by test. Nothing else is judged here."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from datetime import datetime
from typing import Any, Final

from companion.screening.records import (
    ONE_CHANGE,
    About,
    ArmsForwardSquat,
    BirdDog,
    HandOnBackSquat,
    HingeToSquat,
    HipFold,
    KneeToWall,
    LegRaise,
    PauseSquat,
    RockBack,
    SquatLook,
)

Value = float | str
SIDES: Final = ("left", "right")
# The order in which they are best done; what loads comes last (evidence-and-drills: "Doing the tests alone").
RECORDS: Final[Mapping[str, type]] = {
    "squat_look": SquatLook, "rock_back": RockBack, "hip_fold": HipFold, "leg_raise": LegRaise,
    "knee_to_wall": KneeToWall, "hand_on_back_squat": HandOnBackSquat, "bird_dog": BirdDog,
    "arms_forward_squat": ArmsForwardSquat, "pause_squat": PauseSquat, "hinge_to_squat": HingeToSquat}
ROUTE: Final = tuple(RECORDS)
SHORT_ROUTE: Final = ("squat_look", "rock_back", "knee_to_wall", "hand_on_back_squat")
TEST_WORDS: Final = {
    "squat_look": "squat look", "rock_back": "rock back", "hip_fold": "hip fold", "leg_raise": "straight-leg raise",
    "knee_to_wall": "knee to wall", "hand_on_back_squat": "hand-on-back squat", "bird_dog": "bird dog",
    "arms_forward_squat": "arms-forward squat", "pause_squat": "pause squat", "hinge_to_squat": "hinge into squat"}


@dataclass(frozen=True, slots=True)
class Answer:
    """One row of the answer log: status ok, skipped, withdrawn or in_pain; ending of its run done, left, pain, None;
    asked: what its run was begun with."""

    flow: str
    run: str
    key: str
    value: Value | None
    status: str
    ending: str | None
    method: str
    placement: str
    at: datetime
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Run:
    """One pass through a test: when it began, and its record."""

    run: str
    at: datetime
    record: Any


@dataclass(frozen=True, slots=True)
class Screen:
    """All that counts of a lifter's tests; None where one was not done. ``stopped``: tests that pain ended last."""

    squat_look: SquatLook | None = None
    rock_back: RockBack | None = None
    hip_fold: HipFold | None = None
    leg_raise: LegRaise | None = None
    knee_to_wall: KneeToWall | None = None
    hand_on_back_squat: HandOnBackSquat | None = None
    bird_dog: BirdDog | None = None
    arms_forward_squat: ArmsForwardSquat | None = None
    pause_squat: PauseSquat | None = None
    hinge_to_squat: HingeToSquat | None = None
    stopped: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def done(self) -> tuple[str, ...]:
        """The tests with at least one answer that counts, in the order of the route."""
        return tuple(test for test in ROUTE if getattr(self, test) is not None)


def screen_from(answers: Iterable[Answer]) -> Screen:
    """The screen that a log of answers amounts to; their order does not matter, their times do.

    A test is its latest run that is done or left and has an answer that counts. Of a key the latest row counts, and
    only where its status is ok. A run that pain ended counts as untested, and so does everything before it. A side
    that the latest run left out is taken from an older run only where both were measured the same way.
    """
    rows: dict[str, dict[str, list[Answer]]] = {}
    for answer in answers:
        if answer.flow in RECORDS:
            rows.setdefault(answer.flow, {}).setdefault(answer.run, []).append(answer)
    tests: dict[str, Any] = {}
    stopped = []
    for test in ROUTE:
        runs = sorted(rows.get(test, {}).values(), key=lambda run: max((row.at, in_order(row.run)) for row in run), reverse=True)
        tests[test], pain = _gathered(RECORDS[test], runs)
        if pain and tests[test] is None:
            stopped.append(test)
    notes = [f"The {TEST_WORDS[test]} was stopped for pain: it counts as not tested." for test in stopped]
    look = tests["squat_look"]
    if look is not None and look.discounted and any(look.rounds(squat) for squat in ONE_CHANGE):
        notes.append(look.discounted)
    return Screen(**tests, stopped=tuple(stopped), notes=tuple(notes))


def runs_of(answers: Iterable[Answer], flow: str) -> tuple[Run, ...]:
    """Every run of one test that was done or left and has an answer that counts, the oldest first.

    KeyError for a flow that is no test.
    """
    rows: dict[str, list[Answer]] = {}
    for answer in answers:
        if answer.flow == flow and answer.ending in ("done", "left"):
            rows.setdefault(answer.run, []).append(answer)
    record = RECORDS[flow]
    runs = [Run(run, min(row.at for row in taken), record(**values)) for run, taken in rows.items()
            if (values := _fitting(record, _standing(taken)))]
    return tuple(sorted(runs, key=lambda run: (run.at, in_order(run.run))))


def about_from(answers: Iterable[Answer]) -> About:
    """What the lifter said of themself: the latest ok answer to each question of about_you, in whatever run."""
    runs: dict[str, list[Answer]] = {}
    for answer in answers:
        if answer.flow == "about_you":
            runs.setdefault(answer.run, []).append(answer)
    standing = sorted((row for run in runs.values() for row in _standing(run)), key=_later)
    return About(**_fitting(About, standing))


def may_hinge(screen: Screen, about: About) -> bool:
    """Whether hinge_to_squat is open: a year of squatting or more, and the two tests before it clean (choice)."""
    arms, pause = screen.arms_forward_squat, screen.pause_squat
    return (about.years is not None and about.years >= 1 and arms is not None and arms.fault == "clean"
            and pause is not None and pause.shape == "clean" and pause.again != "rounds")


def _gathered(record: type, runs: Iterable[list[Answer]]) -> tuple[Any, bool]:
    """The record of one test from its runs, the newest first, and whether a run that pain ended closed the door."""
    common: dict[str, Value] = {}
    got: dict[str, Value] = {}
    missing = {side for side in SIDES if any(field.name.startswith(side) for field in fields(record))}
    for run in runs:
        ending = run[0].ending
        if ending == "pain":
            return (record(**got) if got else None), True
        values = _fitting(record, _standing(run)) if ending in ("done", "left") else {}
        if not values:
            continue
        unsided = {name: value for name, value in values.items() if not name.startswith(SIDES)}
        if not got:
            common, got = unsided, values
        elif unsided == common:
            got |= {name: value for name, value in values.items() if name.startswith(tuple(missing))}
        missing -= {side for side in SIDES if any(name.startswith(side) for name in got)}
        if not missing:
            break
    return (record(**got) if got else None), False


def in_order(run: str) -> tuple[int, str]:
    """Orders the names of runs, which are counted: "8" before "10"."""
    return len(run), run


def _later(row: Answer) -> tuple[datetime, bool, str]:
    """Orders rows by time; of two at the same moment the one that does not count is the later."""
    return row.at, row.status != "ok", str(row.value)


def _standing(run: Iterable[Answer]) -> list[Answer]:
    """The rows of one run that stand: the latest of each key, where it is ok."""
    latest = {row.key: row for row in sorted(run, key=_later)}
    return [row for row in latest.values() if row.status == "ok" and row.value is not None]


def _fitting(record: type, rows: Iterable[Answer]) -> dict[str, Any]:
    """Field values of a record from rows: words for choices, numbers for measures; anything else is left out."""
    wanted = {field.name: "float" in str(field.type) for field in fields(record)}
    values: dict[str, Any] = {}
    aside: dict[str, Value] = {}
    for row in rows:
        name = "with_" if row.key == "with" else row.key
        if wanted.get(name) == isinstance(row.value, (int, float)) and row.value is not None:
            values[name] = float(row.value) if wanted[name] else str(row.value)
            aside |= {key: said for key, said in (("method", row.method), ("placement", row.placement)) if said}
    measured = any(wanted[name] for name in values)
    return values | {key: said for key, said in aside.items() if measured and key in wanted and key not in values}
