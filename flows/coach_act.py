"""A coach's acts: pin the depth or the load, choose a drill, ask for a test, set the retest, overrule, mark as reviewed or take
that back."""

from __future__ import annotations

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.day_kinds import Day
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Known, Tell
from companion.conversation.kinds import Option, Words, choice
from companion.conversation.number_kinds import Number
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES, asked_of
from flows.home import TESTS
from flows.shared import BANDS

ACTS = ("pin_depth", "pin_load", "drill", "ask_for", "retest", "overrule", "reviewed", "unreviewed")
REASONED = ("pin_depth", "pin_load", "drill", "overrule")


def act_facts(known: Known) -> dict[str, Value]:
    """Of whom, and which act; one that is not there is "none". ``which``: the number of the act it takes back."""
    facts = asked_of(known)
    what, _, which = str(facts["asked_what"]).partition("-")
    return {"of": facts["of"], "what": what if what in ACTS else "none", "which": which}


def value_of(got: Facts, side: str) -> Value:
    """The act's value: what was chosen."""
    if got.get("what") == "overrule":
        return f"{got.get('finding', '')} {got.get('ruling', '')}" if "finding" in got and "ruling" in got else ""
    if got.get("what") == "reviewed":
        return "reviewed"
    if got.get("what") == "unreviewed":
        return got.get("which", "")
    value = got.get(str(got.get("what", "")), "")
    return f"{value:g}" if isinstance(value, float) else value


def ready(got: Facts, side: str) -> Value:
    """Whether everything an act needs was said; an overruling needs its reason."""
    whole = bool(value_of(got, "")) and (got.get("what") != "overrule" or "reason" in got)
    return "yes" if whole else "no"


WHAT = Fact("what", values=(*ACTS, "none"))
READY = Fact("ready", values=("yes", "no"), of=ready)

FLOW = Flow(
    "coach_act", version=1, title="For a lifter", policy=Policy.ABOUT_OTHERS, command=None,
    gates=(COACHES,),
    at_start=act_facts, facts=(WHAT, Fact("value", of=value_of), READY),
    steps=(
        Ask("pin_depth", "Which depth should they keep to? It holds as a start: movement or pain moves it back, never deeper.", choice(
            *(Option(one.value, one.label, one.also) for one in BANDS.choices),
            Option("none", "No longer pinned", ("unpin", "none"))), only_if=WHAT.is_("pin_depth")),
        Ask("pin_load", "Up to which load?", Number("kg", 0, 500, usual=(0, 300), example_value=60,
            choices=(Option("none", "No longer pinned", ("unpin", "none")),)), only_if=WHAT.is_("pin_load")),
        Ask("drill", "Which drill should they be offered?", choice(
            ("hip", "Hip: rock-back"), ("hamstrings", "Hamstrings: hinge"), ("calf", "Calf: knee over toes"),
            ("trunk", "Trunk: pause squat"), ("control", "Control: hand on back"), ("none", "As the tests say")),
            only_if=WHAT.is_("drill")),
        Ask("ask_for", "What should I ask them for?", choice(("film", "A film of their squat", "film", "video"), *TESTS),
            only_if=WHAT.is_("ask_for")),
        Ask("retest", "On which day should they test again?", Day(), only_if=WHAT.is_("retest")),
        Ask("finding", "Which finding do you see otherwise?", choice(
            ("length", "Length"), ("strength", "Strength"), ("control", "Control")), only_if=WHAT.is_("overrule")),
        Ask("ruling", "How do you see it? The computed one stays beside it.", choice(
            ("likely", "Likely"), ("ruled_out", "Ruled out"), ("open", "Open"),
            ("as_computed", "As the tests say", "take it back", "as computed")), only_if=fact("finding").known),
        Ask("reason", "Your reason, in a few words? The lifter can read it.", Words(limit=300, example_text="seen in person on Tuesday"),
            free=True, only_if=WHAT.one_of(*REASONED)),
        Do(Act("{what}", "{of}", "{value}", "{reason}"), READY.is_("yes")),
        Tell("An overruling needs its reason; nothing has changed.", WHAT.is_("overrule") & READY.is_("no")),
        Tell("Nothing has changed.", ~WHAT.is_("overrule") & READY.is_("no")),
    ),
)
