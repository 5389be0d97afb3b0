"""A run is parked with what asked for it, and begins anew over that; nothing that waits for another can stop either."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from companion.conversation.draft import Draft
from companion.conversation.effects import Say
from companion.conversation.flow import PARKED, Ask, Known, Run
from companion.conversation.parking import park, start
from companion.conversation.session import Frame, Session
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW

KNOWN = Known(CHECKED, NOW)


def _run_by(*flows: str) -> Iterator[tuple[str, str]]:
    for name in flows:
        yield from ((name, step.flow) for step in BOOK[name].flow.steps if isinstance(step, Run) and step.flow != PARKED and any(
            isinstance(one, Ask) for one in BOOK[step.flow].flow.steps))


def _asking(over: str, flow: str) -> Draft:
    """A run that waits for another one, which asks its first question."""
    first = next(step.key for step in BOOK[flow].flow.steps if isinstance(step, Ask))
    begins = BOOK[flow].flow.at_start
    frames = (Frame(over, BOOK[over].flow.version, "1", f"run_{flow}"),
              Frame(flow, BOOK[flow].flow.version, "2", first, fixed=dict(begins(KNOWN)) if begins else {}))
    return Draft(BOOK, Session(stack=frames, runs=2), KNOWN, [])


RUNS = sorted(set(_run_by("signs", "pain", "crisis")))


def test_the_questions_about_signs_run_others():
    assert ("signs", "limits") in RUNS
    assert ("signs", "crisis") in RUNS


@pytest.mark.parametrize(("over", "flow"), RUNS)
def test_what_signs_pain_and_crisis_run_is_parked_with_them(over: str, flow: str):
    draft = _asking(over, flow)
    park(draft)
    assert not draft.session.stack
    assert any(isinstance(effect, Say) for effect in draft.effects)


@pytest.mark.parametrize(("over", "flow"), RUNS)
def test_a_run_that_waits_for_one_that_has_just_ended_is_parked_too(over: str, flow: str):
    draft = _asking(over, flow)
    draft.session = draft.session._replace(stack=draft.session.stack[:1])
    park(draft)
    assert not draft.session.stack


@pytest.mark.parametrize(("over", "flow"), [run for run in RUNS if not BOOK[run[1]].flow.policy.holds])
def test_what_they_run_begins_anew_over_them_when_it_is_asked_for_in_a_sentence(over: str, flow: str):
    draft = _asking(over, flow)
    start(draft, flow, "no bending")
    assert [frame.flow for frame in draft.session.stack] == [over, flow]
    assert draft.top.asked == "no bending"
    assert not draft.session.parked
