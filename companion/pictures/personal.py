"""A lifter's own pictures, drawn from their log: charts, and their own squat."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable

from companion.base.clock import local_date
from companion.language.units import METRIC, shown
from companion.pictures.cache import Ending, drawn, ending_of
from companion.pictures.film_chart import FILM_CHART, film_chart, film_curves
from companion.pictures.series import ChartOwner, all_charts, chart_of
from companion.pictures.your_squat import NAME, your_squat
from companion.record import log
from companion.record.picture_files import CURVE_FACT, FILM_KEPT
from companion.screening.depth import band_of
from companion.screening.errors import errors_from
from companion.screening.load_limit import limits_in
from companion.screening.screen import LoggedAnswer, about_from, screen_from

Own = tuple[bytes, str, Ending]
"""A picture's bytes, its words, and its kind of file."""


def is_own(name: str) -> bool:
    """True if a picture of this name is drawn from somebody's log."""
    return name in all_charts() or name in (NAME, FILM_CHART, *FILM_KEPT)


def owner_of(db: sqlite3.Connection, person: int, zone: str = "") -> ChartOwner:
    """Return whose a chart is, with what was set for them; ``zone``: other than the one they live in."""
    facts = log.facts_of(db, person)
    system, home = (str(facts[key].value) if key in facts else usual
                    for key, usual in (("welcome.units", METRIC), ("welcome.zone", "UTC+00:00")))
    zone = zone or home
    steps = tuple((local_date(one.at, zone), one.value) for one in log.finding_history(db, person, "depth.step") if band_of(one.value))
    drill = next((local_date(one.at, zone) for one in log.finding_history(db, person, "drill") if one.value not in ("", "none")), None)
    return ChartOwner(str(person), system, zone, steps, limits_in(log.load_limits_of(db, person)), drill)


def from_log(db: sqlite3.Connection, person: int, name: str, video: bool = False) -> Callable[[], Own | None]:
    """Read what a person's own picture needs; return what draws it, beside the loop: the picture, its words and its kind of file, or
    None if there is nothing to show. ``video``: a loop as MP4 where it can be written."""
    answers = list(map(log.as_answer, log.answers_of(db, person)))
    facts, whose = log.facts_of(db, person), owner_of(db, person)
    if name == FILM_CHART:
        curves = film_curves(str(facts[CURVE_FACT].value)) if CURVE_FACT in facts else None
        return lambda: None if curves is None else (film_chart(curves), curves.words, "png")
    return lambda: _drawn_for(name, answers, whose, video)


def _drawn_for(name: str, answers: list[LoggedAnswer], whose: ChartOwner, video: bool) -> Own | None:
    if name == NAME:
        about = about_from(answers)
        show: Callable[[float, str], str] = lambda value, unit: shown(value, unit, whose.system)  # noqa: E731
        drawing = your_squat(screen_from(answers), about, errors_from(answers, about.sex), show)
        if drawing is None:
            return None
        ending = ending_of(drawing, video)
        return drawn(drawing, ending), drawing.words, ending
    chart = chart_of(name, answers, whose)
    if chart is None:
        return None
    from companion.pictures.charts import png

    return png(chart), chart.words, "png"
