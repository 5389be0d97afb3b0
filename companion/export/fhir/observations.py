"""FHIR Observations: one a reading, from the answers of a run.

A reading is an answer in numbers; of the straight-leg raise, the angle from the floor that its answer stands for, since
what a level shows near upright counts from the other axis. Statuses (R5 observation-status):

- preliminary while the run is open, final after it, amended where it was changed after the run had been done;
- cancelled, without a value, where pain ended the run or came with the answer: the screening counts that as not tested. The
  pain score itself stands. What was told stays in the QuestionnaireResponse, which is stopped;
- entered-in-error, without a value, where it was taken back and not given anew.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from companion.conversation.number_kinds import Number, PainScore
from companion.conversation.registry import Book
from companion.export.fhir.codes import SCORE, VITAL, Json, concept, full_url, identifier, measure, quantity, unit_code, urn
from companion.export.fhir.questionnaire import response_url
from companion.export.questions import Pass, Question, Questions, corrected, in_words
from companion.export.table import number
from companion.record.log import Row
from companion.record.timestamps import text_of
from companion.screening.geometry import Lean, leg_raise_from_heel, leg_raise_from_level
from companion.screening.readings import EYE_BANDS, EYE_TOP

RAISE: Final = {"system": urn("measure"), "code": "leg_raise.angle", "display": "Straight-leg raise, degrees from the floor"}
RAISED_BY: Final = ("level", "heel", "eye")
ABSENT: Final = "http://terminology.hl7.org/CodeSystem/data-absent-reason"
CATEGORY: Final = "http://terminology.hl7.org/CodeSystem/observation-category"
"""The vital signs profiles want this category (read, hl7.org); its system from memory."""


def observations_of(one: Pass, book: Book, questions: Questions, whose: str, patient: Json) -> list[tuple[str, Json]]:
    """The readings of a run, each with its address in the bundle. ``patient`` is the reference to whose they are."""
    compiled, changed = book.flows.get(one.flow), corrected(one, book, questions)
    title = compiled.flow.title if compiled else in_words(one.flow)
    asked, found = questions.get(one.flow, {}), []
    for key, row in one.latest.items():
        status = _status(one, row, asked.get(key), key in changed) if _is_reading(one, key, asked.get(key)) else ""
        if status:
            url = full_url(whose, "reading", one.flow, one.run, key)
            code = RAISE if _raise_part(one, key) else measure(one.flow, title, key, row.side, asked.get(key))
            found.append((url, _observation(one, row, status, code, url, whose, patient)))
    return found


def _is_reading(one: Pass, key: str, asked: Question | None) -> bool:
    if part := _raise_part(one, key):
        return bool(one.standing.get("method")) and one.standing["method"].value == part
    return bool(asked and isinstance(asked.ask.kind, Number | PainScore)) or any(
        row.key == key and row.value is not None and not isinstance(row.value, str) for row in one.rows)


def _raise_part(one: Pass, key: str) -> str:
    """Return the way of reading the leg raise that a key belongs to; "" for any other question."""
    part = key.partition("_")[2].partition("_")[0]
    return part if one.flow == "leg_raise" and part in RAISED_BY else ""


def _status(one: Pass, row: Row, asked: Question | None, changed: bool) -> str:
    """The status of one reading by its latest row; "" where there never was one."""
    scored = not (asked and isinstance(asked.ask.kind, PainScore))
    if row.status == "in_pain" or (row.status == "ok" and one.ending == "pain" and scored):
        return "cancelled"
    if row.status == "ok" and row.value is not None:
        return "preliminary" if one.ending is None else "amended" if changed else "final"
    return "entered-in-error" if any(other.key == row.key and other.status == "ok" for other in one.rows) else ""


def _observation(one: Pass, row: Row, status: str, code: Json, url: str, whose: str, patient: Json) -> Json:
    seen: Json = {"resourceType": "Observation", "identifier": [identifier(url)], "status": status}
    if code in VITAL.values():
        seen["category"] = [{"coding": [{"system": CATEGORY, "code": "vital-signs", "display": "Vital Signs"}]}]
    seen |= {"code": {"coding": [code], "text": code["display"]}, "subject": patient, "effectiveDateTime": text_of(row.at),
             "performer": [patient], "derivedFrom": [{"reference": response_url(whose, one)}]}
    if status == "cancelled":
        seen["dataAbsentReason"] = _absent("not-performed", "Not Performed", "Something hurt: stopped, and not scored.")
    elif status != "entered-in-error":
        seen |= _value(one, row, code)
    if row.side:
        seen["bodySite"] = concept("side", row.side)
    if row.method:
        seen["method"] = concept("method", row.method)
    if row.placement:
        seen["component"] = [{"code": concept("measure", "placement", "where the instrument lay"),
                              "valueCodeableConcept": concept("placement", row.placement)}]
    return seen


def _absent(code: str, display: str, why: str) -> Json:
    return {"coding": [{"system": ABSENT, "code": code, "display": display}], "text": why}


def _value(one: Pass, row: Row, code: Json) -> Json:
    """The value of a standing reading, or why it has none."""
    if code is RAISE:
        value = _raised(row, {key: said.value for key, said in one.standing.items()})
    elif row.value is None or isinstance(row.value, str) or number(row.value) is None:
        value = None
    else:
        pain = code["code"] == "72514-3"
        value = {"valueQuantity": quantity(row.value, SCORE if pain else unit_code(row.unit), row.unit)}
    return value or {"dataAbsentReason": _absent("unknown", "Unknown", "The answer gives no value.")}


def _raised(row: Row, said: Mapping[str, float | str | None]) -> Json | None:
    """The angle of a straight-leg raise in degrees from the floor, a band where it was read by eye; None where none can be
    told (a level that may be near flat or near upright, a heel above 75 degrees, no leg length)."""
    part, value, leg = row.key.split("_")[1], row.value, said.get("leg_length")
    if part == "eye":
        low, high = EYE_BANDS.get(str(value), (0.0, EYE_TOP))
        edges = {"low": low} if low > 0 else {}
        edges |= {"high": high} if high < EYE_TOP else {}
        return {"valueRange": {edge: quantity(at, "deg", "deg") for edge, at in edges.items()}} if edges else None
    if value is None or isinstance(value, str) or number(value) is None:
        return None
    lean = said.get(f"{row.side}_lean")
    try:
        if part == "level":
            angle = leg_raise_from_level(value, _leaning(lean))
        else:
            angle = leg_raise_from_heel(value, 0.0 if leg is None or isinstance(leg, str) else leg)
    except ValueError:
        return None
    return {"valueQuantity": quantity(round(angle, 1), "deg", "deg")}


def _leaning(said: float | str | None) -> Lean | None:
    match said:
        case "short" | "past" | "flat":
            return said
        case _:
            return None
