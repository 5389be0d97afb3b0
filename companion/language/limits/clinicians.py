"""Clinicians as words name them: who said so, and who is to clear somebody first."""

from __future__ import annotations

import re
from typing import Final

from companion.language.limits.spelling import well_spelt

CLINICIANS: Final = (
    ("a physiotherapist", r"physio\w*|pt\b|physical therapist"), ("a surgeon", r"surgeon\w*|orthop\w+"),
    ("a midwife", r"midwife|midwives"),
    ("a doctor", r"doctors?\b|doc\b|gp\b|dr\b\.?(?: \w+)?|physician|consultant|cardiologist|neurologist|rheumatologist|specialist|gyn\w+|"
                 r"obgyn|medic\b"),
    ("a hospital", r"hospital|clinic\b"), ("a nurse", r"nurse"), ("a chiropractor", r"chiro\w*"), ("an osteopath", r"osteopath\w*"))
A_CLINICIAN: Final = "|".join(pattern for _, pattern in CLINICIANS)
"""Any of them, as a pattern."""
UNTIL_CLEARED: Final = re.compile(
    r"\b(?:until|till?|untill|unless|before) (?:i'm |i am |i |he |she |they |the |my |next |a |an |it |im )*(?:doctor|gp|physio\w*|surgeon|"
    r"clinician|consultant|scan|mri|review|check ?-?up|appointment|follow ?-?up|further notice|clear\w*|told otherwise|"
    r"say\w* (?:so|otherwise|ok)|heals?|healed|better|sees?|seen)"
    r"(?: (?:clears?|cleared|me|says?|ok|so|otherwise|it's|its|it is|fine|again))*|for now|indefinitely|for good|permanently|forever|"
    r"for life|no end date")
"""Words for an end that comes once somebody is cleared, or for none."""


def clinicians_in(text: str) -> list[str]:
    """Return the kinds of clinician that words name, such as "a surgeon"."""
    return [name for name, pattern in CLINICIANS if re.search(rf"\b(?:{pattern})(?!\w)", well_spelt(text))]


def who_said(line: str) -> tuple[str, str]:
    """Return the kind of clinician that a line names, and the line without it; of several the one who is not only to clear them, and ""
    where that leaves more than one."""
    named = clinicians_in(UNTIL_CLEARED.sub(" ", line)) or clinicians_in(line)
    for _, pattern in CLINICIANS:
        line = re.sub(rf"\b(?:my |the |a |our )?(?:{pattern})(?:'s|s')?(?!\w)", " ", line)
    return named[0] if len(named) == 1 else "", re.sub(" +", " ", line)
