"""The coach's pages as messages: who may see what, what is noted of it, paging, and nothing that breaks a message."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from companion.app.run import ScriptClock
from companion.calendar.plan import Plan
from companion.coach.caseload import CaseloadLine, day_namer, utf16_length
from companion.coach.holding import Held
from companion.coach.letters import NOT_YOURS
from companion.coach.summary import (
    AlertDetail,
    CauseSummary,
    CoachAction,
    LatestReading,
    LifterPage,
    OverruledFinding,
    SentMedia,
    lifter_page,
)
from companion.coach.triage import GROUPS
from companion.coach.views import (
    ROWS_A_PAGE,
    SUMMARY_MOST,
    TEXT_MOST,
    LifterView,
    caseload_say,
    days_say,
    lifter_shown,
    log_say,
    more_say,
    numbers_says,
    show,
    summary_say,
)
from companion.conversation.effects import Began, Record, Remind, Say, Tap
from companion.conversation.prompt import PAYLOAD_BYTES, read_start
from companion.export.questions import questions_in
from companion.pictures.series import all_charts
from companion.pictures.store import OWN_PICTURE_OF, PictureStore
from companion.port import Address
from companion.record import coaching, people
from companion.record.caseload import KeptAlert, LogPageRow
from companion.record.log import KeptFinding
from companion.record.turn import Turn
from companion.record.writer import Writer
from companion.screening.safety import Level
from companion.screening.squat_days import ToldDay
from companion.screening.standing import standing_of
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago, lines_of, record
from tests.coach.rows import KEYS, NASTY, nasty

QUESTIONS = questions_in(BOOK)
WORST = ("\u202e\u2066\n\x1b[31m<b>*x*</b> [a](http://b) \U0001f600" + "\U0001f4aa" * 4096)
"""What a lifter may type, at its worst: direction, control, markup, and 4,096 characters that count twice."""
NEVER = set("\u202e\u2066\u2028\x1b\x00\r\x85\u200b\ufeff")


@pytest.fixture
def room(tmp_path: Path) -> Iterator[Room]:
    with record(tmp_path) as one:
        yield one


def ask(room: Room, view: str, of: object = "", coach: int | None = None, now: datetime = NOW) -> list[Say]:
    return show(Turn(room.db, room.coach if coach is None else coach, now, BOOK), view, str(of))


def taps(say: Say) -> list[Tap]:
    return [tap for row in say.buttons for tap in row]


def labels(say: Say) -> list[str]:
    return [tap.label for tap in taps(say)]


def numbered(say: Say) -> list[str]:
    return [line for line in say.text.splitlines() if line.split(".")[0].isdecimal()]


def fits(say: Say) -> None:
    """What the channels can carry."""
    assert 1 <= utf16_length(say.text) <= TEXT_MOST
    assert say.text.strip()
    assert not NEVER & set(say.text)
    say.text.encode()
    for tap in taps(say):
        assert 1 <= len(tap.data.encode()) <= PAYLOAD_BYTES
        assert 1 <= utf16_length(tap.label) <= 32
        assert not NEVER & set(tap.label)
        assert read_start(tap.data) is not None
        tap.label.encode()


# the caseload -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("many", "pages", "last"), [(1, 1, 1), (10, 1, 10), (11, 2, 1), (200, 20, 10)])
def test_ten_lines_a_page_and_the_last_page_for_any_beyond(many, pages, last):
    lines = [CaseloadLine(n, f"Sam {n}", "fine", "fine", NOW) for n in range(many)]
    seen = []
    for page in range(pages):
        say, on_it = caseload_say(lines, "all", page)
        assert len(numbered(say)) == len(on_it)
        assert ("Previous" in labels(say), "Next" in labels(say)) == (page > 0, page < pages - 1)
        seen += [line.person for line in on_it]
    assert seen == list(range(many))
    beyond, on_it = caseload_say(lines, "all", 10**9)
    assert (beyond, len(on_it)) == (caseload_say(lines, "all", pages - 1)[0], last)


def test_nobody_linked_is_said_with_the_way_to_invite(room):
    (say,) = ask(room, "caseload")
    assert say.text.startswith("You have no lifters yet")
    assert [tap.data for tap in taps(say)] == ["go.invite_lifter"]


def test_the_header_counts_the_groups_and_filters_lead_to_those_that_are_not_empty(room):
    hurt, _ = room.lifter("Hal"), room.lifter("Fin")
    room.hurt(hurt, 2)
    (say,) = ask(room, "caseload")
    assert say.text.splitlines()[0] == "2 lifters: 1 hurt, 1 fine"
    assert numbered(say) == ["1. Hal: hurt on Tuesday: lower back, 5 of 10", "2. Fin: fine, last answer yesterday"]
    assert [(tap.label, tap.data) for tap in taps(say)] == [
        ("1 Hal", f"go.lifter.{hurt}"), ("2 Fin", f"go.lifter.{hurt + 1}"), ("Hurt (1)", "go.caseload.hurt"),
        ("Fine (1)", "go.caseload.fine")]
    (only,) = ask(room, "caseload", "hurt")
    assert numbered(only) == ["1. Hal: hurt on Tuesday: lower back, 5 of 10"]
    assert labels(only) == ["1 Hal", "All (2)", "Fine (1)"]


def test_the_quiet_filter_lists_everybody_who_is_silent_whatever_else_is_the_matter(room):
    hurt, shy = room.lifter("Hal", answered=20), room.lifter("Shy", answered=30)
    room.hurt(hurt, 20)
    (say,) = ask(room, "caseload", "quiet")
    assert [row.split(":")[0] for row in numbered(say)] == ["1. Hal", "2. Shy"]
    assert all("silent for " in row for row in numbered(say))
    assert "Quiet (2)" in labels(ask(room, "caseload")[0])
    assert shy in [one.person for one in lines_of(room.db, room.coach, NOW) if one.as_in("quiet")]


def test_turning_pages_stays_within_the_group():
    lines = [CaseloadLine(n, "Sam", GROUPS[n % 2], "words", NOW) for n in range(60)]
    say, _ = caseload_say(lines, "referred", 1)
    assert [tap.data for tap in taps(say) if tap.label in ("Previous", "Next")] == ["go.caseload.referred-0", "go.caseload.referred-2"]


@pytest.mark.parametrize("of", ["", "all", "nonsense", "hurt", "-1", "all--1", "all-x", "hurt-99999999999", "\u0665", "all-\u0665",
                                "a" * 500, WORST])
def test_anything_asked_of_the_caseload_gives_a_page(room, of):
    room.lifter()
    (say,) = ask(room, "caseload", of)
    assert numbered(say)
    fits(say)


def test_the_caseload_is_noted_once_a_day_for_each_lifter_whose_line_was_shown(room):
    people_ = [room.lifter(f"Sam {n}") for n in range(11)]
    ask(room, "caseload")
    ask(room, "caseload", now=NOW + timedelta(hours=3))
    assert [room.looks(one) for one in people_].count(["Ada: caseload"]) == 10
    assert [room.looks(one) for one in people_].count([]) == 1, "the eleventh is on a page that nobody looked at"
    ask(room, "caseload", now=NOW + timedelta(days=1))
    assert [room.looks(one) for one in people_].count(["Ada: caseload"] * 2) == 10


def test_another_coach_s_look_on_the_same_day_is_noted_too(room):
    sam = room.lifter()
    bea = room.a_coach("Bea")
    coaching.link(room.db, sam, bea, ago(1))
    ask(room, "caseload")
    ask(room, "caseload", coach=bea)
    assert room.looks(sam) == ["Ada: caseload", "Bea: caseload"]


# who may see ------------------------------------------------------------------------------------------------

EVERY_VIEW = [("lifter", ""), *(("lifter", f"-{what}") for what in ("numbers", "days", "charts", "more", "chart_pain", "nonsense")),
              ("lifter_log", ""), ("lifter_log", "-0")]


@pytest.mark.parametrize(("view", "what"), EVERY_VIEW)
def test_whoever_is_not_the_coach_hears_what_somebody_who_does_not_exist_would_give(room, view, what):
    sam = room.lifter()
    room.hurt(sam, 1)
    former, bea = room.a_coach("Cy"), room.a_coach("Bea")
    coaching.link(room.db, sam, former, ago(20))
    coaching.withdraw(room.db, sam, former, ago(10))
    resigned = room.a_coach("Di")
    coaching.link(room.db, sam, resigned, ago(20))
    coaching.end_coach(room.db, resigned, ago(5))
    before = room.looks(sam)
    nobody = ask(room, view, f"999999{what}")
    assert nobody[0].text == NOT_YOURS
    for coach in (former, bea, resigned, sam, 0, 999999):
        assert ask(room, view, f"{sam}{what}", coach) == nobody
        assert lifter_shown(room.db, coach, view, f"{sam}{what}") is None
    assert room.looks(sam) == before, "who sees nothing has not looked"


@pytest.mark.parametrize("view", ["lifter", "lifter_log", "lifter_secrets", ""])
@pytest.mark.parametrize("of", ["", "x", "-1", "17-", "1.5", "0", "9" * 18, "9" * 40, "\u0661", " 1", "1\n", "1-numbers-2", WORST])
def test_what_can_not_be_read_is_nobody(room, view, of):
    room.lifter()
    (say,) = ask(room, view, of)
    assert say.text == NOT_YOURS
    fits(say)


def test_a_view_that_is_none_shows_nobody(room):
    assert ask(room, "lifter_secrets", room.lifter())[0].text == NOT_YOURS


def test_each_look_at_one_lifter_is_noted_in_words_they_can_read(room):
    sam = room.lifter()
    for view, what in EVERY_VIEW:
        ask(room, view, f"{sam}{what}")
    assert room.looks(sam) == [f"Ada: {what}" for what in (
        "summary", "numbers", "squat days", "charts", "alerts and actions", "chart: pain", "summary", "log, page 1", "log, page 1")]
    assert lifter_shown(room.db, room.coach, "lifter", f"{sam}-days") == sam


# one lifter -------------------------------------------------------------------------------------------------


def full(room: Room, name: str = "Sam") -> int:
    """A lifter of whom there is something of everything."""
    sam = room.lifter(name)
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 7.0, "left_2": 7.4, "right_1": 12.0, "right_2": 12.2}, 9)
    room.run(sam, "squat_after", {"done": "yes", "back": "still", "kept": "kept", "hurt": "no", "load": 80.0, "note": "easy"}, 3)
    room.hurt(sam, 2)
    room.results(sam, 5)
    for cause, ruling, because in (("length", "likely", "Heels up: later."), ("strength", "ruled_out", "Arms forward: clean."),
                                   ("control", "too_close", "")):
        room.find(sam, cause, ruling, 5, because)
    room.find(sam, "overruled.control", "ruled_out", 1, "seen in person", "overruled by coach Ada")
    room.find(sam, "depth.step", "parallel", 3, "One clean squat day.")
    room.find(sam, "depth.pin", "a_little_above", 1, "saw it", "set by coach Ada")
    room.find(sam, "load.limit", "64", 5)
    room.find(sam, "squat.plan", '{"weekly":{"TU":"18:00"}}')
    room.keep(sam, 1, Remind("retest", "retest", "2026-04-01"))
    coaching.audit_act(room.db, sam, room.coach, "pin_depth", "a_little_above", "saw it", ago(1))
    return sam


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
        "Next reminder: test again, 2026-04-01 10:00", "Last alert Tuesday: something hurt (back)",
        "14 answers, last Tuesday; not reviewed yet"]
    assert [tap.data for tap in taps(say)] == [
        f"go.lifter.{sam}-numbers", f"go.lifter.{sam}-days", f"go.lifter_log.{sam}-0", f"go.lifter.{sam}-charts", f"go.lifter_report.{sam}",
        f"go.lifter.{sam}-thread", f"go.coach_note.{sam}", f"go.coach_act.{sam}-reviewed", f"go.lifter.{sam}-why", f"go.lifter.{sam}-more",
        "go.caseload"]


def test_numbers_stand_with_their_side_line_and_error(room):
    rests, numbers = ask(room, "lifter", f"{full(room)}-numbers")
    assert "Strength: ruled out, by: Arms forward: clean." in rests.text
    assert "Knee to wall, left: 7.2 cm" in numbers.text
    assert "· enough for most squats, from: clearly under the 10 cm line (common practice)" in numbers.text
    assert numbers.text.count("Error: ") == 2


def test_squat_days_alerts_with_their_answers_and_acts(room):
    sam = full(room)
    (days,) = ask(room, "lifter", f"{sam}-days")
    assert "· Mon 9 Mar, 80 kg, depth kept, back still, “easy”" in days.text
    (more,) = ask(room, "lifter", f"{sam}-more")
    assert "· Tuesday, no squats or tests today: something hurt (back)\nAnswered: where: back; bad: 5.0" in more.text
    assert "· yesterday, Ada: pin depth, a little above parallel (saw it)" in more.text
    assert [tap.data for tap in taps(more)][:11] == [f"go.coach_act.{sam}-{what}" for what in (
        "pin_depth", "pin_load", "raise_load", "pin_setup", "drill", "ask_for", "retest", "end_retest", "overrule", "private",
        "guess")]


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


# the log ----------------------------------------------------------------------------------------------------


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


# nothing breaks a message -----------------------------------------------------------------------------------


@pytest.mark.parametrize("name", [WORST, "", " ", "\u202e", "*_`<b>", "\U0001f468\u200d\U0001f469\u200d\U0001f467" * 40, "x" * 4096])
def test_no_name_breaks_a_page(room, name):
    sam = full(room, name)
    for view, of in (("caseload", ""), *((view, f"{sam}{what}") for view, what in EVERY_VIEW)):
        for say in ask(room, view, of):
            fits(say)


def test_the_worst_of_everything_still_fits(room):
    sam = full(room, WORST)
    room.run(sam, "squat_after", {"done": "yes", "back": "moved", "hurt": "yes", "note": WORST}, 1)
    room.run(sam, WORST, {WORST: WORST}, 1)
    for name in ("length", "strength", "control", "overall", "depth.step", "depth.pin", "load.pin", "drill.pin", "squat.goal",
                 "overruled.length", "overruled.strength", "overruled.control", "retest.change"):
        room.find(sam, name, WORST, 1, WORST, WORST)
    coaching.audit_act(room.db, sam, room.coach, WORST, WORST, WORST, ago(1))
    for view, of in (("caseload", ""), *((view, f"{sam}{what}") for view, what in EVERY_VIEW)):
        for say in ask(room, view, of):
            fits(say)
    assert utf16_length(ask(room, "lifter", sam)[0].text) <= SUMMARY_MOST


awful = st.one_of(nasty, st.sampled_from(NASTY).map(lambda text: text * 60), st.just(WORST[:400]))
moments = st.integers(-10**8, 10**8).map(lambda seconds: NOW + timedelta(seconds=seconds))
values = st.one_of(st.none(), st.floats(), awful)
overruled = st.none() | st.builds(OverruledFinding, awful, awful, awful, awful, moments)
lines = st.builds(CaseloadLine, st.integers(1, 2**53), awful, st.sampled_from(GROUPS), awful, moments)
held = st.builds(Held, st.sampled_from(("Depth", "Load")), awful, awful, awful, st.none() | st.dates(), st.none() | st.dates(), awful)
pages = st.builds(
    LifterPage, person=st.integers(1, 2**53), name=awful, zone=st.just("Europe/Berlin"), system=st.sampled_from(("metric", "imperial")),
    gone=st.none() | st.tuples(moments, awful),
    safety=st.builds(standing_of, st.sampled_from(["", *(one.value for one in Level)]), st.none() | moments, awful,
                     st.none() | moments, st.just(NOW), st.just("Europe/Berlin")),
    went=st.none() | st.builds(KeptFinding, awful, awful, awful, moments), over=awful, told_at=awful, overall=awful, overall_words=awful,
    causes=st.tuples(*[st.builds(CauseSummary, st.just(name), awful, awful, overruled)
                       for name in ("length", "strength", "control")]), overruled=st.just(()),
    numbers=st.lists(st.builds(LatestReading, st.just("leg_raise"), st.just("left"), moments, awful, st.integers(0, 9), awful,
                               st.tuples(awful, awful), awful), max_size=4).map(tuple),
    days=st.lists(st.builds(ToldDay, st.dates(date(2020, 1, 1)), awful, awful, awful, load=st.none() | st.floats(0, 500),
                            note=awful), max_size=5).map(tuple),
    held=st.lists(held, max_size=5).map(tuple), change=st.none() | st.builds(KeptFinding, awful, awful, awful, moments), trial=awful,
    goal=awful,
    plan=st.just(Plan()), plan_words=awful, coming=st.just(()), next_reminder=st.none(),
    media=st.lists(st.builds(SentMedia, awful, awful, awful, awful, moments), max_size=9).map(tuple),
    alarms=st.lists(st.builds(AlertDetail, st.builds(KeptAlert, moments, awful, awful, awful, awful),
                              st.lists(st.tuples(awful, awful), max_size=6).map(tuple)), max_size=5).map(tuple),
    acts=st.lists(st.builds(CoachAction, moments, awful, awful, awful, awful), max_size=5).map(tuple),
    reviewed_at=st.just("") | moments.map(datetime.isoformat), answers=st.integers(0, 10**9), answered_at=st.none() | moments)
log_rows = st.builds(
    lambda key, *rest: LogPageRow(rest[0], rest[1], key[0], key[1], *rest[2:]), st.sampled_from(KEYS) | st.tuples(awful, awful),
    st.integers(1, 2**53), moments, awful, awful, values, awful, st.sampled_from(("ok", "skipped", "withdrawn", "in_pain")),
    st.none() | st.integers(1), st.none() | awful, st.booleans())


@pytest.fixture
def look(room: Room) -> LifterView:
    return LifterView(room.db, room.coach, room.lifter(WORST), NOW, "Europe/Berlin", day_namer("Europe/Berlin", NOW))


@given(st.lists(lines, max_size=25), awful | st.sampled_from(GROUPS), st.integers(0, 10**9))
@settings(max_examples=30, deadline=None)
def test_every_page_of_any_caseload_fits(some, group, page):
    fits(caseload_say(some, group, page)[0])


@given(page=pages)
@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
def test_every_message_of_any_lifter_fits(look, page):
    for say in (summary_say(look, page), *numbers_says(look, page), days_say(look, page), more_say(look, page)):
        fits(say)
    assert utf16_length(summary_say(look, page).text) <= SUMMARY_MOST


@given(rows=st.lists(log_rows, max_size=15), page=st.integers(0, 10**6))
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
def test_every_page_of_any_log_fits_and_leaves_no_row_out(look, rows, page):
    say = log_say(look, rows, page, page + 2, QUESTIONS, BOOK)
    fits(say)
    assert sum(line.startswith("#") for line in say.text.splitlines()) == len(rows)


@given(of=st.text() | st.from_regex(r"[0-9]{1,20}-?[a-z0-9_]{0,40}", fullmatch=True),
       view=st.sampled_from(("caseload", "lifter", "lifter_log")))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_anything_may_be_asked(look, of, view):
    for say in show(Turn(look.db, look.coach, NOW, BOOK), view, of):
        fits(say)


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


def measured(room: Room, name: str) -> int:
    """A lifter whose left calf was measured on two days, by the same method."""
    sam = room.lifter(name)
    for days, wall in ((40, 7.0), (2, 12.0)):
        room.run(sam, "knee_to_wall", {"method": "tape", "left_1": wall, "left_2": wall, "left_limit": "calf"}, days)
    return sam


def test_one_lifter_s_two_days_are_compared_with_the_error_of_the_test(room):
    sam = measured(room, "Sam")
    (choice,) = ask(room, "compare", sam)
    (days, *_) = taps(choice)
    assert (days.label, days.data) == ("31 Jan and 10 Mar", f"go.compare.{sam}-2026-01-31-2026-03-10")
    (say,) = ask(room, "compare", days.data.removeprefix("go.compare."))
    assert "Knee to wall, left: 7 cm then, 12 cm now. 5 cm more than before, which is beyond measurement error" in say.text
    assert room.looks(sam) == ["Ada: numbers, two days compared"]


def test_two_lifters_stand_side_by_side_and_both_read_that_they_were_looked_at(room):
    sam, mia = measured(room, "Sam"), room.lifter("Mia")
    room.find(mia, "load.limit", "64", 5)
    (say,) = ask(room, "compare", "sam and mia")
    assert "· Knee to wall, left: 12 cm; not measured" in say.text
    assert "· Load: none set; at most 64 kg" in say.text
    assert room.looks(sam) == room.looks(mia) == ["Ada: numbers, compared"]


@pytest.mark.parametrize("asked", ["sam and nobody", "nobody", "sam, mia and lou and kim", "1-2026-99-99-x", "-1"])
def test_a_comparison_of_nobody_in_particular_says_how_to_ask(room, asked):
    measured(room, "Sam")
    assert ask(room, "compare", asked)[0].text.startswith("Name two of your lifters")


@pytest.mark.parametrize("asked", ["sam 31 january and 10 march", "sam 10 mar and 31.1.", "sam 2026-01-31 to 2026-03-10"])
def test_two_days_are_compared_as_they_are_typed(room, asked):
    sam = measured(room, "Sam")
    (say,) = ask(room, "compare", asked)
    assert say.text.startswith("Sam: 31 Jan 2026 and 10 Mar 2026")
    assert room.looks(sam) == ["Ada: numbers, two days compared"]


def test_another_s_lifter_is_compared_with_nobody(room):
    sam = measured(room, "Sam")
    bea = room.a_coach("Bea")
    for of in (str(sam), f"{sam}-2026-01-31-2026-03-10", "sam", "sam and sam"):
        (say,) = show(Turn(room.db, bea, NOW, BOOK), "compare", of)
        assert say.text.startswith("Name two of your lifters")
    assert room.looks(sam) == []


# why ------------------------------------------------------------------------------------------------------------


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
