"""The signs as they are meant to be: what each closes, which question it answers, and what follows from several."""

from __future__ import annotations

import pytest

from companion.screening.safety import Level
from companion.screening.signs import CLEARABLE, SCREENED_SIGNS, history_in_words, level_from_signs, level_until_answered, words_of

MEANT = {  # sign: the question it answers, what it closes
    "bladder_bowel": ("bladder", "emergency"), "saddle": ("bladder", "emergency"), "sexual": ("bladder", "emergency"),
    "chest": ("chest", "emergency"), "weakness": ("weakness", "same_day"), "fall": ("fall", "same_day"), "fever": ("fever", "not_today"),
    "heart_history": ("history", "clinician"), "cancer_bone": ("history", "clinician"), "weight_loss": ("history", "clinician"),
    "pregnancy": ("pregnant", "clinician"), "spine_history": ("history", "clinician"), "anticoagulants": ("history", "clinician"),
    "restriction": ("", "not_today"), "under_18": ("", "not_today"),
}  # fmt: skip


def test_each_sign_is_as_it_is_meant_to_be() -> None:
    assert {sign.id: (sign.answers, sign.level.value) for sign in SCREENED_SIGNS.values()} == MEANT
    assert {"heart_history", "cancer_bone", "weight_loss", "pregnancy", "spine_history", "anticoagulants"} == CLEARABLE


@pytest.mark.parametrize(("signs", "level"), [
    (["fever"], "not_today"), (["fever", "chest"], "emergency"), (["chest", "fever"], "emergency"),
    (["heart_history", "weakness"], "same_day"), ([], "not_today"), (["self_harm"], "not_today"), (["self_harm", "weakness"], "same_day")])
def test_while_questions_are_open_the_worst_sign_holds_and_a_doubtful_one_closes_the_day(signs: list[str], level: str) -> None:
    assert level_until_answered(signs, sure=True) is Level(level)
    assert level_until_answered(signs, sure=False) is Level.NOT_TODAY


def test_signs_are_told_in_words_and_what_is_none_is_left_out() -> None:
    assert words_of(["fever", "self_harm", "fall"]) == "fever, an infection or feeling ill; and a hard fall or blow"


@pytest.mark.parametrize(("signs", "answers", "level"), [
    ([], {}, "go"), (["restriction"], {}, "go"), (["self_harm"], {}, "go"), (["fever"], {}, "not_today"), (["weakness"], {}, "same_day"),
    (["chest"], {"when": "now"}, "emergency"), (["chest"], {"when": "earlier"}, "clinician"),
    (["weakness"], {"when": "earlier"}, "same_day"),
    (["pregnancy"], {}, "clinician"), ([], {"pregnant": "yes"}, "clinician"), ([], {"pregnant": "unsure", "history": "no"}, "clinician"),
    (["heart_history"], {"cleared": "yes", "cleared_at": "my doctor, in May"}, "go"), ([], {"pain": 4.0}, "not_today"),
    ([], {"pain": None}, "go"), ([], {"soreness": "yes"}, "go"), ([], {"leg_signs": "yes"}, "clinician")])
def test_what_signs_close(signs: list[str], answers: dict[str, str | float | None], level: str) -> None:
    assert level_from_signs(signs, answers).level is Level(level)


@pytest.mark.parametrize(("told", "words"), [
    ([], ""), (["self_harm", "nothing known"], ""), (["anticoagulants"], "blood thinners"),
    (["history"], "cancer, weak bones or steroid tablets"), (["history_signs"], "weight loss, pain at night, or chest pain at hard work"),
    (["history_care", "anticoagulants", "old"], "a disc or nerve problem, an operation or a broken bone; blood thinners")])
def test_a_history_is_named_by_what_was_told(told: list[str], words: str) -> None:
    assert history_in_words(told) == words
