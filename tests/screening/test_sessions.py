"""The sessions of a test, and the warm-up that counts for each."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from companion.screening.sessions import sessions_of

from .build import START, rows


@pytest.mark.parametrize(("hours", "warm"), [(0.5, True), (5.9, True), (6.1, False), (24, False)])
def test_a_warm_up_counts_for_the_tests_of_six_hours(hours: float, warm: bool) -> None:
    """Six hours: our choice."""
    walked = [replace(row, at=START - timedelta(hours=hours)) for row in rows("warm_up", {"walk": "done", "squats": "done"}, run="warm")]
    (session,) = sessions_of([*walked, *rows("knee_to_wall", {"left_1": 11.0}, method="tape")], "knee_to_wall", "left")
    assert bool(session.readings[0].warm_up) is warm
