"""What a retest found, kept for the coach: the worst change, once."""
from datetime import timedelta

import pytest

from companion.conversation.effects import Find
from flows.changes import FLOW
from tests.drive import CHECKED, NOW, Talk
from tests.flows.test_changes import MAN, TOLD, pain, raised, wall


def found(*answers, since=TOLD, before=None):
    known = {**CHECKED, "outcome.at": (NOW - timedelta(days=since)).isoformat()}
    if before is not None:
        known["outcome.before"] = (NOW - timedelta(days=before)).isoformat()
    kept = sorted((row for rows in answers for row in rows), key=lambda row: row.at)
    effects = Talk(FLOW, known=known, answers=kept).effects
    return [(one.value, one.because) for one in effects if isinstance(one, Find) and one.name == "retest.change"]


@pytest.mark.parametrize(("now", "kind"), [(51.0, "worse"), (69.0, "better"), (60.0, "within_error")])
def test_the_kind_of_change_is_kept(now, kind):
    assert [one[0] for one in found(MAN, raised(40, 60), raised(1, now))] == [kind]


def test_the_worst_of_several_is_the_one():
    (one,) = found(MAN, raised(40, 60), raised(1, 75), wall(40, 12), wall(1, 6))
    assert one[0] == "worse"
    assert one[1].startswith("knee to wall, left: 6 cm less than before")


def test_pain_that_counts_is_worse():
    (one,) = found(MAN, raised(40, 60), raised(1, 60), pain(40, 1.0), pain(1, 3.0))
    assert one == (
        "worse", "Pain was 1 and is 3 now: 2 points more, beyond measurement error (1.77); from 1 people call 1 point important.")


def test_looking_again_finds_nothing_anew():
    assert found(MAN, raised(40, 60), raised(5, 51), since=1, before=30) == []
