"""The red flags asked again after a wrong tap: each question and what it leads to, by hand."""

from __future__ import annotations

import pytest

from companion.conversation.effects import Alert
from companion.screening.levels import LEVEL_WORDS
from companion.screening.safety import Level
from flows.catalogue import BOOK
from flows.wrong_tap import FLOW, LEVEL_AGAIN, level_again
from tests.drive import CHECKED, Talk
from tests.table import each_row

FLAGS = {
    "bladder": ("New trouble passing or holding urine or stool?", "emergency"),
    "saddle": ("Numbness, or an odd feeling, between the legs?", "emergency"),
    "legs": ("Weakness in both legs?", "emergency"),
    "sexual": ("A new loss of sexual function or feeling?", "emergency"),
    "chest": ("Chest pain or pressure, now or today?", "emergency"),
    "breath": ("Faintness, or being unusually short of breath, now or today?", "emergency"),
    "weakness": ("A leg that is weak or getting weaker, or a foot that drops?", "same_day"),
    "fall": ("A hard fall or blow lately?", "same_day"),
    "leg_signs": ("Pain, tingling or numbness below a knee?", "clinician")}
"""What is asked, and the level it leads to: urgency as in the safety check (reference values, safety)."""
ORDER = list(FLAGS)


def slipped(closed_at: str = "emergency", rest: str = "before go told", **more: str) -> Talk:
    return Talk(FLOW, book=BOOK, known={
        **CHECKED, "safety.level": closed_at, "safety.why": "bladder", "safety.slip": "tapped", "safety.slip.open": "yes",
        "safety.slip.in_time": "yes",
        "safety.parts": f"{rest} | tap {closed_at} told bladder", "safety.parts.today": "yes", **more})


def alerts(talk: Talk) -> list[tuple[str, str]]:
    return [(effect.level, effect.because) for effect in talk.effects if isinstance(effect, Alert)]


def test_each_flag_is_asked_by_itself_once_and_none_is_left_out():
    talk = slipped()
    assert talk.says[0].text.startswith("Then I ask each red flag again, one at a time. Please read them slowly.")
    for at, (flag, (words, _)) in enumerate(FLAGS.items(), 1):
        assert (talk.state, talk.last.splitlines()[-1].endswith(f"{words} ({at} of 9)")) == (f"wrong_tap.{flag}", True), talk.last
        assert "Question" not in talk.last
        assert talk.say("skip").state == f"wrong_tap.{flag}", "none is skipped"
        assert "Skip" not in [tap.label for row in talk.says[-1].buttons for tap in row]
        talk.say("no")
    assert talk.state == "safety_check.bladder"


@each_row(("closed_at", "flag", "level"), [
    *(("not_today", flag, level) for flag, (_, level) in FLAGS.items()), ("emergency", "leg_signs", "emergency"),
    ("same_day", "leg_signs", "same_day"), ("clinician", "fall", "same_day"), ("emergency", "fall", "emergency")])
def test_a_flag_told_this_time_closes_it_as_it_does_anywhere_and_frees_nothing(closed_at: str, flag: str, level: str):
    for answer in ("yes", "not sure"):
        talk = slipped(closed_at).say(*("no",) * ORDER.index(flag), answer)
        assert talk.found["safety.level"] == level
        assert talk.last == LEVEL_WORDS[Level(level)].lifter or talk.says[-2].text == LEVEL_WORDS[Level(level)].lifter
        assert alerts(talk) == [(level, "said the last answer was a wrong tap; asked again, a red flag was answered yes or not sure")]
        assert {"safety.checked", "safety.why"}.isdisjoint(talk.found)
        assert talk.found["safety.undone"] == "no", "once"
        assert not talk.state.startswith(("safety_check", "wrong_tap"))
        assert not any("Noted as a wrong tap" in say.text for say in talk.says)


AMENDED = "amended: says that an answer was a wrong tap. Each red flag was asked again and answered no. Please ask them yourself"


@pytest.mark.parametrize("before", ["go", "no_load"])
def test_without_a_flag_what_stood_before_the_tap_stands_and_the_check_goes_on(before: str):
    talk = slipped(rest=f"before {before} told", **{"safety.slip.of": "check"}).say(*("no",) * 9)
    assert (talk.found["safety.level"], talk.found["safety.checked"], talk.found["safety.why"]) == (before, "undone", "")
    assert talk.found["safety.parts"] == f"before {before} told"
    assert (talk.found["safety.slip"], talk.found["safety.undone"]) == ("", "yes")
    assert alerts(talk) == [(before, AMENDED)]
    assert any("Noted as a wrong tap; it stays in your log." in say.text for say in talk.says)
    assert not any(LEVEL_WORDS[Level.NOT_TODAY].lifter in say.text for say in talk.says)
    assert talk.state == "safety_check.bladder"


@pytest.mark.parametrize("level", ["not_today", "clinician", "same_day", "emergency"])
def test_what_else_closes_the_day_is_told_and_the_check_does_not_go_on(level: str):
    talk = slipped(rest=f"before go told | sign.3 {level} told bladder", **{"safety.slip.of": "check"}).say(*("no",) * 9)
    assert (talk.found["safety.level"], talk.found["safety.checked"], talk.found["safety.why"]) == (level, "undone", "bladder")
    assert alerts(talk) == [(level, f"{AMENDED}. What else they told stands")]
    assert any("What else you told me stands." in say.text for say in talk.says)
    assert any(LEVEL_WORDS[Level(level)].lifter in say.text for say in talk.says)
    assert not talk.state.startswith("safety_check")


def test_a_tap_in_the_pain_questions_leaves_the_day_closed():
    talk = slipped(rest="pain.3 not_today told", **{"safety.slip.of": "pain"}).say(*("no",) * 9)
    assert (talk.found["safety.level"], "safety.checked" in talk.found, talk.found["safety.why"]) == ("not_today", False, "")
    assert any(LEVEL_WORDS[Level.NOT_TODAY].lifter in say.text for say in talk.says)
    assert not talk.state.startswith("safety_check")


def test_after_a_tap_in_the_pain_questions_no_check_begins_also_where_nothing_else_stands():
    talk = slipped(rest="before go told", **{"safety.slip.of": "pain"}).say(*("no",) * 9)
    assert not talk.state.startswith("safety_check")


def test_a_flag_after_a_tap_in_the_pain_questions_is_no_day_closed_only():
    talk = slipped("not_today", **{"safety.slip.of": "pain"}).say("no", "yes")
    assert talk.found["safety.level"] == "emergency"
    assert not any(LEVEL_WORDS[Level.NOT_TODAY].lifter in say.text for say in talk.says)


def test_what_is_not_known_of_the_tap_is_taken_for_the_worse():
    assert level_again({"fall": "unsure"}, "") == "emergency", "the level is not known"
    assert level_again({"safety.level": "clinician", "fall": "unsure", "leg_signs": "yes"}, "") == "same_day"
    assert level_again({"safety.level": "emergency", "safety.why": "bladder"}, "") == "emergency", "no part is the tap's"


def test_too_late_nothing_but_the_level_that_stands_is_told():
    talk = slipped("emergency", rest="pain.3 not_today told")
    del talk.known["safety.slip.in_time"]
    said = [say.text for say in talk.say("no").says]
    assert (LEVEL_WORDS[Level.EMERGENCY].lifter in said, LEVEL_WORDS[Level.NOT_TODAY].lifter in said) == (True, False)


@pytest.mark.parametrize("level", ["not_today", "clinician", "same_day", "emergency"])
@pytest.mark.parametrize("answered", range(9))
def test_too_late_the_level_that_stands_is_told_and_nothing_changes(level: str, answered: int):
    talk = slipped(level).say(*("no",) * answered)
    del talk.known["safety.slip.in_time"]
    before = len(talk.says)
    talk.say("no")
    assert [say.text for say in talk.says[before:]][1] == LEVEL_WORDS[Level(level)].lifter
    assert set(talk.found) == {"safety.slip"}
    assert alerts(talk) == []


def test_the_proof_knows_every_level_it_may_come_to():
    assert set(LEVEL_AGAIN.values) == {"go", "no_load", "not_today", "clinician", "same_day", "emergency"}


@each_row(("words", "begins"), [
    ("wrong tap", True), ("that was a wrong tap", True), ("wrong button", True), ("I tapped the wrong one", True), ("wrong", False)])
def test_it_is_begun_by_its_name_wherever_somebody_is(words: str, begins: bool):
    assert (BOOK.command(words) == "wrong_tap") is begins


def test_its_sentences_begin_it_only_after_a_tap_and_over_no_other_question():
    for known, begins in (({"safety.slip.open": "yes"}, True), ({"safety.slip.open": "no"}, False), ({}, False)):
        assert (BOOK.sentence("sorry fat fingers", {**CHECKED, **known}) == ("wrong_tap", "")) is begins
    talk = Talk(BOOK["about_you"].flow, book=BOOK, known={**CHECKED, "safety.slip.open": "yes"})
    for words in ("that was a mistake", "sorry fat fingers", "by mistake"):
        assert talk.say(words).state.startswith("about_you")


@each_row(("level", "said"), [
    *((level, "So it has to be looked at first") for level in ("emergency", "same_day", "clinician")),
    *((level, "If nothing hurts after all") for level in ("not_today", "no_load", "go"))])
def test_who_can_undo_nothing_hears_what_goes_on_instead(level: str, said: str):
    for known in ({}, {"safety.slip": "tapped", "safety.slip.open": "no"}):
        talk = Talk(BOOK["home"].flow, book=BOOK, known={**CHECKED, "safety.level": level, **known}).say("wrong tap")
        assert said in " ".join(say.text for say in talk.says)
        assert not talk.state.startswith("wrong_tap")
