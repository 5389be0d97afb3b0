"""Questions of who cleared somebody, and when: asked on where the words name no clinician, or no day; what was said already isn't asked."""

from __future__ import annotations

from companion.conversation.condition import Condition, Fact, Facts, Value, fact
from companion.conversation.flow import Ask, Step, Tell
from companion.conversation.kinds import Words, YesNo
from companion.language.clearances import is_ahead, names_clinician, names_when, read_clearance, says_cleared, says_clinician

EXAMPLES = ("my physio, yesterday", "my physio", "my doctor, today", "my mate", "me, today", "my doctor, tomorrow")
CLEARED_SAID = "cleared_said"
"""The sentence that a clearance was begun with, or that answered whether there is one, where it says more than yes."""
CLINICIAN_SAID = "clinician_said"
"""Words that answer whether it was a clinician with which."""
SENTENCES = ("my physio cleared me yesterday", "my physio cleared me", "i was cleared yesterday", "i was cleared",
             "yes, my physio on monday", "my mate cleared me today", "my mate cleared me", "my doctor cleared me today",
             "my doctor cleared me tomorrow")
"""Such sentences, by example."""


def by_clinician(got: Facts) -> bool:
    """True if a clinician cleared them, and that is done: the words name one, or they say that it was one; and a day that is not to come,
    unless that is still to be asked."""
    days = (_says_when(got, ""), _said_then(got, ""))
    treats = _names(got, "") == "yes" or got.get("clinician") == "yes"
    return treats and "ahead" not in days and (days[1] is None or "said" in days)


def _day_of(words: str) -> str:
    return "ahead" if is_ahead(words) else "said" if names_when(words) else "none"


def _who(got: Facts) -> str:
    return str(got.get("cleared_at", read_clearance(str(got.get(CLEARED_SAID, ""))).who))


def says_who(got: Facts) -> Value | None:
    """Return the words that say who cleared them, whoever that is; None while nobody has said so."""
    return _who(got) or None


def _names(got: Facts, side: str) -> Value:
    return "yes" if names_clinician(_who(got)) else "no"


def _says_when(got: Facts, side: str) -> Value:
    days = (read_clearance(str(got.get(CLEARED_SAID, ""))).day, *(_day_of(str(got.get(key, ""))) for key in ("cleared_at", CLINICIAN_SAID)))
    return next((day for day in ("ahead", "said") if day in days), "none")


def _said_then(got: Facts, side: str) -> Value | None:
    return _day_of(str(got["cleared_when"])) if "cleared_when" in got else None


def _asks_who(got: Facts, side: str) -> Value:
    said = read_clearance(str(got.get(CLEARED_SAID, "")))
    return "no" if said.who else "and_when" if said.day == "none" else "alone"


def who_and_when(got: Facts, side: str) -> Value:
    """Return who cleared them, and when, in their words."""
    said = (CLEARED_SAID,) if _asks_who(got, side) != "and_when" else ()
    return ", ".join(str(got[key]) for key in (*said, "cleared_at", CLINICIAN_SAID, "cleared_when") if key in got)


YES_NO = ("yes", "no")
DAY_SAID = ("said", "ahead", "none")
NAMED, DATED = Fact("names_clinician", values=YES_NO, of=_names), Fact("says_when", values=DAY_SAID, of=_says_when)
DATED_THEN = Fact("says_when_asked", values=DAY_SAID, of=_said_then)
ASKS_WHO = Fact("asks_who", values=("and_when", "alone", "no"), of=_asks_who)
WHO_ASKED = Fact("who_asked", of=lambda got, side: "Who cleared you?" if _asks_who(got, side) == "alone" else "Who cleared you, and when?")
WHO_SAID = Fact("who_said", of=lambda got, side: got.get("cleared_at", got.get(CLEARED_SAID)))
CLEARED_OR_NOT = YesNo(unsure=True, tells=says_cleared)
CLEARED_FACTS = (NAMED, DATED, DATED_THEN, ASKS_WHO, WHO_ASKED, WHO_SAID,
                 Fact("who_and_when", of=who_and_when))
TREATS = NAMED.is_("yes") | fact("clinician").is_("yes")
BY_CLINICIAN = TREATS & (DATED.is_("said") | DATED.is_("none") & DATED_THEN.is_("said"))

ONLY_THEM = ("Thank you for telling me. Only a doctor, or somebody else who treats you, can clear you, so nothing changes for now. "
             "Ask them, and once they say so, say “cleared”.")


NOT_CLEARED_YET = ("Thank you for telling me. A clearance counts once it is given, with the day, so nothing changes for now. When they "
                   "have said so, say “cleared”.")


def not_cleared(only_if: Condition) -> tuple[Step, ...]:
    """Return what is said where nobody who treats them has cleared them, or not yet."""
    told = ASKS_WHO.is_("no") | fact("cleared_at").known
    return Tell(ONLY_THEM, only_if & told & ~TREATS), Tell(NOT_CLEARED_YET, only_if & told & TREATS & ~BY_CLINICIAN)


def asked_who_and_when(say: str, signs: tuple[str, ...], only_if: Condition) -> tuple[Step, ...]:
    """Return the questions who cleared them and when. ``signs``: those that are answers to them. What follows asks with
    ``BY_CLINICIAN``."""
    return (
        Ask("cleared_at", say, Words(limit=120, example_text="my physio, yesterday", tried=EXAMPLES), safety=True, free=True, signs=signs,
            only_if=only_if & ~ASKS_WHO.is_("no")),
        Ask("clinician", "You wrote “{who_said}”. Was it a doctor, a physio, or someone else who treats you, who cleared you?",
            YesNo(unsure=True, tells=says_clinician), safety=True, only_if=only_if & ~NAMED.is_("yes")),
        Ask("cleared_when", "And when did they clear you? A day or a month is enough.", Words(
            limit=60, example_text="yesterday", not_yes="I need the day or the month."), safety=True,
            free=True, signs=signs, only_if=only_if & TREATS & DATED.is_("none")))
