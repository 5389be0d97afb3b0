"""One step of a conversation: what every question answers, whatever its flow."""

from dataclasses import replace
from datetime import timedelta

import pytest

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Ended, Record, Say
from companion.conversation.events import Edited, Invite, Sent, Tapped, Typed
from companion.conversation.flow import Ask, Flow, Gate, Jump, Run, Tell, both, each_side
from companion.conversation.kinds import Hold, Media, Ready, Words, YesNo, choice
from companion.conversation.number_kinds import Number, PainScore
from companion.conversation.prompt import start_payload
from companion.conversation.session import Session
from companion.conversation.step import prompt_now
from tests.drive import NOW, Talk, small_book
from tests.table import each_row

CM = Number("cm", 0, 30, usual=(3, 20), example_value=11)
APART = Fact("{side}_apart", 0, 30, step=0.1, of=lambda got, side: abs(float(got[f"{side}_1"]) - float(got[f"{side}_2"])))
REACH = Flow("reach", 1, "Reach", facts=both(APART), invite="Last time it was {reach.left_1:cm}. Again?", steps=(
    Ask("setup", "Stand here.", Ready()),
    *each_side(
        Ask("{side}_1", "How many {unit} on the {side}?", CM, caution="Stop if it hurts."),
        Ask("{side}_2", "Once more, {side}: how many {unit}?", CM, caution="Stop if it hurts."),
        Ask("{side}_3", "Those were {apart:cm} apart. Once more?", CM, caution="Stop if it hurts.", only_if=APART >= 1.9)),
    Ask("note", "Anything to add?", Words(example_text="it was easy"), free=True),
    Tell("Left {left_1:cm}."),
))
CARE = Flow("care", 1, "Care", steps=(
    Ask("well", "Are you well?", YesNo(unsure=True), safety=True, then=(Jump(fact("well").is_("no"), say="Then rest."),)),
    Ask("pain", "How much pain?", PainScore(), safety=True),
    Ask("film", "Send a film.", Media()),
    Ask("hold", "Ready to hold?", Hold(seconds=20), caution="Stop if it hurts."),
    Ask("held", "How long?", Number("s", 0, 60, usual=(0, 60), example_value=10)),
))


def test_a_third_reading_is_asked_only_where_the_first_two_differ_enough():
    assert Talk(REACH).say("ready", "10", "11.8").state == "reach.right_1"
    assert Talk(REACH).say("ready", "10", "11.9").state == "reach.left_3"


def test_a_skipped_answer_takes_the_way_where_its_fact_is_missing():
    talk = Talk(REACH).say("ready", "10", "skip")
    assert talk.state == "reach.right_1"
    assert [e.status for e in talk.effects if isinstance(e, Record)] == ["ok", "ok", "skipped"]


def test_back_takes_the_last_answer_back_as_a_new_row_and_asks_again():
    talk = Talk(REACH).say("ready", "10", "14", "back")
    assert talk.state == "reach.left_2"
    assert [e for e in talk.effects if isinstance(e, Record)][-1].status == "withdrawn"
    assert talk.say("10.5").state == "reach.right_1"


def test_back_at_the_first_question_stays_there():
    talk = Talk(REACH).say("back")
    assert talk.state == "reach.setup"
    assert "first question" in talk.last


def test_a_nonsense_answer_gets_a_reason_an_example_and_the_same_question():
    talk = Talk(REACH).say("ready", "lots")
    assert talk.state == "reach.left_1"
    assert "one number" in talk.last
    assert "11 cm" in talk.last
    assert "left_1" not in talk.answers


@each_row("text", ["12 to 14", "-3", "900 cm", "🏋️", "x" * 5000, "12 14", "", "   "])
def test_what_is_no_answer_is_never_recorded(text):
    talk = Talk(REACH).say("ready")
    talk.send(Typed(text))
    assert talk.state == "reach.left_1"
    assert "left_1" not in talk.answers


def test_an_unusual_value_is_asked_about_once_then_kept():
    talk = Talk(REACH).say("ready", "2")
    assert "unusual" in talk.last
    assert "left_1" not in talk.answers
    assert talk.say("yes").answers["left_1"] == 2


def test_an_unusual_value_may_be_replaced_instead_of_confirmed():
    talk = Talk(REACH).say("ready", "2", "12")
    assert talk.answers["left_1"] == 12
    assert Talk(REACH).say("ready", "2", "no").state == "reach.left_1"


@pytest.mark.parametrize(("words", "state"), [("menu", "home.pick"), ("stop", ""), ("back", "reach.note"), ("skip", "reach.after")])
def test_an_unusual_value_left_unconfirmed_is_left_by_the_words_that_leave_any_question(words: str, state: str):
    plain = replace(REACH, steps=(Ask("note", "Anything to add?", Words(), free=True), Ask("far", "How many {unit}?", CM),
                                  Ask("after", "How was it?", Words(), free=True)))
    talk = Talk(plain).say("easy", "2")
    assert "unusual" in talk.last
    assert talk.say(words).state == state
    assert talk.answers.get("far") is None


def test_again_at_an_unusual_value_asks_about_it_again():
    assert Talk(REACH).say("ready", "2", "again").last == "2 cm would be unusual. Is it right?"


def test_an_unusual_value_said_twice_is_kept():
    assert Talk(REACH).say("ready", "25", "25").answers["left_1"] == 25


def test_stop_while_the_body_works_asks_whether_something_hurt():
    talk = Talk(REACH).say("ready", "stop")
    assert talk.last == "Did something hurt?"
    assert Talk(REACH).say("ready", "stop", "yes").state == "pain.bad"
    assert talk.say("no").state == ""


@pytest.mark.parametrize("asked", ["felt something weird in my back", "stop"])
def test_a_stop_does_not_answer_whether_something_hurt(asked):
    talk = Talk(REACH).say("ready", asked, "stop", "stop")
    assert (talk.state, talk.last.splitlines()[-1]) == ("reach.left_1", "Did something hurt?")
    talk.send(Tapped(start_payload("care")))
    assert talk.last.splitlines()[-1] == "Did something hurt?", "nothing begins over it"
    assert talk.say("menu").last.splitlines()[-1] == "Did something hurt?"
    talk.say("no")
    assert (talk.session.aside, talk.state) == (None, ""), "then what runs is stopped"


def test_pain_told_after_a_stop_ends_the_test_it_was_asked_in():
    talk = Talk(REACH).say("ready", "felt something weird in my back", "stop", "yes", "2")
    assert Ended("1", "pain") in talk.effects


def test_a_parked_flow_goes_on_where_it_was():
    talk = Talk(REACH).say("ready", "10", "stop", "no", "go on")
    assert talk.state == "reach.left_2"


def test_stop_elsewhere_parks_at_once():
    assert Talk(REACH).say("stop").state == ""


def test_pain_in_an_answer_keeps_the_words_scores_nothing_and_ends_the_test():
    talk = Talk(REACH).say("ready", "12 but it hurt")
    row = [e for e in talk.effects if isinstance(e, Record)][-1]
    assert (row.status, row.raw, row.value) == ("in_pain", "12 but it hurt", None)
    talk.say("2")
    assert Ended("1", "pain") in talk.effects


def test_unsure_words_are_asked_about_and_a_no_goes_on():
    talk = Talk(REACH).say("ready", "felt something weird in my back")
    assert talk.last == "Did something hurt?"
    assert talk.say("no").state == "reach.left_1"


def test_pain_words_in_free_text_are_asked_about_and_kept_as_text():
    talk = Talk(REACH).say("ready", "10", "10", "10", "10", "ouch my back")
    assert talk.last == "Did something hurt?"
    assert talk.say("no").answers["note"] == "ouch my back"


def test_a_safety_question_is_not_skipped_and_not_guessed():
    talk = Talk(CARE).say("skip")
    assert talk.state == "care.well"
    assert Talk(CARE).say("yess pleaze").state == "care.well"
    assert Talk(CARE).say("i can't").state == "care.well"
    assert Talk(CARE).say("yes").state == "care.pain"


def test_a_jump_to_the_end_says_its_own_words():
    talk = Talk(CARE).say("no")
    assert "Then rest." in [say.text for say in talk.says]
    assert talk.state == "home.pick"


def test_a_film_is_taken_only_where_a_film_is_asked_for():
    talk = Talk(CARE).say("yes", "2")
    talk.send(Sent("sticker"))
    assert talk.state == "care.film"
    talk.send(Sent("video", "file-1"))
    assert talk.answers["film"] == "file-1"
    talk = Talk(REACH).say("ready").photo()
    assert talk.state == "reach.left_1"


def test_a_timed_hold_counts_in_and_out_and_asks_afterwards():
    talk = Talk(CARE).say("yes", "2", "skip", "start")
    assert [say.after for say in talk.says[-4:]] == [0, 5, 25, 26]


def test_an_old_button_changes_nothing():
    talk = Talk(REACH).say("ready", "10")
    before = talk.session
    talk.send(Tapped("reach.1.setup.ready"))
    assert talk.session._replace(told=()) == before
    assert "earlier question" in talk.last


def test_an_old_stop_button_still_stops():
    talk = Talk(REACH).say("ready", "10")
    talk.send(Tapped("reach.1.left_1.!stop"))
    assert talk.last == "Did something hurt?"


@each_row("data", ["", "x", "go.nowhere", "reach.1.left_1", "reach.1.left_1.nonsense", "a.b.c.d",
                                  "reach.99999999999.left_1.x", "....", "reach.1.left_1?.yes"])
def test_a_forged_button_changes_nothing(data):
    talk = Talk(REACH).say("ready")
    before = talk.session
    talk.send(Tapped(data))
    assert talk.session._replace(told=()) == before


def test_an_edit_changes_nothing_unless_it_speaks_of_pain():
    talk = Talk(REACH).say("ready", "10")
    before = talk.session
    talk.send(Edited("11"))
    assert talk.session._replace(told=()) == before
    talk.send(Edited("11 ouch my back"))
    assert talk.state == "pain.bad"


def test_asking_for_another_flow_parks_the_first():
    book = small_book(REACH, CARE)
    talk = Talk(REACH, book=book).say("ready", "10", "care")
    assert talk.state == "care.well"
    assert [stack[-1].flow for stack in talk.session.parked] == ["reach"]


def test_a_gate_lets_its_first_flow_run_and_stays_shut_while_it_must():
    gated = Flow("gated", 1, "Gated", gates=(Gate(~fact("ok").known, "Still shut.", first="care"),),
                 steps=(Ask("a", "A?", Ready()),))
    book = small_book(gated, CARE)
    talk = Talk(gated, book=book)
    assert talk.state == "care.well"
    talk.say("no")
    assert "Still shut." in [say.text for say in talk.says]
    assert talk.state == "home.pick"


def test_an_invitation_disturbs_nothing_and_its_button_begins_the_flow():
    book = small_book(REACH, CARE)
    talk = Talk(CARE, known={"reach.left_1": 9.5}, book=book)
    before = talk.session
    talk.send(Invite("reach"))
    assert talk.session._replace(told=()) == before
    assert talk.last == "Last time it was 9.5 cm. Again?"
    talk.tap("Reach")
    assert talk.state == "reach.setup"


def test_a_run_of_an_older_version_starts_again_with_its_answers_kept():
    talk = Talk(REACH).say("ready", "10")
    newer = Flow(**{name: getattr(REACH, name) for name in REACH.__dataclass_fields__} | {"version": 2})
    talk.book = small_book(newer)
    talk.say("11")
    assert talk.state == "reach.setup"
    assert "starts again" in " ".join(say.text for say in talk.says)


@pytest.mark.parametrize(("reply", "state"), [
    ("yes", "pain.bad"), ("not sure", "pain.bad"), ("11", "pain.bad"), ("no", "reach.setup"), ("nothing hurt", "reach.setup")])
@pytest.mark.parametrize("tapped", [True, False])
def test_whether_something_hurt_stays_open_where_its_flow_starts_again(reply: str, state: str, tapped: bool):
    talk = Talk(REACH).say("ready", "back felt a bit weird")
    assert talk.session.aside == ("ache", "back felt a bit weird")
    labels = {"yes": "Yes, it hurt", "not sure": "Not sure", "no": "No"}
    data = next((tap.data for row in talk.says[-1].buttons for tap in row if tap.label == labels.get(reply)), None)
    talk.book = small_book(replace(REACH, version=2))
    talk.send(Tapped(data) if tapped and data else Typed(reply))
    assert talk.state == state


def test_a_run_that_waited_under_the_pain_questions_starts_again_where_its_question_is_gone():
    talk = Talk(Flow("diary", 1, "Diary", steps=(Ask("slept", "Slept well?", YesNo()), Ask("day", "And the day?", YesNo()))))
    talk.say("yes", "my back hurts")
    talk.book = small_book(Flow("diary", 2, "Diary", steps=(Ask("night", "How was the night?", YesNo()),)))
    talk.say("2")
    assert talk.state == "diary.night"
    assert "starts again" in " ".join(say.text for say in talk.says)


def test_a_session_survives_being_kept():
    for talk in (Talk(REACH).say("ready", "10", "stop", "no"), Talk(REACH).say("ready", "2"), Talk(CARE).say("yes")):
        assert Session.loads(talk.session.dumps()) == talk.session


def test_describe_shows_the_question_again_with_its_picture_in_words_and_changes_nothing():
    drawn = Flow("drawn", 1, "Drawn", steps=(Ask("look", "Does it round?", YesNo(), picture="squat_bands"),
                                             Ask("plain", "And now?", YesNo())))
    talk = Talk(drawn).say("describe")
    assert talk.state == "drawn.look"
    assert (talk.says[-1].picture, "Does it round?" in talk.last) == ("describe squat_bands", True)
    talk.say("yes", "describe the picture")
    assert (talk.state, talk.says[-1].picture) == ("drawn.plain", "")


def test_help_and_again_show_the_question_and_change_nothing():
    talk = Talk(REACH).say("ready")
    before = talk.session
    for words in ("help", "say that again"):
        talk.say(words)
        assert talk.session == before
        assert "How many cm on the left?" in talk.last


def test_a_screen_that_opens_shows_the_waiting_question():
    talk = Talk(REACH).say("ready", "10")
    shown = prompt_now(talk.book, talk.session, talk._known())
    assert [type(say) for say in shown] == [Say]
    assert "Once more, left" in shown[0].text


def test_a_run_inside_another_hands_over_its_ending():
    outer = Flow("outer", 1, "Outer", steps=(
        Run("care"), Ask("after", "And now?", choice(("a", "Fine")), only_if=fact("run_care").is_("done"))))
    talk = Talk(outer, book=small_book(outer, CARE)).say("no")
    assert talk.state == "outer.after"
    assert talk.now == NOW


def test_i_meant_corrects_the_last_answer():
    talk = Talk(REACH).say("ready", "10", "no, I meant 12 cm")
    assert talk.state == "reach.left_2"
    rows = [e for e in talk.effects if isinstance(e, Record) and e.key == "left_1"]
    assert [(row.status, row.value) for row in rows] == [("ok", 10), ("withdrawn", None), ("ok", 12)]


def test_i_meant_nonsense_changes_nothing():
    talk = Talk(REACH).say("ready", "10")
    before = talk.session
    assert talk.say("i meant lots").session._replace(told=(), unread=()) == before


def test_the_last_answer_of_a_flow_can_still_be_taken_back():
    outer = Flow("outer", 1, "Outer", steps=(Run("reach"), Ask("after", "And now?", Ready()), Tell("Done.")))
    book = small_book(outer, REACH)
    talk = Talk(outer, book=book).say("ready", "10", "10", "10", "10", "skip")
    assert talk.state == "outer.after"
    talk.say("back")
    assert talk.state == "reach.note"
    talk.say("all good")
    assert talk.state == "outer.after"
    assert talk.answers["note"] == "all good"


def test_a_safety_check_can_be_corrected_from_the_question_after_it():
    gated = Flow("gated", 1, "Gated", gates=(Gate(~fact("ok").known, "Shut.", first="first"),),
                 steps=(Ask("a", "A?", Ready()),))
    first = Flow("first", 1, "First", steps=(Ask("sure", "Sure?", YesNo(), safety=True),))
    talk = Talk(gated, known={}, book=small_book(gated, first))
    talk.known["ok"] = "yes"
    talk.say("yes")
    assert talk.state == "gated.a"
    assert talk.say("back").state == "first.sure"
    assert talk.say("no").state == "gated.a"


def test_who_comes_back_after_hours_is_told_where_they_were():
    talk = Talk(REACH).say("ready", "10")
    talk.now += timedelta(hours=4)
    talk.say("11")
    assert "Reach: at most" in talk.last
    assert "left_2" not in talk.answers
    assert talk.tap("Go on").state == "reach.left_2"
    assert talk.say("11").answers["left_2"] == 11


def test_after_hours_the_test_can_start_again_or_be_left():
    for label, state in (("Start this again", "reach.setup"), ("Leave it", "home.pick")):
        talk = Talk(REACH).say("ready", "10")
        talk.now += timedelta(hours=4)
        assert talk.say("hello").tap(label).state == state
        assert Ended("1", "left") in talk.effects


def test_pain_is_heard_at_once_also_after_hours():
    talk = Talk(REACH).say("ready", "10")
    talk.now += timedelta(hours=4)
    assert talk.say("my back hurts now").state == "pain.bad"


@pytest.mark.parametrize("words", ["thanks", "OK", "Thank you!", "got it.", "👍"])
def test_thanks_said_to_a_message_that_asks_nothing_are_no_wrong_answer(words):
    at_home, idle = Talk(REACH).say("menu"), Talk(REACH).say("stop")
    for talk in (at_home, idle):
        before = talk.session
        assert talk.say(words).last == "Good. “Menu” shows what there is, whenever you like."
        assert talk.session._replace(at=before.at) == before
