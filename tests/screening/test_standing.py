"""The safety standing every page and the chat read: never "open" after a day that closed it, nor while pain stands unanswered."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from companion.conversation.effects import Find
from companion.conversation.flow import Do
from companion.screening.limits import Limit, LimitPart, as_text
from companion.screening.safety import Level
from companion.screening.standing import (
    CLOSED_BY_LIMIT,
    NEEDS_CHECK,
    OPEN_PAIN,
    PARTLY_CLOSED,
    QUESTIONS_OPEN,
    UNANSWERED_WORDS,
    OpenQuestions,
    SafetyStanding,
    standing_of,
)
from flows.catalogue import BOOK

NOW = datetime(2026, 3, 12, 18, 0, tzinfo=UTC)


def stands(level: str, days: float, pain: float | None = None) -> SafetyStanding:
    return standing_of(level, NOW - timedelta(days=days), "bad sharp", NOW - timedelta(days=pain) if pain is not None else None, NOW, "UTC")


@pytest.mark.parametrize("level", ["no_load", "not_today"])
def test_two_days_after_a_day_that_closed_it_a_page_asks_for_a_new_check(level):
    found = stands(level, 2)
    assert found.level is Level.GO, "the gates ask for today's check by themselves"
    assert (found.needs_check, found.go, found.opens_floor, found.words) == (True, False, False, NEEDS_CHECK)
    assert (found.kept, found.stands_since, found.why) == (Level(level), NOW - timedelta(days=2), "bad sharp")


@pytest.mark.parametrize("level", [level.value for level in Level if level is not Level.GO])
def test_on_the_day_itself_the_level_stands(level):
    found = stands(level, 0.1)
    assert (found.level, found.needs_check, found.go) == (Level(level), False, False)
    assert found.opens_floor is (level == "no_load")
    assert found.words.coach not in ("open", NEEDS_CHECK.coach)


@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
def test_a_referral_stands_however_long_ago(level):
    found = stands(level, 90)
    assert (found.level, found.go, found.stands_since) == (Level(level), False, NOW - timedelta(days=90))


@pytest.mark.parametrize("level", [level.value for level in Level])
def test_no_page_says_go_while_pain_stands_unanswered(level):
    found = stands(level, 0.1, pain=1)
    assert not found.go
    assert not found.opens_floor
    assert OPEN_PAIN.coach in found.words.coach
    assert "open: nothing" not in found.words.report
    assert found.stands_since == NOW - timedelta(days=0.1 if level in ("clinician", "same_day", "emergency") else 1)


def test_a_check_that_passed_since_opens_it():
    found = stands("go", 3)
    assert (found.go, found.opens_floor, found.stands_since, found.words.coach) == (True, True, None, "open")


def test_nobody_who_has_not_checked_is_said_to_be_open():
    found = standing_of(None, None, "", None, NOW, "UTC")
    assert (found.level, found.go, found.opens_floor, found.words.coach) == (None, False, False, "not checked yet")
    assert standing_of("go", None, "", None, NOW, "UTC") == found, "what has no time is not known"
    assert standing_of("", NOW, "", NOW, NOW, "UTC").words == OPEN_PAIN


def test_the_day_is_the_one_where_the_lifter_is():
    since, now = datetime(2026, 3, 12, 3, 0, tzinfo=UTC), datetime(2026, 3, 12, 20, 0, tzinfo=UTC)
    assert standing_of("not_today", since, "", None, now, "UTC").level is Level.NOT_TODAY
    assert standing_of("not_today", since, "", None, now, "America/New_York").level is Level.GO


def limited(level: str, *parts: LimitPart, pain: datetime | None = None) -> SafetyStanding:
    return standing_of(level, NOW, "", pain, NOW, "UTC", as_text((Limit(frozenset(parts)),)))


def test_no_page_says_go_while_a_limit_stands():
    some, all_of_it = limited("go", LimitPart.SQUATS), limited("go", LimitPart.TRAINING)
    assert (some.go, some.opens_floor, some.words) == (False, True, PARTLY_CLOSED)
    assert (all_of_it.go, all_of_it.opens_floor, all_of_it.words) == (False, False, CLOSED_BY_LIMIT)
    assert (some.stands_since, some.limits[0].parts) == (None, frozenset((LimitPart.SQUATS,)))


def test_a_worse_level_and_open_pain_are_said_before_a_limit_and_the_limit_beside_them():
    assert limited("clinician", LimitPart.SQUATS).words.coach == "a clinician comes first, and a clinician's limit"
    assert limited("go", LimitPart.SQUATS, pain=NOW).words.coach == f"{OPEN_PAIN.coach}, and a clinician's limit"
    assert limited("", LimitPart.BENDING).words.coach == "not checked yet, and a clinician's limit"


def asked(about: str, level: str = "same_day", told: Level | None = None) -> SafetyStanding:
    return standing_of(level, NOW, "", None, NOW, "UTC", None, OpenQuestions(about, NOW - timedelta(hours=1), told))


@pytest.mark.parametrize("about", ["signs", "safety_check", "limit"])
def test_while_questions_are_open_nobody_is_said_to_have_been_sent_anywhere(about):
    found = asked(about)
    assert (found.go, found.opens_floor, found.sent, found.words) == (False, False, None, UNANSWERED_WORDS[about])
    assert found.stands_since == NOW - timedelta(hours=1)


def test_what_was_told_before_the_questions_is_said_with_them():
    found = asked("signs", "emergency", Level.CLINICIAN)
    assert found.sent is Level.CLINICIAN
    assert found.words.coach == f"a clinician comes first, {UNANSWERED_WORDS['signs'].coach}"
    assert found.stands_since == NOW


def test_nothing_is_open_to_somebody_who_was_asked_whether_something_hurt():
    found = asked("hurt", "go")
    assert (found.go, found.opens_floor, found.words) == (False, False, UNANSWERED_WORDS["hurt"])
    assert asked("hurt", "clinician").sent is Level.CLINICIAN


def test_the_levels_that_hold_while_questions_are_open_are_those_the_conversations_find():
    rules = {str(do.effect.rule): flow for flow in ("pain", "signs", "safety_check") for do in BOOK[flow].flow.steps
             if isinstance(do, Do) and isinstance(do.effect, Find) and do.effect.name == "safety.level"}
    assert {rule: flow for rule, flow in rules.items() if "open" in rule or "not finished" in rule} == QUESTIONS_OPEN
    assert set(QUESTIONS_OPEN.values()) == {"pain", "signs", "safety_check"}


def test_pain_and_a_sign_that_are_both_open_are_both_named_since_the_first():
    found = standing_of("go", NOW, "", NOW, NOW, "UTC", asked=OpenQuestions("signs", NOW - timedelta(hours=1)))
    assert found.words.coach == f"{OPEN_PAIN.coach}, {UNANSWERED_WORDS['signs'].coach}"
    assert found.stands_since == NOW - timedelta(hours=1)
