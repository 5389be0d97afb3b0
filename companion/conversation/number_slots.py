"""Numbers in a sentence: which question each belongs to, the open one or one still to come."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

from companion.conversation.condition import Value
from companion.conversation.draft import Draft
from companion.conversation.flow import SIDES, Ask, Run
from companion.conversation.kinds import Ready, YesNo
from companion.conversation.number_kinds import Number
from companion.language.act_rules import tables_in, words_of
from companion.language.choosing import ASSERTING
from companion.language.clauses import Clause, Mood
from companion.language.plates import USUAL_BARS, loaded
from companion.language.quantities import Quantity, height, quantities, spelt
from companion.language.units import IMPERIAL, KG_PER_POUND, to_kept, unit_word

ABOUT_ONESELF: Final = ("mass", "load", "height", "years", "felt", "shin", "thigh", "trunk")
"""Questions whose numbers are told apart by the words beside them."""

_ADDED: Final = frozenset(("plate", "plates", "bar", "plus", "side", "end", "ends"))
"""Words that leave open what a load adds up to."""

_LEFT: Final = frozenset(("left", "l", "lhs", "lt", "lft"))
_RIGHT: Final = frozenset(("right", "r", "rhs", "rt", "rgt"))
_SINCE: Final = re.compile(r"\b(?:since|from|in) ((?:19|20)\d\d)\b")
_SEQUENCE: Final = re.compile(r"\b(?:then|second|2nd|next|again|after|and|first|1st)\b|,")

_RANGED: Final = frozenset(("or", "between", "could", "might", "either", "somewhere", "maybe", "perhaps"))
"""Words with which several numbers are no numbers in turn."""
_COMPARED: Final = re.compile(r"\d(?: ?[a-z°]+)? (?:more|less|further|longer|shorter|better|worse|up|down|higher|lower) (?:than|on|from)\b")
"""A number that only tells how much another one changed: "two more than before"."""

NUMBERS_MOST: Final = 20
"""Most numbers of a message that answers a question; our choice."""

SAME_WITHIN: Final = 0.03
"""By how much of it a number told in two units may differ; our choice."""

BESIDE_MOST: Final = 3
"""Most telling words beside the only number of a message that is taken without asking back; our choice."""


class Slot(NamedTuple):
    """One question and its answer."""

    key: str
    value: Value
    unit: str = ""


class FoundNumber(NamedTuple):
    """A number in a clause, with its side. ``beside``: the words that may name its question."""

    quantity: Quantity
    side: str
    clause: Clause
    beside: str


def number_slots(draft: Draft, ask: Ask, kind: Number, whole: Sequence[Clause]) -> tuple[Slot | None, list[Slot], bool]:
    """Return the open question's number, those of questions to come, and whether there is no doubt."""
    asserted = [clause for clause in whole if clause.mood in ASSERTING]
    count = sum(len(quantities(clause.raw)) for clause in asserted)
    if count > NUMBERS_MOST:
        return None, [], False
    found = [one for clause in asserted for one in sided_numbers(clause, ask.side if count > 1 else "")]
    mine = [one for one in found if not one.quantity.counts and one.quantity.unit in ("", kind.unit)
            and not (one.quantity.rated and kind.unit not in ("", "s"))]
    if len(mine) == 2 and _told_twice(draft, kind, mine[0].quantity, mine[1].quantity):
        mine = mine[:1]
    elif mine and mine[-1].quantity.unit and ask.key not in ABOUT_ONESELF:
        mine = [one._replace(quantity=_in_unit_of(mine[-1].quantity, one.quantity)) for one in mine]  # "left 4, right 5 inches"
    typed = [one for one in mine if one.quantity.unit]
    about = _about(ask)
    own = [one for one in mine if not one.side or one.side == ask.side]
    if len(own) > 1 and about and (told := [one for one in own if re.search(rf"\b(?:{about})\b", one.beside)]):
        own = told[:1]
    first: Slot | None = None
    rest: list[Slot] = []
    if kind.unit == "kg" and (load := loaded(", ".join(clause.raw for clause in asserted), draft.units == IMPERIAL, _own_bar(draft))):
        return Slot(ask.key, load, kind.unit), [], False
    if kind.unit == "years" and draft.known.now and (since := _SINCE.search(" ".join(clause.text for clause in asserted))):
        return Slot(ask.key, float(max(draft.known.now.year - int(since[1]), 0)), kind.unit), [], False
    if any(_COMPARED.search(clause.raw) for clause in asserted):
        return None, [], False
    if ask.key == "height" and not typed and not any(kind.low <= one.quantity.value <= kind.high for one in mine):
        tall = height(", ".join(clause.raw for clause in asserted))
        return (Slot(ask.key, tall, kind.unit) if tall else None), [], False
    certain = all(clause.mood is Mood.SAID and not (kind.unit == "kg" and _ADDED & set(clause.words)) and not any(
        map(_unclear, clause.raw.split())) for clause in whole) and sum(
        _tells(word) for clause in whole for word in clause.words) <= BESIDE_MOST
    if len({one.quantity.value for one in own}) == 1:
        own = own[:1]
    if len(own) > 1 and not _in_turn(whole):
        same = [one for one in own[:-1] if one.quantity.value == own[-1].quantity.value]
        alone = [one for one in own[:1] if len(one.clause.words) == 1]
        own, certain = same[:1] or alone or own, False
    if own and (len(own) == 1 or (typed[:1] == own[:1] and not any(map(_ranged, whole))) or _in_turn(whole)):
        first = slot_of(draft, ask, own[0].quantity)
        keys = _alike(draft, ask)
        for one, key in zip(own[1:], keys, strict=False):
            rest += filter(None, [slot_of(draft, key, _in_unit_of(own[0].quantity, one.quantity))])
        certain = certain and len(mine) == 1
        other = [one for one in mine if one.side and one.side != ask.side]
        if other and ask.side and (there := _other_side(draft, ask)) is not None and (
                slot := slot_of(draft, there, _in_unit_of(own[0].quantity, other[0].quantity))):
            rest.append(slot)
        for one in mine:
            there = next((later for later in asked_ahead(draft) if isinstance(later.kind, Number) and later.kind.unit == kind.unit and (
                here := _about(later)) and re.search(rf"\b(?:{here})\b", one.beside)), None) if one not in own else None
            rest += filter(None, [slot_of(draft, there, _in_unit_of(own[0].quantity, one.quantity)) if there else None])
    more = [one for one in found if one.quantity.unit and one.quantity.unit != kind.unit and not one.quantity.counts]
    for one in more if first else ():
        if there := next((later for later in asked_ahead(draft) if isinstance(later.kind, Number) and later.kind.unit == one.quantity.unit
                          and later.key not in {slot.key for slot in rest} and _meant(later, one, more)), None):
            rest += filter(None, [slot_of(draft, there, one.quantity)])
    return first, rest, certain


def _told_twice(draft: Draft, kind: Number, first: Quantity, last: Quantity) -> bool:
    """True if the last number is the first one in another unit: "11, so 4.3 inches"."""
    size = first.size if first.unit else to_kept(1, kind.unit, draft.units)
    value = first.value if first.unit else first.value * size
    return bool(last.unit) and last.size != size and abs(value - last.value) < SAME_WITHIN * last.value


def _in_unit_of(first: Quantity, later: Quantity) -> Quantity:
    """Return a bare number in the unit that the first one was said in."""
    return later if later.unit or not first.unit else later._replace(value=later.value * first.size, unit=first.unit)


def _own_bar(draft: Draft) -> float | None:
    """Return the weight in kg of the lifter's own bar, None if it is not known."""
    facts = draft.facts()
    light = USUAL_BARS["lb"][1] * KG_PER_POUND if draft.units == IMPERIAL else USUAL_BARS["kg"][1]
    own = {"other": facts.get("bar.weight"), "light": light}.get(str(facts.get("bar.bar")), facts.get("bar_kg"))
    return own if isinstance(own, float) else None


def _tells(word: str) -> bool:
    """True if a word beside a number says something more than its unit or side."""
    return not (word[0].isdigit() or word in words_of("filler") or word in _LEFT | _RIGHT or unit_word(word))


_HEARD_ALIKE: Final = frozenset(("ate", "fore"))
"""Words written for a number that they sound like: "sixty ate"."""


def _unclear(word: str) -> bool:
    """True if a word leaves open which number was meant: "7q", "10.5.2", or a stray letter beside it."""
    word = word.strip(".,!'\"")
    ends = re.fullmatch(r"[\d.,]*\d([a-z]+)", word)
    stray = word if len(word) == 1 and word.isalpha() and word not in "ai" else ""
    tail = ends[1] if ends else stray
    return word.count(".") > 1 or word in _HEARD_ALIKE or bool(
        tail and tail not in ("ish", "x", "s") and not unit_word(tail) and tail not in _LEFT | _RIGHT)


def _meant(ask: Ask, one: FoundNumber, all_of_them: Sequence[FoundNumber]) -> bool:
    """True if a number may be of this question: its clause names it, or no other question's words."""
    if (here := _about(ask)) and re.search(rf"\b(?:{here})\b", one.clause.text):
        return True
    others = [words for key in ABOUT_ONESELF if key != ask.key and (words := tables_in("names")[key])]
    return not any(re.search(rf"\b(?:{words})\b", one.clause.text) for words in others if ask.key in ABOUT_ONESELF)


def _about(ask: Ask) -> str:
    return str(tables_in("names")[ask.key]) if ask.key in ABOUT_ONESELF else ""


def _in_turn(whole: Sequence[Clause]) -> bool:
    return any(_SEQUENCE.search(clause.text) or clause.ends == "," for clause in whole) and not any(
        _ranged(clause) or "not" in clause.words for clause in whole)


def _ranged(clause: Clause) -> bool:
    return not _RANGED.isdisjoint(clause.words)


def sided_numbers(clause: Clause, here: str) -> Iterator[FoundNumber]:
    """Yield the quantities of a clause, each with its side: that named before it, else the one right after it. ``here``: the side that is
    asked about, "" for none; "the other" is the other one."""
    words = [(found.group(), found.start()) for found in re.finditer(r"[a-z]+", clause.raw)]
    sides = [("left" if word in _LEFT else "right", at) for word, at in words if word in _LEFT | _RIGHT]
    sides = sides or [(SIDES[1 - SIDES.index(here)], at) for word, at in words if here and word == "other"]
    numbers = quantities(clause.raw)
    before_first = bool(sides) and bool(numbers) and sides[0][1] < numbers[0].start
    for n, one in enumerate(numbers):
        behind = [side for side, at in sides if at < one.start]
        ahead = [side for side, at in sides if at >= one.start]
        side = (behind[-1] if behind else "") if before_first else (ahead[0] if ahead else "")
        yield FoundNumber(one, side, clause, _beside(clause, numbers, n) if 1 < len(numbers) <= NUMBERS_MOST else clause.text)


def _beside(clause: Clause, numbers: Sequence[Quantity], n: int) -> str:
    """Return the words between a number and the one before it, or the one after it where the clause begins with a number."""
    plain, bounds = spelt(clause.raw), (0, *(at for one in numbers for at in (one.start, one.end)), None)
    at = 2 * n if re.search("[a-z]", plain[:numbers[0].start]) else 2 * n + 2
    return plain[bounds[at]:bounds[at + 1]]


def slot_of(draft: Draft, ask: Ask, quantity: Quantity) -> Slot | None:
    """Return a question's slot with a number, None where it is not possible there."""
    kind = ask.kind
    assert isinstance(kind, Number)
    value = quantity.value if quantity.unit else to_kept(quantity.value, kind.unit, draft.units)
    value = round(value, 2)
    return Slot(ask.key, value, kind.unit) if kind.low <= value <= kind.high else None


def fillable(ask: Ask) -> bool:
    """True if a question may be answered ahead: not one about safety, pain or a pinch, not in one's own words, not a movement's end."""
    if ask.safety or ask.free or ask.signs or isinstance(ask.kind, Ready | YesNo):
        return False
    hurts = any(word in ask.key for word in ("pinch", "hurt", "pain"))
    return not hurts and bool(ask.kind.options or isinstance(ask.kind, Number))


def asked_ahead(draft: Draft, every: bool = False) -> Iterator[Ask]:
    """Yield the questions after the open one that may be answered ahead, or ``every`` one, in order; none past a sub-flow."""
    steps = draft.compiled.flow.steps
    at = next(n for n, step in enumerate(steps) if isinstance(step, Ask) and step.key == draft.ask.key)
    for step in steps[at + 1:]:
        if isinstance(step, Run):
            return
        if isinstance(step, Ask) and step.key not in draft.top.got and (every or fillable(step)):
            yield step


def _alike(draft: Draft, ask: Ask) -> list[Ask]:
    """Return the questions to come that ask for the same number of the same side."""
    return [later for later in asked_ahead(draft) if later.kind == ask.kind and later.side == ask.side]


def _other_side(draft: Draft, ask: Ask) -> Ask | None:
    other = SIDES[1 - SIDES.index(ask.side)]
    wanted = ask.key.replace(ask.side, other)
    return next((later for later in asked_ahead(draft) if later.key == wanted), None)
