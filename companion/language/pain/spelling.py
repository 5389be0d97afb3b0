"""Words of a text with misspelt words of pain corrected, all others unchanged."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from itertools import chain

from rapidfuzz import process
from rapidfuzz.distance import OSA

from companion.language.pain.degree import Pain
from companion.language.pain.patterns import (
    CAUSE_RULES,
    COMMA,
    ELLIPSIS_RULES,
    EVERYDAY_WORDS,
    EXCLAMATION,
    FULL_STOP,
    HITS,
    NOW_RULES,
    ORDINARY_RULES,
    PAST_RULES,
    QUESTION,
    listed,
    word_set,
    words_of,
)
from companion.language.pain.tables import PAIN_SECTIONS
from companion.language.phrases import LONGEST_READ, normalise

_BESIDE = PAIN_SECTIONS["beside"]
_SPELLING = {wrong: right for right, wrongs in PAIN_SECTIONS["spellings"].items() for wrong in wrongs.split()}
_ALONE = (rule for rule in chain(*HITS.values()) if len(rule.steps) == 1 and rule.at_rest is not Pain.NO)
_SINGLE = {"sharp"}.union(*(rule.steps[0].words for rule in _ALONE))
_FUZZY = sorted(
    word
    for word in (_SINGLE - listed("exact")) | listed("mistyped") | word_set("<joint>")
    if len(word) > 3 and word.isascii()
)
KNOWN = frozenset().union(
    *map(words_of, (ORDINARY_RULES, HITS, CAUSE_RULES, PAST_RULES, NOW_RULES, ELLIPSIS_RULES)),
    EVERYDAY_WORDS,
    listed("afterwards", "supposed", "unable", "words_near_pain"),
)
# Distinctive words, recognised with up to two typing mistakes.
_DISTINCT = ("painful", "numbness", "tingling", "throbbing", "sciatica", "excruciating", "discomfort")
# Recognised with two neighbouring keys hit, and (from five letters) without their vowels.
_COMMON = ("pain", "hurt", "hurts", "ouch", "sharp", "hurting", "painful", "throbbing", "tingling")
_VOWELS = re.compile("[aeiouy]")
_WITHOUT_VOWELS = {_VOWELS.sub("", word): word for word in (*_COMMON[4:], "numb")}

_RATED = re.compile(r"(?:[1-9]|10)/10")
_LINES = re.compile(r"[\r\n\u2028\u2029\x85\x0b\x0c]+")
_JOINED = re.compile(r"(?<=[a-z])-(?=[a-z])")
_EITHER = re.compile(r"(?<=[a-z]) ?/ ?(?=[a-z])")
_TOKEN = re.compile(r"[^\W\d_]+|\d+(?:[.,/:]\d+)*|[^\w\s]")
_LETTER_BY_LETTER = re.compile(r"(?<!\S)(?:[a-z] ){2,}[a-z](?!\S)")
_SCREAM = re.compile(
    r"a{3,}h*|a*(?:o+w+){2,}|a+o+w+|a+h{4,}|a+r*g+h+|g+a+h+|h*n+g+h+|y?e?o{2,}w+|yeow+|(?:a+u+)+a+|(?:a[iy]){2,}a*"
)
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_DOUBLED = re.compile(r"(.)\1")
_FIGURED = re.compile(r"(?<![a-z0-9])(?:[a-z]+[013457][a-z]*|0[a-z]{2,})(?![a-z0-9])")
_FIGURES = str.maketrans("013457", "oieast")
_GLUED = re.compile(r"^(.*?)(hurt(?:s|ing)?|pain(?:s|ful)?|numb(?!er)|(?<![a-z])ouch)(.*)$")
_MARK = {"?": QUESTION, ".": FULL_STOP, "!": EXCLAMATION, ";": FULL_STOP, "…": FULL_STOP, **dict.fromkeys(",:()-–=", COMMA)}


def words_typed(text: str) -> list[str]:
    """Return the words and punctuation of a text, misspelt words of pain corrected."""
    plain = normalise(_LINES.sub(" . ", text[:LONGEST_READ])).replace("'", "")
    if not plain.isascii():
        plain = "".join(letter for letter in unicodedata.normalize("NFKD", plain) if not unicodedata.combining(letter))
    plain = _EITHER.sub(" or ", _JOINED.sub(" ", plain)).replace("&", " and ")
    plain = _LETTER_BY_LETTER.sub(lambda spaced: spaced[0].replace(" ", ""), plain)
    plain = _FIGURED.sub(lambda figured: _unfigured(figured[0]), plain)
    words: list[str] = []
    for token in _TOKEN.findall(plain):
        if token[0].isalpha():
            if words and words[-1] + token in _SINGLE and not (words[-1] in KNOWN and token in KNOWN):
                words[-1] += token  # "hur t"
            else:
                words.extend(_spelt(token))
        elif token[0].isdigit() or token in HITS:
            words.append("n/10" if _RATED.fullmatch(token) else token)
        elif token in _MARK:
            words.append(_MARK[token])
    return words


def _unfigured(figured: str) -> str:
    """Return a word of pain typed with digits for letters ("pa1n"); otherwise what was typed."""
    word = figured.translate(_FIGURES)
    return word if word in _SINGLE else figured


@lru_cache(maxsize=4096)
def _spelt(token: str) -> tuple[str, ...]:
    """Return the word meant; two or three if words of pain are run together with others."""
    if token in KNOWN:
        return (token,)
    if _SCREAM.fullmatch(token):
        return ("argh",)
    drawn_in = [_DRAWN_OUT.sub(r"\1", token), _DRAWN_OUT.sub(r"\1\1", token)]
    for short in (token, *drawn_in, _DOUBLED.sub(r"\1", token), token.removeprefix("re")):
        if short in _SPELLING or short in _SINGLE or (short in KNOWN and short in drawn_in):
            return (_SPELLING.get(short, short),)
    token = drawn_in[0]
    if len(token) > 30:
        return (token,)
    if len(token) > 5 and (glued := _GLUED.match(token)) and (len(glued[3]) < 3 or glued[3] in KNOWN):
        return tuple(part for part in glued.groups() if part)
    return (_one_slip_from(token),) if len(token) > 3 else (token,)


def _one_slip_from(token: str) -> str:
    """Return the word of pain meant: one edit away (two from ten letters), with the same beginning or the first two letters swapped."""
    if not _VOWELS.search(token):
        return _WITHOUT_VOWELS.get(token) or _keys_off(token)
    if len(token) > 6:
        far = process.extractOne(token, _DISTINCT, scorer=OSA.distance, score_cutoff=2)
        if far is not None and far[0][0] == token[0]:
            return far[0]
    near = process.extract(token, _FUZZY, scorer=OSA.distance, score_cutoff=2 if len(token) > 9 else 1, limit=4)
    for word, _, _ in near:
        if word[0] == token[0] or word[1::-1] == token[:2] or token[0] in _BESIDE.get(word[0], ""):
            return word
    return _keys_off(token)


def _keys_off(token: str) -> str:
    """Return the common word of which only one or two letters were typed as a neighbouring key ("oaib")."""
    for word in _COMMON:
        if len(token) == len(word):
            wrong = [(typed, meant) for typed, meant in zip(token, word, strict=True) if typed != meant]
            if len(wrong) <= 2 and all(typed in _BESIDE[meant] for typed, meant in wrong):
                return word
    return token
