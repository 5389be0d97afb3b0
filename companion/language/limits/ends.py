"""Ends of a limit as they are typed: a day, a time from now, or until somebody is cleared."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from functools import lru_cache
from typing import Final

from dateutil.relativedelta import relativedelta

from companion.language.days.dates import FEASTS, following, read_date, weekday
from companion.language.limits.amounts import COUNT
from companion.language.limits.clinicians import A_CLINICIAN, UNTIL_CLEARED
from companion.language.limits.spelling import bare_line, well_spelt
from companion.language.phrases import normalise

LATELY: Final = timedelta(days=60)
"""For so long after it a day is not taken for that of the next year; our choice."""
CLEARED: Final = "cleared"
"""The end of a limit that stands until somebody is cleared."""

_SPAN: Final = re.compile(
    r"(?:for |over )?(?:at least |about |around |another |the )*(?:next |coming )?"
    rf"(?:(?P<many>{COUNT}|a couple of|another|an?|one)(?: ?(?:-|to|or) ?(?P<most>{COUNT}))?(?: more| further| extra)? ?"
    r"(?P<unit>day|week|wk|month)s?(?: more| longer)?|"
    r"(?P<fortnight>a fortnight))\b(?! ago\b)")
_UNTIL: Final = re.compile(r"\b(?:until|till?|untill|up to|before|(?:extended|prolonged)(?: (?:it|that|this))? to) (?P<when>.+)")
_THIS: Final = re.compile(
    r"\b(?:(?:(?:for|all) )*(?:the rest of )?(?<=(?:for|all|.of) )|(?P<after>squats|squatting|lifting|weights?|bending|stretching|training|"
    r"max|kgs?|kilos|lbs|load) )this (?P<what>week|month)s?\b")
"""The rest of a week or a month, where it is that of what is left out: it ends with the day after it."""
_NUMBERS: Final = {"a": 1, "an": 1, "another": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
                   "nine": 9, "ten": 10, "twelve": 12, "a couple of": 2}
_TO_DO: Final = (r"(?:lift|squat|bend|stretch|train|deadlift|exercise|work ?out|go back|use weights|do (?:squats|weights|it))"
                 r"(?: (?:weights?|again|heavy|over|normally|anything|to (?:training|lifting|squatting|squats|the gym|normal)))*")
_THE_LIMIT: Final = r"(?:(?:my|the|this|that) (?:limit|restriction|ban)s?(?: of mine)?)"
ASKS_END: Final = (
    rf"(?:(?:so|and|ok|hey|hi)[, ]+)*(?:(?:until |till )?when (?:is|are|does|do|will|was) {_THE_LIMIT}"
    r"(?: (?:be |going to |meant to )*"
    r"(?:over|up|done|finished|off|gone|lifted|ends?|stops?|finish|expires?|runs? out|lasts?(?: until| till)?))?|"
    rf"(?:until|till?) when(?: is| does| do| are)? (?:{_THE_LIMIT}|i)(?: (?:last|lasts|hold|holds|stand|stands|go|on|limited))*|"
    r"how (?:long|many (?:more )?(?:days|weeks)|much longer)(?: more| left| still)?"
    rf"(?: is| are| does| do| will| on| of| for| with| till?| until)* "
    rf"{_THE_LIMIT}(?: (?:last|left|still|on|over|hold|stand|go on|is over|ends?))*|"
    rf"(?:until |till )?when (?:can|may|could|am i allowed to|will i be able to)(?: i)?(?: start to)? {_TO_DO}|"
    rf"how (?:long|many (?:more )?(?:days|weeks)|much longer) (?:until|till?|before|do i have to wait until) i (?:can|may) {_TO_DO}|"
    r"is (?:my|the) (?:limit|restriction) (?:over|done|up|off|gone|still on)(?: now| yet)?)\??")
"""Whole questions until when a limit stands, as a pattern."""
_NOT_SAID: Final = re.compile(
    rf"(?:(?:i'm |i am )?not sure|i (?:do not|don't|dont) (?:know|remember)|don'?t know|dunno|idk|no idea|unknown|unclear|open[- ]ended|"
    rf"(?:(?:(?:my |the )?(?:{A_CLINICIAN})|he|she|they|nobody|no one|it) )?(?:did not|didn't|didnt|never|hasn't|hasnt|has not|haven't|"
    r"wouldn't|not|wasn't|couldn't)(?: (?:say|said|tell|told|give|gave|given|name|know|been|set|mention|mentioned|actually|really|me|us|"
    r"an?|any|the|end|date|day|until|when|how|long|anything|that|it|yet))+|nobody (?:said|told me|knows)(?: (?:until )?when)?|"
    r"no (?:end(?: date)?|date)(?: (?:yet|given|set|said))?)")
"""Answers to "until when?" that nobody said so: it stands until they are cleared."""


def read_end(text: str, today: date) -> str:
    """Return the end of a limit from an answer to "until when?": a date as text, ``CLEARED``, or "" where none was read."""
    line = bare_line(text)
    if _NOT_SAID.fullmatch(line):
        return CLEARED
    found = end_in(f" {line} ", today)[0] or end_in(f" until {line} ", today)[0]
    if not found and (day := read_date(line, today)) and not _passed(line, day, today):
        return day.isoformat()
    return found


@lru_cache(64)  # asked of the same words several times in a step
def past_end(text: str, today: date) -> str:
    """Return the end that words name where it was lately, as text; "" for none: on 2 March "until 1 March" is a slip, or over."""
    if not (found := _UNTIL.search(f" {well_spelt(text)} ")):
        return ""
    words = found["when"].split()
    named = (" ".join(words[:count]).strip(" .,!") for count in range(min(len(words), 6), 0, -1))
    name, day = next(((name, day) for name in named if (day := _day(name, today))), ("", today))
    return (day - relativedelta(years=1)).isoformat() if name and _passed(name, day, today) else ""


def _passed(named: str, day: date, today: date) -> bool:
    """True if a day that is named without its year was lately, so that next year's is hardly meant."""
    return not re.search(r"\d{4}", named) and today - LATELY <= day - relativedelta(years=1) <= today


def is_end(text: str, today: date) -> bool:
    """True if words name an end and say nothing else: "3 weeks", not "3 weeks pregnant"."""
    end, rest = end_in(f" {normalise(text).strip(' .!')} ", today)
    return bool(end) and not rest.strip(" ,")


def end_in(line: str, today: date, mark: str = " , ") -> tuple[str, str]:
    """Return the end that a line names and the line with ``mark`` in its place; the longer of two spans."""
    if found := UNTIL_CLEARED.search(line):
        return CLEARED, line.replace(found[0], mark)
    if found := _UNTIL.search(line):
        words = found["when"].split()
        for count in range(min(len(words), 6), 0, -1):
            named = " ".join(words[:count]).strip(" .,!")
            if day := _day(named, today):
                return "" if _passed(named, day, today) else day.isoformat(), line[:found.start()] + mark + " ".join(words[count:]) + " "
        return "", line
    if found := _THIS.search(line):
        day = today + (relativedelta(day=1, months=1) if found["what"] == "month" else relativedelta(days=7 - today.weekday()))
        return day.isoformat(), line.replace(found[0], f"{found['after'] or ''}{mark}", 1)
    if found := _SPAN.search(line):
        many = "2" if found["fortnight"] else found["most"] or found["many"]
        count, unit = _NUMBERS.get(many) or int(many), "week" if found["fortnight"] else found["unit"]
        day = today + (relativedelta(months=count) if unit == "month" else relativedelta(days=count * (1 if unit == "day" else 7)))
        return (day.isoformat(), line.replace(found[0], mark, 1)) if count else ("", line)
    return "", line


def ends_in(line: str, today: date) -> Iterator[str]:
    """Yield the ends that a line names."""
    while (found := end_in(line, today))[0]:
        yield found[0]
        line = found[1]


_OF_MONTH: Final = re.compile(
    r"(?:(?:the )?(?:(?P<part>start|beginning|early|middle|mid|end|late)(?: in| of|-)? ?)|in )?"
    r"(?P<month>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)")
_PARTS_OF_MONTH: Final = {"middle": 15, "mid": 15, "end": 31, "late": 31}
"""The day of the month that a part of it ends on, of a limit; of any other part the first."""


def _day(named: str, today: date) -> date | None:
    name = named.removeprefix("after ").strip()
    if name in FEASTS:
        month, day = FEASTS[name]
        this_year = date(today.year, month, day)
        return this_year if this_year > today else date(today.year + 1, month, day)
    if found := _OF_MONTH.fullmatch(name):  # "until may" is until it begins
        first = read_date(f"1 {found['month']}", today)
        return first and first + relativedelta(day=_PARTS_OF_MONTH.get(found["part"] or "", 1))
    if found := re.fullmatch(r"(?:the )?end of (?:the|this) month", name):
        return today + relativedelta(day=31)
    if found := re.fullmatch(r"(?:the )?end of (\w+)", name):
        first = read_date(f"1 {found[1]}", today)
        return first + relativedelta(day=31) if first else None
    if (day_named := weekday(name)) and day_named.days == (today.weekday(),) and not day_named.many:
        return following(today.weekday(), today)  # a limit that is told today doesn't end today
    return read_date(name, today)
