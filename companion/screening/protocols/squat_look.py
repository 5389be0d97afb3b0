"""Squat look: unloaded squats, plain and with one change each, and film of working sets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.depth import BAND_WORDS, NEVER_STARTS, band_of, bands_later, hidden_at_top, start_of
from companion.screening.evidence import EvidenceRow, Finding, Grade, by_feel, by_id, found
from companion.screening.limits import Work
from companion.screening.protocol import GOING_DOWN, SQUAT_LOOK_MINUTES, Detail, FindingContext, Protocol, Starts
from companion.screening.readings import NumberFormat
from companion.screening.safety import BodyPosition

_ID: Final = "squat_look"
ONE_CHANGE: Final = ("heels", "front", "slow", "wide")
START_DRIFTED: Final = "The plain squat at the end rounded at quite another depth, so the squats with one change don't count."
SPARE_THE_HIP: Final = ("heels", "front", "wide")
"""Changes that ask less of the hip: if it holds the squat back, one of them moves the rounding (the balanced squat; choice)."""
A_STEP_APART: Final = "the two plain squats were seen a step apart"
ONE_BAND: Final = "it is one step of depth, and the eye slips by that much"
NOT_REPEATED: Final = "The plain squat was not done again at the end, so the squats with one change don't count."


@dataclass(frozen=True, slots=True)
class SquatLook:
    """Unloaded squats, plain and with one change each; film of working sets, if any: the heaviest, and the heaviest that kept
    its shape (loads in kg)."""

    seen_by: str | None = None
    plain_rounds: str | None = None
    plain_depth: str | None = None
    heels_rounds: str | None = None
    heels_depth: str | None = None
    front_rounds: str | None = None
    front_depth: str | None = None
    slow_rounds: str | None = None
    slow_depth: str | None = None
    wide_rounds: str | None = None
    wide_depth: str | None = None
    again_rounds: str | None = None
    again_depth: str | None = None
    load_film: str | None = None
    load_rounds: str | None = None
    load_depth: str | None = None
    load_kg: float | None = None
    clean_kg: float | None = None

    def rounds(self, squat: str) -> str | None:
        """Return the answer no|little|clearly|cant_tell of one squat: plain, heels, front, slow, wide, again or load. Rounding in some of
        the squats of a set counts as a little (choice): seen, and not each time. Where only the depth was asked, a squat that rounds does
        so as much as the plain one."""
        value: str | None = getattr(self, f"{squat}_rounds")
        depth: str | None = getattr(self, f"{squat}_depth")
        told = value or {None: None, "no": "no", "cant_tell": "cant_tell"}.get(depth, self.plain_rounds)
        return "little" if told == "some" else told

    def start(self, squat: str) -> int | None:
        """Return the start of rounding of one squat (``start_of``)."""
        return start_of(self.rounds(squat), getattr(self, f"{squat}_depth"))

    def moved(self, squat: str) -> int | None:
        """Return the number of bands by which one change moved the start (above 0: later); None if not known or discounted. Where the two
        plain squats were seen a band apart, only what lies past both of them tells."""
        before, again, after = (self.start(one) for one in ("plain", "again", squat))
        if self.discounted or before is None or again is None or after is None:
            return None
        past = after - min(max(after, min(before, again)), max(before, again))
        return past if past or before == again else None

    @property
    def discounted(self) -> str:
        """The reason, in words, for not counting the squats with one change; "" if they count."""
        drift = bands_later(self.start("plain"), self.start("again"))
        return NOT_REPEATED if drift is None else START_DRIFTED if abs(drift) > 1 else ""


_ROWS: Final = by_id(
    EvidenceRow("squat_rounds", _ID, "Your lower back rounds in the plain squat", "all", "neither", Grade.NONE),
    EvidenceRow("heels_later_calf", _ID, "With your heels raised, your back rounds later", "calf", "for", Grade.MODERATE, trial=True),
    EvidenceRow("heels_later_hip", _ID, "With your heels raised, your back rounds later", "hip", "for", Grade.WEAK, hint=True,
        trial=True),
    EvidenceRow("heels_same_calf", _ID, "With your heels raised, your back rounds at the same depth", "calf", "against", Grade.MODERATE),
    EvidenceRow("front_later_hip", _ID, "With a weight held in front, your back rounds later", "hip", "for", Grade.WEAK, hint=True,
        trial=True),
    EvidenceRow("front_later_trunk", _ID, "With a weight held in front, your back rounds later", "trunk", "for", Grade.WEAK, hint=True),
    EvidenceRow("front_later_control", _ID, "With a weight held in front, your back rounds later", "control", "for", Grade.WEAK, hint=True),
    EvidenceRow("slow_later_control", _ID, f"Going down over {GOING_DOWN}, your back rounds later", "control", "for", Grade.MODERATE),
    EvidenceRow("slow_same_control", _ID, f"Going down over {GOING_DOWN}, your back rounds at the same depth",
        "control", "against", Grade.MODERATE),
    EvidenceRow("slow_earlier_trunk", _ID, f"Going down over {GOING_DOWN}, your back rounds earlier",
        "trunk", "for", Grade.WEAK, hint=True),
    EvidenceRow("wide_later_hip", _ID, "With your feet wider, your back rounds later", "hip", "for", Grade.WEAK, hint=True,
        trial=True),
    EvidenceRow("unmoved_hip", _ID, "Neither heels up, nor a weight in front, nor feet wider moved where your back rounds",
        "hip", "against", Grade.MODERATE, standing="choice"),
    EvidenceRow("load_earlier_trunk", _ID, "On film, your back rounds earlier under load than without", "trunk", "for", Grade.STRONG),
    EvidenceRow("load_same_trunk", _ID, "On film, your back rounds no earlier under load than without", "trunk", "against", Grade.STRONG),
)
ROWS_BY_CHANGE: Final = {
    ("heels", 1): ("heels_later_calf", "heels_later_hip"), ("heels", 0): ("heels_same_calf",),
    ("front", 1): ("front_later_hip", "front_later_trunk", "front_later_control"),
    ("slow", 1): ("slow_later_control",), ("slow", 0): ("slow_same_control",), ("slow", -1): ("slow_earlier_trunk",),
    ("wide", 1): ("wide_later_hip",)}
"""The rows for a squat with one change that rounds later (1), at the same depth (0) or earlier (-1)."""



def findings(look: SquatLook, context: FindingContext) -> Iterator[Finding]:
    """Yield the findings of the plain squat, the four squats with one change, and film under load."""
    plain = look.start("plain")
    feel = by_feel(look.seen_by)

    def less(squat: str) -> str:
        """Return the reason for which a squat counts less, "" for none."""
        little = "the back rounded only a little" if "little" in (look.rounds("plain"), look.rounds(squat)) else ""
        apart = A_STEP_APART if squat != "load" and look.start("again") != plain else ""
        return feel or little or apart or hidden_at_top(plain, look.start(squat))

    if look.rounds("plain") in ("little", "clearly"):
        yield found(_ROWS["squat_rounds"])
    if plain is not None and plain < NEVER_STARTS:
        for (squat, way), ids in ROWS_BY_CHANGE.items():
            moved = look.moved(squat)
            if moved is not None and way == (moved > 0) - (moved < 0):
                for row in ids:
                    yield found(_ROWS[row], less=less(squat), bands=moved, looks=1)
        sparing = [look.moved(squat) for squat in SPARE_THE_HIP]
        if None not in sparing and all((moved or 0) <= 0 for moved in sparing):
            yield found(_ROWS["unmoved_hip"], less=feel or hidden_at_top(plain, plain), bands=0, looks=1)
    loaded = bands_later(plain, look.start("load"))
    if loaded is None or look.load_film == "no":
        return
    load = f"at {context.show(look.load_kg, 'kg')}" if look.load_kg is not None else "load not told"
    if loaded < 0:
        one = ONE_BAND if loaded == -1 else ""
        yield found(_ROWS["load_earlier_trunk"], less=less("load") or one, load=load, kg=look.load_kg, bands=loaded)
    elif not hidden_at_top(plain, look.start("load")) and (
            loaded > 0 or (look.rounds("plain"), look.rounds("load")) != ("little", "clearly")):
        # A film of light sets says little about the working load.
        usual = context.about.load
        light = look.load_kg is None or (usual is not None and look.load_kg < usual)
        why = less("load") or ("it may not be your working load" if light else "")
        yield found(_ROWS["load_same_trunk"], less=why, load=load, kg=look.load_kg, bands=loaded)


SQUATS: Final = (("plain", "plain"), ("heels", "heels raised"), ("front", "weight held in front"), ("slow", f"{GOING_DOWN} down"),
                 ("wide", "feet wider"), ("again", "plain once more"), ("load", "film of a working set"))
_ROUNDING: Final = {"no": "none", "little": "a little", "some": "in some of them", "clearly": "clearly", "cant_tell": "can't tell"}


def detail(look: SquatLook | None, show: NumberFormat) -> Detail:
    """Return the table of the start of rounding in each squat, and the bands by which a change moved it."""
    rows = []
    for squat, title in SQUATS if look else ():
        assert look is not None
        rounds = look.rounds(squat)
        if rounds is None or (squat == "load" and look.load_film == "no"):
            continue
        start, moved = look.start(squat), look.moved(squat) if squat not in ("plain", "again", "load") else None
        band = band_of(getattr(look, f"{squat}_depth"))
        depth = "no rounding" if start == NEVER_STARTS else BAND_WORDS[band] if band else "not told"
        bands = "–" if moved is None else {0: "no change"}.get(moved, f"{abs(moved)} step{'s' if abs(moved) > 1 else ''} "
                                                                     f"{'later' if moved > 0 else 'earlier'}")
        load = f", {show(look.load_kg, 'kg')}" if squat == "load" and look.load_kg is not None else ""
        how = getattr(look, f"{squat}_rounds") or getattr(look, f"{squat}_depth")  # of a change only the depth is asked
        rows.append((f"{title}{load}".capitalize(), _ROUNDING.get(how, "yes"), depth, bands))
    seen = f", judged by {look.seen_by.replace('_', ' ')}" if look and look.seen_by else ""
    return Detail("squats", f"Squat look: where the rounding starts{seen}",
                  ("Squat", "Rounding", "Starts at", "Against the plain squat"), tuple(rows), "The squat look has not been done.",
                  note(look) if look else "")


def note(look: SquatLook) -> str:
    """Return the reason for not counting the squats with one change; "" if there were none or they count."""
    return look.discounted if any(look.rounds(squat) for squat in ONE_CHANGE) else ""


PROTOCOL: Final = Protocol(
    _ID, title="Squat look", short_name="squat look",
    looks_at="at which depth the back rounds without load, and which single change moves that depth",
    minutes=SQUAT_LOOK_MINUTES, place=10, ease=5, needs=("phone on a stand, or mirror",), posture=BodyPosition.STANDING, uses=(Work.SQUAT,),
    record=SquatLook, rows=tuple(_ROWS.values()), findings=findings,
    starts=Starts("Where the rounding starts", "Where rounding starts", lambda look: (look.plain_rounds, look.plain_depth)),
    detail=detail, note=note, picture="squat_rounding",
    would_tell="Next, the squat look would tell most, with its changes and with film of a working set you already have.",
)
