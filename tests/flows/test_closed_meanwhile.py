"""What is closed or lowered in the middle of a run holds as it goes on: told in between and told before come to the same."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from random import Random

import pytest

from companion.conversation.condition import Value
from companion.conversation.events import Tapped, Typed
from companion.conversation.flow import Ask
from companion.conversation.prompt import BACK, SKIP, STOP, Payload, read_payload
from companion.conversation.session import Frame, Session
from companion.conversation.step import interrupted
from companion.conversation.table import body_works
from companion.screening.limits import Limit, LimitPart, as_text, facts_in, limits_in
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.flows.squatting import Lifter

AT_HAND: Mapping[str, Value] = {
    "about_you.height": 180.0, "about_you.stick": "broomstick", "about_you.tape": "yes", "about_you.level": "yes", "films": "yes",
    "setup.proposed": "front", "hinge_to_squat": "yes", "about_you.bar": "full"}
MOVES = sorted(name for name, compiled in BOOK.flows.items() if body_works(BOOK[name].flow))
CLOSED: Mapping[str, Mapping[str, Value]] = {
    **{part.value: {"safety.limits": as_text((Limit(frozenset((part,))),))} for part in LimitPart},
    "nothing above 10 kg": {"safety.limits": as_text((Limit(frozenset(), 10.0),)), "load.told": "10"},
    "nothing above 60 kg": {"safety.limits": as_text((Limit(frozenset(), 60.0),)), "load.told": "60"},
    "no load": {"safety.level": "no_load"}, "clinician": {"safety.level": "clinician"}}
WALKS, LONGEST = 3 if BY_NIGHT else 1, 12


class Run(Lifter):
    """A lifter in one flow, whose limits close what they close."""

    def __init__(self, flow: str, run: str, closed: Mapping[str, Value]) -> None:
        super().__init__(BOOK["home"].flow, {**AT_HAND, **with_limits(closed)})
        self.effects = []
        self.session = Session(stack=(Frame(flow, BOOK[flow].flow.version, run),), runs=int(run))
        self._settle()

    @property
    def ask(self) -> Ask | None:
        stop = BOOK[self.session.top.flow].stops.get(self.session.top.state) if self.session.stack else None
        return stop if isinstance(stop, Ask) else None

    def reply(self, draw: Random) -> tuple[str, bool]:
        """Answer the open question in some way, and return how; not that something hurt."""
        assert self.ask
        values = [at.value for row in self.says[-1].buttons for tap in row if (at := read_payload(tap.data)) and at.value not in (
            SKIP, BACK, STOP, *self.ask.hurts)]
        typed = "" if values else str(self.ask.kind.typical)
        given = (typed, False) if typed else (draw.choice(values or [SKIP]), True)
        self.give(*given)
        return given

    def give(self, answer: str, taps: bool) -> None:
        top = self.session.top
        self.send(Tapped(str(Payload(top.flow, top.version, top.state, answer))) if taps else Typed(answer))


def with_limits(closed: Mapping[str, Value]) -> dict[str, Value]:
    return {**closed, **facts_in(limits_in(closed.get("safety.limits")), date(2026, 3, 2), 20.0)}


def holds_as_if_told_before(name: str, run: Run, said: Mapping[str, tuple[str, bool]], closed: Mapping[str, Value]) -> None:
    """Check that a movement asked for now is asked for in the same words where all was closed before the run began, and the answers that
    count were given."""
    if not (run.ask and run.ask.caution):
        return
    counts = {f"{frame.flow}.{state}" for frame in run.session.stack for state in (*frame.got, *frame.trail)}
    counts |= {state for state in said if not state.startswith(f"{name}.")}
    first = next(frame.run for frame in run.session.stack if frame.flow == name)
    before = Run(name, first, closed)
    for _ in range(2 * LONGEST):
        if before.state == run.state:
            break
        assert before.state in counts, f"told before, it comes to {before.state}, not to {run.state}: {run.last}"
        before.give(*said[before.state])
    assert before.state == run.state
    assert before.last.split("\n\n")[0] == run.last.split("\n\n")[0]


@pytest.mark.parametrize("closes", CLOSED)
@pytest.mark.parametrize("name", MOVES)
def test_what_is_closed_in_the_middle_of_a_run_holds_in_it_as_if_it_had_been_told_before(name: str, closes: str):
    for seed in range(WALKS):
        for told_after in range(LONGEST):
            draw, run, said = Random(f"{name} {seed}"), Run(name, "7", {}), dict[str, tuple[str, bool]]()
            for n in range(LONGEST):
                if n == told_after:
                    run.known |= with_limits(CLOSED[closes])
                    run.session = interrupted(BOOK, run.session, run._known())
                    run._settle()
                if n >= told_after:
                    holds_as_if_told_before(name, run, said, CLOSED[closes])
                if not run.ask or run.session.top.flow in ("home", "squat_after"):
                    break
                state = run.state
                said[state] = run.reply(draw)
            if n < told_after:  # it was over before
                break
