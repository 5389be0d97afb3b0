"""Typed days: weekdays (with typing mistakes), dates, "in two weeks", "every other day".

A date without a year is the next one to come. "Next Tuesday" is the Tuesday of next week, weeks starting on Monday; "this Tuesday" the
first from today on. A bare weekday that is today's is ambiguous: today, or in a week.
"""

from __future__ import annotations

import re
from datetime import date, timedelta
from typing import Final

from dateutil.relativedelta import relativedelta

from companion.calendar.plan import LONGEST_GAP
from companion.calendar.words import DAY_NAMES, MONTH_NAMES
from companion.language.days.times import (
    AT,
    CLOCK_ROWS,
    LAST_CLOCK_ROWS,
    NUMBER,
    NUMBER_END,
    Frequency,
    Hours,
    MatchContext,
    Part,
    PatternRow,
    SingleDate,
    Span,
    Token,
    Week,
    Weekdays,
    Word,
    hours,
    number,
    plain,
    scan,
)
from companion.language.slips import nearest_word

FARTHEST: Final = timedelta(days=366)
"""Furthest a date may be ahead; our choice."""

_DAYS: Final = {name.casefold(): day for day, name in enumerate(DAY_NAMES)}
_SHORT_DAYS: Final = {"mon": 0, "tue": 1, "tues": 1, "wed": 2, "weds": 2, "thu": 3, "thur": 3, "thurs": 3, "fri": 4, "sat": 5, "sun": 6}
_SHORT_MANY: Final = {"mons": 0, "fris": 4, "sats": 5, "suns": 6}
_TWO_LETTERS: Final = ("mo", "tu", "we", "th", "fr", "sa", "su")
_WEAK: Final = frozenset(["mon", "wed", "sat", "sun", "suns"])
_MONTHS: Final = {name.casefold(): month for month, name in enumerate(MONTH_NAMES, 1)}
_SHORT_MONTHS: Final = {name[:3]: month for name, month in _MONTHS.items()} | {"sept": 9}
_NO_SLIP: Final = frozenset(["sundry"])

FEASTS: Final = {
    **dict.fromkeys(("christmas", "xmas", "christmas day"), (12, 25)), "christmas eve": (12, 24), "boxing day": (12, 26),
    **dict.fromkeys(("new year", "new years", "the new year", "new year's", "new years day", "new year day"), (1, 1)),
    **dict.fromkeys(("new years eve", "new year eve"), (12, 31)), "halloween": (10, 31),
    **dict.fromkeys(("valentines", "valentines day", "valentine day"), (2, 14))}
"""Feasts that have a date of their own: month and day."""

_PAST: Final = "That day has passed."
_FAR: Final = "That is more than a year ahead."
_NO_DATE: Final = "There is no such date."
NO_TIME_BETWEEN: Final = "That ends before it begins."
_ORDER: Final = "I can't tell day and month apart there. Write the month as a word, please."
_NOT_THAT_DAY: Final = "That date is another day of the week."
_DATE_OR_TIME: Final = "I can't tell whether that is a date or a time. Write 18:10 or 18 October, please."
_TWO_FROM: Final = 8
"""Letters from which the name of a day or month may be two slips off."""


def weekday(word: str) -> Weekdays | None:
    """Return the weekday a single word names, forgiving a typing mistake if only one day is close."""
    if word in _SHORT_DAYS:
        return Weekdays((_SHORT_DAYS[word],), weak=word in _WEAK)
    if word in _SHORT_MANY:
        return Weekdays((_SHORT_MANY[word],), many=True, weak=word in _WEAK)
    if word in _DAYS:
        return Weekdays((_DAYS[word],))
    single = word.removesuffix("s")
    if len(single) < 5 or "y" not in single[-3:] or single in _NO_SLIP or not single.isascii():
        return None
    day = single if single in _DAYS else nearest_word(single, _DAYS, _TWO_FROM)
    return None if day is None else Weekdays((_DAYS[day],), many=word.endswith("s"))


def _month(word: str) -> int | None:
    if len(word) < 6 or word in _MONTHS or word in _SHORT_MONTHS:
        return _MONTHS.get(word) or _SHORT_MONTHS.get(word)
    return _MONTHS.get(nearest_word(word, _MONTHS, _TWO_FROM) or "")


def _reachable(day: date, today: date, fixed: bool = True) -> SingleDate:
    why = _PAST if day < today else _FAR if day > today + FARTHEST else ""
    return SingleDate(None if why else day, why, fixed)


def _dated(day: int, month: int, year: str | None, today: date) -> SingleDate:
    """Return the date of these numbers; without a year, the next one to come."""
    if not 1 <= month <= 12:
        return SingleDate(None, _NO_DATE)
    try:
        if year:
            return _reachable(date(int(year) % 2000 + 2000, month, day), today)
        this_year = date(today.year, month, day)
        return _reachable(this_year if this_year >= today else date(today.year + 1, month, day), today)
    except ValueError:
        return SingleDate(None, _NO_DATE)


def _feast(found: re.Match[str], place: MatchContext) -> SingleDate:
    month, day = FEASTS[found[0]]
    return _dated(day, month, None, place.today)


def _beside(found: re.Match[str], place: MatchContext) -> Weekdays | None:
    """Read "the one after Wednesday" and "the day before Sunday"."""
    day = weekday(found["day"])
    return None if day is None or day.many else Weekdays(((day.days[0] + (1 if found["way"] == "after" else -1)) % 7,))


def _iso(found: re.Match[str], place: MatchContext) -> SingleDate:
    return _dated(int(found["day"]), int(found["month"]), found["year"], place.today)


def _slashed(found: re.Match[str], place: MatchContext) -> SingleDate:
    first, second = int(found["a"]), int(found["b"])
    if first <= 12 and second <= 12 and first != second:
        return SingleDate(None, _ORDER)
    return _dated(*((second, first) if second > 12 else (first, second)), found["year"], place.today)


def _named(found: re.Match[str], place: MatchContext) -> SingleDate | None:
    """Read "Jan 3 2027". A distant year may be a time ("jan 3 2000") and is left to the row without a year."""
    year, month = found.groupdict().get("year"), _month(found["month"])
    if month is None or (year and abs(int(year) - place.today.year) > 3):
        return None
    return _dated(int(found["day"]), month, year, place.today)


_BEFORE_DATE: Final = frozenset(["until", "til", "till", "untill", "bis", "on", "the", "from", "start", "starting"])


def _dotted(found: re.Match[str], place: MatchContext) -> SingleDate | Hours | None:
    """Read "3.1." as a date, "18.00" as a time; if it may be both, the word before it decides, or it is unclear."""
    a, b = int(found["a"]), int(found["b"])
    could_be = hours(a, b, None, found["a"].startswith("0") or a == 12) if len(found["b"]) == 2 and not found["year"] else ()
    a_date = 1 <= a <= 31 and 1 <= b <= 12
    if could_be and (not a_date or found["uhr"] or place.before in AT):
        return Hours(could_be)
    if not a_date:
        return SingleDate(None, _NO_DATE)
    inside = found[0].rstrip().endswith(".") and place.after.strip(" .!")  # the dot does not end a sentence, so it belongs to a date
    if not could_be or place.asked == "date" or inside or place.before in _BEFORE_DATE:
        return _dated(a, b, found["year"], place.today)
    return SingleDate(None, _DATE_OR_TIME)


def _of_month(found: re.Match[str], place: MatchContext) -> SingleDate:
    """Read "the 14th" as the next one to come."""
    months = (place.today.replace(day=1) + relativedelta(months=ahead) for ahead in range(3))
    for month in months:
        day = month + relativedelta(day=int(found["day"])) if 1 <= int(found["day"]) <= 31 else month
        if day.day == int(found["day"]) and day >= place.today:
            return SingleDate(day, fixed=True)
    return SingleDate(None, _NO_DATE)


def _days_of_month(found: re.Match[str], place: MatchContext) -> tuple[Token, ...] | None:
    """Read "10 to 20 March", both days in that month. A first day in the past becomes today."""
    month, year = _month(found["month"]), found.groupdict().get("year")
    if month is None or (year and abs(int(year) - place.today.year) > 3):
        return None
    last, how = _dated(int(found["last"]), month, year, place.today), Word(found["how"])
    if last.day is None:
        return (last,)
    if not 1 <= int(found["day"]) < last.day.day:
        return (SingleDate(None, NO_TIME_BETWEEN),)
    return SingleDate(max(last.day.replace(day=int(found["day"])), place.today), fixed=True), how, last


def _count(amount: str) -> int:
    return 1 if amount in ("a", "an") else 2 if amount == "a couple of" else number(amount)


def _later(amount: str, unit: str, today: date) -> date:
    count = _count(amount)
    return today + relativedelta(months=count) if unit == "month" else today + timedelta(days=count * (7 if unit == "week" else 1))


def _ahead(found: re.Match[str], place: MatchContext) -> SingleDate:
    amount, unit = ("two", "week") if found["fortnight"] else (found["amount"], found["unit"])
    return _reachable(_later(amount, unit, place.today), place.today, fixed=False)


def _span(found: re.Match[str], place: MatchContext) -> Span:
    amount, unit = ("two", "week") if found["fortnight"] else (found["amount"], found["unit"])
    return Span(_later(amount, unit, place.today), loose=unit == "day" and not found[0].startswith("for "),
                months=_count(amount) if unit == "month" else 0)


def _week(found: re.Match[str], place: MatchContext) -> Week:
    first = monday_after(place.today)
    return Week(first, first + timedelta(days=7) if found[0] == "next week" else None)


def _coming_month(found: re.Match[str], place: MatchContext) -> Week:
    first = place.today + relativedelta(months=1, day=1)
    return Week(first, first + relativedelta(months=1) if found[0] == "next month" else None)


def monday_after(today: date) -> date:
    """Return the first day of next week."""
    return today + timedelta(days=7 - today.weekday())


def following(day: int, today: date) -> date:
    """Return the first such weekday after today."""
    return today + timedelta(days=(day - today.weekday() - 1) % 7 + 1)


def nearest(day: int, moved: date, today: date) -> date:
    """Return the weekday meant when a squat day is moved: later in its own week, as Thursday for Tuesday; else the closest from today
    on, as Monday for Sunday, or Tuesday for Friday. Our choice; a move is confirmed and can be undone."""
    ahead = (day - moved.weekday()) % 7
    before = moved + timedelta(days=ahead - 7)
    return before if day < moved.weekday() and ahead > 3 and before >= today else moved + timedelta(days=ahead)


def _which(found: re.Match[str], place: MatchContext) -> SingleDate | tuple[Token, ...] | None:
    day = weekday(found["day"])
    if day is None:
        return None
    if found["which"] == "last":
        return SingleDate(None, _PAST)
    if day.many:
        return None
    if found["which"] == "next":
        return SingleDate(monday_after(place.today) + timedelta(days=day.days[0]))
    return SingleDate(following(day.days[0], place.today - timedelta(days=1)))


def _every(found: re.Match[str], place: MatchContext) -> Frequency | None:
    got = found.groupdict()
    count = {"third": 3, "fourth": 4, "fifth": 5}.get(got["nth"]) if got.get("nth") else None
    count = count or number(re.sub(r"(?<=\d)\D+", "", got.get("nth") or got["count"]))
    count *= 7 if got.get("unit") == "week" else 1
    return Frequency(count) if 1 <= count <= LONGEST_GAP else None


def _times(found: re.Match[str], place: MatchContext) -> Frequency:
    return Frequency(times={"once": 1, "twice": 2}.get(found["count"]) or number(found["count"]))


def _both_letters(found: re.Match[str], place: MatchContext) -> Weekdays:
    return Weekdays(tuple(_TWO_LETTERS.index(two) for two in re.findall(r"[a-z]+", found[0]) if two != "and"))


_YEAR: Final = r",? (?P<year>20\d\d)"
_AMOUNT: Final = rf"(?:(?P<fortnight>a fortnight)|(?P<amount>{NUMBER}|an?|a couple of) (?P<unit>day|week|month)s?)"
_TOMORROW: Final = r"(?:tomorr?ow|tommorr?ow|tomorow|tomorro|tmrw|tmr|tmrrw|tomoz|tomoro|2moro|2morrow|tmw)"
_TODAY: Final = r"(?:today|tdoay|toady|2day)"
_TWO: Final = rf"(?:{'|'.join(_TWO_LETTERS)})"
_DOTTED: Final = (r"(?P<a>\d{1,2})\.(?P<b>\d{1,2})(?:\. ?(?P<year>20\d\d|\d\d(?!\d))?(?!\d| ?uhr)"
                  r"|(?P<uhr> ?uhr\b)?" + NUMBER_END + r")(?! ?(?:[ap]m|hrs?|h)\b)")
_EVERY: Final = r"(?:every|each) "
_E: Final = r"(?!\w)"
_FROM_TO: Final = (r"(?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th)? ?(?P<how>-|to|until|till?|through|thru) ?"
                   r"(?:the )?(?P<last>\d{1,2})(?:st|nd|rd|th)?")

DATE_ROWS: Final[tuple[PatternRow, ...]] = (
    (re.compile(r"(?P<year>20\d\d)-(?P<month>\d\d)-(?P<day>\d\d)" + NUMBER_END), _iso),
    (re.compile(_FROM_TO + r"(?: of)? (?P<month>[a-z]{3,9})\.?" + _YEAR + NUMBER_END), _days_of_month),
    (re.compile(_FROM_TO + r"(?: of)? (?P<month>[a-z]{3,9})\.?" + NUMBER_END), _days_of_month),
    (re.compile(r"(?P<month>[a-z]{3,9})\.? " + _FROM_TO + _YEAR + NUMBER_END), _days_of_month),
    (re.compile(r"(?P<month>[a-z]{3,9})\.? " + _FROM_TO + NUMBER_END), _days_of_month),
    (re.compile(r"(?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th|\.)?(?: of)? (?P<month>[a-z]{3,9})\.?" + _YEAR + NUMBER_END), _named),
    (re.compile(r"(?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th|\.)?(?: of)? (?P<month>[a-z]{3,9})\.?" + NUMBER_END), _named),
    (re.compile(r"(?P<month>[a-z]{3,9})\.? (?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th)?" + _YEAR + NUMBER_END), _named),
    (re.compile(r"(?P<month>[a-z]{3,9})\.? (?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th)?" + NUMBER_END), _named),
    (re.compile(r"(?P<a>\d{1,2})/(?P<b>\d{1,2})(?:/(?P<year>20\d\d|\d\d))?" + NUMBER_END), _slashed),
    (re.compile(_DOTTED), _dotted),
    (re.compile(r"(?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th)" + _E), _of_month),
    (re.compile(r"the (?P<day>\d{1,2})(?= ?(?:$|[,!?)]|\.(?!\d)))"), _of_month),
    (re.compile(r"(?:the )?day after tomorrow" + _E), lambda found, place: SingleDate(place.today + timedelta(days=2))),
    (re.compile(r"(?:the )?(?:day|one) (?P<way>before|after) (?P<day>[a-z]+)" + _E), _beside),
    (re.compile(r"(?:the )?(?P<which>first|last) day of the weekend" + _E),
     lambda found, place: Weekdays((5 if found["which"] == "first" else 6,))),
    (re.compile(f"(?:{'|'.join(sorted(FEASTS, key=len, reverse=True))})" + _E), _feast),
    (re.compile(_TOMORROW + _E), lambda found, place: SingleDate(place.today + timedelta(days=1))),
    (re.compile(_TODAY + _E), lambda found, place: SingleDate(place.today)),
    (re.compile(r"tonight" + _E), lambda found, place: (SingleDate(place.today), Part("evening"))),
    (re.compile(r"this (?P<part>morning|afternoon|evening)" + _E), lambda found, place: (SingleDate(place.today), Part(found["part"]))),
    (re.compile(r"yesterday" + _E), lambda found, place: SingleDate(None, _PAST)),
    (re.compile(r"in " + _AMOUNT + r"(?: time)?" + _E), _ahead),
    (re.compile(_AMOUNT + r" from (?:now|today)" + _E), _ahead),
    (re.compile(r"(?P<day>[a-z]+) (?:of )?(?P<which>next) week" + _E), _which),
    (re.compile(r"(?P<which>next) week,? (?:on )?(?P<day>[a-z]+)" + _E), _which),
    (re.compile(r"(?P<day>[a-z]+) (?P<which>this) week" + _E), _which),
    (re.compile(r"(?P<which>this coming|this|coming|next|last) (?P<day>[a-z]+)" + _E), _which),
    (re.compile(r"(?:early |the (?:start|beginning) of )?next week" + _E), _week),
    (re.compile(r"after (?:the|this) weekend" + _E), lambda found, place: Week(monday_after(place.today))),
    (re.compile(r"(?:the (?:start|beginning) of )?next month" + _E), _coming_month),
)
"""Single dates, and weeks ahead."""

DAY_ROWS: Final[tuple[PatternRow, ...]] = (
    (re.compile(rf"(?P<count>once|twice|{NUMBER})(?: ?x| times?| days)? ?(?:a|per|each|every|/) ?week(?:ly)?" + _E), _times),
    (re.compile(r"(?:every(?: single)? ?|each )day" + _E + "|daily" + _E), lambda found, place: Frequency(1)),
    (re.compile(_EVERY + r"(?P<part>morning|afternoon|evening|night)" + _E), lambda found, place: (Frequency(1), Part(found["part"]))),
    (re.compile(_EVERY + r"(?:other|second|2nd|alternate) day" + _E + r"|alternat(?:e|ing) days" + _E), lambda found, place: Frequency(2)),
    (re.compile(_EVERY + r"(?P<nth>third|fourth|fifth|\d{1,2}(?:rd|th|st|nd)) day" + _E), _every),
    (re.compile(rf"every (?P<count>{NUMBER}) (?P<unit>day|week)s?" + _E), _every),
    (re.compile(r"every (?:other|second|2nd) week" + _E + r"|every fortnight" + _E + "|fortnightly" + _E),
     lambda found, place: Frequency(14)),
    (re.compile(r"(?:every|each) week" + _E + "|weekly" + _E), lambda found, place: Word("weekly")),
    (re.compile(r"(?:for )?(?:the )?(?:next |another )?" + _AMOUNT + r"(?! (?:on|before|after|ago|later|earlier))" + _E), _span),
    (re.compile(r"(?:(?:for )?(?:the )?rest of )?(?:the |this )week" + _E), lambda found, place: Span(monday_after(place.today))),
    (re.compile(r"(?:every |on )?(?:week|work) ?days?" + _E), lambda found, place: Weekdays((0, 1, 2, 3, 4), many=True)),
    (re.compile(r"(?:every |at |on )?(?:the )?weekend(?P<s>s)?" + _E), lambda found, place: Weekdays((5, 6), many=bool(found["s"]))),
    (re.compile(r"m ?/? ?w ?/? ?f" + _E), lambda found, place: Weekdays((0, 2, 4))),
    (re.compile(rf"{_TWO}\.?(?:(?: ?[,/+&-] ?| and | ){_TWO}\.?(?!\w))+" + _E), _both_letters),
    (re.compile(r"(?:i|we|he|she|you|they|who|just|the) (?:sat|sun|wed)" + _E), lambda found, place: Word("✗")),
)
"""Days of a rule, and durations."""

def day_or_word(text: str) -> Token | None:
    """Return a weekday, or the word itself."""
    return weekday(text) or Word(text)


def read_date(text: str, today: date) -> date | None:
    """Return the one date a reply means, from today to a year ahead; None if it gives none or several, or a past or unclear one.

    "Next week" and "after the weekend" mean their Monday. "3/1" is unclear, "13/1" is not. A weekday beside a date must fit it.
    """
    line = plain(text)
    if line is None:
        return None
    tokens = scan(line.rstrip(" ."), (*DATE_ROWS, *DAY_ROWS), today, "date", day_or_word)
    match [token for token in joined(tokens) if token != Word(",")]:
        case [SingleDate(day)]:
            return day
        case [Week(first)]:
            return first
        case [Weekdays((day,), many=False)] if day != today.weekday():
            return following(day, today)
    return None


def joined(tokens: list[Token]) -> list[Token]:
    """Return the tokens with "Friday the 27th" joined into one date."""
    line: list[Token] = []
    for token in tokens:
        before = line[-2:] if line and line[-1] == Word(",") else line[-1:]
        if isinstance(token, SingleDate) and token.fixed and before and isinstance(before[0], Weekdays) and not before[0].many:
            fits = token.day is None or (token.day.weekday(),) == before[0].days
            line[-len(before):] = [token if fits else SingleDate(None, _NOT_THAT_DAY)]
        else:
            line.append(token)
    return line


DAY_AND_TIME_ROWS: Final[tuple[PatternRow, ...]] = (*DATE_ROWS, *DAY_ROWS, *CLOCK_ROWS, *LAST_CLOCK_ROWS)
"""All rows, for lines with both days and times."""
