"""Take back a sign that was heard, and what was meant instead: "no, I meant" my phone died. It may still be that sign, another, or pain."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.acting import CONTROLS_BUT_HELP, control
from companion.conversation.asking import ask_again
from companion.conversation.draft import Draft
from companion.conversation.effects import Say
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, pick
from companion.conversation.moves import answer
from companion.language.acts import SpeechAct, hear_act
from companion.language.clauses import flat
from companion.language.flags import hear_flags
from companion.language.half import half_of_it
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear
from companion.language.questions import is_question

WHAT_MEANT: Final = "meant"
"""The key of the question what was meant instead."""


def is_option(draft: Draft, text: str) -> bool:
    """True if a message is, word for word, an answer of the open question."""
    return isinstance(pick(text, draft.ask.kind.options, replace(draft.context, strict=True)), Answer)


def leave_unasked(draft: Draft) -> None:
    """Take the question back that follows an answer with a sign in it: it is asked once the sign has been."""
    if draft.asking and draft.effects and isinstance(draft.effects[-1], Say):
        draft.effects.pop()


def taken_back(waiting: Ask, text: str) -> re.Match[str] | None:
    """Return the words that take back what was heard ("no, I meant" my phone died), if a message reports neither a sign nor pain itself."""
    said = _I_MEANT.match(text.strip())
    if not said or not any(option.value == "no" and _NOT_THAT.match(option.label) for option in waiting.kind.options):
        return None
    rest = text.strip()[said.end():]
    return said if not hear_flags(rest, weigh=False) and hear_pain(rest) is not Pain.YES else None


def take_meaning_back(draft: Draft, text: str, said: re.Match[str]) -> None:
    """Take what was heard back, and what is said to be meant as the answer to the question that follows, where it asks for that."""
    meant, button = text.strip()[said.end():].strip(" ,.:;-"), is_option(draft, text)
    answer(draft, Answer("no", text))
    if not button and tells_what_meant(draft) and _explains(draft, meant):
        leave_unasked(draft)
        answer(draft, Answer(meant, meant))


def tells_what_meant(draft: Draft) -> bool:
    """True where it is asked what was meant instead of a sign: what is told there may still be that sign, another, or pain."""
    return draft.asking and draft.top.flow == draft.book.signs and draft.ask.key == WHAT_MEANT


def take_meant(draft: Draft, text: str) -> None:
    """Take words for what was meant, without the question that follows, or with the one open again that waited: what else they tell is
    asked about first."""
    answer(draft, Answer(text, text))
    leave_unasked(draft)
    if draft.session.stack and draft.top.paused and isinstance(draft.compiled.stops.get(draft.top.state), Ask):
        draft.top = draft.top._replace(paused=False)


def says_not_what(draft: Draft, waiting: Ask | None, text: str) -> bool:
    """Take half an admission for what it is. Ask once more what was meant, where a number, a command or a wish says nothing of it: taken
    for that it would open the day."""
    if not waiting or waiting.key != WHAT_MEANT or text.startswith("/"):
        return False
    if half_of_it(text) and hear_pain(text) is Pain.NO:  # of the sign: "a bit", "not really"
        answer(draft, Answer(text, text))
        return True
    if is_question(text) or _explains(draft, text):
        return False
    if (said := hear(text, strict=True)) in CONTROLS_BUT_HELP and said is not Phrase.SKIP:
        control(draft, said)
    else:
        ask_again(draft, "That does not tell me yet.", ("I still need a few words of it.", "In your own words, please."))
    return True


def _explains(draft: Draft, text: str) -> bool:
    """True if words may tell what was meant: not a bare number, a yes, a command or a wish."""
    wish = _WISH.match(flat(text)) or (hear_act(text).act is SpeechAct.COMMAND and len(text.split()) <= _COMMAND_LONGEST)
    named = draft.book.command(text) or draft.book.sentence(text, draft.known.facts)
    return not (wish or named) and hear(text) is None and _A_WORD.search(text) is not None


_COMMAND_LONGEST: Final = 5
"""Most words of a message that is a command and no more; a longer one may tell something with it; our choice."""

_WISH: Final = re.compile(r"(?:id |i )?(?:just |only |really )*(?:want to|wanna|would like to|like to|let me|let us|lets)\b")

_A_WORD: Final = re.compile(r"[^\W\d_]{3}|[^\W\d_\x00-\x7f]")
"""Letters that are more than a unit."""

_I_MEANT: Final = re.compile(
    r"no+[,.:;!]? (?:i (?:only |just )?(?:meant|mean)\b|that'?s not what i mean)|"
    r"(?:sorry,? |oh,? |lol,? )?i (?:only |just )?(?:meant|mean)(?= (?:my|the|a|our) (?:dog|cat|phone|car|bike|chair|bar|laptop|watch|"
    r"horse|tv|"
    r"son|daughter|kid|wife|husband|partner|mate|friend|mum|mom|dad|brother|sister|boss|neighbour|lifter|client)s?\b)", re.IGNORECASE)
_NOT_THAT: Final = re.compile(r"No, (?:I meant|none of these)")
"""How the button begins by which what was heard is taken back."""
