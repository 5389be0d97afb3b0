"""Recount: what the results come to once a test counts no more, or again. The depth and the load to keep to stay: pain loosens no limit."""

from collections.abc import Mapping
from dataclasses import replace

from companion.conversation.condition import ALWAYS, Value
from companion.conversation.flow import Flow, Known, Tell
from flows.outcome import ANY, CAUSES, FOUND
from flows.outcome_facts import outcome_facts

NONE: Mapping[str, Value] = {"overall": "open", "overall_words": "no test counts", "drill": "none", "retest_tests": "",
                             **{name: value for cause in CAUSES for name, value in ((cause, "not_tested"), (f"{cause}_because", ""))}}
"""What no test at all amounts to."""


def facts_anew(known: Known) -> dict[str, Value]:
    """The results as they are without what does not count; the test that waits under the pain questions counts as far as it came."""
    answers = [replace(row, ending=row.ending or "left") for row in known.answers()]
    return {**NONE, **outcome_facts(replace(known, answers=lambda: answers))}


FLOW = Flow(
    "recount", version=1, title="Results anew", counted=False, by_name=False, at_start=facts_anew,
    steps=(
        *(replace(row, only_if=ALWAYS) for row in FOUND),
        Tell("Your results, counted anew. {overall_words} Say “results” for the rest.", ANY),
        Tell("No test counts now, so your results are open again.", ~ANY),
    ),
)
