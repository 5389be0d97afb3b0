"""Orders of coaches that hold for a lifter: pinned depth, load and set-up, drill and retest date; read from the acts, kept as findings.

Each coach's latest order of a kind stands while they are linked. Where two differ, the strictest depth or load holds, and the latest
set-up, drill or date. Whoever is no longer linked takes their orders with them.
"""

from __future__ import annotations

import sqlite3
from datetime import datetime
from typing import Final, NamedTuple

from companion.language.units import shown
from companion.record.timestamps import text_of
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.depth import BAND_WORDS, Band, band_of

PINS: Final = ("pin_depth", "pin_load", "pin_setup", "drill", "retest")
"""The acts that stand until they are ended."""


class Order(NamedTuple):
    """An order that stands: who gave it, its value and reason, and when (stored text)."""

    coach: int
    coach_name: str
    value: str
    reason: str
    at: str


def standing_orders(db: sqlite3.Connection, lifter: int, what: str) -> list[Order]:
    """Return the standing orders of one kind, one for each coach linked now who has given one, the latest first."""
    rows = db.execute(
        "select a.coach, a.coach_name, a.value, a.reason, a.at from acts a join coaches k on k.person = a.person and k.coach = a.coach "
        "and k.until is null and a.at >= k.since join coach_roles c on c.person = k.coach and c.until is null where a.person = ? and "
        "a.what = ? and not exists (select 1 from acts l where l.person = a.person and l.coach = a.coach and l.what = a.what and "
        "l.id > a.id) and a.value <> 'none' order by a.id desc", (lifter, what))
    return [Order(*row) for row in rows]


def strictest(what: str, orders: list[Order]) -> Order | None:
    """Return the order that holds among several of a kind, the latest first; None where there is none."""
    if what == "pin_load":
        return min(orders, key=lambda one: float(one.value), default=None)
    if what == "pin_depth":
        return min(orders, key=lambda one: list(Band).index(band_of(one.value) or Band.WELL_ABOVE), default=None)
    return orders[0] if orders else None


def ended(db: sqlite3.Connection, lifter: int, coach: int, name: str, at: datetime) -> list[tuple[str, Order | None]]:
    """Let the orders of a coach who is no longer linked lapse; those of the coaches who stay hold on. Returns each act of which
    something else holds now, with the order that does (None: no coach's)."""
    changed: list[tuple[str, Order | None]] = []
    for what in PINS:
        if db.execute("select 1 from acts where person = ? and coach = ? and what = ?", (lifter, coach, what)).fetchone() is None:
            continue
        stays = strictest(what, standing_orders(db, lifter, what))
        fact, value = COACH_ACTS[what].sets, stays.value if stays else ""
        kept = db.execute("select value from facts where person = ? and name = ?", (lifter, fact)).fetchone()
        if kept is None or kept[0] in ("", value):
            continue  # nothing was set by hand, or what holds stays the same
        rule, because = (f"set by coach {stays.coach_name}", stays.reason) if stays else (f"coach {name} has left", "")
        _set(db, lifter, fact, value, rule, because, at)
        changed.append((what, stays))
    return changed


def lapsed_words(db: sqlite3.Connection, lifter: int, at: datetime, units: str) -> str:
    """Return what holds now of the orders that lapsed at a moment, as sentences for the lifter; "" where none did."""
    by_fact = {COACH_ACTS[what].sets: what for what in PINS}
    said = []
    for name, value, rule in db.execute("select name, value, rule from findings where person = ? and at = ? and name in "
                                        "('depth.pin', 'load.pin', 'setup.pin', "
                                        "'drill.pin', 'retest.pin') order by id", (lifter, text_of(at))):
        words = COACH_ACTS[by_fact[name]].words
        said.append(f"Now {words} {_in_words(name, value, units)}, {rule}." if value else
                    f"What they set for {words} no longer holds.")
    return "".join(f" {one}" for one in said)


def _in_words(fact: str, value: str, units: str) -> str:
    if fact == "load.pin":
        return f"is {shown(float(value), 'kg', units)}"
    band = band_of(value) if fact == "depth.pin" else None
    return f"is {BAND_WORDS[band] if band else value.replace('+', ' and ').replace('_', ' ')}"


def _set(db: sqlite3.Connection, lifter: int, fact: str, value: str, rule: str, because: str, at: datetime) -> None:
    db.execute("insert into findings (person, run, name, value, rule, because, at) values (?, '', ?, ?, ?, ?, ?)",
               (lifter, fact, value, rule, because, text_of(at)))
    db.execute("update facts set value = ?, at = ? where person = ? and name = ?", (value, text_of(at), lifter, fact))
