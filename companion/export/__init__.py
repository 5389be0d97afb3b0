"""A person's answers in open formats: tables, FHIR, a calendar, a copy to read, a page as PDF."""
