"""Squat look, lived through."""

from collections.abc import Iterator
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation.effects import Record
from companion.conversation.events import Sent
from companion.conversation.flow import Known
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS
from flows.squat_look import CHANGES, FLOW, SET_UP, SLOTS, drawn_order
from tests.drive import CHECKED, Talk

NAMES = {change.name for change in CHANGES.values()}
NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)


def plain(*seen: str, known: dict[str, str] | None = None) -> Talk:
    """The plain set done on film, with what was seen in it."""
    return Talk(FLOW, known={**CHECKED, **(known or {})}).tap("Film, from the side", "Ready", "Done", *seen)


def through_changes(talk: Talk, *seen: str) -> Talk:
    """All four changes done, each with the same thing seen."""
    for _ in SLOTS:
        talk.tap("Done", *seen)
    return talk


def said(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def drawn(run: str, **facts: str) -> dict[str, object]:
    return dict(drawn_order(Known(facts, NOW, run=run)))


def test_the_whole_look_keeps_each_change_under_its_own_name():
    talk = plain("Clearly", "A little above")
    through_changes(talk, "A little", "About parallel").tap("Done", "Clearly", "A little above", "No", "Skip")
    assert {f"{name}_{what}" for name in NAMES for what in ("rounds", "depth")} <= talk.answers.keys()
    assert talk.answers["heels_rounds"] == "little"
    assert talk.answers["wide_depth"] == "parallel"
    assert talk.answers["again_depth"] == "a_little_above"
    assert talk.state == "home.pick"


def test_the_log_never_holds_a_slot_instead_of_a_change():
    talk = through_changes(plain("Clearly", "About parallel"), "No")
    assert not {key for key in talk.answers if key.startswith("change_") and not key.endswith("_do")}


def test_each_slot_asks_for_the_change_its_answer_is_logged_under():
    words = {"heels": "Heels up", "front": "Weight in front", "slow": "Slower", "wide": "Wider"}
    talk = plain("Clearly", "About parallel")
    for _ in SLOTS:
        asked = talk.last
        before = set(talk.answers)
        talk.tap("Done", "No")
        (name,) = {key.removesuffix("_rounds") for key in set(talk.answers) - before if key.endswith("_rounds")}
        assert asked.startswith(words[name])


@given(st.text(max_size=20))
def test_every_run_draws_all_four_changes_once(run: str):
    assert {drawn(run)[slot] for slot in SLOTS} == NAMES


def test_the_same_run_draws_the_same_order_and_runs_differ():
    assert drawn("7") == drawn("7")
    assert len({tuple(drawn(str(run))[slot] for slot in SLOTS) for run in range(200)}) == 24


def test_amounts_come_in_the_lifters_own_units():
    metric, imperial = (" ".join(map(str, drawn("1", **{"welcome.units": units}).values()))
                        for units in ("metric", "imperial"))
    assert "2 to 3 cm" in metric
    assert "2 to 5 kg" in metric
    assert "about an inch" in imperial
    assert "5 to 10 lb" in imperial


def test_no_rounding_without_load_leaves_the_changes_out_and_asks_about_load():
    talk = plain("No")
    assert talk.state == "squat_look.load_film"
    assert "does not round without load" in said(talk)
    assert "plain_depth" not in talk.answers


@pytest.mark.parametrize("seen", [("Can't tell",), ("Skip",), ("Clearly", "Skip")])
def test_without_a_depth_to_compare_with_the_changes_are_left_out(seen: tuple[str, ...]):
    talk = plain(*seen)
    assert talk.state == "squat_look.load_film"
    assert "no depth to compare with" in said(talk)


@pytest.mark.parametrize(("seen", "depth", "common"), [
    ("A little", "Well above parallel", False), ("A little", "A little above", False),
    ("A little", "About parallel", True), ("A little", "Below parallel", True),
    ("Clearly", "About parallel", False), ("Clearly", "Below parallel", False)])
def test_only_a_little_rounding_at_or_below_parallel_is_called_common(seen: str, depth: str, common: bool):
    talk = plain(seen, depth)
    assert ("is common" in said(talk)) is common
    assert talk.state == "squat_look.change_1_do"


def test_a_plain_set_that_is_skipped_leaves_only_the_film_under_load():
    talk = Talk(FLOW).tap("Film, from the side", "Ready").say("skip")
    assert talk.state == "squat_look.load_film"


def test_a_repeat_that_is_skipped_is_not_asked_about():
    talk = through_changes(plain("Clearly", "About parallel"), "No").say("skip")
    assert talk.state == "squat_look.load_film"


def test_a_change_that_is_skipped_is_not_asked_about():
    talk = plain("Clearly", "About parallel").tap("Skip")
    assert talk.state == "squat_look.change_2_do"


def test_with_every_change_skipped_the_plain_squat_is_not_repeated():
    talk = plain("Clearly", "About parallel").tap("Skip", "Skip", "Skip", "Skip")
    assert talk.state == "squat_look.load_film"


def test_after_one_change_the_plain_squat_comes_again_last():
    talk = plain("Clearly", "About parallel").tap("Done", "Can't tell", "Skip", "Skip", "Skip")
    assert talk.state == "squat_look.again_do"
    assert "exactly as the first" in talk.last
    assert talk.tap("Done", "No").state == "squat_look.load_film"


def test_film_under_load_is_asked_about_only_where_there_is_some():
    assert plain("No").tap("No").state == "squat_look.video"
    talk = plain("No").tap("Yes", "Clearly", "A little above").say("80 kg")
    assert talk.answers["load_rounds"] == "clearly"
    assert talk.answers["load_depth"] == "a_little_above"
    assert talk.answers["load_kg"] == 80


def test_a_clean_set_under_load_is_kept_with_its_weight_and_no_depth():
    talk = plain("No", known={"welcome.units": "imperial"}).tap("Yes", "No").say("200")
    assert "load_depth" not in talk.answers
    assert talk.answers["load_kg"] == pytest.approx(90.72)


def test_a_video_is_kept_by_reference_and_a_photo_is_not_taken_for_one():
    talk = plain("No").tap("No").photo()
    assert talk.state == "squat_look.video"
    talk.send(Sent("video", "clip-1"))
    assert talk.answers["video"] == "clip-1"


def test_only_who_films_is_asked_for_a_video():
    talk = Talk(FLOW).tap("By feel", "Ready", "Done", "No", "No")
    assert "video" not in talk.answers
    assert talk.state == "home.pick"


@pytest.mark.parametrize(("label", "way"), [("Film, from the side", "film"), ("Mirror", "mirror"), ("By feel", "feel"),
                                            ("Skip", "feel")])
def test_the_set_up_fits_how_the_squat_is_watched(label: str, way: str):
    assert Talk(FLOW).tap(label).last.startswith(SET_UP[way])


def messages() -> Iterator[str]:
    yield from SET_UP.values()
    for units in ("metric", "imperial"):
        yield from (str(value) for key, value in drawn("1", **{"welcome.units": units}).items() if key.endswith("say"))


def test_what_is_filled_into_a_question_is_short_too():
    for text in messages():
        assert len(text) <= MOST_CHARACTERS
        assert len(text.split()) <= MOST_WORDS


def test_every_set_of_squats_shows_what_would_make_the_lifter_stop():
    talk = through_changes(plain("Clearly", "About parallel"), "No").tap("Done", "No")
    asked = [say.text for say in talk.says if say.text.startswith(("Three squats", "Heels", "Weight", "Slower", "Wider",
                                                                  "Last set"))]
    assert len(asked) == 6
    assert all("Stop" in text for text in asked)


def test_pain_in_the_middle_of_a_change_ends_the_look():
    talk = plain("Clearly", "About parallel").say("that hurt my back")
    assert talk.state == "pain.bad"
    assert [effect.status for effect in talk.effects if isinstance(effect, Record)][-1] == "in_pain"
    talk.say("4")
    assert talk.state == "home.pick"


@pytest.mark.parametrize("typed", ["a bit", "slightly", "A LITTLE", "slighty"])
def test_sloppy_typing_is_read(typed: str):
    assert plain().say(typed).answers["plain_rounds"] == "little"


def test_squats_stay_shut_where_only_floor_tests_are_allowed():
    talk = Talk(FLOW, known={**CHECKED, "safety.level": "no_load"})
    assert talk.state == "home.pick"
    assert "No squats or loaded work today" in said(talk)


def test_without_a_warm_up_it_goes_there_first():
    cold = {key: value for key, value in CHECKED.items() if not key.startswith("warm")}
    assert Talk(FLOW, known=cold).state == "warm_up.ok"
