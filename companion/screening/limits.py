"""A clinician's limits as data: what is closed, by whom, and until when; what each piece of work needs, and what stays open on a day.

What closes what is our cautious choice (no source): whoever may not bend does not squat here either, and words that could not
be read close everything that moves until somebody has said what they meant.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from functools import lru_cache
from typing import Final

from companion.screening.readings import NumberFormat, metric


class Work(Enum):
    """A kind of work that a test or a drill asks of the body, as far as a limit can close it."""

    MOVE = "move"
    """Any movement at all; every test and drill needs it."""
    SQUAT = "squat"
    BEND = "bend"
    """A deep fold of hips and back: rocking back, hinging, the knee to the chest, the straight leg raised."""
    STRETCH_HIP = "stretch_hip"
    STRETCH_HAMSTRINGS = "stretch_hamstrings"
    STRETCH_CALF = "stretch_calf"
    LOAD = "load"
    """Anything heavier than the body."""

    @property
    def fact(self) -> str:
        """The fact that is "closed" while a limit closes this work."""
        return f"limit.{self.value}"


class LimitPart(Enum):
    """One thing a clinician told somebody to leave out; its value is kept in the file."""

    LOAD = "load"
    SQUATS = "squats"
    BENDING = "bending"
    HIP = "stretch_hip"
    HAMSTRINGS = "stretch_hamstrings"
    CALF = "stretch_calf"
    ELSEWHERE = "elsewhere"
    """Something that nothing here asks for, such as running: kept and shown, closes nothing."""
    TRAINING = "training"
    OTHER = "other"
    """Words that could not be read: they close everything that moves."""


CLOSED_WORK: Final[Mapping[LimitPart, frozenset[Work]]] = {
    LimitPart.LOAD: frozenset((Work.LOAD,)),
    LimitPart.SQUATS: frozenset((Work.SQUAT,)),
    LimitPart.BENDING: frozenset((Work.BEND, Work.SQUAT)),
    LimitPart.HIP: frozenset((Work.STRETCH_HIP,)),
    LimitPart.HAMSTRINGS: frozenset((Work.STRETCH_HAMSTRINGS,)),
    LimitPart.CALF: frozenset((Work.STRETCH_CALF,)),
    LimitPart.ELSEWHERE: frozenset(),
    LimitPart.TRAINING: frozenset(Work),
    LimitPart.OTHER: frozenset(Work),
}
STRETCHES: Final = {LimitPart.HIP: "hip", LimitPart.HAMSTRINGS: "hamstring", LimitPart.CALF: "calf"}
_WORDS: Final = {
    LimitPart.LOAD: "no added load", LimitPart.SQUATS: "no squats", LimitPart.BENDING: "no bending",
    LimitPart.TRAINING: "no training at all",
    LimitPart.ELSEWHERE: "something that is not asked here", LimitPart.OTHER: "something I could not read, so nothing that moves"}
_UNCLEAR: Final = "“{words}”, and so nothing that moves"

WORDS_MOST: Final = 60
"""Characters of the lifter's own words that a page or a message quotes; our choice."""


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit. ``kg``: nothing above it, None where no weight was named. ``until``: the date on which it is asked about, None: it
    stands until somebody is cleared. ``by``: who said so, "" where that is not known; ``words``: the lifter's own; ``elsewhere``: what
    they name that nothing here asks for, "" where that is not known; ``asked``: true where nobody named the date, and it is only asked
    about again on it."""

    parts: frozenset[LimitPart]
    kg: float | None = None
    until: date | None = None
    by: str = ""
    words: str = ""
    elsewhere: str = ""
    asked: bool = False

    @property
    def closes(self) -> frozenset[Work]:
        """The work it closes."""
        return frozenset(work for part in self.parts for work in CLOSED_WORK[part])

    @property
    def asked_about(self) -> bool:
        """True while nothing is known of it but the words: the questions about these are open."""
        return self == Limit(frozenset((LimitPart.OTHER,)), words=self.words)

    def due(self, today: date) -> bool:
        """True from its date on: it stands until it was asked about."""
        return self.until is not None and self.until <= today

    @property
    def end(self) -> str:
        """Its end in words: "until 21 December 2026"."""
        if not self.until:
            return "until cleared"
        return f"{'asked about again on' if self.asked else 'until'} {self.until.day} {self.until:%B %Y}"

    def sooner_than(self, other: Limit) -> bool:
        """True if it ends before another one; until somebody is cleared is the latest."""
        return self.until is not None and (other.until is None or self.until < other.until)

    def said(self, show: NumberFormat = metric) -> str:
        """Return it in one phrase: "no added load, nothing above 60 kg, until 21 December 2026, said by a physiotherapist"."""
        return ", ".join((self.left_out(show), self.end, *([f"said by {self.by}"] if self.by else [])))

    def left_out(self, show: NumberFormat = metric) -> str:
        """Return what it says to leave out: "no added load, nothing above 60 kg"."""
        words = _WORDS | ({LimitPart.OTHER: _UNCLEAR.format(words=self.words)} if self.words else {})
        left_out = [words[part] for part in LimitPart if part in self.parts and part not in (*STRETCHES, LimitPart.ELSEWHERE)]
        stretches = [name for part, name in STRETCHES.items() if part in self.parts]
        if len(stretches) == len(STRETCHES):
            left_out.append("no stretching at all")
        elif stretches:
            left_out.append(f"no stretching of {' or '.join(stretches)}" if stretches[1:] else f"no {stretches[0]} stretching")
        left_out += [f"nothing above {show(self.kg, 'kg')}"] if self.kg is not None else []
        left_out += [f"no {self.elsewhere}"] if self.elsewhere else []
        return ", ".join(left_out or [_WORDS[LimitPart.ELSEWHERE]])


LimitsTold = tuple[Limit, ...]


@lru_cache(64)  # a step reads the same ones a dozen times
def limits_in(text: object) -> LimitsTold:
    """Return the limits of a stored text. One that can't be read closes everything that moves: a doubtful case goes to the safe side."""
    if not text:
        return ()
    try:
        return tuple(Limit(frozenset(map(LimitPart, one["parts"])), None if one["kg"] is None else float(one["kg"]),
                           date.fromisoformat(one["until"]) if one["until"] else None, str(one["by"]), str(one["words"]),
                           str(one.get("elsewhere", "")), bool(one.get("asked")))
                     for one in json.loads(str(text)))
    except (ValueError, KeyError, TypeError):
        return (Limit(frozenset((LimitPart.OTHER,))),)


def as_text(limits: Iterable[Limit]) -> str:
    """Return limits as they are stored; "" for none."""
    rows = [{"parts": sorted(part.value for part in one.parts), "kg": one.kg, "until": one.until.isoformat() if one.until else "",
             "by": one.by, "words": one.words, **({"elsewhere": one.elsewhere} if one.elsewhere else {}),
             **({"asked": True} if one.asked else {})} for one in limits]
    return json.dumps(rows, ensure_ascii=False) if rows else ""


def closed_by(limits: Iterable[Limit]) -> frozenset[Work]:
    """Return the work that limits close."""
    return frozenset(work for one in limits for work in one.closes)


def most_kg(limits: Iterable[Limit]) -> float | None:
    """Return the most that may be lifted by them, in kg: 0 where added load is closed; None where none of them is about load."""
    return min((kg for one in limits if (kg := 0.0 if Work.LOAD in one.closes else one.kg) is not None), default=None)


def words_of(limits: Iterable[Limit], show: NumberFormat = metric) -> str:
    """Return limits in words; "" for none."""
    return "; ".join(one.said(show) for one in limits)


def without(limits: Iterable[Limit], cleared: frozenset[LimitPart], *, load: bool = False) -> LimitsTold:
    """Return what stands after a clearance for these parts; ``load``: for every weight too."""
    left = (replace(one, parts=one.parts - cleared, kg=None if load else one.kg) for one in limits)
    return tuple(one for one in left if one.parts - {LimitPart.ELSEWHERE} or one.kg is not None or (one.parts and one.elsewhere))


def facts_in(limits: LimitsTold, today: date, bar_kg: float, show: NumberFormat = metric) -> dict[str, str | float]:
    """Return what limits make known on a day: "limit.WORK" is "closed" for closed work, "limit.words" says them, "limit.due" is
    "yes" from the date of one of them on, "limit.open" while the questions about one are open, "limit.kg" the most to lift.
    ``bar_kg``: their empty bar, closed where it is heavier."""
    if not limits:
        return {}
    most, closed = most_kg(limits), closed_by(limits)
    if most is not None and most < bar_kg:
        closed |= {Work.LOAD}
    facts: dict[str, str | float] = {"limit.words": words_of(limits, show), **{work.fact: "closed" for work in closed}}
    if most is not None:
        facts["limit.kg"] = most
    facts |= {"limit.due": "yes"} if any(one.due(today) for one in limits) else {}
    return facts | ({"limit.open": "yes"} if any(one.asked_about for one in limits) else {})
