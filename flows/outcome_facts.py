"""Facts for the results: the conclusion of a screen in words, computed when the results are told."""

from __future__ import annotations

from datetime import UTC, date, datetime

from companion.calendar.preferences import zone_from
from companion.conversation.condition import Value
from companion.conversation.flow import Known
from companion.conversation.wording import MOST_WORDS
from companion.language.units import METRIC, shown
from companion.screening.conclusion import Conclusion, conclude, ruled_as, settle_words, verdict_words
from companion.screening.drills import DrillOffer, offer_for
from companion.screening.errors import errors_from
from companion.screening.evidence import Finding
from companion.screening.front_pinch import pinch_days, pinch_words
from companion.screening.limits import Work
from companion.screening.protocols import protocol, protocols
from companion.screening.readings import SIDES, NumberFormat, mean_of
from companion.screening.retest import RetestPlan, next_day, plan
from companion.screening.rulings import Ruling, Verdict
from companion.screening.safety import BodyPosition, Level, pain_now
from companion.screening.screen import Screen, about_from, screen_from
from companion.screening.setups import SetUp, setup_from, without_luck
from companion.screening.squat_days import days_told
from companion.screening.sureness import sureness_words

SAID_AT_ONCE = 2
"""Findings told with a cause at first; the rest on request."""

VERDICT_WORDS_MOST = 350
NEEDS_AT_HAND = {"tape": "about_you.tape", "heel": "about_you.tape", "level": "about_you.level"}
"""The answer to whether it is there, by method."""
MORE_MOST = 325
"""For the further reasons, so that with their heading they fit one message."""

WITHHELD = ("The drill for that part means lying on your back or folding deeply, so I offer none while you are, or may be, "
            "pregnant. Ask your doctor or midwife.")


CAUSE_WORDS = {"length": "length (room in hip, legs or calf)", "strength": "strength (the trunk under load)",
               "control": "control (timing)"}
"""The causes with what they are, where they are named first."""


def showing(known: Known) -> NumberFormat:
    """Return the number format of the lifter's units."""
    system = str(known.facts.get("welcome.units", METRIC))
    return lambda value, unit: shown(value, unit, system)


def told_at(known: Known, name: str = "outcome.at") -> datetime | None:
    """Return the moment of the last results, or None; ``name``: the fact that holds it."""
    told = known.facts.get(name)
    if not told:
        return None
    moment = datetime.fromisoformat(str(told))
    return moment if moment.tzinfo else moment.replace(tzinfo=UTC)


def concluded(known: Known, setup: SetUp | None = None) -> tuple[Screen, Conclusion, RetestPlan]:
    """Return the screen, its conclusion, and the retest plan. ``setup``: the one to reckon with; None: the one that stands."""
    answers = list(known.answers())
    screen, about = without_luck(screen_from(answers), str(known.facts.get("setup.luck", ""))), about_from(answers)
    errors = errors_from(answers, about.sex)
    pain = pain_now(known.facts.get("safety_check.pain"), known.facts.get("safety.level"))
    conclusion = conclude(screen, about, pain, showing(known), errors, setup or setup_from(known.facts),
                          days_told(answers, zone_from(known.facts, known.now)), closed_tests(known))
    return screen, conclusion, plan(conclusion, screen, about, errors)


def outcome_facts(known: Known, told: tuple[Screen, Conclusion, RetestPlan] | None = None) -> dict[str, Value]:
    """Return the facts of the results as the tests give them. ``told``: what they conclude, where that is known already."""
    screen, conclusion, again = told or concluded(known)
    if not screen.done:
        return {"any": "no"}
    facts: dict[str, Value] = {
        **_times(known), "any": "yes", "overall": conclusion.overall, "overall_words": conclusion.words,
        "differences": " ".join(conclusion.differences), "notes": " ".join(filter(None, (*conclusion.notes, overruled(known)))),
        "not_tested": "\n".join(protocol(test).short_name for test in conclusion.not_tested),
        "settle": f"{settle_words(conclusion.settle[0])}{waits_today(conclusion.settle[0], known)}" if conclusion.settle else "",
        "keep": conclusion.keep.value if conclusion.keep else "", "keep_words": conclusion.keep_words,
        "stance": conclusion.stance, "retest_words": again.words,
        "retest_tests": ",".join(one.test for one in again.tests),
        "load_words": conclusion.load_words,
        "load_limit": "" if conclusion.load_limit is None else f"{conclusion.load_limit:g}",
    }
    for verdict in conclusion.verdicts:
        facts |= verdict_facts(verdict)
    ruled = " ".join(f"{CAUSE_WORDS[verdict.cause].capitalize()}: {ruled_as(verdict).removesuffix(' to call')}."
                     for verdict in conclusion.verdicts)
    facts["summary"] = conclusion.words if conclusion.overall in ("normal", "no_rounding") else f"{conclusion.words} {ruled}"
    if conclusion.repeat and known.facts.get(NEEDS_AT_HAND.get(conclusion.repeat.by, "")) != "no":
        facts |= {"repeat": conclusion.repeat.test, "repeat_words": conclusion.repeat.words}
    facts["pinch_words"] = pinch_words(pinch_days(known.answers(), zone_from(known.facts, known.now)))
    if pinned := str(known.facts.get("retest.pin", "")):
        facts["retest_pin"] = pinned  # the coach's date stands until a retest is done or the coach ends it
    elif on := next_day(again, known.answers(), str(known.facts.get("welcome.zone", "")), date.fromisoformat(str(known.facts["today"]))):
        facts["retest_on"] = on.isoformat()
        if plans := [f"{protocol(one.test).name}: {one.words}" for one in again.tests if one.sessions > 1]:
            facts["retest_plan"] = " ".join(plans)
    return facts | offer_facts(conclusion, known)


def _times(known: Known) -> dict[str, Value]:
    """Return the moments of these results and of those before; only new answers make new results."""
    told, before = known.facts.get("outcome.at"), str(known.facts.get("outcome.before", ""))
    since = told_at(known)
    if since is not None and not any(row.flow in protocols() and row.at > since for row in known.answers()):
        return {"at": str(told), "before": before}
    return {"at": known.now.isoformat(), "before": str(told or "")}


def verdict_facts(verdict: Verdict) -> dict[str, Value]:
    """Return one cause's facts: its ruling, the first message, and all its grounds."""
    reasons = list(dict.fromkeys(finding.words for finding in _by_weight(verdict)))
    at_once = 4 if verdict.ruling is Ruling.RULED_OUT and verdict.cause == "length" else SAID_AT_ONCE
    first = f"{verdict_words(verdict)} {sureness_words(verdict)}".strip()
    if verdict.ruling is not Ruling.TOO_CLOSE and verdict.contradiction:
        reasons.append(verdict.contradiction)
    for reason in [verdict.contradiction if verdict.ruling is Ruling.TOO_CLOSE else "", *reasons[:at_once]]:
        if reason and len(first) + len(reason) < VERDICT_WORDS_MOST and len(f"{first} {reason}".split()) <= MOST_WORDS:
            first += f"\n{reason}"
    more = "\n".join(reason for reason in reasons if reason not in first)
    swing = f"What would change it most: {verdict.swing[:1].lower()}{verdict.swing[1:]}" if verdict.swing else ""
    if len(more) + len(swing) < MORE_MOST:
        more = "\n".join(filter(None, (more, swing)))
    page, rest = _page(more.split("\n"))
    return {verdict.cause: verdict.ruling.value, f"{verdict.cause}_words": first,
            f"{verdict.cause}_more": page, f"{verdict.cause}_rest": rest,
            f"{verdict.cause}_because": " ".join(reasons), f"{verdict.cause}_side": verdict.side}


def _page(lines: list[str]) -> tuple[str, str]:
    """Return the lines that fit one message below its heading, and the rest."""
    fit = next((n for n in range(len(lines), 0, -1) if len(" ".join(lines[:n]).split()) <= MOST_WORDS - 3), 0)
    return "\n".join(lines[:fit]), "\n".join(lines[fit:])


def _by_weight(verdict: Verdict) -> list[Finding]:
    """Return the findings to tell, those the ruling rests on first and the strongest of them first; for a cause too close to call
    also those that decide nothing, since their numbers are why."""
    close = verdict.ruling is Ruling.TOO_CLOSE
    carries = "against" if verdict.ruling is Ruling.RULED_OUT else "for"
    open_parts = {part.part for part in verdict.parts if part.ruling is not Ruling.RULED_OUT}
    decided = verdict.together or ((verdict.part,) if verdict.ruling is Ruling.LIKELY else tuple(open_parts) if close else ())
    told = [one for one in verdict.because if not one.row.hint and (close or one.row.direction != "neither")]
    weighed = sorted(told, key=lambda one: (
        decided != () and one.part not in decided, one.row.direction != carries,
        verdict.side in SIDES and one.side not in ("", verdict.side), -one.grade.rank, not one.side))
    # one line for each part of a cause ruled out, else one from each test, before a second from any
    first = {one.part if carries == "against" else one.row.test: one for one in reversed(weighed)}
    return sorted(weighed, key=lambda one: (decided != () and one.part not in decided, one.row.direction != carries,
                                            first[one.part if carries == "against" else one.row.test] is not one))


WITHHELD_BY_LIMIT = "The drill for that part needs what you were told to leave out, so none is offered for now."


def withheld(conclusion: Conclusion, known: Known) -> str:
    """Return why a part's drill is not offered."""
    return WITHHELD if offer_of(conclusion, known, limited=False) is None else WITHHELD_BY_LIMIT


def closed_for(known: Known) -> frozenset[Work]:
    """Return the work that a clinician's limits close for this lifter."""
    return frozenset(work for work in Work if known.facts.get(work.fact) == "closed")


def pregnant(known: Known) -> bool:
    """True if they are, or may be, pregnant."""
    return any(known.facts.get(f"{told}.pregnant") in ("yes", "unsure") for told in ("safety_check", "safety"))


def closed_tests(known: Known) -> frozenset[str]:
    """Return the tests that a clinician's limits, pregnancy or what is not at hand close for this lifter."""
    closed, no_stick = closed_for(known), known.facts.get("about_you.stick") == "none"
    return frozenset(test for test, one in protocols().items() if closed & {Work.MOVE, *one.uses}
                     or (one.posture.barred_in_pregnancy and pregnant(known)) or (no_stick and "stick" in one.needs))


def waits_today(test: str, known: Known) -> str:
    """Return that a test is shut for today, in words; "" where it is not."""
    posture, facts = protocol(test).posture, known.facts
    no_load = facts.get("safety.level") == Level.NO_LOAD.value and Level.NO_LOAD not in posture.levels
    no_floor = facts.get("at_hand.floor") == "no" and facts.get("at_hand.floor.today") == "yes" and posture is not BodyPosition.STANDING
    return " It waits for another day." if no_load or no_floor else ""


def offer_of(conclusion: Conclusion, known: Known, limited: bool = True) -> DrillOffer | None:
    """Return the drill for the likeliest part, or the one a coach chose, adapted to this lifter; None if there is none. ``limited``:
    false for the one there is once their limits are over."""
    part = str(known.facts.get("drill.pin", "")) or conclusion.part
    return offer_for(part, easier=conclusion.easier and part == conclusion.part, no_stretch=part in conclusion.no_stretch,
                     no_lying=pregnant(known), closed=closed_for(known) if limited else frozenset())


def overruled(known: Known) -> str:
    """Return the coach's differing rulings in words; they are shown next to the tests' verdicts and do not replace them."""
    said = [f"{cause} is {str(ruling).replace('_', ' ')}" for cause in ("length", "strength", "control")
            if (ruling := known.facts.get(f"overruled.{cause}", ""))]
    return f"Your coach sees it differently: {', '.join(said)}." if said else ""


def offer_facts(conclusion: Conclusion, known: Known) -> dict[str, Value]:
    """Return the facts of the drill and the homework; "none" if no drill can be offered."""
    offer, any_time = offer_of(conclusion, known), offer_of(conclusion, known, limited=False)
    if offer is None and any_time is not None:
        return {"drill": any_time.part, "drill_why": WITHHELD_BY_LIMIT}
    if offer is None:
        none: dict[str, Value] = {"drill": "none"}
        return none | ({"drill_why": WITHHELD} if conclusion.part else {})
    facts: dict[str, Value] = {
        "drill": offer.part, "drill_name": offer.prime.name, "drill_trial": offer.trial, "home_words": offer.home_words,
        "drill_each": " on each side" if offer.prime.sides == 2 else "",
        "drill_dose": f"{offer.prime.sets} sets of {offer.prime.reps}"}
    if offer.home:
        each = " on each side" if offer.home.sides == 2 else ""
        rounds = f"{offer.home.sets} rounds" if offer.home.reps == 1 else f"{offer.home.sets} sets of {offer.home.reps}"
        facts["home_name"] = offer.home.name
        facts["home_steps"] = f"{rounds}{each}. " + " ".join(offer.home.steps)
    return facts


def last_numbers(known: Known) -> str:
    """Return the last measured numbers of the tests to repeat, in words; "" if nothing was measured."""
    screen, show, said = screen_from(known.answers()), showing(known), []
    wanted = str(known.facts.get("retest.tests", "")).split(",")
    for test, record in screen.items():
        one = protocol(test)
        for side in SIDES:
            readings = one.readings(record, side) if one.readings else ()
            if test in wanted and readings:
                said.append(f"{one.short_name} {side} {show(round(mean_of(readings), 1), readings[0].unit)}")
    return ", ".join(said)
