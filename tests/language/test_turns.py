"""What people type at a question, through the real step: the figures of ``python -m tests.corpus.turns``, held as floors."""

from __future__ import annotations

from collections import Counter

import pytest

from tests.corpus.turns import counted, turns

RIGHT = ("right", "confirmed", "asked")


@pytest.mark.parametrize(("name", "silent_most", "right_least"), [("seen", 0, 0.95), ("unseen", 3, 0.87)])
def test_what_people_type_is_read_right_asked_about_or_refused_and_hardly_ever_misread(name, silent_most, right_least):
    """Silent: a slot was filled wrongly and nobody asked. The lines themselves are not shown."""
    verdicts = Counter(outcome.verdict for _, outcome in counted(name))
    assert verdicts["silent"] <= silent_most
    assert sum(verdicts[one] for one in RIGHT) / verdicts.total() >= right_least


def test_every_line_names_a_state_and_an_act():
    acts = {turn.act for name in ("seen", "unseen") for turn in turns(name)}
    assert acts == {"answer", "question", "unsure", "not_yet", "correction", "pain", "flag", "command", "chat", "nothing"}
