"""Quantities in what people type: numbers in digits and words, with their units.

"11 and a half", "sixty-four", "one thirty five lb", "4 1/4 in", "5'10", "13 stone 2", "1m80", "three n a half inch". Counts of something
else ("3 sets of 5", "2 plates") are told apart, as are ordinals. One pound is 0.45359237 kg and one inch 2.54 cm, both exact
(international yard and pound agreement, 1959); a stone is 14 pounds.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Final, NamedTuple

from companion.language.clauses import flat
from companion.language.slips import NEVER, begun_as, nearest_word
from companion.language.units import unit_word


class Quantity(NamedTuple):
    """A number as typed. ``unit``: the stored unit it was typed with, the value then being in it; "" for a bare number. ``start`` and
    ``end``: its place in ``spelt`` of the message. ``counts``: true if it counts something else, such as sets; ``size``: of its unit in the
    stored one; ``rated``: true if it was said out of ten."""

    value: float
    unit: str
    start: int
    end: int
    counts: bool = False
    size: float = 1.0
    rated: bool = False


_ONES: Final = {word: n for n, word in enumerate((
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
    "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"))} | {
        "nought": 0, "naught": 0, "nil": 0, "zilch": 0, "nada": 0, "forteen": 14, "fourty": 40, "couple": 2, "dozen": 12, "hundo": 100,
        "wan": 1}
_TENS: Final = {"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
_WORD: Final = re.compile(r"[a-z]+|[^a-z]+")
_ISH: Final = re.compile(rf"\b({'|'.join([*_ONES, *_TENS, 'hundred'])})-?ish\b")
_UNITS: Final = (r"(?:cms?|centimet(?:re|er)s?|mms?|millimet(?:re|er)s?|met(?:re|er)s?|m|inch(?:es)?|"
                 r"ins?(?! (?:my|the|an?|all|total|each|both|one|bare|socks|shoes|here|it|front|old)\b)|\"|''|feet|foot|ft|'|kgs?|kilos?|"
                 r"kilograms?|kilogrammes?|lbs?|pound(?:s|er)?|stones?|st|degrees?|degs?|grados|°|secs?|"
                 r"segundos|sekunden|secondes|seconds?(?! (?:go|time|try|one|attempt|reading|turn|set|side)\b)|s|mins?|"
                 r"minutes?|years?|yrs?|y|months?)")
_QUANTITY: Final = re.compile(
    rf"(?<![\w.,/])(-?\d+(?:[.,]\d+)?)(?:[ -]+(\d+)/(\d+)|/(\d+)(?![\d/]))?(?:\s*-?(?:ish\b|odd\b))?"
    rf"(?:\s*({_UNITS})(?![a-z]))?(?:\s*(?:ish|odd)\b)?")
_REST: Final = re.compile(_QUANTITY.pattern.removeprefix(r"(?<![\w.,/])"))
_COUNTED: Final = re.compile(
    r"\s*(?:x\b|×|sets?\b|reps?\b|times?\b|squats?\b|goes\b|go\b|tries\b|try\b|attempts?\b|rounds?\b|plates?\b|fingers?\b|days?\b|"
    r"weeks?\b|more\b|th\b|rd\b|nd\b|of (?:them|five|ten|\d)|people\b|legs?\b|feet wide|singles\b|doubles\b|triples\b|fives\b|pm\b|am\b|"
    r"oclock\b|percent\b|%|st\b)")
_DRAWN_OUT: Final = re.compile(r"([a-z])\1{2,}")
_SIDED: Final = re.compile(r"\b([lr])(?=\d)")
_JOINED: Final = re.compile(rf"\b({'|'.join(_TENS)})({'|'.join(word for word, number in _ONES.items() if 0 < number < 10)})\b")
_FIVES: Final = re.compile(rf"\b({'|'.join(_TENS)})[ -]fives\b")
_OH: Final = re.compile(rf"\b(one|two) (?:oh?|0) ({'|'.join(word for word, number in _ONES.items() if 0 < number < 10)}|[1-9])\b")
_SAID_UNIT: Final = (r"(?:inch(?:es)?|cms?|centimet(?:re|er)s?|mms?|millimet(?:re|er)s?|kgs?|kilos?|kilograms?|lbs?|pounds|degrees?|"
                     r"secs?|seconds|segundos|sekunden|secondes|grados)")
"""Units that are no other word, so that they may stand apart from their number."""
_BEFORE_UNIT: Final = re.compile(rf"\b[a-z]{{3,6}}(?= {_SAID_UNIT}\b)")
_MISSPELT: Final = re.compile(r"(?<=\d )[a-z]{4,12}\b")
_YEAR: Final = re.compile(r"\bin ((?:19|20)\d\d)\b")
_SETS: Final = re.compile(
    r"(?<![\w.,])(\d{1,2})\s*(?:x|×|\*|by|sets? (?:of|x)|sets? by)\s*(\d{1,2})(?![\d.,])(?:\s*reps?\b)?|"
    r"(?<=\d)\s*(?:kg|kgs|kilos?|lbs?|pounds?)?\s*(?:x|×|for)\s*\d{1,2}(?![\d.,]|\s*(?:kg|kilo|lb|pound|x\b|sets))"
    r"(?:\s*(?:reps?|s)\b)?(?:\s*x\s*\d{1,2})?")
_RATING: Final = re.compile(r"\s*(?:/|out of|of)\s*(?:10|ten)\b")
_POINT: Final = re.compile(r"(?<!\d)(\d+) (?:point|comma|dot) (\d+(?: \d)*)\b")
_AND_A_HALF: Final = re.compile(r"(?<!\d)(\d+)(?: |-)*(?:and|an|n|&|\+) ?(?:an? )?(half|quarter|third)\b(?! (?:past|way|squat|an? hour))")
_HALVES: Final = (
    (re.compile(rf"\b([1-9]) (\d) (\d)(?= {_SAID_UNIT}\b)"), r"\1\2\3"),
    (re.compile(r"\b(\d+)(?: cms?| centimet(?:re|er)s?)? (?:and|n|&) (\d) ?(?:mms?|millimet(?:re|er)s?)\b"), r"\1.\2 cm"),
    (re.compile(r"\b([2-9])0 ate\b"), r"\g<1>8 ate"),
    (re.compile(r"\b([2-9])0 (?:for|fore)(?=$|[.!])"), r"\g<1>4 fore"),
    (re.compile(r"\b(?:a )?couple of\b"), "2"),
    (re.compile(r"\b(?:a )?decade\b"), "10 years"),
    (re.compile(r"\b(\d+) and a bit,? (?:say |call it |make it )?(?:an? |about )?half\b"), r"\1 1/2"),
    (re.compile(r"\b([1-9]) decades\b"), r"\g<1>0 years"),
    (re.compile(r"(?<!half )(?<!\d )\ba (year|month|stone|metre|meter|foot)\b(?! (?:and|n|&|stick|rule|ruler|tape) )"), r"1 \1"),
    (re.compile(r"(?<!\d )\b(?:(?:a|one|1) )?(year|month|stone|foot|metre|meter) (?:and|n|&) (?:a )?half\b"), r"1 1/2 \1"),
    (re.compile(r"(?<!\d)(\d+)(?: |-)*(?:and|n|&|\+) ?3 quarters?\b"), r"\1 3/4"),
    (re.compile(r"\b(\d+) (year|yr|month|stone|foot|inch|metre|meter|kilo|degree|second|sec)s? (?:and|n|&) (?:a )?half\b"
                r"(?! (?:an? |of an )?inch)"), r"\1 1/2 \2"),
    (re.compile(r"\b([2-9])0 for (?=(?:degrees?|kilos?|kgs?|cm|pounds?|lbs?|secs?|seconds?)\b)"), r"\g<1>4 "),
    (re.compile(r"\bhalf(?: a| an| of a|)\b(?= (?:year|stone|inch|metre|meter|min))"), "0 1/2"),
    (re.compile(r"(?<![\d/])\b(?:a|one|1) quarter\b(?= (?:of an )?inch)"), "0 1/4"),
    (re.compile(rf"(?<=\d)(?:,? and (?:nothing|nowt))?,?(?: of the| (?:measured |all )?in)? (?={_SAID_UNIT}\s*(?:[^\w\s]|$))"), " "),
    (re.compile(rf"^(?:in )?({_SAID_UNIT}),? (?:its |thats |it is |it was |about )?(\d+(?:\.\d+)?(?: \d/\d)?)$"), r"\2 \1"),
)
_FRACTION: Final = {"half": "1/2", "quarter": "1/4", "third": "1/3"}
_RATIO: Final = {"ft": (12.0, "cm", 2.54), "foot": (12.0, "cm", 2.54), "feet": (12.0, "cm", 2.54), "'": (12.0, "cm", 2.54),
                 "st": (14.0, "kg", 0.45359237), "stone": (14.0, "kg", 0.45359237), "stones": (14.0, "kg", 0.45359237),
                 "m": (100.0, "cm", 1.0), "metre": (100.0, "cm", 1.0), "meter": (100.0, "cm", 1.0)}
"""Units that a smaller one follows without its name: how many of it make one, and the stored unit of one of it."""

STONE_LEAST: Final = 4
"""Least number before "st" that is stones and not an ordinal ("1st")."""


@lru_cache(maxsize=256)
def spelt(text: str) -> str:
    """Return a message flat, with number words as digits: "sixty-four" → "64", "eleven and a half" → "11 1/2"."""
    plain = flat(text).replace("⁄", "/")
    plain = re.sub(r"(?<=\d),(?=\d{1,2}(?!\d))", ".", plain)
    plain = re.sub(r"(?<=\d)(?=[½¼¾])", " ", plain).replace("½", "1/2").replace("¼", "1/4").replace("¾", "3/4")
    plain = _DRAWN_OUT.sub(r"\1", plain)
    plain = _BEFORE_UNIT.sub(lambda found: _one_like(found[0]), plain)
    plain = _ISH.sub(r"\1 ish", _FIVES.sub(lambda found: f"{_TENS[found[1]] + 5}s", plain))
    plain = _SIDED.sub(r"\1 ", _JOINED.sub(r"\1 \2", _OH.sub(r"\1 hundred and \2", plain)))
    plain = "".join(_digits(plain))
    plain = _POINT.sub(lambda found: f"{found[1]}.{found[2].replace(' ', '')}", plain)
    plain = _AND_A_HALF.sub(lambda found: f"{found[1]} {_FRACTION[found[2]]}", plain)
    for pattern, form in _HALVES:
        plain = pattern.sub(form, plain)
    return _MISSPELT.sub(lambda found: _unit_like(found[0]), plain)


_LONG_UNITS: Final = ("inches", "centimetres", "kilos", "kilograms", "pounds", "stones", "degrees", "seconds", "minutes", "years", "months")


def _unit_like(word: str) -> str:
    """Return the unit that a word right after a number is one slip from, "inchs" → "inches"; else the word."""
    if unit_word(word) or word == "kills":
        return word
    return nearest_word(word, begun_as(word, _LONG_UNITS), two_from=NEVER) or word


_SHORT_ONES: Final = ("three", "four", "five", "seven", "eight", "nine")
_ELSEWHERE: Final = {word: f"{n}" for words in (
    "dos tres cuatro cinco seis siete ocho nueve diez", "zwei drei vier - sechs sieben acht neun zehn", "deux trois quatre cinq")
    for n, word in enumerate(words.split(), 2)}
"""Numbers of other languages, read only before a unit."""
_NO_ONES: Final = frozenset(("fine", "none", "there", "fire", "file", "thee"))
"""Words one slip from these that are none."""


def _one_like(word: str) -> str:
    """Return the number that a word right before a unit is in another language, or one slip from, "sevn" → "seven"; else the word."""
    if word in _ELSEWHERE or not 3 < len(word) < 6:
        return _ELSEWHERE.get(word, word)
    near = None if word in _NO_ONES or word in _ONES or word in _TENS else nearest_word(word, begun_as(word, _SHORT_ONES), two_from=NEVER)
    return near or word


_LONGEST_ONES: Final = tuple(word for word, number in _ONES.items() if 10 < number < 20)


_NO_TENS: Final = frozenset(("fifth", "sixth", "eighth", "forth", "fort", "forte", "thirsty", *_ONES))
"""Words one slip from a ten that are none."""


def _tens(word: str) -> str:
    """Return the ten, or the number from eleven on, that a word is one slip from, "sevnty" → "seventy": left as it is, "sevnty two" would
    be 2; else the word."""
    if len(word) > 4 and word.isalpha() and word not in _ONES and (near := nearest_word(
            word, [one for one in begun_as(word, _LONGEST_ONES) if len(one) - len(word) in (0, 1)], two_from=NEVER)):
        return near
    if not 3 < len(word) < 9 or word in _TENS or word in _NO_TENS or not word.isalpha():
        return word
    return nearest_word(word, begun_as(word, _TENS), two_from=NEVER) or word


def _digits(plain: str) -> Iterator[str]:
    """Yield a text's pieces with runs of number words as digits."""
    pieces = [_tens(piece) for piece in _WORD.findall(plain)]
    at = 0
    while at < len(pieces):
        taken, number = _number(pieces, at)
        if taken and not (pieces[at] == "one" and (_pronoun(pieces, at) if taken == 1 else pieces[max(at - 2, 0)] in _WHICH_ONE)):
            yield f"{number}"
            at += taken
        else:
            yield pieces[at]
            at += 1


_BEFORE_ONE: Final = ("", "a", "about", "just", "only", "maybe", "say", "roughly", "felt", "is", "was", "point", "and", "n", "hundred",
                      "foot", "feet", "ft")
"""Words after which "one" is a number; "" for none."""
_WHICH_ONE: Final = frozenset(("upper", "lower", "other", "this", "that", "next", "last", "first", "second", "third", "left", "right"))
"""Words after which "one" is a thing also before a number: "the upper one forty four"."""


def _pronoun(pieces: list[str], at: int) -> bool:
    """True if "one" stands for a thing ("the other one", "one more"), not for a number."""
    before = next((piece for piece in reversed(pieces[:at]) if piece.isalpha()), "")
    after = pieces[at + 1:at + 3]
    follows = after[1] if len(after) == 2 and after[0] == " " else ""
    goes_on = follows.isalpha() and follows not in _ONES and not re.fullmatch(_UNITS, follows) and follows not in (
        "ish", "point", "and", "or", "n", "i", "maybe")
    return before not in _BEFORE_ONE or goes_on


def _number(pieces: list[str], at: int) -> tuple[int, int]:
    """Return how many pieces from one on spell a number, and the number; (0, 0) for none."""
    def word(n: int) -> str:
        return pieces[n] if n < len(pieces) else ""

    def joined(n: int) -> bool:
        return word(n) in (" ", "-", "- ", " - ")

    first, used = word(at), 1
    if first in ("a", "one") and joined(at + 1) and word(at + 2) in ("hundred", "dozen"):
        total, used = 100 if word(at + 2) == "hundred" else 12, 3
    elif first == "hundred":
        total = 100
    elif first in _TENS:
        total = _TENS[first]
        if joined(at + 1) and 0 < _ONES.get(word(at + 2), 0) < 10:
            return 3, total + _ONES[word(at + 2)]
        return 1, total
    elif first in _ONES:
        total = _ONES[first]
        if 0 < total < 10 and joined(at + 1) and word(at + 2) == "hundred":
            total, used = total * 100, 3
        elif 0 < total < 3 and joined(at + 1) and _ONES.get(word(at + 2), 0) > 9:  # "one ten", "two fifteen"
            return 3, total * 100 + _ONES[word(at + 2)]
        elif 0 < total < 10 and joined(at + 1) and word(at + 2) in _TENS:  # "one thirty five", "two forty"
            more, rest = _number(pieces, at + 2)
            return 2 + more, total * 100 + rest
        else:
            return 1, total
    else:
        return 0, 0
    skip = 2 if joined(at + used) and word(at + used + 1) == "and" else 0
    if joined(at + used + skip):
        more, rest = _number(pieces, at + used + skip + 1)
        if more and 0 < rest < 100:
            return used + skip + 1 + more, total + rest
    return used, total


SIZES: Final = {"tens": 10, "fives": 5, "twenties": 20, "twentys": 20, "fifteens": 15, "twentyfives": 25}
"""Words for plates of a size."""
_SIZES: Final = re.compile(rf"\b({'|'.join(SIZES)})\b")


def sized(text: str) -> str:
    """Return a text with the words for plates of a size in digits: "two twenties" → "two 20s"."""
    return _SIZES.sub(lambda found: f"{SIZES[found[1]]}s", _FIVES.sub(lambda found: f"{_TENS[found[1]] + 5}s", text))


_TALL: Final = re.compile(r"(?<![\d.])([4-7])[ .,-]{1,2}(\d|1[01])(?![\d.])(?: ?(?:tall|in|inches))?")
_METRES: Final = re.compile(r"(?<![\d.])([12]\.\d{1,2})(?![\d.])(?! ?(?:m|cm|k|l|f|s|d|y)\w*)")


def height(text: str) -> float | None:
    """Return a height in cm from feet and inches or metres whose units are left out: "five eleven", "6 2", "1.78"; None for none."""
    plain = spelt(text)
    if found := _METRES.search(plain):
        return round(float(found[1]) * 100, 1)
    found = _TALL.search(plain)
    return round((12 * int(found[1]) + int(found[2])) * 2.54, 2) if found else None


@lru_cache(maxsize=256)
def quantities(text: str) -> tuple[Quantity, ...]:
    """Return the quantities in a message in order. Never raises."""
    plain = spelt(text)
    reps = [found.span() for table in (_SETS, _YEAR) for found in table.finditer(plain)]
    found: list[Quantity] = []
    past = 0
    for part in _QUANTITY.finditer(plain):
        if part.start() < past:
            continue
        counts = any(start <= part.start() < end for start, end in reps)
        one = _quantity(part, plain)
        if one is None:
            continue
        past = one.end
        ratio = _RATIO.get(part[5] or "")
        rest = _REST.match(plain, _after(plain, part.end())) if ratio and not counts else None
        if ratio and rest and (whole := _smaller(rest, ratio, one.value)):
            one, past = whole._replace(start=part.start()), rest.end()
        found.append(one._replace(counts=counts or one.counts))
    return tuple(found)


def _after(plain: str, at: int) -> int:
    while at < len(plain) and plain[at] in " ,":
        at += 1
    return at


def _quantity(part: re.Match[str], plain: str) -> Quantity | None:
    number, word = float(part[1].replace(",", ".")), part[5] or ""
    end, counts = part.end(), False
    if part[2]:
        if not float(part[3]):
            return None
        number += float(part[2]) / float(part[3])
    elif part[4]:
        if number >= float(part[4]) > 0 and float(part[4]) != 10:  # "80/79": two readings, and only the first is read here
            return Quantity(number, "", part.start(), part.end(1))
        if float(part[4]) == 10 and number <= 10 and not word:
            return Quantity(number, "", part.start(), end, rated=True)
        if not float(part[4]):
            return None
        number /= float(part[4])
    if word == "st" and number < STONE_LEAST:
        return Quantity(number, "", part.start(), end, True)
    known = unit_word(word) if word else None
    if not word and (rating := _RATING.match(plain, end)):
        return Quantity(number, "", part.start(), rating.end(), rated=True)
    elif not word and _COUNTED.match(plain, end):
        counts = True
    if known is None:
        return Quantity(number, "", part.start(), end, counts)
    return Quantity(number * known[1], known[0], part.start(), end, counts, known[1])


def _smaller(rest: re.Match[str], ratio: tuple[float, str, float], before: float) -> Quantity | None:
    """Return a larger and a smaller unit as one quantity, None if the second number does not belong to the first."""
    most, unit, size = ratio
    number = float(rest[1].replace(",", ".")) + (float(rest[2]) / float(rest[3]) if rest[2] and float(rest[3]) else 0)
    word = rest[5] or ""
    known = unit_word(word) if word else (unit, size)
    if known is None or known[0] != unit or (word and known[1] != size) or not 0 <= number < most or rest[4]:
        return None
    if most == 100 and not word and len(rest[1]) == 1:
        number *= 10  # "1m8"
    return Quantity(before + number * size, unit, rest.start(), rest.end())
