"""Every step from one schema to the next, on a file with rows in every table there is at that step."""

import sqlite3
from hashlib import sha256

import pytest
from sqlite_utils import Database

from companion.operate.integrity import counts_of, damage_of, schema_of, tables_of
from companion.record.file import CannotOpen, open_for_writing
from companion.record.schema import migrations
from tests.operate.build import changing

STEPS = [one.name for one in migrations.pending(Database(memory=True))]
EXAMPLES = {"text": "words", "integer": 1, "real": 1.5, "any": 2.5, "blob": b"bytes"}
OWN = "_sqlite_migrations"
MOVED = {"links_in_rows": "chain"}
"""Steps that move the rows of a table into those of another."""


def apply_one(db, step):
    later = STEPS[STEPS.index(step) + 1:]
    migrations.apply(db, stop_before=later)
    assert schema_of(db.conn).applied[-1] == step


def fill_what_is_empty(db):
    """A row in each table that has none: an example of each column's type, and 1 for what refers to another row."""
    db.execute("pragma foreign_keys=off")  # a table may come before the one it refers to; all is checked at the end
    for table in tables_of(db):
        if table == OWN or db.execute(f"select count(*) from [{table}]").fetchone()[0]:
            continue
        columns = db.execute(f"pragma table_info([{table}])").fetchall()
        refers = {row[3] for row in db.execute(f"pragma foreign_key_list([{table}])")}
        row = {name: 1 if name in refers else EXAMPLES[kind.lower()] for _, name, kind, *_ in columns}
        db.execute(f"insert into [{table}] ({', '.join(f'[{name}]' for name in row)}) values ({', '.join('?' * len(row))})",
                   list(row.values()))
    db.execute("pragma foreign_keys=on")
    assert damage_of(db) == ""


def everything(db):
    """Each table's rows, as name and value of each column."""
    found = {}
    for table in tables_of(db):
        rows = db.execute(f"select * from [{table}]")
        names = [column[0] for column in rows.description]
        found[table] = [dict(zip(names, row, strict=True)) for row in rows]
    return found


@pytest.fixture
def db(tmp_path):
    made = Database(sqlite3.connect(tmp_path / "c.sqlite", isolation_level=None), execute_plugins=False)
    made.execute("pragma foreign_keys=on")
    yield made
    made.close()


def test_no_step_loses_a_row_or_a_value(db):
    for step in STEPS:
        before = everything(db.conn)
        apply_one(db, step)
        after = everything(db.conn)
        for table, rows in before.items():
            if MOVED.get(step) == table:
                assert [after["answers"][0][name] for name in ("salt", "commits", "hash")] == [rows[0][name] for name in (
                    "salt", "commits", "hash")]
                continue
            kept = [{name: row[name] for name in old} for old, row in zip(rows, after[table], strict=False)]
            assert kept[:len(rows)] == rows, (step, table)
            assert table == OWN or len(after[table]) == len(rows), (step, table)
        fill_what_is_empty(db.conn)
        assert all(counts_of(db.conn).values()), step
        assert damage_of(db.conn) == "", step


def test_a_file_of_each_step_opens_at_the_newest_with_its_rows(tmp_path):
    for number, step in enumerate(STEPS):
        path = tmp_path / f"{number}.sqlite"
        made = Database(sqlite3.connect(path, isolation_level=None), execute_plugins=False)
        for earlier in STEPS[:number + 1]:
            apply_one(made, earlier)
        fill_what_is_empty(made.conn)
        before = counts_of(made.conn)
        made.close()
        opened, lock = open_for_writing(path)
        after = counts_of(opened.conn)
        assert schema_of(opened.conn).waiting == ()
        opened.close()
        lock.close()
        moved = [OWN, *(table for later, table in MOVED.items() if later in STEPS[number + 1:])]
        kept = [name for name in before if name not in moved]
        assert [after[name] for name in kept] == [before[name] for name in kept], step


RELEASED = {
    "first": "43c43c9bbb45", "picture_files": "170be4318df6", "squat_days": "e822337ad336", "coaching": "818ad980a777",
    "numbered_once": "7845069e2f90", "pain_runs_and_codes": "b1d56fc7f430", "hurt_asked": "de2973f967dc",
    "alerts_seen": "73000c29bb93", "delivery": "f689bd5a39bb", "views_with_numbers": "ca1a892d43b5", "answer_chain": "1be692632c94",
    "orders_that_end": "952e107a3d92", "links_in_rows": "d645bbf81fb3", "roles": "0e4d985b5da5",
    "acts_for_several": "45d9b8e96fad", "waits_since": "edde08b5d093", "left_open": "e66bea084b55",
}
"""What each step makes of a file, never to change once people have files of it. A new step comes here when it is released, at the
latest when another follows it."""


def shape(db):
    """A schema as it works, told apart by a few letters: columns, references, indexes, triggers and views."""
    parts = sorted((name, sql) for name, sql in db.execute("select name, sql from sqlite_master where type <> 'table' and sql is not null"))
    for table in tables_of(db):
        if table != OWN:
            parts += [(table, tuple(row)) for pragma in ("table_xinfo", "foreign_key_list")
                      for row in db.execute(f"pragma {pragma}([{table}])")]
    return sha256(repr(parts).encode()).hexdigest()[:12]


def test_a_released_step_is_never_changed(db):
    made = {}
    for step in STEPS:
        apply_one(db, step)
        made[step] = shape(db.conn)
    assert {step: made[step] for step in RELEASED} == RELEASED
    assert set(STEPS[:-1]) <= set(RELEASED)


def test_where_a_later_step_fails_the_earlier_ones_of_the_same_start_are_not_kept_either(tmp_path):
    path = tmp_path / "c.sqlite"
    made = Database(sqlite3.connect(path, isolation_level=None), execute_plugins=False)
    apply_one(made, STEPS[0])
    made.execute("create table marks (old text)")  # in the way of the third step
    before = shape(made.conn)
    made.close()
    with pytest.raises(CannotOpen, match="marks already exists"):
        open_for_writing(path)
    with changing(path) as db:
        assert schema_of(db).applied == (STEPS[0],)
        assert shape(db) == before


def test_a_step_that_fails_leaves_the_file_as_it_was(db):
    apply_one(db, STEPS[0])
    fill_what_is_empty(db.conn)
    before = everything(db.conn)
    db.execute("create table marks (old text)")
    db.execute("create table picture_files (old text)")
    with pytest.raises(sqlite3.OperationalError):
        migrations.apply(db)
    assert schema_of(db.conn).applied == (STEPS[0],)
    assert {table: rows for table, rows in everything(db.conn).items() if table in before} == before
