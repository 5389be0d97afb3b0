"""A made-up lifter with everything a report can show, kept as the app keeps it: answers, findings, alerts, a coach."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import UTC, datetime, time, timedelta
from pathlib import Path
from sqlite3 import Connection

from companion.calendar.plan import Plan, Weekly, changed
from companion.conversation.condition import Value
from companion.conversation.effects import Alert, Began, Ended, Find, Record, Remind
from companion.record import coaching, people
from companion.record.file import open_for_writing
from flows.catalogue import BOOK
from tests.rows import keep

START = datetime(2026, 1, 5, 17, 0, tzinfo=UTC)
ZONE = "Europe/Berlin"
NOW = START + timedelta(days=84, hours=2)


def opened(path: Path) -> Connection:
    """A new, migrated file; it is closed with the test's process."""
    db, lock = open_for_writing(path)
    lock.close()
    return db.conn


@dataclass
class Kept:
    """A person whose rows are written one run at a time."""

    db: Connection
    person: int
    at: datetime = START
    runs: int = 0
    keys: dict[str, str] = field(default_factory=dict)

    def run(self, flow: str, answers: dict[str, Value | None], ending: str | None = "done", asked: str = "", method: str = "",
            placement: str = "", **raw: str) -> None:
        """One run of a flow. A key with a trailing "!" is a correction: the answer before it is taken back first."""
        self.runs += 1
        name, version = str(self.runs), BOOK[flow].flow.version
        effects: list[object] = [Began(name, flow, version, asked)]
        for said, value in answers.items():
            key = said.rstrip("!")
            side = key.split("_")[0] if key.startswith(("left", "right")) else ""
            unit = next((one.kind.unit for one in BOOK[flow].stops.values()
                         if getattr(one, "key", "") == key and getattr(one, "kind", None)), "")
            if said.endswith("!"):
                effects.append(Record(name, flow, version, key, side, "back", None, unit, "withdrawn"))
            aside = (method, placement) if isinstance(value, float) else ("", "")
            status = "skipped" if value is None else "ok"
            effects.append(Record(name, flow, version, key, side, raw.get(key, "skip" if value is None else f"{value:g}" if isinstance(
                value, float) else str(value)), value, unit, status, *aside))
        if ending:
            effects.append(Ended(name, ending))
        for effect in effects:
            self.at += timedelta(seconds=20)
            keep(self.db, self.person, [effect], self.at, ZONE)

    def find(self, **values: str) -> None:
        """Findings, with "__" for a dot in a name."""
        keep(self.db, self.person, [Find(name.replace("__", "."), value, "a rule", "because of the answers")
                                    for name, value in values.items()], self.at, ZONE)

    def on(self, days: float) -> None:
        """The evening so many days after the start."""
        self.at = START + timedelta(days=days)


def a_lifter(db: Connection, name: str = "Ottilie Brandt", units: str = "metric", note: str = "", goal: str = "", screens: int = 4,
             days: int = 14) -> int:
    """A lifter after twelve weeks: screens, squat days, pain once, corrections, a coach who overruled one finding."""
    coach = people.add_person(db, "terminal", f"coach of {name}", "Rune Aldersgate", START)
    coaching.make_coach(db, coach, "Rune Aldersgate", START)
    one = Kept(db, people.add_person(db, "terminal", name, name, START))
    one.run("welcome", {"consent": "yes", "adult": "yes", "units": units, "zone": ZONE, "zone_right": "yes"})
    one.run("about_you", {"height": 171.0, "mass": None, "sex": "woman", "years": 4.0, "load": 90.0, "bar": "high",
                          "usual_depth": "below", "tape": "yes", "level": "yes", "stick": "broomstick", "view": "film"})
    coaching.link(db, one.person, coach, one.at)
    for week, (raise_, wall, depth) in enumerate(((63.0, 8.0, "a_little_above"), (66.0, 8.5, "a_little_above"),
                                                  (71.0, 9.0, "parallel"), (76.0, 9.5, "parallel"))[:screens]):
        one.on(week * 24)
        one.run("safety_check", {"bladder": "no", "chest": "no", "urgent": "no", "history": "no", "history_signs": "no",
                                 "history_care": "no", "pain": float(week == 1),
                                 "leg_signs": "no"})
        one.find(safety__level="go", safety__checked="yes")
        one.run("warm_up", {})
        one.run("squat_look", {
            "seen_by": "film", "plain_rounds": "clearly", "plain_depth": depth, "heels_depth": "below",
            "front_depth": depth, "slow_depth": depth, "wide_depth": depth, "again_depth": depth, "load_film": "yes",
            "load_rounds": "clearly", "load_depth": depth, "load_kg": 90.0})
        one.run("hip_fold", {"left_first": "fold", "left_pinch": "no", "left_angle": 118.0, "right_first": "fold", "right_pinch": "no",
                             "right_angle": 121.0})
        one.run("leg_raise", {"method": "level", "effort": "own", "placement": "shin", "left_level": raise_, "left_lean": "short",
                              "left_end": "stretch", "right_lean": "short",
                              "left_level_2": raise_ + 1, "right_level": raise_ + 4, "right_level!": raise_ + 3, "right_end": "back"},
                method="level", placement="shin")
        one.run("knee_to_wall", {"method": "tape", "left_1": wall, "left_2": wall + 0.5, "left_limit": "calf", "right_1": wall + 1,
                                 "right_2": wall + 1, "right_limit": "calf"}, method="tape")
        one.run("hand_on_back_squat", {"usual_moves": "yes", "usual_depth": depth, "cued_moves": "yes", "cued_depth": depth})
    one.run("bird_dog", {"seen_by": "film", "left_shape": "clean", "left_hold": 10.0}, ending="pain")
    one.find(outcome__at=one.at.isoformat(), overall="likely", length="likely", strength="ruled_out", control="ruled_out", drill="calf",
             depth__keep="a_little_above", load__limit="72", retest__tests="knee_to_wall,squat_look")
    keep(db, one.person, [Remind("retest", "retest", "2026-04-20")], one.at, ZONE)
    keep(db, one.person, [Find("squat.plan", changed(Plan(), Weekly(((1, time(18)), (4, time(7)))) ).dumps()),
                          Find("squat.goal", goal or "100 kg for five, deep & steady")], one.at, ZONE)
    one.run("trial", {"join": "yes"})
    one.find(trial__joined="yes")
    for n in range(days):
        one.on(26 + n * 4)
        day, hurt = one.at.date().isoformat(), n == 9
        said = note if note and n == days - 1 else "slept badly, felt stiff" if n == 3 else None
        one.run("squat_day", {"load": 60.0 + 2.5 * (n // 4), "lot": "draw" if n >= 2 else None}, asked=day)
        one.run("squat_after", {"done": "yes", "back": "moved" if n in (3, 8) else "still", "seen_by": "film",
                                "kept": "deeper" if n == 8 else "kept", "hurt": "yes" if hurt else "no", "load": "same",
                                "felt": float(2 + n % 3), "note": said, "video": "file-77" if n == 6 else None}, asked=day, video="video")
        one.find(depth__step="well_above" if n in (3, 4) else "a_little_above" if n < 11 else "parallel")
        if hurt:
            one.run("pain", {"where": "back", "bad": 3.0, "sharp": "no", "below_knee": "no", "tingling": "no"})
            why = "A small pain: this test is over, and no loaded work today."
            keep(db, one.person, [Find("safety.level", "no_load", "pain questions", why), Find("safety.why", "bad"),
                                  Find("pain.hurt", "yes"), Alert("no_load", f"something hurt ({why})")], one.at, ZONE)
            one.at += timedelta(hours=12)
            one.run("morning", {"how": "better"})
            one.find(pain__morning="better")
    one.on(83)
    reason = note or "seen in person: she loses it when tired"
    coaching.audit_look(db, one.person, coach, "numbers", one.at)
    for what, value, because in (("pin_depth", "parallel", "film of Tuesday"), ("overrule", "control open", reason)):
        coaching.audit_act(db, one.person, coach, what, value, because, one.at)
    keep(db, one.person, [Find("depth.pin", "parallel", "set by coach Rune Aldersgate", "film of Tuesday"),
                          Find("overruled.control", "open", "overruled by coach Rune Aldersgate", reason)], one.at, ZONE)
    return one.person
