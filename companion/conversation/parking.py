"""Put aside what runs, and begin what was asked for by name."""

from __future__ import annotations

from typing import Final

from companion.conversation.asking import ask_again
from companion.conversation.draft import Draft
from companion.conversation.effects import Ended
from companion.conversation.moves import end, withdraw
from companion.conversation.session import Frame
from companion.conversation.table import INTERRUPTED, STOP

PARKED_MOST: Final = 5
"""How many parked tests are kept per person; our choice. Older ones are given up, their answers stay in the log."""


def interrupt(draft: Draft) -> None:
    """Pause the topmost run at its question, for something else to come first."""
    draft.fire(INTERRUPTED)
    draft.top = draft.top._replace(paused=True)


def park(draft: Draft, before: str = "") -> None:
    """Put what is running aside, saying ``before`` or the usual; its answers are kept. The menu is not: it begins anew."""
    if draft.session.stack:
        move = draft.fire(STOP)
        if move.again:
            withdraw(draft, move.again)
        draft.top = draft.top._replace(paused=True)
    stack = tuple(frame for frame in draft.session.stack if frame.flow != draft.book.home)
    if stack:
        flow = draft.book[stack[-1].flow].flow
        kept = (*draft.session.parked, stack)
        for gone in kept[:-PARKED_MOST]:
            draft.effects.extend(Ended(frame.run, "left") for frame in gone if frame.state)
        draft.session = draft.session._replace(parked=kept[-PARKED_MOST:])
        before = before or flow.parked or (
            f"Stopped, and your answers are kept. Say “go on” to pick up {flow.title}, or “menu” for the rest.")
    draft.session = draft.session._replace(stack=(), aside=None, idle=True)
    draft.say(before or "Nothing is running. Say “menu” to see what there is.")


def start(draft: Draft, flow: str, asked: str = "") -> None:
    """Begin a flow by name: what runs is parked first; a parked run of the same flow goes on, unless this one is asked for
    something of its own. What runs in place of home begins where home is asked for."""
    flow = draft.book.first(draft.known.facts) if flow == draft.book.home else flow
    running = draft.session.stack
    if running and draft.compiled.flow.policy.holds and not draft.book[flow].flow.policy.always and flow not in draft.ask.lets:
        ask_again(draft, "These questions come first.")
        return
    if asked and draft.session.stack and draft.top.flow == flow:
        end(draft, "left")
        running = draft.session.stack
    if any(frame.flow == flow and _over(draft, frame) for frame in running):
        while draft.session.stack:
            end(draft, "left")
        running = ()
    if any(frame.flow == flow for frame in running) and not (flow == draft.book.home and len(running) > 1):
        ask_again(draft, "This question first; then say that again." if asked else "You are in the middle of it.")
        return
    others = tuple(frame for frame in running if frame.flow != draft.book.home)
    if others:
        park(draft, f"{draft.book[others[-1].flow].flow.title} waits; say “go on” afterwards to pick it up.")
    over = tuple(stack for stack in draft.session.parked if stack[0].flow == flow and _over(draft, stack[0]))
    draft.effects.extend(Ended(frame.run, "left") for stack in over for frame in stack if frame.state)
    parked = tuple(stack for stack in draft.session.parked if stack not in over)
    draft.session = draft.session._replace(stack=(), parked=parked, aside=None)
    if asked or not draft.unpark(flow):
        draft.push(flow, asked)


def _over(draft: Draft, frame: Frame) -> bool:
    """True if a gate has shut on a run since it began: then it is begun anew, and its gates say what is to be said."""
    facts = draft.facts(frame)
    return any(gate.shut.holds(facts) and not gate.first for gate in draft.book[frame.flow].flow.gates)
