"""What a coach wishes of lifters, in typed words; and what of such words may be about the coach. Sentences and names are made up."""

from __future__ import annotations

from companion.language.coach_words import Wish, nearly_called, of_oneself, told_of, wish_in
from companion.language.flags import hear_flags
from companion.language.pain import Pain, hear_pain
from tests.table import each_row

NAMES = ("Ana Ruiz", "Tom Becker", "Tom Hale", "Maria Santos", "Will Hurt", "Stitch", "Bill Back", "Søren Ånestad", "Sam (no. 15)",
         "Sam (no. 16)", "Tuesday 6 pm (3)", "everybody (8)")


@each_row(("said", "wish"), [
    ("whats up with maria", Wish("see", "maria")), ("How is Tom doing?", Wish("see", "tom")), ("hows soren", Wish("see", "soren")),
    ("how is will hurt doing?", Wish("see", "will hurt")), ("is ana hurt?", Wish("see", "ana", "", "hurt")),
    ("what about maria santos", Wish("see", "maria santos")), ("Tom", Wish("see", "tom")),
    ("ana's numbers", Wish("numbers", "ana")), ("show me tom hale's log", Wish("log", "tom hale")),
    ("numbers of sam", Wish("numbers", "sam")),
    ("ask ana for a retest", Wish("retest", "ana")), ("ask tom to test again", Wish("retest", "tom")),
    ("ask tom hale for a film", Wish("ask_for", "tom hale", "film")),
    ("pls ask ana to do knee to wall", Wish("ask_for", "ana", "knee to wall")),
    ("cap tom at 80", Wish("pin_load", "tom", "80")), ("limit will hurt to 62,5 kg", Wish("pin_load", "will hurt", "62,5 kg")),
    ("cap tom", Wish("pin_load", "tom")), ("keep ana at parallel", Wish("pin_depth", "ana", "parallel")),
    ("keep tom hale a little above parallel", Wish("pin_depth", "tom hale", "a little above parallel")),
    ("let ana lift 90", Wish("raise_load", "ana")), ("write to everybody", Wish("note", "everybody")),
    ("tell maria santos to rest", Wish("note", "maria santos", "", "to rest")), ("note on ana", Wish("private", "ana")),
    ("snooze ana", Wish("put_aside", "ana")),
    ("put tom becker aside", Wish("put_aside", "tom becker")), ("mark ana as reviewed", Wish("reviewed", "ana")),
    ("overrule sam", Wish("overrule", "sam")), ("hand over ana to kim", Wish("hand_over", "ana", "", "kim")),
    ("add ana to group tuesday", Wish("group", "ana", "", "tuesday")), ("how is mria", Wish("see", "mria")), ("undo", Wish("undo")),
    ("who's hurt?", Wish("hurt")), ("is anyone hurt", Wish("hurt")), ("who hasn't answered", Wish("quiet")),
    ("who went over the limit", Wish("over_load")), ("whose retest is due", Wish("retest_due")), ("who wrote", Wish("note")),
    ("whats new", Wish("since")), ("who do i need to look at first", Wish("since")), ("my list", Wish("")), ("any pain?", Wish("hurt")),
    ("who has chest pain", Wish("hurt")), ("anyone with a sore knee?", Wish("hurt")), ("ok seen", Wish("seen")),
    ("show me the quiet ones", Wish("quiet")), ("set ana to 80kg", Wish("pin_load", "ana", "80kg")),
    ("ana max 60", Wish("pin_load", "ana", "60")),
    ("no more than 60 for tom hale", Wish("pin_load", "tom hale", "60")), ("retest ana friday", Wish("retest", "ana")),
    ("text tom becker: good job", Wish("note", "tom becker", "", "good job")), ("message everyone", Wish("note", "everybody")),
    ("when did ana last squat", Wish("days", "ana")), ("ana's depth", Wish("see", "ana")), ("report ana", Wish("report", "ana")),
    ("is ana over the limit", Wish("see", "ana", "", "over the limit")), ("tom b", Wish("see", "tom b")),
    ("ask nobody for a film", Wish("ask_for", "nobody", "film"))])
def test_a_wish_about_a_lifter_is_understood(said, wish):
    assert wish_in(said, NAMES) == wish


@each_row("said", [
    "how is it going", "how is my back", "tell me about rounding", "write to my coach", "show me the menu", "set my retest", "back", "skip",
    "yes", "who am i", "how is nobody", "cap the bar at 80", "my back hurts", "ask me for a film", "parallel", "80", "", "?"])
def test_other_words_of_a_coach_are_no_wish_about_a_lifter(said):
    assert wish_in(said, NAMES) is None


@each_row(("said", "left"), [
    ("how is will hurt", ""), ("who is hurt", ""), ("ask will hurt for a film", "film"),
    ("compare will hurt and stitch", ""), ("set will hurt to 80kg", ""), ("is ana hurt", ""), ("find stitch", ""),
    ("hurt", "hurt"), ("stitch", "stitch"), ("my back hurts", "my back hurts"), ("how is my hurt back", "how is my hurt back"),
    ("tell will hurt that my chest hurts", "that my chest hurts"), ("is ana hurt like my back", "hurt like my back"),
    ("compare sam and my sore back", "compare sam and my sore back"), ("find sam my back hurts", "find sam my back hurts")])
def test_a_name_that_is_a_word_for_pain_is_not_the_coach_s_pain_but_all_else_is_heard(said, left):
    assert of_oneself(said, NAMES) == left


def test_a_button_s_own_words_are_no_sign_unless_they_are_somebody_s_name():
    assert of_oneself("take it back for stitch", NAMES, tapped=True) == ""
    assert of_oneself("stitch", NAMES, tapped=True) == "stitch"


@each_row(("said", "whom", "own"), [
    ("sam fainted in the gym", "Sam Ode", "i fainted in the gym"), ("fyi Sam's leg gave way", "Sam Ode", "my leg gave way"),
    ("Sam Ode is pregnant", "Sam Ode", "i am pregnant"),
    ("did sam tell you about the numbness", "Sam Ode", "i tell you about the numbness"),
    ("Sam told me he wants to kill himself", "Sam Ode", "i said i wants to kill myself"),
    ("Will has a fever", "Will Roe", "i have a fever"),
    ("will's chest hurts", "Will Roe", "my chest hurts"),
    ("her foot drops", None, "my foot drops"), ("she can't pee", None, "i can't pee"),
    ("my lifter sam has chest pain", "Sam Ode", "has chest pain"), ("Sam texted: i want to end it all", "Sam Ode", "i want to end it all"),
    ("sam can't pee since yesterday, what should i do", "Sam Ode", "i can't pee since yesterday"),
    ("a client of mine fainted", None, "i fainted"), ("the guy i train fainted", None, "i fainted"),
    ("one of mine collapsed", None, "i collapsed"),
    ("what do i do if a lifter says they cant pee", None, "i says i cant pee"),
    ("tell sam to see a doctor, he has chest pain", "Sam Ode", "to see a doctor, i has chest pain"),
    ("write to sam: does your chest still hurt?", "Sam Ode", "does your chest still hurt?"),
    ("Tom says he wants to die", None, "i wants to die"), ("one of my lifters is pregnant", None, "i am pregnant"),
    ("cap sam at 60 because his leg went numb", "Sam Ode", "at 60 because my leg went numb")])
def test_a_message_that_tells_of_a_lifter_and_has_no_word_of_the_coach_tells_of_them(said, whom, own):
    names = {"1": "Sam Ode", "2": "Will Roe"}
    told = told_of(said, names)
    assert told is not None
    assert (names.get(told.who), told.as_own) == (whom, own)


@each_row("said", ["will faint if this goes on", "i fainted when sam came in", "same pain as before", "my chest hurts, sam",
                   "sam and i both have chest pain", "the guy in front of me made my chest hurt",
                   "sam saw me faint", "sam, I'm dizzy", "my back hurts", "here it hurts", "the pain is back", ""])
def test_other_messages_of_a_coach_may_be_their_own(said):
    told = told_of(said, {"1": "Sam Ode", "2": "Will Roe"})
    assert told is None or hear_flags(told.own) or hear_pain(told.own) is Pain.YES


def test_a_letter_wrong_is_near_and_another_name_is_not():
    names = dict(enumerate(NAMES))
    assert [NAMES[one] for one in nearly_called("marai", names)] == ["Maria Santos"]
    assert nearly_called("tim", names) == nearly_called("anton", names) == []
