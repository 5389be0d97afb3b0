"""A coach's actions: pin the depth or the load, raise a limit, choose a drill, ask for a test, set or end the retest date, overrule, note,
lift a referral, expect, group, hand over, put aside, mark as reviewed or take that back; and until when an order holds."""

from __future__ import annotations

import re

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.day_kinds import Day
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Known, Tell
from companion.conversation.kinds import Kind, Option, Words, choice
from companion.conversation.number_kinds import Number
from companion.conversation.policy import Policy
from companion.language.units import METRIC, shown
from companion.screening.coach_acts import AS_COMPUTED, COACH_ACTS, HOLDS_DAYS
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.setups import CHANGES
from companion.screening.sources import with_numbers
from flows.coach_shared import TO_A_LIFTER, asked_of
from flows.home import TESTS
from flows.shared import BANDS

ACTS = {act.name: act for act in COACH_ACTS.values() if act.flow == "coach_act"}
REASONED = tuple(act.name for act in ACTS.values() if act.reason)
ENDING = tuple(act.name for act in ACTS.values() if act.ends)
NEEDS_REASON = tuple(act.name for act in ACTS.values() if act.reason == "must")


def act_facts(known: Known) -> dict[str, Value]:
    """Return the lifter ("of", by name "whom"), the action ("what", "none" if unknown) and the number of the act it withdraws
    ("which")."""
    facts = asked_of(known)
    what, _, which = str(facts["asked_what"]).partition("-")
    setting = _setting(what, which, str(known.facts.get("welcome.units", METRIC)))
    return {"of": facts["of"], "whom": facts["whom"], "what": what if what in ACTS else "none", "which": which,
            "given": "yes" if setting else "no", "your_reason": f"{setting} Your reason" if setting else " your reason"}


def _setting(what: str, which: str, units: str) -> str:
    """Return the value that a button brought, in words to follow the lifter's name; "" where it brought none that the act can take."""
    if which == "none" and what in ENDING:
        return " no longer set."
    if what == "pin_load" and re.fullmatch(r"[0-9]{1,3}(?:\.[0-9]{1,2})?", which) and float(which) <= MOST_LOAD.high:
        return f" at most {shown(float(which), 'kg', units)}."
    if what == "pin_depth":
        band = band_of(which)
        return f" keep to {BAND_WORDS[band]}." if band else ""
    return f" {dict(TESTS).get(which, 'a film')}." if what == "ask_for" and which in ("film", *dict(TESTS)) else ""


def value_of(got: Facts, side: str) -> Value:
    """Return the action's value: its answers joined, its name if it asks for none, "" while an answer is missing."""
    act = ACTS.get(str(got.get("what", "")))
    if act is not None and got.get("given") == "yes":
        return str(got.get("which", ""))
    if act is None or not all(key in got for key in act.asks):
        return ""
    said = " ".join(f"{value:g}" if isinstance(value := got[key], float) else str(value) for key in act.asks)
    return said if act.asks else act.name


def ready(got: Facts, side: str) -> Value:
    """Return "yes" if every answer the action needs is there, and its reason if it must have one."""
    whole = bool(value_of(got, "")) and (got.get("what") not in NEEDS_REASON or "reason" in got)
    return "yes" if whole else "no"


ACT_ASKED = Fact("what", values=(*ACTS, "none"))
MOST_LOAD = Number("kg", 0, 500, usual=(0, 300), example_value=60, choices=(Option("none", "No longer pinned", ("unpin", "none")),))
VALUE_GIVEN = Fact("given", values=("no", "yes"))


def dated(got: Facts, side: str) -> Value:
    """Return "yes" if it is asked until when the action holds: an order is set, not ended."""
    said = {name: got.get(ACTS[name].asks[0]) for name in ENDING}
    reason, what = got.get("reason"), str(got.get("what", ""))
    value = got.get("which") if got.get("given") == "yes" and what in ENDING else said.get(what)
    return "no" if value in (None, "none") or (reason is None and what in NEEDS_REASON) else "yes"


def _ask(key: str, says: str, kind: Kind, free: bool = False) -> Ask:
    """Return a question of the one act that asks for this key."""
    asks = next(act.name for act in ACTS.values() if key in act.asks)
    return Ask(key, says, kind, free=free, only_if=VALUE_GIVEN.is_("no") & ACT_ASKED.is_(asks))


READY = Fact("ready", values=("yes", "no"), of=ready)
DATED = Fact("dated", values=("no", "yes"), of=dated)

FLOW = Flow(
    "coach_act", version=5, title="For a lifter", policy=Policy.ABOUT_OTHERS, command=None,
    gates=TO_A_LIFTER,
    at_start=act_facts, facts=(ACT_ASKED, VALUE_GIVEN, Fact("value", of=value_of), READY, DATED),
    steps=(
        _ask("pin_depth", "{whom}: which depth should they keep to? It is where they start: movement or pain can move it back, and nothing "
            "moves it deeper.", choice(
            *(Option(one.value, one.label, one.also) for one in BANDS.choices),
            Option("none", "No longer pinned", ("unpin", "none")))),
        _ask("pin_load", "{whom}: up to which load?", MOST_LOAD),
        _ask("raise_load", "{whom}: up to which load, above what the tests say? It ends with pain, a closed day or new results, and never "
            "goes above what they trained without pain.", Number("kg", 0, 500, usual=(0, 300), example_value=70)),
        _ask("pin_setup", "{whom}: which set-up should they squat with? It changes no limit of depth or load.", choice(
            ("slow", CHANGES["slow"].words.capitalize()), ("wide", "Feet wider"), ("heels", "Heels up"), ("front", "Weight in front"),
            ("slow+heels", "Slow, heels up"), ("wide+heels", "Wider, heels up"),
            Option("none", "No longer set", ("unpin", "none")))),
        _ask("drill", "{whom}: which drill should they be offered?", choice(
            ("hip", "Hip: rock-back"), ("hamstrings", "Hamstrings: hinge"), ("calf", "Calf: knee over toes"),
            ("trunk", "Trunk: pause squat"), ("control", "Control: hand on back"), ("none", "As the tests say"))),
        _ask("ask_for", "{whom}: what should I ask them for?", choice(("film", "A film of their squat", "film", "video"), *TESTS)),
        _ask("retest", "{whom}: on which day should they test again?", Day()),
        _ask("private", "{whom}: what do you want to note? Only you read it. They can see that a note exists, not what it says.",
            Words(limit=1000, example_text="ask about sleep next time"), free=True),
        _ask("seen_days", "{whom}: on which day did you see them? A new safety check must still pass, from tomorrow on.", choice(
            ("0", "Today"), ("1", "Yesterday"), ("2", "Two days ago"), ("3", "Three days ago"))),
        _ask("group", "{whom}: into which group? Type its name. If they are in it, they leave it.",
            Words(limit=30, example_text="Tuesday 6 pm"), free=True),
        _ask("code", "{whom}: which code did the other coach give you? They make it with “invite a lifter”. Nothing changes before {whom} "
            "agrees.", Words(limit=60, example_text="abcd efgh jkmn"), free=True),
        _ask("aside", "{whom}: put aside until when? They stay in your list; pain or a referral brings them back at once.", choice(
            ("1", "Tomorrow"), ("3", "In three days"), ("7", "In a week"), ("dismiss", "Something new comes", "dismiss"),
            ("reviewed", "It is settled: reviewed", "reviewed"))),
        _ask("finding", "{whom}: which finding do you see differently?", choice(
            ("length", "Length"), ("strength", "Strength"), ("control", "Control"))),
        Ask("ruling", "{whom}: how do you see it? What the tests say stays next to it.", choice(
            ("likely", "Likely"), ("ruled_out", "Ruled out"), ("open", "Open"),
            (AS_COMPUTED, "As the tests say", "take it back", "as computed")), only_if=fact("finding").known),
        Ask("reason", "{whom}:{your_reason}, in a few words? The lifter can read it.",
            Words(limit=300, example_text="seen in person on Tuesday"),
            free=True, only_if=ACT_ASKED.one_of(*REASONED) & ~ACT_ASKED.one_of(*NEEDS_REASON)),
        Ask("must_reason", "{whom}:{your_reason}, in a few words? The lifter can read it, and without it nothing changes.",
            Words(limit=300, example_text="seen in person on Tuesday", must=True), free=True, log_as="reason",
            only_if=ACT_ASKED.one_of(*NEEDS_REASON)),
        Ask("until", "{whom}: until when does it hold? Then it ends by itself, and I tell you both.", choice(
            (f"{HOLDS_DAYS}", with_numbers("{order_holds:Count weeks}"), "usual"), ("28", "Four weeks"), ("7", "A week"),
            ("none", "Until I end it")), only_if=DATED.is_("yes") & ACT_ASKED.one_of(*ENDING)),
        Do(Act("{what}", "{of}", "{value}", "{reason}", "{until}"), READY.is_("yes")),
        Tell("For that I need your reason, so nothing has changed for {whom}.",
             ACT_ASKED.one_of(*NEEDS_REASON) & READY.is_("no")),
        Tell("Nothing has changed for {whom}.", ~ACT_ASKED.one_of(*NEEDS_REASON) & READY.is_("no")),
    ),
)
