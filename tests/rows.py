"""Rows of a person as their conversations would have left them."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from datetime import datetime

from companion.app.dispatch import HANDLERS
from companion.conversation.effects import Alert, Effect
from companion.conversation.flow import Known
from companion.record import persist
from companion.record.turn import Turn
from flows.catalogue import BOOK


def keep(db: sqlite3.Connection, person: int, effects: Iterable[Effect], at: datetime, zone: str) -> None:
    """Effects turned into rows, as of somebody in this zone; nobody hears of an alert."""
    turn = Turn(db, person, at, BOOK, gather=lambda *_: Known({"welcome.zone": zone}, at))
    for effect in effects:
        (persist.alert if isinstance(effect, Alert) else HANDLERS[type(effect)])(turn, effect)
