"""Replies that the reader has a use for to the last word, so that nothing in them is left to be weighed as a sign."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from companion.conversation.corrections import correction
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer
from companion.conversation.slots import options_of, reads_acts, takes_number, understand
from companion.language.act_rules import pattern, words_of
from companion.language.acts import SpeechAct, Spoken, hear_act
from companion.language.clauses import WHOLE_ANSWER, clauses
from companion.language.phrases import hear
from companion.language.quantities import quantities, spelt

CORRECTED: Final = 2
"""Most words left over in a correction that names its answer and the new value, such as "I was bragging" (choice)."""

_NOT_EMPTY: Final = frozenset(("ill", "feel", "feels", "felt", "down", "go", "going", "went", "come", "came"))
"""Words that mostly say nothing beside an answer, but may name a sign."""

_SIDES: Final = frozenset(("left", "right", "first", "second", "third", "other", "last"))


def read_whole(draft: Draft, text: str) -> bool:
    """True if a reply to a question about nobody's health is, to its last word, one answer, a correction that names what it puts right, a
    wish, a doubt or a "not yet"; never where a picture is asked for, since "it wasn't mine" is no "no video". Plans are never read so
    either: "I'm going to do it tonight"."""
    ask = draft.ask
    if ask.safety or ask.free or ask.signs or not reads_acts(ask):
        return False
    number, plain = takes_number(ask.kind), " ".join(clause.text for clause in clauses(text))
    beside = pattern("whole").sub(" ", plain).split()
    if all(word in _empty() for word in beside) and (beside != plain.split() or len(beside) == 1):
        return True
    said = spelt(text) if number else text
    spoken = hear_act(said, options_of(draft, ask), number)
    left = _left_over(ask, spoken, said)
    match spoken.act:
        case SpeechAct.ANSWER | SpeechAct.UNSURE if not left:
            return isinstance(ask.kind.read(text, draft.context), Answer) or bool((one := understand(draft, text, spoken)) and one.sure)
        case SpeechAct.CORRECTION if len(left) <= CORRECTED:
            return (found := correction(draft, text)) is not None and found.named and found.new is not None
        case SpeechAct.COMMAND:
            return hear(text, strict=True) is not None
    return False


@cache
def _empty() -> frozenset[str]:
    return (words_of("filler") | words_of("nearly") | _SIDES) - _NOT_EMPTY


def _left_over(ask: Ask, spoken: Spoken, said: str) -> list[str]:
    """Return the words of a message that are no part of an answer, and not without meaning."""
    empty = _empty() - WHOLE_ANSWER
    if not takes_number(ask.kind):
        hit = {(one.clause, at) for one in spoken.chosen.hits for at in range(one.start, one.end)}
        return [word for n, clause in enumerate(clauses(said)) for at, word in enumerate(clause.words)
                if (n, at) not in hit and word not in empty]
    for one in reversed(quantities(said)):
        if one.unit in ("", ask.kind.unit) and not one.counts:
            said = f"{said[:one.start]} {said[one.end:]}"
    return [word for word in re.findall(r"\w+", said) if word not in empty]
