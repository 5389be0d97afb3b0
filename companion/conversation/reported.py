"""Pain and other signs that a message reports, heard before anything else in it is read."""

from __future__ import annotations

import re
from datetime import datetime, timedelta
from typing import Final

from companion.conversation.acting import CONTROLS
from companion.conversation.asking import ask_aside
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, Choice, ReadingContext
from companion.conversation.labels import labelled
from companion.conversation.moves import cut_hold, hurt
from companion.conversation.number_kinds import PainScore
from companion.conversation.of_lifters import about_a_lifter
from companion.conversation.session import Session
from companion.conversation.signs import beside_the_asked, heard_sign, only_asks
from companion.conversation.what_meant import is_option, take_meant, tells_what_meant
from companion.language.act_rules import matches
from companion.language.being_seen import saw_somebody
from companion.language.clauses import flat
from companion.language.coach_words import lifters_in, of_oneself
from companion.language.courtesies import greets, nods
from companion.language.findings import beside_the_found
from companion.language.flags import Flag, hear_flags
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear
from companion.language.questions import is_question

TOGETHER: Final = timedelta(minutes=2)
"""Time between two messages in which the second may go on with the first; our choice."""

TOGETHER_MOST: Final = 2
"""Most messages that one may go on with; our choice."""

UNREAD_MOST: Final = 120
"""Most characters kept of such a message; our choice."""


_IN_DOUBT: Final = ("which", "understood", "corrected", "wish")
"""Side questions about what a message may mean: nothing in it has been taken."""


def heard_together(draft: Draft, before: Session, text: str) -> None:
    """Read a message that came to nothing once more with those just before it that did, for pain and signs only; what is heard so is asked
    about ("i cant", "pee"). What surely is of self-harm counts as in one message ("i want", "to die"), also where the last of them was in
    doubt alone. ``before``: the session before it."""
    unread, draft.session = before.unread, draft.session._replace(unread=())
    in_crisis = draft.session.stack and draft.top.flow == draft.book.crisis  # where no word is kept
    if not before.at or draft.known.now - datetime.fromisoformat(before.at) > TOGETHER:
        unread = ()
    together = [(first, " ".join((*unread[first:], text))) for first in reversed(range(len(unread)))]
    if in_crisis:
        together = [one for one in together if any(heard.flag is Flag.SELF_HARM and heard.sure for heard in hear_flags(one[1]))]
    elif not _came_to_nothing(draft, before, text):
        return
    now = draft.session, list(draft.effects)
    for first, joined in together:
        aside = None if before.aside and before.aside.text in unread[first:] else before.aside
        draft.session, draft.effects = before._replace(unread=(), aside=aside), []
        if heard_out(draft, joined, in_doubt=True):
            return
    draft.session, draft.effects = now
    if in_crisis:
        return
    draft.session = draft.session._replace(unread=(*unread, text[:UNREAD_MOST])[-TOGETHER_MOST:])


def _came_to_nothing(draft: Draft, before: Session, text: str) -> bool:
    """True if a message left the conversation where it was, and is no yes, question, control word or courtesy. A stop may be of more
    than the conversation."""
    after = draft.session
    stayed = (after.stack, after.parked, after.runs) == (before.stack, before.parked, before.runs)
    settled = (before.aside and before.aside.about not in _IN_DOUBT and after.aside != before.aside) or (
        after.aside and not after.aside.if_hurt and after.aside.about not in _IN_DOUBT)
    heard = hear(text, strict=True)
    ends = heard in CONTROLS and heard is not Phrase.STOP
    return stayed and not settled and not ends and heard is not Phrase.YES and not is_question(text) and (
        not greets(text) and not nods(text) and not matches("nothing_hurts", flat(text)))


def heard_out(draft: Draft, text: str, in_doubt: bool = False) -> bool:
    """Act on pain or another sign in a message, before anything else; return True if there was one. ``in_doubt``: only ask about it, but
    for self-harm."""
    if draft.known.facts.get("is_coach") == "yes":
        names, free = lifters_in(draft.known.facts), bool(draft.session.stack and draft.ask.free)
        waits = bool(draft.session.aside or free or (draft.session.stack and draft.ask.safety))
        whole, text = text, of_oneself(text, names.values(), not waits and bool(labelled(draft, text)))
        if about_a_lifter(draft, whole, text):
            return not free or draft.session.aside is not None
    return heard_sign(draft, text, in_doubt=in_doubt) or heard_pain(draft, text, in_doubt)


def heard_pain(draft: Draft, text: str, in_doubt: bool = False) -> bool:
    """Stop for pain, or ask whether something hurt, if the words report it; return True then. ``in_doubt``: only ask, if they surely do."""
    stack = draft.session.stack
    if (stack and not draft.compiled.flow.policy.hears_pain) or draft.book.brings_code(text):
        return False
    asking = draft.ask if stack and draft.top.state in draft.compiled.stops else None
    words, works = beside_the_asked(draft, text), bool(asking and draft.works)
    pain = hear_pain(words, body_at_work=works)
    if pain is not Pain.NO and _was_said(draft, asking, text):
        pain = hear_pain(beside_the_found(words), body_at_work=works)
    meant = tells_what_meant(draft) and draft.session.aside is None
    if meant:
        pain = _of_what_meant(draft, text, pain)
    if in_doubt:
        pain = Pain.ASK if pain is Pain.YES else Pain.NO
    aside = draft.session.aside
    free = asking is not None and asking.free and aside is None
    if pain is Pain.YES and (meant or not free):
        if meant:
            take_meant(draft, text)
        hurt(draft, text)
        return True
    if pain is Pain.ASK and not works and _asks_of_words(text):
        return False
    if pain is Pain.ASK and (matches("will_hurt", flat(text)) or (free and not draft.ask.doubts)):
        return False
    if pain is Pain.NO or (aside is not None and aside.about not in _IN_DOUBT) or (asking and (asking.unread or is_option(draft, text))):
        return False
    if not free and draft.book.command(text):  # such as "how it went": what is asked for by name leaves nothing unsure
        return False
    at_rest = not stack or draft.top.flow == draft.book.home
    said = draft.book.sentence(text, draft.known.facts) if at_rest else None
    if said and (said[0] == draft.book.pain or saw_somebody(text)):  # "i take it back"; "saw the doctor, a nerve is pinched"
        return False
    cut_hold(draft)
    ask_aside(draft, "ache", text)
    return True


def _of_what_meant(draft: Draft, text: str, pain: Pain) -> Pain:
    """Return the pain in words that say what was meant instead of a sign. What those before them told of it counts too, now that they are
    read as no sign ("my knee is killing me"); a doubt that comes of words of the sign ("a few drops") is left to its own question."""
    said = str(draft.top.got.get("said", ""))
    waits = any(frame.flow == draft.book.pain for frame in draft.session.stack)
    before = hear_pain(beside_the_asked(draft, said)) if not waits and _NAMES_PAIN.search(flat(said)) else Pain.NO
    if pain is Pain.ASK and hear_flags(text) and not _NAMES_PAIN.search(flat(text)):
        pain = Pain.NO
    return Pain.ASK if pain is Pain.NO and before is not Pain.NO else pain


_NAMES_PAIN: Final = re.compile(
    r"\b(?:pain\w*|hurt\w*|ach(?:e|es|ed|ing|y)|sore\w*|stiff\w*|tender\w*|twing\w*|pinch\w*|cramp\w*|spasm\w*|throb\w*|killing|kills|"
    r"stab\w*|sharp|burn\w*|ouch|niggl\w*|pull\w*|tweak\w*|agony)\b")


def names_what_hurts(draft: Draft, text: str) -> bool:
    """True if a reply answers, word for word, one of the pain questions with something that hurts: a place, or how bad it is."""
    reading = ReadingContext(draft.units, draft.known.now, strict=True)
    for ask in (stop for stop in draft.book[draft.book.pain].stops.values() if isinstance(stop, Ask)):
        read = ask.kind.read(text, reading) if isinstance(ask.kind, Choice | PainScore) else None
        if isinstance(read, Answer):
            return read.value != 0 and not (isinstance(ask.kind, Choice) and read.value == ask.kind.later)
    return False


def _asks_of_words(text: str) -> bool:
    """True if a message only asks what words mean or why they are asked about ("what does numb mean?"), and names neither pain nor what
    happens: "what does it mean when it hurts?"."""
    return only_asks(text) and not _HAPPENS.search(flat(text))


_HAPPENS: Final = re.compile(r"\b(?:when|if|it|this|that|these|counts?|pain\w*|hurt\w*|ach\w+|sore\w*)\b")


def _was_said(draft: Draft, asking: Ask | None, text: str) -> bool:
    """True if a message tells what a clinician said: where that is asked for, or as a whole sentence that begins such a flow. The
    name of what was found is no pain in it."""
    if asking and (asking.kind.told(text) or (asking.free and Flag.RESTRICTION.value in asking.signs)):
        return True
    said = draft.book.sentence(text, draft.known.facts)
    return bool(said and draft.book[said[0]].flow.policy.told)
