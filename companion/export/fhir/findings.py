"""FHIR Observations of what was concluded, done and told to coaches: safety levels, rulings, limits, alerts, orders, and the words of a
coach's pages.

Each is an assessment of this project's own making, with its grounds as a note and its rule as the method; none is a clinician's.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final, NamedTuple

from companion.export.fhir.codes import Json, concept, full_url, identifier, words
from companion.export.questions import in_words
from companion.screening.readings import STANDING_WORDS
from companion.screening.sources import SOURCES

EXPORTED: Final = re.compile(
    r"safety\.level|length|strength|control|overall|overruled\..+|depth\.(?:keep|step|pin)|load\.(?:limit|raised|pin|told|over)|"
    r"setup\.(?:change|pin)|drill(?:\.pin)?|retest\.(?:change|pin)|alert|act\..+|seen\..+")
"""Names of what is told; the rest of the findings are steps on the way."""
WEIGHED: Final = ("length", "strength", "control", "overall")
"""Names of those that rest on the weights of the evidence table."""


class Concluded(NamedTuple):
    """One thing concluded or done: its own number among those of its name, the value, the rule or person it came from, the grounds, and
    the moment as stored."""

    number: int
    name: str
    value: str
    rule: str
    because: str
    at: str


def conclusions_of(found: Iterable[Concluded], whose: str, patient: Json) -> list[tuple[str, Json]]:
    """Return (fullUrl, Observation) of each; one that was taken back again has no value but says so."""
    told = []
    for one in found:
        if not EXPORTED.fullmatch(one.name):
            continue
        url = full_url(whose, "concluded", one.name, str(one.number))
        seen: Json = {"resourceType": "Observation", "identifier": [identifier(url)], "status": "final",
                      "code": concept("finding", one.name, in_words(one.name)), "subject": patient, "effectiveDateTime": one.at,
                      "valueString": words(in_words(one.value)) if one.value else "no longer"}
        if one.rule:
            seen["method"] = {"text": words(one.rule)}
        notes = [one.because] if one.because else []
        if one.name in WEIGHED:
            notes.append(f"Weights of the evidence: {STANDING_WORDS[SOURCES['evidence_weights'].standing]}.")
        if notes:
            seen["note"] = [{"text": words(note)} for note in notes]
        told.append((url, seen))
    return told
