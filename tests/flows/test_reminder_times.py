"""When the lifter hears of a squat day, and the hours in which nothing is sent."""

from __future__ import annotations

import pytest

from companion.calendar.prompts import Preferences
from companion.conversation.condition import Value
from companion.conversation.effects import Replan, StopReminders
from flows.catalogue import BOOK
from flows.reminder_times import FLOW
from tests.drive import UNCHECKED, Talk
from tests.table import each_row


def begun(**known: Value) -> Talk:
    return Talk(FLOW, known={**UNCHECKED, **known}, book=BOOK)


def menu(**known: Value) -> Talk:
    return Talk(BOOK["home"].flow, known={**UNCHECKED, **known}, book=BOOK)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def test_the_evening_before_at_a_time_of_theirs():
    talk = begun().tap("The evening before", "19:00", "Yes")
    assert talk.found["squat.wishes"] == "0 19:00 20:00 09:00"
    assert any(isinstance(effect, Replan) for effect in talk.effects)


@pytest.mark.parametrize(("label", "hours"), [("2 hours before", 2), ("4 hours before", 4), ("12 hours before", 12)])
def test_some_hours_before(label: str, hours: int):
    talk = begun().tap(label, "Yes")
    assert Preferences.loads(talk.found["squat.wishes"]).before == hours
    assert "evening" not in talk.answers


def test_quiet_hours_are_eight_to_nine_unless_changed():
    assert "Between 20:00 and 09:00" in begun().tap("2 hours before").last


def test_other_quiet_hours_typed_as_people_type():
    talk = begun().tap("2 hours before", "Other hours").say("10pm", "7")
    assert talk.found["squat.wishes"] == "2 18:00 22:00 07:00"
    assert "Nothing from me between 22:00 and 07:00." in heard(talk)


def test_a_bare_hour_for_the_evening_is_in_the_evening():
    assert begun().tap("The evening before").say("7").state == "reminder_times.quiet"


def test_no_quiet_hours():
    talk = begun().tap("2 hours before", "No quiet hours")
    assert talk.found["squat.wishes"] == "2 18:00 00:00 00:00"
    assert "at any hour" in heard(talk)


def test_not_at_all_asks_nothing_more_and_keeps_that():
    talk = begun().tap("Not at all")
    assert talk.found["squat.no_prompts"] == "yes"
    assert "say “squatting” on the day" in heard(talk)
    assert talk.state == "home.pick"


def test_reminders_wanted_again_come_again():
    assert begun(**{"squat.no_prompts": "yes"}).tap("2 hours before", "Yes").found["squat.no_prompts"] == "no"


def test_quiet_hours_asked_for_are_all_that_is_asked():
    talk = menu(**{"squat.wishes": "4 18:00 20:00 09:00"}).say("quiet hours")
    assert talk.state == "reminder_times.quiet"
    talk.tap("Other hours", "21:00", "07:00")
    assert talk.found["squat.wishes"] == "4 18:00 21:00 07:00"
    assert "squat.no_prompts" not in talk.found
    assert talk.state == "home.pick"


def test_quiet_hours_changed_wake_no_reminders_that_are_off():
    talk = menu(**{"squat.no_prompts": "yes"}).say("quiet hours").tap("No quiet hours")
    assert talk.known["squat.no_prompts"] == "yes"


def test_wishes_that_were_told_stay_where_only_one_is_changed():
    talk = begun(**{"squat.wishes": "4 17:00 21:00 07:00"}).tap("The evening before", "19:00", "Yes")
    assert talk.found["squat.wishes"] == "0 19:00 21:00 07:00"


def test_beside_a_first_plan_only_one_question_is_asked():
    talk = Talk(BOOK["squat_days"].flow, known={**UNCHECKED, "squat.goal": "x"}, book=BOOK).say("tue fri 6pm", "yes").tap("2 hours before")
    assert "Good: 2 hours before. Nothing from me between 20:00 and 09:00." in heard(talk)
    assert talk.found["squat.wishes"] == "2 18:00 20:00 09:00"
    assert talk.state == "home.pick"


# all of them off ------------------------------------------------------------------------------------------------------


@each_row("said", [
    "stop all reminders", "Stop reminders", "stop the reminders please", "no more reminders", "turn off reminders", "turn my reminders off",
    "cancel all my reminders", "stop sending me reminders", "can you stop reminding me", "stop reminding me", "don't remind me anymore",
    "Don’t remind me any more.", "stop messaging me", "stop texting me", "please stop all notifications"])
def test_all_reminders_are_off_at_once_and_it_says_how_they_come_back(said: str):
    talk = menu(**{"squat.plan": '{"weekly":{"TU":"18:00"}}'}).say(said)
    assert talk.found["squat.no_prompts"] == "yes"
    assert StopReminders() in talk.effects
    assert any(isinstance(effect, Replan) for effect in talk.effects)
    assert "“reminder times” turns their reminders on again" in heard(talk)
    assert "squat.plan" not in talk.found
    assert talk.state == "home.pick"


@pytest.mark.parametrize("said", ["remind me", "my reminders", "stop", "stop it", "don't stop", "stop all squat days", "stop me"])
def test_other_words_turn_no_reminder_off(said: str):
    assert "squat.no_prompts" not in menu(**{"squat.plan": '{"weekly":{"TU":"18:00"}}'}).say(said).found


def test_they_come_again_where_somebody_says_so():
    talk = menu().say("stop all reminders", "reminder times").tap("2 hours before", "Yes")
    assert talk.found["squat.no_prompts"] == "no"
