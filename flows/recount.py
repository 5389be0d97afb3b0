"""Recount: what the results come to once a test counts no more, or again. The depth and the load to keep to stay: pain loosens no limit."""

from dataclasses import replace

from companion.conversation.condition import Value
from companion.conversation.effects import Find
from companion.conversation.flow import Do, Flow, Known, Tell
from flows.outcome import ANY, CAUSES, FOUND
from flows.outcome_facts import outcome_facts


def facts_anew(known: Known) -> dict[str, Value]:
    """The results as they are without what does not count; the test that waits under the pain questions counts as far as it came."""
    return outcome_facts(replace(known, answers=lambda: [replace(row, ending=row.ending or "left") for row in known.answers()]))


FLOW = Flow(
    "recount", version=1, title="Results anew", counted=False, by_name=False, at_start=facts_anew,
    steps=(
        *FOUND,
        *(Do(Find(cause, "not_tested", "no test counts"), ~ANY) for cause in CAUSES),
        Do(Find("overall", "open", "no test counts"), ~ANY),
        Do(Find("drill", "none", "no test counts"), ~ANY),
        Tell("Your results, counted anew. {overall_words} Say “results” for the rest.", ANY),
        Tell("No test counts now, so your results are open again.", ~ANY),
    ),
)
