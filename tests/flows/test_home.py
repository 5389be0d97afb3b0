"""The menu: every way on leads where it says."""

from collections.abc import Mapping

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Began
from companion.conversation.flow import Ask, Flow
from companion.conversation.kinds import Ready
from companion.conversation.registry import Book, bind
from companion.conversation.replies import GOOD
from companion.screening.levels import LEVEL_WORDS
from companion.screening.safety import Level
from flows.catalogue import BOOK, flows
from flows.home import FLOW, TESTS
from tests.drive import CHECKED, Talk
from tests.table import each_row

WAYS = {"Find out why my back rounds": "screen", "Priming drill": "prime", "Does the drill help me?": "trial", "My results": "outcome",
        "Test again": "retest", "How far I am": "progress", "About me": "about_you", "My data": "my_data"}


def stubs() -> Book:
    """The menu with every other flow asking one question only."""
    return bind([FLOW, *(Flow(flow.name, 1, flow.title, steps=(Ask("here", f"({flow.name})", Ready()),), command=flow.command)
                         for flow in flows() if flow.name != "home")], "home", "pain")


STUBS = stubs()


def begun(known: Mapping[str, Value] | None = None, within: Book = STUBS) -> Talk:
    return Talk(FLOW, known={**CHECKED, "drill": "calf", **(known or {})}, book=within)


def labels(talk: Talk) -> list[str]:
    return [tap.label for row in talk.says[-1].buttons for tap in row]


@each_row(("label", "flow"), WAYS.items())
def test_each_option_leads_where_it_says_and_back_to_the_menu(label: str, flow: str):
    talk = begun().tap(label)
    assert talk.state == f"{flow}.here"
    assert talk.tap("Ready").state == "home.pick"


@each_row(("test", "title"), TESTS)
def test_each_single_test_can_be_picked(test: str, title: str):
    talk = begun().tap("One test")
    assert talk.state == "home.test"
    assert talk.tap(title).state == f"{test}.here"


@each_row(("words", "flow"), [
    ("full screen", "full_screen"), ("test me", "screen"), ("drill", "prime"), ("results", "outcome"), ("how far", "progress"),
    ("privacy", "my_data"), ("erase", "erase"), ("knee to wall", "knee_to_wall"), ("safety check", "safety_check"),
    ("what changed", "changes"), ("my depth", "depth_estimate"), ("retest", "retest"), ("/screen", "screen")])
def test_words_lead_there_too(words: str, flow: str):
    assert begun().say(words).state == f"{flow}.here"


def test_the_trial_is_offered_only_where_there_is_a_drill():
    assert "Does the drill help me?" in labels(begun())
    for known in ({"drill": "none"}, {}):
        talk = Talk(FLOW, known={**CHECKED, **known}, book=STUBS)
        assert "Does the drill help me?" not in labels(talk)


def test_what_is_not_on_offer_does_not_open_by_its_words():
    assert begun({"drill": "none"}).say("Does the drill help me?").state == "home.pick"


@pytest.mark.parametrize(("level", "stands"), [
    ("emergency", "What I told you stands: an emergency department"), ("same_day", "What you told me should be looked at today.")])
def test_who_has_to_be_seen_at_once_is_offered_no_squats_and_no_tests(level: str, stands: str):
    talk = begun({"safety.level": level})
    assert not {"Find out why my back rounds", "One test", "Squatting today", "Priming drill", "Does the drill help me?",
                "Test again"} & set(labels(talk))
    assert talk.last.startswith(stands)
    assert "Begin with" not in talk.say("no").last
    assert stands in talk.last


@pytest.mark.parametrize("words", ["screen", "Squatting today", "squat", "find out why my back rounds", "one test", "drill"])
def test_what_is_not_offered_is_answered_with_what_was_told(words: str):
    talk = Talk(FLOW, known={**CHECKED, "safety.level": "emergency"}, book=BOOK)
    said = len(talk.says)
    talk.say(words)
    assert talk.says[said].text == LEVEL_WORDS[Level.EMERGENCY].lifter
    assert talk.state == "home.pick"


@pytest.mark.parametrize("level", ["clinician", "not_today", "no_load", "go"])
def test_at_other_levels_the_menu_is_the_usual_one(level: str):
    talk = begun({"safety.level": level})
    assert "Squatting today" in labels(talk)
    assert talk.last.startswith("What would you like to do?")


@pytest.mark.parametrize("words", [
    "is it serious?", "what should i do now?", "what now", "should i wait", "should I wait until tomorrow?", "can i drive", "who do i call",
    "do i have to go", "is it dangerous?", "where do i go", "how bad is it", "do i really need to go?", "can my wife drive me",
    "am i going to be ok?", "should i see a doctor?", "do i need an ambulance"])
@pytest.mark.parametrize("level", [Level.EMERGENCY, Level.SAME_DAY])
def test_what_is_asked_of_having_to_be_seen_is_answered_with_what_was_told(words: str, level: Level):
    talk = Talk(FLOW, known={**CHECKED, "safety.level": level.value}, book=BOOK)
    said = len(talk.says)
    talk.say(words)
    assert talk.says[said].text == LEVEL_WORDS[level].lifter
    if "doctor" not in words and "ambulance" not in words:  # words that make me ask about pain as well
        assert talk.state == "home.pick"


@pytest.mark.parametrize("words", ["what is a hip hinge?", "my results", "what do you keep about me?", "do i have to go below parallel?"])
def test_other_questions_are_answered_as_ever(words: str):
    talk = Talk(FLOW, known={**CHECKED, "safety.level": "emergency"}, book=BOOK)
    said = len(talk.says)
    talk.say(words)
    if words != "do i have to go below parallel?":  # answered with what is closed
        assert LEVEL_WORDS[Level.EMERGENCY].lifter not in [say.text for say in talk.says[said:]]


def test_go_on_is_offered_only_where_something_waits():
    assert "Go on where I stopped" not in labels(begun())
    talk = begun().tap("About me").say("stop", "menu")
    assert "Go on where I stopped" in labels(talk)
    assert talk.tap("Go on where I stopped").state == "about_you.here"


def test_go_on_takes_up_what_was_stopped_last():
    talk = begun().tap("About me").say("stop", "my data", "stop", "menu").tap("Go on where I stopped")
    assert talk.state == "my_data.here"


def test_nonsense_is_asked_again_with_a_hint():
    talk = begun().say("blue cheese")
    assert talk.state == "home.pick"
    assert "Tap one of the buttons" in talk.last


def test_a_photo_is_no_answer_here():
    talk = begun().photo()
    assert talk.state == "home.pick"
    assert "can't take a photo" in talk.last


def test_before_the_welcome_the_menu_does_not_open():
    assert Talk(FLOW, known={}, book=STUBS).state == "welcome.here"


@pytest.mark.parametrize("words", ["rest day, no squats till friday", "no squatting for me today"])
def test_no_squats_are_not_taken_for_squatting_today(words: str):
    talk = begun(within=BOOK).say(words)
    assert talk.state == "home.pick"
    assert talk.session.aside is None or talk.session.aside.about == "which"


NOTHING_HURTS = ["nothing hurts", "no pain today", "all good, nothing hurt today", "nothing hurts any more", "my back doesn't hurt",
                 "feeling fine, no pain", "no pain in my back today", "pain free today", "no aches or pains", "nothin hurts"]


@pytest.mark.parametrize("words", NOTHING_HURTS[:-1])
def test_that_nothing_hurts_is_taken_as_what_it_says(words: str):
    talk = begun(within=BOOK).say(words)
    assert (talk.state, talk.session.aside, talk.last) == ("home.pick", None, GOOD)
    asked = Talk(BOOK["about_you"].flow, known=CHECKED, book=BOOK).say(words)
    assert (asked.state, asked.session.aside, asked.last.partition("\n")[0]) == ("about_you.height", None, "Good.")
    stopped = Talk(BOOK["about_you"].flow, known=CHECKED, book=BOOK).say("stop", words)
    assert (stopped.session.stack, stopped.last) == ((), GOOD)


@pytest.mark.parametrize("words", NOTHING_HURTS)
def test_that_nothing_hurts_is_never_pain(words: str):
    talk = begun(within=BOOK).say(words)
    assert (talk.state, "safety.level" in talk.found) == ("home.pick", False)


def test_pain_told_at_the_menu_leads_to_the_pain_questions():
    talk = begun(within=BOOK).say("my back hurts")
    assert talk.state == "pain.where"
    assert [effect.flow for effect in talk.effects if isinstance(effect, Began)] == ["home", "pain"]


@pytest.mark.parametrize("words", ["menu", "/start", "home"])
def test_the_menu_asked_for_at_the_menu_is_shown(words: str):
    talk = begun()
    shown = talk.last
    assert talk.say(words).last == shown
    assert "in the middle" not in talk.last


@pytest.mark.parametrize("words", ["worse", "that set killed me", "no fever", "it killed me", "no cough", "hmm not really my thing"])
def test_nothing_that_erases_or_ends_is_guessed_from_words_that_name_nothing_of_it(words: str):
    talk = begun(within=BOOK).say(words)
    assert not {"Have everything about you erased", "Have no more reminders", "Not yet"} & set(labels(talk))


@pytest.mark.parametrize(("words", "flow"), [("please delete everything about me", "erase"), ("stop all reminders", "home")])
def test_what_erases_or_ends_is_done_where_it_is_said(words: str, flow: str):
    talk = begun(within=BOOK).say(words)
    assert talk.state.startswith(flow)
    assert flow == "erase" or "reminders" in " ".join(say.text for say in talk.says).lower()


def test_what_waits_is_named_so_that_any_title_fits():
    talk = begun(within=BOOK).say("reminder times", "about you")
    assert "I keep your place in “Reminder times”; say “go on” afterwards to pick it up." in [say.text for say in talk.says]
