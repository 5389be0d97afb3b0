"""The caseload as messages: its pages, groups and filters, and what is noted of a look."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.coach.caseload import CaseloadLine
from companion.coach.caseload_messages import caseload_say
from companion.coach.triage import GROUPS, counted
from companion.record import coaching
from companion.screening.limits import Limit, LimitPart, as_text
from tests.coach.caseload_rows import NOW, ago, lines_of
from tests.coach.pages import WORST, ask, fits, labels, numbered, taps


@pytest.mark.parametrize(("many", "pages", "last"), [(1, 1, 1), (10, 1, 10), (11, 2, 1), (200, 20, 10)])
def test_ten_lines_a_page_and_the_last_page_for_any_beyond(many, pages, last):
    lines = [CaseloadLine(n, f"Sam {n}", "fine", "fine", NOW, 0) for n in range(many)]
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


@pytest.mark.parametrize("number", [1, 2])
def test_a_count_of_a_group_reads_alike_for_one_and_for_several(number):
    """A name such as “questions open” can't follow a number by itself."""
    words = counted(dict.fromkeys(GROUPS, number))
    assert words == ", ".join(f"{number} {one}" for one in (
        "asking for you", "hurt", "with questions open", "referred", "with word of their care", "over load", "worse", "quiet", "overdue",
        "due for a retest", "with a new result", "with a contradiction", "with a note unread", "better", "fine"))


def test_a_line_names_a_clinicians_limit_that_is_in_force_once(room):
    hurt, fine = room.lifter("Hal"), room.lifter("Fin")
    room.hurt(hurt, 2)
    for lifter in (hurt, fine):
        room.find(lifter, "safety.level", "go", 1)
        room.find(lifter, "safety.limits", as_text((Limit(frozenset((LimitPart.SQUATS,)), words="no squats"),)))
    assert numbered(ask(room, "caseload")[0]) == [
        "1. Hal: hurt on Tuesday: lower back, 5 of 10; a clinician's limit",
        "2. Fin: fine, last answer yesterday; open, but for a clinician's limit"]


def test_the_quiet_filter_lists_everybody_who_is_silent_whatever_else_is_the_matter(room):
    hurt, shy = room.lifter("Hal", answered=20), room.lifter("Shy", answered=30)
    room.hurt(hurt, 20)
    (say,) = ask(room, "caseload", "quiet")
    assert [row.split(":")[0] for row in numbered(say)] == ["1. Hal", "2. Shy"]
    assert all("silent for " in row for row in numbered(say))
    assert "Quiet (2)" in labels(ask(room, "caseload")[0])
    assert shy in [one.person for one in lines_of(room.db, room.coach, NOW) if one.as_in("quiet")]


def test_turning_pages_stays_within_the_group():
    lines = [CaseloadLine(n, "Sam", ("hurt", "referred")[n % 2], "words", NOW, 0) for n in range(60)]
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
