"""Lifter's report: the whole page as a document, for their coach."""

from flows.coach_shared import page_flow

FLOW = page_flow("lifter_report", "A lifter's report", command=None)
