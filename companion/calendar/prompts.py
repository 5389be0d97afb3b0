"""Times of messages about a squat day: one prompt before it and one follow-up after it, never in quiet hours.

Squat times, evenings and quiet hours are local wall-clock times; moments are returned in UTC. At most one prompt and one follow-up per
squat day; quiet hours stand in the table of sources, unless the lifter chooses others (choice).
"""

from __future__ import annotations

from collections.abc import Iterator, Set
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from itertools import islice
from typing import Final

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.plan import Plan, SquatDay, squat_days
from companion.screening.sources import SOURCES, value

LONGEST_BEFORE: Final = int(value("longest_notice"))
"""Longest notice in hours; our choice: anything longer is the evening before."""

LEAST_NOTICE, LAST_QUARTER = (timedelta(minutes=minutes) for minutes in SOURCES["quiet_notice"].value)
"""Least notice of a prompt that waits for quiet hours to end; with less, it comes before they begin. And the time between such an early
prompt and the quiet hours, which is the least between any prompt and squatting too. Our choice."""

MORNING: Final = time(int(value("morning_hour")))
"""Time of the follow-up on the next day, quiet hours allowing; our choice."""

_QUIET_FROM, _QUIET_TO = map(int, SOURCES["quiet_hours"].value)
_DAY: Final = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Preferences:
    """Preferences for messages about squat days.

    ``before``: whole hours before squatting, 0 for the evening before at ``evening``. ``quiet``: (start, end) of the quiet hours, past
    midnight if the end is earlier than the start; none if they are equal.
    """

    before: int = 0
    evening: time = time(int(value("evening_hour")))
    quiet: tuple[time, time] = (time(_QUIET_FROM), time(_QUIET_TO))

    def dumps(self) -> str:
        """Return the preferences as text: "0 18:00 20:00 09:00"."""
        return f"{self.before} {self.evening:%H:%M} {self.quiet[0]:%H:%M} {self.quiet[1]:%H:%M}"

    @staticmethod
    def loads(text: str) -> Preferences:
        """Parse ``dumps``' text; any other text gives the defaults, so that damaged text never lifts quiet hours."""
        try:
            before, *times = text.split()
            evening, begin, end = (datetime.strptime(at, "%H:%M").replace(tzinfo=UTC).time() for at in times)
            hours = int(before)
        except ValueError:
            return Preferences()
        return Preferences(hours, evening, (begin, end)) if 0 <= hours <= LONGEST_BEFORE else Preferences()


def is_quiet(moment: datetime, preferences: Preferences, zone: str) -> bool:
    """True if a moment lies in quiet hours."""
    return _quiet_around(moment, preferences, zone) is not None


def after_quiet(moment: datetime, preferences: Preferences, zone: str) -> datetime:
    """Return the end of the quiet hours around a moment, in UTC; the moment itself outside them."""
    while around := _quiet_around(moment, preferences, zone):  # twice only if a clock change swallows the time between two quiet periods
        moment = around[1]
    return moment


def prompt_at(squat: SquatDay, preferences: Preferences, zone: str) -> datetime:
    """Return the moment of the one prompt before a squat day, in UTC: always before the squat time and outside quiet hours.

    The evening before, or some real hours before squatting. A prompt due in quiet hours waits for their end if that leaves
    ``LEAST_NOTICE``; otherwise it comes a quarter hour before they begin, so that somebody who squats at 06:30 hears of it the evening
    before. If quiet hours leave less than that quarter hour, it comes as soon as the previous ones end.
    """
    begins = instant(squat.day, squat.at, zone)
    wanted = begins - timedelta(hours=preferences.before)
    if not preferences.before:
        wanted = min(instant(squat.day - _DAY, preferences.evening, zone), begins - LAST_QUARTER)  # for 23:59 the evening before 00:00
    later = after_quiet(wanted, preferences, zone)
    return later if later == wanted or later <= begins - LEAST_NOTICE else _before_quiet(wanted, preferences, zone)


def follow_up_at(squat: SquatDay, preferences: Preferences, zone: str) -> datetime:
    """Return the moment of the one question after a squat day, in UTC: 09:00 on the next day, or the end of quiet hours.

    If those last past the end of that day, it comes a quarter hour before they begin, since asking about pain early beats not asking.
    Never in quiet hours, and always on the next day unless a clock change swallows all that they leave of it; the result is then past
    ``follow_up_stale_at`` and the follow-up is dropped.
    """
    wanted = instant(squat.day + _DAY, MORNING, zone)
    later = after_quiet(wanted, preferences, zone)
    if later < follow_up_stale_at(squat, zone):
        return later
    early = _before_quiet(wanted, preferences, zone)
    return early if local_date(early, zone) > squat.day else later


def stale_at(squat: SquatDay, zone: str) -> datetime:
    """Return when an unsent prompt is stale, in UTC: the squat time."""
    return instant(squat.day, squat.at, zone)


def follow_up_stale_at(squat: SquatDay, zone: str) -> datetime:
    """Return when an unsent follow-up is stale, in UTC: the end of the next day."""
    return instant(squat.day + 2 * _DAY, time(), zone)


def prompts(plan: Plan, preferences: Preferences, zone: str, now: datetime,
            told: Set[date] = frozenset()) -> Iterator[tuple[SquatDay, datetime]]:
    """Yield the squat days still to be prompted, in order, each with the moment of its prompt in UTC; endless if there is a rule.

    ``told``: days already prompted, or with a prompt in the outbox. A day whose prompt would already be past gets none: somebody who
    sets up at noon to squat at 18:00 knows.
    """
    for squat in squat_days(plan, local_date(now, zone)):
        if squat.day not in told and (at := prompt_at(squat, preferences, zone)) >= now:
            yield squat, at


def next_prompt(plan: Plan, preferences: Preferences, zone: str, now: datetime,
                told: Set[date] = frozenset()) -> tuple[SquatDay, datetime] | None:
    """Return the earliest of ``prompts``; None if there are no more squat days.

    To continue after a prompt, pass its moment as ``now`` and add its day to ``told``: before quiet hours the prompts of two days
    (22:00, then 06:30) can share a moment, or the later day's can come a few minutes earlier.
    """
    return min(islice(prompts(plan, preferences, zone, now, told), 2), key=lambda row: row[1], default=None)


def _before_quiet(moment: datetime, preferences: Preferences, zone: str) -> datetime:
    """Return a quarter hour before the quiet hours around a moment begin, or the end of the previous ones if that is later."""
    while around := _quiet_around(moment, preferences, zone):
        begin = around[0]
        moment = begin - LAST_QUARTER
        earlier = _quiet_around(moment, preferences, zone)
        if earlier and earlier[1] < begin:
            return earlier[1]
    return moment


def _quiet_around(moment: datetime, preferences: Preferences, zone: str) -> tuple[datetime, datetime] | None:
    """Return start and end, in UTC, of the quiet hours around a moment; None outside them.

    One period per day, from the first time the clock shows the start to the last time it shows the end, so a repeated hour is quiet both
    times.
    """
    begin, end = preferences.quiet
    if begin == end:
        return None
    today = local_date(moment, zone)
    for day in (today - _DAY, today):
        start, over = instant(day, begin, zone), _last(day + _DAY if end < begin else day, end, zone)
        if start <= moment < over:
            return start, over
    return None


def _last(day: date, at: time, zone: str) -> datetime:
    """Return the last moment of a wall-clock time on a date, in UTC; the first that exists if the time is skipped."""
    return max(instant(day, at, zone), datetime.combine(day, at, zone_of(zone)).replace(fold=1).astimezone(UTC))
