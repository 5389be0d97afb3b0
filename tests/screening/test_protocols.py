"""The tests as records: what they must have to stand beside each other, and what follows from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

import pytest

from companion.conversation.kinds import BeingRead
from companion.screening.protocol import Protocol
from companion.screening.protocols import measured, ordered, protocol, protocols
from companion.screening.readings import SIDES
from companion.screening.safety import BodyPosition, Level
from flows.catalogue import BOOK

ONE, OTHER = protocol("bird_dog"), protocol("rock_back")
EVERY = pytest.mark.parametrize("one", protocols().values(), ids=lambda one: one.id)


@pytest.mark.parametrize(("files", "told"), [
    ({"dog": ONE}, "dog.py: its PROTOCOL is called bird_dog"),
    ({"bird_dog": ONE, "rock_back": replace(OTHER, place=ONE.place)}, "bird_dog.py and rock_back.py both have the place 70"),
    ({"bird_dog": replace(ONE, rows=OTHER.rows)}, "bird_dog.py: rock_early_hip, .* belong to another test"),
    ({"bird_dog": replace(ONE, rows=ONE.rows[:1] * 2)}, "bird_dog.py and bird_dog.py both have the row bird_dog_turns")])
def test_what_can_not_stand_beside_each_other_is_told_with_its_file(files: dict[str, Protocol[Any]], told: str) -> None:
    with pytest.raises(ValueError, match=told):
        ordered(files)


def test_the_route_follows_the_places_and_not_the_names() -> None:
    assert list(ordered({"bird_dog": ONE, "rock_back": OTHER})) == ["rock_back", "bird_dog"]
    assert list(ordered({"bird_dog": replace(ONE, place=1), "rock_back": OTHER})) == ["bird_dog", "rock_back"]


NOT_ASKED_NOW: Mapping[str, frozenset[str]] = {
    "squat_look": frozenset(("again_rounds",)), "hip_fold": frozenset(("left_pinch", "right_pinch")),
    "leg_raise": frozenset(("left_end", "right_end", "placement")), "hand_on_back_squat": frozenset(("usual_moves", "cued_moves"))}
"""Answers given before one question told more at once; files that have them still count."""


@EVERY
def test_every_answer_of_a_record_is_asked_in_its_flow(one: Protocol[Any]) -> None:
    asked = {name.replace("{odd}", side).replace("{other}", side) for stop in BOOK[one.id].stops.values() if hasattr(stop, "kind")
             for name in (stop.log_as or stop.key,) for side in SIDES}
    drawn = {f"{squat}_{what}" for squat in ("heels", "front", "slow", "wide") for what in ("rounds", "depth")}
    wanted = {field.name.removesuffix("_") for field in fields(one.record)}
    films = tuple(key.removesuffix("reading") for key, stop in BOOK[one.id].stops.items()
                  if isinstance(getattr(stop, "kind", None), BeingRead))
    read = {fact.name for fact in BOOK[one.id].flow.facts if fact.step and fact.name.startswith(films)}  # numbers that a film gives
    assert wanted - asked - NOT_ASKED_NOW.get(one.id, frozenset()) <= (drawn if one.starts else read)


@EVERY
def test_a_flow_takes_its_title_and_its_needs_from_its_protocol(one: Protocol[Any]) -> None:
    flow = BOOK[one.id].flow
    assert (flow.title, flow.needs) == (one.title, one.needs)


@pytest.mark.parametrize(("posture", "levels", "barred"), [
    (BodyPosition.STANDING, (Level.GO,), False), (BodyPosition.FLOOR, (Level.GO, Level.NO_LOAD), False),
    (BodyPosition.LYING, (Level.GO, Level.NO_LOAD), True)])
def test_a_posture_says_at_which_levels_a_test_is_open(posture: BodyPosition, levels: tuple[Level, ...], barred: bool) -> None:
    assert (posture.levels, posture.barred_in_pregnancy) == (levels, barred)


@pytest.mark.parametrize("one", measured(), ids=lambda one: one.id)
def test_a_measured_test_has_errors_and_lines_of_its_own(one: Protocol[Any]) -> None:
    assert one.thresholds
    assert {error.test for error in (*one.errors, *one.errors_men)} == {line.test for line in one.thresholds} == {one.id}
    assert one.readings is not None
    assert not any(one.readings(one.record(), side) for side in SIDES)
    assert {line.unit for line in one.thresholds} <= {error.unit for error in one.errors}
