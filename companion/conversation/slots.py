"""Slots: the answers in a sentence, to the open question and to questions still to come in the same flow.

Nothing is filled for a safety question, a question about pain, or words of one's own. What one sentence says of several questions, or
says doubtfully, is said back and confirmed by one tap before it counts (``asking``).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Final, NamedTuple

from companion.conversation.condition import ALWAYS, Value
from companion.conversation.draft import Draft
from companion.conversation.flow import SIDES, Ask, Run
from companion.conversation.kinds import Answer, Choice, Hold, Kind, Option, Ready, YesNo
from companion.conversation.number_kinds import Number
from companion.language.act_rules import words_of
from companion.language.acts import SpeechAct, Spoken, hear_act
from companion.language.choosing import ASSERTING, Chosen, Mention, Options, choose, named, nearest
from companion.language.clauses import Clause, Mood, clauses
from companion.language.meanings import meant
from companion.language.phrases import Phrase, hear
from companion.language.quantities import Quantity, height, loaded_unit, plated, quantities, spelt
from companion.language.units import IMPERIAL, shown, to_kept, unit_word

AHEAD_MOST: Final = 6
"""Most questions to come that one sentence may answer; our choice."""

BESIDE_MOST: Final = 3
"""Most telling words beside the only number of a message that is taken without asking back; our choice."""

SLIGHT: Final = 4
"""Letters below which a word is too slight to answer a question to come; our choice."""

CALLED: Final = {"height": "height", "mass": "weight", "load": "working load", "years": "years with a bar", "leg_length": "leg",
                 "felt": "felt", "load_kg": "bar", "clean_kg": "clean with"}
"""Names of slots that their value alone does not tell."""

ABOUT: Final = {
    "mass": r"weigh\w*|weight|bodyweight|scales?|kilo ?grams of me|heavy (?:am|i)",
    "load": r"squat\w*|bar|lift\w*|sets?|working|work sets?|load|\d+ ?x ?\d+",
    "height": r"tall|height|high", "years": r"years?|yrs?|since|experience", "felt": r"felt|feel|move\w*|out of"}
"""Words that tell which of several slots of one unit is meant."""

_ADDED: Final = frozenset(("plate", "plates", "bar", "plus", "side"))
"""Words that leave open what a load adds up to."""

_LEFT: Final = frozenset(("left", "l", "lhs", "lt", "lft"))
_RIGHT: Final = frozenset(("right", "r", "rhs", "rt", "rgt"))
_SINCE: Final = re.compile(r"\b(?:since|from|in) ((?:19|20)\d\d)\b")
_SEQUENCE: Final = re.compile(r"\b(?:then|second|2nd|next|again|after|and|first|1st)\b|,")


class Slot(NamedTuple):
    """One question and its answer."""

    key: str
    value: Value
    unit: str = ""


class Understood(NamedTuple):
    """The slots a sentence fills. ``sure``: true if it answers the open question alone, without doubt."""

    slots: tuple[Slot, ...]
    sure: bool


def heard_at(draft: Draft, text: str) -> Spoken:
    """Return the speech act of a message at the open question."""
    kind = draft.ask.kind
    return hear_act(spelt(text) if takes_number(kind) else text, options_of(draft, draft.ask), takes_number(kind))


def reads_acts(ask: Ask) -> bool:
    """True if a reply is read by its speech act: at a choice or a number, not at words of one's own, media, places or dates."""
    return not ask.free and (takes_number(ask.kind) or isinstance(ask.kind, Choice | YesNo | Ready))


def takes_number(kind: Kind) -> bool:
    """True if a kind is answered by a number."""
    return isinstance(kind, Number)


def options_of(draft: Draft, ask: Ask) -> Options:
    """Return the options on offer at a question, with every phrase for them."""
    if all(option.only_if == ALWAYS for option in ask.kind.options):
        return _spoken(ask.kind.options)
    facts = draft.facts()
    return _offered(ask.kind.options, frozenset(option.value for option in ask.kind.options if option.only_if.holds(facts)))


@lru_cache(maxsize=512)
def _offered(options: tuple[Option, ...], values: frozenset[str]) -> Options:
    """Return the phrases for those on offer; which table is theirs is told by the whole question."""
    return Options((value, phrases) for value, phrases in _spoken(options) if value in values)


@lru_cache(maxsize=512)
def _spoken(options: tuple[Option, ...]) -> Options:
    answers = tuple((option.value, (option.label, *option.also)) for option in options)
    more = meant(answers)
    return named((value, (*words, value.replace("_", " "), *more[value])) for value, words in answers)


def understand(draft: Draft, text: str, spoken: Spoken) -> Understood | None:
    """Return the slots that an answer fills; None if it does not answer the open question."""
    ask = draft.ask
    if ask.safety or ask.free or not (takes_number(ask.kind) or _chooses(ask.kind)):
        return None
    whole = clauses(spelt(text)) if takes_number(ask.kind) else clauses(text)
    chosen = spoken.chosen if spoken.chosen.values else _polar(draft, text, spoken)
    first: Slot | None = None
    certain = True
    rest: list[Slot] = []
    if chosen.values:
        if len(chosen.values) > 1:
            return None
        first, certain = Slot(ask.key, chosen.values[0]), chosen.sure
    elif isinstance(ask.kind, Number):
        first, rest, certain = _numbers(draft, ask, ask.kind, whole)
    if first is None:
        guess = _guess(draft, whole, spoken)
        return Understood((Slot(ask.key, guess),), False) if guess else None
    filled = {first.key, *(slot.key for slot in rest)}
    rest += _further(draft, whole, chosen.hits, filled, numbers=not isinstance(ask.kind, Number))
    sure = certain and not rest and not spoken.doubtful
    return Understood((first, *rest), sure)


TORN_MOST: Final = 3
"""Most answers between which a person is asked to choose; our choice."""


def torn(draft: Draft, text: str, spoken: Spoken) -> tuple[Slot, ...]:
    """Return the answers between which a message leaves the open question: several options, or several numbers; () for none or too many."""
    ask = draft.ask
    if ask.safety:
        return ()
    if isinstance(ask.kind, Number):
        numbers = [one for clause in clauses(spelt(text)) if clause.mood in ASSERTING for one in quantities(clause.raw)
                   if not one.counts and one.unit in ("", ask.kind.unit)]
        found = tuple(dict.fromkeys(slot for one in numbers if (slot := _slot(draft, ask, one))))
    else:
        found = tuple(Slot(ask.key, value) for value in spoken.chosen.values)
    return found if 1 < len(found) <= TORN_MOST else ()


def _chooses(kind: Kind) -> bool:
    return isinstance(kind, Choice | YesNo | Ready) or bool(kind.options)


def _polar(draft: Draft, text: str, spoken: Spoken) -> Chosen:
    """Return the option that a bare yes or no stands for, where the question has one with that word."""
    heard = hear(text)
    word = {Phrase.YES: "yes", Phrase.NO: "no"}.get(heard) if heard else None
    sure = bool(word)
    starts = {_POLAR[first] for clause in clauses(text) if (first := _first_word(clause)) in _POLAR} if not word else set()
    if len(starts) == 1:
        word = starts.pop()
    values = tuple(value for value, phrases in options_of(draft, draft.ask) if word and word in phrases)
    if heard is Phrase.READY and isinstance(draft.ask.kind, Ready) and not isinstance(draft.ask.kind, Hold):
        values = ("ready",)
        sure = True
    return Chosen(values, sure) if len(values) == 1 else Chosen()


_POLAR: Final = dict.fromkeys(("yes", "yeah", "yep", "yup", "yea", "yh", "aye", "sure", "definitely"), "yes") | dict.fromkeys(
    ("no", "nope", "nah", "naw", "never"), "no")


def _first_word(clause: Clause) -> str:
    return next((word for word in clause.words if word not in words_of("lead_in")), "") if clause.mood in ASSERTING else ""


def _guess(draft: Draft, whole: Sequence[Clause], spoken: Spoken) -> str:
    """Return the option that an answer in quite other words most likely means, to be confirmed; "" for none."""
    ask = draft.ask
    said = [clause for clause in whole if clause.mood in ASSERTING]
    if spoken.act is not SpeechAct.ANSWER or not said or len(said) < len(whole):
        return ""
    turned = any(word in words_of("turning") for clause in said for word in clause.words)
    if isinstance(ask.kind, Ready) or sum(len(clause.words) for clause in said) < 2:
        return ""
    values = [option.value for option in ask.kind.options]
    if isinstance(ask.kind, YesNo) and values[:2] == ["yes", "no"] and ask.kind.yes == "Yes":
        return "no" if turned else "yes"
    return nearest(said, options_of(draft, ask))


# numbers ----------------------------------------------------------------------------------------------------


class _Found(NamedTuple):
    quantity: Quantity
    side: str
    clause: Clause


def _numbers(draft: Draft, ask: Ask, kind: Number, whole: Sequence[Clause]) -> tuple[Slot | None, list[Slot], bool]:
    """Return the open question's number, those of questions to come, and whether there is no doubt."""
    asserted = [clause for clause in whole if clause.mood in ASSERTING]
    found = [one for clause in asserted for one in _sided(clause)]
    mine = [one for one in found if not one.quantity.counts and one.quantity.unit in ("", kind.unit)
            and not (one.quantity.rated and kind.unit not in ("", "s"))]
    typed = [one for one in mine if one.quantity.unit]
    about = ABOUT.get(ask.key)
    own = [one for one in mine if not one.side or one.side == ask.side]
    if len(own) > 1 and about and (told := [one for one in own if re.search(rf"\b(?:{about})\b", one.clause.text)]):
        own = told[:1]
    first: Slot | None = None
    rest: list[Slot] = []
    if kind.unit == "kg" and not mine and (load := plated(", ".join(clause.raw for clause in asserted), draft.units == IMPERIAL)):
        return Slot(ask.key, round(load, 2), kind.unit), [], False
    if kind.unit == "years" and draft.known.now and (since := _SINCE.search(" ".join(clause.text for clause in asserted))):
        return Slot(ask.key, float(max(draft.known.now.year - int(since[1]), 0)), kind.unit), [], False
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
    if own and (len(own) == 1 or typed[:1] == own[:1] or _in_turn(whole)):
        first = _slot(draft, ask, _on_the_bar(own[0].quantity, whole) if kind.unit == "kg" else own[0].quantity)
        keys = _alike(draft, ask)
        for one, key in zip(own[1:], keys, strict=False):
            rest += filter(None, [_slot(draft, key, _in_unit_of(own[0].quantity, one.quantity))])
        certain = certain and len(mine) == 1
        other = [one for one in mine if one.side and one.side != ask.side]
        if other and ask.side and (there := _other_side(draft, ask)) is not None and (slot := _slot(draft, there, other[0].quantity)):
            rest.append(slot)
    more = [one for one in found if one.quantity.unit and one.quantity.unit != kind.unit and not one.quantity.counts]
    for one in more if first else ():
        if there := next((later for later in _ahead(draft) if isinstance(later.kind, Number) and later.kind.unit == one.quantity.unit
                          and later.key not in {slot.key for slot in rest} and _meant(later, one, more)), None):
            rest += filter(None, [_slot(draft, there, one.quantity)])
    return first, rest, certain


def _in_unit_of(first: Quantity, later: Quantity) -> Quantity:
    """Return a bare number in the unit that the first one was said in."""
    return later if later.unit or not first.unit else later._replace(value=later.value * first.size, unit=first.unit)


def _on_the_bar(quantity: Quantity, whole: Sequence[Clause]) -> Quantity:
    """Return a bare load in the unit that the plates named beside it add up in."""
    unit = loaded_unit(", ".join(clause.raw for clause in whole), quantity.value) if not quantity.unit else ""
    known = unit_word(unit)
    return quantity._replace(value=quantity.value * known[1], unit=known[0]) if known else quantity


def _tells(word: str) -> bool:
    """True if a word beside a number says something more than its unit or side."""
    return not (word[0].isdigit() or word in words_of("filler") or word in _LEFT | _RIGHT or unit_word(word))


def _unclear(word: str) -> bool:
    """True if a word leaves open which number was meant: "7q", "10.5.2", or a stray letter beside it."""
    word = word.strip(".,!'\"")
    ends = re.fullmatch(r"[\d.,]*\d([a-z]+)", word)
    stray = word if len(word) == 1 and word.isalpha() and word not in "ai" else ""
    tail = ends[1] if ends else stray
    return word.count(".") > 1 or bool(tail and tail not in ("ish", "x", "s") and not unit_word(tail) and tail not in _LEFT | _RIGHT)


def _meant(ask: Ask, one: _Found, all_of_them: Sequence[_Found]) -> bool:
    """True if a number may be of this question: its clause names it, or no other question's words."""
    here = ABOUT.get(ask.key)
    if here and re.search(rf"\b(?:{here})\b", one.clause.text):
        return True
    others = [words for key, words in ABOUT.items() if key != ask.key]
    return not any(re.search(rf"\b(?:{words})\b", one.clause.text) for words in others if ask.key in ABOUT)


def _in_turn(whole: Sequence[Clause]) -> bool:
    return any(_SEQUENCE.search(clause.text) or clause.ends == "," for clause in whole) and not any(
        "or" in clause.words or "not" in clause.words for clause in whole)


def _sided(clause: Clause) -> Iterator[_Found]:
    """Yield the quantities of a clause, each with its side: that named before it, else the one right after it."""
    words = [(found.group(), found.start()) for found in re.finditer(r"[a-z]+", clause.raw)]
    sides = [("left" if word in _LEFT else "right", at) for word, at in words if word in _LEFT | _RIGHT]
    numbers = quantities(clause.raw)
    before_first = bool(sides) and bool(numbers) and sides[0][1] < numbers[0].start
    for one in numbers:
        behind = [side for side, at in sides if at < one.start]
        ahead = [side for side, at in sides if at >= one.start]
        side = (behind[-1] if behind else "") if before_first else (ahead[0] if ahead else "")
        yield _Found(one, side, clause)


def _slot(draft: Draft, ask: Ask, quantity: Quantity) -> Slot | None:
    """Return a question's slot with a number, None where it is not possible there."""
    kind = ask.kind
    assert isinstance(kind, Number)
    value = quantity.value if quantity.unit else to_kept(quantity.value, kind.unit, draft.units)
    value = round(value, 2)
    return Slot(ask.key, value, kind.unit) if kind.low <= value <= kind.high else None


# questions to come ------------------------------------------------------------------------------------------


def fillable(ask: Ask) -> bool:
    """True if a question may be answered ahead: not one about safety, pain or a pinch, not in one's own words, not a movement's end."""
    if ask.safety or ask.free or ask.signs or isinstance(ask.kind, Ready | YesNo):
        return False
    hurts = any(word in ask.key for word in ("pinch", "hurt", "pain"))
    return not hurts and bool(ask.kind.options or takes_number(ask.kind))


def _ahead(draft: Draft) -> Iterator[Ask]:
    """Yield the questions after the open one that may be answered ahead, in order; none past a sub-flow."""
    steps = draft.compiled.flow.steps
    at = next(n for n, step in enumerate(steps) if isinstance(step, Ask) and step.key == draft.ask.key)
    for step in steps[at + 1:]:
        if isinstance(step, Run):
            return
        if isinstance(step, Ask) and step.key not in draft.top.got and fillable(step):
            yield step


def _alike(draft: Draft, ask: Ask) -> list[Ask]:
    """Return the questions to come that ask for the same number of the same side."""
    return [later for later in _ahead(draft) if later.kind == ask.kind and later.side == ask.side]


def _other_side(draft: Draft, ask: Ask) -> Ask | None:
    other = SIDES[1 - SIDES.index(ask.side)]
    wanted = ask.key.replace(ask.side, other)
    return next((later for later in _ahead(draft) if later.key == wanted), None)


def _further(draft: Draft, whole: Sequence[Clause], hits: Sequence[Mention], filled: set[str], numbers: bool) -> list[Slot]:
    """Return what the words left over say of the next questions."""
    taken, slots = list(hits), list[Slot]()
    if isinstance(draft.ask.kind, Ready) or sum(len(clause.words) for clause in whole) < 2:
        return []
    banded = any(_digits(whole, hit) for hit in hits)
    for n, later in enumerate(_ahead(draft)):
        if n >= AHEAD_MOST:
            break
        elsewhere = later.side and draft.ask.side and later.side != draft.ask.side
        if later.key in filled or elsewhere or (later.caution and not isinstance(later.kind, Number)):
            continue
        if isinstance(later.kind, Number):
            found = [one for clause in whole if clause.mood in ASSERTING for one in _sided(clause) if not one.quantity.counts
                     and one.quantity.unit == later.kind.unit] if numbers and not banded else []
            slot = _slot(draft, later, found[0].quantity) if len(found) == 1 else None
            slots += [slot] if slot else []
            numbers = numbers and not slot
        elif later.kind.options:
            chosen = choose(whole, options_of(draft, later), taken)
            if len(chosen.values) == 1 and not chosen.weak and not any(_slight(whole, hit) for hit in chosen.hits):
                slots.append(Slot(later.key, chosen.values[0]))
                taken += chosen.hits
    return slots


def read_of(draft: Draft, text: str) -> Answer | None:
    """Return the answer to the open question in a message: as its kind reads it, else as the sentence says it."""
    read = draft.ask.kind.read(text, draft.context)
    if isinstance(read, Answer):
        return read
    understood = understand(draft, text, heard_at(draft, text))
    return Answer(understood.slots[0].value, text, understood.slots[0].unit) if understood else None


def _slight(whole: Sequence[Clause], hit: Mention) -> bool:
    """True if a hit is too slight to answer a question to come: a number, a short or common word."""
    words = whole[hit.clause].words[hit.start:hit.end]
    common = words_of("weak") | words_of("turning") | words_of("filler")
    return _digits(whole, hit) or all(word in common or len(word) < SLIGHT for word in words)


def _digits(whole: Sequence[Clause], hit: Mention) -> bool:
    return any(letter.isdigit() for word in whole[hit.clause].words[hit.start:hit.end] for letter in word)


# said back --------------------------------------------------------------------------------------------------


def understood_words(draft: Draft, text: str) -> str:
    """Return what was understood of a message in one line: "left 11 cm, right 9 cm"."""
    if draft.ask.free:
        return f"“{text.strip()}”"
    understood, stops = understand(draft, text, heard_at(draft, text)), draft.compiled.stops
    asks = [(stops[slot.key], slot) for slot in understood.slots] if understood else []
    return ", ".join(slot_words(draft, ask, slot) for ask, slot in asks if isinstance(ask, Ask))


def slot_words(draft: Draft, ask: Ask, slot: Slot) -> str:
    """Return a slot's value in the person's words and units, with its name or side where it needs one."""
    if isinstance(slot.value, str):
        value = next((option.label for option in ask.kind.options if option.value == slot.value), slot.value)
        value = value[0].lower() + value[1:] if not value[1:2].isupper() else value
    else:
        value = shown(slot.value, slot.unit, draft.units)
    name = CALLED.get(ask.key, ask.side)
    return f"{name} {value}" if name else value
