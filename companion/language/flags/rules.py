"""Hearing flags in whatever words they are typed, also misspelt, in capitals, or in the middle of an answer.

A false alarm costs a question; a miss may cost far more. So a sign that is neither clearly denied, nor clearly somebody else's, nor clearly
ordinary is heard, as doubtful (``sure`` False) where the wording leaves it open. The words stand in ``tables``, typing is read in
``spelling``. The order of decision:

1. The text is cut into words; ``. ! ? ;`` and a new line end a sentence, a comma a clause. A misspelt word of the flags is put right, and
   what is said in several words is read as one (``READ_AS``: "not able to" is "cant").
2. Every pattern of the tables that matches is a hit.
3. Each hit is judged where it stands (``judged``): dropped, doubtful or sure.
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
from itertools import islice, pairwise

from companion.language.flags.classifier import TAKEN_OUT, Weighed, weigh
from companion.language.flags.flag import URGENT, Flag, Heard
from companion.language.flags.judged import DENYING_WORDS, TURNING_WORDS, Judged, SignFound
from companion.language.flags.patterns import COMPILED_READ_AS, COMPILED_SIGNS, Pattern, found, holds, index_of, word_set
from companion.language.flags.spelling import TypedWord, words_typed
from companion.language.flags.tables import context
from companion.language.pain.patterns import PUNCTUATION, SENTENCE_ENDS

_LEFT_TO_WEIGH = 2  # words at least, where some were taken out (choice)
_BRIEF = 16  # words: a sentence in which nothing is lost beside much else (choice)
_PLAIN = 3  # words: "got a fever" is what it says (choice)
_NEAR = 5  # words on either side of what was heard, which are looked at alone too (choice)
_SENTENCES = 16  # which are looked at one by one (choice)
_ORDER = {flag: at for at, flag in enumerate(Flag)}
_TURN = re.compile(rf"\b(?:just|{'|'.join(sorted(TURNING_WORDS))})\b", re.IGNORECASE)
_STROKE_SHOWS = word_set("face mouth smile lip cheek eyelid speech slurred slurring")
_LIGHT_HEAD = (word_set("<dizzy>") - word_set("faint faintness fainty")) | {"stars"}


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
    if not its or holds(message, index_of(context.ME_TOO)) or any(_stands(other, part) for other in others for part in its):
        return False
    return all(_lost_in(one, *_from_the_turn(one, part, sentences[part])) for part in its)


def _lost_in(one: Heard, part: str, words: list[str]) -> bool:
    """True if what is learnt speaks against a flag in a sentence with its words. Nothing does against light in the head: "dizzy on the last
    set" is ordinary to many, and asked about all the same. Nor, where the rules are sure, against what a stroke shows in."""
    never = _LIGHT_HEAD | _STROKE_SHOWS if one.sure else _LIGHT_HEAD
    if one.flag is Flag.CHEST and not never.isdisjoint(words):  # as they are read, slips put right
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
    if DENYING_WORDS.isdisjoint(word for word, _, _ in words_typed(part[:turn])):
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


def _read(text: str) -> tuple[list[TypedWord], Judged]:
    """Return the words as they were typed and read, and the message they make."""
    typed = _read_as(words_typed(text))
    words = [word for word, _, _ in typed]
    hits = [SignFound(start, end, pattern.signs) for start, end, pattern in found(words, COMPILED_SIGNS) if pattern.signs is not None]
    return typed, Judged(words, hits)


def _heard(text: str, typed: list[TypedWord], message: Judged) -> tuple[Heard, ...]:
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
