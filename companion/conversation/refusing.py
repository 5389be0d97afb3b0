"""Words of a refusal: each time other ones, and no more of them than the first time.

First comes what is missing, then other words from the question's card, then the way on. What was said at a question is kept in the session
until it is answered, so that nothing is said twice, whichever part of the bot refuses.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import chain, permutations
from typing import Final
from zlib import crc32

from companion.conversation.cards import AnswerCard, card_of
from companion.conversation.draft import Draft
from companion.conversation.wording import render

ON_FROM_HERE: Final = ("Leave it? “Skip” goes on without it; “show me” says more.", "“Skip” leaves it out; “show me” helps.",
                       "“Show me” helps.")
ON_WITH_CARE: Final = ("If in doubt, take the more careful answer; “show me” says more.", "Say “show me” for more.", "“Show me” helps.")
"""The way on from a question that can be skipped, and from one that can't: the longest that fits is said."""
STILL_UNCLEAR: Final = ("“Describe” tells the picture.", "“Back” goes one back.", "“Stop” keeps it for later.",
                        "“Menu” shows the rest.", "“Help” helps.", "Other words, please.", "Not that one.")
NOT_THAT: Final = ("Please tap one of these, or type its words.", "One of these, please.", "Not one of these either.",
                   "Only these count here.", "Which one?", "Not that.")
"""What is said of a reply to a side question that is none."""
GENTLY: Final = ("Take your time.", "There is no hurry.", "One tap is enough.", "This stays open for you.")
"""What else is said where somebody may be in danger."""
KEPT_MOST: Final = 200
"""Most refusals of one question that are remembered; our choice."""


def card_here(draft: Draft) -> AnswerCard:
    """Return the card of the open question."""
    return card_of(draft.book.answers().cards, draft.compiled.flow, draft.ask) if draft.book.answers else AnswerCard()


def card_words(draft: Draft, part: str) -> str:
    """Return a part of the open question's card in this person's words and units; "" where there is none."""
    ask, facts = draft.ask, draft.facts()
    example = ask.kind.example(draft.context).removeprefix("For example: ")
    return render(getattr(card_here(draft), part), {**facts, "example": example}, draft.known.now, ask.side, ask.kind.unit)


def within(text: str, most: int) -> str:
    """Return as many whole sentences of a text, from its beginning, as have at most so many characters; none whose answer would be left
    out."""
    kept = ""
    for sentence in re.split(r"(?<=[.?!]) ", text):
        if len(kept) + len(sentence) + bool(kept) > most:
            break
        kept = f"{kept} {sentence}".strip()
    return re.sub(r"(?:^|(?<=[.!?]) )[^.!?]*\?$", "", kept)


def unsaid(draft: Draft, words: str, room: int = 0, others: Sequence[str] = ()) -> str:
    """Return these words the first time they refuse a reply here, else the first of ``others`` or of what helps that was not said here
    yet, in at most ``room`` characters (0: as many as the words have)."""
    told, room = draft.session.told, room or len(words)
    said = next((one for one in chain(filter(None, (words,)), others, _ways(draft, room)) if crc32(one.encode()) not in told), "")
    draft.session = draft.session._replace(told=(*told, crc32(said.encode()))[-KEPT_MOST:])
    return said


def _ways(draft: Draft, room: int) -> Iterator[str]:
    """Yield what helps in at most so many characters: at a side question that it is one; what the question itself says of whatever is no
    answer; else from its card, then the way on, then two and three at once."""
    if draft.session.aside or not draft.session.stack:
        alone = short = [words for words in NOT_THAT if len(words) <= room]
    elif draft.ask.unread:  # where help is, and nothing of how to answer
        alone, short = [words for words in (*draft.ask.unread, *GENTLY) if len(words) <= room], list(GENTLY)
    else:
        ask, home = draft.ask, draft.top.flow == draft.book.home
        cards = [words for part in ("how", "means", "cant", "why") if (words := within(card_words(draft, part), room))]
        on = () if home else ON_WITH_CARE[0 if ask.kind.options else 1:] if ask.safety else ON_FROM_HERE
        ways = [way for way in on if len(way) <= room]
        short = [*(words for words in STILL_UNCLEAR[0 if ask.picture else 1:] if len(words) <= room), *ways[-1:]]
        alone = [*cards[:1], *ways[:1], *cards[1:], *short[:-1]]
    yield from alone
    yield from (both for count in (2, 3) for some in permutations(short, count) if len(both := " ".join(some)) <= room)
