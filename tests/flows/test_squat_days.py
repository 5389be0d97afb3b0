"""Squat days set up, changed and put back: typed as people type, and tapped."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta

import pytest

from companion.calendar.plan import Plan, next_days
from companion.calendar.preferences import plan_from
from companion.conversation.condition import Value
from companion.conversation.effects import Calendar, Record, Replan, Say
from companion.conversation.events import Tapped
from companion.conversation.flow import Flow, Known, Tell
from companion.conversation.prompt import start_payload
from companion.conversation.registry import bind
from companion.conversation.session import Session
from flows.catalogue import BOOK
from flows.plan_facts import since_when
from flows.squat_days import FLOW
from tests.drive import NOW, UNCHECKED, Talk
from tests.table import each_row

PLAN = '{"weekly":{"TU":"18:00","FR":"18:00"}}'
TOLD: Mapping[str, Value] = {"reminder_times.before": "0", "squat.goal": "parallel"}
PLANNED: Mapping[str, Value] = {**UNCHECKED, **TOLD, "squat.plan": PLAN}
"""Monday 2 March, 18:05; the next squat days are tomorrow and Friday 6 March."""


def new(**known: Value) -> Talk:
    return Talk(FLOW, known={**UNCHECKED, **known}, book=BOOK)


def planned(**known: Value) -> Talk:
    return Talk(FLOW, known={**PLANNED, **known}, book=BOOK)


def menu(**known: Value) -> Talk:
    return Talk(BOOK["home"].flow, known={**PLANNED, **known}, book=BOOK)


def plan_of(talk: Talk) -> dict[str, str]:
    """The days kept from tomorrow on for two weeks, by date."""
    plan = Plan.loads(str(talk.known["squat.plan"]))
    return {f"{one.day:%d}": f"{one.at:%H:%M}" for one in next_days(plan, NOW.date(), 4)}


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


# setting up -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("typed", [
    "tues n fri 6pm", "Tuesdays and Fridays at 6pm", "tue+fri@6pm", "every tues and fri, 18:00", "tue fri 18h"])
def test_days_typed_are_said_back_with_the_next_two_dates(typed: str):
    talk = new().say(typed)
    assert talk.state == "squat_days.right"
    assert talk.last.startswith("Every Tuesday and Friday at 18:00. The next two: tomorrow, 18:00, and Friday 6 March, 18:00.")
    assert "squat.plan" not in talk.found


def test_nothing_is_kept_before_it_is_said_to_be_right():
    talk = new(**TOLD).say("tues n fri 6pm").tap("No")
    assert "squat.plan" not in talk.found
    assert "Then nothing has changed" in heard(talk)


def test_typed_days_take_one_line_and_three_taps():
    talk = new().say("Tuesdays and Fridays at 6pm").tap("Yes, that is right", "The evening before", "Skip")
    assert talk.found["squat.plan"] == '{"weekly":{"TU":"18:00","FR":"18:00"}}'
    assert "Kept. Next: tomorrow, 18:00." in heard(talk)
    assert talk.state == "home.pick"


def test_two_days_by_taps_alone_are_seven():
    talk = new().tap("Tuesday", "Friday", "That is all", "18:00", "Yes, that is right", "The evening before", "Skip")
    assert talk.found["squat.plan"] == PLAN
    assert any(isinstance(effect, Replan) for effect in talk.effects)


def test_a_day_tapped_is_not_offered_again():
    talk = new().tap("Tuesday", "Friday")
    labels = [tap.label for row in talk.says[-1].buttons for tap in row]
    assert "Tuesday" not in labels
    assert "Friday" not in labels
    assert "Monday" in labels


def test_an_hour_without_morning_or_evening_is_asked_back():
    talk = new().say("tue and fri 6")
    assert talk.last == "In the morning or in the evening?"
    assert talk.tap("In the evening").last.startswith("Every Tuesday and Friday at 18:00")
    assert new().say("tue and fri 6").say("morning").last.startswith("Every Tuesday and Friday at 06:00")


@pytest.mark.parametrize(("typed", "asked"), [
    ("mon wed fri", "At what time?"), ("saturdays 10", "In the morning or in the evening?"),
    ("every other day 7am", "Beginning on which day?"), ("every other day", "At what time?")])
def test_only_what_is_missing_is_asked(typed: str, asked: str):
    assert new().say(typed).last == asked


def test_every_other_day_may_begin_tomorrow_typed_or_tapped():
    """ "Tomorrow" is a word for "not now", too; here it is the answer."""
    for talk in (new().say("every other day 7am", "tomorrow"), new().say("every other day 7am").tap("Tomorrow")):
        assert talk.state == "squat_days.right"
        assert "tomorrow, 07:00, and Thursday 5 March, 07:00" in talk.last


def test_a_different_time_on_one_day():
    talk = new(**TOLD).say("tue 6pm, sat 10am", "yes")
    assert plan_of(talk) == {"03": "18:00", "07": "10:00", "10": "18:00", "14": "10:00"}


def test_a_day_whose_time_has_passed_is_not_said_to_be_next():
    talk = new().say("mondays 7am")
    assert "Monday 9 March, 07:00, and Monday 16 March" in talk.last
    assert "today" not in talk.last


def test_the_goal_is_kept_as_it_was_said():
    talk = new().say("tues n fri 6pm", "yes", "evening", "parallel, still back, 90 kg")
    assert talk.found["squat.goal"] == "parallel, still back, 90 kg"


def test_what_can_not_be_read_is_asked_again_with_an_example():
    talk = new().say("whenever the rota lets me")
    assert talk.state == "squat_days.first"
    assert "For example: Tuesdays and Fridays at 6pm." in talk.last


def test_skipping_the_first_question_changes_nothing_and_says_so():
    talk = new().say("skip")
    assert "Nothing has changed" in heard(talk)
    assert "squat.plan" not in talk.found


def test_under_18_without_a_coach_it_stays_shut():
    assert "Under 18" in heard(new(**{"welcome.adult": "no"}))


# changing ---------------------------------------------------------------------------------------------------


@each_row(("typed", "days"), [
    ("no squats this friday", ["03", "10", "13", "17"]),
    ("not tomorrow", ["06", "10", "13", "17"]),
    ("i can't squat on friday", ["03", "10", "13", "17"]),
    ("push friday to saturday", ["03", "07", "10", "13"]),
    ("can't make it tomorrow", ["06", "10", "13", "17"]),
    ("sorry, can't tomorrow", ["06", "10", "13", "17"]),
    ("rest day tomorrow", ["06", "10", "13", "17"]),
    ("tomorrow at 7pm instead", ["03", "06", "10", "13"]),
    ("make it 7pm", ["03", "06", "10", "13"]),
    ("move it to sunday", ["06", "08", "10", "13"]),
    ("pause for 2 weeks", ["17", "20", "24", "27"]),
    ("on holiday until 20 march", ["20", "24", "27", "31"]),
    ("friday 7pm instead", ["03", "06", "10", "13"]),
])
def test_a_change_typed_in_the_menu_is_made_at_once(typed: str, days: list[str]):
    talk = menu().say(typed)
    assert list(plan_of(talk)) == days
    assert talk.state == "home.pick"


@pytest.mark.parametrize("typed", [
    "skip friday", "move friday to saturday 10am", "pause for 2 weeks", "friday at 7pm instead", "saturday 8 march 10am"])
def test_one_tap_takes_a_change_back(typed: str):
    talk = menu()
    before = plan_of(talk)
    if typed.startswith("saturday"):
        talk = planned().tap("Add a day").say("saturday 10am")
    else:
        talk.say(typed)
    assert plan_of(talk) != before
    assert plan_of(talk.tap("Undo that")) == before


@pytest.mark.parametrize("typed", ["make it 7pm", "tomorrow at 7pm instead", "Tomorrow, 7pm instead please"])
def test_another_time_is_typed_in_few_words(typed: str):
    assert plan_of(menu().say(typed))["03"] == "19:00"


@pytest.mark.parametrize("typed", ["8pm instead", "thursday instead"])
def test_a_change_that_lacks_its_day_asks_for_it_and_changes_nothing(typed: str):
    talk = menu().say(typed)
    assert talk.state == "squat_days.change"
    assert "which day?" in heard(talk).lower()
    assert talk.known["squat.plan"] == PLAN


def test_another_time_on_one_day_leaves_the_others():
    assert plan_of(menu().say("friday at 7pm instead")) == {"03": "18:00", "06": "19:00", "10": "18:00", "13": "18:00"}


def test_move_friday_asks_where_to_and_moves_friday_not_the_next_one():
    talk = menu().say("move friday")
    assert talk.last.startswith("Move Friday 6 March to which day?")
    talk.say("sunday 10am")
    assert plan_of(talk) == {"03": "18:00", "08": "10:00", "10": "18:00", "13": "18:00"}


def test_a_day_is_not_moved_onto_another_squat_day():
    talk = menu().say("move friday", "tuesday 10 march")
    assert "is a squat day already" in talk.last
    assert talk.known["squat.plan"] == PLAN


def test_skip_the_next_one_by_tap():
    assert list(plan_of(planned().tap("Skip the next one"))) == ["06", "10", "13", "17"]


def test_the_next_one_is_not_the_one_of_this_morning():
    talk = planned(**{"squat.plan": '{"weekly":{"MO":"07:00","FR":"18:00"}}'}).tap("Skip the next one")
    assert "Left out: Friday 6 March" in heard(talk)


def test_the_next_one_is_not_the_one_that_was_told_of_already():
    talk = planned(**{"squat.plan": '{"weekly":{"MO":"18:00","FR":"18:00"}}', "squat.answered": "2026-03-02"}).tap("Skip the next one")
    assert "Left out: Friday 6 March" in heard(talk)


def test_an_hour_late_it_is_still_todays():
    talk = planned(**{"squat.plan": '{"weekly":{"MO":"18:00","FR":"18:00"}}'}).tap("Skip the next one")
    assert "Left out: today" in heard(talk)


def test_the_day_to_move_to_may_be_tomorrow():
    talk = planned(**{"squat.plan": '{"weekly":{"TH":"18:00"}}'}).tap("Move the next one").say("tomorrow")
    assert "Moved: Thursday 5 March to tomorrow, 18:00" in heard(talk)


def test_an_extra_day_wants_a_time():
    talk = planned().tap("Add a day").say("thursday").tap("19:00")
    assert plan_of(talk) == {"03": "18:00", "05": "19:00", "06": "18:00", "10": "18:00"}


def test_a_day_that_is_one_already_is_not_added():
    talk = planned().tap("Add a day").say("tomorrow")
    assert "Tomorrow is a squat day already, at 18:00" in talk.last
    assert talk.state == "squat_days.extra"


def test_a_pause_ends_by_a_word_in_the_menu_as_it_says():
    talk = menu().say("pause until 20 march")
    assert "“Unpause” ends it sooner." in heard(talk)
    assert list(plan_of(talk.say("unpause"))) == ["03", "06", "10", "13"]


@each_row(("typed", "days"), [
    ("away 10 to 20 March", ["03", "06", "24", "27"]), ("skip next week", ["03", "06", "17", "20"]),
    ("no squats next week", ["03", "06", "17", "20"]), ("pause from friday until 14 march", ["03", "17", "20", "24"]),
    ("i'm away from friday until monday", ["03", "10", "13", "17"]), ("on holiday from 10 march to 20 march", ["03", "06", "24", "27"]),
    ("pause next week", ["03", "06", "17", "20"]), ("I'll be away 10-20 march", ["03", "06", "24", "27"]),
    ("no squats from the 10th to the 20th of march", ["03", "06", "24", "27"])])
def test_a_pause_that_begins_later_is_made_at_once_from_the_menu_and_taken_back_by_a_tap_or_a_word(typed: str, days: list[str]):
    before = plan_of(menu())
    talk = menu().say(typed)
    assert list(plan_of(talk)) == days
    assert talk.state == "home.pick"
    assert plan_of(talk.tap("Undo that")) == before
    assert plan_of(menu().say(typed, "unpause")) == before


def test_a_pause_that_begins_later_says_which_days_go_and_the_next_two():
    assert ("Paused from Tuesday 10 March until Saturday 21 March, when squat days go on. Left out: Tuesday 10 March, Friday 13 March, "
            "Tuesday 17 March and Friday 20 March. The next two: tomorrow, 18:00, and Friday 6 March, 18:00. “Unpause” takes it back."
            ) in heard(menu().say("away 10 to 20 march"))
    assert "Left out: 8 squat days, from Friday 6 March to Tuesday 31 March." in heard(menu().say("away from friday until 1 april"))
    assert "There is no squat day in it." in heard(menu().say("away from 11 march until 13 march"))


def test_a_pause_without_an_end_has_it_asked_for():
    for reply in ("until 14 march", "14 march", "for a week and a day", "to 13 march"):
        talk = menu().say("away from friday")
        assert talk.last.startswith("Away from Friday 6 March, and until when?")
        assert talk.known["squat.plan"] == PLAN
        if reply.startswith("for"):
            assert talk.say(reply).state == "squat_days.rest"
            reply = "for a week"
        assert list(plan_of(talk.say(reply))) == (["03", "13", "17", "20"] if reply == "for a week" else ["03", "17", "20", "24"])


def test_the_plan_shows_a_pause_to_come_and_the_pause_button_takes_one():
    talk = planned().tap("Pause").say("10 to 20 march")
    assert list(plan_of(talk)) == ["03", "06", "24", "27"]
    assert "Paused from Tuesday 10 March until Saturday 21 March. Next: tomorrow" in talk.say("my squat days").last
    assert "Paused from Tuesday 10 March" in talk.say("mondays and thursdays 6pm").last


def test_a_pause_that_has_begun_ends_by_a_word_and_comes_back_by_a_tap():
    away = '{"weekly":{"TU":"18:00","FR":"18:00"},"away":{"2026-03-01":"2026-03-21"}}'
    talk = menu(**{"squat.plan": away}).say("unpause")
    assert list(plan_of(talk)) == ["03", "06", "10", "13"]
    assert list(plan_of(talk.tap("Undo that"))) == ["24", "27", "31", "03"]


@pytest.mark.parametrize(("button", "said"), [
    ("away 2026-02-10 2026-02-20", "Friday 20 February has passed."), ("away 2026-03-20 2026-03-10", "That ends before it begins."),
    ("away 2026-03-20 2028-03-10", "more than a year ahead"), ("stay 2026-03-20", "No pause begins on Friday 20 March.")])
def test_a_button_for_a_pause_that_can_not_be_changes_nothing(button: str, said: str):
    talk = menu()
    talk.send(Tapped(start_payload("squat_days", button)))
    assert said in heard(talk)
    assert "squat.plan" not in talk.found


@pytest.mark.parametrize("typed", ["move it", "Move it, please".replace(",", ""), "move the next one", "move my next squat day"])
def test_move_it_typed_in_the_menu_asks_where_to_and_moves_the_next_one(typed: str):
    talk = menu().say(typed)
    assert talk.last.startswith("Move tomorrow to which day?")
    assert plan_of(talk.say("sat 10am")) == {"06": "18:00", "07": "10:00", "10": "18:00", "13": "18:00"}


def test_move_it_to_a_day_and_time_typed_in_the_menu_moves_the_next_one():
    assert plan_of(menu().say("move it to saturday 10am")) == {"06": "18:00", "07": "10:00", "10": "18:00", "13": "18:00"}


def test_a_new_week_says_which_days_it_leaves_out():
    assert menu().say("fridays at 7pm from now on").last.startswith("Every Friday at 19:00, and no longer Tuesday. The next two: ")
    assert "no longer" not in menu().say("mon, tue and fri 7pm from now on").last


def test_a_pause_by_tap_has_its_end_asked_for():
    talk = planned().tap("Pause").say("10 march")
    assert list(plan_of(talk)) == ["10", "13", "17", "20"]
    assert "I write nothing about squat days before then" in heard(talk)


@pytest.mark.parametrize("typed", ["stop all squat days", "no more squat days", "cancel my squat days", "stop squat day reminders"])
def test_all_are_ended_only_after_a_yes(typed: str):
    talk = menu().say(typed)
    assert talk.last.startswith("No squat days and no reminders of them any more. Is that right?")
    assert talk.known["squat.plan"] == PLAN
    talk.say("yes")
    assert talk.known["squat.plan"] == "{}"
    assert "file for your calendar" not in heard(talk)


def test_stop_on_its_own_stops_the_conversation_and_no_squat_day():
    for talk in (planned().say("stop"), new().say("stop")):
        assert "squat.plan" not in talk.found
        assert talk.session.parked


def test_leaving_it_as_it_is():
    talk = planned().tap("Leave it as it is")
    assert "It stays as it is." in heard(talk)
    assert "squat.plan" not in talk.found


def test_a_new_rule_takes_the_place_of_the_old_by_typing_or_by_taps():
    for talk in (planned().say("mondays and thursdays 6pm"), planned().tap("Other days", "Monday", "Thursday", "That is all", "18:00")):
        assert list(plan_of(talk.say("yes"))) == ["02", "05", "09", "12"]


def test_wishes_told_once_are_not_asked_for_again():
    talk = planned().say("mondays and thursdays 6pm", "yes")
    assert talk.state == "home.pick"


def test_while_a_test_goes_on_a_change_parks_it_and_it_can_go_on():
    talk = Talk(BOOK["about_you"].flow, known=PLANNED, book=BOOK).say("skip friday")
    assert "I keep your place in “" in heard(talk)
    assert list(plan_of(talk)) == ["03", "10", "13", "17"]
    assert talk.say("go on").state.startswith("about_you.")


# buttons that are old -----------------------------------------------------------------------------------------


def pressed(talk: Talk, asked: str) -> Talk:
    talk.send(Tapped(start_payload("squat_days", asked)))
    return talk


def test_skip_tapped_twice_leaves_out_that_day_and_no_other():
    talk = pressed(pressed(menu(), "skip 2026-03-06"), "skip 2026-03-06")
    assert list(plan_of(talk)) == ["03", "10", "13", "17"]
    assert "Friday 6 March is left out already. Nothing has changed. Next: tomorrow, 18:00." in heard(talk)
    assert talk.state == "home.pick"


@pytest.mark.parametrize("asked", [
    "skip 2026-02-03", "move 2026-02-03 ????-??-?? 18:00", "on 2026-02-03 18:00", "move 2026-02-03 2026-03-04 18:00"])
def test_a_button_weeks_old_changes_nothing_and_is_answered_kindly(asked: str):
    talk = pressed(menu(), asked)
    assert talk.known["squat.plan"] == PLAN
    assert "Tuesday 3 February has passed. Nothing has changed. Next: tomorrow, 18:00." in heard(talk)
    assert talk.state == "home.pick"


def test_a_skip_of_a_day_that_is_none_any_more_says_so():
    talk = pressed(menu(), "skip 2026-03-05")
    assert "Thursday 5 March is no squat day" in heard(talk)
    assert talk.known["squat.plan"] == PLAN


def test_move_it_asks_where_to_and_takes_a_time_with_it():
    talk = pressed(menu(), "move 2026-03-03 ????-??-?? 18:00")
    assert talk.last.startswith("Move tomorrow to which day?")
    assert plan_of(talk.say("thursday 7pm")) == {"05": "19:00", "06": "18:00", "10": "18:00", "13": "18:00"}


def test_move_it_to_the_day_before_the_next_is_tapped():
    talk = pressed(menu(**{"squat.plan": '{"weekly":{"FR":"18:00"}}'}), "move 2026-03-06 ????-??-?? 18:00").tap("Tomorrow")
    assert list(plan_of(talk))[:2] == ["03", "13"]


def test_an_undo_tapped_twice_moves_nothing_else():
    talk = menu().say("move friday to saturday")
    undo = next(tap.data for say in reversed(talk.says) for row in say.buttons for tap in row if tap.label == "Undo that")
    talk.send(Tapped(undo))
    after = plan_of(talk)
    talk.send(Tapped(undo))
    assert plan_of(talk) == after == {"03": "18:00", "06": "18:00", "10": "18:00", "13": "18:00"}


def test_a_forged_end_is_asked_about_first():
    talk = pressed(menu(), "stop")
    assert talk.state == "squat_days.right"
    assert talk.known["squat.plan"] == PLAN


@pytest.mark.parametrize("asked", [
    "pause 2199-01-01", "on 2199-01-01 18:00", "move 2026-03-06 2199-01-01 18:00", "every 2 18:00 2199-01-01"])
def test_a_forged_day_beyond_a_year_changes_nothing(asked: str):
    talk = pressed(menu(), asked)
    assert talk.known["squat.plan"] == PLAN
    assert "more than a year ahead" in heard(talk)


# what is said -------------------------------------------------------------------------------------------------


def test_the_words_are_calm_and_short():
    talk = new().say("tues n fri 6pm", "yes", "evening", "parallel").say("my squat days", "move friday", "sunday", "pause for two weeks")
    for say in talk.says:
        assert "!" not in say.text
        assert len(say.text) <= 350
        assert len(say.text.split()) <= 60


def test_answers_are_kept_as_they_were_typed():
    rows = [effect for effect in new().say("tues n fri 6pm").effects if isinstance(effect, Record)]
    assert (rows[0].key, rows[0].raw, rows[0].value) == ("first", "tues n fri 6pm", "weekly TU=18:00,FR=18:00")


def test_a_change_made_hours_after_the_question_still_fits_the_plan():
    talk = planned()
    talk.now += timedelta(hours=2)
    assert list(plan_of(talk.say("skip friday"))) == ["03", "10", "13", "17"]


def test_the_reminders_flow_sends_the_file_where_the_plan_says_so():
    talk = Talk(BOOK["reminders"].flow, known=PLANNED, book=BOOK).tap("A file for my calendar")
    assert any(isinstance(effect, Calendar) for effect in talk.effects)


def test_a_book_without_the_flow_takes_the_button_as_an_old_one():
    """A button of a flow that is gone is answered, not failed on."""
    book = bind([Flow("home", 1, "Menu", steps=(Tell("Menu."),)), Flow("pain", 1, "Pain", steps=(Tell("Pain."),))], "home", "pain")
    from companion.conversation.flow import Known
    from companion.conversation.step import step
    taken = step(book, Session(), Tapped("go.squat_days.skip 2026-03-06"), Known(UNCHECKED, NOW))
    assert [effect for effect in taken.effects if isinstance(effect, Say)]


@pytest.mark.parametrize(("now", "day"), [((20, 59), 3), ((21, 1), 4)])
def test_it_means_the_next_day_from_three_hours_after_its_hour(now: tuple[int, int], day: int):
    """Three hours: our choice. A Tuesday at 18:00."""
    facts = {"squat.plan": '{"weekly":{"TU":"18:00"}}'}
    at, today = datetime(2026, 3, 3, *now, tzinfo=UTC), date(2026, 3, 3)
    assert since_when(Known(facts, at), plan_from(facts), today) == date(2026, 3, day)
