"""Limits in words: what a clinician told somebody to leave out, "no hamstring stretching and no weights for 3 weeks".

Nothing is guessed: what is left over once all that is understood is taken away is given back (``rest``), and is asked about.
"""

from __future__ import annotations

from companion.language.limits.clinicians import A_CLINICIAN, CLINICIANS, clinicians_in
from companion.language.limits.ends import ASKS_END, CLEARED, is_end, past_end, read_end
from companion.language.limits.parts import forbids, parts_named, sets_none, split_up
from companion.language.limits.put_right import (
    NEW_END,
    NEW_KILOS,
    NEW_KILOS_TILL,
    NEW_KILOS_UNIT,
    NEW_UNIT,
    NewKilos,
    in_the_unit,
    new_end,
    new_end_beside,
    new_kilos,
    new_kilos_till,
    number_said,
    says_longer,
    still_until,
)
from companion.language.limits.told import (
    TOLD_MORE,
    ToldLimit,
    by_each,
    kilos_alone,
    only_part,
    read_limit,
    read_limits,
    sets_one,
    told_more,
)

__all__ = [
    "ASKS_END", "A_CLINICIAN", "CLEARED", "CLINICIANS", "NEW_END", "NEW_KILOS", "NEW_KILOS_TILL", "NEW_KILOS_UNIT", "NEW_UNIT",
    "TOLD_MORE", "NewKilos", "ToldLimit", "by_each", "clinicians_in", "forbids", "in_the_unit", "is_end", "kilos_alone", "new_end",
    "new_end_beside", "new_kilos", "new_kilos_till", "number_said", "only_part", "parts_named", "past_end", "read_end", "read_limit",
    "read_limits", "says_longer", "sets_none", "sets_one", "split_up", "still_until", "told_more"]
