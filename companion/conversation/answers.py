"""AnswerBook to what a person asks back: about a word, the open question, or something people often ask; then the question stands again
in one line.

What is known of words and frequent questions is data of the flows' folder; it comes with the book (``cards.AnswerBook``).
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.asking import ask_again, stand_again
from companion.conversation.cards import AnswerCard, card_of
from companion.conversation.draft import Draft
from companion.conversation.effects import Say, Tap
from companion.conversation.prompt import in_one_line, progress, prompt, start_payload
from companion.conversation.table import HELP
from companion.conversation.wording import MOST_WORDS, render
from companion.language.act_rules import matches
from companion.language.questions import FREE, FREE_SAFETY, asked_likely, asked_surely, is_question, plain

UNKNOWN: Final = "I can't answer that one: I only know these tests and what belongs to them."
ASK_COACH: Final = "Your coach can."
ASK_SOMEBODY: Final = "Somebody who can watch you squat may."


def card_here(draft: Draft) -> AnswerCard:
    """Return the card of the open question."""
    return card_of(draft.book.answers().cards, draft.compiled.flow, draft.ask) if draft.book.answers else AnswerCard()


def card_words(draft: Draft, part: str) -> str:
    """Return a part of the open question's card in this person's words and units; "" where there is none."""
    ask, facts = draft.ask, draft.facts()
    example = ask.kind.example(draft.context).removeprefix("For example: ")
    return render(getattr(card_here(draft), part), {**facts, "example": example}, draft.known.now, ask.side, ask.kind.unit)


def answered(draft: Draft, text: str) -> bool:
    """Answer a question, and let the open one stand again; return False if the text asks nothing that is answered here."""
    if draft.book.answers is None or not draft.session.stack or not _asks(draft, text):
        return False
    tell(draft, text)
    return True


def tell(draft: Draft, text: str) -> None:
    """Answer a question of the person's, or say that it can't be answered; the open one stands again."""
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
    if said:
        stand_again(draft, said, picture=bool(re.search(r"show me|picture|what does it look", plain(text))))
    else:
        not_known(draft)


_MAY_I: Final = re.compile(r"(?:can|may|could|should) i\b")


def tell_idle(draft: Draft, text: str) -> None:
    """Answer a question while nothing is running; the menu follows by itself."""
    if draft.book.answers is not None:
        answers = draft.book.answers()
        topic = answers.topic_of(text)
        unknown = UNKNOWN if draft.known.facts.get("is_coach") == "yes" else f"{UNKNOWN} {ASK_SOMEBODY}"
        draft.say(answers.word(text) or (answers.says(topic, draft.known) if topic else unknown))


def _asks(draft: Draft, text: str) -> bool:
    if draft.ask.free:
        said = plain(text).strip(" .!")
        return bool(FREE.fullmatch(said) or (draft.ask.safety and FREE_SAFETY.fullmatch(said)))
    return is_question(text)


def _about_this(draft: Draft, part: str) -> str:
    return card_words(draft, part) if part else ""


def not_known(draft: Draft) -> None:
    """Say that a question can't be answered, and offer the coach where there is one."""
    to_coach = draft.book.answers().to_coach if draft.book.answers else ""
    coached = draft.known.facts.get("coach") == "yes" and to_coach
    at_home = draft.top.flow == draft.book.home and draft.known.facts.get("is_coach") == "yes"
    stand_again(draft, f"{UNKNOWN} {ASK_COACH if coached else card_words(draft, 'how') if at_home else ASK_SOMEBODY}")
    if coached and isinstance(last := draft.effects[-1], Say):
        ask_them = (Tap(draft.book[to_coach].flow.title, start_payload(to_coach)),)
        draft.effects[-1] = replace(last, buttons=(*last.buttons, ask_them))


HELP_WORDS: Final = "You can say: back, skip, again, describe, stop, menu. If anything hurts, say so at any time."
HELP_MOST: Final = 160
"""Most characters of the card's words in the help; our choice, so that the question still fits."""


def help_with(draft: Draft) -> None:
    """Say how to answer the open question, and what else can be said."""
    if draft.session.aside:
        ask_again(draft, HELP_WORDS)
        return
    draft.fire(HELP)
    how = within(card_words(draft, "how"), HELP_MOST) if draft.book.answers else ""
    stand_again(draft, " ".join(filter(None, (how, HELP_WORDS))))


# replies that were not understood ---------------------------------------------------------------------------------

ON_FROM_HERE: Final = ("Leave it? “Skip” goes on without it; “show me” says more.", "“Skip” leaves it out; “show me” helps.",
                       "“Show me” helps.")
ON_WITH_CARE: Final = ("If in doubt, take the more careful answer; “show me” says more.", "Say “show me” for more.", "“Show me” helps.")
"""The way on from a question that can be skipped, and from one that can't: the longest that fits is said."""
STILL_UNCLEAR: Final = ("“Describe” tells the picture.", "“Back” goes one back.", "“Stop” keeps it for later.", "“Menu” shows the rest.",
                        "“Help” helps.")


def refuse(draft: Draft, reason: str) -> None:
    """Refuse a reply, each time in other and no more words: first what is missing, then other words and the picture, then the way on,
    then what is left of the card and what else can be said."""
    draft.session = draft.session._replace(refused=draft.session.refused + 1)
    first = f"{reason} {draft.ask.kind.example(draft.context)}"
    facts, now = draft.facts(), draft.known.now
    whole, line = prompt(draft.compiled, draft.top, facts, now, first), in_one_line(draft.compiled, draft.top, facts, now)
    fits = len(whole.text.split()) <= MOST_WORDS
    many = draft.session.refused
    if many == 1 and fits:
        draft.effects.append(replace(whole, picture=""))
    elif many == 1 or draft.book.answers is None:
        stand_again(draft, first)
    else:
        room = len(whole.text if fits else f"{first}\n\n{line}") - len(line) - 2
        fitting = [words for part in ("how", "means", "cant", "why") if (words := within(card_words(draft, part), room))]
        ask = draft.ask
        on = () if draft.top.flow == draft.book.home else ON_WITH_CARE[0 if ask.kind.options else 1:] if ask.safety else ON_FROM_HERE
        ways = [way for way in on if len(way) <= room]
        said = [*fitting[:1], *ways[:1], *fitting[1:], *(words for words in STILL_UNCLEAR[0 if ask.picture else 1:] if len(words) <= room)]
        stand_again(draft, said[(many - 2) % len(said)], picture=many == 2)


def within(text: str, most: int) -> str:
    """Return as many whole sentences of a text, from its beginning, as have at most so many characters; none whose answer would be left
    out."""
    kept = ""
    for sentence in re.split(r"(?<=[.?!]) ", text):
        if len(kept) + len(sentence) + bool(kept) > most:
            break
        kept = f"{kept} {sentence}".strip()
    return re.sub(r"(?:^|(?<=[.!?]) )[^.!?]*\?$", "", kept)
