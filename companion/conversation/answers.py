"""AnswerBook to what a person asks back: about a word, the open question, or something people often ask; then the question stands again
in one line.

What is known of words and frequent questions is data of the flows' folder; it comes with the book (``cards.AnswerBook``).
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.asking import ask_again, ask_aside, show_aside, stand_again
from companion.conversation.draft import Draft
from companion.conversation.effects import Say, Tap
from companion.conversation.hearing import guesses
from companion.conversation.prompt import in_one_line, progress, prompt, start_payload
from companion.conversation.refusing import card_words, unsaid, within
from companion.conversation.table import HELP
from companion.conversation.wording import MOST_WORDS
from companion.language.act_rules import matches
from companion.language.questions import FREE, FREE_SAFETY, asked_likely, asked_surely, is_question, plain

UNKNOWN: Final = "I can't answer that one: I only know these tests and what belongs to them."
UNKNOWN_TOO: Final = ("I can't answer that one either.", "That is beyond me too.", "Nor do I know that.", "I have nothing on that.")
"""What is said of the next ones that can't be answered."""
ASK_COACH: Final = "Your coach can."
ASK_SOMEBODY: Final = "Somebody who can watch you squat may."


def answered(draft: Draft, text: str) -> bool:
    """Answer a question, and let the open one stand again; return False if the text asks nothing that is answered here."""
    if draft.book.answers is None or not draft.session.stack or not _asks(draft, text):
        return False
    tell(draft, text)
    return True


def tell(draft: Draft, text: str, surely: bool = False) -> None:
    """Answer a question of the person's, or say that it can't be answered; the open one stands again. Unless it is ``surely`` one, ask
    instead what else it may be."""
    if draft.book.answers is None:
        ask_again(draft, UNKNOWN)
        return
    answers = draft.book.answers()
    part, topic = asked_surely(text), answers.topic_of(text)
    belt = topic and part == "cant" and _MAY_I.match(plain(text))  # "can I use my belt" asks about belts
    said = answers.word(text) or ("" if belt else _about_this(draft, part))
    if not said and draft.compiled.flow.policy.counted and matches("how_far", plain(text)):
        said = f"{progress(draft.compiled, draft.top, draft.facts())}."
    if not said and topic:
        said = answers.says(topic, draft.known)
    said = said or (_about_this(draft, asked_likely(text)) if draft.top.flow != draft.book.home else "")
    if not said and draft.session.stack and draft.ask.unread:  # where people are asked about living, nothing is "beyond me"
        ask_again(draft, draft.ask.unread[0], draft.ask.unread[1:])
    elif said:
        stand_again(draft, said, picture=bool(re.search(r"show me|picture|what does it look", plain(text))))
    elif not surely and set(guesses(draft, text)) - {"@question"}:
        ask_aside(draft, "which", text)
    else:
        not_known(draft)


_MAY_I: Final = re.compile(r"(?:can|may|could|should) i\b")


def what_stands(draft: Draft, text: str = "") -> str:
    """Return what somebody was told who has to be seen at once, if they ask about that ("": whatever they say); "" otherwise."""
    return draft.book.answers().stands(text, draft.known) if draft.book.answers else ""


def sent_today(draft: Draft) -> bool:
    """True at the menu if somebody was sent today to be seen at once."""
    at_rest = draft.session.stack and draft.top.flow == draft.book.home and not draft.session.aside
    return bool(at_rest) and draft.known.facts.get("safety.level.today") == "yes" and bool(what_stands(draft))


def told_what_stands(draft: Draft, text: str = "") -> bool:
    """Say that again, and let the open question stand; return False where there is nothing to say."""
    if not (stands := what_stands(draft, text)):
        return False
    draft.say(stands, must_arrive=True)
    if draft.session.stack:
        stand_again(draft, "")
    return True


def tell_idle(draft: Draft, text: str) -> None:
    """Answer a question while nothing is running; the menu follows by itself."""
    if draft.book.answers is not None:
        unknown = UNKNOWN if draft.known.facts.get("is_coach") == "yes" else f"{UNKNOWN} {ASK_SOMEBODY}"
        draft.say(known_answer(draft, text) or what_stands(draft) or unknown)


def known_answer(draft: Draft, text: str) -> str:
    """Return the answer to a question about a word, or one that people often ask; "" for none."""
    if draft.book.answers is None:
        return ""
    answers = draft.book.answers()
    topic = answers.topic_of(text)
    return answers.word(text) or (answers.says(topic, draft.known) if topic else "")


def _asks(draft: Draft, text: str) -> bool:
    if draft.ask.free:
        said = plain(text).strip(" .!")
        return bool(FREE.fullmatch(said) or (draft.ask.safety and FREE_SAFETY.fullmatch(said)))
    return is_question(text)


def _about_this(draft: Draft, part: str) -> str:
    return card_words(draft, part) if part else ""


def not_known(draft: Draft) -> None:
    """Say that a question can't be answered, and offer the coach where there is one; to somebody who was sent to be seen at once today, say
    that again."""
    if sent_today(draft) and told_what_stands(draft):
        return
    to_coach = draft.book.answers().to_coach if draft.book.answers else ""
    coached = draft.known.facts.get("coach") == "yes" and to_coach
    at_home = draft.top.flow == draft.book.home and draft.known.facts.get("is_coach") == "yes"
    who = ASK_COACH if coached else card_words(draft, "how") if at_home else ASK_SOMEBODY
    stand_again(draft, unsaid(draft, f"{UNKNOWN} {who}", others=UNKNOWN_TOO))
    if coached and isinstance(last := draft.effects[-1], Say):
        ask_them = (Tap(draft.book[to_coach].flow.title, start_payload(to_coach)),)
        draft.effects[-1] = replace(last, buttons=(*last.buttons, ask_them))


HELP_WORDS: Final = "You can say: back, skip, again, describe, stop, menu. If anything hurts, say so at any time."
HELP_MOST: Final = 160
"""Most characters of the card's words in the help; our choice, so that the question still fits."""


def help_with(draft: Draft) -> None:
    """Say how to answer the open question, and what else can be said."""
    if draft.session.aside:
        show_aside(draft, HELP_WORDS)
        return
    draft.fire(HELP)
    how = within(card_words(draft, "how"), HELP_MOST) if draft.book.answers else ""
    stand_again(draft, " ".join(filter(None, (how, HELP_WORDS))))


# replies that were not understood ---------------------------------------------------------------------------------

def refuse(draft: Draft, reason: str) -> None:
    """Refuse a reply, each time in other and no more words: first what is missing, then what ``refusing`` has."""
    first = f"{reason} {draft.ask.kind.example(draft.context)}"
    facts, now = draft.facts(), draft.known.now
    whole, line = prompt(draft.compiled, draft.top, facts, now, first), in_one_line(draft.compiled, draft.top, facts, now)
    fits = len(whole.text.split()) <= MOST_WORDS
    many = draft.session.refused + 1
    room = draft.session.room or (len(whole.text) - len(line) - 2 if fits else len(first) - 1)
    draft.session = draft.session._replace(refused=many, room=room)
    said = unsaid(draft, first if many == 1 else reason if len(reason) <= room else "", room)
    if many == 1:
        unsaid(draft, reason)  # said by this
    if many == 1 and fits:
        draft.effects.append(replace(whole, picture=""))
    else:
        stand_again(draft, said, picture=many == 2)
