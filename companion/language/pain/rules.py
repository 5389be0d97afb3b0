"""Recognising pain in whatever words it is typed, also misspelt, in capitals, or in the middle of an answer.

A false alarm costs one tap ("Did something hurt?"); a miss may cost a back. So everything counts that is neither clearly ordinary nor
clearly denied; faintness, a tight chest and lost breath stop a test as pain does. The words are in ``tables``, typing mistakes in
``spelling``. The order of decision:

1. The text is normalised and split into words; ``. ! ? ;`` and a new line end a sentence, a comma a clause. An
   unknown word one typing mistake from a word of pain becomes that word ("hrut", "tinlging"), unless it is a
   real word of its own (``words_near_pain``: "paint", "hunt").
2. ``ordinary`` wording that only sounds like pain is removed ("painful to admit", "pain: none").
3. Every match of a pattern of the other tables is a hit.
4. Each hit is judged in its place:
   a. denied before it ("no pain", "didn't feel any pain"): dropped. Only small words (``between``) may stand
      between the denial and the hit, so "didn't go well, hurts" is no denial. A partial denial ("doesn't hurt
      much", "no pain until the bottom", "don't think it hurts") makes it unsure.
   b. training soreness with its cause and without a joint or the back ("quads sore from monday"): dropped;
      other soreness is sure if it names the back or a joint, otherwise unsure.
   c. long ago and wholly over, both said ("as a kid, fully healed"): dropped; only one of them, a question or
      a supposition ("hurt last year, fine now", "is it meant to hurt?", "if it hurts"): unsure.
5. The strongest remaining hit decides: YES, then ASK.
6. Without one, "the left doesn't hurt but the right does" (``ellipsis``) is unsure; so is, while the body works,
   a clause that names a part of the body with a word that is not ``everyday`` ("my knee is narky"), that part
   alone with a cry ("stop, my back"), or a reply in another script.
7. Otherwise the ``classifier`` weighs the words no rule explained, and may make the reply unsure; never a bare
   number, unit, part of the body or control phrase ("11 cm", "left knee", "go back"), nor, at rest, fewer than
   three words, which may be a city. If it does not, the result is NO.
"""

from __future__ import annotations

from companion.language.pain.classifier import sounds_of_pain
from companion.language.pain.degree import Pain
from companion.language.pain.patterns import (
    CAUSE_RULES,
    COMMA,
    DENIALS,
    ELLIPSIS_RULES,
    EVERYDAY_WORDS,
    FULL_STOP,
    HARDLY_WORDS,
    HITS,
    LONG_AGO_RULES,
    NO_WORDS,
    NOT_WORDS,
    NOW_RULES,
    ORDINARY_RULES,
    PAST_RULES,
    PUNCTUATION,
    QUESTION,
    SENTENCE_ENDS,
    WHOLLY_OVER_RULES,
    WITHOUT_WORDS,
    Hit,
    Rule,
    found,
    holds,
    listed,
    match,
    word_set,
    words_of,
)
from companion.language.pain.spelling import words_typed
from companion.language.phrases import hear

__all__ = ["Pain", "by_the_rules", "hear_pain", "unexplained"]

_TAKEN_OUT = "·"  # replaces ordinary wording, so that nothing matches across it
_SENTENCE = 40  # words examined on either side of a hit, to keep long texts fast
_BETWEEN, _BETWEEN_VERBS, _OPEN, _DEGREE = map(listed, ("between", "between_verbs", "openers", "degree"))
_LISTED, _AFTERWARDS, _SUPPOSED, _UNABLE, _NOT_OVER = map(listed, ("listed", "afterwards", "supposed", "unable", "not_over"))
_BARE = listed("units") | word_set("<joint> <limb> <muscle> <my>")
_OR = frozenset(("or", "nor"))
_ORDINARY_OF_BODY = EVERYDAY_WORDS | words_of(CAUSE_RULES)

_JOINTS = word_set("<joint>")
_CLEARED_BY_NO_CAUSE = _JOINTS | word_set("<chest>")  # sore there is asked about, whatever it may be from
_BODY = word_set("<joint> <limb> <muscle>")
_OWNED = word_set("my the lower low upper mid ma me your whole")
_OF_A_NOUN = word_set("is was has feels felt just still isnt doesnt wont")
_CRIED = word_set("stop wait help <cursing>")
_CRY = _BODY | _CRIED | PUNCTUATION | word_set("<my> hold on mate man bro please no not again poor")
_WORSE = word_set("worse worsening now badly cant sharp sudden suddenly")
_CLAUSES = PUNCTUATION | word_set("but though although however")


def hear_pain(text: str, *, body_at_work: bool = True) -> Pain:
    """Return the degree of pain, or of another sign that stops a test, in a reply: YES, ASK ("Did something hurt?") or NO.

    ``body_at_work``: the question is asked while the body works; only then does a vague feeling ("felt something") count.
    Reads the first ``LONGEST_READ`` characters; never raises.
    """
    words = _ordinary_taken_out(words_typed(text))
    hits = list(found(words, HITS))
    heard = _by_the_rules(words, hits, body_at_work)
    if heard is Pain.NO and _may_be_weighed(words, body_at_work):
        suspected = sounds_of_pain(_unexplained(words, hits), body_at_work=body_at_work)
        return Pain.ASK if suspected and hear(text) is None else Pain.NO
    return heard


def by_the_rules(text: str, *, body_at_work: bool = True) -> Pain:
    """Return the rules' result alone, for measuring them."""
    words = _ordinary_taken_out(words_typed(text))
    return _by_the_rules(words, list(found(words, HITS)), body_at_work)


def unexplained(text: str) -> list[str]:
    """Return the words of a reply as ``classifier`` weighs them: without ordinary wording and denied hits."""
    words = _ordinary_taken_out(words_typed(text))
    return _unexplained(words, list(found(words, HITS)))


def _by_the_rules(words: list[str], hits: list[Hit], body_at_work: bool) -> Pain:
    """Return the rules' result, before the classifier."""
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
    if heard is Pain.NO and any_denied and holds(words, ELLIPSIS_RULES):
        return Pain.ASK
    if heard is Pain.NO and body_at_work:
        odd = _odd_of_body(words, hits) and not _long_over(words)
        return Pain.ASK if odd or not _readable(words) else Pain.NO
    return heard


def _things(hits: list[Hit]) -> frozenset[int]:
    """Return the positions of everything that can be listed: "no pain, numbness or tingling"."""
    listable = (hit for hit in hits if hit.rule.thing and hit.rule.at_rest is not Pain.NO)
    return frozenset(at for hit in listable for at in range(hit.start, hit.end))


def _unexplained(words: list[str], hits: list[Hit]) -> list[str]:
    """Return the words, with those of dropped hits replaced by a mark."""
    things = _things(hits)
    dropped = {at for hit in hits if _judged(words, hit, Pain.YES, things) is Pain.NO for at in range(hit.start, hit.end)}
    return [_TAKEN_OUT if at in dropped else word for at, word in enumerate(words)]


def _may_be_weighed(words: list[str], body_at_work: bool) -> bool:
    """True if a reply is more than a number, a unit or a part of the body, or (at rest) a name of a word or two."""
    spoken = [word for word in words if word.isalpha()]
    if _BARE.issuperset(spoken):
        return False
    return body_at_work or len(spoken) > 2


def _readable(words: list[str]) -> bool:
    """True if every word is in the alphabet of the tables; another script can't be judged."""
    return all(word.isascii() for word in words if word.isalpha())


def _worth(rule: Rule, body_at_work: bool) -> Pain:
    return rule.at_work if body_at_work else rule.at_rest


def _weaker(one: Pain, other: Pain) -> Pain:
    return one if one.value < other.value else other


def _odd_of_body(words: list[str], hits: list[Hit]) -> bool:
    """True if a clause names the back, a joint or a leg together with a word that is not an everyday one."""
    if _CRY.issuperset(words):  # "stop, my leg", "my back": only a place and a cry
        mine = "my" in words and not _JOINTS.isdisjoint(words)
        if mine or not (_BODY.isdisjoint(words) or _CRIED.isdisjoint(words)):
            return True
    inside = {at for hit in hits for at in range(hit.start, hit.end)}
    named = odd = False
    for at, word in enumerate([*words, FULL_STOP]):
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
        for rule in ORDINARY_RULES.get(words[at], ()):
            if (reach := match(rule.steps, 0, words, at)) > end:
                end, instead = reach, rule.instead or (_TAKEN_OUT,)
        left.extend(instead)
        at = max(end, at + 1)
    return left


def _judged(words: list[str], hit: Hit, worth: Pain, things: frozenset[int]) -> Pain:
    """Return the degree of one hit in its place. ``things``: positions of everything that can be listed with it."""
    start, end = _sentence(words, hit)
    level = _weaker(worth, _denied(words, hit, things, start, end))
    if level is Pain.NO:
        return Pain.NO
    sentence = words[start:end]
    if _long_over(sentence):
        return Pain.NO
    if hit.rule.sore:
        placed = not _CLEARED_BY_NO_CAUSE.isdisjoint(sentence)
        if holds(sentence, CAUSE_RULES):
            return Pain.NO if not placed and _WORSE.isdisjoint(sentence) else Pain.ASK
        return level if placed else Pain.ASK
    if level is Pain.YES and (_supposed(words, hit) or (holds(sentence, PAST_RULES) and not holds(sentence, NOW_RULES))):
        return Pain.ASK
    return level


def _long_over(sentence: list[str]) -> bool:
    """True if it is said to be both long ago and over, and nothing contradicts that."""
    return _NOT_OVER.isdisjoint(sentence) and holds(sentence, LONG_AGO_RULES) and holds(sentence, WHOLLY_OVER_RULES)


def _sentence(words: list[str], hit: Hit) -> tuple[int, int]:
    """Return start and end of the sentence around a hit, at most ``_SENTENCE`` words away."""
    start, end = hit.start, hit.end
    while start > max(0, hit.start - _SENTENCE) and words[start - 1] not in SENTENCE_ENDS:
        start -= 1
    while end < min(len(words), hit.end + _SENTENCE) and words[end] not in SENTENCE_ENDS:
        end += 1
    return start, end


def _supposed(words: list[str], hit: Hit) -> bool:
    """True if the hit is a question or a supposition: "if it hurts", "it hurts?"."""
    for word in reversed(words[max(0, hit.start - 4) : hit.start]):
        if word in PUNCTUATION:
            break
        if word in _SUPPOSED:
            return True
    return next((word for word in words[hit.end : hit.end + _SENTENCE] if word in PUNCTUATION), FULL_STOP) == QUESTION


def _denied(words: list[str], hit: Hit, things: frozenset[int], start: int, end: int) -> Pain:
    """Return NO if the hit is denied, ASK if only partly, YES if it stands."""
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
    if words[at] in NO_WORDS and (opened or verb or not hit.rule.thing):
        return Pain.YES
    if words[at] in WITHOUT_WORDS:
        if not _UNABLE.isdisjoint(words[start:at]):
            return Pain.YES
    elif opened or words[at] in HARDLY_WORDS:
        half = True
    before = words[max(start, at - 3) : at]
    if words[at] not in _OR and _CLAUSES.isdisjoint(before) and not (NOT_WORDS | _UNABLE).isdisjoint(before):
        half = True  # a denied denial: "can't say it didn't hurt"
    if listed and _OR.isdisjoint(words[at:end]):
        half = True  # "no tingling pain in hip" may be two answers
    after = words[hit.end : min(end, hit.end + 3)]
    return Pain.ASK if half or not _AFTERWARDS.isdisjoint(after) else Pain.NO
