"""People are named by number or name; where that may be several, nobody's data is shown."""

import pytest
from click.testing import CliRunner

from companion.cli.main import main
from companion.record import people
from companion.record.file import open_for_writing
from tests.fakes.clock import START


@pytest.fixture
def run(tmp_path, monkeypatch):
    """Two people called Sam, one called "1", one called "#2"."""
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "c.sqlite"
    db, lock = open_for_writing(path)
    for address, name in enumerate(("Sam", "Sam", "1", "#2"), 901):
        people.add_person(db.conn, "telegram", str(address), name, START)
    db.close()
    lock.close()
    return lambda *words: CliRunner().invoke(main, [*words, "--database", str(path)])


COMMANDS = {"log": ("log", "--as"), "export": ("export", "--format", "jsonl"), "report": ("report", "--out", "r.html")}


@pytest.mark.parametrize("command", COMMANDS.values(), ids=COMMANDS)
def test_an_ambiguous_name_lists_the_people_with_their_numbers(run, command):
    several = run(*command, "Sam")
    assert several.exit_code == 2
    assert "say which by the number, such as #1: #1 Sam (since 2026-03-02), #2 Sam (since 2026-03-02)" in several.output
    assert run(*command, "1").exit_code == 2
    assert run(*command, "#2").exit_code == 0
    assert run(*command, "902").exit_code == 0
    assert "nobody called Kim here (there is: #1 Sam" in run(*command, "Kim").output


def test_a_number_is_never_a_name_where_it_is_given_as_one(run):
    assert run("export", "--number", "2", "--format", "jsonl").exit_code == 0
    assert run("log", "--number", "2").exit_code == 0
    assert run("report", "--number", "3").output == "report-3.html\n"
    assert run("report", "3").output == "report-3.html\n"
    assert run("report", "--number", "9").exit_code == 2
    assert run("report", "--number", "1", "Sam").exit_code == 2
    assert run("export").exit_code == 2
    assert run("log", "--number", "1", "--as", "Sam").exit_code == 2
    assert run("chat", "--as", "#7").exit_code == 2
