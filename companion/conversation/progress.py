"""The most questions a run may still ask: the longest way from here that its answers so far leave open.

It does not grow while a run goes on. Each choice is followed into every answer on offer; a condition on what is not known yet may go either
way; a question may come again at once without counting twice, and so may a film that is to be sent again; any other way back is taken once
at most, which the flows keep to.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from companion.conversation.ahead import Ahead
from companion.conversation.condition import Facts
from companion.conversation.session import Frame
from companion.conversation.ways_on import WaysOn

WAYS_BACK: Final = 1
"""Times that a run may lead back to an earlier question."""

OUTCOMES_KEPT: Final = 8
"""Most answers kept for one question, each with the facts that it hung on: nearly everybody's are the same."""


def left(ahead: Ahead, frame: Frame, facts: Facts) -> int:
    """Return the most questions still to be answered, the open one included, and those asked again because readings differ."""
    state, turned = frame.state, sum(ahead.turns(*pair) for pair in pairwise((*frame.trail, frame.state)))
    found = ahead.found.setdefault((state, turned), [])
    for read, most in found:
        if all(facts.get(name) == value for name, value in read.items()):
            return most
    before = {key: facts.get(key) for key in frame.trail if key in ahead.follow[state] and key != state}
    read = dict(before)
    if state in ahead.always:
        ways = [WaysOn(ahead, facts, state, {**before, state: answer}, read) for answer in ahead.always[state]]
    else:
        here = WaysOn(ahead, facts, state, before, read)
        ways = [here if given is before else WaysOn(ahead, facts, state, given, read) for given in here.answered(state, before)]
    found.insert(0, (read, 1 + max(way.on(state, way.given, WAYS_BACK - turned) for way in ways)))
    del found[OUTCOMES_KEPT:]
    return found[0][1]
