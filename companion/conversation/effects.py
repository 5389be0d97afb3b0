"""Effects: the consequences of a step, as data. Each has one handler (app.dispatch), which runs in the commit of the turn."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Final, Literal, NamedTuple

from companion.conversation.condition import Value

DESCRIBE: Final = "describe "
"""Before a picture's name: the message carries its description in words instead of the picture."""


class Tap(NamedTuple):
    """A button: its label and the payload it sends back, at most 64 bytes."""

    label: str
    data: str


@dataclass(frozen=True, slots=True)
class Say:
    """One message. ``after``: seconds until it is sent; an unsent one is withdrawn by a later turn of the same person. ``must_arrive``:
    false for a courtesy, which is not sent again where it may have arrived. ``page``: it may wait until the person asks for more."""

    text: str
    buttons: tuple[tuple[Tap, ...], ...] = ()
    picture: str = ""
    must_arrive: bool = True
    after: float = 0.0
    page: bool = False


@dataclass(frozen=True, slots=True)
class Began:
    """A run of a flow began. ``asked``: the words or payload it was begun with; ``first_run``: the run it was first begun as, "" if this
    one."""

    run: str
    flow: str
    version: int
    asked: str = ""
    first_run: str = ""


@dataclass(frozen=True, slots=True)
class Ended:
    """A run ended: "done", "left" (parked and given up), or "pain"."""

    run: str
    ending: str


@dataclass(frozen=True, slots=True)
class Reopened:
    """A run that had ended is open again, since its last answer was taken back."""

    run: str


@dataclass(frozen=True, slots=True)
class Record:
    """One row of the answer log. ``status``: ok, skipped, withdrawn (taken back), in_pain (never scored) or no_pain (the pain told
    there was taken back)."""

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


LAST_SESSION: Final = timedelta(hours=24)
"""Age of the answers in which it may have hurt when pain is told late; our choice: an evening's squats are felt the next morning."""


@dataclass(frozen=True, slots=True)
class Void:
    """Void the answers of the last session in these flows (names separated by spaces) as given in pain: a row replaces each, and their
    runs end with pain."""

    flows: str


@dataclass(frozen=True, slots=True)
class CountAgain:
    """Make answers that pain voided since a moment count again, in these flows, or in all if none is named."""

    since: str
    flows: str = ""


@dataclass(frozen=True, slots=True)
class Find:
    """A finding: its name, value, the rule behind it and the reason, in words."""

    name: str
    value: str
    rule: str = ""
    because: str = ""
    run: str = ""


@dataclass(frozen=True, slots=True)
class Remind:
    """Set a reminder that offers a flow on a local date, in place of an open one of the same kind; without a date only cancel that one.
    ``hour``: of the day, None for the usual one; ``that_day``: true if it may not be sent later."""

    kind: str
    flow: str
    date: str
    hour: int | None = None
    that_day: bool = False


@dataclass(frozen=True, slots=True)
class Replan:
    """Plan the reminders again, after a change of their days or times."""


@dataclass(frozen=True, slots=True)
class StopReminders:
    """Cancel every reminder that "stop all reminders" ends."""


@dataclass(frozen=True, slots=True)
class Calendar:
    """Send this person their squat days and reminders as a calendar file."""


@dataclass(frozen=True, slots=True)
class Alert:
    """Alert the lifter's coaches at once, in plain words."""

    level: str
    because: str
    run: str = ""


@dataclass(frozen=True, slots=True)
class Erase:
    """Remove every row of this person."""


@dataclass(frozen=True, slots=True)
class Export:
    """Send this person a copy of everything stored about them."""


@dataclass(frozen=True, slots=True)
class Redeem:
    """Look up a code that was typed or came with a link; the result becomes facts ("link.…")."""

    code: str


@dataclass(frozen=True, slots=True)
class Link:
    """Accept the coach, or the role of coach, of the code looked up last (``what`` "agree"); or end a coach's link ("withdraw", ``of``: the
    coach's number)."""

    what: str
    of: str = ""


@dataclass(frozen=True, slots=True)
class Show:
    """Show a coach a view of a lifter or of their caseload. ``view``: its name; ``of``: the lifter and the page. The handler checks that
    the coach may see it."""

    view: str
    of: str = ""


@dataclass(frozen=True, slots=True)
class Act:
    """A coach's action for a lifter. ``what``: its name; ``of``: the lifter; ``days``: for how many days it holds, "" without an end."""

    what: str
    of: str = ""
    value: str = ""
    reason: str = ""
    days: str = ""


FilmOf = Literal["squats", "shot", "shin", "leg", "fold", "trunk"]


@dataclass(frozen=True, slots=True)
class ReadFilm:
    """Read a film beside the turn; its outcome comes back as ``events.FilmRead``. ``film``: the channel's reference; ``squat``: which film
    of its run it is; ``what`` is in it: squats, a test shot of which only what to mend is told, or the movement of a test."""

    film: str
    squat: str
    run: str = ""
    what: FilmOf = "squats"


@dataclass(frozen=True, slots=True)
class SendCards:
    """Send this person the cards to print for a film that measures. ``paper``: "A4" or "letter"."""

    paper: str


Effect = (Say | Began | Ended | Reopened | Record | Void | CountAgain | Find | Remind | StopReminders | Replan | Calendar | Alert | Erase
          | Export | Redeem | Link | Show | Act | ReadFilm | SendCards)
