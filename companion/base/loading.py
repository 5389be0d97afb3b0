"""Faster imports: garbage collection is off while modules load."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def loading() -> Iterator[None]:
    """Pause garbage collection while importing, then freeze the imported objects so that later collections stay short."""
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()
