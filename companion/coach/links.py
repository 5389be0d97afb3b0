"""Links between a lifter and a coach: codes, agreeing, ending a link, and the audit log that the lifter can read."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Final

from companion.base.clock import zone_of
from companion.coach.holding import holding
from companion.coach.letters import Letter, button, button_number, short
from companion.coach.names import display_name
from companion.conversation.effects import Find, Link, Redeem, Say
from companion.export.table import plain
from companion.language.passed_on import in_whole_words
from companion.language.units import METRIC, shown
from companion.record import access, coaching, orders, people, persist
from companion.record.thread import private_notes_of, thread_of
from companion.record.turn import Turn
from companion.screening.coach_acts import COACH_ACTS, ROLES

LOOKS_SHOWN: Final = 12
LOOK_WORDS: Final = {"agreed": "you agreed", "withdrawn": "you ended it", "caseload": "you in their list of lifters"}


def redeem(turn: Turn, effect: Redeem) -> None:
    """Look a code up and store the result as facts for the question that follows."""
    db, person, now = turn.db, turn.person, turn.now
    may = coaching.may_try(db, person, now)
    found = coaching.open_invitation(db, effect.code, now) if may else None
    status, who, role = "unknown", "", ROLES["coach"]
    if not may:
        status = "slowed"
    elif found is None:
        coaching.note_try(db, person, now)
    elif found.made_by == person:
        status = "own"
    elif found.made_by is None:
        status, who, role = "coach", short(found.name), ROLES[found.kind]
    else:
        status, who = "lifter", short(coaching.coach_name(db, found.made_by))
        role = ROLES[coaching.role_of(db, found.made_by) or "coach"]
    good_for = str(found.id) if found and status in ("coach", "lifter") else ""
    note_invitation(turn, {"status": status, "who": who, "invitation": good_for, "one": role.one, "yours": role.yours})


def note_invitation(turn: Turn, facts: Mapping[str, str]) -> None:
    """Store who asks to be linked as facts for the question that follows."""
    for name, value in facts.items():
        persist.finding(turn, Find(f"link.{name}", value, "a code"))


def link(turn: Turn, effect: Link) -> list[Letter]:
    """Accept the invitation of the code looked up last, or end a coach's link."""
    invited = button_number(str(turn.known.facts.get("link.invitation", "")))
    turn.changed()
    return _withdraw(turn, button_number(effect.of)) if effect.what == "withdraw" else _agree(turn, invited)


def _withdraw(turn: Turn, coach: int) -> list[Letter]:
    name = short(coaching.coach_name(turn.db, coach)) or "That coach"
    if not coaching.withdraw(turn.db, turn.person, coach, turn.now):
        return [Letter(turn.person, Say("That coach can no longer see your answers."))]
    said = f"{name} can't see your answers from now on. What I sent them before stays in their chat."
    said += orders.lapsed_words(turn.db, turn.person, turn.now, str(turn.known.facts.get("welcome.units", METRIC)))
    told = f"{display_name(turn.db, coach, turn.person)} has stopped sharing their answers with you."
    return [Letter(turn.person, Say(said)),
            Letter(coach, Say(told, (button("My lifters", "caseload"),)), about=turn.person)]


def _agree(turn: Turn, invited: int) -> list[Letter]:
    db, person, now = turn.db, turn.person, turn.now
    invitation = coaching.invitation(db, invited, now)
    if invitation is None or not coaching.use_up(db, invitation.id, person, now):
        return [Letter(person, Say("That code has expired. Ask for a new one."))]
    if invitation.made_by is None:
        role = ROLES[invitation.kind]
        left = [] if coaching.role_of(db, person) in ("", invitation.kind) else coaching.lifters_of(db, person)
        coaching.make_coach(db, person, short(invitation.name), now, invitation.kind)
        rows = (button("Invite a lifter", "invite_lifter"), button("Digest", "digest"))
        told = Say(f"{short(invitation.name)} is {role.one} here now. What you agreed to is over: they see your answers only after you "
                   "agree anew, to a new code.")
        return [Letter(person, Say(f"You are {role.one} here now. “Invite a lifter” makes a code for a lifter; “my lifters” shows who "
                                   "needs you.", rows)), *(Letter(lifter, told) for lifter in left)]
    yours = ROLES[coaching.role_of(db, invitation.made_by) or "coach"].yours.rstrip(",")
    coaching.link(db, person, invitation.made_by, now)
    theirs_called = display_name(db, invitation.made_by, person)
    rows = (button(f"See {theirs_called}", "lifter", person), button("My lifters", "caseload"))
    name = short(coaching.coach_name(db, invitation.made_by))
    mine = Say(f"{name} is {yours} here now. In “my coaches” you see what they look at, and can end it.",
               (button("My coaches", "my_coaches"),))
    whom = short(invitation.name)
    code = f" (your code for {whom})" if whom and whom.casefold() != short(people.name_of(db, person)).casefold() else ""
    theirs = Say(f"{theirs_called} has agreed{code}: you can see their answers now.", rows)
    return [Letter(person, mine), Letter(invitation.made_by, theirs, about=person), *_handed_over(turn, invitation.made_by)]


def _handed_over(turn: Turn, taker: int) -> list[Letter]:
    """End the links of the coaches who asked for it, now that the lifter has agreed; what holds then is said as where a coach is left."""
    told = []
    for giver, name in coaching.handing_over(turn.db, turn.person, taker):
        coaching.withdraw(turn.db, turn.person, giver, turn.now, "handed over")
        holds = orders.lapsed_words(turn.db, turn.person, turn.now, str(turn.known.facts.get("welcome.units", METRIC)))
        whom = display_name(turn.db, giver, turn.person)
        told += [Letter(turn.person, Say(f"{short(name)} has handed you over and can't see your answers from now on.{holds}")),
                 Letter(giver, Say(f"{whom} has agreed, and is with coach {short(coaching.coach_name(turn.db, taker))} now. You can't see "
                                   "their answers any more.", (button("My lifters", "caseload"),)), about=turn.person)]
    turn.changed()
    return told


def my_coaches(turn: Turn) -> list[Letter]:
    """Return a lifter's coaches, the audit log of their looks and acts, and a button to end each link."""
    db, person = turn.db, turn.person
    coaches = coaching.coaches_of(db, person)
    looks = coaching.latest_looks(db, person, LOOKS_SHOWN + 1)
    lines = [f"{_when(at, turn.zone)}: {short(name)}, {LOOK_WORDS.get(what, what)}" for at, name, what in looks[:LOOKS_SHOWN]]
    if len(looks) > LOOKS_SHOWN:
        lines.append("The older ones are in the copy under “my data”.")
    units = str(turn.known.facts.get("welcome.units", METRIC))
    acts = [f"{_when(at, turn.zone)}: {short(name)}, {COACH_ACTS[what].words if what in COACH_ACTS else what}: "
            f"{plain(orders.value_words(what, value, units))[:60]}{f' ({in_whole_words(plain(reason), 80)})' if reason else ''}"
            for at, name, what, value, reason in coaching.latest_acts(db, person, LOOKS_SHOWN)]
    text = "Your coaches: " + ", ".join(short(name) for _, name in coaches) + "." if coaches else "No coach sees your answers."
    rows = tuple(button(f"End {plain(name)[:16]}'s view", "leave_coach", coach) for coach, name in coaches)
    kept = access.facts_of(db, person)
    held = holding(kept, access.findings_of(db, person), orders.held_of(db, person, units), turn.zone,
                   lambda value, unit: shown(value, unit, units))
    written = [f"{_when(one.at, turn.zone)}: {short(one.coach) or 'you'}, {in_whole_words(plain(one.words), 120)}"
               for one in thread_of(db, person, None, LOOKS_SHOWN)]
    written += [f"{short(name)} keeps {'a private note' if many == 1 else f'{many} private notes'} on you, which only they read."
                for name, many in private_notes_of(db, person)]
    sections = {"What your coaches did:": acts, "What you and your coaches wrote:": written, "What your coaches looked at:": lines,
                "What holds for you now:": [f"{one.title}: {one.line}" for one in held]}
    write = button("Write to my coach", "note_to_coach", coaches[0][0]) if coaches else ()
    return [*(Letter(person, Say("\n".join((title, *said)))) for title, said in sections.items() if said),
            Letter(person, Say(text, (*rows, *([write] if write else []))))]


def _when(at: str, zone: str) -> str:
    moment = datetime.fromisoformat(at).astimezone(zone_of(zone))
    return f"{moment:%a} {moment.day} {moment:%b} {moment:%H:%M}"
