"""The mutants of a source file: one small change each, found in its syntax tree and spliced into its text. Pure.

What is changed: a comparison at its boundary; an operand of and/or/&/|/- dropped; not and ~ removed; an if forced; an element of
a tuple, set, list or table dropped, and so a gate, a row, a level or one of the values of ``one_of``; a number one up and one
down; True and False; a level or grade one step weaker; max and min, any and all; a keyword of a record left out; a call or an
update that is a statement of its own; an alternative of a regular expression; a condition of an SQL statement. Annotations,
docstrings, texts for people and the version of a flow stay.
"""

from __future__ import annotations

import ast
import builtins
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final, NamedTuple

SCALES: Final = (
    ("Level.GO", "Level.NO_LOAD", "Level.NOT_TODAY", "Level.CLINICIAN", "Level.SAME_DAY", "Level.EMERGENCY"),
    ("Grade.NONE", "Grade.WEAK", "Grade.MODERATE", "Grade.STRONG"),
    ("_NONE", "_WEAK", "_MODERATE", "_STRONG"),
    ("Ruling.RULED_OUT", "Ruling.NOT_TESTED", "Ruling.TOO_CLOSE", "Ruling.LIKELY"),
)
"""What is written in place of what: its neighbour below; of the lowest, that above."""
SWAPS: Final = {"max": "min", "min": "max", "any": "all", "all": "any"}
TEXTS: Final = frozenset(("choice", "Option", "Tell", "Words", "Ready", "YesNo"))
"""Calls that hold nothing but words for people."""
BOUNDARY: Final[dict[type[ast.cmpop], str]] = {
    ast.Lt: "<=", ast.LtE: "<", ast.Gt: ">=", ast.GtE: ">", ast.Eq: "!=", ast.NotEq: "==", ast.In: "not in", ast.NotIn: "in",
    ast.Is: "is not", ast.IsNot: "is"}
_OPERATOR: Final = re.compile(r"is\s+not|not\s+in|is|in|[<>=!]=?")
_SQL: Final = re.compile(r"\b(?:where|and|on) (not exists \(|[\w.]+ (?:is null|is not null|(?:[<>]=?|=) (?:\?|[\w.]+)))")


class Edit(NamedTuple):
    """A stretch of the source, in bytes, and what is written in its place."""

    start: int
    end: int
    new: str


@dataclass(frozen=True, slots=True)
class Mutant:
    """One change: the lines it touches, its name (stable while the code around it moves) and the whole changed source."""

    line: int
    last: int
    name: str
    source: str


def mutants(source: str, compared: bool = False) -> list[Mutant]:
    """Every mutant of a source, in the order of the text, none twice and none that is no Python; ``compared``: only flipped comparisons."""
    raw, tree = source.encode(), ast.parse(source)
    starts = [0]
    for line in raw.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))

    def span(node: ast.AST) -> tuple[int, int]:
        return (starts[node.lineno - 1] + node.col_offset, starts[node.end_lineno - 1] + node.end_col_offset)  # type: ignore[attr-defined]

    found: dict[str, Mutant] = {}
    names: dict[str, int] = {}
    statements = [(starts[min((deco.lineno for deco in getattr(one, "decorator_list", ())), default=one.lineno) - 1],
                   starts[one.end_lineno or 0]) for one in tree.body]  # whether one still parses hangs on it alone
    for scope, node in _guards(tree, ""):
        for edit in _edits(node, span, raw) if isinstance(node, ast.Compare) or not compared else ():
            changed = (raw[:edit.start] + edit.new.encode() + raw[edit.end:]).decode()
            begin, end = next((begin, end) for begin, end in statements if edit.start < end)
            if changed in found or not _parses(raw[begin:edit.start] + edit.new.encode() + raw[edit.end:end]):
                continue
            first, last = raw.count(b"\n", 0, edit.start) + 1, raw.count(b"\n", 0, edit.end) + 1
            was = " ".join(raw[edit.start:edit.end].decode().split())
            name = f"{scope or 'module'}: {_short(_around(raw, edit, was))}"
            names[name] = names.get(name, 0) + 1
            found[changed] = Mutant(first, last, name + (f" ({names[name]})" if names[name] > 1 else ""), changed)
    return sorted(found.values(), key=lambda one: (one.line, one.last))


def _around(raw: bytes, edit: Edit, was: str) -> str:
    """A change as a person reads it: what stood before it on its line, so that "2" is not only a number."""
    before = raw[raw.rfind(b"\n", 0, edit.start) + 1:edit.start].decode().strip()
    return f"{before[-48:]}⟨{_short(was)} → {_short(edit.new) or '∅'}⟩"


def _short(text: str) -> str:
    return text if len(text) <= 150 else f"{text[:90]}…{text[-59:]}"


def _parses(source: bytes) -> bool:
    try:
        ast.parse(source)
    except SyntaxError:
        return False
    return True


def _guards(node: ast.AST, scope: str) -> Iterator[tuple[str, ast.AST]]:
    """Every node that may be changed, with the name of the function, class or constant it stands in."""
    match node:
        case ast.FunctionDef() | ast.AsyncFunctionDef():
            scope = f"{scope}.{node.name}" if scope else node.name
            inside = [*node.args.defaults, *filter(None, node.args.kw_defaults), *node.body]
        case ast.ClassDef():
            scope, inside = f"{scope}.{node.name}" if scope else node.name, list(node.body)
        case ast.Assign(targets=[ast.Name(name)]):
            scope, inside = scope or name, [node.value]
        case ast.Assign():
            inside = [node.value]
        case ast.AnnAssign():
            scope = scope or (node.target.id if isinstance(node.target, ast.Name) else "")
            inside = [node.value] if node.value else []
        case ast.Expr(ast.Constant()) | ast.JoinedStr() | ast.Import() | ast.ImportFrom():
            return
        case ast.Call(ast.Name(name) | ast.Attribute(attr=name)) if name in TEXTS:
            return
        case ast.keyword("version"):
            return
        case ast.Subscript(ast.Name("Literal")):  # a type, for readers and mypy
            return
        case ast.For() | ast.comprehension():
            inside = [child for child in ast.iter_child_nodes(node) if child is not node.target]
        case _:
            inside = list(ast.iter_child_nodes(node))
    yield scope, node
    for child in inside:
        yield from _guards(child, scope)


def _edits(node: ast.AST, span: Callable[[ast.AST], tuple[int, int]], raw: bytes) -> Iterator[Edit]:
    """The changes of one node."""
    def text(part: ast.AST) -> str:
        start, end = span(part)
        return raw[start:end].decode()

    def without(parts: list[ast.AST], least: int = 0, only: ast.AST | None = None) -> Iterator[Edit]:
        """Each part, or one, taken out of a list separated by commas."""
        for n, part in enumerate(parts if len(parts) > least else []):
            if only not in (None, part):
                continue
            start, end = span(part)
            if n + 1 < len(parts):
                yield Edit(start, span(parts[n + 1])[0], "")
            else:
                yield Edit(span(parts[n - 1])[1] if n else start, end, "," if n == 1 and isinstance(node, ast.Tuple) else "")

    match node:
        case ast.Compare():
            left = node.left
            for op, right in zip(node.ops, node.comparators, strict=True):
                between = raw[span(left)[1]:span(right)[0]].decode()  # with what closes and opens a bracket
                flipped = _OPERATOR.sub(BOUNDARY[type(op)], between, count=1)
                yield Edit(span(left)[0], span(right)[1], f"{text(left)}{flipped}{text(right)}")
                left = right
        case ast.BoolOp():
            for part in node.values:
                rest = [f"({text(other)})" for other in node.values if other is not part]
                yield Edit(*span(node), "(" + (" and " if isinstance(node.op, ast.And) else " or ").join(rest) + ")")
        case ast.BinOp(op=ast.BitAnd() | ast.BitOr()) if not (_is_type(node.left) or _is_type(node.right)):
            yield Edit(*span(node), f"({text(node.left)})")
            yield Edit(*span(node), f"({text(node.right)})")
        case ast.BinOp(op=ast.Sub()):
            yield Edit(*span(node), f"({text(node.left)})")
        case ast.UnaryOp(op=ast.Not() | ast.Invert()):
            yield Edit(*span(node), f"({text(node.operand)})")
        case ast.If() | ast.IfExp():
            yield from (Edit(*span(node.test), forced) for forced in ("True", "False"))
        case ast.comprehension():
            yield from (Edit(*span(test), forced) for test in node.ifs for forced in ("True", "False"))
        case ast.match_case() if node.guard:
            yield from (Edit(*span(node.guard), forced) for forced in ("True", "False"))
        case ast.MatchOr():
            yield from (Edit(*span(node), " | ".join(text(p) for p in node.patterns if p is not part)) for part in node.patterns)
        case ast.Tuple() | ast.List() | ast.Set():
            if not all(_is_text(part) for part in node.elts):
                yield from without(list(node.elts), isinstance(node, ast.Set))
        case ast.Dict():
            for n, (key, value) in enumerate(zip(node.keys, node.values, strict=True)):
                start = span(key)[0] if key else raw.rfind(b"**", 0, span(value)[0])
                end = span(value)[1]
                yield Edit(start, end + (raw[end:end + 1] == b","), "") if n + 1 < len(node.keys) or not n else Edit(start, end, "")
        case ast.Constant(bool()):
            yield Edit(*span(node), str(not node.value))
        case ast.Constant(int() | float()):
            yield from (Edit(*span(node), repr(node.value + step)) for step in (1, -1))
        case ast.Constant(str()):
            for at in _SQL.finditer(node.value) if re.match(r"(select|update|delete) ", node.value) else ():
                held = f"1 or {at[1]}" if at[1].endswith("(") else f"(1 or {at[1]})"
                yield Edit(*span(node), repr(node.value[:at.start(1)] + held + node.value[at.end(1):]))
        case ast.Attribute() | ast.Name():
            for scale in SCALES:
                if (name := text(node)) in scale:
                    yield Edit(*span(node), scale[abs(scale.index(name) - 1)])
        case ast.Expr(ast.Call()) | ast.AugAssign():
            yield Edit(*span(node), "pass")
        case ast.Call():
            yield from _call_edits(node, span, text, without)


def _call_edits(node: ast.Call, span: Callable[[ast.AST], tuple[int, int]], text: Callable[[ast.AST], str],
                without: Callable[..., Iterator[Edit]]) -> Iterator[Edit]:
    called = text(node.func)
    if called in SWAPS:
        yield Edit(*span(node.func), SWAPS[called])
    if called.endswith(".one_of"):
        yield from without(list(node.args), 1)
    if called == "re.compile" and isinstance(node.args[0], ast.Constant):
        yield from _without_alternatives(text(node.args[0]), span(node.args[0])[0])
    if called[:1].isupper():
        for keyword in node.keywords:
            if not _is_text(keyword.value):
                yield from without([*node.args, *node.keywords], only=keyword)


def _without_alternatives(written: str, start: int) -> Iterator[Edit]:
    """Each outermost alternative of a regular expression taken out, as far as it stands in one piece."""
    parts = _alternatives(written.partition('"')[2].rpartition('"')[0])
    for part in parts if parts[1:] else []:
        at = re.search(rf"(?<=[|\"]){re.escape(part)}(?:\||(?=\"))", written)
        if at:
            bar = written[at.start() - 1] == "|" and not at[0].endswith("|")
            yield Edit(start + len(written[:at.start() - bar].encode()), start + len(written[:at.end()].encode()), "")


def _alternatives(pattern: str) -> list[str]:
    """A regular expression cut at its outermost bars."""
    parts, depth, cut = [""], 0, re.findall(r"\\.|\[(?:\\.|[^\]])*\]|.", pattern, re.DOTALL)
    for token in cut:
        depth += (token == "(") - (token == ")")
        if token == "|" and not depth:
            parts.append("")
        else:
            parts[-1] += token
    return parts


def _is_type(node: ast.AST) -> bool:
    """Whether an operand of | is a type, as in ``float | None``."""
    return (isinstance(node, ast.Name) and isinstance(getattr(builtins, node.id, None), type)) or (
        isinstance(node, ast.Constant) and node.value is None)


def _is_text(node: ast.AST) -> bool:
    """Whether it is words for people: no key, which has neither a space nor a capital."""
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str)
                                               and (" " in node.value or node.value != node.value.lower()))
