"""Reads from words that a clinician cleared somebody: who did, and when. A name that is no clinician's for certain is asked about."""

from __future__ import annotations

import re
from datetime import date
from difflib import get_close_matches
from typing import Final, NamedTuple

from companion.language.limits import A_CLINICIAN, CLINICIANS, clinicians_in, forbids, read_limit
from companion.language.phrases import normalise
from companion.language.questions import is_question


def names_clinician(text: str) -> bool:
    """True if words that say who cleared somebody name a clinician, and nobody else and no "not" beside it: "my fisio", "dr smith"."""
    line = normalise(text).strip(" .!,")
    if _LAY.search(line):
        return False
    words = re.findall(r"[a-z]+", line)
    return any(re.search(rf"\b(?:{pattern})(?!\w)", line) for _, pattern in CLINICIANS) or any(
        get_close_matches(word, _CLINICIANS, 1, SPELT_ALIKE) for word in words if len(word) >= SPELT_LEAST)


def says_clinician(text: str) -> bool:
    """True if words answer whether somebody is a clinician with which: "my physio", "yes, dr smith"; not if they ask."""
    return names_clinician(text) and not is_question(text)


def may_be_another(text: str, by: str) -> bool:
    """True if whoever words name may be another clinician than "a surgeon" (``by``): another kind, none named, or another of them."""
    return clinicians_in(text) != [by] or bool(_ANOTHER.search(normalise(text)))


def names_when(text: str) -> bool:
    """True if words say when something was: "yesterday", "in May", "two weeks ago"."""
    return bool(_WHEN.search(normalise(text)))


def is_ahead(text: str) -> bool:
    """True if words speak of a day to come: "tomorrow", "next friday", "in two weeks", "when I see them"."""
    return bool(_AHEAD.search(normalise(text)))


def is_today(text: str) -> bool:
    """True if words say that something was today, and name no other day: "my doctor, this morning"."""
    line = normalise(text)
    return bool(_TODAY.search(line)) and not _WHEN.search(_TODAY.sub(" ", line)) and not is_ahead(line)


class ToldClearance(NamedTuple):
    """A clearance as a sentence tells it: the words that say who gave it, and whether it names the day ("said"), one to come
    ("ahead") or none ("none")."""

    who: str
    day: str


def read_clearance(text: str) -> ToldClearance:
    """Return who cleared somebody, and when, as a whole sentence says it: "dr smith cleared me on friday". A sentence that names a day
    that was and one to come says neither. Numbers and "may" alone are no days in it."""
    line = normalise(text).strip(" .!")
    whole = any(pattern.fullmatch(line) for pattern in _WHOLE)
    if not whole and (short := _SHORT.fullmatch(line)):
        line = short["rest"]
        return ToldClearance(line if names_clinician(line) else "", "said" if _DAY.search(line) else "none")
    named = next((found.groupdict() for pattern in _WHOLE if (found := pattern.fullmatch(line)) and found.groupdict().get("who")), {})
    who = named.get("seen") or named.get("who", "")
    was, ahead = bool(_DAY.search(_FROM.sub(" ", line))), is_ahead(line) or bool(_FROM.search(line))
    return ToldClearance("" if _NOBODY.fullmatch(who) else who, "none" if was == ahead else "said" if was else "ahead")


def and_limit(text: str, today: date) -> tuple[str, str]:
    """Return the part of a sentence that says that somebody was cleared, and what it sets beside that: "she cleared me but nothing over
    60 kg until friday"; the whole sentence and "" where it sets no limit that is read."""
    line = normalise(text).strip(" .!")
    if raised := raises(text):
        return line, f"up to {raised}"
    for found in _BESIDE.finditer(line):
        cleared, beside = line[:found.start()], line[found.end():].strip()
        told = read_limit(beside, today)
        if (told.parts or told.kg is not None) and any(pattern.fullmatch(cleared) for pattern in _WHOLE):
            return cleared, beside
    return text, ""


def says_cleared(text: str) -> bool:
    """True if words answer whether somebody was cleared to train with that they were, and perhaps by whom and when: "yes, dr smith on
    friday". Not if they may say for what only."""
    short = _SHORT.fullmatch(normalise(text).strip(" .!"))
    rest = short["rest"] if short else ""
    return only_clears(text) or ((names_clinician(rest) or bool(_DAY.search(rest))) and not is_ahead(rest))


def only_clears(text: str) -> bool:
    """True if a sentence says that somebody was cleared, perhaps when, and nothing that may limit it."""
    line = normalise(text).strip(" .!")
    found = next((found for pattern in _WHOLE if (found := pattern.fullmatch(line))), None)
    return found is not None and bool(_NO_MORE.fullmatch(found.groupdict().get("beside") or ""))


def raises(text: str) -> str:
    """Return the weight to which a sentence says that a clinician raised a limit, as it would be typed; "" for no such."""
    line = normalise(text).strip(" .!")
    return next((found["most"] for pattern in _RAISED if (found := pattern.fullmatch(line))), "")


def not_cleared(text: str) -> bool:
    """True if a sentence says that somebody was not cleared yet."""
    return bool(_NOT_YET.fullmatch(normalise(text).strip(" .!")))


def signs_off(text: str) -> bool:
    """True if a sentence says that somebody was signed off, which may be from work or training, or to train again."""
    return bool(_SIGNED_OFF.fullmatch(normalise(text).strip(" .!")))


def tells_of_clearance(text: str) -> bool:
    """True if a sentence tells of a clearance, given or not yet, and forbids nothing beside it: it is no limit that was told."""
    line = normalise(text).strip(" .!")
    found = next((found for pattern in _WHOLE if (found := pattern.fullmatch(line))), None)
    return not_cleared(text) or (found is not None and not forbids(found.groupdict().get("beside") or ""))


_AHEAD: Final = re.compile(
    r"\b(?:tomorrow|tmrw|tmw|next|coming|upcoming|will|'ll|gonna|going to|soon|later|when i|once i|booked|appointment|not yet|until|till)"
    r"\b|\bin (?:a|an|one|two|three|four|five|six|a few|\d+) (?:day|week|month)s?\b")

SPELT_ALIKE, SPELT_LEAST = 0.78, 4
"""How alike a word is to a clinician's name that counts as it misspelt (difflib), and the fewest letters it has; our choice."""
_CLINICIANS: Final = ("physio", "physiotherapist", "doctor", "surgeon", "consultant", "specialist", "clinician", "orthopaedic", "midwife",
                      "hospital", "clinic", "nurse", "chiropractor", "osteopath", "therapist", "fizio", "fysio")
_LAY: Final = re.compile(
    r"\b(?:no|nope|nah|none|not|never|nobody|no ?one|without|isn't|maybe|perhaps|probably|mates?|friends?|buddy|bro|brother|sister|wife|"
    r"husband|girlfriend|boyfriend|partner|mum|mom|dad|mother|father|neighbou?r|coach|trainer|pt|gym|google\w*|internet|online|ai|app|"
    r"myself|i (?:did|cleared|decided|think|feel))\b|^(?:me|i|self)\b(?! (?:saw|was|went|had|got|have|ve|'ve))")
"""Who is no clinician; beside one it is asked, since "my mate the physio" and "me, not the doctor" look alike."""

_WEEKDAY: Final = r"(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day|mon|tues?|weds?|thurs?|fri|sat|sun)"
_MONTH: Final = (r"(?:(?:jan|febr)uary|march|april|may|june|july|august|(?:septem|octo|novem|decem)ber|jan|feb|mar|apr|jun|jul|aug|sept?|"
                 r"oct|nov|dec)")
_SEASON: Final = r"(?:christmas|easter|spring|summer|autumn|winter)"
_YEAR: Final = r"(?:19|20)\d\d"
_WHEN: Final = re.compile(
    rf"\b(?:today|yesterday|tonight|just now|now|ago|this \w+|last \w+|the other day|{_YEAR}|"
    r"\d{1,2}(?:st|nd|rd|th)?(?! ?(?:kg|kgs|kilos?|kilograms?|lbs?|pounds|reps?|sets?|percent|\d)\b| ?%)|"
    rf"{_WEEKDAY}|{_MONTH}|{_SEASON})\b")
"""A day in an answer to "when?"."""
_DAY: Final = re.compile(
    r"\b(?:today|yesterday|tonight|just now|ago|the other day|"
    rf"(?:this|last) (?:morning|afternoon|evening|night|week|weekend|month|year|{_WEEKDAY}|{_MONTH}|{_SEASON})|"
    rf"on {_WEEKDAY}|{_WEEKDAY}(?: (?:morning|afternoon|evening))?$|in (?:{_MONTH}|{_YEAR})|\d{{1,2}}(?:st|nd|rd|th)?(?: of)? {_MONTH}|"
    rf"{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?|on the \d{{1,2}}(?:st|nd|rd|th)|(?:at|before|over) {_SEASON})\b")
"""The same in a sentence that says more."""
_TODAY: Final = re.compile(r"\b(?<!not )(?:today|just now|this (?:morning|afternoon|evening))\b")
_FROM: Final = re.compile(rf"\b(?:from|as of|starting|after) (?:this |the \d{{1,2}}(?:st|nd|rd|th)|{_WEEKDAY}|{_MONTH})\b")
"""A day from which something is to be."""

_NAME_WORD: Final = (
    r"(?!(?:not|never|nobody|no|none|if|when|until|unless|once|whether|should|would|will|could|can|may|did|does|do|has|have|had|is|was|are|"
    r"were|who|what|which|why|how|you|i|i'm|i've|say|said|says)\b)(?!\w+n't\b)[\w'.-]+")
_WHO: Final = rf"(?P<who>{_NAME_WORD}(?: {_NAME_WORD}){{0,3}})"
_ANOTHER: Final = re.compile(rf"\b(?:another|a different|different|a second|second|other|new)(?: \w+)? (?:{A_CLINICIAN})(?!\w)")
_TREATS: Final = rf"(?P<who>(?:(?:my|the|our|a) )?(?:{A_CLINICIAN}|they|he|she))"
_HOW: Final = r"(?: has| have|'s)?(?: (?:just|now|finally|fully|officially|already))*"
_LEAD: Final = r"(?:(?:so|ok|okay|hey|hi|yes|well|update|finally|good news|great news|and)[,:]? )*"
_ALL_CLEAR: Final = r"(?:all[ -]clear|green light|go[ -]ahead)"
_AGAIN: Final = r"(?: (?:again|now|fully|normally|as (?:usual|normal|before)|everything|anything))*"
_TRAIN: Final = (
    r"(?:train|lift|squat|bend|stretch|deadlift|exercise|work ?out|start|resume|return to|go back to|get back to)(?:ing|ting)?"
    r"(?: (?:training|lifting|squatting|stretching|bending|weights?|squats?|the gym|heavy|with weights?|over|forwards?))*")
_WORK: Final = (r"(?:(?:deep|full|light|back|front|heavy|all|any|my) )*(?:squats?|squatting|lifting|weights?|loads?|deadlifts?|deadlifting|"
                r"(?:hamstring |hip |calf )?stretch(?:es|ing)|bending|training|exercise|exercises|everything|all of it)")
_IS_FINE: Final = (r"(?:is|are|'s|should be) (?:all |now |totally |perfectly )*"
                   r"(?:ok|okay|fine|allowed|good|safe|alright|all right|no problem)")
_LIMITS: Final = (r"(?:it|that|them|all of it|everything|(?:(?:the|my|all|that|this|these|those|his|her|their) )*"
                  r"(?:(?:weight|lifting|squat\w*|bending|stretching|load|old) )?(?:limits?|restrictions?|ban|cap))")
_LIFTED: Final = (
    rf"(?:(?:lifted|removed|ended|dropped|cancelled|canceled|withdrew|scrapped) {_LIMITS}|"
    rf"(?:took|taken|has taken) (?:{_LIMITS} (?:off|away)|(?:off|away) {_LIMITS})|got rid of {_LIMITS})")
_UNITS: Final = r"(?:kgs?|kilos?|lbs?|pounds?)"
_UP_TO: Final = (
    r"(?:(?:said|says?|told me|confirmed|thinks?|let me|lets me|allows me to|allowed me to|ok'?d me to|okayed me to)(?: that)? "
    r"(?:(?:i can|i may|i could|i'm ok to|i'm allowed to|i am allowed to|it'?s (?:ok|fine) to|can) )?(?:now |already )?"
    rf"(?:go|lift|squat|do|load|use|work|train)(?:ing)?(?: back)? (?:(?:up )?to |(?:at |with )?(?=\d[\d.,]* ?{_UNITS}\b))|"
    rf"(?:raised|increased|upped|put|bumped|moved|brought) {_LIMITS}(?: up)? to )"
    rf"(?:a |max(?:imum)? (?:of )?)?(?P<most>\d+(?:[.,]\d+)? ?{_UNITS}?)(?: (?:now|again|from now(?: on)?|already|max))*")
_AS_I_LIKE: Final = r"(?:(?:what(?:ever)?|anything|everything|all)(?: that)? i (?:want|like|please|did before)|anything|everything|it all)"
_MAY: Final = (rf"(?:i'?m|i am) (?:cleared|(?:good|fine|ok|okay|clear|cleared|safe|allowed|free|ready) (?:to|for) {_TRAIN})|"
               rf"(?:i can|i may|it'?s (?:good|fine|ok|okay|safe) to) {_TRAIN}|"
    rf"(?:i'?m|i am) (?:free|allowed|ok|good|fine) to do {_AS_I_LIKE}|(?:i can|i may|i could) (?:now )?do {_AS_I_LIKE}")
_A_DAY: Final = (
    rf"(?:,? (?:on|in|at|the|this|last|a|few|two|three|\d{{1,2}}(?:st|nd|rd|th)?|{_YEAR}|of|days?|weeks?|months?|years?|ago|back|"
    rf"{_WEEKDAY}|{_MONTH}|{_SEASON}|just now|"
    r"yesterday|today|tonight|morning|afternoon|evening|other|day))*")
_ME: Final = r"(?:i'?m|i am|i'?ve|i have|i was|i got|i|been|got|was|have|finally|now|fully|just|officially|today)"

_SEEN: Final = (rf"(?:(?:i |just |i've )*(?:saw|seen|visited|went to|was at|been to) (?P<seen>(?:(?:my|the|a) )?(?:{A_CLINICIAN})){_A_DAY}"
                r"[,.;]? (?:and )?(?=(?:he|she|they)\b))?")
_BESIDE: Final = re.compile(r",? (?:but|though|except|only|just|and)\b ?|[,.;] ?|(?= (?:up to|max|at most|no more than|nothing)\b)")
"""What may stand between a clearance and what it leaves out."""

UP_TO: Final = rf"{_LEAD}(?P<asked>{_SEEN}{_TREATS}{_HOW} {_UP_TO}{_A_DAY})"
"""Whole sentences by which a clinician raised a weight, as a pattern."""
_SEEN_TO: Final = (
    r"(?:(?:my |the )?(?:check ?-?up|review|scan|mri|follow ?-?up|appointment)(?: is| was|'s| went|,)*"
    r"(?:,?(?: and)?(?: all)? (?:done|over|finished|fine|ok|okay|good|well|clear))+)")
"""That what a limit was to last until has been: a check-up, a scan."""
_NOW_FINE: Final = (r"(?:it'?s |that |now )*(?:up to )?(?P<most>\d+(?:[.,]\d+)? ?(?:kgs?|kilos?|lbs?|pounds?)?) (?:is |are )?(?:now )?"
                    r"(?:ok|okay|fine|allowed|good|all right|alright)(?: (?:now|again|already))*")
SEEN_TO: Final = rf"{_LEAD}(?P<asked>{_SEEN_TO}(?:,? (?:and |so )?{_NOW_FINE})?)"
"""Whole sentences that the check-up or scan which a limit waits for has been, as a pattern; perhaps with the weight it was raised to."""
SEEN_UP_TO: Final = rf"{_LEAD}(?P<asked>{_SEEN_TO},? (?:and |so )?{_NOW_FINE})"
_RAISED: Final = (re.compile(UP_TO), re.compile(SEEN_UP_TO))
SIGNED_OFF: Final = (
    rf"(?:(?:my |the |a )?(?:{A_CLINICIAN})|he|she|they|i|i'm|i am|i was|i've been|been|got)(?: has| have|'s| was| am| got| been| just|"
    rf" now| finally| fully)* signed (?:me |it )?off(?! .*\b(?:fit|years?|everything|anything|no|not|without|insurance|work|sick)\b)"
    rf"(?: (?:by (?:(?:my|the|a) )?(?:{A_CLINICIAN})|today|yesterday|again|this \w+|last \w+|on {_WEEKDAY}|(?:for|until|till?) .+))*")
"""Whole sentences that may say that somebody is off work or training, or that they may train again, as a pattern; where a sign is heard
in the words, such as "signed off work", that is asked about."""
_SIGNED_OFF: Final = re.compile(SIGNED_OFF)
NOT_CLEARED: Final = (
    rf"(?:(?:no|nope|nah|well|sorry|still|but|so|and),? )*"
    rf"(?:(?:i'?m|i am|i was|i have|i've|it'?s|(?:my |the )?(?:{A_CLINICIAN})|they|he|she)"
    r"(?: has| have|'s| is| was)? )?(?:still )?(?:not|never|hasn't|hasnt|haven't|havent|wasn't|isn't|didn't|nobody|no one|noone)"
    r"(?: (?:been|yet|really|fully|quite|has|have))* (?:cleared|clear|lifted|over)(?: (?:me|it|that))?"
    rf"(?P<beside>(?: (?:for|to|from) .+?)?)(?: (?:yet|so far|by (?:(?:my |the |a )?(?:{A_CLINICIAN})|anyone|anybody|them)|though|again))*")
"""Whole sentences by which somebody says that they were not cleared yet, as a pattern."""
_NOT_YET: Final = re.compile(NOT_CLEARED)

CLEARANCES: Final = (
    rf"{_LEAD}(?P<asked>{_SEEN}{_WHO}{_HOW} (?:cleared me(?! (?:of|out)\b)|(?:gave|given) me (?:the|an|my) {_ALL_CLEAR})\b(?P<beside>.*))",
    rf"{_LEAD}(?P<asked>{_SEEN}{_TREATS}{_HOW} {_LIFTED}\b(?P<beside>.*))",
    rf"{_LEAD}(?P<asked>(?:the |my )?(?:limit|restriction|ban)s?(?:'s)?(?: has been| have been| was| were| is| are| got)?"
    rf"(?: \w+ly| now| just)* (?:lifted|removed|taken off|off|dropped)"
    rf"(?P<beside>(?: by (?P<who>(?:(?:my|the|our|a) )?(?:{A_CLINICIAN}))\b)?{_AGAIN}{_A_DAY}))",
    rf"{_LEAD}(?P<asked>{_SEEN}{_TREATS}{_HOW} (?:said|says?|told me|confirmed|confirms|thinks?)(?: that)? {_WORK} {_IS_FINE}{_AGAIN}"
    rf"{_A_DAY})",
    UP_TO, SEEN_UP_TO,
    rf"{_LEAD}(?P<asked>{_SEEN}{_TREATS}{_HOW} (?:said|says?|told me|confirmed|confirms)(?: that)? (?:{_MAY}){_AGAIN}{_A_DAY})",
    rf"{_LEAD}(?P<asked>(?:{_ME} )*(?:(?<!\bi )cleared|the {_ALL_CLEAR})(?P<beside> (?:(?:by|from) (?P<who>.+)|(?:to|for) .*)))",
    rf"{_LEAD}(?P<asked>(?:{_ME} )+(?:(?<!\bi )cleared|(?:the |an )?{_ALL_CLEAR}){_AGAIN}{_A_DAY})")
"""Whole sentences by which somebody says that they were cleared, with the group "asked": who cleared them, if they say so, is "who"."""
_WHOLE: Final = tuple(map(re.compile, CLEARANCES))
_SHORT: Final = re.compile(r"(?:yes|yeah|yep|yup)[,.!]? (?P<rest>(?!.*\b(?:not|never|but|no|if)\b|.*n't\b)[^,?!]+(?:,[^,?!]+)?)")
"""A yes with who and when after it."""
_NO_MORE: Final = re.compile(rf"(?: (?:to|for) (?:{_TRAIN}|everything|training))?{_AGAIN}{_A_DAY}")
_NOBODY: Final = re.compile(r"(?:they|he|she|it|them|him|her|we|somebody|someone)?")
