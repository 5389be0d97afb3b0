"""The squat days of a report, and the charts of tests and days."""

from __future__ import annotations

from collections.abc import Sequence

from companion.coach.tables import Table
from companion.pictures.series import Chart, ChartOwner, all_charts, chart_of
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.priming_trial import arm_of
from companion.screening.readings import NumberFormat
from companion.screening.screen import LoggedAnswer
from companion.screening.squat_days import ToldDay


def day_line(day: ToldDay, show: NumberFormat) -> str:
    """Return a squat day in a few words."""
    return ", ".join(filter(None, (show(day.load, "kg") if day.load else "", kept_words(day), back_words(day),
                                   "something hurt" if day.hurt else ""))) or "nothing reported"


def charts_of(answers: Sequence[LoggedAnswer], whose: ChartOwner) -> tuple[Chart, ...]:
    """Return every chart that has data."""
    return tuple(chart for name in all_charts() if (chart := chart_of(name, answers, whose)))


def kept_words(day: ToldDay) -> str:
    """Return how deep they went against what was set, or where nothing was set how deep; "" where not told."""
    depth = band_of(day.depth)
    return {"kept": "depth kept", "deeper": "deeper than set", "higher": "higher than set"}.get(
        day.kept or "", BAND_WORDS[depth] if depth else "")


def back_words(day: ToldDay) -> str:
    """Return what was told of the lower back; "" where nothing was."""
    return {"still": "back still", "moved": "back moved", "cant_tell": "back: can't tell"}.get(day.back or "", "")


def days_table(days: Sequence[ToldDay], seed: str | None, show: NumberFormat) -> Table:
    """Return the reported squat days as a table, newest first. ``seed``: of the priming trial's draws, None where not joined."""
    def line(day: ToldDay) -> tuple[str | tuple[str, ...], ...]:
        """Return the cells of one day."""
        lot = "" if day.lot is None or seed is None else {"prime": "drill first", "plain": "no drill"}[arm_of(seed, day.lot)]
        trial = "" if not lot else f"{lot}{f', felt {day.felt:g} of 10' if day.felt is not None else ''}"
        media = "a film or photo is in the chat" if day.video else ""
        return (f"{day.day:%a} {day.day.day} {day.day:%b %Y}", show(day.load, "kg") if day.load else "–", kept_words(day) or "–",
                f"{back_words(day).removeprefix('back ').removeprefix('back: ') or '–'}{' (on film)' if day.film else ''}",
                "yes" if day.hurt else "no", trial or "–", tuple(filter(None, (day.note, media))) or "–")

    return Table("days", "Squat days, the newest first", ("Day", "Load", "Depth", "Lower back", "Hurt", "Priming trial", "Note"),
                 tuple(map(line, reversed(days))), empty="No squat day has been reported yet.")
