"""Recount: the results after a test stopped counting, or counts again. The depth and the load to keep to stay: pain loosens no limit."""

from collections.abc import Mapping
from dataclasses import replace

from companion.conversation.condition import ALWAYS, Value
from companion.conversation.flow import Flow, Known, Tell
from companion.conversation.policy import Policy
from flows.home import SEEN_AT_ONCE
from flows.outcome import CAUSES, FOUND, TESTED
from flows.outcome_facts import outcome_facts

NONE: Mapping[str, Value] = {"overall": "open", "overall_words": "no test counts", "drill": "none", "retest_tests": "",
                             **{name: value for cause in CAUSES for name, value in ((cause, "not_tested"), (f"{cause}_because", ""))}}
"""The results if no test counts."""


def facts_anew(known: Known) -> dict[str, Value]:
    """Return the results without what no longer counts; the test that waits under the pain questions counts as far as it got."""
    answers = [replace(row, ending=row.ending or "left") for row in known.answers()]
    return {**NONE, **outcome_facts(replace(known, answers=lambda: answers))}


FLOW = Flow(
    "recount", version=1, title="Results anew", policy=replace(Policy.TALK, pages=True), command=None, at_start=facts_anew,
    steps=(
        *(replace(row, only_if=ALWAYS) for row in FOUND),
        Tell("Your results, counted again. {overall_words} Say “results” for the rest.", TESTED & ~SEEN_AT_ONCE),
        Tell("No test counts now, so your results are open again.", ~TESTED & ~SEEN_AT_ONCE),
    ),
)
