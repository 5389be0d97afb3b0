"""Numbers, health, and the small server they are asked of."""

import asyncio
import contextlib
from datetime import timedelta

import pytest

from companion.operate.counters import REASONS, Counters, reason_class
from companion.operate.http import PAGE_CONNECTIONS, CannotListen, HttpResponse, serving
from companion.operate.metrics import Metrics
from companion.record.outbox import Backlog
from tests.fakes.clock import FakeClock
from tests.operate.build import NOW


class Bot:
    """What stands in a bot, as the numbers see it."""

    def __init__(self):
        self.clock = FakeClock()
        self.waiting, self.broken = Backlog(), False
        self.metrics = Metrics(self.clock, lambda now: self.waiting, lambda: self.broken)

    def numbers(self):
        lines = self.metrics.answer("/metrics").body.decode().splitlines()
        return {name: float(value) for name, _, value in (line.rpartition(" ") for line in lines if line[0] != "#")}


@pytest.fixture
def bot():
    return Bot()


async def asked(port, request=b"GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n"):
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    try:
        writer.write(request)
        return await reader.read()
    finally:
        writer.close()


def test_what_happens_is_counted(bot):
    metrics = bot.metrics
    for happened in (metrics.turn_taken, metrics.turn_taken, metrics.turn_failed, metrics.message_sent, metrics.reminder_offered):
        happened()
    metrics.message_dropped("gone", 3)
    metrics.committed(0.004)
    numbers = bot.numbers()
    assert numbers["companion_turns_taken_total"] == 2
    assert numbers["companion_turns_failed_total"] == 1
    assert numbers["companion_messages_sent_total"] == 1
    assert numbers["companion_reminders_offered_total"] == 1
    assert numbers['companion_messages_dropped_total{reason="gone"}'] == 3
    assert numbers['companion_messages_dropped_total{reason="refused"}'] == 0
    assert numbers['companion_commit_seconds_bucket{le="0.0025"}'] == 0
    assert numbers['companion_commit_seconds_bucket{le="0.005"}'] == 1


def test_what_stands_is_looked_up_when_asked(bot):
    bot.waiting = Backlog(4, NOW - timedelta(seconds=90), NOW - timedelta(seconds=7))
    bot.metrics.polled()
    bot.clock.at += timedelta(seconds=20)
    numbers = bot.numbers()
    assert numbers["companion_outbox_waiting"] == 4
    assert numbers["companion_outbox_oldest_seconds"] == 110
    assert numbers["companion_outbox_oldest_pain_seconds"] == 27
    assert numbers["companion_poll_age_seconds"] == 20


@pytest.mark.parametrize(("reason", "kind"), [
    ("may have arrived", "may_have_arrived"), ("the person wrote first", "wrote_first"), ("too late", "too_late"),
    ("Bad Request: chat 4711 of Ilka Brandt has gone", "refused")])
def test_a_reason_becomes_a_class_and_its_words_are_left_behind(bot, reason, kind):
    assert reason_class(reason) == kind
    bot.metrics.message_dropped(reason_class(reason))
    bot.metrics.message_dropped("Ilka Brandt")
    assert b"Ilka" not in bot.metrics.answer("/metrics").body


def test_no_label_can_name_a_person(bot):
    bot.metrics.committed(1)
    labels = {(name, value) for family in bot.metrics.registry.collect() for sample in family.samples
              for name, value in sample.labels.items()}
    assert {name for name, _ in labels} == {"le", "reason"}
    assert {value for name, value in labels if name == "reason"} == set(REASONS)


def test_two_bots_in_one_process_count_apart(bot):
    bot.metrics.turn_taken()
    assert Bot().numbers()["companion_turns_taken_total"] == 0


def test_where_nobody_asked_nothing_is_counted_and_nothing_fails():
    watch = Counters()
    watch.turn_taken(), watch.turn_failed(), watch.message_sent(), watch.reminder_offered()
    watch.message_dropped("gone")
    watch.committed(1)
    watch.polled()
    watch.clock_jumped(1)
    assert vars(watch) == {}


@pytest.mark.parametrize("hours", [-1, 1])
def test_health_tells_that_the_clock_was_set_and_is_not_misled_by_it(bot, hours):
    bot.clock.jump(timedelta(hours=hours))
    bot.metrics.clock_jumped(hours * 3600)
    assert bot.metrics.answer("/healthz") == HttpResponse(200, f"well\nthe clock was set by {hours * 3600:+} s\n".encode())
    bot.clock.at += timedelta(minutes=6)
    assert bot.metrics.answer("/healthz").status == 503


def test_who_is_mute_is_not_well(bot):
    now = bot.clock.now()
    bot.waiting = Backlog(1, now, now)
    bot.clock.at += timedelta(seconds=31)
    assert bot.metrics.answer("/healthz") == HttpResponse(503, b"an answer to pain has been waiting for 31 s\n")
    bot.waiting = Backlog(3, now - timedelta(minutes=11))
    assert bot.metrics.answer("/healthz").body.startswith(b"3 messages wait, the oldest for 1")


def test_health_follows_the_poll_and_the_file(bot):
    assert bot.metrics.answer("/healthz") == HttpResponse(200, b"well\n")
    bot.clock.at += timedelta(minutes=6)
    assert bot.metrics.answer("/healthz").status == 503
    bot.metrics.polled()
    assert bot.metrics.answer("/healthz").status == 200
    bot.broken = True
    assert bot.metrics.answer("/healthz") == HttpResponse(503, b"the database can't be written\n")


async def test_both_pages_are_served_on_loopback(bot):
    async with serving(0, bot.metrics.answer) as port:
        health = await asked(port)
        numbers = await asked(port, b"GET /metrics?x=1 HTTP/1.1\r\n\r\n")
    assert health.startswith(b"HTTP/1.1 200 OK\r\n")
    assert health.endswith(b"\r\n\r\nwell\n")
    assert b"companion_turns_taken_total 0.0" in numbers
    head, _, body = numbers.partition(b"\r\n\r\n")
    assert f"Content-Length: {len(body)}".encode() in head


@pytest.mark.parametrize(("request_", "status"), [
    (b"POST /healthz HTTP/1.1\r\n\r\n", 405), (b"HEAD /healthz HTTP/1.1\r\n\r\n", 405), (b"GET / HTTP/1.1\r\n\r\n", 404),
    (b"GET /../etc/passwd HTTP/1.1\r\n\r\n", 404), (b"GET /healthz\r\n\r\n", 400), (b"\x16\x03\x01\x02\x00\r\n\r\n", 400),
    (b"GET /caf\xe9 HTTP/1.1\r\n\r\n", 404)])
async def test_anything_else_is_refused(bot, request_, status):
    async with serving(0, bot.metrics.answer) as port:
        assert (await asked(port, request_)).startswith(f"HTTP/1.1 {status} ".encode())


async def test_a_request_that_is_too_long_is_cut_off(bot):
    async with serving(0, bot.metrics.answer) as port:
        assert await cut_off(port, b"GET /healthz HTTP/1.1\r\nX: " + b"x" * 100_000 + b"\r\n\r\n")
        assert b"200" in await asked(port)


async def test_a_client_that_sends_nothing_is_cut_off(bot):
    async with serving(0, bot.metrics.answer, seconds=0) as port:
        assert await cut_off(port, b"GET /heal")


async def cut_off(port, request):
    try:
        return await asked(port, request) == b""
    except ConnectionError:
        return True


async def test_clients_that_hang_keep_nobody_else_out_for_long_and_the_end_waits_for_none(bot):
    async with serving(0, bot.metrics.answer, seconds=600) as port:
        hanging = [await asyncio.open_connection("127.0.0.1", port) for _ in range(PAGE_CONNECTIONS)]
        assert await cut_off(port, b"GET /healthz HTTP/1.1\r\n\r\n")
        hanging[0][1].write(b"GET /healthz HTTP/1.1\r\n\r\n")
        assert b"200" in await hanging[0][0].read()
        assert b"200" in await asked(port)
    for reader, writer in hanging:
        with contextlib.suppress(ConnectionError):
            assert await reader.read() == b""
        writer.close()


async def test_a_port_in_use_is_one_line(bot):
    async with serving(0, bot.metrics.answer) as port:
        with pytest.raises(CannotListen, match=str(port)) as told:
            async with serving(port, bot.metrics.answer):
                pass
    assert "\n" not in str(told.value)


async def test_it_listens_on_loopback_only(bot, monkeypatch):
    heard = []
    real = asyncio.start_server

    async def spy(met, host, port, **more):
        heard.append(host)
        return await real(met, host, port, **more)
    monkeypatch.setattr(asyncio, "start_server", spy)
    async with serving(0, bot.metrics.answer):
        pass
    assert heard == ["127.0.0.1"]
