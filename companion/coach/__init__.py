"""Coaching: the caseload, a lifter's page, the report, and the acts of a coach."""
