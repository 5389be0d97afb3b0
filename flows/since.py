"""Since you last looked: what is new of a coach's lifters, the five that matter first."""

from flows.coach_shared import page_flow

FLOW = page_flow("since", "Since you last looked", command=("who needs me", "who needs me today", "since i last looked"))
