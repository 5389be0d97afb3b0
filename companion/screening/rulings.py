"""The decision rule, from findings to a verdict on length, strength and control.

Likely: one strong finding for, or two moderate ones from different tests. Ruled out: one strong or two moderate
against, and none moderate or more for. Moderate or more on both sides: too close to call. Weak ones decide nothing.
Each part is judged on each side; the worse side decides. Length is ruled out only where hip, hamstrings and calf are,
on both sides; it is likely where one part is, or two parts on one side together reach it, and only where one of the lifter's own
changes that spare the part moved the rounding: ranges alone were called likely in a third of made-up lifters in whom they had nothing to
do with it (tests/clinic).
The rule and its grades are this project's choice.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import PART_WORDS, PARTS_BY_CAUSE, Finding, Grade
from companion.screening.ordinal import Ranked
from companion.screening.protocols import protocol, routed
from companion.screening.readings import SIDES
from companion.screening.sources import SOURCES, value


class Ruling(Ranked):
    """The ruling on a cause or part; the worse later, so that the worse side decides."""

    RULED_OUT = "ruled_out"
    NOT_TESTED = "not_tested"
    TOO_CLOSE = "too_close"
    LIKELY = "likely"


@dataclass(frozen=True, slots=True)
class PartVerdict:
    """A part's ruling, that of its worse side, and its findings."""

    part: str
    ruling: Ruling
    because: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Verdict:
    """A cause's ruling and its grounds.

    ``side``: "left", "right", "both", or "" if the sides were not told apart. ``by_elimination``: rounding seen, the other two ruled out,
    this one open; weaker than likely. ``part``: the part that decided, else the open one with the most weight for it ("" for none).
    ``because``: the findings, those behind the ruling first. ``contradiction``: a sentence on tests that disagree. ``load``: the loads at
    which strength was ruled out. ``settle``: the most informative test to do next, "" if the cause is likely or ruled out. ``left_by``: the
    findings that ruled the other two out, for a cause left by elimination. ``together``: the parts that only together make it likely.
    ``share``: of draws in which the rule comes out the same (``certainty``), ``swing``: the finding that most often undoes it;
    ``leaning``: the ruling that holds in too few draws, so that it is too close to call.
    """

    cause: str
    ruling: Ruling
    side: str = ""
    part: str = ""
    parts: tuple[PartVerdict, ...] = ()
    because: tuple[Finding, ...] = ()
    contradiction: str = ""
    load: str = ""
    settle: str = ""
    by_elimination: bool = False
    left_by: tuple[Finding, ...] = ()
    together: tuple[str, ...] = ()
    share: float | None = None
    swing: str = ""
    leaning: Ruling | None = None


TESTS_AGREEING: Final = int(value("rule"))  # tests that agree, with a moderate finding each
_WEIGHT: Final = dict(zip(Grade, (0, *map(int, SOURCES["evidence_weights"].value)), strict=True))


def decide(findings: Iterable[Finding], done: Collection[str] = ()) -> tuple[Verdict, ...]:
    """Return the verdicts on length, strength and control, in that order, before elimination. ``done``: tests that ``settle``
    must not name."""
    found = tuple(findings)
    return tuple(_cause(cause, parts, found, done) for cause, parts in PARTS_BY_CAUSE.items())


def weight_for(part: str, findings: Iterable[Finding]) -> int:
    """Return the weight of the findings for a part: weak 1, moderate 2, strong 4 (choice; only to choose among parts)."""
    return sum(_WEIGHT[f.grade] for f in findings if f.part == part and f.row.direction == "for")


def settling_test(part: str, findings: Sequence[Finding], done: Collection[str] = ()) -> str:
    """Return the most informative test about a part: the best graded one without a finding yet; else the best graded one.

    Of equal grades, the one easiest to do right (choice). "" if all of them are in ``done``.
    """
    spoken = {f.row.test for f in findings if f.part == part and f.grade >= Grade.MODERATE}
    tell = [one for one in routed().values() if one.id not in done and one.grade_about(part) >= Grade.MODERATE]
    best = min(tell, key=lambda one: (one.id in spoken, -one.grade_about(part).rank, one.ease), default=None)
    return best.id if best else ""


def _cause(cause: str, parts: Sequence[str], found: tuple[Finding, ...], done: Collection[str]) -> Verdict:
    """Return the verdict on one cause: its parts on each side; the worse side decides."""
    about = tuple(sorted((f for f in found if f.part in parts), key=lambda f: (-f.grade.rank, f.row.id, f.side)))
    judged = {(part, side): _ruling(_on(about, part, side)) for part in parts for side in SIDES}
    sides = {side: _combined([(judged[part, side], _on(about, part, side)) for part in parts]) for side in SIDES}
    ruling = max(sides.values())
    worse = [side for side in SIDES if sides[side] == ruling]
    part_verdicts = tuple(PartVerdict(part, max(judged[part, side] for side in SIDES), tuple(f for f in about if f.part == part))
                          for part in parts)
    speaking = [f for f in about if not f.side or f.side in worse]
    part = max(parts, key=lambda name: (
        max(judged[name, side] for side in worse) == Ruling.LIKELY,
        max(_deciding(_on(about, name, side)) for side in worse),
        max(judged[name, side] for side in worse) != Ruling.RULED_OUT,
        weight_for(name, speaking)))
    alone = [side for side in worse if judged[part, side] == Ruling.LIKELY]
    together: tuple[str, ...] = ()
    if ruling == Ruling.LIKELY and alone:
        worse = alone
    elif ruling == Ruling.LIKELY:
        together = tuple(name for name in parts if any(
            _deciding(_on(about, name, side)) for side in worse))
    open_parts = [p for p in part_verdicts if p.ruling in (Ruling.TOO_CLOSE, Ruling.NOT_TESTED)]
    settled = ruling in (Ruling.LIKELY, Ruling.RULED_OUT)
    return Verdict(
        cause, ruling, _side(worse, part, about) if ruling != Ruling.RULED_OUT else "",
        part if weight_for(part, speaking) else "", part_verdicts, _carrying_first(ruling, about),
        _contradiction(part_verdicts),
        _load(about) if ruling == Ruling.RULED_OUT else "",
        "" if settled else settling_test(max(open_parts, key=lambda p: weight_for(p.part, about)).part, about, done),
        together=together)


def _carrying_first(ruling: Ruling, about: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the findings against first if the cause is ruled out, else those for it; within each the order is kept."""
    order = ("against", "for", "neither") if ruling == Ruling.RULED_OUT else ("for", "against", "neither")
    return tuple(sorted(about, key=lambda f: order.index(f.row.direction)))


def _on(findings: Iterable[Finding], part: str, side: str) -> list[Finding]:
    """Return the findings about a part that count on a side."""
    return [f for f in findings if f.part == part and f.side in ("", side)]


def _decisive(findings: Sequence[Finding], direction: str) -> list[Finding]:
    """Return the findings of a direction that are moderate or more. What was clean at a load cancels nothing that was seen at a heavier
    one: it is left out, and counts again as soon as nothing heavier speaks for the part."""
    decisive = [f for f in findings if f.grade >= Grade.MODERATE]
    heaviest = max((f.kg for f in decisive if f.row.direction == "for" and f.kg is not None), default=0.0)
    return [f for f in decisive if f.row.direction == direction
            and not (direction == "against" and heaviest and (f.kg or 0.0) < heaviest)]


def _deciding(findings: Sequence[Finding]) -> int:
    """Return the weight of what points to a part, moderate or more, where nothing as weighty points away from it."""
    return 0 if _decisive(findings, "against") else sum(_WEIGHT[f.grade] for f in _decisive(findings, "for"))


def _mattered(findings: Iterable[Finding]) -> bool:
    """True if nothing speaks of length, or one of the lifter's own changed squats does speak for it: a range taken on the floor tells how
    far something goes, not that it rounds the back (Berglund 2024, abstract, read: ranges and rounding did not go together)."""
    about = [f for f in findings if f.part in PARTS_BY_CAUSE["length"] and f.row.direction == "for" and f.grade > Grade.NONE]
    return not about or any(f.row.trial for f in about)


def _enough(findings: Sequence[Finding]) -> bool:
    """True for one strong finding, or moderate ones from enough tests."""
    return any(f.grade == Grade.STRONG for f in findings) or len({f.row.test for f in findings}) >= TESTS_AGREEING


def _ruling(findings: Sequence[Finding]) -> Ruling:
    """Return the ruling on one part on one side."""
    speaks_for, against = _decisive(findings, "for"), _decisive(findings, "against")
    if speaks_for and against:
        return Ruling.TOO_CLOSE
    if _enough(speaks_for) and _mattered(findings):
        return Ruling.LIKELY
    if _enough(against):
        return Ruling.RULED_OUT
    return Ruling.TOO_CLOSE if any(not f.row.hint for f in findings) else Ruling.NOT_TESTED


def _combined(parts: Sequence[tuple[Ruling, Sequence[Finding]]]) -> Ruling:
    """Return the ruling on a cause on one side: the worst of its parts, or likely if parts together reach it."""
    uncontradicted = [f for _, findings in parts if not _decisive(findings, "against")
                      for f in _decisive(findings, "for")]
    mattered = _mattered(f for _, findings in parts for f in findings)
    return Ruling.LIKELY if _enough(uncontradicted) and mattered else max(ruling for ruling, _ in parts)


def _side(worse: Sequence[str], part: str, about: Iterable[Finding]) -> str:
    """Return the side to name: one, "both", or "" if no finding tells the sides apart."""
    if len(worse) == 1:
        return worse[0]
    return "both" if any(f.side for f in about if f.part == part) else ""


def contradiction(part: PartVerdict) -> tuple[Finding, Finding] | None:
    """Return the strongest finding for a part and the strongest against it, moderate or more, on one side; None if none disagree."""
    for side in SIDES:
        on_side = _on(part.because, part.part, side)
        speaks_for, against = _decisive(on_side, "for"), _decisive(on_side, "against")
        if speaks_for and against:
            return speaks_for[0], against[0]
    return None


def _contradiction(parts: Iterable[PartVerdict]) -> str:
    """Return a sentence naming the tests for and against one part; "" if none disagree."""
    for part in parts:
        if clash := contradiction(part):
            one, other = (protocol(finding.row.test).short_name for finding in clash)
            return f"{PART_WORDS[part.part].capitalize()}: the {one} points to it, the {other} points away from it."
    return ""


def _load(about: Sequence[Finding]) -> str:
    """Return the loads of the findings against, moderate or more, in words."""
    return " and ".join(dict.fromkeys(f.load for f in _decisive(about, "against") if f.load))
