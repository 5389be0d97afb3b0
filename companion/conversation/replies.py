"""Interpret a reply, and make the move it asks for.

A typed reply is read in this order: pain and other signs; the side question, if there is one; "stop" while the body is at work; an
exact answer to the open question; a command that starts a flow; a question of the person's; the exact control words stop, back, again,
help and skip; what its speech act says (``acting``), and only an answer fills a slot; a near miss of a control word; and last what it most
likely means (``hearing``), which is asked, the last two not in safety questions. In the menu a whole sentence that starts a flow comes
before the control words.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from companion.conversation.acting import (
    CONTROLS,
    WAITS,
    control,
    do_meant,
    fill,
)
from companion.conversation.aims import (
    asks_why_this,
    assents,
    names_itself,
    right_wanted,
    says_nothing_here,
    says_nothing_hurts,
    told_beside,
    undoes_nothing,
)
from companion.conversation.alike import as_before
from companion.conversation.amending import amend, answer_anew
from companion.conversation.answers import answered, refuse, sent_today, tell_idle, told_what_stands, what_stands
from companion.conversation.asked_if_hurt import met_beside_hurt, only_played_down
from companion.conversation.asking import MEANT_IS, aside_options, ask_again, ask_aside, keeps_words
from companion.conversation.condition import ALWAYS
from companion.conversation.draft import Draft
from companion.conversation.effects import Say
from companion.conversation.events import Sent
from companion.conversation.flow import Ask
from companion.conversation.hearing import meant_at, read_of
from companion.conversation.invitations import answers_invitation, begins_invited
from companion.conversation.kinds import HALF_IS_YES, Answer, ReadingContext, Ready, pick
from companion.conversation.labels import labelled
from companion.conversation.moves import answer, begin_anew, hurt, noted, skip, told_of_later
from companion.conversation.of_lifters import of_a_lifter, says_whose, taken_back_for_a_lifter
from companion.conversation.pages import MORE_PAGES, asks_for_more, show_more
from companion.conversation.parking import THESE_FIRST, go_on, interrupt, leave, over_again, park, start
from companion.conversation.prompt import ASIDE, BACK, NOTED, SKIP, STOP, read_payload, read_start
from companion.conversation.reading import SAYS_MEANT, asked_back, put_right_at_once, read_reply, take_read
from companion.conversation.refusing import NOT_THAT
from companion.conversation.reported import heard_out, heard_pain, names_what_hurts
from companion.conversation.session import SAID_AHEAD
from companion.conversation.signs import heard_sign
from companion.conversation.what_meant import is_option, take_meant, tells_what_meant
from companion.conversation.wishes import wants_of
from companion.language.act_rules import matches
from companion.language.clauses import flat
from companion.language.courtesies import nods
from companion.language.half import half_denied, half_said, in_doubt
from companion.language.phrases import Phrase, hear, normalise
from companion.language.questions import is_question


def typed(draft: Draft, text: str, *, harmless: bool = False) -> None:
    """Take a text message. ``harmless``: it was asked whether something hurt in it, and nothing did. Words at the menu that would come to
    nothing, from somebody who was sent to be seen at once today, are met with where they were sent."""
    before = draft.session, list(draft.effects)
    sent_now = sent_today(draft)
    _typed(draft, text, harmless)
    aside = draft.session.aside
    if sent_now and (draft.session.refused > before[0].refused or (aside and aside.about == "which")):
        draft.session, draft.effects = before
        told_what_stands(draft)


def _typed(draft: Draft, text: str, harmless: bool) -> None:
    waits = draft.session.aside and draft.session.aside.if_hurt
    if not waits and answers_invitation(draft, text):
        return
    if not waits and _told_first(draft, text):
        return
    if not harmless and heard_out(draft, text):
        if stands := what_stands(draft, text):  # "do I need an ambulance?" reports pain too
            draft.effects.insert(0, Say(stands, must_arrive=True))
        return
    if asks_for_more(draft, text):
        show_more(draft)
        return
    heard = hear(text, strict=True)
    if draft.session.aside:
        _aside_answered(draft, text, heard)
    elif not draft.session.stack:
        _from_idle(draft, text)
    elif heard is Phrase.STOP and (draft.works or draft.ask.free):
        control(draft, heard)
    elif draft.ask.free and heard is Phrase.YES and (wrote := noted(draft, SAID_AHEAD + draft.ask.key)):
        answer(draft, wrote, sure=True)
    elif draft.ask.amends and answer_anew(draft, text):
        pass
    elif told := draft.ask.kind.told(text):
        answer(draft, told)
    elif not draft.ask.free and not is_option(draft, text) and (told_of_later(draft, text) or told_what_stands(draft, text)):
        pass
    elif not draft.ask.free and not is_option(draft, text) and (right := right_wanted(draft, text)):
        start(draft, *right)
    elif said := told_beside(draft, text):
        interrupt(draft)
        draft.push(*said)
    elif draft.ask.kind.declined(text) and not draft.ask.safety:
        skip(draft)
    elif isinstance(draft.ask.kind, Ready) and draft.ask.kind.ends and assents(draft, text):
        draft.say(WAITS)
    elif is_option(draft, text):
        take_read(draft, text, draft.ask.kind.read(text, draft.context))
    elif taken_back_for_a_lifter(draft, text):
        pass
    elif draft.ask.unread and says_nothing_here(draft, text):
        ask_again(draft, draft.ask.unread[0], draft.ask.unread[1:])
    elif same := as_before(draft, text):
        answer(draft, same)
    elif not draft.ask.free and (data := labelled(draft, text)):
        tapped(draft, data)
    elif (meant := SAYS_MEANT.fullmatch(normalise(text))) and not draft.ask.free and not (draft.ask.safety and "it was" in normalise(text)):
        put_right_at_once(draft, text, meant[1])
    elif asks_why_this(draft, text) and answered(draft, text):
        pass
    elif heard is Phrase.BACK and undoes_nothing(draft, text):
        control(draft, heard)
    elif (flow := draft.book.command(text)) and (not draft.ask.free or text.lstrip().startswith("/") or names_itself(draft, flow, text)):
        start(draft, flow)
    elif draft.top.flow == draft.book.home and (said := draft.book.sentence(text, draft.known.facts)):
        start(draft, *said)
    elif draft.top.flow == draft.book.home and begins_invited(draft, text):
        pass
    elif draft.top.flow == draft.book.home and nods(text):
        draft.say(what_stands(draft) or GOOD)
    elif says_nothing_hurts(draft, text):
        draft.say(what_stands(draft) or GOOD) if draft.top.flow == draft.book.home else ask_again(draft, "Good.")
    elif asked_back(draft, text):
        pass
    elif heard in CONTROLS and not draft.ask.kind.claims(text, draft.context) and (
            not draft.ask.free or (heard is Phrase.SKIP and not draft.ask.safety)):
        control(draft, heard)
    else:
        read_reply(draft, text)


def _told_first(draft: Draft, text: str) -> bool:
    """Take an answer that counts before pain is heard in it or, where nothing is asked, begin a flow with a sentence that does; return
    False where there is none."""
    asks = bool(draft.session.stack) and not draft.session.aside and draft.top.state in draft.compiled.stops
    if asks and (told := draft.ask.kind.told_before_pain(text)):
        answer(draft, told)
        return True
    at_rest = not draft.session.aside and (not draft.session.stack or draft.top.flow == draft.book.home)
    if at_rest and only_played_down(draft, text):
        return True
    if at_rest and (said := draft.book.heard_first(text, draft.known.facts)):
        start(draft, *said)
        return True
    return False


def _aside_answered(draft: Draft, text: str, heard: Phrase | None) -> None:
    aside = draft.session.aside
    assert aside is not None
    read = pick(text, aside_options(draft), ReadingContext(strict=True))
    decided = {Phrase.YES: "yes", Phrase.NO: "no"}.get(heard) if heard else None
    if aside.if_hurt and not decided and not isinstance(read, Answer):
        decided = "unsure" if half_said(text) or in_doubt(text) else "yes" if names_what_hurts(draft, text) else None
    if isinstance(read, Answer):
        _aside_decided(draft, str(read.value))
    elif decided and any(option.value == decided for option in aside_options(draft)):
        _aside_decided(draft, decided)
    elif aside.if_hurt and half_denied(text):
        ask_again(draft, HALF_IS_YES)
    elif heard is Phrase.AGAIN:
        ask_again(draft)
    elif (heard in CONTROLS and aside.about == "unusual") or (draft.book.command(text) and aside.about in ("unusual", "return")):
        draft.session = draft.session._replace(aside=None)
        typed(draft, text)
    elif heard is Phrase.STOP and aside.if_hurt:
        _stopped(draft)
    elif heard is Phrase.STOP:
        draft.session = draft.session._replace(aside=None)
        park(draft)
    elif aside.about == "whose" and says_whose(draft, text):
        _aside_decided(draft, "no")
    elif aside.about in ("understood", "corrected", "wish", "which", "whose"):  # said anew instead
        draft.session = draft.session._replace(aside=None)
        typed(draft, text)
    elif aside.about == "unusual" and (value := read_of(draft, text)):
        before = read_of(draft, aside.text)
        draft.session = draft.session._replace(aside=None)
        answer(draft, value, sure=before is not None and before.value == value.value)
    elif aside.if_hurt:
        met_beside_hurt(draft, text)
    else:
        ask_again(draft, NOT_THAT[0])


STOPPED: Final = "Stopped. What I asked stays open, and nothing begins before I know."


def _stopped(draft: Draft) -> None:
    """Stop for what was said while it is asked whether something hurt. That stays asked: a stop says nothing of it, and what runs is parked
    once it is answered."""
    aside = draft.session.aside
    ask_aside(draft, "stop", aside.text if aside else "", STOPPED if aside else "")


def _aside_decided(draft: Draft, decided: str) -> None:
    aside = draft.session.aside
    assert aside is not None
    keeps = keeps_words(draft)
    draft.session = draft.session._replace(aside=None)
    match aside.about, decided:
        case "unusual", "yes":
            if read := read_of(draft, aside.text):
                answer(draft, read, sure=True)
        case "understood", "yes":
            fill(draft, aside.text, sure=True)
        case "corrected", "yes":
            amend(draft, aside.text)
        case "corrected", _ if decided.startswith(MEANT_IS):
            amend(draft, aside.text, int(decided.removeprefix(MEANT_IS)))
        case "wish", "yes":
            do_meant(draft, aside.text, f"!{wants_of(draft, aside.text)}")
        case "which", _ if decided.startswith(MEANT_IS):
            do_meant(draft, aside.text, meant_at(draft, aside.text)[int(decided.removeprefix(MEANT_IS))])
        case "whose", "no":
            of_a_lifter(draft, aside.text)
        case "whose", _:
            if not (heard_sign(draft, aside.text, own=True) or heard_pain(draft, aside.text)):
                ask_aside(draft, "ache", aside.text)
        case "wish" | "corrected", _ if keeps:
            fill(draft, aside.text)
        case "unusual" | "understood" | "corrected" | "wish" | "which", _:
            ask_again(draft, "Then once more.")
        case "return", "go_on":
            go_on(draft)
        case "return", "again":
            if not over_again(draft):
                begin_anew(draft)
        case "return", _:
            draft.say("Left as it is; the answers so far are kept.")
            leave(draft, len(draft.session.stack) - 1 if draft.before_moving is None else draft.before_moving)
        case _, "yes" | "unsure":
            if aside.about == "ache" and draft.session.stack and tells_what_meant(draft):
                take_meant(draft, aside.text)
            hurt(draft, aside.text)
        case "stop", _:
            park(draft)
        case "ache", _ if not draft.session.stack or draft.top.flow == draft.book.home:
            _harmless(draft, aside.text)
        case _ if not draft.session.stack:
            _from_idle(draft, "menu")
        case _ if draft.ask.free:
            read_reply(draft, aside.text)
        case _:
            ask_again(draft, "All right. You don't have to go on: “stop” ends it for today.")


def _harmless(draft: Draft, text: str) -> None:
    """Take what was typed at the menu for what else it says, once nothing hurt; what says nothing else is let be."""
    before = draft.session, list(draft.effects)
    typed(draft, text, harmless=True)
    if draft.session.refused > before[0].refused:
        draft.session, draft.effects = before
        ask_again(draft, "All right.")


GOOD: Final = "Good. “Menu” shows what there is, whenever you like."


def _from_idle(draft: Draft, text: str) -> None:
    as_usual = draft.book.first(draft.known.facts) == draft.book.home
    if as_usual and draft.book.resumes(text) and draft.unpark():
        return
    if data := labelled(draft, text):
        tapped(draft, data)
    elif flow := draft.book.command(text):
        start(draft, flow)
    elif said := draft.book.sentence(text, draft.known.facts) or right_wanted(draft, text):
        start(draft, *said)
    elif begins_invited(draft, text):
        pass
    elif as_usual and draft.session.idle and not draft.session.asks_first and (
            nods(text) or matches("nothing_hurts", flat(text))):
        draft.say(what_stands(draft) or GOOD)
    else:
        if not told_what_stands(draft, text) and is_question(text):
            tell_idle(draft, text)
        draft.session = draft.session._replace(idle=False, aside=None)


def tapped(draft: Draft, data: str) -> None:
    """Take a tap on a button; its payload is unchecked."""
    if data == MORE_PAGES:
        show_more(draft)
        return
    aside = draft.session.aside
    if (begun := read_start(data)) and begun[0] in draft.book.flows:
        policy = draft.book[begun[0]].flow.policy
        if aside and aside.if_hurt and not (policy.always or policy.looks):
            ask_again(draft, THESE_FIRST)
        else:
            start(draft, *begun)
        return
    payload, stack = read_payload(data), draft.session.stack
    here = payload is not None and stack and payload.flow == draft.top.flow and payload.version == draft.top.version
    if payload and aside and payload.state.endswith(ASIDE) and (
            (here and payload.state == draft.top.state + ASIDE) or not stack) and any(
            option.value == payload.value for option in aside_options(draft)):
        _aside_decided(draft, payload.value)
    elif payload and payload.value == STOP and stack and draft.works:
        _stopped(draft)  # a stop counts from any button, however old
    elif payload and here and payload.state == draft.top.state and not aside:
        _chosen(draft, draft.ask, payload.value)
    else:
        ask_again(draft, "That button belongs to an earlier question; nothing has changed.")


def _chosen(draft: Draft, ask: Ask, value: str) -> None:
    if value == NOTED and (said := noted(draft, SAID_AHEAD + ask.key)):
        answer(draft, replace(said, tapped=True), sure=True)
        return
    if value in (SKIP, BACK, STOP):
        control(draft, {SKIP: Phrase.SKIP, BACK: Phrase.BACK, STOP: Phrase.STOP}[value])
        return
    for option in ask.kind.options:
        if option.value == value and (option.only_if == ALWAYS or option.only_if.holds(draft.facts())):
            meant = ask.kind.tapped(option, draft.context)
            if isinstance(meant, Answer):
                answer(draft, replace(meant, tapped=True))
            else:
                ask_again(draft, meant.reason)
            return
    ask_again(draft, "That button is not one of mine; nothing has changed.")


def sent(draft: Draft, thing: Sent) -> None:
    """Take a message that is not text."""
    if thing.caption and heard_out(draft, thing.caption):
        return
    stack, aside = draft.session.stack, draft.session.aside
    if not stack and not aside:
        _from_idle(draft, "menu")
    elif stack and not aside and (taken := draft.ask.kind.take(thing.kind, thing.ref)):
        answer(draft, taken)
    else:
        what = {"other": "that"}.get(thing.kind, f"a {thing.kind}" if thing.kind != "audio" else "a sound")
        reason = f"I can't take {what} as an answer here."
        if stack and not aside:
            refuse(draft, reason)
        else:
            ask_again(draft, reason)


def edited(draft: Draft, text: str) -> None:
    """Take an edited message: it changes no answer, but pain and other signs in it count."""
    if not heard_out(draft, text):
        ask_again(draft, "An edited message does not change your answer. To correct the last one, say “back”.")
