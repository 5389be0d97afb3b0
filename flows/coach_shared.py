"""What the coach's flows share: who may begin them, and what they were asked for."""

from __future__ import annotations

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Gate, Known

IS_COACH = fact("is_coach").is_("yes")
COACHES_ONLY = Gate(~IS_COACH, "That is for coaches, and whoever runs this bot makes somebody one.")
"""Before anything a coach sees or does; whose it is of is looked up again when it is carried out."""


def asked_for(known: Known) -> dict[str, Value]:
    """What a button or a command asked for, as it came: it may be anything."""
    return {"asked": known.asked}


def asked_of(known: Known) -> dict[str, Value]:
    """Of whom, and what: "17-pin_depth"."""
    of, _, what = known.asked.partition("-")
    return {"of": of, "asked_what": what}
