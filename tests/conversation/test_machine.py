"""The compiled machine: arrows from the order of the steps, complete and exclusive however the steps are guarded."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation.condition import ALWAYS, fact
from companion.conversation.effects import Find
from companion.conversation.flow import END, Ask, Do, Flow, Gate, Jump, Known, Run, Tell
from companion.conversation.kinds import Hold, Ready, YesNo, choice
from companion.conversation.machine import compile_flow
from companion.conversation.number_kinds import Number, PainScore
from companion.conversation.policy import Policy
from companion.conversation.table import (
    AGAIN,
    ANSWER,
    BACK,
    BEGIN,
    EARLY_END,
    ENDED_BY_PAIN,
    GATE_CLOSED,
    HELP,
    IN_PAIN,
    INTERRUPTED,
    PAIN,
    PAUSED,
    RESUMED,
    RETURNED,
    SKIP,
    START,
    STOP,
)
from companion.verify.check import faults
from companion.verify.domains import Ways
from companion.verify.proof import prove
from tests.conversation.test_condition import conditions, facts
from tests.drive import NOW, small_book
from tests.table import each_row
from tests.verify.scxml import ways_out

KEYS = ("q0", "q1", "q2", "q3", "q4")


@st.composite
def flows(draw):
    """Any flow of up to five questions with any guards and jumps."""
    steps = []
    for key in KEYS[:draw(st.integers(1, 5))]:
        jumps = tuple(Jump(draw(conditions), draw(st.sampled_from((*KEYS[:1], END)))) for _ in range(draw(st.integers(0, 2))))
        only_if = draw(st.one_of(st.just(ALWAYS), conditions))
        steps.append(Ask(key, "?", YesNo(), only_if=only_if, then=jumps))
    return Flow("any", 1, "Any", steps=tuple(steps))


@given(flows(), facts)
def test_from_every_state_exactly_one_arrow_holds_whatever_is_known(flow, there):
    compiled = compile_flow(flow)
    for arrows in compiled.leaving.values():
        assert sum(arrow.when.holds(there) for arrow in arrows) == 1


@given(flows(), facts)
def test_the_move_made_is_the_first_way_whose_own_condition_holds(flow, there):
    compiled = compile_flow(flow)
    for state in (START, *compiled.stops):
        first = next(target for target, when in ways_out(flow, state) if when.holds(there))
        for event in (BEGIN,) if state == START else (ANSWER, SKIP):
            assert led_to(compiled, event, state, there) == first


@given(flows())
def test_every_question_of_any_flow_answers_what_every_question_answers(flow):
    compiled = compile_flow(flow)
    for key in compiled.stops:
        moves = {event: compiled.fire(event, key, {}) for event in (ANSWER, SKIP, BACK, AGAIN, HELP, STOP, INTERRUPTED, PAIN)}
        assert all(moves.values())
        assert {event: move.target for event, move in moves.items() if event in (AGAIN, HELP, STOP, INTERRUPTED, PAIN)} == {
            AGAIN: key, HELP: key, STOP: PAUSED, INTERRUPTED: PAUSED, PAIN: PAUSED}


@given(flows(), facts)
def test_the_machine_has_the_rows_of_the_table_and_no_others(flow, there):
    compiled = compile_flow(flow)
    in_machine = [one for event in compiled.machine.events.values() for rows in event.transitions.values() for one in rows]
    assert sorted(map(id, (one.row for one in in_machine))) == sorted(map(id, compiled.table))
    assert all((one.source, one.dest) == (one.row.source, one.row.target) for one in in_machine)


BOTH_WAYS = Flow("one", 1, "One", gates=(Gate(fact("shut").known, "Shut."), Gate(~fact("warm").known, "Cold.", first="warm_up")), steps=(
    Ask("a", "A?", YesNo(), caution="Stop if it hurts."), Ask("b", "B?", YesNo(), only_if=~fact("over").known),
    Ask("hold", "Hold.", Hold(seconds=9)), Ask("c", "C?", YesNo(), back=False), Run("other"), Ask("d", "D?", YesNo(), safety=True)))
WARM = {"warm": "done"}


@each_row(("event", "state", "there", "target"), [
    (BEGIN, START, WARM, "a"), (BEGIN, START, {}, START), (BEGIN, START, {"here.tried_warm_up": "yes"}, GATE_CLOSED),
    (BEGIN, START, WARM | {"shut": "yes"}, GATE_CLOSED),
    (BACK, "b", {"here.last": "a"}, "a"), (BACK, "hold", {"here.last": "a"}, "a"), (BACK, "hold", {"here.last": "b"}, "b"),
    (BACK, "c", {"here.last": "hold"}, "c"), (BACK, "a", {}, "a"), (BACK, "a", {"here.ended": "warm_up"}, START),
    (BACK, "d", {"here.ended": "other"}, "run_other"), (BACK, END, {"here.last": "d"}, "d"),
    (PAIN, "a", {}, IN_PAIN), (PAIN, END, {}, ENDED_BY_PAIN), (STOP, "a", {}, PAUSED), (INTERRUPTED, "hold", {}, PAUSED),
    (RESUMED, PAUSED, WARM | {"here.at": "b"}, "b"), (RESUMED, PAUSED, WARM | {"here.at": "b", "over": "yes"}, "hold"),
    (RESUMED, PAUSED, WARM | {"here.at": "b", "shut": "yes"}, GATE_CLOSED), (RESUMED, PAUSED, {"here.at": "b"}, PAUSED),
    (RESUMED, IN_PAIN, WARM | {"here.at": "a"}, ENDED_BY_PAIN), (RESUMED, IN_PAIN, WARM | {"here.at": "a", "here.goes_on": "yes"}, "a"),
    (RESUMED, IN_PAIN, {"here.at": "a", "here.goes_on": "yes"}, IN_PAIN), (SKIP, "d", {}, "d"), (RETURNED, "run_other", {}, "d"),
])
def test_each_event_leads_where_the_table_says(event, state, there, target):
    assert led_to(compile_flow(BOTH_WAYS), event, state, there) == target


def test_what_begins_anew_after_an_interruption_and_what_stays_told_have_other_moves():
    flow = replace(BOTH_WAYS, policy=replace(Policy.SAFETY, hears_pain=False))
    assert led_to(compile_flow(flow), RESUMED, PAUSED, WARM | {"here.at": "b"}) == START
    assert compile_flow(flow).fire(BACK, END, {"here.last": "d"}) is None
    assert compile_flow(flow).fire(PAIN, "a", {}) is None


def led_to(compiled, event, state, there):
    """Where an event leads; fails where it is not decided."""
    move = compiled.fire(event, state, there)
    assert move is not None
    return move.target


def test_what_only_says_or_notes_something_is_passed_in_order():
    said, noted = Tell("Well."), Do(Find("a", "b"))
    compiled = compile_flow(Flow("one", 1, "One", steps=(Ask("a", "?", Ready()), said, noted, Ask("b", "?", Ready()), said)))
    assert compiled.fire(ANSWER, "a", {}).passed == (said, noted)
    assert (compiled.fire(ANSWER, "b", {}).target, compiled.fire(ANSWER, "b", {}).passed) == (END, (said,))


def test_a_jump_goes_before_the_order_and_says_its_own_words():
    no = fact("a").is_("no")
    compiled = compile_flow(Flow("one", 1, "One", steps=(
        Ask("a", "?", YesNo(), then=(Jump(no, END, "Then not."),)), Tell("On."), Ask("b", "?", Ready()))))
    no_move = compiled.fire(ANSWER, "a", {"a": "no"})
    assert (no_move.target, no_move.passed) == (EARLY_END, (Tell("Then not."),))
    assert compiled.fire(ANSWER, "a", {"a": "yes"}).passed == (Tell("On."),)


def test_two_ways_to_one_place_are_one_arrow():
    jumps = (Jump(fact("a").is_("x"), "b"), Jump(fact("a").is_("y"), "b"))
    compiled = compile_flow(Flow("one", 1, "One", steps=(Ask("a", "?", Ready(), then=jumps), Ask("b", "?", Ready()))))
    assert len(compiled.leaving["a"]) == 1


@pytest.mark.parametrize(("steps", "words"), [
    ((Ask("a", "?", Ready()), Ask("a", "?", Ready())), "the state a is there twice"),
    ((Run("a"), Run("a")), "the state run_a is there twice"),
    ((Ask("start", "?", Ready()),), "the state start is there twice"),
    ((Ask("a", "?", Ready(), then=(Jump(ALWAYS, "nowhere"),)),), "a jumps to nowhere, which is not there"),
    ((Ask("a", "?", Ready(), then=(Jump(fact("a").known, "b", "One thing."),)), Tell("Another."), Ask("b", "?", Ready())),
     "a reaches b in two ways that say different things"),
])
def test_a_flow_that_can_not_be_is_not_compiled(steps, words):
    with pytest.raises(ValueError, match=words):
        _ = compile_flow(Flow("one", 1, "One", steps=steps)).arrows


def test_two_flows_of_one_name_or_one_command_and_a_run_of_nothing_are_no_book():
    one = Flow("one", 1, "One", steps=(Ask("a", "?", Ready()),))
    for wrong, words in (((one, one), "two flows are called one"),
                         ((one, Flow("two", 1, "Two", steps=(), command=("one",))), "starts both"),
                         ((Flow("two", 1, "Two", steps=(Run("gone"),)),), "which is not there")):
        with pytest.raises(ValueError, match=words):
            small_book(*wrong)


@each_row(("steps", "words"), [
    ((Ask("a", "?", YesNo()), Ask("b", "?", Ready(), only_if=fact("a").is_("yes") & fact("a").is_("no"))), "b can't be reached"),
    ((Ask("a", "?", Ready(), then=(Jump(ALWAYS, "a"),)),), "a leads nowhere"),
    ((Ask("a", "?", YesNo(), then=(Jump(fact("a").is_("yes") & fact("a").is_("no"), END),)),), "the jump from a to end can never be taken"),
    ((Ask("a", "How is {mood}?", Ready()),), "nobody knows mood"),
    ((Ask("a", "?", Ready(), only_if=fact("b").known),), "nobody knows b"),
    ((Ask("a", "word " * 61, Ready()),), "61 words"),
    ((Ask("a" * 60, "?", Ready()),), "is not one"),
    ((Ask("a", "?", choice(("a", "Same"), ("b", "Same"))),), "read alike"),
    ((Ask("a", "?", choice(("a", "A label so long that no phone shows it"))),), "no good label"),
    ((Ask("a", "?", Ready("Done")),), "without a caution"),
    ((Ask("a", "?", Hold(seconds=9)),), "without a caution"),
    ((Ask("a", "?", Ready(), caution="Stop if it hurts."),), "without a gate"),
    ((Ask("a", "?", Number("cm", 0, 9, usual=(3, 12), example_value=5)),), "example is outside"),
    ((Ask("a", "?", PainScore()),), "without care"),
])
def test_a_fault_is_found_and_told_in_words(steps, words):
    book = small_book(Flow("one", 1, "One", steps=steps))
    ways = Ways(book, book["one"], Known({}, NOW))
    assert any(words in fault for fault in faults(ways, prove(ways))), faults(ways, prove(ways))


def test_a_sound_flow_has_no_faults():
    flow = Flow("one", 1, "One", gates=(Gate(~fact("ok.ok").known, first="ok"),), steps=(
        Ask("a", "?", YesNo()), Ask("b", "?", Ready("Done"), caution="Stop if it hurts.", only_if=fact("a").is_("yes"))))
    book = small_book(flow)
    ways = Ways(book, book["one"], Known({}, NOW))
    assert faults(ways, prove(ways)) == []


def test_the_typical_way_on_is_counted_and_no_circle_is():
    flow = Flow("one", 1, "One", steps=(Ask("a", "?", YesNo(), then=(Jump(fact("a").is_("no"), "a"),)), Ask("b", "?", Ready())))
    assert compile_flow(flow).coming("a", {}) == 0
    assert compile_flow(flow).coming("a", {"a": "yes"}) == 1
