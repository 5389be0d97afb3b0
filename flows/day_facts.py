"""What a squat day knows: the days told so far, the depth and load to keep to, the drill, the lot, the warm-up sets."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

from companion.calendar.plan import next_days
from companion.calendar.wishes import plan_from, zone_from
from companion.calendar.words import date_words, day_words
from companion.clock import local_date
from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.conversation.units import shown, shown_number
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.depth_steps import DepthDay, DepthStep, Outcome, steps_from
from companion.screening.priming import Fair, arm_of, verdict_of
from companion.screening.squat_days import ToldDay, about, days_told, trial_days, trial_seed
from companion.screening.warm_up_sets import POUND, WarmUpSet, sets_for
from flows.outcome_facts import concluded, offer_of, showing, told_at

BARS: Final = {"metric": {"full": 20.0, "light": 15.0}, "imperial": {"full": 45 * POUND, "light": 35 * POUND}}
"""What a bar weighs, in kg; a pound is 0.45359237 kg exactly (1959)."""


def today_of(known: Known) -> date:
    return date.fromisoformat(str(known.facts["today"]))


def told_days(known: Known) -> tuple[ToldDay, ...]:
    """The squat days told of, oldest first."""
    return days_told(known.answers(), zone_from(known.facts, known.now))


def outcome_of(day: ToldDay) -> Outcome:
    """What a day means for the depth. In the priming trial the depth stays, so that its days can be compared: a clean day
    moves nothing there. A back that moved deeper than set says nothing of the depth set."""
    if day.back == "moved" and day.kept != "deeper":
        return "moved"
    return "clean" if day.back == "still" and day.kept == "kept" and day.lot is None else "other"


def step_now(known: Known) -> DepthStep | None:
    """The depth step after all that was told since the results, or since a coach pinned it; None where none is set."""
    pin, keep = (band_of(str(known.facts.get(f"depth.{name}", ""))) for name in ("pin", "keep"))
    start = pin or keep
    if start is None:
        return None
    zone, told = zone_from(known.facts, known.now), told_at(known)
    since = str(known.facts.get("depth.pinned_on", "")) if pin else (local_date(told, zone).isoformat() if told else "")
    checked = {local_date(row.at, zone) for row in known.answers()
               if (row.flow, row.key, row.value, row.ending) == ("safety_check", "leg_signs", "no", "done")}
    days = [DepthDay(day.day, outcome_of(day), day.film, day.hurt, day.day in checked) for day in told_days(known)
            if day.day.isoformat() >= since and (day.back or day.kept or day.hurt)]
    return steps_from(start, pin or band_of(str(known.facts.get("about_you.usual_depth", ""))), days)


def _common(known: Known) -> dict[str, Value]:
    """What before and after a squat day share: the depth to keep to, whether there is a bar, the trial."""
    step = step_now(known)
    body_only = known.facts.get("safety.body_first") == "yes" or known.facts.get("about_you.bar") == "none"
    facts: dict[str, Value] = {"depth_set": "yes" if step else "no", "with_bar": "no" if body_only else "yes",
                               "of_day": today_of(known).isoformat()}
    return facts | ({"keep": step.depth.value, "keep_words": BAND_WORDS[step.depth]} if step else {})


def limit_of(known: Known) -> float | None:
    """The load to keep to for now, in kg: what the results say, or the coach, whichever is less."""
    limits = [float(str(value)) for name in ("load.limit", "load.pin") if (value := known.facts.get(name, "")) != ""]
    return min(limits, default=None)


def last_words(day: ToldDay, known: Known) -> str:
    """A squat day in a few words: "80 kg, a little above parallel, back still"."""
    depth = band_of(day.depth)
    parts = [showing(known)(day.load, "kg") if day.load else "", BAND_WORDS[depth] if depth else "",
             {"kept": "depth kept", "deeper": "deeper than set", "higher": "higher than set"}.get(day.kept or "", ""),
             {"still": "back still", "moved": "back moved"}.get(day.back or "", ""), "something hurt" if day.hurt else ""]
    return ", ".join(filter(None, parts))


def day_facts(known: Known) -> dict[str, Value]:
    """What a squat day begins with, and what the message before it says."""
    today, days = today_of(known), told_days(known)
    before = [day for day in days if day.day < today]
    facts = _common(known) | _invited(known) | {"load_line": "", "number": float(len(before) + 1)}
    last = last_words(before[-1], known) if before else ""
    goal = str(known.facts.get("squat.goal", ""))
    facts["last_line"] = f" Last time: {last}." if last else ""
    facts["goal_line"] = f" You want: {goal}." if goal else ""
    facts["keep_line"] = f" Depth to keep to: {facts['keep_words']}." if "keep_words" in facts else ""
    facts["keep_now"] = f"Keep to {facts['keep_words']}. " if "keep_words" in facts else ""
    load = next((day.load for day in reversed(before) if day.load), known.facts.get("about_you.load"))
    if load is not None:
        facts |= {"last_load": float(load), "load_line": f" Last time {showing(known)(float(load), 'kg')}."}
    if (most := limit_of(known)) is not None:
        facts |= {"most": most, "most_words": showing(known)(most, "kg")}
    return facts | _drill(known) | _trial(known, days)


def _invited(known: Known) -> dict[str, Value]:
    """The squat day that a message before it is about."""
    today, plan = today_of(known), plan_from(known.facts)
    try:
        day = date.fromisoformat(known.asked)
    except ValueError:
        return {}
    coming = next_days(plan, day, 1)
    if not coming or coming[0].day != day:
        return {}
    after = next_days(plan, max(today, day + timedelta(days=1)), 1)
    return {"invited_day": day.isoformat(), "invited_at": f"{coming[0].at:%H:%M}", "invited_words": day_words(coming[0], today),
            "missed_words": f"on {date_words(day, today)}" if day != today else "today",
            "next_line": f" The next is {day_words(after[0], today)}." if after else ""}


def _drill(known: Known) -> dict[str, Value]:
    """The drill to prime with, where one is offered."""
    if known.facts.get("drill", "none") == "none":
        return {"offered": "no", "drill_line": ""}
    offer = offer_of(concluded(known)[1], known)
    if offer is None:
        return {"offered": "no", "drill_line": ""}
    return {"offered": "yes", "drill_name": offer.prime.name, "drill_line": f" To prime: {offer.prime.name}."}


def verdict_now(known: Known) -> Fair:
    """What the trial shows so far."""
    return verdict_of(seed_of(known), trial_days(told_days(known)))


def seed_of(known: Known) -> str:
    return trial_seed(known.answers(), str(known.facts.get("person", ""))) or ""


def _trial(known: Known, days: tuple[ToldDay, ...]) -> dict[str, Value]:
    """Whether this day is one of the trial, its number, its lot, and what to repeat."""
    drawn = sum(day.lot is not None for day in days)
    body_only = known.facts.get("safety.body_first") == "yes"
    joined = known.facts.get("trial.joined") == "yes" and not body_only and known.facts.get("trial.day.today") != "yes"
    if not joined or known.facts.get("drill", "none") == "none":
        return {"in_trial": "no"}
    last = next((day for day in reversed(days) if day.lot is not None and day.load is not None), None)
    most = limit_of(known)
    fits = last is not None and last.load is not None and (most is None or last.load <= most)
    same = f"{showing(known)(last.load, 'kg')}, as last time" if last and last.load is not None and fits else "one load"
    return {"in_trial": "yes", "lot_number": float(drawn + 1), "arm": arm_of(seed_of(known), drawn),
            "same_as": f"{same} and the same depth"}


def over_day(got: Facts, side: str) -> Value:
    """Whether the squat day that this was begun on has passed."""
    return "yes" if got.get("of_day") and got.get("today") != got["of_day"] else "no"


def load_today(got: Facts) -> float | None:
    """The working load that was said for today, in kg."""
    return _number(got, "last_load") if got.get("load") == "same" else _number(got, "load")


def _number(got: Facts, name: str) -> float | None:
    value = got.get(name)
    return value if isinstance(value, float) else None


def over_limit(got: Facts, side: str) -> Value:
    """Whether that is more than the load to keep to for now."""
    load, most = load_today(got), _number(got, "most")
    return "yes" if load is not None and most is not None and load > most else "no"


def sets_words_of(got: Facts, side: str) -> Value | None:
    """The sets before the working load, for this bar and these plates; None where there is no bar today."""
    load = load_today(got)
    if not load:
        return None
    system = str(got.get("welcome.units", "metric"))
    bar = _number(got, "bar.weight") or 20.0 if got.get("bar.bar") == "other" else BARS[system][str(got.get("bar.bar", "full"))]
    own = got.get("bar.plates") if got.get("bar.which") == "own" else None
    plates = tuple(float(size) for size in str(own).split(",")) if own else None
    sets = sets_for(min(load, _number(got, "most") or load), bar, plates, system)
    return _sets_words(sets, system) if len(sets) > 1 else None


def _sets_words(sets: tuple[WarmUpSet, ...], system: str) -> str:
    """The sets in words: "20 kg × 8 (the bar), 40 kg × 5 (10 a side) … then 80 kg (20 and 10 a side)"."""
    def told(one: WarmUpSet) -> str:
        side = " and ".join(shown_number(size, "kg", system) for size in one.side)
        times = f" × {one.repetitions}" if one.repetitions else ""
        return f"{shown(one.load, 'kg', system)}{times} ({f'{side} a side' if side else 'the bar'})"

    *before, working = map(told, sets)
    return f"Warm-up sets: {', '.join(before)}. Then your working sets at {working}."


def after_facts(known: Known) -> dict[str, Value]:
    """What the questions afterwards know: which day, what was planned, the depth set then."""
    today = today_of(known)
    day = about(known.asked, known.now, today)
    told = next((one for one in told_days(known) if one.day == day), None)
    facts = _common(known) | {"load_line": "", "of_day": day.isoformat(), "begun": "yes" if told and day == today and begun_on(known, day) else "no"}
    ago = (today - day).days
    facts["whose"] = {0: "today's", 1: "yesterday's"}.get(ago, f"{date_words(day, today)}'s")
    facts["on_day"] = {0: "today", 1: "yesterday"}.get(ago, f"on {date_words(day, today)}")
    facts["in_trial"] = "yes" if told and told.lot is not None else "no"
    if told and told.load is not None:
        facts |= {"planned_words": showing(known)(told.load, "kg"), "load_line": f" Planned: {showing(known)(told.load, 'kg')}."}
    return facts


def begun_on(known: Known, day: date) -> bool:
    """Whether a squat day was begun with the companion on a date."""
    zone = zone_from(known.facts, known.now)
    return any(row.flow == "squat_day" and local_date(row.at, zone) == day for row in known.answers())
