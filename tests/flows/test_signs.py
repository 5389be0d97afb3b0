"""Signs written at any time are heard, asked about and kept to; what was not meant is taken back in words."""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation import sign_runs, signs
from companion.conversation.effects import Alert, Ended, Find, Record
from companion.conversation.flow import Do
from companion.language.flags import Flag, Heard, hear_flags
from companion.screening.safety import Level, worst
from companion.screening.signs import CLEARABLE, SCREENED_SIGNS, level_from_signs, level_until_answered
from companion.screening.standing import QUESTIONS_OPEN
from flows.catalogue import BOOK
from flows.crisis import HELP, HELPS
from flows.shared import CLINICIAN, EMERGENCY, NOT_TODAY, SAME_DAY
from tests.drive import CHECKED, UNCHECKED, Talk

MENU, TEST = BOOK["home"].flow, BOOK["knee_to_wall"].flow


def at_menu(*replies: str, known=CHECKED) -> Talk:
    return Talk(MENU, known=known, book=BOOK).say(*replies)


def in_a_test(*replies: str) -> Talk:
    """At the first reading of knee to wall, the body at work."""
    return Talk(TEST, known={**CHECKED, "about_you.height": 180.0}, book=BOOK).say("tape", *replies)


def alerts(talk: Talk) -> list[Alert]:
    return [effect for effect in talk.effects if isinstance(effect, Alert)]


@pytest.mark.parametrize(("words", "flag"), [
    ("since yesterday my left toes won't lift and the foot slaps", "weakness"),
     ("my left leg has been getting weaker this week", "weakness"),
    ("cant pee since this morning", "bladder_bowel"), ("i fainted in the gym yesterday", "chest"),
    ("i had a heart attack last year", "heart_history"), ("I fell off a ladder on my back yesterday", "fall"),
    ("got a fever today", "fever"), ("btw im pregnant", "pregnancy"), ("i am 16 btw", "under_18"),
     ("actually i have cancer", "cancer_bone"),
    ("my doctor said no lifting for two weeks", "restriction"), ("calf gave way under me", "weakness")])
@pytest.mark.parametrize("begun", [at_menu, in_a_test])
def test_a_sign_closes_the_day_and_is_asked_about_with_both_answers_named(words: str, flag: str, begun):
    """Every line was typed into an earlier version, which asked "Did something hurt?" or nothing."""
    talk = begun(words)
    assert talk.session.top.flow in ("signs", "pain")
    assert talk.found["safety.level"] != "go"
    if talk.session.top.flow == "signs":
        assert SCREENED_SIGNS[flag].words in talk.last
        so = "Now or today" if flag == "chest" else "Yes, that is so"
        assert {tap.label for row in talk.says[-1].buttons for tap in row} >= {so, "No, I meant something else"}


@pytest.mark.parametrize(("words", "flag"), [
    (("i cant", "pee"), "bladder_bowel"), (("so today", "i couldnt", "hold my pee"), "bladder_bowel"),
    (("my foot", "went"), "weakness"), (("hmm", "this morning", "i passed", "out"), "chest")])
@pytest.mark.parametrize("begun", [at_menu, in_a_test])
def test_a_sign_told_in_several_messages_is_asked_about(words: tuple[str, ...], flag: str, begun):
    talk = begun(*words)
    assert talk.session.top.flow in ("signs", "pain")
    assert talk.session.top.got.get("heard", flag) == flag


def test_several_messages_answer_no_safety_question_but_are_asked_about():
    talk = Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say("i can't", "pee")
    assert (talk.state, talk.known["safety.level"]) == ("signs.so", "not_today")
    assert talk.say("No, I meant something else", "i can't find the tape").session.top.flow == "safety_check"


def test_what_was_written_long_before_or_taken_as_an_answer_is_not_read_with_it():
    talk = at_menu("i cant")
    talk.now += timedelta(minutes=3)
    assert talk.say("pee").state == "home.pick"
    assert at_menu("about me", "i cant", "180", "pee").session.top.flow == "about_you", "an answer in between ends it"
    assert in_a_test("felt something weird", "no", "pee").session.top.flow == "knee_to_wall", "it was answered"


def test_thoughts_of_self_harm_in_several_messages_are_heard_and_their_words_forgotten():
    talk = in_a_test("i want to", "end it all")
    assert talk.known["crisis"] == "open"
    assert not talk.session.unread
    assert "end it" not in talk.session.dumps()
    assert not [effect for effect in talk.effects if isinstance(effect, Record) and "end it" in effect.raw]


@pytest.mark.parametrize("words", [
    ("i want", "to die"), ("i", "want", "to die"), ("i want to", "kill myself"), ("i just want to", "die")])
@pytest.mark.parametrize("begun", [at_menu, in_a_test])
def test_of_dying_in_several_messages_is_met_as_in_one(words: tuple[str, ...], begun):
    talk, one = begun(*words), begun(" ".join(words))
    assert [say.text for say in talk.says[-3:]] == [say.text for say in one.says[-3:]]
    assert (talk.known["crisis"], talk.state) == (one.known["crisis"], one.state) == ("open", "")
    assert not talk.session.unread
    assert words[-1] not in talk.session.dumps()


@pytest.mark.parametrize("words", [("kill", "me"), ("ugh", "to die")])
def test_what_is_doubtful_in_one_message_is_asked_about_in_several(words: tuple[str, ...]):
    assert at_menu(*words).known["crisis"] == at_menu(" ".join(words)).known["crisis"] == "asked"


@pytest.mark.parametrize(("seconds", "crisis"), [(120, "open"), (121, "asked")])
def test_of_dying_is_put_together_within_two_minutes(seconds: int, crisis: str):
    talk = at_menu("i want")
    talk.now += timedelta(seconds=seconds)
    assert talk.say("to die").known["crisis"] == crisis


def test_pain_told_in_several_messages_is_asked_about():
    assert at_menu("my back", "has gone").last == "Did something hurt?"


NUMB = ("my foot is numb", "yes my foot is numb", "my toes are numb", "pins and needles in my foot")
TOLD_SO_FAR = ("Lower back", "5", "no", "no", "no")


@pytest.mark.parametrize("words", NUMB)
@pytest.mark.parametrize("at", [1, 2, 3, 4])
def test_a_numb_foot_told_at_a_question_about_pain_counts_as_it_does_told_first(words: str, at: int):
    """It was asked of it whether it was a weak leg or between the legs, or it came to nothing."""
    talk = at_menu("my back hurts", *TOLD_SO_FAR[:at])
    asked = talk.state
    talk.say(words)
    assert level_in(talk) == "clinician", "at once"
    assert talk.session.top.flow == "pain"
    if talk.state == asked:
        assert talk.session.top.got["where"] == "back", "what was answered stands"
    while talk.state != "pain.bladder":
        talk.say("no" if talk.state != "pain.bad" else "5")
    talk.say("no")
    assert talk.state == "pain.weakness"
    talk.say("no")
    assert (level_in(talk), talk.found["pain.told"]) == ("clinician", "sign")
    assert any(words.split(" my ")[-1] in alert.because for alert in alerts(talk))


@pytest.mark.parametrize("words", NUMB)
@pytest.mark.parametrize("before", [("pain", "Nothing hurts"), ("pain", "Lower back", "back", "Nothing hurts")])
def test_a_numb_foot_where_it_is_asked_whether_nothing_hurt_is_a_no_and_a_sign(words: str, before: tuple[str, ...]):
    talk = at_menu(*before, words)
    assert talk.state == "pain.where"
    assert level_in(talk.say("Nothing hurts", "Right, nothing")) == "clinician", "numbness is never taken back"


def test_another_place_meant_after_a_numb_foot_is_asked_about_from_the_start():
    talk = at_menu("my back hurts", "Lower back", "5", "my foot is numb")
    assert talk.state == "pain.sharp"
    assert talk.say("No, I meant my hip").state == "pain.bad"
    assert level_in(talk) == "clinician"


@pytest.mark.parametrize("key", ["bladder", "weakness"])
def test_a_numb_foot_said_again_changes_nothing(key: str):
    talk = at_menu("my foot is numb", "Lower back", "5", "no", "no", *(["no"] if key == "weakness" else []))
    for words in ("my foot is numb", "my toes are numb too"):
        assert talk.say(words).state == f"pain.{key}"
    assert len([effect for effect in talk.effects if isinstance(effect, Ended)]) == 0


@pytest.mark.parametrize(("words", "flow"), [("my left foot drops", "signs"), ("numb between my legs", "signs"), ("i want to die", "")])
def test_a_sure_sign_among_the_questions_about_pain_keeps_its_own_questions(words: str, flow: str):
    talk = at_menu("my back hurts", "Lower back", words)
    assert talk.state.partition(".")[0] == flow


@pytest.mark.parametrize("words", ["no numbness", "my foot isn't numb", "what does numb mean?", "no tingling"])
def test_that_nothing_is_numb_adds_no_sign(words: str):
    assert level_in(at_menu("my back hurts", "Lower back", "5", words)) == "not_today"


def test_a_foot_that_drops_is_same_day_care_after_bladder_and_saddle_were_asked():
    talk = in_a_test("my left foot has been dropping since yesterday", "yes")
    assert talk.state == "signs.bladder"
    talk.say("no")
    assert SAME_DAY in [say.text for say in talk.says]
    assert talk.found["safety.level"] == "same_day"
    assert "my left foot has been dropping" in alerts(talk)[-1].because


def test_weakness_with_bladder_trouble_is_an_emergency():
    assert EMERGENCY in [say.text for say in in_a_test("my right leg is getting weaker every day", "yes", "yes").says]


def test_bladder_trouble_says_emergency_and_tells_the_coach_before_it_asks():
    talk = at_menu("cant pee since this morning")
    assert talk.says[-2].text == EMERGENCY
    assert talk.says[-2].must_arrive
    assert alerts(talk)[0].level == "emergency"


def test_what_was_not_meant_is_taken_back_in_words_and_logged():
    talk = at_menu("btw im pregnant", "No, I meant something else", "i meant my dog is")
    assert talk.found["safety.level"] == "go"
    assert [record.value for record in talk.effects if isinstance(record, Record) and record.key == "meant"] == ["i meant my dog is"]


@pytest.mark.parametrize(("meant", "asks"), [("my leg feels weak", "signs"), ("my back hurts", "pain"),
                                             ("i need a break before the test", "home")])
def test_what_was_meant_and_matters_too_is_not_said_to_be_misunderstood_and_a_coach_hears_that_it_is_asked_about(meant: str, asks: str):
    talk = at_menu("cant pee since this morning", "No, I meant something else", meant)
    assert (talk.session.stack[-1].flow if talk.session.stack else "home") == asks
    assert any("Thank you, then I misunderstood." in said.text for said in talk.says) is (asks == "home")
    taken_back = alerts(talk)[-1].because
    assert "taken back" in taken_back
    assert taken_back.endswith("”, which I ask about now") == (asks != "home")


@pytest.mark.parametrize(("words", "taken_back"), [("no, I meant my phone died", True), ("No i meant the chair", True),
                                                   ("i meant my dog", True), ("sorry i meant my son", True), ("i meant my left leg", False),
                                                   ("no, I meant I fainted at home", False), ("no, i meant it hurts", False)])
def test_no_i_meant_takes_it_back_unless_it_reports_something(words: str, taken_back: bool):
    talk = at_menu("my leg gave way", words)
    assert (talk.answers.get("so") == "no") is taken_back


def test_taking_back_an_emergency_amends_the_alert_and_withdraws_nothing():
    talk = at_menu("cant pee since this morning", "No, I meant something else", "i need a break before the test")
    assert [alert.level for alert in alerts(talk)] == ["emergency", "go"]
    assert "taken back" in alerts(talk)[-1].because


@pytest.mark.parametrize(("when", "level"), [
    ("now", "emergency"), ("not sure", "emergency"), ("In the last two weeks", "same_day"), ("on sunday", "same_day"),
    ("yesterday", "same_day"), ("earlier", "same_day"), ("Longer ago", "clinician"), ("years ago", "clinician")])
def test_chest_signs_of_today_are_an_emergency_those_of_late_are_seen_today_and_older_ones_are_a_history(when: str, level: str):
    assert at_menu("i fainted in the gym", when, "no").found["safety.level"] == level


def test_no_clearance_is_asked_for_after_a_faint_of_late():
    talk = at_menu("passed out in the shower on sunday", "In the last two weeks")
    assert "cleared" not in talk.answers
    assert SAME_DAY in [say.text for say in talk.says]


@pytest.mark.parametrize(("pain", "level", "words"), [("0", "not_today", NOT_TODAY), ("3", "same_day", SAME_DAY)])
def test_fever_alone_ends_the_day_and_with_back_pain_needs_care(pain: str, level: str, words: str):
    """Regional back-pain pathways, second-hand."""
    talk = at_menu("got a fever today", "yes", pain)
    assert talk.found["safety.level"] == level
    assert words in [say.text for say in talk.says]


def test_a_history_that_a_clinician_cleared_does_not_close():
    assert at_menu("i had a heart attack last year", "yes", "no").found["safety.level"] == "clinician"
    cleared = at_menu("i had a heart attack last year", "yes", "yes", "my cardiologist, in May", "yes", "none")
    assert cleared.found["safety.level"] == "go"
    assert cleared.found["safety.cleared_until"] == "2026-09-01"


@pytest.mark.parametrize(("said", "left_out"), [
    (("i take warfarin", "yes", "yes", "my doctor, in May", "yes", "none"), "and who cleared you"),
    (("btw im pregnant", "yes", "yes", "yes", "my midwife, last week", "yes", "none"), "left out in pregnancy"),
    (("i have a slipped disc from 2019", "yes", "yes", "no"), "no bar and no added weight")])
def test_a_sign_that_leaves_the_day_open_ends_with_what_holds_now(said: tuple[str, ...], left_out: str):
    talk = at_menu(*said)
    assert talk.state == "home.pick"
    assert left_out in " ".join(say.text for say in talk.says[-3:-1])


@pytest.mark.parametrize("when", [
    ("my doctor, tomorrow",), ("my gp, next week",), ("my gp", "none"), ("dr okafor", "next friday")])
def test_a_clearance_to_come_or_without_a_day_opens_nothing(when: tuple[str, ...]):
    talk = at_menu("i take warfarin", "yes", "yes", *when)
    assert talk.found["safety.level"] == "clinician"
    assert "safety.cleared_until" not in talk.found
    assert any("counts once it is given" in say.text for say in talk.says)


@pytest.mark.parametrize(("who", "level"), [(("my mate, yesterday", "no"), "clinician"), (("me, today", "Not sure"), "clinician"),
                                            (("my mate Ada, yesterday", "yes", "yes", "none"), "go")])
def test_only_who_treats_them_clears_them(who: tuple[str, ...], level: str):
    talk = at_menu("i take warfarin", "yes", "yes", *who)
    assert talk.found["safety.level"] == level
    assert ("safety.cleared_until" in talk.found) is (level == "go")


@pytest.mark.parametrize("knew", ["no", "not sure"])
def test_a_clearance_from_before_it_happened_clears_nothing(knew: str):
    talk = at_menu("i fainted once", "longer ago", "yes", "my doctor last year", knew)
    assert (talk.known["safety.level"], "safety.cleared_until" in talk.found) == ("clinician", False)
    assert any(say.text.startswith("Then that does not count for this.") for say in talk.says)
    assert talk.say("squatting").state != "squat_day.bar"


def test_pregnancy_written_shuts_the_tests_on_the_back():
    talk = at_menu("btw im pregnant", "yes", "yes", "yes", "my midwife, last week", "yes", "none")
    assert talk.say("hip fold").state != "hip_fold.setup"
    assert talk.known["safety.pregnant"] == "yes"
    assert any("left out in pregnancy" in say.text for say in talk.says)


def test_under_18_written_shuts_what_moves_the_body():
    talk = at_menu("i am 16 btw", "yes", "knee to wall")
    assert any("Under 18" in say.text for say in talk.says)
    assert talk.state != "knee_to_wall.method"


@pytest.mark.parametrize(("words", "heard"), [("17", False), ("17 cm", False), ("I am 17", True), ("11, and I am 17", True)])
def test_the_number_that_is_asked_for_is_no_sign_and_words_beside_it_may_be(words: str, heard: bool):
    assert (in_a_test(words).session.top.flow == "signs") is heard


def test_the_reading_being_taken_is_not_taken_from_a_message_with_a_sign():
    talk = in_a_test("11 btw my foot slaps since monday")
    assert not [record for record in talk.effects if isinstance(record, Record) and record.key == "left_1" and record.status == "ok"]


def test_an_ordinary_answer_is_still_an_answer():
    assert in_a_test("11").answers["left_1"] == 11


@pytest.mark.parametrize(("at", "words", "key"), [(5, "yes pregnant", "history_care"), (0, "i wet myself last night", "bladder"),
                                                  (2, "got a fever", "urgent")])
def test_a_sign_that_a_question_asks_about_answers_it(at: int, words: str, key: str):
    talk = Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say(*["no"] * at, words)
    assert talk.answers[key] == "yes"


def test_a_foot_that_drops_and_hurts_a_little_is_asked_about_weakness_wherever_it_hurts():
    talk = at_menu("my foot drops when i walk and it hurts", "Ankle or foot", "0", "no", "no")
    assert talk.state == "pain.bladder"
    assert talk.say("no").state == "pain.weakness"
    assert talk.say("yes").found["safety.level"] == "same_day"


def test_a_sign_beside_pain_is_asked_about_after_the_pain():
    talk = at_menu("sharp pain in my hip and i have a fever", "hip", "2", "no", "no", "no")
    assert talk.session.top.flow == "signs"
    assert "fever" in talk.last


@pytest.mark.parametrize("words", [
    "my chest hurts", "i cant feel between my legs", "got a fever", "my physio said no squats until the 30th", "im pregnant",
    "feels odd down there", "i want to kill myself"])
@pytest.mark.parametrize("hours", [4, 26])
def test_it_is_heard_at_once_also_after_hours(words: str, hours: int):
    talk = in_a_test()
    talk.now += timedelta(hours=hours)
    assert talk.say(words).session.stack == () or talk.session.top.flow in ("pain", "signs")
    assert talk.found.get("safety.level", "go") != "go" or talk.known.get("crisis") == "open"


def test_self_harm_ends_everything_and_keeps_no_word_of_it():
    talk = in_a_test("i dont want to be alive anymore")
    assert "left" in [end.ending for end in talk.effects if isinstance(end, Ended)]
    assert any("emergency number or a crisis line" in say.text for say in talk.says)
    assert not [effect for effect in talk.effects if "alive" in repr(effect)]
    assert not alerts(talk)
    assert talk.known["crisis"] == "open"


def test_a_doubtful_sign_beside_the_chest_is_asked_about_by_itself():
    talk = at_menu("chest feels like someone is sitting on it")
    assert "numbness" not in talk.last
    talk.say("Longer ago", "no")
    assert talk.state == "signs.so"
    assert "numbness or odd feeling between the legs, or numb legs. Is that so?" in talk.last
    assert talk.say("no", "the weight of a person").known["safety.level"] == "clinician"


def test_a_sure_sign_beside_the_chest_is_asked_about_with_it():
    talk = at_menu("chest pain and i cant feel between my legs")
    assert "chest pain" in talk.last
    assert "between the legs" in talk.last
    assert talk.say("Earlier, not today").known["safety.level"] == "emergency"


@pytest.mark.parametrize(("taken_back", "meant"), [
    ("no i meant the bike saddle, it is worn", "the bike saddle, it is worn"), ("No, I mean: the pad of the chair", "the pad of the chair"),
    ("no, i just meant my mat", "my mat")])
def test_what_is_said_to_be_meant_as_a_sign_is_taken_back_is_not_asked_for_again(taken_back: str, meant: str):
    talk = at_menu("cant feel my saddle area", taken_back)
    assert talk.answers["meant"] == meant
    assert talk.known["safety.level"] == "go"
    assert not any("What did you mean" in say.text for say in talk.says)


@pytest.mark.parametrize("taken_back", ["no i meant something else", "No, I meant", "no, i meant 8", "no i mean squatting today"])
def test_what_was_meant_is_asked_for_where_nothing_was_said_of_it(taken_back: str):
    talk = at_menu("cant feel my saddle area", taken_back)
    assert talk.state == "signs.meant"
    assert talk.known["safety.level"] == "emergency"


@pytest.mark.parametrize("said", [
    "8", "80 kg", "squatting today", "i want to squat", "let me squat", "knee to wall", "yes", "skip", "menu", "forget it", "..."])
def test_a_number_a_command_or_a_wish_does_not_tell_what_was_meant(said: str):
    talk = at_menu("cant feel my saddle area", "no", said)
    assert talk.state == "signs.meant"
    assert talk.known["safety.level"] == "emergency"
    assert "What did you mean?" in talk.last
    assert talk.say("the bike saddle").known["safety.level"] == "go"


@pytest.mark.parametrize("said", ["i need a drink", "the heating", "i need a break before the test", "i have not eaten yet", "a joke"])
def test_a_few_words_tell_what_was_meant_also_where_they_are_of_a_need(said: str):
    assert at_menu("cant feel my saddle area", "no", said).known["safety.level"] == "go"


def test_where_it_is_asked_what_was_meant_control_words_are_no_answer():
    talk = at_menu("cant feel my saddle area", "no", "again")
    assert talk.state == "signs.meant"
    assert talk.say("back").state in ("signs.meant", "signs.so")
    assert talk.say("stop").session.stack == ()
    assert talk.known["safety.level"] == "emergency"


@pytest.mark.parametrize("begun", [at_menu, in_a_test])
@pytest.mark.parametrize(("words", "back"), [
    ("my knee hurts since i fell down the stairs on monday", ("no", "it was just a small slip")),
    ("my hip hurts from the fall last week", ("no", "the fall was nothing"))])
def test_pain_told_with_a_fall_is_asked_about_once_the_fall_is_played_down(words: str, back: tuple[str, ...], begun):
    talk = begun(words)
    assert talk.session.top.flow == "signs"
    assert talk.say(*back).state == "pain.where"
    assert talk.known["safety.level"] == "not_today"


def test_pain_told_with_a_fall_is_asked_about_after_the_fall_too():
    talk = at_menu("my hip hurts from the fall on monday", "Yes, that is so")
    assert talk.last == SAME_DAY
    assert talk.say("ok").state == "pain.where"
    assert talk.say("Hip or groin", "3", "no", "no", "no").known["safety.level"] == "same_day"


def test_a_fall_told_with_sure_pain_is_asked_about_after_the_pain():
    talk = at_menu("my hip hurts from the fall this morning", "Hip or groin", "3", "no", "no", "no")
    assert talk.session.top.flow == "signs"
    assert talk.say("Yes, that is so").known["safety.level"] == "same_day"


def test_whether_something_hurt_stays_asked_where_a_sign_is_told_instead():
    talk = in_a_test("stop", "my left foot drops when i walk", "No, I meant something else", "my shoe is loose")
    assert talk.state == "pain.where"


def test_a_fall_told_without_pain_is_all_that_is_asked_about():
    assert at_menu("i fell down the stairs yesterday", "no", "i missed a step", "no").state.startswith("home")


@pytest.mark.parametrize("words", ["why do you ask about bladder?", "what does numb mean?"])
def test_a_question_about_the_words_of_a_sign_is_answered_as_one(words: str):
    assert at_menu(words).session.aside is None
    talk = Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say(words)
    assert talk.session.aside is None
    assert talk.state == "safety_check.bladder"


@pytest.mark.parametrize("words", ["what does it mean when it hurts?", "what does it mean if my leg is numb", "what does sharp pain mean?"])
def test_a_question_that_may_tell_of_pain_is_asked_about(words: str):
    assert at_menu(words).last == "Did something hurt?"


def test_a_question_about_words_counts_while_the_body_works():
    assert in_a_test("what does numb mean?").last == "Did something hurt?"


def level_in(talk: Talk) -> str:
    return str(talk.known["safety.level"])


def words_kept(talk: Talk) -> str:
    """What the session and the effects hold, but for what is said."""
    return repr(talk.session) + repr([effect for effect in talk.effects if effect not in talk.says])


@pytest.mark.parametrize("begun", [at_menu, in_a_test])
@pytest.mark.parametrize(("words", "level", "asked"), [
    ("i peed myself and my leg is numb, i dont want to live like this", "emergency", "signs.so"),
    ("i cant feel between my legs and i want to kill myself", "emergency", "signs.so"),
    ("my left leg has been getting weaker this week and i want to die", "same_day", "signs.so"),
    ("my back hurts so much i want to die", "not_today", "pain.where")])
def test_what_is_told_beside_self_harm_closes_the_day_at_once_and_is_asked_after_beginning_again(words: str, level: str, asked: str, begun):
    talk = begun(words)
    assert level_in(talk) == level
    assert talk.state == ""
    assert not any("emergency department" in say.text or "Stop there" in say.text for say in talk.says)
    assert talk.say("go on").state == "begin_again.begin"
    assert talk.say("Not yet", "menu").state == "begin_again.begin"
    assert talk.say("Yes, begin again").state == asked
    assert level_in(talk) == level
    assert not any(word in words_kept(talk) for word in ("kill", "want", "peed", "cant feel", "getting weaker this", "hurts"))


def test_questions_kept_through_a_crisis_are_answered_as_ever_and_lift_what_they_closed():
    talk = at_menu("my back hurts so much i want to die", "begin again", "yes", "Nothing hurts", "Right, nothing")
    assert level_in(talk) == "go"
    talk = at_menu("i peed myself and i dont want to live like this", "begin again", "yes", "Yes, that is so")
    assert level_in(talk) == "emergency"
    assert not any("Nothing is stopped" in say.text for say in talk.says)
    assert len(alerts(talk)) == 2  # as it is asked about, and as it is so: none while the crisis is open


@pytest.mark.parametrize("begun", [at_menu, in_a_test])
def test_what_is_told_beside_doubtful_self_harm_is_asked_about_once_that_is_denied(begun):
    talk = begun("my foot drops and nobody needs me")
    assert talk.state == "crisis.so"
    assert level_in(talk) == "same_day"
    assert talk.say("No, I meant something else").state == "signs.so"
    assert "a leg that is weak" in talk.last
    assert talk.say("no", "my dog is old").session.top.flow == ("home" if begun is at_menu else "knee_to_wall")
    assert "needs me" not in words_kept(talk)


def test_what_is_told_beside_doubtful_self_harm_waits_for_beginning_again_where_that_is_meant():
    talk = at_menu("my foot drops and nobody needs me", "Yes")
    assert talk.known["crisis"] == "open"
    assert level_in(talk) == "same_day"
    assert talk.say("begin again", "yes").state == "signs.so"


def test_questions_about_a_sign_that_a_crisis_comes_over_wait_for_beginning_again():
    talk = at_menu("my left leg is weak", "i want to kill myself")
    assert talk.state == ""
    assert talk.say("begin again", "yes").state == "signs.so"


def test_after_self_harm_nothing_opens_before_the_lifter_begins_again():
    talk = in_a_test("i want to kill myself", "knee to wall")
    assert talk.state == "begin_again.begin"
    talk.say("Not yet")
    assert talk.known["crisis"] == "open"
    assert talk.say("menu", "begin again").known["crisis"] == "over"


@pytest.mark.parametrize("left", [(), ("stop", "menu"), ("stop", "hello"), ("help", "stop", "go on")])
@pytest.mark.parametrize("begun", [at_menu, in_a_test])
def test_begin_again_works_at_once_where_it_is_asked_about_living(left: tuple[str, ...], begun):
    talk = begun("kill me", *left)
    assert talk.state == "crisis.so"
    assert talk.say("begin again").state == "begin_again.begin"
    assert not any(HELP in say.text or "I keep your place" in say.text for say in talk.says[-2:])
    assert talk.known["crisis"] == "asked", "nothing is over before they say so"
    assert talk.say("yes").known["crisis"] == "over"
    assert talk.state.partition(".")[0] == ("" if begun is at_menu else "knee_to_wall")


def test_begin_again_works_at_the_question_about_the_coach_who_is_asked_nothing_then():
    talk = at_menu("i want to kill myself", "begin again", known={**CHECKED, "coach": "yes"})
    assert (talk.state, talk.known["crisis"]) == ("begin_again.begin", "open")
    assert not [effect for effect in talk.say("yes").effects if isinstance(effect, Alert)]
    assert talk.known["crisis"] == "over"


@pytest.mark.parametrize("words", ["no lol", "god no", "no, of course not", "no, i'm fine"])
def test_that_it_is_not_so_is_read_in_other_words(words: str):
    assert at_menu("kill me", words).known["crisis"] == "over"


@pytest.mark.parametrize("words", ["i didnt mean it", "why do you ask", "what is this"])
@pytest.mark.parametrize("state", [("kill me",), ("i want to die", "begin again")])
def test_nothing_is_beyond_it_where_living_is_asked_about(words: str, state: tuple[str, ...]):
    talk = at_menu(*state, words)
    assert "I can't answer" not in talk.last
    assert talk.known["crisis"] != "over"


@pytest.mark.parametrize("words", ["im safe, yes", "yes i'm safe", "i am safe now"])
def test_that_they_are_safe_begins_again(words: str):
    assert at_menu("i want to die", "begin again", words).known["crisis"] == "over"


def test_who_says_not_yet_there_is_asked_about_living_before_anything_opens():
    talk = in_a_test("kill me", "begin again", "Not yet", "knee to wall")
    assert (talk.state, talk.known["crisis"]) == ("crisis.so", "asked")


@pytest.mark.parametrize("words", ["menu", "knee to wall", "my results", "my squat days"])
def test_nothing_else_begins_over_the_question_about_living(words: str):
    assert in_a_test("kill me", words).state == "crisis.so"


def test_the_coach_is_told_only_if_the_lifter_agrees_and_not_the_words():
    known = {**CHECKED, "coach": "yes"}
    assert not alerts(at_menu("id be better off dead", "No", known=known))
    told = alerts(at_menu("id be better off dead", "Yes, ask them", known=known))
    assert len(told) == 1
    assert "dead" not in told[0].because


@given(st.sets(st.sampled_from(sorted(SCREENED_SIGNS)), min_size=1, max_size=4), st.booleans())
def test_open_questions_never_leave_the_day_open(signs, sure):
    assert level_until_answered(signs, sure=sure) >= Level.NOT_TODAY


@given(st.sets(st.sampled_from(sorted(SCREENED_SIGNS)), min_size=1, max_size=4), st.sampled_from(["earlier", "lately", "now", None]))
def test_an_outcome_is_never_milder_than_the_worst_sign_but_for_what_a_clinician_cleared(signs, when):
    outcome = level_from_signs(signs, {"when": when})
    older = {"earlier": Level.CLINICIAN, "lately": Level.SAME_DAY}
    wanted = worst(older[when] if one == "chest" and when in older else SCREENED_SIGNS[one].level
                   for one in signs if one not in ("restriction", "under_18"))
    assert outcome.level >= wanted
    told = {"cleared": "yes", "cleared_at": "my doctor", "pregnant": "no"}
    cleared = level_from_signs(signs & CLEARABLE, told) if signs & CLEARABLE else None
    assert cleared is None or cleared.level is Level.GO


def test_clinician_words_are_said_for_a_history():
    assert CLINICIAN in [say.text for say in at_menu("i take warfarin", "yes", "no").says]


def test_doubtful_words_about_living_are_asked_about_and_a_no_goes_back_to_the_question():
    talk = in_a_test("if i went to sleep and never woke up thatd be fine by me")
    assert "rather ask" in talk.last
    assert talk.known["crisis"] == "asked"
    assert talk.say("No, I meant something else").state == "knee_to_wall.left_1"
    assert talk.known["crisis"] == "over"


@pytest.mark.parametrize("word", ["squatting", "menu", "go on"])
def test_a_question_about_living_that_was_left_is_asked_before_anything_else(word: str):
    talk = at_menu(DOUBT, "stop")
    assert talk.last.startswith(HELP)
    assert talk.say(word).state == "crisis.so"
    assert talk.say("no").known["crisis"] == "over"


def test_whatever_is_typed_in_a_crisis_is_met_with_where_help_is_and_never_with_how_to_answer():
    talk = at_menu(DOUBT)
    for words in ("leave me alone", "menu", "80", "blah", "squatting", "foo", "show me", "bar", "hm"):
        talk.say(words)
    said = " ".join(say.text for say in talk.says)
    assert all(help_ in said for help_ in HELPS)
    assert "come first" not in said
    assert "careful answer" not in said


def test_a_question_about_living_that_was_answered_is_not_asked_again_after_beginning_again():
    talk = at_menu(DOUBT, "yes", "begin again", "yes")
    assert talk.state != "crisis.so"
    assert talk.say("menu").state == "home.pick"


def test_doubtful_words_about_living_that_were_meant_lead_to_help():
    talk = in_a_test("if i went to sleep and never woke up thatd be fine by me", "Not sure")
    assert any("emergency number or a crisis line" in say.text for say in talk.says)
    assert talk.known["crisis"] == "open"


DOUBT = "if i went to sleep and never woke up thatd be fine by me"
UNPLACED = "pelvic floor just doesnt answer"


def choices(talk: Talk) -> list[str]:
    return [tap.label for row in talk.says[-1].buttons for tap in row]


def named_together(*among: str, said: str = "it went funny") -> Talk:
    """At the question that names what doubtful words may mean."""
    talk = at_menu()
    draft = Heard(Flag(among[0]), False, said, tuple(map(Flag, among[1:])))
    with pytest.MonkeyPatch.context() as patch:
        for module in (signs, sign_runs):
            patch.setattr(module, "hear_flags", lambda text, weigh=True: (draft,) if weigh else ())
        return talk.say(said)


@pytest.mark.parametrize(("sign", "said"), [
    ("weakness", "my back hurts, its all a bit much"), ("fall", "my hip hurts since the fall this morning, its all a bit much")])
def test_words_with_pain_that_may_be_of_self_harm_are_asked_about_first_and_not_kept(sign: str, said: str):
    talk = named_together(sign, "self_harm", said=said)
    assert talk.state == "signs.which"
    assert talk.say("none of these", "my old shoe").state == "pain.where"
    assert "a bit much" not in words_kept(talk)


def test_doubtful_words_are_asked_about_with_each_sign_they_may_mean_named():
    talk = at_menu(UNPLACED)
    heard = hear_flags(UNPLACED)[0]
    assert len(heard.named) > 1
    assert talk.state == "signs.which"
    assert choices(talk)[: len(heard.named)] == [SCREENED_SIGNS[flag].button for flag in SCREENED_SIGNS if Flag(flag) in heard.named]
    assert talk.found["safety.level"] == "not_today"
    assert talk.say("No, none of these", "my shoes are too long").found["safety.level"] == "go"


@pytest.mark.parametrize(("reply", "level"), [("A weak leg or foot", "same_day"), ("Numb between the legs", "emergency"),
                                              ("Fever or feeling ill", "not_today"), ("Not sure", "emergency"), ("none of these", "go")])
def test_the_sign_chosen_decides_and_not_sure_counts_as_the_worst_named(reply: str, level: str):
    talk = named_together("weakness", "saddle", "fever").say(reply)
    while talk.session.stack and talk.session.top.flow == "signs":
        talk.say({"signs.pain": "0", "signs.meant": "my sock slipped"}.get(talk.state, "no"))
    assert talk.found["safety.level"] == level


def test_words_that_may_be_of_self_harm_are_not_kept_and_choosing_it_leads_to_help():
    talk = named_together("fever", "self_harm", said="its all a bit much")
    assert "Thoughts of harming myself" in choices(talk)
    assert "bit much" not in talk.last
    talk.say("Thoughts of harming myself")
    assert any("emergency number or a crisis line" in say.text for say in talk.says)
    assert talk.known["crisis"] == "open"
    assert not [effect for effect in talk.effects if "bit much" in repr(effect)]
    assert not alerts(talk)


def test_not_sure_where_self_harm_was_named_asks_about_it_by_itself():
    talk = named_together("fever", "self_harm").say("Not sure")
    assert talk.state == "crisis.so"
    assert "rather ask" in talk.last


@pytest.mark.parametrize(("words", "taken_back"), [("no, I meant my phone died", True), ("no i meant the bar slipped", True),
                                                   ("no, I meant I fainted at home", False), ("it was just a small slip", False)])
def test_no_i_meant_takes_back_all_that_was_named_unless_it_reports_something(words: str, taken_back: bool):
    talk = named_together("weakness", "fever").say(words)
    assert (talk.answers.get("which") == "no") is taken_back


@given(st.lists(st.sampled_from([flag.value for flag in Flag]), min_size=2, max_size=3, unique=True))
def test_the_question_that_names_signs_is_short(among: list[str]):
    if among[0] == "self_harm":
        among.reverse()
    talk = named_together(*among, said="it went all funny " * 20)
    assert len(talk.last.split()) <= 60
    assert len(choices(talk)) <= 6


@pytest.mark.parametrize("said", ["ive been thinking of ending it", "i want to kill myself", "thinking about ending it all"])
def test_who_says_it_again_at_the_question_is_answered_with_help_and_the_words_are_not_kept(said):
    talk = in_a_test(DOUBT).say(said)
    assert talk.known["crisis"] == "open"
    assert any("emergency number or a crisis line" in say.text for say in talk.says)
    assert said not in repr([effect for effect in talk.effects if isinstance(effect, Record)])


@pytest.mark.parametrize("said", ["no no i meant the squats kill me lol", "no, i dont want to kill myself"])
def test_who_denies_it_with_its_words_is_not_taken_for_a_yes(said):
    assert in_a_test(DOUBT).say(said).known.get("crisis") != "open"


def test_a_sign_in_words_that_end_their_flow_is_asked_about_and_the_menu_follows():
    """The last question of the squat days takes words of one's own: the answer ends the flow, and nothing waits to be interrupted."""
    talk = Talk(BOOK["home"].flow, known=UNCHECKED, book=BOOK)
    talk.say("my squat days", "mondays and fridays at 6pm", "yes", "2 hours before")
    assert talk.state == "squat_days.goal"
    talk.say("my left foot is dragging")
    assert talk.state.startswith(("signs.", "pain."))
    for _ in range(12):
        if talk.state == "home.pick":
            break
        talk.say({"pain.bad": "3", "signs.meant": "my old shoe"}.get(talk.state, "no"))
    assert talk.state == "home.pick"


# while questions are open ------------------------------------------------------------------------------------


@pytest.mark.parametrize(("said", "heard", "level"), [
    ("i have chest pain now", "chest pain", "emergency"), ("cant pee since this morning", "bladder", "emergency"),
    ("ive got no feeling between my legs", "numbness", "emergency"), ("also i have a slipped disc from 2019", "disc", "clinician"),
    ("im 16", "under 18", "not_today")])
def test_another_sign_told_while_one_is_asked_about_comes_first_and_the_first_is_asked_again(said: str, heard: str, level: str):
    talk = at_menu("got a fever", said)
    assert heard in talk.last
    assert talk.found["safety.level"] == level
    talk.say("No, I meant something else", "i meant my dog")
    assert talk.state == "signs.so"
    assert "fever" in talk.last
    assert talk.found["safety.level"] == "not_today"


def test_what_stood_before_the_first_of_them_is_back_once_both_are_taken_back():
    talk = at_menu("got a fever", "cant pee since this morning")
    talk.say("No, I meant something else", "i meant my tap", "No, I meant something else", "i meant the heating")
    assert talk.found["safety.level"] == "go"


def test_a_sign_that_was_so_stays_when_the_one_before_it_is_taken_back():
    talk = at_menu("got a fever", "cant pee since this morning", "yes", "No, I meant something else", "i meant the heating")
    assert talk.found["safety.level"] == "emergency"


def test_questions_that_were_left_and_taken_up_again_give_back_what_stood_before_them():
    talk = at_menu("got a fever", "stop", "go on", "no", "i meant the heating")
    assert talk.found["safety.level"] == "go"


@pytest.mark.parametrize(("left", "level"), [
    ("i cant feel between my legs", "emergency"), ("i fell off a ladder yesterday", "same_day")])
@pytest.mark.parametrize("then", [("im pregnant", "No, I meant something else", "my sister is"),
                                  ("got a fever", "No, I meant something else", "i meant the heating"), ("got a fever", "yes", "0"),
                                  ("i take warfarin", "yes", "yes", "my doctor, in May", "yes", "none")])
def test_a_sign_left_open_holds_whatever_becomes_of_another_told_after_it(left: str, level: str, then: tuple[str, ...]):
    assert at_menu(left, "stop", *then).found["safety.level"] == level


def test_a_sign_answered_yes_is_not_undone_by_another_that_is_taken_back_later():
    talk = at_menu("got a fever", "yes", "0", "cant pee since this morning", "No, I meant something else", "i meant my tap")
    assert talk.found["safety.level"] == "not_today"


def test_a_sign_said_again_at_its_own_question_is_its_answer():
    talk = at_menu("cant feel my left foot properly and it drops", "yes, my foot drops")
    assert talk.answers["so"] == "yes"
    assert len([alert for alert in talk.effects if isinstance(alert, Ended)]) == 0


def test_pain_told_while_a_sign_is_asked_about_is_asked_about_first():
    talk = at_menu("got a fever", "my back hurts")
    assert talk.state == "pain.where"
    talk.say("nothing hurts", "Right, nothing")
    assert "fever" in talk.last


@pytest.mark.parametrize("at", [("got a fever",), ("cant pee since this morning", "No, I meant something else"),
                                ("i had a heart attack last year", "yes", "yes"),
                                ("i had a heart attack last year", "yes", "yes", "my doctor, in May"), (UNPLACED,)])
def test_self_harm_is_heard_while_a_sign_is_asked_about_and_no_word_of_it_is_kept(at: tuple[str, ...]):
    talk = at_menu(*at, "honestly i just want to kill myself")
    assert any("emergency number or a crisis line" in say.text for say in talk.says)
    assert talk.known["crisis"] == "open"
    assert not [effect for effect in talk.effects if "kill" in repr(effect)]


def test_a_sign_in_the_words_of_a_limit_is_asked_about_and_the_limit_kept():
    talk = at_menu("my limits", "my doctor said i have cancer and no lifting for good")
    assert "cancer" in talk.last
    assert talk.found["safety.level"] == "clinician"
    assert "lifting" in talk.say("yes", "no").found["safety.limits"]


def test_emergency_words_come_before_the_next_question_of_what_was_being_told():
    talk = Talk(BOOK["referral"].flow, known={**CHECKED, "safety.level": "same_day"}, book=BOOK)
    talk.say("yes", "still cant pee properly")
    said = [say.text for say in talk.says]
    assert EMERGENCY in said[-2:]
    assert talk.answers["said"] == "still cant pee properly"


@pytest.mark.parametrize(("words", "first"), [("i have chest pain", "call your emergency number first"),
                                              ("my left foot is dragging since this morning", "needs to be seen today")])
def test_what_can_be_urgent_is_told_what_to_do_before_it_is_asked_about(words: str, first: str):
    assert any(first in say.text for say in at_menu(words).says)


# what was meant instead -------------------------------------------------------------------------------------

STILL_THERE = [
    ("i keep wetting myself", "only a few drops when i lift, cant hold it", "bladder_bowel"),
    ("my left foot drags", "it just drags a bit when im tired", "weakness"),
    ("leg gave way on the stairs", "the knee buckles now and then", "weakness"),
    ("woke up soaked in sweat again, third night", "sweating at night, third night now", "fever"),
    ("had a stent put in", "it was the heart hospital, two little tubes", "heart_history"),
    ("my left foot drags", "only when i am tired", "weakness"), ("my left foot drags", "not really", "weakness"),
    ("chest is tight", "just the tightness i get on the stairs", "chest"), ("chest is tight", "a bit", "chest")]


@pytest.mark.parametrize(("words", "meant", "flag"), STILL_THERE)
def test_what_is_meant_instead_and_may_still_be_the_sign_is_asked_about_once_more(words: str, meant: str, flag: str):
    talk = at_menu(words, "no", meant)
    assert talk.state in ("signs.so", "signs.when", "signs.which")
    assert f"“{words}”, then “{meant}”." in talk.last
    assert SCREENED_SIGNS[flag].words in talk.last
    assert "A little of it, or only at times, counts too." in talk.last
    assert talk.known["safety.level"] != "go", "it stays closed meanwhile"
    assert talk.say("no").known["safety.level"] == "go", "and no more than once"
    assert any("Thank you, then I misunderstood" in say.text for say in talk.says)


@pytest.mark.parametrize(("words", "meant", "flag"), STILL_THERE)
def test_a_yes_then_counts_as_one_at_once(words: str, meant: str, flag: str):
    after = ["no"] if flag in ("weakness", "fever", "heart_history") else []
    talk = at_menu(words, "no", meant, "Now or today" if flag == "chest" else "yes", *after)
    assert talk.known["safety.level"] == at_menu(words, "now" if flag == "chest" else "yes", "no").known["safety.level"]
    assert not any("misunderstood" in say.text for say in talk.says)
    assert any(meant in alert.because for alert in alerts(talk))


def test_emergency_words_are_said_again_where_a_no_came_between():
    said = [say.text for say in at_menu("i keep wetting myself", "no", "only a few drops when i lift, cant hold it", "yes").says]
    assert said.count(EMERGENCY) == 2


@pytest.mark.parametrize(("words", "meant"), [
    ("chest is tight", "my shirt"), ("i keep wetting myself", "my bag has a wet bottle in it"), ("my left foot drags", "my battery died"),
    ("leg gave way on the stairs", "my legs are tired from the bike")])
def test_what_is_meant_instead_and_is_no_sign_is_believed(words: str, meant: str):
    assert at_menu(words, "no", meant).state == "home.pick"


def test_another_sign_in_what_was_meant_is_asked_about_also_in_doubt():
    assert "fever" in at_menu("i cant feel my", "no", "i have a fever").last
    assert "heart condition" in at_menu("my left foot drags", "no", "it was the heart hospital, two little tubes").last


@pytest.mark.parametrize(("words", "meant"), [
    ("my knee is killing me since the game on saturday", "its just sore"),
    ("my knee is killing me since the game on saturday", "the game on saturday"), ("my left foot drags", "my back felt something odd")])
def test_pain_in_what_was_meant_or_in_what_was_no_sign_after_all_is_asked_about(words: str, meant: str):
    talk = in_a_test(words, "no", meant)
    assert "Did something hurt?" in talk.last
    assert talk.say("yes").state == "pain.where"
    assert talk.known["safety.level"] == "not_today"
    assert in_a_test(words, "no", meant, "no").state.startswith("knee_to_wall")


def test_sure_pain_in_what_was_meant_leads_to_the_pain_questions_and_the_test_does_not_go_on():
    talk = in_a_test("my left foot drags", "no", "my knee hurts a lot")
    assert talk.state == "pain.where"
    assert talk.answers["meant"] == "my knee hurts a lot"
    assert talk.say("knee", "6", "no", "no", "no").known["safety.level"] == "not_today"
    both = in_a_test("my left foot drags", "no", "my knee hurts and i have a fever")
    assert both.state == "pain.where"
    assert "fever" in both.say("knee", "2", "no", "no").last


# in the conversation about help ------------------------------------------------------------------------------


@pytest.mark.parametrize("said", ["i have taken an overdose", "i want to die", "im not safe", "no im not safe", "I am not safe"])
def test_who_is_not_safe_is_never_begun_again_but_helped(said: str):
    talk = at_menu("i want to kill myself", "hi", said)
    assert talk.known["crisis"] == "open"
    assert sum("emergency number or a crisis line" in say.text for say in talk.says) >= 2


@pytest.mark.parametrize("said", ["im going out now", "is it serious?", "help", "12"])
@pytest.mark.parametrize("at", [("i want to kill myself", "hi"), (DOUBT,)])
def test_what_is_no_answer_there_is_answered_with_where_help_is(said: str, at: tuple[str, ...]):
    talk = at_menu(*at)
    before, state = len(talk.says), talk.state
    assert any("emergency number or a crisis line" in say.text for say in talk.say(said).says[before:])
    assert talk.state == state


def test_ones_own_data_stays_open_over_it():
    assert at_menu("i want to kill myself", "hi", "my data").session.top.flow == "my_data"


@pytest.mark.parametrize(("at", "said", "flow"), [
    (("i want to kill myself", "hi"), "i have chest pain", "signs"), ((DOUBT,), "i cant feel between my legs", "signs"),
    (("i want to kill myself", "hi"), "my back hurts badly", "pain")])
def test_a_sign_or_pain_is_heard_in_it_too(at: tuple[str, ...], said: str, flow: str):
    assert at_menu(*at, said).session.top.flow == flow


@pytest.mark.parametrize("answer", ["Yes", "Not sure"])
def test_once_doubtful_words_were_meant_nothing_goes_on_and_no_menu_follows(answer: str):
    talk = in_a_test(DOUBT, answer)
    assert talk.session.stack == ()
    assert talk.session.parked == ()
    assert talk.session.idle
    assert "begin again" in talk.last
    assert [one.flow for stack in in_a_test("stop", DOUBT, answer).session.parked for one in stack] == ["pain"], "it may have hurt"


def test_the_levels_of_open_questions_are_known_by_the_rule_their_flows_write():
    for rule, flow in QUESTIONS_OPEN.items():
        rules = {step.effect.rule for step in BOOK[flow].flow.steps if isinstance(step, Do) and isinstance(step.effect, Find)}
        assert rule in rules


@pytest.mark.parametrize(("said", "asks"), [
    ("my physio cleared me for lifting", "And when did they clear you"), ("yes my physio cleared me last year", "so that they knew of it"),
    ("my physio cleared me in 2020", "so that they knew of it")])
def test_a_clearance_told_before_it_is_asked_for_is_kept_for_its_question(said: str, asks: str):
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("had a slipped disc in 2019", "yes", said)
    assert talk.state == "signs.old_disc"
    assert "I come to that in a moment." in talk.last
    assert asks in talk.say("no").last
    assert talk.answers["cleared"] == "yes"


def test_who_cleared_a_history_and_when_is_asked_as_far_as_the_answer_does_not_say():
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("i have a heart condition", "yes", "yes, my cardiologist on friday")
    assert talk.state == "signs.knew"
    assert talk.say("yes", "none").found["safety.cleared_until"] == "2026-09-01"
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("i have a heart condition", "yes", "my coach cleared me yesterday", "no")
    assert talk.found["safety.level"] == "clinician"


@pytest.mark.parametrize("words", ["a bit dizzy", "feeling lightheaded", "got a fever today", "i fell off a ladder yesterday",
                                   "my left foot has been dropping since yesterday", "i fainted in the gym yesterday"])
def test_a_movement_stops_before_anything_is_asked_of_a_sign(words: str):
    talk = in_a_test()
    before = len(talk.says)
    assert talk.say(words).says[before].text.startswith("Stop there, and get comfortable")
    assert sum(say.text.startswith("Stop there") for say in talk.says[before:]) == 1
    assert not any(say.text.startswith("Stop there, and get comfortable: one thing") for say in at_menu(words).says)


def test_a_history_written_is_kept_by_its_name():
    talk = at_menu("i take warfarin", "yes", "no")
    assert talk.found["safety.history"] == "anticoagulants"
    assert talk.say("i had breast cancer in 2015", "yes", "no").found["safety.history"] == "anticoagulants cancer_bone"
    assert at_menu("i had chest pain last year", "longer ago", "no").found["safety.history"] == "chest"
    assert "safety.history" not in at_menu("i take warfarin", "no", "my vitamins").found
    assert "safety.history" not in at_menu("I fell off a ladder on my back yesterday", "yes").found


def test_a_pause_asked_for_beside_a_sign_is_offered_once_the_questions_end():
    plan = {"squat.plan": '{"weekly":{"TU":"18:00"}}'}
    talk = Talk(BOOK["home"].flow, known={**CHECKED, **plan}, book=BOOK).say("pause until 3 april, surgery on my back", "yes", "no", "no")
    assert any(say.text == "You also asked for a pause of your squat days, until Friday 3 April." for say in talk.says)
    assert "squat.plan" not in talk.found
    talk.tap("Pause until then")
    assert '"back_on":"2026-04-03"' in talk.found["squat.plan"]
    for words, known in (("pause until 3 april, surgery on my back", {}), ("surgery on my back", plan)):
        talk = Talk(BOOK["home"].flow, known={**CHECKED, **known}, book=BOOK).say(words, "yes", "no", "no")
        assert not any("pause" in say.text for say in talk.says if "You wrote" not in say.text)


@pytest.mark.parametrize("said", ["thanks", "ok", "thank you"])
def test_thanks_after_the_words_of_help_are_met_with_how_they_are_and_no_menu(said: str):
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("i dont want to be here anymore", said)
    assert talk.last.startswith("Good to hear from you. Are you safe just now")


def test_a_yes_that_came_to_nothing_is_no_part_of_the_sign_after_it():
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("yes", "my left foot drops")
    assert "You wrote “my left foot drops”" in talk.last
    asked = Talk(BOOK["home"].flow, CHECKED, BOOK).say("yes", "cant pe")
    assert "yes" not in asked.last


# after words that nothing follows ---------------------------------------------------------------------------------

@pytest.mark.parametrize(("flow", "replies", "words", "answer", "verdict"), [
    ("squat_day", (), "nearly blacked out just now getting the bar out", ("now",), EMERGENCY),
    ("squat_days", ("tuesdays and fridays at 6pm",), "nearly blacked out just now", ("now",), EMERGENCY),
    ("squat_days", ("tuesdays and fridays at 6pm", "yes", "Not at all"), "my left foot drags", ("yes", "no"), SAME_DAY),
    ("knee_to_wall", ("tape",), "my left foot drags", ("yes", "no"), SAME_DAY),
    ("home", (), "nearly blacked out just now", ("now",), EMERGENCY)])
def test_nothing_follows_the_words_that_send_somebody_to_be_seen(flow: str, replies: tuple[str, ...], words: str,
                                                                 answer: tuple[str, ...], verdict: str):
    talk = Talk(BOOK[flow].flow, CHECKED, BOOK).say(*replies)
    talk.say(words, *answer)
    assert talk.last == verdict
    assert talk.session.stack == ()
    assert talk.session.idle
    assert talk.say("hi").state == "home.pick", "and what they write then is no answer to what was open"
    assert "squat.goal" not in talk.found


@pytest.mark.parametrize(("replies", "verdict"), [
    (("safety check", "yes"), EMERGENCY), (("safety check", "no", "no", "yes", "yes", *("no",) * 5, "0", "no"), SAME_DAY)])
def test_nothing_follows_them_in_the_safety_check_either(replies: tuple[str, ...], verdict: str):
    talk = Talk(BOOK["home"].flow, UNCHECKED, BOOK).say(*replies)
    assert verdict in [say.text for say in talk.says]
    assert talk.session.stack == ()


@pytest.mark.parametrize("words", ["hello?", "i feel really scared", "bananas", "is that true?"])
def test_words_that_would_come_to_nothing_are_met_with_where_they_were_sent_on_that_day(words: str):
    talk = Talk(BOOK["home"].flow, UNCHECKED, BOOK).say("safety check", "yes", "hi")
    before = len(talk.says)
    talk.say(words)
    assert EMERGENCY in [say.text for say in talk.says[before:]]
    assert talk.state == "home.pick"
    talk.known.pop("safety.level.today")
    before = len(talk.says)
    talk.say("bananas")
    assert EMERGENCY not in [say.text for say in talk.says[before:]]


def test_what_adds_nothing_to_what_stands_is_not_told_as_if_something_spoke_against_it():
    talk = Talk(BOOK["home"].flow, {**CHECKED, "safety.level": "emergency"}, BOOK).say("my doctor said no squats for 2 weeks", "yes")
    told = [effect.because for effect in talk.effects if isinstance(effect, Alert)]
    assert told[0] == "wrote “my doctor said no squats for 2 weeks”"
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("my left foot drags", "yes", "no")
    assert [effect.because for effect in talk.effects if isinstance(effect, Alert)][-1].startswith("wrote “my left foot drags”. ")


def test_pain_that_can_be_an_emergency_ends_with_its_words_too():
    talk = in_a_test("9", "my back hurts", "back", "5", "no", "yes", "no", "yes")
    assert talk.last == EMERGENCY
    assert talk.session.stack == ()
    assert [one.ending for one in talk.effects if isinstance(one, Ended)][-1] == "pain", "the test in which it hurt has ended with it"


def test_other_signs_still_open_are_asked_about_once_they_write_again_after_what_stands():
    talk = in_a_test("9", "toes gone numb, started last week", "also cant feel it when i wipe", "yes")
    assert talk.last.startswith("Then what I told you stands")
    assert talk.session.stack == ()
    before = len(talk.says)
    assert talk.say("hi").state == "signs.so"
    assert talk.says[before].text == EMERGENCY
    assert "toes gone numb" in talk.last
    assert talk.say("yes", "no").known["safety.level"] == "emergency"


def test_a_stop_at_them_leaves_them_open_as_anywhere():
    talk = in_a_test("9", "toes gone numb, started last week", "also cant feel it when i wipe", "yes", "hi", "stop")
    assert talk.session.stack == ()
    assert talk.say("menu").state == "home.pick"
    assert talk.say("go on").state == "signs.so"


def test_pain_told_in_questions_about_squats_ends_them_with_what_was_answered():
    talk = Talk(BOOK["squat_day"].flow, {**CHECKED, "bar.bar": "none"}, BOOK)
    talk.tap("Done squatting", "Yes, I did", "Yes, still", "Mirror", "About parallel", "Yes, it hurt")
    talk.say("back", "5", "no", "yes", "no", "yes")
    assert talk.last == EMERGENCY
    assert "squat.answered" in talk.found
    assert talk.session.stack == ()


@pytest.mark.parametrize(("words", "heard"), [
    ("doctor said no lifting over 10 kilos after my c section 5 weeks ago", {"restriction", "pregnancy"}),
    ("no lifting for 4 weeks said the doctor because of my heart condition", {"restriction", "heart_history"}),
    ("my physio said no squats since monday", {"restriction"})])
def test_the_reason_of_a_limit_is_asked_about_too_where_it_is_a_sign(words: str, heard: set[str]):
    talk = at_menu(words)
    asked = {sign for frame in talk.session.stack for sign in str(frame.got.get("heard", "")).split()}
    assert asked == heard


@pytest.mark.parametrize("words", ["and my physio said no squats for 2 weeks", "also the doctor says nothing over 20 kg"])
def test_a_limit_told_over_the_questions_about_a_sign_is_kept(words: str):
    talk = at_menu("i take warfarin", words)
    assert {str(frame.got.get("heard")) for frame in talk.session.stack} >= {"anticoagulants", "restriction"}


@pytest.mark.parametrize("words", ["had a seizure last week", "had my gallbladder removed 3 weeks ago", "i had a knee op 3 weeks ago",
                                   "blood in my pee today",
                                   "physio said keep it light"])
def test_what_is_told_of_late_is_asked_about(words: str):
    assert at_menu(words).session.top.flow == "signs"


@pytest.mark.parametrize("words", ["im weak af today", "my left leg goes numb when i sit on the loo too long"])
def test_a_manner_of_speech_and_a_leg_that_fell_asleep_are_no_emergency(words: str):
    talk = at_menu(words)
    assert not any(frame.flow == "signs" for frame in talk.session.stack)
    assert alerts(talk) == []
