"""One gym a test."""

from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from tests.reminders.build import Gym


@pytest.fixture
async def gym(tmp_path: Path) -> AsyncIterator[Gym]:
    one = Gym(tmp_path)
    await one.open()
    yield one
    await one.close()
