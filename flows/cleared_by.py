"""Questions of who cleared somebody, and when: asked on where the words name no clinician, or no day."""

from __future__ import annotations

from companion.conversation.condition import Condition, Fact, Facts, Value, fact
from companion.conversation.flow import Ask, Step, Tell
from companion.conversation.kinds import Words, YesNo
from companion.language.limits import is_ahead, names_clinician, names_when

EXAMPLES = ("my physio, yesterday", "my physio", "my mate", "me, today", "my doctor, tomorrow")


def by_clinician(got: Facts) -> bool:
    """True if a clinician cleared them, and that is done: the words name one, or they say that it was one; and a day that is not to come,
    unless that is still to be asked."""
    days = [_day_of(str(got[key])) for key in ("cleared_at", "cleared_when") if key in got]
    treats = names_clinician(str(got["cleared_at"])) or got.get("clinician") == "yes"
    return treats and "ahead" not in days and (len(days) == 1 or "said" in days)


def _day_of(words: str) -> str:
    return "ahead" if is_ahead(words) else "said" if names_when(words) else "none"


def _names(got: Facts, side: str) -> Value:
    return "yes" if names_clinician(str(got["cleared_at"])) else "no"


def _says_when(got: Facts, side: str) -> Value:
    return _day_of(str(got["cleared_at"]))


def _said_then(got: Facts, side: str) -> Value | None:
    return _day_of(str(got["cleared_when"])) if "cleared_when" in got else None


def who_and_when(got: Facts, side: str) -> Value:
    """Return who cleared them, and when, in their words."""
    return ", ".join(str(got[key]) for key in ("cleared_at", "cleared_when") if key in got)


YES_NO = ("yes", "no")
DAY_SAID = ("said", "ahead", "none")
NAMED, DATED = Fact("names_clinician", values=YES_NO, of=_names), Fact("says_when", values=DAY_SAID, of=_says_when)
DATED_THEN = Fact("says_when_asked", values=DAY_SAID, of=_said_then)
CLEARED_FACTS = (NAMED, DATED, DATED_THEN, Fact("who_and_when", of=who_and_when))
TREATS = NAMED.is_("yes") | fact("clinician").is_("yes")
BY_CLINICIAN = TREATS & (DATED.is_("said") | DATED.is_("none") & DATED_THEN.is_("said"))

ONLY_THEM = ("Thank you for telling me. Only a doctor, or somebody else who treats you, can clear you, so nothing changes for now. "
             "Ask them, and once they say so, say “cleared”.")


NOT_CLEARED_YET = ("Thank you for telling me. A clearance counts once it is given, with the day, so nothing changes for now. When they "
                   "have said so, say “cleared”.")


def not_cleared(only_if: Condition) -> tuple[Step, ...]:
    """Return what is said where nobody who treats them has cleared them, or not yet."""
    told = fact("cleared_at").known
    return Tell(ONLY_THEM, only_if & told & ~TREATS), Tell(NOT_CLEARED_YET, only_if & told & TREATS & ~BY_CLINICIAN)


def asked_who_and_when(say: str, signs: tuple[str, ...], only_if: Condition) -> tuple[Step, ...]:
    """Return the questions who cleared them and when. ``signs``: those that are answers to them. What follows asks with
    ``BY_CLINICIAN``."""
    return (
        Ask("cleared_at", say, Words(limit=120, example_text="my physio, yesterday", tried=EXAMPLES), safety=True, free=True, signs=signs,
            only_if=only_if),
        Ask("clinician", "You wrote “{cleared_at}”. Is that a doctor, a physio, or someone else who treats you?", YesNo(unsure=True),
            safety=True, only_if=only_if & ~NAMED.is_("yes")),
        Ask("cleared_when", "And when did they clear you? A day or a month is enough.", Words(limit=60, example_text="yesterday"),
            safety=True, free=True, signs=signs, only_if=only_if & TREATS & DATED.is_("none")))
