"""Answers to an invitation: what is typed after a reminder that asks something begins its flow, and is read as the answer to its first
question.

Each flow is begun in a draft of its own, which counts only if the message belongs there: a wrong guess leaves no trace.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.condition import Value
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, Choice, Media, Option, ReadingContext, Ready, YesNo
from companion.conversation.moves import answer, begin, take_up
from companion.conversation.parking import start
from companion.conversation.prompt import read_start
from companion.conversation.session import SAID_AHEAD
from companion.language.phrases import Phrase, hear

_OPEN_QUESTION: Final = re.compile(r"(?:and |so )?(?:how|what|which|where|when|who|why)\b", re.IGNORECASE)
PRAISE: Final = frozenset(("great", "cool", "good", "nice", "perfect", "fine"))
"""What answers "how", and else only acknowledges."""

_TAPPED: Final = (Choice, YesNo, Ready, Media)
"""Kinds that take no words of the person's own."""


def opened(draft: Draft) -> tuple[Draft, ...]:
    """Return a draft for each flow about which the last messages, all of them invitations, ask something, the latest first: it is begun
    there, and its first question is the last message. None over a side question, a movement or a question about safety that takes answers
    of its own."""
    session = draft.session
    if session.aside or (session.stack and (draft.top.state not in draft.compiled.stops or draft.works)):
        return ()
    begun = (read_start(data) for data in draft.known.invited())
    return tuple(there for one in begun if one and (there := _opened(draft, *one)))


def _opened(draft: Draft, flow: str, asked: str) -> Draft | None:
    if flow not in draft.book.flows or "?" not in draft.book[flow].flow.invite or any(one.flow == flow for one in draft.session.stack):
        return None
    there = Draft(draft.book, draft.session, draft.known, [])
    start(there, flow, asked)
    if not there.session.stack or there.top.flow != flow:
        return None
    if there.top.paused:
        take_up(there)
    else:
        begin(there)
    waits = there.session.stack and there.top.flow == flow and isinstance(there.compiled.stops.get(there.top.state), Ask)
    return there if waits else None


def answered_at(there: Draft, text: str) -> bool:
    """Answer the question that an invitation led to, in a draft of ``opened``, if the message is an answer there beyond doubt. A bare yes
    or no is one only if the invitation itself can be answered so."""
    ask, said = there.ask, hear(text, strict=there.ask.safety)
    if ask.free or (said in (Phrase.YES, Phrase.NO) and not asks_yes_or_no(there.compiled.flow.invite)):
        return False
    if said not in (None, Phrase.YES, Phrase.NO) and not ask.safety:  # "fine" is no answer to what the invitation did not ask
        return False
    read = ask.kind.read(text, there.context)
    if not isinstance(read, Answer):
        return False
    there.effects.pop()  # the question, which is answered
    answer(there, read)
    return True


def asks_yes_or_no(invite: str) -> bool:
    """True if the first question of an invitation can be answered by yes or no."""
    asked = next((one for one in re.findall(r"[^.:?!]*[.:?!]", invite) if one.endswith("?")), "")
    return bool(asked) and not _OPEN_QUESTION.match(asked.strip())


def taken_up(draft: Draft, text: str) -> str:
    """Return the label of the button of the last message, an invitation, that a message is another word for; "" for none."""
    begun = next((one for data in draft.known.invited() if (one := read_start(data))), None)
    offers = draft.book[begun[0]].flow.invites if begun and begun[0] in draft.book.flows else ()
    read = Choice(tuple(Option(one.label, one.label, one.also) for one in offers)).read(text, ReadingContext(strict=True))
    return str(read.value) if isinstance(read, Answer) else ""


def adopt(draft: Draft, there: Draft, text: str = "") -> None:
    """Go on in a draft of ``opened``. ``text``: what was typed, if it did not answer the question: it is offered where it is one."""
    if text:
        there.top = there.top._replace(noted={**there.top.noted, **_later(there, text)})
    draft.session, draft.effects = there.session, [*draft.effects, *there.effects]


def _later(there: Draft, text: str) -> dict[str, Value]:
    """Return the first question to come that a message answers in words, with the answer, to be confirmed there."""
    for key, stop in there.compiled.stops.items():
        if key != there.top.state and isinstance(stop, Ask) and not isinstance(stop.kind, _TAPPED):
            read = stop.kind.read(text, there.context)
            if isinstance(read, Answer):
                return {SAID_AHEAD + key: read.value}
    return {}


def copy_of(draft: Draft) -> Draft:
    """Return a draft like this one, to try something in."""
    return replace(draft, effects=list(draft.effects))

