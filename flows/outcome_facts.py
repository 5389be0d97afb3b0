"""Facts for the results: the conclusion of a screen in words, computed when the results are told."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

from companion.base.clock import local_date
from companion.conversation.condition import Value
from companion.conversation.flow import Known
from companion.language.units import METRIC, shown
from companion.screening.conclusion import Conclusion, conclude, settle_words, verdict_words
from companion.screening.drills import DrillOffer, offer_for
from companion.screening.errors import errors_from
from companion.screening.protocols import protocol, protocols
from companion.screening.readings import SIDES, NumberFormat, mean_of
from companion.screening.retest import RetestPlan, plan
from companion.screening.rulings import Ruling, Verdict
from companion.screening.safety import pain_now
from companion.screening.screen import Screen, about_from, screen_from
from companion.screening.sureness import sureness_words

SAID_AT_ONCE = 2
"""Findings told with a cause at first; the rest on request."""

VERDICT_WORDS_MOST = 350

WITHHELD = ("The drill for that part means lying on your back or folding deeply, so I offer none while you are, or may be, "
            "pregnant. Ask your doctor or midwife.")


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


def concluded(known: Known) -> tuple[Screen, Conclusion, RetestPlan]:
    """Return the screen, its conclusion, and the retest plan."""
    answers = list(known.answers())
    screen, about = screen_from(answers), about_from(answers)
    errors = errors_from(answers, about.sex)
    pain = pain_now(known.facts.get("safety_check.pain"), known.facts.get("safety.level"))
    conclusion = conclude(screen, about, pain, showing(known), errors)
    return screen, conclusion, plan(conclusion, screen, about, errors)


def outcome_facts(known: Known) -> dict[str, Value]:
    """Return all facts of the results, computed once at the beginning."""
    screen, conclusion, again = concluded(known)
    if not screen.done:
        return {"any": "no"}
    facts: dict[str, Value] = {
        **_times(known), "any": "yes", "overall": conclusion.overall, "overall_words": conclusion.words,
        "differences": " ".join(conclusion.differences), "notes": " ".join(filter(None, (*conclusion.notes, overruled(known)))),
        "not_tested": ", ".join(protocol(test).short_name for test in conclusion.not_tested),
        "settle": settle_words(conclusion.settle[0]) if conclusion.settle else "",
        "keep": conclusion.keep.value if conclusion.keep else "", "keep_words": conclusion.keep_words,
        "load_words": conclusion.load_words, "stance": conclusion.stance, "retest_words": again.words,
        "retest_tests": ",".join(one.test for one in again.tests),
        "load_limit": "" if conclusion.load_limit is None else f"{conclusion.load_limit:g}",
    }
    for verdict in conclusion.verdicts:
        facts |= verdict_facts(verdict)
    if again.days is not None:
        today = date.fromisoformat(str(known.facts["today"]))
        tested = max((row.at for row in known.answers() if row.flow in protocols()), default=known.now)
        counted = local_date(tested, str(known.facts.get("welcome.zone", "")))  # reading the results again moves no date
        facts["retest_on"] = max(counted + timedelta(days=again.days), today + timedelta(days=1)).isoformat()
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
    carries = "against" if verdict.ruling is Ruling.RULED_OUT else "for"
    weighed = sorted((finding for finding in verdict.because if finding.row.direction != "neither" and not finding.row.hint),
                     key=lambda finding: (finding.part != verdict.part, finding.row.direction != carries,
                                          verdict.side in SIDES and finding.side not in ("", verdict.side),
                                          not finding.side, -finding.grade.rank))
    if verdict.ruling is Ruling.RULED_OUT:  # one line for each part before a second for any
        first_of = {finding.part: finding for finding in reversed(weighed)}
        weighed.sort(key=lambda finding: first_of[finding.part] is not finding)
    else:  # one line from each test before a second from any
        once = {finding.row.test: finding for finding in reversed(weighed)}
        weighed.sort(key=lambda finding: (finding.row.direction != carries, once[finding.row.test] is not finding))
    reasons = list(dict.fromkeys(finding.words for finding in weighed))
    at_once = 4 if verdict.ruling is Ruling.RULED_OUT and verdict.cause == "length" else SAID_AT_ONCE
    first = f"{verdict_words(verdict)} {sureness_words(verdict)}".strip()
    if verdict.ruling is not Ruling.TOO_CLOSE and verdict.contradiction:
        reasons.append(verdict.contradiction)
    for reason in [verdict.contradiction if verdict.ruling is Ruling.TOO_CLOSE else "", *reasons[:at_once]]:
        if reason and len(first) + len(reason) < VERDICT_WORDS_MOST:
            first += f"\n{reason}"
    return {verdict.cause: verdict.ruling.value, f"{verdict.cause}_words": first,
            f"{verdict.cause}_more": "\n".join(reason for reason in reasons if reason not in first),
            f"{verdict.cause}_because": " ".join(reasons), f"{verdict.cause}_side": verdict.side}


def offer_of(conclusion: Conclusion, known: Known) -> DrillOffer | None:
    """Return the drill for the likeliest part, or the one a coach chose, adapted to this lifter; None if there is none."""
    pregnant = known.facts.get("safety_check.pregnant") in ("yes", "unsure")
    part = str(known.facts.get("drill.pin", "")) or conclusion.part
    return offer_for(part, easier=conclusion.easier and part == conclusion.part, no_stretch=part in conclusion.no_stretch,
                     no_lying=pregnant)


def overruled(known: Known) -> str:
    """Return the coach's differing rulings in words; they are shown next to the tests' verdicts and do not replace them."""
    said = [f"{cause} is {str(ruling).replace('_', ' ')}" for cause in ("length", "strength", "control")
            if (ruling := known.facts.get(f"overruled.{cause}", ""))]
    return f"Your coach sees it differently: {', '.join(said)}." if said else ""


def offer_facts(conclusion: Conclusion, known: Known) -> dict[str, Value]:
    """Return the facts of the drill and the home work; "none" if no drill can be offered."""
    offer = offer_of(conclusion, known)
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
