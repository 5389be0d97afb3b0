"""How sure a ruling is, and the one study of lifters beside it.

Berglund 2024 Int J Sports Phys Ther 19(9):1097-1107, doi 10.26603/001c.122637 (abstract): 18 lifters; more ankle dorsiflexion went with
more lumbopelvic flexion; hip range and movement-control tests showed no association.
"""

from dataclasses import replace

import pytest

from companion.screening.conclusion import conclude
from companion.screening.evidence import EvidenceRow, Grade, found
from companion.screening.rulings import PartVerdict, Ruling, Verdict
from companion.screening.sureness import Sureness, contrary_studies, sureness, sureness_words
from tests.table import each_row

from .build import ABOUT, CALF_LIKELY, CONTROL_LIKELY, LENGTH_OUT, STRENGTH_LIKELY, STRENGTH_OUT, screen


def verdict(part: str, *grades: Grade, direction: str = "for", contradiction: str = "") -> Verdict:
    because = tuple(found(EvidenceRow(f"row_{n}", f"test_{n}", "It moves", part, direction, grade)) for n, grade in enumerate(grades))
    ruling = Ruling.LIKELY if direction == "for" else Ruling.RULED_OUT
    cause = {"trunk": "strength", "control": "control"}.get(part, "length")
    return Verdict(cause, ruling, part=part, parts=(PartVerdict(part, ruling, because),), because=because, contradiction=contradiction)


MODERATE, STRONG = Grade.MODERATE, Grade.STRONG


@each_row(("part", "grades", "sure"), [
    ("trunk", (MODERATE, MODERATE), "fair"), ("trunk", (STRONG,), "good"), ("trunk", (MODERATE,) * 3, "good"),
    ("hamstrings", (MODERATE, MODERATE), "low"), ("hamstrings", (STRONG,), "fair"),
    ("calf", (MODERATE, MODERATE), "low"), ("calf", (STRONG,), "fair"), ("hip", (MODERATE, MODERATE), "low"),
    ("hip", (MODERATE,) * 3, "fair"), ("control", (MODERATE, MODERATE), "low"), ("control", (STRONG,), "fair")])
def test_length_and_control_are_one_step_less_sure_for_the_study_of_lifters(part: str, grades: tuple[Grade, ...], sure: str) -> None:
    assert sureness(verdict(part, *grades)) is Sureness(sure)


def test_the_study_lowers_no_ruling_out() -> None:
    out = verdict("calf", MODERATE, MODERATE, direction="against")
    assert (sureness(out), contrary_studies(out)) == (Sureness.FAIR, ())


def test_a_contradiction_makes_it_less_sure_and_elimination_is_never_more_than_low() -> None:
    assert sureness(verdict("trunk", STRONG, contradiction="They disagree.")) is Sureness.FAIR
    assert sureness(replace(verdict("trunk", STRONG), ruling=Ruling.TOO_CLOSE, by_elimination=True)) is Sureness.LOW
    assert sureness(replace(verdict("trunk", STRONG), ruling=Ruling.TOO_CLOSE)) is None
    assert sureness_words(replace(verdict("trunk"), ruling=Ruling.NOT_TESTED)) == ""


@pytest.mark.parametrize(("part", "words"), [
    ("calf", "more ankle range went with more rounding"), ("hip", "hip range did not go with rounding"),
    ("hamstrings", "hip range did not go with rounding"), ("control", "movement-control tests did not go with rounding")])
def test_the_study_is_told_with_the_part_called_likely(part: str, words: str) -> None:
    assert sureness_words(verdict(part, MODERATE, MODERATE)) == f"How sure: low. In the one study of lifters, {words}."
    assert "study" not in sureness_words(verdict("trunk", MODERATE, MODERATE))


@pytest.mark.parametrize(("done", "cause"), [(CALF_LIKELY, "length"), (STRENGTH_LIKELY, "strength"), (CONTROL_LIKELY, "control"),
                                             (LENGTH_OUT, "length"), (STRENGTH_OUT, "strength")])
def test_every_ruling_of_a_screen_says_how_sure_it_is(done: dict, cause: str) -> None:
    assert sureness_words(conclude(screen(done), ABOUT, 0).verdict(cause)).startswith("How sure: ")
