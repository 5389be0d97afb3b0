"""Read a reply as an answer to the open question: what it answers, puts right, asks back, or leaves unclear."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.acting import CONTROLS, WAITS, act_on, control, not_words, other_than_answer
from companion.conversation.aims import asks_why_this, begun_by
from companion.conversation.answers import HELP_MOST, answered, refuse, told_what_stands
from companion.conversation.asking import ask_again, ask_aside, stand_again
from companion.conversation.condition import ALWAYS
from companion.conversation.corrections import tells_otherwise
from companion.conversation.day_kinds import Day, LimitEnd, LimitOver, Rest, SquatDays
from companion.conversation.draft import Draft
from companion.conversation.hearing import guesses, heard_at
from companion.conversation.kinds import Answer, Ready, Unclear, Zone
from companion.conversation.moves import answer, record, take_back, told_of_another
from companion.conversation.parking import THESE_FIRST, start
from companion.conversation.refusing import card_words, within
from companion.conversation.slots import reads_acts
from companion.language.act_rules import matches
from companion.language.acts import SpeechAct
from companion.language.clauses import flat
from companion.language.courtesies import frightened, greets
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear
from companion.language.questions import asked_surely, is_question

IN_FRIGHT: Final = ("I can tell that this frightens you. If you feel bad now, call your emergency number, or somebody near you, first.",
                    "Somebody beside you helps now: call them. I wait here.")
"""Said to whoever says that they are frightened."""


ASKED_NEXT: Final = "Noted, and I ask about that next. First this one."


SAYS_MEANT: Final = re.compile(
    r"(?:no,? |oh,? |oops,? |sorry,? |wait,? )*(?:i meant?|meant|i mean to say|make (?:that|it)|should (?:be|have been)|correction:?|"
    r"it was(?: really| actually)?|change (?:that|it) to)(?: to say)?:? (.+?)[ !]*")
"""Whole replies that put the last answer right."""


def put_right_at_once(draft: Draft, text: str, meant: str) -> None:
    """Take a correction such as "I meant 12": replace the last answer if 12 is a valid one; else change nothing."""
    was = draft.session, list(draft.effects)
    if not take_back(draft) and isinstance(read := draft.ask.kind.read(meant, draft.context), Answer):
        answer(draft, replace(read, raw=text))
        return
    draft.session, draft.effects = was
    read_reply(draft, text)


def asked_back(draft: Draft, text: str) -> bool:
    """Answer a question of the person's, or begin the flow that its sentence starts; return False if it is none, or an answer in a day or
    a place."""
    heard = hear(text)
    asks = (heard is Phrase.AGAIN and asked_surely(text) == "means") or (heard is Phrase.HELP and is_question(text))
    if heard in CONTROLS and not asks:
        return False
    days = isinstance(draft.ask.kind, SquatDays | Rest | Day | LimitEnd | LimitOver | Zone)
    if days and isinstance(draft.ask.kind.read(text, draft.context), Answer):
        return False
    if not draft.ask.free and not asks_why_this(draft, text) and (said := begun_by(draft, text)):
        start(draft, *said)
        return True
    lost = matches("lost", flat(text).strip(" ."))
    if not lost and reads_acts(draft.ask) and heard_at(draft, text).act not in (SpeechAct.QUESTION, SpeechAct.NOTHING):
        return False
    return answered(draft, text)


def read_reply(draft: Draft, text: str) -> None:
    """Take a reply for an answer, or for what its words ask for beside the question."""
    ask = draft.ask
    read = ask.kind.read(text, draft.context)
    if not isinstance(read, Answer) and not ask.free and (said := begun_by(draft, text)):
        start(draft, *said)
        return
    if (reads_acts(ask) and act_on(draft, text)) or (ask.free and not_words(draft, text)):
        return
    if not (isinstance(read, Answer) or ask.free or reads_acts(ask) or ask.kind.claims(text, draft.context)) and (
            other_than_answer(draft, text)):
        return
    take_read(draft, text, read)


def take_read(draft: Draft, text: str, read: Answer | Unclear) -> None:
    """Take an answer that was read, if it is on offer; else say what may be meant, or ask again."""
    ask, known = draft.ask, isinstance(read, Answer)
    if isinstance(read, Answer):
        shut = {option.value for option in ask.kind.options if option.only_if != ALWAYS and not option.only_if.holds(draft.facts())}
        if not (isinstance(read.value, str) and read.value in shut):
            answer(draft, read)
            return
        if draft.top.flow == draft.book.home and told_what_stands(draft):
            return
        read = Unclear("That is not on offer just now.")
    if answered(draft, text):
        return
    if isinstance(ask.kind, Ready) and (said := hear(text)) in (Phrase.NO, Phrase.UNSURE):
        draft.say(WAITS) if said is Phrase.NO else refuse(draft, within(card_words(draft, "how"), HELP_MOST))
        return
    claimed = ask.kind.claims(text, draft.context)
    near = None if ask.safety or ask.free or claimed else hear(text)
    if not draft.compiled.flow.policy.hears_pain and hear_pain(text) is Pain.YES:
        if draft.top.flow == draft.book.pain:
            record(draft, ask, text, None, status="in_pain")  # another pain, or the same said again: the words stay in the log
        stand_again(draft, ASKED_NEXT if told_of_another(draft, text) else THESE_FIRST)
    elif greets(text):
        ask_again(draft)
    elif frightened(text):
        if not told_what_stands(draft):
            ask_again(draft, IN_FRIGHT[0], IN_FRIGHT[1:])
    elif draft.top.flow == draft.book.home and (flow := draft.book.near_command(text)):
        start(draft, flow)
    elif near in CONTROLS:
        control(draft, near)
    elif draft.top.flow == draft.book.home and tells_otherwise(draft, text):
        ask_aside(draft, "corrected", text)
    elif not (known or claimed) and guesses(draft, text):
        ask_aside(draft, "which", text)
    else:
        refuse(draft, read.reason)
