"""What was measured, side by side, with the lines it is held against and its errors; and where those come from."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import Final

from companion.coach.tables import Cell, Moments, Table
from companion.export.questions import in_words
from companion.pictures.series import REFERENCE_LINES
from companion.screening.depth import BAND_WORDS, NEVER, band_of
from companion.screening.errors import Errors
from companion.screening.measured import knee_to_wall_readings, leg_raise_readings
from companion.screening.readings import STANDING_WORDS, Error, Reading, Show, against_line, mean_of
from companion.screening.retest import CALF_SESSIONS, change
from companion.screening.screen import SIDES, TEST_WORDS, Answer, Screen
from companion.screening.sessions import MEASURED, Session, sessions_of
from companion.screening.trend import SESSIONS, trend

OTHERS: Final = (("hip_fold", "angle", "deg", "Hip fold, angle of the thigh"), ("bird_dog", "hold", "s", "Bird dog, hold"))
SQUATS: Final = (("plain", "plain"), ("heels", "heels raised"), ("front", "weight held in front"), ("slow", "three seconds down"),
                 ("wide", "feet wider"), ("again", "plain once more"), ("load", "film of a working set"))
_NOTHING: Final = "–"


def numbers_table(answers: Sequence[Answer], screen: Screen, errors: Errors, show: Show, when: Moments) -> Table:
    """The readings that count now, left under right, each with its lines, its error and how it has changed."""
    rows: list[tuple[Cell, ...]] = []
    for test in MEASURED:
        for side in SIDES:
            taken, sessions = _readings(screen, test, side), sessions_of(answers, test, side)
            if taken:
                rows.append((f"{_title(test)}, {side}", *_measured(taken, sessions, errors, show, when)))
            elif sessions:
                rows.append((f"{_title(test)}, {side}", _NOTHING, "Stopped for pain since, so it counts as not tested.", _NOTHING, _NOTHING,
                             _NOTHING))
    for test, key, unit, title in OTHERS:
        for side in SIDES:
            value = getattr(getattr(screen, test), f"{side}_{key}", None)
            if value is not None:
                rows.append((f"{title}, {side}", show(value, unit), "as told", "no line is used", "none published", _NOTHING))
    return Table("numbers", "Numbers that count now, side by side",
                 ("Test and side", "Reading", "How it was taken", "Held against", "Measurement error", "Change"), tuple(rows),
                 empty="Nothing has been measured yet.")


def _title(test: str) -> str:
    return TEST_WORDS[test].capitalize()


def _readings(screen: Screen, test: str, side: str) -> tuple[Reading, ...]:
    if test == "leg_raise":
        return leg_raise_readings(screen.leg_raise, side) if screen.leg_raise else ()
    return knee_to_wall_readings(screen.knee_to_wall, side) if screen.knee_to_wall else ()


def _measured(taken: tuple[Reading, ...], sessions: Sequence[Session], errors: Errors, show: Show, when: Moments) -> tuple[Cell, ...]:
    first, values = taken[0], [one.value for one in taken]
    error = errors.of(first.test, first.method)
    each = f"mean of {', '.join(show(round(value, 1), first.unit) for value in values)}" if len(values) > 1 else ""
    at = next((when.day(one.at.date()) for one in reversed(sessions) if [r.value for r in one.readings] == values), "")
    how = ", ".join(filter(None, (in_words(first.method), in_words(first.placement), f"on {at}" if at else "")))
    lines = tuple(f"{line.name}: {against_line(taken, line, error, show).words}"
                  for line in REFERENCE_LINES.get((first.test, first.unit), ()))
    reading = f"{show(round(mean_of(taken), 1), first.unit)}{' by eye, the middle of a band' if first.width else ''}"
    return (tuple(filter(None, (reading, each))), f"by {how}", lines or _NOTHING, _error(error, len(values), show),
            tuple(_changes(sessions, errors, show, when)) or "one session so far")


def _error(error: Error, repeats: int, show: Show) -> tuple[str, ...]:
    own = f"; from {error.own} of their own repeats too" if error.own else ""
    return (f"{show(round(error.of_mean(repeats), 1), error.unit)} standard error of this mean",
            f"{show(round(error.mdc, 1), error.unit)} least change that is not error, two single readings{own}")


def _changes(sessions: Sequence[Session], errors: Errors, show: Show, when: Moments) -> list[str]:
    """First to last, averaged over as many sessions at each end as calf work takes; and the slope where there are enough."""
    if len(sessions) < 2:
        return []
    first = sessions[-1].readings[0]
    many = min(CALF_SESSIONS, len(sessions) // 2) if first.test == "knee_to_wall" else 1
    since = f"Since {when.day(sessions[0].at.date())}"
    try:
        told = change([one.readings for one in sessions[:many]], [one.readings for one in sessions[-many:]],
                      errors.of(first.test, first.method), show)
        said = [f"{since}: {told.words}"]
        if len({one.at.date() for one in sessions}) >= SESSIONS:
            said.append(trend(sessions, show).words)
    except ValueError as error:  # another method, placement or warm-up
        return [f"{since}: not compared, {error}."]
    return said


def looks_table(screen: Screen, show: Show) -> Table:
    """Where the rounding starts in each squat of the squat look, and by how many bands a change moved it."""
    look, rows = screen.squat_look, []
    names = {"no": "none", "little": "a little", "clearly": "clearly", "cant_tell": "can't tell"}
    for squat, title in SQUATS if look else ():
        assert look is not None
        rounds = look.rounds(squat)
        if rounds is None or (squat == "load" and look.load_film == "no"):
            continue
        start, moved = look.start(squat), look.moved(squat) if squat not in ("plain", "again", "load") else None
        band = band_of(getattr(look, f"{squat}_depth"))
        depth = "no rounding" if start == NEVER else BAND_WORDS[band] if band else "not told"
        bands = "" if moved is None else {0: "no change"}.get(moved, f"{abs(moved)} band{'s' if abs(moved) > 1 else ''} "
                                                                    f"{'later' if moved > 0 else 'earlier'}")
        load = f", {show(look.load_kg, 'kg')}" if squat == "load" and look.load_kg is not None else ""
        rows.append((f"{title}{load}".capitalize(), names.get(rounds, in_words(rounds)), depth, bands or _NOTHING))
    seen = f", judged by {in_words(look.seen_by)}" if look and look.seen_by else ""
    return Table("squats", f"Squat look: where the rounding starts{seen}", ("Squat", "Rounding", "Starts at", "Against the plain squat"),
                 tuple(rows), empty="The squat look has not been done.",
                 note=look.discounted if look and any(look.rounds(one) for one, _ in SQUATS[1:5]) else "")


def sources_of(screen: Screen, errors: Errors, show: Show) -> Table:
    """Where each line and error comes from, and its standing."""
    rows: list[tuple[Cell, ...]] = []
    readings = [one for test in MEASURED for side in SIDES for one in _readings(screen, test, side)]
    kinds = {(one.test, one.unit) for one in readings}
    for line in chain.from_iterable(REFERENCE_LINES.values()):
        if not kinds or (line.test, line.unit) in kinds:
            rows.append((f"{_title(line.test)}: {show(line.value, line.unit)}, {line.name}", line.source, STANDING_WORDS[line.standing]))
    for test, method in sorted({(one.test, one.method) for one in readings}):
        error = errors.of(test, method)
        rows.append((f"{_title(test)} by {in_words(method)}: error {show(round(error.sem, 1), error.unit)} a reading", error.source,
                     STANDING_WORDS[error.standing]))
    rows += [("Which finding speaks for which cause, and with which weight", "the evidence table of this project",
              f"{STANDING_WORDS['common practice']}; weights: {STANDING_WORDS['choice']}"),
             ("When a cause is likely, ruled out or too close to call", "the decision rule of this project", STANDING_WORDS["choice"]),
             ("Depth and load to keep to", "one band above the rounding; 80 % of the working load", STANDING_WORDS["choice"]),
             ("Least change that is not error", "1.96 · √2 · SEM (Weir 2005 J Strength Cond Res 19:231)", STANDING_WORDS["read"])]
    return Table("sources", "Lines, errors and rules, with their sources", ("What", "Source", "Standing"), tuple(rows))
