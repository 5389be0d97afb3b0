"""What a squat day knows: the days told so far, the depth and load to keep to, the drill, the lot, the warm-up sets."""

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
from companion.language.units import METRIC, shown
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.depth_progression import DepthDay, DepthStep, Outcome, steps_from
from companion.screening.load_limit import LATEST, LimitSet, OverLimit, limits_in, load_kept, over_by
from companion.screening.load_limit import over_limit as days_over
from companion.screening.priming_trial import Fair, arm_of, verdict_of
from companion.screening.squat_days import ToldDay, about, days_told, trial_days, trial_seed
from companion.screening.warm_up_sets import POUND, WarmUpSet, sets_for, words, working_words
from flows.outcome_facts import concluded, offer_of, showing, told_at

JUST_THE_BAR: Final = (("bar only", *(f"{before}{bar}{after}" for before in ("", "just ", "only ", "with ", "with just ", "with only ")
                             for bar in ("the bar", "an empty bar", "the empty bar", "empty bar", "empty barbell", "the empty barbell",
                                         "the barbell")
                             for after in ("", " only", " alone"))), "bar_kg")
"""What people call a bar without plates, and the fact that holds what theirs weighs."""

BARS: Final = {"metric": {"full": 20.0, "light": 15.0}, "imperial": {"full": 45 * POUND, "light": 35 * POUND}}
"""What a bar weighs, in kg; a pound is 0.45359237 kg exactly (1959)."""


NIGHT_OVER: Final = time(5)
JUST_NOW: Final = timedelta(minutes=5)
"""Until when, and how soon after "done squatting", a question about yesterday is one about the evening; our choice."""


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


def steps_now(known: Known) -> tuple[DepthStep, DepthStep, Mapping[date, str]] | None:
    """The depth step after all that was told since the results or since a coach pinned it, that as of the days before today,
    and the depth that was set on each day told of; None where none is set.

    A safety check has passed where a squat day was begun, since that opens only after one, and where today's says go. Not on
    the day on which squats begun earlier were only ended; and today only while nothing has been told since that closes the day.
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

    def after(some: list[DepthDay]) -> DepthStep:
        return steps_from(start, usual, some, pin=pin, passed=passed, today=today)

    now, begin = after(days), after([]).depth
    set_on = dict(zip((day for day, _ in now.history), (begin, *(depth for _, depth in now.history)), strict=False))
    return now, after([day for day in days if day.day < today]), {day: depth.value for day, depth in set_on.items()}


def _begun_days(known: Known, zone: str, told: Collection[date]) -> set[date]:
    """The days on which squats were begun, each after that day's safety check. "Done squatting" alone, perhaps tapped after
    midnight, says nothing of when it began, unless that day was told of."""
    first: dict[str, tuple[date, str]] = {}
    for row in known.answers():
        if row.flow == "squat_day":
            first.setdefault(row.run, (local_date(row.at, zone), row.key))
    return {day for day, key in first.values() if key != "squatted" or day in told}


def step_now(known: Known) -> DepthStep | None:
    """The depth step after all that was told; None where none is set."""
    steps = steps_now(known)
    return steps[0] if steps else None


def _common(known: Known) -> dict[str, Value]:
    """What before and after a squat day share: the depth to keep to, whether there is a bar, the trial. What was told today
    leads deeper on another day only."""
    steps = steps_now(known)
    facts: dict[str, Value] = {"depth_set": "yes" if steps else "no", "with_bar": "yes" if has_bar(known) else "no",
                               "of_day": today_of(known).isoformat()}
    if (most := limit_of(known)) is not None:
        facts |= {"most": most, "most_words": showing(known)(most, "kg")}
    if steps is None:
        return facts
    keep = min(steps[0].depth, steps[1].depth)
    return facts | {"keep": keep.value, "keep_words": BAND_WORDS[keep]}


def has_bar(known: Known) -> bool:
    """True if they squat with a bar, as far as is known."""
    none = (known.facts.get("bar.bar") or known.facts.get("about_you.bar")) == "none"
    return not none and known.facts.get("safety.body_first") != "yes"


def limit_of(known: Known) -> float | None:
    """The load to keep to for now, in kg: what the results say, or the coach, whichever is less."""
    limits = [float(str(value)) for name in ("load.limit", "load.pin") if (value := known.facts.get(name, "")) != ""]
    return min(limits, default=None)


def limits_of(known: Known) -> tuple[LimitSet, ...]:
    """The values the load limit has had, so that a day is judged by the one it was told at; the one that stands where no other is
    known."""
    had, now = limits_in(str(known.facts.get("load.limits", ""))), limit_of(known)
    return had or ((LimitSet(datetime.min.replace(tzinfo=UTC), "load.limit", now),) if now is not None else ())


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
    before = [day for day in days if day.day < today and day.squatted]
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
    return facts | _drill(known) | _trial(known, days)


def _invited(known: Known) -> dict[str, Value]:
    """The squat day that a message before it is about."""
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
    """The drill to prime with, where one is offered."""
    if known.facts.get("drill", "none") == "none":
        return {"offered": "no", "drill_line": ""}
    offer = offer_of(concluded(known)[1], known)
    if offer is None:
        return {"offered": "no", "drill_line": ""}
    return {"offered": "yes", "drill_name": offer.prime.name, "drill_line": f" To prime: {offer.prime.name}."}


def verdict_now(known: Known) -> Fair:
    """What the trial shows so far."""
    steps = steps_now(known)
    return verdict_of(seed_of(known), trial_days(told_days(known), steps[2] if steps else None))


def seed_of(known: Known) -> str:
    return trial_seed(known.answers(), str(known.facts.get("person", ""))) or ""


def _trial(known: Known, days: tuple[ToldDay, ...]) -> dict[str, Value]:
    """Whether this day is one of the trial, its number, its lot, and what to repeat."""
    drawn = sum(day.lot is not None for day in days if day.day < today_of(known))
    body_only = known.facts.get("safety.body_first") == "yes"
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
    """Whether the squat day that this was begun on has passed."""
    return "yes" if got.get("of_day") and got.get("today") != got["of_day"] else "no"


def loaded(got: Facts, side: str) -> Value:
    """Whether there is a bar today: one that was just said not to be there is none."""
    return "yes" if got.get("with_bar") == "yes" and got.get("bar.bar") != "none" else "no"


def load_today(got: Facts) -> float | None:
    """The working load that was said for today, in kg."""
    return _number(got, "last_load") if got.get("load") == "same" else _number(got, "load")


def _number(got: Facts, name: str) -> float | None:
    value = got.get(name)
    return value if isinstance(value, float) else None


def over_limit(got: Facts, side: str) -> Value:
    """Whether that is more than the load to keep to for now."""
    load, most = load_today(got), _number(got, "most")
    return "yes" if over_by(load, most) else "no"


def load_told(got: Facts) -> float | None:
    """The load of the working sets as told afterwards, in kg, or else as it was planned; None where neither is known."""
    told = got.get("load", "same")
    return _number(got, "planned") if told == "same" else _number(got, "load")


def over_told(got: Facts, side: str) -> Value:
    """Whether the load told afterwards is more than the one to keep to."""
    return "yes" if over_by(load_told(got), _number(got, "most")) else "no"


def told_words(got: Facts, side: str) -> Value | None:
    """The load told afterwards, in their units."""
    load = load_told(got)
    return None if load is None else shown(load, "kg", str(got.get("welcome.units", METRIC)))


def over_words(got: Facts, side: str) -> Value | None:
    """On how many of the latest squat days, this one among them, the load was over the limit, and by how much."""
    days, of, by = str(got.get("over_before", "0 0 0")).split()
    over = OverLimit(int(days), int(of), float(by)).and_one(over_by(load_told(got), _number(got, "most")))
    return over.words(lambda value, unit: shown(value, unit, str(got.get("welcome.units", METRIC)))) or None


def bar_kg_of(got: Facts, side: str) -> Value | None:
    """What their bar weighs, in kg; None where they have not said which it is."""
    system, bar = str(got.get("welcome.units", "metric")), str(got.get("bar.bar", ""))
    return _number(got, "bar.weight") if bar == "other" else BARS[system].get(bar)


def _sets(got: Facts) -> tuple[float, str, tuple[WarmUpSet, ...]] | None:
    """The working load to reckon with in kg, the system, and the sets up to it for this bar and these plates; None without a bar."""
    load = load_today(got)
    if not load:
        return None
    system = str(got.get("welcome.units", "metric"))
    bar = _number(got, "bar.weight") or 20.0 if got.get("bar.bar") == "other" else BARS[system][str(got.get("bar.bar", "full"))]
    own = got.get("bar.plates") if got.get("bar.which") == "own" else None
    plates = tuple(float(size) for size in str(own).split(",")) if own else None
    most = _as_typed(min(load, _number(got, "most") or load), system)
    return most, system, sets_for(most, _as_typed(bar, system), plates, system)


def _as_typed(kg: float, system: str) -> float:
    """A weight as it was typed in pounds: answers are kept to 10 g, which would leave 225 lb just out of reach of its plates."""
    typed = round(kg * 4 / POUND) * POUND / 4
    return typed if system == "imperial" and abs(typed - kg) < 0.006 else kg


def sets_words_of(got: Facts, side: str) -> Value | None:
    """The sets before the working load; None where there are none."""
    found = _sets(got)
    if found is None:
        return None
    most, system, sets = found
    if not sets:
        return working_words(most, sets, system).capitalize()
    before = words(sets, system)
    return f"Warm-up sets: {before}." if before else None


def load_now_of(got: Facts, side: str) -> Value:
    """What to load for the working sets, after "Now your squats"."""
    found = _sets(got)
    if found is None or not found[2]:
        return ""
    most, system, sets = found
    said = most if over_limit(got, side) == "no" else sets[-1].load  # a load cut to the limit is not what they said
    return f" at {working_words(said, sets, system)}"


def after_facts(known: Known) -> dict[str, Value]:
    """What the questions afterwards know: which day, what was planned, the depth set then."""
    today = today_of(known)
    day = about(known.asked, known.now, today)
    told = next((one for one in told_days(known) if one.day == day), None)
    begun = told is not None and begun_on(known, day)
    facts = _common(known) | {"load_line": "", "of_day": day.isoformat(), "begun": "yes" if begun else "no",
                              "hurt_before": "yes" if known.facts.get("pain.hurt.today") == "yes" else "no"}
    facts["answered"] = max(day, answered_until(known.facts) or day).isoformat()  # one told of late reopens no later one
    ago = (today - day).days
    facts["whose"] = {0: "today's", 1: "yesterday's"}.get(ago, f"{date_words(day, today)}'s")
    yesterday = "yesterday evening" if _done_at_night(known) else "yesterday"
    facts["on_day"] = {0: "today", 1: yesterday}.get(ago, f"on {date_words(day, today)}")
    facts["in_trial"] = "yes" if told and told.lot is not None else "no"
    before = days_over((one for one in told_days(known) if one.day < day), limits_of(known), LATEST - 1)
    facts["over_before"] = f"{before.days} {before.of} {before.by:g}"
    if told and told.load:
        facts["planned"] = told.load
    if told and told.load and not over_by(told.load, limit_of(known)):
        facts |= {"planned_words": showing(known)(told.load, "kg"), "load_line": f" Planned: {showing(known)(told.load, 'kg')}."}
    return facts


def _done_at_night(known: Known) -> bool:
    """Whether "done squatting" was tapped just now, in the night after: then it is the evening's squats that are meant."""
    local = known.now.astimezone(zone_of(zone_from(known.facts, known.now)))
    last = next((row for row in reversed(known.answers()) if row.flow == "squat_day"), None)
    return local.time() < NIGHT_OVER and last is not None and (last.key, last.status) == ("squatted", "ok") and (
        known.now - last.at < JUST_NOW)


def begun_on(known: Known, day: date) -> bool:
    """Whether a squat day was begun with the companion on a date: today, or on a day gone by as far as "done squatting"."""
    zone, days, done = zone_from(known.facts, known.now), dict[str, date](), set[date]()
    for row in known.answers():
        if row.flow == "squat_day":
            of_run = days.setdefault(row.run, local_date(row.at, zone))
            done |= {of_run} if (row.key, row.status) == ("squatted", "ok") else set()
    return day in done or (day == today_of(known) and day in days.values())
