"""One-phone blocks, over all tests: nothing to tap while the phone films or the hands lie under the back, and a caution before each set."""

import re

import pytest

from companion.conversation.flow import Ask, Tell
from companion.conversation.kinds import Hold, Ready
from companion.screening.protocols import protocols
from companion.screening.safety import BodyPosition
from flows.catalogue import BOOK

pytestmark = pytest.mark.unit
CARD = "Then: did any set hurt? Which?"
STEPS = {name: BOOK[name].flow.steps for name in BOOK.flows}
BLOCKS = sorted(name for name, steps in STEPS.items() if any(isinstance(step, Ask) and step.say.endswith(CARD) for step in steps))
STOPS = re.compile(r"\b(?:stop|come down|step back)\b.*\b(?:hurts|sharp|pinch)|\{care\}", re.IGNORECASE | re.DOTALL)
NAMES_A_SET = re.compile(r"\bFirst(?: and third)?(?: set)?:|^1\. |\n1\. ")


def films(name: str) -> bool:
    """Whether a test can be watched by film."""
    return any(isinstance(step, Ask) and step.key in ("seen_by", "view") and "film" in {option.value for option in step.kind.options}
               for step in STEPS[name])


def test_every_test_that_is_watched_by_film_is_a_block():
    assert {name for name in protocols() if films(name)} <= set(BLOCKS)
    assert {"squat_look", "bird_dog", "pause_squat", "hinge_to_squat"} <= {name for name in BLOCKS if films(name)}


@pytest.mark.parametrize("name", BLOCKS)
def test_nothing_that_moves_is_started_or_counted_by_a_tap_while_it_films(name):
    taps = [step.key for step in STEPS[name] if isinstance(step, Ask) and step.caution and isinstance(step.kind, Ready | Hold)
            and step.only_if.holds({"seen_by": "film"})]
    assert not taps


@pytest.mark.parametrize("name", BLOCKS)
def test_each_set_of_a_block_is_told_with_what_makes_one_stop(name):
    steps = STEPS[name]
    for at, step in enumerate(steps):
        if isinstance(step, Ask) and step.say.endswith(CARD):
            assert STOPS.search(step.caution), step.key
            told = at
            while told and isinstance(steps[told - 1], Tell):
                told -= 1
                say = steps[told].say
                assert not NAMES_A_SET.search(say) or STOPS.search(say), say


@pytest.mark.parametrize("name", sorted(one.id for one in protocols().values() if one.posture is BodyPosition.LYING))
def test_lying_tests_take_both_sides_numbers_after_both_sides_were_done(name):
    keys = [step.key for step in STEPS[name] if isinstance(step, Ask)]
    sides = [at for at, key in enumerate(keys) if key.startswith(("left", "right"))]
    assert min(sides, default=len(keys)) > keys.index("did")
