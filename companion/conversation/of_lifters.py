"""Signs and pain that a coach tells of a lifter: whose they are is asked, and they count only where the lifter writes them."""

from __future__ import annotations

import re
from typing import Final

from companion.conversation.asking import ask_aside, show
from companion.conversation.draft import Draft
from companion.conversation.effects import Tap
from companion.conversation.kinds import Answer
from companion.conversation.moves import answer
from companion.conversation.prompt import start_payload
from companion.conversation.what_meant import leave_unasked, tells_what_meant
from companion.language.clauses import flat
from companion.language.coach_words import SOMEBODY, lifters_in, told_of
from companion.language.flags import URGENT, Flag, hear_flags
from companion.language.pain import Pain, hear_pain
from companion.language.questions import is_question

OF_A_LIFTER: Final = (
    "Then I note nothing: it counts once they write it to me, and I ask them what matters. Please ask them to. Chest pain, fainting, "
    "trouble with bladder or bowel, numb between the legs, a leg that gets weaker, thoughts of ending their life: get them emergency help "
    "now.")
URGENT_OF_A_LIFTER: Final = (
    "If it is there now, get them emergency help now: call the emergency number, and don't leave them alone. I note nothing of it: it "
    "counts once they write it to me, and I ask them what matters.")
HARM_OF_A_LIFTER: Final = (
    "Take it seriously. Don't leave them alone: stay with them, or have somebody near them stay, and call the emergency number or a "
    "crisis line now. Ask them openly; asking does no harm. I note nothing of it: it counts once they write it to me.")


def about_a_lifter(draft: Draft, text: str, own: str) -> bool:
    """True if a coach's message tells of a lifter and reports a sign or pain, said as it is or as theirs, and none of the coach's own
    in so many words. Then it is asked whose it is, unless the question takes words of one's own, which they stay where none is of the
    coach. Not while the coach's own body is at work: "they hurt" stops that. ``own``: what of it may tell of the coach
    (``coach_words.of_oneself``)."""
    if _may_be_own(draft, own):
        ask_aside(draft, "whose", text)
        return True
    told = told_of(text, lifters_in(draft.known.facts)) if own else None
    if told is None or not (_reports(own) or _reports(told.as_own)) or _reports(told.own):
        return False
    if draft.session.stack and (draft.works or not draft.compiled.flow.policy.hears_signs):
        return False
    if draft.session.stack and draft.ask.free:
        return not told.own
    ask_aside(draft, "whose", text)
    return True


def _reports(text: str) -> bool:
    return bool(hear_flags(text)) or hear_pain(text) is Pain.YES


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


def taken_back_for_a_lifter(draft: Draft, text: str) -> bool:
    """Take back the coach's own pain or sign that is asked about, if they say that it is a lifter's ("my lifter", "sam's"); return False
    where they don't, or where nothing can be taken back at the open question."""
    lifters = lifters_in(draft.known.facts)
    asked = draft.top.flow in (draft.book.signs, draft.book.pain) and not draft.book.sentence(text, draft.known.facts)
    if not (lifters and asked and says_whose(draft, text)):
        return False
    none = next((one for one in draft.ask.kind.options if _NOT_THEIRS.match(one.label)), None)
    if none is None:
        return False
    of_a_lifter(draft, str(draft.top.got.get("said", "")), again=False)
    answer(draft, Answer(none.value, text))
    if tells_what_meant(draft):
        leave_unasked(draft)
        answer(draft, Answer(text, text))
    return True


_NOT_THEIRS: Final = re.compile(r"No, (?:I meant|none of these)|Nothing hurts")
"""How the button begins by which a sign or pain is taken back."""


def of_a_lifter(draft: Draft, text: str, again: bool = True) -> None:
    """Tell a coach what to do about a sign that a lifter has told them of; ``again``: the open question stands again."""
    told = told_of(text, lifters_in(draft.known.facts))
    named = told is not None and told.who != SOMEBODY
    flags = {one.flag for said in (text, told.as_own if told else "") for one in hear_flags(said)}
    buttons = (Tap("Write to them", start_payload("coach_note", told.who)), Tap("Their page", start_payload("lifter", told.who))
               ) if told and named else (Tap("My lifters", start_payload("caseload")),)
    draft.say(HARM_OF_A_LIFTER if Flag.SELF_HARM in flags else OF_A_LIFTER if URGENT.isdisjoint(flags) else URGENT_OF_A_LIFTER,
              buttons=(buttons,))
    if again and draft.session.stack:
        show(draft)
