"""Facts that the questions about signs derive from their answers, by the rules in ``screening.signs``."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from functools import lru_cache
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.conversation.moves import SAID_MOST, SIGN_MOST
from companion.language.flags import hear_flags
from companion.language.half import half_of_it
from companion.language.limits import CLEARED, read_end
from companion.language.pain import Pain, hear_pain
from companion.language.passed_on import in_whole_words
from companion.screening.levels import STILL_STANDS
from companion.screening.safety import Level, SafetyOutcome, worst
from companion.screening.signs import CLEARABLE, SCREENED_SIGNS, level_from_signs, level_until_answered, words_of
from flows.cleared_by import by_clinician, says_who
from flows.level_parts import LevelPart, checked_today, level_of, others, text_of, whose, why_of
from flows.safety_facts import cleared_until, limits_among, with_history

_ASKED = ("bladder", "pain", "when", "cleared", "cleared_at", "old_disc")


def before_signs(known: Known) -> dict[str, Value]:
    """Return whose part of the level these questions are, stored with their run; those that begin anew keep it."""
    return {"whose": f"sign.{known.first_run}"}


_PAUSE: Final = re.compile(r"\bpause\b(?P<end>.+)", re.IGNORECASE)


def pause_wished(got: Facts, side: str) -> Value | None:
    """Return the date until which a pause of the squat days was asked for in the same words; None for none."""
    wish = _PAUSE.search(str(got.get("said", "")))
    end = read_end(wish["end"], date.fromisoformat(str(got["today"]))) if wish else ""
    return end if end not in ("", CLEARED) else None


SELF_HARM = "self_harm"
"""Named among others where words were doubtful; chosen, it leads to the crisis conversation, and is no screened sign."""


def may_be(got: Facts) -> tuple[str, ...]:
    """Return what doubtful words may mean, as ids; () where one thing only."""
    return _may_be(str(got.get("among", "")))


@lru_cache
def _may_be(among: str) -> tuple[str, ...]:
    return tuple(one for one in among.split() if one in SCREENED_SIGNS or one == SELF_HARM)


def signs_in(got: Facts) -> tuple[str, ...]:
    """Return the signs that were heard, as ids: of several that were named the one chosen, all of them while it is not sure which."""
    return _signs_in(str(got.get("heard", "")), str(got.get("among", "")), str(got.get("which", "unsure")))


@lru_cache
def _signs_in(heard: str, among: str, which: str) -> tuple[str, ...]:
    said = heard.split() if not _may_be(among) else _may_be(among) if which == "unsure" else (which,)
    return tuple(one for one in said if one in SCREENED_SIGNS)


def named(sign: str) -> Callable[[Facts, str], Value]:
    """Return a fact's function: "yes" where doubtful words may mean this sign among others."""
    def of(got: Facts, side: str) -> Value:
        return "yes" if sign in may_be(got) else "no"

    return of


def quoted(got: Facts, side: str) -> Value:
    """Return the words in quotation marks; those that may be of self-harm, or were beside such, were not kept."""
    said = str(got.get("said", ""))
    if not said:
        return "something I could not place" if may_be(got) else "something more"
    return f"“{in_whole_words(said, SAID_MOST - 1) if len(said) >= SAID_MOST else said}”"


def fits_still(got: Facts, side: str) -> Value:
    """Return "yes" where the words that say what was meant may still be a sign that was asked about: heard in them, also in doubt, or a
    part of it alone, such as "only when i lift"."""
    return "yes" if _fits(str(got["meant"]), (*str(got.get("heard", "")).split(), *may_be(got))) else "no"


@lru_cache
def _fits(meant: str, about: tuple[str, ...]) -> bool:
    return half_of_it(meant) or any(flag.value in about for one in hear_flags(meant) for flag in one.named)


def meant_too(got: Facts, side: str) -> Value:
    """Return what a coach is told beside what was meant instead: that it is another sign, or pain, with questions of its own."""
    return ", which I ask about now" if _meant_more(got) else ""


def thanked(got: Facts, side: str) -> Value:
    """Return the thanks for what was meant instead: as a misunderstanding only where that is no other sign, and no pain."""
    return "Thank you. Then about that." if _meant_more(got) else "Thank you, then I misunderstood. If anything changes, say so."


def _meant_more(got: Facts) -> bool:
    return _more(str(got.get("meant", "")), (*str(got.get("heard", "")).split(), *may_be(got)))


@lru_cache
def _more(meant: str, about: tuple[str, ...]) -> bool:
    others = [one for one in hear_flags(meant) if not any(flag.value in about for flag in one.named)]
    return bool(others) or (not _fits(meant, about) and hear_pain(meant) is Pain.YES)


def wrote(got: Facts, side: str) -> Value:
    """Return the words that are asked about, in quotation marks: the first, and shortened with them what they are said to mean."""
    return _then(got, WROTE_MOST) if "meant" in got else quoted(got, side)


WROTE_MOST: Final = 50
"""Most characters of either that are said back; our choice, so that the question fits."""


def once_more(got: Facts, side: str) -> Value:
    """Return what counts too, where a sign is asked about once more."""
    return " A little of it, or only at times, counts too." if "meant" in got else ""


def told(got: Facts, side: str) -> Value:
    """Return all of the words in quotation marks: the first, and what they are said to mean."""
    return _then(got, SAID_MOST) if "meant" in got else quoted(got, side)


def _then(got: Facts, most: int) -> str:
    first = f"“{in_whole_words(str(got['said']), most)}”" if got.get("said") else str(quoted(got, ""))
    return f"{first}, then “{in_whole_words(str(got['meant']), most)}”"


def crisis_asked(got: Facts, side: str) -> Value:
    """Return what the crisis conversation begins with: "sure", or "doubtful" where it is not sure that self-harm was meant."""
    return "sure" if got.get("which") == SELF_HARM else "doubtful"


def understood(got: Facts, side: str) -> Value:
    """Return the signs that were heard, in words."""
    return words_of(signs_in(got))


def heard(*signs: str) -> Callable[[Facts, str], Value]:
    """Return a fact's function: "yes" where one of these signs was heard."""
    def of(got: Facts, side: str) -> Value:
        return "yes" if set(signs) & set(signs_in(got)) else "no"

    return of


def _outcome(got: Facts) -> SafetyOutcome:
    told = {**got, "cleared_at": says_who(got) if by_clinician(got) and got.get("knew") == "yes" else None}
    return _outcome_of(signs_in(got), tuple(map(told.get, _ASKED)))


@lru_cache
def _outcome_of(signs: tuple[str, ...], asked: tuple[Value | None, ...]) -> SafetyOutcome:
    return level_from_signs(signs, dict(zip(_ASKED, asked, strict=True)))


def cleared_for_it(got: Facts, side: str) -> Value | None:
    """Return the date until which a clearance counts; None without one, or where whoever gave it did not know of the sign."""
    return cleared_until(got, side) if got.get("knew") == "yes" else None


def taken_back(got: Facts) -> bool:
    """True if the lifter said that they meant something else, or self-harm, which has a conversation of its own."""
    return "no" in (got.get("so"), got.get("when"), got.get("which")) or got.get("which") == SELF_HARM


def level_until(got: Facts, side: str) -> Value:
    """Return the level while the questions are open, never better than what stood before them."""
    return level_of((*others(got), _while_open(got))).value


def _while_open(got: Facts) -> LevelPart:
    level = level_until_answered(signs_in(got), sure=got.get("sure") == "yes")
    return LevelPart(whose(got), level, "open", tuple(reason.key for reason in _outcome(got).because))


def parts_while_open(got: Facts, side: str) -> Value:
    """Return the parts of the level while the questions are open."""
    return text_of((*others(got), _while_open(got)))


def level_after_signs(got: Facts, side: str) -> Value:
    """Return the level after the questions: what stood before where the words were taken back, else the worse of both."""
    return worst((level_of(_parts_after(got)), checked_today(got) if taken_back(got) else Level.GO)).value


def level_kept(got: Facts, side: str) -> Value:
    """Return the level that is kept after the questions; "" where nothing stands against anything and no safety check was ever done: what
    a clinician told says nothing of the rest."""
    level = level_after_signs(got, side)
    return "" if level == Level.GO.value and "safety.checked" not in got else level


def _parts_after(got: Facts) -> tuple[LevelPart, ...]:
    outcome = _outcome(got)
    told = LevelPart(whose(got), outcome.level, why=tuple(reason.key for reason in outcome.because))
    return others(got) if taken_back(got) else (*others(got), told)


def parts_after_signs(got: Facts, side: str) -> Value:
    """Return the parts of the level after the questions."""
    return text_of(_parts_after(got))


def reasons_of_signs(got: Facts, side: str) -> Value:
    """Return the reasons, in words."""
    if taken_back(got):
        return "taken back: something else was meant"
    why = " ".join(reason.words for reason in _outcome(got).because)
    stands = level_after_signs(got, side) != Level.GO.value
    return why or (STILL_STANDS if stands else "nothing against it")


def why_told(got: Facts, side: str) -> Value:
    """Return the reasons as sentences behind what was written; "" where what stands is of something told before."""
    why = " ".join(reason.words for reason in _outcome(got).because)
    return f". {why}" if why else ""


def keys_of_signs(got: Facts, side: str) -> Value:
    """Return the keys of the answers that counted, after those from before."""
    return " ".join(why_of(_parts_after(got)))


def body_weight_only(got: Facts, side: str) -> Value:
    """Return "yes" if only body weight is allowed for now: an old disc injury, or pregnancy."""
    outcome = _outcome(got)
    return "yes" if not taken_back(got) and (outcome.body_weight_first or outcome.no_lying) else "no"


def limit_said(got: Facts, side: str) -> Value | None:
    """Return the words that set a limit: those heard as a clinician's restriction, and what a clearance came with. None for none."""
    said = str(got.get("said", ""))
    if "restriction" in signs_in(got):
        return said if len(said) >= SIGN_MOST else ". ".join(filter(None, (said, limits_among([str(got.get("limits", ""))]))))
    return limits_among([str(got.get("limits", ""))])


def history_with_signs(got: Facts, side: str) -> Value:
    """Return what is known of a history, by ids: what was told earlier, and what was heard now."""
    return with_history(got, signs_in(got) if got.get("when") == "earlier" else (one for one in signs_in(got) if one in CLEARABLE))


def is_history(got: Facts, side: str) -> Value:
    """Return "yes" where a clinician's clearance can open it: a history, or chest signs of an earlier day."""
    signs = set(signs_in(got))
    return "yes" if signs & CLEARABLE or ("chest" in signs and got.get("when") == "earlier") else "no"
