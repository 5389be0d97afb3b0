"""What a coach and a lifter do with each other through the bot: codes, links, looks, acts, notes.

Each effect is checked here when it is carried out, whatever question or button it came from: whether somebody is a coach, and
this lifter's, now. Who asks for somebody who is not theirs hears the same as for somebody who does not exist.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Final

from companion.base.clock import local_date, zone_of
from companion.calendar.preferences import zone_from
from companion.coach.names import called
from companion.conversation.effects import Act, Find, Link, Redeem, Remind, Say, Tap
from companion.conversation.prompt import start_payload
from companion.export.table import plain
from companion.language.units import METRIC, shown
from companion.record import coaching, people
from companion.record.context import known_of
from companion.record.persist import keep
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.levels import words_of
from companion.screening.safety import Level

NOT_YOURS: Final = "No such lifter among yours."
NOT_A_COACH: Final = "That is for coaches."
NAME_MOST: Final = 40
"""Characters of a name in a message; our choice."""
MEDIA: Final = "media:"
"""Before a picture's name: not a drawing of ours, but what somebody sent, by the channel's reference."""
LOOKS_SHOWN: Final = 12
NOT_SAID: Final = "–"
"""What an effect's text has in place of an answer that was skipped."""
LOOK_WORDS: Final = {"agreed": "you agreed", "withdrawn": "you ended it", "caseload": "your line in their list"}
AS_COMPUTED: Final = "as_computed"
"""A coach's ruling that takes back an earlier one."""

PINNED: Final = {"pin_depth": "depth.pin", "pin_load": "load.pin", "drill": "drill.pin"}
WORDS: Final = {"pin_depth": "the depth to keep", "pin_load": "the most load", "drill": "the drill", "retest": "the day to test again",
                "overrule": "a finding", "ask_for": "a request", "reviewed": "reviewed", "unreviewed": "review taken back"}


@dataclass(frozen=True, slots=True)
class Letter:
    """A message to a person. ``about``: the lifter it speaks of, when it goes to somebody else; ``fleeting``: it tells a code."""

    to: int
    say: Say
    about: int | None = None
    fleeting: bool = False


def named(db: sqlite3.Connection, person: int) -> str:
    """A person's name, made plain and short."""
    return plain(people.name_of(db, person))[:NAME_MOST].strip() or "somebody"


def seen(db: sqlite3.Connection, coach: int, of: str, what: str, now: datetime) -> int | None:
    """The lifter that a coach may look at, the look noted; None for anybody else."""
    lifter = _number(of.partition("-")[0])
    if not coaching.sees(db, coach, lifter):
        return None
    coaching.note_look(db, lifter, coach, what, now)
    return lifter


def _number(text: str) -> int:
    return int(text) if text.isdecimal() and len(text) < 16 else 0


def button(label: str, flow: str, asked: object = "") -> tuple[Tap, ...]:
    """One row of one button."""
    return (Tap(label, start_payload(flow, str(asked))),)


# codes and links --------------------------------------------------------------------------------------------


def redeem(db: sqlite3.Connection, person: int, effect: Redeem, now: datetime) -> list[Letter]:
    """Look a code up; what it is good for becomes facts for the question that follows."""
    found = coaching.open_invitation(db, effect.code, now) if coaching.may_try(db, person, now) else None
    status, who = "unknown", ""
    if not coaching.may_try(db, person, now):
        status = "slowed"
    elif found is None:
        coaching.note_try(db, person, now)
    elif found.made_by == person:
        status = "own"
    elif found.made_by is None:
        status, who = "coach", plain(found.name)[:NAME_MOST]
    else:
        status, who = "lifter", plain(coaching.coach_name(db, found.made_by) or "")[:NAME_MOST]
    number = str(found.id) if found and status in ("coach", "lifter") else ""
    told = {"status": status, "who": who, "invitation": number}
    _keep(db, person, [Find(f"link.{name}", value, "a code") for name, value in told.items()], now)
    return []


def link(db: sqlite3.Connection, person: int, effect: Link, now: datetime) -> list[Letter]:
    """Agree to what the code was for, or end a coach's view."""
    if effect.what == "withdraw":
        coach = _number(effect.of)
        name = coaching.coach_name(db, coach) or "That coach"
        done = coaching.withdraw(db, person, coach, now)
        said = Letter(person, Say(f"{plain(name)[:NAME_MOST]} sees nothing of you from now on. What the bot had sent before stays in "
                                  "their chat." if done else "That coach sees nothing of you already.", must_arrive=True))
        who = called(db, coach, person)
        told = [Letter(coach, Say(f"{who} has ended your view of their answers.", (button("My lifters", "caseload"),)), about=person)
                ] if done else []
        return [said, *told]
    invitation = coaching.invitation(db, _number(str(known_of(db, person, now).facts.get("link.invitation", ""))), now)
    if invitation is None or not coaching.use(db, invitation.id, person, now):
        return [Letter(person, Say("That code has run out meanwhile. Ask for a new one."))]
    if invitation.made_by is None:
        coaching.make_coach(db, person, plain(invitation.name)[:NAME_MOST], now)
        rows = (button("Invite a lifter", "invite_lifter"), button("Digest", "digest"))
        return [Letter(person, Say("You are a coach here. “Invite a lifter” makes a code for one; “my lifters” shows who needs "
                                   "you.", rows))]
    coaching.link(db, person, invitation.made_by, now)
    theirs_called = called(db, invitation.made_by, person)
    rows = (button(f"See {theirs_called}"[:32], "lifter", person), button("My lifters", "caseload"))
    name = plain(coaching.coach_name(db, invitation.made_by) or "")[:NAME_MOST]
    mine = Say(f"{name} is your coach here now. “My coaches” shows what was looked at, and ends it.",
               (button("My coaches", "my_coaches"),), must_arrive=True)
    whom = plain(invitation.name)[:NAME_MOST].strip()
    code = f" (your code for {whom})" if whom and whom.casefold() != named(db, person).casefold() else ""
    theirs = Say(f"{theirs_called} has agreed{code}: you see their answers now.", rows)
    return [Letter(person, mine), Letter(invitation.made_by, theirs, about=person)]


def my_coaches(db: sqlite3.Connection, person: int, now: datetime) -> list[Letter]:
    """A lifter's coaches, what they looked at and did, and a button to end each view."""
    coaches = coaching.coaches_of(db, person)
    zone = zone_from(known_of(db, person, now).facts, now)
    looks = coaching.looks_at(db, person, LOOKS_SHOWN + 1)
    lines = [f"{_when(at, zone)}: {plain(name)[:NAME_MOST]}, {LOOK_WORDS.get(what, what)}" for at, name, what in looks[:LOOKS_SHOWN]]
    if len(looks) > LOOKS_SHOWN:
        lines.append("The older ones are in the copy under “my data”.")
    acts = [f"{_when(at, zone)}: {plain(name)[:NAME_MOST]}, {WORDS.get(what, what)}: {plain(value)[:60].replace('_', ' ')}"
            f"{f' ({plain(reason)[:80]})' if reason else ''}"
            for at, name, what, value, reason in coaching.acts_for(db, person, LOOKS_SHOWN)]
    text = "Your coaches: " + ", ".join(plain(name)[:NAME_MOST] for _, name in coaches) + "." if coaches else "No coach sees your answers."
    rows = tuple(button(f"End {plain(name)[:16]}'s view"[:32], "leave_coach", coach) for coach, name in coaches)
    says = [Say(text, (*rows, *(button("Write to my coach", "note_to_coach", coaches[0][0]) for _ in coaches[:1])))]
    if lines:
        says.insert(0, Say("What was looked at:\n" + "\n".join(lines)))
    if acts:
        says.insert(0, Say("What your coach did:\n" + "\n".join(acts)))
    return [Letter(person, say) for say in says]


def _when(at: str, zone: str) -> str:
    moment = datetime.fromisoformat(at).astimezone(zone_of(zone))
    return f"{moment:%a} {moment.day} {moment:%b} {moment:%H:%M}"


# acts -------------------------------------------------------------------------------------------------------


def act(db: sqlite3.Connection, person: int, effect: Act, now: datetime, titles: Callable[[str], str], bot: str = "") -> list[Letter]:
    """Carry out an act: of a coach for a lifter, or a lifter's note to a coach. ``titles`` gives a flow's title, "" for none."""
    if effect.what == "reply":
        return _reply(db, person, effect, now)
    if effect.what == "film":
        return _film(db, person, effect)
    name = coaching.coach_name(db, person)
    if name is None:
        return [Letter(person, Say(NOT_A_COACH))]
    if effect.what == "invite":
        return _invite(db, person, effect, now, bot)
    lifter = _number(effect.of)
    if not coaching.sees(db, person, lifter):
        return [Letter(person, Say(NOT_YOURS))]
    effect = replace(effect, reason="" if effect.reason == NOT_SAID else effect.reason)
    if effect.what == "unreviewed":
        effect = replace(effect, value=str(_number(effect.value)))
        if not coaching.stands_reviewed(db, lifter, person, int(effect.value)):
            return [Letter(person, Say("That is taken back already."))]
    noted = coaching.note_act(db, lifter, person, effect.what, effect.value, effect.reason, now)
    who, whom = f"your coach {plain(name)[:NAME_MOST]}", called(db, person, lifter)
    back = (button("Write back", "note_to_coach", person), button("My coaches", "my_coaches"))
    look = (button(f"See {whom}"[:32], "lifter", lifter), button("My lifters", "caseload"))
    because = f" Reason: {plain(effect.reason).rstrip(' .')}." if effect.reason else ""
    done = Letter(person, Say(f"Done for {whom}.", look), about=lifter)
    match effect.what:
        case "note":
            return [Letter(person, Say(f"Sent to {whom}.", look), about=lifter),
                    Letter(lifter, Say(f"From {who}: {plain(effect.value)}", back, must_arrive=True))]
        case "reviewed":
            back_again = button("Take it back", "coach_act", f"{lifter}-unreviewed-{noted}")
            return [Letter(person, Say(f"{whom} is marked as reviewed.", (*look, back_again)), about=lifter)]
        case "unreviewed":
            return [Letter(person, Say(f"Taken back: that review of {whom} no longer counts.", look), about=lifter)]
        case "ask_for":
            flow = effect.value if titles(effect.value) else "film"
            wanted = f"do the {titles(flow).lower()}" if flow != "film" else "send a film of your squat, from the side"
            ask = button(titles(flow) or "Send a film", flow)
            return [done, Letter(lifter, Say(f"{_capital(who)} asks you to {wanted}, when it suits you. Today's safety check comes first "
                                             "where the body works.", (ask, *back)))]
        case "retest":
            zone = zone_from(known_of(db, lifter, now).facts, now)
            _keep(db, lifter, [Remind("retest", "retest", effect.value)], now, zone)
            day = date.fromisoformat(effect.value)
            return [done, Letter(lifter, Say(f"{_capital(who)} has set your retest to {day:%A} {day.day} {day:%B}.", back))]
        case "overrule":
            finding, _, ruling = effect.value.partition(" ")
            if ruling == AS_COMPUTED:
                _keep(db, lifter, [Find(f"overruled.{finding}", "", f"taken back by coach {name}", effect.reason)], now)
                return [done, Letter(lifter, Say(f"{_capital(who)} now goes by what the tests say of {finding}.{because}", back))]
            _keep(db, lifter, [Find(f"overruled.{finding}", ruling, f"overruled by coach {name}", effect.reason)], now)
            otherwise = f"{_capital(who)} sees it otherwise: {finding} is {ruling.replace('_', ' ')}.{because}"
            return [done, Letter(lifter, Say(f"{otherwise} What the tests say stays beside it.", back))]
        case what if what in PINNED:
            _keep(db, lifter, _pins(what, effect, name, local_date(now, zone_from(known_of(db, lifter, now).facts, now))), now)
            facts = known_of(db, lifter, now).facts
            lower = _lower(facts) if what == "pin_load" else ""
            told = Say(f"Done for {whom}.{lower}", look)
            return [Letter(person, told, about=lifter),
                    Letter(lifter, Say(f"{_capital(who)} has set {WORDS[what]}: {_pinned(what, effect.value, facts)}.{because}{lower}",
                                       back))]
    return [Letter(person, Say("I don't know that act."))]


def _pinned(what: str, value: str, facts: Mapping[str, float | str]) -> str:
    """What was pinned, in the lifter's own words and units."""
    if value == "none":
        return "no longer set by hand"
    if what == "pin_load":
        return shown(float(value), "kg", str(facts.get("welcome.units", METRIC)))
    depth = band_of(value) if what == "pin_depth" else None
    return BAND_WORDS[depth] if depth else value.replace("_", " ")


def _lower(facts: Mapping[str, float | str]) -> str:
    """Said where the tests' limit is below the load pinned: the lower one is what squat days go by."""
    limit, pin = (str(facts.get(name, "")) for name in ("load.limit", "load.pin"))
    if not limit or not pin or float(limit) >= float(pin):
        return ""
    return f" The tests say at most {shown(float(limit), 'kg', str(facts.get('welcome.units', METRIC)))}: the lower of the two holds."


def _pins(what: str, effect: Act, name: str, today: date) -> list[Find]:
    value = "" if effect.value == "none" else effect.value
    found = [Find(PINNED[what], value, f"set by coach {name}", effect.reason)]
    if what == "drill" and value:
        found.append(Find("drill", value, f"chosen by coach {name}", effect.reason))
    return [*found, Find("depth.pinned_on", today.isoformat(), f"set by coach {name}")] if what == "pin_depth" else found


def _reply(db: sqlite3.Connection, person: int, effect: Act, now: datetime) -> list[Letter]:
    coaches = [coach for coach, _ in coaching.coaches_of(db, person)]
    wanted = _number(effect.of)
    to = [wanted] if wanted in coaches else coaches
    if not to:
        return [Letter(person, Say("No coach is linked to you here, so there is nobody to tell."))]
    return [Letter(person, Say("Passed on.")),
            *(Letter(coach, Say(f"{called(db, coach, person)} writes: {plain(effect.value)}", _turn_to(db, coach, person),
                                must_arrive=True), about=person) for coach in to)]


def _turn_to(db: sqlite3.Connection, coach: int, lifter: int) -> tuple[tuple[Tap, ...], ...]:
    """Below what a coach hears of a lifter: to write back, and to look."""
    name = called(db, coach, lifter)
    return button(f"Write to {name}"[:32], "coach_note", lifter), button(f"See {name}"[:32], "lifter", lifter)


def _film(db: sqlite3.Connection, person: int, effect: Act) -> list[Letter]:
    """What a lifter sent goes on to their coaches, by the channel's own reference to it."""
    note = "" if effect.reason == NOT_SAID else f": {plain(effect.reason)}"
    return [Letter(coach, Say(f"{called(db, coach, person)} sent a film{note}", _turn_to(db, coach, person),
                              picture=f"{MEDIA}{effect.value}"), about=person) for coach, _ in coaching.coaches_of(db, person)]


def _invite(db: sqlite3.Connection, coach: int, effect: Act, now: datetime, bot: str) -> list[Letter]:
    code = coaching.invite(db, "lifter", coach, plain(effect.value)[:60], now)
    shown = coaching.spaced(code)
    way = f"https://t.me/{bot}?start={code}\nor the words “code {shown}”" if bot else f"“code {shown}”"
    return [Letter(coach, Say(f"For {plain(effect.value)[:60]}: they send me\n{way}\nIt works once, for seven days. They see your "
                              "name, agree or not, and can end it at any time.", must_arrive=True), fleeting=True)]


def alert_letters(db: sqlite3.Connection, lifter: int, because: str, level: str = "") -> list[Letter]:
    """What a lifter's coaches hear at once, with a button to write back. The level comes first, so that it can be read on a locked
    phone."""
    first = f", {words_of(level).coach}" if level not in ("", Level.GO.value) else ""
    return [Letter(coach, Say(f"{called(db, coach, lifter)}{first}: {plain(because)}", _turn_to(db, coach, lifter), must_arrive=True),
                   about=lifter) for coach, _ in coaching.coaches_of(db, lifter)]


def _keep(db: sqlite3.Connection, person: int, effects: Sequence[Find | Remind], now: datetime, zone: str = "UTC+00:00") -> None:
    keep(db, person, effects, now, zone)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
