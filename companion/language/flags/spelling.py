"""The words of a message with where each stands in it; misspelt words of the flags put right, all others left alone."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from itertools import chain

from rapidfuzz import process
from rapidfuzz.distance import OSA

from companion.language.flags.patterns import COMPILED_READ_AS, COMPILED_SIGNS, PatternIndex, word_set
from companion.language.flags.tables import context
from companion.language.pain.patterns import COMMA, EVERYDAY_WORDS, EXCLAMATION, FULL_STOP, QUESTION
from companion.language.phrases import LONGEST_READ

TypedWord = tuple[str, int, int]
"""A word as it is read, and where in the message it was typed: from, up to."""

_SPELLING = {wrong: right for right, wrongs in context.SIGN_SPELLINGS.items() for wrong in wrongs.split()}
_MISTYPED = sorted(word_set(context.MISTYPED_SIGNS))


def _words_of(index: PatternIndex) -> frozenset[str]:
    every = {step.words for pattern in chain(*index.values()) for part in pattern.parts for step in part}
    return frozenset().union(*every)


KNOWN_WORDS = frozenset().union(_words_of(COMPILED_SIGNS), _words_of(COMPILED_READ_AS), _MISTYPED, EVERYDAY_WORDS,
                                word_set(context.REAL_WORDS + context.UNDER_DENIAL))
# Words no other word ends or begins with, found where two are run together ("chestpain", "impregnant").
_GLUED = frozenset(word for word in _MISTYPED if len(word) > 5) | {"chest", "heart", "blood", "fever", "suicide"}

_TOKEN = re.compile(r"[^\W\d_]+(?:['’`´‘ʼ][^\W\d_]+)*|\d+(?:[.,/:]\d+)*|[^\w\s]|[\r\n\u2028\u2029]+")
_APOSTROPHES = str.maketrans("", "", "'’`´‘ʼ")
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_MARKS = {"?": QUESTION, ".": FULL_STOP, "!": EXCLAMATION, ";": FULL_STOP, "…": FULL_STOP, **dict.fromkeys(",:()–—-=/", COMMA), "&": "and"}


def words_typed(text: str) -> list[TypedWord]:
    """Return the words and marks of a message. Reads the first ``LONGEST_READ`` characters."""
    text = text[:LONGEST_READ]
    plain, where = (text.lower(), None) if text.isascii() else _folded(text)
    words: list[TypedWord] = []
    for found in _TOKEN.finditer(plain):
        token, start, end = found[0], found.start(), found.end()
        if where is not None:
            start, end = where[start], where[end - 1] + 1
        if token[0].isalpha():
            word = token.translate(_APOSTROPHES)
            words.extend((word, start, end) for word in (("i", "will") if word == "ill" != token else _spelt(word)))
        elif token[0].isdigit():
            words.append((token, start, end))
        elif token[0] in "\r\n\u2028\u2029":
            words.append((FULL_STOP, start, end))
        elif token == "-" and _joins(plain, found.start()):
            continue
        elif token == "/" and _joins(plain, found.start()):
            words.append(("or", start, end))
        elif token in _MARKS:
            words.append((_MARKS[token], start, end))
    return words


def letters_of(text: str) -> str:
    """Return a message in plain small letters, without apostrophes."""
    text = text[:LONGEST_READ]
    return (text.lower() if text.isascii() else _folded(text)[0]).translate(_APOSTROPHES)


def _joins(plain: str, at: int) -> bool:
    """True if the sign at a place stands between two letters."""
    return 0 < at < len(plain) - 1 and plain[at - 1].isalnum() and plain[at + 1].isalnum()


def _folded(text: str) -> tuple[str, list[int]]:
    """The text in plain small letters, and the place in the text of each letter."""
    plain: list[str] = []
    where: list[int] = []
    for at, letter in enumerate(text):
        for piece in unicodedata.normalize("NFKD", letter).casefold():
            if piece in "\r\n\t" or unicodedata.category(piece) not in ("Mn", "Mc", "Me", "Cf", "Cc"):
                plain.append(piece)
                where.append(at)
    return "".join(plain), where


@lru_cache(maxsize=4096)
def _spelt(token: str) -> tuple[str, ...]:
    """The word meant; two where a word of the flags is run together with another."""
    if token in _SPELLING:
        return (_SPELLING[token],)
    if token in KNOWN_WORDS:
        return (token,)
    for short in (_DRAWN_OUT.sub(r"\1", token), _DRAWN_OUT.sub(r"\1\1", token)):
        if short != token and (short in KNOWN_WORDS or short in _SPELLING):
            return (_SPELLING.get(short, short),)
    if len(token) < 5 or len(token) > 30:
        return (token,)
    for cut in range(2, len(token) - 1):
        left, right = token[:cut], token[cut:]
        if (left in _GLUED and right in KNOWN_WORDS) or (right in _GLUED and left in KNOWN_WORDS):
            return (left, right)
    return (_nearest(token),)


def _nearest(token: str) -> str:
    """The word of the flags that was meant: one edit away (two from nine letters) and begun alike, or what was typed."""
    slips = 2 if len(token) > 8 else 1
    for word, _, _ in process.extract(token, _MISTYPED, scorer=OSA.distance, score_cutoff=slips, limit=4):
        if word[0] == token[0] or word[1::-1] == token[:2]:
            return str(word)
    return token
