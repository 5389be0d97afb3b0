"""The flow vocabulary: a conversation as data, in the order a lifter lives it.

A flow is a tuple of steps. ``Ask`` waits for an answer, ``Tell`` says and goes on, ``Run`` lets another flow run and
goes on when it ends, ``Do`` notes an effect. The next step is the next one whose ``only_if`` holds; the few jumps are
rows of ``then``, tried in order before that default. A body is at work in a question that has a ``caution``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, fields, is_dataclass, replace
from datetime import datetime
from typing import Any, Final, TypeVar

from companion.conversation.condition import ALWAYS, Condition, Fact, Facts, Value
from companion.conversation.effects import Act, Alert, Calendar, Erase, Export, Find, Link, Redeem, Remind, Replan, Show, StopReminders
from companion.conversation.kinds import Kind
from companion.conversation.policy import Policy

END: Final = "end"
PARKED: Final = "parked"
"""The name under which ``Run`` takes up what was parked last."""

SIDES: Final = ("left", "right")


@dataclass(frozen=True, slots=True)
class Jump:
    """A way out of the order: to another question, or to the end (END), saying something on the way."""

    when: Condition
    to: str = END
    say: str = ""
    must_arrive: bool = True


@dataclass(frozen=True, slots=True)
class Ask:
    """One question. ``key`` names its state and its answer.

    ``caution``: shown with it; the body is at work. ``safety``: never guessed, never skipped. ``free``: words of the
    lifter's own, in which pain words are asked about once instead of ending the question; ``doubts``: doubtful ones too,
    where the words tell how squats went. ``lets``: flows that may begin over it although its own holds. ``back``
    false: the answers before it stay as they are. ``then``: jumps, tried in order before the default. ``log_as``: the answer's name in the
    log where it is not the state's own; like ``method`` and ``placement`` a template over the facts.
    """

    key: str
    say: str
    kind: Kind
    caution: str = ""
    picture: str = ""
    only_if: Condition = ALWAYS
    safety: bool = False
    free: bool = False
    doubts: bool = False
    lets: tuple[str, ...] = ()
    back: bool = True
    then: tuple[Jump, ...] = ()
    log_as: str = ""
    method: str = ""
    placement: str = ""
    side: str = ""


@dataclass(frozen=True, slots=True)
class Offer:
    """A button that begins a flow. ``asked``: what it is asked for, such as a date; a template over the facts."""

    label: str
    flow: str
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Tell:
    """One message that asks nothing; the conversation goes straight on. ``offers``: buttons below it."""

    say: str
    only_if: Condition = ALWAYS
    must_arrive: bool = True
    picture: str = ""
    side: str = ""
    offers: tuple[Offer, ...] = ()


@dataclass(frozen=True, slots=True)
class Run:
    """Run a sub-flow to completion. ``asked``: what it is begun with, a template over the facts."""

    flow: str
    only_if: Condition = ALWAYS
    asked: str = ""

    @property
    def key(self) -> str:
        """The name of its state; how it ended is the fact of that name ("done", "left", "pain", "closed")."""
        return f"run_{self.flow}"


@dataclass(frozen=True, slots=True)
class Do:
    """An effect whose text fields are templates over the facts."""

    effect: Find | Remind | StopReminders | Alert | Erase | Export | Replan | Calendar | Redeem | Link | Show | Act
    only_if: Condition = ALWAYS
    side: str = ""


Step = Ask | Tell | Run | Do


@dataclass(frozen=True, slots=True)
class Gate:
    """A condition before a flow begins or goes on: while ``shut`` holds it says ``say`` and stays shut, or lets
    ``first`` run before it."""

    shut: Condition
    say: str = ""
    first: str = ""


@dataclass(frozen=True, slots=True)
class Known:
    """The known facts of a lifter when a step is taken: plain facts, the answers so far (read when wanted), the time.

    ``facts`` holds "flow.key" for the latest answer of each question, and the name of each thing concluded. ``run``
    names the run that begins, so that an order drawn for it can be drawn again; ``asked`` is what it was begun with: the
    words of a sentence or what a button carries, which may be anything.
    """

    facts: Facts
    now: datetime
    answers: Callable[[], Sequence[Any]] = field(default=tuple)
    run: str = ""
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Flow:
    """One conversation.

    ``facts`` are worked out whenever they are wanted; ``at_start`` gives facts once, when a run begins, kept with it.
    ``gates`` are tried in order, on what is known and those facts. ``policy``: how it stands among other flows.
    ``command``: words that start it, besides its own name and title; None where only a button, a reminder or another flow
    starts it. ``sentences``: patterns of whole sentences that start it, whose group "asked" goes with it, where ``fits`` takes
    that (none: always); heard only from those of whom ``said_by`` holds. ``invite``: what a reminder to begin it says, with the
    buttons ``invites`` below (none: one that begins it); ``missed``: what is said where the reminder came too late.
    ``parked``: what stopping it says, where that is not the usual. ``compatible``: older versions whose open runs go on in it.
    """

    name: str
    version: int
    title: str
    steps: tuple[Step, ...]
    facts: tuple[Fact, ...] = ()
    needs: tuple[str, ...] = ()
    gates: tuple[Gate, ...] = ()
    at_start: Callable[[Known], Mapping[str, Value]] | None = None
    policy: Policy = Policy.TEST
    command: tuple[str, ...] | None = ()
    sentences: tuple[str, ...] = ()
    fits: Callable[[str], bool] | None = None
    said_by: Condition = ALWAYS
    invite: str = ""
    invites: tuple[Offer, ...] = ()
    missed: str = ""
    parked: str = ""
    compatible: tuple[int, ...] = ()


T = TypeVar("T")


def sided(thing: T, side: str) -> T:
    """The same steps, conditions or facts for one side: every "{side}" in every text becomes its name."""
    if isinstance(thing, str):
        return thing.replace("{side}", side)  # type: ignore[return-value]
    if isinstance(thing, tuple):
        return tuple(sided(part, side) for part in thing)  # type: ignore[return-value]
    if is_dataclass(thing) and not isinstance(thing, type):
        changed = {f.name: sided(getattr(thing, f.name), side) for f in fields(thing) if f.init}
        if "side" in changed and not changed["side"]:
            changed["side"] = side
        return replace(thing, **changed)
    return thing


def each_side(*steps: Step) -> tuple[Step, ...]:
    """The steps once for the left and once for the right, from one definition."""
    return tuple(sided(step, side) for side in SIDES for step in steps)


def both(*facts: Fact) -> tuple[Fact, ...]:
    """Facts once for each side; ``of`` is called with the facts and the side."""
    return tuple(sided(one, side) for side in SIDES for one in facts)
