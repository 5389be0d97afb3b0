"""The context of a turn: the facts about a person that one step may use, from the record and the screening's rules."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Final

from companion.base.clock import local_date
from companion.calendar.preferences import zone_from
from companion.conversation.condition import Value
from companion.conversation.flow import Known
from companion.language.units import METRIC, shown
from companion.record import coaching, groups, log, outbox
from companion.record.orders import day_in_words, standing_orders, strictest
from companion.record.timestamps import moment_of, text_of
from companion.record.unanswered import open_questions
from companion.screening.limits import facts_in, limits_in
from companion.screening.screen import LoggedAnswer
from companion.screening.sources import SOURCES, value
from companion.screening.standing import OpenQuestions, SafetyStanding, standing_of

SAFETY_LEVEL = "safety.level"
LIMITS: Final = "safety.limits"
"""The finding that holds what clinicians told a person to leave out (``screening.limits``)."""
FULL_BAR, LIGHT_BAR = SOURCES["bars_metric"].value
BEEN_SEEN: Final = "safety.seen"
"""The finding whether somebody who was sent has been seen; known until the level is found anew."""

SLIP = "safety.slip"
"""Set by a tap that closed everything; "" once that was undone."""
UNDONE_WITHIN: Final = timedelta(minutes=value("undone_within"))
UNDONE_FINISHED: Final = timedelta(minutes=value("undone_finished"))
"""Time since such a tap in which undoing it can be begun, and in which it must be finished."""

CONSENT_ANSWERS: Final = (("consent.lifter", "welcome.consent"), ("consent.coach", "coach_welcome.consent"))
"""Each consent's fact, and the answer that stood for it before consent texts had versions."""


def known_of(db: sqlite3.Connection, person: int, now: datetime) -> Known:
    """Return the facts a step may use: latest answers and findings by name; "NAME.today" for findings made today, in the person's
    zone; "due.KIND", the wall time of each open reminder; the current safety level, and "safety.may_open" if a new check may raise
    it; what a clinician's limits close ("limit.…", ``screening.limits.facts_in``); the version of each consent text they agreed to
    ("consent.lifter", "consent.coach"); "setup.set_by", which coach set the set-up and until when; "safety.slip.open" while a wrong tap
    can be undone, "safety.slip.in_time" while that can be finished; "safety.seen", whether somebody who was sent has been seen since;
    for a coach "lifter.N", the name of each of their lifters and groups."""
    rows = log.known_rows(db, person)
    facts: dict[str, Value] = {"coach": "no", "is_coach": "no"}
    facts |= {name: value for name, value, _ in rows}
    if facts["is_coach"] == "yes":
        facts |= {f"lifter.{one}": name for one, name in coaching.told_apart(db, person).items()}
        facts |= {f"lifter.{one.number}": f"{one.name} ({len(one.lifters)})" for one in groups.groups_of(db, person)}
    zone = zone_from(facts, now)
    today = local_date(now, zone)
    since_moment = {name: moment_of(since) for name, _, since in rows if since}
    since_of = {name: local_date(since, zone) for name, since in since_moment.items()}
    facts |= {f"{name}.today": "yes" for name, since in since_of.items() if since == today}
    facts |= {"today": today.isoformat(), "person": str(person)}
    facts |= _agreed(facts)
    if facts.get("setup.pin") and (order := strictest("pin_setup", standing_orders(db, person, "pin_setup"))):
        facts["setup.set_by"] = f"set by coach {order.coach_name}" + (f", until {day_in_words(order.until)}" if order.until else "")
    slipped = next((moment_of(since) for name, value, since in rows if name == SLIP and value and since), None)
    if slipped is not None:
        facts |= {f"{SLIP}.{name}": "yes" for name, within in (("open", UNDONE_WITHIN), ("in_time", UNDONE_FINISHED))
                  if now - slipped <= within}
    stands = standing_in(facts, next((moment_of(since) for name, _, since in rows if name == SAFETY_LEVEL), None), now)
    if stands.level is None:
        facts = {name: value for name, value in facts.items() if name not in (SAFETY_LEVEL, f"{SAFETY_LEVEL}.today")}
    else:
        facts[SAFETY_LEVEL] = stands.level.value
        facts["safety.may_open"] = "yes" if today > since_of[SAFETY_LEVEL] else "no"
    if BEEN_SEEN in since_moment and SAFETY_LEVEL in since_moment and since_moment[BEEN_SEEN] <= since_moment[SAFETY_LEVEL]:
        del facts[BEEN_SEEN]
    facts |= facts_in(limits_in(facts.get(LIMITS)), local_date(now, zone), _bar_of(facts), lambda kg, unit: shown(kg, unit, str(
        facts.get("welcome.units", METRIC))))
    return Known(facts, now, _Answers(db, person), offered=lambda: outbox.offered_to(db, person),
                 invited=lambda: outbox.invited_to(db, person))


class _Answers:
    """A person's answers, read when they are first asked for."""  # functools.cache takes 4 µs to make, of a turn's 300

    __slots__ = ("_db", "_person", "_rows")

    def __init__(self, db: sqlite3.Connection, person: int) -> None:
        self._db, self._person = db, person
        self._rows: list[LoggedAnswer] | None = None

    def __call__(self) -> list[LoggedAnswer]:
        if self._rows is None:
            self._rows = list(map(log.as_answer, log.answers_of(self._db, self._person)))
        return self._rows


def _bar_of(facts: Mapping[str, Value]) -> float:
    """Return the weight of their empty bar in kg, the usual one where none is known."""
    own = facts.get("bar.weight") if facts.get("bar.bar") == "other" else None
    return own if isinstance(own, float) else LIGHT_BAR if facts.get("bar.bar") == "light" else FULL_BAR


def standing_in(facts: Mapping[str, Value], since: datetime | None, now: datetime, asked: OpenQuestions | None = None) -> SafetyStanding:
    """Return the safety standing that facts as kept amount to; ``since``: the moment the level was found; ``asked``: what stands
    unanswered beside pain, which shuts no gate by itself."""
    pain = facts.get(log.PAIN_OPEN)
    return standing_of(facts.get(SAFETY_LEVEL), since, str(facts.get("safety.why", "")), moment_of(str(pain)) if pain else None, now,
                       zone_from(facts, now), facts.get(LIMITS), asked)


def standing_now(db: sqlite3.Connection, person: int, now: datetime) -> SafetyStanding:
    """Return the safety standing of one person."""
    kept = log.facts_of(db, person)
    facts = {name: one.value for name, one in kept.items()}
    pain = log.pain_open_of(db, person)
    return standing_in(facts | ({log.PAIN_OPEN: text_of(pain)} if pain else {}),
                       kept[SAFETY_LEVEL].at if SAFETY_LEVEL in kept else None, now, open_questions(db, person).get(person))


def _agreed(facts: Mapping[str, Value]) -> dict[str, Value]:
    """Return version 1 for consents given before texts had versions. Everybody in the file has agreed once, so one of the two is
    always known; a later "no" counts as no."""
    agreed: dict[str, Value] = {name: "1" for name, answer in CONSENT_ANSWERS if name not in facts and facts.get(answer) == "yes"}
    if not agreed and not any(name in facts for name, _ in CONSENT_ANSWERS):
        agreed["consent.lifter"] = "no" if facts.get("welcome.consent") == "no" else "1"
    return agreed
