"""The content of a lifter's report, section by section, in words and tables without markup.

Texts may hold anything a lifter wrote; the page makes them plain and escapes them (``companion.coach.page``).
"""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Final

from companion.base.clock import local_date, zone_of
from companion.calendar.plan import days_to_come
from companion.calendar.preferences import plan_from
from companion.calendar.words import date_words, day_words, plan_words
from companion.coach.answer_table import log_table
from companion.coach.caseload import shortened
from companion.coach.causes_section import CauseSection, cause_section, coach_ruling, ruling_order
from companion.coach.concluded import concluded_of
from companion.coach.days_section import charts_of, day_line, days_table
from companion.coach.holding import Held
from companion.coach.measurements import details, numbers_table, sources_of
from companion.coach.summary import PAUSED_WORDS, LifterPage, lifter_page
from companion.coach.tables import LocalTimes, Table, wall_words
from companion.coach.whys import Whys, section_whys
from companion.conversation.condition import Facts
from companion.conversation.registry import Book
from companion.export.questions import in_words
from companion.language.units import reworded
from companion.pictures.personal import owner_of
from companion.pictures.series import Chart
from companion.record import access, coaching, log, orders, people
from companion.record.caseload import alerts_of
from companion.record.context import SAFETY_LEVEL
from companion.reminders.kinds import coach_words
from companion.screening.conclusion import CANNOT_TELL, Conclusion
from companion.screening.levels import LEVEL_WORDS, REFERRED, STILL_STANDS, WENT_WORDS, words_of
from companion.screening.limits import Work
from companion.screening.load_limit import limit_now
from companion.screening.protocols import protocol
from companion.screening.readings import NumberFormat, metric
from companion.screening.safety import Level
from companion.screening.setups import squat_for_now
from companion.screening.squat_days import ToldDay, trial_seed
from companion.screening.standing import UNANSWERED_WORDS, SafetyStanding

PAGE_NAME_MOST: Final = 80
"""UTF-16 units of a name; our choice."""
UNLIMITED: Final = 1_000_000
"""Limit for acts and looks that a report shows in full."""
ASKED_OF: Final = {"bladder": "bladder, bowel, between the legs, both legs or sexual function", "chest": "chest, breath or faint",
                  "where": "where it hurts", "bad": "how bad it is"}
"""What some questions are about, in the answers that led to a level; the others by their key."""


@dataclass(frozen=True, slots=True)
class ReportContent:
    """The content of one lifter's report. ``safety``: the standing now; ``glance`` and ``plan``: (term, words);
    ``whys``: the answers to "why?" by section and by cause."""

    name: str
    made_at: str
    zone: str
    for_coach: bool
    tested: bool
    overall: str
    caution: str
    glance: tuple[tuple[str, str], ...]
    causes: tuple[CauseSection, ...]
    not_tested: str
    notes: tuple[str, ...]
    safety: SafetyStanding
    level_why: tuple[str, ...]
    alerts: Table
    numbers: Table
    details: tuple[Table, ...]
    differences: tuple[str, ...]
    charts: tuple[Chart, ...]
    days: Table
    trial: str
    plan: tuple[tuple[str, str], ...]
    reminders: Table
    acts: Table
    looks: Table
    log: Table
    sources: Table
    whys: Mapping[str, Whys]


def report_content(db: sqlite3.Connection, person: int, now: datetime, book: Book, for_coach: bool = True, only: str = "") -> ReportContent:
    """Return the content of a lifter's report as of ``now``, in their zone and units; ``only``: the part of the log in it, "" for all."""
    found = concluded_of(db, person, now)
    facts, answers, screen, days, conclusion = found.known.facts, found.answers, found.screen, found.days, found.conclusion
    zone, system, show, tested, rows = found.zone, found.system, found.show, found.tested, list(access.answers_of(db, person))
    when, whys = LocalTimes(zone), section_whys(found)
    seed = trial_seed(answers, str(person))
    page = lifter_page(db, 0, person, now)
    alerts, waiting, acts, looks = _tables(db, person, page, when)
    overruled = {cause.name: coach_ruling(cause.overruled, when) for cause in page.causes}
    causes = tuple(cause_section(verdict, overruled[verdict.cause]) for verdict in found.verdicts)
    return ReportContent(
        shortened(people.name_of(db, person), PAGE_NAME_MOST) or "somebody", when.moment(now), zone, for_coach, tested,
        conclusion.words if tested else "No test is done yet, so there is nothing to conclude.", CANNOT_TELL,
        _glance(facts, causes, days, page, show, when, local_date(now, zone)),
        causes, ", ".join(protocol(test).short_name for test in conclusion.not_tested),
        tuple(note for note in conclusion.notes if note != CANNOT_TELL) if tested else (),
        page.safety, _why(db, person, facts, page.safety, when),
        alerts, numbers_table(found), details(screen, show),
        conclusion.differences, charts_of(answers, owner_of(db, person, zone)), days_table(days, seed, show),
        page.trial, _plan(facts, conclusion, tested, page.held, system, now, zone),
        waiting, acts, looks, log_table(rows, book, system, when, only),
        sources_of(screen, found.errors, show), whys)


# summary --------------------------------------------------------------------------------------------------------


def _glance(facts: Facts, causes: Sequence[CauseSection], days: Sequence[ToldDay], page: LifterPage, show: NumberFormat, when: LocalTimes,
            today: date) -> tuple[tuple[str, str], ...]:
    """Return the lines at the top of the report."""
    told = {one.title: one.overruled.ruling if one.overruled else one.ruling for one in causes}
    parts = [(ruling.capitalize(), ", ".join(
        f"{one.title.lower()}{f', by a coach (the tests: {one.ruling})' if one.overruled else ''}"
        for one in causes if told[one.title] == ruling)) for ruling in sorted(set(told.values()), key=ruling_order)]
    last = days[-1] if days else None
    lines = [("Safety level now", page.safety.words.report), ("Told by a clinician", page.told), *parts, *_held_rows(page.held),
             ("Load lifted", page.over), ("Against what was set", page.kept),
             ("Last squat day", f"{when.day(last.day)}: {day_line(last, show)}" if last else ""),
             ("Test again", date_words(date.fromisoformat(str(facts["due.retest"])[:10]), today) if "due.retest" in facts else "")]
    return tuple((name, words) for name, words in lines if words)


_HELD_TITLES: Final = {"Depth": "Depth to keep to", "Load": "Load to keep to", "Drill": "Drill offered", "Retest": "Retest date"}


def _held_rows(held: Sequence[Held]) -> list[tuple[str, str]]:
    return [(_HELD_TITLES.get(one.title, one.title), one.line) for one in held]


def _squat_for_now(facts: Facts, conclusion: Conclusion, show: NumberFormat) -> str:
    """Return the set-up to squat with and the load it is held to; "" without one. The depth has a row of its own."""
    if conclusion.setup is None:
        return ""
    load, usual = limit_now(facts), facts.get("about_you.load")
    body = facts.get("safety.body_first") == "yes" or facts.get(Work.LOAD.fact) == "closed"
    return squat_for_now(conclusion.setup, None, load[1] if load else None, usual if isinstance(usual, float) else None, show, body=body)


# safety ---------------------------------------------------------------------------------------------------------


def _why(db: sqlite3.Connection, person: int, facts: Facts, safety: SafetyStanding, when: LocalTimes) -> tuple[str, ...]:
    """Return the reasons for the safety level as last set, and what was reported since."""
    said, kept, found = [], access.facts_of(db, person), access.findings_of(db, person)
    if safety.pain_open is not None:
        said.append(f"Something hurt on {when.moment(safety.pain_open)}, and the questions about it are still open.")
    if safety.asked is not None:
        said.append(f"{UNANSWERED_WORDS[safety.asked.about].coach.capitalize()}, since {when.moment(safety.asked.since)}.")
    open_level = safety.sent is None and safety.level is not None and safety.level.value in REFERRED
    if safety.kept is not None and safety.since is not None and not open_level:
        said.append(f"Set on {when.moment(safety.since)}: {LEVEL_WORDS[safety.kept].coach}"
                    f"{', which has lapsed since; no check has passed after it' if safety.needs_check else ''}.")
        if because := _because(db, person):
            said.append(f"Because: {because}")
        if safety.kept is not Level.GO and safety.why:
            said.append(f"Answers that led to it: {', '.join(ASKED_OF.get(key, in_words(key)) for key in safety.why.split())}.")
    if "referral.went" in kept and safety.since is not None and kept["referral.went"].at >= safety.since:
        went = found["referral.went"]
        said.append(f"Asked on {when.moment(went.at)} whether they have been seen: {WENT_WORDS.get(went.value, went.value)}"
                    f"{f': {went.because}' if went.value == 'yes' else ''}.")
    if "safety_check.pain" in kept:
        told = kept["safety_check.pain"]
        score = f"{told.value:g}" if isinstance(told.value, float) else told.value
        said.append(f"Back or hip pain as last reported in a safety check: {score} of 10, on {when.moment(told.at)}.")
    if "pain.morning" in kept:
        told = kept["pain.morning"]
        said.append(f"The morning after something hurt: {in_words(str(told.value))}, on {when.moment(told.at)}.")
    return tuple(said)


def _because(db: sqlite3.Connection, person: int) -> str:
    """Return the reason of the safety level; of one that only still stands, the reason it was set for."""
    reasons = [(one.value, one.because) for one in log.finding_history(db, person, SAFETY_LEVEL) if one.because]
    level, because = reasons[-1] if reasons else ("", "")
    first = next((why for was, why in reversed(reasons) if was == level and why != STILL_STANDS), "")
    return f"{because}: {first}" if because == STILL_STANDS and first else because


# plan, coach ----------------------------------------------------------------------------------------------------


def _plan(facts: Facts, conclusion: Conclusion, tested: bool, held: Sequence[Held], system: str, now: datetime,
          zone: str) -> tuple[tuple[str, str], ...]:
    plan, today = plan_from(facts), local_date(now, zone)
    coming = days_to_come(plan, now.astimezone(zone_of(zone)), 3)
    lines = [
        ("Squat days", plan_words(plan)), ("The next", "; ".join(day_words(one, today) for one in coming)),
        ("No squat days before", f"{back}" if (back := plan.paused_until(today)) else ""),
        ("No squat days from", "; ".join(f"{first} until {over}" for first, over in plan.away if first > today)),
        ("Goal, as written", str(facts.get("squat.goal", ""))),
        ("Squat for now", _squat_for_now(facts, conclusion, metric)), *_held_rows(held),
        ("What the tests say of depth", conclusion.keep_words if tested else ""),
        ("What the tests say of load", conclusion.load_words if tested else ""),
        ("Feet", conclusion.stance if tested else ""),
        ("Priming trial", "joined" if facts.get("trial.joined") == "yes" else ""),
        ("Homework, asked at the last retest", in_words(str(facts.get("home_work", ""))))]
    return tuple((name, reworded(words, system)) for name, words in lines if words)


def _tables(db: sqlite3.Connection, person: int, page: LifterPage, when: LocalTimes) -> tuple[Table, Table, Table, Table]:
    """Return alerts, reminders to come, and the acts and looks of coaches."""
    return (
        Table("alerts", "Alerts, the newest first", ("When", "Level", "Reason", "Seen"),
              tuple((when.moment(one.at), words_of(one.level).coach if one.level else "–", one.because,
                     ", ".join(filter(None, (one.seen_by, when.moment(one.seen_at)))) if one.seen_at else "not yet")
                    for one in alerts_of(db, person)),
              empty="No alert has been raised."),
        Table("reminders", "Reminders to come, the soonest first", ("Reminder", "When", "Zone", "Leads to"),
              tuple((coach_words(one.kind).capitalize(), wall_words(one.wall), one.zone, in_words(one.flow))
                    for one in page.waiting), empty=PAUSED_WORDS if page.paused else "No reminder is waiting."),
        Table("acts", "What a coach did, the newest first", ("When", "Coach", "What", "Value", "Reason"),
              tuple((when.text(at), name, in_words(what), orders.value_words(what, value, page.system), reason or "–")
                    for at, name, what, value, reason in coaching.latest_acts(db, person, UNLIMITED)),
              empty="No coach has set or overruled anything."),
        Table("looks", "Who looked at what, the newest first", ("When", "Coach", "What"),
              tuple((when.text(at), name, in_words(what)) for at, name, what in coaching.latest_looks(db, person, UNLIMITED)),
              empty="Nobody has looked at these answers in the bot."))
