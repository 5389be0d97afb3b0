"""The kind of question that asks what a clinician told somebody to leave out."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Final

from companion.conversation.kinds import Answer, ReadingContext, Words
from companion.language.limits import forbids, new_kilos, read_limit, told_more

ADDED: Final = "; also: "
"""What stands between the words that told a limit and those that added to it before it was confirmed."""


@dataclass(frozen=True, slots=True)
class LimitWords(Words):
    """A few words on what a clinician told somebody to leave out. "And no bending", said once it was told, adds to the words in the
    fact "told_words"; where more is asked for (the fact "asks_more"), so does "no bending"."""

    def anew(self, text: str, context: ReadingContext) -> Answer | None:
        facts = context.facts()
        today = date.fromisoformat(str(facts["today"]))
        more = told_more(text, today, context.units)
        if not more and facts.get("asks_more") == "yes" and forbids(text) and read_limit(text, today, context.units).read:
            more = text
        if not more or new_kilos(text, context.units):
            return None
        return Answer(f"{facts.get('told_words', '')}{ADDED}{more}", text)
