"""What the safety check and the pain questions work out from their answers, by the screening's rules."""

from __future__ import annotations

from datetime import date, timedelta

from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.screening.safety import Level, Outcome, level_from_check, level_from_pain, worst

CLEARED_FOR = timedelta(days=183)
"""A clinician's clearance is asked for again after six months (choice)."""

_CHECK = ("bladder", "chest", "weakness", "fall", "fever", "history", "pregnant", "old_disc", "cleared", "cleared_at", "limits",
          "pain", "soreness", "leg_signs")
_PAIN = ("where", "bad", "sharp", "below_knee", "tingling", "bladder", "weakness")


def _check(got: Facts) -> Outcome:
    answers: dict[str, Value | None] = {key: got.get(key) for key in _CHECK}
    if got.get("urgent") == "no":  # one screen asks for three at once; a plain no answers them all
        answers |= {"weakness": "no", "fall": "no", "fever": "no"}
    if still_cleared(got, "") == "yes" and got.get("same_history") == "yes":
        answers |= {"cleared": "yes", "cleared_at": "told earlier"}
    return level_from_check(answers)


def level_after_check(got: Facts, side: str) -> Value:
    """The level after a safety check: what it finds, or what still stands from before, whichever is worse."""
    found = _check(got).level
    stands = Level(str(got.get("safety.level", "go")))
    sent = stands in (Level.EMERGENCY, Level.SAME_DAY)
    cleared = (got.get("seen"), got.get("seen_cleared")) == ("yes", "yes") if sent else got.get("cleared") == "yes"
    today = got.get("safety.level.today") == "yes"
    holds = not cleared if sent else today and not (stands is Level.CLINICIAN and cleared)
    return worst((found, stands)).value if holds else found.value


def reasons_of_check(got: Facts, side: str) -> Value:
    """Why, in words; what still stands is named where it is worse than what this check found."""
    outcome = _check(got)
    if level_after_check(got, side) != outcome.level.value:
        return "what was said before still stands"
    return _words(outcome)


def still_cleared(got: Facts, side: str) -> Value:
    """Whether a clearance told earlier still counts today."""
    until = got.get("safety.cleared_until")
    return "yes" if until is not None and str(until) >= str(got["today"]) else "no"


def cleared_until(got: Facts, side: str) -> Value | None:
    """The date until which a clearance told in this check counts."""
    if got.get("cleared") != "yes" or "cleared_at" not in got:
        return None
    return (date.fromisoformat(str(got["today"])) + CLEARED_FOR).isoformat()


def _pain(got: Facts) -> Outcome:
    answers: dict[str, Value | None] = {key: got.get(key) for key in _PAIN}
    if got.get("where") in ("ankle", "knee"):  # below or at the knee by itself: not a sign from the back
        answers["below_knee"] = "no"
    start = got.get("safety_check.pain")
    return level_from_pain(answers, float(start) if start is not None else None)


def level_before(known: Known) -> dict[str, Value]:
    """The level that stood when the pain questions began, kept with their run."""
    return {"level_before": known.facts.get("safety.level", "go")}


def level_after_pain(got: Facts, side: str) -> Value:
    """The level after the pain questions, never better than what stood before them."""
    return worst((_pain(got).level, Level(str(got.get("level_before", "go"))))).value


def level_until_asked(got: Facts, side: str) -> Value:
    """The level while the pain questions are open: nothing more today, or worse where worse stood."""
    return worst((Level.NOT_TODAY, Level(str(got.get("level_before", "go"))))).value


def reasons_of_pain(got: Facts, side: str) -> Value:
    """Where and how bad, and why it weighs what it weighs, in words."""
    return f"{got.get('where', 'somewhere')}, {got.get('bad', 0):g} of 10. {_words(_pain(got))}"


def _words(outcome: Outcome) -> str:
    return " ".join(reason.words for reason in outcome.because) or "nothing against it"
