"""The rows of the evidence table that apply to a screen, each with its side and grade.

A finding judged by feel, or from a little rounding, counts one grade less. "Can't tell" counts as untested.
"""

from __future__ import annotations

from companion.screening.about import About
from companion.screening.errors import Errors
from companion.screening.evidence import Finding
from companion.screening.pairs import outranked_by_film, read_together
from companion.screening.protocol import FindingContext
from companion.screening.protocols import protocols
from companion.screening.readings import NumberFormat, metric
from companion.screening.screen import Screen


def findings_of(screen: Screen, about: About | None = None, show: NumberFormat = metric,
                errors: Errors | None = None) -> tuple[Finding, ...]:
    """Return every finding of a screen, test by test, then those that take two tests.

    A change that was measured on film counts by film alone. ``show``: writes a metric number in the lifter's units. ``errors``: the
    lifter's own measurement errors; None means the published ones for their sex.
    """
    about = about or About()
    context = FindingContext(about, (errors or Errors(about.sex)).of, show)
    outranked = outranked_by_film(screen)
    alone = (finding for test, record in screen.items() for finding in protocols()[test].findings(record, context))
    return tuple(one for one in (*alone, *read_together(screen)) if one.row.id not in outranked)
