"""Places that hurt, as a sentence tells them: "my knee is sore", "my knee hurts, and my lower back too"."""

from __future__ import annotations

import re
from typing import Final

from companion.language.clauses import Mood, clauses
from companion.language.pain import Pain, hear_pain

_SPOTS: Final = tuple((spot, re.compile(rf"\b(?:{words})\b")) for spot, words in (
    ("chest", r"chest|breath\w*|heart|faint\w*|dizzy"),
    ("other", r"(?:upper|mid|middle|top of (?:my|the)) back|neck|shoulders?(?: blades?)?|arms?|elbows?|wrists?|hands?|fingers?|head|ribs?|"
              r"stomach|belly|tummy|side|jaw"),
    ("ankle", r"ankles?|foot|feet|heels?|toes?|achilles"),
    ("knee", r"knees?|knee ?caps?|patellas?|shins?"),
    ("leg", r"legs?|thighs?|hamstrings?|hamm(?:y|ies)|quads?|calf|calves"),
    ("hip", r"hips?|groins?|glutes?|bum|buttocks?|adductors?"),
    ("back", r"(?:lower|low|lumbar|my|the) back(?! (?:of|side)\b)|back (?:pain|ache|hurts?|is|aches|went|feels|kills)|spine|tail ?bone|"
             r"si joint|sacrum")))
"""By the places that the pain questions name; of a sentence each word counts once, for the first that has it."""
_DENIED: Final = re.compile(r"\b(?:not|no|never|isnt|wasnt|doesnt|didnt|dont|aint)\b")
_ONE_PAIN: Final = re.compile(r"\b(?:radiat\w*|spread\w*|shoot\w*|travel\w*|runs|running|goes|going|down|into|through|from|between)\b")
"""Words by which one pain reaches from one place to another."""


def spots_told(text: str) -> tuple[str, ...]:
    """Return the places that hurt now by a message, the chest first and the others as they are told; () for none, or where it tells of no
    pain. Of a pain that reaches from one to another only the first."""
    if hear_pain(text) is Pain.NO:
        return ()
    told: list[str] = []
    for clause in clauses(text):
        words = clause.text
        if clause.mood not in (Mood.SAID, Mood.HEDGED) or _DENIED.search(words):
            continue
        found: list[tuple[int, str]] = []
        for spot, pattern in _SPOTS:
            found += [(one.start(), spot) for one in pattern.finditer(words)]
            words = pattern.sub(lambda one: "_" * len(one[0]), words)
        told += [spot for _, spot in sorted(found)][:1 if _ONE_PAIN.search(clause.text) else None]
    return tuple(sorted(dict.fromkeys(told), key=lambda spot: spot != "chest"))
