"""Orders of coaches in the chat: loads, dates, and two coaches who differ."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.port import Address
from companion.record import coaching, log
from flows.catalogue import BOOK
from tests.coach.gym import KIM, MIA, ODA, SAM, Gym


async def test_a_load_pinned_above_what_the_tests_say_is_said_to_both(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    gym.db.execute("insert into facts values (?, 'load.limit', '64', 1, '2026-03-02T18:05:00.000Z')", (sam,))
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.say("100", "skip", "Until I end it", who=KIM)
    lower = "The tests say at most 64 kg; I use the lower of the two."
    assert gym.heard(SAM)[-1] == f"Your coach Kim has set the most load: 100 kg. {lower}"
    assert f"sam: the most load is 100 kg. {lower}" in gym.heard(KIM)
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.say("50", "skip", "Until I end it", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the most load: 50 kg."


async def test_a_pin_is_told_in_the_lifters_own_units_and_words(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    gym.db.execute("update facts set value = 'imperial' where person = ? and name = 'welcome.units'", (sam,))
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.say("60", "skip", "Until I end it", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the most load: 132 lb."
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_depth")
    await gym.say("A little above", "skip", "Until I end it", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the depth to keep: a little above parallel."


async def test_a_retest_date_of_the_coach_is_a_reminder_of_the_lifter(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-retest")
    await gym.say("in two weeks", who=KIM)
    assert gym.db.execute("select wall from reminders where person = ? and kind = 'retest'", (sam,)).fetchone() == ("2026-03-16 10:00",)


async def two_coaches(gym: Gym) -> int:
    await gym.linked()
    await gym.coach(ODA)
    await gym.say(f"code {await gym.code_for('Sam', ODA)}", "Yes, I agree")
    return gym.id_of(SAM)


async def pinned(gym: Gym, who: Address, load: str) -> None:
    await gym.tap(who, f"go.coach_act.{gym.id_of(SAM)}-pin_load")
    await gym.say(load, "seen in person", "Until I end it", who=who)


async def test_an_act_names_the_lifter_in_its_question_and_its_confirmation(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-pin_load")
    assert gym.heard(KIM)[-1].startswith("sam: up to which load?")
    await gym.say("60 kg", "seen in person", "Until I end it", who=KIM)
    assert gym.heard(KIM)[-1].startswith("sam: the most load is 60 kg.")


async def test_an_act_keeps_its_lifter_over_a_detour_to_another(gym):
    await gym.linked()
    await gym.lifter(MIA)
    sam, mia = gym.id_of(SAM), gym.id_of(MIA)
    coaching.link(gym.db, mia, gym.id_of(KIM), gym.clock.now())
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.tap(KIM, "go.invite_lifter")
    await gym.say("Lou", who=KIM)
    await gym.tap(KIM, f"go.coach_act.{mia}-pin_load")
    await gym.say("40 kg", "a light day", "Until I end it", who=KIM)
    await gym.say("go on", who=KIM)
    assert "sam: up to which load?" in gym.heard(KIM)[-1]
    await gym.say("60 kg", "seen in person", "Until I end it", who=KIM)
    assert [log.facts_of(gym.db, one)["load.pin"].value for one in (sam, mia)] == ["60", "40"]


@pytest.mark.parametrize(("first", "second"), [("60 kg", "80 kg"), ("80 kg", "60 kg")])
async def test_of_two_coaches_loads_the_lower_holds_and_both_are_told(gym, first, second):
    sam = await two_coaches(gym)
    await pinned(gym, KIM, first)
    await pinned(gym, ODA, second)
    assert log.facts_of(gym.db, sam)["load.pin"].value == "60"
    for coach, other in ((KIM, "Oda"), (ODA, "Kim")):
        said = gym.heard(coach)[-1]
        assert f"coach {other} has set the most load" in said
        assert "60 kg holds until you settle it." in said


@pytest.mark.parametrize(("who", "kg"), [(KIM, "80"), (ODA, "60")])
async def test_two_coaches_orders_are_settled_by_one_going_by_the_other_s(gym, who, kg):
    sam = await two_coaches(gym)
    await pinned(gym, KIM, "60 kg")
    await pinned(gym, ODA, "80 kg")
    other = ODA if who == KIM else KIM
    await gym.tap(KIM, f"go.lifter.{sam}")
    assert "not settled, coach Oda: 80 kg" in gym.heard(KIM)[-1]
    await gym.tap(who, f"go.coach_act.{sam}-settle-pin_load-{gym.id_of(other)}")
    assert log.facts_of(gym.db, sam)["load.pin"].value == kg
    assert "now goes by your order for the most load" in gym.heard(other)[-1]
    assert f"the most load is {kg} kg" in gym.heard(who)[-1]
    assert f"{kg} kg" in gym.heard(SAM)[-1]
    assert "agreed with coach" in gym.heard(SAM)[-1]
    await gym.tap(KIM, f"go.lifter.{sam}")
    assert "not settled" not in gym.heard(KIM)[-1]
    await gym.tap(who, f"go.coach_act.{sam}-settle-pin_depth-{gym.id_of(other)}")
    assert "no longer stands" in gym.heard(who)[-1]


async def test_a_coach_who_is_left_takes_their_orders_and_the_others_stay(gym):
    sam = await two_coaches(gym)
    await pinned(gym, KIM, "80 kg")
    await pinned(gym, ODA, "60 kg")
    await gym.tap(SAM, f"go.leave_coach.{gym.id_of(ODA)}")
    assert log.facts_of(gym.db, sam)["load.pin"].value == "80"
    assert any("the most load is 80 kg, set by coach Kim" in said for said in gym.heard(SAM)[-3:])
    await gym.tap(SAM, f"go.leave_coach.{gym.id_of(KIM)}")
    assert log.facts_of(gym.db, sam)["load.pin"].value == ""
    assert log.findings_of(gym.db, sam)["load.pin"].rule == "coach Kim has left"
    assert any("no longer holds" in said for said in gym.heard(SAM)[-3:])


async def test_orders_end_with_the_role_of_their_coach(gym):
    await gym.linked()
    await pinned(gym, KIM, "60 kg")
    coaching.end_coach(gym.db, gym.id_of(KIM), gym.clock.now())
    assert log.facts_of(gym.db, gym.id_of(SAM))["load.pin"].value == ""


async def test_when_an_order_ends_by_itself_lifter_and_coach_hear_what_holds_now(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-pin_load")
    await gym.say("60", "seen in person", "A week", who=KIM)
    gym.clock.at += timedelta(days=6)
    await gym.companion.sweep()
    assert log.facts_of(gym.db, gym.id_of(SAM))["load.pin"].value == "60"
    gym.clock.at = gym.clock.at.replace(hour=12) + timedelta(days=1)
    await gym.companion.sweep()
    assert log.facts_of(gym.db, gym.id_of(SAM))["load.pin"].value == ""
    over = "What they set for the most load no longer holds."
    assert [text for text in gym.heard(SAM) if over in text] == [f"The time is over for which your coach had set something. {over}"]
    assert [text for text in gym.heard(KIM) if over in text] == [f"sam: the time is over for which you had set something. {over}"]
    await gym.companion.sweep()
    assert sum(over in text for text in gym.heard(SAM)) == 1


def test_an_order_holds_for_eight_weeks_unless_said_otherwise():
    """Eight weeks: our choice. The act does what the button of that name says."""
    (until,) = [step for step in BOOK["coach_act"].flow.steps if getattr(step, "key", "") == "until"]
    assert {one.label: one.value for one in until.kind.options}["Eight weeks"] == str(7 * 8)
