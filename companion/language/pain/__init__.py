"""Whether a reply speaks of pain. What that takes, rules and tables (``rules``), comes with the first reply listened to."""

from __future__ import annotations

from enum import Enum


class Pain(Enum):
    """What a reply says of pain: nothing, perhaps something (ask "Did something hurt?"), or yes."""

    NO = 0
    ASK = 1
    YES = 2


def hear_pain(text: str, *, body_at_work: bool = True) -> Pain:
    """As ``rules.hear_pain``."""
    from companion.language.pain import rules

    return rules.hear_pain(text, body_at_work=body_at_work)
