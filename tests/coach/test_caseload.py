"""Who needs a coach first: one line a lifter, in the first group that holds."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.coach.caseload import REASON_MOST, CaseloadLine, shortened, utf16_length
from companion.coach.report_sections import report_content
from companion.coach.since import news_of
from companion.coach.summary import lifter_page
from companion.coach.triage import GROUPS, MOVED_BACK
from companion.conversation.effects import Alert, Record
from companion.export.table import plain
from companion.record import coaching, people, reminders
from companion.record.caseload import caseload_rows
from companion.record.context import known_of, standing_now
from companion.screening.depth import Band
from companion.screening.depth_progression import DepthDay, steps_from
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago, lines_of


def line(room: Room, person: int) -> CaseloadLine:
    return next(one for one in lines_of(room.db, room.coach, NOW) if one.person == person)


def told(room: Room, person: int) -> tuple[str, str]:
    return line(room, person).group, line(room, person).words


def a_retest(room: Room, person: int, due: float, state: str = "open", settled: float | None = None) -> None:
    reminders.add(room.db, person, "retest", "retest", f"{ago(due):%Y-%m-%d %H:%M}", "UTC", ago(due), ago(due + 30))
    if state != "open":
        id = room.db.execute("select max(id) from reminders").fetchone()[0]
        reminders.settle(room.db, id, state, ago(due if settled is None else settled))


def test_somebody_with_nothing_the_matter_is_fine(room):
    sam = room.lifter()
    room.find(sam, "depth.step", "parallel")
    assert told(room, sam) == ("fine", "fine, last answer yesterday; keeps to parallel")


def test_pain_questions_make_a_line_that_says_where_and_how_bad(room):
    sam = room.lifter()
    room.hurt(sam, 2)
    assert told(room, sam) == ("hurt", "hurt on Tuesday: lower back, 5 of 10")


def test_an_alert_that_sends_somebody_to_be_seen_says_so(room):
    sam = room.lifter()
    room.hurt(sam, 1, "emergency", "chest")
    assert line(room, sam).words == "sent to emergency care; hurt yesterday: chest, breath or faint, 5 of 10"


def test_a_morning_that_is_not_back_to_usual_is_hurt_too(room):
    sam = room.lifter()
    room.run(sam, "morning", {"how": "same"}, 1, alert=Alert("not_today", "yesterday something hurt"))
    assert told(room, sam) == ("hurt", "not back to usual yesterday: same")


def test_an_alert_from_a_safety_check_is_no_hurt(room):
    sam = room.lifter()
    room.run(sam, "safety_check", {"leg_signs": "yes"}, 1, alert=Alert("clinician", "the safety check says"))
    room.find(sam, "safety.level", "clinician", 1)
    assert told(room, sam) == ("referred", "a clinician comes first, since yesterday")


def test_a_review_settles_what_hurt_before_it_and_nothing_after(room):
    sam = room.lifter()
    room.hurt(sam, 3, "no_load")
    room.reviewed(sam, 2)
    assert line(room, sam).group == "fine"
    room.hurt(sam, 1, "no_load")
    assert line(room, sam).group == "hurt"


@pytest.mark.parametrize(("began", "words"), [(1, "something hurt yesterday, questions open"), (2, "not back to usual yesterday: worse")])
def test_of_a_bad_morning_and_pain_questions_left_open_the_later_is_told_and_the_questions_where_it_began_them(room, began, words):
    sam = room.lifter()
    room.run(sam, "morning", {"how": "worse"}, 1, alert=Alert("not_today", "yesterday something hurt"))
    room.run(sam, "pain", {}, began, "left")
    assert told(room, sam) == ("hurt", words)


def test_another_coach_s_review_settles_nothing(room):
    sam = room.lifter()
    room.hurt(sam, 3, "no_load")
    room.reviewed(sam, 2, room.a_coach("Bea"))
    assert line(room, sam).group == "hurt"


@pytest.mark.parametrize("ending", ["", "left"])
def test_pain_questions_left_half_done_are_hurt_until_they_are_answered(room, ending):
    sam = room.lifter()
    room.run(sam, "pain", {}, 2, ending)
    assert told(room, sam) == ("hurt", "something hurt on Tuesday, questions open")
    room.find(sam, "safety.level", "go", 1, rule="safety check")
    assert line(room, sam).group == "hurt", "a safety check the next day does not answer them"
    room.run(sam, "pain", {"where": "nothing"}, 0.5)
    room.find(sam, "pain.hurt", "no", 0.5)
    assert line(room, sam).group == "fine"


def test_a_review_settles_questions_left_half_done(room):
    sam = room.lifter()
    room.run(sam, "pain", {}, 2, "")
    room.reviewed(sam, 1)
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
def test_a_referral_stands_whatever_was_reviewed(room, level):
    sam = room.lifter()
    room.find(sam, "safety.level", level, 20)
    room.reviewed(sam, 1)
    assert line(room, sam).group == "referred"


@pytest.mark.parametrize("level", ["go", "no_load", "not_today"])
def test_a_passing_level_is_no_referral(room, level):
    sam = room.lifter()
    room.find(sam, "safety.level", level, 0)
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize(("reviewed", "group"), [(1.1, "worse"), (1, "fine")])
def test_what_was_there_at_the_moment_of_a_review_is_reviewed(room, reviewed, group):
    sam = room.lifter()
    room.find(sam, "retest.change", "worse", 1, "knee to wall, left: 3 cm less than before.")
    room.reviewed(sam, reviewed)
    assert line(room, sam).group == group


def test_a_change_for_the_worse_at_the_retest_is_worse_until_reviewed(room):
    sam = room.lifter()
    room.find(sam, "retest.change", "worse", 3, "knee to wall, left: 3 cm less than before")
    assert told(room, sam) == ("worse", "worse at the retest on Monday: knee to wall, left: 3 cm less than before")
    room.reviewed(sam, 1)
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize("change", ["within_error", "cannot_say"])
def test_no_other_change_is_worse(room, change):
    sam = room.lifter()
    room.find(sam, "retest.change", change, 3)
    assert line(room, sam).group == "fine"


def test_a_back_that_moved_and_a_step_back_is_worse(room):
    sam = room.lifter()
    room.run(sam, "squat_after", {"done": "yes", "back": "moved"}, 2)
    step = steps_from(Band.PARALLEL, Band.BELOW, [DepthDay(ago(2).date(), "moved")])
    room.find(sam, "depth.step", step.depth.value, 2, step.why)
    assert told(room, sam) == ("worse", "back moved on Tuesday, a step back: keep to a little above parallel")


def test_a_back_that_moved_without_a_step_back_is_not_worse(room):
    sam = room.lifter()
    room.run(sam, "squat_after", {"done": "yes", "back": "moved"}, 2)
    room.find(sam, "depth.step", "parallel", 2, "It stays at parallel.")
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize(("start", "hurt", "moved"), [
    (Band.PARALLEL, False, True), (Band.WELL_ABOVE, False, True), (Band.PARALLEL, True, True), (Band.PARALLEL, False, False)])
def test_the_words_of_a_step_back_are_known_by(start, hurt, moved):
    """The step's own words are what the caseload reads: a change there must show here."""
    why = steps_from(start, Band.BELOW, [DepthDay(NOW.date(), "moved" if moved else "clean", hurt=hurt)]).why
    assert bool(MOVED_BACK.search(why)) == moved


def test_a_retest_told_twice_in_vain_is_overdue(room):
    sam = room.lifter()
    a_retest(room, sam, 3, "ignored")
    assert told(room, sam) == ("overdue", "no answer to two retest reminders, since Monday")


def test_a_retest_whose_reminder_is_put_off_from_day_to_day_is_late_all_the_same(room):
    sam = room.lifter()
    reminders.add(room.db, sam, "retest", "retest", "2026-03-03 10:00", "Europe/Berlin", ago(-0.5), ago(0.1))
    (line,) = lines_of(room.db, room.coach, NOW)
    assert (line.group, line.words) == ("overdue", "retest late, due 3 Mar")
    assert line.since == datetime(2026, 3, 3, 9, 0, tzinfo=UTC)


def test_results_since_settle_a_retest_told_in_vain(room):
    sam = room.lifter()
    a_retest(room, sam, 3, "ignored")
    room.results(sam, 2)
    room.reviewed(sam, 1)
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize(("due", "group"), [(-5, "fine"), (0, "retest_due"), (6.9, "retest_due"), (7, "retest_due"), (7.1, "overdue")])
def test_a_retest_is_overdue_when_it_is_more_than_a_week_late(room, due, group):
    sam = room.lifter()
    a_retest(room, sam, due)
    assert line(room, sam).group == group


def test_who_stopped_all_reminders_is_overdue_in_the_list_all_the_same(room):
    sam = room.lifter("sam")
    a_retest(room, sam, 8, "replaced")
    assert told(room, sam)[0] == "overdue"
    room.results(sam, 7)
    assert told(room, sam)[0] != "overdue"


def test_a_retest_done_before_its_day_is_not_overdue_when_that_day_is_past(room):
    sam = room.lifter()
    a_retest(room, sam, 10, "replaced", settled=12)
    room.results(sam, 13)
    assert told(room, sam)[0] == "new_result"


@pytest.mark.parametrize("results", [41, 40])
@pytest.mark.parametrize("state", ["open", "ignored", "replaced"])
def test_results_older_than_the_reminder_or_that_set_it_do_not_settle_it(room, state, results):
    sam = room.lifter()
    a_retest(room, sam, 10, state)
    room.results(sam, results)
    assert told(room, sam)[0] == "overdue"


@pytest.mark.parametrize(("state", "reviewed", "group"), [
    ("open", 2, "fine"), ("open", 4, "overdue"), ("replaced", 2, "fine"), ("ignored", 9, "fine"), ("ignored", 11, "overdue")])
def test_a_review_settles_what_was_overdue_before_it(room, state, reviewed, group):
    sam = room.lifter()
    a_retest(room, sam, 10, state)
    room.reviewed(sam, reviewed)
    assert told(room, sam)[0] == group


def test_silence_is_told_whatever_group_hides_it(room):
    sam, mia = room.lifter("Sam", answered=20), room.lifter("Mia")
    room.find(sam, "retest.change", "worse", 9)
    assert line(room, sam).whole == "worse at the retest on 3 Mar; also: quiet"
    assert line(room, sam).as_in("quiet").words.startswith("silent for 20 days, since ")
    assert line(room, mia).as_in("quiet") is None


def test_a_retest_that_was_put_in_the_place_of_another_is_the_one_that_counts(room):
    sam = room.lifter()
    a_retest(room, sam, 20, "ignored")
    a_retest(room, sam, -20)
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize(("change", "said"), [("within_error", "; knee to wall, left: no change is shown"), ("better", "")])
def test_a_new_result_says_where_no_change_could_be_shown(room, change, said):
    sam = room.lifter()
    room.results(sam, 2)
    room.find(sam, "retest.change", change, 2, "knee to wall, left: no change is shown")
    assert line(room, sam).as_in("new_result").words == f"new result on Tuesday: a likely cause{said}"


def test_results_later_than_the_review_are_new(room):
    sam = room.lifter()
    room.reviewed(sam, 5)
    room.results(sam, 4)
    assert told(room, sam) == ("new_result", "new result on Sunday: a likely cause")
    room.reviewed(sam, 1)
    assert line(room, sam).group == "fine"


@pytest.mark.parametrize(("days", "group"), [(13.9, "fine"), (14, "fine"), (14.1, "quiet")])
def test_no_answer_for_two_weeks_is_quiet(room, days, group):
    assert line(room, room.lifter(answered=days)).group == group


def test_somebody_who_blocked_the_bot_is_quiet_with_the_reason_and_since_when(room):
    sam = room.lifter()
    address = people.addresses_of(room.db, sam)[0]
    people.mark_gone(room.db, *address, ago(2), "blocked the bot")
    assert told(room, sam) == ("quiet", "can't be reached since Tuesday: blocked the bot")
    room.db.execute("insert into addresses (channel, address, person, name) values ('terminal', 'sam', ?, 'Sam')", (sam,))
    assert line(room, sam).group == "fine", "who can be reached elsewhere is not gone"


def test_the_first_group_that_holds_is_the_one(room):
    sam = room.lifter(answered=30)
    steps = (lambda: None, lambda: room.results(sam, 45), lambda: a_retest(room, sam, 10),
             lambda: room.find(sam, "retest.change", "worse", 9),
             lambda: room.find(sam, "safety.level", "clinician", 8), lambda: room.hurt(sam, 7, "clinician"))
    groups = []
    for step in steps:
        step()
        groups.append(line(room, sam).group)
    assert groups == ["quiet", "quiet", "quiet", "worse", "referred", "hurt"]
    assert [one.group for one in line(room, sam).also] == ["referred", "worse", "overdue", "new_result"], "nothing is hidden"


def test_the_list_goes_by_group_and_within_one_the_latest_first(room):
    fine, old, new, sent = (room.lifter(name) for name in ("Fin", "Ola", "Nia", "Sen"))
    room.hurt(old, 4)
    room.hurt(new, 1)
    room.find(sent, "safety.level", "clinician", 2)
    lines = lines_of(room.db, room.coach, NOW)
    assert [one.person for one in lines] == [new, old, sent, fine]
    assert [GROUPS.index(one.group) for one in lines] == sorted(GROUPS.index(one.group) for one in lines)


def test_who_was_sent_to_be_seen_at_once_comes_before_a_small_pain_however_long_ago(room):
    small, chest, seen, sent = (room.lifter(name) for name in ("Sol", "Chi", "Sia", "Sen"))
    room.hurt(small, 0.1, "no_load")
    room.hurt(chest, 3, "emergency", "chest")
    room.find(seen, "safety.level", "clinician", 1)
    room.find(sent, "safety.level", "same_day", 6)
    assert [one.person for one in lines_of(room.db, room.coach, NOW)] == [chest, sent, small, seen]


def test_care_weighs_only_within_what_hurt_and_who_was_referred(room):
    """An emergency that was reviewed and is over comes no sooner with a new result than anybody else."""
    first, second = room.over_an_emergency(), room.over_a_small_pain()
    assert [(one.person, one.group, one.weight) for one in lines_of(room.db, room.coach, NOW)] == [
        (second, "new_result", 0), (first, "new_result", 0)]


def test_in_the_list_of_another_state_that_one_comes_first_and_the_others_are_named_after_it(room):
    sam = room.lifter(answered=30)
    room.find(sam, "retest.change", "worse", 9)
    room.hurt(sam, 7, "no_load")
    room.results(sam, 3)
    whole = line(room, sam)
    assert (whole.group, [one.group for one in whole.also]) == ("hurt", ["worse", "new_result"])
    worse = whole.as_in("worse")
    assert (worse.group, worse.words, worse.since) == ("worse", "worse at the retest on 3 Mar", ago(9))
    assert [one.group for one in worse.also] == ["hurt", "new_result"]
    assert worse.whole.endswith("; also: hurt, new result")
    assert whole.as_in("hurt") == whole


def test_who_has_no_name_in_the_channel_has_a_line_all_the_same(room):
    sam = room.lifter()
    room.db.execute("delete from addresses where person = ?", (sam,))
    assert line(room, sam).name == ""


def test_a_small_pain_hides_no_emergency(room):
    sam = room.lifter()
    room.hurt(sam, 2, "no_load", "knee", 1.0)
    room.find(sam, "safety.level", "emergency", 1)
    assert told(room, sam) == ("hurt", "sent to emergency care; hurt on Tuesday: knee, 1 of 10")


@pytest.mark.parametrize("told_at", [0.9, 1])
def test_questions_left_open_say_what_was_answered_where_the_coach_was_told(room, told_at):
    """Also where one sentence said it all: then the questions began and the coach was told in the same moment."""
    sam = room.lifter()
    room.run(sam, "pain", {"where": "back", "bad": 9.0}, 1, "")
    run = str(room.runs)
    room.keep(sam, told_at, Alert("not_today", "something hurt, and the questions about it are still open", run))
    assert told(room, sam) == ("hurt", "hurt yesterday: lower back, 9 of 10, questions open")


def test_a_false_alarm_that_was_told_says_so(room):
    sam = room.lifter()
    room.run(sam, "pain", {"where": "nothing"}, 1, alert=Alert("not_today", "something hurt"))
    room.find(sam, "pain.hurt", "no", 1)
    assert told(room, sam) == ("hurt", "said yesterday that something hurt, then that nothing does")


def test_only_lifters_linked_now_to_a_coach_who_is_one_now(room):
    sam, kim = room.lifter("Sam"), room.lifter("Kim")
    bea = room.a_coach("Bea")
    coaching.link(room.db, kim, bea, ago(1))
    coaching.withdraw(room.db, kim, room.coach, ago(1))
    assert [one.person for one in lines_of(room.db, room.coach, NOW)] == [sam]
    assert [one.person for one in lines_of(room.db, bea, NOW)] == [kim]
    coaching.end_coach(room.db, bea, ago(0))
    assert lines_of(room.db, bea, NOW) == []
    assert lines_of(room.db, sam, NOW) == []


def test_the_whole_list_takes_as_many_queries_for_fifty_as_for_one(room):
    asked: list[str] = []
    room.lifter()
    room.db.set_trace_callback(asked.append)
    lines_of(room.db, room.coach, NOW)
    few = len(asked)
    room.db.set_trace_callback(None)
    for number in range(49):
        room.hurt(room.lifter(f"Sam {number}"), 1)
    asked.clear()
    room.db.set_trace_callback(asked.append)
    assert len(lines_of(room.db, room.coach, NOW)) == 50
    assert len(asked) == few


def test_days_are_those_of_the_coach_s_clock(room):
    sam = room.lifter()
    room.hurt(sam, 18.5 / 24)  # 23:30 UTC the day before
    room.run(room.coach, "welcome", {"zone": "UTC+02:00"}, 50)
    assert line(room, sam).words.startswith("hurt today")


def test_lines_are_plain_and_short_whatever_the_record_holds(room):
    sam = room.lifter("\u202eSam\n" + "x" * 4096)
    room.find(sam, "retest.change", "worse", 1, "\u202e" + "\U0001f600" * 3000 + "\n<b>")
    found = line(room, sam)
    assert utf16_length(found.words) <= REASON_MOST
    assert not set("\u202e\n") & set(found.words + found.name)


@pytest.mark.parametrize(("text", "most", "kept"), [
    ("short", 10, "short"), ("exactly ten", 11, "exactly ten"), ("one too many", 11, "one too ma…"),
    ("\U0001f600" * 5, 10, "\U0001f600" * 5),
    ("\U0001f600" * 6, 10, "\U0001f600" * 4 + "…"), ("a \n\t b", 10, "a b"), ("", 5, "")])
def test_a_text_is_cut_by_what_a_chat_counts(text, most, kept):
    assert shortened(text, most) == kept
    assert utf16_length(kept) <= most


def test_since_is_when_it_happened(room):
    sam = room.lifter()
    room.hurt(sam, 2)
    assert line(room, sam).since == NOW - timedelta(days=2)


@given(st.text(st.characters(), max_size=40) |
       st.text(st.sampled_from("a \u202e\ud83d\u00a0\ufdd0\U0001f600\u0301"), max_size=40), st.integers(2, 50))
def test_a_cut_text_is_plain_and_never_longer(text, most):
    short = shortened(text, most)
    assert utf16_length(short) <= most
    assert short == plain(short)
    assert "  " not in short
    assert short.endswith("…") or short == " ".join(plain(text).split())


OVER = "over the load limit on 9 of the last 12 squat days, by up to 40 kg"


def test_a_day_over_the_load_limit_is_a_line_with_days_and_kilograms_until_it_is_reviewed(room):
    sam = room.lifter()
    for days in range(2, 14):
        room.lifted(sam, days, 152.0 if days == 2 else 137.0 if days < 11 else 110.0, limit=112.0)
    assert told(room, sam) == ("over_load", f"{OVER}, last told Tuesday")
    room.reviewed(sam, 1)
    assert line(room, sam).group == "fine"
    room.lifted(sam, 0.5, 137.0)
    assert line(room, sam).group == "over_load"


def over_everywhere(room: Room, sam: int) -> tuple[str, str, list[str]]:
    """How a lifter's load stands in the list, on their page, and in what is new."""
    return (line(room, sam).group, lifter_page(room.db, room.coach, sam, NOW).over,
            [one.words for one in news_of(room.db, room.coach, NOW, "UTC+00:00")])


def test_a_load_put_right_is_right_in_the_list_on_the_page_and_in_what_is_new(room):
    sam = room.lifter()
    room.lifted(sam, 1, 60.0)
    run = str(room.runs)
    coaching.audit_look(room.db, sam, room.coach, "summary", ago(0.5))
    assert over_everywhere(room, sam) == ("fine", "", [])
    room.keep(sam, 0.2, Record(run, "squat_after", 1, "load", "", "the load was 90 not 60", 90.0, "kg"))
    over = "over the load limit on the last squat day, by 30 kg"
    assert over_everywhere(room, sam) == ("over_load", over, [f"{over}, last told today"])
    room.keep(sam, 0.1, Record(run, "squat_after", 1, "load", "", "no, 55", 55.0, "kg"))
    assert over_everywhere(room, sam) == ("fine", "", [])


def test_a_load_that_was_planned_and_not_told_afterwards_is_over_nothing(room):
    sam = room.lifter()
    room.lifted(sam, 3, 60.0)
    room.run(sam, "squat_day", {"load": 90.0, "squatted": "ready"}, 1)
    room.run(sam, "squat_after", {"back": "still"}, 1)
    assert over_everywhere(room, sam)[:2] == ("fine", "")


def test_nobody_is_fine_without_a_word_after_a_day_that_closed_it(room):
    """Sharp 6 of 10 on Tuesday, reviewed on Wednesday, and no check since."""
    sam = room.lifter()
    room.hurt(sam, 2, bad=6.0)
    room.reviewed(sam, 1)
    assert told(room, sam) == ("fine", "fine, last answer on Tuesday; a new check comes first")
    room.find(sam, "safety.level", "go", 0.1)
    assert told(room, sam) == ("fine", "fine, last answer on Tuesday")


def test_nobody_is_fine_without_a_word_while_questions_about_pain_stand_open(room):
    sam = room.lifter()
    room.run(sam, "pain", {}, 2, "left")
    room.find(sam, "safety.level", "go", 1.5)
    room.reviewed(sam, 1)
    assert told(room, sam) == ("fine", "fine, last answer yesterday; pain questions open")


def test_chat_caseload_summary_and_report_have_the_same_standing(room):
    for level, days, pain in (("not_today", 2, None), ("no_load", 0, None), ("go", 1, 0.5), ("clinician", 9, 3), ("go", 1, None)):
        sam = room.lifter()
        room.find(sam, "safety.level", level, days)
        if pain is not None:
            room.run(sam, "pain", {}, pain, "")
        stands = standing_now(room.db, sam, NOW)
        assert next(one for one in caseload_rows(room.db, room.coach) if one.person == sam).safety(NOW) == stands
        assert lifter_page(room.db, room.coach, sam, NOW).safety == stands
        assert report_content(room.db, sam, NOW, BOOK).safety == stands
        assert known_of(room.db, sam, NOW).facts["safety.level"] == (stands.level and stands.level.value)
