"""Acts of a coach for a lifter, and of a lifter for their coaches; one handler each.

Permission is checked here when an act is carried out, whatever question or button it came from: the person must be a coach now,
and this lifter's. The answer about another's lifter is the same as about a lifter who does not exist.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from typing import Final

from companion.base.clock import local_date
from companion.coach.caseload import NAME_MOST, shortened
from companion.coach.coach_turn import NOT_A_COACH, NOT_SAID, ActHandler, CoachTurn, for_lifter
from companion.coach.letters import NOT_YOURS, Letter, button, button_number, reply_buttons, short
from companion.coach.links import note_invitation
from companion.coach.names import display_name
from companion.coach.order_acts import ORDER_ACTS
from companion.conversation.effects import Act, Find, Remind, Say
from companion.export.table import plain
from companion.record import coaching, groups, persist
from companion.record.context import SAFETY_LEVEL, standing_now
from companion.record.guesses import EXPECTED, guess_score
from companion.record.orders import day_in_words
from companion.record.turn import Turn
from companion.screening.coach_acts import AS_COMPUTED, COACH_ACTS, ROLES
from companion.screening.levels import REFERRED
from companion.screening.safety import Level

SENT_MEDIA: Final = "media:"
"""Prefix of a picture's name that is the channel's reference to a file somebody sent, not a drawing."""


def act(turn: Turn, effect: Act) -> list[Letter]:
    """Carry out an act: of a coach for a lifter, or a lifter's note or film to a coach."""
    handler = ACT_HANDLERS.get(effect.what)
    if handler and effect.of.startswith("g"):
        return _for_several(turn, effect, handler)
    letters = handler(turn, effect) if handler else [Letter(turn.person, Say("I don't know that action."))]
    if _answers_alerts(turn, effect, letters):
        coaching.note_seen(turn.db, button_number(effect.of), None, turn.now)
    return letters


def _answers_alerts(turn: Turn, effect: Act, letters: list[Letter]) -> bool:
    """True if an act shows that its coach has seen what the lifter told: a message to them, a referral lifted, or a review."""
    lifter = button_number(effect.of)
    if "reviewed" in (effect.what, effect.value if effect.what == "put_aside" else ""):
        return coaching.sees(turn.db, turn.person, lifter)
    return effect.what in ("note", "lift_referral") and any(one.to == lifter for one in letters)


def _for_several(turn: Turn, effect: Act, handler: ActHandler) -> list[Letter]:
    """Carry out an act for each lifter of a group, as one of its own: each is checked, audited and told alone. The coach hears of all in
    one message."""
    group = next((one for one in groups.groups_of(turn.db, turn.person) if one.number == effect.of), None)
    if group is None or not COACH_ACTS[effect.what].several:
        return [Letter(turn.person, Say("That can be done for one lifter at a time only." if group else NOT_YOURS))]
    done, left, letters, before = 0, list[str](), list[Letter](), groups.last_act(turn.db)
    for lifter in group.lifters:
        made = handler(turn, replace(effect, of=str(lifter)))
        letters += [one for one in made if one.to != turn.person]
        if any(one.to == lifter for one in made):
            done += 1
        else:
            left.append(display_name(turn.db, turn.person, lifter))
    groups.note_several(turn.db, before)
    said = f"{group.name}: done for each of {done}." + (f" Not for {', '.join(left)}." if left else "")
    return [Letter(turn.person, Say(shortened(said, 340), (button("My groups", "groups"),))), *letters]


def _note(one: CoachTurn) -> list[Letter]:
    one.audit()
    return [one.to_coach(f"Sent to {one.whom}."), one.to_lifter(plain(one.act.value))]


def _private(one: CoachTurn) -> list[Letter]:
    one.audit()
    return [one.to_coach(f"Noted for {one.whom}. Only you read it; they can see that a note exists.")]


def _guess(one: CoachTurn) -> list[Letter]:
    """Keep what the coach expects of the next retest; the lifter is not told, as it could change what they report."""
    if one.act.value not in EXPECTED:
        return [one.to_coach(f"{one.whom}: nothing has changed.")]
    one.audit()
    score = guess_score(one.turn.db, one.turn.person).words
    return [one.to_coach(f"{one.whom}: you expect {EXPECTED[one.act.value][1]}.{f' So far you were {score}.' if score else ''}")]


def _group(one: CoachTurn) -> list[Letter]:
    """Put a lifter into a group of this coach, or take them out of it."""
    name = shortened(one.act.value, NAME_MOST)
    leaves = groups.is_in(one.turn.db, one.turn.person, one.lifter.person, name)
    replace(one, act=replace(one.act, value=f"{'-' if leaves else '+'}{name}")).audit()
    return [one.to_coach(f"{one.whom} is {'no longer ' if leaves else ''}in {name}.", button("My groups", "groups"))]


def _hand_over(one: CoachTurn) -> list[Letter]:
    """Ask a lifter whether another coach may take over: they answer the question every new coach is asked with, and only a yes does it."""
    found = coaching.taker_of(one.turn.db, one.act.value, one.turn.person, one.turn.now)
    if found is None:
        return [one.to_coach(f"{one.whom}: that is no code of another coach, or it was used or has expired. Nothing has changed.")]
    taker, used = found
    coaching.use_up(one.turn.db, used, one.turn.person, one.turn.now)
    if coaching.sees(one.turn.db, taker, one.lifter.person):
        return [one.to_coach(f"{one.whom}: that coach sees them already. Nothing has changed.")]
    name = short(coaching.coach_name(one.turn.db, taker))
    code = coaching.invite(one.turn.db, "lifter", taker, one.whom, one.turn.now)
    invited = coaching.open_invitation(one.turn.db, code, one.turn.now)
    note_invitation(one.lifter, {"status": "lifter", "who": name, "invitation": str(invited.id if invited else ""),
                                 "one": ROLES["coach"].one, "yours": ROLES["coach"].yours})
    replace(one, act=replace(one.act, value=f"{taker} {name}")).audit()
    return [one.to_coach(f"{one.whom} is asked whether coach {name} may take over. Only their yes does it."),
            one.to_lifter(name, first=(button("Answer", "link_request"),))]


def _lift_referral(one: CoachTurn) -> list[Letter]:
    """Lift a referral: the day stays closed, and from the next a new safety check must pass. Never by whoever has coached this lifter."""
    stands = standing_now(one.turn.db, one.lifter.person, one.turn.now)
    if coaching.has_coached(one.turn.db, one.turn.person, one.lifter.person):
        return [one.to_coach(f"{one.whom}: you have coached them, so another clinician has to lift it.")]
    if stands.level is None or stands.level.value not in REFERRED:
        return [one.to_coach(f"{one.whom}: no referral stands, so there is none to lift.")]
    on = (local_date(one.turn.now, one.turn.zone) - timedelta(days=button_number(one.act.value))).isoformat()
    lifted = replace(one, act=replace(one.act, value=on))
    lifted.audit()
    persist.finding(one.lifter, Find(SAFETY_LEVEL, Level.NOT_TODAY.value, f"referral lifted by clinician {one.coach}", one.act.reason))
    persist.remind(one.lifter, Remind("referral", "referral", ""))
    said = f"{one.whom}: the referral is lifted, seen on {day_in_words(on)}. From tomorrow a new safety check must still pass."
    others = [Letter(coach, Say(f"{display_name(one.turn.db, coach, one.lifter.person)}: clinician {short(one.coach)} has lifted the "
                                f"referral.{one.because} A new safety check must still pass."), about=one.lifter.person)
              for coach, _ in coaching.coaches_of(one.turn.db, one.lifter.person) if coach != one.turn.person]
    return [one.to_coach(said), lifted.to_lifter(day_in_words(on)), *others]


def _reviewed(one: CoachTurn) -> list[Letter]:
    return _aside(one, "reviewed", "", f"{one.whom} is marked as reviewed.")


def _put_aside(one: CoachTurn) -> list[Letter]:
    if one.act.value == "reviewed":
        return _reviewed(one)
    if one.act.value == "dismiss":
        return _aside(one, "dismiss", "", f"{one.whom}: what is new so far is put aside. The next thing that is new brings them back; “my "
                      "lifters” lists them as before.")
    until = local_date(one.turn.now, one.turn.zone) + timedelta(days=button_number(one.act.value))
    return _aside(one, "snooze", until.isoformat(), f"{one.whom} is put aside until {day_in_words(until.isoformat())}. Pain or a referral "
                  "brings them back at once; “my lifters” lists them as before.")


def _aside(one: CoachTurn, what: str, value: str, said: str) -> list[Letter]:
    """Audit a review, a snooze or a dismissal, with a button that takes it back."""
    number = replace(one, kind=COACH_ACTS[what], act=replace(one.act, value=value)).audit()
    return [one.to_coach(said, button("Take it back", "coach_act", f"{one.lifter.person}-unreviewed-{number}"))]


def _seen(one: CoachTurn) -> list[Letter]:
    coaching.note_seen(one.turn.db, one.lifter.person, button_number(one.act.value), one.turn.now)
    coaching.audit_look(one.turn.db, one.lifter.person, one.turn.person, "an alert", one.turn.now)
    return [one.to_coach(f"Noted: you have seen it. {one.whom} can read that.")]


def _unreviewed(one: CoachTurn) -> list[Letter]:
    review = button_number(one.act.value)
    if not coaching.stands(one.turn.db, one.lifter.person, one.turn.person, review):
        return [Letter(one.turn.person, Say("That was already taken back."))]
    replace(one, act=replace(one.act, value=str(review))).audit()
    return [one.to_coach(f"Taken back for {one.whom}: it is as it was before.")]


def _ask_for(one: CoachTurn) -> list[Letter]:
    one.audit()
    title = one.turn.title(one.act.value)
    flow = one.act.value if title else "film"
    wanted = f"do the {title.lower()}" if flow != "film" else "send a film of your squat, from the side"
    asked = f"the {title.lower()}" if flow != "film" else "a film of their squat"
    return [one.to_coach(f"{one.whom} is asked for {asked}."), one.to_lifter(wanted, first=(button(title or "Send a film", flow),))]


def _overrule(one: CoachTurn) -> list[Letter]:
    one.audit()
    cause, _, ruling = one.act.value.partition(" ")
    back = ruling == AS_COMPUTED
    rule = f"{'taken back' if back else 'overruled'} by coach {one.coach}"
    persist.finding(one.lifter, Find(one.kind.sets.format(finding=cause), "" if back else ruling, rule, one.act.reason))
    said = one.to_lifter(cause, one.kind.undone) if back else one.to_lifter(f"{cause} is {ruling.replace('_', ' ')}")
    told = (f"you go by what the tests say about {cause} again." if back else
            f"{cause} is {ruling.replace('_', ' ')}, as you see it. What the tests say stays beside it.")
    return [one.to_coach(f"{one.whom}: {told}"), said]


def _reply(turn: Turn, effect: Act) -> list[Letter]:
    """Send a lifter's note to the coach it names, else to all of theirs."""
    coaches = [coach for coach, _ in coaching.coaches_of(turn.db, turn.person)]
    wanted = button_number(effect.of)
    to = [wanted] if wanted in coaches else coaches
    if not to:
        return [Letter(turn.person, Say("You have no coach here, so there is nobody to tell."))]
    return [Letter(turn.person, Say("Passed on.")),
            *(Letter(coach, Say(f"{display_name(turn.db, coach, turn.person)} writes: {plain(effect.value)}",
                                reply_buttons(turn.db, coach, turn.person)), about=turn.person) for coach in to)]


def _film(turn: Turn, effect: Act) -> list[Letter]:
    """Send a lifter's film to their coaches, by the channel's own reference."""
    note = "" if effect.reason == NOT_SAID else f": {plain(effect.reason)}"
    return [Letter(coach, Say(f"{display_name(turn.db, coach, turn.person)} sent a film{note}", reply_buttons(turn.db, coach, turn.person),
                              picture=f"{SENT_MEDIA}{effect.value}"), about=turn.person)
            for coach, _ in coaching.coaches_of(turn.db, turn.person)]


def _invite(turn: Turn, effect: Act) -> list[Letter]:
    """Make an invitation code for a lifter."""
    if coaching.coach_name(turn.db, turn.person) is None:
        return [Letter(turn.person, Say(NOT_A_COACH))]
    whom = plain(effect.value)[:60]
    code = coaching.invite(turn.db, "lifter", turn.person, whom, turn.now)
    typed = coaching.spaced(code)
    way = f"https://t.me/{turn.bot}?start={code}\nor the words “code {typed}”" if turn.bot else f"“code {typed}”"
    return [Letter(turn.person, Say(f"For {whom}: ask them to send me\n{way}\nIt works once, within seven days. They see "
                                    "your name, choose whether to agree, and can end it at any time."), fleeting=True)]

ACT_HANDLERS: Final[Mapping[str, ActHandler]] = {
    "reply": _reply, "film": _film, "invite": _invite,
    **{name: for_lifter(does) for name, does in {
        **ORDER_ACTS, "note": _note, "private": _private, "ask_for": _ask_for, "overrule": _overrule, "lift_referral": _lift_referral,
        "group": _group, "guess": _guess, "hand_over": _hand_over, "put_aside": _put_aside, "reviewed": _reviewed,
        "unreviewed": _unreviewed, "seen": _seen}.items()},
}
"""The handler of each act. The words of a coach's acts are in ``screening.coach_acts``."""
