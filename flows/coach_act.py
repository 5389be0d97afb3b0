"""A coach's actions: pin the depth or the load, choose a drill, ask for a test, set the retest, overrule, mark as reviewed or
withdraw that."""

from __future__ import annotations

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.day_kinds import Day
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Known, Tell
from companion.conversation.kinds import Option, Words, choice
from companion.conversation.number_kinds import Number
from companion.conversation.policy import Policy
from companion.screening.coach_acts import AS_COMPUTED, COACH_ACTS
from flows.coach_shared import COACHES_ONLY, asked_of
from flows.home import TESTS
from flows.shared import BANDS

ACTS = {act.name: act for act in COACH_ACTS.values() if act.flow == "coach_act"}
REASONED = tuple(act.name for act in ACTS.values() if act.reason)
NEEDS_REASON = tuple(act.name for act in ACTS.values() if act.reason == "must")


def act_facts(known: Known) -> dict[str, Value]:
    """Return the lifter ("of", by name "whom"), the action ("what", "none" if unknown) and the number of the act it withdraws
    ("which")."""
    facts = asked_of(known)
    what, _, which = str(facts["asked_what"]).partition("-")
    return {"of": facts["of"], "whom": facts["whom"], "what": what if what in ACTS else "none", "which": which}


def value_of(got: Facts, side: str) -> Value:
    """Return the action's value: its answers joined, its name if it asks for none, "" while an answer is missing."""
    act = ACTS.get(str(got.get("what", "")))
    if act is None or not all(key in got for key in act.asks):
        return ""
    said = " ".join(f"{value:g}" if isinstance(value := got[key], float) else str(value) for key in act.asks)
    return said if act.asks else act.name


def ready(got: Facts, side: str) -> Value:
    """Return "yes" if every answer the action needs is there, and its reason if it must have one."""
    whole = bool(value_of(got, "")) and (got.get("what") not in NEEDS_REASON or "reason" in got)
    return "yes" if whole else "no"


ACT_ASKED = Fact("what", values=(*ACTS, "none"))
READY = Fact("ready", values=("yes", "no"), of=ready)

FLOW = Flow(
    "coach_act", version=2, title="For a lifter", policy=Policy.ABOUT_OTHERS, command=None,
    gates=(COACHES_ONLY,),
    at_start=act_facts, facts=(ACT_ASKED, Fact("value", of=value_of), READY),
    steps=(
        Ask("pin_depth", "{whom}: which depth should they keep to? It is where they start: movement or pain can move it back, and nothing "
            "moves it deeper.", choice(
            *(Option(one.value, one.label, one.also) for one in BANDS.choices),
            Option("none", "No longer pinned", ("unpin", "none"))), only_if=ACT_ASKED.is_("pin_depth")),
        Ask("pin_load", "{whom}: up to which load?", Number("kg", 0, 500, usual=(0, 300), example_value=60,
            choices=(Option("none", "No longer pinned", ("unpin", "none")),)), only_if=ACT_ASKED.is_("pin_load")),
        Ask("pin_setup", "{whom}: which set-up should they squat with? It changes no limit of depth or load.", choice(
            ("slow", "Three seconds down"), ("wide", "Feet wider"), ("heels", "Heels up"), ("front", "Weight in front"),
            ("slow+heels", "Slow, heels up"), ("wide+heels", "Wider, heels up"),
            Option("none", "No longer set", ("unpin", "none"))), only_if=ACT_ASKED.is_("pin_setup")),
        Ask("drill", "{whom}: which drill should they be offered?", choice(
            ("hip", "Hip: rock-back"), ("hamstrings", "Hamstrings: hinge"), ("calf", "Calf: knee over toes"),
            ("trunk", "Trunk: pause squat"), ("control", "Control: hand on back"), ("none", "As the tests say")),
            only_if=ACT_ASKED.is_("drill")),
        Ask("ask_for", "{whom}: what should I ask them for?", choice(("film", "A film of their squat", "film", "video"), *TESTS),
            only_if=ACT_ASKED.is_("ask_for")),
        Ask("retest", "{whom}: on which day should they test again?", Day(), only_if=ACT_ASKED.is_("retest")),
        Ask("aside", "{whom}: put aside until when? They stay in your list; pain or a referral brings them back at once.", choice(
            ("1", "Tomorrow"), ("3", "In three days"), ("7", "In a week"), ("dismiss", "Something new comes", "dismiss"),
            ("reviewed", "It is settled: reviewed", "reviewed")), only_if=ACT_ASKED.is_("put_aside")),
        Ask("finding", "{whom}: which finding do you see differently?", choice(
            ("length", "Length"), ("strength", "Strength"), ("control", "Control")), only_if=ACT_ASKED.is_("overrule")),
        Ask("ruling", "{whom}: how do you see it? What the tests say stays next to it.", choice(
            ("likely", "Likely"), ("ruled_out", "Ruled out"), ("open", "Open"),
            (AS_COMPUTED, "As the tests say", "take it back", "as computed")), only_if=fact("finding").known),
        Ask("reason", "{whom}: your reason, in a few words? The lifter can read it.",
            Words(limit=300, example_text="seen in person on Tuesday"),
            free=True, only_if=ACT_ASKED.one_of(*REASONED)),
        Do(Act("{what}", "{of}", "{value}", "{reason}"), READY.is_("yes")),
        Tell("To overrule a finding I need your reason, so nothing has changed for {whom}.",
             ACT_ASKED.one_of(*NEEDS_REASON) & READY.is_("no")),
        Tell("Nothing has changed for {whom}.", ~ACT_ASKED.one_of(*NEEDS_REASON) & READY.is_("no")),
    ),
)
