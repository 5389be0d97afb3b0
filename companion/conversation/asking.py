"""Show the open question again, or a short side question."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from companion.conversation.corrections import buttons_of, corrected_words, several_of
from companion.conversation.draft import Draft
from companion.conversation.effects import DESCRIBE, Say
from companion.conversation.hearing import meant_at, read_of, understood_words
from companion.conversation.kinds import Option
from companion.conversation.prompt import aside_say, in_one_line, progress, prompt
from companion.conversation.refusing import unsaid
from companion.conversation.session import Aside
from companion.conversation.table import AGAIN
from companion.conversation.wishes import meant_words, wish_of
from companion.conversation.wording import MOST_WORDS
from companion.language.passed_on import in_whole_words
from companion.language.units import shown

MEANT_IS: Final = "meant_"
"""Before the place of what a person says they mean."""


def show(draft: Draft, before: str = "", after: float = 0) -> None:
    """Show the open question, with a line before it, ``after`` seconds from now."""
    draft.effects.append(prompt(draft.compiled, draft.top, draft.facts(), draft.known.now, before, after))


def ask_again(draft: Draft, before: str = "", others: Sequence[str] = ()) -> None:
    """Show the open question again, with a line before it: the side question if there is one, else the flow's. After a
    refusal of it the question is one line, and a line that was said here before gives way to ``others``, or to what
    helps."""
    if draft.session.aside:
        show_aside(draft, before and unsaid(draft, before))
    elif draft.session.stack:
        draft.fire(AGAIN)
        again = bool(draft.session.told and before)
        said = before and unsaid(draft, before, others=others)
        whole = prompt(draft.compiled, draft.top, draft.facts(), draft.known.now, said)
        if again or (said and len(whole.text.split()) > MOST_WORDS):
            stand_again(draft, said)
        else:
            draft.effects.append(whole)
    elif before:
        draft.say(before)


def stand_again(draft: Draft, before: str, picture: bool = False) -> None:
    """Show the open question in one line with its buttons, after an answer or a refusal; ``picture``: with its picture too."""
    if draft.session.aside:
        show_aside(draft, before)
        return
    full = prompt(draft.compiled, draft.top, draft.facts(), draft.known.now)
    line = in_one_line(draft.compiled, draft.top, draft.facts(), draft.known.now)
    if before and len(before.split()) + len(line.split()) > MOST_WORDS:
        draft.say(before)
        before = ""
    draft.effects.append(replace(full, text="\n\n".join(filter(None, (before, line))), picture=full.picture if picture else ""))


def describe(draft: Draft) -> None:
    """Show again what waits, its picture described in words instead of shown."""
    ask_again(draft)
    shown = draft.effects[-1] if draft.effects else None
    if isinstance(shown, Say) and shown.picture:
        draft.effects[-1] = replace(shown, picture=DESCRIBE + shown.picture)


def ask_aside(draft: Draft, about: str, text: str = "", before: str = "") -> None:
    """Ask a side question, with a line before it; ``text``: the reply it is about."""
    draft.session = draft.session._replace(aside=Aside(about, text))
    show_aside(draft, before)


def show_aside(draft: Draft, before: str = "") -> None:
    """Show the side question, with a line before it."""
    aside, stack = draft.session.aside, draft.session.stack
    assert aside is not None
    match aside.about:
        case "unusual":
            text = f"{_unusual(draft, aside.text)} would be unusual. Is it right?"
        case "understood" if draft.ask.free:
            text = f"Shall I keep {understood_words(draft, aside.text)} as your answer?"
        case "understood":
            text = f"I understand: {understood_words(draft, aside.text)}. Is that right?"
        case "corrected" if several_of(draft, aside.text):
            text = "Which should change?"
        case "corrected":
            text = f"I understand: {corrected_words(draft, aside.text)}. Is that right?"
        case "which":
            text = "Which do you mean?" if len(meant_at(draft, aside.text)) > 1 else "Do you mean this?"
        case "whose":
            text = f"Is “{in_whole_words(aside.text, WHOSE_MOST)}” about your lifter, or about you?"
        case "wish":
            text = f"Do you want to {wish_of(draft, aside.text)}?"
        case "return":
            text = f"You were in the middle of something: {_in_the_middle(draft)}. Shall we go on?"
        case _:
            text = "Did something hurt?"
    flow, state = (draft.compiled.flow, draft.top.state) if stack else (draft.book[draft.book.home].flow, "")
    draft.effects.append(aside_say(flow, state, f"{before}\n\n{text}" if before else text, aside_options(draft)))


def _in_the_middle(draft: Draft) -> str:
    """Return what was left open hours ago: how far it is where its questions are counted, else its title."""
    if draft.compiled.flow.policy.counted:
        return progress(draft.compiled, draft.top, draft.facts())
    return draft.book[draft.session.stack[draft.before_moving or 0].flow].flow.title


def keeps_words(draft: Draft) -> bool:
    """True if a reply that was doubted is kept as it was written, in words of one's own, where it meant nothing else."""
    aside = draft.session.aside
    return bool(aside and draft.session.stack and draft.ask.free and aside.about in ("wish", "corrected"))


def _no(draft: Draft) -> Option:
    return Option("no", "No, keep it as I wrote it" if keeps_words(draft) else "No", ("no",))


WHOSE_MOST: Final = 80
"""The most characters of a message that are said back (choice)."""
NONE_OF_THESE: Final = Option("no", "None of these", ("neither", "no", "none", "something else"))


_NOTHING_HURT: Final = ("nothing", *(f"{lead}{said}" for lead in ("", "no ", "no, ", "no wait ", "no, wait, ", "sorry ") for said in (
    "nothing hurt", "nothing hurts", "no pain", "it didn't", "it doesn't", "it didn't hurt", "it doesn't hurt")))


def aside_options(draft: Draft) -> tuple[Option, ...]:
    """Return the answers to the side question."""
    aside = draft.session.aside
    assert aside is not None
    match aside.about:
        case "unusual":
            return (Option("yes", f"Yes, {_unusual(draft, aside.text)}", ("yes",)), Option("no", "No"))
        case "which":
            meant = enumerate(meant_at(draft, aside.text))  # "2" alone is a number that is said anew, not the second of these
            return (*(Option(f"{MEANT_IS}{n}", meant_words(draft, aside.text, name)) for n, name in meant),
                    NONE_OF_THESE)
        case "corrected" if several := several_of(draft, aside.text):
            return (*(Option(f"{MEANT_IS}{n}", words) for n, words in enumerate(buttons_of(draft, several))),
                    _no(draft) if keeps_words(draft) else NONE_OF_THESE)
        case "whose":
            return (Option("no", "My lifter", ("them", "him", "her", "my lifter", "the lifter", "not me")),
                    Option("me", "Me", ("about me", "myself", "it is me", "i do")))
        case "wish":
            return (Option("yes", "Yes", ("yes", "please", "yes please")), _no(draft))
        case "understood" | "corrected":
            return (Option("yes", "Yes", ("yes", "that is right", "right", "correct")), _no(draft))
        case "return":
            return (Option("go_on", "Go on", ("yes", "continue", "resume", "carry on", "ok")),
                    Option("again", "Start this again", ("again", "start again", "restart", "start over")),
                    Option("leave", "Leave it", ("leave", "stop", "no", "not now")))
        case _:
            return (Option("yes", "Yes, it hurt", ("yes", "it hurt")), Option("no", "No", _NOTHING_HURT),
                    Option("unsure", "Not sure", ("not sure", "maybe", "unsure", "don't know")))


def _unusual(draft: Draft, text: str) -> str:
    """Return the number in a reply, written in the person's units."""
    read = read_of(draft, text)
    return shown(read.value, read.unit, draft.units) if read and not isinstance(read.value, str) else text
