"""Half an admission: "sort of", "a bit, since the weekend", "only when I lift", "not really".

A person plays a sign down before they name it. Where safety is asked about, the half that is left counts: alone it is "not sure", beside
words of another meaning, or half a denial, it is asked about again, with both answers named.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import Final

from companion.language.clauses import flat
from companion.language.phrases import Phrase, hear
from companion.language.slips import begun_as, nearest_word

HALF_LONGEST: Final = 16
"""Most words that are read as half an admission and nothing else; our choice."""
WHEN_MOST: Final = 6
"""Most words of when, since when or from what beside it; our choice."""

_HALF: Final = re.compile(
    r"\b(?:(?:a )?(?:(?:little|tiny|teeny|wee|small) )?bits?(?: and bobs)?|a (?:very |tiny |wee |little |small |few )?(?:little|touch|tad|"
    r"smidge|drops?|dribble|trickle|drip|trace|hint)|slightly|somewhat|sort ?of|sorta|kind ?of|kinda|sometimes|some ?times|some days|"
    r"at times|from time to time|(?:every )?now and (?:then|again)|(?:every )?once in a while|once or twice|every so often|occasionally|"
    r"on and off|off and on|here and there|now n then|part(?:ly|ially)|more or less|pretty much|yes and no|half and half|ish|"
    r"(?:might|may|could) be|maybe|perhaps|possibly|(?:think|guess|suppose|reckon|believe) so|"
    r"(?:only|just|mostly|mainly)(?= (?:when|whenever|if|after|during|while|at|in|on|from|for|since|the|once|twice)\b))\b")
_NOT_QUITE: Final = re.compile(
    r"\b(?:not (?:so |too |very |all that |that )?(?:really|much|quite|exactly|especially|particularly|often|bad(?:ly)?)|"
    r"hardly|barely|scarcely|(?:dont|didnt|do not) (?:really )?(?:think|believe|reckon)(?: so| that)?|think not|doubt it|probably not|"
    r"nothing (?:much|major|bad|big|serious)|(?:pretty|fairly|quite|almost) sure (?:not|no|i (?:dont|didnt|havent|am not))|"
    r"(?:not|none|nothing) that i (?:know|noticed|noticed it|remember|can tell|can think)(?: of)?)\b")
_DENIES: Final = re.compile(r"\b(?:no|nope|nah|naw|not|never|none|nothing|isnt|wasnt|arent|dont|doesnt|didnt|havent|hasnt|cant|without)\b")
_ASKS: Final = re.compile(r"^(?:(?:is|are|does|do|did)(?! a)|can|could(?! be)|should|would|will|what|which|why|how|who|where) ")
_NO_FIRST: Final = re.compile(r"(?:no|nope|nah|naw)\b")
_NOT_BEFORE: Final = re.compile(r"\b(?:not|never|isnt|wasnt|dont|doesnt|didnt|havent|nothing)(?: even| in)? $")
""""Not a bit", "not even a little"."""

_SAYS_NOTHING: Final = """
    yes yeah yep yea yup ya well ok okay hm hmm um uh er erm oh ah i id ive im we guess suppose think reckon say said maybe perhaps
    probably possibly honestly tbh actually basically it its is was has been be are were had have got get gets getting does do did there
    theres that thats this just only like so really very then now today lately recently still again tho though ha haha hahaha lol lmao
    hehe sorry mate and or but quite one feel feels felt happens happened comes came goes went sure more them those these some of to too
    my a the bit morning tonight yesterday mostly mainly"""
_WHEN: Final = """
    when whenever while if since from after before in on at during with because cos cuz coz for as by under every last through once"""
_NOT_TELLING: Final = """
    really tbh honestly well hm hmm um uh er erm oh lol haha mate sorry ok okay actually just now so though tho right either exactly"""
_WRITTEN: Final = ("really", "slightly", "sometimes", "somewhat", "occasionally", "maybe", "perhaps", "probably", "possibly", "hardly",
                   "barely")
"""Words of half that are often mistyped."""
SLIP_FROM: Final = 4
"""Letters from which a word may be a slip of one of these; our choice."""


@cache
def _words(listed: str) -> frozenset[str]:
    return frozenset(listed.split())


def half_said(text: str) -> bool:
    """True if a message admits a part of something: it has such a word, which is not itself denied, and begins with no "no"."""
    said = _plain(text)
    if _NO_FIRST.match(said) or _ASKS.search(said) or "?" in text:
        return False
    return any(not _NOT_BEFORE.search(said[:half.start()]) for half in _HALF.finditer(said))


def half_denied(text: str) -> bool:
    """True if a message denies only half ("not really", "don't think so"), or denies and admits at once ("no, only a bit")."""
    said = _plain(text)
    return bool(_NOT_QUITE.search(said) or (_NO_FIRST.match(said) and _HALF.search(said)))


@lru_cache(maxsize=256)
def in_doubt(text: str) -> bool:
    """True if a whole message says that somebody is not sure, in any such words ("dunno", "not sure really"), or is half an admission
    beside which nothing stands but when, since when or from what."""
    words = _plain(text).split()
    if not words or len(words) > HALF_LONGEST or "?" in text:
        return False
    told = " ".join(word for word in words if word not in _words(_NOT_TELLING))
    if hear(text, strict=True) is Phrase.UNSURE or hear(told, strict=True) is Phrase.UNSURE:
        return True
    said = " ".join(words)
    return half_said(text) and not _DENIES.search(said) and any(
        _only_when(said[:half.start()]) and _only_when(_HALF.sub(" ", said[half.end():])) for half in _HALF.finditer(said))


def half_of_it(text: str) -> bool:
    """True if a message leaves it open whether a part of something is there, by half an admission, half a denial or a doubt alone."""
    return in_doubt(text) or half_denied(text)


def _only_when(words: str) -> bool:
    """True if words say nothing, or only when, since when or from what."""
    left = words.split()
    while left and left[0] in _words(_SAYS_NOTHING):
        left = left[1:]
    return not left or (left[0] in _words(_WHEN) and len(left) <= WHEN_MOST + 1)


def _plain(text: str) -> str:
    """Return a message as words with single spaces, a slip in one that says half put right."""
    return " ".join(_put_right(word) for word in re.findall(r"[^\W_]+", flat(text)))


@lru_cache(maxsize=4096)
def _put_right(word: str) -> str:
    return (len(word) >= SLIP_FROM and nearest_word(word, begun_as(word, _WRITTEN))) or word
