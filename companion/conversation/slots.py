"""Slots: the answers in a sentence, to the open question and to questions still to come in the same flow.

Nothing is filled for a safety question, a question about pain, or words of one's own. What one sentence says of several questions, or
says doubtfully, is said back and confirmed by one tap before it counts (``asking``).
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Final, NamedTuple

from companion.conversation.condition import ALWAYS
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, Choice, Hold, Kind, Option, Ready, YesNo
from companion.conversation.naming import points
from companion.conversation.number_kinds import Number
from companion.conversation.number_slots import Slot, asked_ahead, number_slots, sided_numbers, slot_of
from companion.language.act_rules import words_of
from companion.language.acts import Spoken, hear_act
from companion.language.choosing import ASSERTING, Chosen, Mention, Options, choose, named
from companion.language.clauses import Clause, Mood, clauses
from companion.language.learnt import A_NUMBER, OWN_WORDS, Likely, ranked
from companion.language.meanings import meant
from companion.language.phrases import Phrase, hear
from companion.language.quantities import quantities, spelt
from companion.language.units import shown

AHEAD_MOST: Final = 6
"""Most questions to come that one sentence may answer; our choice."""

CLAUSES_MOST: Final = 40
"""Most clauses of a message that may tell of questions to come; our choice."""

SLIGHT: Final = 4
"""Letters below which a word is too slight to answer a question to come; our choice."""

CALLED: Final = {"height": "height", "mass": "weight", "load": "working load", "years": "years with a bar", "leg_length": "leg",
                 "felt": "felt", "load_kg": "bar", "clean_kg": "clean with"}
"""Names of slots that their value alone does not tell."""

class Understood(NamedTuple):
    """The slots a sentence fills. ``sure``: true if it answers the open question alone, without doubt."""

    slots: tuple[Slot, ...]
    sure: bool


def rules_at(draft: Draft, text: str) -> Spoken:
    """Return the speech act of a message at the open question as the rules hear it."""
    number = takes_number(draft.ask.kind)
    return hear_act(spelt(text) if number else text, options_of(draft, draft.ask), number)


def likely_at(draft: Draft, text: str, ask: Ask | None = None) -> tuple[Likely, ...]:
    """Return what a reply may be at a question, the open one unless another is given, the likeliest first, by the learnt layer."""
    ask = ask or draft.ask
    return ranked(text, tuple((one.value, one.label) for one in offers(draft, ask)), typed_at(ask))


def typed_at(ask: Ask) -> str:
    """Return what a question takes beside its options, by its name in the learnt layer: a number, words, or "" for nothing."""
    return A_NUMBER if takes_number(ask.kind) else OWN_WORDS if not reads_acts(ask) else ""


def reads_acts(ask: Ask) -> bool:
    """True if a reply is read by its speech act: at a choice or a number, not at words of one's own, media, places or dates."""
    return not ask.free and (takes_number(ask.kind) or isinstance(ask.kind, Choice | YesNo | Ready))


def takes_number(kind: Kind) -> bool:
    """True if a kind is answered by a number."""
    return isinstance(kind, Number)


def offers(draft: Draft, ask: Ask) -> tuple[Option, ...]:
    """Return the options on offer at a question."""
    if all(option.only_if == ALWAYS for option in ask.kind.options):
        return ask.kind.options
    facts = draft.facts()
    return tuple(option for option in ask.kind.options if option.only_if.holds(facts))


def options_of(draft: Draft, ask: Ask) -> Options:
    """Return the options on offer at a question, with every phrase for them."""
    found = offers(draft, ask)
    return _offered(ask.kind.options, frozenset(option.value for option in found)) if found != ask.kind.options else phrases_of(found)


@lru_cache(maxsize=512)
def _offered(options: tuple[Option, ...], values: frozenset[str]) -> Options:
    """Return the phrases for those on offer; which table is theirs is told by the whole question."""
    return Options((value, phrases) for value, phrases in phrases_of(options) if value in values)


@lru_cache(maxsize=512)
def phrases_of(options: tuple[Option, ...]) -> Options:
    """Return every phrase for each of the options of a question."""
    answers = tuple((option.value, (option.label, *option.also)) for option in options)
    more = meant(answers)
    return named((value, (*words, value.replace("_", " "), *more[value])) for value, words in answers)


def understand(draft: Draft, text: str, spoken: Spoken) -> Understood | None:
    """Return the slots that an answer fills; None if it does not answer the open question."""
    ask = draft.ask
    if ask.safety or ask.free or not (takes_number(ask.kind) or _chooses(ask.kind)):
        return None
    whole = clauses(spelt(text)) if takes_number(ask.kind) else clauses(text)
    told = _told_of(draft, whole)
    mine = spoken.chosen if not told else choose(_only(whole, [n for n in range(len(whole)) if n not in told]), options_of(draft, ask))
    bare = [whole[n] for n in range(len(whole)) if n not in told]
    chosen = mine if mine.values else _band(ask, bare) or _polar(draft, text, spoken)
    first: Slot | None = None
    certain = True
    rest: list[Slot] = []
    if chosen.values:
        if len(chosen.values) > 1:
            return None
        first, certain = Slot(ask.key, chosen.values[0]), chosen.sure
    elif isinstance(ask.kind, Number):
        first, rest, certain = number_slots(draft, ask, ask.kind, whole)
    if first is None:
        return None
    filled = {first.key, *(slot.key for slot in rest)} | {later.key for later in asked_ahead(draft) if _shut(later, first)}
    rest += _further(draft, text, whole, chosen.hits, filled, told, numbers=not isinstance(ask.kind, Number))
    sure = certain and not rest and not spoken.doubtful
    return Understood((first, *rest), sure)


RANGE_NAMED: Final = re.compile(r"under_(?P<under>\d+)|(?P<low>\d+)_(?P<high>\d+)|over_(?P<over>\d+)")


def _band(ask: Ask, said: Sequence[Clause]) -> Chosen | None:
    """Return the answer whose range holds the one number that is said, where the answers are ranges: "about 65" is "60 to 70°". A number
    between two ranges is in neither, and asked again."""
    numbers = {one.value for clause in said if clause.mood in ASSERTING for one in quantities(clause.raw) if not one.counts}
    if len(numbers) != 1:
        return None
    number = numbers.pop()
    ranges = {option.value: found for option in ask.kind.options if (found := RANGE_NAMED.fullmatch(option.value))}
    held = [value for value, found in ranges.items()
            if float(found["low"] or found["over"] or "-inf") < number < float(found["high"] or found["under"] or "inf")]
    return Chosen((held[0],), all(clause.mood is Mood.SAID for clause in said)) if len(held) == 1 else None


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
        found = tuple(dict.fromkeys(slot for one in numbers if (slot := slot_of(draft, ask, one))))
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
    kind = draft.ask.kind
    if heard in (Phrase.READY, Phrase.YES) and isinstance(kind, Ready) and not isinstance(kind, Hold):
        values = ("ready",) if isinstance(kind.read(text, draft.context), Answer) else ()
        sure = True
    return Chosen(values, sure) if len(values) == 1 else Chosen()


_POLAR: Final = dict.fromkeys(("yes", "yeah", "yep", "yup", "yea", "yh", "aye", "sure", "definitely"), "yes") | dict.fromkeys(
    ("no", "nope", "nah", "naw", "never"), "no")


def _first_word(clause: Clause) -> str:
    return next((word for word in clause.words if word not in words_of("lead_in")), "") if clause.mood in ASSERTING else ""


# questions to come ------------------------------------------------------------------------------------------


Told = Mapping[int, frozenset[str]]
"""The clauses that name questions to come and not the open one, and the keys of these."""


def _told_of(draft: Draft, whole: Sequence[Clause]) -> Told:
    """Return which clauses tell of questions to come: "flat in the hinge, lost it sinking"."""
    ask, told = draft.ask, dict[int, frozenset[str]]()
    if not 1 < len(whole) <= CLAUSES_MOST or not _chooses(ask.kind) or isinstance(ask.kind, Ready):
        return told
    ahead = [later for n, later in enumerate(asked_ahead(draft, every=True)) if n < AHEAD_MOST and later.kind.options]
    for n, clause in enumerate(whole):
        if points(draft, ask, clause.text) <= 0 and (keys := frozenset(one.key for one in ahead if points(draft, one, clause.text) > 0)):
            told[n] = keys
    return told


def _shut(later: Ask, first: Slot) -> bool:
    """True if an answer alone decides that a question to come is not asked: the weight of a bar that is a usual one."""
    hangs_on = {compared.fact for compared in later.only_if.compares()}
    return hangs_on == {first.key} and not later.only_if.holds({first.key: first.value})


def _only(whole: Sequence[Clause], those: Sequence[int]) -> list[Clause]:
    """Return the clauses in their places, all but those without a mood that asserts anything."""
    return [clause if n in those else clause._replace(mood=Mood.SUPPOSED) for n, clause in enumerate(whole)]


def _further(draft: Draft, text: str, whole: Sequence[Clause], hits: Sequence[Mention], filled: set[str], told: Told,
             numbers: bool) -> list[Slot]:
    """Return what the words left over say of the next questions."""
    taken, slots = list(hits), list[Slot]()
    if isinstance(draft.ask.kind, Ready) or sum(len(clause.words) for clause in whole) < 2:
        return []
    banded = any(_digits(whole, hit) for hit in hits)
    for n, later in enumerate(asked_ahead(draft)):
        if n >= AHEAD_MOST:
            break
        named = [clause for clause, keys in told.items() if later.key in keys]
        elsewhere = later.side and draft.ask.side and later.side != draft.ask.side and not named
        if later.key in filled or elsewhere or (later.caution and not isinstance(later.kind, Number)):
            continue
        if isinstance(later.kind, Number):
            found = [one for clause in whole if clause.mood in ASSERTING for one in sided_numbers(clause, "") if not one.quantity.counts
                     and one.quantity.unit == later.kind.unit] if numbers and not banded else []
            slot = slot_of(draft, later, found[0].quantity) if len(found) == 1 else None
            slots += [slot] if slot else []
            numbers = numbers and not slot
        elif later.kind.options and (named or len(whole) > 1):
            said = _only(whole, named or [clause for clause in range(len(whole)) if clause not in told])
            chosen = choose(said, options_of(draft, later), taken)
            slight = not named and (chosen.weak or any(_slight(whole, hit) for hit in chosen.hits))
            if named and not chosen.values:
                chosen = _band(later, said) or chosen
            if len(chosen.values) == 1 and not slight and (named or _likeliest(draft, text, later) == chosen.values[0]):
                slots.append(Slot(later.key, chosen.values[0]))
                taken += chosen.hits
    return slots


def _likeliest(draft: Draft, text: str, ask: Ask) -> str:
    return next((one.name for one in likely_at(draft, text, ask)), "")


def _slight(whole: Sequence[Clause], hit: Mention) -> bool:
    """True if a hit is too slight to answer a question to come: a number, a short or common word."""
    words = whole[hit.clause].words[hit.start:hit.end]
    common = words_of("weak") | words_of("turning") | words_of("filler")
    return _digits(whole, hit) or all(word in common or len(word) < SLIGHT for word in words)


def _digits(whole: Sequence[Clause], hit: Mention) -> bool:
    return any(letter.isdigit() for word in whole[hit.clause].words[hit.start:hit.end] for letter in word)


# said back --------------------------------------------------------------------------------------------------


def slot_words(draft: Draft, ask: Ask, slot: Slot) -> str:
    """Return a slot's value in the person's words and units, with its name or side where it needs one."""
    if isinstance(slot.value, str):
        value = next((option.label for option in ask.kind.options if option.value == slot.value), slot.value)
        value = value[0].lower() + value[1:] if not value[1:2].isupper() else value
    else:
        value = shown(slot.value, slot.unit, draft.units)
    name = CALLED.get(ask.key, ask.side)
    return f"{name} {value}" if name else value
