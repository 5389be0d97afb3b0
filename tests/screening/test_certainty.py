"""The share of draws: against a closed form, the rule itself, and the clock."""

from __future__ import annotations

from math import erf, log, sqrt
from time import perf_counter

import numpy as np
import pytest
from hypothesis import given, settings

from companion.screening import certainty
from companion.screening.certainty import RULING_DRAWS, settled, share_of, share_words
from companion.screening.conclusion import conclude, verdict_words
from companion.screening.evidence import PARTS_BY_CAUSE, Finding, Grade
from companion.screening.findings import findings_of
from companion.screening.protocols import rows
from companion.screening.rulings import Ruling, decide
from tests.screening.test_conclusion import MANY, found

from .build import ABOUT, CALF_LIKELY, CONTROL_LIKELY, CONTROL_OUT, LENGTH_OUT, STRENGTH_OUT, screen

HOLDS_FROM = 0.8
"""As the tables of numbers have it, typed here: a choice."""


def below(z: float) -> float:
    """The normal distribution function."""
    return 0.5 * (1 + erf(z / sqrt(2)))


STEP = below(log(sqrt(2)) / 0.2)
"""Weights are log-normal about 1, 2 and 4 with 0.2 (choice). The share of draws in which a row is not a grade lower; as many are not one
higher."""


@pytest.mark.usefixtures("many")
@pytest.mark.parametrize(("ids", "cause", "ruling", "expected"), [
    (("load_earlier_trunk",), "strength", Ruling.LIKELY, STEP),  # strong as long as it is not a grade lower
    (("pause_fails", "arms_fail_bar"), "strength", Ruling.LIKELY, 1 - STEP**2 + (2 * STEP - 1)**2),  # one strong, or both moderate
    (("pause_fails",), "strength", Ruling.LIKELY, 1 - STEP),  # only where it is drawn a grade higher
    (("load_same_trunk", "slow_earlier_trunk"), "strength", Ruling.RULED_OUT, STEP**2)])  # and the weak one stays weak
def test_the_share_is_that_of_the_closed_form(ids: tuple[str, ...], cause: str, ruling: Ruling, expected: float) -> None:
    share, _ = share_of(cause, ruling, found(*ids))
    assert share == pytest.approx(expected, abs=.003)


@pytest.mark.usefixtures("many")
def test_a_reading_holds_as_often_as_its_true_value_lies_on_its_side_of_the_line() -> None:
    """One and a half standard errors past the line: 93 %, times the share in which a strong row stays strong."""
    row = rows()["load_earlier_trunk"]
    share, _ = share_of("strength", Ruling.LIKELY, [Finding(row, row.grade, "seen", margin=1.5)])
    expected = STEP * below(1.5)
    assert share == pytest.approx(expected, abs=.003)


@pytest.mark.usefixtures("many")
def test_a_band_by_eye_turns_as_often_as_one_look_slips_the_wrong_way() -> None:
    """Slips are even from none to 15 of 100 (choice), half of them the wrong way: a quarter of the most."""
    row = rows()["load_earlier_trunk"]
    share, _ = share_of("strength", Ruling.LIKELY, [Finding(row, row.grade, "seen", bands=-1, looks=1)])
    expected = STEP * (1 - 0.15 / 4)
    assert share == pytest.approx(expected, abs=.003)


@settings(max_examples=60)
@given(MANY)
def test_without_any_spread_it_is_the_rule_itself(findings: list[Finding]) -> None:
    verdicts = decide(findings)
    for verdict in verdicts:
        parts = PARTS_BY_CAUSE[verdict.cause]
        about = [one for one in findings if one.part in parts]
        grades = np.array([[one.grade.rank] * RULING_DRAWS for one in about], dtype=np.int64).reshape(len(about), RULING_DRAWS)
        signs = np.array([[{"for": 1, "against": -1, "neither": 0}[one.row.direction]] * RULING_DRAWS for one in about],
                         dtype=np.int64).reshape(len(about), RULING_DRAWS)
        told = certainty.ruled(parts, [one for one in about if one.row.direction != "neither"],
                                grades[[n for n, one in enumerate(about) if one.row.direction != "neither"]],
                                signs[[n for n, one in enumerate(about) if one.row.direction != "neither"]])
        if verdict.ruling in (Ruling.LIKELY, Ruling.RULED_OUT):
            assert (told == verdict.ruling.rank).all()


def test_what_holds_in_too_few_draws_is_too_close_and_says_which_way_it_leans() -> None:
    """A strong reading a quarter of a standard error past its line."""
    row = rows()["load_earlier_trunk"]
    shaky = [Finding(row, Grade.STRONG, "Rounds earlier.", margin=0.25)]
    strength = settled(decide(shaky), shaky)[1]
    assert (strength.ruling, strength.leaning, strength.swing) == (Ruling.TOO_CLOSE, Ruling.LIKELY, "Rounds earlier.")
    assert strength.share is not None
    assert strength.share < HOLDS_FROM
    assert verdict_words(strength) == "Strength: too close to call. Our rule says likely in 5 of 10 draws, and that is too few."


@pytest.mark.parametrize(("margin", "ruling"), [(0.9, Ruling.TOO_CLOSE), (1.05, Ruling.LIKELY)])
def test_a_ruling_is_told_from_four_draws_of_five_on(margin: float, ruling: Ruling) -> None:
    """Of a strong reading .96 × the normal share of its margin: 0.9 standard errors hold in 78 of 100, 1.05 in 82 (choice: 80)."""
    row = rows()["load_earlier_trunk"]
    shaky = [Finding(row, Grade.STRONG, "Rounds earlier.", margin=margin)]
    assert settled(decide(shaky), shaky)[1].ruling is ruling


def test_the_share_is_told_as_what_it_is() -> None:
    words = verdict_words(conclude(screen(CALF_LIKELY), ABOUT, 0).verdict("length"))
    assert words == "Length: likely (calf, left side), but not certain. Our rule comes out the same in 9 of 10."
    assert not any(word in words for word in ("sure", "probab", "%"))
    assert [share_words(share) for share in (1.0, 0.999, 0.8, 0.29)] == ["in 10 of 10", "in 9 of 10", "in 8 of 10", "in 2 of 10"]


def test_the_same_findings_give_the_same_share_in_any_order() -> None:
    findings = findings_of(screen(CONTROL_LIKELY), ABOUT)
    assert share_of("control", Ruling.LIKELY, findings) == share_of("control", Ruling.LIKELY, findings[::-1])


def test_two_thousand_draws_of_a_whole_screen_take_at_most_30_milliseconds() -> None:
    findings = findings_of(screen(LENGTH_OUT, STRENGTH_OUT, CONTROL_OUT), ABOUT)
    verdicts = decide(findings)
    settled(verdicts, findings)  # the draws of the noise are kept from the first time on
    best = min(_timed(lambda: settled(verdicts, findings)) for _ in range(5))
    assert RULING_DRAWS == 2_000
    assert best < 0.030, f"{best * 1000:.1f} ms"


def _timed(does: object) -> float:
    assert callable(does)
    start = perf_counter()
    does()
    return perf_counter() - start
