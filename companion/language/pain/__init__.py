"""Pain recognised in what people type. The rules and tables are loaded at the first reply."""

from __future__ import annotations

from companion.language.pain.degree import Pain

__all__ = ["Pain", "hear_pain"]


def hear_pain(text: str, *, body_at_work: bool = True) -> Pain:
    """Return the degree of pain a reply tells of (``rules.hear_pain``). ``body_at_work``: doubtful words count too."""
    from companion.language.pain import rules

    return rules.hear_pain(text, body_at_work=body_at_work)
