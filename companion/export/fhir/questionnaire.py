"""FHIR Questionnaires, one per version of a flow, and QuestionnaireResponses, one per run.

Item types follow the kinds of question. Where an answer does not fit its question (from another version, or of a question that no
longer exists), the item is a text: no current answer is left out, and every linkId and type is valid.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from companion.conversation.kinds import Kind, Media, YesNo, Zone
from companion.conversation.kinds import Words as WordsKind
from companion.conversation.number_kinds import Number, PainScore
from companion.conversation.registry import Book
from companion.export.fhir.codes import Json, full_url, identifier, measure, quantity, unit_code, urn, words
from companion.export.questions import Question, Questions, RunAnswers, corrected, ended_early, in_words, stem_of
from companion.export.table import number
from companion.record.log import LogRow
from companion.record.timestamps import text_of


@dataclass(frozen=True, slots=True)
class Form:
    """A Questionnaire, with its items' types and questions by linkId."""

    resource: Json
    types: dict[str, str]
    asked: dict[str, Question]

    @property
    def canonical(self) -> str:
        """The canonical URL by which a response refers to it."""
        return f"{self.resource['url']}|{self.resource['version']}"


def form_of(flow: str, version: int, passes: Sequence[RunAnswers], book: Book, questions: Questions) -> Form:
    """Return the Questionnaire of one version of a flow, for these runs.

    The current version lists every question of the flow. For another, only the questions that were answered are known, without
    their wording; it is "retired".
    """
    compiled, asked = book.flows.get(flow), dict(questions.get(flow, {}))
    present = compiled is not None and compiled.flow.version == version
    rows: dict[str, list[LogRow]] = {key: [] for key in asked} if present else {}
    for one in passes:
        for row in one.latest.values():
            rows.setdefault(row.key, []).append(row)
    title = compiled.flow.title if compiled else in_words(flow)
    types = {key: _fitting(asked.get(key), taken) for key, taken in rows.items()}
    resource: Json = {
        "resourceType": "Questionnaire", "url": urn("flow", flow), "version": str(version),
        "name": "".join(part[:1].upper() + part[1:] for part in flow.split("_")), "title": words(title),
        "status": "active" if present else "retired", "subjectType": ["Patient"],
        "item": [_item(flow, title, key, types[key], asked.get(key), taken, present) for key, taken in rows.items()]}
    if not present:
        resource["description"] = "An earlier version, put together from the answers: its wording is no longer at hand."
    return Form(resource, types, asked)


def _item(flow: str, title: str, key: str, type_: str, asked: Question | None, rows: Sequence[LogRow], present: bool) -> Json:
    side = asked.ask.side if asked else rows[0].side if rows else ""
    item: Json = {"linkId": key, "text": words(asked.text if asked and present else in_words(key)), "type": type_}
    if type_ in ("integer", "decimal", "quantity"):
        item["code"] = [measure(flow, title, key, side, asked)]
    if type_ == "coding" and asked:
        item["answerOption"] = [{"valueCoding": _option(flow, asked, option.value)} for option in asked.ask.kind.options]
    return item


def _option(flow: str, asked: Question, value: str) -> Json:
    label = next(option.label for option in asked.ask.kind.options if option.value == value)
    return {"system": urn("answer", flow, stem_of(asked.key, asked.ask.side)), "code": value, "display": words(label)}


def _type_of(kind: Kind) -> str:
    """Return the item type of a kind of question (R5 item-type). A photo is a string, not an attachment: the channel's own reference,
    which works only there."""
    match kind:
        case PainScore():
            return "integer"
        case Number():
            return "quantity" if kind.unit else "decimal"
        case WordsKind():
            return "text"
        case Zone() | Media():
            return "string"
        case YesNo(unsure=False):
            return "boolean"
        case _:
            return "coding" if kind.options else "string"


def _fitting(asked: Question | None, rows: Sequence[LogRow]) -> str:
    """Return the item's type if all its current answers fit it, else "string"."""
    standing = [row for row in rows if row.status == "ok" and row.value is not None]
    wanted = _type_of(asked.ask.kind) if asked else "quantity" if standing else "string"
    return wanted if all(_value("", wanted, row, asked) for row in standing) else "string"


def _value(flow: str, type_: str, row: LogRow, asked: Question | None) -> Json | None:
    """Return a current answer as a value of the item's type; None if it does not fit."""
    value = row.value
    if isinstance(value, str):
        if type_ in ("string", "text"):
            return {"valueString": words(value)}
        if type_ == "boolean" and value in ("yes", "no"):
            return {"valueBoolean": value == "yes"}
        if type_ == "coding" and asked and any(option.value == value for option in asked.ask.kind.options):
            return {"valueCoding": _option(flow, asked, value)}
        return None
    written = None if value is None else number(value)
    if type_ in ("string", "text"):
        return {"valueString": str(value if written is None else written)}
    if written is None:
        return None
    if type_ == "integer":
        return {"valueInteger": written} if isinstance(written, int) and abs(written) < 2**31 else None
    if type_ == "decimal":
        return {"valueDecimal": written}
    return {"valueQuantity": quantity(written, unit_code(row.unit), row.unit)} if type_ == "quantity" else None


def status_of(one: RunAnswers, book: Book, questions: Questions) -> str:
    """Return the status of a run (R5 questionnaire-answers-status).

    in-progress: open; completed: finished; amended: an answer was changed after that; stopped: abandoned, ended by pain, by the
    safety check or early, or without answers.
    """
    if one.ending is None:
        return "in-progress"
    if one.ending != "done" or ended_early(one, book, questions):
        return "stopped"
    return "amended" if corrected(one, book, questions) else "completed"


def response_url(whose: str, one: RunAnswers) -> str:
    """Return the fullUrl of a run's response."""
    return full_url(whose, "run", one.flow, one.run)


def response_of(one: RunAnswers, form: Form, whose: str, patient: Json, status: str) -> Json:
    """Return the QuestionnaireResponse of a run: its current answers in the order of the form, without those skipped, taken back or
    given in pain. ``patient``: the reference to the person."""
    standing, items = one.standing, []
    texts = {item["linkId"]: item["text"] for item in form.resource["item"]}
    for key, type_ in form.types.items():
        if key in standing and (answer := _value(one.flow, type_, standing[key], form.asked.get(key))):
            items.append({"linkId": key, "text": texts[key], "answer": [answer]})
    return {"resourceType": "QuestionnaireResponse", "identifier": [identifier(response_url(whose, one))],
            "questionnaire": form.canonical, "status": status, "subject": patient, "authored": text_of(one.rows[-1].at),
            "source": patient, **({"item": items} if items else {})}


