"""One pure step: from a session and an event to the next session and the effects.

``step`` continues by itself, or passes a message of the person to ``replies``.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.conversation.answers import what_stands
from companion.conversation.asking import ask_again, ask_aside
from companion.conversation.draft import Draft
from companion.conversation.effects import Effect, Say
from companion.conversation.events import Edited, FilmRead, Happening, Invite, Sent, Settle, Tapped, Typed, words_in
from companion.conversation.films import film_read
from companion.conversation.flow import Known, Offer
from companion.conversation.invitations import answers_invitation
from companion.conversation.moves import after_run, begin, end, hurt, take_up
from companion.conversation.parking import interrupt, lay_aside
from companion.conversation.prompt import in_one_line, offered, read_payload, read_start
from companion.conversation.registry import Book
from companion.conversation.replies import edited, sent, tapped, typed
from companion.conversation.reported import heard_out, heard_together
from companion.conversation.session import Session
from companion.conversation.signs import heard_sign
from companion.conversation.wording import render
from companion.language.act_rules import matches
from companion.language.clauses import flat
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear

AWAY: Final = timedelta(hours=3)
"""Time away after which a person is first told where they were, before a message counts as an answer; our choice."""


class Taken(NamedTuple):
    """The outcome of a step: the next session, and the effects in order."""

    session: Session
    effects: tuple[Effect, ...]


def step(book: Book, session: Session, event: Happening, known: Known) -> Taken:
    """Take one event. Pure: the same arguments give the same result; nothing is stored or sent here.

    While ``unsettled(result.session)``, store the effects, gather ``known`` again and step with ``Settle()``.
    """
    draft = Draft(book, session, known, [])
    match event:
        case Settle():
            _settle(draft)
        case Invite():
            _invite(draft, event)
        case FilmRead():
            film_read(draft, event)
        case _ if _outdated(draft, event) or _returns(draft, event):
            pass
        case Typed():
            typed(draft, event.text)
            heard_together(draft, session, event.text)
        case Tapped():
            tapped(draft, event.data)
        case Sent():
            sent(draft, event)
        case Edited():
            edited(draft, event.text)
    if not isinstance(event, Settle | Invite | FilmRead):
        draft.session = draft.session._replace(at=known.now.isoformat())
    return Taken(draft.session, tuple(draft.effects))


def unsettled(session: Session) -> bool:
    """True if the conversation continues by itself before it waits for the person."""
    if session.closing:
        return True
    if not session.stack:
        return not session.idle
    return not session.top.state or session.top.paused or session.top.state.startswith("run_")


def interrupted(book: Book, session: Session, known: Known) -> Session:
    """Return the session with the open question paused, so that another flow can run first; the question is asked again afterwards."""
    if not session.stack or session.top.paused or not session.top.state or session.top.state.startswith("run_"):
        return session
    compiled, draft = book.flows.get(session.top.flow), Draft(book, session, known, [])
    if compiled is None or session.top.state not in compiled.stops:
        return session.with_top(session.top._replace(paused=True))  # of a version that is gone: begun anew when it is taken up
    interrupt(draft)
    return draft.session


def prompt_now(book: Book, session: Session, known: Known, before: str = "") -> tuple[Say, ...]:
    """Return the open question as messages, with a line before it: for a screen that opens in the middle of a conversation, or after a
    long silence."""
    draft = Draft(book, session, known, [])
    ask_again(draft, before)
    return tuple(effect for effect in draft.effects if isinstance(effect, Say))


def stands_again(book: Book, session: Session, known: Known) -> str:
    """Return the open question in one line, as it stands after an answer to something else."""
    draft = Draft(book, session, known, [])
    return in_one_line(draft.compiled, draft.top, draft.facts(), known.now)


# going on by itself -----------------------------------------------------------------------------------------


def _settle(draft: Draft) -> None:
    if draft.session.closing:
        _close(draft)
    elif not draft.session.stack and _asked_first(draft):
        pass
    elif not draft.session.stack:
        draft.push(draft.book.first(draft.known.facts))
    elif _outdated(draft, Settle()):
        pass
    elif draft.top.paused:
        take_up(draft)
    elif not draft.top.state:
        begin(draft)
    else:
        after_run(draft)


def _close(draft: Draft) -> None:
    """Let what waited go on to its end, or to its next question, which is parked, without a word: nothing follows what was said last."""
    held = (draft.book.signs, draft.book.pain, draft.book.home, draft.book.crisis)
    if not draft.session.stack or draft.top.flow in held:
        lay_aside(draft)
        return
    before = len(draft.effects)
    draft.session = draft.session._replace(closing=False)
    _settle(draft)
    draft.effects[before:] = [effect for effect in draft.effects[before:] if not isinstance(effect, Say)]
    draft.session = draft.session._replace(closing=True)
    if draft.session.stack and not unsettled(draft.session._replace(closing=False)):
        draft.top = draft.top._replace(paused=True)
        lay_aside(draft)


def _asked_first(draft: Draft) -> bool:
    """Ask what was left open about signs or pain when something more urgent came, after what stands; return False if nothing was."""
    if not draft.session.asks_first:
        return False
    if not (draft.unpark(draft.book.signs, over=True) or draft.unpark(draft.book.pain, over=True)):
        draft.session = draft.session._replace(asks_first=False)
        return False
    if stands := what_stands(draft):
        draft.say(stands, must_arrive=True)
    return True


def _outdated(draft: Draft, event: Happening) -> bool:
    """Restart the open run if the flow has changed too much for it to continue; its answers stay in the log. Returns True then. Pain
    and other signs in the message come first; doubtful pain words too, since their question is gone, and so is one whether something hurt,
    unless this says that nothing did."""
    if not draft.session.stack:
        return False
    frame = draft.top
    compiled = draft.book.flows.get(frame.flow)
    fits = compiled is not None and (frame.version == compiled.flow.version or frame.version in compiled.flow.compatible)
    if compiled is not None and fits and (not frame.state or frame.state in compiled.stops):
        return False
    aside, text = draft.session.aside, words_in(event)
    end(draft, "left")
    if compiled:
        draft.push(frame.flow)
    if heard_sign(draft, text):
        return True
    if hear_pain(text, body_at_work=True) is not Pain.NO:
        hurt(draft, text)
    elif aside and aside.if_hurt and not _says_no(event):
        hurt(draft, aside.text)
    else:
        draft.say("This part has changed since you began it, so it starts again. Your answers are kept.")
    return True


def _says_no(event: Happening) -> bool:
    """True if an event answers no, by a tap or in words."""
    if isinstance(event, Tapped):
        payload = read_payload(event.data)
        return payload is not None and payload.value == "no"
    text = words_in(event)
    return hear(text, strict=True) is Phrase.NO or matches("nothing_hurts", flat(text))


def _returns(draft: Draft, event: Happening) -> bool:
    """Ask somebody who returns after hours in the middle of something whether to go on; return True if the event needs nothing more."""
    session = draft.session
    if not session.at or not session.stack or session.aside or draft.known.now - datetime.fromisoformat(session.at) < AWAY:
        return False
    if draft.compiled.flow.policy.holds:  # open questions about pain or a sign come first: nothing of it is a reply to another question
        return False
    bare = isinstance(event, Typed) and draft.asking and draft.ask.safety and hear(event.text) in (Phrase.YES, Phrase.NO)
    begun = draft.compiled.flow.policy.counted and (bool(draft.top.trail) or bare)
    if not begun and draft.before_moving is None:
        return False
    if isinstance(event, Tapped) and read_start(event.data):
        return False
    if isinstance(event, Typed):
        if answers_invitation(draft, event.text) or heard_out(draft, event.text):
            return True
        if draft.book.command(event.text) or draft.book.sentence(event.text, draft.known.facts):
            return False
    ask_aside(draft, "return")
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
    draft.say(render(flow.invite, facts, now), buttons=buttons)
