"""Runs that waited while something shut, changed or was taken away: by hand, on a small flow of our own."""

from __future__ import annotations

from typing import Any

import pytest

from companion.conversation.condition import fact
from companion.conversation.draft import Draft
from companion.conversation.flow import PARKED, Ask, Flow, Gate, Known, Run
from companion.conversation.kinds import Option, choice
from companion.conversation.lapsed import lapsed, shut_since
from companion.conversation.policy import Policy
from companion.conversation.registry import Book, bind
from companion.conversation.session import Frame, Session
from tests.drive import NOW, PAIN

FINE = choice(("ok", "Fine"))
MOVES = Flow("moves", 1, "Moves", policy=Policy.TALK, steps=(Ask("go", "Squat now.", FINE, caution="Stop at pain."),))
SITS = Flow("sits", 1, "Sits", policy=Policy.TALK, steps=(Ask("read", "Read this.", FINE),))
DAY = Flow(
    "day", 1, "Day", policy=Policy.TALK,
    at_start=lambda known: {name: known.facts[name] for name in ("most", "mood") if name in known.facts}, rests_on=("most", "bar", "note"),
    gates=(Gate(fact("hurt").is_("yes"), "Not today.", throughout=True), Gate(fact("shut").is_("yes"), "Closed.", throughout=True),
           Gate(fact("early").is_("yes"), "Later.")),
    steps=(Ask("bar", "Which bar?", choice(Option("bar", "Bar", only_if=fact("bar_there").is_("yes")), ("stick", "Stick"))),
           Ask("note", "Anything else?", FINE), Ask("squat", "Squat now.", FINE, caution="Stop at pain."), Ask("how", "How was it?", FINE)))
AROUND = Flow("around", 1, "Around", policy=Policy.TALK, gates=(Gate(fact("shut").is_("yes"), "Closed.", throughout=True),),
              steps=(Ask("first", "Ready?", FINE), Run("moves"), Ask("between", "And?", FINE), Run("sits"), Ask("last", "Done?", FINE),
                     Run(PARKED)))
CHOOSES = Flow("chooses", 1, "Chooses", policy=Policy.TALK, rests_on=("bar",), steps=DAY.steps)
HOME = Flow("home", 1, "Menu", policy=Policy.TALK, steps=(Ask("pick", "What next?", FINE), *(
    Run(flow.name, only_if=fact("pick").is_(flow.name)) for flow in (DAY, AROUND, CHOOSES))))
BOOK: Book = bind([HOME, PAIN, DAY, AROUND, CHOOSES, MOVES, SITS], "home", "pain")


def run_of(flow: str, state: str, known: dict[str, Any], **frame: Any) -> tuple[Draft, Frame]:
    one = Frame(flow, 1, "1", state, **frame)
    return Draft(BOOK, Session(stack=(one,), runs=1), Known(known, NOW), []), one


@pytest.mark.parametrize(("known", "shut"), [
    ({}, False), ({"hurt": "yes"}, True), ({"shut": "yes"}, True), ({"hurt": "yes", "shut": "yes"}, True), ({"early": "yes"}, False)])
@pytest.mark.parametrize(("state", "moves"), [("bar", True), ("squat", True), ("how", False), ("", False)])
def test_a_gate_shut_throughout_ends_a_run_that_has_a_movement_to_come(known: dict[str, Any], shut: bool, state: str, moves: bool):
    known = {"bar_there": "yes", **known}
    assert lapsed(*run_of("day", state, known)) is (shut and moves)
    assert shut_since(*run_of("day", state, known)) is shut


@pytest.mark.parametrize(("state", "moves"), [
    ("first", True), ("run_moves", True), ("between", False), ("run_sits", False), ("last", False)])
def test_a_movement_of_a_flow_that_it_runs_is_one_to_come(state: str, moves: bool):
    assert lapsed(*run_of("around", state, {"shut": "yes"})) is moves


@pytest.mark.parametrize(("fixed", "now", "over"), [
    ({"most": 60.0}, {"most": 60.0}, False), ({"most": 60.0}, {"most": 40.0}, True), ({"most": 60.0}, {}, True), ({}, {"most": 40.0}, True),
    ({}, {}, False), ({"most": 60.0, "mood": "good"}, {"most": 60.0, "mood": "bad"}, False)])
def test_what_its_loads_rest_on_must_not_have_changed(fixed: dict[str, Any], now: dict[str, Any], over: bool):
    assert lapsed(*run_of("day", "squat", now, fixed=fixed)) is over
    assert lapsed(*run_of("day", "how", now, fixed=fixed)) is False


@pytest.mark.parametrize(("flow", "got", "there", "over"), [
    (flow, got, there, over) for flow in ("day", "chooses") for got, there, over in (
        ({"bar": "bar"}, "yes", False), ({"bar": "bar"}, "no", True), ({"bar": "stick"}, "no", False), ({}, "no", False),
        ({"note": "ok"}, "no", False))])
def test_what_was_chosen_must_still_be_on_offer(flow: str, got: dict[str, Any], there: str, over: bool):
    assert lapsed(*run_of(flow, "squat", {"bar_there": there}, got=got)) is over
