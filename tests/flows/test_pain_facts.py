"""What the pain questions work out when pain is told again, late, or taken back, without the conversation around them."""

from __future__ import annotations

from datetime import timedelta
from types import SimpleNamespace
from typing import Any

import pytest

from companion.conversation.flow import Known
from companion.conversation.moves import BESIDE
from companion.screening.safety import Level
from flows.pain_facts import (
    NERVE_AND_CHEST,
    before_pain,
    hurt_in_words,
    keys_of_pain,
    level_after_pain,
    may_take_back,
    nothing_hurt,
    other_pain,
    other_spots,
    others_done,
    parts_after_pain,
    parts_while_open,
    parts_with_tap,
    reaches_below_knee,
    reasons_of_pain,
    spot_words,
    still_hurts,
    stops,
    struck_words,
    told_so_far,
    told_to_coach,
    void,
    void_words,
)
from tests.drive import NOW
from tests.table import each_row

TODAY = {"today": "2026-03-02"}
LEVELS = [level.value for level in Level]
MOMENT = "2026-03-02T09:00:00.000Z"


def before(asked: str = "", **facts: str) -> dict[str, Any]:
    """The state before the pain questions; "_" stands for "."."""
    known = {**TODAY, **{name.replace("_", "."): value for name, value in facts.items()}}
    return before_pain(Known(known, NOW, first_run="7", asked=asked))


def test_what_is_a_sign() -> None:
    assert NERVE_AND_CHEST == ("below_knee", "tingling", "bladder", "weakness", "heart_now", "saddle_now")


def test_the_first_pain_of_a_day_is_kept_with_its_moment() -> None:
    state = before(safety_level="no_load", safety_why="pain")
    assert state == {"whose": "pain.7", "first": "yes", "did": "", "named": "", "now": state["now"], "since": state["now"]}
    assert str(state["now"]).endswith("Z")


@each_row(("parts", "why", "first"), [
    ("before go told | pain.3 not_today told sharp", "sharp", "no"), ("before go told | pain.3 not_today open bad", "bad", "no"),
    ("before go told | sign.3 not_today told fever", "fever", "yes"),
    ("before go told | pain.3 not_today told sharp", "sharp fever", "yes"),
    ("before not_today told fall", "fall", "yes")])
def test_later_pain_of_the_day_counts_from_the_first_that_stands_unless_something_else_has_closed_it(
    parts: str, why: str, first: str,
) -> None:
    facts = {"safety_level": "not_today", "safety_why": why, "safety_parts": parts, "safety_parts_today": "yes", "pain_since": MOMENT}
    state = before(**facts, pain_since_today="yes")
    assert (state["first"], state["since"] == MOMENT) == (first, first == "no")
    assert before(**facts)["first"] == "yes", "of another day"


@each_row(("asked", "named"), [("leg_raise", "leg_raise"), ("squat_day", "squat_day"), ("prime", "prime"), ("menu", ""), ("", "")])
def test_a_movement_is_named_by_what_the_questions_were_begun_with(asked: str, named: str) -> None:
    assert before(asked)["named"] == named


def answer(flow: str, key: str = "left_1", status: str = "ok", ending: str = "done", days: int = 0) -> SimpleNamespace:
    return SimpleNamespace(flow=flow, key=key, status=status, ending=ending, at=NOW - timedelta(days=days))


@each_row(("row", "did"), [
    (answer("leg_raise"), "leg_raise"), (answer("menu"), ""), (answer("leg_raise", status="undone"), ""),
    (answer("leg_raise", ending="pain"), ""), (answer("leg_raise", days=1), "leg_raise"), (answer("leg_raise", days=2), ""),
    (answer("squat_day", "squatted"), "squat_day"), (answer("squat_day", "weight"), "")])
def test_what_was_done_lately_is_what_has_an_answer_that_stands(row: SimpleNamespace, did: str) -> None:
    assert before_pain(Known({"today": NOW.date().isoformat()}, NOW, answers=lambda: [row]))["did"] == did


@each_row(("words", "below"), [
    ("yes down to my foot", True), ("into the calf", True), ("my toes too", True), ("all the way down", True), ("yes", False),
    ("no", False), ("not to the foot", False), ("only above the ankle", False), ("it doesn't reach my foot", False), ("the hip", False),
    ("does the calf count?", False), ("no, the knee only", False), ("it hasn't reached my foot", False), ("wasn't in the calf", False)])
def test_a_place_below_the_knee_is_a_yes_and_nothing_denied(words: str, below: bool) -> None:
    assert reaches_below_knee(words) is below


@each_row(("did", "hurt_in", "named", "others"), [
    ("", "", "", "no"), ("leg_raise", "", "", "yes"), ("leg_raise", "leg_raise", "", "no"), ("warm_up", "", "", "no"),
    ("warm_up leg_raise", "leg_raise", "", "no"), ("leg_raise bird_dog", "leg_raise", "", "yes"), ("leg_raise", "", "leg_raise", "no")])
def test_it_may_have_hurt_in_what_else_was_done(did: str, hurt_in: str, named: str, others: str) -> None:
    assert others_done({"did": did, "hurt_in": hurt_in, "named": named}, "") == others


@each_row(("got", "told"), [
    ({}, "yes"), *(({key: answer}, "sign") for key in NERVE_AND_CHEST for answer in ("yes", "unsure")),
    *(({key: "no"}, "yes") for key in NERVE_AND_CHEST), ({"where": "chest"}, "sign"), ({"where": "back"}, "yes"),
    ({"said": "it tingles"}, "sign"), ({"said": "my leg gave way"}, "sign"), ({"said": "dull ache"}, "yes"),
    ({"pain.told": "sign", "pain.told.today": "yes"}, "sign"), ({"pain.told": "sign"}, "yes"),
    ({"pain.told": "yes", "pain.told.today": "yes"}, "yes")])
def test_a_sign_that_was_told_today_stays_told(got: dict[str, Any], told: str) -> None:
    assert told_so_far(got, "") == told


TOLD = {"pain.told": "yes", "pain.told.today": "yes"}


def made_of(stood: str, own: str, left: str = "") -> dict[str, str]:
    """What stood before these questions, what they add so far, and other pain: told, or left open ("open")."""
    parts = [f"before {stood} told", *([f"pain.1 not_today {left} bad"] if left else []), f"pain.7 {own} open sharp"]
    level = max((stood, own, *(["not_today"] if left else [])), key=LEVELS.index)
    return {"whose": "pain.7", "safety.parts": " | ".join(parts), "safety.parts.today": "yes", "safety.level": level,
            "safety.why": "bad sharp" if left else "sharp"}




@each_row(("got", "may"), [
    ({}, "misheard"), (TOLD, "taken_back"), ({"pain.told": "yes"}, "misheard"), ({**TOLD, "pain.told": "sign"}, "stands"),
    ({**TOLD, "said": "pins and needles"}, "stands"), ({**TOLD, "pain.taken_back.today": "yes"}, "stands"),
    ({**TOLD, "safety.level": "clinician"}, "stands"), ({**TOLD, "safety.level": "not_today"}, "taken_back"),
    ({**TOLD, **made_of("go", "clinician")}, "stands"), (made_of("go", "clinician"), "stands"), (made_of("go", "not_today"), "misheard"),
    (made_of("clinician", "not_today"), "misheard"), ({**TOLD, **made_of("go", "not_today")}, "taken_back"),
    (made_of("go", "not_today", "open"), "taken_back"), (made_of("go", "not_today", "told"), "misheard"),
    ({"whose": "pain.7", "safety.parts": "sign.3 not_today open fever", "safety.parts.today": "yes", "safety.level": "not_today",
      "safety.why": "fever"}, "misheard")])
def test_what_nothing_hurts_can_do(got: dict[str, Any], may: str) -> None:
    assert may_take_back(got, "") == may
    assert nothing_hurt({**got, "where": "nothing"}, "") == may
    assert nothing_hurt({**got, "where": "nothing", "mistake": "no"}, "") == "stands"
    assert nothing_hurt({**got, "where": "back"}, "") is None


@each_row(("got", "other"), [
    ({}, "no"), (made_of("clinician", "not_today"), "no"), (made_of("go", "not_today", "told"), "yes"),
    (made_of("go", "not_today", "open"), "yes")])
def test_other_pain_is_that_of_other_questions_told_or_open(got: dict[str, Any], other: str) -> None:
    assert other_pain(got, "") == other


NOTHING = {**TOLD, "where": "nothing"}
SMALL = {"where": "back", "bad": 1.0, "sharp": "no", "below_knee": "no", "tingling": "no", "bladder": "no", "weakness": "no"}


@each_row(("got", "level"), [
    ({"where": "nothing"}, "go"), (NOTHING, "no_load"), ({**NOTHING, "safety.level": "not_today"}, "not_today"),
    ({**NOTHING, **made_of("go", "not_today", "told")}, "no_load"), ({**NOTHING, **made_of("clinician", "not_today")}, "clinician"),
    ({**NOTHING, "safety.checked": "undone", "safety.checked.today": "yes"}, "no_load"),
    ({**NOTHING, "safety.checked": "not_today", "safety.checked.today": "yes"}, "not_today"),
    ({**NOTHING, "safety.checked": "not_today"}, "no_load"),
    ({**NOTHING, "pain.told": "sign", "safety.level": "clinician"}, "clinician"),
    ({**NOTHING, "pain.told": "sign", **made_of("no_load", "not_today")}, "no_load"),
    ({**NOTHING, "mistake": "no", **made_of("not_today", "clinician")}, "clinician"),
    ({**NOTHING, "mistake": "no", "whose": "pain.7", "safety.parts": "pain.1 no_load told bad | pain.7 not_today open",
      "safety.parts.today": "yes", "safety.level": "not_today", "safety.why": "bad"}, "no_load"),
    ({**NOTHING, "mistake": "no"}, "go"), ({**NOTHING, "pain.told": "sign", **made_of("go", "not_today")}, "go"),
    ({**NOTHING, "pain.told": "sign", **made_of("go", "same_day")}, "same_day"),
    ({**SMALL, "safety.checked": "not_today", "safety.checked.today": "yes"}, "no_load"),
    ({"where": "nothing", **made_of("clinician", "clinician")}, "clinician"),
    ({**SMALL, "bad": 5.0}, "not_today"), (SMALL, "no_load"), ({**SMALL, "safety.level": "not_today"}, "not_today")])
def test_the_level_after_pain(got: dict[str, Any], level: str) -> None:
    assert level_after_pain(got, "") == level


@each_row(("got", "part"), [
    ({}, "not_today open"), ({"where": "back", "bad": 2.0}, "not_today open"), ({"where": "chest"}, "emergency open"),
    ({"where": "back", "bladder": "yes"}, "emergency open"), ({"where": "back", "below_knee": "yes"}, "clinician open")])
def test_while_it_is_asked_no_more_today_or_what_was_told_so_far_stands(got: dict[str, Any], part: str) -> None:
    assert parts_while_open({"whose": "pain.7", "safety.level": "no_load", **got}, "").split(" | ")[-1].startswith(f"pain.7 {part}")


def test_pain_misheard_adds_no_part_of_its_own() -> None:
    got = {"where": "nothing", **made_of("clinician", "clinician")}
    assert parts_after_pain(got, "") == "before clinician told"


def test_what_a_coach_and_a_record_read_of_pain_that_was_taken_back() -> None:
    assert reasons_of_pain({"where": "nothing"}, "") == "nothing hurt after all"
    assert reasons_of_pain(NOTHING, "") == "pain told earlier today was taken back: nothing hurt"
    assert reasons_of_pain({**NOTHING, "mistake": "no"}, "") == "says now that nothing hurts; what was told before still stands"
    assert reasons_of_pain({"where": "back", "bad": 5.0}, "").startswith("back, 5 of 10. ")
    assert reasons_of_pain({}, "").startswith("somewhere. ")


@each_row(("got", "keys"), [
    ({**NOTHING, "safety.why": "soreness"}, "soreness taken_back"), ({"where": "nothing", "safety.why": "soreness"}, "soreness"),
    ({**NOTHING, "mistake": "no", **made_of("go", "not_today", "told")}, "bad sharp"),
    ({**NOTHING, "pain.told": "sign", **made_of("go", "clinician", "told")}, "bad sharp")])
def test_the_reasons_of_before_stay_first(got: dict[str, Any], keys: str) -> None:
    assert keys_of_pain(got, "") == keys


@each_row(("got", "over"), [
    ({"where": "nothing"}, "no"), ({**NOTHING, "mistake": "no"}, "yes"), ({"hurt_in": "leg_raise"}, "yes"),
    *(({"hurt_in": "leg_raise", "during": during}, over) for during, over in (
        ("this", "yes"), ("unsure", "yes"), ("leg_raise", "yes"), ("bird_dog", "no"), ("before", "no"))),
    ({"during": "bird_dog"}, "yes")])
def test_what_was_going_on_is_over_unless_it_hurt_elsewhere(got: dict[str, Any], over: str) -> None:
    assert stops(got, "") == over


@each_row(("did", "during", "flows", "words"), [
    ("leg_raise bird_dog", "bird_dog", "bird_dog", "bird dog"), ("leg_raise warm_up", "unsure", "leg_raise warm_up", "leg raise"),
    ("leg_raise", "before", None, ""), ("", "unsure", None, ""), ("warm_up", "warm_up", "warm_up", "")])
def test_what_it_hurt_in_no_longer_counts(did: str, during: str, flows: str | None, words: str) -> None:
    got = {"did": did, "during": during}
    assert void(got, "") == flows
    assert str(void_words(got, "")).lower() == words


@pytest.mark.parametrize(("flow", "words"), [("squat_day", "squat-day squats"), ("menu", ""), (None, "")])
def test_what_was_going_on_has_a_name(flow: str | None, words: str) -> None:
    assert hurt_in_words({"hurt_in": flow} if flow else {}, "") == words


POPPED = {"where": "back", "bad": 8.0, "sharp": "yes", "below_knee": "no", "tingling": "no", "said": "something went pop",
          "did": "hip_fold knee_to_wall", "hurt_in": "hip_fold"}
SHARP = "Sharp, shooting, spreading or unfamiliar pain: no more today. Pain of 4 or more out of 10: no more today."
SMALL = "A small pain: no loaded work today."
NERVES = "Pain below the knee, tingling or numbness: see a clinician before going on."


@each_row(("answers", "told"), [
    (POPPED, f"something hurt (back, 8 of 10): “something went pop”. During: hip fold, which no longer counts. {SHARP}"),
    ({**POPPED, "tingling": "yes"},
     f"something hurt (back, 8 of 10): “something went pop”. During: hip fold, which no longer counts. {NERVES}"),
    ({**POPPED, "during": "knee_to_wall"},
     f"something hurt (back, 8 of 10): “something went pop”. During: knee to wall, which no longer counts. {SHARP}"),
    ({**POPPED, "during": "unsure"},
     f"something hurt (back, 8 of 10): “something went pop”. No longer counted: hip fold, knee to wall. {SHARP}"),
    ({"where": "knee", "did": "", "bad": 2.0, "said": "i want to die"},
     "something hurt (knee, 2 of 10). Pain of 2 or more: no more today."),
    ({"where": "knee", "did": "", "bad": 3.0, "safety_check.pain": 1.0, "safety.checked.today": "yes"},
     "something hurt (knee, 3 of 10). Pain has risen by 2 or more since the start: no more today."),
    ({"where": "knee", "did": "hip_fold", "during": "warm_up"}, f"something hurt (knee). During: warm-up. {SMALL}"),
    ({"did": ""}, f"something hurt (somewhere). {SMALL}"),
    ({"where": "chest", "bad": 8.0, "sharp": "yes", "did": ""},
     "something hurt (chest, 8 of 10). Pain in the chest now needs emergency care.")])
def test_a_coach_is_told_the_place_the_words_the_movement_what_is_struck_and_what_decided(answers: dict[str, Any], told: str):
    assert told_to_coach(answers, "") == told


@pytest.mark.parametrize(("words", "hurts"), [
    ("my back hurts a lot though", True), ("my left leg is weak", True), ("i have a fever", True), ("right", False), ("no nothing", False)])
def test_words_of_pain_or_a_sign_say_that_something_hurt(words: str, hurts: bool):
    assert still_hurts(words) is hurts


@pytest.mark.parametrize(("got", "parts"), [
    ({"bladder": "yes", "tingling": "yes"}, "9 clinician told tingling | tap emergency told bladder tingling"),
    ({"bad": 6.0, "bladder": "yes"}, "9 not_today told bad | tap emergency told bladder bad"),
    ({"bladder": "yes"}, "9 not_today told | tap emergency told bladder"),
    ({"sharp": "yes", "weakness": "yes"}, "9 not_today told sharp | tap same_day told weakness sharp")])
def test_a_tap_among_pain_is_a_part_of_its_own_and_the_pain_stays(got: dict[str, Any], parts: str):
    told = {"whose": "9", "today": "2026-03-02", "where": "back", "bad": 1.0, "sharp": "no", "below_knee": "no", "tingling": "no"} | got
    assert parts_with_tap(told, "") == parts


@pytest.mark.parametrize(("level", "why", "said", "left"), [
    ("not_today", "bad", "my leg is weak", "9 same_day told bad weakness"), ("not_today", "bad", "my back hurts", ""),
    ("clinician", "tingling", "my foot is numb", "9 clinician told tingling"),
    ("clinician", "tingling", "my leg is weak and numb", "9 same_day told tingling weakness")])
def test_what_was_written_of_a_weak_leg_stays_where_nothing_hurts(level: str, why: str, said: str, left: str):
    told = {"whose": "9", "today": "2026-03-02", "where": "nothing", "surely": "yes", "said": said, "pain.told": "sign",
            "pain.told.today": "yes", "safety.parts": f"9 {level} open {why}", "safety.parts.today": "yes", "safety.level": level,
            "safety.why": why}
    assert parts_after_pain(told, "") == left


def test_a_weak_leg_of_a_run_that_added_nothing_adds_none():
    assert parts_after_pain({"whose": "9", "where": "nothing", "said": "my leg is weak", "pain.told": "sign", "pain.told.today": "yes"},
                            "") == ""


HURT_IN_LOOK = {"did": "squat_look", "where": "back", "bad": 1.0, "hurt_in": "squat_look"}


def test_where_it_is_known_in_what_it_hurt_that_is_said_and_struck():
    assert "During: squat look" in told_to_coach(HURT_IN_LOOK, "")
    assert "During" not in told_to_coach({**HURT_IN_LOOK, "long_since": "yes"}, "")
    assert struck_words(HURT_IN_LOOK, "") == "squat look"
    assert struck_words({**HURT_IN_LOOK, "where": "nothing", "during": "squat_look"}, "") == ""


def test_another_place_is_told_only_beside_one_that_is_known() -> None:
    assert other_spots({"where": "back"}, "my knee hurts too") == {"knee": "my knee hurts too"}
    assert other_spots({"where": "knee"}, "my knee hurts") == {}
    assert other_spots({}, "my knee hurts") == {}
    assert other_spots({"where": "back", "said": "my back and my knee hurt"}, "") == {"knee": "my back and my knee hurt"}
    assert other_spots({"where": "back", "said": "my back and my knee hurt", BESIDE: "yes"}, "") == {}


@pytest.mark.parametrize(("where", "said"), [("back", "your lower back"), ("hip", "your hip or groin"), ("leg", "your leg"),
                                             ("knee", "your knee"), ("ankle", "your ankle or foot"), ("chest", "that"), (None, "that")])
def test_the_place_that_is_asked_about_is_named(where: str | None, said: str) -> None:
    assert spot_words({"where": where}, "") == said
