"""A coach's views as chat messages: the caseload, one lifter, their log. Permission is checked here.

A request from a button or a message may be anything: an unreadable one shows the first page, a page past the end the last. The
answer about another's lifter is the same as about one who does not exist. Every text is plain and short enough to send.
"""

from __future__ import annotations

import re
import sqlite3
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, time, timedelta
from typing import Final, NamedTuple

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.words import day_words
from companion.coach.caseload import (
    NAME_MOST,
    CaseloadLine,
    caseload,
    day_namer,
    shortened,
    utf16_length,
)
from companion.coach.compare import compare
from companion.coach.concluded import concluded_of
from companion.coach.letters import NOT_YOURS, button_number
from companion.coach.names import display_name, lifters_matching, with_distinct_names
from companion.coach.since import news_of, since_say
from companion.coach.summary import AlertDetail, CauseSummary, LifterPage, lifter_page
from companion.coach.triage import GROUP_WORDS, GROUPS, RESULT_WORDS, DayNamer, moment_from
from companion.coach.whys import WHY_PREFIX, WHY_VIEW, topic_asked, topics_of, whys_of
from companion.conversation.effects import Say, Tap
from companion.conversation.prompt import in_rows, start_payload
from companion.conversation.registry import Book
from companion.export.questions import Questions, in_words, questions_in
from companion.language.units import shown
from companion.pictures.film_chart import CURVE_FACT, FILM_CHART
from companion.pictures.personal import owner_of
from companion.pictures.series import all_charts, chart_of
from companion.record import coaching, log, orders
from companion.record.caseload import WHOLE_LOG, LogFilter, LogPageRow, audit_caseload, log_count, log_parts, log_rows
from companion.record.groups import EVERYBODY, LifterGroup, groups_of
from companion.record.picture_files import FILM_KEPT, film_kept_for
from companion.record.thread import thread_of
from companion.record.turn import Turn
from companion.reminders.kinds import coach_words
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.conclusion import RULING_WORDS
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.levels import WENT_WORDS, words_of
from companion.screening.protocols import protocol, protocols
from companion.screening.rulings import Ruling
from companion.screening.squat_days import ToldDay

LINES_A_PAGE: Final = 10
ROWS_A_PAGE: Final = 15
TEXT_MOST: Final = 4096
"""Bot API: a message has 1 to 4,096 characters; counted as UTF-16 units here, which is never fewer."""
EVIDENCE_MOST: Final = 600
"""UTF-16 units of a cause's grounds in a summary: none that a test can give is longer. Our choice."""
GROUPS_SHOWN: Final = 6
ENTRIES_SHOWN: Final = 10
LINE_MOST: Final = 360
"""UTF-16 units of a line of a list; ten of them fit a message. Our choice."""
LABEL_MOST: Final = 32
SUMMARY_MOST: Final = 3500
"""Both our choice, for the width and height of a phone."""
ALL_GROUPS: Final = "all"
FIND_LIFTER: Final = "find_lifter"

RULINGS: Final = {**{ruling.value: words for ruling, words in RULING_WORDS.items()}, "open": "open", "": "no results yet"}
STATUS_WORDS: Final = {"skipped": "skipped", "withdrawn": "taken back", "in_pain": "given in pain, never scored",
                       "no_pain": "pain told here, taken back"}
LIFTER_VIEWS: Final = {"": "summary", "numbers": "numbers", "days": "squat days", "charts": "charts", "thread": "messages",
                       "more": "alerts and actions", WHY_VIEW: WHY_VIEW}
"""The views of a lifter by request; the audit log that the lifter can read uses these words."""
_ASKED: Final = re.compile(r"([0-9]{1,18})(?:-([a-z_]{1,32}|[0-9]{1,9}))?")
_LOG_ASKED: Final = re.compile(r"([0-9]{1,18})(?:-([a-z_]{1,32}|[0-9]{8}))??(?:-([0-9]{1,9}))?")
_DAY_ASKED: Final = "%Y%m%d"
FILTER, CORRECTIONS = "filter", "corrections"
DAYS_OFFERED: Final = 9
"""Days of the log to choose from; our choice, three rows of buttons."""
_PAGED: Final = re.compile(r"([a-z_]{1,32})(?:-([0-9]{1,9}))?")
Rows = tuple[tuple[Tap, ...], ...]


class LifterView(NamedTuple):
    """A coach's view of a lifter. ``zone``: the coach's; ``day_name``: names days in it."""

    db: sqlite3.Connection
    coach: int
    lifter: int
    now: datetime
    zone: str
    day_name: DayNamer

    @property
    def name(self) -> str:
        """The lifter's name for this coach."""
        return display_name(self.db, self.coach, self.lifter)


def show(turn: Turn, view: str, of: str) -> list[Say]:
    """Return the messages of a view ("since", "caseload", "compare", "groups", "find_lifter", "lifter", "lifter_log") for a coach, and
    audit the look.

    ``of``: a page of what is new ("1"), a group and page ("hurt-1"), a name as typed, or a lifter and a view or page
    ("17-numbers", "17-2"). Pages count from 0.
    """
    db, coach, now, book, zone = turn.db, turn.person, turn.now, turn.book, turn.zone
    if view == "caseload":
        return _caseload(db, coach, of, now, zone)
    if view == "groups":
        return [groups_say(groups_of(db, coach), coaching.told_apart(db, coach))]
    if view == "since":
        say, news = since_say(db, news_of(db, coach, now, zone), len(coaching.lifters_of(db, coach)), button_number(of))
        _note_lines(db, coach, [one.person for one in news], now, zone)
        return [say]
    if view == "compare":
        return [compare(turn, of)]
    lifter, what = lifter_shown(db, coach, view, of), "" if view == FIND_LIFTER else _asked(of)[1]
    if view == FIND_LIFTER and lifter is None:
        return [_found(db, coach, lifters_matching(db, coach, of), now, zone)]
    if lifter is None:
        return [Say(NOT_YOURS, ((_tap("My lifters", "caseload"),),))]
    look = LifterView(db, coach, lifter, now, zone, day_namer(zone, now))
    if view == "lifter_log":
        return [log_view(look, of, book)]
    if label := _chart_labels(look).get(what):
        coaching.audit_look(db, lifter, coach, f"chart: {label.lower()}", now)
        return [Say(f"{look.name}: {label.lower()}", _back(lifter, ("Charts", "charts")), f"{what} of {lifter}")]
    if topic := topic_asked(what):
        coaching.audit_look(db, lifter, coach, f"why: {topic.label.lower()}", now)
        said = [f"{look.name}: {topic.label.lower()}", *whys_of(db, lifter, topic, now)]
        return [Say(_text("\n\n".join(said).split("\n")), _back(lifter, ("Why?", WHY_VIEW)))]
    what = what if what in LIFTER_VIEWS else ""
    coaching.audit_look(db, lifter, coach, LIFTER_VIEWS[what], now)
    if what == "charts":
        return [_charts(look)]
    if what == WHY_VIEW:
        return [_whys(look)]
    coaching.note_seen(db, lifter, None, now)  # the page says what the last alert was
    page_now = lifter_page(db, coach, lifter, now)
    match what:
        case "numbers":
            return numbers_says(look, page_now)
        case "days":
            return [days_say(look, page_now)]
        case "more":
            return [more_say(look, page_now)]
        case "thread":
            return [thread_say(look)]
    return [summary_say(look, page_now)]


def lifter_shown(db: sqlite3.Connection, coach: int, view: str, of: str) -> int | None:
    """Return the one lifter that a view shows; None for a view of several, or where this coach does not see them."""
    if view == FIND_LIFTER:
        one, *more = lifters_matching(db, coach, of) or [0]
        lifter = 0 if more else one
    else:
        asked = (_LOG_ASKED if view == "lifter_log" else _ASKED).fullmatch(of) if view in ("lifter", "lifter_log") else None
        lifter = int(asked[1]) if asked else 0
    return lifter if coaching.sees(db, coach, lifter) else None


def in_their_copy(db: sqlite3.Connection, coach: int, view: str, of: str) -> int | None:
    """Return the lifter whose copy of their data has the messages of a view; None for nobody's, as where private notes are in them."""
    return None if view == "lifter" and _asked(of)[1] == "thread" else lifter_shown(db, coach, view, of)


def _asked(of: str) -> tuple[int, str]:
    """Return the lifter's number (0 where it can't be read) and the view or page."""
    found = _ASKED.fullmatch(of)
    return (int(found[1]), found[2] or "") if found else (0, "")


def named(name: str) -> str:
    """Return a name as plain text of at most NAME_MOST, never empty."""
    return shortened(name, NAME_MOST) or "somebody"


def _tap(label: str, flow: str, asked: object = "") -> Tap:
    return Tap(shortened(label, LABEL_MOST), start_payload(flow, str(asked)))


def _paged(count: int, page: int, each: int) -> tuple[int, int]:
    """Return the page to show (the last, if it is past the end) and the number of pages."""
    pages = max(1, -(-count // each))
    return min(page, pages - 1), pages


def _text(lines: Iterable[str], most: int = TEXT_MOST) -> str:
    """Return lines as one text of at most ``most`` UTF-16 units; lines that don't fit are replaced by "…"."""
    kept: list[str] = []
    left = most - 2
    for line in lines:
        left -= utf16_length(line) + 1
        if left < 0:
            return "\n".join([*kept, "…"])
        kept.append(line)
    return "\n".join(kept)


# the caseload -----------------------------------------------------------------------------------------------


def _caseload(db: sqlite3.Connection, coach: int, of: str, now: datetime, zone: str) -> list[Say]:
    lines = with_distinct_names(db, coach, caseload(db, coach, now, zone))
    found = _PAGED.fullmatch(of)
    group, page = (found[1], int(found[2] or 0)) if found else (ALL_GROUPS, 0)
    say, on_it = caseload_say(lines, group, page)
    _note_lines(db, coach, [line.person for line in on_it], now, zone)
    return [say]


def _note_lines(db: sqlite3.Connection, coach: int, lifters: Sequence[int], now: datetime, zone: str) -> None:
    audit_caseload(db, coach, lifters, instant(local_date(now, zone), time(), zone), now)


def _found(db: sqlite3.Connection, coach: int, whom: Sequence[int], now: datetime, zone: str) -> Say:
    """Return the lines of the lifters that match a typed name. The name is not repeated, as it may be that of another's lifter."""
    lines = [line for line in with_distinct_names(db, coach, caseload(db, coach, now, zone)) if line.person in whom] if whom else []
    if not lines:
        return Say("None of your lifters has that name.", ((_tap("My lifters", "caseload"),),))
    on_it = lines[:LINES_A_PAGE]
    _note_lines(db, coach, [line.person for line in on_it], now, zone)
    more = f" Here are the first {len(on_it)}. Type more of the name to narrow this down." if len(lines) > len(on_it) else ""
    said, taps = _lines(on_it, 1)
    return Say(_text([f"{len(lines)} of your lifters match, most urgent first.{more}", "", *said]), (*in_rows(taps, 2), *in_rows(
        [_tap("My lifters", "caseload")], 2)))


def _lines(lines: Sequence[CaseloadLine], first: int) -> tuple[list[str], list[Tap]]:
    """Return the numbered texts of caseload lines, and a button for each."""
    return ([f"{n}. {named(line.name)}: {shortened(line.whole, LINE_MOST)}" for n, line in enumerate(lines, first)],
            [_tap(f"{n} {named(line.name)}", "lifter", line.person) for n, line in enumerate(lines, first)])


def caseload_say(lines: Sequence[CaseloadLine], group: str, page: int) -> tuple[Say, Sequence[CaseloadLine]]:
    """Return one page of a caseload, of one group or all, and the lines on it."""
    if not lines:
        return Say("You have no lifters yet. Invite one with a code; once they agree, they are listed here.",
                   ((_tap("Invite a lifter", "invite_lifter"),),)), ()
    counts = Counter(line.group for line in lines)
    holds = counts + Counter(one.group for line in lines for one in line.also)
    group = group if group in holds else ALL_GROUPS
    shown_now = lines if group == ALL_GROUPS else [it for line in lines if (it := line.as_in(group))]
    page, pages = _paged(len(shown_now), page, LINES_A_PAGE)
    first = page * LINES_A_PAGE
    on_it = shown_now[first:first + LINES_A_PAGE]
    told = ", ".join(f"{counts[one]} {GROUP_WORDS[one]}" for one in GROUPS if counts[one])
    text = [f"{len(lines)} {'lifter' if len(lines) == 1 else 'lifters'}: {told}"]
    if group != ALL_GROUPS or pages > 1:
        by_name = "; “find Sam” opens one by name" if pages > 1 else ""
        text.append(f"{GROUP_WORDS.get(group, 'all').capitalize()}, {first + 1} to {first + len(on_it)} of {len(shown_now)}{by_name}")
    said, taps = _lines(on_it, first + 1)
    text += ["", *said]
    filters = [_tap(f"{GROUP_WORDS[one].capitalize()} ({holds[one]})", "caseload", one)
               for one in GROUPS if holds[one] and one != group]
    if group != ALL_GROUPS:
        filters.insert(0, _tap(f"All ({len(lines)})", "caseload"))
    turn = [_tap("Previous", "caseload", f"{group}-{page - 1}")] * (page > 0) + [
        _tap("Next", "caseload", f"{group}-{page + 1}")] * (page + 1 < pages)
    return Say(_text(text), (*in_rows(taps, 2), *in_rows(turn, 2), *in_rows(filters, 3))), on_it


def groups_say(groups: Sequence[LifterGroup], names: Mapping[int, str]) -> Say:
    """Return a coach's groups with who is in them, and a button for each thing that can be done for several."""
    if not groups:
        return Say("You have no group yet. A lifter's page has “Groups” under “More”.", ((_tap("My lifters", "caseload"),),))
    lines = [f"· {one.name}: all {len(one.lifters)}" if one.number == EVERYBODY else shortened(
        f"· {one.name}: {', '.join(names.get(lifter, 'somebody') for lifter in one.lifters)}", LINE_MOST) for one in groups]
    taps = [_tap(f"{act.label or 'Write'}: {one.name}", act.flow, f"{one.number}-{act.name}") for one in groups[:GROUPS_SHOWN]
            for act in COACH_ACTS.values() if act.several]
    return Say(_text(["Your groups. What you do for one is done for each in it, who is told alone.", "", *lines]),
               (*in_rows(taps, 2), (_tap("My lifters", "caseload"),)))


# one lifter -------------------------------------------------------------------------------------------------


def _back(lifter: int, *views: tuple[str, str]) -> Rows:
    taps = [_tap(label, "lifter", f"{lifter}-{what}" if what else lifter) for label, what in (*views, ("Summary", ""))]
    return in_rows([*taps, _tap("My lifters", "caseload")], 2)


def summary_say(look: LifterView, page: LifterPage) -> Say:
    """Return the summary of a lifter, with buttons to the other views."""
    of = look.lifter
    taps = [_tap(label, "lifter", f"{of}-{what}") for label, what in (("Numbers", "numbers"), ("Squat days", "days"))]
    taps += [_tap("Log", "lifter_log", f"{of}-0"), _tap("Charts", "lifter", f"{of}-charts"), _tap("Report", "lifter_report", of),
             _tap("Messages", "lifter", f"{of}-thread"), _tap("Write", "coach_note", of),
             _tap("Reviewed", "coach_act", f"{of}-reviewed"), _tap("Why?", "lifter", f"{of}-{WHY_VIEW}"),
             _tap("More", "lifter", f"{of}-more"), _tap("Back to list", "caseload")]
    return Say(_text(_summary(look, page), SUMMARY_MOST), in_rows(taps, 2))


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
    if page.next_reminder:
        one = page.next_reminder
        yield f"Next reminder: {coach_words(one.kind)}, {shortened(one.wall, 16)}"
    if page.media:
        yield f"Photos and videos: {len(page.media)}, latest {look.day_name(page.media[0].at)}"
    if page.alarms:
        one_alert = page.alarms[0].alert
        yield shortened(f"Last alert {look.day_name(one_alert.at)}: {one_alert.because}", 260)
    if page.goal:
        yield f"Wants: {shortened(page.goal, 60)}"
    answered = f", last {look.day_name(page.answered_at)}" if page.answered_at else ""
    reviewed = f"; reviewed {look.day_name(datetime.fromisoformat(page.reviewed_at))}" if page.reviewed_at else "; not reviewed yet"
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
    depth = band_of(day.depth)
    parts = (f"{day.day:%a} {day.day.day} {day.day:%b}", load, BAND_WORDS[depth] if depth else "",
             {"kept": "depth kept", "deeper": "deeper than set", "higher": "higher than set"}.get(day.kept or "", ""),
             {"still": "back still", "moved": "back moved", "cant_tell": "back: can't tell"}.get(day.back or "", ""),
             "on film" if day.film else "", "" if day.felt is None else f"movement felt {day.felt:g} of 10",
             "SOMETHING HURT" if day.hurt else "", f"“{shortened(day.note, 120)}”" if day.note else "")
    return shortened(", ".join(filter(None, parts)), most)


def numbers_says(look: LifterView, page: LifterPage) -> list[Say]:
    """Return the evidence of each cause, then the latest reading of each test and side with its lines and error."""
    causes = (_cause_line(cause, 900, 300) for cause in page.causes)
    rests = [f"{look.name}: what the result is based on", shortened(page.overall_words, 200), "", *causes]
    lines = [f"{look.name}: numbers, the latest of each side"]
    for one in page.numbers:
        lines += ["", f"{protocol(one.test).name}, {one.side}: {shortened(one.shown, 40)}",
                  shortened(f"{look.day_name(one.at)}, {one.method}, {one.repeats} {'reading' if one.repeats == 1 else 'readings'}", 120),
                  *(f"· {shortened(line, 160)}" for line in one.lines), f"Error: {shortened(one.error, 160)}"]
    if not page.numbers:
        lines.append("Nothing is measured yet.")
    return [Say(_text(rests)), Say(_text(lines), (
        (_tap("Compare two days", "compare", look.lifter),), *_back(look.lifter, ("Charts", "charts"), ("Squat days", "days"))))]


def days_say(look: LifterView, page: LifterPage) -> Say:
    """Return the last squat days, newest first, and the depth and load to keep to."""
    lines = [f"{look.name}: last squat days", ""]
    lines += [f"· {_day_words(day, page, 320)}" for day in page.days] or ["None reported yet."]
    lines += ["", *_held_lines(page)]
    return Say(_text(lines), _back(look.lifter, ("Numbers", "numbers")))


def more_say(look: LifterView, page: LifterPage) -> Say:
    """Return alerts with their answers, acts of coaches and media sent; with a button for each act a coach can do."""
    lines = [f"{look.name}: alerts and actions", ""]
    for alarm in page.alarms:
        lines += _alarm_lines(alarm, look)
    lines += [] if page.alarms else ["No alert so far."]
    lines += ["", *(shortened(f"· {look.day_name(one.at)}, {one.coach}: {in_words(one.what)}, "
                        f"{orders.value_words(one.what, one.value, page.system)}"
                        f"{f' ({one.reason})' if one.reason else ''}", 220) for one in page.acts)]
    lines += [shortened(f"· sent {look.day_name(one.at)}: a {one.kind}, {in_words(one.flow)}", 80) for one in page.media[:5]]
    taps = [_tap(act.label, act.flow, f"{look.lifter}-{act.name}") for act in COACH_ACTS.values()
            if act.label and coaching.role_of(look.db, look.coach) in act.roles]
    return Say(_text(lines), (*in_rows(taps, 2), *_back(look.lifter)))


def thread_say(look: LifterView) -> Say:
    """Return the latest of what coaches and the lifter wrote to each other, and this coach's private notes, newest first."""
    rows = thread_of(look.db, look.lifter, look.coach, ENTRIES_SHOWN)
    lines = [f"{look.name}: messages, the newest first. Every coach of theirs and they themselves read these; a private note only you do."]
    lines += [shortened(f"· {look.day_name(datetime.fromisoformat(one.at))}, {'private, ' if one.private else ''}"
                        f"{one.coach or look.name}: {one.words}", LINE_MOST) for one in rows] or ["Nothing written yet."]
    taps = [_tap("Write", "coach_note", look.lifter), _tap("Private note", "coach_act", f"{look.lifter}-private")]
    return Say(_text(lines), (*in_rows(taps, 2), *_back(look.lifter)))


def _alarm_lines(alarm: AlertDetail, look: LifterView) -> list[str]:
    told = "; ".join(f"{in_words(key)}: {shortened(said, 40)}" for key, said in alarm.answers)
    return [shortened(f"· {look.day_name(alarm.alert.at)}, {words_of(alarm.alert.level).coach}: {alarm.alert.because}", 260),
            *([shortened(f"Answered: {told}", 420)] if told else [])]


def _chart_labels(look: LifterView) -> dict[str, str]:
    """Return the label of each chart's button, by the chart's name; pictures of the lifter's film only where they let a coach see them."""
    film = FILM_KEPT if film_kept_for(look.db, look.lifter) == "coach" else {}
    return {name: chart.label for name, chart in all_charts().items()} | {FILM_CHART: "Filmed squat"} | film


def _whys(look: LifterView) -> Say:
    """Return a message with a button for each thing that "why?" may be asked about."""
    topics = topics_of(concluded_of(look.db, look.lifter, look.now).verdicts)
    taps = [_tap(one.label, "lifter", f"{look.lifter}-{WHY_PREFIX}{one.name}") for one in topics]
    return Say(f"{look.name}: why what? Each answer names the number, where it comes from, and what speaks against it.",
               (*in_rows(taps, 2), *_back(look.lifter)))


def _charts(look: LifterView) -> Say:
    """Return a message with a button for each chart that has data."""
    facts = log.facts_of(look.db, look.lifter)
    answers, whose = list(map(log.as_answer, log.answers_of(look.db, look.lifter))), owner_of(look.db, look.lifter)
    there = [name for name in all_charts() if chart_of(name, answers, whose) is not None]
    labels = _chart_labels(look)
    there += [name for name in (FILM_CHART, *FILM_KEPT) if name in labels] if CURVE_FACT in facts else []
    taps = [_tap(labels[name], "lifter", f"{look.lifter}-{name}") for name in there]
    return Say(f"{look.name}: which chart?" if there else f"{look.name}: nothing to draw yet.",
               (*in_rows(taps, 2), *_back(look.lifter, ("Numbers", "numbers"))))


# the log ----------------------------------------------------------------------------------------------------


def log_view(look: LifterView, of: str, book: Book) -> Say:
    """Return the page of the log that is asked for, or the choice of what of it to see, and audit the look."""
    asked = _LOG_ASKED.fullmatch(of)
    what, number = (asked[2] or "", int(asked[3] or 0)) if asked else ("", 0)
    if what == FILTER:
        return _filter_say(look, book)
    only, words = _log_filter(what, look, book)
    if not words:
        what = ""
    page, pages = _paged(log_count(look.db, look.lifter, only), number, ROWS_A_PAGE)
    coaching.audit_look(look.db, look.lifter, look.coach, f"log, {f'{words}, ' if words else ''}page {page + 1}", look.now)
    rows = log_rows(look.db, look.lifter, ROWS_A_PAGE, page * ROWS_A_PAGE, only)
    return log_say(look, rows, page, pages, questions_in(book), book, what, words)


def _log_filter(what: str, look: LifterView, book: Book) -> tuple[LogFilter, str]:
    """Return the filter that a button names, and its words; all of it and "" where it names none."""
    if what == CORRECTIONS:
        return LogFilter(corrections=True), CORRECTIONS
    if what in book.flows:
        return LogFilter(flow=what), book[what].flow.title.lower()
    try:
        day = datetime.strptime(what, _DAY_ASKED).date()  # noqa: DTZ007 - a date without a time
    except ValueError:
        return WHOLE_LOG, ""
    start, over = (instant(one, time(), look.zone) for one in (day, day + timedelta(days=1)))
    return LogFilter(since=start, before=over), f"{day:%a} {day.day} {day:%b}"


def _filter_say(look: LifterView, book: Book) -> Say:
    """Return the choice of what of the log to see: corrections, a test, or a day."""
    flows, moments = log_parts(look.db, look.lifter)
    days = list(dict.fromkeys(local_date(at, look.zone) for at in moments))[:DAYS_OFFERED]
    many = log_count(look.db, look.lifter, LogFilter(corrections=True))
    taps = [_tap(f"Corrections ({many})", "lifter_log", f"{look.lifter}-{CORRECTIONS}-0")] * (many > 0)
    taps += [_tap(f"{book[flow].flow.title} ({count})", "lifter_log", f"{look.lifter}-{flow}-0") for flow, count in flows.items()
             if flow in protocols()]
    on = [_tap(f"{day:%a} {day.day} {day:%b}", "lifter_log", f"{look.lifter}-{day:{_DAY_ASKED}}-0") for day in days]
    return Say(f"{look.name}: which part of the log?", (*in_rows(taps, 2), *in_rows(on, 3), *_back(look.lifter, ("Log", ""))))


def log_say(look: LifterView, rows: Sequence[LogPageRow], page: int, pages: int, questions: Questions, book: Book, only: str = "",
            words: str = "") -> Say:
    """Return one page of the answer log, newest first, each row with its status. ``only`` and ``words``: the part of it that is shown, as
    a button names it and in words."""
    part = f", {words}" if words else ""
    lines = [f"{look.name}: log{part}, page {page + 1} of {pages}, in your time zone",
             *(_log_line(row, look, questions, book) for row in rows)]
    if not rows:
        lines.append("No answers yet.")
    of = f"{look.lifter}-{only}-" if only else f"{look.lifter}-"
    turn = [*[_tap("Newer", "lifter_log", f"{of}{page - 1}")] * (page > 0),
            *[_tap("Older", "lifter_log", f"{of}{page + 1}")] * (page + 1 < pages),
            _tap("Only some", "lifter_log", f"{look.lifter}-{FILTER}-0")]
    return Say(_text(lines), (*in_rows(turn, 2), *_back(look.lifter)))


def _log_line(row: LogPageRow, look: LifterView, questions: Questions, book: Book) -> str:
    """Return a row as "#812 Tue 3 Mar 18:05, Knee to wall, left: How many cm? → 11 cm (“eleven”) [in place of “12”]"."""
    at = row.at.astimezone(zone_of(look.zone))
    asked = questions.get(row.flow, {}).get(row.key)
    title = book[row.flow].flow.title if row.flow in book.flows else in_words(row.flow)
    side = f", {shortened(row.side, 8)}" if row.side else ""
    options = {option.value: option.label for option in asked.ask.kind.options} if asked else {}
    if row.value is None:
        answer = f"“{shortened(row.raw, 50)}”" if row.raw else "nothing"
    elif isinstance(row.value, str):
        answer = shortened(options.get(row.value, row.value), 50)
    else:
        answer = f"{round(row.value, 2):g}{'°' if row.unit == 'deg' else f' {shortened(row.unit, 8)}' if row.unit else ''}"
    raw = shortened(row.raw, 50)
    same = not raw or row.value is None or raw.casefold() in (answer.casefold(), answer.split(" ")[0].rstrip("°"),
                                                              str(row.value).casefold())
    written = "" if same else f" (“{raw}”)"
    notes = [STATUS_WORDS[row.status]] if row.status in STATUS_WORDS else []
    if row.replaces is not None:
        notes.append(f"in place of “{shortened(row.instead_of or '', 30)}”")
    if row.later:
        notes.append("replaced later")
    told = f" [{'; '.join(notes)}]" if notes else ""
    question = shortened(asked.text if asked else in_words(row.key), 60)
    return f"#{row.id} {at:%a} {at.day} {at:%b} {at:%H:%M}, {shortened(title, 24)}{side}: {question} → {answer}{written}{told}"
