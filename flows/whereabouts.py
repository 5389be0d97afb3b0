"""Whereabouts: another time zone, for good or for a while, so that reminders follow the local time there."""

from __future__ import annotations

import re
from datetime import date, timedelta

from companion.calendar.words import date_words
from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Jump, Known, Tell
from companion.conversation.kinds import YesNo, Zone, choice
from companion.conversation.policy import Policy
from companion.language.days.dates import read_date
from companion.language.places import find_zone
from flows.shared import WELCOMED

FOR = {"this week": "week", "for the week": "week", "until sunday": "week", "till sunday": "week", "for a week": "one",
       "for one week": "one", "for seven days": "one", "for two weeks": "two", "for 2 weeks": "two", "for a fortnight": "two"}
_UNTIL = re.compile(r"(?P<place>.+?),? (?:(?:until|till|til) (?P<until>.+)|for (?P<span>(?:\w+ ){1,3}(?:day|week|month)s?))")
"""A place with the last day there, in words that ``FOR`` does not hold."""
_STATE_WORDS = """
    a the my no some such good great bad poor better pain agony trouble bed hospital position place shape shock tears bits line time
    class charge doubt distress progress office love set up need danger spasm spasms two it this that here neutral hell heaven
    rehab therapy training between half thirds recovery work"""
_STATES = frozenset(_STATE_WORDS.split())
RIGHT = fact("right").is_("yes")
STAY = fact("stay")
THERE = fact("there").known
HOW_LONG = Fact("how_long", values=("week", "one", "two", "date", "open"))
SETTLED = RIGHT & (STAY.known | ~HOW_LONG.is_("open"))


def where_facts(known: Known) -> dict[str, Value]:
    """Return the place this was begun with, for how long, and the dates to choose from."""
    place, how_long, until = _parted(known.asked)
    zone = find_zone(place, known.now) if place else None
    today = date.fromisoformat(str(known.facts["today"]))
    last = read_date(until, today) if until else None
    facts: dict[str, Value] = {
        "how_long": how_long or ("date" if last else "open"), "sunday": (today + timedelta(days=6 - today.weekday())).isoformat(),
        "in_a_week": (today + timedelta(days=7)).isoformat(), "in_two_weeks": (today + timedelta(days=14)).isoformat()}
    return facts | ({"there": zone} if zone else {}) | ({"last_said": last.isoformat()} if last else {})


def is_place(said: str) -> bool:
    """True if the text names a place, and not a state ("in tears") that is also some village's name."""
    place = _parted(said)[0]
    return not _STATES & set(place.split()) and find_zone(place, None) is not None


def _parted(said: str) -> tuple[str, str, str]:
    """Return the place, the length of the stay and the last day there in the lifter's words; "" for each one not said."""
    place = said.strip().lower().removesuffix(" now").strip()
    how_long = next((words for words in FOR if place.endswith(f" {words}")), "")
    if not how_long and (found := _UNTIL.fullmatch(place)):
        return found["place"], "", found["until"] or f"in {found['span']}"
    return place.removesuffix(how_long).strip(" ,"), FOR.get(how_long, ""), ""


def zone_now(got: Facts, side: str) -> Value | None:
    """Return the time zone in question, None if not known."""
    return got.get("zone", got.get("there"))


def last_day(got: Facts, side: str) -> Value | None:
    """Return the last day there, "" for no end."""
    ends = {"week": "sunday", "one": "in_a_week", "two": "in_two_weeks", "date": "last_said"}
    until = ends.get(str(got.get("stay", got.get("how_long", ""))))
    return got[until] if until else ""


def until_words(got: Facts, side: str) -> Value:
    """Return the end of the stay, in words."""
    last = str(last_day(got, "") or "")
    return f"until {date_words(date.fromisoformat(last), date.fromisoformat(str(got['today'])))}" if last else "from now on"


FLOW = Flow(
    "whereabouts", version=1, title="Where I am", policy=Policy.TALK, gates=(WELCOMED,), at_start=where_facts,
    command=("time zone", "timezone", "i moved", "i am travelling"),
    sentences=(r"i(?:'m| am|'ll be| will be) (?:now |currently |back )?(?:in|near) (?P<asked>.{3,60})",
               r"i(?:'ve| have) (?:just )?moved to (?P<asked>.{3,60})"), fits=lambda asked, facts: is_place(asked),
    facts=(Fact("zone_there", values=("Europe/Lisbon",), of=zone_now), Fact("last_day", of=last_day), Fact("until_words", of=until_words),
           HOW_LONG, Fact("last_said", values=("2026-03-06",))),
    steps=(
        Ask("zone", "Which city are you in, or near? You can share a location too; I keep only the time zone.", Zone(),
            only_if=~THERE | fact("right").is_("no")),
        Ask("right", "I make it {zone_there:clock} there. Is that right?", YesNo(), only_if=THERE | fact("zone").known,
            then=(Jump(fact("right").is_("no"), "zone"),)),
        Ask("stay", "For how long?", choice(
            ("week", "This week", "week", "until sunday"), ("one", "Seven days", "a week", "one week"),
            ("two", "Two weeks", "two weeks", "fortnight"), ("moved", "From now on", "moved", "for good", "always")),
            only_if=RIGHT & HOW_LONG.is_("open")),
        Do(Find("zone.away", "{zone_there}", "told by the lifter", "{until_words}"), SETTLED),
        Do(Find("zone.until", "{last_day}", "told by the lifter"), SETTLED),
        Do(Replan(), SETTLED),
        Tell("Good. Your reminders come at the same hours as before. They go by the clock there, {until_words}.", SETTLED),
        Tell("It stays as it was.", ~(SETTLED)),
    ),
)
