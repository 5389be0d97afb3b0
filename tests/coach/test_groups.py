"""Groups of lifters, each told alone, and lifters handed over to another coach by their own yes."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.coach.actions import act
from companion.coach.links import link
from companion.coach.views import show
from companion.conversation.effects import Act, Link
from companion.record import coaching, log
from companion.record.groups import EVERYBODY, groups_of
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago, lines_of


def does(room: Room, of: object, what: str, value: str, reason: str = "", coach: int = 0, at=NOW):
    return [(one.to, one.say.text) for one in act(Turn(room.db, coach or room.coach, at, BOOK), Act(what, str(of), value, reason, "28"))]


def tuesday(room: Room) -> tuple[int, int, int, str]:
    """Three lifters, the first two in a group; gives them and the group's number."""
    sam, mia, lou = (room.lifter(name) for name in ("Sam", "Mia", "Lou"))
    for one in (sam, mia):
        does(room, one, "group", "Tuesday 6 pm")
    return sam, mia, lou, groups_of(room.db, room.coach)[0].number


def test_a_lifter_is_put_into_a_group_and_taken_out_by_the_same_act(room):
    sam, mia, lou, _ = tuesday(room)
    assert [(one.name, one.lifters) for one in groups_of(room.db, room.coach)] == [
        ("Tuesday 6 pm", (sam, mia)), ("everybody", (sam, mia, lou))]
    assert does(room, sam, "group", "Tuesday 6 pm") == [(room.coach, "Sam is no longer in Tuesday 6 pm.")]
    assert groups_of(room.db, room.coach)[0].lifters == (mia,)
    (say,) = show(Turn(room.db, room.coach, NOW, BOOK), "groups", "")
    assert "· Tuesday 6 pm: Mia" in say.text


@pytest.mark.parametrize(("what", "value", "said"), [
    ("note", "no squats on Tuesday", "From your coach Ada: no squats on Tuesday"), ("drill", "calf", "Your coach Ada has set the drill"),
    ("ask_for", "leg_raise", "Your coach Ada asks you to do the ")])
def test_what_is_done_for_a_group_is_an_act_of_its_own_for_each_and_for_nobody_else(room, what, value, said):
    sam, mia, lou, number = tuesday(room)
    (to, whole), *letters = does(room, number, what, value)
    assert (to, whole) == (room.coach, "Tuesday 6 pm: done for each of 2.")
    assert [to for to, _ in letters] == [sam, mia]
    assert all(text.startswith(said) for _, text in letters)
    kept = room.db.execute("select person from acts where what = ? order by id", (what,)).fetchall()
    assert kept == [(sam,), (mia,)]
    assert "drill.pin" not in log.facts_of(room.db, lou)


def test_what_is_done_for_several_hides_nothing_new_of_any_of_them(room):
    sam, _, _, number = tuesday(room)
    room.hurt(sam, 0.5)
    room.run(sam, "note_to_coach", {"text": "may I go on?"}, 0.4)
    seen = lines_of(room.db, room.coach, NOW)
    does(room, number, "note", "no squats on Tuesday")
    does(room, number, "drill", "calf")
    assert lines_of(room.db, room.coach, NOW) == seen
    does(room, sam, "note", "see you then")
    assert lines_of(room.db, room.coach, NOW) != seen


def test_what_is_for_one_lifter_is_refused_for_several_and_another_coachs_group_is_nobodys(room):
    *_, number = tuesday(room)
    bea = room.a_coach("Bea")
    assert does(room, number, "pin_load", "60") == [(room.coach, "That can be done for one lifter at a time only.")]
    assert does(room, number, "note", "hello", coach=bea) == [(bea, "That is not one of your lifters.")]
    assert does(room, EVERYBODY, "note", "hello", coach=bea) == [(bea, "That is not one of your lifters.")]
    assert room.db.execute("select count(*) from acts where what <> 'group'").fetchone() == (0,)


def test_who_ends_the_link_is_in_no_group_any_more(room):
    sam, mia, _, number = tuesday(room)
    coaching.withdraw(room.db, sam, room.coach, NOW)
    assert [to for to, _ in does(room, number, "note", "hello")] == [room.coach, mia]


# handing over ----------------------------------------------------------------------------------------------------


def agrees(room: Room, lifter: int) -> list[tuple[int, str]]:
    return [(one.to, one.say.text) for one in link(Turn(room.db, lifter, NOW, BOOK), Link("agree"))]


def test_a_caseload_is_handed_over_lifter_by_lifter_and_only_by_their_own_yes(room):
    sam, mia, _, number = tuesday(room)
    bea = room.a_coach("Bea")
    does(room, sam, "pin_load", "60", "tired", at=ago(1))
    code = coaching.invite(room.db, "lifter", bea, "Ada's", NOW)
    (_, whole), *asked = does(room, number, "hand_over", code, "moving away")
    assert whole == "Tuesday 6 pm: done for each of 2."
    assert asked[0] == (sam, "Your coach Ada would like to hand you over to coach Bea. Reason: moving away. If you agree, Bea sees your "
                             "answers from then on and your coach Ada no longer does. Until then nothing changes.")
    assert not coaching.sees(room.db, bea, sam)
    heard = agrees(room, sam)
    assert coaching.sees(room.db, bea, sam)
    assert not coaching.sees(room.db, room.coach, sam)
    assert (sam, "Ada has handed you over and can't see your answers from now on. What they set for the most load no longer "
                 "holds.") in heard
    assert (room.coach, "Sam has agreed, and is with coach Bea now. You can't see their answers any more.") in heard
    assert coaching.sees(room.db, room.coach, mia)
    assert not coaching.sees(room.db, bea, mia)


@pytest.mark.parametrize("code", ["wrong", "own", "operator", "late", "used"])
def test_a_code_that_is_not_another_coachs_hands_nobody_over(room, code):
    sam, bea, cy = room.lifter(), room.a_coach("Bea"), room.a_coach("Cy")
    at = NOW
    given = {"wrong": "abcd efgh jkmn", "own": coaching.invite(room.db, "lifter", room.coach, "x", NOW),
             "operator": coaching.invite(room.db, "coach", None, "x", NOW)}.get(code) or coaching.invite(room.db, "lifter", bea, "x", NOW)
    if code == "late":
        at = NOW + coaching.CODE_LIFETIME + timedelta(minutes=1)
    if code == "used":
        coaching.use_up(room.db, coaching.open_invitation(room.db, given, NOW).id, cy, NOW)
    ((to, said),) = does(room, sam, "hand_over", given, at=at)
    assert to == room.coach
    assert said.endswith("Nothing has changed.")
    assert log.facts_of(room.db, sam).get("link.status") is None


def test_a_coach_who_is_agreed_to_without_it_takes_nobody_s_place(room):
    sam, bea = room.lifter(), room.a_coach("Bea")
    coaching.link(room.db, sam, bea, ago(1))
    assert coaching.handing_over(room.db, sam, bea) == []
    code = coaching.invite(room.db, "lifter", bea, "Sam", NOW)
    assert does(room, sam, "hand_over", code)[0][1] == "Sam: that coach sees them already. Nothing has changed."
