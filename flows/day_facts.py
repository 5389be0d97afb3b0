"""Facts for the squat-day flows: the days so far, the depth and load to keep to, the drill, the lot, the warm-up sets."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from datetime import UTC, date, datetime, time, timedelta
from typing import Final

from companion.base.clock import local_date, zone_of
from companion.calendar.plan import next_days
from companion.calendar.preferences import answered_until, plan_from, zone_from
from companion.calendar.words import date_words, day_words
from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.language.days.dates import FARTHEST
from companion.language.limits import sets_one
from companion.language.units import METRIC, shown
from companion.screening.depth import BAND_WORDS, Band, band_of
from companion.screening.depth_progression import DayOutcome, DepthDay, DepthStep, steps_from
from companion.screening.front_pinch import HELD, pinch_days
from companion.screening.load_limit import LimitSet, at_most, limit_at, limit_now, limits_in, load_kept, over_by
from companion.screening.priming_trial import TrialResult, arm_of, verdict_of
from companion.screening.readings import NumberFormat
from companion.screening.setups import called, setup_from
from companion.screening.squat_days import ToldDay, about, day_over, days_told, trial_days, trial_seed
from companion.screening.warm_up_sets import BARS, POUND, WarmUpSet, sets_for, words, working_words
from flows.outcome_facts import concluded, offer_of, showing, told_at
from flows.safety_facts import what_hurt
from flows.shared import BODY_WEIGHT

JUST_THE_BAR: Final = (("bar only", *(f"{before}{bar}{after}" for before in ("", "just ", "only ", "with ", "with just ", "with only ")
                             for bar in ("the bar", "an empty bar", "the empty bar", "empty bar", "empty barbell", "the empty barbell",
                                         "the barbell")
                             for after in ("", " only", " alone"))), "bar_kg")
"""Names for a bar without plates, and the fact that holds the weight of the lifter's own."""

BAR_WEIGHTS: Final = {system: dict(zip(("full", "light"), sizes, strict=True)) for system, sizes in BARS.items()}
"""Weights of the usual bars in kg, by unit system and answer."""


DAY_TOLD: Final = "squats_told.day"
"""The day on which they said last that they had squatted."""

NIGHT_OVER: Final = time(5)
JUST_NOW: Final = timedelta(minutes=5)
"""Before this hour, and this soon after "done squatting", a question about yesterday says "yesterday evening"; our choice."""


def today_of(known: Known) -> date:
    """Return the lifter's local date."""
    return date.fromisoformat(str(known.facts["today"]))


def told_days(known: Known) -> tuple[ToldDay, ...]:
    """Return the reported squat days, oldest first."""
    return days_told(known.answers(), zone_from(known.facts, known.now))


def outcome_of(day: ToldDay) -> DayOutcome:
    """Return a day's outcome for the depth. In the priming trial a clean day counts as "other", so that the depth stays and days
    can be compared. A back that moved deeper than the set depth counts as "other" too: it shows nothing about that depth."""
    if day.back == "moved" and day.kept != "deeper":
        return "moved"
    return "clean" if day.back == "still" and day.kept == "kept" and day.lot is None else "other"


def steps_now(known: Known) -> tuple[DepthStep, DepthStep, Mapping[date, str]] | None:
    """Return the depth step from all days since the results or a coach's pin, the step from the days before today, and the depth
    set on each reported day; None if no depth is set.

    A safety check counts as passed on a day on which squats were begun, since they open only after one, and today if today's
    check says go and nothing since has closed the day. A day on which squats begun earlier were only ended does not count.
    """
    pin, keep = (band_of(str(known.facts.get(f"depth.{name}", ""))) for name in ("pin", "keep"))
    start = pin or keep
    if start is None:
        return None
    zone, told, today = zone_from(known.facts, known.now), told_at(known), today_of(known)
    since = str(known.facts.get("depth.pinned_on", "")) if pin else (local_date(told, zone).isoformat() if told else "")
    days_of = [day for day in told_days(known) if day.squatted]
    passed = _begun_days(known, zone, {day.day for day in days_of})
    if known.facts.get("safety.level", "go") != "go":
        passed.discard(today)
    elif known.facts.get("safety.checked") == "go" and known.facts.get("safety.checked.today") == "yes":
        passed.add(today)
    limits, bar = limits_of(known), has_bar(known)
    days = [DepthDay(day.day, outcome_of(day), day.film, day.hurt, load=load_kept(day, limits, bar)) for day in days_of
            if day.day.isoformat() >= since]
    usual = band_of(str(known.facts.get("about_you.usual_depth", "")))

    held = HELD if pinch_days(known.answers(), zone) else ""

    def after(some: list[DepthDay]) -> DepthStep:
        """Return the depth step after these days."""
        return steps_from(start, usual, some, pin=pin, passed=passed, today=today, held=held)

    now, begin = after(days), after([]).depth
    set_on = dict(zip((day for day, _ in now.history), (begin, *(depth for _, depth in now.history)), strict=False))
    return now, after([day for day in days if day.day < today]), {day: depth.value for day, depth in set_on.items()}


def depth_now(steps: tuple[DepthStep, DepthStep, Mapping[date, str]]) -> Band:
    """Return the depth to keep to today: reports of today make it deeper from the next day only."""
    return min(steps[0].depth, steps[1].depth)


def _begun_days(known: Known, zone: str, told: Collection[date]) -> set[date]:
    """Return the days on which squats were begun, each after that day's safety check. "Done squatting" alone may be tapped after
    midnight, so it counts only if that day was reported."""
    first: dict[str, tuple[date, str]] = {}
    for row in known.answers():
        if row.flow == "squat_day":
            first.setdefault(row.run, (local_date(row.at, zone), row.key))
    return {day for day, key in first.values() if key != "squatted" or day in told}


def step_now(known: Known) -> DepthStep | None:
    """Return the depth step from all reported days; None if no depth is set."""
    steps = steps_now(known)
    return steps[0] if steps else None


def _common(known: Known) -> dict[str, Value]:
    """Return the facts shared by the flows before and after squats: the depth to keep to, and whether there is a bar. Reports of
    today make the depth deeper from the next day only."""
    steps = steps_now(known)
    facts: dict[str, Value] = {"depth_set": "yes" if steps else "no", "with_bar": "yes" if has_bar(known) else "no",
                               "of_day": today_of(known).isoformat()}
    if (most := limit_of(known)) is not None:
        facts |= {"most": most, "most_words": most_words(most, showing(known))}
    if steps is None:
        return facts
    keep = depth_now(steps)
    return facts | {"keep": keep.value, "keep_words": BAND_WORDS[keep]}


def most_words(most: float, show: NumberFormat) -> str:
    """Return a load limit in words, as what to keep to."""
    return show(most, "kg") if most else "body weight"


def _limit_then(then: float, known: Known, day: date) -> dict[str, Value]:
    """Return in words the load limit that stood on a day, as what a load over it is, and what to keep to from now on, if anything."""
    show, now, today = showing(known), limit_of(known), day == today_of(known)
    told = (f"more than the {show(then, 'kg')} to keep to {'for now' if today else 'that day'}" if then else
            f"over your limit, which {'is' if today else 'was'} {at_most(then, show)} {'for now' if today else 'that day'}")
    return {"limit_is": told, "next_time": "" if now is None else f" Keep to {most_words(now, show)} next time."}


def _most_on(known: Known, day: date) -> float | None:
    """Return the load limit that stood on a day, in kg: today the one that stands, on an earlier day the last one; None for none."""
    return limit_of(known) if day == today_of(known) else limit_at(limits_of(known), day_over(day, zone_from(known.facts, known.now)))


def over_facts(known: Known) -> dict[str, Value]:
    """Return how the load of a squat day, as it is told now, stands against the limit that stood when it was lifted."""
    day = about(known.asked, known.now, today_of(known))
    told = next((one for one in told_days(known) if one.day == day), None)
    most = limit_at(limits_of(known), told.lifted_by) if told and told.lifted_by else None
    if told is None or told.load is None or most is None or not over_by(told.load, most):
        return {"over": "no"}
    return {"over": "yes", "load_words": showing(known)(told.load, "kg"), **_limit_then(most, known, day)}


def has_bar(known: Known) -> bool:
    """True if they squat with a bar, as far as is known."""
    none = (known.facts.get("bar.bar") or known.facts.get("about_you.bar")) == "none"
    return not none and not BODY_WEIGHT.holds(known.facts)


def limit_of(known: Known) -> float | None:
    """Return the load limit in kg; None for no limit."""
    found = limit_held(known)
    return found[1] if found else None


def limit_held(known: Known) -> tuple[str, float] | None:
    """Return the load limit that holds and whose it is (``limit_now``), with what a clinician's limits close today; None for none."""
    return limit_now({**known.facts, "load.told": known.facts.get("limit.kg", known.facts.get("load.told", ""))})


def limits_of(known: Known) -> tuple[LimitSet, ...]:
    """The values the load limit has had, so that a day is judged by the one of its time; the one that stands where no other is
    known."""
    had, now = limits_in(str(known.facts.get("load.limits", ""))), limit_of(known)
    return had or ((LimitSet(datetime.min.replace(tzinfo=UTC), "load.limit", now),) if now is not None else ())


def last_words(day: ToldDay, known: Known) -> str:
    """Return a squat day in a few words: "80 kg, a little above parallel, back still"."""
    depth = band_of(day.depth)
    parts = [showing(known)(day.load, "kg") if day.load else "", BAND_WORDS[depth] if depth else "",
             {"kept": "depth kept", "deeper": "deeper than set", "higher": "higher than set"}.get(day.kept or "", ""),
             {"still": "back still", "moved": "back moved"}.get(day.back or "", ""), "something hurt" if day.hurt else ""]
    return ", ".join(filter(None, parts))


def day_facts(known: Known) -> dict[str, Value]:
    """Return the facts a squat day begins with, and those of the message before it."""
    today, days = today_of(known), told_days(known)
    before = [day for day in days if day.day < today and day.squatted]
    facts = _common(known) | _invited(known) | {"load_line": "", "number": float(len(before) + 1)}
    facts["body_only"] = "yes" if BODY_WEIGHT.holds(known.facts) else "no"
    last = last_words(before[-1], known) if before else ""
    goal = str(known.facts.get("squat.goal", ""))
    facts["last_line"] = f" Last time: {last}." if last else ""
    facts["goal_line"] = f" You want: {goal}." if goal and not sets_one(goal, today) else ""
    told = known.facts.get("limit.words")
    hurt = known.facts.get("pain.follow") == "open"
    facts["hurt_line"] = f" Before it I ask how it is: you told me that {what_hurt(known)} hurt." if hurt else ""
    facts["limit_line"] = f" You were told: {told}." if told else ""
    if setup := setup_from(known.facts):
        facts |= {"setup_words": f"Your set-up for now: {called(setup.change, showing(known))}, all else as usual.{setup.whose}",
                  "setup_view": setup.change.split("+")[0]}
    facts["setup_line"] = f" Set-up: {called(setup.change, showing(known))}." if setup else ""
    facts["keep_line"] = f" Depth to keep to: {facts['keep_words']}." if "keep_words" in facts else ""
    facts["keep_now"] = f"Keep to {facts['keep_words']}. " if "keep_words" in facts else ""
    load = next((kg for day in reversed(before) if (kg := day.load or day.planned)), known.facts.get("about_you.load"))
    if load is not None:
        facts |= {"last_load": float(load), "load_line": f" Last time {showing(known)(float(load), 'kg')}."}
    return facts | _drill(known) | _trial(known, days)


def _invited(known: Known) -> dict[str, Value]:
    """Return the facts of the squat day that an invitation is about; none if it is not planned."""
    today, plan = today_of(known), plan_from(known.facts)
    try:
        day = date.fromisoformat(known.asked)
    except ValueError:
        return {}
    if abs(day - today) > FARTHEST:  # a button may carry anything
        return {}
    coming = next_days(plan, day, 1)
    if not coming or coming[0].day != day:
        return {}
    after = next_days(plan, max(today, day + timedelta(days=1)), 1)
    return {"invited_day": day.isoformat(), "invited_at": f"{coming[0].at:%H:%M}", "invited_words": day_words(coming[0], today),
            "missed_words": f"on {date_words(day, today)}" if day != today else "today",
            "next_line": f" The next is {day_words(after[0], today)}." if after else ""}


def _drill(known: Known) -> dict[str, Value]:
    """Return the facts of the drill to prime with, if one is offered."""
    if known.facts.get("drill", "none") == "none":
        return {"offered": "no", "drill_line": ""}
    offer = offer_of(concluded(known)[1], known)
    if offer is None:
        return {"offered": "no", "drill_line": ""}
    return {"offered": "yes", "drill_name": offer.prime.name, "drill_line": f" Drill before: {offer.prime.name}."}


def verdict_now(known: Known) -> TrialResult:
    """Return the result of the trial so far."""
    steps = steps_now(known)
    return verdict_of(seed_of(known), trial_days(told_days(known), steps[2] if steps else None))


def seed_of(known: Known) -> str:
    """Return the seed of the trial's lots, "" before joining."""
    return trial_seed(known.answers(), str(known.facts.get("person", ""))) or ""


def _trial(known: Known, days: tuple[ToldDay, ...]) -> dict[str, Value]:
    """Return the facts of today in the trial: in it or not, its number, its arm, and the load and depth to repeat."""
    drawn = sum(day.lot is not None for day in days if day.day < today_of(known))
    body_only = BODY_WEIGHT.holds(known.facts)
    joined = known.facts.get("trial.joined") == "yes" and not body_only and known.facts.get("trial.day.today") != "yes"
    if not joined or known.facts.get("drill", "none") == "none":
        return {"in_trial": "no"}
    last = next((day for day in reversed(days) if day.lot is not None and day.load is not None), None)
    most = limit_of(known)
    fits = last is not None and last.load is not None and (most is None or last.load <= most)
    same = f"{showing(known)(last.load, 'kg')} and the depth of last time" if last and last.load and fits else "one load and one depth"
    return {"in_trial": "yes", "lot_number": float(drawn + 1), "arm": arm_of(seed_of(known), drawn),
            "same_as": same}


def over_day(got: Facts, side: str) -> Value:
    """Return "yes" if the day on which this squat day was begun is over."""
    return "yes" if got.get("of_day") and got.get("today") != got["of_day"] else "no"


def loaded(got: Facts, side: str) -> Value:
    """Return "yes" if there is a bar today; an answer in this run that there is none counts."""
    return "yes" if got.get("with_bar") == "yes" and got.get("bar.bar") != "none" else "no"


def load_today(got: Facts) -> float | None:
    """Return today's working load as given, in kg; None if not given."""
    return _number(got, "last_load") if got.get("load") == "same" else _number(got, "load")


def _number(got: Facts, name: str) -> float | None:
    value = got.get(name)
    return value if isinstance(value, float) else None


def over_limit(got: Facts, side: str) -> Value:
    """Return "yes" if today's working load is above the limit."""
    load, most = load_today(got), _number(got, "most")
    return "yes" if over_by(load, most) else "no"


def load_told(got: Facts) -> float | None:
    """The load of the working sets as told afterwards, in kg, 0 without a bar; None where it was not told."""
    told = got.get("load")
    return _number(got, "planned") if told == "same" else 0.0 if told == "none" else _number(got, "load")


def over_told(got: Facts, side: str) -> Value:
    """Return "yes" if the reported load is above the limit."""
    return "yes" if over_by(load_told(got), _number(got, "most")) else "no"


def told_words(got: Facts, side: str) -> Value | None:
    """The load told afterwards, in their units."""
    load = load_told(got)
    return None if load is None else shown(load, "kg", str(got.get("welcome.units", METRIC)))


def bar_kg_of(got: Facts, side: str) -> float | None:
    """Return the weight of the lifter's bar in kg; None if not known."""
    system, bar = str(got.get("welcome.units", "metric")), str(got.get("bar.bar", ""))
    return _number(got, "bar.weight") if bar == "other" else BAR_WEIGHTS[system].get(bar)


def _sets(got: Facts) -> tuple[float, str, tuple[WarmUpSet, ...]] | None:
    """Return the working load within the limit in kg, the unit system, and the sets up to it; None without a load."""
    load = load_today(got)
    if not load:
        return None
    system = str(got.get("welcome.units", "metric"))
    bar = bar_kg_of(got, "") or BAR_WEIGHTS[system]["full"]
    own = got.get("bar.plates") if got.get("bar.which") == "own" else None
    plates = tuple(float(size) for size in str(own).split(",")) if own else None
    most = _as_typed(min(load, _number(got, "most") or load), system)
    return most, system, sets_for(most, _as_typed(bar, system), plates, system)


def _as_typed(kg: float, system: str) -> float:
    """Return a weight as typed in pounds: answers are stored to 10 g, which would put 225 lb just out of reach of its plates."""
    typed = round(kg * 4 / POUND) * POUND / 4
    return typed if system == "imperial" and abs(typed - kg) < 0.006 else kg


def sets_words_of(got: Facts, side: str) -> Value | None:
    """Return the sets before the working load, in words; None if there are none."""
    found = _sets(got)
    if found is None:
        return None
    most, system, sets = found
    if not sets:
        return working_words(most, sets, system).capitalize()
    before = words(sets, system)
    return f"Warm-up sets:\n{before}" if before else None


def load_now_of(got: Facts, side: str) -> Value:
    """Return the load for the working sets, as it follows "Now your squats"."""
    found = _sets(got)
    if found is None or not found[2]:
        return ""
    most, system, sets = found
    said = most if over_limit(got, side) == "no" else sets[-1].load  # a load cut to the limit is not the one they gave
    return f" at {working_words(said, sets, system)}"


def after_facts(known: Known) -> dict[str, Value]:
    """Return the facts of the questions afterwards: the day in question, its planned load, the depth set."""
    today = today_of(known)
    day = about(known.asked, known.now, today)
    told = next((one for one in told_days(known) if one.day == day), None)
    begun = (told is not None and begun_on(known, day)) or known.facts.get(DAY_TOLD) == day.isoformat()
    facts = _common(known) | {"load_line": "", "of_day": day.isoformat(), "begun": "yes" if begun else "no",
                              "hurt_before": "yes" if known.facts.get("pain.hurt.today") == "yes" else "no"}
    facts.pop("most", None)
    if (most := _most_on(known, day)) is not None:
        facts |= {"most": most, **_limit_then(most, known, day)}
    facts["answered"] = max(day, answered_until(known.facts) or day).isoformat()  # a late report reopens no later day
    ago = (today - day).days
    facts["whose"] = {0: "today's", 1: "yesterday's"}.get(ago, f"{date_words(day, today)}'s")
    yesterday = "yesterday evening" if _done_at_night(known) else "yesterday"
    facts["on_day"] = {0: "today", 1: yesterday}.get(ago, f"on {date_words(day, today)}")
    facts["in_trial"] = "yes" if told and told.lot is not None else "no"
    if told and told.planned:
        facts["planned"] = told.planned
        if not over_by(told.planned, most):
            facts |= {"planned_words": showing(known)(told.planned, "kg"), "load_line": f" Planned: {showing(known)(told.planned, 'kg')}."}
    return facts


def _done_at_night(known: Known) -> bool:
    """True if "done squatting" was tapped just now, in the night after: it then means the evening's squats."""
    local = known.now.astimezone(zone_of(zone_from(known.facts, known.now)))
    last = next((row for row in reversed(known.answers()) if row.flow == "squat_day"), None)
    return local.time() < NIGHT_OVER and last is not None and (last.key, last.status) == ("squatted", "ok") and (
        known.now - last.at < JUST_NOW)


def begun_on(known: Known, day: date) -> bool:
    """True if a squat day was begun here on this date; for a past date it must have reached "done squatting"."""
    zone, days, done = zone_from(known.facts, known.now), dict[str, date](), set[date]()
    for row in known.answers():
        if row.flow == "squat_day":
            of_run = days.setdefault(row.run, local_date(row.at, zone))
            done |= {of_run} if (row.key, row.status) == ("squatted", "ok") else set()
    return day in done or (day == today_of(known) and day in days.values())
