"""Corrections in words: "right was 9 not 11", "I meant ten", "change my weight to 86".

A correction reaches any answer of the run that is asking, and an answer of another run today that it names ("my weight", "left"). The old
row stays in the log with its value; a new one replaces it, and the run goes on from the first question that the new answers leave open.
All but "I meant …" about the last answer is said back and confirmed. Answers about safety are corrected by their own questions only.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fnmatch import fnmatchcase
from typing import Final, NamedTuple

from companion.conversation.condition import Value
from companion.conversation.draft import Draft
from companion.conversation.flow import SIDES, Ask
from companion.conversation.kinds import Ready
from companion.conversation.naming import COMPARED_WITH, POINTS_EACH, names_it, points, sides
from companion.conversation.number_kinds import Number
from companion.conversation.number_slots import Slot, slot_of
from companion.conversation.slots import likely_at, options_of, slot_words
from companion.language.choosing import choose
from companion.language.clauses import Clause, Mood, clauses
from companion.language.quantities import quantities, spelt
from companion.language.units import to_kept

_OLD: Final = re.compile(
    r"\b(?:not|instead of|rather than|isnt|wasnt|ignore the|"
    r"(?:put|said|typed|wrote|sent|gave|entered|told you|tapped|pressed)(?: in| you)?)"
    r"\s+(?:the |a |an |that |was )?(-?\d[\d.]*)")
_NOT_THAT: Final = re.compile(r",? \b(?:not|instead of|rather than) (?!at all)(?:the |a |an )?([a-z ]+)$")
_LEAD: Final = re.compile(r"^(?:(?:no|oh|ah|oops|wait|sorry|hang on|hold on|hmm+|actually|well|yes|yeah)\b[ ,.!-]*)+(?=\S)")
"""Words with which a correction begins, none of which is its new answer."""
"""The old answer at the end of a correction: "a little not clearly"."""

class Correction(NamedTuple):
    """One answer of this run to put right: its slot with the new value, None to ask it again; and the value it had. ``points``: how clearly
    the message says which it is; with 1 it is only the last of its kind, and others were given since."""

    key: str
    new: Slot | None
    old: Value
    points: float = 0

    @property
    def named(self) -> bool:
        """True if the message names it, by name, side, order or the value it had."""
        return self.points >= POINTS_EACH


def correction(draft: Draft, text: str) -> Correction | None:
    """Return the answer that a message puts right, None where that is not clear. Of those that fit as well the last is meant."""
    plain = COMPARED_WITH.sub(" ", _LEAD.sub("", spelt(text)))
    if not draft.top.trail:
        return None
    whole = tuple(Clause(clause.words, Mood.SAID, clause.ends, clause.raw) for clause in clauses(_NOT_THAT.sub("", plain)))
    rated = [(rating, found) for found in _candidates(draft, plain, whole) if (rating := _rating(draft, plain, found)) >= 0]
    if not rated:
        return None
    best = max(rating for rating, _ in rated)
    top = [found for rating, found in rated if rating == best]
    return top[0]._replace(points=best) if len(top) == 1 or not best else None


def beside(draft: Draft, text: str) -> int:
    """Return how clearly a message names the open question itself (``naming.points``)."""
    return points(draft, draft.ask, COMPARED_WITH.sub(" ", spelt(text)))


class Elsewhere(NamedTuple):
    """An answer of another run of today to put right: its flow and run, its name in the log, its slot with the new value, and the value
    it had."""

    flow: str
    run: str
    name: str
    new: Slot
    old: Value


def elsewhere(draft: Draft, text: str) -> Elsewhere | None:
    """Return the answer of another run of today that a message puts right by name, the latest; None where there is none."""
    plain = COMPARED_WITH.sub(" ", spelt(text))
    whole = tuple(Clause(clause.words, Mood.SAID, clause.ends, clause.raw) for clause in clauses(_NOT_THAT.sub("", plain)))
    latest = {(row.run, row.key): row for row in draft.known.answers()}
    for row in reversed(latest.values()):
        ask = _ask_of(draft, row.flow, row.key)
        if row.status != "ok" or row.at.date() != draft.known.now.date() or row.run == draft.top.run or ask is None:
            continue
        new = _new_value(draft, ask, plain, whole, row.value)
        if new is not None and _named(draft, ask, row.flow, row.key, row.value, plain):
            return Elsewhere(row.flow, row.run, row.key, new, row.value)
    return None


def _ask_of(draft: Draft, flow: str, name: str) -> Ask | None:
    """Return the question whose answer has this name in the log, if it may be put right."""
    stops = draft.book[flow].stops.values() if flow in draft.book.flows else ()
    found = (stop for stop in stops if isinstance(stop, Ask) and fnmatchcase(name, re.sub(r"\{\w+\}", "*", stop.log_as or stop.key)))
    return next((ask for ask in found if not (ask.safety or ask.free or isinstance(ask.kind, Ready))), None)


def _new_value(draft: Draft, ask: Ask, plain: str, whole: tuple[Clause, ...], old: Value | None) -> Slot | None:
    if isinstance(ask.kind, Number):
        was = {float(found[1].rstrip(".")) for found in _OLD.finditer(plain)}
        numbers = [one for one in quantities(plain) if not one.counts and one.value not in was]
        new = slot_of(draft, ask, numbers[-1]) if numbers else None
        return new if new and new.value != old else None
    values = [value for value in choose(whole, options_of(draft, ask)).values if value != old]
    return Slot(ask.key, values[0]) if len(values) == 1 else None


def _named(draft: Draft, ask: Ask, flow: str, key: str, value: Value | None, plain: str) -> bool:
    """True if a message names an answer of another run: by its name, its side, or, at a choice, its test or the answer it had."""
    side = ask.side or next((side for side in SIDES if key.startswith(f"{side}_")), "")
    if side in sides(plain) or (isinstance(ask.kind, Number) and names_it(draft, ask, plain)):
        return True
    if isinstance(ask.kind, Number):
        return False
    title = draft.book[flow].flow.title.casefold()
    old = next((option.label.casefold() for option in ask.kind.options if option.value == value), title)
    return any(re.search(rf"\b{re.escape(name)}\b", plain) for name in (title, old))


def corrected_words(draft: Draft, text: str) -> str:
    """Return a correction in one line: "left 9 cm in place of 11 cm"."""
    found = correction(draft, text)
    if (found is None or not found.named) and (other := elsewhere(draft, text)):
        stop = draft.book[other.flow].stops[other.new.key]
        assert isinstance(stop, Ask)
        was = slot_words(draft, stop, Slot(other.new.key, other.old, stop.kind.unit))
        return f"{slot_words(draft, stop, other.new)} in place of {was}, in {draft.book[other.flow].flow.title}"
    ask = draft.compiled.stops.get(found.key) if found else None
    if found is None or not isinstance(ask, Ask):
        return text
    old = slot_words(draft, ask, Slot(found.key, found.old, ask.kind.unit))
    return f"{slot_words(draft, ask, found.new)} in place of {old}" if found.new else f"{old} was wrong"


def _answered(draft: Draft) -> Iterator[Ask]:
    """Yield the questions answered in this run that may be put right, the latest first."""
    stops = draft.compiled.stops
    for key in dict.fromkeys(reversed(draft.top.trail)):
        ask = stops[key]
        if isinstance(ask, Ask) and draft.log_name(ask) in draft.top.got and not (ask.safety or ask.free or isinstance(ask.kind, Ready)):
            yield ask


def _candidates(draft: Draft, plain: str, whole: tuple[Clause, ...]) -> Iterator[Correction]:
    was = {float(found[1].rstrip(".")) for found in _OLD.finditer(plain)}
    for ask in _answered(draft):
        old = draft.top.got[draft.log_name(ask)]
        if isinstance(ask.kind, Number):
            new = [slot for one in quantities(plain) if not one.counts and one.unit in ("", ask.kind.unit) and one.value not in was
                   and (slot := slot_of(draft, ask, one)) is not None]
            if new:
                yield Correction(ask.key, new[-1], old)
        chosen = choose(whole, options_of(draft, ask)) if ask.kind.options else None
        values = [value for value in chosen.values if value != old] if chosen else []
        if chosen and not values and not quantities(plain) and points(draft, ask, plain) > 0:
            values = _likely_values(draft, ask, plain, old)
        if len(values) == 1:
            yield Correction(ask.key, Slot(ask.key, values[0]), old)
        elif not quantities(plain) and not values and re.search(r"\bwrong\b|\bincorrect\b", plain):
            yield Correction(ask.key, None, old)


def _likely_values(draft: Draft, ask: Ask, plain: str, old: Value) -> list[str]:
    """Return the answer that is likeliest meant where none is read in the words."""
    values = {option.value for option in ask.kind.options} - {old}
    return [one.name for one in likely_at(draft, plain, ask) if one.name in values][:1]


def _rating(draft: Draft, plain: str, found: Correction) -> float:
    """Return how well a correction fits an answer: less than 0 not at all, 0 by its kind only, more where its name, side, place in the
    order or old value agree; of two alike the last of its kind, and the last of all."""
    ask = draft.compiled.stops[found.key]
    assert isinstance(ask, Ask)
    if found.new is not None and found.new.value == found.old:
        return -1
    rating = float(points(draft, ask, plain))
    last = not rating and found.key == next(one.key for one in _answered(draft) if one.kind == ask.kind)
    if ask.side and draft.ask.side and ask.side != draft.ask.side and ask.side not in sides(plain) and not last:
        return -1
    if (denied := _NOT_THAT.search(plain)) and ask.kind.options:
        rating += POINTS_EACH * (found.old in choose(clauses(denied[1]), options_of(draft, ask)).values)
    if isinstance(ask.kind, Number) and not isinstance(found.old, str):
        was = [float(one[1].rstrip(".")) for one in _OLD.finditer(plain)]
        rating += POINTS_EACH * any(abs(_kept(draft, ask.kind, number) - found.old) < 0.06 for number in was)
    return rating + last + 0.5 * (found.key == draft.top.trail[-1]) if rating >= 0 else rating


def _kept(draft: Draft, kind: Number, number: float) -> float:
    return to_kept(number, kind.unit, draft.units)
