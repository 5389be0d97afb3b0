"""The result of a screen for the lifter: the overall picture, a verdict on each cause, the part to drill, a depth and a load.

Wording and numbers are common practice and this project's choices, and say so. Some rounding at
depth is normal, in trained lifters too (McKean 2010 J Strength Cond Res 24:2731, read).
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from math import inf
from typing import Final, Literal

from companion.screening.about import About
from companion.screening.certainty import settled, share_words
from companion.screening.depth import BAND_WORDS, KEEP_ABOVE, NEVER_STARTS, Band, band_of
from companion.screening.errors import Errors
from companion.screening.evidence import PART_WORDS, Finding
from companion.screening.findings import findings_of
from companion.screening.load_threshold import Bracket, SeenSet, bracket, sets_of
from companion.screening.pairs import HYPERMOBILE_WORDS, ReferenceSquat, hypermobile, loads_filmed, look_of, opened, stance
from companion.screening.protocol import FindingContext
from companion.screening.protocols import measured, protocol, route
from companion.screening.readings import SIDES, NumberFormat, metric, side_difference
from companion.screening.rulings import Ruling, Verdict, contradiction, decide, weight_for
from companion.screening.screen import METHOD_WORDS, Screen
from companion.screening.setups import SetUp, called, depth_with
from companion.screening.sources import value
from companion.screening.squat_days import ToldDay

Overall = Literal["normal", "no_rounding", "load_question", "likely", "by_elimination", "unexplained", "open"]

LOAD_SHARE: Final = value("load_share") / 100
SHARE_WORDS: Final = f"{value('load_share'):g} %"
PARTS: Final = ("hip", "hamstrings", "calf", "trunk", "control")

OVERALL_WORDS: Final[dict[Overall, str]] = {
    "normal": "A little rounding at or below parallel, without pain, is common, in trained lifters too. "
              "Nothing to fix; more tests are optional.",
    "no_rounding": "No rounding was seen without load: nothing to fix. Side-on film of a working set would tell more.",
    "load_question": "Your back keeps its shape without load and rounds on film under load, so the load is the question. "
                     "Strength comes first.",
    "likely": "The tests point to a cause. Beside each cause I say how sure that is.",
    "by_elimination": "Two causes are ruled out, so one is left. That is weaker than a test that points to it.",
    "unexplained": "These tests do not explain the rounding. Length, strength and control were all ruled out as far as tested.",
    "open": "The tests so far do not settle the cause.",
}
CANNOT_TELL: Final = "Home tests can't show the shape of bones or joints, and they are no diagnosis."


@dataclass(frozen=True, slots=True)
class Repeat:
    """The one test to do again now, since what it gave can't stand or contradicts another; ``words``: why, and which side; ``by``: the
    method it takes, "" for any."""

    test: str
    words: str
    by: str = ""


@dataclass(frozen=True, slots=True)
class Conclusion:
    """The result of a screen.

    ``verdicts``: length, strength, control. ``part``: the one part to drill, "" for none; ``easier``: use the drill's
    easier form (a cause left by elimination). ``keep``: the deepest band to squat to now, None for no advice; never below
    the usual depth. ``load_limit``: kg, None for no number or no advice. ``not_tested``: tests without a valid answer.
    ``settle``: the most informative tests to do next. ``no_stretch``: parts that must not be stretched (a pinch, or
    hypermobile). ``stance``: a hint for the feet, "" for none. ``setup``: the
    set-up that was checked or set and counts now, None without one. ``repeat``: the one repeat that would settle a contradiction or a
    doubtful reading. Each ``words`` field is one message of at most 160 characters.
    """

    overall: Overall
    words: str
    verdicts: tuple[Verdict, ...]
    part: str
    easier: bool
    keep: Band | None
    keep_words: str
    load_limit: float | None
    load_words: str
    not_tested: tuple[str, ...]
    settle: tuple[str, ...]
    hypermobile: bool
    no_stretch: tuple[str, ...]
    stance: str
    setup: SetUp | None
    repeat: Repeat | None
    differences: tuple[str, ...]
    notes: tuple[str, ...]

    def verdict(self, cause: str) -> Verdict:
        """Return the verdict on "length", "strength" or "control"."""
        return next(verdict for verdict in self.verdicts if verdict.cause == cause)


def conclude(screen: Screen, about: About, pain: float | None = None, show: NumberFormat = metric,
             errors: Errors | None = None, setup: SetUp | None = None, days: Sequence[ToldDay] = (),
             closed: Collection[str] = ()) -> Conclusion:
    """Return the result of a screen.

    ``pain``: back or hip pain now, 0-10; only a known 0 lets rounding be called normal. ``show``: writes a metric number in
    the lifter's units. ``errors``: the lifter's own measurement errors; None means the published ones for their sex.
    ``setup``: the set-up that was checked, or that a coach set; it gives the depth only where pain is known to be 0.
    ``days``: squat days as told, for the load at which rounding begins. ``closed``: tests that are closed to this lifter, so that none of
    them is named as the next.
    """
    errors = errors or Errors(about.sex)
    findings = findings_of(screen, about, show, errors)
    look = look_of(screen)
    shut = (*screen.done, *closed, *(test for test in route() if not opened(test, screen, about)))
    plain, loaded = look.start("plain"), look.start("load") if look.load_film != "no" else None
    rounds = [start for start in (plain, loaded) if start is not None and start < NEVER_STARTS]
    verdicts = _eliminated(settled(decide(findings, shut), findings, shut), rounding_seen=bool(rounds))
    overall = _overall(look, plain, loaded, pain, verdicts)
    part = _drill_part(overall, verdicts, look, findings)
    better = setup if pain == 0 else None
    told, filmed = sets_of(look, days), tuple(SeenSet(kg, rounds, film=True) for kg, rounds in loads_filmed(screen))
    begins = (bracket(told), *filter(None, map(bracket, ((*told, *filmed), filmed))))
    limit, load_words = _lowest(*(_load(overall, about, show, one) for one in begins))
    earlier = loaded if loaded is not None and plain is not None and loaded < plain else None
    if rounds and plain in rounds and look.clean_kg and limit is not None and limit <= look.clean_kg:
        earlier, rounds = None, [plain]  # what is lifted for now was filmed rounding no earlier than without load
    keep, keep_words = _depth(overall, min(rounds, default=None), about)
    if better and better.start is not None and overall not in _AT_REST:
        keep, keep_words = _depth_with(better, earlier, about, show)
    context = FindingContext(about, errors.of, show)
    bends_far = hypermobile(screen)
    pinched = {f.part for f in findings if f.row.pinched}
    return Conclusion(
        overall, _overall_words(overall, verdicts), verdicts, part, overall == "by_elimination", keep, keep_words, limit,
        load_words, tuple(test for test in route() if test not in screen),
        tuple(dict.fromkeys(v.settle for v in verdicts if v.settle)) if overall not in _AT_REST else (), bends_far,
        ("hip", "hamstrings", "calf") if bends_far else tuple(p for p in PARTS if p in pinched),
        "" if setup else stance(screen, findings), better,
        _repeat(screen, verdicts, context, closed), _differences(screen, context),
        (*screen.notes, *((HYPERMOBILE_WORDS,) if bends_far else ()), CANNOT_TELL))


_AT_REST: Final = ("normal", "no_rounding", "unexplained")
RULING_WORDS: Final = {Ruling.RULED_OUT: "ruled out", Ruling.NOT_TESTED: "not tested",
                       Ruling.TOO_CLOSE: "too close to call", Ruling.LIKELY: "likely"}


def ruled_as(verdict: Verdict) -> str:
    """Return the ruling in words; what was tried with next to no weight only says so."""
    light = verdict.ruling is Ruling.NOT_TESTED and any(one.kg == 0 for one in verdict.because)
    return "tried only with a stick, too light to tell" if light else RULING_WORDS[verdict.ruling]


def verdict_words(verdict: Verdict) -> str:
    """Return one cause's verdict in a sentence or two, at most 160 characters; the reasons are in ``because``."""
    said = f"{verdict.cause.capitalize()}: {ruled_as(verdict)}"
    side = {"left": ", left side", "right": ", right side", "both": ", both sides"}.get(verdict.side, "")
    match verdict.ruling:
        case Ruling.LIKELY:
            named = " and ".join(PART_WORDS[part] for part in verdict.together) + " together" if len(
                verdict.together) > 1 else PART_WORDS[verdict.part]
            what = f" ({named}{side})" if verdict.cause == "length" else ""
            return f"{said}{what}, but not certain.{_share(verdict)}"
        case Ruling.RULED_OUT:
            at = f" at the load tested ({verdict.load or 'not said'})" if verdict.cause == "strength" else ""
            return f"{said}{at}, as far as these tests go.{_share(verdict)}"
    open_parts = [PART_WORDS[p.part] for p in verdict.parts if p.ruling != Ruling.RULED_OUT]
    what = f" ({', '.join(open_parts)}{side})" if verdict.cause == "length" and len(open_parts) < 3 else ""
    if verdict.leaning and verdict.share is not None:
        return f"{said}{what}. Our rule says {RULING_WORDS[verdict.leaning]} {share_words(verdict.share)} draws, and that is too few."
    left = " It is the one cause left, which is weaker than likely." if verdict.by_elimination else ""
    return f"{said}{what}.{left}"


def _share(verdict: Verdict) -> str:
    """Return how often the rule comes out the same, in words: no probability, and never called one."""
    return f" Our rule comes out the same {share_words(verdict.share)}." if verdict.share is not None else ""


def settle_words(test: str) -> str:
    """Return the sentence that names the most informative test to do next."""
    one = protocol(test)
    return one.would_tell or f"Next, the {one.short_name} would tell most."


def _eliminated(verdicts: tuple[Verdict, ...], *, rounding_seen: bool) -> tuple[Verdict, ...]:
    """Mark the one cause left if rounding was seen and the other two are ruled out; note the findings that ruled them out."""
    still = [v for v in verdicts if v.ruling != Ruling.RULED_OUT]
    if not rounding_seen or len(still) != 1 or still[0].ruling == Ruling.LIKELY:
        return verdicts
    out = tuple(finding for v in verdicts if v is not still[0] for finding in v.because)
    return tuple(replace(v, by_elimination=True, left_by=out) if v is still[0] else v for v in verdicts)


def _overall(look: ReferenceSquat, plain: int | None, loaded: int | None, pain: float | None,
             verdicts: Sequence[Verdict]) -> Overall:
    """Return the overall picture: normal and load questions come first, then the verdicts."""
    if plain == NEVER_STARTS:
        return "load_question" if loaded is not None and loaded < NEVER_STARTS else "no_rounding"
    under_load = loaded is not None and plain is not None and (loaded < plain or look.rounds("load") == "clearly")
    if (look.rounds("plain") == "little" and plain is not None and plain >= Band.PARALLEL.rank and pain == 0
            and not under_load):
        return "normal"
    if any(v.ruling == Ruling.LIKELY for v in verdicts):
        return "likely"
    if any(v.by_elimination for v in verdicts):
        return "by_elimination"
    return "unexplained" if all(v.ruling == Ruling.RULED_OUT for v in verdicts) else "open"


def _overall_words(overall: Overall, verdicts: Sequence[Verdict]) -> str:
    """Return the overall picture in words; by elimination it names the cause left."""
    left = next((verdict.cause for verdict in verdicts if verdict.by_elimination), "")
    return OVERALL_WORDS[overall].replace("so one is left", f"so {left} is left") if left else OVERALL_WORDS[overall]


def _drill_part(overall: Overall, verdicts: Sequence[Verdict], look: ReferenceSquat, findings: Sequence[Finding]) -> str:
    """Return the part to drill: of several likely, the one whose own change moved the depth most.

    Heels or feet for length, the weight in front for strength, slow for control. Tied: control, then strength (choice).
    """
    if overall in _AT_REST:
        return ""
    if overall == "load_question":
        return "trunk"
    if overall == "by_elimination":
        left = next(v for v in verdicts if v.by_elimination)
        open_parts = [p.part for p in left.parts if p.ruling != Ruling.RULED_OUT]
        return left.part or max(open_parts, key=lambda part: weight_for(part, findings))
    likely = [v for v in verdicts if v.ruling == Ruling.LIKELY]

    def moved(verdict: Verdict) -> int:
        """Return the most bands by which a squat change for this cause moved the start."""
        squats = {"length": ("heels", "wide"), "strength": ("front",), "control": ("slow",)}[verdict.cause]
        return max(0, *(look.moved(squat) or 0 for squat in squats))

    return max(reversed(likely), key=moved).part if likely else ""  # control, strength, length: the first of equals


def _depth(overall: Overall, start: int | None, about: About) -> tuple[Band | None, str]:
    """Return the depth to keep to, with its sentence: one band above the start of rounding, never below the usual depth."""
    if overall in _AT_REST or start is None:
        return None, ""
    if start == 0:
        return Band.WELL_ABOVE, ("The rounding starts well above parallel. For now stay above that, to a high box, "
                                 "without a bar (our cautious choice).")
    usual = band_of(about.usual_depth) or Band.BELOW
    keep = min(list(Band)[max(start - KEEP_ABOVE, 0)], usual)
    return keep, (f"For now go no deeper than {BAND_WORDS[keep]}, above where the rounding starts "
                  f"(our cautious choice). {_watch(about)}")


def _films(about: About) -> bool:
    """True unless they said that they have no phone to film with."""
    return about.view not in ("mirror", "neither")


def _watch(about: About) -> str:
    return "Film it once a week." if _films(about) else "Let somebody look once a week."


def _depth_with(setup: SetUp, loaded: int | None, about: About, show: NumberFormat) -> tuple[Band | None, str]:
    """Return the depth to keep to with a set-up, with its sentence. ``loaded``: where the rounding starts under load, if that is earlier
    than without: no set-up was looked at under that load, so the earlier of the two counts."""
    assert setup.start is not None
    start = min(setup.start, NEVER_STARTS if loaded is None else loaded)
    if start == 0:
        return _depth("open", 0, about)
    usual = band_of(about.usual_depth) or Band.BELOW
    keep = depth_with(replace(setup, start=start), usual) or Band.WELL_ABOVE
    return keep, (f"With {called(setup.change, show)}: for now down to {BAND_WORDS[keep]}, above where the rounding starts then "
                  f"(our cautious choice). {_watch(about)}")


def _lowest(told: tuple[float | None, str], *filmed: tuple[float | None, str]) -> tuple[float | None, str]:
    """Return the lowest of the load limits with its sentence, the first of equal ones: a film with cards only ever lowers one, and none
    that is in words alone."""
    return told if told[0] is None and told[1] else min((told, *filmed), key=lambda one: inf if one[0] is None else one[0])


def _load(overall: Overall, about: About, show: NumberFormat, begins: Bracket | None) -> tuple[float | None, str]:
    """Return the load limit in kg, with its sentence: below the load at which rounding begins where that is known; else 80 % of the
    working load if a cause is likely or load is the question. Never more than is trained."""
    if begins and overall not in ("normal", "no_rounding"):
        limit = float(int(min(begins.most, about.load or begins.most) + 1e-9))
        held = f"kept your back still at {show(begins.clean, 'kg')} and " if begins.clean is not None else ""
        return limit, (f"Meanwhile lift at most {show(limit, 'kg')}: your sets {held}rounded from {show(begins.rounds, 'kg')}. "
                       "That is our cautious choice; your coach may set another.")
    if overall not in ("likely", "load_question"):
        return None, ""
    film = " on film" if _films(about) else ""
    tail = f"with a still back{film}. That is our cautious choice; your coach may set another."
    if about.bar == "none" or (about.load is None and about.bar is None):
        return None, f"Meanwhile stay with body weight; add load only where the back stays still{film} (our cautious choice)."
    if about.load is None:
        return None, f"Meanwhile lift at most {SHARE_WORDS} of your working load, {tail}"
    limit = float(int(about.load * LOAD_SHARE + 1e-9))
    return limit, f"Meanwhile lift at most {show(limit, 'kg')}, {SHARE_WORDS} of {show(about.load, 'kg')}, {tail}"


def _repeat(screen: Screen, verdicts: Sequence[Verdict], context: FindingContext, closed: Collection[str]) -> Repeat | None:
    """Return the one repeat that would settle most: a reading in doubt first, then what a rougher method said otherwise since, then the
    shakier of two findings that contradict each other; None if nothing does."""
    for one in measured():
        if one.id in screen and one.doubts and one.id not in closed:
            for words in one.doubts(screen[one.id], context).values():
                return Repeat(one.id, words)
    for test, since in screen.outdone.items():
        if test not in closed and (sides := _otherwise(screen, test, context)):
            side = " on both sides" if len(sides) > 1 else f" on the {sides[0]} side"
            what, by = PART_WORDS[protocol(test).part].capitalize(), METHOD_WORDS[since.than]
            return Repeat(test, f"{what}: {by} and {METHOD_WORDS[since.by]} disagree. The {protocol(test).short_name} by {by} once "
                                f"more{side} would settle it.", since.than)
    for verdict in verdicts:
        for part in verdict.parts:
            if part.ruling is Ruling.TOO_CLOSE and (clash := contradiction(part)):
                shaky = min(clash, key=lambda f: (f.row.test in closed, f.margin if f.margin is not None else abs(f.bands or 0),
                                                  protocol(f.row.test).ease))
                if shaky.row.test in closed:
                    continue
                side = f" on the {shaky.side} side" if shaky.side else ""
                names = " and the ".join(protocol(f.row.test).short_name for f in clash)
                return Repeat(shaky.row.test, f"{PART_WORDS[part.part].capitalize()}: the {names} disagree. The "
                                              f"{protocol(shaky.row.test).short_name} once more{side} would settle it.")
    return None


def _otherwise(screen: Screen, test: str, context: FindingContext) -> list[str]:
    """Return the sides of which a rougher method said something else since than the record that counts; none that pinched."""
    counts, since = ({side: {one.row.direction for one in protocol(test).findings(record, context) if one.side == side} for side in SIDES}
                     for record in (screen[test], screen.outdone[test].record))
    pinched = {one.side for one in protocol(test).findings(screen.outdone[test].record, context) if one.row.pinched}
    return [side for side in SIDES if counts[side] and since[side] and counts[side] != since[side] and side not in pinched]


def _differences(screen: Screen, context: FindingContext) -> tuple[str, ...]:
    """Return a sentence for each measured test whose sides differ beyond measurement error; none where a reading is in doubt."""
    said = []
    for one in measured():
        if one.id not in screen or one.readings is None or (one.doubts and one.doubts(screen[one.id], context)):
            continue
        left, right = (one.readings(screen[one.id], side) for side in SIDES)
        if left and right:
            difference = side_difference(left, right, context.error(one.id, left[0].method), context.show)
            if difference.counts:
                said.append(f"{one.name}: {difference.words}")
    return tuple(said)
