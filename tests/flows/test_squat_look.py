"""Squat look, lived through."""

from collections.abc import Iterator, Mapping
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation.condition import Value
from companion.conversation.effects import Record
from companion.conversation.flow import Known
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS
from companion.screening.protocols.squat_look import SquatLook
from flows.squat_look import CHANGES, FLOW, SET_UP, SLOTS, drawn_order
from tests.drive import CHECKED, Talk

NAMES = {change.name for change in CHANGES.values()}
NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)


LOADED: Mapping[str, Value] = {**CHECKED, "about_you.load": 100.0}


def plain(*seen: str, known: Mapping[str, Value] | None = None) -> Talk:
    """All sets done on film, with what was seen in the first."""
    return Talk(FLOW, known={**LOADED, **(known or {})}).tap("Film, from the side", "Done, nothing hurt", *seen)


def through_changes(talk: Talk, seen: str) -> Talk:
    """All four changes, each with the same thing seen."""
    return talk.tap(*[seen] * len(SLOTS))


def said(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def drawn(run: str, **facts: str) -> dict[str, object]:
    return dict(drawn_order(Known(facts, NOW, run=run)))


def test_the_whole_look_keeps_each_change_under_its_own_name():
    talk = plain("Clearly", "A little above")
    through_changes(talk, "About parallel").tap("A little above", "No")
    assert {f"{name}_depth" for name in NAMES} <= talk.answers.keys()
    assert talk.answers["wide_depth"] == "parallel"
    assert talk.answers["again_depth"] == "a_little_above"
    assert talk.state == "home.pick"
    look = SquatLook(**{key: value for key, value in talk.answers.items() if key in SquatLook.__dataclass_fields__})
    assert (look.rounds("heels"), look.moved("heels")) == ("clearly", 1)


def test_not_knowing_is_an_answer_also_where_no_button_says_so():
    talk = plain("Clearly").say("I don't know")
    assert talk.state == "squat_look.plain_depth"
    assert "Not knowing is fine: “skip” leaves it out" in talk.last


def test_a_set_in_which_it_does_not_round_is_told_by_one_answer():
    look = SquatLook("film", "clearly", "parallel", heels_depth="no", slow_depth="cant_tell", again_depth="parallel")
    assert (look.rounds("heels"), look.moved("heels"), look.rounds("slow"), look.moved("slow")) == ("no", 2, "cant_tell", None)


def test_the_log_never_holds_a_slot_instead_of_a_change():
    talk = through_changes(plain("Clearly", "About parallel"), "Not at all")
    assert not {key for key in talk.answers if key.startswith("change_")}


def test_each_slot_asks_for_the_change_its_answer_is_logged_under():
    words = {"heels": "Heels up", "front": "Weight in front", "slow": "Slower", "wide": "Wider"}
    talk = plain("Clearly", "About parallel")
    for _ in SLOTS:
        asked, before = talk.last, set(talk.answers)
        talk.tap("Not at all")
        (name,) = {key.removesuffix("_depth") for key in set(talk.answers) - before}
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
    assert talk.state == "squat_look.change_1_depth"


def test_a_look_that_is_left_out_leaves_only_the_film_under_load():
    talk = Talk(FLOW, known=LOADED).tap("Film, from the side", "Leave it out")
    assert talk.state == "squat_look.load_film"


def test_with_every_change_skipped_the_last_plain_set_is_not_asked_about():
    assert plain("Clearly", "About parallel").tap("Skip", "Skip", "Skip", "Skip").state == "squat_look.load_film"


def test_after_one_change_the_last_plain_set_is_asked_about():
    talk = plain("Clearly", "About parallel").tap("Can't tell", "Skip", "Skip", "Skip")
    assert talk.state == "squat_look.again_depth"
    assert talk.tap("Not at all").state == "squat_look.load_film"


@pytest.mark.parametrize(("known", "state"), [({}, "about_you.ok"), ({"about_you.load": 80.0}, "squat_look.load_film"),
                                              ({"about_you.bar": "none"}, "squat_look.load_film")])
def test_the_working_load_is_asked_here_and_only_where_it_is_not_known(known: dict[str, Value], state: str):
    assert Talk(FLOW, known={**CHECKED, **known}).tap("Mirror", "Done, nothing hurt", "No").state == state


def test_film_under_load_is_asked_about_only_where_there_is_some():
    assert plain("No").tap("No").state == "home.pick"
    talk = plain("No").tap("Yes", "Clearly", "A little above").say("80 kg")
    assert talk.answers["load_rounds"] == "clearly"
    assert talk.answers["load_depth"] == "a_little_above"
    assert talk.answers["load_kg"] == 80


def test_a_clean_set_under_load_is_kept_with_its_weight_and_no_depth():
    talk = plain("No", known={"welcome.units": "imperial"}).tap("Yes", "No").say("200")
    assert "load_depth" not in talk.answers
    assert talk.answers["load_kg"] == pytest.approx(90.72)


@pytest.mark.parametrize(("coach", "way", "told"), [("yes", "Film, from the side", True), ("yes", "Mirror", False),
                                                    ("no", "Film, from the side", False)])
def test_who_films_and_has_a_coach_is_told_how_to_keep_a_video(coach: str, way: str, told: bool):
    talk = Talk(FLOW, known={**LOADED, "coach": coach}).tap(way, "Done, nothing hurt", "No", "No")
    assert ("say “film”" in said(talk)) is told


@pytest.mark.parametrize(("label", "way"), [("Film, from the side", "film"), ("Mirror", "mirror"), ("By feel", "feel"),
                                            ("Skip", "feel")])
def test_the_set_up_fits_how_the_squat_is_watched(label: str, way: str):
    assert SET_UP[way].format(sets="six") in Talk(FLOW).tap(label).last


def test_by_body_weight_there_is_a_set_less_to_film():
    said = Talk(FLOW, known={**LOADED, "safety.body_first": "yes"}).tap("Film, from the side").last
    assert "Film all five in one go" in said


@pytest.mark.parametrize(("view", "film"), [("neither", False), ("mirror", False), ("film", True)])
def test_who_has_no_phone_at_hand_is_not_told_that_film_is_worth_the_most(view: str, film: bool):
    assert ("Film is worth the most" in Talk(FLOW, known={**CHECKED, "about_you.view": view}).last) is film


def messages() -> Iterator[str]:
    yield from SET_UP.values()
    for units in ("metric", "imperial"):
        yield from (str(value) for key, value in drawn("1", **{"welcome.units": units}).items() if key.endswith("say"))


def test_what_is_filled_into_a_question_is_short_too():
    for text in messages():
        assert len(text) <= MOST_CHARACTERS
        assert len(text.split()) <= MOST_WORDS


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("load", ["free", "body weight"])
def test_every_set_has_its_caution_before_it_and_every_message_is_short(units: str, load: str):
    bare = {"safety.body_first": "yes"} if load == "body weight" else {}
    for run in range(12):
        drawn_facts = drawn_order(Known({"welcome.units": units, **bare}, NOW, run=str(run)))
        talk = Talk(FLOW, known={**LOADED, "welcome.units": units, "person": str(run), **bare}).tap("Mirror")
        told = [say.text for say in talk.says[-3:]]
        sets = [line for text in told for line in text.split("\n") if line[:1].isdigit()]
        assert len(sets) == len([slot for slot in SLOTS if slot in drawn_facts]) + 1
        assert all("top if" in line for line in sets)
        assert "Stop at once" in told[-1]
        assert all(len(text) <= MOST_CHARACTERS and len(text.split()) <= MOST_WORDS for text in told), told


@pytest.mark.parametrize("label", ["Plain hurt", "Heels up hurt", "Weight in front hurt", "Slower hurt", "Wider hurt"])
def test_a_set_that_hurt_ends_the_look_and_says_which(label: str):
    talk = Talk(FLOW, known=LOADED).tap("Film, from the side", label)
    assert talk.state == "pain.bad"
    (kept,) = [effect for effect in talk.effects if isinstance(effect, Record) and effect.status == "in_pain"]
    assert (kept.key, kept.raw) == ("did", label)
    talk.say("4")
    assert talk.state == "home.pick"
    assert "plain_rounds" not in talk.answers


def test_pain_told_on_the_card_ends_the_look():
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


def test_who_begins_it_again_days_later_brings_no_depths_along():
    talk = plain("A little", "About parallel").tap("Well above parallel")
    first, talk.now = talk.session.top, talk.now + timedelta(days=10)
    assert any(key.endswith("_depth") and key != "plain_depth" for key in first.got)
    talk.say("hm").tap("Start this again")
    assert talk.session.top.run != first.run
    assert not any(key.endswith("_depth") for key in talk.session.top.got)
