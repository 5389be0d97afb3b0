"""The answers as a FHIR R5 bundle, held against fhir.resources (R5), the standard's value sets and a UCUM parser."""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import timedelta
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings

from companion.export.fhir.bundle import as_fhir, bundle_of
from companion.export.fhir.findings import Concluded
from companion.record import coaching, log
from flows.catalogue import BOOK
from tests.app.test_service import CHECK, WARM, Life, settled
from tests.coach.caseload_rows import ago, record
from tests.coach.rows import QUESTIONS, log_of, logs, row
from tests.table import each_row

# The standard's value sets (hl7.org/fhir/R5). fhir.resources takes any string for a code, so they are held against here.
# Read in the fields of fhir.resources 8.3 (R5 5.0.0): bundle-type, publication-status, questionnaire-answers-status.
# observation-status: read (R4, normative; R5 adds to it, from memory, what is not used here). data-absent-reason: read
# (tx.hl7europe.eu, R5). item-type: read (hl7.fhir.r5.core), but "coding", which took the place of "choice", from memory.
# observation-category, resource names: from memory.
VALUE_SETS = {
    ("Bundle", "type"): {"document", "message", "transaction", "transaction-response", "batch", "batch-response", "history",
                         "searchset", "collection", "subscription-notification"},
    ("Questionnaire", "status"): {"draft", "active", "retired", "unknown"},
    ("Questionnaire", "subjectType"): {"Patient"},
    ("Questionnaire", "item.type"): {"group", "display", "boolean", "decimal", "integer", "date", "dateTime", "time", "string",
                                     "text", "url", "coding", "attachment", "reference", "quantity"},
    ("QuestionnaireResponse", "status"): {"in-progress", "completed", "amended", "entered-in-error", "stopped"},
    ("Observation", "status"): {"registered", "preliminary", "final", "amended", "corrected", "cancelled", "entered-in-error",
                                "unknown"},
}
CODE_SYSTEMS = {
    "http://terminology.hl7.org/CodeSystem/data-absent-reason": {
        "unknown", "asked-unknown", "temp-unknown", "not-asked", "asked-declined", "masked", "not-applicable", "unsupported",
        "as-text", "error", "not-a-number", "negative-infinity", "positive-infinity", "not-performed", "not-permitted"},
    "http://terminology.hl7.org/CodeSystem/observation-category": {
        "social-history", "vital-signs", "imaging", "laboratory", "procedure", "survey", "exam", "therapy", "activity"},
    "http://loinc.org": {"72514-3", "8302-2", "29463-7"},
}
ANSWER_TYPES = {"boolean": "valueBoolean", "integer": "valueInteger", "decimal": "valueDecimal", "quantity": "valueQuantity",
                "coding": "valueCoding", "string": "valueString", "text": "valueString"}


@cache
def ucum() -> Any:
    """The parser, made when it is first wanted: every process reads this file, one runs it."""
    import ucumvert

    return ucumvert.get_ucum_parser()


def read(text: str) -> Any:
    """The bundle as fhir.resources reads it."""
    from fhir.resources.bundle import Bundle

    return Bundle.model_validate_json(text)


def of(bundle: dict[str, Any], kind: str) -> list[dict[str, Any]]:
    """The resources of one kind."""
    return [entry["resource"] for entry in bundle["entry"] if entry["resource"]["resourceType"] == kind]


def parts(thing: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every element with its path, list positions left out."""
    yield path, thing
    if isinstance(thing, dict):
        for name, part in thing.items():
            yield from parts(part, f"{path}.{name}".lstrip("."))
    elif isinstance(thing, list):
        for part in thing:
            yield from parts(part, path)


def hold(bundle: dict[str, Any]) -> None:
    """All that has to hold of a bundle, whatever is in it."""
    text = json.dumps(bundle, allow_nan=False)
    read(text)
    json.dumps(bundle, ensure_ascii=False).encode("utf-8")
    urls = [entry["fullUrl"] for entry in bundle["entry"]]
    assert len(urls) == len(set(urls))
    for resource in (bundle, *(entry["resource"] for entry in bundle["entry"])):
        for path, part in parts({name: part for name, part in resource.items() if name != "entry"}):
            holds_of_part(resource["resourceType"], path, part)
            if path.endswith("reference") and isinstance(part, str):
                assert part in urls
    for seen in of(bundle, "Observation"):
        assert not ("dataAbsentReason" in seen and {"valueQuantity", "valueRange"} & seen.keys())
        assert seen["status"] not in ("cancelled", "entered-in-error") or not {"valueQuantity", "valueRange"} & seen.keys()
    link_ids_resolve(bundle)


def holds_of_part(kind: str, path: str, part: Any) -> None:
    if (kind, path) in VALUE_SETS and isinstance(part, str):
        assert part in VALUE_SETS[kind, path], path
    assert part not in ("", [], {}), f"{kind}.{path} is empty"
    if isinstance(part, str):
        assert part.strip()
        assert not [one for one in part if ord(one) < 32 or 0x7F <= ord(one) < 0xA0 or one in "\u202e\u200f\u2066"]
    if isinstance(part, dict) and part.get("system") == "http://unitsofmeasure.org":
        ucum().parse(part["code"])
        assert isinstance(part["value"], int | float)
    elif isinstance(part, dict) and "code" in part and "system" in part:
        known = CODE_SYSTEMS.get(part["system"])
        assert known is None or part["code"] in known
        assert known or part["system"].startswith("urn:squat-companion:")


def link_ids_resolve(bundle: dict[str, Any]) -> None:
    """Every response names a questionnaire that is there, every answer a question of it, of that question's type."""
    forms = {f"{form['url']}|{form['version']}": form for form in of(bundle, "Questionnaire")}
    responses = of(bundle, "QuestionnaireResponse")
    assert {one["questionnaire"] for one in responses} == forms.keys()
    for form in forms.values():
        ids = [item["linkId"] for item in form["item"]]
        assert len(ids) == len(set(ids)) > 0
    for one in responses:
        items = {item["linkId"]: item for item in forms[one["questionnaire"]]["item"]}
        for item in one.get("item", []):
            there, (answer,) = items[item["linkId"]], item["answer"]
            assert list(answer) == [ANSWER_TYPES[there["type"]]]
            assert item["text"] == there["text"]
            if there["type"] == "coding":
                assert {"valueCoding": answer["valueCoding"]} in there["answerOption"]


def response(*rows: log.LogRow) -> dict[str, Any]:
    """The one response of rows of one run."""
    bundle = bundle_of(1, log_of(*rows), BOOK)
    hold(bundle)
    (one,) = of(bundle, "QuestionnaireResponse")
    return one


def readings(*rows: log.LogRow) -> list[dict[str, Any]]:
    """The readings among rows."""
    bundle = bundle_of(1, log_of(*rows), BOOK)
    hold(bundle)
    return of(bundle, "Observation")


def answers(one: dict[str, Any]) -> dict[str, Any]:
    """What a response says, by linkId."""
    return {item["linkId"]: next(iter(item["answer"][0].values())) for item in one.get("item", [])}


NOW = str(BOOK["knee_to_wall"].flow.version)
LAST = row("right_limit", "calf")


@given(logs())
@settings(max_examples=60, deadline=None)
def test_whatever_is_in_the_log_the_bundle_is_valid(rows):
    hold(bundle_of(1, rows, BOOK))


TAKEN_BACK = row("right_limit", None, status="withdrawn")
SQUATTED = row("squatted", "ready", flow="squat_day")  # where it leads hangs on the day's safety check too


@each_row(("ending", "rows", "status"), [
    (None, (row(),), "in-progress"),
    (None, (LAST, TAKEN_BACK), "in-progress"),
    ("done", (row(), LAST), "completed"),
    ("done", (row(), row(value=None, status="withdrawn"), row(value=12.0), LAST), "completed"),
    ("done", (row(), LAST, TAKEN_BACK, row("right_limit", "pinch")), "amended"),
    ("left", (row(),), "stopped"),
    ("left", (row(), LAST, TAKEN_BACK), "stopped"),
    ("pain", (row(), LAST), "stopped"),
    ("closed", (row(),), "stopped"),
    ("no such ending", (row(), LAST), "stopped"),
    ("done", (row("method", None, status="skipped"),), "stopped"),
    ("done", (row("right_limit", None, status="skipped"),), "stopped"),
    ("done", (SQUATTED, SQUATTED._replace(value=None, status="withdrawn"), SQUATTED, row("load", 80.0, flow="squat_day")), "completed"),
    ("done", (row("method", "none"),), "stopped"),
])
def test_a_response_has_the_status_of_its_run(ending, rows, status):
    assert response(*(one._replace(ending=ending) for one in rows))["status"] == status


def test_a_response_has_what_stands_and_nothing_else():
    one = response(row("method", "tape"), row("left_1", 11.5, unit="cm"), row("left_2", None, status="skipped"),
                   row("left_1", None, status="withdrawn"), row("left_1", 12.0, unit="cm"), row("left_limit", "pinch", status="in_pain"),
                   row("right_1", 10.0, unit="cm"), row("right_1", None, status="withdrawn"))
    assert answers(one) == {
        "method": {"system": "urn:squat-companion:answer:knee_to_wall:method", "code": "tape", "display": "Tape"},
        "left_1": {"value": 12, "unit": "cm", "system": "http://unitsofmeasure.org", "code": "cm"}}


def test_each_kind_of_question_has_its_type():
    one = response(row("bladder", "no", flow="safety_check"), row("pain", 3.0, flow="safety_check"),
                   row("cleared_at", "my physio,\tin May", flow="safety_check"))
    said = answers(one)
    assert (said["bladder"]["code"], said["pain"], said["cleared_at"]) == ("no", 3, "my physio, in May")
    assert answers(response(row("tape", "yes", flow="about_you"))) == {"tape": True}
    assert answers(response(row("zone", "Europe/Berlin", flow="welcome"))) == {"zone": "Europe/Berlin"}
    assert answers(response(row("felt", 4.0, flow="squat_after"))) == {"felt": 4}


def test_a_questionnaire_has_every_question_of_its_flow():
    for flow, asked in QUESTIONS.items():
        bundle = bundle_of(1, [row(key, "x", flow=flow, status="skipped") for key in list(asked)[:1]], BOOK)
        for form in of(bundle, "Questionnaire"):
            assert [item["linkId"] for item in form["item"]] == list(asked)
            assert (form["version"], form["status"]) == (str(BOOK[flow].flow.version), "active")
            assert not any("{" in item["text"] for item in form["item"])
            assert any(map(str.isalpha, "".join(item["text"] for item in form["item"])))


def test_an_older_version_is_its_own_questionnaire_without_its_wording():
    bundle = bundle_of(1, log_of(row(version=0, run="1"), row(run="2")), BOOK)
    hold(bundle)
    old, new = of(bundle, "Questionnaire")
    assert [(form["version"], form["status"]) for form in (old, new)] == [("0", "retired"), (NOW, "active")]
    assert [item["text"] for item in old["item"]] == ["left 1"]
    assert [one["questionnaire"][-2:] for one in of(bundle, "QuestionnaireResponse")] == ["|0", f"|{NOW}"]


def test_a_run_that_a_newer_version_took_over_answers_the_newer_questionnaire():
    assert response(row(version=0), row("left_2"))["questionnaire"].endswith(f"knee_to_wall|{NOW}")


def test_an_answer_that_is_no_option_any_more_is_kept_as_text():
    assert answers(response(row("left_limit", "ligament"))) == {"left_limit": "ligament"}


def test_knee_to_wall_is_centimetres_by_tape_with_its_side():
    (seen,) = readings(row(unit="cm", method="tape"))
    assert seen["valueQuantity"] == {"value": 11.5, "unit": "cm", "system": "http://unitsofmeasure.org", "code": "cm"}
    assert seen["code"]["coding"] == [{"system": "urn:squat-companion:measure", "code": "knee_to_wall", "display": "Knee to wall"}]
    assert (seen["status"], seen["bodySite"]["text"], seen["method"]["text"]) == ("final", "left", "tape")
    assert seen["effectiveDateTime"] == "2026-03-02T18:06:00.000Z"


def test_degrees_by_level_are_another_measure_than_centimetres():
    cm, deg = readings(row(unit="cm"), row("left_deg_1", 38.0, unit="deg", method="level", placement="mid_shin"))
    assert deg["code"]["coding"][0]["code"] == "knee_to_wall.deg" != cm["code"]["coding"][0]["code"]
    assert deg["component"][0]["valueCodeableConcept"]["text"] == "mid shin"


def test_repeats_and_sides_are_one_measure():
    codes = [seen["code"] for seen in readings(row("left_1"), row("left_2"), row("right_1"))]
    assert codes[0] == codes[1] == codes[2]


@pytest.mark.parametrize(("key", "value", "unit", "code", "kind"), [
    ("height", 175.0, "cm", "8302-2", "vital-signs"), ("mass", 78.0, "kg", "29463-7", "vital-signs"),
    ("load", 100.0, "kg", "about_you.load", None), ("years", 3.0, "years", "about_you.years", None)])
def test_body_height_and_weight_have_loinc_codes(key, value, unit, code, kind):
    (seen,) = readings(row(key, value, flow="about_you", unit=unit))
    assert seen["code"]["coding"][0]["code"] == code
    assert [one["coding"][0]["code"] for one in seen.get("category", [])] == ([kind] if kind else [])
    assert seen["valueQuantity"]["code"] == {"years": "a"}.get(unit, unit)


@pytest.mark.parametrize(("flow", "key", "ending"), [("pain", "bad", "done"), ("safety_check", "pain", "pain")])
def test_pain_is_loinc_72514_3_with_the_number_and_stands_however_the_run_ended(flow, key, ending):
    (seen,) = readings(row(key, 4.0, flow=flow, ending=ending))
    assert seen["code"]["coding"][0]["code"] == "72514-3"
    assert seen["valueQuantity"] == {"value": 4, "system": "http://unitsofmeasure.org", "code": "{score}"}
    assert isinstance(seen["valueQuantity"]["value"], int)


@each_row(("rows", "value"), [
    ([row("method", "level"), row("left_level", 72.0), row("left_lean", "short")], {"value": 72}),
    ([row("method", "level"), row("left_level", 72.0)], None),
    ([row("method", "level"), row("left_level", 12.0), row("left_lean", "past")], {"value": 102}),
    ([row("method", "level"), row("left_level", 12.0), row("left_lean", "short")], {"value": 78}),
    ([row("method", "level"), row("left_level", 12.0)], None),
    ([row("method", "heel"), row("left_heel", 80.0)], None),
    ([row("method", "eye"), row("left_eye", "60_70")], {"low": 60, "high": 70}),
    ([row("method", "eye"), row("left_eye", "over_80")], {"low": 80}),
    ([row("method", "eye"), row("left_eye", "under_45")], {"high": 45}),
])
def test_a_leg_raise_is_the_angle_from_the_floor_that_its_answer_stands_for(rows, value):
    (seen,) = readings(*(one._replace(flow="leg_raise") for one in rows))
    if value is None:
        assert seen["dataAbsentReason"]["coding"][0]["code"] == "unknown"
    elif "value" in value:
        assert seen["valueQuantity"]["value"] == value["value"]
    else:
        assert {edge: there["value"] for edge, there in seen["valueRange"].items()} == value
    assert seen["code"]["coding"][0]["code"] == "leg_raise.angle"


@pytest.mark.parametrize(("flow", "key", "value"), [
    ("knee_to_wall", "left_1", "eleven"), ("knee_to_wall", "left_1", float("nan")), ("pain", "bad", "bad"),
    ("leg_raise", "left_level", "high"), ("leg_raise", "left_level", float("inf")), ("leg_raise", "left_eye", "who knows")])
def test_an_answer_that_is_no_number_is_kept_as_text_and_is_no_value(flow, key, value):
    rows = (*([row("method", key.split("_")[1], flow=flow)] if flow == "leg_raise" else []), row(key, value, flow=flow))
    (seen,) = readings(*rows)
    assert seen["dataAbsentReason"]["coding"][0]["code"] == "unknown"
    assert answers(response(*rows))[key] == str(value)


def test_a_heel_height_given_up_for_another_way_is_no_reading():
    way = {"flow": "leg_raise"}
    seen = readings(row("method", "heel", **way), row("leg_length", 88.0, unit="cm", **way), row("left_heel", 100.0, **way),
                    row("method", "level", **way), row("left_level", 78.0, **way),
                    row("left_lean", "short", **way))
    assert [(one["code"]["coding"][0]["code"], one["valueQuantity"]["value"]) for one in seen] == [
        ("leg_raise.leg_length", 88), ("leg_raise.angle", 78)]


@each_row(("rows", "status"), [
    ([row(ending=None)], "preliminary"), ([row(ending="left")], "final"), ([row(ending="pain")], "cancelled"),
    ([row(value=None, status="in_pain", ending=None)], "cancelled"), ([row(value=None, status="in_pain", ending="pain")], "cancelled"),
    ([row(), row(value=None, status="withdrawn")], "entered-in-error"),
    ([row(), row(value=None, status="withdrawn"), row(value=None, status="skipped")], "entered-in-error"),
    ([row(), row(value=None, status="withdrawn"), row(value=12.0)], "final"),
    ([row(value=None, status="skipped")], None), ([row(value=None, status="withdrawn")], None),
])
def test_a_reading_has_the_status_of_its_answer(rows, status):
    seen = readings(*rows)
    assert [one["status"] for one in seen] == ([status] if status else [])
    assert all(("valueQuantity" in one) == (status in ("preliminary", "final")) for one in seen)


def test_a_reading_changed_after_its_run_was_done_is_amended():
    end = {"flow": "hip_fold", "unit": "deg", "side": "right"}
    first = row("right_angle", 104.0, **end)
    (seen,) = readings(first, row("right_angle", None, status="withdrawn", **end), row("right_angle", 106.0, **end))
    assert (seen["status"], seen["valueQuantity"]["value"]) == ("amended", 106)


def test_the_same_log_gives_the_same_bundle_and_a_longer_one_keeps_the_addresses():
    short, more = log_of(row(), LAST), log_of(row(), LAST, row(run="2"))
    assert as_fhir(1, short, BOOK) == as_fhir(1, reversed(short), BOOK)
    first, second = ({entry["fullUrl"] for entry in bundle_of(1, rows, BOOK)["entry"]} for rows in (short, more))
    assert first < second


def test_two_people_share_no_address_but_the_questionnaires_even_with_one_number():
    one = log_of(row())
    other = [there._replace(at=there.at + timedelta(milliseconds=1)) for there in one]
    shared = {entry["fullUrl"] for entry in bundle_of(1, one, BOOK)["entry"]} & {
        entry["fullUrl"] for entry in bundle_of(1, other, BOOK)["entry"]}
    assert len(shared) == 1


def test_an_empty_log_is_a_bundle_with_a_person():
    bundle = bundle_of(1, [], BOOK)
    hold(bundle)
    assert [entry["resource"]["resourceType"] for entry in bundle["entry"]] == ["Patient"]


async def test_a_whole_conversation_is_a_bundle_that_others_can_load(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "8", "back", "8.5", "calf", "8", "calf")
    await life.say("back", "Pinch in front")
    await life.say("hip fold", "stop", "no", "rock back", "ouch", "Lower back", "5", "no", "no", "no", "Just now")
    rows = list(log.answers_of(life.db, 1))
    await life.stop()
    bundle = bundle_of(1, rows, BOOK)
    hold(bundle)
    assert json.loads(as_fhir(1, rows, BOOK)) == bundle
    loaded = read(as_fhir(1, rows, BOOK))
    assert len(loaded.entry) == len(bundle["entry"])
    status = {one["questionnaire"].split(":")[-1].split("|")[0]: one["status"] for one in of(bundle, "QuestionnaireResponse")}
    assert (status["about_you"], status["safety_check"], status["knee_to_wall"]) == ("completed", "completed", "amended")
    assert status["rock_back"] == "stopped"
    wall = [seen["valueQuantity"]["value"] for seen in of(bundle, "Observation") if seen["code"]["text"] == "Knee to wall"]
    assert wall == [8.5, 8]
    assert [seen["valueQuantity"]["value"] for seen in of(bundle, "Observation") if "72514-3" in str(seen["code"])] == [0, 5]
    assert "sam" not in as_fhir(1, rows, BOOK).lower().replace("same", "")


def test_a_load_as_planned_has_the_planned_load_and_says_so():
    at = {"asked": "2026-03-02"}
    rows = log_of(row("load", 80.0, flow="squat_day", raw="80", run="1", **at), row("done", "yes", flow="squat_after", run="2", **at),
                  row("back", "still", flow="squat_after", run="2", **at),
                  row("load", "same", flow="squat_after", raw="As planned", run="2", **at))
    bundle = bundle_of(1, rows, BOOK)
    hold(bundle)
    (told,) = [one for one in of(bundle, "Observation") if one["code"]["coding"][0]["code"] == "squat_after.load"]
    assert told["valueQuantity"]["value"] == 80.0
    assert told["valueQuantity"]["code"] == "kg"
    assert told["note"] == [{"text": "told as: as planned"}]


def test_pain_has_the_site_that_was_told():
    rows = log_of(row("where", "back", flow="pain", raw="Lower back"), row("bad", 5.0, flow="pain", raw="5"))
    bundle = bundle_of(1, rows, BOOK)
    hold(bundle)
    (pain,) = [one for one in of(bundle, "Observation") if one["code"]["coding"][0]["code"] == "72514-3"]
    assert pain["bodySite"] == {"text": "Lower back"}


def test_levels_rulings_orders_and_alerts_are_observations_and_a_reader_loses_none(tmp_path):
    with record(tmp_path) as room:
        sam = room.lifter()
        room.hurt(sam, 2)
        for name, value, because in (("length", "likely", "Heels up: later."), ("overruled.length", "open", "seen in person"),
                                     ("load.limit", "64", ""), ("load.pin", "60", "tired"), ("depth.step", "parallel", ""),
                                     ("outcome.at", "2026-03-01", "not told: a step on the way")):
            room.find(sam, name, value, 1, because)
        coaching.audit_act(room.db, sam, room.coach, "pin_load", "60", "tired", ago(0))
        coaching.audit_act(room.db, sam, room.coach, "reviewed", "", "", ago(0))
        found = [Concluded(*kept) for kept in log.concluded_of(room.db, sam)]
        text = as_fhir(sam, log.answers_of(room.db, sam), BOOK, found)
        hold(json.loads(text))
        loaded = read(text)
    told = {(one.resource.code.coding[0].code, one.resource.valueString): one.resource for one in loaded.entry
            if one.resource.get_resource_type() == "Observation" and one.resource.code.coding[0].system == "urn:squat-companion:finding"}
    assert told.keys() == {
        ("safety.level", "not today"), ("length", "likely"), ("overruled.length", "open"), ("load.limit", "64"), ("load.pin", "60"),
        ("depth.step", "parallel"), ("alert", "not today"), ("act.pin_load", "60")}
    order = told["act.pin_load", "60"]
    assert (order.note[0].text, order.method.text) == ("tired", "Ada")
    assert [note.text for note in told["length", "likely"].note] == [
        "Heels up: later.", "Weights of the evidence: our cautious choice."]
