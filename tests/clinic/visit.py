"""A visit: one made-up lifter lives the real flows from hello to the results, on the engine, with a log as the record keeps it."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any, Final

from companion.conversation.condition import Value
from companion.conversation.effects import Ended, Find, Record, Say
from companion.conversation.events import Event, Tapped, Typed
from companion.conversation.flow import Ask, Known
from companion.conversation.kinds import Hold
from companion.conversation.number_kinds import Number
from companion.conversation.prompt import SKIP, Payload
from companion.conversation.session import Frame, Session
from companion.screening.conclusion import Conclusion
from companion.screening.protocols import protocols
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from flows.outcome_facts import concluded
from tests.clinic.lifters import Answers, Lifter
from tests.drive import NOW, Talk

REPLIES_MOST: Final = 400
FIXED: Final[dict[str, Value]] = {
    "welcome.consent": "yes", "welcome.adult": "yes", "welcome.units": "metric", "welcome.zone": "UTC+00:00",
    "welcome.zone_right": "yes", "safety_check.pain": 0.0, "full_screen.all_the_same": "yes", "screen.all_the_same": "no",
    "warm_up.walk": "ready", "warm_up.walk_more": "ready", "warm_up.squats": "ready", "outcome.why": "now", "outcome.again": "later"}
"""Answers that are the same for everybody; every other safety question is answered with "no"."""

READS, TAPS, MOVES, SET_UPS = 4.0, 4.0, 25.0, (40.0, 15.0)
"""Words a second (240 a minute), and seconds for an answer, for a movement or a set of squats, and to set up for a block: on the floor or
for the first squats, and where the phone stands already (choice; for the minutes told)."""
STANDING: Final = ("best_squat", "hand_on_back_squat", "arms_forward_squat", "pause_squat", "hinge_to_squat")
SETS: Final = {"squat_look": 6, "best_squat": 4, "hand_on_back_squat": 2, "rock_back": 3, "hip_fold": 2, "leg_raise": 2, "pause_squat": 2,
              "bird_dog": 4}
"""Movements in one block, where there are more than one."""


class Visit(Talk):
    """One lifter's evening. ``route``: the flow they begin, "full_screen" or "screen", which ends when it is decided."""

    def __init__(self, lifter: Lifter, route: str = "full_screen") -> None:
        self.lifter, self.answering, self.route = lifter, Answers(lifter), route
        self.book, self.kept, self.effects = BOOK, [], []
        self.known = {"today": "2026-03-02", "coach": "no", "is_coach": "no", "person": "1"}
        self.now = NOW
        self.replies, self.seconds, self.before_moving = 0, 0.0, 0
        self.took: Counter[str] = Counter()
        self.moved = False
        self.session = Session(stack=(Frame("welcome", BOOK["welcome"].flow.version, "1"),), runs=1)
        self._settle()

    def live(self) -> Conclusion:
        """Answer until the results are told; return what they conclude."""
        while "outcome.at" not in self.known or self.state.startswith("outcome"):
            if not self.session.stack or self.replies > REPLIES_MOST:
                raise AssertionError(f"stuck at {self.state or 'nothing'} after {self.replies} replies")
            self._reply()
        return concluded(self._known())[1]

    def _reply(self) -> None:
        top = self.session.top
        ask = self.book[top.flow].stops[top.state]
        assert isinstance(ask, Ask)
        if self.session.aside:
            event: Event = Typed("yes" if self.session.aside.about == "unusual" else "no")
        elif (top.flow, top.state) == ("home", "pick"):
            event = Typed(self.route.replace("_", " "))
        else:
            event = self._event(ask, self._wanted(top.flow, top.state))
        before = len(self.effects)
        held = ask.kind.seconds if isinstance(ask.kind, Hold) and isinstance(ask.kind.seconds, int) else 0
        block = top.state.startswith("did")
        moves = (SETS.get(top.flow, 1) if block else 1) if ask.caution and not held else 0
        took = TAPS + held + MOVES * moves + (SET_UPS[top.flow in STANDING] if top.state == "did" else 0.0)
        self.seconds += took
        self.took[top.flow] += took
        self.before_moving += not self.moved and not ask.safety
        self.moved = self.moved or bool(ask.caution)
        self.now += timedelta(seconds=10)
        self.send(event)
        self.replies += 1
        read = sum(len(say.text.split()) for say in self.effects[before:] if isinstance(say, Say)) / READS
        self.seconds += read
        self.took[self.session.top.flow if self.session.stack else top.flow] += read

    def _wanted(self, flow: str, key: str) -> Value | None:
        if (fixed := FIXED.get(f"{flow}.{key}")) is not None:
            return fixed
        if flow == "full_screen":
            return "now"
        if flow in ("safety_check", "warm_up"):
            return "no"
        frame = self.session.top
        facts = self.book[flow].facts_of(self.known, frame.fixed, frame.got)
        return self.answering.answer(flow, key, facts)

    def _event(self, ask: Ask, value: Value | None) -> Event:
        flow = self.book[self.session.top.flow].flow
        if isinstance(value, float) and isinstance(ask.kind, Number):
            return Typed(f"{value:g}")
        if isinstance(value, float):
            value = f"{value:g}"
        if value is not None and ask.kind.options and all(value != option.value for option in ask.kind.options):
            raise AssertionError(f"{flow.name}.{ask.key} has no answer {value}")
        if value is not None and not ask.kind.options:
            return Typed(str(value))
        return Tapped(str(Payload(flow.name, flow.version, ask.key, SKIP if value is None else str(value))))

    def _known(self) -> Known:
        return Known(self.known, self.now, lambda: self.kept)

    def _take(self, taken: Any) -> None:
        for effect in taken.effects:
            match effect:
                case Record():
                    self.kept.append(LoggedAnswer(effect.flow, effect.run, effect.key, effect.value, effect.status, None, effect.method,
                                                  effect.placement, self.now))
                    if effect.value is not None:
                        self.known[f"{effect.flow}.{effect.key}"] = effect.value
                    else:
                        self.known.pop(f"{effect.flow}.{effect.key}", None)
                case Ended():
                    self.kept = [replace(row, ending=effect.ending) if row.run == effect.run else row for row in self.kept]
                case Find(name="safety.level"):
                    self.known["safety.may_open"] = "no"
                case _:
                    pass
        super()._take(taken)

    @property
    def tested(self) -> list[str]:
        """The tests done."""
        return [test for test in protocols() if any(row.flow == test for row in self.kept)]

    @property
    def today(self) -> datetime:
        """The moment it has come to."""
        return self.now
