"""A person's answers as one FHIR R5 bundle (HL7): questions, answers and readings.

The person is a pseudonym, the same at every export. The answers themselves are complete, so the file is personal data.
"""

from __future__ import annotations

import json
from collections.abc import Iterable

from companion.conversation.registry import Book
from companion.export.fhir.codes import Json, full_url, identifier
from companion.export.fhir.findings import Concluded, conclusions_of
from companion.export.fhir.observations import observations_of
from companion.export.fhir.questionnaire import form_of, response_of, response_url, status_of
from companion.export.questions import RunAnswers, planned_loads, questions_in, runs_in
from companion.record.log import LogRow
from companion.record.timestamps import text_of


def bundle_of(person: int, rows: Iterable[LogRow], book: Book, found: Iterable[Concluded] = ()) -> Json:
    """Return a collection of the Patient, a Questionnaire per flow and version, a QuestionnaireResponse per run and an Observation
    per reading and conclusion. ``rows``: the person's whole log; ``found``: what was concluded and done. The same log gives
    the same bundle; later answers keep the fullUrl of earlier resources."""
    log = list(rows)
    passes, questions, planned = runs_in(log), questions_in(book), planned_loads(log)
    whose = f"{person} {text_of(passes[0].rows[0].at)}" if passes else str(person)  # the number alone is 1 in every new database
    who = full_url(whose)
    patient = {"reference": who}
    by_form: dict[tuple[str, int], list[RunAnswers]] = {}
    for one in passes:
        by_form.setdefault((one.flow, one.version), []).append(one)
    forms = {key: form_of(*key, taken, book, questions) for key, taken in by_form.items()}
    entries: list[tuple[str, Json]] = [
        (who, {"resourceType": "Patient", "identifier": [identifier(who)]}),
        *((full_url("flow", flow, str(version)), form.resource) for (flow, version), form in forms.items()),
        *((response_url(whose, one), response_of(one, forms[one.flow, one.version], whose, patient,
                                                 status_of(one, book, questions))) for one in passes),
        *(reading for one in passes for reading in observations_of(one, book, questions, whose, patient, planned)),
        *conclusions_of(found, whose, patient)]
    return {"resourceType": "Bundle", "type": "collection",
            "entry": [{"fullUrl": url, "resource": resource} for url, resource in entries]}


def as_fhir(person: int, rows: Iterable[LogRow], book: Book, found: Iterable[Concluded] = ()) -> str:
    """Return the bundle as JSON text, to write as UTF-8."""
    return json.dumps(bundle_of(person, rows, book, found), ensure_ascii=False, allow_nan=False, indent=1) + "\n"
