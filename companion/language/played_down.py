"""Reads words that only play down what was told before: "but it's only my foot", "it's not that bad", "probably nothing"."""

from __future__ import annotations

import re
from typing import Final

from companion.language.phrases import normalise

_PLACE: Final = (r"(?:(?:low(?:er)?|left|right|upper|bad|big|one) )*"
                 r"(?P<place>back|hip|groin|knee|ankle|foot|leg|calf|thigh|hamstring|toe|heel|shin)")
"""One place: both feet, both legs or the other one may be another sign, and so may the chest."""
_LEAD: Final = (r"(?:(?:but|and|well|ok|okay|so|oh|hm+|honestly|really|actually|i mean|come on|look|no|nah|yes|yeah|i'?m sure|surely|"
                r"i (?:think|guess|reckon)|thats?|that's),? )*")
_IT: Final = r"(?:it'?s|it is|that'?s|that is|this is|it was|i think it'?s)"
_TAIL: Final = r"(?:,? (?:though|tho|really|tbh|honestly|that'?s (?:all|it)|thats (?:all|it)|you know|only|not both|anyway|right now|now))*"
_DOWN: Final = "|".join((
    rf"(?:{_IT} )?(?:really )?(?:only|just|merely)(?: really)?(?: in| on)?(?: (?:my|the|a|one))? {_PLACE}",
    rf"{_IT} (?:only|just|merely)(?: really)? (?:a (?:little|tiny|wee)(?: bit)?(?: thing)?|a bit|slight|mild|minor|small)",
    r"(?:it'?s|it is|it) (?:not|isn'?t)(?: even| really| all)?(?: that| so| too)? (?:bad|serious|severe|a big deal|painful|much)|"
    r"(?:it'?s|it is) no(?:t a)? big deal|no big deal",
    r"it (?:doesn'?t|does not)(?: even| really)? hurt(?: at all| though)?",
    rf"(?:{_IT} )?(?:probably|surely|most likely)(?: just)? (?:nothing|fine)(?: serious| bad| much)?",
    r"(?:it'?s|it is) nothing (?:serious|bad|much|major)"))
_WHOLE: Final = re.compile(rf"{_LEAD}(?:{_DOWN}){_TAIL}")


def plays_down(text: str, where: str | None = None) -> bool:
    """True if a whole message only plays down what somebody told before: it names no sign and at most one place. ``where``: the place told
    before, which has to be that one; None for any."""
    found = _WHOLE.fullmatch(normalise(text).strip(" .!"))
    return found is not None and (where is None or (found["place"] or "") in where)
