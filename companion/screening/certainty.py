"""The share of draws in which the decision rule comes out the same, told beside a ruling.

The grades are this project's choices, readings have an error, and nobody knows how well a lifter repeats a depth told by eye. So each
is drawn (all choices, stated here):

- the weight of each row of the evidence table, log-normal about its grade: weak 1, moderate 2, strong 4, times exp(0.2 z). The grade
  is read back from the weight at the geometric middles, so a row is a step off in one draw of twelve; both sides share a row's weight;
- a measured number, normal with the error of its method: a row holds where the true value lies on its side of the line;
- a depth by eye, a band off either way in a share of draws that is itself drawn evenly from none to 15 %. A squat that was looked at
  twice, to the same band, is taken to be there. "Later" that was "the same" then speaks the other way.

The share is no probability that the cause is right: it says how much the outcome hangs on our choices and on noise.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import sqrt
from typing import TYPE_CHECKING, Final

from companion.screening.evidence import PARTS_BY_CAUSE, Finding, Grade
from companion.screening.readings import SIDES
from companion.screening.rulings import TESTS_AGREEING, Ruling, Verdict, settling_test
from companion.screening.sources import SOURCES, value

if TYPE_CHECKING:
    import numpy as np
    from numpy.random import Generator
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Truths = NDArray[np.bool_]
    Ints = NDArray[np.int64]

RULING_DRAWS: Final = int(value("draws"))
RULING_SEED: Final = 16
WEIGHT_SPREAD: Final = value("weight_spread")
SLIPS_MOST: Final = value("slips_most")
HOLDS_FROM: Final = value("ruling_holds")
"""A cause is likely, or ruled out, only where the rule comes out so in this share of draws (choice)."""

_BASE: Final = dict(zip(Grade, (0.0, *SOURCES["evidence_weights"].value), strict=True))
_MODERATE_FROM, _STRONG_FROM = (sqrt(one * other) for one, other in pairwise(SOURCES["evidence_weights"].value))
_SIGN: Final = {"for": 1, "against": -1, "neither": 0}


def settled(verdicts: Sequence[Verdict], findings: Sequence[Finding], done: Collection[str] = ()) -> tuple[Verdict, ...]:
    """Return the verdicts with their share of draws; one that holds in too few is too close to call."""
    held = []
    for verdict in verdicts:
        if verdict.ruling not in (Ruling.LIKELY, Ruling.RULED_OUT):
            held.append(verdict)
            continue
        share, swing = share_of(verdict.cause, verdict.ruling, findings)
        told = replace(verdict, share=share, swing=swing.words if swing else "")
        if share < HOLDS_FROM and swing:
            parts = tuple(replace(one, ruling=Ruling.TOO_CLOSE) if one.ruling is Ruling.LIKELY or one.part == swing.part else one
                          for one in verdict.parts)
            told = replace(told, ruling=Ruling.TOO_CLOSE, leaning=verdict.ruling, together=(), parts=parts, part=verdict.part or swing.part,
                           settle=settling_test(swing.part, verdict.because, done))
        held.append(told)
    return tuple(held)


def share_of(cause: str, ruling: Ruling, findings: Sequence[Finding]) -> tuple[float, Finding | None]:
    """Return the share of draws in which the rule gives this ruling for a cause, and the finding whose change most often undoes it
    (None if nothing does)."""
    about = sorted((one for one in findings if one.part in PARTS_BY_CAUSE[cause] and one.row.direction != "neither"
                    and one.grade > Grade.NONE), key=lambda one: (one.row.id, one.side, one.words))
    if not about:
        return 1.0, None
    grades, signs = drawn(about)
    same = ruled(PARTS_BY_CAUSE[cause], about, grades, signs) == ruling.rank
    lost = [float((~same & ((grades[n] != one.grade.rank) | (signs[n] != _SIGN[one.row.direction]))).mean())
            for n, one in enumerate(about)]
    worst = max(range(len(about)), key=lambda n: lost[n])
    return float(same.mean()), about[worst] if lost[worst] > 0 else None


def source_of(name: str) -> Generator:
    """Return the source of luck of a name, the same every time."""
    import numpy as np

    return np.random.default_rng([RULING_SEED, *name.encode()])


@cache
def _normal(name: str) -> Floats:
    """Return normal draws for a name, the same every time: what else was found changes nothing."""
    return source_of(name).standard_normal(RULING_DRAWS)


@cache
def _slips(name: str) -> Ints:
    """Return by how many bands the eye slipped in each draw at one squat; how often it does differs from draw to draw."""
    import numpy as np

    often, luck = source_of("slips").random(RULING_DRAWS) * SLIPS_MOST, source_of(name)
    return np.where(luck.random(RULING_DRAWS) < often, luck.choice((-1, 1), RULING_DRAWS), 0)


def drawn(about: Sequence[Finding]) -> tuple[Ints, Ints]:
    """Return each finding's grade (a rank) and sign in each draw: two arrays of findings by draws."""
    import numpy as np

    grades, signs = np.empty((len(about), RULING_DRAWS), dtype=np.int64), np.empty((len(about), RULING_DRAWS), dtype=np.int64)
    for n, one in enumerate(about):
        weight = _BASE[one.grade] * np.exp(WEIGHT_SPREAD * _normal(f"{one.row.id} weight"))
        grades[n] = 1 + (weight >= _MODERATE_FROM) + (weight >= _STRONG_FROM)
        signs[n] = _SIGN[one.row.direction]
        if one.margin is not None:
            signs[n][_normal(f"{one.row.test} {one.side}") > one.margin] = 0
        if one.bands is not None:
            moved = one.bands + _slips(one.row.finding) - (_slips(one.row.test) if one.looks > 1 else 0)
            speaks_for = np.sign(one.bands) if one.row.direction == "for" else -1 if one.part in PARTS_BY_CAUSE["strength"] else 1
            signs[n] = np.where(moved * speaks_for > 0, 1, -1)
    return grades, signs


def ruled(parts: Sequence[str], about: Sequence[Finding], grades: Ints, signs: Ints) -> Ints:
    """Return the rank of the rule's ruling on a cause in each draw, as ``rulings.decide`` has it."""
    import numpy as np

    decisive, strong = grades >= Grade.MODERATE.rank, grades == Grade.STRONG.rank

    def enough(own: Sequence[int], speaking: Truths) -> Truths:
        return np.asarray((speaking & strong[own]).any(axis=0) | (tests_in(about, own, speaking) >= TESTS_AGREEING))

    worst: Ints = np.zeros(RULING_DRAWS, dtype=np.int64)
    for side in SIDES if any(one.side for one in about) else SIDES[:1]:
        on_side: Ints = np.zeros(RULING_DRAWS, dtype=np.int64)
        here = [n for n, one in enumerate(about) if one.side in ("", side)]
        for_it = np.zeros(signs.shape, dtype=np.bool_)  # decisive, of a part that nothing decisive speaks against
        for part in parts:
            own = [n for n in here if about[n].part == part]
            speaks = decisive[own] & (signs[own] > 0)
            kilos = np.array([about[n].kg or 0.0 for n in own])[:, None]
            against = decisive[own] & (signs[own] < 0) & (kilos >= np.where(speaks, kilos, 0.0).max(axis=0, initial=0.0))
            tested = (signs[[n for n in own if not about[n].row.hint]] != 0).any(axis=0)
            any_for, any_against = speaks.any(axis=0), against.any(axis=0)
            for_it[own] = speaks & ~any_against
            ruling = np.select([enough(own, against) & ~any_for, tested | (any_for & any_against)],
                               [Ruling.RULED_OUT.rank, Ruling.TOO_CLOSE.rank], Ruling.NOT_TESTED.rank)
            on_side = np.maximum(on_side, ruling)
        likely = enough(here, for_it[here]) & _mattered(about, here, signs)
        worst = np.maximum(worst, np.where(likely, Ruling.LIKELY.rank, on_side))
    return worst


def _mattered(about: Sequence[Finding], own: Sequence[int], signs: Ints) -> Truths:
    """Return in which draws nothing of these findings speaks of length, or a changed squat does, as ``rulings`` has it."""
    import numpy as np

    length = [n for n in own if about[n].part in PARTS_BY_CAUSE["length"]]
    speaks = signs[length] > 0
    trials = np.array([about[n].row.trial for n in length], dtype=np.bool_)[:, None]
    return np.asarray(~speaks.any(axis=0) | (speaks & trials).any(axis=0))


def tests_in(about: Sequence[Finding], own: Iterable[int], mask: Truths) -> Ints:
    """Return in each draw from how many different tests the findings in a mask come."""
    import numpy as np

    names = [about[n].row.test for n in own]
    each = [mask[[name == test for name in names]].any(axis=0) for test in dict.fromkeys(names)]
    return np.asarray(np.array(each).reshape(-1, RULING_DRAWS).sum(axis=0, dtype=np.int64))


def share_words(share: float) -> str:
    """Return a share in words, rounded down: "in 9 of 10"."""
    return f"in {int(share * 10 + 1e-9)} of 10"
