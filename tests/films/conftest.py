"""Films are made once a session, in the folder of the process that runs their tests."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from companion.film.decoder import read
from companion.film.footage import Footage, footage_from


@pytest.fixture(scope="session")
def small_film(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    """A small film by its name."""
    made: dict[str, Path] = {}

    def of(name: str) -> Path:
        from tests.films.camera import make
        from tests.films.moves import MOVES
        from tests.films.small import SMALL

        if name not in made:
            path = tmp_path_factory.mktemp("films") / "film.mp4"
            make((SMALL | MOVES)[name], path)
            made[name] = path
        return made[name]

    return of


@pytest.fixture(scope="session")
def small_footage(small_film: Callable[[str], Path]) -> Callable[[str], Footage]:
    """What the decoder sees of it, read in this process, which is quicker."""
    seen: dict[str, Footage] = {}

    def of(name: str) -> Footage:
        if name not in seen:
            seen[name] = footage_from(json.loads(json.dumps(read(str(small_film(name))))))
        return seen[name]

    return of
