"""The load at which rounding begins, bracketed from sets the lifter has already done: films, and squat days as told.

Nothing is ever lifted for it, and nothing heavier than trained is asked for. Sets disagree now and then, so the bracket is the split
between lighter clean sets and heavier rounded ones that the fewest sets speak against, those on film counting double (choice); of equal
splits the lowest, which is the safe side. What is lifted for now stays under it (choice).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from companion.screening.pairs import ReferenceSquat
from companion.screening.sources import SOURCES, value
from companion.screening.squat_days import ToldDay

FILM_COUNTS: Final = int(value("film_counts"))
BELOW_ROUNDING, UNBRACKETED = (share / 100 for share in SOURCES["load_bracket"].value)
"""Of the lightest load that rounds: no more than this, however close to it a set was clean; and this where no lighter set is known to
be clean."""


@dataclass(frozen=True, slots=True)
class SeenSet:
    """One set that was done anyway: its load in kg, whether the back rounded, and whether that was seen on film."""

    kg: float
    rounds: bool
    film: bool = False


@dataclass(frozen=True, slots=True)
class Bracket:
    """The heaviest load that was clean and the lightest that rounded, in kg; None where there is none. Rounding begins between."""

    clean: float | None
    rounds: float

    @property
    def most(self) -> float:
        """The load to keep to, in kg."""
        if self.clean is None:
            return self.rounds * UNBRACKETED
        return min(self.clean, self.rounds * BELOW_ROUNDING)


def sets_of(look: ReferenceSquat, days: Iterable[ToldDay] = ()) -> tuple[SeenSet, ...]:
    """Return the loaded sets that tell something. A film counts as rounding where it rounds earlier than without load; a squat day where
    the back moved at the depth set, and as clean where it stayed still."""
    sets = []
    plain, loaded = look.start("plain"), look.start("load") if look.load_film == "yes" else None
    if look.load_kg and plain is not None and loaded is not None:
        sets.append(SeenSet(look.load_kg, loaded < plain, film=True))
    if look.clean_kg:
        sets.append(SeenSet(look.clean_kg, rounds=False, film=True))
    sets += [SeenSet(day.load, day.back == "moved", day.film) for day in days
             if day.load and day.back in ("still", "moved") and day.kept != "deeper" and not day.hurt]
    return tuple(sets)


def bracket(sets: Sequence[SeenSet]) -> Bracket | None:
    """Return where rounding begins; None if no set rounded, or if as much speaks against every split as for it."""
    rounded = sorted({one.kg for one in sets if one.rounds})
    if not rounded:
        return None

    def against(split: float | None) -> int:
        """Return the weight of the sets that would be wrong if every load from this one on rounded; None: none does."""
        return sum(FILM_COUNTS if one.film else 1 for one in sets if one.rounds is not (split is not None and one.kg >= split))

    best = min(rounded, key=lambda split: (against(split), split))
    if against(best) >= against(None):
        return None
    clean = [one.kg for one in sets if not one.rounds and one.kg < best]
    return Bracket(max(clean, default=None), best)
