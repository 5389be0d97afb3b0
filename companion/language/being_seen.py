"""Reads from words whether somebody has been seen by a clinician, or when they will be."""

from __future__ import annotations

import re
from datetime import date
from typing import Final

from companion.language.days.dates import read_date
from companion.language.limits import A_CLINICIAN
from companion.language.phrases import normalise

_WHO: Final = rf"(?:(?:my|the|a|an|our) )?(?:{A_CLINICIAN}|a ?(?:and|&|n) ?e|er|urgent care|walk[- ]in)"
_I: Final = (r"(?:i |i'm |im |i am |i've |ive |i have |it'?s |it is |its |i got |ive got |i've got |got |there is |there's |"
             r"they |we )*")
_NOT_YET: Final = (r"(?:(?:(?:no|nope|nah|not|haven'?t)(?: been| gone| been seen)?(?: just)? yet(?:,| but|,? because|,? cos|,? cuz|,? as)?|"
                   r"(?:no|nope|nah)(?:,| but|, but)) )?(?:i'?ll be )?")
_CALLED: Final = (rf"(?:(?:i |i've |just )*(?:rang|called|phoned|spoke to|talked to|messaged|emailed) {_WHO},? "
                  r"(?:and |they |he |she |got |so |have )*)?")
_APPOINTMENT: Final = (r"(?:an? |the |my |next |first |earliest |another )*"
                       r"(?:(?:phone|video|telephone|online|urgent|physio|doctor'?s?|gp) )*"
                       r"(?:appointments?|appt|slot|consultation|call ?back|referral)")
_DESK: Final = r"(?:receptionist|reception|secretary|surgery|practice|office|front desk)"
_BOOKED: Final = (
    rf"{_CALLED}{_I}(?:been |already |just |now )*book(?:ed|d|t)(?: in)?(?: .+)?|{_CALLED}{_I}{_APPOINTMENT}(?: .+)?|"
    rf"{_I}(?:seeing|going to see|will see|see|going to) {_WHO}(?: (?:on|at|in|this|next|later|tomorrow|today|tonight))+.*|"
    rf"(?:i |just )*(?:rang|called|phoned)(?: {_WHO})?,? (?:and )?(?:they|he|she) (?:said|say|can do|gave me|offered me|told me)"
    r"(?: to come(?: in)?)?(?: on| at| for)? (?:tomorrow|today|next \w+|mon|tue|wed|thu|fri|sat|sun|\d).{0,30}|"
    rf"{_CALLED}(?:i |they |we )*(?:couldn'?t|could not|can'?t|cant|cannot) (?:get|see|find)(?: me)?(?: {_APPOINTMENT})? "
    rf"(?:until|till|before) .+|{_WHO}(?:'?s)? (?:{_DESK} )+.*\b(?:call|ring|phone|come|back|tomorrow|next|later)\b.*")
_NO: Final = (
    r"(?:i )?(?:haven'?t|have not|not) (?:been|gone|seen (?:anyone|anybody|a doctor|my doctor)|got an appointment)(?: yet)?|"
    rf"(?:i |they |we )*(?:couldn'?t|could not|can'?t|cant|cannot|didn'?t) (?:get|find)(?: me)? {_APPOINTMENT}(?: yet)?|"
    rf"no {_APPOINTMENT}(?: yet| (?:until|till|before|for|left|free|available)\b.*)?|nobody (?:picks|picked|answers|answered)(?: up)?|"
    rf"{_WHO} (?:is|was) (?:closed|shut|full|away|off|on holiday)(?: .+)?")
_SAID: Final = r"(?:said|says|told me|tells me|thinks?|reckons?|found|did)"
_SAW: Final = (
    rf"(?:i )?(?:went|saw|been|have seen|have been)(?: to)?(?: see)? {_WHO}\b.*|"
    rf"(?:i |i've |just )*(?:went|been(?: seen)?|was seen|got (?:it |myself )?(?:seen|checked))(?: out| over| up)?"
    rf"(?: today| yesterday| this morning| there| last night)?(?:[,.;:]| and) "
    rf"(?:{_WHO}|they|he|she|all|it'?s|nothing|no|can|can't|not)\b.*|"
    rf"(?:i |just )*(?:rang|called|phoned|spoke to|talked to) (?:{_WHO}|111|an? (?:nurse|advice) line)(?:[,.;:]| and)? "
    rf"(?:they|he|she) {_SAID}\b(?! (?:to come|come|to go|no appointment|they can'?t)\b).*|"
    rf"(?:the )?(?:{_WHO}|hospital|clinic)(?:'?s)? (?:visit|trip|appointment|check-?up)(?: is| was)? (?:done|over|went|fine|ok|good)\b.*|"
    rf"(?:they|(?:the )?hospital|{_WHO}) (?:have )?(?:kept me|sent me (?:home|back|away)|let me go|discharged me|released me)\b"
    r"(?!.*\bcan'?t\b).*")
_YES: Final = (
    rf"{_SAW}|"
    rf"{_WHO}(?: has| have|'s)?(?: just| now)? (?:said|says|told me|tells me|thinks?|reckons?|found|checked|looked at|examined|saw|"
    r"seen|scanned|tested|x-?rayed|gave)\b(?! (?:to come|come|to go|no appointment|they can'?t)\b).*")
_HOSPITAL: Final = rf"(?:(?:the )?(?:hospital|emergency(?: department| room)?|clinic|urgent care|walk[- ]in|a ?(?:and|&|n) ?e|er)|{_WHO})"
_TOLD_ON: Final = """
    with on for and but no not nothing a an the my me im i'm i am was still here home now back it its it's it is all ok okay fine good great
    clear normal serious ecg ekg bloods blood tests test scan xray x-ray results heart antibiotics tablets meds painkillers paracetamol
    ibuprofen overnight in last night today yesterday this morning they he she said say says did found gave wrong to worry about come if
    happens again rest take easy up next week checked looked at over out thankfully so far mri ct want wants wait waiting till until then
    list specialist consultant referral referred neurologist cardiologist weeks month months monday tuesday wednesday thursday friday to
    be seen more another see"""
_CLOSED: Final = rf"(?:[,.;]? (?:{'|'.join(map(re.escape, dict.fromkeys(_TOLD_ON.split())))}))*"
"""What may follow, of words that name no sign."""
_LEAD: Final = r"(?:(?:yes|yeah|yep|ok|okay|well|so|oh|hi|hey|thanks|but|and)[,.]? )*"
_WAS: Final = (
    rf"(?:i (?:have |just )*|just |finally )*(?:been to|went to|back from|seen at|left|got out of|"
    rf"(?:got |came |am |'m )?(?:home|out|back|discharged|released) (?:of|from)) {_HOSPITAL}{_CLOSED}|"
    rf"(?:they|the hospital|{_WHO}) (?:have )?(?:kept me(?: in| there| overnight)?|sent me (?:home|back|away)|let me go|discharged me|"
    rf"released me|checked me|looked me over|did (?:an? |some )?(?:ecg|ekg|scan|tests|bloods|x-?ray)){_CLOSED}|"
    rf"(?:i )?(?:just )?(?:got|been|was) (?:checked|seen|looked at|examined)(?: out| over| up)?{_CLOSED}|"
    rf"(?:got )?(?:the |an )?all clear(?: from| at) {_HOSPITAL}{_CLOSED}|"
    rf"(?:i )?went(?: today| yesterday| this morning| there| last night)?(?:[,.]|$){_CLOSED}|i (?:went|have been|was there){_CLOSED}")
_REASONS: Final = (r"(?:anyway|now|today|yet|again|really|sorry|thanks|lol|cos|because|as|since|scared|too (?:busy|far|expensive)|work|"
                   r"i'?m (?:fine|ok|okay|scared|too busy)|it'?s (?:fine|gone|better|nothing|too far)|"
                   r"it (?:went away|passed|stopped|is gone)|no (?:time|money)|i (?:had|have) (?:to work|no time|no money))")
_REASON: Final = rf"(?:,? {_REASONS})*"
_WILL_NOT: Final = (
    rf"(?:(?:no|nope|nah|no way)[,.]? )*(?:(?:i'?m |i am |am |im )?(?:not|never) (?:going|seeing|calling)(?: anywhere| there| in| back)?|"
    rf"(?:i )?(?:really |just )?(?:don'?t|do not|dont|won'?t|wont|will not) (?:(?:want|need|have|wanna|intend) ?(?:to )?)?"
    rf"(?:go(?: there| in)?|see|call|be seen|bother)|(?:i )?(?:don'?t|do not|dont) need to|(?:i )?refuse to (?:go|see|call)|"
    rf"(?:i )?(?:can'?t|cant|cannot) (?:afford (?:it|that|to|one)|get there|get away)|(?:i )?(?:didn'?t|didnt|never) (?:go|went|bother))"
    rf"(?: (?:to )?{_HOSPITAL})?{_REASON}|"
    rf"no way (?:am i|i am|i'?m|im) going(?: to {_HOSPITAL})?{_REASON}|"
    rf"not sure (?:if|that|whether) i (?:have|need|want|should)(?: to)?(?: go)?{_REASON}|"
    rf"(?:no|not yet)[,.]? (?:because |cos |as |since |but )?{_REASONS}{_REASON}")
_US: Final = r"(?:i'?m |i am |we'?re |we are |im )?"
_ON_THE_WAY: Final = (
    r"(?:the |an )?(?:ambulance|paramedics?|medics?|crew)(?:'?s| is| are)? "
    r"(?:here|on (?:its|it'?s|the|their) way|coming|just (?:came|arrived)|called)(?: now)?|"
    rf"{_US}(?:(?:waiting |sitting )?(?:at|in)|on (?:my|the|our) way(?: to)?|heading to|going to) {_HOSPITAL}"
    rf"(?: now| waiting| already| since .{{1,20}})*|"
    rf"{_US}(?:going|leaving|on (?:my|the|our) way)(?: now| there)*|(?:i'?ll|i will) go(?: now| there)*|"
    r"(?:my \w+|he|she|a friend|somebody|someone)(?:'?s| is) (?:driving|taking|bringing) me(?: there| in| now)*|"
    r"(?:i |we |have |just |my \w+ )*(?:called|rang|phoned|dialled|dialed) (?:(?:an|the) ambulance|999|911|112|000|111|emergency)(?: now)?")
_SAYS_MORE: Final = r"(?!.*\b(?:but|worse|do i|should i|can i)\b)"
"""What is asked about: more than whether they were seen is told, or it is a question."""
_READ: Final = tuple((what, re.compile(rf"{_LEAD}{_NOT_YET}{_SAYS_MORE}(?:{pattern})")) for what, pattern in (
    ("no", _NO), ("booked", _BOOKED), ("yes", _YES)))
_READ_FIRST: Final = tuple((what, re.compile(f"{_LEAD}(?:{pattern})")) for what, pattern in (
    ("going", _ON_THE_WAY), ("no", _WILL_NOT), ("yes", _WAS)))

BEING_SEEN: Final = tuple(rf"(?P<asked>{_LEAD}{_NOT_YET}(?:{pattern}))" for pattern in (_NO, _BOOKED, _YES))
"""Whole messages of somebody who was sent to a clinician about having been seen, or not yet, as patterns; ``been_seen`` reads them."""
SEEN_PLAINLY: Final = tuple(rf"(?P<asked>{pattern.pattern})" for _, pattern in _READ_FIRST)
"""Such messages of words that name no sign, among them that they are on the way, or won't go."""
WORDS_OF_DAY: Final = 4
"""Most words that are read as one day; our choice."""


def been_seen(text: str) -> str:
    """Return "yes", "booked", "going" or "no" as words say whether somebody has been seen; "" where they do not."""
    line = normalise(text).strip(" .!")
    return next((what for what, pattern in (*_READ_FIRST, *_READ) if pattern.fullmatch(line)), "")


def only_says_seen(text: str) -> bool:
    """True if words say that somebody was seen, and at most that it was nothing: nothing to leave out."""
    line = normalise(text).strip(" .!")
    return bool(_READ_FIRST[-1][1].fullmatch(line)) and not re.search(r"\b(?:easy|rest|not to)\b", line)


def saw_somebody(text: str) -> bool:
    """True if words begin with having gone to be seen: "saw the doctor, a nerve is pinched"."""
    return bool(re.fullmatch(f"{_LEAD}{_SAW}", normalise(text).strip(" .!")))


def will_not_go(text: str) -> bool:
    """True if words say that somebody does not want to be seen, or can't."""
    return bool(re.fullmatch(_WILL_NOT, normalise(text).strip(" .!")))


def tells_what_was_said(text: str) -> bool:
    """True if words that say that somebody was seen also say what came of it: "doctor said it's nothing"."""
    return been_seen(text) == "yes" and bool(_CAME_OF_IT.search(normalise(text)))


_CAME_OF_IT: Final = re.compile(
    r"\b(?:said|says|told|tells|thinks?|reckons?|found|looked at it)\b|, ?\w|\band (?:it|he|she|they|all|nothing)\b")


def appointment(text: str, today: date) -> date | None:
    """Return the day that words name for an appointment, a later one before today, on which it may have been made; None for none."""
    words = re.sub(r"[,;.!]", " ", normalise(text)).split()
    spans = (words[at:at + size] for size in range(WORDS_OF_DAY, 0, -1) for at in range(len(words) - size + 1))
    days = [day for span in spans if (day := read_date(" ".join(span), today))]
    later = next((day for day in days if day > today), None)
    return later or (today if _LATER_TODAY.search(normalise(text)) else next(iter(days), None))


_LATER_TODAY: Final = re.compile(
    r"\b(?:today|tonight|this (?:morning|afternoon|evening)|later on|in (?:half )?an hour|in \w+ (?:hours|minutes))\b")
