"""The table of a flow: every move it can make, by event, source, target and condition, derived from its steps.

A question takes more events than its answer: skip, back, again, help, stop, pain, and interruption; a ``Flow`` need not name them. Rows of
one event and source are tried in order, and the last always holds.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from typing import Final

from companion.conversation.condition import ALWAYS, Condition, Every, fact
from companion.conversation.flow import END, PARKED, Ask, Do, Flow, Jump, Run, Tell
from companion.conversation.kinds import Hold

START: Final = "start"
EARLY_END: Final = "early_end"
"""The end that a jump leads to."""

PAUSED: Final = "paused"
"""The state of a run that was stopped at a question, or that another flow interrupts; ``AT_QUESTION``: the question."""

IN_PAIN: Final = "in_pain"
"""The state of a run paused by pain, in a flow in which the body is at work."""

GATE_CLOSED: Final = "closed"
"""The end of a run whose gate is shut."""

ENDED_BY_PAIN: Final = "ended_by_pain"
ENDINGS: Final[Mapping[str, str]] = {END: "done", EARLY_END: "done", GATE_CLOSED: "closed", ENDED_BY_PAIN: "pain"}
"""The final states, each with the ending of the run."""

BEGIN, ANSWER, SKIP, RETURNED = "begin", "answer", "skip", "returned"
"""Events that lead on: a run begins, a question is answered or skipped, a sub-flow has ended."""

ONWARD: Final = (BEGIN, ANSWER, SKIP, RETURNED)
BACK, AGAIN, HELP, PAIN, STOP, INTERRUPTED, RESUMED = "back", "again", "help", "pain", "stop", "interrupted", "resumed"
"""Events that every question takes. ``STOP`` parks the run, by the person's word or because they begin another flow; ``INTERRUPTED`` only
lets another flow run first; after both, and after pain, the run is ``RESUMED``."""

AT_QUESTION = fact("here.at")
"""The question at which a run was paused."""

LAST_ANSWERED = fact("here.last")
"""The question answered or skipped last in this run."""

ENDED = fact("here.ended")
"""The flow that has just ended, while its last answer can still be taken back."""

HOLD_RUNS = fact("here.hold_runs")
"""Known while the time of the hold begun with the last answer is not over."""

GOES_ON = fact("here.goes_on")
"""Known if the pain questions showed that the run they interrupted can go on: nothing hurt, or it hurt in something else."""


def tried(flow: str) -> str:
    """Return the name of the fact that is known once a gate of this run has run that flow."""
    return f"here.tried_{flow}"


FIRST_QUESTION: Final = "This is the first question here."
NOT_BACK: Final = "Your earlier answers stay as they are."
NOT_SKIPPED: Final = "I need an answer to this one."

Stop = Ask | Run
Stops = Mapping[str, Stop]


@dataclass(frozen=True, slots=True)
class Move:
    """One row: on ``event`` in ``source`` go to ``target``, if ``when`` holds and no earlier row of that event and source does.

    ``passed``: the messages and effects on the way, each with its own condition. ``first``: the flow that a shut gate runs before this one.
    ``again``: the timed hold that was broken off; its answer is withdrawn and the run pauses there. ``refused``: the reply if the event
    changes nothing.
    """

    event: str
    source: str
    target: str
    when: Condition = ALWAYS
    passed: tuple[Tell | Do, ...] = ()
    first: str = ""
    again: str = ""
    refused: str = ""

    @property
    def at(self) -> str:
        """The question at which the run must have been paused, "" for any."""
        return next((str(compare.bound[0]) for compare in self.when.compares()
                     if compare.fact == AT_QUESTION.name and isinstance(compare.bound, tuple)), "")


def body_works(flow: Flow) -> bool:
    """True if the body is at work anywhere in a flow."""
    return any(isinstance(step, Ask) and step.caution for step in flow.steps)


def stops_of(flow: Flow) -> dict[str, Stop]:
    """Return the steps at which a flow waits, by state. Raises ValueError where a state occurs twice or a jump leads nowhere."""
    stops: dict[str, Stop] = {}
    for step in flow.steps:
        if isinstance(step, Ask | Run):
            if step.key in stops or step.key in (START, PAUSED, IN_PAIN, *ENDINGS):
                raise ValueError(f"{flow.name}: the state {step.key} is there twice")
            stops[step.key] = step
    for stop in stops.values():
        for jump in stop.then:
            if jump.to not in stops and jump.to != END:
                raise ValueError(f"{flow.name}: {stop.key} jumps to {jump.to}, which is not there")
    return stops


def onward(flow: Flow) -> dict[str, list[Move]]:
    """Return the moves out of each state after its answer (event ""), in the order to try; the last always holds."""
    places = {START: -1} | {step.key: at for at, step in enumerate(flow.steps) if isinstance(step, Ask | Run)}
    found: dict[str, list[Move]] = {}
    for source, at in places.items():
        step = flow.steps[at] if at >= 0 else None
        jumps = [Move("", source, EARLY_END if jump.to == END else jump.to, jump.when, _on_the_way(jump))
                 for jump in (step.then if isinstance(step, Ask | Run) else ())]
        found[source] = [*jumps, *_in_order(flow, source, at)]
    return found


def _on_the_way(jump: Jump) -> tuple[Tell | Do, ...]:
    return (*jump.does, *((Tell(jump.say, must_arrive=jump.must_arrive),) if jump.say else ()))


def _in_order(flow: Flow, source: str, at: int) -> Iterator[Move]:
    passed: list[Tell | Do] = []
    for step in flow.steps[at + 1:]:
        if isinstance(step, Ask | Run):
            yield Move("", source, step.key, step.only_if, tuple(passed))
            if step.only_if == ALWAYS:
                return
        else:
            passed.append(step)
    yield Move("", source, END, ALWAYS, tuple(passed))


def table(flow: Flow, stops: Stops) -> tuple[Move, ...]:
    """Return all rows of a flow."""
    ways = onward(flow)
    before = answered_before(stops, chain.from_iterable(((move.source, move.target) for move in rows) for rows in ways.values()),
                             [key for key, stop in stops.items() if stop.only_if != ALWAYS] if flow.policy.resumes else ())
    after_runs = runs_before(stops, ways)
    asks = {key: stop for key, stop in stops.items() if isinstance(stop, Ask)}
    holds = [key for key, ask in asks.items() if isinstance(ask.kind, Hold)]
    rows: list[Move] = [*_gates(flow, BEGIN, START), *_as(BEGIN, ways[START])]
    for key, stop in stops.items():
        if isinstance(stop, Run):
            rows += [*(_gates(flow, RETURNED, key) if stop.checks else ()), *_as(RETURNED, ways[key])]
            continue
        rows += _as(ANSWER, ways[key])
        rows += [Move(SKIP, key, key, refused=NOT_SKIPPED)] if stop.safety else _as(SKIP, ways[key])
        rows += _back(stops, stop, before.get(key, frozenset()), after_runs.get(key, ()))
        rows.append(Move(AGAIN, key, key))
        cut = [hold for hold in holds if stop.back and hold in before.get(key, ())]
        rows += [Move(INTERRUPTED, key, PAUSED, LAST_ANSWERED.is_(hold) & HOLD_RUNS.known, again=hold)
                 for hold in cut if _comes_after(hold, key, ways)]
        rows.append(Move(INTERRUPTED, key, PAUSED))
        rows += [Move(STOP, key, PAUSED, LAST_ANSWERED.is_(hold), again=hold) for hold in cut]
        rows.append(Move(STOP, key, PAUSED))
        rows += [] if stop.free or stop.unread else [Move(HELP, key, key)]  # "help" is one of one's own words, or a call for it
        rows += [Move(PAIN, key, IN_PAIN if body_works(flow) else PAUSED)] if flow.policy.hears_pain else []
    if asks:
        rows += _resumed(flow, asks, ways, PAUSED)
        if body_works(flow):
            rows += [Move(RESUMED, IN_PAIN, ENDED_BY_PAIN, ~GOES_ON.known), *_resumed(flow, asks, ways, IN_PAIN)]
    if flow.policy.reopens:
        for end in (END, EARLY_END):
            rows += [Move(BACK, end, key, LAST_ANSWERED.is_(key)) for key in sorted(before.get(end, frozenset()) & asks.keys())]
            rows += [Move(PAIN, end, ENDED_BY_PAIN)] if body_works(flow) and before.get(end) else []
    return tuple(rows)


def _comes_after(hold: str, key: str, ways: Mapping[str, list[Move]]) -> bool:
    """True if a question may come right after a hold that was held, not only after one that was skipped."""
    skipped = ~fact(hold).known
    direct = [move.when for move in ways[hold] if move.target == key]
    return not direct or any(skipped not in (when.parts if isinstance(when, Every) else (when,)) for when in direct)


def _as(event: str, moves: Iterable[Move]) -> list[Move]:
    return [Move(event, move.source, move.target, move.when, move.passed) for move in moves]


def _gates(flow: Flow, event: str, place: str) -> Iterator[Move]:
    for gate in flow.gates:
        if gate.first:
            yield Move(event, place, place, gate.shut & ~fact(tried(gate.first)).known, first=gate.first)
        yield Move(event, place, GATE_CLOSED, gate.shut, (Tell(gate.say),) if gate.say else ())


def _back(stops: Stops, ask: Ask, before: Collection[str], runs: Collection[str]) -> Iterator[Move]:
    """Return the rows to the last question answered; where there is none, into the flow that has just ended, run by this one or by its
    gate."""
    if ask.back:
        nothing = ~LAST_ANSWERED.known
        yield from (Move(BACK, ask.key, key, LAST_ANSWERED.is_(key)) for key in stops if key in before)
        for run in (stop for stop in stops.values() if isinstance(stop, Run) and stop.key in runs):
            yield Move(BACK, ask.key, run.key, nothing & ENDED.is_(run.flow))
        yield Move(BACK, ask.key, START, nothing & ENDED.known)
    yield Move(BACK, ask.key, ask.key, refused=FIRST_QUESTION if ask.back else NOT_BACK)


def runs_before(stops: Stops, ways: Mapping[str, list[Move]]) -> dict[str, set[str]]:
    """Return the runs of other flows that can precede each state and be gone back into; what was parked is none."""
    before: dict[str, set[str]] = {}
    for run in (key for key, stop in stops.items() if isinstance(stop, Run) and stop.flow != PARKED and stop.back):
        reached, waiting = set[str](), {run}
        while waiting:
            ahead = {move.target for state in waiting for move in ways.get(state, ())}
            waiting = ahead - reached
            reached |= ahead
        for state in reached:
            before.setdefault(state, set()).add(run)
    return before


def _resumed(flow: Flow, asks: Mapping[str, Ask], ways: Mapping[str, list[Move]], place: str) -> Iterator[Move]:
    """Return the rows from a pause: to the same question; to the end if a gate has shut since; onward as if skipped if its condition no
    longer holds."""
    if not flow.policy.resumes:
        yield Move(RESUMED, place, START)
        return
    yield from _gates(flow, RESUMED, place)
    for key, ask in asks.items():
        yield Move(RESUMED, place, key, AT_QUESTION.is_(key) & ask.only_if)
        for move in ways[key] if ask.only_if != ALWAYS else ():
            yield Move(RESUMED, place, move.target, AT_QUESTION.is_(key) & move.when, move.passed)


def answered_before(stops: Stops, arrows: Iterable[tuple[str, str]], lapsing: Collection[str]) -> dict[str, frozenset[str]]:
    """Return the questions that can be the last one answered in each state, by these arrows; "" where there can be none.

    A run that ended leaves nothing to take back. A question that lapses (its condition no longer holds when it is resumed) is passed, and
    so is a run of the parked flow: the question answered before them is then the last.
    """
    arrows = list(arrows)
    before: dict[str, frozenset[str]] = {START: frozenset(("",))}
    while True:
        now = dict(before)
        for source, target in arrows:
            stop = stops.get(source)
            parked = isinstance(stop, Run) and stop.flow == PARKED
            gives = {source} if isinstance(stop, Ask) else set() if parked else {""}
            if source in now:
                now[target] = now.get(target, frozenset()) | gives | (now[source] if parked or source in lapsing else set())
        if now == before:
            return before
        before = now
