"""How long the coach's pages take with 1,000 lifters and a million answers in one file.

Run it: ``PYTHONPATH=. python -m tests.benchmarks.caseload [LIFTERS] [ANSWERS_EACH]``. The file is built in a temporary folder
and removed. Beside each page stands the plainest SQL that reads the same rows, without a word made of them. Not a test.
"""

from __future__ import annotations

import platform
import sqlite3
import sys
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from functools import partial
from pathlib import Path
from random import Random
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

from companion.coach.caseload import caseload
from companion.coach.summary import lifter_page
from companion.coach.triage import GROUPS
from companion.coach.views import show
from companion.record.caseload import caseload_rows
from companion.record.coaching import link, make_coach
from companion.record.file import open_for_writing
from companion.record.timestamps import text_of
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.benchmarks.measured import Row, by_turns, compare, seconds

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
ROUNDS = 9
COACH = 1
RUN_ROWS = 12
CHECK = ("urgent", "history", "bladder", "chest", "leg_signs", "fall", "fever", "weakness", "pain")


def build(db: sqlite3.Connection, lifters: int, each: int) -> None:
    """Lifters with as many answers each, over half a year: safety checks, squat days, screens with numbers, pain."""
    random = Random(1)
    db.execute("begin")
    db.executemany("insert into persons values (?, ?)", [(n, text_of(NOW - timedelta(days=300))) for n in range(1, lifters + 2)])
    db.executemany("insert into addresses (channel, address, person, name) values ('telegram', ?, ?, ?)",
                   [(str(n), n, f"Lifter {n}") for n in range(1, lifters + 2)])
    make_coach(db, COACH, "Ada", NOW - timedelta(days=299))
    for person in range(2, lifters + 2):
        link(db, person, COACH, NOW - timedelta(days=190))
        _stand(db, person, random)
    runs_each = -(-each // RUN_ROWS)
    for part in range(runs_each):  # in the order of time, so that a lifter's rows lie far apart, as they would
        at = NOW - timedelta(days=180) * (1 - part / runs_each) - timedelta(hours=2)
        for person in range(2, lifters + 2):
            if person % 7 == 0 and part > runs_each * 0.9:
                continue  # gone quiet
            _run(db, person, str(part + 1), at + timedelta(seconds=person), random)
    db.execute("commit")
    db.execute("pragma wal_checkpoint(truncate)").fetchall()


def _run(db: sqlite3.Connection, person: int, run: str, at: datetime, random: Random) -> None:
    kind = ("safety_check", "squat_after", "leg_raise", "knee_to_wall", "squat_look")[int(run) % 5]
    when = text_of(at)
    db.execute("insert into runs values (?, ?, ?, 1, ?, ?, 'done', '', '')", (person, run, kind, when, when))
    rows = list(_rows(kind, random))
    db.executemany("insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, at) "
                   "values (?, ?, ?, 1, ?, ?, ?, ?, ?, 'ok', ?, ?, ?)",
                   [(person, run, kind, key, "left" if key.startswith("left") else "right" if key.startswith("right") else "", str(value),
                     value, unit, method, placement, when) for key, value, unit, method, placement in rows])
    db.executemany("insert into facts values (?, ?, ?, 0, ?) on conflict do update set value = excluded.value, at = excluded.at",
                   [(person, f"{kind}.{key}", value, when) for key, value, *_ in rows])
    if kind == "safety_check":
        db.executemany("insert into findings (person, run, name, value, rule, because, at) values (?, ?, ?, 'go', 'safety check', "
                       "'nothing against it', ?)", [(person, run, name, when) for name in ("safety.level", "safety.why") * 8])
    if kind == "squat_after":
        db.execute("insert into findings (person, run, name, value, rule, because, at) values (?, ?, 'depth.step', 'parallel', "
                   "'depth steps', 'It stays at parallel.', ?)", (person, run, when))


def _rows(kind: str, random: Random) -> Iterator[tuple[str, float | str, str, str, str]]:
    if kind == "safety_check":
        yield from ((key, 0.0 if key == "pain" else "no", "", "", "") for key in CHECK)
        yield from ((f"extra_{n}", "no", "", "", "") for n in range(RUN_ROWS - len(CHECK)))
    elif kind == "squat_after":
        yield from (("done", "yes", "", "", ""), ("back", random.choice(("still", "still", "moved")), "", "", ""),
                    ("seen_by", "film", "", "", ""), ("kept", "kept", "", "", ""), ("hurt", "no", "", "", ""),
                    ("load", 80.0, "kg", "", ""), ("note", "slept badly, bar felt light", "", "", ""), ("video", "file-1", "", "", ""))
        yield from ((f"extra_{n}", "no", "", "", "") for n in range(RUN_ROWS - 8))
    elif kind == "leg_raise":
        yield from (("method", "level", "", "", ""), ("effort", "own", "", "", ""), ("placement", "shin", "", "", ""),
                    *((f"{side}_level{n}", random.gauss(68, 4), "deg", "level", "shin") for side in ("left", "right") for n in ("", "_2")))
        yield from ((f"extra_{n}", "no", "", "", "") for n in range(RUN_ROWS - 7))
    elif kind == "knee_to_wall":
        yield from (("method", "tape", "", "", ""),
                    *((f"{side}_{n}", random.gauss(11, 2), "cm", "tape", "") for side in ("left", "right") for n in (1, 2)))
        yield from ((f"extra_{n}", "no", "", "", "") for n in range(RUN_ROWS - 5))
    else:
        yield from (("seen_by", "film", "", "", ""), ("plain_rounds", "clearly", "", "", ""), ("plain_depth", "parallel", "", "", ""))
        yield from ((f"extra_{n}", "no", "", "", "") for n in range(RUN_ROWS - 3))


def _stand(db: sqlite3.Connection, person: int, random: Random) -> None:
    """What makes lifters differ: alerts, levels, results, reminders, reviews."""
    def ago(days: float) -> str:
        return text_of(NOW - timedelta(days=days))

    facts = {"outcome.at": (NOW - timedelta(days=random.uniform(1, 60))).isoformat(), "overall": "likely", "depth.step": "parallel",
             "safety.level": "clinician" if person % 29 == 0 else "go", "welcome.zone": "Europe/Berlin", "length": "likely",
             "strength": "ruled_out", "control": "too_close", "load.limit": "64",
             "squat.plan": '{"weekly":{"TU":"18:00","FR":"18:00"}}'}
    db.executemany("insert into facts values (?, ?, ?, 1, ?) on conflict do nothing", [(person, name, value, ago(10)) for name, value in
                                                                                       facts.items()])
    if person % 2:  # half of them were never hurt
        db.execute("insert into facts values (?, 'pain.hurt', 'yes', 1, ?)", (person, ago(3 if person % 17 == 0 else 20)))
    for days in (100, 50, 3 if person % 17 == 0 else 20) if person % 2 else ():
        run = f"pain {days}"
        db.execute("insert into runs values (?, ?, 'pain', 1, ?, ?, 'done', '', '')", (person, run, ago(days), ago(days)))
        db.executemany("insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, at) "
                       "values (?, ?, 'pain', 1, ?, '', ?, ?, '', 'ok', '', '', ?)",
                       [(person, run, key, str(value), value, ago(days)) for key, value in
                        (("where", "back"), ("bad", 5.0), ("sharp", "no"), ("below_knee", "no"))])
        db.executemany("insert into findings (person, run, name, value, rule, because, at) values (?, ?, 'safety.level', 'not_today', ?, "
                       "'back, 5 of 10', ?)", [(person, run, rule, ago(days)) for rule in
                                               ("something hurt, questions open",) * 4 + ("pain questions",)])
        db.execute("insert into alerts (person, run, level, because, at) values (?, ?, 'not_today', 'something hurt (back)', ?)",
                   (person, run, ago(days)))
    db.execute("insert into reminders (person, kind, flow, wall, zone, due_at, state, made_at) values (?, 'retest', 'retest', "
               "'2026-12-01 10:00', 'UTC', ?, 'open', ?)", (person, ago(random.uniform(-30, 12)), ago(30)))
    if person % 3:
        db.execute("insert into acts (person, coach, coach_name, what, value, reason, at) values (?, ?, 'Ada', 'reviewed', '', '', ?)",
                   (person, COACH, ago(random.uniform(1, 19))))


def timed(name: str, most: float, work: Callable[[], object]) -> None:
    """Print the median, the least and the most of nine rounds, in milliseconds, beside what is allowed."""
    times = []
    for _ in range(ROUNDS):
        begin = perf_counter()
        work()
        times.append((perf_counter() - begin) * 1000)
    allowed = f"   at most {most:g}" if most else ""
    print(f"{name:<46} {median(times):7.1f} ms  ({min(times):.1f} to {max(times):.1f}){allowed}")


def rows() -> Iterator[Row]:
    """The caseload with its words and order, against its one query read with nothing made of it; a million answers."""
    with TemporaryDirectory() as folder:
        db, lock = open_for_writing(Path(folder) / "companion.sqlite")
        with closing(lock), closing(db):
            build(db.conn, 1_000, 1_000)
            ours, theirs, view = by_turns(*(partial(lambda work: seconds(work) * 1000, work) for work in (
                lambda: caseload(db.conn, COACH, NOW, "UTC"), lambda: caseload_rows(db.conn, COACH),
                lambda: db.conn.execute("select * from caseload").fetchall())), rounds=ROUNDS)
    yield compare("caseload, 1,000 lifters, a million answers", "its rows by SQL alone", ours, theirs, "ms", "at most", 1.5)
    yield compare("the same", "the view `caseload`, fewer columns", ours, view, "ms", "told only")


def main(lifters: int, each: int) -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "companion.sqlite"
        db, lock = open_for_writing(path)
        with closing(lock), closing(db):
            begin = perf_counter()
            build(db.conn, lifters, each)
        db, lock = open_for_writing(path)  # as it is opened every day: no page of it in memory
        with closing(lock), closing(db):
            connection = db.conn
            rows = connection.execute("select count(*) from answers").fetchone()[0]
            print(f"{lifters} lifters, {rows:,} answers, {path.stat().st_size / 1e6:.0f} MB, built in {perf_counter() - begin:.0f} s; "
                  f"SQLite {sqlite3.sqlite_version}, Python {platform.python_version()}, {platform.machine()}")
            lines = caseload(connection, COACH, NOW, "UTC")
            print("groups:", {group: sum(line.group == group for line in lines) for group in GROUPS})
            timed("caseload", 50, lambda: caseload(connection, COACH, NOW, "UTC"))
            timed("  its query alone", 0, lambda: caseload_rows(connection, COACH))
            timed("  the plain view of the same lifters", 0, lambda: connection.execute("select * from caseload").fetchall())
            timed("its first page as a message, looks noted", 0, lambda: show(Turn(connection, COACH, NOW, BOOK), "caseload", ""))
            person = lifters // 2
            timed("one lifter", 20, lambda: lifter_page(connection, COACH, person, NOW))
            timed("  select * of their answers, facts, findings", 0, lambda: [connection.execute(
                f"select * from {table} where person = ?", (person,)).fetchall() for table in ("answers", "facts", "findings")])
            timed("the summary as messages", 0, lambda: show(Turn(connection, COACH, NOW, BOOK), "lifter", str(person)))
            timed("a page of the log, the oldest", 0, lambda: show(Turn(connection, COACH, NOW, BOOK), "lifter_log", f"{person}-9999"))


if __name__ == "__main__":
    main(*(int(one) for one in (*sys.argv[1:3], *("1000", "1000")[len(sys.argv[1:3]):])))
