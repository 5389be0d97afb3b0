"""Groups: a coach's groups of lifters, and what can be done for each."""

from flows.coach_shared import page_flow

FLOW = page_flow("groups", "My groups", command=("my groups", "groups", "show groups"))
