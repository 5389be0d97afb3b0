"""What a grade weighs, what is enough, and which part or side speaks where several do."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

import pytest

from companion.screening.evidence import EvidenceRow, Finding, Grade
from companion.screening.protocols import rows
from companion.screening.rulings import Ruling, Verdict, contradiction, decide, settling_test, weight_for
from companion.screening.sources import SOURCES

BY_ID = rows()


def found(*ids: str, side: str = "left") -> list[Finding]:
    return [Finding(BY_ID[row], BY_ID[row].grade, row, side if BY_ID[row].sided else "") for row in ids]


def graded(grade: Grade, direction: str = "for", test: str = "pause_squat") -> Finding:
    return Finding(EvidenceRow("made_up", test, "Made up", "trunk", direction, grade), grade, "made up", "")  # type: ignore[arg-type]


@pytest.mark.parametrize(("grade", "weight"), [(Grade.NONE, 0), (Grade.WEAK, 1), (Grade.MODERATE, 2), (Grade.STRONG, 4)])
def test_each_grade_has_its_weight(grade: Grade, weight: int) -> None:
    assert weight_for("trunk", [graded(grade)]) == weight
    assert weight_for("trunk", [graded(grade), graded(Grade.WEAK)]) == weight + 1
    assert weight_for("trunk", [graded(grade, "against"), graded(grade, "neither")]) == 0
    assert weight_for("hip", [graded(grade)]) == 0


@pytest.mark.parametrize(("grades", "ruling"), [
    ((Grade.STRONG,), "likely"), ((Grade.MODERATE,), "too_close"), ((Grade.WEAK, Grade.MODERATE), "too_close"),
    ((Grade.MODERATE, Grade.MODERATE), "likely"), ((Grade.WEAK, Grade.WEAK, Grade.WEAK), "too_close"), ((), "not_tested")])
def test_one_strong_or_two_moderate_of_two_tests_are_enough(grades: tuple[Grade, ...], ruling: str) -> None:
    tests = ("pause_squat", "arms_forward_squat", "squat_look")
    for direction, name in (("for", ruling), ("against", {"likely": "ruled_out"}.get(ruling, ruling))):
        findings = [graded(grade, direction, test) for grade, test in zip(grades, tests, strict=False)]
        strength = decide(findings)[1]
        assert (strength.cause, strength.ruling) == ("strength", Ruling(name))


def test_rulings_go_from_ruled_out_to_likely_and_the_worse_side_decides() -> None:
    assert [ruling.value for ruling in sorted(Ruling, key=lambda ruling: ruling.rank)] == ["ruled_out", "not_tested", "too_close", "likely"]
    both = [*found("hip_fold_back", "rock_early_hip", "wide_later_hip", side="right"), *found("hip_fold_reached", side="left")]
    length = decide(both)[0]
    assert (length.ruling, length.side, length.part) == (Ruling.LIKELY, "right", "hip")


def test_the_part_that_is_likely_alone_speaks_before_one_that_weighs_more() -> None:
    calf, hip = found("heels_later_calf", "knee_to_wall_short"), found("hip_fold_back", "rock_early_hip", "hip_fold_reached")
    length = decide([*calf, *hip])[0]
    assert (length.part, length.together) == ("calf", ())
    together = decide(found("leg_raise_short", "knee_to_wall_short", "wide_later_hip"))[0]
    assert (together.ruling, together.together) == (Ruling.LIKELY, ("hamstrings", "calf"))


def test_a_part_that_is_ruled_out_does_not_speak_while_another_is_open() -> None:
    """A weight in front helped, weakly, but both hips fold far enough: of length hamstrings and calf are open, and nothing is for them."""
    out = [*found("hip_fold_reached"), *found("hip_fold_reached", side="right")]
    assert decide([*found("front_later_hip"), *out])[0].part == ""
    assert decide([*found("front_later_hip", "heels_later_calf"), *out])[0].part == "calf"


def test_ranges_alone_never_make_length_likely_and_one_trial_that_agrees_does() -> None:
    """Two ranges too short tell how far something goes, not that it rounds the back."""
    short = found("hip_fold_back", "rock_early_hip", "leg_raise_short", "knee_to_wall_short")
    assert decide(short)[0].ruling == Ruling.TOO_CLOSE
    assert decide([*short, *found("front_later_hip")])[0].ruling == Ruling.LIKELY


def test_a_trial_that_counts_for_nothing_is_not_the_one_that_agrees() -> None:
    """Ranges too short, and feet wider that helped by feel only, which takes a weak finding its weight."""
    (felt,) = (replace(one, grade=Grade.NONE) for one in found("wide_later_hip"))
    assert decide([*found("hip_fold_back", "rock_early_hip"), felt])[0].ruling == Ruling.TOO_CLOSE


def test_a_side_is_named_only_where_the_part_that_speaks_was_told_by_side() -> None:
    seen = found("heels_later_calf", "film_heels_later_calf", "hip_fold_back")
    assert [decide(seen)[0].part, decide(seen)[0].side] == ["calf", ""]
    short = [*found("heels_later_calf", "knee_to_wall_short"), *found("knee_to_wall_short", side="right")]
    assert [decide(short)[0].part, decide(short)[0].side] == ["calf", "both"]


def test_findings_are_told_with_what_carries_the_ruling_first() -> None:
    out = decide(found("load_same_trunk", "pause_fails", "slow_earlier_trunk", "pause_open"))[1]
    assert [finding.row.direction for finding in out.because] == ["for", "for", "against", "neither"]
    ruled = decide(found("load_same_trunk", "slow_earlier_trunk", "pause_open"))[1]
    assert ruled.ruling == Ruling.RULED_OUT
    assert [finding.row.direction for finding in ruled.because] == ["against", "for", "neither"]


def test_a_settled_cause_asks_for_no_more_tests_and_an_open_one_for_the_best() -> None:
    assert decide(found("load_earlier_trunk"))[1].settle == ""
    assert decide(found("load_same_trunk"))[1].settle == ""
    assert decide(found("pause_fails"))[1].settle == settling_test("trunk", found("pause_fails")) == "squat_look"
    assert settling_test("trunk", [], ("squat_look",)) == "pause_squat"
    assert settling_test("trunk", [], ("squat_look", "pause_squat", "arms_forward_squat")) == ""


def test_a_test_has_spoken_about_a_part_only_by_a_moderate_finding_of_that_part() -> None:
    assert settling_test("trunk", found("heels_later_calf")) == "squat_look"
    assert settling_test("trunk", found("slow_earlier_trunk")) == "squat_look"
    assert settling_test("trunk", found("load_same_trunk")) != "squat_look"


def test_the_best_graded_test_is_asked_for_and_of_equal_ones_the_easiest() -> None:
    assert settling_test("trunk", []) == "squat_look"  # the only strong one
    assert settling_test("hip", []) == "hip_fold"
    assert settling_test("hamstrings", []) == "leg_raise"
    assert settling_test("calf", []) == "knee_to_wall"
    assert settling_test("calf", found("knee_to_wall_far")) == "squat_look"
    assert settling_test("control", []) == "hand_on_back_squat"
    assert settling_test("control", found("hand_later_control")) == "squat_look"


def test_findings_go_by_weight_then_by_name_then_left_before_right() -> None:
    strength = decide(found("slow_earlier_trunk", "pause_fails", "arms_fail_bar", "load_earlier_trunk"))[1]
    assert [finding.row.id for finding in strength.because] == ["load_earlier_trunk", "arms_fail_bar", "pause_fails", "slow_earlier_trunk"]
    length = decide([*found("leg_raise_short", side="right"), *found("leg_raise_short", side="left")])[0]
    assert [finding.side for finding in length.because] == ["left", "right"]


def test_of_the_worse_side_only_its_own_findings_speak() -> None:
    right = found("leg_raise_short", "knee_to_wall_short", "wide_later_hip", side="right")
    left = found("hip_fold_back", "rock_early_hip", "hip_fold_reached", side="left")
    length = decide([*left, *right])[0]
    assert (length.ruling, length.side, length.part) == (Ruling.LIKELY, "right", "hamstrings")


def test_a_part_that_is_likely_on_one_side_speaks_before_a_contradicted_one_that_weighs_more() -> None:
    calf = found("heels_later_calf", "knee_to_wall_short", side="right")
    hip = found("hip_fold_back", "rock_early_hip", "wide_later_hip", side="left")
    torn = [finding for side in ("left", "right") for finding in found("leg_raise_short", "leg_raise_clear", side=side)]
    length = decide([*calf, *hip, *torn, *found("hinge_rounds")])[0]
    assert (length.ruling, length.part, length.side) == (Ruling.LIKELY, "hip", "left")


def test_by_the_table_nothing_makes_the_hamstrings_alone_likely() -> None:
    """One moderate row and a weak one: "why?" says so of the rule."""
    speaking = [one for side in ("left", "right") for one in found(*BY_ID, side=side)
                if one.part == "hamstrings" and one.row.direction == "for"]
    assert decide(speaking)[0].ruling is Ruling.TOO_CLOSE
    assert "hamstrings alone" in SOURCES["rule"].against


# by findings made up for the purpose --------------------------------------------------------------------------


def told(part: str, direction: str = "for", grade: Grade = Grade.MODERATE, *, test: str = "hip_fold", side: str = "",
         kg: float | None = None, load: str = "", trial: bool = False, hint: bool = False) -> Finding:
    row = EvidenceRow("made_up", test, "Made up", part, direction, grade, trial=trial, hint=hint)  # type: ignore[arg-type]
    return Finding(row, grade, "made up", side, load, kg)


WEAK, STRONG = Grade.WEAK, Grade.STRONG


def length(*findings: Finding) -> Verdict:
    return decide(findings)[0]


def strength(*findings: Finding) -> Verdict:
    return decide(findings)[1]


def test_each_part_has_its_own_findings() -> None:
    hip, calf = told("hip"), told("calf")
    assert {one.part: one.because for one in length(hip, calf).parts} == {"hip": (hip,), "hamstrings": (), "calf": (calf,)}


def test_what_is_said_of_the_better_side_gives_no_part_its_weight() -> None:
    """On the left only hints, three of them, at the hip: the right is the side that is open."""
    hints = [told("hip", grade=WEAK, side="left", hint=True)] * 3
    right = [told("hip", grade=WEAK, side="right"), *[told("calf", grade=WEAK, side="right")] * 2]
    assert (length(*hints, *right).side, length(*hints, *right).part) == ("right", "calf")


def test_the_part_that_is_likely_alone_on_either_side_speaks_before_a_heavier_range() -> None:
    hip = [told("hip", side="left", trial=True), told("hip", side="left", test="rock_back")]
    ranges = [told("calf", side=side, test=test) for side in ("left", "right") for test in ("hip_fold", "knee_to_wall", "rock_back")]
    assert length(*hip, *ranges[:3]).part == "hip"
    on_both = length(*hip, *ranges, told("hamstrings", grade=WEAK, side="right", trial=True))
    assert (on_both.ruling, on_both.part, on_both.side) == (Ruling.LIKELY, "hip", "left")


def test_a_part_that_is_ruled_out_on_one_side_only_may_speak() -> None:
    hip = [told("hip", "against", STRONG, side="left"), *[told("hip", grade=WEAK, side="right")] * 2]
    calf = [told("calf", grade=WEAK, side=side) for side in ("left", "right")][:1]
    assert length(*hip, *calf).part == "hip"


def test_parts_speak_together_only_where_together_they_are_likely_and_each_on_its_side() -> None:
    assert length(told("hip", trial=True)).together == ()
    left = [told("hip", side="left", trial=True), told("calf", side="left", test="knee_to_wall")]
    right = [told("hip", side="right", trial=True), told("hamstrings", side="right", test="leg_raise")]
    assert length(*left, *right).together == ("hip", "hamstrings", "calf")


def test_the_next_test_is_about_the_open_part_that_most_speaks_for() -> None:
    out = [told("hip", "against", STRONG), *[told("hip", grade=WEAK)] * 3]
    findings = [*out, told("calf", grade=WEAK), told("hamstrings", "neither", WEAK)]
    assert length(*findings).settle == settling_test("calf", findings) == "knee_to_wall"


def test_what_is_ruled_out_has_no_side_and_what_is_not_has_no_load() -> None:
    out = [told(part, "against", STRONG, side=side, load="60 kg") for part in ("hip", "hamstrings", "calf") for side in ("left", "right")]
    assert (length(*out).ruling, length(*out).side, length(*out).load) == (Ruling.RULED_OUT, "", "60 kg")
    likely = length(told("hip", grade=STRONG, trial=True), told("calf", "against", STRONG, load="60 kg"))
    assert (likely.ruling, likely.load) == (Ruling.LIKELY, "")


def test_the_loads_of_what_was_clean_are_named_once_each_and_those_without_left_out() -> None:
    clean = [told("trunk", "against", test=test, load=load) for test, load in (
        ("pause_squat", "60 kg"), ("squat_look", ""), ("arms_forward_squat", "60 kg"), ("hinge_to_squat", "80 kg"))]
    assert strength(*clean).load == "60 kg and 80 kg"


def test_clean_at_a_load_cancels_nothing_seen_at_a_heavier_one() -> None:
    seen = [told("trunk", kg=60, test="pause_squat"), told("trunk", kg=100, test="squat_look")]
    assert strength(*seen).ruling == Ruling.LIKELY  # the lighter counts beside the heavier
    assert strength(*seen, told("trunk", "against", kg=80)).ruling == Ruling.LIKELY
    assert strength(*seen, told("trunk", "against", kg=100)).ruling == Ruling.TOO_CLOSE
    assert strength(told("trunk", grade=STRONG, kg=0.5), told("trunk", "against")).ruling == Ruling.LIKELY  # a stick, and nothing
    clean = [told("trunk", "against", kg=kg, test=test) for kg, test in ((60, "pause_squat"), (80, "squat_look"))]
    assert strength(*clean).ruling == Ruling.RULED_OUT  # nothing heavier speaks for it


def test_a_changed_squat_that_speaks_against_length_does_not_say_that_ranges_matter() -> None:
    ranges = [told("hip"), told("hip", test="rock_back")]
    assert length(*ranges, told("calf", "against", WEAK, trial=True)).ruling == Ruling.TOO_CLOSE
    assert length(*ranges, told("calf", grade=WEAK, trial=True)).ruling == Ruling.LIKELY


def test_a_contradiction_is_told_by_the_strongest_on_each_side_of_it() -> None:
    findings = [told("trunk", test="pause_squat"), told("trunk", grade=STRONG, test="squat_look"),
                told("trunk", "against", test="hinge_to_squat"), told("trunk", "against", STRONG, test="arms_forward_squat")]
    clash = contradiction(strength(*findings).parts[0])
    assert clash is not None
    assert [one.row.test for one in clash] == ["squat_look", "arms_forward_squat"]


def test_of_two_tests_equally_near_the_better_graded_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    class Made(NamedTuple):
        id: str
        grade: Grade
        ease: int

        def grade_about(self, part: str) -> Grade:
            return self.grade

    for tests, best in (((("easy", Grade.MODERATE, 1), ("strong", Grade.STRONG, 2)), "strong"),
                        ((("hard", Grade.STRONG, 2), ("easy", Grade.STRONG, 1), ("weak", Grade.WEAK, 0)), "easy")):
        monkeypatch.setattr("companion.screening.rulings.routed", lambda of=tests: {one[0]: Made(*one) for one in of})
        assert settling_test("hip", []) == best
