"""Ending a coach from the command line: by name where one has it, by number where several do; never more than one."""

from __future__ import annotations

import contextlib
import sqlite3
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from companion.cli.main import main
from companion.record import coaching, people
from companion.record.file import open_for_reading
from companion.record.operator_requests import OperatorRequest, carry_out
from tests.coach.caseload_rows import NOW, Room, record


def two_kims(room: Room) -> None:
    for address in ("kim", "another kim"):
        coaching.make_coach(room.db, people.add_person(room.db, "telegram", address, "Kim", NOW), "Kim", NOW)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A file with Ada and her lifter, and two coaches called Kim."""
    with record(tmp_path) as room:
        two_kims(room)
        room.lifter("Sam")
    return tmp_path / "companion.sqlite"


def there(path: Path) -> list[tuple[int, str]]:
    return [one[:2] for one in coaching.coaches_with_lifters(open_for_reading(path).conn)]


def end(path: Path, *which: str) -> Result:
    return CliRunner().invoke(main, ["coach", "end", *which, "--database", str(path)])


def test_of_several_with_one_name_none_is_ended_and_their_numbers_are_said(path):
    before = there(path)
    result = end(path, "Kim")
    assert result.exit_code == 2
    assert "Kim may be several coaches; say which by the number, such as #2: #2 Kim (0 lifters), #3 Kim (0 lifters)" in result.output
    assert there(path) == before


@pytest.mark.parametrize("which", [("3",), ("#3",), ("--number", "3")])
def test_a_number_ends_that_coach_alone(path, which):
    assert end(path, *which).output == "Kim is no longer a coach\n"
    assert there(path) == [(1, "Ada"), (2, "Kim")]


def test_a_number_is_never_the_name_of_a_coach(path):
    with contextlib.closing(sqlite3.connect(path)) as db, db:
        db.execute("update coach_roles set name = '3' where person = 2")
    assert "3 may be several coaches; say which by the number, such as #2: #2 3 (0 lifters), #3 Kim (0 lifters)" in end(path, "3").output
    assert end(path, "#1", "--number", "1").exit_code == end(path).exit_code == 2
    assert end(path, "--number", "3").output == "Kim is no longer a coach\n"
    assert CliRunner().invoke(main, ["coach", "add", "#7", "--database", str(path)]).exit_code == 2


def test_a_name_that_one_coach_has_ends_them(path):
    assert end(path, "Ada").output == "Ada is no longer a coach\n"
    assert [name for _, name in there(path)] == ["Kim", "Kim"]


def test_neither_a_name_nor_a_number_that_nobody_has_ends_anybody(path):
    for which in ("kim", "Kim 2", "17", "4"):
        result = end(path, which)
        assert f"no coach called {which} here (there is: #1 Ada (1 lifter), #2 Kim (0 lifters), #3 Kim (0 lifters))" in result.output
    assert len(there(path)) == 3


def test_the_list_has_the_numbers(path):
    said = CliRunner().invoke(main, ["coach", "list", "--database", str(path)]).output
    assert said == "1 Ada: 1 lifter\n2 Kim: 0 lifters\n3 Kim: 0 lifters\n"


def test_a_request_left_without_a_number_ends_nobody_where_several_are_called_so(tmp_path, caplog):
    with record(tmp_path) as room:
        two_kims(room)
        carry_out(room.db, OperatorRequest("end", "Kim"), NOW)
        assert len(coaching.coaches_with_lifters(room.db)) == 3
        assert "none was ended" in caplog.text
        carry_out(room.db, OperatorRequest("end", "Ada", person=2), NOW)  # the number is somebody else's meanwhile
        assert len(coaching.coaches_with_lifters(room.db)) == 3


def test_the_page_of_a_caseload_is_of_the_one_coach_that_was_meant(path, tmp_path):
    out = tmp_path / "page.html"
    call = ["report", "--caseload", "--database", str(path), "--out", str(out), "--coach"]
    assert "several coaches; say which" in CliRunner().invoke(main, [*call, "Kim"]).output
    assert not out.exists()
    assert CliRunner().invoke(main, [*call, "1"]).exit_code == 0
    assert "Sam" in out.read_text(encoding="utf-8")
