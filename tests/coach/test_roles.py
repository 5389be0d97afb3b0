"""Roles: a coach, a clinician who may lift a referral, and a reader who changes nothing."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.app.dispatch import carry_out
from companion.coach.actions import act
from companion.coach.letters import reply_buttons
from companion.coach.views import show
from companion.conversation.effects import Act, Find
from companion.record import coaching, log, reminders
from companion.record.context import known_of, standing_now
from companion.record.turn import Turn
from companion.screening.coach_acts import COACH_ACTS
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago


def does(room: Room, who: int, sam: int, what: str, value: str, reason: str = "seen, sound", at=NOW):
    return [(one.to, one.say.text) for one in act(Turn(room.db, who, at, BOOK), Act(what, str(sam), value, reason, "none"))]


def referred(room: Room, level: str = "clinician") -> tuple[int, int]:
    """A lifter sent to a clinician yesterday, linked to one; gives both."""
    sam, ines = room.lifter(), room.a_coach("Ines", "clinician")
    coaching.link(room.db, sam, ines, ago(5))
    carry_out(Turn(room.db, sam, ago(1), BOOK), [Find("safety.level", level, "safety check")])
    return sam, ines


@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
def test_a_clinician_lifts_a_referral_with_reason_and_day_and_a_new_check_must_still_pass(room, level):
    sam, ines = referred(room, level)
    heard = does(room, ines, sam, "lift_referral", "1")
    assert heard == [
        (ines, "Sam: the referral is lifted, seen on Wednesday 11 March. From tomorrow a new safety check must still pass."),
        (sam, "Your clinician Ines saw you on Wednesday 11 March and lifts the referral. Reason: seen, sound. From tomorrow a new safety "
              "check comes first. Only that opens squats and tests again."),
        (room.coach, "Sam: clinician Ines has lifted the referral. Reason: seen, sound. A new safety check must still pass.")]
    for later in (0, 1, 30):
        stands = standing_now(room.db, sam, NOW + timedelta(days=later))
        assert not stands.go
        assert stands.needs_check == bool(later)
    assert known_of(room.db, sam, NOW + timedelta(days=1)).facts.get("safety_check.today") is None
    assert not [one for one in reminders.open_reminders(room.db, sam) if one.kind == "referral"]
    carry_out(Turn(room.db, sam, NOW + timedelta(days=1), BOOK), [Find("safety.level", "go", "safety check")])
    assert standing_now(room.db, sam, NOW + timedelta(days=1)).go


def test_a_coach_lifts_none_nor_does_a_clinician_who_has_coached_the_lifter(room):
    sam, ines = referred(room)
    assert "only a clinician can do that, and you are a coach" in does(room, room.coach, sam, "lift_referral", "0")[0][1]
    coaching.audit_act(room.db, sam, ines, "pin_load", "60", "", ago(40))
    assert "you have coached them" in does(room, ines, sam, "lift_referral", "0")[0][1]
    assert standing_now(room.db, sam, NOW).level.value == "clinician"


def test_where_no_referral_stands_there_is_none_to_lift(room):
    sam, ines = referred(room)
    carry_out(Turn(room.db, sam, NOW, BOOK), [Find("safety.level", "go", "safety check")])
    assert does(room, ines, sam, "lift_referral", "0")[0][1] == "Sam: no referral stands, so there is none to lift."
    assert standing_now(room.db, sam, NOW).go


@pytest.mark.parametrize("role", ["clinician", "read_only"])
def test_who_is_no_coach_sets_nothing_and_is_offered_nothing_to_set(room, role):
    sam, other = room.lifter(), room.a_coach("Ines", role)
    coaching.link(room.db, sam, other, ago(5))
    before = [*room.db.execute("select * from acts"), *log.facts_of(room.db, sam)]
    for one in COACH_ACTS.values():
        if role not in one.roles:
            ((who, said),) = does(room, other, sam, one.name, "60")
            assert who == other
            assert said.endswith("Nothing has changed.")
    assert [*room.db.execute("select * from acts"), *log.facts_of(room.db, sam)] == before
    (more,) = show(Turn(room.db, other, NOW, BOOK), "lifter", f"{sam}-more")
    offered = {tap.data.partition("-")[2] for row in more.buttons for tap in row if tap.data.startswith("go.coach_act.")}
    assert offered == {"private", "put_aside", "reviewed"} | ({"lift_referral"} if role == "clinician" else set())


@pytest.mark.parametrize(("role", "counts"), [("coach", "yes"), ("clinician", "yes"), ("read_only", "no")])
def test_a_reader_stands_in_for_no_coach_where_somebody_under_18_needs_one(room, role, counts):
    sam, other = room.lifter(), room.a_coach("Ines", role)
    coaching.withdraw(room.db, sam, room.coach, ago(3))
    coaching.link(room.db, sam, other, ago(2))
    assert known_of(room.db, sam, NOW).facts["coach"] == counts


def test_another_role_ends_the_links_that_were_agreed_to_in_the_first(room):
    sam = room.lifter()
    assert coaching.sees(room.db, room.coach, sam)
    coaching.make_coach(room.db, room.coach, "Ada", NOW, "clinician")
    assert coaching.role_of(room.db, room.coach) == "clinician"
    assert not coaching.sees(room.db, room.coach, sam)


@pytest.mark.parametrize(("role", "offered"), [("clinician", {"Write", "Put aside"}), ("read_only", {"Put aside"})])
def test_what_is_suggested_is_what_somebody_may_do(room, role, offered):
    sam, other = room.lifter(), room.a_coach("Ines", role)
    coaching.link(room.db, sam, other, ago(5))
    room.hurt(sam, 1)
    (say,) = show(Turn(room.db, other, NOW, BOOK), "since", "")
    assert {tap.label for tap in say.buttons[0]} == {"1 Sam", *offered}
    for of in (f"{sam}", f"{sam}-thread"):
        (page,) = show(Turn(room.db, other, NOW, BOOK), "lifter", of)
        assert ("Write" in {tap.label for row in page.buttons for tap in row}) == ("Write" in offered)
    assert len(reply_buttons(room.db, other, sam)) == (2 if "Write" in offered else 1)
