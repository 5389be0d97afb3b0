"""Answer cards: what a question means, why it is asked, how to tell, and what to do when that can't be told.

Cards are rows of a table in TOML. A row matches questions by their flow and key, by their kind, or by what they are; each part of a card is
taken from the first matching row that has it, so that particular rows stand before general ones and no text is written twice.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fnmatch import fnmatchcase
from functools import lru_cache
from typing import Any, Final, NamedTuple

from companion.conversation.flow import Ask, Flow, Known
from companion.language.questions import asked_surely, plain

CARD_PARTS: Final = ("means", "why", "how", "cant")
"""The parts of a card, each the answer to one kind of question about a question."""

CARD_WORDS_MOST: Final = 45
"""Most words of a part: with the question in one line after it, it stays within a message (choice)."""

UNSURE_VALUES: Final = frozenset(("unsure", "cant_tell"))
"""The stored values by which a question offers an answer for "not sure"."""


class AnswerCard(NamedTuple):
    """The answers to questions about one question: templates over the facts, with "{unit}" and "{example}"; "" for a missing part."""

    means: str = ""
    why: str = ""
    how: str = ""
    cant: str = ""


@dataclass(frozen=True, slots=True)
class CardRow:
    """One row: the questions it is for, and the parts it has. ``of``: patterns of "flow/key", in which "*" is anything; ``kind``: the class
    of the question's kind; ``safety``, ``works``, ``unsure``: only safety questions, those in which the body works, those that offer an
    answer for "not sure"."""

    of: tuple[str, ...] = ("*",)
    kind: str = ""
    safety: bool = False
    works: bool = False
    unsure: bool = False
    parts: Mapping[str, str] = field(default_factory=dict)

    def matches(self, flow: str, ask: Ask) -> bool:
        """True if the row is for this question."""
        return ((not self.kind or type(ask.kind).__name__ == self.kind) and (not self.safety or ask.safety)
                and (not self.works or bool(ask.caution)) and _is_among(f"{flow}/{ask.key}", self.of)
                and (not self.unsure or any(option.value in UNSURE_VALUES for option in ask.kind.options)))


@lru_cache(maxsize=1 << 16)
def _is_among(question: str, patterns: tuple[str, ...]) -> bool:
    return any(fnmatchcase(question, pattern) for pattern in patterns)


def read_cards(text: str) -> tuple[CardRow, ...]:
    """Return the rows of a table in TOML. Raises ValueError, which names the row, for a part that is too long or a field it has not."""
    return tuple(_row(row) for row in tomllib.loads(text)["card"])


def _row(row: Mapping[str, Any]) -> CardRow:
    name = ", ".join(row.get("of", ())) or "a general card"
    parts = {part: row[part] for part in CARD_PARTS if part in row}
    if wrong := row.keys() - {*CARD_PARTS, *CardRow.__dataclass_fields__}:
        raise ValueError(f"{name}: {', '.join(sorted(wrong))} is no field of a card")
    for part, words in parts.items():
        if len(words.split()) > CARD_WORDS_MOST:
            raise ValueError(f"{name}: {part} has {len(words.split())} words")
    return CardRow(tuple(row.get("of", ("*",))), row.get("kind", ""), row.get("safety", False), row.get("works", False),
                   row.get("unsure", False), parts)


def card_of(rows: tuple[CardRow, ...], flow: Flow, ask: Ask) -> AnswerCard:
    """Return the card of a question, each part from the first row that matches and has it; why it is asked, else from its flow."""
    matching = [*(row.parts for row in rows if row.matches(flow.name, ask)), {"why": flow.why} if flow.why else {}]
    return AnswerCard(*(next((parts[part] for parts in matching if part in parts), "") for part in CARD_PARTS))


# words and frequent questions -------------------------------------------------------------------------------------


@dataclass(frozen=True)
class AnswerBook:
    """The answers that can be given. ``cards``: the table of cards; ``words``: patterns for words that may be asked about, each with its
    meaning; ``topic_of``: the frequent question in a text, "" for none; ``says``: the answer to it, for this person, now.
    ``to_coach``: the flow in which a question is passed on to a coach; ``stands``: the answer, for this person, now, to a question about
    having to be seen at once, or to "", whatever was said; "" for none."""

    cards: tuple[CardRow, ...]
    words: Mapping[str, str]
    topic_of: Callable[[str], str]
    says: Callable[[str, Known], str]
    to_coach: str = ""
    stands: Callable[[str, Known], str] = lambda text, known: ""

    def word(self, text: str) -> str:
        """Return the meaning of the word that a text asks for, "" for none."""
        said = _ASKS_WORD.fullmatch(plain(text).strip(" ?!."))
        named = next(filter(None, said.groups()), "") if said else ""
        return next((meaning for pattern, meaning in self.words.items() if named and re.fullmatch(pattern, named)), "")


_THE: Final = r"(?:by |with |the |a |an |your |my |that |this |word |in |about )*"
_ASKS_WORD: Final = re.compile(
    r"(?:but |and |so |sorry |wait |ok |hey |hi |um |er )*(?:"
    rf"what (?:do|does|did) (?:you mean )?(?:by |with )?{_THE}(.{{2,40}}?) (?:mean|means)(?: (?:here|exactly|in .*))?"
    rf"|(?:what|wat)(?: is|s| are| was|) {_THE}(.{{2,40}}?)(?: (?:means?|exactly|again|here|supposed to (?:be|mean)|meant|please))*"
    rf"|what do you mean (?:by |with )?{_THE}(.{{2,40}}?)"
    rf"|(?:define|explain|meaning of|definition of) {_THE}(.{{2,40}}?)"
    rf"|{_THE}(.{{2,40}}?) (?:means|meaning)(?: what)?)")


def understood(answers: AnswerBook, text: str) -> bool:
    """True if it is known for sure what a question asks."""
    return bool(answers.word(text) or asked_surely(text) or answers.topic_of(text))
