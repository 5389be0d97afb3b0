"""The sources of the numbers: one frozen row each from the tables in ``numbers/``, read and validated at import, and the answer to "why?".

A constant that stands in the table is read from it by ``value`` and has no second copy in the code.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date, timedelta
from pathlib import Path
from typing import Any, Final, get_args

from companion.screening.readings import MDC_FACTOR, Error, NumberFormat, SourceStanding, Threshold, metric

WORDS_MOST: Final = 60
"""The most words of an answer to "why?", and the most characters below: the limits of any message (choice)."""
LETTERS_MOST: Final = 350
CHECK_AFTER: Final = timedelta(days=731)
"""The age from which a row should be held against its source again: two years (choice)."""
_PLACE: Final = re.compile(r"\d:[A-Za-z]?\d|\b(?:Table|Figure) \d|\bdoi \d")
"""A place in a source: volume and page, a table or a figure, or a doi."""
_UNSOURCED: Final = ("common practice", "choice", "memory")


@dataclass(frozen=True, slots=True)
class Source:
    """One row: a value or several, what it is of, where it comes from, its standing, and what speaks against it.

    ``says``: a sentence with its numbers as ``filled`` puts them. ``inches``: the value for readers of inches, where the rule is in
    inches (0: converted). ``of``, ``n``, ``method``: who was measured, how many (0: not said) and how. ``checked``: the day the
    row was last held against its source. ``topic``: what it is found under.
    """

    id: str
    says: str
    value: tuple[float, ...]
    unit: str
    standing: SourceStanding
    topic: str
    checked: date
    source: str = ""
    spread: str = ""
    of: str = ""
    n: int = 0
    method: str = ""
    against: str = ""
    inches: float = 0.0


def read_sources(text: str) -> Mapping[str, Source]:
    """Return the rows of a table in TOML by name, each with its topic, and the day of the file where it has none of its own.

    Raises ValueError, which names the row, for one that is not whole, and for a name given twice.
    """
    table = tomllib.loads(text)
    day = {key: table.pop(key) for key in ("checked",) if key in table}
    rows: dict[str, Source] = {}
    for topic, held in table.items():
        for name, row in held.items():
            if name in rows:
                raise ValueError(f"{name}: there are two of it")
            rows[name] = _row(name, {**day, **row, "topic": topic})
    return rows


def _row(name: str, row: Mapping[str, Any]) -> Source:
    known = {field.name for field in fields(Source)} - {"id"}
    if wrong := row.keys() - known:
        raise ValueError(f"{name}: {', '.join(sorted(wrong))} is no field of a source")
    if missing := {"says", "value", "unit", "standing", "checked"} - row.keys():
        raise ValueError(f"{name}: {', '.join(sorted(missing))} is missing")
    if row["standing"] not in get_args(SourceStanding):
        raise ValueError(f"{name}: {row['standing']} is no standing")
    numbers = row["value"] if isinstance(row["value"], list) else [row["value"]]
    if not numbers or not all(isinstance(number, float) for number in numbers):
        raise ValueError(f"{name}: the value must be one number or several, with a decimal point")
    if not isinstance(row["checked"], date):
        raise ValueError(f"{name}: checked must be a date")
    if row["standing"] not in _UNSOURCED and not _PLACE.search(row.get("source", "")):
        raise ValueError(f"{name}: a {row['standing']} value needs a source with its page or table")
    made = Source(**{**row, "id": name, "value": tuple(numbers)})
    words = why(made)
    if len(words.split()) > WORDS_MOST or len(words) > LETTERS_MOST:
        raise ValueError(f"{name}: its why has {len(words.split())} words and {len(words)} characters")
    return made


def why(row: Source, show: NumberFormat = metric) -> str:
    """Return the answer to "why?": the value, its standing and source, who was measured, and what speaks against it."""
    who = ", ".join(filter(None, (row.of, f"{row.n:,} people" if row.n else "", filled(row, row.method, show))))
    return " ".join(filter(None, (
        filled(row, row.says, show), _STANDING[row.standing].format(source=f": {row.source}" if row.source else ""),
        f"Range: {row.spread}." if row.spread else "", f"Measured: {who}." if who else "", f"But: {row.against}" if row.against else "")))


def filled(row: Source, words: str, show: NumberFormat = metric) -> str:
    """Return words of a row with its numbers in them: {value}, {low} and {high}, or {0}, {1} … for each of several."""
    shown = [_shown(row, number, show) for number in row.value]
    return words.format(*shown, value=shown[0], low=shown[0], high=shown[-1])


_STANDING: Final[dict[SourceStanding, str]] = {
    "read": "Published{source}.", "second-hand": "Published, second-hand{source}.", "memory": "From memory{source}.",
    "common practice": "Common practice, no study{source}.", "choice": "Our own cautious choice{source}."}


def _shown(row: Source, number: float, show: NumberFormat) -> str:
    if row.inches and show(1.0, row.unit).endswith(" in"):
        return f"{row.inches:g} in"
    if row.unit in ("cm", "kg"):
        return show(number, row.unit)
    return f"{number:g}°" if row.unit == "deg" else f"{number:g} {row.unit}".strip()


SOURCES: Final = {name: row for file in sorted((Path(__file__).parent / "numbers").glob("*.toml"))
                  for name, row in read_sources(file.read_text("utf-8")).items()}


def value(name: str) -> float:
    """Return the one number of a row. Raises KeyError for a row there is not, ValueError for one of several numbers."""
    (number,) = SOURCES[name].value
    return number


_FIELD: Final = re.compile(r"\{(\w+?)(?:_(\d+))?(?::([Cc])ount(?: (\w[\w ]*))?)?\}")
_IN_WORDS: Final = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_OFTEN: Final = {1: "once", 2: "twice"}
_AS: Final = {("s", "minutes"): 60, ("days", "weeks"): 7, ("pairs of days", "days"): 0.5}


def with_numbers(text: str) -> str:
    """Return a text with the numbers of rows in it; fields of other names stay. Raises KeyError where there is no such row.

    "{row_0}": the first number in digits; "{row:count}", "{row_1:Count}": one in words, small or capital; "{row:count weeks}": with its
    noun, which may be of another unit than the row.
    """
    return _FIELD.sub(_filled, text)


def _filled(found: re.Match[str]) -> str:
    name, at, count, noun = found.groups()
    if not at and not count:
        return found[0]
    row = SOURCES[name]
    number = row.value[int(at or 0)]
    if not count:
        return f"{number:g}"
    said = counted(number / _AS.get((row.unit, (noun or "").split(" ")[-1]), 1), noun or "")
    return said.capitalize() if count == "C" else said


def counted(number: float, noun: str = "") -> str:
    """Return a number in words, with its noun: "three squats", "one second", "twice". ``noun``: in the plural."""
    if noun == "times" and number in _OFTEN:
        return _OFTEN[int(number)]
    words = _IN_WORDS[int(number)] if number in range(len(_IN_WORDS)) else f"{number:g}"
    return f"{words} {noun.removesuffix('s') if number == 1 else noun}".strip()


def outdated(today: date) -> tuple[Source, ...]:
    """Return the rows that were last held against their source more than two years before ``today``, in the table's order."""
    return tuple(row for row in SOURCES.values() if today - row.checked > CHECK_AFTER)


def sources_on(topic: str) -> tuple[Source, ...]:
    """Return the rows of a topic, in the table's order."""
    return tuple(row for row in SOURCES.values() if row.topic == topic)


def sourced_line(name: str, words: str, test: str) -> Threshold:
    """Return a row as a line that readings of a test are compared with; ``words`` name the line."""
    row = SOURCES[name]
    return Threshold(words, test, value(name), row.unit, row.source or "rule of thumb", row.standing, row.inches)


def sourced_error(name: str, test: str, method: str, *, mdc: bool = False) -> Error:
    """Return a row as the measurement error of a test by a method; ``mdc``: the row is the MDC95 of single readings, not the SEM."""
    row = SOURCES[name]
    source = ", ".join(filter(None, (row.source, row.of)))
    sem = value(name) / (MDC_FACTOR if mdc else 1)
    return Error(test, method, sem, row.unit, source or "the larger of the passive raise", row.standing)
