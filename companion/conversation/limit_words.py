"""The kind of question that asks what a clinician told somebody to leave out."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Final

from companion.conversation.kinds import Answer, ReadingContext, Words
from companion.language.limits import new_kilos, told_more

ADDED: Final = "; also: "
"""What stands between the words that told a limit and those that added to it before it was confirmed."""


@dataclass(frozen=True, slots=True)
class LimitWords(Words):
    """A few words on what a clinician told somebody to leave out. "And no bending", said once it was told, adds to the words in the
    fact "told_words"."""

    def anew(self, text: str, context: ReadingContext) -> Answer | None:
        facts = context.facts()
        more = told_more(text, date.fromisoformat(str(facts["today"])), context.units)
        if not more or new_kilos(text, context.units):
            return None
        return Answer(f"{facts.get('told_words', '')}{ADDED}{more}", text)
