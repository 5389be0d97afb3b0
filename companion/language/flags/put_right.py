"""Answers of the safety check that words put right: “i meant yes on the cancer question”, “i said no to the fall but that's wrong”."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from companion.language.clauses import flat
from companion.language.flags.flag import Flag

ABOUT: Final[Mapping[Flag, str]] = {
    Flag.BLADDER_BOWEL: r"bladder|bowel|toilet|pee(?:ing)?|wee(?:ing)?|poo(?:ing)?|incontinence",
    Flag.SADDLE: r"saddle|between (?:my|the) legs|groin numb\w*|numb\w* (?:down there|groin)",
    Flag.CHEST: r"chest|faint\w*|breath\w*|passing out",
    Flag.WEAKNESS: r"weak(?:ness)?(?: legs?)?|(?:foot|feet) drop\w*|leg weakness",
    Flag.FALL: r"fall|fell|blow|accident",
    Flag.FEVER: r"fever|chills|infection|ill(?:ness)?|feeling ill|sick(?:ness)?",
    Flag.CANCER_BONE: r"cancer|tumou?r|(?:weak )?bones?|osteoporosis|steroids?|prednisone|cortisone|tablets",
    Flag.WEIGHT_LOSS: r"weight(?: loss)?|losing weight|night pain",
    Flag.HEART_HISTORY: r"heart",
    Flag.PREGNANCY: r"pregnan\w*|birth",
    Flag.SPINE_HISTORY: r"discs?|nerve problem|slipped disc|spine|surgery|operations?|broken bone|fracture"}
"""What people call the subjects of the check's questions, by the sign each asks about."""
_ORDER: Final = (
    (r"first", (Flag.BLADDER_BOWEL, Flag.SADDLE)), (r"second", (Flag.CHEST,)), (r"third", (Flag.WEAKNESS, Flag.FALL, Flag.FEVER)))
"""The first questions, which are asked in the same order of everybody."""
THE_CHECK: Final = (Flag.BLADDER_BOWEL, Flag.CHEST, Flag.WEAKNESS, Flag.FALL, Flag.FEVER, Flag.CANCER_BONE, Flag.WEIGHT_LOSS,
                    Flag.SPINE_HISTORY, Flag.PREGNANCY)
"""All that the check asks about, in its order, for words that name none of it."""

_ANSWER: Final = r"(?:safety(?: check)?|medical|health|red flag)"
_GAVE: Final = (r"(?:answered|said|put|tapped|pressed|typed|clicked|wrote|gave|ticked|meant|mean|shoulda (?:said|put)|"
                r"should(?:'?ve| have)? (?:said|put|answered|be|been|tapped|pressed))")
_CHANGES: Final = re.compile(
    rf"\b{_GAVE} (?:to |that )?(?:a )?(?:yes|no|nope|none)\b|\b(?:wrong|mistake|incorrect|not (?:true|right)|oops)\b|"
    r"\b(?:change|correct|fix|redo|amend) (?:my |an? |the |that )?|\b(?:was|is|its|it's|be|been|actually|really|in fact|the one \w+ was) "
    r"(?:a )?yes\b|\byes (?:actually|really)\b")
"""Words that put an answer right."""
_TO_NO: Final = re.compile(
    r"\b(?:meant|mean|should(?:'?ve| have)? (?:said|put|answered|be|been)|change (?:it|that|my answer)?.{0,30} to|actually|really|was|is) "
    r"(?:to )?(?:a )?(?:no|nope|none)\b|"
    r"(?<!have )(?<!ve )(?<!should )(?<!shoulda )\b(?:said|put|answered|tapped|pressed|typed) (?:a )?yes\b(?!.*\byes\b)")
"""Words that put it right the other way: what closes is undone by other ways."""
_A_YES: Final = re.compile(r"\byes\b|\b(?:wrong|mistake|incorrect|not (?:true|right))\b|\bno\b")
_QUESTION: Final = r"(?:questions?|ones?|answers?)"
_BEFORE: Final = re.compile(rf"\b(?:the )?(?:{_QUESTION} before|last {_QUESTION}|previous {_QUESTION}|{_QUESTION} just now)\b")
_UNNAMED: Final = re.compile(
    rf"\b{_ANSWER}\b.*\b{_QUESTION}\b|\b{_QUESTION} (?:in|of|on|about|from) (?:the |my )?{_ANSWER}\b|\bin (?:the|my) {_ANSWER}\b")
_SAID_NO: Final = re.compile(r"\b(?:said|put|answered|tapped|pressed|typed|clicked) (?:a )?no\b")
_HURT_MORE: Final = re.compile(
    r"\b(?:said|put|answered|tapped|typed) (?:a )?(?:0|zero|no|none|1|one)\b(?=.*\bpain\b).*\b(?:more like|actually|really|should|but)\b.*"
    r"\b(?:[1-9]|10|worse|more)\b")
PUT_RIGHT_LONGEST: Final = 25
"""Most words of a message that puts an answer right; our choice."""


def puts_right(text: str) -> tuple[Flag, ...] | None:
    """Return the signs to which a message says that the answer was yes: those it names, or by the order of their question;
    () where it names none, but says that an answer was wrong; None for any other message."""
    said = flat(text)
    if len(said.split()) > PUT_RIGHT_LONGEST or not _CHANGES.search(said) or not (_A_YES.search(said) or _UNNAMED.search(said)) or (
            _TO_NO.search(said)):
        return None
    named = tuple(flag for flag, words in ABOUT.items() if re.search(rf"\b(?:{words})\b", said))
    ordered = next((flags for word, flags in _ORDER if re.search(rf"\b{word} {_QUESTION}\b", said)), ())
    if named or ordered:
        return named or ordered
    return () if _UNNAMED.search(said) or _BEFORE.search(said) or _BARE.fullmatch(said.strip(" .!")) else None


def of_the_check(text: str) -> bool:
    """True if a message that names none says of an answer about safety, or of a no, that it was wrong."""
    return bool(_UNNAMED.search(flat(text)) or _SAID_NO.search(flat(text)))


def hurt_more(text: str) -> bool:
    """True if a message says that pain was worse than it was answered: “i said 0 pain but it was more like 5”."""
    said = flat(text)
    return len(said.split()) <= PUT_RIGHT_LONGEST and bool(_HURT_MORE.search(said))


_BARE: Final = re.compile(
    r"(?:(?:i|oh|oops|sorry|wait|no|but|and|it|that|my|answer|answered|said|put|tapped|pressed|typed|should|be|been|have|was|is|its|actually|"
    r"really|meant|to|the|a|yes|instead|not|wrong|mistake|by|i'?ve|should'?ve) ?)+")
"""Words that name nothing: "i said no but should be yes"."""
