"""Squat day: today's safety check, the drill or the plain warm-up, the sets before the working load, the depth to keep to."""

from __future__ import annotations

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Offer, Run, Tell
from companion.conversation.kinds import Hold, Option, Ready, YesNo, choice
from companion.conversation.number_kinds import Number
from companion.conversation.policy import Policy
from companion.screening.limits import Work
from companion.screening.sources import SOURCES, with_numbers
from flows.day_facts import JUST_THE_BAR, bar_kg_of, day_facts, load_now_of, loaded, over_day, over_limit, sets_words_of
from flows.shared import SHARP, SQUAT, limited

YES_NO = ("yes", "no")
BAR, DRILL, TRIAL = (Fact(name, values=YES_NO) for name in ("with_bar", "offered", "in_trial"))
ARM = Fact("arm", values=("prime", "plain"))
OVER_DAY, OVER_LIMIT = Fact("over_day", values=YES_NO, of=over_day), Fact("over_limit", values=YES_NO, of=over_limit)
BAR_TODAY = Fact("loaded", values=YES_NO, of=loaded)
LAST = fact("last_load").known
DRAWN = TRIAL.is_("yes") & fact("lot").is_("draw")
PRIMED, PLAIN = DRAWN & ARM.is_("prime"), DRAWN & ARM.is_("plain")
FREE_PRIME = DRILL.is_("yes") & ~DRAWN
GO = fact("safety.level").is_("go")
"""False also after pain reported during the questions about the bar: it ends the squat day."""
UNHURT = GO & ~fact("run_prime").is_("pain") & ~(fact("run_prime").is_("done") & fact("prime.felt").is_("hurt"))
"""True on a day on which nothing has hurt so far; only then squats follow."""
LONGER_WALK = Hold("Start", seconds=int(SOURCES["warm_up_walk"].value[1]), count_in=0,
                   go=with_numbers("Walk on the spot: {warm_up_walk_1:count minutes} from now."),
                   over=with_numbers("That is {warm_up_walk_1:count minutes}. Now {warm_up_squats:count} easy squats to a chair, no "
                                     "weight."))

FLOW = Flow(
    "squat_day", version=1, title="Squat day", policy=Policy.TALK, at_start=day_facts,
    rests_on=("body_only", "most"), command=("squatting", "squatting now", "squat now", "squat day today", "warm me up", "time to squat"),
    sentences=(r"(?:ok |hey |so )?(?:i(?:'m| am) )?(?:now |about to |going to |off to |ready to )?squat(?:ting|s)?"
               r"(?: now| today| soon)?(?: please| pls| plz)?",
               r"(?:it's |it is )?squat day(?: today)?", r"at the (?:gym|rack)(?: now)?"),
    gates=(Gate(OVER_DAY.is_("yes"), "That squat day is over."), *SQUAT, limited(Work.SQUAT)),
    facts=(BAR, BAR_TODAY, DRILL, TRIAL, ARM, Fact("of_day", values=("2026-03-01", "2026-03-02")), Fact("last_load", 20.0, 200.0, step=2.5),
           Fact("most", 20.0, 200.0, step=2.5), OVER_DAY, OVER_LIMIT,
           Fact("bar_kg", 2.0, 40.0, step=0.5, of=bar_kg_of), Fact("sets_words", of=sets_words_of),
           Fact("load_now", of=load_now_of)),
    invite="Squat day {invited_words}.{hurt_line}{last_line}{drill_line}{setup_line}{keep_line}{limit_line}{goal_line}",
    invites=(Offer("Squatting now", "squat_day"), Offer("Move it", "squat_days", "move {invited_day} ????-??-?? {invited_at}"),
             Offer("Skip it", "squat_days", "skip {invited_day}")),
    missed="I could not message you in time about your squat day {missed_words}.{next_line}",
    steps=(
        Tell("Squat day {number}.{last_line}{limit_line}{goal_line}"),
        Run("setup_morning", fact("setup.state").is_("waits") & ~fact("setup.state.today").known),
        Tell("{setup_words}", fact("setup_words").known, picture="squat_{setup_view}"),
        Run("bar", BAR.is_("yes") & ~fact("bar.bar").known),
        Ask("load", "Which working load today?{load_line}", Number("kg", 0, 500, usual=(0, 300), example_value=80, choices=(
            Option("same", "The same again", ("same", "again", "as last time"), only_if=LAST),
            Option("none", "No bar today", ("none", "no bar", "body weight"))), called=JUST_THE_BAR), only_if=GO & BAR_TODAY.is_("yes")),
        Tell("That is more than the {most_words} to keep to for now. I work out your sets for {most_words}.", OVER_LIMIT.is_("yes")),
        Ask("lot", "Trial day {lot_number}: drill or plain warm-up, by lot. For the trial keep to {same_as}. Shall I draw?", choice(
            ("draw", "Draw", "yes", "ok", "go"), ("later", "No trial today", "no", "later")), only_if=GO & TRIAL.is_("yes")),
        Do(Find("trial.day", "{lot_number}", "drawn by lot"), DRAWN),
        Tell("Today: the drill first.", PRIMED),
        Ask("prime_now", "The drill first: {drill_name}?", YesNo(yes="Yes, the drill", no="Not today"), only_if=GO & FREE_PRIME),
        Run("prime", PRIMED | fact("prime_now").is_("yes")),
        Ask("plain", with_numbers("Today: no drill, the plain warm-up. Walk on the spot for {warm_up_walk_1:count minutes}, then "
                                  "{warm_up_squats:count} easy squats to a chair. Tap Start and I keep the time."),
            LONGER_WALK, caution=SHARP, back=False, picture="warm_up_walk",
            only_if=PLAIN & UNHURT & ~fact("run_prime").known),
        Tell("{sets_words}", UNHURT & fact("sets_words").known, offers=(Offer("Why?", "why_told", "warm_up"),)),
        Ask("squatted", "Now your squats{load_now}. {keep_now}Stop where the back starts to move. Tap when you are done, even "
            "if that is hours later.",
            Ready("Done squatting"), caution=SHARP, only_if=UNHURT),
        Tell("No squats today, then. The rest waits for the next squat day.", ~UNHURT),
        Run("squat_after", UNHURT & fact("squatted").known, asked="{of_day}"),
    ),
)
