"""The lifter's own details, from the "about you" questions."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class About:
    """A lifter: height in cm, mass and usual load in kg, years of squatting; tape and level "yes" or "no"; measured shin, thigh and trunk
    in cm, between the joints' middles; the rest as chosen.

    Field names are the answer keys of "about you"; None means not known.
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
    shin: float | None = None
    thigh: float | None = None
    trunk: float | None = None
