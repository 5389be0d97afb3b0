"""The mutants of a table of sourced numbers: each number a fifth less and a fifth more, and the tests that know its readers. Pure but for
reading the tree.

Of a count (a whole number under five of no measure) a fifth is nothing, so it is one less and one more.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Final

from tests.mutants.mutate import Mutant

ROOT: Final = Path(__file__).parents[2]
MEASURES: Final = frozenset(("deg", "cm", "kg", "lb", "s", "%", "hours", "weeks", "min"))
EQUAL: Final = "tests/screening/test_sources.py"
"""The tests that say no more than that a number is what it is: no mutant counts as killed by them."""
TOLD: Final = "tests/flows/test_why.py"


def number_mutants(text: str) -> list[Mutant]:
    """Return each number of the table a fifth less and a fifth more, in the order of the text."""
    found = []
    for row in re.finditer(r'^\[\w+\.(\w+)\]\n(?:\w.*\n)*?value = (.*)\n(?:\w.*\n)*?unit = "(.*)"', text, re.MULTILINE):
        numbers = list(re.finditer(r"-?\d+\.\d+", row[2]))
        line = text.count("\n", 0, row.start(2)) + 1
        for n, number in enumerate(numbers):
            start, end = (row.start(2) + at for at in number.span())
            for new in _moved(float(number[0]), row[3]):
                at = f", {n + 1}" if len(numbers) > 1 else ""
                found.append(Mutant(line, line, f"{row[1]}{at}: {float(number[0]):g} → {new:g}", f"{text[:start]}{new!r}{text[end:]}"))
    return found


def _moved(number: float, unit: str) -> tuple[float, float]:
    if number.is_integer() and abs(number) < 5 and unit not in MEASURES:
        return number - 1, number + 1
    return round(number * 0.8, 9), round(number * 1.2, 9)


def stages_of(mutant: Mutant) -> tuple[str, ...]:
    """Return the tests that import a module which reads the mutant's row, or are named after one, the nearest first; before them those
    of what is told, where a text takes the row, or no module reads it."""
    name = re.split("[:,]", mutant.name)[0]
    modules = _words("companion", "flows")
    readers = {module for module, words in modules.items() if name in words} - {"companion.screening.sources"}
    told = any(re.search(rf"{{{name}[_:]", word) for words in modules.values() for word in words if "{" in word)
    named = tuple(f"tests/{module.split('.')[-2]}/test_{module.split('.')[-1].removesuffix('_facts')}".replace("protocols", "screening")
                  for module in readers)

    def alike(file: str) -> bool:
        return file.startswith(named)

    near = [file for file, words in _words("tests").items() if "/test_" in file and file != EQUAL and (words & readers or alike(file))]
    near.sort(key=lambda file: ("tests/screening" not in file, "by_hand" not in file, not alike(file), file))
    return tuple(filter(None, (TOLD if told or not near else "", " ".join(near[:4]))))


@cache
def _words(*folders: str) -> dict[str, frozenset[str]]:
    """Return of each module (of tests: of each file) the texts in it and the modules it imports."""
    found = {}
    for file in (file for folder in folders for file in (ROOT / folder).rglob("*.py")):
        short = file.relative_to(ROOT)
        name = str(short) if folders == ("tests",) else ".".join(short.with_suffix("").parts)
        found[name] = frozenset(_held(ast.parse(file.read_text("utf-8"))))
    return found


def _held(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{one.name}" for one in node.names)
