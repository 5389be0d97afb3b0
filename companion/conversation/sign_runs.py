"""Begin the questions about signs, and about thoughts of self-harm; what was open waits for them."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.effects import Began, Find
from companion.conversation.moves import SIGN_MOST, begin, hurt, leave_all
from companion.conversation.parking import interrupt
from companion.conversation.session import Session
from companion.language.flags import Flag, Heard, hear_flags
from companion.language.pain import Pain, hear_pain

ASKED_WITH_PAIN: Final = frozenset((Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.SEXUAL, Flag.WEAKNESS, Flag.CHEST))
"""Signs that the pain questions ask about themselves."""


def without_signs(text: str, heard: tuple[Heard, ...]) -> str:
    """Return a message without the words of its signs, so that pain reported beside them is found."""
    for one in heard:
        text = text.replace(one.words, ",")
    return text


def beside_signs(text: str, heard: tuple[Heard, ...]) -> str:
    """Return what a message says beside its signs; all of it where they are only suspected, since that is the whole sentence."""
    return without_signs(text, heard) if hear_flags(text, weigh=False) else text


def stop_for_pain(draft: Draft, heard: tuple[Heard, ...], text: str) -> bool:
    """Stop for pain. Its questions cover signs of the nerves and the chest; those about other signs follow them."""
    others = tuple(replace(one, also=()) for one in heard if one.flag not in ASKED_WITH_PAIN)
    hurt(draft, text)
    if others:
        pain = draft.session.stack[-1]
        draft.session = draft.session._replace(stack=draft.session.stack[:-1])
        ask_of(draft, others, text)
        draft.session = draft.session._replace(stack=(*draft.session.stack, pain))
    return True


def ask_about(draft: Draft, heard: tuple[Heard, ...], text: str) -> None:
    """Start the questions about the signs heard; the open question waits for them, and the body rests."""
    works = draft.asking and draft.works
    _interrupt(draft)
    ask_of(draft, heard, text)
    if works:
        draft.top = draft.top._replace(got={**draft.top.got, "works": "yes"})


def _interrupt(draft: Draft) -> None:
    """Let the open question wait. If it was asked whether something hurt, and not answered, the pain questions wait too."""
    aside, draft.session = draft.session.aside, draft.session._replace(aside=None, last=None)
    if aside and aside.if_hurt:
        hurt(draft, aside.text)
    elif draft.asking:
        interrupt(draft)


def ask_of(draft: Draft, heard: tuple[Heard, ...], text: str) -> None:
    """Put the questions about these signs on top. Beside the chest, whose question is when it was, others in doubt have questions of their
    own, which follow."""
    if apart := _apart(heard):
        ask_of(draft, apart, text)
        heard = tuple(one for one in heard if one not in apart)
    draft.push(draft.book.signs)
    sure = "yes" if any(one.sure for one in heard) else "no"
    got = {"said": text[:SIGN_MOST], "heard": " ".join(one.flag.value for one in heard), "sure": sure}
    if heard[0].also:
        got["among"] = " ".join(flag.value for flag in heard[0].named)
    if Flag.SELF_HARM in heard[0].also:
        got["said"] = ""
    draft.top = draft.top._replace(got=got)


def _apart(heard: tuple[Heard, ...]) -> tuple[Heard, ...]:
    """Return the signs in doubt that are heard beside the chest."""
    chest = any(one.flag is Flag.CHEST for one in heard)
    return tuple(one for one in heard if chest and not one.sure and one.flag is not Flag.CHEST)


def begin_crisis(draft: Draft, heard: tuple[Heard, ...], text: str) -> None:
    """Start the conversation about help, storing none of the words; what else they tell waits beneath. All other running and parked flows
    are left, unless the words were doubtful: then that is asked first, and the open question waits."""
    crisis, *others = heard
    _wait_beneath(draft, tuple(others) or _instead(crisis), beside_signs(text, heard))
    if crisis.sure:
        leave_all(draft, draft.session.stack)
        draft.session = Session(parked=draft.session.parked, runs=draft.session.runs, at=draft.session.at)
    draft.push(draft.book.crisis, "sure" if crisis.sure else "doubtful")


def _instead(doubtful: Heard) -> tuple[Heard, ...]:
    """Return what doubtful words may mean instead, the likeliest with the rest beside it; () for nothing."""
    first, *also = doubtful.also or (None,)
    return (Heard(first, False, doubtful.words, tuple(also)),) if first else ()


def _wait_beneath(draft: Draft, body: tuple[Heard, ...], left: str) -> None:
    """Begin the questions about signs, and about the pain in what is left of a message, without a word said or kept: the day is closed,
    and they are asked anew once what comes over them is over. The open question waits beneath."""
    pain = (not draft.session.stack or draft.compiled.flow.policy.hears_pain) and hear_pain(left) is Pain.YES
    if pain:
        hurt(draft, "")
    else:
        _interrupt(draft)
    if body:
        ask_of(draft, body, "")
    if pain or body:
        before = len(draft.effects)
        begin(draft)
        draft.effects[before:] = [effect for effect in draft.effects[before:] if isinstance(effect, Began | Find)]
        interrupt(draft)
