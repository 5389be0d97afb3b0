"""The class of a turn's messages: what is about pain leaves first."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from companion.conversation.effects import Alert, Effect, Find
from companion.conversation.flow import Ask
from companion.conversation.policy import Policy
from companion.conversation.registry import Book
from companion.conversation.session import Session
from companion.port import Rank
from companion.record.context import SAFETY_LEVEL
from companion.screening.levels import REFERRED

PAIN_POLICIES: Final = (Policy.PAIN, Policy.SIGNS)
"""Policies of the flows about pain and other signs."""


def rank_of(book: Book, before: Session, after: Session, effects: Sequence[Effect]) -> Rank | None:
    """Return the class of the messages of a step; None for the usual. Pain and red flags: the conversation is about them before or
    after it, a coach is alerted, or the level found sends the person to be seen. Movement: the body is at work in the question now
    asked."""
    if _about_pain(book, before) or _about_pain(book, after) or any(map(_is_alarm, effects)):
        return Rank.PAIN
    if after.stack and after.top.flow in book.flows:
        stop = book[after.top.flow].stops.get(after.top.state)
        if isinstance(stop, Ask) and stop.caution:
            return Rank.MOVEMENT
    return None


def _about_pain(book: Book, session: Session) -> bool:
    if session.aside is not None and session.aside.if_hurt:
        return True
    if not session.stack or session.top.flow not in book.flows:
        return False
    return session.top.flow == book.crisis or book[session.top.flow].flow.policy in PAIN_POLICIES


def _is_alarm(effect: Effect) -> bool:
    return isinstance(effect, Alert) or (isinstance(effect, Find) and effect.name == SAFETY_LEVEL and effect.value in REFERRED)
