"""My bar and plates: what can be put on, in both units."""

import pytest

from flows.bar import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


@pytest.mark.parametrize(("typed", "bar"), [
    ("20", "full"), ("45 lb", "full"), ("15 kg", "light"), ("35", "light"), ("20 kg or 45 lb", "full"),
    ("another", "other"), ("no", "none")])
def test_a_bar_is_known_by_its_weight(typed: str, bar: str):
    assert Talk(FLOW).say(typed).answers["bar"] == bar


def test_a_usual_bar_and_a_usual_gym_are_two_taps():
    talk = Talk(FLOW).tap("20 kg or 45 lb", "The usual set of a gym")
    assert talk.answers == {"bar": "full", "which": "usual"}
    assert "loads you can put on that bar" in "\n".join(say.text for say in talk.says)


@pytest.mark.parametrize(("units", "typed", "kept"), [
    ("metric", "20, 10, 5 and 2.5", "20,10,5,2.5"), ("metric", "1,25 5 10", "10,5,1.25"),
    ("imperial", "45 25 10", "20.4117,11.3398,4.5359"),
    ("imperial", "20 kg, 10 kg", "20,10")])
def test_own_plates_are_kept_in_kilograms_the_largest_first(units: str, typed: str, kept: str):
    talk = Talk(FLOW, {**CHECKED, "welcome.units": units}).say("20", "some", typed)
    assert talk.answers["plates"] == kept


@pytest.mark.parametrize("typed", ["0, 5", "100", "none at all", "-5"])
def test_plates_that_can_not_be_are_asked_again(typed: str):
    talk = Talk(FLOW).say("20", "some", typed)
    assert talk.state == "bar.plates"


@pytest.mark.parametrize(("units", "typed", "kept"), [("metric", "10", 10.0), ("imperial", "15", 6.8)])
def test_another_bar_is_asked_its_weight(units: str, typed: str, kept: float):
    talk = Talk(FLOW, {**CHECKED, "welcome.units": units}).say("another", typed)
    assert talk.answers["weight"] == pytest.approx(kept, abs=0.01)
    assert talk.state == "bar.which"


def test_without_a_bar_nobody_is_asked_for_plates():
    talk = Talk(FLOW).tap("No bar yet")
    assert talk.answers == {"bar": "none"}
    assert "say “my bar”" in "\n".join(say.text for say in talk.says)


def test_it_opens_without_a_safety_check():
    assert Talk(FLOW, UNCHECKED).state == "bar.bar"
