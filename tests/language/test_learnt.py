"""The learnt layer of reading."""

import pytest

from companion.language import learnt
from companion.language.learnt import A_NUMBER, Likely, behind, ranked
from tests.corpus import learn

SHAPE = (("clean", "It kept its shape"), ("rounds", "It rounded"))
WALL = ()


def test_the_shipped_weights_were_learnt_from_the_corpus_and_phrases_as_they_are():
    """Else run tests.corpus.learn."""
    text = (learn.LANGUAGE / "reading_weights.txt").read_text("utf-8")
    assert text.endswith(f"# Learnt from {learn.corpus_hash([*learn.typed(), *learn.phrased()])}\n")
    assert len(text) < 600_000


def test_learning_makes_what_was_said_the_likeliest_of_what_it_could_be():
    some = learn.typed()[::60]
    weights = learn.learn_reading(some, learn.READING._replace(rounds=15, seen_at_least=1))
    right = 0
    for choice in some:
        odds = {name: sum(weights[one].get(piece, 0) for one in named for piece in ("", *learnt.pieces(choice.text)))
                for name, named in choice.among}
        right += max(odds, key=odds.__getitem__) == choice.said
    assert right > 0.9 * len(some)


@pytest.mark.parametrize(("text", "options", "typed", "name"), [
    ("couldnt make out which it was", SHAPE, "", "@unsure"), ("got it muddled, the right one was mine", SHAPE, "", "@correction"),
    ("eleven and a bit", WALL, A_NUMBER, A_NUMBER), ("give this one a miss", WALL, A_NUMBER, "!skip"),
    ("folded like a deckchair", SHAPE, "", "rounds"), ("flat as anything the whole way", SHAPE, "", "clean"),
    ("can you tell me what you know about me", SHAPE, "", "!my_data")])
def test_what_no_rule_foresaw_is_read(text, options, typed, name):
    assert ranked(text, options, typed)[0].name == name


def test_all_that_a_reply_may_be_is_ranked_by_how_far_it_is_behind():
    likely = ranked("flat the whole way", SHAPE)
    assert likely[0].behind == 0
    assert [one.behind for one in likely] == sorted(one.behind for one in likely)
    assert {"clean", "rounds", "@question", "!skip"} <= {one.name for one in likely}
    assert behind(likely, "no such thing") > likely[-1].behind
    assert behind([Likely("a", 0), Likely("b", 7)], "b") == 7
