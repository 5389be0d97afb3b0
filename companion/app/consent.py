"""Renewed consent, asked for before anything else. Pure.

Only these come before it: pain and the questions about it, stop, and the flows that are always open (a copy of one's data,
erasing, ending a coach's link).
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import takewhile

from companion.conversation.effects import Effect, Ended, Record, Say
from companion.conversation.events import Happening, Invite, Settle
from companion.conversation.flow import Known
from companion.conversation.registry import Book
from companion.conversation.session import Frame, Session, Stack
from companion.conversation.step import Taken, interrupted, step
from companion.conversation.table import body_works


def renewal(book: Book, flow: str, session: Session, event: Happening, known: Known) -> Taken | None:
    """Return the step in which ``flow`` asks for consent first; None where the event is to be taken as usual.

    A flow the person began or picked from the menu begins after the yes; an answer to another question is not taken, and that
    question is asked again.
    """
    if isinstance(event, Invite):
        return None
    if any(frame.flow == flow for frame in session.stack):
        return None if isinstance(event, Settle) else _hurt_meanwhile(book, flow, session, step(book, session, event, known))
    if _goes_first(book, session):
        return None
    if isinstance(event, Settle):
        return _question(book, flow, session, (), known)
    then, effects = step(book, session, event, known)
    said = tuple(effect for effect in effects if isinstance(effect, Say | Ended))
    by_itself = all(effect in said or (isinstance(effect, Record) and effect.flow == book.home) for effect in effects)
    if _heard(then) or _goes_first(book, then) or (then.idle and not then.stack and not _takes(effects)):
        return None
    begins = bool(then.stack) and not then.top.state and by_itself
    taken = _question(book, flow, then, said, known) if begins else _question(book, flow, session, (), known)
    return taken._replace(session=taken.session._replace(at=known.now.isoformat()))


def may_ask(book: Book, flow: str, session: Session) -> bool:
    """True if the bot may send the consent question by itself: not twice, and not during what comes before it."""
    return not any(frame.flow == flow for stack in (session.stack, *session.parked) for frame in stack) and not _goes_first(book, session)


def _goes_first(book: Book, session: Session) -> bool:
    top = book.flows.get(session.top.flow) if session.stack else None
    return top is not None and (top.flow.name == book.pain or top.flow.policy.always)


def _heard(session: Session) -> bool:
    """True if a side question asks whether something hurt."""
    return session.aside is not None and session.aside.if_hurt


def _takes(effects: Iterable[Effect]) -> bool:
    """True if the effects store something new. A stop only withdraws the answer before a hold that was broken off."""
    return not all(isinstance(effect, Say | Ended) or (isinstance(effect, Record) and effect.status == "withdrawn") for effect in effects)


def _hurt_meanwhile(book: Book, flow: str, session: Session, taken: Taken) -> Taken:
    """Return the step with the test under the question ended by pain, where pain was reported in place of an answer."""
    then = taken.session
    if not then.stack or then.top.flow != book.pain or session.top.flow == book.pain:
        return taken
    under = [frame._replace(hurt=frame.hurt or body_works(book[frame.flow].flow)) for frame in then.stack[:-1]]
    return taken._replace(session=then._replace(stack=(*under, then.top)))


def _question(book: Book, flow: str, session: Session, effects: tuple[Effect, ...], known: Known) -> Taken:
    """The question on top, begun anew where it was stopped before; what waits under it is asked again afterwards."""
    parked, gone = list[Stack](), list[Frame]()
    for stack in session.parked:
        left = tuple(takewhile(lambda frame: frame.flow != flow, stack))
        gone += stack[len(left):]
        parked += [left] if left else []
    under = interrupted(book, session, known).stack
    runs = session.runs + 1
    frame = Frame(flow, book[flow].flow.version, str(runs))
    ended = tuple(Ended(one.run, "left") for one in gone if one.state)
    return Taken(session._replace(stack=(*under, frame), parked=tuple(parked), runs=runs, aside=None, idle=False, last=None),
                 (*effects, *ended))
