"""Questions of who cleared somebody, and when: asked on where the words name no clinician, or no day."""

from __future__ import annotations

from companion.conversation.condition import Condition, Fact, Facts, Value, fact
from companion.conversation.flow import Ask, Step
from companion.conversation.kinds import Words, YesNo
from companion.language.limits import names_clinician, names_when

EXAMPLES = ("my physio, yesterday", "my physio", "my mate", "me, today")


def by_clinician(got: Facts) -> bool:
    """True if a clinician cleared them: the words name one, or they say that it was one."""
    return names_clinician(str(got["cleared_at"])) or got.get("clinician") == "yes"


def _names(got: Facts, side: str) -> Value:
    return "yes" if names_clinician(str(got["cleared_at"])) else "no"


def _says_when(got: Facts, side: str) -> Value:
    return "yes" if names_when(str(got["cleared_at"])) else "no"


def who_and_when(got: Facts, side: str) -> Value:
    """Return who cleared them, and when, in their words."""
    return ", ".join(str(got[key]) for key in ("cleared_at", "cleared_when") if key in got)


YES_NO = ("yes", "no")
NAMED, DATED = Fact("names_clinician", values=YES_NO, of=_names), Fact("says_when", values=YES_NO, of=_says_when)
CLEARED_FACTS = (NAMED, DATED, Fact("who_and_when", of=who_and_when))
BY_CLINICIAN = NAMED.is_("yes") | fact("clinician").is_("yes")
NOT_BY_ONE = fact("cleared_at").known & ~BY_CLINICIAN

ONLY_THEM = ("Thank you for telling me. Only a doctor, or somebody else who treats you, can clear you, so nothing changes for now. "
             "Ask them, and once they say so, say “cleared”.")


def asked_who_and_when(say: str, signs: tuple[str, ...], only_if: Condition) -> tuple[Step, ...]:
    """Return the questions who cleared them and when. ``signs``: those that are answers to them. What follows asks with
    ``BY_CLINICIAN``."""
    return (
        Ask("cleared_at", say, Words(limit=120, example_text="my physio, yesterday", tried=EXAMPLES), safety=True, free=True, signs=signs,
            only_if=only_if),
        Ask("clinician", "You wrote “{cleared_at}”. Is that a doctor, a physio, or someone else who treats you?", YesNo(unsure=True),
            safety=True, only_if=only_if & ~NAMED.is_("yes")),
        Ask("cleared_when", "And when did they clear you? A day or a month is enough.", Words(limit=60, example_text="yesterday"),
            safety=True, free=True, signs=signs, only_if=only_if & BY_CLINICIAN & ~DATED.is_("yes")))
