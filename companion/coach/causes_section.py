"""The causes section of a report: the ruling on length, strength and control, the evidence, and a coach's own ruling."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from companion.coach.tables import LocalTimes
from companion.export.questions import in_words
from companion.record.log import KeptFinding
from companion.screening.conclusion import RULING_WORDS, settle_words, verdict_words
from companion.screening.evidence import PART_WORDS, Finding
from companion.screening.protocols import protocol
from companion.screening.readings import STANDING_WORDS
from companion.screening.rulings import Verdict
from companion.screening.sources import why
from companion.screening.sureness import contrary_studies, sureness_words

OVERRULED_WORDS: Final = {"likely": "likely", "ruled_out": "ruled out", "open": "open", "too_close": "too close to call",
                "not_tested": "not tested"}
RULING_MARKS: Final = {"likely": "●", "too_close": "◐", "open": "◐", "ruled_out": "○", "not_tested": "–"}
"""Marks beside the words of a ruling, never in their place."""


@dataclass(frozen=True, slots=True)
class CoachRuling:
    """A coach's ruling in place of the computed one, in words; ``by`` names the coach."""

    ruling: str
    by: str
    reason: str
    at: str


Evidence = tuple[str, str]
"""A finding in words, and its weight with the source of that."""


@dataclass(frozen=True, slots=True)
class CauseSection:
    """One cause (length, strength or control). ``speaks``: headings ("Speaks for it", …) with their findings; ``settle``: the test
    that would decide it; ``overruled``: a coach's ruling beside the computed one."""

    title: str
    ruling: str
    mark: str
    words: str
    speaks: tuple[tuple[str, tuple[Evidence, ...]], ...]
    contradiction: str
    settle: str
    overruled: CoachRuling | None


def cause_section(verdict: Verdict, overruled: CoachRuling | None) -> CauseSection:
    """Return a verdict as a page shows it."""
    speaks = []
    for title, direction in (("Speaks for it", "for"), ("Speaks against it", "against"), ("Decides nothing", "neither")):
        if own := [one for one in verdict.because if one.row.direction == direction]:
            speaks.append((title, tuple(dict.fromkeys(map(_evidence, own)))))
    if verdict.by_elimination:
        out = [one for one in verdict.left_by if one.row.direction == "against"]
        speaks.append(("Ruled the other two out", tuple(dict.fromkeys(map(_evidence, out)))))
    ruling = f"left by elimination ({RULING_WORDS[verdict.ruling]})" if verdict.by_elimination else RULING_WORDS[verdict.ruling]
    if studies := contrary_studies(verdict):
        speaks.append(("The one study of lifters", tuple((why(one), "one step less sure for it; our choice") for one in studies)))
    words = f"{verdict_words(verdict)} {sureness_words(verdict)}".strip()
    return CauseSection(verdict.cause.capitalize(), ruling, RULING_MARKS[verdict.ruling.value], words,
                 tuple(speaks), verdict.contradiction, settle_words(verdict.settle) if verdict.settle else "", overruled)


def ruling_order(ruling: str) -> tuple[int, str]:
    """Return the sort key of a ruling: likely first."""
    order = ("likely", "left by elimination", "open", "too close to call", "ruled out", "not tested")
    return next((n for n, word in enumerate(order) if ruling.startswith(word)), len(order)), ruling


def _evidence(finding: Finding) -> Evidence:
    part = PART_WORDS.get(finding.part, "")
    about = f", about the {part}" if finding.part in ("hip", "hamstrings", "calf") else ""
    worth = "a hint only" if finding.row.hint else {"none": "no weight"}.get(finding.grade.value, finding.grade.value)
    return finding.words.rstrip("."), f"{protocol(finding.row.test).short_name}{about}; {worth}; {STANDING_WORDS[finding.row.standing]}"


def coach_ruling(one: KeptFinding | None, when: LocalTimes) -> CoachRuling | None:
    """Return a coach's ruling on a cause in words."""
    return CoachRuling(OVERRULED_WORDS.get(one.value, in_words(one.value)), one.rule, one.because, when.moment(one.at)) if one else None
