"""What the questions about signs come to, answer by answer, by hand; levels as in reference values, safety."""

from __future__ import annotations

from typing import Any

import pytest

from companion.conversation.moves import SIGN_MOST
from companion.language.flags import Flag, Heard
from flows import sign_facts
from flows.sign_facts import may_be, signs_in
from tests.table import each_row


def of(name: str, got: dict[str, Any]) -> Any:
    return getattr(sign_facts, name)(got, "")


@each_row(("got", "signs"), [
    ({}, ()), ({"heard": "weakness"}, ("weakness",)), ({"heard": "weakness fever"}, ("weakness", "fever")),
    ({"heard": "weakness nonsense"}, ("weakness",)), ({"heard": "weakness", "among": "saddle fever"}, ("saddle", "fever")),
    ({"heard": "weakness", "among": "saddle fever", "which": "unsure"}, ("saddle", "fever")),
    ({"heard": "weakness", "among": "saddle fever", "which": "fever"}, ("fever",)),
    ({"heard": "weakness", "among": "saddle fever", "which": "no"}, ()),
    ({"heard": "saddle", "among": "self_harm saddle", "which": "self_harm"}, ()),
    ({"heard": "saddle", "among": "self_harm saddle"}, ("saddle",)), ({"heard": "weakness", "among": "nonsense"}, ("weakness",))])
def test_of_several_that_may_be_meant_the_one_chosen_counts_or_all(got: dict[str, Any], signs: tuple[str, ...]):
    assert signs_in(got) == signs


def test_among_what_may_be_meant_self_harm_is_named_and_nothing_unknown():
    assert may_be({"among": "saddle nonsense self_harm fever"}) == ("saddle", "self_harm", "fever")
    assert may_be({}) == ()


@each_row(("said", "quoted"), [
    ("my foot drops", "“my foot drops”"), ("", "something more"), ("word " * 59 + "wor", None)])
def test_the_words_are_quoted_where_they_were_kept(said: str, quoted: str | None):
    found = of("quoted", {"said": said})
    assert found == quoted if quoted else found.startswith("“word") and found.endswith("”")
    assert of("quoted", {"among": "self_harm fever"}) == "something I could not place"


@each_row(("which", "asked"), [("self_harm", "sure"), ("unsure", "doubtful"), (None, "doubtful")])
def test_a_crisis_is_asked_about_first_unless_it_was_chosen(which: str | None, asked: str):
    assert of("crisis_asked", {"which": which}) == asked


@each_row(("got", "more"), [
    ({"heard": "bladder_bowel", "meant": "i have a fever"}, True), ({"heard": "bladder_bowel", "meant": "my back hurts"}, True),
    ({"heard": "bladder_bowel", "meant": "my phone died"}, False), ({"heard": "fever", "meant": "i have a fever"}, False),
    ({"heard": "chest", "meant": "my chest hurts"}, False), ({"heard": "weakness", "meant": "my leg hurts a bit"}, True),
    ({"heard": "fever", "meant": "my chest hurts"}, True),
    ({"heard": "weakness", "among": "fever chest", "meant": "i have a fever"}, False),
    ({"heard": "weakness", "among": "fever chest", "meant": "i just feel weird down there"}, True)])
def test_what_was_meant_is_another_matter_only_where_it_is_not_what_was_asked_about(got: dict[str, Any], more: bool):
    assert (of("meant_too", got) != "") is more
    assert of("thanked", got).startswith("Thank you. Then about" if more else "Thank you, then I misunderstood")


@pytest.mark.parametrize(("about", "more"), [("weakness", False), ("fever saddle", False), ("fall", True)])
def test_words_that_may_be_of_two_signs_are_no_other_matter_where_one_of_these_was_asked_about(monkeypatch, about: str, more: bool):
    heard = Heard(Flag.WEAKNESS, False, "odd", also=(Flag.SADDLE,))
    monkeypatch.setattr(sign_facts, "hear_flags", lambda words: (heard,))
    sign_facts._more.cache_clear()
    assert (of("meant_too", {"heard": about, "meant": "odd legs, so to say"}) != "") is more


PHYSIO = {"cleared": "yes", "cleared_at": "my physio, yesterday", "knew": "yes"}
MATE = {**PHYSIO, "cleared_at": "my mate, yesterday"}


@each_row(("heard", "answers", "level"), [
    ("bladder_bowel", {}, "emergency"), ("saddle", {}, "emergency"), ("sexual", {}, "emergency"),
    ("chest", {}, "emergency"), ("chest", {"when": "now"}, "emergency"), ("chest", {"when": "unsure"}, "emergency"),
    ("chest", {"when": "earlier"}, "clinician"), ("chest", {"when": "earlier", **PHYSIO}, "go"),
    ("weakness", {"bladder": "no"}, "same_day"), ("weakness", {"bladder": "yes"}, "emergency"),
    ("weakness", {"bladder": "unsure"}, "emergency"),
    ("fall", {}, "same_day"), ("fever", {"pain": 0.0}, "not_today"), ("fever", {"pain": 8.0}, "same_day"),
    ("heart_history", {}, "clinician"), ("heart_history", {"cleared": "no"}, "clinician"), ("heart_history", PHYSIO, "go"),
    ("heart_history", MATE, "clinician"), ("heart_history", {**MATE, "clinician": "yes"}, "go"),
    ("heart_history", {"cleared": "yes", "knew": "yes"}, "clinician"), ("heart_history", {**PHYSIO, "cleared": "unsure"}, "clinician"),
    ("heart_history", {**PHYSIO, "knew": "no"}, "clinician"), ("heart_history", {**PHYSIO, "knew": "unsure"}, "clinician"),
    ("chest", {"when": "earlier", **PHYSIO, "knew": "no"}, "clinician"),
    ("heart_history", {"cleared": "yes", "cleared_said": "my physio cleared me yesterday", "knew": "yes"}, "go"),
    ("heart_history", {"cleared": "yes", "cleared_said": "my doctor cleared me tomorrow", "knew": "yes"}, "clinician"),
    ("pregnancy", {}, "clinician"), ("pregnancy", {"pregnant": "no"}, "clinician"), ("pregnancy", {"pregnant": "no", **PHYSIO}, "go"),
    ("spine_history", {"old_disc": "no"}, "clinician"), ("spine_history", {"old_disc": "yes"}, "go"),
    ("spine_history", {"old_disc": "no", **PHYSIO}, "go"), ("restriction", {}, "go"), ("under_18", {}, "go"),
    ("weakness heart_history", PHYSIO, "same_day"), ("fever heart_history", PHYSIO, "not_today")])
def test_what_the_answers_come_to(heard: str, answers: dict[str, Any], level: str):
    got = {"heard": heard, "so": "yes", **answers}
    assert of("level_after_signs", got) == level
    assert of("level_after_signs", {**got, "safety.level": "emergency"}) == "emergency", "never better than what stood"


TAKEN_BACK = ({"so": "no"}, {"when": "no"}, {"which": "no"}, {"which": "self_harm"})


@pytest.mark.parametrize("back", TAKEN_BACK, ids=str)
def test_taken_back_what_stood_and_today_s_check_are_left(back: dict[str, Any]):
    got = {"heard": "saddle", **({"among": "saddle self_harm"} if "which" in back else {}), **back}
    for stood in ("go", "no_load", "clinician"):
        assert of("level_after_signs", {**got, "safety.level": stood}) == stood
    checked = {"safety.level": "go", "safety.checked": "not_today", "safety.checked.today": "yes"}
    assert of("level_after_signs", {**got, **checked}) == "not_today"
    assert of("reasons_of_signs", got) == "taken back: something else was meant"
    assert of("keys_of_signs", got) == ""
    assert of("body_weight_only", {**got, "heard": "spine_history", "among": "spine_history self_harm", "old_disc": "yes"}) == "no"


def test_what_is_so_is_not_worse_for_an_earlier_check_that_was_passed_since():
    got = {"heard": "restriction", "so": "yes", "safety.level": "go", "safety.checked": "not_today", "safety.checked.today": "yes"}
    assert of("level_after_signs", got) == "go"


@each_row(("heard", "sure", "stood", "level"), [
    ("saddle", "yes", "go", "emergency"), ("saddle", "no", "go", "not_today"), ("weakness", "yes", "go", "same_day"),
    ("weakness fever", "yes", "go", "same_day"), ("weakness", "yes", "emergency", "emergency"), ("fever", "no", "clinician", "clinician"),
    ("heart_history", "yes", "go", "clinician"), ("nonsense", "yes", "go", "not_today")])
def test_while_it_is_asked_a_sign_said_surely_stands_and_a_doubtful_one_closes_the_day(heard: str, sure: str, stood: str, level: str):
    got = {"heard": heard, "sure": sure, "safety.level": stood, "whose": "sign.7"}
    assert of("level_until", got) == level
    assert of("parts_while_open", got).split(" | ")[-1].startswith("sign.7 ")


def test_the_part_of_a_sign_is_open_and_then_told_with_what_weighed():
    got = {"heard": "weakness", "sure": "yes", "whose": "sign.7", "safety.level": "no_load", "safety.why": "pain"}
    assert of("parts_while_open", got) == "before no_load told pain | sign.7 same_day open weakness"
    assert of("parts_after_signs", {**got, "so": "yes", "bladder": "no"}) == "before no_load told pain | sign.7 same_day told weakness"
    assert of("parts_after_signs", {**got, "so": "no"}) == "before no_load told pain"
    assert of("keys_of_signs", {**got, "so": "yes"}) == "pain weakness"
    assert of("parts_while_open", {**got, "safety.level": "go", "safety.why": ""}) == "sign.7 same_day open weakness"


def test_the_reasons_are_told_in_words():
    told = of("reasons_of_signs", {"heard": "weakness", "so": "yes", "bladder": "no"})
    assert told == "New or growing weakness in a leg, or a foot that drops, needs care today."
    assert of("reasons_of_signs", {"heard": "restriction", "so": "yes"}) == "nothing against it"


@each_row(("knew", "until"), [("yes", "2026-09-01"), ("no", None), ("unsure", None), (None, None)])
def test_a_clearance_counts_where_whoever_gave_it_knew_of_the_sign(knew: str | None, until: str | None):
    """For six months (choice)."""
    assert of("cleared_for_it", {**PHYSIO, "knew": knew, "today": "2026-03-02"}) == until


@each_row(("heard", "answers", "only"), [
    ("spine_history", {"old_disc": "yes"}, "yes"), ("spine_history", {"old_disc": "no"}, "no"), ("pregnancy", PHYSIO, "yes"),
    ("heart_history", PHYSIO, "no"), ("weakness", {}, "no")])
def test_an_old_disc_or_pregnancy_leaves_body_weight_only(heard: str, answers: dict[str, Any], only: str):
    assert of("body_weight_only", {"heard": heard, "so": "yes", **answers}) == only


@each_row(("got", "limit"), [
    ({"heard": "restriction", "said": "my doctor said no lifting"}, "my doctor said no lifting"),
    ({"heard": "restriction", "said": "my doctor said no lifting", "limits": "nothing over 40 kg"},
     "my doctor said no lifting. nothing over 40 kg"),
    ({"heard": "heart_history", "said": "i have a stent", "limits": "nothing over 40 kg"}, "nothing over 40 kg"),
    *(({"heard": "restriction", "said": long, "limits": "no bending"}, long if len(long) == SIGN_MOST else f"{long}. no bending")
      for long in (("no lifting " * 40)[:SIGN_MOST], ("no lifting " * 40)[: SIGN_MOST - 1])),
    ({"heard": "heart_history", "said": "i have a stent", "limits": "none"}, None), ({"heard": "heart_history", "said": "a stent"}, None)])
def test_a_limit_is_what_was_heard_as_one_and_what_a_clearance_came_with(got: dict[str, Any], limit: str | None):
    assert of("limit_said", got) == limit


@each_row(("heard", "when", "history"), [
    ("heart_history", None, "yes"), ("pregnancy", None, "yes"), ("chest", "earlier", "yes"), ("chest", "now", "no"),
    ("weakness", None, "no"), ("weakness", "earlier", "no"), ("weakness spine_history", None, "yes")])
def test_a_history_is_what_a_clearance_can_open(heard: str, when: str | None, history: str):
    assert of("is_history", {"heard": heard, "when": when}) == history


@each_row(("said", "until"), [
    ("pause until 3 april, surgery on my back", "2026-04-03"), ("pause please", None), ("pause until i am cleared", None),
    ("my back", None)])
def test_a_pause_asked_for_in_the_same_words_has_a_date(said: str, until: str | None):
    assert of("pause_wished", {"said": said, "today": "2026-03-02"}) == until


@each_row(("got", "kept"), [
    ({"heard": "chest", "when": "earlier"}, "chest"), ({"heard": "chest", "when": "now"}, ""),
    ({"heard": "weakness anticoagulants"}, "anticoagulants"),
    ({"heard": "anticoagulants", "safety.history": "history"}, "history anticoagulants")])
def test_a_history_that_was_heard_is_kept_with_what_was_told_before(got: dict[str, Any], kept: str):
    assert of("history_with_signs", got) == kept


@each_row(("got", "fits"), [
    ({"heard": "weakness", "meant": "the knee buckles now and then"}, "yes"), ({"heard": "weakness", "meant": "the dog, sorry"}, "no"),
    ({"heard": "", "among": "pregnancy fever", "meant": "i have a fever"}, "yes"),
    ({"heard": "weakness", "among": "", "meant": "i have a fever"}, "no"), ({"heard": "weakness", "meant": "only when i lift"}, "yes")])
def test_what_was_meant_fits_still_where_it_is_a_sign_that_was_asked_about(got: dict[str, Any], fits: str):
    assert of("fits_still", got) == fits


def test_both_are_said_back_and_cut_at_fifty_characters():
    long = "nine chars " * 9
    got = {"said": long, "meant": long, "heard": "weakness"}
    cut = "“nine chars nine chars nine chars nine chars nine…”"
    assert of("wrote", got) == f"{cut}, then {cut}"
    fits, over = "a" * 23 + " " + "b" * 26, "a" * 23 + " " + "b" * 27
    assert of("wrote", {"said": fits, "meant": "x", "heard": "weakness"}) == f"“{fits}”, then “x”"
    assert of("wrote", {"said": over, "meant": "x", "heard": "weakness"}) != f"“{over}”, then “x”"
    assert of("wrote", {"meant": "x", "heard": "weakness"}) == "something more, then “x”"


@each_row(("heard", "stood", "checked", "kept"), [
    ("restriction", None, None, ""), ("restriction", None, "go", "go"), ("restriction", "go", "go", "go"),
    ("restriction", "no_load", None, "no_load"), ("weakness", None, None, "same_day"), ("weakness", None, "go", "same_day")])
def test_a_limit_alone_leaves_no_level_where_no_check_was_ever_done(heard: str, stood: str | None, checked: str | None, kept: str):
    known = {"safety.level": stood, "safety.checked": checked}
    got = {"heard": heard, "so": "yes", "bladder": "no", **{name: value for name, value in known.items() if value}}
    assert of("level_kept", got) == kept


def test_a_limit_takes_no_reason_from_what_stands():
    assert of("reasons_of_signs", {"heard": "restriction", "so": "yes", "safety.level": "clinician"}) == "what was said before still stands"
