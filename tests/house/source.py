"""The sources of the house, read for its rules: every text and every call, with its file and line."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]


@cache
def modules(*folders: str) -> tuple[tuple[str, ast.Module], ...]:
    """Every module of these folders, parsed, by its path from the top."""
    paths = sorted(path for folder in folders for path in (ROOT / folder).rglob("*.py"))
    return tuple((str(path.relative_to(ROOT)), ast.parse(path.read_text(encoding="utf-8"))) for path in paths)


def texts(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Every text of a module that is no docstring: its line and what it says; of an f-string each part."""
    docs = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs:
            yield node.lineno, node.value
