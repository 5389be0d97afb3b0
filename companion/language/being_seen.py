"""Reads from words whether somebody has been seen by a clinician, or when they will be."""

from __future__ import annotations

import re
from datetime import date
from typing import Final

from companion.language.days.dates import read_date
from companion.language.limits import CLINICIANS
from companion.language.phrases import normalise

_NAMES: Final = "|".join(pattern for _, pattern in CLINICIANS)
_WHO: Final = rf"(?:(?:my|the|a|an|our) )?(?:{_NAMES}|a ?(?:and|&|n) ?e|er|urgent care|walk[- ]in)"
_I: Final = (r"(?:i |i'm |im |i am |i've |ive |i have |it'?s |it is |its |i got |ive got |i've got |got |there is |there's |"
             r"they |we )*")
_NOT_YET: Final = (r"(?:(?:(?:no|nope|nah|not|haven'?t)(?: been| gone| been seen)?(?: just)? yet(?:,| but|,? because|,? cos|,? cuz|,? as)?|"
                   r"(?:no|nope|nah)(?:,| but|, but)) )?(?:i'?ll be )?")
_CALLED: Final = (rf"(?:(?:i |i've |just )*(?:rang|called|phoned|spoke to|talked to|messaged|emailed) {_WHO},? "
                  r"(?:and |they |he |she |got |so |have )*)?")
_APPOINTMENT: Final = (r"(?:an? |the |my |next |first |earliest |another )*"
                       r"(?:(?:phone|video|telephone|online|urgent|physio|doctor'?s?|gp) )*"
                       r"(?:appointments?|appt|slot|consultation|call ?back|referral)")
_BOOKED: Final = (
    rf"{_CALLED}{_I}(?:been |already |just |now )*book(?:ed|d|t)(?: in)?(?: .+)?|{_CALLED}{_I}{_APPOINTMENT}(?: .+)?|"
    rf"{_I}(?:seeing|going to see|will see|see|going to) {_WHO}(?: (?:on|at|in|this|next|later|tomorrow|today|tonight))+.*|"
    rf"{_CALLED}(?:i |they |we )*(?:couldn'?t|could not|can'?t|cant|cannot) (?:get|see|find)(?: me)?(?: {_APPOINTMENT})? "
    r"(?:until|till|before) .+")
_NO: Final = (
    r"(?:i )?(?:haven'?t|have not|not) (?:been|gone|seen (?:anyone|anybody|a doctor|my doctor)|got an appointment)(?: yet)?|"
    rf"(?:i |they |we )*(?:couldn'?t|could not|can'?t|cant|cannot|didn'?t) (?:get|find)(?: me)? {_APPOINTMENT}(?: yet)?|"
    rf"no {_APPOINTMENT}(?: yet)?|nobody (?:picks|picked|answers|answered)(?: up)?|{_WHO} (?:is|was) (?:closed|shut|full|away)(?: .+)?")
_YES: Final = (
    rf"(?:i )?(?:went|saw|been|have seen|have been)(?: to)?(?: see)? {_WHO}\b.*|"
    rf"{_WHO}(?: has| have|'s)?(?: just| now)? (?:said|says|told me|tells me|thinks?|reckons?|found|checked|looked at|examined|saw|"
    r"seen|scanned|tested|x-?rayed|gave)\b(?! (?:to come|come|to go|no appointment|they can'?t)\b).*")
_SAYS_MORE: Final = r"(?!.*\b(?:but|worse|do i|should i|can i)\b)"
"""What is asked about: more than whether they were seen is told, or it is a question."""
_READ: Final = tuple((what, re.compile(rf"{_NOT_YET}{_SAYS_MORE}(?:{pattern})")) for what, pattern in (
    ("no", _NO), ("booked", _BOOKED), ("yes", _YES)))

BEING_SEEN: Final = tuple(rf"(?P<asked>{_NOT_YET}(?:{pattern}))" for pattern in (_NO, _BOOKED, _YES))
"""Whole messages of somebody who was sent to a clinician about having been seen, or not yet, as patterns; ``been_seen`` reads them."""
WORDS_OF_DAY: Final = 4
"""Most words that are read as one day; our choice."""


def been_seen(text: str) -> str:
    """Return "yes", "booked" or "no" as words say whether somebody has been seen; "" where they do not."""
    line = normalise(text).strip(" .!")
    return next((what for what, pattern in _READ if pattern.fullmatch(line)), "")


def tells_what_was_said(text: str) -> bool:
    """True if words that say that somebody was seen also say what came of it: "doctor said it's nothing"."""
    return been_seen(text) == "yes" and bool(_CAME_OF_IT.search(normalise(text)))


_CAME_OF_IT: Final = re.compile(
    r"\b(?:said|says|told|tells|thinks?|reckons?|found|looked at it)\b|, ?\w|\band (?:it|he|she|they|all|nothing)\b")


def appointment(text: str, today: date) -> date | None:
    """Return the day that words name for an appointment; None for none."""
    words = re.sub(r"[,;.!]", " ", normalise(text)).split()
    spans = (words[at:at + size] for size in range(WORDS_OF_DAY, 0, -1) for at in range(len(words) - size + 1))
    return next((day for span in spans if (day := read_date(" ".join(span), today))), None)
