"""Signs that are said of a thing or an animal, not of the one who writes: "our ewe is pregnant", "the handrail gave way"."""

from __future__ import annotations

from itertools import takewhile

from companion.language.flags.flag import Flag
from companion.language.flags.patterns import word_set

_ANIMALS, _CARRYING, OF_IT, _LINKING, _OF_ANIMALS = map(word_set, ("<animal>", "<carrying>", "<of_it>", "<linking>", "<of_animals>"))
_THINGS = _ANIMALS | _CARRYING | word_set("<thing>")
_PART_OF, _OF_THINGS, _LIMBS = map(word_set, ("<part_of>", "<of_things>", "<leg>"))
_ATTRIBUTE, _KEEPER, _CLAUSE_START = map(word_set, ("<attribute>", "<keeper>", "<clause_start>"))
_POSES = frozenset(("bird", "cat", "down", "downward"))  # "bird dog left leg weak"
_IS = frozenset(("is", "are", "was", "were", "isnt", "too", "looks"))
_OWN = frozenset(("i", "im", "ive", "id", "iam", "me", "my", "mine", "myself", "meself"))
_HURT = frozenset(("me", "my", "myself", "us"))
# Never said of either; where somebody may be hurt, or wet, when what carries them fails; never said of things.
_NEVER = frozenset((Flag.SELF_HARM, Flag.SEXUAL))
_BY_WHAT_CARRIES = frozenset((Flag.FALL, Flag.BLADDER_BOWEL, Flag.SADDLE))
_NO_THINGS = frozenset((Flag.HEART_HISTORY, Flag.CANCER_BONE, Flag.WEIGHT_LOSS, Flag.ANTICOAGULANTS))


def of_a_thing(words: list[str], start: int, at: int, end: int, flag: Flag) -> bool:
    """True if the sign from ``at`` to ``end``, in a sentence that begins at ``start``, is said of a thing or an animal that its clause
    begins with, or that follows it ("infected laptop"); not where it hurts somebody ("the shelf fell on me")."""
    after = list(takewhile(lambda word: word not in _CLAUSE_START, words[end : end + 4]))
    if flag in _NEVER or not _OWN.isdisjoint(words[at:end]) or not (flag is Flag.BLADDER_BOWEL or _HURT.isdisjoint(after)):
        return False
    follows = words[end - 1] in _ATTRIBUTE and bool(after) and (after[0] in _PART_OF or _singular(after[0]) in _THINGS)
    if not follows or not _KEEPER.isdisjoint(after[1:2]):
        first = at
        while at > start and (words[at - 1] in _LINKING or words[at - 1] in _OF_ANIMALS):
            at -= 1
        if at > start + 1 and words[at - 1] in _PART_OF and _singular(words[at - 2]) in _THINGS:
            at -= 1
        if at == start or not _POSES.isdisjoint(words[max(start, at - 2) : at - 1]):
            return False
        if not _may_be_said(_singular(words[at - 1]), words[at:first], words[first:end], flag):
            return False
    while at > start and (words[at - 1] in OF_IT or _singular(words[at - 1]) in _THINGS):
        at -= 1
    return at == start or words[at - 1] in _CLAUSE_START


def _may_be_said(thing: str, links: list[str], sign: list[str], flag: Flag) -> bool:
    """True if a sign may be said of a thing; "stairs, dizzy" and "clutch foot weak" are said of somebody."""
    if flag in _BY_WHAT_CARRIES and thing in _CARRYING:
        return False
    if thing in _ANIMALS:
        return True
    if thing not in _THINGS or flag in _NO_THINGS or sign[0] in _LIMBS or not _OF_ANIMALS.isdisjoint(links):
        return False
    return not _OF_THINGS.isdisjoint(sign) and (flag is not Flag.CHEST or not _IS.isdisjoint(links[-1:]))


def _singular(word: str) -> str:
    return word if word in _THINGS else word.removesuffix("s")
