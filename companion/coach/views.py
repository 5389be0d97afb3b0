"""A coach's views as chat messages: the caseload, one lifter, their log. Permission is checked here.

A request from a button or a message may be anything: an unreadable one shows the first page, a page past the end the last. The
answer about another's lifter is the same as about one who does not exist. Every text is plain and short enough to send.
"""

from __future__ import annotations

import re
import sqlite3
from typing import Final

from companion.coach.caseload_messages import caseload_shown, found_say, groups_say, note_lines
from companion.coach.compare import compare
from companion.coach.letters import NOT_YOURS, button_number, tap
from companion.coach.lifter_messages import LIFTER_VIEWS, chart_labels
from companion.coach.log_messages import LOG_ASKED, log_view
from companion.coach.look import LifterView, back_rows, fitting
from companion.coach.names import lifters_matching
from companion.coach.since import since_say
from companion.coach.whys import WHY_VIEW, topic_asked, whys_of
from companion.conversation.effects import Say
from companion.record import coaching
from companion.record.groups import groups_of
from companion.record.turn import Turn

FIND_LIFTER: Final = "find_lifter"
_ASKED: Final = re.compile(r"([0-9]{1,18})(?:-([a-z_]{1,32}|[0-9]{1,9}))?")


def show(turn: Turn, view: str, of: str) -> list[Say]:
    """Return the messages of a view ("since", "caseload", "compare", "groups", "find_lifter", "lifter", "lifter_log") for a coach, and
    audit the look.

    ``of``: a page of what is new ("1"), a group and page ("hurt-1"), a name as typed, or a lifter and a view or page
    ("17-numbers", "17-2"). Pages count from 0.
    """
    db, coach, now, book, zone = turn.db, turn.person, turn.now, turn.book, turn.zone
    if view == "caseload":
        return caseload_shown(db, coach, of, now, zone)
    if view == "groups":
        return [groups_say(groups_of(db, coach), coaching.told_apart(db, coach))]
    if view == "since":
        say, news = since_say(db, coach, now, zone, button_number(of))
        note_lines(db, coach, [one.person for one in news], now, zone)
        return [say]
    if view == "compare":
        return [compare(turn, of)]
    lifter, what = lifter_shown(db, coach, view, of), "" if view == FIND_LIFTER else _asked(of)
    if view == FIND_LIFTER and lifter is None:
        return [found_say(db, coach, lifters_matching(db, coach, of), now, zone)]
    if lifter is None:
        return [Say(NOT_YOURS, ((tap("My lifters", "caseload"),),))]
    look = LifterView(db, coach, lifter, now, zone)
    if view == "lifter_log":
        return [log_view(look, of, book)]
    if label := chart_labels().get(what):
        coaching.audit_look(db, lifter, coach, f"chart: {label.lower()}", now)
        return [Say(f"{look.name}: {label.lower()}", back_rows(lifter, ("Charts", "charts")), f"{what} of {lifter}")]
    if topic := topic_asked(what):
        coaching.audit_look(db, lifter, coach, f"why: {topic.label.lower()}", now)
        said = [f"{look.name}: {topic.label.lower()}", *whys_of(db, lifter, topic, now)]
        return [Say(fitting("\n\n".join(said).split("\n")), back_rows(lifter, ("Why?", WHY_VIEW)))]
    kind = LIFTER_VIEWS.get(what, LIFTER_VIEWS[""])
    coaching.audit_look(db, lifter, coach, kind.words, now)
    if kind.alerts:
        coaching.note_seen(db, lifter, None, now)
    return kind.says(look)


def lifter_shown(db: sqlite3.Connection, coach: int, view: str, of: str) -> int | None:
    """Return the one lifter that a view shows; None for a view of several, or where this coach does not see them."""
    if view == FIND_LIFTER:
        one, *more = lifters_matching(db, coach, of) or [0]
        lifter = 0 if more else one
    else:
        asked = (LOG_ASKED if view == "lifter_log" else _ASKED).fullmatch(of) if view in ("lifter", "lifter_log") else None
        lifter = int(asked[1]) if asked else 0
    return lifter if coaching.sees(db, coach, lifter) else None


def in_their_copy(db: sqlite3.Connection, coach: int, view: str, of: str) -> int | None:
    """Return the lifter whose copy of their data has the messages of a view; None for nobody's, as where private notes are in them."""
    return None if view == "lifter" and _asked(of) == "thread" else lifter_shown(db, coach, view, of)


def _asked(of: str) -> str:
    """Return the view of a lifter, or the page, that is asked for."""
    return found[2] or "" if (found := _ASKED.fullmatch(of)) else ""
