"""One lifter as chat messages: summary, numbers, squat days, alerts and acts, thread, charts and “why?”."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from companion.base.clock import local_date
from companion.calendar.words import day_words
from companion.coach.caseload import in_whole_sentences, shortened
from companion.coach.concluded import concluded_of
from companion.coach.days_section import back_words, kept_words
from companion.coach.holding import moment_from
from companion.coach.letters import guess_row, short, tap
from companion.coach.look import LINE_MOST, LifterView, back_rows, fitting
from companion.coach.measurements import numbers_table
from companion.coach.summary import PAUSED_WORDS, AlertDetail, CauseSummary, LifterPage
from companion.coach.tables import wall_words
from companion.coach.triage import RESULT_WORDS, on_day
from companion.coach.whys import WHY_PREFIX, WHY_VIEW, topics_of
from companion.conversation.effects import Say
from companion.conversation.prompt import in_rows
from companion.export.questions import in_words
from companion.language.units import shown
from companion.pictures.film_chart import FILM_CHART
from companion.pictures.personal import owner_of
from companion.pictures.series import all_charts, chart_of
from companion.record import access, log, orders
from companion.record.caseload import KeptAlert
from companion.record.guesses import guess_words
from companion.record.picture_files import CURVE_FACT, FILM_KEPT, film_kept_for
from companion.record.thread import thread_of
from companion.record.timestamps import moment_of
from companion.reminders.kinds import coach_words
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.conclusion import RULING_WORDS
from companion.screening.levels import WENT_WORDS, words_of
from companion.screening.rulings import Ruling
from companion.screening.squat_days import ToldDay

EVIDENCE_MOST: Final = 600
"""UTF-16 units of a cause's grounds in a summary: none that a test can give is longer. Our choice."""
ENTRIES_SHOWN: Final = 10
SUMMARY_MOST: Final = 3500
"""Both our choice, for the width and height of a phone."""
_WRITE: Final = ("Write", "coach_note", "note")
RULINGS: Final = {**{ruling.value: words for ruling, words in RULING_WORDS.items()}, "open": "open", "": "no results yet"}


def summary_say(look: LifterView, page: LifterPage) -> Say:
    """Return the summary of a lifter, with buttons to the other views."""
    of = look.lifter
    taps = [tap(label, "lifter", f"{of}-{what}") for label, what in (("Numbers", "numbers"), ("Squat days", "days"))]
    taps += [tap("Log", "lifter_log", f"{of}-0"), tap("Charts", "lifter", f"{of}-charts"), tap("Report", "lifter_report", of),
             tap("Messages", "lifter", f"{of}-thread"), *look.taps(_WRITE),
             tap("Reviewed", "coach_act", f"{of}-reviewed"), tap("Why?", "lifter", f"{of}-{WHY_VIEW}"),
             tap("More", "lifter", f"{of}-more"), tap("Back to list", "caseload")]
    expects = page.retest_to_come and look.taps(("", "", "guess"))
    return Say(fitting(_summary(look, page), SUMMARY_MOST), (*([guess_row(of)] if expects else []), *in_rows(taps, 2)))


def _summary(look: LifterView, page: LifterPage) -> Iterable[str]:
    yield look.name
    if page.gone:
        yield shortened(f"Can't be reached since {look.day_name(page.gone[0])}: {page.gone[1] or 'no reason given'}", 90)
    since = f", since {look.day_name(at)}" if (at := page.safety.stands_since) else ""
    yield shortened(f"Safety: {page.safety.words.coach}{since}", 90)
    if page.told:
        yield shortened(f"Told by a clinician: {page.told}", 160)
    if page.went and page.safety.since and page.went.at >= page.safety.since:
        yield shortened(f"Been seen: {WENT_WORDS.get(page.went.value, page.went.value)}, told {look.day_name(page.went.at)}"
                  f"{f': {page.went.because}' if page.went.value == 'yes' else ''}", 110)
    if told := moment_from(page.told_at):
        yield f"Results, {look.day_name(told)}: {RESULT_WORDS.get(page.overall, 'unknown')}"
    if page.change:
        yield shortened(f"Changed, and is it real: {in_words(page.change.value)}, {look.day_name(page.change.at)}: "
                        f"{page.change.because}", 300)
    if page.trial:
        yield shortened(f"Priming trial: {page.trial}", 300)
    for cause in page.causes:
        yield _cause_line(cause, EVIDENCE_MOST, EVIDENCE_MOST)
    yield from _held_lines(page)
    if page.days:
        yield f"Last squats: {_day_words(page.days[0], page, 240)}"
    coming = f" Next: {day_words(page.coming[0], local_date(look.now, page.zone))}." if page.coming else ""
    yield f"Plan: {shortened(page.plan_words, 90)}.{coming}"
    if page.waiting:
        one = page.waiting[0]
        yield f"Next reminder: {coach_words(one.kind)}, {wall_words(one.wall)}"
    elif page.paused:
        yield PAUSED_WORDS
    if expected := guess_words(look.db, look.coach, look.lifter):
        yield f"You expect of the retest: {expected}"
    if page.media:
        yield f"Photos and videos: {len(page.media)}, latest {look.day_name(page.media[0].at)}"
    if page.alarms:
        one_alert = page.alarms[0].alert
        yield in_whole_sentences(f"Last alert {look.day_name(one_alert.at)}: {one_alert.because}", 260) + _seen(one_alert, look)
    if page.goal:
        yield f"Wants: {shortened(page.goal, 60)}"
    answered = f", last {look.day_name(page.answered_at)}" if page.answered_at else ""
    reviewed = f"; reviewed {look.day_name(moment_of(page.reviewed_at))}" if page.reviewed_at else "; not reviewed yet"
    yield f"{page.answers} answers{answered}{reviewed}"


def _cause_line(cause: CauseSummary, most: int, overruled_most: int) -> str:
    """Return a cause with its evidence, and below it a coach's ruling."""
    by = ", by" if cause.ruling == Ruling.RULED_OUT.value and cause.because else ""
    rests = f"{by}: {cause.because}" if cause.because else ""
    said = shortened(f"{cause.name.capitalize()}: {RULINGS.get(cause.ruling, cause.ruling)}{rests}", most)
    if cause.overruled:
        coach = RULINGS.get(cause.overruled.value, cause.overruled.value)
        why = cause.overruled.because or "no reason given"
        said += "\n" + shortened(f"· {cause.overruled.rule or 'overruled'}: {coach}, {why}", overruled_most)
    return said


def _held_lines(page: LifterPage) -> list[str]:
    """Return what holds for the lifter now, a line each, how often the load was over its limit, and how days stand against it all."""
    over = [shortened(page.over[:1].upper() + page.over[1:], 90)] if page.over else []
    against = [shortened(f"Against what was set, {page.kept}", 240)] if page.kept else []
    return [*(shortened(f"{one.title}: {one.line}", 240) for one in page.held), *over, *against]


def _day_words(day: ToldDay, page: LifterPage, most: int) -> str:
    """Return one squat day in words: date, load, depth, back, pain and the note."""
    load = "" if day.load is None else shown(day.load, "kg", page.system) if day.load else "no bar"
    parts = (f"{day.day:%a} {day.day.day} {day.day:%b}", load, kept_words(day), back_words(day),
             "on film" if day.film else "", "" if day.felt is None else f"movement felt {day.felt:g} of 10",
             "SOMETHING HURT" if day.hurt else "", f"“{shortened(day.note, 120)}”" if day.note else "")
    return shortened(", ".join(filter(None, parts)), most)


def numbers_says(look: LifterView, page: LifterPage) -> list[Say]:
    """Return the evidence of each cause, then each reading with its lines, its error and its change, as the report has them."""
    causes = (_cause_line(cause, 900, 300) for cause in page.causes)
    rests = [f"{look.name}: what the result is based on", shortened(page.overall_words, 200), "", *causes]
    table = numbers_table(concluded_of(look.db, look.lifter, look.now))
    lines = [f"{look.name}: numbers that count now"]
    for row in table.rows:
        of, reading, how, held, error, change = ((cell,) if isinstance(cell, str) else cell for cell in row)
        lines += ["", f"{of[0]}: {', '.join(reading)}", *how, *(f"· {line}" for line in held), f"Error: {'; '.join(error)}",
                  f"Change: {'; '.join(change)}"]
    if not table.rows:
        lines.append(table.empty)
    return [Say(fitting(rests)), Say(fitting(lines), (
        (tap("Compare two days", "compare", look.lifter),), *back_rows(look.lifter, ("Charts", "charts"), ("Squat days", "days"))))]


def days_say(look: LifterView, page: LifterPage) -> Say:
    """Return the last squat days, newest first, and the depth and load to keep to."""
    lines = [f"{look.name}: last squat days", ""]
    lines += [f"· {_day_words(day, page, 320)}" for day in page.days] or ["None reported yet."]
    lines += ["", *_held_lines(page)]
    return Say(fitting(lines), back_rows(look.lifter, ("Numbers", "numbers")))


def more_say(look: LifterView, page: LifterPage) -> Say:
    """Return alerts with their answers, acts of coaches and media sent; with a button for each act a coach can do."""
    lines = [f"{look.name}: alerts and actions", ""]
    for alarm in page.alarms:
        lines += _alarm_lines(alarm, look)
    lines += [] if page.alarms else ["No alert so far."]
    lines += ["", *(shortened(f"· {look.day_name(moment_of(one.at))}, {one.coach}: {in_words(one.what)}, "
                        f"{orders.value_words(one.what, one.value, page.system)}"
                        f"{f' ({one.reason})' if one.reason else ''}", 220) for one in page.acts)]
    lines += [shortened(f"· sent {look.day_name(one.at)}: a {one.kind}, {in_words(one.flow)}", 80) for one in page.media[:5]]
    taps = look.taps(*((act.label, act.flow, act.name) for act in COACH_ACTS.values() if act.label))
    return Say(fitting(lines), (*in_rows(taps, 2), *back_rows(look.lifter)))


def thread_say(look: LifterView) -> Say:
    """Return the latest of what coaches and the lifter wrote to each other, and this coach's private notes, newest first."""
    rows = thread_of(look.db, look.lifter, look.coach, ENTRIES_SHOWN)
    lines = [f"{look.name}: messages, the newest first. Every coach of theirs and they themselves read these; a private note only you do."]
    lines += [shortened(f"· {look.day_name(moment_of(one.at))}, {'private, ' if one.private else ''}"
                        f"{one.coach or look.name}: {one.words}", LINE_MOST) for one in rows] or ["Nothing written yet."]
    taps = look.taps(_WRITE, ("Private note", "coach_act", "private"))
    return Say(fitting(lines), (*in_rows(taps, 2), *back_rows(look.lifter)))


def _seen(alert: KeptAlert, look: LifterView) -> str:
    """Return who has seen an alert, and when, to follow its words; "" for nobody before this look."""
    if alert.seen_at is None or alert.seen_at >= look.now:
        return ""
    return f" (seen{f' by {short(alert.seen_by)}' if alert.seen_by else ''} {on_day(look.day_name(alert.seen_at))})"


def _alarm_lines(alarm: AlertDetail, look: LifterView) -> list[str]:
    told = "; ".join(f"{in_words(key)}: {shortened(said, 40)}" for key, said in alarm.answers)
    level = f", {words_of(alarm.alert.level).coach}" if alarm.alert.level else ""
    said = in_whole_sentences(f"· {look.day_name(alarm.alert.at)}{level}: {alarm.alert.because}", 260)
    return [said + _seen(alarm.alert, look),
            *([shortened(f"Answered: {told}", 420)] if told else [])]


def chart_labels(look: LifterView) -> dict[str, str]:
    """Return the label of each chart's button, by the chart's name; pictures of the lifter's film only where they let a coach see them."""
    film = {name: label for name, label in FILM_KEPT.items() if film_kept_for(look.db, look.lifter, name) == "coach"}
    return {name: chart.label for name, chart in all_charts().items()} | {FILM_CHART: "Filmed squat"} | film


def whys_say(look: LifterView) -> Say:
    """Return a message with a button for each thing that "why?" may be asked about."""
    topics = topics_of(concluded_of(look.db, look.lifter, look.now).verdicts)
    taps = [tap(one.label, "lifter", f"{look.lifter}-{WHY_PREFIX}{one.name}") for one in topics]
    return Say(f"{look.name}: why what? Each answer names the number, where it comes from, and what speaks against it.",
               (*in_rows(taps, 2), *back_rows(look.lifter)))


def charts_say(look: LifterView) -> Say:
    """Return a message with a button for each chart that has data."""
    facts = access.facts_of(look.db, look.lifter)
    answers, whose = list(map(log.as_answer, access.answers_of(look.db, look.lifter))), owner_of(look.db, look.lifter)
    there = [name for name in all_charts() if chart_of(name, answers, whose) is not None]
    labels = chart_labels(look)
    there += [name for name in (FILM_CHART, *FILM_KEPT) if name in labels] if CURVE_FACT in facts else []
    taps = [tap(labels[name], "lifter", f"{look.lifter}-{name}") for name in there]
    return Say(f"{look.name}: which chart?" if there else f"{look.name}: nothing to draw yet.",
               (*in_rows(taps, 2), *back_rows(look.lifter, ("Numbers", "numbers"))))


@dataclass(frozen=True, slots=True)
class LifterMessages:
    """A view of one lifter: its ``words`` in the audit log, which the lifter can read, and its messages; ``alerts``: it tells of them."""

    words: str
    says: Callable[[LifterView], list[Say]]
    alerts: bool = True


LIFTER_VIEWS: Final[Mapping[str, LifterMessages]] = {
    "": LifterMessages("summary", lambda look: [summary_say(look, look.page)]),
    "numbers": LifterMessages("numbers", lambda look: numbers_says(look, look.page)),
    "days": LifterMessages("squat days", lambda look: [days_say(look, look.page)]),
    "more": LifterMessages("alerts and actions", lambda look: [more_say(look, look.page)]),
    "thread": LifterMessages("messages", lambda look: [thread_say(look)]),
    "charts": LifterMessages("charts", lambda look: [charts_say(look)], alerts=False),
    WHY_VIEW: LifterMessages(WHY_VIEW, lambda look: [whys_say(look)], alerts=False),
}
"""By request."""
