"""A message about a limit as it is meant: misspelt words put right, and a unit that was said once said again."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from companion.language.limits.amounts import COUNT
from companion.language.limits.parts import SAYS_NOTHING, parts_and_rest
from companion.language.phrases import normalise
from companion.language.slips import begun_as, nearest_word

_UNIT_BEFORE: Final = re.compile(
    rf"((?:{COUNT}|an?) ?(?P<unit>day|week|wk|month)s?\b.*\bfor )(?P<many>{COUNT})(?= ?(?:$|[,;.!)]|(?:and|but|or|said)\b))")
"""A span whose unit was said before it: "no squats for 2 weeks and no bending for 4"."""
_MISSPELT: Final = {"fysio": "physio", "fisio": "physio", "fizio": "physio", "docter": "doctor", "weks": "weeks", "skwats": "squats",
                   "nothin": "nothing", "nuthin": "nothing", "nuffin": "nothing", "nowt": "nothing", "ovr": "over", "abv": "above",
                   "untl": "until", "til": "till"}
_SLIPS_OF: Final = """
    squats squatting lifting weights bending stretch stretching stretches hamstring hamstrings training exercise exercises deadlift
    deadlifts running jumping twisting physio physiotherapist doctor surgeon consultant specialist weeks months nothing barbell"""
_MEANT: Final = tuple(_SLIPS_OF.split())
"""What a misspelt word may mean: one letter off, from nine letters two, with the same beginning."""
_MEANT_LEAST: Final = 5
"""Letters from which a word may be a misspelt one; our choice."""
_NO_SLIP: Final = frozenset((
    "squad", "squads", "banding", "bonding", "binding", "blending", "trailing", "tracing", "weighs", "stretched", "stretcher", "ruining"))
"""Words of their own that are as near to one of these."""


_SETS: Final = re.compile(r"\b(?:no|not|nothing|never|without|avoid|off|don'?t|won'?t|can'?t|only|max|above|over)\b")
_SMALL_TALK: Final = re.compile(
    r"(?:^|(?<=[ ,.;]))(?:btw|by the way|fyi|lol|haha|sorry|(?:i )?forgot to (?:say|tell you|mention)(?: (?:it|that|this))?|(?:but |and )?"
    r"i (?:do |still )?feel (?:great|fine|okay|ok|good|better)(?: (?:though|tho|now|again))?|(?:s?he(?:'?s| is)) (?:so |very )?strict|"
    r"i clear myself|go ahead but)(?=$|[ ,.;!])")
_REASON: Final = re.compile(
    r"(?<!weeks)(?<!week)(?<!months)(?<!month)(?<!days)(?<!day),? (?:after|because of|due to|following|since|cos of|bc of) (?:my|the|an?) "
    r"(?:[\w-]+ ){0,3}?(?:op|operation|surgery|section|c-section|birth|delivery|baby|injury|accident|fall|stitches|heart|hernia|scan)"
    r"(?: (?:\d+|an?|one|two|three|four|five|six|a few|a couple of) (?:days?|weeks?|wks|months?) ago| last (?:week|month|year)| yesterday|"
    r" today)?(?=$|[,.;!])")
"""Why it was set, which says nothing of its end."""


@lru_cache(64)  # the same words are read by several rules in a step
def well_spelt(text: str) -> str:
    """Return a message in normal form, its misspelt words put right."""
    line = _UNIT_BEFORE.sub(r"\1\g<many> \g<unit>s", normalise(text))
    return re.sub(r"[^\W\d_]+", lambda word: _meant(word[0]), line)


def only_the_limit(text: str) -> str:
    """Return such a message without what says nothing of a limit: small talk, and the reason of it."""
    line = well_spelt(text)
    return _REASON.sub("", _SMALL_TALK.sub(" ", line)).strip() if _SETS.search(line) else line


def bare_line(text: str) -> str:
    """Return such a message without the blanks and marks about it."""
    return well_spelt(text).strip(" .!")


@lru_cache(4096)
def _meant(word: str) -> str:
    if (word in _MISSPELT or len(word) < _MEANT_LEAST or word in SAYS_NOTHING or word in _NO_SLIP or word in _MEANT
            or parts_and_rest(word)[0]):
        return _MISSPELT.get(word, word)
    return nearest_word(word, begun_as(word, _MEANT)) or word
