"""Draws by the hundred thousand for tests that hold a share against one reckoned by hand."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from companion.screening import certainty, next_test


@pytest.fixture
def many(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Two hundred thousand draws for two thousand, so that chance is within a thousandth or two."""
    for module in (certainty, next_test):
        monkeypatch.setattr(module, "RULING_DRAWS", 200_000)
    caches = (certainty._normal, certainty._slips, next_test._luck)
    for one in caches:
        one.cache_clear()
    yield
    for one in caches:
        one.cache_clear()
