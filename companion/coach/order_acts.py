"""Orders of a coach: depth, load, set-up, drill and the day of the retest.

What holds is the strictest of the orders of all their coaches; coaches who differ are both told, and one can go by the other's.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from functools import partial
from typing import Final

from companion.base.clock import local_date
from companion.coach.coach_turn import CoachTurn
from companion.coach.holding import holding
from companion.coach.letters import Letter, button, button_number, guess_row, short
from companion.coach.names import display_name
from companion.conversation.effects import Act, Find, Remind, Say
from companion.language.units import shown
from companion.record import access, persist
from companion.record.context import standing_now
from companion.record.orders import Order, day_in_words, held_of, standing_orders, strictest, value_words
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.load_limit import ROUNDING, WHOSE, at_most, limit_now
from companion.screening.squat_days import days_told


def _pin(one: CoachTurn) -> list[Letter]:
    """Pin a value, or with "none" unpin it."""
    one.audit()
    orders = standing_orders(one.turn.db, one.lifter.person, one.kind.name)
    holds = strictest(one.kind.name, orders)
    by, why = (holds.coach_name, holds.reason) if holds else (one.coach, one.act.reason)
    persist.finding(one.lifter, Find(one.kind.sets, holds.value if holds else "", f"set by coach {by}", why))
    if one.act.value == "none":
        now = _holds_now(one)
        return [one.to_coach(f"{one.whom}: you no longer set {one.kind.words}. {now}"), one.to_lifter(now, one.kind.undone)]
    more = _lower(one)
    value = _words(one, one.act.value) + (f", until {day_in_words(one.until)}" if one.until else "")
    if holds and holds.coach != one.turn.person:
        more = f" Coach {short(holds.coach_name)} has set {_words(one, holds.value)}, which holds until they settle it.{more}"
    others = [other for other in orders if other.coach != one.turn.person and other.value != one.act.value]
    what_holds = f"{_words(one, holds.value)} holds until you settle it" if holds else ""
    return [one.to_coach(f"{one.whom}: {one.kind.words} is {value}.{more}"), one.to_lifter(value, more=more),
            *_differing(one, others, what_holds)]


_TITLES: Final = {"pin_depth": "Depth", "pin_load": "Load", "raise_load": "Load", "pin_setup": "Set-up", "drill": "Drill"}


def _holds_now(one: CoachTurn) -> str:
    """Return what holds for the lifter of the kind that was ordered, as their page has it."""
    db, lifter = one.turn.db, one.lifter.person
    held = holding(access.facts_of(db, lifter), access.findings_of(db, lifter), held_of(db, lifter, one.units), one.lifter.zone,
                   lambda value, unit: shown(value, unit, one.units))
    line = next((each.line for each in held if each.title == _TITLES[one.kind.name]), "")
    return f"What holds now: {line}." if line else "Nothing is set now."


def _words(one: CoachTurn, value: str) -> str:
    return value_words(one.kind.name, value, one.units)


def _pin_depth(one: CoachTurn) -> list[Letter]:
    letters = _pin(one)
    today = local_date(one.turn.now, one.lifter.zone)
    persist.finding(one.lifter, Find("depth.pinned_on", today.isoformat(), f"set by coach {one.coach}"))
    return letters


def _raise_load(one: CoachTurn) -> list[Letter]:
    """Raise the load limit of the tests: never on a day that is closed, and never above what they trained without pain."""
    refused = "" if one.act.value == "none" else _no_raise(one, float(one.act.value), partial(shown, unit="kg", system=one.units))
    return [one.to_coach(f"{one.whom}: {refused}")] if refused else _pin(one)


def _lower(one: CoachTurn) -> str:
    """Return which limit is below the load just ordered, since squat days use the lowest; "" for none."""
    facts = one.lifter.known.facts
    found, mine = limit_now(facts), str(facts.get(one.kind.sets, ""))
    if not found or found[0] == one.kind.sets or one.kind.sets not in WHOSE or not mine or found[1] >= float(mine):
        return ""
    says = {"load.told": "A clinician said", "load.pin": "A coach says"}.get(found[0], "The tests say")
    return f" {says} {at_most(found[1], partial(shown, system=one.units))}; I use the lower of the two."


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


def _drill(one: CoachTurn) -> list[Letter]:
    letters = _pin(one)
    if one.act.value != "none":
        persist.finding(one.lifter, Find("drill", one.act.value, f"chosen by coach {one.coach}", one.act.reason))
    return letters


def _retest(one: CoachTurn) -> list[Letter]:
    before = one.lifter.known.facts.get("retest.pin", "")
    others = [other for other in standing_orders(one.turn.db, one.lifter.person, "retest")
              if other.coach != one.turn.person and before == other.value != one.act.value]
    one.audit()
    persist.finding(one.lifter, Find(one.kind.sets, one.act.value, f"set by coach {one.coach}"))
    persist.remind(one.lifter, Remind("retest", "retest", one.act.value))
    day = _words(one, one.act.value)
    return [one.to_coach(f"{one.whom}: {one.kind.words} is {day}. What do you expect of it?", guess_row(one.lifter.person)),
            one.to_lifter(day), *_differing(one, others, f"the one set last holds, {day}")]


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
    said = f"Now it is {_words(retest, on)}{f', set by coach {short(stays.coach_name)}' if stays else ', as the tests say'}." if on else (
        "The tests call for none.")
    return [one.to_coach(f"{one.whom}: your retest date is ended. {said}"), one.to_lifter(said)]


def _by_the_tests(one: CoachTurn) -> str:
    """Return the day of the retest as the tests have it, tomorrow where that is past; "" where they call for none."""
    from companion.coach.concluded import concluded_of  # here: the first words to a stranger wait for little
    from companion.screening.retest import next_day, plan
    from companion.screening.screen import about_from

    found = concluded_of(one.turn.db, one.lifter.person, one.turn.now)
    if not found.tested:
        return ""
    day = next_day(plan(found.conclusion, found.screen, about_from(found.answers), found.errors), found.answers, found.zone,
                   local_date(one.turn.now, found.zone))
    return day.isoformat() if day else ""


def _differing(one: CoachTurn, others: Sequence[Order], holds: str) -> list[Letter]:
    """Return the messages to this coach and to the others that their orders for the lifter differ, and which holds."""
    told, mine = [], _words(one, one.act.value)
    for other in others:
        whom, theirs = display_name(one.turn.db, other.coach, one.lifter.person), _words(one, other.value)
        what, ends = one.kind.words, f"{holds[:1].upper()}{holds[1:]}."
        told += [one.to_coach(f"{one.whom}: coach {short(other.coach_name)} has set {what} to {theirs}, you to {mine}. {ends}",
                              button(f"Go by theirs: {theirs}", "coach_act", _settling(one, other.coach))),
                 Letter(other.coach, Say(f"{whom}: coach {short(one.coach)} has set {what} to {mine}, you to {theirs}. {ends}",
                                         (button(f"See {whom}", "lifter", one.lifter.person),
                                          button(f"Go by theirs: {mine}", "coach_act", _settling(one, one.turn.person)))),
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
    told = ORDER_ACTS[what](replace(one, kind=COACH_ACTS[what], act=agreed))
    if not any(order.value == theirs.value and order.coach == one.turn.person for order in
               standing_orders(one.turn.db, one.lifter.person, what)):
        return told  # refused, as a raised limit may be
    whose = display_name(one.turn.db, theirs.coach, one.lifter.person)
    return [*told, Letter(theirs.coach, Say(f"{whose}: coach {short(one.coach)} now goes by your order for {COACH_ACTS[what].words}.",
                                            (button(f"See {whose}", "lifter", one.lifter.person),)), about=one.lifter.person)]


ORDER_ACTS: Final[Mapping[str, Callable[[CoachTurn], list[Letter]]]] = {
    "pin_depth": _pin_depth, "pin_load": _pin, "raise_load": _raise_load, "pin_setup": _pin, "drill": _drill, "retest": _retest,
    "end_retest": _end_retest, "settle": _settle}
"""What carries out each order, by the name of its act."""
