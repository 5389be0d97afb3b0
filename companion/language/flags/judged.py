"""Judging a sign found in a message by where it stands: dropped, doubtful or sure.

a. ordinary wording (``ORDINARY_SIGNS``) that lies over its first or last word: dropped, unless the hit says more than it;
b. denied before it ("no fever or chills"; only ``UNDER_DENIAL`` words and other signs in between) or answered after it ("fever: no"):
   dropped; not what "but" or "just" begins. A denied thought ("don't think i'm pregnant") or half a denial leaves it doubtful;
c. said of somebody else ("my dad had a heart attack"), or of a thing or an animal (``things``): dropped; "and so have i", or a comma in
   between: doubtful;
d. what hard work does too, named with the work ("legs are jelly after squats"): dropped;
e. long ago or in the past, for signs that matter only now: dropped where over as well, otherwise doubtful; what its own clause tells
   of now is so ("i have a fever and had a stent in 2019");
f. asked or supposed ("if i faint"): doubtful.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import NamedTuple

from companion.language.flags.classifier import TAKEN_OUT
from companion.language.flags.flag import Flag
from companion.language.flags.patterns import found, holds, index_of, ordinary, word_set
from companion.language.flags.tables import context
from companion.language.flags.tables.signs import Signs
from companion.language.flags.things import OF_IT, of_a_thing
from companion.language.pain.patterns import COMMA, PUNCTUATION, QUESTION, SENTENCE_ENDS

_SENTENCE = 30  # words looked at on either side of a hit, so that long texts are read quickly (choice)
_SHORTLY = 4  # words before a hit, in which it is supposed or awaited (choice)
# A doubtful sign of these that says more than the ordinary wording inside it stands ("numb when i pee").
_NEVER_PLAIN = frozenset((Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.SEXUAL))
# A sign of these counts however long ago it was.
_FOR_LIFE = frozenset((Flag.HEART_HISTORY, Flag.CANCER_BONE, Flag.SPINE_HISTORY, Flag.SELF_HARM))
_NO, _NOT, _BETWEEN, _THOUGHT = map(word_set, (context.NO, context.NOT_WORDS, context.UNDER_DENIAL, context.THOUGHT))
_AFTERWARDS, _OWN, _SUPPOSED = map(word_set, (context.TOLD_AFTERWARDS, context.ONES_OWN, context.SUPPOSITIONS))
_FAILING, _STILL_TO_COME = map(word_set, (context.FAILING, context.STILL_TO_COME))
DENYING_WORDS = _NO | _NOT
_WHOSE = frozenset(("my", "the"))  # "no change in my bladder" denies; "no my leg gave way" does not
_OPEN = frozenset(("i", "im", "ive", "my", "its", "it", "that", "thats", "id", "this", "the"))
_NEW_CLAUSE = frozenset(("had", "have", "has", "got", "ive", "i", "im", "was", "my", "just", "now", "also", "on", "since"))
TURNING_WORDS = frozenset(("but", "although", "though", "however", "except"))
_CLAUSE_ENDS = TURNING_WORDS | {COMMA, "and", "also", "plus"}
_LIKE = frozenset(("a", "an", "of", "like"))  # "not pain, more a weight on it"
_NOUNS = word_set(context.NOUNS)
_CLINICIANS, _HANDLING = word_set("<clinician>"), word_set("<handling>")


class SignFound(NamedTuple):
    """A sign found in the words: from ``start`` up to ``end``."""

    start: int
    end: int
    signs: Signs


class Judged:
    """The words of a message and the signs found in them, to be judged one by one."""

    def __init__(self, words: list[str], hits: list[SignFound]) -> None:
        self.words = words
        self.hits = hits
        self.ordinary = list(found(words, ordinary())) if hits else []
        self.others = [(start, end) for start, end, _ in found(words, index_of(context.OTHERS))] if hits else []
        self.signs = frozenset(at for hit in hits for at in range(hit.start, hit.end))

    def kept(self) -> Iterator[tuple[SignFound, bool]]:
        """The hits that count, with whether they are sure."""
        return ((hit, sure) for hit, sure in self._judged if sure is not None)

    def unexplained(self) -> list[str]:
        """The words, with those of dropped hits, or the ordinary wording over them, replaced by a mark."""
        dropped = {at for hit, sure in self._judged if sure is None for at in range(*(self._ordinary_over(hit) or (hit.start, hit.end)))}
        return [TAKEN_OUT if at in dropped else word for at, word in enumerate(self.words)]

    @cached_property
    def _judged(self) -> list[tuple[SignFound, bool | None]]:
        return [(hit, self._sure(hit)) for hit in self.hits]

    def _sure(self, hit: SignFound) -> bool | None:
        """Return whether a hit is sure; None where it is dropped."""
        if self._ordinary_over(hit):
            return None
        start, end = self._sentence(hit)
        answers = (self._denied(hit, start, end), self._somebody_elses(hit, start, end), self._of_effort(hit, start, end),
                   self._past(hit, start, end))  # fmt: skip
        if None in answers:
            return None
        return hit.signs.sure and all(answers) and not self._supposed(hit, start)

    def _ordinary_over(self, hit: SignFound) -> tuple[int, int] | None:
        """Return where the longest ordinary wording stands that a hit is dropped for, if any; "my bladder stopped working" is none."""
        over: list[tuple[int, int]] = []
        for start, end, pattern in self.ordinary:
            if pattern.concerns and hit.signs.flag not in pattern.concerns:
                continue
            if _FAILING.intersection(self.words[start:end]).difference(*pattern.needs):
                continue
            says_more = hit.start < start and end <= hit.end and (hit.signs.sure or hit.signs.flag in _NEVER_PLAIN)
            if start <= hit.start < end or (start < hit.end <= end and not says_more):
                over.append((start, end))
        return max(over, key=lambda place: (place[1] - place[0], place), default=None)

    def _sentence(self, hit: SignFound) -> tuple[int, int]:
        """Return the start and end of the sentence around a hit, no further off than ``_SENTENCE`` words."""
        start, end = hit.start, hit.end
        while start > max(0, hit.start - _SENTENCE) and self.words[start - 1] not in SENTENCE_ENDS:
            start -= 1
        while end < min(len(self.words), hit.end + _SENTENCE) and self.words[end] not in SENTENCE_ENDS:
            end += 1
        return start, end

    def _denied(self, hit: SignFound, start: int, end: int) -> bool | None:
        """None where the hit is denied, False where that is only half a denial, True where it stands."""
        words = self.words
        if _begins(words[hit.end : hit.end + 6], context.ANSWERED_AFTER):
            return None if _STILL_TO_COME.isdisjoint(words[max(start, hit.start - _SHORTLY) : hit.start]) else False
        half = opened = apart = False
        at = hit.start - 1
        while at >= start and words[at] not in DENYING_WORDS:
            word = words[at]
            if word in _THOUGHT:
                half |= words[at : at + 2] != ["thought", "of"]
            elif word in _OPEN:
                opened |= word not in _WHOSE or words[at - 1] in _NO
                half |= words[at - 1 : at + 1] == ["for", "my"]  # "not treated for my heart trouble" names it
            elif word == COMMA:
                apart = True
                if words[at + 1] in _NEW_CLAUSE:
                    return True
                if at - 1 not in self.signs and words[at - 1] not in _BETWEEN and words[at + 1] not in ("or", "nor"):
                    return True
            elif word in TURNING_WORDS or (word == "more" and words[at + 1] in _LIKE) or (word not in _BETWEEN and at not in self.signs):
                return True
            at -= 1
        if at < start or (apart and at in self.signs):  # "cant pee, chest pain"
            return True
        # "no to bladder" denies as "not" does
        plain_no = words[at] in _NO and (words[at + 1] != "to" or hit.signs.flag is Flag.SELF_HARM)
        thing = hit.signs.thing or words[hit.start] in _NOUNS
        if plain_no and (opened or not thing or words[at + 1 : at + 2] == [COMMA]):
            return True
        if words[at] in ("cant", "couldnt") and not {"be", "have"} & set(words[at : hit.start]):
            return True
        if {"not", "cant", "never", "isnt", "without"} & set(words[max(start, at - 2) : at]) - {words[at]}:
            half = True  # a denial denied; not one said again
        after = words[hit.end : min(end, hit.end + 3)]
        if "anything" in after or after[:2] == ["before", "you"]:
            after = []
        if words[at] == "never" and ("this" in words[at : hit.start] or not _NEVER_SO.isdisjoint(words[at : at + 2] + after)):
            return True
        return False if half or not _AFTERWARDS.isdisjoint(after) else None

    def _somebody_elses(self, hit: SignFound, start: int, end: int) -> bool | None:
        """None where it is somebody else's, False where it may be, True where it is one's own."""
        words = self.words
        if hit.signs.own:
            return True
        after = words[hit.end : min(end, hit.end + 6)]
        too = _holds(words[hit.end : end], context.ME_TOO)
        if not too and of_a_thing(words, start, hit.start, hit.end, hit.signs.flag):
            return None
        mine = too and _holds(words[start:end], context.OTHERS)
        # "a burden for my sons" and "cant get it up for my wife" are one's own
        theirs = hit.signs.flag not in (Flag.SELF_HARM, Flag.SEXUAL) and _begins(after, context.FAMILY)
        if theirs or _holds(words[start : hit.start], context.FAMILY_BEFORE):
            return False if mine else None
        # "the doctor told my dad not to lift" is his limit; "my family would be better off" is not the family's.
        reach = {Flag.RESTRICTION: hit.end, Flag.SELF_HARM: hit.start}.get(hit.signs.flag, hit.start + 1)
        last = max((other for other in self.others if start <= other[0] < reach and other[1] <= hit.end), default=None)
        if last is None:
            return True
        between = words[last[1] : hit.end]
        if any(word in _OWN and words[last[1] + k - 1 : last[1] + k] != ["to"] for k, word in enumerate(between)):
            return True
        if hit.signs.flag is Flag.RESTRICTION and not _CLINICIANS.isdisjoint(words[last[1] : hit.end]) and last[0] < hit.start:
            return False
        before = next((word for word in reversed(words[start : last[0]]) if word not in OF_IT), "")
        if mine or before in _HANDLING or COMMA in between[: max(0, hit.start - last[1])]:
            return False
        return None

    def _of_effort(self, hit: SignFound, start: int, end: int) -> bool | None:
        """None where hard work does it too and is named."""
        if not hit.signs.effort or not _holds(self.words[start:end], context.EFFORT):
            return True
        return None

    def _past(self, hit: SignFound, start: int, end: int) -> bool | None:
        """None where it is long over, False where it is past, True where it is now or the past does not matter."""
        if hit.signs.flag in _FOR_LIFE or self.words[hit.start] == "born":
            return True
        around, clause = self.words[start:end], self._clause(hit, start, end)
        if _holds(clause, context.PRESENT) and not _holds(clause, context.YEARS_AGO) and not _holds(clause, context.PAST_WORDS):
            around = clause
        if hit.signs.flag is Flag.FEVER and not _HAD.isdisjoint(around) and _holds(around, context.OVER_NOW):
            return None
        long_ago = _holds(around, context.YEARS_AGO)
        if not long_ago and not _holds(around, context.PAST_WORDS):
            return True
        if hit.signs.flag in _SHORT and "since" not in around and _holds(around, context.CHILDHOOD):
            return None
        if _holds(around, context.LASTING):
            return True
        if long_ago and (hit.signs.flag in _SHORT or _holds(around, context.OVER_NOW) or _holds(around, context.CHILDHOOD)):
            return None
        return False

    def _clause(self, hit: SignFound, start: int, end: int) -> list[str]:
        """Return the words of a hit's own clause: a comma, "and" or a turn ends one."""
        before = (at + 1 for at in range(hit.start - 1, start - 1, -1) if self.words[at] in _CLAUSE_ENDS)
        after = (at for at in range(hit.end, end) if self.words[at] in _CLAUSE_ENDS)
        return self.words[next(before, start) : next(after, end)]

    def _supposed(self, hit: SignFound, start: int) -> bool:
        """True if the hit is asked or supposed: "if i faint", "chest pain?"."""
        for word in reversed(self.words[max(start, hit.start - _SHORTLY) : hit.start]):
            if word in PUNCTUATION:
                break
            if word in _SUPPOSED:
                return True
        return self.words[hit.end : hit.end + 1] == [QUESTION]


_NEVER_SO = frozenset(("like", "before", "so", "this"))  # "never felt so faint" is no denial
_HAD = frozenset(("had", "caught", "was", "last", "been", "ago", "recovered", "got"))
# What was such long ago is no longer.
_SHORT = frozenset((Flag.FEVER, Flag.FALL, Flag.PREGNANCY, Flag.WEIGHT_LOSS, Flag.UNDER_18))


def _begins(words: list[str], table: str) -> bool:
    """True if a pattern of a table matches at the very beginning."""
    return any(start == 0 for start, _, _ in found(words, index_of(table)))


def _holds(words: list[str], table: str) -> bool:
    """True if a pattern of a table matches anywhere."""
    return holds(words, index_of(table))
