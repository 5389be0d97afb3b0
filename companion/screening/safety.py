"""Safety levels: the work that is open today, from the safety check and from pain during a test, and the end of a level.

Red flags after cauda equina guidance (BMJ Best Practice, read), regional back-pain pathways (second-hand) and ACSM pre-participation logic
(Riebe 2015 Med Sci Sports Exerc 47:2473, read); pain limits are our choice. An answer that is missing or unsure counts as the worse one.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from enum import Enum
from typing import Final

from companion.screening.ordinal import Ranked
from companion.screening.sources import SOURCES, value

Value = float | str


class Level(Ranked):
    """A safety level, from everything open to an emergency."""

    GO = "go"
    NO_LOAD = "no_load"
    NOT_TODAY = "not_today"
    CLINICIAN = "clinician"
    SAME_DAY = "same_day"
    EMERGENCY = "emergency"


# Back or hip pain at the start, 0-10: 0-2 go, 3 floor tests only, 4 or more none today (choice).
START_FREE, START_FLOOR = SOURCES["pain_start"].value
# Pain during a test, 0-10: at 4 or more, or 2 or more above the start, no more today (choice).
STOP_AT: Final = value("pain_stop")
STOP_RISE: Final = value("pain_rise")
CLEARANCE_MONTHS: Final = int(value("clearance_months"))


class BodyPosition(Enum):
    """The body's position in a test, which decides the levels at which it is open."""

    STANDING = "standing"
    """Squats and tests that load a joint standing: at go only. Knee to the wall counts here (choice, the safer reading)."""
    FLOOR = "floor"
    """On the floor: at no_load too."""
    LYING = "lying"
    """On the back or deeply folded: on the floor, and barred in pregnancy, also where that is cleared."""

    @property
    def levels(self) -> tuple[Level, ...]:
        """The safety levels at which such a test may be done."""
        return (Level.GO,) if self is BodyPosition.STANDING else (Level.GO, Level.NO_LOAD)

    @property
    def barred_in_pregnancy(self) -> bool:
        """True if such a test is left out in pregnancy or possible pregnancy."""
        return self is BodyPosition.LYING


@dataclass(frozen=True, slots=True)
class Reason:
    """One answer that counted: its key, the level it asks for, and the reason in at most 160 characters."""

    key: str
    level: Level
    words: str


@dataclass(frozen=True, slots=True)
class SafetyOutcome:
    """The level from a safety check or from the pain questions, and the answers behind it, the worst first.

    ``no_lying``: no test on the back or in a deep fold (pregnancy). ``postpone``: even, dull soreness; scored tests wait for
    another day, nothing is locked. ``body_weight_first``: an old disc injury, without symptoms for six months.
    ``limits``: a clinician's restrictions, in the lifter's words.
    """

    level: Level
    because: tuple[Reason, ...] = ()
    no_lying: bool = False
    postpone: bool = False
    body_weight_first: bool = False
    limits: str = ""


# Questions that each decide alone, the worst first.
OF_LATE: Final = "lately"
"""The answer about chest pain or faintness that was before today, within two weeks (choice)."""
_FLAGS: Final = (
    Reason("bladder", Level.EMERGENCY,
           "Pain with bladder, bowel or saddle changes, sexual loss or weakness in both legs needs hospital now."),
    Reason("chest", Level.EMERGENCY, "Chest pain, faintness or unusual breathlessness now needs emergency care."),
    Reason("weakness", Level.SAME_DAY, "New or growing weakness in a leg, or a foot that drops, needs care today."),
    Reason("fall", Level.SAME_DAY, "A hard fall or blow lately should be looked at today."),
    Reason("leg_signs", Level.CLINICIAN, "Pain, tingling or numbness below the knee: see a clinician before testing."),
)
_CHEST_LATELY: Final = Reason("chest", Level.SAME_DAY, "Chest pain, faintness or unusual breathlessness lately should be looked at today.")


def level_from_check(answers: Mapping[str, Value | None], *, today: date | None = None,
                     cleared_on: date | None = None) -> SafetyOutcome:
    """Return the outcome of a safety check.

    Keys: fever, bladder, chest, weakness, fall, leg_signs, history (yes|no; anything else counts as yes), pain (0-10),
    soreness (yes|no). Where history is not "no": pregnant, cleared (yes|no), cleared_at (who and when: needed),
    limits (text), old_disc ("yes": an old disc injury is all there is, no symptoms for six months, training
    normally; optional). ``cleared_on``: the local date on which the lifter reported the clearance; None means in this
    check. A clearance holds for six months.
    """
    reasons = [flag for flag in _FLAGS if answers.get(flag.key) != "no"]
    if answers.get("chest") == OF_LATE:
        reasons = [_CHEST_LATELY if flag.key == "chest" else flag for flag in reasons]
    pain = _number(answers.get("pain"))
    if answers.get("fever") != "no":
        reasons.append(
            Reason("fever", Level.NOT_TODAY, "Fever, chills or illness: no training today.") if pain == 0 else
            Reason("fever", Level.SAME_DAY, "Fever, chills or a recent infection with back pain needs care today."))
    reasons.extend(_start_pain(pain))

    pregnant = answers.get("pregnant")
    some_history = answers.get("history") != "no" or (pregnant is not None and pregnant != "no")
    old_disc = some_history and answers.get("old_disc") == "yes" and pregnant == "no"
    cleared = _cleared(answers, today, cleared_on)
    if some_history and not cleared and not old_disc:
        reasons.append(Reason("history", Level.CLINICIAN,
                              "With that history a clinician should clear you before any test here."))
    soreness = answers.get("soreness")
    return _outcome(
        reasons,
        no_lying=some_history and pregnant != "no",
        postpone=soreness != "no" and (soreness is not None or pain != 0),
        body_weight_first=old_disc and not cleared,
        limits=str(answers.get("limits") or "") if some_history else "")


def level_from_pain(answers: Mapping[str, Value | None], start_pain: float | None) -> SafetyOutcome:
    """Return the outcome of the pain questions; the test is over in every case.

    Keys: where (text; "chest" is an emergency), bad (0-10), sharp, below_knee, tingling (yes|no), and where one of the
    last two is not "no" also bladder and weakness. ``start_pain``: the 0-10 at the start of the session; None counts
    as 0, so that any rise shows.
    """
    reasons = []
    if answers.get("where") == "chest":
        reasons.append(Reason("where", Level.EMERGENCY, "Pain in the chest now needs emergency care."))
    below = [key for key in ("below_knee", "tingling") if answers.get(key) != "no"]
    for flag in _FLAGS:
        given = answers.get(flag.key)
        if flag.key in ("bladder", "weakness") and given != "no" and (below or given is not None):
            reasons.append(flag)
    if below:
        reasons.append(Reason(below[0], Level.CLINICIAN,
                              "Pain below the knee, tingling or numbness: see a clinician before going on."))
    bad = _number(answers.get("bad"))
    if answers.get("sharp") != "no":
        reasons.append(Reason("sharp", Level.NOT_TODAY,
                              "Sharp, shooting, spreading or unfamiliar pain: no more today."))
    if bad is None or bad >= STOP_AT:
        reasons.append(Reason("bad", Level.NOT_TODAY, f"Pain of {STOP_AT:g} or more out of 10: no more today."))
    elif bad - (start_pain or 0.0) >= STOP_RISE:
        told = f"Pain has risen by {STOP_RISE:g} or more since the start" if start_pain is not None else f"Pain of {STOP_RISE:g} or more"
        reasons.append(Reason("bad", Level.NOT_TODAY, f"{told}: no more today."))
    elif not reasons:
        reasons.append(Reason("bad", Level.NO_LOAD, "A small pain: no loaded work today."))
    return _outcome(reasons)


def opens(level: Level, since: date, today: date, *, check: Level | None = None, seen: bool = False,
          cleared: bool = False) -> bool:
    """True if a level set on the local date ``since`` no longer holds.

    no_load and not_today hold for that local day. clinician holds until a later safety check passes (``check``: its
    level). same_day and emergency hold at least until the next local day, and until the lifter was seen, was
    told that training is fine (``cleared``), and a later safety check passes.
    """
    passed = check is not None and check < Level.CLINICIAN
    match level:
        case Level.GO:
            return True
        case Level.NO_LOAD | Level.NOT_TODAY:
            return today > since
        case Level.CLINICIAN:
            return passed
        case _:
            return today > since and seen and cleared and passed


def pain_now(told: Value | None, level: Value | None) -> float | None:
    """Return back or hip pain as last reported, 0-10; at least 1 if a level closes work now, so that only a known 0 lets
    rounding be called normal. ``level``: the current level; None: go."""
    pain = float(told) if isinstance(told, int | float) else None
    return pain if level in (None, Level.GO.value) else max(pain or 0.0, 1.0)


def worst(levels: Iterable[Level]) -> Level:
    """Return the most restrictive of the levels; go if there is none."""
    return max(levels, default=Level.GO)


def clearance_holds(told: date, today: date) -> bool:
    """True if a clearance reported on the local date ``told`` still counts on ``today``: for six calendar months."""
    months = (today.year - told.year) * 12 + today.month - told.month
    return 0 <= months < CLEARANCE_MONTHS or (months == CLEARANCE_MONTHS and today.day <= told.day)


def _cleared(answers: Mapping[str, Value | None], today: date | None, told: date | None) -> bool:
    """True if a clinician's clearance counts: a yes, with who and when, at most six months old."""
    if answers.get("cleared") != "yes" or not str(answers.get("cleared_at") or "").strip():
        return False
    return told is None or (today is not None and clearance_holds(told, today))


def _start_pain(pain: float | None) -> tuple[Reason, ...]:
    """Return the reason from back or hip pain now, none if low; unknown pain counts as 4 or more."""
    if pain is None or pain > START_FLOOR:
        return (Reason("pain", Level.NOT_TODAY, f"Back or hip pain of {START_FLOOR + 1:g} or more out of 10: no tests today."),)
    if pain > START_FREE:
        return (Reason("pain", Level.NO_LOAD, f"Back or hip pain of {START_FLOOR:g} out of 10: floor tests only, no load today."),)
    return ()


def _number(value: Value | None) -> float | None:
    """Return a pain of 0-10, or None if the value is not one."""
    return float(value) if isinstance(value, (int, float)) and 0 <= value <= 10 else None


def _outcome(reasons: Iterable[Reason], *, no_lying: bool = False, postpone: bool = False,
             body_weight_first: bool = False, limits: str = "") -> SafetyOutcome:
    """Return the outcome with the highest level that any reason asks for, and all reasons, the worst first."""
    ordered = tuple(sorted(reasons, key=lambda reason: -reason.level.rank))
    return SafetyOutcome(worst(reason.level for reason in ordered), ordered, no_lying, postpone, body_weight_first, limits)
