"""Hearing flags in whatever words they are typed, also misspelt, in capitals, or in the middle of an answer.

A false alarm costs a question; a miss may cost far more. So a sign that is neither clearly denied, nor clearly somebody else's, nor clearly
ordinary is heard, as doubtful (``sure`` False) where the wording leaves it open. The words stand in ``tables``, typing is read in
``spelling``. The order of decision:

1. The text is cut into words; ``. ! ? ;`` and a new line end a sentence, a comma a clause. A misspelt word of the flags is put right, and
   what is said in several words is read as one (``READ_AS``: "not able to" is "cant").
2. Every pattern of the tables that matches is a hit.
3. Each hit is looked at where it stands:
   a. ordinary wording (``ORDINARY_SIGNS``) that lies over its first or last word: dropped, unless the hit says more than it;
   b. denied before it ("no fever or chills"; only ``UNDER_DENIAL`` words and other signs in between) or answered after it ("fever: no"):
      dropped; not what "but" or "just" begins. A denied thought ("don't think i'm pregnant") or half a denial leaves it doubtful;
   c. said of somebody else ("my dad had a heart attack"), or of a thing or an animal (``things``): dropped; "and so have i", or a comma in
      between: doubtful;
   d. what hard work does too, named with the work ("legs are jelly after squats"): dropped;
   e. long ago or in the past, for signs that matter only now: dropped where over as well, otherwise doubtful; what its own clause tells
      of now is so ("i have a fever and had a stent in 2019");
   f. asked or supposed ("if i faint"): doubtful.
4. Of each flag the surest hit is kept. Self-harm stands first, then the sure before the doubtful, each in the order of ``Flag``.
5. Where nothing is left, ``classifier`` weighs the message, and may still hear a doubtful flag; to one doubtful flag, its own or the
   rules', it adds what else may be meant, so that the question names these too; to one sure flag of the rules, the one it finds likelier,
   as doubtful. One flag of the rules that it speaks against is dropped: the surer and the more urgent it is, the more must speak against,
   in its sentence and near by, and of what is urgent in the whole message; not "and so did i".
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cached_property
from itertools import islice, pairwise
from typing import NamedTuple

from companion.language.flags.classifier import TAKEN_OUT, Weighed, weigh
from companion.language.flags.flag import URGENT, Flag, Heard
from companion.language.flags.patterns import COMPILED_READ_AS, COMPILED_SIGNS, Pattern, found, holds, index_of, ordinary, word_set
from companion.language.flags.spelling import TypedWord, words_typed
from companion.language.flags.tables import context
from companion.language.flags.tables.signs import Signs
from companion.language.flags.things import OF_IT, of_a_thing
from companion.language.pain.patterns import COMMA, PUNCTUATION, QUESTION, SENTENCE_ENDS

_LEFT_TO_WEIGH = 2  # words at least, where some were taken out (choice)
_BRIEF = 16  # words: a sentence in which nothing is lost beside much else (choice)
_PLAIN = 3  # words: "got a fever" is what it says (choice)
_SENTENCE = 30  # words looked at on either side of a hit, so that long texts are read quickly (choice)
_SHORTLY = 4  # words before a hit, in which it is supposed or awaited (choice)
_NEAR = 5  # words on either side of what was heard, which are looked at alone too (choice)
_SENTENCES = 16  # which are looked at one by one (choice)
_ORDER = {flag: at for at, flag in enumerate(Flag)}
# A doubtful sign of these that says more than the ordinary wording inside it stands ("numb when i pee").
_NEVER_PLAIN = frozenset((Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.SEXUAL))
# A sign of these counts however long ago it was.
_FOR_LIFE = frozenset((Flag.HEART_HISTORY, Flag.CANCER_BONE, Flag.SPINE_HISTORY, Flag.SELF_HARM))
_NO, _NOT, _BETWEEN, _THOUGHT = map(word_set, (context.NO, context.NOT_WORDS, context.UNDER_DENIAL, context.THOUGHT))
_AFTERWARDS, _OWN, _SUPPOSED = map(word_set, (context.TOLD_AFTERWARDS, context.ONES_OWN, context.SUPPOSITIONS))
_FAILING, _STILL_TO_COME = map(word_set, (context.FAILING, context.STILL_TO_COME))
_DENIALS = _NO | _NOT
_WHOSE = frozenset(("my", "the"))  # "no change in my bladder" denies; "no my leg gave way" does not
_OPEN = frozenset(("i", "im", "ive", "my", "its", "it", "that", "thats", "id", "this", "the"))
_NEW_CLAUSE = frozenset(("had", "have", "has", "got", "ive", "i", "im", "was", "my", "just", "now", "also", "on", "since"))
_TURNS = frozenset(("but", "although", "though", "however", "except"))
_TURN = re.compile(rf"\b(?:just|{'|'.join(sorted(_TURNS))})\b", re.IGNORECASE)
_CLAUSE_ENDS = _TURNS | {COMMA, "and", "also", "plus"}
_LIKE = frozenset(("a", "an", "of", "like"))  # "not pain, more a weight on it"
_NOUNS = word_set(context.NOUNS)
_CLINICIANS, _HANDLING = word_set("<clinician>"), word_set("<handling>")
_LIGHT_HEAD = (word_set("<dizzy>") - word_set("faint faintness fainty")) | {"stars"}


class SignFound(NamedTuple):
    """A sign found in the words: from ``start`` up to ``end``."""

    start: int
    end: int
    signs: Signs


def hear_flags(text: str) -> tuple[Heard, ...]:
    """Return the flags a message carries, the strongest first; () where none. Never raises."""
    typed, message = _read(text)
    heard = _heard(text, typed, message)
    words = message.unexplained()
    sentences = _sentences(text, typed, words)
    if len(heard) > 1 and len(sentences) == 1:
        return heard
    said = weigh(text, _without(text, typed, words), words)
    kept = tuple(one for one in heard if not ((said.against(one) or one.flag not in URGENT) and
                                              _spoken_against(one, heard, sentences, words)))
    if len(kept) > 1:
        return kept
    if not kept:
        return _suspected(words, sentences, said)
    one = kept[0]
    if one.sure:  # and, as doubtful, the one that is found likelier
        return _in_order((one, *(Heard(flag, False, one.words) for flag in said.unnamed(one.flag))))
    return (replace(one, also=() if said.against(one) else said.beside(one.flag)),)


def _spoken_against(one: Heard, heard: tuple[Heard, ...], sentences: dict[str, list[str]], message: list[str]) -> bool:
    """True if what is learnt speaks against a flag of the rules in its sentence and in the words around it, in each where its words stand;
    not where one has another too, or few words beside it. What turns from a denial ("no fever but chills") is judged alone."""
    its = [part for part in sentences if _stands(one.words, part)]
    others = [other.words for other in heard if other is not one]
    if not its or _holds(message, context.ME_TOO) or any(_stands(other, part) for other in others for part in its):
        return False
    return all(_lost_in(one, *_from_the_turn(one, part, sentences[part])) for part in its)


def _lost_in(one: Heard, part: str, words: list[str]) -> bool:
    """True if what is learnt speaks against a flag in a sentence with its words. Nothing does against light in the head: "dizzy on the last
    set" is ordinary to many, and asked about all the same."""
    if one.flag is Flag.CHEST and not _LIGHT_HEAD.isdisjoint(words):  # as they are read, slips put right
        return False
    plainly = one.sure if one.flag in (Flag.SELF_HARM, Flag.CHEST) else words[0] == "i"
    says_all = plainly and len(words) <= len(one.words.split()) + 1  # "i have a cold", "necked a box of codeine"
    if says_all or len(words) <= _PLAIN:
        return False
    return weigh(part, part, words).against(one) and (len(words) <= _BRIEF or _around(one, part).against(one))


def _from_the_turn(one: Heard, part: str, words: list[str]) -> tuple[str, list[str]]:
    """Return the sentence of what was heard with its words, from where it turns from a denial on: "no fever, just chills"."""
    at = _stands(one.words, part)
    turn = max((turn.end() for turn in _TURN.finditer(part, 0, at.start() if at else 0)), default=0)
    if _DENIALS.isdisjoint(word for word, _, _ in words_typed(part[:turn])):
        return part, words
    return part[turn:].lstrip(), [word for word, _, _ in words_typed(part[turn:])]


def _stands(words: str, text: str) -> re.Match[str] | None:
    """Return where some words stand in a text: "a stent" not in "consistent"."""
    return re.search(rf"(?<!\w){re.escape(words)}(?!\w)", text)


def _sentences(text: str, typed: list[TypedWord], words: list[str]) -> dict[str, list[str]]:
    """Return the sentences of a message as typed, with their words."""
    ends = [at for at, word in enumerate(words) if word in SENTENCE_ENDS]
    places = [(start + 1, end) for start, end in pairwise([-1, *ends, len(words)]) if end > start + 1]
    return {text[typed[start][1] : typed[end - 1][2]]: words[start:end] for start, end in places}


def _around(heard: Heard, text: str) -> Weighed:
    """Return what speaks for flags in the words near the one heard: beside much else it may be lost."""
    at = _stands(heard.words, text)
    before, after = (text[: at.start()], text[at.end() :]) if at else (text, "")
    near = " ".join((*before.split()[-_NEAR:], heard.words, *after.split()[:_NEAR]))
    return weigh(near, near, [word for word, _, _ in words_typed(near)])


def by_the_rules(text: str) -> tuple[Heard, ...]:
    """Return what the rules alone hear."""
    return _heard(text, *_read(text))


def unexplained(text: str) -> tuple[str, list[str]]:
    """Return a message and its words as ``classifier`` weighs them: without what the rules found and dropped."""
    typed, message = _read(text)
    words = message.unexplained()
    return _without(text, typed, words), words


def _without(text: str, typed: list[TypedWord], words: list[str]) -> str:
    """Return the text with each word taken out replaced by a mark."""
    for (_, start, end), word in zip(reversed(typed), reversed(words), strict=True):
        if word == TAKEN_OUT:
            text = text[:start] + TAKEN_OUT + text[end:]
    return text


def _read(text: str) -> tuple[list[TypedWord], _Message]:
    """Return the words as they were typed and read, and the message they make."""
    typed = _read_as(words_typed(text))
    words = [word for word, _, _ in typed]
    hits = [SignFound(start, end, pattern.signs) for start, end, pattern in found(words, COMPILED_SIGNS) if pattern.signs is not None]
    return typed, _Message(words, hits)


def _heard(text: str, typed: list[TypedWord], message: _Message) -> tuple[Heard, ...]:
    return _strongest_first(text, typed, message.kept())


def _suspected(words: list[str], sentences: dict[str, list[str]], said: Weighed) -> tuple[Heard, ...]:
    """Return the doubtful flag found in words the rules heard nothing in, or in one of their sentences, what else it may be, and the
    sentence most suspicious."""
    if sum(word != TAKEN_OUT and word[0].isalnum() for word in words) < _LEFT_TO_WEIGH <= len(words) or not sentences:
        return ()
    if _unsuspected(words):
        return ()
    parts = {part: weigh(part, part, of) if len(sentences) > 1 else said for part, of in islice(sentences.items(), _SENTENCES)}
    most = max(parts, key=lambda part: parts[part].some)
    if not said.asked(len(words)):
        said = parts[most]
        if len(sentences) == 1 or not said.asked(len(sentences[most])):
            return ()
    first, *also = said.likeliest()
    return (Heard(first, False, most, tuple(also)),)


def _unsuspected(words: list[str]) -> bool:
    """True if there is nothing but figures and wording nothing is suspected in: "in may 2020"."""
    plain = {at for start, end, _ in found(words, index_of(context.UNSUSPECTED)) for at in range(start, end)}
    return all(at in plain or word in PUNCTUATION or word[0].isdecimal() for at, word in enumerate(words))


def _strongest_first(text: str, typed: list[TypedWord], kept: Iterator[tuple[SignFound, bool]]) -> tuple[Heard, ...]:
    """The surest hit of each flag; among equals the longest, of these the first."""
    best: dict[Flag, tuple[bool, int, SignFound]] = {}
    for hit, sure in kept:
        flag, length = hit.signs.flag, hit.end - hit.start
        if flag not in best or (sure, length, -hit.start) > (*best[flag][:2], -best[flag][2].start):
            best[flag] = (sure, length, hit)
    heard = [Heard(flag, sure, text[typed[hit.start][1] : typed[hit.end - 1][2]]) for flag, (sure, _, hit) in best.items()]
    return _in_order(heard)


def _in_order(heard: Iterable[Heard]) -> tuple[Heard, ...]:
    return tuple(sorted(heard, key=lambda one: (one.flag is not Flag.SELF_HARM, not one.sure, _ORDER[one.flag])))


def _read_as(typed: list[TypedWord]) -> list[TypedWord]:
    """The words, with what is said in several read as one."""
    for _ in range(2):  # one reading may lead to another: "not able to feel my" is "cant feel my"
        words = [word for word, _, _ in typed]
        places = sorted(found(words, COMPILED_READ_AS), key=lambda place: (place[0], -place[1]))
        if not places:
            break
        typed = _replaced(typed, places)
    return typed


def _replaced(typed: list[TypedWord], places: list[tuple[int, int, Pattern]]) -> list[TypedWord]:
    read: list[TypedWord] = []
    at = 0
    for start, end, pattern in places:
        if start >= at:
            read.extend(typed[at:start])
            read.extend((word, typed[start][1], typed[end - 1][2]) for word in pattern.instead)
            at = end
    return [*read, *typed[at:]]


class _Message:
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
        half = opened = False
        at = hit.start - 1
        while at >= start and words[at] not in _DENIALS:
            word = words[at]
            if word in _THOUGHT:
                half |= words[at : at + 2] != ["thought", "of"]
            elif word in _OPEN:
                opened |= word not in _WHOSE or words[at - 1] in _NO
                half |= words[at - 1 : at + 1] == ["for", "my"]  # "not treated for my heart trouble" names it
            elif word == COMMA:
                if words[at + 1] in _NEW_CLAUSE:
                    return True
                if at - 1 not in self.signs and words[at - 1] not in _BETWEEN and words[at + 1] not in ("or", "nor"):
                    return True
            elif word in _TURNS or (word == "more" and words[at + 1] in _LIKE) or (word not in _BETWEEN and at not in self.signs):
                return True
            at -= 1
        if at < start:
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
