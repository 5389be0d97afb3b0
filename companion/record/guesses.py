"""Score of what a coach expected of retests, and of what the rules expected."""

from __future__ import annotations

import sqlite3
from typing import Final, NamedTuple

EXPECTED: Final = {"better": ("better", "better"), "within_error": ("same", "no change beyond measurement error"),
                   "worse": ("worse", "worse")}
"""What may be expected of a retest, by the value of the change: on a button, and in words."""
BY_THE_RULES: Final = "as_planned"
"""The answer about homework after which the rules expect a change for the better; after any other, none beyond error (our choice)."""


class GuessScore(NamedTuple):
    """Retests of which a coach stated what they expected: how many, how many they had right, and how many the rules."""

    retests: int
    coach: int
    rules: int

    @property
    def words(self) -> str:
        """The score in words; "" without a retest."""
        return (f"right about {self.coach} of {self.retests} {'retest' if self.retests == 1 else 'retests'}; the rules about {self.rules}"
                if self.retests else "")


def guess_score(db: sqlite3.Connection, coach: int) -> GuessScore:
    """Return the score of a coach over the lifters linked now: the last expectation stated between two retests counts, and a retest of
    which no change can be told counts for nobody."""
    row = db.execute(
        "select count(*), ifnull(sum(a.value = f.value), 0), ifnull(sum(f.value = iif((select h.value from findings h where h.person = "
        "f.person and h.name = 'home_work' and h.id < f.id order by h.id desc limit 1) = ?, 'better', 'within_error')), 0) "
        "from findings f join coaches k on k.person = f.person and k.coach = ? and k.until is null join acts a on a.id = (select max(g.id) "
        "from acts g where g.person = f.person and g.coach = k.coach and g.what = 'guess' and g.at < f.at and g.at > ifnull((select "
        "max(p.at) from findings p where p.person = f.person and p.name = 'retest.change' and p.id < f.id), '')) "
        "where f.name = 'retest.change' and f.value in ('better', 'worse', 'within_error')", (BY_THE_RULES, coach)).fetchone()
    return GuessScore(*row)


def guess_words(db: sqlite3.Connection, coach: int, lifter: int) -> str:
    """Return what a coach expects of a lifter's next retest, in words; "" where they have not said since the last."""
    row = db.execute("select value from acts where person = :lifter and coach = :coach and what = 'guess' and at > ifnull((select max(at) "
                     "from findings where person = :lifter and name = 'retest.change'), '') order by id desc limit 1",
                     {"lifter": lifter, "coach": coach}).fetchone()
    return EXPECTED[row[0]][1] if row and row[0] in EXPECTED else ""
