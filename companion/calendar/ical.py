"""Squat days as iCalendar text (RFC 5545), for a lifter's own calendar app.

One recurring event of an hour for each rule, and a single event for each day that differs from its rule. The text carries its own time
zone for ten years ahead; an app that knows the zone's name can go on after that.

**Times skipped by a clock change.** RFC 5545 reads one by the offset before the change (3.3.5): 02:30 in New York on 8 March 2026 is
03:30. For a recurrence, 3.3.10 says both that it is left out and that it is read like that (its words, second-hand), so calendar apps
differ. Here it is the first moment that exists, 03:00 (``clock.instant``). To leave no doubt, the rule excludes the day (EXDATE) and a
single event stands at that moment, for ten years ahead. A repeated time means its first occurrence.
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

if TYPE_CHECKING:  # takes 40 ms to import, and few turns need it
    from icalendar import Event, Timezone

PRODUCT: Final = "-//squat-companion//squat days//EN"
YEARS_AHEAD: Final = 10
LASTS: Final = timedelta(hours=1)
"""Length of a squat day's event; our choice."""

REMINDER_LASTS: Final = timedelta(minutes=15)
SUMMARY: Final = "Squat day"

_OURS: Final = UUID("6f6f2a4e-3f0b-5c1d-9d53-0b8f5d0a7c21")  # drawn once; a namespace of our own for uuid5
_EPOCH: Final = datetime(2020, 1, 1, tzinfo=UTC)


def calendar_text(plan: Plan, zone: str, now: datetime, name: str, reminders: Sequence[tuple[str, datetime, str]] = (), *,
                  key: str) -> str:
    """Return a plan from today on as iCalendar text: lines folded at 75 octets, ended by CRLF, written by ``icalendar``.

    ``name``: the calendar's name. ``reminders``: (kind, moment, summary) of further events, each kind once. ``key``: a stable identifier
    of the lifter, not their name; it is hashed into the event UIDs, so that importing again updates events instead of doubling them. A
    single day that is dropped after an export stays in the calendar it was imported into.
    """
    from icalendar import Calendar, Event, vRecur

    today = local_date(now, zone)
    stamped = now.astimezone(UTC).replace(microsecond=0)
    tzid = {"TZID": zone_id(zone)}

    def event(what: str, summary: str, lasts: timedelta) -> Event:
        """Return an event with its UID, sequence, summary and length."""
        one = Event()
        one.add("uid", str(uuid5(_OURS, f"{key}/{what}")))
        one.add("dtstamp", stamped)
        one.add("sequence", int((stamped - _EPOCH) / timedelta(minutes=1)))  # a later export counts as the newer version
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
    """Return a zone's TZID: an IANA name, or "UTC+0100" without the colon, which would need quoting.

    "UTC" becomes "Etc/UTC": for a zone named "UTC" ``icalendar`` writes start times in UTC form but not the excluded ones.
    """
    name = str(zone_of(zone))
    return "Etc/UTC" if name == "UTC" else name.replace(":", "")


def _ahead(plan: Plan, today: date) -> Iterator[SquatDay]:
    """Yield the squat days from today to the end of the tenth year ahead."""
    return takewhile(lambda squat: squat.day.year <= today.year + YEARS_AHEAD, squat_days(plan, today))


def _rules(plan: Plan, today: date) -> Iterator[tuple[dict[str, object], list[SquatDay]]]:
    """Yield each rule of a plan as RRULE parts, one per squat time, with every day it gives before single days and pauses with a start
    are taken out."""
    days = list(_ahead(replace(plan, single=(), away=()), today))
    if plan.every:
        yield {"FREQ": "DAILY", "INTERVAL": plan.every}, days
        return
    for at in dict.fromkeys(at for _, at in plan.weekly):
        names = [WEEKDAYS[day] for day, when in plan.weekly if when == at]
        yield {"FREQ": "WEEKLY", "BYDAY": names}, [day for day in days if day.at == at]


def _exists(squat: SquatDay, zone: str) -> bool:
    """True if the local clock shows a squat day's time on that day."""
    return _shown(squat, zone) == datetime.combine(squat.day, squat.at)


def _shown(squat: SquatDay, zone: str) -> datetime:
    """Return the local wall-clock time at which a squat day begins, without a zone."""
    return instant(squat.day, squat.at, zone).astimezone(zone_of(zone)).replace(tzinfo=None)


def _timezone(zone: str, year: int) -> Timezone:
    """Return a zone's offsets from the start of a year as a VTIMEZONE, every change listed: Ramadan follows no rule.

    The library's ``Timezone.from_tzinfo`` puts the changes of spring an hour late (7.3.2; ``tests/calendar`` shows it).
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
    """Yield a zone's offset changes as (a moment before, the first moment after) in UTC, starting with the beginning as both."""
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
