"""Groups of a coach's lifters, such as “Tuesday 6 pm”: kept as acts, each of which puts one lifter into a group or takes them out."""

from __future__ import annotations

import sqlite3
from typing import Final, NamedTuple

EVERYBODY: Final = "g0"
"""The number of all of a coach's lifters, as a button has it."""


class LifterGroup(NamedTuple):
    """One group: its number as a button has it ("g12"), its name and the lifters in it."""

    number: str
    name: str
    lifters: tuple[int, ...]


def groups_of(db: sqlite3.Connection, coach: int) -> tuple[LifterGroup, ...]:
    """Return a coach's groups by name, each with the lifters in it who are linked now; the last is everybody, where there are several."""
    rows = db.execute(
        "select min(f.id), substr(a.value, 2) as name, a.person from acts a join coaches k on k.person = a.person and k.coach = a.coach "
        "and k.until is null and a.at >= k.since join acts f on f.coach = a.coach and f.what = 'group' and substr(f.value, 2) = "
        "substr(a.value, 2) where a.coach = ? and a.what = 'group' and a.value like '+%' and not exists (select 1 from acts l where "
        "l.person = a.person and l.coach = a.coach and l.what = 'group' and substr(l.value, 2) = substr(a.value, 2) and l.id > a.id) "
        "group by name, a.person order by name, a.person", (coach,)).fetchall()
    found: dict[str, tuple[int, list[int]]] = {}
    for first, name, person in rows:
        number, lifters = found.get(name, (first, []))
        found[name] = min(number, first), [*lifters, person]
    everybody = tuple(one for (one,) in db.execute("select k.person from coaches k join coach_roles c on c.person = k.coach and c.until is "
                                                   "null where k.coach = ? and k.until is null order by k.person", (coach,)))
    return (*(LifterGroup(f"g{number}", name, tuple(lifters)) for name, (number, lifters) in found.items()),
            *((LifterGroup(EVERYBODY, "everybody", everybody),) if len(everybody) > 1 else ()))


def last_act(db: sqlite3.Connection) -> int:
    """Return the number of the latest act."""
    return int(db.execute("select ifnull(max(id), 0) from acts").fetchone()[0])


def note_several(db: sqlite3.Connection, after: int) -> None:
    """Note that the acts after one were done for several lifters at once: they are no look at any one of them."""
    db.execute("update acts set several = 1 where id > ?", (after,))


def is_in(db: sqlite3.Connection, coach: int, lifter: int, name: str) -> bool:
    """True if a lifter is in the coach's group of that name."""
    return any(group.name == name and lifter in group.lifters for group in groups_of(db, coach))
