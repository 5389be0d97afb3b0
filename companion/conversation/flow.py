"""The flow vocabulary: a conversation as data, in the order a lifter lives it.

A flow is a tuple of steps. ``Ask`` waits for an answer, ``Tell`` sends a message and goes on, ``Run`` runs another flow and goes on when it
ends, ``Do`` has an effect. The next step is the next one whose ``only_if`` holds; the few jumps are rows of ``then``, tried in order before
that default. The body is at work in a question that has a ``caution``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, fields, is_dataclass, replace
from datetime import datetime
from typing import Any, Final, TypeVar

from companion.conversation.condition import ALWAYS, Condition, Fact, Facts, Value
from companion.conversation.effects import (
    Act,
    Alert,
    Calendar,
    CountAgain,
    Erase,
    Export,
    Find,
    Link,
    ReadFilm,
    Redeem,
    Remind,
    Replan,
    SendCards,
    Show,
    StopReminders,
    Void,
)
from companion.conversation.kinds import Kind
from companion.conversation.policy import Policy

END: Final = "end"
PARKED: Final = "parked"
"""The name by which ``Run`` resumes the flow parked last."""

SIDES: Final = ("left", "right")


@dataclass(frozen=True, slots=True)
class Jump:
    """A jump out of the order: to another question, or to the end (END). ``say``: a message on the way; ``does``: effects before it."""

    when: Condition
    to: str = END
    say: str = ""
    must_arrive: bool = True
    does: tuple[Do, ...] = ()


@dataclass(frozen=True, slots=True)
class Ask:
    """One question. ``key`` names its state and its answer.

    ``caution``: shown with it, and means that the body is at work. ``safety``: never guessed, never skipped. ``free``: an answer in the
    lifter's own words, where pain words lead to a question and do not end it at once; ``doubts``: doubtful pain words too, where the words
    describe the squats. ``hurts``: answers that say that something hurt; they are taken as if it had been typed.
    ``unread``: what is said before it stands again after anything that is no answer, whatever it may be; each of these once.
    ``signs``: the flags it asks about itself (``language.flags.Flag``); hearing one answers it. ``lets``: flows that may begin over it
    even if its own flow holds.
    ``back``: false if earlier answers can't be changed from here.
    ``amends``: questions before it that a reply here may answer anew ("no, till monday"), or after it ahead, after which this one stands
    again; where that is one of a few answers ("no, I meant my hip"), what was asked since is asked anew.
    ``put_right``: the flow, one that begins over what is open, that runs once an answer to it was put right later, "" for none; it is
    asked about what the run was.
    ``then``: jumps, tried in order before the default. ``log_as``: the answer's name in the log, if not ``key``; a template over
    the facts, like ``method`` and ``placement``.
    """

    key: str
    say: str
    kind: Kind
    caution: str = ""
    picture: str = ""
    only_if: Condition = ALWAYS
    safety: bool = False
    free: bool = False
    unread: tuple[str, ...] = ()
    doubts: bool = False
    hurts: tuple[str, ...] = ()
    signs: tuple[str, ...] = ()
    lets: tuple[str, ...] = ()
    back: bool = True
    amends: tuple[str, ...] = ()
    put_right: str = ""
    then: tuple[Jump, ...] = ()
    log_as: str = ""
    method: str = ""
    placement: str = ""
    side: str = ""


@dataclass(frozen=True, slots=True)
class Offer:
    """A button that begins a flow. ``asked``: the request it begins with, such as a date; a template over the facts. ``also``: other words
    for it while the invitation that has it is the last thing said."""

    label: str
    flow: str
    asked: str = ""
    also: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Tell:
    """One message without a question; the conversation goes on at once. ``offers``: buttons below it. ``waits``: false if it must not
    wait until the person asks for more, where the flow's messages may. ``last``: true if nothing is as important: once its flow has ended,
    what waited for it ends or is parked without a word, and no menu follows."""

    say: str
    only_if: Condition = ALWAYS
    must_arrive: bool = True
    picture: str = ""
    side: str = ""
    offers: tuple[Offer, ...] = ()
    waits: bool = True
    last: bool = False


@dataclass(frozen=True, slots=True)
class Run:
    """Run a sub-flow to completion. ``asked``: the request it begins with; a template over the facts. ``then``: jumps once it has ended,
    such as back to itself, tried in order before the default. ``checks``: true if the gates are looked at again once it has ended, since
    what was told meanwhile (pain, a clinician's limit) may have shut one. ``back``: false if its last answer can't be taken back from
    the question after it."""

    flow: str
    only_if: Condition = ALWAYS
    asked: str = ""
    then: tuple[Jump, ...] = ()
    checks: bool = False
    back: bool = True

    @property
    def key(self) -> str:
        """The name of its state, and of the fact that holds its ending ("done", "left", "pain", "closed")."""
        return f"run_{self.flow}"


@dataclass(frozen=True, slots=True)
class Do:
    """An effect whose text fields are templates over the facts."""

    effect: (Find | Void | CountAgain | Remind | StopReminders | Alert | Erase | Export | Replan | Calendar | Redeem | Link | Show | Act
             | ReadFilm | SendCards)
    only_if: Condition = ALWAYS
    side: str = ""


Step = Ask | Tell | Run | Do


@dataclass(frozen=True, slots=True)
class Gate:
    """A condition before a flow begins or goes on. While ``shut`` holds, the flow does not open: ``say`` is sent, or the flow ``first``
    runs before it. ``throughout``: it is looked at after every sub-flow too, as long as a movement is still to come."""

    shut: Condition
    say: str = ""
    first: str = ""
    throughout: bool = False


@dataclass(frozen=True, slots=True)
class Known:
    """The known facts of a lifter at the time of a step, the answers so far (read on demand), and the time.

    ``facts`` holds "flow.key" for the latest answer to each question, and each finding by its name. ``run``: the name of the run that
    begins, so that a random order drawn for it can be drawn again; ``first_run``: the run it was first begun as, where it begins anew;
    ``asked``: the words or the button's payload it was begun with, unchecked. ``offered``: the data of the buttons below the last
    messages, by their labels in normal form; ``invited``: the data of the first button of each invitation after which nothing else was
    said, the latest first.
    """

    facts: Facts
    now: datetime
    answers: Callable[[], Sequence[Any]] = field(default=tuple)
    run: str = ""
    first_run: str = ""
    asked: str = ""
    offered: Callable[[], Mapping[str, str]] = field(default=dict)
    invited: Callable[[], Sequence[str]] = field(default=tuple)


@dataclass(frozen=True, slots=True)
class Flow:
    """One conversation.

    ``facts``: computed when they are needed; ``at_start``: returns facts once, when a run begins, which are stored with it. ``gates``:
    tried in order, on the known facts and these. ``policy``: its behaviour among other flows. ``command``: words that start it, besides its
    own name and title; None if only a button, a reminder or another flow starts it. ``sentences``: patterns of whole sentences that
    start it, with the group "asked" as the request, if ``fits`` accepts that (None: always), given the person's facts, and ``said_by``
    holds for them; ``heard_first``: those that name no pain and no sign, so that they count before such are looked for, where nothing is
    asked; ``at_rest``: only where nothing but the menu is open, or one of the flows ``over``. ``invite``: the text of a
    reminder that offers it, with the buttons ``invites`` (none: one that begins it); ``missed``: the text if the reminder came too
    late. ``parked``: the reply to stopping it, if not the usual one; a template. ``why``: why its questions are asked, where their
    cards do not say. ``compatible``: older versions whose open runs continue in this one. ``rests_on``: facts of ``at_start``, and
    choices, on which its movements and loads rest; a run that goes on where one of them has changed, or is no longer on offer, begins
    anew. ``adds``: true of words, typed at any of its questions, that count with those it was begun with. ``another``: of the answers and
    such words, the words and the answers with which it runs again after this time, once for each other thing told, such as a second pain.
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
    heard_first: tuple[str, ...] = ()
    fits: Callable[[str, Facts], bool] | None = None
    said_by: Condition = ALWAYS
    at_rest: bool = False
    over: tuple[str, ...] = ()
    invite: str = ""
    invites: tuple[Offer, ...] = ()
    missed: str = ""
    parked: str = ""
    why: str = ""
    compatible: tuple[int, ...] = ()
    rests_on: tuple[str, ...] = ()
    adds: Callable[[str], bool] | None = None
    another: Callable[[Facts, str], tuple[tuple[str, Mapping[str, Value]], ...]] | None = None


T = TypeVar("T")


def sided(thing: T, side: str) -> T:
    """Return the same steps, conditions or facts for one side: "{side}" in every text becomes its name."""
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
    """Return the steps once for the left and once for the right side."""
    return tuple(sided(step, side) for side in SIDES for step in steps)


def both(*facts: Fact) -> tuple[Fact, ...]:
    """Return the facts once for each side; ``of`` is called with the facts and the side."""
    return tuple(sided(one, side) for side in SIDES for one in facts)
