"""A wish about a lifter, typed with their name: “what's up with Maria”, “cap Tom at 80”; or about all: “who is quiet”, “undo”."""

from __future__ import annotations

from companion.conversation.condition import Facts
from companion.language.coach_words import lifters_in, wish_in
from flows.coach_shared import IS_COACH, page_flow


def is_wish(asked: str, facts: Facts) -> bool:
    """True if a message of a coach who has lifters wishes something of one of them, of a group, or of all."""
    names = lifters_in(facts).values()
    return bool(names) and wish_in(asked, names) is not None


FLOW = page_flow("lifter_named", "A wish about a lifter", command=None, sentences=(r"(?P<asked>.{2,80})",), fits=is_wish, said_by=IS_COACH)
