"""Where a person is: a stack of running flows, the topmost one asking, and stacks parked for later.

Frozen and small: it is kept as JSON in the same commit as the answers, and a step makes a new one.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace

from companion.conversation.condition import Value


@dataclass(frozen=True, slots=True)
class Frame:
    """One run of one flow.

    ``state`` is "" before it begins; ``trail`` the questions answered or skipped, in order; ``fixed`` the facts worked
    out when it began; ``asked`` what it was begun with. ``paused`` while another flow runs over its question, ``hurt``
    when pain ended it, ``tried`` the flows its gates have let run before it.
    """

    flow: str
    version: int
    run: str
    state: str = ""
    got: Mapping[str, Value] = field(default_factory=dict)
    fixed: Mapping[str, Value] = field(default_factory=dict)
    trail: tuple[str, ...] = ()
    paused: bool = False
    hurt: bool = False
    tried: tuple[str, ...] = ()
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Aside:
    """A short question in between: "unusual" (is that value right?), "stop" or "ache" (did something hurt?), "return"
    (after hours away: go on, start again, or leave?). ``text`` is the reply it hangs on."""

    about: str
    text: str = ""


Stack = tuple[Frame, ...]


@dataclass(frozen=True, slots=True)
class Session:
    """A person's place in the conversation. Immutable; equal sessions answer the same events alike.

    ``runs`` counts the runs so far, which names them; ``idle`` after a stop, until the person writes again;
    ``last`` the run that has just ended, while its last answer can still be taken back; ``at`` when they last wrote.
    """

    stack: Stack = ()
    parked: tuple[Stack, ...] = ()
    aside: Aside | None = None
    runs: int = 0
    idle: bool = False
    last: Frame | None = None
    at: str = ""

    @property
    def top(self) -> Frame:
        """The flow that is asking."""
        return self.stack[-1]

    def with_top(self, frame: Frame) -> Session:
        """The same with another topmost frame."""
        return replace(self, stack=(*self.stack[:-1], frame))

    def dumps(self) -> str:
        """As JSON text."""
        row = {name: getattr(self, name) for name in _SESSION_FIELDS}  # dataclasses.asdict copies every part, ten times as slow
        row["stack"] = list(map(_row, self.stack))
        row["parked"] = [list(map(_row, stack)) for stack in self.parked]
        row["aside"] = {"about": self.aside.about, "text": self.aside.text} if self.aside else None
        row["last"] = _row(self.last) if self.last else None
        return json.dumps(row, ensure_ascii=False, separators=(",", ":"))

    @staticmethod
    def loads(text: str) -> Session:
        """From ``dumps``' text, also where an older version wrote it."""
        kept = json.loads(text)
        return Session(
            stack=tuple(_frame(row) for row in kept["stack"]),
            parked=tuple(tuple(_frame(row) for row in stack) for stack in kept["parked"]),
            aside=Aside(**kept["aside"]) if kept["aside"] else None,
            runs=kept["runs"],
            idle=kept.get("idle", False),
            last=_frame(kept["last"]) if kept.get("last") else None,
            at=kept.get("at", ""),
        )


_SESSION_FIELDS = tuple(one.name for one in fields(Session))
_FRAME_FIELDS = tuple(one.name for one in fields(Frame))


def _row(frame: Frame) -> dict[str, object]:
    return {name: getattr(frame, name) for name in _FRAME_FIELDS}


def _frame(row: dict[str, object]) -> Frame:
    return Frame(**{**row, "trail": tuple(row["trail"]), "tried": tuple(row.get("tried", ()))})  # type: ignore[arg-type]
