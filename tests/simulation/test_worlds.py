"""Whatever happens to the machine, the network, the disk and the people, what is promised holds; and each defect found by hand is a
world that fails without its mending."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest

from companion.app import onboarding
from companion.app.conversations import Conversations
from companion.channels import drainer
from companion.port import Delivered, Unsure
from companion.record import outbox, owed
from companion.record.file import InstanceLock
from tests.by_night import BY_NIGHT
from tests.simulation.plan import NAMED, WorldPlan, drawn
from tests.simulation.world import World

SEEDS = 200 if BY_NIGHT else 40
AT_ONCE = 10


def lived(plan: WorldPlan, folder: Path) -> World:
    folder.mkdir()
    world = World(plan, folder)
    world.digest = world.run()
    return world


@pytest.mark.parametrize("first", range(0, SEEDS, AT_ONCE))
def test_what_is_promised_holds_in_every_drawn_world(tmp_path: Path, first: int) -> None:
    for seed in range(first, first + AT_ONCE):
        try:
            lived(drawn(seed), tmp_path / f"{seed}")
        except Exception as error:
            raise AssertionError(f"seed {seed} (python -m tests.simulation {seed})") from error


@pytest.mark.parametrize("name", NAMED)
def test_what_is_promised_holds_in_the_worlds_of_the_defects_found(tmp_path: Path, name: str) -> None:
    lived(NAMED[name], tmp_path / "world")


def test_a_seed_replays_exactly(tmp_path: Path) -> None:
    once, again = (lived(drawn(3), tmp_path / name) for name in "ab")
    assert once.log == again.log
    assert once.digest == again.digest != lived(drawn(4), tmp_path / "c").digest


def _clock_not_followed(patch: pytest.MonkeyPatch) -> None:
    async def nothing(self: Conversations) -> None:
        pass
    patch.setattr(Conversations, "follow_clock", nothing)


def _no_ranks(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(drainer.Drainer, "_fairly", lambda self, ready: iter(sorted(ready, key=lambda one: one.id)))


def _remembered(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(onboarding, "Erase", type(None))


def _not_owed(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(owed, "note", lambda *args: None)


def _not_watched(patch: pytest.MonkeyPatch) -> None:
    patch.setattr(InstanceLock, "trouble", lambda self: "")


def _not_sent_again(patch: pytest.MonkeyPatch) -> None:
    mark = drainer.Drainer._mark

    async def once(self, message, outcome, at):
        await mark(self, message, Delivered("?") if isinstance(outcome, Unsure) else outcome, at)
    patch.setattr(drainer.Drainer, "_mark", once)


BROKEN: dict[str, tuple[str, Callable[[pytest.MonkeyPatch], None]]] = {
    "due times stay where they were": ("the clock is set back an hour", _clock_not_followed),
    "first come, first served": ("two hundred strangers, then pain", _no_ranks),
    "an erasure forgets nothing": ("strangers erase before consent", _remembered),
    "nothing is noted for strangers": ("the process is killed while strangers wait", _not_owed),
    "nothing is noted, stopped cleanly": ("the process is stopped cleanly while strangers wait", _not_owed),
    "the file is not watched": ("the file is deleted", _not_watched),
    "what may have arrived has": ("requests time out", _not_sent_again),
}


@pytest.mark.parametrize("how", BROKEN)
def test_each_defect_shows_in_its_world_without_its_mending(tmp_path: Path, how: str, monkeypatch: pytest.MonkeyPatch) -> None:
    name, breaks = BROKEN[how]
    breaks(monkeypatch)
    with pytest.raises(AssertionError):
        lived(NAMED[name], tmp_path / "world")


def test_a_clock_that_was_set_moves_only_what_was_made_before_it(tmp_path: Path) -> None:
    world = lived(NAMED["the clock is set forward an hour"], tmp_path / "world")
    assert world.clock.offset == timedelta(hours=1)
    assert len(world.people) <= outbox.MOST_AT_ONCE
