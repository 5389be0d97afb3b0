"""Squat days as an iCalendar text (RFC 5545), for the calendar a lifter already has.

One event an hour long for each rule, and one of its own for each day that the rule doesn't give as it is. The text carries
its own time zone, ten years of it; a reader that knows the zone's name goes on after that.

**Times that the clocks skip.** RFC 5545 reads one by the offset from before the change (3.3.5): 02:30 in New York on 8 March
2026 is 03:30. Where a rule gives one, 3.3.10 says both that it is left out and that it is read like that (its words,
second-hand), so calendars differ. Here it is the first moment that exists, 03:00 (``clock.instant``). So the text never
leaves one to the reader: the rule leaves the day out (EXDATE), and the day has an event of its own at that moment, for ten
years ahead. A time that comes twice is the first, there and here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise, takewhile
from typing import TYPE_CHECKING, Final
from uuid import UUID, uuid5

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.plan import WEEKDAYS, Plan, SquatDay, squat_days

if TYPE_CHECKING:  # it takes 40 ms to import, and few turns need it
    from icalendar import Event, Timezone

PRODUCT: Final = "-//squat-companion//squat days//EN"
YEARS_AHEAD: Final = 10
LASTS: Final = timedelta(hours=1)
"""How long a squat day's event is; our choice."""

REMINDER_LASTS: Final = timedelta(minutes=15)
SUMMARY: Final = "Squat day"

_OURS: Final = UUID("6f6f2a4e-3f0b-5c1d-9d53-0b8f5d0a7c21")  # drawn once; keeps our names apart from other people's
_EPOCH: Final = datetime(2020, 1, 1, tzinfo=UTC)


def calendar_text(plan: Plan, zone: str, now: datetime, name: str, reminders: Sequence[tuple[str, datetime, str]] = (), *,
                  key: str) -> str:
    """A plan from today on as an iCalendar text, lines folded at 75 octets and ended by CRLF.

    ``name``: what the calendar is called. ``reminders``: (kind, moment, summary) of anything else to be shown, each kind
    once. ``key``: what stands for the lifter, the same at each export and different from every other lifter's; no name: it
    is hashed into the identifiers, so that importing again changes what is there instead of doubling it. A single day
    exported and then dropped stays in the calendar it was imported into. ``icalendar`` writes the text.
    """
    from icalendar import Calendar, Event, vRecur

    today = local_date(now, zone)
    stamped = now.astimezone(UTC).replace(microsecond=0)
    tzid = {"TZID": zone_id(zone)}

    def event(what: str, summary: str, lasts: timedelta) -> Event:
        one = Event()
        one.add("uid", str(uuid5(_OURS, f"{key}/{what}")))
        one.add("dtstamp", stamped)
        one.add("sequence", int((stamped - _EPOCH) / timedelta(minutes=1)))  # a later export is the newer version
        one.add("summary", summary)
        one.add("duration", lasts)
        return one

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", name)
    calendar.add_component(_timezone(zone, today.year))

    single = dict(plan.single)
    by_rule: set[SquatDay] = set()
    for number, (rule, days) in enumerate(_rules(plan, today), 1):
        kept = [day for day in days
                if single.get(day.day, day.at) == day.at and not plan.paused_until(day.day) and _exists(day, zone)]
        by_rule.update(kept)
        if kept:
            one = event(f"rule {number}", SUMMARY, LASTS)
            one.add("dtstart", datetime.combine(kept[0].day, kept[0].at), parameters=tzid)
            one.add("rrule", vRecur(rule))
            left_out = [datetime.combine(day.day, day.at) for day in days if day.day > kept[0].day and day not in by_rule]
            if left_out:
                one.add("exdate", left_out, parameters=tzid)
            calendar.add_component(one)

    for squat in _ahead(plan, today):
        if squat not in by_rule:
            one = event(f"day {squat.day}", SUMMARY, LASTS)
            one.add("dtstart", _shown(squat, zone), parameters=tzid)
            calendar.add_component(one)

    for kind, moment, summary in reminders:
        one = event(f"reminder {kind}", summary, REMINDER_LASTS)
        one.add("dtstart", moment.astimezone(UTC).replace(microsecond=0))
        calendar.add_component(one)
    text: bytes = calendar.to_ical()
    return text.decode()


def zone_id(zone: str) -> str:
    """A zone's name in the text: an IANA name, or "UTC+0100": a colon there would have to be quoted.

    "Etc/UTC" for "UTC": ``icalendar`` writes times of a zone so called in UTC's own form, but not the ones left out.
    """
    name = str(zone_of(zone))
    return "Etc/UTC" if name == "UTC" else name.replace(":", "")


def _ahead(plan: Plan, today: date) -> Iterator[SquatDay]:
    """The squat days from today on, as far as we look ahead: to the end of a year."""
    return takewhile(lambda squat: squat.day.year <= today.year + YEARS_AHEAD, squat_days(plan, today))


def _rules(plan: Plan, today: date) -> Iterator[tuple[dict[str, object], list[SquatDay]]]:
    """Each rule of a plan as the parts of an RRULE, one a squat time, and the days it gives when left alone, before pauses
    with a beginning: those days have to be left out of it."""
    days = list(_ahead(replace(plan, single=(), away=()), today))
    if plan.every:
        yield {"FREQ": "DAILY", "INTERVAL": plan.every}, days
        return
    for at in dict.fromkeys(at for _, at in plan.weekly):
        names = [WEEKDAYS[day] for day, when in plan.weekly if when == at]
        yield {"FREQ": "WEEKLY", "BYDAY": names}, [day for day in days if day.at == at]


def _exists(squat: SquatDay, zone: str) -> bool:
    """Whether the clock on the wall ever shows a squat day's time."""
    return _shown(squat, zone) == datetime.combine(squat.day, squat.at)


def _shown(squat: SquatDay, zone: str) -> datetime:
    """What the clock on the wall shows when a squat day's time has come, without a zone."""
    return instant(squat.day, squat.at, zone).astimezone(zone_of(zone)).replace(tzinfo=None)


def _timezone(zone: str, year: int) -> Timezone:
    """A zone's offsets from a year's beginning on as a VTIMEZONE, with every change written out: Ramadan has no rule.

    The library's own ``Timezone.from_tzinfo`` puts the changes of spring an hour late (7.3.2; ``tests/calendar`` shows it).
    """
    from icalendar import Timezone, TimezoneDaylight, TimezoneStandard

    there = zone_of(zone)
    onsets: dict[tuple[timedelta, timedelta, str, bool], list[datetime]] = {}
    for before, moment in _changes(zone, year):
        now = moment.astimezone(there)
        old, new = _offset(before, zone), _offset(moment, zone)
        onsets.setdefault((old, new, now.tzname() or zone, bool(now.dst())), []).append(moment.replace(tzinfo=None) + old)
    component = Timezone()
    component.add("tzid", zone_id(zone))
    for (old, new, name, summer), times in onsets.items():
        part = TimezoneDaylight() if summer else TimezoneStandard()
        part.add("tzname", name)
        part.add("tzoffsetfrom", old)
        part.add("tzoffsetto", new)
        part.add("dtstart", times[0])
        if times[1:]:
            part.add("rdate", times[1:])
        component.add_component(part)
    return component


def _changes(zone: str, year: int) -> Iterator[tuple[datetime, datetime]]:
    """The changes of a zone's offset, as (a moment before, the first moment after) in UTC; first the beginning, as both."""
    first = datetime.combine(date(year, 1, 1), time(), UTC) - timedelta(days=1)
    yield first, first
    days = (first + timedelta(days=day) for day in range((YEARS_AHEAD + 1) * 366 + 2))
    for low, high in pairwise(days):
        if _offset(low, zone) != _offset(high, zone):
            while high - low > timedelta(seconds=1):
                middle = low + (high - low) // 2
                middle = middle.replace(microsecond=0)
                low, high = (middle, high) if _offset(middle, zone) == _offset(low, zone) else (low, middle)
            yield low, high


def _offset(moment: datetime, zone: str) -> timedelta:
    offset = moment.astimezone(zone_of(zone)).utcoffset()
    assert offset is not None
    return offset
