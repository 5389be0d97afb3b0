"""What the safety check and the pain questions work out, answer by answer, without the conversation around them."""

from __future__ import annotations

from typing import Any

import pytest

from companion.conversation.flow import Known
from companion.language.flags import Flag
from flows import safety_facts
from flows.pain_facts import keys_of_pain, level_after_pain, reasons_of_pain
from flows.safety_facts import (
    CLEARED_FOR,
    HISTORY_KEYS,
    body_first,
    cleared_until,
    disc_alone,
    history_of,
    history_told,
    keys_of_check,
    level_after_check,
    level_of_open_pain,
    level_so_far,
    level_until_asked,
    limit_said,
    limits_among,
    limits_told,
    pain_but_for_taps,
    parts_with_tap,
    reasons_of_check,
    said_heart,
    said_leg_signs,
    said_saddle,
    said_weak,
    sore,
    stands_still,
    still_cleared,
    stood,
    tells_leg_sign,
    tomorrow,
    what_hurt,
)
from tests.drive import NOW
from tests.table import each_row

BEFORE: dict[str, Any] = {"today": "2026-03-02", "stood": "go", "stood_today": "no", "stood_why": "", "stood_cleared_until": "",
                          "was_pregnant": "no", "sent": "no"}
WELL: dict[str, Any] = {**BEFORE, "bladder": "no", "chest": "no", "urgent": "no", "history": "no", "history_signs": "no",
                        "history_care": "no",
                        "pain": 0.0, "leg_signs": "no"}
SMALL: dict[str, Any] = {"where": "back", "bad": 1.0, "sharp": "no", "below_knee": "no", "tingling": "no"}
"""A small pain in the lower back and nothing else."""


@each_row(("got", "told"), [
    ({}, ""), ({"history": "yes"}, "history"), ({"history_signs": "unsure"}, "history_signs"), ({"history": "no"}, ""),
    ({"pregnant": "unsure"}, "pregnancy"), ({"pregnant": "yes", "history_care": "yes"}, "history_care pregnancy"),
    ({"safety.history": "anticoagulants", "history": "unsure"}, "anticoagulants history"),
    ({"safety.history": "anticoagulants"}, "anticoagulants")])
def test_a_history_is_kept_with_what_was_told_before_and_doubt_counts(got: dict[str, Any], told: str) -> None:
    assert history_told({**WELL, **got}, "") == told


NO_FLAG: dict[str, Any] = {"urgent": "yes", "weakness": "no", "fall": "no", "fever": "no"}
HISTORY_STOOD: dict[str, Any] = {"stood": "clinician", "stood_why": "history"}


@each_row(("got", "parts"), [
    ({"bladder": "yes"}, "before go told | check go told | tap emergency told bladder"),
    ({"bladder": "unsure"}, "before go told | check go told | tap emergency told bladder"),
    ({"chest": "yes"}, "before go told | check go told | tap emergency told chest"),
    ({**HISTORY_STOOD, "bladder": "yes"}, "before clinician told history | check go told | tap emergency told history bladder"),
    ({**HISTORY_STOOD, "bladder": "yes", "mistake": "yes"}, "before clinician told | check go told | tap emergency told bladder"),
    ({**NO_FLAG, "fall": "yes", "history": "yes", "cleared": "no"},
     "before go told | check clinician told history | tap same_day told fall history"),
    ({**NO_FLAG, "weakness": "unsure", "fever": "yes"}, "before go told | check not_today told fever | tap same_day told weakness fever"),
    ({**NO_FLAG, "leg_signs": "yes", "pain": 6.0}, "before go told | check not_today told pain | tap clinician told leg_signs pain"),
    (dict.fromkeys(("urgent", *HISTORY_KEYS, "pain", "leg_signs")) | {"bladder": "yes"},
     "before go told | check go told | tap emergency told bladder")])
def test_a_tap_is_a_part_of_its_own_beside_what_else_a_check_was_told(got: dict[str, Any], parts: str) -> None:
    """By hand: what stays when the tap is undone."""
    assert parts_with_tap({key: value for key, value in {**WELL, **got}.items() if value is not None}, "") == parts


@each_row(("got", "level", "why"), [
    (SMALL, "no_load", ["bad"]), ({**SMALL, "tingling": "yes", "bladder": "yes", "weakness": "yes"}, "clinician", ["tingling"]),
    ({**SMALL, "bad": 6.0, "weakness": "yes"}, "not_today", ["bad"]),
    ({**SMALL, "sharp": "yes", "bladder": "unsure"}, "not_today", ["sharp"]),
    ({"where": "chest"}, "no_load", ["bad"]), ({"where": "back", "bad": 7.0, "heart_now": "yes"}, "not_today", ["bad"]),
    ({"where": "back", "bad": 7.0, "saddle_now": "yes"}, "not_today", ["bad"]),
    ({**SMALL, "bladder": "yes", "said": "my foot is numb"}, "clinician", ["tingling"]),
    ({**SMALL, "bad": 3.0, "bladder": "yes", "safety_check.pain": 3.0, "safety.checked.today": "yes"}, "no_load", ["bad"]),
    ({**SMALL, "bad": 3.0, "bladder": "yes", "safety_check.pain": 3.0}, "not_today", ["bad"])])
def test_pain_but_for_what_was_tapped_as_urgent_keeps_all_else(got: dict[str, Any], level: str, why: list[str]) -> None:
    outcome = pain_but_for_taps(got)
    assert (outcome.level.value, [reason.key for reason in outcome.because]) == (level, why)


# what was written ---------------------------------------------------------------------------------------------


@each_row("said", ["my chest is tight", "short of breath", "i feel faint", "i blacked out", "it went black out",
    "passed out",
                                  "nearly pass out", "my heart races", "blacking out", "passing out", "PASSED OUT"])
def test_words_of_heart_breath_and_faintness_are_asked_about(said: str) -> None:
    assert said_heart({"said": said}, "") == "yes"


@each_row("said", ["my bladder", "bowel trouble", "saddle area", "i wet myself", "cant pee", "cant poo",
    "no control on the toilet",
                                  "my groin is numb", "numb between my legs", "between the legs", "both legs are weak", "both my legs",
                                  "BOTH LEGS"])
def test_words_of_bladder_bowel_saddle_and_both_legs_are_asked_about(said: str) -> None:
    assert said_saddle({"said": said}, "") == "yes"


@each_row("said", ["my foot is numb", "tingling", "pins in my leg", "needles", "it shoots down", "it zings", "electric",
    "cant feel my foot",
                                  "can't feel it", "NUMB"])
def test_words_of_the_nerves_are_a_sign_by_themselves(said: str) -> None:
    assert said_leg_signs({"said": said}, "") == "yes"
    assert level_after_pain({**SMALL, "said": said, "bladder": "no", "weakness": "no"}, "") == "clinician"


@each_row(("words", "tells"), [
    ("my foot is numb", True), ("yes my toes are numb", True), ("pins and needles in my leg", True), ("my back hurts", False),
    ("no numbness", False), ("my foot isn't numb", False), ("what does numb mean?", False), ("numb", True)])
def test_words_of_the_nerves_are_told_where_they_are_no_denial_and_no_question(words: str, tells: bool) -> None:
    assert tells_leg_sign(words) is tells


@pytest.mark.parametrize("said", ["my back hurts", "unfeigned", "orchestra", "people", "spoon", "heartless", ""])
def test_other_words_ask_nothing_more(said: str) -> None:
    assert (said_heart({"said": said}, ""), said_saddle({"said": said}, ""), said_leg_signs({}, "")) == ("no", "no", "no")
    assert said_leg_signs({"said": said}, "") == "no"


@each_row(("said", "heart", "saddle"), [
    *((said, "yes", "no") for said in ("chest", "out of breath", "faint", "black out", "blacked out", "pass out", "passing out", "heart")),
    *((said, "no", "yes") for said in ("bladder", "bowel", "saddle", "wet myself", "pee", "poo", "toilet", "groin is numb",
                                       "between my legs", "between the legs", "both legs", "both my legs", "either leg",
                                       "neither of my feet", "can't feel my legs", "cant feel my feet", "no feeling in my legs",
                                       "lost sensation in both my legs", "losing all feeling in the feet",
                                       "without any feel of my legs", "legs are numb", "feet have gone numb",
                                       "my legs just went dead", "legs going dead"))])
def test_each_word_counts_by_itself_where_no_sign_is_heard(said: str, heart: str, saddle: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(safety_facts, "_heard", lambda words: frozenset())
        assert (said_heart({"said": said}, ""), said_saddle({"said": said}, "")) == (heart, saddle)


@each_row(("flag", "heart", "saddle", "weak"), [
    (Flag.CHEST, "yes", "no", "no"), (Flag.BLADDER_BOWEL, "no", "yes", "no"), (Flag.SADDLE, "no", "yes", "no"),
    (Flag.SEXUAL, "no", "yes", "no"), (Flag.WEAKNESS, "no", "no", "yes"), (Flag.FEVER, "no", "no", "no")])
def test_each_sign_counts_by_itself_where_none_of_the_words_is_said(flag: Flag, heart: str, saddle: str, weak: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(safety_facts, "_heard", lambda words: frozenset((flag,)))
        got = {"said": "something"}
        assert (said_heart(got, ""), said_saddle(got, ""), said_weak(got, "")) == (heart, saddle, weak)


def test_words_that_set_no_limit_are_left_out() -> None:
    assert limits_among(["", " ", "none", "no squats"]) == "no squats"
    assert limits_among(["", "none"]) is None


@each_row(("answers", "worst"), [
    (("no", "no", "no"), "no"), (("no", "no", None), None), ((None, None, None), None), (("no", "unsure", None), "unsure"),
    (("yes", "unsure", "no"), "yes"), (("unsure", "no", "yes"), "yes")])
def test_three_answers_about_history_count_as_their_worst(answers: tuple[str | None, ...], worst: str | None) -> None:
    assert history_of({key: one for key, one in zip(HISTORY_KEYS, answers, strict=True) if one is not None}) == worst


# the check ----------------------------------------------------------------------------------------------------


def test_what_stood_is_kept_with_the_check() -> None:
    nothing = stood(Known({}, NOW))
    assert nothing == {"stood": "go", "stood_today": "no", "stood_why": "", "stood_cleared_until": "", "was_pregnant": "no", "sent": "no"}
    facts = {"safety.level": "no_load", "safety.level.today": "yes", "safety.why": "pain", "safety.cleared_until": "2026-09-01",
             "safety_check.pregnant": "yes"}
    assert stood(Known(facts, NOW)) == {"stood": "no_load", "stood_today": "yes", "stood_why": "pain", "stood_cleared_until": "2026-09-01",
                                        "was_pregnant": "yes", "sent": "no"}
    for here, before, stands in (("no", "yes", "yes"), ("unsure", "yes", "unsure"), ("no", "no", "no")):
        assert stood(Known({"safety_check.pregnant": here, "safety.pregnant": before}, NOW))["was_pregnant"] == stands


@each_row(("level", "why", "sent"), [
    ("emergency", "", "yes"), ("same_day", "", "yes"), ("clinician", "history", "no"), ("clinician", "leg_signs", "yes"),
    ("clinician", "bad below_knee", "yes"), ("clinician", "tingling", "yes"), ("not_today", "tingling", "no"), ("go", "leg_signs", "no"),
    ("", "", "no")])
def test_who_was_sent_to_be_seen_is_asked_whether_they_were(level: str, why: str, sent: str) -> None:
    assert stood(Known({"safety.level": level, "safety.why": why}, NOW))["sent"] == sent


@each_row(("changed", "level"), [
    ({}, "go"), ({"bladder": "yes"}, "emergency"), ({"bladder": "unsure"}, "emergency"), ({"chest": "yes"}, "emergency"),
    ({"pain": 3.0}, "no_load"), ({"pain": 4.0}, "not_today"), ({"leg_signs": "yes"}, "clinician"), ({"history": "yes"}, "clinician"),
    ({"urgent": "yes", "weakness": "yes", "fall": "no", "fever": "no"}, "same_day"),
    ({"urgent": "yes", "weakness": "no", "fall": "yes", "fever": "no"}, "same_day"),
    ({"urgent": "yes", "weakness": "no", "fall": "no", "fever": "yes"}, "not_today"),
    ({"urgent": "yes", "weakness": "no", "fall": "no", "fever": "no"}, "go"),
    ({"urgent": "yes"}, "same_day"),  # nothing more was said: it may be any
    ({"history": "yes", "pregnant": "no", "old_disc": "yes"}, "go"),
    ({"history": "yes", "pregnant": "no", "old_disc": "no", "cleared": "yes", "cleared_at": "my physio, in May"}, "go"),
    ({"history": "yes", "pregnant": "no", "old_disc": "no", "cleared": "yes"}, "clinician"),
    *(({"history": "yes", "pregnant": "no", "old_disc": "no", "cleared": "yes", **who}, level) for who, level in (
        ({"cleared_at": "my physio", "cleared_when": "yesterday"}, "go"),
        ({"cleared_at": "my physio", "cleared_when": "dunno"}, "clinician"),
        ({"cleared_at": "yes", "clinician": "yes", "clinician_said": "my physio on monday"}, "go"),
        ({"cleared_at": "yes", "clinician": "yes", "clinician_said": "my physio, tomorrow"}, "clinician"),
        ({"cleared_said": "my physio cleared me yesterday"}, "go"), ({"cleared_said": "my mate cleared me yesterday"}, "clinician"))),
    ({"history": "no", "was_pregnant": "yes", "pregnant": "yes"}, "clinician"),
    ({"history": "no", "was_pregnant": "unsure", "pregnant": "unsure"}, "clinician"),
    ({"history": "no", "was_pregnant": "yes", "pregnant": "no"}, "go"),
    ({"history": "no", "was_pregnant": "yes"}, "clinician"),
    ({"history": "no", "was_pregnant": "unsure"}, "clinician"),
    ({"history": "yes", "was_pregnant": "yes", "pregnant": "no"}, "clinician"),
    ({"history": "yes", "pregnant": "no", "same_history": "yes", "stood_cleared_until": "2026-03-02"}, "go"),
    ({"history": "yes", "pregnant": "no", "same_history": "yes", "stood_cleared_until": "2026-03-01"}, "clinician"),
    ({"history": "yes", "pregnant": "no", "same_history": "no", "stood_cleared_until": "2026-03-02"}, "clinician")])
def test_the_level_a_check_finds(changed: dict[str, Any], level: str) -> None:
    assert level_after_check({**WELL, **changed}, "") == level


@each_row(("changed", "level"), [
    ({"stood": "not_today", "stood_today": "yes"}, "not_today"), ({"stood": "not_today", "stood_today": "no"}, "go"),
    ({"stood": "no_load", "stood_today": "yes", "pain": 4.0}, "not_today"),
    ({"stood": "clinician"}, "clinician"), ({"stood": "clinician", "mistake": "yes"}, "go"),
    ({"stood": "clinician", "mistake": "no"}, "clinician"),
    ({"stood": "clinician", "mistake": "unsure"}, "clinician"),
    ({"stood": "clinician", "history": "yes", "pregnant": "no", "cleared": "yes", "cleared_at": "Dr Ahn, today"}, "go"),
    ({"stood": "emergency", "sent": "yes", "seen": "yes", "seen_cleared": "yes"}, "go"),
    ({"stood": "emergency", "sent": "yes", "seen": "yes", "seen_cleared": "no"}, "emergency"),
    ({"stood": "same_day", "sent": "yes", "seen": "yes", "seen_cleared": "unsure"}, "same_day"),
    ({"stood": "same_day", "sent": "yes", "seen": "no"}, "same_day"),
    ({"stood": "clinician", "sent": "yes", "seen": "yes", "seen_cleared": "yes"}, "go"),
    ({"stood": "same_day", "sent": "yes", "seen": "yes", "seen_cleared": "no", "bladder": "yes"}, "emergency")])
def test_what_stood_before_goes_only_by_what_ends_it(changed: dict[str, Any], level: str) -> None:
    assert level_after_check({**WELL, **changed}, "") == level


def test_who_was_not_seen_is_asked_no_more_and_stays_where_they_were() -> None:
    assert level_after_check({**BEFORE, "stood": "same_day", "sent": "yes", "seen": "no"}, "") == "same_day"


@each_row(("said", "level"), [
    ({}, "go"), ({"bladder": "no"}, "go"), ({"chest": "yes"}, "emergency"), ({"urgent": "yes"}, "same_day"),
    ({"urgent": "unsure"}, "same_day"),
    ({"urgent": "yes", "weakness": "no"}, "same_day"), ({"urgent": "yes", "weakness": "no", "fall": "no"}, "go"),
    ({"urgent": "yes", "weakness": "no", "fall": "no", "fever": "yes"}, "not_today"),
    ({"urgent": "no"}, "go"), ({"history": "yes"}, "clinician"), ({"pain": 3.0}, "no_load"), ({"stood": "not_today"}, "not_today"),
    ({"stood": "no_load", "pain": 5.0}, "not_today")])
def test_left_half_done_a_check_counts_what_was_said(said: dict[str, Any], level: str) -> None:
    assert level_so_far({**BEFORE, **said}, "") == level


@pytest.mark.parametrize(("changed", "still", "keys"), [
    ({}, "no", ""), ({"stood": "not_today", "stood_today": "yes", "stood_why": "bad"}, "yes", "bad"),
    ({"stood": "not_today", "stood_today": "yes", "stood_why": "bad", "pain": 4.0}, "no", "bad pain"),
    ({"stood": "not_today", "stood_today": "no", "stood_why": "bad", "pain": 3.0}, "no", "pain"),
    ({"stood": "same_day", "sent": "yes", "stood_why": "weakness", "seen": "no"}, "yes", "weakness"),
    ({"stood": "no_load", "stood_today": "yes", "stood_why": "pain", "pain": 3.0}, "no", "pain")])
def test_what_only_still_stands_is_told_from_what_was_found(changed: dict[str, Any], still: str, keys: str) -> None:
    got = {**WELL, **changed}
    assert (stands_still(got, ""), keys_of_check(got, "")) == (still, keys)
    assert (reasons_of_check(got, "") == "what was said before still stands") is (still == "yes")


def test_unseen_the_old_reasons_stand_whatever_was_answered() -> None:
    for stood_at in ("same_day", "emergency"):
        got = {**BEFORE, "stood": stood_at, "sent": "yes", "stood_why": "weakness", "seen": "no"}
        assert (stands_still(got, ""), keys_of_check(got, "")) == ("yes", "weakness")


def test_a_clearance_that_was_never_told_is_not_still_the_same() -> None:
    got = {**WELL, "history": "yes", "pregnant": "no", "same_history": "yes"}
    del got["stood_cleared_until"]
    assert level_after_check(got, "") == level_after_check({**got, "stood_cleared_until": None}, "") == "clinician"


def test_reasons_are_told_in_words() -> None:
    assert reasons_of_check(WELL, "") == "nothing against it"
    assert reasons_of_check({**WELL, "pain": 3.0}, "") == "Back or hip pain of 3 out of 10: floor tests only, no load today."
    assert reasons_of_check(BEFORE, "") == "nothing against it"


@pytest.mark.parametrize(("until", "still"), [("2026-03-02", "yes"), ("2026-03-03", "yes"), ("2026-03-01", "no"), ("", "no")])
def test_a_clearance_counts_up_to_its_last_day(until: str, still: str) -> None:
    assert still_cleared({"today": "2026-03-02", "stood_cleared_until": until}, "") == still
    assert still_cleared({"today": "2026-03-02"}, "") == "no"


def test_a_clearance_told_today_counts_for_half_a_year() -> None:
    told = {"today": "2026-03-02", "cleared": "yes", "cleared_at": "my physio, in May"}
    assert cleared_until(told, "") == "2026-09-01"
    assert CLEARED_FOR.days == 183
    assert cleared_until({**told, "cleared": "unsure"}, "") is None
    assert cleared_until({"today": "2026-03-02", "cleared": "yes"}, "") is None


@each_row(("got", "said"), [
    ({"limits": "no bending"}, "no bending"), ({"limits": "None."}, None), ({"limits": " no "}, None), ({"limits": "nothing"}, None),
    ({"limits": "no limits"}, None), ({"limits": ""}, None), ({}, None), ({"told": "nothing serious"}, None),
    ({"told": "no weights for 3 weeks"}, "no weights for 3 weeks"), ({"told": "light training is fine"}, "light training is fine"),
    ({"told": "no weights", "limits": "no bending"}, "no weights. no bending"),
    ({"safety_check.limits": "no bending"}, None), ({"safety_check.limits": "no bending", "same_history": "yes"}, "no bending"),
    ({"safety_check.limits": "no bending", "same_history": "no"}, None), ({"safety_check.limits": "no bending", "limits": "none"}, None),
    ({"safety_check.limits": "no bending", "same_history": "yes", "safety.limits": ""}, None)])
def test_a_limit_is_one_told_now_or_one_of_before_that_was_never_taken_apart(got: dict[str, Any], said: str | None) -> None:
    assert limit_said(got, "") == said


@pytest.mark.parametrize(("changed", "first"), [
    ({}, "no"), ({"history": "yes", "pregnant": "no", "old_disc": "yes"}, "yes"),
    ({"history": "yes", "pregnant": "yes", "cleared": "yes", "cleared_at": "my midwife"}, "yes"),
    ({"history": "yes", "pregnant": "no", "cleared": "yes", "cleared_at": "my physio"}, "no")])
def test_body_weight_comes_first_after_a_disc_and_in_pregnancy(changed: dict[str, Any], first: str) -> None:
    assert body_first({**WELL, **changed}, "") == first


def test_sore_is_also_who_is_not_sure() -> None:
    assert [sore({"soreness": said}, "") for said in ("yes", "unsure", "no")] == ["yes", "yes", "no"]
    assert sore({}, "") == "no"


def test_tomorrow_is_one_day_on() -> None:
    assert tomorrow({"today": "2026-02-28"}, "") == "2026-03-01"


# pain ---------------------------------------------------------------------------------------------------------


@each_row(("changed", "level"), [
    ({}, "no_load"), ({"bad": 2.0}, "not_today"), ({"bad": 4.0}, "not_today"), ({"sharp": "yes"}, "not_today"),
    ({"bad": 3.0, "safety_check.pain": 2.0, "safety.checked.today": "yes"}, "no_load"),
    ({"bad": 3.0, "safety_check.pain": 2.0}, "not_today"),  # of another day
    ({"bad": 3.0, "safety_check.pain": 2.0, "safety.checked.today": "no"}, "not_today"),
    ({"bad": 3.0, "safety_check.pain": 1.0, "safety.checked.today": "yes"}, "not_today"),
    ({"bad": 2.0, "safety.checked.today": "yes"}, "not_today"),
    ({"below_knee": "yes", "bladder": "no", "weakness": "no"}, "clinician"),
    ({"below_knee": "yes", "bladder": "no", "weakness": "yes"}, "same_day"),
    ({"below_knee": "yes", "bladder": "yes"}, "emergency"), ({"tingling": "unsure", "bladder": "no", "weakness": "no"}, "clinician"),
    ({"where": "ankle", "below_knee": None}, "no_load"), ({"where": "knee", "below_knee": None}, "no_load"),
    ({"where": "ankle", "below_knee": "yes"}, "no_load"), ({"where": "leg", "below_knee": None}, "emergency"),
    ({"where": "chest"}, "emergency"), ({"where": "chest", "bad": None, "sharp": None, "below_knee": None, "tingling": None}, "emergency"),
    ({"heart_now": "yes"}, "emergency"), ({"heart_now": "unsure"}, "emergency"), ({"heart_now": "no"}, "no_load"),
    ({"saddle_now": "yes"}, "emergency"), ({"saddle_now": "unsure"}, "emergency"), ({"saddle_now": "no"}, "no_load"),
    ({"safety.level": "clinician"}, "clinician"), ({"where": "nothing"}, "go"),
    ({"where": "nothing", "safety.level": "same_day"}, "same_day"), ({"where": "nothing", "safety.level": "go"}, "go")])
def test_the_level_that_pain_leads_to(changed: dict[str, Any], level: str) -> None:
    got = {key: value for key, value in {**SMALL, **changed}.items() if value is not None}
    assert level_after_pain(got, "") == level


@pytest.mark.parametrize("key", ["heart_now", "saddle_now"])
@pytest.mark.parametrize("said", ["yes", "unsure"])
def test_an_emergency_is_told_for_its_one_reason(key: str, said: str) -> None:
    """Nothing more is asked after it, and what was not asked is not held against anybody."""
    got = {key: said}
    assert level_after_pain(got, "") == level_until_asked(got, "") == "emergency"
    assert keys_of_pain(got, "").split()[0] == {"heart_now": "where", "saddle_now": "bladder"}[key]
    assert not {"sharp", "below_knee", "tingling", "weakness"} & set(keys_of_pain(got, "").split())
    answered = {**got, "where": "back", "bad": 6.0, "sharp": "yes"}
    assert {"bad", "sharp"} & set(keys_of_pain(answered, "").split()) == ({"bad", "sharp"} if key == "saddle_now" else set())


def test_what_is_not_asked_yet_is_no_reason() -> None:
    assert keys_of_pain({"where": "back"}, "") == "bad"
    assert reasons_of_pain({"where": "back"}, "") == "back. A small pain: no loaded work today."


def test_pain_in_the_chest_is_told_for_that_alone() -> None:
    got = {**SMALL, "where": "chest", "bad": 6.0, "sharp": "yes", "below_knee": "yes"}
    assert (level_after_pain(got, ""), keys_of_pain(got, "")) == ("emergency", "where")


@each_row(("said", "level"), [
    ({}, "not_today"), ({"where": "back", "bad": 1.0}, "not_today"), ({"safety.level": "clinician"}, "clinician"),
    ({"where": "chest"}, "emergency"), ({"below_knee": "yes"}, "clinician"), ({"below_knee": "yes", "bladder": "yes"}, "emergency"),
    ({"below_knee": "yes", "bladder": "no", "weakness": "yes"}, "same_day"), ({"heart_now": "yes"}, "emergency")])
def test_until_all_is_answered_the_day_is_closed_or_worse(said: dict[str, Any], level: str) -> None:
    assert level_until_asked(said, "") == level


@pytest.mark.parametrize(("changed", "words", "keys"), [
    ({}, "back, 1 of 10. A small pain: no loaded work today.", "bad"),
    ({"where": "nothing"}, "nothing hurt after all", ""),
    ({"where": "nothing", "safety.why": "history"}, "nothing hurt after all", "history"),
    ({"safety.why": "history bad"}, "back, 1 of 10. A small pain: no loaded work today.", "history bad"),
    ({"where": None, "bad": None}, "somewhere. A small pain: no loaded work today.", "bad")])
def test_where_how_bad_and_why_in_words_and_keys(changed: dict[str, Any], words: str, keys: str) -> None:
    got = {key: value for key, value in {**SMALL, **changed}.items() if value is not None}
    assert (reasons_of_pain(got, ""), keys_of_pain(got, "")) == (words, keys)


@each_row(("said", "limit"), [
    ("no squats for two weeks", "no squats for two weeks"), ("take it easy", "take it easy"), ("just a muscle strain", None),
    ("they did an ecg, all normal", None), ("my physio cleared me", None), ("none", None)])
def test_what_was_only_found_sets_no_limit(said: str, limit: str | None) -> None:
    assert limits_told(said) == limit


@pytest.mark.parametrize(("where", "words"), [
    ("back", "your back"), ("hip", "your hip or groin"), ("leg", "your leg"), ("knee", "your knee"), ("ankle", "your ankle or foot"),
    ("chest", "something"), ("other", "something"), ("", "something")])
def test_what_hurt_is_called_by_its_place(where: str, words: str):
    assert what_hurt(Known({"pain.where": where}, NOW)) == words


@pytest.mark.parametrize(("got", "alone"), [
    ({"history_care": "yes"}, "yes"), ({"history_care": "unsure", "safety.history": "spine_history"}, "yes"),
    ({"history_care": "yes", "history": "unsure"}, "no"), ({"history_care": "yes", "history_signs": "yes"}, "no"),
    ({"history_care": "yes", "safety.history": "heart_history"}, "no"), ({"history_care": "no", "history": "yes"}, "no")])
def test_a_disc_is_all_there_is_where_nothing_else_was_told_now_or_before(got: dict[str, str], alone: str):
    assert disc_alone(got, "") == alone


@each_row(("said", "both"), [
    ("cant feel either leg", "yes"), ("i can't feel either of my legs", "yes"),
    ("i can't feel my legs", "yes"), ("both legs tingle", "yes"),
    ("my legs have gone numb", "yes"), ("my legs are sore", "no"), ("my left leg is numb", "no")])
def test_words_of_both_legs_are_a_red_flag(said: str, both: str):
    assert said_saddle({"said": said}, "") == both


@each_row(("got", "level"), [
    ({"said": "pain down my leg and my foot drags"}, "same_day"), ({"said": "my leg hurts"}, "not_today"),
    ({"said": "pain down my leg and my foot drags", "weakness": "no", "bad": 2.0, "sharp": "no", "below_knee": "no", "tingling": "no",
      "bladder": "no"}, "not_today")])
def test_a_weak_leg_that_was_told_decides_until_it_was_asked_about(got: dict[str, Any], level: str) -> None:
    assert level_of_open_pain(got).value == level
