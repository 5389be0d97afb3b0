"""Facts of the screen: the tests that count already, those that are open, and which of them could still change something."""

from __future__ import annotations

from datetime import datetime, timedelta
from functools import lru_cache
from typing import Any, Final

from companion.conversation.condition import Condition, Value, fact
from companion.conversation.flow import Known
from companion.screening.errors import errors_from
from companion.screening.evidence import EvidenceRow, Finding
from companion.screening.findings import findings_of
from companion.screening.next_test import holds_firmly, still_open
from companion.screening.pairs import LOOK, OPENINGS, waiting
from companion.screening.protocol import Protocol
from companion.screening.protocols import protocol, protocols, route
from companion.screening.rulings import Ruling, Verdict
from companion.screening.safety import BodyPosition, Level
from companion.screening.screen import about_from
from companion.screening.sources import value
from flows.outcome_facts import CAUSE_WORDS, concluded, showing, told_at
from flows.shared import BODY_WEIGHT, NO_BAR, closes

COUNTS_FOR = timedelta(days=value("screen_counts"))
"""A test done longer ago than this is done again in a new screen (choice)."""

FULL_MINUTES, SCREEN_MINUTES = (5 * round(value(row) / 5) for row in ("minutes_full_screen", "minutes_screen"))
"""The duration of the full screen and of one that ends when it is decided, to five minutes; measured in the clinic."""

LEVEL = fact("safety.level")
NOT_CHECKED_TODAY = ~fact("safety.level.today").known
RESTED = (~(fact("warm").is_("later") & fact("warm.today").known)
          & ~(fact("safety.sore").is_("yes") & fact("safety.sore.today").known))
SQUATS_OPEN = RESTED & (NOT_CHECKED_TODAY | LEVEL.is_("go"))
FLOOR_OPEN = RESTED & (NOT_CHECKED_TODAY | LEVEL.one_of("go", "no_load"))
NO_FLOOR = fact("at_hand.floor").is_("no") & fact("at_hand.floor.today").known
"""True if they said today that they can't lie down or get down on the floor."""
YEARS: Final = fact("about_you.years")


def tests_done(known: Known, since: datetime | None) -> set[str]:
    """Return the tests done within ``COUNTS_FOR``, and after a moment if one is given."""
    earliest = max(known.now - COUNTS_FOR, since or known.now - COUNTS_FOR)
    return {row.flow for row in known.answers() if row.flow in route() and row.ending == "done" and row.status == "ok"
            and row.at > earliest}


def done_already(known: Known) -> dict[str, Value]:
    """Return the tests that count already: done within ``COUNTS_FOR`` and since the results of the last whole screen."""
    done = tests_done(known, told_at(known, "screen.told"))
    return {f"done_{test}": "yes" for test in route() if test in done} | {"done_before": float(len(done))}


def open_for(test: Protocol[Any]) -> Condition:
    """Return the condition under which the safety level, a clinician's limits and the room there is let a test be offered; its own gates
    follow."""
    open_ = (FLOOR_OPEN if Level.NO_LOAD in test.posture.levels else SQUATS_OPEN) & ~closes(*test.uses)
    if test.posture is not BodyPosition.STANDING:
        open_ = open_ & ~NO_FLOOR
    if "stick" in test.needs:
        open_ = open_ & ~fact("about_you.stick").is_("none")
    if test.posture.barred_in_pregnancy:
        open_ = open_ & ~fact("safety_check.pregnant").one_of("yes", "unsure") & ~fact("safety.pregnant").one_of("yes", "unsure")
    return open_


def wanted(test: Protocol[Any], years_told: bool = True) -> Condition:
    """Return the condition for offering a test: not done, open at this level, and opened by what it needs before it. ``years_told``:
    false for what it needs besides the years of squatting."""
    want: Condition = open_for(test) & ~fact(f"done_{test.id}").known
    if opening := OPENINGS.get(test.id):
        want = want & (fact("about_you.years") >= opening.years) if years_told else want
        for other, key in opening.clean:
            want = want & fact(protocols()[other].key(key)).is_("clean")
        for other, key in opening.not_rounding:
            want = want & ~fact(protocols()[other].key(key)).is_("rounds")
    return want


def what_is_open(known: Known) -> dict[str, Value]:
    """Return the open test that could still change most, what else is open, and in how many minutes; no ``next`` where it is decided
    or, as ``shut`` says, a clinician's limit closes a test that could still change something.

    A test that was once left out, or offered, does not come back in the same screen, so that "at most n left" never grows; one that waits
    for another is counted from the start."""
    facts = {**known.facts, **done_already(known)}
    left = str(known.facts.get("screen.open", "")).split(",")
    screen, conclusion, _ = concluded(known)
    answers = list(known.answers())
    about = about_from(answers)
    found = findings_of(screen, about, showing(known), errors_from(answers, about.sex))

    def worth_doing(facts: dict[str, Value]) -> tuple[str, tuple[str, ...]]:
        tests = [test for test, one in protocols().items() if test in left and test != LOOK.id and _may_come(one, facts, left)]
        names = _worth_doing(tuple(found), conclusion.verdicts, tuple(tests), tuple(waiting(screen).items()), about.load,
                             not (BODY_WEIGHT | NO_BAR | fact("about_you.stick").one_of("broomstick", "none")).holds(facts))
        return next((test for test in names if wanted(protocol(test), "about_you.years" in facts).holds(facts)), ""), names

    first, names = worth_doing(facts)
    if not first:
        unlimited = {name: one for name, one in facts.items() if not name.startswith("limit.")}
        shut = closes(*LOOK.uses).holds(facts) and f"done_{LOOK.id}" not in facts
        return {"shut": "yes"} if shut or (len(unlimited) < len(facts) and worth_doing(unlimited)[0]) else {}
    named = CAUSE_WORDS if set(left) >= set(route()) else {}
    causes = [f"how sure {one.cause} is" if one.ruling in (Ruling.LIKELY, Ruling.RULED_OUT) else named.get(one.cause, one.cause)
              for one in conclusion.verdicts if not holds_firmly(one)]
    return {"next": first, "title": protocol(first).title.lower(), "minutes": float(protocol(first).minutes), "left": float(len(names)),
            "minutes_left": float(sum(protocol(test).minutes for test in names)),
            "still": ", ".join(causes) or "how sure that is", "rest": ",".join(test for test in names if test != first)}


@lru_cache(500)  # many lifters have no result yet, and a test that is left out of a screen leads here at once again
def _worth_doing(found: tuple[Finding, ...], verdicts: tuple[Verdict, ...], tests: tuple[str, ...],
                 waits: tuple[tuple[str, EvidenceRow], ...], usual: float | None, bar: bool) -> tuple[str, ...]:
    """Return the open tests worth doing, the one to do next first."""
    return tuple(test for test, _ in still_open(found, verdicts, tests, dict(waits), usual, bar).tests)


def _may_come(test: Protocol[Any], facts: dict[str, Value], left: list[str]) -> bool:
    """True if a test is open, or could be opened by others that are left, and by years of squatting that were not told yet."""
    if not open_for(test).holds(facts) or f"done_{test.id}" in facts:
        return False
    opening = OPENINGS.get(test.id)
    if opening is None:
        return True
    years = facts.get(YEARS.name, opening.years)
    return isinstance(years, float | int) and years >= opening.years and all(
        other in left or facts.get(protocols()[other].key(key)) == "clean" for other, key in opening.clean)
