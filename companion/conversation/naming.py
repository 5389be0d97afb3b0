"""Names of questions: by which words, side or place in the order a message names one, of those answered or those to come.

A question's names are the words of its key, those of the heading it begins with ("Second set, changed: …"), and the rows of ``names`` in
acts.toml for its key or a part of it.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.flow import SIDES, Ask
from companion.language.act_rules import tables_in, words_of
from companion.language.clauses import flat
from companion.language.units import unit_word

COMPARED_WITH: Final = re.compile(
    r"(?<=\w) (?:than|as|like|from|with|same (?:in|on)) (?:on |in |for )?(?:the |my )?(?:first|second|left|right|other|last|previous|"
    r"usual|plain|slow)(?: ones?| times?| leg| side| foot)?\b")
"""What an answer is only compared with."""

POINTS_EACH: Final = 2
"""Points for a question that is named, by a word, its side or its place in the order; our choice."""

_ORDER: Final = tuple(enumerate((
    r"first(?! of)|1st|(?:set|number|rep|squat|no\.?|change|try|go) (?:1|one)|original",
    r"second|2nd|(?:set|number|change|no\.?|try|go) (?:2|two)", r"third|3rd|(?:set|number|change|no\.?|try|go) 3",
    r"fourth|4th|(?:set|number|change|no\.?|try|go) 4"), 1))
_SAID_IN: Final = tuple((number, re.compile(rf"\b(?:{words})\b")) for number, words in _ORDER)
_THING: Final = r"(?:one|set|answer|question|go|try|attempt|rep|side|leg|number|reading|day|time|step|thing)s?"
_AGO: Final = tuple((number, re.compile(rf"\b(?:{words})\b")) for number, words in (
    (3, rf"three (?:{_THING} )?(?:ago|back|before|earlier)"),
    (2, rf"(?:two|couple|2) (?:of )?(?:{_THING} )?(?:ago|back|before|earlier)|{_THING} before (?:that|last)|(?:second|next) (?:to )?last|"
        r"last but one|penultimate"),
    (1, rf"{_THING} (?:just |right )?before|before this|previous|(?:my|the|that) last(?: {_THING})?|(?:i )?just "
        r"(?:sent|said|gave|put|typed|did|answered|told)|one (?:ago|back)|undo")))
_HEADING: Final = re.compile(r"(?:^|\n\n)([^.?!:\n]{3,60}):\s")
_TOO_COMMON: Final = frozenset((
    "left", "right", "leg", "legs", "set", "first", "second", "third", "fourth", "last", "again", "usual", "once", "foot", "side", "five",
    "ten", "seconds", "those", "done", "change", "number", "limit", "start", "first", "did", "kg", "check", "next", "day"))


def orders(plain: str) -> set[int]:
    """Return the places in an order that a text names: "second set" → {2}."""
    return {number for number, pattern in _SAID_IN if pattern.search(plain)}


def ago(plain: str) -> int:
    """Return how many answers ago a text says that one was: "the one before" → 1; 0 if it doesn't."""
    return next((number for number, pattern in _AGO if pattern.search(plain)), 0)


def sides(plain: str) -> set[str]:
    """Return the sides that a text names."""
    return {side for side in SIDES if re.search(rf"\b{side}\b", plain)}


def points(draft: Draft, ask: Ask, plain: str) -> int:
    """Return how clearly a text names a question: 0 not at all, ``POINTS_EACH`` a way it does, less than 0 if it names another side or
    place in the order. ``plain``: spelt, without what is only compared with."""
    said, place = sides(plain), _place(draft, ask)
    rating = 0
    if said and ask.side:
        rating += POINTS_EACH if ask.side in said else -10
    if (told := orders(plain)) and place:
        rating += POINTS_EACH if place in told else -10
    return rating + POINTS_EACH * bool(_names(_stem(ask), heading_of(draft, ask)).search(plain))


def names_it(draft: Draft, ask: Ask, plain: str) -> bool:
    """True if a text names a question by a word."""
    return bool(_names(_stem(ask), heading_of(draft, ask)).search(plain))


def _stem(ask: Ask) -> str:
    return ask.key.removeprefix(f"{ask.side}_") if ask.side else ask.key


def heading_of(draft: Draft, ask: Ask) -> str:
    """Return the heading a question begins with ("second set, changed"), "" where it has none."""
    found = _HEADING.search(ask.say)
    return flat(draft.worded(found[1], ask.side)) if found else ""


def _place(draft: Draft, ask: Ask) -> int:
    """Return a question's place in the order that its heading or its key tells, 0 for none; the first of several without a number is 1."""
    told = orders(heading_of(draft, ask))
    last = ask.key.rsplit("_", 1)[-1]
    if len(told) == 1:
        return told.pop()
    if last.isdecimal():
        return int(last)
    change = re.search(r"_(\d)_", ask.key)
    if change:
        return int(change[1])
    return int(ask.key.startswith(("plain", "usual")) or f"{ask.key}_2" in draft.compiled.stops)


@lru_cache(maxsize=512)
def _names(stem: str, heading: str) -> re.Pattern[str]:
    rows = tables_in("names")
    parts = [part for part in stem.split("_") if len(part) > 2 and part not in _TOO_COMMON and unit_word(part) is None]
    words = [rows[stem]] if stem in rows else [rows.get(part, re.escape(part)) for part in parts]
    words += [re.escape(word) for word in re.findall(r"[a-z]+", heading)
              if len(word) > 3 and word not in _TOO_COMMON and word not in words_of("filler") and stem not in rows]
    return re.compile(rf"\b(?:{'|'.join(words)})\b") if words else re.compile(r"(?!)")
