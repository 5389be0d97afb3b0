"""Made-up lifters with known limits, and what they answer: from their own bodies, with error, skips and sloppy looks.

Nothing here knows the rule, its grades or its lines. Three worlds:

- "geometry": the balanced squat of ``companion.screening.posture`` decides where length starts the tuck; strength sets in above a load,
  control starts it earlier unless the squat is slow or attended to;
- "unrelated": where it rounds has nothing to do with ankle, hip or control, and no change moves it;
- "reversed": more ankle range goes with earlier rounding, as in Berglund 2024 (abstract, read); the rest is unrelated.

Ranges: ankle 40 +- 5.8 degrees (Calatayud 2015, read), hip 121 +- 13 (Roach & Miles 1991, memory; spread halved, for adults who squat),
leg raise 72 +- 9 (Youdas 2005, memory). A limited part lies two to three SD lower (choice). Error: that published for each method, half
of it shared by the repeats of one session; a depth by eye off by 4 degrees, one look in twenty sloppy (choice).
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from math import asin, degrees, radians, sin
from random import Random
from typing import Final

from companion.conversation.condition import Facts, Value
from companion.screening.body import Setup, body_of
from companion.screening.posture import balance_of, deepest, depth_of_fold, fold_at

PARTS: Final = ("hip", "hamstrings", "calf", "trunk", "control")
CAUSE: Final = {"hip": "length", "hamstrings": "length", "calf": "length", "trunk": "strength", "control": "control"}
EDGES: Final = (("well_above", -20.0), ("a_little_above", -5.0), ("parallel", 5.0), ("below", 90.0))
EYE_SD, SLOPPY, SKIPS = 4.0, 0.05, 0.02
SHANK, ANKLE_TO_TOE, KNEECAP = 0.246, 0.75 * 0.152, 4.0
HELD = 3.5
NEVER_SKIPPED: Final = ("method", "seen_by", "effort", "front", "heels_do", "shallow_do", "check_do")


@dataclass
class Lifter:
    """One lifter: the limits that are true of them, and a source of luck."""

    world: str
    limits: frozenset[str]
    luck: Random
    height: float = 175.0
    mass: float = 78.0
    load: float = 100.0
    ankle: float = 40.0
    fold: float = 121.0
    leg: float = 76.0
    begins: float = 1_000.0
    usual: float = 10.0
    wander: float = 0.0
    shared: dict[str, float] = field(default_factory=dict)

    @property
    def causes(self) -> frozenset[str]:
        """The causes that are behind the rounding."""
        return frozenset(CAUSE[part] for part in self.limits) if self.world == "geometry" else frozenset()

    def start(self, *, lift: float = 0.0, turned: float = 0.0, held: float = 0.0, slow: bool = False, load: float = 0.0) -> float:
        """The thigh angle at which the rounding truly starts in one set, degrees below level; 90 for not at all."""
        if self.world == "unrelated":
            return self.wander
        if self.world == "reversed":
            return self.wander - 0.8 * (self.ankle - 40.0) - (4.0 if lift else 0.0)
        body = body_of(self.height, self.mass)
        bar = Setup("arms", held, 15.0 + turned, lift) if held else Setup("none", 0.0, 15.0 + turned, lift, arms=0.5)
        balance = balance_of(body, bar, self.ankle)
        fold = (self.fold - (18.0 if "hamstrings" in self.limits else 0.0)) / 0.91
        angle = min(float(depth_of_fold(balance, fold)), float(deepest(balance)) + 1.0)
        angle = 90.0 if angle > float(deepest(balance)) else angle
        if "control" in self.limits and not slow:
            angle = min(angle, 90.0 if angle > 60 else angle) - 17.0 if angle < 60 else 3.0
        if load > self.begins:
            angle = min(angle, 25.0) - 20.0
        return angle


def drawn(world: str, limits: frozenset[str], seed: int) -> Lifter:
    """One lifter of a world, always the same one for a seed."""
    luck = Random(f"{world} {sorted(limits)} {seed}")
    one = Lifter(world, limits, luck, round(luck.gauss(174, 8)), round(luck.gauss(78, 10)), round(luck.uniform(50, 160)))
    one.ankle = luck.gauss(24, 2.5) if "calf" in limits else max(luck.gauss(41, 4.5), 32)
    one.fold = luck.gauss(88, 4) if "hip" in limits else max(luck.gauss(122, 6.5), 108)
    one.leg = luck.gauss(52, 4) if "hamstrings" in limits else max(luck.gauss(84, 6), 74)
    one.begins = one.load * luck.uniform(0.55, 0.85) if "trunk" in limits else 1_000.0
    one.usual = luck.gauss(12, 5)
    one.wander = luck.gauss(-3, 9)
    if world != "geometry":
        one.ankle, one.fold, one.leg = luck.gauss(40, 5.8), luck.gauss(118, 9), luck.gauss(76, 9)
    return one


class Answers:
    """What one lifter taps and types, question by question; counts the worlds' truth through noisy looks.

    The luck of an answer hangs on the lifter and the question alone, so that one lifter answers alike on a long and on a short route."""

    def __init__(self, lifter: Lifter) -> None:
        self.of, self.luck = lifter, lifter.luck
        self.seed = lifter.luck.random()
        self.kept: dict[str, tuple[str, str]] = {}
        self.leg: dict[str, float] = {}
        self.asked: Counter[str] = Counter()

    def answer(self, flow: str, key: str, facts: Facts) -> Value | None:
        """The answer to a question of a test; None to skip it. Raises KeyError for a question nobody here knows."""
        self.asked[f"{flow} {key}"] += 1
        self.luck = Random(f"{self.seed} {flow} {key} {self.asked[f'{flow} {key}']}")
        if self.luck.random() < SKIPS and key not in NEVER_SKIPPED and not key.startswith(("did", "again_")):
            return None
        found: Value | None = getattr(self, flow)(key, facts)
        return float(found) if isinstance(found, int) else found

    def set_of(self, name: str, angle: float) -> tuple[str, str]:
        """One set, looked at once: how much it rounds, and where it starts."""
        if name not in self.kept:
            self.kept[name] = self.look(angle)
        return self.kept[name]

    def look(self, angle: float) -> tuple[str, str]:
        """How much it rounds and in which band it starts, as somebody sees a set."""
        seen = angle + self.luck.gauss(0, EYE_SD)
        if self.luck.random() < SLOPPY:
            seen = self.luck.uniform(-35, 20)
        if seen > self.of.usual:
            return "no", ""
        return ("clearly" if self.of.usual - seen > 8 else "little"), next(band for band, top in EDGES if seen < top)

    def measured(self, name: str, true: float, sem: float) -> float:
        """One reading: half of its variance is the same for all repeats of the session."""
        shared = self.of.shared.setdefault(name, Random(f"{self.seed} {name}").gauss(0, sem * 0.707))
        slip = self.luck.choice((-1, 1)) * 6 * sem if self.luck.random() < SLOPPY / 2 else 0.0
        return true + shared + self.luck.gauss(0, sem * 0.707) + slip

    def _set(self, change: str) -> float:
        return self.of.start(lift=2.5 * ("heels" in change), turned=10.0 * ("wide" in change), held=HELD * ("front" in change),
                             slow="slow" in change)

    def squat_look(self, key: str, facts: Facts) -> Value | None:
        slot, _, asked = key.rpartition("_")
        if key == "seen_by":
            return "film"
        if key == "did":
            return "none"
        if key == "load_film":
            return "yes" if self.of.load else "no"
        if key == "load_kg":
            return self.of.load
        if key == "clean_kg":
            return round(self.of.begins * 0.95) if self.of.begins < self.of.load else None
        change = str(facts.get(slot, "")) if slot.startswith("change") else ""
        rounds, band = self.set_of(f"look {slot}", self.of.start(load=self.of.load) if slot == "load" else self._set(change))
        return rounds if asked == "rounds" else band or ("no" if slot not in ("plain", "load") else "")

    def best_squat(self, key: str, facts: Facts) -> Value | None:
        if key == "did":
            return "none"
        if key == "front":
            return "no"
        rounds, band = self.look(self._set(str(facts["change"]) if key.startswith("changed") else ""))
        return "no" if rounds == "no" else band

    def rock_back(self, key: str, facts: Facts) -> Value | None:
        if key == "did":
            return "none"
        spare = self._spare() + self.luck.gauss(0, 5) + {"narrow": -4, "middle": 0, "wide": 4}[key]
        if "control" in self.of.limits and self.of.world == "geometry" and self.luck.random() < 0.5:
            spare -= 15
        return "early" if spare < -5 else "at_fold" if spare < 6 else "past"

    def _spare(self) -> float:
        """Degrees of hip fold beyond what the bottom of their squat takes."""
        body = body_of(self.of.height, self.of.mass)
        need = float(fold_at(balance_of(body, Setup("none", 0.0, 15.0, arms=0.5), self.of.ankle), min(self.of.usual, 15.0)))
        return self.of.fold / 0.91 - (need if need == need else 120.0)

    def hip_fold(self, key: str, facts: Facts) -> Value | None:
        asked = key.rpartition("_")[2]
        if asked == "first":
            return "fold" if self._spare() + self.luck.gauss(0, 5) > 0 else "back"
        return "none"

    def leg_raise(self, key: str, facts: Facts) -> Value | None:
        given = {"effort": "own", "method": "level"}
        if key in given:
            return given[key]
        side = str(facts.get("odd", "")) if key.startswith("check") else key.split("_")[0]
        if key.endswith("lean"):
            return "past" if self.leg.get(side, 0) > 90 else "short"
        if "level" in key:
            angle = self.leg[side] = self.measured(f"leg {side}", self.of.leg, 3.0)
            return float(round(180 - angle if angle > 90 else angle))
        return "none"

    def knee_to_wall(self, key: str, facts: Facts) -> Value | None:
        if key == "method":
            return "tape"
        if key.endswith("limit"):
            return "calf" if self.of.ankle < 38 or self.luck.random() < 0.5 else "neither"
        side = str(facts.get("odd", "")) if key == "check" else key.split("_")[0]
        true = sin(radians(self.of.ankle)) * SHANK * self.of.height - ANKLE_TO_TOE * self.of.height + KNEECAP
        return round(max(self.measured(f"wall {side}", true, 0.69), 0.0), 1)

    def hand_on_back_squat(self, key: str, facts: Facts) -> Value | None:
        if key == "did":
            return "none"
        rounds, band = self.look(self.of.start(slow=key.startswith("cued")))
        return "no" if rounds == "no" else band

    def bird_dog(self, key: str, facts: Facts) -> Value | None:
        loose = "control" in self.of.limits and self.of.world == "geometry"
        asked = key.rpartition("_")[2]
        if key in ("seen_by", "did"):
            return {"seen_by": "film", "did": "none"}[key]
        if asked == "hold":
            return 10.0 if self.luck.random() > (0.6 if loose else 0.15) else float(self.luck.randint(3, 9))
        if asked == "shape":
            return self.luck.choice(("hip", "back", "clean"))
        return ("hip" if self.luck.random() < (0.5 if loose else 0.1) else "clean") if asked == "slow" else "ready"

    def arms_forward_squat(self, key: str, facts: Facts) -> Value | None:
        if key == "fault":
            return "clean" if self.luck.random() < 0.8 else "chest"
        if key == "depth":
            return self.look(self.of.start(held=5))[1] or "below"
        return {"seen_by": "film", "bar": "empty"}.get(key, "yes" if key.endswith("help") else "none")

    def pause_squat(self, key: str, facts: Facts) -> Value | None:
        weak = "trunk" in self.of.limits and self.of.world == "geometry"
        if key in ("shape", "again"):
            return "rounds" if self.luck.random() < (0.35 if weak else 0.06) else "clean"
        return {"seen_by": "film", "with": "bar", "moving": "clean", "hard": "none"}.get(key, "none")

    def hinge_to_squat(self, key: str, facts: Facts) -> Value | None:
        tight = "hamstrings" in self.of.limits and self.of.world == "geometry"
        if key == "hinge":
            return "rounds" if self.luck.random() < (0.6 if tight else 0.08) else "clean"
        if key == "sink":
            return "clean" if self.luck.random() < 0.9 else "breaks"
        if key == "depth":
            return self.look(self.of.start())[1] or "below"
        return "film" if key == "seen_by" else "none"

    def about_you(self, key: str, facts: Facts) -> Value | None:
        band = next(band for band, top in EDGES if self.of.usual < top)
        return {"height": self.of.height, "mass": self.of.mass, "sex": "man", "years": 4.0, "load": self.of.load, "bar": "high",
                "usual_depth": band, "tape": "yes", "level": "yes", "stick": "bar", "view": "film"}.get(key)


def shin_of(distance: float, height: float) -> float:
    """The shin's angle for a distance to the wall, of this module's own triangle."""
    return degrees(asin((distance + ANKLE_TO_TOE * height - KNEECAP) / (SHANK * height)))
