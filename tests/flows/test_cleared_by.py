"""Who cleared somebody, and when, from the answers so far: by hand."""

from __future__ import annotations

import pytest

from companion.conversation.condition import Facts, fact
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, ReadingContext
from flows.cleared_by import BY_CLINICIAN, CLEARED_FACTS, asked_who_and_when, by_clinician, says_who, who_and_when
from tests.table import each_row

ANSWERS: list[tuple[Facts, str | None, bool]] = [
    ({}, None, False),
    ({"cleared_at": "my physio, yesterday"}, "my physio, yesterday", True),
    ({"cleared_at": "my physio"}, "my physio", True),  # the day is still to be asked
    ({"cleared_at": "my physio", "cleared_when": "on monday"}, "my physio", True),
    ({"cleared_at": "my physio", "cleared_when": "dunno"}, "my physio", False),
    ({"cleared_at": "my physio", "cleared_when": "tomorrow"}, "my physio", False),
    ({"cleared_at": "my physio, tomorrow", "cleared_when": "yesterday"}, "my physio, tomorrow", False),
    ({"cleared_at": "my physio, yesterday", "cleared_when": "dunno"}, "my physio, yesterday", True),
    ({"cleared_at": "Sarah, yesterday"}, "Sarah, yesterday", False),
    ({"cleared_at": "Sarah, yesterday", "clinician": "yes"}, "Sarah, yesterday", True),
    ({"cleared_at": "Sarah, yesterday", "clinician": "no"}, "Sarah, yesterday", False),
    ({"cleared_at": "Sarah, yesterday", "clinician": "unsure"}, "Sarah, yesterday", False),
    ({"cleared_at": "yes", "clinician": "yes", "clinician_said": "my physio on monday"}, "yes", True),
    ({"cleared_at": "yes", "clinician": "yes", "clinician_said": "my physio, tomorrow"}, "yes", False),
    ({"cleared_at": "yes", "clinician": "yes", "clinician_said": "my physio", "cleared_when": "dunno"}, "yes", False),
    ({"cleared_said": "dr okafor cleared me on friday"}, "dr okafor", True),
    ({"cleared_said": "dr okafor cleared me on friday", "cleared_at": "my mate"}, "my mate", False),
    ({"cleared_said": "my doctor cleared me tomorrow"}, "my doctor", False),
    ({"cleared_said": "i've been cleared"}, None, False), ({"cleared_said": "i was cleared yesterday"}, None, False)]


@each_row(("answers", "who", "cleared"), ANSWERS)
def test_only_a_clinician_s_word_on_a_day_that_was_or_is_still_to_be_asked_clears(answers: Facts, who: str | None, cleared: bool):
    assert (says_who(answers), by_clinician(answers)) == (who, cleared)


@each_row(("answers", "said"), [
    ({"cleared_at": "my physio, yesterday"}, "my physio, yesterday"),
    ({"cleared_at": "yes", "clinician_said": "my physio", "cleared_when": "in May"}, "yes, my physio, in May"),
    ({"cleared_said": "dr okafor cleared me on friday"}, "dr okafor cleared me on friday"),
    ({"cleared_said": "they cleared me on friday", "cleared_at": "dr okafor"}, "they cleared me on friday, dr okafor"),
    ({"cleared_said": "i've been cleared", "cleared_at": "dr okafor, monday"}, "dr okafor, monday")])
def test_who_and_when_is_told_in_the_words_that_say_it(answers: Facts, said: str):
    assert who_and_when(answers, "") == said


def test_what_is_worked_out_is_what_the_proof_takes_it_for_and_all_of_that_comes_up():
    domains = {fact.name: set(fact.values) for fact in CLEARED_FACTS if fact.name not in ("who_asked", "who_said", "who_and_when")}
    found = {fact.name: {fact.work_out(answers) for answers, _, _ in ANSWERS} - {None} for fact in CLEARED_FACTS if fact.name in domains}
    assert found == domains


STILL_TO_ASK = ({"cleared_at": "my physio"},)


def facts_of(answers: Facts) -> Facts:
    worked_out = {one.name: one.work_out(answers) for one in CLEARED_FACTS}
    return {**answers, **{name: value for name, value in worked_out.items() if value is not None}}


def test_what_follows_takes_a_clearance_once_its_day_is_known():
    for answers, _, cleared in ANSWERS:
        assert BY_CLINICIAN.holds(facts_of(answers)) == (cleared and answers not in STILL_TO_ASK), answers


QUESTIONS = [one for one in asked_who_and_when("Who?", ("fever",), fact("asks").is_("yes")) if isinstance(one, Ask)]


def test_no_question_is_left_out_and_words_of_one_s_own_are_kept_as_they_are():
    assert {one.key: (one.safety, one.free, one.signs) for one in QUESTIONS} == {
        "cleared_at": (True, True, ("fever",)), "clinician": (True, False, ()), "cleared_when": (True, True, ("fever",))}


@each_row(("answers", "asked"), [
    ({}, ["cleared_at", "clinician"]),
    ({"cleared_at": "my physio"}, ["cleared_at", "cleared_when"]),
    ({"cleared_at": "my physio, yesterday"}, ["cleared_at"]),
    ({"cleared_at": "Sarah"}, ["cleared_at", "clinician"]),
    ({"cleared_at": "Sarah", "clinician": "yes"}, ["cleared_at", "clinician", "cleared_when"]),
    ({"cleared_at": "Sarah", "clinician": "no"}, ["cleared_at", "clinician"]),
    ({"cleared_said": "dr okafor cleared me"}, ["cleared_when"]),
    ({"cleared_said": "dr okafor cleared me on friday"}, []),
    ({"cleared_said": "dr okafor cleared me tomorrow"}, [])])
def test_only_what_was_not_said_is_asked(answers: Facts, asked: list[str]):
    for asks in ("yes", "no"):
        facts = {"asks": asks, **facts_of(answers)}
        assert [one.key for one in QUESTIONS if one.only_if.holds(facts)] == (asked if asks == "yes" else [])


@pytest.mark.parametrize(("said", "taken"), [("yes", False), ("yes she did", False), ("ok.", False), ("yes, on monday", True),
                                             ("can't remember", True), ("no", True)])
def test_a_mere_yes_is_no_day(said: str, taken: bool):
    (when,) = (one.kind for one in QUESTIONS if one.key == "cleared_when")
    assert isinstance(when.read(said, ReadingContext()), Answer) is taken
