"""Lifter's log: every answer as given, page by page, for their coach."""

from flows.coach_shared import page_flow

FLOW = page_flow("lifter_log", "A lifter's log", command=None)
