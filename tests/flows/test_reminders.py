"""The next five reminders, with one command."""

from __future__ import annotations

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Calendar
from flows.catalogue import BOOK
from flows.reminders import FLOW
from tests.drive import UNCHECKED, Talk
from tests.table import each_row

PLAN = '{"weekly":{"TU":"18:00","FR":"18:00"}}'


def begun(**known: Value) -> Talk:
    return Talk(FLOW, known={**UNCHECKED, "squat.plan": PLAN, **known}, book=BOOK)


def lines(talk: Talk) -> list[str]:
    return talk.says[0].text.split("\n")


def test_the_next_five_are_shown_soonest_first():
    assert lines(begun(**{"squat.wishes": "2 18:00 20:00 09:00"})) == [
        "Tomorrow, 16:00: squat day tomorrow, 18:00.",
        "Friday 6 March, 16:00: squat day Friday 6 March, 18:00.",
        "Tuesday 10 March, 16:00: squat day Tuesday 10 March, 18:00.",
        "Friday 13 March, 16:00: squat day Friday 13 March, 18:00.",
        "Tuesday 17 March, 16:00: squat day Tuesday 17 March, 18:00."]


def test_the_evening_before_that_has_passed_is_not_shown_as_to_come():
    assert lines(begun())[0] == "Thursday 5 March, 18:00: squat day Friday 6 March, 18:00."


def test_those_of_other_kinds_stand_among_them():
    shown = lines(begun(**{"due.retest": "2026-03-07 10:00", "due.morning": "2026-03-03 09:00"}))
    assert shown[0] == "Tomorrow, 09:00: how it is the morning after."
    assert shown[2] == "Saturday 7 March, 10:00: test again."
    assert len(shown) == 5


@each_row("words", ["my reminders", "reminders", "next five reminders", "what is coming", "show me my next 5 reminders",
                                   "what are my squat days", "show my reminders", "when do i squat next?", "when is my next session"])
def test_one_command_shows_them(words: str):
    talk = Talk(BOOK["home"].flow, known={**UNCHECKED, "squat.plan": PLAN}, book=BOOK).say(words)
    assert talk.state == "reminders.next"


@pytest.mark.parametrize(("level", "told"), [
    ("go", False), ("not_today", False), ("clinician", True), ("same_day", True), ("emergency", True)])
def test_who_is_to_be_seen_first_is_told_that_these_wait(level: str, told: bool):
    heard = "\n".join(say.text for say in begun(**{"squat.plan": PLAN, "safety.level": level}).says)
    assert ("I write nothing about squats or tests" in heard) == told


@each_row(("paused", "words"), [("open", "begin again"), ("asked", "go on")])
def test_while_they_are_paused_none_is_shown_as_coming(paused: str, words: str):
    heard = "\n".join(say.text for say in begun(**{"reminders.paused": paused, "due.retest": "2026-03-07 10:00"}).says)
    assert "paused" in heard
    assert words in heard
    assert "squat day" not in heard
    assert "test again" not in heard


def test_who_wants_none_sees_none():
    assert begun(**{"squat.no_prompts": "yes"}).says[0].text.startswith("Your reminders are off. “Reminder times” turns")


def test_without_a_plan_it_says_how_to_make_one():
    talk = Talk(FLOW, known=UNCHECKED, book=BOOK)
    assert talk.says[0].text == "No reminder is planned. Say “my squat days” to set them up."
    assert talk.state == "home.pick"


def test_a_day_told_of_is_not_reminded_of():
    assert "tomorrow" not in begun(**{"squat.wishes": "2 18:00 20:00 09:00", "squat.answered": "2026-03-03"}).says[0].text


def test_the_hours_are_those_where_the_lifter_is():
    talk = begun(**{"squat.wishes": "2 18:00 20:00 09:00", "welcome.zone": "America/New_York"})
    assert lines(talk)[0] == "Tomorrow, 16:00: squat day tomorrow, 18:00."


def test_a_file_is_sent_and_the_days_and_times_can_be_changed():
    assert any(isinstance(effect, Calendar) for effect in begun().tap("A file for my calendar").effects)
    assert begun().tap("Change my squat days").state == "squat_days.change"
    assert begun().tap("Change the times").state == "reminder_times.before"
    assert begun().tap("No, fine").state == "home.pick"


@pytest.mark.parametrize("closed", ["limit.squat", "limit.move"])
def test_while_a_limit_closes_squats_their_reminders_are_said_to_be_held_back(closed: str):
    limit = {closed: "closed", "limit.words": "no squats, until cleared"}
    talk = begun(**limit, **{"due.limit": "2026-03-30 10:00"})
    assert lines(talk) == ["Monday 30 March, 10:00: whether your limit is over."]
    held = "Reminders of squat days are held back while this stands: no squats, until cleared."
    assert talk.says[1].text == held
    assert [say.text for say in begun(**limit).says][:1] == [held]
    assert held not in [say.text for say in begun(**limit, **{"squat.plan": ""}).says], "there is none to hold back"
    load = {"squat.wishes": "2 18:00 20:00 09:00", "limit.load": "closed", "limit.words": "no load"}
    assert "squat day tomorrow" in begun(**load).says[0].text
