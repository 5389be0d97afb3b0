"""One lifter's page, from what the record holds of them."""

from __future__ import annotations

import pytest

from companion.coach.links import my_coaches
from companion.coach.report_sections import report_content
from companion.coach.summary import PAUSED_WORDS, LifterPage, lifter_page
from companion.coach.triage import depth_of
from companion.coach.views import show
from companion.conversation.effects import Alert, Record, Remind
from companion.record import coaching, people
from companion.record.caseload import caseload_rows
from companion.record.turn import Turn
from companion.screening.depth import BAND_WORDS
from companion.screening.limits import Limit, LimitPart, as_text
from companion.screening.standing import PARTLY_CLOSED
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago


def page(room: Room, person: int) -> LifterPage:
    return lifter_page(room.db, room.coach, person, NOW)


def test_a_lifter_of_whom_nothing_is_known_has_an_empty_page(room):
    sam = people.add_person(room.db, "telegram", "7", "Sam", ago(1))
    empty = page(room, sam)
    assert (empty.safety.level, empty.overall, empty.days, empty.media, empty.alarms, empty.answered_at) == (
        None, "", (), (), (), None)
    assert [cause.ruling for cause in empty.causes] == ["", "", ""]


def test_each_cause_stands_with_its_ruling_and_what_it_rests_on(room):
    sam = room.lifter()
    room.find(sam, "strength", "ruled_out", 3, "Arms forward: clean with an empty bar.")
    room.find(sam, "length", "too_close", 9, "older")
    room.find(sam, "length", "likely", 3, "With your heels raised, your back rounds later.")
    causes = {cause.name: (cause.ruling, cause.because) for cause in page(room, sam).causes}
    assert causes == {"length": ("likely", "With your heels raised, your back rounds later."),
                      "strength": ("ruled_out", "Arms forward: clean with an empty bar."), "control": ("", "")}


def test_an_overruled_finding_stands_beside_the_computed_one(room):
    sam = room.lifter()
    room.find(sam, "length", "likely", 3, "computed")
    room.find(sam, "overruled.length", "ruled_out", 1, "seen in person", "overruled by coach Ada")
    cause = page(room, sam).causes[0]
    assert (cause.ruling, cause.because) == ("likely", "computed")
    assert cause.overruled is not None
    assert (cause.overruled.value, cause.overruled.because, cause.overruled.rule) == (
        "ruled_out", "seen in person", "overruled by coach Ada")


def test_the_last_five_squat_days_the_newest_first(room):
    sam = room.lifter()
    for days in range(8, 1, -1):
        room.run(sam, "squat_after", {"done": "yes", "back": "still", "kept": "kept", "hurt": "no", "load": 80.0 - days, "note": "n"}, days)
    found = page(room, sam).days
    assert [day.day for day in found] == [ago(days).date() for days in range(2, 7)]
    assert (found[0].load, found[0].back, found[0].kept, found[0].note) == (78.0, "still", "kept", "n")


def test_what_holds_says_whose_it_is_why_since_when_and_until_when(room):
    sam = room.lifter()
    room.find(sam, "depth.step", "parallel", 3, "One clean day.")
    room.find(sam, "load.limit", "64", 3)
    room.find(sam, "depth.pin", "a_little_above", 1, "saw it", "set by coach Ada")
    coaching.audit_act(room.db, sam, room.coach, "pin_load", "60", "", ago(1), "2026-05-01")
    room.find(sam, "load.pin", "60", 1, rule="set by coach Ada")

    def lines() -> list[str]:
        """What holds, line by line."""
        return [one.line for one in page(room, sam).held]

    assert lines() == ["a little above parallel (set by coach Ada: saw it; since 11 Mar)",
                       "at most 60 kg (set by coach Ada; since 11 Mar, until 1 May); from the tests: 64 kg"]
    room.find(sam, "depth.pin", "", 0)
    assert lines()[0] == "parallel (after the last squat day: One clean day; since 9 Mar)"


def test_chat_caseload_report_and_the_lifter_s_own_page_have_one_depth_and_one_load(room):
    for step, pin, keep in (("parallel", "a_little_above", ""), ("", "", "below"), ("parallel", "", "below"), ("", "well_above", "below")):
        sam = room.lifter("Sam")
        room.find(sam, "outcome.at", ago(9).isoformat(), 9)
        for name, value, days in (("depth.keep", keep, 9), ("depth.step", step, 3), ("depth.pin", pin, 1), ("load.limit", "64", 9)):
            if value:
                room.find(sam, name, value, days)
        depth, load = page(room, sam).held
        row = next(one for one in caseload_rows(room.db, room.coach) if one.person == sam)
        assert BAND_WORDS[depth_of(row)] == depth.words
        glance = dict(report_content(room.db, sam, NOW, BOOK).glance)
        assert (glance["Depth to keep to"], glance["Load to keep to"]) == (depth.line, load.line)
        own = [one.say.text for one in my_coaches(Turn(room.db, sam, NOW, BOOK))]
        assert any(f"Depth: {depth.line}\nLoad: {load.line}" in text for text in own)


@pytest.mark.parametrize(("level", "days", "now"), [
    ("no_load", 0, "no load today"), ("no_load", 1, "a new check comes first"), ("not_today", 0, "no squats or tests today"),
    ("not_today", 2, "a new check comes first"), ("clinician", 30, "a clinician comes first"),
    ("emergency", 30, "sent to emergency care"), ("go", 3, "open")])
def test_the_safety_standing_is_the_one_of_now(room, level, days, now):
    sam = room.lifter()
    room.find(sam, "safety.level", level, days)
    assert page(room, sam).safety.words.coach == now


def test_photos_and_videos_that_stand_are_listed_the_newest_first(room):
    sam = room.lifter()
    for ref, days in (("file-1", 5), ("file-2", 2)):
        run = room.run(sam, "squat_after", {}, days)
        room.keep(sam, days, Record(run, "squat_after", 1, "video", "", "video", ref))
    gone = room.run(sam, "squat_look", {}, 1)
    room.keep(sam, 1, Record(gone, "squat_look", 1, "video", "", "video", "file-3"), Record(gone, "squat_look", 1, "video", "", "", None,
                                                                                        status="withdrawn"))
    assert page(room, sam).media == (("video", "squat_after", ago(2)), ("video", "squat_after", ago(5)))


def test_alerts_come_with_the_answers_they_rest_on(room):
    sam = room.lifter()
    room.hurt(sam, 3)
    room.run(sam, "morning", {"how": "better"}, 2, alert=Alert("no_load", "not back to usual"))
    later, first = page(room, sam).alarms
    assert (later.alert.flow, later.answers) == ("morning", (("how", "better"),))
    assert (first.alert.because, first.answers) == ("something hurt (back)", (("where", "back"), ("bad", "5.0")))


def test_acts_the_plan_and_the_next_reminder(room):
    sam = room.lifter()
    coaching.audit_act(room.db, sam, room.coach, "pin_load", "60", "knee", ago(1))
    room.find(sam, "squat.plan", '{"weekly":{"TU":"18:00"}}')
    room.keep(sam, 1, Remind("retest", "retest", "2026-04-01"))
    one = page(room, sam)
    assert [(act.coach, act.what, act.value, act.reason) for act in one.acts] == [("Ada", "pin_load", "60", "knee")]
    assert one.plan_words == "Every Tuesday at 18:00"
    assert one.coming[0].day.isoformat() == "2026-03-17"
    assert [(waits.kind, waits.wall) for waits in one.waiting] == [("retest", "2026-04-01 10:00")]


@pytest.mark.parametrize("why", ["crisis", "squat.no_prompts"])
def test_that_reminders_are_paused_is_told_alike_for_whatever_reason(room, why):
    sam = room.lifter()
    if why == "crisis":
        room.keep(sam, 1, Remind("retest", "retest", "2026-04-01"))
    room.find(sam, why, "open" if why == "crisis" else "yes")
    assert (page(room, sam).waiting, page(room, sam).paused) == ((), True)
    (say,) = show(Turn(room.db, room.coach, NOW, BOOK), "lifter", f"{sam}")
    assert PAUSED_WORDS in say.text
    assert "Next reminder" not in say.text


def test_a_squat_day_whose_hour_is_past_is_not_the_next_for_the_coach_either(room):
    """NOW is a Thursday, 18:00."""
    sam = room.lifter()
    room.find(sam, "squat.plan", '{"weekly":{"TH":"18:00"}}')
    assert page(room, sam).coming[0].day.isoformat() == "2026-03-19"
    room.find(sam, "squat.plan", '{"weekly":{"TH":"18:01"}}', 0.5)
    assert page(room, sam).coming[0].day.isoformat() == "2026-03-12"


def test_a_page_takes_as_many_queries_for_much_as_for_little(room):
    def asked(person: int) -> int:
        seen: list[str] = []
        room.db.set_trace_callback(seen.append)
        page(room, person)
        room.db.set_trace_callback(None)
        return len(seen)

    sam, kim = room.lifter(), room.lifter("Kim")
    for days in range(20):
        room.hurt(kim, days)
    assert asked(sam) == asked(kim)


def test_what_a_clinician_told_them_stands_on_the_page_in_their_units(room):
    sam = room.lifter()
    assert page(room, sam).told == ""
    room.find(sam, "safety.level", "go", 0)
    room.find(sam, "safety.limits", as_text((Limit(frozenset((LimitPart.SQUATS,)), 60.0, None, "a doctor", "no squats"),)), 0)
    assert page(room, sam).told == "no squats, nothing above 60 kg, until cleared, said by a doctor"
    assert page(room, sam).safety.words is PARTLY_CLOSED
