"""What came of rulings, from the command line: only of those who agreed, without names or dates."""

from __future__ import annotations

import csv
from io import StringIO

import pytest
from click.testing import CliRunner

from companion.cli.main import main
from companion.record.timestamps import text_of
from tests.app.test_service import Life, settled
from tests.screening.test_outcomes import first_screen, looked, primed


@pytest.fixture
async def life(tmp_path):
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    await settled(one)
    for row in (*first_screen(), *primed(3, 5, 8), *looked(21, "below")):
        one.db.execute("insert or ignore into runs (person, run, flow, version, began_at, ending) values (1, ?, ?, 1, ?, ?)",
                       (row.run, row.flow, text_of(row.at), row.ending))
        one.db.execute("insert into answers (at, person, flow, version, run, key, side, raw, value, unit, status, method, placement) "
                       "values (?, 1, ?, 1, ?, ?, '', 'squish', ?, '', 'ok', '', '')",
                       (text_of(row.at), row.flow, row.run, row.key, row.value))
    await one.restart()  # written past the companion, which keeps the end of its log in memory
    yield one
    await one.stop()


def said(life: Life, *words: str) -> str:
    done = CliRunner().invoke(main, (*words, "--database", str(life.path)))
    assert done.exit_code == 0, done.output
    return done.output


async def test_nobody_is_counted_who_has_not_said_yes(life):
    assert said(life, "evidence").startswith("0 lifters let outcomes be counted")
    assert said(life, "export", "outcomes").count("\n") == 1


async def test_who_says_yes_is_counted_without_name_words_or_dates_and_can_take_it_back(life):
    await life.say("share outcomes", "Yes")
    shown = said(life, "evidence")
    assert shown.startswith("1 lifter lets")
    assert "knee_to_wall_short: The knee stays clearly under the line" in shown
    assert "Rounds deeper afterwards: 1 of 1, too few" in shown
    (row,) = csv.DictReader(StringIO(said(life, "export", "outcomes")))
    assert (row["part"], row["drill_times"]) == ("calf", "3")
    assert (row["start_before"], row["start_after"], row["deeper"]) == ("parallel", "below", "yes")
    assert not any(secret in str(row).casefold() for secret in ("sam", "squish", "2025", "2026"))
    await life.say("share outcomes", "No")
    assert said(life, "evidence").startswith("0 lifters")
