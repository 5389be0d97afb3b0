"""A caseload as the weeks leave it: lifters with pain, referrals, squat days, retests, notes, silence and a coach's looks, at random."""

from __future__ import annotations

from collections.abc import Callable
from datetime import time, timedelta
from random import Random

from companion.calendar.plan import Plan
from companion.conversation.effects import Alert
from companion.record import coaching, people, reminders
from tests.coach.caseload_rows import NOW, Room, ago

Event = tuple[float, Callable[[], object]]


def populate(room: Room, lifters: int, seed: int = 1) -> list[int]:
    """Add so many lifters of Ada to the record, some also Bea's; returns their numbers."""
    random, bea = Random(seed), room.a_coach("Bea")
    room.db.execute("begin")
    them = [_a_lifter(room, f"Lifter {n}", bea, random) for n in range(1, lifters + 1)]
    room.db.execute("commit")
    return them


def _a_lifter(room: Room, name: str, bea: int, random: Random) -> int:
    joined = random.uniform(30, 85)
    sam = room.lifter(name, answered=joined, linked=joined)
    if random.random() < 0.2:
        coaching.link(room.db, sam, bea, ago(joined))
    room.find(sam, "squat.plan", _a_plan(random), joined)
    busy = random.choice((2, 5, 9, 14))
    events = [event for _ in range(busy) for event in _events(room, sam, bea, random, joined)]
    for days, happens in sorted(events, key=lambda one: -one[0]):
        if days < joined:
            happens()
    if random.random() < 0.05:
        people.mark_gone(room.db, *people.addresses_of(room.db, sam)[0], ago(random.uniform(0, 9)), "blocked the bot")
    return sam


def _a_plan(random: Random) -> str:
    at = time(18)
    away = (((ago(16).date(), (NOW + timedelta(days=5)).date()),) if random.random() < 0.2 else ())
    weekly = tuple((day, at) for day in sorted(random.sample(range(7), random.randint(1, 4))))
    return random.choice((Plan(), Plan(weekly=weekly, away=away), Plan(every=random.randint(2, 7), start=ago(40).date(), at=at, away=away))
                         ).dumps()


def _events(room: Room, sam: int, bea: int, random: Random, joined: float) -> list[Event]:
    """Return one thing that happens to a lifter, at a random time; the later the likelier."""
    day = random.uniform(0, joined) ** 2 / joined

    def retest() -> None:
        due, state = day - random.uniform(0, 14), random.choice(("open", "open", "ignored", "replaced", "sent", "dropped"))
        reminders.add(room.db, sam, "retest", "retest", f"{ago(due):%Y-%m-%d %H:%M}", "UTC", ago(due), ago(day))
        if state != "open":
            reminders.settle(room.db, room.db.execute("select max(id) from reminders").fetchone()[0], state, ago(max(due, 0)))

    def review() -> None:
        act = coaching.audit_act(room.db, sam, room.coach, "reviewed", "", "", ago(day))
        if random.random() < 0.3:
            coaching.audit_act(room.db, sam, room.coach, "unreviewed", str(act), "", ago(day - 0.01))

    def result() -> None:
        room.results(sam, day, random.choice(("likely", "open", "normal")))
        room.find(sam, random.choice(("length", "strength", "control")), random.choice(("likely", "too_close", "ruled_out")), day)

    def step_back() -> None:
        room.run(sam, "squat_after", {"done": "yes", "back": random.choice(("moved", "still"))}, day)
        room.find(sam, "depth.step", "well_above", day, random.choice(("The back moved: a step back.", "It stays.")))

    happens: tuple[Callable[[], object], ...] = (
        lambda: room.hurt(sam, day, random.choice(("no_load", "not_today", "clinician", "same_day", "emergency")), bad=4.0),
        lambda: room.run(sam, "pain", {}, day, random.choice(("", "left"))),
        lambda: (room.run(sam, "pain", {"where": "nothing"}, day), room.find(sam, "pain.hurt", "no", day)),
        lambda: room.run(sam, "morning", {"how": "same"}, day, alert=Alert("not_today", "yesterday something hurt")),
        lambda: room.run(sam, "safety_check", {"leg_signs": "yes"}, day, alert=Alert("clinician", "the check says")),
        lambda: room.find(sam, "safety.level", random.choice(("go", "go", "clinician")), day),
        lambda: room.lifted(sam, day, random.choice((60.0, 90.0))),
        lambda: room.find(sam, "retest.change", random.choice(("better", "worse", "within_error", "cannot_say")), day, "knee to wall"),
        lambda: room.run(sam, "signs", {}, day, ""),
        lambda: room.run(sam, "limits", {}, day, alert=Alert("", "was told by a clinician: no bending")),
        lambda: room.run(sam, "crisis", {"coach_may": "yes"}, day, alert=Alert("crisis", "asks their coach to phone them")),
        step_back, retest, retest, result, result, review,
        lambda: coaching.audit_act(room.db, sam, bea, "reviewed", "", "", ago(day)),
        lambda: room.run(sam, "note_to_coach", {"text": "Friday went well"}, day, asked=random.choice(("", str(room.coach), str(bea)))),
        lambda: coaching.audit_look(room.db, sam, random.choice((room.coach, room.coach, bea)), random.choice(("summary", "caseload")),
                                    ago(day)),
        lambda: coaching.audit_act(room.db, sam, room.coach, "pin_load", "60", "", ago(day)),
        lambda: room.run(sam, "squat_day", {"load": 60.0}, day), lambda: room.run(sam, "squat_day", {"load": 60.0}, day))
    return [(day, random.choice(happens))]
