"""Whole sentences that start a flow: which do, and above all which never do; and buttons that were forged."""

from __future__ import annotations

import re
from itertools import product
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from companion.calendar.plan import Plan
from companion.conversation.events import Tapped, Typed
from companion.conversation.flow import Ask, Flow, Tell
from companion.conversation.kinds import Ready, choice
from companion.conversation.policy import Policy
from companion.conversation.prompt import PAYLOAD_BYTES, offered
from companion.conversation.registry import SENTENCE_MOST, bind
from companion.language.pain.rules import Pain, hear_pain
from companion.language.phrases import FIRM, Phrase, hear
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, Talk
from tests.table import each_row

CORPUS = Path(__file__).parent.parent / "corpus"
LINES = [line.strip() for file in sorted(CORPUS.glob("*.txt"))
         if file.name not in ("not_flags_bot.txt", "not_flags_offered.txt") for line in file.read_text(encoding="utf-8").splitlines()
         if line.strip() and not line.startswith("#")]
DAYS = re.compile(r"\b(?:(?:mon|tues|wednes|thurs|fri|satur|sun)days?|holidays?)\b", re.IGNORECASE)
PLAN = '{"weekly":{"TU":"18:00","FR":"18:00"}}'
KNOWN = {**CHECKED, "squat.plan": PLAN}


def menu() -> Talk:
    return Talk(BOOK["home"].flow, known=KNOWN, book=BOOK)


def mid_test() -> Talk:
    """In the middle of something, with the body at work."""
    talk = Talk(BOOK["knee_to_wall"].flow, known={**CHECKED, "about_you.height": 178.0}, book=BOOK)
    return talk.say("tape")


# what starts one ---------------------------------------------------------------------------------------------


@each_row(("said", "flow"), [
    ("skip Friday", "squat_days"), ("can you move friday to saturday?", "squat_days"), ("Not tomorrow.", "squat_days"),
    ("pause until 3 January", "squat_days"), ("I usually train Mondays and Thursdays at 7am", "squat_days"),
    ("i squat tuesdays at 6pm", "squat_days"), ("every other day 7am", "squat_days"), ("Tuesdays and Fridays at 6pm", "squat_days"),
    ("unpause", "squat_days"), ("I'm back from holiday", "squat_days"), ("on holiday from 10 march to 20 march", "squat_days"),
    ("stop all squat days", "squat_days"), ("stop all reminders", "reminder_times"), ("quiet hours", "reminder_times"),
    ("I’m in Lisbon this week", "whereabouts"), ("I'm in New York until friday", "whereabouts"),
    ("when do i squat next?", "reminders"), ("I'm squatting now", "squat_day"), ("it's squat day", "squat_day")])
def test_a_sentence_starts_its_flow(said: str, flow: str):
    found = BOOK.sentence(said)
    assert found is not None
    assert found[0] == flow


def test_what_it_asks_for_goes_with_it():
    assert BOOK.sentence("Please skip Friday.") == ("squat_days", "skip friday")


def test_a_long_text_is_no_sentence():
    assert BOOK.sentence("skip friday " + "please " * 30) is None
    assert len("skip friday " + "please " * 30) > SENTENCE_MOST


def test_where_the_flow_has_no_use_for_what_is_asked_it_is_none():
    flow = Flow("where", 1, "Where", sentences=(r"in (?P<asked>.+)",), fits=lambda said, facts: said == "town", steps=(Tell("There."),))
    book = bind([flow, Flow("home", 1, "Menu", steps=(Tell("Menu."),)), Flow("pain", 1, "Pain", steps=(Tell("Pain."),))], "home", "pain")
    assert book.sentence("in town") == ("where", "town")
    assert book.sentence("in bed") is None


# what never does ----------------------------------------------------------------------------------------------


BOTH = {
    "can not tonight, my daughter graduates", "cant tomorrow, babysitting", "doctor cleared me for everything, no limits",
    "cleared by cardiology in 2016, the flutter turned out to be nothing and they closed the file",
    "cleared by the gp for everything including heavy lifting, no limits", "cleared by the midwife ages ago, youngest is six now",
    "i train 4 days, sometimes 3, depends on shifts at the bakery", "physio cleared me fully in may, no limits at all",
    "no squats today only tests. floor: fine, wall: fine, ankle: left stiffer", "pause till 3rd", "unpause",
    "I am not allowed to train after ten, the neighbours complain about noise", "can't make it tonight, the goats got out",
    "Physio Helen gave me the all clear to squat as heavy as I like. Finally",
    "squatted in steel caps today. clunky but ok", "skip today pls, back sore from shifting the sofa, will do it tmrw"}
"""These say a day or a clearance, and the second ear of pain asks about some of them."""


def test_no_line_people_type_starts_a_flow_unless_it_is_about_days_or_the_gym():
    """The corpora hold thousands of answers, notes and sentences about pain."""
    assert len(LINES) > 4000
    assert {line for line in LINES if BOOK.sentence(line, KNOWN) and not DAYS.search(line) and not line.casefold().startswith("why ")} <= {
        "on holiday till the 12th", "not training this week, visiting my brother in cork", "at the gym now", "cant lift today, no time",
        "cant tonight, parents evening", "STOP THE REMINDERS", "i squat mon wed fri",
        "doc cleared me fully", "physio says i can do what i like", "doctor said i can do everything",
        "my surgeon cleared me last autumn", "physio cleared me in june, no pain since then",
        "doc cleared me for everything", "doctor cleared me for everything", "rest day tomorrow", "not allowed to park there",
        "physio cleared me last year, no limits", "physio cleared me for everything last year",
        "the surgeon cleared me years ago and it's been grand", "show me last week", "show last week", "it's squat day",
        "turn off the reminders", "not supposed to park here, moving the car", "STOP ALL", "unsubscribe", "opt out", "show graph",
        "away from the 3rd to the 17th, no rack in Tenerife", "cannot make the weekend, cousin gets married in Rzeszów",
        "i'm away from the 3rd to the 17th, pause the plan", "skip tomorrow, i'm at my cousin's wedding",
        "GP cleared me for everything in january, no limits", "can't make it tomorrow, funeral", "doctor cleared me for anything",
        "cleared by my doctor for everything, no limits", "cleared by the gp for everything including heavy", "skip tomorrow, shearing",
        "cleared by the cardiologist after a check for the rowing club, heart totally normal", "move squat day to thurs i have a shift",
        "doctor gave me the all clear, do what you like she said", "no squat today, my daughter has theatre in school",
        "pause reminders for a week", "physio gave me the all clear to lift anything i want", "please stop reminding me",
        "skip today's drill please", "wont make squat day, flight to my cousin's wedding",
        "doc gave me the all clear, no limits", "got cleared by the physio, no limits", "physio cleared me completly, no limits",
        "no squats this week, I'm at a conference in a town whose hotel gym has one dumbbell",
        "no squats this week, crutching starts, 12 hr days", "GP gave me the green light", "PT cleared me for everything, no limits",
        "doc gave me the green light at the annual check", "doctor gave me the green light in spring, no limits",
        "got the all clear from the dentist, i hate that chair", "mo cleared me, full duty, no restriction",
        "got the all clear from the heart check at work, ecg perfect, they do it each year",
        "nurse at work cleared me for the charity squatathon, all green", "physio gave me the green light for everythign",
        "the club doctor cleared me, the club treasurer did not", "skip today please", "cant do tues, thurs any good?",
        "squatted 100 for 5 today", "squatted to a low crate today because my mate borrowed the box, 65x6x3", "squatted 3x5 at 90 today",
        "tues 6pm ok?", "thurs 6pm is perfect", "skip this week, we are at a wedding in Glenfadda",
        "cant tonight, im at my nieces confirmation and full of cake",
        "i'll be away until the ninth, coach trip to the coast with the bridge club",
        "Can't do today, smear clinic all day, I'm the one holding the speculum",
        "squatted in socks today, ankle test 11cm in socks", "squatted 225x5 today", "surgeon lifted the restriction today",
        "doctor took the limit off", "can we shift tomorrow to the arvo?? covering Priyas shift again",
        "Skip today, bridge is closed, I'm not home till midnight. Tomorrow at noon, swear on my mother's meatballs",
        "Physio gave me the all clear on ankle mobility, 12 cm each and no worries, her words", "not squatting this week, moving house",
        "can't tonight, boiler man's due between four and never", "cant train til after work",
        "Doctor gave me the all clear at the insurance check, no limits, lift what you like he said",
        "Can't train tonight, parents evening. I teach year 9",
        "Doc cleared me at the annual physical, full duty, no limits. Load it up"} | BOTH


def test_no_sentence_about_pain_starts_a_flow():
    said = {line for line in LINES if BOOK.sentence(line, KNOWN) and hear_pain(line) is not Pain.NO}
    assert said <= {"doctor cleared me for everything", "doc cleared me for everything",  # the second ear asks of "everything"
                    "can't make it tomorrow, funeral", "can't do saturday, double shift",  # and of "can't"
                    "no squats this week, crutching starts, 12 hr days"} | BOTH


def control_words() -> list[str]:
    return sorted({word for lines in FIRM.values() for word in re.sub(r"[|?\n]", " ", lines).replace(",", "\n").split("\n")})


def test_no_control_word_is_a_sentence():
    plain = ["stop", "back", "skip", "again", "help", "menu", "skip it", "skip this", "skip this one", "skip this test", "skip the test",
             "move on", "next",
             "stop it", "stop now", "cancel", "cancel it", "pause", "not now", "later", "tomorrow", "go on", "that is all",
             "stop for today", "no more for today", "enough for today", "not today", "i'm done for today"]
    assert [words for words in [*plain, *control_words()] if BOOK.sentence(words)] == []


@each_row("said", [
    "i can't do this", "i can't do this today", "skip the 2nd set", "skip the next one", "skip the knee test today", "i am in bed",
    "i'm in position", "i'm in a good place", "move my foot back", "move the foot 2 cm", "pause for a second", "pause until i'm ready",
    "pause for 3 seconds", "i squat", "i squat deep", "i train 3 times a week", "3 times a week", "every day", "every other day", "daily",
    "mostly at weekends", "about 3 days a week", "1 day", "on the second try", "sat down", "sun was in my eyes", "in the evening", "18:00",
    "6pm", "10 am", "may be", "i can't tell", "i can't see it", "i can't get lower", "not sure", "not really", "no squats", "cancel that",
    "stop", "i'm in", "in progress", "slept badly, bar felt light", "felt better than friday", "did it on tuesday",
    "move on to the next", "change the answer to 12", "the last set on friday moved a bit", "push through the heels"])
def test_an_ordinary_answer_or_a_note_does_not(said: str):
    assert BOOK.sentence(said) is None


@each_row("said", ["i'm in pain", "I'm in agony", "i can't squat today my back hurts", "skip friday, my back hurts",
                                  "i can't squat tomorrow because of my back pain", "pause for 2 weeks, i hurt my back",
                                  "stop all squat days, my leg is numb", "I'm in Lisbon and my back is killing me"])
def test_pain_comes_before_any_sentence(said: str):
    for talk in (menu(), mid_test()):
        talk.say(said)
        asked = talk.session.aside is not None and talk.session.aside.about == "ache"
        assert asked or talk.state.startswith("pain.")
        assert talk.known.get("squat.plan") in (PLAN, None)


@pytest.mark.parametrize("said", ["i am in bed", "skip this test", "move on", "i can't do this", "skip the next one", "every other day"])
def test_in_the_middle_of_a_test_it_stays_there(said: str):
    assert mid_test().say(said).state.startswith("knee_to_wall.")


def test_words_of_their_own_are_kept_as_they_are():
    """A note that looks like an order is a note."""
    flow = Flow("note", 1, "Note", policy=Policy.TALK, steps=(
        Ask("note", "A note?", choice(("x", "X")), free=True), Ask("done", "Done?", Ready())))
    notes = bind([flow, *(one.flow for one in BOOK.flows.values())], "home", "pain")
    talk = Talk(flow, known=KNOWN, book=notes).say("skip friday")
    assert talk.state == "note.note"
    assert talk.known["squat.plan"] == PLAN


def test_an_answer_of_the_question_comes_before_a_sentence():
    flow = Flow("when", 1, "When", policy=Policy.TALK, steps=(
        Ask("when", "When?", choice(("fri", "Not tomorrow"), ("x", "X"))), Tell("Kept.")))
    book = bind([flow, *(one.flow for one in BOOK.flows.values())], "home", "pain")
    assert Talk(flow, known=KNOWN, book=book).say("not tomorrow").answers["when"] == "fri"


def test_in_the_menu_a_sentence_comes_before_a_control_word():
    assert hear("tomorrow") is Phrase.STOP
    assert "Left out: tomorrow" in "\n".join(say.text for say in menu().say("not tomorrow").says)


def test_skip_it_in_the_menu_shows_the_squat_days():
    assert menu().say("skip it").state == "squat_days.change"


# forged buttons -------------------------------------------------------------------------------------------------


NASTY = ("", ".", "..", "skip", "skip 2026-02-30", "skip 0001-01-01", "skip 9999-12-31", "move 2026-03-03 2026-03-03 24:00", "weekly",
         "weekly TU", "weekly TU=25:00", "weekly XX=18:00",
         "weekly TU=18:00+02:00", "every 0 18:00 2026-03-03", "every -1 18:00 2026-03-03",
         "every 99 18:00 2026-03-03", "every ² 18:00 2026-03-03", "pause", "pause 0001-01-01", "stop stop", "on 2026-03-03 ??:??",
         "move ????-??-?? 2026-03-03 18:00", "move 2026-03-03 ????-??-?? ??:??", "every 2 06:30? ????-??-??", "2026-13-01", "2026-W10-1",
         "20260303", "0001-01-01", "9999-12-31", "nan", "inf", "-1", "1e999", "{today}", "{0}", "%s",
         "\x00", "🏋️" * 16, "٣", "a" * 64)
TEXTS = st.one_of(st.sampled_from(NASTY), st.text(max_size=PAYLOAD_BYTES),
                  st.from_regex(r"(skip|on|move|pause|every|weekly) [0-9?:=TU,-]{0,20}( [0-9?:-]{0,10}){0,3}", fullmatch=True))


def cut(flow: str, asked: str) -> str:
    """A payload as the wire lets it through: 64 bytes at most."""
    return f"go.{flow}.{asked}".encode("utf-8", "ignore")[:PAYLOAD_BYTES].decode("utf-8", "ignore")


@pytest.mark.parametrize("flow", sorted(BOOK.flows))
@settings(max_examples=settings().max_examples // 12)
@given(asked=TEXTS)
def test_whatever_a_start_button_carries_nothing_fails(flow: str, asked: str):
    talk = menu()
    talk.send(Tapped(cut(flow, asked)))
    talk.send(Typed("menu"))


@each_row("flow, asked", list(product(
    ("squat_days", "squat_day", "squat_after", "whereabouts", "reminder_times", "retest_later", "morning"), NASTY)))
def test_whatever_somebody_would_try_in_a_button_nothing_fails(flow: str, asked: str):
    menu().send(Tapped(cut(flow, asked)))


ISO = re.compile(r"\d{4}-\d\d-\d\d")


@settings(max_examples=150)
@given(kind=st.sampled_from(("skip", "on", "move")), day=st.dates(NOW.date().replace(month=1), NOW.date().replace(year=2027)),
       to=st.dates(NOW.date().replace(month=1), NOW.date().replace(year=2027)), at=st.times())
@example(kind="move", day=NOW.date().replace(day=6), to=NOW.date().replace(day=7), at=NOW.time())
def test_a_forged_button_changes_no_day_but_those_it_names(kind, day, to, at):
    asked = {"skip": f"skip {day}", "on": f"on {day} {at:%H:%M}", "move": f"move {day} {to} {at:%H:%M}"}[kind]
    talk = menu()
    talk.send(Tapped(cut("squat_days", asked)))
    after = Plan.loads(str(talk.known["squat.plan"]))
    assert after.weekly == Plan.loads(PLAN).weekly
    assert {changed.isoformat() for changed, _ in after.single} <= set(ISO.findall(asked))
    assert "squat_days" not in talk.state


@settings(max_examples=60)
@given(asked=TEXTS)
def test_a_rule_is_never_replaced_or_ended_by_a_button_alone(asked: str):
    talk = menu()
    talk.send(Tapped(cut("squat_days", asked)))
    assert Plan.loads(str(talk.known["squat.plan"])).weekly == Plan.loads(PLAN).weekly


def test_every_button_a_flow_offers_fits_the_wire():
    facts = {"invited_day": "2026-03-06", "invited_at": "18:00", "of_day": "2026-03-06", "untold": "2026-03-06",
             "undo": "move 2026-03-06 2026-03-07 18:00"}
    for one in BOOK.flows.values():
        steps = [offer for step in one.flow.steps if isinstance(step, Tell) for offer in step.offers]
        for row in offered([*one.flow.invites, *steps], facts, NOW):
            assert all(len(tap.data.encode()) <= PAYLOAD_BYTES for tap in row)
