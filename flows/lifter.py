"""Lifter: one lifter's page, for their coach."""

from flows.coach_shared import page_flow

FLOW = page_flow("lifter", "A lifter", command=None)
