"""The parts of a safety level: what stood before, and what each report of pain or a sign adds, so that taking one back frees no other.

Kept as one finding, of each part whose it is, its level, "open" while its questions are, and the keys of the answers that weighed.
It counts only while it comes to what stands: where anything else has closed or opened since, what stands is one part by itself.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Final, NamedTuple

from companion.conversation.condition import Facts
from companion.screening.safety import Level, worst

LEVEL_PARTS: Final = "safety.parts"
"""The finding that keeps them."""
_BEFORE: Final = "before"
_TAP: Final = "tap"


class LevelPart(NamedTuple):
    """One part: ``whose``, such as "pain.12" by the run that it was first told in; ``state``: "open" or "told"; ``why``: keys."""

    whose: str
    level: Level
    state: str = "told"
    why: tuple[str, ...] = ()


def parts_of(got: Facts) -> tuple[LevelPart, ...]:
    """Return the parts of what stands now."""
    return _parts(str(got.get(LEVEL_PARTS, "")), got.get(f"{LEVEL_PARTS}.today") == "yes", str(got.get("safety.level") or "go"),
                  str(got.get("safety.why", "")))


@lru_cache(64)  # asked a dozen times in a step
def _parts(kept: str, today: bool, stands: str, why: str) -> tuple[LevelPart, ...]:
    every = tuple(LevelPart(name, Level(level), state, tuple(keys))
                  for words in kept.split(" | ") if len(words.split()) > 2 for name, level, state, *keys in (words.split(),))
    lasting = every if today else tuple(one for one in every if one.level >= Level.CLINICIAN)
    if level_of(lasting).value == stands and set(why_of(every)) == set(why.split()):
        return lasting
    return (LevelPart(_BEFORE, Level(stands), why=tuple(why.split())),)


def whose(got: Facts) -> str:
    """Return the name of the run's part, which its fact "whose" keeps; runs from before there were parts have one name."""
    return str(got.get("whose") or "unnamed")


def others(got: Facts) -> tuple[LevelPart, ...]:
    """Return the parts that are not of the run that asks."""
    return tuple(one for one in parts_of(got) if one.whose != whose(got))


def own(got: Facts) -> LevelPart | None:
    """Return the part of the run that asks; None where it has added nothing yet."""
    return next((one for one in parts_of(got) if one.whose == whose(got)), None)


def stood(got: Facts) -> Level:
    """Return the level without the run that asks."""
    return level_of(others(got))


def with_tap(parts: Iterable[LevelPart], level: Level, why: Iterable[str]) -> tuple[LevelPart, ...]:
    """Return parts with that of a tap which may be undone; one that was there stays for good."""
    return (*(one._replace(whose=_BEFORE) if one.whose == _TAP else one for one in parts), LevelPart(_TAP, level, why=tuple(why)))


def without_tap(got: Facts) -> tuple[LevelPart, ...]:
    """Return what stands now without such a tap: all that was told before it, with it and since."""
    return tuple(one for one in parts_of(got) if one.whose != _TAP)


def part_level(got: Facts, name: str) -> str:
    """Return the level of one part of what stands, by its name; of all of it where there is no such part."""
    return next((one.level for one in parts_of(got) if one.whose == name), Level(str(got.get("safety.level") or "go"))).value


def level_of(parts: Iterable[LevelPart]) -> Level:
    """Return the level that parts come to."""
    return worst((Level.GO, *(one.level for one in parts)))


def why_of(parts: Iterable[LevelPart]) -> tuple[str, ...]:
    """Return the keys of all the answers that weighed, each once."""
    return tuple(dict.fromkeys(key for one in parts for key in one.why))


def checked_today(got: Facts) -> Level:
    """Return what today's safety check found, which nothing that is taken back undoes; "go" where there was none."""
    return Level(str(got.get("safety.checked", "go"))) if got.get("safety.checked.today") == "yes" and (
        got.get("safety.checked") != "undone") else Level.GO


def text_of(parts: Iterable[LevelPart]) -> str:
    """Return parts as they are kept."""
    return " | ".join(" ".join((one.whose, one.level.value, one.state, *one.why)) for one in parts)
