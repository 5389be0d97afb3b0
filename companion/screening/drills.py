"""The drills: one for each part, as data. No load unless stated. Each is a trial, not a fix.

Common practice without a source, unless the row of a dose in ``numbers/training.toml`` names one; what speaks against such drills
stands there too.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from functools import partial
from typing import Final

from companion.screening.limits import Work
from companion.screening.readings import SourceStanding
from companion.screening.setups import HEEL_LIFT, HELD_WEIGHT_WORDS
from companion.screening.sources import SOURCES, counted, value

TRIAL: Final = "A trial, not a fix: nobody has shown that such a drill helps. See what it does for you."
STOP: Final = "Stop at the first movement of the back, before any pain."
HOME_DAYS: Final = int(value("home_days"))  # a week
_SETS: Final = int(SOURCES["prime_dose"].value[0])
_REPS, _STOPPED_REPS = map(int, SOURCES["drill_repetitions"].value)
_DOWN, _HOLD, _STILL = SOURCES["drill_pace"].value  # s
_STOP, _LONG_STOP = SOURCES["drill_stop"].value  # s
_STOPS, _BOX_STOPS = map(int, SOURCES["drill_stops"].value)
_BOTH_KNEES: Final = ("straight", "bent")
_STRETCH: Final = value("stretch_hold")  # s
_STRETCHES: Final = round(value("stretch_dose") / _STRETCH)
_PLANK, _PLANK_LATER = SOURCES["plank"].value  # s
_PLANKS: Final = int(value("plank_sets"))
_REACH: Final = value("bird_dog_reach")  # s


@dataclass(frozen=True, slots=True)
class Exercise:
    """An exercise: sets of reps, each with ``down`` s of moving and ``hold`` s of holding still; ``sides`` 2: each side in turn.

    ``steps``: one message each, at most 160 characters. ``light``: a load that may be added, "" for none. ``uses``: what a
    clinician's limit can close in it.
    """

    name: str
    sets: int
    reps: int
    steps: tuple[str, ...]
    down: int = 0
    hold: int = 0
    sides: int = 1
    light: str = ""
    uses: tuple[Work, ...] = ()
    stretch: bool = False
    lying: bool = False
    deep_fold: bool = False

    @property
    def seconds(self) -> int:
        """The time of one repetition up to the turn, in seconds, for a timer."""
        return self.down + self.hold


@dataclass(frozen=True, slots=True)
class Drill:
    """A part's drill: the prime before squatting, its easier form, the next harder step, and the homework.

    ``unstretched``: replaces the prime for a part that must not be stretched.
    """

    part: str
    prime: Exercise
    easier: Exercise
    harder: str
    caution: str
    home: Exercise
    unstretched: Exercise | None = None
    standing: SourceStanding = "common practice"


@dataclass(frozen=True, slots=True)
class DrillOffer:
    """A drill as offered to one lifter: an exercise to try before squatting, and homework (None: none)."""

    part: str
    prime: Exercise
    caution: str
    harder: str
    home: Exercise | None
    home_words: str
    standing: SourceStanding
    trial: str = TRIAL
    stop: str = STOP


_FOLD: Final = (Work.BEND, Work.STRETCH_HIP)
_HINGE: Final = (Work.BEND, Work.STRETCH_HAMSTRINGS)
_slow = partial(Exercise, sets=_SETS, reps=_REPS, down=int(_DOWN))
_stretch = partial(Exercise, sets=_STRETCHES, hold=int(_STRETCH), sides=2, stretch=True)
_FLOOR = "On hands and knees, knees at your best width, back in its easy curve."

DRILLS: Final = (
    Drill(
        "hip",
        _slow("rock back", steps=(_FLOOR, f"Rock your hips towards your heels, {_DOWN:g} seconds back.",
                                  f"Stop before the back moves, hold {_HOLD:g} seconds, come forward."),
              hold=int(_HOLD), uses=_FOLD, deep_fold=True),
        _slow("rock back to a pillow", steps=(_FLOOR, "Lay a pillow on your heels.", f"Rock back towards it, {_DOWN:g} seconds, hold "
                                              f"{_HOLD:g} seconds, come forward."),
              hold=int(_HOLD), uses=_FOLD, deep_fold=True),
        f"Squat with {HELD_WEIGHT_WORDS} held in front, above the depth where your back rounds.",
        "If the front of the hip pinches, go back less far.",
        _stretch("lying knee-across pull", reps=1, steps=("Lie on your back, cross one ankle over the other knee.",
                                                          "Draw that knee towards the opposite shoulder, back still "
                                                          f"on the floor. Hold {_STRETCH:g} seconds."),
                 uses=_FOLD, lying=True, deep_fold=True)),
    Drill(
        "hamstrings",
        _slow("hinge with a stick", steps=("Hold a stick along your back: head, upper back and tailbone touch it.",
                                           f"Push your hips back, knees soft, {_DOWN:g} seconds down.",
                                           "Turn back before the stick leaves one of the three."), uses=_HINGE),
        _slow("hinge, hands to the wall", steps=("Stand a step from a wall, hands on it at hip height.",
                                                 f"Push your hips back, knees soft, {_DOWN:g} seconds down.",
                                                 "Turn back before your back moves."), uses=_HINGE),
        "Sink from the hinge into a squat, with a stick.",
        "Stop at anything down the leg, such as tingling or shooting.",
        _stretch("strap raise", reps=1, steps=("Lie on your back, a strap round one foot, that knee straight.",
                                               f"Pull the leg up until a stretch, back still. Hold {_STRETCH:g} seconds."),
                 uses=_HINGE, lying=True)),
    Drill(
        "calf",
        Exercise("knee over toes", _SETS, _REPS, ("Half a step from a wall, heel down.", "Bring the knee over the toes, heel down, hold "
                                                  f"{_HOLD:g} seconds, come back.", f"Then squat with your heels on {HEEL_LIFT:g} cm, "
                                                  "above the depth where your back rounds."),
                 hold=int(_HOLD), sides=2, uses=(Work.STRETCH_CALF, Work.SQUAT)),
        Exercise("knee over toes, holding a chair", _SETS, _REPS, ("Hold a steady chair, heel down.", "Bring the knee over the toes, hold "
                                                                   f"{_HOLD:g} seconds, come back."),
                 hold=int(_HOLD), sides=2, uses=(Work.STRETCH_CALF,)),
        f"Halve the heel lift, to {HEEL_LIFT / 2:g} cm.",
        "If the front of the ankle pinches, leave this out and use the heel lift only.",
        _stretch("calf stretch, straight and bent knee", reps=len(_BOTH_KNEES), steps=("Hands on a wall, one foot back, heel down.",
                                                                        f"Knee straight, lean in, hold {_STRETCH:g} seconds.",
                                                                        f"Then the same knee bent, {_STRETCH:g} seconds. Other side."),
                 uses=(Work.STRETCH_CALF,)),
        _slow("squat with a heel lift", steps=(f"Stand with your heels on {HEEL_LIFT:g} cm, firm and level.",
                                               "Squat slowly, above the depth where your back rounds. No load."), uses=(Work.SQUAT,))),
    Drill(
        "trunk",
        Exercise(f"pause squat, {counted(_STOPS)} stops", _SETS, _STOPPED_REPS, (
            "Stay above the depth where your back rounds.",
            f"Down in {_DOWN:g} seconds, with {counted(_STOPS)} stops of {_STOP:g} to {_LONG_STOP:g} seconds.",
            "Breathe at each stop, the back keeps its shape. A third set only if the first two were easy."),
                 down=int(_DOWN), hold=_STOPS * int(_LONG_STOP), uses=(Work.SQUAT,),
                 light=f"{HELD_WEIGHT_WORDS} in front, or a bar at {value('drill_bar'):g} % of the day's load or less"),
        Exercise("pause squat to a box", _SETS, _STOPPED_REPS, (
            "Use a box or chair above the depth where your back rounds. Body weight.",
            f"Down in {_DOWN:g} seconds, with a stop of {_STOP:g} to {_LONG_STOP:g} seconds half way.", "Touch the box, stop, stand up."),
                 down=int(_DOWN), hold=_BOX_STOPS * int(_LONG_STOP), uses=(Work.SQUAT,)),
        "Add a second stop where it is hard, then the bar; or do the arms-forward squat, light.",
        "Breathe all the way, no straining.",
        Exercise("front plank", _PLANKS, 1, ("Forearms and toes, or forearms and knees, body in one line.",
                                             f"Hold {_PLANK:g} seconds, up to {_PLANK_LATER:g} when that is easy. Keep breathing."),
                 hold=int(_PLANK))),
    Drill(
        "control",
        _slow("hand-on-back squat", steps=("One palm on the curve of your lower back.", f"Squat down in {_DOWN:g} seconds.",
                                           f"Stop above the depth where it moves, {_STILL:g} second, stand up."),
              hold=int(_STILL), uses=(Work.SQUAT,)),
        _slow("sit to a chair", steps=("One palm on the curve of your lower back, a chair behind you.",
                                       f"Sit down in {_DOWN:g} seconds, the curve keeps still, touch, stand up."),
              hold=int(_STILL), uses=(Work.SQUAT,)),
        "Sink from a hinge into a squat.",
        "Keep your footing steady.",
        Exercise("bird dog", _SETS, _REPS, ("Hands and knees, push the floor away.", "Reach one leg and the opposite arm out, hips level, "
                                            f"hold {_REACH:g} seconds.", "Check by mirror or film."), hold=int(_REACH), sides=2)),
)

BY_PART: Final = {drill.part: drill for drill in DRILLS}

_NO_HOME: Final = "No homework until the cause is confirmed. Show it to your coach."
_NO_STRETCH: Final = "No stretching for this part."
_NO_LIMIT: Final = "No homework for this part: it needs what you were told to leave out."
_NO_LYING: Final = "No homework on the back or in a deep fold."


def offer_for(part: str, *, easier: bool = False, no_stretch: bool = False, no_lying: bool = False,
              closed: Collection[Work] = ()) -> DrillOffer | None:
    """Return the drill for a part, or None if none can be offered.

    ``easier``: the easier form and no homework (a cause left by elimination). ``no_stretch``: the joint pinched, or the
    lifter is hypermobile. ``no_lying``: nothing on the back or in a deep fold (pregnancy). ``closed``: work that a clinician's limit
    closes; then another form of the drill is offered where one is open.
    """
    drill = BY_PART.get(part)
    if drill is None:
        return None
    prime = drill.unstretched if no_stretch and drill.unstretched else drill.easier if easier else drill.prime
    forms = (prime, *((drill.easier, drill.unstretched) if closed else ()))
    if (form := next((one for one in forms if one and not set(one.uses) & set(closed)), None)) is None or Work.MOVE in closed:
        return None
    prime = form
    if no_lying and (prime.lying or prime.deep_fold):
        return None
    home, words = drill.home, f"Homework, {HOME_DAYS} days a week: {drill.home.name}."
    withheld = (_NO_LIMIT if set(home.uses) & set(closed) else _NO_HOME if easier else _NO_STRETCH if no_stretch and home.stretch
                else _NO_LYING if no_lying and (home.lying or home.deep_fold) else "")
    return DrillOffer(part, prime, drill.caution, drill.harder, None if withheld else home, withheld or words,
                 drill.standing)
