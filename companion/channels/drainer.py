"""The drainer: sends outbox messages to a channel, at least once, in order per chat, within the channel's limits."""

from __future__ import annotations

import asyncio
import logging
from collections import OrderedDict, deque
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from companion.base.clock import Clock, first_of
from companion.port import Address, Delivered, Delivery, Gone, Later, Outgoing, Post, Rank, Refused, Store, Unreachable, Unsure

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Limits:
    """Rate limits of a channel.

    ``per_chat``: seconds between the end of one send and the next to the same chat; ``in_window``: sends begun within any ``window`` of
    seconds; ``at_once``: concurrent sends.
    """

    per_chat: float
    in_window: int
    window: float
    at_once: int


TELEGRAM_LIMITS: Final = Limits(per_chat=1.0, in_window=30, window=1.03, at_once=30)
"""One message a second to one chat, about 30 a second in all: Telegram's Bot FAQ on hitting limits (second-hand). The window is 30 ms
longer than a second, so that uneven travel times don't put 31 messages into one second at the other end: our choice."""

LOOK_AGAIN: Final = 60.0
"""Longest time in seconds between looks at the outbox, even if nothing wakes the drainer: our choice."""

BURST: Final = 3
"""Sends per burst once half the window is used. Bursts are spread over the window, so a reply that comes while thousands wait is sent
within a fifth of the window, not at its end: our choice."""

BURST_SPACING: Final = 0.9
"""Share of the even spacing between two bursts: our choice. At 1.0 each burst that starts some milliseconds late, as after a slow
commit, would delay all later ones; below it they catch up, and the window still limits them."""

RECHECK: Final = 1.0
"""Seconds before looking again at a message that can't leave yet: our choice."""

BACKOFF_MOST: Final = 30.0
"""Longest delay between tries, in seconds: our choice, so that sending resumes within half a minute after an outage."""

YIELDS_AFTER: Final = 2
"""Sends of the best rank after which one of a lower rank leaves, so that no class starves: our choice. Under a flood of pain, taps still
get a third of the limit."""

NEW_PAIN_YIELDS_AFTER: Final = 9
"""The same for answers to chats in which pain was not answered within NEW_PAIN_SECONDS: of 50 that begin together the last leaves within
two seconds, whatever else waits. Our choice."""

NEW_PAIN_SECONDS: Final = 10.0
"""Seconds after an answer to pain in which the next one to the same chat shares the limit with taps: our choice, so that who says so
again and again delays nobody who says it for the first time."""

NEW_PAIN_MOST: Final = 60
"""New answers to pain within NEW_PAIN_SECONDS that take so much of the limit: our choice, two seconds' worth. In a larger flood, taps get
their third."""

SERVED_MOST: Final = 10_000
"""Chats whose last send is remembered, for fairness; our choice."""

CLOSING_SECONDS: Final = 3.0
"""Longest time a clean stop waits for what is due: our choice, well within the ten seconds most supervisors give."""

TROUBLED_CHATS: Final = 3
"""Chats failing with no success between them that mean the whole channel is in trouble: our choice."""


def backoff(tries: int) -> float:
    """Return the seconds to wait after so many earlier tries: 1, 2, 4 and so on up to BACKOFF_MOST."""
    return min(BACKOFF_MOST, 2.0 ** min(tries, 10))


class Drainer:
    """Sends due messages, many chats concurrently, one message at a time to each.

    The best rank leaves first, but for one message in three of the next rank that waits (one in ten while somebody's pain is new); within
    a rank the chat that was served longest ago (for pain: with an answer to pain), so that a flood costs only the chat it comes from.
    Nothing is queued here beyond the sends under way, so a reply overtakes other messages as soon as the store has it. A chat that fails
    waits by itself; if several fail and none succeeds, all wait, and one message at a time probes the channel. Only due times are read on
    the wall clock: pacing, holding and backing off go by the monotonic one, so that setting the clock mutes nobody.
    """

    def __init__(self, store: Store, post: Post, clock: Clock, limits: Limits = TELEGRAM_LIMITS) -> None:
        self._store, self._post, self._clock, self._limits = store, post, clock, limits
        self._woken = asyncio.Event()
        self._sending: dict[Address, asyncio.Task[None]] = {}
        self._held: dict[Address, float] = {}
        self._all_held = 0.0
        self._rounds = 0
        self._troubled: set[Address] = set()
        self._begun: deque[float] = deque(maxlen=limits.in_window)
        self._in_a_row = 0
        self._served: OrderedDict[tuple[Address, bool], float] = OrderedDict()
        self._new_pain: deque[float] = deque(maxlen=NEW_PAIN_MOST)
        self._broken: Exception | None = None

    def wake(self) -> None:
        """Signal that something new may be due."""
        self._woken.set()

    async def run(self) -> None:
        """Send due messages until cancelled; sends under way then continue. Raises what the store raises."""
        while True:
            self._woken.clear()
            await self._wait_until(await self._look())
            self._check()

    async def flush(self, within: float = 0.0) -> None:
        """Send what is due, for so many seconds at most (at least what can be sent now), and return when nothing is under way. What
        fails is not tried again. Raises what the store raises."""
        end = self._clock.monotonic() + within
        while not self._broken:
            again, left = await self._look(), end - self._clock.monotonic()
            if self._sending:
                await asyncio.wait(list(self._sending.values()), timeout=max(0.0, left) if within else None)
                if within and self._clock.monotonic() >= end:
                    break
            elif left > 0 and again <= end and not self._troubled and await self._store.due(self._clock.now()):
                await self._clock.sleep(again - self._clock.monotonic())
            else:
                break
        self._check()

    async def close(self) -> None:
        """Cancel the sends under way; their messages stay due."""
        sends = list(self._sending.values())
        for send in sends:
            send.cancel()
        await asyncio.gather(*sends, return_exceptions=True)

    def _check(self) -> None:
        if self._broken is not None:
            raise self._broken

    async def _look(self) -> float:
        """Begin every send that may begin now; return when to look again."""
        now, wall = self._clock.monotonic(), self._clock.now()
        self._held = {where: until for where, until in self._held.items() if until > now}
        if self._all_held > now:
            return self._all_held
        again = now + LOOK_AGAIN
        ready: list[Outgoing] = []
        for message in await self._store.due(wall):
            if message.address in self._sending:
                continue  # seen again when that send ends
            if until := self._held.get(message.address):
                again = min(again, until)
            else:
                ready.append(message)
        for message in self._fairly(ready):
            if not self._may_begin():
                break  # seen again when a send ends
            if full := self._full_until(now):
                return min(again, full)
            self._begun.append(now)
            self._note_served(message, now)
            self._sending[message.address] = asyncio.create_task(self._send(message))
        following = await self._store.next_due(wall)
        if following is not None:  # a past moment: something could not be sent above
            again = min(again, now + ((following - wall).total_seconds() if following > wall else RECHECK))
        return again

    def _fairly(self, ready: list[Outgoing]) -> Iterator[Outgoing]:
        """Yield the messages by rank, those of the chat served longest ago first, and after some of one rank one of the next."""
        ready.sort(key=lambda one: (one.rank, self._last_served(one)))
        ready.reverse()  # taken from the end
        while ready:
            place = len(ready) - 1
            if self._in_a_row >= self._yields_after(ready[place]):
                place = next((n for n in range(place, -1, -1) if ready[n].rank > ready[place].rank), place)
            lower = ready[place].rank > ready[-1].rank
            yield ready.pop(place)
            self._in_a_row = 0 if lower else self._in_a_row + 1  # not reached where the message could not leave

    def _last_served(self, message: Outgoing) -> float:
        """Return when its chat was last sent something; for an answer to pain, when it was last sent one of these."""
        return self._served.get((message.address, message.rank is Rank.PAIN), float("-inf"))

    def _yields_after(self, best: Outgoing) -> int:
        """Return how many of the best rank leave before one of a lower rank."""
        lately = self._clock.monotonic() - NEW_PAIN_SECONDS
        few = len(self._new_pain) < NEW_PAIN_MOST or self._new_pain[0] < lately
        return NEW_PAIN_YIELDS_AFTER if few and best.rank is Rank.PAIN and self._last_served(best) < lately else YIELDS_AFTER

    def _note_served(self, message: Outgoing, now: float) -> None:
        if message.rank is Rank.PAIN and self._last_served(message) < now - NEW_PAIN_SECONDS:
            self._new_pain.append(now)
        for of_pain in (False, True) if message.rank is Rank.PAIN else (False,):
            self._served[message.address, of_pain] = now
            self._served.move_to_end((message.address, of_pain))
            if len(self._served) > SERVED_MOST:
                self._served.popitem(last=False)

    def _may_begin(self) -> bool:
        most = 1 if len(self._troubled) >= TROUBLED_CHATS else self._limits.at_once
        return len(self._sending) < most

    def _full_until(self, now: float) -> float | None:
        """Return until when no further send may begin; None if one may."""
        begun, limits = self._begun, self._limits
        free = begun[0] + limits.window if len(begun) == limits.in_window else now
        half = limits.in_window // 2
        if len(begun) > half and begun[-1 - half] + limits.window > now:
            free = max(free, begun[-BURST] + limits.window * BURST * BURST_SPACING / limits.in_window)
        return free if free > now else None

    async def _wait_until(self, moment: float) -> None:
        """Wait for a moment or a wake. While the window is full a wake can change nothing, and is left for later."""
        now = self._clock.monotonic()
        if moment <= now:
            await asyncio.sleep(0)
        elif moment == self._full_until(now):
            await self._clock.sleep(moment - now)
        else:
            await first_of(self._clock.sleep(moment - now), self._woken.wait())

    async def _send(self, message: Outgoing) -> None:
        where = message.address
        try:
            outcome = await self._outcome(message)
            self._hold(message, outcome, self._clock.monotonic())
            await self._mark(message, outcome, self._clock.now())
        except Exception as error:
            self._broken = error
        finally:
            del self._sending[where]
            self._woken.set()

    async def _outcome(self, message: Outgoing) -> Delivery:
        try:
            return await self._post.send(message)
        except Exception as error:  # a bug of ours would fail on every try and block all later messages
            _log.error("message %s could not be sent: %s", message.id, type(error).__name__)
            _log.debug("message %s", message.id, exc_info=error)
            return Refused(type(error).__name__)

    def _hold(self, message: Outgoing, outcome: Delivery, at: float) -> None:
        """Set how long this chat waits, and whether all do."""
        where, seconds = message.address, self._limits.per_chat
        match outcome:
            case Later(wanted):
                seconds = max(seconds, wanted)
            case Unsure() | Unreachable():
                seconds = max(seconds, backoff(message.attempt))
            case _:
                self._troubled.clear()
                self._rounds = 0
        if seconds:
            self._held[where] = at + seconds
        if not isinstance(outcome, Later | Unsure | Unreachable):
            return
        self._troubled.add(where)
        _log.debug("message %s, try %s: %s", message.id, message.attempt + 1, outcome)
        if len(self._troubled) >= TROUBLED_CHATS and self._all_held <= at:
            wait = seconds if isinstance(outcome, Later) else backoff(self._rounds)
            self._all_held, self._rounds = at + wait, self._rounds + 1
            _log.warning("sending fails for %s chats in a row (%s); all wait %g s", len(self._troubled), outcome, wait)

    async def _mark(self, message: Outgoing, outcome: Delivery, at: datetime) -> None:
        match outcome:
            case Delivered(message_id):
                await self._store.mark_sent(message.id, at, message_id)
            case Unsure() if message.rank is Rank.COURTESY:
                _log.warning("message %s may have arrived; it is not sent again", message.id)
                await self._store.mark_dropped(message.id, at, "may have arrived")
            case Later() | Unsure() | Unreachable():
                await self._store.mark_tried(message.id, at)
            case Gone(reason):
                _log.info("message %s: the chat is gone (%s)", message.id, reason)
                await self._store.mark_gone(message.address, at, reason)
            case Refused(reason):
                _log.error("message %s was refused and is dropped: %s", message.id, reason)
                await self._store.mark_dropped(message.id, at, reason)
