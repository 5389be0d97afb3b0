"""Typed times of day: "6pm", "18.30 Uhr", "half past six in the evening".

A line is split into tokens by tables of patterns tried in order; a line with an unknown word is not read at all. An hour from 1 to 12
without morning or evening may mean two times, and both are returned.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, time
from typing import Final

LONGEST_LINE: Final = 300
"""Most characters read; a longer text is rejected, as its end may reverse its beginning. Our choice."""


@dataclass(frozen=True, slots=True)
class Word:
    """A meaningful or unknown word: its text, or its code."""

    text: str


@dataclass(frozen=True, slots=True)
class Hours:
    """A time of day: one, or the two (morning first) that an hour without morning or evening may mean."""

    could_be: tuple[time, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the day, a key of ``PARTS_OF_DAY``."""

    name: str


@dataclass(frozen=True, slots=True)
class Weekdays:
    """Days of the week (0 = Monday). ``many``: all of them ("Fridays"). ``weak``: may be another word ("sat")."""

    days: tuple[int, ...]
    many: bool = False
    weak: bool = False


@dataclass(frozen=True, slots=True)
class SingleDate:
    """One date; None if unclear or out of range, with the reason. ``fixed``: given by its number."""

    day: date | None
    why: str = ""
    fixed: bool = False


@dataclass(frozen=True, slots=True)
class Week:
    """A week or month ahead, by its first day. ``over``: the first day after it, if all of it is meant."""

    first: date
    over: date | None = None


@dataclass(frozen=True, slots=True)
class Span:
    """A duration from today on, by the first day after it. ``loose``: a number of days that may mean squat days. ``months``: their
    number if given in months, whose lengths differ."""

    end: date
    loose: bool = False
    months: int = 0


@dataclass(frozen=True, slots=True)
class Frequency:
    """An interval of days; or, with ``times``, so often a week."""

    days: int = 0
    times: int = 0


Token = Word | Hours | Part | Weekdays | SingleDate | Week | Span | Frequency


@dataclass(frozen=True, slots=True)
class MatchContext:
    """Context of a pattern match: today's date, the word before, what is asked for ("clock", "date" or ""), and the text after."""

    today: date
    before: str
    asked: str
    after: str


PatternRow = tuple[re.Pattern[str], Callable[[re.Match[str], MatchContext], Token | tuple[Token, ...] | None]]

PARTS_OF_DAY: Final = {"am": (0, 11), "pm": (12, 23), "morning": (3, 11), "afternoon": (12, 18), "evening": (16, 23), "night": (18, 23)}
"""First and last full hour of each part of the day; our choice, wide enough for "5 in the evening"."""

NUMBERS: Final = {word: number for number, word in enumerate(
    ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen",
     "sixteen", "seventeen", "eighteen", "nineteen", "twenty", "twenty one", "twenty two", "twenty three"), 1)}
NUMBER: Final = rf"(?:\d{{1,2}}|{'|'.join(sorted(NUMBERS, key=len, reverse=True))})"
_HOUR: Final = rf"(?P<h>{NUMBER})"
_MINUTES: Final = {"five": 5, "ten": 10, "fifteen": 15, "quarter": 15, "twenty": 20, "twenty five": 25, "half": 30, "thirty": 30,
                   "forty": 40, "forty five": 45, "fifty": 50, "fifty five": 55}
_PART_NAMES: Final = {**{name: name for name in ("morning", "afternoon", "evening", "night")}, "morn": "morning", "mornin": "morning",
                      "arvo": "afternoon", "nite": "night"}
_PARTS: Final = "|".join(sorted(_PART_NAMES, key=len, reverse=True))
LETTERS_END: Final = r"(?![^\W\d_])"
NUMBER_END: Final = r"(?!\w|[.:,/]\d)"
AT: Final = frozenset(["at", "@", "um", "around", "about", "by", "ca", "circa"])
"""Words before a time."""

_ORDINALS: Final = {word: number for number, word in enumerate(
    ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth", "thirteenth",
     "fourteenth", "fifteenth", "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth"), 1)}
_ORDINALS_ABOVE: Final = {**{f"twenty {word}": 20 + number for word, number in [*_ORDINALS.items()][:9]},
                          "thirtieth": 30, "thirty first": 31}
_OF_MONTH: Final = re.compile(
    rf"\b({'|'.join([*_ORDINALS_ABOVE, *_ORDINALS])})(?= (?:of )?(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b)|"
    rf"(?<=\bthe )({'|'.join([*_ORDINALS_ABOVE, *[*_ORDINALS][10:]])})\b")
"""Days of a month in words; below the eleventh only beside the month, as "the second" may be a set."""

_NO: Final = "❌✖🚫⛔👎✗✘🙅"
_APOSTROPHE_S: Final = frozenset(["it's", "let's"])


def plain(text: str) -> str | None:
    """Return a line in normal form: NFKC, casefolded, straight quotes and dashes, no pictures; None if it is too long.

    A picture that means no is kept, so that nothing beside it is read. Never raises.
    """
    if len(text) > LONGEST_LINE:
        return None
    text = unicodedata.normalize("NFKC", text).casefold().translate(str.maketrans("‘’´`–—−‐‑", "''''-----"))
    text = re.sub(r"\s*[\n\r]+\s*(?:[-*•] ?)?", ", ", text.strip(" \n\r-*•"))
    text = "".join(letter if letter in _NO or unicodedata.category(letter) not in
                   ("So", "Sk", "Cf", "Cs", "Co", "Cn", "Cc", "Mn", "Me") else " " for letter in text)
    text = re.sub(r"\b\w+'s\b", lambda word: word[0] if word[0] in _APOSTROPHE_S else word[0][:-2], text)
    text = text.replace("i'll", "i will").replace("'", "").replace("o clock", "oclock")
    text = re.sub(r"(?<![^\W\d_])([ap])\. ?m\b\.?", r"\1m", text)
    text = _OF_MONTH.sub(lambda found: f"{(_ORDINALS | _ORDINALS_ABOVE)[found[0]]}th", text)
    return " ".join(re.sub(r"(\d) ?-?ish\b", r"\1", text).split())


def number(word: str) -> int:
    """Return the value of a number in digits or words."""
    return int(word) if word.isdigit() else NUMBERS[word]


def hours(hour: int, minute: int, part: str | None, sure: bool = False) -> tuple[time, ...]:
    """Return the times an hour and a minute may mean, morning first; empty if there is no such time.

    12 am sharp gives none, since many people mean noon. ``sure``: written as on a 24-hour clock ("06:30").
    """
    if hour > 23 or minute > 59:
        return ()
    if part is None:
        if sure or hour in (0, *range(13, 24)):
            return (time(hour, minute),)
        return time(hour % 12, minute), time(hour % 12 + 12, minute)
    if not hour or (hour == 12 and not minute and part == "am") or (hour > 12 and part == "am"):
        return ()
    return (time(hour % 12 + (12 if part == "pm" else 0), minute),)


def _hours(found: re.Match[str], place: MatchContext) -> Hours | None:
    got = found.groupdict()
    minute = int(got.get("m") or 0)
    sure = got["h"].startswith("0") or (got["h"] == "12" and bool(got.get("m")))
    return _some(hours(number(got["h"]), minute, got.get("part"), sure))


def _one_letter(found: re.Match[str], place: MatchContext) -> Hours | None:
    """Read "6p" and "7:30a"."""
    return _some(hours(int(found["h"]), int(found["m"] or 0), f"{found['half']}m"))


def _some(could_be: tuple[time, ...]) -> Hours | None:
    return Hours(could_be) if could_be else None


def _four_digits(found: re.Match[str], place: MatchContext) -> Hours | None:
    """Read "1800"; if its minutes are no multiple of five it is more likely a year or a weight."""
    return _hours(found, place) if int(found["m"]) % 5 == 0 else None


def _past(found: re.Match[str], place: MatchContext) -> Hours | None:
    """Read "quarter to seven pm": the part of the day belongs to the named hour."""
    shift = _MINUTES[found["minutes"]] * (1 if found["way"] in ("past", "after") else -1)
    named = hours(number(found["h"]), 0, found["part"]) if number(found["h"]) <= 12 else ()
    total = sorted((at.hour * 60 + shift) % (24 * 60) for at in named)
    return _some(tuple(time(*divmod(minutes, 60)) for minutes in total))


def _half(found: re.Match[str], place: MatchContext) -> Hours | None:
    """Read "half six" as half past six, as it is said in Britain."""
    return _some(hours(number(found["h"]), 30, found["part"])) if number(found["h"]) <= 12 else None


def _of_24(found: re.Match[str], place: MatchContext) -> Hours | None:
    """Read "nineteen hours", where it is no duration."""
    return _hours(found, place) if number(found["h"]) > 12 and place.before not in ("for", "in", "after", "every") else None


def _worded(found: re.Match[str], place: MatchContext) -> Hours | None:
    return _some(hours(number(found["h"]), _MINUTES[found["minutes"].replace("-", " ")], found["part"]))


def _bare(found: re.Match[str], place: MatchContext) -> Hours | None:
    """Read a bare hour, only where one is expected: after "at", beside a part of the day, or as the answer."""
    beside = re.match(rf" ?(?:oclock )?(?:in the |at )?(?:{_PARTS})", place.after)
    if place.asked == "clock" or place.before in AT or place.before.rstrip("s") in PARTS_OF_DAY or beside:
        return _hours(found, place)
    return None


_MIN_WORDS: Final = "|".join(sorted((word.replace(" ", "[ -]") for word in _MINUTES), key=len, reverse=True))
CLOCK_ROWS: Final[tuple[PatternRow, ...]] = (
    (re.compile(r"(?:12 ?)?(?:noon|midday)" + LETTERS_END), lambda found, place: Hours((time(12),))),
    (re.compile(rf"{_HOUR}(?:[:.h]?(?P<m>\d\d))? ?(?P<part>am|pm)" + LETTERS_END), _hours),
    (re.compile(r"(?P<h>\d{1,2})(?:[:.]?(?P<m>\d\d))?(?P<half>[ap])" + LETTERS_END), _one_letter),
    (re.compile(r"(?P<h>\d{1,2})\.(?P<m>\d\d) ?(?:hrs?|h)" + NUMBER_END), _hours),
    (re.compile(rf"(?:a )?(?P<minutes>half|quarter|five|ten|twenty five|twenty)(?: minutes?)? (?P<way>past|after) {_HOUR}"
                r"(?: ?oclock)?(?: ?(?P<part>am|pm))?" + NUMBER_END), _past),
    # "five to seven" may be from five to seven; "five minutes to seven" can't.
    (re.compile(rf"(?:a )?(?P<minutes>quarter|twenty five|twenty|(?:five|ten)(?= minutes))(?: minutes?)? (?P<way>to|til|till|before) "
                rf"{_HOUR}(?: ?oclock)?(?: ?(?P<part>am|pm))?" + NUMBER_END), _past),
    (re.compile(r"(?P<h>\d{1,2})[:h](?P<m>\d\d)(?: ?(?:uhr|hrs?|oclock|h)\b)?" + NUMBER_END), _hours),
    (re.compile(rf"{_HOUR} ?(?:h|uhr|oclock)\b(?: ?(?P<part>am|pm))?" + NUMBER_END), _hours),
    (re.compile(r"(?P<h>\d\d)(?P<m>\d\d)(?: ?(?:h|hrs|hours|uhr)\b)?" + NUMBER_END), _four_digits),
    (re.compile(rf"half {_HOUR}(?: ?oclock)?(?: ?(?P<part>am|pm))?" + NUMBER_END), _half),
    (re.compile(rf"{_HOUR} (?:hundred(?: hours)?|hours|hrs)\b" + NUMBER_END), _of_24),
    (re.compile(rf"(?P<h>{'|'.join([*NUMBERS][:19])}|twenty(?= (?:ten|fifteen|twenty|thirty|forty|fifty)))"
                rf"[ -](?P<minutes>{_MIN_WORDS})(?: ?(?P<part>am|pm))?" + LETTERS_END), _worded),
    (re.compile(rf"(?:(?:in|at|during) )?(?:the |this )?(?P<name>{_PARTS})s?" + LETTERS_END),
     lambda found, place: Part(_PART_NAMES[found["name"]])),
)
LAST_CLOCK_ROWS: Final[tuple[PatternRow, ...]] = ((re.compile(_HOUR + NUMBER_END), _bare),)
_DOTTED_ROWS: Final[tuple[PatternRow, ...]] = ((re.compile(r"(?P<h>\d{1,2})\.(?P<m>\d\d)(?: ?uhr\b)?" + NUMBER_END), _hours),)

_FILLER: Final = (
    "i im am id ive like would squat squats squatting session sessions workout workouts training lift lifting gym on please pls plz so "
    "well ok okay hi hey hello thanks thank thx you ty the my a at @ um uhm er erm just want wanna let lets us me will be its day days "
    "yes yeah yep yup hmm lol haha tbh sorry actually mate around about ca circa by sharp then now both could can make take have got "
    "clock time train xx ! ? ( ) \" :")
FILLER: Final = frozenset(_FILLER.split())
"""Words that change nothing. Words that negate, ask or hedge (don't, or, if, should, maybe) are not among them."""

_ANY_WORD: Final = re.compile(r"[^\W\d_]+|\d+|\S")


def scan(text: str, rows: Sequence[PatternRow], today: date, asked: str = "", word: Callable[[str], Token | None] = Word) -> list[Token]:
    """Split a normalised line into tokens: the first row that matches at each place; other words by ``word`` (None drops one)."""
    tokens: list[Token] = []
    at, before = 0, ""
    while at < len(text):
        if text[at] == " ":
            at += 1
            continue
        for pattern, make in rows:
            found = pattern.match(text, at)
            made = make(found, MatchContext(today, before, asked, text[found.end():])) if found else None
            if found and made:
                tokens += made if isinstance(made, tuple) else (made,)
                break
        else:
            found = _ANY_WORD.match(text, at)
            assert found is not None
            if found[0] not in FILLER and (kept := word(found[0])):
                tokens.append(kept)
        before = found[0].split(" ")[-1]
        at = found.end()
    return tokens


def settled(tokens: Iterable[Token]) -> list[Token] | None:
    """Return the tokens with each part of the day applied to its time; None if they contradict each other or it is ambiguous.

    A part of the day belongs to the adjacent time, or to the only one; without any time it is dropped.
    """
    line = list(tokens)
    while (at := next((at for at, token in enumerate(line) if isinstance(token, Part)), None)) is not None:
        part = line.pop(at)
        assert isinstance(part, Part)
        times = [where for where, token in enumerate(line) if isinstance(token, Hours)]
        beside = [where for where in (at - 1, at) if where in times]
        if not times:
            continue
        if not beside and len(times) > 1:
            return None
        where = beside[0] if beside else times[0]
        said = line[where]
        assert isinstance(said, Hours)
        low, high = PARTS_OF_DAY[part.name]
        left = tuple(one for one in said.could_be if low <= one.hour <= high)
        if not left:
            return None
        line[where] = Hours(left)
    return line


def read_hours(text: str) -> tuple[time, ...]:
    """Return the times of day a reply may mean: one, two (morning first; ask which), or none.

    "18", "18h", "06:30" and "6pm" give one; "6", "6:30", "half six" and "6 Uhr" two. "24:00", "midnight" and "12 am" give none, as their
    day is unclear.
    """
    line = plain(text)
    tokens = None if line is None else settled(scan(line.rstrip(" ."), (*CLOCK_ROWS, *_DOTTED_ROWS, *LAST_CLOCK_ROWS), date.min, "clock"))
    match tokens:
        case [Hours(could_be)]:
            return could_be
    return ()


def read_part(text: str) -> str:
    """Return the part of the day, a key of ``PARTS_OF_DAY``, if a reply names that and nothing else; else ""."""
    line = (plain(text) or "").strip(" .")
    if line in ("am", "pm"):
        return line
    match scan(line, CLOCK_ROWS, date.min):
        case [Part(name)]:
            return name
    return ""


_SENSES: Final = {
    "morning": re.compile(r"\b(?:before (?:the )?(?:gym opens|work|school|breakfast|ward|office|kids (?:are up|get up|wake))|breakfast|"
                          r"coffee|sunrise|dawn|first thing|(?:when|once|after|soon as) (?:i|we) (?:wake|get) up|out of bed)\b"),
    "evening": re.compile(r"\b(?:after (?:work|tea|dinner|supper|school|the office|my shift)|bath ?time|bed ?time|(?:clock|knock) off|"
                          r"dinner|supper|sunset|(?:kids?|baby|(?:little|wee) ones?)(?: is| are|s)? (?:down|asleep|in bed|sleeping))\b")}
"""What is done in the morning and in the evening; our choice."""


def sense_of(text: str) -> str:
    """Return the part of the day that what somebody does then tells, "morning" or "evening"; "" for neither or both."""
    said = (plain(text) or "").replace("one s", "ones")
    told = [part for part, pattern in _SENSES.items() if pattern.search(said)]
    return told[0] if len(told) == 1 else ""


def read_clock(text: str) -> time | None:
    """Return the one time of day a reply means; None for none, several, or an hour without morning or evening."""
    could_be = read_hours(text)
    return could_be[0] if len(could_be) == 1 else None
