"""Preloading, so that the first person to need a part does not wait for it."""

from __future__ import annotations

from companion.base.loading import loading


def load_all() -> None:
    """Import and compile the rules of hearing, the pictures and every flow.

    Raises ValueError where a flow can't be compiled or the flows don't fit together.
    """
    with loading():
        import companion.pictures.personal
        import companion.pictures.poses  # noqa: F401
        from companion.language.acts import hear_act
        from companion.language.flags import hear_flags
        from companion.language.learnt import ranked
        from companion.language.meanings import meanings
        from companion.language.pain import hear_pain
        from companion.language.quantities import quantities
        from flows.catalogue import BOOK

        hear_pain("hello")
        hear_flags("my foot keeps catching on the rug")  # doubtful, so that all layers are loaded
        hear_act("the cat sat on a mat")
        quantities("one")
        ranked("hello", ())
        meanings()
        BOOK.command("hello")
        BOOK.sentence("hello")
        for compiled in BOOK.flows.values():
            _ = compiled.machine, compiled.onward, compiled.leaving, compiled.ahead
