"""The table of a flow: every move it can make, on which event, from where to where and when, derived from its steps.

A question answers more events than its answer: skip, back, again, help, stop, pain, and being interrupted; ``Flow`` need not
name them. Rows of one event and one source are tried in order, and the last always holds for what can be the case there.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from typing import Final

from companion.conversation.condition import ALWAYS, Condition, fact
from companion.conversation.flow import END, PARKED, Ask, Do, Flow, Jump, Run, Tell
from companion.conversation.kinds import Hold

START: Final = "start"
EARLY_END: Final = "early_end"
"""An end that a jump leads to."""

PAUSED: Final = "paused"
"""The person stopped at a question, or something else runs over it; ``AT_QUESTION`` is the question."""

IN_PAIN: Final = "in_pain"
"""As ``PAUSED``, by pain in a flow in which the body works."""

GATE_CLOSED: Final = "closed"
"""A gate is shut."""

ENDED_BY_PAIN: Final = "ended_by_pain"
ENDINGS: Final[Mapping[str, str]] = {END: "done", EARLY_END: "done", GATE_CLOSED: "closed", ENDED_BY_PAIN: "pain"}
"""The final states, and what the run's ending is called."""

BEGIN, ANSWER, SKIP, RETURNED = "begin", "answer", "skip", "returned"
"""What leads on: a run begins, a question is answered or skipped, a flow that was run has ended."""

ONWARD: Final = (BEGIN, ANSWER, SKIP, RETURNED)
BACK, AGAIN, HELP, PAIN, STOP, INTERRUPTED, RESUMED = "back", "again", "help", "pain", "stop", "interrupted", "resumed"
"""What every question answers. ``STOP`` puts the run aside, by the person's word or because they began another flow;
``INTERRUPTED`` only lets something else come first; after both, and after pain, it is ``RESUMED``."""

AT_QUESTION = fact("here.at")
"""The question at which a run was paused."""

LAST_ANSWERED = fact("here.last")
"""The question answered or skipped last in this run."""

ENDED = fact("here.ended")
"""The flow that has just ended, while its last answer can still be taken back."""

FALSE_ALARM = fact("here.false_alarm")
"""There where the pain questions brought out that nothing hurt."""


def tried(flow: str) -> str:
    """Return the name of the fact that is there where the gates of this run have let a flow run before it."""
    return f"here.tried_{flow}"


FIRST_QUESTION: Final = "This is the first question here."
NOT_BACK: Final = "What came before this stays as it is."
NOT_SKIPPED: Final = "I need an answer to this one."

Stop = Ask | Run
Stops = Mapping[str, Stop]


@dataclass(frozen=True, slots=True)
class Move:
    """One row: on ``event`` in ``source`` go to ``target``, where ``when`` holds and no row of that event and source above does.

    ``passed``: the steps on the way that only say or note something, each with its own condition. ``first``: the flow that
    a shut gate lets run before this one. ``again``: the timed hold that was broken off; its answer is taken back and the run is
    paused there. ``refused``: why the event changes nothing, to be said.
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
        """The question that a run must have been paused at, or "" where it may be any."""
        return next((str(compare.bound[0]) for compare in self.when.compares()
                     if compare.fact == AT_QUESTION.name and isinstance(compare.bound, tuple)), "")


def body_works(flow: Flow) -> bool:
    """True if the body is at work anywhere in a flow."""
    return any(isinstance(step, Ask) and step.caution for step in flow.steps)


def stops_of(flow: Flow) -> dict[str, Stop]:
    """Return the steps at which a flow waits, by state. Raises ValueError where a state is there twice or a jump leads nowhere."""
    stops: dict[str, Stop] = {}
    for step in flow.steps:
        if isinstance(step, Ask | Run):
            if step.key in stops or step.key in (START, PAUSED, IN_PAIN, *ENDINGS):
                raise ValueError(f"{flow.name}: the state {step.key} is there twice")
            stops[step.key] = step
    for stop in stops.values():
        for jump in stop.then if isinstance(stop, Ask) else ():
            if jump.to not in stops and jump.to != END:
                raise ValueError(f"{flow.name}: {stop.key} jumps to {jump.to}, which is not there")
    return stops


def onward(flow: Flow) -> dict[str, list[Move]]:
    """Return what may follow each state once it is answered (event ""), in the order to try; the last always holds."""
    places = {START: -1} | {step.key: at for at, step in enumerate(flow.steps) if isinstance(step, Ask | Run)}
    found: dict[str, list[Move]] = {}
    for source, at in places.items():
        step = flow.steps[at] if at >= 0 else None
        jumps = [Move("", source, EARLY_END if jump.to == END else jump.to, jump.when, _said(jump))
                 for jump in (step.then if isinstance(step, Ask) else ())]
        found[source] = [*jumps, *_in_order(flow, source, at)]
    return found


def _said(jump: Jump) -> tuple[Tell, ...]:
    return (Tell(jump.say, must_arrive=jump.must_arrive),) if jump.say else ()


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
    """Return every row of a flow."""
    ways = onward(flow)
    before = answered_before(stops, chain.from_iterable(((move.source, move.target) for move in rows) for rows in ways.values()),
                             [key for key, stop in stops.items() if stop.only_if != ALWAYS] if flow.policy.resumes else ())
    asks = {key: stop for key, stop in stops.items() if isinstance(stop, Ask)}
    holds = [key for key, ask in asks.items() if isinstance(ask.kind, Hold)]
    rows: list[Move] = [*_gates(flow, BEGIN, START), *_as(BEGIN, ways[START])]
    for key, stop in stops.items():
        if isinstance(stop, Run):
            rows += _as(RETURNED, ways[key])
            continue
        rows += _as(ANSWER, ways[key])
        rows += [Move(SKIP, key, key, refused=NOT_SKIPPED)] if stop.safety else _as(SKIP, ways[key])
        rows += _back(stops, stop, before.get(key, frozenset()), _runs_before(key, stops, ways))
        rows += [Move(AGAIN, key, key), Move(INTERRUPTED, key, PAUSED)]
        rows += [Move(STOP, key, PAUSED, LAST_ANSWERED.is_(hold), again=hold) for hold in holds
                 if stop.back and hold in before.get(key, ())]
        rows.append(Move(STOP, key, PAUSED))
        rows += [] if stop.free else [Move(HELP, key, key)]  # to words of one's own, "help" is one of them
        rows += [Move(PAIN, key, IN_PAIN if body_works(flow) else PAUSED)] if flow.policy.hears_pain else []
    if asks:
        rows += _resumed(flow, asks, ways, PAUSED)
        if body_works(flow):
            rows += [Move(RESUMED, IN_PAIN, ENDED_BY_PAIN, ~FALSE_ALARM.known), *_resumed(flow, asks, ways, IN_PAIN)]
    if flow.policy.reopens:
        for end in (END, EARLY_END):
            rows += [Move(BACK, end, key, LAST_ANSWERED.is_(key)) for key in sorted(before.get(end, frozenset()) & asks.keys())]
            rows += [Move(PAIN, end, ENDED_BY_PAIN)] if body_works(flow) and before.get(end) else []
    return tuple(rows)


def _as(event: str, moves: Iterable[Move]) -> list[Move]:
    return [Move(event, move.source, move.target, move.when, move.passed) for move in moves]


def _gates(flow: Flow, event: str, place: str) -> Iterator[Move]:
    for gate in flow.gates:
        if gate.first:
            yield Move(event, place, place, gate.shut & ~fact(tried(gate.first)).known, first=gate.first)
        yield Move(event, place, GATE_CLOSED, gate.shut, (Tell(gate.say),) if gate.say else ())


def _runs_before(key: str, stops: Stops, ways: Mapping[str, list[Move]]) -> list[Run]:
    """Return the runs after which a question may be asked with no other in between; one of what was parked is none."""
    runs = {run: stop for run, stop in stops.items() if isinstance(stop, Run) and stop.flow != PARKED}
    found, waiting = set[str](), [key]
    while waiting:
        target = waiting.pop()
        for run in runs.keys() - found:
            if any(move.target == target for move in ways[run]):
                found.add(run)
                waiting.append(run)
    return [run for name, run in runs.items() if name in found]


def _back(stops: Stops, ask: Ask, before: Collection[str], runs: Iterable[Run]) -> Iterator[Move]:
    """To the question answered last; where nothing is, into the flow that has just ended: it was run or let run first."""
    if ask.back:
        nothing = ~LAST_ANSWERED.known
        yield from (Move(BACK, ask.key, key, LAST_ANSWERED.is_(key)) for key in stops if key in before)
        for run in runs:
            yield Move(BACK, ask.key, run.key, nothing & ENDED.is_(run.flow))
        yield Move(BACK, ask.key, START, nothing & ENDED.known)
    yield Move(BACK, ask.key, ask.key, refused=FIRST_QUESTION if ask.back else NOT_BACK)


def _resumed(flow: Flow, asks: Mapping[str, Ask], ways: Mapping[str, list[Move]], place: str) -> Iterator[Move]:
    """To the same question; where a gate has shut meanwhile, not at all; where its condition holds no more, onward as if skipped."""
    if not flow.policy.resumes:
        yield Move(RESUMED, place, START)
        return
    yield from _gates(flow, RESUMED, place)
    for key, ask in asks.items():
        yield Move(RESUMED, place, key, AT_QUESTION.is_(key) & ask.only_if)
        for move in ways[key] if ask.only_if != ALWAYS else ():
            yield Move(RESUMED, place, move.target, AT_QUESTION.is_(key) & move.when, move.passed)


def answered_before(stops: Stops, arrows: Iterable[tuple[str, str]], lapsing: Collection[str]) -> dict[str, frozenset[str]]:
    """Return the questions that can be the last answered at each state, over these arrows; "" where nothing can.

    A run that ended leaves nothing to take back. A question that lapses (its condition holds no more when it is taken up) is
    passed, and so is a run of what was parked: what was answered before them is answered last after them.
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
