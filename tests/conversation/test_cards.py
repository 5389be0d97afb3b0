"""Answer cards, and refusals that are never the same twice."""

from datetime import UTC, datetime
from fnmatch import fnmatchcase

import pytest

from companion.conversation.cards import CARD_WORDS_MOST, CardRow, card_of, read_cards
from companion.conversation.effects import Record, Say
from companion.conversation.events import Edited, Sent, Tapped, Typed
from companion.conversation.flow import Ask, Flow, Known
from companion.conversation.kinds import Ready, YesNo
from companion.conversation.session import Aside, Frame, Session
from companion.conversation.step import step
from companion.conversation.wording import MOST_WORDS, render
from companion.verify.check import _without_card
from flows.catalogue import BOOK

pytestmark = pytest.mark.unit
NOW = datetime(2026, 3, 2, 10, tzinfo=UTC)
GROWN = {"today": "2026-03-02", "person": "1", "welcome.zone_right": "yes", "welcome.adult": "yes", "safety.level": "go",
         "safety.checked": "go", "safety.checked.today": "yes", "coach": "no", "is_coach": "no"}
A_FLOW = Flow("a", 1, "A", ())
ASKS = [(flow, step) for flow in BOOK.flows for step in BOOK.flows[flow].flow.steps if isinstance(step, Ask)]


def at(flow: str, key: str, **more: object) -> Session:
    return Session(stack=(Frame(flow, BOOK[flow].flow.version, "1", state=key),), runs=1, **more)


def ask(flow: str, key: str, text: str, facts: dict = GROWN):
    return step(BOOK, at(flow, key), Typed(text), Known(facts, NOW))


def said(taken) -> list[str]:
    return [effect.text for effect in taken.effects if isinstance(effect, Say)]


def test_a_part_comes_from_the_first_row_that_has_it():
    rows = read_cards('[[card]]\nof = ["a/b"]\nmeans = "particular"\n[[card]]\nmeans = "general"\nwhy = "always"\n')
    assert card_of(rows, A_FLOW, Ask("b", "?", YesNo()))[:2] == ("particular", "always")
    assert card_of(rows, A_FLOW, Ask("c", "?", YesNo()))[:2] == ("general", "always")


@pytest.mark.parametrize(("row", "ask"), [
    (CardRow(kind="Ready"), Ask("b", "?", Ready())), (CardRow(safety=True), Ask("b", "?", YesNo(), safety=True)),
    (CardRow(works=True), Ask("b", "?", Ready(), caution="Slowly.")), (CardRow(unsure=True), Ask("b", "?", YesNo(unsure=True)))])
def test_a_row_is_for_what_it_says_only(row, ask):
    assert row.matches("a", ask)
    assert not row.matches("a", Ask("b", "?", YesNo()))


@pytest.mark.parametrize("text", ['[[card]]\nwhat = "no"\n', f'[[card]]\nwhy = "{"word " * (CARD_WORDS_MOST + 1)}"\n'])
def test_a_card_that_is_not_whole_is_refused(text):
    with pytest.raises(ValueError):
        read_cards(text)


def test_a_flow_with_a_question_without_a_card_is_refused(monkeypatch):
    bare = BOOK["knee_to_wall"].flow
    assert not list(_without_card(BOOK, bare))
    rows = tuple(row for row in BOOK.answers().cards if row.of == ("knee_to_wall/method",))
    monkeypatch.setattr(type(BOOK.answers()), "cards", rows, raising=False)
    monkeypatch.setitem(BOOK.__dict__, "answers", lambda: type("Rows", (), {"cards": rows}))
    assert "left_1: its card does not say means, how, cant" in list(_without_card(BOOK, bare))


def test_every_row_of_the_cards_names_a_question_that_is_there():
    names = [f"{flow}/{open_.key}" for flow, open_ in ASKS]
    for row in BOOK.answers().cards:
        for pattern in row.of:
            assert any(fnmatchcase(name, pattern) for name in names), pattern


@pytest.mark.parametrize(("flow", "key", "text", "answer"), [
    ("squat_look", "plain_rounds", "what does clearly mean?", "the hips can roll under"),
    ("squat_look", "plain_rounds", "whats the tail", "The tail is the lowest end"),
    ("squat_look", "plain_rounds", "how do i tell", "Pause the film"),
    ("hip_fold", "did", "how do i know when to stop", "the pressure on your hands clearly changes"),
    ("squat_look", "did", "what do you mean?", "all the sets above in one go"),
    ("squat_look", "did", "why?", "what the changed ones are compared with"),
    ("hip_fold", "left_first", "how do i know i reached the fold", "Pressure that clearly grows"),
    ("hip_fold", "did", "what is the fold", "The fold is how close"),
    ("knee_to_wall", "left_1", "why do you need that", "how far your ankle bends"),
    ("knee_to_wall", "left_1", "i dont have a tape, what now?", "Mark the toe on paper"),
    ("knee_to_wall", "left_1", "what do you mean?", "From the wall to the tip"),
    ("safety_check", "history", "whats a prednisone type tablet", "steroids that a doctor gives"),
    ("safety_check", "pain", "why?", "At 3 only floor tests"),
    ("safety_check", "history_signs", "how do i tell?", "no way of lying helps"),
    ("safety_check", "pregnant", "what do you mean?", "pregnant now, or may be"),
    ("signs", "pregnant", "how do i know?", "from a pharmacy tells"),
])
def test_a_question_about_the_open_question_is_answered_and_the_question_stands_again(flow, key, text, answer):
    taken = ask(flow, key, text)
    assert answer in said(taken)[0]
    assert taken.session.top.state == key
    assert not [effect for effect in taken.effects if isinstance(effect, Record)]
    assert [effect for effect in taken.effects if isinstance(effect, Say)][-1].buttons


ASKED = {"means": ("what does that mean?", "can you explain that", "I don't understand the question"),
         "why": ("why do you ask?", "what's the point of this", "why?"),
         "how": ("how do I do that?", "how should I answer this"),
         "cant": ("what if I can't do that?", "what do I do if I don't know")}
OWN_WORDS = ("how should I answer this", "what if I can't do that?", "what do I do if I don't know")
"""These may be words of one's own where such are an answer."""


@pytest.mark.parametrize("part", ASKED)
def test_each_part_of_the_card_of_every_question_answers_the_questions_for_it(part):
    for n, (flow, open_) in enumerate(ASKS):
        text = ASKED[part][n % len(ASKED[part])]
        card = getattr(card_of(BOOK.answers().cards, BOOK[flow].flow, open_), part)
        told = BOOK[flow].flow.policy.pages or BOOK[flow].flow.policy.beside or flow == "home"
        if (text == "why?" and told) or (open_.free and text in OWN_WORDS):
            continue  # "why?" is about the results there
        taken = ask(flow, open_.key, text)
        assert taken.session.top.state == open_.key, (flow, open_.key, text)
        assert not [effect for effect in taken.effects if isinstance(effect, Record)], (flow, open_.key, text)
        assert card.partition("{")[0][:25] in "\n".join(said(taken)), (flow, open_.key, text)


def test_a_movement_that_stands_again_keeps_its_caution():
    assert "Stop at once if anything hurts" in said(ask("squat_look", "did", "how fast?"))[-1]


@pytest.mark.parametrize("text", ["how fast?", "what do you mean?", "why?", "help", "not sure how", "blorp fnord"])
def test_every_movement_that_stands_again_keeps_its_caution(text):
    stood = set()
    for flow, open_ in ASKS:
        taken = ask(flow, open_.key, text)
        frame = taken.session.top if taken.session.stack else None
        if open_.caution and frame and (frame.flow, frame.state) == (flow, open_.key) and not taken.session.aside and said(taken):
            caution = render(open_.caution, BOOK[flow].facts_of(GROWN, {}, {}), NOW, open_.side)
            assert caution in said(taken)[-1], (flow, open_.key)
            stood.add(flow)
    assert {"knee_to_wall", "squat_look", "hip_fold", "leg_raise", "rock_back"} <= stood


def test_a_safety_question_stands_again_in_full():
    assert said(ask("safety_check", "bladder", "why do you ask?"))[-1].endswith("loss of sexual function.")


MIXED = "one kind after the other"
REFUSED = {
    "the same nonsense": [Typed("qqq zzz blorp")] * 7,
    "other nonsense": [Typed(text) for text in ("purple monkey", "lorem ipsum", "hmmpf grr", "foo bar", "asdf", "zzzz")],
    "numbers": [Typed(text) for text in ("99999", "3 4 5 6 7", "9 8 7 6 5", "99999", "1 2 3 4 5")],
    "a sound or a photo": [Sent("audio", "x"), Sent("photo", "x")] * 3,
    "an old button": [Tapped("knee_to_wall.1.nowhere.x")] * 4,
    "an edited message": [Edited("12")] * 4,
    "not knowing": [Typed("dunno")] * 4,
    MIXED: [Typed("qqq zzz"), Sent("audio", "x"), Edited("12"), Typed("99999"), Typed("blorp"), Tapped("a.1.b.c")]}


OF_EACH_SORT = list({(type(ask.kind), ask.safety, ask.free, bool(ask.caution), BOOK[flow].flow.policy): (flow, ask)
                     for flow, ask in ASKS}.values())


@pytest.mark.parametrize("series", REFUSED)
def test_refusals_are_never_the_same_twice_and_never_longer(series):
    """Of every question, and of every sort whatever is sent to it. None has more letters than the first, unless it names what may be meant,
    or something else was sent."""
    for flow, open_ in ASKS if series == "the same nonsense" else OF_EACH_SORT:
        session, texts = at(flow, open_.key), []
        for event in REFUSED[series]:
            taken = step(BOOK, session, event, Known(GROWN, NOW))
            told = [effect for effect in taken.effects if isinstance(effect, Record)]
            if told or not taken.session.stack or taken.session.top.state != open_.key or taken.session.aside:
                break  # words of one's own are an answer here, and what was sent may be asked about
            texts.append("\n".join(said(taken)))
            assert all(len(one.split()) <= MOST_WORDS for one in said(taken)), (flow, open_.key, texts)
            session = taken.session
        assert len(set(texts)) == len(texts), (flow, open_.key, texts)
        mixed = series == MIXED or (flow, open_.key) == ("prime", "steps")  # whose whole text is worked out
        assert mixed or all(len(text) <= len(texts[0]) or "Which one: " in text for text in texts[1:]), (flow, open_.key, texts)


@pytest.mark.parametrize("about", ["unusual", "ache", "return", "understood"])
def test_what_is_no_answer_to_a_side_question_is_never_refused_twice_in_the_same_words(about):
    session, texts = at("knee_to_wall", "left_1", aside=Aside(about, "11")), []
    for text in ["zq zq"] * 20:
        taken = step(BOOK, session, Typed(text), Known(GROWN, NOW))
        texts.append(said(taken)[-1])
        session = taken.session
        if not session.aside:
            break
    assert len(set(texts)) == len(texts)
    assert texts


def test_what_can_not_be_answered_is_said_in_other_words_the_second_time():
    session, texts = at("home", "pick"), []
    for _ in range(6):
        taken = step(BOOK, session, Typed("what colour is the best bar cover?"), Known(GROWN, NOW))
        texts.append(said(taken)[0])
        session = taken.session
    assert len(set(texts)) == len(texts)
    assert max(map(len, texts)) == len(texts[0])


def test_after_an_answer_refusals_begin_anew():
    session = at("knee_to_wall", "left_limit", refused=2)
    assert step(BOOK, session, Typed("calf"), Known(GROWN, NOW)).session.refused == 0


def test_an_answer_and_the_question_are_two_messages_where_one_would_be_too_long():
    for flow, open_ in ASKS:
        for text in ("why do you ask?", "what do you mean?"):
            if not open_.free:
                assert all(len(one.split()) <= MOST_WORDS for one in said(ask(flow, open_.key, text))), (flow, open_.key)


def test_what_is_not_known_is_said_and_the_coach_offered():
    alone = ask("home", "pick", "what colour is the best bar cover?")
    assert "I can't answer that one" in said(alone)[0]
    coached = ask("home", "pick", "what colour is the best bar cover?", {**GROWN, "coach": "yes"})
    assert "Your coach can" in said(coached)[0]
    rows = [row for effect in coached.effects if isinstance(effect, Say) for row in effect.buttons]
    assert "go.note_to_coach" in [tap.data for row in rows for tap in row]


def test_help_says_how_to_answer_this_question():
    assert "Slide the foot back" in said(ask("knee_to_wall", "left_1", "help"))[0]


def test_a_question_while_nothing_runs_is_answered_before_the_menu():
    idle = Session(idle=True, runs=1)
    taken = step(BOOK, idle, Typed("are you a real person?"), Known(GROWN, NOW))
    assert "I am a bot" in said(taken)[0]
    assert not taken.session.idle


def test_an_answer_taken_back_is_gone_also_where_its_name_ends_in_by():
    frame = Frame("squat_look", BOOK["squat_look"].flow.version, "1", state="setup", got={"seen_by": "film"}, trail=("seen_by",))
    taken = step(BOOK, Session(stack=(frame,), runs=1), Typed("back"), Known(GROWN, NOW))
    assert "seen_by" not in taken.session.top.got
