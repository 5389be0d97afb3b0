"""Limits that hold for a lifter: of all that set a depth or a load the one that counts, since when, and the squat for now within them.

The tests, a coach, a clinician and the squat days since may each say something else; a lifter is told the one to keep to.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Final

from companion.conversation.condition import Value
from companion.conversation.flow import Known
from companion.screening.conclusion import Conclusion
from companion.screening.depth import BAND_WORDS, Band, band_of
from companion.screening.load_limit import WHOSE, at_most
from companion.screening.setups import squat_for_now
from flows.day_facts import depth_now, limit_held, steps_now
from flows.outcome_facts import concluded, outcome_facts, showing
from flows.shared import BODY_WEIGHT

LOAD_SAYS: Final = {"load.told": "that is what you were told", "load.pin": "your coach set that",
                    "load.raised": "your coach raised what the tests gave"}


def results_facts(known: Known) -> dict[str, Value]:
    """Return all facts of the results, computed once at the beginning, with what holds from now on."""
    told = concluded(known)
    facts = outcome_facts(known, told)
    if not told[0].done:
        return facts
    after = replace(known, facts={**known.facts, "depth.keep": facts["keep"], "load.limit": facts["load_limit"], "outcome.at": facts["at"]})
    facts["setup_words"] = squat_words(told[1], after)
    band, load = _depth(after), limit_held(after)
    if band and band[1]:
        facts["keep_words"] = ""  # "what holds" says the depth to keep to, which is not the tests'
    if load and load[0] in LOAD_SAYS:
        facts["load_words"] = f"Lift {at_most(load[1], showing(known))}: {LOAD_SAYS[load[0]]}."
    return facts | _limits(known, after)


def squat_words(conclusion: Conclusion, known: Known) -> str:
    """Return the squat for now, within every limit that stands; "" without a set-up that was checked or set."""
    if conclusion.setup is None:
        return ""
    depth, load, usual = _depth(known), limit_held(known), known.facts.get("about_you.load")
    return squat_for_now(conclusion.setup, depth[0] if depth else None, load[1] if load else None,
                         usual if isinstance(usual, float) else None, showing(known), body=BODY_WEIGHT.holds(known.facts))


def _depth(known: Known) -> tuple[Band, str] | None:
    """Return the depth to keep to and whose it is: "" for the tests', else in words; None for none."""
    steps = steps_now(known)
    if steps is None:
        return None
    pin, keep, usual = (band_of(str(known.facts.get(name, ""))) for name in ("depth.pin", "depth.keep", "about_you.usual_depth"))
    now = depth_now(steps)
    if now is min(one for one in (pin or keep, usual) if one):
        on = str(known.facts.get("depth.pinned_on", ""))
        return now, f"set by your coach{f', since {_day(on)}' if on else ''}" if pin else ""
    return now, "after your squat days"


def _limits(known: Known, after: Known) -> dict[str, Value]:
    """Return which limits hold from now on, since when and why, and which have ended; the day each began is kept. ``after``: with what
    the tests give now."""
    show, said = showing(known), known.facts
    held, ended, facts = [], [], dict[str, Value]()
    band, load = _depth(after), limit_held(after)
    for name, key, now in (("depth", "depth.keep", f"no deeper than {BAND_WORDS[band[0]]}" if band else ""),
                           ("load", "load.limit", at_most(load[1], show) if load else "")):
        was, own = str(said.get(key, "")), str(after.facts[key])
        since = (str(said.get(f"{name}.since", "")) if own == was else "") or str(said["today"])
        facts[f"{name}_since"] = since if own else ""
        whose = band[1] if name == "depth" and band else WHOSE[load[0]] if load and load[0] != "load.limit" else ""
        if now:
            held.append(f"{now} ({whose or f'since {_day(since)}, from your tests'})")
        elif was not in ("", "none"):
            ended.append(f"no deeper than {BAND_WORDS[Band(was)]}" if name == "depth" else f"at most {show(float(was), 'kg')}")
    lines = [*held[:1], *(f"{one[:1].upper()}{one[1:]}" for one in held[1:])]
    told = f"What holds now: {'. '.join(lines)}." if held else "No limit of depth or load holds from these tests."
    facts["limit_words"] = told + (f" Ended today: {'; '.join(ended)}, since these results give no reason for it." if ended else "")
    return facts


def _day(text: str) -> str:
    day = date.fromisoformat(text)
    return f"{day.day} {day:%B}"
