"""One pure step: a session and what happened give the next session and the effects wanted.

``step`` goes on with what was begun, or gives what a person sent to ``replies``.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.conversation.asking import ask_again, ask_aside
from companion.conversation.draft import Draft
from companion.conversation.effects import Effect, Say
from companion.conversation.events import Edited, Happening, Invite, Sent, Settle, Tapped, Typed
from companion.conversation.flow import Known, Offer
from companion.conversation.moves import after_run, begin, end, take_up
from companion.conversation.parking import interrupt
from companion.conversation.prompt import offered
from companion.conversation.registry import Book
from companion.conversation.replies import edited, heard_pain, sent, tapped, typed
from companion.conversation.session import Session
from companion.conversation.wording import render

AWAY: Final = timedelta(hours=3)
"""Who writes after so long is told where they were before anything counts as an answer; our choice."""


class Taken(NamedTuple):
    """The outcome of a step: the session after it and its effects, in order."""

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
            typed(draft, event.text)
        case Tapped():
            tapped(draft, event.data)
        case Sent():
            sent(draft, event)
        case Edited():
            edited(draft, event.text)
    if not isinstance(event, Settle | Invite):
        draft.session = draft.session._replace(at=known.now.isoformat())
    return Taken(draft.session, tuple(draft.effects))


def unsettled(session: Session) -> bool:
    """True if the conversation has somewhere to go before it waits for the person."""
    if not session.stack:
        return not session.idle
    return not session.top.state or session.top.paused or session.top.state.startswith("run_")


def interrupted(book: Book, session: Session, known: Known) -> Session:
    """Return the session with the waiting question paused, for something else to be put on top; it is asked again afterwards."""
    if not session.stack or session.top.paused or not session.top.state or session.top.state.startswith("run_"):
        return session
    compiled, draft = book.flows.get(session.top.flow), Draft(book, session, known, [])
    if compiled is None or session.top.state not in compiled.stops:
        return session.with_top(session.top._replace(paused=True))  # of a version that is gone: begun anew when it is taken up
    interrupt(draft)
    return draft.session


def prompt_now(book: Book, session: Session, known: Known) -> tuple[Say, ...]:
    """Return what the person would be looking at now, for a screen that opens in the middle of a conversation."""
    draft = Draft(book, session, known, [])
    ask_again(draft)
    return tuple(effect for effect in draft.effects if isinstance(effect, Say))


# going on by itself -----------------------------------------------------------------------------------------


def _settle(draft: Draft) -> None:
    if not draft.session.stack:
        draft.push(draft.book.home)
    elif _outdated(draft):
        pass
    elif draft.top.paused:
        take_up(draft)
    elif not draft.top.state:
        begin(draft)
    else:
        after_run(draft)


def _outdated(draft: Draft) -> bool:
    """Start the open run again if its flow version can't go on, its answers kept in the log; return True then."""
    if not draft.session.stack:
        return False
    frame = draft.top
    compiled = draft.book.flows.get(frame.flow)
    fits = compiled is not None and (frame.version == compiled.flow.version or frame.version in compiled.flow.compatible)
    if compiled is not None and fits and (not frame.state or frame.state in compiled.stops):
        return False
    draft.say("This part has changed since you began it, so it starts again. Your answers are kept.")
    end(draft, "left")
    if compiled:
        draft.push(frame.flow)
    return True


def _returns(draft: Draft, event: Happening) -> bool:
    """Ask somebody who comes back after hours to the middle of something whether to go on; return True if the event is done with."""
    session = draft.session
    if not session.at or not session.stack or session.aside or not draft.compiled.flow.policy.counted or not draft.top.trail:
        return False
    if draft.known.now - datetime.fromisoformat(session.at) < AWAY:
        return False
    if isinstance(event, Typed) and (heard_pain(draft, event.text) or draft.book.command(event.text)):
        return bool(draft.effects)
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
