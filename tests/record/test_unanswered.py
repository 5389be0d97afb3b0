"""Questions left open, by hand: which runs count, from when, and what stands meanwhile."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

import pytest

from companion.conversation.effects import Alert, Began, Record
from companion.conversation.session import Aside, Frame, Session
from companion.record import unanswered
from companion.record.timestamps import text_of
from companion.screening.safety import Level
from companion.screening.standing import OpenQuestions
from tests.coach.caseload_rows import Room, ago, record

FLOWS = {"p": "pain", "s": "signs", "c": "safety_check", "k": "knee_to_wall"}
ENDINGS = {"": "", "-": "left", "!": "pain", ".": "done"}


@pytest.fixture
def room(tmp_path: Path) -> Iterator[Room]:
    with record(tmp_path) as one:
        yield one


def runs(room: Room, person: int, told: str, warned: str = "yes") -> list[str]:
    """Runs an hour apart, the last an hour ago: "p" pain, "s" a sign, "c" a check after a warning, "k" a test; "-" left, "!" ended by
    pain, "." done."""
    begun = told.split()
    return [room.run(person, FLOWS[one[0]], {"weakness": warned} if one[0] == "c" else {}, (len(begun) - n) / 24, ENDINGS[one[1:]])
            for n, one in enumerate(begun)]


@pytest.mark.parametrize(("told", "left"), [
    ("p", [0]), ("p-", [0]), ("p!", [0]), ("p.", []), ("s", [0]), ("s-", [0]), ("s.", []), ("c", [0]), ("c-", [0]), ("c.", []), ("k", []),
    ("p- p", [1]), ("p- p.", []), ("p- s", [0, 1]), ("p- k.", [0]), ("p- c.", [0]), ("p c.", [0]), ("p- c", [0, 1]),
    ("s s", [0, 1]), ("s- s", [1]), ("s s.", [0]), ("s- s.", []), ("s c.", []), ("s- c.", []), ("s c-", [0, 1]), ("s k.", [0]),
    ("c- c", [1]), ("c- c.", []), ("c- s", [0, 1]), ("c. s", [1]), ("c. p", [1]), ("c- p.", [0])])
def test_of_the_same_questions_those_that_wait_or_the_last_are_open(room: Room, told: str, left: Sequence[int]) -> None:
    begun = runs(room, room.lifter(), told)
    assert [one.run for one in unanswered.unfinished(room.db)] == [begun[n] for n in left]


def test_the_tenth_run_is_later_than_the_ninth(room: Room) -> None:
    sam, room.runs = room.lifter(), 8
    runs(room, sam, "p- p.")
    assert (room.runs, list(unanswered.unfinished(room.db))) == (10, [])


def test_of_one_person_or_everybody_from_a_moment_on(room: Room) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    room.run(mia, "signs", {}, 2, "")
    room.run(sam, "pain", {}, 3, "")
    room.run(sam, "signs", {}, 1, "")

    def left(after: datetime | None = None, person: int | None = None) -> list[tuple[int, str]]:
        return [(one.person, one.flow) for one in unanswered.unfinished(room.db, after, person)]

    assert left() == [(sam, "pain"), (mia, "signs"), (sam, "signs")]
    assert left(person=sam) == [(sam, "pain"), (sam, "signs")]
    assert left(ago(2)) == left(ago(2), None) == [(mia, "signs"), (sam, "signs")]
    assert left(ago(1.9), mia) == []
    assert left(ago(1), sam) == [(sam, "signs")]


def test_another_persons_questions_end_nobody_elses(room: Room) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    room.run(sam, "pain", {}, 2, "left")
    room.run(mia, "pain", {}, 1, "done")
    room.run(mia, "safety_check", {}, 1, "done")
    assert [one.person for one in unanswered.unfinished(room.db)] == [sam]


@pytest.mark.parametrize(("answers", "warned"), [
    ({"weakness": "yes"}, True), ({"weakness": "unsure"}, True), ({"weakness": "no"}, False), ({"fall": "yes"}, True),
    ({"fall": "unsure"}, True), ({"weakness": "no", "fall": "no"}, False), ({"sleep": "yes"}, False), ({}, False),
    ({"urgent": "yes"}, True), ({"urgent": "unsure"}, True), ({"urgent": "no"}, False), ({"urgent": "yes", "weakness": "no"}, True),
    ({"urgent": "yes", "fall": "no"}, True), ({"urgent": "yes", "weakness": "no", "fall": "no"}, False)])
def test_a_check_is_left_open_only_after_a_warning_that_was_not_denied(room: Room, answers: dict[str, float | str], warned: bool) -> None:
    sam = room.lifter()
    room.run(sam, "safety_check", answers, 0.1, "left")
    assert bool(list(unanswered.unfinished(room.db))) is warned
    assert bool(unanswered.open_questions(room.db)) is warned


def test_an_answer_that_was_put_right_is_the_one_that_counts(room: Room) -> None:
    sam = room.lifter()
    run = room.run(sam, "safety_check", {"weakness": "yes", "fall": "no"}, 0.1, "")
    room.runs -= 1
    room.run(sam, "safety_check", {"weakness": "no"}, 0.05, "")
    assert [(key, value) for key, _, value in unanswered.answers_in_run(room.db, sam, run)] == [("fall", "no"), ("weakness", "no")]
    assert list(unanswered.unfinished(room.db)) == []


def test_answers_of_other_runs_and_people_and_those_skipped_are_none_of_a_run(room: Room) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    run = room.run(sam, "signs", {"which": "fever"}, 0.1, "")
    room.run(sam, "signs", {"which": "fall"}, 0.1, "")
    room.runs = int(run) - 1
    room.run(mia, "signs", {"which": "chest"}, 0.1, "")
    room.keep(sam, 0.1, Record(run, "signs", 1, "when", "", "skip", None, status="skipped"))
    assert [(key, value) for key, _, value in unanswered.answers_in_run(room.db, sam, run)] == [("which", "fever")]


@pytest.mark.parametrize("flow", ["pain", "signs"])
def test_a_coach_was_told_of_what_was_alerted_in_that_run_or_when_it_was_first_begun(room: Room, flow: str) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    first = room.run(sam, flow, {}, 0.2, "left", alert=Alert("same_day", "told"))
    again = room.run(sam, flow, {}, 0.1, "")
    room.db.execute("update runs set first_run = ? where person = ? and run = ?", (first, sam, again))
    other = room.run(mia, flow, {}, 0.1, "")
    assert {one.run: one.alerted for one in unanswered.unfinished(room.db)} == {again: True, other: False}
    room.db.execute("update runs set first_run = run")
    assert {one.run: one.alerted for one in unanswered.unfinished(room.db)} == {again: False, other: False}
    room.db.execute("update runs set first_run = ''")
    assert not any(one.alerted for one in unanswered.unfinished(room.db)), "what is not known is not the same"


def test_since_when_something_is_told_goes_back_over_what_was_begun_anew(room: Room) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    first = room.run(sam, "pain", {}, 3, "")
    room.db.execute("update runs set ending = 'left', ended_at = ? where run = ?", (text_of(ago(2)), first))
    second, other = room.run(sam, "pain", {}, 2, ""), room.run(mia, "pain", {}, 2, "")
    check = room.run(sam, "safety_check", {}, 2, "")
    assert unanswered.told_since(room.db, sam, second) == unanswered.told_since(room.db, sam, first) == ago(3)
    assert unanswered.told_since(room.db, mia, other) == ago(2)
    assert unanswered.told_since(room.db, sam, check) is None
    room.db.execute("update runs set ending = 'done' where run = ?", (first,))
    assert unanswered.told_since(room.db, sam, second) == ago(2), "what was answered is told by itself"


@pytest.mark.parametrize(("stood", "sign", "check", "told"), [
    ("go", None, None, None), ("not_today", None, None, None), ("clinician", None, None, Level.CLINICIAN),
    ("same_day", None, None, Level.SAME_DAY), ("go", "emergency", None, Level.EMERGENCY),
    ("same_day", "clinician", None, Level.SAME_DAY), ("clinician", None, "same_day", Level.CLINICIAN)])
def test_beside_open_questions_stands_the_worst_that_was_told_before_or_with_a_sign(
        room: Room, stood: str, sign: str | None, check: str | None, told: Level | None) -> None:
    sam = room.lifter()
    room.find(sam, "safety.level", "emergency", 5)
    room.find(sam, "safety.level", stood, 4)
    room.find(sam, "other.level", "emergency", 3)
    flow, level = ("safety_check", check) if check else ("signs", sign)
    run = room.run(sam, flow, {"weakness": "yes"}, 1, "", alert=Alert(level, "told") if level else None)
    room.db.execute("insert into findings (at, person, run, name, value, rule, because) select at, person, ?, name, 'emergency', rule, "
                    "because from findings where name = 'safety.level' limit 1", (run,))
    assert unanswered.open_questions(room.db) == {sam: OpenQuestions(flow, ago(1), told)}


def test_pain_is_none_of_the_open_questions_and_a_check_comes_before_a_sign(room: Room) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    room.run(sam, "pain", {}, 0.3, "")
    room.run(sam, "signs", {}, 0.2, "")
    room.run(sam, "safety_check", {"fall": "yes"}, 0.1, "")
    room.run(mia, "signs", {}, 0.2, "")
    assert {whose: one.about for whose, one in unanswered.open_questions(room.db).items()} == {sam: "signs", mia: "signs"}
    assert set(unanswered.open_questions(room.db, mia)) == {mia}


def test_began_again_is_kept_with_what_it_was_first(room: Room) -> None:
    sam = room.lifter()
    room.keep(sam, 0.2, Began("90", "pain", 1))
    room.keep(sam, 0.1, Began("91", "pain", 1, first_run="90"))
    kept = room.db.execute("select run, first_run from runs where flow = 'pain' order by began_at").fetchall()
    assert kept == [("90", "90"), ("91", "90")]
    assert [(one.run, one.first_run) for one in unanswered.unfinished(room.db)] == [("91", "90")]


def sit(room: Room, person: int, session: Session, days: float) -> None:
    row = {"person": person, "session": session.dumps(), "updated_at": text_of(ago(days))}
    room.file["sessions"].insert(row, pk="person", replace=True)


@pytest.mark.parametrize(("aside", "words"), [
    (Aside("stop"), ""), (Aside("ache", "my back"), "my back"), (Aside("stop", "my back"), "my back"),
    (Aside("unusual", "200"), None), (None, None)])
def test_who_was_asked_whether_something_hurt_and_has_not_said(room: Room, aside: Aside | None, words: str | None) -> None:
    sam = room.lifter()
    sit(room, sam, Session(stack=(Frame("pain", 1, "6"), Frame("knee_to_wall", 1, "7")), aside=aside, at=text_of(ago(2))), 1)
    asked = [] if words is None else [(sam, ago(2), "7", words)]
    assert list(unanswered.hurt_asked(room.db)) == asked
    assert list(unanswered.hurt_asked(room.db, ago(1))) == asked
    assert list(unanswered.hurt_asked(room.db, ago(0.9))) == []
    assert unanswered.open_questions(room.db) == ({sam: OpenQuestions("hurt", ago(2), said=str(words))} if asked else {})
    assert unanswered.open_questions(room.db, room.lifter("Mia")) == {}


def test_who_was_asked_while_nothing_ran_is_known_too(room: Room) -> None:
    sam = room.lifter()
    sit(room, sam, Session(aside=Aside("ache", "my back"), runs=7, at=text_of(ago(2))), 1)
    assert list(unanswered.hurt_asked(room.db)) == [(sam, ago(2), "7", "my back")]


@pytest.mark.parametrize("session", [
    Session(stack=(Frame("pain", 1, "6"),), aside=Aside("ache")),
    Session(stack=(Frame("pain", 1, "6", got={"note": 1, "about": "ache"}),), at=text_of(ago(2)))])
def test_without_the_question_or_the_time_nothing_was_asked(room: Room, session: Session) -> None:
    sit(room, room.lifter(), session, 1)
    assert list(unanswered.hurt_asked(room.db)) == []


def test_the_words_that_a_run_began_with(room: Room) -> None:
    sam, mia = room.lifter(), room.lifter("Mia")
    parked = (Frame("signs", 1, "8", got={"said": "my foot drops"}),)
    sit(room, sam, Session(stack=(Frame("pain", 1, "7", got={"said": "my back"}),), parked=(parked,)), 1)
    assert [unanswered.words_of_run(room.db, sam, run) for run in ("7", "8", "9")] == ["my back", "my foot drops", ""]
    assert unanswered.words_of_run(room.db, mia, "7") == ""
