"""The consent texts, each with its own version, and the question before anything of a new person is stored.

To change the words of a text, raise its version, put one sentence on the change in ``new``, and add the fingerprint to
tests/app/test_consent.py. Everybody who agreed to an older version is asked again before anything else (``consent_again``).
"""

from __future__ import annotations

from dataclasses import dataclass

from companion.conversation.condition import Condition, Fact, Facts, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Jump, Run, Step
from companion.conversation.kinds import YesNo

CONSENT_AGAIN = "consent_again"
"""The flow that asks again; a no from somebody with stored data leads there too."""


@dataclass(frozen=True, slots=True)
class ConsentText:
    """One consent text. ``of``: "lifter" or "coach"; ``new``: one sentence on the change since the last version; ``yes`` and ``no``:
    its buttons.
    """

    of: str
    version: int
    says: str
    new: str
    yes: str
    no: str = "No"

    @property
    def key(self) -> str:
        """The name of its question, another one for each version: a button under an older text can't agree to this one."""
        return "consent" if self.version == 1 else f"consent_{self.version}"

    @property
    def kind(self) -> YesNo:
        """The kind of its question: yes or no, with its own buttons."""
        return YesNo(yes=self.yes, no=self.no)

    @property
    def agreed(self) -> Fact:
        """The fact that holds the version agreed to, "no" after a withdrawal; unknown if never asked."""
        return Fact(f"consent.{self.of}", values=("no", str(self.version - 1), str(self.version)))

    @property
    def due(self) -> Condition:
        """True for somebody who was asked before and has not agreed to this version."""
        return self.agreed.known & ~self.agreed.is_(str(self.version))

    @property
    def noted(self) -> Find:
        """The effect that records the agreement to this version."""
        return Find(f"consent.{self.of}", str(self.version), f"agreed to version {self.version} of what is kept of a {self.of}")


LIFTER_TEXT = ConsentText("lifter", 1, (
    "I keep your answers, including those about pain and health, in a file of whoever runs this bot. "
    "Say “my data” at any time to get a copy or to erase it all. May I keep them?"), new="", yes="Yes, keep them")
COACH_TEXT = ConsentText("coach", 1, (
    "I keep your name here, your chat address, and what you look at and do, in a file of whoever runs this bot. "
    "Say “my data” at any time to get a copy or to erase it all. May I keep that?"), new="", yes="Yes, keep it")

DUE = LIFTER_TEXT.due | COACH_TEXT.due
"""True for somebody who must be asked again before anything else."""


def _if_no(facts: Facts, side: str) -> str:
    """Return the reply to a first no: a new person is not stored; an earlier agreement as coach or lifter stays valid."""
    if facts.get("consent.lifter") is None and facts.get("consent.coach") is None:
        return "Then I keep nothing about you, and this is where it ends. If you change your mind, write again."
    return "Then nothing changes: what you agreed to before stays as it is."


IF_NO = Fact("if_no", of=_if_no)
"""Belongs to the facts of a flow with ``first_asked``."""


def first_asked(text: ConsentText) -> tuple[Step, ...]:
    """Return the question and its consequences: a first no ends the flow; a no that withdraws an earlier yes leads to copy and erase."""
    refused = fact(text.key).is_("no")
    return (
        Ask(text.key, text.says, text.kind, safety=True, then=(Jump(refused & ~text.agreed.known, say="{if_no}"),)),
        Do(text.noted, fact(text.key).is_("yes")),
        Do(Find(f"consent.{text.of}", "no", "took the agreement back"), refused),
        Run(CONSENT_AGAIN, refused),
    )
