"""Clauses of a message, each with its mood: whether it asserts something, and about now.

Only an asserted clause answers a question. "Hardly changed", "did it change?", "I'll change tomorrow" and "she said it changed" hold the
same words and assert something else. Tables are data: words without apostrophes, as ``flat`` leaves them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from enum import Enum
from functools import lru_cache
from typing import Final, NamedTuple

from companion.language.act_rules import matches, words_of
from companion.language.phrases import normalise


class Mood(Enum):
    """The mood of a clause: what it does with its words; all but ``SAID`` and ``ASKED`` name their table in acts.toml."""

    SAID = "said"
    HEDGED = "hedged"
    ASKED = "asked"
    WAITS = "waits"
    PLANNED = "planned"
    OTHERS = "others"
    BEFORE = "before"
    SUPPOSED = "supposed"


class Clause(NamedTuple):
    """One clause: its words without apostrophes, and its mood. ``ends``: the sign it ended with, "" for none; ``raw``: with its signs."""

    words: tuple[str, ...]
    mood: Mood
    ends: str = ""
    raw: str = ""

    @property
    def text(self) -> str:
        """The words with a space between them."""
        return " ".join(self.words)


_QUOTED: Final = re.compile(r"\"([^\"]{1,60})\"|(?<![a-z0-9])'([^']{2,60})'(?![a-z0-9])")
_CUT: Final = re.compile(
    r"([?!;]+|\.{2,}|\.(?=\s|$)|,(?=\s|[a-z])|\s-+\s|\s*[()]\s*|\n)|"
    r"(?<! on)(?<! of)(?<! in)(?<! at)(?<! to)\s(?=(?:but|because|cos|cuz|coz|since|although|though|tho|then|so|"
    r"which|while|whereas)\s)")
_CUT_AND: Final = re.compile(r"\s(?:and|&|\+)\s")
_APOSTROPHE: Final = re.compile(r"(?<=[a-z])'(?=[a-z])")
_WORD: Final = re.compile(r"[^\W_]+(?:[.,:/][0-9]+)*[%°]?|°")
_ECHO: Final = 3
"""Most words of an answer with a question mark ("parallel?"), which is doubtful and no question; our choice."""

_TRIED: Final = (Mood.OTHERS, Mood.WAITS, Mood.PLANNED, Mood.BEFORE, Mood.SUPPOSED, Mood.HEDGED)
WHOLE_ANSWER: Final = frozenset(("yes", "yeah", "yep", "yup", "yea", "ya", "yh", "no", "nope", "nah", "naw"))

_GOES_ON: Final = frozenset(("i", "it", "he", "she", "they", "way", "idea", "clue", "pain", "bar", "rounding", "not",
                            "squats", "squatting", "more"))
"""Words with which a yes or no is one phrase ("no bar", "no squats till friday"), not an answer in front of a clause."""


def flat(text: str) -> str:
    """Return a normalised text without the apostrophes inside its words: "don't" → "dont"."""
    return _APOSTROPHE.sub("", normalise(text))


@lru_cache(maxsize=256)
def clauses(text: str) -> tuple[Clause, ...]:
    """Return the clauses of a message in order, each with its mood. Never raises."""
    return tuple(_cut(_QUOTED.sub(lambda found: f" {found[1] or found[2]} ", flat(text.replace("\n", ". ")))))


def _cut(plain: str) -> Iterator[Clause]:
    parts: list[tuple[str, str]] = []
    at = 0
    for found in _CUT.finditer(plain):
        sign = (found[1] or "").strip()
        parts.append((plain[at:found.start()], sign))
        at = found.end()
    parts.append((plain[at:], ""))
    for part, sign in parts:
        asks = False
        pieces = _CUT_AND.split(part)
        for n, piece in enumerate(pieces):
            for clause in _clause(piece, sign if n == len(pieces) - 1 or "?" in sign else ""):
                asks = asks or clause.mood is Mood.ASKED
                yield clause._replace(mood=Mood.ASKED) if asks else clause  # "between high and low": one question


def _clause(piece: str, sign: str) -> Iterator[Clause]:
    words = _WORD.findall(piece)
    if not words:
        return
    if len(words) > 2 and "?" not in sign and words[0] in WHOLE_ANSWER and words[1] not in _GOES_ON:
        yield Clause((words[0],), Mood.SAID, ",", words[0])
        words = words[1:]
    yield Clause(tuple(words), _mood(words, sign), sign, piece)


def _mood(words: list[str], sign: str) -> Mood:
    start = 0
    while start < len(words) - 1 and words[start] in words_of("lead_in"):
        start += 1
    text, rest = " ".join(words), " ".join(words[start:])
    if matches("moods.asks_at_start", rest) or matches("moods.asks_inside", text):
        return Mood.ASKED
    if "?" in sign:
        return Mood.HEDGED if len(words) - start <= _ECHO else Mood.ASKED
    return next((mood for mood in _TRIED if matches(f"moods.{mood.value}", text)), Mood.SAID)
