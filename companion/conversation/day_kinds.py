"""Kinds of question about squat days: a plan or a change to it, the missing part of a change, a time of day, a date.

Answers are stored in the calendar's notation (calendar.plan, calendar.reading), with placeholders for missing parts.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, time, timedelta
from typing import Final

from companion.calendar.plan import PlanChange
from companion.calendar.preferences import plan_from
from companion.conversation.condition import Value
from companion.conversation.kinds import Answer, Choice, Kind, Option, ReadingContext, Unclear, pick
from companion.language.act_rules import matches
from companion.language.being_seen import been_seen
from companion.language.clauses import flat
from companion.language.days.dates import read_date
from companion.language.days.past import past_days
from companion.language.days.reading import UnclearChange as NotRead
from companion.language.days.reading import read_change
from companion.language.days.rules import IncompleteChange, made, read_days, read_rest, without_asides
from companion.language.days.times import read_hours, sense_of
from companion.language.limits import CLEARED, is_end, new_end, new_end_beside, new_kilos_till, read_end, still_until
from companion.language.phrases import normalise
from companion.language.quantities import spelt
from companion.language.questions import is_question

NOON: Final = 12
WITHIN_MOST: Final = 10
"""The most words of a reply in which a day is looked for among others (choice)."""
_SAYS_MORE: Final = re.compile(
    r"\d|\b(?:no|not|nor|never|\w+nt|dunno|yet|know|say|except|but|or|if|when|unless|maybe|perhaps|might|could|skip|stop|cancel|every|each|"
    r"half|quarter|noon|morning|morn|evening|night|afternoon|am|pm)\b")


def _today(context: ReadingContext) -> date:
    return date.fromisoformat(str(context.facts()["today"]))


def _names_a_day(text: str, context: ReadingContext) -> bool:
    return read_date(text, _today(context)) is not None


def _since(context: ReadingContext) -> date | None:
    """Return the first date that "it" can mean, None if not known."""
    since = context.facts().get("since")
    return date.fromisoformat(str(since)) if since else None


@dataclass(frozen=True, slots=True)
class SquatDays(Kind):
    """Squat days, or a change to them. ``before``: words put before a shorter reply, such as "move it to"; ``choices``: answers to tap,
    which can be typed too."""

    choices: tuple[Option, ...] = ()
    before: str = ""
    example_text: str = "Tuesdays and Fridays at 6pm"

    @property
    def options(self) -> tuple[Option, ...]:
        return self.choices

    @property
    def samples(self) -> tuple[Value, ...]:
        texts = ("on 2026-03-06 18:00", "on 2026-03-06 06:30?") if self.before else (
            "weekly TU=18:00", "weekly TU=??:??", "every 2 06:30? ????-??-??", "skip 2026-03-03", "move 2026-03-03 2026-03-04 18:00",
            "pause 2026-04-01", "away 2026-03-10 2026-03-21")
        return (*(option.value for option in self.choices), *texts)

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        chosen = pick(text, self.choices, ReadingContext(strict=True))
        if isinstance(chosen, Answer):
            return chosen
        if made(text):  # the calendar's own text, as a button carries it
            return Answer(text, text)
        change, today = self._change(text, context), _today(context)
        if isinstance(change, NotRead):
            short = self._change(without_asides(text, today), context)
            if not (self.before or plan_from(context.facts()).empty or str(short).startswith(("weekly", "every"))):  # else made at once
                short = self._change(without_asides(text, today, reasons=True), context)
            change = change if isinstance(short, NotRead) else short
        if isinstance(change, NotRead) and self.before and not is_question(text):
            change = self._within(text, context) or change
        if isinstance(change, IncompleteChange) and change.wants == "half" and (part := sense_of(text)):
            change = read_rest(change, part, today) or change
        return Unclear(change.reason) if isinstance(change, NotRead) else Answer(str(change), text)

    def _change(self, text: str, context: ReadingContext) -> PlanChange | IncompleteChange | NotRead:
        plan, today = plan_from(context.facts()), _today(context)
        change = read_change(f"{self.before} {text}", plan, today, _since(context)) if self.before else NotRead("")
        if isinstance(change, NotRead):
            whole = read_change(text, plan, today, _since(context))
            if isinstance(whole, NotRead) and plan.empty:
                whole = read_days(text, today) or whole
            change = change if self.before and isinstance(whole, NotRead) else whole
        return change

    def _within(self, text: str, context: ReadingContext) -> PlanChange | IncompleteChange | None:
        """Return the change that the longest stretch of a reply's words asks for ("off till January third"), if the words around it are few
        and deny, doubt and name nothing."""
        words, today = text.split(), _today(context)
        for length in range(len(words) - 1, 0, -1) if len(words) <= WITHIN_MOST else ():
            for start in range(len(words) - length + 1):
                around = " ".join((*words[:start], *words[start + length:]))
                if _SAYS_MORE.search(spelt(flat(around))) or read_date(around, today) is not None:
                    continue
                asked = f"{self.before} {' '.join(words[start:start + length])}"
                if not isinstance(change := read_change(asked, plan_from(context.facts()), today, _since(context)), NotRead):
                    return change
        return None

    def claims(self, text: str, context: ReadingContext) -> bool:
        return _names_a_day(text, context)

    def example(self, context: ReadingContext) -> str:
        return f"For example: {self.example_text}."


@dataclass(frozen=True, slots=True)
class Rest(Kind):
    """The missing part of a change of plan: a time, morning or evening, the first day, or the day to move to. ``of``: the fact that holds
    the incomplete change; the complete one is stored. ``choices``: answers to tap."""

    of: str = "open"
    choices: tuple[Option, ...] = ()

    @property
    def options(self) -> tuple[Option, ...]:
        return self.choices

    @property
    def typical(self) -> Value:
        return self.samples[0]

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("weekly TU=18:00", "weekly TU=06:30?", "every 2 18:00 ????-??-??", "on 2026-03-06 18:00")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        half = made(str(context.facts().get(self.of, "")))
        change = made(text) or (self._whole(half, text, context) if isinstance(half, IncompleteChange) else half)
        if isinstance(change, NotRead):
            return Unclear(change.reason)
        return Answer(str(change), text) if change is not None else Unclear("I could not read that.")

    def _whole(self, half: IncompleteChange, text: str, context: ReadingContext) -> PlanChange | IncompleteChange | NotRead | None:
        """Return the change completed by the reply. The day to move to is read together with the day to move, so that it is checked against
        the plan and may have a time; the end of a pause together with its beginning."""
        if half.wants == "day" and half.open.startswith("move "):
            day = half.open.split()[1]
            return read_change(f"move {day} to {text}", plan_from(context.facts()), _today(context), _since(context))
        if half.wants == "day" and half.open.startswith("away "):
            said = f"away from {half.open.split()[1]}"  # "for a week", "until the 20th", or the day alone
            whole = read_change(f"{said} {text}", plan_from(context.facts()), _today(context), _since(context))
            ended = read_change(f"{said} until {text}", plan_from(context.facts()), _today(context), _since(context))
            return whole if isinstance(whole, PlanChange) else ended
        today = _today(context)
        return read_rest(half, text, today) or read_rest(half, without_asides(text, today), today) or read_rest(half, sense_of(text), today)

    def tapped(self, option: Option, context: ReadingContext) -> Answer | Unclear:
        return self.read(option.value, context)

    def claims(self, text: str, context: ReadingContext) -> bool:
        return _names_a_day(text, context)

    def example(self, context: ReadingContext) -> str:
        half = made(str(context.facts().get(self.of, "")))
        wants = half.wants if isinstance(half, IncompleteChange) else "time"
        return {"half": "Say “morning” or “evening”.", "day": "For example: tomorrow."}.get(wants, "For example: 18:00, or 6pm.")


_CLOCK: Final = re.compile(
    r"\b(?:(?:half|quarter|\d{1,2})(?: (?:past|to|after))? )?\d{1,2}(?:[:.]\d\d)?(?: ?(?:am|pm|oclock|ish)\b)?"
    r"(?: (?:in the (?:morning|morn|evening|afternoon)|at night)\b)?"
    r"(?!\w| ?(?:hours?|hrs?|min\w*|days?|weeks?|months?|nights?|times?|years?|of|people|kids?|or|to)\b)")
_TOGETHER: Final = re.compile(r"\b(\d{1,2})([0-5]\d)\b")
"""Hours and minutes that are said as one number: "six thirty", "1830"."""
_SPAN: Final = re.compile(r"^(?:from|until|till|til|at|around|about|by|not before|after)\b ?")
"""Words before a time of day that begin or end a span."""


_NOT_THAT: Final = re.compile(r"^(?:no|nah|sorry|oops),? |,? not (?:at )?\w+$")
"""What only takes back another time: "no seven not six"."""
_DENIED: Final = re.compile(r"\b(?:not|never|but|except)(?: at| before| by)? $")
_WHENEVER: Final = re.compile(r"when (?!(?:do|does|did|is|are|was|will|would|can|could|should|shall|am)\b)[^?]*$")
"""A clause that begins with "when" and asks nothing: "when i clock off, five"."""


@dataclass(frozen=True, slots=True)
class ClockTime(Kind):
    """A time of day, stored as "18:00". ``choices``: times to tap; ``evening``: true where an hour without am or pm is in the evening
    (None: it is asked)."""

    choices: tuple[str, ...] = ()
    evening: bool | None = None

    @property
    def options(self) -> tuple[Option, ...]:
        return tuple(Option(at, at) for at in self.choices)

    @property
    def samples(self) -> tuple[Value, ...]:
        return (*self.choices, "06:15")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        times = self._times(text)
        part = sense_of(text) if len(times) > 1 else ""
        if len(times) > 1 and (part or self.evening is not None):
            times = tuple(at for at in times if (at.hour >= NOON) == (part == "evening" if part else self.evening))
        if len(times) == 1:
            return Answer(f"{times[0]:%H:%M}", text)
        return Unclear("In the morning or in the evening?" if times else "I need a time of day.")

    def _times(self, text: str) -> tuple[time, ...]:
        """Return the times that a reply may mean: as it stands, or the only one in a sentence that asks and corrects nothing."""
        times = self._alone(text)
        if times or (is_question(text) and not _WHENEVER.match(flat(text))) or matches("corrects", flat(text)):
            return times
        among = list(_CLOCK.finditer(_TOGETHER.sub(r"\1:\2", spelt(text)).replace(" o clock", " oclock")))
        denied = len(among) != 1 or _DENIED.search(among[0].string[:among[0].start()])
        return () if denied else read_hours(among[0][0])  # "half seven, after tea"

    def _alone(self, text: str) -> tuple[time, ...]:
        """Return the times of a reply that says nothing else; where morning or evening is not known, also of "no seven not six"."""
        said = _NOT_THAT.sub("", flat(text)) if self.evening is None else text
        return read_hours(said) or read_hours(_SPAN.sub("", spelt(said)))

    def claims(self, text: str, context: ReadingContext) -> bool:
        return bool(self._alone(text))

    def example(self, context: ReadingContext) -> str:
        return "For example: 18:30, or 6:30pm."


_FITS: Final = re.compile(r" (?:would |will |should )?(?:fits?|suits?|works?|do|is (?:good|fine|ok|best))"
                          r"(?: (?:me|him|her|us|them|best|well|fine))*$")


@dataclass(frozen=True, slots=True)
class Day(Kind):
    """A future date, stored as "2026-12-01"."""

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("2026-03-16",)

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        today = _today(context)
        day = read_date(text, today) or read_date(_FITS.sub("", without_asides(text, today, orders=False)), today)
        return Answer(day.isoformat(), text) if day else Unclear("I need a day to come.")

    def example(self, context: ReadingContext) -> str:
        return "For example: 3 January, or in two weeks."


_AGO_WORDS: Final = ("Today", "Yesterday", "Two days ago", "Three days ago")
NO_DAY: Final = "none"


@dataclass(frozen=True, slots=True)
class PastDay(Kind):
    """One of the last days, today among them, kept as "2026-12-01"; or ``NO_DAY``. ``none``: the label of that."""

    none: str

    @property
    def options(self) -> tuple[Option, ...]:
        days = (Option(f"{back}_ago", label) for back, label in enumerate(_AGO_WORDS))
        return (*days, Option(NO_DAY, self.none, ("no", "nope", "not yet")))

    @property
    def typical(self) -> Value:
        return "2026-03-01"

    @property
    def samples(self) -> tuple[Value, ...]:
        return (NO_DAY, "2026-03-01")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        chosen = pick(text, self.options, ReadingContext(strict=True))
        if isinstance(chosen, Answer):
            return self._of(str(chosen.value), text, context)
        days = past_days(text, _today(context))
        if len(days) > 1:
            return Unclear("One day at a time, please: the last of them first.")
        if not days:
            return Unclear("I need the day.")
        if _today(context) - min(days) >= timedelta(days=len(_AGO_WORDS)):
            return Unclear("That is too long ago for me to note: I take today and the three days before.")
        return Answer(min(days).isoformat(), text)

    def tapped(self, option: Option, context: ReadingContext) -> Answer | Unclear:
        return self._of(option.value, option.label, context)

    @staticmethod
    def _of(value: str, raw: str, context: ReadingContext) -> Answer:
        back = value.removesuffix("_ago")
        return Answer((_today(context) - timedelta(days=int(back))).isoformat() if back.isdecimal() else value, raw)

    def claims(self, text: str, context: ReadingContext) -> bool:
        return bool(past_days(text, _today(context)))

    def example(self, context: ReadingContext) -> str:
        return "For example: yesterday, or on Monday."


_WEEKS: Final = (1, 2, 4, 6)
"""Weeks to tap for the end of a limit; our choice."""


@dataclass(frozen=True, slots=True)
class LimitEnd(Kind):
    """The end of a clinician's limit: a date to come, kept as "2026-12-01", or ``CLEARED`` where it stands until somebody is cleared."""

    @property
    def options(self) -> tuple[Option, ...]:
        weeks = tuple(Option(f"week_{count}", f"For {count} weeks" if count > 1 else "For a week") for count in _WEEKS)
        return (*weeks, Option(CLEARED, "Until they clear me", ("cleared", "not sure", "don't know", "no date")))

    @property
    def typical(self) -> Value:
        return CLEARED

    @property
    def samples(self) -> tuple[Value, ...]:
        return (CLEARED, "2026-03-16")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        chosen = pick(text, self.options, ReadingContext(strict=True))
        if isinstance(chosen, Answer):
            return self._of(str(chosen.value), text, context)
        end = read_end(text, _today(context))
        return Answer(end, text) if self._to_come(end, context) else Unclear("I need a day to come, or how many weeks.")

    def anew(self, text: str, context: ReadingContext) -> Answer | None:
        end = new_end(text, _today(context)) or (new_end_beside(text, _today(context)) if new_kilos_till(text) else "")
        return Answer(end, text) if self._to_come(end, context) else None

    @staticmethod
    def _to_come(end: str, context: ReadingContext) -> bool:
        return end == CLEARED or (bool(end) and date.fromisoformat(end) > _today(context))

    def tapped(self, option: Option, context: ReadingContext) -> Answer | Unclear:
        return self._of(option.value, option.label, context)

    @staticmethod
    def _of(value: str, raw: str, context: ReadingContext) -> Answer:
        weeks = value.removeprefix("week_")
        return Answer((_today(context) + timedelta(weeks=int(weeks))).isoformat() if weeks.isdecimal() else value, raw)

    def claims(self, text: str, context: ReadingContext) -> bool:
        return _names_a_day(text, context) or is_end(text, _today(context))

    def example(self, context: ReadingContext) -> str:
        return "For example: 3 January, for three weeks, or until they clear me."


@dataclass(frozen=True, slots=True)
class BeenSeen(Choice):
    """The answer whether somebody has been seen: "yes", "booked" or "no". Words that say more are kept with it, such as the day."""

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        label = normalise(text) in {normalise(option.label) for option in self.options}
        seen = been_seen(text) if not label else ""
        return Answer(seen, text, more=True, beside=True) if seen else Choice.read(self, text, context)


@dataclass(frozen=True, slots=True)
class LimitOver(Choice):
    """The answer whether a clinician's limit is over on its date: "over", "still" or "unsure". A date to come says that it is
    still on, and until when."""

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        end = still_until(text, _today(context))
        if end == CLEARED or (end and date.fromisoformat(end) > _today(context)):
            return Answer("still", text, more=True)
        return Choice.read(self, text, context)
