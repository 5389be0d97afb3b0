"""The draft of one step: the session and the effects so far, and the context for reading a reply.

A draft lives for one step only, so that ``step`` as a whole is pure. The machine decides each move (``fire``); ``moves`` carries it out.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, Final

from companion.conversation.condition import Value
from companion.conversation.effects import Effect, Say
from companion.conversation.flow import Ask, Known
from companion.conversation.kinds import Hold, ReadingContext
from companion.conversation.machine import Compiled
from companion.conversation.registry import Book
from companion.conversation.session import Frame, Session, Stack
from companion.conversation.table import (
    AT_QUESTION,
    BACK,
    BEGIN,
    ENDED,
    GOES_ON,
    HOLD_RUNS,
    IN_PAIN,
    INTERRUPTED,
    LAST_ANSWERED,
    PAUSED,
    RESUMED,
    RETURNED,
    START,
    STOP,
    Move,
    tried,
)
from companion.conversation.wording import render
from companion.language.units import METRIC

_ABOUT_THE_RUN: Final = (BEGIN, BACK, STOP, INTERRUPTED, RESUMED, RETURNED)
"""Events whose moves also depend on facts about the run itself."""


def place(frame: Frame) -> str:
    """Return the machine's state of a run."""
    if frame.paused:
        return IN_PAIN if frame.hurt else PAUSED
    return frame.state or START


@dataclass(slots=True)
class Draft:
    """A session and the effects so far, changed by one event."""

    book: Book
    session: Session
    known: Known
    effects: list[Effect]
    put_right: tuple[str, Frame, tuple[Any, ...]] | None = None
    """A message, the run it was read in, and the answers that it may put right there (``corrections``): asked for several times a step."""
    _worked_out: tuple[Frame, tuple[Stack, ...], dict[str, Value]] | None = None

    @property
    def top(self) -> Frame:
        """The run that is asking."""
        return self.session.top

    @top.setter
    def top(self, frame: Frame) -> None:
        self.session = self.session.with_top(frame)

    @property
    def compiled(self) -> Compiled:
        """The compiled flow of that run."""
        return self.book[self.top.flow]

    @property
    def ask(self) -> Ask:
        """The open question."""
        stop = self.compiled.stops[self.top.state]
        assert isinstance(stop, Ask)
        return stop

    @property
    def units(self) -> str:
        """The person's unit system."""
        return str(self.known.facts.get("welcome.units", METRIC))

    @property
    def asking(self) -> bool:
        """True if a question is open, and does not wait for another flow."""
        return bool(self.session.stack) and not self.top.paused and isinstance(self.compiled.stops.get(self.top.state), Ask)

    @property
    def works(self) -> bool:
        """True if the body is at work: in the open question, or in the timed hold just before it."""
        return bool(self.ask.caution) or self.after_hold

    @property
    def after_hold(self) -> bool:
        """True if the answer before the open question started a timed hold."""
        before = self.compiled.stops.get(self.top.trail[-1]) if self.top.trail else None
        return isinstance(before, Ask) and isinstance(before.kind, Hold)

    @property
    def hold_runs(self) -> bool:
        """True if the hold that the last message started is not over."""
        before = self.compiled.stops.get(self.top.trail[-1]) if self.top.trail else None
        if not self.session.at or not isinstance(before, Ask) or not isinstance(before.kind, Hold) or before.key not in self.top.got:
            return False
        lasts = timedelta(seconds=before.kind.count_in + before.kind.held(self.facts()))
        return self.known.now - datetime.fromisoformat(self.session.at) < lasts

    @property
    def before_moving(self) -> int | None:
        """The place in the stack of the lowest run that still asks for a movement of its own, such as a squat day in which the bar is asked
        about; None where there is none."""
        return next((n for n, one in enumerate(self.session.stack) if one.state and self.book[one.flow].moves_after(one.state)), None)

    @property
    def context(self) -> ReadingContext:
        """The context for reading a reply to the open question."""
        return ReadingContext(self.units, self.known.now, strict=self.ask.safety, facts=self.facts)

    def facts(self, frame: Frame | None = None) -> dict[str, Value]:
        """Return all facts of a run, of the topmost one unless another is given; computed again only after a new answer."""
        frame, parked = frame or self.top, self.session.parked
        if self._worked_out is not None:
            before, beside, facts = self._worked_out
            if frame.got is before.got and frame.fixed is before.fixed and frame.run == before.run and parked is beside:
                return facts
        facts = self.book[frame.flow].facts_of(self.known.facts, frame.fixed, frame.got)
        if parked:
            facts["parked_title"] = self.book[parked[-1][-1].flow].flow.title
        self._worked_out = frame, parked, facts
        return facts

    def log_name(self, ask: Ask) -> str:
        """Return the name of a question's answer in the log."""
        return self.worded(ask.log_as, ask.side) if ask.log_as else ask.key

    def worded(self, template: str, side: str) -> str:
        """Return a template over the run's facts, written out."""
        return render(template, self.facts(), self.known.now, side) if "{" in template else template

    def say(self, text: str, **more: Any) -> None:
        """Add a message."""
        self.effects.append(Say(text, **more))

    # the stack of runs ------------------------------------------------------------------------------------

    def push(self, flow: str, asked: str = "") -> None:
        """Put a flow on top, not begun yet; the run below it waits."""
        runs = self.session.runs + 1
        frame = Frame(flow, self.book[flow].flow.version, str(runs), asked=asked)
        self.session = self.session._replace(stack=(*self.session.stack, frame), runs=runs, aside=None, idle=False, refused=0, told=(),
                                             room=0)

    def known_at_start(self, frame: Frame) -> Known:
        """Return what a run's facts are worked out from as it begins."""
        return replace(self.known, run=frame.run, first_run=frame.first_run or frame.run, asked=frame.asked)

    def unpark(self, flow: str = "", over: bool = False) -> bool:
        """Put the flow parked last, or the parked flow of this name, on top; return False where there is none. ``over``: also where it
        was parked over another, which asked for it."""
        for stack in reversed(self.session.parked):
            if not flow or stack[0].flow == flow or (over and stack[-1].flow == flow):
                rest = tuple(other for other in self.session.parked if other is not stack)
                under = self.session.stack if self.session.stack and not self.session.top.paused else ()
                self.session = self.session._replace(parked=rest, stack=(*under, *stack), aside=None, idle=False)
                return True
        return False

    # what the machine decides -----------------------------------------------------------------------------

    def fire(self, event: str) -> Move:
        """Return the move that the topmost run's machine makes on an event. Changes nothing by itself."""
        facts = self.facts()
        move = self.compiled.fire(event, place(self.top), {**facts, **self._here()} if event in _ABOUT_THE_RUN else facts)
        assert move is not None, f"{self.top.flow}: nothing decides on {event} in {place(self.top)}"
        return move

    def _here(self) -> dict[str, Value]:
        """Return the facts about the run itself that moves depend on."""
        top, last = self.top, self.session.last
        here: dict[str, Value] = {AT_QUESTION.name: top.state}
        here |= {tried(flow): "yes" for flow in top.tried}
        if top.trail:
            here[LAST_ANSWERED.name] = top.trail[-1]
            here |= {HOLD_RUNS.name: "yes"} if self.hold_runs else {}
        if last is not None and last.flow in self.book.flows and self.book[last.flow].fire(BACK, last.state,
                {LAST_ANSWERED.name: last.trail[-1]}):
            here[ENDED.name] = last.flow
        if self.known.facts.get(f"{self.book.pain}.stops") == "no":
            here[GOES_ON.name] = "yes"
        return here
