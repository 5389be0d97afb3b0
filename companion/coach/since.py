"""News of a coach's lifters since the coach last looked: what changed, the answer that decides it, and one suggested act.

A look is a row of the audit log: a page of the lifter that was opened, or an act for them; their line in a list is none. Something that
hurt and a referral stay until they are settled, silence and the load limit until they end, whether looked at or not. What was put aside
comes back when its day has come, or with the next thing that is new; pain and referrals come back at once.
"""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

from companion.base.clock import local_date
from companion.coach.caseload import URGENT_STATES, day_namer, in_whole_sentences, place_of, shortened, weight_under
from companion.coach.letters import NO_LIFTERS, guess_row, tap
from companion.coach.names import distinct_names, named
from companion.coach.triage import GROUP_WORDS, TRIAGE, StateHeld, reasons_of, weight_of
from companion.conversation.effects import Say
from companion.export.questions import in_words
from companion.record import access, coaching
from companion.record.caseload import CaseloadRow, caseload_rows, latest_answers
from companion.record.timestamps import text_of
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.levels import URGENT_LEVELS, words_of
from companion.screening.protocols import protocols
from companion.screening.rulings import Ruling
from companion.screening.safety import Level

STANDING_STATES: Final = ("asks", "hurt", "unanswered", "referred", "clinicians_word", "over_load", "quiet")
"""States that are told until they end or are reviewed, looked at or not."""
OWED: Final[Mapping[str, tuple[str, str]]] = {
    "asks": ("1 call", "{n} calls"), "hurt": ("1 report of pain", "{n} reports of pain"),
    "unanswered": ("1 open question", "{n} open questions"), "note": ("1 note", "{n} notes"),
    "contradiction": ("1 contradiction", "{n} contradictions"), "over_load": ("1 load over the limit", "{n} loads over the limit"),
    "overdue": ("1 late retest", "{n} late retests")}
"""What is due from the coach, by state: of one, and of several."""
SENT_TO: Final[Mapping[str, str]] = {**{level: words_of(level).coach for level in reversed(URGENT_LEVELS)},
                                  Level.CLINICIAN.value: "to see a clinician"}
"""Lifters whose care is to be followed, by the care they need, after their number."""
LIFTERS_A_PAGE: Final = 5
FULL: Final = 2
"""States of one lifter told in full; our choice, for 25 lifters on one sheet."""
NEWS_MOST: Final = 500
"""UTF-16 units of what is told of one lifter: five fit a message with their quotes. Our choice."""
RUN_LASTS: Final = timedelta(minutes=15)
"""Time in which the questions that a state began with are answered; our choice."""
QUOTE_MOST: Final = 160
"""Characters of a quoted answer or finding; our choice, two lines of a page."""

_QUOTED: Final[Mapping[str, tuple[tuple[str, ...], tuple[str, ...]]]] = {
    "hurt": (("pain", "morning"), ("how", "sharp", "below_knee", "tingling", "bladder", "weakness", "during")),
    "over_load": (("squat_day", "squat_after"), ("load",)), "overdue": (("retest_later",), ()), "quiet": ((), ())}
_UNQUOTED: Final = ("asks", "unanswered", "clinicians_word")
"""States whose words hold all that is to be said of them."""
"""The questions whose latest answer decides a state: flows and keys. Where it hurts and how badly is in the words of the state."""


@dataclass(frozen=True, slots=True)
class LifterNews:
    """News of one lifter: the states to tell, the most urgent first, and the answers that decide the first of them."""

    person: int
    name: str
    told: tuple[StateHeld, ...]
    weight: int
    quote: str = ""

    @property
    def words(self) -> str:
        """The first two states in full, the others by name."""
        told = [one for one in self.told if one is self.told[0] or one.words.partition(",")[0] not in self.told[0].words]
        more = ", ".join(GROUP_WORDS[one.group] for one in told[FULL:])
        return "; ".join(one.words for one in told[:FULL]) + (f"; also: {more}" if more else "")

    @property
    def act(self) -> tuple[str, str, str]:
        """The act suggested: its button, the conversation, and its name."""
        return TRIAGE[self.told[0].group].act


def news_of(db: sqlite3.Connection, coach: int, now: datetime, zone: str) -> list[LifterNews]:
    """Return what is new of each of a coach's lifters, most urgent first; without quotes. Who has nothing new is left out."""
    day_name, today = day_namer(zone, now), local_date(now, zone).isoformat()
    found = []
    rows = caseload_rows(db, coach)
    names = {one.person: named(one.name or "") for one in rows}
    names |= distinct_names(names, coaching.codes_of_lifters(db, coach))
    for one in rows:
        if told := tuple(state for state in reasons_of(one, now, day_name) if _is_new(one, state, today)):
            found.append(LifterNews(one.person, names[one.person], told, weight_under(told[0].group, one, now)))
    return sorted(found, key=lambda one: (place_of(one.told[0].group, one.weight), -one.weight, -one.told[0].since.timestamp()))


def _is_new(one: CaseloadRow, state: StateHeld, today: str) -> bool:
    """True if a state is told; what began at the very moment of an act is not taken to be what the coach put aside."""
    since = text_of(state.since)
    if state.group == "fine" or since < (one.dismissed or ""):
        return False
    if one.snoozed and today < one.snoozed and not (state.group in URGENT_STATES and since >= (one.snoozed_at or "")):
        return False
    return state.group in STANDING_STATES or since > one.looked


def quoted(db: sqlite3.Connection, news: LifterNews) -> LifterNews:
    """Return the news with the answers that decide it, as the lifter gave them, or with the finding's own grounds."""
    return replace(news, quote=shortened(_quote(db, news.person, news.told[0]), QUOTE_MOST))


def _quote(db: sqlite3.Connection, person: int, state: StateHeld) -> str:
    if state.group in ("new_result", "contradiction"):
        found = access.findings_of(db, person)
        for ruling in (Ruling.TOO_CLOSE, Ruling.LIKELY) if state.group == "contradiction" else (Ruling.LIKELY, Ruling.TOO_CLOSE):
            for cause in ("length", "strength", "control"):
                if cause in found and found[cause].value == ruling.value and found[cause].because:
                    return f"{cause}: {in_whole_sentences(found[cause].because, QUOTE_MOST - 20)}"
        return ""
    if state.group in ("worse", "better"):
        for test in protocols().values():
            if f": {test.short_name}, " in state.words:
                side = "left" if f": {test.short_name}, left" in state.words else "right"
                return _said([(key, raw) for key, raw in latest_answers(db, person, (test.id,), (), 30) if key.startswith(side) and (
                    raw[:1].isdecimal())][-2:])
        return _said(latest_answers(db, person, ("squat_after",), ("back", "note"), 2))
    if state.group == "referred":
        why = str(fact.value) if (fact := access.facts_of(db, person).get("safety.why")) else ""
        return _said(latest_answers(db, person, ("safety_check", "pain", "signs"), why.split(), 2))
    if state.group in _UNQUOTED:
        return ""
    flows, keys = _QUOTED.get(state.group, (("",), ()))
    before = text_of(state.since + RUN_LASTS)
    return _said(latest_answers(db, person, flows, keys, {"quiet": 1, "hurt": 3}.get(state.group, 2), before))


def _said(answers: Sequence[tuple[str, str]]) -> str:
    return ", ".join(f"{in_words(key)}: “{shortened(raw, 60)}”" for key, raw in answers)


def owed_words(news: Sequence[LifterNews]) -> str:
    """Return what is due from the coach, counted, care first: "1 sent to emergency care, 1 report of pain, 2 notes"; "" for nothing."""
    many, cared = Counter(state.group for one in news for state in one.told), Counter(one.weight for one in news)
    return ", ".join([f"{n} {words}" for level, words in SENT_TO.items() if (n := cared[weight_of(level)])] + [
        one if many[group] == 1 else more.format(n=many[group]) for group, (one, more) in OWED.items() if many[group]])


def since_say(db: sqlite3.Connection, coach: int, now: datetime, zone: str, page: int) -> tuple[Say, Sequence[LifterNews]]:
    """Return one message of what is new, five lifters at a time with a button for their page, for the act suggested, where this coach may
    do it, and for putting them aside; and the lifters on it."""
    news, lifters, role = news_of(db, coach, now, zone), len(coaching.lifters_of(db, coach)), coaching.role_of(db, coach)
    if not lifters:
        return NO_LIFTERS, ()
    if not news:
        return Say(f"Nothing new of your {lifters} lifters since you last looked." if lifters > 1 else
                   "Nothing new of your lifter since you last looked.", ((tap("My lifters", "caseload"),),)), ()
    pages = -(-len(news) // LIFTERS_A_PAGE)
    page = min(page, pages - 1)
    first = page * LIFTERS_A_PAGE
    on_it = [quoted(db, one) for one in news[first:first + LIFTERS_A_PAGE]]
    where = f", {first + 1} to {first + len(on_it)}" if pages > 1 else ""
    lines = [f"Since you last looked: {len(news)} of {lifters} {'lifter' if lifters == 1 else 'lifters'}{where}."]
    if due := owed_words(news):
        lines.append(f"Due from you: {due}.")
    rows = []
    for n, one in enumerate(on_it, first + 1):
        quote = f"\n· {one.quote}" if one.quote and one.quote not in one.words else ""
        lines.append(f"\n{n}. {one.name}: {shortened(one.words, NEWS_MOST)}{quote}")
        label, flow, what = one.act
        act = (tap(label, flow, f"{one.person}-{what}"),) if what and role in COACH_ACTS[what].roles else ()
        rows.append((tap(f"{n} {one.name}", "lifter", one.person), *act, tap("Put aside", "coach_act", f"{one.person}-put_aside")))
        if one.told[0].group == "retest_due" and role in COACH_ACTS["guess"].roles:
            rows.append(guess_row(one.person))
    turn = (*((tap("Previous", "since", page - 1),) if page else ()), *((tap("Next", "since", page + 1),) if page + 1 < pages else ()))
    return Say("\n".join(lines), (*rows, *((turn,) if turn else ()), (tap("My lifters", "caseload"),))), on_it
