"""The book: every flow, compiled when it is first needed, and the words that start each."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from rapidfuzz import fuzz

from companion.conversation.cards import AnswerBook
from companion.conversation.condition import Condition, Facts
from companion.conversation.flow import PARKED, Flow, Gate, Offer, Run, Tell
from companion.conversation.machine import Compiled, compile_flow
from companion.language.phrases import normalise
from companion.language.slips import put_right

SENTENCE_MOST: Final = 120
"""Most characters of a sentence that can start a flow; our choice."""

RESUME: Final = ("go on", "continue", "resume", "carry on")

Sentences = tuple[tuple[re.Pattern[str], Flow], ...]


class Flows(Mapping[str, Compiled]):
    """Flows by name, each compiled on first use, which raises ValueError if it can't be (``compile_flow``). ``written``: the flows
    themselves."""

    def __init__(self, written: Mapping[str, Flow]) -> None:
        self.written = written
        self._compiled: dict[str, Compiled] = {}

    def __getitem__(self, name: str) -> Compiled:
        if name not in self._compiled:
            self._compiled[name] = compile_flow(self.written[name])
        return self._compiled[name]

    def __contains__(self, name: object) -> bool:
        return name in self._compiled or name in self.written

    def __iter__(self) -> Iterator[str]:
        return iter(self.written)

    def __len__(self) -> int:
        return len(self.written)


@dataclass(frozen=True)
class Book:
    """All flows of one bot. ``home`` runs when nothing else does, ``pain`` when something hurts; ``link`` takes codes; ``signs`` asks
    about a sign that was heard ("": none is listened for), ``crisis`` runs at thoughts of self-harm. ``instead``: flows that
    replace home while a condition holds. ``answers``: returns those to what people ask back, read on first use. Tables
    over all flows, such as ``commands``, are computed on first use."""

    flows: Flows
    home: str
    pain: str
    link: str = ""
    signs: str = ""
    crisis: str = ""
    instead: tuple[tuple[Condition, str], ...] = ()
    answers: Callable[[], AnswerBook] | None = None

    def first(self, facts: Facts) -> str:
        """Return the flow that runs when nothing else does."""
        return next((flow for when, flow in self.instead if when.holds(facts)), self.home)

    def __getitem__(self, name: str) -> Compiled:
        return self.flows[name]

    @cached_property
    def commands(self) -> Mapping[str, str]:
        """The words that start a flow, with its name. Raises ValueError as ``bind`` does."""
        return _commands(self.flows.written)

    def command(self, text: str) -> str | None:
        """Return the flow that a typed command starts, with or without a slash, or None."""
        words = _command_words(text)
        return self.commands.get(f"/{words}" if text.lstrip().startswith("/") else words) or self.commands.get(words)

    def sentence(self, text: str, facts: Facts | None = None) -> tuple[str, str] | None:
        """Return the flow that a whole sentence starts and the request in it ("" for none), or None. ``facts``: those of the person (None:
        of nobody in particular)."""
        return _said(text, self._sentences, facts)

    def heard_first(self, text: str, facts: Facts) -> tuple[str, str] | None:
        """Return the same for a sentence that counts before pain and signs are looked for in it."""
        return _said(text, self._first, facts)

    def code(self, text: str) -> str | None:
        """Return the code in a sentence that gives one, else None; the letters of a code may spell any word."""
        said = _said(text, self._codes)
        return said and said[1]

    def brings_code(self, text: str) -> bool:
        """True if a text gives a code."""
        return self.code(text) is not None

    @cached_property
    def _sentences(self) -> Sentences:
        return _patterns(self.flows.written.values())

    @cached_property
    def _first(self) -> Sentences:
        return tuple((re.compile(pattern), flow) for flow in self.flows.written.values() for pattern in flow.heard_first)

    @cached_property
    def _codes(self) -> Sentences:
        return _patterns([self.flows.written[self.link]] if self.link else [])

    def near_command(self, text: str) -> str | None:
        """Return the flow whose command a text nearly is, if it is near only one flow's; for the menu. Never pain, which is heard in
        whatever words: "nothing hurts" is near "something hurts"."""
        words = _command_words(text)
        near = {flow for name, flow in self.commands.items() if flow != self.pain and len(name) >= 6 and fuzz.ratio(words, name) >= 85}
        return near.pop() if len(near) == 1 else None

    @staticmethod
    def resumes(text: str) -> bool:
        """True if the words ask to resume the parked flow."""
        return _command_words(text) in RESUME


def _patterns(flows: Iterable[Flow]) -> Sentences:
    return tuple((re.compile(pattern), flow) for flow in flows for pattern in (*flow.heard_first, *flow.sentences))


def _said(text: str, sentences: Sentences, facts: Facts | None = None) -> tuple[str, str] | None:
    """Return the flow whose sentence a text is, and the request in it; or None."""
    if len(text) > SENTENCE_MOST:
        return None
    said = normalise(text).strip(" .!")
    meant = put_right(said)
    return _meant(said, sentences, facts) or (_meant(meant, sentences, facts) if meant != said else None)


def _meant(said: str, sentences: Sentences, facts: Facts | None) -> tuple[str, str] | None:
    for pattern, flow in sentences:
        if found := pattern.fullmatch(said):
            asked = found.groupdict().get("asked") or ""
            if (facts is None or flow.said_by.holds(facts)) and (not flow.fits or flow.fits(asked, facts or {})):
                return flow.name, asked
    return None


def _command_words(text: str) -> str:
    if len(text) > 60:
        return ""
    return normalise(text).strip(" .!").removeprefix("/").split("@")[0].replace("_", " ").replace("-", " ").strip()


def offers_of(flow: Flow) -> list[Offer]:
    """Return all buttons of a flow that begin another."""
    return [*flow.invites, *(offer for step in flow.steps if isinstance(step, Tell) for offer in step.offers)]


def bind(flows: Iterable[Flow], home: str, pain: str, link: str = "") -> Book:
    """Return the book of these flows. Raises ValueError where two flows share a name or words, or one names a missing flow."""
    named: dict[str, Flow] = {}
    for flow in flows:
        if flow.name in named:
            raise ValueError(f"two flows are called {flow.name}")
        named[flow.name] = flow
    book = Book(Flows(named), home, pain, link)
    _ = book.commands
    return book


def _commands(flows: Mapping[str, Flow]) -> Mapping[str, str]:
    commands: dict[str, str] = {}
    for name, flow in flows.items():
        if name != flow.name:
            raise ValueError(f"the flow in {name} is called {flow.name}")
        if missing := _named_in(flow) - flows.keys():
            raise ValueError(f"{name} runs {', '.join(sorted(missing))}, which is not there")
        names = () if flow.command is None else (name, flow.title, *flow.command)
        for words in {("/" if word.startswith("/") else "") + _command_words(word) for word in names}:
            if words in commands:
                raise ValueError(f"“{words}” starts both {commands[words]} and {name}")
            commands[words] = name
    return commands


def _named_in(flow: Flow) -> set[str]:
    """Return the names of the flows that a flow refers to."""
    runs = (step.flow for step in flow.steps if isinstance(step, Run) and step.flow != PARKED)
    gates = (gate.first for gate in flow.gates if isinstance(gate, Gate) and gate.first)
    return {*runs, *gates, *(offer.flow for offer in offers_of(flow))}
