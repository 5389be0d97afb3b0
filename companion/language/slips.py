"""The word meant where a letter slipped: "i sqauted 70 yesterday"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from rapidfuzz.distance import OSA

TWO_FROM: Final = 9
"""Letters from which a word may be two slips off (choice)."""
NEVER: Final = 99
"""As ``TWO_FROM``: one slip only, however long the word."""

_ONE_OFF: Final = ("squat", "squats", "squatted", "squatting", "squated", "squating", "training", "trained", "today", "monday", "tuesday",
                   "friday", "sunday")
_TWO_OFF: Final = ("tomorrow", "yesterday", "wednesday", "thursday", "saturday")
_READ_AS: Final = {"squated": "squatted", "squating": "squatting", "2day": "today", "2moro": "tomorrow", "2morrow": "tomorrow",
                   "2morow": "tomorrow", "tmrw": "tomorrow", "2nite": "tonight", "2night": "tonight"}
_OF_THEIR_OWN: Final = frozenset(("squad", "squads", "squatter", "trainer", "trainers", "trainee", "trailing", "toady", "sundry", "todays",
                                  "yesterdays", "tomorrows", *(f"{day}s" for day in (*_ONE_OFF, *_TWO_OFF) if day.endswith("day"))))
"""Words as near to one of these as a slip is."""
_WORD: Final = re.compile(r"\b2?[^\W\d_]{3,}\b")


def nearest_word(word: str, words: Iterable[str], two_from: int = TWO_FROM) -> str | None:
    """Return the one of some words that is nearest to a mistyped one: a slip off (a letter too many, missing, wrong, or turned round with
    the next), or two where it has ``two_from`` letters; None if there is none, or more than one as near."""
    off = {one: OSA.distance(word, one, score_cutoff=2) for one in words}
    least = min(off.values(), default=3)
    near = [one for one, slips in off.items() if slips == least <= (2 if len(one) >= two_from else 1)]
    return near[0] if len(near) == 1 else None


def begun_as(word: str, words: Iterable[str]) -> list[str]:
    """Return those of some words that begin with a word's first letter, where slips are rare."""
    return [one for one in words if one[0] == word[0]]


def put_right(text: str) -> str:
    """Return a text in normal form (``phrases.normalise``) with slips in words of training and days put right."""
    return _WORD.sub(lambda word: _meant(word[0]), text)


@lru_cache(4096)
def _meant(word: str) -> str:
    if word in _READ_AS:
        return _READ_AS[word]
    if len(word) < 5 or word in _OF_THEIR_OWN or word in _ONE_OFF:
        return word
    near = {_READ_AS.get(one, one) for words, two_from in ((_ONE_OFF, NEVER), (_TWO_OFF, 0))
            if (one := nearest_word(word, begun_as(word, words), two_from))}
    return near.pop() if len(near) == 1 else word
