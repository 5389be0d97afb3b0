"""Exports of a person's data: tables, FHIR, a calendar, a readable copy, PDF."""
