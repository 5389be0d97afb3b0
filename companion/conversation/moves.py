"""The moves of a run: begin, answer, skip, go back, stop for pain, resume. The machine decides each (``Draft.fire``); this module sends and
logs what belongs to it, and keeps the stack of runs."""

from __future__ import annotations

from datetime import datetime, timedelta
from fnmatch import fnmatchcase
from typing import Any, Final

from companion.conversation.asking import ask_again, ask_aside, show, stand_again
from companion.conversation.condition import Value
from companion.conversation.draft import Draft
from companion.conversation.effects import Began, Ended, Record, Reopened
from companion.conversation.flow import END, PARKED, Ask, Do, Tell
from companion.conversation.kinds import Answer, Choice, Hold, Media, Ready, YesNo
from companion.conversation.lapsed import lapsed, shut_since
from companion.conversation.prompt import offered, stop_button
from companion.conversation.session import SAID_AHEAD, Frame, Stack, waiting_beneath
from companion.conversation.table import (
    ANSWER,
    BACK,
    BEGIN,
    ENDED_BY_PAIN,
    ENDINGS,
    GATE_CLOSED,
    IN_PAIN,
    PAIN,
    RESUMED,
    RETURNED,
    SKIP,
    START,
    Move,
)
from companion.conversation.wording import render
from companion.language.passed_on import in_whole_words

SAID_MOST: Final = 80
"""Most characters of a reply about pain that are quoted; our choice."""

SIGN_MOST: Final = 3 * SAID_MOST
"""Most characters kept of a reply about a sign, so that a limit told in it is read whole; our choice."""

ASKED_MOST: Final = 120
"""Most characters of the request a flow was begun with; our choice."""

_TAPPED: Final = (Choice, YesNo, Ready, Media)
"""Kinds that take no words of the person's own."""

BESIDE: Final = "also"
"""The fact of a run that follows another of its flow, for what was told beside that."""

_BY: Final = "_by"
"""The end of the fact that says how a safety question was answered: "tap" or "words"."""
_SAID: Final = "_said"
"""The end of the fact that keeps the words of an answer which say more than it."""


# begin and end ----------------------------------------------------------------------------------------------


def begin(draft: Draft) -> None:
    """Begin the topmost flow, or first the flow that one of its gates needs, or leave it closed."""
    flow = draft.compiled.flow
    fixed = flow.at_start(draft.known_at_start(draft.top)) if flow.at_start else {}
    draft.top = draft.top._replace(fixed=dict(fixed))
    move = draft.fire(BEGIN)
    if not _let_first(draft, move):
        if move.target != GATE_CLOSED:
            draft.top = draft.top._replace(tried=())
            draft.effects.append(Began(draft.top.run, flow.name, flow.version, draft.top.asked[:ASKED_MOST], draft.top.first_run))
        _follow(draft, move)


def _let_first(draft: Draft, move: Move) -> bool:
    """Run the flow that a gate needs first, if the move says so."""
    if move.first:
        draft.top = draft.top._replace(tried=(*draft.top.tried, move.first))
        if not draft.unpark(move.first, over=draft.book[move.first].flow.policy.told):
            draft.push(move.first)
    return bool(move.first)


def begin_anew(draft: Draft) -> None:
    """Give up the topmost run and begin its flow again."""
    before, beside = draft.top, _beside_answers(draft)
    draft.effects.append(Ended(before.run, "left"))
    draft.session = draft.session._replace(stack=draft.session.stack[:-1], last=None)
    draft.push(before.flow, before.asked)
    draft.top = draft.top._replace(got=beside, first_run=before.first_run or before.run)


def _beside_answers(draft: Draft) -> dict[str, Value]:
    """Return what the running flow was begun with, beside its answers."""
    answers = [pattern for patterns in draft.compiled.ahead.gives.values() for pattern in patterns]
    return {name: value for name, value in draft.top.got.items()
            if not any(fnmatchcase(name.removesuffix(end), pattern) for end in ("", _BY, _SAID) for pattern in answers)}


def take_up(draft: Draft) -> None:
    """Resume a paused run: at its question, after it, or not at all."""
    move, briefly = draft.fire(RESUMED), draft.session.briefly
    if not move.first and move.target not in (GATE_CLOSED, ENDED_BY_PAIN) and _lapse(draft):
        return
    draft.session = draft.session._replace(briefly=False)
    if briefly and move.target == draft.top.state and not (move.first or move.passed):
        draft.top = draft.top._replace(paused=False, hurt=False, tried=())
        stand_again(draft, "")
    elif move.target == START:
        begin_anew(draft)
    elif not _let_first(draft, move):
        if move.target not in (GATE_CLOSED, ENDED_BY_PAIN):
            draft.top = draft.top._replace(paused=False, hurt=False, tried=())
        _follow(draft, move)


BEGINS_AGAIN: Final = "What this rests on has changed, so it begins again."


def _lapse(draft: Draft) -> bool:
    """Begin the run anew that can no longer go on as it was begun, the lowest of those that wait for each other; return False where all
    can. One whose gate has shut says so. Questions about pain, signs and what a clinician said are finished first."""
    stack = draft.session.stack
    first = len(stack) - 1
    while first and stack[first - 1].state == f"run_{stack[first].flow}" and not stack[first - 1].paused:
        first -= 1
    over = next((n for n in range(first, len(stack)) if lapsed(draft, stack[n])), None)
    if over is None or any(policy.holds or policy.told for policy in (draft.book[frame.flow].flow.policy for frame in stack[over + 1:])):
        return False
    draft.effects.extend(Ended(frame.run, "left") for frame in stack[over + 1:] if frame.state)
    draft.session = draft.session._replace(stack=stack[:over + 1], aside=None, briefly=False)
    if not shut_since(draft, draft.top):
        draft.say(BEGINS_AGAIN)
    begin_anew(draft)
    return True


def end(draft: Draft, ending: str) -> None:
    """End the topmost run and pass its ending to the flow that ran it, if any."""
    frame = draft.top
    policy = draft.book[frame.flow].flow.policy
    if frame.state:
        draft.effects.append(Ended(frame.run, ending))
    if policy.ends_all and frame.state == END:
        leave_all(draft, draft.session.stack[:-1])
        draft.session = draft.session._replace(stack=(frame,))
    under, back = draft.session.stack[:-1], True
    if under and under[-1].state == f"run_{frame.flow}":
        stop = draft.book[under[-1].flow].stops.get(under[-1].state)
        back = stop is None or stop.back
        got = {**under[-1].got, under[-1].state: ending}
        under = (*under[:-1], under[-1]._replace(got=got, trail=()))
    last = frame if ending == "done" and frame.trail and policy.reopens and back else None
    idle = draft.session.idle or (not under and policy.quiet)
    draft.session = draft.session._replace(stack=under, aside=None, last=last, ended=draft.known.now.isoformat(), idle=idle,
                                           briefly=policy.beside)


def leave_all(draft: Draft, running: Stack) -> None:
    """Give up these runs and all that are parked, but for the questions about signs and pain: whatever comes first, they stay parked."""
    every = tuple(frame for stack in (*draft.session.parked, running) for frame in stack)
    kept = tuple(frame for frame in every if frame.flow in (draft.book.signs, draft.book.pain))
    draft.effects.extend(Ended(frame.run, "left") for frame in every if frame.state and frame not in kept)
    draft.session = draft.session._replace(stack=(), parked=(kept,) if kept else ())


def after_run(draft: Draft) -> None:
    """Continue after a ``Run`` whose flow has ended, or end where a gate has shut meanwhile."""
    if _lapse(draft):
        return
    move = draft.fire(RETURNED)
    if not _let_first(draft, move):
        draft.top = draft.top._replace(tried=())
        _follow(draft, move)


def _follow(draft: Draft, move: Move, after: float = 0) -> None:
    """Make a move: carry out the steps passed, then ask, run or end."""
    facts = draft.facts()
    for step in move.passed:
        if step.only_if.holds(facts):
            _pass(draft, step, facts)
    if move.target in ENDINGS:
        closing = ENDINGS[move.target] == "done" and any(
            isinstance(step, Tell) and step.last and step.only_if.holds(facts) for step in draft.compiled.flow.steps)
        if ENDINGS[move.target] == "done":
            draft.top = draft.top._replace(state=move.target)
        counts = move.target == GATE_CLOSED and draft.top.hurt  # pain that turned out not to be of it
        end(draft, "left" if counts else ENDINGS[move.target])
        draft.session = draft.session._replace(closing=draft.session.closing or closing)
        return
    draft.top = draft.top._replace(state=move.target)
    draft.session = draft.session._replace(aside=None, refused=0, told=(), room=0)
    stop = draft.compiled.stops[move.target]
    if isinstance(stop, Ask):
        _arrive(draft, stop, after)
    elif stop.flow != PARKED:
        draft.push(stop.flow, render(stop.asked, facts, draft.known.now))
    elif draft.session.parked:
        draft.unpark()


def _arrive(draft: Draft, ask: Ask, after: float) -> None:
    """Ask a question, or take the answer that was confirmed before; past a movement nothing said ahead of it counts unseen."""
    if not draft.top.noted:
        show(draft, after=after)
        return
    if ask.caution or after or isinstance(ask.kind, Ready):
        draft.top = draft.top._replace(noted={SAID_AHEAD + name.removeprefix(SAID_AHEAD): value for name, value in draft.top.noted.items()})
    said = noted(draft, ask.key)
    if said is None:
        show(draft, after=after)
    else:
        answer(draft, said, sure=True)


def noted(draft: Draft, name: str) -> Answer | None:
    """Return what was said ahead of a question as its answer, if it can still be given there. ``name``: its state, as noted."""
    value, ask = draft.top.noted.get(name), draft.ask
    if isinstance(value, str) and (told := ask.kind.told(value)):
        return told
    if value is None or any(option.value == value and not option.only_if.holds(draft.facts()) for option in ask.kind.options):
        return None
    said = value if ask.free else "said before" if isinstance(value, str) else f"{value:g} {ask.kind.unit}, said before"
    return Answer(value, str(said), ask.kind.unit)


def told_of_later(draft: Draft, text: str) -> bool:
    """Note what a sentence tells for a safety question that is to come as things are, such as who cleared them, and ask the open one
    again; return False if it tells nothing for one."""
    facts = draft.facts()
    key = next((key for key, ask in to_come(draft) if ask.safety and ask.kind.told(text) and ask.only_if.holds(facts)), None)
    if key is None or not draft.ask.safety:
        return False
    draft.top = draft.top._replace(noted={**draft.top.noted, key: text})
    ask_again(draft, "I come to that in a moment.")
    return True


def to_come(draft: Draft) -> list[tuple[str, Ask]]:
    """Return the questions after the open one, with their keys, in the order they are written."""
    asks = [(key, stop) for key, stop in draft.compiled.stops.items() if isinstance(stop, Ask)]
    return asks[next(at for at, (key, _) in enumerate(asks) if key == draft.top.state) + 1 :]


def told_ahead(draft: Draft, text: str, told: Value | None = None) -> dict[str, Value]:
    """Return the first question to come that a message answers in words, with the answer, to be confirmed there; ``told``: not with this
    one, which it gave here."""
    for key, stop in to_come(draft):
        if not isinstance(stop.kind, _TAPPED):
            read = stop.kind.read(text, draft.context)
            if isinstance(read, Answer) and read.value != told:
                return {SAID_AHEAD + key: read.value}
    return {}


def _pass(draft: Draft, step: Tell | Do, facts: dict[str, Value]) -> None:
    now = draft.known.now
    if isinstance(step, Tell):
        text = render(step.say, facts, now, step.side)
        if text.strip():
            draft.say(text, must_arrive=step.must_arrive, page=step.waits and draft.compiled.flow.policy.pages,
                      picture=render(step.picture, facts, now, step.side),
                      buttons=offered(step.offers, facts, now))
        return
    written: dict[str, Any] = {
        name: render(value, facts, now, step.side) if isinstance(value, str) else value
        for name in type(step.effect).__match_args__ for value in (getattr(step.effect, name),)}
    if "run" in written:
        written["run"] = draft.top.run
    effect = type(step.effect)(**written)
    if effect not in draft.effects:  # what stands between several questions is noted once where they are passed over
        draft.effects.append(effect)


# answer -----------------------------------------------------------------------------------------------------


def answer(draft: Draft, given: Answer, sure: bool = False) -> None:
    """Take an answer; a possible but unusual one is confirmed once."""
    ask, frame = draft.ask, draft.top
    if given.value in ask.hurts:
        hurt(draft, given.raw)
        return
    if not sure and ask.kind.unusual(given.value):
        ask_aside(draft, "unusual", given.raw)
        return
    name = draft.log_name(ask)
    kept = str(given.value) if "self_harm" in ask.signs else given.raw  # what is said of it is not kept
    record(draft, ask, kept, given.value, given.unit)
    got = {**frame.got, name: given.value} | ({name + _BY: "tap" if given.tapped else "words"} if ask.safety else {})
    got |= {name + _SAID: given.raw} if given.more else {}
    ahead = {**frame.noted, **told_ahead(draft, given.raw, given.value)} if given.beside else frame.noted
    _answered(draft, frame._replace(got=got, trail=(*frame.trail, frame.state), noted=ahead))
    told_of_another(draft, "" if given.tapped else given.raw)
    _follow(draft, draft.fire(ANSWER), _hold(draft, ask))


def skip(draft: Draft) -> None:
    """Continue without an answer; a safety question is not skipped."""
    ask, frame = draft.ask, draft.top
    if ask.safety:
        ask_again(draft, draft.fire(SKIP).refused)
        return
    name = draft.log_name(ask)
    record(draft, ask, "", None, status="skipped")
    got = {key: value for key, value in frame.got.items() if key not in (name, name + _BY, name + _SAID)}
    _answered(draft, frame._replace(got=got, trail=(*frame.trail, frame.state)))
    _follow(draft, draft.fire(SKIP))


def _answered(draft: Draft, frame: Frame) -> None:
    draft.session = draft.session._replace(stack=(*draft.session.stack[:-1], frame), last=None, more=())


def told_of_another(draft: Draft, text: str) -> bool:
    """Let the running flow run once more, after this time, for each thing told beside what it is asked about, such as a second pain, in a
    message ("" for a tap) or in the words it began with; return False where nothing else is. There it begins with the words that tell of
    it, and with what they answer."""
    frame, flow = draft.top, draft.compiled.flow
    if not flow.another or not (told := flow.another(frame.got, text)):
        return False
    rest, begun_with = draft.session.stack[:-1], _beside_answers(draft)
    waits = waiting_beneath(draft.session.stack)
    more: list[Frame] = []
    for words, noted in told:
        if all(one.noted != noted for one in waits):
            draft.push(flow.name)
            more.insert(0, draft.top._replace(got={**begun_with, "said": in_whole_words(words, SAID_MOST), BESIDE: "yes"}, noted=noted))
    at = len(rest) - len(waits)
    draft.session = draft.session._replace(stack=(*rest[:at], *more, *rest[at:], frame))
    return True


def move_again(draft: Draft) -> None:
    """Make the last move of the run again, where what it rests on has changed: what it passes is noted anew, and a question that is not
    left any more is passed over."""
    draft.top = draft.top._replace(state=draft.top.trail[-1] if draft.top.trail else "")
    _follow(draft, draft.fire(ANSWER if draft.top.state else BEGIN))


def _hold(draft: Draft, ask: Ask) -> float:
    """Send the start and end of a timed hold; return the seconds after which the next question is asked."""
    hold = ask.kind
    if not isinstance(hold, Hold):
        return 0
    facts, now = draft.facts(), draft.known.now
    seconds = hold.held(facts)
    words = {**facts, "seconds": seconds}
    over = hold.count_in + seconds
    stop = stop_button(draft.compiled.flow, ask.key)
    if hold.count_in:
        draft.say(f"Get into place. It starts in {hold.count_in} seconds.", buttons=stop)
    draft.say(render(hold.go, words, now, ask.side), after=hold.count_in, buttons=stop)
    draft.say(render(hold.over, words, now, ask.side), after=over)
    return over + 1


def record(draft: Draft, ask: Ask, raw: str, value: Value | None, unit: str = "", status: str = "ok") -> None:
    """Note an answer, or that there is none, for the log."""
    flow = draft.compiled.flow
    draft.effects.append(Record(draft.top.run, flow.name, flow.version, draft.log_name(ask), ask.side, raw, value, unit, status,
                                draft.worded(ask.method, ask.side), draft.worded(ask.placement, ask.side)))


# back -------------------------------------------------------------------------------------------------------


def back(draft: Draft) -> None:
    """Take the last answer back and ask its question again."""
    if refused := take_back(draft):
        ask_again(draft, refused)
    else:
        show(draft, "Back one.")


def cut_hold(draft: Draft) -> None:
    """Take a timed hold back that a message has cut short: it is not held, so nothing is asked of it, and it is offered again."""
    if draft.session.stack and draft.hold_runs:
        withdraw(draft, draft.top.trail[-1])


def take_back(draft: Draft) -> str:
    """Return to the last question answered, with its answer withdrawn; return the reason if there is none."""
    move = draft.fire(BACK)
    if move.refused:
        return move.refused
    if not draft.top.trail:
        _reopen(draft, move)
        move = draft.fire(BACK)
    withdraw(draft, move.target)
    return ""


def withdraw(draft: Draft, state: str) -> None:
    """Return to a question, with its answer withdrawn."""
    frame, ask = draft.top, draft.compiled.stops[state]
    assert isinstance(ask, Ask)
    draft.top = frame._replace(state=state, trail=frame.trail[:-1])
    name = draft.log_name(ask)
    record(draft, ask, "", None, status="withdrawn")
    draft.top = draft.top._replace(got={key: value for key, value in frame.got.items() if key not in (name, name + _BY, name + _SAID)})


def _reopen(draft: Draft, move: Move) -> None:
    """Put the run that has just ended on top again; the flow that ran it, or that it was a gate of, waits for it again."""
    last, waits = draft.session.last, draft.top
    assert last is not None
    got = {name: value for name, value in waits.got.items() if name != f"run_{last.flow}"}
    waits = waits._replace(state="" if move.target == START else move.target, got=got,
                           tried=tuple(flow for flow in waits.tried if flow != last.flow))
    draft.effects.append(Reopened(last.run))
    draft.session = draft.session._replace(stack=(*draft.session.stack[:-1], waits, last), last=None, aside=None)


# pain -------------------------------------------------------------------------------------------------------


JUST_AFTER: Final = timedelta(minutes=5)
"""Time after a movement in which pain is taken as pain in it, unasked; our choice."""

STILL_IN_IT: Final = timedelta(minutes=30)
"""Time without a word in a movement in progress after which it is asked whether it hurt in that; our choice: no set and rest lasts so
long."""


def _within(draft: Draft, time: timedelta, since: str) -> bool:
    return bool(since) and draft.known.now - datetime.fromisoformat(since) <= time


def hurt(draft: Draft, text: str) -> None:
    """Stop for pain: log the reply unscored and start the pain questions, with the test in which it hurt. A test finished just before
    counts too; of one in progress since long ago it is asked."""
    last, at, told = draft.session.last, draft.session.at, {"said": in_whole_words(text, SAID_MOST), "hurt_in": ""}
    if draft.session.stack and isinstance(draft.compiled.stops.get(draft.top.state), Ask):
        if text:
            record(draft, draft.ask, text, None, status="in_pain")
        works = draft.fire(PAIN).target == IN_PAIN
        if works:
            told |= {"hurt_in": draft.top.flow, "long_since": "yes" if at and not _within(draft, STILL_IN_IT, at) else ""}
        draft.top = draft.top._replace(paused=True, hurt=works)
    if last and not told["hurt_in"] and _within(draft, JUST_AFTER, draft.session.ended) and (
            move := draft.book[last.flow].fire(PAIN, last.state, {})):
        draft.effects.append(Ended(last.run, ENDINGS[move.target]))
        told |= {"hurt_in": last.flow, "just_done": "yes"}
    draft.session = draft.session._replace(last=None)
    draft.push(draft.book.pain)
    draft.top = draft.top._replace(got={name: value for name, value in told.items() if value})
