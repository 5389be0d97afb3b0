"""One pure step: a session and what happened give the next session and the effects wanted.

What a typed reply means is decided in this order: pain; the short question in between, if there is one; "stop" while
the body works; an answer of this question said exactly; a command that starts a flow; the control words stop, back, again,
help and skip, said exactly; the answer said otherwise; and last a control word said nearly right, except where safety
is asked about. In the menu a whole sentence that starts a flow comes before the control words.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.conversation.condition import ALWAYS
from companion.conversation.effects import Effect, Ended, Say
from companion.conversation.events import Edited, Happening, Invite, Sent, Settle, Tapped, Typed
from companion.conversation.flow import Ask, Known, Offer
from companion.conversation.kinds import Answer, Ears, Unclear, pick
from companion.conversation.moves import Draft
from companion.conversation.prompt import ASIDE, BACK, SKIP, STOP, offered, read_payload, read_start
from companion.conversation.registry import Book
from companion.conversation.session import Frame, Session
from companion.conversation.wording import render
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear, normalise

AWAY: Final = timedelta(hours=3)
"""Who writes after so long is told where they were before anything counts as an answer; our choice."""


class Taken(NamedTuple):
    """What a step gives: the session after it and its effects, in order."""

    session: Session
    effects: tuple[Effect, ...]


def step(book: Book, session: Session, event: Happening, known: Known) -> Taken:
    """Take one event. Pure: the same arguments give the same result; nothing is kept or sent here.

    While ``unsettled(result.session)``, keep the effects, gather ``known`` anew and step again with ``Settle()``.
    """
    draft = Draft(book, session, known, [])
    match event:
        case Settle():
            _settle(draft)
        case Invite():
            _invite(draft, event)
        case _ if _outdated(draft) or _returns(draft, event):
            pass
        case Typed():
            _typed(draft, event.text)
        case Tapped():
            _tapped(draft, event.data)
        case Sent():
            _sent(draft, event)
        case Edited():
            _edited(draft, event.text)
    if not isinstance(event, Settle | Invite):
        draft.session = draft.session._replace(at=known.now.isoformat())
    return Taken(draft.session, tuple(draft.effects))


def unsettled(session: Session) -> bool:
    """Whether the conversation has somewhere to go before it waits for the person."""
    if not session.stack:
        return not session.idle
    return not session.top.state or session.top.paused or session.top.state.startswith("run_")


def prompt_now(book: Book, session: Session, known: Known) -> tuple[Say, ...]:
    """What the person would be looking at now, for a screen that opens in the middle of a conversation."""
    draft = Draft(book, session, known, [])
    draft.ask_again()
    return tuple(effect for effect in draft.effects if isinstance(effect, Say))


# going on by itself -----------------------------------------------------------------------------------------


def _settle(draft: Draft) -> None:
    if not draft.session.stack:
        draft.push(draft.book.home)
    elif _outdated(draft):
        pass
    elif draft.top.paused:
        draft.take_up()
    elif not draft.top.state:
        draft.begin()
    else:
        draft.after_run()


def _outdated(draft: Draft) -> bool:
    """Whether the open run is of a flow version that can't go on: then it starts again, its answers kept in the log."""
    if not draft.session.stack:
        return False
    frame = draft.top
    compiled = draft.book.flows.get(frame.flow)
    fits = compiled is not None and (frame.version == compiled.flow.version or frame.version in compiled.flow.compatible)
    if compiled is not None and fits and (not frame.state or frame.state in compiled.stops):
        return False
    draft.say("This part has changed since you began it, so it starts again. Your answers are kept.")
    draft.end("left")
    if compiled:
        draft.push(frame.flow)
    return True


def _returns(draft: Draft, event: Happening) -> bool:
    """Whether somebody comes back after hours to a question in the middle of something: then they are asked first."""
    session = draft.session
    if not session.at or not session.stack or session.aside or not draft.compiled.flow.counted or not draft.top.trail:
        return False
    if draft.known.now - datetime.fromisoformat(session.at) < AWAY:
        return False
    if isinstance(event, Typed) and (_heard_pain(draft, event.text) or draft.book.command(event.text)):
        return bool(draft.effects)
    draft.aside("return")
    return True


def _invite(draft: Draft, invite: Invite) -> None:
    compiled = draft.book[invite.flow]
    flow, now = compiled.flow, draft.known.now
    fixed = flow.at_start(replace(draft.known, asked=invite.asked)) if flow.at_start else {}
    facts = compiled.facts_of(draft.known.facts, fixed, {})
    if invite.missed:
        draft.say(render(flow.missed, facts, now))
        return
    buttons = offered(flow.invites or (Offer(flow.title, flow.name, invite.asked),), facts, now)
    draft.say(render(flow.invite, facts, now), buttons=buttons, must_arrive=True)


# what a person sent -----------------------------------------------------------------------------------------


def _typed(draft: Draft, text: str) -> None:
    if _heard_pain(draft, text):
        return
    heard = hear(text, strict=True)
    if draft.session.aside:
        _aside_answered(draft, text, heard)
    elif not draft.session.stack:
        _from_idle(draft, text)
    elif heard is Phrase.STOP and (draft.works or draft.ask.free):
        _control(draft, heard)
    elif _is_option(draft, text):
        _read(draft, text)
    elif (meant := _MEANT.fullmatch(normalise(text))) and not draft.ask.free:
        _corrected(draft, text, meant[1])
    elif (flow := draft.book.command(text)) and (not draft.ask.free or text.lstrip().startswith("/")):
        _start(draft, flow)
    elif draft.top.flow == draft.book.home and (said := draft.book.sentence(text, draft.known.facts)):
        _start(draft, *said)
    elif heard in _CONTROLS and not draft.ask.kind.claims(text, draft.ears) and (
            not draft.ask.free or (heard is Phrase.SKIP and not draft.ask.safety)):
        _control(draft, heard)
    else:
        _read(draft, text)


def _is_option(draft: Draft, text: str) -> bool:
    """Whether a reply is, word for word, one of the answers of the waiting question."""
    return isinstance(pick(text, draft.ask.kind.options, replace(draft.ears, strict=True)), Answer)


def _heard_pain(draft: Draft, text: str) -> bool:
    """Whether the reply led to the pain questions, or to asking whether something hurt."""
    stack = draft.session.stack
    if (stack and not draft.compiled.flow.hears_pain) or draft.book.brings_code(text):
        return False
    asking = draft.ask if stack and draft.top.state in draft.compiled.stops else None
    pain = hear_pain(text, body_at_work=bool(asking and draft.works))
    aside = draft.session.aside
    free = asking is not None and asking.free and aside is None
    if pain is Pain.YES and not free:
        draft.hurt(text)
        return True
    if pain is Pain.NO or aside is not None or (asking and _is_option(draft, text)) or (free and pain is Pain.ASK and not draft.ask.doubts):
        return False
    if not free and draft.book.command(text):  # such as "how it went": what is asked for by name leaves nothing unsure
        return False
    draft.aside("ache", text)
    return True


def _aside_answered(draft: Draft, text: str, heard: Phrase | None) -> None:
    aside = draft.session.aside
    assert aside is not None
    read = pick(text, draft.aside_options(), Ears(strict=True))
    decided = {Phrase.YES: "yes", Phrase.NO: "no"}.get(heard) if heard else None
    if isinstance(read, Answer):
        _aside_decided(draft, str(read.value))
    elif decided and any(option.value == decided for option in draft.aside_options()):
        _aside_decided(draft, decided)
    elif heard is Phrase.STOP and aside.about == "unusual":
        draft.session = draft.session._replace(aside=None)
        _control(draft, heard)
    elif heard is Phrase.STOP:
        draft.session = draft.session._replace(aside=None)
        draft.park()
    elif aside.about == "unusual" and isinstance(value := draft.ask.kind.read(text, draft.ears), Answer):
        before = draft.ask.kind.read(aside.text, draft.ears)
        draft.session = draft.session._replace(aside=None)
        draft.answer(value, sure=isinstance(before, Answer) and before.value == value.value)
    else:
        draft.show_aside("Please tap one of these, or type its words.")


def _aside_decided(draft: Draft, decided: str) -> None:
    aside = draft.session.aside
    assert aside is not None
    draft.session = draft.session._replace(aside=None)
    match aside.about, decided:
        case "unusual", "yes":
            read = draft.ask.kind.read(aside.text, draft.ears)
            if isinstance(read, Answer):
                draft.answer(read, sure=True)
        case "unusual", _:
            draft.ask_again("Then once more.")
        case "return", "go_on":
            draft.session = draft.session.with_top(draft.top._replace(paused=True))  # its gates may have shut meanwhile
        case "return", "again":
            draft.push_again()
        case "return", _:
            draft.say("Left as it is; the answers so far are kept.")
            draft.end("left")
        case _, "yes" | "unsure":
            draft.hurt(aside.text)
        case "stop", _:
            draft.park()
        case _ if not draft.session.stack:
            _from_idle(draft, "menu")
        case _ if draft.ask.free:
            _read(draft, aside.text)
        case _:
            draft.ask_again("All right. Nothing says you must go on: “stop” ends it for today.")


_GREETINGS: Final = frozenset(("hi", "hello", "hey", "hi there", "hello there", "hey there", "good morning", "good evening"))
_THANKS: Final = frozenset(("thanks", "thank you", "thx", "ta", "cheers", "thanks a lot", "many thanks", "ok", "okay", "ok thanks",
                            "okay thanks", "ok thank you", "great", "cool", "good", "nice", "perfect", "got it", "will do", "alright",
                            "all right", "fine", "understood", "\N{THUMBS UP SIGN}"))
"""Said to a message that asks nothing, such as the evening before a squat day."""
GOOD: Final = "Good. “Menu” shows what there is, whenever you like."
_CONTROLS = (Phrase.STOP, Phrase.BACK, Phrase.AGAIN, Phrase.HELP, Phrase.SKIP)


def _control(draft: Draft, heard: Phrase) -> None:
    match heard:
        case Phrase.STOP if draft.works:
            draft.aside("stop")
        case Phrase.STOP:
            draft.park()
        case Phrase.BACK:
            draft.back()
        case Phrase.SKIP:
            draft.skip()
        case Phrase.AGAIN:
            draft.ask_again()
        case _:
            draft.say("Tap a button or type your answer. You can also say: back, skip, again, stop, menu. "
                      "If anything hurts, say so at any time.")
            draft.ask_again()


def _from_idle(draft: Draft, text: str) -> None:
    if draft.book.resumes(text) and draft.unpark():
        return
    if flow := draft.book.command(text):
        _start(draft, flow)
    elif said := draft.book.sentence(text, draft.known.facts):
        _start(draft, *said)
    elif draft.session.idle and normalise(text).strip(" .!") in _THANKS:
        draft.say(GOOD)
    else:
        draft.session = draft.session._replace(idle=False, aside=None)


def _start(draft: Draft, flow: str, asked: str = "") -> None:
    """Begin a flow by name: what runs is parked first; a parked run of the same flow goes on, unless this one is asked for
    something of its own."""
    running = draft.session.stack
    if running and draft.compiled.flow.holds and not draft.book[flow].flow.always and flow not in draft.ask.lets:
        draft.ask_again("These questions come first.")
        return
    if asked and draft.session.stack and draft.top.flow == flow:
        draft.end("left")
        running = draft.session.stack
    if any(frame.flow == flow and _over(draft, frame) for frame in running):
        while draft.session.stack:
            draft.end("left")
        running = ()
    if any(frame.flow == flow for frame in running) and not (flow == draft.book.home and len(running) > 1):
        draft.ask_again("This question first; then say that again." if asked else "You are in the middle of it.")
        return
    others = tuple(frame for frame in running if frame.flow != draft.book.home)
    if others:
        draft.park(f"{draft.book[others[-1].flow].flow.title} waits; say “go on” afterwards to pick it up.")
    over = tuple(stack for stack in draft.session.parked if stack[0].flow == flow and _over(draft, stack[0]))
    draft.effects.extend(Ended(frame.run, "left") for stack in over for frame in stack if frame.state)
    parked = tuple(stack for stack in draft.session.parked if stack not in over)
    draft.session = draft.session._replace(stack=(), parked=parked, aside=None)
    if asked or not draft.unpark(flow):
        draft.push(flow, asked)


def _over(draft: Draft, frame: Frame) -> bool:
    """Whether a gate has shut on a run since it began: then it is not taken up but begun anew, and its gates say what is to
    be said."""
    facts = draft.facts(frame)
    return any(gate.shut.holds(facts) and not gate.first for gate in draft.book[frame.flow].flow.gates)


_MEANT: Final = re.compile(
    r"(?:no,? |oh,? |oops,? |sorry,? |wait,? )*(?:i meant?|i mean to say|make (?:that|it)|should (?:be|have been)|correction:?|"
    r"it was(?: really| actually)?|change (?:that|it) to)(?: to say)?:? (.+)")


def _corrected(draft: Draft, text: str, meant: str) -> None:
    """"I meant 12": the last answer is taken back and this one given, where it is one; else nothing changes."""
    was = draft.session, list(draft.effects)
    if draft.take_back() and isinstance(read := draft.ask.kind.read(meant, draft.ears), Answer):
        draft.answer(replace(read, raw=text))
        return
    draft.session, draft.effects = was
    _read(draft, text)


def _read(draft: Draft, text: str) -> None:
    ask = draft.ask
    read = ask.kind.read(text, draft.ears)
    if isinstance(read, Answer):
        offered = {option.value for option in ask.kind.options if not option.only_if.holds(draft.facts())}
        if not (isinstance(read.value, str) and read.value in offered):
            draft.answer(read)
            return
        read = Unclear("That is not on offer just now.")
    near = None if ask.safety or ask.free or ask.kind.claims(text, draft.ears) else hear(text)
    if not ask.free and (said := draft.book.sentence(text, draft.known.facts)):
        _start(draft, *said)
    elif normalise(text).strip(" .!") in _GREETINGS:
        draft.ask_again()
    elif draft.top.flow == draft.book.home and normalise(text).strip(" .!") in _THANKS:
        draft.say(GOOD)
    elif draft.top.flow == draft.book.home and (flow := draft.book.near_command(text)):
        _start(draft, flow)
    elif near in _CONTROLS:
        _control(draft, near)
    else:
        draft.ask_again(f"{read.reason} {ask.kind.example(draft.ears)}")


def _tapped(draft: Draft, data: str) -> None:
    if (start := read_start(data)) and start[0] in draft.book.flows:
        _start(draft, *start)
        return
    payload, stack = read_payload(data), draft.session.stack
    here = payload is not None and stack and payload.flow == draft.top.flow and payload.version == draft.top.version
    aside = draft.session.aside
    if payload and aside and payload.state.endswith(ASIDE) and (
            (here and payload.state == draft.top.state + ASIDE) or not stack) and any(
            option.value == payload.value for option in draft.aside_options()):
        _aside_decided(draft, payload.value)
    elif payload and payload.value == STOP and stack and draft.works:
        draft.aside("stop")  # a stop counts from any button, however old
    elif payload and here and payload.state == draft.top.state and not aside:
        _chosen(draft, draft.ask, payload.value)
    else:
        draft.ask_again("That button belongs to an earlier question; nothing has changed.")


def _chosen(draft: Draft, ask: Ask, value: str) -> None:
    if value in (SKIP, BACK, STOP):
        _control(draft, {SKIP: Phrase.SKIP, BACK: Phrase.BACK, STOP: Phrase.STOP}[value])
        return
    for option in ask.kind.options:
        if option.value == value and (option.only_if == ALWAYS or option.only_if.holds(draft.facts())):
            meant = ask.kind.tapped(option, draft.ears)
            if isinstance(meant, Answer):
                draft.answer(meant)
            else:
                draft.ask_again(meant.reason)
            return
    draft.ask_again("That button is not one of mine; nothing has changed.")


def _sent(draft: Draft, sent: Sent) -> None:
    if sent.caption and _heard_pain(draft, sent.caption):
        return
    stack, aside = draft.session.stack, draft.session.aside
    if not stack and not aside:
        _from_idle(draft, "menu")
    elif stack and not aside and (taken := draft.ask.kind.take(sent.kind, sent.ref)):
        draft.answer(taken)
    else:
        what = {"other": "that"}.get(sent.kind, f"a {sent.kind}" if sent.kind != "audio" else "a sound")
        example = f" {draft.ask.kind.example(draft.ears)}" if stack and not aside else ""
        draft.ask_again(f"I can't take {what} as an answer here.{example}")


def _edited(draft: Draft, text: str) -> None:
    if not _heard_pain(draft, text):
        draft.ask_again("An edited message does not change your answer. To correct the last one, say “back”.")
