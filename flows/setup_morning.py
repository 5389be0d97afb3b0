"""The morning after a set-up was tried: did it leave a pinch, an ache or pain? If not, it becomes the squat for now."""

from __future__ import annotations

from dataclasses import replace

from companion.conversation.condition import Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Known, Offer, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.screening.pairs import look_of
from companion.screening.setups import SetUp, called, rank_of, without
from flows.outcome_facts import concluded, showing
from flows.shared import WELCOMED
from flows.what_holds import squat_words


def morning_facts(known: Known) -> dict[str, Value]:
    """Return the set-up in words, and the depth it gives if the morning is free of pain."""
    change = str(known.facts.get("setup.change", ""))
    setup = SetUp(change, rank_of(str(known.facts.get("setup.start", ""))), rank_of(str(known.facts.get("setup.plain", ""))))
    screen, told, _ = concluded(known, setup)
    keep = told.keep.value if told.keep else ""
    said = squat_words(told, replace(known, facts={**known.facts, "depth.keep": keep}))
    since = (str(known.facts.get("depth.since", "")) if keep == known.facts.get("depth.keep") else "") or str(known.facts["today"])
    return {"words": called(change, showing(known)), "keep": keep, "since": since, "keep_words": told.keep_words,
            **without(look_of(screen), known.facts, change), **({"setup_words": said} if said else {})}


FINE = fact("how").is_("no")
GIVES_DEPTH = FINE & fact("keep").one_of("well_above", "a_little_above", "parallel", "below")

FLOW = Flow(
    "setup_morning", version=1, title="The morning after a new set-up", policy=Policy.FOLLOW_UP, command=None,
    gates=(WELCOMED, Gate(~fact("setup.state").is_("waits"), "No set-up waits for an answer.")), at_start=morning_facts,
    invite="Yesterday you tried a new way to squat. How are back, hips and knees this morning?",
    invites=(Offer("How they are", "setup_morning"),),
    steps=(
        Ask("how", "Yesterday you squatted with {words}. Anything new in back, hips or knees this morning?", choice(
            ("no", "Nothing", "fine", "good", "all good", "none"), ("ache", "A pinch or an ache", "ache", "pinch", "a bit"),
            ("pain", "Pain", "yes", "it hurts", "hurts")), safety=True),
        Do(Find("setup.state", "good", "no pinch or pain in the squats or the morning after", "{words}"), FINE),
        Do(Find("setup.state", "out", "a pinch, an ache or pain the morning after", "{words}"), ~FINE),
        Do(Find("setup.out", "{outs}", "a pinch, an ache or pain the morning after", "{words}"), ~FINE),
        Do(Find("setup.proposed", "{left}", "what is left without a pinch or an ache", "{words}"), ~FINE),
        Do(Find("depth.keep", "{keep}", "one band above where the rounding starts with the set-up (choice)", "{keep_words}"),
           GIVES_DEPTH),
        Do(Find("depth.since", "{since}", "the day this limit began"), GIVES_DEPTH),
        Tell("{setup_words} This takes the place of the depth told before.", FINE & fact("setup_words").known),
        Tell("Good. It counts from the next day on which the safety check says go.", FINE & ~fact("setup_words").known),
        Tell("Then that set-up is out, and your plain one stands. If it is still there tomorrow, say so and leave squats until then.",
             fact("how").is_("ache")),
        Run("pain", fact("how").is_("pain")),
    ),
)
