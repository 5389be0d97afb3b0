"""A conversation in memory, for tests of flows: say and tap, then look at what was said and recorded."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from companion.conversation.condition import Value
from companion.conversation.effects import Effect, Find, Record, Say
from companion.conversation.events import Event, Sent, Settle, Tapped, Typed
from companion.conversation.flow import Ask, Flow, Known, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.number_kinds import PainScore
from companion.conversation.policy import Policy
from companion.conversation.registry import Book, bind, offers_of
from companion.conversation.session import Frame, Session
from companion.conversation.step import step, unsettled

NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)

UNCHECKED: Mapping[str, Value] = {"welcome.zone_right": "yes", "welcome.adult": "yes", "today": "2026-03-02"}
"""What is known of somebody who has been welcomed, and no more."""

CHECKED: Mapping[str, Value] = {**UNCHECKED, "safety.level": "go", "safety.checked": "go", "safety.checked.today": "yes",
                                "safety.may_open": "yes", "warm": "done", "warm.today": "yes"}
"""What is known of somebody who passed today's safety check and warmed up."""

PAIN = Flow("pain", 1, "Pain", policy=replace(Policy.TALK, hears_pain=False), steps=(
    Ask("bad", "How bad?", PainScore(), safety=True), Tell("Noted.")))
"""A stand-in for the pain questions, for tests of one other flow."""


_BOUND: dict[tuple[int, ...], Book] = {}


def small_book(*flows: Flow) -> Book:
    """A book of a few flows, with stand-ins for home, pain, what their gates run first and what they offer; bound and compiled once."""
    those = tuple(map(id, flows))  # which the book keeps, so that no other flow is ever called so
    return _BOUND.get(those) or _BOUND.setdefault(those, _small_book(*flows))


def _small_book(*flows: Flow) -> Book:
    have = {flow.name for flow in flows}
    needed = {gate.first for flow in flows for gate in flow.gates if gate.first}
    needed |= {offer.flow for flow in flows for offer in offers_of(flow)}
    needed |= {one.flow for flow in flows for one in flow.steps
               if isinstance(one, Run) and one.flow in ("limits", "clearance", "about_you")}
    home = Flow("home", 1, "Menu", policy=Policy.TALK, steps=(
        Ask("pick", "What next?", choice(*((flow.name, flow.title) for flow in flows))),
        *(Run(flow.name, only_if=_is(flow.name)) for flow in flows)))
    rest = [home] if "home" not in have else []
    rest += [PAIN] if "pain" not in have else []
    rest += [Flow(name, 1, name, steps=(Ask("ok", "ok?", choice(("ok", "Fine"))),), command=None)
             for name in sorted(needed - have - {"home", "pain"})]
    return bind([*flows, *rest], "home", "pain")


def _is(name: str) -> Any:
    from companion.conversation.condition import fact

    return fact("pick").is_(name)


class Talk:
    """One person talking to one flow: ``Talk(FLOW).say("ready", "11 cm")``; every step is a real engine step."""

    def __init__(self, flow: Flow, known: Mapping[str, Value] = CHECKED, book: Book | None = None,
                 answers: Sequence[Any] = ()) -> None:
        self.book = book or small_book(flow)
        self.known: dict[str, Value] = dict(known)
        self.kept = list(answers)
        self.effects: list[Effect] = []
        self.now = NOW
        self.session = Session(stack=(Frame(flow.name, flow.version, "1"),), runs=1)
        self._settle()

    def say(self, *replies: str) -> Talk:
        """Type replies, one after the other."""
        for reply in replies:
            self.send(Typed(reply))
        return self

    def tap(self, *labels: str) -> Talk:
        """Tap the buttons of these labels on the latest message that has them."""
        for label in labels:
            data = next((tap.data for say in reversed(self.says) for row in say.buttons for tap in row
                         if tap.label == label), None)
            assert data, f"no button “{label}” on: {self.says[-1]}"
            self.send(Tapped(data))
        return self

    def photo(self) -> Talk:
        """Send a photo."""
        self.send(Sent("photo", "photo-1"))
        return self

    def send(self, event: Event) -> None:
        """Any event."""
        self._take(step(self.book, self.session, event, self._known()))
        self._settle()

    def _known(self) -> Known:
        return Known(self.known, self.now, lambda: self.kept)

    def _settle(self) -> None:
        while unsettled(self.session):
            self._take(step(self.book, self.session, Settle(), self._known()))

    def _take(self, taken: Any) -> None:
        self.session = taken.session
        self.effects += taken.effects
        for effect in taken.effects:
            if isinstance(effect, Find):
                self.known[effect.name] = effect.value
                self.known[f"{effect.name}.today"] = "yes"

    @property
    def says(self) -> list[Say]:
        """All messages so far."""
        return [effect for effect in self.effects if isinstance(effect, Say)]

    @property
    def last(self) -> str:
        """The text of the latest message."""
        return self.says[-1].text

    @property
    def state(self) -> str:
        """"flow.state" of the question that waits, or "" when nothing does."""
        return f"{self.session.top.flow}.{self.session.top.state}" if self.session.stack else ""

    @property
    def answers(self) -> dict[str, Value | None]:
        """The latest value recorded for each key."""
        return {effect.key: effect.value for effect in self.effects if isinstance(effect, Record)}

    @property
    def found(self) -> dict[str, str]:
        """The latest of each finding."""
        return {effect.name: effect.value for effect in self.effects if isinstance(effect, Find)}
