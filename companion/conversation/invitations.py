"""Answers to an invitation: what is typed after a reminder that asks something begins its flow, and is read as the answer to its first
question.

Each flow is begun in a draft of its own, which counts only if the message belongs there: a wrong guess leaves no trace.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from companion.conversation.acting import CONTROLS
from companion.conversation.asking import ask_again, show
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask, Flow
from companion.conversation.kinds import Answer
from companion.conversation.moves import answer, begin, take_up, told_ahead
from companion.conversation.parking import park, start
from companion.conversation.prompt import read_start
from companion.conversation.reported import heard_out
from companion.conversation.session import Frame
from companion.language.act_rules import matches
from companion.language.acts import SpeechAct, hear_act
from companion.language.clauses import flat
from companion.language.courtesies import greets, nods, praises
from companion.language.flags import hear_flags
from companion.language.phrases import Phrase, hear
from companion.language.questions import is_question

_OPEN_QUESTION: Final = re.compile(r"(?:and |so )?(?:how|what|which|where|when|who|why)\b", re.IGNORECASE)


def answers_invitation(draft: Draft, text: str) -> bool:
    """Take a message as the answer to what the last messages asked, if it is one beyond doubt, of one of them only; return False
    otherwise. An open question that the body or safety depends on keeps an answer of its own. Words in which only a doubtful sign
    would be heard begin a flow that asks what a clinician said. What a sentence of the flow itself tells beside the answer counts too."""
    stack, those = draft.session.stack, opened(draft)
    if not those:
        return _asked_since(draft, text)
    if (begun := _begun_by_sentence(draft, those, text)) and _answered_anew(draft, begun, those, text):
        return True
    harmless = draft.book.heard_first(text, draft.known.facts) is not None
    there = [one for one in those if harmless or one.ask.kind.told_before_pain(text) or not heard_out(copy_of(one), text)]
    if there and _only_left_open(there[0].compiled.flow) and _says_whether(draft, there[0], those, text):
        return True
    if not there or (stack and draft.ask.safety and isinstance(draft.ask.kind.read(text, draft.context), Answer)):
        return _asked_since(draft, text)
    answered = [(one, tried) for one, tried in zip(there, map(copy_of, there), strict=True) if answered_at(tried, text)]
    told = next((one for one in there if one.compiled.flow.policy.told), None)
    if len(answered) == 1:
        adopt(draft, *answered[0], those)
    elif told and not answered and not (stack and draft.top.flow != draft.book.home) and hear_flags(text):
        adopt(draft, told, told, those, text)
    else:
        return False
    return True


ASKED_SINCE: Final = "I asked something else since, and that may be an answer to either. First this one."


def _asked_since(draft: Draft, text: str) -> bool:
    """Put an open question about safety again, in place of taking for its answer what may answer a message that came since; return False
    where none came, or it is no answer."""
    session = draft.session
    asks = session.stack and not session.aside and draft.asking and draft.ask.safety and not draft.ask.free
    if not (asks and draft.known.invited() and isinstance(draft.ask.kind.read(text, draft.context), Answer)):
        return False
    ask_again(draft, ASKED_SINCE)
    return True


def begins_invited(draft: Draft, text: str) -> bool:
    """Begin the flow of an invitation, and ask its first question, for words that would come to nothing: no question, command or
    thanks; return False otherwise."""
    if is_question(text) or hear_act(text).act in (SpeechAct.QUESTION, SpeechAct.COMMAND) or hear(text) in CONTROLS or (
            nods(text) and not praises(text)) or greets(text) or not (those := opened(draft)):
        return False
    adopt(draft, those[0], those[0], those, text)
    return True


def _begun_by_sentence(draft: Draft, those: Sequence[Draft], text: str) -> tuple[str, str] | None:
    at_rest = not draft.session.stack or draft.top.flow == draft.book.home
    said = draft.book.sentence(text, draft.known.facts) if at_rest else None
    return said if said and said[0] in {one.top.flow for one in those} else None


def _answered_anew(draft: Draft, begun: tuple[str, str], those: Sequence[Draft], text: str) -> bool:
    """Begin the flow of an invitation with what its own sentence tells, and take that for the answer to its first question too; return
    False if it answers none there, or a sign is heard."""
    there = _opened(draft, *begun)
    names_none = draft.book.heard_first(text, draft.known.facts) == begun
    if not there or not (names_none or not heard_out(copy_of(there), text)) or not answered_at(there, text):
        return False
    adopt(draft, next(one for one in those if one.top.flow == begun[0]), there, those)
    return True


def _only_left_open(flow: Flow) -> bool:
    """True if a flow invites to nothing: then a reminder of it can only ask for an answer to what is left open there."""
    return not flow.invite


def _says_whether(draft: Draft, waits: Draft, those: Sequence[Draft], text: str) -> bool:
    """Go on with what is left open, where the last message asks only for that, or leave it, for a message that only says whether it is
    answered now or asks what it is; return False for any other. What was asked long before is not answered by that."""
    said, stack, left = hear(text), draft.session.stack, waits.worded(waits.compiled.flow.parked, "")
    if said in (Phrase.NO, Phrase.STOP) and left and (waits.session.stack == stack or not stack or draft.top.flow == draft.book.home):
        park(draft, left)
    elif said in (Phrase.YES, Phrase.READY) or matches("asks_what_is_open", flat(text)):
        adopt(draft, waits, waits, those)
    else:
        return False
    return True


def opened(draft: Draft) -> tuple[Draft, ...]:
    """Return a draft for each flow about which the last messages, all of them invitations, ask something, the latest first: it is begun
    there, and its first question is the last message; or what is left open in it is put again. None over a side question, a movement or a
    question about safety that takes answers of its own."""
    session = draft.session
    if session.aside or (session.stack and (draft.top.state not in draft.compiled.stops or draft.works)):
        return ()
    begun = (read_start(data) for data in draft.known.invited())
    return tuple(there for one in begun if one and (there := _opened(draft, *one)))


def _opened(draft: Draft, flow: str, asked: str) -> Draft | None:
    if flow not in draft.book.flows:
        return None
    there, running = Draft(draft.book, draft.session, draft.known, []), any(one.flow == flow for one in draft.session.stack)
    if running and _only_left_open(draft.book[flow].flow):
        show(there)
        return there
    if running or not ("?" in draft.book[flow].flow.invite or _only_left_open(draft.book[flow].flow)):
        return None
    start(there, flow, asked)
    if not there.session.stack or there.top.flow != flow:
        return None
    if there.top.paused:
        take_up(there)
    if there.session.stack and not there.top.state:
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
    read = ask.kind.told_before_pain(text) or ask.kind.read(text, there.context)
    if not isinstance(read, Answer):
        return False
    there.effects.pop()  # the question, which is answered
    answer(there, read)
    return True


def asks_yes_or_no(invite: str) -> bool:
    """True if the first question of an invitation can be answered by yes or no."""
    asked = next((one for one in re.findall(r"[^.:?!]*[.:?!]", invite) if one.endswith("?")), "")
    return bool(asked) and not _OPEN_QUESTION.match(asked.strip())


def adopt(draft: Draft, one: Draft, there: Draft, those: Sequence[Draft], text: str = "") -> None:
    """Go on in ``there``, which is one of ``those`` that are ``opened``, or a copy of it in which it was answered; what the others ask of
    safety is asked after it, the latest first. ``text``: what was typed, if it did not answer the question: it is offered where it is
    one."""
    if text:
        there.top = there.top._replace(noted={**there.top.noted, **told_ahead(there, text)})
    session = there.session
    running = {frame.flow for stack in (session.stack, *session.parked) for frame in stack}
    for frame in (other.top for other in those if other is not one and other.ask.safety and other.top.flow not in running):
        session = session._replace(runs=session.runs + 1)
        session = session._replace(stack=(Frame(frame.flow, frame.version, str(session.runs), asked=frame.asked), *session.stack))
    draft.session, draft.effects = session, [*draft.effects, *there.effects]


def copy_of(draft: Draft) -> Draft:
    """Return a draft like this one, to try something in."""
    return replace(draft, effects=list(draft.effects))

