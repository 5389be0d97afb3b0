"""Facts that the safety check and the pain questions derive from their answers, by the rules in ``screening.safety``."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, timedelta
from functools import lru_cache
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.language.findings import tells_no_limit
from companion.language.flags import Flag, Heard, hear_flags
from companion.language.limits import sets_none
from companion.language.pain import Pain, hear_pain
from companion.screening.levels import STILL_STANDS
from companion.screening.safety import Level, SafetyOutcome, level_from_check, level_from_pain, worst
from companion.screening.signs import HISTORY_GROUPS, history_in_words
from companion.screening.sources import value, with_numbers
from flows.cleared_by import CLEARED_SAID, CLINICIAN_SAID, by_clinician, says_who
from flows.level_parts import LevelPart, level_of, others, text_of, with_tap

CLEARED_FOR: Final = timedelta(days=30.5 * value("clearance_months"))
"""When a clinician's clearance is asked for again."""
CLEARED_WHY: Final = with_numbers("cleared by a clinician: asked again after {clearance_months:count months}")

_CHECK = ("bladder", "chest", "weakness", "fall", "fever", "history", "pregnant", "old_disc", "cleared", "cleared_at",
          "limits", "pain", "soreness", "leg_signs")
HISTORY: Final = "safety.history"
"""The finding that keeps what was told of a history, by the ids of signs and groups, until that was a mistake."""
HISTORY_KEYS: Final = tuple(HISTORY_GROUPS)
"""The questions about what a doctor should know of first: three short ones, which count as one."""
CLOSERS: Final = ("bladder", "chest", "weakness", "fall", "leg_signs")
"""The questions with which one tap can close everything."""
_READ = (*_CHECK, *HISTORY_KEYS[1:], "clinician", "cleared_when", CLEARED_SAID, CLINICIAN_SAID, "urgent", "was_pregnant", "same_history",
         "stood_cleared_until", "today", "mistake")
"""All answers that decide a check's outcome."""
_PAIN = ("where", "bad", "sharp", "below_knee", "tingling", "bladder", "weakness")
_SIGNS = frozenset(("leg_signs", "below_knee", "tingling"))
_HEART_WORDS = re.compile(r"\bchest\b|breath|\bfaint|black(?:ed|ing)? out|pass(?:ed|ing)? out|\bheart\b", re.IGNORECASE)
_SADDLE_WORDS = re.compile(r"bladder|bowel|saddle|wet myself|\bpee|\bpoo|toilet|groin is numb|between (?:my|the) legs|"
                           r"(?:both|either|neither) (?:of )?(?:my )?(?:legs?|feet|foot)|feel my (?:legs|feet)|"
                           r"(?:no|lost|losing|without) (?:\w+ )?(?:feeling|sensation|feel) (?:in|of|down) (?:my |the |both )*"
                           r"(?:legs|feet)|\b(?:legs|feet) (?:are |have |feel |been |is |all |so |completely |totally |both |just )*"
                           r"(?:(?:going |gone |went )?numb|(?:going |gone |went )dead)\b", re.IGNORECASE)
_LEG_WORDS = re.compile(r"\b(?:numb|tingl|pins|needle|shoot|zing|electric)|can.?t feel", re.IGNORECASE)


def stood(known: Known) -> dict[str, Value]:
    """Return the state before the check, stored with its run: the level, whether it was set today, and the reasons."""
    facts = {name: known.facts.get(f"safety.{name}", "") for name in ("level", "level.today", "why", "cleared_until")}
    told = (str(known.facts.get(f"{where}.pregnant", "no")) for where in ("safety_check", "safety"))
    pregnant = next((one for one in told if one != "no"), "no")
    return {"stood": facts["level"] or "go", "stood_today": facts["level.today"] or "no", "stood_why": facts["why"],
            "stood_cleared_until": facts["cleared_until"], "was_pregnant": pregnant,
            "sent": "yes" if _sent(str(facts["level"] or "go"), str(facts["why"])) else "no"}


def _sent(level: str, why: str) -> bool:
    """True if the lifter was told to see a clinician, so that only that opens work again."""
    signs = level == Level.CLINICIAN.value and bool(_SIGNS & set(why.split()))
    return signs or level in (Level.EMERGENCY.value, Level.SAME_DAY.value)


def _check(got: Facts, so_far: bool = False) -> SafetyOutcome:
    return _found(tuple(map(got.get, _READ)), so_far)


@lru_cache(64)  # one step asks this several times, and most people answer alike: eight times no
def _found(values: tuple[Value | None, ...], so_far: bool) -> SafetyOutcome:
    got = {key: value for key, value in zip(_READ, values, strict=True) if value is not None}
    answers = dict(zip(_CHECK, values, strict=False))
    if got.get("urgent") == "no":  # one question covers three; a plain no answers them all
        answers |= {"weakness": "no", "fall": "no", "fever": "no"}
    answers["history"] = history_of(got)
    if answers["history"] == "no" and _still_so(got):  # of pregnancy the check has asked among the rest
        answers |= {"history": "yes", "pregnant": answers["pregnant"] or "no"}
    elif answers["history"] == "no" and got.get("was_pregnant") in ("yes", "unsure"):
        answers["history"] = "yes" if answers["pregnant"] != "no" else "no"
    answers["cleared_at"] = says_who(got)
    if not by_clinician(got):
        answers["cleared"] = "no"
    if still_cleared(got, "") == "yes" and got.get("same_history") == "yes":
        answers |= {"cleared": "yes", "cleared_at": "told earlier"}
    if so_far and got.get("urgent") in ("yes", "unsure"):  # until the lifter says which, it may be any
        answers |= {key: "yes" for key in ("weakness", "fall") if answers[key] is None}
    if so_far:  # unasked questions count as no
        answers = {key: ({"pain": 0.0}.get(key, "no") if value is None else value) for key, value in answers.items()}
    return level_from_check(answers)


def history_of(got: Facts) -> Value | None:
    """Return the three answers about history as one: the worst of them, None while one is missing and none is bad."""
    told = [got.get(key) for key in HISTORY_KEYS]
    return next((worse for worse in ("yes", "unsure") if worse in told), None if None in told else "no")


def _still_so(got: Facts) -> bool:
    """True if what was told of a history earlier was no mistake, though this check's own questions don't name it."""
    return got.get("mistake") in ("no", "unsure")


def history_told(got: Facts, side: str) -> Value:
    """Return what is known of a history, by ids: what was told earlier, and what this check was told."""
    told = [key for key in HISTORY_KEYS if got.get(key) in ("yes", "unsure")]
    return with_history(got, [*told, *(["pregnancy"] if got.get("pregnant") in ("yes", "unsure") else [])])


def with_history(got: Facts, told: Iterable[str]) -> str:
    """Return what was told of a history earlier, by ids, with more."""
    return " ".join(dict.fromkeys((*str(got.get(HISTORY, "")).split(), *told)))


_HURT: Final = {"back": "your back", "hip": "your hip or groin", "leg": "your leg", "knee": "your knee", "ankle": "your ankle or foot"}


def what_hurt(known: Known) -> str:
    """Return what hurt last, in words: "your knee"; "something" where it is none of these."""
    return _HURT.get(str(known.facts.get("pain.where", "")), "something")


def disc_alone(got: Facts, side: str) -> Value:
    """Return "yes" if all that was told of a history, now and before, is a disc or nerve problem, an operation or a break."""
    told = {*(key for key in HISTORY_KEYS if got.get(key) in ("yes", "unsure")), *str(got.get(HISTORY, "")).split()}
    return "yes" if told <= _DISC else "no"


_DISC: Final = frozenset(("history_care", "spine_history"))


def told_before(got: Facts, side: str) -> Value:
    """Return in words what was told of a history earlier."""
    return history_in_words(str(got.get(HISTORY, "")).split()) or "something that a clinician should clear first"


def _holds(got: Facts) -> bool:
    """True if the level from before this check stays, whatever the check finds."""
    stands = Level(str(got.get("stood", "go")))
    if got.get("sent") == "yes":
        return (got.get("seen"), got.get("seen_cleared")) != ("yes", "yes")
    if stands is Level.CLINICIAN:
        return history_of(got) == "no" and got.get("mistake") is None
    return got.get("stood_today") == "yes"


def level_after_check(got: Facts, side: str) -> Value:
    """Return the level after a safety check: the worse of its own and the one that stays from before."""
    if got.get("seen") == "no":  # nothing more was asked
        return str(got["stood"])
    found = _check(got).level
    return worst((found, Level(str(got.get("stood", "go"))))).value if _holds(got) else found.value


def level_so_far(got: Facts, side: str) -> Value:
    """Return the level from the answers so far, for a check left half done."""
    return worst((_check(got, so_far=True).level, Level(str(got.get("stood", "go"))))).value


def stands_still(got: Facts, side: str) -> Value:
    """Return "yes" if the level after the check is only the one from before."""
    unseen = got.get("seen") == "no"
    return "yes" if unseen or (_holds(got) and level_after_check(got, "") != _check(got).level.value) else "no"


def reasons_of_check(got: Facts, side: str) -> Value:
    """Return the reasons in words; if the level from before stays, that is the reason."""
    return STILL_STANDS if stands_still(got, "") == "yes" else outcome_words(_check(got, so_far=True))


def keys_of_check(got: Facts, side: str) -> Value:
    """Return the keys of the answers that counted, for a later check."""
    before = str(got.get("stood_why", "")).split() if stands_still(got, "") == "yes" or _holds(got) else []
    return " ".join(dict.fromkeys((*before, *(reason.key for reason in _check(got, so_far=True).because))))


def parts_with_tap(got: Facts, side: str) -> Value:
    """Return the parts of the level after a check that only taps closed: what stood, what else it was told, and those taps."""
    rest = _check(_but_for(got, _READ, dict.fromkeys(CLOSERS, "no")), so_far=True)
    stood_why = str(got.get("stood_why", "")).split() if _holds(got) else []
    parts = (LevelPart("before", Level(str(got.get("stood", "go"))), why=tuple(stood_why)),
             LevelPart("check", rest.level, why=tuple(reason.key for reason in rest.because)))
    return text_of(with_tap(parts, Level(str(level_after_check(got, side))), str(keys_of_check(got, side)).split()))


def still_cleared(got: Facts, side: str) -> Value:
    """Return "yes" if an earlier clearance still counts today."""
    return "yes" if str(got.get("stood_cleared_until", "")) >= str(got["today"]) else "no"


def cleared_until(got: Facts, side: str) -> Value | None:
    """Return the date until which a clearance given in this check counts; None without one, or where no clinician gave it."""
    if got.get("cleared") != "yes" or not by_clinician(got):
        return None
    return (date.fromisoformat(str(got["today"])) + CLEARED_FOR).isoformat()


def limit_said(got: Facts, side: str) -> Value | None:
    """Return the words of this check that set a limit, or may; of an earlier one where they were never taken apart. None for none."""
    said = [limits_told(str(got.get("told", ""))) or "", str(got.get("limits", ""))]
    if got.get("same_history") == "yes" and got.get("safety.limits") is None:
        said.append(str(got.get("safety_check.limits", "")))
    return limits_among(said)


def limits_among(said: list[str]) -> str | None:
    """Return those of some words that set a limit, or may, joined; None for none."""
    return ". ".join(one for one in said if one.strip() and not sets_none(one)) or None


def limits_told(said: str) -> str | None:
    """Return words that answer what was said, if they set a limit, or may; what was only found, or a clearance alone, sets none."""
    return None if tells_no_limit(said) else limits_among([said])


def body_first(got: Facts, side: str) -> Value:
    """Return "yes" if only body weight is allowed for now: an old disc injury, or pregnancy."""
    outcome = _check(got)
    return "yes" if outcome.body_weight_first or outcome.no_lying else "no"


def sore(got: Facts, side: str) -> Value:
    """Return "yes" if scored tests should wait: even, dull soreness from training."""
    return "yes" if got.get("soreness") in ("yes", "unsure") else "no"


def tomorrow(got: Facts, side: str) -> Value:
    """Return tomorrow's date."""
    return (date.fromisoformat(str(got["today"])) + timedelta(days=1)).isoformat()


def said_leg_signs(got: Facts, side: str) -> Value:
    """Return "yes" if the lifter's words mention numbness, tingling or shooting."""
    return "yes" if _LEG_WORDS.search(str(got.get("said", ""))) else "no"


def tells_leg_sign(words: str) -> bool:
    """True if words tell of numbness, tingling or shooting: not that there is none, and no question."""
    return bool(_LEG_WORDS.search(words)) and hear_pain(words) is Pain.YES


def said_heart(got: Facts, side: str) -> Value:
    """Return "yes" if the lifter's words mention chest, breath or faintness."""
    return "yes" if _HEART_WORDS.search(str(got.get("said", ""))) or _said(got, Flag.CHEST) else "no"


def said_saddle(got: Facts, side: str) -> Value:
    """Return "yes" if the lifter's words mention bladder, bowel, the saddle area or both legs."""
    return "yes" if _SADDLE_WORDS.search(str(got.get("said", ""))) or _said(got, Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.SEXUAL) else "no"


def said_weak(got: Facts, side: str) -> Value:
    """Return "yes" if the lifter's words mention a weak leg or a foot that drops."""
    return "yes" if _said(got, Flag.WEAKNESS) else "no"


def leg_first(got: Facts, side: str) -> Value:
    """Return "yes" if the lifter's words surely tell of a weak leg or a foot that drops: then what to do comes before any question."""
    return "yes" if any(one.flag is Flag.WEAKNESS and one.sure for one in _signs_in(str(got.get("said", "")))) else "no"


def _said(got: Facts, *flags: Flag) -> bool:
    """True if the lifter's words carry one of these signs."""
    return not _heard(str(got.get("said", ""))).isdisjoint(flags)


def _heard(words: str) -> frozenset[Flag]:
    return frozenset(one.flag for one in _signs_in(words))


@lru_cache(16)  # the same words are asked about a dozen times in one step
def _signs_in(words: str) -> tuple[Heard, ...]:
    return hear_flags(words, weigh=False)


def pain_outcome(got: Facts, so_far: bool = False) -> SafetyOutcome:
    """Return the outcome of the pain questions. ``so_far``: unasked questions count as no."""
    answers: dict[str, Value | None] = {key: got.get(key) for key in _PAIN}
    if so_far:  # unasked questions count as no
        answers = {key: ({"bad": 0.0}.get(key, "no") if value is None else value) for key, value in answers.items()}
    if got.get("where") in ("ankle", "knee"):  # at or below the knee by itself: not a sign from the back
        answers["below_knee"] = "no"
    if said_leg_signs(got, "") == "yes":
        answers["tingling"] = "yes"
    if got.get("saddle_now") in ("yes", "unsure"):
        answers["bladder"] = "yes"
    if got.get("heart_now") in ("yes", "unsure") or got.get("saddle_now") in ("yes", "unsure"):
        answers |= {key: "no" for key in _PAIN if answers[key] is None and key != "bad"} | {"bad": answers["bad"] or 0.0}
    if got.get("where") == "chest" or got.get("heart_now") in ("yes", "unsure"):  # the questions end: only that counts
        answers |= dict.fromkeys(_PAIN, "no") | {"where": "chest", "bad": 0.0}
    start = got.get("safety_check.pain") if got.get("safety.checked.today") == "yes" else None
    return level_from_pain(answers, float(start) if start is not None else None)


def pain_but_for_taps(got: Facts) -> SafetyOutcome:
    """Return the outcome of the pain questions so far without the answers that are urgent by themselves."""
    urgent = {"where": "other", "bladder": "no", "weakness": "no"}
    return pain_outcome(_but_for(got, (*_PAIN, "said", "safety_check.pain", "safety.checked.today"), urgent), so_far=True)


def _but_for(got: Facts, names: Iterable[str], answers: Facts) -> Facts:
    """Return the facts of these names, with other answers."""
    return {name: value for name in names if (value := got.get(name)) is not None} | dict(answers)


def level_until_asked(got: Facts, side: str) -> Value:
    """Return the level while the pain questions are open: not today, or a worse one from before or from the answers so far."""
    return worst((level_of(others(got)), level_of_open_pain(got))).value


def level_of_open_pain(got: Facts) -> Level:
    """Return the level of the pain itself while its questions are open: of a weak leg that was surely told, that of what was said first."""
    told = Level.SAME_DAY if got.get("weakness") is None and leg_first(got, "") == "yes" else Level.NOT_TODAY
    return worst((told, pain_outcome(got, so_far=True).level))


def outcome_words(outcome: SafetyOutcome) -> str:
    """Return the reasons of an outcome, in words."""
    return " ".join(reason.words for reason in outcome.because) or "nothing against it"
