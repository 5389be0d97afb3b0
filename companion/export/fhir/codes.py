"""Identifiers, code systems and quantities of the FHIR export.

LOINC and UCUM where there is a code. No LOINC code was found for these joint measures in degrees or centimetres,
so they have a code system of this project. Its names begin with "urn:squat-companion", which is not
registered (RFC 8141), as the project has no domain (choice).
"""

from __future__ import annotations

from typing import Any, Final
from uuid import NAMESPACE_URL, uuid5

from companion.conversation.number_kinds import PainScore
from companion.export.questions import Question, in_words, stem_of
from companion.export.table import number, plain

Json = dict[str, Any]

OURS: Final = "urn:squat-companion"
LOINC: Final = "http://loinc.org"
UCUM: Final = "http://unitsofmeasure.org"

PAIN: Final = {"system": LOINC, "code": "72514-3", "display": "Pain severity - 0-10 verbal numeric rating [Score] - Reported"}
"""LOINC 72514-3 (read); the display second-hand."""
VITAL: Final = {
    "about_you.height": {"system": LOINC, "code": "8302-2", "display": "Body height"},
    "about_you.mass": {"system": LOINC, "code": "29463-7", "display": "Body weight"},
}
"""The vital signs among the answers: the codes that HL7's profiles bodyheight and bodyweight fix (read)."""

_UCUM: Final = {"cm": "cm", "kg": "kg", "deg": "deg", "s": "s", "years": "a", "": "1"}
"""UCUM codes by stored unit (units.py). deg, cm, s, kg: HL7 FHIR (read); a, 1 and {score} from memory, parsed by ucumvert in the
test."""
SCORE: Final = "{score}"


def urn(*parts: str) -> str:
    """Return a URN of this project."""
    return ":".join((OURS, *parts))


def full_url(*parts: str) -> str:
    """Return the fullUrl of a resource: the same parts always give the same urn:uuid."""
    return uuid5(NAMESPACE_URL, urn(*map(plain, parts))).urn


def identifier(url: str) -> Json:
    """Return the identifier by which a receiver recognises a resource that is sent again."""
    return {"system": "urn:ietf:rfc:3986", "value": url}


def words(text: str) -> str:
    """Return a text valid in FHIR: not empty, no control characters, single spaces."""
    return " ".join(plain(text).split()) or "\ufffd"


def concept(system: str, code: str, display: str = "") -> Json:
    """Return a CodeableConcept of this project's code system."""
    said = words(display or in_words(code))
    return {"coding": [{"system": urn(system), "code": words(code), "display": said}], "text": said}


def unit_code(unit: str) -> str:
    """Return the UCUM code of a stored unit; an annotation where UCUM has none."""
    return _UCUM.get(unit, f"{{{unit}}}")


def quantity(value: float, code: str, shown: str = "") -> Json:
    """Return a Quantity of a finite value with its UCUM code; ``shown``: the unit as people write it."""
    return {"value": number(value), **({"unit": shown} if shown else {}), "system": UCUM, "code": code}


def measure(flow: str, title: str, key: str, side: str, asked: Question | None) -> Json:
    """Return the Coding of a measure: LOINC where there is one, else our own, one for all sides and repeats."""
    if asked and isinstance(asked.ask.kind, PainScore):
        return dict(PAIN)
    stem = stem_of(key, side)
    name = f"{flow}.{stem}" if stem else flow
    return dict(VITAL.get(name) or {"system": urn("measure"), "code": name, "display": f"{title}: {in_words(stem)}" if stem else title})
