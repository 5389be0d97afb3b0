"""Messages between a lifter and their coaches, with their names and buttons, and sending them."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from companion.coach.caseload import NAME_MOST, shortened
from companion.coach.names import display_name
from companion.conversation.effects import Say, Tap
from companion.conversation.prompt import start_payload
from companion.export.table import plain
from companion.port import Rank
from companion.record import coaching
from companion.record.guesses import EXPECTED
from companion.record.persist import put_message
from companion.record.turn import Turn
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.levels import words_of
from companion.screening.safety import Level

NOT_YOURS: Final = "That is not one of your lifters."
NAMED_NOBODY: Final = "None of your lifters has that name."
LABEL_MOST: Final = 32
"""UTF-16 units of a button's label; our choice, for the width of a phone."""
Rows = tuple[tuple[Tap, ...], ...]


@dataclass(frozen=True, slots=True)
class Letter:
    """A message to a person. ``about``: the lifter it is about, where it goes to somebody else; ``fleeting``: it contains a code, so
    its text is deleted once sent; ``rank``: its class, None for the usual."""

    to: int
    say: Say
    about: int | None = None
    fleeting: bool = False
    rank: Rank | None = None


def post(turn: Turn, letters: Sequence[Letter]) -> None:
    """Add letters to the outbox; one to the person whose turn it is goes to the address they write from."""
    for letter in letters:
        put_message(turn.db, letter.to, letter.say, turn.now, turn.to if letter.to == turn.person else None, about=letter.about,
                    fleeting=letter.fleeting, rank=turn.rank if letter.to == turn.person else letter.rank)


def short(name: str | None) -> str:
    """Return a name as plain text of at most NAME_MOST characters."""
    return plain(name or "")[:NAME_MOST].strip()


def tap(label: str, flow: str, asked: object = "") -> Tap:
    """Return a button that begins a conversation."""
    return Tap(shortened(label, LABEL_MOST), start_payload(flow, str(asked)))


def button(label: str, flow: str, asked: object = "") -> tuple[Tap, ...]:
    """Return one row of one button."""
    return (tap(label, flow, asked),)


NO_LIFTERS: Final = Say("You have no lifters yet. Invite one with a code; once they agree, they are listed here.",
                        (button("Invite a lifter", "invite_lifter"),))


def guess_row(lifter: int) -> tuple[Tap, ...]:
    """Return a row of a button for each thing that a coach may expect of a lifter's next retest."""
    return tuple(tap(f"Retest: {label}", "coach_act", f"{lifter}-guess-{value}") for value, (label, _) in EXPECTED.items())


def button_number(text: str) -> int:
    """Return the number in a button's payload; 0 where it is not a number."""
    return int(text) if text.isdecimal() and len(text) < 16 else 0


def lifter_looked_at(turn: Turn, of: str, what: str) -> int | None:
    """Return the lifter in the payload ``of``, if the coach whose turn it is sees them, and audit the look; None otherwise."""
    lifter = button_number(of.partition("-")[0])
    if not coaching.sees(turn.db, turn.person, lifter):
        return None
    coaching.audit_look(turn.db, lifter, turn.person, what, turn.now)
    return lifter


def reply_buttons(db: sqlite3.Connection, coach: int, lifter: int) -> Rows:
    """Return the buttons below a message about a lifter: write to them, see them."""
    name, writes = display_name(db, coach, lifter), coaching.role_of(db, coach) in COACH_ACTS["note"].roles
    return (*([button(f"Write to {name}", "coach_note", lifter)] if writes else []), button(f"See {name}", "lifter", lifter))


def order_over(db: sqlite3.Connection, coach: int, lifter: int, words: str) -> Letter:
    """Return the message to a coach that an order of theirs has ended by itself."""
    return Letter(coach, Say(f"{display_name(db, coach, lifter)}: {words}", reply_buttons(db, coach, lifter)), about=lifter)


def alert_letters(db: sqlite3.Connection, lifter: int, because: str, level: str = "", alert: int = 0) -> list[Letter]:
    """Return the alert to each of a lifter's coaches. The level comes first, so that it can be read on a locked phone. ``alert``: its
    number, for the button "Seen"; 0 for none."""
    first = f", {words_of(level).coach}" if level not in ("", Level.GO.value) else ""
    noted = (button("Seen", "alert_seen", f"{lifter}-{alert}"),) if alert else ()
    return [Letter(coach, Say(f"{display_name(db, coach, lifter)}{first}: {plain(because)}", (*noted, *reply_buttons(db, coach, lifter))),
                   about=lifter, rank=Rank.PAIN) for coach, _ in coaching.coaches_of(db, lifter)]
