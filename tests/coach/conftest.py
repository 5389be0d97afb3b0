"""A record with one coach, and a companion with several people, for each test that asks for one."""

from __future__ import annotations

from collections.abc import AsyncIterator, Iterator
from pathlib import Path

import pytest

from tests.coach.caseload_rows import Room, record
from tests.coach.gym import Gym


@pytest.fixture
def room(tmp_path: Path) -> Iterator[Room]:
    with record(tmp_path) as one:
        yield one


@pytest.fixture
async def gym(tmp_path: Path) -> AsyncIterator[Gym]:
    one = Gym(tmp_path / "companion.sqlite")
    await one.start()
    yield one
    await one.stop()
