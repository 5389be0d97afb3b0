"""How the command line loads what it needs: fast; and all that otherwise waits for its first use."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def loading() -> Iterator[None]:
    """While modules are loaded in here, no garbage is looked for among what they make: it all stays. It is not looked through
    later either, so that collections are short."""
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()


def load_all() -> None:
    """What otherwise comes with the first person who needs it: how pain is heard, the pictures, every flow, compiled.

    Raises ValueError where the flows don't fit together, or one can't be compiled.
    """
    with loading():
        import companion.pictures.own
        import companion.pictures.poses  # noqa: F401
        from companion.conversation.pain import hear_pain
        from flows.catalogue import BOOK

        hear_pain("hello")
        BOOK.command("hello")
        BOOK.sentence("hello")
        for compiled in BOOK.flows.values():
            _ = compiled.machine, compiled.ways, compiled.leaving
