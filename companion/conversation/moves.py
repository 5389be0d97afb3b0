"""The moves a conversation is made of: begin, ask, answer, end, park, interrupt. Each changes one turn's draft.

A draft is a session and the effects so far; it lives for one step only, so that ``step`` as a whole is pure.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from companion.conversation.condition import Value
from companion.conversation.effects import Began, Effect, Ended, Record, Reopened, Say
from companion.conversation.flow import EARLY_END, END, Ask, Do, Known, Tell
from companion.conversation.kinds import Answer, Ears, Hold, Option
from companion.conversation.machine import START, Arrow, Compiled
from companion.conversation.prompt import aside_say, body_works, offered, progress, prompt, stop_button
from companion.conversation.registry import PARKED, Book
from companion.conversation.session import Aside, Frame, Session, Stack
from companion.conversation.wording import render
from companion.language.units import METRIC, shown

SAID_MOST = 80
"""Characters of a reply about pain that are quoted back; our choice."""

ASKED_MOST = 120
"""Characters kept of what a flow was begun with; our choice."""

PARKED_MOST = 5
"""How many parked tests are kept per person; our choice. Older ones are given up, their answers stay in the log."""


@dataclass(slots=True)
class Draft:
    """One step in the making."""

    book: Book
    session: Session
    known: Known
    effects: list[Effect]
    _worked_out: tuple[Frame, tuple[Stack, ...], dict[str, Value]] | None = None

    # what stands ------------------------------------------------------------------------------------------

    @property
    def top(self) -> Frame:
        return self.session.top

    @property
    def compiled(self) -> Compiled:
        return self.book[self.top.flow]

    @property
    def ask(self) -> Ask:
        """The question that waits for an answer."""
        stop = self.compiled.stops[self.top.state]
        assert isinstance(stop, Ask)
        return stop

    @property
    def units(self) -> str:
        return str(self.known.facts.get("welcome.units", METRIC))

    @property
    def works(self) -> bool:
        """Whether the body is at work: in the waiting question, or in the timed hold just before it."""
        return bool(self.ask.caution) or self.after_hold

    @property
    def after_hold(self) -> bool:
        """Whether the answer before the waiting question started a timed hold."""
        before = self.compiled.stops.get(self.top.trail[-1]) if self.top.trail else None
        return isinstance(before, Ask) and isinstance(before.kind, Hold)

    @property
    def ears(self) -> Ears:
        """How this question is to be read."""
        return Ears(self.units, self.known.now, strict=self.ask.safety, facts=self.facts)

    def facts(self, frame: Frame | None = None) -> dict[str, Value]:
        """What may be named in a frame's run, the topmost one's unless another is given; worked out anew only where an answer came."""
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

    def say(self, text: str, **more: Any) -> None:
        self.effects.append(Say(text, **more))

    def ask_again(self, before: str = "") -> None:
        """Show the waiting question, with a line in front."""
        if self.session.aside:
            self.show_aside(before)
        elif self.session.stack:
            self.effects.append(prompt(self.compiled, self.top, self.facts(), self.known.now, before))
        elif before:
            self.say(before)

    # begin and end ----------------------------------------------------------------------------------------

    def push(self, flow: str, asked: str = "") -> None:
        """Put a flow on top, not begun yet; what is under it waits."""
        runs = self.session.runs + 1
        frame = Frame(flow, self.book[flow].flow.version, str(runs), asked=asked)
        self.session = self.session._replace(stack=(*self.session.stack, frame), runs=runs, aside=None, idle=False)

    def push_again(self) -> None:
        """Give up the topmost run and begin its flow anew."""
        before = self.top
        beside = {name: value for name, value in before.got.items() if name not in self.compiled.stops}  # no answers
        self.effects.append(Ended(before.run, "left"))
        self.session = self.session._replace(stack=self.session.stack[:-1], last=None)
        self.push(before.flow, before.asked)
        self.session = self.session.with_top(self.top._replace(got=beside))

    def begin(self) -> None:
        """Begin the topmost flow, or what its gates want first, or leave it shut."""
        flow = self.compiled.flow
        fixed = flow.at_start(replace(self.known, run=self.top.run, asked=self.top.asked)) if flow.at_start else {}
        self.session = self.session.with_top(self.top._replace(fixed=dict(fixed)))
        if self._shut():
            return
        self.session = self.session.with_top(self.top._replace(tried=()))
        self.effects.append(Began(self.top.run, flow.name, flow.version, self.top.asked[:ASKED_MOST]))
        self._follow(self.compiled.onward(START, self.facts()))

    def _shut(self, ending: str = "closed") -> bool:
        facts = self.facts()
        for gate in self.compiled.flow.gates:
            if gate.shut.holds(facts):
                if gate.first and gate.first not in self.top.tried:
                    self.session = self.session.with_top(self.top._replace(tried=(*self.top.tried, gate.first)))
                    if not self.unpark(gate.first):
                        self.push(gate.first)
                else:
                    if gate.say:
                        self.say(render(gate.say, facts, self.known.now))
                    self.end(ending)
                return True
        return False

    def take_up(self) -> None:
        """Go on with a flow that waited under another, unless it was hurt in or its gates have shut meanwhile. What was answered
        before counts where the pain turned out not to be of it."""
        if self.top.hurt and self.known.facts.get(f"{self.book.pain}.stops") != "no":
            self.end("pain")
        elif not self.compiled.flow.resumes:
            self.push_again()
        elif not self._shut("left" if self.top.hurt else "closed"):
            self.session = self.session.with_top(self.top._replace(paused=False, hurt=False, tried=()))
            facts = self.facts()
            if self.ask.only_if.holds(facts):
                self.ask_again()
            else:  # what was asked about is not open any more
                self._follow(self.compiled.onward(self.top.state, facts, "skip"))

    def end(self, ending: str) -> None:
        """End the topmost run and hand its ending to the flow that ran it, if one did."""
        frame = self.top
        if frame.state:
            self.effects.append(Ended(frame.run, ending))
        under = self.session.stack[:-1]
        if under and under[-1].state == f"run_{frame.flow}":
            got = {**under[-1].got, under[-1].state: ending}
            under = (*under[:-1], under[-1]._replace(got=got, trail=()))
        last = frame if ending == "done" and frame.trail and self.book[frame.flow].flow.reopens else None
        idle = self.session.idle or (not under and self.book[frame.flow].flow.quiet)
        self.session = self.session._replace(stack=under, aside=None, last=last, idle=idle)

    def after_run(self) -> None:
        """Go on from a ``Run`` whose flow has ended."""
        self._follow(self.compiled.onward(self.top.state, self.facts()))

    def _follow(self, arrow: Arrow, after: float = 0) -> None:
        """Take an arrow: say and note what is passed, then ask, run or end."""
        facts = self.facts()
        for step in arrow.passed:
            if step.only_if.holds(facts):
                self._pass(step, facts)
        there = self.top._replace(state=arrow.target)
        self.session = self.session._replace(stack=(*self.session.stack[:-1], there), aside=None)
        if arrow.target in (END, EARLY_END):
            self.end("done")
            return
        stop = self.compiled.stops[arrow.target]
        if isinstance(stop, Ask):
            self.effects.append(prompt(self.compiled, self.top, facts, self.known.now, after=after))
        elif stop.flow != PARKED:
            self.push(stop.flow, render(stop.asked, facts, self.known.now))
        elif self.session.parked:
            self.unpark()

    def _pass(self, step: Tell | Do, facts: dict[str, Value]) -> None:
        if isinstance(step, Tell):
            text = render(step.say, facts, self.known.now, step.side)
            if text.strip():
                self.say(text, must_arrive=step.must_arrive, picture=render(step.picture, facts, self.known.now, step.side),
                         buttons=offered(step.offers, facts, self.known.now))
            return
        written: dict[str, Any] = {
            name: render(value, facts, self.known.now, step.side) if isinstance(value, str) else value
            for name in type(step.effect).__match_args__ for value in (getattr(step.effect, name),)}
        if "run" in written:
            written["run"] = self.top.run
        effect = type(step.effect)(**written)
        if effect not in self.effects:  # what stands between several questions is noted once where they are passed over
            self.effects.append(effect)

    # answer -----------------------------------------------------------------------------------------------

    def answer(self, answer: Answer, sure: bool = False) -> None:
        """Take an answer; a possible but unusual one is asked about once."""
        ask, frame = self.ask, self.top
        if not sure and ask.kind.unusual(answer.value):
            self.session = self.session._replace(aside=Aside("unusual", answer.raw))
            self.show_aside()
            return
        name = self.log_name(ask)
        self._record(ask, name, answer.raw, answer.value, answer.unit)
        self._answered(frame._replace(got={**frame.got, name: answer.value}, trail=(*frame.trail, frame.state)))
        self._follow(self.compiled.onward(frame.state, self.facts()), self._hold(ask))

    def _answered(self, frame: Frame) -> None:
        self.session = self.session._replace(stack=(*self.session.stack[:-1], frame), last=None)

    def _hold(self, ask: Ask) -> float:
        """Count a timed hold in and out; gives after how many seconds the next question comes."""
        hold = ask.kind
        if not isinstance(hold, Hold):
            return 0
        facts = self.facts()
        seconds = float(hold.seconds if isinstance(hold.seconds, int) else facts.get(hold.seconds, 0))
        words = {**facts, "seconds": seconds}
        over = hold.count_in + seconds
        stop = stop_button(self.compiled.flow, ask.key)
        if hold.count_in:
            self.say(f"Get into place. It starts in {hold.count_in} seconds.", buttons=stop)
        self.say(render(hold.go, words, self.known.now, ask.side), after=hold.count_in, buttons=stop)
        self.say(render(hold.over, words, self.known.now, ask.side), after=over)
        return over + 1

    def skip(self) -> None:
        """Go on without an answer; a safety question is not skipped."""
        ask, frame = self.ask, self.top
        if ask.safety:
            self.ask_again("I need an answer to this one.")
            return
        name = self.log_name(ask)
        self._record(ask, name, "", None, status="skipped")
        got = {key: value for key, value in frame.got.items() if key != name}
        self._answered(frame._replace(got=got, trail=(*frame.trail, frame.state)))
        self._follow(self.compiled.onward(frame.state, self.facts(), "skip"))

    def back(self) -> None:
        """Take the last answer back and ask its question again."""
        if self.take_back():
            self.ask_again("Back one.")
        else:
            self.ask_again("This is the first question here." if self.ask.back else "What came before this stays as it is.")

    def take_back(self) -> bool:
        """Return to the question answered last, its answer withdrawn; False where there is none to return to."""
        if self.top.state in self.compiled.stops and not self.ask.back:
            return False
        if not self.top.trail and not self._reopen():
            return False
        frame = self.top
        state = frame.trail[-1]
        ask = self.compiled.stops[state]
        assert isinstance(ask, Ask)
        self.session = self.session.with_top(frame._replace(state=state, trail=frame.trail[:-1]))
        name = self.log_name(ask)
        self._record(ask, name, "", None, status="withdrawn")
        got = {key: value for key, value in frame.got.items() if key != name}
        self.session = self.session.with_top(self.top._replace(got=got))
        return True

    def _reopen(self) -> bool:
        """Take up the run that has just ended, where nothing was answered since."""
        last = self.session.last
        if last is None or last.flow not in self.book.flows or not self.session.stack:
            return False
        key, waits = f"run_{last.flow}", self.top
        stops = self.book[waits.flow].stops
        got = {name: value for name, value in waits.got.items() if name != key}
        back = waits._replace(state=key if key in stops else "", got=got, tried=tuple(t for t in waits.tried if t != last.flow))
        self.effects.append(Reopened(last.run))
        self.session = self.session._replace(stack=(*self.session.stack[:-1], back, last), last=None, aside=None)
        return True

    def log_name(self, ask: Ask) -> str:
        """The name an answer has in the log."""
        return self._worded(ask.log_as, ask.side) if ask.log_as else ask.key

    def _worded(self, template: str, side: str) -> str:
        return render(template, self.facts(), self.known.now, side) if "{" in template else template

    def _record(self, ask: Ask, name: str, raw: str, value: Value | None, unit: str = "", status: str = "ok") -> None:
        flow = self.compiled.flow
        self.effects.append(Record(self.top.run, flow.name, flow.version, name, ask.side, raw, value, unit, status,
                                   self._worded(ask.method, ask.side), self._worded(ask.placement, ask.side)))

    # interrupt --------------------------------------------------------------------------------------------

    def hurt(self, text: str) -> None:
        """Something hurts: keep the reply in progress unscored, stop the test, ask about the pain, which is told what it was in."""
        stack, last = self.session.stack, self.session.last
        works = bool(stack) and body_works(self.compiled.flow)
        hurt_in = self.top.flow if works else ""
        if stack:
            if self.top.state in self.compiled.stops and text:
                self._record(self.ask, self.log_name(self.ask), text, None, status="in_pain")
            self.session = self.session.with_top(self.top._replace(paused=True, hurt=works))
        if last and not works and body_works(self.book[last.flow].flow):  # told just after a test: it was in that test
            self.effects.append(Ended(last.run, "pain"))
            hurt_in = last.flow
        self.session = self.session._replace(last=None)
        self.push(self.book.pain)
        told = {"said": text[:SAID_MOST], "hurt_in": hurt_in}
        self.session = self.session.with_top(self.top._replace(got={name: value for name, value in told.items() if value}))

    def aside(self, about: str, text: str = "") -> None:
        """Ask a short yes-or-no question in between."""
        self.session = self.session._replace(aside=Aside(about, text))
        self.show_aside()

    def show_aside(self, before: str = "") -> None:
        aside, flow = self.session.aside, self.compiled.flow if self.session.stack else self.book[self.book.home].flow
        assert aside is not None
        state = self.top.state if self.session.stack else ""
        text = "Did something hurt?"
        if aside.about == "unusual":
            text = f"{self.unusual_value(aside.text)} would be unusual. Is it right?"
        elif aside.about == "return":
            text = f"You were in the middle of something: {progress(self.compiled, self.top, self.facts())}. Shall we go on?"
        self.effects.append(aside_say(flow, state, f"{before}\n\n{text}" if before else text, self.aside_options()))

    def aside_options(self) -> tuple[Option, ...]:
        """The answers to the short question in between."""
        assert self.session.aside is not None
        match self.session.aside.about:
            case "unusual":
                return (Option("yes", f"Yes, {self.unusual_value(self.session.aside.text)}", ("yes",)), Option("no", "No"))
            case "return":
                return (Option("go_on", "Go on", ("yes", "continue", "resume", "carry on", "ok")),
                        Option("again", "Start this again", ("again", "start again", "restart", "start over")),
                        Option("leave", "Leave it", ("leave", "stop", "no", "not now")))
            case _:
                return (Option("yes", "Yes, it hurt", ("yes", "it hurt")), Option("no", "No", ("nothing", "nothing hurt")),
                        Option("unsure", "Not sure", ("not sure", "maybe", "unsure", "don't know")))

    def unusual_value(self, text: str) -> str:
        """The number a reply held, as the lifter's own system writes it."""
        read = self.ask.kind.read(text, self.ears)
        return shown(read.value, read.unit, self.units) if isinstance(read, Answer) and not isinstance(
            read.value, str) else text

    def park(self, before: str = "") -> None:
        """Put what is running aside; its answers are kept."""
        if self.session.stack and self.after_hold:
            self.take_back()  # a hold that was not held to its end is held again
        stack = tuple(frame for frame in self.session.stack if frame.flow != self.book.home)
        if stack:
            flow = self.book[stack[-1].flow].flow
            title = flow.title
            kept = (*self.session.parked, (*stack[:-1], stack[-1]._replace(paused=True)))
            for gone in kept[:-PARKED_MOST]:
                self.effects.extend(Ended(frame.run, "left") for frame in gone if frame.state)
            self.session = self.session._replace(parked=kept[-PARKED_MOST:])
            before = before or flow.parked or (
                f"Stopped, and your answers are kept. Say “go on” to pick up {title}, or “menu” for the rest.")
        self.session = self.session._replace(stack=(), aside=None, idle=True)
        self.say(before or "Nothing is running. Say “menu” to see what there is.")

    def unpark(self, flow: str = "") -> bool:
        """Take up what was parked last, or the parked flow of this name; False where there is none."""
        for stack in reversed(self.session.parked):
            if not flow or stack[0].flow == flow:
                rest = tuple(other for other in self.session.parked if other is not stack)
                under = self.session.stack if self.session.stack and not self.session.top.paused else ()
                self.session = self.session._replace(parked=rest, stack=(*under, *stack), aside=None, idle=False)
                return True
        return False
