"""Import modules without paying for garbage collection among what they make."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def loading() -> Iterator[None]:
    """Import in here with garbage collection off; what was made is then frozen, so that later collections stay short."""
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()
