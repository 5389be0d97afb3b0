"""What a lifter said of themself."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class About:
    """The lifter: height cm, mass kg, usual load kg, years of squatting; tape, level yes|no; the rest as chosen.

    The field names are the answer keys of "about you"; None means not known.
    """

    height: float | None = None
    mass: float | None = None
    sex: str | None = None
    load: float | None = None
    bar: str | None = None
    usual_depth: str | None = None
    years: float | None = None
    tape: str | None = None
    level: str | None = None
    stick: str | None = None
    view: str | None = None
