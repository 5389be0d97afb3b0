"""Trial: does priming help this lifter? Prime or plain warm-up by lot on squat days, and the same questions afterwards."""

from __future__ import annotations

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Ask, Flow, Gate, Jump, Known, Run, Tell
from companion.conversation.kinds import Number, Ready, YesNo
from companion.screening.priming import Day, arm_of, verdict_of
from flows.outcome_facts import showing
from flows.shared import BANDS, SHARP, SQUAT

JOINED = fact("trial.join").is_("yes")
PRIMED, PLAIN = fact("arm").is_("prime"), fact("arm").is_("plain")
GOES = fact("join").is_("yes") | JOINED & ~fact("join").known
FELT = Number("", 0, 10, usual=(0, 10), example_value=3, step=1)


def trial_facts(known: Known) -> dict[str, Value]:
    """Today's lot, the depth and load to repeat, and what the days so far show.

    The seed is the moment at which the lifter joined, with who they are: kept in the log, so that every lot can be drawn
    again. A day counts from its draw on, whatever was done.
    """
    answers = [row for row in known.answers() if row.flow == "trial" and row.status == "ok" and row.value is not None]
    joined = next((row.at for row in answers if (row.key, row.value) == ("join", "yes")), known.now)
    seed = f"{known.facts.get('person', '')} {joined.isoformat()}"
    runs = list(dict.fromkeys(row.run for row in answers if row.key == "draw"))
    told = {run: {row.key: row.value for row in answers if row.run == run} for run in runs}
    hurt = {row.run for row in answers if row.ending == "pain"}
    days = [Day(index, float(said["felt"]), {"yes": True, "no": False}.get(str(said.get("kept"))), str(said["depth"]),
                float(said["load"]))
            for index, (run, said) in enumerate(told.items())
            if run not in hurt and {"felt", "depth", "load"} <= said.keys()]
    last = days[-1] if days else None
    show = showing(known)
    same = f"as last time: {last.depth.replace('_', ' ')}, {show(last.load, 'kg')}" if last else "the ones you can keep to each time"
    return {"index": float(len(runs)), "number": float(len(runs) + 1), "arm": arm_of(seed, len(runs)), "same": same,
            "so_far": verdict_of(seed, days).words}


FLOW = Flow(
    "trial", version=1, title="Priming trial", counted=False, minutes=10, command=("priming trial", "does priming help"),
    gates=(*SQUAT, Gate(~fact("drill").known | fact("drill").is_("none"),
                        "A trial needs a drill, and that comes from the tests. Say “screen” first.")),
    at_start=trial_facts,
    steps=(
        Ask("join", "Does the drill help you? On squat days I draw by lot: drill or plain warm-up. Afterwards I ask the same "
            "three things. Twelve days at the same depth and load can show it. Join?", YesNo(yes="Yes, join", no="No"),
            only_if=~JOINED, then=(Jump(~fact("join").is_("yes"), say="All right. The drill stays there: say “prime”."),)),
        Tell("{so_far}", JOINED),
        Ask("draw", "Squat day {number}. Depth and load today: {same}. Shall I draw?", Ready("Draw")),
        Tell("Today: the drill first.", PRIMED),
        Run("prime", PRIMED),
        Tell("Today: no drill, only your usual warm-up.", PLAIN),
        Ask("squatted", "Now your squats, within the depth and load you keep to. Tap when you are done, also hours later.",
            Ready("Done squatting"), caution="Stop where the back starts to move. " + SHARP),
        Ask("depth", "How deep were the working sets?", BANDS),
        Ask("load", "With which load?", Number("kg", 0, 500, usual=(0, 300), example_value=80)),
        Ask("kept", "Did you keep to the depth you meant to?", YesNo()),
        Ask("felt", "How much did your lower back move, from 0, not at all, to 10, as much as ever?", FELT),
        Tell("Kept. The next squat day gets its own lot: say “priming trial”."),
    ),
)
