"""Welcome, lived through: what this is, consent, age, units, time zone."""

import pytest

from companion.conversation.effects import Ended
from flows.about_you import FLOW as ABOUT_YOU
from flows.consent_again import FLOW as CONSENT_AGAIN
from flows.erase import FLOW as ERASE
from flows.export import FLOW as EXPORT
from flows.welcome import FLOW
from tests.drive import Talk, small_book
from tests.table import each_row

CONSENT = "Yes, keep them"


def begun(*replies: str, **known: str) -> Talk:
    """A stranger, who has got so far."""
    return Talk(FLOW, known={"today": "2026-03-02", **known}, book=small_book(FLOW, ABOUT_YOU, CONSENT_AGAIN, EXPORT, ERASE)).say(*replies)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def test_it_says_what_it_is_and_is_not_before_it_asks_anything():
    first = begun().says[0].text
    assert "I do not diagnose, and I do not replace a doctor or physiotherapist" in first
    assert "You can stop at any time" in first


def test_consent_says_what_is_kept_where_and_how_to_get_or_erase_it():
    for words in ("pain and health", "in a file of whoever runs this bot", "my data", "erase"):
        assert words in begun().last


def test_without_consent_it_ends_and_says_so():
    talk = begun("No")
    assert "I keep nothing about you" in heard(talk)
    assert "done" in [effect.ending for effect in talk.effects if isinstance(effect, Ended)]
    assert not talk.state.startswith("welcome.adult")


@pytest.mark.parametrize("reply", ["skip", "what do you mean", "maybe", "stop it", "ok whatever that is"])
def test_nothing_vague_is_taken_for_consent(reply: str):
    assert begun(reply).answers.get("consent") != "yes"


def test_the_way_through_ends_at_the_menu_and_leaves_details_to_the_tests_that_need_them():
    talk = begun(CONSENT, "Yes", "cm and kg", "Lisbon", "yes")
    assert talk.state == "home.pick"
    assert talk.answers == {"consent": "yes", "adult": "yes", "units": "metric", "zone": "Europe/Lisbon", "zone_right": "yes"}


def test_a_little_rounding_is_told_to_be_common_and_pain_to_stop_it():
    said = heard(begun(CONSENT, "Yes", "cm and kg", "Lisbon", "yes"))
    assert "a little rounding deep in a squat is common" in said
    assert "if anything hurts, say so at any time" in said


def test_under_18_nothing_goes_on_until_a_coach_is_linked():
    talk = begun(CONSENT, "No, under 18")
    assert talk.state == "welcome.coach_first"
    for reply in ("A coach is linked", "ready", "skip", "back", "menu", "screen"):
        assert talk.say(reply).state in ("welcome.coach_first", "welcome.adult")
        if talk.state == "welcome.adult":
            talk.say("no")
    talk.known["coach"] = "yes"
    assert talk.say("A coach is linked").state == "welcome.units"


def test_under_18_with_a_coach_goes_straight_on():
    assert begun(CONSENT, "No, under 18", coach="yes").state == "welcome.units"


def test_age_is_not_skipped():
    assert begun(CONSENT, "skip").state == "welcome.adult"


@pytest.mark.parametrize(("reply", "units"), [
    ("cm and kg", "metric"), ("kilos", "metric"), ("inches and pounds", "imperial"), ("lbs", "imperial")])
def test_units_are_the_lifters_own(reply: str, units: str):
    assert begun(CONSENT, "Yes", reply).answers["units"] == units


@pytest.mark.parametrize(("place", "kept", "clock"), [
    ("Lisbon", "Europe/Lisbon", "18:05"), ("UTC+1", "UTC+01:00", "19:05"), ("20:35", "UTC+02:30", "20:35"),
    ("New York", "America/New_York", "13:05")])
def test_a_city_an_offset_or_the_clock_gives_the_zone_and_shows_the_time(place: str, kept: str, clock: str):
    talk = begun(CONSENT, "Yes", "cm and kg", place)
    assert talk.answers["zone"] == kept
    assert f"I make it {clock} on Monday" in talk.last


def test_a_wrong_zone_is_corrected():
    talk = begun(CONSENT, "Yes", "cm and kg", "Lisbon", "no")
    assert talk.state == "welcome.zone"
    talk.say("Berlin")
    assert "I make it 19:05" in talk.last
    assert talk.say("yes").state == "home.pick"
    assert talk.answers["zone"] == "Europe/Berlin"


def test_a_place_nobody_knows_is_asked_again():
    talk = begun(CONSENT, "Yes", "cm and kg", "Xyzzyville")
    assert talk.state == "welcome.zone"
    assert "UTC+1" in talk.last


def test_a_zone_that_is_skipped_is_not_shown_as_a_dash():
    assert "–" not in begun(CONSENT, "Yes", "cm and kg", "skip").last


def test_at_a_terminal_the_machine_tells_the_zone():
    talk = begun(CONSENT, "Yes", "cm and kg", **{"machine.zone": "Europe/Oslo"})
    assert (talk.state, talk.found["welcome.zone"], talk.found["welcome.zone_right"]) == ("home.pick", "Europe/Oslo", "yes")


def test_no_other_flow_begins_over_it():
    talk = begun(CONSENT).say("about you")
    assert talk.state == "welcome.adult"
    assert "come first" in talk.last


@each_row(("said", "adult"), [
    ("34", "yes"), ("yeah im 34", "yes"), ("I'm 45 years old", "yes"), ("18", "yes"), ("no im 16", "no"), ("yes 17", "no"),
    ("i'm only 15", "no"), ("no im 34", None), ("not 18 yet", None), ("almost 18", None),
    ("34 and my brother 12", None), ("1", None), ("180", None)])
def test_a_stated_age_answers_and_an_unclear_one_is_asked_again(said, adult):
    assert begun(CONSENT, said).answers.get("adult") == adult


@pytest.mark.parametrize("said", ["yes keep them", "Yes, keep them", "YES KEEP THEM."])
def test_a_label_is_known_without_its_comma(said):
    assert begun(said).state == "welcome.adult"


def test_who_has_written_an_age_under_18_is_not_asked_again_and_waits_for_a_coach():
    talk = begun(CONSENT, **{"safety.age": "under_18"})
    assert talk.state == "welcome.coach_first"
    assert begun(CONSENT, **{"safety.age": "under_18", "coach": "yes"}).state == "welcome.units"
