"""Meanings of a message at the open question: what the rules hear, and what else the learnt layer finds likely there.

A person is asked which of these they mean where the rules are in doubt, and where what the rules heard would come to nothing: no reply is
refused without its likeliest meanings.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from companion.conversation.corrections import corrections
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, Unclear
from companion.conversation.number_kinds import Number
from companion.conversation.slots import RANGE_NAMED, Understood, likely_at, offers, reads_acts, rules_at, slot_words, torn, understand
from companion.language.acts import SpeechAct, Spoken, heard_as
from companion.language.choosing import Chosen
from companion.language.learnt import A_NUMBER, LEARNT_COMMANDS, OWN_WORDS, TO_START
from companion.language.phrases import Phrase, hear
from companion.language.quantities import quantities
from companion.language.questions import asked_surely

NOT_NAMED: Final = frozenset(("@chat", "@nothing", "!again", "!help", OWN_WORDS))
"""What a person isn't asked whether they mean it."""
LIKELY_TOO, LIKELY_BESIDE = 0.1, 0.2
"""Part of all that is likely from which something else than the rules hear is asked about; and beside a number or a question, of which the
rules are surer. Chosen, as all below, on writers left out."""
SURELY_ELSE: Final = 6
"""By how many times something else must be likelier than a plain answer for a person to be asked which they mean."""
NEAR: Final = 0.02
"""Part of all that is likely that something has at least to be named beside the likeliest."""
LEAST, LEAST_BESIDE_WORDS = 0.12, 0.5
"""Part of all that is likely that something has at least to be named in place of a refusal; and where a day, a place or a film is asked
for, of which little is learnt."""
ALONE, ALONE_WISH = 0.95, 0.6
"""Part of all that is likely from which an answer, or a wish, alone is asked about, where the rules hear nothing; our choice."""
MEANT_MOST: Final = 4
"""Most things of which a person is asked which they mean; our choice."""

_SAME_ACT: Final = {SpeechAct.NOTHING: "@chat"}


def heard_at(draft: Draft, text: str) -> Spoken:
    """Return the speech act of a message at the open question: as the rules hear it, unless something else is likely there too."""
    ask, kind = draft.ask, draft.ask.kind
    spoken = rules_at(draft, text)
    surely_asked = bool(spoken.asks) and bool(asked_surely(text))
    if ask.safety or ask.free or not reads_acts(ask) or spoken.exact or surely_asked or _known_otherwise(draft, text):
        return spoken
    if spoken.act is SpeechAct.CORRECTION and _names_what_changes(draft, text):
        return spoken
    understood = understand(draft, text, spoken) if spoken.act is SpeechAct.ANSWER and not spoken.asks else None
    read, likely = kind.read(text, draft.context), _likely_here(draft, text)
    in_a_range = understood and RANGE_NAMED.fullmatch(str(understood.slots[0].value)) and quantities(text)
    if in_a_range and next(iter(likely), "") != "@correction":
        return spoken
    mine, top = _same_as(draft, _heard_name(draft, spoken, read, understood)), next(iter(likely), "")
    if not top or (isinstance(kind, Number) and torn(draft, text, spoken)):
        return spoken
    sure = isinstance(read, Answer) or bool(understood and (understood.sure or len(understood.slots) > 1))
    if mine and not _doubted(likely, mine, sure):
        return spoken
    between = _named(likely, mine if _may_be_meant(draft, text, mine) else "") if mine else guesses(draft, text)
    if len(between) > 1 and top not in NOT_NAMED and (mine or likely[top] < (ALONE_WISH if top.startswith("!") else ALONE)):
        return Spoken(SpeechAct.ANSWER, between=between)
    return _instead(spoken, top, text) if likely[top] >= LIKELY_TOO else spoken


def _names_what_changes(draft: Draft, text: str) -> bool:
    """True if it is clear which earlier answer a correction is of, as it names it, and what it is now."""
    found = corrections(draft, text)
    return len(found) == 1 and found[0].named and found[0].new is not None and found[0].key != draft.ask.key


def _doubted(likely: Mapping[str, float], mine: str, sure: bool) -> bool:
    """True if something else than what the rules hear is likely too: far likelier, where that is a plain answer. What isn't named counts
    only where it is likeliest, and so does an option beside a question, which is answered with the options under it."""
    top = next(iter(likely))
    if sure:
        return likely[top] >= SURELY_ELSE * likely.get(mine, 0)
    least = LIKELY_BESIDE if mine in (A_NUMBER, "@question") else LIKELY_TOO
    others = (name for name, share in likely.items() if share >= least and name != mine)
    return any(name == top or (name not in NOT_NAMED and (mine != "@question" or name[0] in "!@")) for name in others)


def guesses(draft: Draft, text: str) -> tuple[str, ...]:
    """Return the likeliest things that a message may mean, where it would come to nothing; () where none is likely, or not to be named."""
    likely = {} if draft.ask.safety or draft.ask.free or _known_otherwise(draft, text) else _likely_here(draft, text)
    top = next(iter(likely), "")
    least = LEAST if reads_acts(draft.ask) else LEAST_BESIDE_WORDS
    alone = top == "@question" and all(share < LIKELY_TOO for name, share in likely.items() if name != top)
    return _named(likely) if top and top not in NOT_NAMED and not alone and likely[top] >= least else ()


def meant_at(draft: Draft, text: str) -> tuple[str, ...]:
    """Return the things of which a person is asked which they mean, by their names in the learnt layer."""
    return heard_at(draft, text).between or guesses(draft, text)


def _named(likely: Mapping[str, float], mine: str = "") -> tuple[str, ...]:
    """Return what is near the likeliest, in the order of a question that names it; second what the rules hear."""
    near = [name for name, share in likely.items() if share >= NEAR]
    return tuple(name for name in dict.fromkeys((near[0], mine, *near)) if name and name not in NOT_NAMED)[:MEANT_MOST]


def _likely_here(draft: Draft, text: str) -> Mapping[str, float]:
    """Return each thing that a message may mean at the open question, the likeliest first, with its part of all that is likely: one that
    is called twice once, and none that can't be meant."""
    shares: dict[str, float] = {}
    for one in likely_at(draft, text):
        name = _same_as(draft, one.name)
        shares[name] = shares.get(name, 0) + one.share
    meant = {name: share for name, share in shares.items() if _may_be_meant(draft, text, name)}
    return dict(sorted(meant.items(), key=lambda one: -one[1]))


def _same_as(draft: Draft, name: str) -> str:
    """Return the option that does what a wish or an act does, where the question has one; else the name."""
    does = DOES.get(name, ())
    if draft.top.flow == draft.book.home and name.startswith("!"):  # where options are flows
        wanted = name[1:].removeprefix(TO_START)
        does = *does, wanted, draft.book.command(wanted) or ""
    return next((option.value for option in offers(draft, draft.ask) if option.value in does), name) if does else name


DOES: Final = {"!skip": ("skip",), "!stop": ("later",), "@unsure": ("cant_tell", "unsure")}
"""The values of answers that do what a command does, or say what an act says."""

_ENDS: Final = {
    "!erase": re.compile(r"\b(?:delet|eras|remov|wip(?:e|ing)|forget|scrub|purg|data|account|"
                         r"keep|kept|stor(?:e|ing)|about me|unsubscrib|gdpr)"),
    "!stop_reminders": re.compile(r"\b(?:remind|messag|text|notif|ping|nag|writ|bother|contact|spam|unsubscrib|alert|prompt|stop|quiet|"
                                  r"silen|mute|off\b|leave me|enough|annoy)")}
"""What erases or ends something is not guessed from words that name nothing of it."""

_HELD: Final = frozenset(("!stop", "!back", "!erase", "!my_data", "!stop_reminders"))
"""Commands where a person is not free to go elsewhere."""


def _may_be_meant(draft: Draft, text: str, name: str) -> bool:
    """True if a message may mean something here: no number that can't be read, no correction before there is an answer, no flow that isn't
    there, and none where others come first."""
    if name[0] not in "#!@":
        return True
    if name in _ENDS and not _ENDS[name].search(text.lower()):
        return False
    if name in ("@not_yet", "@unsure") and draft.top.flow == draft.book.home:  # where nothing waits to be done, or is asked
        return False
    if name == A_NUMBER:
        return isinstance(draft.ask.kind.read(text, draft.context), Answer) or understand(draft, text, rules_at(draft, text)) is not None
    if draft.compiled.flow.policy.holds and name.startswith("!"):
        return name in _HELD
    if name == "@correction":
        return bool(draft.top.trail)
    return not name.startswith(f"!{TO_START}") or name.removeprefix(f"!{TO_START}") in draft.book.flows


def _known_otherwise(draft: Draft, text: str) -> bool:
    """True if a message has no word, is a bare yes or no, which is no answer here, a command, nearly one of the menu, a wish for
    what can't begin before this is answered, or words for a number."""
    kind = draft.ask.kind
    if not any(letter.isalpha() for letter in text):
        return True
    menu = draft.book.command(text) or (draft.top.flow == draft.book.home and draft.book.near_command(text))
    held = draft.compiled.flow.policy.holds and any(one.name[0] == "!" and one.name not in _HELD for one in likely_at(draft, text)[:1])
    return hear(text) in (Phrase.YES, Phrase.NO) or bool(menu) or held or (isinstance(kind, Number) and kind.names_it(text))


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


def read_of(draft: Draft, text: str) -> Answer | None:
    """Return the answer to the open question in a message: as its kind reads it, else as the sentence says it."""
    read = draft.ask.kind.read(text, draft.context)
    if isinstance(read, Answer):
        return read
    understood = understand(draft, text, heard_at(draft, text))
    return Answer(understood.slots[0].value, text, understood.slots[0].unit) if understood else None


def understood_words(draft: Draft, text: str) -> str:
    """Return what was understood of a message in one line: "left 11 cm, right 9 cm"; words of one's own in quotes."""
    if draft.ask.free:
        return f"“{text.strip()}”"
    understood, stops = understand(draft, text, heard_at(draft, text)), draft.compiled.stops
    asks = [(stops[slot.key], slot) for slot in understood.slots] if understood else []
    return ", ".join(slot_words(draft, ask, slot) for ask, slot in asks if isinstance(ask, Ask))
