"""How far somebody is."""

from datetime import timedelta

from companion.screening.protocols import route
from companion.screening.screen import LoggedAnswer
from flows.progress import FLOW
from tests.drive import CHECKED, NOW, Talk


def done(*tests: str, days: int = 1) -> list[LoggedAnswer]:
    return [LoggedAnswer(test, test, "x", "y", "ok", "done", "", "", NOW - timedelta(days=days)) for test in tests]


def said(*tests: str, days: int = 1, known=CHECKED) -> str:
    return " ".join(say.text for say in Talk(FLOW, known=known, answers=done(*tests, days=days)).says)


def test_nothing_done_says_how_to_begin():
    assert "No test is done yet" in said()


def test_done_and_open_tests_are_named():
    told = said("knee_to_wall", "rock_back")
    assert "Done: rock back, knee to wall." in told
    assert "hip fold" in told


def test_tests_of_long_ago_or_before_the_last_results_do_not_count():
    assert "No test is done yet" in said("knee_to_wall", days=15)
    assert "No test is done yet" in said("knee_to_wall", known={**CHECKED, "screen.told": NOW.isoformat()})


def test_all_done_points_to_the_results():
    assert "All tests are done" in said(*route())
