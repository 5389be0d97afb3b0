"""The depth to keep to, from squat day to squat day: a small state machine over what was told of each.

Two squat days in a row clean at the set depth move it a band deeper, movement felt moves it a band back, pain closes it until
a safety check; never more than a band a day, never past the lifter's usual depth or what a coach has pinned, and deeper only
with film within the week (evidence-and-drills, choice).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final, Literal

from transitions import Machine

from companion.screening.depth import BAND_WORDS, Band

Outcome = Literal["clean", "moved", "other"]

FILM_WITHIN: Final = timedelta(days=7)
STATES: Final = ("open", "one_clean", "closed")
TRIGGERS: Final = ("clean", "moved", "other", "hurt", "checked")


@dataclass(frozen=True, slots=True)
class DepthDay:
    """One squat day: "clean" (kept to the depth set, back still), "moved" (the back moved, no deeper than set) or "other",
    which tells nothing of the depth. ``film``: judged on film; ``hurt``: something hurt; ``checked``: a safety check passed
    before it."""

    day: date
    outcome: Outcome
    film: bool = False
    hurt: bool = False
    checked: bool = False


@dataclass(frozen=True, slots=True)
class DepthStep:
    """The depth as it stands. ``clean``: clean days in a row that count, 0 or 1. ``closed``: no loaded work before a safety
    check. ``change``: what the last day did to it. ``history``: the depth after each day, for a chart."""

    depth: Band
    clean: int
    closed: bool
    change: Literal["deeper", "back", "same"]
    why: str
    history: tuple[tuple[date, Band], ...] = ()


class _Fold:
    """What the machine moves: the band, its ceiling, the last film."""

    def __init__(self, start: Band, ceiling: Band) -> None:
        self.state, self.band, self.ceiling = "open", min(start, ceiling), ceiling
        self.film: date | None = None
        self.today = date.min
        self.why = ""

    def filmed(self) -> bool:
        return self.film is not None and self.today - self.film <= FILM_WITHIN

    def may_deepen(self) -> bool:
        return self.band < self.ceiling and self.filmed()

    def deeper(self) -> None:
        self.band = list(Band)[self.band.rank + 1]
        self.why = f"Two clean days in a row: next time a step deeper, {BAND_WORDS[self.band]}."

    def back(self) -> None:
        if self.band is Band.WELL_ABOVE:
            self.why = f"The back moved at {BAND_WORDS[self.band]}, the highest step. Go lighter, and let somebody watch."
        else:
            self.band = list(Band)[self.band.rank - 1]
            self.why = f"The back moved: next time a step higher, {BAND_WORDS[self.band]}."

    def first(self) -> None:
        self.why = f"One clean day at {BAND_WORDS[self.band]}. One more in a row, and it goes a step deeper."
        if self.band >= self.ceiling:
            self.why = f"Clean at {BAND_WORDS[self.band]}, and that is as deep as it goes here."

    def held(self) -> None:
        self.why = (f"Clean at {BAND_WORDS[self.band]}, and that is as deep as it goes here." if self.band >= self.ceiling else
                    f"Clean again at {BAND_WORDS[self.band]}. A step deeper needs one day a week judged on film, from the side.")

    def stayed(self) -> None:
        self.why = f"It stays at {BAND_WORDS[self.band]}."

    def shut(self) -> None:
        self.why = f"Something hurt, so no loaded squats before a safety check. The depth stays at {BAND_WORDS[self.band]}."


def _row(trigger: str, source: str, dest: str, after: str, conditions: str = "") -> dict[str, str]:
    row = {"trigger": trigger, "source": source, "dest": dest, "after": after}
    return row | ({"conditions": conditions} if conditions else {})


TABLE: Final = (
    _row("clean", "open", "one_clean", "first"),
    _row("clean", "one_clean", "open", "deeper", "may_deepen"),
    _row("clean", "one_clean", "one_clean", "held"),
    _row("clean", "closed", "closed", "shut"),
    _row("moved", "open", "open", "back"),
    _row("moved", "one_clean", "open", "back"),
    _row("moved", "closed", "closed", "shut"),
    _row("other", "open", "open", "stayed"),
    _row("other", "one_clean", "open", "stayed"),
    _row("other", "closed", "closed", "shut"),
    *(_row("hurt", state, "closed", "shut") for state in STATES),
    _row("checked", "open", "open", "stayed"),
    _row("checked", "one_clean", "one_clean", "stayed"),
    _row("checked", "closed", "open", "stayed"),
)
"""Every trigger in every state; of two rows the first whose condition holds."""

_MACHINE: Final = Machine(model=None, states=list(STATES), transitions=list(TABLE), initial="open", auto_transitions=False)


def _happens(fold: _Fold, trigger: str) -> None:
    _MACHINE.events[trigger].trigger(fold)


def steps_from(start: Band, ceiling: Band | None, days: Sequence[DepthDay]) -> DepthStep:
    """The depth after squat days told in order, at most one a date. ``ceiling``: the usual depth, or what a coach has pinned;
    None: no deeper than the start, where nobody has said how deep they usually go."""
    fold = _Fold(start, start if ceiling is None else ceiling)
    change: Literal["deeper", "back", "same"] = "same"
    fold.stayed()
    history: list[tuple[date, Band]] = []
    for day in days:
        before, fold.today = fold.band, day.day
        if day.checked:
            _happens(fold, "checked")
        if day.film and day.outcome != "other":
            fold.film = day.day
        _happens(fold, "hurt" if day.hurt else day.outcome)
        change = "same" if fold.band is before else "deeper" if fold.band > before else "back"
        history.append((day.day, fold.band))
    return DepthStep(fold.band, int(fold.state == "one_clean"), fold.state == "closed", change, fold.why, tuple(history))
