"""Consent again: the change in what is stored, and yes or no to it. Nothing else runs meanwhile (``companion.app.consent``).

A no stops everything and erases nothing; it offers a copy, erasing after one more question, or to ask again.
"""

from dataclasses import replace

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Do, Flow, Jump, Run, Step, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from flows.consent import COACH_TEXT, CONSENT_AGAIN, DUE, LIFTER_TEXT, ConsentText

MEANS = fact("means")
ERASE = ("erase", "Erase it all", "erase", "delete")
ASK_AGAIN = ("again", "Ask me again", "ask again", "i take my no back")


def _key(text: ConsentText) -> str:
    return f"{text.of}_{text.version}"


def _asked(text: ConsentText) -> tuple[Step, ...]:
    key, news = fact(_key(text)), f" What is new: {text.new}" if text.new else ""
    return (
        Tell(f"Before we go on: what I keep, or how, has changed.{news}", text.due & ~text.agreed.is_("no")),
        Ask(_key(text), text.says, text.kind, only_if=text.due, safety=True, then=(Jump(key.is_("no"), "means"),)),
        Do(text.noted, key.is_("yes")),
    )


REFUSED = LIFTER_TEXT.agreed.is_("no") | COACH_TEXT.agreed.is_("no") | fact(_key(LIFTER_TEXT)).is_("no") | fact(_key(COACH_TEXT)).is_("no")
AGREED_AGAIN = fact(_key(LIFTER_TEXT)).is_("yes") | fact(_key(COACH_TEXT)).is_("yes")

FLOW = Flow(
    CONSENT_AGAIN, version=1, title="What I keep", policy=replace(Policy.CONSENT, reopens=False), command=None,
    facts=(LIFTER_TEXT.agreed, COACH_TEXT.agreed),
    parked="All right. Until you say yes or no, nothing goes on here and no reminder comes. “My data” gives you a copy or erases "
           "it all. If something hurts, say so at any time.",
    steps=(
        Ask("means", "Then I stop here: no tests, no drills, no reminders. Nothing is erased yet: what I have of you stays until you "
            "erase it. If you meant yes, let me ask again. What would you like?", choice(
                ("copy", "A copy of it first", "copy", "export"), ERASE, ASK_AGAIN), only_if=REFUSED, safety=True),
        Run("export", MEANS.is_("copy")),
        Run("erase", MEANS.is_("erase")),
        Ask("now", "Nothing has been erased, and nothing goes on. What now?", choice(ERASE, ASK_AGAIN),
            only_if=MEANS.one_of("copy", "erase"), safety=True, then=(Jump(fact("now").is_("erase"), "run_erase"),)),
        *_asked(LIFTER_TEXT),
        *_asked(COACH_TEXT),
        Tell("Thank you, that is noted.", AGREED_AGAIN),
        Tell("There is nothing new to agree to.", ~DUE),
    ),
)
