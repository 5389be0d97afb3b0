"""Orders and limits that hold for a lifter now, since when, by whom and until when: depth, load, set-up, drill and retest date. Pure.

Every page of a coach, the report and the lifter's own list of coaches read it from here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Final

from companion.base.clock import local_date
from companion.record.log import KeptFact, KeptFinding
from companion.record.orders import Holding
from companion.screening.depth import BAND_WORDS, Band, band_of
from companion.screening.evidence import PART_WORDS
from companion.screening.load_limit import WHOSE, at_most, limit_now
from companion.screening.readings import NumberFormat

AFTER_SQUATS: Final = "after the last squat day"
FROM_TESTS: Final = "from the tests"
PIN_FACTS: Final[Mapping[str, str]] = {"depth": "depth.pin", "load": "load.pin", "raised": "load.raised", "setup": "setup.pin",
                                       "drill": "drill.pin", "retest": "retest.pin"}


@dataclass(frozen=True, slots=True)
class Held:
    """One thing that holds. ``title`` and ``words``: what; ``whose``: who or what set it, ``why`` the reason given; ``since`` and
    ``until``: days, None where not known or without an end; ``beside``: what would hold without it, "" for nothing."""

    title: str
    words: str
    whose: str
    why: str = ""
    since: date | None = None
    until: date | None = None
    beside: str = ""

    @property
    def line(self) -> str:
        """All of it after its title: "60 kg at most (set by coach Ada: tired; since 3 Mar, until 1 May); from the tests: 70 kg at most"."""
        days = ", ".join(f"{name} {day.day} {day:%b}" for name, day in (("since", self.since), ("until", self.until)) if day)
        by = f"{self.whose}: {self.why.rstrip('. ')}" if self.why else self.whose
        return f"{self.words} ({'; '.join(filter(None, (by, days)))})" + (f"; {self.beside}" if self.beside else "")


def depth_now(pin: object, pin_at: datetime | None, keep: object, told_at: datetime | None, step: object,
              step_at: datetime | None) -> tuple[Band, str] | None:
    """Return the depth to keep to and which of the three set it ("pin", "keep", "step"): a coach's or the tests', until a squat day after
    it has moved it. None where none is set."""
    pinned, kept, moved = (band_of(str(one or "")) for one in (pin, keep, step))
    since = pin_at if pinned else told_at
    if moved and step_at is not None and (since is None or step_at > since):
        return moved, "step"
    return (pinned, "pin") if pinned else (kept, "keep") if kept else None


def holding(kept: Mapping[str, KeptFact], found: Mapping[str, KeptFinding], orders: Mapping[str, Holding], zone: str,
            show: NumberFormat) -> tuple[Held, ...]:
    """Return what holds for a lifter, of the facts and findings kept of them. ``orders``: of the order behind a fact, the day on
    which it ends and the orders that differ."""
    facts = {name: one.value for name, one in kept.items()}
    set_by = {name: one for name in PIN_FACTS.values() if (one := found.get(name)) and one.value}

    def of_coach(title: str, name: str, words: str, beside: str = "") -> Held:
        """Return what a coach has set."""
        one, order = set_by.get(name), orders.get(name, Holding("", ""))
        beside = "; ".join(filter(None, (f"not settled, {order.differs}" if order.differs else "", beside)))
        return Held(title, words, one.rule if one else "set by a coach", one.because if one else "",
                    local_date(one.at, zone) if one else None, _day(order.until), beside)

    def depth() -> Held | None:
        """Return the depth to keep to."""
        pin, step = kept.get("depth.pin"), kept.get("depth.step")
        now = depth_now(facts.get("depth.pin"), pin.at if pin else None, facts.get("depth.keep"), moment_from(facts.get("outcome.at")),
                        facts.get("depth.step"), step.at if step else None)
        if now is None:
            return None
        band, by = now
        if by == "pin":
            keep = band_of(str(facts.get("depth.keep", "")))
            return of_coach("Depth", "depth.pin", BAND_WORDS[band], f"{FROM_TESTS}: {BAND_WORDS[keep]}" if keep else "")
        why = found["depth.step"].because if by == "step" and "depth.step" in found else ""
        since = local_date(step.at, zone) if by == "step" and step else _day(facts.get("depth.since"))
        return Held("Depth", BAND_WORDS[band], AFTER_SQUATS if by == "step" else FROM_TESTS, why, since)

    def load() -> Held | None:
        """Return the load limit."""
        now = limit_now(facts)
        if now is None:
            return None
        name, kg = now
        others = [f"{whose}: {show(other[1], 'kg')}" for one, whose in WHOSE.items()
                  if one != name and (other := limit_now({one: facts.get(one)}))]
        words, beside = at_most(kg, show), ", ".join(others)
        if name in set_by:
            return of_coach("Load", name, words, beside)
        return Held("Load", words, WHOSE[name], "", _day(facts.get("load.since")) if name == "load.limit" else None, None, beside)

    def setup() -> Held | None:
        """Return the set-up to squat with."""
        from companion.screening.setups import called, setup_from

        one = setup_from(facts)
        if one is None:
            return None
        words = called(one.change, show)
        if "setup.pin" in set_by:
            return of_coach("Set-up", "setup.pin", words)
        checked = found.get("setup.change")
        return Held("Set-up", words, "checked, no pinch or pain", checked.because if checked else "")

    def drill() -> Held | None:
        """Return the drill that is offered."""
        pinned, own = str(facts.get("drill.pin", "")), str(facts.get("drill", ""))
        if pinned:
            return of_coach("Drill", "drill.pin", f"for the {PART_WORDS.get(pinned, pinned)}")
        return Held("Drill", f"for the {PART_WORDS.get(own, own)}", FROM_TESTS) if own not in ("", "none") else None

    day = _day(facts.get("retest.pin"))
    retest = of_coach("Retest", "retest.pin", f"{day:%A} {day.day} {day:%b}") if day else None
    return tuple(one for one in (depth(), load(), setup(), drill(), retest) if one)


def _day(text: object) -> date | None:
    try:
        return date.fromisoformat(str(text or ""))
    except ValueError:
        return None


def moment_from(text: object) -> datetime | None:
    """Return the moment in a fact; None where it is not one. A time without a zone counts as UTC."""
    if not text:
        return None
    try:
        moment = datetime.fromisoformat(str(text))
    except ValueError:
        return None
    return moment if moment.tzinfo else moment.replace(tzinfo=UTC)
