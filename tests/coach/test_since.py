"""What is new of a coach's lifters since the coach last looked."""

from __future__ import annotations

import re

import pytest

from companion.coach import look, views
from companion.coach.actions import act
from companion.coach.caseload import caseload
from companion.coach.since import LIFTERS_A_PAGE, LifterNews, news_of, quoted
from companion.conversation.effects import Act, Alert
from companion.record import coaching
from companion.record.turn import Turn
from companion.screening.levels import CALL
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago
from tests.coach.caseload_world import populate

CHANGED = "knee to wall, left: 3 cm more than before, which is beyond measurement error (2.1 cm)."


def news(room: Room) -> list[LifterNews]:
    return news_of(room.db, room.coach, NOW, "UTC+00:00")


def groups(room: Room) -> list[str]:
    return [state.group for one in news(room) for state in one.told]


def shown(room: Room, page: str = ""):
    (say,) = views.show(Turn(room.db, room.coach, NOW, BOOK), "since", page)
    return say


def does(room: Room, sam: int, what: str, value: str, days: float = 0):
    return act(Turn(room.db, room.coach, ago(days), BOOK), Act(what, str(sam), value))[0].say


def test_what_was_there_at_the_last_look_is_not_new_and_what_came_after_is(room):
    sam = room.lifter()
    room.results(sam, 5)
    assert groups(room) == ["new_result"]
    coaching.audit_look(room.db, sam, room.coach, "numbers", ago(4))
    assert groups(room) == []
    room.find(sam, "retest.change", "better", 3, CHANGED)
    assert groups(room) == ["better"]
    assert CHANGED in news(room)[0].words, "with the error"


def test_a_line_in_a_list_and_another_coach_s_look_are_no_look(room):
    sam = room.lifter()
    room.results(sam, 5)
    coaching.audit_look(room.db, sam, room.coach, "caseload", ago(1))
    coaching.audit_look(room.db, sam, room.a_coach("Bea"), "summary", ago(1))
    assert groups(room) == ["new_result"]


def test_pain_load_and_silence_stay_however_often_they_are_looked_at(room):
    sam = room.lifter(answered=20)
    room.hurt(sam, 19, "no_load")
    room.lifted(sam, 19)
    coaching.audit_look(room.db, sam, room.coach, "summary", ago(1))
    assert groups(room) == ["hurt", "over_load", "quiet"]
    room.reviewed(sam, 0.5)
    assert groups(room) == ["quiet"]


def test_the_answer_that_decides_is_quoted(room):
    hurt, over, better, note = (room.lifter(name) for name in ("Hal", "Ova", "Bea", "Nia"))
    room.hurt(hurt, 1, sharp="no", below_knee="no", tingling="yes")
    room.lifted(over, 1, 109.0)
    room.run(better, "knee_to_wall", {"left_1": 11.0, "left_2": 11.5, "right_1": 9.0}, 1)
    room.find(better, "retest.change", "better", 1, CHANGED)
    room.run(note, "note_to_coach", {"text": "may I go on?"}, 1)
    quotes = {one.name: quoted(room.db, one).quote for one in news(room)}
    assert quotes["Hal"] == "sharp: “no”, below knee: “no”, tingling: “yes”"
    assert quotes["Ova"] == "load: “109.0”"
    assert [*re.findall(r"“(.+?)”", quotes["Bea"])] == ["11.0", "11.5"]
    assert "“may I go on?”" in shown(room).text


def test_each_lifter_has_one_suggested_act_beside_their_page_and_putting_them_aside(room):
    sam = room.lifter()
    room.lifted(sam, 1)
    assert [tap.data for tap in shown(room).buttons[0]] == [
        f"go.lifter.{sam}", f"go.coach_act.{sam}-pin_load", f"go.coach_act.{sam}-put_aside"]


def test_five_lifters_a_message_the_most_urgent_first_and_the_rest_with_next(room):
    for n in range(12):
        room.results(room.lifter(f"Lifter {n}"), 2)
    hurt = room.lifter("Hal")
    room.hurt(hurt, 1)
    say = shown(room)
    assert say.text.splitlines()[0] == "Since you last looked: 13 of 13 lifters, 1 to 5."
    assert "1. Hal: hurt yesterday" in say.text
    assert sum("Put aside" in tap.label for row in say.buttons for tap in row) == LIFTERS_A_PAGE
    seen = {tap.data for page in ("", "1", "2") for row in shown(room, page).buttons for tap in row if tap.data.startswith("go.lifter.")}
    assert len(seen) == 13
    assert shown(room, "99").text == shown(room, "2").text


def test_what_is_due_from_the_coach_is_counted(room):
    one, two = room.lifter("One"), room.lifter("Two")
    room.run(one, "note_to_coach", {"text": "may I?"}, 1)
    room.run(two, "note_to_coach", {"text": "and I?"}, 1)
    room.hurt(two, 1)
    assert "Due from you: 1 report of pain, 2 notes." in shown(room).text
    for sam in (one, two):
        room.lifted(sam, 1)
    assert "Due from you: 1 report of pain, 2 notes, 2 loads over the limit." in shown(room).text


def test_nothing_new_is_said_in_a_line(room):
    room.lifter()
    assert shown(room).text == "Nothing new of your lifter since you last looked."


@pytest.mark.parametrize(("value", "until_due"), [("1", 1), ("3", 3), ("7", 7)])
def test_who_is_put_aside_until_a_day_comes_back_on_it(room, value, until_due):
    sam = room.lifter(answered=20)
    does(room, sam, "put_aside", value, until_due - 0.5)
    assert groups(room) == []
    room.db.execute("update acts set value = ? where what = 'snooze'", (NOW.date().isoformat(),))
    assert groups(room) == ["quiet"]


def test_a_referral_brings_back_at_once_who_was_put_aside_and_stays_when_looked_at(room):
    sam = room.lifter()
    room.results(sam, 2)
    does(room, sam, "put_aside", "7", 1)
    room.find(sam, "safety.level", "clinician", 0.5)
    assert groups(room) == ["referred"]
    coaching.audit_look(room.db, sam, room.coach, "numbers", ago(0.1))
    assert groups(room) == ["referred"]


def test_news_goes_by_group_then_by_the_care_needed_then_the_latest_first(room):
    old, new, seen, sent, small, chest = (room.lifter(name) for name in ("Old", "New", "Sia", "Sen", "Sol", "Chi"))
    room.results(old, 3)
    room.results(new, 1)
    room.find(seen, "safety.level", "clinician", 1)
    room.find(sent, "safety.level", "same_day", 6)
    room.hurt(small, 0.1, "no_load")
    room.hurt(chest, 3, "emergency", "chest")
    assert [one.person for one in news(room)] == [chest, sent, small, seen, new, old]
    assert "Due from you: 1 sent to emergency care, 1 to be seen the same day, 1 to see a clinician, 2 reports of pain." in shown(room).text
    room.find(old, "safety.level", "clinician", 40)  # referred now, and the last of these
    assert [one.weight for one in news(room)] == [3, 2, 0, 1, 1, 0]


def test_care_weighs_only_while_what_asked_for_it_is_told(room):
    first, second = room.over_an_emergency(), room.over_a_small_pain()
    assert [(one.person, one.weight) for one in news(room)] == [(second, 0), (first, 0)]


def test_who_is_sent_to_be_seen_at_once_comes_first_among_those_who_ask_for_a_call(room):
    calm, faint = room.lifter("Calm"), room.lifter("Faint")
    for one, days in ((faint, 2), (calm, 1)):
        room.run(one, "crisis", {"coach_may": "yes"}, days, alert=Alert(CALL, "asks their coach to phone them"))
    room.find(faint, "safety.level", "emergency", 3)
    assert [(one.person, one.weight) for one in news(room)] == [(faint, 3), (calm, 0)]
    assert [line.person for line in caseload(room.db, room.coach, NOW, "UTC+00:00")] == [faint, calm]


def test_pain_brings_back_at_once_who_was_put_aside(room):
    sam = room.lifter()
    room.results(sam, 2)
    said = does(room, sam, "put_aside", "7", 1)
    assert said.text.startswith("Sam is put aside until Wednesday 18 March. Pain or a referral brings them back at once")
    room.find(sam, "retest.change", "better", 0.6, CHANGED)
    assert groups(room) == []
    room.hurt(sam, 0.5, "no_load")
    assert groups(room) == ["hurt"], "and the results wait for their day"


def test_what_is_dismissed_is_gone_until_the_next_new_thing_and_stays_in_the_caseload(room):
    sam = room.lifter()
    room.hurt(sam, 2, "no_load")
    does(room, sam, "put_aside", "dismiss", 1)
    assert groups(room) == []
    assert views.show(Turn(room.db, room.coach, NOW, BOOK), "caseload", "")[0].text.startswith("1 lifter: 1 hurt")
    room.find(sam, "retest.change", "worse", 0.5, CHANGED)
    assert groups(room) == ["worse"]


@pytest.mark.parametrize("value", ["7", "dismiss"])
def test_pain_told_at_the_moment_of_putting_aside_was_not_what_was_put_aside(room, value):
    sam = room.lifter()
    room.results(sam, 2)
    does(room, sam, "put_aside", value, 1)
    room.hurt(sam, 1, "no_load")
    assert groups(room) == ["hurt"]


def test_a_result_of_the_moment_of_a_look_was_there_at_the_look(room):
    sam = room.lifter()
    room.results(sam, 5)
    coaching.audit_look(room.db, sam, room.coach, "numbers", ago(5))
    assert groups(room) == []


@pytest.mark.parametrize("value", ["1", "dismiss", "reviewed"])
def test_each_way_to_put_somebody_aside_is_taken_back_with_its_own_button(room, value):
    sam = room.lifter()
    room.hurt(sam, 2, "no_load")
    said = does(room, sam, "put_aside", value, 0.2)
    assert groups(room) == []
    taken_back = next(tap.data for row in said.buttons for tap in row if tap.label == "Take it back")
    does(room, sam, "unreviewed", taken_back.rpartition("-")[2], 0.1)
    assert groups(room) == ["hurt"]
    again = does(room, sam, "unreviewed", taken_back.rpartition("-")[2])
    assert again.text == "That was already taken back."


def test_another_s_lifter_is_in_no_news_and_can_t_be_put_aside(room):
    sam = room.lifter()
    room.hurt(sam, 1)
    bea = room.a_coach("Bea")
    assert news_of(room.db, bea, NOW, "UTC+00:00") == []
    (refused,) = act(Turn(room.db, bea, NOW, BOOK), Act("put_aside", str(sam), "7"))
    assert refused.say.text == "That is not one of your lifters."


def test_any_caseload_s_news_fits_a_message(room):
    populate(room, 60, seed=2)
    for page in range(12):
        assert len(shown(room, str(page)).text) < look.TEXT_MOST


def test_a_referral_is_not_told_twice_and_the_quote_is_of_the_time_it_is_about(room):
    sam = room.lifter()
    room.hurt(sam, 3, "emergency", sharp="yes")
    room.run(sam, "pain", {"where": "nothing", "sharp": "no"}, 1)
    (one,) = news(room)
    assert one.words == "sent to emergency care; hurt on Monday: lower back, 5 of 10"
    assert quoted(room.db, one).quote == "sharp: “yes”"
