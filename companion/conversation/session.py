"""A person's place in the conversation: a stack of running flows, of which the topmost asks, and stacks parked for later.

Frozen and small: stored as JSON in the same commit as the answers; each step makes a new one.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from itertools import takewhile
from typing import Final, NamedTuple

from companion.conversation.condition import Value
from companion.conversation.effects import Tap

_NONE: Final[Mapping[str, Value]] = {}
SAID_AHEAD: Final = "?"
"""Before the state of a question: what was said of it ahead counts only once it is confirmed there."""

_JSON: Final = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"))


class Frame(NamedTuple):
    """One run of one flow.

    ``state``: "" before it begins; ``trail``: the questions answered or skipped, in order; ``fixed``: the facts computed at its start;
    ``asked``: the request it was begun with; ``paused``: true while another flow runs over its question; ``hurt``: true if pain ended it;
    ``tried``: the flows that its gates have run before it; ``noted``: what the person said of questions still to come, by their state; with
    ``SAID_AHEAD`` before it if it is to be confirmed where its movement is done; ``first_run``: the run it was first begun as, "" if
    this one.
    """

    flow: str
    version: int
    run: str
    state: str = ""
    got: Mapping[str, Value] = _NONE
    fixed: Mapping[str, Value] = _NONE
    trail: tuple[str, ...] = ()
    paused: bool = False
    hurt: bool = False
    tried: tuple[str, ...] = ()
    asked: str = ""
    noted: Mapping[str, Value] = _NONE
    first_run: str = ""


class Aside(NamedTuple):
    """A side question: "unusual" (is that value right?), "ache" or, after a stop, "stop" (did something hurt?), "return" (after hours
    away: go on, start again, or leave?), "understood" and "corrected" (is what I understood right?), "wish" (is that wanted?), "which"
    (what is meant?), "whose" (is it the coach's own?).
    ``text``: the reply it is about."""

    about: str
    text: str = ""

    @property
    def if_hurt(self) -> bool:
        """True if it asks whether something hurt; then only an answer to that ends it."""
        return self.about in ("ache", "stop")


class Page(NamedTuple):
    """A message that waits until the person asks for more: its text, picture and buttons."""

    text: str
    picture: str = ""
    buttons: tuple[tuple[Tap, ...], ...] = ()


Stack = tuple[Frame, ...]


class Session(NamedTuple):
    """A person's place in the conversation. Immutable; equal sessions answer the same events alike.

    ``runs``: the number of runs so far, from which runs are named; ``idle``: true after a stop, until the person writes again; ``last``:
    the run that has just ended, while its last answer can still be taken back; ``ended``: when a run last did; ``at``: the time they last
    wrote; ``refused``: how often in a row a reply to the open question was not understood; ``told``: check sums of what was said to
    refuse such; ``room``: the characters that the first of them had, beside the question; ``more``: messages that wait until the person
    asks for more; ``briefly``: true if the open question was asked just before, so that one line will do; ``unread``: the last messages,
    where they came to nothing; ``closing``: true after a message that nothing follows, while what waited ends or is parked;
    ``asks_first``: true if open questions about signs or pain were parked then, which come first once the person writes.
    """

    stack: Stack = ()
    parked: tuple[Stack, ...] = ()
    aside: Aside | None = None
    runs: int = 0
    idle: bool = False
    last: Frame | None = None
    at: str = ""
    refused: int = 0
    told: tuple[int, ...] = ()
    room: int = 0
    more: tuple[Page, ...] = ()
    briefly: bool = False
    ended: str = ""
    unread: tuple[str, ...] = ()
    closing: bool = False
    asks_first: bool = False

    @property
    def top(self) -> Frame:
        """The run that is asking."""
        return self.stack[-1]

    def with_top(self, frame: Frame) -> Session:
        """Return the session with another topmost frame."""
        return self._replace(stack=(*self.stack[:-1], frame))

    def dumps(self) -> str:
        """Return the session as JSON text."""
        row = {**self._asdict(), "stack": [frame._asdict() for frame in self.stack],
               "parked": [[frame._asdict() for frame in stack] for stack in self.parked],
               "aside": self.aside._asdict() if self.aside else None, "last": self.last._asdict() if self.last else None}
        return _JSON.encode(row)

    @staticmethod
    def loads(text: str) -> Session:
        """Return the session from the text of ``dumps``, also from that of an older version."""
        kept = json.loads(text)
        return Session(
            stack=tuple(_frame(row) for row in kept["stack"]),
            parked=tuple(tuple(_frame(row) for row in stack) for stack in kept["parked"]),
            aside=Aside(**kept["aside"]) if kept["aside"] else None,
            runs=kept["runs"],
            idle=kept.get("idle", False),
            last=_frame(kept["last"]) if kept.get("last") else None,
            at=kept.get("at", ""),
            refused=kept.get("refused", 0),
            told=tuple(kept.get("told", ())),
            room=kept.get("room", 0),
            more=tuple(Page(text, picture, tuple(tuple(Tap(*tap) for tap in row) for row in rows))
                       for text, picture, rows in kept.get("more", ())),
            briefly=kept.get("briefly", False),
            ended=kept.get("ended", ""),
            unread=tuple(kept.get("unread", ())),
            closing=kept.get("closing", False),
            asks_first=kept.get("asks_first", False),
        )


def waiting_beneath(stack: Stack) -> Stack:
    """Return the runs of the topmost one's flow that follow it, the first first: they were put beneath it, and are not begun."""
    return tuple(takewhile(lambda one: one.flow == stack[-1].flow and not one.state, reversed(stack[:-1])))


def _frame(row: dict[str, object]) -> Frame:
    return Frame(**{**row, "trail": tuple(row["trail"]), "tried": tuple(row.get("tried", ()))})  # type: ignore[arg-type]
