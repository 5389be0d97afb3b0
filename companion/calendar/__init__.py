"""Squat days as a calendar: plans, wall-clock times, what people type about them, iCalendar. Pure; knows no conversation."""
