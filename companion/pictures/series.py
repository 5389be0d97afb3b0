"""Data of a chart from a lifter's answer log: points with errors, reference lines, bands, and the same in words.

Values are already in the lifter's own units. A series holds only readings taken like the latest ones: readings by different methods are
never compared: the place of the phone alone moves a shin by many degrees.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, partial
from statistics import fmean, stdev
from textwrap import wrap
from typing import Final

from companion.base.clock import local_date
from companion.language.units import shown, shown_number, shown_unit
from companion.screening.compliance import ASPECTS, DayKept, compliance, compliance_words
from companion.screening.depth import BAND_STEP, BAND_WORDS, NEVER_STARTS, Band, start_of
from companion.screening.errors import errors_from
from companion.screening.load_limit import LimitSet
from companion.screening.priming_trial import TrialDay, arm_of, pairs_of
from companion.screening.protocols import measured, protocol, protocols
from companion.screening.readings import SIDES, STANDING_WORDS, Z_TWO_SIDED_95, mean_of
from companion.screening.screen import LoggedAnswer, about_from, runs_of
from companion.screening.sessions import ReadingSession, sessions_of
from companion.screening.squat_days import AFTER, ToldDay, about, days_told, trial_days, trial_seed

BELOW_WIDE: Final = 50
"""Letters in a line under a chart, as many as fit a phone."""


@dataclass(frozen=True, slots=True)
class Dot:
    """One point: its day, value, half its error bar, its kind, and its value as a label."""

    day: date
    value: float
    error: float = 0.0
    kind: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Track:
    """One axis: a title, its points, and the band (low, high) within which a change can't be told from error."""

    title: str
    dots: tuple[Dot, ...]
    band: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class ReferenceLine:
    """A horizontal line, its value as a label, its meaning and the standing of its source in words. ``kind``: drawn like points of
    that kind, a mean of theirs."""

    value: float
    label: str
    name: str = ""
    standing: str = ""
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart: tracks stacked on one time axis. ``ticks``: names of levels instead of numbers; ``kinds``: meanings of the kinds of
    points; ``joined``: join points by a line; ``limits``: of the value axis, the lower end first; ``below``: lines of text under it."""

    name: str
    title: str
    tracks: tuple[Track, ...]
    unit: str = ""
    marks: tuple[ReferenceLine, ...] = ()
    ticks: tuple[tuple[float, str], ...] = ()
    kinds: tuple[tuple[str, str], ...] = ()
    limits: tuple[float, float] | None = None
    joined: bool = True
    notes: tuple[str, ...] = ()
    below: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """The text twin."""
        told = [f"{track.title}: {_track_words(self, track)}" for track in self.tracks]
        lines = [_line_words(self.marks)] if self.marks else []
        return " ".join([f"Picture: {self.title}, over time.", *told, *lines, *self.notes])


def day_words(day: date) -> str:
    """Return a date as a chart writes it."""
    return f"{day.day} {day:%b %Y}"


def _line_words(marks: Sequence[ReferenceLine]) -> str:
    """Return the lines in words; a meaning two share ("enough for most squats, from … to …") is given once."""
    told, before = "", ""
    for mark in marks:
        what, _, rest = mark.name.rpartition(", ")
        standing = f" ({mark.standing})" if mark.standing else ""
        first = f"{what}{standing}, {rest} {mark.label}" if what else f"{mark.name}{standing} {mark.label}"
        told += f" {rest} {mark.label}" if what and what == before else f"{'; ' if told else ''}{first}"
        before = what
    return f"Lines: {told}."


def _track_words(chart: Chart, track: Track) -> str:
    kinds = dict(chart.kinds)
    groups = {kind: [dot for dot in track.dots if dot.kind == kind] for kind in dict.fromkeys(dot.kind for dot in track.dots)}
    parts = []
    for kind, dots in groups.items():
        name = f"{kinds[kind]}: " if kind in kinds else ""
        first, last = dots[0], dots[-1]
        parts.append(f"{name}{first.label} on {day_words(first.day)}" + (
            "" if len(dots) == 1 else f", {last.label} on {day_words(last.day)}, {len(dots)} in all"))
    band = f"; within {track.band[0]:g} to {track.band[1]:g}{chart.unit} a change may be measurement error" if track.band else ""
    return "; ".join(parts) + band + "."


Answers = Sequence[LoggedAnswer]


@dataclass(frozen=True, slots=True)
class ChartOwner:
    """The person a chart is of, their unit system and zone. ``steps``: the depth to keep after each squat day, as (date, band);
    ``limits``: the values of the load limit; ``drill_since``: the day from which a drill was set."""

    person: str = ""
    system: str = "metric"
    zone: str = "UTC+00:00"
    steps: tuple[tuple[date, str], ...] = ()
    limits: tuple[LimitSet, ...] = ()
    drill_since: date | None = None


def readings(test: str, answers: Answers, whose: ChartOwner) -> Chart | None:
    """A measured test, left above right: error bars, its lines, the band of detectable change about the first session."""
    all_sides = {side: sessions_of(answers, test, side) for side in SIDES}
    every = sorted((session for sessions in all_sides.values() for session in sessions), key=lambda one: one.at)
    if not every:
        return None
    way = _way(every[-1])
    errors = errors_from(answers, about_from(answers).sex)
    tracks, left_out = [], 0
    for side, sessions in all_sides.items():
        alike = [session for session in sessions if _way(session) == way]
        left_out += len(sessions) - len(alike)
        if not alike:
            continue
        unit = alike[0].readings[0].unit
        error = errors.of(test, alike[0].readings[0].method)
        dots = tuple(Dot(local_date(session.at, whose.zone), _number(mean_of(session.readings), unit, whose),
                         _number(Z_TWO_SIDED_95 * error.sem if not session.readings[0].width
                                 else session.readings[0].width / 2, unit, whose),
                         label=shown(round(mean_of(session.readings), 1), unit, whose.system)) for session in alike)
        mdc = _number(error.mdc, unit, whose)
        band = None if alike[0].readings[0].width else (round(dots[0].value - mdc, 1), round(dots[0].value + mdc, 1))
        tracks.append(Track(side.capitalize(), dots, band))
    unit = every[-1].readings[0].unit
    marks = tuple(ReferenceLine(_number(line.value, unit, whose), line.shown(lambda value, unit: shown(value, unit, whose.system)),
                                line.name, STANDING_WORDS[line.standing]) for line in protocol(test).thresholds_in(unit))
    notes = ["Bars: measurement error, 95 %."] + ([f"Left out: {left_out} measured another way."] if left_out else [])
    meant: dict[str, str] = {}  # two lines of one meaning, from and to, are one row
    for mark in marks:
        what = f"{mark.name.removesuffix(', from').removesuffix(', to')} ({mark.standing})"
        meant[what] = f"{meant[what].partition(' ')[0]} to {mark.label}" if what in meant else mark.label
    rows = [f"{label}: {what}" for what, label in meant.items()] + ["Grey: no change shown."] * any(one.band for one in tracks)
    below = tuple(line for row in rows for line in wrap(row, BELOW_WIDE))
    shown_as = shown_unit(unit, whose.system)
    return Chart(protocol(test).chart, protocol(test).name, tuple(tracks), "°" if shown_as == "deg" else f" {shown_as}", marks,
                 notes=tuple(notes), below=below)


def _way(session: ReadingSession) -> tuple[str, str, str]:
    first = session.readings[0]
    return first.method, first.placement, first.unit


def _number(value: float, unit: str, whose: ChartOwner) -> float:
    return float(shown_number(round(value, 3), unit, whose.system))


def depth(test: str, answers: Answers, whose: ChartOwner) -> Chart | None:
    """Return the depth at which the back starts to round in a test, session by session, in bands; deep is down, and no rounding lowest."""
    one = protocol(test)
    assert one.starts is not None
    names = {band.rank: BAND_WORDS[band] for band in Band} | {NEVER_STARTS: "no rounding"}
    starts = [(run.at, start_of(*one.starts.said(run.record))) for run in runs_of(answers, test)]
    dots = tuple(Dot(local_date(at, whose.zone), float(start), label=names[start]) for at, start in starts if start is not None)
    if not dots:
        return None
    ticks = tuple((float(rank), words.removesuffix(" parallel").replace("a little", "little")) for rank, words in names.items())
    return Chart(one.chart, one.starts.title, (Track("No load", dots),), ticks=ticks, limits=(NEVER_STARTS + 0.5, -0.5),
                 notes=(f"Deeper is further down. {BAND_STEP}",))


def pain(answers: Answers, whose: ChartOwner) -> Chart | None:
    """Return the chart of pain 0-10, before testing and when something hurt: in the back or hip, and below it somewhere else."""
    wanted = {("safety_check", "pain"): "before", ("pain", "bad"): "hurt"}
    rows = sorted((row for row in answers if (row.flow, row.key) in wanted and row.status == "ok"
                   and isinstance(row.value, float)), key=lambda row: row.at)
    places = {row.run: row.value for row in answers if (row.flow, row.key, row.status) == ("pain", "where", "ok")}
    tracks: dict[str, list[Dot]] = {"Back or hip": [], "Somewhere else": []}
    for row in rows:
        kind = wanted[row.flow, row.key]
        there = kind == "before" or places.get(row.run, "back") in ("back", "hip")  # the check asks about back and hip only
        tracks["Back or hip" if there else "Somewhere else"].append(
            Dot(local_date(row.at, whose.zone), float(row.value or 0.0), kind=kind, label=f"{row.value:g}"))
    drawn = tuple(Track(title, tuple(dots)) for title, dots in tracks.items() if dots)
    if not drawn:
        return None
    kinds = tuple(pair for pair in (("before", "before a test"), ("hurt", "something hurt"))
                  if any(dot.kind == pair[0] for track in drawn for dot in track.dots))
    return Chart("chart_pain", "Pain, 0 to 10", drawn, limits=(-0.6, 10.6), kinds=kinds,
                 ticks=tuple((float(n), str(n)) for n in range(0, 11, 2)))


def trial(answers: Answers, whose: ChartOwner) -> Chart | None:
    """Return the chart of movement felt in the lower back on squat days with and without the prime."""
    seed = trial_seed(answers, str(whose.person))
    if seed is None:
        return None
    dots = tuple(Dot(day.day, day.felt, kind=arm_of(seed, day.lot), label=f"{day.felt:g}")
                 for day in days_told(answers, whose.zone) if day.lot is not None and day.felt is not None and not day.hurt)
    if not dots:
        return None
    kinds = tuple(pair for pair in (("prime", "drill first"), ("plain", "no drill")) if any(dot.kind == pair[0] for dot in dots))
    means = tuple(ReferenceLine(mean := fmean(dot.value for dot in dots if dot.kind == kind), f"{mean:.1f}", f"mean with {name}", kind=kind)
                  for kind, name in kinds)
    below = _difference(pairs_of(seed, trial_days(days_told(answers, whose.zone), dict(whose.steps)))[0])
    return Chart("chart_trial", "Movement felt in the lower back, 0 to 10", (Track("Squat days", dots),), limits=(-0.6, 10.6), kinds=kinds,
                 marks=means,
                 below=(", ".join(f"{mark.name} {mark.label}" for mark in means).capitalize() + " (lines).", *below),
                 notes=below, joined=False, ticks=tuple((float(n), str(n)) for n in range(0, 11, 2)))


def _difference(pairs: Sequence[tuple[TrialDay, TrialDay]]) -> tuple[str, ...]:
    """Return the mean difference of the pairs of days with its 95 % interval, in words that don't judge it; too few pairs in words."""
    differences = [plain.felt - primed.felt for primed, plain in pairs]
    if len(differences) < 2:
        return (f"Pairs of days alike: {len(differences)}, too few for a difference.",)
    from scipy.special import stdtrit  # type: ignore[import-untyped]

    half = float(stdtrit(len(differences) - 1, 0.975)) * stdev(differences) / len(differences) ** 0.5
    mean = fmean(differences)
    return (f"{len(pairs)} pairs of days: no drill minus drill {mean:+.1f},",
            f"95 % interval {mean - half:+.1f} to {mean + half:+.1f} (0: no difference).")


def depth_steps(answers: Answers, whose: ChartOwner) -> Chart | None:
    """Return the chart of the depth to keep to, and the back's answer on each squat day: still, moved, or something hurt.

    A step belongs to the day reported on, not to the day of the report. Without a report it is never "still".
    """
    told = {day.day: "hurt" if day.hurt else day.back if day.back in ("still", "moved") else "untold"
            for day in days_told(answers, whose.zone)}
    spoken = {on: about(row.asked, row.at, on) for row in answers if row.flow == AFTER for on in (local_date(row.at, whose.zone),)}
    latest = {spoken.get(on, on): band for on, band in whose.steps}  # the last of a day
    dots = tuple(Dot(day, float(Band(band).rank), kind=told.get(day, "untold"), label=BAND_WORDS[Band(band)])
                 for day, band in sorted(latest.items()))
    if not dots:
        return None
    kinds = tuple(pair for pair in (("still", "back still"), ("moved", "back moved"), ("hurt", "something hurt"),
                                    ("untold", "no answer"))
                  if any(dot.kind == pair[0] for dot in dots))
    ticks = tuple((float(band.rank), BAND_WORDS[band].removesuffix(" parallel").replace("a little", "little")) for band in Band)
    return Chart("chart_depth", "Depth to keep to, after each squat day", (Track("Squat days", dots),), ticks=ticks,
                 limits=(len(Band) - 0.5, -0.5), kinds=kinds, joined=False, notes=("Deeper is further down.",))


def days_kept(answers: Answers, whose: ChartOwner, days: Sequence[ToldDay] | None = None) -> tuple[DayKept, ...]:
    """Return how each squat day stands against what was set. ``days``: the squat days told, where they are known already."""
    drilled = {local_date(row.at, whose.zone) for row in answers if (row.flow, row.key, row.status) == ("prime", "felt", "ok")}
    told = days_told(answers, whose.zone) if days is None else days
    return compliance(told, whose.limits, drilled, whose.drill_since, trial_seed(answers, whose.person))


def kept(answers: Answers, whose: ChartOwner) -> Chart | None:
    """Return the strip chart of load, depth, back, film and drill against what was set, a row each."""
    shapes = {"kept": ("still", "as set"), "off": ("moved", "not as set"), "untold": ("untold", "not told")}
    days = days_kept(answers, whose)
    dots = tuple(Dot(one.day, float(n), kind=shapes[mark][0], label=name) for one in days for n, (name, mark) in enumerate(
        zip(ASPECTS, one.marks, strict=True)) if mark)
    if not dots:
        return None
    kinds = tuple(pair for pair in shapes.values() if any(dot.kind == pair[0] for dot in dots))
    return Chart("chart_kept", "Squat days against what was set", (Track("Squat days", dots),), kinds=kinds, joined=False,
                 ticks=tuple((float(n), name) for n, name in enumerate(ASPECTS)), limits=(len(ASPECTS) - 0.5, -0.5),
                 notes=(f"The {compliance_words(days)}.",))


@dataclass(frozen=True, slots=True)
class ChartKind:
    """A chart there is: the label of its button, and what makes it of a log."""

    label: str
    of: Callable[[Answers, ChartOwner], Chart | None]


@cache
def all_charts() -> Mapping[str, ChartKind]:
    """Return every chart by its name: of the measured tests, of where the back starts to round, and of what else is told."""
    numbers = {one.chart: ChartKind(one.name, partial(readings, one.id)) for one in measured()}
    starts = {one.chart: ChartKind(one.starts.label, partial(depth, one.id)) for one in protocols().values() if one.starts}
    return numbers | starts | {"chart_pain": ChartKind("Pain", pain), "chart_trial": ChartKind("Priming trial", trial),
                               "chart_depth": ChartKind("Depth to keep", depth_steps),
                               "chart_kept": ChartKind("Against what was set", kept)}


def chart_of(name: str, answers: Iterable[LoggedAnswer], whose: ChartOwner) -> Chart | None:
    """The chart of a name, or None where there is nothing to show in it."""
    made = all_charts()[name].of(tuple(answers), whose)
    return made if made is None else replace(made, name=name)
