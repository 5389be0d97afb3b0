"""Runs that can't go on as they were begun, since something was told, closed or lowered while they waited."""

from __future__ import annotations

from companion.conversation.draft import Draft
from companion.conversation.flow import PARKED, Ask
from companion.conversation.session import Frame
from companion.conversation.table import body_works


def lapsed(draft: Draft, frame: Frame) -> bool:
    """True if a run has a movement to come that it may not lead to as it stands: a gate has shut throughout, what it rests on has changed,
    or an answer it was given is no longer on offer."""
    return _moves(draft, frame) and (shut_since(draft, frame) or _rests_on_else(draft, frame) or _taken_away(draft, frame))


def shut_since(draft: Draft, frame: Frame) -> bool:
    """True if a gate that is looked at throughout has shut since the run began."""
    return any(gate.shut.holds(draft.facts(frame)) for gate in draft.book[frame.flow].flow.gates if gate.throughout)


def _moves(draft: Draft, frame: Frame) -> bool:
    """True if a movement may still come: in the run itself, or in one that it runs."""
    compiled = draft.book[frame.flow]
    ahead = (frame.state, *compiled.ahead.follow[frame.state]) if frame.state in compiled.stops else ()
    stops = (stop for state in ahead if (stop := compiled.stops.get(state)))
    return any(stop.caution if isinstance(stop, Ask) else stop.flow != PARKED and body_works(draft.book[stop.flow].flow) for stop in stops)


def _rests_on_else(draft: Draft, frame: Frame) -> bool:
    flow = draft.book[frame.flow].flow
    now = flow.at_start(draft.known_at_start(frame)) if flow.at_start else frame.fixed
    return any(now.get(name) != frame.fixed.get(name) for name in flow.rests_on)


def _taken_away(draft: Draft, frame: Frame) -> bool:
    """True if an option that was chosen, and that the run rests on, is no longer on offer."""
    compiled, facts = draft.book[frame.flow], draft.facts(frame)
    asks = (ask for key in compiled.flow.rests_on if isinstance(ask := compiled.stops.get(key), Ask))
    return any(option.value == frame.got.get(ask.key) and not option.only_if.holds(facts) for ask in asks for option in ask.kind.options)
