"""The kinds of thing a question can ask for: how each is shown, read from what a person types, and bounded.

Reading is pure: ``read(text, ears)`` gives an Answer or an Unclear with a short reason. No kind guesses: what it
can't read, it asks again.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from itertools import pairwise
from typing import Final

from rapidfuzz import fuzz

from companion.conversation.condition import ALWAYS, Condition, Facts, Value
from companion.conversation.phrases import Phrase, hear, normalise
from companion.conversation.units import METRIC, shown, spoken_unit, to_kept, unit_word


@dataclass(frozen=True, slots=True)
class Ears:
    """What reading needs besides the text: the lifter's units, the time now, whether guessing is forbidden, and how to come by
    the facts, which few kinds look at."""

    units: str = METRIC
    now: datetime | None = None
    strict: bool = False
    facts: Callable[[], Facts] = dict


@dataclass(frozen=True, slots=True)
class Answer:
    """A reply that was understood: the kept value, the text it came from, and its unit ("" where it has none)."""

    value: Value
    raw: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Unclear:
    """A reply that was not: a short reason, shown before the question is asked again."""

    reason: str


@dataclass(frozen=True, slots=True)
class Option:
    """One way to answer a choice: its kept value, its label, other words for it, and when it is offered."""

    value: str
    label: str
    also: tuple[str, ...] = ()
    only_if: Condition = ALWAYS


@dataclass(frozen=True, slots=True)
class Kind:
    """What all kinds share: the options that become buttons, and an example for a reply that was not one."""

    @property
    def options(self) -> tuple[Option, ...]:
        """The answers to tap, in order; none where the answer is typed."""
        return ()

    @property
    def unit(self) -> str:
        """The kept unit of a number, or ""."""
        return ""

    @property
    def typical(self) -> Value:
        """The answer to reckon with where how far along a person is has to be guessed."""
        return self.options[0].value if self.options else ""

    @property
    def samples(self) -> tuple[Value, ...]:
        """Answers worth trying, for who checks a flow."""
        return tuple(option.value for option in self.options)

    def example(self, ears: Ears) -> str:
        """A line that shows what a good answer looks like."""
        return "Tap one of the buttons, or type its words."

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        """What a typed reply means here."""
        return pick(text, self.options, ears)

    def take(self, kind: str, ref: str) -> Answer | None:
        """What something sent that is not text means here: its kind and the channel's reference; None: nothing."""
        return None

    def tapped(self, option: Option, ears: Ears) -> Answer | Unclear:
        """What the button of an option means here."""
        return Answer(option.value, option.label)

    def claims(self, text: str, ears: Ears) -> bool:
        """Whether a reply is this question's own, though it is a control word too, such as "tomorrow"."""
        return False

    def unusual(self, value: Value) -> bool:
        """Whether a value is possible but rare enough to ask about once."""
        return False


_TURNING: Final = frozenset(
    ["not", "no", "never", "or", "and", "nor", "but", "without", "didnt", "doesnt", "isnt", "wasnt", "dont", "cant", "couldnt"])
"""Words that turn or double what is said: a near miss that differs in one of them is none."""


def _turning(text: str) -> set[str]:
    return {word.replace("'", "") for word in text.split()} & _TURNING


def pick(text: str, options: tuple[Option, ...], ears: Ears) -> Answer | Unclear:
    """The option a text names: the whole label, another word for it, or (unless strict) a near miss of one only."""
    wanted = normalise(text).strip(" .")
    names = [(normalise(word).strip(" ."), option) for option in options
             for word in (option.label, option.value.replace("_", " "), *option.also)]
    for name, option in names:
        if wanted == name:
            return Answer(option.value, text)
    if not ears.strict and len(wanted) >= 4:
        said = _turning(wanted)
        near = {option.value for name, option in names if len(name) >= 4 and fuzz.ratio(wanted, name) >= 84
                and said == _turning(name)}
        if len(near) == 1:
            return Answer(near.pop(), text)
        inside = {option.value for name, option in names if len(name) >= 4 and f" {name} " in f" {wanted} "}
        if len(inside) == 1 and not said:
            return Answer(inside.pop(), text)
    return Unclear("I could not match that to one of the answers.")


@dataclass(frozen=True, slots=True)
class Choice(Kind):
    """One of a few answers."""

    choices: tuple[Option, ...]

    @property
    def options(self) -> tuple[Option, ...]:
        return self.choices


def choice(*rows: tuple[str, ...] | Option) -> Choice:
    """A choice from rows of (value, label, other words …)."""
    return Choice(tuple(row if isinstance(row, Option) else Option(row[0], row[1], row[2:]) for row in rows))


@cache
def _yes_no(yes: str, no: str, unsure: bool) -> tuple[Option, ...]:
    both = (Option("yes", yes, ("yes",)), Option("no", no, ("no",)))
    return (*both, Option("unsure", "Not sure", ("unsure",))) if unsure else both


@dataclass(frozen=True, slots=True)
class YesNo(Kind):
    """Yes or no; with ``unsure`` also "not sure", which a safety question counts as the worse answer."""

    unsure: bool = False
    yes: str = "Yes"
    no: str = "No"

    @property
    def options(self) -> tuple[Option, ...]:
        return _yes_no(self.yes, self.no, self.unsure)

    @property
    def typical(self) -> Value:
        return "no"

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        heard = hear(text, strict=ears.strict)
        if heard in (Phrase.YES, Phrase.READY) and not (ears.strict and heard is Phrase.READY):
            return Answer("yes", text)
        if heard is Phrase.NO:
            return Answer("no", text)
        if heard is Phrase.UNSURE and self.unsure:
            return Answer("unsure", text)
        return pick(text, self.options, Ears(ears.units, ears.now, strict=True))

    def example(self, ears: Ears) -> str:
        return "Please answer yes, no or not sure." if self.unsure else "Please answer yes or no."


@dataclass(frozen=True, slots=True)
class Ready(Kind):
    """Go on when set up, or when done: one button."""

    label: str = "Ready"

    @property
    def options(self) -> tuple[Option, ...]:
        return (Option("ready", self.label, ("ready", "done")),)

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        if hear(text) in (Phrase.READY, Phrase.YES):
            return Answer("ready", text)
        return pick(text, self.options, ears)

    def example(self, ears: Ears) -> str:
        return f"Tap “{self.label}” when you are."


@dataclass(frozen=True, slots=True)
class Hold(Ready):
    """A timed hold or set: one start button, a count-in, then the bot says when the time is over and asks on.

    ``seconds`` is how long, or the name of a fact that says so; ``count_in`` the time to get into place. ``go`` and
    ``over`` are said at its start and end. Nothing needs a tap in between.
    """

    seconds: int | str = 10
    count_in: int = 5
    label: str = "Start"
    go: str = "Hold: {seconds:g} seconds. Let go early if you need to."
    over: str = "Time. Come out of it slowly."

    @property
    def options(self) -> tuple[Option, ...]:
        return (Option("ready", self.label, ("start", "begin", "go", "ready", "ok", "yes", "now")),)

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        return pick(text, self.options, ears)


NUMBER_WORDS: Final = {word: float(n) for n, word in enumerate(
    ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
     "fourteen", "fifteen"))}
_FILLER = re.compile(r"\b(?:about|abt|bout|around|arnd|circa|roughly|approx|approximately|maybe|like|its|it's|it is|was|is|ca|exactly|"
                     r"just|or so|ish|please|pls)\b|[~≈]")
_PART = re.compile(r"(-?\d+(?:[.,]\d+)?)(?:\s+(\d+)/(\d+))?\s*([a-z°º\"']*)\.?")


def parse_number(text: str, unit: str, system: str) -> float | None:
    """One number in the kept unit from typed text, or None: "11", "11,5 cm", "4 1/2 in", "5ft 10", "five".

    A number without a unit is in the lifter's own system. Two numbers, a range or other words give None.
    """
    clean = _FILLER.sub(" ", normalise(text)).strip(" .!")
    clean = re.sub(r"\b(?:and )?a half\b", " 1/2", clean)
    clean = clean.replace("½", " 1/2").replace("1⁄2", " 1/2").replace("¼", " 1/4").replace("¾", " 3/4")
    words = clean.split()
    if words and words[0] in NUMBER_WORDS:
        clean = " ".join([f"{NUMBER_WORDS[words[0]]:g}", *words[1:]])
    if re.fullmatch(r"\d/\d", clean):
        clean = f"0 {clean}"
    total, at, feet = 0.0, 0, False
    while at < len(clean):
        part = _PART.match(clean, at)
        if part is None or (at and not feet):
            return None
        number = float(part[1].replace(",", "."))
        if part[2]:
            if not float(part[3]):
                return None
            number += float(part[2]) / float(part[3])
        word = part[4]
        if not word and feet:
            word = "in"
        if word:
            known = unit_word(word)
            if known is None or known[0] != unit:
                return None
            total += number * known[1]
        else:
            total += to_kept(number, unit, system)
        feet = word in ("ft", "foot", "feet", "'") and not feet
        at = part.end()
        while at < len(clean) and clean[at] in " ,":
            at += 1
    return total if clean else None


@dataclass(frozen=True, slots=True)
class Number(Kind):
    """A number with its kept unit, the range that can be, the range that is usual, and an example (kept unit). ``choices``:
    answers to tap that are no number, such as "the same". ``called``: words that stand for the number that a fact holds, such as
    "just the bar", and that fact; where it holds none, the number is asked for."""

    kept_unit: str
    low: float
    high: float
    usual: tuple[float, float]
    example_value: float
    step: float = 0.1
    choices: tuple[Option, ...] = ()
    called: tuple[tuple[str, ...], str] = ((), "")

    @property
    def options(self) -> tuple[Option, ...]:
        return self.choices

    @property
    def unit(self) -> str:
        return self.kept_unit

    @property
    def typical(self) -> Value:
        return self.example_value

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        names, holder = self.called
        if names and normalise(text).strip(" .!") in names:
            held = ears.facts().get(holder)
            return Answer(round(held, 2), text, self.kept_unit) if isinstance(held, float) else Unclear(
                f"I do not know how much that is. I need one number{self._in(ears)}.")
        if self.choices and isinstance(chosen := pick(text, self.choices, ears), Answer):
            return chosen
        value = parse_number(text, self.kept_unit, ears.units)
        if value is None:
            return Unclear(f"I need one number{self._in(ears)}.")
        value = round(value, 2)
        if not self.low <= value <= self.high:
            span = f"{shown(self.low, self.unit, ears.units)} to {shown(self.high, self.unit, ears.units)}"
            return Unclear(f"That can't be right here: it goes from {span}.")
        return Answer(value, text, self.kept_unit)

    def _in(self, ears: Ears) -> str:
        return f" in {spoken_unit(self.unit, ears.units)}" if self.unit in ("cm", "kg") else ""

    def example(self, ears: Ears) -> str:
        return f"For example: {shown(self.example_value, self.unit, ears.units)}."

    def unusual(self, value: Value) -> bool:
        return not isinstance(value, str) and not self.usual[0] <= value <= self.usual[1]


_WHOLE: Final = re.compile("[0-4]|7|12|17|22")
_DECIMALS: Final = ("5", "25", "75")
"""What stands before and after a decimal comma where plates are named: 0.5, 1.25, 2.5, 12.5. Common practice, no source."""


def _cut_at_commas(part: str, points: bool) -> str:
    """A part of a list of numbers with its commas as gaps, unless its one comma is a decimal one ("1,25 and 2,5"). What may be
    both ("20,2,5") stays whole, so that it is asked again. ``points``: decimals are written with points there."""
    few = [one for one in re.split(r"[,;/+&]", part) if one]
    if points or "," not in part.removesuffix(","):
        return part.replace(",", " ")
    plain = [re.sub(r"[a-z]+$", "", one.lower()) for one in few]
    decimal = [bool(_WHOLE.fullmatch(whole)) and rest in _DECIMALS for whole, rest in pairwise(plain)]
    return part if any(decimal) else part.replace(",", " ")


@dataclass(frozen=True, slots=True)
class Numbers(Kind):
    """Several numbers with one kept unit, such as "20, 10, 5 and 2.5"; kept as text, the largest first: "20,10,5,2.5"."""

    kept_unit: str
    low: float
    high: float
    example_values: tuple[float, ...] = ()

    @property
    def unit(self) -> str:
        return self.kept_unit

    @property
    def samples(self) -> tuple[Value, ...]:
        return (",".join(f"{value:g}" for value in self.example_values),)

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        plain = " ".join(_cut_at_commas(part, "." in text.strip(" .")) for part in text.split())
        parts: list[str] = []
        for part in filter(None, re.split(r",\s+|[;/+&]|\band\b|\s+", plain.lower().strip(" .!"))):
            if unit_word(part) is None:
                parts.append(part)
            elif parts:  # "20 kg"
                parts[-1] += part
        if parts and not any(part[-1].isalpha() for part in parts[:-1]):  # "20, 10, 5 kg": one unit for all
            parts = [part + parts[-1].lstrip("0123456789.,-") for part in parts[:-1]] + parts[-1:]
        values = [parse_number(part, self.kept_unit, ears.units) for part in parts]
        if not parts or any(value is None or not self.low <= value <= self.high for value in values):
            return Unclear(f"I need a few numbers, each from {shown(self.low, self.unit, ears.units)} to "
                           f"{shown(self.high, self.unit, ears.units)}.")
        kept = sorted({round(value, 4) for value in values if value is not None}, reverse=True)
        return Answer(",".join(f"{value:g}" for value in kept), text, self.kept_unit)

    def example(self, ears: Ears) -> str:
        return f"For example: {', '.join(shown(value, self.unit, ears.units) for value in self.example_values)}."


@dataclass(frozen=True, slots=True)
class PainScore(Kind):
    """Pain from 0 (none) to 10 (worst), whole numbers."""

    @property
    def options(self) -> tuple[Option, ...]:
        return tuple(Option(str(n), str(n)) for n in range(11))

    @property
    def samples(self) -> tuple[Value, ...]:
        return tuple(float(option.value) for option in self.options)

    @property
    def typical(self) -> Value:
        return 0.0

    def tapped(self, option: Option, ears: Ears) -> Answer | Unclear:
        return Answer(float(option.value), option.label)

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        clean = re.sub(r"\s*(?:/|out of|of)\s*(?:10|ten)$", "", normalise(text).strip(" ."))
        value = 0.0 if clean in ("none", "no", "no pain", "nothing", "nil") else parse_number(clean, "", METRIC)
        if value is None or not 0 <= value <= 10 or value != int(value):  # the bounds first: so many digits are infinite
            return Unclear("I need a whole number from 0 to 10.")
        return Answer(value, text)

    def example(self, ears: Ears) -> str:
        return "0 is no pain, 10 the worst you can think of."


@dataclass(frozen=True, slots=True)
class Words(Kind):
    """A few words of the lifter's own, kept as they are; ``limit`` characters at most."""

    limit: int = 500
    example_text: str = ""

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("some words",)

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        clean = " ".join(text.split())
        if not clean:
            return Unclear("I need a few words.")
        if len(clean) > self.limit:
            return Unclear(f"That is too long to keep: {self.limit} letters at most.")
        return Answer(clean, text)

    def example(self, ears: Ears) -> str:
        return f"For example: {self.example_text}."


@dataclass(frozen=True, slots=True)
class Media(Kind):
    """A photo or a video, kept as the channel's own reference to it."""

    accepts: tuple[str, ...] = ("video", "photo")

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("file-1",)

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        return Unclear(f"I need a {' or a '.join(self.accepts)} here, not words.")

    def take(self, kind: str, ref: str) -> Answer | None:
        return Answer(ref, kind) if kind in self.accepts else None

    def example(self, ears: Ears) -> str:
        return "Send it here, or tap Skip."


@dataclass(frozen=True, slots=True)
class Zone(Kind):
    """A time zone: a city, an offset from UTC, or the time on the lifter's clock now. Kept as an IANA name or UTC±hh:mm."""

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("UTC+00:00", "UTC+05:30")

    def read(self, text: str, ears: Ears) -> Answer | Unclear:
        from companion.conversation.places import find_zone

        found = find_zone(text, ears.now)
        return Answer(found, text) if found else Unclear("I don't know that place.")

    def take(self, kind: str, ref: str) -> Answer | None:
        from companion.conversation.places import zone_at

        found = zone_at(ref) if kind == "location" else None
        return Answer(found, "a location") if found else None

    def example(self, ears: Ears) -> str:
        return "Try a bigger city, “UTC+1”, or the time on your clock now, such as 18:40."
