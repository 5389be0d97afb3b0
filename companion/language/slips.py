"""Words of training put right where a letter slipped: "i sqauted 70 yesterday"."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from rapidfuzz.distance import OSA

_ONE_OFF: Final = ("squat", "squats", "squatted", "squatting", "squated", "squating", "training", "trained", "today", "monday", "tuesday",
                   "friday", "sunday")
_TWO_OFF: Final = ("tomorrow", "yesterday", "wednesday", "thursday", "saturday")
_ONE_T: Final = {"squated": "squatted", "squating": "squatting"}
_OF_THEIR_OWN: Final = frozenset(("squad", "squads", "squatter", "trainer", "trainers", "trainee", "trailing", "toady", "sundry", "todays",
                                  "yesterdays", "tomorrows", *(f"{day}s" for day in (*_ONE_OFF, *_TWO_OFF) if day.endswith("day"))))
"""Words as near to one of these as a slip is."""
_WORD: Final = re.compile(r"[^\W\d_]{5,}")


def put_right(text: str) -> str:
    """Return a text in normal form (``phrases.normalise``) with slips in words of training and days put right."""
    return _WORD.sub(lambda word: _meant(word[0]), text)


@lru_cache(4096)
def _meant(word: str) -> str:
    """The one word that is a letter off (two in long names of days) and begins alike, if there is one."""
    if word in _OF_THEIR_OWN or word in _ONE_OFF:
        return _ONE_T.get(word, word)
    near = [one for words, most in ((_ONE_OFF, 1), (_TWO_OFF, 2)) for one in words
            if one[0] == word[0] and OSA.distance(word, one, score_cutoff=most) <= most]
    near = list(dict.fromkeys(_ONE_T.get(one, one) for one in near))
    return near[0] if len(near) == 1 else word
