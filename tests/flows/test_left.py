"""The number of questions left: never too low and never growing, on any answers to any flow that shows it."""

from itertools import pairwise
from random import Random

import pytest

from companion.conversation.flow import Ask, Known, Run
from companion.conversation.progress import left
from companion.conversation.session import Frame
from companion.conversation.table import ENDINGS, START
from companion.conversation.wording import render
from flows.catalogue import BOOK
from flows.knee_to_wall import FLOW as KNEE_TO_WALL
from tests.by_night import BY_NIGHT
from tests.drive import CHECKED, NOW, Talk
from tests.flows.walks import drawn, offered, ways_of

pytestmark = pytest.mark.unit

COUNTED = sorted(name for name, compiled in BOOK.flows.items() if compiled.flow.policy.counted)
WALKS, STEPS_MOST = 150 if BY_NIGHT else 30, 80


def told_on(name: str, draw: Random) -> list[tuple[str, int]]:
    """What a run with drawn answers, begun with drawn facts, says at each question it comes to: its state and the number left."""
    compiled, ways, told = BOOK[name], ways_of(name), list[tuple[str, int]]()
    read = {fact for names in ways.reads.values() for fact in names} | ways.compares.keys()
    beside = {**drawn(ways, draw, (fact for fact in read if "." in fact)), **CHECKED}
    fixed = dict(compiled.flow.at_start(Known(beside, NOW, run="1"))) if compiled.flow.at_start else {}
    fixed |= drawn(ways, draw, ways.fixed & read)
    frame = Frame(name, 1, "1", state=START, fixed=fixed)
    for _ in range(STEPS_MOST):
        facts = compiled.facts_of(beside, fixed, frame.got)
        target = next(move.target for move in compiled.onward[frame.state] if move.when.holds(facts))
        if target in ENDINGS:
            return told
        frame, stop, got = frame._replace(state=target), compiled.stops[target], dict(frame.got)
        if isinstance(stop, Run):
            frame = frame._replace(got={**got, target: draw.choice(["done", "left", "closed"])})
            continue
        assert isinstance(stop, Ask)
        told.append((target, left(compiled.ahead, frame, facts)))
        key = render(stop.log_as, facts, NOW, stop.side) if stop.log_as else target
        given = draw.choice([value for value in (*ways.answers(stop), *([] if stop.safety else [None]))
                             if offered(stop, value, facts) and value not in stop.hurts])
        got.pop(key, None)
        frame = frame._replace(got={**got, **({} if given is None else {key: given})}, trail=(*frame.trail, target))
    return told


@pytest.mark.parametrize("name", COUNTED)
def test_at_most_so_many_are_left_and_it_never_grows(name):
    """A question that comes again at once, for its answer could not be, keeps its number, as does the wait while a film is read; every
    other is at least one less."""
    draw, waits = Random(name), BOOK[name].ahead.waits
    for _ in range(WALKS):
        told = told_on(name, draw)
        for (before, most), (after, fewer) in pairwise(told):
            assert fewer <= most - (before != after and not waits(after) and not waits(before)), told
        assert all(most >= 1 for _, most in told), told


def test_repeats_are_told_beforehand_and_another_way_to_measure_is_not_counted():
    talk = Talk(KNEE_TO_WALL, known={**CHECKED, "about_you.height": 180.0}).tap("Tape")
    assert "at most 10 left, often fewer" in talk.last  # each foot thrice and what stopped it, and two more looks
