""""The same", "no change": an answer that is the one given to an earlier question of the run that takes the same answers.

Where a squat is done again with a change, "no change" means that it starts where it did without; read alone it would be a "no".
"""

from __future__ import annotations

import re
from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, Choice, Kind
from companion.conversation.number_kinds import Number
from companion.language.clauses import flat

_LEAD: Final = r"(?:(?:it|its|it was|still|just|about|exactly|pretty much|basically|the|much) )*"
_SAME: Final = re.compile(rf"{_LEAD}(?:same|same (?:as before|again|depth|place|spot|one|here|thing)|as before|identical)")
_UNCHANGED: Final = re.compile(
    rf"{_LEAD}(?:no (?:change|changes|difference|different)|(?:made|makes) no difference|(?:didnt|did not) change(?: anything| it| that)?|"
    r"nothing changed|unchanged|same as (?:plain|usual|normal|without|the (?:plain|usual|first)(?: ones?)?))")
LEAST_ALIKE: Final = 3
"""Least answers that two choices must share; our choice."""


def as_before(draft: Draft, text: str) -> Answer | None:
    """Return the earlier answer that a message repeats; None where it repeats none, or may mean several."""
    ask, said = draft.ask, flat(text).strip(" .!")
    unchanged = _UNCHANGED.fullmatch(said)
    if ask.safety or ask.free or not (unchanged or _SAME.fullmatch(said)):
        return None
    stops = [(key, draft.compiled.stops[key]) for key in draft.top.trail if key in draft.top.got]
    before = [draft.top.got[key] for key, stop in stops if isinstance(stop, Ask) and _alike(stop.kind, ask.kind)]
    if not before or (len(set(before)) > 1 and isinstance(ask.kind, Choice) and not unchanged):
        return None
    return Answer(before[0] if unchanged else before[-1], text, ask.kind.unit)


def _alike(earlier: Kind, now: Kind) -> bool:
    """True if every answer of an earlier question is one of this one too."""
    if isinstance(now, Number):
        return earlier == now
    values = {option.value for option in earlier.options}
    return isinstance(earlier, Choice) and len(values) >= LEAST_ALIKE and values <= {option.value for option in now.options}
