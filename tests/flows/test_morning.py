"""The morning after something hurt: what each answer closes, and who hears of it."""

from __future__ import annotations

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Alert, Remind
from companion.conversation.events import Invite
from companion.conversation.step import step
from flows.catalogue import BOOK
from flows.morning import FLOW
from flows.shared import SQUAT
from tests.drive import UNCHECKED, Talk

PLAN = '{"weekly":{"SU":"18:00"}}'
"""Yesterday, Sunday 1 March, was a squat day."""


def begun(**known: Value) -> Talk:
    return Talk(FLOW, known={**UNCHECKED, **known}, book=BOOK)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def alerts(talk: Talk) -> list[str]:
    return [effect.level for effect in talk.effects if isinstance(effect, Alert)]


def reminds(talk: Talk) -> list[Remind]:
    return [effect for effect in talk.effects if isinstance(effect, Remind)]


def test_back_to_usual_opens_nothing_by_itself():
    talk = begun().tap("Back to usual")
    assert "safety.level" not in talk.found
    assert "Today's safety check still comes first" in heard(talk)
    assert alerts(talk) == []
    assert reminds(talk) == []


@pytest.mark.parametrize(("label", "level"), [("Better, not gone", "no_load"), ("The same", "not_today")])
def test_not_back_to_usual_means_no_load_and_tells_the_coach(label: str, level: str):
    talk = begun().tap(label)
    assert talk.found["safety.level"] == level
    assert alerts(talk) == [level]
    assert any(gate.shut.holds({**talk.known, "safety.checked.today": "yes"}) for gate in SQUAT)


@pytest.mark.parametrize("label", ["Better, not gone", "The same"])
def test_it_is_asked_again_the_next_morning_and_only_then(label: str):
    (again,) = reminds(begun().tap(label))
    assert (again.kind, again.flow, again.date, again.hour, again.that_day) == ("morning", "morning", "2026-03-03", 9, True)


def test_worse_goes_to_the_pain_questions():
    talk = begun().tap("Worse, or something new")
    assert talk.state == "pain.where"
    assert talk.found["safety.level"] == "not_today"
    assert alerts(talk)


def test_it_never_betters_what_stands():
    assert begun(**{"safety.level": "not_today"}).tap("Better, not gone").found["safety.level"] == "not_today"


@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
@pytest.mark.parametrize("label", ["Back to usual", "Better, not gone", "The same"])
def test_for_who_was_sent_to_be_seen_that_still_holds_whatever_they_answer(label: str, level: str):
    talk = begun(**{"safety.level": level}).tap(label)
    assert "still holds" in heard(talk)
    assert "safety.level" not in talk.found
    assert reminds(talk) == []
    assert alerts(talk) == ([] if label == "Back to usual" else [level])
    assert talk.state == "home.pick"


def test_who_was_sent_to_be_seen_and_is_worse_is_asked_about_it():
    talk = begun(**{"safety.level": "clinician"}).tap("Worse, or something new")
    assert talk.state == "pain.where"
    assert alerts(talk)[0] == "clinician"


def test_the_question_is_not_skipped_and_not_guessed():
    for words in ("skip", "meh", "ok i guess", "next"):
        talk = begun().say(words)
        assert talk.state == "morning.how"
        assert "safety.level" not in talk.found


@pytest.mark.parametrize("words", ["it hurts more", "my leg is numb now"])
def test_pain_in_their_own_words_goes_to_the_pain_questions(words: str):
    assert begun().say(words).state.startswith("pain.")


def test_once_answered_it_is_not_taken_back():
    talk = begun().tap("Back to usual").say("back")
    assert talk.state == "home.pick"


def test_a_squat_day_that_was_not_told_of_is_offered_not_asked():
    talk = begun(**{"squat.plan": PLAN}).tap("Back to usual")
    offers = [tap.data for say in talk.says for row in say.buttons for tap in row if tap.label == "How they went"]
    assert offers == ["go.squat_after.2026-03-01"]
    assert talk.state == "home.pick"


@pytest.mark.parametrize("known", [{"squat.plan": PLAN, "squat.answered": "2026-03-01"}, {}])
def test_else_it_is_not(known: dict[str, Value]):
    assert "yesterday's squats" not in heard(begun(**known).tap("Back to usual"))


def test_the_invitation_says_what_it_is_about_and_begins_it():
    talk = begun()
    (say,) = step(BOOK, talk.session, Invite("morning"), talk._known()).effects
    assert say.text == "Something hurt lately. How is it this morning?"
    assert say.buttons[0][0].data.startswith("go.morning")


NEXT_DAY: dict[str, Value] = {**UNCHECKED, "pain.where": "knee", "pain.follow": "open", "safety.level": "not_today",
                              "safety.may_open": "yes"}
"""The day after a knee hurt, of which the safety check does not ask."""


@pytest.mark.parametrize("flow", ["knee_to_wall", "squat_day", "safety_check"])
def test_from_the_next_day_on_how_it_is_comes_before_all_that_moves(flow: str):
    talk = Talk(BOOK[flow].flow, known=NEXT_DAY, book=BOOK)
    assert (talk.state, talk.last) == ("morning.how", "You told me that your knee hurt. Is it back to usual?")
    assert talk.tap("Back to usual").state == "safety_check.bladder"
    assert talk.found["pain.follow"] == "over"


@pytest.mark.parametrize(("how", "follow"), [("The same", "open"), ("Better, not gone", "open"), ("Back to usual", "over")])
def test_it_is_asked_each_day_until_it_is_back_to_usual(how: str, follow: str):
    assert begun().tap(how).found["pain.follow"] == follow


def test_what_is_the_same_closes_the_day_before_any_more_is_asked():
    known = {**NEXT_DAY, "safety.level": "not_today", "safety.may_open": "no", "pain.follow.today": "yes"}
    assert "No squats, tests or drills today" in heard(Talk(BOOK["knee_to_wall"].flow, known=known, book=BOOK))


def test_what_got_worse_is_to_be_seen_today_or_tomorrow():
    talk = begun().tap("Worse, or something new")
    talk.known |= {"pain.morning": "worse", "pain.morning.today": "yes"}
    talk.say("Lower back", "8", "yes", "no", "no")
    assert "today or tomorrow" in heard(talk)
    assert "Not gone by tomorrow" not in heard(talk)


@pytest.mark.parametrize(("words", "how"), [
    ("its fine now", "usual"), ("all good again", "usual"), ("its fine", "usual"), ("no pain today", "usual"), ("about 80%", "better"),
    ("much better thanks", "better"), ("it's 80% better", "better"), ("not fine", "same"), ("not better at all", "same"),
    ("its not gone", "same"), ("about the same, worse on stairs", "worse"), ("worse but i slept badly", "worse"),
    ("didnt sleep because of it", "worse"), ("had to sit down all day, much worse", "worse")])
def test_how_it_is_is_understood_in_words_before_pain_or_a_doubtful_sign(words: str, how: str):
    talk = begun().say(words)
    assert talk.found["pain.morning"] == how
    assert talk.state == ("pain.where" if how == "worse" else "home.pick")


@pytest.mark.parametrize("words", ["same as before but now my foot tingles", "my leg is gone", "better but my foot is numb", "still hurts"])
def test_a_new_sign_or_pain_beside_how_it_is_is_heard_and_not_taken_for_the_answer(words: str):
    talk = begun().say(words)
    assert talk.state.startswith("pain.")
    assert "pain.morning" not in talk.found


@pytest.mark.parametrize("words", ["no, its fine now", "not sure"])
def test_two_answers_in_one_are_asked_again(words: str):
    talk = begun().say(words)
    assert talk.state == "morning.how"
    assert "pain.morning" not in talk.found
