"""How whole replies are heard: yes, no, unsure, skip, back, stop, again, help, ready."""

from __future__ import annotations

import string
from time import process_time
from timeit import timeit

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language import phrases
from companion.language.phrases import FIRM, LONGEST_READ, LOOSE, SIGNS, WORDS_NEAR_PHRASES, Phrase, hear, normalise
from tests.table import each_row

SAID = {
    Phrase.YES: [
        "yep",
        "Yeah",
        "yes please",
        "YES!!!",
        "yup mate",
        "of course",
        "👍",
        "👍🏽",
        "yes yes",
        "yesss",
        "Yes.",
    ],
    Phrase.NO: ["nah", "No thanks", "nope", "not really", "no no no", "none of these", "👎", "nooo", "no, sorry"],
    Phrase.UNSURE: ["dunno", "no idea", "I don’t know", "not sure", "maybe?", "hmm", "🤷", "🤷\u200d♂️", "idk"],
    Phrase.SKIP: ["skip", "pass", "can we skip this one?", "skip it please", "rather not say", "⏭️"],
    Phrase.BACK: ["go back", "wait I meant something else", "undo", "wrong button sorry", "oops", "🔙"],
    Phrase.STOP: ["stop", "Stop!", "pause", "quit", "please stop", "ok stop", "I need a break", "🛑", "/stop", "stop the timer", "Stop it",
                  "stop my timer please", "end the countdown", "stop counting", "timer off", "stop the hold now"],
    Phrase.AGAIN: ["say that again", "what?", "huh", "sorry?", "repeat please", "I don't understand", "🔁"],
    Phrase.DESCRIBE: ["describe", "Describe it please", "describe the picture", "what is in the picture?", "alt text"],
    Phrase.HELP: ["help", "?", "??", "help me please", "how does this work", "/help"],
    Phrase.READY: ["done", "ok", "ready", "got it", "I'm ready", "all done thanks", "let's go", "✅", "done 👍"],
}
MISTYPED = {
    "stpo": Phrase.STOP, "pasue": Phrase.STOP, "stoppp": Phrase.STOP, "redy": Phrase.READY, "gotit": Phrase.READY,
    "dont konw": Phrase.UNSURE, "go bakc": Phrase.BACK, "hlep": Phrase.HELP, "say taht agian": Phrase.AGAIN,
    "skpi": Phrase.SKIP, "yeahh": Phrase.YES, "absolutly": Phrase.YES, "definately": Phrase.YES,
}  # fmt: skip
EVERY_FIRM = sorted({
    phrase
    for lines in FIRM.values()
    for phrase in (part.strip() for part in lines.split(","))
    if "|" not in phrase and "?" not in phrase
})  # fmt: skip


@each_row(("meaning", "text"), [(m, t) for m, texts in SAID.items() for t in texts])
def test_the_common_ways_of_saying_it_are_heard(meaning: Phrase, text: str) -> None:
    assert hear(text) is meaning


@each_row(("text", "meaning"), MISTYPED.items())
def test_a_slip_of_the_finger_is_forgiven_only_where_safety_does_not_hang_on_it(text: str, meaning: Phrase) -> None:
    assert hear(text) is meaning
    assert hear(text, strict=True) is None


@pytest.mark.parametrize("text", ["yes no", "no stop", "not really yes", "yes but no", "stop yes", "no 👍", "yes 👎"])
def test_a_mixed_reply_means_nothing(text: str) -> None:
    assert hear(text) is None
    assert hear(text, strict=True) is None


@each_row("text", ["step", "spot", "heel", "sore", "past", "short", "right", "none1", "cancer", "not"])
def test_a_real_word_near_a_phrase_is_not_taken_for_it(text: str) -> None:
    assert hear(text) is None


@pytest.mark.parametrize("text", ["ys", "n0", "oj", "yed", "nk", "bo"])
def test_a_slip_in_a_short_word_is_asked_again(text: str) -> None:
    assert hear(text) is None


@each_row(
    "text",
    ["no pain", "yes it went to the left", "I stopped at 12", "my back", "skip was fun", "12", "11 cm", "", " ", "…"],
)
def test_a_longer_sentence_or_a_value_is_not_a_phrase(text: str) -> None:
    assert hear(text) is None


@pytest.mark.parametrize("text", ["yes?", "no?", "ready?", "ok?"])
def test_an_answer_with_a_question_mark_is_no_answer(text: str) -> None:
    assert hear(text) is None
    assert hear(text, strict=True) is None


@each_row(
    "text", ["👍", "sure", "I think so", "not really", "ok yes", "yes :)", "yess", "nooo", "not that I know of"]
)
def test_a_safety_question_asks_again_after_signs_and_loose_wording(text: str) -> None:
    assert hear(text, strict=True) is None


@each_row("text", ["yes", "No.", "no thanks", "YES", "yes, I do", "I don't know", "stop", "“no”"])
def test_a_safety_question_takes_plain_words(text: str) -> None:
    assert hear(text, strict=True) is hear(text) is not None


@each_row("phrase", EVERY_FIRM)
def test_every_firm_phrase_is_heard_alike_in_both_ways(phrase: str) -> None:
    assert hear(phrase) is hear(phrase, strict=True) is not None


def test_no_single_edit_of_a_plain_word_becomes_yes_or_no_on_a_safety_question() -> None:
    for word in ("yes", "no", "yeah", "nope", "stop", "never", "correct"):
        for at in range(len(word) + 1):
            for letter in string.ascii_lowercase:
                for typed in (word[:at] + letter + word[at:], word[:at] + letter + word[at + 1 :]):
                    heard = hear(typed, strict=True)
                    assert heard is None or (typed,) in phrases._FIRM, (typed, heard)


@each_row("word", WORDS_NEAR_PHRASES.split())
def test_the_listed_real_words_mean_nothing(word: str) -> None:
    assert hear(word) is None


def test_a_phrase_under_two_meanings_would_be_refused() -> None:
    with pytest.raises(ValueError, match="both"):
        phrases._phrases({Phrase.YES: "aye|sure", Phrase.NO: "sure thing?"}, {})


def test_a_sign_has_one_meaning() -> None:
    signs = "".join(SIGNS.values())
    assert len(signs) == len(set(signs))
    assert set(LOOSE) <= set(FIRM) == set(SIGNS) == set(Phrase)


@given(st.text(max_size=200))
def test_strict_never_hears_anything_else_than_the_easier_way(text: str) -> None:
    firm = hear(text, strict=True)
    assert firm is None or firm is hear(text)


@given(st.text(alphabet=st.characters(), max_size=300))
def test_normalising_twice_changes_nothing_more(text: str) -> None:
    once = normalise(text)
    assert normalise(once) == once


@each_row(
    ("typed", "plain"),
    [
        ("  Don’t\tKNOW \n", "don't know"),
        ("4½\"", '4 1/2"'),
        ("½", "1/2"),
        ("70º", "70°"),
        ("−3", "-3"),
        ("11–12", "11-12"),
        ("5’11”", "5'11\""),
        ("\u202e\u200bYes\ufe0f\x00", "yes"),
        ("ＹＥＳ", "yes"),
        ("\ud800no", "no"),
    ],
)  # fmt: skip
def test_a_reply_is_normalised(typed: str, plain: str) -> None:
    assert normalise(typed) == plain


@pytest.mark.parametrize("junk", ["a" * 65536, "yes " * 16384, "👍" * 65536, "\u202e" * 65536, "ﷺ" * 65536, "a\u0301" * 32768])
def test_sixty_four_kibibytes_are_read_quickly_and_mean_nothing(junk: str) -> None:
    assert timeit(lambda: hear(junk), timer=process_time, number=1) < 1
    assert hear(junk) is None
    assert len(normalise("x" * 65536)) == LONGEST_READ
