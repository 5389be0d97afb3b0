"""Orders of coaches that hold for a lifter: pinned depth, load and set-up, a raised limit, drill and retest date; read from the acts,
kept as findings.

Each coach's latest order of a kind stands while they are linked, until its day. Where two differ, the strictest depth or load holds, and
the latest set-up, drill or date. Whoever is no longer linked takes their orders with them.
"""

from __future__ import annotations

import json
import sqlite3
from datetime import date, datetime
from typing import Final, NamedTuple

from companion.language.units import METRIC, shown
from companion.record.timestamps import text_of
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.depth import BAND_WORDS, Band, band_of

PINS: Final = ("pin_depth", "pin_load", "raise_load", "pin_setup", "drill", "retest")
"""The acts that stand until they are ended."""


class Order(NamedTuple):
    """An order that stands: who gave it, its value and reason, when (stored text), and the day on which it ends ("": none)."""

    coach: int
    coach_name: str
    value: str
    reason: str
    at: str
    until: str


class Holding(NamedTuple):
    """Order behind a fact, as it is told: the day on which it ends ("": none), and the orders of other coaches that differ from it, in
    words ("": none)."""

    until: str
    differs: str


class EndingOrder(NamedTuple):
    """An order whose day has come: its act, for whom, whose (None: of somebody whose data is gone), and its kind."""

    id: int
    lifter: int
    coach: int | None
    what: str


def standing_orders(db: sqlite3.Connection, lifter: int, what: str) -> list[Order]:
    """Return the standing orders of one kind, one for each coach linked now who has given one, the latest first."""
    return all_standing(db, lifter).get(what, [])


def all_standing(db: sqlite3.Connection, lifter: int) -> dict[str, list[Order]]:
    """Return the standing orders of each kind of which there are any, the latest first."""
    found: dict[str, list[Order]] = {}
    for what, *row in db.execute(
            "select a.what, a.coach, a.coach_name, a.value, a.reason, a.at, a.until from acts a join coaches k on k.person = a.person and "
            "k.coach = a.coach and k.until is null and a.at >= k.since join coach_roles c on c.person = k.coach and c.until is null where "
            "a.person = ? and a.what in (select value from json_each(?)) and a.lapsed_at is null and not exists (select 1 from acts l "
            "where l.person = a.person and l.coach = a.coach and l.what = a.what and l.id > a.id) and a.value <> 'none' order by a.id desc",
            (lifter, json.dumps(PINS))):
        found.setdefault(what, []).append(Order(*row))
    return found


def strictest(what: str, orders: list[Order]) -> Order | None:
    """Return the order that holds among several of a kind, the latest first; None where there is none."""
    if what in ("pin_load", "raise_load"):
        return min(orders, key=lambda one: float(one.value), default=None)
    if what == "pin_depth":
        return min(orders, key=lambda one: list(Band).index(band_of(one.value) or Band.WELL_ABOVE), default=None)
    return orders[0] if orders else None


def held_of(db: sqlite3.Connection, lifter: int, units: str) -> dict[str, Holding]:
    """Return what is told of the order behind each fact that one is behind."""
    held = {}
    for what, given in all_standing(db, lifter).items():
        holds = strictest(what, given) or given[0]
        differs = ", ".join(f"coach {one.coach_name}: {value_words(what, one.value, units)}" for one in given if one.value != holds.value)
        held[COACH_ACTS[what].sets] = Holding(holds.until, differs)
    return held


def ended(db: sqlite3.Connection, lifter: int, name: str | None, at: datetime) -> None:
    """Let the orders of a coach who is no longer linked lapse; those of the coaches who stay hold on. ``name``: the coach's, if known."""
    for what in PINS:
        _hold_what_stands(db, lifter, what, f"coach {name} has left" if name else "a coach has left", at)


def ending(db: sqlite3.Connection, day: str) -> list[EndingOrder]:
    """Return the orders whose last day is over on a day, and which have not lapsed."""
    return [EndingOrder(*row) for row in db.execute("select id, person, coach, what from acts where until <> '' and until <= ? and "
                                                    "lapsed_at is null", (day,))]


def lapse(db: sqlite3.Connection, order: EndingOrder, at: datetime) -> bool:
    """Let an order lapse; True if something else holds now, or nothing."""
    db.execute("update acts set lapsed_at = ? where id = ?", (text_of(at), order.id))
    return _hold_what_stands(db, order.lifter, order.what, "the time it was set for is over", at)


def end_all(db: sqlite3.Connection, lifter: int, what: str, why: str, at: datetime) -> list[int]:
    """Let every order of a kind lapse, as a raised limit does when a day is closed; returns the coaches whose it was."""
    coaches = [one.coach for one in standing_orders(db, lifter, what)]
    db.execute("update acts set lapsed_at = ? where person = ? and what = ? and lapsed_at is null", (text_of(at), lifter, what))
    _hold_what_stands(db, lifter, what, why, at)
    return coaches


def _hold_what_stands(db: sqlite3.Connection, lifter: int, what: str, why: str, at: datetime) -> bool:
    """Keep what the orders that stand amount to as the finding of their kind; True if that is something else than before."""
    stays = strictest(what, standing_orders(db, lifter, what))
    fact, value = COACH_ACTS[what].sets, stays.value if stays else ""
    kept = db.execute("select value from facts where person = ? and name = ?", (lifter, fact)).fetchone()
    if kept is None or kept[0] in ("", value):
        return False  # nothing was set by hand, or what holds stays the same
    rule, because = (f"set by coach {stays.coach_name}", stays.reason) if stays else (why, "")
    _set(db, lifter, fact, value, rule, because, at)
    return True


def lapsed_words(db: sqlite3.Connection, lifter: int, at: datetime, units: str = "") -> str:
    """Return what holds now of the orders that lapsed at a moment, as sentences for the lifter; "" where none did."""
    if not units:
        told = db.execute("select value from facts where person = ? and name = 'welcome.units'", (lifter,)).fetchone()
        units = told[0] if told else METRIC
    by_fact = {COACH_ACTS[what].sets: what for what in PINS}
    said = []
    for name, value, rule in db.execute("select name, value, rule from findings where person = ? and at = ? and name in ('depth.pin', "
                                        "'load.pin', 'load.raised', 'setup.pin', 'drill.pin', 'retest.pin') order by id",
                                        (lifter, text_of(at))):
        words = COACH_ACTS[by_fact[name]].words
        said.append(f"Now {words} is {value_words(by_fact[name], value, units)}, {rule}." if value else
                    f"What they set for {words} no longer holds.")
    return "".join(f" {one}" for one in said)


def value_words(what: str, value: str, units: str) -> str:
    """Return the value of a coach's act in words, as every page and notice has it; any value that can't be read as it is."""
    from companion.screening.drills import BY_PART  # here: the first words to a stranger wait for little
    from companion.screening.setups import called

    if value == "none" and what in PINS:
        return "as the tests say" if what == "drill" else "no longer set"
    if what in ("pin_load", "raise_load"):
        return shown(float(value), "kg", units) if value.replace(".", "", 1).isdecimal() else value
    if what in ("retest", "snooze"):
        return f"{'until ' if what == 'snooze' else ''}{day_in_words(value)}"
    if what == "pin_depth" and (band := band_of(value)):
        return BAND_WORDS[band]
    if what == "pin_setup" and (words := called(value, lambda number, unit: shown(number, unit, units))):
        return words
    if what == "drill" and value in BY_PART:
        return f"{BY_PART[value].prime.name}, for the {value}"
    return value.partition(" ")[2] if what == "hand_over" else value.replace("_", " ")


def day_in_words(value: str) -> str:
    """Return a day as "Friday 1 May"; what is no day, as it is."""
    try:
        day = date.fromisoformat(value)
    except ValueError:
        return value
    return f"{day:%A} {day.day} {day:%B}"


def _set(db: sqlite3.Connection, lifter: int, fact: str, value: str, rule: str, because: str, at: datetime) -> None:
    db.execute("insert into findings (person, run, name, value, rule, because, at) values (?, '', ?, ?, ?, ?, ?)",
               (lifter, fact, value, rule, because, text_of(at)))
    db.execute("update facts set value = ?, at = ? where person = ? and name = ?", (value, text_of(at), lifter, fact))
