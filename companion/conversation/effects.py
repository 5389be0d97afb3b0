"""Effects: what a step wants done, as data. Each has one handler (app.dispatch), in the commit of the turn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, NamedTuple

from companion.conversation.condition import Value

DESCRIBE: Final = "describe "
"""Before a picture's name: the message carries its description in words instead of the picture."""


class Tap(NamedTuple):
    """A button: what it says and the payload that comes back, at most 64 bytes."""

    label: str
    data: str


@dataclass(frozen=True, slots=True)
class Say:
    """One message. ``after`` seconds it leaves; a later turn of the same person takes a waiting one back."""

    text: str
    buttons: tuple[tuple[Tap, ...], ...] = ()
    picture: str = ""
    must_arrive: bool = False
    after: float = 0.0


@dataclass(frozen=True, slots=True)
class Began:
    """A run of a flow began. ``asked``: what it was begun with."""

    run: str
    flow: str
    version: int
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Ended:
    """A run ended: "done", "left" (parked and given up), or "pain"."""

    run: str
    ending: str


@dataclass(frozen=True, slots=True)
class Reopened:
    """A run that had ended goes on: its last answer is taken back."""

    run: str


@dataclass(frozen=True, slots=True)
class Record:
    """One row of the answer log. ``status``: ok, skipped, withdrawn (taken back) or in_pain (never scored)."""

    run: str
    flow: str
    version: int
    key: str
    side: str
    raw: str
    value: Value | None
    unit: str = ""
    status: str = "ok"
    method: str = ""
    placement: str = ""


@dataclass(frozen=True, slots=True)
class Find:
    """Something concluded: a name, its value, the rule that made it and what it rests on, in words."""

    name: str
    value: str
    rule: str = ""
    because: str = ""
    run: str = ""


@dataclass(frozen=True, slots=True)
class Remind:
    """Offer a flow on a local date; replaces an open reminder of the same kind. Without a date it only takes that away.
    ``that_day``: only on it, not later."""

    kind: str
    flow: str
    date: str
    hour: int = 10
    that_day: bool = False


@dataclass(frozen=True, slots=True)
class Replan:
    """The days or times of the reminders have changed: work out anew when each is due."""


@dataclass(frozen=True, slots=True)
class StopReminders:
    """End every reminder that "stop all reminders" ends."""


@dataclass(frozen=True, slots=True)
class Calendar:
    """Send this person their squat days and reminders as a calendar file."""


@dataclass(frozen=True, slots=True)
class Alert:
    """Tell the coach at once, in plain words."""

    level: str
    because: str
    run: str = ""


@dataclass(frozen=True, slots=True)
class Erase:
    """Remove every row of this person."""


@dataclass(frozen=True, slots=True)
class Export:
    """Send this person everything held about them."""


@dataclass(frozen=True, slots=True)
class Redeem:
    """Look up a code that was typed or came with a link; what it is good for becomes facts ("link.…")."""

    code: str


@dataclass(frozen=True, slots=True)
class Link:
    """A lifter agrees to the coach whose code was redeemed, or takes the role of coach that it gives ("agree"); or a lifter
    ends a coach's view ("withdraw", with the coach's number in ``of``)."""

    what: str
    of: str = ""


@dataclass(frozen=True, slots=True)
class Show:
    """Show a coach something of a lifter, or of all of theirs: ``view`` names it, ``of`` says of whom and which page. Whether
    they may is looked up when it is carried out."""

    view: str
    of: str = ""


@dataclass(frozen=True, slots=True)
class Act:
    """A coach does something for a lifter: ``what``, on whom (``of``), with which value and reason."""

    what: str
    of: str = ""
    value: str = ""
    reason: str = ""


Effect = (Say | Began | Ended | Reopened | Record | Find | Remind | StopReminders | Replan | Calendar | Alert | Erase | Export | Redeem
          | Link | Show | Act)
