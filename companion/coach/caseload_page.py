"""A whole caseload as one HTML page, most urgent first, sortable in the browser."""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from typing import Any, Final

from markupsafe import Markup

from companion.coach.caseload import coach_zone, day_namer, ordered, shortened, urgency
from companion.coach.names import with_distinct_names
from companion.coach.page import POLICY, hash_of, rendered, source_of
from companion.coach.pooled_page import POOLED_MEANS, pooled_rows
from companion.coach.report_sections import PAGE_NAME_MOST
from companion.coach.since import news_of, owed_words, quoted
from companion.coach.summary import DAY_FLOWS, answers_in
from companion.coach.tables import LocalTimes
from companion.coach.triage import GROUP_WORDS, GROUPS, RESULT_WORDS, TRIAGE, DayNamer, counted, depth_of
from companion.language.units import shown
from companion.pictures.personal import owner_of
from companion.pictures.series import days_kept
from companion.record import access, coaching
from companion.record.caseload import CaseloadRow, all_caseload_rows, caseload_rows
from companion.record.guesses import guess_score
from companion.record.timestamps import moment_of
from companion.screening.compliance import compliance_words
from companion.screening.conclusion import CANNOT_TELL
from companion.screening.depth import BAND_WORDS
from companion.screening.load_limit import at_most, limit_at
from companion.screening.squat_days import days_told

PAGE_COLUMNS: Final = ("Lifter", "Group", "Why", "Since", "Safety level, when set", "Result", "Depth to keep", "Load to keep", "Last squat",
                       "Against what was set", "Last answer", "Reviewed")
GROUP_MEANINGS: Final = {**{one.name: one.meaning for one in TRIAGE.values()}, "fine": "none of these"}


@dataclass(frozen=True, slots=True)
class PageRow:
    """One lifter: their name, and each cell as (text, sort key); the key "" comes last in any order. ``report``: the file of their
    report beside the page, "" for none."""

    name: str
    cells: tuple[tuple[str, str], ...]
    report: str = ""


def caseload_html(db: sqlite3.Connection, coach: int | None, now: datetime, reports: Mapping[int, str] | None = None) -> str:
    """Return the page of a coach's caseload, or of all lifters for the operator (``coach`` None), most urgent first.

    ``reports``: the file of each lifter's report, to link to.

    Empty if the person is not a coach. The one script sorts the table and is allowed by its hash; the page works without it.
    """
    script = source_of("sort.js")
    return rendered("caseload.html.jinja", {**caseload_content(db, coach, now, reports), "columns": PAGE_COLUMNS, "caution": CANNOT_TELL,
                                            "script": Markup(script), "policy": f"{POLICY}; script-src {hash_of(script)}"})


def caseload_content(db: sqlite3.Connection, coach: int | None, now: datetime, reports: Mapping[int, str] | None = None) -> dict[str, Any]:
    """Return what the page of a caseload tells, by the names in its template."""
    zone = coach_zone(db, coach, now) if coach is not None else "UTC+00:00"
    when, day_name = LocalTimes(zone), day_namer(zone, now)
    how = caseload_rows(db, coach) if coach is not None else all_caseload_rows(db)
    rows = {one.person: one for one in how}
    found = [(line, rows[line.person]) for line in ordered([urgency(one, now, day_name) for one in how])]
    apart = {line.person: line.name for line in with_distinct_names(db, coach, [line for line, _ in found])}
    lines = [PageRow(shortened(apart[line.person], PAGE_NAME_MOST) or "somebody", cells_of(db, one, now, when, day_name),
                     (reports or {}).get(line.person, "")) for line, one in found]
    many = Counter(line.group for line, _ in found)
    holds = many + Counter(one.group for line, _ in found for one in line.also)
    groups = [(GROUP_WORDS[group], holds[group], GROUP_MEANINGS[group]) for group in GROUPS]
    whose = shortened(coaching.coach_name(db, coach) or "nobody", PAGE_NAME_MOST) if coach is not None else "everybody"
    news = news_of(db, coach, now, zone) if coach is not None else []
    new = [(one.name, (reports or {}).get(one.person, ""), one.words, one.quote, one.act[0]) for one in (quoted(db, one) for one in news)]
    return {
        "pooled": pooled_rows(db, coach) if coach is not None else (), "pooled_means": POOLED_MEANS,
        "score": guess_score(db, coach).words if coach is not None else "", "since": coach is not None,
        "news": new, "due": owed_words(news),
        "whose": whose, "made_at": when.moment(now), "zone": zone, "lines": lines, "groups": groups, "short": counted(many)}


def cells_of(db: sqlite3.Connection, one: CaseloadRow, now: datetime, when: LocalTimes, day_name: DayNamer) -> tuple[tuple[str, str], ...]:
    """Return the cells of a lifter, for each of ``PAGE_COLUMNS`` after the name, as (text, sort key)."""
    line, depth, whose = urgency(one, now, day_name), depth_of(one), owner_of(db, one.person)
    answers = answers_in(access.answers_of(db, one.person), DAY_FLOWS)
    days = [day for day in days_told(answers, whose.zone) if day.squatted]
    last, limit, kept = days[-1] if days else None, limit_at(whose.limits, now), compliance_words(days_kept(answers, whose, days))
    most = "" if limit is None else at_most(limit, partial(shown, system=whose.system))
    squat = "" if last is None else f"{last.day:%a} {last.day.day} {last.day:%b}" + (
        f", {shown(last.load, 'kg', whose.system)}" if last.load else "")
    silent = (now - moment_of(one.answered)).days if one.answered else 0
    stands = one.safety(now)
    level = f"{stands.words.coach}, {when.text(one.level_at)}" if one.level_at else stands.words.coach
    return ((GROUP_WORDS[line.group], str(GROUPS.index(line.group))), (line.whole, line.whole.lower()),
            (when.day(line.since.astimezone(when.there).date()), line.since.isoformat()), (level, one.level_at or ""),
            (RESULT_WORDS.get(str(one.overall), "none yet"), RESULT_WORDS.get(str(one.overall), "")),
            (BAND_WORDS[depth] if depth else "none set", str(depth.rank) if depth else ""),
            (most or "none set", most), (squat or "none yet", last.day.isoformat() if last else ""), (kept or "no squat day yet", kept),
            (when.text(one.answered) + (f", {silent} {'day' if silent == 1 else 'days'} silent" if silent else "") if one.answered
             else "none yet", one.answered or ""),
            (when.text(one.reviewed) if one.reviewed else "never", one.reviewed or ""))
