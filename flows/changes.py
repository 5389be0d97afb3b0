"""Changes: the new numbers of a retest beside the last ones, and whether they differ by more than measurement error."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from companion.base.clock import local_date
from companion.conversation.condition import Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Do, Flow, Known, Tell
from companion.conversation.policy import Policy
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.errors import Errors, errors_from
from companion.screening.readings import Reading, Show, mean_of
from companion.screening.retest import CALF_SESSIONS, change
from companion.screening.screen import ROUTE, TEST_WORDS, Answer, Screen, about_from, screen_from
from companion.screening.sessions import MEASURED, Session, sessions_of
from companion.screening.trend import SESSIONS, pain_change, trend
from flows.outcome_facts import showing, told_at

SIDES = ("left", "right")


def change_facts(known: Known) -> dict[str, Value]:
    """One message a test that was measured before the last results and again since, and one for pain."""
    since, answers, show = told_at(known), list(known.answers()), showing(known)
    fresh = True
    if since is not None and not any(row.at > since and (row.flow in ROUTE or _is_pain(row)) for row in answers):
        since, fresh = told_at(known, "outcome.before"), False  # nothing new since the last results: what they changed
    if since is None:
        return {"any": "no"}
    errors = errors_from(answers, about_from(answers).sex)
    facts: dict[str, Value] = {}
    zone = str(known.facts.get("welcome.zone", ""))
    for test in MEASURED:
        lines = [_line(side, _by_day(sessions_of(answers, test, side), zone), since, errors, show) for side in SIDES]
        if words := "\n".join(line for line in lines if line):
            facts[test] = f"{TEST_WORDS[test].capitalize()}\n{words}"
        slopes = [_trend(side, sessions_of(answers, test, side), show) for side in SIDES]
        if words := "\n".join(slope for slope in slopes if slope):
            facts[f"{test}_trend"] = f"{TEST_WORDS[test].capitalize()}, all sessions\n{words}"
    before = screen_from(row for row in answers if row.at <= since)
    after = screen_from(row for row in answers if row.at > since)
    facts |= {name: words for name, words in (("squat_look", _depth(before, after)), ("pain", _pain(answers, since))) if words}
    return facts | {"any": "yes" if facts else "no"} | (_found(answers, since, errors, show, zone) if fresh and facts else {})


_WORST_FIRST: Sequence[str] = ("worse", "better", "within_error", "cannot_say")


def _found(answers: Sequence[Answer], since: datetime, errors: Errors, show: Show, zone: str) -> dict[str, Value]:
    """The change a coach hears of: the worst of any test, side and pain, and which that was."""
    found: list[tuple[str, str]] = []
    for test in MEASURED:
        for side in SIDES:
            old, new = _ends(_by_day(sessions_of(answers, test, side), zone), since)
            try:
                one = change(old, new, errors.of(test, new[-1][0].method), show) if old and new else None
            except ValueError:
                continue
            if one:
                found.append((one.kind, f"{TEST_WORDS[test]}, {side}: {one.words}"))
    before, after = _pain_told(answers, since)
    if before and after:
        pain = pain_change(before[-1], after[-1])
        found.append(({"same": "within_error"}.get(pain.kind, pain.kind), pain.words))
    if not found:
        return {}
    kind, words = min(found, key=lambda one: _WORST_FIRST.index(one[0]))
    return {"kind": kind, "kind_words": words}


def _by_day(sessions: Sequence[Session], zone: str) -> list[Session]:
    """One session a local day, the last: repeats within a day are no sessions of their own."""
    return list({local_date(session.at, zone): session for session in sessions}.values())


def _line(side: str, sessions: Sequence[Session], since: datetime, errors: Errors, show: Show) -> str:
    """Then and now, averaged over as many last sessions at each end as calf work takes to show, where there are so many."""
    old, new = _ends(sessions, since)
    if not old or not new:
        return ""
    first = new[-1][0]
    numbers = (f"{side.capitalize()}: {show(round(mean_of(old[-1]), 1), old[-1][0].unit)} then, "
               f"{show(round(mean_of(new[-1]), 1), first.unit)} now.")
    try:
        return f"{numbers} {change(old, new, errors.of(first.test, first.method), show).words}"
    except ValueError as error:  # another method, placement or warm-up: the numbers can't be held against each other
        return f"{numbers} Not compared: {error}."


def _ends(sessions: Sequence[Session], since: datetime) -> tuple[list[tuple[Reading, ...]], list[tuple[Reading, ...]]]:
    """The sessions to compare, before and after: one each, of calf work as many as it takes, where there are so many."""
    old = [session.readings for session in sessions if session.at <= since]
    new = [session.readings for session in sessions if session.at > since]
    if not old or not new:
        return [], []
    many = min(CALF_SESSIONS, len(old), len(new)) if new[-1][0].test == "knee_to_wall" else 1
    return old[-many:], new[-many:]


def _trend(side: str, sessions: Sequence[Session], show: Show) -> str:
    if len(sessions) < SESSIONS:
        return ""
    try:
        return f"{side.capitalize()}: {trend(sessions, show).words}"
    except ValueError as error:
        return f"{side.capitalize()}: no trend, {error}."


def _depth(before: Screen, after: Screen) -> str:
    if before.squat_look is None or after.squat_look is None:
        return ""
    old, new = before.squat_look, after.squat_look
    if (old.plain_rounds, old.plain_depth) == (new.plain_rounds, new.plain_depth):
        return f"Where the rounding starts: no change, {_start(new.plain_rounds, new.plain_depth)}."
    return (f"Where the rounding starts\nThen: {_start(old.plain_rounds, old.plain_depth)}. "
            f"Now: {_start(new.plain_rounds, new.plain_depth)}. One band of difference is the least that can be told.")


def _start(rounds: str | None, depth: str | None) -> str:
    band = band_of(depth)
    return "no rounding" if rounds == "no" else BAND_WORDS[band] if band else "not told"


def _is_pain(row: Answer) -> bool:
    return (row.flow, row.key, row.status) == ("safety_check", "pain", "ok")


def _pain(answers: Sequence[Answer], since: datetime) -> str:
    old, new = _pain_told(answers, since)
    return pain_change(old[-1], new[-1]).words if old and new and (old[-1] or new[-1]) else ""


def _pain_told(answers: Sequence[Answer], since: datetime) -> tuple[list[float], list[float]]:
    told = [(row.at, row.value) for row in answers if _is_pain(row) and isinstance(row.value, float)]
    return [value for at, value in told if at <= since], [value for at, value in told if at > since]


MESSAGES: Sequence[str] = ("squat_look", *(name for test in MEASURED for name in (test, f"{test}_trend")), "pain")

FLOW = Flow(
    "changes", version=1, title="Changes", policy=Policy.TALK, command=("change", "what changed"),
    at_start=change_facts,
    steps=(
        Do(Find("retest.change", "{kind}", "change beyond measurement error since the last results", "{kind_words}"), fact("kind").known),
        Tell("Nothing was measured both before and after, so no change can be told.", fact("any").is_("no")),
        *(Tell(f"{{{name}}}", fact(name).known, picture=f"chart_{name}") for name in MESSAGES),
    ),
)
