"""Which mutants a source has, and that each is one change."""

from __future__ import annotations

import pytest

from tests.mutants.__main__ import ROOT, mutants_of
from tests.mutants.mutate import mutants
from tests.mutants.numbers import EQUAL, number_mutants, stages_of
from tests.mutants.targets import TARGETS
from tests.table import each_row


def changes(source: str) -> list[str]:
    return [mutant.source for mutant in mutants(source)]


@each_row(("source", "changed"), [
    ("a = b < c", ["a = b <= c"]), ("a = b in c", ["a = b not in c"]), ("a = not b", ["a = (b)"]), ("a = ~b", ["a = (b)"]),
    ("a = (b := c) is not None", ["a = (b := c) is None"]), ("a = b == (-c)", ["a = b != (-c)"]), ("a = (b) < (c)", ["a = (b) <= (c)"]),
    ("a = b and c", ["a = ((c))", "a = ((b))"]), ("a = b & c", ["a = (b)", "a = (c)"]), ("a = b - c", ["a = (b)"]),
    ("a = (b, c)", ["a = (c)", "a = (b,)"]), ("a = (*b, c)", ["a = (c)", "a = (*b,)"]), ("a = {b, c}", ["a = {c}", "a = {b}"]),
    ("a = {'b': c}", ["a = {}"]), ("a = 5", ["a = 6", "a = 4"]), ("a = 2.0", ["a = 3.0", "a = 1.0"]), ("a = True", ["a = False"]),
    ("a = Level.EMERGENCY", ["a = Level.SAME_DAY"]), ("a = Level.GO", ["a = Level.NO_LOAD"]), ("a = max(b)", ["a = min(b)"]),
    ("a = f.one_of('b', 'c')", ["a = f.one_of('c')", "a = f.one_of('b')"]), ("a = f.one_of('b')", []),
    ("a = Gate(b, first='c')", ["a = Gate(b)"]), ("a = gate(b, first='c')", []), ("a = Flow(b, version=1)", ["a = Flow(b)"]),
    ("f(a)", ["pass"]), ("a |= b", ["pass"]),
    ('a = re.compile(r"b|c")', ['a = re.compile(r"c")', 'a = re.compile(r"b")']),
    ("a = 'select 1 from b where c = ? and d is null'",
     ["a = 'select 1 from b where (1 or c = ?) and d is null'", "a = 'select 1 from b where c = ? and (1 or d is null)'"]),
    ("if a:\n    b()", ["if True:\n    b()", "if False:\n    b()", "if a:\n    pass"]),
    ("a: float | None = b", []), ("A = float | str", []), ("A = Literal['b', 'c']", []),
    ('"""Not 5."""', []), ("a = choice(('b', 'C', 5))", []), ("a = f'{b < 5}'", []),
    ("a = ('Say it.', 'Or not.')", [])])
def test_each_guard_has_its_mutants(source: str, changed: list[str]) -> None:
    assert sorted(changes(source)) == sorted(changed)


@pytest.mark.parametrize("target", TARGETS, ids=lambda target: target.file)
def test_a_target_is_there_with_its_tests_and_its_mutants_have_each_a_name(target) -> None:
    found = mutants_of(target)
    names = [mutant.name for mutant in found]
    assert len(set(names)) == len(names) == len({mutant.source for mutant in found}) > 0
    scopes = {name.partition(":")[0].partition(".")[0] for name in names}
    assert set(target.only) <= scopes
    for path in " ".join(target.stages).split():
        assert (ROOT / path).exists(), path


def test_a_name_stays_when_lines_are_added_before_it() -> None:
    source = "def f(a):\n    return a < 5\n"
    assert [one.name for one in mutants(source)] == [one.name for one in mutants("import b\n\n\n" + source)]
    assert mutants("import b\n" + source)[0].line == 3


ROW = """[load.share]
says = "At most {value}."
value = [80.0, 2.0]
unit = "%s"
"""


@pytest.mark.parametrize(("unit", "least", "most"), [("%", "1.6", "2.4"), ("days", "1.0", "3.0")])
def test_a_number_has_two_mutants_a_fifth_off_and_a_count_one(unit: str, least: str, most: str) -> None:
    found = [one.source.splitlines()[2].removeprefix("value = ") for one in number_mutants(ROW % unit)]
    assert found == ["[64.0, 2.0]", "[96.0, 2.0]", f"[80.0, {least}]", f"[80.0, {most}]"]


def test_every_number_of_the_tables_has_its_mutants() -> None:
    from companion.screening.sources import SOURCES

    found = [one for target in TARGETS if target.file.endswith(".toml") for one in mutants_of(target)]
    assert len(found) == 2 * sum(len(row.value) for row in SOURCES.values())


def test_the_tests_of_a_number_are_those_that_know_its_readers() -> None:
    one, = [one for one in number_mutants((ROOT / "companion/screening/numbers/change.toml").read_text("utf-8"))
            if one.name == "trend_sessions: 5 → 4"]
    assert "tests/screening/test_trend.py" in stages_of(one)[0]
    assert EQUAL not in stages_of(one)[0]
