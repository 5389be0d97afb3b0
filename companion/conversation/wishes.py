"""Wishes heard with doubt: what a message seems to want, in words, before it is carried out."""

from __future__ import annotations

from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.slots import heard_at, likely_at, reads_acts
from companion.language.learnt import START, WORDS, behind

WISHES: Final = {
    "skip": "skip this one", "stop": "stop here", "back": "go back to the question before", "menu": "see the menu",
    "results": "see your results", "my_data": "see what is kept about you", "erase": "have everything about you erased",
    "stop_reminders": "have no more reminders"}
"""What a command is asked about as."""
SURE_OF_WISH: Final = 15
"""By how many tenths of a log-odds a command must be likelier than words of one's own to be asked about instead; chosen on writers left
out."""


def wish_of(draft: Draft, text: str) -> str:
    """Return what a message seems to want, in words."""
    wants = wants_of(draft, text)
    return WISHES.get(wants) or f"go to {draft.book[wants.removeprefix(START)].flow.title}"


def wants_of(draft: Draft, text: str) -> str:
    """Return the command that a message most likely gives at the open question; "" for none, and where health is asked about."""
    if draft.ask.safety or not draft.compiled.flow.policy.hears_pain:
        return ""
    if reads_acts(draft.ask):
        spoken = heard_at(draft, text)
        wants = spoken.wants if spoken.guessed else ""
    else:
        likely = likely_at(draft, text)
        wants = likely[0].name[1:] if likely[0].name.startswith("!") and behind(likely, WORDS) >= SURE_OF_WISH else ""
    flow = wants.removeprefix(START)
    return wants if wants in WISHES or (flow != wants and flow in draft.book.flows) else ""
