"""What a file keeps of people, without the moments: what must be the same whether the bot was killed or not."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

TABLES: Mapping[str, str] = {
    "persons": "select id from persons order by id",
    "addresses": "select channel, address, person, name, gone_reason from addresses order by channel, address",
    "answers": "select person, run, flow, version, key, side, raw, value, unit, status, method, placement, replaces "
               "from answers order by id",
    "runs": "select person, run, flow, version, ending, asked from runs order by person, run",
    "findings": "select person, run, name, value, rule, because from findings order by id",
    "facts": "select person, name, value, found from facts order by person, name",
    "reminders": "select person, kind, flow, wall, zone, due_at, state, day, stale_at, round from reminders order by id",
    "alerts": "select person, run, level, because from alerts order by id",
    "outbox": "select person, channel, address, text, buttons, picture, must_arrive, timed, unasked, document_name, about, fleeting, "
              "dropped, message is not null from outbox order by id",
    "updates": "select channel, update_id, failed from updates order by update_id",
    "refusals": "select version from refusals",
    "erasures": "select count(*) from erasures",
    "coach_roles": "select person, name, until is not null from coach_roles order by person",
    "coaches": "select person, coach, until is not null from coaches order by person, coach",
    "invitations": "select kind, made_by, name, code_hash, used_by from invitations order by id",
    "code_tries": "select person from code_tries order by id",
    "looks": "select person, coach, coach_name, what from looks order by id",
    "acts": "select person, coach, coach_name, what, value, reason from acts order by id",
    "marks": "select name, value from marks where name = 'bot.name'",
}
"""Left out: moments; the marks of polls and of the night's tidying, which are noted beside the turns and so more or less often; what
Telegram calls a message or a picture, of which there are more where one was sent twice."""


def kept_in(database: Path) -> dict[str, Any]:
    """Every table's rows, and where each person is in the conversation."""
    db = sqlite3.connect(f"file:{database}?mode=ro", uri=True)
    try:
        kept: dict[str, Any] = {name: db.execute(query).fetchall() for name, query in TABLES.items()}
        kept["sessions"] = [(person, _without_moments(json.loads(text)))
                            for person, text in db.execute("select person, session from sessions order by person")]
        kept["sound"] = db.execute("pragma integrity_check").fetchall()
        return kept
    finally:
        db.close()


def _without_moments(session: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in session.items() if name != "at"}


def doubled(heard: Sequence[tuple[int, str]], wanted: Sequence[tuple[int, str]]) -> list[int] | None:
    """The chats that were told something twice, the second time right after the first, where each was told all else as
    wanted, in order; None where not."""
    extra: list[int] = []
    for chat in {chat for chat, _ in (*heard, *wanted)}:
        rest, before = [text for told, text in wanted if told == chat], None
        for text in (text for told, text in heard if told == chat):
            if rest and text == rest[0]:
                before = rest.pop(0)
            elif text == before:
                extra.append(chat)
            else:
                return None
        if rest:
            return None
    return extra
