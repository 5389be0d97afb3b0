"""The parts put together: one turn from what came in to what is committed. The only module here that imports flows."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections import OrderedDict
from collections.abc import Callable, Coroutine, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any, Final

from companion.calendar.plan import is_squat_day
from companion.calendar.prompts import is_quiet
from companion.calendar.wishes import Value, plan_from, wishes_from, zone_from
from companion.carrying import Report, Turn, carry_out, show, tell_of_open_pain
from companion.channels.port import Address, Inbound, Outgoing, Tapped, Typed
from companion.clock import Clock
from companion.conversation.effects import Effect, Erase, Record, Redeem, Say, Show
from companion.conversation.events import Happening, Invite, Settle
from companion.conversation.flow import Known
from companion.conversation.session import Frame, Session
from companion.conversation.step import prompt_now, step, unsettled
from companion.flood import SLOWER, Flood, Pace
from companion.known import SAFETY, known_of
from companion.operate.watch import Watch
from companion.record import coaching, marks, outbox, people, reminders, requests
from companion.record.file import emptied_log, open_for_writing
from companion.record.keep import keep, put_message, take_back_timed
from companion.record.writer import CommitFailed, Writer
from companion.reminders.kinds import KINDS, decide, leaves_until
from companion.reminders.replan import again, look_again, replan
from companion.renewal import may_ask, renewal
from flows.catalogue import BOOK, COACH_WELCOME, CONSENT_AGAIN, CONSENT_DUE, CONSENTS

_log = logging.getLogger(__name__)

STRANGERS_MOST: Final = 10_000
"""Conversations before consent are held in memory only; the oldest of more than these begins anew. Our choice."""

BACKWARDS: Final = timedelta(seconds=90)
"""A clock that went back by more than this has its later work looked at again; our choice."""

SETTLING_MOST: Final = 60
"""Flows that may begin and end in one turn; more is a flow that runs in a circle."""

A_MORNING: Final = timedelta(hours=12)
"""How long the question of the morning after stands in for the one about the squats, so that only one comes; our choice."""

SETTLED_AS: Final = {"send": "sent", "stale": "stale", "drop": "dropped", "ignored": "ignored"}

DATED_WAITS: Final = timedelta(hours=1)
OTHERS_WAIT: Final = timedelta(days=1)
"""When a reminder, about a day or not, is looked at again that waits for somebody to agree; our choice."""

CODE_KEPT: Final = "I have your code. Please answer the question above first."

COUNTING: Final = "The timer is running. “Stop” ends it; if anything hurts, say so."

SORRY: Final = "Something went wrong on my side, and your last message was not kept. Please send it again, or say “menu”."


def in_order(effects: Sequence[Effect], waited: float, told: set[str]) -> tuple[tuple[Effect, ...], float]:
    """The same effects, no message leaving before one that was said earlier in the turn, and none told twice in it
    (``told``, which grows); and how long the last waits."""
    ordered: list[Effect] = []
    for effect in effects:
        if isinstance(effect, Say):
            if effect.text in told and not effect.buttons:
                continue
            told.add(effect.text)
            waited = max(waited, effect.after)
            if effect.after < waited:
                effect = replace(effect, after=waited)
        ordered.append(effect)
    return tuple(ordered), waited


class _Stranger:
    """Somebody who has not agreed to anything yet: nothing of them is in the file."""

    def __init__(self) -> None:
        self.session = Session()
        self.effects: list[Effect] = []
        self.code = ""
        self.codes = 0


class Companion:
    """One bot: takes what people send, one committed turn each, and offers what is due.

    ``on_erase`` is told whose rows are being removed, so that what was saved beside the file goes too.
    """

    def __init__(self, database: Path, clock: Clock, on_commit: Callable[[str], None] = lambda channel: None) -> None:
        """Opens the file. ``on_commit`` is told the channel whose outbox may have something new.

        Raises CannotOpen or AlreadyRunning (record.file).
        """
        self.db, self._lock = open_for_writing(database)
        self.path = database
        self.writer = Writer(self.db)
        self.clock = clock
        self.on_commit = on_commit
        self.watch = Watch()
        self.keep_months: int | None = None  # so long answers are kept; None: for good
        self.flood: Flood | None = None  # who sends too much is slowed, where a channel is open to anybody
        self.on_erase: Callable[[int], object] = lambda person: None
        self._strangers: OrderedDict[Address, _Stranger] = OrderedDict()
        self.unkept: dict[int, Outgoing] = {}
        self._unkept_count = 0
        self._erased = not emptied_log(self.db)  # where a reader held it up as the file was opened, it is tried again
        self._swept: datetime | None = None
        self.bot = ""  # its name, once the channel knows it
        self._reports: list[Report] = []
        self._beside: set[asyncio.Task[None]] = set()

    def called(self, bot: str) -> None:
        """The channel has told the bot's name: links lead to it."""
        self.bot = bot
        self._naming = asyncio.ensure_future(self.writer.do(lambda db: marks.note(db, "bot.name", bot, self.clock.now())))

    def close(self) -> None:
        """Close the file and let go of its lock."""
        self.db.close()
        self._lock.close()

    # turns ------------------------------------------------------------------------------------------------

    async def take(self, inbound: Inbound) -> None:
        """One turn, committed when this returns. One that fails is noted, answered kindly and counts as taken.
        One too many of somebody who floods is passed over; the first of these is answered."""
        pace = self.flood.meet(inbound, self.clock.now()) if self.flood is not None else Pace.TAKE
        if pace is not Pace.TAKE:
            if pace is Pace.TELL:
                self._say_unkept(inbound.address, [Say(SLOWER)])
                self.on_commit(inbound.address.channel)
            return
        try:
            await self.writer.do(lambda db: self._turn(db, inbound))
        except Exception as error:
            if self.writer.broken:
                raise
            why = type(error).__name__
            _log.error("a turn failed (%s): %s", inbound.address.channel, why, exc_info=error)
            await self.writer.do(lambda db: self._failed(db, inbound, why))
            self.watch.turn_failed()
        else:
            self.watch.turn_taken()
        if self._erased:
            self.forget_erased()
        self.on_commit(inbound.address.channel)
        while self._reports:
            self._do_beside(self._make(self._reports.pop()))

    def forget_erased(self) -> None:
        """What was erased must not stay in the write-ahead log. A reader, such as a backup, can hold that up: then the next turn
        or sweep tries again, and nobody is kept waiting for it."""
        self._erased = True
        try:
            self._erased = not emptied_log(self.db)
        except sqlite3.Error as error:
            raise CommitFailed(f"the database could not be written: {error}") from error

    def _do_beside(self, work: Coroutine[Any, Any, None]) -> None:
        task = asyncio.create_task(work)
        self._beside.add(task)
        task.add_done_callback(self._beside.discard)

    async def beside(self) -> None:
        """Come back when what is done beside the turns is done."""
        await asyncio.gather(*self._beside)

    async def _make(self, report: Report) -> None:
        """A report, drawn in a thread: the loop answers others meanwhile."""
        try:
            page = await asyncio.to_thread(report.made, self.path, self.clock.now(), BOOK)
            await self.writer.do(lambda db: report.send(db, page, self.clock.now()))
            self.on_commit("")
        except Exception as error:
            _log.error("a report could not be made: %s", type(error).__name__, exc_info=error)

    def _turn(self, db: sqlite3.Connection, inbound: Inbound) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None and people.seen_before(db, where.channel, inbound.update_id, now):
            return
        here = people.here(db, where.channel, where.id)
        if here is None:
            self._from_stranger(db, inbound, now)
            return
        if here.gone:
            people.mark_back(db, where.channel, where.id)
        if here.counting:
            if self._changes_nothing(db, here, inbound.event, now):
                if isinstance(inbound.event, Typed):
                    put_message(db, here.person, Say(COUNTING), now, (where.channel, where.id))
                return
            self.watch.message_dropped("wrote_first", take_back_timed(db, here.person, now))
        self._advance(db, here.person, here.session, inbound.event, now, (where.channel, where.id))

    def _changes_nothing(self, db: sqlite3.Connection, here: people.Here, event: Happening, now: datetime) -> bool:
        """Whether what came while a hold is counted is nothing but a second tap, or words that answer nothing: then it is counted on."""
        known = self._known(db, here.person, now)
        session, effects = step(BOOK, here.session, event, known)
        return session._replace(at=here.session.at) == here.session and all(isinstance(effect, Say) for effect in effects) and (
            not CONSENT_DUE.holds(known.facts))

    def _advance(self, db: sqlite3.Connection, person: int, session: Session, event: Happening, now: datetime,
                 to: tuple[str, str] | None, offer: reminders.Reminder | None = None) -> None:
        """Step until the conversation waits for the person again, keeping each step's effects before the next."""
        known, waited, told = self._known(db, person, now), 0.0, set[str]()
        for _ in range(SETTLING_MOST):
            first = renewal(BOOK, CONSENT_AGAIN, session, event, known) if CONSENT_DUE.holds(known.facts) else None
            session, effects = first or step(BOOK, session, event, known)
            effects, waited = in_order(effects, waited, told)
            keep(db, person, effects, now, zone_from(known.facts, now), to, offer)
            if any(isinstance(effect, Erase) for effect in effects):
                self._erase(db, person, effects, now, to)
                return
            carry_out(db, Turn(person, now, to, self.bot, self._reports), effects, BOOK)
            if not unsettled(session):
                people.save_session(db, person, session, now)
                return
            known, event = self._known(db, person, now), Settle()
        raise RuntimeError(f"{session.top.flow if session.stack else 'nothing'} runs in a circle")

    def _known(self, db: sqlite3.Connection, person: int, now: datetime) -> Known:
        """What a step may know, and how long answers are kept where that is limited."""
        known = known_of(db, person, now)
        return replace(known, facts={**known.facts, "keep.months": float(self.keep_months)}) if self.keep_months else known

    def _failed(self, db: sqlite3.Connection, inbound: Inbound, why: str) -> None:
        now, where = self.clock.now(), inbound.address
        if inbound.update_id is not None:
            people.note_failed(db, where.channel, inbound.update_id, now, why)
        person = people.person_at(db, where.channel, where.id)
        if person is None:
            self._say_unkept(where, [Say(SORRY)])
        else:
            put_message(db, person, Say(SORRY, must_arrive=True), now, (where.channel, where.id))

    def _erase(self, db: sqlite3.Connection, person: int, effects: Sequence[Effect], now: datetime,
               to: tuple[str, str] | None) -> None:
        people.erase(db, person, now)
        self.on_erase(person)
        self._erased = True
        if to:
            self._say_unkept(Address(*to), [effect for effect in effects if isinstance(effect, Say)])

    # before consent ---------------------------------------------------------------------------------------

    def _from_stranger(self, db: sqlite3.Connection, inbound: Inbound, now: datetime) -> None:
        """A turn that keeps nothing, until somebody agrees: then everything so far is kept at once."""
        known = Known({"today": now.date().isoformat(), "coach": "no", "is_coach": "no"}, now)
        stranger = self._strangers.pop(inbound.address, None)
        if stranger is None:
            stranger = _Stranger()
            self._brought(db, stranger, inbound.event, now)
            first = self._settle_stranger(stranger, known)
            agreed = isinstance(inbound.event, Tapped) and any(inbound.event.data.startswith(one.payload) for one in CONSENTS)
            if not agreed:  # what they wrote can't be an answer to a question they had not seen
                self._remember(inbound.address, stranger)
                self._say_unkept(inbound.address, first)
                return
        if self._brought(db, stranger, inbound.event, now):
            self._remember(inbound.address, stranger)
            self._say_unkept(inbound.address, self._settle_stranger(stranger, known) or [Say(CODE_KEPT)])
            return
        stranger.session, effects = step(BOOK, stranger.session, inbound.event, known)
        stranger.effects += effects
        decided = next(((one.text, effect.value) for effect in effects if isinstance(effect, Record) and effect.status == "ok"
                        for one in CONSENTS if (effect.flow, effect.key) == (one.flow, one.key)), None)
        if decided and decided[1] == "yes":
            person = people.add_person(db, inbound.address.channel, inbound.address.id, inbound.name, now)
            keep(db, person, [effect for effect in stranger.effects if not isinstance(effect, Say)], now, "UTC+00:00")
            to = (inbound.address.channel, inbound.address.id)
            keep(db, person, [effect for effect in effects if isinstance(effect, Say)], now, "UTC+00:00", to)
            if stranger.code:
                carry_out(db, Turn(person, now, to), [Redeem(stranger.code)], BOOK)
            if unsettled(stranger.session):
                self._advance(db, person, stranger.session, Settle(), now, to)
            else:
                people.save_session(db, person, stranger.session, now)
            return
        said = [effect for effect in effects if isinstance(effect, Say)]
        if decided:
            people.note_refusal(db, now, decided[0].version)
        else:
            said += self._settle_stranger(stranger, known)
            self._remember(inbound.address, stranger)
        self._say_unkept(inbound.address, said)

    def _brought(self, db: sqlite3.Connection, stranger: _Stranger, event: Happening, now: datetime) -> bool:
        """Whether a stranger brings a code that is good for something; a coach's leads to a welcome of its own."""
        code = BOOK.code(event.text) if isinstance(event, Typed) else None
        if code is None or stranger.codes >= coaching.TRIES_MOST:
            return False
        stranger.codes += 1
        found = coaching.open_invitation(db, code, now)
        if found is None:
            return False
        stranger.code = code
        if found.made_by is None:
            stranger.session = Session(stack=(Frame(COACH_WELCOME, BOOK[COACH_WELCOME].flow.version, "1"),), runs=1)
        return True

    def _settle_stranger(self, stranger: _Stranger, known: Known) -> list[Say]:
        said: list[Say] = []
        while unsettled(stranger.session):
            stranger.session, effects = step(BOOK, stranger.session, Settle(), known)
            stranger.effects += effects
            said += [effect for effect in effects if isinstance(effect, Say)]
        return said

    def _remember(self, address: Address, stranger: _Stranger) -> None:
        self._strangers[address] = stranger
        if len(self._strangers) > STRANGERS_MOST:
            self._strangers.popitem(last=False)

    def _say_unkept(self, to: Address, said: Sequence[Say]) -> None:
        for say in said:
            self._unkept_count -= 1  # below zero: never the number of a row
            self.unkept[self._unkept_count] = outbox.unkept(self._unkept_count, to, say)

    # what a screen shows ----------------------------------------------------------------------------------

    async def open(self, address: Address) -> tuple[Say, ...]:
        """What the person at an address should be looking at, for a screen that opens; a stranger is greeted."""
        def look(db: sqlite3.Connection) -> tuple[Say, ...]:
            person = people.person_at(db, address.channel, address.id)
            if person is None:
                return ()
            session = people.load_session(db, person)
            return prompt_now(BOOK, session, known_of(db, person, self.clock.now())) if session.stack else ()
        return await self.writer.do(look)

    # reminders --------------------------------------------------------------------------------------------

    async def sweep(self) -> int:
        """Decide on what is due, one turn a reminder, and take back what has waited too long to leave; gives how many."""
        now, swept = self.clock.now(), 0
        for path in requests.waiting(self.path):
            if request := requests.taken(path):
                await self._guarded(partial(requests.carry_out, request=request, at=now))
            path.unlink(missing_ok=True)
        if self._erased:
            self.forget_erased()
        if self._swept is None or now < self._swept - BACKWARDS:
            for people_of in _few(await self.writer.do(lambda db: reminders.from_later(db, now))):
                await asyncio.gather(*(self._guarded(partial(self._look_again, person=one)) for one in people_of))
        self._swept = now
        swept += bool(await self._guarded(lambda db: tell_of_open_pain(db, now)))
        for messages in _few(await self.writer.do(lambda db: outbox.gone_stale(db, now))):
            done = await asyncio.gather(*(self._guarded(partial(self._too_late, message=one)) for one in messages))
            swept += sum(map(bool, done))
        while due := await self.writer.do(lambda db: reminders.due(db, self.clock.now())):
            await asyncio.gather(*(self._offered(id) for id in due))  # together, so that they share commits
            swept += len(due)
            self.on_commit("")
        if swept:
            self.on_commit("")
        return swept

    async def _guarded(self, job: Callable[[sqlite3.Connection], bool | None]) -> bool | None:
        """Do a job; one that fails is noted and takes nothing of the others with it."""
        try:
            return await self.writer.do(job)
        except Exception as error:
            if self.writer.broken:
                raise
            _log.error("part of a sweep failed: %s", type(error).__name__, exc_info=error)
            return None

    async def _offered(self, id: int) -> None:
        try:
            await self.writer.do(lambda db: self._offer(db, id))
        except Exception as error:
            if self.writer.broken:
                raise
            _log.error("reminder %s could not be offered: %s", id, type(error).__name__, exc_info=error)
            await self.writer.do(lambda db: reminders.settle(db, id, "failed", self.clock.now()))
            await self._guarded(lambda db: self._after_failed(db, id))

    def _after_failed(self, db: sqlite3.Connection, id: int) -> None:
        """One that failed is given up; the next of its kind still comes."""
        if settled := reminders.settled_one(db, id):
            person, now = settled[0].person, self.clock.now()
            replan(db, person, known_of(db, person, now).facts, now, settled[0])

    def _offer(self, db: sqlite3.Connection, id: int) -> None:
        reminder, now = reminders.open_one(db, id), self.clock.now()
        if reminder is None or reminder.due_at > now:
            return  # another sweep was here
        person = reminder.person
        facts = known_of(db, person, now).facts
        wishes, zone = wishes_from(facts), zone_from(facts, now)
        decision = decide(reminder, now, wishes, zone, str(facts.get(SAFETY, "go")),
                          asked_already=reminders.asked_since(db, person, "morning", now - A_MORNING))
        if decision.until:
            reminders.put_off(db, id, decision.until, now)
            return
        if decision.what == "send" and CONSENT_DUE.holds(facts):
            self._offer_question(db, reminder, now)
            return
        if reminders.settle(db, id, SETTLED_AS[decision.what], now):
            if decision.what == "send":
                self.watch.reminder_offered()
            if decision.what == "send" and KINDS[reminder.kind].shows:
                show(db, Turn(person, now, None, self.bot), Show(KINDS[reminder.kind].shows), BOOK)
            elif decision.what == "send":
                self._advance(db, person, people.load_session(db, person), Invite(reminder.flow, reminder.day), now, None,
                              leaves_until(reminder, now, wishes, zone))
                again(db, reminder, now, reminder.round + 1)
            elif decision.what == "stale":
                self._say_missed(db, reminder, facts, now)
        replan(db, person, known_of(db, person, now).facts, now, reminder)

    def _offer_question(self, db: sqlite3.Connection, reminder: reminders.Reminder, now: datetime) -> None:
        """In place of the first reminder of somebody who is to be asked for consent again, that question; the reminder waits."""
        reminders.put_off(db, reminder.id, now + (DATED_WAITS if reminder.stale_at else OTHERS_WAIT), now)
        session = people.load_session(db, reminder.person)
        if may_ask(BOOK, CONSENT_AGAIN, session):
            self._advance(db, reminder.person, session, Settle(), now, None)

    def _say_missed(self, db: sqlite3.Connection, reminder: reminders.Reminder, facts: Mapping[str, Value], now: datetime) -> None:
        """Say that a reminder came too late, where its kind is spoken of and its day is still what it was; the latest only."""
        person, kind = reminder.person, KINDS[reminder.kind]
        if CONSENT_DUE.holds(facts) or not kind.says_missed or not is_squat_day(plan_from(facts), date.fromisoformat(reminder.day)):
            return
        outbox.take_back_missed(db, person, now)
        offer = leaves_until(replace(reminder, stale_at=None), now, wishes_from(facts), zone_from(facts, now))
        self._advance(db, person, people.load_session(db, person), Invite(reminder.flow, reminder.day, missed=True), now, None, offer)

    def _too_late(self, db: sqlite3.Connection, message: int) -> bool:
        """A message that could not leave in time. Quiet hours it waits out, and leaves then if its reminder is good for it
        still; else that is said once. Whether something was done."""
        waiting, now = outbox.waiting_one(db, message), self.clock.now()
        if waiting is None:
            return False
        person, facts = waiting[0], known_of(db, waiting[0], now).facts
        wishes, zone = wishes_from(facts), zone_from(facts, now)
        if is_quiet(now, wishes, zone):
            return False
        settled = reminders.settled_one(db, waiting[1]) if waiting[1] is not None else None
        if settled is None:
            outbox.mark_dropped(db, message, now, "too late")
            self.watch.message_dropped("too_late")
            return True
        reminder = replace(settled[0], stale_at=None) if settled[1] == "stale" else settled[0]
        if reminder.stale_at is None or reminder.stale_at > now:
            outbox.stay(db, message, leaves_until(reminder, now, wishes, zone).stale_at)
        elif outbox.take_back_offer(db, person, reminder.id, now):
            reminders.never_left(db, reminder.id, now)
            self.watch.message_dropped("too_late")
            if str(facts.get(SAFETY, "go")) in KINDS[reminder.kind].needs:
                self._say_missed(db, reminder, facts, now)
        return True

    def _look_again(self, db: sqlite3.Connection, person: int) -> None:
        """At the start, and where the clock went back: what was planned later than now is planned anew."""
        now = self.clock.now()
        look_again(db, person, known_of(db, person, now).facts, now)


def _few(numbers: Sequence[int]) -> Iterator[Sequence[int]]:
    """So few at a time that a reply never waits long behind them."""
    return (numbers[first:first + reminders.FEW] for first in range(0, len(numbers), reminders.FEW))
