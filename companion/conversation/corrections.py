"""Corrections in words: "right was 9 not 11", "I meant ten", "change my weight to 86".

A correction reaches any answer of the run that is asking, and an answer of another run today that it names ("my weight", "left"). The old
row stays in the log with its value; a new one replaces it, and the run goes on from the first question that the new answers leave open.
All but "I meant …" about the last answer is said back and confirmed. Answers about safety are corrected by their own questions only.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fnmatch import fnmatchcase
from typing import Final, NamedTuple

from companion.conversation.condition import Value
from companion.conversation.day_kinds import ClockTime
from companion.conversation.draft import Draft
from companion.conversation.flow import SIDES, Ask
from companion.conversation.kinds import Answer, Ready
from companion.conversation.naming import COMPARED_WITH, POINTS_EACH, ago, heading_of, names_it, points, sides
from companion.conversation.number_kinds import Number
from companion.conversation.number_slots import Slot, slot_of
from companion.conversation.slots import options_of, reads_acts, slot_words
from companion.language.choosing import choose
from companion.language.clauses import Clause, Mood, clauses
from companion.language.learnt import lifted, likeliest
from companion.language.quantities import quantities, spelt
from companion.language.units import to_kept

_OLD: Final = re.compile(
    r"\b(?:not|instead of|rather than|isnt|wasnt|ignore the|"
    r"(?:put|said|typed|wrote|sent|gave|entered|told you|tapped|pressed)(?: in| you)?)"
    r"\s+(?:the |a |an |that |was )?(-?\d[\d.]*)")
_WRONG: Final = re.compile(r"\bwrong\b|\bincorrect\b")
_NOT_THAT: Final = re.compile(r",? \b(?:not|instead of|rather than) (?!at all)(?:the |a |an )?([a-z ]+)$")
"""The old answer at the end of a correction: "a little not clearly"."""
_LEAD: Final = re.compile(r"^(?:(?:no|oh|ah|oops|wait|sorry|hang on|hold on|hmm+|actually|well|yes|yeah)\b[ ,.!-]*)+(?=\S)")
"""Words with which a correction begins, none of which is its new answer."""

CHANGED_MOST: Final = 3
"""Most answers of which a person is asked which should change; our choice."""
CLEAR, LEAST_OF_THESE = 0.8, 0.06
"""Part of all that is likely from which one answer alone is said back, and below which none is named; chosen on lines left out."""
LIFT: Final = 10
"""Tenths of a log-odds in a step of what the words say for an answer; our choice."""
PUTS_RIGHT_LONGEST: Final = 40
"""Most words of a message that puts an answer right: a longer one is told another way, and would take long to search; our choice."""
WORDS_READ, READ_MOST = 3, 6
"""Most words that are read as a time, a day or a place, and most of these that a message is taken to name; our choice."""


class Correction(NamedTuple):
    """One answer of this run to put right, or the open question's: its slot with the new value, None to ask it again; and the value it had.
    ``points``: how clearly the message names it; ``weights``: the names of its weights in the learnt layer."""

    key: str
    new: Slot | None
    old: Value
    points: int = 0
    weights: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The question and its new value."""
        return f"{self.key}={self.new.value if self.new else ''}"

    @property
    def named(self) -> bool:
        """True if the message names it, by name, side, order or the value it had."""
        return self.points >= POINTS_EACH


def correction(draft: Draft, text: str) -> Correction | None:
    """Return the answer that a message most likely puts right, None for none."""
    return next(iter(corrections(draft, text)), None)


def corrections(draft: Draft, text: str) -> tuple[Correction, ...]:
    """Return the answers that a message may put right, the likeliest first: one where it is clear which, else up to ``CHANGED_MOST``."""
    if draft.put_right is None or draft.put_right[:2] != (text, draft.top):
        draft.put_right = text, draft.top, _ranked(draft, text)
    return draft.put_right[2]


def _ranked(draft: Draft, text: str) -> tuple[Correction, ...]:
    may_be = {found.name: found for found in candidates(draft, text)}
    likely = likeliest(text, tuple((name, found.weights) for name, found in may_be.items()))
    if likely and likely[0].share >= CLEAR:
        likely = likely[:1]
    return tuple(may_be[one.name] for one in likely[:CHANGED_MOST] if one.share >= LEAST_OF_THESE)


def candidates(draft: Draft, text: str) -> list[Correction]:
    """Return every answer of this run that a message could put right, with each value that it could have now."""
    if not draft.top.trail or len(text.split()) > PUTS_RIGHT_LONGEST:
        return []
    plain = COMPARED_WITH.sub(" ", _LEAD.sub("", spelt(text)))
    whole = tuple(Clause(clause.words, Mood.SAID, clause.ends, clause.raw) for clause in clauses(_NOT_THAT.sub("", plain)))
    return [_rated(draft, plain, found) for found in _possible(draft, plain, whole) if not found.new or found.new.value != found.old]


def beside(draft: Draft, text: str) -> int:
    """Return how clearly a message names the open question itself (``naming.points``)."""
    return points(draft, draft.ask, COMPARED_WITH.sub(" ", spelt(text)))


class Elsewhere(NamedTuple):
    """An answer of another run of today to put right, or to give after it was skipped: its flow and run, its name in the log, its slot with
    the new value, the value it had (None where it was skipped), and what the run was asked about."""

    flow: str
    run: str
    name: str
    new: Slot
    old: Value | None
    asked: str = ""


def elsewhere(draft: Draft, text: str, by_unit: bool = False) -> Elsewhere | None:
    """Return the answer of another run of today that a message puts right by name, the latest; None where there is none. ``by_unit``: it
    is enough that a number comes with its unit ("80 kg") where more rests on it, and what was skipped in this run counts too."""
    plain = COMPARED_WITH.sub(" ", spelt(text))
    whole = tuple(Clause(clause.words, Mood.SAID, clause.ends, clause.raw) for clause in clauses(_NOT_THAT.sub("", plain)))
    latest = {(row.run, row.key): row for row in draft.known.answers()}
    for row in reversed(latest.values()):
        ask = _ask_of(draft, row.flow, row.key)
        here = row.run == draft.top.run and not (by_unit and row.status == "skipped")
        if row.status not in ("ok", "skipped") or row.at.date() != draft.known.now.date() or here or ask is None:
            continue
        new = _new_value(draft, ask, plain, whole, row.value)
        if new is not None and (_with_unit(ask, plain) if by_unit else _named(draft, ask, row.flow, row.key, row.value, plain)):
            return Elsewhere(row.flow, row.run, row.key, new, row.value if row.status == "ok" else None, row.asked)
    return None


def _with_unit(ask: Ask, plain: str) -> bool:
    """True if a text gives a number in the unit of this question, on which more rests than is asked (``Ask.put_right``)."""
    return isinstance(ask.kind, Number) and ask.put_right != "" and any(one.unit == ask.kind.unit != "" for one in quantities(plain))


def _ask_of(draft: Draft, flow: str, name: str) -> Ask | None:
    """Return the question whose answer has this name in the log, if it may be put right: no consent, and nothing asked about pain or a
    sign."""
    flows = draft.book.flows
    stops = draft.book[flow].stops.values() if flow in flows and not draft.book[flow].flow.policy.holds else ()
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


def changes(draft: Draft, text: str) -> Elsewhere | tuple[Correction, ...]:
    """Return the answers of this run that a message may put right, or one of another run where it names that and none of these, or
    gives a number with its unit that none of these can take."""
    found = corrections(draft, text)
    if found and found[0].named:
        return found
    numbers = any(one.new and one.new.unit for one in found)
    return elsewhere(draft, text) or (None if numbers else elsewhere(draft, text, by_unit=True)) or found


def tells_otherwise(draft: Draft, text: str) -> bool:
    """True if words give a number with its unit that an answer of today has otherwise: "did 90 kg in the end"."""
    found = changes(draft, text)
    if isinstance(found, Elsewhere):
        flow, key = found.flow, found.new.key
    elif found and found[0].new and found[0].key != draft.top.state:
        flow, key = draft.top.flow, found[0].key
    else:
        return False
    ask = draft.book[flow].stops[key]
    return isinstance(ask, Ask) and _with_unit(ask, spelt(text))


def several_of(draft: Draft, text: str) -> tuple[Correction, ...]:
    """Return the answers of which a person is asked which should change; () where one is meant, or none."""
    found = changes(draft, text)
    return found if not isinstance(found, Elsewhere) and len(found) > 1 else ()


def corrected_words(draft: Draft, text: str) -> str:
    """Return a correction in one line: "left 9 cm in place of 11 cm"."""
    found = changes(draft, text)
    if not isinstance(found, Elsewhere):
        return changed_words(draft, found[0]) if found else text
    stop = draft.book[found.flow].stops[found.new.key]
    assert isinstance(stop, Ask)
    was = "" if found.old is None else f" in place of {slot_words(draft, stop, Slot(found.new.key, found.old, stop.kind.unit))}"
    return f"{slot_words(draft, stop, found.new)}{was}, in {draft.book[found.flow].flow.title}"


def changed_words(draft: Draft, found: Correction) -> str:
    """Return a correction of this run in one line."""
    ask = draft.compiled.stops[found.key]
    assert isinstance(ask, Ask)
    if found.new and ask is draft.ask:
        return slot_words(draft, ask, found.new)
    old = slot_words(draft, ask, Slot(found.key, found.old, ask.kind.unit))
    return f"{slot_words(draft, ask, found.new)} in place of {old}" if found.new else f"{old} was wrong"


def buttons_of(draft: Draft, several: Sequence[Correction]) -> list[str]:
    """Return several corrections as the words of buttons; those that read alike begin with the heading of their question."""
    words = [changed_words(draft, one) for one in several]
    asks = [ask for one in several if isinstance(ask := draft.compiled.stops[one.key], Ask)]
    named = [f"{heading_of(draft, ask)}: {said}" if words.count(said) > 1 else said for ask, said in zip(asks, words, strict=True)]
    return [said[0].upper() + said[1:] for said in named]


def _answered(draft: Draft) -> Iterator[Ask]:
    """Yield the questions answered in this run that may be put right, the latest first."""
    stops = draft.compiled.stops
    for key in dict.fromkeys(reversed(draft.top.trail)):
        ask = stops[key]
        open_to_change = isinstance(ask, Ask) and not (ask.safety or ask.free or isinstance(ask.kind, Ready))
        if isinstance(ask, Ask) and open_to_change and draft.top.got.get(draft.log_name(ask), "") != "":
            yield ask


def _possible(draft: Draft, plain: str, whole: tuple[Clause, ...]) -> Iterator[Correction]:
    """Yield every new answer that the words may hold, to each question that was answered and to the open one, with what speaks for it."""
    was = {float(found[1].rstrip(".")) for found in _OLD.finditer(plain)}
    numbers = [one for one in quantities(plain) if not one.counts]
    here = [draft.ask] if reads_acts(draft.ask) and not isinstance(draft.ask.kind, Ready) else []
    for ask in (*here, *_answered(draft)):
        old, kind = draft.top.got.get(draft.log_name(ask), ""), ask.kind
        if isinstance(kind, Number):
            found = {slot: one for one in reversed(numbers) if one.unit in ("", kind.unit) and (slot := slot_of(draft, ask, one))}
            for n, (slot, one) in enumerate(found.items()):
                yield Correction(ask.key, slot, old, weights=(".number", f".number_{n}", f".was_{one.value in was}"))
        if kind.options and not isinstance(kind, ClockTime):
            chosen = choose(whole, options_of(draft, ask)).values
            for value, lift in lifted(plain, tuple((one.value, one.label) for one in kind.options)).items():
                by = f".chosen_{len(chosen)}" if value in chosen else ".other"
                yield Correction(ask.key, Slot(ask.key, value), old, weights=(".option", by, f".lift_{max(-1, min(9, lift // LIFT))}"))
        elif not isinstance(kind, Number):
            for n, read in enumerate(_read_in(draft, ask, plain)):
                yield Correction(ask.key, Slot(ask.key, read), old, weights=(".read", f".number_{n}"))
        if not numbers and old and _WRONG.search(plain):
            yield Correction(ask.key, None, old, weights=(".wrong",))


def _read_in(draft: Draft, ask: Ask, plain: str) -> list[Value]:
    """Return the times, days or places in a message: as it stands, and to the letter in one, two or three of its words, the last first."""
    words, few = _NOT_THAT.sub("", plain).split(), replace(draft.context, strict=True)
    spans = ((at, at + size) for size in range(1, WORDS_READ + 1) for at in range(len(words) - size, -1, -1))
    read = [ask.kind.read(" ".join(words), draft.context), *(ask.kind.read(" ".join(words[start:end]), few) for start, end in spans)]
    return list(dict.fromkeys(one.value for one in read if isinstance(one, Answer)))[:READ_MOST]


def _rated(draft: Draft, plain: str, found: Correction) -> Correction:
    """Return a correction with its points, and the names of the weights for where its question stands and what names it."""
    ask = draft.compiled.stops[found.key]
    assert isinstance(ask, Ask)
    rating, weights = points(draft, ask, plain), [f"~{part}" for part in _parts(ask)]
    if denied := _denied(draft, ask, found.old, plain):
        weights.append(".denied")
    alike = [one.key for one in _answered(draft) if one.kind == ask.kind]
    weights += [".open"] if ask is draft.ask else [".last"] if found.key == draft.top.trail[-1] else []
    weights += [".last_of_kind"] if alike[:1] == [found.key] else []
    if said := ago(plain):
        before, sort = [one.key for one in _answered(draft)], [one.key for one in _answered(draft) if one.kind == draft.ask.kind]
        weights += [f".ago_{before[said - 1:said] == [found.key]}", f".ago_of_kind_{sort[said - 1:said] == [found.key]}"]
    if ask.side and draft.ask.side and ask.side != draft.ask.side and ask.side not in sides(plain):
        weights.append(".other_side")
    return found._replace(points=rating + POINTS_EACH * denied, weights=(*found.weights, f".points_{max(rating, -2)}", *weights))


def _parts(ask: Ask) -> tuple[str, ...]:
    stem = ask.key.removeprefix(f"{ask.side}_") if ask.side else ask.key
    return tuple(dict.fromkeys((stem, *stem.split("_"))))


def _denied(draft: Draft, ask: Ask, old: Value, plain: str) -> bool:
    """True if a message says that the old answer does not hold: "not clearly", "I put 9"."""
    if isinstance(ask.kind, Number) and not isinstance(old, str):
        return any(abs(_kept(draft, ask.kind, float(one[1].rstrip("."))) - old) < 0.06 for one in _OLD.finditer(plain))
    said = _NOT_THAT.search(plain)
    return bool(said and ask.kind.options and old in choose(clauses(said[1]), options_of(draft, ask)).values)


def _kept(draft: Draft, kind: Number, number: float) -> float:
    return to_kept(number, kind.unit, draft.units)
