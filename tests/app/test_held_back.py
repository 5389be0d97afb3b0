"""While a turn is taken, what reads a film is held back: it always goes on, runs at least half of the time, and ends with the bot."""

from __future__ import annotations

import asyncio
import contextlib
import os
import select
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from companion.app import held_back
from companion.app.held_back import AT_ONCE, HeldBack
from tests.app.test_service import Life

GROUP = 4242


class Hand:
    """A clock that is set by hand, and the signals that were sent."""

    def __init__(self) -> None:
        self.at, self.sent = 100.0, list[tuple[int, int]]()

    def monotonic(self) -> float:
        return self.at

    def send(self, group: int, what: int) -> None:
        self.sent.append((group, what))

    @property
    def stopped(self) -> bool:
        return bool(self.sent) and self.sent[-1] == (GROUP, signal.SIGSTOP)


@pytest.fixture
def hand(monkeypatch):
    monkeypatch.setattr(held_back, "SENDING", 0.0)
    return Hand()


@pytest.fixture
def held(hand):
    return HeldBack(hand, hand.send)


async def sent() -> None:
    """Let what is due now be done."""
    for _ in range(3):
        await asyncio.sleep(0)


async def test_a_film_is_stopped_during_a_turn_and_goes_on_when_its_message_has_left(hand, held):
    with held.reading(GROUP):
        hand.at += 1
        with held.turn():
            assert hand.stopped
        assert hand.stopped
        await sent()
        assert hand.sent == [(GROUP, signal.SIGSTOP), (GROUP, signal.SIGCONT)]


async def test_a_turn_that_follows_at_once_is_not_cut_into_by_the_end_of_the_last(hand, held):
    with held.reading(GROUP):
        hand.at += 1
        with held.turn():
            pass
        with held.turn():
            await sent()
            assert hand.stopped


async def test_where_no_film_is_read_nothing_is_stopped(hand, held):
    with held.turn():
        pass
    with held.reading(GROUP):
        hand.at += 1
    with held.turn():
        pass
    assert not hand.sent


async def test_it_goes_on_after_a_turn_that_fails_and_after_the_last_of_several(hand, held):
    with held.reading(GROUP):
        hand.at += 1
        with contextlib.suppress(ZeroDivisionError), held.turn():
            with held.turn():
                pass
            await sent()
            assert hand.stopped
            raise ZeroDivisionError
        await sent()
        assert not hand.stopped


async def test_it_goes_on_where_its_reading_ends_during_a_turn(hand, held):
    with held.turn():
        with contextlib.suppress(asyncio.CancelledError), held.reading(GROUP):
            hand.at += 1
            with held.turn():
                raise asyncio.CancelledError
        assert hand.sent == [(GROUP, signal.SIGSTOP), (GROUP, signal.SIGCONT)]
    await sent()
    assert len(hand.sent) == 2


async def test_a_turn_that_takes_long_holds_it_back_no_longer_than_a_moment(hand, held, monkeypatch):
    monkeypatch.setattr(held_back, "AT_ONCE", 0.0)
    assert AT_ONCE < 1
    with held.reading(GROUP):
        hand.at += 1
        with held.turn():
            await sent()
            assert not hand.stopped


async def test_in_a_flood_it_runs_at_least_half_of_the_time(hand, held):
    with held.reading(GROUP):
        ran = held_for = 0.0
        for _ in range(2000):
            with held.turn():
                hand.at += .01
                ran, held_for = (ran, held_for + .01) if hand.stopped else (ran + .01, held_for)
            await sent()
        assert ran >= held_for - .01
        assert held_for > 5  # and is held back the other half


async def test_a_film_that_has_just_ended_by_itself_stops_no_turn(hand):
    def gone(group: int, what: int) -> None:
        raise ProcessLookupError

    held = HeldBack(hand, gone)
    with held.reading(GROUP):
        hand.at += 1
        with held.turn():
            pass


async def test_each_turn_of_the_companion_holds_it_back(tmp_path, hand, held):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    life.companion.held_back = held
    with held.reading(GROUP):
        hand.at += 1
        assert await life.say("hello")
        await sent()
        assert hand.sent == [(GROUP, signal.SIGSTOP), (GROUP, signal.SIGCONT)]
    await life.stop()


BOT = """
import asyncio, os, signal, sys
from contextlib import contextmanager
from pathlib import Path
from companion.app import films
from companion.record.turn import FilmWanted

@contextmanager
def reading(group):
    if sys.argv[2] == "stopped":
        os.killpg(group, signal.SIGSTOP)
    print(group, flush=True)
    yield

async def main():
    task = asyncio.create_task(films.read_wanted(FilmWanted(1, ("", ""), sys.argv[1], "1", "plain"), films.local_film, reading))
    await asyncio.to_thread(sys.stdin.readline)
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)

if __name__ == "__main__":
    asyncio.run(main())
"""


only_linux = pytest.mark.skipif(not hasattr(os, "pidfd_open"), reason="only Linux ends a process with its parent")


def started(tmp_path: Path, script: str, *given: str) -> subprocess.Popen[bytes]:
    """A Python process of ours, spoken to by pipes."""
    path = tmp_path / "bot.py"
    path.write_text(script)
    tree = str(Path(held_back.__file__).parents[2])
    environment = os.environ | {"PYTHONPATH": os.pathsep.join(filter(None, [tree, os.environ.get("PYTHONPATH", "")]))}
    return subprocess.Popen([sys.executable, str(path), *given], stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=environment)


def ends(process: int) -> bool:
    """True if a process that is nobody's child here ends within half a minute."""
    return bool(select.select([process], [], [], 30)[0])


@only_linux
@pytest.mark.parametrize(("end", "state"), [("killed", "stopped"), ("killed", "running"), ("cancelled", "stopped")])
def test_a_bot_that_is_killed_or_ends_leaves_no_reader_behind(tmp_path, end, state):
    film = tmp_path / "film"
    film.write_text("no film")
    with started(tmp_path, BOT, str(film), state) as bot:
        reader = os.pidfd_open(int(bot.stdout.readline()))
        if end == "killed":
            bot.kill()
        else:
            bot.communicate(b"\n", timeout=30)
        assert ends(reader)
        os.close(reader)


READING = """
import sys
from pathlib import Path
from companion.film.reader import run_apart

run_apart("companion.film.decoder", Path(sys.argv[1]))
"""


@only_linux
def test_the_decoding_process_ends_with_the_one_that_reads(tmp_path):
    film = tmp_path / "film"
    os.mkfifo(film)
    with started(tmp_path, READING, str(film)) as reading, film.open("wb"):  # which waits until the decoder opens it too, and then for us
        (decoder,) = Path(f"/proc/{reading.pid}/task/{reading.pid}/children").read_text().split()
        process = os.pidfd_open(int(decoder))
        reading.kill()
        assert ends(process)
        os.close(process)
