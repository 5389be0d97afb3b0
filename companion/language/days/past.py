"""Days gone by, as somebody names the day of their squats: "on Monday", "yesterday", "two days ago"."""

from __future__ import annotations

import re
from datetime import date, timedelta
from typing import Final

from companion.calendar.words import DAY_NAMES
from companion.language.clauses import flat

_COUNTS: Final = {"a": 1, "one": 1, "two": 2, "couple of": 2, "three": 3, "four": 4, "five": 5, "six": 6,
                  **{str(n): n for n in range(1, 100)}}
_AGO: Final = re.compile(rf"\b({'|'.join(sorted(_COUNTS, key=len, reverse=True))}) days? ago\b")
_NAMED: Final = (
    (re.compile(r"\b(?:the )?(?:day|night|evening) before (?:yesterday|last)\b"), 2),
    (re.compile(r"\b(?:yesterday|yday|last (?:night|evening))\b"), 1),
    (re.compile(r"\b(?:today|tonight|this (?:morning|afternoon|evening)|just now|earlier)\b"), 0))
_WEEKDAY: Final = re.compile("|".join(
    rf"(?P<d{n}>\b{name.lower()}s?\b|\b(?:on|last|this|past) {name[:3].lower()}(?:s|rs?|nes|urs)?\b|^{name[:3].lower()}$)"
    for n, name in enumerate(DAY_NAMES)))
_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_MONTH: Final = rf"(?:{'|'.join(_MONTHS)})[a-z]*"
_DATE: Final = re.compile(rf"\b(?P<iso>\d{{4}}-\d\d-\d\d)\b|\b(?P<day>\d{{1,2}})(?:st|nd|rd|th)? (?:of )?(?P<month>{_MONTH})\b|"
                         rf"\b(?P<first>{_MONTH}) (?P<after>\d{{1,2}})(?:st|nd|rd|th)?\b")
"""2026-03-02, 2 March, the 2nd of March, March 2nd."""
_DENIED: Final = re.compile(r"\b(?:not|never|\w+nt|no squats?|instead|but not)\b")
WEEK: Final = 7


def past_days(text: str, today: date) -> frozenset[date]:
    """Return the days that a text names, today or before: a weekday is the last one of its name. None for a text that denies."""
    said = flat(text)
    if _DENIED.search(said):
        return frozenset()
    found = {today - timedelta(days=_COUNTS[one[1]]) for one in _AGO.finditer(said)}
    for pattern, back in _NAMED:
        if pattern.search(said):
            found.add(today - timedelta(days=back))
            said = pattern.sub(" ", said)
    found.update(day for one in _DATE.finditer(text.lower()) if (day := _dated(one, today)))
    for one in _WEEKDAY.finditer(said):
        found.add(today - timedelta(days=(today.weekday() - int(str(one.lastgroup)[1:])) % WEEK))
    return frozenset(found)


def _dated(found: re.Match[str], today: date) -> date | None:
    """Return the last day of this date, today or before; None for one that is none, or is to come."""
    try:
        if found["iso"]:
            day = date.fromisoformat(found["iso"])
        else:
            month = _MONTHS.index((found["month"] or found["first"])[:3]) + 1
            day = date(today.year, month, int(found["day"] or found["after"]))
            day = day.replace(year=today.year - 1) if day > today else day
    except ValueError:
        return None
    return day if day <= today else None
