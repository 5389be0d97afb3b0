"""What the pain questions know and work out: what was done today, the level after them, and whether pain can be taken back."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, date
from typing import Final

from companion.base.clock import local_date
from companion.calendar.preferences import zone_from
from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.screening.protocols import protocols, route
from companion.screening.safety import Level, worst
from flows.safety_facts import outcome_words, pain_outcome, said_leg_signs

SQUATS: Final = "squat_day"
MOVEMENTS: Final[Mapping[str, str]] = {**{test: one.short_name for test, one in protocols().items()},
                                       "warm_up": "warm-up", "prime": "priming drill", SQUATS: "squats of today"}
"""What it may have hurt in, by flow, as it is called in a sentence."""

MILD: Final = frozenset(("sharp", "bad", "taken_back"))
"""Reasons of pain that may be taken back; every other is a sign, or no reason of the pain questions at all."""
SIGNS: Final = ("below_knee", "tingling", "bladder", "weakness", "heart_now", "saddle_now")


def before_pain(known: Known) -> dict[str, Value]:
    """What stood when the pain questions began, kept with their run: the level and why, the moment, what it stood at before
    the first pain that closed it, and what was done today."""
    level, why = str(known.facts.get("safety.level", "go")), str(known.facts.get("safety.why", ""))
    now = known.now.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
    before, since = _closed_from(known, why) or (level, now)
    did = _done_today(known)
    return {"level_before": level, "why_before": why, "now": now, "before": before, "since": since,
            "first": "yes" if since == now else "no", "did": " ".join(did), "named": known.asked if known.asked in MOVEMENTS else "",
            **{f"did_{flow}": "yes" for flow in did}}


def _closed_from(known: Known, why: str) -> tuple[str, str] | None:
    """The level before pain told today closed it, and since when; None where something else has closed it since."""
    level, since, *reasons = str(known.facts.get("pain.before", "")).split() if "pain.before.today" in known.facts else ("", "")
    return (Level(level).value, since) if level and set(why.split()) <= MILD | set(reasons) else None


def _done_today(known: Known) -> list[str]:
    """The movements done today that have an answer that stands, in the order of ``MOVEMENTS``."""
    zone, today = zone_from(known.facts, known.now), date.fromisoformat(str(known.facts["today"]))
    done = {row.flow for row in known.answers() if row.flow in MOVEMENTS and row.status == "ok" and row.ending != "pain"
            and (row.flow != SQUATS or row.key == "squatted") and local_date(row.at, zone) == today}
    return [flow for flow in MOVEMENTS if flow in done]


def others_done(got: Facts, side: str) -> Value:
    """Whether it may have hurt in something else than what was going on: a test, the drill or squats of today."""
    others = {*str(got["did"]).split()} - {"warm_up", str(got.get("hurt_in", ""))}
    return "yes" if others and not got.get("named") else "no"


def told_so_far(got: Facts, side: str) -> Value:
    """Whether pain was told today, and a sign with it: that stays, also where its answer is taken back."""
    before = got.get("pain.told") if got.get("pain.told.today") == "yes" else None
    signs = any(got.get(key) in ("yes", "unsure") for key in SIGNS) or got.get("where") == "chest" or said_leg_signs(got, "") == "yes"
    return "sign" if signs or before == "sign" else "yes"


def may_take_back(got: Facts, side: str) -> Value:
    """What “nothing hurts” can do: "misheard" where no pain was told today, "taken_back" once a day for pain without any sign,
    else "stands"."""
    told = got.get("pain.told") if got.get("pain.told.today") == "yes" else ""
    live, before = Level(str(got.get("safety.level", "go"))), Level(str(got.get("level_before", "go")))
    if told == "sign" or said_leg_signs(got, "") == "yes" or (live > before and live >= Level.CLINICIAN):
        return "stands"
    if not told:
        return "misheard"
    return "stands" if got.get("pain.taken_back.today") == "yes" or before >= Level.CLINICIAN else "taken_back"


def nothing_hurt(got: Facts, side: str) -> Value | None:
    """What becomes of it where nothing hurts, as ``may_take_back``; None where something does."""
    if got.get("where") != "nothing":
        return None
    return "stands" if got.get("mistake") == "no" else may_take_back(got, side)


def level_after_pain(got: Facts, side: str) -> Value:
    """The level after the pain questions, never better than what stood before them, but where pain is taken back: then what
    stood before it, and no load today."""
    before = Level(str(got.get("level_before", "go")))
    nothing = nothing_hurt(got, side)
    if nothing is None:
        return worst((pain_outcome(got).level, before)).value
    if nothing == "stands":
        signs = Level.GO if got.get("mistake") == "no" else Level(str(got.get("safety.level", "go")))
        return worst((before, signs if signs >= Level.CLINICIAN else Level.GO)).value
    checked = str(got.get("safety.checked", "go")) if got.get("safety.checked.today") == "yes" else "go"
    floor = Level.NO_LOAD if nothing == "taken_back" else Level.GO
    return worst((Level(str(got.get("before", "go"))), Level(checked), floor)).value


def reasons_of_pain(got: Facts, side: str) -> Value:
    """Where and how bad, and why it weighs what it weighs, in words."""
    if nothing := nothing_hurt(got, side):
        return {"misheard": "nothing hurt after all", "taken_back": "pain told earlier today was taken back: nothing hurt"}.get(
            str(nothing), "says now that nothing hurts; what was told before still stands")
    how_bad = f", {got['bad']:g} of 10" if "bad" in got else ""
    return f"{got.get('where', 'somewhere')}{how_bad}. {outcome_words(pain_outcome(got, so_far=True))}"


def keys_of_pain(got: Facts, side: str) -> Value:
    """The names of the answers that weighed, beside those that stood before."""
    nothing = nothing_hurt(got, side)
    keys = [reason.key for reason in pain_outcome(got, so_far=True).because] if nothing is None else []
    keys = ["taken_back"] if nothing == "taken_back" else str(got.get("safety.why", "")).split() if nothing == "stands" else keys
    return " ".join(dict.fromkeys((*str(got.get("why_before", "")).split(), *keys)))


def stops(got: Facts, side: str) -> Value:
    """Whether what was going on is over: unless it hurt in something else, before today, or not at all."""
    if nothing := nothing_hurt(got, side):
        return "yes" if nothing == "stands" else "no"
    elsewhere = "hurt_in" in got and got.get("during") not in (None, "this", "unsure", got["hurt_in"])
    return "no" if elsewhere else "yes"


def void(got: Facts, side: str) -> Value | None:
    """The flows of today whose answers no longer count: the one that was named, all where nobody is sure; None for none."""
    did, during = str(got["did"]).split(), got.get("during")
    named = did if during == "unsure" else [flow for flow in did if flow == during]
    return " ".join(named) or None


def void_words(got: Facts, side: str) -> Value:
    """The tests among them, as they are called."""
    return ", ".join(MOVEMENTS[test] for test in str(void(got, side) or "").split() if test in route())


def hurt_in_words(got: Facts, side: str) -> Value:
    """What was going on, as it is called."""
    return MOVEMENTS.get(str(got.get("hurt_in", "")), "")
