"""What every flow must be, found by its file and named nowhere: complete, safe, and taken arrow by arrow by the engine.

Which arrows can be taken at all is proved (companion.verify.proof); how, is found by walks (tests.flows.walks); that
the engine does it, is tested here with real steps. An arrow no answers can take is proved to be one.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Sequence
from datetime import timedelta
from functools import cache, partial
from itertools import pairwise
from pathlib import Path
from random import Random
from typing import Any

import pytest

import flows
from companion.conversation.condition import Value
from companion.conversation.effects import Effect, Ended, Find, Record, Say
from companion.conversation.events import Event, Settle, Tapped, Typed
from companion.conversation.flow import END, PARKED, Ask, Known, Run, Tell
from companion.conversation.kinds import Answer, Hold, ReadingContext, Words, pick
from companion.conversation.number_kinds import Number
from companion.conversation.prompt import BACK, SKIP, STOP, Payload, start_payload
from companion.conversation.session import Frame, Session
from companion.conversation.step import step, unsettled
from companion.conversation.table import EARLY_END, START, body_works
from companion.conversation.wording import MOST_WORDS, fields_of, render
from companion.language.pain.rules import Pain, hear_pain
from companion.screening.protocols import route
from companion.screening.safety import Level
from companion.screening.screen import LoggedAnswer as Row
from companion.verify.check import LABEL_MOST, faults
from companion.verify.draw import ASKING, drawn, mermaid
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.drive import CHECKED, NOW
from tests.flows.test_plain_words import GRADE_MOST, TO_COACHES, WORDS_LEAST
from tests.flows.walks import Replay, Walk, facts_after, proof_of, rows_of, walk, walk_saying, walks_of, ways_of
from tests.reading_grade import grade
from tests.screening.build import open_tests
from tests.table import failing

FOLDER = Path(flows.__file__).parent
NAMES = sorted(BOOK.flows)
ARROWS = [(name, *ends) for name in NAMES for ends in BOOK[name].ways]
QUESTIONS = [(name, key) for name in NAMES for key, stop in BOOK[name].stops.items() if isinstance(stop, Ask)]
PASSING = [(name, n) for name in NAMES for n, one in enumerate(BOOK[name].flow.steps) if not isinstance(one, Ask | Run)]

TEXT_MOST, PAYLOAD_MOST = 4096, 64
"""Bot API: a text message is 1 to 4096 characters, callback data 1 to 64 bytes (read)."""


def each(rows: Sequence[tuple[Any, ...]]) -> Callable[[Callable[..., None]], Callable[[str], None]]:
    """A check of rows that begin with a flow's name as one test a flow, which tells of every row that fails."""
    def of(check: Callable[..., None]) -> Callable[[str], None]:
        @pytest.mark.parametrize("name", sorted({row[0] for row in rows}))
        def test(name: str) -> None:
            of_it = (row for row in rows if row[0] == name)
            wrong = [f"{name} {'->'.join(map(str, row[1:]))}: {failed}" for row in of_it if (failed := failing(partial(check, *row)))]
            assert not wrong, "\n".join((f"{len(wrong)} fail", *wrong))

        test.__name__, test.__doc__ = check.__name__, check.__doc__
        return test

    return of


@cache
def at(name: str, key: str) -> Walk:
    """A short walk that ends by asking this question."""
    here = [one for (_, target), one in walks_of(name).items() if target == key]
    return min(here, key=lambda one: len(one.replies))


@pytest.mark.parametrize("name", NAMES)
def test_what_follows_a_reply_is_short_plain_and_three_messages_at_most(name):
    """On every arrow's walk; what a timed hold says later and what waits for “more” does not come at once."""
    texts = set[str]()
    for one in walks_of(name).values():
        replay = Replay(name, one)
        for reply, (before, after) in zip(one.replies, pairwise([0, *replay.upto]), strict=True):
            new = [say for say in replay.effects[before:after] if isinstance(say, Say)]
            assert len([say for say in new if not (say.after or say.page or "would be unusual" in say.text)]) <= 3, reply.state
            texts |= {say.text for say in new}
    for text in texts:
        assert len(text.split()) <= MOST_WORDS, text
        assert name in TO_COACHES or len(text.split()) < WORDS_LEAST or grade(text) <= GRADE_MOST, text


# on the flow itself -------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_the_flow_is_sound(name):
    """Every state reached and left, conditions complete and exclusive over every fact's whole domain, names known, texts
    and payloads within limits, a caution and a gate wherever the body works."""
    assert faults(ways_of(name), proof_of(name)) == []


def test_every_file_that_holds_a_flow_is_in_the_catalogue_under_its_own_name():
    files = {file.stem for file in FOLDER.glob("*.py") if "\nFLOW = " in file.read_text(encoding="utf-8")}
    assert files == set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_the_drawing_beside_the_flow_is_of_this_flow(name):
    kept = (FOLDER / f"{name}.mmd").read_text(encoding="utf-8")
    assert kept == mermaid(BOOK[name]), "stale: run “companion flows draw”"


def test_no_drawing_is_left_of_a_flow_that_is_gone():
    assert {file.stem for file in FOLDER.glob("*.mmd")} == set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_has_each_row_of_the_table_in_one_line(name):
    compiled, lines, kept = BOOK[name], drawn(BOOK[name]), mermaid(BOOK[name]).splitlines()
    assert sorted(map(id, (row for rows in lines.values() for row in rows))) == sorted(map(id, compiled.table))
    assert len(set(lines) & set(kept)) == len(lines)
    outside = {START: "[*]", END: "[*]", EARLY_END: "[*]"}
    ways = {line.strip().split(" : ")[0] for line in kept if line.startswith("        ") and " --> " in line}
    assert ways == {f"{outside.get(a, a)} --> {outside.get(b, b)}" for a, b in compiled.ways}


@pytest.mark.parametrize("name", NAMES)
def test_an_arrow_from_the_frame_is_one_of_each_question(name):
    asks = {key for key, stop in BOOK[name].stops.items() if isinstance(stop, Ask)}
    for line, rows in drawn(BOOK[name]).items():
        if line.strip().startswith(f"{ASKING} --> "):
            events = {row.event for row in rows}
            assert all({row.source for row in rows if row.event == event} == asks for event in events), line


# every arrow, every branch ------------------------------------------------------------------------------------


@each(ARROWS)
def test_an_arrow_is_taken_by_the_engine_or_proved_to_be_none(name, source, target):
    one = walks_of(name).get((source, target))
    if one is None:
        assert (source, target) in proof_of(name).never, "neither taken by a walk nor proved impossible"
        return
    assert (source, target) not in proof_of(name).never
    replay = Replay(name, one)
    if target in (END, EARLY_END):
        assert Ended("1", "done") in replay.effects
    else:
        assert replay.frame is not None
        assert replay.frame.state == target
    within_limits(replay.said)


@pytest.mark.parametrize("name", NAMES)
def test_from_every_state_a_walk_comes_to_an_end(name):
    ended = {state for state, target in walks_of(name) if target == "to the end"}
    assert BOOK[name].stops.keys() <= ended


@each(PASSING)
def test_every_branch_that_only_says_or_notes_something_is_come_by(name, n):
    passing = BOOK[name].flow.steps[n]
    one = walk_saying(name, passing)
    assert one is not None, f"nothing leads to {passing}"
    replay = Replay(name, one)
    facts = facts_after(ways_of(name), one)
    if isinstance(passing, Tell):
        assert render(passing.say, facts, NOW, passing.side) in [say.text for say in replay.said]
    else:
        assert type(passing.effect) in {type(effect) for effect in replay.effects}


def within_limits(said: list[Say]) -> None:
    for say in said:
        assert 1 <= len(say.text.strip()) <= len(say.text) <= TEXT_MOST
        taps = [tap for row in say.buttons for tap in row]
        assert len({tap.data for tap in taps}) == len({tap.label for tap in taps}) == len(taps)
        for tap in taps:
            assert 1 <= len(tap.data.encode()) <= PAYLOAD_MOST
            assert 1 <= len(tap.label) <= LABEL_MOST


LOGS, WALKS = (150, 40) if BY_NIGHT else (40, 10)
"""Logs drawn of what a lifter may have answered over weeks, and the walks of each flow they are drawn from."""


@pytest.mark.parametrize("name", [name for name in NAMES if BOOK[name].flow.at_start])
def test_whatever_was_answered_before_it_begins_and_what_it_then_says_fits(name):
    """What a flow works out when it begins never fails, whichever tests were done, skipped, repeated or left out."""
    draw, begin = Random(f"{name} logs"), BOOK[name].flow.at_start
    assert begin is not None
    for log in logs():
        known = dict(CHECKED) | {f"{row.flow}.{row.key}": row.value for row in log if row.value is not None}
        if draw.random() < 0.5:
            known |= {"outcome.at": (NOW - timedelta(days=draw.choice((1, 10, 30)))).isoformat(), "drill": "control",
                      "retest.tests": ",".join(draw.sample(sorted(route()), 3))}
        facts = BOOK[name].facts_of(known, begin(Known(known, NOW, lambda log=log: log, "1")), {})
        for one in BOOK[name].flow.steps:
            if isinstance(one, Tell) and one.only_if.holds(facts):
                assert len(render(one.say, facts, NOW, one.side)) <= TEXT_MOST


@cache
def pool(name: str) -> list[Walk]:
    draw, able = Random(f"{name} pool"), sorted(BOOK[name].ways.keys() - proof_of(name).never)
    return [walk(ways_of(name), draw, able) for _ in range(WALKS)]


@cache
def logs() -> list[list[Row]]:
    """The same for every flow."""
    draw = Random("logs")
    return [drawn_log(draw) for _ in range(LOGS)]


def drawn_log(draw: Random) -> list[Row]:
    """Some tests done in some order over some weeks, some twice, each answered in a way its flow allows."""
    log, often = [], draw.choice((0.2, 0.5, 0.9))
    for n, name in enumerate(sorted({*route(), "about_you"})):
        for again in range(2):
            if draw.random() < often / (1 + 2 * again):
                at = NOW - timedelta(days=draw.choice((0, 1, 20, 60)), minutes=n)
                log += rows_of(name, draw.choice(pool(name)), f"{n}-{again}", at)
    return sorted(log, key=lambda row: row.at)


# every question -----------------------------------------------------------------------------------------------


def buttons_of(say: Say) -> dict[str, str]:
    return {tap.data.rpartition(".")[2]: tap.data for row in say.buttons for tap in row}


def replay_of(name: str, key: str) -> Replay:
    """The engine at this question."""
    replay = Replay(name, at(name, key))
    assert replay.session.top.state == key
    return replay


def means_an_answer(replay: Replay, words: str) -> bool:
    """Whether the words are, exactly, one of the answers that the waiting question offers."""
    frame = replay.session.top
    facts = replay.ways.compiled.facts_of(replay.known, frame.fixed, frame.got)
    offered = tuple(option for option in replay.ask.kind.options if option.only_if.holds(facts))
    return isinstance(pick(words, offered, ReadingContext(strict=True)), Answer)


def control(replay: Replay, value: str, words: str) -> None:
    """By its button where it is shown, else in words: an answer may be the same word."""
    data = buttons_of(replay.said[-1]).get(value)
    replay.send(Tapped(data) if data else Typed(words))


@each(QUESTIONS)
def test_it_is_shown_with_its_caution_each_time(name, key):
    replay = replay_of(name, key)
    ask, frame = replay.ask, replay.session.top
    facts = replay.ways.compiled.facts_of(replay.known, frame.fixed, frame.got)
    caution = render(ask.caution, facts, NOW, ask.side)
    assert caution in replay.said[-1].text
    assert bool(caution.strip()) == bool(ask.caution)
    for words in ("say that again", "help", "qwertz uiop"):
        if not (ask.free and isinstance(ask.kind, Words)):
            replay.send(Typed(words))
            assert replay.session.top.state == key
            assert caution in replay.said[-1].text


@each(QUESTIONS)
def test_there_is_a_way_on(name, key):
    replay = replay_of(name, key)
    assert any((key, arrow.target) in walks_of(name) for arrow in BOOK[name].leaving[key])
    if replay.ask.kind.options:
        shown = buttons_of(replay.said[-1]).keys()
        assert {option.value for option in replay.ask.kind.options} & shown


@each(QUESTIONS)
def test_back_asks_the_question_before_again_or_says_that_this_is_the_first(name, key):
    replay = replay_of(name, key)
    trail = replay.session.top.trail
    if not trail and (replay.ask.free or means_an_answer(replay, "back")):
        return
    control(replay, BACK, "back")
    if trail and replay.ways.asks[key].back:
        assert replay.session.top.state == trail[-1]
        assert [effect.status for effect in replay.effects if isinstance(effect, Record)][-1] == "withdrawn"
    else:
        assert replay.session.top.state == key


@each(QUESTIONS)
def test_skip_goes_on_unless_it_is_about_safety(name, key):
    replay = replay_of(name, key)
    ask = replay.ask
    before = len(replay.effects)
    control(replay, SKIP, "skip")
    rows = [effect for effect in replay.effects[before:] if isinstance(effect, Record)]
    if ask.safety:
        assert SKIP not in {value for say in replay.said for value in buttons_of(say)} or replay.session.top.state == key
        assert [row.status for row in rows if not (ask.free and row.raw == "skip")] == []
    else:
        assert [row.status for row in rows] == ["ok" if means_an_answer(replay_of(name, key), "skip") else "skipped"]


@each(QUESTIONS)
def test_stop_puts_it_aside_with_its_answers_and_go_on_takes_it_up(name, key):
    replay = replay_of(name, key)
    got, trail, works = dict(replay.session.top.got), replay.session.top.trail, bool(replay.ask.caution)
    if means_an_answer(replay, "stop") and STOP not in buttons_of(replay.said[-1]):
        replay.send(Typed("stop"))
        assert Ended("1", "done") in replay.effects
        return
    control(replay, STOP, "stop")
    assert replay.session.aside or not works
    if replay.session.aside:
        assert "hurt" in replay.said[-1].text
        replay.send(Typed("no"))
    assert replay.session.stack == ()
    replay.settle()
    if name == replay.book.home:
        return
    replay.send(Typed("go on"))
    replay.settle()
    if not replay.ways.flow.policy.resumes:  # what was true then may not be now: it starts again
        assert (replay.session.top.flow, replay.session.top.got) == (name, {})
        return
    held = [state for state in trail[-1:] if isinstance(replay.ways.asks[state].kind, Hold)]  # cut short: held again
    here = replay.session.top.state
    assert here in (key, *held)
    assert replay.session.top.got == {state: value for state, value in got.items() if here == key or state not in held}


@each(QUESTIONS)
def test_something_that_hurts_is_heard_and_a_test_it_ends_is_over(name, key):
    replay = replay_of(name, key)
    hears, works = BOOK[name].flow.policy.hears_pain, body_works(BOOK[name].flow)
    free = replay.ask.free
    if not hears or name == replay.book.pain:
        return
    replay.send(Typed("ouch, that really hurts"))
    if free:
        replay.send(Typed("yes"))
    assert replay.session.top.flow == replay.book.pain
    assert replay.session.stack[0].hurt == works


@each(QUESTIONS)
def test_each_label_typed_is_what_its_button_is(name, key):
    for value, data in buttons_of(replay_of(name, key).said[-1]).items():
        tapped, typed = replay_of(name, key), replay_of(name, key)
        label = next((option.label for option in tapped.ask.kind.options if option.value == value), None)
        if label is None:
            continue
        tapped.send(Tapped(data))
        typed.send(Typed(label))
        same = however_given(typed.session) == however_given(tapped.session)
        assert same or (typed.session.top.flow == typed.book.pain and hear_pain(label, body_at_work=False) is Pain.YES), label


@each(QUESTIONS)
def test_its_longest_form_is_within_the_limits(name, key):
    """Every field of a text at its longest: options by their longest value, numbers with unit, words at their limit."""
    ask, ways = BOOK[name].stops[key], ways_of(name)
    assert isinstance(ask, Ask)
    facts = {field: longest(name, field) for text in (ask.say, ask.caution) for field in fields_of(text)
             if isinstance(longest(name, field), float) or ":" not in text}
    text = "\n\n".join(render(part, {**CHECKED, **facts}, NOW, ask.side, ask.kind.unit) for part in (ask.say, ask.caution))
    assert len(text) + len(ways.flow.title) + len(" 99 of 99") + 200 <= TEXT_MOST  # 200: a reason in front


def however_given(session: Session) -> Session:
    """A session without whether its answers were tapped or typed, and without the short question in between."""
    stack = tuple(frame._replace(got={name: value for name, value in frame.got.items() if not name.endswith("_by")})
                  for frame in session.stack)
    last = session.last and session.last._replace(got={})
    return session._replace(aside=None, stack=stack, last=last)


def longest(name: str, field: str) -> Value:
    """The longest a field can be: 500 characters where it is free text or worked out for the occasion."""
    ways = ways_of(name)
    stop = ways.asks.get(field)
    if stop and isinstance(stop.kind, Number):
        return stop.kind.high
    values = [value for value in ways.whole(field) if value is not None]
    numbers = [value for value in values if isinstance(value, float | int)]
    return float(max(numbers)) if numbers else max((str(value) for value in values), key=len).ljust(500, "x")


# pain and safety over the whole book --------------------------------------------------------------------------


LOOKED_AT = sorted({compare.fact for one in BOOK.flows.values() for gate in one.flow.gates for compare in gate.shut.compares()})
"""The facts that gates look at."""


class World:
    """The whole book and what is kept, as pure data: facts that a step leaves and the next one finds."""

    def __init__(self, facts: dict[str, Value], session: Session) -> None:
        self.facts, self.session = facts, session

    def after(self, event: Event) -> tuple[World, list[Effect]]:
        facts, session, effects = dict(self.facts), self.session, list[Effect]()
        happening = event
        for _ in range(60):
            session, done = step(BOOK, session, happening, Known(facts, NOW))
            effects += done
            for effect in done:
                if isinstance(effect, Record) and effect.status == "ok" and effect.value is not None:
                    facts[f"{effect.flow}.{effect.key}"] = effect.value
                elif isinstance(effect, Record) and effect.status == "withdrawn":
                    facts.pop(f"{effect.flow}.{effect.key}", None)
                elif isinstance(effect, Find):
                    facts |= {effect.name: effect.value, f"{effect.name}.today": "yes"}
                    if effect.name == "safety.level":
                        facts["safety.may_open"] = "no"
            if not unsettled(session):
                return World(facts, session), effects
            happening = Settle()
        raise AssertionError("runs in a circle")

    @property
    def ask(self) -> Ask | None:
        stop = BOOK[self.session.top.flow].stops[self.session.top.state] if self.session.stack else None
        return stop if isinstance(stop, Ask) else None

    @property
    def key(self) -> tuple[object, ...]:
        """What decides where it may lead: where everything stands, and what the gates look at."""
        return (tuple((frame.flow, frame.state, frame.paused, frame.hurt, frame.tried) for frame in self.session.stack),
                tuple(tuple((frame.flow, frame.state, frame.hurt) for frame in stack) for stack in self.session.parked[-2:]),
                self.session.aside, tuple(self.facts.get(name) for name in LOOKED_AT))


FLOOR_TESTS = open_tests(Level.NO_LOAD)
LOADED = {name for name, one in BOOK.flows.items() if body_works(one.flow)} - FLOOR_TESTS - {
    gate.first for one in BOOK.flows.values() for gate in one.flow.gates}
"""The flows that squat or load; what a gate lets run first is the warm-up, open wherever floor tests are."""

EXPLORED_MOST = 350
"""Worlds looked at from each beginning."""


def begun_at(level: Level, checked: bool) -> World:
    """A test in progress, at a safety level, checked today or not."""
    parked = tuple((Frame(name, BOOK[name].flow.version, "1", next(iter(BOOK[name].stops)), paused=True),) for name in sorted(LOADED)[:2])
    facts: dict[str, Value] = dict(CHECKED) | {"safety.level": level.value, "safety.checked": level.value, "safety.may_open": "no",
                                               "drill": "control", "about_you.years": 3.0, "safety.level.today": "yes"}
    if not checked:
        facts = {name: value for name, value in facts.items() if not name.endswith(".today")}
    return World(facts, Session(parked=parked, runs=9, idle=True))


def stopped_by_pain(name: str) -> World:
    """A movement just stopped by pain."""
    key = next(key for key, stop in BOOK[name].stops.items() if isinstance(stop, Ask) and stop.caution)
    frame = Frame(name, BOOK[name].flow.version, "1", key, fixed=at(name, key).fixed)
    start = World(dict(CHECKED) | {"drill": "control", "about_you.years": 3.0}, Session((frame,), runs=9))
    return start.after(Typed("ouch, that really hurts"))[0]


BEGINNINGS: dict[str, Callable[[], World]] = {
    **{f"{level.value} {'checked' if checked else 'unchecked'}": partial(begun_at, level, checked)
       for level in Level for checked in (True, False)},
    **{f"{name} in pain": partial(stopped_by_pain, name) for name in sorted(LOADED)}}


def may_load(world: World) -> bool:
    """Whether the safety level allows loaded work: today's check passed, and nothing has been told since against it."""
    return world.facts.get("safety.checked.today") == "yes" and Level(str(world.facts["safety.level"])) is Level.GO


@pytest.mark.parametrize("label", BEGINNINGS)
def test_nothing_leads_from_pain_or_an_unmet_check_to_loaded_work(label):
    """Whatever is typed or tapped from there on, a loaded movement is only ever asked for where it may be."""
    begin = BEGINNINGS[label]()
    seen, waiting = {begin.key}, deque([begin])
    starts = [Tapped(start_payload(name)) for name in NAMES]
    while waiting and len(seen) < EXPLORED_MOST:
        world = waiting.popleft()
        taps = [Tapped(tap.data) for tap in taps_of(world)] if world.session.stack else []
        more = [Typed("go on"), Typed("menu"), *(starts if not world.session.stack or (world.ask and not world.ask.safety) else starts[:3])]
        for event in (*taps, *more):
            after, _ = world.after(event)
            if after.key in seen:
                continue
            seen.add(after.key)
            waiting.append(after)
            ask = after.ask
            if ask and ask.caution and after.session.top.flow in LOADED:
                assert may_load(after), (after.session.top.flow, after.session.top.state, event)
                false_alarm = after.facts.get("pain.stops") == "no"
                assert false_alarm or not label.endswith("in pain"), "a pain stop holds for the day"
            elif ask and ask.caution and after.session.top.flow in FLOOR_TESTS:
                assert after.session.top.flow in open_tests(Level(str(after.facts["safety.level"])))
    assert len(seen) > 20


def taps_of(world: World) -> list:
    from companion.conversation.step import prompt_now

    return [tap for say in prompt_now(BOOK, world.session, Known(world.facts, NOW)) for row in say.buttons for tap in row]


def test_the_words_and_names_used_here_are_there():
    assert LOADED
    assert PARKED not in BOOK.flows
    assert str(Payload("a", 1, "b", "c")) == "a.1.b.c"
