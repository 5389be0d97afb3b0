"""Signs and pain that a coach tells of a lifter: whose they are is asked, and they count only where the lifter writes them."""

from __future__ import annotations

from typing import Final

from companion.conversation.asking import ask_aside, show
from companion.conversation.draft import Draft
from companion.conversation.effects import Tap
from companion.conversation.prompt import start_payload
from companion.language.clauses import flat
from companion.language.coach_words import SOMEBODY, lifters_in, told_of
from companion.language.flags import URGENT, Flag, hear_flags
from companion.language.pain import Pain, hear_pain
from companion.language.questions import is_question

OF_A_LIFTER: Final = (
    "Then I note nothing: it counts once they write it to me, and I ask them what matters. Please ask them to. Chest pain, fainting, "
    "trouble with bladder or bowel, numb between the legs, a leg that gets weaker, thoughts of ending their life: get them emergency help "
    "now.")


def about_a_lifter(draft: Draft, text: str, own: str) -> bool:
    """True if a coach's message tells of a lifter and reports a sign or pain, said as it is or as theirs. Then it is asked whose it is,
    unless the question takes words of one's own, which they stay. Not while the coach's own body is at work: "they hurt" stops that.
    ``own``: what of it may tell of the coach (``coach_words.of_oneself``)."""
    if _may_be_own(draft, own):
        ask_aside(draft, "whose", text)
        return True
    told = told_of(text, lifters_in(draft.known.facts)) if own else None
    if told is None or not any(hear_flags(one) or hear_pain(one) is Pain.YES for one in (own, told.as_own)):
        return False
    if draft.session.stack and (draft.works or not draft.compiled.flow.policy.hears_signs):
        return False
    if not (draft.session.stack and draft.ask.free):
        ask_aside(draft, "whose", text)
    return True


def _may_be_own(draft: Draft, text: str) -> bool:
    """True if words typed where a coach acts for somebody else, and no words of one's own are expected, may be of an urgent sign or pain:
    whose they are is asked. Of harming oneself there is a question of its own (``signs``)."""
    if not draft.session.stack or draft.session.aside or draft.ask.free or draft.compiled.flow.policy.hears_signs:
        return False
    flags = {one.flag for one in hear_flags(text)}
    return Flag.SELF_HARM not in flags and (not URGENT.isdisjoint(flags) or hear_pain(text) is Pain.YES)


def says_whose(draft: Draft, text: str) -> bool:
    """True if a reply to whose it is names a lifter, or says in other words that it is one's: "sam", "it's about my lifter"; not one that
    asks for something else, such as "my lifters"."""
    if draft.book.command(text) or is_question(text):
        return False
    said = {one for word in flat(text).strip(" .!").split() for one in (word, word.removesuffix("s"))}  # "Sam's" is "sams" there
    named = {word for name in lifters_in(draft.known.facts).values() for word in flat(name).split()}
    return bool(said & (named | _LIFTERS_WORDS)) and not said & _OWN_WORDS


_LIFTERS_WORDS: Final = frozenset(("lifter", "lifters", "client", "clients", "athlete", "athletes", "theirs", "his", "hers", "him", "her",
                                   "them"))
_OWN_WORDS: Final = frozenset(("i", "im", "me", "mine", "myself", "both"))


def of_a_lifter(draft: Draft, text: str) -> None:
    """Tell a coach what to do about a sign that a lifter has told them of; the open question stands again."""
    told = told_of(text, lifters_in(draft.known.facts))
    named = told is not None and told.who != SOMEBODY
    buttons = (Tap("Write to them", start_payload("coach_note", told.who)), Tap("Their page", start_payload("lifter", told.who))
               ) if told and named else (Tap("My lifters", start_payload("caseload")),)
    draft.say(OF_A_LIFTER, buttons=(buttons,))
    if draft.session.stack:
        show(draft)
