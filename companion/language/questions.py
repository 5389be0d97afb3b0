"""Questions that a person asks back: whether a reply is one, and what about the open question it asks.

The rules are data: patterns over the normalised text without apostrophes, in the order to try. A ``SURE`` pattern is about the open
question whatever else the sentence names ("why do you ask"); a ``LIKELY`` one only where the sentence names no topic of its own.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from companion.language.phrases import normalise

QUESTION_MOST: Final = 300
"""Most characters that are read as a question; our choice."""

_LEAD: Final = (r"(?:(?:but|and|so|wait|ok|okay|sorry|hey|hi|hm+|um+|uh|er+|well|also|oh|lol|hang on|quick question|question"
                r"|dumb question|just|"
                r"actually|yeah|right|first|hello|pls|please|mate|coach|bit \w+)[,:.;!-]* )*")
_OPENS: Final = re.compile(
    rf"{_LEAD}(?:(?:what|whats|wat|wats|why|whys|how|hows|when|whens|wheres|where|which|who|whos|whose|wdym|show me|any tips?)(?: "
    rf"|$)(?!i (?:was|did|had|got)\b)"
    r"|(?:is|are|am|was|do|does|did|can|could|should|shall|will|would|may|might|must|has|have|isnt|arent|dont|doesnt|cant|wont"
    r"|shouldnt|aint) "
    r"(?:i|we|you|u|it|this|that|these|those|they|he|she|there|a|an|the|my|your|one|some|somebody|anybody|\w+ing)\b)")
_OR: Final = re.compile(r"(?!.*\b(?:or so|or something|more or less|no|not|cant|dont|couldnt|maybe|think|guess"
                        r"|sure)\b)[^\d]{2,40} or [^\d]{2,40}")
_CLAUSE: Final = re.compile(r"[,.;:!?]+ ")
_WITHIN: Final = re.compile(
    r"\?|\b(?:how do (?:i|you|we)|how (?:am|should|can|would) i|what (?:do|does|did|is|are|was) (?:you|it|that|this|the|a)|"
    r"what(?:s| is) (?:the|a|an|that|this|it)|why do (?:you|i|we)|dont (?:understand|get|see) (?:what|how|why|the|this|that|it)|"
    r"not sure (?:what|how|where|which) (?:you|that|this|it|to|is|does|counts)|no (?:idea|clue) (?:what|how) (?:you|that|this|it|to|a)|"
    r"(?:tell|show|explain|remind) (?:me|to me)? ?(?:what|how|why|where)|what if|wonder(?:ing)? (?:if|what|why|how)|"
    r"do i (?:have|need) to|can you (?:tell|explain|show)|explain|is (?:it|that|this) (?:ok|okay|normal|bad|fine|right)|"
    r"what for|how come|what counts|dont they|isnt it|no tape|nothing to hold|slippery|, why|still ok|degrees of)\b")

SURE: Final[tuple[tuple[str, str], ...]] = (
    ("why", r"why (?:do|are|would|should|did) (?:you|u|we|i) (?:\w+ )?(?:ask|want|need|know|care|measure|test|check|have|film|repeat|do)"
            r"|why (?:is|does|would|should) (?:it|that|this) (?:\w+ )?(?:matter|needed|important|necessary|change|make|asked|count)"
            r"|^(?:does|do|would|will|did) (?:it|that|this|they)(?: really| even)? (?:matter|make (?:any|a) difference|change anything)"
            r"|what (?:do|does|would|will) (?:you|u|that|this|it) (?:need|want|use|do with|tell you if)"
            r"|whats (?:the point|it for|that for|this for)|what (?:is|are|was) (?:it|this|that|these|th(?:e|is|at) \w+) (?:good "
            r"|even )?for\b"
            r"|\bwhat for\b|got to do with|have to do with|anything to do with|relevan|the point of|whats the point|seems pointless"
            r"|(?:is|are) (?:this|that|it|these) (?:really |all )?(?:needed|necessary|required)"
            r"|why (?:both|two|twice|again|three|nine|a (?:second|third|another)|another|once more|only|not|repeat|\d+)\b|^why\W*$"
            r"|^how come\W*$|^why u\b"),
    ("how", r"\bnot sure how\b"),
    ("cant", r"(?:i |we )?(?:cant|cannot|can not|couldnt|am not able|not able|wont be able|unable|dont think i can) .{1,80}(?:what"
             r"|how|then|now|instead)\b"
             r"|^(?:i |we )?(?:cant|cannot|couldnt) .{1,60}\?|(?:dont|didnt|havent|have not) (?:own|have|got|get) .{0,80}(?:what|how"
             r"|then|now|instead|would|\?)"
             r"|what if (?:i|my|the|there|it|we|nobody|nothing)\b|\binstead\b|alternative|(?:another|a different|any other"
             r"|some other) way"
             r"|(?:would|will|does|could|can|is) (?:a|an|my|some|two|one) .{1,40} (?:do|work|be (?:ok|okay|alright|right|fine|enough)"
             r"|count|enough)\b"
             r"|(?:can|could|may) i (?:just )?(?:use|take)|substitute|"
             r"\bif (?:i|you|we|one) (?:just )?(?:dont|do not|cant|cannot|can not)\b|what (?:do i do|now|then)$|, (?:what now|what then"
             r"|what do i (?:do|put))"
             r"|\b(?:nobody|no) (?:tape|wall|stick|phone|stand|mirror|room|space|broom\w*|bar|level|strap|towel|mat|film|one|here"
             r"|around)\b.{0,60}(?:what|how|then|\?)"
             r"|work for me\b|still ok\b.*$|(?:is|would) .{1,40} (?:stable|strong|long|big|wide) enough"),
    ("means", r"what (?:do|does|did|is|are|would|was) .{0,40}mean(?:t|ing|s)?\b|meaning of|define|definition|\bwdym\b|supposed to be\b"
              r"|(?:dont|do not|didnt) (?:really )?(?:understand|get|follow)\b|(?:plain|simple|other) (?:english|words)"
              r"|\bmeaning (?:the|what|like|which)"
              r"|\bexplain(?: (?:that|this|it|the question|again|what you mean|to me|please))*\W*$"
              r"|\b(?:still|hard|limits?|sink|plain|move|as) (?:as in|meaning|means)\b|\bas in\b|means what\b|what counts\b"),
)
LIKELY: Final[tuple[tuple[str, str], ...]] = (
    ("why", r"\bwhy\b|how come|reason|(?:matter|difference)\b|dont (?:you )?believe"),
    ("how", r"how\b|show me|where\b|when\b|which (?:side|leg|foot|one|way|part|end|hand|is|do|needs)|^.{1,60}\bor\b.{1,60}$"
            r"|(?:do|should|must|shall|am) i\b|\bcount\b|\btips?\b|do (?:you|u) (?:want|mean)|tell (?:if|when|whether)|pick\b"),
    ("means", r"what|which|whats|is (?:that|it|this)|are (?:we|you|they)|does\b|do (?:the|you|they)|degrees of|\blike\b"),
    ("cant", r"\b(?:ok|okay|allowed|alright|fine|wrong|normal)\b|\bcan\b|\bcould\b|wont\b|cant\b"),
)
_TIERS = tuple(tuple((kind, re.compile(rf"(?<!\w)(?:{pattern})")) for kind, pattern in rows) for rows in (SURE, LIKELY))

FREE: Final = re.compile(r"(?:wdym|(?:can|could) you explain(?: that| this)?|i dont understand(?: the question| that| this)?|"
                         r"why does (?:that|this|it) matter|why do you need (?:that|this|to know(?: that)?)|what do you mean|"
                         r"whats the point(?: of (?:that|this|it))?|what (?:is|are) (?:that|this|it|these) for|"
                         r"how (?:do|should) i (?:do|answer|write) (?:that|this|it)|what does (?:that|this|it) mean|"
                         r"why do you (?:ask|want to know)|why|how|what (?:should|do|can) i (?:write|say|put|type)(?: here)?|"
                         r"like what|for example|an? example|what for)\??")
"""Whole replies that are questions also where any words of the person's own are an answer."""
FREE_SAFETY: Final = re.compile(r"(?:(?:do|does|can|could|should|must|will|did) (?:you|i|it|that|they|u)|(?:what|why|how|which|who)s?|"
                                r"is (?:it|that|this)|i (?:dont|do not) (?:understand|get)) .*|wdym|huh|explain(?: that| this)?|"
                                r"i (?:dont|do not) (?:understand|get (?:it|that))|.*\?")
"""The same where the words are about health: a question must not be kept as what a clinician said."""


def plain(text: str) -> str:
    """Return a text as the patterns read it: in normal form, without apostrophes and brackets."""
    return re.sub(r"[^\w\s?!.,:;%°+/-]", "", normalise(text).replace("'", "")).strip()


@lru_cache(512)
def is_question(text: str) -> bool:
    """True if a reply asks something."""
    said = plain(text)
    if not 0 < len(said) <= QUESTION_MOST:
        return False
    return bool(_WITHIN.search(said) or _OR.fullmatch(said) or any(_OPENS.match(clause) for clause in _CLAUSE.split(said)))


def asked_surely(text: str) -> str:
    """Return what a question surely asks about the open question: "means", "why", "how" or "cant"; "" if that is not sure."""
    return _kind(text, 0)


def asked_likely(text: str) -> str:
    """Return what a question that names no topic may ask about the open question; "" for nothing known."""
    return _kind(text, 1)


def _kind(text: str, tier: int) -> str:
    said = plain(text)
    return next((kind for kind, pattern in _TIERS[tier] if pattern.search(said)), "")
