"""A lifter's log as messages: its pages, its rows, and parts of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from companion.coach.log_messages import ROWS_A_PAGE
from companion.conversation.effects import Began, Record
from companion.record import coaching, people
from tests.coach.caseload_rows import ago
from tests.coach.pages import ask, full, labels, taps


@pytest.mark.parametrize(("many", "pages"), [(1, 1), (14, 1), (15, 1), (16, 2), (200, 14)])
def test_fifteen_rows_a_page_the_newest_first(room, many, pages):
    sam = people.add_person(room.db, "telegram", "7", "Sam", ago(9))
    coaching.link(room.db, sam, room.coach, ago(8))
    room.run(sam, "safety_check", {f"key_{n}": float(n) for n in range(many)})
    seen: list[str] = []
    for page in range(pages):
        (say,) = ask(room, "lifter_log", f"{sam}-{page}")
        assert ("Newer" in labels(say), "Older" in labels(say)) == (page > 0, page < pages - 1)
        rows = [line for line in say.text.splitlines() if line.startswith("#")]
        assert len(rows) <= 15
        seen += rows
    assert [line.split("→ ")[1] for line in seen] == [f"{n}" for n in range(many - 1, -1, -1)]
    assert ask(room, "lifter_log", f"{sam}-999999") == ask(room, "lifter_log", f"{sam}-{pages - 1}")


def test_an_empty_log_says_so(room):
    sam = people.add_person(room.db, "telegram", "7", "Sam", ago(9))
    coaching.link(room.db, sam, room.coach, ago(8))
    assert "No answer" in ask(room, "lifter_log", sam)[0].text


def test_a_correction_of_an_answer_picked_by_a_button_shows_what_it_replaced(room):
    sam = people.add_person(room.db, "telegram", "7", "Sam", ago(9))
    coaching.link(room.db, sam, room.coach, ago(8))
    old = Record("k", "knee_to_wall", 1, "left_1", "left", "", 11.0, "cm")
    room.keep(sam, 1, Began("k", "knee_to_wall", 1), old, replace(old, raw="8.2", value=8.2))
    assert "in place of “11.0 cm”" in ask(room, "lifter_log", sam)[0].text


def test_corrections_skips_and_answers_in_pain_can_be_seen(room):
    sam = people.add_person(room.db, "telegram", "7", "Sam", ago(9))
    coaching.link(room.db, sam, room.coach, ago(8))
    run = room.run(sam, "knee_to_wall", {"left_1": 11.0})
    again = Record(run, "knee_to_wall", 1, "left_1", "left", "twelve", 12.0, "cm")
    room.keep(sam, 1, again, replace(again, raw="", value=None, status="withdrawn"), replace(again, key="left_2", raw="", value=None,
              status="skipped"), replace(again, key="right_1", side="right", raw="9 ouch", value=9.0, status="in_pain"))
    rows = [line.split("→ ")[1] for line in ask(room, "lifter_log", sam)[0].text.splitlines() if line.startswith("#")]
    assert rows == ["9 cm (“9 ouch”) [given in pain, never scored]", "nothing [skipped]", "nothing [taken back; in place of “twelve”]",
                    "12 cm (“twelve”) [in place of “11.0”; replaced later]", "11 [replaced later]"]


def test_a_row_names_its_flow_its_question_and_the_answer_s_label(room):
    sam = room.lifter()
    room.run(sam, "pain", {"where": "back"})
    row = ask(room, "lifter_log", sam)[0].text.splitlines()[1]
    assert row.endswith("Wed 11 Mar 18:00, Pain: Where does it hurt? → Lower back")


def test_the_log_is_shown_by_test_by_day_and_corrections_alone(room):
    sam = full(room)
    old = Record("k", "knee_to_wall", 1, "left_1", "left", "7", 7.0, "cm")
    room.keep(sam, 1, Began("k", "knee_to_wall", 1), old, replace(old, raw="8.2", value=8.2))
    (choice,) = ask(room, "lifter_log", f"{sam}-filter-0")
    assert {tap.label for tap in taps(choice)} >= {"Corrections (1)", "Knee to wall (7)", "Wed 11 Mar", "Tue 10 Mar"}
    (fixed,) = ask(room, "lifter_log", f"{sam}-corrections-0")
    assert fixed.text.splitlines()[0] == "Sam: log, corrections, page 1 of 1, in your time zone"
    assert [line.partition("→")[2] for line in fixed.text.splitlines()[1:]] == [" 8.2 cm [in place of “7”]"]
    (test,) = ask(room, "lifter_log", f"{sam}-knee_to_wall-0")
    assert len(test.text.splitlines()) == 1 + 7
    assert all("Knee to wall" in line for line in test.text.splitlines()[1:])
    (day,) = ask(room, "lifter_log", f"{sam}-20260310-0")
    assert all("Tue 10 Mar" in line for line in day.text.splitlines())
    assert room.looks(sam)[-3:] == ["Ada: log, corrections, page 1", "Ada: log, knee to wall, page 1", "Ada: log, Tue 10 Mar, page 1"]


def test_the_pages_of_a_part_of_the_log_lead_to_each_other(room):
    sam = room.lifter()
    for n in range(2 * ROWS_A_PAGE):
        room.run(sam, "squat_day", {"load": float(n)}, 3)
    (first,) = ask(room, "lifter_log", f"{sam}-20260309-0")
    older = next(tap for tap in taps(first) if tap.label == "Older")
    assert older.data == f"go.lifter_log.{sam}-20260309-1"
    (second,) = ask(room, "lifter_log", older.data.removeprefix("go.lifter_log."))
    assert second.text.startswith("Sam: log, Mon 9 Mar, page 2 of 2")
