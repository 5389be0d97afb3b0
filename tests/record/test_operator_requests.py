"""What the operator asks of a file: done at once, or left for the companion that has it open; never two writers."""

from __future__ import annotations

import json
import stat
from datetime import UTC, datetime
from pathlib import Path

from companion.record import coaching, operator_requests
from companion.record.file import open_for_reading
from companion.record.operator_requests import OperatorRequest, submit
from tests.app.test_service import Life

NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)
CODE = "abcdefghjkmn"
INVITE = OperatorRequest("invite", "Kim", coaching.code_hash_of(CODE))


def invitations(path: Path) -> list[str]:
    return [row[0] for row in open_for_reading(path).execute("select name from invitations")]


def test_where_no_companion_runs_it_is_done_at_once(tmp_path):
    path = tmp_path / "companion.sqlite"
    assert submit(path, INVITE, NOW)
    assert invitations(path) == ["Kim"]
    assert operator_requests.pending(path) == []


async def test_beside_a_running_companion_it_waits_for_the_sweep(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    assert not submit(life.path, INVITE, NOW)
    assert invitations(life.path) == []
    await life.companion.sweep()
    assert invitations(life.path) == ["Kim"]
    assert operator_requests.pending(life.path) == []
    await life.stop()


async def test_what_waits_is_private_and_holds_no_code(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    submit(life.path, INVITE, NOW)
    (left,) = operator_requests.pending(life.path)
    assert stat.S_IMODE(left.stat().st_mode) == 0o600
    assert stat.S_IMODE(left.parent.stat().st_mode) == 0o700
    assert CODE not in left.read_text()
    await life.stop()


async def test_a_file_that_is_no_request_is_removed_and_stops_nothing(tmp_path, caplog):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    submit(life.path, INVITE, NOW)
    folder = operator_requests.pending(life.path)[0].parent
    for name, text in (("a", "{"), ("b", json.dumps({"what": "invite"})), ("c", "[1]"), ("d", json.dumps({"what": "x", "name": "y"}))):
        (folder / f"{name}.json").write_text(text)
    await life.companion.sweep()
    assert operator_requests.pending(life.path) == []
    assert invitations(life.path) == ["Kim"]
    await life.stop()


async def test_a_request_that_was_carried_out_before_the_process_was_killed_stops_no_sweep(tmp_path, caplog):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    submit(life.path, INVITE, NOW)
    (left,) = operator_requests.pending(life.path)
    again = left.read_text()
    await life.companion.sweep()
    left.write_text(again)
    left.with_name("odd.json").write_text(json.dumps({"what": "invite", "name": None}))
    await life.companion.sweep()
    assert operator_requests.pending(life.path) == []
    assert invitations(life.path) == ["Kim"]
    assert caplog.text.count("part of a sweep failed: IntegrityError\n") == 1  # the odd one
    await life.stop()


async def test_whoever_is_told_by_a_request_is_told_at_once(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    woken: list[str] = []
    life.companion.on_commit = woken.append
    await life.companion.sweep()
    assert not woken
    submit(life.path, INVITE, NOW)
    await life.companion.sweep()
    assert woken
    await life.stop()


async def test_ending_a_coach_beside_a_running_companion(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    await life.say("hello", "Yes, keep them")
    coaching.make_coach(life.db, 1, "Kim", NOW)
    submit(life.path, OperatorRequest("end", "Kim"), NOW)
    await life.companion.sweep()
    assert coaching.coach_name(life.db, 1) is None
    await life.stop()
