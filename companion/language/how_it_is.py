"""Reads from words how it is since something hurt: "much better today", "about 80 %", "the same, worse on stairs", "not fine".

A message is read whole or part by part, and only where each part says how it is, or no more than why that may be so. The worst of them
counts: what is fine only at times is better and not gone, and what is worse anywhere is worse.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from companion.language.flags import hear_flags
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import normalise
from companion.language.questions import is_question

HOW_LONGEST: Final = 160
"""Most characters of a message that is read so; our choice."""
HALF_BACK: Final = 50
"""Per cent from which a number alone is better; below, it may be what is left of it; our choice."""

_BODY: Final = (r"(?:(?:low(?:er)?|left|right|upper|bad) )*(?:back|hip|groin|knee|ankle|foot|leg|calf|thigh|hamstring|shoulder|neck|wrist|"
                r"elbow|side)s?")
_PLACE: Final = rf"(?:my|the) {_BODY}"
_ACHE: Final = rf"(?:it|that|this|everything|the pain|pain|the ache|(?:(?:my|the) )?{_BODY} pain)"
"""What may be gone: a leg that "is gone" is a sign."""
_IS: Final = (r"(?:'?s been|'?s| is| are|(?: still)? feels?| felt| has(?: been| gotten| got| become)?| got| gets| became|"
              r" seems(?: to be)?| looks)?")
_ACHE_IS: Final = rf"(?:{_ACHE}{_IS} )?"
_WHAT: Final = rf"(?:(?:{_ACHE}|{_PLACE}|{_BODY}){_IS} )?"
_DOUBT: Final = (r"(?:i (?:think|guess|suppose|hope|reckon|believe)|i'?d say|think|guess|maybe|perhaps|probably|possibly|"
                 r"(?:i'?m )?not sure|hard to (?:say|tell))")
_NO_FIRST: Final = r"(?:(?:nope|nah|naw),? |(?:no|not really|not yet), |no (?=(?:it|it'?s|that|the|my|still|not|about)\b))"
_LEAD: Final = (r"(?:(?:hey|hi|hello|morning|good morning|ok|okay|so|well|yes|yeah|yep|and|but|oh|hm+|honestly|tbh|sadly|unfortunately|"
                rf"luckily|sorry|actually|just to say|update|fyi)[,:]? |{_NO_FIRST})*")
_PER_CENT: Final = r"(?:%|percent|per cent|pct)"
_MUCH: Final = (r"(?:(?:a|an|the|so|very|much|lot|lots|loads|way|bit|little|tad|touch|already|now|today|feeling|feels|getting|got|gotten|"
                r"become|been|really|all|totally|completely|fully|even|ever|still|about|roughly|exactly|pretty|almost|nearly|mostly|"
                rf"definitely|slightly|somewhat|quite|just|more or less|if anything|half|doing|\d{{1,3}} ?{_PER_CENT}) )*")
_NOT: Final = (r"(?:(?:still |just )*(?:not|isn'?t|hasn'?t|haven'?t|wasn'?t|doesn'?t feel|don'?t feel)(?: been| got| gotten| getting|"
               r" feeling| really| any| yet| much| even| exactly| so| too| that| very| back to| all that)*)")
_GOOD: Final = r"(?:fine|good|ok|okay|great|perfect)"
_QUITE: Final = r"(?:quite|completely|fully|entirely|totally|all)"
_AS_WAS: Final = r"(?:gone(?: away)?|there|right|back to (?:normal|usual)|normal|cleared up|healed)"
_WHENS: Final = (r"(?:when|whenever|while|after|before|in|on|at|by|with|without|for|during|only|mainly|except|i|i'?m|you|my|the|a|an|some|"
                 r"up|down|out|of|to|off|into|from|it|and|stairs?|steps?|(?:up|down)?hills?|bed|car|chairs?|desk|sofa|work|gym|floor|bend(?:ing)?|"
                 r"sit(?:ting)?|stand(?:ing)?|walk(?:ing)?|lie|lying|lay|laying|get(?:ting)?|got|go|going|run(?:ning)?|squats?|squatting|"
                 r"mov(?:e|ed|ing)|lift(?:ing)?|twist(?:ing)?|turn(?:ing)?|reach(?:ing)?|cough(?:ing)?|sneez(?:e|ing)|driv(?:e|ing)|"
                 r"kneel(?:ing)?|climb(?:ing)?|put(?:ting)?|socks|shoes|longer?|sleep(?:ing)?|days?|nights?|mornings?|evenings?|first|thing|"
                 r"hours?|minutes?|last|early|rest(?:ing)?|exercise|training|painkillers?|ibuprofen|paracetamol|meds|tablets|pills|heat|ice)")
"""Words of when it is so: a movement, a time of day, a remedy."""
_WHEN: Final = rf"(?P<when>(?:,? {_WHENS})+)?"
_TAILS: Final = (r"(?:now|today|this morning|this evening|tonight|again|already|since|since then|since yesterday|over ?night|"
                 r"than yesterday|than before|than last night|than (?:it was|when it (?:hurt|happened|started))|as yesterday|as before|"
                 r"as it was|as ever|as when it (?:hurt|happened|started)|at all|a lot|lots|a bit|a little|slightly|so far|yet|thanks|"
                 r"thank you|thankfully|luckily|sadly|unfortunately|tbh|honestly|actually|though|tho|mate|haha|lol)")
_TAIL: Final = rf"(?:,? {_TAILS})*(?P<unsure>,? {_DOUBT})?(?:,? {_TAILS})*"
_BECAUSE: Final = rf"(?:because of|cos of|coz of|cuz of|bc of|due to|from|with|for|thanks to) (?:{_ACHE}|{_PLACE})"
_LITTLE_SLEEP: Final = (r"(?:i )?(?:(?:did ?n'?t|did not|could ?n'?t|could not|can'?t|hardly|barely)(?: really| even| get)*(?: any| much)? "
                        r"(?:sleep|slept)|slept (?:badly|poorly)|no sleep|little sleep|(?:woke|wake|waking) up)"
                        r"(?: (?:at all|a wink|much|well|properly|all night|last night|at night|a lot|through))*")

_AS: Final = (
    ("worse", rf"{_WHAT}{_MUCH}(?:worse(?: and worse)?|more painful|more sore|the worst|really bad|very bad|terrible|awful|horrible)"),
    ("worse", rf"{_ACHE}(?:'?s| is| has)? (?:back again|back|came back|come back|comes back|coming back|returned)"),
    ("worse", rf"{_LITTLE_SLEEP} {_BECAUSE}"),
    ("worse", rf"(?:{_ACHE}|{_PLACE}) (?:kept me (?:awake|up)|keeps (?:me awake|waking me)|kept waking me|woke me|wakes me)"
              r"(?: (?:up|all|half|last|in|at|the|night|of|most|a|few|times|several|twice|once))*"),
    ("same", rf"{_WHAT}{_MUCH}(?:same|unchanged|no different|no better|no change|no worse|no good)"),
    ("same", rf"{_WHAT}{_NOT} (?:better|changed|worse|improved|improving|easier|easing|settled|settling|calmer|different)"),
    ("better", rf"{_WHAT}{_NOT} {_QUITE} {_AS_WAS}"),
    ("better", rf"{_WHAT}{_MUCH}(?:better|(?:nearly|almost|mostly) gone),? (?:but|just) {_NOT}(?: {_QUITE})? {_AS_WAS}"),
    ("better", rf"{_WHAT}{_MUCH}(?:better|easier|easing(?: off)?|eased(?: off| up)?|improving|improved|on the mend|less sore|less painful|"
               r"less bad|not as bad|calmer|calmed down|calming down|settling(?: down)?|settled(?: down)?|going away|halfway there)"),
    ("left", rf"{_ACHE_IS}(?:{_NOT} (?:gone(?: away)?|cleared up|over)|still there)"),
    ("left", rf"{_WHAT}(?:{_NOT} (?:{_GOOD}|right|well|brilliant|usual|normal|there)|still bad)"),
    ("still", rf"{_WHAT}{_MUCH}(?:sore|stiff|tender|achy)"),
    ("hurts", rf"{_WHAT}{_MUCH}(?:painful|hurts?|aches|hurting|aching)"),
    ("usual", rf"{_ACHE_IS}{_MUCH}(?!gone (?:to|for|out|on|in|at|off|up|down)\b)(?:gone(?: away)?|cleared up|went away)"),
    ("usual", rf"{_WHAT}{_MUCH}(?:(?:back to )?(?:usual|normal)|pain ?-?free|as good as new|painless)"),
    ("usual", rf"{_WHAT}{_MUCH}{_GOOD} (?:again|now|today|this morning)|{_PLACE}(?: is|'?s| feels?) {_MUCH}{_GOOD}"),
    ("usual", rf"(?:it|that|{_PLACE}) (?:doesn'?t|does not|isn'?t|stopped) (?:hurt|hurting|ache|aching)(?: any ?more)?|"
              r"no (?:more )?pain(?: any ?more)?|no longer hurts|nothing hurts(?: any ?more)?"),
)
"""How it is in a part of a message. "left": not gone, which is better beside better, else the same. "still" and "hurts": pain where it
stands alone, as "hurts" does beside "fine"."""
_ASKED: Final = ("usual", rf"(?:{_WHAT}|(?:i'?m|i am|i feel) ){_MUCH}(?:fine|good|great|perfect)")
""""Fine" where it is asked how it is; said unasked it may be of anything."""
_SHARE: Final = (rf"(?:{_WHAT}|(?:i'?m|i am) )(?P<not>not )?(?:(?:maybe|perhaps|about|around|like|roughly|say|at|up to|nearly|almost|only|"
                 rf"still|a|the|quite) )*(?P<share>\d{{1,3}}) ?{_PER_CENT}(?: or so| ?ish)?"
                 rf"(?: (?:(?P<up>better|improved)|{_AS_WAS}|ok|fine|good|recovered|back))?")
_BESIDE: Final = (r"(?:(?:i|i've|i'd|ive|only|just|also|really|have|had|been|to) )*"
                  r"(?:slept (?:badly|poorly|well|ok|fine|terribly|funny|wrong)|(?:a )?(?:bad|rough|poor|good|short|long) (?:night|day)|"
                  r"didn'?t sleep(?: well| much)?|rest(?:ed|ing)?|"
                  rf"(?P<remedy>(?:took|take|taken|on)(?: {_WHENS})+))")
"""What says no more than why it may be so."""


def _whole(words: str) -> re.Pattern[str]:
    return re.compile(rf"(?P<lead>{_LEAD})(?P<maybe>{_DOUBT},? (?:that )?)?(?:{words}){_WHEN}{_TAIL}")


_READ: Final = tuple((how, _whole(words)) for how, words in _AS)
_READ_ASKED: Final = (*_READ, (_ASKED[0], _whole(_ASKED[1])))
_READ_SHARE, _READ_BESIDE = _whole(_SHARE), _whole(_BESIDE)
_CUT: Final = re.compile(r"\s*[,;.:!]+\s*|\s+-+\s+|\s+(?:but|and|though|although|however|because|cos|coz|cuz|as)\s+")
_NEARLY: Final = re.compile(r"\b(?:almost|nearly|mostly|bit|half|pretty|more or less|somewhat|slightly|getting)\b")
_WORSE: Final = re.compile(r"(?P<not>\b(?:not|no|never|isn'?t|hasn'?t|without|or|could|would|might|may|will|can|if)(?: \w+)? )?\bworse\b")
_NO: Final = re.compile(r"\b(?:no|nope|nah|naw|not)\b")
_RANK: Final = ("usual", "better", "same", "worse")


@lru_cache(maxsize=256)
def how_it_is(text: str) -> str:
    """Return "usual", "better", "same" or "worse" as a whole message says that what hurt is, else "". Almost gone is "better"."""
    return _how(text, _READ)


@lru_cache(maxsize=256)
def how_it_is_asked(text: str) -> str:
    """Return how it is, as words say where that is asked: "fine" is an answer there, and what is said to be worse is, whatever stands
    beside it, but a sign or pain of its own."""
    if how := _how(text, _READ_ASKED) or _still(text):
        return how
    says_worse = any(not found["not"] for found in _WORSE.finditer(normalise(text)))
    alone = says_worse and not is_question(text) and not hear_flags(text) and hear_pain(text) is not Pain.YES
    return "worse" if alone else ""


def _how(text: str, rows: tuple[tuple[str, re.Pattern[str]], ...]) -> str:
    line = normalise(text).strip(" .!")
    if not line or len(line) > HOW_LONGEST:
        return ""
    parts = [line] if _said(line, rows) else [part for part in _CUT.split(line) if part]
    said = [_said(part, rows) or ("beside" if _READ_BESIDE.fullmatch(part) else "") for part in parts]
    if not all(said):
        return ""
    remedy = any((found := _READ_BESIDE.fullmatch(part)) and found["remedy"] for part in parts)
    return _worst(frozenset(said) | ({"better"} if remedy and "usual" in said else frozenset()))


def _still(text: str) -> str:
    """Return how it is where a message says no more than that it is sore or stiff: a little of that is better, and not gone."""
    line = normalise(text).strip(" .!")
    parts = [part for part in _CUT.split(line) if part] if len(line) <= HOW_LONGEST else []
    said = {_said(part, _READ) or ("beside" if _READ_BESIDE.fullmatch(part) else "") for part in parts}
    return ("better" if _A_LITTLE.search(line) else "same") if "still" in said and said <= {"still", "beside"} else ""


_A_LITTLE: Final = re.compile(r"\b(?:bit|little|tad|touch|slightly|somewhat)\b")


def _worst(said: frozenset[str]) -> str:
    """Return the worst of what the parts of a message say; "" for pain that stands alone, and for none."""
    if said <= {"hurts", "usual", "beside"} and "hurts" in said:
        return ""
    if said & {"left", "still", "hurts"}:
        said |= {"better"} if said & {"better", "usual"} else {"same"} if "left" in said else frozenset()
    return max((how for how in said if how in _RANK), key=_RANK.index, default="")


def _said(part: str, rows: tuple[tuple[str, re.Pattern[str]], ...]) -> str:
    """Return how it is by one part of a message; "" where it says nothing of it or both yes and no."""
    for how, pattern in rows:
        if found := pattern.fullmatch(part):
            if how != "usual":
                return how
            at_times = found["when"] or found["maybe"] or found["unsure"] or _NEARLY.search(part)
            return "" if _NO.search(found["lead"]) else "better" if at_times else how
    return _share(part)


def _share(part: str) -> str:
    """Return how it is by a part in per cent; "" for none. What is not 100 % is better, a small number alone is the same."""
    found = _READ_SHARE.fullmatch(part)
    share = int(found["share"]) if found else -1
    if not found or not 0 <= share <= 100 or (found["not"] and share < 100):
        return ""
    if share == 100 and not (found["not"] or found["up"] or found["when"] or found["maybe"] or found["unsure"]):
        return "usual"
    return "better" if share >= HALF_BACK or (found["up"] and share) else "same"
