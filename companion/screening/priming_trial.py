"""A randomised trial of priming for one lifter: on squat days, prime or plain warm-up is drawn by lot.

Random blocks of two days: one primed, one plain, in an order drawn from a kept seed. Nobody has shown that priming helps
(Appl Sci 2025;15(23):12526, read: no change, n = 42), so the lifter's own days decide. The outcome is the movement felt,
0-10, at the same depth and load; the p-value is that of a randomisation test over every order in which the complete
blocks could have been drawn.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from math import isclose
from typing import Final, Literal

from companion.screening.sources import value

TrialArm = Literal["prime", "plain"]

PAIRS: Final = int(value("prime_trial"))  # four pairs cannot go below a two-sided p of 2/2^4 = .125; six reach .031
SMALL_P: Final = value("prime_chance")
LEAST_HELP: Final = value("prime_help")  # points of 0-10: a smaller mean difference is no sign of help


@dataclass(frozen=True, slots=True)
class TrialDay:
    """One squat day of the trial: its number from 0, and the answers afterwards.

    ``felt``: movement felt in the lower back, 0-10. ``kept``: True if the agreed depth was kept, None if not told.
    ``depth`` and ``load`` (kg): of the squats. A day counts as drawn, whether or not the drill was done.
    """

    index: int
    felt: float
    kept: bool | None
    depth: str
    load: float


@dataclass(frozen=True, slots=True)
class TrialResult:
    """The result of the trial so far.

    ``difference``: mean movement felt on plain days minus primed days, positive in favour of priming; ``p``: two-sided;
    ``smallest``: the smallest p these days could have given. All three are None without a pair. ``pairs``: complete blocks at
    the same depth and load; ``left_out``: all other blocks.
    """

    kind: Literal["helps", "no_sign", "cannot_tell"]
    pairs: int
    left_out: int
    difference: float | None
    p: float | None
    smallest: float | None
    words: str


def arm_of(seed: str, index: int) -> TrialArm:
    """Return the arm drawn for one day: the same seed and number always give the same arm.

    ``index`` counts the trial's days from 0; days 2k and 2k + 1 are a block and get one arm each. Raises ValueError below 0.
    """
    if index < 0:
        raise ValueError("days are counted from 0")
    prime_first = sha256(f"priming {seed} {index // 2}".encode()).digest()[0] % 2 == 0
    return "prime" if prime_first == (index % 2 == 0) else "plain"


def verdict_of(seed: str, days: Iterable[TrialDay]) -> TrialResult:
    """Return the result of the days so far; its words have at most 160 characters.

    Only blocks with both days, at the same depth and load, count as pairs. From six pairs on: "no_sign" where the mean difference is
    under a point, however unlikely by chance; "helps" where p <= .05 and the depth is kept no less often on primed days; else it
    can't be told yet. Looking again after each further pair makes p a little too small, so
    decide once. Raises ValueError for a day given twice, and for movement outside 0-10.
    """
    pairs, left_out = pairs_of(seed, days)
    primed, plain = (sum(pair[n].kept is True for pair in pairs) for n in (0, 1))
    if not pairs:
        return TrialResult("cannot_tell", 0, left_out, None, None, None, _too_few(0))
    differences = [off.felt - on.felt for on, off in pairs]
    difference, p, smallest = sum(differences) / len(differences), randomisation_p(differences), smallest_p(differences)
    at = f"{abs(difference):.1f} points {'less' if difference >= 0 else 'more'} movement on primed days"
    numbers = f"{len(pairs)} pairs, p {p:.2g}, at best {smallest:.2g}"
    kind: Literal["helps", "no_sign", "cannot_tell"]
    if len(pairs) < PAIRS:
        kind, words = "cannot_tell", _too_few(len(pairs))
    elif difference < LEAST_HELP:
        kind, words = "no_sign", f"No sign that the drill helps you: {at} ({numbers})."
    elif p > SMALL_P:
        kind, words = "cannot_tell", f"Can't tell yet: {at}, which may be chance ({numbers}). More pairs would tell."
    elif primed < plain:
        kind, words = "cannot_tell", f"Can't tell yet: {at}, but the depth was kept less often ({numbers})."
    else:
        kind, words = "helps", f"The drill helps you, as far as this shows: {at} ({numbers})."
    return TrialResult(kind, len(pairs), left_out, difference, p, smallest, words)


def pairs_of(seed: str, days: Iterable[TrialDay]) -> tuple[list[tuple[TrialDay, TrialDay]], int]:
    """Return the pairs of days that count, the primed day first, and the number of blocks left out.

    Raises ValueError for a day given twice, and for movement outside 0-10.
    """
    told: dict[int, TrialDay] = {}
    for day in days:
        if day.index in told:
            raise ValueError(f"day {day.index} was told twice")
        if not 0 <= day.felt <= 10:
            raise ValueError("movement felt is told from 0 to 10")
        told[day.index] = day
    blocks = sorted({index // 2 for index in told})
    pairs = [_ordered(seed, told[2 * block], told[2 * block + 1]) for block in blocks
             if 2 * block in told and 2 * block + 1 in told and _alike(told[2 * block], told[2 * block + 1])]
    return pairs, len(blocks) - len(pairs)


def randomisation_p(differences: Sequence[float]) -> float:
    """Return the two-sided p of paired differences: the share of all equally likely orders of the blocks whose mean difference
    is at least as far from 0. Raises ValueError without a pair."""
    if not differences:
        raise ValueError("there is no pair")
    # Each possible sum, with the number of orders that give it; whole-number answers make few distinct sums.
    # In whole millionths, so that equal sums are one.
    parts = [round(difference * 1e6) for difference in differences]
    sums = {0: 1}
    for part in parts:
        added: dict[int, int] = {}
        for total, orders in sums.items():
            for end in (total + part, total - part):
                added[end] = added.get(end, 0) + orders
        sums = added
    seen = abs(sum(parts))
    return sum(orders for total, orders in sums.items() if abs(total) >= seen) / sum(sums.values())


def smallest_p(differences: Sequence[float]) -> float:
    """Return the smallest p that pairs of these sizes could give, with all differences one way: 2 / 2^(pairs with a
    difference), and 1 if there is none."""
    return randomisation_p([abs(difference) for difference in differences])


def _ordered(seed: str, first: TrialDay, second: TrialDay) -> tuple[TrialDay, TrialDay]:
    """Return the two days of a block, the primed one first."""
    return (first, second) if arm_of(seed, first.index) == "prime" else (second, first)


def _alike(one: TrialDay, other: TrialDay) -> bool:
    """True if two days had the same depth and load."""
    return one.depth == other.depth and isclose(one.load, other.load)


def _too_few(pairs: int) -> str:
    """Return the sentence on the number of pairs still missing."""
    return f"Can't tell yet: {pairs} of {PAIRS} pairs of days so far, each pair at the same depth and load."
