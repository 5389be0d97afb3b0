"""The sweep of due work: reminders, stale messages, operator requests, and reports left by a process that stopped."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from functools import partial
from typing import Final

from companion.app.consent import may_ask
from companion.app.conversations import Conversations
from companion.app.dispatch import carry_out
from companion.calendar.plan import is_squat_day
from companion.calendar.preferences import plan_from, preferences_from
from companion.calendar.prompts import Preferences, after_quiet, is_quiet
from companion.coach.letters import alert_letters, button, order_over, post
from companion.conversation.condition import Facts
from companion.conversation.effects import Alert, Say, Show
from companion.conversation.events import Happening, Invite, Settle
from companion.conversation.session import Aside, Session
from companion.conversation.step import prompt_now
from companion.export.table import plain
from companion.language.passed_on import in_whole_words, passed_on
from companion.record import coaching, operator_requests, orders, outbox, owed, people, reminders
from companion.record.caseload import HURT_ASKED
from companion.record.context import SAFETY_LEVEL, standing_now
from companion.record.log import REMINDERS_PAUSED
from companion.record.turn import Turn
from companion.record.unanswered import WARNINGS, Unfinished, answers_in_run, hurt_asked, limit_asked, unfinished, words_of_run
from companion.reminders.basis import wall_time
from companion.reminders.decision import decide, leaves_until
from companion.reminders.kinds import HURT, HURT_AFTER, REMINDER_KINDS
from companion.reminders.planner import add_round, begin_anew, replan, replan_as_of
from companion.screening.levels import CALL, URGENT_LEVELS
from companion.screening.limits import Work
from companion.screening.safety import Level
from companion.screening.sources import SOURCES
from flows.crisis import HELP
from flows.level_parts import part_level

_log = logging.getLogger(__name__)

BACKWARDS: Final = timedelta(seconds=90)
"""Jump back of the clock beyond which reminders made at later times are planned again; our choice."""

OWED_FOR: Final = timedelta(days=1)
"""Age up to which a report asked for before the process ended is still made; our choice."""

GIVES_WAY_FOR: Final = timedelta(hours=12)
"""Time for which a reminder replaces one of a kind that gives way to it, so that only one is sent; our choice."""

SETTLED_AS: Final = {"send": "sent", "stale": "stale", "drop": "dropped", "ignored": "ignored"}

DATED_WAITS: Final = timedelta(hours=1)
OTHERS_WAIT: Final = timedelta(days=1)
"""Time by which a reminder (about a day, or not) is postponed while consent has to be renewed; our choice."""

OPEN_PAIN_AFTER: Final = timedelta(minutes=5)
OPEN_PAIN_UNTIL: Final = timedelta(days=1)
"""Age from which coaches are alerted to unfinished questions about pain, and up to which, in case the bot was down; our choice:
answering them takes a minute."""

_AFTER, _EVERY, _TIMES, _TIMES_MILD = map(int, SOURCES["alert_again"].value)
UNSEEN_AFTER: Final = timedelta(hours=_AFTER)
UNSEEN_EVERY: Final = timedelta(hours=_EVERY)
UNSEEN_UNTIL: Final = timedelta(days=2)
"""Age at which an alert that no coach has seen is sent again and the lifter told, the time between two, and the age up to which, in case
the bot was down; our choice. An alert raised in quiet hours counts from their end, but for an emergency and a call that is asked for. One
that only closes the day is sent again less often, and the lifter not told again while the same was said of another."""

NOW_LEVELS: Final = (Level.EMERGENCY.value, CALL)
AT_ANY_HOUR: Final = Preferences(quiet=(time(), time()))
"""Preferences without quiet hours, for what waiting until the morning may make worse."""

UNSEEN: Final = ("Your coach hasn't seen yet what you told me. Don't wait for them: what I said still holds. If it gets worse or you are "
                 "not sure, call your doctor; in an emergency, your emergency number.")
ASKED_FIRST: Final = ("pain", "signs", "safety_check")
"""Conversations at whose end the lifter is told what to do; an emergency is told at once."""

CALL_UNSEEN: Final = f"Your coach has not seen yet that I asked them. Don't wait for them. {HELP}"

ANSWER_MOST: Final = 40
WRITTEN_MOST: Final = 160
"""Characters of each answer, and of the words written, in such an alert; our choice."""


class DueSweep:
    """Sweeps for due work; one sweep at a time."""

    def __init__(self, bot: Conversations) -> None:
        self._bot, self._flows = bot, bot.catalogue
        self._swept: datetime | None = None
        self._owed = coaching.reports_owed(bot.db.conn, bot.clock.now() - OWED_FOR)

    async def run(self) -> int:
        """Handle all due work, one turn per reminder; returns the number of things handled."""
        await self._bot.follow_clock()
        now, swept = self._bot.clock.now(), 0
        await self._guarded(partial(owed.expire, now=now))
        for path in operator_requests.pending(self._bot.path):
            if request := operator_requests.read_request(path):
                await self._guarded(partial(operator_requests.carry_out, request=request, at=now))
                swept += 1  # it may have written messages
            path.unlink(missing_ok=True)
        if self._bot.erased:
            self._bot.forget_erased()
        if self._swept is None or now < self._swept - BACKWARDS:
            for people_of in _few(await self._bot.writer.do(lambda db: reminders.people_planned_after(db, now))):
                await asyncio.gather(*(self._guarded(partial(self._look_again, person=one)) for one in people_of))
        self._swept = now
        while self._owed:
            self._bot.in_background(self._bot.make(self._owed.pop()))
        looks = (self._tell_of_open_questions, self._plan_to_ask_if_hurt, self._tell_unseen, self._end_orders)
        swept += sum(map(bool, await asyncio.gather(*map(self._guarded, looks))))
        for messages in _few(await self._bot.writer.do(lambda db: outbox.stale(db, now))):
            done = await asyncio.gather(*(self._guarded(partial(self._too_late, message=one)) for one in messages))
            swept += sum(map(bool, done))
        while due := await self._bot.writer.do(lambda db: reminders.due(db, self._bot.clock.now())):
            await asyncio.gather(*(self._offered(id) for id in due))  # together, so that they share commits
            swept += len(due)
            self._bot.on_commit("")
        if swept:
            self._bot.on_commit("")
        return swept

    async def _guarded(self, job: Callable[[sqlite3.Connection], bool | None]) -> bool | None:
        """Do a job; one that fails is logged and does not affect the others. Raises CommitFailed."""
        try:
            return await self._bot.writer.do(job)
        except Exception as error:
            if self._bot.writer.broken:
                raise
            _log.error("part of a sweep failed: %s", type(error).__name__, exc_info=error)
            return None

    async def _offered(self, id: int) -> None:
        try:
            await self._bot.writer.do(lambda db: self._offer(db, id))
        except Exception as error:
            if self._bot.writer.broken:
                raise
            _log.error("reminder %s could not be offered: %s", id, type(error).__name__, exc_info=error)
            await self._bot.writer.do(lambda db: reminders.settle(db, id, "failed", self._bot.clock.now()))
            await self._guarded(lambda db: self._after_failed(db, id))

    def _after_failed(self, db: sqlite3.Connection, id: int) -> None:
        """Plan the next reminder of the kind after one that failed."""
        if settled := reminders.settled_reminder(db, id):
            turn = self._turn(db, settled[0].person)
            replan(db, turn.person, turn.known.facts, turn.now, settled[0])

    def _turn(self, db: sqlite3.Connection, person: int) -> Turn:
        return self._bot.turn(db, person, self._bot.clock.now())

    def _tell_of_open_questions(self, db: sqlite3.Connection) -> bool:
        """Alert coaches to questions about pain, a sign or a warning that were left unanswered for a while, with what was written and
        answered so far, and to an unanswered "Did something hurt?"; once per conversation. Answers given later raise their own alert.
        While somebody is asked about harming themselves, or that is open, only what they had written before: of what was told with it
        nobody hears. Returns True if there were any."""
        now, told = self._bot.clock.now(), False
        before, after = now - OPEN_PAIN_AFTER, now - OPEN_PAIN_UNTIL
        waits = [(one.person, one.run, words_of_run(db, one.person, one.run), partial(_left_open, db, one))
                 for one in unfinished(db, after) if one.began <= before and not one.alerted]
        waits += [(person, run, "", partial(_hurt_unanswered, words)) for person, since, run, words in hurt_asked(db, after)
                  if after <= since <= before and not coaching.alerted_since(db, person, since)]
        for person, run, wrote, alert in waits:
            turn = self._turn(db, person)
            if passed_on(plain(wrote), WRITTEN_MOST) or REMINDERS_PAUSED not in turn.known.facts:
                carry_out(turn, [replace(alert(turn.known.facts), run=run)])
                told = True
        return told

    def _plan_to_ask_if_hurt(self, db: sqlite3.Connection) -> None:
        """Plan the reminder for whoever was asked "Did something hurt?" and has not answered, anew after each word of theirs; end that of
        whoever has."""
        now = self._bot.clock.now()
        waits = {person: since for person, since, *_ in hurt_asked(db)}
        for person in reminders.open_of_kind(db, HURT) - waits.keys():
            reminders.cancel(db, person, HURT, now)
        for person, since in waits.items():
            if not reminders.made_since(db, person, HURT, since):
                zone, at = self._turn(db, person).zone, since + HURT_AFTER
                reminders.add(db, person, HURT, "", wall_time(at, zone), zone, at, now)

    def _tell_unseen(self, db: sqlite3.Connection) -> bool:
        """Send an alert that no coach has seen again, some times, and tell the lifter once that none has, outside their quiet hours; of an
        emergency, or a call that is asked for, at any hour. "Did something hurt?" is not sent again once that was answered. Returns True if
        there were any."""
        now, told = self._bot.clock.now(), False
        unanswered = {person for person, *_ in hurt_asked(db)}
        for one in coaching.alerts_unseen(db, now - UNSEEN_AFTER, now - UNSEEN_UNTIL):
            turn = self._turn(db, one.person)
            facts, zone = turn.known.facts, turn.zone
            wishes = AT_ANY_HOUR if one.level in NOW_LEVELS else preferences_from(facts)
            due = after_quiet(one.at, wishes, zone) + UNSEEN_AFTER
            for _ in range(one.again):
                due = after_quiet(due, wishes, zone) + UNSEEN_EVERY
            if is_quiet(now, wishes, zone) or now < due or one.again >= (_TIMES if one.urgent else _TIMES_MILD):
                continue
            if one.because.startswith(HURT_ASKED) and one.person not in unanswered:
                continue
            told = True
            coaching.note_sent_again(db, one.id)
            if not (one.told or (one.told_before and not one.urgent)) and (says := _unseen_words(one, facts)):
                coaching.note_unseen_told(db, one.person, one.id, now)
                carry_out(turn, [Say(says)])
            post(turn, alert_letters(db, one.person, f"no coach has seen this yet: {one.because}", one.level, one.id))
        return told

    def _end_orders(self, db: sqlite3.Connection) -> bool:
        """Let coaches' orders lapse whose day has come, outside the lifter's quiet hours, and tell both what holds now. Returns True if
        there were any."""
        now, told = self._bot.clock.now(), False
        for one in orders.ending(db, now.date().isoformat()):
            turn = self._turn(db, one.lifter)
            if is_quiet(now, preferences_from(turn.known.facts), turn.zone):
                continue
            told = True
            if orders.lapse(db, one, now) and (holds := orders.lapsed_words(db, one.lifter, now)):
                carry_out(turn, [Say(f"The time is over for which your coach had set something.{holds}")])
                if one.coach is not None and coaching.sees(db, one.coach, one.lifter):
                    post(turn, [order_over(db, one.coach, one.lifter, f"the time is over for which you had set something.{holds}")])
        return told

    def _offer(self, db: sqlite3.Connection, id: int) -> None:
        reminder, now = reminders.open_reminder(db, id), self._bot.clock.now()
        if reminder is None or reminder.due_at > now:
            return  # another sweep handled it
        turn = self._turn(db, reminder.person)
        facts = turn.known.facts
        wishes, zone = preferences_from(facts), turn.zone
        kind, session = REMINDER_KINDS[reminder.kind], people.load_session(db, turn.person)
        asked = session.aside if session.aside and session.aside.if_hurt else None
        decision = decide(reminder, now, wishes, zone, str(facts.get(SAFETY_LEVEL, "go")), suspended=REMINDERS_PAUSED in facts,
                          limited=_limited(facts, reminder) or _asked_first(db, reminder, now),
                          given_way=(kind.puts_again and asked is None) or (bool(kind.gives_way_to) and reminders.sent_since(
                              db, turn.person, kind.gives_way_to, now - GIVES_WAY_FOR)))
        if decision.until:
            reminders.postpone(db, id, decision.until, now)
            return
        if decision.what == "send" and self._flows.consent_due.holds(facts):
            self._offer_question(turn, reminder)
            return
        if reminders.settle(db, id, SETTLED_AS[decision.what], now):
            turn.changed()
            if decision.what == "send":
                self._bot.watch.reminder_offered()
            if decision.what == "send" and kind.shows:
                carry_out(turn, [Show(kind.shows)])
            elif decision.what == "send":
                offer = leaves_until(reminder, now, wishes, zone)
                if asked and kind.puts_again:
                    self._put_again(turn, session, asked, offer, kind.says)
                else:
                    self._invite(turn, Invite(reminder.flow, reminder.day), offer, kind.says)
                add_round(db, reminder, now, reminder.round + 1)
            elif decision.what == "stale":
                self._say_missed(turn, reminder)
            elif decision.what == "ignored":
                begin_anew(db, reminder, now)
        replan(turn.db, turn.person, turn.known.facts, turn.now, reminder)

    def _invite(self, turn: Turn, event: Happening, offer: reminders.Reminder | None = None, says: str = "") -> None:
        """Invite to a flow, in its own words or those of the reminder's kind."""
        if says and isinstance(event, Invite):
            turn.offer = offer
            carry_out(turn, [Say(says, (button("Answer now", event.flow),))])
            return
        self._bot.advance(turn, people.load_session(turn.db, turn.person), event, offer)

    def _put_again(self, turn: Turn, session: Session, asked: Aside, offer: reminders.Reminder, says: str) -> None:
        """Put the open side question again as it stands, so that a reply answers it; with what was written, as that may be days ago."""
        wrote = in_whole_words(plain(asked.text), ANSWER_MOST)
        turn.offer = offer
        carry_out(turn, prompt_now(self._flows.book, session, turn.known, f"You wrote “{wrote}”. {says}" if wrote else says))

    def _offer_question(self, turn: Turn, reminder: reminders.Reminder) -> None:
        """Postpone a reminder, and ask for renewed consent in its place."""
        reminders.postpone(turn.db, reminder.id, turn.now + (DATED_WAITS if reminder.stale_at else OTHERS_WAIT), turn.now)
        session = people.load_session(turn.db, turn.person)
        if may_ask(self._flows.book, self._flows.consent_again, session):
            self._bot.advance(turn, session, Settle())

    def _say_missed(self, turn: Turn, reminder: reminders.Reminder) -> None:
        """Say that a reminder came too late, where its kind says so and its day is still a squat day; the latest one only."""
        facts, now = turn.known.facts, turn.now
        if REMINDERS_PAUSED in facts or self._flows.consent_due.holds(facts) or not REMINDER_KINDS[reminder.kind].says_missed:
            return
        if not is_squat_day(plan_from(facts), date.fromisoformat(reminder.day)):
            return
        outbox.withdraw_missed(turn.db, turn.person, now)
        offer = leaves_until(replace(reminder, stale_at=None), now, preferences_from(facts), turn.zone)
        self._invite(turn, Invite(reminder.flow, reminder.day, missed=True), offer)

    def _too_late(self, db: sqlite3.Connection, message: int) -> bool:
        """Settle a stale message; returns False during quiet hours, when it waits. After them it is sent if its reminder is still
        valid, else dropped, and the missed reminder is mentioned once."""
        waiting, now = outbox.waiting_message(db, message), self._bot.clock.now()
        if waiting is None:
            return False
        turn = self._turn(db, waiting[0])
        facts = turn.known.facts
        wishes, zone = preferences_from(facts), turn.zone
        if is_quiet(now, wishes, zone):
            return False
        settled = reminders.settled_reminder(db, waiting[1]) if waiting[1] is not None else None
        if settled is None:
            outbox.mark_dropped(db, message, now, "too late")
            self._bot.watch.message_dropped("too_late")
            return True
        reminder = replace(settled[0], stale_at=None) if settled[1] == "stale" else settled[0]
        if REMINDERS_PAUSED not in facts and (reminder.stale_at is None or reminder.stale_at > now):
            outbox.extend(db, message, now, leaves_until(reminder, now, wishes, zone).stale_at)
        elif outbox.withdraw_offer(db, turn.person, reminder.id, now):
            reminders.mark_unsent(db, reminder.id)
            self._bot.watch.message_dropped("too_late")
            if str(facts.get(SAFETY_LEVEL, "go")) in REMINDER_KINDS[reminder.kind].levels:
                self._say_missed(turn, reminder)
        return True

    def _look_again(self, db: sqlite3.Connection, person: int) -> None:
        """Plan reminders again that were planned after now; done at the start and when the clock jumped back."""
        turn = self._turn(db, person)
        replan_as_of(db, person, turn.known.facts, turn.now)


def _left_open(db: sqlite3.Connection, one: Unfinished, facts: Facts) -> Alert:
    """Return what a coach is told of questions left open: the words that were written, and the answers so far. The level is theirs, of all
    that makes up what stands; of a sign or a warning the care that was told with it, else that nothing opens: the lifter is to answer
    first."""
    said = passed_on(plain(words_of_run(db, one.person, one.run)), WRITTEN_MOST)
    if one.flow == "signs" and limit_asked(db, one.person, one.run):
        return Alert(Level.NOT_TODAY.value, f"was told by a clinician: “{said}”. They have not confirmed how I understood it, and until "
                                            "then nothing that moves opens")
    stands = part_level(facts, f"{one.flow}.{one.first_run or one.run}")
    care = stands if stands in URGENT_LEVELS else Level.NOT_TODAY.value
    if one.flow == "signs":
        return Alert(care, f"wrote {f'“{said}”' if said else 'something that may matter'}, and has not answered what I asked about it. "
                           "Please get in touch with them now")
    answers = "; ".join(f"{key.replace('_', ' ')}: {in_whole_words(plain(raw), ANSWER_MOST)}" for key, raw, _ in answers_in_run(
        db, one.person, one.run) if one.flow == "pain" or key in ("urgent", *WARNINGS))
    if one.flow == "pain":
        return Alert(stands, "something hurt, and the questions about it are still open"
                     f"{f': “{said}”' if said else ''}{f' ({answers})' if answers else ''}")
    return Alert(care, f"left the safety check before it was finished, after a warning ({answers}). Please get in touch with them now")


def _hurt_unanswered(words: str, _: Facts) -> Alert:
    said = passed_on(plain(words), WRITTEN_MOST)
    return Alert("", f"{HURT_ASKED}, and has not answered{f' (about “{said}”)' if said else ''}")


def _unseen_words(one: coaching.Unseen, facts: Facts) -> str:
    """Return what a lifter hears where no coach has seen their alert: that help is not to wait for one while a crisis is open, and nothing
    else then; nothing where they were told nothing yet, or have said since that they were seen or cleared."""
    if REMINDERS_PAUSED in facts:
        return CALL_UNSEEN if one.level == CALL else ""
    asked = one.because.startswith(HURT_ASKED) or (one.flow in ASKED_FIRST and one.ending != "done" and one.level != Level.EMERGENCY.value)
    return "" if asked or one.level == CALL or one.seen_since else UNSEEN


def _limited(facts: Facts, reminder: reminders.Reminder) -> bool:
    """True if a clinician's limit closes what a reminder invites to."""
    works = REMINDER_KINDS[reminder.kind].works
    return works is not None and any(facts.get(work.fact) == "closed" for work in (works, Work.MOVE))


def _asked_first(db: sqlite3.Connection, reminder: reminders.Reminder, now: datetime) -> bool:
    """True if a reminder invites to work while questions about pain, a sign or a warning are open: these come first."""
    if REMINDER_KINDS[reminder.kind].works is None:
        return False
    stands = standing_now(db, reminder.person, now)
    return stands.pain_open is not None or stands.asked is not None


def _few(numbers: Sequence[int]) -> Iterator[Sequence[int]]:
    """Return batches small enough that a reply never waits long behind one."""
    return (numbers[first:first + reminders.BATCH] for first in range(0, len(numbers), reminders.BATCH))
