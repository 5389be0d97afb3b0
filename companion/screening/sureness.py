"""The certainty of a ruling, in a word, and the one direct study that speaks against it.

By the findings that carry it (choice): good with a strong one or moderate ones from three tests, fair with less, low for a cause
left by elimination. One step lower where findings contradict each other, and one step lower for length or control called likely,
since the one study of lifters found no such link (``numbers/``: lifters_ankle, lifters_hip, lifters_control). The study is
small and of one day, so it decides nothing: no ruling changes by it.
"""

from __future__ import annotations

from typing import Final

from companion.screening.evidence import Grade
from companion.screening.ordinal import Ranked
from companion.screening.rulings import Ruling, Verdict
from companion.screening.sources import SOURCES, Source, value

DIRECT_STUDY: Final = {"calf": SOURCES["lifters_ankle"], "hip": SOURCES["lifters_hip"], "hamstrings": SOURCES["lifters_hip"],
                       "control": SOURCES["lifters_control"]}
"""By part, what the one study of lifters says against it. A straight leg's raise is a range of the hip too, so it is told of hamstrings."""
TESTS_FOR_GOOD: Final = int(value("sure_tests"))


class Sureness(Ranked):
    """The certainty of a ruling, the least first."""

    LOW = "low"
    FAIR = "fair"
    GOOD = "good"


def contrary_studies(verdict: Verdict) -> tuple[Source, ...]:
    """Return what the one study of lifters says against a cause called likely, for each part that makes it so."""
    if verdict.ruling is not Ruling.LIKELY:
        return ()
    return tuple(dict.fromkeys(DIRECT_STUDY[part] for part in verdict.together or (verdict.part,) if part in DIRECT_STUDY))


def sureness(verdict: Verdict) -> Sureness | None:
    """Return how sure a ruling is; None where there is none to be sure of: too close to call, or not tested."""
    if verdict.by_elimination:
        return Sureness.LOW
    if verdict.ruling is Ruling.LIKELY:
        parts, direction = verdict.together or (verdict.part,), "for"
    elif verdict.ruling is Ruling.RULED_OUT:
        parts, direction = tuple(one.part for one in verdict.parts), "against"
    else:
        return None
    carried = [_carried(verdict, part, direction) for part in parts]
    rank = min(carried) - bool(verdict.contradiction) - bool(contrary_studies(verdict))
    return list(Sureness)[max(rank, 0)]


def _carried(verdict: Verdict, part: str, direction: str) -> int:
    """Return the rank that the findings about one part give, before anything speaks against it."""
    carrying = [one for one in verdict.because
                if one.part == part and one.row.direction == direction and one.grade >= Grade.MODERATE]
    enough = any(one.grade is Grade.STRONG for one in carrying) or len({one.row.test for one in carrying}) >= TESTS_FOR_GOOD
    return Sureness.GOOD.rank if enough else Sureness.FAIR.rank


def sureness_words(verdict: Verdict) -> str:
    """Return how sure a ruling is as a sentence, with the study that speaks against it; "" where there is nothing to be sure of."""
    found = sureness(verdict)
    return " ".join((f"How sure: {found.value}.", *(study.says for study in contrary_studies(verdict)))) if found else ""
