"""Each state at its bounds, by rows made by hand, and the words and the act of each."""

from __future__ import annotations

from datetime import time, timedelta
from typing import Any

import pytest

from companion.calendar.plan import Plan
from companion.coach.caseload import day_namer
from companion.coach.triage import RESULT_WORDS, TRIAGE, WHERE_WORDS, care_weight, reasons_of
from companion.record.caseload import CaseloadRow
from companion.record.load_over import OverLoad
from companion.record.timestamps import text_of
from companion.screening.limits import Limit, LimitPart, as_text
from companion.screening.safety import Level
from companion.screening.standing import OpenQuestions
from tests.coach.caseload_rows import NOW, ago
from tests.table import each_row

NOTHING = dict.fromkeys(CaseloadRow._fields) | {"person": 1, "name": "Sam", "zones": "{}", "looked": "", "linked": text_of(ago(60)),
                                                "answered": text_of(ago(1))}


def at(days: float) -> str:
    return text_of(ago(days))


def row(**told: Any) -> CaseloadRow:
    return CaseloadRow(**NOTHING | told)


def judged(state: str, **told: Any) -> str | None:
    found = TRIAGE[state].judge(row(**told), NOW, day_namer("UTC+00:00", NOW))
    return found and found[0]


SIX = time(18)
MONDAYS = Plan(weekly=((0, SIX),)).dumps()
HURT = {"hurt_at": at(2), "hurt_flow": "pain"}
OVER = {"over": OverLoad(ago(2), "over by 9 kg")}
MOVED = {"back": "moved", "back_at": at(2), "step_why": "The back moved, so it is a step back."}
WORSE = {"change": "worse", "change_at": at(2)}
DUE = {"retest_state": "open", "retest_due": at(3), "retest_made": at(30), "retest_wall": f"{at(3)[:10]} 18:00 UTC"}
NO_SQUATS = as_text((Limit(frozenset((LimitPart.SQUATS,)), 60.0, None, "a doctor", "no squats"),))
RESULT = {"outcome_at": ago(2).isoformat(), "overall": "likely"}


@each_row(("state", "told", "words"), [
    ("hurt", {}, None),
    ("hurt", HURT, "hurt on Tuesday"),
    ("hurt", {**HURT, "bad": 4.0}, "hurt on Tuesday: 4 of 10"),
    ("hurt", {**HURT, "hurt_flow": "morning"}, "not back to usual on Tuesday"),
    ("hurt", {**HURT, "hurt_flow": "morning", "how": "stiff"}, "not back to usual on Tuesday: stiff"),
    ("hurt", {**HURT, "hurt_flow": "squat_after", "asked": OpenQuestions("hurt", NOW)},
     "was asked whether something hurt on Tuesday, no answer"),
    ("hurt", {**HURT, "hurt_flow": "squat_after"}, "was asked whether something hurt on Tuesday, and said since that nothing did"),
    ("hurt", {**HURT, "hurt_flow": "squat_after", "asked": OpenQuestions("signs", NOW)},
     "was asked whether something hurt on Tuesday, and said since that nothing did"),
    ("hurt", {**HURT, "hurt_flow": "squat_after", "asked": OpenQuestions("hurt", NOW, said="my back is odd")},
     "was asked whether something hurt on Tuesday, no answer: “my back is odd”"),
    ("unanswered", {"asked": OpenQuestions("signs", ago(2), said="cant pee\nsince monday")},
     "questions about a sign open, since Tuesday: “cant pee since monday”"),
    ("unanswered", {"asked": OpenQuestions("signs", ago(2), Level.EMERGENCY, "cant pee"), "level": "emergency", "level_at": at(2)},
     "sent to emergency care; questions about a sign open, since Tuesday: “cant pee”"),
    ("unanswered", {"asked": OpenQuestions("signs", ago(2), Level.CLINICIAN, "had a stent"), "level": "clinician", "level_at": at(2)},
     "questions about a sign open, since Tuesday: “had a stent”"),
    ("unanswered", {"asked": OpenQuestions("signs", ago(2), said="i want to end it all")}, "questions about a sign open, since Tuesday"),
    ("unanswered", {"asked": OpenQuestions("limit", ago(2), said="no squats said my gp")},
     "a limit to confirm, since Tuesday: “no squats said my gp”"),
    ("hurt", {**HURT, "hurt_at": at(3), "where": "back", "bad": 5.0, "open_at": at(2)}, "something hurt on Tuesday, questions open"),
    ("hurt", {**HURT, "where": "back", "bad": 5.0, "open_at": at(2)}, "hurt on Tuesday: lower back, 5 of 10, questions open"),
    ("hurt", {**HURT, "where": "nothing", "open_at": at(2)}, "said on Tuesday that something hurt, then that nothing does, questions open"),
    ("hurt", {**HURT, "hurt_at": at(3), "where": "nothing", "open_at": at(2)}, "something hurt on Tuesday, questions open"),
    ("hurt", {"open_at": at(2), "level": "clinician", "level_at": at(2)},
     "something hurt on Tuesday, questions open; a clinician comes first"),
    ("hurt", {**HURT, "level": "clinician", "level_at": at(2)}, "hurt on Tuesday; a clinician comes first"),
    ("hurt", {**HURT, "hurt_level": "emergency", "level": "clinician", "level_at": at(2), "undone": 1},
     "hurt on Tuesday; a clinician comes first, a wrong tap was taken back"),
    ("hurt", {**HURT, "hurt_level": "emergency", "level": "not_today", "level_at": at(0), "undone": 1},
     "hurt on Tuesday; no squats or tests today, a wrong tap was taken back"),
    ("hurt", {**HURT, "hurt_level": "emergency", "level": "not_today", "level_at": at(0)}, "sent to emergency care; hurt on Tuesday"),
    ("referred", {"level": "clinician", "level_at": at(2)}, "a clinician comes first, since Tuesday"),
    ("referred", {"level": "not_today", "level_at": at(0)}, None),
    ("referred", {"asked": OpenQuestions("signs", ago(2), Level.EMERGENCY)}, None),
    ("unanswered", {"asked": OpenQuestions("hurt", ago(2))}, None),
    ("unanswered", {"asked": OpenQuestions("signs", ago(2))}, "questions about a sign open, since Tuesday"),
    ("unanswered", {}, None),
    ("over_load", OVER, "over by 9 kg, last told Tuesday"),
    ("over_load", {}, None),
    ("over_load", {**OVER, "reviewed": at(2)}, None),
    ("over_load", {**OVER, "reviewed": at(3)}, "over by 9 kg, last told Tuesday"),
    ("worse", MOVED, "back moved on Tuesday, a step back"),
    ("worse", {**MOVED, "back": "still"}, None),
    ("worse", {**MOVED, "back_at": None}, None),
    ("worse", {**MOVED, "step_why": None}, None),
    ("worse", {**MOVED, "reviewed": at(2)}, None),
    ("worse", WORSE, "worse at the retest on Tuesday"),
    ("worse", {**WORSE, "change_because": "3 cm less"}, "worse at the retest on Tuesday: 3 cm less"),
    ("worse", {**WORSE, "change_at": None}, None),
    ("worse", {**WORSE, "change": "better"}, None),
    ("better", {**WORSE, "change": "better"}, "better at the retest on Tuesday"),
    ("quiet", {"gone": f"{at(2)} "}, "can't be reached since Tuesday"),
    ("quiet", {"gone": f"{at(2)} blocked the bot"}, "can't be reached since Tuesday: blocked the bot"),
    ("quiet", {"answered": at(14)}, None),
    ("quiet", {"answered": at(15)}, "silent for 15 days, since 25 Feb"),
    ("quiet", {"answered": None, "linked": at(15)}, "silent for 15 days: no answer yet, linked on 25 Feb"),
    ("quiet", {"answered": at(9), "plan": MONDAYS}, None),
    ("overdue", {**DUE, "retest_due": at(8), "retest_wall": f"{at(8)[:10]} 18:00 UTC"}, "retest late, due 4 Mar"),
    ("overdue", DUE, None),
    ("overdue", {**DUE, "retest_state": "ignored", "retest_settled": at(1)}, "no answer to two retest reminders, since Monday"),
    ("overdue", {**DUE, "retest_state": "ignored", "retest_settled": at(1), "reviewed": at(2)},
     "no answer to two retest reminders, since Monday"),
    ("overdue", {**DUE, "retest_state": "ignored", "retest_settled": at(4), "reviewed": at(3.5)}, None),
    ("overdue", {**DUE, "retest_state": "ignored", "reviewed": at(2)}, None),
    ("overdue", {**DUE, "retest_state": "ignored", "reviewed": at(4)}, "no answer to two retest reminders, since Monday"),
    ("retest_due", DUE, "retest due Monday"),
    ("retest_due", {**DUE, "retest_due": None}, None),
    ("retest_due", {**DUE, **RESULT}, None),
    ("retest_due", {**DUE, **RESULT, "retest_made": None}, "retest due Monday"),
    ("retest_due", {**DUE, "retest_state": "replaced"}, "retest due Monday"),
    ("retest_due", {**DUE, "retest_state": "done"}, None),
    ("retest_due", {**DUE, "reviewed": at(2)}, None),
    ("new_result", RESULT, "new result on Tuesday: a likely cause"),
    ("new_result", {**RESULT, "overall": "odd"}, "new result on Tuesday: unknown"),
    ("new_result", {**RESULT, "change": "within_error", "change_at": at(2), "change_because": "too little"},
     "new result on Tuesday: a likely cause; too little"),
    ("new_result", {**RESULT, "change": "cannot_say", "change_at": at(2), "change_because": "too little"},
     "new result on Tuesday: a likely cause; too little"),
    ("new_result", {**RESULT, "change": "better", "change_at": at(2), "change_because": "more"}, "new result on Tuesday: a likely cause"),
    ("new_result", {**RESULT, "change": "cannot_say", "change_at": at(9), "change_because": "too little", "reviewed": at(5)},
     "new result on Tuesday: a likely cause"),
    ("new_result", {**RESULT, "change": "cannot_say", "change_because": "too little"}, "new result on Tuesday: a likely cause"),
    ("contradiction", {**RESULT, "close": "length,control"}, "tests speak both ways on Tuesday: length, control too close to call"),
    ("contradiction", {"close": "length"}, None),
    ("contradiction", RESULT, None),
    ("contradiction", {**RESULT, "close": "length", "reviewed": at(1)}, None),
])
def test_a_state_at_its_bounds(state: str, told: dict[str, Any], words: str | None) -> None:
    assert judged(state, **told) == words


@each_row(("told", "words"), [
    ({}, "fine, last answer yesterday"),
    ({"answered": None, "linked": at(2)}, "fine, linked on Tuesday"),
    ({"pin": "parallel", "pin_at": at(2)}, "fine, last answer yesterday; keeps to parallel"),
    ({"level": "go", "level_at": at(0), "limits": NO_SQUATS}, "fine, last answer yesterday; open, but for a clinician's limit"),
    ({"level": "not_today", "level_at": at(0)}, "fine, last answer yesterday; no squats or tests today"),
])
def test_where_no_state_holds_the_last_answer_and_what_is_closed_is_told(told: dict[str, Any], words: str) -> None:
    ((group, said, since),) = reasons_of(row(**told), NOW, day_namer("UTC+00:00", NOW))
    assert (group, said) == ("fine", words)
    assert since == (ago(2) if "linked" in told else ago(1))


@each_row(("told", "weight"), [
    ({"hurt_level": "emergency"}, 3), ({"hurt_level": "emergency", "undone": 1}, 0),
    ({"hurt_level": "emergency", "undone": 1, "level": "clinician", "level_at": at(0)}, 1)])
def test_a_tap_that_was_taken_back_makes_nobody_urgent(told: dict[str, Any], weight: int) -> None:
    assert care_weight(row(**HURT, **told), NOW) == weight


def test_who_squats_on_planned_days_is_quiet_after_three_of_them() -> None:
    plan = Plan(weekly=((0, SIX), (2, SIX))).dumps()  # the 2nd, 4th, 9th and 11th of March
    assert judged("quiet", answered=at(9), plan=plan) == "silent for 9 days, 3 planned squat days, since 3 Mar"
    assert judged("quiet", answered=at(8), plan=plan) is None
    assert NOW - ago(9) == timedelta(days=9)


@pytest.mark.parametrize(("where", "words"), [
    ("back", "lower back"), ("hip", "hip or groin"), ("leg", "leg"), ("knee", "knee"), ("ankle", "ankle or foot"),
    ("chest", "chest, breath or faint"), ("other", "somewhere else"), ("odd", "odd")])
def test_where_it_hurts_is_said_in_words(where: str, words: str) -> None:
    assert judged("hurt", **HURT, where=where, bad=3.0) == f"hurt on Tuesday: {words}, 3 of 10"
    assert len(WHERE_WORDS) == 7


def test_every_result_has_words() -> None:
    assert {name: judged("new_result", **RESULT | {"overall": name}) for name in RESULT_WORDS} == {
        name: f"new result on Tuesday: {words}" for name, words in (
            ("normal", "common rounding"), ("no_rounding", "no rounding seen"), ("load_question", "a question of load"),
            ("likely", "a likely cause"), ("by_elimination", "a cause by elimination"), ("unexplained", "not explained"),
            ("open", "still open"))}


def test_each_state_suggests_its_act() -> None:
    write = ("Write", "coach_note", "note")
    assert {name: state.act for name, state in TRIAGE.items()} == {
        "asks": write, "hurt": write, "unanswered": write, "referred": write, "clinicians_word": ("See", "lifter", ""), "quiet": write,
        "note": ("Write back", "coach_note", "note"),
        "over_load": ("Pin load", "coach_act", "pin_load"), "worse": ("Ask for a film", "coach_act", "ask_for"),
        "overdue": ("Retest date", "coach_act", "retest"), "retest_due": ("Say what you expect", "lifter", ""),
        "new_result": ("See", "lifter", ""), "contradiction": ("Ask for a test", "coach_act", "ask_for"),
        "better": ("Reviewed", "coach_act", "reviewed")}
