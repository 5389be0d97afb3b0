"""Docstrings open with the thing or the verb, and public ones are there."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

from tests.house.arrows import ROOT, modules

RIDDLES = re.compile(r"(What|Whether|Who|Whom|Whose|Where|When|Which|How|Why|So|As)\b")
"""Openings that make a reader guess what is given: "Return …", "True if …" or the thing itself say it."""


def docstrings() -> Iterator[tuple[str, str, str]]:
    """Every docstring of a module, class or function: the place to edit, the name and the text."""
    for path in modules().values():
        place = str(path.relative_to(ROOT))
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef):
                name = getattr(node, "name", "the module")
                yield f"{place}:{getattr(node, 'lineno', 1)}", name, ast.get_docstring(node) or ""


def test_docstrings_open_with_the_thing_or_the_verb():
    found = [f"{place} {name}: {text.splitlines()[0]}" for place, name, text in docstrings() if RIDDLES.match(text)]
    assert not found, "\n".join((f"{len(found)} docstrings to edit:", *found))


def public() -> Iterator[tuple[str, str, str]]:
    """Every public class and function: the place to edit, the name and the docstring. What overrides a base's method has its."""
    for path in modules().values():
        bodies = [ast.parse(path.read_text("utf-8")).body]
        for body in bodies:
            for node in body:
                if not isinstance(node, ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef) or _is_setter(node):
                    continue
                if not node.name.startswith("_"):
                    yield f"{path.relative_to(ROOT)}:{node.lineno}", node.name, ast.get_docstring(node) or ""
                    bodies += [node.body] if isinstance(node, ast.ClassDef) and not node.bases else []


def _is_setter(node: ast.AST) -> bool:
    return any(isinstance(one, ast.Attribute) and one.attr == "setter" for one in getattr(node, "decorator_list", ()))


def test_every_public_class_and_function_says_what_it_is_for():
    found = [f"{place} {name}" for place, name, text in public() if not text]
    assert not found, "\n".join((f"{len(found)} docstrings to write:", *found))
