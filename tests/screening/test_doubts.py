"""Readings that are not believed until they are repeated: sides that hardly ever are so far apart, and which of them is the odd one."""

from __future__ import annotations

import pytest

from companion.screening.doubts import BelievedSpread, apart, checked, odd_side, side_doubts
from companion.screening.protocols.knee_to_wall import SPREADS
from companion.screening.protocols.leg_raise import SPREAD
from companion.screening.readings import Reading, metric
from tests.table import each_row


@each_row(("spread", "left", "right", "odd"), [
    # Leg raises differ by 5.0 ± 3.5° (BMC Musculoskelet Disord 2012;13:245, read): 35° apart is past belief (choice); the middle is 72°.
    (SPREAD, 50, 84, ""), (SPREAD, 50, 86, "left"), (SPREAD, 53, 90, "left"), (SPREAD, 55, 92, "right"),
    # Knee to wall: 3 cm in some (Hoch & McKeon 2011, second-hand), so 10 cm (choice); the mean is 11.6 cm (Calatayud 2015, read).
    (SPREADS["cm"], 7, 16.5, ""), (SPREADS["cm"], 6, 17, "left"), (SPREADS["cm"], 6.5, 17, "right"),
    # Shins: 25° (choice), about a mean of 40° (Calatayud 2015, read).
    (SPREADS["deg"], 28, 52, ""), (SPREADS["deg"], 26.5, 53, "left"), (SPREADS["deg"], 27.5, 53, "right")])
def test_the_side_further_from_what_people_have_is_measured_again(spread: BelievedSpread, left: float, right: float, odd: str) -> None:
    taken = {side: (Reading("any", value, "deg", side, "level"),) for side, value in (("left", left), ("right", right))}
    assert odd_side(taken, spread) == odd


def taken(*values: float) -> tuple[Reading, ...]:
    return tuple(Reading("any", value, "deg", "left", "level") for value in values)


@pytest.mark.parametrize(("values", "far"), [((50,), False), ((50, 57), False), ((50, 58), True), ((50, 58, 64), False),
                                               ((50, 58, 70), True)])
def test_repeats_are_apart_where_no_two_lie_within_the_detectable_change(values: tuple[float, ...], far: bool) -> None:
    """Eight degrees here; exactly eight are apart already."""
    assert apart(taken(*values), 8.0) is far


def test_sides_exactly_as_far_apart_as_is_believed_are_believed() -> None:
    assert odd_side({"left": taken(50), "right": taken(85)}, SPREAD) == ""


@pytest.mark.parametrize(("again", "counts"), [(57.0, 50), (58.0, 58)])
def test_a_second_look_takes_the_place_of_what_it_contradicts(again: float, counts: float) -> None:
    spread = BelievedSpread(8.0, 35.0, 72.0)
    (look,) = taken(again)
    assert checked({"left": taken(50)}, {"left": look}, spread)["left"][0].value == counts


@pytest.mark.parametrize(("again", "doubted"), [
    ({}, "left"), ({"left": 60.0}, "left"), ({"left": 52.0}, "right"), ({"left": 52.0, "right": 91.0}, ""), ({"left": 70.0}, "")])
def test_sides_far_apart_are_believed_once_each_was_looked_at_twice_to_the_same_number(again: dict[str, float], doubted: str) -> None:
    """Fifty beside ninety: a second look at the left that says 60 takes its place and is still far off; one that says 52 leaves the slip
    to the right."""
    spread, looks = BelievedSpread(8.0, 25.0, 80.0), {side: taken(value)[0] for side, value in again.items()}
    held = checked({"left": taken(50), "right": taken(90)}, looks, spread)
    assert "".join(side_doubts(held, looks, spread, "leg raise", metric)) == doubted
