"""The arrows of the house, read from the code: who imports whom, lazy imports and imports for types included.

``python -m tests.house.arrows`` writes the map in DEVELOPERS.md anew.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path
from typing import Final, NamedTuple

ROOT: Final = Path(__file__).parents[2]
BEGIN, END = "<!-- arrows: python -m tests.house.arrows -->", "<!-- end of arrows -->"


class Import(NamedTuple):
    """One import: the module it stands in, the module it names, and the place to edit."""

    source: str
    target: str
    place: str


def modules() -> dict[str, Path]:
    """Every module of the two packages, by its dotted name."""
    found = {}
    for package in ("companion", "flows"):
        for path in sorted((ROOT / package).rglob("*.py")):
            found[".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")] = path
    return found


@cache
def imports() -> tuple[Import, ...]:
    """Every import between modules of the two packages, wherever in a module it stands."""
    known = modules()
    return tuple(Import(name, target, f"{path.relative_to(ROOT)}:{line}")
                 for name, path in known.items() for target, line in _named(path, known) if target != name)


def _named(path: Path, known: Mapping[str, Path]) -> Iterator[tuple[str, int]]:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno) for alias in node.names if alias.name in known)
        elif isinstance(node, ast.ImportFrom) and node.module in known:
            for alias in node.names:
                within = f"{node.module}.{alias.name}"
                yield within if within in known else node.module, node.lineno


def room_of(module: str) -> str:
    """The room a module stands in: a folder of companion/, one of its loose modules, or flows."""
    first, _, rest = module.partition(".")
    return rest.partition(".")[0] or first if first == "companion" else first


def rooms() -> dict[str, set[str]]:
    """Each room and the rooms it imports from."""
    found: dict[str, set[str]] = {room_of(module): set() for module in modules()}
    for one in imports():
        if room_of(one.source) != room_of(one.target):
            found[room_of(one.source)].add(room_of(one.target))
    return found


def circle(graph: Mapping[str, set[str]]) -> list[str]:
    """A circle in a graph, or an empty list."""
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        return [str(name) for name in error.args[1]]
    return []


def levels() -> list[list[str]]:
    """The rooms in levels, the topmost first: each imports only from lower ones."""
    graph, height = rooms(), dict[str, int]()
    for room in TopologicalSorter(graph).static_order():
        height[room] = max((height[below] + 1 for below in graph[room]), default=0)
    return [sorted(room for room in graph if height[room] == level) for level in sorted(set(height.values()), reverse=True)]


def drawn() -> str:
    """The map for DEVELOPERS.md: a line a room, the topmost first, with the rooms it imports from."""
    graph = rooms()
    lines = [f"{room:13}→ {' '.join(sorted(graph[room])) or 'nothing'}" for level in levels() for room in level
             if room not in ("companion", "__main__")]
    return "\n".join((BEGIN, "```", *lines, "```", END))


def main() -> None:
    """Write the map into DEVELOPERS.md."""
    path = ROOT / "DEVELOPERS.md"
    before, _, rest = path.read_text("utf-8").partition(BEGIN)
    path.write_text(before + drawn() + rest.partition(END)[2], "utf-8")


if __name__ == "__main__":
    main()
