"""The caseload: a coach's lifters by urgency, each with the reasons in one line (``triage``): in the group of the most urgent, the
others named after it. Within a group, emergency care comes first, then same-day care, a clinician and the rest; then the latest. Those
sent to emergency or same-day care come before a small pain, whatever their group.
"""

from __future__ import annotations

import re
import sqlite3
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Final

from companion.base.clock import zone_of
from companion.calendar.preferences import zone_from
from companion.calendar.words import DAY_NAMES
from companion.coach.triage import GROUP_WORDS, GROUPS, DayNamer, StateHeld, care_weight, reasons_of, weight_of
from companion.export.table import plain
from companion.record import access
from companion.record.caseload import CaseloadRow, caseload_rows
from companion.screening.levels import URGENT_LEVELS

REASON_MOST: Final = 300
"""UTF-16 units of a line's words: ten such lines fit one message."""
NAME_MOST: Final = 40
"""UTF-16 units of a name; our choice."""

URGENT_STATES: Final = ("asks", "hurt", "unanswered", "referred")
"""States that weigh by the care needed, and that nothing puts aside before they have begun."""
LIMIT_NAMED: Final = "a clinician's limit"

_SPACES: Final = re.compile(r"\s+")


@dataclass(frozen=True, slots=True)
class CaseloadLine:
    """One lifter in a caseload: number, name, group, and the reason in a line with its time. ``weight``: the urgency of the
    care they need first, 0 for none. ``also``: the other states that hold, the most urgent first. ``limited``: true while a clinician's
    limit is in force."""

    person: int
    name: str
    group: str
    words: str
    since: datetime
    weight: int
    also: tuple[StateHeld, ...] = ()
    limited: bool = False

    @property
    def whole(self) -> str:
        """The words, with a clinician's limit where they don't name it, and the names of the other states."""
        limit = f"; {LIMIT_NAMED}" if self.limited and LIMIT_NAMED not in self.words else ""
        return self.words + limit + (f"; also: {', '.join(GROUP_WORDS[one.group] for one in self.also)}" if self.also else "")

    def as_in(self, group: str) -> CaseloadLine | None:
        """Return the line with the reason of one group first; None where that state does not hold."""
        reasons = (StateHeld(self.group, self.words, self.since), *self.also)
        first = next((one for one in reasons if one.group == group), None)
        return replace(self, group=group, words=first.words, since=first.since,
                       also=tuple(one for one in reasons if one is not first)) if first else None


def shortened(text: str, most: int) -> str:
    """Return any text as one plain line of at most ``most`` UTF-16 units, which a chat counts."""
    clean = text if text.isprintable() else plain(text)  # plain() changes nothing in a printable text
    clean = _SPACES.sub(" ", clean).strip()
    if len(clean) * 2 <= most or utf16_length(clean) <= most:
        return clean
    kept: list[str] = []
    used = 1  # for "…"
    for one in clean:
        used += utf16_length(one)
        if used > most:
            break
        kept.append(one)
    return "".join(kept).rstrip() + "…"


_SENTENCE: Final = re.compile(r"(?<=[.!?]) +")


def in_whole_sentences(text: str, most: int) -> str:
    """Return as many whole sentences of a text as fit into ``most`` UTF-16 units; the first, shortened, where none does."""
    kept, *rest = _SENTENCE.split(shortened(text, 10 * most))
    for one in rest:
        if utf16_length(f"{kept} {one}") > most:
            break
        kept += f" {one}"
    return shortened(kept, most)


def utf16_length(text: str) -> int:
    """Return the length of a text in UTF-16 units."""
    return len(text) + sum(one > "\uffff" for one in text)


def caseload(db: sqlite3.Connection, coach: int, now: datetime, zone: str) -> list[CaseloadLine]:
    """Return a line for each lifter of a coach, most urgent first; none if the person is not a coach. ``zone``: the coach's."""
    day_name = day_namer(zone, now)
    return ordered([urgency(one, now, day_name) for one in caseload_rows(db, coach)])


def ordered(lines: list[CaseloadLine]) -> list[CaseloadLine]:
    """Sort lines by group, then by weight and time, both descending; in place."""
    lines.sort(key=lambda line: (place_of(line.group, line.weight), -line.weight, -line.since.timestamp()))
    return lines


def place_of(group: str, weight: int) -> int:
    """Return the place of a group, lowest first. Whoever was sent to be seen at once comes among those whom something hurt, and so before
    a small pain."""
    return min(GROUPS.index(group), _HURT) if weight >= _AT_ONCE else GROUPS.index(group)


def weight_under(group: str, one: CaseloadRow, now: datetime) -> int:
    """Return the urgency of the care needed, 0 where the group that leads says nothing of it."""
    return care_weight(one, now) if group in URGENT_STATES else 0


_HURT: Final = GROUPS.index("hurt")
_AT_ONCE: Final = min(map(weight_of, URGENT_LEVELS))


def coach_zone(db: sqlite3.Connection, coach: int, now: datetime) -> str:
    """Return a coach's own time zone."""
    return zone_from({name: kept.value for name, kept in access.facts_of(db, coach).items()}, now)


def day_namer(zone: str, now: datetime) -> DayNamer:
    """Return a function that names a moment's day: "today", "yesterday", "Tuesday" within the week, "3 Mar" or "3 Mar 2025"."""
    there = zone_of(zone)
    today = now.astimezone(there).date()

    def day_name(moment: datetime) -> str:
        day = moment.astimezone(there).date()
        ago = (today - day).days
        if 0 <= ago < 7:
            return "today" if not ago else "yesterday" if ago == 1 else DAY_NAMES[day.weekday()]
        return f"{day.day} {day:%b}" + (f" {day.year}" if abs(ago) > 300 else "")

    return day_name


def urgency(one: CaseloadRow, now: datetime, day_name: DayNamer) -> CaseloadLine:
    """Return the line of one lifter in the caseload."""
    first, *also = (StateHeld(group, shortened(words, REASON_MOST), since) for group, words, since in reasons_of(one, now, day_name))
    return CaseloadLine(one.person, shortened(one.name or "", NAME_MOST), *first, weight_under(first.group, one, now), tuple(also),
                        bool(one.safety(now).limits))
