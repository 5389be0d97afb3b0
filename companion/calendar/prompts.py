"""When somebody hears of a squat day: one prompt before it and one follow-up after it, never in quiet hours.

Squat times, evenings and quiet hours are wall-clock times where the lifter is; moments come out in UTC. At most one prompt
and one follow-up a squat day, quiet hours 20:00-09:00 unless the lifter chooses others (reference-values, choice).
"""

from __future__ import annotations

from collections.abc import Iterator, Set
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from itertools import islice
from typing import Final

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.plan import Plan, SquatDay, squat_days

LONGEST_BEFORE: Final = 24
"""Hours before squatting at most; our choice: more is the evening before."""

LEAST_NOTICE: Final = timedelta(minutes=30)
"""A prompt that quiet hours hold back comes at least so long before squatting, or else before they begin; our choice."""

LAST_QUARTER: Final = timedelta(minutes=15)
"""How long before quiet hours such a prompt comes, and how long before squatting any does at least; our choice."""

MORNING: Final = time(9)
"""When the follow-up comes on the next day, quiet hours allowing; our choice."""

_DAY: Final = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Wishes:
    """When a lifter wants to hear of a squat day.

    ``before``: whole hours before squatting, 0 for the evening before at ``evening``. ``quiet``: when nothing is sent, from
    the first to the second wall-clock time, over midnight where the second is the earlier; none where they are the same.
    """

    before: int = 0
    evening: time = time(18)
    quiet: tuple[time, time] = (time(20), time(9))

    def dumps(self) -> str:
        """As text: "0 18:00 20:00 09:00"."""
        return f"{self.before} {self.evening:%H:%M} {self.quiet[0]:%H:%M} {self.quiet[1]:%H:%M}"

    @staticmethod
    def loads(text: str) -> Wishes:
        """From ``dumps``' text; the usual wishes from any other, so that a damaged text never opens the night."""
        try:
            before, *times = text.split()
            evening, begin, end = (datetime.strptime(at, "%H:%M").replace(tzinfo=UTC).time() for at in times)
            hours = int(before)
        except ValueError:
            return Wishes()
        return Wishes(hours, evening, (begin, end)) if 0 <= hours <= LONGEST_BEFORE else Wishes()


def is_quiet(moment: datetime, wishes: Wishes, zone: str) -> bool:
    """Whether a moment lies in quiet hours."""
    return _quiet_around(moment, wishes, zone) is not None


def after_quiet(moment: datetime, wishes: Wishes, zone: str) -> datetime:
    """The end of the quiet hours that a moment lies in, in UTC; the moment itself where it lies in none."""
    while around := _quiet_around(moment, wishes, zone):  # again only where a clock change swallows the time between two
        moment = around[1]
    return moment


def prompt_at(squat: SquatDay, wishes: Wishes, zone: str) -> datetime:
    """When the one prompt before a squat day comes, in UTC: before the squat time and not in quiet hours, always.

    The evening before, or so many real hours before squatting. In quiet hours: at their end where that leaves
    ``LEAST_NOTICE``; else a quarter hour before they begin, so that who squats at 06:30 hears of it the evening
    before. Where quiet hours leave less than that quarter hour open, as soon as the ones before them are over.
    """
    begins = instant(squat.day, squat.at, zone)
    wanted = begins - timedelta(hours=wishes.before)
    if not wishes.before:
        wanted = min(instant(squat.day - _DAY, wishes.evening, zone), begins - LAST_QUARTER)  # 23:59, then 00:00
    later = after_quiet(wanted, wishes, zone)
    return later if later == wanted or later <= begins - LEAST_NOTICE else _before_quiet(wanted, wishes, zone)


def follow_up_at(squat: SquatDay, wishes: Wishes, zone: str) -> datetime:
    """When the one question after a squat day comes, in UTC: on the next day at 09:00, or when the quiet hours are over.

    Where they go on past that day's end, a quarter hour before they begin: whether something hurt is asked
    rather early than never. Never in quiet hours, and always on the next day unless a clock change swallows all that they
    leave open of it: then it comes out past ``follow_up_stale_at`` and is dropped.
    """
    wanted = instant(squat.day + _DAY, MORNING, zone)
    later = after_quiet(wanted, wishes, zone)
    if later < follow_up_stale_at(squat, zone):
        return later
    early = _before_quiet(wanted, wishes, zone)
    return early if local_date(early, zone) > squat.day else later


def stale_at(squat: SquatDay, zone: str) -> datetime:
    """From when on a prompt not yet sent is pointless, in UTC: the squat time."""
    return instant(squat.day, squat.at, zone)


def follow_up_stale_at(squat: SquatDay, zone: str) -> datetime:
    """From when on a follow-up not yet sent is pointless, in UTC: the end of the next day."""
    return instant(squat.day + 2 * _DAY, time(), zone)


def prompts(plan: Plan, wishes: Wishes, zone: str, now: datetime, told: Set[date] = frozenset()) -> Iterator[tuple[SquatDay, datetime]]:
    """The squat days still to be told of, in order, each with the moment of its prompt in UTC; without end where a rule has
    none. ``told``: days prompted already, or with a prompt on its way.

    A day whose prompt would have come before now gets none: who sets up at noon to squat at 18:00 knows of it.
    """
    for squat in squat_days(plan, local_date(now, zone)):
        if squat.day not in told and (at := prompt_at(squat, wishes, zone)) >= now:
            yield squat, at


def next_prompt(plan: Plan, wishes: Wishes, zone: str, now: datetime, told: Set[date] = frozenset()) -> tuple[SquatDay, datetime] | None:
    """The earliest of ``prompts``, or None where there is no more squat day.

    To go on after a prompt, ask with its own moment as ``now`` and its day among ``told``: before quiet hours two days (22:00,
    then 06:30) can share a moment, or the later day's come a few minutes earlier.
    """
    return min(islice(prompts(plan, wishes, zone, now, told), 2), key=lambda row: row[1], default=None)


def _before_quiet(moment: datetime, wishes: Wishes, zone: str) -> datetime:
    """A quarter hour before the quiet hours that a moment lies in begin; less where less of one is open."""
    while around := _quiet_around(moment, wishes, zone):
        begin = around[0]
        moment = begin - LAST_QUARTER
        earlier = _quiet_around(moment, wishes, zone)
        if earlier and earlier[1] < begin:
            return earlier[1]
    return moment


def _quiet_around(moment: datetime, wishes: Wishes, zone: str) -> tuple[datetime, datetime] | None:
    """Beginning and end, in UTC, of the quiet hours a moment lies in: one stretch a day, from the first time the clock
    shows when they begin to the last time it shows when they end, so that a repeated hour is quiet both times."""
    begin, end = wishes.quiet
    if begin == end:
        return None
    today = local_date(moment, zone)
    for day in (today - _DAY, today):
        start, over = instant(day, begin, zone), _last(day + _DAY if end < begin else day, end, zone)
        if start <= moment < over:
            return start, over
    return None


def _last(day: date, at: time, zone: str) -> datetime:
    """The last moment of a wall-clock time on a date; the first that exists where none does."""
    return max(instant(day, at, zone), datetime.combine(day, at, zone_of(zone)).replace(fold=1).astimezone(UTC))
