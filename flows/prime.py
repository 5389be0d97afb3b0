"""Prime: the drill before squatting, set by set with a timer."""

from __future__ import annotations

from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Known, Run, Tell
from companion.conversation.kinds import Hold, Ready, choice
from companion.language.units import METRIC, reworded
from companion.screening.limits import Work
from companion.screening.sources import value, with_numbers
from flows.outcome_facts import concluded, offer_of, withheld
from flows.shared import BODY_WEIGHT, SQUAT, closes, limited

BETWEEN_REPETITIONS = int(value("prime_between"))
"""Seconds to come back up between two repetitions; our choice, for the timer only."""


def drill_facts(known: Known) -> dict[str, Value]:
    """Return the drill as this lifter may do it now: its name, dose, steps, caution, and the seconds of a set."""
    _, conclusion, _ = concluded(known)
    offer = offer_of(conclusion, known)
    if offer is None:
        return {"offered": "no", "why_not": withheld(conclusion, known) if conclusion.part else "No drill is suggested for you just now. "
                "Say “results” to see why."}
    prime, system = offer.prime, str(known.facts.get("welcome.units", METRIC))
    light = prime.light and not BODY_WEIGHT.holds(known.facts)
    facts: dict[str, Value] = {
        "offered": "yes", "part": offer.part, "name": prime.name, "sets": float(prime.sets), "reps": float(prime.reps),
        "each": " on each side" if prime.sides == 2 else "", "steps": reworded("\n".join(prime.steps), system),
        "light": reworded(f" Light: {prime.light}.", system) if light else " Body weight only.",
        "caution": f"{offer.caution} {offer.stop}", "harder": reworded(offer.harder, system),
        "set_seconds": float(prime.reps * prime.sides * (prime.seconds + BETWEEN_REPETITIONS)),
    }
    return facts


OFFERED = fact("offered").is_("yes")
DRILL_CAUTION = "{caution} Say so at once if anything hurts."
STAYS_EASY = BODY_WEIGHT | closes(Work.SQUAT)
"""The harder form adds a load or a squat."""
SETS = Fact("sets", 1, 5, step=1)
TIMED = Hold("Start the set", seconds="set_seconds", go="Begin: {reps} slow repetitions{each}, about {seconds:g} seconds.",
             over="That is about a set. Finish the one you are in.")


def _set(number: int) -> Ask:
    return Ask(f"set_{number}", f"Set {number} of {{sets}}: {{name}}, {{reps}} repetitions{{each}}. "
               + ("Start when you are in place." if number == 1 else "Rest first, as long as you like."),
               TIMED, caution=DRILL_CAUTION, only_if=OFFERED & (number <= SETS))


FLOW = Flow(
    "prime", version=1, title="Priming drill", command=("drill", "priming"),
    gates=(*SQUAT, limited(), Gate(~fact("drill").known, "The drill comes from the tests. Say “screen” first.")),
    at_start=drill_facts, rests_on=("offered", "name", "light"),
    steps=(
        Tell("{why_not}", ~OFFERED),
        Ask("setup", "The drill: {name}, {sets} sets of {reps}{each}.{light} A drill is a short, light exercise before you squat. It is a "
            "trial: nobody knows yet whether it helps you. Ready to see the steps?", Ready(), only_if=OFFERED),
        Ask("steps", "{steps}", Ready("I have it"), caution=DRILL_CAUTION, only_if=OFFERED, picture="drill {name}"),
        *(_set(number) for number in (1, 2, 3)),
        Ask("felt", "How did that feel?", choice(
            ("easy", "Easy, back still", "easy", "good", "fine", "great"), ("right", "Hard, back still", "hard", "tough"),
            ("moved", "My back moved", "moved", "it moved", "rounded"), ("hurt", "Something hurt")), only_if=OFFERED),
        Run("pain", fact("felt").is_("hurt"), asked="prime"),
        Do(Find("prime.felt", "{felt}", "asked after the drill", "{name}"), fact("felt").known),
        Tell("Next time go less far, so that the back stays still. Squat lighter today, and stop where it moves.",
             fact("felt").is_("moved")),
        Tell(with_numbers("Noted. If it stays easy on {drill_easy:count days}, make it harder: {harder}"),
             fact("felt").is_("easy") & ~STAYS_EASY),
        Tell("Noted.", fact("felt").is_("easy") & STAYS_EASY),
        Tell("Good: hard, but your back stayed still. Keep today's squats above the depth where it moves.", fact("felt").is_("right")),
    ),
)
