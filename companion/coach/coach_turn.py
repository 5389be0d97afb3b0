"""A permitted act of a coach: whose it is, for whom, and the messages about it to both."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from companion.base.clock import local_date
from companion.coach.letters import NOT_YOURS, Letter, Rows, button, button_number, short
from companion.coach.names import display_name
from companion.conversation.effects import Act, Say, Tap
from companion.export.table import plain
from companion.language.units import METRIC
from companion.record import coaching, log
from companion.record.context import standing_now
from companion.record.turn import Turn
from companion.screening.coach_acts import COACH_ACTS, HOLDS_DAYS, ROLES, CoachAct

NOT_A_COACH: Final = "Only coaches can do that."
SENT_FIRST: Final = "But being seen comes first: nothing of it opens before."
OPEN_FIRST: Final = "But what I asked you comes first: say “go on”."
LIMIT_HOLDS: Final = "What you were told to leave out still holds."
"""Said to a lifter beside what a coach sets or asks for, where that can't begin, or not all of it."""
PAUSED_FIRST: Final = ("reminders are paused for them now, so nothing about squats, tests or drills goes out. Nothing has changed. A note "
                       "reaches them.")
"""Said to a coach while a lifter was asked about harming themselves, or has not begun again since: it says no more than their page."""
NOT_SAID: Final = "–"
"""Text that stands for a skipped answer in an effect."""

ActHandler = Callable[[Turn, Act], list[Letter]]


@dataclass(frozen=True, slots=True)
class CoachTurn:
    """A permitted act of a coach. ``turn`` is the coach's turn, ``lifter`` the lifter's own; ``coach`` and ``whom`` are the names of
    the two."""

    turn: Turn
    kind: CoachAct
    act: Act
    lifter: Turn
    coach: str
    whom: str

    @property
    def because(self) -> str:
        """The reason as a sentence to follow another; "" where none was given."""
        return f" Reason: {plain(self.act.reason).rstrip(' .')}." if self.act.reason else ""

    @property
    def units(self) -> str:
        """The lifter's units."""
        return str(self.lifter.known.facts.get("welcome.units", METRIC))

    def audit(self) -> int:
        """Add the act to the audit log, which the lifter can read; returns its number."""
        return coaching.audit_act(self.turn.db, self.lifter.person, self.turn.person, self.kind.name, self.act.value, self.act.reason,
                                 self.turn.now, self.until)

    @property
    def until(self) -> str:
        """The day on which an order ends by itself; "" for none. Whoever gives no answer gets the usual time."""
        if not self.kind.ends or self.act.value == "none" or self.act.days == "none":
            return ""
        days = button_number(self.act.days) or HOLDS_DAYS
        return (local_date(self.turn.now, self.lifter.zone) + timedelta(days=days)).isoformat()

    def to_coach(self, text: str, *more: tuple[Tap, ...]) -> Letter:
        """Return the message to the coach, with buttons back to the lifter and ``more`` rows of them."""
        rows = (button(f"See {self.whom}", "lifter", self.lifter.person), button("My lifters", "caseload"), *more)
        return Letter(self.turn.person, Say(text, rows), about=self.lifter.person)

    def to_lifter(self, value: str, template: str = "", first: Rows = (), more: str = "") -> Letter:
        """Return the message to the lifter, in the act's words. ``first``: buttons before those to write back; ``more``: text at the
        end."""
        who = f"{ROLES[coaching.role_of(self.turn.db, self.turn.person) or 'coach'].yours} {short(self.coach)}"
        said = (template or self.kind.told).format(who=who, Who=who[:1].upper() + who[1:], what=self.kind.words, value=value,
                                                   because=self.because)
        back = (button("Write back", "note_to_coach", self.turn.person), button("My coaches", "my_coaches"))
        return Letter(self.lifter.person, Say(said + more, (*first, *back)))


def for_lifter(does: Callable[[CoachTurn], list[Letter]]) -> ActHandler:
    """Return a handler that refuses everybody but the lifter's own coach."""
    def handler(turn: Turn, effect: Act) -> list[Letter]:
        """Check the permission, then carry out the act."""
        name = coaching.coach_name(turn.db, turn.person)
        if name is None:
            return [Letter(turn.person, Say(NOT_A_COACH))]
        lifter = button_number(effect.of)
        if not coaching.sees(turn.db, turn.person, lifter):
            return [Letter(turn.person, Say(NOT_YOURS))]
        said = replace(effect, reason="" if effect.reason == NOT_SAID else effect.reason)
        one = CoachTurn(turn, COACH_ACTS[effect.what], said, turn.of(lifter), name, display_name(turn.db, turn.person, lifter))
        if (role := coaching.role_of(turn.db, turn.person)) not in one.kind.roles:
            may = " or ".join(ROLES[other].one for other in one.kind.roles)
            return [one.to_coach(f"{one.whom}: only {may} can do that, and you are {ROLES[role].one} here. Nothing has changed.")]
        works = one.kind.works and one.act.value != "none"
        if works and log.paused_of(turn.db, lifter):
            return [one.to_coach(f"{one.whom}: {PAUSED_FIRST}")]
        return _before_it(one, does(one)) if works else does(one)
    return handler


def _before_it(one: CoachTurn, letters: list[Letter]) -> list[Letter]:
    """Return the messages of an act that is about squats, tests or drills, with what stands before these: in that to the coach, and in
    that to the lifter. As they are where nothing stands, or nothing was done."""
    stands = standing_now(one.turn.db, one.lifter.person, one.turn.now)
    to_lifter = SENT_FIRST if stands.sent else OPEN_FIRST if stands.pain_open or stands.asked else LIMIT_HOLDS if stands.limits else ""
    if not to_lifter or not any(letter.to == one.lifter.person for letter in letters):
        return letters
    more = {one.turn.person: f" Before that stands: {stands.words.coach}.", one.lifter.person: f" {to_lifter}"}
    return [replace(letter, say=replace(letter.say, text=letter.say.text + more.pop(letter.to, ""))) for letter in letters]
