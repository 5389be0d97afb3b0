"""Park the running flow, and begin one asked for by name."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from companion.conversation.asking import ask_again, stand_again
from companion.conversation.draft import Draft
from companion.conversation.effects import Ended
from companion.conversation.flow import Ask
from companion.conversation.moves import begin, begin_anew, end, withdraw
from companion.conversation.session import Frame
from companion.conversation.table import INTERRUPTED, STOP

PARKED_MOST: Final = 5
"""Most parked tests per person; our choice. Older ones are given up; their answers stay in the log."""


def interrupt(draft: Draft) -> None:
    """Pause the topmost run at its question, so that another flow can run first; at the timed hold that this cuts short, to do it again.
    One that waits for a flow that has just ended goes on by itself afterwards."""
    if not isinstance(draft.compiled.stops.get(draft.top.state), Ask):
        return
    if again := draft.fire(INTERRUPTED).again:
        withdraw(draft, again)
    draft.top = draft.top._replace(paused=True)


def go_on(draft: Draft) -> None:
    """Go on with a run after hours: as after any interruption, since its gates may have shut meanwhile. One that a gate has closed for
    good, such as another day's squat day, begins anew, so that its gates are asked again."""
    if not over_again(draft):
        interrupt(draft)


def over_again(draft: Draft) -> bool:
    """Begin the lowest run anew that a gate has closed since it began; return False where there is none."""
    over = next((n for n, one in enumerate(draft.session.stack) if one.state and _over(draft, one)), None)
    if over is None:
        return False
    leave(draft, over + 1)
    begin_anew(draft)
    return True


def leave(draft: Draft, place: int) -> None:
    """End the runs from a place in the stack upwards, the topmost first."""
    while len(draft.session.stack) > place:
        end(draft, "left")


def park(draft: Draft, before: str = "") -> None:
    """Park the running flow with its answers, sending ``before`` or the usual reply. The menu is not parked, it begins again; nor are the
    questions after thoughts of self-harm: what stands of these is a fact, and closes everything. A run that waits for one that has just
    ended goes on by itself once it is taken up."""
    if draft.asking:
        if again := draft.fire(STOP).again:
            withdraw(draft, again)
        draft.top = draft.top._replace(paused=True)
    stack = tuple(frame for frame in draft.session.stack if frame.flow not in (draft.book.home, draft.book.crisis))
    draft.effects.extend(Ended(frame.run, "left") for frame in draft.session.stack if frame.flow == draft.book.crisis)
    if draft.session.stack and draft.top.flow == draft.book.crisis:
        before = before or draft.compiled.flow.parked
    if stack:
        parked = draft.worded(draft.book[stack[-1].flow].flow.parked, "")
        flow = draft.book[stack[-1].flow].flow
        kept = (*draft.session.parked, stack)
        for gone in kept[:-PARKED_MOST]:
            draft.effects.extend(Ended(frame.run, "left") for frame in gone if frame.state)
        draft.session = draft.session._replace(parked=kept[-PARKED_MOST:])
        before = before or parked or (
            f"Stopped, and your answers are kept. Say “go on” to pick up {flow.title}, or “menu” for the rest.")
    draft.session = draft.session._replace(stack=(), aside=None, idle=True, asks_first=False)
    draft.say(before or "Nothing is running. Say “menu” to see what there is.")


def lay_aside(draft: Draft) -> None:
    """Park all that is left, without a word, until the person writes; open questions about signs and pain apart, which then come first.
    The menu begins again."""
    stack = tuple(_at_rest(frame) for frame in draft.session.stack if frame.flow not in (draft.book.home, draft.book.crisis))
    asks = {draft.book.signs, draft.book.pain}
    asked_for = any(under.state == f"run_{over.flow}" for under, over in pairwise(stack) if over.flow in asks)  # then they stay together
    held = tuple(frame for frame in stack if asked_for or frame.flow in asks)
    others = tuple(frame for frame in stack if frame not in held)
    kept = (*draft.session.parked, *filter(None, (others, held)))
    draft.effects.extend(Ended(frame.run, "left") for gone in kept[:-PARKED_MOST] for frame in gone if frame.state)
    draft.session = draft.session._replace(stack=(), parked=kept[-PARKED_MOST:], aside=None, last=None, idle=True, closing=False,
                                           asks_first=bool(held))


def _at_rest(frame: Frame) -> Frame:
    """Return the questions about a sign as they are asked once the body rests."""
    return frame._replace(got={name: value for name, value in frame.got.items() if name != "works"})


THESE_FIRST: Final = "These questions come first."
"""Said in the same words where pain is said again: of the same message one waits, and since when it waits is kept."""


def start(draft: Draft, flow: str, asked: str = "") -> None:
    """Begin a flow by name, after parking the running one, or over it if it answers beside it.

    A parked run of the same flow continues, unless this one has a request of its own; what a clinician said, also over what asked for it.
    One that runs and is asked for anew begins again where it stood, over what asked for it.
    A flow that replaces home starts where home is asked for.
    """
    flow = draft.book.first(draft.known.facts) if flow == draft.book.home else flow
    if draft.book[flow].flow.policy.looks and _asked_of_oneself(draft):
        _look(draft, flow, asked)
        return
    running = draft.session.stack
    if running and draft.compiled.flow.policy.holds and not draft.book[flow].flow.policy.always and flow not in draft.ask.lets:
        if draft.top.flow == flow and not draft.compiled.flow.policy.hears_pain:
            stand_again(draft, THESE_FIRST)
        else:
            words = draft.ask.unread or (THESE_FIRST, "First these, then that.", "These first, please.")
            ask_again(draft, words[0], words[1:])
        return
    names = {frame.flow for frame in running}
    if running and draft.book[flow].flow.policy.beside and not names & {flow, draft.book.home}:
        interrupt(draft)
        draft.push(flow, asked)
        return
    if asked and draft.session.stack and draft.top.flow == flow:
        end(draft, "left")
        running = draft.session.stack
        if any(frame.flow != draft.book.home for frame in running):  # it goes on where it was open, over what asked for it
            draft.push(flow, asked)
            return
    if any(frame.flow == flow and _over(draft, frame) for frame in running):
        while draft.session.stack:
            end(draft, "left")
        running = ()
    if running and draft.top.flow == flow == draft.book.home and not asked:
        ask_again(draft)
        return
    if any(frame.flow == flow for frame in running) and not (flow == draft.book.home and len(running) > 1):
        ask_again(draft, "This question first; then say that again." if asked else "You are in the middle of it.")
        return
    others = tuple(frame for frame in running if frame.flow != draft.book.home)
    if others:
        park(draft, "All right." if others[-1].flow == draft.book.crisis else
             f"I keep your place in “{draft.book[others[-1].flow].flow.title}”; say “go on” afterwards to pick it up.")
    over = tuple(stack for stack in draft.session.parked if stack[0].flow == flow and _over(draft, stack[0]))
    draft.effects.extend(Ended(frame.run, "left") for stack in over for frame in stack if frame.state)
    parked = tuple(stack for stack in draft.session.parked if stack not in over)
    draft.session = draft.session._replace(stack=(), parked=parked, aside=None)
    if asked or not draft.unpark(flow, over=draft.book[flow].flow.policy.told):
        draft.push(flow, asked)


def _asked_of_oneself(draft: Draft) -> bool:
    """True if what is open asks about the person's own pain, a sign, or help."""
    book, aside = draft.book, draft.session.aside
    return bool(aside and aside.if_hurt) or (bool(draft.session.stack) and draft.top.flow in (book.pain, book.signs, book.crisis))


def _look(draft: Draft, flow: str, asked: str) -> None:
    """Show a page, which is over at once, and ask what is open again; nothing of that changes."""
    before = draft.session
    draft.push(flow, asked)
    begin(draft)
    draft.session = before._replace(runs=draft.session.runs)
    stand_again(draft, "")


def _over(draft: Draft, frame: Frame) -> bool:
    """True if a gate has closed a run since it began; it is then begun again, so that its gates say why."""
    facts = draft.facts(frame)
    return any(gate.shut.holds(facts) and not gate.first for gate in draft.book[frame.flow].flow.gates)
