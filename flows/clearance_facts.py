"""Facts of a clearance: what stood before it, what it is of, and what stands after it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.language.clearances import and_limit, is_today, may_be_another, raises, read_clearance
from companion.language.limits import parts_named, sets_none
from companion.screening.limits import STRETCHES, Limit, LimitPart, LimitsTold, as_text, limits_in, most_kg, without, words_of
from flows.cleared_by import CLEARED_SAID, who_and_when
from flows.limit_facts import LIMITS, kilos_of, next_asked, open_limit, show_to, today_in
from flows.safety_facts import CLEARED_FOR

_CLEARED_FOR: Final = {"all": frozenset(LimitPart), "lifting": frozenset((LimitPart.LOAD,)), "squats": frozenset((LimitPart.SQUATS,)),
                       "bending": frozenset((LimitPart.BENDING,)), "stretching": frozenset(STRETCHES)}
_FOR_WORDS: Final = {"all": "everything", "lifting": "lifting weights"}


def may_clear(asked: str, facts: Facts) -> bool:
    """True if words may begin a clearance: those that raise a weight may where one stands."""
    return not raises(asked) or most_kg(limits_in(facts.get(LIMITS))) is not None


def clearance_facts(known: Known) -> dict[str, Value]:
    """Return what stands before a clearance, what the words it was begun with clear, and these words where they also set a limit, with
    what stands until that is asked about."""
    said, beside = and_limit(known.asked, today_in(known.facts))
    raised, who = raises(known.asked), read_clearance(said).who
    limit = f"{f'{who} said ' if who else ''}nothing over {raised}" if raised else known.asked
    own = open_limit({"given": limit})  # where it was said before
    limits = tuple(one for one in limits_in(known.facts.get(LIMITS)) if not beside or one != own)
    facts: dict[str, Value] = {"before": as_text(limits), "before_words": words_of(limits, show_to(known.facts)),
                               "stand": "yes" if limits else "no"}
    waits = str(known.facts.get("safety.level", "go")) in ("clinician", "same_day", "emergency") or (
        known.facts.get("safety.body_first") == "yes")
    facts["waits"] = "yes" if limits or waits else "no"
    facts["told_today"] = "yes" if any(known.facts.get(f"safety.{one}.today") == "yes" for one in ("limits", "level")) else "no"
    named = {LimitPart(one) for one in parts_named(said)}
    read = next((name for name, parts in _CLEARED_FOR.items() if named == parts), "lifting" if raised else "")
    return facts | ({"for_read": read} if read else {}) | ({CLEARED_SAID: said} if said else {}) | (
        {"limit_said": limit, "with_said": as_text((*limits, own))} if beside else {})


def is_newer(got: Facts, side: str) -> Value:
    """Return "yes" where they were cleared today, and what stood was told on an earlier day."""
    return "yes" if is_today(str(who_and_when(got, side))) and got.get("told_today") == "no" else "no"


def limits_told(got: Facts, side: str) -> Value | None:
    """Return the words that set a limit beside a clearance, with it or asked for after it; None for none."""
    return got.get("limit_said", got.get("limits"))


def after_what(got: Facts, side: str) -> Value:
    """Return the question whether what stands was known to whoever cleared them."""
    stands = got.get("before_words")
    return (f"You were told this: {stands}. Did they clear you after that?" if stands else
            "Did they clear you after what you told me, so that they knew of it?")


def _for(got: Facts) -> str:
    return str(got.get("cleared_for", got.get("for_read", "all")))


def cleared_words(got: Facts, side: str) -> Value:
    """Return what somebody was cleared for, in words."""
    words, kept = _FOR_WORDS.get(_for(got), _for(got)), _kept(got)
    return f"{words}, though not of what stays: {words_of(kept, show_to(got))}" if kept else words


def cleared_to_load(got: Facts, side: str) -> Value:
    """Return "yes" if weights are cleared."""
    return "yes" if _for(got) in ("all", "lifting") and not _kept(got) else "no"


def _cleared(got: Facts, limits: Iterable[Limit]) -> LimitsTold:
    name = _for(got)
    return without(limits, _CLEARED_FOR[name], load=name in ("all", "lifting"))


def _of_it(got: Facts) -> LimitsTold:
    """Return the limits that a clearance is of, wholly or in part."""
    return tuple(one for one in limits_in(got.get("before")) if _cleared(got, (one,)) != (one,))


def _of_others(got: Facts) -> LimitsTold:
    """Return those of them that another clinician set than gave the clearance, or may have."""
    who = str(who_and_when(got, ""))
    return tuple(one for one in _of_it(got) if one.by and may_be_another(who, one.by))


def _kept(got: Facts) -> LimitsTold:
    """Return what another clinician set and stays, as whoever cleared them may not have known of it."""
    return () if got.get("agreed") == "yes" else _of_others(got)


def set_by_others(got: Facts, side: str) -> Value | None:
    """Return in words what a clearance is of and another clinician set, or may have; None for nothing."""
    return words_of(_of_others(got), show_to(got)) or None


def lifts_some(got: Facts, side: str) -> Value:
    """Return "no" where all that a clearance is of stays."""
    kept = _kept(got)
    return "no" if kept and kept == _of_it(got) else "yes"


def _left(got: Facts) -> LimitsTold:
    before, kept = limits_in(got.get("before")), _kept(got)
    now = limits_in(got.get(LIMITS))
    return tuple(left for one in now for left in (_cleared(got, (one,)) if one in before and one not in kept else (one,)))


def limits_left(got: Facts, side: str) -> Value:
    """Return what stands after the clearance, with what was told since it was begun to be told."""
    return as_text(_left(got))


def kilos_left(got: Facts, side: str) -> Value:
    """Return the most to lift after the clearance, in kg; "" for no number."""
    return kilos_of(_left(got))


def asked_left(got: Facts, side: str) -> Value | None:
    """Return the next date on which a limit is asked about; None where none is left."""
    return next_asked(_left(got), got)


def until_asked_again(got: Facts, side: str) -> Value | None:
    """Return the date until which a clearance counts; None where it was not confirmed."""
    return (today_in(got) + CLEARED_FOR).isoformat() if got.get("right") == "yes" else None


def sets_limit(key: str) -> Callable[[Facts, str], Value]:
    """Return a fact's function: "yes" where an answer in words sets a limit, or may."""
    def of(got: Facts, side: str) -> Value:
        return "no" if sets_none(str(got.get(key, "none"))) else "yes"

    return of
