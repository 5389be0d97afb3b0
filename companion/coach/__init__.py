"""What a coach sees and does: caseload, a lifter's page, the report, orders and notes."""
