"""Every test asserts something, by itself or by what it calls: a test that can't fail is none."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from pathlib import Path

HERE = Path(__file__).parent.parent
Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions(texts: Mapping[str, str]) -> Iterator[tuple[str, Function]]:
    for file, text in texts.items():
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, Function):
                yield file, node


def called(node: ast.AST) -> set[str]:
    return {one.func.id if isinstance(one.func, ast.Name) else getattr(one.func, "attr", "") for one in ast.walk(node)
            if isinstance(one, ast.Call)}


def can_not_fail(texts: Mapping[str, str]) -> list[str]:
    """The tests that neither assert nor raise, nor call a function of the tests that does."""
    known = list(functions(texts))
    failing = {node.name for _, node in known if any(isinstance(one, ast.Assert | ast.Raise) for one in ast.walk(node))}
    failing |= {"raises", "fail", "warns"}
    while more := {node.name for _, node in known if node.name not in failing and called(node) & failing}:
        failing |= more
    return [f"{file}: {node.name}" for file, node in known if node.name.startswith("test_") and node.name not in failing]


def test_every_test_can_fail() -> None:
    texts = {str(file.relative_to(HERE)): file.read_text("utf-8") for file in sorted(HERE.rglob("test_*.py"))}
    helpers = {str(file.relative_to(HERE)): file.read_text("utf-8") for file in HERE.rglob("*.py")}
    assert not can_not_fail({**helpers, **texts})


def test_a_test_that_only_calls_is_found_and_one_that_calls_an_assertion_is_not() -> None:
    text = "def same(a):\n    assert a\n\n\ndef test_one():\n    print(1)\n\n\ndef test_two():\n    same(1)\n"
    assert can_not_fail({"here": text}) == ["here: test_one"]
