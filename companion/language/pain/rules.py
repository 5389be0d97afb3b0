"""Hearing pain in whatever words it is typed, also misspelt, in capitals, or in the middle of an answer.

A false alarm costs one tap ("Did something hurt?"); a miss may cost a back. So everything that is neither
clearly ordinary nor clearly denied is heard; faintness, a tight chest and lost breath stop a test as pain does.
The words stand in ``tables``, typing is read in ``spelling``. The order of decision:

1. The text is normalised and cut into words; ``. ! ? ;`` and a new line end a sentence, a comma a clause. A
   word nobody knows that lies one slip from a word of pain becomes that word ("hrut", "tinlging"), unless it
   is a real word of its own (``REAL_WORDS``: "paint", "hunt").
2. ``ORDINARY`` wording that only sounds like pain is taken out ("painful to admit", "pain: none").
3. Every pattern of the other tables that matches is a hit.
4. Each hit is looked at where it stands:
   a. denied before it ("no pain", "didn't feel any pain"): dropped. Only small words (``BETWEEN``) may stand
      between the denial and the hit, so "didn't go well, hurts" is no denial. A denial by halves ("doesn't
      hurt much", "no pain until the bottom", "don't think it hurts") leaves it unsure.
   b. training soreness with its cause and no joint or back in it ("quads sore from monday"): dropped;
      other soreness is sure when it names the back or a joint, otherwise unsure.
   c. long ago and wholly over, both said ("as a kid, fully healed"): dropped; only one of them, asked or
      supposed ("hurt last year, fine now", "is it meant to hurt?", "if it hurts"): unsure.
5. The strongest hit left decides: YES, then ASK.
6. With none left, "the left doesn't hurt but the right does" (``ELLIPSIS``) is unsure; and so is, while the body
   works, a clause that names a part of the body with a word that is not ``EVERYDAY`` ("my knee is narky"),
   that part alone with a cry ("stop, my back"), or a reply in another script.
7. With still nothing, the second ear (``classifier``) weighs the words no rule explained, and may make it unsure;
   never of a bare number, unit, part of the body or control phrase ("11 cm", "left knee", "go back"), nor, at
   rest, of less than three words, which may be a city. Otherwise NO.
"""

from __future__ import annotations

from companion.language.pain import tables
from companion.language.pain.classifier import sounds_of_pain
from companion.language.pain.degree import Pain
from companion.language.pain.patterns import (
    CAUSES,
    COMMA,
    DENIALS,
    ELLIPSIS,
    EVERYDAY,
    HARDLY,
    HITS,
    LONG_AGO,
    MARKS,
    NO,
    NOT,
    NOW,
    ORDINARY,
    PAST,
    QUESTION,
    SENTENCE_ENDS,
    STOP,
    WHOLLY_OVER,
    WITHOUT,
    Hit,
    Rule,
    found,
    holds,
    match,
    word_set,
    words_of,
)
from companion.language.pain.spelling import words_typed
from companion.language.phrases import hear

__all__ = ["Pain", "by_the_rules", "hear_pain", "unexplained"]

_TAKEN_OUT = "·"  # stands where ordinary wording stood, so that nothing matches across it
_SENTENCE = 40  # words looked at on either side of a hit, so that long texts are read quickly
_BETWEEN, _BETWEEN_VERBS, _OPEN, _DEGREE = map(word_set, (tables.BETWEEN, tables.BETWEEN_VERBS, tables.OPEN, tables.DEGREE))
_LISTED, _AFTERWARDS, _SUPPOSED, _UNABLE = map(word_set, (tables.LISTED, tables.AFTERWARDS, tables.SUPPOSED, tables.UNABLE))
_NOT_OVER, _BARE = word_set(tables.NOT_OVER), word_set(f"{tables.UNITS} <joint> <limb> <muscle> <my>")
_OR = frozenset(("or", "nor"))
_ORDINARY_OF_BODY = EVERYDAY | words_of(CAUSES)

_JOINTS = word_set("<joint>")
_BODY = word_set("<joint> <limb> <muscle>")
_OWNED = word_set("my the lower low upper mid ma me your whole")
_OF_A_NOUN = word_set("is was has feels felt just still isnt doesnt wont")
_CRIED = word_set("stop wait help <cursing>")
_CRY = _BODY | _CRIED | MARKS | word_set("<my> hold on mate man bro please no not again poor")
_WORSE = word_set("worse worsening now badly cant sharp sudden suddenly")
_CLAUSES = MARKS | word_set("but though although however")


def hear_pain(text: str, *, body_at_work: bool = True) -> Pain:
    """Whether a reply speaks of pain, or of another sign that stops a test: YES, ASK ("Did something hurt?") or NO.

    ``body_at_work`` is whether the question is one during which the body works; only then is a vague feeling
    ("felt something") asked about, and only then is "dizzy" alone sure. Reads the first ``LONGEST_READ``
    characters; never raises.
    """
    words = _ordinary_taken_out(words_typed(text))
    hits = list(found(words, HITS))
    heard = _by_the_rules(words, hits, body_at_work)
    if heard is Pain.NO and _may_be_weighed(words, body_at_work):
        suspected = sounds_of_pain(_unexplained(words, hits), body_at_work=body_at_work)
        return Pain.ASK if suspected and hear(text) is None else Pain.NO
    return heard


def by_the_rules(text: str, *, body_at_work: bool = True) -> Pain:
    """What the rules alone say of a reply, for measuring them."""
    words = _ordinary_taken_out(words_typed(text))
    return _by_the_rules(words, list(found(words, HITS)), body_at_work)


def unexplained(text: str) -> list[str]:
    """The words of a reply as ``classifier`` weighs them: ordinary wording, and what is denied, taken out."""
    words = _ordinary_taken_out(words_typed(text))
    return _unexplained(words, list(found(words, HITS)))


def _by_the_rules(words: list[str], hits: list[Hit], body_at_work: bool) -> Pain:
    """What the rules say of the words, before the second ear."""
    things = _things(hits)
    heard, any_denied = Pain.NO, False
    valued = [(_worth(hit.rule, body_at_work), hit) for hit in hits]
    for worth, hit in sorted(valued, key=lambda pair: pair[0].value, reverse=True):
        if worth.value <= heard.value:
            break
        level = _judged(words, hit, worth, things)
        if level is Pain.YES:
            return Pain.YES
        any_denied = any_denied or level is Pain.NO
        heard = _weaker(Pain.ASK, level) if heard is Pain.NO else heard
    if heard is Pain.NO and any_denied and holds(words, ELLIPSIS):
        return Pain.ASK
    if heard is Pain.NO and body_at_work:
        odd = _odd_of_body(words, hits) and not _long_over(words)
        return Pain.ASK if odd or not _readable(words) else Pain.NO
    return heard


def _things(hits: list[Hit]) -> frozenset[int]:
    """The places of all that can be listed: "no pain, numbness or tingling"."""
    listable = (hit for hit in hits if hit.rule.thing and hit.rule.at_rest is not Pain.NO)
    return frozenset(at for hit in listable for at in range(hit.start, hit.end))


def _unexplained(words: list[str], hits: list[Hit]) -> list[str]:
    """The words, with a mark for each that is part of a hit the rules dropped."""
    things = _things(hits)
    dropped = {at for hit in hits if _judged(words, hit, Pain.YES, things) is Pain.NO for at in range(hit.start, hit.end)}
    return [_TAKEN_OUT if at in dropped else word for at, word in enumerate(words)]


def _may_be_weighed(words: list[str], body_at_work: bool) -> bool:
    """Whether a reply is more than a number, a unit or a part of the body, or (at rest) a name of a word or two."""
    spoken = [word for word in words if word.isalpha()]
    if _BARE.issuperset(spoken):
        return False
    return body_at_work or len(spoken) > 2


def _readable(words: list[str]) -> bool:
    """Whether every word is in the letters the tables are written in; what another script says, nobody here can tell."""
    return all(word.isascii() for word in words if word.isalpha())


def _worth(rule: Rule, body_at_work: bool) -> Pain:
    return rule.at_work if body_at_work else rule.at_rest


def _weaker(one: Pain, other: Pain) -> Pain:
    return one if one.value < other.value else other


def _odd_of_body(words: list[str], hits: list[Hit]) -> bool:
    """Whether some clause names the back, a joint or a leg together with a word that is not an everyday one."""
    if _CRY.issuperset(words):  # "stop, my leg", "my back": no more than where, and that something is
        mine = "my" in words and not _JOINTS.isdisjoint(words)
        if mine or not (_BODY.isdisjoint(words) or _CRIED.isdisjoint(words)):
            return True
    inside = {at for hit in hits for at in range(hit.start, hit.end)}
    named = odd = False
    for at, word in enumerate([*words, STOP]):
        if word in _CLAUSES:
            if named and odd:
                return True
            named = odd = False
        elif word in _BODY:
            before, after = words[max(0, at - 1) : at], words[at + 1 : at + 2]
            named = named or word != "back" or not (_OWNED.isdisjoint(before) and _OF_A_NOUN.isdisjoint(after))
        elif at not in inside and word.isalpha() and word not in _ORDINARY_OF_BODY:
            odd = True
    return False


def _ordinary_taken_out(words: list[str]) -> list[str]:
    left: list[str] = []
    at = 0
    while at < len(words):
        end, instead = at, tuple(words[at : at + 1])
        for rule in ORDINARY.get(words[at], ()):
            if (reach := match(rule.steps, 0, words, at)) > end:
                end, instead = reach, rule.instead or (_TAKEN_OUT,)
        left.extend(instead)
        at = max(end, at + 1)
    return left


def _judged(words: list[str], hit: Hit, worth: Pain, things: frozenset[int]) -> Pain:
    """What one hit is worth where it stands; ``things`` are the places of all that can be listed with it."""
    start, end = _sentence(words, hit)
    level = _weaker(worth, _denied(words, hit, things, start, end))
    if level is Pain.NO:
        return Pain.NO
    sentence = words[start:end]
    if _long_over(sentence):
        return Pain.NO
    if hit.rule.sore:
        placed = not _JOINTS.isdisjoint(sentence)
        if holds(sentence, CAUSES):
            return Pain.NO if not placed and _WORSE.isdisjoint(sentence) else Pain.ASK
        return level if placed else Pain.ASK
    if level is Pain.YES and (_supposed(words, hit) or (holds(sentence, PAST) and not holds(sentence, NOW))):
        return Pain.ASK
    return level


def _long_over(sentence: list[str]) -> bool:
    """Whether it is said to be long ago and said to be over, with nothing against it."""
    return _NOT_OVER.isdisjoint(sentence) and holds(sentence, LONG_AGO) and holds(sentence, WHOLLY_OVER)


def _sentence(words: list[str], hit: Hit) -> tuple[int, int]:
    """Where the sentence around a hit begins and ends, no further off than ``_SENTENCE`` words."""
    start, end = hit.start, hit.end
    while start > max(0, hit.start - _SENTENCE) and words[start - 1] not in SENTENCE_ENDS:
        start -= 1
    while end < min(len(words), hit.end + _SENTENCE) and words[end] not in SENTENCE_ENDS:
        end += 1
    return start, end


def _supposed(words: list[str], hit: Hit) -> bool:
    """Whether the hit is asked or supposed: "if it hurts", "it hurts?"."""
    for word in reversed(words[max(0, hit.start - 4) : hit.start]):
        if word in MARKS:
            break
        if word in _SUPPOSED:
            return True
    return next((word for word in words[hit.end : hit.end + _SENTENCE] if word in MARKS), STOP) == QUESTION


def _denied(words: list[str], hit: Hit, things: frozenset[int], start: int, end: int) -> Pain:
    """NO where the hit is denied, ASK where that is only half a denial, YES where the hit stands."""
    half = listed = verb = opened = False
    at = hit.start - 1
    while at >= start and words[at] not in DENIALS:
        word = words[at]
        if word == COMMA and (at - 1 in things or words[at - 1] in _LISTED or words[at + 1] in _OR):
            listed = True
        elif word in _DEGREE or word == "and":
            half = True
        elif word in _OPEN:
            opened = True
        elif word in _BETWEEN_VERBS:
            verb = True
        elif word not in _BETWEEN:
            if at not in things and word not in _LISTED:
                return Pain.YES
            listed = True
        at -= 1
    if at < start:
        return Pain.YES
    if words[at] in NO and (opened or verb or not hit.rule.thing):
        return Pain.YES
    if words[at] in WITHOUT:
        if not _UNABLE.isdisjoint(words[start:at]):
            return Pain.YES
    elif opened or words[at] in HARDLY:
        half = True
    before = words[max(start, at - 3) : at]
    if words[at] not in _OR and _CLAUSES.isdisjoint(before) and not (NOT | _UNABLE).isdisjoint(before):
        half = True  # a denial denied: "can't say it didn't hurt"
    if listed and _OR.isdisjoint(words[at:end]):
        half = True  # "no tingling pain in hip" may be two answers
    after = words[hit.end : min(end, hit.end + 3)]
    return Pain.ASK if half or not _AFTERWARDS.isdisjoint(after) else Pain.NO
