"""Words that do not answer the side question whether something hurt: none of them is swallowed, and the question stands until it is
answered.

A question of the person's is answered. Of somebody who was sent to be seen, what they tell of being seen is taken, since nothing opens
before they are checked anew, and what stands is said again. Pain and signs in the words have been heard before.
"""

from __future__ import annotations

import re
from typing import Final

from companion.conversation.answers import UNKNOWN, known_answer, told_what_stands, what_stands
from companion.conversation.asking import show_aside
from companion.conversation.condition import ALWAYS
from companion.conversation.draft import Draft
from companion.conversation.effects import Say
from companion.conversation.kinds import HALF_IS_YES
from companion.conversation.parking import start
from companion.conversation.refusing import unsaid
from companion.language.clauses import flat
from companion.language.played_down import plays_down
from companion.language.questions import asked_surely, is_question

WHY_HURT: Final = "Something in your words may be pain. If it is, I stop and ask about it, so that nothing gets worse."
THIS_FIRST: Final = "First this one, then that."
A_WORD: Final = ("One word is enough: yes, no or not sure.", "If you can't tell, “not sure” is a good answer.", "I only need this first.")
"""What is said of words that say nothing here."""
_COUNTS: Final = re.compile(r"\bcounts?\b")


def met_beside_hurt(draft: Draft, text: str) -> None:
    """Answer or take words that do not say whether something hurt, and let that question stand again, unless what begins comes first."""
    said = _begins(draft, text)
    if said and _may_begin(draft, said[0]):
        start(draft, *said)
    elif is_question(text):
        _answer(draft, text)
    elif stands := what_stands(draft):
        _stand(draft, stands)
    elif said:
        show_aside(draft, THIS_FIRST)
    else:
        show_aside(draft, unsaid(draft, A_WORD[0], others=A_WORD[1:], room=max(map(len, A_WORD))))


def only_played_down(draft: Draft, text: str) -> bool:
    """Say again what stands, at the menu, to somebody sent to be seen at once who only plays down what they told; return False for any
    other words."""
    return plays_down(text) and told_what_stands(draft)


def _begins(draft: Draft, text: str) -> tuple[str, str] | None:
    flow = draft.book.command(text)
    return draft.book.sentence(text, draft.known.facts) or ((flow, "") if flow else None)


def _may_begin(draft: Draft, flow: str) -> bool:
    """True if a flow may begin before it is known whether something hurt: the person's own data, what a coach looks up of others, and what
    only somebody who was sent to be seen tells of that, since all stays closed for them until they are asked about pain anew."""
    at_rest, begun = not draft.session.stack or draft.top.flow == draft.book.home, draft.book[flow].flow
    return begun.policy.always or begun.policy.looks or (at_rest and begun.policy.told and begun.said_by != ALWAYS)


def _answer(draft: Draft, text: str) -> None:
    if _COUNTS.search(flat(text)):
        show_aside(draft, HALF_IS_YES)
    elif stands := what_stands(draft, text):
        _stand(draft, stands)
    elif asked_surely(text) in ("means", "why"):
        show_aside(draft, WHY_HURT)
    elif said := known_answer(draft, text):
        show_aside(draft, said)
    elif stands := what_stands(draft):
        _stand(draft, stands)
    else:
        show_aside(draft, UNKNOWN)


def _stand(draft: Draft, stands: str) -> None:
    draft.effects.append(Say(stands, must_arrive=True))
    show_aside(draft)
