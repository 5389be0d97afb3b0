"""Orders of coaches: for whom, until when, which holds, and who may give one."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.app.dispatch import carry_out
from companion.coach.actions import act
from companion.coach.coach_turn import OPEN_FIRST, PAUSED_FIRST, SENT_FIRST
from companion.coach.links import my_coaches
from companion.conversation.effects import Act, Find
from companion.record import coaching, log, orders, reminders
from companion.record.turn import Turn
from companion.screening.load_limit import limit_now
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago
from tests.table import each_row


def does(room: Room, sam: int, what: str, value: str, reason: str = "", days: str = "", coach: int = 0, at=NOW):
    """What everybody hears of an act: the person and the words."""
    turn = Turn(room.db, coach or room.coach, at, BOOK)
    return [(one.to, one.say.text) for one in act(turn, Act(what, str(sam), value, reason, days))]


def fact(room: Room, sam: int, name: str):
    return kept.value if (kept := log.facts_of(room.db, sam).get(name)) else None


def day(days: float) -> str:
    return (NOW + timedelta(days=days)).date().isoformat()


def lapse(room: Room, at) -> list[bool]:
    return [orders.lapse(room.db, one, at) for one in orders.ending(room.db, at.date().isoformat())]


def test_an_order_holds_for_eight_weeks_unless_its_coach_says_otherwise(room):
    sam = room.lifter()
    heard = does(room, sam, "pin_load", "60", days="–")
    assert heard[0] == (room.coach, "Sam: the most load is 60 kg, until Thursday 7 May.")
    assert heard[1] == (sam, "Your coach Ada has set the most load: 60 kg, until Thursday 7 May.")
    assert orders.standing_orders(room.db, sam, "pin_load")[0].until == day(56)  # eight weeks: our choice
    assert does(room, sam, "pin_load", "50", days="none")[0][1] == "Sam: the most load is 50 kg."
    assert does(room, sam, "pin_depth", "parallel", days="7")[0][1].endswith("until Thursday 19 March.")


def test_an_order_ends_on_its_day_and_not_before_and_once(room):
    sam = room.lifter()
    does(room, sam, "pin_load", "60", days="7")
    assert lapse(room, NOW + timedelta(days=6)) == []
    assert fact(room, sam, "load.pin") == "60"
    over = NOW + timedelta(days=7)
    assert lapse(room, over) == [True]
    assert fact(room, sam, "load.pin") == ""
    assert orders.lapsed_words(room.db, sam, over) == " What they set for the most load no longer holds."
    assert orders.standing_orders(room.db, sam, "pin_load") == []
    assert lapse(room, over) == []


def test_when_the_strictest_ends_the_other_coach_s_order_holds(room):
    mia, sam, bea = room.lifter("Mia"), room.lifter(), room.a_coach("Bea")
    coaching.link(room.db, sam, bea, ago(1))
    does(room, sam, "pin_load", "60", days="7")
    does(room, sam, "pin_load", "160", days="28", coach=bea)
    assert fact(room, sam, "load.pin") == "60"
    over = NOW + timedelta(days=7)
    assert lapse(room, over) == [True]
    assert fact(room, sam, "load.pin") == "160"
    assert orders.lapsed_words(room.db, sam, over) == " Now the most load is 160 kg, set by coach Bea."
    assert orders.lapsed_words(room.db, sam, over, "imperial") == " Now the most load is 353 lb, set by coach Bea."
    room.find(mia, "welcome.units", "metric", 8)
    room.find(sam, "welcome.units", "imperial", 8)
    assert orders.lapsed_words(room.db, sam, over) == " Now the most load is 353 lb, set by coach Bea."
    assert orders.lapsed_words(room.db, sam, over, "metric") == " Now the most load is 160 kg, set by coach Bea."
    assert orders.lapsed_words(room.db, mia, over) == ""


def test_what_lapses_is_one_lifter_s_and_of_one_kind(room):
    sam, mia = room.lifter(), room.lifter("Mia")
    for lifter in (sam, mia):
        does(room, lifter, "pin_load", "60", days="7")
        does(room, lifter, "pin_depth", "parallel", days="7")
    assert orders.end_all(room.db, sam, "pin_load", "a day was closed", NOW) == [room.coach]
    assert [fact(room, lifter, name) for lifter in (sam, mia) for name in ("load.pin", "depth.pin")] == ["", "parallel", "60", "parallel"]
    assert [(one.lifter, one.what) for one in orders.ending(room.db, day(7))] == [
        (sam, "pin_depth"), (mia, "pin_load"), (mia, "pin_depth")]
    orders.end_all(room.db, sam, "pin_load", "a day was closed", NOW + timedelta(days=1))
    lapsed = room.db.execute("select lapsed_at from acts where person = ? and what = 'pin_load'", (sam,)).fetchall()
    assert lapsed == [(coaching.text_of(NOW),)]
    orders.end_all(room.db, mia, "pin_load", "a day was closed", NOW)
    assert fact(room, mia, "load.pin") == ""


VALUES = [
    ("drill", "none", "as the tests say"), ("pin_load", "none", "no longer set"), ("overrule", "none", "none"),
    ("pin_load", "60", "60 kg"), ("raise_load", "62.5", "62.5 kg"), ("pin_load", "6.2.5", "6.2.5"), ("pin_load", "a lot", "a lot"),
    ("retest", "2026-05-01", "Friday 1 May"), ("snooze", "2026-05-01", "until Friday 1 May"), ("ask_for", "2026-05-01", "2026-05-01"),
    ("pin_depth", "a_little_above", "a little above parallel"), ("pin_depth", "odd_one", "odd one"),
    ("ask_for", "a_little_above", "a little above"), ("pin_setup", "slow", "three seconds down"), ("pin_setup", "odd_one", "odd one"),
    ("ask_for", "slow", "slow"), ("drill", "hip", "rock back, for the hip"), ("drill", "odd_one", "odd one"), ("private", "hip", "hip"),
    ("hand_over", "7 Bea B.", "Bea B."), ("overrule", "control open", "control open"), ("ask_for", "knee_to_wall", "knee to wall")]


@each_row(("what", "value", "words"), VALUES)
def test_values_of_acts_are_said_in_words(what, value, words):
    assert orders.value_words(what, value, "metric") == words


def test_an_order_given_anew_does_not_end_with_the_one_before_it(room):
    sam = room.lifter()
    does(room, sam, "pin_load", "60", days="7")
    does(room, sam, "pin_load", "65", days="28")
    assert lapse(room, NOW + timedelta(days=7)) == [False]
    assert fact(room, sam, "load.pin") == "65"


@pytest.mark.parametrize(("what", "fact_name", "value"), [
    ("pin_depth", "depth.pin", "parallel"), ("pin_load", "load.pin", "60"), ("pin_setup", "setup.pin", "slow"),
    ("drill", "drill.pin", "hip"), ("retest", "retest.pin", day(20))])
def test_each_kind_stands_until_its_coach_leaves(room, what, fact_name, value):
    sam = room.lifter()
    does(room, sam, what, value, days="none")
    assert [one.value for one in orders.standing_orders(room.db, sam, what)] == [value]
    assert fact(room, sam, fact_name) == value
    coaching.withdraw(room.db, sam, room.coach, NOW)
    assert orders.all_standing(room.db, sam) == {}
    assert fact(room, sam, fact_name) == ""
    assert orders.lapsed_words(room.db, sam, NOW).endswith(" no longer holds.")
    assert room.db.execute("select rule from findings where name = ? order by id desc", (fact_name,)).fetchone() == ("coach Ada has left",)


def test_what_stands_is_the_last_of_each_coach_linked_now_and_of_that_lifter(room):
    sam, mia, bea, cat, dan = room.lifter(), room.lifter("Mia"), room.a_coach("Bea"), room.a_coach("Cat"), room.a_coach("Dan")
    for coach in (bea, cat, dan):
        coaching.link(room.db, sam, coach, ago(20))
    coaching.audit_act(room.db, sam, bea, "pin_load", "40", "", ago(9))
    coaching.audit_act(room.db, sam, bea, "pin_depth", "below", "", ago(9))
    coaching.audit_act(room.db, sam, room.coach, "pin_load", "90", "", ago(8))
    coaching.audit_act(room.db, sam, room.coach, "note", "10", "", ago(8))
    coaching.audit_act(room.db, sam, room.coach, "pin_depth", "parallel", "", ago(8))
    coaching.audit_act(room.db, sam, room.coach, "pin_load", "50", "", ago(7))
    coaching.audit_act(room.db, mia, room.coach, "pin_load", "20", "", ago(6))
    coaching.audit_act(room.db, sam, cat, "pin_load", "70", "", ago(5))
    coaching.audit_act(room.db, sam, dan, "pin_load", "80", "", ago(4))

    def values() -> list[str]:
        return [one.value for one in orders.standing_orders(room.db, sam, "pin_load")]

    assert values() == ["80", "70", "50", "40"]
    room.db.execute("update coach_roles set until = ? where person = ?", (NOW.isoformat(), dan))
    assert values() == ["70", "50", "40"]
    coaching.withdraw(room.db, sam, cat, NOW)
    assert values() == ["50", "40"]
    coaching.link(room.db, sam, cat, NOW)  # under another link than that under which it was given
    assert values() == ["50", "40"]
    coaching.audit_act(room.db, sam, bea, "pin_load", "none", "", ago(3))
    assert values() == ["50"]
    room.db.execute("update acts set lapsed_at = ? where value = '50'", (NOW.isoformat(),))
    assert values() == []
    assert [one.value for one in orders.standing_orders(room.db, mia, "pin_load")] == ["20"]


def order(value: str) -> orders.Order:
    return orders.Order(1, "Ada", value, "", "", "")


@pytest.mark.parametrize(("what", "values", "holds"), [
    ("pin_load", ["80", "60", "100"], "60"), ("raise_load", ["100", "90"], "90"), ("pin_load", ["9", "10"], "9"),
    ("pin_depth", ["parallel", "a_little_above", "below"], "a_little_above"), ("pin_depth", ["parallel", "who knows"], "who knows"),
    ("pin_depth", ["below", "parallel"], "parallel"), ("pin_setup", ["slow", "heels"], "slow"), ("drill", ["hip", "calf"], "hip")])
def test_the_strictest_depth_or_load_holds_and_of_others_the_latest(what, values, holds):
    assert orders.strictest(what, [order(value) for value in values]).value == holds
    assert orders.strictest(what, []) is None


def test_where_two_coaches_differ_the_other_is_told_beside_what_holds(room):
    sam, bea, cat = room.lifter(), room.a_coach("Bea"), room.a_coach("Cat")
    for coach in (bea, cat):
        coaching.link(room.db, sam, coach, ago(1))
    for coach, kg in ((room.coach, "60"), (bea, "80"), (cat, "60")):
        does(room, sam, "pin_load", kg, days="7", coach=coach)
    assert orders.held_of(room.db, sam, "metric") == {"load.pin": orders.Holding(day(7), "coach Bea: 80 kg")}


# a raised limit ---------------------------------------------------------------------------------------------


def trained(room: Room) -> int:
    """A lifter whose tests say 70 kg, who has squatted 90 kg without pain and 100 kg with it."""
    sam = room.lifter()
    room.find(sam, "load.limit", "70", 9)
    room.find(sam, "safety.level", "go", 0)
    for days, load, hurt in ((20, 90.0, "no"), (15, 100.0, "yes")):
        asked = day(-days)
        room.run(sam, "squat_day", {"load": 120.0}, days, asked=asked)  # planned, which is not trained
        room.run(sam, "squat_after", {"done": "yes", "back": "still", "kept": "kept", "hurt": hurt, "load": load}, days, asked=asked)
    return sam


def limit(room: Room, sam: int):
    return limit_now({name: kept.value for name, kept in log.facts_of(room.db, sam).items()})


def test_a_computed_limit_is_raised_with_a_reason_up_to_what_was_trained_without_pain(room):
    sam = trained(room)
    assert limit(room, sam) == ("load.limit", 70.0)
    heard = does(room, sam, "raise_load", "90", "moves well on film")
    assert heard[1] == (sam, "Your coach Ada has set the raised load limit: 90 kg, until Thursday 7 May. Reason: moves well on film.")
    assert limit(room, sam) == ("load.raised", 90.0)


@pytest.mark.parametrize(("kg", "why"), [
    ("95", "they have trained at most 90 kg without pain, and a limit is never raised above that."),
    ("100", "they have trained at most 90 kg without pain, and a limit is never raised above that."),
    ("70", "the tests already allow 70 kg; “Pin load” sets less.")])
def test_it_is_not_raised_above_that_nor_to_what_is_allowed(room, kg, why):
    sam = trained(room)
    assert does(room, sam, "raise_load", kg, "please") == [(room.coach, f"Sam: {why}")]
    assert limit(room, sam) == ("load.limit", 70.0)


@pytest.mark.parametrize("level", ["no_load", "not_today", "clinician", "same_day", "emergency"])
def test_it_is_not_raised_on_a_closed_day(room, level):
    sam = trained(room)
    room.find(sam, "safety.level", level, 0)
    ((who, said),) = does(room, sam, "raise_load", "80", "please")
    assert who == room.coach
    assert "the day is closed" in said
    assert limit(room, sam) == ("load.limit", 70.0)


def test_it_is_not_raised_where_the_tests_set_none_or_nothing_was_trained(room):
    new = room.lifter("Nia")
    room.find(new, "safety.level", "go", 0)
    assert "so there is none to raise" in does(room, new, "raise_load", "80", "please")[0][1]
    room.find(new, "load.limit", "70", 1)
    assert "no load is known that they trained without pain" in does(room, new, "raise_load", "80", "please")[0][1]


@pytest.mark.parametrize(("name", "value", "why"), [
    ("safety.level", "no_load", "a day was closed"), ("safety.level", "not_today", "a day was closed"),
    ("load.limit", "65", "there are new results")])
def test_pain_a_closed_day_and_new_results_end_it_and_its_coach_is_told(room, name, value, why):
    sam = trained(room)
    does(room, sam, "raise_load", "90", "moves well")
    room.db.execute("delete from outbox")
    carry_out(Turn(room.db, sam, NOW, BOOK), [Find(name, value, "a rule")])
    assert fact(room, sam, "load.raised") == ""
    assert orders.standing_orders(room.db, sam, "raise_load") == []
    told = room.db.execute("select text from outbox where person = ? and about = ?", (room.coach, sam)).fetchall()
    assert told == [(f"Sam: the load limit you raised holds as the tests say again, since {why}.",)]


@pytest.mark.parametrize(("name", "value"), [("safety.level", "go"), ("load.limit", "70")])
def test_a_passed_check_and_the_same_results_read_again_do_not_end_it(room, name, value):
    sam = trained(room)
    does(room, sam, "raise_load", "90", "moves well")
    carry_out(Turn(room.db, sam, NOW, BOOK), [Find(name, value, "a rule")])
    assert limit(room, sam) == ("load.raised", 90.0)


@pytest.mark.parametrize("name", ["load.pin", "load.told"])
def test_a_raised_limit_lifts_neither_a_coach_s_own_nor_a_clinician_s(room, name):
    sam = trained(room)
    room.find(sam, name, "60", 1)
    heard = does(room, sam, "raise_load", "90", "moves well")
    assert limit(room, sam) == (name, 60.0)
    assert "at most 60 kg; I use the lower of the two." in heard[0][1]


def test_who_leaves_takes_the_raise_with_them(room):
    sam = trained(room)
    does(room, sam, "raise_load", "90", "moves well")
    coaching.withdraw(room.db, sam, room.coach, NOW)
    assert limit(room, sam) == ("load.limit", 70.0)


# a retest date ----------------------------------------------------------------------------------------------


def due(room: Room, sam: int) -> list[str]:
    return [one.wall[:10] for one in reminders.open_reminders(room.db, sam) if one.kind == "retest"]


def test_a_coach_ends_their_retest_date_and_what_the_tests_say_holds(room):
    sam = room.lifter()
    does(room, sam, "retest", day(30))
    assert due(room, sam) == [day(30)]
    heard = does(room, sam, "end_retest", "end_retest")
    assert heard == [(room.coach, "Sam: your retest date is ended. The tests call for none."),
                     (sam, "Your coach Ada has ended the day they set for your retest. The tests call for none.")]
    assert (due(room, sam), fact(room, sam, "retest.pin")) == ([], "")
    assert does(room, sam, "end_retest", "end_retest") == [(room.coach, "Sam: no retest date of yours stands.")]


def test_an_ended_retest_date_gives_way_to_the_tests_own(room):
    sam = room.lifter()
    room.run(sam, "knee_to_wall", {"left_1": 5.0, "left_2": 5.0, "right_1": 5.0, "right_2": 5.0}, 7)
    room.run(sam, "squat_look", {"seen_by": "film", "plain_rounds": "clearly", "plain_depth": "parallel"}, 7)
    does(room, sam, "retest", day(80))
    does(room, sam, "end_retest", "end_retest")
    (on,) = due(room, sam)
    assert day(7) <= on <= day(49), "two to eight weeks after the tests"


def test_another_coach_s_retest_date_holds_when_one_is_ended(room):
    sam, bea = room.lifter(), room.a_coach("Bea")
    coaching.link(room.db, sam, bea, ago(1))
    does(room, sam, "retest", day(20), coach=bea)
    does(room, sam, "retest", day(30))
    heard = does(room, sam, "end_retest", "end_retest")
    assert heard[0][1].endswith("set by coach Bea.")
    assert due(room, sam) == [day(20)]


def test_no_notice_and_no_page_has_a_raw_value(room):
    sam = room.lifter()
    heard = [does(room, sam, "drill", "hip", days="none"), does(room, sam, "pin_setup", "slow+heels", days="none"),
             does(room, sam, "pin_depth", "a_little_above", days="none")]
    assert [one[1][1].partition(": ")[2] for one in heard] == [
        "rock back, for the hip.", "three seconds down and heels on 2 cm.", "a little above parallel."]
    own = "\n".join(one.say.text for one in my_coaches(Turn(room.db, sam, NOW, BOOK)))
    for words in ("the drill: rock back, for the hip", "the set-up: three seconds down and heels on 2 cm",
                  "the depth to keep: a little above parallel"):
        assert words in own


def test_what_is_set_or_asked_for_says_to_both_what_stands_before_it(room):
    sam = room.lifter()
    asks = ("ask_for", "leg_raise")
    assert not any("Before that" in text or "comes first: nothing" in text for _, text in does(room, sam, *asks))
    room.find(sam, "safety.level", "emergency", 1)
    coach, lifter = does(room, sam, *asks)
    assert coach == (room.coach, "Sam is asked for the leg raise. Before that stands: sent to emergency care.")
    assert lifter[1].endswith(SENT_FIRST)
    assert does(room, sam, "pin_load", "60")[1][1].endswith(SENT_FIRST)
    assert [text for _, text in does(room, sam, "pin_load", "none") if SENT_FIRST in text] == []
    room.find(sam, "safety.level", "go", 0)
    room.run(sam, "pain", {"bad": 3.0}, ending="left")
    assert does(room, sam, *asks)[1][1].endswith(OPEN_FIRST)


@pytest.mark.parametrize("what", [("ask_for", "leg_raise"), ("retest", "7"), ("pin_load", "60")])
def test_while_no_reminder_goes_out_to_a_lifter_nothing_about_squats_or_tests_is_set_or_asked_for(room, what):
    sam = room.lifter()
    room.run(sam, "crisis", {"so": "yes"}, 0.15)
    room.find(sam, "crisis", "open", 0.14, "wrote of harming themselves", "wrote of harming themselves")
    assert does(room, sam, *what) == [(room.coach, f"Sam: {PAUSED_FIRST}")]
    assert orders.all_standing(room.db, sam) == {}
    assert any("call me" in text for _, text in does(room, sam, "note", "call me"))
