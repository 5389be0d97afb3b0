"""The coach's pages as messages: who may see what, and nothing that breaks a message."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from companion.coach.caseload import CaseloadLine, utf16_length
from companion.coach.caseload_messages import caseload_say
from companion.coach.holding import Held
from companion.coach.letters import NOT_YOURS
from companion.coach.lifter_messages import SUMMARY_MOST, days_say, more_say, numbers_says, summary_say
from companion.coach.log_messages import log_say
from companion.coach.look import LifterView
from companion.coach.summary import (
    AlertDetail,
    CauseSummary,
    LifterPage,
    SentMedia,
)
from companion.coach.triage import GROUPS
from companion.coach.views import lifter_shown, show
from companion.export.questions import questions_in
from companion.record import coaching
from companion.record.caseload import KeptAlert
from companion.record.coaching import ActRow
from companion.record.log import KeptFinding, LogRow
from companion.record.timestamps import text_of
from companion.record.turn import Turn
from companion.screening.safety import Level
from companion.screening.squat_days import ToldDay
from companion.screening.standing import standing_of
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago
from tests.coach.pages import WORST, ask, fits, full
from tests.coach.rows import KEYS, NASTY, nasty

QUESTIONS = questions_in(BOOK)
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
overruled = st.none() | st.builds(KeptFinding, awful, awful, awful, moments)
lines = st.builds(CaseloadLine, st.integers(1, 2**53), awful, st.sampled_from(GROUPS), awful, moments)
held = st.builds(Held, st.sampled_from(("Depth", "Load")), awful, awful, awful, st.none() | st.dates(), st.none() | st.dates(), awful)
pages = st.builds(
    LifterPage, zone=st.just("Europe/Berlin"), system=st.sampled_from(("metric", "imperial")),
    gone=st.none() | st.tuples(moments, awful),
    safety=st.builds(standing_of, st.sampled_from(["", *(one.value for one in Level)]), st.none() | moments, awful,
                     st.none() | moments, st.just(NOW), st.just("Europe/Berlin")),
    went=st.none() | st.builds(KeptFinding, awful, awful, awful, moments), over=awful, told_at=awful, overall=awful, overall_words=awful,
    causes=st.tuples(*[st.builds(CauseSummary, st.just(name), awful, awful, overruled)
                       for name in ("length", "strength", "control")]),
    days=st.lists(st.builds(ToldDay, st.dates(date(2020, 1, 1)), awful, awful, awful, load=st.none() | st.floats(0, 500),
                            note=awful), max_size=5).map(tuple),
    held=st.lists(held, max_size=5).map(tuple), change=st.none() | st.builds(KeptFinding, awful, awful, awful, moments), trial=awful,
    goal=awful,
    plan_words=awful, coming=st.just(()), waiting=st.just(()), paused=st.booleans(), retest_to_come=st.booleans(),
    media=st.lists(st.builds(SentMedia, awful, awful, moments), max_size=9).map(tuple),
    alarms=st.lists(st.builds(AlertDetail, st.builds(KeptAlert, moments, awful, awful, awful, awful, st.none() | moments, awful),
                              st.lists(st.tuples(awful, awful), max_size=6).map(tuple)), max_size=5).map(tuple),
    acts=st.lists(st.builds(ActRow, moments.map(text_of), awful, awful, awful, awful), max_size=5).map(tuple),
    reviewed_at=st.just("") | moments.map(datetime.isoformat), answers=st.integers(0, 10**9), answered_at=st.none() | moments)
log_rows = st.builds(
    lambda key, id, at, side, raw, value, unit, status, replaces: LogRow(
        id, at, key[0], 1, "1", key[1], side, raw, value, unit, status, "", "", replaces, "done", ""),
    st.sampled_from(KEYS) | st.tuples(awful, awful), st.integers(1, 30), moments, awful, awful, values, awful,
    st.sampled_from(("ok", "skipped", "withdrawn", "in_pain")), st.none() | st.integers(1, 30))


@pytest.fixture
def look(room: Room) -> LifterView:
    return LifterView(room.db, room.coach, room.lifter(WORST), NOW, "Europe/Berlin")


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
    say = log_say(look, rows, rows, page, page + 2, BOOK)
    fits(say)
    assert sum(line.startswith("#") for line in say.text.splitlines()) == len(rows)


@given(of=st.text() | st.from_regex(r"[0-9]{1,20}-?[a-z0-9_]{0,40}", fullmatch=True),
       view=st.sampled_from(("caseload", "lifter", "lifter_log")))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_anything_may_be_asked(look, of, view):
    for say in show(Turn(look.db, look.coach, NOW, BOOK), view, of):
        fits(say)
