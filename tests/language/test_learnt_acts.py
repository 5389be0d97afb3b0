"""The learnt layer of the speech acts."""

import pytest

from companion.language import learnt_acts
from companion.language.learnt_acts import SILENT, likeliest
from tests.corpus import learn


def test_the_shipped_weights_are_what_the_corpus_gives():
    """A step of rounding apart at most; else run tests.corpus.learn."""
    learnt, shipped = learn.learn_acts(learn.typed(), ("unsure",))["unsure"], learnt_acts._weights()["unsure"]
    assert all(abs(learnt.get(piece, 0) - shipped.get(piece, 0)) <= 1 for piece in learnt.keys() | shipped.keys())


def test_the_weights_are_written_as_they_are_read_and_small():
    text = (learn.LANGUAGE / "act_weights.txt").read_text("utf-8")
    assert learn.written(learnt_acts._weights(), learn.PAIN_IN) == text
    assert len(text) < 150_000


@pytest.mark.parametrize(("text", "act"), [
    ("couldnt make out which it was", "unsure"), ("got it muddled, the right one was mine", "correction"), ("12", "answer")])
def test_an_act_is_heard_that_no_rule_foresaw(text, act):
    assert likeliest(text, SILENT) == act


def test_a_longer_margin_hears_fewer():
    texts = [text for _, text in learn.typed()[::40]]
    assert sum(likeliest(text, 10_000) != "answer" for text in texts) == 0 < sum(likeliest(text, 0) != "answer" for text in texts)
