"""What a test asks of a coach's pages, and what must hold of every message on them."""

from __future__ import annotations

from datetime import datetime

from companion.coach.caseload import utf16_length
from companion.coach.look import TEXT_MOST
from companion.coach.views import show
from companion.conversation.effects import Remind, Say, Tap
from companion.conversation.prompt import PAYLOAD_BYTES, read_start
from companion.record import coaching
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago

WORST = ("\u202e\u2066\n\x1b[31m<b>*x*</b> [a](http://b) \U0001f600" + "\U0001f4aa" * 4096)
"""What a lifter may type, at its worst: direction, control, markup, and 4,096 characters that count twice."""
NEVER = set("\u202e\u2066\u2028\x1b\x00\r\x85\u200b\ufeff")


def ask(room: Room, view: str, of: object = "", coach: int | None = None, now: datetime = NOW) -> list[Say]:
    return show(Turn(room.db, room.coach if coach is None else coach, now, BOOK), view, str(of))


def taps(say: Say) -> list[Tap]:
    return [tap for row in say.buttons for tap in row]


def labels(say: Say) -> list[str]:
    return [tap.label for tap in taps(say)]


def numbered(say: Say) -> list[str]:
    return [line for line in say.text.splitlines() if line.split(".")[0].isdecimal()]


def fits(say: Say) -> None:
    """What the channels can carry."""
    assert 1 <= utf16_length(say.text) <= TEXT_MOST
    assert say.text.strip()
    assert not NEVER & set(say.text)
    say.text.encode()
    for tap in taps(say):
        assert 1 <= len(tap.data.encode()) <= PAYLOAD_BYTES
        assert 1 <= utf16_length(tap.label) <= 32
        assert not NEVER & set(tap.label)
        assert read_start(tap.data) is not None
        tap.label.encode()


def full(room: Room, name: str = "Sam") -> int:
    """A lifter of whom there is something of everything."""
    sam = room.lifter(name)
    room.run(sam, "knee_to_wall", {"method": "tape", "left_1": 7.0, "left_2": 7.4, "right_1": 12.0, "right_2": 12.2}, 9)
    room.run(sam, "squat_after", {"done": "yes", "back": "still", "kept": "kept", "hurt": "no", "load": 80.0, "note": "easy"}, 3)
    room.hurt(sam, 2)
    room.results(sam, 5)
    for cause, ruling, because in (("length", "likely", "Heels up: later."), ("strength", "ruled_out", "Arms forward: clean."),
                                   ("control", "too_close", "")):
        room.find(sam, cause, ruling, 5, because)
    room.find(sam, "overruled.control", "ruled_out", 1, "seen in person", "overruled by coach Ada")
    room.find(sam, "depth.step", "parallel", 3, "One clean squat day.")
    room.find(sam, "depth.pin", "a_little_above", 1, "saw it", "set by coach Ada")
    room.find(sam, "load.limit", "64", 5)
    room.find(sam, "squat.plan", '{"weekly":{"TU":"18:00"}}')
    room.keep(sam, 1, Remind("retest", "retest", "2026-04-01"))
    coaching.audit_act(room.db, sam, room.coach, "pin_depth", "a_little_above", "saw it", ago(1))
    return sam
