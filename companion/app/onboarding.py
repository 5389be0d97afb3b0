"""Conversations before consent: held in memory only, so that nothing of them is in the file until somebody agrees."""

from __future__ import annotations

import sqlite3
from collections import OrderedDict
from collections.abc import Sequence
from datetime import datetime
from typing import Final, NamedTuple

from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Alert, Began, Effect, Ended, Find, Record, Remind, Reopened, Say
from companion.conversation.events import Happening, Settle
from companion.conversation.flow import Known
from companion.conversation.session import Frame, Session
from companion.conversation.step import step, unsettled
from companion.port import Address, Inbound, Tapped, Typed
from companion.record import coaching

STRANGERS_MOST: Final = 10_000
"""Conversations held at once; the oldest of more than these begins anew. Our choice."""

KEPT_AT_A_YES: Final = (Began, Ended, Reopened, Record, Find, Remind, Alert)
"""Effects from before somebody agreed that are kept once they do; what else they wished for then is not done afterwards."""

CODE_KEPT: Final = "I have your code. Please answer the question above first."


class Agreed(NamedTuple):
    """Somebody said yes: where they are, all that is to be kept, what is said to the yes, and the code they brought ("" for none)."""

    session: Session
    kept: Sequence[Effect]
    said: Sequence[Say]
    code: str


class Heard(NamedTuple):
    """The outcome of a turn: what is said, unkept; whether they agreed, or which version of the text they refused."""

    said: list[Say]
    agreed: Agreed | None = None
    refused: int | None = None


class _Stranger:
    """Somebody who has not agreed to anything yet."""

    def __init__(self) -> None:
        self.session = Session()
        self.effects: list[Effect] = []
        self.code = ""
        self.codes = 0

    def take(self, catalogue: Catalogue, event: Happening, known: Known) -> tuple[Effect, ...]:
        """Take one step; returns its effects."""
        self.session, effects = step(catalogue.book, self.session, event, known)
        self.effects += effects
        return effects

    def settle(self, catalogue: Catalogue, known: Known) -> list[Say]:
        """Step until the conversation waits for them; returns what is said."""
        said: list[Say] = []
        while unsettled(self.session):
            said += _says(self.take(catalogue, Settle(), known))
        return said


class Strangers:
    """All who write and have not agreed; one turn each at a time."""

    def __init__(self, catalogue: Catalogue) -> None:
        self._catalogue = catalogue
        self._waiting: OrderedDict[Address, _Stranger] = OrderedDict()

    def at(self, address: Address) -> Session | None:
        """Return the session of somebody who has written; None of anybody else."""
        stranger = self._waiting.get(address)
        return stranger.session if stranger else None

    def hear(self, db: sqlite3.Connection, inbound: Inbound, now: datetime) -> Heard:
        """Take a turn that keeps nothing; the file is only asked whether a code is good."""
        flows, event = self._catalogue, inbound.event
        known = Known({"today": now.date().isoformat(), "coach": "no", "is_coach": "no"}, now)
        stranger = self._waiting.pop(inbound.address, None)
        if stranger is None:
            stranger = _Stranger()
            self._brought(db, stranger, event, now)
            first = stranger.settle(flows, known)
            if not (isinstance(event, Tapped) and any(event.data.startswith(flows.payload(one)) for one in flows.consents)):
                return self._waits(inbound.address, stranger, first)  # it can't be an answer to a question they had not seen
        if self._brought(db, stranger, event, now):
            return self._waits(inbound.address, stranger, stranger.settle(flows, known) or [Say(CODE_KEPT)])
        effects = stranger.take(flows, event, known)
        decided = next(((one, effect.value) for effect in effects if isinstance(effect, Record) and effect.status == "ok"
                        for one in flows.consents if (effect.flow, effect.key) == (one.flow, one.key)), None)
        if decided is None:
            return self._waits(inbound.address, stranger, _says(effects) + stranger.settle(flows, known))
        if decided[1] != "yes":
            return Heard(_says(effects), refused=decided[0].version)
        kept = [effect for effect in stranger.effects if isinstance(effect, KEPT_AT_A_YES)]
        return Heard([], Agreed(stranger.session, kept, _says(effects), stranger.code))

    def _waits(self, address: Address, stranger: _Stranger, said: list[Say]) -> Heard:
        self._waiting[address] = stranger
        if len(self._waiting) > STRANGERS_MOST:
            self._waiting.popitem(last=False)
        return Heard(said)

    def _brought(self, db: sqlite3.Connection, stranger: _Stranger, event: Happening, now: datetime) -> bool:
        """True if a stranger brings a code that is good for something; a coach's leads to a welcome of its own."""
        flows = self._catalogue
        code = flows.book.code(event.text) if isinstance(event, Typed) else None
        if code is None or stranger.codes >= coaching.TRIES_MOST:
            return False
        stranger.codes += 1
        found = coaching.open_invitation(db, code, now)
        if found is None:
            return False
        stranger.code = code
        if found.made_by is None:
            welcome = flows.coach_welcome
            stranger.session = Session(stack=(Frame(welcome, flows.book[welcome].flow.version, "1"),), runs=1)
        return True


def _says(effects: tuple[Effect, ...]) -> list[Say]:
    return [effect for effect in effects if isinstance(effect, Say)]
