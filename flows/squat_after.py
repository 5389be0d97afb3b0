"""After squatting: a few questions on the squats; the answers move the depth to keep to by one step at most."""

from __future__ import annotations

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Gate, Offer, Run, Tell
from companion.conversation.kinds import Media, Option, Words, YesNo, choice
from companion.conversation.number_kinds import Number
from companion.conversation.policy import Policy
from companion.screening.limits import Work
from flows.day_facts import JUST_THE_BAR, after_facts, bar_kg_of, over_told, told_words
from flows.over_load import OVER_SAYS
from flows.shared import BANDS, EMERGENCY, SAME_DAY, WATCHED, WELCOMED

YES_NO = ("yes", "no")
BEGUN, SET, BAR, TRIAL, HURT_BEFORE = (Fact(name, values=YES_NO) for name in (
    "begun", "depth_set", "with_bar", "in_trial", "hurt_before"))
BAR_KG = Fact("bar_kg", 2.0, 40.0, step=0.5, of=bar_kg_of)
MOST, PLAN = (Fact(name, 20.0, 200.0, step=2.5) for name in ("most", "planned"))
OVER = Fact("over", values=YES_NO, of=over_told)
PLANNED = fact("planned_words").known
SQUATTED = BEGUN.is_("yes") | fact("done").is_("yes")
JUDGED = fact("back").one_of("still", "moved")
HURT_NOW = HURT_BEFORE.is_("no") & fact("pain.hurt.today").known & fact("pain.hurt").is_("yes")
"""True if pain was reported during these questions, and the pain questions have run."""
CARE = fact("safety.level").one_of("emergency", "same_day") | fact("run_pain").known & fact("safety.level").is_("clinician")
"""True if they were told to see a clinician: nothing more is asked after that."""
COMPARED = SQUATTED & TRIAL.is_("yes") & fact("back").is_("still") & fact("hurt").is_("no")
"""True on a clean day of the trial, which moves no depth."""
LOAD_ASKED = SQUATTED & ~CARE & (BAR.is_("yes") | TRIAL.is_("yes") | fact(Work.LOAD.fact).is_("closed"))
"""Also where no load is allowed: it is the only way to hear that some was lifted."""
ANSWERED = fact("done").known | fact("back").known | fact("kept").known | fact("depth").known | fact("load").known

CARE_FIRST = (Gate(fact("safety.level").is_("emergency"), EMERGENCY), Gate(fact("safety.level").is_("same_day"), SAME_DAY))
"""Gates for somebody who was told to be seen at once: no questions about squats."""

FLOW = Flow(
    "squat_after", version=2, title="How the squats went", policy=Policy.TALK, gates=(WELCOMED, *CARE_FIRST), at_start=after_facts,
    facts=(BEGUN, SET, BAR, TRIAL, HURT_BEFORE, BAR_KG, MOST, PLAN, OVER, Fact("load_words", of=told_words)),
    command=None,
    invite="How did {whose} squats go? It takes a few taps. If not now, I leave it at that.",
    invites=(Offer("How it went", "squat_after", "{of_day}"),),
    steps=(
        Ask("done", "Did you squat {on_day}?", YesNo(yes="Yes, I did", no="No"), only_if=BEGUN.is_("no")),
        Ask("back", "Did your lower back stay still in the working sets?", choice(
            ("still", "Yes, still", "yes", "yeah", "yep", "still", "fine", "it kept", "kept", "it held", "held", "no rounding",
             "stayed still"),
            ("moved", "It moved", "moved", "no", "nope", "rounded", "it rounded", "a little", "a bit", "kinda", "sort of", "not really"),
            ("cant_tell", "I can't tell", "can't tell", "don't know", "not sure", "no idea", "didn't look", "maybe")), only_if=SQUATTED),
        Ask("seen_by", "How did you see it?", WATCHED, only_if=SQUATTED & JUDGED),
        Ask("kept", "Did you keep to the depth, {keep_words}?", choice(
            ("kept", "Kept to it", "kept", "yes", "yeah", "yep", "i did", "same", "same as before", "the same", "as planned", "it kept"),
            ("deeper", "Went deeper", "deeper", "lower", "a bit deeper", "too deep"),
            ("higher", "Stayed higher", "higher", "shallower", "a bit higher", "not as deep")), only_if=SQUATTED & SET.is_("yes")),
        Ask("depth", "How deep were the working sets?", BANDS, only_if=SQUATTED & SET.is_("no"), picture="squat_bands"),
        Ask("hurt", "Did anything hurt, then or since?", YesNo(yes="Yes, it hurt", no="No", partly="yes"), safety=True,
            only_if=SQUATTED & ~HURT_NOW),
        Run("pain", SQUATTED & fact("hurt").is_("yes"), asked="squat_day"),
        Ask("load", "With which load, in the working sets?{load_line}", Number("kg", 0, 500, usual=(0, 300), example_value=80, choices=(
            Option("same", "As planned", ("as planned", "yes", "the same", "same"), only_if=PLANNED),
            Option("none", "No bar", ("none", "no bar", "body weight"))), called=JUST_THE_BAR), put_right="over_load", only_if=LOAD_ASKED),
        Tell(OVER_SAYS, LOAD_ASKED & OVER.is_("yes")),
        Ask("felt", "How much did your lower back move, from 0, not at all, to 10, as much as ever?",
            Number("", 0, 10, usual=(0, 10), example_value=3, step=1), only_if=SQUATTED & TRIAL.is_("yes") & ~CARE),
        Ask("note", "One note for the log? Skip it if there is none.", Words(limit=300, example_text="slept badly, bar felt light",
            optional=True),
            free=True, doubts=True, only_if=SQUATTED & ~CARE),
        Ask("video", "A video or photo for the log, if you like.", Media(("video", "photo")), only_if=SQUATTED & ~CARE),
        Do(Find("squat.answered", "{answered}", "told by the lifter"), ANSWERED),
        Do(Replan(), ANSWERED),
        Run("depth_step", SQUATTED & SET.is_("yes") & ~CARE & ~COMPARED),
        Tell("In the trial the depth stays as it is, so that its days can be compared.", COMPARED & SET.is_("yes")),
        Tell("Thank you, that is in your log.", SQUATTED & ~CARE),
        Tell("All right, no squats then. The next squat day stays as it is.", fact("done").is_("no")),
    ),
)
