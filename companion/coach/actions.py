"""Acts of a coach for a lifter, and of a lifter for their coaches; one handler each.

Permission is checked here when an act is carried out, whatever question or button it came from: the person must be a coach now,
and this lifter's. The answer about another's lifter is the same as about a lifter who does not exist.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import partial
from typing import Final

from companion.base.clock import local_date
from companion.coach.caseload import NAME_MOST, shortened
from companion.coach.letters import NOT_YOURS, Letter, Rows, button, button_number, reply_buttons, short
from companion.coach.links import note_invitation
from companion.coach.names import display_name
from companion.conversation.effects import Act, Find, Remind, Say
from companion.export.table import plain
from companion.language.units import METRIC, shown
from companion.record import coaching, groups, persist
from companion.record.context import SAFETY_LEVEL, standing_now
from companion.record.guesses import guess_score
from companion.record.orders import Order, standing_orders, strictest, value_words
from companion.record.turn import Turn
from companion.screening.coach_acts import AS_COMPUTED, COACH_ACTS, HOLDS_DAYS, ROLES, CoachAct
from companion.screening.levels import REFERRED
from companion.screening.load_limit import ROUNDING, WHOSE, limit_now
from companion.screening.safety import Level
from companion.screening.squat_days import days_told

NOT_A_COACH: Final = "Only coaches can do that."
SENT_MEDIA: Final = "media:"
"""Prefix of a picture's name that is the channel's reference to a file somebody sent, not a drawing."""
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

    @property
    def until_words(self) -> str:
        """That day, to follow a value: ", until Friday 1 May"; "" for none."""
        return f", until {_day_in_words(self.until)}" if self.until else ""

    def to_coach(self, text: str = "", *more: tuple[str, str, str]) -> Letter:
        """Return the message to the coach, with buttons back to the lifter and ``more`` (label, flow, asked)."""
        rows = (button(f"See {self.whom}", "lifter", self.lifter.person), button("My lifters", "caseload"))
        return Letter(self.turn.person, Say(text or f"Done for {self.whom}.", (*rows, *(button(*one) for one in more))),
                      about=self.lifter.person)

    def to_lifter(self, value: str, template: str = "", first: Rows = (), more: str = "") -> Letter:
        """Return the message to the lifter, in the act's words. ``first``: buttons before those to write back; ``more``: text at the
        end."""
        who = f"{ROLES[coaching.role_of(self.turn.db, self.turn.person) or 'coach'].yours} {short(self.coach)}"
        said = (template or self.kind.told).format(who=who, Who=who[:1].upper() + who[1:], what=self.kind.words, value=value,
                                                   because=self.because)
        back = (button("Write back", "note_to_coach", self.turn.person), button("My coaches", "my_coaches"))
        return Letter(self.lifter.person, Say(said + more, (*first, *back)))


def act(turn: Turn, effect: Act) -> list[Letter]:
    """Carry out an act: of a coach for a lifter, or a lifter's note or film to a coach."""
    handler = ACT_HANDLERS.get(effect.what)
    if handler and effect.of.startswith("g"):
        return _for_several(turn, effect, handler)
    return handler(turn, effect) if handler else [Letter(turn.person, Say("I don't know that action."))]


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


def _guess(one: CoachTurn) -> list[Letter]:
    """Keep what the coach expects of the next retest; the lifter is not told, as it could change what they report."""
    one.audit()
    words = {"better": "better", "worse": "worse"}.get(one.act.value, "no change beyond measurement error")
    score = guess_score(one.turn.db, one.turn.person).words
    return [one.to_coach(f"{one.whom}: you expect {words}.{f' So far you were {score}.' if score else ''}")]


def _group(one: CoachTurn) -> list[Letter]:
    """Put a lifter into a group of this coach, or take them out of it."""
    name = shortened(one.act.value, NAME_MOST)
    leaves = groups.is_in(one.turn.db, one.turn.person, one.lifter.person, name)
    replace(one, act=replace(one.act, value=f"{'-' if leaves else '+'}{name}")).audit()
    return [one.to_coach(f"{one.whom} is {'no longer ' if leaves else ''}in {name}.", ("My groups", "groups", ""))]


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


def _for_lifter(does: Callable[[CoachTurn], list[Letter]]) -> ActHandler:
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
        return does(one)
    return handler


def _note(one: CoachTurn) -> list[Letter]:
    one.audit()
    return [one.to_coach(f"Sent to {one.whom}."), one.to_lifter(plain(one.act.value))]


def _private(one: CoachTurn) -> list[Letter]:
    one.audit()
    return [one.to_coach(f"Noted for {one.whom}. Only you read it; they can see that a note exists.")]


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
    said = f"{one.whom}: the referral is lifted, seen on {_day_in_words(on)}. From tomorrow a new safety check must still pass."
    others = [Letter(coach, Say(f"{display_name(one.turn.db, coach, one.lifter.person)}: clinician {short(one.coach)} has lifted the "
                                f"referral.{one.because} A new safety check must still pass."), about=one.lifter.person)
              for coach, _ in coaching.coaches_of(one.turn.db, one.lifter.person) if coach != one.turn.person]
    return [one.to_coach(said), lifted.to_lifter(_day_in_words(on)), *others]


def _reviewed(one: CoachTurn) -> list[Letter]:
    return _aside(one, "reviewed", "", f"{one.whom} is marked as reviewed.")


def _put_aside(one: CoachTurn) -> list[Letter]:
    if one.act.value == "reviewed":
        return _reviewed(one)
    if one.act.value == "dismiss":
        return _aside(one, "dismiss", "", f"{one.whom}: what is new so far is put aside. The next thing that is new brings them back; “my "
                      "lifters” lists them as before.")
    until = local_date(one.turn.now, one.turn.zone) + timedelta(days=button_number(one.act.value))
    return _aside(one, "snooze", until.isoformat(), f"{one.whom} is put aside until {_day_in_words(until.isoformat())}. Pain or a referral "
                  "brings them back at once; “my lifters” lists them as before.")


def _aside(one: CoachTurn, what: str, value: str, said: str) -> list[Letter]:
    """Audit a review, a snooze or a dismissal, with a button that takes it back."""
    number = replace(one, kind=COACH_ACTS[what], act=replace(one.act, value=value)).audit()
    return [one.to_coach(said, ("Take it back", "coach_act", f"{one.lifter.person}-unreviewed-{number}"))]


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
    return [one.to_coach(), one.to_lifter(wanted, first=(button(title or "Send a film", flow),))]


def _retest(one: CoachTurn) -> list[Letter]:
    before = one.lifter.known.facts.get("retest.pin", "")
    others = [other for other in standing_orders(one.turn.db, one.lifter.person, "retest")
              if other.coach != one.turn.person and before == other.value != one.act.value]
    one.audit()
    persist.finding(one.lifter, Find(one.kind.sets, one.act.value, f"set by coach {one.coach}"))
    persist.remind(one.lifter, Remind("retest", "retest", one.act.value))
    return [one.to_coach(f"{one.whom}: {one.kind.words} is {_day_in_words(one.act.value)}."), one.to_lifter(_day_in_words(one.act.value)),
            *_differing(one, others, _day_in_words, f"the one set last holds, {_day_in_words(one.act.value)}")]


def _day_in_words(value: str) -> str:
    day = date.fromisoformat(value)
    return f"{day:%A} {day.day} {day:%B}"


def _overrule(one: CoachTurn) -> list[Letter]:
    one.audit()
    cause, _, ruling = one.act.value.partition(" ")
    back = ruling == AS_COMPUTED
    rule = f"{'taken back' if back else 'overruled'} by coach {one.coach}"
    persist.finding(one.lifter, Find(one.kind.sets.format(finding=cause), "" if back else ruling, rule, one.act.reason))
    said = one.to_lifter(cause, one.kind.undone) if back else one.to_lifter(f"{cause} is {ruling.replace('_', ' ')}")
    return [one.to_coach(), said]


def _pin_depth(one: CoachTurn) -> list[Letter]:
    letters = _pin(one, lambda value: value_words("pin_depth", value, METRIC))
    today = local_date(one.turn.now, one.lifter.zone)
    persist.finding(one.lifter, Find("depth.pinned_on", today.isoformat(), f"set by coach {one.coach}"))
    return letters


def _pin_load(one: CoachTurn) -> list[Letter]:
    return _pin(one, lambda value: shown(float(value), "kg", str(one.lifter.known.facts.get("welcome.units", METRIC))), _lower)


def _raise_load(one: CoachTurn) -> list[Letter]:
    """Raise the load limit of the tests: never on a day that is closed, and never above what they trained without pain."""
    show = partial(shown, unit="kg", system=str(one.lifter.known.facts.get("welcome.units", METRIC)))
    refused = _no_raise(one, float(one.act.value), show)
    return [one.to_coach(f"{one.whom}: {refused}")] if refused else _pin(
        one, lambda value: show(float(value)), lambda one: _still_lower(one, show))


def _no_raise(one: CoachTurn, kg: float, show: Callable[[float], str]) -> str:
    """Return why a limit is not raised; "" where it may be."""
    known, stands = one.lifter.known, standing_now(one.turn.db, one.lifter.person, one.turn.now)
    if not stands.go:
        return f"the day is closed ({stands.words.coach}), so no limit is raised."
    limit = str(known.facts.get("load.limit", ""))
    if not limit:
        return "the tests have set no load limit, so there is none to raise."
    if kg <= float(limit):
        return f"the tests already allow {show(float(limit))}; “Pin load” sets less."
    days = days_told(known.answers(), one.lifter.zone)
    trained = max((day.load for day in days if day.squatted and not day.hurt and day.load), default=0.0)
    if kg > trained + ROUNDING:
        return (f"they have trained at most {show(trained)} without pain, and a limit is never raised above that." if trained else
                "no load is known that they trained without pain, so no limit is raised.")
    return ""


def _still_lower(one: CoachTurn, show: Callable[[float], str]) -> str:
    """Return which lower limit still holds beside a raised one; "" for none."""
    found = limit_now(one.lifter.known.facts)
    return f" What is {WHOSE[found[0]]} still holds: at most {show(found[1])}." if found and found[0] in ("load.pin", "load.told") else ""


def _end_retest(one: CoachTurn) -> list[Letter]:
    """End a coach's date for the retest: that of another coach holds, else the one of the tests."""
    retest = replace(one, kind=COACH_ACTS["retest"], act=replace(one.act, value="none"))
    mine = any(order.coach == one.turn.person for order in standing_orders(one.turn.db, one.lifter.person, "retest"))
    if not mine:
        return [one.to_coach(f"{one.whom}: no retest date of yours stands.")]
    retest.audit()
    stays = strictest("retest", standing_orders(one.turn.db, one.lifter.person, "retest"))
    on = stays.value if stays else _by_the_tests(one)
    by = f"set by coach {stays.coach_name}" if stays else f"ended by coach {one.coach}"
    persist.finding(one.lifter, Find("retest.pin", stays.value if stays else "", by))
    persist.remind(one.lifter, Remind("retest", "retest", on))
    said = f"Now it is {_day_in_words(on)}{f', set by coach {short(stays.coach_name)}' if stays else ', as the tests say'}." if on else (
        "The tests call for none.")
    return [one.to_coach(f"{one.whom}: your retest date is ended. {said}"), one.to_lifter(said)]


def _by_the_tests(one: CoachTurn) -> str:
    """Return the day of the retest as the tests have it, tomorrow where that is past; "" where they call for none."""
    from companion.screening.conclusion import conclude  # here: the first words to a stranger wait for little
    from companion.screening.errors import errors_from
    from companion.screening.retest import next_day, plan
    from companion.screening.safety import pain_now
    from companion.screening.screen import about_from, screen_from
    from companion.screening.setups import setup_from, without_luck

    facts, answers, zone = one.lifter.known.facts, list(one.lifter.known.answers()), one.lifter.zone
    screen, about = without_luck(screen_from(answers), str(facts.get("setup.luck", ""))), about_from(answers)
    if not screen.done:
        return ""
    errors = errors_from(answers, about.sex)
    system = str(facts.get("welcome.units", METRIC))
    conclusion = conclude(screen, about, pain_now(facts.get("safety_check.pain"), facts.get(SAFETY_LEVEL)),
                          lambda value, unit: shown(value, unit, system), errors, setup_from(facts), days_told(answers, zone))
    day = next_day(plan(conclusion, screen, about, errors), answers, zone, local_date(one.turn.now, zone))
    return day.isoformat() if day else ""


def _pin_setup(one: CoachTurn) -> list[Letter]:
    system = str(one.lifter.known.facts.get("welcome.units", METRIC))
    return _pin(one, lambda value: value_words("pin_setup", value, system))


def _pin_drill(one: CoachTurn) -> list[Letter]:
    letters = _pin(one, lambda value: value_words("drill", value, METRIC))
    if one.act.value != "none":
        persist.finding(one.lifter, Find("drill", one.act.value, f"chosen by coach {one.coach}", one.act.reason))
    return letters


def _pin(one: CoachTurn, words: Callable[[str], str], warning: Callable[[CoachTurn], str] = lambda one: "") -> list[Letter]:
    """Pin a value, or with "none" unpin it; ``words`` gives the value in the lifter's words. What holds is the strictest of the
    orders of all their coaches, and coaches who differ are told."""
    one.audit()
    orders = standing_orders(one.turn.db, one.lifter.person, one.kind.name)
    holds = strictest(one.kind.name, orders)
    by, why = (holds.coach_name, holds.reason) if holds else (one.coach, one.act.reason)
    persist.finding(one.lifter, Find(one.kind.sets, holds.value if holds else "", f"set by coach {by}", why))
    more = warning(one)
    value = "no longer set by hand" if one.act.value == "none" else words(one.act.value) + one.until_words
    if holds and holds.coach != one.turn.person:
        more = f" Coach {short(holds.coach_name)} has set {words(holds.value)}, which holds until they settle it.{more}"
    others = [other for other in orders if other.coach != one.turn.person and other.value != one.act.value]
    what_holds = f"{words(holds.value)} holds until you settle it" if holds else ""
    return [one.to_coach(f"{one.whom}: {one.kind.words} is {value}.{more}"), one.to_lifter(value, more=more),
            *_differing(one, others if one.act.value != "none" else [], words, what_holds)]


def _differing(one: CoachTurn, others: Sequence[Order], words: Callable[[str], str], holds: str) -> list[Letter]:
    """Return the messages to this coach and to the others that their orders for the lifter differ, and which holds."""
    told = []
    for other in others:
        theirs = display_name(one.turn.db, other.coach, one.lifter.person)
        told += [one.to_coach(f"{one.whom}: coach {short(other.coach_name)} has set {one.kind.words} to {words(other.value)}, you to "
                              f"{words(one.act.value)}. {holds[:1].upper()}{holds[1:]}.",
                              (f"Go by theirs: {words(other.value)}", "coach_act", _settling(one, other.coach))),
                 Letter(other.coach, Say(f"{theirs}: coach {short(one.coach)} has set {one.kind.words} to {words(one.act.value)}, you to "
                                         f"{words(other.value)}. {holds[:1].upper()}{holds[1:]}.",
                                         (button(f"See {theirs}", "lifter", one.lifter.person),
                                          button(f"Go by theirs: {words(one.act.value)}", "coach_act", _settling(one, one.turn.person)))),
                        about=one.lifter.person)]
    return told


def _settling(one: CoachTurn, coach: int) -> str:
    """Return the payload of the button that gives the same order as another coach."""
    return f"{one.lifter.person}-settle-{one.kind.name}-{coach}"


def _settle(one: CoachTurn) -> list[Letter]:
    """Give the same order as another coach, with the same end: then it holds, and both are told."""
    what, _, coach = one.act.value.partition("-")
    theirs = next((order for order in standing_orders(one.turn.db, one.lifter.person, what) if order.coach == button_number(coach)), None)
    if theirs is None:
        return [one.to_coach(f"{one.whom}: that order no longer stands, so nothing has changed.")]
    today = local_date(one.turn.now, one.lifter.zone)
    days = f"{(date.fromisoformat(theirs.until) - today).days}" if theirs.until else "none"
    agreed = Act(what, one.act.of, theirs.value, f"agreed with coach {short(theirs.coach_name)}", days)
    told = ACT_HANDLERS[what](one.turn, agreed)
    if not any(order.value == theirs.value and order.coach == one.turn.person for order in
               standing_orders(one.turn.db, one.lifter.person, what)):
        return told  # refused, as a raised limit may be
    whose = display_name(one.turn.db, theirs.coach, one.lifter.person)
    return [*told, Letter(theirs.coach, Say(f"{whose}: coach {short(one.coach)} now goes by your order for {COACH_ACTS[what].words}.",
                                            (button(f"See {whose}", "lifter", one.lifter.person),)), about=one.lifter.person)]


def _lower(one: CoachTurn) -> str:
    """Return a warning if the limit from the tests or from a clinician is below the pinned load, since squat days use the lowest; ""
    otherwise."""
    facts = one.lifter.known.facts
    pin, system = str(facts.get("load.pin", "")), str(facts.get("welcome.units", METRIC))
    for who, name in (("A clinician said", "load.told"), ("The tests say", "load.limit")):
        most = str(facts.get(name, ""))
        if most and pin and float(most) < float(pin):
            return f" {who} at most {shown(float(most), 'kg', system)}; I use the lower of the two."
    return ""


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
    **{name: _for_lifter(does) for name, does in {
        "note": _note, "private": _private, "ask_for": _ask_for, "retest": _retest, "end_retest": _end_retest, "overrule": _overrule,
        "pin_depth": _pin_depth, "pin_setup": _pin_setup, "pin_load": _pin_load, "raise_load": _raise_load, "drill": _pin_drill,
        "lift_referral": _lift_referral, "group": _group, "guess": _guess, "hand_over": _hand_over,
        "settle": _settle, "put_aside": _put_aside,
        "reviewed": _reviewed, "unreviewed": _unreviewed, "seen": _seen}.items()},
}
"""The handler of each act. The words of a coach's acts are in ``screening.coach_acts``."""
