"""The network computes what PyTorch does with the same weights, cuts words as BERT does, and is only asked where there is doubt."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from companion.language.flags import Flag, classifier, network
from tests.corpus.lines import LANGUAGE, lines_hash

OUTPUTS = json.loads((Path(__file__).parent / "network_outputs.json").read_text("utf-8"))
"""Text → the log-odds that PyTorch gave for it, with weights that were not yet whole numbers (tests/corpus/learn_network.py)."""


def test_it_computes_what_pytorch_does() -> None:
    """Whole numbers cost a little."""
    apart = np.array([network.network().log_odds(text) - said for text, said in OUTPUTS.items()])
    assert len(OUTPUTS) > 80
    assert np.sqrt((apart**2).mean()) < 0.1
    assert np.abs(apart).max() < 0.5


TOY = {piece: row for row, piece in enumerate(["[UNK]", "[CLS]", "[SEP]", "want", "##want", "##ed", "wa", "un", "runn", "##ing", ","])}


@pytest.mark.parametrize(("text", "pieces"), [
    ("UNwant\u00e9d,running", "un ##want ##ed , runn ##ing"), ("unwanted running", "un ##want ##ed runn ##ing"),
    ("unwantedX running", "[UNK] runn ##ing"), ("", "")])  # fmt: skip
def test_words_are_cut_as_in_the_tests_of_berts_own_tokenizer(text: str, pieces: str) -> None:
    """github.com/google-research/bert, tokenization_test.py (from memory)."""
    assert network.pieces(text, TOY) == [TOY[piece] for piece in ("[CLS]", *pieces.split(), "[SEP]")]


def test_an_apostrophe_changes_nothing_and_a_word_without_end_is_unknown() -> None:
    of = network.network().vocabulary
    assert network.pieces("don’t", of) == network.pieces("dont", of)
    assert network.pieces("a" * 41, of)[1:-1] == [of["[UNK]"]]


@given(st.floats(-8, 8, width=32))
def test_what_bends_is_x_times_the_share_of_a_normal_distribution_below_it(x: float) -> None:
    """Against SciPy's; the approximation by tanh is off by a thousandth at most."""
    assert float(network._gelu(np.array(x, np.float32))) == pytest.approx(x * norm.cdf(x), abs=1e-3)


@given(st.text(max_size=300))
def test_nothing_typed_makes_it_fail_and_it_says_something_of_each_flag(text: str) -> None:
    odds = network.log_odds(text)
    assert len(odds) == len(Flag) + 1
    assert all(abs(one) < 500 for one in odds)


def test_of_a_long_message_so_many_pieces_are_read() -> None:
    of = network.network().vocabulary
    assert len(network.pieces("no, " * 20_000, of)) == network.PIECES_READ


def test_the_order_of_words_counts() -> None:
    assert network.log_odds("i am not my mother is ill") != network.log_odds("my mother is not i am ill")


def test_the_shipped_network_was_learnt_from_the_corpus_as_it_is() -> None:
    """Else run tests.corpus.learn_network."""
    assert network.network().learnt_from == lines_hash()


def test_it_is_small() -> None:
    assert (LANGUAGE / "flags" / "network.npz").stat().st_size < 23_000_000


def test_it_is_loaded_with_the_first_message_that_may_be_a_flag() -> None:
    code = ("from companion.language.flags import hear_flags, network; loaded = network.network.cache_info; hear_flags('left 11'); "
            "assert not loaded().currsize; hear_flags('my foot keeps catching on the rug'); assert loaded().currsize")
    subprocess.run([sys.executable, "-c", code], check=True, cwd=LANGUAGE.parent.parent)


def test_what_the_weights_speak_strongly_against_is_not_read_by_it_unless_the_rules_have_dropped_something(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(classifier, "log_odds", lambda text: (1000,) * (len(Flag) + 1))
    assert classifier.weigh("yes please", "yes please", ["yes", "please"]).some < classifier.ASKED_FROM
    assert classifier.weigh("yes please", "yes please", ["yes", classifier.TAKEN_OUT, "please"]).some > 4000
    assert classifier.weigh("my foot keeps slapping", "my foot keeps slapping", ["my", "foot", "keeps", "slapping"]).some > 4000
