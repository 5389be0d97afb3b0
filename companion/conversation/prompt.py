"""Questions as messages: text, caution, progress and buttons; and the payloads of buttons, written and read."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime
from functools import lru_cache
from typing import Final, NamedTuple

from companion.conversation.condition import Facts, Value
from companion.conversation.effects import Say, Tap
from companion.conversation.flow import Ask, Flow, Offer
from companion.conversation.kinds import Choice, Hold, Media, Option, Ready, Words
from companion.conversation.machine import Compiled
from companion.conversation.number_kinds import PainScore
from companion.conversation.policy import Policy
from companion.conversation.progress import left
from companion.conversation.session import SAID_AHEAD, Frame
from companion.conversation.wording import MOST_WORDS, dated, render
from companion.language.passed_on import in_whole_words
from companion.language.units import METRIC, shown

PAYLOAD_BYTES: Final = 64
"""Bot API: callback data is 1 to 64 bytes."""

SKIP, BACK, STOP = "!skip", "!back", "!stop"
NOTED: Final = "noted"
"""The value of the button that confirms what was said ahead of its question."""

NOTED_MOST: Final = 40
"""Most characters of words of one's own on that button; our choice."""

_DATE: Final = re.compile(r"\d{4}-\d\d-\d\d")

ASIDE = "?"


class Payload(NamedTuple):
    """A button's payload: the flow and question it belongs to, and its answer."""

    flow: str
    version: int
    state: str
    value: str

    def __str__(self) -> str:
        return f"{self.flow}.{self.version}.{self.state}.{self.value}"


def read_payload(data: str) -> Payload | None:
    """Return the payload in a text that came back, None if it is not one of ours."""
    parts = data.split(".")
    if len(parts) != 4 or not parts[1].isdecimal() or len(parts[1]) > 6:
        return None
    return Payload(parts[0], int(parts[1]), parts[2], parts[3])


def start_payload(flow: str, asked: str = "") -> str:
    """Return the payload of a button that begins a flow."""
    return f"go.{flow}.{asked}" if asked else f"go.{flow}"


def read_start(data: str) -> tuple[str, str] | None:
    """Return the (flow, request) of a button that begins a flow; None for any other button."""
    go, _, rest = data.partition(".")
    flow, _, asked = rest.partition(".")
    return (flow, asked) if go == "go" and flow else None


def offered(offers: Sequence[Offer], facts: Facts, now: datetime) -> tuple[tuple[Tap, ...], ...]:
    """Return rows of buttons, each of which begins a flow."""
    taps = [Tap(one.label, start_payload(one.flow, render(one.asked, facts, now))) for one in offers]
    return in_rows(taps, 2 if all(len(tap.label) <= 18 for tap in taps) else 1)


def progress(compiled: Compiled, frame: Frame, facts: Facts) -> str:
    """Return the progress line, such as "Knee to wall: at most 5 left", which never grows; whether it is usually fewer is told too."""
    most = left(compiled.ahead, frame, facts)
    if most == 1:
        return f"{compiled.flow.title}: the last one"
    usual = compiled.coming(frame.state, facts) + 1
    fewer = ", often half" if 2 * usual <= most else ", often fewer" if usual < most else ""
    return f"{compiled.flow.title}: at most {most} left{fewer}"


def prompt(compiled: Compiled, frame: Frame, facts: Facts, now: datetime, before: str = "", after: float = 0) -> Say:
    """Return the message that asks a frame's question; ``before``: a line before it."""
    ask = compiled.stops[frame.state]
    assert isinstance(ask, Ask)
    flow = compiled.flow
    lines = [before, render(ask.say, facts, now, ask.side, ask.kind.unit), render(ask.caution, facts, now, ask.side)]
    if ask.caution and (said := frame.noted.get(SAID_AHEAD + frame.state)) is not None:
        lines.append(f"You wrote {_as_said(ask, said, facts)}: it counts once this is done.")
    if flow.policy.counted:
        counted = progress(compiled, frame, facts)
        long = len(" ".join((*lines, counted)).split()) > MOST_WORDS
        lines.append(counted.partition(", ")[0] if long else counted)
    picture = render(ask.picture, facts, now, ask.side)
    return Say("\n\n".join(line for line in lines if line), buttons(flow, ask, frame, facts), picture, after=after)


def in_one_line(compiled: Compiled, frame: Frame, facts: Facts, now: datetime) -> str:
    """Return a question in one line, for where it was asked in full before: its last sentence that asks, or what to tap. A movement keeps
    its caution, and a question about safety or somebody's rights its whole text."""
    ask = compiled.stops[frame.state]
    assert isinstance(ask, Ask)
    whole = render(ask.say, facts, now, ask.side, ask.kind.unit)
    if ask.safety or compiled.flow.policy in (Policy.CONSENT, Policy.RIGHTS):
        return " ".join(filter(None, (whole, render(ask.caution, facts, now, ask.side))))
    said = re.split(r"(?<=[.?!])\s+", whole)
    asking = [at for at, sentence in enumerate(said) if sentence.endswith("?")]
    first = ask.kind.options[0] if ask.kind.options else None
    if asking:
        at = asking[-1]
        line = " ".join(said[max(at - 1, 0):at + 1]) if at and len(said[at].split()) < 4 else said[at]
    elif first is not None and first.value == "ready":
        line = f"Tap “{first.label}” when {'you have done it' if first.label == 'Done' else 'you are ready'}; “again” says how."
    else:
        line = said[-1]
    return " ".join(filter(None, (render(ask.caution, facts, now, ask.side), line)))


def skippable(flow: Flow, ask: Ask) -> bool:
    """True if a question has a button that leaves it out."""
    held = ask.safety or isinstance(ask.kind, Ready | Hold) or (isinstance(ask.kind, Words) and ask.kind.must)
    return (flow.policy.counted or ask.free or isinstance(ask.kind, Media)) and not held


def buttons(flow: Flow, ask: Ask, frame: Frame, facts: Facts) -> tuple[tuple[Tap, ...], ...]:
    """Return rows of buttons: the answers, then skip, back and stop where they apply."""
    answers = tuple((option.label, option.value) for option in ask.kind.options if option.only_if.holds(facts))
    if (noted := frame.noted.get(SAID_AHEAD + frame.state)) is not None:
        answers = ((f"{_as_said(ask, noted, facts)}, as I wrote", NOTED), *answers)
    always = []
    if skippable(flow, ask):
        always.append(("Skip", SKIP))
    if frame.trail and ask.back:
        always.append(("Back", BACK))
    if flow.policy.stops:
        always.append(("Stop", STOP))
    most = 6 if isinstance(ask.kind, PainScore) else 2 if isinstance(ask.kind, Choice) else 3
    return _laid_out(flow.name, flow.version, frame.state, answers, most, tuple(always))


def _as_said(ask: Ask, noted: Value, facts: Facts) -> str:
    if isinstance(noted, str):
        said = f"“{in_whole_words(noted, NOTED_MOST)}”" if ask.free else dated(noted) if _DATE.fullmatch(noted) else noted
        return next((option.label for option in ask.kind.options if option.value == noted), said)
    return shown(noted, ask.kind.unit, str(facts.get("welcome.units", METRIC)))


@lru_cache(1_000)  # the same few hundred, over and over
def _laid_out(flow: str, version: int, state: str, answers: Sequence[tuple[str, str]], most: int,
              always: Sequence[tuple[str, str]]) -> tuple[tuple[Tap, ...], ...]:
    def taps(labelled: Sequence[tuple[str, str]]) -> list[Tap]:
        return [Tap(label, str(Payload(flow, version, state, value))) for label, value in labelled]

    return (*in_rows(taps(answers), _across(most, answers)), *in_rows(taps(always), 3))


def stop_button(flow: Flow, state: str) -> tuple[tuple[Tap, ...], ...]:
    """Return a row with only a stop button, for a message sent while the body is at work."""
    return ((Tap("Stop", str(Payload(flow.name, flow.version, state, STOP))),),)


def _across(most: int, answers: Sequence[tuple[str, str]]) -> int:
    """Return the number of buttons per row, at most the given one: fewer if a label is long."""
    longest = max((len(label) for label, _ in answers), default=0)
    if most == 6:
        return 6
    if most == 2:
        return 1 if longest > 16 else 2
    return 3 if longest <= 10 else 2 if longest <= 18 else 1


def in_rows(taps: Sequence[Tap], across: int) -> tuple[tuple[Tap, ...], ...]:
    """Return buttons split into rows."""
    return tuple(tuple(taps[i:i + across]) for i in range(0, len(taps), across))


def aside_say(flow: Flow, state: str, text: str, options: Sequence[Option]) -> Say:
    """Return a side question as a message, with its buttons."""
    taps = [Tap(one.label, str(Payload(flow.name, flow.version, state + ASIDE, one.value))) for one in options]
    return Say(text, in_rows(taps, 2 if max(len(tap.label) for tap in taps) <= 18 else 1))
