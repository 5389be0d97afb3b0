"""What pain told late does to the log, and what taking it back does: rows are added, none changed."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest

from companion.conversation.effects import Alert, Began, CountAgain, Ended, Find, Record, Void
from companion.record import log
from companion.record.timestamps import text_of
from companion.screening.screen import screen_from
from companion.screening.squat_days import days_told
from tests.coach.caseload_rows import NOW, Room, lines_of, record

HOUR = 1 / 24
READ = {"method": "tape", "left_1": 11.0, "left_2": 11.5, "right_1": 12.0, "right_2": 12.0}
SINCE = text_of(NOW - timedelta(minutes=30))


@pytest.fixture
def room(tmp_path: Path) -> Iterator[Room]:
    with record(tmp_path) as one:
        yield one


def counting(room: Room, person: int) -> tuple[set[str], tuple[str, ...]]:
    """The tests that count, and those that pain stopped."""
    screen = screen_from(map(log.as_answer, log.answers_of(room.db, person)))
    return set(screen.done), screen.stopped


def statuses(room: Room, person: int, run: str) -> list[tuple[str, str]]:
    return [(row.key, row.status) for row in log.answers_of(room.db, person) if row.run == run]


def test_a_test_named_is_marked_by_rows_that_replace_its_own_and_counts_no_more(room):
    sam = room.lifter()
    run = room.run(sam, "knee_to_wall", READ, 2 * HOUR)
    before = [row.id for row in log.answers_of(room.db, sam) if row.run == run]
    room.keep(sam, 0, Void("knee_to_wall"))
    marked = [row for row in log.answers_of(room.db, sam) if row.run == run and row.status == "in_pain"]
    assert [row.replaces for row in marked] == before
    assert [row.value for row in marked] == list(READ.values()), "what was read stays to be seen"
    assert counting(room, sam) == (set(), ("knee_to_wall",))
    assert "knee_to_wall.left_1" not in log.facts_of(room.db, sam)


def test_only_what_was_done_lately_is_marked(room):
    sam = room.lifter()
    old = room.run(sam, "knee_to_wall", READ, 3)
    room.run(sam, "knee_to_wall", READ, HOUR)
    room.run(sam, "squat_look", {"plain_rounds": "clearly"}, HOUR)
    room.keep(sam, 0, Void("knee_to_wall"))
    assert {status for _, status in statuses(room, sam, old)} == {"ok"}
    assert counting(room, sam)[0] == {"squat_look"}


def test_pain_told_just_after_a_test_marks_it(room):
    sam = room.lifter()
    run = room.run(sam, "knee_to_wall", READ, HOUR)
    room.keep(sam, 0, Ended(run, "pain"))
    assert counting(room, sam) == (set(), ("knee_to_wall",))
    assert {status for _, status in statuses(room, sam, run)[len(READ):]} == {"in_pain"}


def test_what_is_taken_back_counts_again_as_it_was_and_both_stay_in_the_log(room):
    sam = room.lifter()
    run = room.run(sam, "knee_to_wall", READ, 2 * HOUR)
    whole = screen_from(map(log.as_answer, log.answers_of(room.db, sam)))
    room.keep(sam, HOUR / 4, Void("knee_to_wall"))
    room.keep(sam, 0, CountAgain(SINCE))
    assert screen_from(map(log.as_answer, log.answers_of(room.db, sam))) == whole
    assert [row.ending for row in log.answers_of(room.db, sam) if row.run == run][-1] == "done"
    assert [status for _, status in statuses(room, sam, run)] == ["ok"] * 5 + ["in_pain"] * 5 + ["no_pain"] * 5 + ["ok"] * 5
    assert log.facts_of(room.db, sam)["knee_to_wall.left_1"].value == 11.0


def test_a_test_that_pain_had_stopped_half_way_counts_as_left(room):
    sam = room.lifter()
    run = room.run(sam, "knee_to_wall", READ, HOUR / 4, ending="")
    room.keep(sam, HOUR / 5, Record(run, "knee_to_wall", 1, "right_limit", "", "ouch", None, status="in_pain"), Ended(run, "pain"))
    room.keep(sam, 0, CountAgain(SINCE))
    rows = [row for row in log.answers_of(room.db, sam) if row.run == run]
    assert (rows[-1].key, rows[-1].status, rows[-1].ending) == ("right_limit", "no_pain", "left")
    assert counting(room, sam) == ({"knee_to_wall"}, ())


def test_only_pain_since_then_and_of_these_flows_is_taken_back(room):
    sam = room.lifter()
    room.run(sam, "knee_to_wall", READ, 3 * HOUR)
    room.run(sam, "squat_look", {"plain_rounds": "clearly"}, 3 * HOUR)
    room.keep(sam, 2 * HOUR, Void("squat_look"))
    room.keep(sam, HOUR / 4, Void("knee_to_wall"))
    room.keep(sam, 0, CountAgain(SINCE, "squat_look"))
    assert counting(room, sam)[0] == set()
    room.keep(sam, 0, CountAgain(SINCE))
    assert counting(room, sam) == ({"knee_to_wall"}, ("squat_look",))


@pytest.mark.parametrize("again", [True, False])
def test_pain_taken_back_on_a_squat_day_is_not_told_of_that_day(room, again: bool):
    """What was said in the middle of the questions, and answered after: "whatever is said later" but for the taking back."""
    sam = room.lifter()
    run = room.run(sam, "squat_after", {"done": "yes", "back": "still"}, HOUR / 4, ending="")
    room.keep(sam, HOUR / 5, Record(run, "squat_after", 1, "kept", "", "ouch", None, status="in_pain"))
    room.keep(sam, HOUR / 6, Record(run, "squat_after", 1, "kept", "", "Kept to it", "kept"), Ended(run, "done"))
    if again:
        room.keep(sam, 0, CountAgain(SINCE))
    (day,) = days_told(map(log.as_answer, log.answers_of(room.db, sam)), "UTC+00:00")
    assert (day.hurt, day.kept) == (not again, "kept")


def test_a_squat_day_named_late_is_a_painful_one_until_it_is_taken_back(room):
    sam = room.lifter()
    room.run(sam, "squat_day", {"load": 80.0, "squatted": "ready"}, 2 * HOUR)
    room.keep(sam, HOUR / 4, Void("squat_day"))
    assert days_told(map(log.as_answer, log.answers_of(room.db, sam)), "UTC+00:00")[0].hurt
    room.keep(sam, 0, CountAgain(SINCE))
    (day,) = days_told(map(log.as_answer, log.answers_of(room.db, sam)), "UTC+00:00")
    assert (day.hurt, day.load) == (False, 80.0)


def test_the_last_session_is_that_of_the_last_24_hours_also_over_midnight(room):
    sam = room.lifter()
    room.run(sam, "knee_to_wall", READ, 0.99)
    room.run(sam, "squat_look", {"plain_rounds": "clearly"}, 1.01)
    room.keep(sam, 0, Void("knee_to_wall squat_look"))
    assert counting(room, sam)[0] == {"squat_look"}


def test_pain_taken_back_is_not_in_the_caseload_while_older_pain_is(room):
    sam = room.lifter()
    room.hurt(sam, 3)
    room.run(sam, "pain", {"where": "back", "bad": 6.0}, HOUR / 4, alert=Alert("not_today", "something hurt (back)"))
    taken = room.run(sam, "pain", {"where": "nothing", "mistake": "yes"}, HOUR / 8, ending="")
    room.keep(sam, HOUR / 8, Alert("no_load", "taken back", taken), Ended(taken, "done"))
    assert lines_of(room.db, room.coach, NOW)[0].words == "said today that something hurt, then that nothing does"
    room.keep(sam, HOUR / 8, Find("pain.taken_back", SINCE), Find("pain.hurt", "no"))
    assert lines_of(room.db, room.coach, NOW)[0].words.startswith("hurt on Monday: lower back, 5 of 10")


def test_a_run_that_only_began_is_no_matter(room):
    sam = room.lifter()
    room.keep(sam, HOUR, Began("99", "knee_to_wall", 1))
    room.keep(sam, 0, Void("knee_to_wall"), CountAgain(SINCE))
    assert statuses(room, sam, "99") == []
