"""FHIR Observations: one per reading, from the answers of a run.

A reading is a numeric answer; for the straight-leg raise it is the angle from the floor, derived from the answer, since a phone's
level counts from the other axis near upright. Statuses (R5 observation-status):

- preliminary while the run is open, final after it, amended if changed after the run had ended;
- cancelled, without a value, if pain ended the run or came with the answer: the screening counts that as not tested. The pain
  score itself keeps its value. The answers remain in the QuestionnaireResponse, which is stopped;
- entered-in-error, without a value, if taken back and not given again.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from companion.conversation.number_kinds import Number, PainScore
from companion.conversation.registry import Book
from companion.export.fhir.codes import PAIN, SCORE, VITAL, Json, concept, full_url, identifier, measure, quantity, unit_code, urn, words
from companion.export.fhir.questionnaire import response_url
from companion.export.questions import Question, Questions, RunAnswers, corrected, in_words
from companion.export.table import number
from companion.record.log import LogRow
from companion.record.timestamps import text_of
from companion.screening.protocol import Derived
from companion.screening.protocols import protocols

ABSENT: Final = "http://terminology.hl7.org/CodeSystem/data-absent-reason"
CATEGORY: Final = "http://terminology.hl7.org/CodeSystem/observation-category"
"""System of the category that the vital signs profiles require (read, hl7.org; the system from memory)."""


def observations_of(one: RunAnswers, book: Book, questions: Questions, whose: str, patient: Json,
                    planned: Mapping[int, float]) -> list[tuple[str, Json]]:
    """Return (fullUrl, Observation) of each reading of a run. ``whose``: the person's pseudonym; ``patient``: the reference to them;
    ``planned``: the loads that "as planned" stands for, by row."""
    compiled, changed = book.flows.get(one.flow), corrected(one, book, questions)
    title = compiled.flow.title if compiled else in_words(one.flow)
    asked, found = questions.get(one.flow, {}), []
    for key, row in one.latest.items():
        status = _status(one, row, asked.get(key), key in changed) if _is_reading(one, key, asked.get(key)) else ""
        if status:
            url = full_url(whose, "reading", one.flow, one.run, key)
            stands = _stands_for(one, key)
            code = _coded(stands) if stands else measure(one.flow, title, key, row.side, asked.get(key))
            sent = row._replace(value=planned[row.id], unit="kg") if row.id in planned else row
            seen = _observation(one, sent, status, code, url, whose, patient)
            if row.id in planned and "valueQuantity" in seen:
                seen["note"] = [{"text": "told as: as planned"}]
            if code == PAIN and (site := _site(one, asked)):
                seen["bodySite"] = {"text": site}
            found.append((url, seen))
    return found


def _site(one: RunAnswers, asked: Mapping[str, Question]) -> str:
    """Return where it hurts, as the question names it: no code system of body sites is free for everybody, so it is text."""
    said = one.standing.get("where")
    options = {option.value: option.label for option in asked["where"].ask.kind.options} if "where" in asked else {}
    return words(options.get(str(said.value), str(said.value))) if said and said.value and said.status == "ok" else ""


def _is_reading(one: RunAnswers, key: str, asked: Question | None) -> bool:
    if stands := _stands_for(one, key):
        return bool(one.standing.get("method")) and one.standing["method"].value == stands.way(key)
    return bool(asked and isinstance(asked.ask.kind, Number | PainScore)) or any(
        row.key == key and row.value is not None and not isinstance(row.value, str) for row in one.rows)


def _stands_for(one: RunAnswers, key: str) -> Derived | None:
    """Return the derived measure of an answer that is not itself the measure, as in the straight-leg raise; else None."""
    test = protocols().get(one.flow)
    return test.derived if test and test.derived and test.derived.way(key) else None


def _coded(stands: Derived) -> Json:
    return {"system": urn("measure"), "code": stands.code, "display": stands.display}


def _status(one: RunAnswers, row: LogRow, asked: Question | None, changed: bool) -> str:
    """Return the status of a reading by its latest row; "" if it never had a value."""
    scored = not (asked and isinstance(asked.ask.kind, PainScore))
    if row.status == "in_pain" or (row.status == "ok" and one.ending == "pain" and scored):
        return "cancelled"
    if row.status == "ok" and row.value is not None:
        return "preliminary" if one.ending is None else "amended" if changed else "final"
    return "entered-in-error" if any(other.key == row.key and other.status == "ok" for other in one.rows) else ""


def _observation(one: RunAnswers, row: LogRow, status: str, code: Json, url: str, whose: str, patient: Json) -> Json:
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


def _value(one: RunAnswers, row: LogRow, code: Json) -> Json:
    """Return the value element of a current reading, or the reason it has none."""
    if stands := _stands_for(one, row.key):
        value = _derived(stands, row, {key: said.value for key, said in one.standing.items()})
    elif row.value is None or isinstance(row.value, str) or number(row.value) is None:
        value = None
    else:
        pain = code["code"] == "72514-3"
        value = {"valueQuantity": quantity(row.value, SCORE if pain else unit_code(row.unit), row.unit)}
    return value or {"dataAbsentReason": _absent("unknown", "Unknown", "The answer gives no value.")}


def _derived(stands: Derived, row: LogRow, said: Mapping[str, float | str | None]) -> Json | None:
    """Return the derived value of an answer, a range if it was read by eye; None if there is none."""
    unit, sent = stands.unit, row.value
    if sent is not None and not isinstance(sent, str) and number(sent) is None:
        return None
    value = stands.value(row.key, row.side, sent, said)
    if isinstance(value, tuple):
        edges = {edge: quantity(at, unit, unit) for edge, at in zip(("low", "high"), value, strict=True) if at is not None}
        return {"valueRange": edges} if edges else None
    return None if value is None else {"valueQuantity": quantity(round(value, 1), unit, unit)}
