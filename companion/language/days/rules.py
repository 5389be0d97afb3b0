"""Typed rules of squat days: "Tuesdays and Fridays at 6pm", "every other day at 18:00 starting tomorrow".

A line is split into tokens; its shape, one letter per token, decides its meaning. If only one part of an otherwise clear line is missing
(the time, morning or evening, the first day) the result is an ``IncompleteChange``, so that only that is asked for.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, time, timedelta
from typing import Final, Literal

from companion.calendar.plan import WEEKDAYS, EveryNDays, PlanChange, Weekly, change_of
from companion.language.days.dates import DAY_AND_TIME_ROWS, day_or_word, following, joined, read_date
from companion.language.days.times import (
    PARTS_OF_DAY,
    Frequency,
    Hours,
    SingleDate,
    Span,
    Token,
    Week,
    Weekdays,
    Word,
    hours,
    plain,
    read_hours,
    read_part,
    scan,
    settled,
)

_NO_TIME: Final = "??:??"
_NO_DAY: Final = "????-??-??"
_HALF_TIME: Final = re.compile(r"(\d\d:\d\d)\?")


@dataclass(frozen=True, slots=True)
class IncompleteChange:
    """A change with a part missing.

    ``open``: the change's text (``plan.change_of``) with gaps: "??:??" for a missing time, "06:30?" for one without morning or evening
    (the morning one), "????-??-??" for the first day of "every other day", or after a pause. Can be stored as it is.
    """

    open: str

    @property
    def wants(self) -> Literal["half", "time", "day"]:
        """The part to ask for next: morning or evening, a time, or the first day."""
        return "half" if _HALF_TIME.search(self.open) else "time" if _NO_TIME in self.open else "day"

    @property
    def could_be(self) -> tuple[time, ...]:
        """The two times, morning first, of an hour without morning or evening; () if there is none."""
        found = _HALF_TIME.search(self.open)
        return _both(found) if found else ()

    def __str__(self) -> str:
        return self.open


def _both(found: re.Match[str]) -> tuple[time, time]:
    morning = time.fromisoformat(found[1])
    return morning, morning.replace(hour=morning.hour + 12)


def made(text: str) -> PlanChange | IncompleteChange | None:
    """Parse a stored change, or an incomplete one; None if the text is neither."""
    filled = _HALF_TIME.sub(r"\1", text).replace(_NO_TIME, "00:00").replace(_NO_DAY, "2000-01-01")
    change = change_of(filled)
    return change if filled == text or change is None else IncompleteChange(text)


def read_rest(half: IncompleteChange, text: str, today: date) -> PlanChange | IncompleteChange | None:
    """Return a change completed by a reply ("evening", "18:00", "tomorrow"); None if the reply is unclear."""
    if half.wants == "day":
        day = read_date(text, today)
        return made(half.open.replace(_NO_DAY, day.isoformat())) if day else None
    times, part = read_hours(text), read_part(text)
    if half.wants == "time":
        return made(half.open.replace(_NO_TIME, written(times))) if times else None
    if part:
        low, high = PARTS_OF_DAY[part]
        return made(_HALF_TIME.sub(lambda hole: next((f"{at:%H:%M}" for at in _both(hole) if low <= at.hour <= high), hole[0]), half.open))
    if len(times) == 1 and len(_HALF_TIME.findall(half.open)) == 1:
        return made(_HALF_TIME.sub(written(times), half.open))
    return None


def written(times: tuple[time, ...]) -> str:
    """Return a time as changes write it, with "?" if there are two, or the gap for a missing time."""
    return f"{times[0]:%H:%M}" + "?" * (len(times) - 1) if times else _NO_TIME


_PHRASES: Final = {
    "s": "skip,leave out,drop,miss,scrap,not,cant,cannot,can not,cant squat,cant do,cant make,cant make it,"
         "cant do it,cant train,wont,will not,wont make,wont make it,wont squat,wont be squatting,not squatting,"
         "no squat,no squats,no squatting,no session,no training,no more,off,day off,is off,not going to squat,"
         "not gonna squat,not going to make it,not gonna make it,not going to make,not gonna make,rest day,"
         "not able to squat,unable to squat",
    "c": "cancel,delete,remove,clear,stop,end,quit",
    "a": "all,everything,all of them,all of it,the whole plan,whole plan,plan,the lot",
    "m": "move,shift,reschedule,push,change,switch,swap,replace,postpone",
    ">": "to,onto,through,thru",
    "4": "for,with,into",
    "b": "but,rather",
    "i": "instead",
    "j": "instead of,in place of,rather than",
    "+": "also,as well,too,extra,an extra,additional,add,additionally,and also,"
         "squeeze in,fit in,throw in,slot in",
    "p": "pause,holiday,holidays,on holiday,on holidays,vacation,on vacation,away,travelling,traveling,break,a break,"
         "take a break,sick,freeze,on a break,im ill,i am ill,ill in bed,out of town",
    "u": "until,til,till,untill,bis,up to",
    "k": "start again,start squatting again,start lifting again,start training again,restart,resume,continue,carry on",
    "h": "back,back again,back under the bar,back at it",
    "x": "no more squat days,no more squats,no more squatting,no more sessions,no more training,"
         "cancel my squat days,stop my squat days,end my squat days,delete my squat days,remove my squat days,"
         "stop squat day reminders,stop my squat day reminders,stop squat reminders,stop my squat reminders",
    "r": "im back,i am back,back from holiday,back from vacation,im back from holiday,im back from vacation,unpause,"
         "end the pause,end pause,stop the pause,stop pause,pause over,pause is over",
    "f": "from,starting,starting from,starting on,start,beginning,begin,as of,first one,first",
    "l": "only",
    "g": "from now on,new plan,new days",
    "e": "except,except for,but not,apart from",
    "&": "and,an,plus,+,&,und,n",
    ",": ",,/,;,.",
    "-": "-",
    "w": "weekly,usually,normally,generally,typically,always",
    "N": "it,this one,the next one,next one,this session,the next session,next session,this squat day,"
         "the next squat day,next squat day,my next squat day,my next session,the next squat,next squat,that next one",
    "": "want to,like to,going to,gonna,need to,have to,plan to,i think,i guess,squat days are,my days are,days are,"
         "squat day is,lets do,i do,we do,book me in,in,do,do it,"
         "dont ask,my shift,could you,can you,would you,will you,can we,could we,we squat",
}
"""Code of each word or phrase in a line's shape, one letter; "" if it changes nothing."""

_CODES: Final = {phrase: code for code, phrases in _PHRASES.items() for phrase in phrases.split(",") if phrase} | {",": ","}
_PHRASE_ROWS: Final = (
    # A question is no order; a back squat is an exercise; somebody who is off on Friday may well squat.
    (re.compile(r"(?:have|has|am|will|would|do|did|does|is|are|was|should|shall|must) (?:i|we|they|my|the|it|this|that)(?!\w)"
                r"|back (?:squat\w*|sessions?|days?|workouts?|training)(?!\w)|(?:im|i am) off(?!\w)"),
     lambda found, place: Word("✗")),
    (re.compile("(?:" + "|".join(re.escape(phrase) for phrase in sorted(_CODES, key=len, reverse=True) if " " in phrase) + r")(?!\w)"),
     lambda found, place: Word(found[0])),
)
_LETTERS: Final = {Hours: "T", SingleDate: "D", Frequency: "E", Week: "K", Span: "F"}


@dataclass(frozen=True, slots=True)
class ScannedLine:
    """A line's tokens and its shape, one letter each: T a time, D a date, W a weekday, V every such weekday, N the next squat day, E an
    interval of days, C so often a week, K a week ahead, F a duration, "?" unknown."""

    tokens: tuple[Token, ...]
    shape: str

    @property
    def times(self) -> tuple[time, ...]:
        """The times the first named time may mean; () if none is named."""
        return next((token.could_be for token in self.tokens if isinstance(token, Hours)), ())

    def since(self, place: int) -> ScannedLine:
        """Return the part of the line from a place on."""
        return ScannedLine(self.tokens[place:], self.shape[place:])

    def without(self, letters: str) -> ScannedLine:
        """Return the line without the tokens of these letters."""
        kept = [(token, letter) for token, letter in zip(self.tokens, self.shape, strict=True) if letter not in letters]
        return ScannedLine(tuple(token for token, _ in kept), "".join(letter for _, letter in kept))


def _letter(token: Token) -> str:
    match token:
        case Word(text):
            return _CODES.get(text, "?")
        case Weekdays(days, many):
            return "V" if many else "W" if len(days) == 1 else "U"
        case Frequency(times=times) if times:
            return "C"
    return _LETTERS.get(type(token), "?")


def _every_day_named(tokens: list[Token]) -> list[Token]:
    """Return "every Tuesday and Friday" as "Tuesdays and Fridays"."""
    line: list[Token] = []
    many = False
    for place, token in enumerate(tokens):
        if token in (Word("every"), Word("each")) and any(isinstance(after, Weekdays) for after in tokens[place + 1:place + 2]):
            many = True
            continue
        if isinstance(token, Weekdays):
            token = Weekdays(token.days, many=many or token.many, weak=token.weak)
        elif not (isinstance(token, Word) and _letter(token) in ("&", ",")):
            many = False
        line.append(token)
    return line


def _hour_last(tokens: list[Token]) -> list[Token]:
    """Read a bare number at the end of a rule's days ("tue and fri 6", "Saturdays 10") as an hour.

    After a single weekday it may be a date ("Sat 10") and stays a word.
    """
    if len(tokens) < 2 or not isinstance(tokens[-1], Word) or not re.fullmatch(r"\d{1,2}", tokens[-1].text):
        return tokens
    days = [token for token in tokens[:-1] if isinstance(token, Weekdays | Frequency)]
    rest = [token for token in tokens[:-1] if token not in days and _letter(token) not in ("&", ",", "w", "l", "g", "")]
    rule = len(days) > 1 or any(isinstance(day, Frequency) or day.many or len(day.days) > 1 for day in days)
    could_be = hours(int(tokens[-1].text), 0, None)
    if rest or not rule or not could_be or not isinstance(tokens[-2], Weekdays | Frequency):
        return tokens
    return [*tokens[:-1], Hours(could_be)]


_HEDGING: Final = "if unless or maybe perhaps might not no never dont doesnt didnt cant wont isnt except but only until till should could"
_HEDGES: Final = frozenset(_HEDGING.split())
_JOINS: Final = r"before|after|when|once|while|whilst|as|so that|where|because|cause|cos|cuz|coz|since"
_REASONS: Final = re.compile(r"(?:because|cause|cos|cuz|coz|since) ")
_PIECE: Final = re.compile(rf"\s*[,;]\s*|\s+(?=(?:{_JOINS}) )")


def without_asides(text: str, today: date, reasons: bool = False, orders: bool = True) -> str:
    """Return a line without the pieces that say no more than the circumstances: "sunday at ten when her dad has her" → "sunday at ten".

    A piece with a day, a time, a number, a doubt or a condition stays, and so does one that gives an order, unless only a day is asked
    for. ``reasons``: leave out only pieces that begin with because."""
    kept, rows = list[str](), (*(_PHRASE_ROWS if orders else ()), *DAY_AND_TIME_ROWS)
    for piece in _PIECE.split(plain(text) or ""):
        words = set(piece.split())
        tokens = scan(piece, rows, today, word=day_or_word)
        empty = all(isinstance(token, Word) and (not orders or _letter(token) in "?&4") for token in tokens)
        if not empty or not tokens or words & _HEDGES or any(map(str.isdigit, piece)) or (reasons and not _REASONS.match(piece)):
            kept.append(piece)
    return re.sub(rf", (?=(?:{_JOINS}) )", " ", ", ".join(kept))


def line_of(text: str, today: date) -> ScannedLine | None:
    """Return a line's tokens and shape; None if it is too long, or times and parts of the day don't fit."""
    short = plain(text)
    if short is None:
        return None
    tokens = settled(_hour_last(_every_day_named(joined(scan(short, (*_PHRASE_ROWS, *DAY_AND_TIME_ROWS), today, word=day_or_word)))))
    if tokens is None:
        return None
    tokens = [token for token in tokens if _letter(token) != ""]
    return ScannedLine(tuple(tokens), "".join(map(_letter, tokens)))


def read_days(text: str, today: date) -> Weekly | EveryNDays | IncompleteChange | None:
    """Return the rule a line gives: weekdays with their times, or an interval; a time or first day may be missing.

    None if there is none, if it gives single dates, or if a word is not understood. "Twice a week" alone names no day. A dash makes a
    range only if it can mean nothing else (Mon-Fri). Days take the next time after them ("Tue Fri 18:00"); a day after the last time has
    none.
    """
    line = line_of(text, today)
    return rule_of(line, today) if line else None


def rule_of(line: ScannedLine, today: date) -> Weekly | EveryNDays | IncompleteChange | None:
    """Return the rule of a scanned line, as ``read_days`` does."""
    line = line.without(",&lgw")
    if re.fullmatch(r"[^-]*W-W(-W)+[^-]*", line.shape):
        line = line.without("-")
    start: date | None = None
    unclear = False
    if found := re.search(r"f[DWK](?=T?$)|^f[DWK](?![>-])", line.shape):
        start = _first_day(said := line.tokens[found.end() - 1], today)
        if start is None and not isinstance(said, Weekdays):
            return None
        unclear = start is None  # today's weekday: today, or next week
        rest = line.tokens[: found.start()] + line.tokens[found.end():]
        line = ScannedLine(rest, line.shape[: found.start()] + line.shape[found.end():])
    if found := re.fullmatch(r"(?P<early>T?)E(?P<late>T?)", line.shape):
        if found["early"] and found["late"]:
            return None
        often = next(token.days for token in line.tokens if isinstance(token, Frequency))
        first = (today if often == 1 and not unclear else None) if start is None else start
        return _a_rule(f"every {often} {written(line.times)} {first or _NO_DAY}")
    rows = _day_rows(line)
    if not rows or unclear or (start and any(following(day, today - timedelta(days=1)) < start for day in rows)):
        return None  # a weekly rule has no first day, so "from" is allowed only if it changes nothing
    return _a_rule("weekly " + ",".join(f"{WEEKDAYS[day]}={written(times)}" for day, times in sorted(rows.items())))


def _a_rule(text: str) -> Weekly | EveryNDays | IncompleteChange | None:
    rule = made(text)
    return rule if isinstance(rule, Weekly | EveryNDays | IncompleteChange) else None


def _first_day(token: Token, today: date) -> date | None:
    match token:
        case SingleDate(day):
            return day
        case Week(first):
            return first
        case Weekdays((day,)) if day != today.weekday():
            return following(day, today)
    return None


def _day_rows(line: ScannedLine) -> dict[int, tuple[time, ...]]:
    """Return each weekday of a line with its possible times, () for none; empty if the line is no list of weekdays."""
    shape, tokens = line.shape, line.tokens
    if re.fullmatch(r"E[e][WVU]+T?|E?T[e][WVU]+", shape):
        if not any(token == Frequency(1) for token in tokens):
            return {}
        left = {day for token in tokens if isinstance(token, Weekdays) for day in token.days}
        return {day: line.times for day in range(7) if day not in left}
    if re.fullmatch(r"T?f?[WV][->][WV]T?", shape) and shape.count("T") <= 1:
        first, last = (token.days[0] for token in tokens if isinstance(token, Weekdays))
        if last - first < 2 or ("-" in shape and (first, last) not in ((0, 4), (0, 5), (0, 6))):
            return {}
        return dict.fromkeys(range(first, last + 1), line.times)
    if not (found := re.fullmatch(r"(C?)((?:[WVU]+T)*[WVU]*|(?:T[WVU]+)+)(C?)", shape)) or not found[2]:
        return {}
    rows: list[tuple[int, tuple[time, ...]]] = []
    waiting: list[int] = []
    time_first: tuple[time, ...] = ()
    for token in tokens:
        match token:
            case Hours(could_be) if found[2].startswith("T"):
                time_first = could_be
            case Hours(could_be):
                rows += [(day, could_be) for day in waiting]
                waiting = []
            case Weekdays(days) if found[2].startswith("T"):
                rows += [(day, time_first) for day in days]
            case Weekdays(days):
                waiting += days
    rows += [(day, ()) for day in waiting]
    named = dict(rows)
    count = next((token.times for token in tokens if isinstance(token, Frequency)), len(named))
    only = tokens[0]
    doubtful = len(tokens) == 1 and isinstance(only, Weekdays) and only.weak
    return {} if len(named) != len(rows) or count != len(named) or doubtful else named
