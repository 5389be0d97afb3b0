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
from companion.conversation.kinds import Answer, Choice, Hold, Kind, Option, Ready, Unclear, YesNo
from companion.conversation.naming import points
from companion.conversation.number_kinds import Number
from companion.conversation.number_slots import Slot, asked_ahead, number_slots, sided_numbers, slot_of
from companion.language.act_rules import words_of
from companion.language.acts import SpeechAct, Spoken, hear_act, heard_as
from companion.language.choosing import ASSERTING, Chosen, Mention, Options, choose, named
from companion.language.clauses import Clause, Mood, clauses
from companion.language.learnt import A_NUMBER, LEARNT_COMMANDS, OWN_WORDS, TO_START, Likely, behind, ranked
from companion.language.meanings import meant
from companion.language.phrases import Phrase, hear
from companion.language.quantities import quantities, spelt
from companion.language.questions import asked_surely
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


UNLIKELY: Final = 0
UNLIKELY_CHAT: Final = 15
UNLIKELY_WORDS: Final = 30
NEAR: Final = 40
"""By how many tenths of a log-odds what the rules hear must be less likely than something else for a person to be asked which they mean:
what the rules doubt or is no option, chat or a correction, and an option in plain words; and how far behind what is named beside it may
be. Chosen on writers left out."""

_SAME_ACT: Final = {SpeechAct.NOTHING: "@chat"}


def heard_at(draft: Draft, text: str) -> Spoken:
    """Return the speech act of a message at the open question: as the rules hear it, unless something else is much likelier there."""
    ask, kind = draft.ask, draft.ask.kind
    spoken = rules_at(draft, text)
    surely_asked = bool(spoken.asks) and bool(asked_surely(text))
    if ask.safety or ask.free or not reads_acts(ask) or spoken.exact or surely_asked or _known_otherwise(draft, text):
        return spoken
    understood = understand(draft, text, spoken) if spoken.act is SpeechAct.ANSWER and not spoken.asks else None
    if understood and _BAND.fullmatch(str(understood.slots[0].value)) and quantities(text):
        return spoken  # a number in a range
    read = kind.read(text, draft.context)
    sure = isinstance(read, Answer) or bool(understood and understood.sure)
    number = not takes_number(kind) or isinstance(read, Answer) or bool(understand(draft, text, rules_at(draft, text)))
    likely = tuple(one for one in likely_at(draft, text) if number or one.name != A_NUMBER)  # without one that can't be one here
    if not likely or (isinstance(kind, Number) and torn(draft, text, spoken)):
        return spoken
    mine = _heard_name(draft, spoken, read, understood)
    top = likely[0].name
    if mine == top or (mine and behind(likely, mine) < _least(mine, sure)):
        return spoken
    if (top == "@correction" and not draft.top.trail) or not _may_be_asked_for(draft, top):
        return spoken
    if likely[0].share < (0 if mine else LEAST):
        return spoken
    near = [one.name for one in likely if one.behind < NEAR and _may_be_asked_for(draft, one.name)]
    if mine and not _may_be_asked_for(draft, mine):
        return spoken
    between = [name for name in dict.fromkeys((top, mine, *near)) if name and name not in NOT_NAMED][:MEANT_MOST]
    shares = {one.name: one.share for one in likely}
    if len(between) > 1 and top in between and (mine or shares[top] < (ALONE_WISH if top.startswith("!") else ALONE)):
        told = mine or sum(shares.get(name, 0) for name in between) >= ENOUGH
        return Spoken(SpeechAct.ANSWER, between=tuple(between)) if told else spoken
    return _instead(spoken, top, text) if shares[top] >= ENOUGH else spoken


_HELD: Final = frozenset(("!stop", "!back", "!erase", "!my_data", "!stop_reminders"))
"""Commands where a person is not free to go elsewhere."""


def _may_be_asked_for(draft: Draft, name: str) -> bool:
    """True if what a message may be can be offered: no flow that isn't there, and none where others come first."""
    if draft.compiled.flow.policy.holds and name.startswith("!"):
        return name in _HELD
    return not name.startswith(f"!{TO_START}") or name.removeprefix(f"!{TO_START}") in draft.book.flows


def _known_otherwise(draft: Draft, text: str) -> bool:
    """True if a message has no word, is a bare yes or no, which is no answer here, nearly a command of the menu, or words for a number."""
    kind = draft.ask.kind
    if not any(letter.isalpha() for letter in text):
        return True
    menu = draft.top.flow == draft.book.home and draft.book.near_command(text)
    return hear(text) in (Phrase.YES, Phrase.NO) or bool(menu) or (isinstance(kind, Number) and kind.names_it(text))


def _least(mine: str, sure: bool) -> int:
    return UNLIKELY_WORDS if sure or mine.startswith("!") else UNLIKELY_CHAT if mine in ("@chat", "@correction") else UNLIKELY


def rules_at(draft: Draft, text: str) -> Spoken:
    """Return the speech act of a message at the open question as the rules hear it."""
    number = takes_number(draft.ask.kind)
    return hear_act(spelt(text) if number else text, options_of(draft, draft.ask), number)


NOT_NAMED: Final = frozenset(("@chat", "@nothing", "!again", "!help", OWN_WORDS))
"""What a person isn't asked whether they mean it."""
ENOUGH: Final = 0.2
LEAST: Final = 0.12
"""Least part of all that is likely that is named, and least part of the likeliest, where the rules hear nothing: else the message is
not understood; our choice."""
ALONE, ALONE_WISH = 0.95, 0.6
"""Part of all that is likely from which an answer, or a wish, alone is asked about, where the rules hear nothing; our choice."""
MEANT_MOST: Final = 4
"""Most things of which a person is asked which they mean; our choice."""


def likely_at(draft: Draft, text: str, ask: Ask | None = None) -> tuple[Likely, ...]:
    """Return what a reply may be at a question, the open one unless another is given, the likeliest first, by the learnt layer."""
    ask = ask or draft.ask
    facts, options = draft.facts(), ask.kind.options
    on_offer = tuple((one.value, one.label) for one in options if one.only_if == ALWAYS or one.only_if.holds(facts))
    return ranked(text, on_offer, typed_at(ask))


def typed_at(ask: Ask) -> str:
    """Return what a question takes beside its options, by its name in the learnt layer: a number, words, or "" for nothing."""
    return A_NUMBER if takes_number(ask.kind) else OWN_WORDS if not reads_acts(ask) else ""


def _heard_name(draft: Draft, spoken: Spoken, read: Answer | Unclear, understood: Understood | None) -> str:
    """Return what the rules heard, by the names of the learnt layer; "" for nothing."""
    if spoken.act is SpeechAct.COMMAND:
        flow = draft.book.command(spoken.wants)
        return f"!{spoken.wants}" if spoken.wants in LEARNT_COMMANDS else f"!{TO_START}{flow}" if flow else f"!{spoken.wants}"
    value = read.value if isinstance(read, Answer) else understood.slots[0].value if understood else None
    if value is not None:
        return value if isinstance(value, str) and any(one.value == value for one in draft.ask.kind.options) else A_NUMBER
    if spoken.act is SpeechAct.ANSWER and not spoken.asks:
        return ""
    return "@question" if spoken.asks else _SAME_ACT.get(spoken.act, f"@{spoken.act.value}")


def _instead(spoken: Spoken, name: str, text: str) -> Spoken:
    """Return a message as something else than the rules heard, by its name in the learnt layer."""
    if name.startswith("@"):
        return heard_as(spoken, SpeechAct(name[1:]), text)
    if name.startswith("!"):
        return spoken._replace(act=SpeechAct.COMMAND, wants=name[1:], asks=None, about="", guessed=True)
    chosen = Chosen((name,)) if name != A_NUMBER else spoken.chosen
    return spoken._replace(act=SpeechAct.ANSWER, asks=None, about="", wants="", chosen=chosen, doubtful=True)


def reads_acts(ask: Ask) -> bool:
    """True if a reply is read by its speech act: at a choice or a number, not at words of one's own, media, places or dates."""
    return not ask.free and (takes_number(ask.kind) or isinstance(ask.kind, Choice | YesNo | Ready))


def takes_number(kind: Kind) -> bool:
    """True if a kind is answered by a number."""
    return isinstance(kind, Number)


def options_of(draft: Draft, ask: Ask) -> Options:
    """Return the options on offer at a question, with every phrase for them."""
    if all(option.only_if == ALWAYS for option in ask.kind.options):
        return phrases_of(ask.kind.options)
    facts = draft.facts()
    return _offered(ask.kind.options, frozenset(option.value for option in ask.kind.options if option.only_if.holds(facts)))


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


_BAND: Final = re.compile(r"under_(?P<under>\d+)|(?P<low>\d+)_(?P<high>\d+)|over_(?P<over>\d+)")


def _band(ask: Ask, said: Sequence[Clause]) -> Chosen | None:
    """Return the answer whose range holds the one number that is said, where the answers are ranges: "about 65" is "60 to 70°". A number
    between two ranges is in neither, and asked again."""
    numbers = {one.value for clause in said if clause.mood in ASSERTING for one in quantities(clause.raw) if not one.counts}
    if len(numbers) != 1:
        return None
    number = numbers.pop()
    ranges = {option.value: found for option in ask.kind.options if (found := _BAND.fullmatch(option.value))}
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
    if heard is Phrase.READY and isinstance(draft.ask.kind, Ready) and not isinstance(draft.ask.kind, Hold):
        values = ("ready",)
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
