"""A coach's caseload and groups as chat messages."""

from __future__ import annotations

import re
import sqlite3
from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import datetime, time
from typing import Final

from companion.base.clock import instant, local_date
from companion.coach.caseload import CaseloadLine, caseload, shortened
from companion.coach.letters import NAMED_NOBODY, NO_LIFTERS, tap
from companion.coach.look import LINE_MOST, fitting, paged
from companion.coach.names import named, with_distinct_names
from companion.coach.triage import GROUP_WORDS, GROUPS, counted
from companion.conversation.effects import Say, Tap
from companion.conversation.prompt import in_rows
from companion.record.caseload import audit_caseload
from companion.record.groups import EVERYBODY, LifterGroup
from companion.screening.coach_acts import COACH_ACTS

LINES_A_PAGE: Final = 10
GROUPS_SHOWN: Final = 6
ALL_GROUPS: Final = "all"
_PAGED: Final = re.compile(r"([a-z_]{1,32})(?:-([0-9]{1,9}))?")


def caseload_shown(db: sqlite3.Connection, coach: int, of: str, now: datetime, zone: str) -> list[Say]:
    """Return the page of a caseload that is asked for, and note the look at each lifter on it."""
    lines = with_distinct_names(db, coach, caseload(db, coach, now, zone))
    found = _PAGED.fullmatch(of)
    group, page = (found[1], int(found[2] or 0)) if found else (ALL_GROUPS, 0)
    say, on_it = caseload_say(lines, group, page)
    note_lines(db, coach, [line.person for line in on_it], now, zone)
    return [say]


def note_lines(db: sqlite3.Connection, coach: int, lifters: Sequence[int], now: datetime, zone: str) -> None:
    """Note a look at the lines of lifters, once a day each."""
    audit_caseload(db, coach, lifters, instant(local_date(now, zone), time(), zone), now)


def found_say(db: sqlite3.Connection, coach: int, whom: Sequence[int], now: datetime, zone: str) -> Say:
    """Return the lines of the lifters that match a typed name. The name is not repeated, as it may be that of another's lifter."""
    lines = [line for line in with_distinct_names(db, coach, caseload(db, coach, now, zone)) if line.person in whom] if whom else []
    if not lines:
        return Say(NAMED_NOBODY, ((tap("My lifters", "caseload"),),))
    on_it = lines[:LINES_A_PAGE]
    note_lines(db, coach, [line.person for line in on_it], now, zone)
    more = f" Here are the first {len(on_it)}. Type more of the name to narrow this down." if len(lines) > len(on_it) else ""
    said, taps = _lines(on_it, 1)
    return Say(fitting([f"{len(lines)} of your lifters match, most urgent first.{more}", "", *said]), (*in_rows(taps, 2), *in_rows(
        [tap("My lifters", "caseload")], 2)))


def _lines(lines: Sequence[CaseloadLine], first: int) -> tuple[list[str], list[Tap]]:
    """Return the numbered texts of caseload lines, and a button for each."""
    return ([f"{n}. {named(line.name)}: {shortened(line.whole, LINE_MOST)}" for n, line in enumerate(lines, first)],
            [tap(f"{n} {named(line.name)}", "lifter", line.person) for n, line in enumerate(lines, first)])


def caseload_say(lines: Sequence[CaseloadLine], group: str, page: int) -> tuple[Say, Sequence[CaseloadLine]]:
    """Return one page of a caseload, of one group or all, and the lines on it."""
    if not lines:
        return NO_LIFTERS, ()
    counts = Counter(line.group for line in lines)
    holds = counts + Counter(one.group for line in lines for one in line.also)
    nobody = f"Nobody now: {GROUP_WORDS[group]}." if group in GROUP_WORDS and group not in holds else ""
    group = group if group in holds else ALL_GROUPS
    shown_now = lines if group == ALL_GROUPS else [it for line in lines if (it := line.as_in(group))]
    page, pages = paged(len(shown_now), page, LINES_A_PAGE)
    first = page * LINES_A_PAGE
    on_it = shown_now[first:first + LINES_A_PAGE]
    text = [f"{len(lines)} {'lifter' if len(lines) == 1 else 'lifters'}: {counted(counts)}"]
    if group != ALL_GROUPS or pages > 1:
        by_name = "; “find Sam” opens one by name" if pages > 1 else ""
        text.append(f"{GROUP_WORDS.get(group, 'all').capitalize()}, {first + 1} to {first + len(on_it)} of {len(shown_now)}{by_name}")
    text = [nobody, *text] if nobody else text
    said, taps = _lines(on_it, first + 1)
    text += ["", *said]
    filters = [tap(f"{GROUP_WORDS[one].capitalize()} ({holds[one]})", "caseload", one)
               for one in GROUPS if holds[one] and one != group]
    if group != ALL_GROUPS:
        filters.insert(0, tap(f"All ({len(lines)})", "caseload"))
    turn = [tap("Previous", "caseload", f"{group}-{page - 1}")] * (page > 0) + [
        tap("Next", "caseload", f"{group}-{page + 1}")] * (page + 1 < pages)
    return Say(fitting(text), (*in_rows(taps, 2), *in_rows(turn, 2), *in_rows(filters, 3))), on_it


def groups_say(groups: Sequence[LifterGroup], names: Mapping[int, str]) -> Say:
    """Return a coach's groups with who is in them, and a button for each thing that can be done for several."""
    if not groups:
        return Say("You have no group yet. A lifter's page has “Groups” under “More”.", ((tap("My lifters", "caseload"),),))
    lines = [f"· {one.name}: all {len(one.lifters)}" if one.number == EVERYBODY else shortened(
        f"· {one.name}: {', '.join(names.get(lifter, 'somebody') for lifter in one.lifters)}", LINE_MOST) for one in groups]
    taps = [tap(f"{act.label or 'Write'}: {one.name}", act.flow, f"{one.number}-{act.name}") for one in groups[:GROUPS_SHOWN]
            for act in COACH_ACTS.values() if act.several]
    return Say(fitting(["Your groups. What you do for one is done for each in it, who is told alone.", "", *lines]),
               (*in_rows(taps, 2), (tap("My lifters", "caseload"),)))
