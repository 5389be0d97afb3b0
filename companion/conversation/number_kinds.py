"""Kinds of question that ask for numbers, and the reading of numbers from typed replies."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final

from companion.conversation.condition import Value
from companion.conversation.kinds import Answer, Kind, Option, ReadingContext, Unclear, pick
from companion.language.limits import in_the_unit, kilos_alone, new_kilos, new_kilos_till
from companion.language.phrases import normalise
from companion.language.quantities import sized
from companion.language.units import METRIC, shown, spoken_unit, to_kept, unit_word

NUMBER_WORDS: Final = {word: float(n) for n, word in enumerate(
    ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
     "fourteen", "fifteen"))}
_FILLER = re.compile(r"\b(?:about|abt|bout|around|arnd|circa|roughly|approx|approximately|maybe|like|its|it's|it is|was|is|ca|exactly|"
                     r"just|or so|ish|please|pls)\b|[~≈]")
_PART = re.compile(r"(-?\d+(?:[.,]\d+)?)(?:\s+(\d+)/(\d+))?\s*([a-z°º\"']*)\.?")


def parse_number(text: str, unit: str, system: str) -> float | None:
    """Return one number in the stored unit from typed text, or None: "11", "11,5 cm", "4 1/2 in", "5ft 10", "five".

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
    """A number with its stored unit, the possible and the usual range, and an example (in the stored unit). ``choices``: answers to tap
    that are not numbers, such as "the same". ``called``: words for the number that a fact holds, such as "just the bar", and that fact; if
    it is not known, the number is asked for. Questions that differ only in this ask for the same thing."""

    kept_unit: str
    low: float
    high: float
    usual: tuple[float, float]
    example_value: float
    step: float = 0.1
    choices: tuple[Option, ...] = ()
    called: tuple[tuple[str, ...], str] = field(default=((), ""), compare=False)

    @property
    def options(self) -> tuple[Option, ...]:
        return self.choices

    @property
    def unit(self) -> str:
        return self.kept_unit

    @property
    def typical(self) -> Value:
        return self.example_value

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        names, holder = self.called
        if names and normalise(text).strip(" .!") in names:
            held = context.facts().get(holder)
            return Answer(round(held, 2), text, self.kept_unit) if isinstance(held, float) else Unclear(
                f"I do not know how much that is. I need one number{self._in(context)}.")
        if self.choices and isinstance(chosen := pick(text, self.choices, context), Answer):
            return chosen
        value = parse_number(text, self.kept_unit, context.units)
        if value is None:
            return Unclear(f"I need one number{self._in(context)}.")
        value = round(value, 2)
        if not self.low <= value <= self.high:
            span = f"{shown(self.low, self.unit, context.units)} to {shown(self.high, self.unit, context.units)}"
            return Unclear(f"That can't be right here: it must be from {span}.")
        return Answer(value, text, self.kept_unit)

    def names_it(self, text: str) -> bool:
        """True if a reply is words for the number that a fact holds."""
        return normalise(text).strip(" .!") in self.called[0]

    def claims(self, text: str, context: ReadingContext) -> bool:
        value = parse_number(text, self.kept_unit, context.units)
        return value is not None and self.low <= value <= self.high

    def _in(self, context: ReadingContext) -> str:
        return f" in {spoken_unit(self.unit, context.units)}" if self.unit in ("cm", "kg") else ""

    def example(self, context: ReadingContext) -> str:
        return f"For example: {shown(self.example_value, self.unit, context.units)}."

    def unusual(self, value: Value) -> bool:
        return not isinstance(value, str) and not self.usual[0] <= value <= self.usual[1]


_WHOLE: Final = re.compile("[0-4]|7|12|17|22")
_DECIMALS: Final = ("5", "25", "75")
"""Whole and decimal parts of plate sizes written with a comma: 0.5, 1.25, 2.5, 12.5. Common practice, no source."""


def _cut_at_commas(part: str, points: bool) -> str:
    """Return a part of a list of numbers with spaces for its commas, unless its only comma is a decimal one ("1,25 and 2,5"). A part that
    could be either ("20,2,5") stays whole, so that it is asked again. ``points``: true if decimals in the list are written with points."""
    few = [one for one in re.split(r"[,;/+&]", part) if one]
    if points or "," not in part.removesuffix(","):
        return part.replace(",", " ")
    plain = [re.sub(r"[a-z]+$", "", one.lower()) for one in few]
    decimal = [bool(_WHOLE.fullmatch(whole)) and rest in _DECIMALS for whole, rest in pairwise(plain)]
    return part if any(decimal) else part.replace(",", " ")


_ALL_IN: Final = re.compile(r"\s+(?:all )?in (kg|kgs|kilos?|lbs?|pounds)$")
"""The unit of all numbers, at the end: "45s, 25s and tens in pounds"."""

LIST_LONGEST: Final = 400
"""Most characters of a list of numbers; our choice."""
_PLURAL: Final = re.compile(
    r"(?<=\d)('?s)\b|,? ?\b(?:[2-9]|two|four|a pair|a couple) (?:of )?each\b|\b(?:a )?(?:pair|pairs|couple|set) of\b|"
    r"\b(?:some|plus|got|have|ive|i|an)\b|\b(?:[2468]|two|four|six|eight) (?:x )?(?=\d[\d.]*'?s\b)")
"""Words beside the sizes of plates: "45s, a pair of 2.5s"."""


@dataclass(frozen=True, slots=True)
class Numbers(Kind):
    """Several numbers with one stored unit, such as "20, 10, 5 and 2.5"; stored as text, largest first: "20,10,5,2.5"."""

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

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        text = _PLURAL.sub(" ", sized(text.casefold())) if len(text) <= LIST_LONGEST else ""
        text = _ALL_IN.sub(r" \1", text.strip(" .!"))
        plain = " ".join(_cut_at_commas(part, "." in text.strip(" .")) for part in text.split())
        parts: list[str] = []
        for part in filter(None, re.split(r",\s+|[;/+&]|\band\b|\s+", plain.lower().strip(" .!"))):
            if unit_word(part) is None:
                parts.append(part)
            elif parts:  # "20 kg"
                parts[-1] += part
        if parts and not any(part[-1].isalpha() for part in parts[:-1]):  # "20, 10, 5 kg": one unit for all
            parts = [part + parts[-1].lstrip("0123456789.,-") for part in parts[:-1]] + parts[-1:]
        values = [parse_number(part, self.kept_unit, context.units) for part in parts]
        if not parts or any(value is None or not self.low <= value <= self.high for value in values):
            return Unclear(f"I need a few numbers, each from {shown(self.low, self.unit, context.units)} to "
                           f"{shown(self.high, self.unit, context.units)}.")
        kept = sorted({round(value, 4) for value in values if value is not None}, reverse=True)
        return Answer(",".join(f"{value:g}" for value in kept), text, self.kept_unit)

    def example(self, context: ReadingContext) -> str:
        return f"For example: {', '.join(shown(value, self.unit, context.units) for value in self.example_values)}."


@dataclass(frozen=True, slots=True)
class LimitKilos(Number):
    """The weight above which a clinician's limit closes everything; read in a sentence that says no more: "nothing over 40 kg". A unit
    alone is put right of the fact "told_kg", which "told_words" told."""

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        return Number.read(self, kilos_alone(text, context.units) or text, context)

    def anew(self, text: str, context: ReadingContext) -> Answer | None:
        told = new_kilos(text, context.units) or new_kilos_till(text, context.units)
        kilos, facts = told.kg if told else None, context.facts()
        if kilos is None and isinstance(stands := facts.get("told_kg"), float):
            kilos = in_the_unit(text, stands, str(facts.get("told_words", "")), context.units)
        return Answer(kilos, text, self.kept_unit) if kilos is not None and self.low <= kilos <= self.high else None


_SAYS_IT_IS: Final = re.compile(r"^(?:(?:it'?s|it is|it was|i'd say|say|about|around|maybe|like|just|still|now|an?|solid|good)\s+)+")
_SAYS_NOW: Final = re.compile(r",?\s+(?:right now|now|today|at the moment|atm|at rest|i think|i guess|i'd say|or so|ish)$")
_OUT_OF_TEN: Final = re.compile(r"\s*(?:/|out of|of)\s*(?:10|ten)$")


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

    def tapped(self, option: Option, context: ReadingContext) -> Answer | Unclear:
        return Answer(float(option.value), option.label)

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        clean = _OUT_OF_TEN.sub("", _SAYS_NOW.sub("", _SAYS_IT_IS.sub("", normalise(text).strip(" .!"))))
        value = 0.0 if clean in ("none", "no", "nope", "nah", "no pain", "nothing", "nil") else parse_number(clean, "", METRIC)
        if value is None or not 0 <= value <= 10 or value != int(value):  # the bounds first: so many digits are infinite
            return Unclear("I need a whole number from 0 to 10.")
        return Answer(value, text)

    def example(self, context: ReadingContext) -> str:
        return "0 is no pain, 10 the worst you can think of."
