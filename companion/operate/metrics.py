"""Prometheus metrics and a health check of a running bot. No name, label or value identifies a person."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import datetime
from typing import Final

from prometheus_client import CollectorRegistry, Counter, Histogram, generate_latest
from prometheus_client.core import GaugeMetricFamily
from prometheus_client.exposition import CONTENT_TYPE_LATEST
from prometheus_client.registry import Collector

from companion.base.clock import Clock
from companion.operate.counters import REASONS, Counters
from companion.operate.heartbeat import PAIN_LATE, POLL_LATE, UNSENT_LATE
from companion.operate.http import HttpResponse
from companion.record.outbox import Backlog

Waiting = Callable[[datetime], Backlog]
"""What is due and unsent at a moment."""

JUMP_TOLD_FOR: Final = 24 * 3600.0
"""Seconds for which health tells that the clock was set: our choice."""

COMMIT_BUCKETS: Final = (0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0)


class Metrics(Counters):
    """Counts the companion's events in its own registry; gauges are read when scraped."""

    def __init__(self, clock: Clock, waiting: Waiting, broken: Callable[[], bool]) -> None:
        """``broken``: returns True once the file can't be written."""
        self._clock, self._waiting, self._broken = clock, waiting, broken
        self._heard = clock.monotonic()
        self._jump: tuple[float, float] | None = None
        self.registry = CollectorRegistry()
        self._taken = Counter("companion_turns_taken", "Turns committed.", registry=self.registry)
        self._failed = Counter("companion_turns_failed", "Turns that could not be handled.", registry=self.registry)
        self._sent = Counter("companion_messages_sent", "Messages that arrived.", registry=self.registry)
        self._dropped = Counter("companion_messages_dropped", "Messages given up, by the class of the reason.", ["reason"],
                                registry=self.registry)
        for reason in REASONS:
            self._dropped.labels(reason)
        self._offered = Counter("companion_reminders_offered", "Reminders that went out.", registry=self.registry)
        self._jumps = Counter("companion_clock_jumps", "Times the wall clock was set.", registry=self.registry)
        self._commits = Histogram("companion_commit_seconds", "One commit, with the turns in it.", buckets=COMMIT_BUCKETS,
                                  registry=self.registry)
        self.registry.register(_Gauges(self))

    def turn_taken(self) -> None:
        """Count a committed turn."""
        self._taken.inc()

    def turn_failed(self) -> None:
        """Count a failed turn."""
        self._failed.inc()

    def message_sent(self) -> None:
        """Count a delivered message."""
        self._sent.inc()

    def message_dropped(self, why: str, count: int = 1) -> None:
        """Count messages given up, by class of reason."""
        self._dropped.labels(why if why in REASONS else "refused").inc(count)

    def reminder_offered(self) -> None:
        """Count a reminder sent."""
        self._offered.inc()

    def committed(self, seconds: float) -> None:
        """Record the seconds of a commit."""
        self._commits.observe(seconds)

    def polled(self) -> None:
        """Note an answered poll."""
        self._heard = self._clock.monotonic()

    def clock_jumped(self, seconds: float) -> None:
        """Count and note that the wall clock was set."""
        self._jumps.inc()
        self._jump = self._clock.monotonic(), seconds

    def gauges(self) -> Iterator[tuple[str, str, float]]:
        """Yield the gauges: name, meaning, value."""
        now = self._clock.now()
        there = self._waiting(now)
        yield "companion_outbox_waiting", "Messages due and not sent.", there.waiting
        yield "companion_outbox_oldest_seconds", "How long the oldest of them has been due.", _age(there.oldest, now)
        yield "companion_outbox_oldest_pain_seconds", "How long the oldest unsent answer to pain has been due.", _age(there.pain, now)
        yield "companion_poll_age_seconds", "Since the last answered poll, or the start.", self._clock.monotonic() - self._heard

    def problem(self) -> str:
        """Return why the bot is unwell, in one line; "" if it is well."""
        if self._broken():
            return "the database can't be written"
        if self._clock.monotonic() - self._heard > POLL_LATE.total_seconds():
            return "no poll has been answered for five minutes"
        now = self._clock.now()
        there = self._waiting(now)
        if _age(there.pain, now) > PAIN_LATE.total_seconds():
            return f"an answer to pain has been waiting for {_age(there.pain, now):.0f} s"
        if _age(there.oldest, now) > UNSENT_LATE.total_seconds():
            return f"{there.waiting} messages wait, the oldest for {_age(there.oldest, now) / 60:.0f} minutes"
        return ""

    def remark(self) -> str:
        """Return what is worth a look though the bot is well: that the clock was set within JUMP_TOLD_FOR; "" for nothing."""
        if self._jump is None or self._clock.monotonic() - self._jump[0] > JUMP_TOLD_FOR:
            return ""
        return f"the clock was set by {self._jump[1]:+.0f} s"

    def answer(self, path: str) -> HttpResponse | None:
        """Return the page for /metrics or /healthz (503 if unwell); None for any other path."""
        if path == "/metrics":
            return HttpResponse(200, generate_latest(self.registry), CONTENT_TYPE_LATEST)
        if path == "/healthz":
            problem = self.problem()
            lines = [problem or "well", *filter(None, [self.remark()])]
            return HttpResponse(503 if problem else 200, "".join(f"{line}\n" for line in lines).encode())
        return None


class _Gauges(Collector):
    """Gauges read when scraped."""

    def __init__(self, metrics: Metrics) -> None:
        self._metrics = metrics

    def collect(self) -> Iterator[GaugeMetricFamily]:
        """Yield the current gauges."""
        for name, meaning, value in self._metrics.gauges():
            yield GaugeMetricFamily(name, meaning, value)


def _age(since: datetime | None, now: datetime) -> float:
    return max(0.0, (now - since).total_seconds()) if since else 0.0
