"""Reads what a clinician found, "a trapped nerve", apart from what hurts and from what was told to leave out.

Only what nobody is sent to urgent care for is named here: a break, a growth, an infection or a clot is left to be asked about.
"""

from __future__ import annotations

import re
from typing import Final

from companion.language.clearances import only_clears
from companion.language.limits import A_CLINICIAN, forbids, sets_none, split_up
from companion.language.phrases import normalise

_FINDINGS: Final = (
    r"(?:(?:trapped|pinched|compressed|irritated|sciatic) nerves?(?: roots?)?|nerve (?:root )?(?:irritation|compression|pain)|sciatica|"
    r"radiculopathy|(?:(?:slipped|bulging|herniated|prolapsed|worn) )?dis[ck]s?(?: (?:bulge|prolapse|protrusion|herniation|problem))?|"
    r"(?:pulled|strained|tight)(?: an?| my| the)? (?:back |hip |groin |leg )?(?:muscles?|hamstrings?|glutes?|hip flexors?)|"
    r"(?:muscles?|muscular|back|groin|hamstring|calf|ligament|hip flexor)? ?(?:strains?|sprains?|spasms?)|muscular|(?:only )?muscles?|"
    r"tend[oi]nitis|tendinopathy|bursitis|(?:osteo)?arthritis|arthrosis|impingement|fai|facet joints?|facet|si joints?|sacroiliac joints?|"
    r"piriformis(?: syndrome)?|wear and tear|degeneration|stiffness|stenosis|spondylolisthesis|scoliosis|overuse|"
    r"lumbago|panic attacks?|anxiety|stress|vaso ?vagal(?: (?:faint|syncope|episode))?|(?:acid )?reflux|heartburn|indigestion|"
    r"costochondritis|"
    r"(?:pulled|strained) (?:chest|rib|intercostal)(?: muscles?)?|low blood (?:sugar|pressure)|dehydrat(?:ed|ion)|"
    r"hyperventilat(?:ed|ion|ing)|nerves? (?:is |was )?(?:trapped|pinched|compressed|irritated)|"
    r"cramps?|(?:non[- ]?specific|mechanical|simple|ordinary) (?:low(?:er)? )?back (?:pain|ache))")
_FOUND: Final = re.compile(rf"\b{_FINDINGS}(?!\w)")
_NONE_OF_IT: Final = re.compile(
    r"\b(?:just|only|nothing (?:is )?(?:torn|broken|serious|wrong|fractured)|no (?:breaks?|tears?|fractures?)|"
    r"(?:all |everything |completely |perfectly )?(?:normal|fine|okay|ok|good|clear)|(?:it'?s|was|found|saw|it is) nothing|"
    r"nothing to worry about|(?:go (?:right )?ahead|(?:carry|crack) on|keep (?:going|training|lifting|squatting))"
    r"(?: (?:as (?:normal|usual|before)|training|lifting|squatting))?)\b")
_SAID: Final = re.compile(rf"\b(?:my |the |a |our )?(?:{A_CLINICIAN})(?!\w)")
_SAYS_NOTHING: Final = """
    a an the my i i'm i've it it's its is was that that's there there's he he's she she's they they're we have has had got get be of in on
    at and or said says say told me think thinks thought reckon reckons found shows showed called diagnosed with probably likely maybe
    mild slight small minor bit little some old only just left right lower upper low back hip hips leg legs knee knees groin glute ankle
    foot calf thigh buttock spine lumbar l3 l4 l5 s1 mri scan xray x-ray from went saw did done took all were are been test tests bloods
    hospital emergency er home sent discharged go
    blood ecg ekg results result came back out today yesterday"""
_BESIDE: Final = frozenset(_SAYS_NOTHING.split())
"""Words that say nothing of what to leave out beside what was found."""


def without_the_found(text: str) -> str:
    """Return a message without what was found, in normal form: what is left may say what to leave out."""
    return _FOUND.sub(" ", normalise(text))


def beside_the_found(text: str) -> str:
    """Return a message without who treats somebody and what was found: of "my sciatica hurts" that it hurts."""
    return _FOUND.sub(",", _SAID.sub(",", normalise(text)))


OF_COURTESY: Final = 2
"""Words that may be only a courtesy, "ok fine"; our choice."""


def tells_no_limit(text: str, courtesies: bool = True) -> bool:
    """True if words that say what a clinician said set no limit: each part says that there is none, or only what was found.
    ``courtesies``: also in words that may be no more than that."""
    if not courtesies and len(text.split()) <= OF_COURTESY:
        return False
    if sets_none(text) or only_clears(text):
        return True
    parts = split_up(text)
    harmless = [sets_none(part) or only_clears(part) or _only_found(part) for part in parts]
    return any(harmless) and all(one or _says_nothing(beside_the_found(part)) for one, part in zip(harmless, parts, strict=True))


def _only_found(part: str) -> bool:
    left = _NONE_OF_IT.sub(",", beside_the_found(part))
    return left.count(",") > part.count(",") and _says_nothing(left)


def _says_nothing(left: str) -> bool:
    """True if words forbid nothing, and say nothing beside what was found."""
    return not forbids(left) and _BESIDE.issuperset(re.findall(r"[^\W_][\w'’-]*", left))
