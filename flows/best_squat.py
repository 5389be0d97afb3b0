"""Best squat: the change that moved the rounding, checked: plain, changed, plain, changed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

from companion.calendar.prompts import MORNING
from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Gate, Known, Run, Tell
from companion.conversation.kinds import Option, choice
from companion.language.units import IMPERIAL, METRIC
from companion.screening.limits import Work
from companion.screening.pairs import look_of
from companion.screening.screen import screen_from
from companion.screening.setups import HEEL_LIFT, HELPED_BY_FEEL, NAMES, Checked, called, checked, parts, rank_of, start_words, without
from companion.screening.sources import counted, with_numbers
from flows.block import AMOUNTS, STARTS, did, done
from flows.outcome_facts import showing
from flows.shared import BANDS, BODY_WEIGHT, SCORED, SQUAT, limited

SET_UP_AMOUNTS = {METRIC: {**AMOUNTS[METRIC], "rise": f"{HEEL_LIFT:g} cm"}, IMPERIAL: {**AMOUNTS[IMPERIAL], "rise": "an inch"}}
FOUR_SETS = ("plain_1", "changed_1", "plain_2", "changed_2")


def change_facts(known: Known) -> dict[str, Value]:
    """Return the set-up to check: its words and cautions, and where the rounding started with and without it in the squat look."""
    change = str(known.facts.get("setup.proposed", "none"))
    if not parts(change):
        return {"change": "none"}
    amounts = SET_UP_AMOUNTS[str(known.facts.get("welcome.units", METRIC))]
    look = look_of(screen_from(known.answers()))
    said = called(change, showing(known))
    facts: dict[str, Value] = {
        **without(look, known.facts, change),
        "change": change, "words": said, "how": ", and ".join(one.say for one in parts(change)).format(**amounts),
        "care": " ".join(dict.fromkeys(one.caution for one in parts(change))), "view": change.split("+")[0],
        "tomorrow": (date.fromisoformat(str(known.facts["today"])) + timedelta(days=1)).isoformat()}
    seen = {name: rank for name in ("plain", "again", change) if (rank := look.start(name) if "+" not in name else None) is not None}
    facts |= {f"look_{'changed' if name == change else name}": float(rank) for name, rank in seen.items()}
    return facts | {"look_words": f" Where it rounds: {start_words(seen[change])}, instead of {start_words(seen['plain'])}."
                    if change in seen and "plain" in seen else ""}


def compared(got: Facts) -> Checked | None:
    """Return what the squats so far show; None while a plain or a changed one is missing or could not be told."""
    ranks = {name: rank_of(str(got.get(name, ""))) for name in FOUR_SETS}
    if None in ranks.values():
        return None
    before = {name: int(float(got[name])) for name in ("look_plain", "look_again", "look_changed") if name in got}
    plain = [rank for name, rank in (*ranks.items(), *before.items()) if "plain" in name or "again" in name]
    changed = [rank for name, rank in (*ranks.items(), *before.items()) if "changed" in name]
    return checked([rank for rank in plain if rank is not None], [rank for rank in changed if rank is not None])


def result_of(got: Facts, side: str) -> Value | None:
    """Return "gain" if the set-up counts, "none" if it does not; None if it can't be told."""
    found = compared(got)
    return None if found is None else "gain" if found.counts else "none"


def luck_of(got: Facts, side: str) -> Value:
    """Return "yes" if the first changed squat already rounds no later than the plain one: then it was luck."""
    plain, changed = (rank_of(str(got.get(name, ""))) for name in ("plain_1", "changed_1"))
    return "yes" if plain is not None and changed is not None and changed <= plain else "no"


def _start(way: Callable[[list[int]], int], *names: str) -> Callable[[Facts, str], Value | None]:
    """Return the function that names the start of rounding in some of the squats, "no" for none."""
    def of(got: Facts, side: str) -> Value | None:
        ranks = [rank_of(str(got.get(name, ""))) for name in names]
        told = [rank for rank in ranks if rank is not None]
        return str(STARTS.options[1 + way(told)].value if way(told) < len(BANDS.choices) else "no") if len(told) == len(names) else None

    return of


STARTS_AT = tuple(option.value for option in STARTS.options[:-1])
SETS_DONE = done()
PROPOSED = fact("change").one_of(*NAMES)
RESULT = Fact("result", values=("gain", "none"), of=result_of)
LUCK = Fact("luck", values=("yes", "no"), of=luck_of)
CHANGED_START = Fact("start", values=STARTS_AT, of=_start(min, "changed_1", "changed_2"))
PLAIN_START = Fact("plain", values=STARTS_AT, of=_start(min, "plain_1", "plain_2"))
AT_FRONT = fact("front").one_of("hip", "knee")
WELL = fact("front").is_("no")
CHANGED_HURT = Option("changed", "Changed hurt", ("the changed one", "changed", "with the change"))
"""Taken by this flow itself: it ends the set-up, not only the sets."""
CHANGE_HURT = fact("did").is_("changed")
ANOTHER_DAY = Option("later", "Another day", ("later", "not now"))
NO_GAIN = RESULT.is_("none")
GAINED = RESULT.is_("gain") & WELL


FLOW = Flow(
    "best_squat", version=1, title="Best squat", command=("my best squat", "set up", "setup", "check the change"),
    gates=(*SQUAT, limited(Work.SQUAT), *SCORED, Gate(~fact("setup.proposed").one_of(*NAMES),
                                 "There is no set-up to check: no change that was seen has moved where your back rounds without a pinch "
                                 "or an ache. "
                                 "Say “squat look” to try the changes."),
           Gate(fact("setup.proposed").one_of(*(name for name in NAMES if "front" in name)) & BODY_WEIGHT,
                "The set-up to check has a weight in front, and for now you keep to body weight. It waits.", throughout=True)),
    at_start=change_facts,
    facts=(Fact("change", values=(*NAMES, HELPED_BY_FEEL, "none")), RESULT, LUCK, CHANGED_START, PLAIN_START),
    steps=(
        Tell(with_numbers("The easiest change that helped most: {words}.{look_words} Once may be luck, so let's check it: "
                          f"{counted(len(FOUR_SETS))} sets of "
                          "{set_squats:count squats} in one go, seen from the side, about {minutes_set_up_0} minutes. First and third: "
                          "plain. Stop if anything hurts."), PROPOSED),
        did(f"Second and fourth: {{how}}; all else as usual. Film all {counted(len(FOUR_SETS))}, or have somebody watch.", "{care}",
            ("plain", "Plain hurt"), key="did", only_if=PROPOSED, picture="squat_{view}", also=(CHANGED_HURT, ANOTHER_DAY)),
        Tell("All right. Say “best squat” on another day.", fact("did").one_of("later", "left_out")),
        Ask("front", "With the change: a pinch or an ache at the front of a hip or a knee?", choice(
            ("no", "No"), ("hip", "Front of the hip", "hip", "groin"), ("knee", "Front of the knee", "knee")),
            safety=True, only_if=SETS_DONE),
        Run("about_you", WELL & ~fact("about_you.usual_depth").known, asked="usual_depth", checks=True),
        Ask("plain_1", "First set, plain: where does the lower back start to round?", STARTS, only_if=WELL, picture="squat_bands"),
        Ask("changed_1", "Second set, changed: where does it start?", STARTS, only_if=WELL),
        Tell("That was luck, then: the second time it rounds no later than the plain squat. Your plain set-up stands.", LUCK.is_("yes")),
        Ask("plain_2", "Third set, plain again: where does it start?", STARTS, only_if=WELL & ~LUCK.is_("yes")),
        Ask("changed_2", "Fourth set, changed again: where does it start?", STARTS, only_if=WELL & ~LUCK.is_("yes")),
        Do(Find("setup.pinch", "{front}", "a pinch or ache at the front, with the set-up", "{words}"), AT_FRONT),
        Do(Find("setup.out", "{outs}", "it brought a pinch or an ache", "{words}"), AT_FRONT | CHANGE_HURT),
        Do(Find("setup.proposed", "{left}", "what is left without a pinch or an ache", "{words}"), AT_FRONT | CHANGE_HURT),
        Do(Find("setup.state", "out", "it brought a pinch or an ache", "{words}"), AT_FRONT | CHANGE_HURT),
        Run("pain", CHANGE_HURT),
        Tell("Then this set-up is not for you: {words} brought a pinch or an ache, and no depth is worth that.", AT_FRONT),
        Do(Find("setup.change", "{change}", "plain, changed, plain, changed (choice)", "{words}: the rounding starts at {start:words}, "
           "both times; plain at {plain:words}"), GAINED),
        Do(Find("setup.start", "{start}", "the earlier one with the set-up", "{words}"), GAINED),
        Do(Find("setup.plain", "{plain}", "the earlier plain one", "{words}"), GAINED),
        Do(Find("setup.state", "waits", "until the next morning shows no pinch or pain", "{words}"), GAINED),
        Do(Remind("setup", "setup_morning", "{tomorrow}", hour=MORNING.hour), GAINED),
        Tell("It held both times: with {words} your back rounds later, by more than your own sets differ. Tomorrow morning I ask "
             "whether anything aches; if not, that is your squat for now.", GAINED, must_arrive=True),
        Do(Find("setup.state", "", "the change did not hold in the check", "{words}"), RESULT.is_("none") & WELL),
        Do(Find("setup.luck", "{change}", "the change did not hold in the check, so its first trial does not count", "{words}"),
           NO_GAIN | LUCK.is_("yes")),
        Tell("Checked: no gain beyond what your own sets differ by. So no set-up is better than your plain one, and that is an answer "
             "too.", RESULT.is_("none") & WELL),
        Tell("That could not be told apart. Film from the side shows it best; say “best squat” to check again.",
             ~RESULT.known & WELL & LUCK.is_("no")),
    ),
)
