"""Compare: two of a coach's lifters side by side, or two days of one."""

from flows.coach_shared import IS_COACH, page_flow

FLOW = page_flow("compare", "Compare", command=None, sentences=(r"(?:please )?compare (?P<asked>.{2,80})",), said_by=IS_COACH)
