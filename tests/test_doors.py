"""Every door, tried on the engine with the combinations of what may shut it, against the table written by hand (tests/doors.py)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import timedelta
from functools import lru_cache
from itertools import chain, product
from random import Random
from typing import Final

import pytest

from companion.conversation.condition import Condition, Value
from companion.conversation.effects import Began, Ended, Say
from companion.conversation.events import Settle
from companion.conversation.flow import Ask, Known
from companion.conversation.registry import Book, Flows
from companion.conversation.session import Frame, Session
from companion.conversation.step import step
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.doors import AXES, COACHES, DOORS, OPEN, Door
from tests.drive import NOW

NAMES: Final = sorted(BOOK.flows)
TRIED_BY_DAY: Final = 450
"""Combinations of what a flow asks about, drawn from all where there are more; by night all 248,000."""
DRAWN: Final = 200
"""Combinations of everything, tried on each flow beside those of what it asks about."""
BESIDE: Final[Mapping[str, Value]] = {"today": NOW.date().isoformat()}
CLEAN: Final = tuple(
    LoggedAnswer(flow, flow, key, value, "ok", "done", "", "", NOW - timedelta(hours=1))
    for flow, key, value in (("about_you", "years", 3.0), ("arms_forward_squat", "fault", "clean"), ("pause_squat", "shape", "clean")))
"""The answers that earn the hinge to squat."""
USUAL: Final = {axis: next(iter(values)) for axis, values in AXES.items()}
"""Nothing stands against anything."""


def known_of(case: Mapping[str, str]) -> Known:
    facts = dict(BESIDE)
    for axis, value in case.items():
        facts |= AXES[axis][value]
    return Known(facts, NOW, lambda: CLEAN if facts.get("may_hinge") else ())


def found(flow: str, case: Mapping[str, str], tried: tuple[str, ...] = ()) -> tuple[str, str]:
    """What beginning a flow leads to: the flow that begins, and what is said where none does, a line for each message."""
    return after(Frame(flow, BOOK[flow].flow.version, "1", tried=tried), known_of(case))


def taken_up(flow: str, case: Mapping[str, str]) -> tuple[str, str]:
    """What going on with a flow leads to that was begun when nothing stood against it and waited at its first question since."""
    compiled, known = BOOK[flow], known_of(case)
    fixed = dict(compiled.flow.at_start(known)) if compiled.flow.at_start else {}
    fixed |= {name: value for name, value in known.facts.items() if name == "of_day"}
    return after(Frame(flow, compiled.flow.version, "1", state=first_question(flow), paused=True, fixed=fixed), known)


def first_question(flow: str) -> str:
    """The first question of a flow; "" where it has none."""
    return next((key for key, stop in BOOK[flow].stops.items() if isinstance(stop, Ask)), "")


def after(frame: Frame, known: Known) -> tuple[str, str]:
    session, told = Session(stack=(frame,), runs=1), list[str]()
    while session.stack:
        taken = step(BOOK, session, Settle(), known)
        if began := [effect.flow for effect in taken.effects if isinstance(effect, Began)]:
            return began[0], ""
        waits = any(one.paused for one in taken.session.stack[:1])
        if frame.paused and not waits and Ended("1", "closed") not in taken.effects:
            return frame.flow, ""
        told += [effect.text for effect in taken.effects if isinstance(effect, Say)]
        session = taken.session
    return "", "\n".join(told)


def door_of(flow: str, case: Mapping[str, str]) -> Door | None:
    """The first row that fits."""
    return next((door for door in DOORS if flow in door.flows and all(
        case[axis] in ((wanted,) if isinstance(wanted, str) else wanted)
        for axis, wanted in door.where.items())), None)


def told_apart(flow: str, axis: str) -> list[str]:
    """The values of an axis, one of each kind that the rows and the gates of a flow take alike."""
    compares = [compare for gate in BOOK[flow].flow.gates for compare in gate.shut.compares()]
    wanted = [door.where.get(axis) for door in DOORS if flow in door.flows]
    kinds: dict[tuple[bool, ...], str] = {}
    for value, facts in AXES[axis].items():
        kind = (*(compare.holds(facts) for compare in compares),
                *(value in ((one,) if isinstance(one, str) else one) for one in wanted if one is not None))
        kinds.setdefault(kind, value)
    return list(kinds.values())


def cases_of(flow: str) -> Iterator[Mapping[str, str]]:
    """Every combination of the axes that a row of the table or a gate of the flow asks about; of values that neither tells apart, one.
    All values stand in the combinations drawn of everything. A limit is combined with one half of the others at a time: a gate looks at
    nothing else's facts, so which of two comes first shows where both are shut."""
    asked = {compare.fact for gate in BOOK[flow].flow.gates for compare in gate.shut.compares()}
    axes = [axis for axis, values in AXES.items() if any(axis in door.where for door in DOORS if flow in door.flows)
            or any(name in asked for facts in values.values() for name in facts)]
    others = [axis for axis in axes if axis != "limit"]
    halves = (others[:len(others) // 2], others[len(others) // 2:]) if "limit" in axes else ()
    for some in (others, *(["limit", *half] for half in halves)):
        for values in product(*(told_apart(flow, axis) for axis in some)):
            yield USUAL | dict(zip(some, values, strict=True))


def tried_of(flow: str) -> list[Mapping[str, str]]:
    """Those combinations, all or by day drawn from them."""
    cases = list(cases_of(flow))
    return cases if BY_NIGHT or len(cases) <= TRIED_BY_DAY else Random(flow).sample(cases, TRIED_BY_DAY)


@lru_cache(maxsize=4)  # the tests of one flow follow each other
def few_cases_of(flow: str) -> list[Mapping[str, str]]:
    """One thing unusual, then anything."""
    draw, every = Random(flow), {axis: list(values) for axis, values in AXES.items()}
    return [*(USUAL | {axis: value} for axis, values in AXES.items() for value in values),
            *({axis: draw.choice(values) for axis, values in every.items()} for _ in range(DRAWN))]


def hold(flow: str, case: Mapping[str, str], became: tuple[str, str]) -> None:
    door, (began, said) = door_of(flow, case), became
    if door is None:
        assert began == flow, f"{case}: the table says open, but: {began or said}"
    elif door.first:
        assert began == door.first, f"{case}: {door.first} comes first ({door.why}), but: {began or said}"
    else:
        assert (began, door.says in said, "\n" in said) == ("", True, False), f"{case}: shut ({door.why}), but: {began or said}"


@pytest.mark.parametrize("flow", NAMES)
def test_a_door_is_open_or_shut_as_the_table_says(flow):
    for case in chain(tried_of(flow), few_cases_of(flow)):
        case = {**case, "day": "today"}
        hold(flow, case, found(flow, case))


@pytest.mark.parametrize("flow", NAMES)
def test_what_comes_first_and_changes_nothing_leaves_the_door_shut(flow):
    for case in few_cases_of(flow):
        if (door := door_of(flow, case)) and door.first:
            began, said = found(flow, case, tried=(door.first,))
            assert (began, door.says in said) == ("", True), f"{case}: {door.first} changed nothing, and: {began or said}"


@pytest.mark.parametrize("flow", [name for name in NAMES if first_question(name) and BOOK[name].flow.policy.resumes])
def test_what_shuts_a_door_also_shuts_it_on_what_was_begun_before(flow):
    for case in few_cases_of(flow):
        hold(flow, case, taken_up(flow, case))


GATES: Final = [(name, n) for name in NAMES for n in range(len(BOOK[name].flow.gates))]


@pytest.mark.parametrize(("flow", "gate"), GATES)
def test_a_gate_that_is_taken_out_is_missed(flow, gate, monkeypatch):
    whole = BOOK[flow].flow
    less = replace(whole, gates=(*whole.gates[:gate], *whole.gates[gate + 1:]))
    monkeypatch.setitem(globals(), "BOOK", Book(Flows({**BOOK.flows.written, flow: less}), BOOK.home, BOOK.pain, BOOK.link))
    with pytest.raises(AssertionError):
        hold_all(flow, whole.gates[gate].shut)


def hold_all(flow: str, sooner: Condition) -> None:
    """Where ``sooner`` holds first: there the gate that is out would have been shut."""
    for now in (True, False):
        for case in chain(few_cases_of(flow), cases_of(flow)):
            if sooner.holds(known_of(case).facts) is now:
                hold(flow, case, taken_up(flow, case) if case["day"] == "over" and first_question(flow) else found(flow, case))


def test_every_flow_has_its_row_and_every_row_a_flow():
    shut = {flow for door in DOORS for flow in door.flows}
    assert shut | OPEN.keys() == set(NAMES)
    assert not shut & OPEN.keys()
    assert set(COACHES) <= shut


def test_every_axis_is_asked_about_and_every_row_says_why():
    assert {axis for door in DOORS for axis in door.where} == AXES.keys()
    assert all(door.why and (door.says or door.first) for door in DOORS)
    assert all(OPEN.values())
