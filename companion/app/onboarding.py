"""Onboarding: conversations before consent, held in memory only, so that nothing is stored until somebody agrees."""

from __future__ import annotations

import sqlite3
from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final, NamedTuple

from companion.app.ranks import rank_of
from companion.app.rate_limit import always_heard
from companion.conversation.catalogue import Catalogue
from companion.conversation.effects import Alert, Began, Effect, Ended, Erase, Find, Record, Remind, Reopened, Say
from companion.conversation.events import Happening, Settle
from companion.conversation.flow import Ask, Known
from companion.conversation.kinds import Answer, ReadingContext
from companion.conversation.session import Frame, Session
from companion.conversation.step import step, unsettled
from companion.language.pain import Pain
from companion.port import Address, Inbound, Rank, Tapped, Typed
from companion.record import coaching, owed

ONBOARDING_MOST: Final = 10_000
"""Conversations held at once; beyond it the oldest is forgotten. Our choice."""

KEPT_ON_CONSENT: Final = (Began, Ended, Reopened, Record, Find, Remind, Alert)
"""Effects from before consent that are stored once it is given; others are not carried out afterwards."""

CODE_KEPT: Final = "I have your code. Please answer the question above first."

CODE_AGAIN: Final = ("I keep nothing before you agree, and was restarted since. If you came with a code, please send it once more, as "
                     "“code abcd efgh jkmn”. If it is lost, ask whoever gave it to you for a new one.")

CODE_GONE: Final = ("That code is not one of mine, or it was used or has expired: it works once, within seven days. If you are to be a "
                    "coach here, ask whoever runs this bot for a new one, and send it before you agree to anything. A lifter's code comes "
                    "from their coach.")

IN_SHORT: Final = "it hurts"
"""What stands for words that are not kept, where somebody said that something hurts."""

ERASED_AGAIN: Final = "It is all erased. If you write again, we start as strangers. What I said about getting care still holds."

GREETINGS: Final = frozenset(("/start", "start", "hello", "hi", "hey"))
"""First words in which pain need not be listened for, which would load its tables before the first answer."""


class Consented(NamedTuple):
    """A consent just given: the session, the effects to store, the messages in reply, and the code they came with ("" for none)."""

    session: Session
    kept: Sequence[Effect]
    said: Sequence[Say]
    code: str


class OnboardingTurn(NamedTuple):
    """The outcome of a turn: unsaved messages; the consent, if given; the version of the text, if refused; and which kind of answer
    is owed (record.owed), "" for none."""

    said: list[Say]
    agreed: Consented | None = None
    refused: int | None = None
    kind: str = owed.OWES_WELCOME


class _Stranger:
    """Somebody who has not given consent: their session, effects so far, code, and the number of codes tried."""

    def __init__(self) -> None:
        self.session = Session()
        self.effects: list[Effect] = []
        self.code = ""
        self.codes = 0

    def take(self, catalogue: Catalogue, event: Happening, known: Known) -> tuple[Effect, ...]:
        """Take one step, knowing what was found before, and return its effects."""
        found = {effect.name: effect.value for effect in self.effects if isinstance(effect, Find)}
        facts = {**known.facts, **found, **dict.fromkeys((f"{name}.today" for name in found), "yes")}
        self.session, effects = step(catalogue.book, self.session, event, replace(known, facts=facts))
        self.effects += effects
        return effects

    def settle(self, catalogue: Catalogue, known: Known) -> list[Say]:
        """Step until the conversation waits for them; returns the messages."""
        said: list[Say] = []
        while unsettled(self.session):
            said += _says(self.take(catalogue, Settle(), known))
        return said


class Onboarding:
    """The conversations of everybody who has not given consent."""

    def __init__(self, catalogue: Catalogue) -> None:
        self._catalogue = catalogue
        self._waiting: OrderedDict[Address, _Stranger] = OrderedDict()

    def at(self, address: Address) -> Session | None:
        """Return the session at an address; None where nobody has written from it."""
        stranger = self._waiting.get(address)
        return stranger.session if stranger else None

    def take(self, db: sqlite3.Connection, inbound: Inbound, now: datetime, here: str | None = None) -> OnboardingTurn:
        """Take a turn without storing anything; the database is only read, to look up a code. ``here``: the time zone of the machine that
        they sit at, None if they may be anywhere."""
        flows, event = self._catalogue, inbound.event
        known = self._known(now, here)
        stranger = self._waiting.pop(inbound.address, None)
        if stranger is None:
            stranger = _Stranger()
            brought = self._brought(db, stranger, event, now)
            first = [*([Say(CODE_GONE)] if brought is False else []), *stranger.settle(flows, known)]
            if not stranger.code and isinstance(event, Tapped) and event.data.startswith(f"{flows.coach_welcome}."):
                return self._waits(inbound.address, stranger, [Say(CODE_AGAIN)])
            agrees = isinstance(event, Tapped) and any(event.data.startswith(flows.payload(one)) for one in flows.consents)
            greets = isinstance(event, Typed) and event.text.casefold() in GREETINGS
            if not agrees and (greets or brought is not None or always_heard(event) is not Pain.YES):  # a code's letters are no words
                answered = not greets and isinstance(event, Typed) and self._answers(event.text)
                return self._waits(inbound.address, stranger, [*([Say(CODE_AGAIN)] if answered else []), *first])  # no question was seen
        elif (brought := self._brought(db, stranger, event, now)) is not None:
            said = stranger.settle(flows, known) or [Say(CODE_KEPT)] if brought else [Say(CODE_GONE)]
            return self._waits(inbound.address, stranger, said)
        before = stranger.session
        effects = stranger.take(flows, event, known)
        if any(isinstance(effect, Erase) for effect in effects):
            return OnboardingTurn(_says(effects), kind=owed.OWES_ERASED)  # nothing of them is left here either
        decided = next(((one, effect.value) for effect in effects if isinstance(effect, Record) and effect.status == "ok"
                        for one in flows.consents if (effect.flow, effect.key) == (one.flow, one.key)), None)
        if decided is None:
            kind = self._kind(before, stranger, effects)
            said = _says(effects) + stranger.settle(flows, known)
            return self._waits(inbound.address, stranger, said, kind or self._kind(before, stranger, effects))
        if decided[1] != "yes":
            return OnboardingTurn(_says(effects), refused=decided[0].version)
        kept = [effect for effect in stranger.effects if isinstance(effect, KEPT_ON_CONSENT)]
        return OnboardingTurn([], Consented(stranger.session, kept, _says(effects), stranger.code))

    def again(self, db: sqlite3.Connection, one: owed.Owed, now: datetime) -> list[Say]:
        """Return what is said to somebody whose answer was lost with the process, and with it what they had said: the welcome, the
        questions about pain, where to get help, or that all is erased."""
        if one.kind == owed.OWES_ERASED:
            return [Say(ERASED_AGAIN)]
        address, known = Address(one.channel, one.address), self._known(now)
        stranger = _Stranger()
        said = stranger.settle(self._catalogue, known)
        if one.kind == owed.OWES_CRISIS:
            crisis = self._catalogue.book.crisis
            stranger.session = Session(stack=(Frame(crisis, self._catalogue.book[crisis].flow.version, "1"),), runs=1)
            said = stranger.settle(self._catalogue, known)
        elif one.kind == owed.OWES_PAIN:
            stranger.take(self._catalogue, Typed(IN_SHORT), known)
            said = stranger.settle(self._catalogue, known)
        return self._waits(address, stranger, said).said

    def _kind(self, before: Session, stranger: _Stranger, effects: Sequence[Effect]) -> str:
        """Return OWES_CRISIS or OWES_PAIN where the conversation has come to that; "" else."""
        book, after = self._catalogue.book, stranger.session
        if after.stack and after.top.flow == book.crisis:
            return owed.OWES_CRISIS
        return owed.OWES_PAIN if rank_of(book, before, after, effects) is Rank.PAIN else ""

    def _known(self, now: datetime, here: str | None = None) -> Known:
        return Known({"today": now.date().isoformat(), "coach": "no", "is_coach": "no"} | ({"machine.zone": here} if here else {}), now)

    def _waits(self, address: Address, stranger: _Stranger, said: list[Say], kind: str = "") -> OnboardingTurn:
        self._waiting[address] = stranger
        if len(self._waiting) > ONBOARDING_MOST:
            self._waiting.popitem(last=False)
        return OnboardingTurn(said, kind=kind or owed.OWES_WELCOME)

    def _answers(self, text: str) -> bool:
        """True if a text answers a question of consent: somebody who was asked one before a restart."""
        flows = self._catalogue
        asks = (flows.book[one.flow].stops[one.key] for one in flows.consents)
        return any(isinstance(ask, Ask) and isinstance(ask.kind.read(text, ReadingContext()), Answer) for ask in asks)

    def _brought(self, db: sqlite3.Connection, stranger: _Stranger, event: Happening, now: datetime) -> bool | None:
        """Return True if the message is a valid code, which is kept; a code for a coach starts the coach's welcome. False for a code that
        is not valid, None for no code."""
        flows = self._catalogue
        code = flows.book.code(event.text) if isinstance(event, Typed) else None
        if code is None:
            return None
        if stranger.codes >= coaching.TRIES_MOST:
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
