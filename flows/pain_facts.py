"""Facts for the pain questions: what was done today, the level after them, and whether pain can be taken back."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import UTC
from functools import lru_cache
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.effects import LAST_SESSION
from companion.conversation.flow import Known
from companion.conversation.moves import BESIDE, SAID_MOST
from companion.language.flags import hear_flags
from companion.language.pain import Pain, hear_pain
from companion.language.pain.spots import spots_told
from companion.language.passed_on import passed_on
from companion.language.phrases import normalise
from companion.screening.protocols import protocols, route
from companion.screening.safety import Level, worst
from flows.level_parts import LevelPart, checked_today, level_of, others, own, parts_of, stood, text_of, whose, why_of, with_tap
from flows.safety_facts import level_of_open_pain, outcome_words, pain_but_for_taps, pain_outcome, said_leg_signs, said_weak

SQUATS_OF_DAY: Final = "squat_day"
MOVEMENTS: Final[Mapping[str, str]] = {**{test: one.short_name for test, one in protocols().items()},
                                       "warm_up": "warm-up", "prime": "priming drill", SQUATS_OF_DAY: "squat-day squats"}
"""The movements in which it may have hurt, by flow, with their names in a sentence."""

_BELOW_KNEE: Final = re.compile(
    r"\b(?:foot|feet|toes?|shins?|calf|calves|ankles?|heels?|soles?|below the knee|lower leg|all the way down)\b")
_NOT_THERE: Final = re.compile(r"\b(?:no|not|nope|nah|none|never|isn't|doesn't|don't|nothing|only|above|before|until)\b|n't\b|\?")


def reaches_below_knee(words: str) -> bool:
    """True if words say that it reaches below the knee by naming a place there: "yes down to my foot"."""
    said = normalise(words)
    return bool(_BELOW_KNEE.search(said)) and not _NOT_THERE.search(said)


def still_hurts(words: str) -> bool:
    """True if words tell of pain or a sign, where it is asked whether nothing hurt."""
    return hear_pain(words) is Pain.YES or bool(hear_flags(words))


def spot_of(words: str) -> str:
    """Return the place that hurts, as a sentence tells it; "" where it tells of none."""
    return next(iter(spots_told(words)), "")


def other_spots(got: Facts, words: str) -> dict[str, str]:
    """Return each other place that hurts, beside the one asked about, with the words that tell of it: a reply, or those that these
    questions began with, where they name that one too, or the reply another."""
    where, began = got.get("where"), "" if BESIDE in got else str(got.get("said", ""))
    told, first = spots_told(words), spots_told(began)
    both = {spot: began for spot in first if told or where in first} | dict.fromkeys(told, words)
    return {spot: said for spot, said in both.items() if spot != where} if where else {}


def another_pain(got: Facts, words: str) -> tuple[tuple[str, Mapping[str, Value]], ...]:
    """Return for each of these the words, and the answer to where it hurts."""
    return tuple((said, {"where": spot}) for spot, said in other_spots(got, words).items())


_YOUR: Final = {"back": "your lower back", "hip": "your hip or groin", "leg": "your leg", "knee": "your knee",
                "ankle": "your ankle or foot"}


def spot_words(got: Facts, side: str) -> Value:
    """Return the place that hurts, to follow "about"."""
    return _YOUR.get(str(got.get("where")), "that")


NERVE_AND_CHEST: Final = ("below_knee", "tingling", "bladder", "weakness", "heart_now", "saddle_now")


TAKES_BACK: Final = (
    r"(?:(?:oh|no|oops|sorry|wait|actually|ok),? )*(?:nothing (?:really |actually |at all )?(?:hurts?|hurts? at all|is hurting)|"
    r"it (?:was|is) nothing|(?:it|that) (?:didn'?t|doesn'?t) (?:really |actually )?hurt(?: at all)?|false alarm(?:,? .{0,40})?|"
    r"(?:it|that) was (?:a |my )?mistake(?:,? (?:nothing|it) .{0,40})?|i take (?:it|that|the pain) back(?:,? .{0,40})?)")
"""Whole messages that take pain back."""


def before_pain(known: Known) -> dict[str, Value]:
    """Return the state before the pain questions, stored with their run: whose part of the level they are, the moment, that of the first
    pain of today that stands, and what was done in the last session."""
    now = known.now.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
    told = any(map(of_pain, parts_of(known.facts))) and "pain.since.today" in known.facts
    since = str(known.facts["pain.since"]) if told else now
    did = _done_lately(known)
    return {"whose": f"pain.{known.first_run}", "now": now, "since": since, "first": "no" if told else "yes",
            "did": " ".join(did), "named": known.asked if known.asked in MOVEMENTS else "",
            **({"where": "nothing", "taking_back": "yes"} if re.fullmatch(TAKES_BACK, known.asked) else {}),
            **{f"did_{flow}": "yes" for flow in did}}


def of_pain(part: LevelPart) -> bool:
    """True if a part of the level is pain that was told."""
    return part.whose.startswith("pain.")


def _done_lately(known: Known) -> list[str]:
    """Return the movements of the last session that have an answer that stands, in the order of ``MOVEMENTS``."""
    done = {row.flow for row in known.answers() if row.status == "ok" and row.ending != "pain"
            and (row.flow != SQUATS_OF_DAY or row.key == "squatted") and known.now - row.at <= LAST_SESSION}
    return [flow for flow in MOVEMENTS if flow in done]


def others_done(got: Facts, side: str) -> Value:
    """Return "yes" if it may have hurt in something else than what was going on: a test, the drill or squats of the last session, or
    nothing of these where no word came for long."""
    others = {*str(got["did"]).split()} - {"warm_up", str(got.get("hurt_in", ""))}
    return "yes" if (others or got.get("long_since")) and not got.get("named") else "no"


def told_so_far(got: Facts, side: str) -> Value:
    """Return "sign" if a nerve or chest sign was told with today's pain, else "yes"; that stays, also if the answer is taken back."""
    before = got.get("pain.told") if got.get("pain.told.today") == "yes" else None
    signs = any(got.get(key) in ("yes", "unsure") for key in NERVE_AND_CHEST) or got.get("where") == "chest" or _signs_written(got)
    return "sign" if signs or before == "sign" else "yes"


def _signs_written(got: Facts) -> bool:
    return "yes" in (said_leg_signs(got, ""), said_weak(got, ""))


def other_pain(got: Facts, side: str) -> Value:
    """Return "yes" if pain told in other questions than these stands."""
    return "yes" if any(map(of_pain, others(got))) else "no"


def may_take_back(got: Facts, side: str) -> Value:
    """Return what “nothing hurts” can do: "misheard" where no pain was told today or left open, "taken_back" once a day for pain without
    any sign, else "stands"."""
    told = got.get("pain.told") if got.get("pain.told.today") == "yes" else ""
    live, before = Level(str(got.get("safety.level") or "go")), stood(got)
    left_open = any(of_pain(one) and one.state == "open" for one in others(got))
    if told == "sign" or _signs_written(got) or (live > before and live >= Level.CLINICIAN):
        return "stands"
    if not told and not left_open:
        return "misheard"
    return "stands" if got.get("pain.taken_back.today") == "yes" or before >= Level.CLINICIAN else "taken_back"


def nothing_hurt(got: Facts, side: str) -> Value | None:
    """Return the same once nothing hurts, as ``may_take_back``; None where something does."""
    if got.get("where") != "nothing":
        return None
    return "stands" if got.get("mistake") == "no" else may_take_back(got, side)


def level_after_pain(got: Facts, side: str) -> Value:
    """Return the level after the pain questions, never freer than without them; if pain is taken back, the level without today's pain,
    and no load today."""
    checked = checked_today(got) if nothing_hurt(got, side) in ("misheard", "taken_back") else Level.GO
    return worst((level_of(_parts_after(got)), checked)).value


def _parts_after(got: Facts) -> tuple[LevelPart, ...]:
    nothing, rest = nothing_hurt(got, ""), others(got)
    if nothing is None:
        return (*rest, LevelPart(whose(got), pain_outcome(got).level, why=_weighed(got)))
    if nothing == "taken_back":
        return (*(one for one in rest if not of_pain(one)), LevelPart("taken_back", Level.NO_LOAD, why=("taken_back",)))
    said = own(got) if nothing == "stands" else None
    if said and got.get("mistake") == "no":  # it did hurt, as told so far
        return (*rest, said._replace(state="told")) if said.why else rest
    if said and said_weak(got, "") == "yes":  # not asked about where nothing hurts
        said = said._replace(level=worst((said.level, Level.SAME_DAY)), why=tuple(dict.fromkeys((*said.why, "weakness"))))
    return (*rest, said._replace(state="told")) if said and said.level >= Level.CLINICIAN else rest


def _weighed(got: Facts) -> tuple[str, ...]:
    return tuple(reason.key for reason in pain_outcome(got, so_far=True).because)


def parts_while_open(got: Facts, side: str) -> Value:
    """Return the parts of the level while the questions are open."""
    return text_of((*others(got), LevelPart(whose(got), level_of_open_pain(got), "open", _weighed(got))))


def parts_after_pain(got: Facts, side: str) -> Value:
    """Return the parts of the level after the questions."""
    return text_of(_parts_after(got))


def parts_with_tap(got: Facts, side: str) -> Value:
    """Return the parts of the level after pain that only taps made urgent: what else was told of it, and those taps."""
    rest = pain_but_for_taps(got)
    told = LevelPart(whose(got), worst((Level.NOT_TODAY, rest.level)), why=tuple(key for key in _weighed(got) if key in {
        reason.key for reason in rest.because}))
    return text_of(with_tap((*others(got), told), pain_outcome(got).level, _weighed(got)))


def reasons_of_pain(got: Facts, side: str) -> Value:
    """Return the place, the score and the reasons, in words."""
    if nothing := nothing_hurt(got, side):
        return {"misheard": "nothing hurt after all", "taken_back": "pain told earlier today was taken back: nothing hurt"}.get(
            str(nothing), "says now that nothing hurts; what was told before still stands")
    how_bad = f", {got['bad']:g} of 10" if "bad" in got else ""
    return f"{got.get('where', 'somewhere')}{how_bad}. {outcome_words(pain_outcome(got, so_far=True))}"


def told_to_coach(got: Facts, side: str) -> Value:
    """Return what a coach is told where something hurts: place and score, the lifter's words, the movement, what no longer counts for it,
    and the reasons that decided."""
    outcome = pain_outcome(got, so_far=True)
    how_bad = f", {got['bad']:g} of 10" if "bad" in got else ""
    said, movement, struck = _passed_on(str(got.get("said", ""))), _hurt_during(got), struck_words(got, side)
    counts = ", which no longer counts" if struck == movement else ""  # where one is known, no other is struck
    parts = (f"something hurt ({got.get('where', 'somewhere')}{how_bad}){f': “{said}”' if said else ''}",
             f"During: {movement}{counts}" if movement else f"No longer counted: {struck}" if struck else "")
    reasons = [one.words for one in outcome.because if one.level is outcome.level]
    return " ".join([f"{part}." for part in parts if part] + reasons)


@lru_cache(64)  # asked at every step of the questions
def _passed_on(said: str) -> str:
    return passed_on(said, SAID_MOST)


def _hurt_during(got: Facts) -> str:
    """Return the movement in which it hurt, in words; "" where none is known."""
    during = str(got.get("during", "" if got.get("long_since") else "this"))
    return MOVEMENTS.get(str(got.get("hurt_in", "")) if during == "this" else during, "")


def struck_words(got: Facts, side: str) -> str:
    """Return the names of the tests whose readings no longer count, the one that it ended first; "" for none, or if nothing hurts."""
    if nothing_hurt(got, side):
        return ""
    ended = str(got.get("hurt_in", "")) if stops(got, side) == "yes" else ""
    names = [MOVEMENTS[ended]] if ended in route() else []
    return ", ".join(dict.fromkeys([*names, *filter(None, str(void_words(got, side)).split(", "))]))


def keys_of_pain(got: Facts, side: str) -> Value:
    """Return the keys of the answers that counted, after those from before."""
    return " ".join(why_of(_parts_after(got)))


def stops(got: Facts, side: str) -> Value:
    """Return "yes" if what was going on is over: unless it hurt in something else, before, or not at all."""
    if nothing := nothing_hurt(got, side):
        return "yes" if nothing == "stands" else "no"
    elsewhere = "hurt_in" in got and got.get("during") not in (None, "this", "unsure", got["hurt_in"])
    return "no" if elsewhere else "yes"


def void(got: Facts, side: str) -> Value | None:
    """Return the flows of the last session whose answers no longer count: the one named, all where nobody is sure; None for none."""
    did, during = str(got["did"]).split(), got.get("during")
    named = did if during == "unsure" else [flow for flow in did if flow == during]
    return " ".join(named) or None


def void_words(got: Facts, side: str) -> Value:
    """Return the names of the tests among them."""
    return ", ".join(MOVEMENTS[test] for test in str(void(got, side) or "").split() if test in route())


def hurt_in_words(got: Facts, side: str) -> Value:
    """Return the name of what was going on."""
    return MOVEMENTS.get(str(got.get("hurt_in", "")), "")
