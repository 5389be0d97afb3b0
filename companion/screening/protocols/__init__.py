"""The screening tests: each module here holds one, as ``PROTOCOL``. No registration is needed.

The modules are imported on first use.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from companion.screening.evidence import EvidenceRow
from companion.screening.protocol import Protocol
from companion.screening.readings import Error


@cache
def protocols() -> Mapping[str, Protocol[Any]]:
    """Return every test by its id, in the order of the route."""
    return ordered({file.name: import_module(f"{__name__}.{file.name}").PROTOCOL for file in iter_modules(__path__)})


def ordered(files: Mapping[str, Protocol[Any]]) -> Mapping[str, Protocol[Any]]:
    """Return the tests of these files by id, by their place on the route. Raises ValueError, naming the files, if an id is
    not its file's name, or if two tests share a place or a row id."""
    for file, one in files.items():
        if one.id != file:
            raise ValueError(f"{file}.py: its PROTOCOL is called {one.id}")
        if strange := [row.id for row in one.rows if row.test != one.id]:
            raise ValueError(f"{file}.py: {', '.join(strange)} belong to another test")
    _once("place", ((one.place, file) for file, one in files.items()))
    _once("row", ((row.id, file) for file, one in files.items() for row in one.rows))
    return {one.id: one for one in sorted(files.values(), key=lambda one: one.place)}


def protocol(test: str) -> Protocol[Any]:
    """Return one test by its id. Raises KeyError for an unknown id."""
    return protocols()[test]


@cache
def routed() -> Mapping[str, Protocol[Any]]:
    """Return the tests that a screen and a retest go through, by id, in the order of the route."""
    return {test: one for test, one in protocols().items() if one.on_route}


@cache
def route() -> tuple[str, ...]:
    """Return the ids of the tests of a screen, in the best order to do them."""
    return tuple(routed())


@cache
def measured() -> tuple[Protocol[Any], ...]:
    """Return the tests that give readings."""
    return tuple(one for one in protocols().values() if one.readings)


@cache
def rows() -> Mapping[str, EvidenceRow]:
    """Return the evidence table: the rows of every test, by id."""
    return {row.id: row for one in protocols().values() for row in one.rows}


def error_of(test: str, method: str, sex: str | None = None) -> Error:
    """Return the published error of one test by one method (``Protocol.error``)."""
    return protocol(test).error(method, sex)


def _once(what: str, named: Iterable[tuple[int | str, str]]) -> None:
    seen: dict[int | str, str] = {}
    for name, file in named:
        if name in seen:
            raise ValueError(f"{seen[name]}.py and {file}.py both have the {what} {name}")
        seen[name] = file
