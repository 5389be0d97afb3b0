"""Trial of priming: on squat days, prime or plain warm-up is drawn by lot, with the same questions afterwards."""

from __future__ import annotations

from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Jump, Known, Run, Tell
from companion.conversation.kinds import YesNo, choice
from companion.screening.sources import with_numbers
from flows.day_facts import verdict_now
from flows.shared import AT_ALL, BODY_WEIGHT

JOINED = fact("trial.joined").is_("yes")
TODAY = Fact("drawn_today", values=("yes", "no"))


def trial_facts(known: Known) -> dict[str, Value]:
    """Return the result of the days so far, and "yes" if today's lot is drawn."""
    return {"so_far": verdict_now(known).words, "drawn_today": str(known.facts.get("trial.day.today", "no"))}


FLOW = Flow(
    "trial", version=2, title="Priming trial", facts=(TODAY,), command=("priming trial", "does priming help"),
    gates=(*AT_ALL,
           Gate(~fact("drill").known | fact("drill").is_("none"),
                "A trial needs a drill, and that comes from the tests. Say “screen” first."),
           Gate(BODY_WEIGHT, "The trial compares squats with the same load, and for now you keep to body weight. It waits.")),
    at_start=trial_facts,
    steps=(
        Ask("join", with_numbers("Does the drill help you? On squat days I draw by lot: drill or plain warm-up. Afterwards I ask the same "
                                 "questions. {prime_trial:Count days} at the same depth and load can show it. Join?"),
            YesNo(yes="Yes, join", no="No"), only_if=~JOINED,
            then=(Jump(~fact("join").is_("yes"), say="All right. The drill is still there: say “drill”."),)),
        Do(Find("trial.joined", "yes", "the lifter joined the trial"), fact("join").is_("yes")),
        Tell("{so_far}", JOINED, picture="chart_trial"),
        Tell("Today's lot is drawn already. The next squat day gets its own.", TODAY.is_("yes")),
        Ask("next", "The lot is drawn when you squat. Are you squatting today?", choice(
            ("now", "Yes, squat day", "yes", "now", "today"), ("later", "Not today", "no", "later"),
            ("leave", "Leave the trial", "leave", "quit")), only_if=~TODAY.is_("yes")),
        Do(Find("trial.joined", "no", "the lifter left the trial"), fact("next").is_("leave")),
        Tell("You have left the trial; what you told me stays in your log.", fact("next").is_("leave")),
        Tell("Good. Say “squatting” on the day, and I draw.", fact("next").is_("later")),
        Run("squat_day", fact("next").is_("now")),
    ),
)
