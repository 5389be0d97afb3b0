"""Readings that are not believed until they are repeated: sides that hardly ever are so far apart, and which of them is the odd one."""

from __future__ import annotations

import pytest

from companion.screening.doubts import BelievedSpread, odd_side
from companion.screening.protocols.knee_to_wall import SPREADS
from companion.screening.protocols.leg_raise import SPREAD
from companion.screening.readings import Reading


@pytest.mark.parametrize(("spread", "left", "right", "odd"), [
    # Leg raises differ by 5.0 ± 3.5° (BMC Musculoskelet Disord 2012;13:245, read): 35° apart is past belief (choice); the middle is 72°.
    (SPREAD, 50, 84, ""), (SPREAD, 50, 86, "left"), (SPREAD, 53, 90, "left"), (SPREAD, 55, 92, "right"),
    # Knee to wall: 3 cm in some (Hoch & McKeon 2011, second-hand), so 10 cm (choice); the mean is 11.6 cm (Calatayud 2015, read).
    (SPREADS["cm"], 7, 16.5, ""), (SPREADS["cm"], 6, 17, "left"), (SPREADS["cm"], 6.5, 17, "right"),
    # Shins: 25° (choice), about a mean of 40° (Calatayud 2015, read).
    (SPREADS["deg"], 28, 52, ""), (SPREADS["deg"], 26.5, 53, "left"), (SPREADS["deg"], 27.5, 53, "right")])
def test_the_side_further_from_what_people_have_is_measured_again(spread: BelievedSpread, left: float, right: float, odd: str) -> None:
    taken = {side: (Reading("any", value, "deg", side, "level"),) for side, value in (("left", left), ("right", right))}
    assert odd_side(taken, spread) == odd
