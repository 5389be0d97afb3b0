"""Which mutants a source has, and that each is one change."""

from __future__ import annotations

import pytest

from tests.mutants.__main__ import ROOT
from tests.mutants.mutate import mutants
from tests.mutants.targets import TARGETS


def changes(source: str) -> list[str]:
    return [mutant.source for mutant in mutants(source)]


@pytest.mark.parametrize(("source", "changed"), [
    ("a = b < c", ["a = b <= c"]), ("a = b in c", ["a = b not in c"]), ("a = not b", ["a = (b)"]), ("a = ~b", ["a = (b)"]),
    ("a = b and c", ["a = ((c))", "a = ((b))"]), ("a = b & c", ["a = (b)", "a = (c)"]), ("a = b - c", ["a = (b)"]),
    ("a = (b, c)", ["a = (c)", "a = (b,)"]), ("a = (*b, c)", ["a = (c)", "a = (*b,)"]), ("a = {b, c}", ["a = {c}", "a = {b}"]),
    ("a = {'b': c}", ["a = {}"]), ("a = 5", ["a = 6", "a = 4"]), ("a = 2.0", ["a = 3.0", "a = 1.0"]), ("a = True", ["a = False"]),
    ("a = Level.EMERGENCY", ["a = Level.SAME_DAY"]), ("a = Level.GO", ["a = Level.NO_LOAD"]), ("a = max(b)", ["a = min(b)"]),
    ("a = f.one_of('b', 'c')", ["a = f.one_of('c')", "a = f.one_of('b')"]), ("a = f.one_of('b')", []),
    ("a = Gate(b, first='c')", ["a = Gate(b)"]), ("a = gate(b, first='c')", []), ("f(a)", ["pass"]), ("a |= b", ["pass"]),
    ('a = re.compile(r"b|c")', ['a = re.compile(r"c")', 'a = re.compile(r"b")']),
    ("a = 'select 1 from b where c = ? and d is null'",
     ["a = 'select 1 from b where (1 or c = ?) and d is null'", "a = 'select 1 from b where c = ? and (1 or d is null)'"]),
    ("if a:\n    b()", ["if True:\n    b()", "if False:\n    b()", "if a:\n    pass"]),
    ("a: float | None = b", []), ("A = float | str", []), ('"""Not 5."""', []), ("a = choice(('b', 'C', 5))", []), ("a = f'{b < 5}'", []),
    ("a = ('Say it.', 'Or not.')", [])])
def test_each_guard_has_its_mutants(source: str, changed: list[str]) -> None:
    assert sorted(changes(source)) == sorted(changed)


@pytest.mark.parametrize("target", TARGETS, ids=lambda target: target.file)
def test_a_target_is_there_with_its_tests_and_its_mutants_have_each_a_name(target) -> None:
    found = mutants((ROOT / target.file).read_text(encoding="utf-8"))
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
