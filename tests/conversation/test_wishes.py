"""What a person wants in words that no rule foresaw: it is asked about, and done once they say so."""

import pytest

from companion.conversation.effects import Say
from companion.conversation.events import Typed
from companion.conversation.flow import Known
from companion.conversation.hearing import meant_at
from companion.conversation.step import step
from flows.catalogue import BOOK
from tests.corpus.turns import Turn, draft_at, session_at
from tests.drive import NOW


def typed(state, *texts):
    """Return the session after these texts at a state, and all that was said."""
    session, facts = session_at(state)
    said = []
    for text in texts:
        taken = step(BOOK, session, Typed(text), Known(facts, NOW))
        session = taken.session
        said += [one.text for one in taken.effects if isinstance(one, Say)]
    return session, said


@pytest.mark.parametrize(("state", "text", "question"), [
    ("knee_to_wall/left_limit", "kindly cease those evening messages", "Do you want to have no more reminders?"),
    ("about_you/years", "kindly cease those evening messages", "Do you want to have no more reminders?")])
def test_a_wish_in_other_words_is_asked_about_before_it_is_done(state, text, question):
    session, said = typed(state, text)
    assert session.aside.about == "wish"
    assert said[-1] == question
    assert session.top.state == state.split("/")[1]


def test_a_wish_is_done_once_it_is_confirmed():
    session, _ = typed("knee_to_wall/left_limit", "kindly cease those evening messages", "yes")
    assert session.aside is None
    assert session.top.flow == "reminder_times"


def test_a_wish_that_is_denied_leaves_the_question_open():
    session, said = typed("knee_to_wall/left_limit", "kindly cease those evening messages", "no")
    assert (session.aside, session.top.state) == (None, "left_limit")
    assert said[-1].startswith("Then once more.")


def test_an_answer_instead_of_a_yes_counts_as_the_answer():
    session, _ = typed("knee_to_wall/left_limit", "kindly cease those evening messages", "calf")
    assert session.aside is None
    assert session.top.got["left_limit"] == "calf"


@pytest.mark.parametrize("state", ["safety_check/bladder", "pain/where"])
def test_no_wish_is_guessed_where_health_is_asked_about(state):
    flow, key = state.split("/")
    key = key if key in BOOK[flow].stops else next(name for name, stop in BOOK[flow].stops.items() if getattr(stop, "safety", False))
    session, _ = typed(f"{flow}/{key}", "not feeling it tonight folks, im out")
    assert session.aside is None or session.aside.about != "wish"


def test_words_of_ones_own_that_are_a_wish_are_asked_about():
    session, said = typed("squat_after/note", "what did my tests come to")
    assert session.aside.about == "wish"
    assert said[-1] == "Do you want to see your results?"


def test_where_it_may_be_two_things_both_are_buttons_and_one_tap_does_it():
    session, said = typed("hinge_to_squat/hinge", "folded like a deckchair")
    assert (session.aside.about, said[-1]) == ("which", "Which do you mean?")
    session, facts = session_at("hinge_to_squat/hinge")
    (say,) = step(BOOK, session, Typed("folded like a deckchair"), Known(facts, NOW)).effects
    assert [tap.label for row in say.buttons for tap in row] == ["It rounded", "It kept its shape", "It's a question", "None of these"]
    assert typed("hinge_to_squat/hinge", "folded like a deckchair", "it rounded")[0].top.got["hinge"] == "rounds"
    assert typed("hinge_to_squat/hinge", "folded like a deckchair", "it kept its shape")[0].top.got["hinge"] == "clean"
    session, said = typed("hinge_to_squat/hinge", "folded like a deckchair", "none of these")
    assert (session.aside, session.top.state) == (None, "hinge")


def test_a_question_or_a_wish_among_what_it_may_be_is_answered_or_done():
    assert typed("hinge_to_squat/hinge", "what did my tests come to", "see your results")[0].top.flow != "hinge_to_squat"
    session, _ = typed("hinge_to_squat/hinge", "what did my tests come to", "it's a question")
    assert (session.aside, session.top.state) == (None, "hinge")


@pytest.mark.parametrize("text", ["blue bananas sing loudly", "qqq zzz blorp"])
def test_what_was_never_seen_is_not_guessed(text):
    assert typed("hinge_to_squat/hinge", text)[0].aside is None


def test_a_reply_that_would_be_refused_is_asked_with_its_likeliest_meanings():
    text = "im at a wedding so drop the coming one only"
    assert typed("squat_days/change", text)[0].aside.about == "which"
    assert typed("squat_days/change", text, "skip the next one")[1][-1].startswith("Left out: tomorrow.")


@pytest.mark.parametrize("text", ["no", "yes", "?!", "8"])
def test_a_bare_word_that_is_no_answer_is_refused_and_not_guessed(text):
    session, said = typed("home/pick", text)
    assert session.aside is None
    assert said


def test_a_question_that_cannot_be_answered_may_be_something_else_but_is_asked_about_once():
    text = "how much of it have I still in front of me?"
    assert typed("home/pick", text)[0].aside.about == "which"
    session, said = typed("home/pick", text, "it's a question")
    assert session.aside is None
    assert said[-1].startswith("I can't answer that one")


def test_a_long_message_that_mentions_a_command_is_asked_about():
    text = "i want to alter what i put for the normal one, go back a step"
    session, said = typed("hand_on_back_squat/cued_depth", text)
    assert (session.aside.about, said[-1]) == ("wish", "Do you want to go back to the question before?")
    assert typed("hand_on_back_squat/cued_depth", text, "yes")[0].top.state != "cued_depth"


def test_a_long_message_that_mentions_a_command_leaves_a_safety_question_open():
    session, said = typed("limits/now", "my physio and i will go back over all of it next thursday at the clinic")
    assert (session.aside, session.top.state) == (None, "now")
    assert said


@pytest.mark.parametrize(("text", "flow"), [
    ("the surgeon lifted it last thursday, i can go back to all of it", "clearance"),
    ("it all feels far off when i sit on the bike", "signs"),
    ("dont see a reason to get up any more", "crisis"), ("my doctor said no squats for a month", "signs")])
def test_where_it_is_asked_what_a_clinician_said_only_what_is_sure_or_urgent_opens_other_questions(text, flow):
    assert typed("limits/now", text)[0].top.flow == flow


def test_a_wish_that_an_option_grants_is_that_option():
    """Not “Skip this one” beside “Leave this one out”."""
    draft = draft_at(Turn("full_screen/go_hip_fold", "command", "results", "skip to the end, what do you know by now", False))
    names = meant_at(draft, "skip to the end, what do you know by now")
    assert "skip" in names
    assert "!skip" not in names
    session, _ = typed("full_screen/go_bird_dog", "no room on the floor here, miss it out")
    assert session.top.state != "go_bird_dog"


@pytest.mark.parametrize(("state", "text"), [
    ("squat_day/load", "The same again"), ("home/pick", "Go on where I stopped"), ("hinge_to_squat/hinge", "It rounded"),
    ("knee_to_wall/left_1", "11"), ("leg_raise/left_eye", "about 65")])
def test_plain_words_for_an_answer_are_asked_about_nowhere(state, text):
    assert typed(state, text)[0].aside is None


@pytest.mark.parametrize("state", ["squat_after/note", "coach_note/text"])
def test_words_that_were_no_wish_are_kept_as_they_were_written(state):
    text = "under GDPR show me the data held about me"
    asked, said = typed(state, text)
    assert (asked.aside.about, said[-1]) == ("wish", "Do you want to see what is kept about you?")
    session, _ = typed(state, text, "no")
    assert session.aside is None
    assert session.top.got[state.split("/")[1]] == text


def test_a_message_to_a_coach_may_be_a_question():
    text = "could you look at my film from saturday please"
    session, _ = typed("note_to_coach/text", text)
    assert session.aside is None


def test_a_number_after_the_question_what_is_meant_is_the_answer_and_no_place_in_the_list():
    session, said = typed("about_you/years", "show how far along i am")
    assert (session.aside.about, said[-1]) == ("which", "Which do you mean?")
    session, _ = typed("about_you/years", "show how far along i am", "2")
    assert (session.aside, session.top.got["years"]) == (None, 2.0)


def test_in_the_menu_a_wish_that_an_option_grants_is_named_once():
    """Not “See your results” beside “My results”."""
    session, said = typed("home/pick", "wats my results")
    assert "Which do you mean?" not in said
    assert session.stack[-1].flow == "outcome"
