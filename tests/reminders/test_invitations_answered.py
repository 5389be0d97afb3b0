"""What is typed after a reminder that asks something begins its flow and answers its first question, or changes nothing."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.conversation.session import Frame, Session
from companion.record import log, people, reminders
from companion.reminders.kinds import UNANSWERED_SAYS
from companion.screening.limits import Limit, LimitPart, as_text
from companion.screening.standing import QUESTIONS_OPEN
from flows.catalogue import BOOK
from tests.reminders.build import MONDAY, Gym

NO_SQUATS = as_text((Limit(frozenset((LimitPart.SQUATS,)), until=MONDAY.date(), by="a physiotherapist", words="no squats"),))


async def invited(gym: Gym, kind: str, flow: str = "", **facts: str) -> int:
    """A lifter to whom one reminder has just been sent."""
    person = gym.lifter(**facts)
    reminders.cancel(gym.db, person, "squat_day", gym.now())
    gym.invite(person, kind, gym.now())
    if flow:
        gym.db.execute("update reminders set flow = ? where kind = ?", (flow, kind))
    assert len(await gym.sweep()) == 1
    return person


async def say(gym: Gym, *texts: str) -> list[str]:
    """What the last of these messages is answered with."""
    heard: list[str] = []
    for text in texts:
        await gym.write("sam", text)
        heard = await gym.listen()
    return heard


def place(gym: Gym, person: int) -> str:
    session = people.load_session(gym.db, person)
    return f"{session.top.flow}.{session.top.state}" if session.stack else ""


def told(gym: Gym, person: int, flow: str) -> dict[str, object]:
    return {row.key: row.value for row in log.answers_of(gym.db, person) if row.flow == flow and row.status == "ok"}


@pytest.mark.parametrize(("words", "how"), [
    ("worse", "worse"), ("the same", "same"), ("same", "same"), ("better", "better"), ("gone", "usual"), ("fine", "usual"),
    ("Back to usual", "usual")])
async def test_how_it_is_the_morning_after_is_answered_in_words(gym, words, how):
    person = await invited(gym, "morning")
    await say(gym, words)
    assert told(gym, person, "morning") == {"how": how}


@pytest.mark.parametrize("words", ["yes", "no", "no, its fine now", "it varies"])
async def test_what_is_no_answer_to_how_it_is_has_the_question_asked_and_nothing_guessed(gym, words):
    person = await invited(gym, "morning")
    heard = await say(gym, words)
    assert place(gym, person) == "morning.how"
    assert heard[-1].startswith("You told me that something hurt. Is it back to usual?")
    assert told(gym, person, "morning") == {}


@pytest.mark.parametrize("words", ["it hurts more", "my back hurts like hell"])
async def test_pain_after_an_invitation_is_heard_first(gym, words):
    person = await invited(gym, "morning")
    await say(gym, words)
    assert place(gym, person).startswith("pain.")


@pytest.mark.parametrize(("words", "over"), [("yes", "over"), ("over", "over"), ("yep", "over"), ("no", "still"), ("still on", "still"),
                                             ("not sure", "unsure"), ("its over", "over"), ("not yet", "still"), ("its not over", "still")])
async def test_whether_a_limit_is_over_is_answered_in_words(gym, words, over):
    person = await invited(gym, "limit", "limit_over", safety__limits=NO_SQUATS)
    await say(gym, words)
    assert told(gym, person, "limit_over") == {"over": over}


async def test_a_limit_that_was_extended_stays_until_its_new_end(gym):
    person = await invited(gym, "limit", "limit_over", safety__limits=NO_SQUATS)
    heard = await say(gym, "my physio extended it to 2 july")
    assert "Then it stays: no squats, until 2 July 2026, said by a physiotherapist." in heard
    assert told(gym, person, "limit_over") == {"over": "still"}


async def test_a_limit_whose_end_is_told_in_a_sentence_is_asked_about(gym):
    person = await invited(gym, "limit", "limit_over", safety__limits=NO_SQUATS)
    heard = await say(gym, "its finished, physio says all fine")
    assert place(gym, person) == "limit_over.over"
    assert "Is it over?" in heard[-1]


@pytest.mark.parametrize("words", ["yes", "yes i went", "i went"])
async def test_whether_they_were_seen_is_answered_in_words(gym, words):
    person = await invited(gym, "referral", safety__level="clinician")
    heard = await say(gym, words)
    assert heard[-1].startswith("What was said?")
    assert told(gym, person, "referral") == {"went": "yes"}


async def test_what_was_said_there_is_not_taken_for_a_sign_nor_asked_for_again(gym):
    person = await invited(gym, "referral", safety__level="clinician")
    await say(gym, "i went, she said no squats for 2 weeks")
    assert told(gym, person, "referral") == {"went": "yes"}
    assert place(gym, person).startswith("limits."), "what was set, or may be, is asked about as a limit"


@pytest.mark.parametrize(("words", "then"), [
    ("i went and they said take it easy", "limits.what"), ("i went and they said its fine", "referral.may_train"),
    ("they sent me home with painkillers", "referral.said")])
async def test_what_names_no_sign_tells_at_once_that_they_went_and_what_came_of_it(gym, words, then):
    person = await invited(gym, "referral", safety__level="clinician")
    await say(gym, words)
    assert (told(gym, person, "referral"), place(gym, person)) == ({"went": "yes"}, then)


async def test_a_sentence_that_says_who_and_what_is_both_answers(gym):
    person = await invited(gym, "referral", safety__level="clinician")
    heard = await say(gym, "saw the doc, she said no squats for 2 weeks")
    assert heard[-1].startswith("I understand: no squats, until 15 June 2026, said by a doctor.")
    assert told(gym, person, "referral") == {"went": "yes"}


@pytest.mark.parametrize(("words", "went"), [
    ("not yet, appointment on friday", "booked"), ("booked for tuesday", "booked"), ("waiting list", "no"),
    ("havent got an appointment yet", "no")])
async def test_who_has_not_been_seen_yet_hears_when_it_is_asked_again(gym, words, went):
    person = await invited(gym, "referral", safety__level="clinician")
    heard = await say(gym, words)
    assert told(gym, person, "referral") == {"went": went}
    assert any(one.startswith("I ask again on ") for one in heard)


@pytest.mark.parametrize("words", ["booked for tuesday but i cant pee", "i went and they said my leg is weak"])
async def test_a_sign_told_beside_an_answer_is_heard_first(gym, words):
    person = await invited(gym, "referral", safety__level="clinician")
    await say(gym, words)
    assert place(gym, person).startswith("signs.")
    assert told(gym, person, "referral") == {}


@pytest.mark.parametrize("words", ["my foot is dragging", "i cant feel my foot", "i cant pee"])
async def test_a_sign_after_an_invitation_is_heard_first(gym, words):
    person = await invited(gym, "referral", safety__level="clinician")
    await say(gym, words)
    assert place(gym, person).split(".")[0] in ("signs", "pain")


async def follow_up(gym: Gym) -> int:
    """A lifter who has just been asked how yesterday's squats went."""
    person = gym.lifter()
    gym.clock.at = MONDAY.replace(hour=17)
    await gym.sweep()
    (asked,) = await gym.sweep(hours=39)
    assert asked.startswith("How did yesterday's squats go?")
    return person


@pytest.mark.parametrize("words", ["fine", "yes", "felt heavy"])
async def test_how_the_squats_went_is_not_taken_for_more_than_was_said(gym, words):
    person = await follow_up(gym)
    heard = await say(gym, words)
    assert heard[-1].startswith("Did you squat yesterday?")
    assert told(gym, person, "squat_after") == {}


async def test_what_was_written_of_the_squats_is_offered_as_the_note(gym):
    person = await follow_up(gym)
    await say(gym, "felt heavy but went well on the whole", "yes", "yes", "by feel", "parallel", "no", "80")
    assert place(gym, person) == "squat_after.note"
    buttons = gym.db.execute("select buttons from outbox where person = ? order by id desc", (person,)).fetchone()[0]
    assert "“felt heavy but went well on the whole”, as I wrote" in buttons


async def test_the_words_of_an_answer_are_not_taken_by_a_note_left_open(gym):
    person = gym.lifter()
    open_note = Frame("squat_after", 2, "7", "note", got={"done": "yes"}, trail=("done",))
    gym.db.execute("insert into runs (person, run, flow, version, began_at) values (?, '7', 'squat_after', 1, '2026-05-31T18:00:00.000Z')",
                   (person,))
    people.save_session(gym.db, person, Session(stack=(open_note,), runs=7), gym.now() - timedelta(hours=12))
    reminders.cancel(gym.db, person, "squat_day", gym.now())
    gym.invite(person, "morning", gym.now())
    await gym.sweep()
    await say(gym, "the same")
    assert told(gym, person, "morning") == {"how": "same"}
    assert told(gym, person, "squat_after") == {}


@pytest.mark.parametrize(("words", "where"), [
    ("menu", "home.pick"), ("my results", "home.pick"), ("about you", "about_you.height"), ("what is a hip hinge?", "home.pick"),
    ("show me my data", "my_data.what"), ("hello", "home.pick")])
async def test_what_means_something_else_means_it_still(gym, words, where):
    person = await invited(gym, "morning")
    await say(gym, words)
    assert place(gym, person) == where
    assert "morning" not in [row.flow for row in log.answers_of(gym.db, person)]


async def test_thanks_are_thanks(gym):
    person = await invited(gym, "morning")
    assert (await say(gym, "ok thanks"))[0].startswith("Good.")
    assert told(gym, person, "morning") == {}


async def test_once_something_else_was_said_it_is_no_answer_any_more(gym):
    person = await invited(gym, "morning")
    await say(gym, "menu", "worse")
    assert told(gym, person, "morning") == {}


async def invited_twice(gym: Gym, first: str, then: str, **facts: str) -> int:
    """A lifter to whom two reminders have just been sent."""
    person = gym.lifter(safety__limits=NO_SQUATS, setup__state="waits", setup__change="heels", setup__start="below", setup__plain="below",
                        **facts)
    reminders.cancel(gym.db, person, "squat_day", gym.now())
    for kind in (first, then):
        gym.invite(person, kind, gym.now())
        gym.db.execute("update reminders set flow = replace(replace(kind, 'setup', 'setup_morning'), 'limit', 'limit_over')")
        assert len(await gym.sweep()) == 1
    return person


async def test_what_answers_two_invitations_answers_neither_and_both_are_asked_the_later_first(gym):
    person = await invited_twice(gym, "setup", "morning")
    await say(gym, "fine")
    assert told(gym, person, "morning") | told(gym, person, "setup_morning") == {}
    assert place(gym, person) == "morning.how"
    await say(gym, "the same")
    assert place(gym, person) == "setup_morning.how"


@pytest.mark.parametrize(("first", "then"), [("morning", "referral"), ("referral", "morning")])
@pytest.mark.parametrize(("words", "answered", "next_asked"), [
    ("better", ("morning", {"how": "better"}), "referral.went"), ("not yet", ("referral", {"went": "no"}), "morning.how"),
    ("worse", ("morning", {"how": "worse"}), "pain.where")])
async def test_of_two_invitations_the_one_that_is_answered_is_and_the_other_is_asked_after_it(gym, first, then, words, answered,
                                                                                            next_asked):
    person = await invited_twice(gym, first, then, safety__level="clinician")
    await say(gym, words)
    assert told(gym, person, answered[0]) == answered[1]
    assert place(gym, person) == next_asked


async def test_after_the_pain_questions_the_other_invitation_is_asked(gym):
    person = await invited_twice(gym, "referral", "morning", safety__level="clinician")
    await say(gym, "worse", "back", "3", "no", "no", "no")
    assert place(gym, person) == "referral.went"


async def test_an_ache_that_answers_one_invitation_is_no_pain_and_the_other_is_asked_after_it(gym):
    person = await invited_twice(gym, "limit", "setup")
    await say(gym, "ache")
    assert told(gym, person, "setup_morning") == {"how": "ache"}
    assert place(gym, person) == "limit_over.over"


@pytest.mark.parametrize("words", ["yes", "80", "fine"])
async def test_an_invitation_that_asks_nothing_is_begun_by_its_button_only(gym, words):
    person = gym.lifter()
    gym.clock.at = MONDAY.replace(hour=17)
    (prompt,) = await gym.sweep()
    assert prompt.startswith("Squat day tomorrow")
    await say(gym, words)
    assert place(gym, person) in ("home.pick", "")


@pytest.mark.parametrize(("words", "where"), [
    ("yes", "retest.home_done"), ("yeah", "retest.home_done"), ("retest", "retest.home_done"), ("no", "retest_later.when"),
    ("not today", "retest_later.when"), ("ok", "")])
async def test_a_button_of_an_invitation_may_be_said_in_other_words(gym, words, where):
    person = await invited(gym, "retest", retest__tests="leg_raise", drill="calf")
    await say(gym, words)
    assert place(gym, person) == where


async def left_open(gym: Gym, said: str, *then: str) -> int:
    """A lifter who has just been reminded of questions left open the day before, after what they said of them then."""
    person = gym.lifter()
    reminders.cancel(gym.db, person, "squat_day", gym.now())
    await say(gym, said, *then)
    heard = await gym.sweep(hours=26)
    assert heard == [UNANSWERED_SAYS]
    return person


@pytest.mark.parametrize("words", ["yes", "ok", "now", "answer now", "go on", "which ones?", "what questions?", "sure", "i can answer now",
                                   "it got worse"])
@pytest.mark.parametrize(("said", "asked"), [("my foot is dragging", "signs.so"), ("my back hurts like hell", "pain.where")])
async def test_questions_left_open_are_put_when_somebody_says_yes_to_them(gym, said, asked, words):
    person = await left_open(gym, said, "later")
    await say(gym, words)
    assert place(gym, person) == asked
    assert told(gym, person, asked.partition(".")[0]) == {}


@pytest.mark.parametrize("words", ["yes", "ok", "now", "answer now", "go on", "which ones?"])
async def test_a_question_open_since_yesterday_is_put_again_and_not_answered_by_a_yes_to_its_reminder(gym, words):
    person = await left_open(gym, "my foot is dragging")
    heard = await say(gym, words)
    assert heard[-1].startswith("You wrote “my foot is dragging”")
    assert place(gym, person) == "signs.so"
    assert told(gym, person, "signs") == {}


@pytest.mark.parametrize("then", [(), ("later",)])
@pytest.mark.parametrize("words", ["no", "not now", "later"])
async def test_a_no_to_a_reminder_of_open_questions_leaves_them_open_and_takes_nothing_back(gym, words, then):
    person = await left_open(gym, "my foot is dragging", *then)
    heard = await say(gym, words)
    assert heard[-1].startswith("All right. Say “go on” when you can answer.")
    assert told(gym, person, "signs") == {}
    await say(gym, "go on")
    assert place(gym, person) == "signs.so"


@pytest.mark.parametrize(("words", "where"), [("my back hurts", "pain.where"), ("that's so", "signs.so"), ("menu", "home.pick"),
                                              ("what is a hip hinge?", "home.pick")])
async def test_after_a_reminder_of_open_questions_what_says_something_of_its_own_says_it(gym, words, where):
    person = await left_open(gym, "my foot is dragging", "later")
    await say(gym, words)
    assert place(gym, person) == where


@pytest.mark.parametrize("flow", sorted(QUESTIONS_OPEN.values()))
def test_a_flow_whose_open_questions_are_asked_for_invites_to_nothing_else(flow):
    """Else a yes to the reminder of them would be read as one to its own invitation."""
    assert not BOOK[flow].flow.invite
