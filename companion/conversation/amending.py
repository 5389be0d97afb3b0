"""Put an earlier answer of the running flow right, and fold the run again from it."""

from __future__ import annotations

from typing import Final

from companion.conversation.asking import show
from companion.conversation.corrections import Elsewhere, changed_words, changes, corrected_words
from companion.conversation.draft import Draft
from companion.conversation.effects import Record
from companion.conversation.flow import Ask
from companion.conversation.hearing import read_of
from companion.conversation.kinds import Answer, Choice, YesNo
from companion.conversation.moves import answer, record, take_back, to_come, withdraw
from companion.conversation.number_slots import Slot
from companion.conversation.parking import interrupt
from companion.conversation.table import ENDINGS, START


def amend(draft: Draft, text: str, nth: int = 0) -> None:
    """Make a confirmed correction, the ``nth`` of those a message may make: a new row replaces the old one; questions that it opens are
    asked, answers it leaves without a question are withdrawn."""
    those = changes(draft, text)
    found = next(iter(those[nth:]), None) if not isinstance(those, Elsewhere) else None
    if isinstance(those, Elsewhere):
        _elsewhere(draft, those, text)
    elif found is None:
        show(draft)
    elif found.new is None:
        last = found.key == next(iter(reversed(draft.top.trail)), "")
        show(draft, (take_back(draft) or "Once more, then.") if last else "What should it be? Say it with its name, such as “left 11”.")
    elif found.key == draft.top.state:
        answer(draft, Answer(found.new.value, text, found.new.unit), sure=True)
    else:
        words = changed_words(draft, found)
        _replace(draft, found.new, text)
        _fold(draft)
        _changed(draft, words, draft.compiled.stops[found.key], draft.top.asked)


KEPT_FOR_LATER: Final = "Noted. First this one."
"""Said where a reply answers a question to come and not the open one."""

ADDED_BEFORE: Final = "Noted."
"""Said where it adds to one before it, and the open question does not say that back."""


def answer_anew(draft: Draft, text: str) -> bool:
    """Take a reply for the new answer to a question that the open one amends; return False if it is none. What was asked since one of a
    few answers was given was asked about that: it is taken back. What answers a question to come as things
    are is kept for it; what answers the open one by more than yes or no is its answer."""
    decides = isinstance(draft.ask.kind, YesNo)
    if not decides and isinstance(read_of(draft, text), Answer):
        return False
    anew, before, ahead = 0, "", {key for key, ask in to_come(draft) if ask.only_if.holds(draft.facts())}
    for stop in map(draft.compiled.stops.get, draft.ask.amends):
        if not isinstance(stop, Ask) or (new := stop.kind.anew(text, draft.context)) is None:
            continue
        if isinstance(stop.kind, Choice):
            if stop.key not in draft.top.trail or draft.top.got.get(stop.key) == new.value or isinstance(read_of(draft, text), Answer):
                continue
            while draft.top.state != stop.key:
                withdraw(draft, draft.top.trail[-1])
            answer(draft, new, sure=True)
            return True
        if stop.key in ahead:
            draft.top = draft.top._replace(noted={**draft.top.noted, stop.key: new.value})
            before = KEPT_FOR_LATER
        else:
            before = before or ("" if decides else ADDED_BEFORE)
            _replace(draft, Slot(stop.key, new.value, new.unit), text)
        anew += 1
    if anew:
        show(draft, before)
    return bool(anew)


def _elsewhere(draft: Draft, other: Elsewhere, raw: str) -> None:
    """Replace an answer of another run; what rests on it is worked out from the log."""
    words, compiled = corrected_words(draft, raw), draft.book[other.flow]
    ask = compiled.stops[other.new.key]
    assert isinstance(ask, Ask)
    draft.effects.append(Record(other.run, other.flow, compiled.flow.version, other.name, ask.side, raw, other.new.value, other.new.unit))
    _changed(draft, words, ask, other.asked)


def _changed(draft: Draft, words: str, ask: object, asked: str) -> None:
    """Say what was put right, and run what its question wants to say of that before going on."""
    if isinstance(ask, Ask) and ask.put_right:
        draft.say(f"Changed: {words}.")
        interrupt(draft)
        draft.push(ask.put_right, asked)
    else:
        show(draft, f"Changed: {words}.")


def _replace(draft: Draft, new: Slot, raw: str) -> None:
    ask = draft.compiled.stops[new.key]
    assert isinstance(ask, Ask)
    record(draft, ask, raw, new.value, new.unit)
    draft.top = draft.top._replace(got={**draft.top.got, draft.log_name(ask): new.value})


def _fold(draft: Draft) -> None:
    """Go through the answers again from the start, to the first question that is still open."""
    frame, compiled = draft.top, draft.compiled
    facts, state, passed = draft.facts(), START, list[str]()
    while True:
        move = next(move for move in compiled.onward[state] if move.when.holds(facts))
        if move.target in ENDINGS or move.target in passed:
            break
        state = move.target
        stop = compiled.stops[state]
        if state not in frame.trail if isinstance(stop, Ask) else stop.key not in frame.got:
            break
        passed.append(state)
    if state == START or not isinstance(compiled.stops[state], Ask):
        return
    gone = [key for key in frame.trail if key not in passed]
    got = dict(frame.got)
    ahead = {key: got[key] for key in gone if key in got}
    still = draft.compiled.reached(state)
    for key in gone:
        ask = compiled.stops[key]
        if key in got and key not in still and isinstance(ask, Ask):
            record(draft, ask, "", None, status="withdrawn")
            del got[key]
    noted = {**frame.noted, **{key: value for key, value in ahead.items() if key in still}}
    trail = tuple(key for key in passed if isinstance(compiled.stops[key], Ask))
    draft.top = frame._replace(state=state, got=got, trail=trail, noted=noted)
