"""What a limit closes, what it leaves open, and how it is kept."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from companion.screening.drills import DRILLS, offer_for
from companion.screening.limits import (
    CLOSED_WORK,
    STRETCHES,
    WORDS_MOST,
    Limit,
    LimitPart,
    Work,
    as_text,
    closed_by,
    facts_in,
    limits_in,
    most_kg,
    without,
    words_of,
)
from companion.screening.protocols import protocols

TODAY = date(2026, 11, 28)
NO_LOAD = Limit(frozenset((LimitPart.LOAD, LimitPart.HAMSTRINGS)), None, date(2026, 12, 19), "a doctor", "no weights")
UP_TO_60 = Limit(frozenset(), 60.0, None, "", "nothing over 60 kg")


def closed(limit: Limit, kg: float = 20.0) -> set[str]:
    return {name.removeprefix("limit.") for name, value in facts_in((limit,), TODAY, kg).items() if value == "closed"}


def test_what_each_part_closes():
    assert {part.value: {work.value for work in works} for part, works in CLOSED_WORK.items()} == {
        "load": {"load"}, "squats": {"squat"}, "bending": {"bend", "squat"}, "stretch_hip": {"stretch_hip"},
        "stretch_hamstrings": {"stretch_hamstrings"}, "stretch_calf": {"stretch_calf"}, "elsewhere": set(),
        "training": {work.value for work in Work}, "other": {work.value for work in Work}}


def test_what_each_test_uses():
    squat, hip = {Work.SQUAT}, {Work.BEND, Work.STRETCH_HIP}
    assert {test: set(one.uses) for test, one in protocols().items()} == {
        "squat_look": squat, "film_measure": squat, "hand_on_back_squat": squat, "arms_forward_squat": squat, "pause_squat": squat,
        "hinge_to_squat": {Work.SQUAT, Work.BEND}, "rock_back": hip, "hip_fold": hip, "leg_raise": {Work.BEND, Work.STRETCH_HAMSTRINGS},
        "knee_to_wall": {Work.STRETCH_CALF}, "bird_dog": set()}


def test_a_limit_comes_back_as_it_was_kept():
    assert limits_in(as_text((NO_LOAD, UP_TO_60))) == (NO_LOAD, UP_TO_60)
    assert (as_text(()), limits_in(""), limits_in(None)) == ("", (), ())
    assert "Weiß" in as_text((Limit(frozenset(), 60.0, None, "", "Weiß"),)), "as somebody reads it in a copy"
    assert {part.value for part in STRETCHES} == {"stretch_hip", "stretch_hamstrings", "stretch_calf"}
    assert WORDS_MOST == 60


@pytest.mark.parametrize("text", ["{", "[{}]", '[{"parts": ["wings"], "kg": null, "until": "", "by": "", "words": ""}]', "7",
                                  '[{"parts": [], "kg": "x", "until": "", "by": "", "words": ""}]'])
def test_a_limit_that_cannot_be_read_closes_everything_that_moves(text: str):
    assert closed_by(limits_in(text)) == frozenset(Work)


def test_a_limit_stands_until_it_was_asked_about_and_is_due_from_its_date_on():
    assert not NO_LOAD.due(date(2026, 12, 18))
    assert NO_LOAD.due(date(2026, 12, 19))
    assert NO_LOAD.due(date(2027, 1, 1))
    assert not UP_TO_60.due(date(2030, 1, 1))
    assert "limit.due" not in facts_in((NO_LOAD,), TODAY, 20.0)
    assert facts_in((UP_TO_60, NO_LOAD), date(2027, 1, 1), 20.0)["limit.due"] == "yes", "one of two is enough"
    assert facts_in((), TODAY, 20.0) == {}
    assert facts_in((NO_LOAD, Limit(frozenset((LimitPart.OTHER,)), words="as he said")), TODAY, 20.0)["limit.open"] == "yes", "one of two"
    assert facts_in((NO_LOAD,), date(2027, 1, 1), 20.0) | {"limit.load": "closed", "limit.due": "yes"} == facts_in(
        (NO_LOAD,), date(2027, 1, 1), 20.0)


def test_a_weight_below_the_empty_bar_leaves_the_body_alone():
    assert closed(UP_TO_60) == set()
    assert closed(Limit(frozenset(), 15.0), kg=15.0) == set()
    assert closed(Limit(frozenset(), 14.9), kg=15.0) == {"load"}
    assert facts_in((UP_TO_60, Limit(frozenset(), 40.0)), TODAY, 20.0)["limit.kg"] == 40.0
    assert (most_kg((NO_LOAD,)), most_kg((NO_LOAD, UP_TO_60)), most_kg((Limit(frozenset((LimitPart.SQUATS,))),)), most_kg(())) == (
        0.0, 0.0, None, None)
    assert facts_in((NO_LOAD,), TODAY, 20.0)["limit.kg"] == 0.0


def test_it_says_what_until_when_and_by_whom():
    assert words_of((NO_LOAD, UP_TO_60)) == (
        "no added load, no hamstring stretching, until 19 December 2026, said by a doctor; nothing above 60 kg, until cleared")
    assert Limit(frozenset((LimitPart.ELSEWHERE,))).said() == "something that is not asked here, until cleared"
    assert Limit(frozenset((LimitPart.ELSEWHERE, LimitPart.SQUATS))).said() == "no squats, until cleared"
    assert Limit(frozenset(STRETCHES)).said() == "no stretching at all, until cleared"
    assert Limit(frozenset((LimitPart.CALF, LimitPart.HIP))).said() == "no stretching of hip or calf, until cleared"


def test_a_clearance_takes_away_its_parts_and_leaves_the_rest():
    assert without((NO_LOAD, UP_TO_60), frozenset((LimitPart.LOAD,)), load=True) == (
        Limit(frozenset((LimitPart.HAMSTRINGS,)), None, NO_LOAD.until, "a doctor", "no weights"),)
    assert without((NO_LOAD, UP_TO_60), frozenset(STRETCHES)) == (
        Limit(frozenset((LimitPart.LOAD,)), None, NO_LOAD.until, "a doctor", "no weights"), UP_TO_60)
    assert without((NO_LOAD, UP_TO_60), frozenset(LimitPart), load=True) == ()
    running_too = Limit(frozenset((LimitPart.ELSEWHERE, LimitPart.SQUATS)))
    assert without((running_too,), frozenset((LimitPart.SQUATS,))) == (), "what nothing here asks for is nothing to be cleared of"
    jumping = Limit(frozenset((LimitPart.ELSEWHERE, LimitPart.SQUATS)), elsewhere="jumping")
    assert without((jumping,), frozenset((LimitPart.SQUATS,))) == (Limit(frozenset((LimitPart.ELSEWHERE,)), elsewhere="jumping"),)
    assert without((jumping,), frozenset(LimitPart), load=True) == ()


@pytest.mark.parametrize("work", Work)
@pytest.mark.parametrize("part", [drill.part for drill in DRILLS])
def test_no_drill_and_no_home_work_needs_what_a_limit_closes(part: str, work: Work):
    offer = offer_for(part, closed={work})
    if offer is not None:
        assert work not in offer.prime.uses
        assert offer.home is None or work not in offer.home.uses
    assert work is not Work.MOVE or offer is None


def test_another_form_of_the_drill_is_offered_where_one_is_open():
    open_all, no_squat, no_calf = offer_for("calf"), offer_for("calf", closed={Work.SQUAT}), offer_for("calf", closed={Work.STRETCH_CALF})
    assert open_all is not None
    assert no_squat is not None
    assert no_calf is not None
    assert [one.prime.name for one in (open_all, no_squat, no_calf)] == [
        "knee over toes", "knee over toes, holding a chair", "squat with a heel lift"]
    assert no_calf.home is None
    assert "told to leave out" in no_calf.home_words


def test_a_limit_ends_sooner_than_one_with_a_later_date_or_none():
    first, second, none = (Limit(frozenset(), until=end) for end in (date(2026, 12, 1), date(2026, 12, 2), None))
    assert (first.end, none.end) == ("until 1 December 2026", "until cleared")
    assert first.sooner_than(second)
    assert second.sooner_than(none)
    assert not any(one.sooner_than(other) for one, other in ((first, first), (second, first), (none, second), (none, none)))


def test_words_that_were_not_understood_are_quoted_where_it_is_said_what_they_close():
    unread = replace(Limit(frozenset((LimitPart.OTHER,))), words="take care of it")
    assert unread.said() == "“take care of it”, and so nothing that moves, until cleared"
    assert replace(unread, words="").said() == "something I could not read, so nothing that moves, until cleared"
