"""Changes: the numbers of a retest next to the last ones, and change beyond measurement error."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from companion.base.clock import local_date
from companion.conversation.condition import Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Do, Flow, Known, Offer, Tell
from companion.conversation.policy import Policy
from companion.screening.depth import BAND_STEP, BAND_WORDS, band_of
from companion.screening.errors import Errors, errors_from
from companion.screening.protocol import Starts
from companion.screening.protocols import measured, protocol, protocols
from companion.screening.readings import SIDES, NumberFormat, Reading, mean_of
from companion.screening.retest import change, weeks_of
from companion.screening.screen import METHOD_WORDS, LoggedAnswer, about_from, screen_from
from companion.screening.sessions import ReadingSession, sessions_of
from companion.screening.sources import value
from companion.screening.trend import SESSIONS, pain_change, trend
from flows.outcome_facts import showing, told_at


def change_facts(known: Known) -> dict[str, Value]:
    """Return one message for each test measured both before the last results and since, and one for pain."""
    since, answers, show = told_at(known), list(known.answers()), showing(known)
    fresh = True
    if since is not None and not any(row.at > since and (row.flow in protocols() or _is_pain(row)) for row in answers):
        since, fresh = told_at(known, "outcome.before"), False  # nothing new since the last results: show their change
    if since is None:
        return {"any": "no"}
    errors = errors_from(answers, about_from(answers).sex)
    facts: dict[str, Value] = {}
    zone = str(known.facts.get("welcome.zone", ""))
    for one in measured():
        lines = [_line(side, _by_day(sessions_of(answers, one.id, side), zone), since, errors, show) for side in SIDES]
        if words := "\n".join(line for line in lines if line):
            facts[one.id] = f"{one.name}\n{words}{_early(one.id, answers, since, errors, zone)}"
        slopes = [_trend(side, sessions_of(answers, one.id, side), show) for side in SIDES]
        if words := "\n".join(slope for slope in slopes if slope):
            facts[f"{one.id}_trend"] = f"{one.name}, all sessions\n{words}"
    before = screen_from(row for row in answers if row.at <= since)
    after = screen_from(row for row in answers if row.at > since)
    facts |= {test: _depth(one.starts, before[test], after[test]) for test, one in protocols().items()
              if one.starts and test in before and test in after}
    facts |= {"pain": words} if (words := _pain(answers, since)) else {}
    return facts | {"any": "yes" if facts else "no"} | (_found(answers, since, errors, show, zone) if fresh and facts else {})


EARLY_BY = value("retest_early")
"""Days by which a test again may come before its date and is not called early; our choice."""

_WORST_FIRST: Sequence[str] = ("worse", "better", "within_error", "cannot_say")


def _found(answers: Sequence[LoggedAnswer], since: datetime, errors: Errors, show: NumberFormat, zone: str) -> dict[str, Value]:
    """Return the change a coach is told of: the worst over all tests, sides and pain, in words."""
    found: list[tuple[str, str]] = []
    for one in measured():
        for side in SIDES:
            old, new = _ends(_by_day(sessions_of(answers, one.id, side), zone), since)
            try:
                told = change(old, new, errors.of(one.id, new[-1][0].method), show) if old and new else None
            except ValueError:
                continue
            if told:
                found.append((told.kind, f"{one.short_name}, {side}: {told.words}"))
    before, after = _pain_told(answers, since)
    if before and after:
        pain = pain_change(before[-1], after[-1])
        found.append(({"same": "within_error"}.get(pain.kind, pain.kind), pain.words))
    if not found:
        return {}
    kind, words = min(found, key=lambda one: _WORST_FIRST.index(one[0]))
    return {"kind": kind, "kind_words": words}


def _by_day(sessions: Sequence[ReadingSession], zone: str) -> list[ReadingSession]:
    """Return the last session of each local day: repeats within a day are not sessions of their own."""
    return list({local_date(session.at, zone): session for session in sessions}.values())


def _line(side: str, sessions: Sequence[ReadingSession], since: datetime, errors: Errors, show: NumberFormat) -> str:
    """Return a side's numbers then and now, and the change between them, averaged over the sessions of ``_ends``."""
    old, new = _ends(sessions, since)
    if not old or not new:
        return ""
    first = new[-1][0]
    numbers = (f"{side.capitalize()}: {show(round(mean_of(old[-1]), 1), old[-1][0].unit)} then, "
               f"{show(round(mean_of(new[-1]), 1), first.unit)} now.")
    try:
        return f"{numbers} {change(old, new, errors.of(first.test, first.method), show).words}"
    except ValueError as error:  # another method, placement or warm-up: not comparable
        then, now = (METHOD_WORDS.get(one.method.partition("_")[0], one.method) for one in (old[-1][0], first))
        return f"{numbers} Not compared: {f'{then} then, {now} now. Take {then} again' if then != now else error}."


def _early(test: str, answers: Sequence[LoggedAnswer], since: datetime, errors: Errors, zone: str) -> str:
    """Return that a test was done again too early for a gain to show, in words; "" where it was not, or no gain is published for it."""
    days = [local_date(one.at, zone) for side in SIDES for one in sessions_of(answers, test, side)]
    old, new = ([day for day in days if (day <= local_date(since, zone)) is before] for before in (True, False))
    weeks = weeks_of(test, screen_from(answers), errors)
    if protocol(test).gain is None or not old or not new or (max(new) - max(old)).days >= weeks * 7 - EARLY_BY:
        return ""
    return f"\nThat is after {(max(new) - max(old)).days} days. A change should show after about {weeks:g} weeks, so this is early."


def _ends(sessions: Sequence[ReadingSession], since: datetime) -> tuple[list[tuple[Reading, ...]], list[tuple[Reading, ...]]]:
    """Return the sessions to compare, before and after: the number the test needs to show a change, or fewer if there are fewer."""
    old = [session.readings for session in sessions if session.at <= since]
    new = [session.readings for session in sessions if session.at > since]
    if not old or not new:
        return [], []
    many = min(protocol(new[-1][0].test).sessions, len(old), len(new))
    return old[-many:], new[-many:]


def _trend(side: str, sessions: Sequence[ReadingSession], show: NumberFormat) -> str:
    if len(sessions) < SESSIONS:
        return ""
    try:
        return f"{side.capitalize()}: {trend(sessions, show).words}"
    except ValueError as error:
        return f"{side.capitalize()}: no trend, {error}."


def _depth(starts: Starts[Any], before: Any, after: Any) -> str:
    old, new = starts.said(before), starts.said(after)
    if old == new:
        return f"{starts.title}: no change, {_start(*new)}."
    return (f"{starts.title}\nThen: {_start(*old)}. Now: {_start(*new)}. {BAND_STEP}")


def _start(rounds: str | None, depth: str | None) -> str:
    band = band_of(depth)
    return "no rounding" if rounds == "no" else BAND_WORDS[band] if band else "not told"


def _is_pain(row: LoggedAnswer) -> bool:
    return (row.flow, row.key, row.status) == ("safety_check", "pain", "ok")


def _pain(answers: Sequence[LoggedAnswer], since: datetime) -> str:
    old, new = _pain_told(answers, since)
    return pain_change(old[-1], new[-1]).words if old and new and (old[-1] or new[-1]) else ""


def _pain_told(answers: Sequence[LoggedAnswer], since: datetime) -> tuple[list[float], list[float]]:
    told = [(row.at, row.value) for row in answers if _is_pain(row) and isinstance(row.value, float)]
    return [value for at, value in told if at <= since], [value for at, value in told if at > since]


MESSAGES: Mapping[str, str] = {
    **{test: "depth" for test, one in protocols().items() if one.starts},
    **{name: topic for one in measured() for name, topic in ((one.id, "error"), (f"{one.id}_trend", "retest"))}, "pain": "pain"}
"""The messages, each with the topic its "why?" is answered from."""

FLOW = Flow(
    "changes", version=1, title="Changes", policy=replace(Policy.TALK, pages=True), command=("change", "what changed"),
    at_start=change_facts,
    steps=(
        Do(Find("retest.change", "{kind}", "change beyond measurement error since the last results", "{kind_words}"), fact("kind").known),
        Tell("Nothing was measured both before and after, so no change can be told.", fact("any").is_("no")),
        *(Tell(f"{{{name}}}", fact(name).known, picture=f"chart_{name}", offers=(Offer("Why?", "why_told", topic),))
          for name, topic in MESSAGES.items()),
    ),
)
