"""Whether a reply speaks of pain. What that takes, rules and tables (``pain_words``), comes with the first reply listened to."""

from __future__ import annotations

from enum import Enum


class Pain(Enum):
    """What a reply says of pain: nothing, perhaps something (ask "Did something hurt?"), or yes."""

    NO = 0
    ASK = 1
    YES = 2


def hear_pain(text: str, *, body_at_work: bool = True) -> Pain:
    """As ``pain_words.hear_pain``."""
    from companion.conversation import pain_words

    return pain_words.hear_pain(text, body_at_work=body_at_work)
