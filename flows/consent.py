"""What people agree to: the texts, each with a version of its own, and the question that makes a stranger somebody kept.

Whoever changes the words of a text raises its version, says in ``new`` in one sentence what is new, and adds the fingerprint
to tests/app/test_consent.py. Everybody who agreed to an older version is asked again before anything else (``consent_again``).
"""

from __future__ import annotations

from dataclasses import dataclass

from companion.conversation.condition import Condition, Fact, Facts, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Jump, Run, Step
from companion.conversation.kinds import YesNo

CONSENT_AGAIN = "consent_again"
"""The flow that asks again, and to which a no of somebody kept leads."""


@dataclass(frozen=True, slots=True)
class ConsentText:
    """One text. ``of``: whose it is; ``new``: one sentence on what is new since the version before; ``yes`` and ``no``: its buttons.

    ``key`` names its question, which is another one with each version: a button under an older text can't agree to this one.
    """

    of: str
    version: int
    says: str
    new: str
    yes: str
    no: str = "No"

    @property
    def key(self) -> str:
        return "consent" if self.version == 1 else f"consent_{self.version}"

    @property
    def kind(self) -> YesNo:
        return YesNo(yes=self.yes, no=self.no)

    @property
    def agreed(self) -> Fact:
        """The version somebody agreed to, "no" where they took that back; not known of who was never asked."""
        return Fact(f"consent.{self.of}", values=("no", str(self.version - 1), str(self.version)))

    @property
    def due(self) -> Condition:
        """Whether somebody who was asked has not agreed to this version."""
        return self.agreed.known & ~self.agreed.is_(str(self.version))

    @property
    def noted(self) -> Find:
        return Find(f"consent.{self.of}", str(self.version), f"agreed to version {self.version} of what is kept of a {self.of}")


LIFTER_TEXT = ConsentText("lifter", 1, (
    "I keep your answers, including those about pain and health, in a file of whoever runs this bot. "
    "Say “my data” at any time to get a copy or to erase it all. May I keep them?"), new="", yes="Yes, keep them")
COACH_TEXT = ConsentText("coach", 1, (
    "I keep your name here, your chat address, and what you look at and do, in a file of whoever runs this bot. "
    "Say “my data” at any time to get a copy or to erase it all. May I keep that?"), new="", yes="Yes, keep it")

DUE = LIFTER_TEXT.due | COACH_TEXT.due
"""Nothing goes on with somebody until they have been asked again."""


def _if_no(facts: Facts, side: str) -> str:
    """What a first no leads to: nothing kept of a stranger; what is kept of a coach or a lifter stays as they agreed to it."""
    if facts.get("consent.lifter") is None and facts.get("consent.coach") is None:
        return "Then I keep nothing about you, and this is where it ends. If you change your mind, write again."
    return "Then nothing changes: what you agreed to before stays as it is."


IF_NO = Fact("if_no", of=_if_no)
"""Among the facts of a flow with ``first_asked``."""


def first_asked(text: ConsentText) -> tuple[Step, ...]:
    """The question and what follows: a first no ends the flow, a no that takes an earlier yes back leads to copy and erasing."""
    refused = fact(text.key).is_("no")
    return (
        Ask(text.key, text.says, text.kind, safety=True, then=(Jump(refused & ~text.agreed.known, say="{if_no}"),)),
        Do(text.noted, fact(text.key).is_("yes")),
        Do(Find(f"consent.{text.of}", "no", "took the agreement back"), refused),
        Run(CONSENT_AGAIN, refused),
    )
