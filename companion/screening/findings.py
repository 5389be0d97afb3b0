"""Which rows of the evidence table a screen shows: on which side, and with which grade.

A finding judged by feel, or a little rounding, counts one grade less; so does an ankle angle by phone level (trusted
less than the tape: ICC .65-.82, Zunko & Vauhnik 2021 PeerJ 9:e11977, read; the step down is our choice).
"Can't tell" is untested.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from companion.screening.depth import NEVER, bands_later, start_of
from companion.screening.errors import Errors
from companion.screening.evidence import BY_ID, Grade, Row
from companion.screening.measured import knee_to_wall_readings, leg_raise_readings
from companion.screening.readings import (
    RAISE_LEAST,
    SHIN_ENOUGH,
    SHIN_LEAST,
    STANDING_WORDS,
    WALL_ENOUGH,
    WALL_LEAST,
    Show,
    against_line,
    mean_of,
    metric,
)
from companion.screening.records import About, BirdDog, HipFold, SquatLook
from companion.screening.screen import SIDES, Screen


@dataclass(frozen=True, slots=True)
class Finding:
    """A row that a screen shows: its side ("" for both), its grade here, in words, the load where it was under one.

    ``answers`` are the answers it came from, as "flow.key": those that were given, enough to find it again.
    """

    row: Row
    grade: Grade
    words: str
    side: str = ""
    load: str = ""
    answers: tuple[str, ...] = ()

    @property
    def part(self) -> str:
        """The part it speaks about."""
        return self.row.part


def findings_of(screen: Screen, about: About | None = None, show: Show = metric,
                errors: Errors | None = None) -> tuple[Finding, ...]:
    """Every row of the table that the screen shows.

    ``show`` writes a metric number in the lifter's units. ``errors``: the lifter's own measurement errors; None means
    the published ones for their sex.
    """
    about = about or About()
    errors = errors or Errors(about.sex)
    found = (*_squat_look(screen.squat_look, about, show), *_hip_fold(screen.hip_fold),
             *_leg_raise(screen, errors, show), *_knee_to_wall(screen, errors, show), *_rock_back(screen),
             *_hand_on_back(screen), *_bird_dog(screen.bird_dog), *_arms_forward(screen), *_pause(screen),
             *_hinge(screen))
    return tuple(replace(one, answers=tuple(name for name in one.answers if _given(screen, about, name)))
                 for one in found)


def _given(screen: Screen, about: About, name: str) -> bool:
    """Whether an answer "flow.key" counts in this screen."""
    flow, key = name.split(".")
    record = about if flow == "about_you" else getattr(screen, flow)
    return record is not None and getattr(record, "with_" if key == "with" else key) is not None


def _found(row: str, *keys: str, side: str = "", less: str = "", load: str = "", words: str = "") -> Finding:
    """A finding of one row; ``less`` is why it counts one grade less, "" where it does not.

    ``keys`` are the answers it rests on, with their flow where that is another one.
    """
    said = BY_ID[row]
    grade = list(Grade)[max(said.grade.rank - 1, 0)] if less else said.grade
    named = f"{side.capitalize()}: {words or said.finding}" if side else words or said.finding
    at = f", {load}" if load else ""
    why = f" Counts less: {less}." if less else ""
    return Finding(said, grade, f"{named}{at}.{why}", side, load,
                   tuple(key if "." in key else f"{said.test}.{key}" for key in keys))


def _by_feel(seen_by: str | None) -> str:
    """Why a test that nobody and nothing saw counts less; not said counts as by feel."""
    return "by feel" if seen_by in (None, "feel") else ""


_PLAIN: Final = ("seen_by", "plain_rounds", "plain_depth")
_OWN_DEPTH: Final = ("squat_look.plain_rounds", "squat_look.plain_depth")


def _squat_look(look: SquatLook | None, about: About, show: Show) -> Iterator[Finding]:
    """The plain squat, the four squats with one change, and film under load."""
    if look is None:
        return
    plain = look.start("plain")
    feel = _by_feel(look.seen_by)

    def less(squat: str) -> str:
        return feel or ("a little only" if "little" in (look.rounds("plain"), look.rounds(squat)) else "")

    if look.rounds("plain") in ("little", "clearly"):
        yield _found("squat_rounds", "plain_rounds", "plain_depth")
    if plain is not None and plain < NEVER:
        rows = {("heels", 1): ("heels_later_calf", "heels_later_hip"), ("heels", 0): ("heels_same_calf",),
                ("front", 1): ("front_later_hip", "front_later_trunk", "front_later_control"),
                ("slow", 1): ("slow_later_control",), ("slow", 0): ("slow_same_control",),
                ("slow", -1): ("slow_earlier_trunk",), ("wide", 1): ("wide_later_hip",)}
        for (squat, way), ids in rows.items():
            moved = look.moved(squat)
            if moved is not None and way == (moved > 0) - (moved < 0):
                for row in ids:
                    yield _found(row, *_PLAIN, f"{squat}_rounds", f"{squat}_depth", "again_rounds", "again_depth",
                                 less=less(squat))
    loaded = bands_later(plain, look.start("load"))
    if loaded is None or look.load_film == "no":
        return
    load = f"at {show(look.load_kg, 'kg')}" if look.load_kg is not None else "load not said"
    keys = (*_PLAIN, "load_film", "load_rounds", "load_depth", "load_kg", "about_you.load")
    if loaded < 0:
        yield _found("load_earlier_trunk", *keys, less=less("load"), load=load)
    elif loaded > 0 or (look.rounds("plain"), look.rounds("load")) != ("little", "clearly"):
        # A film of light sets says little about the working load.
        light = look.load_kg is None or (about.load is not None and look.load_kg < about.load)
        why = less("load") or ("not known to be the working load" if light else "")
        yield _found("load_same_trunk", *keys, less=why, load=load)


def _hip_fold(fold: HipFold | None) -> Iterator[Finding]:
    """A pinch ends the range and is not scored; not knowing whether it pinched neither."""
    for side in SIDES if fold else ():
        first, pinch = getattr(fold, f"{side}_first"), getattr(fold, f"{side}_pinch")
        row = {("back", "no"): "hip_fold_back", ("fold", "no"): "hip_fold_reached"}.get((first, pinch))
        if pinch == "yes":
            row = "hip_fold_pinch"
        if row:
            yield _found(row, f"{side}_first", f"{side}_pinch", side=side)


def _leg_raise(screen: Screen, errors: Errors, show: Show) -> Iterator[Finding]:
    """Each side against the 70-degree line, with the error of its method."""
    raised = screen.leg_raise
    for side in SIDES if raised else ():
        assert raised is not None
        taken = leg_raise_readings(raised, side)
        if taken:
            answer = against_line(taken, RAISE_LEAST, errors.of("leg_raise", taken[0].method), show)
            row = {"short": "leg_raise_short", "clear": "leg_raise_clear", "close": "leg_raise_open"}[answer.answer]
            by_method = {"level": ("placement", "{}_level", "{}_lean", "{}_level_2"),
                         "heel": ("leg_length", "{}_heel", "{}_heel_2"), "eye": ("{}_eye",)}[str(raised.method)]
            yield _found(row, "method", "effort", *(key.format(side) for key in by_method), "about_you.sex", side=side,
                         words=f"straight leg {answer.words}")


def _knee_to_wall(screen: Screen, errors: Errors, show: Show) -> Iterator[Finding]:
    """Each side against the two lines of its own series. Without a pull in the calf a short reading decides nothing."""
    reached = screen.knee_to_wall
    for side in SIDES if reached else ():
        assert reached is not None
        taken = knee_to_wall_readings(reached, side)
        limit = getattr(reached, f"{side}_limit")
        if not taken:
            continue
        by_level = taken[0].unit == "deg"
        least, enough = (SHIN_LEAST, SHIN_ENOUGH) if by_level else (WALL_LEAST, WALL_ENOUGH)
        less = "a phone level is trusted less" if by_level else ""
        keys = ("method", "placement", *(f"{side}_{'deg_' if by_level else ''}{n}" for n in (1, 2, 3)), f"{side}_limit")
        answer = against_line(taken, least, errors.of("knee_to_wall", taken[0].method), show)
        mean = mean_of(taken)
        words = f"knee to wall {answer.words}"
        if limit == "pinch":
            yield _found("knee_to_wall_pinch", *keys, side=side)
        elif limit in ("calf", "neither") and mean >= enough.value and answer.answer == "clear":
            yield _found("knee_to_wall_far", *keys, side=side, less=less, words=(
                f"knee to wall {show(mean, taken[0].unit)}: reaches the {show(enough.value, enough.unit)} line "
                f"({STANDING_WORDS[enough.standing]})"))
        elif limit in ("calf", "neither") and answer.answer == "clear" and len(taken) == 3:
            yield _found("knee_to_wall_clear", *keys, side=side, less=less, words=words)
        elif limit == "calf" and answer.answer == "short":
            yield _found("knee_to_wall_short", *keys, side=side, less=less, words=words)
        else:
            yield _found("knee_to_wall_open", *keys, side=side, words=words)


def _fold_reached(screen: Screen, side: str) -> bool | None:
    """Whether the hip folded as far as in the squat with the back still; None where that was not found out."""
    fold = screen.hip_fold
    if fold is None or getattr(fold, f"{side}_pinch") != "no":
        return None
    return {"fold": True, "back": False}.get(getattr(fold, f"{side}_first"))


def _folded(side: str) -> tuple[str, ...]:
    """The answers of the hip fold on one side."""
    return f"hip_fold.{side}_first", f"hip_fold.{side}_pinch"


def _rock_back(screen: Screen) -> Iterator[Finding]:
    """Early at every width means one thing with the hip fold reached, another without it."""
    rock = screen.rock_back
    if rock is None:
        return
    widths = (rock.narrow, rock.middle, rock.wide)
    keys = ("narrow", "middle", "wide")
    if all(width == "early" for width in widths):
        reached = {side: _fold_reached(screen, side) for side in SIDES}
        for side in SIDES:
            if reached[side] is False:
                yield _found("rock_early_hip", *keys, *_folded(side), side=side)
        if all(reached.values()):
            yield _found("rock_early_control", *keys, *_folded("left"), *_folded("right"))
        elif None in reached.values():
            yield _found("rock_open", *keys, *_folded("left"), *_folded("right"))
    elif "past" in widths and "early" not in widths:
        yield _found("rock_past_hip", *keys)
    elif {"early", "at_fold"} & set(widths):
        yield _found("rock_open", *keys)


def _hand_on_back(screen: Screen) -> Iterator[Finding]:
    """The cued set against the usual one; a back that never moves, or moves earlier when told, decides nothing."""
    hand = screen.hand_on_back_squat
    if hand is None:
        return
    keys = ("usual_moves", "usual_depth", "cued_moves", "cued_depth")
    usual = start_of(hand.usual_moves, hand.usual_depth)
    moved = bands_later(usual, start_of(hand.cued_moves, hand.cued_depth))
    if usual == NEVER or (moved is not None and moved < 0):
        yield _found("hand_open", *keys)
    elif moved is not None:
        yield _found("hand_later_control" if moved else "hand_same_control", *keys)


def _bird_dog(dog: BirdDog | None) -> Iterator[Finding]:
    """A fault on a side, in the hold or the slow repetitions; clean only where both are clean on both sides."""
    if dog is None:
        return
    feel = _by_feel(dog.seen_by)
    shapes = {side: (getattr(dog, f"{side}_shape"), getattr(dog, f"{side}_slow")) for side in SIDES}
    for side, shape in shapes.items():
        if "hip" in shape or "back" in shape:
            yield _found("bird_dog_turns", "seen_by", f"{side}_shape", f"{side}_slow", side=side, less=feel)
    if all(shape == ("clean", "clean") for shape in shapes.values()):
        yield _found("bird_dog_clean", "seen_by", "left_shape", "left_slow", "right_shape", "right_slow", less=feel)


def _above_own_rounding(screen: Screen, depth: str | None) -> bool:
    """Whether a depth is at least one band above where the plain squat rounds."""
    later = bands_later(start_of("yes", depth), screen.squat_look.start("plain") if screen.squat_look else None)
    return later is not None and later > 0


def _arms_forward(screen: Screen) -> Iterator[Finding]:
    """A fault that heels up or less depth cures is shoulder, ankle or depth, and is not scored."""
    arms = screen.arms_forward_squat
    if arms is None or arms.bar not in ("stick", "empty", "loaded"):
        return
    feel, load = _by_feel(arms.seen_by), {"empty": "with an empty bar", "loaded": "with a loaded bar"}.get(arms.bar, "")
    if arms.fault == "clean":
        yield _found("arms_clean_bar" if load else "arms_clean_stick", "seen_by", "bar", "fault", less=feel, load=load,
                     words=load and "Arms forward: clean")
        return
    keys = ("seen_by", "bar", "fault", "depth", "heels_help", "shallow_help")
    uncured = arms.heels_help == "no" and arms.shallow_help in (("no",) if arms.fault == "rolled" else ("no", None))
    if arms.fault in ("rolled", "chest", "back") and uncured and _above_own_rounding(screen, arms.depth):
        yield _found("arms_fail_bar" if load else "arms_fail_stick", *keys, *_OWN_DEPTH, less=feel,
                     load=load, words=load and "Arms forward: fails above the rounding depth")
    elif arms.fault in ("rolled", "chest", "back"):
        yield _found("arms_open", *keys, *_OWN_DEPTH, load=load)


def _pause(screen: Screen) -> Iterator[Finding]:
    """Fails only where it failed twice and the moving squat was clean; clean only where a hard stop was clean again."""
    pause = screen.pause_squat
    if pause is None:
        return
    keys = ("seen_by", "with", "moving", "hard", "shape", "again")
    feel, load = _by_feel(pause.seen_by), "with the bar" if pause.with_ == "bar" else "at body weight"
    if (pause.moving, pause.shape, pause.again) == ("clean", "rounds", "rounds"):
        yield _found("pause_fails", *keys, less=feel, load=load)
    elif pause.shape == "clean" and (pause.again == "clean" or (pause.hard == "none" and pause.again is None)):
        yield _found("pause_clean_bar" if pause.with_ == "bar" else "pause_clean_body", *keys, less=feel,
                     load=load, words="Stops clean")
    elif pause.shape in ("clean", "rounds"):
        yield _found("pause_open", *keys, load=load)


def _hinge(screen: Screen) -> Iterator[Finding]:
    """The hinge itself, then what sinking does to it."""
    hinge = screen.hinge_to_squat
    if hinge is None:
        return
    feel = _by_feel(hinge.seen_by)
    if hinge.hinge == "rounds":
        yield _found("hinge_rounds", "seen_by", "hinge", less=feel)
    elif hinge.hinge == "clean" and hinge.sink == "clean":
        yield _found("hinge_clean", "seen_by", "hinge", "sink", less=feel)
    elif hinge.hinge == "clean" and hinge.sink == "breaks" and _above_own_rounding(screen, hinge.depth):
        yield _found("hinge_breaks", "seen_by", "hinge", "sink", "depth", *_OWN_DEPTH, less=feel)
