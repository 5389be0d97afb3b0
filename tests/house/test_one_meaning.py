"""One name, one meaning: no two public classes share a name, and no public constant has two values."""

from __future__ import annotations

import ast
from collections import defaultdict
from collections.abc import Iterator

from tests.house.arrows import ROOT, modules

EVERY_FILE_HAS_ONE = {"FLOW", "PROTOCOL"}
"""Names by which a file is found."""


def named() -> Iterator[tuple[str, str, str]]:
    """Every public class and constant of a module: its name, what it is, and the place to edit."""
    for path in modules().values():
        for node in ast.parse(path.read_text("utf-8")).body:
            place = f"{path.relative_to(ROOT)}:{node.lineno}"
            match node:
                case ast.ClassDef(name=name):
                    yield name, f"class in {place}", place
                case ast.AnnAssign(target=ast.Name(id=name), value=ast.expr() as value) | ast.Assign(
                        targets=[ast.Name(id=name)], value=ast.expr() as value):
                    yield name, ast.unparse(value), place


def test_no_public_name_has_two_meanings():
    found = defaultdict[str, dict[str, str]](dict)
    for name, meaning, place in named():
        if not name.startswith("_") and name not in EVERY_FILE_HAS_ONE:
            found[name].setdefault(meaning, place)
    twice = [f"{name}: {', '.join(meanings.values())}" for name, meanings in sorted(found.items()) if len(meanings) > 1]
    assert not twice, "\n".join((f"{len(twice)} names to tell apart:", *twice))
