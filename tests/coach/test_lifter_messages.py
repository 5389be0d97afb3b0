"""One lifter as messages: the summary, numbers, days, alerts, charts and “why?”."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any

from companion.app.run import ScriptClock
from companion.coach.summary import (
    lifter_page,
)
from companion.conversation.prompt import read_start
from companion.pictures.series import all_charts
from companion.pictures.store import OWN_PICTURE_OF, PictureStore
from companion.port import Address
from companion.record import coaching
from companion.record.writer import Writer
from companion.screening.errors import errors_from
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room
from tests.coach.pages import ask, fits, full, taps


def test_the_summary_says_what_is_likely_what_stands_and_what_comes_next(room):
    sam = full(room)
    (say,) = ask(room, "lifter", sam)
    assert say.text.splitlines() == [
        "Sam", "Safety: a new check comes first, since Tuesday", "Results, Saturday: a likely cause", "Length: likely: Heels up: later.",
        "Strength: ruled out, by: Arms forward: clean.", "Control: too close to call",
        "· overruled by coach Ada: ruled out, seen in person",
        "Depth: a little above parallel (set by coach Ada: saw it; since 11 Mar)", "Load: at most 64 kg (from the tests)",
        "Over the load limit on the last squat day, by 16 kg",
        "Against what was set, last squat day: load within 0 of 1, depth kept 1 of 1, back still 1 of 1, filmed 0 of 1",
        "Last squats: Mon 9 Mar, 80 kg, depth kept, back still, “easy”", "Plan: Every Tuesday at 18:00. Next: Tuesday 17 March, 18:00.",
        "Next reminder: test again, Wed 1 Apr 2026, 10:00", "Last alert Tuesday: something hurt (back)",
        "14 answers, last Tuesday; not reviewed yet"]
    assert [tap.data for tap in taps(say)] == [
        *(f"go.coach_act.{sam}-guess-{value}" for value in ("better", "within_error", "worse")),
        f"go.lifter.{sam}-numbers", f"go.lifter.{sam}-days", f"go.lifter_log.{sam}-0", f"go.lifter.{sam}-charts", f"go.lifter_report.{sam}",
        f"go.lifter.{sam}-thread", f"go.coach_note.{sam}", f"go.coach_act.{sam}-reviewed", f"go.lifter.{sam}-why", f"go.lifter.{sam}-more",
        "go.caseload"]


def test_numbers_stand_with_their_side_line_and_error(room):
    rests, told = ask(room, "lifter", f"{full(room)}-numbers")
    assert "Strength: ruled out, by: Arms forward: clean." in rests.text
    assert "Knee to wall, left: 7.2 cm" in told.text
    assert "· enough for most squats, from: 7.2 cm, clearly under the 10 cm line (common practice)" in told.text
    assert told.text.count("Error: ") == 2


def numbers(room: Room, sam: int) -> str:
    return ask(room, "lifter", f"{sam}-numbers")[1].text


def test_the_latest_reading_of_each_side_is_held_against_its_lines(room):
    sam = room.lifter()
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 6.0, "left_2": 6.4, "right_1": 14.0, "right_2": 14.2}, 40)
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 7.0, "left_2": 7.4}, 2)
    left, right = numbers(room, sam).split("\n\n")[1:]
    assert left.startswith("Knee to wall, left: 7.2 cm, mean of 7 cm, 7.4 cm\nby tape, on 10 Mar 2026\n")
    assert [", clearly under the " in line for line in left.split("\n") if line.startswith("· ")] == [True, True]
    assert "Change: Since 31 Jan 2026: The difference is 1 cm" in left
    assert "· enough for most squats, from: 14.1 cm, clearly over the 10 cm line" in right


def test_the_error_shown_is_the_one_used(room):
    sam = room.lifter()
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 7.0, "left_2": 11.0}, 2)
    error = errors_from(()).of("knee_to_wall", "tape")
    told = numbers(room, sam).split("Error: ")[1]
    assert "from 1 of their own repeats too" in told
    assert f"{error.sem:.1f} cm" not in told, "their own repeats lie further apart than the published error"


def test_a_reading_by_eye_is_a_band(room):
    sam = room.lifter()
    room.run(sam, "leg_raise", {"method": "eye", "left_eye": "60_70"}, 2)
    assert "Leg raise, left: 65° by eye, the middle of a band" in numbers(room, sam)


def test_numbers_are_in_the_lifter_s_own_units(room):
    sam = room.lifter()
    room.run(sam, "welcome", {"units": "imperial"}, 50)
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 12.7}, 2)
    assert "Knee to wall, left: 5 in\n" in numbers(room, sam)


def test_a_test_that_pain_ended_gives_no_number_and_one_that_it_ended_since_counts_no_more(room):
    sam, mia = room.lifter(), room.lifter("Mia")
    for one, days in ((sam, 2), (mia, 2)):
        if one == mia:
            room.run(one, "knee_to_wall", {"method": "tape", "left_1": 7.0}, 9)
        room.run(one, "knee_to_wall", {"method": "tape", "left_1": 7.0}, days, "pain")
    assert numbers(room, sam).endswith("Nothing has been measured yet.")
    assert "Stopped for pain since, so it counts as not tested." in numbers(room, mia)


def test_squat_days_alerts_with_their_answers_and_acts(room):
    sam = full(room)
    (days,) = ask(room, "lifter", f"{sam}-days")
    assert "· Mon 9 Mar, 80 kg, depth kept, back still, “easy”" in days.text
    (more,) = ask(room, "lifter", f"{sam}-more")
    assert "· Tuesday, no squats or tests today: something hurt (back)\nAnswered: where: back; bad: 5.0" in more.text
    assert "· yesterday, Ada: pin depth, a little above parallel (saw it)" in more.text
    assert [tap.data for tap in taps(more)][:10] == [f"go.coach_act.{sam}-{what}" for what in (
        "pin_depth", "pin_load", "raise_load", "pin_setup", "drill", "ask_for", "retest", "end_retest", "overrule", "private")]


def test_each_button_for_an_act_or_a_view_leads_to_a_flow_there_is(room):
    sam = full(room)
    for view, of in (("caseload", ""), ("lifter", sam), ("lifter", f"{sam}-more"), ("lifter_log", sam)):
        for say in ask(room, view, of):
            for tap in taps(say):
                flow = (read_start(tap.data) or ("", ""))[0]
                assert flow in BOOK.flows, tap


def test_charts_are_offered_where_there_is_something_to_draw(room):
    sam = room.lifter()
    assert "nothing to draw" in ask(room, "lifter", f"{sam}-charts")[0].text
    room.hurt(sam, 2)
    (say,) = ask(room, "lifter", f"{sam}-charts")
    assert taps(say)[0].data == f"go.lifter.{sam}-chart_pain"
    (chart,) = ask(room, "lifter", f"{sam}-chart_pain")
    assert chart.picture == f"chart_pain of {sam}"
    assert OWN_PICTURE_OF.fullmatch(chart.picture)


async def test_a_filmed_squat_s_chart_is_offered_once_there_is_a_film_and_drawn_for_the_lifter_s_coach_only(room, tmp_path):
    sam = room.lifter()
    room.find(sam, "film.plain_curve", "72 66 78|10,0 40,1 72,1.5 104,14")
    assert taps(ask(room, "lifter", f"{sam}-charts")[0])[0].data == f"go.lifter.{sam}-chart_film"
    (chart,) = ask(room, "lifter", f"{sam}-chart_film")
    room.a_coach("Bea")
    shelf = PictureStore(room.db, Writer(room.file), ScriptClock(NOW), tmp_path / "pictures")
    try:
        found = await shelf.find(chart.picture, Address("telegram", "coach Ada"))
        assert found is not None
        assert "begins at about 72°" in found.words
        assert await shelf.find(chart.picture, Address("telegram", "coach Bea")) is None
    finally:
        shelf.close()


def test_every_chart_has_a_name_for_its_button():
    assert all(0 < len(chart.label) <= 32 for chart in all_charts().values())


async def test_a_lifter_s_chart_is_drawn_for_their_coach_and_for_nobody_else(room, tmp_path):
    sam = room.lifter()
    room.hurt(sam, 2)
    room.a_coach("Bea")
    shelf = PictureStore(room.db, Writer(room.file), ScriptClock(NOW), tmp_path / "pictures")
    ada, bea, own = (Address("telegram", id) for id in ("coach Ada", "coach Bea", "1001"))
    try:
        assert await shelf.find(f"chart_pain of {sam}", bea) is None
        assert await shelf.find(f"chart_pain of {sam}", Address("telegram", "a stranger")) is None
        assert await shelf.find("chart_pain", ada) is None, "the coach has no chart of their own"
        found, mine = await shelf.find(f"chart_pain of {sam}", ada), await shelf.find("chart_pain", own)
        assert found is not None
        assert mine is not None
        assert (found.data, found.words, found.key) == (mine.data, mine.words, "")
        coaching.withdraw(room.db, sam, room.coach, NOW)
        assert await shelf.find(f"chart_pain of {sam}", ada) is None, "the view has been ended since"
    finally:
        shelf.close()


def test_a_page_is_data_all_through(room):
    """A report is made of the same page: no field of it holds a connection or a closure."""
    def walk(thing: Any) -> None:
        assert not callable(thing)
        if is_dataclass(thing):
            for field in fields(thing):
                walk(getattr(thing, field.name))
        elif isinstance(thing, tuple):
            for part in thing:
                walk(part)

    walk(lifter_page(room.db, room.coach, full(room), NOW))


def test_a_summary_says_what_changed_with_its_error_the_trial_s_result_and_whole_grounds(room):
    sam = full(room)
    grounds = "Calf: the knee to wall points to it, the heels up trial points away from it, so it is too close to call for now, and more."
    room.find(sam, "control", "too_close", 1, grounds)
    room.find(sam, "retest.change", "better", 1, "knee to wall, left: 3 cm more than before, which is beyond measurement error (2.1 cm).")
    room.run(sam, "trial", {"join": "yes"}, 1)
    (say,) = ask(room, "lifter", sam)
    assert ("Changed, and is it real: better, yesterday: knee to wall, left: 3 cm more than before, which is beyond measurement error "
            "(2.1 cm).") in say.text
    assert "Priming trial: Can't tell yet" in say.text
    assert f"Control: too close to call: {grounds}" in say.text


def test_why_is_a_tap_on_a_lifters_page_and_offers_every_topic_that_has_answers(room):
    sam = full(room)
    (say,) = ask(room, "lifter", f"{sam}-why")
    offered = {tap.label: tap.data for row in say.buttons for tap in row}
    assert {"Length", "The load", "The depth", "The drill", "Homework", "The retest date", "Measurement error"} <= offered.keys()
    for data in offered.values():
        flow, asked = read_start(data)
        (said, *_) = ask(room, flow, asked)
        fits(said)
        assert "…" not in said.text
    assert "Length" not in [tap.label for tap in taps(ask(room, "lifter", f"{room.lifter('Ida')}-why")[0])]


def test_each_answer_to_why_is_short_and_in_the_lifters_units_and_the_look_is_noted(room):
    sam = full(room)
    room.run(sam, "welcome", {"units": "imperial"}, 8)
    (say,) = ask(room, "lifter", f"{sam}-why_knee_to_wall")
    head, *answers = say.text.split("\n\n")
    assert head == "Sam: the knee to wall lines"
    assert answers[0].startswith("4 in from toe to wall, heel down")
    assert "Common practice, no study." in answers[0]
    assert all(len(one.split()) <= 60 for one in answers)
    assert [(name, what) for _, name, what in coaching.latest_looks(room.db, sam, 1)] == [("Ada", "why: the knee to wall lines")]


def test_why_of_a_cause_lists_the_rows_that_decided_and_says_whose_weights_they_are(room):
    sam = full(room)
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 6.0, "left_2": 6.2, "left_limit": "calf"}, 4)
    (say,) = ask(room, "lifter", f"{sam}-why_length")
    assert "Length, decided by: " in say.text
    assert "(knee to wall, left; moderate)" in say.text
    assert "The weights are this project's choice." in say.text
