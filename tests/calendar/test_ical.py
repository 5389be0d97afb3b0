"""The squat days as iCalendar: read back by other libraries, they are the same moments."""

import re
from datetime import UTC, date, datetime, time, timedelta
from io import StringIO
from zoneinfo import ZoneInfo

import pytest
import recurring_ical_events
from dateutil import tz
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar, Timezone

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.ical import YEARS_AHEAD, calendar_text
from companion.calendar.plan import MoveDay, Plan, Skip, changed
from tests.calendar.plans import END, PLANS, START, TEN_YEARS, ZONES, until, utc

NOW = utc("2026-02-01 12:00")
TUESDAYS_AND_FRIDAYS = Plan(weekly=((1, time(18)), (4, time(18))))


def text_of(plan: Plan, zone: str, **rest) -> str:
    return calendar_text(plan, zone, **{"now": NOW, "name": "Squat days", "key": "one"} | rest)


def read_back(text: str, start: date = START - timedelta(days=1), end: date = END) -> list[datetime]:
    """The moments another library finds in a text: recurring-ical-events."""
    events = recurring_ical_events.of(Calendar.from_ical(text)).between(start, end)
    assert {event["DTEND"].dt - event["DTSTART"].dt for event in events} <= {timedelta(hours=1)}
    return sorted(event["DTSTART"].dt.astimezone(UTC) for event in events)


def ours(plan: Plan, zone: str, end: date = END) -> list[datetime]:
    return [instant(squat.day, squat.at, zone) for squat in until(plan, end, local_date(NOW, zone))]


def under_own_name(text: str, zone: str) -> str:
    """The text with its zone under a name that nobody knows, so that a reader has to go by the VTIMEZONE in it."""
    return text.replace(f"TZID:{zone}", f"TZID:Own {zone}").replace(f"TZID={zone}", f"TZID=Own {zone}")


@given(PLANS, st.sampled_from(ZONES))
@TEN_YEARS
def test_ten_years_of_any_plan_read_back_are_the_same_moments(plan, zone):
    assert read_back(text_of(plan, zone)) == ours(plan, zone)


AT_CHANGES = [
    # zone, days of both changes of 2026, a time skipped or repeated, its moment (IANA time zone database)
    ("Europe/Lisbon", "2026-03-29", "01:30", "2026-03-29 01:00"),
    ("Europe/Lisbon", "2026-10-25", "01:30", "2026-10-25 00:30"),
    ("America/New_York", "2026-03-08", "02:30", "2026-03-08 07:00"),
    ("America/New_York", "2026-11-01", "01:30", "2026-11-01 05:30"),
    ("Australia/Lord_Howe", "2026-10-04", "02:15", "2026-10-03 15:30"),
    ("Australia/Lord_Howe", "2026-04-05", "01:45", "2026-04-04 14:45"),
    ("Africa/Casablanca", "2026-03-22", "02:30", "2026-03-22 02:00"),
    ("Africa/Casablanca", "2026-02-15", "02:30", "2026-02-15 01:30"),
]


@pytest.mark.parametrize(("zone", "day", "at", "moment"), AT_CHANGES)
def test_a_time_skipped_is_the_first_that_exists_and_one_repeated_the_first(zone, day, at, moment):
    """By a weekly rule, by a rule of days, and as a single day: one event, at the moment written out here."""
    sunday, wall = date.fromisoformat(day), time.fromisoformat(at)
    for plan in (Plan(weekly=((6, wall),)), Plan(every=7, start=sunday - timedelta(days=14), at=wall), Plan(single=((sunday, wall),))):
        text = text_of(plan, zone, now=instant(sunday - timedelta(days=10), time(12), zone))
        found = read_back(text, sunday - timedelta(days=2), sunday + timedelta(days=2))
        assert found == [utc(moment)]
        assert read_back(under_own_name(text, zone), sunday - timedelta(days=2), sunday + timedelta(days=2)) == found


def test_left_to_the_reader_a_skipped_time_would_be_half_an_hour_later_than_ours():
    """RFC 5545 3.3.5 reads 02:30 by the offset from before the change: 03:30. We say 03:00, and write 03:00."""
    plan = Plan(single=((date(2026, 3, 8), time(2, 30)),))
    text = text_of(plan, "America/New_York")
    assert "DTSTART;TZID=America/New_York:20260308T030000" in text
    assert read_back(text) == [utc("2026-03-08 07:00")]
    assert read_back(text.replace("20260308T030000", "20260308T023000")) == [utc("2026-03-08 07:30")]


def test_a_rule_that_begins_on_a_skipped_time_begins_a_week_later_beside_that_day():
    text = text_of(Plan(weekly=((6, time(2, 30)),)), "America/New_York", now=utc("2026-03-08 05:00"))
    assert "DTSTART;TZID=America/New_York:20260315T023000" in text
    assert read_back(text, date(2026, 3, 7), date(2026, 3, 16)) == [utc("2026-03-08 07:00"), utc("2026-03-15 06:30")]


@pytest.mark.parametrize("zone", [*ZONES, "UTC", "Asia/Kathmandu", "America/Havana", "America/Scoresbysund"])
def test_the_zone_written_out_has_the_same_offsets_for_ten_years(zone):
    """Read by dateutil's tzical, which knows no zone but the one in the text. It decides by wall time, so at noon."""
    text = text_of(TUESDAYS_AND_FRIDAYS, zone)
    read = tz.tzical(StringIO(text.replace("\r\n", "\n"))).get()
    for day in range((END - START).days):
        noon = datetime.combine(START + timedelta(days=day), time(12))
        assert noon.replace(tzinfo=read).utcoffset() == noon.replace(tzinfo=zone_of(zone)).utcoffset()


def onsets(component: Timezone, year: int) -> set[datetime]:
    """The moments at which a VTIMEZONE changes its offset in a year: its local onsets less the offset they change from."""
    found = set()
    for part in component.subcomponents:
        dates = part.get("rdate", [])
        rows = [row.dt for each in (dates if isinstance(dates, list) else [dates]) for row in each.dts]
        found |= {(at - part["tzoffsetfrom"].td).replace(tzinfo=UTC) for at in [part["dtstart"].dt, *rows] if at.year == year}
    return found


def test_the_zone_written_out_changes_when_the_zone_does_which_the_librarys_own_does_not():
    zone, changes = "America/New_York", {utc("2030-03-10 07:00"), utc("2030-11-03 06:00")}
    (component,) = Calendar.from_ical(text_of(TUESDAYS_AND_FRIDAYS, zone)).walk("VTIMEZONE")
    assert onsets(component, 2030) == changes
    theirs = Timezone.from_tzinfo(ZoneInfo(zone), zone, date(2030, 1, 2), date(2031, 1, 1))
    assert onsets(theirs, 2030) - {utc("2030-01-02 05:00")} == {utc("2030-03-10 08:00"), utc("2030-11-03 06:00")}


def test_a_text_keeps_to_the_form():
    """RFC 5545: version, product, CRLF, 75 octets a line, a zone for each name, whole names across exports."""
    name = "Dias de agachamento: terças e sextas, às 18:00, com calma e sem pressa nenhuma " * 2
    text = text_of(changed(TUESDAYS_AND_FRIDAYS, Skip(date(2026, 2, 3))), "Europe/Lisbon", name=name)
    lines = text.split("\r\n")
    assert lines.pop() == ""
    assert not any("\n" in line or len(line.encode()) > 75 for line in lines)
    assert lines[0] == "BEGIN:VCALENDAR"
    assert "VERSION:2.0" in lines
    assert any(line.startswith("PRODID:") for line in lines)
    calendar = Calendar.from_ical(text)
    assert calendar["X-WR-CALNAME"] == name
    assert set(re.findall(r"TZID=([^:;]+)", text)) == {zone["TZID"] for zone in calendar.walk("VTIMEZONE")} == {"Europe/Lisbon"}
    assert all("DTSTAMP" in event and "UID" in event for event in calendar.walk("VEVENT"))


def test_one_rule_is_one_event_for_each_time():
    plan = Plan(weekly=((0, time(18)), (2, time(7)), (4, time(18))))
    rules = [event["RRULE"] for event in Calendar.from_ical(text_of(plan, "Europe/Lisbon")).walk("VEVENT")]
    assert [rule.to_ical().decode() for rule in rules] == ["FREQ=WEEKLY;BYDAY=MO,FR", "FREQ=WEEKLY;BYDAY=WE"]
    (event,) = Calendar.from_ical(text_of(Plan(every=3, start=START, at=time(18)), "UTC+01:00")).walk("VEVENT")
    assert event["RRULE"].to_ical().decode() == "FREQ=DAILY;INTERVAL=3"


def test_a_paused_plan_begins_when_the_pause_ends_and_none_has_no_event():
    paused = Plan(TUESDAYS_AND_FRIDAYS.weekly, back_on=date(2026, 3, 4))
    assert read_back(text_of(paused, "Europe/Lisbon"))[0] == utc("2026-03-06 18:00")
    assert "VEVENT" not in text_of(Plan(), "Europe/Lisbon")


def test_importing_again_changes_what_is_there():
    """The same names and a later version, also after the time and the days have changed; another lifter's never."""
    def rows(plan, **rest):
        return {str(event["UID"]): event["SEQUENCE"] for event in Calendar.from_ical(text_of(plan, "UTC", **rest)).walk("VEVENT")}

    moved = MoveDay(date(2026, 2, 3), date(2026, 2, 4), time(7))
    first = rows(changed(TUESDAYS_AND_FRIDAYS, moved))
    later = rows(changed(Plan(weekly=((0, time(7)), (3, time(7)))), moved), now=NOW + timedelta(days=1))
    assert set(first) == set(later)
    assert all(first[name] < later[name] for name in first)
    assert not set(first) & set(rows(TUESDAYS_AND_FRIDAYS, key="two"))


def test_a_text_names_nobody():
    assert "Ana Person" not in text_of(TUESDAYS_AND_FRIDAYS, "UTC", key="Ana Person")


def test_the_same_plan_at_the_same_time_is_the_same_text():
    assert text_of(TUESDAYS_AND_FRIDAYS, "Africa/Casablanca") == text_of(TUESDAYS_AND_FRIDAYS, "Africa/Casablanca")


def test_reminders_are_events_of_their_own_at_their_moments():
    rows = [("retest", utc("2026-03-29 00:30"), "Time to test again"), ("outcome", utc("2026-03-30 08:00"), "How did it go, and why?")]
    events = Calendar.from_ical(text_of(Plan(), "Europe/Lisbon", reminders=rows)).walk("VEVENT")
    assert [(event["DTSTART"].dt, str(event["SUMMARY"])) for event in events] == [(moment, words) for _, moment, words in rows]
    assert len({str(event["UID"]) for event in events}) == 2


def test_skipped_times_are_looked_for_to_the_end_of_the_tenth_year():
    plan = Plan(weekly=((6, time(1, 30)),))
    last = date(2036, 3, 30)
    assert last.year == NOW.year + YEARS_AHEAD
    assert read_back(text_of(plan, "Europe/Lisbon"), last, last + timedelta(days=1)) == [utc("2036-03-30 01:00")]


@pytest.mark.parametrize("zone", ["UTC", "Zulu", "Etc/UTC", "Nowhere/Land", "UTC-03:30"])
def test_a_day_left_out_is_left_out_in_any_zone(zone):
    plan = changed(TUESDAYS_AND_FRIDAYS, Skip(date(2026, 2, 6)))
    text = text_of(plan, zone)
    (begins, left_out) = re.findall(r"^(?:DTSTART|EXDATE);TZID=(.+):\d{8}T180000\r$", text, re.MULTILINE)
    assert begins == left_out
    assert read_back(text, START, START + timedelta(days=15)) == ours(plan, zone, START + timedelta(days=15))
