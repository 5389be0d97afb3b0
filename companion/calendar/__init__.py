"""Squat days as a calendar: plans, wall-clock times, prompts and iCalendar. Pure; knows no conversation."""
