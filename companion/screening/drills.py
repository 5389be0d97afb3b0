"""The drills: one for each part, as data. No load unless stated. Each is a trial, not a fix.

Common practice without a source, unless named. A 20-minute trunk and technique session did not change the tilt of the
pelvis in the squat (Appl Sci 2025;15(23):12526, read): nobody has shown that such a drill helps. Stretches: 60 s in all
for each muscle, 2-3 days a week (Garber 2011 Med Sci Sports Exerc 43:1334, second-hand); not longer than 60 s in a row
right before heavy sets (Behm 2016 Appl Physiol Nutr Metab 41:1, memory).
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from companion.screening.limits import Work
from companion.screening.readings import SourceStanding
from companion.screening.sources import value

TRIAL: Final = "A trial, not a fix: nobody has shown that such a drill helps. See what it does for you."
STOP: Final = "Stop at the first movement of the back, before any pain."
HOME_DAYS: Final = int(value("home_days"))  # a week


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
_FLOOR = "On hands and knees, knees at your best width, back in its easy curve."

DRILLS: Final = (
    Drill(
        "hip",
        Exercise("rock back", 2, 5, (_FLOOR, "Rock your hips towards your heels, 3 seconds back.",
                                     "Stop before the back moves, hold 2 seconds, come forward."),
                 down=3, hold=2, uses=_FOLD, deep_fold=True),
        Exercise("rock back to a pillow", 2, 5, (_FLOOR, "Lay a pillow on your heels.",
                                                 "Rock back towards it, 3 seconds, hold 2 seconds, come forward."),
                 down=3, hold=2, uses=_FOLD, deep_fold=True),
        "Squat with 2 to 5 kg held in front, above the depth where your back rounds.",
        "If the front of the hip pinches, go back less far.",
        Exercise("lying knee-across pull", 2, 1, ("Lie on your back, cross one ankle over the other knee.",
                                                  "Draw that knee towards the opposite shoulder, back still on the "
                                                  "floor. Hold 30 seconds."),
                 hold=30, sides=2, uses=_FOLD, stretch=True, lying=True, deep_fold=True)),
    Drill(
        "hamstrings",
        Exercise("hinge with a stick", 2, 5, ("Hold a stick along your back: head, upper back and tailbone touch it.",
                                              "Push your hips back, knees soft, 3 seconds down.",
                                              "Turn back before the stick leaves one of the three."), down=3, uses=_HINGE),
        Exercise("hinge, hands to the wall", 2, 5, ("Stand a step from a wall, hands on it at hip height.",
                                                    "Push your hips back, knees soft, 3 seconds down.",
                                                    "Turn back before your back moves."), down=3, uses=_HINGE),
        "Sink from the hinge into a squat, with a stick.",
        "Stop at anything down the leg, such as tingling or shooting.",
        Exercise("strap raise", 2, 1, ("Lie on your back, a strap round one foot, that knee straight.",
                                       "Pull the leg up until a stretch, back still. Hold 30 seconds."),
                 hold=30, sides=2, uses=_HINGE, stretch=True, lying=True)),
    Drill(
        "calf",
        Exercise("knee over toes", 2, 5, ("Half a step from a wall, heel down.",
                                          "Bring the knee over the toes, heel down, hold 2 seconds, come back.",
                                          "Then squat with your heels on 2 cm, above the depth where your back rounds."),
                 hold=2, sides=2, uses=(Work.STRETCH_CALF, Work.SQUAT)),
        Exercise("knee over toes, holding a chair", 2, 5, ("Hold a steady chair, heel down.",
                                                           "Bring the knee over the toes, hold 2 seconds, come back."),
                 hold=2, sides=2, uses=(Work.STRETCH_CALF,)),
        "Halve the heel lift, to 1 cm.",
        "If the front of the ankle pinches, leave this out and use the heel lift only.",
        Exercise("calf stretch, straight and bent knee", 2, 2, ("Hands on a wall, one foot back, heel down.",
                                                                "Knee straight, lean in, hold 30 seconds.",
                                                                "Then the same knee bent, 30 seconds. Other side."),
                 hold=30, sides=2, uses=(Work.STRETCH_CALF,), stretch=True),
        Exercise("squat with a heel lift", 2, 5, ("Stand with your heels on 2 cm, firm and level.",
                                                  "Squat slowly, above the depth where your back rounds. No load."), down=3,
                 uses=(Work.SQUAT,))),
    Drill(
        "trunk",
        Exercise("pause squat, three stops", 2, 3, ("Stay above the depth where your back rounds.",
                                                    "Down in 3 seconds, with three stops of 1 to 2 seconds.",
                                                    "Breathe at each stop, the back keeps its shape. A third set only "
                                                    "if the first two were easy."),
                 down=3, hold=6, uses=(Work.SQUAT,), light="2 to 5 kg in front, or a bar at 50 % of the day's load or less"),
        Exercise("pause squat to a box", 2, 3, ("Use a box or chair above the depth where your back rounds. Body weight.",
                                                "Down in 3 seconds, with a stop of 1 to 2 seconds half way.",
                                                "Touch the box, stop, stand up."), down=3, hold=4, uses=(Work.SQUAT,)),
        "Add a second stop where it is hard, then the bar; or do the arms-forward squat, light.",
        "Breathe all the way, no straining.",
        Exercise("front plank", 3, 1, ("Forearms and toes, or forearms and knees, body in one line.",
                                       "Hold 15 seconds, up to 20 when that is easy. Keep breathing."), hold=15)),
    Drill(
        "control",
        Exercise("hand-on-back squat", 2, 5, ("One palm on the curve of your lower back.",
                                              "Squat down in 3 seconds.",
                                              "Stop above the depth where it moves, 1 second, stand up."),
                 down=3, hold=1, uses=(Work.SQUAT,)),
        Exercise("sit to a chair", 2, 5, ("One palm on the curve of your lower back, a chair behind you.",
                                          "Sit down in 3 seconds, the curve keeps still, touch, stand up."),
                 down=3, hold=1, uses=(Work.SQUAT,)),
        "Sink from a hinge into a squat.",
        "Keep your footing steady.",
        Exercise("bird dog", 2, 5, ("Hands and knees, push the floor away.",
                                    "Reach one leg and the opposite arm out, hips level, hold 5 seconds.",
                                    "Check by mirror or film."), hold=5, sides=2)),
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
