"""Trial: does priming help this lifter? Prime or plain warm-up by lot on squat days, and the same questions afterwards."""

from __future__ import annotations

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Jump, Known, Run, Tell
from companion.conversation.kinds import Number, Ready, YesNo, choice
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.priming import Day, arm_of, verdict_of
from flows.outcome_facts import showing
from flows.shared import BANDS, BODY_WEIGHT, SHARP, SQUAT

JOINED = fact("trial.joined").is_("yes")
TODAY = fact("drawn_today").is_("yes")
DRAWN = fact("draw").is_("draw")
PRIMED, PLAIN = DRAWN & fact("arm").is_("prime"), DRAWN & fact("arm").is_("plain")
ON = fact("safety.level").is_("go") & (PLAIN | PRIMED & fact("run_prime").is_("done") & ~fact("prime.felt").is_("hurt"))
"""Only a day on which nothing hurt goes on to squats."""
FELT = Number("", 0, 10, usual=(0, 10), example_value=3, step=1)


def trial_facts(known: Known) -> dict[str, Value]:
    """Today's lot, the depth and load to repeat, and what the days so far show.

    The seed is the moment at which the lifter joined, with who they are: kept in the log, so that every lot can be drawn
    again. A day counts from its draw on, whatever was done.
    """
    rows = [row for row in known.answers() if row.flow == "trial"]
    joined = next((row.at for row in rows if (row.key, row.value, row.status) == ("join", "yes", "ok")), known.now)
    seed = f"{known.facts.get('person', '')} {joined.isoformat()}"
    stands = {(row.run, row.key): row.value if row.status == "ok" else None for row in rows}  # the latest of each
    runs = list(dict.fromkeys(run for (run, key), value in stands.items() if (key, value) == ("draw", "draw")))
    hurt = {row.run for row in rows if row.ending == "pain"}
    told = {run: {key: value for (of, key), value in stands.items() if of == run and value is not None} for run in runs}
    days = [Day(index, float(said["felt"]), {"yes": True, "no": False}.get(str(said.get("kept"))), str(said["depth"]),
                float(said["load"]))
            for index, (run, said) in enumerate(told.items())
            if run not in hurt and {"felt", "depth", "load"} <= said.keys()]
    last = days[-1] if days else None
    show = showing(known)
    limit, keep = str(known.facts.get("load.limit", "")), band_of(str(known.facts.get("depth.keep", "")))
    most = float(limit) if limit else None
    fits = last is not None and (most is None or last.load <= most) and (keep is None or (band_of(last.depth) or keep) <= keep)
    bounds = [*([f"no deeper than {BAND_WORDS[keep]}"] if keep else []), *([f"no more than {show(most, 'kg')}"] if most else [])]
    same = (f"as last time: {last.depth.replace('_', ' ')}, {show(last.load, 'kg')}" if last and fits else
            "the ones you can keep to each time" + "".join(f", {bound}" for bound in bounds))
    return {"index": float(len(runs)), "number": float(len(runs) + 1), "arm": arm_of(seed, len(runs)), "same": same,
            "keep": keep.value if keep else "", "most": most if most is not None else 10_000.0,
            "so_far": verdict_of(seed, days).words, "drawn_today": known.facts.get("trial.day.today", "no")}


def over_limits(got: Facts, side: str) -> Value:
    """Whether the day went past the depth or the load to keep to for now, or moved a lot where it did not keep them."""
    keep, depth = band_of(str(got.get("keep", ""))), band_of(str(got["depth"]))
    deeper = keep is not None and depth is not None and depth > keep
    return "yes" if deeper or float(got["load"]) > float(got["most"]) or got.get("kept") == "no" else "no"


FLOW = Flow(
    "trial", version=1, title="Priming trial",
    facts=(Fact("arm", values=("prime", "plain")), Fact("over", values=("yes", "no"), of=over_limits)), minutes=10,
    command=("priming trial", "does priming help"),
    gates=(*SQUAT, Gate(~fact("drill").known | fact("drill").is_("none"),
                        "A trial needs a drill, and that comes from the tests. Say “screen” first."),
           Gate(BODY_WEIGHT, "The trial compares squats with the same load, and for now you keep to body weight. It waits.")),
    at_start=trial_facts,
    steps=(
        Ask("join", "Does the drill help you? On squat days I draw by lot: drill or plain warm-up. Afterwards I ask the same "
            "three things. Twelve days at the same depth and load can show it. Join?", YesNo(yes="Yes, join", no="No"),
            only_if=~JOINED, then=(Jump(~fact("join").is_("yes"), say="All right. The drill stays there: say “prime”."),)),
        Do(Find("trial.joined", "yes", "the lifter joined the trial"), fact("join").is_("yes")),
        Tell("{so_far}", JOINED, picture="chart_trial"),
        Tell("Today has its lot already; the next squat day gets its own.", TODAY),
        Ask("draw", "Squat day {number}. Depth and load today: {same}. Shall I draw?", choice(
            ("draw", "Draw", "yes", "ok", "ready", "go"), ("later", "Not today", "no", "later"),
            ("leave", "Leave the trial", "leave", "quit")), only_if=~TODAY),
        Do(Find("trial.joined", "no", "the lifter left the trial"), fact("draw").is_("leave")),
        Tell("You have left the trial; what you told stays in your log.", fact("draw").is_("leave")),
        Do(Find("trial.day", "{number}", "drawn by lot"), DRAWN),
        Tell("Today: the drill first.", PRIMED),
        Run("prime", PRIMED),
        Tell("Today: no drill, only your usual warm-up.", PLAIN),
        Ask("squatted", "Now your squats, within the depth and load you keep to. Tap when you are done, also hours later.",
            Ready("Done squatting"), caution="Stop where the back starts to move. " + SHARP,
            only_if=ON),
        Ask("depth", "How deep were the working sets?", BANDS, only_if=ON),
        Ask("load", "With which load?", Number("kg", 0, 500, usual=(0, 300), example_value=80), only_if=ON),
        Ask("kept", "Did you keep to the depth you meant to?", YesNo(), only_if=ON),
        Ask("felt", "How much did your lower back move, from 0, not at all, to 10, as much as ever?", FELT, only_if=ON),
        Tell("That went past what to keep to for now. Next time stay above the depth where your back moves, and lighter.",
             ON & fact("over").is_("yes")),
        Tell("Kept. The next squat day gets its own lot: say “priming trial”.", ON),
        Tell("This day does not count. Squat another day.", DRAWN & ~ON),
    ),
)
