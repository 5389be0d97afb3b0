"""The states a lifter can be in, from a table of facts: every one that holds is told, and the first is their group. Pure.

Days are in the coach's own zone, planned squat days in the lifter's calendar.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from itertools import takewhile
from typing import Final, NamedTuple

from companion.base.clock import instant, local_date
from companion.calendar.plan import Plan, squat_days
from companion.calendar.preferences import zone_from
from companion.coach.holding import depth_now, moment_from
from companion.export.table import plain
from companion.language.passed_on import passed_on
from companion.record.caseload import HURT_ASKED, CaseloadRow
from companion.record.timestamps import moment_of, text_of
from companion.screening.depth import BAND_WORDS, Band
from companion.screening.levels import REFERRED, URGENT_LEVELS, words_of
from companion.screening.limits import WORDS_MOST
from companion.screening.safety import Level
from companion.screening.sources import value, with_numbers
from companion.screening.standing import UNANSWERED_WORDS, OpenQuestions

OVERDUE_AFTER: Final = timedelta(days=value("retest_late"))
"""Time after which a retest that is due counts as late; our choice."""
UNANSWERED: Final = with_numbers("no answer to {asked_again_2:count retest reminders}")
QUIET_AFTER: Final = timedelta(days=value("silent_days"))
"""Silence that counts without a plan of squat days; our choice."""
QUIET_PLANNED: Final = int(value("silent_squat_days"))
"""Planned squat days without any answer that count as silence; our choice: about a week."""

WHERE_WORDS: Final = {"back": "lower back", "hip": "hip or groin", "leg": "leg", "knee": "knee", "ankle": "ankle or foot",
                      "chest": "chest, breath or faint", "other": "somewhere else"}
RESULT_WORDS: Final = {"normal": "common rounding", "no_rounding": "no rounding seen", "load_question": "a question of load",
                       "likely": "a likely cause", "by_elimination": "a cause by elimination", "unexplained": "not explained",
                       "open": "still open"}
MOVED_BACK: Final = re.compile(r"The back moved|a step back")
"""Words by which the reason of a depth step (screening.depth_progression) says that the back moved or the depth was set back."""

DayNamer = Callable[[datetime], str]
_CARE: Final = ("", *REFERRED)


class StateHeld(NamedTuple):
    """One state that holds: its name, the words of the line, and since when it is so."""

    group: str
    words: str
    since: datetime


LineReason = tuple[str, datetime] | None
Judge = Callable[[CaseloadRow, datetime, DayNamer], LineReason]


@dataclass(frozen=True, slots=True)
class State:
    """A row of the table. ``words``: its name; ``counted``: it after a number of lifters, where that is not its name; ``meaning``: what
    makes it hold and what ends it; ``judge``: the words and the time where it holds, None where not; ``act``: the one suggested next,
    as (label, flow, name of the act)."""

    name: str
    words: str
    meaning: str
    judge: Judge
    act: tuple[str, str, str]
    counted: str = ""


def reasons_of(one: CaseloadRow, now: datetime, day_name: DayNamer) -> tuple[StateHeld, ...]:
    """Return every state that holds for a lifter, the most urgent first; "fine" where none does."""
    found = tuple(StateHeld(state.name, *told) for state in TRIAGE.values() if (told := state.judge(one, now, day_name)))
    return found or (StateHeld("fine", *_fine(one, now, day_name)),)


def care_weight(one: CaseloadRow, now: datetime) -> int:
    """Return the urgency of the care that the alert or the current level asks for, 0 for none; the more urgent of the two: a small pain
    hides no emergency."""
    return weight_of(_care(one, one.safety(now).level))


def weight_of(level: str) -> int:
    """Return the urgency of a level of care, 0 for none."""
    return _CARE.index(level)


def _care(one: CaseloadRow, stands: Level | None) -> str:
    told = None if one.undone else one.hurt_level
    return max((str(level) if level in REFERRED else "" for level in (told, stands and stands.value)), key=_CARE.index)


def on_day(day: str) -> str:
    """Return a day's name to follow a verb: "today", "on Tuesday"."""
    return day if day in ("today", "yesterday") else f"on {day}"


def _at(kept: str) -> tuple[datetime, str]:
    """Return the moment and the words of what is kept as a time, a space and words."""
    at, _, words = kept.partition(" ")
    return moment_of(at), words


def _asks(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if not one.asks:
        return None
    since, _ = _at(one.asks)
    return f"asked {on_day(day_name(since))} that you call them", since


def _clinicians_word(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if not one.told:
        return None
    since, because = _at(one.told)
    return f"{day_name(since)}: {because}", since


def _hurt(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    stands = one.safety(now)
    care = _care(one, stands.sent)
    level = f"{stands.words.coach}, a wrong tap was taken back" if one.undone else words_of(care).coach if care else ""

    def with_level(words: str) -> str:
        """Return the words with the level, which comes first where nothing else is as important: only that much may be read."""
        return f"{level}; {words}" if care in URGENT_LEVELS else f"{words}; {level}" if level else words

    if one.open_at and (one.open_at >= (one.hurt_at or "") or one.hurt_flow == "pain"):
        since = moment_of(one.open_at)
        told = _told(one) if one.hurt_at and one.hurt_at >= one.open_at else ""
        day = on_day(day_name(since))
        words = f"said {day} that something hurt, then that nothing does, questions open" if told and one.where == "nothing" else (
            f"hurt {day}: {told}, questions open") if told else f"something hurt {day}, questions open"
        return with_level(words), since
    if not one.hurt_at:
        return None
    since = moment_of(one.hurt_at)
    day = on_day(day_name(moment_of(one.hurt_told or one.hurt_at)))
    if one.hurt_flow == "morning":
        words = f"not back to usual {day}" + (f": {one.how}" if one.how else "")
    elif one.hurt_flow != "pain":
        words = f"{HURT_ASKED} {day}, " + (
            f"no answer{_in_words(one.asked)}" if one.asked and one.asked.about == "hurt" else "and said since that nothing did")
    elif one.where == "nothing":
        words = f"said {day} that something hurt, then that nothing does"
    else:
        told = _told(one)
        words = f"hurt {day}: {told}" if told else f"hurt {day}"
    return with_level(words), since


def _told(one: CaseloadRow) -> str:
    """Return where it hurts and how bad it is, as far as answered."""
    where = WHERE_WORDS.get(str(one.where), str(one.where)) if one.where else ""
    return ", ".join(filter(None, (where, f"{one.bad:g} of 10" if isinstance(one.bad, int | float) else "")))


def _referred(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    stands = one.safety(now)
    if stands.since is None or stands.sent is None:
        return None
    return f"{stands.words.coach}, since {day_name(stands.since)}", stands.since


def _unanswered(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.asked is None or one.asked.about == "hurt":
        return None
    sent = one.safety(now).sent
    level = f"{words_of(sent.value).coach}; " if sent is not None and sent.value in URGENT_LEVELS else ""
    return f"{level}{UNANSWERED_WORDS[one.asked.about].coach}, since {day_name(one.asked.since)}{_in_words(one.asked)}", one.asked.since


def _in_words(asked: OpenQuestions) -> str:
    """Return what was written, to follow the state of its questions."""
    said = passed_on(plain(asked.said), WORDS_MOST)
    return f": “{said}”" if said else ""


def _over_load(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.over is None or not _after(text_of(one.over.told), one.reviewed):
        return None
    return f"{one.over.words}, last told {day_name(one.over.told)}", one.over.told


def _worse(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if changed := _changed(one, "worse", day_name):
        return changed
    if one.back == "moved" and one.back_at and _after(one.back_at, one.reviewed) and MOVED_BACK.search(one.step_why or ""):
        since, depth = moment_of(one.back_at), depth_of(one)
        return f"back moved {on_day(day_name(since))}, a step back" + (f": keep to {BAND_WORDS[depth]}" if depth else ""), since
    return None


def _changed(one: CaseloadRow, change: str, day_name: DayNamer) -> LineReason:
    if one.change != change or not one.change_at or not _after(one.change_at, one.reviewed):
        return None
    since = moment_of(one.change_at)
    return f"{change} at the retest {on_day(day_name(since))}" + (f": {one.change_because}" if one.change_because else ""), since


def _quiet(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.gone:
        since, why = _at(one.gone)
        return f"can't be reached since {day_name(since)}" + (f": {why}" if why else ""), since
    if one.on_their_own:
        return None
    since = moment_of(one.answered or one.linked)
    zone, plan = zone_from(json.loads(one.zones), now), Plan.loads(str(one.plan or ""))
    first, today = local_date(since, zone) + timedelta(days=1), local_date(now, zone)
    missed = 0 if plan.empty else sum(1 for _ in takewhile(lambda coming: coming.day < today, squat_days(plan, first)))
    if missed < QUIET_PLANNED if not plan.empty else now - since <= QUIET_AFTER:
        return None
    silent = f"silent for {(now - since).days} days" + (f", {missed} planned squat days" if missed else "")
    return silent + (f", since {day_name(since)}" if one.answered else f": no answer yet, linked {on_day(day_name(since))}"), since


def _done_since(one: CaseloadRow) -> bool:
    """True if there are results newer than the latest retest reminder: it was done, on its day or before it."""
    told = moment_from(one.outcome_at)
    return told is not None and one.retest_made is not None and text_of(told) > one.retest_made


def _first_due(one: CaseloadRow) -> datetime:
    """Return the moment a retest was first due: one whose reminder is put off from day to day, as while days are closed, is late."""
    due = moment_of(one.retest_due or "")
    day, at, zone = (one.retest_wall or "").split(" ", 2)
    return min(due, instant(date.fromisoformat(day), time.fromisoformat(at), zone))


def _overdue(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.retest_due is None or _done_since(one):
        return None
    since = _first_due(one)
    if one.retest_state == "ignored":
        if one.reviewed and not _after(one.retest_settled or one.retest_due, one.reviewed):
            return None
        return f"{UNANSWERED}, since {day_name(since)}", since
    overdue = since + OVERDUE_AFTER  # who stopped all reminders ("replaced") still has the retest to do
    if one.retest_state in ("open", "replaced") and now > overdue and _after(text_of(overdue), one.reviewed):
        return f"retest late, due {day_name(since)}", since
    return None


def _retest_due(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if one.retest_due is None or _done_since(one) or one.retest_state not in ("open", "replaced"):
        return None
    since = _first_due(one)
    return (f"retest due {day_name(since)}", since) if since <= now <= since + OVERDUE_AFTER and (
        _after(text_of(since), one.reviewed)) else None


def _new_result(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    told = moment_from(one.outcome_at)
    if told is None or not _after(text_of(told), one.reviewed):
        return None
    change = one.change_because if one.change in ("within_error", "cannot_say") and _after(one.change_at or "", one.reviewed) else ""
    return f"new result {on_day(day_name(told))}: {RESULT_WORDS.get(str(one.overall), 'unknown')}" + (f"; {change}" if change else ""), told


def _contradiction(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    told = moment_from(one.outcome_at)
    if told is None or not one.close or not _after(text_of(told), one.reviewed):
        return None
    return f"tests speak both ways {on_day(day_name(told))}: {one.close.replace(',', ', ')} too close to call", told


def _note(one: CaseloadRow, now: datetime, day_name: DayNamer) -> LineReason:
    if not one.note:
        return None
    since, said = _at(one.note)
    return f"wrote {on_day(day_name(since))}: “{said}”", since


def _fine(one: CaseloadRow, now: datetime, day_name: DayNamer) -> tuple[str, datetime]:
    stands = one.safety(now)
    shut = f"; {stands.words.coach}" if stands.stands_since or stands.limits else ""
    if not one.answered:
        since = moment_of(one.linked)
        return f"fine, linked {on_day(day_name(since))}{shut}", since
    since, depth = moment_of(one.answered), depth_of(one)
    return f"fine, last answer {on_day(day_name(since))}{shut}" + (f"; keeps to {BAND_WORDS[depth]}" if depth else ""), since


def depth_of(one: CaseloadRow) -> Band | None:
    """Return the depth to keep to now; None where none is set."""
    pin_at, step_at = (moment_of(at) if at else None for at in (one.pin_at, one.step_at))
    now = depth_now(one.pin, pin_at, one.keep, moment_from(one.outcome_at), one.step, step_at)
    return now[0] if now else None


def _after(at: str, reviewed: str | None) -> bool:
    return at > (reviewed or "")


_WRITE: Final = ("Write", "coach_note", "note")
_SEE: Final = ("See", "lifter", "")

TRIAGE: Final[Mapping[str, State]] = {one.name: one for one in (
    State("asks", "asks for you", "they agreed that you are asked to get in touch; until this coach has reviewed it", _asks, _WRITE,
          "asking for you"),
    State("hurt", "hurt", "something hurt, or was not back to usual the morning after, or questions about it were left open; until the "
          "questions are answered and this coach has reviewed it", _hurt, _WRITE),
    State("unanswered", "questions open", "a sign was written, or a safety check left after a warning, and the questions about it are "
          "still open; a review changes nothing", _unanswered, _WRITE, "with questions open"),
    State("referred", "referred", "a clinician, same-day care or emergency care comes first; a review changes nothing", _referred, _WRITE),
    State("clinicians_word", "word of their care", "told what a clinician said: a limit, a limit that is over, a clearance, or whether "
          "they were seen; until a coach has seen it", _clinicians_word, _SEE, "with word of their care"),
    State("over_load", "over load", "a squat day over the load limit since the last review", _over_load,
          ("Pin load", "coach_act", "pin_load")),
    State("worse", "worse", "since the last review, worse at a retest by more than measurement error, or the back moved on a squat day "
          "and the depth was set back a step", _worse, ("Ask for a film", "coach_act", "ask_for")),
    State("quiet", "quiet", f"no answer on {QUIET_PLANNED} planned squat days, or for {QUIET_AFTER.days} days without a plan, or can't be "
          "reached", _quiet, _WRITE),
    State("overdue", "overdue", f"{UNANSWERED}, or a retest due for more than {OVERDUE_AFTER.days} days, with no "
          "results since and no review since it became late", _overdue, ("Retest date", "coach_act", "retest")),
    State("retest_due", "retest due", f"a retest due for {OVERDUE_AFTER.days} days at most, with no results or review since", _retest_due,
          ("Say what you expect", "lifter", ""), "due for a retest"),
    State("new_result", "new result", "results later than the last review", _new_result, _SEE, "with a new result"),
    State("contradiction", "contradiction", "in results later than the last review, tests speak both for and against a cause, which is too "
          "close to call", _contradiction, ("Ask for a test", "coach_act", "ask_for"), "with a contradiction"),
    State("note", "note unread", "a note to this coach, who has neither opened the lifter's page nor done anything for them since", _note,
          ("Write back", "coach_note", "note"), "with a note unread"),
    State("better", "better", "better at a retest by more than measurement error, since the last review",
          lambda one, now, day_name: _changed(one, "better", day_name),
          ("Reviewed", "coach_act", "reviewed")),
)}
"""By name, the most urgent first. A review is one of this coach's own that was not taken back."""

GROUPS: Final = (*TRIAGE, "fine")
GROUP_WORDS: Final = {**{one.name: one.words for one in TRIAGE.values()}, "fine": "fine"}


def counted(many: Mapping[str, int]) -> str:
    """Return how many lifters are in each group, in words: "1 hurt, 2 with questions open"."""
    words = {**GROUP_WORDS, **{one.name: one.counted for one in TRIAGE.values() if one.counted}}
    return ", ".join(f"{many[group]} {words[group]}" for group in GROUPS if many.get(group))
