"""Caseload: a coach's lifters, those who need them today first."""

from flows.coach_shared import page_flow

FLOW = page_flow("caseload", "My lifters", command=("lifters", "my lifters", "case load"))
