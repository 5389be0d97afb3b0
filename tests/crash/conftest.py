"""One process to fork from, for all tests here; each test hears of its own bots."""

from __future__ import annotations

import subprocess
from collections.abc import AsyncIterator, Iterator

import pytest

from tests.crash.nursery import Nursery, serving


@pytest.fixture(scope="session")
def server() -> Iterator[subprocess.Popen[bytes]]:
    with serving() as one:
        yield one


@pytest.fixture
async def nursery(server: subprocess.Popen[bytes]) -> AsyncIterator[Nursery]:
    async with Nursery(server).open() as one:
        yield one
