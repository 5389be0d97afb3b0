"""Who sees whom: codes and how often and how long they may be tried, links, and what ends them."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from companion.record import coaching, people
from companion.record.file import open_for_writing

NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)
MINUTE, DAY = timedelta(minutes=1), timedelta(days=1)
ADA, BEA, SAM, MIA = 1, 2, 3, 4
"""Two coaches and two lifters."""


@pytest.fixture
def db(tmp_path: Path) -> Iterator[sqlite3.Connection]:
    database, lock = open_for_writing(tmp_path / "a.sqlite")
    for number, name in ((ADA, "Ada"), (BEA, "Bea"), (SAM, "Sam"), (MIA, "Mia")):
        people.add_person(database.conn, "telegram", str(number), name, NOW)
    coaching.make_coach(database.conn, ADA, "Ada", NOW)
    coaching.make_coach(database.conn, BEA, "Bea", NOW)
    yield database.conn
    database.close()
    lock.close()


# codes --------------------------------------------------------------------------------------------------------


def test_a_code_is_long_and_is_not_misread() -> None:
    code = coaching.new_code()
    assert len(code) == 12
    assert set(coaching.LETTERS) == set("abcdefghjkmnpqrstuvwxyz23456789")
    assert set(code) <= set(coaching.LETTERS)
    assert coaching.new_code() != code
    assert coaching.spaced("abcdefghjkmn") == "abcd efgh jkmn"
    assert coaching.code_hash_of("ABCD-efgh jkmn") == coaching.code_hash_of("abcdefghjkmn") != coaching.code_hash_of("abcdefghjkmm")


def test_five_wrong_codes_an_hour(db: sqlite3.Connection) -> None:
    for tried in range(5):
        assert coaching.may_try(db, SAM, NOW + tried * MINUTE)
        coaching.note_try(db, SAM, NOW + tried * MINUTE)
    assert not coaching.may_try(db, SAM, NOW + 5 * MINUTE)
    assert coaching.may_try(db, MIA, NOW + 5 * MINUTE)
    assert not coaching.may_try(db, SAM, NOW + 59 * MINUTE)
    assert coaching.may_try(db, SAM, NOW + 60 * MINUTE)


def test_tries_of_more_than_an_hour_ago_are_forgotten_and_only_ones_own(db: sqlite3.Connection) -> None:
    for person in (SAM, MIA):
        coaching.note_try(db, person, NOW)
    coaching.note_try(db, SAM, NOW + 59 * MINUTE)
    assert db.execute("select person from code_tries order by id").fetchall() == [(SAM,), (MIA,), (SAM,)]
    coaching.note_try(db, SAM, NOW + 60 * MINUTE)
    assert db.execute("select person from code_tries order by id").fetchall() == [(MIA,), (SAM,), (SAM,)]


def test_a_code_opens_for_seven_days(db: sqlite3.Connection) -> None:
    code = coaching.invite(db, "lifter", ADA, "Sam", NOW)
    found = coaching.open_invitation(db, code, NOW + 7 * DAY - MINUTE)
    assert found is not None
    assert (found.kind, found.made_by, found.name) == ("lifter", ADA, "Sam")
    assert coaching.invitation(db, found.id, NOW + 7 * DAY - MINUTE) == found
    for late in (7 * DAY, 8 * DAY):
        assert coaching.open_invitation(db, code, NOW + late) is None
        assert coaching.invitation(db, found.id, NOW + late) is None


def test_a_code_is_used_once_and_another_code_opens_nothing_of_it(db: sqlite3.Connection) -> None:
    first, second = (coaching.invite(db, "lifter", ADA, name, NOW) for name in ("Sam", "Mia"))
    one, two = (coaching.open_invitation(db, code, NOW) for code in (first, second))
    assert one is not None
    assert two is not None
    assert (one.name, two.name) == ("Sam", "Mia")
    assert coaching.use_up(db, one.id, SAM, NOW)
    assert not coaching.use_up(db, one.id, MIA, NOW)
    assert coaching.open_invitation(db, first, NOW) is None
    assert coaching.invitation(db, one.id, NOW) is None
    assert coaching.invitation(db, two.id, NOW) == two
    assert coaching.open_invitation(db, "abcd efgh jkmn", NOW) is None
    assert coaching.codes_of_lifters(db, ADA) == {SAM: "Sam"}
    assert coaching.codes_of_lifters(db, BEA) == {}


def test_the_code_of_a_coach_who_is_none_any_more_is_good_for_nothing(db: sqlite3.Connection) -> None:
    code, operators = coaching.invite(db, "lifter", ADA, "Sam", NOW), coaching.invite(db, "coach", None, "Cat", NOW)
    found = coaching.open_invitation(db, code, NOW)
    assert found is not None
    coaching.end_coach(db, ADA, NOW)
    assert coaching.open_invitation(db, code, NOW) is None
    assert coaching.invitation(db, found.id, NOW) is None
    theirs = coaching.open_invitation(db, operators, NOW)
    assert theirs is not None
    assert coaching.invitation(db, theirs.id, NOW) == theirs


def test_another_coach_s_code_hands_over_and_no_other_code_does(db: sqlite3.Connection) -> None:
    code = coaching.invite(db, "lifter", BEA, "Ada's lifters", NOW)
    found = coaching.open_invitation(db, code, NOW)
    assert found is not None
    assert coaching.taker_of(db, code, ADA, NOW + 7 * DAY - MINUTE) == (BEA, found.id)
    assert coaching.taker_of(db, code, ADA, NOW + 7 * DAY) is None
    assert coaching.taker_of(db, code, BEA, NOW) is None  # one's own
    assert coaching.taker_of(db, coaching.invite(db, "coach", BEA, "Cat", NOW), ADA, NOW) is None
    assert coaching.taker_of(db, coaching.invite(db, "lifter", SAM, "x", NOW), ADA, NOW) is None  # made by no coach
    coaching.use_up(db, found.id, ADA, NOW)
    assert coaching.taker_of(db, code, ADA, NOW) == (BEA, found.id)  # for one lifter after the other
    assert coaching.taker_of(db, code, SAM, NOW) is None


@pytest.mark.parametrize("ends", ["update coach_roles set until = '2026-03-02' where person = 2",
                                  "update coach_roles set role = 'clinician' where person = 2"])
def test_nobody_is_handed_over_to_who_is_no_coach_now(db: sqlite3.Connection, ends: str) -> None:
    code = coaching.invite(db, "lifter", BEA, "Ada's lifters", NOW)
    db.execute(ends)
    assert coaching.taker_of(db, code, ADA, NOW) is None


def test_a_hand_over_is_the_last_asked_by_a_coach_the_lifter_still_has(db: sqlite3.Connection) -> None:
    for lifter, coach in ((SAM, ADA), (SAM, BEA), (MIA, ADA), (SAM, MIA)):
        coaching.link(db, lifter, coach, NOW)
    assert coaching.handing_over(db, SAM, BEA) == []
    coaching.audit_act(db, SAM, ADA, "note", f"{BEA} x", "", NOW)
    coaching.audit_act(db, SAM, BEA, "hand_over", f"{BEA} 7", "", NOW)  # to oneself
    coaching.audit_act(db, MIA, ADA, "hand_over", "22 7", "", NOW)
    assert (coaching.handing_over(db, SAM, BEA), coaching.handing_over(db, MIA, BEA)) == ([], [])
    coaching.audit_act(db, SAM, ADA, "hand_over", f"{BEA} 7", "", NOW)
    coaching.audit_act(db, MIA, ADA, "hand_over", f"{BEA} 8", "", NOW)
    coaching.audit_act(db, SAM, MIA, "hand_over", f"{ADA} 9", "", NOW)
    coaching.audit_act(db, SAM, ADA, "note", "x", "", NOW)
    assert coaching.handing_over(db, SAM, BEA) == [(ADA, "Ada")]
    assert coaching.handing_over(db, SAM, ADA) == [(MIA, "")]
    coaching.audit_act(db, SAM, ADA, "hand_over", f"{MIA} 9", "", NOW)
    assert coaching.handing_over(db, SAM, BEA) == []


def test_a_hand_over_ends_with_the_link_it_was_asked_under(db: sqlite3.Connection) -> None:
    coaching.link(db, SAM, ADA, NOW)
    coaching.audit_act(db, SAM, ADA, "hand_over", f"{BEA} 7", "", NOW)
    assert coaching.handing_over(db, SAM, BEA) == [(ADA, "Ada")]
    coaching.withdraw(db, SAM, ADA, NOW)
    assert coaching.handing_over(db, SAM, BEA) == []
    coaching.link(db, SAM, ADA, NOW + DAY)
    assert coaching.handing_over(db, SAM, BEA) == []


# who sees whom ------------------------------------------------------------------------------------------------


def seen(db: sqlite3.Connection) -> set[tuple[int, int]]:
    return {(coach, lifter) for coach in (ADA, BEA, SAM, MIA) for lifter in (SAM, MIA, ADA) if coaching.sees(db, coach, lifter)}


def told(db: sqlite3.Connection) -> set[tuple[int, int]]:
    """The same by the lists: of a coach's lifters, with their names, and of a lifter's coaches."""
    lifters = {(coach, lifter) for coach in (ADA, BEA, SAM, MIA) for lifter in coaching.names_of_lifters(db, coach)}
    assert lifters == {(coach, lifter) for lifter in (SAM, MIA, ADA) for coach, _ in coaching.coaches_of(db, lifter)}
    return lifters


def test_nobody_sees_anybody_before_a_link(db: sqlite3.Connection) -> None:
    assert seen(db) == told(db) == set()


def test_a_coach_sees_whom_they_are_linked_to_and_nobody_sees_the_coach(db: sqlite3.Connection) -> None:
    coaching.link(db, SAM, ADA, NOW)
    coaching.link(db, MIA, BEA, NOW)
    assert seen(db) == told(db) == {(ADA, SAM), (BEA, MIA)}
    assert coaching.names_of_lifters(db, ADA) == {SAM: "Sam"}
    assert coaching.coaches_of(db, SAM) == [(ADA, "Ada")]
    assert coaching.lifters_of(db, ADA) == [SAM]
    assert coaching.coaches_with_lifters(db) == [(ADA, "Ada", 1), (BEA, "Bea", 1)]


def test_a_link_that_is_ended_shows_nothing_more_and_others_stay(db: sqlite3.Connection) -> None:
    for lifter, coach in ((SAM, ADA), (SAM, BEA), (MIA, ADA)):
        coaching.link(db, lifter, coach, NOW)
    assert coaching.withdraw(db, SAM, ADA, NOW)
    assert seen(db) == told(db) == {(BEA, SAM), (ADA, MIA)}
    assert coaching.lifters_of(db, ADA) == [MIA]
    assert coaching.coaches_with_lifters(db) == [(ADA, "Ada", 1), (BEA, "Bea", 1)]
    assert not coaching.withdraw(db, SAM, ADA, NOW + DAY)
    assert [what for _, _, what in coaching.latest_looks(db, SAM)] == ["withdrawn", "agreed", "agreed"]
    coaching.link(db, SAM, ADA, NOW)
    assert (ADA, SAM) in seen(db)


def test_who_is_no_coach_any_more_sees_nobody_and_comes_back_to_nobody(db: sqlite3.Connection) -> None:
    for lifter, coach in ((SAM, ADA), (MIA, BEA)):
        coaching.link(db, lifter, coach, NOW)
    coaching.end_coach(db, ADA, NOW + DAY)
    coaching.end_coach(db, ADA, NOW + 2 * DAY)
    assert seen(db) == told(db) == {(BEA, MIA)}
    assert (coaching.coach_name(db, ADA), coaching.coach_name(db, BEA)) == (None, "Bea")
    assert coaching.coaches_with_lifters(db) == [(BEA, "Bea", 1)]
    assert db.execute("select until from coach_roles where person = ?", (ADA,)).fetchone() == ("2026-03-03T18:05:00.000Z",)
    coaching.make_coach(db, ADA, "Ada", NOW)
    assert seen(db) == {(BEA, MIA)}


def test_a_role_is_one_s_own_and_while_it_lasts(db: sqlite3.Connection) -> None:
    coaching.make_coach(db, BEA, "Bea", NOW, "clinician")
    assert [coaching.role_of(db, one) for one in (ADA, BEA, SAM)] == ["coach", "clinician", ""]
    coaching.end_coach(db, BEA, NOW)
    assert [coaching.role_of(db, one) for one in (ADA, BEA, SAM)] == ["coach", "", ""]


def test_a_coach_made_again_keeps_their_lifters_and_one_in_another_role_loses_them(db: sqlite3.Connection) -> None:
    coaching.link(db, SAM, ADA, NOW)
    coaching.make_coach(db, ADA, "Ada B.", NOW + DAY)
    assert coaching.coaches_of(db, SAM) == [(ADA, "Ada B.")]
    coaching.make_coach(db, ADA, "Ada B.", NOW + DAY, "clinician")
    assert (coaching.coaches_of(db, SAM), coaching.role_of(db, ADA)) == ([], "clinician")
    coaching.link(db, MIA, SAM, NOW)  # a link of somebody who had no role
    coaching.make_coach(db, SAM, "Sam", NOW, "clinician")
    assert coaching.coaches_of(db, MIA) == [(SAM, "Sam")]


def test_who_has_coached_has_set_or_overruled_something_for_that_lifter(db: sqlite3.Connection) -> None:
    coaching.audit_act(db, SAM, ADA, "note", "x", "", NOW)
    assert not coaching.has_coached(db, ADA, SAM)
    coaching.audit_act(db, SAM, ADA, "pin_depth", "parallel", "", NOW)
    coaching.audit_act(db, MIA, BEA, "overrule", "x", "", NOW)
    assert {(coach, lifter) for coach in (ADA, BEA) for lifter in (SAM, MIA) if coaching.has_coached(db, coach, lifter)} == {
        (ADA, SAM), (BEA, MIA)}


@pytest.mark.parametrize("who", [ADA, BEA])
def test_a_role_that_ended_alone_shows_nothing_although_the_link_stands(db: sqlite3.Connection, who: int) -> None:
    coaching.link(db, SAM, ADA, NOW)
    coaching.link(db, SAM, BEA, NOW)
    db.execute("update coach_roles set until = ? where person = ?", ("2026-03-02T18:05:00.000Z", who))
    assert seen(db) == told(db) == {(ADA + BEA - who, SAM)}


def test_two_lifters_of_one_name_are_told_apart_by_their_numbers(db: sqlite3.Connection) -> None:
    for person, name in ((SAM, "Sam"), (MIA, " sAM "), (5, ""), (6, "Alexandra Fitzwilliam-Brown")):
        if person > MIA:
            people.add_person(db, "telegram", str(person), name, NOW)
        db.execute("update addresses set name = ? where person = ?", (name, person))
        coaching.link(db, person, ADA, NOW)
    assert coaching.told_apart(db, ADA) == {SAM: "Sam (no. 3)", MIA: "sAM (no. 4)", 5: "somebody", 6: "Alexandra Fitzwilliam-"}


def test_the_orders_of_a_coach_whose_role_had_ended_lapse_with_the_link(db: sqlite3.Connection) -> None:
    coaching.link(db, SAM, ADA, NOW)
    db.execute("insert into facts (person, name, value, at, found) values (?, 'load.pin', '60', '', 1)", (SAM,))
    db.execute("update coach_roles set until = '2026-03-02' where person = ?", (ADA,))
    coaching.withdraw(db, SAM, ADA, NOW)
    assert db.execute("select value, rule from findings where name = 'load.pin'").fetchall() == [("", "a coach has left")]


# what waits and what is noted -----------------------------------------------------------------------------------


def outgoing(db: sqlite3.Connection, to: int, about: int | None, buttons: str = "[]", name: str | None = None, at: datetime = NOW) -> int:
    moment = coaching.text_of(at)
    return db.execute("insert into outbox (person, about, channel, address, text, buttons, must_arrive, timed, unasked, made_at, due_at, "
                      "document_name) values (?, ?, 'telegram', ?, 'x', ?, 0, 0, 0, ?, ?, ?)",
                      (to, about, str(to), buttons, moment, moment, name)).lastrowid or 0


def test_messages_about_a_lifter_are_not_sent_after_the_link_has_ended(db: sqlite3.Connection) -> None:
    for lifter, coach in ((SAM, ADA), (MIA, ADA), (SAM, BEA)):
        coaching.link(db, lifter, coach, NOW)
    gone = [outgoing(db, ADA, SAM), outgoing(db, ADA, None, '[["x","go.lifter.3"]]')]
    stay = [outgoing(db, ADA, MIA), outgoing(db, BEA, SAM), outgoing(db, ADA, None), outgoing(db, ADA, None, '[["x","go.lifter.33"]]'),
            outgoing(db, BEA, None, '[["x","go.lifter.3"]]')]
    sent = outgoing(db, ADA, SAM)
    db.execute("update outbox set settled_at = 'before' where id = ?", (sent,))
    coaching.withdraw(db, SAM, ADA, NOW)
    assert [id for (id,) in db.execute("select id from outbox where dropped = 'withdrawn' order by id")] == gone
    assert [id for (id,) in db.execute("select id from outbox where settled_at is null order by id")] == stay


def test_a_report_is_owed_until_it_is_made_and_only_while_the_view_stands(db: sqlite3.Connection) -> None:
    for lifter, coach in ((SAM, ADA), (MIA, ADA), (SAM, BEA)):
        coaching.link(db, lifter, coach, NOW)
    coaching.audit_look(db, SAM, ADA, "report", NOW + MINUTE)
    coaching.audit_look(db, MIA, ADA, "log", NOW + MINUTE)
    owed = [coaching.ReportWanted(ADA, SAM, ("telegram", str(ADA)))]
    assert coaching.reports_owed(db, NOW) == owed
    assert coaching.reports_owed(db, NOW + MINUTE) == []
    outgoing(db, ADA, MIA, name="report.html", at=NOW + 2 * MINUTE)
    outgoing(db, BEA, SAM, name="report.html", at=NOW + 2 * MINUTE)
    outgoing(db, ADA, SAM, name="other.html", at=NOW + 2 * MINUTE)
    outgoing(db, ADA, SAM, name="report.html", at=NOW)
    assert coaching.reports_owed(db, NOW) == owed
    people.mark_gone(db, "telegram", str(ADA), NOW, "blocked the bot")
    assert coaching.reports_owed(db, NOW) == []
    people.mark_back(db, "telegram", str(ADA))
    assert coaching.reports_owed(db, NOW) == owed
    coaching.withdraw(db, SAM, ADA, NOW + 2 * MINUTE)
    assert coaching.reports_owed(db, NOW) == []
    coaching.link(db, SAM, ADA, NOW + 3 * MINUTE)
    assert coaching.reports_owed(db, NOW) == []  # asked for under the link before
    coaching.audit_look(db, SAM, ADA, "report", NOW + 3 * MINUTE)
    assert coaching.reports_owed(db, NOW) == owed
    outgoing(db, ADA, SAM, name="report.html", at=NOW + 3 * MINUTE)
    assert coaching.reports_owed(db, NOW) == []


def test_a_review_stands_until_it_is_taken_back_by_its_number(db: sqlite3.Connection) -> None:
    first = coaching.audit_act(db, SAM, ADA, "reviewed", "", "", NOW)
    second = coaching.audit_act(db, SAM, ADA, "reviewed", "", "", NOW + DAY)
    note = coaching.audit_act(db, SAM, ADA, "note", "x", "", NOW + 2 * DAY)
    coaching.audit_act(db, MIA, ADA, "unreviewed", str(second), "", NOW + 2 * DAY)
    assert coaching.reviewed_at(db, SAM, ADA) == coaching.text_of(NOW + DAY)
    assert (coaching.reviewed_at(db, SAM, BEA), coaching.reviewed_at(db, MIA, ADA)) == ("", "")
    assert coaching.stands(db, SAM, ADA, second)
    assert not coaching.stands(db, SAM, ADA, note)
    assert not coaching.stands(db, SAM, BEA, second)
    assert not coaching.stands(db, MIA, ADA, second)
    coaching.audit_act(db, SAM, ADA, "unreviewed", str(second), "", NOW + 2 * DAY)
    assert not coaching.stands(db, SAM, ADA, second)
    assert coaching.stands(db, SAM, ADA, first)
    assert coaching.reviewed_at(db, SAM, ADA) == coaching.text_of(NOW)


def test_looks_and_acts_are_told_newest_first_and_no_notes_or_reviews(db: sqlite3.Connection) -> None:
    for n in range(22):
        coaching.audit_look(db, SAM, ADA, f"look {n}", NOW)
        coaching.audit_act(db, SAM, ADA, "pin_depth", str(n), "because", NOW)
    for what in ("note", "reviewed", "unreviewed"):
        coaching.audit_act(db, SAM, ADA, what, "", "", NOW)
    coaching.audit_act(db, MIA, ADA, "pin_depth", "mia", "", NOW)
    coaching.audit_look(db, MIA, BEA, "hers", NOW)
    at = coaching.text_of(NOW)
    assert coaching.latest_looks(db, SAM) == [(at, "Ada", f"look {n}") for n in range(21, 1, -1)]
    assert coaching.latest_acts(db, SAM) == [(at, "Ada", "pin_depth", str(n), "because") for n in range(21, 1, -1)]


def test_a_look_or_an_act_of_somebody_who_is_no_coach_is_noted_without_a_name(db: sqlite3.Connection) -> None:
    coaching.audit_look(db, SAM, MIA, "log", NOW)
    coaching.audit_act(db, SAM, MIA, "pin_depth", "parallel", "", NOW)
    assert coaching.latest_looks(db, SAM) == [(coaching.text_of(NOW), "", "log")]
    assert coaching.latest_acts(db, SAM) == [(coaching.text_of(NOW), "", "pin_depth", "parallel", "")]


def alert(db: sqlite3.Connection, lifter: int, at: datetime, flow: str | None = None) -> int:
    run = str(db.execute("select count(*) from alerts where person = ?", (lifter,)).fetchone()[0])
    if flow:
        db.execute("insert into runs (person, run, flow, version, asked, began_at) values (?, ?, ?, 1, '', ?)",
                   (lifter, run, flow, coaching.text_of(at)))
    return db.execute("insert into alerts (person, run, level, because, at) values (?, ?, 'not_today', 'something hurt', ?)",
                      (lifter, run, coaching.text_of(at))).lastrowid or 0


def unseen(db: sqlite3.Connection, before: datetime = NOW + DAY, after: datetime = NOW - DAY) -> list[tuple[int, int]]:
    return [(one.person, one.id) for one in coaching.alerts_unseen(db, before, after)]


def test_an_alert_is_unseen_between_two_moments_until_a_coach_saw_it(db: sqlite3.Connection) -> None:
    for lifter in (SAM, MIA):
        coaching.link(db, lifter, ADA, NOW - DAY)
    first, mias, last = alert(db, SAM, NOW - MINUTE), alert(db, MIA, NOW), alert(db, SAM, NOW, "pain")
    assert unseen(db) == [(SAM, last), (MIA, mias)]  # the latest of each
    assert unseen(db, NOW, NOW) == [(SAM, last), (MIA, mias)]
    assert unseen(db, NOW - MINUTE) == [(SAM, first)]
    assert unseen(db, NOW + DAY, NOW + MINUTE) == []
    coaching.note_seen(db, SAM, first, NOW)
    assert unseen(db, NOW - MINUTE) == []
    assert unseen(db) == [(SAM, last), (MIA, mias)]
    coaching.note_unseen_told(db, SAM, last, NOW)
    assert [one.told for one in coaching.alerts_unseen(db, NOW + DAY, NOW - DAY)] == [True, False]
    coaching.note_seen(db, MIA, None, NOW)
    assert unseen(db) == [(SAM, last)]
    told = db.execute("select id, seen_at is null, unseen_told_at is null from alerts order by id").fetchall()
    assert told == [(first, 0, 0), (mias, 0, 1), (last, 1, 0)]


def test_of_alerts_nobody_has_seen_the_latest_urgent_one_counts_first(db: sqlite3.Connection) -> None:
    """Urgent: a level that no day ends, or a run that is not done."""
    coaching.link(db, SAM, ADA, NOW - DAY)
    grave, open_run, mild = alert(db, SAM, NOW), alert(db, SAM, NOW, "signs"), alert(db, SAM, NOW, "pain")
    db.execute("update alerts set level = 'clinician' where id = ?", (grave,))
    db.execute("insert or replace into runs (person, run, flow, version, asked, began_at) values (?, '0', 'pain', 1, '', 'x')", (SAM,))
    db.execute("update runs set ending = 'done' where run in ('0', '2')")
    assert [(one.id, one.urgent) for one in coaching.alerts_unseen(db, NOW + DAY, NOW - DAY)] == [(open_run, True)]
    db.execute("update runs set ending = 'done'")
    assert [(one.id, one.urgent) for one in coaching.alerts_unseen(db, NOW + DAY, NOW - DAY)] == [(grave, True)]
    coaching.note_seen(db, SAM, grave, NOW)
    assert [(one.id, one.urgent) for one in coaching.alerts_unseen(db, NOW + DAY, NOW - DAY)] == [(mild, False)]


def test_an_alert_is_sent_again_by_itself_and_counted_from_a_moment_for_its_lifter_only(db: sqlite3.Connection) -> None:
    for lifter in (SAM, MIA):
        coaching.link(db, lifter, ADA, NOW - DAY)
    alert(db, MIA, NOW)
    sams = alert(db, SAM, NOW - MINUTE)
    coaching.note_sent_again(db, sams)
    assert {one.person: one.again for one in coaching.alerts_unseen(db, NOW + DAY, NOW - DAY)} == {SAM: 1, MIA: 0}
    assert coaching.alerted_since(db, SAM, NOW - MINUTE)
    assert not coaching.alerted_since(db, SAM, NOW)
    assert not coaching.alerted_since(db, ADA, NOW - DAY)


def test_what_was_noted_of_an_alert_stays_as_it_was_first_noted(db: sqlite3.Connection) -> None:
    first, last = alert(db, SAM, NOW), alert(db, SAM, NOW)
    coaching.note_seen(db, SAM, first, NOW)
    coaching.note_unseen_told(db, SAM, first, NOW)
    coaching.note_seen(db, SAM, None, NOW + DAY)
    assert db.execute("select unseen_told_at is null from alerts where id = ?", (last,)).fetchone() == (1,)
    coaching.note_unseen_told(db, SAM, last, NOW + DAY)
    then, later = coaching.text_of(NOW), coaching.text_of(NOW + DAY)
    assert db.execute("select seen_at, unseen_told_at from alerts order by id").fetchall() == [(then, then), (later, later)]


@pytest.mark.parametrize("flow", ["referral", "limits", "limit_over", "clearance"])
def test_what_was_answered_about_a_referral_or_a_limit_is_no_alarm(db: sqlite3.Connection, flow: str) -> None:
    for lifter in (SAM, MIA):
        coaching.link(db, lifter, ADA, NOW)
    alert(db, SAM, NOW, flow)
    mias = alert(db, MIA, NOW, "pain")  # in a run of the same number
    assert unseen(db) == [(MIA, mias)]


def test_nobody_waits_for_a_coach_they_did_not_have_then_or_do_not_have_now(db: sqlite3.Connection) -> None:
    late = alert(db, SAM, NOW - MINUTE)
    coaching.link(db, SAM, ADA, NOW)
    coaching.link(db, MIA, ADA, NOW - DAY)
    assert unseen(db) == []
    db.execute("update coaches set since = ? where person = ?", (coaching.text_of(NOW - MINUTE), SAM))
    assert unseen(db) == [(SAM, late)]
    db.execute("update coach_roles set until = ? where person = ?", (coaching.text_of(NOW), ADA))
    assert unseen(db) == []
    coaching.make_coach(db, ADA, "Ada", NOW)
    assert unseen(db) == [(SAM, late)]
    coaching.withdraw(db, SAM, ADA, NOW)
    assert unseen(db) == []


def test_the_last_act_of_a_coach_is_one_that_stands_for_a_lifter_of_theirs(db: sqlite3.Connection) -> None:
    for lifter, coach in ((SAM, ADA), (MIA, ADA), (SAM, BEA)):
        coaching.link(db, lifter, coach, NOW)
    assert coaching.last_act_of(db, ADA) is None
    first = coaching.audit_act(db, SAM, ADA, "pin_depth", "parallel", "", NOW)
    mias = coaching.audit_act(db, MIA, ADA, "reviewed", "", "", NOW)
    coaching.audit_act(db, MIA, BEA, "unreviewed", str(mias), "", NOW)  # not the same coach
    coaching.audit_act(db, SAM, ADA, "unreviewed", str(mias), "", NOW)  # not the same lifter
    coaching.audit_act(db, SAM, ADA, "seen", "7", "", NOW)
    coaching.audit_act(db, SAM, BEA, "pin_load", "60", "", NOW)
    assert coaching.last_act_of(db, ADA) == (mias, MIA, "reviewed", "")
    coaching.audit_act(db, MIA, ADA, "note", str(mias), "", NOW)
    note = db.execute("select max(id) from acts where what = 'note'").fetchone()[0]
    assert coaching.last_act_of(db, ADA) == (note, MIA, "note", str(mias))
    for taken_back in (note, mias):
        coaching.audit_act(db, MIA, ADA, "unreviewed", str(taken_back), "", NOW)
    assert coaching.last_act_of(db, ADA) == (first, SAM, "pin_depth", "parallel")
    coaching.withdraw(db, SAM, ADA, NOW)
    assert coaching.last_act_of(db, ADA) is None


def test_a_coach_has_unseen_alerts_of_their_lifters_since_they_are_linked_the_latest_first(db: sqlite3.Connection) -> None:
    alert(db, SAM, NOW - DAY)
    for lifter in (SAM, MIA):
        coaching.link(db, lifter, ADA, NOW)
    assert coaching.unseen_of(db, ADA) == [], "from before"
    first, second, mias = alert(db, SAM, NOW), alert(db, SAM, NOW), alert(db, MIA, NOW)
    assert first < second < mias
    assert coaching.unseen_of(db, ADA) == [(MIA, mias), (SAM, second)]
    assert coaching.unseen_of(db, BEA) == []
    coaching.note_seen(db, MIA, mias, NOW)
    assert coaching.unseen_of(db, ADA) == [(SAM, second)]
    coaching.withdraw(db, SAM, ADA, NOW + MINUTE)
    assert coaching.unseen_of(db, ADA) == []
