"""The answer log as CSV and as JSON Lines, read back by others: Python's csv, pandas, json."""

from __future__ import annotations

import csv
import io
import json
import unicodedata

from hypothesis import given, settings

from companion.export.table import ANSWER_COLUMNS, as_csv, as_json_lines
from companion.record import coaching, log, reminders
from companion.record.caseload import alerts_of
from companion.record.personal_data import as_lines
from companion.record.timestamps import text_of
from flows.catalogue import BOOK
from tests.app.test_service import CHECK, WARM, Life, settled
from tests.coach.made_up import a_lifter, opened
from tests.coach.rows import NASTY, log_of, logs, row
from tests.table import each_row

BERLIN = "Europe/Berlin"


def read_back(text: str) -> list[dict[str, str]]:
    """As Python's csv reads the file."""
    return list(csv.DictReader(io.StringIO(text.encode("utf-8").decode("utf-8-sig"), newline=""), strict=True))


def lines(text: str) -> list[dict[str, object]]:
    """As a strict JSON reader reads the file."""
    def no_constant(name: str) -> None:
        raise AssertionError(name)
    return [json.loads(line, parse_constant=no_constant) for line in text.split("\n")[:-1]]


def test_a_row_is_one_answer_with_all_it_was_given_with():
    one = row(raw="11,5 cm", unit="cm", method="tape", replaces=None)
    assert read_back(as_csv([one], BOOK, BERLIN)) == [{
        "row": "1", "at": "2026-03-02T18:05:00.000Z", "local_time": "2026-03-02 19:05:00", "flow": "knee_to_wall",
        "version": str(one.version),
        "question": "Big toe of your left foot on the tape. Bend until the knee touches the wall, heel down. Move back until it "
        "only just touches. How many cm from toe to wall?", "key": "left_1", "side": "left", "raw": "11,5 cm", "value": "11.5",
        "unit": "cm", "status": "ok", "method": "tape", "placement": "", "replaces": "", "run": "1", "run_ending": "done", "run_for": ""}]


def test_the_file_begins_with_a_byte_order_mark_and_its_lines_end_with_crlf():
    text = as_csv([row(raw='say "no", or\nelse')], BOOK, "UTC")
    assert text.encode().startswith(b"\xef\xbb\xbfrow,at,")
    assert text.count("\r\n") == text.count("\n") == 2
    assert '"say ""no"", or else"' in text


def test_a_number_that_was_kept_stays_a_number_and_one_that_was_typed_stays_text():
    (cells,) = read_back(as_csv([row(value=-3.0, raw="-3")], BOOK, "UTC"))
    assert (cells["value"], cells["raw"]) == ("-3", "'-3")


@each_row("typed", ["=1+1", "+1", "-1", "@A1", " =1", "\t=1", "\r=1", "\u00a0=1", "\u200b=1", "\ufeff=1", "\uff1d1",
                                   "\uff0b1", "\uff0d1", "\uff20A1", "\N{MINUS SIGN}1", "=\u0338"])
def test_what_would_begin_a_formula_is_text(typed):
    for cells in read_back(as_csv([row("limits", typed, flow="safety_check", raw=typed)], BOOK, "UTC")):
        assert cells["raw"].startswith("'")
        assert cells["value"].startswith("'")


@each_row("typed", ["12 - 13", "a=b", "me@home", "5+1", "é", "straße", "Zoë’s", "日本"])
def test_what_begins_no_formula_is_left_as_it_is(typed):
    assert read_back(as_csv([row(raw=typed)], BOOK, "UTC"))[0]["raw"] == typed


@given(logs())
@settings(max_examples=60, deadline=None)
def test_whatever_was_typed_the_table_keeps_its_shape_and_steers_nothing(rows):
    text = as_csv(rows, BOOK, BERLIN)
    back = read_back(text)
    assert len(back) == len(rows) == text.count("\n") - 1
    for cells, one in zip(back, rows, strict=True):
        assert list(cells) == list(ANSWER_COLUMNS)
        for name, cell in cells.items():
            assert not [c for c in cell if unicodedata.category(c) in ("Cc", "Cf", "Cs", "Zl", "Zp")]
            if name != "value" or isinstance(one.value, str):
                assert unicodedata.normalize("NFKC", cell).strip()[:1] not in ("=", "+", "-", "@", "\N{MINUS SIGN}")
        if isinstance(one.value, float) and abs(one.value) < float("inf"):
            assert float(cells["value"]) == one.value


@given(logs())
@settings(max_examples=60, deadline=None)
def test_json_lines_hold_every_value_with_its_type(rows):
    text = as_json_lines(rows, BOOK, BERLIN)
    assert text.isascii()
    for cells, one in zip(lines(text), rows, strict=True):
        there = one.value if isinstance(one.value, str) or one.value is None or abs(one.value) < float("inf") else None
        if not isinstance(there, str):
            assert cells["value"] == there
        else:
            assert isinstance(cells["value"], str)
        assert (cells["row"], cells["status"], cells["replaces"]) == (one.id, one.status, None)


@each_row("typed", [one for one in NASTY if one.isprintable()] + ["\x1b[31m", "\u202eabc", "a\r\n\tb", "\u2028", "\x00"])
def test_json_lines_keep_what_was_typed_to_the_letter(typed):
    assert lines(as_json_lines([row(raw=typed or "-")], BOOK, "UTC"))[0]["raw"] == (typed or "-")


def test_half_an_emoji_is_marked_as_broken_and_two_halves_are_one():
    halves = [row(raw="so \ud83d"), row(raw="\ud83d\ude00")]
    assert [cells["raw"] for cells in lines(as_json_lines(halves, BOOK, "UTC"))] == ["so \ufffd", "\U0001f600"]
    assert [cells["raw"] for cells in read_back(as_csv(halves, BOOK, "UTC"))] == ["so \ufffd", "\U0001f600"]


def test_no_number_is_nothing():
    for value in (float("nan"), float("inf"), -float("inf"), None):
        assert read_back(as_csv([row(value=value)], BOOK, "UTC"))[0]["value"] == ""
        assert lines(as_json_lines([row(value=value)], BOOK, "UTC"))[0]["value"] is None


def test_an_open_run_says_so_and_a_question_that_is_gone_still_has_words():
    (cells,) = read_back(as_csv([row("old_thing", 1.0, flow="no_such_flow", ending=None)], BOOK, "UTC"))
    assert (cells["run_ending"], cells["question"]) == ("open", "old thing")


def test_a_change_kept_under_its_own_name_has_its_question():
    (cells,) = read_back(as_csv([row("heels_depth", "no", flow="squat_look")], BOOK, "UTC"))
    assert cells["question"].startswith("…: where does it start now?")


def test_an_empty_log_is_a_header_and_no_line():
    assert read_back(as_csv([], BOOK, "UTC")) == []
    assert as_json_lines([], BOOK, "UTC") == ""


def test_a_load_as_planned_is_the_planned_load_and_what_was_typed_stays():
    at = {"asked": "2026-03-02"}
    rows = log_of(row("load", 80.0, flow="squat_day", raw="80", run="1", **at), row("back", "still", flow="squat_after", run="2", **at),
                  row("load", "same", flow="squat_after", raw="As planned", run="2", **at))
    (told,) = [one for one in read_back(as_csv(rows, BOOK, BERLIN)) if one["raw"] == "As planned"]
    assert (told["value"], told["unit"]) == ("80", "kg")
    assert lines(as_json_lines(rows, BOOK, BERLIN))[-1]["value"] == 80


def test_every_record_a_coachs_page_is_made_of_is_in_the_copy_for_a_program(tmp_path):
    db = opened(tmp_path / "one.sqlite")
    sam = a_lifter(db)
    import pandas

    read = pandas.read_json(io.StringIO(as_lines(db, sam)), lines=True, dtype=False)

    def rows(table: str, *columns: str) -> set[tuple[object, ...]]:
        return set(read[read["table"] == table][list(columns)].itertuples(index=False, name=None))

    def at(moment) -> str:
        return text_of(moment)

    assert {(name, one.value, at(one.at)) for name, one in log.facts_of(db, sam).items()} <= rows("facts", "name", "value", "at")
    assert {(name, one.value, one.because, one.rule, at(one.at)) for name, one in log.findings_of(db, sam).items()} <= rows(
        "findings", "name", "value", "because", "rule", "at")
    assert {(one.id, one.key, one.value, one.raw, one.status, at(one.at)) for one in log.answers_of(db, sam)
            if one.value is not None} <= rows("answers", "id", "key", "value", "raw", "status", "at")
    assert {(one.level, one.because, at(one.at)) for one in alerts_of(db, sam)} <= rows("alerts", "level", "because", "at")
    assert {(one.coach, one.what, one.value, one.reason, one.at) for one in coaching.latest_acts(db, sam)} <= rows(
        "acts", "coach_name", "what", "value", "reason", "at")
    assert {(one.kind, one.wall) for one in reminders.open_reminders(db, sam)} <= rows("reminders", "kind", "wall")
    assert alerts_of(db, sam)
    assert coaching.latest_acts(db, sam)


async def test_a_whole_conversation_opens_in_pandas_with_numbers_as_numbers(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11,5 cm", "back", "12")
    rows = list(log.answers_of(life.db, 1))
    await life.stop()
    path = tmp_path / "log.csv"
    path.write_text(as_csv(rows, BOOK, "UTC"), encoding="utf-8", newline="")
    import pandas

    table = pandas.read_csv(path, parse_dates=["at", "local_time"])
    assert list(table.columns) == list(ANSWER_COLUMNS)
    readings = table[table["key"] == "left_1"]
    assert list(readings["status"]) == ["ok", "withdrawn", "ok"]
    assert list(pandas.to_numeric(readings["value"]).dropna()) == [11.5, 12]
    assert list(readings["replaces"].dropna()) == list(readings["row"][:2])
    assert table["at"].dt.tz is not None
    assert len(pandas.read_json(io.StringIO(as_json_lines(rows, BOOK, "UTC")), lines=True)) == len(rows)


def test_rows_come_in_the_order_they_were_given():
    rows = log_of(row("left_1"), row("left_2"), row("right_1"))
    assert [cells["key"] for cells in read_back(as_csv(rows, BOOK, "UTC"))] == ["left_1", "left_2", "right_1"]
