"""Aims of a typed message beside an answer to the open question; nothing is changed here."""

from __future__ import annotations

from typing import Final

from companion.conversation.acting import CONTROLS_BUT_HELP, RIGHTS, RIGHTS_LONGEST
from companion.conversation.draft import Draft
from companion.conversation.hearing import read_of
from companion.conversation.kinds import Answer
from companion.language.act_rules import matches, tables_in
from companion.language.acts import Asks, hear_act
from companion.language.clauses import flat
from companion.language.courtesies import nods
from companion.language.phrases import Phrase, hear, normalise


def undoes_nothing(draft: Draft, text: str) -> bool:
    """True if words name a flow that takes something back, where it has nothing to: they are about the answer before the open question."""
    flow = draft.book.command(text)
    return bool(flow and draft.top.flow != draft.book.home and not draft.book[flow].flow.said_by.holds(draft.known.facts))


def names_itself(draft: Draft, flow: str, text: str) -> bool:
    """True if a message is the name of the conversation itself, or the menu's own where safety is asked about: it is nobody's there, and
    as a note it is asked about."""
    menu = draft.ask.safety and flow == draft.book.home and normalise(text).strip(" .!") == normalise(draft.book[flow].flow.title)
    return flow == draft.top.flow or menu


def says_nothing_hurts(draft: Draft, text: str) -> bool:
    """True if a message says no more than that nothing hurts, where that answers nothing: it is no pain, no wish and no command either."""
    takes = not draft.compiled.flow.policy.hears_pain or draft.ask.free
    return not takes and matches("nothing_hurts", flat(text)) and not isinstance(draft.ask.kind.read(text, draft.context), Answer)


def says_nothing_here(draft: Draft, text: str) -> bool:
    """True if a message is neither an answer, nor a question about the open one, nor the name of what may begin over it."""
    flow = draft.book.command(text)
    begins = bool(flow and (draft.book[flow].flow.policy.always or flow in draft.ask.lets))
    said = begins or hear(text) in CONTROLS_BUT_HELP or isinstance(read_of(draft, text), Answer)
    return not said and hear_act(text).asks in (None, Asks.GENERAL)


SAID_OVER: Final = "over"
"""The fact that says, to what decides whether a sentence fits, over which flow it is said; none at the menu."""


def told_beside(draft: Draft, text: str) -> tuple[str, str] | None:
    """Return the flow, and its request, of a whole sentence that says what a clinician said, where words of one's own are expected about
    something else: it is no wish and no note. None for no such."""
    policy = draft.compiled.flow.policy
    if not draft.ask.free or draft.ask.safety or policy.told or not policy.hears_signs:
        return None
    said = draft.book.sentence(text, {**draft.known.facts, SAID_OVER: draft.top.flow})
    return said if said and draft.book[said[0]].flow.policy.told else None


def right_wanted(draft: Draft, text: str) -> tuple[str, str] | None:
    """Return the flow, and its request, of a wish about the person's own data or the reminders, in any words; None for no such."""
    wants = hear_act(text).wants if len(text.split()) <= RIGHTS_LONGEST else ""
    if wants not in RIGHTS:
        return None
    book, facts, meant = draft.book, draft.known.facts, str(tables_in("does")[wants])
    said = book.sentence(text, facts) or ((flow, "") if (flow := book.command(text) or book.command(meant)) else None)
    return said or book.sentence(meant, facts)


def assents(draft: Draft, text: str) -> bool:
    """True if a message is plain assent or thanks, which says of no movement that it is over."""
    said = nods(text) or hear(text) in (Phrase.YES, Phrase.READY)
    return said and not isinstance(draft.ask.kind.read(text, draft.context), Answer)


def begun_by(draft: Draft, text: str) -> tuple[str, str] | None:
    """Return the flow that a whole sentence starts over the open question, and the request in it; None for none."""
    home = draft.top.flow == draft.book.home
    said = draft.book.sentence(text, draft.known.facts if home else {**draft.known.facts, SAID_OVER: draft.top.flow})
    if said is None or home:
        return said
    begun = draft.book[said[0]].flow
    if begun.name == draft.top.flow and begun.policy.told and isinstance(read_of(draft, text), Answer):
        return None  # said where it is asked for
    return said if not begun.at_rest or draft.top.flow in begun.over else None


def asks_why_this(draft: Draft, text: str) -> bool:
    """True if a bare "why?" is about the open question: everywhere but in the menu, after results, and where sources are told."""
    results = draft.top.flow == draft.book.home or draft.compiled.flow.policy.pages or draft.compiled.flow.policy.beside
    return not results and normalise(text).strip(" .!?") == "why"
