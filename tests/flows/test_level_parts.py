"""The parts of a safety level: each is taken back by itself, and what is kept counts only while it comes to what stands."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.screening.safety import Level, worst
from flows.catalogue import BOOK
from flows.level_parts import (
    LevelPart,
    checked_today,
    level_of,
    others,
    own,
    part_level,
    parts_of,
    stood,
    text_of,
    why_of,
    with_tap,
    without_tap,
)
from tests.drive import CHECKED, UNCHECKED, Talk

KEYS = st.lists(st.sampled_from(("sharp", "bad", "fever", "weakness")), max_size=3, unique=True).map(tuple)
ANY_PART = st.builds(LevelPart, st.just(""), st.sampled_from(Level), st.sampled_from(("open", "told")), KEYS)
PART_LISTS = st.lists(ANY_PART, min_size=1, max_size=4).map(
    lambda parts: tuple(part._replace(whose=f"pain.{n}") for n, part in enumerate(parts)))


def standing(parts: tuple[LevelPart, ...], today: str = "yes", **more: str) -> dict[str, Any]:
    return {"safety.parts": text_of(parts), "safety.parts.today": today, "safety.level": level_of(parts).value,
            "safety.why": " ".join(why_of(parts)), **more}


@given(PART_LISTS)
def test_each_is_read_as_it_was_kept_and_without_one_the_worst_of_the_rest_stands(parts: tuple[LevelPart, ...]) -> None:
    assert parts_of(standing(parts)) == parts
    for part in parts:
        got = standing(parts, whose=part.whose)
        assert own(got) == part
        assert stood(got) is worst((Level.GO, *(one.level for one in parts if one is not part)))


@given(PART_LISTS)
def test_on_another_day_only_what_lasts_is_left(parts: tuple[LevelPart, ...]) -> None:
    lasting = tuple(one for one in parts if one.level >= Level.CLINICIAN)
    got = {**standing(parts, today="no"), "safety.level": level_of(lasting).value}
    assert parts_of(got) == lasting


@pytest.mark.parametrize("changed", [{"safety.level": "same_day"}, {"safety.level": "go"}, {"safety.why": "bad fall"}, {"safety.why": ""},
                                     {"safety.parts": ""}])
def test_where_anything_else_has_closed_or_opened_it_what_stands_is_one_part(changed: dict[str, str]) -> None:
    kept = (LevelPart("before", Level.GO), LevelPart("pain.1", Level.NOT_TODAY, why=("bad",)))
    got = {**standing(kept), **changed, "whose": "pain.1"}
    assert parts_of(got) == others(got) == (LevelPart("before", Level(got["safety.level"]), why=tuple(got["safety.why"].split())),)
    assert own(got) is None


@pytest.mark.parametrize(("checked", "today", "level"), [
    ("not_today", "yes", "not_today"), ("not_today", "no", "go"), ("undone", "yes", "go")])
def test_what_a_check_found_counts_that_day_unless_it_was_undone(checked: str, today: str, level: str) -> None:
    assert checked_today({"safety.checked": checked, "safety.checked.today": today}).value == level
    assert checked_today({}) is Level.GO


def test_a_part_has_its_own_level_and_what_is_none_that_of_all() -> None:
    got = standing((LevelPart("pain.1", Level.NO_LOAD), LevelPart("signs.2", Level.SAME_DAY, "open"), LevelPart("pain.3", Level.NOT_TODAY)))
    assert [part_level(got, name) for name in ("pain.1", "signs.2", "pain.3", "pain.4")] == ["no_load", "same_day", "not_today", "same_day"]
    assert part_level({}, "pain.1") == "go"
    assert part_level({"safety.level": ""}, "pain.1") == "go"


# in the conversation -----------------------------------------------------------------------------------------


def at_menu(*replies: str) -> Talk:
    return Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say(*replies)


def level(talk: Talk) -> str:
    return talk.found["safety.level"]


def test_pain_left_half_told_stays_when_other_pain_turns_out_to_be_none() -> None:
    talk = at_menu("my knee hurts", "stop", "my back hurts", "nothing hurts")
    assert talk.state == "pain.mistake", "whether all of it was a mistake is asked"
    assert level(talk.say("No, it did hurt")) == "not_today"


def test_pain_left_half_told_can_be_taken_back_with_the_rest_and_leaves_no_load() -> None:
    assert level(at_menu("my knee hurts", "stop", "my back hurts", "nothing hurts", "Yes, a mistake")) == "no_load"


SMALL = ("lower back", "1", "no", "no", "no")


def test_small_pain_told_beside_an_open_sign_is_all_that_is_left_once_the_sign_is_taken_back() -> None:
    talk = at_menu("my left foot drops when i walk", "stop", "my back hurts", *SMALL)
    assert level(talk) == "same_day"
    talk.say("go on", "No, I meant something else", "i meant my shoe")
    assert level(talk) == "no_load"


def test_a_sign_stays_when_the_pain_told_after_it_was_none() -> None:
    talk = at_menu("got a fever", "stop", "my back hurts", "nothing hurts", "Right, nothing")
    assert level(talk) == "not_today"
    assert level(talk.say("go on", "No, I meant something else", "i meant the heating")) == "go"


def test_a_sign_interrupted_by_pain_and_asked_again_is_still_the_same() -> None:
    talk = at_menu("got a fever", "my back hurts", *SMALL)
    assert (talk.state, level(talk)) == ("signs.so", "not_today")
    assert level(talk.say("No, I meant something else", "i meant the heating")) == "no_load"


def test_numbness_in_words_is_not_taken_back_and_says_why() -> None:
    talk = at_menu("my knee hurts and my foot is numb", "nothing hurts", "Right, nothing")
    assert level(talk) == "clinician"
    assert any("But you wrote" in say.text for say in talk.says)
    assert not any("What you told me before" in say.text for say in talk.says)


@pytest.mark.parametrize("words", ["no it doesnt", "i meant nothing hurts", "no wait nothing hurts", "it doesn't hurt actually", "No pain"])
def test_that_nothing_hurts_is_understood_in_other_words_and_asked_about_once(words: str) -> None:
    assert at_menu("my back hurts", words).state == "pain.surely"


@pytest.mark.parametrize("words", ["my back hurt on the last set", "back hurt during the last rep"])
def test_pain_in_the_last_set_is_pain_of_today(words: str) -> None:
    assert at_menu(words).state == "pain.where"


def test_the_next_day_questions_about_pain_that_were_left_come_before_the_check() -> None:
    left = {**UNCHECKED, "pain.open_since": "2026-03-01T18:00:00.000Z"}
    assert Talk(BOOK["home"].flow, known=left, book=BOOK).say("safety check").state == "pain.where"
    assert Talk(BOOK["home"].flow, known=UNCHECKED, book=BOOK).say("safety check").state == "safety_check.bladder"


@pytest.mark.parametrize("flow", ["pain", "signs"])
def test_a_run_from_before_there_were_parts_goes_on(flow: str) -> None:
    talk = at_menu("my knee hurts" if flow == "pain" else "got a fever")
    talk.session = talk.session.with_top(talk.session.top._replace(fixed={**talk.session.top.fixed, "whose": ""}))
    talk.known = {name: value for name, value in talk.known.items() if not name.startswith("safety.parts")}
    talk.say(*(("knee", "1", "no", "no") if flow == "pain" else ("yes", "0")))
    assert level(talk) in ("no_load", "not_today")
    assert [one.whose for one in parts_of(talk.known)] == ["before", "unnamed"]


def test_nothing_hurts_after_pain_was_left_half_told_asks_whether_it_was_a_mistake() -> None:
    talk = at_menu("my knee hurts", "stop")
    talk.known["pain.open_since"] = "2026-03-02T09:00:00.000Z"
    assert talk.say("nothing hurts").state == "pain.mistake"
    assert level(talk.say("Yes, a mistake")) == "no_load"


@pytest.mark.parametrize("kept", ["", "pain.12", "pain.12 clinician", "no parts", " | "])
def test_what_is_no_part_is_none(kept: str):
    assert parts_of({"safety.parts": kept, "safety.parts.today": "yes", "safety.level": "clinician", "safety.why": "history"}) == (
        LevelPart("before", Level.CLINICIAN, why=("history",)),)


def test_a_tap_is_taken_back_alone_and_one_from_before_stays_for_good() -> None:
    before = (LevelPart("pain.1", Level.NOT_TODAY, why=("bad",)), LevelPart("tap", Level.SAME_DAY, why=("fall",)))
    after = with_tap(before, Level.EMERGENCY, ["bladder"])
    assert text_of(after) == "pain.1 not_today told bad | before same_day told fall | tap emergency told bladder"
    assert text_of(without_tap(standing(after))) == "pain.1 not_today told bad | before same_day told fall"
