"""Reads from words how it is since something hurt: "much better today", "the knee is back to normal", "its worse"."""

from __future__ import annotations

import re
from typing import Final

from companion.language.phrases import normalise

_BODY: Final = (r"(?:(?:low(?:er)?|left|right|upper|bad) )*(?:back|hip|groin|knee|ankle|foot|leg|calf|thigh|hamstring|shoulder|neck|wrist|"
                r"elbow|side)s?")
_LEAD: Final = r"(?:(?:hey|hi|hello|morning|good morning|ok|okay|so|well|yes|yeah|yep|and|but|oh|actually|just to say|update|fyi)[,:]? )*"
_WHAT: Final = (rf"(?:(?:it|that|this|the pain|pain|the ache|(?:my|the) {_BODY}(?: pain)?|{_BODY})"
                r"(?:'?s| is| are| feels?| felt| has| has been| has gotten| has got| got| seems| seems to be| looks)? )?")
_MUCH: Final = (r"(?:(?:a|an|the|so|very|much|lot|lots|loads|way|bit|little|tad|touch|already|now|feeling|feels|getting|got|gotten|become|"
                r"been|really|all|totally|completely|fully|even|still|about|exactly|pretty|almost|nearly|mostly|definitely) )*")
_TAIL: Final = (r"(?:,? (?:now|today|this morning|this evening|tonight|again|already|since|since then|since yesterday|than yesterday|"
                r"as yesterday|as before|thanks|thank you|thankfully|tbh|actually|haha|lol))*")
_AS: Final = {
    "worse": r"worse|more painful|more sore",
    "same": r"same|unchanged|no different|no better|not (?:any |really )?(?:better|changed|gone)(?: yet)?|no change|no worse",
    "better": r"better|easier|easing(?: off)?|eased(?: off| up)?|improving|improved|on the mend|less sore|less painful|calmer|"
              r"calmed down|calming down|settling(?: down)?|settled(?: down)?|"
              r"(?:better|nearly gone|almost gone|mostly gone),? (?:but|just) not (?:quite |fully |completely |all )?(?:gone|there|right)"
              r"(?: yet)?",
    "usual": r"gone|gone away|cleared up|went away|(?:back to )?(?:usual|normal)|pain ?-?free|as good as new|painless",
}
_NEARLY: Final = re.compile(r"\b(?:almost|nearly|mostly|bit|not)\b")
_FINE: Final = r"(?:fine|good|ok|okay|great|perfect)"
_FINE_AGAIN: Final = rf"{_WHAT}{_MUCH}{_FINE} (?:again|now|today|this morning)|(?:my|the) {_BODY}(?: is|'?s| feels?) {_MUCH}{_FINE}"
_NO_PAIN: Final = (rf"(?:it|that|the {_BODY}|my {_BODY}) (?:doesn'?t|does not|dont|isn'?t|stopped) (?:hurt|hurting|ache|aching)"
                   r"(?: any ?more| at all)?|no (?:more )?pain|no longer hurts|nothing hurts(?: any ?more)?")
_SAID: Final = (*((how, rf"{_WHAT}{_MUCH}(?:{words})") for how, words in _AS.items()), ("usual", _FINE_AGAIN), ("usual", _NO_PAIN))
_READ: Final = tuple((how, re.compile(rf"{_LEAD}(?:{pattern}){_TAIL}")) for how, pattern in _SAID)

HOW_IT_IS: Final = rf"(?P<asked>{_LEAD}(?:{'|'.join(pattern for _, pattern in _SAID)}){_TAIL})"
"""Whole messages that say how it is since something hurt; ``how_it_is`` reads them."""


def how_it_is(text: str) -> str:
    """Return "usual", "better", "same" or "worse" as words say that what hurt is; "" where they don't. Almost gone is better."""
    line = normalise(text).strip(" .!")
    how = next((how for how, pattern in _READ if pattern.fullmatch(line)), "")
    return "better" if how == "usual" and _NEARLY.search(line) else how
