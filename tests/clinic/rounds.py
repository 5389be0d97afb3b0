"""A round of the clinic: many made-up lifters through the real flows, and what came out beside what is true of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from math import sqrt
from statistics import median
from typing import Final

from companion.screening.rulings import Ruling
from companion.screening.setups import NAMES, parts
from tests.clinic.lifters import PARTS, drawn
from tests.clinic.visit import Visit

MIX: Final[tuple[tuple[str, frozenset[str]], ...]] = (
    *(("geometry", frozenset([part])) for part in PARTS), ("geometry", frozenset()), ("geometry", frozenset(["calf", "control"])),
    ("geometry", frozenset(["hip", "trunk"])), ("unrelated", frozenset()), ("reversed", frozenset()))
"""What is true of the lifters, in turn: one limit, none, two at once; and the worlds the bot's geometry does not hold."""


@dataclass(frozen=True, slots=True)
class Seen:
    """One visit: what is true, what was ruled, and what it took. ``gain``: whether a set-up was found to help; ``helps``: whether it does,
    by the lifter's own body without any noise."""

    world: str
    limits: frozenset[str]
    causes: frozenset[str]
    rulings: dict[str, Ruling]
    shares: dict[str, float]
    part: str
    overall: str
    tried: bool
    gain: bool
    helps: bool
    replies: int
    minutes: float
    before_moving: int
    change: str
    took: dict[str, float]

    @property
    def told(self) -> tuple[object, ...]:
        """What a lifter takes home: picture, part to drill, set-up, and which causes are likely, ruled out or open; these not where there
        is nothing to fix."""
        settled = {cause: ruling if ruling in (Ruling.LIKELY, Ruling.RULED_OUT) else None for cause, ruling in self.rulings.items()}
        return self.overall, self.part, self.change, None if self.overall in AT_REST else tuple(settled.values())


AT_REST: Final = ("normal", "no_rounding")
PROCESSES, SOME = 2, 50
"""How many work at once, and how many lifters each takes at a time."""


def visits(lifters: int, route: str = "full_screen", first: int = 0) -> Iterator[Seen]:
    """Yield so many visits, the same ones every time. A lifter answers a question alike on every route."""
    for n in range(first, first + lifters):
        world, limits = MIX[n % len(MIX)]
        lifter = drawn(world, limits, n)
        visit = Visit(lifter, route)
        told = visit.live()
        change = str(visit.known.get("setup.change", ""))
        names = {one.name for one in parts(change)}
        moved = lifter.start(lift=2.5 * ("heels" in names), turned=10.0 * ("wide" in names), held=3.5 * ("front" in names),
                             slow="slow" in names) - lifter.start() if names else 0.0
        yield Seen(world, limits, lifter.causes, {one.cause: one.ruling for one in told.verdicts},
                   {one.cause: one.share for one in told.verdicts if one.share is not None}, told.part, told.overall,
                   visit.known.get("setup.proposed") in NAMES, visit.known.get("setup.state") == "waits", moved > 2.0,
                   visit.replies, visit.seconds / 60, visit.before_moving, change, dict(visit.took))


def both_routes(lifters: int) -> tuple[list[Seen], list[Seen]]:
    """Return so many visits on the full and on the short route, by two processes."""
    firsts = range(0, lifters, SOME)
    with ProcessPoolExecutor(PROCESSES) as pool:
        full, decided = ([one for some in pool.map(_some, [route] * len(firsts), firsts, [lifters] * len(firsts)) for one in some]
                         for route in ("full_screen", "screen"))
    return full, decided


def _some(route: str, first: int, lifters: int) -> list[Seen]:
    return list(visits(min(SOME, lifters - first), route, first))


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure: its name, how many of how many, and the bound it is held to ("" for none)."""

    name: str
    part: int
    of: int
    bound: str = ""

    @property
    def share(self) -> float:
        """The share, 0 where there was nobody."""
        return self.part / self.of if self.of else 0.0

    @property
    def words(self) -> str:
        """The share with its 95 % interval (Wilson)."""
        if not self.of:
            return "–"
        z, p, n = 1.96, self.share, self.of
        middle, half = (p + z * z / (2 * n)) / (1 + z * z / n), z * sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / (1 + z * z / n)
        return f"{100 * p:.1f} % ({100 * max(middle - half, 0):.1f}–{100 * (middle + half):.1f}; {self.part} of {self.of})"


def figures(seen_by: Iterable[Seen]) -> tuple[list[Figure], list[Seen]]:
    """Return the figures of a round, and the visits behind them."""
    seen = list(seen_by)
    geometry = [one for one in seen if one.world == "geometry"]
    true = [(one, cause) for one in geometry for cause in one.causes]
    likely = [(one, cause) for one in geometry for cause, ruling in one.rulings.items() if ruling is Ruling.LIKELY]
    lengths = [one for one in geometry if one.rulings["length"] is Ruling.LIKELY and "length" in one.causes and one.part in ("hip",
               "hamstrings", "calf")]
    well = [one for one in geometry if not one.limits]
    rows = [
        Figure("a true cause is called likely", sum(one.rulings[cause] is Ruling.LIKELY for one, cause in true), len(true)),
        Figure("a true cause is ruled out", sum(one.rulings[cause] is Ruling.RULED_OUT for one, cause in true), len(true), "≤ 5 %"),
        Figure("“likely” names a true cause", sum(cause in one.causes for one, cause in likely), len(likely)),
        Figure("the part to drill is a true one, length likely and true", sum(one.part in one.limits for one in lengths), len(lengths)),
        Figure("nothing wrong: a cause is called likely", sum(any(r is Ruling.LIKELY for r in one.rulings.values()) for one in well),
               len(well)),
        Figure("nothing wrong: told as normal, no rounding or not explained",
               sum(one.overall in ("normal", "no_rounding", "unexplained") for one in well), len(well))]
    for world in ("unrelated", "reversed"):
        there = [one for one in seen if one.world == world]
        rows.append(Figure(f"world {world}: a cause is called likely", sum(any(r is Ruling.LIKELY for r in one.rulings.values())
                                                                         for one in there), len(there), "≤ 5 %"))
    tried = [one for one in seen if one.tried]
    rows += [Figure("a set-up is found to help that truly does not, of all visits", sum(one.gain and not one.helps for one in seen),
                    len(seen), "≤ 5 %"),
             Figure("a set-up that was checked is found to help", sum(one.gain for one in tried), len(tried)),
             Figure("a set-up found to help truly does", sum(one.gain and one.helps for one in seen), sum(one.gain for one in seen))]
    for low, high in ((0.8, 0.85), (0.85, 0.9), (0.9, 1.01)):
        there = [(one, cause) for one in geometry for cause, share in one.shares.items() if low <= share < high
                 and one.rulings[cause] in (Ruling.LIKELY, Ruling.RULED_OUT)]
        right = sum((cause in one.causes) == (one.rulings[cause] is Ruling.LIKELY) for one, cause in there)
        rows.append(Figure(f"right where the rule comes out the same in {low:.2f} to {min(high, 1):.2f} of the draws", right, len(there)))
    return rows, seen


def table(full: tuple[Sequence[Figure], Sequence[Seen]], decided: Sequence[Seen]) -> str:
    """Return the figures as a table in Markdown: of every test, and what the screen takes that ends when it is decided, and changes."""
    rows, seen = full
    lines = ["| figure | found | bound |", "|---|---|---|", *(f"| {one.name} | {one.words} | {one.bound} |" for one in rows)]
    for name, those, replies, minutes in (("full screen", seen, "", ""), ("screen that ends when decided", decided, "≤ 60", "≤ 25")):
        lines += [f"| {name}: replies from hello to results, median | {median(one.replies for one in those):g} | {replies} |",
                  f"| {name}: minutes from hello to results, median | {median(one.minutes for one in those):.1f} | {minutes} |",
                  f"| {name}: answers before the first movement beside consent, age and safety, most | "
                  f"{max(one.before_moving for one in those)} | {'≤ 5' if replies else ''} |"]
    lines += [f"| {one.name} | {one.words} | {one.bound} |" for one in agreements(seen, decided)]
    return "\n".join((f"{len(seen)} lifters", "", *lines))


def agreements(full: Sequence[Seen], decided: Sequence[Seen]) -> list[Figure]:
    """Return how often the screen that ends when decided tells the same lifters the same as every test does."""
    pairs = list(zip(full, decided, strict=True))
    return [Figure("the two tell the same: picture, part to drill, set-up and causes, all of it",
                   sum(one.told == other.told for one, other in pairs), len(pairs), "≥ 95 %"),
            Figure("the same part to drill", sum(one.part == other.part for one, other in pairs), len(pairs)),
            Figure("the same set-up", sum(one.change == other.change for one, other in pairs), len(pairs)),
            Figure("the same even to causes told where there is nothing to fix", sum(
                one.told == other.told and one.rulings == other.rulings for one, other in pairs), len(pairs))]


def minutes(decided: Sequence[Seen]) -> str:
    """Return the minutes a test takes where it is done, and the whole screen: the median, for ``numbers/`` and the protocols."""
    tests = sorted({flow for one in decided for flow in one.took})
    took = {flow: [one.took[flow] / 60 for one in decided if one.took.get(flow, 0) > 0] for flow in tests}
    return "\n".join((f"whole: {median(one.minutes for one in decided):.1f}", *(f"{flow}: {median(some):.1f}" for flow, some in took.items()
                                                                              if some)))
