"""Typed changes to squat days: a plan ("Tuesdays and Fridays at 6pm"), or a change to one ("skip this one").

Nothing is guessed: a line is read only if every word is understood, and an unclear one is asked again.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, time, timedelta
from typing import Final

from dateutil.relativedelta import relativedelta

from companion.calendar.plan import WEEKDAYS, EveryNDays, Plan, PlanChange, Weekly, is_squat_day, next_days
from companion.calendar.words import DAY_NAMES, MONTH_NAMES, date_words
from companion.language.days.dates import FARTHEST, NO_TIME_BETWEEN, following, nearest, read_date
from companion.language.days.rules import IncompleteChange, ScannedLine, line_of, made, read_days, read_rest, rule_of, written
from companion.language.days.times import Hours, SingleDate, Span, Token, Week, Weekdays, read_clock, read_hours

__all__ = ["IncompleteChange", "UnclearChange", "read_change", "read_clock", "read_date", "read_days", "read_hours", "read_rest"]


@dataclass(frozen=True, slots=True)
class UnclearChange:
    """A line that could not be read, with a short reason shown before asking again."""

    reason: str


_NOT_READ: Final = UnclearChange("I could not read that as a change to your squat days.")
_NO_DAYS_READ: Final = UnclearChange("I could not read that as squat days.")
_WHICH_TODAY: Final = "It is {day} today. Do you mean today, or next week? Say “today” or the date, please."
_NONE_PLANNED: Final = UnclearChange("No squat day is planned.")
_OF_REMINDERS: Final = UnclearChange("For the reminders alone, say “reminder times”; the squat days stay. To end those, say “stop all”.")
_ONE_AT_A_TIME: Final = UnclearChange("One squat day at a time, please.")
_UNTIL_WHEN: Final = UnclearChange("Until when? Say “pause until 3 January” or “pause for two weeks”.")
_FROM_WHEN: Final = UnclearChange("From when until when? Say “away 10 to 20 March”, or “skip Friday” for one day.")
_ENDS_FIRST: Final = UnclearChange(NO_TIME_BETWEEN)
_ALL_THAT_STAY: Final = UnclearChange("For every week, name all the days that stay, with their times. For one day, say its date.")
_ONE_OR_ALL: Final = UnclearChange("One squat day, or all of them? Say “skip Friday”, or “stop all”.")


def _next_ones(plan: Plan, today: date) -> str:
    days = [f"{DAY_NAMES[one.day.weekday()][:3]} {one.day.day} {MONTH_NAMES[one.day.month - 1][:3]}"
            for one in next_days(plan, today, 3)]
    return f"Next: {', '.join(days)}." if days else "No squat day is planned."


@dataclass(frozen=True, slots=True)
class _Reader:
    """Resolves the days a change names, against a plan."""

    plan: Plan
    today: date
    since: date

    def named(self, day: date) -> str:
        """Return a date in words, capitalised for the start of a sentence."""
        words = date_words(day, self.today)
        return words[0].upper() + words[1:]

    def day(self, token: Token) -> date | UnclearChange:
        """Return the date a token names."""
        match token:
            case SingleDate(day, why):
                return day or UnclearChange(why)
            case Weekdays((day,)) if day == self.today.weekday():
                return UnclearChange(_WHICH_TODAY.format(day=DAY_NAMES[day]))
            case Weekdays((day, *_)):
                return following(day, self.today)
            case Week(first) | Span(first):
                return first
        coming = next_days(self.plan, self.since, 1)
        return coming[0].day if coming else _NONE_PLANNED

    def squat_day(self, token: Token, at: Token | None = None) -> tuple[date, time] | UnclearChange:
        """Return the squat day a token names, with its time; a time given with it has to match."""
        day = self.day(token)
        if isinstance(day, UnclearChange):
            return day
        if not is_squat_day(self.plan, day):
            if back := self.plan.paused_until(day):
                return self.paused(back)
            return UnclearChange(f"{self.named(day)} is no squat day. {_next_ones(self.plan, self.today)}")
        planned = next_days(self.plan, day, 1)[0].at
        if isinstance(at, Hours) and planned not in at.could_be:
            return UnclearChange(f"{self.named(day)} is at {planned:%H:%M}. Which one do you mean?")
        return day, planned

    def paused(self, back: date) -> UnclearChange:
        """Return the refusal for a date in a pause."""
        return UnclearChange(f"Your squat days are paused until {date_words(back, self.today)}.")

    def free_day(self, token: Token, besides: date | None = None) -> date | UnclearChange:
        """Return a day outside pauses that is no squat day yet. ``besides``: the squat day moved there, from which a weekday is counted."""
        if besides and isinstance(token, Weekdays) and (near := nearest(token.days[0], besides, self.today)) != self.today:
            token = SingleDate(near)
        day = self.day(token)
        if isinstance(day, UnclearChange):
            return day
        if back := self.plan.paused_until(day):
            return self.paused(back)
        if day != besides and is_squat_day(self.plan, day):
            return UnclearChange(f"{self.named(day)} is a squat day already, at {next_days(self.plan, day, 1)[0].at:%H:%M}.")
        return day


Got = dict[str, Token]
Read = PlanChange | IncompleteChange | UnclearChange


def _made(text: str) -> Read:
    return made(text) or _NOT_READ


def _times(token: Token | None) -> tuple[time, ...]:
    return token.could_be if isinstance(token, Hours) else ()


def _skip(reader: _Reader, got: Got) -> Read:
    found = reader.squat_day(got["day"], got.get("at"))
    return found if isinstance(found, UnclearChange) else _made(f"skip {found[0]}")


def _move(reader: _Reader, got: Got) -> Read:
    found = reader.squat_day(got["day"], got.get("was"))
    if isinstance(found, UnclearChange):
        return found
    day, planned = found
    to = reader.free_day(got["to"], besides=day)
    if isinstance(to, UnclearChange):
        return to
    times = _times(got.get("at")) or (planned,)
    return _made(f"on {day} {written(times)}" if to == day else f"move {day} {to} {written(times)}")


def _move_where(reader: _Reader, got: Got) -> Read:
    """Read "move Friday": incomplete, so the new day is asked for."""
    found = reader.squat_day(got["day"], got.get("at"))
    return found if isinstance(found, UnclearChange) else _made(f"move {found[0]} ????-??-?? {found[1]:%H:%M}")


def _other_time(reader: _Reader, got: Got) -> Read:
    found = reader.squat_day(got["day"])
    return found if isinstance(found, UnclearChange) else _made(f"on {found[0]} {written(_times(got.get('at')))}")


def _instead(reader: _Reader, got: Got) -> Read:
    found = _other_time(reader, got)
    if isinstance(found, UnclearChange) and "no squat day" in found.reason:
        return UnclearChange(f"Instead of which day? {_next_ones(reader.plan, reader.today)}")
    return found


def _extra(reader: _Reader, got: Got) -> Read:
    day = reader.free_day(got["day"])
    return day if isinstance(day, UnclearChange) else _made(f"on {day} {written(_times(got.get('at')))}")


def _at(reader: _Reader, got: Got) -> Read:
    """Read "Friday 7pm": another time that day, or an extra day; without a plan, perhaps a rule."""
    if isinstance(got["day"], Weekdays) and reader.plan.empty:
        name = DAY_NAMES[got["day"].days[0]]
        return UnclearChange(f"Every {name}, or only the next one? Say “{name}s”, or its date.")
    day = reader.day(got["day"])
    if isinstance(day, UnclearChange):
        return day
    return _other_time(reader, got) if is_squat_day(reader.plan, day) else _extra(reader, got)


def _pause(reader: _Reader, got: Got) -> Read:
    day = got["day"]
    if not next_days(reader.plan, reader.today, 1):
        return _NONE_PLANNED
    # until today's weekday: the next one
    until = following(day.days[0], reader.today) if isinstance(day, Weekdays) else reader.day(day)
    if isinstance(until, UnclearChange) or not reader.today < until <= reader.today + FARTHEST:
        return _UNTIL_WHEN
    return _made(f"pause {until}")


def _skip_span(reader: _Reader, got: Got) -> Read:
    """Read "skip two days", which may mean two squat days; "no squats for two days" is a pause."""
    span = got["day"]
    return _UNTIL_WHEN if isinstance(span, Span) and span.loose else _pause(reader, got)


def _away(reader: _Reader, got: Got, last: int = 0) -> Read:
    """Read a pause that begins on a day.

    It ends before the "until" day, or after the ``last`` day, which is included; without an end it is incomplete. One that has already
    begun becomes a pause from today on.
    """
    first = reader.day(got["day"])
    if isinstance(first, UnclearChange):
        return first
    if not next_days(reader.plan, reader.today, 1):
        return _NONE_PLANNED
    match got.get("to"):
        case None:
            return _made(f"away {first} ????-??-??") if first > reader.today else _UNTIL_WHEN
        case Span(end, _, months):
            over: date | UnclearChange = first + (relativedelta(months=months) if months else end - reader.today)
        case Weekdays((day, *_)):
            over = following(day, first)
        case token:
            over = reader.day(token)
    if isinstance(over, UnclearChange):
        return over
    over += timedelta(days=last)
    if over <= first:
        return _ENDS_FIRST
    if over > reader.today + FARTHEST:
        return _UNTIL_WHEN
    return _made(f"away {first} {over}" if first > reader.today else f"pause {over}")


def _away_to(reader: _Reader, got: Got) -> Read:
    return _away(reader, got, last=1)


def _away_all_of_it(reader: _Reader, got: Got) -> Read:
    """Read "no squats next week"; "early next week" has no end."""
    week = got["day"]
    if not isinstance(week, Week) or week.over is None:
        return _FROM_WHEN
    return _made(f"away {week.first} {week.over}") if next_days(reader.plan, reader.today, 1) else _NONE_PLANNED


def _back(reader: _Reader, got: Got) -> Read:
    """End the current pause, or give the coming one another end; "unpause" before it starts cancels it."""
    day = reader.day(got["day"]) if "day" in got else reader.today
    if not next_days(reader.plan, reader.today, 1):
        return _NONE_PLANNED
    if isinstance(day, UnclearChange):
        return day
    paused = reader.plan.paused_until(reader.today)
    coming = next((row for row in reader.plan.away if row[0] > reader.today), None)
    if coming and not paused and day == reader.today:
        return _made(f"stay {coming[0]}")
    if coming and not paused and day > coming[0]:
        return _made(f"away {coming[0]} {day}")
    if day == reader.today and not paused:
        return UnclearChange(f"Your squat days are not paused. {_next_ones(reader.plan, reader.today)}")
    return _made(f"pause {day}")


def _says(reason: UnclearChange) -> Callable[[_Reader, Got], Read]:
    return lambda reader, got: reason


def _which_day(reader: _Reader, got: Got) -> Read:
    return UnclearChange(f"Which day? {_next_ones(reader.plan, reader.today)}")


def _what_about(reader: _Reader, got: Got) -> Read:
    day = reader.day(got["day"])
    return day if isinstance(day, UnclearChange) else UnclearChange(f"{reader.named(day)}: skip it, move it, or squat at another time?")


def _whole_rule(reader: _Reader, got: Got) -> Read:
    return _ALL_THAT_STAY


_DAY: Final = "(?P<day>[DWN])"
_FREE: Final = "(?P<day>[DW])"
_TO: Final = "(?P<to>[DW])"
_AT: Final = "(?P<at>T)"
_WAS: Final = "(?P<was>T)?"
_PAUSE: Final = "(?:(?:[scx]|pN?)[,&]?)+a?[,&]?"
_GONE: Final = "[scx,&]*p[pscx,&]*a?[,&]?"

_ROWS: Final[tuple[tuple[str, Callable[[_Reader, Got], Read]], ...]] = (
    ("x|[cx][,&]?a", lambda reader, got: _made("stop")),
    ("c|a", _says(_ONE_OR_ALL)),
    (f"[sc]{_DAY}{_AT}?", _skip),
    (f"{_DAY}{_AT}?,?[sc]", _skip),
    (f"m(?:N?f)?{_DAY}{_WAS},?[>4]{_TO}{_AT}?i?", _move),
    (f"m(?:N?f)?{_DAY}{_WAS},?[>4]{_AT}{_TO}i?", _move),
    (f"[sc]{_DAY}[,&]?(?:bi?|i){_TO}{_AT}?", _move),
    (f"[sc]{_DAY}[,&]?b?{_TO}{_AT}?i", _move),
    (f"[sc]{_DAY},{_TO}{_AT}", _move),
    (f"[sc]{_DAY}[,&]?mN?[>4]{_TO}{_AT}?i?", _move),
    (f"{_TO}{_AT}?,?j{_DAY}{_WAS}", _move),
    (f"{_AT}{_TO},?j{_DAY}", _move),
    (f"j{_DAY}{_WAS},?{_TO}{_AT}?", _move),
    (f"m{_DAY}{_WAS},?[>4]{_AT}i?", _other_time),
    (f"{_DAY}(?:,?{_AT})?i", _instead),
    (f"i{_DAY}{_AT}", _instead),
    (f"{_AT}{_DAY}i", _instead),
    (f"[+]{_FREE}{_AT}?", _extra),
    (f"[+]{_AT}{_FREE}", _extra),
    (f"{_FREE}{_AT}?,?[+]", _extra),
    (f"{_AT}{_FREE},?[+]", _extra),
    (f"{_DAY}{_AT}", _at),
    (f"{_AT}{_DAY}", _at),
    (f"{_PAUSE}u(?P<day>[DWK])", _pause),
    (f"u(?P<day>[DWK]),?{_PAUSE}", _pause),
    ("[scx][scx,&]*a?(?P<day>F)", _skip_span),
    (f"{_PAUSE}(?P<day>F)", _pause),
    (f"(?P<day>F),?{_PAUSE}", _pause),
    ("p[,&]?h(?P<day>[DWK])", _back),
    ("[khr]f?(?P<day>[DWK])", _back),
    ("[kr]", _back),
    ("[ps,&]*p[ps,&a]*u?|[sc]a?u", _says(_UNTIL_WHEN)),
    (f"{_PAUSE}u?f?(?P<day>[DWK]),?u(?P<to>[DWK])", _away),
    (f"f?(?P<day>[DWK]),?u(?P<to>[DWK]),?{_PAUSE}", _away),
    (f"(?:{_PAUSE}u?f|{_GONE})(?P<day>[DWK]),?[>-](?P<to>[DW])", _away_to),
    (f"f(?P<day>[DWK]),?[>-](?P<to>[DW]),?{_PAUSE}", _away_to),
    (f"{_PAUSE}u?(?P<day>D)[>-](?P<to>D)", _away_to),
    (f"(?P<day>D)[>-](?P<to>D),?{_PAUSE}", _away_to),
    (f"{_PAUSE}f(?P<day>[DWK]),?(?P<to>F)", _away),
    (f"{_PAUSE}(?P<to>F),?f(?P<day>[DWK])", _away),
    (f"{_PAUSE}(?P<day>K)", _away_all_of_it),
    (f"(?P<day>K),?{_PAUSE}", _away_all_of_it),
    (f"{_PAUSE}f(?P<day>[DWK])", _away),
    (f"{_PAUSE}f?[DWKN](?:[u>-][DWK])?", _says(_FROM_WHEN)),
    ("[scx].*[VUE]|[VUE],?[sc]|m.*[VU].*|m[VUE].*|lW|lWT|lTW", _whole_rule),
    (f"m{_DAY}{_AT}?", _move_where),
    ("s|m(?:[>4].*)?|[TN]|T[i+]|[i+]T?", _which_day),
    (f"{_DAY}", _what_about),
    ("[sc]?(?:[DWN]T?[,&]?){2,}|(?:T[DW][,&]?){2,}|m(?:[DWN][,&]?){2,}.*", _says(_ONE_AT_A_TIME)),
)
"""Shapes of a line and their meaning, first match wins; see ``ScannedLine`` and ``_PHRASES`` for the letters."""

_SHAPES: Final = tuple((re.compile(shape), read) for shape, read in _ROWS)


def read_change(text: str, plan: Plan, today: date, since: date | None = None) -> PlanChange | IncompleteChange | UnclearChange:
    """Return the change to a plan a line asks for: a new rule, a single day added, skipped, moved or retimed, a pause from today or
    later, its end, or the end of all squat days.

    A change with a part missing, such as the time, is an ``IncompleteChange``; an impossible or unreadable one is an ``UnclearChange``
    with the reason. "This one", "the next one" and "it" mean the next squat day from ``since`` on (None: from today on). "Until" names
    the first day after a pause. A rule for only some of the plan's days is refused, to ask whether the others stay.
    """
    line = line_of(text, today)
    not_read = _NO_DAYS_READ if plan.empty else _NOT_READ
    if line is None or not line.shape or "?" in line.shape:
        return _OF_REMINDERS if line and re.search(r"\bremind", text.casefold()) else not_read
    for token in line.tokens:
        if isinstance(token, SingleDate) and token.day is None:
            return UnclearChange(token.why)
    line = _tidy(line)
    if re.search("[VUEg]", line.shape) or line.shape.count("W") > 1:
        said = re.match("m>|N|", line.shape)  # "change to", "make it"
        rule = rule_of(line.since(said.end() if said else 0).without("+"), today)
        if rule:
            return _new_rule(rule, plan, added="+" in line.shape, only=bool(re.search("[lg]", line.shape)))
    if re.fullmatch("l?[^WVUE]*l?", line.shape):
        line = line.without("l")
    line = line.without("g")
    for shape, read in _SHAPES:
        if found := shape.fullmatch(line.shape):
            got = {name: line.tokens[found.start(name)] for name, said in found.groupdict().items() if said}
            return read(_Reader(plan, today, since or today), got)
    return not_read


def _tidy(line: ScannedLine) -> ScannedLine:
    """Return the line without leading, trailing and repeated commas and ands."""
    kept: list[tuple[Token, str]] = []
    for token, letter in zip(line.tokens, line.shape, strict=True):
        if letter in ",&" and (not kept or kept[-1][1] in ",&"):
            if kept and letter == "&":
                kept[-1] = (token, letter)
            continue
        kept.append((token, letter))
    while kept and kept[-1][1] in ",&":
        kept.pop()
    return ScannedLine(tuple(token for token, _ in kept), "".join(letter for _, letter in kept))


def _new_rule(rule: Weekly | EveryNDays | IncompleteChange, plan: Plan, added: bool, only: bool) -> Read:
    """Return a new rule that replaces the plan's, or adds to it; refused if it names only some of the plan's days."""
    text = str(rule)
    if plan.empty:
        return rule
    if text.startswith("weekly "):
        named = dict(row.split("=") for row in text.removeprefix("weekly ").split(","))
        planned = {WEEKDAYS[day]: f"{at:%H:%M}" for day, at in plan.weekly}
        if added and planned:
            return _made("weekly " + ",".join(f"{day}={at}" for day, at in sorted(
                {**planned, **named}.items(), key=lambda row: WEEKDAYS.index(row[0]))))
        if not added and (only or not (set(named) < set(planned) or (len(named) == 1 and set(named) != set(planned)))):
            return rule
    elif not added:
        return rule
    return _ALL_THAT_STAY
