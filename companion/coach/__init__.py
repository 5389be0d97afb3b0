"""The coach's side: caseload, a lifter's page, the report, orders and notes."""
