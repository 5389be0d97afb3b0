"""The caseload: a coach's lifters by urgency, each with the reason in one line. ``urgency`` is pure.

Groups, most urgent first; a lifter is in the first one that applies. Within a group, emergency care comes first, then same-day
care, a clinician and the rest; then the latest.

- hurt: an alert since this coach's last review, from the pain questions, the morning after or "Did something hurt?" left
  unanswered; or pain questions left unfinished since then. A later safety check changes nothing: only finishing the questions or
  a review does;
- referred: the safety level says that a clinician, same-day care or emergency care comes first; a review changes nothing;
- worse: since the last review, a retest found a change for the worse beyond measurement error, or the back moved on a squat day
  and the depth was set back a step;
- over_load: since the last review, a squat day over the load limit;
- overdue: two retest reminders without an answer, or a retest due for more than a week; until there are results newer than the
  reminder, or a review since it became overdue;
- new_result: results later than the last review;
- quiet: no address can be reached (they blocked the bot), or no answer for two weeks;
- fine: none of these.

Days are in the coach's own zone. A week and two weeks are our choice.
"""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Final

from companion.base.clock import zone_of
from companion.calendar.preferences import zone_from
from companion.calendar.words import DAY_NAMES
from companion.export.table import plain
from companion.record import log
from companion.record.caseload import HURT_ASKED, CaseloadRow, caseload_rows
from companion.record.timestamps import moment_of, text_of
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.levels import REFERRED, words_of

GROUPS: Final = ("hurt", "referred", "worse", "over_load", "overdue", "new_result", "quiet", "fine")
GROUP_WORDS: Final = {group: group.replace("_", " ") for group in GROUPS}
OVERDUE_AFTER: Final = timedelta(days=7)
QUIET_AFTER: Final = timedelta(days=14)
REASON_MOST: Final = 90
"""UTF-16 units of a reason; our choice, two lines on a phone."""
NAME_MOST: Final = 40
"""UTF-16 units of a name; our choice."""

WHERE_WORDS: Final = {"back": "lower back", "hip": "hip or groin", "leg": "leg", "knee": "knee", "ankle": "ankle or foot",
                      "chest": "chest, breath or faint", "other": "somewhere else"}
RESULT_WORDS: Final = {"normal": "common rounding", "no_rounding": "no rounding seen", "load_question": "a question of load",
                       "likely": "a likely cause", "by_elimination": "a cause by elimination", "unexplained": "not explained",
                       "open": "still open"}
MOVED_BACK: Final = re.compile(r"The back moved|a step back")
"""Words by which the reason of a depth step (screening.depth_progression) says that the back moved or the depth was set back."""
_SPACES: Final = re.compile(r"\s+")


@dataclass(frozen=True, slots=True)
class CaseloadLine:
    """One lifter in a caseload: number, name, group, and the reason in a short line with its time. ``weight``: the urgency of the
    care they need first, 0 for none. ``silent``: words for their silence, whatever group they are in; "" where they answer."""

    person: int
    name: str
    group: str
    words: str
    since: datetime
    weight: int = 0
    silent: str = ""


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


def utf16_length(text: str) -> int:
    """Return the length of a text in UTF-16 units."""
    return len(text) + sum(one > "\uffff" for one in text)


def caseload(db: sqlite3.Connection, coach: int, now: datetime, zone: str) -> list[CaseloadLine]:
    """Return a line for each lifter of a coach, most urgent first; none if the person is not a coach. ``zone``: the coach's."""
    day_name = day_namer(zone, now)
    return ordered([urgency(one, now, day_name) for one in caseload_rows(db, coach)])


def ordered(lines: list[CaseloadLine]) -> list[CaseloadLine]:
    """Sort lines by group, then by weight and time, both descending; in place."""
    lines.sort(key=lambda line: (line.weight, line.since), reverse=True)
    lines.sort(key=lambda line: GROUPS.index(line.group))
    return lines


def coach_zone(db: sqlite3.Connection, coach: int, now: datetime) -> str:
    """Return a coach's own time zone."""
    return zone_from({name: kept.value for name, kept in log.facts_of(db, coach).items()}, now)


DayNamer = Callable[[datetime], str]


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


def _on(day: str) -> str:
    return day if day in ("today", "yesterday") else f"on {day}"


def urgency(one: CaseloadRow, now: datetime, day_name: DayNamer) -> CaseloadLine:
    """Return the line of one lifter in the caseload."""
    found = ((group, *told) for group, judge in _JUDGES if (told := judge(one, now, day_name)))
    group, words, since = next(found, None) or ("fine", *_fine(one, now, day_name))
    weight = _CARE.index(_care(one, now)) if group in ("hurt", "referred") else 0
    silent = _quiet(one, now, day_name)
    return CaseloadLine(one.person, shortened(one.name or "", NAME_MOST), group, shortened(words, REASON_MOST), since, weight,
                        shortened(silent[0], REASON_MOST) if silent else "")


LineReason = tuple[str, datetime] | None
_CARE: Final = ("", *REFERRED)


def _care(one: CaseloadRow, now: datetime) -> str:
    """Return the care that the alert or the current level asks for, the more urgent of the two: a small pain hides no emergency."""
    stands = one.safety(now).level
    return max((str(level) if level in REFERRED else "" for level in (one.hurt_level, stands and stands.value)), key=_CARE.index)


def _hurt(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    care = _care(one, now)
    level = words_of(care).coach if care else ""
    if one.open_at and (one.open_at > (one.hurt_at or "") or one.hurt_flow == "pain"):
        since = moment_of(one.open_at)
        told = _told(one) if one.hurt_at and one.hurt_at > one.open_at else ""
        words = f"hurt {_on(day_name(since))}: {told}, questions open" if told else f"something hurt {_on(day_name(since))}, questions open"
        return words + (f"; {level}" if level else ""), since
    if not one.hurt_at:
        return None
    since = moment_of(one.hurt_at)
    day = _on(day_name(since))
    if one.hurt_flow == "morning":
        words = f"not back to usual {day}" + (f": {one.how}" if one.how else "")
    elif one.hurt_flow != "pain":
        words = f"{HURT_ASKED} {day}, no answer"
    elif one.where == "nothing":
        words = f"said {day} that something hurt, then that nothing does"
    else:
        told = _told(one)
        words = f"hurt {day}: {told}" if told else f"hurt {day}"
    return words + (f"; {level}" if level else ""), since


def _told(one: CaseloadRow) -> str:
    """Return where it hurts and how bad it is, as far as answered."""
    where = WHERE_WORDS.get(str(one.where), str(one.where)) if one.where else ""
    return ", ".join(filter(None, (where, f"{one.bad:g} of 10" if isinstance(one.bad, int | float) else "")))


def _referred(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    stands = one.safety(now)
    if stands.since is None or stands.level is None or stands.level.value not in REFERRED:
        return None
    return f"{stands.words.coach}, since {day_name(stands.since)}", stands.since


def _worse(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    reviewed = one.reviewed or ""
    if one.change == "worse" and one.change_at and one.change_at > reviewed:
        since = moment_of(one.change_at)
        return f"worse at the retest {_on(day_name(since))}" + (f": {one.change_because}" if one.change_because else ""), since
    if one.back == "moved" and one.back_at and one.back_at > reviewed and MOVED_BACK.search(one.step_why or ""):
        since, depth = moment_of(one.back_at), band_of(str(one.step))
        return f"back moved {_on(day_name(since))}, a step back" + (f": keep to {BAND_WORDS[depth]}" if depth else ""), since
    return None


def _over_load(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.over_at is None or not one.over or one.over_at <= (one.reviewed or ""):
        return None
    since = moment_of(one.over_at)
    return f"{one.over}, last told {day_name(since)}", since


def _overdue(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.retest_due is None:
        return None
    told, since = moment_from(one.outcome_at), moment_of(one.retest_due)
    if told is not None and one.retest_made is not None and text_of(told) > one.retest_made:
        return None  # it was done, on its day or before it: results are newer than the reminder
    reviewed = moment_of(one.reviewed) if one.reviewed else None
    if one.retest_state == "ignored":
        if reviewed is not None and reviewed >= moment_of(one.retest_settled or one.retest_due):
            return None
        return f"no answer to two retest reminders, since {day_name(since)}", since
    overdue = since + OVERDUE_AFTER  # who stopped all reminders ("replaced") still has the retest to do
    if one.retest_state in ("open", "replaced") and now > overdue and (reviewed is None or reviewed < overdue):
        return f"retest overdue, since {day_name(since)}", since
    return None


def _new_result(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    told = moment_from(one.outcome_at)
    if told is None or (one.reviewed and told <= moment_of(one.reviewed)):
        return None
    return f"new result {_on(day_name(told))}: {RESULT_WORDS.get(str(one.overall), 'unknown')}", told


def _quiet(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.gone:
        at, _, why = one.gone.partition(" ")
        since = moment_of(at)
        return f"can't be reached since {day_name(since)}" + (f": {why}" if why else ""), since
    since = moment_of(one.answered or one.linked)
    if now - since <= QUIET_AFTER:
        return None
    return (f"quiet since {day_name(since)}" if one.answered else f"no answer yet, linked {_on(day_name(since))}"), since


def _fine(one: CaseloadRow, now: datetime, day_name: DayNamer) -> tuple[str, datetime]:
    stands = one.safety(now)
    shut = f"; {stands.words.coach}" if stands.stands_since or stands.limits else ""
    if not one.answered:
        since = moment_of(one.linked)
        return f"fine, linked {_on(day_name(since))}{shut}", since
    since, depth = moment_of(one.answered), band_of(str(one.step))
    return f"fine, last answer {_on(day_name(since))}{shut}" + (f"; keeps to {BAND_WORDS[depth]}" if depth else ""), since


_JUDGES: Final = (("hurt", _hurt), ("referred", _referred), ("worse", _worse), ("over_load", _over_load), ("overdue", _overdue),
                  ("new_result", _new_result), ("quiet", _quiet))


def moment_from(text: object) -> datetime | None:
    """Return the moment in a fact; None where it is not one. A time without a zone counts as UTC."""
    if not text:
        return None
    try:
        moment = datetime.fromisoformat(str(text))
    except ValueError:
        return None
    return moment if moment.tzinfo else moment.replace(tzinfo=UTC)
