"""Which answers go with time: what decisions rest on comes out the same before and after."""

from __future__ import annotations

from dataclasses import fields
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from companion.app.retention import AGREEMENTS, KEPT_BY_QUESTION, KEPT_OPEN, kept_runs, months_before, without_abandoned
from companion.conversation.flow import Known
from companion.conversation.session import Frame, Session
from companion.record.expiry import OldRun
from companion.record.log import KeptFact, LogRow
from companion.record.timestamps import text_of
from companion.screening.screen import LoggedAnswer, about_from, screen_from
from companion.screening.squat_days import trial_seed
from flows.catalogue import BOOK, CATALOGUE
from flows.changes import change_facts
from flows.day_facts import day_facts, steps_now, verdict_now
from flows.outcome_facts import concluded, last_numbers
from tests.screening.build import records

NOW = datetime(2026, 6, 10, 18, tzinfo=UTC)
CUT = months_before(NOW, 6)


class Log:
    """A log to build, run by run."""

    def __init__(self) -> None:
        self.runs: list[OldRun] = []
        self.rows: list[LogRow] = []
        self.facts: dict[str, KeptFact] = {}

    def run(self, flow: str, at: datetime, values: dict[str, Any], ending: str | None = "done", status: str = "ok", asked: str = "",
            method: str = "", placement: str = "") -> str:
        name = str(len(self.runs) + 1)
        self.runs.append(OldRun(name, flow, at, at + timedelta(minutes=len(values)) if ending else at, ending, asked))
        for minute, (key, value) in enumerate(values.items()):
            self.rows.append(LogRow(len(self.rows) + 1, at + timedelta(minutes=minute), flow, 1, name, key, "", str(value), value, "",
                                    status, method, placement, None, ending, asked))
            if status == "ok":
                self.facts[f"{flow}.{key}"] = KeptFact(value, False, text_of(at))
        return name

    def fact(self, name: str, value: Any, at: datetime = NOW) -> None:
        self.facts[name] = KeptFact(value, True, text_of(at))

    def stay(self) -> frozenset[str]:
        return kept_runs(self.runs, self.rows, self.facts, CUT)

    def known(self, only: frozenset[str] | None = None) -> Known:
        facts = {name: kept.value for name, kept in self.facts.items()}
        answers = [LoggedAnswer(row.flow, row.run, row.key, row.value, row.status, row.ending, row.method, row.placement, row.at, row.asked)
                   for row in self.rows if only is None or row.run in only]
        return Known(facts | {"today": NOW.date().isoformat(), "person": "1"}, NOW, lambda: answers)


def ago(days: float) -> datetime:
    return NOW - timedelta(days=days)


WALL = {"method": "tape", "left_1": 9.0, "left_limit": "calf", "right_1": 12.0, "right_limit": "neither"}


@pytest.fixture
def log() -> Log:
    return Log()


@pytest.mark.parametrize(("months", "before"), [
    (1, "2026-06-30"), (2, "2026-05-31"), (5, "2026-02-28"), (7, "2025-12-31"), (19, "2024-12-31"), (29, "2024-02-29")])
def test_months_are_calendar_months(months, before):
    assert months_before(datetime(2026, 7, 31, 9, tzinfo=UTC), months).date().isoformat() == before


def test_old_answers_go_and_young_ones_stay(log):
    old, newer, young = (log.run("film", ago(days), {"film": "x"}) for days in (400, 300, 100))
    assert log.stay() == {young}
    assert {old, newer}.isdisjoint(log.stay())


def test_the_newest_finished_run_of_a_flow_stays_however_old(log):
    log.run("film", ago(900), {"film": "a"})
    newest = log.run("film", ago(800), {"film": "b"})
    log.run("film", ago(700), {"film": "c"}, ending="left")
    assert log.stay() == {newest}


def test_what_somebody_agreed_to_stays_every_time(log):
    agreed = {log.run(flow, ago(days), {"consent": "yes"}) for flow in AGREEMENTS for days in (900, 800)}
    assert log.stay() == agreed
    assert {CATALOGUE.consent_again, *(one.flow for one in CATALOGUE.consents)} <= AGREEMENTS
    assert set(BOOK.flows) >= (AGREEMENTS | KEPT_BY_QUESTION | KEPT_OPEN)


def test_a_run_that_pain_ended_stays_while_what_it_made_void_does(log):
    log.run("knee_to_wall", ago(800), WALL)
    log.run("knee_to_wall", ago(700), WALL)
    pain = log.run("knee_to_wall", ago(600), {"method": "tape", "left_1": 9.0}, ending="pain")
    assert pain in log.stay()
    known = log.known(log.stay())
    assert screen_from(known.answers()).get("knee_to_wall") is None


def test_a_side_told_only_long_ago_stays(log):
    both = log.run("knee_to_wall", ago(800), WALL)
    for days in range(700, 300, -100):
        log.run("knee_to_wall", ago(days), {"method": "tape", "left_1": 10.0, "left_limit": "calf"})
    assert both in log.stay()
    assert screen_from(log.known(log.stay()).answers())["knee_to_wall"].right_1 == 12.0


def test_the_days_before_a_result_that_a_retest_averages_stay_with_their_warm_up(log):
    for days in (900, 800, 700, 600):
        log.run("warm_up", ago(days) - timedelta(hours=1), {"legs": "done"})
        log.run("knee_to_wall", ago(days), WALL)
    log.fact("outcome.at", ago(500).isoformat())
    for days in (20, 10, 5):
        log.run("warm_up", ago(days) - timedelta(hours=1), {"legs": "done"})
        log.run("knee_to_wall", ago(days), WALL | {"left_1": 14.0})
    stay = log.stay()
    assert {"3", "4", "5", "6", "7", "8"} <= stay
    assert {"1", "2"}.isdisjoint(stay)
    assert change_facts(log.known(stay))["knee_to_wall"] == change_facts(log.known())["knee_to_wall"]


def test_a_back_that_moved_long_ago_still_holds_the_depth(log):
    log.fact("outcome.at", ago(400).isoformat())
    log.fact("depth.keep", "parallel")
    moved = log.run("squat_day", ago(390), {"load": 60.0}, asked="")
    after = log.run("squat_after", ago(390) + timedelta(hours=2), {"kept": "kept", "back": "moved"})
    for days in range(380, 0, -30):
        log.run("squat_day", ago(days), {"load": 60.0})
        log.run("squat_after", ago(days) + timedelta(hours=2), {"kept": "higher", "back": "still"})
    stay = log.stay()
    assert {moved, after} <= stay
    assert steps_now(log.known(stay))[0] == steps_now(log.known())[0]
    assert steps_now(log.known(stay))[0].depth.value == "a_little_above"


def test_squat_days_before_the_results_go_but_the_load_of_the_last_stays_known(log):
    log.run("about_you", ago(900), {"load": 140.0})
    for days in range(890, 810, -10):
        log.run("squat_day", ago(days), {"load": 80.0})
    loaded = log.run("squat_day", ago(800), {"load": 60.0})
    log.run("squat_after", ago(800), {"kept": "kept", "back": "still"})
    for days in (700, 600, 500):
        log.run("squat_day", ago(days), {"load": "same"})
        log.run("squat_after", ago(days), {"kept": "kept", "back": "still"})
    stay = log.stay()
    assert "2" not in stay
    assert loaded in stay
    assert day_facts(log.known(stay))["last_load"] == 60.0


def test_the_lots_of_a_trial_are_counted_as_before(log):
    log.run("trial", ago(900), {"join": "yes", "next": "later"})
    for days in range(880, 300, -40):
        log.run("squat_day", ago(days), {"lot": "draw", "load": 60.0})
        log.run("squat_after", ago(days), {"kept": "kept", "back": "still", "felt": 3.0})
    log.run("trial", ago(290), {"join": "yes", "next": "later"})
    log.run("squat_day", ago(280), {"load": 60.0})
    stay = log.stay()
    assert "1" in stay
    assert trial_seed(log.known(stay).answers(), "1") == trial_seed(log.known().answers(), "1")
    assert verdict_now(log.known(stay)) == verdict_now(log.known())


def test_the_answer_to_a_question_of_safety_that_is_not_asked_every_time_stays(log):
    cleared = log.run("safety_check", ago(500), {"history": "yes", "cleared": "yes", "cleared_at": "in May", "limits": "none", "pain": 0.0})
    log.run("safety_check", ago(450), {"history": "yes", "same_history": "yes", "pain": 2.0})
    newest = log.run("safety_check", ago(400), {"history": "yes", "same_history": "yes", "pain": 1.0})
    assert log.stay() == {cleared, newest}


def test_pain_as_it_was_told_before_the_results_stays_to_be_held_against_pain_since(log):
    for days, pain in ((900, 1.0), (800, 7.0), (700, 3.0), (600, 3.0)):
        log.run("safety_check", ago(days), {"pain": pain})
    log.fact("outcome.at", ago(750).isoformat())
    stay = log.stay()
    assert stay == {"2", "4"}
    assert change_facts(log.known(stay))["pain"] == change_facts(log.known())["pain"]


def _runs_drawn() -> st.SearchStrategy[list[tuple[Any, ...]]]:
    endings = st.sampled_from(["done", "done", "done", "left", "pain", None])
    statuses = st.sampled_from(["ok", "ok", "ok", "skipped", "withdrawn", "in_pain"])
    tests = st.sampled_from(["squat_look", "leg_raise", "knee_to_wall", "hip_fold"]).flatmap(
        lambda test: st.tuples(st.just(test), records(test)))
    after = st.fixed_dictionaries({}, optional={
        "kept": st.sampled_from(["kept", "deeper", "higher"]), "back": st.sampled_from(["still", "moved"]),
        "seen_by": st.just("film"), "felt": st.floats(0, 10), "hurt": st.sampled_from(["yes", "no"])})
    day = st.fixed_dictionaries({"squatted": st.just("done")}, optional={
        "load": st.sampled_from([40.0, 60.0, "same", "none"]), "lot": st.just("draw"), "done": st.sampled_from(["yes", "no"])})
    others = st.one_of(st.tuples(st.just("squat_after"), after), st.tuples(st.just("squat_day"), day), st.tuples(
        st.just("about_you"), st.fixed_dictionaries({}, optional={"height": st.floats(150, 200), "load": st.floats(20, 150)})),
        st.tuples(st.just("safety_check"), st.fixed_dictionaries({"pain": st.integers(0, 10).map(float)})),
        st.tuples(st.just("trial"), st.just({"join": "yes"})))
    return st.lists(st.tuples(st.one_of(tests, others), endings, statuses, st.integers(1, 40)), max_size=14)


@settings(max_examples=150)
@given(_runs_drawn(), st.integers(1, 900), st.integers(1, 900), st.booleans(), st.booleans(), st.booleans())
def test_whatever_was_told_what_it_leads_to_stays_the_same(drawn, told, before, keep, pinned, with_before):
    log, at = Log(), ago(1000)
    for (flow, said), ending, status, days in drawn:
        at += timedelta(days=days)
        values = said if isinstance(said, dict) else {
            ("with" if field.name == "with_" else field.name): value for field in fields(said)
            if field.name not in ("method", "placement", "effort") and (value := getattr(said, field.name)) is not None}
        if values:
            log.run(flow, at, values, ending, status, method=getattr(said, "method", None) or "",
                    placement=getattr(said, "placement", None) or "")
    log.fact("outcome.at", ago(min(told, before)).isoformat())
    if with_before:
        log.fact("outcome.before", ago(max(told, before)).isoformat())
    if keep:
        log.fact("depth.keep", "parallel")
    if pinned:
        log.fact("depth.pin", "a_little_above")
        log.fact("depth.pinned_on", ago(before).date().isoformat())
    stay = log.stay()
    full, thinned = log.known(), log.known(stay)
    for end in (NOW, ago(told), ago(before)) if with_before else (NOW, ago(min(told, before))):
        assert screen_from(row for row in thinned.answers() if row.at <= end) == screen_from(
            row for row in full.answers() if row.at <= end)
    assert about_from(thinned.answers()) == about_from(full.answers())
    assert steps_now(thinned) is None if steps_now(full) is None else steps_now(thinned)[0] == steps_now(full)[0]
    assert trial_seed(thinned.answers(), "1") == trial_seed(full.answers(), "1")
    assert verdict_now(thinned) == verdict_now(full)
    assert last_numbers(thinned) == last_numbers(full)
    assert concluded(thinned)[0] == concluded(full)[0]
    once = log.rows
    log.rows = [row for row in once if row.run in stay]
    log.runs = [run for run in log.runs if run.run in stay]
    assert log.stay() == stay  # a second night takes nothing more


# sessions ---------------------------------------------------------------------------------------------------


def frame(flow: str, run: str) -> Frame:
    return Frame(flow, 1, run, "q")


def session(at: datetime, *stack: Frame, parked: tuple[tuple[Frame, ...], ...] = (), last: Frame | None = None) -> Session:
    return Session(stack=stack, parked=parked, last=last, runs=9, at=text_of(at))


def test_what_was_left_half_done_long_ago_is_given_up():
    old = session(ago(400), frame("knee_to_wall", "3"), parked=((frame("hip_fold", "2"),),), last=frame("film", "1"))
    left = without_abandoned(old, CUT, {"1", "2", "3"})
    assert (left.stack, left.parked, left.last, left.runs) == ((), (), None, 9)


@pytest.mark.parametrize("flow", ["welcome", "safety_check", "pain", "morning"])
def test_open_questions_of_safety_and_consent_stay_open(flow):
    before = session(ago(400), frame("knee_to_wall", "1"), frame(flow, "3"))
    assert without_abandoned(before, CUT, {"1", "3"}).stack == before.stack


def test_who_wrote_lately_loses_only_what_was_parked_long_ago():
    young, old = (frame("hip_fold", "8"),), (frame("leg_raise", "2"),)
    before = session(ago(1), frame("knee_to_wall", "3"), parked=(old, young), last=frame("film", "1"))
    left = without_abandoned(before, CUT, {"1", "2", "3"})
    assert (left.stack, left.parked, left.last) == (before.stack, (young,), None)
