"""Changes: the new numbers of a retest beside the last ones, and whether they differ by more than measurement error."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Flow, Known, Tell
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.measured import knee_to_wall_readings, leg_raise_readings
from companion.screening.readings import Reading, Show, error_of, mean_of
from companion.screening.retest import change
from companion.screening.screen import TEST_WORDS, Screen, about_from, screen_from
from flows.outcome_facts import showing

Taken = Callable[[Screen, str], tuple[Reading, ...]]
MEASURED: dict[str, Taken] = {
    "leg_raise": lambda screen, side: leg_raise_readings(screen.leg_raise, side) if screen.leg_raise else (),
    "knee_to_wall": lambda screen, side: knee_to_wall_readings(screen.knee_to_wall, side) if screen.knee_to_wall else (),
}


def change_facts(known: Known) -> dict[str, Value]:
    """One line a test and side that was measured before the last results and again since."""
    told = known.facts.get("outcome.at")
    if told is None:
        return {"any": "no"}
    since, answers, show = datetime.fromisoformat(str(told)), list(known.answers()), showing(known)
    before = screen_from([row for row in answers if row.at <= since])
    after = screen_from([row for row in answers if row.at > since])
    sex = about_from(answers).sex
    facts: dict[str, Value] = {}
    for test, taken in MEASURED.items():
        lines = [_line(side, taken(before, side), taken(after, side), sex, show) for side in ("left", "right")]
        if words := "\n".join(line for line in lines if line):
            facts[test] = f"{TEST_WORDS[test].capitalize()}\n{words}"
    if words := _depth(before, after):
        facts["squat_look"] = words
    return facts | {"any": "yes" if facts else "no"}


def _line(side: str, old: tuple[Reading, ...], new: tuple[Reading, ...], sex: str | None, show: Show) -> str:
    if not old or not new:
        return ""
    numbers = f"{side.capitalize()}: {show(round(mean_of(old), 1), old[0].unit)} then, " \
              f"{show(round(mean_of(new), 1), new[0].unit)} now."
    try:
        return f"{numbers} {change([old], [new], error_of(old[0].test, old[0].method, sex), show).words}"
    except ValueError as error:  # another method or placement: the numbers can't be held against each other
        return f"{numbers} Not compared: {error}."


def _depth(before: Screen, after: Screen) -> str:
    if before.squat_look is None or after.squat_look is None:
        return ""
    old, new = before.squat_look, after.squat_look
    return (f"Where the rounding starts\nThen: {_start(old.plain_rounds, old.plain_depth)}. "
            f"Now: {_start(new.plain_rounds, new.plain_depth)}. One band of difference is the least that can be told.")


def _start(rounds: str | None, depth: str | None) -> str:
    band = band_of(depth)
    return "no rounding" if rounds == "no" else BAND_WORDS[band] if band else "not told"


FLOW = Flow(
    "changes", version=1, title="Changes", counted=False, command=("change", "what changed"),
    at_start=change_facts,
    steps=(
        Tell("Nothing was measured both before and after, so no change can be told.", fact("any").is_("no")),
        *(Tell(f"{{{test}}}", fact(test).known) for test in ("squat_look", "leg_raise", "knee_to_wall")),
    ),
)
