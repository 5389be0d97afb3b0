"""Wishes and meanings heard with doubt, in words, before they count."""

from __future__ import annotations

from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.hearing import heard_at
from companion.conversation.kinds import Answer, ReadingContext, pick
from companion.conversation.slots import likely_at, reads_acts, rules_at, slot_words, understand
from companion.language.acts import Spoken, hear_act
from companion.language.learnt import A_NUMBER, OWN_WORDS, TO_START, behind

WISHES: Final = {
    "skip": "skip this one", "stop": "stop here", "back": "go back to the question before", "menu": "see the menu",
    "results": "see your results", "my_data": "see what is kept about you", "erase": "have everything about you erased",
    "stop_reminders": "have no more reminders"}
"""What a command is asked about as."""
SURE_OF_WISH: Final = 15
"""By how many tenths of a log-odds a command must be likelier than words of one's own to be asked about instead; chosen on writers left
out."""


COMMAND_LONGEST: Final = 10
"""Most words of a message that is carried out as stop, skip or back; a longer one may only mention it, and is asked about; our choice."""


def wish_of(draft: Draft, text: str) -> str:
    """Return what a message seems to want, in words."""
    wants = wants_of(draft, text) or "menu"  # nothing any more, if what is learnt changed since
    return WISHES.get(wants) or f"open “{draft.book[wants.removeprefix(TO_START)].flow.title}”"


def wants_of(draft: Draft, text: str) -> str:
    """Return the command that a message most likely gives at the open question; "" for none. Where safety is asked about, and what a
    clinician said, it is one if it is the very name of something."""
    ask = draft.ask
    if asks_what_was_told(draft) and (named := _offered(draft, text)):
        return "menu" if named == draft.book.home else f"{TO_START}{named}"
    if ask.safety:
        return ""
    spoken = heard_at(draft, text) if reads_acts(ask) else hear_act(text)
    wants = spoken.wants if spoken.guessed or (mentions(spoken, text) and not ask.free) else ""
    if not (wants or reads_acts(ask)) and (likely := likely_at(draft, text)):
        wants = likely[0].name[1:] if likely[0].name.startswith("!") and behind(likely, OWN_WORDS) >= SURE_OF_WISH else ""
    flow = wants.removeprefix(TO_START)
    return wants if wants in WISHES or (flow != wants and flow in draft.book.flows) else ""


def asks_what_was_told(draft: Draft) -> bool:
    """True if words are expected that count for the safety of somebody: what a clinician said, who cleared them."""
    return draft.ask.free and (draft.ask.safety or draft.compiled.flow.policy.told)


def _offered(draft: Draft, text: str) -> str:
    """Return the flow that a message is the name of, as a command or as the menu has it; "" for none."""
    menu = (stop for stop in draft.book[draft.book.home].stops.values() if isinstance(stop, Ask))
    read = (pick(text, ask.kind.options, ReadingContext(strict=True)) for ask in menu)
    named = (str(one.value) for one in read if isinstance(one, Answer) and one.value in draft.book.flows)
    return draft.book.command(text) or next(named, "")


def mentions(spoken: Spoken, text: str) -> bool:
    """True if a message may only mention the stop, skip or back that it has."""
    return spoken.wants in ("stop", "skip", "back") and len(text.split()) > COMMAND_LONGEST


ACTS_MEANT: Final = {"@question": "It's a question", "@not_yet": "Not yet", "@unsure": "I don't know",
                     "@correction": "Change an earlier answer"}
"""What an act is called where a person is asked what they mean."""


def meant_words(draft: Draft, text: str, name: str) -> str:
    """Return what a message may mean, by its name in the learnt layer, as the words of a button."""
    if name in ACTS_MEANT:
        return ACTS_MEANT[name]
    if name == A_NUMBER:
        understood = understand(draft, text, rules_at(draft, text))
        return slot_words(draft, draft.ask, understood.slots[0]) if understood else text
    if name.startswith(f"!{TO_START}"):
        return draft.book[name.removeprefix(f"!{TO_START}")].flow.title
    if name.startswith("!"):
        words = WISHES.get(name[1:], name[1:])
        return words[0].upper() + words[1:]
    return next(option.label for option in draft.ask.kind.options if option.value == name)
