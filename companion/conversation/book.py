"""The catalogue: every flow compiled once, and the words that start each."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Final

from rapidfuzz import fuzz

from companion.conversation.flow import Flow, Gate, Offer, Run, Tell
from companion.conversation.machine import Compiled, compile_flow
from companion.conversation.phrases import normalise

PARKED: Final = "parked"
"""The name under which ``Run`` takes up what was parked last."""

SENTENCE_MOST: Final = 120
"""Characters of a sentence that may start a flow; our choice."""

RESUME: Final = ("go on", "continue", "resume", "carry on")


@dataclass(frozen=True)
class Book:
    """All flows of one bot. ``home`` runs when nothing else does, ``pain`` whenever something hurts."""

    flows: dict[str, Compiled]
    home: str
    pain: str
    commands: dict[str, str] = field(default_factory=dict)
    sentences: tuple[tuple[re.Pattern[str], str], ...] = ()

    def __getitem__(self, name: str) -> Compiled:
        return self.flows[name]

    def command(self, text: str) -> str | None:
        """The flow that a typed command starts, with or without a slash, or None."""
        words = _command_words(text)
        return self.commands.get(f"/{words}" if text.lstrip().startswith("/") else words) or self.commands.get(words)

    def sentence(self, text: str) -> tuple[str, str] | None:
        """The flow that a whole sentence starts, and the part of it that goes with it ("" where it has none); or None."""
        if len(text) > SENTENCE_MOST:
            return None
        said = normalise(text).strip(" .!")
        for pattern, flow in self.sentences:
            if found := pattern.fullmatch(said):
                asked, fits = found.groupdict().get("asked") or "", self.flows[flow].flow.fits
                if not fits or fits(asked):
                    return flow, asked
        return None

    def brings_code(self, text: str) -> bool:
        """Whether a text is a sentence that brings a code, whose letters may spell anything."""
        said = self.sentence(text)
        return said is not None and self.flows[said[0]].flow.by_code

    def near_command(self, text: str) -> str | None:
        """The flow whose longer words a text nearly is, where it is nearest to one flow only; for the menu."""
        words = _command_words(text)
        near = {flow for name, flow in self.commands.items() if len(name) >= 6 and fuzz.ratio(words, name) >= 85}
        return near.pop() if len(near) == 1 else None

    @staticmethod
    def resumes(text: str) -> bool:
        """Whether the words ask to take up what was parked."""
        return _command_words(text) in RESUME


def _command_words(text: str) -> str:
    if len(text) > 60:
        return ""
    return normalise(text).strip(" .!").removeprefix("/").split("@")[0].replace("_", " ").replace("-", " ").strip()


def offers_of(flow: Flow) -> list[Offer]:
    """Every button of a flow that begins another."""
    return [*flow.invites, *(offer for step in flow.steps if isinstance(step, Tell) for offer in step.offers)]


def bind(flows: Iterable[Flow], home: str, pain: str) -> Book:
    """A book from flows. Raises ValueError where two flows share a name or words, or one names a flow that is not there."""
    compiled: dict[str, Compiled] = {}
    commands: dict[str, str] = {}
    for flow in flows:
        if flow.name in compiled:
            raise ValueError(f"two flows are called {flow.name}")
        compiled[flow.name] = compile_flow(flow)
        names = (*((flow.name, flow.title) if flow.by_name else ()), *flow.command)
        for words in {("/" if word.startswith("/") else "") + _command_words(word) for word in names}:
            if words in commands:
                raise ValueError(f"“{words}” starts both {commands[words]} and {flow.name}")
            commands[words] = flow.name
    for one in compiled.values():
        named = [step.flow for step in one.flow.steps if isinstance(step, Run) and step.flow != PARKED]
        named += [gate.first for gate in one.flow.gates if isinstance(gate, Gate) and gate.first]
        named += [offer.flow for offer in offers_of(one.flow)]
        if missing := set(named) - compiled.keys():
            raise ValueError(f"{one.flow.name} runs {', '.join(sorted(missing))}, which is not there")
    sentences = tuple((re.compile(pattern), one.flow.name) for one in compiled.values() for pattern in one.flow.sentences)
    return Book(compiled, home, pain, commands, sentences)
